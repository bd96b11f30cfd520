"""A beam of dimension lumber held against rolling over: its moment and its shear, allowable stress (3.3, 3.4, 4.3).

In: species, grade, section, moisture, the load that lasts least long. Out: lb-in and lb.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.nds_2018 import SOURCE
from groundsill.standards.nds_2018.adjustment import DRY, table_2_3_2
from groundsill.standards.nds_2018.compression import service_of, size_factor, table_4a_wet, value_grade
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.table import Table

__all__ = [
    "Beam",
    "adjusted_bending",
    "adjusted_shear",
    "beam_moment",
    "beam_shear",
    "beam_values",
    "table_4a_bending",
    "table_4a_shear",
]

Bending = Annotated[float, Q("psi", "F_b", "reference value in bending", above=0.0)]
Shear = Annotated[float, Q("psi", "F_v", "reference value in shear along the grain", above=0.0)]
Duration = Annotated[float, Q("1", "C_D", "load duration factor", above=0.0, at_most=1.6)]
Wet = Annotated[float, Q("1", "C_M", "wet service factor", above=0.0, at_most=1.0)]
Size = Annotated[float, Q("1", "C_F", "size factor", above=0.0, at_most=1.5)]
Repeated = Annotated[float, Q("1", "C_r", "repetitive member factor", at_least=1.0, at_most=1.15)]
Breadth = Annotated[float, Q("in", "b", "breadth of the section", above=0.0)]
Depth = Annotated[float, Q("in", "d", "depth of the section", above=0.0)]


def table_4a_bending() -> Table:
    """Bending, F_b, by species and grade (Supplement, Table 4A)."""
    return Table.load(__package__, "tables/4a_bending.toml")


def table_4a_shear() -> Table:
    """Shear along the grain, F_v, by species (Supplement, Table 4A)."""
    return Table.load(__package__, "tables/4a_shear.toml")


@dataclass(frozen=True, slots=True)
class Beam:
    """What a beam carries: moment in lb-in, shear in lb."""

    moment: float
    shear: float


@equation(
    "nds-2018/4.3.1-bending",
    title="Adjusted value in bending",
    clause="Table 4.3.1",
    source=SOURCE,
    witness="Residential Structural Design Guide, example 5.1, as held by github.com/xcfem/xc: 1,345 psi",
)
def adjusted_bending(
    F_b: Bending, C_D: Duration, C_M: Wet, C_F: Size, C_r: Repeated = 1.0
) -> Annotated[float, Q("psi", "F_b'", "adjusted value in bending")]:
    """F_b with its factors, C_L being 1: the compressed edge is held. Example: 975 x 1.0 x 1.2 x 1.15 = 1,345 psi."""
    return F_b * C_D * C_M * C_F * C_r


@equation(
    "nds-2018/4.3.1-shear", title="Adjusted value in shear", clause="Table 4.3.1", source=SOURCE, how="from memory"
)
def adjusted_shear(
    F_v: Shear, C_D: Duration, C_M: Wet
) -> Annotated[float, Q("psi", "F_v'", "adjusted value in shear")]:
    """F_v with load duration and wet service. Example: 180 x 1.6 = 288 psi (our own arithmetic)."""
    return F_v * C_D * C_M


@equation(
    "nds-2018/3.3-2", title="Moment that a rectangle carries", clause="3.3.2, Eq. 3.3-2", source=SOURCE, how="computed"
)
def beam_moment(
    F_b: Annotated[float, Q("psi", "F_b'", "adjusted value in bending", above=0.0)], b: Breadth, d: Depth
) -> Annotated[float, Q("lb-in", "M'", "moment carried")]:
    """F_b' b d^2/6. Example: 1,000 psi, 2 by 8 in.: 21,333 lb-in (our own arithmetic)."""
    return F_b * b * d**2 / 6


@equation(
    "nds-2018/3.4-2", title="Shear that a rectangle carries", clause="3.4.2, Eq. 3.4-2", source=SOURCE, how="computed"
)
def beam_shear(
    F_v: Annotated[float, Q("psi", "F_v'", "adjusted value in shear", above=0.0)], b: Breadth, d: Depth
) -> Annotated[float, Q("lb", "V'", "shear carried")]:
    """Two thirds of F_v' over the section. Example: 288 psi, 2 by 8 in.: 3,072 lb (our own arithmetic)."""
    return 2 / 3 * F_v * b * d


@procedure(
    "nds-2018/3.3-beam",
    title="What a beam held against rolling over carries",
    clause="3.3, 3.4, 4.3",
    source=SOURCE,
    alias="nds.beam",
)
def beam_values(
    species: str, grade: str, b: Breadth, d: Depth, moisture: str = DRY, load: str = "wind or earthquake"
) -> Beam:
    """Moment and shear of one piece of dimension lumber on edge.

    Raises:
        OutsideLimits: for a species or grade that the tables do not hold.
    """
    C_D, service = table_2_3_2().read(load), service_of(moisture)
    C_F, row = size_factor("F_b", grade, float(d)), value_grade(grade, float(d))
    F_b = adjusted_bending(table_4a_bending().read(species, row), C_D, table_4a_wet().read("F_b", service), C_F)
    F_v = adjusted_shear(table_4a_shear().read(species), C_D, table_4a_wet().read("F_v", service))
    return Beam(beam_moment(F_b, b, d), beam_shear(F_v, b, d))
