"""IBC 2021 section 1809: least sizes of a footing, and one footing beside another."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = ["table_1809_4", "table_1809_6"]


def table_1809_4() -> Table:
    """Least width of a footing and least depth of its bottom below undisturbed ground, in."""
    return Table.load(__package__, "tables/1809_4.toml")


def table_1809_6() -> Table:
    """How steep a line between the lower edges of adjoining footings may fall, rise over run, by soil."""
    return Table.load(__package__, "tables/1809_6.toml")
