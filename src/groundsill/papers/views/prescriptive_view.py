"""The prescriptive way beside the engineered one on paper: the scope test, then line by line what each way asks.

It stands apart from the chains and lends them no verdict; the words of its answers are its own (*meets*, *short*,
*cannot tell*), and none of the shapes that a checked link has is printed here.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from groundsill.loadpath.prescriptive import NEVER_A_PASS, PrescriptiveLine, PrescriptivePath, Requirement
from groundsill.papers.document import (
    Block,
    BulletList,
    Column,
    Heading,
    Inline,
    Paragraph,
    Remark,
    Row,
    TableBlock,
    strong,
)
from groundsill.papers.views.doubts import Doubts
from groundsill.papers.views.words import DASH, Units, counted, ratio, sentence, tape, with_doubt
from groundsill.papers.views.working_view import Printed, steps_of, working_blocks
from groundsill.working.sheet import Sheet
from groundsill.working.value import Mark

__all__ = [
    "both_ways_blocks",
    "line_told",
    "remarks_blocks",
    "requirement_told",
    "scope_blocks",
    "within_words",
    "worked_blocks",
]

_WITHIN = {
    "in": "The house as found stands within the prescriptive way",
    "out": "The house as found, or a part of it, stands outside the prescriptive way",
    "cannot tell": "Whether the house as found stands within the prescriptive way cannot be told",
}
_OTHERS = ("ends", "room", "steps", "vents", "holes", "wood", "blocking", "clips")
_HEADS = {
    "ends": "Panel at each end",
    "room": "Room for panels",
    "steps": "Straps at steps",
    "vents": "Vents in panels",
    "holes": "Holes in stud spaces",
    "wood": "Sound sills",
    "blocking": "Joists blocked",
    "clips": "Floor nailed",
}


def within_words(path: PrescriptivePath) -> str:
    """Whether the house stands within the prescriptive way, and by whose rules, in one sentence."""
    return f"{_WITHIN[path.within]} ({path.name})"


def scope_blocks(path: PrescriptivePath, doubts: Doubts) -> Iterator[Block]:
    """What the prescriptive way is, by whose rules, whether the house stands within it, and what it is for."""
    yield Paragraph(
        "Beside the engineered load path the existing-building code has a prescriptive way: so much panel for the "
        "length of a wall line, so many bolts for a piece of sill, no force worked out. It is told here by "
        f"{path.name} ({path.why}). Both ways stand side by side on every line, so that a reader sees where they part."
    )
    yield Remark("warning", sentence(NEVER_A_PASS), "A prescriptive pass is not an engineered pass")
    yield Paragraph(strong(sentence(within_words(path))))
    rows: tuple[Row, ...] = tuple(
        (
            sentence(item.asks),
            strong(item.outcome) if item.outcome != "in" else item.outcome,
            sentence(item.reason),
            with_doubt(item.clause, doubts.dagger(item.marks)),
        )
        for item in path.scope
    )
    columns = (Column("Item", share=1.2), Column("Answer"), Column("The house", share=1.2), Column("Clause"))
    yield TableBlock(columns, rows, "Scope of the prescriptive way, item by item")
    rows = tuple((sentence(weak.says), weak.outcome, sentence(weak.reason), weak.clause) for weak in path.weaknesses)
    columns = (Column("Weakness", share=1.2), Column("Answer"), Column("The house", share=1.2), Column("Clause"))
    yield TableBlock(columns, rows, "The weaknesses it is for, in the house as found")


def both_ways_blocks(state: str, lines: Sequence[PrescriptiveLine], units: Units, doubts: Doubts) -> Iterator[Block]:
    """One state: the table of both ways, then what else the prescriptive way asks of each line."""
    if not lines:
        yield Paragraph("The survey has no perimeter line.")
        return
    yield _both_table(state, lines, units, doubts)
    yield _bolts_table(state, lines)
    yield _others_table(state, lines)


def _both_table(state: str, lines: Sequence[PrescriptiveLine], units: Units, doubts: Doubts) -> TableBlock:
    marked = [frozenset(line.both.marks) for line in lines if line.both.ratio_full is not None]
    common = frozenset[Mark]().union(*marked).intersection(*marked)
    rows = tuple(_both_row(line, units, doubts, common) for line in lines)
    heavy = frozenset(n for n, line in enumerate(lines) if _fails(line))
    share = f"{100 * lines[0].both.reduced:.0f} %"
    columns = (
        Column("Line", share=1.2),
        Column("Within"),
        Column("Panel", "asked", "end"),
        Column("Panel", "there", "end"),
        Column("Bolts", "asked", "end"),
        Column("Bolts", "there", "end"),
        Column("Engineered", "full force", "end"),
        Column("Engineered", share, "end"),
        Column("Panel asked", "at full force", share=1.0),
    )
    told: list[Inline] = [
        "Engineered: the length of the same panel, 15/32 in. with 8d common nails 4 in. apart, whose allowable unit "
        "shear takes all of the line's force, up to the next inch. The last column holds panels of the prescriptive "
        "length against the full force of a new building: demand over capacity of the sheathing alone.",
    ]
    if shared := doubts.dagger(common):
        told.append(f"† alone: the figures rest on {shared}, as in every line here.")
    told += _not_within(lines)
    return TableBlock(columns, rows, f"Both ways, line by line, {state}", tuple(told), heavy)


def _not_within(lines: Sequence[PrescriptiveLine]) -> Iterator[str]:
    """Which lines the prescriptive way does not reach, or may not, and why; alike ones together."""
    reasons: dict[str, list[str]] = {}
    for line in lines:
        if line.within != "in":
            reasons.setdefault(f"{line.within}: {sentence(line.within_reason)}", []).append(line.mark or line.line)
    if any(line.within == "out" for line in lines):
        yield "In brackets: what the table would ask of a line that the prescriptive way does not reach."
    for words, marks in reasons.items():
        yield f"{', '.join(marks)} {words}"


def _bracketed(words: str, line: PrescriptiveLine) -> str:
    """A figure of the table that does not apply to a line stands in brackets."""
    return f"({words})" if line.within == "out" and words != DASH else words


def _both_row(line: PrescriptiveLine, units: Units, doubts: Doubts, common: frozenset[Mark]) -> Row:
    both = line.both
    bracing, bolts = (_whole(line, key) for key in ("bracing", "bolts"))
    dagger = doubts.dagger(frozenset(both.marks) - common) or ("†" if both.marks else "")
    return (
        f"{line.mark} {line.name}".strip(),
        line.within,
        _bracketed(_up(both.prescriptive_ft, units), line),
        _there(bracing, units),
        _bracketed(_number(bolts.asked if bolts else None), line),
        _number(bolts.has if bolts else None),
        with_doubt(_up(both.engineered_full_ft, units), dagger if both.engineered_full_ft is not None else ""),
        _up(both.engineered_reduced_ft, units),
        _at_full(line),
    )


def _whole(line: PrescriptiveLine, key: str) -> Requirement | None:
    """The requirement for the whole line (bolts are asked piece by piece as well)."""
    return next((each for each in line.requirements if each.key == key), None)


def _there(bracing: Requirement | None, units: Units) -> str:
    return DASH if bracing is None or bracing.has is None else tape(12 * bracing.has, units)


def _number(count: float | None) -> str:
    return DASH if count is None else f"{count:.0f}"


def _up(length_ft: float | None, units: Units) -> str:
    """A length that is needed, up to the next whole inch."""
    if length_ft is None:
        return DASH
    return tape(math.ceil(12 * length_ft - 0.01) if units == "us" else 12 * length_ft, units)


def _fails(line: PrescriptiveLine) -> bool:
    return line.both.ratio_full is not None and line.both.ratio_full > 1


def _at_full(line: PrescriptiveLine) -> str:
    """What panels of the prescriptive length come to at full force, in the words of a reader."""
    both = line.both
    if both.ratio_full is None:
        return both.why_not or DASH
    if both.ratio_full <= 1:
        return f"would carry it, {ratio(both.ratio_full)}"
    return f"would fail, {ratio(both.ratio_full)}"


def _others_table(state: str, lines: Sequence[PrescriptiveLine]) -> TableBlock:
    """A row for every line, a column for every other thing asked; reasons stand under it by number."""
    keys = [key for key in _OTHERS if any(_whole(line, key) for line in lines)]
    notes: dict[str, int] = {}
    rows = tuple(
        (line.mark or line.line, _panels(line), *(_answer(_whole(line, key), notes) for key in keys)) for line in lines
    )
    columns = (Column("Line"), Column("Panels"), *(Column(_HEADS[key], share=1.0) for key in keys))
    told = [f"{n}  {words}" for words, n in notes.items()]
    told += [f"Panels, {line.mark or line.line}: {sentence(each.reason)}" for line, each in _bracings(lines)]
    return TableBlock(columns, rows, f"What else the prescriptive way asks, {state}", tuple(told))


def _bolts_table(state: str, lines: Sequence[PrescriptiveLine]) -> TableBlock:
    """Every piece of sill with its bolts, asked and there, and what they lack."""
    rows: tuple[Row, ...] = tuple(
        (
            line.mark or line.line,
            each.where or DASH,
            _number(each.asked),
            _number(each.has),
            each.outcome,
            sentence(each.reason),
        )
        for line in lines
        for each in _pieces(line)
    )
    columns = (
        Column("Line"),
        Column("Piece of sill"),
        Column("Bolts", "asked", "end"),
        Column("Bolts", "there", "end"),
        Column("Answer"),
        Column("What is asked of them, and what they lack", share=1.0),
    )
    note = (
        "Old bolts count beside new ones here once they have a plate washer and a tight nut; the engineered chain does "
        "not add old bolts to new."
    )
    return TableBlock(columns, rows, f"Sill bolts by the prescriptive way, {state}", (note,))


def _panels(line: PrescriptiveLine) -> str:
    """How many panels a line's bracing may be made of, and the least length of one."""
    if line.least_panel_ft is None:
        return DASH
    few, many = line.fewest_panels, line.most_panels
    count = "" if few is None else f"{few} of " if few == many else f"{few} to {many} of "
    return f"{count}{tape(12 * line.least_panel_ft)} or more"


def _pieces(line: PrescriptiveLine) -> list[Requirement]:
    """What is asked of each piece of sill, or of the line where no piece was surveyed."""
    bolts = [each for each in line.requirements if each.key == "bolts"]
    return [each for each in bolts if each.where] or bolts


def _bracings(lines: Sequence[PrescriptiveLine]) -> list[tuple[PrescriptiveLine, Requirement]]:
    found = [(line, _whole(line, "bracing")) for line in lines]
    return [(line, each) for line, each in found if each is not None and each.has]


def _answer(each: Requirement | None, notes: dict[str, int]) -> str:
    if each is None or each.outcome == "does not apply":
        return DASH
    number = f" ({notes.setdefault(sentence(each.reason), len(notes) + 1)})" if each.outcome != "meets" else ""
    words = f"{each.asked:.0f}, {each.outcome}" if each.key == "holes" and each.asked is not None else each.outcome
    return f"{words}{number}"


def worked_blocks(
    lines: Sequence[PrescriptiveLine], sheet: Sheet | None, printed: Printed, doubts: Doubts
) -> Iterator[Block]:
    """The arithmetic of both ways, line by line."""
    for line in lines:
        steps = steps_of(sheet, [f"line/{line.line}/prescriptive/{key}" for key in ("bracing", "both")])
        if steps:
            place, name = f"prescriptive/{line.line}", f"{line.mark}, both ways"
            yield Heading(f"{line.mark} {line.name}".strip(), 3, place)
            yield from working_blocks(steps, place, name, printed, doubts)


def remarks_blocks(path: PrescriptivePath) -> Iterator[Block]:
    """What the prescriptive way asks beyond what the file of a house can hold."""
    yield BulletList(tuple(sentence(words) for words in path.remarks[1:]))


def requirement_told(each: Requirement) -> str:
    """One requirement in one sentence for the terminal: its answer, what is asked, what is there, and why."""
    name = _HEADS.get(each.key, {"bracing": "Panel"}.get(each.key, each.key)).lower()
    amounts = []
    for number, word in ((each.asked, "asked"), (each.has, "there")):
        if number is not None:
            amounts.append(f"{tape(12 * number) if each.unit == 'ft' else _number(number)} {word}")
    told = ", ".join(filter(None, (name, each.where, *amounts)))
    return sentence(f"{each.outcome}: {told}: {each.reason} ({each.clause})")


def line_told(line: PrescriptiveLine) -> str:
    """One line in one sentence for the terminal: both ways, then what is there."""
    bracing, bolts = (_whole(line, key) for key in ("bracing", "bolts"))
    there = []
    if bracing is not None and bracing.has is not None:
        there.append(f"{tape(12 * bracing.has)} of panel that counts")
    if bolts is not None and bolts.asked is not None:
        there.append(f"{_number(bolts.has)} of {counted(round(bolts.asked), 'bolt')}")
    return sentence("; there: ".join(filter(None, (line.headline, " and ".join(there)))))
