"""Drawings as SVG: for a screen, with classes and addresses; for paper, in points with every line weight written in.

A screen drawing carries no inline style (a strict content policy would drop it); ``drawing.css`` beside this module
gives its classes their looks, in light and in dark. Marks that share an address form one group with ``data-address``;
where the page reacts to taps the group can be reached by keyboard, is named in words, and has a wide unseen line
around it so that a thumb finds it.

A paper drawing is one leaf at its true size: a point of the drawing is a point of paper.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import groupby

from groundsill.papers.drawing import (
    Arc,
    BasicMark,
    Circle,
    Drawing,
    Fill,
    Layer,
    Line,
    LineType,
    Point,
    Polygon,
    Polyline,
    Text,
)
from groundsill.papers.letters import CAP_HEIGHT
from groundsill.papers.lowering import POINTS_PER_INCH, box_of, lower
from groundsill.papers.placing import Leaf
from groundsill.papers.sheet import Scale, fitting_scale
from groundsill.papers.writers.escape import markup
from groundsill.papers.writers.svg_fills import fill_of, pattern_defs

__all__ = ["PaperWords", "paper_svg", "paper_words", "screen_svg"]

_DASHES: dict[LineType, tuple[float, ...]] = {
    "continuous": (),
    "dashed": (12.0, 4.0),
    "center": (24.0, 4.0, 3.0, 4.0),
    "phantom": (24.0, 4.0, 3.0, 4.0, 3.0, 4.0),
    "dotted": (1.5, 4.0),
}
"""Dash patterns in line widths, after ISO 128, for a line of 0.25 mm."""
_HUNDREDTHS_MM = POINTS_PER_INCH / 2540.0


def _n(number: float) -> str:
    """A coordinate with four decimals at most, and never a minus zero."""
    text = f"{number:.4f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _path(points: tuple[Point, ...], closed: bool) -> str:
    steps = "L".join(f"{_n(x)} {_n(y)}" for x, y in points)
    return f"M{steps}{'Z' if closed else ''}"


def _arc_path(mark: Arc, at: Callable[[Point], Point], factor: float) -> str:
    """An arc; on a page whose y runs down, counter-clockwise is the negative sweep."""
    turn = (mark.end_deg - mark.start_deg) % 360.0 or 360.0

    def on_circle(degrees: float) -> Point:
        a = math.radians(degrees)
        return at((mark.center[0] + mark.radius * math.cos(a), mark.center[1] + mark.radius * math.sin(a)))

    r = _n(mark.radius * factor)
    parts = 2 if turn > 180.0 else 1  # a full circle has no arc of its own in a path: two halves do
    (x, y) = on_circle(mark.start_deg)
    path = f"M{_n(x)} {_n(y)}"
    for part in range(1, parts + 1):
        (x, y) = on_circle(mark.start_deg + turn * part / parts)
        path += f"A{r} {r} 0 0 0 {_n(x)} {_n(y)}"
    return path


def _shape(mark: BasicMark, at: Callable[[Point], Point], factor: float) -> str:
    """The element of a mark without its looks: ``<path d="..."`` or ``<circle ...``, still open."""
    match mark:
        case Line():
            return f'<path d="{_path((at(mark.start), at(mark.end)), closed=False)}"'
        case Polyline():
            return f'<path d="{_path(tuple(at(p) for p in mark.points), closed=False)}"'
        case Polygon():
            return f'<path d="{_path(tuple(at(p) for p in mark.points), closed=True)}"'
        case Circle():
            x, y = at(mark.center)
            return f'<circle cx="{_n(x)}" cy="{_n(y)}" r="{_n(mark.radius * factor)}"'
        case Arc():
            return f'<path d="{_arc_path(mark, at, factor)}"'
    raise TypeError(f"{type(mark).__name__} is no shape")


def _words(mark: Text, at: Callable[[Point], Point], factor: float, looks: str) -> str:
    x, y = at(mark.at)
    size = mark.size * factor
    drop = {"bottom": 0.0, "middle": 0.5, "top": 1.0}[mark.baseline] * CAP_HEIGHT * size
    turn = f' transform="rotate({_n(-mark.rotation)} {_n(x)} {_n(y)})"' if mark.rotation else ""
    return (
        f'<text x="{_n(x)}" y="{_n(y + drop)}" font-size="{_n(size)}" text-anchor="{mark.anchor}"{turn}{looks}>'
        f"{markup(mark.text)}</text>"
    )


def _fill(mark: BasicMark) -> Fill:
    return mark.fill if isinstance(mark, (Polygon, Circle)) else "none"


# --- screen ---------------------------------------------------------------------------------------------------------


def screen_svg(
    drawing: Drawing,
    *,
    title: str,
    alternative: str,
    scale: Scale | None = None,
    ident: str = "drawing",
    reacts: bool = False,
) -> str:
    """A drawing for the screen: ``viewBox`` in model inches (y turned down), classes, addresses, title and description.

    Args:
        drawing: what is drawn.
        title: its short name, read out first.
        alternative: what it shows, in words.
        scale: the paper scale whose letter heights and symbol sizes are used; by default the one that fits a letter
            sheet.
        ident: begins every id, so that several drawings can share a page.
        reacts: whether taps on marks do something; then each address is a button that the keyboard reaches.

    Raises:
        ValueError: without an alternative text.
    """
    if not alternative.strip():
        raise ValueError(f"drawing {drawing.name!r} has no alternative text: say in words what it shows")
    used = scale or fitting_scale((drawing,), 10.0, 7.5)
    point = used.denominator / POINTS_PER_INCH
    left, bottom, right, top = box_of(drawing.marks, used.denominator)
    pad = 3.0 * point
    view = f"{_n(left - pad)} {_n(-top - pad)} {_n(right - left + 2 * pad)} {_n(top - bottom + 2 * pad)}"
    marks = tuple(lower(drawing.marks, used.denominator))
    name = markup(ident)
    role = "group" if reacts else "img"
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" class="gs-drawing" viewBox="{view}" role="{role}" '
        f'aria-labelledby="{name}-title {name}-desc">',
        f'<title id="{name}-title">{markup(title)}</title>',
        f'<desc id="{name}-desc">{markup(alternative)}</desc>',
        pattern_defs((_fill(m) for m in marks), name, point, classes=True),
    ]
    reached: set[str] = set()
    for (address, label), group in groupby(marks, key=lambda m: (m.address, m.label)):
        drawn = [_screen_mark(mark, name) for mark in group]
        if not address:
            parts.extend(drawn)
            continue
        first = reacts and address not in reached
        reached.add(address)
        parts.append(_group_tag(address, label, button=first))
        if reacts:
            parts.extend(_hit(d) for d in drawn if not d.startswith("<text"))
        parts.extend((*drawn, "</g>"))
    parts.append("</svg>")
    return "\n".join(part for part in parts if part)


def _group_tag(address: str, label: str, button: bool) -> str:
    """The group of one address. Only its first group takes the focus, so that tabbing meets each object once."""
    named = markup(label or address)
    reach = f' tabindex="0" role="button" aria-label="{named}"' if button else ""
    says = f"<title>{named}</title>" if label else ""
    return f'<g class="gs-mark" data-address="{markup(address)}"{reach}>{says}'


def _hit(drawn: str) -> str:
    """The same outline again, unseen and wide (a stylesheet makes it 44 pixels), for thumbs."""
    shape, _, _ = drawn.partition(' class="')
    return f'{shape} class="gs-hit"/>'


def _screen_mark(mark: BasicMark, ident: str) -> str:
    def at(p: Point) -> Point:
        return (p[0], -p[1])

    kind = mark.layer.style
    if isinstance(mark, Text):
        heavy = " gs-heavy" if mark.heavy else ""
        return _words(mark, at, 1.0, f' class="gs-words gs-{kind}{heavy}"')
    fill = _fill(mark)
    looks = f' class="gs-line gs-w{mark.layer.weight} gs-{mark.layer.line_type} gs-{kind} gs-fill-{fill}"'
    paint = fill_of(fill, ident)
    if paint.startswith("url"):  # a plain fill is the stylesheet's; only the pattern's address must be written here
        looks += f' fill="{paint}"'
    return f"{_shape(mark, at, 1.0)}{looks}/>"


# --- paper ----------------------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class PaperWords:
    """One line of words on a leaf: points from the upper left corner, y down, turned counter-clockwise."""

    x: float
    y: float
    size: float
    mark: Text


def paper_svg(leaf: Leaf, *, words: bool = True, ident: str = "leaf") -> str:
    """A leaf at true size: width and height in millimetres, ``viewBox`` in points, looks as presentation attributes.

    Without ``words`` only the lines are drawn; a PDF writer then sets the words itself, so that they stay whole,
    searchable words (see :func:`paper_words`).
    """
    drawn = [_paper_mark(mark, at, factor, ident) for mark, at, factor in _placed(leaf) if not isinstance(mark, Text)]
    if words:
        drawn.extend(
            _words(mark, at, factor, f' fill="{_ink(mark.layer)}"{_weight(mark)}')
            for mark, at, factor in _placed(leaf)
            if isinstance(mark, Text)
        )
    mm = 25.4 / POINTS_PER_INCH
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{_n(leaf.width * mm)}mm" height="{_n(leaf.height * mm)}mm" '
        f'viewBox="0 0 {_n(leaf.width)} {_n(leaf.height)}" font-family="\'Libertinus Serif\', serif" fill="none">'
    )
    defs = pattern_defs((_fill(mark) for mark, _, _ in _placed(leaf)), ident, 1.0, classes=False)
    return "\n".join(part for part in (head, defs, *drawn, "</svg>") if part)


def paper_words(leaf: Leaf) -> tuple[PaperWords, ...]:
    """Every line of words on a leaf, in points from its upper left corner."""
    found = []
    for mark, at, factor in _placed(leaf):
        if isinstance(mark, Text):
            x, y = at(mark.at)
            found.append(PaperWords(x, y, mark.size * factor, mark))
    return tuple(found)


def _placed(leaf: Leaf) -> Iterator[tuple[BasicMark, Callable[[Point], Point], float]]:
    for placed in leaf.placements:
        factor, dx, dy = placed.factor, placed.dx, leaf.height - placed.dy

        def at(p: Point, factor: float = factor, dx: float = dx, dy: float = dy) -> Point:
            return (p[0] * factor + dx, dy - p[1] * factor)

        for mark in lower(placed.marks, placed.denominator):
            yield mark, at, factor


def _ink(layer: Layer) -> str:
    level = round(255 * (1.0 - layer.ink))
    return f"#{level:02x}{level:02x}{level:02x}"


def _weight(mark: Text) -> str:
    return ' font-weight="700"' if mark.heavy else ""


def _paper_mark(mark: BasicMark, at: Callable[[Point], Point], factor: float, ident: str) -> str:
    layer = mark.layer
    width = layer.weight * _HUNDREDTHS_MM
    unit = max(width, 0.25 * POINTS_PER_INCH / 25.4) if layer.line_type != "continuous" else 0.0
    dashes = " ".join(_n(d * unit) for d in _DASHES[layer.line_type])
    looks = f' stroke="{_ink(layer)}" stroke-width="{_n(width)}" stroke-linejoin="round"'
    if dashes:
        looks += f' stroke-dasharray="{dashes}"'
    fill = _fill(mark)
    if fill != "none":
        looks += f' fill="{fill_of(fill, ident)}"'
    return f"{_shape(mark, at, factor)}{looks}/>"
