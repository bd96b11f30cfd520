"""Three hundred damaged survey files: each is refused in numbered lines that say what to do, or read as a house."""

from __future__ import annotations

import re
import time
from pathlib import Path

import pytest

from groundsill.doors.encode import encode, to_map
from groundsill.doors.files import open_house, read_house
from groundsill.doors.schema import house_schema
from groundsill.work.checks import check_house
from groundsill.work.document import House
from groundsill.working.errors import BadSurvey, numbered
from tests.fixtures.spoiled import COUNT, SEED, Spoiled, spoiled_files

FILES = spoiled_files()


def answer(spoiled: Spoiled, folder: Path) -> House | BadSurvey:
    """What the door says to a file: a house, or a refusal; anything else is a fault of the program and flies out."""
    path = folder / "house.json"
    path.write_bytes(spoiled.data)
    try:
        return read_house(path)
    except BadSurvey as refused:
        return refused


def test_there_are_three_hundred_and_they_are_the_same_on_every_run() -> None:
    assert len(FILES) == COUNT == 300
    assert len({spoiled.data for spoiled in FILES}) == COUNT
    assert [s.name for s in spoiled_files(seed=SEED)] == [s.name for s in FILES]


@pytest.mark.parametrize("spoiled", FILES, ids=lambda s: s.name.encode("ascii", "backslashreplace").decode()[:70])
def test_a_damaged_file_is_refused_in_numbered_lines_or_read_as_a_sound_house(spoiled: Spoiled, tmp_path: Path) -> None:
    found = answer(spoiled, tmp_path)
    if isinstance(found, House):
        assert not spoiled.must_refuse, f"{spoiled.name} was read as a house"
        assert check_house(found) == ()
        assert encode(found).endswith("}\n")
        return
    assert found.faults
    for fault in found.faults:
        assert fault.path
        assert fault.value
        assert fault.allowed
        assert len(fault.line()) < 700
        assert fault.line().isprintable()
        fault.line().encode("utf-8")
    lines = str(found).splitlines()
    assert lines == list(numbered(found.faults))
    assert len(lines) <= 51
    assert lines[0].startswith("1. ")
    if spoiled.names:
        assert any(fault.path.startswith(spoiled.names) for fault in found.faults), str(found)


def test_about_as_many_are_refused_as_their_damage_deserves(tmp_path: Path) -> None:
    refused = sum(isinstance(answer(spoiled, tmp_path), BadSurvey) for spoiled in FILES)
    assert refused >= sum(spoiled.must_refuse for spoiled in FILES)
    assert 230 <= refused < COUNT  # some damage (a lost mark, a sign of a coordinate) leaves a house that may be right


def test_whatever_is_opened_agrees_with_the_published_schema(tmp_path: Path) -> None:
    jsonschema = pytest.importorskip("jsonschema")
    validator = jsonschema.Draft202012Validator(house_schema())
    opened = 0
    for spoiled in FILES:
        path = tmp_path / "house.json"
        path.write_bytes(spoiled.data)
        try:
            house = open_house(path)
        except BadSurvey:
            continue
        opened += 1
        assert list(validator.iter_errors(to_map(house))) == [], spoiled.name
    assert opened > 20


def test_fifty_million_bytes_are_refused_by_their_size_alone(tmp_path: Path) -> None:
    path = tmp_path / "house.json"
    with path.open("wb") as file:
        file.truncate(50_000_000)
    start = time.perf_counter()
    refusal = "1. house.json: 50,000,000 bytes is not allowed; at most 16 million bytes"
    with pytest.raises(BadSurvey, match=re.escape(refusal)):
        read_house(path)
    assert time.perf_counter() - start < 0.2


@pytest.mark.proof
def test_two_thousand_more(tmp_path: Path) -> None:
    for spoiled in spoiled_files(count=2300, seed=SEED + 1)[60:]:
        found = answer(spoiled, tmp_path)
        assert not (spoiled.must_refuse and isinstance(found, House)), spoiled.name
