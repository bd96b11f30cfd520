"""A level floor cut through across its span: the moment in it there, by the equilibrium of the part on one side.

Coordinates are plain floats in any one length unit; the load and the supports push the same way, across the span.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from groundsill.mechanics.plan import XY, area, centroid

__all__ = ["before", "moment_at"]


def before(points: Sequence[XY], place: float) -> tuple[float, float]:
    """How much of a shape lies at u below ``place``, as a part of the whole, and the u of that part's middle.

    A polygon of three or more corners is an area, two points are a length evenly loaded, one point is a point. The
    middle of nothing is ``place`` itself.
    """
    if len(points) == 1:
        return (1.0, points[0][0]) if points[0][0] < place else (0.0, place)
    if len(points) == 2:
        low, high = sorted((points[0][0], points[1][0]))
        if high <= place:
            return 1.0, (low + high) / 2
        part = max(0.0, place - low) / (high - low) if high > low else 0.0
        return (part, (low + place) / 2) if part else (0.0, place)
    kept = _kept(points, place)
    size, whole = area(kept) if len(kept) > 2 else 0.0, area(points)
    if not size:
        return 0.0, place
    return size / whole, centroid(kept)[0]


def _kept(points: Sequence[XY], place: float) -> list[XY]:
    """The polygon's part at u below ``place``; where it falls apart, its pieces hang together along the cut."""
    kept: list[XY] = []
    for (u1, v1), (u2, v2) in zip(points, [*points[1:], points[0]], strict=True):
        if u1 <= place:
            kept.append((u1, v1))
        if (u1 < place < u2) or (u2 < place < u1):
            kept.append((place, v1 + (v2 - v1) * (place - u1) / (u2 - u1)))
    return kept


def moment_at(place: float, loads: Iterable[tuple[float, Sequence[XY]]], holds: Iterable[tuple[float, float]]) -> float:
    """The moment at a cut: what the supports before it hold, less what the loads before it push.

    Args:
        place: u of the cut.
        loads: each load with the shape it is spread evenly over.
        holds: what each support holds, and its u.

    Positive where the floor sags between its supports, as a beam does.
    """
    total = sum(force * (place - u) for force, u in holds if u < place)
    for load, points in loads:
        part, middle = before(points, place)
        total -= load * part * (place - middle)
    return total
