"""IRC 2021 R317.1: how far wood that is neither treated nor naturally durable stays from the ground.

IBC 2021 2304.12.1.2 and 2304.12.1.5 ask the same eight and six inches of other buildings.
"""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = ["table_r317_1"]


def table_r317_1() -> Table:
    """Least distance of untreated wood from exposed ground, in, by what the wood is."""
    return Table.load(__package__, "tables/r317_1.toml")
