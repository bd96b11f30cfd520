"""Levels, split levels and what stands on what: upper walls on lower ones, chimneys, joists that overlap."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings

from groundsill.forces.gravity import Load
from groundsill.forces.levels import level_names, levels_of, split_levels, storeys_under
from groundsill.forces.weights import BASE
from groundsill.house.building import Corner, RoofPart, Storey
from groundsill.house.fact import measured, unknown
from groundsill.work.checks import check_house
from groundsill.work.document import House
from tests.fixtures.small_house import small_house
from tests.forces.balance import brought_down, forces_of, larch_street, reading_of, weighed
from tests.forces.houses import houses
from tests.forces.test_gravity import by_hand
from tests.properties.test_force_laws import mirrored, quarter_turn


def built(house: House, **building: Any) -> House:
    return replace(house, survey=replace(house.survey, building=replace(house.survey.building, **building)))


def two_storeys(house: House | None = None, set_back_in: float = 0.0) -> House:
    """The house of the hand calculation with the same storey again on top, its front wall set back by so much."""
    house = house or by_hand()
    building = house.survey.building
    corners = dict(building.corners)
    for key in ("sw0", "se0"):
        corners[f"up-{key}"] = replace(corners[key], y_in=set_back_in)
    corners |= {f"up-{key}": corners[key] for key in ("ne0", "nw0")}
    first = building.storeys["st1"]
    second = replace(
        first, order=2, name="Upper floor", floor_z_in=152.0, outline=tuple(f"up-{c}" for c in first.outline)
    )
    walls = building.walls | {
        f"up-{id}": replace(w, order=10 + w.order, storey="st2", start=f"up-{w.start}", end=f"up-{w.end}")
        for id, w in building.walls.items()
    }
    roof = {id: replace(part, storey="st2") for id, part in building.roof.items()}
    return built(house, corners=corners, storeys={"st1": first, "st2": second}, walls=walls, roof=roof)


# ---- Upper walls ----------------------------------------------------------------------------------------------------


def test_an_upper_wall_hands_down_to_the_wall_right_under_it_and_so_to_its_line() -> None:
    """Side line, dead: two walls 20 x 9 x 15 = 5,400; half the upper ceiling goes front and rear, as does the floor.

    Its own cripple wall 280 and an eighth of the girder's 2,700 dead are as in the one-storey house.
    """
    done = forces_of(two_storeys()).gravity
    for side in ("line2", "line4"):
        assert done.lines[side].dead == pytest.approx(2 * 2700 + 280 + 2700 / 8)
    one, two = forces_of(by_hand()).gravity.lines["line1"], done.lines["line1"]
    wall, half_floor, half_ceiling = 30 * 9 * 15, 30 * 10 * 9, 30 * 10 * 10
    assert two.dead - one.dead == pytest.approx(wall + half_floor + half_ceiling)
    assert two.live - one.live == pytest.approx(30 * 10 * 40)
    assert done.unplaced == Load()


def test_an_upper_wall_a_hand_off_the_lower_one_still_stands_on_it() -> None:
    on, near, off = (forces_of(two_storeys(set_back_in=d)).gravity for d in (0.0, 5.0, 48.0))
    assert near.walls["wl1"].dead == pytest.approx(on.walls["wl1"].dead, rel=0.02)
    assert off.walls["wl1"].dead < on.walls["wl1"].dead - 0.15 * 30 * 9 * 15  # a fifth of its wall goes to the rear
    for done in (on, near, off):
        assert done.unplaced == Load()


def test_an_upper_wall_that_runs_past_the_lower_one_gives_the_rest_to_its_floor() -> None:
    """The lower front wall is left out over a third of its length: that third reaches the walls by the upper floor."""
    house = two_storeys()
    building = house.survey.building
    corners = building.corners | {"cut": Corner(x_in=240.0, y_in=0.0)}
    walls = building.walls | {"wl1": replace(building.walls["wl1"], end="cut")}
    cut = built(house, corners=corners, walls=walls)
    whole, part = forces_of(house).gravity, forces_of(cut).gravity
    upper, own = whole.walls["up-wl1"].dead, 20 * 9 * 15
    assert part.walls["wl1"].dead >= own + 2 / 3 * upper
    assert brought_down(part).dead == pytest.approx(weighed(cut, forces_of(cut)).dead)


def test_a_partition_upstairs_rests_where_the_upper_floor_rests() -> None:
    house = two_storeys()
    partition = small_house().survey.building.partitions["pt1"]
    added = built(house, partitions={"pt1": replace(partition, storey="st2")})
    before, after = forces_of(house).gravity, forces_of(added).gravity
    weight = 20 * 9 * 18
    for line in ("line1", "line3"):  # the upper floor spans from front to rear
        assert after.lines[line].dead - before.lines[line].dead == pytest.approx(weight / 2)
    assert after.lines["line2"].dead == pytest.approx(before.lines["line2"].dead)


@settings(max_examples=60)
@given(houses(with_work=False, storeys=2))
def test_a_house_of_two_storeys_turned_or_mirrored_weighs_the_same_on_every_line_and_post(house: House) -> None:
    here = forces_of(house).gravity
    for other in (quarter_turn(house), mirrored(house)):
        there = forces_of(other).gravity
        for name in ("lines", "posts"):
            for id, load in getattr(here, name).items():
                got = getattr(there, name)[id]
                assert (got.dead, got.live, got.snow) == pytest.approx((load.dead, load.live, load.snow), abs=1e-6)


# ---- Levels ---------------------------------------------------------------------------------------------------------


def beside(house: House, floor_z_in: float) -> House:
    """The fixture with a second storey standing beside it to the east, at some height."""
    building = house.survey.building
    far = {"far-se": Corner(x_in=600.0, y_in=0.0), "far-ne": Corner(x_in=600.0, y_in=240.0)}
    first = building.storeys["st1"]
    second = replace(
        first, order=2, name="Wing", floor_z_in=floor_z_in, outline=("se0", "far-se", "far-ne", "ne0"), ceiling=None
    )
    return built(house, corners=building.corners | far, storeys={"st1": first, "st2": second})


def test_storeys_beside_each_other_at_other_heights_are_one_level_and_a_split_one() -> None:
    reading = reading_of(beside(small_house(), 76.0))
    assert levels_of(reading) == {"st1": 0, "st2": 0}
    assert level_names(reading) == ["floor of Main floor and Wing", "roof"]
    assert split_levels(reading) == (
        "split level: recognised, not solved: the floors of Main floor and Wing stand beside each other 42 in. apart "
        "and count as one level; what ties the two halves together is not checked",
    )
    forces = forces_of(beside(small_house(), 76.0))
    assert split_levels(reading)[0] in forces.warnings
    assert [level.name for level in forces.levels] == level_names(reading)


def test_a_step_of_less_than_a_foot_is_one_floor() -> None:
    reading = reading_of(beside(small_house(), 45.0))
    assert levels_of(reading) == {"st1": 0, "st2": 0}
    assert split_levels(reading) == ()


def test_storeys_over_each_other_are_stacked_and_no_split_level() -> None:
    for set_back in (0.0, 60.0):
        reading = reading_of(two_storeys(set_back_in=set_back))
        assert levels_of(reading) == {"st1": 0, "st2": 1}
        assert storeys_under(reading, "st2") == ["st1"]
        assert split_levels(reading) == ()


def test_a_storey_that_hangs_an_inch_over_its_neighbour_does_not_stand_on_it() -> None:
    house = beside(small_house(), 76.0)
    building = house.survey.building
    corners = building.corners | {"over-s": Corner(x_in=359.0, y_in=0.0), "over-n": Corner(x_in=359.0, y_in=240.0)}
    wing: Storey = replace(building.storeys["st2"], outline=("over-s", "far-se", "far-ne", "over-n"))
    reading = reading_of(built(house, corners=corners, storeys=building.storeys | {"st2": wing}))
    assert levels_of(reading) == {"st1": 0, "st2": 0}


def test_an_upper_storey_over_both_halves_of_a_split_level_stands_on_the_two() -> None:
    house = beside(small_house(), 60.0)
    building = house.survey.building
    top = replace(building.storeys["st1"], name="Top", floor_z_in=180.0, outline=("sw0", "far-se", "far-ne", "nw0"))
    reading = reading_of(built(house, storeys=building.storeys | {"st3": top}))
    assert levels_of(reading) == {"st1": 0, "st2": 0, "st3": 1}
    assert storeys_under(reading, "st3") == ["st1", "st2"]


# ---- Chimneys -------------------------------------------------------------------------------------------------------


def with_chimney(base: str, tied: bool | None) -> House:
    house = small_house()
    chimney = replace(
        house.survey.building.chimneys["chim1"],
        base=base,  # type: ignore[arg-type]
        tied=unknown() if tied is None else measured(tied),
        pcf=measured(120.0),
    )
    return built(house, chimneys={"chim1": chimney})


CHIMNEY = 2 * 2 * 20 * 120.0


@pytest.mark.parametrize(
    ("base", "tied", "shakes", "stands"),
    [
        ("own footing", False, False, False),
        ("own footing", True, True, False),
        ("own footing", None, True, False),
        ("floor", False, True, True),
        ("floor", True, True, True),
        ("foundation wall", False, True, True),
        ("foundation wall", True, True, True),
    ],
)
def test_only_a_free_chimney_on_its_own_footing_leaves_the_house(
    base: str, tied: bool | None, shakes: bool, stands: bool
) -> None:
    without = forces_of(built(small_house(), chimneys={}))
    forces = forces_of(with_chimney(base, tied))
    (item,) = [item for item in forces.items if item.kind == "chimney"]
    assert (item.seismic, item.levels == ((BASE, 1.0),)) == (shakes, not shakes)
    # tied unknown is settled on a range of its own; either way it weighs
    assert forces.weight_lb - without.weight_lb == pytest.approx(CHIMNEY if shakes else 0.0)
    down = brought_down(forces.gravity).dead - brought_down(without.gravity).dead
    assert down == pytest.approx(CHIMNEY if stands else 0.0)


def test_a_chimney_on_the_foundation_wall_loads_the_foundation_there_and_holds_no_wall_down() -> None:
    house = with_chimney("foundation wall", tied=True)
    chimney = house.survey.building.chimneys["chim1"]
    at_rear = built(house, chimneys={"chim1": replace(chimney, at=replace(chimney.at, y_in=232.0))})
    without = forces_of(built(small_house(), chimneys={})).gravity
    rear = forces_of(at_rear).gravity.lines["line3"]
    assert rear.dead - without.lines["line3"].dead == pytest.approx(CHIMNEY)
    assert rear.on_foundation == pytest.approx(CHIMNEY)
    assert forces_of(house).gravity.lines["line3"].on_foundation == 0.0  # in mid floor: no line under it


# ---- Floors ---------------------------------------------------------------------------------------------------------


def test_joist_fields_that_overlap_load_the_floor_once_and_are_told() -> None:
    house = by_hand()
    under = house.survey.underfloor
    wide = replace(under.joists["jf1"], outline=("sw0", "se0", "ne0", "nw0"))
    doubled = replace(
        house, survey=replace(house.survey, underfloor=replace(under, joists=under.joists | {"jf1": wide}))
    )
    done = forces_of(doubled).gravity
    assert done.unplaced == Load()
    assert brought_down(done).live == pytest.approx(600 * 40)
    assert brought_down(done).dead == pytest.approx(brought_down(forces_of(house).gravity).dead)
    assert done.remarks == [
        "floor, Main floor: its joist fields cover 300 sq ft more than there is: they lie on each other or reach past "
        "it; its load is shared out over them in proportion"
    ]


def test_a_sliver_of_floor_without_joists_is_kept_though_not_worth_telling() -> None:
    house = by_hand()
    building = house.survey.building
    corners = building.corners | {"wm0": Corner(x_in=0.0, y_in=118.0), "em0": Corner(x_in=360.0, y_in=118.0)}
    under = house.survey.underfloor
    jf2 = replace(under.joists["jf2"], outline=("gw", "ge", "ne0", "nw0"))
    corners |= {"gw": Corner(x_in=0.0, y_in=120.0), "ge": Corner(x_in=360.0, y_in=120.0)}
    gap = built(house, corners=corners)
    gap = replace(gap, survey=replace(gap.survey, underfloor=replace(under, joists=under.joists | {"jf2": jf2})))
    done = forces_of(gap).gravity
    assert (done.unplaced.dead, done.unplaced.live) == pytest.approx((30 * 2 / 12 * 9, 30 * 2 / 12 * 40))
    assert done.remarks == []
    assert brought_down(done).live == pytest.approx(600 * 40)


def test_each_support_knows_the_roof_it_carries_whatever_the_snow() -> None:
    house = by_hand()
    blank = replace(house, survey=replace(house.survey, site=replace(house.survey.site, snow_psf=unknown())))
    done = forces_of(blank).gravity
    assert done.lines["line1"].roof_ft2 == pytest.approx(32 * 11)
    assert done.lines["line2"].roof_ft2 == 0.0
    assert done.lines["line1"].snow == 0.0
    assert sum(line.roof_ft2 for line in done.lines.values()) == pytest.approx(32 * 22)


def test_two_roof_parts_of_a_house_with_unknown_snow_say_so_once() -> None:
    house = larch_street()
    blank = replace(house, survey=replace(house.survey, site=replace(house.survey.site, snow_psf=unknown())))
    remarks = forces_of(blank).gravity.remarks
    assert remarks.count("roof snow load is not known: none is taken down") == 1
    parts: dict[str, RoofPart] = house.survey.building.roof
    assert len(parts) > 1


def test_the_two_storey_house_is_a_sound_survey() -> None:
    assert check_house(two_storeys()) == ()
