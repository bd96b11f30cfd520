"""A level survey as a picture: the outline, every spot with its height, and lines of equal height between them.

Heights run straight from spot to spot over the triangles that join them; outside of the spots nothing is drawn.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import ceil, dist, floor
from typing import Final

from groundsill.findings import Finding
from groundsill.findings.levels import one_in
from groundsill.findings.shape import Shape
from groundsill.mechanics.plan import inside
from groundsill.papers.document import Figure
from groundsill.papers.drawing import Circle, Drawing, Layer, Line, Mark, Point, Polygon, Text
from groundsill.papers.sheet import SCALES, ScaleSystem, fitting_scale
from groundsill.papers.views.words import counted
from groundsill.work.document import House
from groundsill.working.errors import CannotWrite
from groundsill.working.measure import show

__all__ = ["contours", "levels_figure"]

_ROOM: Final = (5.0, 5.6)  # paper inches
_MOST: Final = 14  # lines of equal height on one picture
_STEPS_US: Final = (1 / 8, 1 / 4, 1 / 2, 1.0, 2.0, 5.0, 10.0)
_STEPS_SI: Final = tuple(mm / 25.4 for mm in (2, 5, 10, 20, 50, 100, 200))
_SIZE: Final = 6.5
_A_STOREY_IN: Final = 60.0  # a floor higher than this over the lowest lies over it, not beside it

_OUTLINE = Layer("levels outline", 25, style="existing")
_CONTOUR = Layer("levels contour", 18, style="note", ink=0.6)
_HEAVY = Layer("levels contour zero", 35, style="note", ink=0.8)
_SPOT = Layer("levels spot", 18, style="plain")
_WORDS = Layer("levels words", 18, style="note")


def levels_figure(finding: Finding, house: House) -> Figure | None:
    """The picture of one floor's levels, at the largest standard scale that fits; None where there is no shape."""
    shape = finding.shape
    if shape is None:
        return None
    step = _step(shape, house.units)
    system: ScaleSystem = "us" if house.units == "us" else "metric"
    told = f"{finding.title}, {finding.place}: lines of equal height, {show(step, 'length', 'in', house.units)} apart"
    for scale in SCALES[system]:
        drawing = Drawing(told, tuple(_marks(shape, house, step, scale.denominator)))
        try:
            fits = fitting_scale((drawing,), *_ROOM, system).denominator <= scale.denominator
        except CannotWrite:
            fits = False
        if fits:
            return Figure(drawing, told, _alternative(shape, house), scale=scale)
    return None


def contours(shape: Shape, height: float) -> Iterator[tuple[Point, Point]]:
    """The straight pieces of the line of one height, one for each triangle it runs through."""
    for corners in shape.triangles:
        spots = [shape.spots[i] for i in corners]
        ends = []
        for one, two in zip(spots, (*spots[1:], spots[0]), strict=True):
            low, high = sorted((one, two), key=lambda s: s.z_in)
            if low.z_in < height <= high.z_in:  # a height equal to a spot's counts on one side only
                part = (height - low.z_in) / (high.z_in - low.z_in)
                ends.append((low.x_in + (high.x_in - low.x_in) * part, low.y_in + (high.y_in - low.y_in) * part))
        if len(ends) == 2 and ends[0] != ends[1]:
            yield ends[0], ends[1]


def _step(shape: Shape, units: str) -> float:
    """The finest round step that gives no more lines than a picture bears."""
    range_in = shape.highest.z_in - shape.lowest.z_in
    steps = _STEPS_SI if units == "si" else _STEPS_US
    return next((step for step in steps if range_in / step <= _MOST), steps[-1])


def _marks(shape: Shape, house: House, step: float, paper: float) -> Iterator[Mark]:
    outlines = _outlines(house)
    yield from (Polygon(outline, _OUTLINE) for outline in outlines)
    for n in range(ceil(shape.lowest.z_in / step), floor(shape.highest.z_in / step) + 1):
        words = show(n * step, "length", "in", house.units)
        pieces = [piece for piece in contours(shape, n * step) if _indoors(piece, outlines)]
        for start, end in pieces:
            yield Line(start, end, _HEAVY if n == 0 else _CONTOUR, label=f"height {words}")
        if pieces:
            longest = _middle(max(pieces, key=lambda piece: dist(*piece)))
            yield Text(longest, words, _CONTOUR if n else _HEAVY, _SIZE - 1, anchor="middle")
    for spot in shape.spots:
        at = (spot.x_in, spot.y_in)
        yield Circle(
            at, 0.02 * paper, _SPOT, "ink", label=f"{spot.mark}: {show(spot.z_in, 'length', 'in', house.units)}"
        )
        height = show(spot.z_in, "length", "in", house.units)
        yield Text((at[0] + 0.05 * paper, at[1] + 0.02 * paper), height, _WORDS, _SIZE)
        yield Text((at[0] + 0.05 * paper, at[1] - 0.02 * paper), spot.mark, _WORDS, _SIZE - 1, baseline="top")


def _outlines(house: House) -> list[tuple[Point, ...]]:
    """The outlines of the lowest floors, wings a few steps up among them."""
    building = house.survey.building
    lowest = min((storey.floor_z_in for storey in building.storeys.values()), default=0.0)
    return [tuple((building.corners[c].x_in, building.corners[c].y_in) for c in storey.outline)
            for storey in building.storeys.values() if storey.floor_z_in < lowest + _A_STOREY_IN]  # fmt: skip


def _middle(piece: tuple[Point, Point]) -> Point:
    (ax, ay), (bx, by) = piece
    return (ax + bx) / 2, (ay + by) / 2


def _indoors(piece: tuple[Point, Point], outlines: Sequence[Sequence[Point]]) -> bool:
    """Whether a piece of a line lies within some storey, so that it says nothing of the yard between two wings."""
    return not outlines or any(inside(_middle(piece), outline) for outline in outlines)


def _alternative(shape: Shape, house: House) -> str:
    """What the picture shows, in words."""
    high, low = (f"{s.mark} ({show(s.z_in, 'length', 'in', house.units)})" for s in (shape.highest, shape.lowest))
    return (
        f"Plan with {counted(len(shape.spots), 'spot')} and lines of equal height: highest {high}, lowest {low}; as "
        f"one piece it falls {one_in(shape.tilt.ratio)} toward {shape.falls_to.mark}."
    )
