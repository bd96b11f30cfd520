"""Below the chains on the terminal: floor, work that no check counts, proofs, and what to measure next."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from groundsill.doors.files import read_house
from groundsill.papers.views.basis_view import telling_moves
from groundsill.papers.views.proofs_view import lines_of_tests
from groundsill.papers.views.words import counted
from groundsill.study import Study, run
from tests.cli.asking import ROOT, Asker


@pytest.fixture(scope="module")
def study(alder: Path) -> Study:
    return run(read_house(alder))


def squeezed(text: str) -> str:
    return re.sub(r"\s+", "", text)


def test_why_the_floor_is_taken_both_ways_stands_under_the_verdict(ask: Asker, alder: Path, study: Study) -> None:
    said = ask("loadpath", alder)
    told = f"Flexible and rigid floor both, every line by the worse of the two: {study.runs[0].floor}."
    assert told in said.flat
    assert said.flat.index(told) < said.flat.index("L1 front")


def test_work_that_no_check_counts_is_named_for_its_state_alone(ask: Asker, alder: Path, study: Study) -> None:
    work = study.runs[1]
    assert work.uncounted
    said = ask("loadpath", alder, "--with", work.name).flat
    assert "Work that no check counts yet; the verdicts stand without it" in said
    for piece in work.uncounted:
        assert f"- {piece}" in said
    assert "Work that no check counts yet" not in ask("loadpath", alder).flat


def test_what_to_measure_next_is_ranked_with_what_it_moves(ask: Asker, alder: Path, study: Study) -> None:
    moves = telling_moves(study)
    assert len(moves) > 5
    said = ask("loadpath", alder).flat
    assert "Measure this next 1. " in said
    places = []
    for number, move in enumerate(moves[:5], start=1):
        told = f"{number}. {move.label}: "
        assert squeezed(told) in squeezed(said), told
        places.append(squeezed(said).index(squeezed(told)))
        for flip in move.flips:
            assert squeezed(flip) in squeezed(said)
    assert places == sorted(places)
    assert "One fact at a time, from end to end of its range, all others as surveyed." in said
    assert f"{counted(len(moves) - 5, 'fact')} that move less: --full shows them." in said


def test_full_shows_every_fact_that_moves_anything(ask: Asker, alder: Path, study: Study) -> None:
    said = squeezed(ask("loadpath", alder, "--full").out)
    for number, move in enumerate(telling_moves(study), start=1):
        assert squeezed(f"{number}. {move.label}:") in said
    assert "factsthatmoveless" not in said


def test_tests_in_place_are_told_by_their_place(ask: Asker, alder: Path, study: Study) -> None:
    house = read_house(alder)
    told = lines_of_tests(house, "us")
    assert told
    said = squeezed(ask("loadpath", alder, "--full").out)
    for line in told:
        assert squeezed(line) in said
    assert squeezed("No link passes by a test here.") in said


def test_forces_tell_the_floor_and_where_the_mass_sits(ask: Asker, alder: Path, study: Study) -> None:
    said = ask("forces", alder).flat
    assert "Centre of mass of each level" in said
    assert f"Here it is also taken as rigid, since {study.runs[0].floor}." in said


def test_both_ways_stand_below_the_chains_line_by_line(ask: Asker, alder: Path, study: Study) -> None:
    said = ask("loadpath", alder)
    assert study.prescriptive is not None
    assert "Prescriptive or engineered" in said.flat
    for line in study.runs[0].prescriptive:
        assert squeezed(f"{line.mark} {line.headline[:1].upper()}{line.headline[1:]}") in squeezed(said.out)
    assert "has not passed an engineered check" in said.flat
    assert "Panel at each end" not in said.flat


def test_all_that_is_asked_is_told_when_all_is_asked_for(ask: Asker, alder: Path, study: Study) -> None:
    full = squeezed(ask("loadpath", alder, "--full").out)
    assert study.prescriptive is not None
    for item in study.prescriptive.scope:
        assert squeezed(f"{item.outcome}:") in full.lower()
    for line in study.runs[0].prescriptive:
        for each in line.requirements:
            if each.outcome != "does not apply":
                assert squeezed(f"{each.reason} ({each.clause})") in full


def test_the_prescriptive_way_is_in_the_json(ask: Asker, alder: Path, study: Study) -> None:
    answer = ask("loadpath", alder, "--json").json
    assert answer["prescriptive"]["rules"] == "iebc-2021"
    told = answer["runs"][0]["prescriptive"]
    assert [line["mark"] for line in told] == [line.mark for line in study.runs[0].prescriptive]


def test_the_working_of_both_ways_is_printed_by_the_lines_mark(ask: Asker) -> None:
    said = ask("loadpath", ROOT / "samples" / "larch-street" / "house.json", "--working", "L1/prescriptive").flat
    assert "Least bracing of a wall line" in said
    assert "Length that a force needs at a unit shear" in said


def test_the_tests_of_the_concrete_that_would_settle_it_stand_with_their_lines(ask: Asker) -> None:
    """Larch Street: the strip of L8 has three cores, the rest asks for some."""
    house = ROOT / "samples" / "larch-street" / "house.json"
    short, full = ask("loadpath", house, "--with", "1"), ask("loadpath", house, "--with", "1", "--full")
    assert "Tests of the concrete that would settle it" in short.flat
    assert "--full shows how many cores, where, and at what mean." in short.flat
    assert "L2 From" in short.flat
    assert "Cores: 3 in C3" not in short.flat
    assert "Cores: 3 in C3" in full.flat
    assert "How strong the concrete is" in full.flat
    assert "C19 (L8): 2,182 psi, from 2,182 psi to 2,852 psi; 3 cores (TS11, TS12, TS13)" in full.flat
