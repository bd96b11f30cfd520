"""What a study is: plain frozen data, which every view and every machine is told."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from groundsill.forces.lines import LineForce
from groundsill.forces.seismic import Forces
from groundsill.house.missing import Missing
from groundsill.loadpath.chain import Chain, Verdict
from groundsill.loadpath.prescriptive.result import PrescriptiveLine, PrescriptivePath
from groundsill.loadpath.rises import ExistingElements
from groundsill.loadpath.storey_above import StoreyAbove
from groundsill.study.strength import ConcreteStrength, SettlingTest
from groundsill.work.apply import Misplaced

__all__ = ["AS_FOUND", "FORMAT", "Manifest", "Move", "Run", "Study", "UncertainFact"]

FORMAT: Literal["groundsill.study/1"] = "groundsill.study/1"
AS_FOUND = "as-found"


@dataclass(frozen=True, slots=True)
class Manifest:
    """What the study was made with: program, input, documents, and what in it is still in doubt."""

    program: str
    house_hash: str
    code: str
    editions: dict[str, str]
    edition_reasons: dict[str, str]
    from_memory: tuple[str, ...]
    unverified: tuple[str, ...]
    assumed: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class UncertainFact:
    """A fact that may lie elsewhere within a range, as it was used."""

    path: str
    label: str
    unit: str
    low: float | bool | str
    best: float | bool | str
    high: float | bool | str
    why: str


@dataclass(frozen=True, slots=True)
class Run:
    """The load path of the house in one state: as found, or with one alternative laid on it.

    ``line_forces`` are those its chains stand on; ``floor`` says why the floor was also taken as rigid, or is empty.
    ``misplaced`` are pieces of work that have no place; ``uncounted`` those that no check counts yet. ``storeys`` are
    those above the lowest floor, as found, and ``next_weakest`` says which level is the weakest after this one;
    ``compared`` holds every existing element against the house as found (None for the house as found itself).
    ``prescriptive`` is every perimeter line by the prescriptive way, beside its chain and never part of its verdict;
    ``settled_by`` the tests that would settle the lines that the strength of their concrete keeps from passing.
    """

    key: str
    name: str
    purpose: str
    floor: str
    line_forces: dict[str, LineForce]
    chains: tuple[Chain, ...]
    bodies: tuple[Chain, ...]
    misplaced: tuple[Misplaced, ...]
    uncounted: tuple[str, ...]
    verdict: Verdict
    headline: str
    storeys: tuple[StoreyAbove, ...] = ()
    next_weakest: str = ""
    compared: ExistingElements | None = None
    prescriptive: tuple[PrescriptiveLine, ...] = ()
    settled_by: tuple[SettlingTest, ...] = ()


@dataclass(frozen=True, slots=True)
class Move:
    """What one uncertain fact does when it alone goes from end to end of its range, all others at their best.

    ``flips`` names the chains whose verdict it turns, as ``state: mark``; ``change`` is by how much it moves the
    governing ratio of the chain it moves most (``where``), 0 when it moves none.
    """

    path: str
    label: str
    flips: tuple[str, ...]
    change: float
    where: str


@dataclass(frozen=True, slots=True)
class Study:
    """Everything that papers, screens and machines are told about a house.

    ``missing`` are the facts that nothing stands in for: no range says what they may be, and what needs them cannot be
    checked until somebody has looked. ``prescriptive`` is the scope test of the prescriptive way, as found.
    """

    format: Literal["groundsill.study/1"]
    manifest: Manifest
    name: str
    units: Literal["us", "si"]
    forces: Forces
    facts: tuple[UncertainFact, ...]
    runs: tuple[Run, ...]
    measure_next: tuple[Move, ...]
    warnings: tuple[str, ...]
    missing: tuple[Missing, ...] = ()
    prescriptive: PrescriptivePath | None = None
    concrete: tuple[ConcreteStrength, ...] = ()
