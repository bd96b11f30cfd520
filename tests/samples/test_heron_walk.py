"""Heron Walk, written by a newcomer from a description: what the notes say stands in the file, and all commands run."""

from __future__ import annotations

from pathlib import Path

import pytest

from groundsill.house.survey import Survey
from groundsill.study import AS_FOUND, Study, run
from groundsill.work.checks import check_house
from groundsill.work.document import Alternative, House
from groundsill.work.pieces import BoltPiece, PanelPiece

FOLDER = Path(__file__).resolve().parents[2] / "samples" / "heron-walk"
FILE = FOLDER / "house.json"


@pytest.fixture(scope="module")
def study(house: House) -> Study:
    return run(house, ranges=False)


def test_the_file_is_sound(house: House) -> None:
    assert check_house(house) == ()


def test_what_the_notes_measured_is_in_the_file(survey: Survey) -> None:
    under, base = survey.underfloor, survey.foundation
    assert survey.building.year_built.value == 1923
    assert len(survey.building.storeys) == 2  # the wing beside the old house
    heights = {s.mark: s.height_in.value for s in under.segments.values() if s.kind == "cripple wall"}
    assert set(heights.values()) == {28.0, 14.0}
    assert {s.thickness_in.value for s in under.sills.values() if s.thickness_in.state == "measured"} >= {2.5}
    old = [s for s in base.segments.values() if s.top_width_in.value == 8]
    assert old
    assert all((s.strength_psi.low, s.strength_psi.high) == (1500, 2400) for s in old)
    hazard = survey.site.hazard
    assert hazard is not None
    assert (hazard.S_S, hazard.S_1, hazard.T_L) == (1.31, 0.46, 16)


def test_what_the_notes_leave_open_is_not_filled_in(survey: Survey) -> None:
    assert all(s.depth_in.value is None for s in survey.foundation.segments.values())
    assert all(bolt.embedment_in.value is None for bolt in survey.underfloor.bolts.values())
    assert all(chimney.tied.value is None for chimney in survey.building.chimneys.values())


def test_what_no_field_holds_is_kept_in_the_surveyor_s_words(survey: Survey) -> None:
    words = " ".join(item.words.lower() for item in survey.observations.values())
    for said in ("porch", "awl", "no bolts"):
        assert said in words


def test_the_owner_s_question_is_answered_by_panels_nailed_at_four_inches(by_hand: Alternative) -> None:
    panels = [p for p in by_hand.pieces.values() if isinstance(p, PanelPiece)]
    assert panels
    assert {p.edge_spacing_in for p in panels} == {4.0}
    assert any(isinstance(p, BoltPiece) for p in by_hand.pieces.values())


def test_it_is_worked_out_and_nothing_unseen_passes(study: Study) -> None:
    assert {run.key for run in study.runs} >= {AS_FOUND}
    assert all(run.verdict != "passes" for run in study.runs)
    assert any(".stud.species" in lack.path for lack in study.missing)


def test_the_description_is_beside_it_and_both_are_invented() -> None:
    text = (FOLDER / "description.md").read_text("utf-8")
    assert "invented" in text
    assert "9 Heron Walk" in text
    assert "invented" in (FOLDER / "README.md").read_text("utf-8").lower()
