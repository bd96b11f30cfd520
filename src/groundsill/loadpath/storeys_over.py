"""What the storeys above bring down on a braced segment besides their force: how much of their overturning moment.

The forces of the line act at their levels, and so their resultant lies above the floor. Where that moment comes down is
a question of which wall stands over which segment. Unless the designer chose with a printed reason, both bounds are
worked out, none of it and the whole of the segment's own share; a check that they part *cannot be checked*. A segment
with no wall over it, in a storey whose walls the survey holds, takes none.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Final

from groundsill.forces.levels import levels_of
from groundsill.forces.reading import XY, Reading, doubted, line_ends
from groundsill.house.building import Wall
from groundsill.loadpath.case import Brace, LineCase, cannot
from groundsill.loadpath.chain import Link
from groundsill.loadpath.soil import resultant_ft
from groundsill.loadpath.storey_walls import stretches_of, wall_ends
from groundsill.mechanics.plan import length
from groundsill.working.value import marks_of

__all__ = ["Bound", "Over", "bounded", "over_line"]

_NEAR_IN = 6.0  # as the take-down: a wall so near to a line, along it, stands over it
_ALONG = math.cos(math.radians(2.0))
_CLAUSE = "statics: T below = T above + v h"
_NONE = "without what the storeys above turn"
_ALL = "with all of its share of what the storeys above turn"


@dataclass(frozen=True, slots=True)
class Bound:
    """One assumption: how far above the floor the segment's force acts, ft, in what words, and why it was chosen."""

    arm_ft: float
    words: str
    why: str = ""

    def told(self, reason: str) -> str:
        """A reason with the assumption it was found by; what was chosen is told with the segment's own overturning."""
        return reason if self.why else self.in_full(reason)

    def in_full(self, reason: str) -> str:
        """A reason with the assumption it was found by, chosen or not."""
        return "; ".join(text for text in (reason, self.words) if text)


@dataclass(frozen=True, slots=True)
class Over:
    """What stands over a line: the arm of its forces above the floor, and full-height stretches of wall by station.

    ``stretches`` are (name, from, to) in inches along the line; ``known`` says that the survey holds walls of the
    storey, ``chosen`` what the designer chose with a reason, ``reason`` that reason.
    """

    arm_ft: float
    stretches: tuple[tuple[str, float, float], ...]
    known: bool
    chosen: str
    reason: str

    def bounds(self, brace: Brace) -> tuple[Bound, ...]:
        """The assumptions to work out for a segment, the least first."""
        none, every = Bound(0.0, _NONE), Bound(self.arm_ft, _ALL)
        if float(self.arm_ft) <= 1e-6:
            return (Bound(0.0, ""),)
        if self.chosen == "not counted":
            return (Bound(0.0, f"{_NONE} (choice)", self.reason),)
        if self.chosen == "all of it":
            return (Bound(self.arm_ft, f"{_ALL} (choice)", self.reason),)
        if self.known and not self.over(brace):
            return (Bound(0.0, f"{_NONE}: no full-height wall stands over it"),)
        return none, every

    def over(self, brace: Brace) -> tuple[str, ...]:
        """The walls with a full-height stretch over a segment, by name."""
        there = (n for n, low, high in self.stretches if min(high, brace.to_in) - max(low, brace.from_in) > 1.0)
        return tuple(dict.fromkeys(there))


def over_line(case: LineCase) -> Over:
    """What stands over a line, and what the designer chose."""
    choices, forces = case.reading.house.choices, case.forces
    arm, floor = resultant_ft(forces, case.id), forces.levels[0].height_ft
    a = doubted(max(float(arm) - float(floor), 0.0), marks_of((arm, floor)), unit="ft", symbol="a")
    stretches = case.reading.once(("over", case.id), lambda: _stretches(case))
    known = case.reading.once("walls of the lowest storey", lambda: bool(_lowest(case.reading)))
    reason = choices.storeys_above_reason.strip()
    return Over(a, stretches, known, choices.storeys_above if reason else "both bounds", reason)


def _lowest(reading: Reading) -> list[tuple[str, Wall]]:
    levels = levels_of(reading)
    walls = reading.in_order(reading.house.survey.building.walls)
    return [(id, wall) for id, wall in walls if levels[wall.storey] == 0]


def _stretches(case: LineCase) -> tuple[tuple[str, float, float], ...]:
    """Full-height stretches of walls of the lowest storey over a line: the wall named over it, else those along it."""
    start, end = line_ends(case.reading.house, case.line)
    found: list[tuple[str, float, float]] = []
    for id, wall in _lowest(case.reading):
        ends = wall_ends(case.reading, wall)
        if length(*ends) == 0 or (id != case.line.above and (case.line.above or not _beside(ends, (start, end)))):
            continue
        whole = length(start, end)
        along = ((end[0] - start[0]) / whole, (end[1] - start[1]) / whole)
        first, last = ((p[0] - start[0]) * along[0] + (p[1] - start[1]) * along[1] for p in ends)
        way = 1.0 if last > first else -1.0
        for low, high in stretches_of(wall, length(*ends)):
            here = sorted((first + way * low, first + way * high))
            found.append((f"wall {wall.mark or id}", here[0], here[1]))
    return tuple(found)


def _beside(wall: tuple[XY, XY], line: tuple[XY, XY]) -> bool:
    """Whether a wall runs along a line and stands over it."""
    (a, b), (c, d) = wall, line
    size, whole = length(a, b), length(c, d)
    ux, uy = (d[0] - c[0]) / whole, (d[1] - c[1]) / whole
    middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    away = abs((middle[0] - c[0]) * uy - (middle[1] - c[1]) * ux)
    return abs((b[0] - a[0]) * ux + (b[1] - a[1]) * uy) >= _ALONG * size and away <= _NEAR_IN


_HOLDS: Final = ("passes", "indicated", "does not apply")


def bounded(bounds: Sequence[Bound], make: Callable[[Bound], Link]) -> Link:
    """A link by every assumption: the worst where it holds, the least where even that fails, else neither is known."""
    worst = make(bounds[-1])
    if len(bounds) == 1 or worst.status in _HOLDS:
        return worst
    least = make(bounds[0])
    if least.status not in _HOLDS:
        told = f"{least.reason}; {_ALL} {_ratio(worst)}" if worst.status == "fails" else least.reason
        return replace(least, reason=told)
    reason = (
        f"where the moment of the storeys above comes down is not known, and it matters: {_ratio(least)} {_NONE}, "
        f"{_ratio(worst)} {_ALL}; a choice with its reason settles it (storeys_above)"
    )
    doubts = frozenset(least.marks) | frozenset(worst.marks)
    return cannot(
        worst.address, worst.title, worst.scope, worst.scope_id, clause=_CLAUSE, reason=reason,
        direction=worst.direction, marks=doubts, working=worst.working,
    )  # fmt: skip


def _ratio(link: Link) -> str:
    if link.status == "cannot be checked":
        return "it cannot be checked"
    if link.status == "does not apply":
        return "nothing is asked of it"
    return "it has no capacity" if link.ratio is None else f"the ratio is {link.ratio:.2f}"
