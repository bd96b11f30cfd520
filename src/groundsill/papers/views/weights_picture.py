"""Where the weight sits: a plan with a circle for every item, as large in area as the item is heavy, and the centres.

The circles are drawn from the heaviest down, so that a small one lies on a large one and both are seen. The ten
heaviest carry numbers and the centres of mass letters, which tables under the picture name.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from groundsill.forces.mass import Centre, PlacedWeight, WeightMap, weight_map
from groundsill.forces.seismic import Forces
from groundsill.papers.document import Block, Column, Figure, Paragraph, Row, TableBlock
from groundsill.papers.drawing import Circle, Drawing, Fill, LengthStyle, Line, Mark, Point, Polygon, Text, layer
from groundsill.papers.sheet import SCALES, Scale, ScaleSystem, fitting_scale
from groundsill.papers.views.plan_frame import box_of_points
from groundsill.papers.views.plan_labels import SMALL, Labels
from groundsill.papers.views.words import Units, counted, listed, quantity, share
from groundsill.work.document import House
from groundsill.working.errors import CannotWrite
from groundsill.working.measure import show

__all__ = ["centres_table", "weights_figure", "weights_picture_blocks"]

NAMED = 10
_LARGEST = 0.16  # radius of the heaviest item's circle as a part of the plan's smaller side
_ROOM: tuple[float, float] = (5.5, 6.2)
"""Inches of paper for the picture, on letter and A4 alike."""
_KN = 0.0044482216152605  # kilonewtons in a pound
_TAG = 0.075
_STEP = 0.17
_ANGLES = (45, 135, 225, 315, 0, 90, 180, 270, 22, 67, 112, 157, 202, 247, 292, 337)


def weights_picture_blocks(house: House, forces: Forces, units: Units, dagger: str = "") -> tuple[Block, ...]:
    """The picture, what its numbers are, and the centres of mass; ``dagger`` is that of the whole weight."""
    found = weight_map(forces.items, [level.name for level in forces.levels])
    figure = weights_figure(house, found, units)
    lead = (
        "Each circle stands at the middle of an item, and its area is the item's weight. Plain circles are floors, "
        "ceilings and roofs, grey ones walls and partitions, hatched ones chimneys; a dashed circle does not count in "
        "the seismic weight. A wall's circle stands at its middle, wherever its windows are. Numbers name the heaviest "
        "items, lettered crosses the centres of mass."
    )
    tables = [heaviest_table(found, units, dagger), centres_table(found, units, dagger)] if found.items else []
    return (Paragraph(lead), *((figure,) if figure is not None else ()), *tables)


def weights_figure(house: House, found: WeightMap, units: Units) -> Figure | None:
    """The plan with its circles, at the largest standard scale that fits a page; None when nothing weighs."""
    if not found.items or found.items[0].weight_lb <= 0 or found.whole is None:
        return None
    system: ScaleSystem = "us" if units == "us" else "metric"
    for scale in SCALES[system]:
        drawing = _drawing(house, found, scale, units)
        try:
            fits = fitting_scale((drawing,), *_ROOM, system).denominator <= scale.denominator
        except CannotWrite:
            fits = False
        if fits:
            return Figure(
                drawing, "Where the weight sits", _alternative(found, units), scale=scale, anchor="weights/picture"
            )
    return None


# --- the tables -------------------------------------------------------------------------------------------------------


def heaviest_table(found: WeightMap, units: Units, dagger: str = "") -> TableBlock:
    """The items that carry numbers in the picture."""
    whole = math.fsum(item.weight_lb for item in found.items)
    rows: list[Row] = [
        (str(n), item.label, *_weights(item.weight_lb, item.counted_lb, whole, units), *_place(item, units))
        for n, item in enumerate(found.items[:NAMED], start=1)
    ]
    rest = found.items[NAMED:]
    if rest:
        weight, part = (math.fsum(w) for w in zip(*((i.weight_lb, i.counted_lb) for i in rest), strict=True))
        rows.append(("", counted(len(rest), "lighter item"), *_weights(weight, part, whole, units), "", ""))
    columns = (
        Column("No."),
        Column("Item", share=1.0),
        Column("Weight", align="end"),
        Column("Part of all", align="end"),
        Column("Seismic", align="end"),
        Column("x", align="end"),
        Column("y", align="end"),
    )
    notes = (f"Weights rest on the figures {dagger}.",) if dagger else ()
    return TableBlock(columns, tuple(rows), "The heaviest items", notes)


def _weights(weight: float, part: float, whole: float, units: Units) -> tuple[str, str, str]:
    """A weight, its part of all, and how much of it counts in the seismic weight."""
    return quantity(weight, "lb", units), share(weight / whole), quantity(part, "lb", units) if part else "none"


def centres_table(found: WeightMap, units: Units, dagger: str = "") -> TableBlock:
    """The centre of mass of every level and of the whole house."""
    rows = tuple(
        (letter, c.name, quantity(c.weight_lb, "lb", units), *_place(c, units)) for letter, c in _lettered(found)
    )
    columns = (
        Column("Mark"),
        Column("Level", share=1.0),
        Column("Seismic weight", align="end"),
        Column("Centre, x", align="end"),
        Column("Centre, y", align="end"),
    )
    notes = ["From the plan's own origin, along its own x and y."]
    if dagger:
        notes.append(f"Weights, and so the centres, rest on the figures {dagger}.")
    heavy = frozenset({len(rows) - 1}) if found.whole is not None else frozenset[int]()
    return TableBlock(columns, rows, "Centre of mass of each level", tuple(notes), heavy)


def _lettered(found: WeightMap) -> list[tuple[str, Centre]]:
    """The centres with the letters they carry in the picture: A, B, C by level, W for the whole."""
    named = [(chr(ord("A") + n), centre) for n, centre in enumerate(found.levels)]
    return [*named, *((("W", found.whole),) if found.whole is not None else ())]


def _place(at: Centre | PlacedWeight, units: Units) -> tuple[str, str]:
    style: LengthStyle = "ft" if units == "us" else "m"
    return show(at.x_in, "length", "in", style=style), show(at.y_in, "length", "in", style=style)


# --- the picture ------------------------------------------------------------------------------------------------------


def _outlines(house: House) -> list[tuple[Point, ...]]:
    """The outline of every storey, the lowest first, each shape once."""
    building = house.survey.building
    storeys = sorted(building.storeys.values(), key=lambda storey: storey.floor_z_in)
    found = [tuple((building.corners[c].x_in, building.corners[c].y_in) for c in s.outline) for s in storeys]
    return list(dict.fromkeys(found))


def _radius_of(found: WeightMap, box: tuple[float, float, float, float]) -> float:
    """Radius in model inches of a circle for one pound; times the root of the weight it is an item's radius."""
    smaller = min(box[2] - box[0], box[3] - box[1])
    return _LARGEST * smaller / math.sqrt(found.items[0].weight_lb)


def _drawing(house: House, found: WeightMap, scale: Scale, units: Units) -> Drawing:
    """Outlines, circles, numbers, centres and key."""
    outlines = _outlines(house)
    points = tuple(p for outline in outlines for p in outline) or tuple((i.x_in, i.y_in) for i in found.items)
    box = box_of_points(points)
    one = _radius_of(found, box)
    marks: list[Mark] = [
        Polygon(outline, layer("wall" if n == 0 else "wall beyond")) for n, outline in enumerate(outlines)
    ]
    labels = Labels(scale.denominator)
    marks += [_circle(item, one) for item in found.items]
    marks += list(_centres(found, box, scale, labels))
    for n, item in enumerate(found.items[:NAMED], start=1):
        marks += list(_number(n, item, one * math.sqrt(item.weight_lb), scale, labels))
    marks += list(_key(found, one, (box[0], box[1]), scale, units))
    return Drawing("where the weight sits", tuple(marks))


_FILLS: dict[str, Fill] = {"wall": "tint", "partition": "tint", "cripple wall": "tint", "chimney": "hatched"}


def _circle(item: PlacedWeight, one: float) -> Circle:
    ink = layer("symbol" if item.counted_lb else "obstruction")
    radius = one * math.sqrt(item.weight_lb)
    fill = _FILLS.get(item.kind, "none")
    said = f"{item.label}, {item.weight_lb:,.0f} lb"
    return Circle((item.x_in, item.y_in), radius, ink, fill, address=f"weight/{item.of}", label=said)


def _number(n: int, item: PlacedWeight, radius: float, scale: Scale, labels: Labels) -> tuple[Mark, ...]:
    """The item's number in a small ring on the rim of its circle, where it covers least."""
    tag = _TAG * scale.denominator

    def places() -> Iterator[tuple[Mark, ...]]:
        for degrees in _ANGLES:
            turn = math.radians(degrees + 30 * n)
            at = (item.x_in + radius * math.cos(turn), item.y_in + radius * math.sin(turn))
            words = Text(at, str(n), layer("text"), SMALL, anchor="middle", baseline="middle", heavy=True)
            yield (Circle(at, tag, layer("symbol"), "paper"), words)

    return labels.group(places())


def _centres(found: WeightMap, box: tuple[float, float, float, float], scale: Scale, labels: Labels) -> Iterator[Mark]:
    """A cross at every centre of mass, with its letter in a column to the right of the plan by a thin line."""
    paper = scale.denominator
    right = max(box[2], *(item.x_in for item in found.items)) + 0.35 * paper
    stacked = sorted(_lettered(found), key=lambda pair: -pair[1].y_in)
    middle = sum(centre.y_in for _, centre in stacked) / len(stacked)
    for n, (letter, centre) in enumerate(stacked):
        y = middle + ((len(stacked) - 1) / 2 - n) * _STEP * paper
        yield Line((centre.x_in, centre.y_in), (right, y), layer("dimension"))
        yield from _cross(centre, 0.08 * paper)
        at = (right + 0.05 * paper, y)
        said = f"centre of mass, {centre.name}"
        yield labels.keep(Text(at, letter, layer("text"), SMALL + 1, baseline="middle", heavy=True, label=said))


def _cross(centre: Centre, arm: float) -> Iterator[Mark]:
    x, y = centre.x_in, centre.y_in
    yield Line((x - arm, y), (x + arm, y), layer("defect"))
    yield Line((x, y - arm), (x, y + arm), layer("defect"))


def _key(found: WeightMap, one: float, corner: Point, scale: Scale, units: Units) -> Iterator[Mark]:
    """A circle of a round weight, and the plan's own axes, under the plan."""
    paper = scale.denominator
    weight = _round_weight(found.items[0].weight_lb / 3, units)
    radius = one * math.sqrt(weight)
    lowest = min(corner[1], *(item.y_in - one * math.sqrt(item.weight_lb) for item in found.items))
    x, y = corner[0] + radius, lowest - radius - 0.2 * paper
    yield Circle((x, y), radius, layer("symbol"))
    said = f"a circle of this size weighs {quantity(weight, 'lb', units)}"
    yield Text((x + radius + 0.08 * paper, y), said, layer("text"), SMALL, baseline="middle")
    start = (corner[0] + 2.9 * paper, y - 0.12 * paper)
    for dx, dy, name in ((0.35, 0.0, "x"), (0.0, 0.35, "y")):
        tip = (start[0] + dx * paper, start[1] + dy * paper)
        yield Line(start, tip, layer("symbol"))
        yield Text((tip[0] + 0.05 * paper, tip[1]), name, layer("text"), SMALL, baseline="middle")


def _round_weight(pounds: float, units: Units) -> float:
    """A round weight near this one, in the house's own unit: 1, 2 or 5 and noughts; handed back in pounds."""
    per = 1.0 if units == "us" else _KN
    own = pounds * per
    power = 10.0 ** math.floor(math.log10(own))
    return max(m * power for m in (1.0, 2.0, 5.0) if m * power <= own * (1 + 1e-9)) / per


def _alternative(found: WeightMap, units: Units) -> str:
    heaviest = [f"{item.label}, {quantity(item.weight_lb, 'lb', units)}" for item in found.items[:NAMED]]
    return (
        f"Plan of the house with {counted(len(found.items), 'circle')}, one for each item of weight, as large in area "
        f"as it is heavy. The heaviest: {'; '.join(heaviest)}. {_centre_words(found.levels, found.whole, units)}"
    )


def _centre_words(levels: Sequence[Centre], whole: Centre | None, units: Units) -> str:
    centres = [*levels, *((whole,) if whole is not None else ())]
    told = ["{} at x {}, y {}".format(centre.name, *_place(centre, units)) for centre in centres]
    return f"Centres of mass: {listed(told)}."
