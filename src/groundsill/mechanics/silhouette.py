"""A house seen from one side: which of its faces show, strip by strip, how large and how high.

Faces stand behind and before each other; what one shows is not counted again on the next. Every face reaches from a
level edge below to a straight edge above, so that areas and heights come out exact.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import sqrt

__all__ = ["Face", "Strip", "strips_seen"]

_NEAR = 1e-9
_GAUSS = 1 / sqrt(3)  # two places in a strip from which areas and moments of straight edges come out exact


@dataclass(frozen=True, slots=True)
class Face:
    """Something that shows: from ``start`` to ``end`` across the view, from ``low`` up to a straight edge."""

    start: float
    end: float
    low: float
    top_start: float
    top_end: float

    def top(self, place: float) -> float:
        """The height of the upper edge at a place."""
        return self.top_start + (self.top_end - self.top_start) * (place - self.start) / (self.end - self.start)


@dataclass(frozen=True, slots=True)
class Strip:
    """A strip of the view, and by the number of each face that shows in it: its area, and its moment about height 0."""

    start: float
    end: float
    shown: dict[int, tuple[float, float]]


def strips_seen(faces: Sequence[Face]) -> tuple[Strip, ...]:
    """The view cut into strips with nothing but straight edges; a face shows where none before it in the list does."""
    real = {n: f for n, f in enumerate(faces) if f.end - f.start > _NEAR and max(f.top_start, f.top_end) > f.low}
    cuts = sorted(_cuts(real.values()))
    found = []
    for start, end in zip(cuts, cuts[1:], strict=False):
        half, middle = (end - start) / 2, (start + end) / 2
        if half < _NEAR:
            continue
        here = {n: f for n, f in real.items() if f.start < middle < f.end}
        shown: dict[int, tuple[float, float]] = {}
        for place in (middle - _GAUSS * half, middle + _GAUSS * half):
            for n, (high, moment) in _at(here, place).items():
                before = shown.get(n, (0.0, 0.0))
                shown[n] = before[0] + high * half, before[1] + moment * half
        if shown:
            found.append(Strip(start, end, shown))
    return tuple(found)


def _cuts(faces: Iterable[Face]) -> set[float]:
    """Every place across the view at which an edge begins, ends, or crosses another."""
    every = list(faces)
    cuts = {place for face in every for place in (face.start, face.end)}
    for one, other in combinations(every, 2):
        start, end = max(one.start, other.start), min(one.end, other.end)
        if end - start <= _NEAR:
            continue
        pairs = ((one.top, other.top), (one.top, _level(other)), (_level(one), other.top))
        for upper, lower in pairs:
            before, after = upper(start) - lower(start), upper(end) - lower(end)
            if before * after < 0:
                cuts.add(start + (end - start) * before / (before - after))
    return cuts


def _level(face: Face) -> Callable[[float], float]:
    return lambda _: face.low


def _at(faces: dict[int, Face], place: float) -> dict[int, tuple[float, float]]:
    """How much of each face shows at one place, and its moment about height 0."""
    covered: list[tuple[float, float]] = []
    shown = {}
    for n, face in faces.items():
        free = [(face.low, face.top(place))]
        for low, top in covered:
            free = [part for a, b in free for part in ((a, min(b, low)), (max(a, top), b)) if part[1] - part[0] > _NEAR]
        free = [(a, b) for a, b in free if b - a > _NEAR]
        if free:
            shown[n] = sum(b - a for a, b in free), sum((b * b - a * a) / 2 for a, b in free)
            covered += free
    return shown
