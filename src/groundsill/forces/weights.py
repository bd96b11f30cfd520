"""The weights of the house, item by item: what each piece is, how big, how heavy, at which level, where on the plan.

One list serves both the earthquake (effective seismic weight, ASCE 7 12.7.2) and the gravity take-down. Level 0 is the
lowest floor; each storey adds one; the highest level carries the roof. A wall gives half its weight to the level at
its foot and half to the level at its head; a cripple wall gives its upper half to level 0 and its lower half straight
to the foundation, where it loads the soil but not the bracing.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from groundsill.forces.assemblies import assembly_psf, masonry_pcf, window_psf
from groundsill.forces.levels import levels_of, ordered_storeys, outline_of
from groundsill.forces.reading import XY, Reading, doubted, line_ends
from groundsill.house.building import Wall
from groundsill.mechanics.plan import area, length
from groundsill.working.errors import BadSurvey, Fault
from groundsill.working.steps import add, given, multiply, scale, subtract

__all__ = ["BASE", "Gravity", "WeightItem", "outline_of", "weight_items"]

BASE = -1  # the level of what rests on the foundation and never passes through the bracing

Gravity = Literal["floor", "ceiling", "roof", "wall", "partition", "cripple wall", "chimney"]


@dataclass(frozen=True, slots=True)
class WeightItem:
    """One piece of the house.

    ``weight_lb`` is all of it; ``levels`` says which share of it belongs to each level for the earthquake; ``points``
    are inches on the plan (a polygon for an area, two ends for a wall, one point for a chimney); ``of`` is the id of
    the object in the survey and ``unit_weight`` with ``size`` says how the weight was reached.
    """

    label: str
    of: str
    kind: Gravity
    shape: Literal["area", "line", "point"]
    points: tuple[XY, ...]
    weight_lb: float
    levels: tuple[tuple[int, float], ...]
    unit_weight: float
    size: float
    seismic: bool = True


def weight_items(reading: Reading) -> tuple[WeightItem, ...]:
    """Every piece of the house that weighs on it."""
    return (
        *_floors_and_ceilings(reading),
        *_roofs(reading),
        *_walls(reading),
        *_partitions(reading),
        *_cripple_walls(reading),
        *_chimneys(reading),
    )


def _surface(
    reading: Reading,
    label: str,
    of: str,
    kind: Gravity,
    points: tuple[XY, ...],
    assembly: str,
    level: int,
    slope: float = 0.0,
) -> WeightItem:
    psf = assembly_psf(reading, assembly)
    size = given("A", abs(area(points)) / 144, "ft^2", f"plan area: {label}")
    if slope:
        along = math.sqrt(1 + slope * slope)
        size = scale(size, along, symbol="A", label=f"area along a slope of {slope:g} to 1")
    weight = multiply(psf, size, symbol="W", unit="lb", label=label)
    return WeightItem(label, of, kind, "area", points, weight, ((level, 1.0),), psf, size)


def _floors_and_ceilings(reading: Reading) -> Iterator[WeightItem]:
    levels = levels_of(reading)
    for id, storey in ordered_storeys(reading):
        points = outline_of(reading, storey.outline)
        name = storey.name or storey.mark
        yield _surface(reading, f"floor, {name}", id, "floor", points, storey.floor, levels[id])
        if storey.ceiling:
            yield _surface(reading, f"ceiling, {name}", id, "ceiling", points, storey.ceiling, levels[id] + 1)


def _roofs(reading: Reading) -> Iterator[WeightItem]:
    levels = levels_of(reading)
    for id, part in reading.in_order(reading.house.survey.building.roof):
        points = tuple((p.x_in, p.y_in) for p in part.outline)
        label = f"roof {part.mark or id}"
        yield _surface(
            reading, label, id, "roof", points, part.assembly, levels[part.storey] + 1, part.slope_rise_per_run
        )


def _wall_ends(reading: Reading, wall: Wall) -> tuple[XY, XY]:
    corners = reading.house.survey.building.corners
    a, b = corners[wall.start], corners[wall.end]
    return (a.x_in, a.y_in), (b.x_in, b.y_in)


def _walls(reading: Reading) -> Iterator[WeightItem]:
    building = reading.house.survey.building
    levels = levels_of(reading)
    for id, wall in reading.in_order(building.walls):
        ends = _wall_ends(reading, wall)
        label = f"wall {wall.mark or id}"
        height_ft = (wall.height_in if wall.height_in is not None else building.storeys[wall.storey].height_in) / 12
        gross = given(
            "A", length(*ends) / 12 * height_ft, "ft^2", f"{label}: {length(*ends) / 12:.2f} ft by {height_ft:.2f} ft"
        )
        glass = sum((o.to_in - o.from_in) * (o.head_in - o.sill_in) for o in wall.openings.values()) / 144
        if glass > float(gross) * (1 + 1e-9):  # as house.fits says of a file
            allowed, found = f"no more than the wall itself, {float(gross):.1f} square feet", f"{glass:.1f} square feet"
            raise BadSurvey((Fault(f"survey.building.walls.{id}.openings", f"{found} of openings", allowed),))
        openings = given("A_o", glass, "ft^2", f"{label}: {len(wall.openings)} windows and doors")
        psf = assembly_psf(reading, wall.assembly)
        net = subtract(gross, openings, symbol="A_n", label=f"{label}, less openings")
        solid = multiply(psf, net, symbol="W", unit="lb", label=f"{label}, solid part")
        panes = multiply(window_psf(), openings, symbol="W_o", unit="lb", label=f"{label}, windows and doors")
        weight = add(solid, panes, symbol="W", label=label)
        foot = levels[wall.storey]
        yield WeightItem(label, id, "wall", "line", ends, weight, ((foot, 0.5), (foot + 1, 0.5)), psf, net)


def _partitions(reading: Reading) -> Iterator[WeightItem]:
    building = reading.house.survey.building
    levels = levels_of(reading)
    for id, part in reading.in_order(building.partitions):
        ends = ((part.start.x_in, part.start.y_in), (part.end.x_in, part.end.y_in))
        label = f"partition {part.mark or id}"
        height_ft = (part.height_in if part.height_in is not None else building.storeys[part.storey].height_in) / 12
        psf = assembly_psf(reading, part.assembly)
        size = given(
            "A", length(*ends) / 12 * height_ft, "ft^2", f"{label}: {length(*ends) / 12:.2f} ft by {height_ft:.2f} ft"
        )
        weight = multiply(psf, size, symbol="W", unit="lb", label=label)
        foot = levels[part.storey]
        yield WeightItem(label, id, "partition", "line", ends, weight, ((foot, 0.5), (foot + 1, 0.5)), psf, size)


def _cripple_walls(reading: Reading) -> Iterator[WeightItem]:
    underfloor = reading.house.survey.underfloor
    for id, segment in reading.in_order(underfloor.segments):
        if segment.assembly is None or segment.height_in.value is None or segment.kind == "open":
            continue
        (x1, y1), (x2, y2) = line_ends(reading.house, underfloor.lines[segment.line])
        whole = length((x1, y1), (x2, y2))
        at = [
            (x1 + (x2 - x1) * station / whole, y1 + (y2 - y1) * station / whole)
            for station in (segment.from_in, segment.to_in)
        ]
        label = f"cripple wall {segment.mark or id}"
        path = f"survey.underfloor.segments.{id}.height_in"
        height = reading.number(path, segment.height_in, "h", "in", f"height of {label}")
        assert height is not None
        psf = assembly_psf(reading, segment.assembly)
        size = given(
            "A",
            (segment.to_in - segment.from_in) * float(height) / 144,
            "ft^2",
            f"{label}, length by height",
            reading.marked(path),
        )
        weight = multiply(psf, size, symbol="W", unit="lb", label=label)
        yield WeightItem(label, id, "cripple wall", "line", tuple(at), weight, ((0, 0.5), (BASE, 0.5)), psf, size)


def _chimneys(reading: Reading) -> Iterator[WeightItem]:
    levels = levels_of(reading)
    top = max(levels.values(), default=0) + 1
    for id, chimney in reading.in_order(reading.house.survey.building.chimneys):
        label = f"chimney {chimney.mark or id}"
        pcf = reading.number(f"survey.building.chimneys.{id}.pcf", chimney.pcf, "γ", "pcf", f"unit weight of {label}")
        if pcf is None:
            pcf = masonry_pcf()
        volume = chimney.x_size_in * chimney.y_size_in * chimney.height_in / 1728
        size = given("V_c", volume, "ft^3", f"{label}: outside volume")
        weight = multiply(pcf, size, symbol="W", unit="lb", label=label)
        # only one shown to stand free, on a footing of its own, leaves the framing alone
        loose = chimney.base == "own footing"
        framed = chimney.tied.value is not False or not loose
        every = tuple((level, 1.0 / (top + 1)) for level in range(top + 1))
        where = ((chimney.at.x_in, chimney.at.y_in),)
        doubts = reading.marked(f"survey.building.chimneys.{id}.tied") if loose else frozenset()
        if framed:
            yield WeightItem(label, id, "chimney", "point", where, doubted(weight, doubts), every, pcf, size)
            continue
        yield WeightItem(label, id, "chimney", "point", where, weight, ((BASE, 1.0),), pcf, size, seismic=False)
        if doubts:  # what is left out on somebody's guess is a doubt about every level
            left_out = f"{label}, taken as not tied: none of it on the framing"
            nothing = given("W", 0.0, "lb", left_out, doubts)
            yield WeightItem(left_out, id, "chimney", "point", where, nothing, every, pcf, size)
