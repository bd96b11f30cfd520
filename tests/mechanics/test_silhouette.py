"""A house seen from one side: areas and heights of what shows, held against Shapely's unions."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Polygon
from shapely.ops import unary_union

from groundsill.mechanics.silhouette import Face, strips_seen

WALL = Face(0.0, 30.0, 0.0, 10.0, 10.0)
heights = st.floats(0.0, 30.0)


@st.composite
def faces(draw: st.DrawFn) -> Face:
    """A face somewhere in view, level below and straight above, never upside down."""
    start, wide, low = draw(st.floats(-20.0, 20.0)), draw(st.floats(0.5, 40.0)), draw(st.floats(0.0, 20.0))
    return Face(start, start + wide, low, low + draw(heights), low + draw(heights))


def shape(face: Face) -> Polygon:
    """The same as Shapely has it."""
    corners = ((face.start, face.low), (face.end, face.low), (face.end, face.top_end), (face.start, face.top_start))
    return Polygon(corners)


def shown(of: list[Face]) -> dict[int, tuple[float, float]]:
    """Area and moment of each face over all strips."""
    found: dict[int, tuple[float, float]] = {}
    for strip in strips_seen(of):
        for n, (area, moment) in strip.shown.items():
            before = found.get(n, (0.0, 0.0))
            found[n] = before[0] + area, before[1] + moment
    return found


def test_a_wall_under_a_gable_shows_whole_and_the_gable_above_it() -> None:
    gable = [Face(0.0, 15.0, 10.0, 10.0, 17.5), Face(15.0, 30.0, 10.0, 17.5, 10.0)]
    found = shown([WALL, *gable])
    assert found[0] == pytest.approx((300.0, 1500.0))
    assert found[1][0] + found[2][0] == pytest.approx(30.0 * 7.5 / 2)
    assert (found[1][1] + found[2][1]) / (found[1][0] + found[2][0]) == pytest.approx(12.5)  # a third up the triangle


def test_what_stands_behind_something_higher_does_not_show() -> None:
    assert shown([WALL, Face(5.0, 20.0, 0.0, 9.0, 9.0)]) == {0: pytest.approx((300.0, 1500.0))}
    assert shown([WALL, Face(5.0, 20.0, 0.0, 12.0, 12.0)])[1] == pytest.approx((30.0, 330.0))


def test_a_roof_that_overhangs_shows_no_wall_below_it() -> None:
    found = shown([WALL, Face(-1.0, 31.0, 10.0, 14.0, 14.0)])
    assert found[1][0] == pytest.approx(128.0)


def test_two_slopes_that_cross_are_cut_where_they_cross() -> None:
    rising, falling = Face(0.0, 10.0, 0.0, 0.0, 10.0), Face(0.0, 10.0, 0.0, 10.0, 0.0)
    assert shown([rising, falling]) == {0: pytest.approx((50.0, 500.0 / 3)), 1: pytest.approx((25.0, 125.0))}
    assert [(s.start, s.end) for s in strips_seen([rising, falling])] == [(0.0, 5.0), (5.0, 10.0)]


def test_nothing_shows_of_a_face_without_height_or_width() -> None:
    assert strips_seen([Face(0.0, 10.0, 5.0, 5.0, 5.0), Face(3.0, 3.0, 0.0, 8.0, 8.0)]) == ()


@given(of=st.lists(faces(), min_size=1, max_size=6))
def test_all_that_shows_is_the_union_of_the_faces(of: list[Face]) -> None:
    whole = unary_union([shape(face).buffer(0) for face in of])
    found = shown(of)
    assert sum(area for area, _ in found.values()) == pytest.approx(whole.area, abs=1e-6)
    if whole.area > 1e-3:
        moment = sum(m for _, m in found.values())
        assert moment == pytest.approx(whole.area * whole.centroid.y, rel=1e-6, abs=1e-6)


@given(of=st.lists(faces(), min_size=2, max_size=5))
def test_the_first_face_shows_whole_whatever_stands_behind_it(of: list[Face]) -> None:
    assert shown(of).get(0, (0.0, 0.0))[0] == pytest.approx(shape(of[0]).area, abs=1e-6)
