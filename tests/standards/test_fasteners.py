"""A row of fasteners pushed along itself from beside it: equilibrium, symmetry, and what one fastener cannot do."""

from __future__ import annotations

from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.statics.fasteners import end_fastener, fastener_force, row_polar_moment
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet

forces = st.floats(1.0, 5000.0)
counts = st.integers(2, 8)
spacings = st.floats(0.5, 12.0)
beside = st.floats(0.0, 12.0)


@given(n=counts, s=spacings)
def test_the_polar_moment_is_the_sum_taken_one_by_one(n: int, s: float) -> None:
    one_by_one = sum((s * (k - (n - 1) / 2)) ** 2 for k in range(n))
    assert row_polar_moment(float(n), s) == pytest.approx(one_by_one)


@given(V=forces, n=counts, s=spacings, e=beside)
def test_the_row_is_in_equilibrium(V: float, n: int, s: float, e: float) -> None:
    end = end_fastener(V, float(n), s, e)
    assert end.along * n == pytest.approx(V)
    across = [end.across * (k - (n - 1) / 2) / ((n - 1) / 2) for k in range(n)]
    assert sum(across) == pytest.approx(0.0, abs=1e-6 * V)
    about = sum(a * s * (k - (n - 1) / 2) for k, a in enumerate(across))
    assert about == pytest.approx(V * e, abs=1e-6 * V)
    assert end.resultant == pytest.approx(hypot(end.along, end.across))


@given(V=forces, n=counts, s=spacings, e=st.floats(0.0, 6.0), more=st.floats(0.0, 6.0))
def test_farther_beside_is_never_easier_and_wider_apart_never_harder(
    V: float, n: int, s: float, e: float, more: float
) -> None:
    end = end_fastener(V, float(n), s, e)
    assert end_fastener(V, float(n), s, e + more).resultant >= end.resultant - 1e-9
    assert end_fastener(V, float(n), s + more, e).resultant <= end.resultant + 1e-9
    assert 0.0 <= end.theta < 90.0


def test_a_force_through_the_row_is_shared_alike() -> None:
    end = end_fastener(900.0, 3.0, 3.0)
    assert (end.along, end.across, end.resultant, end.theta) == (300.0, 0.0, 300.0, 0.0)
    assert end_fastener(900.0, 1.0).resultant == 900.0


def test_a_fastener_off_the_row_takes_more_along_the_force_too() -> None:
    assert fastener_force(100.0, 4.0, 300.0, 100.0, 0.0, 5.0) == pytest.approx(25.0 + 15.0)


@pytest.mark.parametrize(("n", "s"), [(1.0, 3.0), (2.0, 0.0)])
def test_one_fastener_holds_no_couple(n: float, s: float) -> None:
    with pytest.raises(OutsideLimits, match="one fastener holds no couple"):
        end_fastener(100.0, n, s, 1.0)


def test_its_working_shows_the_couple() -> None:
    with Sheet() as sheet:
        end_fastener(300.0, 3.0, 3.0, 4.0)
    assert [step.id for step in sheet.steps if step.kind == "equation"] == [
        "statics/row-polar",
        "statics/elastic-vector",
    ]
