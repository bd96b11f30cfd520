"""Brick and stone: joints, mortar, bond, proofs, and the wish to keep an old look."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.findings.finding import WEIGHTS
from groundsill.house.fact import Fact, measured, unknown
from groundsill.house.foundation import FoundationTest
from tests.findings.changed import GOOD_BRICK, answers, house_with, noted, the, weights

ADDRESS = "finding/masonry/fs4"
SHEARS = FoundationTest(segment="fs4", station_in=40, kind="mortar shear", result=60, unit="psi", count=8)
PULLS = FoundationTest(segment="fs4", station_in=60, kind="anchor pull", result=2000, unit="lb", count=3)


def of(tests=(SHEARS, PULLS), seen=(), keep=None, material="brick", **facts):
    """The finding on a stretch of brick, good but for these facts."""
    house = house_with(id="fs4", tests=tests, noted=seen, material=material, **GOOD_BRICK | facts)
    building = house.survey.building
    if keep is not None:
        building = replace(building, keep_character=measured(keep))
    return the(replace(house, survey=replace(house.survey, building=building)), ADDRESS)


def test_good_tested_brick_is_watched_for_an_earthquake_alone_since_it_stands_under_an_outside_wall():
    found = of()
    assert weights(found) == ("does not matter", "watch", "does not matter")
    assert answers(found)["perimeter"] == "no"


@pytest.mark.parametrize(
    ("tests", "answer", "weight"),
    [((SHEARS, PULLS), "yes", "watch"), ((SHEARS,), "cannot tell", "matters"), ((PULLS,), "cannot tell", "matters"),
     ((), "cannot tell", "matters"), ((replace(SHEARS, count=7), PULLS), "cannot tell", "matters")],
)  # fmt: skip
def test_both_proofs_are_asked_and_either_missing_proves_nothing(tests, answer, weight):
    """Eight in-place shear tests at least (IEBC A106.2.3.5), and anchors tested in that wall."""
    found = of(tests=tests)
    assert answers(found)["proved"] == answer
    assert found.earthquake.weight == weight
    assert ("inner" in [cure.key for cure in found.cures]) == (answer != "yes")


@pytest.mark.parametrize(
    ("facts", "key", "answer", "gravity"),
    [
        ({"mortar": measured("missing")}, "jointed", "no", "matters"),
        ({"mortar": measured("soft")}, "mortar", "no", "watch"),
        ({"mortar": unknown()}, "mortar", "cannot tell", "cannot tell"),
        ({"condition": measured("crumbling")}, "whole", "no", "matters"),
        ({"condition": unknown()}, "whole", "cannot tell", "cannot tell"),
        ({"header_course": measured(False)}, "bonded", "no", "watch"),
        ({"header_course": unknown()}, "bonded", "cannot tell", "cannot tell"),
        ({"collar_joint_filled": measured(False)}, "filled", "no", "does not matter"),
        ({"collar_joint_filled": unknown()}, "filled", "cannot tell", "does not matter"),
        ({"footing_width_in": measured(9.0)}, "wide", "no", "watch"),
    ],
)
def test_each_question_unmet_or_open(facts, key, answer, gravity):
    found = of(**facts)
    assert answers(found)[key] == answer
    assert found.gravity.weight == gravity


@pytest.mark.parametrize(
    ("percent", "clear", "answer"),
    [(10.0, 24.0, "yes"), (9.9, 24.0, "no"), (10.0, 24.5, "no")],
)
def test_headers_bond_by_their_share_and_spacing(percent, clear, answer):
    """A tenth of the face and 24 in. clear at most: IEBC 2021 A106.2.2.1."""
    found = of(header_percent=measured(percent), header_clear_in=measured(clear))
    assert answers(found)["bonded"] == answer


def test_headers_that_may_be_enough_or_not_leave_it_open():
    share = Fact(value=10.0, low=8.0, high=12.0)
    assert answers(of(header_percent=share, header_clear_in=measured(20.0)))["bonded"] == "cannot tell"


def test_one_wythe_and_stone_are_not_asked_for_headers():
    assert "bonded" not in answers(of(wythes=measured(1.0)))
    assert "bonded" not in answers(of(material="stone"))


@pytest.mark.parametrize(("gone", "answer"), [(0.25, "yes"), (0.3, "no"), (None, "cannot tell")])
def test_joints_that_lost_a_quarter_inch_are_pointed(gone, answer):
    """A quarter inch: http://www.thisoldhouse.com/toh/article/0,,232787-5,00.html"""
    size = unknown() if gone is None else measured(gone)
    found = of(seen=(noted("soft mortar", "fs4", size=size),), mortar=measured("hard"))
    assert answers(found)["mortar"] == "no"  # what was noted speaks against the word in the field
    assert answers(found)["eroded"] == answer


def test_a_wish_to_keep_the_look_leaves_out_what_takes_the_old_wall_away():
    bad = {"mortar": measured("missing"), "tests": ()}
    plain, kept = of(**bad), of(keep=True, **bad)
    assert [cure.key for cure in plain.cures] == ["inner", "point", "rebuild", "replace"]
    assert [cure.key for cure in kept.cures] == ["inner", "point", "rebuild"]
    assert [reason.key for reason in kept.fits] == ["character"]
    assert not plain.fits
    assert not of(keep=False, **bad).fits
    assert of(keep=False, **bad).cures == plain.cures


def test_direct_bolting_is_offered_only_where_it_holds_together_and_never_first_without_tests():
    untested = of(tests=())
    assert untested.cures[0].key == "inner"
    assert "direct" in [c.key for c in untested.cures]
    assert "direct" not in [c.key for c in of(mortar=measured("missing")).cures]


def test_brick_under_an_outside_wall_is_a_listed_weakness_and_inside_it_is_not():
    """IEBC A303.1 lists it: https://online.flipbuilder.com/mewf/quir/files/basic-html/page123.html"""
    house = house_with(id="fs4", tests=(), material="brick", line="line5", **GOOD_BRICK)
    assert answers(the(house, ADDRESS))["perimeter"] == "yes"
    assert the(house, ADDRESS).earthquake.weight == "cannot tell"


words = st.sampled_from(("hard", "soft", "missing"))


@given(
    mortar=st.one_of(st.just(unknown()), words.map(measured)),
    condition=st.one_of(st.just(unknown()), st.sampled_from(("sound", "weathered", "crumbling")).map(measured)),
    headers=st.sampled_from((unknown(), measured(True), measured(False))),
)
@settings(max_examples=12, deadline=None)
def test_worse_never_weighs_less_and_the_unknown_never_reads_as_nothing(mortar, condition, headers):
    found = of(mortar=mortar, condition=condition, header_course=headers)
    worst = of(mortar=measured("missing"), condition=measured("crumbling"), header_course=measured(False))
    for name in ("gravity", "earthquake", "durability"):
        a, b = getattr(found, name).weight, getattr(worst, name).weight
        assert WEIGHTS.index(b) <= WEIGHTS.index(a)
    if not all(fact.known for fact in (mortar, condition, headers)):
        assert found.gravity.weight != "does not matter"
