"""Do the parts of a survey fit: outlines that close, walls on them, stations inside their line, no overlaps."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from typing import Any, Final

from groundsill.house.building import Point
from groundsill.house.plan import (
    TOUCH_IN,
    XY,
    Stretch,
    away_from_outline_in,
    corner,
    distance_in,
    line_length_in,
    outline_of,
    why_no_outline,
)
from groundsill.house.survey import Survey, in_order
from groundsill.working.errors import Fault

__all__ = ["fit_faults", "overlaps", "stretch_words"]

LEAST_LENGTH_IN: Final = 1.0
ON_OUTLINE_IN: Final = 2.0
_SAME: Final = 1 + 1e-9
_OUTLINE_WORDS: Final = "an outline of 3 corners or more, in order round the plan, whose edges do not cross"


def fit_faults(survey: Survey, at: str) -> Iterator[Fault]:
    """Every fault of parts that do not fit each other."""
    yield from _outlines(survey, at)
    yield from _lengths(survey, at)
    yield from _storeys(survey, at)
    yield from _walls(survey, at)
    yield from _stations(survey, at)
    yield from _coverage(survey, at)
    yield from _heights(survey, at)
    yield from _bolts(survey, at)
    yield from _tests(survey, at)


def _outlines(survey: Survey, at: str) -> Iterator[Fault]:
    """Outlines of storeys, joist fields and roof parts."""
    named = [(f"{at}.building.storeys.{key}", storey.outline) for key, storey in survey.building.storeys.items()]
    named += [(f"{at}.underfloor.joists.{key}", field.outline) for key, field in survey.underfloor.joists.items()]
    for path, corners in named:
        outline = outline_of(survey, corners)  # a corner that is not there is a fault of its own
        why = why_no_outline(outline) if outline is not None else None
        if why:
            yield Fault(f"{path}.outline", why, _OUTLINE_WORDS)
    for key, part in survey.building.roof.items():
        why = why_no_outline([_xy(point) for point in part.outline])
        if why:
            yield Fault(f"{at}.building.roof.{key}.outline", why, _OUTLINE_WORDS)


def _xy(point: Point) -> XY:
    return point.x_in, point.y_in


def _lengths(survey: Survey, at: str) -> Iterator[Fault]:
    """Lines, walls, partitions and girders with no length."""
    ends: list[tuple[str, XY | None, XY | None]] = []
    by_corner: tuple[tuple[str, Mapping[str, Any]], ...] = (
        ("underfloor.lines", survey.underfloor.lines),
        ("building.walls", survey.building.walls),
    )
    for name, collection in by_corner:
        for key, item in collection.items():
            ends.append((f"{at}.{name}.{key}", corner(survey, item.start), corner(survey, item.end)))
    by_point: tuple[tuple[str, Mapping[str, Any]], ...] = (
        ("building.partitions", survey.building.partitions),
        ("underfloor.girders", survey.underfloor.girders),
    )
    for name, collection in by_point:
        for key, item in collection.items():
            ends.append((f"{at}.{name}.{key}", _xy(item.start), _xy(item.end)))
    for path, start, end in ends:
        if start and end and distance_in(start, end) < LEAST_LENGTH_IN:
            yield Fault(path, f"a length of {distance_in(start, end):g} inches", "a start and an end that lie apart")


def _storeys(survey: Survey, at: str) -> Iterator[Fault]:
    """Storeys in order from the ground up."""
    stack = in_order(survey.building.storeys)
    for (_, below), (key, storey) in pairwise(stack):
        if storey.floor_z_in < below.floor_z_in:
            allowed = f"storeys in order from the ground up; the one before it stands at {below.floor_z_in:g}"
            yield Fault(f"{at}.building.storeys.{key}.floor_z_in", f"{storey.floor_z_in:g}", allowed)


def _walls(survey: Survey, at: str) -> Iterator[Fault]:
    """Walls whose ends are not on their storey's outline, and openings that do not fit their wall."""
    for key, wall in survey.building.walls.items():
        path = f"{at}.building.walls.{key}"
        storey = survey.building.storeys.get(wall.storey)
        outline = outline_of(survey, storey.outline) if storey else None
        for name in ("start", "end"):
            place = corner(survey, getattr(wall, name))
            if outline and place and away_from_outline_in(outline, place) > ON_OUTLINE_IN:
                yield Fault(f"{path}.{name}", f'"{getattr(wall, name)}"', f"a corner on the outline of {wall.storey}")
        start, end = corner(survey, wall.start), corner(survey, wall.end)
        length = distance_in(start, end) if start and end else None
        for id_, opening in wall.openings.items():
            here = f"{path}.openings.{id_}"
            yield from _stretch_faults(here, opening.from_in, opening.to_in, length, "wall")
            if opening.head_in <= opening.sill_in:
                yield Fault(f"{here}.head_in", f"{opening.head_in:g}", f"a head above its sill at {opening.sill_in:g}")
        yield from _overlap_faults(f"{path}.openings", in_order(wall.openings), "openings of a wall")
        height = wall.height_in if wall.height_in is not None else storey.height_in if storey else None
        cut = sum(max(o.to_in - o.from_in, 0) * max(o.head_in - o.sill_in, 0) for o in wall.openings.values())
        if length is not None and height is not None and cut > length * height * _SAME:
            allowed = f"no more than the wall itself, {length * height / 144:.1f} square feet"
            yield Fault(f"{path}.openings", f"{cut / 144:.1f} square feet of openings", allowed)


def _stations(survey: Survey, at: str) -> Iterator[Fault]:
    """Things along a line that end before they begin or stand beyond its end."""
    under, base = survey.underfloor, survey.foundation
    stretches: tuple[tuple[str, Mapping[str, Any]], ...] = (
        ("underfloor.segments", under.segments), ("underfloor.sills", under.sills),
        ("underfloor.openings", under.openings), ("underfloor.obstructions", under.obstructions),
        ("underfloor.headroom", under.headroom),
        ("underfloor.ledgers", under.ledgers), ("foundation.segments", base.segments),
    )  # fmt: skip
    for name, collection in stretches:
        for key, item in collection.items():
            length = line_length_in(survey, item.line)
            yield from _stretch_faults(f"{at}.{name}.{key}", item.from_in, item.to_in, length, "line")
    points: tuple[tuple[str, Mapping[str, Any]], ...] = (
        ("underfloor.splices", under.splices), ("underfloor.bolts", under.bolts), ("foundation.breaks", base.breaks),
    )  # fmt: skip
    for name, collection in points:
        for key, item in collection.items():
            length = line_length_in(survey, item.line)
            if length is not None and item.station_in > length + TOUCH_IN:
                allowed = f"a station on its line, which is {length:g} inches long"
                yield Fault(f"{at}.{name}.{key}.station_in", f"{item.station_in:g}", allowed)


def _stretch_faults(path: str, start: float, end: float, length: float | None, what: str) -> Iterator[Fault]:
    """A stretch that ends before it begins, or beyond the end of what it lies on."""
    if end <= start:
        yield Fault(f"{path}.to_in", f"{end:g}", f"a station beyond its start at {start:g}")
    elif length is not None and end > length + TOUCH_IN:
        yield Fault(f"{path}.to_in", f"{end:g}", f"a station on its {what}, which is {length:g} inches long")


def overlaps(stretches: Sequence[tuple[str, Any]]) -> Iterator[tuple[tuple[str, Any], tuple[str, Any]]]:
    """Neighbouring pairs of (id, stretch) that lie on each other, along one line; the later one second."""
    along = sorted(stretches, key=lambda pair: (pair[1].from_in, pair[1].to_in, pair[0]))
    furthest: tuple[str, Any] | None = None
    for pair in along:
        if furthest and pair[1].from_in < furthest[1].to_in - TOUCH_IN:
            yield furthest, pair
        if furthest is None or pair[1].to_in > furthest[1].to_in:
            furthest = pair


def stretch_words(stretch: Any) -> str:
    """``from 0 to 150``."""
    return f"from {stretch.from_in:g} to {stretch.to_in:g}"


def _overlap_faults(path: str, stretches: Sequence[tuple[str, Any]], what: str) -> Iterator[Fault]:
    for (first_id, first), (key, item) in overlaps(stretches):
        allowed = f"{what} may not lie on each other; {first_id} goes {stretch_words(first)}"
        yield Fault(f"{path}.{key}", stretch_words(item), allowed)


def _coverage(survey: Survey, at: str) -> Iterator[Fault]:
    """Wall segments cover their line from end to end; sills and foundation segments do not lie on each other."""
    collections: tuple[tuple[str, Mapping[str, Stretch], str], ...] = (
        ("underfloor.segments", survey.underfloor.segments, "wall segments"),
        ("underfloor.sills", survey.underfloor.sills, "sill pieces"),
        ("foundation.segments", survey.foundation.segments, "foundation segments"),
    )
    for name, collection, what in collections:
        for line, stretches in _by_line(collection).items():
            yield from _overlap_faults(f"{at}.{name}", stretches, f"{what} of one line")
            length = line_length_in(survey, line)
            if name == "underfloor.segments" and length is not None:
                yield from _gap_faults(f"{at}.underfloor.lines.{line}", stretches, length)


def _by_line(collection: Mapping[str, Stretch]) -> dict[str, list[tuple[str, Stretch]]]:
    found: dict[str, list[tuple[str, Stretch]]] = {}
    for key, item in collection.items():
        found.setdefault(item.line, []).append((key, item))
    return found


def _gap_faults(path: str, stretches: Sequence[tuple[str, Stretch]], length: float) -> Iterator[Fault]:
    """Parts of a line that no wall segment tells of."""
    allowed = 'wall segments that cover the line from 0 to its end; where nothing stands, a segment of kind "open"'
    reached = 0.0
    for _, item in sorted(stretches, key=lambda pair: (pair[1].from_in, pair[1].to_in)):
        if item.from_in > reached + TOUCH_IN:
            yield Fault(path, f"a gap in its wall segments from {reached:g} to {item.from_in:g}", allowed)
        reached = max(reached, item.to_in)
    if reached < length - TOUCH_IN:
        yield Fault(path, f"a gap in its wall segments from {reached:g} to {length:g}", allowed)


def _heights(survey: Survey, at: str) -> Iterator[Fault]:
    """Openings with no height, obstructions upside down."""
    for key, opening in survey.underfloor.openings.items():
        if opening.top_in <= opening.bottom_in:
            allowed = f"a top above its bottom at {opening.bottom_in:g}"
            yield Fault(f"{at}.underfloor.openings.{key}.top_in", f"{opening.top_in:g}", allowed)
    for key, thing in survey.underfloor.obstructions.items():
        if thing.top_in < thing.bottom_in:
            allowed = f"a top not below its bottom at {thing.bottom_in:g}"
            yield Fault(f"{at}.underfloor.obstructions.{key}.top_in", f"{thing.top_in:g}", allowed)


def _bolts(survey: Survey, at: str) -> Iterator[Fault]:
    """Bolts go through a sill piece, once the sill pieces of their line are written down."""
    sills = _by_line(survey.underfloor.sills)
    for key, bolt in survey.underfloor.bolts.items():
        length, pieces = line_length_in(survey, bolt.line), sills.get(bolt.line, [])
        if length is not None and bolt.station_in > length + TOUCH_IN:
            continue  # told already
        if pieces and not any(s.from_in - TOUCH_IN <= bolt.station_in <= s.to_in + TOUCH_IN for _, s in pieces):
            allowed = f"a station on a sill piece of {bolt.line}: {'; '.join(stretch_words(s) for _, s in pieces[:6])}"
            yield Fault(f"{at}.underfloor.bolts.{key}.station_in", f"{bolt.station_in:g}", allowed)


def _tests(survey: Survey, at: str) -> Iterator[Fault]:
    """Tests lie on the foundation segment they name."""
    for key, test in survey.foundation.tests.items():
        segment = survey.foundation.segments.get(test.segment)
        if segment and not segment.from_in - TOUCH_IN <= test.station_in <= segment.to_in + TOUCH_IN:
            allowed = f"a station on {test.segment}, {stretch_words(segment)}"
            yield Fault(f"{at}.foundation.tests.{key}.station_in", f"{test.station_in:g}", allowed)
