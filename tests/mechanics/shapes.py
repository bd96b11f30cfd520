"""Plan shapes and supports for the tests of plan geometry, and the same sharing worked out with Shapely."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from hypothesis import strategies as st
from shapely.geometry import box
from shapely.geometry.base import BaseGeometry

from groundsill.mechanics.supports import Support

XY = tuple[float, float]
FAR = 1e5

# The three plans of the trade that are no rectangle, in feet, anticlockwise.
L_SHAPE: list[XY] = [(0, 0), (30, 0), (30, 40), (12, 40), (12, 54), (0, 54)]
T_SHAPE: list[XY] = [(10, 0), (20, 0), (20, 24), (30, 24), (30, 36), (0, 36), (0, 24), (10, 24)]
U_SHAPE: list[XY] = [(0, 0), (40, 0), (40, 30), (28, 30), (28, 12), (12, 12), (12, 30), (0, 30)]


@st.composite
def star_polygons(draw: st.DrawFn) -> list[XY]:
    """A simple polygon, mostly not convex: corners at growing angles round a middle, each at its own distance."""
    corners = draw(st.integers(3, 12))
    radii = draw(st.lists(st.integers(40, 400), min_size=corners, max_size=corners))
    turns = draw(st.lists(st.floats(0.2, 0.8), min_size=corners, max_size=corners))
    x, y = draw(st.integers(-500, 500)), draw(st.integers(-500, 500))
    points = []
    for n, (radius, turn) in enumerate(zip(radii, turns, strict=True)):
        angle = 2 * math.pi * (n + turn) / corners
        points.append((x + radius * math.cos(angle), y + radius * math.sin(angle)))
    return points


@st.composite
def stepped_plans(draw: st.DrawFn) -> list[XY]:
    """A house plan: right angles only, a level front and a rear that steps, in whole feet."""
    widths = draw(st.lists(st.integers(4, 20), min_size=1, max_size=5))
    depths = draw(st.lists(st.integers(8, 40), min_size=len(widths), max_size=len(widths)))
    points: list[XY] = [(0.0, 0.0), (float(sum(widths)), 0.0)]
    right = float(sum(widths))
    for width, depth in zip(reversed(widths), reversed(depths), strict=True):
        points += [(right, float(depth)), (right - width, float(depth))]
        right -= width
    kept = [points[0]]
    for point in points[1:]:
        if point != kept[-1]:
            kept.append(point)
    return kept


@st.composite
def level_supports(draw: st.DrawFn, whole: bool = False, rows: bool = False) -> list[Support]:
    """Supports that lie along u, a foot or more apart in v: whole (running past any plan) or each of its own extent.

    With ``rows`` a place may hold up to three of them in one row, with gaps or lying on each other.
    """
    places = sorted(draw(st.sets(st.integers(-400, 400), min_size=2, max_size=6)))
    found = []
    for n, v in enumerate(places):
        for m in range(draw(st.integers(1, 3)) if rows else 1):
            low = 100.0 * draw(st.integers(-3, 2))  # coarse, so that several often end at one place
            high = low + 100 * draw(st.integers(1, 5))
            ends = (-FAR, FAR) if whole else (low, high)
            found.append(Support(f"s{n}-{m}", ends[0], float(v), ends[1], float(v)))
    return found


def hangs_on(v: float, *rows: Sequence[float]) -> tuple[int, float, float]:
    """What a piece of floor at ``v`` hangs on: which of some rows of places, and the two places of it; maybe one twice.

    Of the first row that can: the two places beside the piece; or the outermost and the first behind it at least as
    far from it as the piece is. If none can, the outermost and the farthest of the last row, two feet apart or more.
    """
    for n, row in enumerate(rows):
        if len(row) < 2:
            continue
        if row[0] <= v <= row[-1]:
            upper = next(place for place in row[1:] if place >= v)
            return n, max(place for place in row if place < upper), upper
        behind, edge = (row[1:], row[0]) if v < row[0] else (row[-2::-1], row[-1])
        for back in behind:
            if abs(back - edge) >= abs(v - edge):
                return n, edge, back
    last = rows[-1]
    edge, far = (last[0], last[-1]) if v < last[0] else (last[-1], last[0])
    return len(rows) - 1, edge, far if abs(far - edge) >= 24 else edge


def turning_points(row: Sequence[float]) -> list[float]:
    """Where what a strip hangs on may change: at the places, and as far beyond the outermost as any is behind."""
    return [*row, *(2 * row[0] - v for v in row), *(2 * row[-1] - v for v in row)]


def shared_by_shapely(shape: BaseGeometry, supports: Sequence[Support]) -> dict[str, float]:
    """What each level support takes, piece by piece, from clipped areas (or lengths) and their centroids.

    Within one piece the lever is a straight line, so a piece of plan acts at its own centroid. In each band of u
    between ends of supports, the supports that run over the band count, else all. Bands beyond the outermost support
    hang on the nearest one.
    """
    found = {s.id: 0.0 for s in supports}
    ends = sorted({e for s in supports for e in (s.u1, s.u2)})
    every = sorted({s.v1 for s in supports})
    at_place = {v: [s.id for s in supports if s.v1 == v] for v in every}
    for low, high in ((-FAR, ends[0]), *pairwise(ends), (ends[-1], FAR)):
        at = min(max((low + high) / 2, ends[0] + 1e-3), ends[-1] - 1e-3)
        over = sorted({s.v1 for s in supports if s.u1 < at < s.u2})
        cuts = sorted({-FAR, FAR, *turning_points(every), *(turning_points(over) if over else ())})
        for bottom, top in pairwise(cuts):
            part = shape.intersection(box(low, bottom, high, top))
            if size(part) > 0:
                _, one, two = hangs_on((max(bottom, -9e4) + min(top, 9e4)) / 2, over, every)
                lever = (part.centroid.y - one) / (two - one) if two != one else 0.0
                for place, amount in ((one, size(part) * (1 - lever)), (two, size(part) * lever)):
                    (id,) = at_place[place]
                    found[id] += amount
    return found


def size(part: BaseGeometry) -> float:
    """Area of what is left of a polygon, length of what is left of a line."""
    return float(part.area or part.length) if part.geom_type != "GeometryCollection" else sum(map(size, part.geoms))
