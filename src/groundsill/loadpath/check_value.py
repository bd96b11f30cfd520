"""A check value: the force that somebody wants a new line to be asked for, where its own share is less.

The trade likes a line that holds ten thousand pounds. The piece says how much, and whether that is a force at strength
level or at allowable-stress level, redundancy within it; everything of the line, down to the soil under its body, is
then asked for it. A share of the house's own force that is more is asked all the same.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from groundsill.forces.lines import LineForce
from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces
from groundsill.work.inner import InnerFoundationPiece
from groundsill.working.sheet import quiet, section
from groundsill.working.steps import divide, given

__all__ = ["as_asked", "check_words"]

_LEVELS = {"strength": "strength level", "allowable": "allowable-stress level"}


def as_asked(reading: Reading, forces: Forces, ids: Iterable[str]) -> Forces:
    """The forces with those of these lines that have a check value above their own share raised to it."""
    raised = {
        id: _raised(forces, forces.lines[id], piece)
        for id in ids
        if (piece := reading.inner.get(id)) is not None and _times(forces, forces.lines[id], piece) > 1
    }
    return replace(forces, lines=forces.lines | raised) if raised else forces


def check_words(reading: Reading, forces: Forces, id: str) -> str:
    """What stands at the head of a line that has a check value; empty where it has none."""
    piece = reading.inner.get(id)
    if piece is None or piece.check_lb is None:
        return ""
    asked = f"{piece.check_lb:,.0f} lb at {_LEVELS[piece.check_level]}"
    own = f"{float(forces.lines[id].force_lb) * _each(forces, piece):,.0f} lb"
    if _times(forces, forces.lines[id], piece) > 1:
        return f"asked for its check value, {asked}: its own share of the house's force is {own}"
    return f"its check value, {asked}, is below its own share of the house's force, {own}, which is asked"


def _each(forces: Forces, piece: InnerFoundationPiece) -> float:
    """What a pound of the line's own force is at the level of its check value."""
    with quiet():
        effects = forces.rules.effects
        E_h = effects.horizontal_effect(forces.rho, 1.0)
        return float(E_h if piece.check_level == "strength" else effects.asd_earthquake(E_h))


def _times(forces: Forces, line: LineForce, piece: InnerFoundationPiece) -> float:
    """How many times the line's own force its check value is; 0 without one, or where no force comes to it."""
    own = float(line.force_lb) * _each(forces, piece)
    return piece.check_lb / own if piece.check_lb is not None and own > 0 else 0.0


def _raised(forces: Forces, line: LineForce, piece: InnerFoundationPiece) -> LineForce:
    """The line with its check value as its force; what it takes in each way of sharing goes up in step."""
    times = _times(forces, line, piece)
    with section(f"line/{line.line}/check-value"):
        asked = given("P", piece.check_lb or 0.0, "lb", f"check value, as entered, at {_LEVELS[piece.check_level]}")
        each = given("rho", _each(forces, piece), "1", "redundancy, and the level of the check value, for a pound")
        force = divide(asked, each, symbol="Q_E", unit="lb", label="force that the line is asked for")
    return replace(
        line,
        force_lb=force,
        other_lb=line.other_lb * times,
        most_lb=None if line.most_lb is None else max(float(force), float(line.most_lb)),
        cases={direction: tuple(v * times for v in ways) for direction, ways in line.cases.items()},
    )
