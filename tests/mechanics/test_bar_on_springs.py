"""Bars on springs: NumPy's direct solution, PyNite's frame, SciPy's least energy, closed forms of shear lag, and NDS.

Laws that hold for any layout stand beside those that only hold for some: where one more bolt, a strap or a stiffer sill
can raise the greatest share, a test shows the case, so that nobody takes the law for more than it is.
"""

from __future__ import annotations

import tomllib
from itertools import pairwise, product
from math import cosh, exp, inf, log, sinh, sqrt
from pathlib import Path

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from Pynite import FEModel3D
from scipy.optimize import minimize

from groundsill.mechanics.bar_on_springs import Along, Bar, Held, Spring, axial, held, worst_at_joint, worst_first
from groundsill.standards.nds_2018.group_action import (
    group_action_factor,
    group_decay,
    group_u,
    slip_modulus_metal,
    slip_modulus_wood,
)
from groundsill.standards.statics.sill import bolts_that_work, transfer_length

WITNESSES = Path(__file__).parents[1] / "published" / "witnesses"
LAW = settings(max_examples=60)
SILL = 1_000_000.0 * 1.5 * 5.5
HALF_INCH = slip_modulus_metal(0.5)
NEAR = 1e-9


def one_bar(springs: list[Spring], loads: list[Along], length: float = 120.0, stiffness: float = SILL) -> Held:
    return held([Bar(0.0, length, stiffness)], [], springs, loads)


def row(n: int, spacing: float, stiffness: float = HALF_INCH, start: float = 6.0) -> list[Spring]:
    return [Spring(start + spacing * k, stiffness) for k in range(n)]


# ---- By hand ---------------------------------------------------------------------------------------------------------


def test_two_springs_and_a_pull_at_one_end():
    """Springs of 100 lb/in at both ends of a bar of 50 lb/in: u2 = c/(c + k) u1, so the far one takes a quarter."""
    found = held([Bar(0.0, 10.0, 500.0)], [], [Spring(0.0, 100.0), Spring(10.0, 100.0)], [Along(0.0, 0.0, 400.0)])
    assert found.springs == pytest.approx((300.0, 100.0))
    assert found.moved == pytest.approx((3.0, 1.0))
    assert found.working == pytest.approx(4 / 3)


def test_a_gap_is_closed_before_its_spring_bears():
    """The same, with a gap of an inch at the far spring: it moves by just that and bears nothing yet at 300 lb."""
    bar, gap = [Bar(0.0, 10.0, 500.0)], [Spring(0.0, 100.0), Spring(10.0, 100.0, 3.0)]
    assert held(bar, [], gap, [Along(0.0, 0.0, 300.0)]).springs == pytest.approx((300.0, 0.0))
    assert held(bar, [], gap, [Along(0.0, 0.0, 400.0)]).springs == pytest.approx((375.0, 25.0))


def test_a_break_passes_nothing_and_a_strap_does():
    bars, bolts, load = [Bar(0.0, 60.0, SILL), Bar(60.0, 120.0, SILL)], row(10, 12.0), [Along(0.0, 48.0, 3000.0)]
    cut, strapped = held(bars, [0.0], bolts, load), held(bars, [inf], bolts, load)
    assert cut.springs[5:] == (0.0,) * 5
    assert cut.joints == (0.0,)
    assert strapped.joints[0] == pytest.approx(-sum(strapped.springs[5:]))
    assert strapped.working > cut.working
    soft = held(bars, [5e4], bolts, load)
    assert cut.greatest > soft.greatest > strapped.greatest


def test_load_that_no_spring_holds_and_load_beside_the_bars_are_told():
    bars = [Bar(0.0, 60.0, SILL), Bar(72.0, 120.0, SILL)]
    found = held(bars, [0.0], [Spring(30.0, 100.0)], [Along(0.0, 120.0, 1200.0)])
    assert (found.springs[0], found.lost, found.beside) == pytest.approx((600.0, 480.0, 120.0))


@pytest.mark.parametrize(
    ("bars", "ties", "springs", "loads", "words"),
    [
        ([Bar(0, 9, 1)], [1.0], [], [], "1 ties for 1 bars"),
        ([Bar(0, 0, 1)], [], [], [], "a bar needs a length"),
        ([Bar(0, 9, 1), Bar(8, 12, 1)], [0.0], [], [], "end to end"),
        ([Bar(0, 9, 1)], [], [Spring(5, 0.0)], [], "a spring needs a stiffness"),
        ([Bar(0, 9, 1)], [], [Spring(5, 1.0, -0.1)], [], "a gap of 0 or more"),
        ([Bar(0, 9, 1)], [], [Spring(12, 1.0)], [], "stands on no bar"),
        ([Bar(0, 9, 1)], [], [Spring(5, 1.0)], [Along(0, 9, -1.0)], "the same way"),
    ],
)
def test_what_is_no_row_of_bars_is_refused(bars, ties, springs, loads, words):
    with pytest.raises(ValueError, match=words):
        held(bars, ties, springs, loads)


# ---- Closed forms ----------------------------------------------------------------------------------------------------


def test_a_long_row_pulled_at_its_end_falls_by_the_share_that_nds_passes_on():
    """Spring by spring the slip falls by m = u - sqrt(u^2 - 1), the term of NDS Eq. 11.3-1 with one member rigid."""
    found = one_bar(row(60, 12.0, start=0.0), [Along(0.0, 0.0, 1000.0)], 720.0)
    m = group_decay(group_u(HALF_INCH, 12.0, SILL, 1e30))
    assert [b / a for a, b in pairwise(found.springs[:30])] == pytest.approx([m] * 29, rel=1e-7)
    assert found.springs[0] == pytest.approx(1000.0 * (1 - m), rel=1e-7)


@pytest.mark.parametrize("length", [60.0, 120.0, 360.0])
def test_many_small_bolts_are_the_closed_form_of_shear_lag(length):
    """Volkersen's bar on evenly spread springs, pulled at its end: N(x) = P sinh((L - x)/L_t)/sinh(L/L_t)."""
    n, spacing = 600, 12.0
    step = length / n
    bolts = [Spring((k + 0.5) * step, HALF_INCH * step / spacing) for k in range(n)]
    load, bar = [Along(0.0, 0.0, 1000.0)], [Bar(0.0, length, SILL)]
    found = held(bar, [], bolts, load)
    L_t = sqrt(SILL * spacing / HALF_INCH)
    assert transfer_length(SILL, HALF_INCH, spacing) == L_t
    for part in (0.1, 0.25, 0.5, 0.8):
        x = part * length
        exact = -1000.0 * sinh((length - x) / L_t) / sinh(length / L_t)
        assert axial(bar, [], bolts, load, found, x) == pytest.approx(exact, rel=5e-3)
    at_the_end = 1000.0 / L_t * cosh((length - step / 2) / L_t) / sinh(length / L_t)
    assert found.springs[0] / step == pytest.approx(at_the_end, rel=5e-3)


def test_beyond_a_panel_a_third_is_left_after_each_transfer_length():
    """A long row under a panel at its middle: from one bolt to the next past it the slip falls by exp(-s/L_t), nearly.

    For discrete bolts exactly by m: at 12 in. on a 2x6 exp(-s/L_t) lies within 1 % of it.
    """
    found = one_bar(row(80, 12.0), [Along(400.0, 496.0, 5000.0)], 966.0)
    beyond = [f for spring, f in zip(row(80, 12.0), found.springs, strict=True) if 510.0 < spring.at < 700.0]
    L_t = transfer_length(SILL, HALF_INCH, 12.0)
    m = group_decay(group_u(HALF_INCH, 12.0, SILL, 1e30))
    assert [b / a for a, b in pairwise(beyond)] == pytest.approx([m] * (len(beyond) - 1), rel=1e-5)
    assert m == pytest.approx(exp(-12.0 / L_t), rel=0.01)
    assert -12.0 / log(m) == pytest.approx(L_t, rel=0.01)


@pytest.mark.parametrize("n", [2, 3, 4, 6, 9, 12])
@pytest.mark.parametrize(("A_m", "A_s"), [(12.0, 12.0), (10.0, 5.0), (5.0, 40.0), (64.0, 4.0)])
@pytest.mark.parametrize("joint", ["wood to wood", "wood to metal"])
def test_nds_group_action_is_the_uniform_case(n, A_m, A_s, joint):
    """C_g is the bolts that work over the bolts there are, of two members pulled apart.

    Two members with like bolts between them slip as one bar with 1/EA = 1/E_mA_m + 1/E_sA_s, pulled at one end by the
    part of the load E_sA_s/(E_mA_m + E_sA_s) and at the other by the rest: their common strain opens no slip.
    """
    D, s, E_m, E_s = 1.0, 4.0, 1_400_000.0, 1_400_000.0 if joint == "wood to wood" else 30_000_000.0
    gamma = slip_modulus_wood(D) if joint == "wood to wood" else slip_modulus_metal(D)
    main, side = E_m * A_m, E_s * A_s
    length = (n - 1) * s
    loads = [Along(0.0, 0.0, 1000.0 * side / (main + side)), Along(length, length, 1000.0 * main / (main + side))]
    found = one_bar(row(n, s, gamma, start=0.0), loads, length, 1 / (1 / main + 1 / side))
    assert sum(found.springs) == pytest.approx(1000.0)
    assert found.working / n == pytest.approx(group_action_factor(D, n, s, E_m, A_m, E_s, A_s, joint), rel=1e-9)


def _cells() -> list[dict[str, object]]:
    """Every cell of NDS tables 11.3.6A to D among the published witnesses, with its place and how it is known."""
    cases = tomllib.loads((WITNESSES / "nds_2018.toml").read_text(encoding="utf-8"))["case"]
    return [case for case in cases if case["formula"] == "nds-2018/11.3.6"]


@pytest.mark.parametrize("cell", _cells(), ids=lambda cell: str(cell["place"]))
def test_cells_of_the_group_action_tables_by_the_solver_alone(cell):
    """No formula of NDS but the slip modulus: two members with like bolts, as printed, or recalled where so marked."""
    given_of = cell["inputs"]
    n, s, D = int(given_of["n"]), given_of["s"], given_of["D"]
    main, side = given_of["E_m"] * given_of["A_m"], given_of["E_s"] * given_of["A_s"]
    gamma = (270_000.0 if given_of.get("joint") == "wood to metal" else 180_000.0) * D**1.5
    length = (n - 1) * s
    loads = [Along(0.0, 0.0, 1000.0 * side / (main + side)), Along(length, length, 1000.0 * main / (main + side))]
    found = one_bar(row(n, s, gamma, start=0.0), loads, length, 1 / (1 / main + 1 / side))
    assert found.working / n == pytest.approx(cell["expected"], **cell["tolerance"])


# ---- Other solvers ---------------------------------------------------------------------------------------------------


@st.composite
def rows(
    draw: st.DrawFn, slack: bool = False, like: bool = False
) -> tuple[list[Bar], list[float], list[Spring], list[Along]]:
    """One to three bars, two to eight bolts, one or two panels; whole inches."""
    stops = sorted(draw(st.sets(st.integers(0, 360), min_size=2, max_size=4)))
    sizes = st.sampled_from((4e6, 8.25e6, 2e7))
    bars = [Bar(float(a), float(b), draw(sizes)) for a, b in pairwise(stops)]
    ties = [draw(st.sampled_from((0.0, 2e4, 3e5, inf))) for _ in bars[1:]]
    at = sorted(draw(st.sets(st.integers(stops[0], stops[-1]), min_size=2, max_size=8)))
    size = st.just(95_459.0) if like else st.sampled_from((60_000.0, 95_459.0, 133_000.0))
    gap = st.sampled_from((0.0, 0.02, 1 / 16)) if slack else st.just(0.0)
    springs = [Spring(float(x), draw(size), draw(gap)) for x in at]
    low = draw(st.integers(stops[0], stops[-1] - 1))
    high = draw(st.integers(low + 1, stops[-1]))
    loads = [Along(float(low), float(high), float(draw(st.integers(500, 20_000))))]
    return bars, ties, springs, loads


def dense(
    bars: list[Bar], ties: list[float], springs: list[Spring], loads: list[Along], bears: tuple[bool, ...]
) -> np.ndarray:
    """Movement at each spring with a given set of them bearing, by one dense matrix over a node at every whole inch."""
    nodes = [(n, x) for n, bar in enumerate(bars) for x in np.arange(bar.start, bar.end + 0.5)]
    place = {node: k for k, node in enumerate(nodes)}
    K, f = np.zeros((len(nodes), len(nodes))), np.zeros(len(nodes))

    def link(a: int, b: int, c: float) -> None:
        K[np.ix_((a, b), (a, b))] += c * np.array([[1.0, -1.0], [-1.0, 1.0]])

    for n, bar in enumerate(bars):
        for x in np.arange(bar.start, bar.end):
            link(place[n, x], place[n, x + 1], bar.stiffness)
            for load in loads:
                if load.start <= x < load.end:
                    for y in (x, x + 1):
                        f[place[n, y]] += load.force / (load.end - load.start) / 2
        if n and ties[n - 1]:
            link(place[n - 1, bars[n - 1].end], place[n, bar.start], min(ties[n - 1], 1e13))
    homes = [place[next((n, s.at) for n, bar in enumerate(bars) if bar.start <= s.at <= bar.end)] for s in springs]
    for home, spring, on in zip(homes, springs, bears, strict=True):
        if on:
            K[home, home] += spring.stiffness
            f[home] += spring.stiffness * spring.gap
    return np.linalg.solve(K, f)[homes]


def every_row_held(bars: list[Bar], ties: list[float], springs: list[Spring], loads: list[Along]) -> bool:
    return (
        held(bars, ties, springs, loads).lost == 0
        and min(sum(1 for s in springs if bar.start < s.at < bar.end) for bar in bars) > 0
    )


@LAW
@given(rows())
def test_movements_are_numpys_direct_solution(case):
    assume(every_row_held(*case))
    found = held(*case)
    exact = dense(*case, (True,) * len(case[2]))
    assert found.moved == pytest.approx(exact, rel=1e-5, abs=1e-9)


@LAW
@given(rows(slack=True))
def test_contact_is_the_one_set_of_springs_that_numpy_finds_consistent(case):
    """Of all sets of springs that may bear, the one where those that bear push and the others have not closed."""
    bars, ties, springs, loads = case
    assume(every_row_held(bars, ties, springs, loads) and len(springs) <= 6)
    found = held(bars, ties, springs, loads)
    answers = []
    for bears in product((True, False), repeat=len(springs)):
        try:
            moved = dense(bars, ties, springs, loads, bears)
        except np.linalg.LinAlgError:
            continue
        past = moved - np.array([s.gap for s in springs])
        if (
            np.isfinite(past).all()
            and abs(past).max() < 1e3
            and all((p >= 0) == on for p, on in zip(past, bears, strict=True))
        ):
            answers.append([s.stiffness * max(p, 0.0) for s, p in zip(springs, past, strict=True)])
    assume(answers)  # a row that is not loaded may float inside its gaps: the matrix is singular there
    load = loads[0].force
    assert any(found.springs == pytest.approx(a, abs=1e-5 * load) for a in answers)


def test_contact_is_scipys_least_energy():
    """Two bars with a strap and slack holes: the movements of least energy, by a minimizer that knows no contact."""
    bars, ties = [Bar(0.0, 96.0, SILL), Bar(96.0, 216.0, SILL)], [3e4]
    at, gaps = [10.0, 40.0, 80.0, 110.0, 150.0, 200.0], [0.0, 0.06, 0.03, 0.0625, 0.01, 0.0625]
    springs = [Spring(x, HALF_INCH, g) for x, g in zip(at, gaps, strict=True)]
    loads = [Along(0.0, 96.0, 16_000.0)]
    nodes = [0.0, 10.0, 40.0, 80.0, 96.0, 96.0, 110.0, 150.0, 200.0, 216.0]
    links = np.array([3e4 if b == a else SILL / (b - a) for a, b in pairwise(nodes)])
    push = np.zeros(10)
    for n, (a, b) in enumerate(pairwise(nodes[:5])):
        push[n : n + 2] += 16_000.0 * (b - a) / 96.0 / 2
    where = [1, 2, 3, 6, 7, 8]

    def energy(u: np.ndarray) -> tuple[float, np.ndarray]:
        stretch = np.diff(u)
        past = np.maximum(u[where] - gaps, 0.0)
        slope = -push
        slope[1:] += links * stretch
        slope[:-1] -= links * stretch
        slope[where] += HALF_INCH * past
        return float((links * stretch**2).sum() / 2 + (HALF_INCH * past**2).sum() / 2 - push @ u), slope

    best = minimize(
        lambda u: energy(u), np.full(10, 0.05), jac=True, method="BFGS", options={"gtol": 1e-6, "maxiter": 5000}
    )
    forces = HALF_INCH * np.maximum(best.x[where] - gaps, 0.0)
    assert held(bars, ties, springs, loads).springs == pytest.approx(forces, abs=0.5)


def test_a_frame_program_gives_the_same_forces():
    """PyNite, a general frame program: axial members on support springs, a spread load over a panel, a break."""
    at, breaks = [6.0, 18.0, 30.0, 54.0, 66.0, 78.0, 102.0], 60.0
    stops = sorted({0.0, 24.0, 84.0, 60.0, 120.0, *at})
    model = FEModel3D()
    model.add_material("wood", 1_000_000.0, 4e5, 0.3, 0.0)
    model.add_section("sill", 8.25, 10.0, 10.0, 10.0)
    names = []
    for x in stops:
        for side in ("a", "b") if x == breaks else ("",):
            name = f"n{x:g}{side}"
            model.add_node(name, x, 0.0, 0.0)
            model.def_support(name, False, True, True, True, True, True)
            names.append((name, x))
    for x in at:
        model.def_support_spring(f"n{x:g}", "DX", HALF_INCH)
    for (one, a), (other, b) in pairwise(names):
        if a == b:
            continue
        model.add_member(one + other, one, other, "wood", "sill")
        if a >= 24.0 and b <= 84.0:
            model.add_member_dist_load(one + other, "Fx", 50.0, 50.0)
    model.analyze(check_statics=False)
    theirs = [float(model.nodes[f"n{x:g}"].DX["Combo 1"]) * HALF_INCH for x in at]
    bars = [Bar(0.0, 60.0, SILL), Bar(60.0, 120.0, SILL)]
    ours = held(bars, [0.0], [Spring(x, HALF_INCH) for x in at], [Along(24.0, 84.0, 3000.0)])
    assert ours.springs == pytest.approx(theirs, rel=1e-6)


# ---- Laws ------------------------------------------------------------------------------------------------------------


@LAW
@given(rows(slack=True))
def test_what_bears_and_what_is_lost_is_all_of_the_load(case):
    found = held(*case)
    load = case[3][0].force
    assert sum(found.springs) + found.lost + found.beside == pytest.approx(load, abs=NEAR * load)
    assert min(found.springs) >= 0


@LAW
@given(rows(slack=True))
def test_seen_in_a_mirror_every_spring_takes_the_same(case):
    bars, ties, springs, loads = case
    assume(
        all(spring.at not in {bar.end for bar in bars[:-1]} for spring in springs)
    )  # a seat at a joint is one side's
    back = held(
        [Bar(-b.end, -b.start, b.stiffness) for b in reversed(bars)],
        ties[::-1],
        [Spring(-s.at, s.stiffness, s.gap) for s in reversed(springs)],
        [Along(-a.end, -a.start, a.force) for a in loads],
    )
    ahead = held(bars, ties, springs, loads)
    assert back.springs[::-1] == pytest.approx(ahead.springs, abs=1e-6 * loads[0].force)
    assert [-j for j in back.joints[::-1]] == pytest.approx(ahead.joints, abs=1e-6 * loads[0].force)


@LAW
@given(rows(slack=True))
def test_the_axial_force_closes_at_every_joint_and_at_the_end(case):
    bars, ties, springs, loads = case
    found = held(bars, ties, springs, loads)
    assume(found.lost == 0)
    load = loads[0].force
    for n, tie in enumerate(ties):
        if tie > 0:
            seat = sum(f for s, f in zip(springs, found.springs, strict=True) if s.at == bars[n].end)
            there = axial(bars, ties, springs, loads, found, bars[n].end) + seat
            assert there == pytest.approx(found.joints[n], abs=1e-6 * load)


@LAW
@given(rows(like=True), st.sampled_from((1.5, 4.0, 100.0)))
def test_of_like_bolts_a_stiffer_sill_shares_more_evenly(case, by):
    """All bars and ties stiffer in one proportion: the greatest share of like bolts never grows."""
    bars, ties, springs, loads = case
    stiffer = held([Bar(b.start, b.end, b.stiffness * by) for b in bars], [t * by for t in ties], springs, loads)
    assert stiffer.greatest <= held(bars, ties, springs, loads).greatest * (1 + NEAR)


@LAW
@given(rows(like=True))
def test_a_rigid_sill_of_like_bolts_shares_alike(case):
    _, _, springs, loads = case
    found = held([Bar(0.0, 360.0, 1e14)], [], springs, loads)
    assert found.springs == pytest.approx([loads[0].force / len(springs)] * len(springs), rel=1e-5)


@LAW
@given(rows(slack=True), st.integers(0, 360))
def test_one_bolt_more_never_gives_an_old_one_more(case, at):
    bars, ties, springs, loads = case
    assume(any(bar.start < at < bar.end for bar in bars) and all(s.at != at for s in springs))
    before = held(bars, ties, springs, loads)
    assume(before.lost == 0)
    after = held(bars, ties, [*springs, Spring(float(at), 95_459.0)], loads)
    assert all(b <= a + 1e-6 * loads[0].force for a, b in zip(before.springs, after.springs, strict=False))


def test_but_the_new_bolt_itself_can_take_more_than_any_did():
    """Two bolts far to either side of a panel take half each; a third in its middle takes nearly all."""
    panel = [Along(114.0, 126.0, 4000.0)]
    two = one_bar([Spring(6.0, HALF_INCH), Spring(234.0, HALF_INCH)], panel, 240.0)
    three = one_bar([Spring(6.0, HALF_INCH), Spring(120.0, HALF_INCH), Spring(234.0, HALF_INCH)], panel, 240.0)
    assert two.greatest == pytest.approx(2000.0)
    assert three.greatest > 2000.0
    assert three.working < two.working


def test_and_of_unlike_bolts_a_stiffer_sill_can_load_the_stiff_one_more():
    """A stout bolt far from the panel is reached only through a stiff sill, and then draws the force to itself."""
    bolts = [Spring(12.0, HALF_INCH), Spring(228.0, 10 * HALF_INCH)]
    panel = [Along(0.0, 24.0, 4000.0)]
    shares = [one_bar(bolts, panel, 240.0, EA).springs for EA in (SILL, 1e3 * SILL)]
    assert shares[0][1] < shares[0][0]
    assert max(shares[1]) > max(shares[0])


@LAW
@given(rows(slack=True))
def test_slack_never_lowers_the_greatest_share(case):
    bars, ties, springs, loads = case
    tight = held(bars, ties, [Spring(s.at, s.stiffness) for s in springs], loads)
    worst = worst_first(bars, ties, springs, loads)
    for n, order in enumerate(worst):
        assert order.springs[n] >= tight.springs[n] - 1e-6 * loads[0].force


@LAW
@given(rows(slack=True), st.data())
def test_no_order_of_contact_is_worse_than_touching_first(case, data):
    """Any play left in any hole, from none to all of it: no bolt gets more than where it alone touches at once."""
    bars, ties, springs, loads = case
    some = [Spring(s.at, s.stiffness, s.gap * data.draw(st.floats(0.0, 1.0))) for s in springs]
    found, worst = held(bars, ties, some, loads), worst_first(bars, ties, springs, loads)
    for n, force in enumerate(found.springs):
        assert force <= worst[n].springs[n] + 1e-6 * loads[0].force


@LAW
@given(rows(slack=True), st.data())
def test_no_order_of_contact_brings_more_through_a_joint_than_the_two_worst(case, data):
    bars, ties, springs, loads = case
    assume(len(bars) > 1)
    some = [Spring(s.at, s.stiffness, s.gap * data.draw(st.floats(0.0, 1.0))) for s in springs]
    found = held(bars, ties, some, loads)
    assume(found.lost == 0)
    for n in range(len(bars) - 1):
        low, high = sorted(order.joints[n] for order in worst_at_joint(bars, ties, springs, loads, n))
        assert low - 1e-6 * loads[0].force <= found.joints[n] <= high + 1e-6 * loads[0].force


def test_the_bolts_that_work():
    assert bolts_that_work(6000.0, 1500.0) == 4.0
