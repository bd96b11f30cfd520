"""What tests of anchors in place prove: counts, shares and the load each must hold."""

from __future__ import annotations

from math import log
from random import Random
from statistics import NormalDist

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.common_practice.anchor_tests import fractile_factor, load_over_force, proved_share


def test_forty_five_prove_nineteen_in_twenty_by_count_alone() -> None:
    """The tests without a failure that are printed everywhere: ln 0.10 / ln 0.95 = 44.9."""
    assert log(0.10) / log(0.95) == pytest.approx(44.9, abs=0.05)
    assert float(proved_share(0.90, 44)) < 0.95 < float(proved_share(0.90, 45))
    assert float(load_over_force(44)) > 1.0
    assert float(load_over_force(45)) == 1.0


@pytest.mark.parametrize(("count", "factor"), [(1, 2.06), (3, 1.53), (5, 1.38), (10, 1.22), (20, 1.11)])
def test_the_fewer_they_are_the_more_each_must_hold(count: int, factor: float) -> None:
    assert float(load_over_force(count)) == pytest.approx(factor, abs=0.006)


@given(st.integers(1, 200), st.integers(0, 50))
def test_another_anchor_never_asks_more_of_each(count: int, more: int) -> None:
    assert float(load_over_force(count)) >= float(load_over_force(count + more)) >= 1.0


@given(st.floats(0.05, 0.4), st.floats(0.0, 0.1))
def test_wider_scatter_asks_more(cov: float, more: float) -> None:
    assert float(fractile_factor(-0.09, 1.645, cov + more)) >= float(fractile_factor(-0.09, 1.645, cov))


def test_of_anchors_whose_fractile_is_the_force_three_hold_that_load_one_time_in_ten() -> None:
    """By throwing dice, not by the equation: log-normal anchors, 5 % of them under the force of 1."""
    dice, sigma = Random(7), log(1 + 0.25**2) ** 0.5
    middle, asked = NormalDist().inv_cdf(0.95) * sigma, log(float(load_over_force(3)))
    rounds = 20000
    passed = sum(all(dice.gauss(middle, sigma) >= asked for _ in range(3)) for _ in range(rounds))
    assert passed / rounds == pytest.approx(0.10, abs=0.01)
