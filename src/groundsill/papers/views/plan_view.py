"""Underfloor plans on sheets of fixed scale: as found, and with the new work of an alternative."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from groundsill.house.survey import in_order
from groundsill.papers.document import Figure
from groundsill.papers.drawing import Circle, Drawing, Fill, Line, Mark, Point, Polygon, Symbol, Text, layer
from groundsill.papers.sheet import SCALES, Paper, Scale, ScaleSystem, Sheet, TitleBlock, View, drawing_room, sheet_of
from groundsill.papers.views.forces_view import Daggers
from groundsill.papers.views.plan_found import TAG_OUT, LineForces, found_marks, frames, ground_marks, line_tags
from groundsill.papers.views.plan_frame import box_of_points, lowest_outline
from groundsill.papers.views.plan_labels import Labels
from groundsill.papers.views.plan_work import work_marks
from groundsill.papers.views.words import Units, counted, quantity
from groundsill.study import Run, Study
from groundsill.work.apply import with_work
from groundsill.work.document import Alternative, House
from groundsill.working.errors import CannotWrite

__all__ = ["found_plan", "work_plan"]

_PAPERS: dict[Units, tuple[Paper, Paper]] = {
    "us": (Paper("letter, upright", 8.5, 11.0, 0.4, "bottom"), Paper("tabloid, upright", 11.0, 17.0, 0.5, "bottom")),
    "si": (
        Paper("A4, upright", 210 / 25.4, 297 / 25.4, 10 / 25.4, "bottom"),
        Paper("A3, upright", 297 / 25.4, 420 / 25.4, 10 / 25.4, "bottom"),
    ),
}
"""The sheet a plan is drawn on where it fits there large enough to be read, and the larger one where it does not."""
_READABLE: dict[Units, float] = {"us": 64.0, "si": 50.0}
_KEY_HEIGHT = 1.25
"""Room kept free for the key under a plan, inches of paper."""


def found_plan(house: House, study: Study, daggers: Daggers) -> Figure:
    """The plan as found, with every line's force."""

    def drawn(scale: Scale) -> Drawing:
        return Drawing(
            "underfloor plan as found", tuple(found_marks(house, scale, _forces(study.runs[0], study.units, daggers)))
        )

    sheet = _sheet(house, study, drawn, "Underfloor plan as found", "C-1", _found_key)
    return Figure(sheet, "Underfloor plan as found", _found_alternative(house, study), anchor="plan/found")


def work_plan(house: House, study: Study, daggers: Daggers, alternative: Alternative, number: int) -> Figure:
    """The plan with the new work of one alternative, and the forces of the lines with it."""
    run = next((r for r in study.runs if house.alternatives.get(r.key) is alternative), study.runs[0])
    stood = with_work(house, alternative)

    def drawn(scale: Scale) -> Drawing:
        known, labels = frames(stood, scale), Labels(scale.denominator)
        tags = tuple(line_tags(stood, known, _forces(run, study.units, daggers), labels))
        work = tuple(work_marks(stood, alternative, known, labels, study.units))
        return Drawing(f"new work, {alternative.name}", (*ground_marks(house, known), *tags, *work))

    title = f"New work: {alternative.name}"
    sheet = _sheet(house, study, drawn, title, f"C-{number}", _work_key)
    many = counted(len(alternative.pieces), "piece")
    words = f"Underfloor plan with {many} of new work; each is listed with its place in the table of new work."
    return Figure(sheet, title, words, anchor=f"plan/{number}")


def _forces(run: Run, units: Units, daggers: Daggers) -> LineForces:
    """What is written of each line's force in a state, by its id; a bare dagger where it rests on a figure in doubt."""
    found = {}
    for id, force in run.line_forces.items():
        dagger = " †" if daggers.get(f"line/{id}") else ""
        shown = f"{force.direction or 'skewed'}: {quantity(force.force_lb, 'lb', units)}{dagger}"
        found[id] = shown if force.relied_on else "not relied on"
    return LineForces(found, units)


def _sheet(
    house: House,
    study: Study,
    drawn: Callable[[Scale], Drawing],
    title: str,
    number: str,
    key: Callable[[Point], Iterator[Mark]],
) -> Sheet:
    """The drawing at the largest standard scale that leaves room for its key, on the smaller paper while readable.

    Raises:
        CannotWrite: when the house does not fit at any standard scale.
    """
    system: ScaleSystem = "us" if study.units == "us" else "metric"
    site = house.survey.site
    when = f"survey of {house.survey.surveyed_on}" if house.survey.surveyed_on else ""
    block = TitleBlock(
        house.survey.name,
        ", ".join(filter(None, (site.address, site.jurisdiction))),
        title,
        number,
        tuple(filter(None, (study.manifest.program, f"house file {study.manifest.house_hash[:12]}", when))),
    )
    small, large = _PAPERS[study.units]
    for paper, scale in _choices(small, large, SCALES[system], _READABLE[study.units]):
        left, bottom, right, top = drawing_room(paper)
        room = (left, bottom + _KEY_HEIGHT, right, top)
        if not _may_fit(house, scale, right - left, top - bottom - _KEY_HEIGHT):
            continue
        keys = tuple(key((left, bottom + _KEY_HEIGHT - 0.12)))
        try:
            views = (View(drawn(scale), title),)
            return sheet_of(paper, views, block, system=system, scale=scale, room=room, annotations=keys)
        except CannotWrite:
            continue
    raise CannotWrite(f"{title}: the house does not fit {large.name} paper at any standard scale")


def _may_fit(house: House, scale: Scale, width: float, height: float) -> bool:
    """Whether the bare outline with its line marks leaves any hope for the whole drawing: spares drawing it in vain."""
    outline = lowest_outline(house)
    if not outline:
        return True
    left, bottom, right, top = box_of_points(outline)
    wide, high = (right - left) / scale.denominator, (top - bottom) / scale.denominator
    return wide + TAG_OUT <= width and high + TAG_OUT <= height


def _choices(small: Paper, large: Paper, scales: tuple[Scale, ...], readable: float) -> Iterator[tuple[Paper, Scale]]:
    """Paper and scale in the order of wish: small paper while readable, then large paper."""
    for scale in scales:
        if scale.denominator <= readable:
            yield small, scale
    for scale in scales:
        yield large, scale


# --- the keys -------------------------------------------------------------------------------------------------------


def _found_key(at: Point) -> Iterator[Mark]:
    """What the signs of the plan as found mean, in four columns under it."""
    fills: tuple[tuple[Fill, str], ...] = (
        ("tint", "concrete"), ("masonry", "brick"), ("crossed", "stone"), ("hatched", "concrete block"),
    )  # fmt: skip
    yield from _title(at)
    for n, (fill, words) in enumerate(fills):
        yield from _patch(_cell(at, 0, n), fill, words)
    x, y = _cell(at, 1, 0)
    yield Symbol("bolt", (x + 0.1, y), layer("framing"), 5.0)
    yield _words((x, y), "existing bolt")
    x, y = _cell(at, 1, 1)
    yield Symbol("crack", (x + 0.1, y), layer("defect"), 11.0)
    yield _words((x, y), "crack, cold joint, gap")
    x, y = _cell(at, 1, 2)
    yield Line((x + 0.1, y - 0.06), (x + 0.1, y + 0.06), layer("defect"))
    yield _words((x, y), "step in the foundation")
    x, y = _cell(at, 1, 3)
    yield Symbol("post", (x + 0.1, y), layer("framing"), 6.0)
    yield _words((x, y), "post; dashed: girder")
    x, y = _cell(at, 2, 0)
    for stop in (0.02, 0.2):
        yield Line((x + stop, y - 0.03), (x + stop, y + 0.03), layer("wall"))
    yield Line((x + 0.02, y), (x + 0.2, y), layer("wall"))
    yield _words((x, y), "wall segment, height")
    x, y = _cell(at, 2, 1)
    yield Polygon(
        ((x + 0.02, y - 0.04), (x + 0.2, y - 0.04), (x + 0.2, y + 0.04), (x + 0.02, y + 0.04)),
        layer("opening"),
        "paper",
    )
    yield _words((x, y), "vent, access, opening")
    x, y = _cell(at, 2, 2)
    box = ((x + 0.02, y - 0.04), (x + 0.2, y - 0.04), (x + 0.2, y + 0.04), (x + 0.02, y + 0.04))
    yield Polygon(box, layer("obstruction"))
    yield _words((x, y), "obstruction")
    yield from _tag_key(_cell(at, 2, 3))
    yield from _axes(_cell(at, 3, 2))


def _work_key(at: Point) -> Iterator[Mark]:
    """What the signs of new work mean."""
    yield from _title(at)
    yield from _patch(_cell(at, 0, 0), "hatched", "P panel", "new panel")
    x, y = _cell(at, 0, 1)
    yield Line((x + 0.02, y), (x + 0.2, y), layer("new wood"))
    yield _words((x, y), "blocking on the sill")
    x, y = _cell(at, 0, 2)
    yield Line((x + 0.02, y), (x + 0.2, y), layer("new hardware"))
    for stop in (0.02, 0.2):
        yield Line((x + stop, y - 0.04), (x + stop, y + 0.04), layer("new hardware"))
    yield _words((x, y), "T ties (number), S strap")
    x, y = _cell(at, 1, 0)
    yield Symbol("hold-down", (x + 0.1, y), layer("new hardware"), 7.0)
    yield _words((x, y), "H hold-down")
    x, y = _cell(at, 1, 1)
    yield Symbol("strap", (x + 0.1, y), layer("new hardware"), 11.0)
    yield _words((x, y), "S splice")
    x, y = _cell(at, 1, 2)
    yield Symbol("bolt", (x + 0.1, y), layer("new anchor"), 6.5)
    yield _words((x, y), "A anchor")
    yield from _patch(_cell(at, 2, 0), "concrete", "F new concrete", "new concrete")
    yield from _patch(_cell(at, 2, 1), "earth", "soil lowered or held back", "soil")
    yield from _tag_key(_cell(at, 2, 2))
    yield from _axes(_cell(at, 3, 2))


def _title(at: Point) -> Iterator[Mark]:
    yield Text((at[0] + 0.1, at[1] - 0.05), "Key", layer("text"), 8.0, heavy=True)


def _cell(at: Point, column: int, row: int) -> Point:
    return (at[0] + 0.1 + column * 1.95, at[1] - 0.28 - row * 0.24)


def _words(at: Point, words: str) -> Text:
    return Text((at[0] + 0.3, at[1]), words, layer("text"), 7.5, baseline="middle")


def _patch(at: Point, fill: Fill, words: str, ink: str = "foundation") -> Iterator[Mark]:
    x, y = at
    yield Polygon(((x, y - 0.05), (x + 0.22, y - 0.05), (x + 0.22, y + 0.05), (x, y + 0.05)), layer(ink), fill)
    yield _words(at, words)


def _tag_key(at: Point) -> Iterator[Mark]:
    x, y = at
    yield Circle((x + 0.1, y), 0.07, layer("symbol"))
    yield _words(at, "line; its force, strength level")


def _axes(at: Point) -> Iterator[Mark]:
    """The plan's own axes: forces are named by them."""
    x, y = at[0] + 0.15, at[1] - 0.1
    for dx, dy, name in ((0.42, 0.0, "x"), (0.0, 0.42, "y")):
        tip = (x + dx, y + dy)
        yield Line((x, y), tip, layer("symbol"))
        if dx:
            yield Polygon((tip, (tip[0] - 0.08, y + 0.03), (tip[0] - 0.08, y - 0.03)), layer("symbol"), "ink")
        else:
            yield Polygon((tip, (x - 0.03, tip[1] - 0.08), (x + 0.03, tip[1] - 0.08)), layer("symbol"), "ink")
        yield Text((tip[0] + 0.06, tip[1]), name, layer("text"), 8.0, baseline="middle")
    yield Text((x + 0.16, y + 0.28), "† figure in doubt", layer("text"), 6.0)
    yield Text((x + 0.16, y + 0.14), "north: not in the survey", layer("text"), 6.0)


def _found_alternative(house: House, study: Study) -> str:
    under, foundation = house.survey.underfloor, house.survey.foundation
    told = []
    for id, line in in_order(under.lines):
        force = study.runs[0].line_forces.get(id)
        carries = "not relied on"
        if force is not None and force.relied_on:
            carries = f"{quantity(force.force_lb, 'lb', study.units)} along {force.direction}"
        told.append(f"line {line.mark} {line.name}, {carries}")
    return (
        f"Plan under the floor with {counted(len(under.lines), 'braced line')}, "
        f"{counted(len(under.segments), 'wall segment')}, {counted(len(under.bolts), 'existing bolt')}, "
        f"{counted(len(under.obstructions), 'obstruction')} and {counted(len(foundation.breaks), 'break')} in the "
        f"foundation. Forces: {'; '.join(told)}."
    )
