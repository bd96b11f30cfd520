"""The anchors of hold-downs: near breaks and ends of the concrete, the force, tests in place, decisions."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from groundsill.house.fact import measured
from groundsill.loadpath.chain import Link
from groundsill.work.document import House
from tests.loadpath.bolting import (
    WORK,
    a_hold_down,
    a_panel,
    a_shear_test,
    links,
    sound_house,
    with_acceptance,
    with_break,
    with_hazard,
    with_pieces,
    with_stem,
    with_tests,
)

ADDRESS = "overturning/piece-0/+-anchor-H104"


def held(**changes: Any) -> House:
    """A slender panel on the right line, a hold-down at each end."""
    ends = (a_hold_down("sg2", 104.0, **changes), a_hold_down("sg2", 117.0, **changes))
    return with_pieces(sound_house(), a_panel("sg2", 101.0, 120.0), *ends)


def anchor(house: House) -> Link:
    """The anchor of the first hold-down."""
    return links(house, "line2", work=True)[ADDRESS]


def relied_on(house: House, line: str) -> House:
    """The house with a line relied on by the surveyor's word, whatever stands under it."""
    under = house.survey.underfloor
    lines = {**under.lines, line: replace(under.lines[line], relied_on=True, relied_reason="by decision")}
    return replace(house, survey=replace(house.survey, underfloor=replace(under, lines=lines)))


def test_an_anchor_set_in_old_concrete_is_only_indicated() -> None:
    link = anchor(held(anchor_embedment_in=10.0))
    assert link.demand is not None
    assert link.demand > 0
    assert link.reason.startswith(
        "breakout for the overstrength tension (17.10.5.3 d); bond stress by its report, report 5; against splitting "
        "(17.9.2): met: edge at least 1.75 in. away (its report); without"
    )


@pytest.mark.parametrize("kind", ["full-depth crack", "cold joint", "gap", "step"])
def test_no_hold_down_counts_within_a_foot_of_a_break(kind: str) -> None:
    near = anchor(with_break(held(), "line2", 95.0, kind))
    assert (near.status, near.capacity) == ("fails", 0.0)
    assert near.reason.startswith(f"it stands within 12 in. of a {kind} in the foundation; without")
    far = anchor(with_break(held(), "line2", 80.0, kind))
    assert far.capacity != 0.0


def test_a_plain_crack_does_not_take_it_away() -> None:
    assert anchor(with_break(held(), "line2", 95.0, "crack")).capacity != 0.0


def test_the_end_of_the_concrete_cuts_the_cone() -> None:
    whole = anchor(held())
    ended = relied_on(with_stem(held(), "fs2", from_in=98.0), "line2")
    cut = anchor(ended)
    assert cut.capacity is not None
    assert whole.capacity is not None
    assert cut.capacity < whole.capacity


def test_in_category_b_the_plain_force_pulls_and_the_strength_is_whole() -> None:
    low = with_hazard(held(), S_S=0.3, S_1=0.05, site_class="C")
    link, high = anchor(low), anchor(held())
    assert link.capacity is not None
    assert high.capacity is not None
    assert link.capacity == pytest.approx(high.capacity / 0.75)
    assert link.status == "does not apply" or "for the plain earthquake force: category B (17.10.1)" in link.reason


def pulled(load: float) -> House:
    """Three pull tests of such anchors on the stretch."""
    like = {"kind": "anchor pull", "anchor": "new", "anchor_kind": "adhesive", "anchor_diameter_in": 0.625}
    tests = {f"pull_{n}": a_shear_test("fs2", 80.0 + n, load, mark=f"T{n}", **like) for n in range(3)}
    return with_tests(light(), **tests)


def light() -> House:
    """A longer panel, so that its anchors hold."""
    ends = (
        a_hold_down("sg2", 104.0, anchor_edge_in=8.0, anchor_embedment_in=10.0),
        a_hold_down("sg2", 157.0, anchor_edge_in=8.0, anchor_embedment_in=10.0),
    )
    panels = [a_panel("sg2", start, end) for start, end in ((101.0, 160.0), (0.0, 90.0), (170.0, 240.0))]
    return with_pieces(with_stem(sound_house(), "fs2", top_width_in=measured(16.0)), *panels, *ends)


def test_pull_tests_lift_it_and_so_does_a_named_engineer() -> None:
    plain = anchor(light())
    assert plain.status == "indicated"
    assert plain.extension == "an anchor set afterwards in old concrete, until it is tested in place"
    proved = anchor(pulled(20000.0))
    assert (proved.status, proved.extension) == ("passes", "")
    assert "passes by test: T0, T1, T2 held at least 20,000 lb" in proved.reason
    short = anchor(pulled(10.0))
    assert short.status == "indicated"
    accepted = anchor(with_acceptance(light(), f"line/line2/{ADDRESS}", alternative=WORK))
    assert accepted.status == "passes"
    assert accepted.reason.startswith("accepted by M. Osei, WA S.E. 1, 2026-06-01: seen at site")


def test_a_hold_down_that_nothing_pulls_is_not_asked() -> None:
    assert anchor(with_hazard(light(), S_S=0.01, S_1=0.005)).status == "does not apply"
