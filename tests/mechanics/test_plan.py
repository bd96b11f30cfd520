"""Plan geometry and tributary strips against Shapely, against hand-worked plans, and against equilibrium."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString, Point, Polygon, box

from groundsill.mechanics.plan import (
    Support,
    area,
    centroid,
    inside,
    length,
    rotate,
    simple,
    strips,
    strips_of_line,
)
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
GRID = st.tuples(st.integers(0, 4), st.integers(0, 4))


def level(id: str, v: float, low: float = -1000.0, high: float = 1000.0) -> Support:
    return Support(id, low, v, high, v)


def amounts(points, supports):
    return {id: share.amount for id, share in strips(points, supports).items()}


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
    whole, (cu, cv) = area(points), centroid(points)
    shares = strips(points, supports)
    taken = [(shares[s.id], s.v1) for s in supports]
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
    got = {id: share.amount for id, share in strips_of_line(a, b, supports).items()}
    reach = 1 + 1200 / min(t.v1 - s.v1 for s, t in pairwise(supports))
    assert got == pytest.approx(shared_by_shapely(LineString([a, b]), supports), abs=NEAR * length(a, b) * reach)


@given(st.tuples(HALVES, HALVES), st.tuples(HALVES, HALVES), level_supports(rows=True))
def test_a_wall_keeps_its_weight_and_its_moment(a, b, supports):
    shares = strips_of_line(a, b, supports)
    whole = length(a, b) or 1.0  # a line of no length is a unit point
    force = sum(abs(s.amount) for s in shares.values())
    assert sum(s.amount for s in shares.values()) == pytest.approx(whole, abs=NEAR * force)
    about = sum(shares[s.id].amount * s.v1 for s in supports)
    assert about == pytest.approx(whole * (a[1] + b[1]) / 2, abs=NEAR * force * 1000)
    along = sum(s.moment_u for s in shares.values())
    assert along == pytest.approx(whole * (a[0] + b[0]) / 2, abs=NEAR * force * 1000)


def test_a_wall_that_stands_on_a_line_falls_wholly_to_it():
    lines = [level("front", 0), level("hall", 12), level("rear", 30)]
    got = {id: s.amount for id, s in strips_of_line((3, 12), (21, 12), lines).items()}
    assert got == pytest.approx({"front": 0, "hall": 18, "rear": 0}, abs=1e-12)


def test_a_wall_along_the_joists_is_shared_span_by_span():
    got = {
        id: s.amount
        for id, s in strips_of_line((5, 30), (5, 0), [level("a", 0), level("b", 12), level("c", 30)]).items()
    }
    assert got == pytest.approx({"a": 6, "b": 15, "c": 9})


def test_a_chimney_is_a_unit_point_on_the_two_lines_beside_it():
    got = {
        id: s.amount
        for id, s in strips_of_line((5, 9), (5, 9), [level("a", 0), level("b", 12), level("c", 30)]).items()
    }
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
