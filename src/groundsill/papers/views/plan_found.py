"""The underfloor plan as found, mark by mark: foundation, walls, bolts, openings, obstructions, girders, dimensions.

Outward from a line, on paper: the stem on the line, labels of openings and breaks, obstructions outside, the length of
the line, its mark and force, the length of the whole house. Inward: wall segments with their heights, obstructions.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from groundsill.house.foundation import FoundationSegment
from groundsill.house.survey import in_order
from groundsill.house.underfloor import Obstruction, Segment
from groundsill.papers.drawing import (
    Dimension,
    Fill,
    Layer,
    LengthStyle,
    Line,
    Mark,
    Point,
    Polygon,
    Symbol,
    Text,
    layer,
)
from groundsill.papers.sheet import Scale
from groundsill.papers.views.plan_frame import Frame, box_of_points, frame_of, lowest_outline
from groundsill.papers.views.plan_labels import SMALL, Labels
from groundsill.papers.views.words import Units, tape
from groundsill.work.document import House

__all__ = ["TAG_OUT", "LineForces", "found_marks", "frames", "ground_marks", "line_tags"]

TAG_OUT = 0.90
"""How far out of the house a line's mark stands, inches of paper."""
_DIMENSION_TIER = 1.75
_OVERALL_OUT = 1.22
_TAG_IN = 0.36

_FLOOR = Layer("S-FLOR-OTLN-E", 18, style="existing", ink=0.7)
_UNKNOWN = Layer("S-FNDN-UNKN-E", 18, "dashed", style="existing")
_FILLS: dict[str, Fill] = {"poured concrete": "tint", "brick": "masonry", "stone": "crossed", "block": "hatched"}
_LEAST_WIDTH = 0.07
"""A stem is drawn at least so wide, inches of paper, that its fill can be told."""


@dataclass(frozen=True, slots=True)
class LineForces:
    """What is written of each line's force, by the line's id, and the units of the plan."""

    words: Mapping[str, str]
    units: Units


def frames(house: House, scale: Scale) -> dict[str, Frame]:
    """The frame of every line by its id."""
    return {id: frame_of(house, line, scale) for id, line in in_order(house.survey.underfloor.lines)}


def found_marks(house: House, scale: Scale, forces: LineForces) -> Iterator[Mark]:
    """Everything found under the floor. Line marks and signs take their places first, labels find theirs after."""
    known, labels, units = frames(house, scale), Labels(scale.denominator), forces.units
    for mark in ground_marks(house, known):
        yield labels.keep(mark) if isinstance(mark, Polygon) and mark.address else mark
    yield from _dimensions(house, known, scale, units, labels)
    yield from line_tags(house, known, forces, labels)
    yield from _signs(house, known, labels)
    yield from _obstructions(house, known, labels)
    yield from _segments(house, known, units, labels)
    yield from _openings(house, known, labels)
    yield from _breaks(house, known, labels)
    yield from _obstruction_marks(house, known, labels)
    yield from _floor_words(house, scale, labels)


def ground_marks(house: House, known: Mapping[str, Frame]) -> Iterator[Mark]:
    """The outline of the floor and the foundation under it."""
    outline = lowest_outline(house)
    if outline:
        yield Polygon(outline, _FLOOR)
    for id, stretch in in_order(house.survey.foundation.segments):
        if stretch.material != "none":
            yield _stem(id, stretch, known[stretch.line])


def _stem(id: str, stretch: FoundationSegment, frame: Frame) -> Polygon:
    half = max(stretch.top_width_in.value or 0.0, _LEAST_WIDTH * frame.paper) / 2
    ink = _UNKNOWN if stretch.material == "not seen" else layer("foundation")
    words = f"Foundation {stretch.mark}: {stretch.material}"
    corners = frame.box(stretch.from_in, stretch.to_in, -half, half)
    return Polygon(corners, ink, _FILLS.get(stretch.material, "none"), f"foundation/{id}", words)


def _signs(house: House, known: Mapping[str, Frame], labels: Labels) -> Iterator[Mark]:
    """Girders, posts, chimneys, access and bolts: what is drawn where it is."""
    under = house.survey.underfloor
    for id, girder in in_order(under.girders):
        a, b = (girder.start.x_in, girder.start.y_in), (girder.end.x_in, girder.end.y_in)
        yield Line(a, b, layer("wall beyond"), f"girder/{id}", f"Girder {girder.mark}")
    for id, post in in_order(under.posts):
        at = (post.at.x_in, post.at.y_in)
        yield labels.keep(Symbol("post", at, layer("framing"), 6.0, address=f"post/{id}", label=f"Post {post.mark}"))
    for id, chimney in in_order(house.survey.building.chimneys):
        x, y, w, h = chimney.at.x_in, chimney.at.y_in, chimney.x_size_in / 2, chimney.y_size_in / 2
        box = ((x - w, y - h), (x + w, y - h), (x + w, y + h), (x - w, y + h))
        yield labels.keep(Polygon(box, layer("wall"), "masonry", f"chimney/{id}", f"Chimney {chimney.mark}"))
    for id, hatch in in_order(under.hatches):
        at = (hatch.at.x_in, hatch.at.y_in)
        yield labels.keep(Symbol("access", at, layer("opening"), 11.0, address=f"hatch/{id}", label="Access"))
    for id, bolt in in_order(under.bolts):
        at, said = known[bolt.line].at(bolt.station_in), f"Existing bolt {bolt.mark}"
        yield Symbol("bolt", at, layer("framing"), 5.5, address=f"bolt/{id}", label=said)


def _floor_words(house: House, scale: Scale, labels: Labels) -> Iterator[Mark]:
    """The marks of girders, posts, chimneys and access, each beside its own."""
    under, building, paper = house.survey.underfloor, house.survey.building, scale.denominator
    for id, post in in_order(under.posts):
        if post.mark:
            yield _beside(labels, (post.at.x_in, post.at.y_in), 0.07, paper, post.mark, f"post/{id}")
    for id, girder in in_order(under.girders):
        if girder.mark:
            a, b = girder.start, girder.end
            at = (a.x_in + (b.x_in - a.x_in) * 0.3, a.y_in + (b.y_in - a.y_in) * 0.3)
            yield _beside(labels, at, 0.03, paper, girder.mark, f"girder/{id}")
    for id, chimney in in_order(building.chimneys):
        at = (chimney.at.x_in, chimney.at.y_in)
        off = max(chimney.x_size_in, chimney.y_size_in) / 2 / paper + 0.03
        yield _beside(labels, at, off, paper, f"chimney {chimney.mark}".strip(), f"chimney/{id}")
    for id, hatch in in_order(under.hatches):
        words = f"access {hatch.mark}".strip()
        yield _beside(labels, (hatch.at.x_in, hatch.at.y_in), 0.1, paper, words, f"hatch/{id}")


def _beside(labels: Labels, at: Point, off: float, paper: float, words: str, address: str) -> Text:
    """A label to the right of a sign, or left, above or below it."""
    ink, d = layer("text"), off * paper
    return labels.first(
        (
            Text((at[0] + d, at[1]), words, ink, SMALL, baseline="middle", address=address),
            Text((at[0] - d, at[1]), words, ink, SMALL, anchor="end", baseline="middle", address=address),
            Text((at[0], at[1] + d), words, ink, SMALL, anchor="middle", baseline="bottom", address=address),
            Text((at[0], at[1] - d), words, ink, SMALL, anchor="middle", baseline="top", address=address),
            Text((at[0] + d, at[1] + d), words, ink, SMALL, baseline="bottom", address=address),
            Text((at[0] + d, at[1] - d), words, ink, SMALL, baseline="top", address=address),
        )
    )


def _segments(house: House, known: Mapping[str, Frame], units: Units, labels: Labels) -> Iterator[Mark]:
    """The wall segments just inside their line, end to end, each with its mark and height."""
    for id, segment in in_order(house.survey.underfloor.segments):
        frame, words = known[segment.line], _height(segment, units)
        address, said, off, ink = f"segment/{id}", f"Wall segment {segment.mark}: {words}", -0.10, layer("framing")
        yield Line(frame.at(segment.from_in, paper=off), frame.at(segment.to_in, paper=off), ink, address, said)
        for station in (segment.from_in, segment.to_in):
            ends = (frame.at(station, paper=off - 0.03), frame.at(station, paper=off + 0.03))
            yield Line(*ends, ink, address, said)
        middle = (segment.from_in + segment.to_in) / 2
        name, reach = f"{segment.mark} {words}".strip(), (segment.to_in - segment.from_in) / 2
        yield labels.along(frame, middle, name, (-0.18, -0.28, -0.44, -0.54), address, said, reach=reach)


def _height(segment: Segment, units: Units) -> str:
    if segment.kind == "joists on sill":
        return "on sill"
    if segment.kind == "open":
        return "open"
    height = "height not known" if segment.height_in.value is None else tape(segment.height_in.value, units)
    return f"posts {height}" if segment.kind == "posts" else height


def _openings(house: House, known: Mapping[str, Frame], labels: Labels) -> Iterator[Mark]:
    for id, opening in in_order(house.survey.underfloor.openings):
        frame, said = known[opening.line], f"{opening.kind} {opening.mark}".strip()
        half = 0.05 * frame.paper
        box = frame.box(opening.from_in, opening.to_in, -half, half)
        yield Polygon(box, layer("opening"), "paper", f"opening/{id}", said)
        middle = (opening.from_in + opening.to_in) / 2
        yield labels.along(frame, middle, opening.mark, (0.13, 0.23), f"opening/{id}", said)


def _obstructions(house: House, known: Mapping[str, Frame], labels: Labels) -> Iterator[Mark]:
    """What is in the way: a dashed frame on the side of the wall where it is."""
    for id, thing in in_order(house.survey.underfloor.obstructions):
        frame, said = known[thing.line], _obstruction_words(thing)
        near, far = _OBSTRUCTED[thing.side]
        box = frame.box(thing.from_in, thing.to_in, near * frame.paper, far * frame.paper)
        yield labels.keep(Polygon(box, layer("obstruction"), "none", f"obstruction/{id}", said))


def _obstruction_marks(house: House, known: Mapping[str, Frame], labels: Labels) -> Iterator[Mark]:
    for id, thing in in_order(house.survey.underfloor.obstructions):
        frame, said = known[thing.line], _obstruction_words(thing)
        near, _ = _OBSTRUCTED[thing.side]
        middle = (thing.from_in + thing.to_in) / 2
        offs = (0.37, 0.13) if thing.side == "outside" else (near - 0.07, near - 0.17, near - 0.27)
        yield labels.along(frame, middle, f"{thing.mark} {thing.kind}".strip(), offs, f"obstruction/{id}", said)


_OBSTRUCTED = {"inside": (-0.36, -0.28), "outside": (0.22, 0.30), "through": (-0.34, 0.12)}
"""Where an obstruction is drawn, from and to, inches of paper out of its line."""


def _obstruction_words(thing: Obstruction) -> str:
    moves: dict[bool | None, str] = {
        True: "can be moved",
        False: "cannot be moved",
        None: "not known whether it can be moved",
    }
    return f"{thing.kind} {thing.mark}, {thing.side}, {moves[thing.can_move.value]}"


def _breaks(house: House, known: Mapping[str, Frame], labels: Labels) -> Iterator[Mark]:
    for id, cut in in_order(house.survey.foundation.breaks):
        frame, said = known[cut.line], f"{cut.kind} {cut.mark}".strip()
        address = f"break/{id}"
        if cut.kind == "step":
            half = 0.08 * frame.paper
            yield Line(frame.at(cut.station_in, -half), frame.at(cut.station_in, half), layer("defect"), address, said)
        else:
            at, turn = frame.at(cut.station_in), frame.turn + 90.0
            yield Symbol("crack", at, layer("defect"), 12.0, rotation=turn, address=address, label=said)
        yield labels.along(frame, cut.station_in, f"{cut.mark} {_BREAKS[cut.kind]}", (0.23, 0.13, 0.33), address, said)


_BREAKS = {
    "full-depth crack": "crack, full depth",
    "crack": "crack",
    "cold joint": "cold joint",
    "step": "step",
    "gap": "gap",
}


def line_tags(house: House, known: Mapping[str, Frame], forces: LineForces, labels: Labels) -> Iterator[Mark]:
    """Each line's mark in a circle with its name, and its force with the direction it acts in."""
    for id, line in in_order(house.survey.underfloor.lines):
        words = tuple(filter(None, (line.name, forces.words.get(id, ""))))
        said = f"Line {line.mark} {line.name}".strip()
        shifts = (0.0, 0.55, -0.55, 0.85, -0.85)
        yield from labels.group(_tag(known[id], shift, line.mark, words, f"line/{id}", said) for shift in shifts)


def _tag(frame: Frame, shift: float, mark: str, words: tuple[str, ...], address: str, said: str) -> tuple[Mark, ...]:
    """A line's mark and words, moved along it by so many inches of paper."""
    off = TAG_OUT if frame.outer else _TAG_IN
    middle = frame.middle + shift * frame.paper
    back = frame.at(middle - 0.24 * frame.paper * frame.reading, paper=off)
    start = middle - 0.08 * frame.paper * frame.reading
    told: list[Mark] = [Symbol("tag", back, layer("symbol"), 17.0, text=mark, address=address, label=said)]
    for place, text in enumerate(words):
        at = frame.at(start, paper=off + (0.03 if place == 0 else -0.09) * frame.above)
        told.append(Text(at, text, layer("text"), 7.0, rotation=frame.turn, heavy=place == 1, address=address))
    return tuple(told)


def _dimensions(house: House, known: Mapping[str, Frame], scale: Scale, units: Units, labels: Labels) -> Iterator[Mark]:
    """Every outer line by its length, and the whole house in both directions where no line shows it."""
    style: LengthStyle = "ft-in" if units == "us" else "m"
    shown = []
    for id, line in in_order(house.survey.underfloor.lines):
        frame = known[id]
        if not frame.outer:
            continue
        shown.append(round(frame.length))
        left_is_out = frame.along[0] * frame.out[1] - frame.along[1] * frame.out[0] > 0
        measured = Dimension(
            frame.start,
            frame.at(frame.length),
            layer("dimension"),
            "left" if left_is_out else "right",
            tier=_DIMENSION_TIER,
            shown_in=style,
            address=f"line/{id}",
            label=f"Length of line {line.mark}",
        )
        yield measured
        off = _DIMENSION_TIER / 3 + 0.08 * frame.above
        labels.along(frame, frame.middle, measured.text, (off,), "", "")
    outline = lowest_outline(house)
    if outline:
        left, bottom, right, top = box_of_points(outline)
        far = _OVERALL_OUT * scale.denominator
        if round(right - left) not in shown:
            yield Dimension((left, bottom), (right, bottom), layer("dimension"), "right", far, 0.0, style)
        if round(top - bottom) not in shown:
            yield Dimension((left, bottom), (left, top), layer("dimension"), "left", far, 0.0, style)
