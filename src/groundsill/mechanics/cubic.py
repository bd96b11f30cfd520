"""A cubic by its values and slopes at the two ends of a stretch: between them, where it is level, and where it dips.

Places within the stretch are parts of its length, 0 to 1. Deflection of an unloaded beam element is such a cubic, and
so is, closely, the moment along a short one, whose slope is the shear.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import inf, sqrt

__all__ = ["Cubic", "below_nothing", "cubic_at", "shape", "turning_points"]

Cubic = tuple[float, float, float, float]
"""Value and slope at the start, value and slope at the end."""


def shape(t: float, length: float) -> Cubic:
    """What the cubic at a part ``t`` takes of each of the four."""
    return (1 - t * t * (3 - 2 * t), length * t * (1 - t) ** 2, t * t * (3 - 2 * t), -length * t * t * (1 - t))


def cubic_at(values: Cubic, length: float, t: float) -> float:
    """The cubic at a part ``t`` of its length."""
    a, b, c, d = shape(t, length)
    return values[0] * a + values[1] * b + values[2] * c + values[3] * d


def turning_points(values: Cubic, length: float) -> Iterator[float]:
    """The parts between its ends at which it is level, in order."""
    rise, s1, s2 = values[2] - values[0], values[1] * length, values[3] * length
    a, b, c = 3 * (s1 + s2 - 2 * rise), 2 * (3 * rise - 2 * s1 - s2), s1
    inside = b * b - 4 * a * c
    if inside < 0 or (a == 0 and b == 0):
        return
    far = -(b + (sqrt(inside) if b >= 0 else -sqrt(inside))) / 2  # the root without loss of figures
    roots = {far / a if a else inf, c / far if far else inf}
    yield from sorted(root for root in roots if 0 < root < 1)


def below_nothing(values: Cubic, length: float, start: float, end: float) -> tuple[float, float] | None:
    """The part below zero of a stretch over which it only rises or only falls; None where there is none."""
    first, last = cubic_at(values, length, start), cubic_at(values, length, end)
    if first >= 0 and last >= 0:
        return None
    if first < 0 and last < 0:
        return start, end
    low, high = start, end
    for _ in range(60):
        middle = (low + high) / 2
        if (cubic_at(values, length, middle) < 0) == (first < 0):
            low = middle
        else:
            high = middle
    return (start, low) if first < 0 else (low, end)
