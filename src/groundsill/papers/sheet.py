"""A sheet of paper of fixed size with drawings set on it at exact, standard scales.

The scale is never stretched to fit: a helper picks the largest standard scale at which a drawing fits the room, and a
drawing that does not fit is refused. Sheet coordinates are paper inches from the lower left corner.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from groundsill.papers.drawing import Drawing, Mark
from groundsill.papers.lowering import Box, box_of
from groundsill.working.errors import CannotWrite

__all__ = [
    "CAPTION",
    "FULL_SIZE",
    "PAPERS",
    "SCALES",
    "STRIP",
    "Paper",
    "Scale",
    "ScaleSystem",
    "Sheet",
    "TitleBlock",
    "View",
    "Viewport",
    "drawing_room",
    "fitting_scale",
    "sheet_of",
]

ScaleSystem = Literal["us", "metric"]
_MM = 1.0 / 25.4


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet size, lying on its long side; inches. ``strip`` says where the title block goes."""

    name: str
    width: float
    height: float
    margin: float
    strip: Literal["bottom", "right"]


PAPERS: dict[str, Paper] = {
    paper.name: paper
    for paper in (
        Paper("letter", 11.0, 8.5, 0.4, "bottom"),
        Paper("tabloid", 17.0, 11.0, 0.5, "bottom"),
        Paper("ARCH C", 24.0, 18.0, 0.5, "right"),
        Paper("ARCH D", 36.0, 24.0, 0.5, "right"),
        Paper("A4", 297 * _MM, 210 * _MM, 10 * _MM, "bottom"),
        Paper("A3", 420 * _MM, 297 * _MM, 10 * _MM, "bottom"),
    )
}


@dataclass(frozen=True, slots=True)
class Scale:
    """How many inches of the thing one inch of paper shows, and how that is written."""

    name: str
    denominator: float
    system: ScaleSystem


FULL_SIZE = Scale("full size", 1.0, "us")
SCALES: dict[ScaleSystem, tuple[Scale, ...]] = {
    "us": (
        FULL_SIZE,
        *(
            Scale(f"{inches}\" = 1'-0\"", denominator, "us")
            for inches, denominator in (
                ("6", 2.0), ("3", 4.0), ("1 1/2", 8.0), ("1", 12.0), ("3/4", 16.0), ("1/2", 24.0), ("3/8", 32.0),
                ("1/4", 48.0), ("3/16", 64.0), ("1/8", 96.0), ("3/32", 128.0), ("1/16", 192.0), ("1/32", 384.0),
            )
        ),
    ),
    "metric": tuple(Scale(f"1:{n}", float(n), "metric") for n in (1, 2, 5, 10, 20, 25, 50, 100, 200, 500, 1000)),
}  # fmt: skip
"""The standard scales of each system, largest drawing first."""


@dataclass(frozen=True, slots=True)
class View:
    """A drawing that wants a place on a sheet, and the title under it."""

    drawing: Drawing
    title: str


@dataclass(frozen=True, slots=True)
class Viewport:
    """A drawing in its place on the sheet: a rectangle in paper inches, in whose middle it stands at ``scale``."""

    drawing: Drawing
    title: str
    scale: Scale
    left: float
    bottom: float
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class TitleBlock:
    """The words of the title block. ``stamp`` lines say what the sheet was made from (program, version, survey).

    With ``seal`` a place is left blank for a professional's seal and the official's approval.
    """

    project: str
    place: str
    sheet_title: str
    sheet_number: str
    stamp: tuple[str, ...] = ()
    seal: bool = True


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet: paper, drawings in their places, title block, and marks drawn on the paper itself (paper inches).

    ``north_deg`` turns the north arrow counter-clockwise from the top of the sheet; None leaves it out.
    """

    paper: Paper
    viewports: tuple[Viewport, ...]
    title_block: TitleBlock
    north_deg: float | None = None
    annotations: tuple[Mark, ...] = ()


def fitting_scale(drawings: tuple[Drawing, ...], width: float, height: float, system: ScaleSystem = "us") -> Scale:
    """The largest standard scale at which each of the drawings fits a room of ``width`` by ``height`` paper inches.

    Raises:
        CannotWrite: when even the smallest standard scale is too large.
    """
    for scale in SCALES[system]:
        if all(_fits(drawing, scale, width, height) for drawing in drawings):
            return scale
    names = ", ".join(drawing.name for drawing in drawings)
    room = f"{width:.2f} in by {height:.2f} in"
    raise CannotWrite(f"{names}: no standard scale fits {room} of paper; take a larger sheet")


def _fits(drawing: Drawing, scale: Scale, width: float, height: float) -> bool:
    left, bottom, right, top = box_of(drawing.marks, scale.denominator)
    wide, high = (right - left) / scale.denominator, (top - bottom) / scale.denominator
    return wide <= width + 1e-9 and high <= height + 1e-9


STRIP = {"bottom": 1.1, "right": 3.2}
"""Height or width of the title block, paper inches."""
CAPTION = 0.62
"""Room under a view for its title and scale bar, paper inches."""


def drawing_room(paper: Paper) -> Box:
    """The part of the sheet inside frame and title block: left, bottom, right, top in paper inches."""
    gap, strip = 0.12, STRIP[paper.strip]
    low = paper.margin + (strip if paper.strip == "bottom" else 0.0)
    right = paper.width - paper.margin - (strip if paper.strip == "right" else 0.0)
    return (paper.margin + gap, low + gap, right - gap, paper.height - paper.margin - gap)


def sheet_of(
    paper: Paper,
    views: tuple[View, ...],
    title_block: TitleBlock,
    *,
    columns: int = 1,
    system: ScaleSystem = "us",
    scale: Scale | None = None,
    north_deg: float | None = None,
    annotations: tuple[Mark, ...] = (),
    room: Box | None = None,
) -> Sheet:
    """Set the views in rows of ``columns``, all at one scale: the one given, or the largest that fits them all.

    ``room`` keeps them out of a part of the sheet that annotations use.

    Raises:
        CannotWrite: when a view does not fit its place at the scale.
    """
    left, bottom, right, top = room or drawing_room(paper)
    rows = -(-len(views) // columns)
    width, height = (right - left) / columns, (top - bottom) / max(rows, 1)
    inner = (width - 0.2, height - CAPTION - 0.1)
    drawings = tuple(view.drawing for view in views)
    chosen = scale or fitting_scale(drawings, *inner, system)
    for drawing in drawings:
        if not _fits(drawing, chosen, *inner):
            place = f"{inner[0]:.2f} in by {inner[1]:.2f} in of {paper.name} paper"
            raise CannotWrite(f"{drawing.name} does not fit {place} at {chosen.name}")

    def port(n: int, view: View) -> Viewport:
        x, y = left + width * (n % columns), top - height * (n // columns + 1)
        return Viewport(view.drawing, view.title, chosen, x, y, width, height)

    ports = tuple(port(n, view) for n, view in enumerate(views))
    return Sheet(paper, ports, title_block, north_deg, annotations)
