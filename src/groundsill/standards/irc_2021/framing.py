"""IRC 2021 R502.8.1 and R602.6: how deep joists and studs may be notched or bored."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = ["table_r502_8_1"]


def table_r502_8_1() -> Table:
    """Deepest notch and widest hole in sawn joists and studs, parts of their depth."""
    return Table.load(__package__, "tables/r502_8_1.toml")
