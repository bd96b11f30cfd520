"""What each part of a study looks at, so that what a fact cannot reach is not worked out again.

A part that never reads a fact goes the very same way whatever that fact is: so the house is worked out once more at the
best of everything, with facts that tell who reads them, and every part is noted with those it read. At an end of a fact
only the parts that read it are worked out again, and those that stand on forces which came out otherwise.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import ParamSpec, TypeVar

from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces
from groundsill.house.settle import Settled, Settling
from groundsill.loadpath.bodies import body_chains, soil_parts
from groundsill.loadpath.chain import Chain
from groundsill.loadpath.path import chain_of
from groundsill.study.states import AsFound, Chains, State, as_found, reading_of, taken_by
from groundsill.work.document import House
from groundsill.work.pieces import Piece
from groundsill.working.sheet import quiet

__all__ = ["Again", "Looked", "looked_at"]

P = ParamSpec("P")
T = TypeVar("T")
Paths = frozenset[str]


@dataclass(frozen=True, slots=True)
class Looked:
    """The paths of the uncertain facts that each part of one state reads.

    ``forces`` are those of the lines; ``bodies`` those that say what foundation moves together; ``chains`` those of
    every line and ``soil`` those of every body and of the pads, by their ids, beside what they read of the forces.
    """

    forces: Paths
    bodies: Paths
    chains: dict[str, Paths]
    soil: dict[str, Paths]


class _Watch:
    """The paths of the facts that are read while some work is done."""

    def __init__(self) -> None:
        self.read: set[str] = set()

    def over(self, work: Callable[P, T], *given: P.args, **named: P.kwargs) -> tuple[T, Paths]:
        """What the work comes to, and the paths of all that it read."""
        self.read.clear()
        made = work(*given, **named)
        return made, frozenset(self.read)


def looked_at(settling: Settling[House], states: Sequence[State]) -> list[Looked]:
    """What every part of every state reads of a house, at the best value of all its facts."""
    watch = _Watch()
    settled = settling.watched(watch.read.add)
    with quiet():
        return [_looked_at(watch, Reading(settled.house, settled.marks), state) for state in states]


def _looked_at(watch: _Watch, house: Reading, state: State) -> Looked:
    """What the parts of one state read; each has a reading of its own, which remembers nothing others looked at."""
    pieces = state.laid.pieces
    reading, laid = watch.over(reading_of, state, house)
    found, first = watch.over(as_found, replace(house))
    (_, forces, _), second = watch.over(taken_by, state, found)
    parts, joined = watch.over(soil_parts, replace(reading), forces, pieces)
    chains = {
        id: laid | watch.over(chain_of, replace(reading), forces, id, pieces)[1]
        for id in reading.house.survey.underfloor.lines
    }
    soil = {id: laid | watch.over(_of_soil, replace(reading), forces, pieces, id)[1] for id in parts}
    return Looked(laid | first | second, laid | joined, chains, soil)


def _of_soil(reading: Reading, forces: Forces, pieces: Sequence[tuple[str, Piece]], id: str) -> Chain:
    return soil_parts(reading, forces, pieces)[id]()


class Again:
    """A house with some facts at an end, worked out again as far as those facts reach."""

    def __init__(self, settled: Settled[House], paths: Iterable[str]) -> None:
        self.reading = Reading(settled.house, settled.marks)
        self.paths = frozenset(paths)

    @cached_property
    def _as_found(self) -> AsFound:
        return as_found(self.reading)

    def forces(self, state: State, best: Chains, looked: Looked) -> tuple[Reading, Forces]:
        """A state as it is read, and the forces its lines take: the very ones of the best where they come out alike."""
        if self.paths.isdisjoint(looked.forces):
            return reading_of(state, self.reading), best.whole
        reading, taken, _ = taken_by(state, self._as_found)
        return reading, best.whole if taken == best.whole else taken

    def chains(self, state: State, best: Chains, looked: Looked) -> tuple[Chain, ...]:
        """The chains of a state's lines and bodies; those that no fact reaches are the very ones of the best."""
        reading, forces = self.forces(state, best, looked)
        pieces, moved = state.laid.pieces, forces is not best.whole

        def reached(read: Paths) -> bool:
            return moved or not self.paths.isdisjoint(read)

        lines = tuple(
            chain_of(reading, forces, chain.id, pieces) if reached(looked.chains[chain.id]) else chain
            for chain in best.lines
        )
        if reached(looked.bodies):
            return (*lines, *body_chains(reading, forces, pieces))
        parts = soil_parts(reading, forces, pieces)
        soil = (parts[chain.id]() if reached(looked.soil[chain.id]) else chain for chain in best.bodies)
        return (*lines, *soil)
