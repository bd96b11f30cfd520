"""The forces of the lines hold the force of the house: along x, along y, and about any point."""

from __future__ import annotations

from dataclasses import dataclass, replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from groundsill.house.fact import measured
from groundsill.study import run
from groundsill.work.checks import check_house
from groundsill.work.document import House
from tests import proof
from tests.fixtures.small_house import small_house
from tests.forces.balance import brought_down, forces_of, larch_street, moments, signed_forces, weighed
from tests.forces.houses import houses

NEAR = 1e-9
POINTS = st.tuples(st.integers(-5000, 5000), st.integers(-5000, 5000))


def worst_miss(house: House, about: tuple[float, float]) -> float:
    """How far the lines miss force or moment of a house, as a share of the forces and of their moments at stake."""
    forces = forces_of(house)
    assert forces.missing == ()
    V, miss = forces.base_shear_lb, 0.0
    miss = max(miss, abs(sum(level.force_lb for level in forces.levels) - V) / V)
    for direction in ("x", "y"):
        along = signed_forces(forces, direction)
        size = sum(abs(force) for force in along.values())
        asked, held, turning = moments(house, forces, direction, about)
        miss = max(miss, abs(sum(along.values()) - V) / size, abs(asked - held) / turning)
        for id, force in along.items():
            assert forces.lines[id].force_lb == pytest.approx(abs(force), rel=1e-12, abs=1e-9)
    return miss


@pytest.mark.parametrize("house", [larch_street(), small_house()], ids=["larch-street", "small-house"])
@pytest.mark.parametrize("about", [(0.0, 0.0), (1000.0, -700.0), (-90.0, 4000.0)])
def test_the_lines_hold_the_house_about_any_point(house, about):
    assert worst_miss(house, about) < NEAR


@given(houses(with_work=False), POINTS)
@settings(max_examples=60)
def test_the_lines_of_any_old_house_hold_it_about_any_point(house, about):
    assert worst_miss(house, about) < NEAR


@given(houses())
@settings(max_examples=25)
def test_any_old_house_is_sound_and_has_a_study(house):
    assert [fault.line() for fault in check_house(house)] == []
    study = run(house, ranges=False)
    assert {chain.id for chain in study.runs[0].chains} == set(house.survey.underfloor.lines)


def test_lines_that_are_not_relied_on_take_nothing():
    line = forces_of(small_house()).lines["line5"]
    assert (line.relied_on, line.reason) == (False, "posts on pads carry no earthquake force")
    assert (line.force_lb, set(line.shares)) == (0.0, {0.0})


def even_house() -> House:
    """The fixture made symmetric both ways: no chimney, partition or opening, one height of cripple wall."""
    house = small_house()
    building, under = house.survey.building, house.survey.underfloor
    building = replace(
        building, chimneys={}, partitions={}, walls={id: replace(w, openings={}) for id, w in building.walls.items()}
    )
    level = {id: replace(s, height_in=measured(24.0)) for id, s in under.segments.items()}
    survey = replace(house.survey, building=building, underfloor=replace(under, segments=level))
    return replace(house, survey=survey)


def test_a_symmetric_house_is_shared_evenly():
    lines = forces_of(even_house()).lines
    assert lines["line1"].force_lb == pytest.approx(lines["line3"].force_lb, rel=1e-14)
    assert lines["line2"].force_lb == pytest.approx(lines["line4"].force_lb, rel=1e-14)
    assert lines["line1"].force_lb == pytest.approx(forces_of(even_house()).base_shear_lb / 2, rel=1e-14)


def only(*relied: str) -> House:
    """The fixture with just these lines relied on."""
    house = small_house()
    under = house.survey.underfloor
    lines = {id: replace(w, relied_on=id in relied, relied_reason="as said") for id, w in under.lines.items()}
    return replace(house, survey=replace(house.survey, underfloor=replace(under, lines=lines)))


@pytest.mark.parametrize(
    ("relied", "along", "words"),
    [
        (("line1", "line3"), "y", "no line is relied on along y: a line is missing there"),
        (("line1", "line2", "line4"), "x", "only one line is relied on along x: a line is missing there"),
    ],
)
def test_a_direction_without_two_lines_is_named(relied, along, words):
    assert [(m.direction, m.reason) for m in forces_of(only(*relied)).missing] == [(along, words)]


def test_two_lines_in_one_row_are_one_place_and_leave_a_line_missing():
    house = only("line1", "line2", "line3", "line4")
    under = house.survey.underfloor
    lines = under.lines | {"line3": replace(under.lines["line3"], start="sw0", end="se0")}
    row = replace(house, survey=replace(house.survey, underfloor=replace(under, lines=lines)))
    assert [m.reason for m in forces_of(row).missing] == [
        "nothing but lines in one line is relied on along x: a line is missing there"
    ]


def test_an_overhang_pulls_its_far_line_the_other_way_and_the_size_counts():
    """Relied on at the rear and a third of the way to it from there: most of the floor hangs over the front."""
    house = only("line2", "line3", "line4", "line5")
    corners = dict(house.survey.building.corners)
    for key in ("wm0", "em0"):
        corners[key] = replace(corners[key], y_in=180.0)
    house = replace(house, survey=replace(house.survey, building=replace(house.survey.building, corners=corners)))
    forces = forces_of(house)
    along = signed_forces(forces, "x")
    assert along["line3"] < 0 < along["line5"]
    assert forces.lines["line3"].force_lb == pytest.approx(-along["line3"])
    assert worst_miss(house, (0.0, 0.0)) < NEAR


@dataclass(slots=True)
class Count:
    """What a large count has seen."""

    houses: int = 0
    lines: int = 0
    worst: float = 0.0


@pytest.mark.proof
def test_a_thousand_old_houses_are_held_in_equilibrium_and_have_a_study():
    count = Count()

    @given(houses(), POINTS)
    @settings(max_examples=1000, suppress_health_check=list(HealthCheck), deadline=None)
    def one(house: House, about: tuple[float, float]) -> None:
        assert check_house(house) == ()
        count.houses += 1
        count.lines += len(house.survey.underfloor.lines)
        run(house, ranges=count.houses % 20 == 0)  # nothing in these surveys gives a reason to refuse them
        forces = forces_of(house)
        placed, weight = brought_down(forces.gravity), weighed(house, forces)
        count.worst = max(count.worst, worst_miss(house, about), abs(placed.dead - weight.dead) / weight.dead)
        assert count.worst < NEAR

    one()
    assert count.houses >= 1000
    proof.record(
        "equilibrium of houses",
        f"{count.houses:,} invented houses, {count.lines:,} lines: every one has a study, one in 20 over "
        "both ends of every doubt; "
        f"force, moment and gravity missed by {count.worst:.1e} at the most (limit {NEAR:.0e})",
    )
