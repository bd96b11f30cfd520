"""What every ``--json`` gives, as classes: each answer says which format and which kind of answer it is.

All of them carry ``format: groundsill.study/1`` and one schema describes them all (:mod:`groundsill.doors.study_json`).
Nothing is worked out here.
"""

from __future__ import annotations

from dataclasses import dataclass, fields
from typing import Any, Final, Literal

from groundsill.doors.plain import plain
from groundsill.house.missing import Missing
from groundsill.working.errors import MOST_FAULTS_SHOWN, BadSurvey, GroundsillError
from groundsill.working.sheet import Step
from groundsill.working.value import Mark

__all__ = [
    "FORMAT",
    "KINDS",
    "Argument",
    "Checked",
    "Document",
    "ErratumTold",
    "FaultTold",
    "Faults",
    "FormulaCard",
    "FormulaLine",
    "FormulaList",
    "FormulaWorked",
    "LineTold",
    "Result",
    "StepTold",
    "TableFigures",
    "Written",
    "faults_answer",
    "step_told",
    "to_map",
]

FORMAT: Final = "groundsill.study/1"


@dataclass(frozen=True, slots=True)
class FaultTold:
    """One fault: field path, value as written, what is allowed; ``line`` is the sentence on stderr."""

    path: str
    value: str
    allowed: str
    line: str


@dataclass(frozen=True, slots=True)
class Faults:
    """Bad input (exit code 2): the faults as on stderr, at most fifty, and how many more there are."""

    faults: tuple[FaultTold, ...]
    more: int


@dataclass(frozen=True, slots=True)
class Checked:
    """A sound survey file, and what it still lacks for a load path."""

    file: str
    name: str
    holds: dict[str, int]
    missing: tuple[Missing, ...]


@dataclass(frozen=True, slots=True)
class Written:
    """Files that were written, and the headline of every line where a study was made."""

    files: tuple[str, ...]
    headlines: dict[str, str]


# ---- Formulas -------------------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Document:
    """A published document in one edition."""

    id: str
    short: str
    title: str
    publisher: str
    edition: str
    superseded_by: str | None


@dataclass(frozen=True, slots=True)
class FormulaLine:
    """One formula or table in a list. ``status`` says how it is known, in words."""

    id: str
    kind: Literal["equation", "procedure", "table"]
    alias: str
    title: str
    cite: str
    document: str
    status: str


@dataclass(frozen=True, slots=True)
class FormulaList:
    """Formulas and tables that fit the words asked for (all of them for no words)."""

    words: str
    documents: tuple[Document, ...]
    formulas: tuple[FormulaLine, ...]


@dataclass(frozen=True, slots=True)
class Argument:
    """One argument: the name to type, its symbol, unit, meaning and limits; ``default`` stands when it is left out.

    ``takes`` is ``number``, ``words``, ``yes or no`` or ``list``; ``required`` is false where it may be left out.
    """

    name: str
    symbol: str
    unit: str
    what: str
    limits: str
    takes: str
    required: bool
    default: str


@dataclass(frozen=True, slots=True)
class ErratumTold:
    """A place where what a document prints and what the program uses differ, and why."""

    place: str
    printed: str
    used: str
    why: str


@dataclass(frozen=True, slots=True)
class TableFigures:
    """The figures of a table, row by row; a text stands where the document prints no figure."""

    row_key: str
    column_key: str
    columns: tuple[float | str, ...]
    units: tuple[str, ...]
    rows: dict[str, tuple[float | str, ...]]
    sources: tuple[str, ...]
    from_memory: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FormulaCard:
    """Everything about one formula or table but a worked answer."""

    id: str
    kind: Literal["equation", "procedure", "table"]
    alias: str
    title: str
    clause: str
    source: Document | None
    status: str
    witness: str
    arguments: tuple[Argument, ...]
    gives: str
    expression: tuple[str, ...]
    specification: str
    errata: tuple[ErratumTold, ...]
    figures: TableFigures | None


@dataclass(frozen=True, slots=True)
class LineTold:
    """One line of working: formula, numbers put in, answer, what governs, limit, row read, condition or note."""

    kind: str
    text: str


@dataclass(frozen=True, slots=True)
class StepTold:
    """One recorded step: what it is, where it is printed, its lines, its answer, and the doubts it carries."""

    kind: str
    id: str
    title: str
    cite: str
    depth: int
    symbol: str
    value: float | None
    unit: str
    lines: tuple[LineTold, ...]
    marks: tuple[Mark, ...]


@dataclass(frozen=True, slots=True)
class Result:
    """One number, word or list that a formula gives."""

    name: str
    symbol: str
    value: float | str | bool | tuple[float | str, ...] | None
    unit: str


@dataclass(frozen=True, slots=True)
class FormulaWorked:
    """A formula worked out: ``value`` and ``unit`` of its chief answer, every answer, every step, every doubt."""

    id: str
    title: str
    value: float | str | bool | None
    unit: str
    results: tuple[Result, ...]
    understood: dict[str, str]
    steps: tuple[StepTold, ...]
    source: Document | None
    clause: str
    marks: tuple[Mark, ...]
    warnings: tuple[str, ...]


def step_told(step: Step) -> StepTold:
    """A recorded step as it is told to machines."""
    from groundsill.working.render import as_text

    lines = tuple(
        LineTold(line.kind, " ".join(part for part in (as_text(line.math) if line.math else "", line.text) if part))
        for line in step.lines
    )
    result = step.result
    symbol, value, unit = (result.symbol, float(result), result.unit) if result is not None else ("", None, "")
    return StepTold(
        step.kind, step.id, step.title, step.cite, step.depth, symbol, value, unit, lines, tuple(sorted(step.marks))
    )


def faults_answer(refused: GroundsillError) -> Faults:
    """A refusal as it is told to machines: the same list as the numbered lines."""
    if isinstance(refused, BadSurvey):
        told = tuple(FaultTold(f.path, f.value, f.allowed, f.line()) for f in refused.faults[:MOST_FAULTS_SHOWN])
        return Faults(told, max(0, len(refused.faults) - MOST_FAULTS_SHOWN))
    return Faults((FaultTold("", "", "", str(refused)),), 0)


# What each answer is called in its ``answer`` field, by its class; those about a house live in ``house_answers``.
KINDS: Final[dict[str, str]] = {
    "Checked": "checked",
    "Comparison": "comparison",
    "Faults": "faults",
    "FindingsTold": "findings",
    "ForcesTold": "forces",
    "FormulaCard": "formula",
    "FormulaList": "formulas",
    "FormulaWorked": "formula worked",
    "HazardTold": "hazard",
    "Study": "study",
    "Summary": "summary",
    "WorkingTold": "working",
    "Written": "written",
}


def to_map(answer: Any) -> dict[str, Any]:
    """An answer as a JSON object, with its format and its kind in front.

    Raises:
        ValueError: for a number that is not finite, naming its place.
    """
    kind = KINDS[type(answer).__name__]
    body = {f.name: plain(getattr(answer, f.name), f.name) for f in fields(answer)}
    return {"format": FORMAT, "answer": kind} | {name: part for name, part in body.items() if name != "format"}
