"""The earthquake force of the whole house and its share on every braced line (ASCE 7-16, equivalent lateral force).

In: a settled survey. Out: :class:`Forces`, strength level throughout. Redundancy, 0.7 and overstrength are applied
where a link is checked, as steps of their own, never here.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from groundsill.forces.gravity import TakeDown, take_down
from groundsill.forces.reading import Reading, line_length_in
from groundsill.forces.share import Direction, LineShare, direction_of, distinct_places, line_shares, reliance
from groundsill.forces.weights import BASE, WeightItem, level_names, levels_of, ordered_storeys, weight_items
from groundsill.house.survey import in_order
from groundsill.mechanics.plan import area
from groundsill.standards.asce7_16.elf import (
    approximate_period,
    base_shear,
    seismic_coefficient,
    vertical_distribution,
)
from groundsill.standards.asce7_16.ground_motion import SiteValues, design_category, importance_factor, site_values
from groundsill.standards.asce7_16.systems import SystemFactors, redundancy, system_factors
from groundsill.standards.asce7_16.weight import snow_weight
from groundsill.working.errors import BadSurvey, Fault
from groundsill.working.sheet import section
from groundsill.working.steps import add, given, multiply, scale

__all__ = ["Forces", "LevelForces", "LineForce", "MissingLine", "work_out"]


@dataclass(frozen=True, slots=True)
class LevelForces:
    """One level: its height above the base, seismic weight and force (strength)."""

    name: str
    height_ft: float
    weight_lb: float
    C_vx: float
    force_lb: float


@dataclass(frozen=True, slots=True)
class LineForce:
    """The force of one line along itself, at strength level, with the share of each level it comes from."""

    line: str
    mark: str
    direction: Direction | None
    relied_on: bool
    reason: str
    shares: tuple[float, ...]
    collected: tuple[float, ...]
    force_lb: float
    length_ft: float


@dataclass(frozen=True, slots=True)
class MissingLine:
    """A direction in which the lines cannot hold the house in equilibrium, in words: a line is missing."""

    direction: Direction
    reason: str


@dataclass(frozen=True, slots=True)
class Forces:
    """Everything about force that the chains stand on."""

    site: SiteValues
    category: str
    system: SystemFactors
    S_DS: float
    rho: float
    period_s: float
    C_s: float
    C_s_governs: str
    weight_lb: float
    base_shear_full_lb: float
    factor: float
    base_shear_lb: float
    base: str
    items: tuple[WeightItem, ...]
    levels: tuple[LevelForces, ...]
    lines: dict[str, LineForce]
    missing: tuple[MissingLine, ...]
    gravity: TakeDown
    warnings: tuple[str, ...]


def work_out(reading: Reading) -> Forces:
    """Weights, base shear, force of each level and of each line, and the gravity take-down.

    Raises:
        BadSurvey: when the survey lacks what no force can be worked out without (ground motion, a storey).
    """
    _must_have(reading)
    house = reading.house
    hazard = house.survey.site.hazard
    assert hazard is not None
    with section("forces/site"):
        S_S = given("S_S", hazard.S_S, "g", f"site: {hazard.source}")
        S_1 = given("S_1", hazard.S_1, "g", f"site: {hazard.source}")
        site = site_values(S_S, S_1, hazard.site_class)
        S_DS = _design_short(hazard.S_DS, site)
        category = design_category(S_DS, site.S_D1, S_1, house.survey.site.risk_category)
        system = system_factors(house.choices.system)
        rho = _redundancy(reading, category)
    with section("forces/weights"):
        dead = weight_items(reading)
        items = (*dead, *_snow(reading, dead))
        weights, heights = _levels(reading, items)
        W = add(*weights, symbol="W", label="effective seismic weight, all levels above the base")
    with section("forces/base-shear"):
        period = approximate_period(given("h_n", max(heights), "ft", "height of the highest level above the base"))
        I_e = importance_factor(house.survey.site.risk_category)
        T_L = given("T_L", hazard.T_L, "s", f"site: {hazard.source}")
        C = seismic_coefficient(S_DS, site.S_D1, S_1, period, T_L, system.R, I_e)
        full = base_shear(C.C_s, W)
        factor = given("f", house.choices.force_factor, "1", f"choice: {house.choices.force_reason or 'full force'}")
        V = full if house.choices.force_factor == 1 else scale(full, factor, symbol="V", label="reduced base shear")
        distribution = vertical_distribution(V, period, weights, heights)
    names = level_names(reading)
    levels = tuple(
        LevelForces(name, d.h_x, w, d.C_vx, d.F_x) for name, w, d in zip(names, weights, distribution, strict=True)
    )
    lines, missing = _lines(reading, items, levels)
    return Forces(
        site,
        category,
        system,
        S_DS,
        rho,
        period,
        C.C_s,
        C.governs,
        W,
        full,
        house.choices.force_factor,
        V,
        _base_words(reading),
        items,
        levels,
        lines,
        missing,
        take_down(reading, dead),
        _warnings(reading, site),
    )


def _must_have(reading: Reading) -> None:
    survey = reading.house.survey
    faults = []
    if survey.site.hazard is None:
        faults.append(
            Fault("survey.site.hazard", "nothing", "ground motion (S_S, S_1, site class) is needed for any force")
        )
    if not survey.building.storeys:
        faults.append(Fault("survey.building.storeys", "none", "at least one storey is needed"))
    if not survey.underfloor.lines:
        faults.append(Fault("survey.underfloor.lines", "none", "at least one braced line is needed"))
    if faults:
        raise BadSurvey(tuple(faults))


def _design_short(entered: float | None, site: SiteValues) -> float:
    if entered is not None:
        return given("S_DS", entered, "g", "entered with the site")
    if site.S_DS is None:
        allowed = "the site class has no coefficient at this ground motion (ASCE 7-16 11.4.8): enter S_DS from a study"
        raise BadSurvey((Fault("survey.site.hazard.S_DS", "nothing", allowed),))
    return site.S_DS


def _redundancy(reading: Reading, category: str) -> float:
    choices = reading.house.choices
    if choices.redundancy == 1.0 and not choices.redundancy_reason.strip():
        allowed = "a redundancy factor of 1.0 is taken only with its printed reason (ASCE 7-16 12.3.4.2)"
        raise BadSurvey((Fault("choices.redundancy_reason", "nothing", allowed),))
    claimed = "b" if choices.redundancy == 1.0 else ""
    return redundancy(category, claimed, choices.redundancy_reason)


def _snow(reading: Reading, items: Sequence[WeightItem]) -> tuple[WeightItem, ...]:
    """Roof snow that counts in the seismic weight, part by part; none at or below the code's threshold."""
    snow = reading.number("survey.site.snow_psf", reading.house.survey.site.snow_psf, "p_f", "psf", "roof snow load")
    if snow is None:
        return ()
    psf = snow_weight(snow)
    if psf <= 0:
        return ()
    found = []
    for item in (item for item in items if item.kind == "roof"):
        plan = given("A", abs(area(item.points)) / 144, "ft^2", f"plan area: {item.label}")
        weight = multiply(psf, plan, symbol="W_s", unit="lb", label=f"snow on {item.label}")
        found.append(
            WeightItem(f"snow on {item.label}", item.of, "roof", "area", item.points, weight, item.levels, psf, plan)
        )
    return tuple(found)


def _base_z_in(reading: Reading) -> float:
    """The base: the mean height of the foundation's top under the lines, weighted by length."""
    found = [(s.top_z_in.value, s.to_in - s.from_in) for s in reading.house.survey.foundation.segments.values()]
    known = [(z, length) for z, length in found if z is not None and length > 0]
    total = sum(length for _, length in known)
    return sum(z * length for z, length in known) / total if total else 0.0


def _base_words(reading: Reading) -> str:
    datum = reading.house.survey.building.datum
    return f"the base is the mean top of the foundation, {_base_z_in(reading):.1f} in. above {datum}"


def _levels(reading: Reading, items: Sequence[WeightItem]) -> tuple[list[float], list[float]]:
    """Seismic weight and height above the base of each level."""
    base = _base_z_in(reading)
    storeys, levels = ordered_storeys(reading), levels_of(reading)
    count = max(levels.values()) + 2
    heights = [0.0] * count
    for id, storey in storeys:
        heights[levels[id]] = max(heights[levels[id]], (storey.floor_z_in - base) / 12)
        top = levels[id] + 1
        heights[top] = max(heights[top], (storey.floor_z_in + storey.height_in - base) / 12)
    weights = []
    for level, name in enumerate(level_names(reading)):
        parts = []
        for item in items:
            share = sum(part for at, part in item.levels if at == level)
            if item.seismic and share and level != BASE:
                parts.append(
                    item.weight_lb
                    if share == 1
                    else scale(item.weight_lb, share, symbol="W", label=f"{item.label}, part at this level")
                )
        weights.append(add(*parts, symbol=f"w_{level}", label=f"seismic weight at the {name}"))
    return weights, [max(h, 0.0) for h in heights]


def _lines(
    reading: Reading, items: Sequence[WeightItem], levels: Sequence[LevelForces]
) -> tuple[dict[str, LineForce], tuple[MissingLine, ...]]:
    by_line: dict[str, LineShare] = {}
    missing = []
    directions: tuple[Direction, ...] = ("x", "y")
    for direction in directions:
        shares = line_shares(reading, items, direction)
        by_line |= shares
        places = distinct_places(reading, shares, direction)
        if places < 2:
            found = (
                "no line" if not shares else "only one line" if len(shares) == 1 else "nothing but lines in one line"
            )
            missing.append(MissingLine(direction, f"{found} is relied on along {direction}: a line is missing there"))
    found_lines = {}
    for id, line in in_order(reading.house.survey.underfloor.lines):
        with section(f"line/{id}/force"):
            relied = reliance(reading, id)
            share = by_line.get(id)
            parts, fractions, collected = [], [], []
            for place, level in enumerate(levels):
                fraction = share.fraction.get(place, 0.0) if share else 0.0
                fractions.append(fraction)
                collected.append(share.collected.get(place, 0.0) if share else 0.0)
                if share:
                    label = f"{line.mark}: share of the {level.name}, by the floor and roof area it holds"
                    part = given("α", fraction, "1", label)
                    parts.append(scale(level.force_lb, part, symbol=f"F_{place}", label=label))
            force = add(*parts, symbol="V_line", label=f"force of line {line.mark}, strength level") if parts else 0.0
            if force < 0:  # the floor's overhang pulls the line the other way; the earthquake comes both ways
                force = scale(force, -1.0, symbol="V_line", label="its size: the force comes both ways")
        found_lines[id] = LineForce(
            id,
            line.mark,
            direction_of(reading, line),
            relied.relied_on,
            relied.reason,
            tuple(fractions),
            tuple(collected),
            force,
            line_length_in(reading.house, line) / 12,
        )
    return found_lines, tuple(missing)


def _warnings(reading: Reading, site: SiteValues) -> tuple[str, ...]:
    survey = reading.house.survey
    found = list(site.warnings)
    slope = survey.site.slope_rise_per_run.value
    if slope is None:
        found.append(
            "the slope of the ground is not known: steeper than 1:3 is a hillside house, which this work does not cover"
        )
    elif slope > 1 / 3:
        found.append(
            f"hillside: the ground falls {slope:.2f} to 1, steeper than 1:3. Results are incomplete until the floor's "
            "anchorage to the uphill foundation and the tall downhill bents are checked, or an engineer signs off"
        )
    for _, chimney in in_order(survey.building.chimneys):
        if chimney.tied.value is None:
            found.append(f"chimney {chimney.mark}: not known whether it is tied to the framing; its weight is counted")
    return tuple(found)
