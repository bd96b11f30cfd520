"""Our own past output for the small house with doubtful facts: golden, never called proof.

It says nothing about whether a figure is right, only that none has changed unseen. When a change is meant, write it
anew with ``python -m tests.golden.write`` and read the difference line by line before it is committed.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

from groundsill.doors.answers import to_map
from groundsill.study import run
from tests.loadpath.houses import doubtful_house

GOLDEN = Path(__file__).with_name("study-1-small-house.json")
# who made it and what the file's bytes were: these change with every version and say nothing of the house
NOT_OF_THE_HOUSE = ("manifest.program", "manifest.house_hash")
SHOWN = 25
SAME = 1e-9


@cache
def todays() -> Any:
    """The study as it comes today, as found and strengthened, as JSON would give it back."""
    house = doubtful_house()
    house = replace(house, alternatives={"strengthen": house.alternatives["strengthen"]})
    return json.loads(json.dumps(to_map(run(house)), allow_nan=False))


def written() -> str:
    """The golden file's text: one line for each plain member, so that two versions compare line by line."""
    return json.dumps(todays(), ensure_ascii=False, indent=1, allow_nan=False) + "\n"


def named(items: list[Any]) -> dict[str, Any]:
    """The members of a list by what they call themselves, or by their place."""
    found: dict[str, Any] = {}
    for place, item in enumerate(items):
        own = item if isinstance(item, dict) else {}
        name = next((own[key] for key in ("address", "key", "id", "path") if key in own), place)
        found[str(place if name in found else name)] = item
    return found


def differences(before: Any, now: Any, path: str = "") -> Iterator[str]:
    """Each place where two studies differ; a number may differ in its tenth digit.

    A member of a list that was not there before is a difference, a new field is none: within a format fields are added.
    """
    members = isinstance(before, list) and isinstance(now, list)
    if members:
        before, now = named(before), named(now)
    if isinstance(before, dict) and isinstance(now, dict):
        for key in (*before, *(key for key in now if members and key not in before)):
            place = f"{path}.{key}" if path else str(key)
            if key not in now:
                yield f"{place}: is gone"
            elif key not in before:
                yield f"{place}: is new"
            else:
                yield from differences(before[key], now[key], place)
    elif isinstance(before, float | int) and isinstance(now, float | int) and not isinstance(before, bool):
        if abs(before - now) > SAME * max(abs(before), abs(now)):
            yield f"{path}: was {before:.10g}, is {now:.10g}"
    elif before != now and path not in NOT_OF_THE_HOUSE:
        yield f"{path}: was {before!r}, is {now!r}"


def test_no_figure_verdict_or_word_of_the_small_house_has_changed_unseen() -> None:
    found = list(differences(json.loads(GOLDEN.read_text(encoding="utf-8")), todays()))
    rest = f"\n... and {len(found) - SHOWN} more" if len(found) > SHOWN else ""
    assert not found, "\n".join(["if this is meant, run: python -m tests.golden.write", *found[:SHOWN]]) + rest


def test_the_file_is_written_as_it_would_be_today() -> None:
    """Else a difference between two commits would show lines that did not change."""
    golden = json.loads(GOLDEN.read_text(encoding="utf-8"))
    assert json.dumps(golden, ensure_ascii=False, indent=1) + "\n" == GOLDEN.read_text(encoding="utf-8")


def test_it_holds_every_kind_of_verdict() -> None:
    links = [
        link
        for state in json.loads(GOLDEN.read_text(encoding="utf-8"))["runs"]
        for chain in (*state["chains"], *state["bodies"])
        for stage in chain["stages"]
        for link in stage["links"]
    ]
    verdicts = {link["verdict"] for link in links}
    assert {"passes", "fails", "depends", "indicated", "cannot be checked", "does not apply"} <= verdicts
    assert any(link["marks"] for link in links)


def test_differences_are_found_and_named() -> None:
    before = {"a": [{"id": "x", "n": 1.0, "w": "one"}], "b": None, "gone": 1, "t": True}
    now = {"a": [{"id": "x", "n": 1.0 + 1e-12, "w": "two"}], "b": 2.0, "t": False, "new": 0}
    assert list(differences(before, now)) == [
        "a.x.w: was 'one', is 'two'", "b: was None, is 2.0", "gone: is gone", "t: was True, is False",
    ]  # fmt: skip
    assert list(differences({"a": []}, {"a": [{"address": "line/l1"}]})) == ["a.line/l1: is new"]
    assert list(differences({"a": [{"n": 1.0}]}, {"a": [{"n": 1.1}]})) == ["a.0.n: was 1, is 1.1"]
    assert list(differences(before, before)) == []
