"""What a paper says, as blocks that know nothing of ink: headings, remarks, tables, figures, steps of working.

Views make these from a finished study; writers turn them into terminal text, HTML or a PDF. A block holds words and
recorded steps only, so one document is written the same way everywhere, and no writer ever needs to know what a house
is. What would leave a reader out is refused when the block is made: a figure without a text alternative, a table row
of the wrong length, a heading that skips a level, a reference to nothing.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from groundsill.papers.drawing import Drawing
from groundsill.papers.sheet import Scale, Sheet
from groundsill.working.sheet import Step
from groundsill.working.value import Mark

__all__ = [
    "Block",
    "BulletList",
    "Column",
    "Document",
    "Figure",
    "GroupRow",
    "Heading",
    "Inline",
    "KeyValue",
    "KeyValues",
    "NumberedList",
    "PageBreak",
    "Paragraph",
    "Reference",
    "Remark",
    "RemarkKind",
    "Run",
    "Span",
    "Status",
    "StatusWord",
    "TableBlock",
    "Working",
    "emphasis",
    "plain_text",
    "small",
    "spans",
    "strong",
]

Status = Literal["passes", "fails", "indicated", "cannot be checked", "does not apply", "depends"]
RunStyle = Literal["plain", "strong", "emphasis", "small", "code"]
RemarkKind = Literal["caution", "warning", "note"]
Align = Literal["start", "center", "end"]


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of words in one style. The words are taken literally: no markup is ever read out of them."""

    text: str
    style: RunStyle = "plain"


@dataclass(frozen=True, slots=True)
class StatusWord:
    """A verdict in words with a shape of its own beside it; colour, where a writer has any, only repeats them.

    ``words`` replaces the plain word where more must be said (``depends on tests n1 and n2``).
    """

    status: Status
    words: str = ""

    @property
    def text(self) -> str:
        """The words as printed."""
        return self.words or self.status


@dataclass(frozen=True, slots=True)
class Reference:
    """Words that lead to an anchor elsewhere in the same document."""

    text: str
    anchor: str


Span = Run | StatusWord | Reference
Inline = str | Span | tuple["str | Span", ...]


def strong(text: str) -> Run:
    """Words the eye should land on."""
    return Run(text, "strong")


def emphasis(text: str) -> Run:
    """Words said with a slight stress, in italics."""
    return Run(text, "emphasis")


def small(text: str) -> Run:
    """Words of less weight: a source, a mark of doubt."""
    return Run(text, "small")


def spans(text: Inline) -> tuple[Span, ...]:
    """The spans of a text, however it was given: a bare string is one plain run."""
    parts = text if isinstance(text, tuple) else (text,)
    return tuple(Run(part) if isinstance(part, str) else part for part in parts)


def plain_text(text: Inline) -> str:
    """The words alone."""
    return "".join(span.text for span in spans(text))


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading of level 1 to 4; ``anchor`` is what a :class:`Reference` names (any text, unique in the document)."""

    text: str
    level: int = 1
    anchor: str = ""

    def __post_init__(self) -> None:
        if self.level not in (1, 2, 3, 4):
            raise ValueError(f"heading {self.text!r}: level {self.level} is not one of 1 to 4")


@dataclass(frozen=True, slots=True)
class Paragraph:
    """A paragraph of running text."""

    text: Inline


@dataclass(frozen=True, slots=True)
class Remark:
    """Something the reader must not miss: a *caution* for the body, a *warning* about the result, a *note*."""

    kind: RemarkKind
    text: Inline
    title: str = ""


@dataclass(frozen=True, slots=True)
class BulletList:
    """Items in no order."""

    items: tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class NumberedList:
    """Items in an order, counted from ``start``."""

    items: tuple[Inline, ...]
    start: int = 1


@dataclass(frozen=True, slots=True)
class KeyValue:
    """One fact: its name, what it is, and in small type where it comes from."""

    key: str
    value: Inline
    note: Inline = ""


@dataclass(frozen=True, slots=True)
class KeyValues:
    """Facts set one under the other, names on the left."""

    rows: tuple[KeyValue, ...]
    caption: str = ""


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table: heading, unit (set under the heading), how figures stand, and a share of the width.

    ``share`` 0 lets the contents decide; columns with a share divide what is left in that proportion.
    """

    heading: str
    unit: str = ""
    align: Align = "start"
    share: float = 0.0


@dataclass(frozen=True, slots=True)
class GroupRow:
    """A row that names the rows below it, across the whole table."""

    text: Inline


Row = tuple[Inline, ...] | GroupRow


@dataclass(frozen=True, slots=True)
class TableBlock:
    """A table. Its header is repeated on every page it runs over; the first column names each row.

    ``heavy`` holds the numbers (from 0) of the rows set in strong type: a total, the governing one.
    """

    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    caption: str
    footnotes: tuple[Inline, ...] = ()
    heavy: frozenset[int] = frozenset()
    anchor: str = ""

    def __post_init__(self) -> None:
        if not self.columns:
            raise ValueError(f"table {self.caption!r} has no columns")
        for number, row in enumerate(self.rows):
            if not isinstance(row, GroupRow) and len(row) != len(self.columns):
                raise ValueError(
                    f"table {self.caption!r}: row {number} has {len(row)} cells for {len(self.columns)} columns"
                )


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing among the words, or a whole sheet on a page of its own.

    A :class:`~groundsill.papers.drawing.Drawing` is set at ``scale``, or at the largest standard scale that fits the
    page, and the scale is printed beside the caption (unless ``show_scale`` is false, for a diagram that has none).
    ``alternative`` says in words what the drawing shows, for those who cannot see it; it may not be empty.
    """

    drawing: Drawing | Sheet
    caption: str
    alternative: str
    scale: Scale | None = None
    show_scale: bool = True
    anchor: str = ""

    def __post_init__(self) -> None:
        if not self.alternative.strip():
            raise ValueError(f"figure {self.caption!r} has no alternative text: say in words what it shows")


@dataclass(frozen=True, slots=True)
class Working:
    """One recorded step of a calculation, set with its clause, formula, numbers, answer, limits and marks."""

    step: Step


@dataclass(frozen=True, slots=True)
class PageBreak:
    """What follows starts on a new page (no effect where there are no pages)."""


Block = Heading | Paragraph | Remark | BulletList | NumberedList | KeyValues | TableBlock | Figure | Working | PageBreak


@dataclass(frozen=True, slots=True)
class Document:
    """A whole paper.

    ``header`` and ``header_end`` run along the top of every page (the house; the program and its version), ``footer``
    along the bottom beside the page number. ``stamp`` lines stand under the title: what this was made from.
    ``contents`` is the depth of the table of contents, 0 for none. With ``numbered`` the headings carry numbers.
    ``marks`` gives marks of doubt their numbers, from 1, so that a list and the steps of working agree; a mark that is
    not in it gets the next number where a step first shows it.
    """

    title: str
    blocks: tuple[Block, ...]
    subtitle: str = ""
    language: str = "en-US"
    header: str = ""
    header_end: str = ""
    footer: str = ""
    stamp: tuple[str, ...] = ()
    contents: int = 0
    numbered: bool = True
    marks: tuple[Mark, ...] = ()
    paper: Literal["letter", "a4"] = "letter"

    def __post_init__(self) -> None:
        if not self.title.strip():
            raise ValueError("a document needs a title")
        level = 0
        for block in self.blocks:
            if isinstance(block, Heading):
                if block.level > level + 1:
                    raise ValueError(f"heading {block.text!r}: level {block.level} follows level {level}")
                level = block.level
        named = Counter(b.anchor for b in self.blocks if isinstance(b, (Heading, TableBlock, Figure)) and b.anchor)
        twice = sorted(anchor for anchor, times in named.items() if times > 1)
        if twice:
            raise ValueError(f"anchors used twice: {', '.join(twice)}")
        for span in _all_spans(self.blocks):
            if isinstance(span, Reference) and span.anchor not in named:
                raise ValueError(f"reference {span.text!r} leads to {span.anchor!r}, which is nowhere in the document")


def _texts(block: Block) -> Iterator[Inline]:
    """Every inline text of a block."""
    match block:
        case Paragraph(text) | Remark(_, text):
            yield text
        case BulletList(items) | NumberedList(items):
            yield from items
        case KeyValues(rows):
            for fact in rows:
                yield fact.value
                yield fact.note
        case TableBlock():
            for row in block.rows:
                if isinstance(row, GroupRow):
                    yield row.text
                else:
                    yield from row
            yield from block.footnotes


def _all_spans(blocks: tuple[Block, ...]) -> Iterator[Span]:
    for block in blocks:
        for text in _texts(block):
            if not isinstance(text, str):
                yield from spans(text)
