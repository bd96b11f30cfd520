"""A new foundation inside the old, laid on a survey: the line it makes, what it relieves, and where it has no place."""

from dataclasses import replace
from typing import Any

import pytest

from groundsill.doors.decode import decode
from groundsill.doors.encode import encode
from groundsill.house.building import Point
from groundsill.work.apply import lay, with_work
from groundsill.work.checks import check_house
from groundsill.work.inner import RESTS_ON_OLD, below_wall_in, built, height_in, plain_words, wall_id
from groundsill.work.pieces import BoltPiece, ConcretePiece, PanelPiece
from tests.loadpath.houses import PANEL, known_house
from tests.loadpath.inner_houses import on_it, strip, with_strip


def laid(**changes: Any) -> Any:
    return lay(known_house().survey, {"inn1": strip(**changes)})


def test_the_strip_makes_a_line_with_wall_sills_plate_and_footing_and_leaves_the_survey_alone() -> None:
    before = known_house().survey
    found = built(before, {"inn1": strip()})
    under, line = found.underfloor, found.underfloor.lines["inn1"]
    assert (line.position, line.relied_on, line.storey) == ("interior", True, under.lines["line1"].storey)
    assert "relieves L1" in line.relied_reason
    wall = under.segments[wall_id("inn1")]
    assert (wall.line, wall.from_in, wall.to_in, wall.height_in.value) == ("inn1", 0.0, 312.0, 24)
    sills = [s for s in under.sills.values() if s.line == "inn1"]
    assert [(s.from_in, s.to_in) for s in sills] == [(0.0, 156), (156, 312.0)]
    assert [j.station_in for j in under.splices.values() if j.line == "inn1"] == [150]
    footing = found.foundation.segments["inn1-footing"]
    assert (footing.material, footing.strength_psi.value, footing.footing_width_in.value) == (
        "poured concrete",
        2500.0,
        18,
    )
    assert found.building.corners["inn1-b"].x_in == 336
    assert before == known_house().survey


def test_the_old_line_stays_and_is_relied_on_no_more() -> None:
    found = laid().survey
    old = found.underfloor.lines["line1"]
    assert old.relied_on is False
    assert "relieved by the inner foundation I1" in old.relied_reason
    assert found.foundation.segments["fs1"] == known_house().survey.foundation.segments["fs1"]


def test_panels_and_bolts_stand_on_the_new_line_as_on_any_other() -> None:
    found = lay(known_house().survey, on_it("inn1", strip()))
    assert found.misplaced == ()
    too_far = PanelPiece(segment=wall_id("inn1"), from_in=300, to_in=400, panel=PANEL, edge_spacing_in=4)
    no_strip = BoltPiece(line="inn1", station_in=30, diameter_in=0.625, embedment_in=7)
    assert [m.id for m in lay(known_house().survey, {"inn1": strip(), "far": too_far}).misplaced] == ["far"]
    assert "inn1 is not in the survey" in lay(known_house().survey, {"blt": no_strip}).misplaced[0].reason


@pytest.mark.parametrize(
    ("changes", "reason"),
    [
        ({"relieves": ()}, "it names no old line that it relieves"),
        ({"relieves": ("line9",)}, "its line line9 is not in the survey"),
        ({"relieves": ("line2",)}, "it does not run along L2"),
        ({"end": Point(x_in=40, y_in=48)}, "it is 16 in. long; 36 in. is the least"),
        (
            {"start": Point(x_in=24, y_in=-30), "end": Point(x_in=336, y_in=-30)},
            "it does not lie inside the outline of the floor it stands under",
        ),
    ],
)
def test_a_strip_without_a_place_is_told_with_its_reason_and_relieves_nothing(
    changes: dict[str, Any], reason: str
) -> None:
    found = laid(**changes)
    assert [m.reason for m in found.misplaced] == [reason]
    assert "inn1" not in found.survey.underfloor.lines
    assert found.survey.underfloor.lines["line1"].relied_on is not False


def test_a_strip_never_takes_the_id_of_a_line_that_is_there() -> None:
    found = lay(known_house().survey, {"line5": strip()})
    assert "has its id" in found.misplaced[0].reason
    assert found.survey is known_house().survey


def test_it_is_kept_in_the_house_file_and_an_old_outline_of_concrete_stays_valid() -> None:
    house = with_strip()
    outline = ConcretePiece(purpose="inner foundation", line="line1", depth_in=24)
    pieces = house.alternatives["inner"].pieces | {"old-outline": outline}
    house = replace(house, alternatives={"inner": replace(house.alternatives["inner"], pieces=pieces)})
    assert check_house(house) == ()
    assert decode(encode(house), "house.json") == house
    assert with_work(house, house.alternatives["inner"]).survey.underfloor.lines.keys() >= {"inn1"}
    assert with_work(known_house(), known_house().alternatives["leave"]) is not None


def test_the_arm_about_the_base_is_wall_and_depth_together() -> None:
    piece = strip(wall_height_in=24, sill_thickness_in=2.5, above_soil_in=8, depth_in=20)
    assert below_wall_in(piece) == 30.5
    assert height_in(piece) == 54.5


@pytest.mark.parametrize("gravity", ["none", "second support", "carries the floor"])
def test_every_strip_says_plainly_what_it_leaves_on_the_old_foundation(gravity: str) -> None:
    told = plain_words("inn1", strip(gravity=gravity))
    assert len(told) == 1
    assert told[0].startswith("I1")
    assert (RESTS_ON_OLD in told[0]) == (gravity != "carries the floor")
    assert "underpinning" in plain_words("inn1", strip(underpinned=True))[1]
