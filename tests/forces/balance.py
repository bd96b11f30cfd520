"""Where the weight of a house lies and what holds it, added up without the engine's own strips."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from shapely.geometry import LineString, Point, Polygon

from groundsill.doors.decode import decode
from groundsill.forces.gravity import Load, TakeDown
from groundsill.forces.reading import Reading, line_ends
from groundsill.forces.seismic import Forces, work_out
from groundsill.forces.weights import WeightItem
from groundsill.house.settle import prepare
from groundsill.work.document import House

SAMPLES = Path(__file__).parents[2] / "samples"


@cache
def larch_street() -> House:
    """The sample house."""
    path = SAMPLES / "larch-street" / "house.json"
    return decode(path.read_bytes(), path.name)


def reading_of(house: House) -> Reading:
    """The house settled on the best value of every fact."""
    best = prepare(house).best
    return Reading(best.house, best.marks)


def forces_of(house: House) -> Forces:
    """Its forces at the best value of every fact, no sheet open."""
    return work_out(reading_of(house))


def middle_of(item: WeightItem) -> tuple[float, float]:
    """The centre of a piece of the house on the plan, by Shapely."""
    if item.shape == "area":
        at = Polygon(item.points).centroid
    elif len(set(item.points)) > 1:
        at = LineString(item.points).centroid
    else:
        at = Point(item.points[0])
    return at.x, at.y


def centre_of_level(forces: Forces, level: int) -> tuple[float, float]:
    """The centre of the seismic weight of a level."""
    parts = [
        (i.weight_lb * share, middle_of(i)) for i in forces.items if i.seismic for at, share in i.levels if at == level
    ]
    whole = sum(weight for weight, _ in parts)
    return (sum(w * x for w, (x, _) in parts) / whole, sum(w * y for w, (_, y) in parts) / whole)


def signed_forces(forces: Forces, direction: str) -> dict[str, float]:
    """The force of each line along a direction with its sign: a share below nought pulls the other way."""
    return {
        id: sum(share * level.force_lb for share, level in zip(line.shares, forces.levels, strict=True))
        for id, line in forces.lines.items()
        if line.direction == direction and line.relied_on
    }


def moments(
    house: House, forces: Forces, direction: str, about: tuple[float, float] = (0.0, 0.0)
) -> tuple[float, float, float]:
    """Moment about a point of the levels' forces at their centres and of the lines' forces, and the size of the latter.

    The size is what the moment would be if every line pulled the same way round.
    """
    across = 1 if direction == "x" else 0
    asked = held = size = 0.0
    for n, level in enumerate(forces.levels):
        if level.force_lb:
            asked += level.force_lb * (centre_of_level(forces, n)[across] - about[across])
    for id, force in signed_forces(forces, direction).items():
        a, b = line_ends(house, house.survey.underfloor.lines[id])
        arm = (a[across] + b[across]) / 2 - about[across]
        held += force * arm
        size += abs(force * arm)
    return asked, held, size


def brought_down(done: TakeDown) -> Load:
    """All that reaches lines and posts, and all that could not be placed."""
    total = Load()
    for load in (*done.lines.values(), *done.posts.values(), done.unplaced):
        total.take(load)
    return total


def weighed(house: House, forces: Forces) -> Load:
    """What must come down: every item but a chimney that stands on its own footing, live load of floors, snow of roofs.

    Snow that counts in the earthquake is no dead load; roof snow lies on the plan, not along the slope.
    """
    building = house.survey.building
    total = Load()
    for item in forces.items:
        if item.label.startswith("snow on "):
            continue
        if item.kind == "chimney" and building.chimneys[item.of].base == "own footing":
            continue
        total.dead += item.weight_lb
        if item.kind == "floor":
            total.live += Polygon(item.points).area / 144 * building.storeys[item.of].live_psf
        if item.kind == "roof":
            total.snow += Polygon(item.points).area / 144 * (house.survey.site.snow_psf.value or 0.0)
    return total
