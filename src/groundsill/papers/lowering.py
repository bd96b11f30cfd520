"""From what a drawing means to what is inked: dimensions and symbols become lines, circles and words.

Everything stays in model inches. What is measured in points on the paper is turned into model inches by the scale's
denominator, so a dimension's letters come out the same height at every scale. Writers that have no dimensions or
symbols of their own draw only what comes out of here.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import replace

from groundsill.papers.drawing import (
    Anchor,
    Arc,
    BasicMark,
    Circle,
    Dimension,
    Line,
    Mark,
    Point,
    Polygon,
    Polyline,
    Symbol,
    Text,
)
from groundsill.papers.letters import ASCENT, CAP_HEIGHT, DESCENT, text_width
from groundsill.papers.symbols import SYMBOLS, Shape

__all__ = ["POINTS_PER_INCH", "Box", "box_of", "lower"]

POINTS_PER_INCH = 72.0
TIER_POINTS = 24.0
DIMENSION_LETTERS = 8.0

Box = tuple[float, float, float, float]
"""Left, bottom, right, top, in model inches."""


def lower(marks: Iterable[Mark], denominator: float) -> Iterator[BasicMark]:
    """The basic marks, with every text sized in model inches, at a scale of 1 to ``denominator``."""
    for mark in marks:
        if isinstance(mark, Dimension):
            yield from _dimension(mark, denominator / POINTS_PER_INCH)
        elif isinstance(mark, Symbol):
            yield from _symbol(mark, denominator / POINTS_PER_INCH)
        elif isinstance(mark, Text) and not mark.in_model:
            yield replace(mark, size=mark.size * denominator / POINTS_PER_INCH, in_model=True)
        else:
            yield mark


def _dimension(mark: Dimension, point: float) -> Iterator[BasicMark]:
    """A dimension's extension lines, line, ticks and words; ``point`` is a paper point in model inches."""
    (ax, ay), (bx, by) = mark.start, mark.end
    ux, uy = (bx - ax) / mark.length, (by - ay) / mark.length
    sign = 1.0 if mark.side == "left" else -1.0
    nx, ny = -uy * sign, ux * sign
    out = mark.offset + mark.tier * TIER_POINTS * point
    a, b = (ax + nx * out, ay + ny * out), (bx + nx * out, by + ny * out)

    def drawn(start: Point, end: Point) -> Line:
        return Line(start, end, mark.layer, mark.address, mark.label)

    near, far = min(3.0 * point, 0.25 * out), out + 4.0 * point
    for x, y in (mark.start, mark.end):
        yield drawn((x + nx * near, y + ny * near), (x + nx * far, y + ny * far))
    size = DIMENSION_LETTERS * point
    width = text_width(mark.text, size)
    outside = width + 4.0 * point > mark.length
    reach = width + 6.0 * point if outside else 0.0
    yield drawn(a, (b[0] + ux * reach, b[1] + uy * reach))
    heavy = replace(mark.layer, name=f"{mark.layer.name}-TICK", weight=35)
    tick = 3.0 * point
    for x, y in (a, b):
        # an oblique stroke at 45 degrees to the line, as on any builder's drawing
        dx, dy = (ux - uy) * tick * math.sqrt(0.5), (uy + ux) * tick * math.sqrt(0.5)
        yield Line((x - dx, y - dy), (x + dx, y + dy), heavy, mark.address, mark.label)
    turn = math.degrees(math.atan2(uy, ux))
    # words are read from the bottom or from the right of the sheet, never upside down
    flipped = not -90.0 + 1e-9 < turn <= 90.0 + 1e-9
    read = turn - math.copysign(180.0, turn) if flipped else turn
    ox, oy = -math.sin(math.radians(read)), math.cos(math.radians(read))
    anchor: Anchor = "middle"
    at = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    if outside:
        anchor = "end" if flipped else "start"
        at = (b[0] + ux * 4.0 * point, b[1] + uy * 4.0 * point)
    lift = 2.5 * point
    yield Text(
        (at[0] + ox * lift, at[1] + oy * lift),
        mark.text,
        mark.layer,
        size,
        in_model=True,
        anchor=anchor,
        rotation=read,
        address=mark.address,
        label=mark.label,
    )


def _symbol(mark: Symbol, point: float) -> Iterator[BasicMark]:
    size = mark.size if mark.in_model else mark.size * point
    shapes, words = SYMBOLS[mark.name]
    cos, sin = math.cos(math.radians(mark.rotation)), math.sin(math.radians(mark.rotation))

    def placed(at: Point) -> Point:
        x, y = at[0] * size, at[1] * size
        return (mark.at[0] + x * cos - y * sin, mark.at[1] + x * sin + y * cos)

    for shape in shapes:
        yield _shape(mark, shape, size, tuple(placed(p) for p in shape.points))
    if mark.text:
        yield Text(
            placed(words.at),
            mark.text,
            mark.layer,
            words.size * size,
            in_model=True,
            anchor="start" if words.beside else "middle",
            baseline="middle",
            address=mark.address,
            label=mark.label,
        )


def _shape(mark: Symbol, shape: Shape, size: float, points: tuple[Point, ...]) -> BasicMark:
    if shape.radius:
        return Circle(points[0], shape.radius * size, mark.layer, shape.fill, mark.address, mark.label)
    if shape.closed:
        return Polygon(points, mark.layer, shape.fill, mark.address, mark.label)
    return Polyline(points, mark.layer, mark.address, mark.label)


def box_of(marks: Iterable[Mark], denominator: float) -> Box:
    """The box that holds every mark, words and dimensions included, in model inches.

    Raises:
        ValueError: when there are no marks.
    """
    points = [point for mark in lower(marks, denominator) for point in _reach(mark)]
    if not points:
        raise ValueError("a drawing without marks has no extent")
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return (min(xs), min(ys), max(xs), max(ys))


def _reach(mark: BasicMark) -> tuple[Point, ...]:
    match mark:
        case Line():
            return (mark.start, mark.end)
        case Polyline() | Polygon():
            return mark.points
        case Circle() | Arc():
            (x, y), r = mark.center, mark.radius
            return ((x - r, y - r), (x + r, y + r))
    return _words_reach(mark)


def _words_reach(mark: Text) -> tuple[Point, ...]:
    width = text_width(mark.text, mark.size)
    left = {"start": 0.0, "middle": -0.5, "end": -1.0}[mark.anchor] * width
    drop = {"bottom": 0.0, "middle": -0.5, "top": -1.0}[mark.baseline] * CAP_HEIGHT * mark.size
    low, high = drop - DESCENT * mark.size, drop + ASCENT * mark.size
    cos, sin = math.cos(math.radians(mark.rotation)), math.sin(math.radians(mark.rotation))
    corners = ((left, low), (left + width, low), (left + width, high), (left, high))
    return tuple((mark.at[0] + x * cos - y * sin, mark.at[1] + x * sin + y * cos) for x, y in corners)
