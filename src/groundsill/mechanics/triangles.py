"""Triangles between scattered points: Delaunay's, by adding one point after another (Bowyer and Watson, 1981).

Whether a point lies within a circle is asked in exact fractions, so that points of a square grid, of which four lie on
one circle, make no crossing triangles. Coordinates are those of a plan.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from itertools import chain, combinations

__all__ = ["edges", "triangles"]

XY = tuple[Fraction, Fraction]
Triangle = tuple[int, int, int]


def triangles(points: Sequence[tuple[float, float]]) -> tuple[Triangle, ...]:
    """The triangles between points, each as three places in ``points``; none where all lie in one line.

    A point that stands where an earlier one stands is left out.
    """
    places = [(Fraction(x), Fraction(y)) for x, y in points]
    n = len(places)
    if n < 3:
        return ()
    span = max(max(abs(x), abs(y)) for x, y in places) + 1
    far = span * 10**6
    corners = [*places, (-far, -far), (far, -far), (Fraction(0), far)]
    found: set[Triangle] = {(n, n + 1, n + 2)}
    seen: set[XY] = set()
    for i, at in enumerate(places):
        if at in seen:
            continue
        seen.add(at)
        hit = [t for t in found if _within(corners, t, at)]
        sides = Counter(frozenset(side) for t in hit for side in combinations(t, 2))
        found.difference_update(hit)
        for side, times in sides.items():
            a, b = sorted(side)
            if times == 1 and _turn(corners[a], corners[b], at) != 0:
                found.add((a, b, i) if _turn(corners[a], corners[b], at) > 0 else (b, a, i))
    return tuple(sorted(t for t in found if max(t) < n))


def edges(found: Sequence[Triangle]) -> tuple[tuple[int, int], ...]:
    """Every side of the triangles once, the lower place first."""
    return tuple(sorted({(min(s), max(s)) for s in chain.from_iterable(combinations(t, 2) for t in found)}))


def _turn(a: XY, b: XY, c: XY) -> Fraction:
    """Twice the area of a triangle, positive where it runs counter-clockwise."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _within(corners: Sequence[XY], triangle: Triangle, at: XY) -> bool:
    """Whether a point lies strictly within the circle through a counter-clockwise triangle's corners."""
    rows = [(corners[i][0] - at[0], corners[i][1] - at[1]) for i in triangle]
    (ax, ay), (bx, by), (cx, cy) = rows
    a, b, c = (x * x + y * y for x, y in rows)
    return ax * (by * c - b * cy) - ay * (bx * c - b * cx) + a * (bx * cy - by * cx) > 0
