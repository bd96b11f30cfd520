"""Counts headings, figures and tables once, so that every writer prints the same numbers."""

from __future__ import annotations

from collections.abc import Iterator

from groundsill.papers.document import Block, Document, Figure, Heading, TableBlock

__all__ = ["numbered"]


def numbered(document: Document) -> Iterator[tuple[Block, str]]:
    """Each block with its number: ``2.3`` for a heading, ``Figure 4``, ``Table 2``, or nothing."""
    counts = [0, 0, 0, 0]
    figures = tables = 0
    for block in document.blocks:
        match block:
            case Heading():
                counts[block.level - 1] += 1
                counts[block.level :] = [0] * (4 - block.level)
                yield block, ".".join(str(n) for n in counts[: block.level]) if document.numbered else ""
            case Figure():
                figures += 1
                yield block, f"Figure {figures}"
            case TableBlock():
                tables += 1
                yield block, f"Table {tables}"
            case _:
                yield block, ""
