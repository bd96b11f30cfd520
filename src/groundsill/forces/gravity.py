"""The gravity take-down: dead, live and snow load to every wall line, girder, post and foundation.

From the same items as the seismic weight. Floors, ceilings and roofs span in the direction of their joists or rafters
to the walls, lines and girders they cross, strip by strip. Walls hand down what they carry to the line they stand on,
else to the walls right below them, else to the floor they stand on; girders hand down to their posts and to the lines
at their ends. Nothing is lost: what no support of the survey carries is kept and told.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field

from groundsill.forces.levels import levels_of, outline_of, storeys_under
from groundsill.forces.reading import XY, Reading, doubted, line_ends, line_length_in
from groundsill.forces.weights import WeightItem
from groundsill.house.underfloor import JoistField
from groundsill.mechanics.plan import inside, length, rotate
from groundsill.mechanics.strips import strips, strips_of_line
from groundsill.mechanics.supports import Support, Supports, arranged
from groundsill.working.value import Value, marks_of

__all__ = ["Load", "TakeDown", "take_down"]

_NEAR_IN = 6.0
_PARALLEL = 0.035  # sine of two degrees: walls nearer to each other's direction than this are parallel
_NOISE = 1e-9
_WORTH_TELLING = 0.01

Carriers = Callable[[float], Supports]


@dataclass(slots=True)
class Load:
    """Dead, live and snow load on one support, pounds.

    With a sheet open each carries the marks of all it is made of. ``roof_ft2`` is the plan of roof it carries, whatever
    the snow, so that unknown snow can be seen to matter; ``on_foundation`` is the part of ``dead`` that stands on the
    foundation itself and holds no wall down.
    """

    dead: float = 0.0
    live: float = 0.0
    snow: float = 0.0
    roof_ft2: float = 0.0
    on_foundation: float = 0.0

    def take(self, other: Load, share: float = 1.0) -> None:
        """Add a share of another load."""
        self.dead = _more(self.dead, other.dead, share)
        self.live = _more(self.live, other.live, share)
        self.snow = _more(self.snow, other.snow, share)
        self.roof_ft2 += other.roof_ft2 * share
        self.on_foundation = _more(self.on_foundation, other.on_foundation, share)


def _more(load: float, other: float, share: float) -> float:
    """A load and a share of another, with the marks of both."""
    if not share or (not other and not isinstance(other, Value)):
        return load
    return doubted(float(load) + float(other) * share, marks_of((load, other)), unit="lb", symbol="P")


@dataclass(slots=True)
class TakeDown:
    """Loads by object id, and what could not be placed (in words)."""

    walls: dict[str, Load] = field(default_factory=dict)
    lines: dict[str, Load] = field(default_factory=dict)
    girders: dict[str, Load] = field(default_factory=dict)
    posts: dict[str, Load] = field(default_factory=dict)
    unplaced: Load = field(default_factory=Load)
    remarks: list[str] = field(default_factory=list)

    def give(self, id: str, load: Load, share: float = 1.0) -> None:
        """Put a share of a load on a wall, line or girder."""
        for supports in (self.walls, self.lines, self.girders):
            if id in supports:
                supports[id].take(load, share)
                return
        raise KeyError(id)

    def leave(self, load: Load, remark: str, share: float = 1.0) -> None:
        """Keep a share of a load that nothing carries, and say so once."""
        self.unplaced.take(load, share)
        if remark not in self.remarks:
            self.remarks.append(remark)


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
    levels = levels_of(reading)
    for id, wall in sorted(reading.in_order(survey.building.walls), key=lambda pair: -levels[pair[1].storey]):
        _hand_down_wall(reading, done, id, levels[wall.storey])
    for id, _ in reading.in_order(survey.underfloor.girders):
        _hand_down_girder(reading, done, id)
    return done


def _place(reading: Reading, done: TakeDown, item: WeightItem) -> None:
    survey = reading.house.survey
    load = Load(dead=item.weight_lb)
    if item.kind == "wall":
        done.walls[item.of].take(load)
    elif item.kind == "cripple wall":
        done.lines[survey.underfloor.segments[item.of].line].take(load)
    elif item.kind == "floor":
        _place_floor(reading, done, item, survey.building.storeys[item.of].live_psf)
    elif item.kind in ("ceiling", "roof"):
        _place_on_walls(reading, done, item)
    elif item.kind == "partition":
        _on_floor(reading, done, survey.building.partitions[item.of].storey, item.points[0], item.points[1], load)
    else:
        _place_chimney(reading, done, item, load)


# ---- What spans -----------------------------------------------------------------------------------------------------


def _below(reading: Reading, turn: float) -> Supports:
    """Lines and girders as supports of the lowest floor, turned so that joists run along v."""
    return reading.once(("supports below", turn), lambda: _lines_and_girders(reading, turn))


def _lines_and_girders(reading: Reading, turn: float) -> Supports:
    survey = reading.house.survey
    found = []
    for id, line in reading.in_order(survey.underfloor.lines):
        if _holds_floor(reading, id):
            a, b = line_ends(reading.house, line)
            found.append(_support(id, a, b, turn))
    for id, girder in reading.in_order(survey.underfloor.girders):
        found.append(_support(id, (girder.start.x_in, girder.start.y_in), (girder.end.x_in, girder.end.y_in), turn))
    return _across(found)


def _holds_floor(reading: Reading, id: str) -> bool:
    """Whether the floor stands on a line: on a new one only where it is jacked to, else its load stays where it is."""
    return id not in reading.inner or reading.inner[id].gravity == "carries the floor"


def _walls_of(reading: Reading, storeys: Sequence[str], turn: float) -> Supports:
    """The walls of some storeys as supports, turned so that what spans between them runs along v."""
    return reading.once(("walls", tuple(storeys), turn), lambda: _walls_turned(reading, storeys, turn))


def _walls_turned(reading: Reading, storeys: Sequence[str], turn: float) -> Supports:
    found = []
    for id, wall in reading.in_order(reading.house.survey.building.walls):
        if wall.storey in storeys:
            found.append(_support(id, *_wall_ends(reading, id), turn))
    return _across(found)


def _support(id: str, a: XY, b: XY, turn: float) -> Support:
    (u1, v1), (u2, v2) = rotate(a, turn), rotate(b, turn)
    return Support(id, u1, v1, u2, v2)


def _across(supports: list[Support]) -> Supports:
    """Those that what spans along v can rest on."""
    return arranged(s for s in supports if abs(s.u2 - s.u1) > abs(s.v2 - s.v1))


def _wall_ends(reading: Reading, id: str) -> tuple[XY, XY]:
    building = reading.house.survey.building
    a, b = (building.corners[corner] for corner in (building.walls[id].start, building.walls[id].end))
    return (a.x_in, a.y_in), (b.x_in, b.y_in)


def _joists_of(reading: Reading, storey: str) -> list[JoistField]:
    return [f for _, f in reading.in_order(reading.house.survey.underfloor.joists) if f.storey == storey]


def _carriers(reading: Reading, storey: str) -> tuple[Carriers, float]:
    """What carries the floor of a storey, and the direction it spans in where no joist field says.

    An upper floor rests on the walls of the storey under it, its joists being that storey's ceiling joists; the lowest
    one on lines and girders, or on the walls of its own storey while no joists have been seen.
    """
    under = storeys_under(reading, storey)
    along = reading.house.survey.building.storeys[under[0] if under else storey].ceiling_span_deg
    if not under and _joists_of(reading, storey):
        return (lambda turn: _below(reading, turn)), along
    return (lambda turn: _walls_of(reading, under or [storey], turn)), along


def _place_floor(reading: Reading, done: TakeDown, item: WeightItem, live_psf: float) -> None:
    """A floor field by field as its joists run, or as one where no joists have been seen."""
    size = float(item.size)
    if size <= 0:
        return
    supports, along = _carriers(reading, item.of)
    fields = [(outline_of(reading, f.outline), f.direction_deg) for f in _joists_of(reading, item.of)]
    placed: dict[str, float] = {}
    for points, direction in fields or [(item.points, along)]:
        turn = 90.0 - direction
        for id, share in strips([rotate(p, turn) for p in points], supports(turn)).items():
            placed[id] = placed.get(id, 0.0) + share.amount / 144
    covered = sum(placed.values())
    whole = Load(dead=item.weight_lb, live=size * live_psf)
    for id, ft2 in placed.items():
        done.give(id, whole, ft2 / max(size, covered))
    if covered < size * (1 - _NOISE):
        left = Load()
        left.take(whole, 1 - covered / size)
        done.unplaced.take(left)
    if abs(size - covered) <= _WORTH_TELLING * size:
        return
    if covered > size:
        done.remarks.append(
            f"{item.label}: its joist fields cover {covered - size:.0f} sq ft more than there is: they lie on each "
            "other or reach past it; its load is shared out over them in proportion"
        )
    elif storeys_under(reading, item.of) or not fields:
        done.remarks.append(f"{item.label}: {size - covered:.0f} sq ft of it rests on no wall of the survey")
    else:
        done.remarks.append(
            f"{item.label}: {size - covered:.0f} sq ft of it lies on no joist field that lines or girders carry"
        )


def _place_on_walls(reading: Reading, done: TakeDown, item: WeightItem) -> None:
    """A ceiling or roof on the walls of the storey that carries it."""
    building = reading.house.survey.building
    load = Load(dead=item.weight_lb)
    if item.kind == "roof":
        part = building.roof[item.of]
        carrier, span = part.storey, part.span_deg
        snow = reading.house.survey.site.snow_psf.value
        load.roof_ft2 = float(item.size) / math.sqrt(1 + part.slope_rise_per_run**2)
        known = reading.marked("survey.site.snow_psf")
        load.snow = doubted(load.roof_ft2 * (snow or 0.0), known, unit="lb", symbol="S")
        if snow is None and (told := "roof snow load is not known: none is taken down") not in done.remarks:
            done.remarks.append(told)
    else:
        carrier, span = item.of, building.storeys[item.of].ceiling_span_deg
    turn = 90.0 - span
    shares = strips([rotate(p, turn) for p in item.points], _walls_of(reading, [carrier], turn))
    if not shares:
        done.leave(load, f"{item.label}: no wall of its storey carries it")
        return
    whole = sum(s.amount for s in shares.values())
    for id, share in shares.items():
        done.give(id, load, share.amount / whole)


# ---- What stands ----------------------------------------------------------------------------------------------------


def _place_chimney(reading: Reading, done: TakeDown, item: WeightItem, load: Load) -> None:
    """Nothing of one on its own footing; one on the foundation wall loads the line there; else the floor carries it."""
    building = reading.house.survey.building
    chimney, at = building.chimneys[item.of], item.points[0]
    if chimney.base == "own footing":
        return
    if chimney.base == "foundation wall":
        line = _line_at(reading, at, _NEAR_IN + max(chimney.x_size_in, chimney.y_size_in))
        if line is not None:
            done.give(line, Load(dead=load.dead, on_foundation=load.dead))
            return
    levels = levels_of(reading)
    done_by = [id for id, storey in reading.in_order(building.storeys) if levels[id] == 0]
    here = [id for id in done_by if inside(at, outline_of(reading, building.storeys[id].outline))]
    _on_floor(reading, done, (here or done_by)[0], at, at, load)


def _on_floor(reading: Reading, done: TakeDown, storey: str, a: XY, b: XY, load: Load, share: float = 1.0) -> None:
    """A partition, chimney or loose wall on a floor: it goes where the floor under its middle goes."""
    supports, along = _carriers(reading, storey)
    fields = _joists_of(reading, storey)
    if not fields and not storeys_under(reading, storey):
        done.leave(load, "a load on the floor has no joists under it in the survey", share)
        return
    middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    under = next((f for f in fields if inside(middle, outline_of(reading, f.outline))), fields[0] if fields else None)
    turn = 90.0 - (along if under is None else under.direction_deg)
    shares = strips_of_line(rotate(a, turn), rotate(b, turn), supports(turn))
    if not shares:
        what = "walls below carry" if storeys_under(reading, storey) else "a line or girder carries"
        done.leave(load, f"a load on the floor stands on joists that no {what}", share)
        return
    whole = sum(s.amount for s in shares.values())
    for id, part in shares.items():
        done.give(id, load, share * part.amount / whole)


def _hand_down_wall(reading: Reading, done: TakeDown, id: str, level: int) -> None:
    """A wall's own weight and what it carries go to the line named under it, else to walls below it, else to the floor.

    Walls right below are those of the level below that run along it within six inches; each takes what stands over it.
    """
    survey = reading.house.survey
    carried = done.walls[id]
    lines = [key for key, line in reading.in_order(survey.underfloor.lines) if line.above == id]
    if lines:
        whole = sum(line_length_in(reading.house, survey.underfloor.lines[key]) for key in lines)
        for key in lines:
            done.give(key, carried, line_length_in(reading.house, survey.underfloor.lines[key]) / whole)
        return
    a, b = _wall_ends(reading, id)
    whole = length(a, b)
    reached = 0.0
    for low, high, key in [*_walls_right_below(reading, a, b, level), (whole, whole, "")]:
        if low - reached > _NOISE * whole:  # a stretch with no wall below
            ends = [(a[0] + (b[0] - a[0]) * s / whole, a[1] + (b[1] - a[1]) * s / whole) for s in (reached, low)]
            _on_floor(
                reading, done, survey.building.walls[id].storey, ends[0], ends[1], carried, (low - reached) / whole
            )
            reached = low
        if high > reached:
            done.give(key, carried, (high - reached) / whole)
            reached = high


def _walls_right_below(reading: Reading, a: XY, b: XY, level: int) -> list[tuple[float, float, str]]:
    """Stretches of a wall from ``a`` to ``b``, inches along it, that stand over walls of the level below, in order."""
    levels, whole = levels_of(reading), length(a, b)
    if level == 0 or whole == 0:
        return []
    along = ((b[0] - a[0]) / whole, (b[1] - a[1]) / whole)
    found = []
    for key, wall in reading.in_order(reading.house.survey.building.walls):
        if levels[wall.storey] != level - 1:
            continue
        c, d = _wall_ends(reading, key)
        long = length(c, d)
        stations = sorted((p[0] - a[0]) * along[0] + (p[1] - a[1]) * along[1] for p in (c, d))
        low, high = max(stations[0], 0.0), min(stations[1], whole)
        middle = ((c[0] + d[0]) / 2, (c[1] + d[1]) / 2)
        away = abs((middle[0] - a[0]) * along[1] - (middle[1] - a[1]) * along[0])
        if _slew((a, b), (c, d)) <= _PARALLEL * long and away <= _NEAR_IN and high - low > _NOISE * whole:
            found.append((low, high, key))
    return sorted(found)


def _hand_down_girder(reading: Reading, done: TakeDown, id: str) -> None:
    """A girder as simple spans between its posts and the lines its ends rest on."""
    survey = reading.house.survey
    girder = survey.underfloor.girders[id]
    a, b = (girder.start.x_in, girder.start.y_in), (girder.end.x_in, girder.end.y_in)
    whole = length(a, b)
    stops: list[tuple[float, Load]] = []
    for key, post in reading.in_order(survey.underfloor.posts):
        if post.girder == id:
            stops.append((_station(a, b, (post.at.x_in, post.at.y_in)), done.posts[key]))
    for end in (a, b):
        line = _line_at(reading, end, _NEAR_IN, (a, b))
        if line is not None:
            stops.append((_station(a, b, end), done.lines[line]))
    load = done.girders[id]
    if not stops or whole == 0:
        done.leave(load, f"girder {girder.mark or id}: nothing in the survey holds it up")
        return
    stops.sort(key=lambda stop: stop[0])
    places = [station for station, _ in stops]
    edges = [0.0, *((p + q) / 2 for p, q in zip(places, places[1:], strict=False)), whole]
    for (_, target), low, high in zip(stops, edges, edges[1:], strict=False):
        target.take(load, (high - low) / whole)


def _station(a: XY, b: XY, point: XY) -> float:
    whole = length(a, b)
    return ((point[0] - a[0]) * (b[0] - a[0]) + (point[1] - a[1]) * (b[1] - a[1])) / whole if whole else 0.0


def _line_at(reading: Reading, point: XY, within_in: float, girder: tuple[XY, XY] | None = None) -> str | None:
    """The line a girder's end or a chimney rests on, of those within a distance.

    One that crosses the girder comes before one that runs along under it, one on a foundation before one on none, the
    nearer before the farther; the order of lists has no say.
    """
    found = []
    foundation = reading.house.survey.foundation.segments.values()
    for id, line in reading.house.survey.underfloor.lines.items():
        if not _holds_floor(reading, id):
            continue
        a, b = line_ends(reading.house, line)
        whole = length(a, b)
        station = min(max(_station(a, b, point), 0.0), whole)
        foot = (a[0] + (b[0] - a[0]) * station / whole, a[1] + (b[1] - a[1]) * station / whole)
        away = length(foot, point)
        if away > within_in:
            continue
        along = girder is not None and _slew(girder, (a, b)) <= _PARALLEL * whole
        founded = any(
            s.line == id and s.material != "none" and s.from_in <= station + 1 and station <= s.to_in + 1
            for s in foundation
        )
        found.append((along, not founded, round(away, 6), id))
    return min(found)[-1] if found else None


def _slew(one: tuple[XY, XY], other: tuple[XY, XY]) -> float:
    """How far, inches, a stretch runs off to the side of another's direction."""
    (a, b), (c, d) = one, other
    whole = length(a, b)
    return abs((d[0] - c[0]) * (b[1] - a[1]) - (d[1] - c[1]) * (b[0] - a[0])) / whole if whole else length(c, d)
