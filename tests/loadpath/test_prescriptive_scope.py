"""The scope test of the prescriptive way, item by item: in, out, cannot tell; and the weaknesses it is for."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from groundsill.house.fact import Fact, measured, unknown
from groundsill.study import run
from groundsill.work.document import Basis, EditionOverride, House
from tests.forces.reference_house import reference_house
from tests.loadpath.prescribed import (
    asked,
    masonry,
    scope,
    third_storey,
    with_building,
    with_foundation,
    with_lines,
    with_segments,
    with_site,
    with_under,
)
from tests.loadpath.two_storeys import two_storeys

# --- scope: in, out, cannot tell -------------------------------------------------------------------------------------


TALL: Fact[float] = Fact(value=47.0, low=44.0, high=50.0, state="estimated")
PORTLAND = {"jurisdiction": "City of Portland, Oregon"}
LOS_ANGELES = {"jurisdiction": "City of Los Angeles"}
SAN_LEANDRO = {"jurisdiction": "San Leandro"}


def fourth_storey(house: House) -> House:
    house = third_storey(house)
    storeys = house.survey.building.storeys
    fourth = replace(storeys["st3"], order=4, name="Loft", floor_z_in=storeys["st3"].floor_z_in + 108.0)
    return with_building(house, storeys={**storeys, "st4": fourth})


SCOPE: list[tuple[str, str, Callable[[House], House]]] = [
    ("dwellings", "in", lambda h: with_building(h, families=4)),
    ("dwellings", "out", lambda h: with_building(h, families=5)),
    ("dwellings", "out", lambda h: with_site(with_building(h, families=3), **PORTLAND)),
    ("dwellings", "cannot tell", lambda h: with_site(h, **SAN_LEANDRO)),
    ("poles", "in", lambda h: h),
    ("poles", "cannot tell", lambda h: with_segments(h, kind="posts")),
    ("prescriptive-height", "in", lambda h: with_segments(h, height_in=measured(46.5))),
    ("prescriptive-height", "out", lambda h: with_segments(h, height_in=measured(47.0))),
    ("prescriptive-height", "cannot tell", lambda h: with_segments(h, height_in=Fact(state="absent"))),
    ("prescriptive-height", "cannot tell", lambda h: with_site(h, **SAN_LEANDRO)),
    ("slab", "in", lambda h: h),
    ("slab", "cannot tell", lambda h: with_lines(beside(h), storey="st1")),
    ("foundation", "in", lambda h: h),
    ("foundation", "in", masonry(measured(True))),
    ("foundation", "out", masonry(measured(False))),
    ("foundation", "out", masonry(Fact(state="absent"))),
    ("foundation", "out", lambda h: with_foundation(h, material="stone")),
    ("foundation", "out", lambda h: with_foundation(h, material="none")),
    ("foundation", "cannot tell", lambda h: with_foundation(h, material="not seen")),
    ("foundation", "out", lambda h: with_foundation(h, to_in=200.0)),
    ("slope", "in", lambda h: with_site(h, **PORTLAND, slope_rise_per_run=measured(0.33))),
    ("slope", "out", lambda h: with_site(h, **PORTLAND, slope_rise_per_run=measured(0.4))),
    ("slope", "cannot tell", lambda h: with_site(h, **PORTLAND, slope_rise_per_run=unknown())),
    ("level-floors", "in", lambda h: with_site(h, **LOS_ANGELES)),
    ("level-floors", "out", lambda h: with_site(beside(h, 20.0), **LOS_ANGELES)),
]  # fmt: skip


def beside(house: House, higher_in: float = 0.0) -> House:
    """The house with a storey of its own beside it, on no line."""
    building = house.survey.building
    corners = building.corners | {
        "far-a": replace(building.corners["se0"], x_in=600.0), "far-b": replace(building.corners["ne0"], x_in=600.0)
    }  # fmt: skip
    first = building.storeys["st1"]
    other = replace(first, order=2, outline=("se0", "far-a", "far-b", "ne0"), floor_z_in=first.floor_z_in + higher_in)
    return with_building(house, corners=corners, storeys={**building.storeys, "st9": other})


@pytest.mark.parametrize(("key", "answer", "change"), SCOPE)
def test_every_item_of_the_scope_has_its_answers(key: str, answer: str, change: Callable[[House], House]) -> None:
    item = scope(change(reference_house()))[key]
    assert item.outcome == answer
    assert item.reason
    assert item.clause.startswith("A30")
    assert item.fact


@pytest.mark.parametrize(
    ("make", "height_in", "answer"),
    [
        (two_storeys, 40.0, "in"),
        (lambda: third_storey(two_storeys()), 17.0, "in"),
        (lambda: third_storey(two_storeys()), 24.0, "out"),
        (lambda: third_storey(two_storeys()), None, "cannot tell"),
        (lambda: fourth_storey(two_storeys()), 12.0, "out"),
    ],
)
def test_stories_and_the_studs_under_three_of_them(
    make: Callable[[], House], height_in: float | None, answer: str
) -> None:
    """A double plate of 3 in. stands on the studs: a wall of 17 in. has studs of 14 in."""
    house = make()
    lines = house.survey.underfloor.lines
    plates = {
        id: replace(line, top_plate=replace(line.top_plate, layers=2, thickness_in=measured(1.5)))
        for id, line in lines.items()
    }
    height: Fact[float] = Fact(state="absent") if height_in is None else measured(height_in)
    house = with_segments(with_under(house, "lines", plates), height_in=height)
    assert scope(house)["stories"].outcome == answer


def test_stories_that_nobody_limits_in_print_cannot_be_told() -> None:
    assert scope(with_site(reference_house(), **SAN_LEANDRO))["stories"].outcome == "cannot tell"


def test_a_slope_is_asked_only_where_the_rules_have_one() -> None:
    assert "slope" not in scope(reference_house())
    assert "level-floors" not in scope(with_site(reference_house(), **PORTLAND))


def test_an_edition_that_is_not_held_leaves_the_scope_untold() -> None:
    house = reference_house()
    overrides = house.basis.overrides | {"iebc": EditionOverride(edition="iebc-2024", reason="the town's")}
    study = run(replace(house, basis=Basis(code=house.basis.code, overrides=overrides)), ranges=False)
    assert study.prescriptive is not None
    assert study.prescriptive.within == "cannot tell"
    front = study.runs[0].prescriptive[0]
    assert front.both.prescriptive_ft is None
    assert front.both.engineered_full_ft == pytest.approx(13.25, abs=0.01)
    assert asked(front, "bracing").outcome == "cannot tell"


def test_a_height_that_may_lie_on_either_side_of_four_feet_cannot_be_told() -> None:
    house = with_segments(reference_house(), height_in=TALL)
    assert scope(house)["prescriptive-height"].outcome == "out"  # at its best, with the sill
    study = run(with_segments(reference_house(), height_in=replace(TALL, value=45.0)))
    assert study.prescriptive is not None
    item = next(i for i in study.prescriptive.scope if i.key == "prescriptive-height")
    assert item.outcome == "cannot tell"
    assert "it depends on: Height, sill top to the top of the plate" in item.reason
    assert study.prescriptive.within == "cannot tell"


def test_block_that_may_or_may_not_be_reinforced_cannot_be_told() -> None:
    house = with_building(with_foundation(reference_house(), material="block"), year_built=measured(1952.0))
    study = run(house)
    assert study.prescriptive is not None
    item = next(i for i in study.prescriptive.scope if i.key == "foundation")
    assert item.outcome == "cannot tell"
    assert "it depends on: Reinforced, 4 together" in item.reason
    assert any(mark.kind == "assumed range" for mark in item.marks)


def test_what_is_out_outweighs_what_cannot_be_told() -> None:
    house = with_site(with_building(reference_house(), families=9), slope_rise_per_run=unknown(), **PORTLAND)
    study = run(house, ranges=False)
    assert study.prescriptive is not None
    assert study.prescriptive.within == "out"
    assert study.prescriptive.rules == "portland"
    assert any("was not seen: it is told by the model chapter" in words for words in study.prescriptive.remarks)


def test_the_weaknesses_are_told_by_the_lines_that_have_them() -> None:
    study = run(masonry(measured(False))(reference_house()), ranges=False)
    assert study.prescriptive is not None
    found = {weak.key: weak for weak in study.prescriptive.weaknesses}
    assert found["masonry-perimeter"].outcome == "there"
    assert "L1, L2, L3, L4" in found["masonry-perimeter"].reason
    assert (
        "for a registered design professional to evaluate, with tests (A304.2.2)" in found["masonry-perimeter"].reason
    )
    assert "or, instead of tests, a new foundation inside the perimeter" in found["masonry-perimeter"].reason
    assert found["perimeter-gaps"].outcome == "not there"
    assert found["sill-connection"].outcome == "there"
    assert found["cripple-wall-bracing"].outcome == "there"
    posts = run(with_segments(reference_house(), kind="posts"), ranges=False).prescriptive
    assert posts is not None
    assert {weak.key: weak.outcome for weak in posts.weaknesses}["isolated-pads"] == "there"
