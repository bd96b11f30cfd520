"""Foundation bodies and the soil: what moves together is checked together, for sliding, overturning and bearing.

Foundation stretches that touch, along a line or round a corner, are one body unless a gap, a full-depth crack or a cold
joint parts them. Soil links stand in a group of their own beside the structural ones.
"""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.forces.gravity import Load
from groundsill.forces.reading import XY, Reading, line_ends
from groundsill.forces.seismic import Forces
from groundsill.forces.share import Direction
from groundsill.house.foundation import FoundationSegment
from groundsill.house.survey import in_order
from groundsill.loadpath.case import cannot, checked
from groundsill.loadpath.chain import Chain, Link, Stage
from groundsill.mechanics.footing import pressure_under
from groundsill.mechanics.plan import length
from groundsill.standards.asce7_16.effects import (
    asd_dead_factor_8,
    asd_dead_factor_10,
    asd_earthquake,
    horizontal_effect,
    overturning_factor,
)
from groundsill.standards.common_practice import table_other_densities
from groundsill.standards.ibc_2021.soils import lateral_resistance, presumptive_bearing
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import add, divide, given, multiply, note, scale

__all__ = ["Body", "bodies_of", "body_chains"]

_CUTTING = ("full-depth crack", "cold joint", "gap")
_TOUCH_IN = 12.0
_SOILS = {"crystalline rock": "1", "sedimentary rock": "2", "gravel": "3", "sand": "4", "clay": "5"}


@dataclass(frozen=True, slots=True)
class Part:
    """A stretch of a foundation segment between breaks: stations in inches."""

    segment_id: str
    segment: FoundationSegment
    from_in: float
    to_in: float
    start: XY
    end: XY

    @property
    def length_ft(self) -> float:
        """Length along its line, feet."""
        return (self.to_in - self.from_in) / 12


@dataclass(frozen=True, slots=True)
class Body:
    """Foundation that moves as one piece."""

    id: str
    mark: str
    parts: tuple[Part, ...]


def bodies_of(reading: Reading) -> tuple[Body, ...]:
    """The foundation bodies of a house, in order of size."""
    parts = _parts(reading)
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
    ordered = sorted(
        groups.values(), key=lambda g: (-sum(p.length_ft for p in g), min((p.segment_id, p.from_in) for p in g))
    )
    found = []
    for n, group in enumerate(ordered, start=1):
        first = min(group, key=lambda p: (p.segment_id, p.from_in))
        id = first.segment_id if first.from_in == first.segment.from_in else f"{first.segment_id}.{first.from_in:g}"
        found.append(Body(id, f"B{n}", tuple(group)))
    return tuple(found)


def _parts(reading: Reading) -> list[Part]:
    survey = reading.house.survey
    found = []
    for id, segment in in_order(survey.foundation.segments):
        if segment.material in ("none", "not seen"):
            continue
        a, b = line_ends(reading.house, survey.underfloor.lines[segment.line])
        whole = length(a, b)
        cuts = [
            c.station_in for _, c in in_order(survey.foundation.breaks) if c.line == segment.line and c.kind in _CUTTING
        ]
        stops = [segment.from_in, *sorted(c for c in cuts if segment.from_in < c < segment.to_in), segment.to_in]
        for low, high in zip(stops, stops[1:], strict=False):
            ends = [(a[0] + (b[0] - a[0]) * s / whole, a[1] + (b[1] - a[1]) * s / whole) for s in (low, high)]
            found.append(Part(id, segment, low, high, ends[0], ends[1]))
    return found


def _touch(reading: Reading, a: Part, b: Part) -> bool:
    """Two parts hang together when they meet on a line with no break there, or at a corner or a crossing of lines."""
    if a.segment.line == b.segment.line:
        joint = a.from_in if abs(a.from_in - b.to_in) < 1 else a.to_in if abs(a.to_in - b.from_in) < 1 else None
        if joint is None:
            return False
        cuts = reading.house.survey.foundation.breaks.values()
        return not any(c.line == a.segment.line and c.kind in _CUTTING and abs(c.station_in - joint) < 1 for c in cuts)
    return any(_reaches(end, b) for end in (a.start, a.end)) or any(_reaches(end, a) for end in (b.start, b.end))


def _reaches(point: XY, part: Part) -> bool:
    whole = length(part.start, part.end)
    if whole == 0:
        return False
    (x1, y1), (x2, y2) = part.start, part.end
    along = ((point[0] - x1) * (x2 - x1) + (point[1] - y1) * (y2 - y1)) / whole
    held = min(max(along, 0.0), whole)
    return length(point, (x1 + (x2 - x1) * held / whole, y1 + (y2 - y1) * held / whole)) <= _TOUCH_IN


def body_chains(reading: Reading, forces: Forces) -> tuple[Chain, ...]:
    """The soil links of every foundation body."""
    chains = []
    for body in bodies_of(reading):
        with section(f"body/{body.id}/weight"):
            dead, gravity = _weight(reading, forces, body)
        sliding, turning = [], []
        directions: tuple[Direction, ...] = ("x", "y")
        for direction in directions:
            force = _force(forces, body, direction)
            sliding.append(_sliding(reading, forces, body, direction, dead, force))
            turning.append(_overturning(reading, forces, body, direction, dead, force))
        stages = (
            Stage("sliding", "Sliding of the whole body", "every link must pass", tuple(sliding)),
            Stage("overturning", "Overturning of the whole body", "every link must pass", tuple(turning)),
            Stage(
                "bearing",
                "Bearing on the soil, line by line",
                "every link must pass",
                tuple(_bearing(reading, forces, body, gravity)),
            ),
        )
        total = sum(float(_force(forces, body, d)) for d in directions)
        marks = ", ".join(sorted({reading.house.survey.underfloor.lines[p.segment.line].mark for p in body.parts}))
        chains.append(Chain(body.id, body.mark, f"foundation under {marks}", "body", "both", True, "", total, stages))
    return tuple(chains)


def _lengths(body: Body) -> dict[str, float]:
    """Feet of foundation of the body under each line."""
    found: dict[str, float] = {}
    for part in body.parts:
        found[part.segment.line] = found.get(part.segment.line, 0.0) + part.length_ft
    return found


def _weight(reading: Reading, forces: Forces, body: Body) -> tuple[float, dict[str, Load]]:
    """Dead load on the soil, what the lines bring and the concrete's own weight; and gravity line by line."""
    terms, per_line = [], {}
    lines = reading.house.survey.underfloor.lines
    for id, feet in _lengths(body).items():
        load, line = forces.gravity.lines[id], forces.lines[id]
        part = min(feet / line.length_ft, 1.0)
        per_line[id] = Load(load.dead * part, load.live * part, load.snow * part)
        terms.append(
            given(
                "D",
                max(load.dead * part, 0.0),
                "lb",
                f"gravity take-down to line {lines[id].mark}, {feet:.1f} ft of it",
            )
        )
    own = _own_weight(reading, body)
    if own is not None:
        terms.append(own)
    return add(*terms, symbol="D", label=f"dead load on the soil under body {body.mark}"), per_line


def _own_weight(reading: Reading, body: Body) -> float | None:
    volume = 0.0
    for part in body.parts:
        s = part.segment
        top, above = s.top_width_in.value, s.above_inside_soil_in.value
        if top is None or above is None:
            continue
        below = s.depth_in.value or 0.0
        volume += part.length_ft * top * (max(above, 0.0) + below) / 144
        if s.footing_width_in.value and s.footing_thickness_in.value and s.footing_width_in.value > top:
            volume += part.length_ft * (s.footing_width_in.value - top) * s.footing_thickness_in.value / 144
    if volume <= 0:
        note("the foundation's own weight is not counted: its section is not known")
        return None
    return multiply(
        table_other_densities().read("concrete", symbol="γ_c"),
        given("V_c", volume, "ft^3", "known volume of the body"),
        symbol="D_c",
        unit="lb",
        label="the foundation's own weight",
    )


def _force(forces: Forces, body: Body, direction: Direction) -> float:
    """Strength-level force that comes into the body along a direction."""
    total = 0.0
    for id, feet in _lengths(body).items():
        line = forces.lines[id]
        if line.direction == direction:
            total += float(line.force_lb) * min(feet / line.length_ft, 1.0)
    return total


def _allowable(forces: Forces, force: float, label: str) -> float:
    Q_E = given("Q_E", force, "lb", label)
    return asd_earthquake(horizontal_effect(forces.rho, Q_E))


def _soil(reading: Reading) -> str | None:
    kind = reading.house.survey.site.soil.kind.value
    return _SOILS.get(kind) if kind else None


def _cross(reading: Reading, forces: Forces, body: Body, direction: Direction) -> tuple[float, float | None]:
    """Length of the footings across the force and the least depth of their faces in soil, feet (None: not known)."""
    across = [p for p in body.parts if forces.lines[p.segment.line].direction not in (direction, None)]
    depths = [p.segment.depth_in.value for p in across]
    known = [d for d in depths if d is not None]
    return sum(p.length_ft for p in across), (min(known) / 12 if known and len(known) == len(depths) else None)


def _sliding(reading: Reading, forces: Forces, body: Body, direction: Direction, dead: float, force: float) -> Link:
    address, title = f"body/{body.id}/sliding/{body.id}/{direction}", f"sliding along {direction}"
    soil = _soil(reading)
    if soil is None:
        return cannot(
            address,
            title,
            "body",
            body.id,
            clause="IBC 2021 1806.2",
            reason="the kind of soil is not known, or has no presumptive value",
        )
    widths = [p.segment.footing_width_in.value for p in body.parts]
    contact = sum((w or 0.0) / 12 * p.length_ft for w, p in zip(widths, body.parts, strict=True))
    if soil == "5" and any(w is None for w in widths):
        return cannot(
            address,
            title,
            "body",
            body.id,
            clause="IBC 2021 1806.3.2",
            reason="on clay the width of the footing is needed; it is not known",
        )
    face, depth = _cross(reading, forces, body, direction)
    try:
        with section(address):
            demand = _allowable(forces, force, f"forces of the body's lines along {direction}, strength level")
            counted = scale(
                dead, asd_dead_factor_10(forces.S_DS), symbol="D'", label="dead load that surely stands there"
            )
            area = given("A", contact, "ft^2", "contact area")
            if depth is None or face <= 0:
                note("no embedded face is counted: the depth of the cross footings is not known")
                found = lateral_resistance(soil, counted, area)
            else:
                b = given("b", face, "ft", "length of the footings across the force")
                found = lateral_resistance(
                    soil,
                    counted,
                    area,
                    b,
                    given("d", depth, "ft", "least known depth of their faces"),
                    given("d_0", min(1.0, depth), "ft", "top foot of soil, disturbed, not counted"),
                )
    except OutsideLimits as refused:
        return cannot(address, title, "body", body.id, clause="IBC 2021 1806.3", reason=str(refused))
    return checked(
        address,
        title,
        "body",
        body.id,
        level="allowable",
        unit="lb",
        demand=demand,
        capacity=found.total,
        clause="IBC 2021 1806.3",
        reason=f"{found.rule} under the footing"
        + ("" if depth is None else " and the embedded faces of cross footings"),
        working=(f"body/{body.id}/weight",),
    )


def _overturning(reading: Reading, forces: Forces, body: Body, direction: Direction, dead: float, force: float) -> Link:
    """The body and all that stands on it, about its far edge."""
    address, title = f"body/{body.id}/overturning/{body.id}/{direction}", f"overturning along {direction}"
    axis = 0 if direction == "x" else 1
    places = [end[axis] for p in body.parts for end in (p.start, p.end)]
    extent = (max(places) - min(places)) / 12
    if extent <= 0:
        return cannot(
            address,
            title,
            "body",
            body.id,
            clause="statics",
            applies=False,
            reason=f"the body has no length along {direction}",
        )
    with section(address):
        demand = _allowable(forces, force, f"forces of the body's lines along {direction}, strength level")
        down = max((p.segment.depth_in.value or 0.0) for p in body.parts) / 12
        arm = (
            sum(float(level.force_lb) * level.height_ft for level in forces.levels)
            / (float(forces.base_shear_lb) or 1.0)
            + down
        )
        h = given("h", arm, "ft", "height of the forces' resultant above the footing's bottom")
        part = overturning_factor(True)
        moment = multiply(
            scale(demand, part, symbol="V'", label="overturning at the soil"),
            h,
            symbol="M_o",
            unit="lb-ft",
            label="overturning moment",
        )
        counted = scale(dead, asd_dead_factor_10(forces.S_DS), symbol="D'", label="dead load that surely stands there")
        holding = multiply(
            counted,
            given("B/2", extent / 2, "ft", "half the body's length"),
            symbol="M_r",
            unit="lb-ft",
            label="moment that holds it",
        )
    return checked(
        address,
        title,
        "body",
        body.id,
        level="allowable",
        unit="lb-ft",
        demand=moment,
        capacity=holding,
        clause="ASCE 7-16 12.13.4 and 2.4.5",
        working=(f"body/{body.id}/weight",),
    )


def _bearing(reading: Reading, forces: Forces, body: Body, gravity: dict[str, Load]) -> list[Link]:
    """Pressure under each line's footing, gravity alone and with the line's earthquake force along it."""
    links = []
    lines = reading.house.survey.underfloor.lines
    for id, load in gravity.items():
        address, title = f"body/{body.id}/bearing/{id}/both", f"bearing under line {lines[id].mark}"
        widths = [p.segment.footing_width_in.value for p in body.parts if p.segment.line == id]
        soil, report = _soil(reading), reading.house.survey.site.soil.bearing_psf.value
        if any(w is None for w in widths):
            links.append(
                cannot(
                    address, title, "line", id, clause="IBC 2021 1806.2", reason="the width of the footing is not known"
                )
            )
            continue
        if soil is None and report is None:
            links.append(
                cannot(address, title, "line", id, clause="IBC 2021 1806.2", reason="the kind of soil is not known")
            )
            continue
        links.append(
            _pressure(reading, forces, body, id, load, min(w for w in widths if w is not None) / 12, soil, report)
        )
    return links


def _pressure(
    reading: Reading,
    forces: Forces,
    body: Body,
    id: str,
    load: Load,
    width: float,
    soil: str | None,
    report: float | None,
) -> Link:
    address, mark = f"body/{body.id}/bearing/{id}/both", reading.house.survey.underfloor.lines[id].mark
    title, feet = f"bearing under line {mark}", _lengths(body)[id]
    with section(address):
        if report is not None:
            allowed = given("q_a", report, "psf", "bearing from a soil report")
        else:
            assert soil is not None
            allowed = presumptive_bearing(soil)
        b = given("B", width, "ft", "least width of the footing")
        D = given("D", max(load.dead, 0.0) / feet, "plf", f"dead load on line {mark}")
        L = given("L", load.live / feet + load.snow / feet, "plf", f"floor live and roof snow load on line {mark}")
        still = divide(
            add(D, L, symbol="D + L", label="gravity"), b, symbol="q", unit="psf", label="pressure under gravity"
        )
        greatest_psf, words = still, "gravity governs"
        line = forces.lines[id]
        if line.direction is not None and float(line.force_lb) > 0 and load.dead > 0:
            share = _allowable(
                forces, float(line.force_lb) * min(feet / line.length_ft, 1.0), f"force of line {mark} on this body"
            )
            down = scale(
                given("D_b", load.dead, "lb", "dead load on this stretch"),
                asd_dead_factor_8(forces.S_DS),
                symbol="P",
                label="with the vertical effect",
            )
            drop = (
                max(
                    (p.segment.depth_in.value or 0.0) + max(p.segment.above_inside_soil_in.value or 0.0, 0.0)
                    for p in body.parts
                    if p.segment.line == id
                )
                / 12
            )
            turning = scale(share, overturning_factor(True), symbol="V'", label="overturning at the soil")
            M = multiply(turning, given("h", drop, "ft", "sill above the footing's bottom"), symbol="M", unit="lb-ft")
            try:
                found = pressure_under(float(down), float(M), feet, width)
            except OutsideLimits as refused:
                return cannot(address, title, "line", id, clause="IBC 2021 1806.2", reason=str(refused))
            moved = given(
                "q_E",
                found.greatest,
                "psf",
                f"statics: e = M/P = {found.eccentricity:.2f} ft on {feet:.1f} ft of footing",
            )
            if float(moved) > float(still):
                greatest_psf, words = moved, "with the earthquake along the line"
    return checked(
        address,
        title,
        "line",
        id,
        level="allowable",
        unit="psf",
        demand=greatest_psf,
        capacity=allowed,
        clause="IBC 2021 Table 1806.2",
        reason=words,
        working=(f"body/{body.id}/weight",),
    )
