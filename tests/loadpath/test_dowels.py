"""Bars glued into the old concrete of a line: from the house file to what one holds, or how many to pull first."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from groundsill.house.fact import measured
from groundsill.house.foundation import FoundationBreak
from groundsill.loadpath.chain import Link
from groundsill.standards.aci318_19.dowels import dowel_in_old_concrete
from groundsill.study import run
from groundsill.work.document import House
from groundsill.work.pieces import Adhesive, DowelPiece
from tests.loadpath.bolting import WORK, sound_house, with_pieces, with_stem, without_cores

STEM = next(key for key, stem in sound_house().survey.foundation.segments.items() if stem.line == "line2")
GLUE = Adhesive(report="report 7", category=1, cracked_psi=700.0, uncracked_psi=1200.0)
LEAST = Adhesive(report="report 8", category=1, hole="rotary impact or rock drill", warm=True)


def house(**stem: Any) -> House:
    """The sound house, its stem on line 2 8 in. wide."""
    return with_stem(sound_house(), STEM, **({"top_width_in": measured(8.0)} | stem))


def a_row(**changes: Any) -> DowelPiece:
    """Six #4 in the middle of the stem's top, 12 in. apart, far from its ends."""
    plain: dict[str, Any] = {
        "mark": "D1", "line": "line2", "from_in": 60.0, "to_in": 120.0, "count": 6, "embedment_in": 6.0,
        "shear_lb": 800.0, "pull_lb": 300.0, "adhesive": GLUE, "with_overstrength": True,
    }  # fmt: skip
    return DowelPiece(**(plain | changes))


def links(of: House, *rows: DowelPiece) -> list[Link]:
    (found,) = [r for r in run(with_pieces(of, *rows), ranges=False).runs if r.key == WORK]
    return [link for chain in found.chains for link in chain.links if "/dowels/" in link.address]


def only(of: House, row: DowelPiece) -> Link:
    (found,) = links(of, row)
    return found


def test_each_bar_holds_what_the_standard_gives_it():
    shear, pull, _ = links(house(), a_row())
    by_hand = dowel_in_old_concrete(
        "#4", 6.0, 3000.0, 4.0, 4.0, 60.0, 22.0, 6.0, 12.0, "tested", "along the face", 700.0, 1200.0, category="1"
    )
    assert (shear.demand, pull.demand) == (800.0, 300.0)
    assert shear.capacity == pytest.approx(by_hand.shear)
    assert pull.capacity == pytest.approx(by_hand.tension)
    assert (shear.level, shear.unit, shear.status) == ("strength", "lb", "passes")
    assert shear.reason == f"{by_hand.shear_by} gives first, pushed along the face"


def test_more_force_than_a_bar_holds_fails():
    found = links(house(), a_row(shear_lb=19_000.0, pull_lb=19_000.0))
    assert [link.status for link in found] == ["fails", "fails", "fails"]


def test_a_force_that_nobody_says_holds_overstrength_is_taken_times_it():
    """By the factor of the system that the house is worked out with, in category D."""
    shear, pull, _ = links(house(), a_row(with_overstrength=False))
    plain_shear, plain_pull, _ = links(house(), a_row())
    times = shear.demand / plain_shear.demand
    assert times in (2.0, 2.5, 3.0)
    assert pull.demand == pytest.approx(times * plain_pull.demand)
    assert f"times {times:g}, as nobody says that the force holds overstrength (17.10.6.3)" in shear.reason
    assert "overstrength" not in plain_shear.reason


def test_shear_and_pull_that_each_pass_fail_together():
    """0.9 and 0.9 of what a bar holds: 1.8 against the 1.2 of ACI 318-19 17.8.3."""
    shear, pull, _ = links(house(), a_row())
    strained = a_row(shear_lb=0.9 * shear.capacity, pull_lb=0.9 * pull.capacity)
    each_shear, each_pull, together = links(house(), strained)
    assert (each_shear.status, each_pull.status, together.status) == ("passes", "passes", "fails")
    assert together.ratio == pytest.approx(1.8 / 1.2)
    assert together.clause == "ACI 318-19 17.8.3"


def test_a_small_pull_leaves_the_shear_its_whole_strength():
    shear, pull, _ = links(house(), a_row())
    *_, together = links(house(), a_row(shear_lb=0.95 * shear.capacity, pull_lb=0.2 * pull.capacity))
    assert (together.status, together.ratio) == ("passes", pytest.approx(0.95))
    assert len(links(house(), a_row(pull_lb=0.0))) == 1  # one force alone has nothing to go with


def test_both_together_are_only_indicated_where_each_is():
    assert [link.status for link in links(without_cores(house()), a_row())] == ["indicated"] * 3


def test_without_a_core_the_strength_is_only_indicated():
    shear, *_ = links(without_cores(house()), a_row())
    assert shear.status == "indicated"


def test_weak_concrete_without_a_bond_of_the_products_own_is_pulled_first():
    found = only(house(strength_psi=measured(1800.0)), a_row(adhesive=LEAST))
    assert found.status == "cannot be checked"
    assert found.clause == "ACI 318-19 17.6.5.2.5"
    assert found.reason.startswith("pull-test first: the code's bond stress does not apply")
    assert "not met: (c) concrete of at least 2,500 psi" in found.reason
    # 0.7 of the greater of 300 lb and half of 800 lb, twice over
    assert "pull 3 of 6 at 560 lb for 5 minutes, moved at most 0.10 in. (common practice)" in found.reason


def test_the_standards_own_bond_serves_where_all_its_conditions_are_met():
    shear, pull, _ = links(house(), a_row(adhesive=LEAST))
    assert shear.status != "cannot be checked"
    assert pull.capacity is not None
    assert pull.capacity < links(house(), a_row())[1].capacity


def test_what_nobody_told_of_the_adhesive_leaves_the_bars_to_a_test():
    assert "not told: (a) product qualified by ACI 355.4" in only(house(), a_row(adhesive=None)).reason


def test_bars_without_a_force_are_told_what_one_holds():
    found = only(house(), a_row(shear_lb=0.0, pull_lb=0.0))
    assert found.status == "does not apply"
    assert found.reason.startswith("no force on them is told; one holds, at strength level: shear ")


def test_a_bar_in_the_side_goes_by_its_distance_from_the_top():
    near, deep = (links(house(), a_row(into="side", embedment_in=5.0, edge_in=edge))[0] for edge in (3.0, 8.0))
    assert near.capacity < deep.capacity
    assert "how far they lie below the top" in only(house(), a_row(into="side", edge_in=None)).reason


@pytest.mark.parametrize(
    ("stem", "row", "says"),
    [
        ({"material": "brick"}, {}, "brick: no tension is counted in it without anchor tests"),
        ({"material": "none"}, {}, None),
        ({}, {"edge_in": 9.0}, "the bars stand 9 in. from a face of concrete 8 in. across"),
    ],
)
def test_what_cannot_hold_a_glued_bar_says_so(stem, row, says):
    found = links(house(**stem), a_row(**row))
    if says is None:  # there is nothing to glue them into: they have no place
        assert found == []
    else:
        assert [says in link.reason for link in found] == [True]


def test_a_crack_beside_them_is_named():
    made = house()
    crack = FoundationBreak(line="line2", station_in=64.0, kind="full-depth crack")
    base = replace(made.survey.foundation, breaks={**made.survey.foundation.breaks, "crack-d": crack})
    cracked = replace(made, survey=replace(made.survey, foundation=base))
    assert "within 12 in. of a full-depth crack" in only(cracked, a_row()).reason


def test_a_row_off_its_line_has_no_place():
    (found,) = [r for r in run(with_pieces(house(), a_row(to_in=5000.0))).runs if r.key == WORK]
    assert [m.kind for m in found.misplaced] == ["dowels"]
