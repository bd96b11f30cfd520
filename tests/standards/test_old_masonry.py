"""IEBC appendix A1: mortar by in-place shear tests, wythes, walls, and bolts in old masonry by table and by tests."""

from __future__ import annotations

import statistics

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from groundsill.standards.iebc_2021 import masonry, masonry_bolts
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet
from groundsill.working.value import marks_of

psi = st.floats(0, 400)
tests_of_a_class = st.lists(psi, min_size=2, max_size=30)
loads = st.floats(100, 20000)

# --- mortar -----------------------------------------------------------------------------------------------------------


@given(st.floats(0, 2e4), st.floats(10, 100), psi)
def test_load_on_the_joints_is_taken_off_whole_and_no_value_is_under_zero(V: float, A: float, p: float) -> None:
    value = masonry.mortar_shear(V, A, p)
    assert value == pytest.approx(max(V / A - p, 0.0))
    assert masonry.mortar_shear(V, A, 0.0) >= value


@given(tests_of_a_class)
def test_the_lower_bound_is_under_four_fifths_of_the_tests_and_their_mean_and_never_over_the_cap(
    values: list[float],
) -> None:
    bound = float(masonry.lower_bound_mortar(values))
    assert bound <= min(statistics.fmean(values), 100.0) + 1e-9
    at_least_as_high = sum(v >= bound for v in values)
    assert at_least_as_high >= 0.8 * len(values) - 1e-9


@given(tests_of_a_class, st.floats(0, 50))
def test_better_mortar_throughout_never_counts_less(values: list[float], more: float) -> None:
    better = masonry.lower_bound_mortar([v + more for v in values])
    assert float(better) >= float(masonry.lower_bound_mortar(values)) - 1e-6


@given(st.permutations([22.0, 27.0, 31.0, 34.0, 38.0, 40.0, 45.0, 52.0]))
def test_the_order_of_tests_says_nothing(values: list[float]) -> None:
    assert masonry.lower_bound_mortar(values) == pytest.approx(22.0)


@pytest.mark.parametrize(
    ("values", "bound"),
    [
        ([40.0] * 8, 40.0),  # no spread: the value itself
        ([150.0] * 8, 100.0),  # the cap
        ([30.0, 50.0], 25.857864),  # mean 40 less 14.142
        ([20.0, 30.0, 31.0, 32.0, 33.0, 34.0, 35.0, 36.0, 37.0, 38.0], 27.474898),  # mean 32.6 less 5.125
        ([30.0, 30.5, 60.0, 60.0, 60.0, 60.0, 60.0, 60.0, 60.0, 60.0], 30.5),  # the second of ten: eight exceed it
    ],
)
def test_both_meanings_of_the_lower_bound_by_hand(values: list[float], bound: float) -> None:
    assert masonry.lower_bound_mortar(values) == pytest.approx(bound, abs=1e-5)


def test_one_test_has_no_lower_bound() -> None:
    with pytest.raises(OutsideLimits, match=r"IEBC 2021 A106\.2\.3\.6: 1 mortar test; a lower bound needs at least 2"):
        masonry.lower_bound_mortar([40.0])


@pytest.mark.parametrize(
    ("values", "pointed"),
    [
        ([29.9, 30.0], False),  # half is not more than half
        ([29.9, 29.9, 30.0], True),
        ([30.0, 30.0], False),  # 30 psi is not less than 30 psi
        ([10.0], True),
    ],
)
def test_a_wall_with_more_than_half_of_its_tests_too_weak_is_pointed(values: list[float], pointed: bool) -> None:
    assert masonry.needs_pointing(values) is pointed


@pytest.mark.parametrize(
    ("lines", "surface", "asked"),
    [(1, 0.0, 8), (4, 1500.0, 8), (5, 0.0, 10), (1, 12000.0, 8), (1, 12001.0, 9), (2, 30000.0, 20)],
)
def test_eight_tests_two_a_line_and_one_for_each_1500_square_feet(lines: int, surface: float, asked: int) -> None:
    assert masonry.mortar_tests_asked(float(lines), surface) == asked


def test_what_was_recalled_of_the_lower_bound_follows_it() -> None:
    with Sheet():
        recalled = {mark.kind for mark in marks_of([masonry.lower_bound_mortar([40.0, 44.0])])}
    assert recalled == {"from memory", "unverified"}


# --- wythes and walls -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("share", "clear", "one_wall"), [(0.10, 24.0, True), (0.099, 24.0, False), (0.10, 24.5, False), (0.2, 12.0, True)]
)
def test_headers_make_one_wall_of_wythes(share: float, clear: float, one_wall: bool) -> None:
    assert masonry.bonded_wythes(share, clear) is one_wall


@given(st.floats(0, 100), st.floats(0, 1e5), st.floats(100, 5e4))
def test_the_strength_is_that_of_earlier_editions_over_one_and_a_half(v: float, P: float, A: float) -> None:
    earlier = (0.5625 * v + 0.75 * P / A) / 1.5
    assert masonry.masonry_shear_strength(v, 0.75, P, A) == pytest.approx(earlier)


@given(st.floats(0, 100), st.floats(0, 1e5), st.floats(100, 5e4))
def test_without_a_collar_joint_the_whole_test_value_counts(v: float, P: float, A: float) -> None:
    alone, beside = masonry.table_a108_2().read("one wythe"), masonry.table_a108_2().read("more wythes")
    assert masonry.masonry_shear_strength(v, alone, P, A) >= masonry.masonry_shear_strength(v, beside, P, A)


def test_mortar_over_the_cap_is_refused() -> None:
    with pytest.raises(OutsideLimits, match=r"v_tL .* = 101 psi; must be at least 0 and at most 100 psi"):
        masonry.masonry_shear_strength(101.0, 0.75, 0.0, 900.0)


@given(st.floats(0, 1e5), st.floats(0, 1e5), st.floats(1, 60), st.floats(0.5, 12), st.floats(1.01, 3))
def test_a_longer_or_lower_wall_rocks_later(P: float, W: float, D: float, H: float, more: float) -> None:
    rocks = masonry.rocking_without_openings(P, W, D, H)
    assert masonry.rocking_without_openings(P, W, D * more, H) == pytest.approx(rocks * more)
    assert masonry.rocking_without_openings(P, W, D, H * more) == pytest.approx(rocks / more)


# --- bolts ------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", masonry_bolts.FACE_BOLTS)
def test_a_thicker_bolt_of_the_table_never_holds_less_and_one_between_goes_by_the_lower(kind: str) -> None:
    half, between, five, three = (float(masonry_bolts.face_bolt_shear(kind, d)) for d in (0.5, 0.6, 0.625, 0.75))
    assert half == between <= five <= three


@pytest.mark.parametrize("d", [0.375, 0.875])
def test_bolts_outside_the_table_are_refused(d: float) -> None:
    with pytest.raises(OutsideLimits, match=rf"d_a = {d:g} in\.; the table has 0\.5 to 0\.75 in\."):
        masonry_bolts.face_bolt_shear("grouted", d)


def test_an_expansion_anchor_is_no_bolt_of_the_table() -> None:
    with pytest.raises(OutsideLimits, match="no expansion bolt; it has through-bolt"):
        masonry_bolts.face_bolt_shear("expansion", 0.5)


def test_a_bolt_that_does_not_reach_the_far_side_has_no_tension() -> None:
    with pytest.raises(OutsideLimits, match="no figure for grouted, 5/8, load tension, three wythes"):
        masonry_bolts.table_a108_1_2().read("grouted, 5/8", "tension, three wythes")


def test_recalled_tension_is_three_times_what_a_code_of_the_same_model_allows() -> None:
    table = masonry_bolts.table_a108_1_2()
    for size in ("1/2", "5/8", "3/4"):
        assert table.read(f"through-bolt, {size}", "tension, three wythes") == 3 * 1800
        assert table.read(f"through-bolt, {size}", "tension, two wythes") == 3 * 900


GROUTED = {"hole": 2.5, "plate": None, "embedment": 8.0, "wythes": 2.0, "thickness": 9.0}
THROUGH = {"hole": None, "plate": 30.0, "embedment": None, "wythes": 2.0, "thickness": 9.0}


def met(kind: masonry_bolts.FaceBolt, d: float = 0.625, **sizes: float | None) -> set[bool | None]:
    plain = THROUGH if kind == "through-bolt" else GROUTED
    return {c.met for c in masonry_bolts.face_bolt_conditions(kind, d, **(plain | sizes))}


def test_bolts_as_the_table_has_them_meet_every_condition() -> None:
    for kind in ("through-bolt", "embedded at 22.5 degrees", "grouted"):
        assert met(kind) == {True}


@pytest.mark.parametrize(
    ("kind", "sizes", "answer"),
    [
        ("grouted", {"hole": 0.75}, False),
        ("grouted", {"hole": None}, None),
        ("grouted", {"embedment": 7.5}, False),
        ("grouted", {"embedment": 9.5}, False),  # it comes out of a 9 in. wall
        ("grouted", {"embedment": None}, None),
        ("grouted", {"wythes": 1.0}, False),
        ("grouted", {"wythes": None}, None),
        ("grouted", {"d": 0.375}, False),
        ("through-bolt", {"plate": 29.0}, False),
        ("through-bolt", {"plate": None}, None),
        ("embedded at 22.5 degrees", {"hole": 1.5}, False),
    ],
)
def test_each_condition_is_met_not_met_or_not_known(
    kind: masonry_bolts.FaceBolt, sizes: dict[str, float | None], answer: bool | None
) -> None:
    assert met(kind, **sizes) == {True, answer}  # type: ignore[arg-type]


@given(st.lists(loads, min_size=5, max_size=20))
def test_bolts_by_tests_hold_a_fifth_of_what_they_held_on_average(held: list[float]) -> None:
    strength = masonry_bolts.strength_by_tests(held)
    assert strength == pytest.approx(statistics.fmean(held) / 5)
    assert float(strength) <= max(held) / 5 + 1e-9


def test_four_tests_of_a_kind_of_bolt_are_too_few() -> None:
    with pytest.raises(OutsideLimits, match=r"A107\.5\.3: 4 of 5 tests of this kind of bolt in this masonry"):
        masonry_bolts.strength_by_tests([5000.0] * 4)


@given(st.floats(0, 2e4), st.floats(0, 2e4))
def test_a_bolt_that_moves_early_counts_by_its_load_at_an_eighth_of_an_inch(mean: float, moved: float) -> None:
    assume(moved < mean / 5)
    assert masonry_bolts.tested_shear(mean, 5.0, moved) == moved
