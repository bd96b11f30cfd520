"""Old plastered walls as crosswalls, and by how much work may raise what an existing element is asked to carry."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.iebc_2021.alterations import raised_share, within_allowance
from groundsill.standards.old_materials.crosswalls import crosswall_ratio, require_crosswall
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet
from groundsill.working.value import marks_of


def test_a_nine_foot_wall_counts_from_six_feet_on() -> None:
    assert require_crosswall(9.0, 6.0) == pytest.approx(1.5)
    assert require_crosswall(9.0, 5.9995) == pytest.approx(1.5, abs=1e-3)  # a tape's error at the very limit
    with pytest.raises(OutsideLimits, match=r"wall 9 ft high and 5\.9 ft long: h/b = 1\.53; must be at most 1\.5"):
        require_crosswall(9.0, 5.9)


@given(st.floats(1, 20), st.floats(1, 60), st.floats(0.01, 20))
def test_a_longer_wall_is_never_refused_where_a_shorter_one_counts(h: float, b: float, more: float) -> None:
    assert crosswall_ratio(h, b + more) < crosswall_ratio(h, b)
    try:
        require_crosswall(h, b)
    except OutsideLimits:
        return
    require_crosswall(h, b + more)


def test_a_wall_of_no_length_is_refused() -> None:
    with pytest.raises(OutsideLimits, match=r"b .* = 0 ft; must be above 0"):
        crosswall_ratio(9.0, 0.0)


def test_the_limit_of_a_crosswall_carries_its_mark() -> None:
    with Sheet() as sheet:
        require_crosswall(9.0, 8.0)
    found = {mark.text() for step in sheet.steps for mark in step.marks}
    assert "from memory, to be confirmed: IEBC Appendix A1 Table of crosswall proportions: existing crosswall" in found


@pytest.mark.parametrize(
    ("before", "after", "allowed"),
    [(1.0, 1.1, True), (1.0, 1.11, False), (2.0, 2.2, True), (2.0, 2.3, False), (0.2, 1.0, True), (0.95, 1.04, True),
     (0.9, 1.01, False), (3.0, 1.5, True)],
)  # fmt: skip
def test_a_rise_is_allowed_up_to_ten_per_cent_or_while_the_element_still_carries_its_load(
    before: float, after: float, allowed: bool
) -> None:
    assert within_allowance(before, after) is allowed


@given(st.floats(0.01, 10), st.floats(0, 10))
def test_a_ratio_that_falls_is_always_allowed(before: float, after: float) -> None:
    if after <= before:
        assert raised_share(before, after) <= 0
        assert within_allowance(before, after)


def test_the_allowance_is_read_and_says_that_no_example_was() -> None:
    with Sheet() as sheet:
        within_allowance(1.0, 1.05)
    doubts = marks_of(value for step in sheet.steps for value in step.results)
    assert {(mark.kind, mark.what) for mark in doubts} == {
        ("unverified", "IEBC 2021 503.4: no published value to check it by")
    }
