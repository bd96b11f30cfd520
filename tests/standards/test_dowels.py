"""Bars glued into old concrete: what gives first, what nobody can say, and how many to pull before they count."""

from __future__ import annotations

from math import ceil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.aci318_19.bond import bond_of, bond_stress
from groundsill.standards.aci318_19.dowels import PULL_FIRST, Dowel, dowel_in_old_concrete, friction_dowels
from groundsill.standards.aci318_19.pryout import pryout_of
from groundsill.standards.aci318_19.shear_breakout import breakout_parallel_to_edge, breakout_toward_edge
from groundsill.standards.aci318_19.tension_breakout import tension_breakout_of
from groundsill.standards.common_practice.pull_tests import pull_tests
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet
from groundsill.working.value import marks_of

CATEGORY_1 = "concrete breakout, no supplementary reinforcement, post-installed category 1"
ALL_MET = {"qualified": True, "hammer_drilled": True, "warm": True}


def dowel(f_c: float = 3000.0, h_ef: float = 4.0, c_near: float = 4.0, **more: object) -> Dowel:
    return dowel_in_old_concrete(
        "#4", h_ef, f_c, c_near, **{"c_far": c_near, "strength": "tested", "category": "1", **ALL_MET, **more}
    )


def test_a_single_bar_is_the_least_of_its_parts():
    """Each part by its own rule, put together by hand; in tension three quarters against earthquake."""
    found = dowel()
    stress = bond_stress(f_c=3000.0, qualified=True, hammer_drilled=True, aged=True, warm=True)
    glue = bond_of(0.5, 4.0, stress.cracked, stress.reach, c_near=4.0, c_far=4.0)
    cone = tension_breakout_of(4.0, 3000.0, c_near=4.0, c_far=4.0, anchor="post-installed", failure=CATEGORY_1)
    assert found.tension == pytest.approx(0.75 * min(glue.design, cone.design))
    assert found.tension_by == "bond"
    pried = pryout_of(
        4.0, 3000.0, c_near=4.0, c_far=4.0, anchor="post-installed",
        failure="pullout or pryout, post-installed category 1", N_a=glue.nominal,
    )  # fmt: skip
    edge = breakout_toward_edge(0.5, 4.0, 3000.0, 4.0, 24.0)
    assert found.shear == pytest.approx(min(pried.design, edge.design, 0.65 * 0.6 * 0.20 * 80_000.0))
    assert (found.extension, found.first) == ("", "")


def test_along_the_face_the_edge_holds_twice_as_much():
    toward, along = (
        dowel(c_near=2.0, tau_cr=2000.0, tau_uncr=2500.0),
        dowel(c_near=2.0, tau_cr=2000.0, tau_uncr=2500.0, push="along the face"),
    )
    assert toward.shear_by == along.shear_by == "edge breakout"
    assert along.shear == pytest.approx(2 * toward.shear)
    assert along.shear == pytest.approx(breakout_parallel_to_edge(0.5, 4.0, 3000.0, 2.0, 24.0).design)


def test_in_weak_concrete_the_codes_bond_does_not_apply_and_bars_are_pulled_first():
    found = dowel(f_c=1800.0)
    assert (found.tension, found.shear, found.first) == (None, None, PULL_FIRST)
    assert found.shear_at_most > 0
    assert found.extension == "chapter 17 carried on to concrete below 2,500 psi or of unknown strength"
    assert [c.text for c in found.conditions if c.met is False] == ["(c) concrete of at least 2,500 psi"]


@pytest.mark.parametrize("unknown", ["qualified", "hammer_drilled", "warm"])
def test_a_condition_nobody_answered_leaves_the_bars_to_a_test(unknown: str):
    assert dowel(**{unknown: None}).tension is None
    assert dowel(**{unknown: False}).tension is None


def test_a_products_own_bond_stands_in_weak_concrete_as_an_extension():
    found = dowel(f_c=1800.0, tau_cr=800.0, tau_uncr=1200.0)
    assert found.tension is not None
    assert found.extension
    assert found.conditions == ()


@given(f_c=st.floats(2500.0, 8000.0), more=st.floats(1.0, 2.0), h_ef=st.floats(2.5, 9.0), c=st.floats(1.5, 12.0))
def test_stronger_concrete_deeper_bars_and_more_edge_never_hold_less(f_c, more, h_ef, c):
    at = dowel(f_c=f_c, h_ef=h_ef, c_near=c)
    for better in (
        dowel(f_c=min(f_c * more, 8000.0), h_ef=h_ef, c_near=c),
        dowel(f_c=f_c, h_ef=h_ef, c_near=c * more),
    ):
        assert better.tension >= at.tension * (1 - 1e-9)
        assert better.shear >= at.shear * (1 - 1e-9)
    deeper = dowel(f_c=f_c, h_ef=min(h_ef * more, 10.0), c_near=c)
    assert deeper.tension >= at.tension * (1 - 1e-9)


def test_on_a_sheet_the_answer_is_the_same_and_says_what_it_used():
    with Sheet() as sheet:
        found = dowel(n=4.0, s=8.0)
    assert found == dowel(n=4.0, s=8.0)
    assert {"aci318-19/17.6.5-bond", "aci318-19/17.7.3.1", "aci318-19/17.7.2-toward"} <= {
        step.id for step in sheet.steps
    }


@given(n=st.integers(2, 8), s=st.floats(3.0, 40.0))
def test_a_bar_of_a_row_never_holds_more_than_one_alone(n, s):
    row, alone = dowel(n=float(n), s=s, c_near=4.0), dowel(c_near=4.0)
    assert row.tension <= alone.tension * (1 + 1e-9)
    assert row.shear_at_most <= alone.shear_at_most * (1 + 1e-9)
    if s > 12.0:  # three times the embedment and the edge distance: each by itself
        assert (row.tension, row.shear) == pytest.approx((alone.tension, alone.shear))


def test_a_product_of_a_lower_category_is_pulled_out_sooner():
    first, third = dowel(), dowel(category="3")
    assert third.tension == pytest.approx(first.tension * 0.45 / 0.65)
    with pytest.raises(OutsideLimits, match="category 4"):
        dowel(category="4")


def test_a_push_in_no_known_direction_is_refused():
    with pytest.raises(OutsideLimits, match="push = 'up'; must be toward the face or along the face"):
        dowel(push="up")


# --- shear friction --------------------------------------------------------------------------------------------------


def test_bars_too_short_to_be_developed_count_as_anchors():
    found = friction_dowels("#4", 4.0, 6.0, 24.0, 200.0, 3000.0, 2500.0, report=True)
    assert found.shear is None
    assert found.reason == "6 in. in the old concrete, 14.4 in. needed to develop #4 (22.9.5.1): they count as anchors"


def test_bars_developed_on_both_sides_hold_by_friction():
    rough = friction_dowels("#4", 4.0, 16.0, 24.0, 200.0, 3000.0, surface="roughened to 1/4 in.", report=True)
    smooth = friction_dowels("#4", 4.0, 16.0, 24.0, 200.0, 3000.0, report=True)
    assert rough.shear.nominal == pytest.approx(4 * 0.20 * 60_000.0)
    assert smooth.shear.nominal == pytest.approx(0.6 * rough.shear.nominal)
    assert rough.shear.design == pytest.approx(0.75 * rough.shear.nominal)


def test_weak_concrete_and_a_report_that_says_nothing_have_no_shear_friction():
    assert "below 2,500 psi" in friction_dowels("#4", 4.0, 30.0, 30.0, 200.0, 1800.0, report=True).reason
    assert "report must cover" in friction_dowels("#4", 4.0, 16.0, 24.0, 200.0, 3000.0).reason


# --- pull tests ------------------------------------------------------------------------------------------------------


@given(N=st.integers(1, 400), T=st.floats(100.0, 20_000.0), more=st.floats(1.0, 3.0))
def test_so_many_are_pulled_and_no_bar_is_stretched(N, T, more):
    found = pull_tests(float(N), T, 0.20)
    assert found.count == min(N, max(3, ceil(N / 20 - 1e-9)))
    assert found.load == min(2 * T, 0.8 * 0.20 * 60_000.0)
    assert pull_tests(float(N), T * more, 0.20).load >= found.load
    assert (found.minutes, found.movement) == (5.0, 0.1)


def test_the_number_of_tests_says_that_it_has_no_source():
    with Sheet():
        found = pull_tests(24.0, 900.0, 0.20)
    assert any(mark.kind == "from memory" for mark in marks_of((found.count,)))
    assert not any(mark.kind == "from memory" for mark in marks_of((found.load,)))
