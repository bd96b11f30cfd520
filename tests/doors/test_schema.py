"""The published schema is the one the code makes, is a sound schema, and accepts every house we hand out."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from groundsill.doors.encode import to_map
from groundsill.doors.schema import house_schema, schema_text
from groundsill.house.model import fields_of
from groundsill.house.underfloor import Bolt
from tests.fixtures.small_house import small_house

ROOT = Path(__file__).resolve().parents[2]
VALIDATOR = jsonschema.Draft202012Validator(house_schema())


def faults(document: Any) -> list[str]:
    return [".".join(str(key) for key in error.absolute_path) for error in VALIDATOR.iter_errors(document)]


def test_the_checked_in_schema_is_the_one_the_code_makes() -> None:
    written = (ROOT / "schema" / "house.schema.json").read_text(encoding="utf-8")
    assert written == schema_text(), "run: python -m groundsill.doors.schema > schema/house.schema.json"


def test_the_module_prints_it() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "groundsill.doors.schema"],
        cwd=ROOT,
        env={"PYTHONPATH": "src"},
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stdout == schema_text()


def test_it_is_a_sound_schema_of_its_draft() -> None:
    jsonschema.Draft202012Validator.check_schema(house_schema())
    assert house_schema()["$schema"] == "https://json-schema.org/draft/2020-12/schema"


def test_every_sample_and_the_small_house_fit_it() -> None:
    samples = sorted((ROOT / "samples").glob("*/house.json"))
    documents = [json.loads(path.read_text(encoding="utf-8")) for path in samples]
    for document in [to_map(small_house()), *documents]:
        assert faults(document) == []


def test_every_field_has_a_title_and_its_unit_and_limits_are_those_of_the_model() -> None:
    bolt = house_schema()["$defs"]["Bolt"]["properties"]
    for facts in fields_of(Bolt):
        assert bolt[facts.name]["title"] == facts.label
        assert bolt[facts.name].get("x-unit", "") == facts.unit
    assert bolt["station_in"] == {"title": "Station", "x-unit": "in", "type": "number", "minimum": 0, "maximum": 6000}
    assert bolt["line"]["x-refers"] == "underfloor.lines"
    assert bolt["diameter_in"]["anyOf"][0] == {"type": "number", "minimum": 0.25, "maximum": 1.5}
    assert bolt["nut"]["anyOf"][0] == {"enum": ["tight", "loose", "none"]}


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("diameter_in", True),
        ("diameter_in", 7),
        ("diameter_in", {"value": 7}),
        ("diameter_in", {"value": 0.5, "unit": "in"}),
        ("nut", {"value": "welded"}),
        ("nut", 3),
        ("kind", "glued"),
        ("station_in", "12 in"),
        ("colour", "red"),
    ],
)
def test_what_the_decoder_refuses_in_a_bolt_the_schema_refuses_too(field: str, value: Any) -> None:
    house = to_map(small_house())
    house["survey"]["underfloor"]["bolts"]["bt1"][field] = value
    assert faults(house) != []


def test_a_measure_may_stand_as_a_person_types_it() -> None:
    house = to_map(small_house())
    house["survey"]["underfloor"]["bolts"]["bt1"]["embedment_in"] = "7 in"
    house["survey"]["underfloor"]["bolts"]["bt2"]["embedment_in"] = {"value": "178 mm", "state": "estimated"}
    assert faults(house) == []


def test_a_piece_of_work_must_say_its_kind() -> None:
    house = to_map(small_house())
    del house["alternatives"]["strengthen"]["pieces"]["pn11"]["kind"]
    assert faults(house) == ["alternatives.strengthen.pieces.pn11"]
