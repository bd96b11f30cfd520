"""The one entrance: a house in, a study out.

:func:`run` works out forces and chains as found and for each alternative, once at the best value of every fact and once
at either end of each uncertain one, and gathers the verdicts. :func:`working` goes the same way with a sheet open, when
somebody asks how a figure came about: working is never stored.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces, work_out
from groundsill.house.settle import FactRef, settle, uncertain_facts
from groundsill.loadpath.chain import Chain, Link, verdict_of, with_ends
from groundsill.loadpath.headline import concluded
from groundsill.loadpath.path import chains_of
from groundsill.standards.basis import Basis, resolve
from groundsill.working.version import VERSION
from groundsill.work.apply import Laid, Misplaced, lay
from groundsill.work.document import House
from groundsill.working.sheet import Sheet

__all__ = ["FORMAT", "AS_FOUND", "Manifest", "Run", "Study", "UncertainFact", "run", "working"]

FORMAT = "groundsill.study/1"
AS_FOUND = "as-found"

Progress = Callable[[int, int], None]


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
    low: float
    best: float
    high: float
    why: str


@dataclass(frozen=True, slots=True)
class Run:
    """The load path of the house in one state: as found, or with one alternative laid on it."""

    key: str
    name: str
    purpose: str
    chains: tuple[Chain, ...]
    bodies: tuple[Chain, ...]
    misplaced: tuple[Misplaced, ...]
    verdict: str
    headline: str


@dataclass(frozen=True, slots=True)
class Study:
    """Everything that papers, screens and machines are told about a house."""

    format: Literal["groundsill.study/1"]
    manifest: Manifest
    name: str
    units: Literal["us", "si"]
    forces: Forces
    facts: tuple[UncertainFact, ...]
    runs: tuple[Run, ...]
    warnings: tuple[str, ...]
