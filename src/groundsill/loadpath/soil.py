"""A foundation body against the soil: sliding along each direction, and overturning about its far edge.

Both are asked for the earthquake, and with ``lateral`` for wind, whose overturning is not reduced at the soil.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from groundsill.forces.levels import outline_of
from groundsill.forces.reading import Reading, doubted
from groundsill.forces.seismic import Forces
from groundsill.forces.share import Direction
from groundsill.forces.wind import Lateral
from groundsill.loadpath.case import cannot, checked
from groundsill.loadpath.chain import Link
from groundsill.loadpath.footings import DEEPEST_FT, Body, Part, drop_ft, height_known, inside_depth_in
from groundsill.loadpath.stem import height_facts
from groundsill.mechanics.plan import inside
from groundsill.standards.ibc_2021.soils import (
    combined_resistance,
    lateral_resistance,
    lateral_resultant,
    table_1806_2,
)
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import quiet, section
from groundsill.working.steps import add, given, least, multiply, note, scale
from groundsill.working.value import Mark, marks_of

__all__ = [
    "SOIL",
    "force_of",
    "line_force",
    "overturning",
    "resultant_ft",
    "resultant_of",
    "sliding",
    "soil_class",
    "ways_of",
]

SOIL = "survey.site.soil.kind"

_SOILS = {"crystalline rock": "1", "sedimentary rock": "2", "gravel": "3", "sand": "4", "clay": "5"}
_LOOSE_FT = 1.0  # top foot of soil, disturbed by weather and spade: not counted; chosen here
_MOST_FT = 15.0  # beyond this depth the table's pressure no longer grows
_PROBE_IN = 12.0
_ROUNDING = 1e-9

Way = Literal["+", "-"]


def soil_class(reading: Reading) -> str | None:
    """The class of Table 1806.2 of the ground; None when it is not known or has no presumptive value."""
    kind = reading.house.survey.site.soil.kind.value
    return _SOILS.get(kind) if kind else None


def line_force(forces: Forces, id: str, lateral: Lateral) -> float:
    """The force of a line along itself, strength level: of the earthquake, or of wind where it is looked at."""
    if lateral == "earthquake":
        return forces.lines[id].force_lb
    return forces.wind.lines[id].W_lb if forces.wind is not None and id in forces.wind.lines else 0.0


def resultant_of(forces: Forces, direction: Direction, lateral: Lateral) -> float:
    """Height above the base at which the forces of the house along a direction act together, ft."""
    if lateral == "earthquake" or forces.wind is None:
        return resultant_ft(forces)
    return forces.wind.along[direction].height_ft


def force_of(forces: Forces, body: Body, direction: Direction, lateral: Lateral = "earthquake") -> float:
    """Strength-level force that comes into the body along a direction, in the way of sharing it that gives the body
    most: in each way all lines are in equilibrium, so that their worst forces in an earthquake are never summed up.
    """
    ways = ways_of(forces, body, direction, lateral)
    most = max(ways, default=0.0)
    # the body under all lines has the whole force however it is shared, but for the rounding of the sums
    return ways[0] if ways and most <= ways[0] * (1 + _ROUNDING) else most


def ways_of(forces: Forces, body: Body, direction: Direction, lateral: Lateral = "earthquake") -> tuple[float, ...]:
    """The force of a body along a direction in each way of sharing it, that of a flexible floor first.

    Wind is shared by a flexible floor alone, and each line has that of its own worst direction.
    """
    held = []
    for id, parts in body.lines().items():
        line = forces.lines[id]
        here = min(sum(p.length_ft for p in parts) / line.length_ft, 1.0) * line.along(direction)
        of_line = line.cases.get(direction, ()) if lateral == "earthquake" else (line_force(forces, id, lateral),)
        held.append([here * float(force) for force in of_line])
    return tuple(abs(sum(way)) for way in zip(*(way for way in held if way), strict=True))


def resultant_ft(forces: Forces, line: str | None = None) -> float:
    """Height above the base at which the earthquake forces of the house, or of one line, act together, ft."""
    parts = [1.0] * len(forces.levels) if line is None else forces.lines[line].shares
    doubts = marks_of(figure for level in forces.levels for figure in (level.force_lb, level.height_ft))
    pushes = [part * float(level.force_lb) for part, level in zip(parts, forces.levels, strict=True)]
    whole = sum(pushes)
    if whole == 0:
        return 0.0
    if line is not None and min(p * whole for p in pushes) < 0:
        # an overhang pulls some level the other way, the levels work against each other: take the house's own height
        return resultant_ft(forces)
    height = sum(push * float(level.height_ft) for push, level in zip(pushes, forces.levels, strict=True)) / whole
    return doubted(height, doubts, unit="ft", symbol="h")


def _pushing(forces: Forces, body: Body, direction: Direction, lateral: Lateral) -> float:
    """The force that comes into a body along a direction at allowable-stress level, recorded."""
    mine = (id for id in body.lines() if forces.lines[id].along(direction) > 0)
    marks = marks_of(line_force(forces, id, lateral) for id in mine)
    whole, effects = force_of(forces, body, direction, lateral), forces.rules.effects
    if lateral == "wind":
        return effects.asd_wind(given("W", whole, "lb", f"wind on the body's lines along {direction}", marks))
    Q_E = given(
        "Q_E", whole, "lb", f"force of the body's lines for an earthquake along {direction}, strength level", marks
    )
    return effects.asd_earthquake(effects.horizontal_effect(forces.rho, Q_E))


def _surely(forces: Forces, dead: float, lateral: Lateral) -> float:
    """What of a dead load may be counted on beside the earthquake, or beside wind."""
    effects = forces.rules.effects
    factor = effects.asd_dead_factor_7() if lateral == "wind" else effects.asd_dead_factor_10(forces.S_DS)
    return scale(dead, factor, symbol="D'", label="dead load that surely stands there")


def sliding(
    reading: Reading, forces: Forces, body: Body, direction: Direction, dead: float, lateral: Lateral = "earthquake"
) -> Link:
    """Friction or cohesion under the body, and the soil against its cross footings, toward the weaker side."""
    address, title = f"body/{body.id}/sliding/{body.id}/{direction}", f"sliding along {direction}"
    soil = soil_class(reading)
    with section(address):
        kind = reading.noted("the kind of soil", SOIL)
    if soil is None:
        reason = "the kind of soil is not known, or has no presumptive value"
        return cannot(address, title, "body", body.id, clause="IBC 2021 1806.2", reason=reason, marks=kind)
    widths = [p.segment.footing_width_in.value for p in body.parts]
    if soil == "5" and any(w is None for w in widths):
        reason = "on clay the width of the footing is needed; it is not known"
        return cannot(address, title, "body", body.id, clause="IBC 2021 1806.3.2", reason=reason, marks=kind)
    contact = sum((w or 0.0) / 12 * p.length_ft for w, p in zip(widths, body.parts, strict=True))
    measured = frozenset[Mark]().union(*(p.marked(reading, "footing_width_in") for p in body.parts))
    pushed: dict[Way, _Pushed] = {
        "+": _against_soil(reading, forces, body, direction, 1),
        "-": _against_soil(reading, forces, body, direction, -1),
    }
    try:
        with section(address):
            demand, counted = _pushing(forces, body, direction, lateral), _surely(forces, dead, lateral)
            under = lateral_resistance(soil, counted, given("A", contact, "ft^2", "contact area", measured))
            stands = doubted(under.total, kind)
            both = {way: _with_faces(soil, stands, side, f"{way}{direction}") for way, side in pushed.items()}
            held = least(*both.values(), symbol="R", label="toward the weaker side")
            matters = held < demand and _deep_enough(soil, stands, pushed, demand)
    except OutsideLimits as refused:
        return cannot(address, title, "body", body.id, clause="IBC 2021 1806.3", reason=str(refused), marks=kind)
    weaker: Way = "+" if both["+"] <= both["-"] else "-"
    if matters:
        reason = (
            f"how deep {pushed[weaker].unknown_ft:.0f} ft of cross footings stand in the soil is not known, and it "
            f"matters: without them {float(held):,.0f} lb hold of {float(demand):,.0f} lb asked, and with footings "
            f"{DEEPEST_FT:g} ft deep all would"
        )
        doubts = marks_of((demand, held))
        return cannot(address, title, "body", body.id, clause="IBC 2021 1806.3", reason=reason, marks=doubts)
    return checked(
        address,
        title,
        "body",
        body.id,
        level="allowable",
        unit="lb",
        demand=demand,
        capacity=held,
        clause="IBC 2021 1806.3",
        reason=f"{under.rule} under the footing{pushed[weaker].words(f'{weaker}{direction}')}",
        working=(f"body/{body.id}/weight",),
    )


@dataclass(frozen=True, slots=True)
class _Pushed:
    """Faces of cross footings pushed against soil: feet of them by depth of their bottom and top not counted, ft.

    ``marks`` are those of all measures that say which faces there are and how deep.
    """

    faces: tuple[tuple[float, float, float], ...]
    unknown_ft: float
    marks: frozenset[Mark]

    def words(self, toward: str) -> str:
        """What of the cross footings was counted, and what was not, for the reason of the link."""
        counted = sum(feet for feet, _, _ in self.faces)
        found = f" and {counted:.0f} ft of cross footings against the soil, toward {toward}" if counted else ""
        if self.unknown_ft:
            found += f"; {self.unknown_ft:.0f} ft of cross footings not counted: their depth in that soil is not known"
        return found


def _deep_enough(soil: str, under: float, pushed: dict[Way, _Pushed], demand: float) -> bool:
    """Whether the body would hold if the cross footings of unknown depth reached as deep as any is looked for."""
    with quiet():
        held = [
            _with_faces(soil, under, replace(side, faces=(*side.faces, (side.unknown_ft, DEEPEST_FT, _LOOSE_FT))), way)
            for way, side in pushed.items()
        ]
    return min(held) >= float(demand) and any(side.unknown_ft > 0 for side in pushed.values())


def _against_soil(reading: Reading, forces: Forces, body: Body, direction: Direction, sign: int) -> _Pushed:
    """The cross footings of a body pushed along a direction, each by the soil on the side it is pushed against."""
    feet_by: dict[tuple[float, float], float] = {}
    unknown, doubts = 0.0, set[Mark]()
    for part in body.parts:
        if forces.lines[part.segment.line].direction in (direction, None):
            continue
        way = _outward(reading, part, direction) * sign
        face = _face(part, way)
        doubts |= part.marked(reading, *_face_facts(part, way))
        if face is None:
            unknown += part.length_ft
        elif face[0] > face[1]:
            feet_by[face] = feet_by.get(face, 0.0) + part.length_ft
    return _Pushed(tuple((feet, *face) for face, feet in sorted(feet_by.items())), unknown, frozenset(doubts))


def _face(part: Part, way: int) -> tuple[float, float] | None:
    """Depth of a face's bottom, and of the soil above it that is not counted, ft; None when the depth is not known.

    ``way`` is 1 for a push outward, against the soil outside, -1 inward, 0 where no side is outside: then the lesser.
    """
    s = part.segment
    outside = (s.depth_in.value, s.above_outside_soil_in.value)
    within = (inside_depth_in(s), s.above_inside_soil_in.value)
    found = []
    for depth, above in (outside,) if way > 0 else (within,) if way < 0 else (outside, within):
        if depth is None:
            return None
        loose = max(_LOOSE_FT, -above / 12 if above is not None else 0.0)
        found.append((min(depth / 12, _MOST_FT), loose))
    return min(found, key=lambda face: face[0] - face[1])


def _face_facts(part: Part, way: int) -> tuple[str, ...]:
    """The facts that a face's depth rests on, by their names."""
    outside = ("depth_in", "above_outside_soil_in")
    return outside if way > 0 else (*outside, "above_inside_soil_in", *height_facts(part.segment))


def _outward(reading: Reading, part: Part, direction: Direction) -> int:
    """Which way along a direction is out of the house at a cross footing: 1, -1, or 0 when both sides are alike."""
    survey = reading.house.survey
    storey = survey.building.storeys[survey.underfloor.lines[part.segment.line].storey]
    outline = outline_of(reading, storey.outline)
    x, y = (part.start[0] + part.end[0]) / 2, (part.start[1] + part.end[1]) / 2
    dx, dy = (_PROBE_IN, 0.0) if direction == "x" else (0.0, _PROBE_IN)
    return int(inside((x - dx, y - dy), outline)) - int(inside((x + dx, y + dy), outline))


def _with_faces(soil: str, under: float, pushed: _Pushed, toward: str) -> float:
    """What holds a body pushed one way: under it, and on the faces of its cross footings."""
    if not pushed.faces:
        note(f"toward {toward} no embedded face is counted")
        return doubted(under, pushed.marks)
    table = table_1806_2()
    row = next(key for key in table.rows if key.split()[0] == soil)
    S_L = table.read(row, "lateral", "S_L")
    found = [
        lateral_resultant(
            S_L,
            given("b", feet, "ft", f"cross footings pushed toward {toward} against soil"),
            given("d", depth, "ft", "depth of their bottom in that soil", pushed.marks),
            given("d_0", loose, "ft", "disturbed soil, or none, at the top: not counted", pushed.marks),
        )
        for feet, depth, loose in pushed.faces
    ]
    faces = found[0] if len(found) == 1 else add(*found, symbol="R_L", label=f"all faces pushed toward {toward}")
    return combined_resistance(under, faces)


def overturning(
    reading: Reading, forces: Forces, body: Body, direction: Direction, dead: float, lateral: Lateral = "earthquake"
) -> Link:
    """The body and all that stands on it, about its far edge."""
    address, title = f"body/{body.id}/overturning/{body.id}/{direction}", f"overturning along {direction}"
    axis = 0 if direction == "x" else 1
    places = [end[axis] for p in body.parts for end in (p.start, p.end)]
    extent = (max(places) - min(places)) / 12
    if extent <= 0:
        reason = f"the body has no length along {direction}"
        return cannot(address, title, "body", body.id, clause="statics", applies=False, reason=reason)
    known = all(height_known(p.segment) for p in body.parts)
    up, seen, most = (
        resultant_of(forces, direction, lateral),
        drop_ft(reading, body.parts),
        drop_ft(reading, body.parts, deepest=True),
    )
    with section(address):
        turning, counted = _pushing(forces, body, direction, lateral), _surely(forces, dead, lateral)
        if lateral == "earthquake":
            f_OT = forces.rules.effects.overturning_factor(True)
            turning = scale(turning, f_OT, symbol="V'", label="overturning at the soil")
        half = given("B/2", extent / 2, "ft", "half the body's length")
        holding = multiply(counted, half, symbol="M_r", unit="lb-ft", label="moment that holds it")
        turns_over = float(turning) * (float(up) + float(seen)) > float(holding)  # whatever the depth
        drop = seen if turns_over else most
        where = f"forces' resultant {up:.2f} ft above the base, footing {drop:.2f} ft below it"
        h = given("h", float(up) + float(drop), "ft", where, marks_of((up, drop)))
        moment = multiply(turning, h, symbol="M_o", unit="lb-ft", label="overturning moment")
    clause = forces.rules.cite("12.13.4 and 2.4.5" if lateral == "earthquake" else "2.4.1 combination 7")
    reason = "" if known else f"the footing's depth is not known: taken {drop:.1f} ft below the base"
    if not known and not turns_over and moment > holding:
        reason = f"how deep the footing goes is not known, and it matters: {drop:.1f} ft below the base it turns over"
        doubts = marks_of((moment, holding))
        return cannot(address, title, "body", body.id, clause=clause, reason=reason, marks=doubts)
    return checked(
        address,
        title,
        "body",
        body.id,
        level="allowable",
        unit="lb-ft",
        demand=moment,
        capacity=holding,
        clause=clause,
        reason=reason,
        working=(f"body/{body.id}/weight",),
    )
