"""The daggers: every mark of doubt in a paper has one number, wherever it stands beside a figure.

The numbers follow the list the daggers lead to, kind by kind; the document hands them to its writers, so that ``†7`` in
a table and ``[7]`` under a step are the same doubt.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from groundsill.papers.document import Block, Column, GroupRow, Inline, Paragraph, Row, TableBlock
from groundsill.papers.views.words import counted
from groundsill.study import Manifest
from groundsill.working.value import Mark, MarkKind

__all__ = ["DOUBTS_ANCHOR", "Doubts", "doubt_blocks", "numbered_doubts"]

DOUBTS_ANCHOR = "doubts"

_KINDS: dict[MarkKind, str] = {
    "from memory": "From memory, to be confirmed: recalled, not read in a named public source",
    "unverified": "Unverified formulas: no worked value from outside this program holds them yet",
    "extension": "Extensions: used beyond what the document says it holds for",
    "assumed range": "Assumed ranges: taken from what is usual for the age and material, not measured here",
    "estimated": "Estimated in the survey",
}


@dataclass(frozen=True, slots=True)
class Doubts:
    """The number of every mark in one paper, in order; without numbers a dagger stands alone."""

    numbers: Mapping[Mark, int] = field(default_factory=dict)

    @property
    def marks(self) -> tuple[Mark, ...]:
        """The marks in the order of their numbers, as a document hands them to its writers."""
        return tuple(self.numbers)

    def dagger(self, marks: Iterable[Mark]) -> str:
        """What stands beside a figure that carries these marks: ``†2, 5–8``, or nothing."""
        found = set(marks)
        if not found:
            return ""
        runs = _runs(sorted(self.numbers[mark] for mark in found if mark in self.numbers))
        return "†" + ", ".join(runs)


def _runs(numbers: list[int]) -> list[str]:
    """Numbers with three or more in a row drawn together: 2, 5–8."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    found = []
    for run in runs:
        found.extend([f"{run[0]}–{run[-1]}"] if len(run) > 2 else [str(n) for n in run])
    return found


def numbered_doubts(marks: Iterable[Mark]) -> Doubts:
    """Number marks in the order of the list: by kind, then by what is in doubt."""
    kinds = list(_KINDS)
    ordered = sorted(set(marks), key=lambda mark: (kinds.index(mark.kind), mark.what))
    return Doubts({mark: number for number, mark in enumerate(ordered, start=1)})


def doubt_blocks(doubts: Doubts, manifest: Manifest) -> tuple[Block, ...]:
    """The list that the daggers lead to, by kind; what the study names without a numbered mark closes each kind."""
    rows: list[Row] = []
    told: dict[MarkKind, tuple[str, ...]] = {
        "from memory": manifest.from_memory,
        "unverified": manifest.unverified,
        "assumed range": manifest.assumed,
    }
    known = {mark.what for mark in doubts.numbers}
    for kind, words in _KINDS.items():
        marks = sorted((n, mark.what) for mark, n in doubts.numbers.items() if mark.kind == kind)
        more = [what for what in told.get(kind, ()) if what not in known]
        if marks or more:
            rows.append(GroupRow(f"{words} ({len(marks) + len(more)})"))
            rows.extend((f"†{n}", what) for n, what in marks)
            rows.extend(("†", what) for what in more)
    if not rows:
        return (Paragraph("No figure in this package carries a mark of doubt."),)
    count = sum(not isinstance(row, GroupRow) for row in rows)
    lead: Inline = (
        f"A dagger beside a figure means that it depends on one of the {counted(count, 'doubtful figure')} below; "
        "the number is the same here, in the tables and under the steps of working. A figure with a dagger is not "
        "wrong; it has not been confirmed."
    )
    columns = (Column("Mark", share=0.12), Column("What is in doubt", share=1.0))
    return (
        Paragraph(lead),
        TableBlock(columns, tuple(rows), "Figures in doubt", anchor=DOUBTS_ANCHOR),
    )
