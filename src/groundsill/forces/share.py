"""Sharing the force of each level among the braced lines, by a flexible floor: tributary area, strip by strip.

The floor is cut into strips running across the lines that lie along the force; each strip spans, as a simple beam, from
line to line. So the sum of the shares is the whole, and so is their moment about any point. Only lines that are
*relied on* take a share; each line says whether it is, and why.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from groundsill.forces.reading import Reading, line_ends
from groundsill.forces.weights import WeightItem
from groundsill.house.survey import in_order
from groundsill.house.underfloor import Line
from groundsill.mechanics.plan import Share, Support, rotate, strips, strips_of_line

__all__ = ["Direction", "LineShare", "Reliance", "direction_of", "distinct_places", "line_shares", "reliance"]

Direction = Literal["x", "y"]
_ANGLES: dict[Direction, float] = {"x": 0.0, "y": 90.0}
_ALONG = 1.0  # degrees: a line this near to x or y lies along it


@dataclass(frozen=True, slots=True)
class Reliance:
    """Whether a line is relied on to carry earthquake force, and why."""

    relied_on: bool
    reason: str


@dataclass(frozen=True, slots=True)
class LineShare:
    """What share of each level's weight falls to a line, and how much of it a collector must bring."""

    line: str
    direction: Direction
    fraction: dict[int, float]
    collected: dict[int, float]


def direction_of(reading: Reading, line: Line) -> Direction | None:
    """Along x, along y, or None for a skewed line."""
    (x1, y1), (x2, y2) = line_ends(reading.house, line)
    angle = math.degrees(math.atan2(y2 - y1, x2 - x1)) % 180
    if min(angle, 180 - angle) <= _ALONG:
        return "x"
    return "y" if abs(angle - 90) <= _ALONG else None


def reliance(reading: Reading, id: str) -> Reliance:
    """Whether a line is relied on: as the survey says, else perimeter lines on a continuous foundation are."""
    survey = reading.house.survey
    line = survey.underfloor.lines[id]
    if direction_of(reading, line) is None:
        return Reliance(False, "skewed to both plan directions: its share cannot be worked out by this method")
    if line.relied_on is not None:
        return Reliance(line.relied_on, line.relied_reason or "by the surveyor's decision")
    if line.position == "interior":
        return Reliance(False, "interior line: relied on only when the survey says so")
    under = [s for s in survey.foundation.segments.values() if s.line == id]
    if not under or any(s.material in ("none", "not seen") for s in under):
        return Reliance(False, "no continuous foundation was seen under it")
    return Reliance(True, "perimeter line on a continuous foundation")


def line_shares(reading: Reading, items: Sequence[WeightItem], direction: Direction) -> dict[str, LineShare]:
    """Each relied-on line's share of every level's weight, for force along ``direction``."""
    turn = -_ANGLES[direction]
    supports = []
    for id, line in in_order(reading.house.survey.underfloor.lines):
        if direction_of(reading, line) == direction and reliance(reading, id).relied_on:
            (a, b) = line_ends(reading.house, line)
            (u1, v1), (u2, v2) = rotate(a, turn), rotate(b, turn)
            supports.append(Support(id, u1, v1, u2, v2))
    amounts: dict[str, dict[int, float]] = {s.id: {} for s in supports}
    brought: dict[str, dict[int, float]] = {s.id: {} for s in supports}
    totals: dict[int, float] = {}
    for item in items:
        if not item.seismic:
            continue
        split = _split(item, supports, turn)
        whole = sum(s.amount for s in split.values())
        for level, part in item.levels:
            weight = float(item.weight_lb) * part
            totals[level] = totals.get(level, 0.0) + weight
            for id, share in split.items():
                amounts[id][level] = amounts[id].get(level, 0.0) + weight * share.amount / whole
                brought[id][level] = brought[id].get(level, 0.0) + weight * share.collected / whole
    return {id: LineShare(id, direction, _over(amounts[id], totals), _over(brought[id], totals)) for id in amounts}


def distinct_places(reading: Reading, ids: Iterable[str], direction: Direction) -> int:
    """At how many distinct places, an inch or more apart, these lines stand across a direction."""
    across = 1 if direction == "x" else 0
    places = sorted(line_ends(reading.house, reading.house.survey.underfloor.lines[id])[0][across] for id in ids)
    return sum(1 for n, place in enumerate(places) if n == 0 or place - places[n - 1] >= 1.0)


def _split(item: WeightItem, supports: Sequence[Support], turn: float) -> Mapping[str, Share]:
    points = [rotate(p, turn) for p in item.points]
    if item.shape == "area":
        return strips(points, supports)
    return strips_of_line(points[0], points[-1], supports)


def _over(amounts: dict[int, float], totals: dict[int, float]) -> dict[int, float]:
    return {level: amounts[level] / totals[level] for level in sorted(amounts) if totals[level] > 0}
