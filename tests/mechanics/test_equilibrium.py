"""Line forces that hold a floor: NumPy's least squares as witness, and the laws of a rigid floor."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.mechanics.equilibrium import PlanLine, Push, balanced, push_of

NEAR = 1e-9


def along_x(id: str, y: float) -> PlanLine:
    return PlanLine(id, 0.0, y, 1.0, 0.0)


def along_y(id: str, x: float) -> PlanLine:
    return PlanLine(id, x, 0.0, 0.0, 1.0)


BOX = [along_x("front", 0), along_x("rear", 480), along_y("left", 0), along_y("right", 336)]
EVEN = dict.fromkeys(("front", "rear", "left", "right"), 1.0)


@st.composite
def floors(draw: st.DrawFn) -> tuple[list[PlanLine], dict[str, float], dict[str, float], Push]:
    """Lines in any direction (three square ones among them, so that any load can be held), a guess, weights, a load."""
    lines = [
        along_x("a", draw(st.integers(-400, 0))),
        along_x("b", draw(st.integers(60, 400))),
        along_y("c", draw(st.integers(-300, 300))),
    ]
    for n in range(draw(st.integers(0, 5))):
        turn = math.radians(draw(st.integers(0, 359)))
        lines.append(
            PlanLine(
                f"d{n}", draw(st.integers(-400, 400)), draw(st.integers(-400, 400)), math.cos(turn), math.sin(turn)
            )
        )
    guess = {line.id: float(draw(st.integers(-5000, 5000))) for line in lines}
    weights = {line.id: draw(st.integers(1, 50)) / 10 for line in lines}
    load = Push(
        *(float(draw(st.integers(-20_000, 20_000))) for _ in range(2)), float(draw(st.integers(-(10**7), 10**7)))
    )
    return lines, guess, weights, load


@given(floors())
def test_any_load_is_held_along_x_along_y_and_in_turning(floor):
    lines, guess, weights, load = floor
    found = balanced(guess, weights, lines, load)
    got = push_of(found.forces, lines)
    size = sum(abs(f) for f in found.forces.values())
    assert found.holds(load)
    assert (got.x, got.y) == pytest.approx((load.x, load.y), abs=NEAR * size)
    assert got.moment == pytest.approx(load.moment, abs=NEAR * size * 500)


@given(floors())
def test_the_forces_are_numpys_nearest_to_the_guess(floor):
    """The least change by weight, from NumPy's pseudo-inverse on changes over the root of the weight."""
    lines, guess, weights, load = floor
    A = np.array([line.column for line in lines]).T
    start = np.array([guess[line.id] for line in lines])
    root = np.sqrt([weights[line.id] for line in lines])
    units = np.array([1.0, 1.0, 1 / 400])  # moments in units of a lever, so that all three weigh alike
    step = np.linalg.lstsq(
        (A * root) * units[:, None], (np.array([load.x, load.y, load.moment]) - A @ start) * units, rcond=None
    )[0]
    theirs = start + root * step
    ours = balanced(guess, weights, lines, load).forces
    assert [ours[line.id] for line in lines] == pytest.approx(theirs, abs=1e-7 * (1 + np.abs(theirs).max()))


@given(floors())
def test_a_guess_that_balances_already_is_left_alone(floor):
    lines, guess, weights, _ = floor
    size = sum(abs(f) for f in guess.values()) + 1
    assert balanced(guess, weights, lines, push_of(guess, lines)).forces == pytest.approx(guess, abs=NEAR * size)


@given(floors(), st.integers(-(10**5), 10**5), st.integers(-(10**5), 10**5))
def test_where_the_plan_is_drawn_does_not_matter(floor, dx, dy):
    lines, guess, weights, load = floor
    moved = [PlanLine(line.id, line.x + dx, line.y + dy, line.ux, line.uy) for line in lines]
    there = Push(load.x, load.y, load.moment + dx * load.y - dy * load.x)
    here = balanced(guess, weights, lines, load).forces
    size = sum(abs(f) for f in here.values()) + 1
    assert balanced(guess, weights, moved, there).forces == pytest.approx(here, abs=1e-7 * size)


def test_a_rigid_floor_shares_a_centred_push_by_stiffness():
    """Shared 3 to 1 alone, the floor would turn about its stiffer side: the cross walls hold that turning."""
    load = Push(8000.0, 0.0, -8000.0 * 240)  # at mid depth
    found = balanced({}, EVEN | {"front": 3.0}, BOX, load)
    assert found.forces["front"] + found.forces["rear"] == pytest.approx(8000)
    assert found.forces["left"] == pytest.approx(-found.forces["right"])
    assert push_of(found.forces, BOX).moment == pytest.approx(load.moment)
    assert 4000 < found.forces["front"] < 6000


def test_a_push_no_line_can_hold_is_left_over():
    found = balanced({}, {"front": 1.0, "rear": 1.0}, BOX[:2], Push(0.0, 500.0, 0.0))
    assert (found.left_over.x, found.left_over.y) == (0.0, 500.0)
    assert not found.holds(Push(0.0, 500.0, 0.0))


def test_turning_that_no_line_can_hold_is_left_over():
    """Two lines in one row have no lever between them."""
    row = [along_x("a", 100), along_x("b", 100)]
    found = balanced({}, {"a": 1.0, "b": 1.0}, row, Push(800.0, 0.0, 0.0))
    assert found.forces == pytest.approx({"a": 400, "b": 400})
    assert found.left_over.moment == pytest.approx(800 * 100)
    assert not found.holds(Push(800.0, 0.0, 0.0))


def test_lines_without_weight_take_no_part_in_the_correction():
    found = balanced(
        {"rear": 100.0}, {"front": 1.0, "left": 1.0, "right": 1.0, "rear": 0.0}, BOX, Push(1000.0, 0.0, 0.0)
    )
    assert found.forces["rear"] == 100.0
    assert balanced({}, {}, BOX, Push(1.0, 2.0, 3.0)).left_over == Push(1.0, 2.0, 3.0)


def test_a_guess_without_any_weight_is_kept_and_what_it_lacks_is_told():
    """Nothing may change: the guess holds 900 lb of 1,000 at mid depth, and the rest is left over with its moment."""
    guess = {"front": 450.0, "rear": 450.0}
    load = Push(1000.0, 0.0, push_of(guess, BOX).moment)
    found = balanced(guess, {}, BOX, load)
    assert found.forces == guess | {line.id: 0.0 for line in BOX if line.id not in guess}
    assert found.left_over == Push(100.0, 0.0, 0.0)
    assert not found.holds(load)


def test_a_guess_on_a_line_without_weight_counts_as_holding():
    found = balanced({"rear": 400.0}, {"front": 1.0, "left": 1.0, "right": 1.0}, BOX, Push(1000.0, 0.0, 0.0))
    assert found.forces["rear"] == 400.0
    assert found.forces["front"] == pytest.approx(600.0)
    assert push_of(found.forces, BOX).x == pytest.approx(1000.0)


@pytest.mark.parametrize("away", [0.0, 5e4])
def test_what_is_left_over_turns_about_the_origin_of_the_plan(away):
    """Two lines along x hold no push along y: all of it is left, with the moment it has about the plan's own origin."""
    row = [along_x("a", 100 + away), along_x("b", 340 + away)]
    load = Push(0.0, 500.0, 500.0 * (away + 60))
    found = balanced({}, {"a": 1.0, "b": 1.0}, row, load)
    held = push_of(found.forces, row)
    assert found.left_over.moment == pytest.approx(load.moment - held.moment, abs=1e-6 * abs(load.moment))
    assert (found.left_over.x, found.left_over.y) == (pytest.approx(0.0, abs=1e-9), 500.0)
