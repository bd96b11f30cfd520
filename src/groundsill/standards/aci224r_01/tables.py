"""Reasonable widths of cracks, by what the concrete is exposed to."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = ["table_4_1"]


def table_4_1() -> Table:
    """Crack widths in reinforced concrete under service loads, for design, in, by exposure."""
    return Table.load(__package__, "tables/4_1.toml")
