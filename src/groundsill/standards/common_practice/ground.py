"""The ground beside and under a footing, where no code and no report says: trenches, stiffness, how still is still."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = ["table_monitors", "table_subgrade", "table_trench"]


def table_trench() -> Table:
    """Longest length of trench open at once beside an old footing, ft."""
    return Table.load(__package__, "tables/trench.toml")


def table_subgrade() -> Table:
    """Modulus of subgrade reaction, lb/in3, by soil; columns ``soft`` and ``stiff``."""
    return Table.load(__package__, "tables/subgrade.toml")


def table_monitors() -> Table:
    """Finest step of a plain gauge, in., and the movement a year that counts as none, in., by kind of gauge."""
    return Table.load(__package__, "tables/monitors.toml")
