"""Yes, no, cannot tell: questions to facts that may be unknown or lie anywhere within a range."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

from groundsill.house.fact import Fact

__all__ = ["Answer", "at_least", "at_most", "every", "holds", "is_one_of", "opposite", "some"]

Answer = Literal["yes", "no", "cannot tell"]


def at_most(fact: Fact[float], limit: float) -> Answer:
    """Whether a figure is no more than a limit, over all that it may be."""
    if fact.state == "absent":
        return "yes"
    if fact.value is None:
        return "cannot tell"
    low, high = (fact.value if end is None else end for end in (fact.low, fact.high))
    if high <= limit:
        return "yes"
    return "no" if low > limit else "cannot tell"


def at_least(fact: Fact[float], limit: float) -> Answer:
    """Whether a figure is no less than a limit, over all that it may be; what nobody measured may still be bounded."""
    low, high = (fact.value if end is None else end for end in (fact.low, fact.high))
    if fact.state == "absent":
        return "no"
    if low is not None and low >= limit:
        return "yes"
    return "no" if high is not None and high < limit else "cannot tell"


def is_one_of(fact: Fact[str], *fine: str) -> Answer:
    """Whether a fact in words is one of those that are fine; looked for and not there is no."""
    if fact.state == "absent":
        return "no"
    if fact.value is None:
        return "cannot tell"
    return "yes" if fact.value in fine else "no"


def holds(fact: Fact[bool]) -> Answer:
    """Whether a yes-or-no fact is so; looked for and not there is no."""
    if fact.state == "absent":
        return "no"
    if fact.value is None or fact.uncertain:
        return "cannot tell"
    return "yes" if fact.value else "no"


def opposite(answer: Answer) -> Answer:
    """Yes for no and no for yes."""
    return {"yes": "no", "no": "yes"}.get(answer, "cannot tell")  # type: ignore[return-value]


def every(answers: Iterable[Answer]) -> Answer:
    """No where any is no, else cannot tell where any is not told; yes where all are, or there are none."""
    found = set(answers)
    return "no" if "no" in found else "cannot tell" if "cannot tell" in found else "yes"


def some(answers: Iterable[Answer]) -> Answer:
    """Yes where any is yes, else cannot tell where any is not told."""
    return opposite(every(opposite(answer) for answer in answers))
