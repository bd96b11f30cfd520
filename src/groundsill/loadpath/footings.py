"""Foundation bodies: stretches that hang together, what they weigh, how high they stand and how deep they reach.

Foundation stretches that touch, along a line or round a corner, are one body unless a gap, a full-depth crack or a cold
joint parts them; one at the end of a line parts it from what it runs into there. Heights are measured from the soil
outside, above it and below it, and never mix the two sides.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import inf

from groundsill.forces.levels import base_z_in
from groundsill.forces.reading import XY, Reading, doubted, line_ends
from groundsill.house.foundation import FoundationSegment
from groundsill.loadpath.stem import height_facts, height_of
from groundsill.mechanics.plan import length
from groundsill.standards.common_practice import table_other_densities
from groundsill.working.steps import add, given, multiply, note
from groundsill.working.value import Mark

__all__ = [
    "DEEPEST_FT",
    "JOINED_IN",
    "Body",
    "Part",
    "bodies_of",
    "drop_ft",
    "height_known",
    "inside_depth_in",
    "least_weight",
    "meets_other",
    "most_weight",
    "near",
    "station_of",
]

# how far a footing of unknown depth may reach below the base: deeper than any looked for under a house without a
# basement; chosen here, from memory
DEEPEST_FT = 8.0
_CUTTING = ("full-depth crack", "cold joint", "gap")
JOINED_IN = 12.0
_MEET_IN = 1.0  # stretches of one line, and a break and the end of a stretch, are at one place within this
_WEIGHS = {"poured concrete": "concrete", "brick": "brick masonry", "stone": "brick masonry"}  # at least so much


@dataclass(frozen=True, slots=True)
class Part:
    """A stretch of a foundation segment between breaks, stations in inches; ``cut`` says which end stands at one."""

    segment_id: str
    segment: FoundationSegment
    from_in: float
    to_in: float
    start: XY
    end: XY
    cut: tuple[bool, bool] = (False, False)

    @property
    def length_ft(self) -> float:
        """Length along its line, feet."""
        return (self.to_in - self.from_in) / 12

    def marked(self, reading: Reading, *names: str) -> frozenset[Mark]:
        """The marks of facts of its segment, by their names."""
        return reading.marked(f"survey.foundation.segments.{self.segment_id}", *names)


@dataclass(frozen=True, slots=True)
class Body:
    """Foundation that moves as one piece."""

    id: str
    mark: str
    parts: tuple[Part, ...]

    def new(self, reading: Reading) -> bool:
        """Whether it is new concrete, cast inside an old foundation."""
        return any(part.segment.line in reading.inner for part in self.parts)

    def lines(self) -> dict[str, tuple[Part, ...]]:
        """Its parts line by line."""
        found: dict[str, tuple[Part, ...]] = {}
        for part in self.parts:
            found[part.segment.line] = (*found.get(part.segment.line, ()), part)
        return found


def parts_on(reading: Reading, line: str) -> tuple[Part, ...]:
    """The stretches of foundation on a line."""
    return tuple(p for p in reading.once("foundation parts", lambda: _parts(reading)) if p.segment.line == line)


def bodies_of(reading: Reading) -> tuple[Body, ...]:
    """The foundation bodies of a house in order of size, those that work adds after all that stand.

    So a mark names one body as found and with the work: new concrete takes the next free number, whatever its size.
    """
    parts = reading.once("foundation parts", lambda: _parts(reading))
    parents = list(range(len(parts)))

    def root(i: int) -> int:
        while parents[i] != i:
            i = parents[i]
        return i

    for i, a in enumerate(parts):
        for j in range(i):
            if root(i) != root(j) and _touch(reading, a, parts[j]):
                parents[root(i)] = root(j)
    groups: dict[int, list[Part]] = {}
    for i, part in enumerate(parts):
        groups.setdefault(root(i), []).append(part)

    def order(group: list[Part]) -> tuple[bool, float, tuple[str, float]]:
        old = [part for part in group if part.segment.line not in reading.inner]
        stands = old or group
        size, first = sum(p.length_ft for p in stands), min((p.segment_id, p.from_in) for p in stands)
        return not old, -size, first

    ordered = sorted(groups.values(), key=order)
    found = []
    for n, group in enumerate(ordered, start=1):
        first = min(group, key=lambda p: (p.segment_id, p.from_in))
        id = first.segment_id if first.from_in == first.segment.from_in else f"{first.segment_id}.{first.from_in:g}"
        found.append(Body(id, f"B{n}", tuple(group)))
    return tuple(found)


def _parts(reading: Reading) -> list[Part]:
    survey = reading.house.survey
    found = []
    for id, segment in reading.in_order(survey.foundation.segments):
        if segment.material in ("none", "not seen"):
            continue
        a, b = line_ends(reading.house, survey.underfloor.lines[segment.line])
        whole = length(a, b)
        cuts = _cuts(reading, segment.line)
        within = sorted(c for c in cuts if segment.from_in + _MEET_IN < c < segment.to_in - _MEET_IN)
        stops = [segment.from_in, *within, segment.to_in]
        for low, high in zip(stops, stops[1:], strict=False):
            ends = [(a[0] + (b[0] - a[0]) * s / whole, a[1] + (b[1] - a[1]) * s / whole) for s in (low, high)]
            at_cut = _cut_at(reading, segment, low), _cut_at(reading, segment, high)
            found.append(Part(id, segment, low, high, ends[0], ends[1], at_cut))
    return found


def _cuts(reading: Reading, line: str) -> list[float]:
    """Stations along a line at which its foundation is cut through."""
    breaks = reading.on_line(reading.house.survey.foundation.breaks, line)
    return [cut.station_in for _, cut in breaks if cut.kind in _CUTTING]


def _cut_at(reading: Reading, segment: FoundationSegment, station: float) -> bool:
    """Whether a stretch that ends at a station ends at a cut: right there, or off the free end it runs out to."""
    others = [s for _, s in reading.on_line(reading.house.survey.foundation.segments, segment.line) if s is not segment]
    free_start = station == segment.from_in and not any(abs(s.to_in - station) < _MEET_IN for s in others)
    free_end = station == segment.to_in and not any(abs(s.from_in - station) < _MEET_IN for s in others)
    before, after = (JOINED_IN if free else _MEET_IN for free in (free_start, free_end))
    return any(station - before <= cut <= station + after for cut in _cuts(reading, segment.line))


def meets_other(reading: Reading, part: Part, end: XY) -> bool:
    """Whether an end of a part meets other foundation, of its own body or across a cut, and so no soil."""
    if part.cut[0 if end == part.start else 1]:
        return True
    every = reading.once("foundation parts", lambda: _parts(reading))
    return any(other != part and _reaches(end, other) for other in every)


def _touch(reading: Reading, a: Part, b: Part) -> bool:
    """Two parts hang together when they meet on a line with no break there, or at a corner or a crossing of lines.

    New concrete inside an old foundation is cast against nothing of it: old and new never hang together.
    """
    if (a.segment.line in reading.inner) != (b.segment.line in reading.inner):
        return False
    if a.segment.line == b.segment.line:
        joint = a.from_in if abs(a.from_in - b.to_in) < 1 else a.to_in if abs(a.to_in - b.from_in) < 1 else None
        if joint is None:
            return False
        return not any(abs(cut - joint) < _MEET_IN for cut in _cuts(reading, a.segment.line))
    for axis in (0, 1):  # far apart: most pairs are
        low, high = sorted((a.start[axis], a.end[axis]))
        if b.start[axis] > high + JOINED_IN < b.end[axis] or b.start[axis] < low - JOINED_IN > b.end[axis]:
            return False
    return any(
        _reaches(end, other)
        for one, other in ((a, b), (b, a))
        for end, cut in zip((one.start, one.end), one.cut, strict=True)
        if not cut
    )


def _reaches(point: XY, part: Part) -> bool:
    """Whether the end of another part runs into this one, at a place where neither is cut."""
    whole = length(part.start, part.end)
    if whole == 0:
        return False
    held = station_of(point, part.start, part.end)
    if (held < _MEET_IN and part.cut[0]) or (held > whole - _MEET_IN and part.cut[1]):
        return False
    return near(point, part.start, part.end) <= JOINED_IN


def near(point: XY, start: XY, end: XY) -> float:
    """How near a place lies to a straight stretch, inches; nothing is near a stretch of no length."""
    whole = length(start, end)
    if whole == 0:
        return inf
    (x1, y1), (x2, y2) = start, end
    held = station_of(point, start, end)
    return length(point, (x1 + (x2 - x1) * held / whole, y1 + (y2 - y1) * held / whole))


def station_of(point: XY, start: XY, end: XY) -> float:
    """How far along a straight stretch the place on it lies that is nearest to a point, inches."""
    whole = length(start, end)
    along = (point[0] - start[0]) * (end[0] - start[0]) + (point[1] - start[1]) * (end[1] - start[1])
    return min(max(along / whole, 0.0), whole) if whole else 0.0


# ---- Height and weight ----------------------------------------------------------------------------------------------


def height_known(segment: FoundationSegment) -> bool:
    """Whether the whole height is known: above the soil outside, and below that same soil."""
    outside, below = segment.above_outside_soil_in.value, segment.depth_in.value
    return outside is not None and below is not None and outside + below > 0


def inside_depth_in(segment: FoundationSegment) -> float | None:
    """How far the footing's bottom lies below the soil inside, inches; None when it is not known."""
    inside, whole = segment.above_inside_soil_in.value, height_of(segment)
    if inside is None or whole is None or not height_known(segment):
        return None
    return max(whole - inside, 0.0)


def drop_ft(reading: Reading, parts: Iterable[Part], deepest: bool = False) -> float:
    """How far the lowest bottom of these parts lies below the base, ft; what nobody measured counts as seen.

    Args:
        reading: the house.
        parts: stretches of foundation.
        deepest: take a bottom nobody knows to lie as deep as any is looked for.
    """
    base, drops, every = reading.once("base", lambda: base_z_in(reading)), [], "survey.foundation.segments"
    # the base is the mean of all tops
    doubts = set(reading.marked(every, *(f"{id}.top_z_in" for id in reading.house.survey.foundation.segments)))
    for part in parts:
        doubts |= part.marked(reading, *height_facts(part.segment))
        top = part.segment.top_z_in.value
        height = height_of(part.segment) or 0.0
        drop = (base - (base if top is None else top) + height) / 12
        drops.append(max(drop, height / 12, DEEPEST_FT if deepest and not height_known(part.segment) else 0.0))
    return doubted(max(drops, default=0.0), doubts, unit="ft", symbol="z")


_SECTION = ("top_width_in", "footing_width_in", "footing_thickness_in")


def least_weight(reading: Reading, parts: Iterable[Part], label: str) -> float | None:
    """What these parts of the foundation weigh at least, lb, by what is known of their section; None for nothing."""
    volumes: dict[str, list[tuple[float, frozenset[Mark]]]] = {}
    for part in parts:
        s, height = part.segment, height_of(part.segment)
        top, wide, thick = s.top_width_in.value, s.footing_width_in.value, s.footing_thickness_in.value
        if top is None or height is None or s.material not in _WEIGHS:
            continue
        square_in = top * height + (max(wide - top, 0.0) * min(thick, height) if wide and thick else 0.0)
        known = part.marked(reading, *_SECTION, *height_facts(s))
        volumes.setdefault(_WEIGHS[s.material], []).append((part.length_ft * square_in / 144, known))
    return _weigh(volumes, f"{label}, as far as its section is known")


def most_weight(reading: Reading, parts: Iterable[Part], label: str) -> float:
    """What these parts may weigh at most, lb, where the footing's width is known.

    A width of the stem that nobody measured is the footing's, a thickness of the footing goes up to the soil.
    """
    volumes: dict[str, list[tuple[float, frozenset[Mark]]]] = {}
    for part in parts:
        s = part.segment
        height = (height_of(s) or 0.0) if height_known(s) else 12 * DEEPEST_FT
        wide = s.footing_width_in.value or 0.0
        top = wide if s.top_width_in.value is None else s.top_width_in.value
        up = s.footing_thickness_in.value
        if up is None:
            up = s.depth_in.value if height_known(s) and s.depth_in.value is not None else height
        square_in = top * height + max(wide - top, 0.0) * min(up, height)
        known = part.marked(reading, *_SECTION, *height_facts(s))
        material = "brick masonry" if s.material == "brick" else "concrete"
        volumes.setdefault(material, []).append((part.length_ft * square_in / 144, known))
    found = _weigh(volumes, f"{label}, at most")
    return 0.0 if found is None else found


def _weigh(volumes: dict[str, list[tuple[float, frozenset[Mark]]]], label: str) -> float | None:
    """Stretches of each material, cubic feet with their marks, as a weight."""
    terms = []
    for material, stretches in sorted(volumes.items()):
        volume = sum(size for size, _ in stretches)
        if volume > 0:
            doubts = frozenset[Mark]().union(*(known for _, known in stretches))
            density = table_other_densities().read(material, symbol="γ_c")
            size = given("V_c", volume, "ft^3", f"{label}: volume of {material}", doubts)
            terms.append(multiply(density, size, symbol="D_c", unit="lb", label=label))
    if not terms:
        note(f"{label}: nothing is counted, its section is not known")
        return None
    return terms[0] if len(terms) == 1 else add(*terms, symbol="D_c", label=label)
