"""A sill on its bolts: transfer length, bolts that work, and the slip taken for wood to concrete."""

from __future__ import annotations

from math import exp

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.nds_2018.group_action import (
    slip_modulus_metal,
    slip_modulus_wood,
    slip_modulus_wood_concrete,
)
from groundsill.standards.statics.sill import bolts_that_work, transfer_length
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet
from groundsill.working.value import marks_of

STIFF, SLIP, APART = st.floats(1e5, 1e8), st.floats(1e3, 1e6), st.floats(2.0, 96.0)


def test_a_two_by_six_on_half_inch_bolts_a_foot_apart():
    """Our own arithmetic: E A 8,250,000 lb, 95,459 lb/in: the root of 1,037.1, and 31 % left after 37.7 in."""
    assert slip_modulus_wood_concrete(0.5) == pytest.approx(95_459.4, abs=0.1)
    assert transfer_length(8_250_000, 95_459.4, 12) == pytest.approx(32.204, abs=0.001)
    assert exp(-37.7 / 32.204) == pytest.approx(0.31, abs=0.001)


@given(STIFF, SLIP, APART, st.floats(1.01, 20.0))
def test_it_grows_with_the_sill_and_the_spacing_and_falls_with_the_slip_modulus(EA, gamma, s, more):
    L_t = transfer_length(EA, gamma, s)
    assert transfer_length(EA * more, gamma, s) == pytest.approx(L_t * more**0.5)
    assert transfer_length(EA, gamma, s * more) == pytest.approx(L_t * more**0.5)
    assert transfer_length(EA, gamma * more, s) == pytest.approx(L_t / more**0.5)


@given(st.floats(0.0, 1e5), st.floats(1.0, 1e5))
def test_bolts_that_work_times_the_greatest_share_is_the_force(V, V_1):
    assert bolts_that_work(V, V_1) * V_1 == pytest.approx(V)


def test_limits_are_told():
    with pytest.raises(OutsideLimits, match="EA"):
        transfer_length(0.0, 95_459.4, 12.0)
    with pytest.raises(OutsideLimits, match="s"):
        transfer_length(8e6, 95_459.4, 0.0)
    with pytest.raises(OutsideLimits, match="V_1"):
        bolts_that_work(100.0, 0.0)


def test_wood_to_concrete_is_taken_as_wood_to_metal_and_marked_as_an_extension():
    for D in (0.375, 0.5, 0.75, 1.0):
        assert slip_modulus_wood_concrete(D) == slip_modulus_metal(D) == pytest.approx(1.5 * slip_modulus_wood(D))
    with Sheet():
        marks = marks_of((slip_modulus_wood_concrete(0.5),))
    assert [(mark.kind, mark.what) for mark in marks] == [
        ("extension", "NDS 2018 11.3.6 gives no slip of wood to concrete: wood to metal is taken")
    ]
