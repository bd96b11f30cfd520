"""The plate of a line as the chord of the floor: what an earthquake across the line pulls along it, at each joint.

The floor is cut through at the joint, across the line. What the lines on one side hold, less what the weights there
push, leaves a moment at the cut, which the floor's two edges carry as a pull and a push. The levels above come to the
lines through the floor, or straight down the walls: both ends are worked out, and a joint passes when it holds the
greater. Rim joist and edge joist help it, but their own joints are not surveyed, so that a joint that falls short is
left to be looked at where such a joist runs past it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from groundsill.forces.reading import line_ends
from groundsill.house.underfloor import PlateSplice
from groundsill.loadpath.case import LineCase, cannot, checked
from groundsill.loadpath.chain import Link, Stage
from groundsill.loadpath.floor_cut import asked_of_chord, pushed_weights
from groundsill.loadpath.inner.hung_chord import hung_chord
from groundsill.loadpath.plate import Held, joint_strength, joint_title
from groundsill.mechanics.cut import moment_at
from groundsill.mechanics.plan import rotate
from groundsill.working.sheet import section
from groundsill.working.steps import given, note
from groundsill.working.value import marks_of

__all__ = ["chord_stage"]

_ALONGSIDE = 0.6  # a line within 31 degrees of parallel lies alongside
_EDGE_IN = 1.0
_NOTHING = 0.01  # lb


@dataclass(frozen=True, slots=True)
class _Pull:
    """The chord force at a joint, allowable-stress level, lb: with the floor's own level alone, and with all levels."""

    least: float
    most: float
    outermost: bool


def chord_stage(case: LineCase) -> Stage:
    """The joints of the plate under the chord force of an earthquake across the line."""
    return Stage("chord", "The plate as chord of the floor", "every link must pass", _links(case))


def _links(case: LineCase) -> tuple[Link, ...]:
    address = f"line/{case.id}/chord/{case.id}/both"
    joints = case.reading.on_line(case.reading.house.survey.underfloor.splices, case.id)
    if case.inner is not None:
        return (hung_chord(case, case.inner, _clause(case)),)
    if case.line.position == "interior":
        return (_no_chord(case, address, "the line lies inside the floor: the chords run in its edges"),)
    if case.line.framing == "platform" and not joints:
        return (_no_chord(case, address, "no joint was recorded in the plate for a chord force to pass"),)
    why = _why_not(case)
    if why:
        return (cannot(address, "chord", "line", case.id, clause=_clause(case), reason=why),)
    stations = [joint.station_in for _, joint in joints]
    return tuple(_joint(case, id, joint, stations) for id, joint in joints)


def _clause(case: LineCase) -> str:
    return f"{case.forces.rules.cite('12.10.1')}, {case.nds.cite('chapter 12')}"


def _no_chord(case: LineCase, address: str, reason: str) -> Link:
    return cannot(address, "chord", "line", case.id, clause="", reason=reason, applies=False)


def _why_not(case: LineCase) -> str:
    """Why the chord of this line cannot be worked out, in words; empty when it can."""
    if case.line.framing != "platform":
        return f"{case.line.framing} framing: what the floor has for a chord was not surveyed"
    if case.line.top_plate.layers == 0:
        return "there is no top plate, and what else the floor has for a chord was not surveyed"
    if any(line.relied_on and line.direction is None for line in case.forces.lines.values()):
        return "a skewed line brings its own pull into the floor's edges, which is not worked out"
    if any(m.direction != case.force.direction for m in case.forces.missing):
        return "a line is missing across this one, so that the moment in the floor is not defined"
    return ""


def _joint(case: LineCase, id: str, joint: PlateSplice, stations: Sequence[float]) -> Link:
    address, title = f"line/{case.id}/chord/{id}/both", f"chord force at the {joint_title(joint)}"
    with section(address):
        pull = _pull(case, joint.station_in)
        if pull is None:
            reason = "no line runs alongside there: the floor has no second edge"
            return cannot(address, title, "joint", id, clause=_clause(case), reason=reason)
        held = joint_strength(case, id, joint, stations)
    if max(float(pull.most), float(pull.least)) < _NOTHING:
        return cannot(address, title, "joint", id, clause="", reason="no chord force passes there", applies=False)
    most = max(pull.least, pull.most, key=float)
    if held.capacity is None:
        return cannot(address, title, "joint", id, clause=held.clause, reason=held.reason, marks=marks_of((most,)))
    doubt = _doubt(case, pull, held)
    if doubt:
        marks = marks_of((most, held.capacity))
        return cannot(address, title, "joint", id, clause=_clause(case), reason=doubt, marks=marks)
    return checked(
        address,
        title,
        "joint",
        id,
        level="allowable",
        unit="lb",
        demand=most,
        capacity=held.capacity,
        clause=held.clause,
        reason=held.reason,
        extension=held.extension,
    )


def _doubt(case: LineCase, pull: _Pull, held: Held) -> str:
    """Why a joint that does not hold the greatest chord force need not fail, in words; empty when it holds or fails."""
    assert held.capacity is not None
    low, high = sorted((float(pull.least), float(pull.most)))
    capacity = float(held.capacity)
    if high <= capacity:
        return ""
    asked = f"{low:,.0f} to {high:,.0f} lb" if high - low >= 1 else f"{high:,.0f} lb"
    short = f"the plate's joint holds {capacity:,.0f} lb of a chord force of {asked}"
    if case.line.rim != "none":
        closes = {"not seen": "whatever closes the joists"}.get(case.line.rim, f"the {case.line.rim}")
        return f"{short}; {closes} may carry the rest past it: how it is joined there was not surveyed"
    if not pull.outermost:
        return f"{short}; the floor reaches beyond this line there, and its outer edge carries most of it"
    if low <= capacity:
        return f"{short}, as the walls above bring their force down to the lines or to the floor: that was not surveyed"
    return ""


def _pull(case: LineCase, station_in: float) -> _Pull | None:
    """The chord force at a station; None where no line runs alongside."""
    (x1, y1), (x2, y2) = line_ends(case.reading.house, case.line)
    turn = -math.degrees(math.atan2(y2 - y1, x2 - x1))
    start, mine = rotate((x1, y1), turn)
    place = start + station_in
    beside = _beside(case, turn, place, mine)
    if not beside:
        return None
    depth = max(*beside, mine) - min(*beside, mine)
    note("the floor is cut at the joint: what the lines on one side hold less what the weights there push")
    D = given("D", depth / 12, "ft", "depth of the floor at the cut, outer line to outer line")
    moments = [_moment(case, turn, place, level) for level in range(len(case.forces.levels))]
    least, most = (
        asked_of_chord(case, amount, D, words)
        for amount, words in (
            (moments[0], "by the floor's own level alone"),
            (sum(moments), "by all levels, as if all came through the floor"),
        )
    )
    return _Pull(least, most, outermost=not min(beside) < mine - _EDGE_IN or not max(beside) > mine + _EDGE_IN)


def _beside(case: LineCase, turn: float, place: float, mine: float) -> list[float]:
    """Where the lines stand that run alongside this one past a place, seen across it."""
    house, found = case.reading.house, []
    for id, line in house.survey.underfloor.lines.items():
        (u1, v1), (u2, v2) = (rotate(point, turn) for point in line_ends(house, line))
        alongside = abs(v2 - v1) < _ALONGSIDE * abs(u2 - u1)
        if id != case.id and alongside and min(u1, u2) - _EDGE_IN <= place <= max(u1, u2) + _EDGE_IN:
            at = v1 + (v2 - v1) * (place - u1) / (u2 - u1)
            if abs(at - mine) > _EDGE_IN:
                found.append(at)
    return found


def _moment(case: LineCase, turn: float, place: float, level: int) -> float:
    """The moment in the floor at a cut across the line, by one level's force, lb-in, strength level."""
    house, force, loads = case.reading.house, case.forces.levels[level], pushed_weights(case, turn, level)
    if not loads:
        return 0.0
    holds = []
    for id, line in case.forces.lines.items():
        if line.relied_on and line.flexible and line.direction != case.force.direction:
            (u1, _), (u2, _) = (rotate(p, turn) for p in line_ends(house, house.survey.underfloor.lines[id]))
            holds.append((float(force.force_lb) * line.flexible[level], (u1 + u2) / 2))
    return moment_at(place, loads, holds)
