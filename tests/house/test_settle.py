"""Uncertain facts are found, run at their ends, and unknown ones take the range of their age with its marks."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import Any

import pytest

from groundsill.house.fact import Fact, measured, unknown
from groundsill.house.model import fields_of, member
from groundsill.house.ranges import TABLES, Rule, rules
from groundsill.house.settle import FactRef, prepare, settle, uncertain_facts
from groundsill.house.survey import Survey
from groundsill.house.underfloor import Bolt, Segment, SillPiece, Stud, Underfloor
from groundsill.standards.nds_2018.bearing import table_12_3_3a
from groundsill.work.document import House
from groundsill.working.value import Mark
from tests.fixtures.small_house import small_house

SILL = "survey.underfloor.sills.si2.thickness_in"
STRENGTH = "survey.foundation.segments.fs1.strength_psi"
FOOTING = "survey.foundation.segments.fs1.footing_width_in"


def by_path(house: House) -> dict[str, FactRef]:
    return {ref.path: ref for ref in uncertain_facts(house)}


def house_of(year: Fact[float], **under: Any) -> House:
    house = small_house()
    building = replace(house.survey.building, year_built=year)
    return House(survey=Survey(name="x", building=building, underfloor=Underfloor(**under)))


def test_a_range_the_surveyor_gave_is_found_with_its_ends_and_its_reason() -> None:
    assert by_path(small_house())[SILL] == FactRef(
        path=SILL,
        label="Thickness (K3)",
        unit="in",
        low=1.625,
        best=1.75,
        high=2.0,
        assumed=False,
        why="estimated: tape and judgement",
    )


def test_a_plainly_measured_fact_is_not_uncertain_and_carries_no_mark() -> None:
    house = small_house()
    settled = settle(house)
    path = "survey.underfloor.sills.si2.width_in"
    assert path not in by_path(house)
    assert path not in settled.marks
    assert settled.house.survey.underfloor.sills["si2"].width_in is house.survey.underfloor.sills["si2"].width_in


def test_every_fact_stands_at_its_best_until_asked_otherwise() -> None:
    settled = settle(small_house()).house.survey
    assert settled.underfloor.sills["si2"].thickness_in.value == 1.75
    assert settled.foundation.segments["fs1"].strength_psi.value == 1500
    assert settled.underfloor.bolts["bt1"].embedment_in.value == 6


@pytest.mark.parametrize(("end", "value"), [("low", 1.625), ("best", 1.75), ("high", 2.0)])
def test_one_fact_goes_to_an_end_and_all_others_stay(end: Any, value: float) -> None:
    house = small_house()
    settled = settle(house, {SILL: end}).house
    sills = settled.survey.underfloor.sills
    assert sills["si2"].thickness_in.value == value
    assert sills["si2"].thickness_in.low is None
    assert sills["si4"].thickness_in.value == 1.75
    assert settled.survey.foundation == settle(house).house.survey.foundation


def test_settling_leaves_the_house_as_it_was_and_makes_anew_only_what_changes() -> None:
    house = small_house()
    settling = prepare(house)
    turned = settling.at({SILL: "high"}).house
    assert house == small_house()
    assert turned.survey.foundation is settling.best.house.survey.foundation
    assert turned.survey.underfloor.bolts is settling.best.house.survey.underfloor.bolts
    assert settling.at({SILL: "best"}).house is settling.best.house


def test_several_facts_go_to_their_ends_at_once() -> None:
    settled = settle(small_house(), {SILL: "low", STRENGTH: "high", FOOTING: "low"}).house.survey
    assert settled.underfloor.sills["si2"].thickness_in.value == 1.625
    assert settled.foundation.segments["fs1"].strength_psi.value == 2500
    assert settled.foundation.segments["fs1"].footing_width_in.value == 10


def test_a_fact_may_be_named_by_its_reference() -> None:
    ref = by_path(small_house())[SILL]
    assert settle(small_house(), {ref: "high"}).house.survey.underfloor.sills["si2"].thickness_in.value == 2.0


def test_a_fact_that_is_not_uncertain_cannot_be_sent_to_an_end() -> None:
    with pytest.raises(KeyError, match=r"survey\.name is not an uncertain fact of this house"):
        settle(small_house(), {"survey.name": "low"})


def test_untested_concrete_of_1912_takes_the_range_of_its_age_with_both_marks() -> None:
    house = small_house()
    ref = by_path(house)[STRENGTH]
    assert (ref.low, ref.best, ref.high, ref.assumed) == (1000, 1500, 2500, True)
    marks = settle(house).marks[STRENGTH]
    assert marks[0] == Mark("assumed range", "Concrete strength (F1): 1500 psi, from 1000 to 2500")
    assert [m.kind for m in marks].count("from memory") >= 1


def test_a_bounded_but_unknown_fact_stands_between_the_surveyors_bounds() -> None:
    house = small_house()
    settled = settle(house)
    assert settled.house.survey.foundation.segments["fs1"].footing_width_in.value == 12.0
    what = "Width of the footing (F1): 12 in, from 10 to 14, between the surveyor's bounds"
    assert settled.marks[FOOTING] == (Mark("assumed range", what),)


def test_crumbling_concrete_an_undug_footing_and_an_unseen_embedment_take_no_range() -> None:
    house = small_house()
    stem = replace(house.survey.foundation.segments["fs1"], condition=measured("crumbling"), footing_width_in=unknown())
    foundation = replace(house.survey.foundation, segments={"fs1": stem})
    under = replace(house.survey.underfloor, bolts={"bt1": Bolt(line="line1", station_in=9.0)})
    survey = replace(house.survey, foundation=foundation, underfloor=under)
    settled = settle(replace(house, survey=survey))
    assert settled.house.survey.foundation.segments["fs1"].strength_psi.value is None
    assert settled.house.survey.foundation.segments["fs1"].footing_width_in.value is None
    assert settled.house.survey.underfloor.bolts["bt1"].embedment_in.value is None
    assert STRENGTH not in settled.marks


@pytest.mark.parametrize(
    ("year", "ends"),
    [
        (measured(1900.0), (1.75, 1.75, 2.0)),
        (measured(1940.0), (1.5, 1.625, 1.75)),
        (Fact(value=1930.0, low=1920.0, high=1940.0, state="estimated"), (1.5, 1.625, 2.0)),
        (Fact(low=1910.0, high=1930.0, state="unknown"), (1.5, 1.75, 2.0)),
        (unknown(), (1.5, 1.75, 2.0)),
    ],
)
def test_a_sill_nobody_measured_takes_the_sizes_of_every_year_the_house_may_be_of(
    year: Fact[float], ends: tuple[float, float, float]
) -> None:
    ref = by_path(house_of(year, sills={"si1": SillPiece(line="line1", from_in=0, to_in=9)}))[
        "survey.underfloor.sills.si1.thickness_in"
    ]
    assert (ref.low, ref.best, ref.high) == ends


def test_a_range_of_one_size_is_marked_but_not_uncertain() -> None:
    house = house_of(measured(1975.0), sills={"si1": SillPiece(line="line1", from_in=0, to_in=9)})
    path = "survey.underfloor.sills.si1.thickness_in"
    assert path not in by_path(house)
    assert settle(house).house.survey.underfloor.sills["si1"].thickness_in.value == 1.5
    assert Mark("assumed range", "Thickness: 1.5 in") in settle(house).marks[path]


def test_studs_are_assumed_in_cripple_walls_only() -> None:
    walls = {
        "sg1": Segment(line="line1", from_in=0, to_in=90, stud=Stud()),
        "sg2": Segment(line="line1", from_in=90, to_in=360, kind="joists on sill"),
    }
    found = by_path(house_of(measured(1912.0), segments=walls))
    assert "survey.underfloor.segments.sg1.stud.depth_in" in found
    assert not any(".sg2." in path for path in found)


def test_a_foundation_made_later_than_the_house_takes_the_range_of_its_own_year() -> None:
    house = small_house()
    later = replace(house.survey.foundation.segments["fs1"], year=measured(1955.0))
    survey = replace(house.survey, foundation=replace(house.survey.foundation, segments={"fs1": later}))
    ref = by_path(replace(house, survey=survey))[STRENGTH]
    assert (ref.low, ref.best, ref.high) == (2500, 2500, 3000)


def test_an_absent_thing_stays_absent_and_unmarked() -> None:
    settled = settle(small_house())
    assert settled.house.survey.underfloor.sills["si2"].gap_in == Fact(state="absent")
    assert "survey.underfloor.sills.si2.gap_in" not in settled.marks


def test_an_estimate_without_a_range_is_marked_and_stays() -> None:
    guess: Fact[str] = Fact(value="soft", state="estimated")
    sill = SillPiece(line="line1", from_in=0, to_in=9, condition=guess)
    house = house_of(measured(1912.0), sills={"si1": sill})
    marks = settle(house).marks["survey.underfloor.sills.si1.condition"]
    assert marks == (Mark("estimated", "Condition: soft"),)


def every_rule() -> list[Rule]:
    return [rule for of_field in rules().values() for rule in of_field]


@pytest.mark.parametrize("rule", every_rule(), ids=lambda rule: f"{rule.serves}-{rule.years}")
def test_a_range_serves_a_fact_of_the_survey_within_its_limits_and_says_how_it_is_known(rule: Rule) -> None:
    facts = _field_of(rule.serves)
    assert facts.shape.kind == "fact"
    if rule.table:
        assert rule.table in TABLES
        return
    assert rule.how in ("seen", "from memory")
    assert len(rule.where) > 20
    if isinstance(rule.best, str):
        free = rule.serves.endswith(".species")  # its words are those of the table that its readers look in
        assert {rule.low, rule.best, rule.high} <= set(table_12_3_3a().rows if free else facts.choices)
    elif not isinstance(rule.best, bool):
        assert facts.least is not None
        assert facts.most is not None
        assert rule.low is not None
        assert rule.high is not None
        assert facts.least <= rule.low <= rule.best <= rule.high <= facts.most  # type: ignore[operator]


def test_years_of_the_rules_of_one_field_follow_each_other_without_a_gap() -> None:
    for serves, of_field in rules().items():
        years = [rule.years for rule in of_field if rule.years]
        for (_, end), (start, _) in pairwise(years):
            assert start == end + 1, serves


def _field_of(path: str) -> Any:
    """The facts of a field by its path without ids."""
    cls: Any = House
    facts: Any = None
    for name in path.split("."):
        facts = member(cls, name)
        assert facts is not None, path
        shape = facts.shape.item if facts.shape.kind == "map" else facts.shape
        cls = shape.classes[0] if shape.classes else None
    assert fields_of(House)
    return facts
