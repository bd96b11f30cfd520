"""Plane geometry of house plans: areas, centroids, lengths, turning.

Coordinates are plain floats in any one length unit; the answers are in that unit, or squared.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

__all__ = ["area", "centroid", "inside", "length", "rotate", "simple"]

XY = tuple[float, float]


def area(points: Sequence[XY]) -> float:
    """Signed area of a polygon: positive when its points run anticlockwise."""
    total = 0.0
    for (x1, y1), (x2, y2) in zip(points, [*points[1:], points[0]], strict=True):
        total += x1 * y2 - x2 * y1
    return total / 2


def centroid(points: Sequence[XY]) -> XY:
    """Centre of area of a polygon."""
    x0, y0 = points[0]
    sx = sy = total = 0.0
    for (x1, y1), (x2, y2) in zip(points, [*points[1:], points[0]], strict=True):
        cross = (x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0)
        total += cross
        sx += (x1 + x2 - 2 * x0) * cross
        sy += (y1 + y2 - 2 * y0) * cross
    return (x0 + sx / (3 * total), y0 + sy / (3 * total))


def length(a: XY, b: XY) -> float:
    """Distance between two points."""
    return math.hypot(b[0] - a[0], b[1] - a[1])


def rotate(point: XY, degrees: float) -> XY:
    """A point turned anticlockwise about the origin; right angles turn exactly."""
    quarter = degrees % 360
    if quarter in (0.0, 90.0, 180.0, 270.0):
        c, s = {0.0: (1, 0), 90.0: (0, 1), 180.0: (-1, 0), 270.0: (0, -1)}[quarter]
    else:
        c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))  # type: ignore[assignment]
    return (point[0] * c - point[1] * s, point[0] * s + point[1] * c)


def simple(points: Sequence[XY]) -> bool:
    """True when the polygon has at least three corners, has area, and no side crosses another."""
    n = len(points)
    if n < 3 or len(set(points)) < n or abs(area(points)) <= 0:
        return False
    sides = [(points[i], points[(i + 1) % n]) for i in range(n)]
    for i, (a, b) in enumerate(sides):
        for j in range(i + 1, n):
            if j in ((i + 1) % n, (i - 1) % n):
                continue
            if _cross(a, b, *sides[j]):
                return False
    return True


def _cross(a: XY, b: XY, c: XY, d: XY) -> bool:
    def turn(p: XY, q: XY, r: XY) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    def between(p: XY, q: XY, r: XY) -> bool:
        return min(p[0], q[0]) <= r[0] <= max(p[0], q[0]) and min(p[1], q[1]) <= r[1] <= max(p[1], q[1])

    t1, t2, t3, t4 = turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)
    if ((t1 > 0) != (t2 > 0)) and ((t3 > 0) != (t4 > 0)) and 0 not in (t1, t2, t3, t4):
        return True
    return any(
        t == 0 and between(p, q, r) for t, p, q, r in ((t1, a, b, c), (t2, a, b, d), (t3, c, d, a), (t4, c, d, b))
    )


def inside(point: XY, points: Sequence[XY]) -> bool:
    """True when the point lies inside the polygon (points on its edge may fall either way)."""
    x, y = point
    odd = False
    for (x1, y1), (x2, y2) in zip(points, [*points[1:], points[0]], strict=True):
        if (y1 > y) != (y2 > y) and x < x1 + (y - y1) * (x2 - x1) / (y2 - y1):
            odd = not odd
    return odd
