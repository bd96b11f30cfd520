"""Least widths of footings by stories and the bearing value of the soil."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = ["table_r403_1"]


def table_r403_1() -> Table:
    """Least width of a footing under light framing, in., by stories and bearing value of the soil, psf."""
    return Table.load(__package__, "tables/r403_1.toml")
