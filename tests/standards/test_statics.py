"""Equilibrium of a wall segment and of a footing lifted by a point: balances, borders, and what grows with what."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from groundsill.standards.statics.footing import hanging_length, least_width, lifted_weight, spanning_length
from groundsill.standards.statics.soil import gross_pressure
from groundsill.standards.statics.walls import (
    all_lifted,
    end_tension,
    holding_moment,
    lifted_length,
    post_compression,
)
from groundsill.working.errors import OutsideLimits

moments = st.floats(0.0, 50_000.0)
loads = st.floats(10.0, 800.0)
lengths = st.floats(2.0, 24.0)
posts = st.floats(0.05, 0.4)
tributaries = st.floats(0.5, 1.5)


def pressed(M: float, w: float, b: float, e: float, t: float) -> float:
    return post_compression(M, w, b, b / 2 - e, b - 2 * e, b - e, min(t, b))


@given(M=moments, w=loads, b=lengths, e=posts)
def test_up_and_down_balance_when_all_of_the_load_is_lifted(M: float, w: float, b: float, e: float) -> None:
    """C - T = w b, whatever turns it: with f_D 1 the tension is of the same load."""
    arms = (b / 2 - e, b - 2 * e)
    assert all_lifted(M, w, b, *arms) - end_tension(M, 1.0, w, b, *arms) == pytest.approx(w * b)


@given(M=moments, w=loads, b=lengths, e=posts)
def test_moments_about_the_pulled_post_balance_too(M: float, w: float, b: float, e: float) -> None:
    d = b - 2 * e
    assert all_lifted(M, w, b, b / 2 - e, d) * d == pytest.approx(M + w * b * (d - (b / 2 - e)))


@given(w=loads, b=lengths, e=posts, part=st.floats(0.0, 1.0))
def test_what_is_lifted_has_the_moment_that_lifts_it(w: float, b: float, e: float, part: float) -> None:
    b_c = b - e
    M = part * w * b * (b / 2 - e)
    L = lifted_length(M, w, b_c)
    assert w * L * (b_c - L / 2) == pytest.approx(M, abs=1e-6 * w * b * b)
    assert 0.0 <= L <= b_c


@given(M=moments, w=loads, b=lengths, e=posts, t=tributaries, more=st.floats(1.0, 3.0))
def test_more_turning_never_presses_less(M: float, w: float, b: float, e: float, t: float, more: float) -> None:
    assert pressed(M * more, w, b, e, t) >= pressed(M, w, b, e, t) * (1 - 1e-9)


@given(w=loads, b=lengths, e=posts, t=tributaries)
def test_without_turning_the_post_bears_its_own_stretch_of_wall(w: float, b: float, e: float, t: float) -> None:
    assert pressed(0.0, w, b, e, t) == pytest.approx(w * min(t, b))


@given(w=loads, b=st.floats(3.0, 24.0), e=posts, t=tributaries)
def test_at_the_point_of_tipping_all_of_the_load_stands_on_the_post(w: float, b: float, e: float, t: float) -> None:
    tips = w * b * (b / 2 - e)
    assert pressed(tips * (1 + 1e-9), w, b, e, t) == pytest.approx(w * b, rel=1e-6)
    assert pressed(tips * (1 - 1e-9), w, b, e, t) <= w * b * (1 + 1e-9)


@given(M=moments, w=loads, b=lengths, e=posts)
def test_a_hold_down_of_just_the_tension_just_holds(M: float, w: float, b: float, e: float) -> None:
    x, d = b / 2 - e, b - 2 * e
    T = end_tension(M, 0.46, w, b, x, d)
    assume(T > 0)
    assert holding_moment(0.46, w, b, x, T, d) == pytest.approx(M)


def test_an_arm_longer_than_the_segment_is_refused() -> None:
    with pytest.raises(OutsideLimits, match="the lever arm is no longer than the segment"):
        end_tension(1000.0, 0.46, 100.0, 4.0, 2.0, 4.1)
    with pytest.raises(OutsideLimits, match="the load on the segment holds it"):
        lifted_length(5000.0, 100.0, 4.0)


# --- the footing -----------------------------------------------------------------------------------------------------

sides = st.just(0.0) | st.floats(0.01, 12.0)


@given(w=loads, a=sides, b=sides)
def test_a_lifted_beam_weighs_between_half_and_all_of_what_hangs(w: float, a: float, b: float) -> None:
    pull = lifted_weight(w, a, b)
    assert w * (a + b) / 2 * (1 - 1e-9) <= pull <= w * (a + b) * (1 + 1e-9)
    assert pull == lifted_weight(w, b, a)


@given(w=loads, a=st.floats(0.1, 12.0), b=sides, more=st.floats(0.0, 5.0))
def test_a_longer_side_never_lifts_less(w: float, a: float, b: float, more: float) -> None:
    assert lifted_weight(w, a, b + more) >= lifted_weight(w, a, b) * (1 - 1e-9)


@given(w=loads, a=st.floats(0.1, 12.0), b=sides)
def test_what_pull_and_soil_carry_balances_about_the_hold_down(w: float, a: float, b: float) -> None:
    """The soil carries the rest at the far end of the longer side, and never pulls."""
    soil = w * (a + b) - lifted_weight(w, a, b)
    assert soil >= -1e-6 * w
    assert soil * max(a, b) == pytest.approx(w * abs(a * a - b * b) / 2, abs=1e-6 * w)


@given(M=st.floats(10.0, 50_000.0), w=loads)
def test_what_hangs_free_bends_the_beam_as_much_as_it_carries(M: float, w: float) -> None:
    L = hanging_length(M, w)
    assert w * L * L / 2 == pytest.approx(M)
    assert hanging_length(4 * M, w) == pytest.approx(2 * L)


@given(w=loads, L_c=st.floats(0.5, 10.0), part=st.floats(0.0, 1.0))
def test_a_beam_that_spans_is_bent_no_more_than_one_that_hangs_free(w: float, L_c: float, part: float) -> None:
    """The soil at the far end bends it by R^2/(2 w) between, and shears it by R there and by less than 1.42 beside."""
    L_1 = part * L_c
    L_2 = spanning_length(L_c, L_1)
    pull = lifted_weight(w, L_1, L_2)
    soil = w * (L_1 + L_2) - pull
    assert soil**2 / (2 * w) == pytest.approx(w * L_c**2 / 2)
    assert max(soil, pull - w * L_1) <= 1.4143 * w * L_c


def test_nothing_hangs_at_a_break() -> None:
    assert lifted_weight(250.0, 0.0, 0.0) == 0.0
    assert math.isclose(lifted_weight(250.0, 4.0, 4.0), 2000.0)


@given(w=loads, q=st.floats(800.0, 4000.0), h=st.floats(0.3, 2.0))
def test_a_footing_of_the_least_width_presses_as_much_as_allowed(w: float, q: float, h: float) -> None:
    B = least_width(w, q, 150.0, h)
    assert gross_pressure(w, B, 1.0, h, h, 150.0, 62.4) == pytest.approx(q)


def test_a_footing_too_heavy_for_its_soil_has_no_width() -> None:
    with pytest.raises(OutsideLimits, match="the soil bears more than the footing's own weight"):
        least_width(500.0, 1500.0, 150.0, 10.5)
