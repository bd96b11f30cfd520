"""Where the weight of the house sits: every item at its middle, and the centre of mass of each level and of the whole.

From the same items as the seismic weight. The map is plain data for tables and pictures; no check reads it, since
sharing takes the items themselves.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from groundsill.forces.reading import XY
from groundsill.forces.weights import BASE, Gravity, WeightItem
from groundsill.mechanics.plan import centroid

__all__ = ["Centre", "PlacedWeight", "WeightMap", "centre_of", "middle_of", "weight_map"]


@dataclass(frozen=True, slots=True)
class PlacedWeight:
    """One item of weight at its middle: the centroid of an area, the middle of a wall, the centre of a chimney.

    ``counted_lb`` is the part of ``weight_lb`` that counts in the seismic weight: nothing of what stands free of the
    framing, and not the lower half of a cripple wall.
    """

    label: str
    of: str
    kind: Gravity
    weight_lb: float
    counted_lb: float
    x_in: float
    y_in: float


@dataclass(frozen=True, slots=True)
class Centre:
    """A centre of mass on the plan, inches, with the seismic weight it stands for."""

    name: str
    weight_lb: float
    x_in: float
    y_in: float


@dataclass(frozen=True, slots=True)
class WeightMap:
    """The items from the heaviest down; the centre of each level that weighs anything, from the lowest up; the whole.

    ``whole`` is None for a house that weighs nothing.
    """

    items: tuple[PlacedWeight, ...]
    levels: tuple[Centre, ...]
    whole: Centre | None


def weight_map(items: Iterable[WeightItem], level_names: Sequence[str]) -> WeightMap:
    """Where the weight sits.

    Args:
        items: the items of weight, as a study holds them.
        level_names: what each level is called, from the lowest floor up.
    """
    items = tuple(items)
    placed = sorted((_placed(item) for item in items), key=lambda p: (-p.weight_lb, p.label, p.of))
    levels = []
    for n, name in enumerate(level_names):
        parts = [
            (float(i.weight_lb) * part, middle_of(i)) for i in items if i.seismic for at, part in i.levels if at == n
        ]
        found = centre_of(name, parts)
        if found is not None:
            levels.append(found)
    whole = [(p.counted_lb, (p.x_in, p.y_in)) for p in placed]
    return WeightMap(tuple(placed), tuple(levels), centre_of("whole house", whole))


def centre_of(name: str, parts: Sequence[tuple[float, XY]]) -> Centre | None:
    """The centre of some weights in their places; None when they come to nothing."""
    weight = math.fsum(w for w, _ in parts)
    if weight <= 0:
        return None
    x = math.fsum(w * place[0] for w, place in parts) / weight
    y = math.fsum(w * place[1] for w, place in parts) / weight
    return Centre(name, weight, x, y)


def _placed(item: WeightItem) -> PlacedWeight:
    x, y = middle_of(item)
    weight = float(item.weight_lb)
    counted = weight * sum(part for at, part in item.levels if at != BASE) if item.seismic else 0.0
    return PlacedWeight(item.label, item.of, item.kind, weight, counted, x, y)


def middle_of(item: WeightItem) -> XY:
    """Where an item's weight acts on the plan: the centroid of an area, the middle of a wall, the place of a point."""
    if item.shape == "area":
        return centroid(item.points)
    (x1, y1), (x2, y2) = item.points[0], item.points[-1]
    return (x1 + x2) / 2, (y1 + y2) / 2
