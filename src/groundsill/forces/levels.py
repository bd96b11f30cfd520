"""Heights: the base, storeys one above the other, and storeys that stand side by side at other heights.

Level 0 is the lowest floor; a storey that lies over another, in plan and by more than a foot, stands a level above it.
Storeys beside each other share a level; where their floors then differ by more than a foot the house has a split level,
which is recognised and told, not solved.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations, pairwise

from groundsill.forces.reading import XY, Reading
from groundsill.house.building import Storey
from groundsill.mechanics.plan import area

__all__ = [
    "base_words",
    "base_z_in",
    "level_names",
    "levels_of",
    "ordered_storeys",
    "outline_of",
    "split_levels",
    "storeys_under",
]

STEP_IN = 12.0  # floors nearer in height than this are one floor with a step in it
_OVER = 0.1  # part of the smaller outline that must lie over the other for one storey to stand on the other


def base_z_in(reading: Reading) -> float:
    """The base: the mean height of the old foundation's top under the lines, weighted by length."""
    segments = reading.house.survey.foundation.segments.values()
    found = [(s.top_z_in.value, s.to_in - s.from_in) for s in segments if s.line not in reading.inner]
    known = [(z, length) for z, length in found if z is not None and length > 0]
    total = sum(length for _, length in known)
    return sum(z * length for z, length in known) / total if total else 0.0


def base_words(reading: Reading) -> str:
    """Where the base is, as it is printed."""
    datum = reading.house.survey.building.datum
    return f"the base is the mean top of the foundation, {base_z_in(reading):.1f} in. above {datum}"


def ordered_storeys(reading: Reading) -> list[tuple[str, Storey]]:
    """The storeys from the lowest floor up."""
    return sorted(reading.house.survey.building.storeys.items(), key=lambda pair: (pair[1].floor_z_in, pair[0]))


def levels_of(reading: Reading) -> dict[str, int]:
    """The level at the foot of each storey: one above the highest of the storeys that it lies over."""
    found: dict[str, int] = {}
    done: list[tuple[str, Storey]] = []
    for id, storey in ordered_storeys(reading):
        under = [found[key] for key, below in done if _stands_on(reading, storey, below)]
        found[id] = max(under) + 1 if under else 0
        done.append((id, storey))
    return found


def level_names(reading: Reading) -> list[str]:
    """What to call each level: floors by their storeys, then the roof."""
    levels = levels_of(reading)
    names: list[list[str]] = [[] for _ in range(max(levels.values(), default=-1) + 1)]
    for id, storey in ordered_storeys(reading):
        names[levels[id]].append(storey.name or storey.mark or id)
    return [f"floor of {' and '.join(n)}" for n in names] + ["roof"]


def storeys_under(reading: Reading, id: str) -> list[str]:
    """The storeys that a storey stands on, those one level below that it lies over; none for the lowest."""
    levels, storey = levels_of(reading), reading.house.survey.building.storeys[id]
    return [
        key
        for key, below in ordered_storeys(reading)
        if levels[key] == levels[id] - 1 and _stands_on(reading, storey, below)
    ]


def split_levels(reading: Reading) -> tuple[str, ...]:
    """A sentence for each two storeys that stand beside each other at one level with floors more than a foot apart."""
    levels = levels_of(reading)
    found = []
    for (a, low), (b, high) in combinations(ordered_storeys(reading), 2):
        apart = high.floor_z_in - low.floor_z_in
        if levels[a] == levels[b] and apart > STEP_IN:
            names = f"{low.name or low.mark or a} and {high.name or high.mark or b}"
            found.append(
                f"split level: recognised, not solved: the floors of {names} stand beside each other {apart:.0f} in. "
                "apart and count as one level; what ties the two halves together is not checked"
            )
    return tuple(found)


def outline_of(reading: Reading, corners: Sequence[str]) -> tuple[XY, ...]:
    """An outline's points, inches."""
    known = reading.house.survey.building.corners
    return tuple((known[c].x_in, known[c].y_in) for c in corners)


def _stands_on(reading: Reading, storey: Storey, below: Storey) -> bool:
    """Whether a storey lies over a lower one."""
    if storey.floor_z_in - below.floor_z_in <= STEP_IN:
        return False
    if storey.outline == below.outline:
        return True
    upper, lower = outline_of(reading, storey.outline), outline_of(reading, below.outline)
    return _common_area(upper, lower) > _OVER * min(abs(area(upper)), abs(area(lower)))


def _common_area(one: Sequence[XY], other: Sequence[XY]) -> float:
    """The area that two outlines share, exactly: between two neighbouring places of change it grows in step with x."""
    if min(x for x, _ in one) >= max(x for x, _ in other) or min(x for x, _ in other) >= max(x for x, _ in one):
        return 0.0
    total = 0.0
    for left, right in pairwise(sorted({x for x, _ in (*one, *other)} | _meetings(one, other))):
        middle = (left + right) / 2
        for low, high in _inside_at(one, middle):
            for a, b in _inside_at(other, middle):
                total += max(0.0, min(high, b) - max(low, a)) * (right - left)
    return total


def _meetings(one: Sequence[XY], other: Sequence[XY]) -> set[float]:
    """The x of every place where an edge of one outline crosses an edge of the other."""
    found = set()
    for (x1, y1), (x2, y2) in _edges(one):
        for (x3, y3), (x4, y4) in _edges(other):
            turn = (x2 - x1) * (y4 - y3) - (y2 - y1) * (x4 - x3)
            if turn:
                t = ((x3 - x1) * (y4 - y3) - (y3 - y1) * (x4 - x3)) / turn
                u = ((x3 - x1) * (y2 - y1) - (y3 - y1) * (x2 - x1)) / turn
                if 0 <= t <= 1 and 0 <= u <= 1:
                    found.add(x1 + t * (x2 - x1))
    return found


def _inside_at(points: Sequence[XY], x: float) -> list[XY]:
    """The stretches of the line across a plan at ``x`` that lie inside an outline."""
    hits = sorted(
        y1 + (x - x1) * (y2 - y1) / (x2 - x1)
        for (x1, y1), (x2, y2) in _edges(points)
        if (x1 <= x < x2) or (x2 <= x < x1)
    )
    return list(zip(hits[::2], hits[1::2], strict=False))


def _edges(points: Sequence[XY]) -> list[tuple[XY, XY]]:
    return list(zip(points, [*points[1:], *points[:1]], strict=True))
