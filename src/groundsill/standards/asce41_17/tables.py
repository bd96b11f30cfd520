"""The limits of ASCE 41-17 for cores, each table read once from its data file."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = ["table_10_2_2"]


def table_10_2_2() -> Table:
    """The coefficient of variation of cores beyond which more are asked for."""
    return Table.load("groundsill.standards.asce41_17", "tables/10_2_2.toml")
