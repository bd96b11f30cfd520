"""The level survey: the figures by NumPy and by hand, the published limits, what each weighs, and the laws."""

from __future__ import annotations

import dataclasses

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.findings import findings_of
from groundsill.findings.answer import Answer
from groundsill.findings.finding import WEIGHTS
from groundsill.findings.levels import one_in
from groundsill.findings.shape import Measured, Spot, against, shape_of
from groundsill.house.building import Point
from groundsill.house.record import SpotLevel
from groundsill.papers.views.levels_view import contours
from groundsill.standards.distortion_limits.tables import table_angular, table_deflection, table_tilt, table_wood
from groundsill.standards.statics.levels import angular_distortion, deflection_ratio, slope_of_plane
from groundsill.working.errors import OutsideLimits
from tests.fixtures.small_house import small_house

GRID = [(x * 120.0, y * 120.0) for y in range(4) for x in range(4)]
FINE = 0.0001


def spots(heights) -> list[Spot]:
    return [Spot(f"LV{n}", x, y, float(z)) for n, ((x, y), z) in enumerate(zip(GRID, heights, strict=True), start=1)]


def level(heights):
    return shape_of("", spots(heights), FINE)


def house_with(heights, material: str = "poured concrete", floor: str = ""):
    house = small_house()
    told = {
        f"l{n}": SpotLevel(order=n, mark=f"LV{n}", at=Point(x_in=x, y_in=y), height_in=float(z), floor=floor)
        for n, ((x, y), z) in enumerate(zip(GRID, heights, strict=False), start=1)
    }
    base = house.survey.foundation
    segments = {id: dataclasses.replace(s, material=material) for id, s in base.segments.items()}
    survey = dataclasses.replace(house.survey, levels=told, foundation=dataclasses.replace(base, segments=segments))
    return dataclasses.replace(house, survey=survey)


def weighed(house):
    return next(f for f in findings_of(house).findings if f.address.startswith("finding/levels/"))


# ---- The figures -----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("seed", range(8))
def test_the_plane_and_what_is_left_are_numpys(seed):
    heights = np.random.default_rng(seed).normal(size=16)
    shape = level(heights)
    a = np.array([(x, y, 1.0) for x, y in GRID])
    (sx, sy, _), *_ = np.linalg.lstsq(a, heights, rcond=None)
    rest = heights - a @ np.linalg.lstsq(a, heights, rcond=None)[0]
    assert (shape.along_x, shape.along_y) == pytest.approx((sx, sy), rel=1e-9)
    assert shape.tilt.ratio == pytest.approx(np.hypot(sx, sy), rel=1e-9)
    assert shape.rest_in == pytest.approx(rest, abs=1e-10)
    sides = [(i, j) for i in range(16) for j in range(i) if np.hypot(*np.subtract(GRID[i], GRID[j])) < 121]
    square = max(abs(rest[i] - rest[j]) / 120 for i, j in sides)
    assert shape.distortion[0].ratio >= square - 1e-12  # the sides of the grid are among the neighbours


def test_a_floor_tilted_as_one_piece_bends_nowhere():
    shape = level([0.01 * x - 0.004 * y for x, y in GRID])
    assert shape.tilt.ratio == pytest.approx(np.hypot(0.01, 0.004))
    assert shape.falls_to.mark == "LV13"
    assert max(m.ratio for m in (*shape.distortion, *shape.sags, *shape.hogs)) == pytest.approx(0.0, abs=1e-9)


def test_a_trough_by_hand():
    """Both outer columns level, both inner ones an inch low: no tilt, and an inch in 10 ft is 1/120.

    Of three spots in a row 30 ft long the middle one stands an inch under the line: 1/360. Turned over it humps so.
    """
    shape = level([0.0 if x in (0.0, 360.0) else -1.0 for x, _ in GRID])
    assert shape.tilt.ratio == pytest.approx(0.0, abs=1e-12)
    assert shape.distortion[0].ratio == pytest.approx(1 / 120)
    assert shape.sags[0].ratio == pytest.approx(1 / 360)
    assert not shape.hogs
    hump = level([0.0 if x in (0.0, 360.0) else 1.0 for x, _ in GRID])
    assert hump.hogs[0].ratio == pytest.approx(1 / 360)
    assert max((m.ratio for m in hump.sags), default=0.0) == 0.0


def test_the_examples_of_the_formulas():
    assert slope_of_plane(a=0.003, b=0.004) == pytest.approx(0.005)
    assert angular_distortion(r_1=0.2, r_2=-0.2, L=120.0) == pytest.approx(1 / 300)
    assert deflection_ratio(z_1=0.0, z_m=-0.5, z_2=0.0, x=120.0, L=240.0) == pytest.approx(1 / 480)
    assert deflection_ratio(z_1=0.0, z_m=1.0, z_2=2.0, x=120.0, L=240.0) == pytest.approx(0.0)
    with pytest.raises(OutsideLimits, match="between the ends"):
        deflection_ratio(z_1=0.0, z_m=0.0, z_2=0.0, x=250.0, L=240.0)


def test_a_coarse_reading_is_out_by_half_a_division_at_each_spot():
    shape = shape_of("", spots([0.0] * 16), 0.0625)
    assert shape.distortion[0].out <= 0.0625 / 48
    assert min(m.out for m in shape.distortion) > 0.0
    assert shape.tilt.out == pytest.approx(0.0625 / np.hypot(360, 360))


@pytest.mark.parametrize("few", [spots([0.0] * 16)[:3], spots([0.0] * 16)[:4], [spots([0.0] * 16)[0]] * 6])
def test_too_few_or_in_one_line_have_no_shape(few):
    assert shape_of("", few, FINE) is None


@pytest.mark.parametrize(
    ("measured", "expected"),
    [
        ([], "cannot tell"),
        ([Measured(0.002, 0.0005, ())], "yes"),
        ([Measured(0.003, 0.0005, ())], "cannot tell"),
        ([Measured(0.004, 0.0005, ())], "no"),
        ([Measured(0.0035, 0.002, ("a",)), Measured(0.00345, 0.0001, ("b",))], "no"),
    ],
)
def test_three_answers_against_a_limit(measured, expected: Answer):
    answer, one = against(measured, 1 / 300)
    assert answer == expected
    if len(measured) == 2:
        assert one.spots == ("b",)


# ---- The published limits --------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("author", "structure", "walls"),
    [
        ("Skempton and MacDonald 1956", 150, 300),
        ("Meyerhof 1953", 250, 500),
        ("Polshin and Tokar 1957", 200, 500),
        ("Bjerrum 1963", 150, 500),
    ],
)
def test_limits_of_angular_distortion(author, structure, walls):
    table = table_angular()
    assert table.read(author, "structure") == pytest.approx(1 / structure)
    assert table.read(author, "walls crack") == pytest.approx(1 / walls)
    assert table.source_of(author, 0).how == "seen"


def test_limits_of_deflection_and_tilt():
    masonry = table_deflection()
    assert [masonry.read("sags", n) for n in (1, 5)] == [0.0004, 0.0008]
    assert [masonry.read("hogs", n) for n in (1, 5)] == [0.0002, 0.0004]
    assert (masonry.source_of("sags", 0).how, masonry.source_of("hogs", 0).how) == ("seen", "from memory")
    assert [table_tilt().read(row) for row in ("noticed", "looked into", "mended")] == [1 / 250, 1 / 200, 1 / 100]
    assert table_wood().read("wood floor") == pytest.approx(1 / 360)
    assert table_wood().source_of("wood floor", 0).how == "from memory"


# ---- What it weighs --------------------------------------------------------------------------------------------------

FLAT = [0.0] * 16
TILTED = [-0.012 * x for x, _ in GRID]
DIP = [-1.6 if n == 5 else 0.0 for n in range(16)]
SOFT = [-0.7 if n == 5 else 0.0 for n in range(16)]


@pytest.mark.parametrize(
    ("heights", "expected"),
    [
        (FLAT, ("does not matter", "does not matter", "does not matter")),
        (TILTED, ("watch", "does not matter", "does not matter")),
        (SOFT, ("watch", "does not matter", "does not matter")),
        (DIP, ("matters", "watch", "watch")),
        (FLAT[:3], ("cannot tell", "cannot tell", "cannot tell")),
    ],
)
def test_each_shape_weighs_what_it_should(heights, expected):
    found = weighed(house_with(heights))
    assert (found.gravity.weight, found.earthquake.weight, found.durability.weight) == expected
    assert found.active.answer == "cannot tell"
    assert found.cures


def test_masonry_is_held_to_its_own_limits():
    gentle = [-0.4 if x in (120.0, 240.0) else 0.0 for x, _ in GRID]
    keys = {r.key: r.answer for r in weighed(house_with(gentle, "brick")).gravity.reasons}
    assert keys["masonry_sags"] == "no"
    assert keys["sags"] == "yes"
    assert not any(r.key.startswith("masonry") for r in weighed(house_with(gentle)).gravity.reasons)


def test_floors_are_weighed_apart():
    house = house_with(FLAT, floor="main")
    more = {f"w{n}": SpotLevel(order=99 + n, mark=f"W{n}", at=Point(x_in=x, y_in=y), height_in=12.0, floor="wing")
            for n, (x, y) in enumerate(GRID[:6])}  # fmt: skip
    survey = dataclasses.replace(house.survey, levels=house.survey.levels | more)
    found = [f for f in findings_of(dataclasses.replace(house, survey=survey)).findings if "levels" in f.address]
    assert sorted(f.address for f in found) == ["finding/levels/main", "finding/levels/wing"]
    assert all(f.weight == "does not matter" for f in found)


def test_no_levels_no_finding():
    assert not [f for f in findings_of(house_with([])).findings if "levels" in f.address]


def test_ratios_are_said_as_engineers_say_them():
    assert (one_in(1 / 250), one_in(0.00041), one_in(0.0)) == ("1/250", "1/2,439", "less than 1/10,000")


heights_of = st.lists(st.floats(-2, 2), min_size=16, max_size=16)


@given(heights_of, st.floats(-0.02, 0.02), st.floats(-0.02, 0.02), st.floats(-20, 20))
def test_tilt_and_zero_have_no_part_in_bending(heights, a, b, zero):
    one = level(heights)
    two = level([z + a * x + b * y + zero for z, (x, y) in zip(heights, GRID, strict=True)])
    assert two.distortion[0].ratio == pytest.approx(one.distortion[0].ratio, abs=1e-9)
    for mine, other in ((one.sags, two.sags), (one.hogs, two.hogs)):
        assert (other[0].ratio if other else 0.0) == pytest.approx(mine[0].ratio if mine else 0.0, abs=1e-9)
    assert (two.along_x - one.along_x, two.along_y - one.along_y) == pytest.approx((a, b), abs=1e-9)


@given(heights_of, st.floats(1, 4))
@settings(max_examples=12)
def test_the_same_shape_made_worse_never_weighs_less(heights, times):
    mild, worse = (weighed(house_with([z * f for z in heights])).gravity.weight for f in (0.5, 0.5 * times))
    order = [w for w in WEIGHTS if w != "cannot tell"]
    if "cannot tell" not in (mild, worse):
        assert order.index(worse) <= order.index(mild)


@given(st.lists(st.tuples(st.integers(0, 30), st.integers(0, 30), st.floats(-120, 120)), max_size=20))
def test_any_spots_have_an_answer(rows):
    shape = shape_of("", [Spot("", float(x), float(y), z) for x, y, z in rows], 0.0625)
    if shape is not None:
        assert all(m.ratio >= 0 and m.out > 0 for m in (*shape.distortion, *shape.sags, *shape.hogs))


# ---- The picture -----------------------------------------------------------------------------------------------------


@given(heights_of, st.floats(-2, 2))
def test_every_line_of_equal_height_runs_at_its_height(heights, height):
    """Each piece lies on its triangle's plane at that height."""
    shape = level(heights)
    for start, end in contours(shape, height):
        for at in (start, end):
            assert min(abs(_plane(shape, t, at) - height) for t in shape.triangles if _touches(shape, t, at)) < 1e-6


def _plane(shape, triangle, at) -> float:
    three = [shape.spots[i] for i in triangle]
    a = np.array([(s.x_in, s.y_in, 1.0) for s in three])
    return float(np.array([*at, 1.0]) @ np.linalg.solve(a, [s.z_in for s in three]))


def _touches(shape, triangle, at) -> bool:
    a = np.array([[shape.spots[i].x_in for i in triangle], [shape.spots[i].y_in for i in triangle], [1.0] * 3])
    return bool((np.linalg.solve(a, [*at, 1.0]) > -1e-6).all())
