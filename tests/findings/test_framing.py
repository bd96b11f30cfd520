"""Posts, cuts and notches, let-in braces, balloon framing, blocking."""

from __future__ import annotations

import pytest

from groundsill.findings import findings_of
from groundsill.house.fact import Fact, measured, unknown
from groundsill.standards.irc_2021.framing import table_r502_8_1
from tests.findings.changed import answers, house_with, noted, the, weights

TIED = {"tied_top": measured(True), "tied_bottom": measured(True)}


def post(seen=(), **facts):
    """The finding on one post, tied and on concrete but for these facts."""
    return the(house_with("underfloor.posts", "po2", noted=seen, **TIED | facts), "finding/posts/po2")


def test_a_tied_post_on_concrete_is_left_alone():
    found = post()
    assert weights(found) == ("does not matter",) * 3
    assert [cure.key for cure in found.cures] == ["leave"]


@pytest.mark.parametrize(
    ("facts", "expected", "first"),
    [
        ({"pad": "wood on soil"}, ("matters", "does not matter", "watch"), "seat"),
        ({"pad": "none"}, ("matters", "does not matter", "watch"), "seat"),
        ({"pad": "stone"}, ("does not matter",) * 3, "leave"),
        ({"tied_top": measured(False)}, ("does not matter", "watch", "does not matter"), "tie"),
        ({"tied_bottom": unknown()}, ("does not matter", "cannot tell", "does not matter"), "tie"),
    ],
)
def test_each_question_of_a_post(facts, expected, first):
    found = post(**facts)
    assert weights(found) == expected
    assert found.cures[0].key == first


@pytest.mark.parametrize("kind", ["decay", "insects", "settlement", "undermining", "lean"])
def test_what_was_noted_of_a_post_matters_to_what_it_carries(kind):
    found = post(seen=(noted(kind, "po2", "hangs free"),))
    assert found.gravity.weight == "matters"
    assert any("hangs free" in text for text in found.observed)


def test_posts_that_are_alike_are_told_once():
    found = the(house_with(), "finding/posts/po1")
    assert found.mark == "C1, C2, C3"
    assert found.observed[0].startswith("3 of them")


def test_notches_and_holes_are_those_printed():
    """IRC R502.8.1 and R602.6, https://hinarratives.com/notching-boring-framing/"""
    parts = [row[0] for row in table_r502_8_1().rows.values()]
    assert parts == [pytest.approx(1 / 6, abs=1e-4), 0.25, pytest.approx(1 / 3, abs=1e-4), 0.25, 0.40]


@pytest.mark.parametrize(
    ("depth", "notch", "weight"),
    [(9.25, 1.54, "does not matter"), (9.25, 1.55, "matters"), (None, 1.0, "cannot tell"), (9.25, None, "cannot tell")],
)
def test_a_notch_in_a_joist_against_the_code(depth, notch, weight):
    """Worked example of https://open-exam-prep.com (floor construction, common traps): 9-1/4 in. / 6 = 1.54 in."""
    deep = unknown() if depth is None else measured(depth)
    size = unknown() if notch is None else measured(notch)
    house = house_with("underfloor.joists", "jf1", noted=(noted("cut framing", "jf1", size=size),), depth_in=deep)
    assert the(house, "finding/cut/seen-0").gravity.weight == weight


@pytest.mark.parametrize(("notch", "weight"), [(0.9375, "does not matter"), (1.0, "matters")])
def test_a_notch_in_a_stud_against_the_code(notch, weight):
    """A quarter of 3-3/4 in. is 15/16 in. (R602.6)."""
    house = house_with(noted=(noted("cut framing", "sg2", size=measured(notch)),))
    found = the(house, "finding/cut/seen-0")
    assert (found.gravity.weight, found.earthquake.weight) == (weight, weight)


def test_a_depth_that_may_be_either_leaves_the_notch_open():
    seen = (noted("cut framing", "jf1", size=measured(1.5)),)
    house = house_with("underfloor.joists", "jf1", noted=seen, depth_in=Fact(value=9.0, low=8.0, high=10.0))
    assert answers(the(house, "finding/cut/seen-0"))["notched_joist"] == "cannot tell"


def test_a_line_cut_through_stops_the_force_and_nobody_knows_what_carries():
    found = the(house_with(noted=(noted("cut framing", "line2", "plate cut for a duct"),)), "finding/cut/seen-0")
    assert (found.gravity.weight, found.earthquake.weight) == ("cannot tell", "matters")
    assert found.line == "line2"


def test_a_plate_that_was_cut_is_strapped():
    house = house_with("underfloor.splices", "sp1", kind="cut")
    found = the(house, "finding/plate/sp1")
    assert found.earthquake.weight == "matters"
    assert [cure.key for cure in found.cures] == ["strap"]


def test_a_let_in_brace_is_not_counted_and_does_no_harm():
    found = the(house_with("underfloor.segments", "sg2", let_in_brace=measured(True)), "finding/let-in/sg2")
    assert weights(found) == ("does not matter", "watch", "does not matter")


@pytest.mark.parametrize(
    ("facts", "address"),
    [({"framing": "balloon"}, "finding/balloon/line2"), ({"rim": "none"}, "finding/blocking/line2")],
)
def test_how_a_line_is_framed_is_watched(facts, address):
    found = the(house_with("underfloor.lines", "line2", **facts), address)
    assert found.earthquake.weight == "watch"


def test_what_was_not_so_framed_has_no_finding():
    found = {finding.address for finding in findings_of(house_with()).findings}
    assert not {a for a in found if a.startswith(("finding/let-in/", "finding/balloon/", "finding/plate/"))}
