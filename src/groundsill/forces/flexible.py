"""The flexible floor: the weight of every level laid on lines by strips, then closed by the least change.

Strips of floor run across the force and hang on the lines they run over (:mod:`groundsill.mechanics.strips`). A line
at an angle takes, of what comes to it, the component along itself. What that leaves out of balance, and what strips
cannot hold in turning, goes to all lines by the least change that closes force along x, along y, and turning.

At which angle to the force a line stops holding floor of its own no rule says. One up to 60 degrees off holds its
strips whole, one from 70 degrees on none; between, the shares are the average over every angle from 60 to 70 at which
the cut could be made. So no share jumps as a line turns.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from groundsill.forces.mass import middle_of
from groundsill.forces.reading import XY
from groundsill.forces.weights import WeightItem
from groundsill.mechanics.equilibrium import PlanLine, Push, balanced
from groundsill.mechanics.plan import length, rotate
from groundsill.mechanics.strips import ONE_PLACE_IN, Share, strips, strips_of_line
from groundsill.mechanics.supports import Support, Supports, arranged

__all__ = ["ANGLES", "Flexible", "along", "counts", "flexible", "loads_of"]

ANGLES = {"x": 0.0, "y": 90.0}
WHOLE_DEG, NONE_DEG = 60.0, 70.0  # off the force: floor of its own, and none (common practice, no source)

Amounts = dict[int, dict[str, float]]  # by level, then by line


@dataclass(slots=True)
class _Laid:
    """What strips lay on lines, pounds by line and level: the force along the line, and what wants a word."""

    force: Amounts = field(default_factory=dict)
    collected: Amounts = field(default_factory=dict)
    overhung: Amounts = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Flexible:
    """Parts of every level's weight, by level and line: on the line, brought over a collector, hanging out too far.

    ``standing`` are the lines that hold floor whole and ``places`` is whether they stand at more than one place;
    ``held`` is whether all lines together hold every level.
    """

    force: Amounts
    collected: Amounts
    overhung: Amounts
    standing: tuple[str, ...]
    places: bool
    held: bool


def along(line: PlanLine, direction: str) -> float:
    """What part of a line's own force acts along a direction."""
    return line.ux if direction == "x" else line.uy


def counts(along: float) -> float:
    """What part of its strips a line holds, from the part of its own force that acts along the earthquake."""
    off = round(math.degrees(math.acos(min(max(along, 0.0), 1.0))), 9)
    return min(max((NONE_DEG - off) / (NONE_DEG - WHOLE_DEG), 0.0), 1.0)


def flexible(
    items: Iterable[WeightItem], lines: Sequence[PlanLine], ends: Mapping[str, tuple[XY, XY]], direction: str
) -> Flexible:
    """Every level's weight on lines that point with the force, for force along ``direction``."""
    items = [item for item in items if item.seismic]
    laid = _laid(items, lines, ends, direction)
    loads = loads_of(items, direction)
    weights = {line.id: length(*ends[line.id]) for line in lines}
    closed = {level: balanced(laid.force.get(level, {}), weights, lines, load) for level, load in loads.items()}
    standing = [line.id for line in lines if counts(along(line, direction)) >= 1.0]
    whole = {level: load.x + load.y for level, load in loads.items()}
    return Flexible(
        _parts({level: balance.forces for level, balance in closed.items()}, whole),
        _parts(laid.collected, whole),
        _parts(laid.overhung, whole),
        tuple(standing),
        _apart(_supports(standing, ends, direction)),
        all(closed[level].holds(load) for level, load in loads.items()),
    )


def loads_of(items: Iterable[WeightItem], direction: str) -> dict[int, Push]:
    """Every level's weight as a force along a direction, with its moment about the plan's origin."""
    loads: dict[int, Push] = {}
    for item in items:
        x, y = middle_of(item)
        for level, part in item.levels:
            weight, sum = float(item.weight_lb) * part, loads.get(level, Push(0.0, 0.0, 0.0))
            more = (weight, 0.0, -weight * y) if direction == "x" else (0.0, weight, weight * x)
            loads[level] = Push(sum.x + more[0], sum.y + more[1], sum.moment + more[2])
    return loads


def _laid(
    items: Sequence[WeightItem], lines: Sequence[PlanLine], ends: Mapping[str, tuple[XY, XY]], direction: str
) -> _Laid:
    """What strips lay on the lines: as with every line that counts, and in part as with fewer."""
    found = _Laid()
    component = {line.id: along(line, direction) for line in lines}
    layers = _layers(component, ends, direction)
    for item in items:
        points = [rotate(point, -ANGLES[direction]) for point in item.points]
        for supports, part in layers:
            split = _split(item, points, supports)
            whole = sum(share.amount for share in split.values())
            for level, of_level in item.levels:
                weight = float(item.weight_lb) * of_level * part / whole
                for id, share in split.items():
                    _add(found.force, level, id, weight * share.amount * component[id])
                    _add(found.collected, level, id, abs(weight * share.collected))
                    _add(found.overhung, level, id, weight * share.overhung)
    return found


def _layers(
    component: Mapping[str, float], ends: Mapping[str, tuple[XY, XY]], direction: str
) -> list[tuple[Supports, float]]:
    """The lines that strips hang on, in sets that each count for a part of the floor; the parts come to one.

    A set holds all lines that count for no less than some part. Where those that count most stand at one place alone
    they hold no floor, and the set counts whole at which there are two.
    """
    part = {id: counts(along) for id, along in component.items() if counts(along) > 0}
    steps = sorted(set(part.values()), reverse=True)
    sets = [_supports([id for id in part if part[id] >= step], ends, direction) for step in steps]
    while len(sets) > 1 and not _apart(sets[0]):
        sets, steps = sets[1:], steps[1:]
    return [
        (arranged(those), (step - after) / steps[0])
        for those, (step, after) in zip(sets, pairwise([*steps, 0.0]), strict=True)
    ]


def _apart(supports: Sequence[Support]) -> bool:
    """Whether supports stand at more than one place across the force."""
    middles = [(s.v1 + s.v2) / 2 for s in supports]
    return bool(middles) and max(middles) - min(middles) >= ONE_PLACE_IN


def _supports(ids: Iterable[str], ends: Mapping[str, tuple[XY, XY]], direction: str) -> list[Support]:
    turn = -ANGLES[direction]
    return [Support(id, *rotate(ends[id][0], turn), *rotate(ends[id][1], turn)) for id in ids]


def _split(item: WeightItem, points: Sequence[XY], supports: Supports) -> dict[str, Share]:
    if item.shape == "area":
        return strips(points, supports)
    return strips_of_line(points[0], points[-1], supports)


def _add(amounts: Amounts, level: int, id: str, amount: float) -> None:
    if amount:
        of_level = amounts.setdefault(level, {})
        of_level[id] = of_level.get(id, 0.0) + amount


def _parts(amounts: Mapping[int, Mapping[str, float]], whole: Mapping[int, float]) -> Amounts:
    """Pounds as parts of each level's weight; of a level that weighs nothing there are none."""
    return {
        level: {id: amount / whole[level] for id, amount in amounts.get(level, {}).items()}
        for level in sorted(whole)
        if whole[level] > 0
    }
