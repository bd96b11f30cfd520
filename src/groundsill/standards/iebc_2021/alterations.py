"""IEBC 2021: by how much work on a house may raise what an existing element is asked to carry."""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.iebc_2021 import SOURCE
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.steps import condition
from groundsill.working.table import Table

__all__ = ["raised_share", "table_demand_rise", "within_allowance"]

Before = Annotated[float, Q("1", "r_0", "demand over capacity without the work", above=0.0)]
After = Annotated[float, Q("1", "r_1", "demand over capacity with the work", at_least=0.0)]


def table_demand_rise() -> Table:
    """The share by which work may raise an existing element's ratio of demand to capacity for lateral load."""
    return Table.load(__package__, "tables/demand_rise.toml")


@equation(
    "iebc-2021/503.4-rise",
    title="Rise of an existing element's ratio",
    clause="503.4",
    source=SOURCE,
)
def raised_share(r_0: Before, r_1: After) -> Annotated[float, Q("1", "rise", "share by which the ratio rises")]:
    """By what share of itself the ratio of demand to capacity rises with the work; negative when it falls.

    Source: IEBC 503.4, exception, in the 2018 edition as reported in eng-tips.com thread 460657: the ratio with the
    work against the ratio with the work ignored. 0.80 before and 0.88 after: 0.10 (our own arithmetic).
    """
    return r_1 / r_0 - 1.0


@procedure(
    "iebc-2021/503.4",
    title="Existing elements after work on the house",
    clause="503.4",
    source=SOURCE,
    alias="iebc.rise",
)
def within_allowance(r_0: Before, r_1: After) -> bool:
    """Whether an existing element's ratio rises by no more than the code allows, or stays within one all the same.

    An element that carries what is asked of it with the work needs no allowance.
    """
    limit = table_demand_rise().read("503.4")
    rise = raised_share(r_0, r_1)
    met = float(rise) <= float(limit) + 1e-9 or float(r_1) <= 1.0
    condition("an existing element's ratio rises by no more than is allowed, or stays within one", met, rise, limit)
    return met
