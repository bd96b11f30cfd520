"""The same house by other choices: editions of the load and panel standards, full and reduced force, bracing systems.

Each variant is a whole run at the best values, by its own edition of ASCE 7 from ground motion to load combinations;
nothing is scaled from another. A variant whose values nobody entered is listed with what it lacks.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from groundsill.house.site import DesignValues
from groundsill.house.survey import in_order
from groundsill.loadpath.chain import weakest
from groundsill.standards.asce7 import EDITIONS, rules_of
from groundsill.standards.sdpws import EDITIONS as SDPWS_EDITIONS
from groundsill.study import run
from groundsill.study.result import Study
from groundsill.work.basis import basis_of
from groundsill.work.document import EditionOverride, House
from groundsill.working.errors import BadSurvey

__all__ = ["Comparison", "Variant", "Weakest", "by_edition", "compare_editions"]

REDUCED = 0.75  # IEBC A403.3: the share of the force for new buildings that existing ones may be checked for
SYSTEMS = ("A.15", "A.17", "B.22")


@dataclass(frozen=True, slots=True)
class Weakest:
    """The weakest line of one state of the house: its mark and the share of the force it carries, None if unknown."""

    state: str
    line: str
    percent: float | None


@dataclass(frozen=True, slots=True)
class Variant:
    """The house by one set of choices. With ``lacks`` filled in nothing was worked out, and it says why."""

    name: str
    edition: str
    system: str
    S_DS: float | None = None
    R: float | None = None
    factor: float | None = None
    C_s: float | None = None
    base_shear_lb: float | None = None
    weakest: tuple[Weakest, ...] = ()
    lacks: str = ""


@dataclass(frozen=True, slots=True)
class Comparison:
    """Every variant of a house, its own choices first."""

    name: str
    variants: tuple[Variant, ...]


def compare_editions(house: House) -> Comparison:
    """The house by every variant."""
    return Comparison(house.survey.name, tuple(_variants(house)))


def _variants(house: House) -> Iterator[Variant]:
    own = basis_of(house).edition("asce7")
    yield from _choices("", house)
    for edition in (edition for edition in SDPWS_EDITIONS if edition != basis_of(house).edition("sdpws")):
        mixed = {**house.basis.overrides, "sdpws": EditionOverride(edition=edition, reason="to compare")}
        yield _worked(f"by {edition}, as chosen", replace(house, basis=replace(house.basis, overrides=mixed)))
    entered = [values for _, values in in_order(house.survey.site.design_values)]
    for values in entered:
        name = f"by {values.edition}"
        if values.edition in EDITIONS:
            yield from _choices(f"{name}, ", by_edition(house, values))
        else:
            lacks = f"no force is worked out by it; the editions are {', '.join(EDITIONS)}"
            yield Variant(name, values.edition, house.choices.system, lacks=lacks)
    for edition in EDITIONS:
        if edition != own and edition not in {values.edition for values in entered}:
            lacks = "its design values must be entered (survey.site.design_values): no map is in the program"
            yield Variant(f"by {edition}", edition, house.choices.system, lacks=lacks)


def by_edition(house: House, values: DesignValues) -> House:
    """The house by another edition of ASCE 7, with the design values that were entered for it."""
    hazard = house.survey.site.hazard
    if hazard is not None:
        second = hazard.S_1 if values.S_1 is None else values.S_1
        hazard = replace(hazard, S_1=second, S_DS=values.S_DS, S_D1=values.S_D1, source=values.source)
    site = replace(house.survey.site, hazard=hazard)
    override = EditionOverride(edition=values.edition, reason="to compare")
    basis = replace(house.basis, overrides={**house.basis.overrides, "asce7": override})
    return replace(house, basis=basis, survey=replace(house.survey, site=site))


def _choices(prefix: str, house: House) -> Iterator[Variant]:
    """The house by one edition: as chosen, by full and reduced force, and by other bracing systems."""
    choices = house.choices
    full = replace(choices, force_factor=1.0)
    reduced = replace(choices, force_factor=REDUCED, force_reason=choices.force_reason or "to compare")
    yield _worked(f"{prefix}as chosen", house)
    if choices.force_factor != 1:
        yield _worked(f"{prefix}full force", replace(house, choices=full))
    yield _worked(f"{prefix}{REDUCED:.0%} of the force", replace(house, choices=reduced))
    for system in (system for system in SYSTEMS if system != choices.system):
        name = f"{prefix}full force, system {system} (R {_factor(system):g})"
        yield _worked(name, replace(house, choices=replace(full, system=system)))


def _factor(system: str) -> float:
    """R of a bracing system, which is the same in every edition here."""
    return float(rules_of(EDITIONS[0]).system_factors(system).R)


def _worked(name: str, house: House) -> Variant:
    edition = basis_of(house).edition("asce7")
    try:
        study = run(house, ranges=False)
    except BadSurvey as refused:
        return Variant(name, edition, house.choices.system, lacks=str(refused))
    forces = study.forces
    return Variant(
        name,
        edition,
        forces.system.system,
        forces.S_DS,
        forces.system.R,
        forces.factor,
        forces.C_s,
        forces.base_shear_lb,
        _weakest(study),
    )


def _weakest(study: Study) -> tuple[Weakest, ...]:
    found = []
    for state in study.runs:
        worst = weakest(state.chains)
        if worst is None or worst.percent is None:
            found.append(Weakest(state.name, "", None))
        else:
            found.append(Weakest(state.name, worst.mark, worst.percent))
    return tuple(found)
