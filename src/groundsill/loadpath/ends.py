"""Where the concrete under a line ends before an anchor: at a break, at brick, at nothing, or behind a return wall.

At a building corner concrete goes on to one side only. Straight ahead of an anchor lies the outer face of the return
wall, half of its width beyond the line it is centred on, and toward that face the anchor may break out (ACI 318-19
17.7.2.1). Where the line runs into another in mid length the face is the far one of that wall, with concrete on both
sides. Where nobody knows how wide the other wall is, the line itself is taken as the face.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from groundsill.forces.reading import XY, Reading, doubted, line_ends
from groundsill.loadpath.case import LineCase, foundation_at

__all__ = ["FAR_IN", "to_end", "wedges"]

FAR_IN = 1000.0
_CONCRETE = "poured concrete"
_TOUCH_IN = 1.0
_CORNER_IN = 12.0  # a line that ends within this of another's foundation runs into it, if that goes on as far
_STRAIGHT = 0.26  # sine of 15 degrees: a line that turns by less goes on straight


@dataclass(frozen=True, slots=True)
class _End:
    """An end of the concrete at a station, ``slope`` times the way there and ``beyond`` in. behind it.

    Behind it a return wall ``thick`` in. wide may go on to one side or both, ``runs`` in. far. ``facts`` are the
    addresses of the widths this rests on.
    """

    station: float
    slope: float = 1.0
    beyond: float = 0.0
    thick: float = 0.0
    runs: tuple[float, ...] = ()
    facts: tuple[str, ...] = ()

    def off(self, station: float) -> float:
        """How far a station stands from it, square to its face."""
        return abs(self.station - station) * self.slope + self.beyond


@dataclass(frozen=True, slots=True)
class _Return:
    """A wall that a line runs into: the sine of their angle, how far beyond the line's end its outer face lies, its
    width, how far it runs on straight ahead, to the left and to the right, and where its width stands.
    """

    slope: float
    beyond: float
    thick: float
    ahead: float
    sides: tuple[float, float]
    fact: str


def to_end(case: LineCase, station: float) -> float:
    """Distance to the nearest break or end of the concrete along the line, inches, square to the face that ends it.

    Raises nothing: a thousand inches where no end is known.
    """
    end = _nearest(case, station)
    return FAR_IN if end is None else _doubted(case, end, end.off(station))


def wedges(case: LineCase, station: float, near: float, far: float) -> tuple[tuple[float, float, float], ...]:
    """What an anchor pushed toward the end it stands next to may break out: c_a1, then the concrete on either side.

    ``near`` and ``far`` are its distances to the faces of its own wall, inches. Beside a return the concrete goes on.
    A wedge so long that it comes out of the anchor's own wall before it meets the return is told twice: as if no return
    were there, and as that of an anchor so near that the wedge just keeps within the return. Neither holds more than
    there is. Which face looks to the return is not told, so that it is taken as the far one.
    """
    end = _nearest(case, station)
    if end is None:
        return ((FAR_IN, near, far),)
    to_face = _doubted(case, end, end.off(station))
    if not end.runs:
        return ((to_face, near, far),)
    open_to = sorted(max(run, float(far)) for run in end.runs)
    sides = (near, open_to[0]) if len(open_to) == 1 else (open_to[0], open_to[1])
    within = end.thick + float(near) / 1.5
    if float(to_face) <= within:
        return ((to_face, *sides),)
    return (to_face, near, far), (_doubted(case, end, within), *sides)


def _nearest(case: LineCase, station: float) -> _End | None:
    ends = case.reading.once(("ends of concrete", case.id), lambda: _ends(case))
    return min(ends, key=lambda end: end.off(station), default=None)


def _doubted(case: LineCase, end: _End, distance: float) -> float:
    return doubted(distance, *(case.reading.marked(fact) for fact in end.facts), unit="in", symbol="c_end")


def _ends(case: LineCase) -> list[_End]:
    """Every break and end of poured concrete along the line."""
    starts, stops = _bounds(case.reading, case.id)
    breaks = _breaks(case.reading, case.id)
    return [*map(_End, breaks), *(_at(case, station) for station in (*starts, *stops))]


def _breaks(reading: Reading, id: str) -> list[float]:
    found = reading.on_line(reading.house.survey.foundation.breaks, id)
    return [b.station_in for _, b in found if b.kind != "crack"]


def _bounds(reading: Reading, id: str) -> tuple[list[float], list[float]]:
    """Where poured concrete of a line starts and where it stops, at brick or at nothing."""
    found = reading.on_line(reading.house.survey.foundation.segments, id)
    stretches = [s for _, s in found if s.material == _CONCRETE]
    starts, stops = [s.from_in for s in stretches], [s.to_in for s in stretches]
    return _unmet(starts, stops), _unmet(stops, starts)


def _unmet(ends: Iterable[float], others: Iterable[float]) -> list[float]:
    return [end for end in ends if not any(abs(end - other) <= _TOUCH_IN for other in others)]


def _at(case: LineCase, station: float) -> _End:
    """The end of a stretch: behind the walls it runs into where that is an end of the line, else where it stops."""
    if min(station, abs(case.length_in - station)) > _TOUCH_IN:
        return _End(station)
    met = _returns(case, at_start=station < case.length_in / 2)
    ahead = max((wall.ahead for wall in met), default=0.0)
    if ahead:
        return _End(station, beyond=ahead)
    if not met:
        return _End(station)
    runs = [max(wall.sides[n] for wall in met) for n in (0, 1)]
    return _End(
        station,
        slope=min(wall.slope for wall in met),
        beyond=min(wall.beyond for wall in met),
        thick=min(wall.thick for wall in met),
        runs=tuple(run for run in runs if run),
        facts=tuple(wall.fact for wall in met),
    )


def _returns(case: LineCase, at_start: bool) -> list[_Return]:
    """The walls of concrete that the line runs into at one of its ends."""
    house = case.reading.house
    ends = line_ends(house, case.line)
    end, other_end = ends if at_start else ends[::-1]
    reach = math.dist(end, other_end) or 1.0
    out = ((end[0] - other_end[0]) / reach, (end[1] - other_end[1]) / reach)
    found = []
    for id, line in house.survey.underfloor.lines.items():
        alike = (id in case.reading.inner) == (case.inner is not None)
        wall = _return(case.reading, id, line_ends(house, line), end, out) if alike and id != case.id else None
        if wall is not None:
            found.append(wall)
    return found


def _return(reading: Reading, id: str, ends: tuple[XY, XY], end: XY, out: XY) -> _Return | None:
    """A line's concrete as the return of another that comes to ``end``, going ``out``; None where it is none."""
    (ax, ay), (bx, by) = ends
    length = math.dist(*ends)
    if not length:
        return None
    ux, uy = (bx - ax) / length, (by - ay) / length
    along = min(max((end[0] - ax) * ux + (end[1] - ay) * uy, 0.0), length)
    if math.dist(end, (ax + along * ux, ay + along * uy)) > _CORNER_IN:
        return None
    under = foundation_at(reading, id, along)
    if under is None or under[1].material != _CONCRETE:
        return None
    back, on = _runs(reading, id, along)
    turn = out[0] * uy - out[1] * ux  # sine of the angle from the one to the other, positive to the left
    fact = f"survey.foundation.segments.{under[0]}.top_width_in"
    if abs(turn) < _STRAIGHT:
        ahead = on if out[0] * ux + out[1] * uy > 0 else back
        return _Return(1.0, 0.0, 0.0, ahead, (0.0, 0.0), fact) if ahead else None
    if not (back or on):
        return None
    thick = under[1].top_width_in.value or 0.0
    side = math.copysign(1.0, turn)
    off = side * ((ax - end[0]) * uy - (ay - end[1]) * ux)
    sides = (on, back) if turn > 0 else (back, on)
    return _Return(abs(turn), off + thick / 2, thick, 0.0, sides, fact)


def _runs(reading: Reading, id: str, along: float) -> tuple[float, float]:
    """How far the concrete of a line goes on, unbroken, back and on from a station; 0 where that is next to nothing."""
    starts, stops = _bounds(reading, id)
    breaks = _breaks(reading, id)
    back = along - max((s for s in (*breaks, *starts) if s <= along + _TOUCH_IN), default=along)
    on = min((s for s in (*breaks, *stops) if s >= along - _TOUCH_IN), default=along) - along
    return tuple(run if run >= _CORNER_IN else 0.0 for run in (back, on))  # type: ignore[return-value]
