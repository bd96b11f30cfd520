"""How many glued bars or anchors to pull in old concrete, how hard, and how far they may move.

No standard says so for old house foundations. The figures are taken from what the existing-building code asks of
anchors in old brick walls and from what practitioners write, each with its source in the table; what has none says so.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil
from typing import Annotated

from groundsill.standards.common_practice import SOURCE
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.steps import given, greatest, least, note
from groundsill.working.table import Table
from groundsill.working.value import marks_of

__all__ = ["PullTests", "proof_load", "pull_tests", "table_pull_tests"]

PASSED = "the load held, and no movement beyond the limit, no crack, no cone of concrete lifting"
FAILED = (
    "stop: nothing of that kind in that stretch of concrete counts; pull as many again beside it, and let an engineer "
    "choose deeper bars, another adhesive, or a joint that needs none"
)


@dataclass(frozen=True, slots=True)
class PullTests:
    """A proof test: so many bars, at so many lb, held so many minutes, moving so little; what passes, what then."""

    count: float
    load: float
    minutes: float
    movement: float
    passed: str
    failed: str


def table_pull_tests() -> Table:
    """Figures of a proof test of glued bars in old concrete, each with where it comes from."""
    return Table.load(__package__, "tables/pull_tests.toml")


@equation(
    "common-practice/pull-test-load",
    title="Load of a proof test",
    clause="proof test of glued bars",
    source=SOURCE,
)
def proof_load(
    k_T: Annotated[float, Q("1", "k_T", "proof load over the pull", at_least=1.0)],
    T: Annotated[float, Q("lb", "T", "pull on one, allowable-stress level", above=0.0)],
    k: Annotated[float, Q("1", "k", "part of the bar's yield", above=0.0, at_most=1.0)],
    A_b: Annotated[float, Q("in^2", "A_b", "area of the bar", above=0.0)],
    f_y: Annotated[float, Q("psi", "f_y", "yield strength of the bar", above=0.0)],
) -> Annotated[float, Q("lb", "T_p", "proof load")]:
    """k_T times the pull, and never so much that the test stretches the bar: k A_b f_y, lb.

    Twice the pull by an engineer's letter (seaintarchive.org, 2010/msg00621), 0.8 of yield by a testing laboratory's
    page (geohydro.com, post-installed anchor and reinforcing tensile load testing). 900 lb on #4 of 60,000 psi: 1,800
    lb (our own arithmetic).
    """
    return min(k_T * T, k * A_b * f_y)


@procedure(
    "common-practice/pull-test",
    title="Pull tests of glued bars in old concrete",
    clause="proof test of glued bars",
    source=SOURCE,
    alias="practice.pull-test",
)
def pull_tests(
    N: Annotated[float, Q("1", "N", "bars or anchors of one kind in one stretch of concrete", at_least=1.0)],
    T: Annotated[float, Q("lb", "T", "pull on one, allowable-stress level", above=0.0)],
    A_b: Annotated[float, Q("in^2", "A_b", "area of the bar", above=0.0)],
    f_y: Annotated[float, Q("psi", "f_y", "yield strength of the bar", above=0.0)] = 60000.0,
) -> PullTests:
    """How many to pull, how hard, how long, and what passes; before the rest is drilled where concrete is weak.

    Args:
        N: bars or anchors of one kind in one stretch of concrete.
        T: the pull that one must carry, lb, allowable-stress level.
        A_b: area of the bar, in2.
        f_y: its yield strength, psi.
    """
    table = table_pull_tests()
    few, share = table.read("fewest", symbol="n_min"), table.read("share", symbol="k_n")
    of_all = given(
        "k_n N", float(ceil(float(share) * float(N) - 1e-9)), "1", "that share, rounded up", marks_of((share,))
    )
    count = greatest(few, of_all, symbol="n", label="bars to pull")
    count = least(count, N, symbol="n", label="never more than there are")
    factor, part = table.read("proof load over the pull", symbol="k_T"), table.read("part of yield", symbol="k")
    load = proof_load(factor, T, part, A_b, f_y)
    note("The jack stands clear of the cone: its feet at least as far from the bar as the bar is deep (recalled)")
    minutes = table.read("minutes held", symbol="t")
    most = table.read("movement in inches", symbol="Δ_max")
    movement = given("Δ", float(most), "in", "movement at the load", marks_of((most,)))
    return PullTests(count, load, minutes, movement, PASSED, FAILED)
