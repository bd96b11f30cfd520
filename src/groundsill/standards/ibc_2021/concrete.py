"""IBC 2021 section 1808.8: the least strength of concrete in new foundations."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = ["table_1808_8_1"]


def table_1808_8_1() -> Table:
    """Least specified compressive strength of foundation concrete, psi, by building and seismic design category."""
    return Table.load(__package__, "tables/1808_8_1.toml")
