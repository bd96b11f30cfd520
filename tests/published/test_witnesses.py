"""Values printed by others against the program's own, read from the witness files beside this one.

Each case says what was read, where, by whom, and how far rounding may part the two. Cases marked "computed" are our own
arithmetic by another route, and "from memory" ones are recalled: both are run, and neither is counted as published.
"""

from __future__ import annotations

import math
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from groundsill.standards.catalogue import call, entries, find
from groundsill.working.equation import Equation
from groundsill.working.sheet import Sheet

FOLDER = Path(__file__).parent / "witnesses"
KEYS = {"formula", "inputs", "expected", "tolerance", "reason", "document", "place", "read_by", "how"}
HOW = ("seen", "computed", "from memory")


@dataclass(frozen=True, slots=True)
class Case:
    """One witness: its file and number, and what the file says."""

    name: str
    data: dict[str, Any]

    @property
    def how(self) -> str:
        return str(self.data["how"])

    @property
    def covers(self) -> set[str]:
        """The formula itself, and the equations under a procedure that the value passes through."""
        return {self.data["formula"], *self.data.get("covers", ())}


def all_cases() -> list[Case]:
    found = []
    for path in sorted(FOLDER.glob("*.toml")):
        for number, data in enumerate(tomllib.loads(path.read_text("utf-8")).get("case", []), start=1):
            found.append(Case(f"{path.stem}-{number}-{data.get('formula', '?')}", data))
    return found


CASES = all_cases()


def faults(case: Case) -> Iterator[str]:
    """What is wrong with how a case is written down."""
    missing = KEYS - set(case.data)
    if missing:
        yield f"{case.name}: {', '.join(sorted(missing))} is missing"
        return
    if case.how not in HOW:
        yield f"{case.name}: how = {case.how!r} is not one of {', '.join(HOW)}"
    for key in ("document", "place", "read_by", "reason"):
        if not str(case.data[key]).strip():
            yield f"{case.name}: {key} is empty"
    extra = set(case.data) - KEYS - {"covers"}
    if extra:
        yield f"{case.name}: {', '.join(sorted(extra))} is not known"


def compare(name: str, got: object, expected: object, tolerance: dict[str, float]) -> None:
    """Hold a result to what was printed: a number within tolerance, a word exactly, fields of a result by path."""
    if isinstance(expected, dict):
        for path, value in expected.items():
            compare(f"{name}: {path}", part(got, path), value, tolerance)
    elif isinstance(expected, str):
        shown = "none" if got is None else got
        assert shown == expected, f"{name}: {shown!r}, printed {expected!r}"
    else:
        assert isinstance(got, (int, float)), f"{name}: {got!r} is not a number; printed {expected}"
        near = math.isclose(got, expected, rel_tol=tolerance.get("rel", 0.0), abs_tol=tolerance.get("abs", 0.0))
        assert near, f"{name}: {float(got):.6g}, printed {expected} (within {tolerance})"


def part(thing: Any, path: str) -> Any:
    """A field of a result, or of one item of a list of results: ``C_s``, ``1.F_x``."""
    for step in path.split("."):
        thing = thing[int(step)] if step.isdigit() else getattr(thing, step)
    return thing


def run(case: Case) -> None:
    data = case.data
    compare(case.name, call(data["formula"], data["inputs"]), data["expected"], data["tolerance"])
    with Sheet() as sheet:
        on_paper = call(data["formula"], data["inputs"])
    compare(f"{case.name} (with a sheet open)", on_paper, data["expected"], data["tolerance"])
    unused = case.covers - {step.id for step in sheet.steps} - {data["formula"]}
    assert not unused, f"{case.name}: says it covers {', '.join(sorted(unused))}, which it never uses"


def of_kind(how: str) -> Any:
    chosen = [case for case in CASES if case.data.get("how") == how]
    return pytest.mark.parametrize("case", chosen, ids=[case.name for case in chosen])


@of_kind("seen")
def test_a_value_printed_by_others(case: Case) -> None:
    run(case)


@of_kind("computed")
def test_our_own_arithmetic_by_another_route(case: Case) -> None:
    run(case)


@of_kind("from memory")
def test_a_recalled_value(case: Case) -> None:
    run(case)


def test_every_case_says_where_it_was_read() -> None:
    found = [fault for case in CASES for fault in faults(case)]
    assert not found, "\n".join(["", *found])


def test_a_case_that_says_too_little_is_named() -> None:
    bare = Case("x-1-y", {"formula": "y", "how": "seen"})
    assert list(faults(bare)) == ["x-1-y: document, expected, inputs, place, read_by, reason, tolerance is missing"]
    whole = dict.fromkeys(KEYS, "z") | {"how": "heard", "reason": " "}
    assert list(faults(Case("x-2-y", whole))) == [
        "x-2-y: how = 'heard' is not one of seen, computed, from memory",
        "x-2-y: reason is empty",
    ]


def test_a_wrong_value_is_named_with_both_figures() -> None:
    with pytest.raises(AssertionError, match=r"m: 1\.5, printed 1\.6 \(within \{'abs': 0\.01\}\)"):
        compare("m", 1.5, 1.6, {"abs": 0.01})


def test_formulas_that_name_a_witness_are_those_that_have_one() -> None:
    """A formula that says it was checked has a printed value here, and one that has a printed value says so."""
    seen = {each for case in CASES if case.how == "seen" for each in case.covers}
    found = []
    for entry in entries():
        if isinstance(entry.maker, Equation):
            if entry.maker.witness is not None and entry.id not in seen:
                found.append(f"{entry.id} names a witness ({entry.maker.witness}), and no case holds it")
            if entry.maker.witness is None and entry.id in seen:
                found.append(f"{entry.id} has a printed value among the cases, and names no witness")
    assert not found, "\n".join(["", *found])


def test_every_case_is_for_a_formula_in_the_program() -> None:
    for case in CASES:
        for each in case.covers:
            assert find(each).id == each
