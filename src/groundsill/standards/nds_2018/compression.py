"""Compression of a post and of the sill under it: across the grain (3.10, 4.2.6) and along it (3.6, 3.7).

In: species, the bearing's length along the sill and how near the sill's end it stands, moisture; for a post its grade,
section and unbraced length. Out: F'_c⊥ and F'_c in psi, allowable stress. F_c⊥ stands for a crushing of 0.04 in. and
takes no load duration factor; F_c does. The design values are those of the Supplement for dimension lumber.
"""

from __future__ import annotations

from math import sqrt
from typing import Annotated

from groundsill.standards.nds_2018 import SOURCE
from groundsill.standards.nds_2018.adjustment import DRY, table_2_3_2
from groundsill.standards.nds_2018.symbols import hold
from groundsill.working.equation import Q, equation, procedure, require
from groundsill.working.steps import note
from groundsill.working.table import Table

__all__ = [
    "NEAR_END_IN",
    "adjusted_modulus",
    "adjusted_parallel",
    "adjusted_perpendicular",
    "bearing_area_factor",
    "bearing_factor",
    "column_stability",
    "column_value",
    "critical_buckling",
    "nominal_width",
    "of_dimension_lumber",
    "perpendicular_value",
    "post_value",
    "service_of",
    "size_factor",
    "table_4a_modulus",
    "table_4a_parallel",
    "table_4a_perpendicular",
    "table_4a_size",
    "table_4a_wet",
    "value_grade",
]

LONG_BEARING_IN = (
    6.0  # 3.10.4: a bearing so long, or nearer than 3 in. to an end, gains nothing from the wood beside it
)
NEAR_END_IN = 3.0
WIDEST_STUD_IN = 6.0  # Table 4A: stud grade wider than that goes by No. 3

THICKNESS = Q("in", "t", "thinner side of the piece; 5 in. nominal is a post or timber, of Table 4D", below=4.5)

BEARING_LENGTH = Q("in", "l_b", "length of the bearing along the grain", above=0.0)
TO_END = Q("in", "a_e", "from the bearing to the nearer end of the member", at_least=0.0)

Perpendicular = Annotated[float, Q("psi", "F_c⊥", "reference value across the grain", above=0.0)]
Parallel = Annotated[float, Q("psi", "F_c", "reference value along the grain", above=0.0)]
Modulus = Annotated[float, Q("psi", "E_min'", "adjusted modulus for stability", above=0.0)]
Buckling = Annotated[float, Q("psi", "F_cE", "critical buckling value", above=0.0)]
Unbuckled = Annotated[float, Q("psi", "F_c*", "value along the grain before stability", above=0.0)]
BearingLength = Annotated[float, BEARING_LENGTH]
ToEnd = Annotated[float, TO_END]
Length = Annotated[float, Q("in", "l_e", "effective length", at_least=0.0)]
Side = Annotated[float, Q("in", "d", "side of the section in the plane of buckling", above=0.0)]
Duration = Annotated[float, Q("1", "C_D", "load duration factor", above=0.0, at_most=2.0)]
Wet = Annotated[float, Q("1", "C_M", "wet service factor", above=0.0, at_most=1.0)]
Temperature = Annotated[float, Q("1", "C_t", "temperature factor", above=0.0, at_most=1.0)]
Incising = Annotated[float, Q("1", "C_i", "incising factor", above=0.0, at_most=1.0)]
BearingArea = Annotated[float, Q("1", "C_b", "bearing area factor", at_least=1.0)]
Size = Annotated[float, Q("1", "C_F", "size factor", above=0.0, at_most=1.2)]
Stability = Annotated[float, Q("1", "C_P", "column stability factor", at_least=0.0, at_most=1.0)]


def table_4a_perpendicular() -> Table:
    """Compression across the grain, F_c⊥, by species (Supplement, Tables 4A, 4B, 4D): the same for every grade here."""
    return Table.load(__package__, "tables/4a_perpendicular.toml")


def table_4a_parallel() -> Table:
    """Compression along the grain, F_c, by species and grade (Supplement, Table 4A)."""
    return Table.load(__package__, "tables/4a_parallel.toml")


def table_4a_modulus() -> Table:
    """Modulus for stability, E_min, by species and grade (Supplement, Table 4A)."""
    return Table.load(__package__, "tables/4a_modulus.toml")


def table_4a_wet() -> Table:
    """Wet service factors C_M (Supplement, Table 4A adjustments)."""
    return Table.load(__package__, "tables/4a_wet.toml")


def table_4a_size() -> Table:
    """Size factors C_F by nominal width (Supplement, Table 4A adjustments)."""
    return Table.load(__package__, "tables/4a_size.toml")


# ---- Across the grain -----------------------------------------------------------------------------------------------


@equation(
    "nds-2018/3.10-2",
    title="Bearing area factor",
    clause="3.10.4, Eq. 3.10-2",
    source=SOURCE,
    witness="calculatoratoz.com, Calc-4477: (0.003 + 0.375)/0.003 = 126",
    constants={0.375: "in", 6: "in"},
)
def bearing_area_factor(l_b: BearingLength) -> Annotated[float, Q("1", "C_b", "bearing area factor")]:
    """Three eighths of an inch of wood beside a short bearing helps it: (l_b + 0.375)/l_b, under 6 in.

    Source: web.mst.edu/jthomas/classes/5260/concept/06/08 (3/8 in. at the edge of contact, seen). Example: 1.5 in.:
    1.25 (our own arithmetic).
    """
    require(l_b < 6, "the bearing is shorter than 6 in.")
    return (l_b + 0.375) / l_b


@equation(
    "nds-2018/4.3.1-perpendicular",
    title="Adjusted value across the grain",
    clause="Table 4.3.1",
    source=SOURCE,
    witness="Residential Structural Design Guide, example 5.1: 405 psi",
)
def adjusted_perpendicular(
    F: Perpendicular, C_M: Wet, C_t: Temperature = 1.0, C_i: Incising = 1.0, C_b: BearingArea = 1.0
) -> Annotated[float, Q("psi", "F_c⊥'", "adjusted value across the grain")]:
    """F_c⊥ times C_M, C_t, C_i and C_b; no load duration factor, since it is a limit of deformation.

    Source: web.mst.edu/jthomas/classes/5260/concept/06/08 (factors that apply, and that C_D does not, seen). Example:
    Douglas fir-larch, dry, 2 in. long bearing in from the end: 625 x 1.1875 = 742 psi (our own arithmetic).
    """
    return F * C_M * C_t * C_i * C_b


@procedure(
    "nds-2018/3.10.4",
    title="Bearing area factor where it may be used",
    clause="3.10.4",
    source=SOURCE,
)
def bearing_factor(l_b: BearingLength, a_e: ToEnd) -> float:
    """C_b: 1 for a bearing of 6 in. or more, or one nearer than 3 in. to the member's end; else by its length."""
    hold(BEARING_LENGTH, l_b, SOURCE, "3.10.4")
    hold(TO_END, a_e, SOURCE, "3.10.4")
    if float(l_b) >= LONG_BEARING_IN or float(a_e) < NEAR_END_IN:
        note(
            f"C_b = 1: the bearing is 6 in. or longer, or nearer than 3 in. to the sill's end ({SOURCE.cite('3.10.4')})"
        )
        return 1.0
    return bearing_area_factor(l_b)


@procedure(
    "nds-2018/3.10.2",
    title="What a sill bears across the grain under a post",
    clause="3.10.2, 4.2.6",
    source=SOURCE,
    alias="nds.across-grain",
)
def perpendicular_value(species: str, l_b: BearingLength, a_e: ToEnd, moisture: str = DRY) -> float:
    """F'_c⊥ in psi under a post that covers ``l_b`` of the sill's length, ``a_e`` from the nearer end of the piece.

    Example: redwood, dry, a 2 in. stud in from the end: 425 x 1.1875 = 505 psi; damp: 338 psi (our own arithmetic).

    Raises:
        OutsideLimits: for a species that the table has no row for; the message lists the rows.
    """
    F = table_4a_perpendicular().read(species)
    C_M = table_4a_wet().read("F_c⊥", service_of(moisture))
    return adjusted_perpendicular(F, C_M, C_b=bearing_factor(l_b, a_e))


# ---- Along the grain ------------------------------------------------------------------------------------------------


@equation(
    "nds-2018/3.7.1-FcE",
    title="Critical buckling value of a column",
    clause="3.7.1.5",
    source=SOURCE,
    witness="wood council example E1.7, as held by github.com/xcfem/xc: 8,527,263 Pa, 1,236.8 psi",
)
def critical_buckling(E_min: Modulus, l_e: Length, d: Side) -> Annotated[float, Q("psi", "F_cE", "critical buckling")]:
    """0.822 E_min' over the slenderness squared; no column is more slender than 50.

    Source: woodengineering.substack.com, lesson 15 (seen). Example: 580,000 psi, 96 in. on 5.5 in.: 1,565 psi.
    """
    require(0 < l_e <= 50 * d, "slenderness l_e/d is at most 50 (3.7.1.4)")
    return 0.822 * E_min / (l_e / d) ** 2


@equation(
    "nds-2018/3.7-1",
    title="Column stability factor",
    clause="3.7.1.5, Eq. 3.7-1",
    source=SOURCE,
    witness="Residential Structural Design Guide, example 5.6, as held by github.com/xcfem/xc: 0.4378",
)
def column_stability(
    F_cE: Buckling, F_star: Unbuckled, c: Annotated[float, Q("1", "c", "0.8 for sawn lumber", above=0.0, at_most=1.0)]
) -> Annotated[float, Q("1", "C_P", "column stability factor", at_least=0.0, at_most=1.0)]:
    """The factor between crushing (1) and buckling (F_cE/F_c*), with c = 0.8 for sawn lumber.

    Source: woodengineering.substack.com, lesson 15 (seen; the sign before its root is misprinted there). Example:
    F_cE 1,565, F_c* 900 psi: 0.84.
    """
    r = F_cE / F_star
    return (1 + r) / (2 * c) - sqrt(((1 + r) / (2 * c)) ** 2 - r / c)


@equation(
    "nds-2018/4.3.1-parallel",
    title="Value along the grain before stability",
    clause="Table 4.3.1, 3.7.1.5",
    source=SOURCE,
    witness="wood council example E1.7, as held by github.com/xcfem/xc: 2,483.5 psi",
)
def adjusted_parallel(
    F_c: Parallel, C_D: Duration, C_M: Wet, C_F: Size, C_t: Temperature = 1.0, C_i: Incising = 1.0
) -> Annotated[float, Q("psi", "F_c*", "value along the grain before stability")]:
    """F_c with every factor but C_P. Example: 1,350 x 1.6 x 1.15 = 2,484 psi (our own arithmetic)."""
    return F_c * C_D * C_M * C_F * C_t * C_i


@equation(
    "nds-2018/3.7.1",
    title="Adjusted value along the grain",
    clause="3.7.1",
    source=SOURCE,
    witness="wood council example E1.7, as held by github.com/xcfem/xc: 1,073.4 psi",
)
def column_value(F_star: Unbuckled, C_P: Stability) -> Annotated[float, Q("psi", "F_c'", "adjusted, along the grain")]:
    """What is left of F_c* once the column may buckle. Example: 2,484 x 0.90 = 2,236 psi (our own arithmetic)."""
    return F_star * C_P


@procedure(
    "nds-2018/3.6.3",
    title="What a post in a sheathed wall carries along the grain",
    clause="3.6.3, 3.7.1, Appendix A.11.3",
    source=SOURCE,
    alias="nds.post",
)
def post_value(
    species: str, grade: str, depth: Side, l_e: Length, moisture: str = DRY, load: str = "wind or earthquake",
    along: Side | None = None,
) -> float:  # fmt: skip
    """F'_c in psi of a stud or post that sheathing holds in the plane of the wall, so that it buckles out of it alone.

    ``depth`` is its side across the wall, ``along`` that of one piece of it along the wall (None: no more than its
    depth), ``grade`` a column of the tables (``"No. 2"``). Example: Douglas fir-larch No. 3, 4 in. deep, 40 in. long:
    1,426 x 0.917 = 1,307 psi (our own arithmetic).

    Raises:
        OutsideLimits: for a species, grade or width that no table has, a post of 5 in. or more both ways, or a
            slenderness over 50.
    """
    wide = float(depth)
    if along is not None:
        of_dimension_lumber(min(wide, float(along)))
        wide = max(wide, float(along))
    row, C_F = value_grade(grade, wide), size_factor("F_c", grade, wide)
    C_D, service = table_2_3_2().read(load), service_of(moisture)
    C_M = table_4a_wet().read("F_c", service)
    F_star = adjusted_parallel(table_4a_parallel().read(species, row), C_D, C_M, C_F)
    if not float(l_e) > 0.0:
        return F_star
    E_min = adjusted_modulus(table_4a_modulus().read(species, row), table_4a_wet().read("E_min", service))
    return column_value(F_star, column_stability(critical_buckling(E_min, l_e, depth), F_star, 0.8))


@equation(
    "nds-2018/4.3.1-modulus",
    title="Adjusted modulus for stability",
    clause="Table 4.3.1",
    source=SOURCE,
    how="computed",
)
def adjusted_modulus(
    E_min: Annotated[float, Q("psi", "E_min", "reference modulus for stability", above=0.0)], C_M: Wet
) -> Annotated[float, Q("psi", "E_min'", "adjusted modulus for stability")]:
    """E_min times C_M. Example: 510,000 x 0.9 = 459,000 psi (our own arithmetic)."""
    return E_min * C_M


def service_of(moisture: str) -> str:
    """The column of the wet service table for words that the dowel table uses."""
    return "wet in service" if moisture == "wet in service" else "dry in service"


def nominal_width(actual_in: float) -> str:
    """The row of the size factors for an actual width: full-sawn and dressed lumber by the nominal width it has."""
    for widest in (4, 5, 6, 8, 10, 12):
        if actual_in <= widest:
            return f"to {widest} in."
    return "14 in. and wider"


def size_factor(value: str, grade: str, wide: float) -> float:
    """C_F of a design value (``"F_b"``, ``"F_t"``, ``"F_c"``) by the width of the wide face; studs have their own."""
    column = f"{value}, Stud" if grade == "Stud" else value
    return table_4a_size().read(nominal_width(wide), column)


def value_grade(grade: str, wide: float) -> str:
    """The column of the values: a wide piece of stud grade goes by No. 3, as its size factors do."""
    return "No. 3" if grade == "Stud" and wide > WIDEST_STUD_IN else grade


def of_dimension_lumber(thin: float) -> None:
    """Refuse a piece too thick for the tables of dimension lumber, nominal 2 to 4 in.

    Raises:
        OutsideLimits: for 5 in. nominal or more both ways, which Table 4D of the Supplement holds, not given here.
    """
    hold(THICKNESS, thin, SOURCE, "4.1.3, Table 4A")
