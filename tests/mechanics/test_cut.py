"""The moment in a floor at a cut, held to closed forms of beams and to Shapely's clipped polygons."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Polygon, box

from groundsill.mechanics.cut import before, moment_at
from groundsill.mechanics.plan import centroid
from tests.mechanics.shapes import star_polygons, stepped_plans

unit = st.floats(0.0, 1.0)
plans = st.one_of(star_polygons(), stepped_plans())


def test_an_evenly_loaded_floor_between_two_lines_is_a_simple_beam() -> None:
    floor = ((0.0, 0.0), (24.0, 0.0), (24.0, 20.0), (0.0, 20.0))
    w, L = 100.0, 24.0
    for x in (0.0, 3.0, 6.0, 12.0, 20.0, 24.0):
        M = moment_at(x, [(w * L, floor)], [(w * L / 2, 0.0), (w * L / 2, L)])
        assert pytest.approx(w * x * (L - x) / 2, abs=1e-9) == M


def test_an_overhang_bends_the_other_way() -> None:
    floor = ((0.0, 0.0), (10.0, 0.0), (10.0, 5.0), (0.0, 5.0))
    w, c = 30.0, 2.0  # lines at 2 and 8 ft: both ends hang over by 2 ft
    holds = [(w * 5.0, 2.0), (w * 5.0, 8.0)]
    assert moment_at(c, [(w * 10.0, floor)], holds) == pytest.approx(-w * c * c / 2)
    assert moment_at(5.0, [(w * 10.0, floor)], holds) == pytest.approx(w * 36 / 8 - w * c * c / 2)


def test_a_wall_along_the_span_a_wall_across_it_and_a_chimney() -> None:
    assert before(((2.0, 0.0), (6.0, 0.0)), 3.0) == (0.25, 2.5)
    assert before(((4.0, 0.0), (4.0, 9.0)), 4.0) == (1.0, 4.0)
    assert before(((4.0, 0.0), (4.0, 9.0)), 3.9) == (0.0, 3.9)
    assert before(((4.0, 1.0),), 4.5) == (1.0, 4.0)
    assert before(((4.0, 1.0),), 4.0) == (0.0, 4.0)


@given(plans, unit)
def test_a_part_of_any_plan_is_what_shapely_clips(points: list[tuple[float, float]], at: float) -> None:
    us = [u for u, _ in points]
    place = min(us) + at * (max(us) - min(us))
    part, middle = before(points, place)
    clipped = Polygon(points).intersection(box(min(us) - 1, -1e6, place, 1e6))
    whole = Polygon(points).area
    assert part * whole == pytest.approx(clipped.area, rel=1e-9, abs=1e-6 * whole)
    if clipped.area > 1e-3 * whole:
        assert middle == pytest.approx(clipped.centroid.x, rel=1e-6, abs=1e-6 * (max(us) - min(us)))


@given(plans, unit, st.floats(1.0, 1e5))
def test_a_floor_held_in_balance_has_no_moment_beyond_its_ends(
    points: list[tuple[float, float]], at: float, load: float
) -> None:
    us = [u for u, _ in points]
    low, high = min(us), max(us)
    middle = centroid(points)[0]
    far = load * (middle - low) / (high - low)
    holds = [(load - far, low), (far, high)]
    assert moment_at(high + 1.0, [(load, points)], holds) == pytest.approx(0.0, abs=1e-6 * load * (high - low + 1.0))
    assert moment_at(low - 1.0, [(load, points)], holds) == 0.0
    turned = [(-u, v) for u, v in reversed(points)]
    place = low + at * (high - low)
    mirrored = moment_at(-place, [(load, turned)], [(force, -u) for force, u in holds])
    assert moment_at(place, [(load, points)], holds) == pytest.approx(mirrored, abs=1e-6 * load * (high - low))
