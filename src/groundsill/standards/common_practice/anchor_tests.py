"""How far beyond the force on one a few tested anchors must hold, before they prove that nineteen in twenty hold it.

A nominal strength in concrete is a 5 % fractile: nine times in ten at least 95 % of all anchors hold it (ACI 318-19,
definitions, from memory). The least of a few is no such value. No document read says what tests in place prove of it in
old concrete, so this is our choice: the anchors scatter log-normally, as widely as the table has it, and the more of
them hold, the less each must hold; from 45 on the very force is enough, by count alone.
"""

from __future__ import annotations

from math import exp, log, sqrt
from statistics import NormalDist
from typing import Annotated

from groundsill.standards.common_practice import SOURCE
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.steps import given
from groundsill.working.table import Table
from groundsill.working.value import marks_of

__all__ = ["fractile_factor", "load_over_force", "proved_share", "table_anchor_tests"]

Count = Annotated[float, Q("1", "n", "anchors that all held the load", at_least=1.0)]


def table_anchor_tests() -> Table:
    """What tests of anchors are to prove, how surely, and how widely anchors in old concrete are taken to scatter."""
    return Table.load(__package__, "tables/anchor_tests.toml")


@equation(
    "common-practice/success-run",
    title="Share of all that holds a load, where every one of n held it",
    clause="tests without a failure",
    source=SOURCE,
    witness="2,995 prove 0.999 at 95 % confidence (reliability.readthedocs.io, sample size for no failures)",
)
def proved_share(
    C: Annotated[float, Q("1", "C", "confidence", above=0.0, at_most=0.999)], n: Count
) -> Annotated[float, Q("1", "R_n", "share that holds")]:
    """The share of all anchors that is shown to hold a load which every one of n held: (1 - C)^(1/n).

    Source: the binomial rule of tests without a failure, as printed at reliability.readthedocs.io (sample size required
    for no failures): 2,995 of 2,995 prove 0.999 at 95 % confidence. C 0.90, n 3: 0.464; n 45: 0.950 (our own
    arithmetic).
    """
    return (1 - C) ** (1 / n)  # type: ignore[no-any-return]  # mypy: a float power is Any


@equation(
    "common-practice/fractile-factor",
    title="Load of tests over the force whose 5 % fractile they prove",
    clause="tests of anchors in place",
    source=SOURCE,
)
def fractile_factor(
    z_R: Annotated[float, Q("1", "z_R", "normal deviate of what the count proves")],
    z_5: Annotated[float, Q("1", "z_5", "normal deviate of the fractile")],
    COV: Annotated[float, Q("1", "COV", "coefficient of variation of anchors in place", above=0.0, at_most=0.5)],
) -> Annotated[float, Q("1", "k_t", "load of the tests over the force", at_least=1.0)]:
    """How many times the force each must hold: exp((z_5 - z_R) sqrt(ln(1 + COV^2))), at least 1.

    ``z_R`` of 0.464 is -0.090, ``z_5`` of 0.95 is 1.645. Log-normal scatter: our choice, no source. For three anchors
    that scatter by 0.25: 1.53; at allowable-stress level that is more than twice the load, as IBC 1709.3.1 asks of
    parts that do not resist earthquake (our own arithmetic).
    """
    return max(1.0, exp((z_5 - z_R) * sqrt(log(1 + COV**2))))


@procedure(
    "common-practice/anchor-test",
    title="Load of tests of anchors in place",
    clause="tests of anchors in place",
    source=SOURCE,
    alias="practice.anchor-test",
)
def load_over_force(n: Count) -> float:
    """What each of n tested anchors must hold, over the force on one, to prove that force a 5 % fractile.

    Args:
        n: anchors like one another that were tested and all held.
    """
    table = table_anchor_tests()
    C, R = table.read("confidence", symbol="C"), table.read("share that holds", symbol="R")
    shown = proved_share(C, n)
    normal = NormalDist()
    z_R = given("z_R", normal.inv_cdf(float(shown)), "1", "normal deviate of that share", marks_of((shown,)))
    z_5 = given("z_5", normal.inv_cdf(float(R)), "1", "normal deviate of the share asked for", marks_of((R,)))
    return fractile_factor(z_R, z_5, table.read("scatter of anchors in old concrete", symbol="COV"))
