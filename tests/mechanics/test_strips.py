"""Strips of floor between supports: against hand-worked plans, against Shapely, and against equilibrium."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon, box

from groundsill.mechanics.plan import area, centroid, length
from groundsill.mechanics.strips import ONE_PLACE_IN, strips, strips_of_line
from groundsill.mechanics.supports import Support
from tests import proof
from tests.mechanics.shapes import (
    L_SHAPE,
    T_SHAPE,
    U_SHAPE,
    level_supports,
    shared_by_shapely,
    star_polygons,
    stepped_plans,
)

NEAR = 1e-9


def level(id: str, v: float, low: float = -1000.0, high: float = 1000.0) -> Support:
    return Support(id, low, v, high, v)


def amounts(points, supports):
    return every(strips(points, supports), supports)


def along(a, b, supports):
    return every(strips_of_line(a, b, supports), supports)


def every(shares, supports):
    """The amount of every support, those that take nothing too."""
    return {s.id: 0.0 for s in supports} | {id: share.amount for id, share in shares.items()}


# ---- Strips: hand-worked plans --------------------------------------------------------------------------------------


def test_a_rectangle_between_two_lines_falls_half_to_each():
    shares = strips([(0, 0), (40, 0), (40, 30), (0, 30)], [level("front", 0), level("rear", 30)])
    assert (shares["front"].amount, shares["rear"].amount) == (600.0, 600.0)
    assert shares["front"].moment_u == pytest.approx(600 * 20)  # the middle of its length
    assert shares["front"].collected == 0.0


def test_an_eave_beyond_the_last_line_hangs_on_it_by_the_lever():
    """A floor 30 ft wide with a 2 ft overhang: 32/30 of the reaction at the near line, taken off the far one."""
    shares = amounts([(0, -2), (10, -2), (10, 30), (0, 30)], [level("near", 0), level("far", 30)])
    assert shares == pytest.approx({"near": 10 * 32 * 16 / 30, "far": 10 * 32 * 14 / 30})


def test_a_line_inside_takes_half_of_both_bays():
    rectangle = [(0, 0), (24, 0), (24, 30), (0, 30)]
    got = amounts(rectangle, [level("front", 0), level("hall", 12), level("rear", 30)])
    assert got == pytest.approx({"front": 24 * 6, "hall": 24 * 15, "rear": 24 * 9})


def test_a_line_that_runs_half_way_counts_only_where_it_runs():
    rectangle = [(0, 0), (24, 0), (24, 30), (0, 30)]
    got = amounts(rectangle, [level("front", 0), level("hall", 12, 0, 10), level("rear", 30)])
    assert got == pytest.approx({"front": 10 * 6 + 14 * 15, "hall": 10 * 15, "rear": 10 * 9 + 14 * 15})


def test_an_l_shaped_plan_shares_each_leg_between_its_own_lines():
    """Lines along all three level sides: 12 ft of width spans 54 ft, the other 18 ft spans 40 ft."""
    lines = [level("front", 0, 0, 30), level("step", 40, 12, 30), level("wing", 54, 0, 12)]
    assert amounts(L_SHAPE, lines) == pytest.approx({"front": 12 * 27 + 18 * 20, "step": 18 * 20, "wing": 12 * 27})


def test_a_t_shaped_plan_with_lines_on_its_level_sides():
    """The stem is carried from the front to the flange's rear: no line stands at its throat."""
    lines = [level("front", 0, 10, 20), level("left", 24, 0, 10), level("right", 24, 20, 30), level("rear", 36, 0, 30)]
    assert amounts(T_SHAPE, lines) == pytest.approx({"front": 180, "left": 60, "right": 60, "rear": 60 + 180 + 60})


def test_a_u_shaped_plan_crosses_its_court_without_counting_it():
    lines = [level("front", 0, 0, 40), level("court", 12, 12, 28), level("left", 30, 0, 12), level("right", 30, 28, 40)]
    assert amounts(U_SHAPE, lines) == pytest.approx(
        {"front": 12 * 15 * 2 + 16 * 6, "court": 96, "left": 180, "right": 180}
    )


def test_where_one_line_alone_stands_a_collector_brings_the_rest():
    """Past the end of the rear line its strips hang on front and rear all the same, and that much is collected."""
    rectangle = [(0, 0), (24, 0), (24, 30), (0, 30)]
    shares = strips(rectangle, [level("front", 0, 0, 24), level("rear", 30, 0, 16)])
    assert shares["rear"].amount == pytest.approx(360)
    assert shares["rear"].collected == pytest.approx(8 * 15)
    assert shares["front"].collected == pytest.approx(8 * 15)


def test_an_eave_past_the_ends_of_the_lines_hangs_on_the_nearest_strip():
    """The hall line stops short of the side wall, so past the side the eave spans front to rear, as there."""
    points = [(0, 0), (26, 0), (26, 30), (0, 30)]
    lines = [level("front", 0, 0, 24), level("hall", 10, 0, 12), level("rear", 30, 0, 24)]
    shares = strips(points, lines)
    assert shares["hall"].amount == pytest.approx(12 * 15)
    assert shares["front"].amount == pytest.approx(12 * 5 + 14 * 15)
    assert shares["rear"].collected == 0.0


def test_one_line_alone_takes_all_and_none_take_nothing():
    assert amounts(L_SHAPE, [level("only", 5)]) == {"only": pytest.approx(1368)}
    assert strips(L_SHAPE, []) == {}
    assert strips_of_line((0, 0), (1, 1), []) == {}


# ---- What hangs out --------------------------------------------------------------------------------------------------


def test_two_lines_inches_apart_do_not_hold_half_a_floor_by_a_lever_of_inches():
    """Front doubled 4 in. behind it; the rear stops half way. There it runs on by a collector, and takes its half.

    Of the 20 ft where front and double alone are crossed, the double holds the first 4 in. beyond itself against the
    front, which the 4 in. between them just offset; the rest lies between the double and the rear.
    """
    lines = [level("front", 0, 0, 480), level("double", 4, 0, 480), level("rear", 360, 0, 240)]
    shares = strips([(0, 0), (480, 0), (480, 360), (0, 360)], lines)
    front, rear = 240 * 2 + 0, 240 * 178 + 240 * (356 / 2 - 4 * 4 / 356 / 2)
    assert shares["front"].amount == pytest.approx(front)
    assert shares["rear"].amount == pytest.approx(rear)
    assert shares["double"].amount == pytest.approx(480 * 360 - front - rear)
    assert shares["rear"].collected == pytest.approx(240 * (356 / 2 - 4 * 4 / 356 / 2))


def test_an_eave_beyond_a_doubled_wall_is_held_down_far_enough_behind():
    """18 in. of eave beyond walls 4 in. apart: the first 4 in. hang on the pair, the rest on the outer and the rear."""
    lines = [level("outer", 0), level("inner", 4), level("rear", 364)]
    shares = amounts([(0, -18), (10, -18), (10, 0), (0, 0)], lines)
    far = 10 * (18**2 - 4**2) / 2 / 364
    assert shares == pytest.approx({"outer": 180 + 20 + far, "inner": -20, "rear": -far})


def test_a_piece_never_puts_more_than_twice_itself_on_a_line_while_one_stands_far_enough_behind():
    lines = [level("a", 0), level("b", 30), level("c", 100)]
    for v, want in ((130, (0, -3 / 7, 10 / 7)), (165, (0, -65 / 70, 135 / 70)), (175, (-0.75, 0, 1.75))):
        assert along((5, v), (5, v), lines) == pytest.approx(dict(zip("abc", want, strict=True)))


def test_floor_that_hangs_out_farther_than_the_lines_are_apart_is_told():
    """Lines at 0 and 100, floor to 250: what lies beyond 200 is too far out, and still held by what there is."""
    shares = strips([(0, 0), (10, 0), (10, 250), (0, 250)], [level("near", 0), level("far", 100)])
    assert shares["far"].overhung == pytest.approx(10 * 50)
    assert shares["near"].overhung == 0.0
    assert shares["far"].amount == pytest.approx(10 * 250 * 1.25)
    assert shares["near"].amount == pytest.approx(10 * 250 * -0.25)


def test_lines_under_two_feet_apart_are_one_place_that_no_lever_turns_about():
    shares = strips([(0, 0), (10, 0), (10, 250), (0, 250)], [level("near", 0), level("far", 23)])
    assert shares["near"].amount == pytest.approx(0.0)  # half of what lies between, less what hangs out as far
    assert shares["far"].amount == pytest.approx(10 * 250)
    assert shares["far"].overhung == pytest.approx(10 * (250 - 46))


def test_a_line_at_an_angle_runs_on_level_since_a_collector_runs_along_the_force():
    """A flank that rises 24 in. over 24: beyond its end the collector stays where the flank ended."""
    lines = [level("front", 0, 0, 100), Support("flank", 0.0, 40.0, 24.0, 64.0)]
    shares = along((60, 32), (60, 32), lines)
    assert shares == pytest.approx({"front": 0.5, "flank": 0.5})


# ---- Lines that meet and cross ---------------------------------------------------------------------------------------

EAVES = [(-18.0, -18.0), (378.0, -18.0), (378.0, 498.0), (-18.0, 498.0)]
CROSSED = [
    Support("front", 0, 0, 360, 0), Support("rear", 0, 480, 360, 480), Support("slant", 0, 0, 360, 480),
    Support("other", 0, 480, 360, 0),
]  # fmt: skip


def with_corners(points, count):
    """The same outline with more corners on its straight sides."""
    return [
        (a[0] + (b[0] - a[0]) * n / count, a[1] + (b[1] - a[1]) * n / count)
        for a, b in pairwise([*points, points[0]])
        for n in range(count)
    ]


@pytest.mark.parametrize("supports", [CROSSED, CROSSED[:3], CROSSED[2:]], ids=["four", "one slant", "two diagonals"])
@pytest.mark.parametrize("count", [2, 7, 32, 256])
def test_corners_on_a_straight_side_change_no_share(supports, count):
    """Diagonals cross in the middle and start at the corners of the front, under an eave."""
    one, other = amounts(EAVES, supports), amounts(with_corners(EAVES, count), supports)
    assert other == pytest.approx(one, abs=1e-11 * area(EAVES))


@given(star_polygons(), st.integers(2, 40), st.data())
@settings(max_examples=60)
def test_corners_on_a_straight_side_change_no_share_over_any_lines(points, count, data):
    assume(Polygon(points).is_valid)
    places = st.integers(-500, 500)
    ends = data.draw(st.lists(st.tuples(places, places, places, places), min_size=1, max_size=5, unique=True))
    supports = [Support(f"s{n}", *map(float, e)) for n, e in enumerate(ends) if e[0] != e[2]]
    one, other = amounts(points, supports), amounts(with_corners(points, count), supports)
    assert other == pytest.approx(one, abs=1e-9 * area(points))
    assert sum(one.values()) == pytest.approx(area(points) if supports else 0.0)


def test_between_lines_that_meet_each_strip_gives_half_to_each():
    """A wedge from nothing to 40 ft deep: half to either side, to the very tip."""
    shares = amounts([(0, 0), (60, -20), (60, 20)], [Support("lower", 0, 0, 60, -20), Support("upper", 0, 0, 60, 20)])
    assert shares == pytest.approx({"lower": 600.0, "upper": 600.0}, rel=1e-14)


def test_floor_beside_lines_that_spread_is_shared_as_the_logarithm_says():
    """A band 10 deep along a level line, the other rising from 10 to 40 over 60: the other takes 50 / d of each strip.

    Integrated: 50 x 60 / 30 x ln 4.
    """
    shares = amounts([(0, 0), (60, 0), (60, 10), (0, 10)], [level("level", 0), Support("rising", 0, 10, 60, 40)])
    assert shares["rising"] == pytest.approx(100 * math.log(4), rel=1e-12)


# ---- Strips: against Shapely ----------------------------------------------------------------------------------------


@given(stepped_plans())
def test_lines_along_every_level_side_take_the_tributary_area_shapely_cuts_out(points):
    """With a line on each side across the strips, tributary area runs to the middle of every bay, and no further."""
    lines = [Support(f"s{n}", min(a[0], b[0]), a[1], max(a[0], b[0]), b[1])
             for n, (a, b) in enumerate(pairwise([*points, points[0]])) if a[1] == b[1]]  # fmt: skip
    front, rear = lines[0], lines[1:]
    plan, got = Polygon(points), amounts(points, lines)
    for line in rear:
        cut = plan.intersection(box(line.u1, line.v1 / 2, line.u2, line.v1))
        assert got[line.id] == pytest.approx(cut.area, rel=NEAR)
    assert got[front.id] == pytest.approx(plan.area - sum(got[line.id] for line in rear), rel=NEAR)


@given(star_polygons(), level_supports(whole=True))
def test_any_polygon_over_lines_that_run_past_it_is_shared_as_shapely_cuts_it(points, supports):
    plan = Polygon(points)
    assume(plan.is_valid)
    reach = 1 + max(abs(v) for _, v in points) / min(b.v1 - a.v1 for a, b in pairwise(supports))
    assert amounts(points, supports) == pytest.approx(shared_by_shapely(plan, supports), abs=NEAR * plan.area * reach)


@given(star_polygons(), level_supports())
def test_any_polygon_over_lines_of_any_extent_is_shared_as_shapely_cuts_it(points, supports):
    plan = Polygon(points)
    assume(plan.is_valid)
    reach = 1 + max(abs(v) for _, v in points) / min(b.v1 - a.v1 for a, b in pairwise(supports))
    assert amounts(points, supports) == pytest.approx(shared_by_shapely(plan, supports), abs=NEAR * plan.area * reach)


# ---- Strips: equilibrium and symmetry -------------------------------------------------------------------------------


@given(star_polygons(), level_supports(rows=True))
def test_force_and_moment_are_kept_for_any_polygon_over_any_parallel_lines(points, supports):
    assume(Polygon(points).is_valid)
    assume(supports[-1].v1 - supports[0].v1 >= ONE_PLACE_IN)
    whole, (cu, cv) = area(points), centroid(points)
    shares = strips(points, supports)
    taken = [(shares[s.id], s.v1) for s in supports if s.id in shares]
    force = sum(abs(share.amount) for share, _ in taken)
    reach = max(abs(v) for v in (*(p[1] for p in points), *(s.v1 for s in supports)))
    across = max(abs(u) for u, _ in points)
    assert sum(share.amount for share, _ in taken) == pytest.approx(whole, abs=NEAR * force)
    assert sum(share.amount * v for share, v in taken) == pytest.approx(whole * cv, abs=NEAR * force * reach)
    assert sum(share.moment_u for share, _ in taken) == pytest.approx(whole * cu, abs=NEAR * force * across)


@given(star_polygons(), st.lists(st.integers(-300, 300), min_size=4, max_size=8, unique=True))
def test_force_is_kept_over_lines_that_are_not_parallel(points, places):
    assume(Polygon(points).is_valid)
    ordered = sorted(places)
    ends = list(zip(ordered[::2], ordered[1::2], strict=False))  # each line keeps to its own band: they never cross
    supports = [Support(f"s{n}", -950.0, float(low), 950.0, float(high)) for n, (low, high) in enumerate(ends)]
    shares = strips(points, supports)
    force = sum(abs(s.amount) for s in shares.values())
    assert sum(s.amount for s in shares.values()) == pytest.approx(area(points), abs=NEAR * force)


@given(star_polygons(), level_supports(rows=True))
def test_a_plan_seen_in_a_mirror_has_the_same_shares(points, supports):
    assume(Polygon(points).is_valid)
    flipped = [Support(s.id, s.u1, -s.v1, s.u2, -s.v2) for s in supports]
    across = [Support(s.id, -s.u2, s.v2, -s.u1, s.v1) for s in supports]
    here = amounts(points, supports)
    close = NEAR * sum(abs(a) for a in here.values())
    assert amounts([(u, -v) for u, v in points], flipped) == pytest.approx(here, abs=close)
    assert amounts([(-u, v) for u, v in points], across) == pytest.approx(here, abs=close)


@pytest.mark.parametrize("plan", [T_SHAPE, U_SHAPE])
def test_a_symmetric_plan_has_symmetric_shares(plan):
    """Strips along x between the end walls and two walls inside: left equals right, to the last digit."""
    wide = max(u for u, _ in plan)
    turned = [(v, u) for u, v in plan][::-1]
    lines = [level("left", 0), level("inner left", wide * 0.3), level("inner right", wide * 0.7), level("right", wide)]
    shares = amounts(turned, lines)
    assert shares["left"] == pytest.approx(shares["right"], rel=1e-14)
    assert shares["inner left"] == pytest.approx(shares["inner right"], rel=1e-14)


def test_an_eave_beyond_two_lines_in_one_row_keeps_its_moment():
    """A front wall in two parts with a gap between; over the gap the eave still levers about the rear line."""
    points = [(0.0, -2.0), (30.0, -2.0), (30.0, 10.0), (0.0, 10.0)]
    shares = amounts(points, [level("a", 0, 0, 10), level("b", 0, 20, 30), level("rear", 10, 0, 30)])
    assert shares["rear"] * 10 == pytest.approx(area(points) * centroid(points)[1])
    assert shares["a"] == pytest.approx(shares["b"])  # the plan is symmetric


# ---- Lines and points on the strips ---------------------------------------------------------------------------------

HALVES = st.integers(-600, 600).map(lambda n: n + 0.5)  # never exactly on a support, where two bays would both claim it


@given(st.tuples(HALVES, HALVES), st.tuples(HALVES, HALVES), level_supports())
def test_any_wall_over_lines_of_any_extent_is_shared_as_shapely_cuts_it(a, b, supports):
    assume(a != b)
    got = along(a, b, supports)
    reach = 1 + 1200 / min(t.v1 - s.v1 for s, t in pairwise(supports))
    assert got == pytest.approx(shared_by_shapely(LineString([a, b]), supports), abs=NEAR * length(a, b) * reach)


@given(st.tuples(HALVES, HALVES), st.tuples(HALVES, HALVES), level_supports(rows=True))
def test_a_wall_keeps_its_weight_and_its_moment(a, b, supports):
    assume(supports[-1].v1 - supports[0].v1 >= ONE_PLACE_IN)
    shares = strips_of_line(a, b, supports)
    whole = length(a, b) or 1.0  # a line of no length is a unit point
    force = sum(abs(s.amount) for s in shares.values())
    assert sum(s.amount for s in shares.values()) == pytest.approx(whole, abs=NEAR * force)
    about = sum(shares[s.id].amount * s.v1 for s in supports if s.id in shares)
    assert about == pytest.approx(whole * (a[1] + b[1]) / 2, abs=NEAR * force * 1000)
    along = sum(s.moment_u for s in shares.values())
    assert along == pytest.approx(whole * (a[0] + b[0]) / 2, abs=NEAR * force * 1000)


def test_a_wall_that_stands_on_a_line_falls_wholly_to_it():
    lines = [level("front", 0), level("hall", 12), level("rear", 30)]
    got = along((3, 12), (21, 12), lines)
    assert got == pytest.approx({"front": 0, "hall": 18, "rear": 0}, abs=1e-12)


def test_a_wall_along_the_joists_is_shared_span_by_span():
    got = along((5, 30), (5, 0), [level("a", 0), level("b", 12), level("c", 30)])
    assert got == pytest.approx({"a": 6, "b": 15, "c": 9})


def test_a_chimney_is_a_unit_point_on_the_two_lines_beside_it():
    got = along((5, 9), (5, 9), [level("a", 0), level("b", 12), level("c", 30)])
    assert got == pytest.approx({"a": 0.25, "b": 0.75, "c": 0})


@pytest.mark.proof
def test_three_thousand_plans_over_lines_of_any_extent_agree_with_shapely():
    seen = {"plans": 0, "worst": 0.0}

    @given(star_polygons(), level_supports())
    @settings(max_examples=3000, suppress_health_check=list(HealthCheck), deadline=None)
    def one(points, supports):
        plan = Polygon(points)
        assume(plan.is_valid)
        ours, theirs = amounts(points, supports), shared_by_shapely(plan, supports)
        size = sum(abs(amount) for amount in theirs.values())
        seen["plans"] += 1
        seen["worst"] = max(seen["worst"], max(abs(ours[id] - theirs[id]) for id in ours) / size)
        assert seen["worst"] < NEAR

    one()
    assert seen["plans"] >= 3000
    proof.record(
        "tributary strips against Shapely",
        f"{seen['plans']:,} plans of 3 to 12 corners over 2 to 6 lines: areas differ by {seen['worst']:.1e} of it at "
        f"the most (limit {NEAR:.0e})",
    )
