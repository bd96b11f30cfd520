"""Plan geometry against Shapely and against hand-worked plans."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely.geometry import Point, Polygon

from groundsill.mechanics.plan import area, centroid, inside, length, rotate, simple
from tests.mechanics.shapes import L_SHAPE, T_SHAPE, U_SHAPE, star_polygons

NEAR = 1e-9
GRID = st.tuples(st.integers(0, 4), st.integers(0, 4))


# ---- Areas, centroids, inside, simple -------------------------------------------------------------------------------


@given(star_polygons())
def test_area_and_centroid_of_any_simple_polygon_are_shapelys(points):
    assume(Polygon(points).is_valid)  # two corners at nearly one angle may make a sliver that Shapely refuses
    theirs = Polygon(points)
    assert area(points) == pytest.approx(theirs.area, rel=NEAR)  # anticlockwise: positive
    assert area(points[::-1]) == pytest.approx(-theirs.area, rel=NEAR)
    assert centroid(points) == pytest.approx((theirs.centroid.x, theirs.centroid.y), rel=NEAR, abs=1e-7)


@pytest.mark.parametrize(("points", "size"), [(L_SHAPE, 1368.0), (T_SHAPE, 600.0), (U_SHAPE, 912.0)])
def test_area_of_l_t_and_u_plans(points, size):
    assert area(points) == size == Polygon(points).area


def test_centroid_of_an_l_is_that_of_its_two_rectangles():
    x = (1200 * 15 + 168 * 6) / 1368
    y = (1200 * 20 + 168 * 47) / 1368
    assert centroid(L_SHAPE) == pytest.approx((x, y), rel=1e-14)


@given(star_polygons(), st.integers(-400, 400), st.integers(-400, 400))
def test_a_point_is_inside_where_shapely_says_so(points, dx, dy):
    point = (points[0][0] + dx + 0.37, points[0][1] + dy + 0.41)
    assume(Polygon(points).is_valid and Polygon(points).exterior.distance(Point(point)) > 1e-6)
    assert inside(point, points) == Polygon(points).contains(Point(point))


@given(st.lists(GRID, min_size=3, max_size=7))
def test_an_outline_is_simple_where_shapely_calls_it_valid(points):
    """Corners on a coarse grid: crossings, touching corners, sides that fold back, and no area at all."""
    sound = len(set(points)) == len(points) and Polygon(points).is_valid and Polygon(points).area > 0
    assert simple([(float(x), float(y)) for x, y in points]) == sound


def test_right_angles_turn_exactly_and_others_keep_lengths():
    assert [rotate((3.0, 4.0), a) for a in (0, 90, 180, 270, 360, -90)] == [
        (3, 4), (-4, 3), (-3, -4), (4, -3), (3, 4), (4, -3)
    ]  # fmt: skip
    assert length((0, 0), rotate((3.0, 4.0), 33.0)) == pytest.approx(5.0, rel=1e-15)
    assert rotate((1.0, 0.0), 60.0) == pytest.approx((0.5, math.sqrt(3) / 2))
