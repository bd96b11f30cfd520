"""What one edition of a document takes over from another without a second copy of it.

A printed table that stands unchanged is the very same table under the other edition's name, and says how that is known;
an equation does likewise by :meth:`groundsill.working.equation.Equation.restated`, a composed rule by
:meth:`groundsill.working.equation.Procedure.restated`, run with the other edition :func:`in_place`. What every edition
of ASCE 7 puts together alike, from its own tables and equations, is put together here.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from typing import Any

from groundsill.standards.asce7_16.ground_motion import SiteValues
from groundsill.standards.catalogue import entries
from groundsill.working.equation import Equation, Procedure
from groundsill.working.errors import UnknownFormula
from groundsill.working.source import How, InPlace, Source
from groundsill.working.steps import condition, note
from groundsill.working.table import Table, TableSource

__all__ = ["design_category_by", "in_place", "site_values_by", "unchanged"]


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


def in_place(of: Source, by: Source) -> InPlace:
    """A later edition to be read in the place of an earlier one; what it has is looked up in its own package."""

    def answer(thing: Any) -> Any:
        found = _held(by.id).get(_same(thing))
        if found is None:
            raise UnknownFormula(f"{by.short}, read in the place of {of.short}, holds nothing for {thing.title}")
        return found

    return InPlace(of, by, answer)


@lru_cache(maxsize=8)
def _held(document: str) -> dict[Any, Any]:
    makers = [entry.maker for entry in entries(document)]
    things = [maker if isinstance(maker, Equation | Procedure) else maker() for maker in makers]
    return {_same(thing): thing for thing in things}


def _same(thing: Equation[Any] | Procedure[Any, Any] | Table) -> Any:
    """What a thing of one edition and that of another have in common: a formula its body, a table number and title."""
    return thing.body if isinstance(thing, Equation | Procedure) else (thing.number, thing.title)


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
