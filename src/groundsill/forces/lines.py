"""The force of each line along itself, at strength level: its shares of every level's force, by a flexible floor.

Where the heights of a line, or of opposite lines, differ much, the floor is also taken as rigid (shares by the lines'
stiffness, torsion included) and each line takes the worse of the two: :func:`with_rigid`. A stiffness that nobody knows
lies between what is known of it and a line that does not give at all: both ends are worked out.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import product
from typing import Protocol

from groundsill.forces.reading import Reading, line_ends, line_length_in
from groundsill.forces.share import (
    Direction,
    LineShare,
    Sharing,
    direction_of,
    flexible_shares,
    masses_of,
    reliance,
    shared_rigidly,
)
from groundsill.forces.weights import WeightItem
from groundsill.house.survey import in_order
from groundsill.house.underfloor import Line
from groundsill.working.sheet import quiet, section
from groundsill.working.steps import add, given, greatest, note, resultant, scale

__all__ = ["LineForce", "MissingLine", "Stiffness", "line_forces", "with_rigid"]

DIRECTIONS: tuple[Direction, ...] = ("x", "y")
FLEXIBLE, RIGID = "flexible floor", "rigid floor"
_WORTH_TELLING = 0.01  # of a level's weight
_HELD_FAST = 1000.0  # a line that does not give, over the stiffness of all lines together
_MOST_UNKNOWN = 3  # more lines of unknown stiffness than this leave the shares by a rigid floor open


class Level(Protocol):
    """What is needed of a level: its name and its force."""

    @property
    def name(self) -> str:
        """What it is called."""
        ...

    @property
    def force_lb(self) -> float:
        """Its force, strength level."""
        ...


@dataclass(frozen=True, slots=True)
class LineForce:
    """The force of one line along itself, at strength level, with the share of each level it comes from.

    ``direction`` is the line's own (None for a skewed one). ``shares`` belong to that one of x and y along which an
    earthquake gives the line most; ``other_lb`` is its force by the other. ``force_lb`` is the greater of the two, or,
    in a house with skewed lines, their resultant: what the worst direction of one earthquake gives it. A
    share is negative where the floor's overhang pulls the line the other way. ``floor`` says how the floor was taken,
    ``angle_deg`` how the line lies on the plan. ``flexible`` are the shares by a
    flexible floor, for an earthquake along the line itself (none for a skewed one).

    ``stiffness_lb_in`` is what a rigid floor shares by (None where it was not asked, or is not known). Where it is not
    known, ``open`` says why, and ``most_lb`` is the force at the stiffest it may be (None where not even that is
    known): the line's force lies between ``force_lb`` and it. ``cases`` are its forces, signed, for an earthquake
    along x and along y in each way the force may be shared; in each of them all lines are in equilibrium.
    """

    line: str
    mark: str
    direction: Direction | None
    relied_on: bool
    reason: str
    shares: tuple[float, ...]
    collected: tuple[float, ...]
    force_lb: float
    length_ft: float
    other_lb: float = 0.0
    floor: str = FLEXIBLE
    angle_deg: float = 0.0
    flexible: tuple[float, ...] = ()
    stiffness_lb_in: float | None = None
    open: str = ""
    most_lb: float | None = None
    cases: dict[Direction, tuple[float, ...]] = field(default_factory=dict)

    def along(self, direction: Direction) -> float:
        """What part of the line's force acts along a direction: all of it or none, or a skewed line's component."""
        if self.direction is not None:
            return 1.0 if self.direction == direction else 0.0
        turned = math.radians(self.angle_deg)
        return abs(math.cos(turned) if direction == "x" else math.sin(turned))


@dataclass(frozen=True, slots=True)
class MissingLine:
    """A direction in which the lines cannot hold the house in equilibrium, in words: a line is missing."""

    direction: Direction
    reason: str


def line_forces(
    reading: Reading, items: Sequence[WeightItem], levels: Sequence[Level]
) -> tuple[dict[str, LineForce], tuple[MissingLine, ...], tuple[str, ...]]:
    """Every line's force by a flexible floor, the directions in which a line is missing, and what must be said."""
    by_direction = {direction: flexible_shares(reading, items, direction) for direction in DIRECTIONS}
    missing = tuple(MissingLine(d, sharing.missing) for d, sharing in by_direction.items() if sharing.missing)
    found = {}
    for id, surveyed in in_order(reading.house.survey.underfloor.lines):
        relied = reliance(reading, id)
        blank = LineForce(
            id,
            surveyed.mark,
            direction_of(reading, surveyed),
            relied.relied_on,
            relied.reason,
            (0.0,) * len(levels),
            (0.0,) * len(levels),
            0.0,
            line_length_in(reading.house, surveyed) / 12,
            angle_deg=_angle(reading, surveyed),
        )
        found[id] = blank
    skewed = any(line.relied_on and line.direction is None for line in found.values())
    for id, line in found.items():
        if line.relied_on:
            with section(f"line/{id}/force"):
                made = _greatest(line, by_direction, levels, FLEXIBLE, skewed)
                own = _own_shares(line, by_direction, len(levels))
                found[id] = replace(made, flexible=own, cases=_cases(id, by_direction, levels))
    return found, missing, tuple(_cautions(found, by_direction, levels))


def _cautions(
    lines: Mapping[str, LineForce], by_direction: Mapping[Direction, Sharing], levels: Sequence[Level]
) -> Iterator[str]:
    """Floor that hangs out so far that a line has more than all of a level's force, or no line behind holds it down.

    Nothing of a direction in which a line is missing: that is told as what it is.
    """
    for direction, sharing in by_direction.items():
        for id, share in sharing.shares.items() if not sharing.missing else ():
            where = (
                f"(earthquake along {direction}): the floor turns about it; rely on a line farther out, if there is one"
            )
            part, level = max(((abs(part), n) for n, part in share.fraction.items()), default=(0.0, 0))
            if part > 1.0:
                yield f"line {lines[id].mark} has {part:.2f} times all the force of the {levels[level].name} {where}"
            part, level = max(((part, n) for n, part in share.overhung.items()), default=(0.0, 0))
            if part >= _WORTH_TELLING:
                yield (
                    f"{part:.0%} of the weight of the {levels[level].name} hangs out beyond line {lines[id].mark}, "
                    f"farther than any line stands behind it {where}"
                )


def _own_shares(line: LineForce, by_direction: Mapping[Direction, Sharing], count: int) -> tuple[float, ...]:
    """The line's shares of every level for an earthquake along itself; none for a skewed line."""
    share = by_direction[line.direction].shares.get(line.line) if line.direction is not None else None
    return () if share is None else tuple(share.fraction.get(n, 0.0) for n in range(count))


def _angle(reading: Reading, line: Line) -> float:
    (x1, y1), (x2, y2) = line_ends(reading.house, line)
    return math.degrees(math.atan2(y2 - y1, x2 - x1))


@dataclass(frozen=True, slots=True)
class Stiffness:
    """How stiff a line is along itself, lb/in.

    Where nobody knows, ``why_not`` says why; ``known`` is then the least, and ``most`` the most, or None where it may
    be anything.
    """

    known: float
    why_not: str = ""
    most: float | None = None


def with_rigid(
    reading: Reading,
    items: Sequence[WeightItem],
    levels: Sequence[Level],
    lines: Mapping[str, LineForce],
    stiffness: Mapping[str, Stiffness],
) -> tuple[dict[str, LineForce], tuple[str, ...]]:
    """The same lines, each with the worse of what it has and what a rigid floor gives it by these stiffnesses.

    A line that has none (nothing braces it) keeps what it has; so does every line in a direction that the braced lines
    cannot hold by a rigid floor, which is told in words. Lines of unknown stiffness are taken at both ends in every
    combination (a line's force goes one way all along from one end of another's stiffness to the other), and the others
    take the worst; they themselves keep the worst of those in which they are no stiffer than is known.
    """
    unknown = [id for id, found in stiffness.items() if found.why_not]
    if len(unknown) > _MOST_UNKNOWN:
        words = f"the stiffness of {len(unknown)} lines is not known, nor then any line's share by a rigid floor"
        note(words)
        return {id: _left_open(reading, line, stiffness, unknown) for id, line in lines.items()}, (words,)
    runs, told = _by_rigid_floor(reading, items, levels, stiffness, unknown)
    skewed = any(line.relied_on and line.direction is None for line in lines.values())
    found = {}
    for id, line in lines.items():
        if not line.relied_on:
            found[id] = line
            continue
        ways = [line.cases, *(_cases(id, run, levels) for _, run in runs)]
        line = replace(line, cases={d: tuple(force for way in ways for force in way.get(d, ())) for d in DIRECTIONS})
        mine = stiffness.get(id)
        if mine is None:
            found[id] = line
            continue
        with section(f"line/{id}/force"):
            made = _worst(line, [run for stiff, run in runs if id not in stiff], levels, skewed)
            if mine.why_not:
                most = _worst(line, [run for stiff, run in runs if id in stiff], levels, skewed)
                found[id] = replace(made, open=mine.why_not, most_lb=max(float(most.force_lb), float(made.force_lb)))
            else:
                found[id] = replace(made, stiffness_lb_in=mine.known)
    return found, told


Run = Mapping[Direction, Sharing]


def _by_rigid_floor(
    reading: Reading,
    items: Sequence[WeightItem],
    levels: Sequence[Level],
    stiffness: Mapping[str, Stiffness],
    unknown: Sequence[str],
) -> tuple[list[tuple[frozenset[str], Run]], tuple[str, ...]]:
    """The sharing by a rigid floor with every choice of the unknown lines at their stiffest, the others as known.

    With it, in words, where what is braced cannot hold a rigid floor; that direction then has no sharing by it.
    """
    pushes = [float(level.force_lb) for level in levels]
    known = {id: float(found.known) for id, found in stiffness.items()}
    fast = _HELD_FAST * (sum(known.values()) or 1.0)
    masses = {d: masses_of(items, d) for d in DIRECTIONS}
    runs: list[tuple[frozenset[str], Run]] = []
    told: list[str] = []
    for choice in product((False, True), repeat=len(unknown)):
        stiff = frozenset(id for id, held in zip(unknown, choice, strict=True) if held)
        at_end = {id: fast if (most := stiffness[id].most) is None else most for id in stiff}
        used = {id: k for id, k in (known | at_end).items() if k > 0}
        run = {d: shared_rigidly(reading, masses[d], d, used, pushes) for d in DIRECTIONS}
        for direction, sharing in run.items():
            if sharing.missing:
                held = f", with {len(stiff)} lines of unknown stiffness at their stiffest," if stiff else ""
                told.append(f"along {direction} what is braced{held} cannot hold a rigid floor, so none is taken there")
                note(told[-1])
                run[direction] = Sharing({}, sharing.missing)
        runs.append((stiff, run))
    return runs, tuple(told)


def _worst(line: LineForce, runs: Sequence[Run], levels: Sequence[Level], skewed: bool) -> LineForce:
    """The line with the worst of what it has and of what these ways of sharing by a rigid floor give it."""
    with quiet():
        rigid = [_greatest(line, run, levels, RIGID, skewed) for run in runs]
    other = max(float(each.other_lb) for each in (line, *rigid))
    governs = max(range(len(runs)), key=lambda n: rigid[n].force_lb)
    made = _greatest(line, runs[governs], levels, RIGID, skewed)
    worse = greatest(line.force_lb, made.force_lb, symbol="V_line", label="the worse of flexible and rigid floor")
    return replace(made if made.force_lb > line.force_lb else line, force_lb=worse, other_lb=other)


def _left_open(
    reading: Reading, line: LineForce, stiffness: Mapping[str, Stiffness], unknown: Sequence[str]
) -> LineForce:
    """A line whose share by a rigid floor nobody can say, since too many lines are of unknown stiffness."""
    if not line.relied_on:
        return line
    mine = stiffness.get(line.line)
    marks = reading.house.survey.underfloor.lines
    names = ", ".join(marks[id].mark or id for id in unknown)
    why = (mine.why_not if mine is not None else "") or f"its share depends on the stiffness of {names}, not known"
    known = None if mine is None or mine.why_not else mine.known
    return replace(line, stiffness_lb_in=known, open=why)


def _cases(id: str, run: Run, levels: Sequence[Level]) -> dict[Direction, tuple[float, ...]]:
    """A line's force, signed, lb, for an earthquake along each direction in each way of sharing it."""
    return {
        direction: tuple(
            math.fsum(case.get(id, {}).get(n, 0.0) * float(level.force_lb) for n, level in enumerate(levels))
            for case in sharing.cases
        )
        for direction, sharing in run.items()
    }


def _greatest(line: LineForce, by_direction: Run, levels: Sequence[Level], floor: str, skewed: bool) -> LineForce:
    """The line with its force from the worst direction of earthquake: x or y, or, among skewed lines, any."""
    forces = []
    for direction in _own_first(line.direction):
        share = by_direction[direction].shares.get(line.line)
        if share is not None and any(abs(f) > 1e-9 for f in share.fraction.values()):
            forces.append((_force(line.mark, share, levels, floor), share))
    if not forces:
        return replace(line, force_lb=0.0, other_lb=0.0, floor=floor)
    force, share = max(forces, key=lambda pair: float(pair[0]))
    other = min((float(f) for f, _ in forces), default=0.0) if len(forces) > 1 else 0.0
    if skewed and len(forces) > 1:
        label = f"force of line {line.mark}, {floor}: worst direction of the earthquake, for lines not all along x or y"
        force = resultant(forces[0][0], forces[1][0], symbol="V_line", label=label)
    return replace(
        line,
        shares=tuple(share.fraction.get(n, 0.0) for n in range(len(levels))),
        collected=tuple(share.collected.get(n, 0.0) for n in range(len(levels))),
        force_lb=force,
        other_lb=other,
        floor=floor,
    )


def _own_first(direction: Direction | None) -> Iterator[Direction]:
    yield from DIRECTIONS if direction != "y" else reversed(DIRECTIONS)


def _force(mark: str, share: LineShare, levels: Sequence[Level], floor: str) -> float:
    """The size of a line's force for an earthquake along one direction, level by level."""
    parts = []
    for place, level in enumerate(levels):
        fraction = share.fraction.get(place, 0.0)
        label = f"{mark}: share of the {level.name}, earthquake along {share.direction}, {floor}"
        parts.append(scale(level.force_lb, given("α", fraction, "1", label), symbol=f"F_{place}", label=label))
    force = add(*parts, symbol="V_line", label=f"force of line {mark}, strength level, {floor}", unit="lb")
    if force < 0:  # the floor's overhang pulls the line the other way; the earthquake comes both ways
        force = scale(force, -1.0, symbol="V_line", label="its size: the force comes both ways")
    return force
