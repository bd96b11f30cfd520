"""A new foundation inside the old on paper: the strip on the plan with its measures, and what it is in words."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from groundsill.forces.reading import line_ends
from groundsill.papers.drawing import Dimension, Layer, LengthStyle, Line, Mark, Point, Polygon, layer
from groundsill.papers.views.plan_frame import Frame
from groundsill.papers.views.plan_labels import Labels
from groundsill.papers.views.words import Units, counted, quantity, size, tape
from groundsill.work.inner import RESTS_ON_OLD, InnerFoundationPiece, in_lengths, length_in

if TYPE_CHECKING:
    from groundsill.work.document import House

__all__ = ["inner_told", "strip_marks"]

_STEM = Layer("S-FNDN-HIDN-N", 25, "dashed", style="new")
_GRAVITY = {
    "none": RESTS_ON_OLD,
    "second support": "second support of the floor, tight under the joists",
    "carries the floor": "carries the floor beside the old foundation",
}


def strip_marks(
    house: House, piece: InnerFoundationPiece, frame: Frame, address: str, labels: Labels, units: Units
) -> Iterator[Mark]:
    """The footing and the stem on it, with its length, its footing's width and its distance from the old line."""
    said = f"inner foundation {piece.mark}".strip()
    style: LengthStyle = "ft-in" if units == "us" else "m"
    half, stem = piece.footing_width_in / 2, piece.stem_width_in / 2
    footing = Polygon(frame.box(0.0, frame.length, -half, half), layer("new concrete"), "concrete", address, said)
    yield labels.keep(footing)
    for off in (-stem, stem):
        yield Line(frame.at(0.0, off), frame.at(frame.length, off), _STEM, address, said)
    ink = layer("dimension")

    def measured(a: Point, b: Point, tier: float, label: str) -> Dimension:
        return Dimension(a, b, ink, "right", tier=tier, shown_in=style, address=address, label=label)

    a, b = frame.at(0.0, half), frame.at(frame.length, half)
    yield measured(*((b, a) if _left_is_out(frame) else (a, b)), 2.0, f"length of {said}")  # beyond the line's mark
    at = frame.length * 0.12
    yield measured(frame.at(at, -half), frame.at(at, half), 0.0, f"width of the footing of {said}")
    away = _away(house, piece, frame)
    if away:
        at = frame.length * 0.88
        yield measured(frame.at(at), frame.at(at, away), 0.0, f"{said} to the old line")


def _left_is_out(frame: Frame) -> bool:
    return frame.along[0] * frame.out[1] - frame.along[1] * frame.out[0] > 0


def _away(house: House, piece: InnerFoundationPiece, frame: Frame) -> float:
    """How far out the first old line lies from the strip's middle, model inches along the frame's way out."""
    old = house.survey.underfloor.lines.get(piece.relieves[0])
    if old is None:
        return 0.0
    (x, y), _ = line_ends(house, old)
    return (x - frame.start[0]) * frame.out[0] + (y - frame.start[1]) * frame.out[1]


def inner_told(piece: InnerFoundationPiece, units: Units) -> tuple[str, str, str]:
    """Where it is, what it is made of, and what of the floor it holds up."""
    footing = f"footing {size(piece.footing_width_in, units)} x {size(piece.footing_thickness_in, units)}"
    stem = f"stem {size(piece.stem_width_in, units)}, {size(piece.above_soil_in, units)} above the soil"
    deep = f"bottom {size(piece.depth_in, units)} below the soil inside"
    bars = (
        f"{counted(piece.bars_bottom, f'{piece.bar} bar')} at the bottom, {piece.bars_top} at the top, "
        f"{size(piece.cover_in, units)} of cover, {'hooked' if piece.hooked else 'straight'} at the ends"
    )
    ties = "" if piece.ties == "none" else f"; {piece.ties} at {size(piece.tie_spacing_in, units)} into the stem"
    wall = (
        f"cripple wall {size(piece.wall_height_in, units)} of {size(piece.stud_thickness_in, units)} x "
        f"{size(piece.stud_depth_in, units)} studs at {size(piece.stud_spacing_in, units)}, {piece.species}"
    )
    dig = "trench open over its whole length, poured in one"
    if piece.dig_length_in is not None and in_lengths(piece):
        laps = "" if piece.lap_in is None else f", bars left {size(piece.lap_in, units)} out of each length poured"
        dig = f"dug in alternate lengths of at most {size(piece.dig_length_in, units)}{laps}"
    what = f"{footing}, {stem}, {deep}; {bars}{ties}; {wall}; {dig}; {_GRAVITY[piece.gravity]}"
    if piece.on_expansive != "not told":
        what += f"; on expansive soil: {piece.on_expansive}, by {piece.expansive_report or 'nobody named'}"
    return f"{tape(length_in(piece), units)} long", what, f"concrete {quantity(piece.strength_psi, 'psi', units)}"
