"""Running a command in this process, as a person would type it, and looking at all that came of it."""

from __future__ import annotations

import json
import re
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from groundsill.cli.run import run
from groundsill.doors.study_json import schema

ROOT = Path(__file__).resolve().parents[2]


@dataclass(frozen=True, slots=True)
class Said:
    """What came of a command: exit code, stdout, stderr."""

    code: int
    out: str
    err: str

    @property
    def faults(self) -> list[str]:
        """The numbered lines on stderr (on a slow machine a line of progress may stand among them)."""
        return [line for line in self.err.splitlines() if re.match(r"\d+\. |\.\.\. and ", line)]

    @property
    def json(self) -> dict[str, Any]:
        """The answer as JSON; it must fit the published schema."""
        answer: dict[str, Any] = json.loads(self.out, parse_constant=_no_such_number)
        validator().validate(answer)
        return answer

    @property
    def flat(self) -> str:
        """The answer on one line, as a reader's eye joins wrapped words."""
        return " ".join(self.out.split())


class Asker:
    """Asks commands in this process at a width of 80 columns."""

    def __init__(self, captured: pytest.CaptureFixture[str]) -> None:
        self._captured = captured

    def __call__(self, *words: object) -> Said:
        self._captured.readouterr()
        code = run([str(word) for word in words])
        out, err = self._captured.readouterr()
        return Said(code, out, err)


@cache
def validator() -> jsonschema.Draft202012Validator:
    return jsonschema.Draft202012Validator(schema())


def _no_such_number(text: str) -> Any:
    raise AssertionError(f"{text} stands in the JSON")
