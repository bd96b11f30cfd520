"""The study as JSON, and the one schema that describes every ``--json`` of this program.

``schema/study.schema.json`` is written by ``python -m groundsill.doors.study_json`` and checked in; a test holds it to
the classes. Within ``groundsill.study/1`` fields may be added and are never taken away or given another meaning.
"""

from __future__ import annotations

from groundsill.doors.answers import (
    FORMAT,
    KINDS,
    Checked,
    Faults,
    FormulaCard,
    FormulaList,
    FormulaWorked,
    Written,
    to_map,
)
from groundsill.doors.hazard_answers import HazardTold
from groundsill.doors.house_answers import FindingsTold, ForcesTold, Summary, WorkingTold
from groundsill.doors.plain import Plain, defs_of, text_of
from groundsill.study import Study
from groundsill.study.compare import Comparison

__all__ = ["schema", "schema_text", "study_text"]

_ANSWERS = (
    Checked, Comparison, Faults, FindingsTold, ForcesTold, FormulaCard, FormulaList, FormulaWorked, HazardTold, Study,
    Summary, WorkingTold, Written,
)  # fmt: skip


def study_text(study: Study) -> str:
    """A study as JSON text.

    Raises:
        ValueError: for a number that is not finite, naming its place.
    """
    return text_of(to_map(study))


def schema() -> dict[str, Plain]:
    """The JSON Schema of every answer: one of them, told apart by ``answer``."""
    defs = defs_of(*_ANSWERS)
    for cls in _ANSWERS:
        told = defs[cls.__name__]
        own = {name: part for name, part in told["properties"].items() if name != "format"}
        told["properties"] = {"format": {"const": FORMAT}, "answer": {"const": KINDS[cls.__name__]}} | own
        told["required"] = list(told["properties"])
    for told in defs.values():
        told.pop("$comment")
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Groundsill's answers, version 1",
        "description": "What --json of every command gives. Within this version fields may be added, never taken away.",
        "oneOf": [{"$ref": f"#/$defs/{cls.__name__}"} for cls in _ANSWERS],
        "$defs": defs,
    }


def schema_text() -> str:
    """The schema as it is checked in."""
    return text_of(schema())


if __name__ == "__main__":
    print(schema_text(), end="")
