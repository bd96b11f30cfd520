"""One line asked one thing after another: what every requirement of the prescriptive way needs to be worked out."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from groundsill.forces.reading import Reading
from groundsill.house.underfloor import Line
from groundsill.loadpath.prescriptive.result import Answer, Requirement
from groundsill.loadpath.prescriptive.walls import Measures
from groundsill.standards.iebc_2021.cripple_walls import provision
from groundsill.standards.iebc_2021.rules import Rules
from groundsill.work.pieces import Piece
from groundsill.working.measure import show
from groundsill.working.value import Mark, marks_of

__all__ = ["Asking", "by_number", "feet", "feet_up", "inches"]


@dataclass(frozen=True, slots=True)
class Asking:
    """A line in one state of the house, with the rules it is asked by; ``heavy`` is the table's heavier column."""

    reading: Reading
    rules: Rules
    id: str
    line: Line
    measures: Measures
    heavy: bool
    pieces: Sequence[tuple[str, Piece]]

    def address(self, key: str, part: str = "") -> str:
        """Where the working of a requirement stands: a section of the sheet."""
        return f"line/{self.id}/prescriptive/{key}{f'/{part}' if part else ''}"

    def of_kind(self, kind: type) -> list[tuple[str, Any]]:
        """The pieces of work of one kind on this line."""
        return [(id, piece) for id, piece in self.pieces if isinstance(piece, kind)]

    def told(
        self,
        key: str,
        rule: str,
        answer: Answer,
        reason: str,
        asked: float | None = None,
        has: float | None = None,
        unit: str = "1",
        marks: Iterable[Mark] = (),
        part: str = "",
        where: str = "",
    ) -> Requirement:
        """A requirement with the clause and words of its rule; a rule that was recalled carries its mark."""
        found = provision(rule)
        own = {Mark("from memory", f"{found.cite}, the rule")} if found.how == "from memory" else set()
        doubts = own.union(marks, marks_of((asked, has)))
        return Requirement(
            self.address(key, part),
            key,
            found.clause,
            found.says,
            where,
            answer,
            reason,
            None if asked is None else float(asked),
            None if has is None else float(has),
            unit,
            tuple(sorted(doubts)),
        )


def by_number(asked: float, has: float, unsure: float = 0.0, within: float = 1e-6) -> Answer:
    """The answer for an amount: what may be there but was not seen leaves it untold where it would decide."""
    if has >= asked - within:
        return "meets"
    return "cannot tell" if has + unsure >= asked - within else "short"


def feet(inches: float) -> str:
    """A length as the trade says it: ``13'-3"``."""
    return show(float(inches), "length", "in", style="ft-in")


def feet_up(length_ft: float) -> str:
    """A length that is needed, up to the next whole inch: ``13'-3"``."""
    return feet(math.ceil(12 * float(length_ft) - 0.01))


def inches(size: float) -> str:
    """A small size as the trade says it: ``5/8 in``."""
    return show(float(size), "length", "in", style="in")
