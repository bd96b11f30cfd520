"""Wood screws and lag screws in shear: the yield modes by root diameter (12.1.4, 12.1.5, 12.3.7.1, Tables 12J to 12M).

In: a screw by its trade size and length, the side member, species, angles. Out: the reference lateral value of one
screw. Threads lie in the shear plane or may lie there, so the root diameter enters the yield equations and the
reduction term; bearing strength, penetration and spacing go by the nominal diameter.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.nds_2018 import SOURCE
from groundsill.standards.nds_2018.bearing import steel_bearing, wood_bearing
from groundsill.standards.nds_2018.bolts import table_i1_bolts
from groundsill.standards.nds_2018.nails import bearing_length_tapered, nail_yield_strength
from groundsill.standards.nds_2018.shear import Lateral, governing, reduction_terms, single_shear_modes
from groundsill.standards.nds_2018.symbols import ANGLE, Angle, hold
from groundsill.standards.nds_2018.withdrawal import table_l2
from groundsill.standards.nds_2018.yield_modes import angle_factor, reduction_small_dowel
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import given, greatest, scale, subtract
from groundsill.working.table import Table

__all__ = [
    "Screw",
    "lag_bearing_length",
    "lag_screw",
    "lag_screw_steel_plate",
    "screw_size",
    "table_l3",
    "wood_screw",
    "wood_screw_steel_plate",
]

SIDE = Q("in", "l_s", "thickness of the side member", above=0.0)
LENGTH = Q("in", "L", "length of the screw", above=0.0)
PLATE = Q("in", "t_s", "thickness of the steel side plate", above=0.0, below=0.25)

SideThickness = Annotated[float, SIDE]
ScrewLength = Annotated[float, LENGTH]
PlateThickness = Annotated[float, PLATE]

_LAG_INCHES = {
    "1/4": 0.25, "5/16": 0.3125, "3/8": 0.375, "7/16": 0.4375, "1/2": 0.5, "5/8": 0.625, "3/4": 0.75, "7/8": 0.875,
    "1": 1.0,
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Screw:
    """A screw as bought: nominal and root diameter in inches, bending yield strength in psi."""

    name: str
    D: float
    D_r: float
    F_yb: float


def table_l3() -> Table:
    """Wood screws (Appendix L, Table L3): nominal and root diameter by number."""
    return Table.load(__package__, "tables/l3_screws.toml")


@procedure("nds-2018/L3", title="Wood screw by its number", clause="Tables L3 and I1", source=SOURCE)
def screw_size(number: str) -> Screw:
    """Diameters and bending strength of a wood screw ("8", "10", "14"); the strength goes by the nominal diameter."""
    table = table_l3()
    D = table.read(number, "D", symbol="D")
    return Screw(f"No. {number}", D, table.read(number, "D_r", symbol="D_r"), nail_yield_strength(D))


@procedure(
    "nds-2018/12L",
    title="Wood screw, wood side member",
    clause="12.3.1 as in Table 12L",
    source=SOURCE,
    alias="nds.wood-screw",
)
def wood_screw(
    number: str,
    L: ScrewLength,
    l_s: SideThickness,
    side: str = "Douglas fir-larch",
    main: str = "Douglas fir-larch",
    rounding: str = "printed",
) -> Lateral:
    """Z in lb of one wood screw through a wood side member into side grain.

    Example: No. 10 x 2-1/2 in., 1/2 in. side, Douglas fir-larch: 90 lb (Table 12L).

    Raises:
        OutsideLimits: less than 6 D in the main member, tip included; an unknown number or species.
    """
    hold(SIDE, l_s, SOURCE, "12.3.5")
    s = screw_size(number)
    F_es = wood_bearing(s.D, side, 0.0, rounding)
    return _screwed(s, L, l_s, wood_bearing(s.D, main, 0.0, rounding), F_es)


@procedure(
    "nds-2018/12M",
    title="Wood screw, steel side plate",
    clause="12.3.1 as in Table 12M",
    source=SOURCE,
    alias="nds.wood-screw-steel",
)
def wood_screw_steel_plate(
    number: str, L: ScrewLength, t_s: PlateThickness, main: str = "Douglas fir-larch", rounding: str = "printed"
) -> Lateral:
    """Z in lb of one wood screw through Grade 33 steel under 1/4 in. into side grain."""
    hold(PLATE, t_s, SOURCE, "Table 12M")
    s = screw_size(number)
    return _screwed(s, L, t_s, wood_bearing(s.D, main, 0.0, rounding), steel_bearing())


@equation(
    "nds-2018/12.3.5.3-lag",
    title="Bearing length of a lag screw in the main member",
    clause="12.3.5.3",
    source=SOURCE,
    witness="NDS 2018 Table 12J, 1/4 in., 1/2 in. side, 120 and 80 lb, read in github.com/rohreng/anderson-rohr-calcs",
)
def lag_bearing_length(
    p: Annotated[float, Q("in", "p", "penetration into the main member, tip included", above=0.0)],
    E: Annotated[float, Q("in", "E", "length of the tapered tip", at_least=0.0)],
) -> Annotated[float, Q("in", "l_m", "dowel bearing length in the main member")]:
    """l_m = p - E/2: half of the tapered tip bears nothing.

    Source: NDS 2018, 12.3.5.3(a), page 85, and Table L2, page 181, read by page in
    github.com/rohreng/anderson-rohr-calcs, docs/plans, NDS cross-check of the wood connection schedule.
    """
    return p - E / 2


@procedure(
    "nds-2018/12J",
    title="Lag screw, wood side member",
    clause="12.3.1 as in Table 12J",
    source=SOURCE,
    alias="nds.lag",
)
def lag_screw(
    size: str,
    L: ScrewLength,
    l_s: SideThickness,
    side: str = "Douglas fir-larch",
    main: str = "Douglas fir-larch",
    theta_m: Angle = 0.0,
    theta_s: Angle = 0.0,
    rounding: str = "printed",
) -> Lateral:
    """Z in lb of one lag screw ("1/4" to "1") through a wood side member into side grain.

    Where the nominal diameter is 1/4 in. or more and the root is less, the reduction term is K_D times K_θ (Table
    12.3.1B, note 1).

    Raises:
        OutsideLimits: less than 4 D in the main member without the tip; an unknown size or species.
    """
    hold(SIDE, l_s, SOURCE, "12.3.5")
    hold(ANGLE, theta_s, SOURCE, "12.3.4")
    D = _lag_diameter(size)
    F_es = wood_bearing(D, side, theta_s, rounding)
    theta = greatest(theta_m, theta_s, symbol="θ", label="the greater angle of load to grain")
    return _lagged(size, D, L, l_s, F_es, (main, theta_m, float(theta)), rounding)


@procedure(
    "nds-2018/12K",
    title="Lag screw, steel side plate",
    clause="12.3.1 as in Table 12K",
    source=SOURCE,
    alias="nds.lag-steel",
)
def lag_screw_steel_plate(
    size: str,
    L: ScrewLength,
    t_s: SideThickness,
    main: str = "Douglas fir-larch",
    theta: Angle = 0.0,
    steel: str = "A36, 1/4 in. and thicker",
    rounding: str = "printed",
) -> Lateral:
    """Z in lb of one lag screw ("1/4" to "1") through a steel plate of thickness ``t_s`` into side grain.

    The plate's own limits come apart. Example: 1/4 in. lag screw, 12 gage (0.105 in.), Douglas fir-larch, parallel:
    160 lb (Table 12K, lfportal.everettwa.gov/WebLink/0/doc/1831805/Page32.aspx).

    Raises:
        OutsideLimits: less than 4 D in the main member without the tip; an unknown size, species or steel.
    """
    hold(SIDE, t_s, SOURCE, "12.3.5")
    return _lagged(size, _lag_diameter(size), L, t_s, steel_bearing(steel), (main, theta, float(theta)), rounding)


def _lag_diameter(size: str) -> float:
    """The nominal diameter of a lag screw; a size that the table does not list is refused when its row is read."""
    return (
        given("D", _LAG_INCHES[size], "in", "nominal diameter")
        if size in _LAG_INCHES
        else table_l2().read(size, "E", "D")
    )


def _lagged(
    size: str, D: float, L: float, l_s: float, F_es: float, main: tuple[str, float, float], rounding: str
) -> Lateral:
    """The joint of a lag screw; ``main`` is the main member's species, its angle to the load, and the greater angle."""
    species, theta_m, theta = main
    hold(LENGTH, L, SOURCE, "12.1.4")
    hold(ANGLE, theta_m, SOURCE, "12.3.4")
    table = table_l2()
    D_r, E = table.read(size, "D_r", symbol="D_r"), table.read(size, "E", symbol="E")
    p = _penetration(L, l_s)
    _deep_enough(float(p) - float(E), 4.0, D, f"a {size} in. lag screw, tip not counted", "12.1.4.6")
    F_em = wood_bearing(D, species, theta_m, rounding)
    if float(D_r) < 0.25:
        R_d = scale(reduction_small_dowel(D_r), angle_factor(theta), symbol="R_d", label="K_D times K_θ")
        terms = (R_d, R_d, R_d)
    else:
        terms = reduction_terms(D_r, theta)
    F_yb = table_i1_bolts().read(_lag_row(size))
    return _joint(D_r, lag_bearing_length(p, E), l_s, F_em, F_es, F_yb, theta, terms)


def _screwed(s: Screw, L: float, l_s: float, F_em: float, F_es: float) -> Lateral:
    """A wood screw's joint."""
    hold(LENGTH, L, SOURCE, "12.1.5")
    p = _penetration(L, l_s)
    _deep_enough(p, 6.0, s.D, f"a {s.name} wood screw", "12.1.5.6")
    return _joint(s.D_r, bearing_length_tapered(p, s.D), l_s, F_em, F_es, s.F_yb, 0.0, reduction_terms(s.D_r, 0.0))


def _joint(
    D_r: float,
    l_m: float,
    l_s: float,
    F_em: float,
    F_es: float,
    F_yb: float,
    theta: float,
    terms: tuple[float, float, float],
) -> Lateral:
    modes = single_shear_modes(D_r, l_m, l_s, F_em, F_es, F_yb, terms)
    Z, mode = governing(modes, "Z")
    each = (modes["Im"], modes["Is"], modes["II"], modes["IIIm"], modes["IIIs"], modes["IV"])
    return Lateral(Z, mode, *each, D_r, l_m, l_s, F_em, F_es, F_yb, theta)


def _penetration(L: float, l_s: float) -> float:
    length = L if hasattr(L, "unit") else given("L", L, "in", LENGTH.what)
    side = l_s if hasattr(l_s, "unit") else given("l_s", l_s, "in", SIDE.what)
    return subtract(length, side, symbol="p", label="penetration")


def _deep_enough(p: float, diameters: float, D: float, what: str, clause: str) -> None:
    asked = diameters * float(D)
    if not float(p) >= asked:
        raise OutsideLimits(
            f"{SOURCE.cite(clause)}: p (penetration of {what}) = {float(p):.3g} in; "
            f"must be at least {diameters:g} D = {asked:.3g} in"
        )


def _lag_row(size: str) -> str:
    return f"lag screw, {size} in." if size in ("1/4", "5/16") else "lag screw, 3/8 in. and over"
