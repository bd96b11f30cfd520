"""ASCE 7-22 sections 12.2, 12.3.4 and 12.12: system factors, redundancy and drift, with the 2016 edition's figures.

The rows of Table 12.2-1 go by their words here: this edition numbers them anew, and its numbers were not seen.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from groundsill.standards.asce7_16 import systems as earlier
from groundsill.standards.asce7_16.symbols import Category
from groundsill.standards.asce7_16.systems import SystemFactors
from groundsill.standards.asce7_22 import SOURCE
from groundsill.standards.editions import unchanged
from groundsill.working.equation import procedure
from groundsill.working.steps import note
from groundsill.working.table import Table

__all__ = [
    "allowable_drift",
    "boards_beside",
    "design_drift",
    "light_frame_bays",
    "overstrength_flexible",
    "redundancy",
    "system_factors",
    "table_12_2_1",
    "table_12_3_3_4",
    "table_12_3_4",
    "table_12_12_1",
]

_RECALLED = "that ASCE 7-22 has it unchanged is recalled"


def table_12_2_1() -> Table:
    """R, Omega_0, C_d and height limits of the light-frame systems an old house can be, by the words of the row."""
    return _by_words()


@lru_cache(maxsize=1)
def _by_words() -> Table:
    table = unchanged(earlier.table_12_2_1(), SOURCE.short, _RECALLED)
    table = replace(table, rows={_words(row): cells for row, cells in table.rows.items()})
    return replace(table, checksum=table.digest())


def _words(row: str) -> str:
    """A row of the 2016 table without its item (``A.15``)."""
    return row.partition(" ")[2]


def table_12_3_3_4() -> Table:
    """How much more floor ties and collectors are asked where a house is irregular in plan, by category."""
    return unchanged(earlier.table_12_3_3_4(), SOURCE.short, _RECALLED)


def table_12_3_4() -> Table:
    """The redundancy factor by seismic design category, before the exceptions of 12.3.4.2."""
    return unchanged(earlier.table_12_3_4(), SOURCE.short, _RECALLED)


light_frame_bays = earlier.light_frame_bays.restated(
    "asce7-22/12.3.4.2-bays", clause="12.3.4.2(b)", source=SOURCE, module=__name__, why=f"{_RECALLED}."
)

overstrength_flexible = earlier.overstrength_flexible.restated(
    "asce7-22/12.2-1-flexible",
    clause="Table 12.2-1, footnote on Omega_0",
    source=SOURCE,
    module=__name__,
    why=f"{_RECALLED}.",
)


design_drift = earlier.design_drift.restated(
    "asce7-22/12.8.6",
    clause="12.8.6",
    source=SOURCE,
    module=__name__,
    why="the part of the walls, recalled; this edition adds that of the floor, which is not counted here.",
)

allowable_drift = earlier.allowable_drift.restated(
    "asce7-22/12.12.1", clause="12.12.1", source=SOURCE, module=__name__, why=f"{_RECALLED}."
)


def table_12_12_1() -> Table:
    """Allowable story drift as a share of story height, by structure and risk category."""
    return unchanged(earlier.table_12_12_1(), SOURCE.short, _RECALLED)


def boards_beside(system: str) -> tuple[str, float] | None:
    """The row for the same walls braced by boards or plaster, and its R; None where the system is that row."""
    return earlier.boards_beside(system, table_12_2_1())


@procedure(
    "asce7-22/12.2.1",
    title="Factors of the seismic force-resisting system",
    clause="Table 12.2-1",
    source=SOURCE,
    alias="asce7.system",
)
def system_factors(system: str) -> SystemFactors:
    """R, Omega_0 and C_d of a row of Table 12.2-1, named by its words or by its item in the 2016 edition (``A.15``).

    Raises:
        OutsideLimits: when there is no such row; the message lists those there are.
    """
    table = table_12_2_1()
    numbered = next((row for row in earlier.table_12_2_1().rows if system in (row, row.partition(" ")[0])), None)
    row = system if numbered is None else _words(numbered)
    if numbered is not None:
        item = numbered.partition(" ")[0]
        note(f"Item {item} of ASCE 7-16; the item of the same system in ASCE 7-22 is to be confirmed")
    R = table.read(row, "R", "R")
    return SystemFactors(row, R, table.read(row, "Omega_0", "Omega_0"), table.read(row, "C_d", "C_d"))


@procedure(
    "asce7-22/12.3.4",
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
    return earlier.redundancy_by(table_12_3_4(), SOURCE, category, condition_met, reason)
