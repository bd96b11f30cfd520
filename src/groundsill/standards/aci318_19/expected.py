"""Expected strength of concrete breakout, for saying which link fails first (never for a design check).

The chapter's strengths are 5 % fractiles of cracked-concrete tests: nineteen anchors in twenty do better. The mean
that belongs to such a fractile follows from the scatter of the tests; its range is common practice, not a clause.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.tables import table_scatter
from groundsill.working.equation import Q, equation, procedure

__all__ = ["ExpectedStrength", "expected_breakout", "mean_strength"]


@dataclass(frozen=True, slots=True)
class ExpectedStrength:
    """Mean strength, lb: by the least, the usual and the greatest scatter."""

    low: float
    best: float
    high: float


@equation(
    "aci318-19/mean",
    title="Mean strength that belongs to a 5 % fractile",
    clause="definition of the 5 percent fractile",
    source=SOURCE,
    how="from memory",
)
def mean_strength(
    R_5: Annotated[float, Q("lb", "R_5", "5 % fractile strength", at_least=0.0)],
    COV: Annotated[float, Q("1", "COV", "coefficient of variation of the tests", at_least=0.0, at_most=0.4)],
) -> Annotated[float, Q("lb", "R_m", "mean strength")]:
    """The mean of normally scattered strengths whose 5 % fractile is R_5: R_5 / (1 - 1.645 COV), lb.

    1.645 is the normal deviate of 5 %. Source: common practice, after the document's own definition of the fractile
    (from memory). 1,737 lb, COV 0.15: 2,306 lb (our own arithmetic).
    """
    return R_5 / (1 - 1.645 * COV)


@procedure(
    "aci318-19/mean-breakout",
    title="Expected breakout strength, with its range",
    clause="common practice",
    source=SOURCE,
    alias="aci.expected-breakout",
)
def expected_breakout(
    R_5: Annotated[float, Q("lb", "R_5", "nominal (5 % fractile) breakout strength")],
) -> ExpectedStrength:
    """The mean breakout strength at the least, usual and greatest scatter of tests.

    Uncracked concrete does better still (factor up to 1.4); that is not counted here.
    """
    table, row = table_scatter(), "concrete breakout"
    return ExpectedStrength(*(mean_strength(R_5, table.read(row, column)) for column in ("low", "best", "high")))
