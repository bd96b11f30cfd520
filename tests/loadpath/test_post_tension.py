"""The post that a hold-down pulls beside its middle: what passes bare, what nobody can say, what it is found by."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from groundsill.house.fact import Fact, measured
from groundsill.loadpath.chain import Link
from groundsill.work.document import House
from tests.loadpath.bolting import a_hold_down, a_panel, links, sound_house, with_pieces, with_sill

LOW, HIGH = 90.0, 130.0
POST = {
    "end_post_in": 3.5, "end_post_depth_in": 3.5, "end_post_species": "Douglas fir-larch", "end_post_grade": "No. 2",
}  # fmt: skip
TOLD = {"from_post_in": 1.25, "bored_in": 0.0}


def held(*downs: dict[str, Any], post: dict[str, Any] | None = None, house: House | None = None) -> House:
    """A slender panel in the right line, held down at its start as told (else by one hold-down), and at its end."""
    panel = replace(a_panel("sg2", LOW, HIGH), **(POST if post is None else post))
    first = [a_hold_down("sg2", LOW + 3, **{"mark": f"H{n}"} | one) for n, one in enumerate(downs or (TOLD,), start=1)]
    return with_pieces(house or sound_house(), panel, *first, a_hold_down("sg2", HIGH - 3))


def found(house: House) -> dict[str, Link]:
    """The links of the panel's overturning, pushed toward the line's end."""
    start = "overturning/piece-0/+"
    return {key.removeprefix(start): link for key, link in links(house, "line2", work=True).items() if start in key}


def pulled(*downs: dict[str, Any], **changes: Any) -> Link:
    return found(held(*downs, **changes))["-pulled"]


def tension(house: House) -> float:
    """The tension at the start that the segment's own overturning tells."""
    words = next(text for text in found(house)[""].reason.split("; ") if text.startswith("tension at the end"))
    return float(words.removeprefix("tension at the end ").removesuffix(" lb").replace(",", ""))


def test_the_couple_bends_the_post_and_the_pull_stretches_it() -> None:
    """By hand: T/12.25 against 575 x 1.6 x 1.5, T (1.75 + 1.25) 6/3.5^3 against 900 x 1.6 x 1.5."""
    link, T = pulled(), tension(held())
    assert T > 100
    expected = T / 12.25 / (575 * 1.6 * 1.5) + 6 * T * 3.0 / 3.5**3 / (900 * 1.6 * 1.5)
    assert link.demand == pytest.approx(expected, rel=0.002)
    assert (link.capacity, link.unit, link.level) == (1.0, "1", "allowable")
    assert link.status == "passes"
    assert link.clause == "NDS 2018 3.1.2, 3.8.1, 3.9.1"
    assert link.title.startswith("start post of ")
    assert "pulled by hold-down H1" in link.title


def test_holes_leave_less_of_the_post() -> None:
    whole, bored = pulled(), pulled({**TOLD, "bored_in": 0.6875})
    assert bored.demand == pytest.approx((whole.demand or 0) * 3.5 / (3.5 - 0.6875))


def test_a_hold_down_in_line_only_stretches_the_post() -> None:
    house = held({"seat": "in line with the end post", "bored_in": 0.0})
    link = found(house)["-pulled"]
    assert link.demand == pytest.approx(tension(house) / 12.25 / (575 * 1.6 * 1.5), rel=0.002)


@pytest.mark.parametrize("untold", [{}, {"from_post_in": 1.25}, {"bored_in": 0.0}])
def test_nothing_is_worked_out_of_what_the_hold_down_does_not_tell(untold: dict[str, Any]) -> None:
    """No link more, and the verdicts of before stand; the panel's own link says what is missing."""
    house = held(untold)
    assert "-pulled" not in found(house)
    sheathing = next(link for key, link in links(house, "line2", work=True).items() if key.startswith("sheathing/"))
    assert "the bending of the end posts by hold-downs beside them (H1, H127) cannot be checked" in sheathing.reason


def test_what_a_bare_post_cannot_carry_cannot_be_checked_under_sheathing() -> None:
    """Two old studs, each bent for itself, of no known grade."""
    link = pulled(post={})
    assert link.status == "cannot be checked"
    assert "bare it would use " in link.reason
    assert "how much of the couple the sheathing on it takes no standard says" in link.reason
    assert "cure: a stouter post, or a hold-down in line with it" in link.reason
    assert "grade not known: the lowest is taken, No. 3" in link.reason


def test_a_pull_that_is_too_much_by_itself_fails() -> None:
    """What is bored out leaves a splinter: no sheathing helps the net section."""
    link = pulled({"seat": "in line with the end post", "bored_in": 3.45})
    assert link.status == "fails"
    assert (link.ratio or 0) > 1


def test_holes_as_wide_as_the_post_are_refused_in_words() -> None:
    link = pulled({**TOLD, "bored_in": 3.5})
    assert link.status == "cannot be checked"
    assert "something of the post is left beside its holes (NDS 2018 3.1.2)" in link.reason


def test_two_hold_downs_share_the_pull_and_bend_it_each_with_its_part() -> None:
    one = pulled({**TOLD, "from_post_in": 2.0})
    both = pulled({**TOLD, "from_post_in": 1.0}, {**TOLD, "from_post_in": 3.0})
    assert both.demand == pytest.approx(one.demand)
    assert "pulled by hold-down H1, H2" in both.title


def test_a_post_of_timber_is_of_another_table() -> None:
    link = pulled(post={**POST, "end_post_in": 5.5, "end_post_depth_in": 5.5})
    assert link.status == "cannot be checked"
    assert "5 in. nominal is a post or timber, of Table 4D" in link.reason


def test_a_damp_sill_lowers_bending_alone() -> None:
    damp = held(house=with_sill(sound_house(), "si2", damp=measured(True)))
    T = tension(damp)
    expected = T / 12.25 / (575 * 1.6 * 1.5) + 6 * T * 3.0 / 3.5**3 / (900 * 1.6 * 1.5 * 0.85)
    assert found(damp)["-pulled"].demand == pytest.approx(expected, rel=0.002)


def test_where_nobody_knows_the_studs_it_says_so() -> None:
    house = sound_house()
    under = house.survey.underfloor
    wall = under.segments["sg2"]
    bare = replace(wall, stud=replace(wall.stud, thickness_in=Fact(state="absent")))
    house = replace(
        house, survey=replace(house.survey, underfloor=replace(under, segments={**under.segments, "sg2": bare}))
    )
    link = pulled(post={}, house=house)
    assert link.status == "cannot be checked"
    assert link.reason == "the size or species of the end studs is not known"
