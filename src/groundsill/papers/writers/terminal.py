"""A document as text: plain, of a given width, for a file or a pipe; or in the terminal's own styles.

Both are the same layout. Rich lays out the tables and measures wide letters; it is never given markup, and control
codes in anybody's words are written out, so that a survey cannot drive the reader's terminal.
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from typing import TYPE_CHECKING

from groundsill.papers.document import (
    Block,
    BulletList,
    Document,
    Figure,
    GroupRow,
    Heading,
    Inline,
    KeyValues,
    NumberedList,
    PageBreak,
    Paragraph,
    Reference,
    Remark,
    StatusWord,
    TableBlock,
    Working,
    plain_text,
    spans,
)
from groundsill.papers.writers.escape import clean
from groundsill.papers.writers.numbering import numbered
from groundsill.papers.writers.shapes import SIGNS
from groundsill.papers.writers.steps import Derivation, MarkNumbers, SetStep, Small, set_step
from groundsill.working.render import as_text

if TYPE_CHECKING:
    from rich.console import Console, RenderableType
    from rich.table import Table
    from rich.text import Text

__all__ = ["print_document", "to_text"]

_STYLES = {"plain": "", "strong": "bold", "emphasis": "italic", "small": "dim", "code": ""}


def to_text(document: Document, width: int = 80) -> str:
    """The document as plain text, no line wider than ``width`` (20 columns at least), no colour, no control codes."""
    from rich.console import Console

    out = io.StringIO()
    console = Console(
        file=out,
        width=max(width, 20),
        color_system=None,
        force_terminal=False,
        legacy_windows=False,
        emoji=False,
        markup=False,
        highlight=False,
        _environ={},
    )
    print_document(document, console)
    lines = [line.rstrip() for line in out.getvalue().splitlines()]
    return "\n".join(lines).strip("\n") + "\n"


def print_document(document: Document, console: Console) -> None:
    """Print the document on a Rich console, in whatever styles it has."""
    for part in _document(document):
        console.print(part, soft_wrap=False)


def _document(document: Document) -> Iterator[RenderableType]:
    from rich.rule import Rule
    from rich.text import Text

    yield Text(clean(document.title), style="bold")
    if document.subtitle:
        yield Text(clean(document.subtitle), style="italic")
    for line in document.stamp:
        yield Text(clean(line), style="dim")
    yield Rule(characters="─", style="dim")
    marks = MarkNumbers.of(document)
    for block, number in numbered(document):
        yield from _block(block, number, marks)
    running = " · ".join(clean(text) for text in (document.header, document.header_end, document.footer) if text)
    if running:
        yield Rule(characters="─", style="dim")
        yield Text(running, style="dim")


def _text(text: Inline, style: str = "") -> Text:
    from rich.text import Text

    whole = Text(style=style)
    for span in spans(text):
        if isinstance(span, StatusWord):
            whole.append(f"{SIGNS[span.status]} {clean(span.text)}", "bold" if span.status == "fails" else "")
        elif isinstance(span, Reference):
            whole.append(clean(span.text), "underline")
        else:
            whole.append(clean(span.text), _STYLES[span.style])
    return whole


def _hanging(first: RenderableType | None, rest: RenderableType, indent: int = 0) -> Table:
    """Two columns without rules: what hangs on the left, and what wraps beside it."""
    from rich.table import Table

    grid = Table.grid(padding=(0, 1, 0, 0), pad_edge=False)
    if indent:
        grid.add_column(width=indent - 1)
    if first is not None:
        grid.add_column(no_wrap=True)
    grid.add_column(overflow="fold")
    grid.add_row(*([""] if indent else []), *([first] if first is not None else []), rest)
    return grid


def _block(block: Block, number: str, marks: MarkNumbers) -> Iterator[RenderableType]:
    from rich.text import Text

    match block:
        case Heading():
            title = Text(clean(f"{number}  {block.text}" if number else block.text), style="bold")
            yield Text("")
            yield title
            if block.level <= 2:
                yield Text(("═" if block.level == 1 else "─") * min(title.cell_len, 72), style="dim")
        case Paragraph():
            yield _text(block.text)
            yield Text("")
        case Remark():
            word = f"{block.kind.upper()}:" + (f" {clean(block.title)}." if block.title else "")
            yield _hanging(
                Text("!" if block.kind != "note" else "·"), Text.assemble((word, "bold"), " ", _text(block.text))
            )
            yield Text("")
        case BulletList():
            for item in block.items:
                yield _hanging(Text(" -"), _text(item))
            yield Text("")
        case NumberedList():
            for place, item in enumerate(block.items, start=block.start):
                yield _hanging(Text(f"{place:>2}."), _text(item))
            yield Text("")
        case KeyValues():
            yield from _facts(block)
        case TableBlock():
            yield from _table(block, number)
        case Figure():
            yield Text(clean(f"[{number}. {block.caption}] {block.alternative}"))
            yield Text("")
        case Working():
            yield from _step(set_step(block.step, marks))
        case PageBreak():
            yield Text("")


def _facts(block: KeyValues) -> Iterator[RenderableType]:
    from rich.table import Table
    from rich.text import Text

    if block.caption:
        yield Text(clean(block.caption), style="bold")
    grid = Table.grid(padding=(0, 2, 0, 0), pad_edge=False)
    grid.add_column(overflow="fold")
    grid.add_column(overflow="fold")
    for row in block.rows:
        value = _text(row.value)
        if plain_text(row.note):
            value = Text.assemble(value, "  (", _text(row.note, "dim"), ")")
        grid.add_row(Text(clean(row.key)), value)
    yield grid
    yield Text("")


def _table(block: TableBlock, number: str) -> Iterator[RenderableType]:
    from rich.box import SIMPLE_HEAD
    from rich.table import Table
    from rich.text import Text

    yield Text(clean(f"{number}. {block.caption}"), style="bold")
    table = Table(box=SIMPLE_HEAD, pad_edge=False, show_edge=False, header_style="bold", padding=(0, 1))
    for column in block.columns:
        heading = Text(clean(column.heading))
        if column.unit:
            heading.append(f"\n{clean(column.unit)}", "dim")
        justify = {"start": "left", "center": "center", "end": "right"}[column.align]
        table.add_column(heading, justify=justify, overflow="fold")  # type: ignore[arg-type]
    for place, row in enumerate(block.rows):
        if isinstance(row, GroupRow):
            # a row of its own cannot span columns here: its words stand in the first and may wrap there
            table.add_row(_text(row.text, "italic"), *("" for _ in block.columns[1:]))
        else:
            table.add_row(*(_text(cell) for cell in row), style="bold" if place in block.heavy else "")
    yield table
    for note in block.footnotes:
        yield _text(note, "dim")
    yield Text("")


def _step(step: SetStep) -> Iterator[RenderableType]:
    from rich.text import Text

    indent = 2 * min(step.depth, 4)
    if step.rank == "fact":
        maths = " ".join(_chain(step))
        yield _hanging(None, Text.assemble(maths, ("   " + clean(step.title) if step.title else "", "dim")), indent)
    else:
        head = Text.assemble((clean(step.title), "bold"), (f"  [{clean(step.cite)}]" if step.cite else "", "dim"))
        if step.title or step.cite:
            yield _hanging(None, head, indent)
        for part in step.parts:
            yield from _part(part, indent)
    for mark in step.marks:
        yield _hanging(Text("†"), Text(clean(mark), style="italic"), indent + 2)
    if step.rank in ("full", "heading"):
        yield Text("")


def _chain(step: SetStep) -> Iterator[str]:
    for part in step.parts:
        if isinstance(part, Derivation):
            yield " = ".join(clean(as_text(node)) for node in (part.name, *part.sides))
        else:
            yield _small(part)


def _part(part: Derivation | Small, indent: int) -> Iterator[RenderableType]:
    from rich.text import Text

    if isinstance(part, Small):
        yield _hanging(None, Text(_small(part), style="dim"), indent + 4)
        return
    name = clean(as_text(part.name))
    for place, side in enumerate(part.sides):
        shown = f"{name} =" if place == 0 else "=".rjust(len(name) + 2)
        yield _hanging(Text(shown), Text(clean(as_text(side))), indent + 4)


def _small(part: Small) -> str:
    maths = clean(as_text(part.math)) if part.math is not None else ""
    return " ".join(piece for piece in (part.word, maths, clean(part.text)) if piece)
