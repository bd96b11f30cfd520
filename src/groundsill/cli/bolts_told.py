"""How the bolts of a line in weak concrete share, on the terminal: one line, or every bolt and joint."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from groundsill.cli.layout import Head, faint, lines, strong, table, words
from groundsill.papers.document import TableBlock, plain_text
from groundsill.papers.views.bolt_shares_view import bolts_table, joints_table, told_in_short, told_of_pieces
from groundsill.papers.views.words import Units, counted, short

if TYPE_CHECKING:
    from rich.console import RenderableType

    from groundsill.loadpath.shares import LineShares

__all__ = ["bolts_told", "works_told"]


def works_told(shares: LineShares) -> str:
    """How many bolts really work, in one line."""
    joined = f"; strapped into one piece, {short(shares.works_as_one)}" if shares.joints else ""
    works = f"{short(shares.works)} of {counted(shares.count, 'bolt')} work elastically{joined}"
    return f"   How the bolts share: {works} ({shares.why})."


def bolts_told(shares: LineShares, units: Units) -> Iterator[RenderableType]:
    """Every bolt in every state, how many work in each piece, the joints, and what was taken."""
    yield strong("   How the bolts share")
    yield words(told_in_short(shares, units))
    yield _grid(bolts_table("", shares, units))
    yield lines(told_of_pieces(shares, units), "   -")
    if shares.joints:
        yield _grid(joints_table("", shares, units))
    yield faint(f"Taken here: {'; '.join(shares.notes)}.")


def _grid(block: TableBlock) -> RenderableType:
    """A table of the papers as it stands on the terminal."""
    heads = [
        Head(column.heading, column.unit, "right" if column.align == "end" else "left", wraps=column.share is not None)
        for column in block.columns
    ]
    return table(heads, [[plain_text(cell) for cell in row] for row in block.rows if isinstance(row, tuple)])
