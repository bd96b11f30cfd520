"""A damaged file at the command line: exit 2 and numbered lines, or a verdict; no traceback, nothing written."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.cli.asking import Asker
from tests.fixtures.spoiled import Spoiled, spoiled_files

FILES = spoiled_files()
SAMPLE = FILES[::10]


def name_of(spoiled: Spoiled) -> str:
    return spoiled.name.encode("ascii", "backslashreplace").decode()[:70]


def answers_by_the_rule(ask: Asker, spoiled: Spoiled, folder: Path) -> None:
    path = folder / "house.json"
    path.write_bytes(spoiled.data)
    for words in (("check",), ("forces",), ("loadpath",)):
        said = ask(*words, path, "--json")
        assert said.code in (0, 1, 2), said.err
        assert "Traceback" not in said.err
        told = said.json
        if said.code == 2:
            assert told["answer"] == "faults"
            assert said.faults
            numbers = [int(found[1]) for line in said.faults if (found := re.match(r"(\d+)\. ", line))]
            assert numbers == list(range(1, min(len(numbers), 50) + 1))
            assert [f"{n}. {f['line']}" for n, f in zip(numbers, told["faults"], strict=True)] == said.faults[
                : len(numbers)
            ]
        if spoiled.must_refuse:
            assert said.code == 2
    before = sorted(folder.iterdir())
    said = ask("papers", path, "--out", folder / "papers", "--with", "A")
    assert said.code in (0, 1, 2), said.err
    if said.code == 2:
        assert sorted(folder.iterdir()) == before
    assert path.read_bytes() == spoiled.data


def test_the_sample_holds_thirty() -> None:
    assert len(SAMPLE) == 30


@pytest.mark.parametrize("spoiled", SAMPLE, ids=name_of)
def test_a_damaged_file_is_answered_by_the_rule(ask: Asker, spoiled: Spoiled, tmp_path: Path) -> None:
    answers_by_the_rule(ask, spoiled, tmp_path)


@pytest.mark.proof
@pytest.mark.parametrize("spoiled", FILES, ids=name_of)
def test_each_of_three_hundred_damaged_files_is_answered_by_the_rule(
    ask: Asker, spoiled: Spoiled, tmp_path: Path
) -> None:
    answers_by_the_rule(ask, spoiled, tmp_path)
