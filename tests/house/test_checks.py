"""What cannot be right in a survey, and the words in which it is told."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from groundsill.house.building import Corner, Point, Storey
from groundsill.house.checks import check_survey, is_file_name
from groundsill.house.fact import Fact, measured
from groundsill.house.survey import Survey
from groundsill.house.underfloor import Bolt, Line, Segment, SillPiece, VentOpening
from tests.fixtures.small_house import small_house

SURVEY = small_house().survey
BOLT = "survey.underfloor.bolts.bt1"


def edited(survey: Survey, path: str, **fields: Any) -> Survey:
    """The survey with fields of one object replaced: ``edited(s, "underfloor.bolts.bt1", station_in=9.0)``."""

    def inside(owner: Any, steps: list[str]) -> Any:
        if not steps:
            return {**owner, **fields} if isinstance(owner, dict) else replace(owner, **fields)
        if isinstance(owner, dict):
            return {**owner, steps[0]: inside(owner[steps[0]], steps[1:])}
        return replace(owner, **{steps[0]: inside(getattr(owner, steps[0]), steps[1:])})

    found: Survey = inside(survey, path.split("."))
    return found


def told(survey: Survey) -> list[str]:
    return [fault.line() for fault in check_survey(survey)]


def with_bolt(**fields: Any) -> Survey:
    return edited(SURVEY, "underfloor.bolts.bt1", **fields)


def test_the_small_house_has_no_fault() -> None:
    assert told(SURVEY) == []


def test_a_bare_survey_has_no_fault() -> None:
    assert told(Survey(name="9 Alder Street")) == []


# ---- Fields ---------------------------------------------------------------------------------------------------------


SIZE = "a number of inches from 0.25 to 1.5"
HAS_VALUE = "a fact that is measured has a value; say unknown if it has none"
NO_VALUE = "a fact that is unknown has no value; say estimated"
A_DATE = "a date like 2026-04-02, with 2026-04 or 2026 where the day is not known"
AS_TYPED = 'the number that was typed, "3/4 in", which is 0.75'


@pytest.mark.parametrize(
    ("fact", "at", "value", "allowed"),
    [
        (measured(7.0), "", "7", SIZE),
        (measured(float("nan")), "", "nan", SIZE),
        (measured(float("inf")), "", "inf", SIZE),
        (Fact(value=0.5, low=0.1, high=1.0), ".low", "0.1", SIZE),
        (Fact(value=0.5, low=0.75, high=1.0), "", "0.5", "a value between its low 0.75 and its high 1"),
        (Fact(value=0.5, low=1.0, high=0.5), ".low", "1 above high 0.5", "low may not be above high"),
        (Fact(value=0.5, low=0.5), ".low", "0.5 alone", "give high too, or neither"),
        (Fact(value=0.5, high=0.5), ".high", "0.5 alone", "give low too, or neither"),
        (Fact(), ".value", "nothing", HAS_VALUE),
        (Fact(value=0.5, state="unknown"), ".value", "0.5", NO_VALUE),
        (Fact(value=0.5, state="absent"), ".state", '"absent" with a value', "absent says: looked for, and not there"),
        (Fact(value=0.5, when="last week"), ".when", '"last week"', A_DATE),
        (Fact(value=0.5, typed="3/4 in"), "", "0.5", AS_TYPED),
    ],
)
def test_a_fact_that_contradicts_itself_or_its_field_is_told(
    fact: Fact[float], at: str, value: str, allowed: str
) -> None:
    assert told(with_bolt(diameter_in=fact)) == [f"{BOLT}.diameter_in{at}: {value} is not allowed; {allowed}"]


@pytest.mark.parametrize("typed", ["1/2 in", "0.5 in", "12.7 mm", "about half an inch", ""])
def test_a_typed_text_that_agrees_or_measures_nothing_is_no_fault(typed: str) -> None:
    assert told(with_bolt(diameter_in=Fact(value=0.5, typed=typed))) == []


def test_words_have_no_range_and_come_from_the_list() -> None:
    assert told(with_bolt(nut=Fact(value="tight", low="loose", high="tight"))) == [
        f"{BOLT}.nut.low: 'loose' is not allowed; only a number may have low and high",
        f"{BOLT}.nut.high: 'tight' is not allowed; only a number may have low and high",
    ]
    assert told(with_bolt(nut=measured("welded"))) == [
        f'{BOLT}.nut: "welded" is not allowed; one of "tight", "loose", "none"'
    ]


@pytest.mark.parametrize(
    ("date", "sound"),
    [
        ("2026-04-02", True), ("2026-04", True), ("2026", True), ("2026-04-02T10:11", True), ("", True),
        ("2026-04-02T10:11:12.5+02:00", True), ("2024-02-29", True), ("2026-02-29", False), ("2026-13", False),
        ("02.04.2026", False), ("2026-4-2", False), ("26", False), ("2026-04-02T25:00", False), ("٢٠٢٦", False),
        ("0000", False), ("2026-04-02 10:11", False),
    ],
)  # fmt: skip
def test_a_date_is_a_day_of_the_calendar(date: str, sound: bool) -> None:
    faults = told(replace(SURVEY, surveyed_on=date))
    assert (faults == []) is sound
    assert sound or faults[0].startswith(f'survey.surveyed_on: "{date}" is not allowed; a date like 2026-04-02')


@pytest.mark.parametrize("name", ["rear-crack.jpg", "Štěpán 1.JPG", "a" * 120])
def test_a_plain_file_name_is_taken(name: str) -> None:
    assert is_file_name(name)


@pytest.mark.parametrize(
    "name", ["", "..", "../a", "a/b", "a\\b", "/a", "a\n", "a\0", "a:b", ".a", "a.", "a ", "ä" * 61]
)
def test_what_is_no_plain_file_name_is_told(name: str) -> None:
    assert not is_file_name(name)
    (line,) = told(edited(SURVEY, "photos.ph01", file=name))
    assert line.endswith("is not allowed; a plain file name, without folders")


def test_a_house_made_in_python_with_values_of_the_wrong_type_gets_a_fault_for_each_and_no_more() -> None:
    wrong = edited(with_bolt(station_in="24", diameter_in=0.5), "underfloor", posts=[])
    assert told(wrong) == [
        "survey.underfloor.posts: [] is not allowed; an object whose keys are ids; an id of 3 to 40 small letters, "
        "digits "
        "and dashes, beginning with a letter or digit",
        f"{BOLT}.station_in: '24' is not allowed; a number of inches from 0 to 6000",
        f"{BOLT}.diameter_in: 0.5 is not allowed; a number of inches from 0.25 to 1.5, alone or in an object with "
        "value, "
        "low, high, state and how",
    ]


# ---- Ids and references ---------------------------------------------------------------------------------------------


def test_a_reference_that_leads_nowhere_lists_what_there_is() -> None:
    assert told(edited(SURVEY, "underfloor.lines.line1", above="wl9")) == [
        'survey.underfloor.lines.line1.above: "wl9" is not allowed; the id of one of building.walls: wl1, wl2, wl3, wl4'
    ]


def test_a_reference_in_a_list_is_told_by_its_place() -> None:
    lines = told(edited(SURVEY, "underfloor.joists.jf1", outline=("sw0", "se0", "gone", "wm0")))
    assert lines == [
        'survey.underfloor.joists.jf1.outline.2: "gone" is not allowed; the id of one of building.corners: em0, ne0, '
        "nw0, "
        "se0, sw0, wm0"
    ]


def test_one_id_names_one_object_of_the_survey() -> None:
    twice = edited(SURVEY, "underfloor.hatches", bt1=SURVEY.underfloor.hatches["ha1"])
    assert told(twice) == [
        "survey.underfloor.hatches.bt1: this id is not allowed; an id of its own; survey.underfloor.bolts.bt1 has it "
        "already"
    ]


def test_an_observation_sits_on_something_of_the_survey() -> None:
    assert told(edited(SURVEY, "observations.obs1", on="gone")) == [
        'survey.observations.obs1.on: "gone" is not allowed; the id of any object of the survey'
    ]
    assert told(edited(SURVEY, "monitors.mon1", on="wo1")) == []


def test_an_id_that_could_not_stand_in_an_address_is_told() -> None:
    lines = told(edited(SURVEY, "photos", **{"P 1": SURVEY.photos["ph01"]}))
    assert lines[0].startswith("survey.photos.P 1: this id is not allowed; an id of 3 to 40 small letters")


# ---- Parts that do not fit ------------------------------------------------------------------------------------------


def test_an_outline_whose_edges_cross_is_told_with_the_edges() -> None:
    (line, *_) = told(edited(SURVEY, "building.storeys.st1", outline=("sw0", "ne0", "se0", "nw0")))
    assert line == (
        "survey.building.storeys.st1.outline: edges that cross, (0, 0)-(360, 240) and (360, 0)-(0, 240) is not "
        "allowed; an "
        "outline of 3 corners or more, in order round the plan, whose edges do not cross"
    )


def test_a_line_from_a_corner_to_itself_has_no_length() -> None:
    lines = told(edited(SURVEY, "underfloor.lines.line5", end="wm0"))
    assert lines[0] == (
        "survey.underfloor.lines.line5: a length of 0 inches is not allowed; a start and an end that lie apart"
    )


def test_two_corners_at_one_place_make_a_line_of_no_length_too() -> None:
    lines = told(edited(SURVEY, "building.corners.em0", x_in=0.0, y_in=120.0))
    assert any(line.startswith("survey.underfloor.lines.line5: a length of 0 inches") for line in lines)


def test_a_storey_listed_above_another_does_not_lie_below_it() -> None:
    upper = replace(SURVEY.building.storeys["st1"], order=2, floor_z_in=20.0)
    assert told(edited(SURVEY, "building.storeys", st2=upper)) == [
        "survey.building.storeys.st2.floor_z_in: 20 is not allowed; storeys in order from the ground up; the one "
        "before it "
        "stands at 34"
    ]


def test_a_wall_stands_on_its_storeys_outline() -> None:
    inside = edited(SURVEY, "building.corners", mid=Corner(x_in=180.0, y_in=100.0))
    lines = told(edited(inside, "building.walls.wl3", end="mid"))
    assert lines == ['survey.building.walls.wl3.end: "mid" is not allowed; a corner on the outline of st1']


def test_a_wall_corner_between_two_corners_of_the_outline_is_on_it() -> None:
    assert told(edited(SURVEY, "building.walls.wl4", start="wm0")) == []


def test_openings_of_a_wall_fit_it_and_stand_upright() -> None:
    wall = "building.walls.wl1.openings"
    lines = told(edited(edited(SURVEY, f"{wall}.wo1", to_in=400.0), f"{wall}.wo2", sill_in=84.0))
    assert lines == [
        "survey.building.walls.wl1.openings.wo1.to_in: 400 is not allowed; a station on its wall, which is 360 "
        "inches long",
        "survey.building.walls.wl1.openings.wo2.head_in: 84 is not allowed; a head above its sill at 84",
    ]
    assert told(edited(SURVEY, f"{wall}.wo2", to_in=170.0)) == [
        "survey.building.walls.wl1.openings.wo1: from 160 to 200 is not allowed; openings of a wall may not lie on "
        "each "
        "other; wo2 goes from 60 to 170"
    ]


COVER = 'wall segments that cover the line from 0 to its end; where nothing stands, a segment of kind "open"'
APART = "of one line may not lie on each other"
ON_LINE = "a station on its line, which is 360 inches long"


@pytest.mark.parametrize(
    ("path", "fields", "at", "value", "allowed"),
    [
        ("underfloor.segments.sg1b", {"from_in": 140.0}, "underfloor.segments.sg1b", "from 140 to 360",
         f"wall segments {APART}; sg1a goes from 0 to 150"),
        ("underfloor.segments.sg1b", {"from_in": 160.0}, "underfloor.lines.line1",
         "a gap in its wall segments from 150 to 160", COVER),
        ("underfloor.segments.sg4", {"to_in": 200.0}, "underfloor.lines.line4",
         "a gap in its wall segments from 200 to 240", COVER),
        ("underfloor.sills.si1b", {"from_in": 180.0}, "underfloor.sills.si1b", "from 180 to 360",
         f"sill pieces {APART}; si1a goes from 0 to 192"),
        ("underfloor.sills.si2", {"to_in": 50.0}, "underfloor.bolts.bt3.station_in", "60",
         "a station on a sill piece of line2: from 0 to 50"),
        ("underfloor.ledgers.le1", {"to_in": 0.0}, "underfloor.ledgers.le1.to_in", "0",
         "a station beyond its start at 0"),
        ("underfloor.splices.sp1", {"station_in": 361.0}, "underfloor.splices.sp1.station_in", "361", ON_LINE),
        ("underfloor.openings.vo1", {"top_in": 8.0}, "underfloor.openings.vo1.top_in", "8",
         "a top above its bottom at 8"),
        ("underfloor.obstructions.ob1", {"top_in": -1.0}, "underfloor.obstructions.ob1.top_in", "-1",
         "a top not below its bottom at 0"),
        ("foundation.segments.fs3b", {"from_in": 100.0}, "foundation.segments.fs3b", "from 100 to 360",
         f"foundation segments {APART}; fs3a goes from 0 to 180"),
        ("foundation.breaks.br1", {"station_in": 400.0}, "foundation.breaks.br1.station_in", "400", ON_LINE),
        ("foundation.tests.ts1", {"station_in": 400.0}, "foundation.tests.ts1.station_in", "400",
         "a station on fs1, from 0 to 360"),
    ],
)  # fmt: skip
def test_parts_of_a_line_that_do_not_fit_are_told(
    path: str, fields: dict[str, Any], at: str, value: str, allowed: str
) -> None:
    assert told(edited(SURVEY, path, **fields)) == [f"survey.{at}: {value} is not allowed; {allowed}"]


def test_tapes_that_differ_by_less_than_half_an_inch_agree() -> None:
    near = edited(SURVEY, "underfloor.segments.sg1b", from_in=150.4, to_in=359.6)
    assert told(near) == []
    assert told(edited(SURVEY, "underfloor.segments.sg1b", from_in=149.7, to_in=360.4)) == []


def test_an_open_stretch_fills_a_gap() -> None:
    gap = edited(SURVEY, "underfloor.segments.sg4", to_in=200.0)
    filled = edited(
        gap, "underfloor.segments", sg4b=Segment(line="line4", from_in=200.0, to_in=240.0, kind="open")
    )  # fmt: skip
    assert told(filled) == []


def test_a_segment_inside_another_hides_no_gap_behind_it() -> None:
    three = edited(
        edited(SURVEY, "underfloor.segments.sg4", to_in=100.0), "underfloor.segments",
        sg4b=Segment(line="line4", from_in=20.0, to_in=40.0), sg4c=Segment(line="line4", from_in=100.0, to_in=240.0),
    )  # fmt: skip
    assert [line.split(":")[0] for line in told(three)] == ["survey.underfloor.segments.sg4b"]


def test_a_bolt_on_a_line_whose_sills_are_not_written_yet_is_no_fault() -> None:
    bare = edited(SURVEY, "underfloor", sills={}, bolts={"bt9": Bolt(line="line2", station_in=100)})
    assert told(bare) == []


def test_loose_ends_give_their_own_fault_and_no_other() -> None:
    """A line whose corner is gone: its parts cannot be measured, and are not blamed."""
    lines = told(edited(SURVEY, "underfloor.lines.line5", start="gone"))
    assert [line.split(":")[0] for line in lines] == ["survey.underfloor.lines.line5.start"]


def test_everything_wrong_with_a_survey_is_told_at_once() -> None:
    broken = Survey(name=" ")
    broken = edited(
        broken, "building", corners={"aaa": Corner(x_in=0.0, y_in=0.0)},
        storeys={"st1": Storey(outline=("aaa",), floor_z_in=0.0, height_in=96.0, floor="none")},
    )  # fmt: skip
    broken = edited(
        broken, "underfloor",
        lines={"l01": Line(start="aaa", end="aaa", storey="st1", position="perimeter")},
        sills={"k01": SillPiece(line="l01", from_in=5.0, to_in=5.0)},
        openings={"o01": VentOpening(line="l02", from_in=0.0, to_in=9.0, top_in=0.0)},
    )  # fmt: skip
    assert [line.split(":")[0] for line in told(broken)] == [
        "survey.name", "survey.building.storeys.st1.floor", "survey.underfloor.openings.o01.line",
        "survey.building.storeys.st1.outline", "survey.underfloor.lines.l01", "survey.underfloor.sills.k01.to_in",
        "survey.underfloor.openings.o01.top_in",
    ]  # fmt: skip
    assert Point(x_in=0.0, y_in=0.0)
