"""The prescriptive way in every state of the house, and its scope test over both ends of every uncertain fact."""

from __future__ import annotations

from collections.abc import Sequence

from groundsill.forces.reading import Reading
from groundsill.house.settle import End, FactRef, Settling
from groundsill.loadpath.prescriptive import (
    PrescriptiveLine,
    PrescriptivePath,
    ScopeItem,
    prescriptive_lines,
    prescriptive_path,
    scope_at,
    taken_inside,
    with_ends,
)
from groundsill.study.states import Chains, State
from groundsill.work.document import House

__all__ = ["prescribed", "scope_over_ends"]


def prescribed(
    reading: Reading, states: Sequence[State], found: Sequence[Chains]
) -> tuple[PrescriptivePath, tuple[tuple[PrescriptiveLine, ...], ...]]:
    """The scope of the house as found, and every perimeter line in each state."""
    lines = tuple(
        taken_inside(
            chains.reading,
            prescriptive_lines(chains.reading, chains.whole, chains.forces, state.laid.pieces),
            chains.lines,
            chains.bodies,
        )
        for state, chains in zip(states, found, strict=True)
    )
    return prescriptive_path(reading, lines[0]), lines


def scope_over_ends(path: PrescriptivePath, settling: Settling[House]) -> PrescriptivePath:
    """The scope test with what the ends of uncertain facts would turn: each alone, then all of one kind together."""
    sides: tuple[End, End] = ("low", "high")

    def at(facts: Sequence[FactRef], side: End) -> tuple[ScopeItem, ...]:
        settled = settling.at({fact.path: side for fact in facts})
        return scope_at(Reading(settled.house, settled.marks))

    alone = [(fact.label, at((fact,), side)) for fact in settling.facts for side in sides]
    kinds: dict[str, list[FactRef]] = {}
    for fact in settling.facts:
        kinds.setdefault(fact.path.rpartition(".")[2], []).append(fact)
    several = [
        (f"{facts[0].label.partition(' (')[0]}, {len(facts)} together", at(facts, side))
        for facts in kinds.values()
        for side in sides
        if len(facts) > 1
    ]
    return with_ends(with_ends(path, alone), several)
