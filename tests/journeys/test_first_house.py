"""From nothing to a calculation package: what a practitioner does with a first house, command by command."""

from __future__ import annotations

import json
from pathlib import Path

from groundsill.doors.files import read_house
from tests.cli.asking import Asker, validator


def change(path: Path, *keys: str, value: object) -> None:
    """Edit one field of a house file by hand."""
    raw = json.loads(path.read_text("utf-8"))
    place = raw
    for key in keys[:-1]:
        place = place[key]
    place[keys[-1]] = value
    path.write_text(json.dumps(raw, indent=2), "utf-8")


def test_a_first_house_from_new_to_papers(ask: Asker, tmp_path: Path) -> None:
    path = tmp_path / "elm.json"
    assert ask("new", path, "--name", "5 Elm Street, Port Ellery").code == 0

    # the surveyor replaces the examples by what the tape says, and mistypes one
    segment = next(iter(read_house(path).survey.underfloor.segments))
    change(path, "survey", "underfloor", "segments", segment, "height_in", value="2'-4 1/2")
    said = ask("check", path)
    assert (said.code, said.out) == (0, ask("check", path).out)
    assert read_house(path).survey.underfloor.segments[segment].height_in.value == 28.5
    change(path, "survey", "underfloor", "segments", segment, "height_in", value="2'-")
    said = ask("check", path)
    assert said.code == 2
    assert said.faults[0].startswith(f'1. survey.underfloor.segments.{segment}.height_in: "2\'-" is not allowed')
    change(path, "survey", "underfloor", "segments", segment, "height_in", value={"value": 28.5, "typed": "2'-4 1/2\""})
    assert ask("check", path).code == 0

    # the force, and where it stops
    forces = ask("forces", path, "--json").json["forces"]
    assert forces["base_shear_lb"] > 0
    found = ask("loadpath", path, "--json")
    assert found.code == 1
    lines = found.json["runs"][0]["chains"]
    assert [line["mark"] for line in lines] == ["L1", "L2", "L3", "L4"]
    weakest = min(lines, key=lambda line: line["percent"])
    page = ask("loadpath", path)
    assert f"{weakest['headline'][:30]}" in page.flat.replace("Carries", "carries")

    # why: the working of the link that governs
    working = ask("loadpath", path, "--working", weakest["governing"])
    assert working.code == 0
    assert weakest["governing"] in working.out.replace("\n", "")

    # on paper
    said = ask("papers", path, "--out", tmp_path / "papers")
    assert said.code == 1
    summary = json.loads((tmp_path / "papers" / "summary.json").read_text("utf-8"))
    validator().validate(summary)
    assert summary["name"] == "5 Elm Street, Port Ellery"
    assert summary["base_shear_lb"] == forces["base_shear_lb"]
    assert {line["mark"]: line["percent"] for line in summary["runs"][0]["lines"] if line["kind"] == "line"} == {
        line["mark"]: line["percent"] for line in lines
    }
    assert (tmp_path / "papers" / "calculations.pdf").read_bytes().startswith(b"%PDF-")


def test_more_weight_is_more_force_and_a_measured_fact_loses_its_mark(ask: Asker, tmp_path: Path) -> None:
    path = tmp_path / "elm.json"
    ask("new", path)
    before = ask("forces", path, "--json").json["forces"]["base_shear_lb"]
    raw = json.loads(path.read_text("utf-8"))
    roof = next(a for a in raw["survey"]["building"]["assemblies"].values() if a["kind"] == "roof")
    roof["layers"].append({"material": "solar panels", "psf": 3})
    path.write_text(json.dumps(raw), "utf-8")
    assert ask("forces", path, "--json").json["forces"]["base_shear_lb"] > before

    doubt = "Spacing of the nails along the line (L1): 16 in"
    assert {"kind": "estimated", "what": doubt} in marks_of(ask("loadpath", path, "--json").json)
    line = next(id for id, line in raw["survey"]["underfloor"]["lines"].items() if line["mark"] == "L1")
    change(path, "survey", "underfloor", "lines", line, "floor_connection", "spacing_in", value="16 in")
    marks = [mark["what"] for mark in marks_of(ask("loadpath", path, "--json").json)]
    assert doubt not in marks
    assert doubt.replace("L1", "L2") in marks


def marks_of(told: object) -> list[dict[str, str]]:
    """Every mark in an answer."""
    if isinstance(told, dict):
        own = told.get("marks", [])
        return [*own, *(mark for item in told.values() for mark in marks_of(item))]
    if isinstance(told, list):
        return [mark for item in told for mark in marks_of(item)]
    return []
