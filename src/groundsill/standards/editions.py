"""What one edition of a document takes over from another without a second copy of it.

A printed table that stands unchanged is the very same table under the other edition's name, and says how that is known;
an equation does likewise by :meth:`groundsill.working.equation.Equation.restated`. What every edition of ASCE 7 puts
together alike, from its own tables and equations, is put together here.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache

from groundsill.standards.asce7_16.ground_motion import SiteValues
from groundsill.working.source import How
from groundsill.working.steps import condition, note
from groundsill.working.table import Table, TableSource

__all__ = ["design_category_by", "site_values_by", "unchanged"]


@lru_cache(maxsize=128)
def unchanged(table: Table, document: str, why: str, how: How = "from memory") -> Table:
    """A printed table as another edition repeats it: the same figures, cited there.

    Args:
        table: as the first edition has it.
        document: the other edition, as cited on paper.
        why: where the other edition was read, or what makes us believe that it is the same.
        how: whether that was read in a public source or recalled; recalled figures carry their mark.
    """
    told = TableSource(how, f"the figures of {table.cite}; {why}")
    return replace(table, document=document, sources={"same": told}, default_source="same", exceptions={})


def site_values_by(
    tables: tuple[Table, Table],
    equations: tuple[Callable[[float, float], float], Callable[[float, float], float]],
    design: tuple[Callable[[float], float], Callable[[float], float]],
    S_S: float,
    S_1: float,
    site_class: str,
) -> SiteValues:
    """Design ground motion by an edition with site coefficients for every class it has rows for.

    Args:
        tables: F_a by S_S and F_v by S_1.
        equations: S_MS and S_M1 from coefficient and mapped acceleration.
        design: S_DS and S_D1 from those.
        S_S: mapped acceleration at short periods, g.
        S_1: mapped acceleration at one second, g.
        site_class: a row of the tables.

    Raises:
        OutsideLimits: when the site class is not in the tables.
    """
    F_a = tables[0].interpolate(site_class, S_S, "F_a")
    F_v = tables[1].interpolate(site_class, S_1, "F_v")
    S_MS, S_M1 = equations[0](F_a, S_S), equations[1](F_v, S_1)
    return SiteValues(site_class, S_S, S_1, F_a, F_v, S_MS, S_M1, design[0](S_MS), design[1](S_M1), ())


def design_category_by(
    tables: tuple[Table, Table, Table], S_DS: float, S_D1: float | None, S_1: float, risk_category: str
) -> str:
    """The worse category by S_DS and by S_D1; E, or F for risk category IV, from the S_1 of the third table on.

    Raises:
        OutsideLimits: when there is no such risk category.
    """
    short, second, near = tables
    found = _category(short, risk_category, S_DS, "S_DS")
    bound = near.read(risk_category, "S_1", "S_1,E")
    if condition("S_1 puts the house in category E (F for risk category IV)", bound <= S_1, S_1, bound, cite=near.cite):
        return "F" if risk_category == "IV" else "E"
    if S_D1 is None:
        note("S_D1 is not given: category D at least is taken")
        return max(found, "D")
    found = max(found, _category(second, risk_category, S_D1, "S_D1"))
    note(f"Seismic design category {found}: the worse of the two tables")
    return found


def _category(table: Table, risk_category: str, value: float, symbol: str) -> str:
    found = "A"
    if risk_category not in table.rows:
        table.read(risk_category, table.columns[-1])  # refuses, and says which risk categories there are
    for letter, cell in zip(table.columns, table.rows[risk_category], strict=True):
        if isinstance(cell, str):
            continue
        bound = table.read(risk_category, letter, f"{symbol},{letter}")
        if condition(f"{symbol} reaches category {letter}", value >= bound, value, bound, cite=table.cite):
            found = str(letter)
    return found
