"""Older files are opened step by step; newer ones are refused in words."""

from __future__ import annotations

from typing import Any

import pytest

from groundsill.house.migrate import STEPS, migrate
from groundsill.work.document import FORMAT
from groundsill.working.errors import BadSurvey

OLD: dict[str, Any] = {"format": "groundsill.house/0", "house": "7 Alder Street", "height_ft": 2}


def one_name(raw: dict[str, Any]) -> dict[str, Any]:
    """An invented step: version 0 kept a name and a height in feet beside each other."""
    rest = {key: value for key, value in raw.items() if key not in ("house", "height_ft")}
    return {**rest, "survey": {"name": raw["house"], "height_in": raw["height_ft"] * 12}}


def metres(raw: dict[str, Any]) -> dict[str, Any]:
    """Another invented step: from version 1 to a version 2 that does not exist."""
    return {**raw, "units": "si"}


def test_a_file_of_this_version_is_left_as_it_is() -> None:
    raw = {"format": FORMAT, "survey": {"name": "x"}}
    assert migrate(raw, FORMAT, STEPS) == raw


def test_an_older_file_takes_one_step() -> None:
    assert migrate(OLD, FORMAT, {0: one_name}) == {
        "format": "groundsill.house/1",
        "survey": {"name": "7 Alder Street", "height_in": 24},
    }


def test_steps_follow_each_other_and_leave_the_file_given_alone() -> None:
    before = dict(OLD)
    migrated = migrate(OLD, "groundsill.house/2", {0: one_name, 1: metres})
    assert (migrated["format"], migrated["units"]) == ("groundsill.house/2", "si")
    assert before == OLD


@pytest.mark.parametrize(
    ("raw", "line"),
    [
        ({}, '1. format: nothing is not allowed; it must be given: "groundsill.house/1"'),
        ({"format": "groundsill.house/2"}, '1. format: "groundsill.house/2" is not allowed; this program reads '
         '"groundsill.house/1" and older; the file was written by a newer program, so update this one'),
        ({"format": "groundsill.house/0"}, '1. format: "groundsill.house/0" is not allowed; no way is known from it to '
                                           '"groundsill.house/1"'),
        ({"format": "groundsill.study/1"}, '1. format: "groundsill.study/1" is not allowed; this program reads '
                                           '"groundsill.house/1" and older'),
        ({"format": "groundsill.house/1 "}, '1. format: "groundsill.house/1 " is not allowed; this program reads '
                                            '"groundsill.house/1" and older'),
        ({"format": 1}, '1. format: 1 is not allowed; this program reads "groundsill.house/1" and older'),
    ],
)  # fmt: skip
def test_a_format_that_cannot_be_read_is_told_in_words(raw: dict[str, Any], line: str) -> None:
    with pytest.raises(BadSurvey) as refused:
        migrate(raw, FORMAT, STEPS)
    assert str(refused.value) == line


def test_the_name_of_the_current_format_is_a_matter_of_the_program() -> None:
    with pytest.raises(ValueError, match="'groundsill' is not the name of a format"):
        migrate({"format": FORMAT}, "groundsill", STEPS)
