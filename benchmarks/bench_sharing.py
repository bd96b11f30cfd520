"""What a braced line costs to share the force with, from 4 lines to 200: cost per line, and its growth.

Two plans. In *one house, more lines*, lines from side to side are added to a fixed plan. In *a row of houses*, the plan
grows with its lines: each house adds its four outside walls, its own floor and ceiling, so that strips, ends of lines
and weights grow as well. Flat means that a line costs what it cost in the smaller house.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path
from time import perf_counter

from benchmarks.timing import Row, seconds_for
from groundsill.doors.decode import decode
from groundsill.forces.lines import DIRECTIONS
from groundsill.forces.reading import Reading, line_ends
from groundsill.forces.share import flexible_shares, rigid_shares
from groundsill.forces.weights import WeightItem
from groundsill.house.building import Corner
from groundsill.house.settle import prepare
from groundsill.house.underfloor import Line
from groundsill.mechanics.equilibrium import PlanLine, Push, balanced
from groundsill.study import run
from groundsill.work.document import House

SAMPLE = Path(__file__).parents[1] / "samples" / "larch-street" / "house.json"
XY = tuple[float, float]
COUNTS = (4, 8, 16, 40, 100, 200)
WIDE, DEEP = 312.0, 408.0  # a house of the row, inches


def rows() -> Iterator[Row]:
    """Both plans by a flexible and by a rigid floor, then a study of bare lines; seconds are per line."""
    for name, plan in (("one house, more lines", more_lines), ("a row of houses", row_of_houses)):
        for floor, work in (("flexible", flexible), ("rigid", rigid)):
            before = 0.0
            for count in COUNTS:
                reading, items = plan(count)
                spent = seconds_for(partial(work, reading, items), rounds=3) / count
                what = f"{name}, {floor} floor, {count} lines: a line"
                against = "" if not before else "at the count before"
                yield Row(what, spent, against, before, "aim: about 1 x" if before else "")
                before = spent
    before = 0.0
    for count in COUNTS:
        house = replace(more_lines(count)[0].house, alternatives={})
        spent = once(partial(run, house, ranges=False)) / count
        yield Row(
            f"a study of {count} lines, bare of pieces: a line", spent, "at the count before" if before else "", before
        )
        before = spent
    yield Row("rigid floor alone, 200 lines", seconds_for(the_rigid_floor(200)))


def once(work: Callable[[], object]) -> float:
    """The better of two: a study is too long for rounds."""
    spent = []
    for _ in range(2):
        began = perf_counter()
        work()
        spent.append(perf_counter() - began)
    return min(spent)


def flexible(reading: Reading, items: Sequence[WeightItem]) -> None:
    """Both earthquakes by a flexible floor."""
    for direction in DIRECTIONS:
        assert not flexible_shares(reading, items, direction).missing


def rigid(reading: Reading, items: Sequence[WeightItem]) -> None:
    """Both earthquakes by a rigid floor, every line alike."""
    stiffness = dict.fromkeys(reading.house.survey.underfloor.lines, 1.0)
    for direction in DIRECTIONS:
        assert not rigid_shares(reading, items, direction, stiffness).missing


def sample() -> House:
    """Larch Street settled, with none of its lines."""
    house: House = prepare(decode(SAMPLE.read_bytes(), SAMPLE.name)).best.house
    under = replace(
        house.survey.underfloor, lines={}, segments={}, sills={}, bolts={}, openings={}, splices={}, obstructions={},
        hatches={}, ledgers={}, utilities={}, headroom={},
    )  # fmt: skip
    foundation = replace(house.survey.foundation, segments={}, breaks={}, tests={})
    return replace(house, survey=replace(house.survey, underfloor=under, foundation=foundation, observations={}))


def with_lines(house: House, runs: Sequence[tuple[XY, XY]]) -> House:
    """The house with these lines, all relied on."""
    building = house.survey.building
    corners, lines = dict(building.corners), {}
    storey = next(iter(building.storeys))
    for n, (a, b) in enumerate(runs):
        corners |= {f"a{n}": Corner(x_in=a[0], y_in=a[1]), f"b{n}": Corner(x_in=b[0], y_in=b[1])}
        lines[f"line{n}"] = Line(
            order=float(n), mark=f"L{n}", name="line", start=f"a{n}", end=f"b{n}", storey=storey, position="perimeter",
            relied_on=True, relied_reason="benchmark",
        )  # fmt: skip
    under = replace(house.survey.underfloor, lines=lines)
    survey = replace(house.survey, building=replace(building, corners=corners), underfloor=under)
    return replace(house, survey=survey)


def more_lines(count: int) -> tuple[Reading, list[WeightItem]]:
    """Larch Street's plan with lines from side to side, half along x and half along y; its own floors as weights."""
    house, half = sample(), count // 2
    across = [648.0 * n / (half - 1) for n in range(half)]
    runs = [((0.0, y), (336.0, y)) for y in across] + [((y * 336 / 648, 0.0), (y * 336 / 648, 648.0)) for y in across]
    reading = Reading(with_lines(house, runs))
    return reading, [floor_of((0.0, 0.0), (336.0, 648.0))]


def row_of_houses(count: int) -> tuple[Reading, list[WeightItem]]:
    """Houses of four walls side by side, their fronts and depths in steps of a foot."""
    runs: list[tuple[XY, XY]] = []
    items = []
    for n in range(count // 4):
        x, y = n * (WIDE + 24), 12.0 * (n % 5)
        (west, south), (east, north) = (x, y), (x + WIDE, y + DEEP + 12 * (n % 3))
        runs += [((west, south), (east, south)), ((east, south), (east, north)),
                 ((east, north), (west, north)), ((west, north), (west, south))]  # fmt: skip
        items.append(floor_of((west, south), (east, north)))
    return Reading(with_lines(sample(), runs)), items


def floor_of(low: XY, high: XY) -> WeightItem:
    """A floor of 10 psf."""
    points = (low, (high[0], low[1]), high, (low[0], high[1]))
    size = (high[0] - low[0]) * (high[1] - low[1]) / 144
    return WeightItem("floor", "", "floor", "area", points, 10 * size, ((0, 1.0),), 10.0, size)


def the_rigid_floor(count: int) -> Callable[[], object]:
    """Three equations for any number of lines."""
    reading, _ = row_of_houses(count)
    lines = []
    for id, line in reading.house.survey.underfloor.lines.items():
        (x1, y1), (x2, y2) = line_ends(reading.house, line)
        along = abs(x2 - x1) > abs(y2 - y1)
        lines.append(PlanLine(id, (x1 + x2) / 2, (y1 + y2) / 2, float(along), float(not along)))
    return partial(balanced, {}, {line.id: 1.0 for line in lines}, lines, Push(1000.0, 0.0, 5000.0))
