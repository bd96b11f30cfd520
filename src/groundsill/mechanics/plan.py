"""Plane geometry of house plans: areas, centroids, and the strips of floor that span between supports.

:func:`strips` is the one idea that sharing and gravity take-down both stand on: a plan shape is cut, in thought, into
narrow strips running across its supports; each strip is a simple beam between the two supports on either side, and
overhangs beyond the last one as a cantilever. Summed over the shape this *is* tributary area, it keeps force and
moment in balance to the last digit, and it needs no rule of thumb for L-shaped plans.

Coordinates are plain floats in any one length unit; the answers are in that unit squared.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

__all__ = ["Share", "Support", "area", "centroid", "inside", "length", "rotate", "simple", "strips", "strips_of_line"]

XY = tuple[float, float]

# three Gauss points make the integral of a polynomial of degree five exact; between two events a strip's share is of
# degree two when the supports are parallel, so nothing is lost
_GAUSS = ((-math.sqrt(0.6), 5 / 18), (0.0, 8 / 18), (math.sqrt(0.6), 5 / 18))
_NEAR = 1e-6
_SAME_PLACE = 1e-3  # supports nearer than this along a strip stand at one place


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


@dataclass(frozen=True, slots=True)
class Support:
    """A straight support seen across the strips: from (u1, v1) to (u2, v2), u along it, v along the strips."""

    id: str
    u1: float
    v1: float
    u2: float
    v2: float

    def crosses(self, u: float) -> bool:
        """True when a strip at ``u`` runs over this support."""
        return min(self.u1, self.u2) - _NEAR <= u <= max(self.u1, self.u2) + _NEAR

    def away(self, u: float) -> float:
        """How far a strip at ``u`` passes beyond the support's ends; 0 when it runs over it."""
        return max(min(self.u1, self.u2) - u, u - max(self.u1, self.u2), 0.0)

    def v_at(self, u: float) -> float:
        """Where the strip at ``u`` meets the support (its line carried on beyond its ends)."""
        if abs(self.u2 - self.u1) < _NEAR:
            return (self.v1 + self.v2) / 2
        return self.v1 + (u - self.u1) * (self.v2 - self.v1) / (self.u2 - self.u1)


@dataclass(slots=True)
class Share:
    """What falls to one support: an amount (area or length), its first moment in u, and what came over a collector."""

    amount: float = 0.0
    moment_u: float = 0.0
    collected: float = 0.0


def strips(points: Sequence[XY], supports: Sequence[Support]) -> dict[str, Share]:
    """Share a polygon's area among supports by strips in the v direction.

    ``points`` are (u, v). Where a strip crosses fewer than two supports, all supports count as if they ran on: what
    they then take is also counted as ``collected``, since a collector must bring it to them.
    """
    shares = {s.id: Share() for s in supports}
    if not supports:
        return shares
    cuts, places_at = _events(points, supports), _held_by(supports)
    for u1, u2 in zip(cuts, cuts[1:], strict=False):
        if u2 - u1 < _NEAR:
            continue
        crossed = places_at((u1 + u2) / 2, None)
        for at, weight in _GAUSS:
            u = (u1 + u2) / 2 + at * (u2 - u1) / 2
            places, ran_on = places_at(u, crossed)
            for v1, v2 in _intervals(points, u):
                _spread(shares, places, u, v1, v2, weight * (u2 - u1), ran_on)
    return shares


def strips_of_line(a: XY, b: XY, supports: Sequence[Support]) -> dict[str, Share]:
    """Share a straight line's length among supports in the same way; a line of no length counts as a unit point."""
    shares = {s.id: Share() for s in supports}
    if not supports:
        return shares
    (u1, v1), (u2, v2) = a, b
    whole = length(a, b)
    if abs(u2 - u1) < _NEAR:  # along a strip, or a point
        places, ran_on = _held_by(supports)(u1, None)
        if abs(v2 - v1) < _NEAR:
            _place(shares, places, u1, v1, 1.0, ran_on)
        else:
            _spread(shares, places, u1, min(v1, v2), max(v1, v2), 1.0, ran_on)
        return shares
    cuts = {0.0, 1.0}
    for s in supports:
        for end in (s.u1, s.u2):
            cuts.add((end - u1) / (u2 - u1))
        rise = (v2 - v1) - (s.v_at(u2) - s.v_at(u1))
        if abs(rise) > _NEAR:
            cuts.add((s.v_at(u1) - v1) / rise)
    stops, places_at = sorted(t for t in cuts if 0 <= t <= 1), _held_by(supports)
    for t1, t2 in zip(stops, stops[1:], strict=False):
        if t2 - t1 < 1e-12:
            continue
        crossed = places_at(u1 + (t1 + t2) / 2 * (u2 - u1), None)
        for at, weight in _GAUSS:
            t = (t1 + t2) / 2 + at * (t2 - t1) / 2
            u = u1 + t * (u2 - u1)
            places, ran_on = places_at(u, crossed)
            _place(shares, places, u, v1 + t * (v2 - v1), weight * (t2 - t1) * whole, ran_on)
    return shares


def _events(points: Sequence[XY], supports: Sequence[Support]) -> list[float]:
    """Every u at which the picture changes: corners, support ends, and sides crossing supports."""
    low, high = min(u for u, _ in points), max(u for u, _ in points)
    found = {u for u, _ in points}
    for s in supports:
        found |= {s.u1, s.u2}
        for (u1, v1), (u2, v2) in zip(points, [*points[1:], points[0]], strict=True):
            if abs(u2 - u1) < _NEAR:
                continue
            slope = (v2 - v1) / (u2 - u1)
            own = (s.v2 - s.v1) / (s.u2 - s.u1) if abs(s.u2 - s.u1) > _NEAR else 0.0
            if abs(slope - own) > 1e-12:
                found.add((s.v_at(0.0) - v1 + slope * u1) / (slope - own))
    return sorted(u for u in found if low <= u <= high)


def _intervals(points: Sequence[XY], u: float) -> list[XY]:
    """The stretches of a strip at ``u`` that lie inside the polygon."""
    hits = []
    for (u1, v1), (u2, v2) in zip(points, [*points[1:], points[0]], strict=True):
        if (u1 <= u < u2) or (u2 <= u < u1):
            hits.append(v1 + (u - u1) * (v2 - v1) / (u2 - u1))
    hits.sort()
    return list(zip(hits[::2], hits[1::2], strict=False))


@dataclass(frozen=True, slots=True)
class _Place:
    """A distinct place along a strip where something supports it, and the supports that share it there."""

    v: float
    ids: tuple[str, ...]


Crossed = tuple[list[_Place], bool]


def _held_by(supports: Sequence[Support]) -> Callable[[float, Crossed | None], Crossed]:
    """Where a strip is supported: a function of its ``u`` and of what was found at the middle of its interval, if any.

    Between two events the same supports are crossed; while all of them lie square to the strips and none had to be
    carried on beyond its ends, the places at the middle are those all along.
    """
    low = min(min(s.u1, s.u2) for s in supports)
    high = max(max(s.u1, s.u2) for s in supports)
    level = all(s.v1 == s.v2 for s in supports)

    def places_at(u: float, middle: Crossed | None) -> Crossed:
        if middle is not None and level and not middle[1]:
            return middle
        return _crossed(min(max(u, low), high), supports)  # eaves beyond the outermost hang on the nearest strip

    return places_at


def _crossed(u: float, supports: Sequence[Support]) -> Crossed:
    """The places where a strip is supported, by v, and whether supports had to be carried on beyond their ends."""
    crossing = _places(u, [s for s in supports if s.crosses(u)])
    if len(crossing) >= 2:
        return crossing, False
    everywhere = _places(u, supports)
    return (everywhere, True) if len(crossing) < len(everywhere) else (crossing, False)


def _places(u: float, supports: Sequence[Support]) -> list[_Place]:
    """Distinct places of the supports at ``u``. Of several at one place those nearest along it take the load."""
    found: list[tuple[float, list[Support]]] = []
    for v, support in sorted(((s.v_at(u), s) for s in supports), key=lambda pair: pair[0]):
        if found and v - found[-1][0] < _SAME_PLACE:
            found[-1][1].append(support)
        else:
            found.append((v, [support]))
    places = []
    for v, there in found:
        if len(there) == 1:
            places.append(_Place(v, (there[0].id,)))
            continue
        nearest = min(s.away(u) for s in there)
        places.append(_Place(v, tuple(s.id for s in there if s.away(u) <= nearest + _NEAR)))
    return places


def _place(shares: dict[str, Share], places: list[_Place], u: float, v: float, amount: float, ran_on: bool) -> None:
    """Put a point amount on the two places beside it, by the lever."""
    if len(places) == 1:
        _give(shares, places[0], u, amount, ran_on)
        return
    upper = next((i for i, place in enumerate(places) if place.v >= v), len(places) - 1)
    upper = max(upper, 1)
    first, second = places[upper - 1], places[upper]
    share = (v - first.v) / (second.v - first.v)
    _give(shares, first, u, amount * (1 - share), ran_on)
    _give(shares, second, u, amount * share, ran_on)


def _spread(
    shares: dict[str, Share], places: list[_Place], u: float, v1: float, v2: float, width: float, ran_on: bool
) -> None:
    """Put a uniform stretch of a strip on its supports: the lever is linear, so each piece acts at its middle."""
    cuts = [v1, *(place.v for place in places[1:-1] if v1 < place.v < v2), v2]
    for a, b in zip(cuts, cuts[1:], strict=False):
        _place(shares, places, u, (a + b) / 2, (b - a) * width, ran_on)


def _give(shares: dict[str, Share], place: _Place, u: float, amount: float, ran_on: bool) -> None:
    part = amount / len(place.ids)
    for id in place.ids:
        shares[id].amount += part
        shares[id].moment_u += part * u
        if ran_on:
            shares[id].collected += part
