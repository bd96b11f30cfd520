"""The parts of a study at any ends of its facts, each worked out once for all ends that it cannot tell apart.

A part (the forces of a state, the chain of one line, of one body) that reads some facts goes the very same way wherever
those stand the same, whatever has become of all others. So the facts tell when they are read; what a part came to is
kept with the facts it read and the ends they stood at, and wherever these stand so again it is not worked out again.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Hashable, Mapping, Sequence
from typing import Any, TypeVar, cast

from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces
from groundsill.house.settle import End, Settling
from groundsill.loadpath.bodies import soil_parts
from groundsill.loadpath.chain import Chain
from groundsill.loadpath.path import chain_of
from groundsill.study.states import State, reading_of, taken_by
from groundsill.work.document import House
from groundsill.working.sheet import quiet

__all__ = ["Parts"]

T = TypeVar("T")
Paths = tuple[str, ...]
Outcomes = dict[tuple[End, ...], Any]


class Parts:
    """The parts of every state of a house, at any ends of its uncertain facts (by path; all others at their best)."""

    def __init__(self, settling: Settling[House], states: Sequence[State]) -> None:
        self.states = states
        self._read: set[str] = set()  # what the part that is being worked out has read
        self._settling = settling.watched(self._read.add)
        self._known: dict[Hashable, dict[Paths, Outcomes]] = defaultdict(dict)
        self._taken: list[list[Forces]] = [[] for _ in states]  # those that came out otherwise than all before

    def forces(self, n: int, ends: Mapping[str, End]) -> Forces:
        """The forces that the lines of state ``n`` take."""
        return self._taken[n][self._which_forces(n, ends)]

    def chains(self, n: int, ends: Mapping[str, End]) -> list[Chain]:
        """The chains of the lines of state ``n``, of its foundation bodies and of the pads."""
        which = self._which_forces(n, ends)
        forces, pieces = self._taken[n][which], self.states[n].laid.pieces
        bodies = self._once(("bodies", n), n, ends, lambda reading: tuple(soil_parts(reading, forces, pieces)))
        lines = self._once(("lines", n), n, ends, lambda reading: tuple(reading.house.survey.underfloor.lines))

        def line(id: str) -> Chain:
            return self._once(("line", n, which, id), n, ends, lambda reading: chain_of(reading, forces, id, pieces))

        def soil(id: str) -> Chain:
            return self._once(
                ("soil", n, which, id), n, ends, lambda reading: soil_parts(reading, forces, pieces)[id]()
            )

        return [*map(line, lines), *map(soil, bodies)]

    def _which_forces(self, n: int, ends: Mapping[str, End]) -> int:
        """Which of the forces that were met so far the lines of a state take: alike forces are one."""

        def work(reading: Reading) -> int:
            taken, _ = taken_by(self.states[n], reading)
            if taken not in self._taken[n]:
                self._taken[n].append(taken)
            return self._taken[n].index(taken)

        return self._once(("forces", n), n, ends, work)

    def _once(self, part: Hashable, n: int, ends: Mapping[str, End], work: Callable[[Reading], T]) -> T:
        """What a part came to where all that it read stood as it does now; worked out where it never stood so.

        It is worked out on a reading of its own, since a reading remembers what another part has read.
        """
        known = self._known[part]
        for read, outcomes in known.items():
            stand = _stand(read, ends)
            if stand in outcomes:
                return cast(T, outcomes[stand])
        settled = self._settling.at(ends)
        self._read.clear()
        with quiet():
            made = work(reading_of(self.states[n], Reading(settled.house, settled.marks)))
        read = tuple(sorted(self._read))
        known.setdefault(read, {})[_stand(read, ends)] = made
        return made


def _stand(paths: Paths, ends: Mapping[str, End]) -> tuple[End, ...]:
    """The ends at which facts stand."""
    return tuple(ends.get(path, "best") for path in paths)
