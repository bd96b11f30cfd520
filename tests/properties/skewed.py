"""Old houses with lines at any angle: what :mod:`tests.forces.houses` draws, and skewed, doubled, short lines beside.

The lines added are relied on whatever stands under them. Outlines, walls and weights stay as they were drawn.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from hypothesis import strategies as st

from groundsill.house.building import Corner, Point, RoofPart
from groundsill.house.underfloor import Line
from groundsill.work.document import House
from tests.forces.houses import houses

XY = tuple[float, float]


def lowest(house: House) -> str:
    return min(house.survey.building.storeys.items(), key=lambda pair: pair[1].floor_z_in)[0]


def with_lines(house: House, runs: Mapping[str, tuple[XY, XY]]) -> House:
    """The house with more lines that are relied on, each from one place to another, inches."""
    building, under = house.survey.building, house.survey.underfloor
    corners, lines, storey = dict(building.corners), dict(under.lines), lowest(house)
    for n, (id, (a, b)) in enumerate(runs.items()):
        corners |= {f"{id}-a": Corner(x_in=a[0], y_in=a[1]), f"{id}-b": Corner(x_in=b[0], y_in=b[1])}
        lines[id] = Line(
            order=100.0 + n, mark=id, name="added", start=f"{id}-a", end=f"{id}-b", storey=storey, position="interior",
            relied_on=True, relied_reason="as drawn",
        )  # fmt: skip
    survey = replace(house.survey, building=replace(building, corners=corners), underfloor=replace(under, lines=lines))
    return replace(house, survey=survey)


def ends_of(house: House, id: str) -> tuple[XY, XY]:
    corners, line = house.survey.building.corners, house.survey.underfloor.lines[id]
    a, b = corners[line.start], corners[line.end]
    return (a.x_in, a.y_in), (b.x_in, b.y_in)


def extent(house: House) -> tuple[float, float, float, float]:
    """West, south, east and north of the outline of the lowest storey."""
    corners = house.survey.building.corners
    places = [corners[c] for c in house.survey.building.storeys[lowest(house)].outline]
    xs, ys = [p.x_in for p in places], [p.y_in for p in places]
    return min(xs), min(ys), max(xs), max(ys)


@st.composite
def skewed_houses(draw: st.DrawFn, storeys: int = 2, some_missing: bool = False) -> House:
    """With up to four lines more: skewed ones (a bay, a wing, a diagonal), and ones that lie on or beside another.

    No line lies at just 1 degree to x or y, or at just 60, where the program takes it one way or the other. With
    ``some_missing`` only a few of all lines are relied on, so that a house may not be held.
    """
    house = draw(houses(with_work=False, storeys=storeys))
    west, south, east, north = extent(house)
    runs: dict[str, tuple[XY, XY]] = {}
    for n in range(draw(st.integers(0, 4))):
        kind = draw(st.sampled_from(("skewed", "skewed", "on another", "beside another")))
        if kind == "skewed":
            x, y = (
                draw(st.integers(int(west) - 48, int(east) + 48)),
                draw(st.integers(int(south) - 48, int(north) + 48)),
            )
            long, turn = draw(st.integers(30, 400)), math.radians(draw(st.integers(0, 359)) + 0.5)
            runs[f"more{n}"] = (float(x), float(y)), (x + long * math.cos(turn), y + long * math.sin(turn))
            continue
        a, b = ends_of(house, draw(st.sampled_from(sorted(house.survey.underfloor.lines))))
        low, high = draw(st.sampled_from(((0.0, 1.0), (0.25, 0.75), (-0.2, 0.4))))
        size = math.dist(a, b)
        off = 0.0 if kind == "on another" else draw(st.sampled_from((12.0, 36.0)))
        across = (-(b[1] - a[1]) / size * off, (b[0] - a[0]) / size * off)
        c, d = ((a[0] + t * (b[0] - a[0]) + across[0], a[1] + t * (b[1] - a[1]) + across[1]) for t in (low, high))
        runs[f"more{n}"] = c, d
    house = with_lines(house, runs)
    if some_missing:
        chosen = draw(st.sets(st.sampled_from(sorted(house.survey.underfloor.lines)), max_size=5))
        house = relying_on(house, chosen)
    return house


def relying_on(house: House, chosen: set[str]) -> House:
    """The house with just these lines relied on."""
    under = house.survey.underfloor
    lines = {id: replace(line, relied_on=id in chosen, relied_reason="as drawn") for id, line in under.lines.items()}
    return replace(house, survey=replace(house.survey, underfloor=replace(under, lines=lines)))


def without_eaves(house: House) -> House:
    """The house with its roof cut back to the outline, so that nothing hangs over its outside lines."""
    building = house.survey.building
    corners = building.corners
    (first, *_) = building.roof.values()
    outline = building.storeys[first.storey].outline
    plan = tuple(Point(x_in=corners[c].x_in, y_in=corners[c].y_in) for c in outline)
    roof: dict[str, RoofPart] = {"rf": replace(first, outline=plan)}
    return replace(house, survey=replace(house.survey, building=replace(building, roof=roof)))
