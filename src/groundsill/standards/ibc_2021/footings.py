"""IBC 2021 section 1809: one footing beside another."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = ["table_1809_6"]


def table_1809_6() -> Table:
    """How steep a line between the lower edges of adjoining footings may fall, rise over run, by soil."""
    return Table.load(__package__, "tables/1809_6.toml")
