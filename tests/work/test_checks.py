"""A house document is sound when its survey is, and what is laid on it is sound field by field."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from groundsill.house.fact import measured
from groundsill.house.underfloor import Bolt
from groundsill.work.checks import check_house
from groundsill.work.document import Alternative, EditionOverride, House, WorkRecord
from groundsill.work.pieces import BoltPiece, PanelPiece
from tests.fixtures.small_house import small_house

HOUSE = small_house()


def told(house: House) -> list[str]:
    return [fault.line() for fault in check_house(house)]


def with_pieces(**pieces: Any) -> House:
    return replace(HOUSE, alternatives={"strengthen": Alternative(name="x", pieces=pieces)}, record={})


def test_the_small_house_is_sound() -> None:
    assert told(HOUSE) == []


def test_a_piece_whose_place_has_gone_is_no_fault_of_the_file() -> None:
    piece = PanelPiece(segment="gone", from_in=0, to_in=48, panel="15/32 sheathing, 8d", edge_spacing_in=4)
    assert told(with_pieces(pn1=piece)) == []


def test_a_piece_outside_its_limits_or_turned_round_is() -> None:
    piece = PanelPiece(segment="sg2", from_in=48, to_in=0, panel="15/32 sheathing, 8d", edge_spacing_in=7)
    at = "alternatives.strengthen.pieces.pn1"
    assert told(with_pieces(pn1=piece)) == [
        f"{at}.edge_spacing_in: 7 is not allowed; a number of inches from 2 to 6",
        f"{at}.to_in: 0 is not allowed; a station beyond its start at 48",
    ]


def test_one_piece_may_stand_in_two_alternatives_if_it_is_of_one_kind() -> None:
    panel = PanelPiece(segment="sg2", from_in=0, to_in=48, panel="15/32 sheathing, 8d", edge_spacing_in=4)
    bolt = BoltPiece(line="line2", station_in=9, diameter_in=0.5, embedment_in=7)
    both = {"one": Alternative(name="1", pieces={"aaa": panel}), "two": Alternative(name="2", pieces={"aaa": panel})}
    assert told(replace(HOUSE, alternatives=both, record={})) == []
    mixed = {**both, "two": Alternative(name="2", pieces={"aaa": bolt})}
    assert told(replace(HOUSE, alternatives=mixed, record={})) == [
        "alternatives.two.pieces.aaa: this id is not allowed; an id of its own; alternatives.one.pieces.aaa is a "
        "panel, "
        "and one piece keeps its kind"
    ]


def test_the_record_names_pieces_photographs_and_days_there_are() -> None:
    record = WorkRecord(piece="gone", when="June", photos=("ph99",))
    assert told(replace(HOUSE, record={"b01": record})) == [
        'record.b01.when: "June" is not allowed; a date like 2026-04-02, with 2026-04 or 2026 where the day is not '
        "known",
        'record.b01.photos.0: "ph99" is not allowed; the id of one of photos: ph01',
        'record.b01.piece: "gone" is not allowed; the id of a piece of work of an alternative',
    ]


def test_choices_and_basis_keep_their_limits() -> None:
    odd = replace(HOUSE, choices=replace(HOUSE.choices, redundancy=2.0, force_factor=float("nan")))
    assert told(odd) == [
        "choices.force_factor: nan is not allowed; a number from 0.1 to 1",
        "choices.redundancy: 2 is not allowed; a number from 1 to 1.3",
    ]
    override = {"X": EditionOverride(edition="sdpws-2015", reason="as built")}
    assert told(replace(HOUSE, basis=replace(HOUSE.basis, overrides=override)))[0].startswith(
        "basis.overrides.X: this id"
    )


def test_faults_of_survey_and_work_are_told_together() -> None:
    bolts = {"bt1": Bolt(line="line1", station_in=500.0, diameter_in=measured(0.5))}
    survey = replace(HOUSE.survey, underfloor=replace(HOUSE.survey.underfloor, bolts=bolts))
    choices: Any = replace(HOUSE.choices, system=4)
    odd = replace(HOUSE, survey=survey, record={"b01": WorkRecord(piece="gone")}, choices=choices)
    assert [line.split(":")[0] for line in told(odd)] == ["survey.underfloor.bolts.bt1.station_in", "choices.system"]
