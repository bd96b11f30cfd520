"""What stands on every sheet beside the drawings: frame, title block, view titles, scale bars, north arrow.

All of it is drawn with the same marks as the drawings, in paper inches, so every writer gets it for nothing.
"""

from __future__ import annotations

from collections.abc import Iterator

from groundsill.papers.drawing import Line, Mark, Point, Polygon, Symbol, Text, layer
from groundsill.papers.letters import text_width, wrapped
from groundsill.papers.lowering import POINTS_PER_INCH, Box
from groundsill.papers.sheet import STRIP, Scale, Sheet, Viewport, drawing_room

__all__ = ["furniture"]

_FRAME = layer("title block")
_RULE = layer("title rule")
_WORDS = layer("text")


def furniture(sheet: Sheet) -> tuple[Mark, ...]:
    """The marks of one sheet's frame, title block, titles, scale bars and north arrow, in paper inches."""
    return tuple(_marks(sheet))


def _marks(sheet: Sheet) -> Iterator[Mark]:
    paper = sheet.paper
    m = paper.margin
    yield _box((m, m, paper.width - m, paper.height - m))
    if paper.strip == "bottom":
        yield from _bottom_strip(sheet, (m, m, paper.width - m, m + STRIP["bottom"]))
    else:
        yield from _right_strip(sheet, (paper.width - m - STRIP["right"], m, paper.width - m, paper.height - m))
    for number, port in enumerate(sheet.viewports, start=1):
        yield from _view_title(port, number)
    if sheet.north_deg is not None:
        _, _, right, top = drawing_room(paper)
        yield Symbol("north", (right - 0.35, top - 0.45), layer("symbol"), 44.0, rotation=sheet.north_deg, text="N")


def _box(box: Box) -> Polygon:
    left, bottom, right, top = box
    return Polygon(((left, bottom), (right, bottom), (right, top), (left, top)), _FRAME)


def _words(at: Point, text: str, size: float, *, width: float, heavy: bool = False, lines: int = 2) -> Iterator[Text]:
    """Words from the top down, made smaller (to 5 points) until they take no more than the lines there are."""
    limit = width * POINTS_PER_INCH
    while size > 5.0 and (
        len(wrapped(text, limit, size)) > lines or any(text_width(w, size) > limit for w in wrapped(text, limit, size))
    ):
        size -= 0.5
    x, y = at
    for line in wrapped(text, limit, size):
        y -= size * 1.2 / POINTS_PER_INCH
        yield Text((x, y), line, _WORDS, size, heavy=heavy)


def _label(at: Point, text: str, size: float = 6.0) -> Text:
    return Text(at, text, _WORDS, size)


def _bottom_strip(sheet: Sheet, box: Box) -> Iterator[Mark]:
    """Project, sheet title, what it was made from, blank place for seal and approval, sheet number: left to right."""
    left, bottom, right, top = box
    block = sheet.title_block
    yield Line((left, top), (right, top), _FRAME)
    wide = right - left
    shares = (0.29, 0.24, 0.21, 0.16, 0.10) if block.seal else (0.33, 0.29, 0.28, 0.0, 0.10)
    edges = [left]
    for share in shares:
        edges.append(edges[-1] + share * wide)
    for edge in sorted(set(edges[1:-1])):
        yield Line((edge, bottom), (edge, top), _RULE)
    pad = 0.09
    cells = [(edges[n] + pad, edges[n + 1] - edges[n] - 2 * pad) for n in range(5)]
    labels = ("Project", "Sheet", "Made from", "Seal and approval", "Number")
    for n, label in enumerate(labels):
        if shares[n]:
            yield _label((cells[n][0], top - 0.14), label)
    yield from _words((cells[0][0], top - 0.2), block.project, 13.0, width=cells[0][1], heavy=True, lines=2)
    yield from _words((cells[0][0], bottom + 0.36), block.place, 8.0, width=cells[0][1], lines=2)
    yield from _words((cells[1][0], top - 0.2), block.sheet_title, 11.0, width=cells[1][1], lines=2)
    yield from _words((cells[1][0], bottom + 0.36), _scales(sheet), 8.0, width=cells[1][1], lines=2)
    yield from _stamp(block.stamp, (cells[2][0], top - 0.2), cells[2][1], 6.5)
    middle = (edges[4] + edges[5]) / 2
    yield Text((middle, bottom + 0.34), block.sheet_number, _WORDS, 22.0, anchor="middle", heavy=True)


def _right_strip(sheet: Sheet, box: Box) -> Iterator[Mark]:
    """The same, from the top of the strip down, with the sheet number in the lower right corner."""
    left, bottom, right, top = box
    block = sheet.title_block
    yield Line((left, bottom), (left, top), _FRAME)
    pad = 0.15
    x, wide = left + pad, right - left - 2 * pad
    number, stamp, title, project = bottom + 1.4, bottom + 3.4, bottom + 5.2, bottom + 7.4
    for y in (number, stamp, title, project):
        yield Line((left, y), (right, y), _RULE)
    for y, label in ((number, "Number"), (stamp, "Made from"), (title, "Sheet"), (project, "Project")):
        yield _label((x, y - 0.17), label, 7.5)
    if block.seal:
        yield Line((left, project + 4.5), (right, project + 4.5), _RULE)
        yield _label((x, project + 4.33), "Seal and approval", 7.5)
    yield from _words((x, project - 0.25), block.project, 18.0, width=wide, heavy=True, lines=3)
    yield from _words((x, title + 0.55), block.place, 10.0, width=wide, lines=2)
    yield from _words((x, title - 0.25), block.sheet_title, 16.0, width=wide, lines=3)
    yield from _words((x, stamp + 0.45), _scales(sheet), 10.0, width=wide, lines=2)
    yield from _stamp(block.stamp, (x, stamp - 0.25), wide, 9.0)
    yield Text(((left + right) / 2, bottom + 0.4), block.sheet_number, _WORDS, 44.0, anchor="middle", heavy=True)


def _stamp(lines: tuple[str, ...], at: Point, width: float, size: float) -> Iterator[Text]:
    x, y = at
    for line in lines:
        for text in _words((x, y), line, size, width=width, lines=2):
            yield text
            y = text.at[1]


def _scales(sheet: Sheet) -> str:
    names = list(dict.fromkeys(port.scale.name for port in sheet.viewports))
    if len(names) == 1:
        return f"Scale {names[0]}"
    return "Scales as shown" if names else "No scale"


def _view_title(port: Viewport, number: int) -> Iterator[Mark]:
    """The number, title and scale under a drawing, and a scale bar that holds if a copier shrinks it."""
    x, y = port.left + 0.1, port.bottom + 0.36
    yield Symbol("tag", (x + 0.14, y), layer("symbol"), 20.0, text=str(number))
    yield Text((x + 0.38, y + 0.02), port.title, _WORDS, 10.0, heavy=True)
    yield Text((x + 0.38, y - 0.14), f"Scale {port.scale.name}", _WORDS, 7.5)
    yield from _scale_bar(port.scale, port.left + port.width - 0.25, y - 0.02)


def _scale_bar(scale: Scale, right: float, y: float) -> Iterator[Mark]:
    unit, unit_in = ("ft", 12.0) if scale.system == "us" else ("m", 1000.0 / 25.4)
    steps = (0.05, 0.1, 0.25, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0) if scale.system == "us" else (
        0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0)  # fmt: skip
    step = max((s for s in steps if 4 * s * unit_in / scale.denominator <= 2.0), default=steps[0])
    part = step * unit_in / scale.denominator
    left = right - 4 * part
    for n in range(4):
        a, b = left + n * part, left + (n + 1) * part
        box = ((a, y), (b, y), (b, y + 0.06), (a, y + 0.06))
        yield Polygon(box, _RULE, "ink" if n % 2 == 0 else "paper")
    for n in (0, 2, 4):
        text = f"{n * step:g}" + (f" {unit}" if n == 4 else "")
        yield Text((left + n * part, y - 0.12), text, _WORDS, 6.5, anchor="middle")
