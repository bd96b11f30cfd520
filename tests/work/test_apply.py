"""Pieces of work on a survey: each in its place, or reported with what keeps it from it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from groundsill.house.building import Point
from groundsill.house.fact import Fact, measured, unknown
from groundsill.house.underfloor import Obstruction
from groundsill.work.apply import Misplaced, apply, lay
from groundsill.work.pieces import (
    BoltPiece,
    ConcretePiece,
    DrainagePiece,
    HoldDownPiece,
    PanelPiece,
    Piece,
    SideplatePiece,
    SillBlockingPiece,
    SoilPiece,
    SplicePiece,
    StrapPiece,
    TiePiece,
)
from groundsill.working.errors import BadSurvey
from tests.fixtures.small_house import small_house
from tests.house.test_checks import edited

HOUSE = small_house()
SURVEY = HOUSE.survey


def panel(start: float, end: float, segment: str = "sg2", **rest: Any) -> PanelPiece:
    told = {"panel": "15/32 sheathing, 8d", "edge_spacing_in": 4.0, "mark": "P1", **rest}
    return PanelPiece(segment=segment, from_in=start, to_in=end, **told)


def bolt(station: float, line: str = "line2", **rest: Any) -> BoltPiece:
    return BoltPiece(line=line, station_in=station, diameter_in=0.625, embedment_in=7.0, **rest)


def why(piece: Piece, survey: Any = SURVEY, **others: Piece) -> str | None:
    """What keeps a piece from its place, laid after the others; None when it has one."""
    last = replace(piece, order=99)
    laid = lay(survey, {**others, "new": last})
    assert [m.id for m in laid.misplaced if m.id != "new"] == []
    reasons = [m.reason for m in laid.misplaced]
    assert bool(reasons) is (("new", last) not in laid.pieces)
    return reasons[0] if reasons else None


def test_the_work_of_the_small_house_is_laid_in_its_order() -> None:
    laid = apply(HOUSE, "strengthen")
    assert laid.survey is SURVEY
    assert laid.misplaced == ()
    assert [key for key, _ in laid.pieces][:4] == ["pn11", "pn12", "pn21", "pn22"]
    assert len(laid.pieces) == len(HOUSE.alternatives["strengthen"].pieces)


def test_the_house_as_found_has_nothing_laid_on_it() -> None:
    laid = apply(HOUSE, None)
    assert (laid.survey, laid.pieces, laid.misplaced) == (SURVEY, (), ())
    assert apply(HOUSE, "leave") == laid


def test_an_alternative_that_is_not_there_lists_those_there_are() -> None:
    with pytest.raises(
        BadSurvey,
        match=r'alternatives: "cheap" is not allowed; the id of an alternative: leave, '
        "streng",
    ):
        apply(HOUSE, "cheap")


def test_a_segment_taken_away_on_a_second_visit_shows_every_piece_it_upsets() -> None:
    segments = {key: s for key, s in SURVEY.underfloor.segments.items() if key != "sg2"}
    laid = apply(replace(HOUSE, survey=edited(SURVEY, "underfloor", segments=segments)), "strengthen")
    gone = "its wall segment sg2 is not in the survey"
    assert laid.misplaced == (
        Misplaced("pn21", "P3", "panel", gone),
        Misplaced("pn22", "P4", "panel", gone),
        Misplaced("bk21", "", "sill blocking", gone),
        Misplaced("bk22", "", "sill blocking", gone),
    )


@pytest.mark.parametrize(
    ("piece", "reason"),
    [
        (panel(0, 48), None),
        (panel(190, 260, "sg1b"), None),
        (panel(-1, 48), "from -1 to 48 is not all on S3, from 0 to 240"),
        (panel(210, 258), "from 210 to 258 is not all on S3, from 0 to 240"),
        (panel(100, 148, "sg1b"), "from 100 to 148 is not all on S2, from 150 to 360"),
        (panel(48, 48), "it ends at 48, before it begins at 48"),
        (panel(0, 48, "gone"), "its wall segment gone is not in the survey"),
        (panel(0, 48, "sg5"), "S7 is posts: there are no studs to nail a panel to"),
        (panel(50, 98, "sg1a"), "vent O1 opens the wall from 60 to 76"),
        (panel(150, 198), "access O2 opens the wall from 180 to 204"),
        (panel(60, 108), "gas pipe X1 is in the way from 100 to 104 and cannot be moved"),
        (panel(60, 108, face="outside"), None),
        (panel(290, 338, "sg3b"), "drain X2 is in the way from 300 to 306; whether it can be moved is not known"),
        (panel(290, 338, "sg3b", face="outside"), "drain X2 is in the way from 300 to 306; whether it can be moved "
                                                  "is not "
                                                  "known"),
        (panel(12, 60, "sg1a"), None),
        (panel(104, 152), None),
    ],
)  # fmt: skip
def test_a_panel_needs_studs_and_nothing_in_its_way(piece: PanelPiece, reason: str | None) -> None:
    assert why(piece) == reason


@pytest.mark.parametrize(
    ("thing", "reason"),
    [
        (Obstruction(line="line4", from_in=20, to_in=24, can_move=measured(True)), None),
        (Obstruction(line="line4", from_in=20, to_in=24, bottom_in=24, top_in=30), None),
        (Obstruction(line="line4", from_in=20, to_in=24, bottom_in=-9, top_in=0), None),
        (Obstruction(line="line4", from_in=20, to_in=24, side="outside", top_in=9), None),
        (Obstruction(line="line3", from_in=20, to_in=24, top_in=9), None),
        (Obstruction(line="line4", from_in=20, to_in=24, top_in=9), "other xxx is in the way from 20 to 24; whether "
                                                                    "it can "
                                                                    "be moved is not known"),
        (Obstruction(line="line4", from_in=20, to_in=24, can_move=measured(False)), "other xxx is in the way from 20 "
                                                                                    "to 24 "
                                                                                    "and cannot be moved"),
        (Obstruction(line="line4", from_in=20, to_in=24, bottom_in=23, top_in=90), "other xxx is in the way from 20 "
                                                                                   "to 24; "
                                                                                   "whether it can be moved is not "
                                                                                   "known"),
    ],
)  # fmt: skip
def test_an_obstruction_counts_on_its_side_at_its_height_unless_it_can_be_moved(
    thing: Obstruction, reason: str | None
) -> None:
    survey = edited(SURVEY, "underfloor.obstructions", xxx=thing)
    assert why(panel(0, 48, "sg4"), survey) == reason


def test_where_a_walls_height_is_not_known_what_stands_above_the_sill_is_in_the_way() -> None:
    thing = Obstruction(line="line4", from_in=20, to_in=24, bottom_in=60, top_in=90)
    survey = edited(
        edited(SURVEY, "underfloor.obstructions", xxx=thing), "underfloor.segments.sg4", height_in=unknown()
    )
    assert why(panel(0, 48, "sg4"), survey) == (
        "other xxx is in the way from 20 to 24; whether it can be moved is not known"
    )


def test_two_panels_may_not_share_a_face_and_the_earlier_has_the_place() -> None:
    first = panel(0, 48, mark="P7")
    assert why(panel(40, 88), aaa=first) == "panel P7 lies there already, from 0 to 48"
    assert why(panel(48, 96), aaa=first) is None
    assert why(panel(40, 88, face="outside"), aaa=first) is None
    assert why(SillBlockingPiece(segment="sg2", from_in=0, to_in=48), aaa=first) is None


def test_sill_blocking_lies_once_at_a_place() -> None:
    first = SillBlockingPiece(segment="sg2", from_in=0, to_in=48)
    assert why(SillBlockingPiece(segment="sg2", from_in=0, to_in=48), aaa=first) == (
        "sill blocking aaa lies there already, from 0 to 48"
    )
    assert why(SillBlockingPiece(segment="sg2", from_in=200, to_in=250)) == (
        "from 200 to 250 is not all on S3, from 0 to 240"
    )


@pytest.mark.parametrize(
    ("piece", "reason"),
    [
        (bolt(24), None),
        (bolt(241), "station 241 is beyond the end of line2 at 240"),
        (bolt(24, "gone"), "its line gone is not in the survey"),
        (bolt(60.5), "bolt A3 stands at station 60 already"),
        (bolt(62), None),
        (bolt(100, "line5"), "F6 has no foundation to set an anchor in"),
        (SideplatePiece(line="line2", station_in=40, capacity_lb=900, from_top_in=4), None),
        (SideplatePiece(line="line5", station_in=40, capacity_lb=900, from_top_in=4), "F6 has no foundation to set an "
                                                                                      "anchor in"),
        (SplicePiece(line="line1", station_in=184, capacity_lb=900), None),
        (SplicePiece(line="line1", station_in=400, capacity_lb=900), "station 400 is beyond the end of line1 at 360"),
        (HoldDownPiece(segment="sg2", station_in=3, capacity_lb=3000), None),
        (HoldDownPiece(segment="sg1a", station_in=160, capacity_lb=3000), "station 160 is not on S1, from 0 to 150"),
        (HoldDownPiece(segment="sg5", station_in=3, capacity_lb=3000), "S7 is posts: there is no stud to hold down"),
        (HoldDownPiece(segment="gone", station_in=3, capacity_lb=3000), "its wall segment gone is not in the survey"),
        (TiePiece(line="line1", from_in=0, to_in=360, count=3, capacity_lb=400), None),
        (TiePiece(line="line1", from_in=0, to_in=361, count=3, capacity_lb=400), "it ends at 361, beyond the end of "
                                                                                 "line1 "
                                                                                 "at 360"),
        (StrapPiece(line="line1", from_in=9, to_in=9, capacity_lb=400), "it ends at 9, before it begins at 9"),
        (SoilPiece(line="gone", from_in=0, to_in=9, depth_in=8), "its line gone is not in the survey"),
        (ConcretePiece(line="gone", depth_in=12), "its line gone is not in the survey"),
        (ConcretePiece(outline=(Point(x_in=0, y_in=0), Point(x_in=9, y_in=0)), depth_in=12), "its outline has 2 "
         "corners"),
        (DrainagePiece(), None),
    ],
)  # fmt: skip
def test_each_kind_of_work_needs_its_place(piece: Piece, reason: str | None) -> None:
    assert why(piece) == reason


def test_a_new_bolt_stands_clear_of_another_new_one() -> None:
    assert why(bolt(24.5), aaa=bolt(24, mark="A9")) == "bolt A9 stands at station 24 already"
    assert why(bolt(25.5), aaa=bolt(24, mark="A9")) is None


def test_a_bolt_goes_through_a_sill_and_into_a_foundation_once_they_are_written_down() -> None:
    short = edited(edited(SURVEY, "underfloor.sills.si2", to_in=100.0), "foundation.segments.fs2", to_in=90.0)
    assert why(bolt(120), short) == "no sill piece of line2 lies at station 120"
    plate = SideplatePiece(line="line2", station_in=120, from_top_in=4)
    assert why(plate, short) == "no sill piece of line2 lies at station 120"
    assert why(bolt(95), short) == "no foundation stretch of line2 lies at station 95"
    bare = edited(edited(SURVEY, "underfloor", sills={}), "foundation", segments={}, tests={})
    assert why(bolt(120), bare) is None


def test_new_concrete_along_a_line_takes_bolts_where_there_was_no_foundation() -> None:
    footing = ConcretePiece(line="line5", purpose="footing", depth_in=18)
    assert why(bolt(100, "line5"), aaa=footing) is None
    bad = replace(footing, outline=(Point(x_in=0, y_in=0),))
    laid = lay(SURVEY, {"aaa": bad, "bbb": replace(bolt(100, "line5"), order=1)})
    assert [m.id for m in laid.misplaced] == ["aaa", "bbb"]


def test_a_design_never_changes_the_survey() -> None:
    before = small_house().survey
    apply(HOUSE, "strengthen")
    assert before == SURVEY
    assert Fact(value=1.0) == measured(1.0)


def splice(station: float, line: str = "line1", member: Any = "sill") -> SplicePiece:
    return SplicePiece(mark="S1", line=line, station_in=station, member=member, capacity_lb=2000.0)


def test_a_splice_without_a_joint_near_it_is_reported_and_never_dropped() -> None:
    """The sill of line 1 has its joint at 180 in.; the plate has its own on record, elsewhere or nowhere."""
    joint = next(s.to_in for s in SURVEY.underfloor.sills.values() if s.line == "line1" and s.from_in == 0)
    assert why(splice(joint)) is None
    assert why(splice(joint + 18.0)) is None
    assert why(splice(joint + 19.0)) == (
        f"no joint of the sill of line1 lies within 18 in. of station {joint + 19:g}: the nearest is 19 in. away"
    )
    assert why(splice(100.0, "line2")) == (
        "no joint of the sill of line2 lies within 18 in. of station 100: none is on record"
    )


def test_a_splice_of_the_plate_asks_for_a_joint_of_the_plate() -> None:
    recorded = list(SURVEY.underfloor.splices.values())
    assert recorded
    at = recorded[0]
    assert why(splice(at.station_in, at.line, "top plate")) is None
    bare = next(line for line in SURVEY.underfloor.lines if all(s.line != line for s in recorded))
    assert why(splice(60.0, bare, "top plate")) == (
        f"no joint of the top plate of {bare} lies within 18 in. of station 60: none is on record"
    )
