"""The classes of damage by the width of cracks."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = ["table_1"]


def table_1() -> Table:
    """Greatest crack width of each class of damage, mm; the fifth class has none."""
    return Table.load(__package__, "tables/1.toml")
