"""The gravity take-down: dead, live and snow load to every wall line, girder, post and foundation.

From the same items as the seismic weight. Floors, ceilings and roofs span in the direction of their joists or rafters
to the walls, lines and girders they cross, strip by strip; walls hand down what they carry to the line they stand on,
or to the floor when none is named; girders hand down to their posts and to the lines at their ends.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, field

from groundsill.forces.reading import XY, Reading, line_ends, line_length_in
from groundsill.forces.weights import WeightItem, outline_of
from groundsill.house.survey import in_order
from groundsill.mechanics.plan import Support, inside, length, rotate, strips, strips_of_line

__all__ = ["Load", "TakeDown", "take_down"]

_NEAR_IN = 6.0


@dataclass(slots=True)
class Load:
    """Dead, live and snow load on one support, pounds."""

    dead: float = 0.0
    live: float = 0.0
    snow: float = 0.0

    def take(self, other: Load, share: float = 1.0) -> None:
        """Add a share of another load."""
        self.dead += other.dead * share
        self.live += other.live * share
        self.snow += other.snow * share


@dataclass(slots=True)
class TakeDown:
    """Loads by object id, and what could not be placed (in words)."""

    walls: dict[str, Load] = field(default_factory=dict)
    lines: dict[str, Load] = field(default_factory=dict)
    girders: dict[str, Load] = field(default_factory=dict)
    posts: dict[str, Load] = field(default_factory=dict)
    unplaced: Load = field(default_factory=Load)
    remarks: list[str] = field(default_factory=list)


def take_down(reading: Reading, items: Iterable[WeightItem]) -> TakeDown:
    """Take every item down to the foundation."""
    done = TakeDown()
    survey = reading.house.survey
    done.walls = {id: Load() for id in survey.building.walls}
    done.lines = {id: Load() for id in survey.underfloor.lines}
    done.girders = {id: Load() for id in survey.underfloor.girders}
    done.posts = {id: Load() for id in survey.underfloor.posts}
    for item in items:
        _place(reading, done, item)
    for id, _ in in_order(survey.building.walls):
        _hand_down_wall(reading, done, id)
    for id, _ in in_order(survey.underfloor.girders):
        _hand_down_girder(reading, done, id)
    return done


def _place(reading: Reading, done: TakeDown, item: WeightItem) -> None:
    survey = reading.house.survey
    weight = float(item.weight_lb)
    if item.kind == "wall":
        done.walls[item.of].take(Load(dead=weight))
    elif item.kind == "cripple wall":
        done.lines[survey.underfloor.segments[item.of].line].take(Load(dead=weight))
    elif item.kind == "floor":
        storey = survey.building.storeys[item.of]
        plan = weight / float(item.size) if item.size else 0.0
        _place_floor(reading, done, item, plan, storey.live_psf)
    elif item.kind in ("ceiling", "roof"):
        _place_on_walls(reading, done, item)
    elif item.kind == "partition":
        _on_floor(reading, done, item.points[0], item.points[1], Load(dead=weight))
    elif not (item.kind == "chimney" and survey.building.chimneys[item.of].base == "own footing"):
        _on_floor(reading, done, item.points[0], item.points[0], Load(dead=weight))


def _below(reading: Reading, turn: float) -> list[Support]:
    """Lines and girders as supports of the lowest floor, turned so that joists run along v."""
    survey = reading.house.survey
    found = []
    for id, line in in_order(survey.underfloor.lines):
        a, b = line_ends(reading.house, line)
        found.append(_support(id, a, b, turn))
    for id, girder in in_order(survey.underfloor.girders):
        found.append(_support(id, (girder.start.x_in, girder.start.y_in), (girder.end.x_in, girder.end.y_in), turn))
    return [s for s in found if abs(s.u2 - s.u1) > abs(s.v2 - s.v1)]


def _support(id: str, a: XY, b: XY, turn: float) -> Support:
    (u1, v1), (u2, v2) = rotate(a, turn), rotate(b, turn)
    return Support(id, u1, v1, u2, v2)


def _place_floor(reading: Reading, done: TakeDown, item: WeightItem, dead_psf: float, live_psf: float) -> None:
    """The lowest floor spans field by field as its joists run; an upper floor spans to the walls below it."""
    survey = reading.house.survey
    fields = [f for _, f in in_order(survey.underfloor.joists) if f.storey == item.of]
    if not fields:
        _place_on_walls(reading, done, item, live_psf)
        return
    left_ft2 = float(item.size)
    for joists in fields:
        turn = 90.0 - joists.direction_deg
        points = [rotate(p, turn) for p in outline_of(reading, joists.outline)]
        for id, share in strips(points, _below(reading, turn)).items():
            amount = share.amount / 144
            left_ft2 -= amount
            _target(done, id).take(Load(dead=dead_psf * amount, live=live_psf * amount))
    if abs(left_ft2) > 0.01 * float(item.size):
        done.unplaced.take(Load(dead=dead_psf * left_ft2, live=live_psf * left_ft2))
        done.remarks.append(
            f"{item.label}: {left_ft2:.0f} sq ft of it lies on no joist field that lines or girders carry"
        )


def _target(done: TakeDown, id: str) -> Load:
    return done.lines[id] if id in done.lines else done.girders[id]


def _place_on_walls(reading: Reading, done: TakeDown, item: WeightItem, live_psf: float = 0.0) -> None:
    """A ceiling, roof or upper floor on the walls of the storey that carries it."""
    building = reading.house.survey.building
    load = Load(dead=float(item.weight_lb))
    if item.kind == "roof":
        part = building.roof[item.of]
        carrier, span = part.storey, part.span_deg
        snow = reading.house.survey.site.snow_psf.value
        plan_ft2 = float(item.size) / math.sqrt(1 + part.slope_rise_per_run**2)
        load.snow = plan_ft2 * (snow or 0.0)
        if snow is None:
            done.remarks.append("roof snow load is not known: none is taken down")
    elif item.kind == "ceiling":
        carrier, span = item.of, building.storeys[item.of].ceiling_span_deg
    else:
        below = [s for s in building.storeys if building.storeys[s].floor_z_in < building.storeys[item.of].floor_z_in]
        carrier, span = (max(below, key=lambda s: building.storeys[s].floor_z_in) if below else item.of), 0.0
        load.live = float(item.size) * live_psf
    turn = 90.0 - span
    corners = building.corners
    supports = []
    for id, wall in in_order(building.walls):
        if wall.storey == carrier:
            a, b = corners[wall.start], corners[wall.end]
            support = _support(id, (a.x_in, a.y_in), (b.x_in, b.y_in), turn)
            if abs(support.u2 - support.u1) > abs(support.v2 - support.v1):
                supports.append(support)
    if not supports:
        done.unplaced.take(load)
        done.remarks.append(f"{item.label}: no wall of its storey carries it")
        return
    shares = strips([rotate(p, turn) for p in item.points], supports)
    whole = sum(s.amount for s in shares.values())
    for id, share in shares.items():
        done.walls[id].take(load, share.amount / whole)


def _on_floor(reading: Reading, done: TakeDown, a: XY, b: XY, load: Load) -> None:
    """A partition, chimney or loose wall on the floor: the joists under it bring it to lines and girders."""
    middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    fields = [f for _, f in in_order(reading.house.survey.underfloor.joists)]
    under = next((f for f in fields if inside(middle, outline_of(reading, f.outline))), fields[0] if fields else None)
    if under is None:
        done.unplaced.take(load)
        done.remarks.append("a load on the floor has no joists under it in the survey")
        return
    turn = 90.0 - under.direction_deg
    shares = strips_of_line(rotate(a, turn), rotate(b, turn), _below(reading, turn))
    whole = sum(s.amount for s in shares.values())
    if not shares:
        done.unplaced.take(load)
        done.remarks.append("a load on the floor stands on joists that no line or girder carries")
    for id, share in shares.items():
        _target(done, id).take(load, share.amount / whole)


def _hand_down_wall(reading: Reading, done: TakeDown, id: str) -> None:
    """A wall's own weight and what it carries go to the line named under it, else to the floor."""
    survey = reading.house.survey
    carried = done.walls[id]
    lines = [key for key, line in in_order(survey.underfloor.lines) if line.above == id]
    if lines:
        whole = sum(line_length_in(reading.house, survey.underfloor.lines[key]) for key in lines)
        for key in lines:
            done.lines[key].take(carried, line_length_in(reading.house, survey.underfloor.lines[key]) / whole)
        return
    wall, corners = survey.building.walls[id], survey.building.corners
    a, b = corners[wall.start], corners[wall.end]
    _on_floor(reading, done, (a.x_in, a.y_in), (b.x_in, b.y_in), carried)


def _hand_down_girder(reading: Reading, done: TakeDown, id: str) -> None:
    """A girder as simple spans between its posts and the lines its ends rest on."""
    survey = reading.house.survey
    girder = survey.underfloor.girders[id]
    a, b = (girder.start.x_in, girder.start.y_in), (girder.end.x_in, girder.end.y_in)
    whole = length(a, b)
    stops: list[tuple[float, Load]] = []
    for key, post in in_order(survey.underfloor.posts):
        if post.girder == id:
            stops.append((_station(a, b, (post.at.x_in, post.at.y_in)), done.posts[key]))
    for end in (a, b):
        line = _line_at(reading, end)
        if line is not None:
            stops.append((_station(a, b, end), done.lines[line]))
    load = done.girders[id]
    if not stops or whole == 0:
        done.unplaced.take(load)
        done.remarks.append(f"girder {girder.mark or id}: nothing in the survey holds it up")
        return
    stops.sort(key=lambda stop: stop[0])
    places = [station for station, _ in stops]
    edges = [0.0, *((p + q) / 2 for p, q in zip(places, places[1:], strict=False)), whole]
    for (_, target), low, high in zip(stops, edges, edges[1:], strict=False):
        target.take(load, (high - low) / whole)


def _station(a: XY, b: XY, point: XY) -> float:
    whole = length(a, b)
    return ((point[0] - a[0]) * (b[0] - a[0]) + (point[1] - a[1]) * (b[1] - a[1])) / whole if whole else 0.0


def _line_at(reading: Reading, point: XY) -> str | None:
    """The line a girder's end rests on, within half a foot."""
    for id, line in in_order(reading.house.survey.underfloor.lines):
        a, b = line_ends(reading.house, line)
        whole = length(a, b)
        station = min(max(_station(a, b, point), 0.0), whole)
        foot = (a[0] + (b[0] - a[0]) * station / whole, a[1] + (b[1] - a[1]) * station / whole)
        if length(foot, point) <= _NEAR_IN:
            return id
    return None
