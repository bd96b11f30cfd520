"""Straight supports seen across the strips that hang on them, and the places where they hold a strip.

Put in order once (:func:`arranged`), so that of many supports a strip need look only at those beside it. Coordinates
are in inches, ``u`` along the supports and ``v`` along the strips.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

__all__ = ["CROSSING", "NEAR", "SAME_PLACE", "Place", "Run", "Support", "Supports", "arranged", "grouped"]

Run = tuple[float, float]  # a straight run over an interval of u: its v at the beginning, its v at the end

NEAR = 1e-6
SAME_PLACE = 1e-3  # supports nearer than this along a strip stand at one place and share what comes there
CROSSING = 1e-9  # runs this near to each other at an end of an interval do not cross inside it


@dataclass(frozen=True, slots=True)
class Support:
    """A straight support seen across the strips: from (u1, v1) to (u2, v2), u along it, v along the strips."""

    id: str
    u1: float
    v1: float
    u2: float
    v2: float

    @property
    def low(self) -> float:
        """Where it begins along u."""
        return min(self.u1, self.u2)

    @property
    def high(self) -> float:
        """Where it ends along u."""
        return max(self.u1, self.u2)

    def away(self, u: float) -> float:
        """How far a strip at ``u`` passes beyond the support's ends; 0 when it runs over it."""
        return max(self.low - u, u - self.high, 0.0)

    def v_at(self, u: float) -> float:
        """Where the strip at ``u`` meets the support, or a collector that runs on level from its nearer end."""
        if abs(self.u2 - self.u1) < NEAR:
            return (self.v1 + self.v2) / 2
        part = min(max((u - self.u1) / (self.u2 - self.u1), 0.0), 1.0)
        return self.v1 + part * (self.v2 - self.v1)


@dataclass(frozen=True, slots=True)
class Place:
    """Where strips are supported, over an interval of u, and the supports that share it there."""

    run: Run
    ids: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Supports:
    """Supports in order: for each stretch of u between two ends, those that a strip there runs over.

    ``level`` holds their places by v where all of a stretch lie square to the strips, so that a strip need look only at
    those beside it; None where one of them does not.
    """

    each: tuple[Support, ...]
    stops: tuple[float, ...]
    over: tuple[tuple[Support, ...], ...]
    level: tuple[tuple[Place, ...] | None, ...]

    def within(self, u: float) -> float:
        """The nearest u at which a support stands: what lies beyond the outermost ends hangs on the strip there."""
        return min(max(u, self.stops[0]), self.stops[-1])


def arranged(supports: Iterable[Support] | Supports) -> Supports:
    """Supports put in order once, for any number of shapes that hang on them."""
    if isinstance(supports, Supports):
        return supports
    each = tuple(supports)
    stops = sorted({end for s in each for end in (s.low, s.high)})
    waiting = sorted(each, key=lambda s: s.low, reverse=True)
    over: list[tuple[Support, ...]] = []
    here: list[Support] = []
    for low, high in pairwise(stops):
        here = [s for s in here if s.high >= high]
        while waiting and waiting[-1].low <= low:
            support = waiting.pop()
            if support.high >= high:
                here.append(support)
        over.append(tuple(sorted(here, key=lambda s: s.v1 + s.v2)))
    level = (
        tuple(grouped(those, low, high)) if all(s.v1 == s.v2 for s in those) else None
        for those, (low, high) in zip(over, pairwise(stops), strict=True)
    )
    return Supports(each, tuple(stops), tuple(over), tuple(level))


def grouped(supports: Iterable[Support], u1: float, u2: float) -> list[Place]:
    """Places of supports over an interval, by v at its middle. Of several at one place the nearest along it count."""
    runs = sorted((((s.v_at(u1), s.v_at(u2)), s) for s in supports), key=lambda pair: sum(pair[0]))
    found: list[tuple[Run, list[Support]]] = []
    for run, support in runs:
        if found and _at_one_place(found[-1][0], run):
            found[-1][1].append(support)
        else:
            found.append((run, [support]))
    middle = (u1 + u2) / 2
    places = []
    for run, there in found:
        nearest = min(s.away(middle) for s in there)
        places.append(Place(run, tuple(s.id for s in there if s.away(middle) <= nearest + NEAR)))
    return places


def _at_one_place(one: Run, other: Run) -> bool:
    """Whether two runs are one, and not the tip of two that meet."""
    start, end = other[0] - one[0], other[1] - one[1]
    return max(abs(start), abs(end)) < SAME_PLACE and abs(start - end) <= CROSSING
