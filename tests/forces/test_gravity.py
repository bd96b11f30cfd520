"""The gravity take-down: nothing is lost from roof to foundation, and a house that can be added up by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings

from groundsill.forces.gravity import Load
from groundsill.house.fact import measured, unknown
from groundsill.work.document import House
from tests.fixtures.small_house import small_house
from tests.forces.balance import brought_down, forces_of, larch_street, weighed
from tests.forces.houses import houses

NEAR = 1e-9


def assert_all_comes_down(house: House) -> None:
    forces = forces_of(house)
    down, weight = brought_down(forces.gravity), weighed(house, forces)
    for kind in ("dead", "live", "snow"):
        assert getattr(down, kind) == pytest.approx(getattr(weight, kind), rel=NEAR, abs=NEAR * weight.dead), kind


@pytest.mark.parametrize("house", [larch_street(), small_house()], ids=["larch-street", "small-house"])
def test_all_that_weighs_comes_down_to_lines_and_posts(house):
    assert_all_comes_down(house)
    assert forces_of(house).gravity.unplaced == Load()


@given(houses(with_work=False))
@settings(max_examples=60)
def test_nothing_is_lost_in_any_old_house(house):
    assert_all_comes_down(house)


def by_hand() -> House:
    """The fixture without chimney and partition, its openings closed, and no line under the girder.

    Roof 8 psf on 0.5 to 1, ceiling 10 psf, walls 15 psf by 9 ft, floor 9 psf, cripple walls 7 psf; 40 psf live, 20 psf
    snow. Ceiling joists, rafters and floor joists all run along y.
    """
    house = small_house()
    building, under, base = house.survey.building, house.survey.underfloor, house.survey.foundation
    building = replace(
        building, chimneys={}, partitions={}, walls={id: replace(w, openings={}) for id, w in building.walls.items()}
    )
    under = replace(
        under,
        lines={id: line for id, line in under.lines.items() if id != "line5"},
        segments={id: s for id, s in under.segments.items() if s.line != "line5"},
    )
    base = replace(base, segments={id: s for id, s in base.segments.items() if s.line != "line5"})
    return replace(house, survey=replace(house.survey, building=building, underfloor=under, foundation=base))


def test_a_house_added_up_by_hand():
    """30 by 20 ft, girder at mid depth, so each outside line along x takes a quarter of the floor and half of the roof.

    Front line, dead: floor 30 x 5 x 9 = 1,350; wall 30 x 9 x 15 = 4,050; half the ceiling 30 x 10 x 10 = 3,000; half
    the roof, 32 x 11 ft in plan with its eaves, along the slope: 352 x 1.1180 x 8 = 3,148.4; cripple wall 30 x 2 x 7 =
    420. Live: 30 x 5 x 40 = 6,000. Snow: 352 x 20 = 7,040.

    Side lines, dead: wall 20 x 9 x 15 = 2,700; cripple wall 20 x 2 x 7 = 280; and an end of the girder, which carries
    30 x 10 x 9 = 2,700 dead and 12,000 live: an eighth of it at each end, a quarter at each of three posts.
    """
    done = forces_of(by_hand()).gravity
    roof = 32 * 11 * 1.25**0.5 * 8
    front = done.lines["line1"]
    assert front.dead == pytest.approx(1350 + 4050 + 3000 + roof + 420)
    assert (front.live, front.snow) == pytest.approx((6000, 7040))
    rear = done.lines["line3"]
    assert rear.dead == pytest.approx(front.dead - 420 + 15 * 2 * 7 + 15 * 16 / 12 * 7)  # half of it 16 in. high
    for side in ("line2", "line4"):
        load = done.lines[side]
        assert load.dead == pytest.approx(2700 + 280 + 2700 / 8)
        assert (load.live, load.snow) == pytest.approx((12_000 / 8, 0))
    for post in done.posts.values():
        assert (post.dead, post.live, post.snow) == pytest.approx((675, 3000, 0))
    assert done.unplaced == Load()


def with_joists(house: House, *kept: str) -> House:
    under = house.survey.underfloor
    joists = {id: f for id, f in under.joists.items() if id in kept}
    return replace(house, survey=replace(house.survey, underfloor=replace(under, joists=joists)))


def test_floor_on_no_joist_field_is_named_and_not_lost():
    house = with_joists(by_hand(), "jf1")
    done = forces_of(house).gravity
    assert (done.unplaced.dead, done.unplaced.live) == pytest.approx((300 * 9, 300 * 40))
    assert done.remarks == ["floor, Main floor: 300 sq ft of it lies on no joist field that lines or girders carry"]
    assert_all_comes_down(house)


def test_joists_that_cross_no_line_carry_their_floor_nowhere():
    """Joists turned to run along the only lines there are: the floor is named as unplaced."""
    house = by_hand()
    under = house.survey.underfloor
    lines = {id: under.lines[id] for id in ("line2", "line4")}
    under = replace(
        under,
        lines=lines,
        girders={},
        posts={},
        segments={id: s for id, s in under.segments.items() if s.line in lines},
    )
    base = replace(
        house.survey.foundation,
        breaks={},
        segments={id: s for id, s in house.survey.foundation.segments.items() if s.line in lines},
    )
    done = forces_of(
        replace(house, alternatives={}, survey=replace(house.survey, underfloor=under, foundation=base))
    ).gravity
    assert done.unplaced.live == pytest.approx(600 * 40)
    assert any("no joist field that lines or girders carry" in remark for remark in done.remarks)


def test_a_girder_that_nothing_holds_is_named():
    house = by_hand()
    under = house.survey.underfloor
    girder = replace(
        under.girders["gd1"],
        start=replace(under.girders["gd1"].start, x_in=24.0),
        end=replace(under.girders["gd1"].end, x_in=336.0),
    )
    house = replace(house, survey=replace(house.survey, underfloor=replace(under, girders={"gd1": girder}, posts={})))
    done = forces_of(house).gravity
    assert done.remarks == ["girder gd1: nothing in the survey holds it up"]
    assert_all_comes_down(house)


@pytest.mark.parametrize("psf", [20.0, 30.0, 31.0, 60.0])
def test_roof_snow_comes_down_once_and_weighs_in_the_earthquake_above_thirty(psf):
    """Above 30 psf a fifth of it counts in the seismic weight (ASCE 7-16 12.7.2), by the plan of the roof."""
    house = by_hand()
    snowy = replace(house, survey=replace(house.survey, site=replace(house.survey.site, snow_psf=measured(psf))))
    bare, loaded = forces_of(house), forces_of(snowy)
    on_plan = 32 * 22 * psf
    assert brought_down(loaded.gravity).snow == pytest.approx(on_plan)
    assert brought_down(loaded.gravity).dead == pytest.approx(brought_down(bare.gravity).dead)
    assert loaded.weight_lb - bare.weight_lb == pytest.approx(0.2 * on_plan if psf > 30 else 0.0)


def test_unknown_snow_is_said_to_be_left_out():
    house = by_hand()
    blank = replace(house, survey=replace(house.survey, site=replace(house.survey.site, snow_psf=unknown())))
    done = forces_of(blank).gravity
    assert "roof snow load is not known: none is taken down" in done.remarks
    assert brought_down(done).snow == 0.0
