"""The small set of symbols on our drawings, each drawn in a unit square about its middle (x right, y up).

They are the plain signs of the trade: a bolt is a circle with a cross, a hold-down a filled triangle, a post a crossed
square. Each differs in shape, so that none depends on colour.
"""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.papers.drawing import Fill, Point, SymbolName

__all__ = ["SYMBOLS", "Shape", "Words"]


@dataclass(frozen=True, slots=True)
class Shape:
    """Part of a symbol: a run of points, closed or not; or, with a ``radius``, a circle about its one point."""

    points: tuple[Point, ...]
    closed: bool = False
    fill: Fill = "none"
    radius: float = 0.0


@dataclass(frozen=True, slots=True)
class Words:
    """Where a symbol's letters stand, and how high they are, in parts of its size; they never turn with the symbol."""

    at: Point
    size: float
    beside: bool = False


def _box(width: float, height: float, fill: Fill = "none") -> Shape:
    x, y = width / 2, height / 2
    return Shape(((-x, -y), (x, -y), (x, y), (-x, y)), closed=True, fill=fill)


_ABOVE = Words((0.0, 0.62), 0.5)
_INSIDE = Words((0.0, 0.0), 0.52)
_BESIDE = Words((0.62, 0.0), 0.8, beside=True)

SYMBOLS: dict[SymbolName, tuple[tuple[Shape, ...], Words]] = {
    "access": ((_box(1.0, 0.7, "paper"), Shape(((-0.5, -0.35), (0.5, 0.35)))), _ABOVE),
    "bolt": (
        (
            Shape(((0.0, 0.0),), radius=0.32, fill="paper"),
            Shape(((-0.5, 0.0), (0.5, 0.0))),
            Shape(((0.0, -0.5), (0.0, 0.5))),
        ),
        _BESIDE,
    ),
    "crack": (
        (Shape(((-0.5, 0.0), (-0.32, 0.13), (-0.16, -0.13), (0.0, 0.13), (0.16, -0.13), (0.32, 0.13), (0.5, 0.0))),),
        _ABOVE,
    ),
    "hold-down": ((Shape(((-0.5, -0.43), (0.5, -0.43), (0.0, 0.43)), closed=True, fill="ink"),), _BESIDE),
    "level": (
        (Shape(((0.0, 0.0), (-0.35, 0.6), (0.35, 0.6)), closed=True, fill="paper"),),
        Words((0.5, 0.4), 0.8, beside=True),
    ),
    "north": (
        (
            Shape(((0.0, 0.0),), radius=0.34),
            Shape(((0.0, -0.5), (0.0, 0.5))),
            Shape(((0.0, 0.5), (-0.16, 0.05), (0.0, 0.05)), closed=True, fill="ink"),
            Shape(((0.0, 0.5), (0.16, 0.05), (0.0, 0.05)), closed=True),
        ),
        Words((0.0, 0.72), 0.34),
    ),
    "pier": ((_box(1.0, 1.0), _box(0.5, 0.5, "paper")), _ABOVE),
    "post": (
        (_box(0.8, 0.8, "paper"), Shape(((-0.4, -0.4), (0.4, 0.4))), Shape(((-0.4, 0.4), (0.4, -0.4)))),
        _BESIDE,
    ),
    "section": (
        (
            Shape(((-0.47, 0.0), (0.0, 0.47), (0.47, 0.0)), closed=True, fill="ink"),
            Shape(((0.0, 0.0),), radius=0.34, fill="paper"),
        ),
        Words((0.0, 0.0), 0.42),
    ),
    "strap": (
        (
            _box(1.0, 0.22, "paper"),
            Shape(((-0.36, 0.0),), radius=0.04, fill="ink"),
            Shape(((-0.14, 0.0),), radius=0.04, fill="ink"),
            Shape(((0.14, 0.0),), radius=0.04, fill="ink"),
            Shape(((0.36, 0.0),), radius=0.04, fill="ink"),
        ),
        _ABOVE,
    ),
    "tag": ((Shape(((0.0, 0.0),), radius=0.5, fill="paper"),), _INSIDE),
    "vent": (
        (
            _box(1.0, 0.5, "paper"),
            Shape(((-0.4, 0.12), (0.4, 0.12))),
            Shape(((-0.4, 0.0), (0.4, 0.0))),
            Shape(((-0.4, -0.12), (0.4, -0.12))),
        ),
        _ABOVE,
    ),
}
