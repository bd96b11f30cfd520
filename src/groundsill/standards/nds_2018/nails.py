"""Nails: sizes, bending strength, how deep they must go, wood and steel side members, toenails (12.1.6, 12.3, 12.5.4).

In: a nail by its trade name, the side member's thickness, the species. Out: the reference lateral value of one nail,
with the penetration it was worked out for. A nail that reaches less than ten diameters into the main member is worth
less; the document gives two ways to say how much, and both are here under names: ``penetration_rule="tables"`` (the
value at ten diameters times p/10D, the printed tables' footnote) and ``"equations"`` (the yield modes with the shorter
bearing length). Less than six diameters is not a connection.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians
from typing import Annotated

from groundsill.standards.nds_2018 import SOURCE
from groundsill.standards.nds_2018.bearing import steel_bearing, wood_bearing
from groundsill.standards.nds_2018.shear import Lateral, single_shear
from groundsill.standards.nds_2018.symbols import Diameter, NailLength, Penetration, hold
from groundsill.working.equation import Q, equation, procedure, require
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import given, least, scale, subtract
from groundsill.working.table import Table

__all__ = [
    "Nail",
    "NailLateral",
    "bearing_length_tapered",
    "nail",
    "nail_size",
    "nail_steel_plate",
    "nail_yield_strength",
    "penetration_factor",
    "table_12p_gauge",
    "table_i1_nails",
    "table_l4",
    "toenail",
    "toenail_length_inside",
    "toenail_penetration",
    "toenail_side_length",
]

DEEP_IN = 1000.0  # a main member so deep that no nail comes out behind: the thickness when nobody gives one

SIDE = Q("in", "l_s", "thickness of the side member", above=0.0)
MAIN = Q("in", "t_m", "thickness of the main member", above=0.0)
PLATE = Q("in", "t_s", "thickness of the steel side plate", above=0.0, below=0.25)

SideThickness = Annotated[float, SIDE]
MainThickness = Annotated[float, MAIN]
PlateThickness = Annotated[float, PLATE]


@dataclass(frozen=True, slots=True)
class Nail:
    """A nail as bought: diameter and length in inches, bending yield strength in psi."""

    name: str
    D: float
    L: float
    F_yb: float


@dataclass(frozen=True, slots=True)
class NailLateral:
    """One nail in shear: the reference value ``Z`` in lb (penetration counted, toenail factor not), its governing mode,
    the penetration ``p`` in inches, the table's penetration factor ``C_p`` (1 when it does not apply), and the joint.
    """

    Z: float
    mode: str
    p: float
    C_p: float
    joint: Lateral


def table_l4() -> Table:
    """Nail sizes (Appendix L, Table L4): diameter and length."""
    return Table.load(__package__, "tables/l4_nails.toml")


def table_i1_nails() -> Table:
    """Bending yield strength of nails by diameter (Appendix I, Table I1)."""
    return Table.load(__package__, "tables/i1_nails.toml")


def table_12p_gauge() -> Table:
    """Thickness of steel side plates by gauge, as Table 12P lists them."""
    return Table.load(__package__, "tables/12p_gauge.toml")


@procedure(
    "nds-2018/I1-nail",
    title="Bending yield strength of a nail",
    clause="Table I1",
    source=SOURCE,
)
def nail_yield_strength(D: Diameter) -> float:
    """F_yb in psi by the nail's diameter: the thinner the wire, the harder it was drawn.

    Raises:
        OutsideLimits: for a diameter outside the table's bands.
    """
    table = table_i1_nails()
    number = float(D)
    bands = {row: (float(cells[0]), float(cells[1])) for row, cells in table.rows.items()}
    first, last = min(low for low, _ in bands.values()), max(high for _, high in bands.values())
    for row, (low, high) in bands.items():
        if low < number <= high or number == low == first:
            return table.read(row, "F_yb")
    raise OutsideLimits(
        f"{table.cite}: D (nail diameter) = {number:g} in; the table runs from {first:g} to {last:g} in."
    )


@procedure(
    "nds-2018/L4",
    title="Nail by its trade name",
    clause="Tables L4 and I1",
    source=SOURCE,
)
def nail_size(name: str) -> Nail:
    """Diameter, length and bending strength of a standard nail ("8d common", "16d sinker", "10d box").

    Raises:
        OutsideLimits: for a nail that the table does not list; the message lists those it does.
    """
    table = table_l4()
    D = table.read(name, "D", symbol="D")
    return Nail(name, D, table.read(name, "L", symbol="L"), nail_yield_strength(D))


@equation(
    "nds-2018/12N-penetration",
    title="Penetration factor of the nail tables",
    clause="Table 12N, note 3; 12.1.6.4",
    source=SOURCE,
    witness="seaintarchive.org 2009c msg00914: 16d common, 1-1/4 in., 141 x 1.6 x 1.25/1.62 = 174 lb",
)
def penetration_factor(
    p: Penetration, D: Diameter
) -> Annotated[float, Q("1", "C_p", "penetration factor of the nail tables")]:
    """p/10D, at most 1; less than 6D is refused. The 2005 edition printed the same two limits.

    Source: seaintarchive.org/mailarchive/2009c/msg00914.html (seen: 6D = 0.972, 10D = 1.62 in. for a 16d common).
    """
    require(p >= 6 * D, "a nail must reach at least 6 D into the main member")
    return min(1, p / (10 * D))


@equation(
    "nds-2018/12.3.5.3",
    title="Bearing length of a driven fastener in the main member",
    clause="12.3.5.3",
    source=SOURCE,
)
def bearing_length_tapered(
    p: Penetration, D: Diameter
) -> Annotated[float, Q("in", "l_m", "dowel bearing length in the main member")]:
    """Half of the tapered tip, which is two diameters long, bears nothing: l_m = p - E/2, E = 2 D.

    Source: NDS 2018, 12.3.5.3(b), page 85, and note 2 of Table L4, page 182, read by page in
    github.com/rohreng/anderson-rohr-calcs, docs/plans, NDS cross-check of the wood connection schedule.
    """
    E = 2 * D
    return p - E / 2


@procedure(
    "nds-2018/12N",
    title="Nail, wood side member",
    clause="12.3.1 as in Table 12N",
    source=SOURCE,
    alias="nds.nail",
)
def nail(
    nail: str,
    l_s: SideThickness,
    side: str = "Douglas fir-larch",
    main: str = "Douglas fir-larch",
    t_m: MainThickness = DEEP_IN,
    penetration_rule: str = "tables",
    rounding: str = "printed",
) -> NailLateral:
    """Z in lb of one nail driven through a wood or panel side member square into a main member's side grain.

    ``t_m`` limits the penetration where the nail could come out behind. Example: 16d common, 1-1/2 in. Douglas fir:
    141 lb (seen, seaintarchive.org 2009c msg00914).

    Raises:
        OutsideLimits: less than 6 D in the main member; an unknown nail, species or rule.
    """
    hold(SIDE, l_s, SOURCE, "12.3.5")
    n = nail_size(nail)
    p = _reach(subtract(n.L, _length("l_s", l_s, SIDE.what), symbol="p", label="penetration"), t_m)
    F_em, F_es = wood_bearing(n.D, main, 0.0, rounding), wood_bearing(n.D, side, 0.0, rounding)
    _reaches(n, p)
    return _driven(n, p, l_s, F_em, F_es, penetration_rule)


@procedure(
    "nds-2018/12P",
    title="Nail, steel side plate",
    clause="12.3.1 as in Table 12P",
    source=SOURCE,
    alias="nds.nail-steel",
)
def nail_steel_plate(
    nail: str,
    t_s: PlateThickness,
    main: str = "Douglas fir-larch",
    t_m: MainThickness = DEEP_IN,
    penetration_rule: str = "tables",
    rounding: str = "printed",
) -> NailLateral:
    """Z in lb of one nail through a strap, clip or plate of Grade 33 steel under 1/4 in. into side grain.

    The bearing length in the side member is the steel's own thickness. Example: 8d common, 20 gage (0.036 in.),
    Douglas fir: 94 lb, mode IIIs (our own arithmetic).
    """
    hold(PLATE, t_s, SOURCE, "Table 12P")
    n = nail_size(nail)
    p = _reach(subtract(n.L, _length("t_s", t_s, PLATE.what), symbol="p", label="penetration"), t_m)
    _reaches(n, p)
    return _driven(n, p, t_s, wood_bearing(n.D, main, 0.0, rounding), steel_bearing(), penetration_rule)


@equation(
    "nds-2018/12.3.10.2",
    title="Side member length of a toenail",
    clause="12.3.10.2",
    source=SOURCE,
    witness="toenail cases worked by hand in github.com/rohreng/anderson-rohr-calcs: 1.1667, 1.3317, 1.5377 in.",
)
def toenail_side_length(
    L: NailLength, t_s: SideThickness
) -> Annotated[float, Q("in", "l_s", "side member length of a toenail")]:
    """One third of the nail's length, for it is started that far from the member's end; no more than the member.

    Source: NDS 2018, 12.3.10.2, page 88, read by page in github.com/rohreng/anderson-rohr-calcs, docs/plans, NDS
    cross-check of the wood connection schedule.
    """
    return min(L / 3, t_s)


@equation(
    "nds-2018/C12.5.4-1",
    title="Penetration of a toenail, square to the joint",
    clause="Commentary C12.5.4, Eq. C12.5.4-1",
    source=SOURCE,
    witness="toenail cases worked by hand in github.com/rohreng/anderson-rohr-calcs: 1.1667, 1.3317, 1.5377 in.",
)
def toenail_penetration(L: NailLength) -> Annotated[float, Q("in", "p_L", "penetration of a toenail, square to joint")]:
    """What a nail at 30 degrees to the member reaches beyond it, measured square to the joint.

    Source: NDS 2018 Commentary, C12.5.4, page 266, read by page in github.com/rohreng/anderson-rohr-calcs, docs/plans,
    final verification of the wood connection schedule.
    """
    return L * cos(radians(30)) - L / 3


@equation(
    "nds-2018/C12.5.4-2",
    title="Length of a toenail in the main member",
    clause="Commentary C12.5.4, Eq. C12.5.4-2",
    source=SOURCE,
    witness="toenail cases worked by hand in github.com/rohreng/anderson-rohr-calcs: 1.1667, 1.3317, 1.5377 in.",
)
def toenail_length_inside(L: NailLength) -> Annotated[float, Q("in", "p_t", "length of a toenail in the main member")]:
    """The nail itself inside the main member, along its slope: what resists withdrawal, and what 6 D is asked of.

    Source: NDS 2018 Commentary, C12.5.4, page 266, read by page in github.com/rohreng/anderson-rohr-calcs, docs/plans,
    final verification of the wood connection schedule.
    """
    return L - L / (3 * cos(radians(30)))


@procedure(
    "nds-2018/12.5.4-toenail",
    title="Toenail, wood to wood",
    clause="12.1.6.3, 12.3.10.2, 12.5.4",
    source=SOURCE,
    alias="nds.toenail",
)
def toenail(
    nail: str,
    side: str = "Douglas fir-larch",
    main: str = "Douglas fir-larch",
    t_s: SideThickness = DEEP_IN,
    t_m: MainThickness = DEEP_IN,
    penetration_rule: str = "tables",
    rounding: str = "printed",
) -> NailLateral:
    """Z in lb of one toenail *before* the toenail factor: give ``driven="toenail, lateral"`` to the adjusted value.

    Driven at about 30 degrees, started a third of its length from the end of the side member (a joist or stud, of
    thickness ``t_s``) into the main member (the plate, ``t_m`` deep). Example: 8d common: side length 0.833 in.,
    penetration 1.332 in. square to the joint, 1.538 in. along the nail (our own arithmetic).
    """
    for q, thickness in ((SIDE, t_s), (MAIN, t_m)):
        hold(q, thickness, SOURCE, "12.3.5")
    n = nail_size(nail)
    _reaches(n, toenail_length_inside(n.L))
    p = _reach(toenail_penetration(n.L), t_m)
    F_em, F_es = wood_bearing(n.D, main, 0.0, rounding), wood_bearing(n.D, side, 0.0, rounding)
    l_s = toenail_side_length(n.L, t_s)
    return _driven(n, p, l_s, F_em, F_es, penetration_rule, tapered=False)


def _length(symbol: str, value: float, what: str) -> float:
    """A length as it stands on the sheet: recorded already, or taken as given."""
    return value if hasattr(value, "unit") else given(symbol, value, "in", what)


def _reach(p: float, t_m: float) -> float:
    """The penetration that counts: no more than the main member is thick."""
    if float(t_m) == DEEP_IN:
        return p
    hold(MAIN, t_m, SOURCE, "12.3.5")
    return least(p, _length("t_m", t_m, MAIN.what), symbol="p", label="penetration, no more than the member is thick")


def _reaches(n: Nail, p: float) -> None:
    """Refuse a nail that does not go six diameters into the main member."""
    if float(p) < 6.0 * float(n.D):
        raise OutsideLimits(
            f"{SOURCE.cite('12.1.6.4')}: p (penetration of a {n.name} nail) = {float(p):.3g} in; "
            f"must be at least 6 D = {6.0 * float(n.D):.3g} in"
        )


def _driven(n: Nail, p: float, l_s: float, F_em: float, F_es: float, rule: str, tapered: bool = True) -> NailLateral:
    """The joint of one nail, by either way of counting a penetration of less than ten diameters.

    ``tapered`` takes half the tip off the bearing length; a toenail's length is already measured another way.
    """
    if rule not in ("tables", "equations"):
        raise OutsideLimits(f"{SOURCE.cite('Table 12N')}: penetration rule {rule!r} is not tables or equations")
    by_table = rule == "tables" and float(p) < 10.0 * float(n.D)
    reach = scale(n.D, 10.0, symbol="10D", label="penetration the tables assume") if by_table else p
    l_m = bearing_length_tapered(reach, n.D) if tapered else reach
    joint = single_shear(n.D, l_m, l_s, F_em, F_es, n.F_yb)
    if not by_table:
        return NailLateral(joint.Z, joint.mode, p, 1.0, joint)
    C_p = penetration_factor(p, n.D)
    return NailLateral(scale(joint.Z, C_p, symbol="Z", label="penetration counted"), joint.mode, p, C_p, joint)
