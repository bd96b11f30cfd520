"""The storeys above the lowest floor, as found: shear of their walls by the old finishes, shown as context.

The force at a storey is that of every level above its floor. A flexible floor or roof shares it among the storey's
walls as it shares the whole among the lines below; a wall's force goes to the stretches between openings that are long
enough for their height. Work under the floor changes none of this, so the storey above becomes the next weakest level
sooner or later, and the reader is told which it is.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from math import floor

from groundsill.forces.flexible import ANGLES, counts, flexible
from groundsill.forces.levels import levels_of, ordered_storeys
from groundsill.forces.reading import XY, Reading
from groundsill.forces.seismic import Forces
from groundsill.forces.share import Direction
from groundsill.forces.weights import WeightItem
from groundsill.house.building import Wall
from groundsill.house.survey import in_order
from groundsill.loadpath.chain import Chain, LoadLevel, Status, Verdict, status_of, verdict_of, weakest
from groundsill.loadpath.storey_walls import Known, Strength, known_of, strength_of, wall_ends
from groundsill.mechanics.equilibrium import PlanLine
from groundsill.mechanics.plan import length, rotate
from groundsill.standards.statics.walls import unit_shear
from groundsill.working.sheet import section
from groundsill.working.steps import add, given, note, scale
from groundsill.working.value import Mark, marks_of

__all__ = ["REMARKS", "StoreyAbove", "StoreyCheck", "next_weakest", "own_system", "storeys_above"]

REMARKS = (
    "As found, at the best value of every fact, shear of the walls alone. Not checked: overturning, the floors and the "
    "roof between the walls and what ties them to the walls, headers, and anything out of plane.",
    "Partitions are weighed and not counted as bracing; only walls that the survey holds as walls of a storey are. "
    "Of two finishes on one wall the stronger alone counts: unlike faces do not add. A stretch of wall too slender for "
    "the tables carries something too, but no table says how much: it is not counted.",
)

DIRECTIONS: tuple[Direction, ...] = ("x", "y")
_ALONG = math.cos(math.radians(1.0))  # a wall within a degree of x or y lies along it
_IN_LINE_IN = 48.0  # walls offset by no more count as one line (common practice for braced wall lines, no source)


@dataclass(frozen=True, slots=True)
class StoreyCheck:
    """One wall of a storey above, as found, for the direction of earthquake that asks most of it.

    ``force_lb`` is the force along the wall at strength level and ``shares`` its share of every level's force (negative
    where an overhang pulls it the other way); demand and capacity are plf at ``level``; ``length_ft`` is the length of
    wall that counts. ``address`` is where its working stands on a sheet.
    """

    address: str
    storey: str
    wall: str
    mark: str
    direction: Direction
    shares: tuple[float, ...]
    force_lb: float
    length_ft: float
    finish: str
    level: LoadLevel
    demand_plf: float | None
    capacity_plf: float | None
    ratio: float | None
    status: Status
    reason: str
    clause: str
    extension: str
    marks: tuple[Mark, ...]


@dataclass(frozen=True, slots=True)
class StoreyAbove:
    """One level of storeys above the lowest floor: its walls, and what it comes to.

    ``force_lb`` is the force of all levels above its floor, strength level. ``percent`` is what the weakest wall that
    could be checked carries of its force; ``governing`` is that wall's address. ``missing`` says, for each direction
    that the walls cannot hold, that a wall is missing.
    """

    level: int
    name: str
    force_lb: float
    checks: tuple[StoreyCheck, ...]
    missing: tuple[str, ...]
    percent: float | None
    governing: str | None
    verdict: Verdict
    headline: str


@dataclass(frozen=True, slots=True)
class _Wall:
    """A wall with its place on the plan and what is known of it; ``left_out`` says why it takes no share."""

    id: str
    wall: Wall
    ends: tuple[XY, XY]
    known: Known
    left_out: str = ""

    @property
    def name(self) -> str:
        return f"wall {self.wall.mark or self.id}"

    def line(self, direction: Direction) -> PlanLine:
        """The wall as the equilibrium sees it, pointing with the force, exactly along x or y within a degree."""
        (x1, y1), (x2, y2) = self.ends
        size = math.hypot(x2 - x1, y2 - y1)
        ux, uy = (x2 - x1) / size, (y2 - y1) / size
        if abs(ux) >= _ALONG or abs(uy) >= _ALONG:
            ux, uy = (1.0, 0.0) if abs(ux) > abs(uy) else (0.0, 1.0)
        elif (ux if direction == "x" else uy) < 0:
            ux, uy = -ux, -uy
        return PlanLine(self.id, (x1 + x2) / 2, (y1 + y2) / 2, ux, uy)

    def part(self, direction: Direction) -> float:
        """What part of its own force acts along a direction."""
        line = self.line(direction)
        return line.ux if direction == "x" else line.uy


def storeys_above(reading: Reading, forces: Forces) -> tuple[StoreyAbove, ...]:
    """Every level of storeys, from the lowest floor up, each with its walls checked as found."""
    levels = levels_of(reading)
    found = []
    for level in sorted(set(levels.values())):
        names = [s.name or s.mark or id for id, s in ordered_storeys(reading) if levels[id] == level]
        walls = _left_out(
            [
                _Wall(id, wall, wall_ends(reading, wall), known_of(reading, wall))
                for id, wall in in_order(reading.house.survey.building.walls)
                if levels[wall.storey] == level and length(*wall_ends(reading, wall)) > 0
            ]
        )
        found.append(_storey(forces, level, " and ".join(names), walls))
    return tuple(found)


def _storey(forces: Forces, level: int, name: str, walls: Sequence[_Wall]) -> StoreyAbove:
    """One level with the force of every wall, and its checks."""
    standing = [wall for wall in walls if not wall.left_out]
    shares, missing = {}, []
    for direction in DIRECTIONS:
        shares[direction], lacks = _shares(forces.items, standing, direction, level)
        missing += [f"{name}, {lacks}"] if lacks else []
    checks = tuple(_check(forces, wall, shares, level) for wall in walls)
    with section(f"storey/{level}/force"):
        above = forces.levels[level + 1 :]
        force = add(*(n.force_lb for n in above), symbol="V", label=f"force above the floor of {name}", unit="lb")
    return _concluded(StoreyAbove(level, name, float(force), checks, tuple(missing), None, None, "passes", ""))


# ---- Which walls take a share ---------------------------------------------------------------------------------------


def _left_out(walls: Sequence[_Wall]) -> list[_Wall]:
    """The walls, those without a stretch that counts left out where other walls can take their share.

    A wall that stands alone at its side of the house is never left out: an open front is a result.
    """
    counting = [wall for wall in walls if wall.known.counts]
    return [
        wall
        if wall.known.counts or not _others_take_over(wall, counting)
        else replace(wall, left_out="no stretch of it is long enough for its height; other walls take its share")
        for wall in walls
    ]


def _others_take_over(wall: _Wall, counting: Sequence[_Wall]) -> bool:
    """Whether a counting wall stands in line with this one, or one on either side of it."""
    own: Direction = "x" if wall.part("x") >= wall.part("y") else "y"
    low, high, place = _seen(wall, own)
    before = after = False
    for other in counting:
        if counts(other.part(own)) < 1.0:
            continue
        start, end, there = _seen(other, own)
        if abs(there - place) <= _IN_LINE_IN:
            return True
        if min(end, high) - max(start, low) > 1.0:
            before, after = before or there < place, after or there > place
    return before and after


def _seen(wall: _Wall, direction: Direction) -> tuple[float, float, float]:
    """A wall seen across the force: where it begins and ends along it, and the place of its middle across it."""
    (u1, v1), (u2, v2) = (rotate(point, -ANGLES[direction]) for point in wall.ends)
    return min(u1, u2), max(u1, u2), (v1 + v2) / 2


def _shares(
    items: Sequence[WeightItem], walls: Sequence[_Wall], direction: Direction, floor_level: int
) -> tuple[dict[str, dict[int, float]], str]:
    """Each wall's share of every level above a floor, for force along a direction, and what is missing, in words."""
    above = [replace(item, levels=tuple((n, part) for n, part in item.levels if n > floor_level)) for item in items]
    lines = [wall.line(direction) for wall in walls]
    found = flexible([item for item in above if item.levels], lines, {wall.id: wall.ends for wall in walls}, direction)
    if not found.standing:
        return {}, f"no wall stands along {direction}: a wall is missing there"
    shares = {wall.id: {n: forces.get(wall.id, 0.0) for n, forces in found.force.items()} for wall in walls}
    if not (found.held and found.places):
        return shares, f"its walls cannot hold it against force along {direction}: a wall is missing"
    return shares, ""


# ---- One wall -------------------------------------------------------------------------------------------------------


def _check(
    forces: Forces, wall: _Wall, shares: Mapping[Direction, Mapping[str, Mapping[int, float]]], level: int
) -> StoreyCheck:
    """One wall, for the direction that asks most of it."""
    own: Direction = "x" if wall.part("x") >= wall.part("y") else "y"

    def size(direction: Direction) -> float:
        share = shares[direction].get(wall.id, {})
        return abs(sum(part * float(forces.levels[n].force_lb) for n, part in share.items()))

    direction = own if size(own) >= size("y" if own == "x" else "x") * (1 - 1e-9) else "y" if own == "x" else "x"
    address = f"storey/{level}/{wall.id}/{direction}"
    blank = StoreyCheck(
        address, wall.wall.storey, wall.id, wall.wall.mark, direction, (0.0,) * len(forces.levels), 0.0, 0.0, "",
        "allowable", None, None, None, "does not apply", "", "", "", (),
    )  # fmt: skip
    if wall.left_out:
        return replace(blank, reason=wall.left_out)
    if size(direction) < 1e-9:
        return replace(blank, reason="no force comes to it")
    with section(address):
        share = shares[direction][wall.id]
        V = _force(forces, wall, share, direction)
        E_h = forces.rules.effects.horizontal_effect(forces.rho, V)
        each = tuple(share.get(n, 0.0) for n in range(len(forces.levels)))
        return _by_finish(forces, replace(blank, shares=each, force_lb=float(V)), wall, E_h)


def _force(forces: Forces, wall: _Wall, share: Mapping[int, float], direction: Direction) -> float:
    """The force along a wall at strength level, level by level."""
    parts = []
    for n, part in sorted(share.items()):
        label = f"{wall.name}: share of the {forces.levels[n].name}, earthquake along {direction}"
        parts.append(scale(forces.levels[n].force_lb, given("α", part, "1", label), symbol=f"F_{n}", label=label))
    V = add(*parts, symbol="V_w", label=f"force along {wall.name}, strength level", unit="lb")
    return V if V >= 0 else scale(V, -1.0, symbol="V_w", label="its size: the force comes both ways")


def _by_finish(forces: Forces, blank: StoreyCheck, wall: _Wall, E_h: float) -> StoreyCheck:
    """The check by the finish that carries most; what could not be counted is said."""
    counting = [(finish, piers) for finish, piers in wall.known.finishes if piers]
    if not counting:
        return _not_counted(blank, wall, marks_of((E_h,)))
    allowable = any(finish.level == "allowable" for finish, _ in counting)
    asd = forces.rules.effects.asd_earthquake(E_h) if allowable else E_h
    found: list[tuple[float, Strength, float]] = []
    for finish, piers in counting:
        note(f"{wall.name} by {finish.layer}" + (f": {finish.assumed}" if finish.assumed else ""))
        strength = strength_of(wall.known, finish, piers, wall.name)
        v = unit_shear(E_h if finish.level == "strength" else asd, strength.length_ft)
        found.append((float(v) / float(strength.capacity_plf), strength, v))
    found.sort(key=lambda one: one[0])
    ratio, best, v = found[0]
    status, _ = status_of(v, best.capacity_plf, best.finish.extension)
    others = [f"by {s.finish.layer} alone the ratio is {r:.2f}" for r, s, _ in found[1:]]
    slender = len(wall.known.piers_in) - len(next(piers for finish, piers in counting if finish == best.finish))
    said = [*others, _slender(slender)] if slender else others
    marks = marks_of((v, best.capacity_plf)) | frozenset(best.finish.marks)
    return replace(
        blank, length_ft=float(best.length_ft), finish=best.finish.layer, level=best.finish.level, demand_plf=float(v),
        capacity_plf=float(best.capacity_plf), ratio=ratio, status=status, reason="; ".join(said),
        clause=best.finish.clause, extension=best.finish.extension, marks=tuple(sorted(marks)),
    )  # fmt: skip


def _slender(count: int) -> str:
    if count == 1:
        return "1 stretch too slender for its height is not counted"
    return f"{count} stretches too slender for their height are not counted"


def _not_counted(blank: StoreyCheck, wall: _Wall, doubts: frozenset[Mark]) -> StoreyCheck:
    """A wall without a stretch that counts: capacity zero where openings take all of it, else it cannot be checked."""
    marks = tuple(sorted(doubts))
    if not wall.known.piers_in:
        reason = "open from end to end: no full-height stretch of wall, and no other wall at this side"
        return replace(blank, capacity_plf=0.0, status="fails", reason=reason, marks=marks)
    if wall.known.finishes:
        layers = " and ".join(finish.layer for finish, _ in wall.known.finishes)
        reason = f"every stretch between openings is more slender than the tables allow for {layers}"
        clause = " and ".join(dict.fromkeys(finish.clause for finish, _ in wall.known.finishes))
        return replace(blank, status="cannot be checked", reason=reason, clause=clause, marks=marks)
    reason = f"no table here has a strength for its layers ({', '.join(wall.known.others) or 'none told'})"
    return replace(blank, status="cannot be checked", reason=reason, clause=wall.known.sdpws.clauses.walls, marks=marks)


# ---- What it comes to -----------------------------------------------------------------------------------------------


def _concluded(storey: StoreyAbove) -> StoreyAbove:
    """The level with its weakest wall, verdict and headline."""
    checked = [check for check in storey.checks if check.status in ("passes", "indicated", "fails")]
    worst = max(checked, key=lambda c: math.inf if c.ratio is None else c.ratio, default=None)
    percent = None if worst is None else 0.0 if worst.ratio is None else 100.0 / worst.ratio
    verdict = verdict_of(check.status for check in storey.checks)
    if not storey.checks:
        return replace(storey, verdict="cannot be checked", headline=f"{storey.name}: the survey holds no walls of it")
    if storey.missing:
        verdict, percent = "fails", 0.0
    told = [*storey.missing, *_told(storey, worst)]
    governing = worst.address if worst else None
    return replace(storey, percent=percent, governing=governing, verdict=verdict, headline="; ".join(told))


def _told(storey: StoreyAbove, worst: StoreyCheck | None) -> Iterator[str]:
    if worst is None:
        yield f"{storey.name}: no wall of it could be checked"
    elif worst.ratio is None:
        yield f"{storey.name}: wall {worst.mark or worst.wall} along {worst.direction} carries nothing, {worst.reason}"
    else:
        part = floor(100.0 / worst.ratio)
        carries = f"carries {part} % of its force" if worst.ratio > 1 else f"carries its force, ratio {worst.ratio:.2f}"
        doubt = ", indicated only" if worst.extension else ""
        where = f"wall {worst.mark or worst.wall} along {worst.direction}"
        yield f"{storey.name}: {where} {carries} by {worst.finish}{doubt}"
    unknown = [check for check in storey.checks if check.status == "cannot be checked"]
    if unknown and worst is not None:
        marks = ", ".join(check.mark or check.wall for check in unknown)
        yield f"cannot be checked: {marks}"


def own_system(forces: Forces) -> str:
    """What the walls above would be asked for by the row of boards and plaster, in words; empty where it is that row.

    Old finishes under the R of wood structural panels: both figures are printed, never mixed.
    """
    rules = forces.rules
    beside = rules.boards_beside(forces.system.system)
    if beside is None:
        return ""
    row, R = beside
    own, other = rules.row_name(forces.system.system), rules.row_name(row)
    return (
        f"The force is that of system {own}, R {float(forces.system.R):g}, as for the lines below. The old finishes "
        f"themselves stand in row {other} with R {R:g}: by it every ratio here is {float(forces.system.R) / R:.2f} "
        "times as high"
    )


def next_weakest(chains: Sequence[Chain], storeys: Sequence[StoreyAbove], work: bool) -> str:
    """Which level is the weakest and which the next, in one sentence, from a state's chains and the storeys above.

    ``work`` says that the state has work laid on it.
    """
    when = "after the work" if work else "as found"
    line = weakest(chains)
    below = line.percent if line else None
    known = [storey for storey in storeys if storey.percent is not None]
    if not known:
        return f"{when} nothing can be said of the storeys above: no wall of them could be checked"
    worst = min(known, key=lambda storey: storey.percent or 0.0)
    above = worst.percent or 0.0
    others = [s.name for s in storeys if s.percent is None]
    tail = f"; nothing is known of {' and '.join(others)}" if others else ""
    if below is None:
        return f"{when} the weakest level that could be checked is above: {worst.headline}{tail}"
    under = f"the level under the floor carries {_part(below)}"
    if below <= above:
        return f"{when} {under}; the next weakest level is {worst.headline}{tail}"
    return f"{when} {under} and the next weakest level, weaker still, is {worst.headline}{tail}"


def _part(percent: float) -> str:
    return f"{floor(percent)} % of its force" if percent < 100 else "all of its force"
