"""ASCE 7-16 sections 12.2, 12.3.4, 12.8.6 and 12.12: the system's factors, redundancy, and drift.

In: which system braces the house, its category, plan and heights. Out: R, Omega_0, C_d; rho with its reason; design
drift and what is allowed. Which system an old house *is* is a judgement: the caller chooses and prints it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.asce7_16 import SOURCE
from groundsill.standards.asce7_16.symbols import Category, Importance
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.source import Source
from groundsill.working.steps import condition, note
from groundsill.working.table import Table

__all__ = [
    "SystemFactors",
    "allowable_drift",
    "boards_beside",
    "design_drift",
    "light_frame_bays",
    "overstrength_flexible",
    "redundancy",
    "redundancy_by",
    "system_factors",
    "table_12_2_1",
    "table_12_3_3_4",
    "table_12_3_4",
    "table_12_12_1",
]


def table_12_2_1() -> Table:
    """R, Omega_0, C_d and height limits of the light-frame systems an old house can be."""
    return Table.load(__package__, "tables/12_2_1.toml")


def table_12_3_3_4() -> Table:
    """How much more floor ties and collectors are asked where a house is irregular in plan, by category."""
    return Table.load(__package__, "tables/12_3_3_4.toml")


def table_12_3_4() -> Table:
    """The redundancy factor by seismic design category, before the exceptions of 12.3.4.2."""
    return Table.load(__package__, "tables/12_3_4.toml")


def table_12_12_1() -> Table:
    """Allowable story drift as a share of story height, by structure and risk category."""
    return Table.load(__package__, "tables/12_12_1.toml")


@dataclass(frozen=True, slots=True)
class SystemFactors:
    """The row of Table 12.2-1 that was chosen, and its three factors."""

    system: str
    R: float
    Omega_0: float
    C_d: float


@procedure(
    "asce7-16/12.2.1",
    title="Factors of the seismic force-resisting system",
    clause="Table 12.2-1",
    source=SOURCE,
    alias="asce7.system",
)
def system_factors(system: str) -> SystemFactors:
    """R, Omega_0 and C_d of a row of Table 12.2-1, named by its item (``A.15``) or by the row's whole name.

    Raises:
        OutsideLimits: when there is no such row; the message lists those there are.
    """
    table = table_12_2_1()
    row = next((key for key in table.rows if key.split()[0] == system), system)
    R = table.read(row, "R", "R")
    return SystemFactors(row, R, table.read(row, "Omega_0", "Omega_0"), table.read(row, "C_d", "C_d"))


def boards_beside(system: str, table: Table | None = None) -> tuple[str, float] | None:
    """The row for the same walls braced by boards, plaster or anything but wood panels, and its R; None where the
    system is that row. Read for words only: nothing is worked out by it, so nothing is recorded.
    """
    table = table_12_2_1() if table is None else table
    frame = _frame(system)
    row = next((row for row in table.rows if _frame(row) == frame and row.endswith("all other materials")), None)
    if row is None or row == system:
        return None
    return row, float(table.rows[row][table.columns.index("R")])


def _frame(row: str) -> str:
    """What carries the house in a row: ``bearing walls``; the item before it (``A.15``) left out."""
    head, _, rest = row.partition(",")[0].partition(" ")
    return rest if "." in head else f"{head} {rest}"


@equation(
    "asce7-16/12.2-1-flexible",
    title="Overstrength factor with flexible diaphragms",
    clause="Table 12.2-1, footnote on Omega_0",
    source=SOURCE,
    how="from memory",
)
def overstrength_flexible(
    Omega_0: Annotated[float, Q("1", "Omega_0", "tabulated overstrength factor", at_least=2.5)],
) -> Annotated[float, Q("1", "Omega_0", "overstrength factor with flexible diaphragms")]:
    """With flexible diaphragms a tabulated factor of 2.5 or more may be less by one half.

    Recalled. Example (our arithmetic): 3 gives 2.5.
    """
    return Omega_0 - 0.5


@equation(
    "asce7-16/12.3.4.2-bays",
    title="Bays of a light-frame shear wall line",
    clause="12.3.4.2(b)",
    source=SOURCE,
)
def light_frame_bays(
    L: Annotated[float, Q("ft", "L", "length of shear wall in the line", at_least=0.0)],
    h_sx: Annotated[float, Q("ft", "h_sx", "story height", above=0.0)],
) -> Annotated[float, Q("1", "n_b", "number of bays")]:
    """Twice the length of shear wall over the story height, for light framing.

    Seen on City of Santa Ana document 370584, page 135, which restates 12.3.4.2. Example (our arithmetic): 8 ft of
    panel in an 8 ft story is 2 bays.
    """
    return 2 * L / h_sx


@procedure(
    "asce7-16/12.3.4",
    title="Redundancy factor",
    clause="12.3.4",
    source=SOURCE,
    alias="asce7.redundancy",
)
def redundancy(category: Category, condition_met: str = "", reason: str = "") -> float:
    """rho: 1.0 in categories A to C; in D to F 1.3, or 1.0 where a condition of 12.3.4.2 is claimed with its reason.

    Args:
        category: seismic design category.
        condition_met: "" for none, "a" (the story keeps its strength when one wall is taken out) or "b" (regular in
            plan, two bays of perimeter walls on each side in each direction).
        reason: why the condition holds for this house, printed beside the factor.

    Raises:
        OutsideLimits: for an unknown condition, or a claimed one without a reason.
    """
    return redundancy_by(table_12_3_4(), SOURCE, category, condition_met, reason)


def redundancy_by(table: Table, source: Source, category: str, condition_met: str, reason: str) -> float:
    """The redundancy factor by an edition's table: 1.0 in D to F where a condition of 12.3.4.2 is claimed with reason.

    Raises:
        OutsideLimits: for an unknown condition, or a claimed one without a reason.
    """
    full = table.read(category, "rho", "rho")
    if not condition_met or full == 1.0:
        return full
    if condition_met not in ("a", "b"):
        raise OutsideLimits(f"{source.cite('12.3.4.2')}: condition {condition_met!r} is not one of a, b")
    if not reason.strip():
        raise OutsideLimits(f"{source.cite('12.3.4.2')}: condition ({condition_met}) is claimed without a reason")
    condition(f"12.3.4.2({condition_met}) holds: {reason.strip()}", True, cite="12.3.4.2")
    note(f"rho may be 1.0 in category {category} because: {reason.strip()}")
    return table.read(category, "rho where 12.3.4.2 holds", "rho")


@equation(
    "asce7-16/12.8-15",
    title="Design displacement",
    clause="Eq. 12.8-15",
    source=SOURCE,
)
def design_drift(
    C_d: Annotated[float, Q("1", "C_d", "deflection amplification factor", at_least=1.0)],
    delta_xe: Annotated[float, Q("in", "delta_xe", "elastic deflection under the design forces", at_least=0.0)],
    I_e: Importance,
) -> Annotated[float, Q("in", "delta_x", "design displacement")]:
    """The deflection to expect, from the elastic one under strength-level forces.

    Seen in words in the ideCAD help pages on ASCE 7-16 section 12.8.6 (idecad.atlassian.net). Example (our arithmetic):
    C_d = 4, 0.25 in. gives 1.0 in.
    """
    return C_d * delta_xe / I_e


@equation(
    "asce7-16/12.12.1",
    title="Allowable story drift",
    clause="12.12.1",
    source=SOURCE,
)
def allowable_drift(
    ratio: Annotated[float, Q("1", "Delta_a/h_sx", "allowable drift ratio of Table 12.12-1", above=0.0)],
    h_sx: Annotated[float, Q("in", "h_sx", "story height", above=0.0)],
) -> Annotated[float, Q("in", "Delta_a", "allowable story drift")]:
    """The tabulated share of the story height below the level.

    Existence of the table seen (help.idecad.com, 12.12); its figures carry their own marks. Example (our arithmetic):
    0.025 of 96 in. is 2.4 in.
    """
    return ratio * h_sx
