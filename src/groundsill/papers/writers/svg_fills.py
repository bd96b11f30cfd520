"""Fills of drawings: plain ones, and patterns that tell materials apart without colour.

The patterns are the usual ones of building drawings: slanting lines, dots and triangles for concrete, courses for
masonry, strokes for soil, grain for wood. *Hatched* is also how an indicated value is told from one that passes.
"""

from __future__ import annotations

from collections.abc import Iterable

from groundsill.papers.drawing import Fill

__all__ = ["fill_of", "pattern_defs"]

_PLAIN: dict[Fill, str] = {"none": "none", "paper": "#ffffff", "ink": "#000000", "tint": "#e6e6e6"}

# name: width and height of the cell in points, path of the strokes, turn of the cell in degrees
_PATTERNS: dict[Fill, tuple[float, float, str, float]] = {
    "hatched": (4.5, 4.5, "M0 0V4.5", 45.0),
    "crossed": (4.5, 4.5, "M0 0V4.5M0 0H4.5", 45.0),
    "concrete": (16, 16, "M3 3h.4M9 2h.4M13 6h.4M6 8h.4M2 12h.4M8 14h.4M11 10l2.4 .6-1.6 1.8zM4 5l2 .2-1 1.4z", 0.0),
    "masonry": (13, 9, "M0 0H13M0 4.5H13M3 0V4.5M9.5 4.5V9", 0.0),
    "earth": (15, 15, "M0 5L5 0M2.5 7L9.5 0M5 9L9.5 4.5M8 14L14 8M11 15L15 11", 0.0),
    "wood": (22, 7, "M0 1.5C6 .6 14 2.4 22 1.5M0 5C7 5.8 15 4.2 22 5", 0.0),
}


def fill_of(fill: Fill, ident: str) -> str:
    """The paint of a fill: a plain colour, or the address of its pattern among the definitions of ``ident``."""
    return _PLAIN.get(fill, f"url(#{ident}-{fill})")


def pattern_defs(fills: Iterable[Fill], ident: str, point: float, classes: bool) -> str:
    """A ``<defs>`` with the patterns in use, or nothing. ``point`` is a paper point in the drawing's own unit."""
    used = sorted({fill for fill in fills if fill in _PATTERNS})
    if not used:
        return ""
    looks = ' class="gs-pattern"' if classes else ' stroke="#000000" stroke-width="0.35"'
    cells = []
    for fill in used:
        width, height, path, turn = _PATTERNS[fill]
        change = (f"rotate({turn:g}) " if turn else "") + f"scale({point:.6g})"
        cells.append(
            f'<pattern id="{ident}-{fill}" width="{width:g}" height="{height:g}" patternUnits="userSpaceOnUse" '
            f'patternTransform="{change}"><path d="{path}" fill="none"{looks}/></pattern>'
        )
    return f"<defs>{''.join(cells)}</defs>"
