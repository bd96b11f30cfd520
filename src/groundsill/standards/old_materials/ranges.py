"""Ranges for facts nobody measured: concrete by age, unit weights, specific gravity of old wood.

In: what is known (a year, a name). Out: low, best and high, each with its marks; the load path runs at the ends.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.old_materials import SOURCE
from groundsill.standards.old_materials.tables import table_concrete_by_age, table_unit_weights, table_wood_gravity
from groundsill.working.equation import Q, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import given
from groundsill.working.table import Table
from groundsill.working.value import Mark

__all__ = ["Range", "old_concrete_strength", "unit_weight", "wood_gravity"]


@dataclass(frozen=True, slots=True)
class Range:
    """An untested property: its low end, the figure counted where one must be, its high end, and the row it is from."""

    low: float
    best: float
    high: float
    row: str


@procedure(
    "old-materials/concrete",
    title="Strength of untested old concrete",
    clause="concrete strength by age",
    source=SOURCE,
    alias="old.concrete-strength",
)
def old_concrete_strength(year: Annotated[float, Q("1", "year", "year the foundation was made")] | None) -> Range:
    """Compressive strength to take for a foundation by its year, psi; None when the year is not known.

    Raises:
        OutsideLimits: a year before 1700 or after 2100.
    """
    if year is not None and not 1700 <= float(year) <= 2100:
        raise OutsideLimits(f"{SOURCE.cite('concrete strength by age')}: year = {float(year):g}; must be 1700 to 2100")
    return _range(table_concrete_by_age(), _age(year), "f'_c", "psi")


@procedure(
    "old-materials/unit-weight",
    title="Unit weight of a foundation material",
    clause="unit weights",
    source=SOURCE,
    alias="old.unit-weight",
)
def unit_weight(material: str) -> Range:
    """Unit weight of a material of the table (``"poured concrete"``, ``"brick masonry"``), pcf."""
    return _range(table_unit_weights(), material, "w", "pcf")


@procedure(
    "old-materials/wood-gravity",
    title="Specific gravity of old wood",
    clause="specific gravity of old wood",
    source=SOURCE,
    alias="old.wood-gravity",
)
def wood_gravity(wood: str) -> Range:
    """Specific gravity of a wood of the table (``"redwood, old growth"``); ``"unknown softwood"`` when nobody knows."""
    return _range(table_wood_gravity(), wood, "G", "1")


def _age(year: float | None) -> str:
    if year is None:
        return "unknown"
    if year < 1920:
        return "before 1920"
    if year < 1930:
        return "1920 to 1929"
    if year < 1950:
        return "1930 to 1949"
    return "1950 to 1969" if year < 1970 else "1970 or later"


def _range(table: Table, row: str, symbol: str, unit: str) -> Range:
    mark = Mark("assumed range", f"{table.title.lower()}: {row}")
    ends = []
    for column in ("low", "best", "high"):
        figure = table.read(row, column, symbol)
        ends.append(given(symbol, figure, unit, f"untested, {row}: {column}", (mark,)))
    return Range(ends[0], ends[1], ends[2], row)
