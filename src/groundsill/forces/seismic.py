"""The earthquake force of the whole house and its share on every braced line (ASCE 7, equivalent lateral force).

In: a settled survey. Out: :class:`Forces`, strength level throughout, by the edition of ASCE 7 that the house goes by.
Redundancy, 0.7 and overstrength are applied where a link is checked, as steps of their own, never here.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass

from groundsill.forces.cautions import cautions, cautions_of_wind, irregular
from groundsill.forces.gravity import TakeDown, take_down
from groundsill.forces.levels import base_words, base_z_in, level_names, levels_of, ordered_storeys
from groundsill.forces.lines import LineForce, MissingLine, line_forces
from groundsill.forces.reading import Reading, doubted
from groundsill.forces.weights import BASE, WeightItem, weight_items
from groundsill.forces.wind import Wind, wind_on
from groundsill.house.survey import in_order
from groundsill.mechanics.plan import area
from groundsill.standards.asce7 import Asce7, SeismicCoefficient, SiteValues, SystemFactors, rules_of
from groundsill.work.basis import basis_of
from groundsill.work.document import House
from groundsill.working.errors import BadSurvey, Fault, OutsideLimits, UnknownFormula
from groundsill.working.sheet import section
from groundsill.working.steps import add, given, multiply, scale
from groundsill.working.value import Mark

__all__ = ["Forces", "LevelForces", "LineForce", "MissingLine", "load_rules", "work_out"]

_HAZARD = "survey.site.hazard"


@dataclass(frozen=True, slots=True)
class LevelForces:
    """One level: its height above the base, seismic weight and force (strength)."""

    name: str
    height_ft: float
    weight_lb: float
    C_vx: float
    force_lb: float


@dataclass(frozen=True, slots=True)
class Forces:
    """Everything about force that the chains stand on.

    ``S_DS`` is the one for C_s and for vertical effects, after the cap of 12.8.1.3 where it was chosen; ``site`` holds
    the value before it, by which the category goes. ``edition`` is the one of ASCE 7 that all of it, and every check
    that stands on it, is worked out by. ``wind`` is None where wind was not looked at, and ``wind_lacks`` says why.
    """

    edition: str
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
    wind: Wind | None = None
    wind_lacks: str = ""

    @property
    def rules(self) -> Asce7:
        """What that edition answers to the questions of a check."""
        return rules_of(self.edition)


def load_rules(house: House) -> Asce7:
    """The rules of the edition of ASCE 7 that a house goes by.

    Raises:
        BadSurvey: when no force is worked out by that edition.
    """
    edition = basis_of(house).edition("asce7")
    try:
        return rules_of(edition)
    except UnknownFormula as refused:
        raise BadSurvey((Fault("basis.overrides.asce7", edition, str(refused)),)) from None


def work_out(reading: Reading) -> Forces:
    """Weights, base shear, force of each level and of each line, and the gravity take-down.

    Raises:
        BadSurvey: when the survey lacks what no force can be worked out without (ground motion, a storey), or holds
            figures that the standard cannot be asked about; each fault names its field.
    """
    house = reading.house
    rules = load_rules(house)
    _must_have(reading, rules)
    with section("forces/site"):
        site, category, system, rho = _basis(reading, rules)
    with section("forces/weights"):
        dead = weight_items(reading)
        items = (*dead, *_snow(reading, rules, dead))
        weights, heights = _levels(reading, items)
        W = add(*weights, symbol="W", label="effective seismic weight, all levels above the base")
        if W <= 0:
            raise BadSurvey((Fault("survey.building", "no weight above the base", "floors, walls, a roof that weigh"),))
    with section("forces/base-shear"):
        period = rules.approximate_period(_height(reading, heights))
        S_DS, C = _coefficient(reading, rules, site, period, rho, system.R)
        full = rules.base_shear(C.C_s, W)
        factor = given("f", house.choices.force_factor, "1", f"choice: {house.choices.force_reason or 'full force'}")
        V = full if house.choices.force_factor == 1 else scale(full, factor, symbol="V", label="reduced base shear")
        with _asked("survey.building.storeys", "heights and weights"):
            distribution = rules.vertical_distribution(V, period, weights, heights)
    names = level_names(reading)
    levels = tuple(
        LevelForces(name, d.h_x, w, d.C_vx, d.F_x) for name, w, d in zip(names, weights, distribution, strict=True)
    )
    lines, missing, hanging = line_forces(reading, items, levels)
    wind, lacks = wind_on(reading, rules, rho, lines)
    relied_on = [id for id, line in lines.items() if line.relied_on]
    return Forces(
        rules.document,
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
        base_words(reading),
        items,
        levels,
        lines,
        missing,
        take_down(reading, dead),
        (*cautions(reading, rules, site, system, relied_on), *hanging, *cautions_of_wind(wind)),
        wind,
        lacks,
    )


@contextmanager
def _asked(path: str, value: str) -> Iterator[None]:
    """What a standard refuses to be asked is a fault of the survey, at the field it came from."""
    try:
        yield
    except OutsideLimits as refused:
        raise BadSurvey((Fault(path, value, str(refused)),)) from refused


def _must_have(reading: Reading, rules: Asce7) -> None:
    survey = reading.house.survey
    faults = []
    hazard = survey.site.hazard
    if hazard is None:
        faults.append(
            Fault("survey.site.hazard", "nothing", "ground motion (S_S, S_1, site class) is needed for any force")
        )
    elif hazard.S_DS is None and not rules.coefficients:
        faults.append(Fault(f"{_HAZARD}.S_DS", "nothing", _entered(reading, rules)))
    if not survey.building.storeys:
        faults.append(Fault("survey.building.storeys", "none", "at least one storey is needed"))
    if not survey.underfloor.lines:
        faults.append(Fault("survey.underfloor.lines", "none", "at least one braced line is needed"))
    choices = reading.house.choices
    if choices.force_factor < 1 and not choices.force_reason.strip():
        allowed = f"less than the whole force ({choices.force_factor:g} of it) is taken only with its printed reason"
        faults.append(Fault("choices.force_reason", "nothing", allowed))
    if faults:
        raise BadSurvey(tuple(faults))


def _entered(reading: Reading, rules: Asce7) -> str:
    """What to enter where the edition has no site coefficients, and where the survey may hold it already."""
    site = reading.house.survey.site
    assert site.hazard is not None
    kept = [id for id, values in in_order(site.design_values) if values.edition == rules.document]
    beside = f"; survey.site.design_values.{kept[0]} holds one kept to compare" if kept else ""
    return (
        f"{rules.cite('11.4')} has no site coefficients: enter S_DS (and S_D1) for site class {site.hazard.site_class} "
        f"by this edition, from the design-value service or a study{beside}"
    )


def _basis(reading: Reading, rules: Asce7) -> tuple[SiteValues, str, SystemFactors, float]:
    """Ground motion, category, system factors and redundancy."""
    hazard, system = reading.house.survey.site.hazard, reading.house.choices.system
    assert hazard is not None
    S_S = given("S_S", hazard.S_S, "g", f"site: {hazard.source}")
    S_1 = given("S_1", hazard.S_1, "g", f"site: {hazard.source}")
    site = _site(reading, rules, S_S, S_1)
    assert site.S_DS is not None
    category = rules.design_category(site.S_DS, site.S_D1, S_1, reading.house.survey.site.risk_category)
    with _asked("choices.system", repr(system)):
        factors = rules.system_factors(system)
    return site, category, factors, _redundancy(reading, rules, category)


def _site(reading: Reading, rules: Asce7, S_S: float, S_1: float) -> SiteValues:
    """Design ground motion of the place; what was entered with the site stands in place of what the tables give."""
    hazard = reading.house.survey.site.hazard
    assert hazard is not None
    S_DS = None if hazard.S_DS is None else given("S_DS", hazard.S_DS, "g", "entered with the site")
    S_D1 = None if hazard.S_D1 is None else given("S_D1", hazard.S_D1, "g", "entered with the site")
    with _asked(_HAZARD, f"site class {hazard.site_class}, S_S {hazard.S_S:g} g, S_1 {hazard.S_1:g} g"):
        site = rules.site(S_S, S_1, hazard.site_class, S_DS, S_D1)
    if site.S_DS is None:
        where = rules.cite("11.4.8")
        allowed = f"the site class has no coefficient at this ground motion ({where}): enter S_DS from a study"
        raise BadSurvey((Fault(f"{_HAZARD}.S_DS", "nothing", allowed),))
    return site


def _height(reading: Reading, heights: Sequence[float]) -> float:
    """The height of the highest level above the base, ft."""
    if max(heights) > 0:
        return given("h_n", max(heights), "ft", "height of the highest level above the base")
    id, storey = ordered_storeys(reading)[-1]
    allowed = f"a storey whose top stands above the base; {base_words(reading)}"
    raise BadSurvey((Fault(f"survey.building.storeys.{id}.floor_z_in", f"{storey.floor_z_in:g} in.", allowed),))


def _coefficient(
    reading: Reading, rules: Asce7, site: SiteValues, period: float, rho: float, R: float
) -> tuple[float, SeismicCoefficient]:
    """S_DS as it stands in C_s, and C_s."""
    hazard = reading.house.survey.site.hazard
    assert hazard is not None
    I_e = rules.importance_factor(reading.house.survey.site.risk_category)
    T_L = given("T_L", hazard.T_L, "s", f"site: {hazard.source}")
    S_DS = _short_period(reading, rules, site, period, rho)
    with _asked(_HAZARD, f"S_DS {float(S_DS):g} g, S_1 {hazard.S_1:g} g"):
        entered = hazard.S_D1 is not None
        return S_DS, rules.seismic_coefficient(site, S_DS, period, T_L, R, I_e, entered)


def _short_period(reading: Reading, rules: Asce7, site: SiteValues, period: float, rho: float) -> float:
    """S_DS for C_s and vertical effects: where it was chosen under the cap of 12.8.1.3, every condition recorded.

    Raises:
        BadSurvey: naming each condition of the cap that is not met.
    """
    choices, hazard = reading.house.choices, reading.house.survey.site.hazard
    assert hazard is not None
    assert site.S_DS is not None
    if not choices.short_period_cap:
        return site.S_DS
    against = irregular(reading)
    storeys = max(levels_of(reading).values()) + 2  # the cripple walls count as one
    try:
        risk = reading.house.survey.site.risk_category
        return rules.short_period_cap(site.S_DS, period, rho, storeys, hazard.site_class, not against, risk)
    except OutsideLimits as refused:
        shown = f" (the survey shows {'; '.join(against)})" if against else ""
        raise BadSurvey((Fault("choices.short_period_cap", "true", f"{refused}{shown}"),)) from None


def _redundancy(reading: Reading, rules: Asce7, category: str) -> float:
    choices = reading.house.choices
    if choices.redundancy == 1.0 and not choices.redundancy_reason.strip():
        allowed = f"a redundancy factor of 1.0 is taken only with its printed reason ({rules.cite('12.3.4.2')})"
        raise BadSurvey((Fault("choices.redundancy_reason", "nothing", allowed),))
    claimed = "b" if choices.redundancy == 1.0 else ""
    return rules.redundancy(category, claimed, choices.redundancy_reason)


def _snow(reading: Reading, rules: Asce7, items: Sequence[WeightItem]) -> tuple[WeightItem, ...]:
    """Roof snow that counts in the seismic weight, part by part; none at or below the code's threshold."""
    snow = reading.number("survey.site.snow_psf", reading.house.survey.site.snow_psf, "p_f", "psf", "roof snow load")
    if snow is None:
        return ()
    psf = rules.snow_weight(snow)
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


def _levels(reading: Reading, items: Sequence[WeightItem]) -> tuple[list[float], list[float]]:
    """Seismic weight and height above the base of each level."""
    base = base_z_in(reading)
    tops = (f"survey.foundation.segments.{id}.top_z_in" for id in reading.house.survey.foundation.segments)
    measured = frozenset[Mark]().union(*(reading.marked(path) for path in tops))
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
        if parts:
            weights.append(add(*parts, symbol=f"w_{level}", label=f"seismic weight at the {name}"))
        else:
            weights.append(given(f"w_{level}", 0.0, "lb", f"nothing in the survey weighs at the {name}"))
    return weights, [doubted(max(h, 0.0), measured, unit="ft", symbol="h_x") for h in heights]
