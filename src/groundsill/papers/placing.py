"""Where the marks of a sheet, or of a drawing among words, come to lie on the paper, in points.

This is the one place where model inches become paper points; a writer applies the two offsets and the factor and
nothing else, so true scale is settled here.
"""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.papers.drawing import Drawing, Mark, Point
from groundsill.papers.furniture import furniture
from groundsill.papers.lowering import POINTS_PER_INCH, box_of
from groundsill.papers.sheet import CAPTION, Scale, Sheet, Viewport

__all__ = ["Leaf", "Placement", "leaf_of_drawing", "leaf_of_sheet"]


@dataclass(frozen=True, slots=True)
class Placement:
    """Marks and how they go onto the paper: ``(x, y)`` inches become ``x * factor + dx``, ``y * factor + dy`` points.

    Points are counted from the lower left corner of the leaf, y up; ``denominator`` is the scale's.
    """

    marks: tuple[Mark, ...]
    denominator: float
    dx: float
    dy: float

    @property
    def factor(self) -> float:
        """Paper points for each model inch."""
        return POINTS_PER_INCH / self.denominator


@dataclass(frozen=True, slots=True)
class Leaf:
    """A piece of paper, ``width`` by ``height`` points, with everything that is inked on it, in order."""

    width: float
    height: float
    placements: tuple[Placement, ...]


def leaf_of_sheet(sheet: Sheet) -> Leaf:
    """A whole sheet: drawings, then the sheet's own frame, titles and notes."""
    placed = [_placed(port) for port in sheet.viewports]
    placed.append(Placement((*furniture(sheet), *sheet.annotations), 1.0, 0.0, 0.0))
    return Leaf(sheet.paper.width * POINTS_PER_INCH, sheet.paper.height * POINTS_PER_INCH, tuple(placed))


def leaf_of_drawing(drawing: Drawing, scale: Scale, margin: float = 2.0) -> Leaf:
    """A drawing alone, on a leaf just large enough for it and a margin (points)."""
    left, bottom, right, top = box_of(drawing.marks, scale.denominator)
    factor = POINTS_PER_INCH / scale.denominator
    placed = Placement(drawing.marks, scale.denominator, margin - left * factor, margin - bottom * factor)
    return Leaf((right - left) * factor + 2 * margin, (top - bottom) * factor + 2 * margin, (placed,))


def _placed(port: Viewport) -> Placement:
    left, bottom, right, top = box_of(port.drawing.marks, port.scale.denominator)
    factor = POINTS_PER_INCH / port.scale.denominator
    middle: Point = (
        (port.left + port.width / 2) * POINTS_PER_INCH,
        (port.bottom + CAPTION + (port.height - CAPTION) / 2) * POINTS_PER_INCH,
    )
    return Placement(
        port.drawing.marks,
        port.scale.denominator,
        middle[0] - (left + right) / 2 * factor,
        middle[1] - (bottom + top) / 2 * factor,
    )
