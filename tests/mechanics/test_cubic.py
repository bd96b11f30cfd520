"""A cubic by values and slopes at its ends, against NumPy's polynomials."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.mechanics.cubic import below_nothing, cubic_at, shape, turning_points

VALUES = st.floats(-100.0, 100.0)
CUBICS = st.tuples(VALUES, VALUES, VALUES, VALUES)
LENGTHS = st.floats(0.1, 50.0)


def polynomial(values, length):
    """The same by the four conditions at its ends, in parts of the length."""
    rows = [[1, 0, 0, 0], [0, 1, 0, 0], [1, 1, 1, 1], [0, 1, 2, 3]]
    right = [values[0], values[1] * length, values[2], values[3] * length]
    return np.polynomial.Polynomial(np.linalg.solve(rows, right))


@given(CUBICS, LENGTHS, st.floats(0.0, 1.0))
def test_between_its_ends(values, length, t):
    size = max(map(abs, values)) * max(length, 1.0)
    assert cubic_at(values, length, t) == pytest.approx(polynomial(values, length)(t), abs=1e-9 * size + 1e-12)


@given(CUBICS, LENGTHS)
def test_where_it_is_level(values, length):
    curve = polynomial(values, length)
    size = max(map(abs, values)) * max(length, 1.0) + 1e-9
    found = list(turning_points(values, length))
    assert found == sorted(found)
    for t in found:
        assert 0 < t < 1
        assert curve.deriv()(t) == pytest.approx(0.0, abs=1e-6 * size)


@given(CUBICS, LENGTHS)
def test_no_value_lies_beyond_those_at_ends_and_turning_points(values, length):
    parts = [0.0, *turning_points(values, length), 1.0]
    told = [cubic_at(values, length, t) for t in parts]
    size = max(map(abs, values)) * max(length, 1.0) + 1e-9
    every = [cubic_at(values, length, t) for t in np.linspace(0.0, 1.0, 41)]
    assert max(every) <= max(told) + 1e-6 * size
    assert min(every) >= min(told) - 1e-6 * size


@given(st.floats(0.01, 0.99), st.floats(0.1, 10.0))
def test_what_lies_below_nothing_of_a_straight_line(t, length):
    rising = (-t, 1 / length, 1 - t, 1 / length)
    assert below_nothing(rising, length, 0.0, 1.0) == pytest.approx((0.0, t), abs=1e-9)
    falling = (t, -1 / length, t - 1, -1 / length)
    assert below_nothing(falling, length, 0.0, 1.0) == pytest.approx((t, 1.0), abs=1e-9)
    assert below_nothing((1.0, 0.0, 1.0, 0.0), length, 0.0, 1.0) is None
    assert below_nothing((-1.0, 0.0, -1.0, 0.0), length, 0.0, 1.0) == (0.0, 1.0)


def test_the_shapes_sum_to_one_at_the_ends():
    assert shape(0.0, 3.0)[:3] == (1.0, 0.0, 0.0)
    assert shape(1.0, 3.0) == (0.0, 0.0, 1.0, -0.0)
