"""The few shapes that every answer on the terminal is made of: headings, facts, tables, verdicts.

Plain and calm: bold for what the eye should land on, faint for what stands beside it, no colour and no boxes. A verdict
is a word with a shape of its own. Words from a survey are taken literally, control codes written out.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal, cast

from groundsill.papers.document import Status
from groundsill.papers.writers.escape import clean
from groundsill.papers.writers.shapes import SIGNS

if TYPE_CHECKING:
    from rich.table import Table
    from rich.text import Text

__all__ = ["Head", "facts", "faint", "heading", "lines", "strong", "table", "unbroken", "verdict", "words"]


@dataclass(frozen=True, slots=True)
class Head:
    """A column of a table: its heading, unit, on which side its figures stand, whether its words may wrap."""

    text: str
    unit: str = ""
    align: Literal["left", "right"] = "left"
    wraps: bool = False
    ratio: int | None = None


def words(text: str, style: str = "") -> Text:
    """Any words, taken literally."""
    from rich.text import Text

    return Text(clean(text), style=style)


def strong(text: str) -> Text:
    """Words the eye should land on."""
    return words(text, "bold")


def faint(text: str) -> Text:
    """Words that stand beside: a unit, a source, a doubt."""
    return words(text, "dim")


def unbroken(text: str) -> Text:
    """A line that keeps its words together however wide it is: a file's path, a command to be copied."""
    from rich.text import Text

    return Text(clean(text), no_wrap=True, overflow="ignore")


def heading(text: str, beside: str = "") -> Text:
    """A heading, and in faint type what stands beside it."""
    from rich.text import Text

    return Text.assemble(strong(text), faint(f"   {beside}" if beside else ""))


def facts(pairs: Iterable[tuple[str, str | Text, str]]) -> Table:
    """Names on the left, what they are beside them, and in faint type where that comes from; empty ones left out."""
    from rich.table import Table
    from rich.text import Text

    grid = Table.grid(padding=(0, 2, 0, 0), pad_edge=False)
    grid.add_column(no_wrap=True)
    grid.add_column(overflow="fold")
    for name, value, note in pairs:
        shown = words(value) if isinstance(value, str) else value
        if shown.plain:
            grid.add_row(words(name), Text.assemble(shown, faint(f"   {note}" if note else "")))
    return grid


def table(heads: Sequence[Head], rows: Iterable[Sequence[str | Text]], heavy: frozenset[int] = frozenset()) -> Table:
    """Columns under faint rules; figures to the right, words to the left. ``heavy`` rows are set in strong type."""
    from rich.box import SIMPLE_HEAD
    from rich.table import Table
    from rich.text import Text

    made = Table(box=SIMPLE_HEAD, show_edge=False, pad_edge=False, padding=(0, 1), header_style="", border_style="dim")
    for head in heads:
        title = Text.assemble(strong(head.text), faint(f"\n{head.unit}" if head.unit else ""))
        made.add_column(title, justify=head.align, no_wrap=not head.wraps, overflow="fold", ratio=head.ratio)
    for place, row in enumerate(rows):
        cells = [words(cell) if isinstance(cell, str) else cell for cell in row]
        made.add_row(*cells, style="bold" if place in heavy else "")
    return made


def lines(items: Iterable[str | Text], mark: str = "-") -> Table:
    """Items one under the other, each hanging from a mark."""
    from rich.table import Table

    grid = Table.grid(padding=(0, 1, 0, 0), pad_edge=False)
    grid.add_column(no_wrap=True)
    grid.add_column(overflow="fold")
    for item in items:
        grid.add_row(words(mark), words(item) if isinstance(item, str) else item)
    return grid


def verdict(status: str) -> Text:
    """A verdict in words with its shape; colour has no part in it."""
    shown = f"{SIGNS[cast(Status, status)]} {status}"
    return words(shown, "" if status in ("passes", "does not apply") else "bold")
