"""The storeys above the lowest floor, as found: by hand on a box, by law on any house, in words on the samples."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings

from groundsill.doors.files import read_house
from groundsill.forces.reading import Reading
from groundsill.forces.seismic import work_out
from groundsill.house.building import Layer, WallOpening
from groundsill.house.fact import measured
from groundsill.house.settle import prepare
from groundsill.loadpath.storey_above import StoreyAbove, StoreyCheck, next_weakest, own_system, storeys_above
from groundsill.loadpath.storey_walls import finishes_of, piers_of
from groundsill.standards.sdpws import rules_of
from groundsill.work.document import House
from groundsill.working.sheet import Sheet
from tests.architecture.reading import ROOT
from tests.forces.houses import houses
from tests.loadpath.two_storeys import BOARDS, PLASTER, STUCCO, above, two_storeys
from tests.papers.views_sample import chain, link, stage

RHO = 1.3


def wall(storeys: tuple[StoreyAbove, ...], mark: str) -> StoreyCheck:
    (found,) = [check for storey in storeys for check in storey.checks if check.mark == mark]
    return found


def opening(low: float, high: float) -> WallOpening:
    return WallOpening(kind="window", from_in=low, to_in=high, sill_in=30, head_in=84)


# ---- By hand --------------------------------------------------------------------------------------------------------


def test_the_force_of_a_storey_is_that_of_every_level_above_its_floor() -> None:
    forces, (lower, upper) = above(two_storeys())
    F = [level.force_lb for level in forces.levels]
    assert lower.force_lb == pytest.approx(F[1] + F[2])
    assert upper.force_lb == pytest.approx(F[2])
    assert (lower.name, upper.name) == ("Main floor", "Upper floor")


def test_each_wall_of_a_box_takes_half_and_boards_are_checked_at_allowable_level() -> None:
    forces, storeys = above(two_storeys((BOARDS,)))
    F = [level.force_lb for level in forces.levels]
    for mark, feet, force in (
        ("E11", 30.0, F[1] + F[2]), ("E12", 20.0, F[1] + F[2]), ("E21", 30.0, F[2]), ("E24", 20.0, F[2]),
    ):  # fmt: skip
        check = wall(storeys, mark)
        assert check.force_lb == pytest.approx(force / 2)
        assert check.length_ft == pytest.approx(feet)
        assert check.demand_plf == pytest.approx(0.7 * RHO * force / 2 / feet)
        assert check.capacity_plf == pytest.approx(50.0)  # horizontal boards: nominal 100 over 2
        assert check.ratio == pytest.approx(0.7 * RHO * force / 2 / feet / 50.0)
        assert (check.level, check.clause) == ("allowable", "SDPWS 2015 Table 4.3D")
        assert check.status == ("fails" if check.ratio > 1 else "passes")


def test_plaster_on_wood_lath_is_checked_at_strength_level_and_is_never_a_pass() -> None:
    forces, storeys = above(two_storeys((BOARDS, PLASTER)))
    check = wall(storeys, "E12")
    force = (forces.levels[1].force_lb + forces.levels[2].force_lb) / 2
    assert check.demand_plf == pytest.approx(RHO * force / 20.0)
    assert check.capacity_plf == 600.0
    assert check.ratio is not None
    assert check.ratio < 1
    assert (check.level, check.status) == ("strength", "indicated")
    assert check.extension == "the value of IEBC Appendix A1, written for masonry buildings, used on a wood house"
    boards = 0.7 * RHO * force / 20.0 / 50.0
    assert check.reason == f"by {BOARDS} alone the ratio is {boards:.2f}"


def test_windows_leave_the_stretches_between_them_and_slender_ones_do_not_count() -> None:
    # stretches of 60, 40 and 80 in. in a side wall of 20 ft, 9 ft high: boards need 54 in., plaster 72 in.
    cut = {"w12": {"a": opening(60, 90), "b": opening(130, 160)}}
    _, storeys = above(two_storeys((BOARDS,), cut))
    check = wall(storeys, "E12")
    assert check.length_ft == pytest.approx((60 + 80) / 12)
    assert check.reason == "1 stretch too slender for its height is not counted"
    _, storeys = above(two_storeys((PLASTER,), cut))
    check = wall(storeys, "E12")
    assert check.length_ft == pytest.approx(80 / 12)
    assert check.reason == "2 stretches too slender for their height are not counted"


def test_a_wall_all_of_slender_stretches_cannot_be_checked_and_keeps_its_force() -> None:
    cut = {"w11": {str(n): opening(40 + 80 * n, 80 + 80 * n) for n in range(4)}}
    _, (lower, _) = above(two_storeys((BOARDS,), cut))
    check = wall((lower,), "E11")
    assert check.status == "cannot be checked"
    assert check.reason == f"every stretch between openings is more slender than the tables allow for {BOARDS}"
    # glass weighs more than this wall does, so a little more than half of the storey's force comes to it
    assert 0.5 * lower.force_lb < check.force_lb < 0.52 * lower.force_lb
    assert "cannot be checked: E11" in lower.headline
    assert lower.verdict in ("fails", "cannot be checked")


def test_an_open_front_fails_by_name_and_is_never_left_out() -> None:
    _, (lower, _) = above(two_storeys((BOARDS,), {"w11": {"a": opening(0, 360)}}))
    check = wall((lower,), "E11")
    assert (check.status, check.ratio, check.capacity_plf) == ("fails", None, 0.0)
    assert check.reason == "open from end to end: no full-height stretch of wall, and no other wall at this side"
    assert lower.percent == 0.0
    assert lower.headline.startswith("Main floor: wall E11 along x carries nothing, open from end to end")


def test_a_bay_between_walls_in_line_is_left_out_and_they_take_its_share() -> None:
    house = two_storeys((BOARDS,))
    building = house.survey.building
    corner = building.corners["se0"]
    corners = {
        **building.corners,
        "b1": replace(corner, x_in=360.0, y_in=96.0), "b2": replace(corner, x_in=384.0, y_in=96.0),
        "b3": replace(corner, x_in=384.0, y_in=144.0), "b4": replace(corner, x_in=360.0, y_in=144.0),
    }  # fmt: skip
    side = building.walls["w12"]
    walls = {
        **building.walls,
        "w12": replace(side, end="b1"),
        "w15": replace(side, order=15, mark="E15", start="b4"),
        "bay": replace(side, order=16, mark="E16", start="b2", end="b3", openings={"a": opening(6, 42)}),
    }
    _, (lower, _) = above(with_building(house, replace(building, corners=corners, walls=walls)))
    bay = wall((lower,), "E16")
    assert bay.status == "does not apply"
    assert bay.reason == "no stretch of it is long enough for its height; other walls take its share"
    along_y = [c.force_lb for c in lower.checks if c.direction == "y"]
    assert math.fsum(along_y) == pytest.approx(lower.force_lb, rel=1e-9)
    assert lower.missing == ()


def test_layers_without_a_strength_cannot_be_checked_and_are_named() -> None:
    _, (lower, upper) = above(two_storeys(("drop or bevel siding", "studs full 2 x 4 at 16 in.")))
    for storey in (lower, upper):
        assert {check.status for check in storey.checks} == {"cannot be checked"}
        assert storey.percent is None
        assert storey.headline == f"{storey.name}: no wall of it could be checked"
    assert wall((lower,), "E11").reason == (
        "no table here has a strength for its layers (drop or bevel siding, studs full 2 x 4 at 16 in.)"
    )


def test_a_direction_without_walls_enough_is_a_result() -> None:
    house = two_storeys((BOARDS,))
    building = house.survey.building
    walls = {id: w for id, w in building.walls.items() if id != "w13"}
    _, (lower, upper) = above(with_building(house, replace(building, walls=walls)))
    told = "Main floor, its walls cannot hold it against force along x: a wall is missing"
    assert lower.missing == (told,)
    assert (lower.percent, lower.verdict) == (0.0, "fails")
    assert lower.headline.startswith(told)
    assert upper.missing == ()


def test_a_storey_without_walls_cannot_be_checked() -> None:
    house = two_storeys((BOARDS,))
    building = house.survey.building
    walls = {id: w for id, w in building.walls.items() if w.storey != "st2"}
    _, (_, upper) = above(with_building(house, replace(building, walls=walls)))
    assert (upper.verdict, upper.headline) == ("cannot be checked", "Upper floor: the survey holds no walls of it")


def with_building(house: House, building: object) -> House:
    return replace(house, survey=replace(house.survey, building=building))  # type: ignore[arg-type]


# ---- What a layer may carry -----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("material", "times", "row", "extension"),
    [
        (BOARDS, 1, "horizontal lumber sheathing, 1x", ""),
        ("diagonal boards 1x", 1, "diagonal lumber sheathing, 1x", ""),
        ("vertical board siding, 1x", 1, "vertical board siding, 1x", ""),
        (PLASTER, 1, "crosswall, plaster on wood or metal lath, one side", "IEBC Appendix A1"),
        (STUCCO, 1, "portland cement plaster 7/8 in. on metal lath", "its lath and nails were not seen"),
        ("portland cement plaster 7/8 in. on metal lath", 1, "portland cement plaster 7/8 in. on metal lath", ""),
        ("ceiling: gypsum board, each 1/8 in.", 4, "crosswall, gypsum board", "IEBC Appendix A1"),
    ],
)
def test_a_known_layer_has_its_row_and_its_extension_by_name(
    material: str, times: float, row: str, extension: str
) -> None:
    (finish,), others = finishes_of(rules_of("sdpws-2015"), (Layer(material=material, psf=measured(2.0), times=times),))
    assert (finish.row, others) == (row, ())
    assert extension in finish.extension
    assert bool(finish.extension) == bool(extension)


@pytest.mark.parametrize(
    ("material", "times"),
    [("ceiling: gypsum board, each 1/8 in.", 3), ("drop or bevel siding", 1), ("boards", 1), ("stucco on lath", 1)],
)
def test_what_no_table_knows_has_no_strength(material: str, times: float) -> None:
    found, others = finishes_of(rules_of("sdpws-2015"), (Layer(material=material, psf=measured(2.0), times=times),))
    assert (found, others) == ((), (material,))


def test_openings_that_touch_or_overlap_leave_no_stretch_between_them() -> None:
    walls = two_storeys((), {"w11": {"a": opening(0, 60), "b": opening(60, 90), "c": opening(80, 120)}})
    assert piers_of(walls.survey.building.walls["w11"], 360.0) == (240.0,)


# ---- Laws -----------------------------------------------------------------------------------------------------------


@settings(max_examples=40, deadline=None)
@given(houses(with_work=False))
def test_the_walls_of_every_storey_hold_all_of_its_force(house: House) -> None:
    best = prepare(house).best
    reading = Reading(best.house, best.marks)
    forces = work_out(reading)
    for storey in storeys_above(reading, forces):
        for direction in ("x", "y"):
            if storey.checks and not any(f"along {direction}" in told for told in storey.missing):
                walls = [c for c in storey.checks if c.direction == direction]
                for n, level in enumerate(forces.levels):
                    whole = 1.0 if n > storey.level and level.weight_lb > 0 else 0.0
                    assert abs(math.fsum(c.shares[n] for c in walls) - whole) < 1e-9
                for c in walls:
                    force = sum(s * f.force_lb for s, f in zip(c.shares, forces.levels, strict=True))
                    assert abs(abs(force) - c.force_lb) <= 1e-9 * storey.force_lb


def test_on_a_sheet_the_figures_are_the_same_and_stand_at_the_check_s_address() -> None:
    house = two_storeys((BOARDS, PLASTER))
    _, plain = above(house)
    with Sheet() as sheet:
        _, recorded = above(house)
    assert [[c.ratio for c in s.checks] for s in recorded] == [[c.ratio for c in s.checks] for s in plain]
    check = wall(recorded, "E12")
    steps = sheet.under(check.address)
    assert {step.id for step in steps} >= {
        "asce7-16/12.4-3", "asce7-16/2.4.5-E", "statics/unit-shear", "old-materials/iebc-a1", "old-materials/crosswall",
        "sdpws-2015/4.3D-lumber",
    }  # fmt: skip
    kinds = {mark.kind for mark in check.marks}
    assert {"from memory", "extension"} <= kinds
    assert any("IEBC Appendix A1" in mark.what for mark in check.marks)


# ---- Words ----------------------------------------------------------------------------------------------------------


def storey(percent: float | None, name: str = "Main floor") -> StoreyAbove:
    _, (lower, _) = above(two_storeys((BOARDS,)))
    return replace(lower, percent=percent, name=name, headline=f"{name}: as told")


def test_the_next_weakest_level_is_told_after_the_level_under_the_floor() -> None:
    line = chain(stage("floor", link("floor", "passes")), percent=125.0)
    weak = replace(line, percent=40.7)
    told = next_weakest((line,), (storey(61.0), storey(80.0, "Upper floor")), True)
    assert told == (
        "after the work the level under the floor carries all of its force and the next weakest level, weaker still, "
        "is Main floor: as told"
    )
    told = next_weakest((line, weak), (storey(61.0), storey(None, "Upper floor")), False)
    assert told == (
        "as found the level under the floor carries 40 % of its force; the next weakest level is Main floor: as told; "
        "nothing is known of Upper floor"
    )
    assert next_weakest((weak,), (storey(None),), True) == (
        "after the work nothing can be said of the storeys above: no wall of them could be checked"
    )


def test_old_finishes_under_panels_r_are_told_with_both_figures() -> None:
    forces, _ = above(two_storeys())
    assert own_system(forces) == (
        "The force is that of system A.15, R 6.5, as for the lines below. The old finishes themselves stand in row "
        "A.17 with R 2: by it every ratio here is 3.25 times as high"
    )


def test_the_sample_on_larch_street_is_held_by_its_plaster_alone_and_that_is_indicated() -> None:
    _, (main,) = above(read_house(ROOT / "samples" / "larch-street" / "house.json"))
    assert main.name == "Main floor"
    assert {c.mark for c in main.checks if c.status == "indicated"} == {"E2", "E5", "E6", "E7"}
    assert {c.mark for c in main.checks if c.status == "cannot be checked"} == {"E1", "E3", "E4"}
    assert main.verdict == "cannot be checked"
    for direction in ("x", "y"):
        found = math.fsum(c.force_lb for c in main.checks if c.direction == direction)
        assert found == pytest.approx(main.force_lb)
