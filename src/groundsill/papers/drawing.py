"""What a drawing shows, as marks in model inches: x to the right, y up, every mark on a named layer.

Views make these from a finished study; writers set them on a screen or at exact scale on a sheet. A mark carries the
``address`` of the object it shows, so that a tap on the screen finds the object, and a ``label`` that says in words
what is tapped. Lengths of the thing drawn are model inches; what belongs to the paper (heights of letters, sizes of
symbols, distances between dimension lines) is in points, 72 to the inch, and stays that size at every scale.

Line weights are those common to ISO 128 and DXF, in hundredths of a millimetre; layer names follow the manner of the
US National CAD Standard (discipline, major group, minor group, status).
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from groundsill.working.measure_show import show

__all__ = [
    "LAYERS",
    "LINE_WEIGHTS",
    "Anchor",
    "Arc",
    "Baseline",
    "BasicMark",
    "Circle",
    "Dimension",
    "Drawing",
    "Fill",
    "Layer",
    "LengthStyle",
    "Line",
    "LineType",
    "Mark",
    "Point",
    "Polygon",
    "Polyline",
    "Symbol",
    "SymbolName",
    "Text",
    "layer",
]

Point = tuple[float, float]
LineType = Literal["continuous", "dashed", "center", "phantom", "dotted"]
Fill = Literal["none", "paper", "ink", "tint", "hatched", "crossed", "concrete", "masonry", "earth", "wood"]
Anchor = Literal["start", "middle", "end"]
LengthStyle = Literal["ft-in", "in", "decimal-in", "ft", "m", "cm", "mm"]
Baseline = Literal["bottom", "middle", "top"]
SymbolName = Literal[
    "access", "bolt", "crack", "hold-down", "level", "north", "pier", "post", "section", "strap", "tag", "vent"
]

LINE_WEIGHTS = frozenset({13, 18, 25, 35, 50, 70, 100, 140, 200})
"""Line weights in hundredths of a millimetre that both ISO 128 and the DXF list know."""


@dataclass(frozen=True, slots=True)
class Layer:
    """A layer: its name, line weight (hundredths of a millimetre), line type, and the class a stylesheet knows it by.

    ``ink`` is how dark the line is on paper, from 1 (black) down; colour never carries meaning.
    """

    name: str
    weight: int
    line_type: LineType = "continuous"
    style: str = "plain"
    ink: float = 1.0

    def __post_init__(self) -> None:
        if self.weight not in LINE_WEIGHTS:
            raise ValueError(f"layer {self.name}: {self.weight} is not a line weight ({sorted(LINE_WEIGHTS)})")


_LAYERS: tuple[tuple[str, str, int, LineType, str, float], ...] = (
    ("wall", "S-WALL-E", 35, "continuous", "existing", 1.0),
    ("wall beyond", "S-WALL-HIDN-E", 18, "dashed", "existing", 0.7),
    ("framing", "S-FRAM-E", 18, "continuous", "existing", 0.8),
    ("framing cut", "S-FRAM-CUTS-E", 50, "continuous", "existing", 1.0),
    ("foundation", "S-FNDN-E", 50, "continuous", "existing", 1.0),
    ("footing below", "S-FNDN-HIDN-E", 25, "dashed", "existing", 1.0),
    ("opening", "A-OPNG-E", 18, "continuous", "existing", 0.8),
    ("obstruction", "P-OBST-E", 18, "dashed", "existing", 0.6),
    ("defect", "S-DFCT-E", 35, "continuous", "defect", 1.0),
    ("soil", "C-GRAD-E", 35, "continuous", "existing", 1.0),
    ("new panel", "S-SHTH-N", 70, "continuous", "new", 1.0),
    ("new anchor", "S-ANCH-N", 35, "continuous", "new", 1.0),
    ("new hardware", "S-HDWR-N", 50, "continuous", "new", 1.0),
    ("new wood", "S-FRAM-N", 50, "continuous", "new", 1.0),
    ("new concrete", "S-FNDN-N", 70, "continuous", "new", 1.0),
    ("removed", "S-DEMO-D", 25, "dotted", "removed", 0.7),
    ("grid", "S-GRID", 18, "center", "note", 0.6),
    ("dimension", "G-ANNO-DIMS", 18, "continuous", "note", 1.0),
    ("text", "G-ANNO-TEXT", 25, "continuous", "note", 1.0),
    ("symbol", "G-ANNO-SYMB", 25, "continuous", "note", 1.0),
    ("title block", "G-ANNO-TTLB", 50, "continuous", "note", 1.0),
    ("title rule", "G-ANNO-TTLB-RULE", 18, "continuous", "note", 1.0),
)
LAYERS: dict[str, Layer] = {
    key: Layer(name, weight, kind, style, ink) for key, name, weight, kind, style, ink in _LAYERS
}
"""The layers of our own drawings by their plain names; a view may add others."""


def layer(name: str) -> Layer:
    """One of our own layers by its plain name (``layer("foundation")``)."""
    if name not in LAYERS:
        raise ValueError(f"{name!r} is no layer known here ({', '.join(LAYERS)})")
    return LAYERS[name]


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line."""

    start: Point
    end: Point
    layer: Layer
    address: str = ""
    label: str = ""


@dataclass(frozen=True, slots=True)
class Polyline:
    """An open run of straight lines through at least two points."""

    points: tuple[Point, ...]
    layer: Layer
    address: str = ""
    label: str = ""


@dataclass(frozen=True, slots=True)
class Polygon:
    """A closed outline of at least three points, with a fill."""

    points: tuple[Point, ...]
    layer: Layer
    fill: Fill = "none"
    address: str = ""
    label: str = ""


@dataclass(frozen=True, slots=True)
class Circle:
    """A circle with a fill."""

    center: Point
    radius: float
    layer: Layer
    fill: Fill = "none"
    address: str = ""
    label: str = ""


@dataclass(frozen=True, slots=True)
class Arc:
    """Part of a circle, counter-clockwise from ``start_deg`` to ``end_deg`` (degrees from the x axis)."""

    center: Point
    radius: float
    start_deg: float
    end_deg: float
    layer: Layer
    address: str = ""
    label: str = ""


@dataclass(frozen=True, slots=True)
class Text:
    """One line of words. ``size`` is the letter size in points on the paper, or in model inches when ``in_model``.

    ``anchor`` and ``baseline`` say which part of the words stands at ``at``; ``rotation`` is in degrees,
    counter-clockwise.
    """

    at: Point
    text: str
    layer: Layer
    size: float = 8.0
    in_model: bool = False
    anchor: Anchor = "start"
    baseline: Baseline = "bottom"
    rotation: float = 0.0
    heavy: bool = False
    address: str = ""
    label: str = ""


@dataclass(frozen=True, slots=True)
class Dimension:
    """An aligned dimension between two points. Its words are the true distance and cannot be typed over.

    The dimension line lies to the ``side`` of the walk from start to end, ``offset`` model inches out and ``tier``
    further steps of 24 points on the paper, so that runs of dimensions stack. ``nearest`` is the finest part of an inch
    shown (16 for sixteenths).
    """

    start: Point
    end: Point
    layer: Layer
    side: Literal["left", "right"] = "left"
    offset: float = 0.0
    tier: float = 1.0
    shown_in: LengthStyle = "ft-in"
    nearest: int = 16
    address: str = ""
    label: str = ""

    def __post_init__(self) -> None:
        if self.length == 0.0:
            raise ValueError("a dimension needs two different points")

    @property
    def length(self) -> float:
        """The true distance, in inches."""
        return math.hypot(self.end[0] - self.start[0], self.end[1] - self.start[1])

    @property
    def text(self) -> str:
        """The true distance as it is written on the drawing."""
        return show(self.length, "length", "in", style=self.shown_in, to=self.nearest)


@dataclass(frozen=True, slots=True)
class Symbol:
    """A named symbol, its middle at ``at``. ``size`` is its width in points on the paper, or in model inches.

    ``text`` is the letter or number in or beside it (a panel mark, a section's letter).
    """

    name: SymbolName
    at: Point
    layer: Layer
    size: float = 9.0
    in_model: bool = False
    rotation: float = 0.0
    text: str = ""
    address: str = ""
    label: str = ""


BasicMark = Line | Polyline | Polygon | Circle | Arc | Text
Mark = BasicMark | Dimension | Symbol


@dataclass(frozen=True, slots=True)
class Drawing:
    """Marks in the order they are laid down: later ones lie on top.

    A mark with a point that is not a number, or two different layers of one name, are refused here.
    """

    name: str
    marks: tuple[Mark, ...]

    def __post_init__(self) -> None:
        named: dict[str, Layer] = {}
        for mark in self.marks:
            if named.setdefault(mark.layer.name, mark.layer) != mark.layer:
                raise ValueError(f"drawing {self.name!r}: two different layers are named {mark.layer.name}")
            if not all(math.isfinite(x) and math.isfinite(y) for x, y in _figures(mark)):
                raise ValueError(f"drawing {self.name!r}: a {type(mark).__name__} has a point that is not a number")

    @property
    def layers(self) -> tuple[Layer, ...]:
        """The layers in use, in the order they first appear."""
        return tuple({mark.layer.name: mark.layer for mark in self.marks}.values())


def _figures(mark: Mark) -> Iterator[Point]:
    """Every figure that places or sizes a mark, two by two."""
    match mark:
        case Line() | Dimension():
            yield mark.start
            yield mark.end
        case Polyline() | Polygon():
            yield from mark.points
        case Circle():
            yield mark.center
            yield (mark.radius, mark.radius)
        case Arc():
            yield mark.center
            yield (mark.radius, mark.end_deg - mark.start_deg)
        case Text() | Symbol():
            yield mark.at
            yield (mark.size, mark.rotation)
