"""The faces of a foundation body that push against soil when it slides: cross footings, and the free ends of strips.

A strip pushed along its length has nothing but its end; a cross footing has its whole length, on the side it is pushed
toward. The top foot of soil, loosened by weather and spade, is not counted, but for soil that is paved. An end that
meets other concrete pushes against that and not against soil.
"""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.forces.levels import outline_of
from groundsill.forces.reading import Reading, doubted
from groundsill.forces.seismic import Forces
from groundsill.forces.share import Direction
from groundsill.loadpath.footings import Body, Part, inside_depth_in, meets_other
from groundsill.loadpath.ground import lateral_value, shrinks, table_holds
from groundsill.loadpath.stem import height_facts
from groundsill.mechanics.plan import inside
from groundsill.standards.ibc_2021.soils import combined_resistance, lateral_resultant
from groundsill.working.steps import add, given, note
from groundsill.working.value import Mark

__all__ = ["LOOSE_FT", "Pushed", "against_soil", "with_faces"]

LOOSE_FT = 1.0  # top foot of soil, disturbed by weather and spade: not counted; chosen here
_MOST_FT = 15.0  # beyond this depth the table's pressure no longer grows
_PROBE_IN = 12.0


@dataclass(frozen=True, slots=True)
class Pushed:
    """Faces pushed against soil: feet of them by depth of their bottom and top not counted, ft; ends likewise.

    ``marks`` are those of all measures that say which faces there are and how deep; ``why_none`` says why the soil
    gives no pressure against any.
    """

    faces: tuple[tuple[float, float, float], ...]
    ends: tuple[tuple[float, float, float], ...]
    unknown_ft: float
    marks: frozenset[Mark]
    why_none: str = ""

    def words(self, toward: str) -> str:
        """What was counted, and what was not, for the reason of the link."""
        counted = sum(feet for feet, _, _ in self.faces)
        found = f" and {counted:.0f} ft of cross footings against the soil, toward {toward}" if counted else ""
        if self.ends and not counted:
            found += " and its own end: a strip pushed along its length has almost no soil against it"
        elif self.ends:
            found += f" and {len(self.ends)} end{'s' if len(self.ends) > 1 else ''} of strips"
        if self.unknown_ft:
            found += f"; {self.unknown_ft:.0f} ft of cross footings not counted: their depth in that soil is not known"
        return found + (f"; {self.why_none}" if self.why_none else "")


def against_soil(reading: Reading, forces: Forces, body: Body, direction: Direction, sign: int) -> Pushed:
    """What of a body pushed along a direction pushes against soil: cross footings, and free ends of its strips."""
    feet_by: dict[tuple[float, float], float] = {}
    unknown, doubts = 0.0, set[Mark]()
    ends: list[tuple[float, float, float]] = []
    for part in body.parts:
        along = forces.lines[part.segment.line].direction
        if along == direction:
            ends += _end(reading, part, direction, sign)
            if ends:
                doubts |= part.marked(reading, "top_width_in", *_face_facts(part, 0))
        if along in (direction, None):
            continue
        way = _outward(reading, part, direction) * sign
        face = _face(part, way)
        doubts |= part.marked(reading, *_face_facts(part, way))
        if face is None:
            unknown += part.length_ft
        elif face[0] > face[1]:
            feet_by[face] = feet_by.get(face, 0.0) + part.length_ft
    faces = tuple((feet, *face) for face, feet in sorted(feet_by.items()))
    why_none = _why_none(reading, body) if faces or ends or unknown else ""
    if why_none:
        return Pushed((), (), 0.0, frozenset(doubts), why_none)
    return Pushed(faces, tuple(sorted(ends)), unknown, frozenset(doubts))


def _why_none(reading: Reading, body: Body) -> str:
    """Why the soil gives no pressure against any face: it has shrunk away, or nobody says what it gives."""
    if shrinks(reading):
        return "expansive soil may have shrunk away: no face is counted"
    if reading.house.survey.site.soil.lateral_pcf.value is None and (why := table_holds(reading, body.parts)):
        return f"no face is counted: {why}"
    return ""


def _end(reading: Reading, part: Part, direction: Direction, sign: int) -> list[tuple[float, float, float]]:
    """The end of a strip that is pushed along its length: width, depth, and top not counted, ft; none that is hidden.

    As wide as the stem at its top, or as the footing where that is narrower.
    """
    axis = 0 if direction == "x" else 1
    end = max(part.start, part.end, key=lambda p: sign * p[axis])
    widths = [w for w in (part.segment.top_width_in.value, part.segment.footing_width_in.value) if w is not None]
    face = _face(part, 0)
    if not widths or face is None or face[0] <= face[1] or meets_other(reading, part, end):
        return []
    return [(min(widths) / 12, *face)]


def _face(part: Part, way: int) -> tuple[float, float] | None:
    """Depth of a face's bottom, and of the soil above it that is not counted, ft; None when the depth is not known.

    ``way`` is 1 for a push outward, against the soil outside, -1 inward, 0 where no side is outside: then the lesser.
    """
    s = part.segment
    outside = (s.depth_in.value, s.above_outside_soil_in.value, 0.0 if s.paved_outside.value else LOOSE_FT)
    within = (inside_depth_in(s), s.above_inside_soil_in.value, LOOSE_FT)
    found = []
    for depth, above, top in (outside,) if way > 0 else (within,) if way < 0 else (outside, within):
        if depth is None:
            return None
        loose = max(top, -above / 12 if above is not None else 0.0)
        found.append((min(depth / 12, _MOST_FT), loose))
    return min(found, key=lambda face: face[0] - face[1])


def _face_facts(part: Part, way: int) -> tuple[str, ...]:
    """The facts that a face's depth rests on, by their names."""
    outside = ("depth_in", "above_outside_soil_in", "paved_outside")
    return outside if way > 0 else (*outside, "above_inside_soil_in", *height_facts(part.segment))


def _outward(reading: Reading, part: Part, direction: Direction) -> int:
    """Which way along a direction is out of the house at a cross footing: 1, -1, or 0 when both sides are alike."""
    survey = reading.house.survey
    storey = survey.building.storeys[survey.underfloor.lines[part.segment.line].storey]
    outline = outline_of(reading, storey.outline)
    x, y = (part.start[0] + part.end[0]) / 2, (part.start[1] + part.end[1]) / 2
    dx, dy = (_PROBE_IN, 0.0) if direction == "x" else (0.0, _PROBE_IN)
    return int(inside((x - dx, y - dy), outline)) - int(inside((x + dx, y + dy), outline))


def with_faces(reading: Reading, body: Body, under: float, pushed: Pushed, toward: str) -> float:
    """What holds a body pushed one way: under it, and on the faces that push against soil."""
    if not pushed.faces and not pushed.ends:
        note(f"toward {toward} no embedded face is counted")
        return doubted(under, pushed.marks)
    S_L = lateral_value(reading, body.parts)
    assert S_L is not None  # a push with faces has been asked whether the soil gives any
    what = "cross footings pushed toward {} against soil", "end of a strip pushed toward {} against soil"
    found = [
        lateral_resultant(
            S_L,
            given("b", feet, "ft", words.format(toward)),
            given("d", depth, "ft", "depth of their bottom in that soil", pushed.marks),
            given("d_0", loose, "ft", "disturbed soil, or none, at the top: not counted", pushed.marks),
        )
        for words, every in zip(what, (pushed.faces, pushed.ends), strict=True)
        for feet, depth, loose in every
    ]
    faces = found[0] if len(found) == 1 else add(*found, symbol="R_L", label=f"all faces pushed toward {toward}")
    return combined_resistance(under, faces)
