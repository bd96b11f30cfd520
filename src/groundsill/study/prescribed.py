"""The prescriptive way in every state of the house, and its scope test over both ends of every uncertain fact."""

from __future__ import annotations

from collections.abc import Sequence

from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces
from groundsill.house.settle import End, Settling
from groundsill.loadpath.prescriptive import (
    PrescriptiveLine,
    PrescriptivePath,
    prescriptive_lines,
    prescriptive_path,
    scope_at,
    with_ends,
)
from groundsill.study.states import Chains, State
from groundsill.work.document import House

__all__ = ["prescribed", "scope_over_ends"]


def prescribed(
    reading: Reading, forces: Forces, states: Sequence[State], found: Sequence[Chains]
) -> tuple[PrescriptivePath, tuple[tuple[PrescriptiveLine, ...], ...]]:
    """The scope of the house as found, and every perimeter line in each state."""
    lines = tuple(
        prescriptive_lines(reading, forces, chains.forces, state.laid.pieces)
        for state, chains in zip(states, found, strict=True)
    )
    return prescriptive_path(reading, lines[0]), lines


def scope_over_ends(path: PrescriptivePath, settling: Settling[House]) -> PrescriptivePath:
    """The scope test with what either end of an uncertain fact, all others at their best, would turn."""
    sides: tuple[End, End] = ("low", "high")
    found = []
    for fact in settling.facts:
        for side in sides:
            settled = settling.at({fact.path: side})
            found.append((fact.label, scope_at(Reading(settled.house, settled.marks))))
    return with_ends(path, found)
