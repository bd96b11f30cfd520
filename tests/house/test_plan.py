"""Outlines and lengths on the plan, held against an independent geometry library."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Point, Polygon

from groundsill.house.plan import (
    area_in2,
    away_from_outline_in,
    corner,
    line_length_in,
    outline_of,
    why_no_outline,
)
from tests.fixtures.small_house import LENGTHS_IN, small_house

SURVEY = small_house().survey
L_SHAPE = [(0.0, 0.0), (360.0, 0.0), (360.0, 120.0), (180.0, 120.0), (180.0, 240.0), (0.0, 240.0)]
grid = st.integers(-4, 4).map(lambda n: 60.0 * n)
outlines = st.lists(st.tuples(grid, grid), min_size=3, max_size=8)


def test_lengths_of_the_small_house() -> None:
    assert {key: line_length_in(SURVEY, key) for key in SURVEY.underfloor.lines} == LENGTHS_IN
    assert line_length_in(SURVEY, "gone") is None
    assert corner(SURVEY, "gone") is None
    assert outline_of(SURVEY, ("sw0", "gone", "ne0")) is None


def test_an_l_shape_is_an_outline_either_way_round() -> None:
    assert why_no_outline(L_SHAPE) is None
    assert why_no_outline(L_SHAPE[::-1]) is None
    assert area_in2(L_SHAPE) == area_in2(L_SHAPE[::-1]) == 360 * 120 + 180 * 120


@pytest.mark.parametrize(
    ("outline", "why"),
    [
        ([], "0 corners"),
        (L_SHAPE[:2], "2 corners"),
        ([(0.0, 0.0)] * 201, "201 corners, more than 200"),
        ([*L_SHAPE, (0.0, 0.0)], "the same place twice"),
        ([(0.0, 0.0), (9.0, 0.0), (9.0, 9.0)], "an area of 40 square inches"),
        ([(0.0, 0.0), (90.0, 0.0), (45.0, 0.0)], "edges that cross, (0, 0)-(90, 0) and (90, 0)-(45, 0)"),
        ([(0.0, 0.0), (90.0, 90.0), (90.0, 0.0), (0.0, 90.0)], "edges that cross, (0, 0)-(90, 90) and (90, 0)-(0, 90)"),
    ],
)
def test_what_is_no_outline_is_told_in_words(outline: list[tuple[float, float]], why: str) -> None:
    assert why_no_outline(outline) == why


def test_an_outline_that_touches_itself_is_none() -> None:
    hourglass = [(0.0, 0.0), (90.0, 0.0), (45.0, 45.0), (90.0, 90.0), (0.0, 90.0), (45.0, 45.5)]
    assert why_no_outline(hourglass) is None
    pinched = [*hourglass[:5], (45.0, 45.0)]
    assert why_no_outline(pinched) == "the same place twice"
    resting = [(0.0, 0.0), (90.0, 0.0), (90.0, 90.0), (45.0, 0.0), (0.0, 90.0)]
    assert why_no_outline(resting) == "edges that cross, (0, 0)-(90, 0) and (90, 90)-(45, 0)"


@given(outlines)
def test_outlines_and_areas_agree_with_shapely(outline: list[tuple[float, float]]) -> None:
    shape = Polygon(outline)
    ours = why_no_outline(outline)
    assert (ours is None) == (shape.is_valid and shape.area > 0 and len(set(outline)) == len(outline))
    if ours is None:
        assert area_in2(outline) == pytest.approx(shape.area)


@given(st.floats(-500, 500), st.floats(-500, 500))
def test_the_distance_from_an_outline_agrees_with_shapely(x: float, y: float) -> None:
    expected = Polygon(L_SHAPE).exterior.distance(Point(x, y))
    assert away_from_outline_in(L_SHAPE, (x, y)) == pytest.approx(expected, abs=1e-9)


def test_nothing_is_near_no_outline() -> None:
    assert away_from_outline_in([], (0.0, 0.0)) == math.inf
    assert away_from_outline_in([(3.0, 4.0)], (0.0, 0.0)) == 5.0
