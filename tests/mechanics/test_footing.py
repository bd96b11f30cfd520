"""Pressure under a footing: printed and closed-form values, a numeric integral of the block, and the refusals."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.mechanics.footing import Pressure, pressure_under
from groundsill.working.errors import OutsideLimits


def test_a_footing_loaded_at_the_edge_of_its_kern():
    """The problem (120 kip on 6 by 14 ft, 1 ft off centre) is question 173 of pegenius.com/daily-question; the answer
    is computed: 2.857 ksf at one edge, nothing at the other, and the whole width still touching."""
    found = pressure_under(120.0, 120.0 * 1.0, 6.0, 14.0)
    assert found.greatest == pytest.approx(2.857, abs=0.0005)
    assert found.least == pytest.approx(0.0, abs=1e-12)
    assert (found.contact, found.eccentricity) == (6.0, 1.0)


def test_a_footing_loaded_outside_its_kern():
    """Computed: 10 kip on 3 by 1 ft, 0.75 ft off centre: a triangle over 2.25 ft, 8.889 ksf at its edge."""
    found = pressure_under(10.0, 7.5, 3.0, 1.0)
    assert found.greatest == pytest.approx(8.889, abs=0.0005)
    assert (found.least, found.contact) == (0.0, 2.25)


LOADS = st.floats(100.0, 1e6)
SIZES = st.floats(0.5, 60.0)


@given(LOADS, SIZES, SIZES, st.floats(0.0, 0.499))
def test_the_pressure_block_integrates_to_the_load_and_its_moment(load, width, length, part):
    """Whatever the eccentricity up to the edge, soil pushes back with the load and at the load's own place."""
    found = pressure_under(load, load * part * width, width, length)
    n = 2000
    x = (np.arange(n) + 0.5) / n * found.contact  # from the pressed edge inward, middles of equal slices
    q = found.greatest + (found.least - found.greatest) * x / found.contact
    slices = q * length * found.contact / n
    assert slices.sum() == pytest.approx(load, rel=1e-9)
    assert (slices * (width / 2 - x)).sum() == pytest.approx(load * part * width, rel=1e-5, abs=1e-6 * load * width)
    assert found.least >= -1e-9 * found.greatest


@given(LOADS, SIZES, SIZES)
def test_inside_the_kern_and_outside_meet_at_a_sixth_of_the_width(load, width, length):
    at, beyond = (pressure_under(load, load * width * e, width, length) for e in (1 / 6 - 1e-12, 1 / 6 + 1e-12))
    assert at.greatest == pytest.approx(beyond.greatest, rel=1e-9)
    assert at.contact == pytest.approx(beyond.contact, rel=1e-9)


@given(LOADS, SIZES, SIZES, st.floats(0.0, 0.48), st.floats(0.001, 0.019))
def test_more_moment_never_lowers_the_greatest_pressure(load, width, length, part, more):
    one, two = (pressure_under(load, load * width * e, width, length) for e in (part, part + more))
    assert two.greatest > one.greatest
    assert two.contact <= one.contact


@given(LOADS, SIZES, SIZES, st.floats(0.0, 0.49))
def test_the_sense_of_the_moment_does_not_matter(load, width, length, part):
    assert pressure_under(load, -load * width * part, width, length) == pressure_under(
        load, load * width * part, width, length
    )


def test_no_moment_gives_the_mean_everywhere():
    assert pressure_under(12_000.0, 0.0, 1.25, 20.0) == Pressure(480.0, 480.0, 1.25, 0.0)


def test_a_footing_whose_load_leaves_it_is_refused_with_where_it_stands():
    with pytest.raises(OutsideLimits) as caught:
        pressure_under(10.0, 15.0, 3.0, 1.0)
    assert str(caught.value) == "the resultant stands 1.5 from the middle of a footing 3 wide: it overturns"


@pytest.mark.parametrize(
    ("load", "width", "length", "says"),
    [
        (0.0, 3.0, 1.0, "a footing 3 by 1 under 0 has no pressure to work out"),
        (-5.0, 3.0, 1.0, "a footing 3 by 1 under -5 has no pressure to work out"),
        (10.0, 0.0, 1.0, "a footing 0 by 1 under 10 has no pressure to work out"),
        (10.0, 3.0, -1.0, "a footing 3 by -1 under 10 has no pressure to work out"),
    ],
)
def test_a_footing_with_no_load_or_no_size_is_refused(load, width, length, says):
    with pytest.raises(OutsideLimits) as caught:
        pressure_under(load, 1.0, width, length)
    assert str(caught.value) == says


@pytest.mark.parametrize("wrong", [float("nan"), float("inf")])
def test_a_load_or_moment_that_is_no_number_is_refused(wrong):
    for load, moment in ((wrong, 1.0), (10.0, wrong)):
        with pytest.raises(OutsideLimits):
            pressure_under(load, moment, 3.0, 1.0)
