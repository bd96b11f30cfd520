"""IEBC 2021 A304.1.3 and A304.1.4: what holds the floor to the wall under it."""

from __future__ import annotations

import math
from typing import Annotated

from groundsill.standards.iebc_2021 import SOURCE
from groundsill.working.equation import Q, procedure
from groundsill.working.steps import divide, given
from groundsill.working.table import Table
from groundsill.working.value import marks_of

__all__ = ["clips_asked", "table_a304_1"]


def table_a304_1() -> Table:
    """Blocking between joists and supplementary clips, by stories above."""
    return Table.load(__package__, "tables/a304_1.toml")


@procedure(
    "iebc-2021/A304.1.4",
    title="Supplementary clips along a line",
    clause="A304.1.3, A304.1.4",
    source=SOURCE,
    alias="iebc.clips",
)
def clips_asked(
    stories: Annotated[float, Q("1", "stories", "stories above the cripple wall")],
    L: Annotated[float, Q("in", "L", "length of the line", above=0.0)],
) -> float:
    """How many supplementary clips a line is asked for where its toenails are not what A304.1.3 asks.

    Args:
        stories: stories above the cripple wall, 1 to 3.
        L: length of the line, in.

    Raises:
        OutsideLimits: for more stories than the table has.
    """
    apart = table_a304_1().read(str(int(stories)), "supplementary clips apart, most", symbol="s_c")
    spaces = divide(L, apart, symbol="L/s_c", unit="1", label="length over their greatest spacing")
    return given("n_c", math.ceil(float(spaces) - 1e-9), "1", "clips along the line", marks_of((spaces,)))
