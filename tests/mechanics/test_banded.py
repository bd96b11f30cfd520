"""Equations with a narrow band against SciPy, and the refusal of what nothing holds."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.linalg import solveh_banded

from groundsill.mechanics.banded import solved
from groundsill.working.errors import OutsideLimits


@given(st.integers(1, 40), st.integers(1, 5), st.integers(0, 2**32 - 1))
def test_the_answer_is_scipys(rows, width, seed):
    chance = np.random.default_rng(seed)
    bands = chance.uniform(-1.0, 1.0, (rows, width))
    bands[:, 0] = np.abs(bands[:, 1:]).sum(axis=1) + chance.uniform(2.0 * width, 100.0, rows)  # held by its diagonal
    right = chance.uniform(-1e4, 1e4, rows)
    lower = np.zeros((width, rows))  # SciPy stores the band by columns: row k, column j holds (j + k, j)
    for i in range(rows):
        for k in range(min(width, i + 1)):
            lower[k, i - k] = bands[i, k]
    assert solved(bands.tolist(), right.tolist()) == pytest.approx(solveh_banded(lower, right, lower=True), rel=1e-9)


def test_what_nothing_holds_is_refused_with_its_row():
    """Two springs in a row, held nowhere: they move together."""
    with pytest.raises(OutsideLimits, match="row 2 of 2: something moves and nothing holds it"):
        solved([[1.0, 0.0], [1.0, -1.0]], [1.0, 0.0])
