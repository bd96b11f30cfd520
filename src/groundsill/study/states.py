"""The house in its states: as found, and with each alternative laid on it; and one run through them all."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

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
from groundsill.working.value import Mark

__all__ = ["Chains", "State", "go", "states_of"]


@dataclass(frozen=True, slots=True)
class State:
    """One state of the house: its key, name and purpose, and the work laid on the survey."""

    key: str
    name: str
    purpose: str
    laid: Laid


def states_of(house: House) -> list[State]:
    """The house as found, then each alternative by its order."""
    ordered = sorted(house.alternatives.items(), key=lambda pair: (pair[1].order, pair[0]))
    found = [State(AS_FOUND, "as found", "the house as surveyed", apply(house, None))]
    return found + [State(id, alternative.name, alternative.purpose, apply(house, id)) for id, alternative in ordered]


def go(house: House, marks: Mapping[str, tuple[Mark, ...]], states: Sequence[State]) -> tuple[Forces, list[Chains]]:
    """Forces once, then every state's chains and the foundation bodies under them."""
    reading = Reading(house, marks)
    forces = work_out(reading)
    why = why_both(reading, forces)
    return forces, [_chains(reading, forces, why, state) for state in states]


def _chains(reading: Reading, forces: Forces, why: str, state: State) -> Chains:
    pieces = state.laid.pieces
    taken, floor = state_forces(reading, forces, why, pieces)
    return Chains(chains_of(reading, taken, pieces), body_chains(reading, taken, pieces), taken.lines, floor)


@dataclass(frozen=True, slots=True)
class Chains:
    """The chains of one state in one run, and the line forces they stand on."""

    lines: tuple[Chain, ...]
    bodies: tuple[Chain, ...]
    forces: Mapping[str, LineForce]
    floor: str

    def links(self) -> dict[str, Link]:
        """Every link by its address."""
        return {link.address: link for chain in (*self.lines, *self.bodies) for link in chain.links}
