"""Sharing the force of each level among the braced lines.

**Flexible floor** (the rule for old board floors): the floor is cut into strips running across the force; each strip
spans, as a simple beam, between the lines it crosses. A skewed line takes the component along itself. What this leaves
out of balance (nothing, for lines along x and y) is put on the lines by the least change that closes force along x,
along y, and turning.

**Rigid floor**: every line moves with the floor, so each takes its share by stiffness, torsion included.

Only lines that are *relied on* take a share; each line says whether it is, and why. A load that the lines cannot hold
is a result of its own: a line is missing.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from groundsill.forces.reading import XY, Reading, line_ends, line_length_in
from groundsill.forces.weights import WeightItem
from groundsill.house.foundation import FoundationSegment
from groundsill.house.survey import in_order
from groundsill.house.underfloor import Line
from groundsill.mechanics.equilibrium import PlanLine, Push, balanced
from groundsill.mechanics.plan import Share, Support, centroid, rotate, strips, strips_of_line

__all__ = [
    "Direction",
    "LineShare",
    "Masses",
    "Reliance",
    "Sharing",
    "direction_of",
    "distinct_places",
    "flexible_shares",
    "masses_of",
    "plan_line",
    "reliance",
    "rigid_shares",
    "shared_rigidly",
]

Direction = Literal["x", "y"]
_ANGLES: dict[Direction, float] = {"x": 0.0, "y": 90.0}
_ALONG = 1.0  # degrees: a line this near to x or y lies along it
_COUNTS = 0.5  # a line at 60 degrees or less to the force has a strip of floor of its own
_GAP_IN = 1.0  # foundation stretches parted by more than this leave a gap under the line
ACCIDENTAL = 0.05  # ASCE 7-16 12.8.4.2: the mass may stand off by this share of the plan's size


@dataclass(frozen=True, slots=True)
class Reliance:
    """Whether a line is relied on to carry earthquake force, and why."""

    relied_on: bool
    reason: str


@dataclass(frozen=True, slots=True)
class LineShare:
    """What share of each level's weight falls to a line, and how much of it a collector must bring.

    A fraction is positive when the line is pushed the way the house is; a negative one says that the floor's overhang
    pulls it the other way.
    """

    line: str
    direction: Direction
    fraction: dict[int, float]
    collected: dict[int, float]


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
    under = [s for s in survey.foundation.segments.values() if s.line == id]
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
    along = {line.id: line.ux if direction == "x" else line.uy for line in lines}
    supports = _supports(reading, [line.id for line in lines if along[line.id] >= _COUNTS], direction)
    guess: dict[int, dict[str, float]] = {}
    brought: dict[int, dict[str, float]] = {}
    loads: dict[int, Push] = {}
    for item in (item for item in items if item.seismic):
        split = _split(item, supports, -_ANGLES[direction])
        whole = sum(s.amount for s in split.values())
        for level, part in item.levels:
            weight = float(item.weight_lb) * part
            loads[level] = _plus(loads.get(level), _push(item, weight, direction))
            for id, share in split.items():
                amount = weight * share.amount / whole * along[id]
                _add(guess.setdefault(level, {}), id, amount)
                _add(brought.setdefault(level, {}), id, weight * abs(share.collected / whole))
    weights = {line.id: line_length_in(reading.house, reading.house.survey.underfloor.lines[line.id]) for line in lines}
    forces = {level: balanced(guess.get(level, {}), weights, lines, load) for level, load in loads.items()}
    held = all(forces[level].holds(load) for level, load in loads.items())
    places = distinct_places(reading, [s.id for s in supports], direction)
    by_level = {level: b.forces for level, b in forces.items()}
    return Sharing(
        _shares(lines, direction, loads, by_level, brought),
        _missing(direction, places, len(supports), held),
        (_fractions(lines, loads, by_level),),
    )


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
    loads: dict[int, Push] = {}
    spread: list[float] = []
    for item in (item for item in items if item.seismic):
        spread += [p[1 if direction == "x" else 0] for p in item.points]
        for level, part in item.levels:
            loads[level] = _plus(loads.get(level), _push(item, float(item.weight_lb) * part, direction))
    return Masses(loads, ACCIDENTAL * (max(spread, default=0.0) - min(spread, default=0.0)))


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
    worst: dict[int, dict[str, float]] = {level: {} for level in loads}
    for line in lines:
        most = max(cases, key=lambda case: abs(_line_total(line.id, case, loads, pushes)))
        for level in loads:
            worst[level][line.id] = most[level].get(line.id, 0.0)
    return Sharing(
        _shares(lines, direction, loads, worst, {}),
        "" if held else _missing(direction, 2, 2, False),
        tuple(_fractions(lines, loads, case) for case in cases),
    )


def _fractions(
    lines: Sequence[PlanLine], loads: Mapping[int, Push], forces: Mapping[int, Mapping[str, float]]
) -> dict[str, dict[int, float]]:
    """The part of every level that each line holds, signed."""
    wholes = {level: load.x + load.y for level, load in loads.items()}
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


def distinct_places(reading: Reading, ids: Iterable[str], direction: Direction) -> int:
    """At how many distinct places, an inch or more apart, these lines stand across a direction."""
    across = 1 if direction == "x" else 0
    middles = []
    for id in ids:
        a, b = line_ends(reading.house, reading.house.survey.underfloor.lines[id])
        middles.append((a[across] + b[across]) / 2)
    middles.sort()
    return sum(1 for n, place in enumerate(middles) if n == 0 or place - middles[n - 1] >= 1.0)


def _missing(direction: Direction, places: int, lines: int, held: bool) -> str:
    """What is missing in a direction, in words; empty when nothing is."""
    if places >= 2 and held:
        return ""
    if places >= 2:
        return f"the lines relied on cannot hold the house still against force along {direction}: a line is missing"
    found = "no line" if lines == 0 else "only one line" if lines == 1 else "nothing but lines in one line"
    return f"{found} is relied on along {direction}: a line is missing there"


def _supports(reading: Reading, ids: Iterable[str], direction: Direction) -> list[Support]:
    turn, found = -_ANGLES[direction], []
    for id in ids:
        a, b = line_ends(reading.house, reading.house.survey.underfloor.lines[id])
        (u1, v1), (u2, v2) = rotate(a, turn), rotate(b, turn)
        found.append(Support(id, u1, v1, u2, v2))
    return found


def _split(item: WeightItem, supports: Sequence[Support], turn: float) -> Mapping[str, Share]:
    points = [rotate(p, turn) for p in item.points]
    if item.shape == "area":
        return strips(points, supports)
    return strips_of_line(points[0], points[-1], supports)


def _middle(item: WeightItem) -> XY:
    if item.shape == "area":
        return centroid(item.points)
    (x1, y1), (x2, y2) = item.points[0], item.points[-1]
    return (x1 + x2) / 2, (y1 + y2) / 2


def _push(item: WeightItem, weight: float, direction: Direction) -> Push:
    """The item's weight as a force along the direction, with its moment about the plan's origin."""
    x, y = _middle(item)
    return Push(weight, 0.0, -weight * y) if direction == "x" else Push(0.0, weight, weight * x)


def _plus(a: Push | None, b: Push) -> Push:
    return b if a is None else Push(a.x + b.x, a.y + b.y, a.moment + b.moment)


def _add(amounts: dict[str, float], id: str, amount: float) -> None:
    amounts[id] = amounts.get(id, 0.0) + amount


def _shares(
    lines: Sequence[PlanLine],
    direction: Direction,
    loads: Mapping[int, Push],
    forces: Mapping[int, Mapping[str, float]],
    brought: Mapping[int, Mapping[str, float]],
) -> dict[str, LineShare]:
    found = {}
    for line in lines:
        fraction, collected = {}, {}
        for level, load in sorted(loads.items()):
            whole = load.x + load.y
            if whole > 0:
                fraction[level] = forces[level].get(line.id, 0.0) / whole
                collected[level] = brought.get(level, {}).get(line.id, 0.0) / whole
        found[line.id] = LineShare(line.id, direction, fraction, collected)
    return found
