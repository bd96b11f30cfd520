"""A recorded step, arranged the way a textbook sets it, before any writer inks it.

The recorded lines repeat the symbol on the left of each equals sign; here they are gathered into one derivation
(symbol = formula = numbers = answer), with the remarks in small type kept apart. The figures and the mathematics are
the recorded ones; nothing is worked out here.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from groundsill.papers.document import Document
from groundsill.working.explain import Line
from groundsill.working.mathtree import Math, Relation
from groundsill.working.sheet import Step
from groundsill.working.value import Mark

__all__ = ["Derivation", "MarkNumbers", "SetStep", "Small", "set_step"]


@dataclass(frozen=True, slots=True)
class Derivation:
    """What stands before the first equals sign, and what follows each: formula, numbers put in, answer."""

    name: Math
    sides: tuple[Math, ...]


@dataclass(frozen=True, slots=True)
class Small:
    """A line of small type: what governed, a limit, the table row read. ``math`` stands before the words."""

    word: str
    math: Math | None
    text: str


@dataclass(frozen=True, slots=True)
class SetStep:
    """One step ready to be inked. ``rank`` says how much room it takes.

    ``heading`` opens a procedure, ``full`` has derivations under a title, ``fact`` is one line (a figure and where it
    comes from), ``words`` is a sentence only.
    """

    rank: str
    cite: str
    title: str
    parts: tuple[Derivation | Small, ...]
    marks: tuple[str, ...]
    depth: int


@dataclass(slots=True)
class MarkNumbers:
    """The numbers that marks of doubt carry in one document: those it gives itself, then others as they first appear.

    A mark is told in full the first time; later steps repeat its kind and number, so that the doubt is never out of
    sight and never drowns the numbers.
    """

    known: dict[Mark, int]
    told: set[Mark] = field(default_factory=set)

    @classmethod
    def of(cls, document: Document) -> MarkNumbers:
        """The numbers a document gives beforehand."""
        return cls({mark: number for number, mark in enumerate(dict.fromkeys(document.marks), start=1)})

    def lines(self, marks: Iterable[Mark]) -> tuple[str, ...]:
        """The lines printed under one step: new marks in full, then the others by kind and number."""
        full, again = [], []
        for mark in sorted(marks):
            number = self.known.setdefault(mark, len(self.known) + 1)
            if mark in self.told:
                again.append(f"{mark.kind} [{number}]")
            else:
                self.told.add(mark)
                full.append(f"[{number}] {mark.text()}")
        return (*full, "; ".join(again)) if again else tuple(full)


_WORDS = {"governs": "", "limit": "Limit:", "row": "Row read:", "condition": "", "note": ""}


def set_step(step: Step, numbers: MarkNumbers) -> SetStep:
    """Arrange one recorded step; ``numbers`` are the document's own."""
    parts = tuple(_parts(step.lines))
    marks = numbers.lines(step.marks)
    if step.kind == "procedure":
        rank = "heading"
    elif step.kind in ("given", "convert") or (step.kind == "sum" and not step.title):
        rank = "fact"
    elif step.kind in ("condition", "note"):
        rank = "words"
    else:
        rank = "full"
    # a condition's sentence is its line, and a note's its title: neither is printed twice
    title = "" if rank == "words" else step.title
    return SetStep(rank, step.cite, title, parts, marks, step.depth)


def _parts(lines: tuple[Line, ...]) -> list[Derivation | Small]:
    parts: list[Derivation | Small] = []
    for line in lines:
        if line.kind in ("formula", "numbers", "answer") and isinstance(line.math, Relation):
            _join(parts, line.kind, line.math)
        else:
            parts.append(Small(_WORDS.get(line.kind, ""), line.math, line.text))
    return parts


def _join(parts: list[Derivation | Small], kind: str, relation: Relation) -> None:
    """Add a relation to the derivation before it when that is of the same symbol, else begin a new one.

    A formula always begins anew. The line of numbers ends with the answer, which the answer line would repeat.
    """
    name, *sides = relation.terms
    last = parts[-1] if parts else None
    if kind == "formula" or not isinstance(last, Derivation) or last.name != name:
        parts.append(Derivation(name, tuple(sides)))
        return
    new = tuple(side for side in sides if side not in last.sides)
    parts[-1] = Derivation(name, last.sides + new)
