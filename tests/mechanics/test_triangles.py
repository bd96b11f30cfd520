"""Triangles between scattered points: SciPy's, and on square grids every bit of ground once."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.spatial import ConvexHull, Delaunay, QhullError

from groundsill.mechanics.triangles import edges, triangles


def area(points, corners) -> float:
    (ax, ay), (bx, by), (cx, cy) = (points[i] for i in corners)
    return ((bx - ax) * (cy - ay) - (by - ay) * (cx - ax)) / 2


@pytest.mark.parametrize("seed", range(20))
def test_scattered_points_are_scipys(seed):
    points = np.random.default_rng(seed).uniform(0, 500, (22, 2))
    ours = {tuple(sorted(t)) for t in triangles([(float(x), float(y)) for x, y in points])}
    assert ours == {tuple(sorted(map(int, t))) for t in Delaunay(points).simplices}


@pytest.mark.parametrize(("wide", "high"), [(2, 2), (3, 3), (5, 4), (2, 7)])
def test_a_square_grid_is_covered_once(wide, high):
    points = [(x * 96.0, y * 120.0) for x in range(wide) for y in range(high)]
    found = triangles(points)
    assert len(found) == 2 * (wide - 1) * (high - 1)
    assert all(area(points, t) > 0 for t in found)
    assert sum(area(points, t) for t in found) == pytest.approx(96 * 120 * (wide - 1) * (high - 1))


def test_too_few_in_one_line_or_in_one_place_make_none():
    assert triangles([(0.0, 0.0), (5.0, 1.0)]) == ()
    assert triangles([(0.0, 0.0), (1.0, 1.0), (2.0, 2.0), (9.0, 9.0)]) == ()
    assert triangles([(3.0, 3.0)] * 5) == ()


def test_a_point_told_twice_is_taken_once():
    assert triangles([(0.0, 0.0), (9.0, 0.0), (0.0, 9.0), (9.0, 0.0)]) == ((0, 1, 2),)


def test_every_side_once():
    assert edges([(0, 1, 2), (2, 1, 3)]) == ((0, 1), (0, 2), (1, 2), (1, 3), (2, 3))


@given(st.lists(st.tuples(st.integers(0, 40), st.integers(0, 40)), min_size=3, max_size=18, unique=True))
def test_they_cover_the_hull_and_overlap_nowhere(points):
    """Whole numbers on a small field, so that many lie on one line and on one circle."""
    places = [(float(x), float(y)) for x, y in points]
    found = triangles(places)
    try:
        hull = ConvexHull(np.array(places)).volume
    except QhullError:
        assert found == ()
        return
    assert all(area(places, t) > 0 for t in found)
    assert sum(area(places, t) for t in found) == pytest.approx(hull)
