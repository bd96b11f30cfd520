"""Sharing the force of each level among the braced lines.

**Flexible floor** (the rule for old board floors): the floor is cut into strips running across the force, each hanging
on the lines beside it (:mod:`groundsill.forces.flexible`).

**Rigid floor**: every line moves with the floor, so each takes its share by stiffness, torsion included.

Only lines that are *relied on* take a share; each line says whether it is, and why. A load that the lines cannot hold
is a result of its own: a line is missing.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal

from groundsill.forces.flexible import flexible, loads_of
from groundsill.forces.reading import Reading, line_ends, line_length_in
from groundsill.forces.weights import WeightItem
from groundsill.house.foundation import FoundationSegment
from groundsill.house.survey import in_order
from groundsill.house.underfloor import Line
from groundsill.mechanics.equilibrium import PlanLine, Push, balanced

__all__ = [
    "Direction",
    "LineShare",
    "Masses",
    "Reliance",
    "Sharing",
    "direction_of",
    "flexible_shares",
    "masses_of",
    "plan_line",
    "reliance",
    "rigid_shares",
    "shared_rigidly",
]

Direction = Literal["x", "y"]
_ALONG = 1.0  # degrees: a line this near to x or y lies along it
_GAP_IN = 1.0  # foundation stretches parted by more than this leave a gap under the line
ACCIDENTAL = 0.05  # ASCE 7 12.8.4.2, alike in both editions: the mass may stand off by this share of the plan's size


@dataclass(frozen=True, slots=True)
class Reliance:
    """Whether a line is relied on to carry earthquake force, and why."""

    relied_on: bool
    reason: str


@dataclass(frozen=True, slots=True)
class LineShare:
    """What share of each level's weight falls to a line, and how much of it a collector must bring.

    A fraction is positive when the line is pushed the way the house is; a negative one says that the floor's overhang
    pulls it the other way. ``overhung`` is the part of each level's weight that hangs out beyond the line, farther than
    any line stands behind it.
    """

    line: str
    direction: Direction
    fraction: dict[int, float]
    collected: dict[int, float]
    overhung: dict[int, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Sharing:
    """The shares of all relied-on lines for one direction of force, and whether they hold the house in equilibrium.

    ``cases`` are the fractions of every level that each line takes, signed, in every way the force may be shared: in
    each of them all lines together hold the whole force, while ``shares`` gives every line its worst.
    """

    shares: dict[str, LineShare]
    missing: str = ""
    cases: tuple[dict[str, dict[int, float]], ...] = ()


def direction_of(reading: Reading, line: Line) -> Direction | None:
    """Along x, along y, or None for a skewed line."""
    (x1, y1), (x2, y2) = line_ends(reading.house, line)
    angle = math.degrees(math.atan2(y2 - y1, x2 - x1)) % 180
    if min(angle, 180 - angle) <= _ALONG:
        return "x"
    return "y" if abs(angle - 90) <= _ALONG else None


def plan_line(reading: Reading, id: str, direction: Direction) -> PlanLine:
    """A line as the equilibrium sees it: exactly along x or y when it lies within a degree, pointing with the force."""
    line = reading.house.survey.underfloor.lines[id]
    (x1, y1), (x2, y2) = line_ends(reading.house, line)
    along = direction_of(reading, line)
    if along == "x":
        ux, uy = 1.0, 0.0
    elif along == "y":
        ux, uy = 0.0, 1.0
    else:
        size = math.hypot(x2 - x1, y2 - y1)
        ux, uy = (x2 - x1) / size, (y2 - y1) / size
        if (ux if direction == "x" else uy) < 0:
            ux, uy = -ux, -uy
    return PlanLine(id, (x1 + x2) / 2, (y1 + y2) / 2, ux, uy)


def reliance(reading: Reading, id: str) -> Reliance:
    """Whether a line is relied on: as the survey says, else perimeter lines on a continuous foundation are."""
    survey = reading.house.survey
    line = survey.underfloor.lines[id]
    if line.relied_on is not None:
        return Reliance(line.relied_on, line.relied_reason or "by the surveyor's decision")
    if line.position == "interior":
        return Reliance(False, "interior line: relied on only when the survey says so")
    under = [stretch for _, stretch in reading.on_line(survey.foundation.segments, id)]
    if not under or any(s.material in ("none", "not seen") for s in under):
        return Reliance(False, "no continuous foundation was seen under it")
    if not _covered(under, line_length_in(reading.house, line)):
        return Reliance(False, "the foundation surveyed under it does not reach from end to end")
    return Reliance(True, "perimeter line on a continuous foundation")


def _covered(under: Sequence[FoundationSegment], length_in: float) -> bool:
    """Whether stretches of foundation follow each other without a gap from one end of a line to the other."""
    reached = 0.0
    for stretch in sorted(under, key=lambda s: s.from_in):
        if stretch.from_in > reached + _GAP_IN:
            return False
        reached = max(reached, stretch.to_in)
    return reached >= length_in - _GAP_IN


def relied(reading: Reading) -> list[str]:
    """The lines that are relied on, in order."""
    return [id for id, _ in in_order(reading.house.survey.underfloor.lines) if reliance(reading, id).relied_on]


def flexible_shares(reading: Reading, items: Sequence[WeightItem], direction: Direction) -> Sharing:
    """Each relied-on line's share of every level's weight, for force along ``direction``, by a flexible floor."""
    lines = [plan_line(reading, id, direction) for id in relied(reading)]
    surveyed = reading.house.survey.underfloor.lines
    ends = {line.id: line_ends(reading.house, surveyed[line.id]) for line in lines}
    found = flexible(items, lines, ends, direction)
    shares = {
        line.id: LineShare(
            line.id,
            direction,
            *({level: part.get(line.id, 0.0) for level, part in parts.items()}
              for parts in (found.force, found.collected, found.overhung)),
        )
        for line in lines
    }  # fmt: skip
    missing = _missing(direction, found.places, len(found.standing), found.held)
    return Sharing(shares, missing, ({id: share.fraction for id, share in shares.items()},))


def rigid_shares(
    reading: Reading,
    items: Sequence[WeightItem],
    direction: Direction,
    stiffness: Mapping[str, float],
    pushes: Sequence[float] = (),
) -> Sharing:
    """The same by a rigid floor: by the lines' stiffnesses, with torsion, the mass standing off either way.

    ``stiffness`` is of each line along itself, in any one unit; a line without any takes nothing. ``pushes`` are the
    forces of the levels, all alike when left out. Of the mass in place, or off by 5 % of the plan to either side (all
    levels to the same side), each line has the fractions of the case that gives it most.
    """
    return shared_rigidly(reading, masses_of(items, direction), direction, stiffness, pushes)


@dataclass(frozen=True, slots=True)
class Masses:
    """The push of every level along a direction by its weight, and how far the mass may stand off across it, inches."""

    loads: dict[int, Push]
    off_in: float


def masses_of(items: Sequence[WeightItem], direction: Direction) -> Masses:
    """What a rigid floor is pushed by along a direction."""
    items = [item for item in items if item.seismic]
    spread = [point[1 if direction == "x" else 0] for item in items for point in item.points]
    return Masses(loads_of(items, direction), ACCIDENTAL * (max(spread, default=0.0) - min(spread, default=0.0)))


def shared_rigidly(
    reading: Reading,
    masses: Masses,
    direction: Direction,
    stiffness: Mapping[str, float],
    pushes: Sequence[float] = (),
) -> Sharing:
    """:func:`rigid_shares` of masses that were added up before, to share them by several stiffnesses."""
    lines = [plan_line(reading, id, direction) for id in relied(reading)]
    loads, off = masses.loads, masses.off_in
    cases: list[dict[int, dict[str, float]]] = []
    held = True
    for shift in (0.0, off, -off):
        case = {}
        for level, load in loads.items():
            moved = Push(load.x, load.y, load.moment + shift * (load.x + load.y))
            found = balanced({}, stiffness, lines, moved)
            held = held and found.holds(moved)
            case[level] = found.forces
        cases.append(case)
    ways = tuple(_fractions(lines, loads, case) for case in cases)
    shares = {}
    for line in lines:
        most = max(cases, key=lambda case: abs(_line_total(line.id, case, loads, pushes)))
        parts = ways[cases.index(most)][line.id]
        shares[line.id] = LineShare(line.id, direction, parts, dict.fromkeys(parts, 0.0))
    return Sharing(shares, "" if held else _missing(direction, True, 2, False), ways)


def _fractions(
    lines: Sequence[PlanLine], loads: Mapping[int, Push], forces: Mapping[int, Mapping[str, float]]
) -> dict[str, dict[int, float]]:
    """The part of every level that each line holds, signed."""
    wholes = {level: load.x + load.y for level, load in sorted(loads.items())}
    return {
        line.id: {level: forces[level].get(line.id, 0.0) / whole for level, whole in wholes.items() if whole > 0}
        for line in lines
    }


def _line_total(
    id: str, forces: Mapping[int, Mapping[str, float]], loads: Mapping[int, Push], pushes: Sequence[float]
) -> float:
    """The force of a line over all levels, each level's share times its push."""
    total = 0.0
    for level, load in loads.items():
        whole = load.x + load.y
        push = pushes[level] if 0 <= level < len(pushes) else 1.0
        total += push * forces[level].get(id, 0.0) / whole if whole > 0 else 0.0
    return total


def _missing(direction: Direction, places: bool, lines: int, held: bool) -> str:
    """What is missing in a direction, in words; empty when nothing is."""
    if places and held:
        return ""
    if places:
        return f"the lines relied on cannot hold the house still against force along {direction}: a line is missing"
    found = "no line" if lines == 0 else "only one line" if lines == 1 else "nothing but lines in one line"
    return f"{found} is relied on along {direction}: a line is missing there"
