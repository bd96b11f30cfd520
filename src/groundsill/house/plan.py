"""The plan of a house as the checks and the pieces of work need it: ends and lengths of lines, outlines, stretches.

Coordinates are inches in the house's own plan system. Anything that refers to a corner or a line that is not there
gives None, never an error: a survey under way has loose ends.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Final, Protocol

from groundsill.house.survey import Survey
from groundsill.house.underfloor import Segment

__all__ = [
    "TOUCH_IN", "XY", "Stretch", "area_in2", "away_from_outline_in", "corner", "distance_in", "line_length_in",
    "outline_of", "steps_up", "why_no_outline",
]  # fmt: skip

XY = tuple[float, float]
# Two tapes along one wall differ by this much and still agree.
TOUCH_IN: Final = 0.5
MOST_CORNERS: Final = 200
_STEP_IN: Final = 1.0
LEAST_AREA_IN2: Final = 144.0


class Stretch(Protocol):
    """Anything that lies along a line from one station to another."""

    @property
    def line(self) -> str:
        """The id of its line."""

    @property
    def from_in(self) -> float:
        """Where it begins, inches along the line."""

    @property
    def to_in(self) -> float:
        """Where it ends, inches along the line."""


def corner(survey: Survey, corner_id: str) -> XY | None:
    """The place of a corner."""
    found = survey.building.corners.get(corner_id)
    return (found.x_in, found.y_in) if found else None


def distance_in(start: XY, end: XY) -> float:
    """The distance between two places, in inches."""
    return math.hypot(end[0] - start[0], end[1] - start[1])


def line_length_in(survey: Survey, line_id: str) -> float | None:
    """The length of a line between its corners, in inches; None when the line or a corner is not there."""
    line = survey.underfloor.lines.get(line_id)
    if line is None:
        return None
    start, end = corner(survey, line.start), corner(survey, line.end)
    return distance_in(start, end) if start and end else None


def outline_of(survey: Survey, corners: Sequence[str]) -> list[XY] | None:
    """The places of an outline's corners; None when one is not there."""
    places = [corner(survey, name) for name in corners]
    found = [place for place in places if place is not None]
    return found if len(found) == len(places) else None


def area_in2(outline: Sequence[XY]) -> float:
    """The area inside an outline, in square inches, whichever way round it goes."""
    total = 0.0
    for (x1, y1), (x2, y2) in zip(outline, [*outline[1:], *outline[:1]], strict=True):
        total += x1 * y2 - x2 * y1
    return abs(total) / 2


def why_no_outline(outline: Sequence[XY]) -> str | None:
    """What keeps a list of corners from being an outline, in words, or None when it is one.

    An outline has three corners or more, all different, edges that meet only at their shared corners, and an area.
    """
    if len(outline) < 3:
        return f"{len(outline)} corners"
    if len(outline) > MOST_CORNERS:
        return f"{len(outline)} corners, more than {MOST_CORNERS}"
    if len(set(outline)) < len(outline):
        return "the same place twice"
    edges = list(zip(outline, [*outline[1:], *outline[:1]], strict=True))
    for i, first in enumerate(edges):
        for j in range(i + 1, len(edges)):
            neighbours = j == i + 1 or (i == 0 and j == len(edges) - 1)
            crossed = _folds_back(first, edges[j]) if neighbours else _meet(first, edges[j])
            if crossed:
                return f"edges that cross, {_edge(first)} and {_edge(edges[j])}"
    if area_in2(outline) < LEAST_AREA_IN2:
        return f"an area of {area_in2(outline):.0f} square inches"
    return None


def away_from_outline_in(outline: Sequence[XY], place: XY) -> float:
    """How far a place lies from the nearest edge of an outline, in inches."""
    edges = zip(outline, [*outline[1:], *outline[:1]], strict=True)
    return min((_away_from_edge(edge, place) for edge in edges), default=math.inf)


Edge = tuple[XY, XY]


def _edge(edge: Edge) -> str:
    (x1, y1), (x2, y2) = edge
    return f"({x1:g}, {y1:g})-({x2:g}, {y2:g})"


def _turn(a: XY, b: XY, c: XY) -> float:
    """Twice the area of a triangle: positive to the left, negative to the right, zero in line."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _within(a: XY, b: XY, c: XY) -> bool:
    """Whether ``c``, in line with ``a`` and ``b``, lies between them."""
    return min(a[0], b[0]) <= c[0] <= max(a[0], b[0]) and min(a[1], b[1]) <= c[1] <= max(a[1], b[1])


def _meet(first: Edge, second: Edge) -> bool:
    """Whether two edges share a place."""
    (a, b), (c, d) = first, second
    t1, t2, t3, t4 = _turn(a, b, c), _turn(a, b, d), _turn(c, d, a), _turn(c, d, b)
    if ((t1 > 0 > t2) or (t1 < 0 < t2)) and ((t3 > 0 > t4) or (t3 < 0 < t4)):
        return True
    touching = ((t1, a, b, c), (t2, a, b, d), (t3, c, d, a), (t4, c, d, b))
    return any(t == 0 and _within(p, q, r) for t, p, q, r in touching)


def _folds_back(first: Edge, second: Edge) -> bool:
    """Whether two neighbouring edges lie on each other."""
    (shared,) = set(first) & set(second) or {first[1]}
    a = first[0] if first[1] == shared else first[1]
    b = second[0] if second[1] == shared else second[1]
    along = (a[0] - shared[0]) * (b[0] - shared[0]) + (a[1] - shared[1]) * (b[1] - shared[1])
    return _turn(shared, a, b) == 0 and along > 0


def _away_from_edge(edge: Edge, place: XY) -> float:
    (x1, y1), (x2, y2) = edge
    length2 = (x2 - x1) ** 2 + (y2 - y1) ** 2
    if length2 == 0:
        return distance_in(edge[0], place)
    along = ((place[0] - x1) * (x2 - x1) + (place[1] - y1) * (y2 - y1)) / length2
    along = min(1.0, max(0.0, along))
    return distance_in((x1 + along * (x2 - x1), y1 + along * (y2 - y1)), place)


def steps_up(before: Segment, after: Segment) -> bool:
    """Whether two walls side by side end at different heights, so that no plate runs on over both."""
    low, high = before.height_in.value, after.height_in.value
    return low is not None and high is not None and abs(high - low) > _STEP_IN
