"""The ground beside and under a footing, where no code and no report says: how long a trench, how stiff a soil."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = ["table_subgrade", "table_trench"]


def table_trench() -> Table:
    """Longest length of trench open at once beside an old footing, ft."""
    return Table.load(__package__, "tables/trench.toml")


def table_subgrade() -> Table:
    """Modulus of subgrade reaction, lb/in3, by soil; columns ``soft`` and ``stiff``."""
    return Table.load(__package__, "tables/subgrade.toml")
