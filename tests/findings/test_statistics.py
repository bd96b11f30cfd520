"""Student's t and least squares against SciPy and NumPy, and the laws they keep."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from groundsill.findings.statistics import follows, least_squares, t_below, t_quantile


@pytest.mark.parametrize("degrees", [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 15, 16, 29, 30, 60, 121])
def test_t_is_scipys(degrees):
    """The closed sums are exact: what is left is rounding."""
    for t in (-40.0, -3.0, -0.2, 0.0, 0.5, 1.0, 2.228, 12.7, 100.0):
        assert t_below(t, degrees) == pytest.approx(stats.t.cdf(t, degrees), abs=1e-13)
    for below in (0.001, 0.05, 0.5, 0.9, 0.95, 0.975, 0.995):
        assert t_quantile(below, degrees) == pytest.approx(stats.t.ppf(below, degrees), rel=1e-9, abs=1e-9)


@pytest.mark.parametrize(
    ("degrees", "printed"), [(1, 12.706), (2, 4.303), (3, 3.182), (5, 2.571), (10, 2.228), (30, 2.042), (120, 1.980)]
)
def test_t_975_as_every_textbook_prints_it(degrees, printed):
    assert t_quantile(0.975, degrees) == pytest.approx(printed, abs=5e-4)


def test_what_t_refuses():
    with pytest.raises(ValueError, match="at least 1 degree of freedom, not 0"):
        t_below(1.0, 0)
    with pytest.raises(ValueError, match=r"between 0 and 1, not 1"):
        t_quantile(1.0, 5)
    with pytest.raises(ValueError, match="as long as the readings"):
        least_squares([[1.0, 1.0]], [1.0, 2.0, 3.0])


@pytest.mark.parametrize("seed", range(10))
def test_least_squares_are_numpys(seed):
    random = np.random.default_rng(seed)
    columns = random.normal(size=(5, 18))
    columns[0] = 1.0
    values = random.normal(size=18)
    ours = least_squares(columns.tolist(), values.tolist())
    told, left, _, _ = np.linalg.lstsq(columns.T, values, rcond=None)
    assert ours.coefficients == pytest.approx(told, abs=1e-12)
    assert ours.spare == 13
    assert ours.spread == pytest.approx(math.sqrt(left[0] / 13), rel=1e-12)
    covariance = np.linalg.inv(columns @ columns.T)
    assert 1 / ours.last_rest**2 == pytest.approx(covariance[4, 4], rel=1e-10)


def test_a_straight_line_is_scipys_with_its_error():
    random = np.random.default_rng(7)
    x = np.sort(random.uniform(0, 5, 14))
    y = 0.3 + 0.02 * x + random.normal(scale=0.01, size=14)
    ours = least_squares([[1.0] * 14, x.tolist()], y.tolist())
    line = stats.linregress(x, y)
    assert ours.coefficients == pytest.approx((line.intercept, line.slope), rel=1e-10)
    assert ours.spread / ours.last_rest == pytest.approx(line.stderr, rel=1e-10)


NORRIS_X = (
    0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4,
    0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3,
    0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
)  # fmt: skip
NORRIS_Y = (
    0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3,
    0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3,
    0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
)  # fmt: skip


def test_a_line_as_certified_by_nist():
    """Statistical Reference Datasets, linear regression, Norris: itl.nist.gov/div898/strd/lls/data/Norris.shtml.

    Certified to fifteen figures; ten are asked, for data of four figures in double precision.
    """
    fit = least_squares([[1.0] * 36, NORRIS_X], NORRIS_Y)
    assert fit.coefficients == pytest.approx((-0.262323073774029, 1.00211681802045), rel=1e-10)
    assert fit.spread == pytest.approx(0.884796396144373, rel=1e-10)
    assert fit.spread / fit.last_rest == pytest.approx(0.429796848199937e-03, rel=1e-10)
    assert fit.spare == 34


def test_a_column_that_the_others_tell_is_left_out():
    fit = least_squares([[1.0] * 6, [1.0, -1.0] * 3, [2.0, -2.0] * 3, list(range(6))], [0.0, 1.0, 2.0, 3.0, 4.0, 5.0])
    assert fit.kept == (True, True, False, True)
    assert fit.spare == 3
    assert fit.coefficients == pytest.approx((0.0, 0.0, 0.0, 1.0), abs=1e-12)


def test_no_freedom_left_leaves_no_spread_known():
    fit = least_squares([[1.0, 1.0], [0.0, 1.0]], [3.0, 5.0])
    assert fit.coefficients == pytest.approx((3.0, 2.0))
    assert fit.spread == math.inf


def test_how_far_readings_follow_one_another():
    assert follows([1.0, -1.0, 1.0, -1.0]) == pytest.approx(-0.75)
    assert follows([1.0, 1.0, -1.0, -1.0]) == pytest.approx(0.25)
    assert follows([0.0, 0.0]) == 0.0


@given(st.integers(1, 80), st.floats(0.5, 0.9999), st.floats(0.5, 0.9999))
def test_t_grows_with_the_part_below_and_mirrors(degrees, a, b):
    if a <= b:
        assert t_quantile(a, degrees) <= t_quantile(b, degrees)
    assert t_quantile(1 - a, degrees) == pytest.approx(-t_quantile(a, degrees), rel=1e-6, abs=1e-9)
    assert t_quantile(0.975, degrees) >= t_quantile(0.975, degrees + 1)
