"""A foundation body against the soil: sliding along each direction, and overturning about its far edge.

Both are asked for the earthquake, and with ``lateral`` for wind, whose overturning is not reduced at the soil.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from groundsill.forces.reading import Reading, doubted
from groundsill.forces.seismic import Forces
from groundsill.forces.share import Direction
from groundsill.forces.wind import Lateral
from groundsill.loadpath.case import cannot, checked
from groundsill.loadpath.chain import Link
from groundsill.loadpath.footings import DEEPEST_FT, Body, drop_ft, height_known
from groundsill.loadpath.ground import (
    SOIL,
    as_the_ground_allows,
    doubts_of_ground,
    lifted_by_water_ft,
    reported,
    soil_class,
    table_holds,
    where_from,
)
from groundsill.loadpath.soil_faces import LOOSE_FT, Pushed, against_soil, with_faces
from groundsill.standards.ibc_2021.soils import cohesion_resistance, friction_resistance, lateral_resistance
from groundsill.work.inner import height_in
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import quiet, section
from groundsill.working.steps import given, greatest, least, multiply, scale, subtract
from groundsill.working.value import Mark, marks_of

__all__ = [
    "SOIL",
    "base_arm_ft",
    "force_of",
    "line_force",
    "overturning",
    "resultant_ft",
    "resultant_of",
    "sliding",
    "soil_class",
    "ways_of",
]

_WATER_PCF = 62.4
_ROUNDING = 1e-9

Way = Literal["+", "-"]


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
    reading: Reading, forces: Forces, body: Body, direction: Direction, dead: float, lateral: Lateral = "earthquake",
    pulled: float = 0.0,
) -> Link:  # fmt: skip
    """Friction or cohesion under the body, and the soil against its faces, toward the weaker side.

    ``pulled`` is what hold-downs pull up on the body and press down on another.
    """
    address, title = f"body/{body.id}/sliding/{body.id}/{direction}", f"sliding along {direction}"
    by_report = any(getattr(reading.house.survey.site.soil, x).value is not None for x in ("friction", "cohesion_psf"))
    with section(address):
        kind = doubts_of_ground(reading, "sliding")
    water = lifted_by_water_ft(reading, body.parts)
    clause, why = _why_not(reading, body, by_report, water)
    if why:
        asked = force_of(forces, body, direction, lateral) > 0
        reason = why if asked else f"no force comes to it along {direction}"
        return cannot(address, title, "body", body.id, clause=clause, reason=reason, applies=asked, marks=kind)
    contact = sum((p.segment.footing_width_in.value or 0.0) / 12 * p.length_ft for p in body.parts)
    measured = frozenset[Mark]().union(*(p.marked(reading, "footing_width_in") for p in body.parts))
    pushed: dict[Way, Pushed] = {
        "+": against_soil(reading, forces, body, direction, 1),
        "-": against_soil(reading, forces, body, direction, -1),
    }
    try:
        with section(address):
            demand, counted = _pushing(forces, body, direction, lateral), _surely(forces, dead, lateral)
            area = given("A", contact, "ft^2", "contact area", measured)
            if pulled > 0:
                counted = _less_pull(counted, pulled)
            if water:
                counted = _less_water(reading, counted, area, water)
            stands, rule = _under(reading, counted, area)
            stands = doubted(stands, kind)
            both = {way: with_faces(reading, body, stands, side, f"{way}{direction}") for way, side in pushed.items()}
            held = least(*both.values(), symbol="R", label="toward the weaker side")
            short = _wanting(demand, held, rule, stands, dead) if body.new(reading) else ""
            matters = held < demand and _deep_enough(reading, body, stands, pushed, demand)
    except OutsideLimits as refused:
        return cannot(address, title, "body", body.id, clause="IBC 2021 1806.3", reason=str(refused), marks=kind)
    weaker: Way = "+" if both["+"] <= both["-"] else "-"
    if matters:
        reason = _depth_matters(pushed[weaker], held, demand)
        doubts = kind | marks_of((demand, held))
        return cannot(address, title, "body", body.id, clause="IBC 2021 1806.3", reason=reason, marks=doubts)
    link = checked(
        address,
        title,
        "body",
        body.id,
        level="allowable",
        unit="lb",
        demand=demand,
        capacity=held,
        clause="IBC 2021 1806.3" if not by_report else where_from(reading, "friction"),
        reason=f"{rule} under the footing{pushed[weaker].words(f'{weaker}{direction}')}{short}",
        working=(f"body/{body.id}/weight",),
    )
    return as_the_ground_allows(reading, link, "sliding", lateral, body.parts)


def _depth_matters(pushed: Pushed, held: float, demand: float) -> str:
    """What an unknown depth of cross footings decides, in words."""
    return (
        f"how deep {pushed.unknown_ft:.0f} ft of cross footings stand in the soil is not known, and it matters: "
        f"without them {float(held):,.0f} lb hold of {float(demand):,.0f} lb asked, and with footings "
        f"{DEEPEST_FT:g} ft deep all would"
    )


def _wanting(demand: float, held: float, rule: str, under: float, dead: float) -> str:
    """What a new foundation that slides wants, in words; nothing where it holds. ``dead`` is all that stands on it."""
    lacks = float(demand) - float(held)
    if lacks <= 0:
        return ""
    told = f"; {lacks:,.0f} lb are wanting: cross strips that stand against the soil"
    if rule.startswith("friction") and under > 0:
        told += f", or {lacks * float(dead) / float(under):,.0f} lb more dead load"
    return told


def base_arm_ft(
    reading: Reading, forces: Forces, body: Body, direction: Direction, lateral: Lateral = "earthquake"
) -> float | None:
    """How high above the footing's bottom the force comes into a new foundation, ft: at the top of its walls.

    What the storeys turn by their own height is held by the weight of the house, which stands on the old foundation.
    None for an old foundation, under all of the house.
    """
    lines = [(id, reading.inner[id]) for id in body.lines() if id in reading.inner]
    pushes = [float(line_force(forces, id, lateral)) * forces.lines[id].along(direction) for id, _ in lines]
    if not lines:
        return None
    high = [height_in(piece) / 12 for _, piece in lines]
    whole = sum(pushes)
    return sum(h * push for h, push in zip(high, pushes, strict=True)) / whole if whole > 0 else max(high)


def _deep_enough(reading: Reading, body: Body, under: float, pushed: dict[Way, Pushed], demand: float) -> bool:
    """Whether the body would hold if the cross footings of unknown depth reached as deep as any is looked for."""
    with quiet():
        held = [
            with_faces(
                reading, body, under, replace(side, faces=(*side.faces, (side.unknown_ft, DEEPEST_FT, LOOSE_FT))), way
            )
            for way, side in pushed.items()
            if side.unknown_ft > 0
        ]
        held += [with_faces(reading, body, under, side, way) for way, side in pushed.items() if not side.unknown_ft]
    return min(held) >= float(demand) and any(side.unknown_ft > 0 for side in pushed.values())


def _why_not(reading: Reading, body: Body, by_report: bool, water_ft: float) -> tuple[str, str]:
    """The clause and reason why nobody can say what holds a body against sliding; empty where somebody can."""
    if not by_report and (why := table_holds(reading, body.parts)):
        return "IBC 2021 1806.2", why
    sticks = reading.house.survey.site.soil.cohesion_psf.value is not None
    sticks = sticks or (not by_report and soil_class(reading) == "5")
    if (sticks or water_ft) and any(p.segment.footing_width_in.value is None for p in body.parts):
        what = "on clay" if sticks else "with ground water above the footing's bottom"
        return "IBC 2021 1806.3.2", f"{what} the width of the footing is needed; it is not known"
    return "", ""


def _less_pull(counted: float, pulled: float) -> float:
    """What of the dead load presses on the soil where hold-downs pull up and press down elsewhere."""
    label = "pull of hold-downs whose posts press on another body, across a cut"
    pull = given("T", pulled, "lb", label, marks_of((pulled,)))
    return greatest(subtract(counted, pull, symbol="D'"), 0.0, symbol="D'", label="dead load less that pull")


def _less_water(reading: Reading, counted: float, area: float, rise_ft: float) -> float:
    """What of the dead load presses on the soil where ground water lifts the footing."""
    marks = reading.marked("survey.site.soil.water_depth_in")
    head = given("z_w", rise_ft, "ft", "ground water above the deepest bottom", marks)
    weight = given("γ_w", _WATER_PCF, "pcf", "unit weight of water")
    lift = multiply(weight, area, head, symbol="U", unit="lb", label="lift of the water, at most")
    return greatest(
        subtract(counted, lift, symbol="D'"), 0.0, symbol="D'", label="dead load less the lift of the water"
    )


def _under(reading: Reading, counted: float, area: float) -> tuple[float, str]:
    """Resistance to sliding under a body, and by what rule: of a report, else of the code's table."""
    friction = reported(reading, "friction", "mu", "1", "friction")
    cohesion = reported(reading, "cohesion_psf", "c", "psf", "cohesion")
    found = {}
    if friction is not None:
        found["friction"] = friction_resistance(friction, counted)
    if cohesion is not None:
        found["cohesion"] = cohesion_resistance(cohesion, area, counted)
    if not found:
        soil = soil_class(reading)
        assert soil is not None
        under = lateral_resistance(soil, counted, area)
        return under.total, under.rule
    if len(found) == 1:
        ((rule, value),) = found.items()
        return value, f"{rule} of the report"
    rule = min(found, key=lambda each: float(found[each]))
    less = least(*found.values(), symbol="R_s", label="of friction and cohesion, each in the report, the lesser")
    return less, f"{rule} of the report, the lesser of the two it gives,"


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
    own = base_arm_ft(reading, forces, body, direction, lateral)
    up, seen, most = (
        (resultant_of(forces, direction, lateral), drop_ft(reading, body.parts),
         drop_ft(reading, body.parts, deepest=True))
        if own is None else (0.0, own, own)
    )  # fmt: skip
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
        if own is not None:
            where = "top of the new wall above the bottom of its footing: the storeys' own overturning stays outside it"
        h = given("h", float(up) + float(drop), "ft", where, marks_of((up, drop)))
        moment = multiply(turning, h, symbol="M_o", unit="lb-ft", label="overturning moment")
    clause = forces.rules.cite("12.13.4 and 2.4.5" if lateral == "earthquake" else "2.4.1 combination 7")
    reason = "" if known else f"the footing's depth is not known: taken {drop:.1f} ft below the base"
    if not known and not turns_over and moment > holding:
        reason = f"how deep the footing goes is not known, and it matters: {drop:.1f} ft below the base it turns over"
        doubts = marks_of((moment, holding))
        return cannot(address, title, "body", body.id, clause=clause, reason=reason, marks=doubts)
    link = checked(
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
    return as_the_ground_allows(reading, link, "overturning", lateral)
