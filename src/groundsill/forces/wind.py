"""Wind on the house along x and y and its share on every braced line, to say where it asks more than the earthquake.

The house is seen from the windward side as the survey draws it: walls of every storey from the base up, gable ends,
slopes. Each shows once, and has the net pressure of the directional procedure, push and pull together; the floor brings
it to the lines as a flexible one, by the strip of house behind each piece. Where the survey leaves something open the
higher is taken, and said. Left out: the torsional cases, uplift, and the shelter of other houses.

By every edition of ASCE 7 wind is worked out by the 2016 one: the figures of the newer chapter are not held.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import cos, radians
from typing import Literal

from groundsill.forces.levels import base_z_in, levels_of, ordered_storeys, outline_of
from groundsill.forces.lines import DIRECTIONS, LineForce
from groundsill.forces.reading import XY, Reading, doubted
from groundsill.forces.share import Direction, flexible_shares
from groundsill.forces.weights import WeightItem
from groundsill.house.building import RoofPart
from groundsill.mechanics.plan import area, rotate
from groundsill.mechanics.silhouette import Face, Strip, strips_seen
from groundsill.standards.asce7 import Asce7
from groundsill.standards.asce7_16 import SOURCE as ASCE_7_16
from groundsill.standards.asce7_16.wind import FLATTEST_SLOPE, least_force, roof_pressure, wall_pressure
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import add, condition, given, greatest, multiply, resultant, scale
from groundsill.working.value import Mark

__all__ = ["Lateral", "LineWind", "Wind", "WindAlong", "wind_on"]

Lateral = Literal["earthquake", "wind"]

_ANGLES: dict[Direction, float] = {"x": 0.0, "y": 90.0}
_MEETS = cos(radians(45.0))  # rafters within 45 degrees of the wind: it meets the slope
_STEEP = 0.2  # on steeper ground a hill may speed the wind up: the topographic factor must then be told
_LEAST_WALL_PSF, _LEAST_ROOF_PSF = 16.0, 8.0


@dataclass(frozen=True, slots=True)
class WindAlong:
    """Wind along one direction on what stands above the base, strength level.

    ``across_ft`` and ``along_ft`` are the house's size across and along the wind; areas are what shows from the
    windward side, gable ends among the walls. ``height_ft`` is that of the force above the base, ``governs`` the clause
    that gave ``W_lb``.
    """

    direction: Direction
    across_ft: float
    along_ft: float
    q_h_psf: float
    p_wall_psf: float
    wall_ft2: float
    roof_ft2: float
    W_lb: float
    height_ft: float
    governs: str


@dataclass(frozen=True, slots=True)
class LineWind:
    """Wind on one line along itself: at strength level, and beside the earthquake at allowable-stress level.

    ``earthquake_lb`` is that of the line by a flexible floor, redundancy included; ``governs`` says that wind asks
    more.
    """

    line: str
    mark: str
    W_lb: float
    allowable_lb: float
    earthquake_lb: float
    governs: bool


@dataclass(frozen=True, slots=True)
class Wind:
    """Wind on the house: what it was worked out from, along each direction, and on each line that is relied on."""

    document: str
    speed_mph: float
    exposure: str
    K_zt: float
    roof_height_ft: float
    along: dict[Direction, WindAlong]
    lines: dict[str, LineWind]
    remarks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Site:
    """Speed, exposure and topography as taken, the roof's mean height above the ground, and what must be said of it."""

    V: float
    exposure: str
    K_zt: float
    h: float
    remarks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Shown:
    """A face of the house: ``slope`` is None for a wall or a gable end."""

    face: Face
    slope: float | None


def wind_on(reading: Reading, rules: Asce7, rho: float, lines: Mapping[str, LineForce]) -> tuple[Wind | None, str]:
    """Wind on the house and its lines; or None, and what is missing for it, with the clause that asks for it."""
    with section("forces/wind"):
        site = _site(reading)
        if isinstance(site, str):
            return None, site
        try:
            found = {direction: _along(reading, site, direction) for direction in DIRECTIONS}
        except OutsideLimits as refused:
            return None, str(refused)
    shared = {d: _fractions(reading, strips, forces, d) for d, (_, strips, forces) in found.items()}
    along = {direction: wind for direction, (wind, _, _) in found.items()}
    skewed = any(line.relied_on and line.direction is None for line in lines.values())
    by_line = {
        id: _line(rules, rho, line, along, {d: shared[d].get(id, 0.0) for d in DIRECTIONS}, skewed)
        for id, line in lines.items()
        if line.relied_on
    }
    remarks = [*site.remarks, *_roofs_untold(reading)]
    if rules.document != ASCE_7_16.id:
        remarks.append(
            f"wind is worked out by {ASCE_7_16.short}: the wind figures of {rules.source.short} are not held"
        )
    wind = Wind(ASCE_7_16.id, site.V, site.exposure, site.K_zt, site.h, along, by_line, tuple(remarks))
    return wind, ""


# ---- What the survey says -------------------------------------------------------------------------------------------


def _site(reading: Reading) -> _Site | str:
    """What wind is worked out from, or what is missing, in words."""
    site, cite = reading.house.survey.site, ASCE_7_16.cite
    if site.wind_mph.value is None:
        return f"no basic wind speed is in the survey: survey.site.wind_mph, {cite('26.5')}"
    if site.exposure is None:
        return f"a wind speed is in the survey, but no exposure: survey.site.exposure, {cite('26.7')}"
    steep = site.slope_rise_per_run.value
    if site.K_zt.value is None and steep is not None and steep > _STEEP:
        return (
            f"the ground falls {steep:.2f} to 1: a hill may speed the wind up, and the topographic factor is not in "
            f"the survey: survey.site.K_zt, {cite('26.8')}"
        )
    ground = _ground_ft(reading)
    if ground is None:
        return (
            "how high the foundation stands out of the soil was measured nowhere, so no height above the ground is "
            f"known: survey.foundation.segments, above_outside_soil_in, {cite('26.10')}"
        )
    V = reading.number("survey.site.wind_mph", site.wind_mph, "V", "mph", "basic wind speed")
    K_zt = reading.number("survey.site.K_zt", site.K_zt, "K_zt", "1", "topographic factor")
    assert V is not None
    remarks = []
    if K_zt is None:
        taken = Mark("assumed range", "topographic factor of wind: 1, no hill, ridge or bank that stands out")
        K_zt = given("K_zt", 1.0, "1", "topographic factor: no hill, ridge or bank that stands out", (taken,))
        remarks.append("the topographic factor of wind is not in the survey and is taken as 1: survey.site.K_zt")
    up = max(_mean_roof_ft(reading))
    facts = _height_facts(reading)
    h = given("h", up - ground, "ft", "mean roof height above the lowest ground at the foundation", facts)
    return _Site(V, site.exposure, K_zt, h, tuple(remarks))


def _ground_ft(reading: Reading) -> float | None:
    """The lowest ground outside the foundation, above the base, ft."""
    base = base_z_in(reading)
    found = [
        (s.top_z_in.value - s.above_outside_soil_in.value - base) / 12
        for s in reading.house.survey.foundation.segments.values()
        if s.top_z_in.value is not None and s.above_outside_soil_in.value is not None
    ]
    return min(found, default=None)


def _height_facts(reading: Reading) -> frozenset[Mark]:
    """The marks of what says how high the foundation stands, and how far out of the ground."""
    paths = (f"survey.foundation.segments.{id}" for id in reading.house.survey.foundation.segments)
    return frozenset[Mark]().union(*(reading.marked(p, "top_z_in", "above_outside_soil_in") for p in paths))


def _top_ft(reading: Reading, storey: str) -> float:
    """The top of a storey's walls above the base, ft."""
    found = reading.house.survey.building.storeys[storey]
    return (found.floor_z_in + found.height_in - base_z_in(reading)) / 12


def _mean_roof_ft(reading: Reading) -> Iterator[float]:
    """The mean height of each part of the roof above the base (a flat one's eave), or of the walls without a roof."""
    for _, part in reading.in_order(reading.house.survey.building.roof):
        rise = _rise_ft(part) if part.slope_rise_per_run > FLATTEST_SLOPE else 0.0
        yield _top_ft(reading, part.storey) + rise / 2
    yield from (_top_ft(reading, id) for id, _ in ordered_storeys(reading) if not reading.house.survey.building.roof)


def _rise_ft(part: RoofPart) -> float:
    """Eave to ridge: over half the length along the rafters under a ridge, over all of it under one slope."""
    places = [rotate((p.x_in, p.y_in), -part.span_deg)[0] for p in part.outline]
    long = (max(places) - min(places)) / 12
    return part.slope_rise_per_run * long / (2 if part.shape in ("gable", "hip") else 1)


def _roofs_untold(reading: Reading) -> Iterator[str]:
    """Parts of the roof whose shape nobody told."""
    parts = reading.in_order(reading.house.survey.building.roof)
    untold = [part.mark or id for id, part in parts if part.shape is None]
    if untold:
        yield (
            f"for wind roof {', '.join(untold)} is taken as one slope from edge to edge, higher than under a ridge: "
            "tell its shape, survey.building.roof"
        )


# ---- Along one direction --------------------------------------------------------------------------------------------


def _along(
    reading: Reading, site: _Site, direction: Direction
) -> tuple[WindAlong, tuple[Strip, ...], tuple[float, ...]]:
    """Wind along one direction, with the strips of the view and the force on each."""
    across, length = _extents(reading, direction)
    with section(f"forces/wind/{direction}"):
        B = given("B", across[1] - across[0], "ft", f"size of the house across wind along {direction}")
        L = given("L", length, "ft", f"size of the house along wind along {direction}")
        pressure = wall_pressure(site.V, site.exposure, site.h, B, L, site.K_zt)
        shown = _faces(reading, direction)
        strips = strips_seen([each.face for each in shown])
        high = _height_facts(reading)
        areas = {
            slope: sum(part[0] for s in strips for n, part in s.shown.items() if shown[n].slope == slope)
            for slope in dict.fromkeys(each.slope for each in shown)
        }
        walls = given("A_w", areas.pop(None, 0.0), "ft^2", f"walls and gable ends that show along {direction}", high)
        forces = [multiply(pressure.p_wall, walls, symbol="F_wall", unit="lb", label="wind on walls and gable ends")]
        psf: dict[float | None, float] = {None: float(pressure.p_wall)}
        slopes = []
        for slope, size in areas.items():
            assert slope is not None
            label = f"slopes of {slope:g} that show along {direction}, above walls and gable ends"
            slopes.append(given("A_r", size, "ft^2", label))
            p_roof = roof_pressure(pressure.q_h, site.h, L, given("slope", slope, "1", "survey: slope of the roof"))
            forces.append(multiply(p_roof, slopes[-1], symbol="F_roof", unit="lb", label="wind on these slopes"))
            psf[slope] = float(p_roof)
        F = add(*forces, symbol="F", label="wind by the directional procedure", unit="lb")
        roofs = add(*slopes, symbol="A_r", label="all slopes", unit="ft^2")
        F_min = least_force(walls, roofs)
        W = greatest(F, F_min, symbol="W", label=f"wind along {direction}, strength level")
    governs = "27.1.5" if F_min > F else "27.3.1"
    if F_min > F:
        psf = {slope: _LEAST_WALL_PSF if slope is None else _LEAST_ROOF_PSF for slope in psf}
    each = [[(psf[shown[n].slope], part) for n, part in strip.shown.items()] for strip in strips]
    by_strip = tuple(sum(p * a for p, (a, _) in parts) for parts in each)
    moment = sum(p * m for parts in each for p, (_, m) in parts)
    height = moment / sum(by_strip) if sum(by_strip) else 0.0
    wind = WindAlong(
        direction, B, L, pressure.q_h, pressure.p_wall, walls, roofs, W, doubted(height, high, unit="ft"), governs
    )
    return wind, strips, by_strip


def _extents(reading: Reading, direction: Direction) -> tuple[tuple[float, float], float]:
    """From where to where the storeys reach across a direction, and how long they are along it, ft."""
    points = [
        rotate(point, -_ANGLES[direction])
        for _, storey in ordered_storeys(reading)
        for point in outline_of(reading, storey.outline)
    ]
    us, vs = [u / 12 for u, _ in points], [v / 12 for _, v in points]
    return (min(vs), max(vs)), max(us) - min(us)


def _faces(reading: Reading, direction: Direction) -> list[_Shown]:
    """Walls, then gable ends, then slopes, as seen along a direction; what shows first is not counted again."""
    walls, ends, slopes = [], [], []
    for id, storey in ordered_storeys(reading):
        across = [rotate(p, -_ANGLES[direction])[1] / 12 for p in outline_of(reading, storey.outline)]
        top = _top_ft(reading, id)
        walls.append(_Shown(Face(min(across), max(across), 0.0, top, top), None))
    for _, part in reading.in_order(reading.house.survey.building.roof):
        across = [rotate((p.x_in, p.y_in), -_ANGLES[direction])[1] / 12 for p in part.outline]
        start, end, eave = min(across), max(across), _top_ft(reading, part.storey)
        ridge = eave + _rise_ft(part)
        if part.shape == "hip" or abs(cos(radians(part.span_deg - _ANGLES[direction]))) >= _MEETS:
            slopes.append(_Shown(Face(start, end, eave, ridge, ridge), part.slope_rise_per_run))
        elif part.shape == "gable":
            middle = (start + end) / 2
            ends.append(_Shown(Face(start, middle, eave, eave, ridge), None))
            ends.append(_Shown(Face(middle, end, eave, ridge, eave), None))
        else:  # which of its sides is high is not told
            ends.append(_Shown(Face(start, end, eave, ridge, ridge), None))
    return [*walls, *ends, *slopes]


# ---- On the lines ---------------------------------------------------------------------------------------------------


def _fractions(
    reading: Reading, strips: Sequence[Strip], forces: Sequence[float], direction: Direction
) -> dict[str, float]:
    """Each line's part of the wind along a direction: every strip's force spread over the floor behind it."""
    levels = levels_of(reading)
    outlines = [outline_of(reading, s.outline) for id, s in ordered_storeys(reading) if levels[id] == 0]
    items = []
    for strip, force in zip(strips, forces, strict=True):
        behind = [clipped for outline in outlines if len(clipped := _clipped(outline, strip, direction)) > 2]
        whole = sum(abs(area(points)) for points in behind)
        for points in behind:
            part = force * abs(area(points)) / whole if whole else 0.0
            if part > 0:
                items.append(WeightItem("wind", "", "wall", "area", points, part, ((0, 1.0),), 0.0, 0.0))
    return {id: share.fraction.get(0, 0.0) for id, share in flexible_shares(reading, items, direction).shares.items()}


def _clipped(outline: Sequence[XY], strip: Strip, direction: Direction) -> tuple[XY, ...]:
    """What of an outline lies behind a strip of the view, inches on the plan."""
    turned = [rotate(point, -_ANGLES[direction]) for point in outline]
    for bound, side in ((12 * strip.start, 1.0), (12 * strip.end, -1.0)):
        kept: list[XY] = []
        for (u1, v1), (u2, v2) in zip(turned, [*turned[1:], *turned[:1]], strict=True):
            d1, d2 = side * (v1 - bound), side * (v2 - bound)
            if d1 >= 0:
                kept.append((u1, v1))
            if d1 * d2 < 0:
                kept.append((u1 + (u2 - u1) * d1 / (d1 - d2), bound))
        turned = kept
    return tuple(rotate(point, _ANGLES[direction]) for point in turned)


def _line(
    rules: Asce7,
    rho: float,
    line: LineForce,
    along: Mapping[Direction, WindAlong],
    fractions: Mapping[Direction, float],
    skewed: bool,
) -> LineWind:
    """Wind on one line from its worst direction (among skewed lines any), beside the earthquake on it."""
    with section(f"line/{line.line}/wind"):
        parts = []
        for direction in DIRECTIONS:
            if abs(fractions[direction]) < 1e-9:
                continue
            label = f"share of line {line.mark} in wind along {direction}, flexible floor"
            part = given("α", abs(fractions[direction]), "1", label)
            parts.append(scale(along[direction].W_lb, part, symbol="W", label=f"wind on line {line.mark}"))
        if len(parts) > 1 and skewed:
            W = resultant(parts[0], parts[1], symbol="W", label="worst direction of the wind")
        else:
            W = max(parts, key=float, default=0.0)
        wind = rules.effects.asd_wind(W)
        quake = rules.effects.asd_earthquake(rules.effects.horizontal_effect(rho, line.force_lb))
        governs = condition("wind asks more of the line than the earthquake", wind > quake, wind, quake)
    return LineWind(line.line, line.mark, W, wind, quake, bool(governs))
