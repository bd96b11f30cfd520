"""The house in its states: as found, and with each alternative laid on it; and one run through them all."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from contextlib import nullcontext
from dataclasses import dataclass, replace

from groundsill.forces.lines import LineForce
from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces, work_out
from groundsill.loadpath.bodies import body_chains
from groundsill.loadpath.chain import Chain, Link
from groundsill.loadpath.floor_rule import state_forces, why_both
from groundsill.loadpath.path import chains_of
from groundsill.study.result import AS_FOUND
from groundsill.work.apply import Laid, apply
from groundsill.work.document import House
from groundsill.work.inner import InnerFoundationPiece, built, inner_of
from groundsill.working.sheet import quiet
from groundsill.working.value import Mark

__all__ = ["AsFound", "Chains", "State", "as_found", "go", "reading_of", "states_of", "taken_by"]


@dataclass(frozen=True, slots=True)
class State:
    """One state of the house: its key, name and purpose, and the work laid on the survey."""

    key: str
    name: str
    purpose: str
    laid: Laid

    @property
    def inner(self) -> Mapping[str, InnerFoundationPiece]:
        """The new foundations laid inside the old, by the id of the line each makes."""
        return inner_of(self.laid.pieces)


def states_of(house: House) -> list[State]:
    """The house as found, then each alternative by its order."""
    ordered = sorted(house.alternatives.items(), key=lambda pair: (pair[1].order, pair[0]))
    found = [State(AS_FOUND, "as found", "the house as surveyed", apply(house, None))]
    return found + [State(id, alternative.name, alternative.purpose, apply(house, id)) for id, alternative in ordered]


def go(house: House, marks: Mapping[str, tuple[Mark, ...]], states: Sequence[State]) -> tuple[Forces, list[Chains]]:
    """The forces as found, then every state's chains and the foundation bodies under them.

    A state with a new foundation inside the old has lines of its own, and so forces of its own; a sheet that holds such
    states alone does not hold the forces as found.
    """
    reading = Reading(house, marks)
    with quiet() if all(state.inner for state in states) else nullcontext():
        found = as_found(reading)
    return found.forces, [_chains(found, state) for state in states]


@dataclass(frozen=True, slots=True)
class AsFound:
    """A settled house, its forces as found, and why its floor is taken both ways, in words."""

    reading: Reading
    forces: Forces
    why: str


def as_found(reading: Reading) -> AsFound:
    """The forces of a settled house as found."""
    forces = work_out(reading)
    return AsFound(reading, forces, why_both(reading, forces))


def reading_of(state: State, reading: Reading) -> Reading:
    """A settled house as one state of it has its lines: the old ones, and those of new foundations inside them."""
    inner = state.inner
    if not inner:
        return reading
    survey = built(reading.house.survey, inner)
    return Reading(replace(reading.house, survey=survey), reading.marks, inner)


def taken_by(state: State, found: AsFound) -> tuple[Reading, Forces, str]:
    """A state as it is read, the forces that its lines take, and how the floor brings them, in words."""
    if state.inner:
        found = as_found(reading_of(state, found.reading))
    return found.reading, *state_forces(found.reading, found.forces, found.why, state.laid.pieces)


def _chains(found: AsFound, state: State) -> Chains:
    reading, taken, floor = taken_by(state, found)
    pieces = state.laid.pieces
    return Chains(chains_of(reading, taken, pieces), body_chains(reading, taken, pieces), taken, floor, reading)


@dataclass(frozen=True, slots=True)
class Chains:
    """The chains of one state in one run, and the forces and the lines they stand on."""

    lines: tuple[Chain, ...]
    bodies: tuple[Chain, ...]
    whole: Forces
    floor: str
    reading: Reading

    @property
    def forces(self) -> Mapping[str, LineForce]:
        """The force of every line."""
        return self.whole.lines

    def links(self) -> dict[str, Link]:
        """Every link by its address."""
        return {link.address: link for chain in (*self.lines, *self.bodies) for link in chain.links}
