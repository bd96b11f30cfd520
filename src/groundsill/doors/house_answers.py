"""What ``--json`` gives about a house: its forces, the working of one place in it, the summary beside its papers."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from groundsill.doors.answers import StepTold
from groundsill.findings import Finding, Findings
from groundsill.forces.lines import LineForce
from groundsill.forces.seismic import Forces
from groundsill.study import Manifest, Run, Study
from groundsill.study.manifest import fingerprint
from groundsill.work.document import House

__all__ = [
    "FindingsTold",
    "ForcesTold",
    "LineSummary",
    "RunSummary",
    "SectionTold",
    "StateForces",
    "Summary",
    "WorkingTold",
    "findings_told",
    "forces_told",
    "summary_of",
]


@dataclass(frozen=True, slots=True)
class StateForces:
    """The force of every line in one state of the house, as found or with an alternative: what its checks go by.

    ``floor`` says why the floor is also taken as rigid, and is empty where it is flexible alone; each line says in
    its own ``floor`` by which of the two it has its force.
    """

    key: str
    name: str
    floor: str
    lines: dict[str, LineForce]


@dataclass(frozen=True, slots=True)
class ForcesTold:
    """The earthquake force of a house and its share on every line, strength level.

    ``states`` holds the forces that govern, state by state, as the screen shows them; ``forces.lines`` are those by a
    flexible floor alone, before the rigid floor is asked.
    """

    name: str
    units: Literal["us", "si"]
    manifest: Manifest
    forces: Forces
    states: tuple[StateForces, ...]
    warnings: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FindingsTold:
    """The findings of a house, the heaviest first; what was looked at, and what was not."""

    name: str
    units: Literal["us", "si"]
    house_hash: str
    findings: tuple[Finding, ...]
    looked_at: tuple[str, ...]
    not_looked_at: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SectionTold:
    """The steps taken for one address, in order."""

    address: str
    steps: tuple[StepTold, ...]


@dataclass(frozen=True, slots=True)
class WorkingTold:
    """The working of one place in the load path, at the best value of every fact."""

    name: str
    state: str
    asked: str
    sections: tuple[SectionTold, ...]


@dataclass(frozen=True, slots=True)
class LineSummary:
    """What one line or foundation body came to.

    ``percent`` is the share of the required force that its weakest checked link carries; ``governing`` is that link's
    address.
    """

    id: str
    mark: str
    name: str
    kind: Literal["line", "body"]
    relied_on: bool
    force_lb: float
    percent: float | None
    governing: str | None
    verdict: str
    headline: str


@dataclass(frozen=True, slots=True)
class RunSummary:
    """What the house came to in one state: as found, or with one alternative."""

    key: str
    name: str
    verdict: str
    headline: str
    lines: tuple[LineSummary, ...]


@dataclass(frozen=True, slots=True)
class Summary:
    """The calculation package in short.

    ``wind_governs`` are the marks of the lines that wind asks more of than the earthquake; ``wind_lacks`` says why wind
    was not looked at, or is empty.
    """

    name: str
    units: Literal["us", "si"]
    manifest: Manifest
    category: str
    weight_lb: float
    C_s: float
    base_shear_lb: float
    runs: tuple[RunSummary, ...]
    uncertain_facts: int
    warnings: tuple[str, ...]
    files: tuple[str, ...]
    wind_governs: tuple[str, ...] = ()
    wind_lacks: str = ""


def findings_told(house: House, found: Findings) -> FindingsTold:
    """The findings of a house."""
    made_from = fingerprint(house)
    return FindingsTold(house.survey.name, house.units, made_from, found.findings, found.looked_at, found.not_looked_at)


def forces_told(study: Study) -> ForcesTold:
    """The forces of a study."""
    states = tuple(StateForces(run.key, run.name, run.floor, run.line_forces) for run in study.runs)
    return ForcesTold(study.name, study.units, study.manifest, study.forces, states, study.warnings)


def summary_of(study: Study, files: tuple[str, ...]) -> Summary:
    """A study in short, beside the files that tell it at length."""
    forces = study.forces
    return Summary(
        name=study.name,
        units=study.units,
        manifest=study.manifest,
        category=forces.category,
        weight_lb=forces.weight_lb,
        C_s=forces.C_s,
        base_shear_lb=forces.base_shear_lb,
        runs=tuple(_run_summary(run) for run in study.runs),
        uncertain_facts=len(study.facts),
        warnings=study.warnings,
        files=files,
        wind_governs=tuple(w.mark for w in forces.wind.lines.values() if w.governs) if forces.wind is not None else (),
        wind_lacks=forces.wind_lacks,
    )


def _run_summary(run: Run) -> RunSummary:
    lines = tuple(
        LineSummary(
            c.id, c.mark, c.name, c.kind, c.relied_on, c.force_lb, c.percent, c.governing, c.verdict, c.headline
        )
        for c in (*run.chains, *run.bodies)
    )
    return RunSummary(run.key, run.name, run.verdict, run.headline, lines)
