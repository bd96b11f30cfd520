"""The balance of line forces against SciPy's bordered equations and NumPy's ranks, and the exact laws of a rigid floor.

:mod:`tests.mechanics.test_equilibrium` holds it to NumPy's least squares; here stand what other methods say, floors
that cannot be held (lines side by side, or all through one point), and what one line's stiffness does to its own force.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.linalg import null_space, solve

from groundsill.mechanics.equilibrium import PlanLine, Push, balanced, push_of

LAW = settings(max_examples=40)
NEAR = 1e-9
LEVER = 300.0  # inches: turning in units of a lever, so that all three sums weigh alike


def skewed(id: str, x: float, y: float, degrees: float) -> PlanLine:
    turn = math.radians(degrees)
    return PlanLine(id, float(x), float(y), math.cos(turn), math.sin(turn))


PLACE = st.integers(-300, 300)


@st.composite
def lines_at_random(draw: st.DrawFn, least: int = 1, most: int = 7) -> list[PlanLine]:
    """Lines anywhere at any angle, now and then one on top of another or side by side with it."""
    found: list[PlanLine] = []
    for n in range(draw(st.integers(least, most))):
        kind = draw(st.sampled_from(("free", "free", "square", "same")))
        angle = draw(st.integers(0, 359)) if kind == "free" else 90 * draw(st.integers(0, 3))
        if kind == "same" and found:
            one = draw(st.sampled_from(found))
            by = draw(st.sampled_from((0.0, 4.0, 120.0)))
            found.append(PlanLine(f"s{n}", one.x - by * one.uy, one.y + by * one.ux, one.ux, one.uy))
        else:
            found.append(skewed(f"s{n}", draw(PLACE), draw(PLACE), angle))
    return found


@st.composite
def stiff(draw: st.DrawFn, lines: list[PlanLine]) -> dict[str, float]:
    return {line.id: float(draw(st.integers(1, 100))) for line in lines}


LOADS = st.builds(Push, *(st.integers(-900, 900).map(float) for _ in range(2)), st.integers(-90_000, 90_000).map(float))


def columns(lines: list[PlanLine]) -> np.ndarray:
    return np.array([(line.ux, line.uy, (line.x * line.uy - line.y * line.ux) / LEVER) for line in lines]).T


def firmly_held(lines: list[PlanLine]) -> bool:
    """Whether the lines hold any load at all, with something to spare."""
    return len(lines) >= 3 and float(np.linalg.svd(columns(lines), compute_uv=False)[2]) > 0.05


# ---- What others say -------------------------------------------------------------------------------------------------


@LAW
@given(lines_at_random(3), LOADS, st.data())
def test_the_forces_are_scipys_least_change_under_the_three_sums(lines, load, data):
    """The least sum of squared changes over the weights, the three sums as multipliers: one bordered set."""
    assume(firmly_held(lines))
    k = data.draw(stiff(lines))
    guess = {line.id: float(data.draw(st.integers(-500, 500))) for line in lines}
    start, weight = (np.array([of[line.id] for line in lines]) for of in (guess, k))
    A, n = columns(lines), len(lines)
    bordered = np.block([[np.diag(1 / weight), A.T], [A, np.zeros((3, 3))]])
    wanted = np.array([load.x, load.y, load.moment / LEVER]) - A @ start
    change = solve(bordered, np.concatenate([np.zeros(n), wanted]), assume_a="sym")[:n]
    ours = balanced(guess, k, lines, load).forces
    size = 1 + max(map(abs, ours.values()))
    assert [ours[line.id] for line in lines] == pytest.approx(start + change, abs=1e-8 * size)


@LAW
@given(lines_at_random(4), LOADS, st.data())
def test_no_set_of_forces_in_balance_with_nothing_moves_the_answer_nearer(lines, load, data):
    """At the nearest point every self-balancing set of forces (SciPy's null space) is square to the change."""
    assume(firmly_held(lines))
    k = data.draw(stiff(lines))
    guess = {line.id: float(data.draw(st.integers(-500, 500))) for line in lines}
    ours = balanced(guess, k, lines, load).forces
    change = np.array([(ours[line.id] - guess[line.id]) / k[line.id] for line in lines])
    idle = null_space(columns(lines))
    assert np.abs(idle.T @ change).max() <= 1e-8 * (1 + np.abs(change).max())


@LAW
@given(lines_at_random(), LOADS, st.data())
def test_a_load_is_held_just_where_numpy_finds_forces_for_it(lines, load, data):
    """Any lines at all: never an error, what is left over is what is lacking, and `holds` says what least squares says.

    Sets within a thousandth of being able to are left out: there the answer is a matter of tolerance.
    """
    assume(load.x or load.y or load.moment)
    found = balanced({}, data.draw(stiff(lines)), lines, load)
    got = push_of(found.forces, lines)
    size = sum(map(abs, found.forces.values())) + abs(load.x) + abs(load.y) + abs(load.moment) / LEVER
    left = found.left_over
    assert (got.x + left.x, got.y + left.y) == pytest.approx((load.x, load.y), abs=NEAR * size)
    assert got.moment + left.moment == pytest.approx(load.moment, abs=NEAR * size * LEVER * 3)
    A, b = columns(lines), np.array([load.x, load.y, load.moment / LEVER])
    values = np.linalg.svd(A, compute_uv=False)
    assume(not any(1e-12 < v < 1e-3 for v in values))
    residual = float(np.linalg.norm(A @ np.linalg.lstsq(A, b, rcond=1e-6)[0] - b))
    assume(not 1e-9 < residual < 1e-2)
    assert found.holds(load) == (residual <= 1e-9)


def test_lines_all_through_one_point_hold_a_push_through_it_and_no_turning():
    star = [skewed(f"r{n}", 120 + 90 * math.cos(a), 80 + 90 * math.sin(a), math.degrees(a))
            for n, a in enumerate((0.2, 1.4, 2.5))]  # fmt: skip
    k = {"r0": 1.0, "r1": 3.0, "r2": 2.0}
    through = Push(700.0, -300.0, 120 * -300.0 - 80 * 700.0)
    assert balanced({}, k, star, through).holds(through)
    turned = Push(700.0, -300.0, through.moment + 6000.0)
    found = balanced({}, k, star, turned)
    assert not found.holds(turned)
    assert found.left_over.moment + 80 * found.left_over.x - 120 * found.left_over.y == pytest.approx(6000.0)


# ---- Laws of a rigid floor -------------------------------------------------------------------------------------------


@LAW
@given(lines_at_random(3), LOADS, st.data(), st.integers(-60, 60))
def test_a_common_factor_on_every_stiffness_changes_nothing(lines, load, data, power):
    assume(firmly_held(lines))
    k = data.draw(stiff(lines))
    times = {id: 10.0 ** (power / 10) * stiffness for id, stiffness in k.items()}
    here = balanced({}, k, lines, load).forces
    size = 1 + max(map(abs, here.values()))
    assert balanced({}, times, lines, load).forces == pytest.approx(here, abs=NEAR * size)


@LAW
@given(lines_at_random(3), LOADS, st.data(), st.integers(101, 5000))
def test_a_stiffer_line_draws_more_to_itself_by_just_so_much(lines, load, data, percent):
    """Its force grows by (1 + g) / (1 + g s), with s the part of a load along itself that it took: never less than 1.

    The rank-one change of an inverse (Sherman and Morrison). The other lines may gain or lose; that is no law.
    """
    assume(firmly_held(lines))
    k = data.draw(stiff(lines))
    one = data.draw(st.sampled_from(lines))
    g = percent / 100 - 1
    own = balanced({}, k, lines, Push(*one.column)).forces[one.id]
    assert -1e-12 <= own <= 1 + 1e-12
    before = balanced({}, k, lines, load).forces
    after = balanced({}, k | {one.id: (1 + g) * k[one.id]}, lines, load).forces[one.id]
    size = 1 + max(map(abs, before.values()))
    assert after == pytest.approx(before[one.id] * (1 + g) / (1 + g * own), abs=1e-8 * size)
    assert abs(after) >= abs(before[one.id]) - 1e-8 * size


@LAW
@given(lines_at_random(3), LOADS, st.data(), st.integers(1, 99), st.integers(-400, 400))
def test_a_line_drawn_as_two_shares_its_force_between_them_by_stiffness(lines, load, data, percent, along):
    """Wherever along itself each part stands: force runs along a line, so the place along it has no lever."""
    assume(firmly_held(lines))
    k = data.draw(stiff(lines))
    one = data.draw(st.sampled_from(lines))
    second = PlanLine("part", one.x + along * one.ux, one.y + along * one.uy, one.ux, one.uy)
    part = percent / 100
    halves = k | {one.id: k[one.id] * (1 - part), "part": k[one.id] * part}
    whole = balanced({}, k, lines, load).forces
    split = balanced({}, halves, [*lines, second], load).forces
    size = 1 + max(map(abs, whole.values()))
    assert split.pop("part") == pytest.approx(part * whole[one.id], abs=1e-8 * size)
    assert split == pytest.approx(whole | {one.id: (1 - part) * whole[one.id]}, abs=1e-8 * size)


@LAW
@given(lines_at_random(3), LOADS, st.data())
def test_a_line_written_from_its_other_end_has_the_same_force_with_the_other_sign(lines, load, data):
    assume(firmly_held(lines))
    k = data.draw(stiff(lines))
    here = balanced({}, k, lines, load).forces
    back = [PlanLine(line.id, line.x, line.y, -line.ux, -line.uy) for line in lines]
    size = 1 + max(map(abs, here.values()))
    assert balanced({}, k, back, load).forces == pytest.approx({id: -f for id, f in here.items()}, abs=NEAR * size)


@LAW
@given(lines_at_random(3), LOADS, LOADS, st.data())
def test_two_loads_together_make_the_sum_of_their_forces(lines, one, other, data):
    assume(firmly_held(lines))
    k = data.draw(stiff(lines))
    a, b = (balanced({}, k, lines, load).forces for load in (one, other))
    both = balanced({}, k, lines, Push(one.x + other.x, one.y + other.y, one.moment + other.moment)).forces
    size = 1 + max(map(abs, (*a.values(), *b.values())))
    assert both == pytest.approx({id: a[id] + b[id] for id in a}, abs=NEAR * size)


@LAW
@given(lines_at_random(3), LOADS, st.data(), st.floats(0, 360))
def test_a_floor_turned_by_any_angle_with_its_load_keeps_every_force(lines, load, data, angle):
    assume(firmly_held(lines))
    k = data.draw(stiff(lines))
    c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    turned = [
        PlanLine(n.id, n.x * c - n.y * s, n.x * s + n.y * c, n.ux * c - n.uy * s, n.ux * s + n.uy * c) for n in lines
    ]
    there = Push(load.x * c - load.y * s, load.x * s + load.y * c, load.moment)
    here = balanced({}, k, lines, load).forces
    size = 1 + max(map(abs, here.values()))
    assert balanced({}, k, turned, there).forces == pytest.approx(here, abs=1e-8 * size)


@pytest.mark.parametrize("shift", [24.0, -24.0])
def test_mass_nearer_the_rear_turns_the_floor_so_that_the_rear_takes_more(shift):
    """Four equal lines round 336 by 480 in., the mass off the middle by 24 in. toward +y: by hand.

    A push along +x at y = 264 turns the floor with the clock, by 1,000 x 24 lb-in. Turning stiffness is 2 x 240^2 +
    2 x 168^2 = 171,648 in^2, so the rear (y = 480) gains 24,000 x 240 / 171,648 = 33.557 lb and the front loses it; the
    right line (x = 336) is pulled toward -y and the left toward +y by 24,000 x 168 / 171,648 = 23.490 lb.
    """
    box = [PlanLine("front", 0, 0, 1, 0), PlanLine("rear", 0, 480, 1, 0),
           PlanLine("left", 0, 0, 0, 1), PlanLine("right", 336, 0, 0, 1)]  # fmt: skip
    even = dict.fromkeys(("front", "rear", "left", "right"), 1.0)
    found = balanced({}, even, box, Push(1000.0, 0.0, -1000.0 * (240 + shift))).forces
    way = math.copysign(1.0, shift)
    want = {"front": 500 - way * 33.557, "rear": 500 + way * 33.557, "left": way * 23.490, "right": -way * 23.490}
    assert found == pytest.approx(want, abs=5e-4)
