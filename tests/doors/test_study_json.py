"""The published form of every ``--json``: the checked-in schema, and the promise that nothing is ever taken away."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from groundsill.cli.starting import starting_house
from groundsill.doors.answers import KINDS, faults_answer, to_map
from groundsill.doors.house_answers import forces_told, summary_of
from groundsill.doors.study_json import schema, schema_text, study_text
from groundsill.study import Study, run
from groundsill.working.errors import BadSurvey, Fault, OutsideLimits
from tests.fixtures.small_house import small_house

ROOT = Path(__file__).resolve().parents[2]
GOLDEN = ROOT / "tests" / "golden"
PROMISE = GOLDEN / "study-1-promise.txt"
DOCUMENT = GOLDEN / "study-1-starting-house.json"


@cache
def study() -> Study:
    return run(starting_house("Golden", "us"))


def faults(told: Any) -> list[str]:
    found = jsonschema.Draft202012Validator(schema()).iter_errors(told)
    return [f"{'.'.join(map(str, e.absolute_path))}: {e.message[:200]}" for e in found]


def test_the_checked_in_schema_is_the_one_the_code_makes() -> None:
    jsonschema.Draft202012Validator.check_schema(schema())
    written = (ROOT / "schema" / "study.schema.json").read_text(encoding="utf-8")
    assert written == schema_text(), "run: python -m groundsill.doors.study_json > schema/study.schema.json"


def test_the_module_prints_it() -> None:
    command = [sys.executable, "-W", "error", "-m", "groundsill.doors.study_json"]
    done = subprocess.run(command, cwd=ROOT, env={"PYTHONPATH": "src"}, capture_output=True, text=True, check=True)
    assert done.stdout == schema_text()
    assert done.stderr == ""


def test_every_kind_of_answer_is_in_the_schema_under_its_own_name() -> None:
    defs: Any = schema()["$defs"]
    told = {name: defs[name]["properties"]["answer"]["const"] for name in KINDS}
    assert told == KINDS
    assert len(set(KINDS.values())) == len(KINDS)


@pytest.mark.parametrize("house", [small_house(), starting_house("Elm", "si")], ids=["alder", "starting house"])
def test_a_study_and_all_that_is_told_of_it_fit_the_schema(house: Any) -> None:
    found = run(house)
    for told in (to_map(found), to_map(forces_told(found)), to_map(summary_of(found, ("a.pdf",)))):
        assert faults(told) == []
        assert told["format"] == "groundsill.study/1"


def test_no_mark_of_doubt_is_lost_on_the_way() -> None:
    told = json.loads(study_text(study()))
    links = [link for run in told["runs"] for c in run["chains"] for s in c["stages"] for link in s["links"]]
    mine = [link for run in study().runs for c in run.chains for link in c.links]
    assert [link["marks"] for link in links] == [[{"kind": m.kind, "what": m.what} for m in k.marks] for k in mine]
    assert any(link["marks"] for link in links)


def test_the_schema_refuses_what_is_no_answer() -> None:
    told = to_map(study())
    assert faults({**told, "answer": "guess"})
    assert faults({**told, "format": "groundsill.study/2"})
    assert faults({k: v for k, v in told.items() if k != "warnings"})
    assert faults({})


def test_refusals_are_told_with_their_lines() -> None:
    told = to_map(faults_answer(BadSurvey(tuple(Fault(f"a{n}", "1", "2") for n in range(60)))))
    assert faults(told) == []
    assert (len(told["faults"]), told["more"]) == (50, 10)
    assert told["faults"][0] == {"path": "a0", "value": "1", "allowed": "2", "line": "a0: 1 is not allowed; 2"}
    told = to_map(faults_answer(OutsideLimits("NDS 2018 12.3.1: D = 2")))
    assert (faults(told), told["faults"][0]["line"]) == ([], "NDS 2018 12.3.1: D = 2")


# ---- The promise: within groundsill.study/1 fields are added, never taken away or changed --------------------------


def promised() -> Iterator[str]:
    """Every field of every answer with what may stand in it, one a line."""
    defs: Any = schema()["$defs"]
    for name, told in sorted(defs.items()):
        for field, part in told["properties"].items():
            yield f"{name}.{field}: {json.dumps(part, sort_keys=True)}"


def kept(before: list[str], now: list[str]) -> list[str]:
    """What an older reader counts on and no longer finds; a new word among choices is an addition, not a change."""
    known = dict(line.split(": ", 1) for line in now)
    lost = []
    for line in before:
        field, part = line.split(": ", 1)
        mine = json.loads(known.get(field, "null"))
        theirs = json.loads(part)
        if mine is None or (mine != theirs and not set(theirs.get("enum", "x")) <= set((mine or {}).get("enum", ""))):
            lost.append(line)
    return lost


def test_nothing_that_was_promised_has_been_taken_away() -> None:
    assert kept(PROMISE.read_text("utf-8").splitlines(), list(promised())) == []


def test_a_field_taken_away_or_changed_is_named() -> None:
    before = [
        'Link.ratio: {"type": ["number", "null"]}',
        'Link.status: {"enum": ["a", "b"]}',
        'Link.unit: {"type": "string"}',
    ]
    assert kept(before, before) == []
    assert kept(before, [*before, 'Link.new: {"type": "string"}']) == []
    assert kept(before, [*before[:1], 'Link.status: {"enum": ["a", "b", "c"]}', before[2]]) == []
    assert kept(before, before[1:]) == before[:1]
    assert kept(before, [*before[:2], 'Link.unit: {"type": "number"}']) == before[2:]
    assert kept(before, [before[0], 'Link.status: {"enum": ["a"]}', before[2]]) == [before[1]]


def shape_of(told: Any, path: str = "") -> Iterator[str]:
    """Every place of a document that has a name."""
    if isinstance(told, dict):
        for key, item in told.items():
            yield f"{path}.{key}"
            yield from shape_of(item, f"{path}.{key}")
    elif isinstance(told, list):
        for item in told:
            yield from shape_of(item, f"{path}[]")


def test_a_document_written_earlier_still_fits_the_schema_and_todays_has_every_place_it_has() -> None:
    """Our own past output, for its form alone: the figures are proven elsewhere."""
    golden = json.loads(DOCUMENT.read_text("utf-8"))
    lenient: Any = schema()
    for told in lenient["$defs"].values():
        told["required"] = ["format", "answer"] if "answer" in told["properties"] else []  # fields may have been added
    assert [e.message[:200] for e in jsonschema.Draft202012Validator(lenient).iter_errors(golden)] == []
    today = set(shape_of(to_map(study())))
    skip = (".manifest.editions.", ".forces.lines.", ".forces.gravity.")
    assert [p for p in dict.fromkeys(shape_of(golden)) if p not in today and not p.startswith(skip)] == []
