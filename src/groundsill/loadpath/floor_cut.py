"""What pushes a floor that is cut through: each level's weights, in the plan turned so that the cut stands upright."""

from __future__ import annotations

from collections.abc import Sequence

from groundsill.loadpath.case import LineCase
from groundsill.mechanics.plan import XY, rotate
from groundsill.standards.statics.floors import chord_force
from groundsill.working.steps import convert, given
from groundsill.working.value import marks_of

__all__ = ["asked_of_chord", "pushed_weights"]


def pushed_weights(case: LineCase, turn: float, level: int) -> list[tuple[float, Sequence[XY]]]:
    """What a level's force pushes each weight with, lb at strength level, and the weight's shape turned by degrees."""
    force = case.forces.levels[level]
    if not force.weight_lb:
        return []
    push = float(force.force_lb) / float(force.weight_lb)
    loads: list[tuple[float, Sequence[XY]]] = []
    for item in case.forces.items:
        part = sum(share for at, share in item.levels if at == level) if item.seismic else 0.0
        if part:
            loads.append((push * part * float(item.weight_lb), [rotate(point, turn) for point in item.points]))
    return loads


def asked_of_chord(case: LineCase, moment_lb_in: float, D: float, words: str) -> float:
    """The chord force of a moment in the floor over its depth in ft, allowable-stress level, lb, recorded."""
    doubts = marks_of(level.force_lb for level in case.forces.levels)
    M = convert(
        given("M", abs(moment_lb_in), "lb-in", f"moment in the floor at the cut, {words}", doubts), "lb-in", "lb-ft"
    )
    effects = case.forces.rules.effects
    return effects.asd_earthquake(effects.horizontal_effect(case.forces.rho, chord_force(M, D)))
