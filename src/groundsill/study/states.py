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

__all__ = ["Chains", "State", "go", "reading_of", "states_of", "taken_by"]


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
        forces = work_out(reading)
    why = why_both(reading, forces)
    return forces, [_chains(reading, forces, why, state) for state in states]


def reading_of(state: State, reading: Reading) -> Reading:
    """A settled house as one state of it has its lines: the old ones, and those of new foundations inside them."""
    inner = state.inner
    if not inner:
        return reading
    survey = built(reading.house.survey, inner)
    return Reading(replace(reading.house, survey=survey), reading.marks, inner)


def taken_by(state: State, reading: Reading) -> tuple[Forces, str]:
    """The forces that the lines of a state take, worked out for it alone, and how the floor brings them, in words."""
    forces = work_out(reading)
    return state_forces(reading, forces, why_both(reading, forces), state.laid.pieces)


def _chains(reading: Reading, forces: Forces, why: str, state: State) -> Chains:
    pieces = state.laid.pieces
    if state.inner:
        reading = reading_of(state, reading)
        taken, floor = taken_by(state, reading)
    else:
        taken, floor = state_forces(reading, forces, why, pieces)
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
