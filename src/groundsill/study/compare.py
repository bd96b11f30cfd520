"""The same house by other choices: editions of the load and panel standards, full and reduced force, bracing systems.

Each variant is a whole run at the best values; nothing is scaled from another. A variant whose values nobody entered is
listed with what it lacks.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from groundsill.house.survey import in_order
from groundsill.loadpath.chain import weakest
from groundsill.loadpath.editions import basis_of
from groundsill.standards.asce7_16.systems import system_factors
from groundsill.standards.sdpws import EDITIONS as SDPWS_EDITIONS
from groundsill.study import run
from groundsill.study.result import Study
from groundsill.work.document import EditionOverride, House
from groundsill.working.errors import BadSurvey

__all__ = ["Comparison", "Variant", "Weakest", "compare_editions"]

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
    choices, hazard = house.choices, house.survey.site.hazard
    yield _worked("as chosen", "asce7-16", house)
    full = replace(choices, force_factor=1.0)
    reduced = replace(choices, force_factor=REDUCED, force_reason=choices.force_reason or "to compare")
    yield _worked("full force", "asce7-16", replace(house, choices=full))
    yield _worked(f"{REDUCED:.0%} of the force", "asce7-16", replace(house, choices=reduced))
    for system in (system for system in SYSTEMS if system != choices.system):
        name = f"full force, system {system} (R {system_factors(system).R:g})"
        yield _worked(name, "asce7-16", replace(house, choices=replace(full, system=system)))
    for edition in (edition for edition in SDPWS_EDITIONS if edition != basis_of(house).edition("sdpws")):
        mixed = {**house.basis.overrides, "sdpws": EditionOverride(edition=edition, reason="to compare")}
        by_other = replace(house, basis=replace(house.basis, overrides=mixed))
        yield _worked(f"by {edition}, as chosen", "asce7-16", by_other)
    entered = [v for _, v in in_order(house.survey.site.design_values)]
    for values in entered:
        if hazard is not None:
            motion = replace(hazard, S_DS=values.S_DS, S_D1=values.S_D1)
            site = replace(house.survey.site, hazard=motion)
            other = replace(house, survey=replace(house.survey, site=site))
            yield _worked(f"by {values.edition}, as chosen", values.edition, other)
            yield _worked(f"by {values.edition}, full force", values.edition, replace(other, choices=full))
    if not any(values.edition.startswith("asce7-22") for values in entered):
        lacks = "its design values must be entered (survey.site.design_values): no map is in the program"
        yield Variant("by asce7-22", "asce7-22", choices.system, lacks=lacks)


def _worked(name: str, edition: str, house: House) -> Variant:
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
