"""``groundsill new`` and ``groundsill check``: a file to start from, and what a file still lacks."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest

from groundsill.cli.starting import EXAMPLE, starting_house
from groundsill.doors.encode import encode, to_map
from groundsill.doors.files import read_house, write_house
from groundsill.house.missing import incomplete, together
from groundsill.house.model import places
from groundsill.study.unread import unread
from groundsill.work.checks import check_house
from tests.cli.asking import Asker
from tests.fixtures.small_house import small_house


def test_a_new_file_is_sound_and_lacks_nothing(ask: Asker, tmp_path: Path) -> None:
    path = tmp_path / "elm.json"
    said = ask("new", path, "--name", "5 Elm Street")
    assert said.code == 0
    assert "Every figure in it is an example." in said.flat
    house = read_house(path)
    assert house.survey.name == "5 Elm Street"
    assert check_house(house) == ()
    assert incomplete(house.survey) == ()
    assert path.read_text("utf-8") == encode(house)
    checked = ask("check", path)
    assert checked.code == 0
    assert "5 Elm Street: the file is sound" in checked.out
    assert "Nothing that a load path needs is missing." in checked.out


def test_every_measured_fact_of_a_new_file_says_that_it_is_an_example() -> None:
    for place in places(starting_house("Elm", "us"), ""):
        if place.field.shape.kind == "fact" and place.value.known:
            assert (place.value.state, place.value.how) == ("estimated", EXAMPLE), place.path
    hazard = starting_house("Elm", "us").survey.site.hazard
    assert hazard is not None
    assert hazard.source.startswith(EXAMPLE)


def test_a_new_file_may_be_in_si_and_is_told_to_machines(ask: Asker, tmp_path: Path) -> None:
    said = ask("new", tmp_path / "elm.json", "--units", "si", "--json")
    assert said.json["files"] == [str(tmp_path / "elm.json")]
    assert read_house(tmp_path / "elm.json").units == "si"


def test_a_file_that_is_there_is_not_replaced_unless_told_to(ask: Asker, tmp_path: Path) -> None:
    path = tmp_path / "elm.json"
    path.write_text("two days under a house")
    said = ask("new", path)
    assert said.code == 2
    assert said.faults == [
        f"1. {path}: a file that is there already is not allowed; choose another name, or say --force to replace it"
    ]
    assert path.read_text() == "two days under a house"
    assert ask("new", path, "--force").code == 0
    assert read_house(path).survey.name == "New house"


def test_every_wrong_choice_is_told_at_once(ask: Asker, tmp_path: Path) -> None:
    said = ask("new", tmp_path / "elm.txt", "--units", "cubits", "--name", " ")
    assert [line.split(":")[0] for line in said.faults] == ["1. --units", "2. --name", f"3. {tmp_path / 'elm.txt'}"]
    assert list(tmp_path.iterdir()) == []
    said = ask("new", tmp_path / "no" / "elm.json")
    assert "a folder that is not there is not allowed; make the folder first" in said.err


def test_check_says_what_the_file_holds_and_lacks(ask: Asker, alder: Path) -> None:
    said = ask("check", alder)
    assert said.code == 0
    assert "7 Alder Street, Port Ellery: the file is sound" in said.out
    told = ask("check", alder, "--json").json
    assert told["answer"] == "checked"
    house = small_house()
    assert told["holds"]["bolts"] == len(house.survey.underfloor.bolts)
    assert told["holds"]["alternatives"] == 2
    lacks = (*incomplete(house.survey), *unread(house))
    assert [m["path"] for m in told["missing"]] == [m.path for m in lacks]
    assert told["missing"]
    for lack, _ in together(lacks):
        assert lack.what in said.flat
    assert f"A load path still lacks {len(told['missing'])} facts:" in said.out


def test_check_names_each_fault_of_a_file_with_its_path(ask: Asker, tmp_path: Path) -> None:
    raw = to_map(small_house())
    raw["survey"]["underfloor"]["lines"]["line1"]["start"] = "nowhere"
    raw["survey"]["site"]["hazard"]["S_S"] = 99
    path = tmp_path / "house.json"
    path.write_text(json.dumps(raw))
    said = ask("check", path, "--json")
    assert (said.code, said.json["more"]) == (2, 0)
    assert said.faults == [
        "1. survey.site.hazard.S_S: 99 is not allowed; a number of parts of gravity from 0 to 5",
    ]
    raw["survey"]["site"]["hazard"]["S_S"] = 1
    path.write_text(json.dumps(raw))
    said = ask("check", path)
    assert said.code == 2
    assert said.faults[0].startswith(
        '1. survey.underfloor.lines.line1.start: "nowhere" is not allowed; the id of one of'
    )


def test_a_house_that_is_only_begun_is_sound_and_lacks_everything(ask: Asker, tmp_path: Path) -> None:
    house = small_house()
    begun = replace(house, survey=replace(house.survey, site=replace(house.survey.site, hazard=None)))
    path = tmp_path / "begun.json"
    write_house(path, begun)
    said = ask("check", path)
    assert said.code == 0
    assert "the ground motion of the site is not given: there is no earthquake force" in said.flat
    assert "survey.site.hazard" in said.out
    for command in ("forces", "loadpath"):
        refused = ask(command, path)
        assert refused.code == 2
        assert refused.err.startswith("1. survey.site.hazard: nothing is not allowed; ground motion")


@pytest.mark.parametrize("command", ["check", "forces", "loadpath"])
def test_a_folder_or_nothing_is_no_house_file(ask: Asker, tmp_path: Path, command: str) -> None:
    assert ask(command, tmp_path).err == f"1. {tmp_path}: a folder is not allowed; give the path of a survey file\n"
    assert "nothing that can be read" in ask(command, tmp_path / "gone.json").err
