"""What bears on the dowel: dowel bearing strength of wood, steel and concrete (12.3.3 to 12.3.5), and G by species.

In: diameter, species, angle of load to grain. Out: F_e in psi. The printed Table 12.3.3 rounds to the nearest 50 psi
before anything else is worked out, and its lateral tables only come out digit for digit that way; so rounding is the
default here and has a name: ``rounding="printed"``, against ``"exact"``.
"""

from __future__ import annotations

from math import cos, floor, radians, sin, sqrt
from typing import Annotated

from groundsill.standards.nds_2018 import SOURCE
from groundsill.standards.nds_2018.symbols import Angle, BoltDiameter, Diameter, Gravity
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import given
from groundsill.working.table import Table
from groundsill.working.value import marks_of

__all__ = [
    "bearing_at_angle",
    "bearing_cold_formed_steel",
    "bearing_hot_rolled_steel",
    "bearing_parallel",
    "bearing_perpendicular",
    "bearing_small_dowel",
    "concrete_bearing",
    "specific_gravity",
    "steel_bearing",
    "table_12_3_3a",
    "table_12_3_3b",
    "table_concrete_bearing",
    "table_steel_bearing",
    "wood_bearing",
]

SMALL_DOWEL_IN = 0.25  # below it the bearing strength has no direction and the reduction term is K_D

Bearing = Annotated[float, Q("psi", "F_e", "dowel bearing strength")]
BearingParallel = Annotated[float, Q("psi", "F_e∥", "dowel bearing strength parallel to grain", above=0.0)]
BearingPerpendicular = Annotated[float, Q("psi", "F_e⊥", "dowel bearing strength perpendicular to grain", above=0.0)]
Tensile = Annotated[float, Q("psi", "F_u", "tensile strength of the steel", above=0.0)]


def table_12_3_3a() -> Table:
    """Specific gravity by species combination (Table 12.3.3A)."""
    return Table.load(__package__, "tables/12_3_3a.toml")


def table_12_3_3b() -> Table:
    """Specific gravity that stands for a wood structural panel (Table 12.3.3B)."""
    return Table.load(__package__, "tables/12_3_3b.toml")


def table_concrete_bearing() -> Table:
    """Dowel bearing strength of concrete, as the anchor bolt table assumes it (Table 12E notes)."""
    return Table.load(__package__, "tables/concrete_bearing.toml")


def table_steel_bearing() -> Table:
    """Dowel bearing strength of the steels that the side-plate tables assume (Tables 12B, 12P notes)."""
    return Table.load(__package__, "tables/steel_bearing.toml")


@equation(
    "nds-2018/12.3.3-parallel",
    title="Dowel bearing strength parallel to grain, D at least 1/4 in.",
    clause="Table 12.3.3, note 2",
    source=SOURCE,
    witness="github.com/willysw/wsweng, notebook s1, 3/4 in. bolt in double shear along the grain, 1316.7 lb",
    constants={11200: "psi"},
)
def bearing_parallel(G: Gravity) -> Annotated[float, Q("psi", "F_e∥", "dowel bearing strength parallel to grain")]:
    """F_e∥ = 11,200 G for dowels of 1/4 in. and over; it does not depend on the diameter.

    Source: formula as taught from NDS Table 12.3.3, web.mst.edu/jthomas/classes/5260/concept/13/03/index.html (seen).
    Example: Douglas fir-larch, G = 0.50: 5,600 psi (our own arithmetic).
    """
    return 11200 * G


@equation(
    "nds-2018/12.3.3-perpendicular",
    title="Dowel bearing strength perpendicular to grain, D at least 1/4 in.",
    clause="Table 12.3.3, note 2",
    source=SOURCE,
    witness="github.com/willysw/wsweng, notebook s1, 3/4 in. bolt in double shear across the grain, 484.9 lb",
    constants={6100: "psi*in^0.5"},
)
def bearing_perpendicular(
    G: Gravity, D: BoltDiameter
) -> Annotated[float, Q("psi", "F_e⊥", "dowel bearing strength perpendicular to grain")]:
    """F_e⊥ = 6,100 G^1.45 / sqrt(D) for dowels of 1/4 to 1 in.

    Source: as for the value parallel to grain (seen). Some public code raises G to 1.84 here: that exponent belongs
    to small dowels. Example: G = 0.50, D = 1/2 in.: 3,158 psi, which the table prints as 3,150 (our own arithmetic).
    """
    return 6100 * G**1.45 / sqrt(D)  # type: ignore[no-any-return]  # float to a float power is Any


@equation(
    "nds-2018/12.3.3-small",
    title="Dowel bearing strength, D under 1/4 in.",
    clause="Table 12.3.3, note 2",
    source=SOURCE,
    witness="github.com/xcfem/xc, lateral_design_value_test_01: 467.49 N by 4,637 psi in both members",
    constants={16600: "psi"},
)
def bearing_small_dowel(G: Gravity) -> Annotated[float, Q("psi", "F_e", "dowel bearing strength of a small dowel")]:
    """F_e = 16,600 G^1.84 in every direction of the grain, for nails and screws under 1/4 in.

    Source: github.com/xcfem/xc, awc_nds wood materials (seen there); it reproduces the wood council's solved nail.
    Example: G = 0.50: 4,637 psi, which the table prints as 4,650 (our own arithmetic).
    """
    return 16600 * G**1.84  # type: ignore[no-any-return]  # float to a float power is Any


@equation(
    "nds-2018/12.3-11",
    title="Dowel bearing strength at an angle to the grain",
    clause="12.3.4, Eq. 12.3-11",
    source=SOURCE,
)
def bearing_at_angle(
    F_parallel: BearingParallel, F_perpendicular: BearingPerpendicular, theta: Angle
) -> Annotated[float, Q("psi", "F_eθ", "dowel bearing strength at the angle of load to grain")]:
    """Hankinson's formula between the two strengths; its ends are the two strengths themselves.

    Source: web.mst.edu/jthomas/classes/5260/concept/13/03/index.html (seen), and Appendix J of the document.
    Example: 5,600 and 3,150 psi at 45 degrees: 4,032 psi (our own arithmetic).
    """
    s = sin(radians(theta)) ** 2
    c = cos(radians(theta)) ** 2
    return F_parallel * F_perpendicular / (F_parallel * s + F_perpendicular * c)


@equation(
    "nds-2018/I-hot-rolled",
    title="Dowel bearing strength of hot-rolled steel, 1/4 in. and thicker",
    clause="Appendix I.2",
    source=SOURCE,
    witness="github.com/willysw/wsweng, notebook s1, A36 side plates, fe_side = 87000",
)
def bearing_hot_rolled_steel(
    F_u: Tensile, t: Annotated[float, Q("in", "t", "thickness of the steel", at_least=0.25)]
) -> Annotated[float, Q("psi", "F_e", "dowel bearing strength of the steel")]:
    """1.5 F_u, that is 2.4 F_u brought to the wood standard's base by 1.6.

    Source: web.mst.edu/jthomas/classes/5260/concept/13/03/index.html (seen). Example: A36, F_u 58,000: 87,000 psi.
    """
    return 2.4 * F_u / 1.6


@equation(
    "nds-2018/I-cold-formed",
    title="Dowel bearing strength of cold-formed steel, under 1/4 in.",
    clause="Appendix I.2",
    source=SOURCE,
    witness="github.com/willysw/wsweng, notebook s1, Breyer example 12.4, fes = 61850 for 12 gage",
)
def bearing_cold_formed_steel(
    F_u: Tensile, t: Annotated[float, Q("in", "t", "thickness of the steel", above=0.0, below=0.25)]
) -> Annotated[float, Q("psi", "F_e", "dowel bearing strength of the steel")]:
    """1.375 F_u, that is 2.2 F_u brought to the wood standard's base by 1.6.

    Source: web.mst.edu/jthomas/classes/5260/concept/13/03/index.html (seen). Example: A653 Grade 33, F_u 45,000:
    61,875 psi; the printed tables work with 61,850.
    """
    return 2.2 * F_u / 1.6


@procedure(
    "nds-2018/12.3.3A",
    title="Specific gravity of a species or of a panel",
    clause="Tables 12.3.3A and 12.3.3B",
    source=SOURCE,
)
def specific_gravity(species: str) -> float:
    """G of a species combination or of a wood structural panel, by its row in the printed tables.

    Raises:
        OutsideLimits: for a species that neither table names; the message lists those they do.
    """
    woods, panels = table_12_3_3a(), table_12_3_3b()
    if species in panels.rows:
        return panels.read(species)
    if species not in woods.rows:
        named = ", ".join((*woods.rows, *panels.rows))
        raise OutsideLimits(
            f"{SOURCE.cite('Tables 12.3.3A, 12.3.3B')}: no species or panel {species!r}; they name {named}"
        )
    return woods.read(species)


@procedure(
    "nds-2018/12.3.3",
    title="Dowel bearing strength of wood",
    clause="12.3.3, 12.3.4",
    source=SOURCE,
    alias="nds.wood-bearing",
)
def wood_bearing(D: Diameter, species: str, theta: Angle = 0.0, rounding: str = "printed") -> float:
    """F_e in psi of a species under a dowel at an angle to the grain.

    Under 1/4 in. the angle makes no difference. ``rounding`` is ``"printed"`` (to the nearest 50 psi before Hankinson,
    as Table 12.3.3 prints) or ``"exact"``. A panel's value stands for fasteners up to 1/4 in. (12.3.3.2, as read for
    2024 in github.com/mckayreedmoore/mini-moonboard; for 2018 recalled).
    """
    if rounding not in ("printed", "exact"):
        raise OutsideLimits(f"{SOURCE.cite('Table 12.3.3')}: rounding {rounding!r} is not printed or exact")
    G = specific_gravity(species)
    if species in table_12_3_3b().rows and float(D) > SMALL_DOWEL_IN:
        raise OutsideLimits(
            f"{SOURCE.cite('12.3.3.2')}: D (fastener diameter) = {float(D):g} in in a wood structural panel; "
            f"must be at most {SMALL_DOWEL_IN:g} in"
        )
    if float(D) < SMALL_DOWEL_IN:
        return _printed(bearing_small_dowel(G), "F_e", rounding)
    if float(theta) == 90.0:
        return _printed(bearing_perpendicular(G, D), "F_e⊥", rounding)
    parallel = _printed(bearing_parallel(G), "F_e∥", rounding)
    if float(theta) == 0.0:
        return parallel
    return bearing_at_angle(parallel, _printed(bearing_perpendicular(G, D), "F_e⊥", rounding), theta)


def _printed(strength: float, symbol: str, rounding: str) -> float:
    if rounding == "exact":
        return strength
    to_50 = 50.0 * floor(float(strength) / 50.0 + 0.5)
    return given(symbol, to_50, "psi", "to the nearest 50 psi, as Table 12.3.3 prints it", marks_of((strength,)))


@procedure(
    "nds-2018/12E-concrete",
    title="Dowel bearing strength of concrete",
    clause="Table 12E, notes",
    source=SOURCE,
)
def concrete_bearing(f_c: Annotated[float, Q("psi", "f'_c", "concrete strength", at_least=2500.0)] = 2500.0) -> float:
    """7,500 psi for concrete of 2,500 psi and over; the document gives nothing for weaker concrete.

    Raises:
        OutsideLimits: under 2,500 psi, naming the extension that gives an indicated value instead.
    """
    if not float(f_c) >= 2500.0:
        raise OutsideLimits(
            f"{SOURCE.cite('Table 12E')}: f'_c (concrete strength) = {float(f_c):g} psi; must be at least 2500 psi. "
            "The document gives no bearing strength for weaker concrete; nds.sill-bolt-weak-concrete is an extension"
        )
    return table_concrete_bearing().read("f'c at least 2500 psi")


@procedure(
    "nds-2018/12P-steel",
    title="Dowel bearing strength of a steel side plate",
    clause="Tables 12B, 12P, notes",
    source=SOURCE,
)
def steel_bearing(steel: str = "A653 Grade 33, under 1/4 in.") -> float:
    """F_e in psi of the steels that the printed side-plate tables are made for, by row."""
    return table_steel_bearing().read(steel)
