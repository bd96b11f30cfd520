"""What was worked out for a finding, line by line: each rule with its place, and the numbers put in."""

from __future__ import annotations

from collections.abc import Iterator

from groundsill.working.render import as_text
from groundsill.working.sheet import Sheet, Step

__all__ = ["lines_of_sheet"]


def lines_of_sheet(sheet: Sheet) -> tuple[str, ...]:
    """One line for each equation and each figure read from a table, in order, none twice."""
    return tuple(dict.fromkeys(line for step in sheet.steps for line in _line(step)))


def _line(step: Step) -> Iterator[str]:
    if step.kind not in ("equation", "lookup"):
        return
    shown = {line.kind: as_text(line.math) for line in step.lines if line.math is not None}
    numbers = shown.get("numbers") or shown.get("answer")
    if numbers:
        yield f"{step.title} ({step.cite}): {numbers}"
