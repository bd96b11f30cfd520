"""Flexible floor, or flexible and rigid both: which the rule asks for, and the line forces that follow in one state.

Old board floors are taken as flexible. Where the heights of the parts of a line, or of opposite lines, differ by more
than a stated ratio, the shares by a rigid floor are worked out as well, by the stiffness of what braces each line in
that state, and every line takes the worse.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from groundsill.forces.lines import with_rigid
from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces
from groundsill.house.survey import in_order
from groundsill.loadpath.bracing import with_strengths
from groundsill.loadpath.case import MIXED_RATIO, case_of
from groundsill.work.pieces import Piece
from groundsill.working.sheet import quiet, section
from groundsill.working.steps import note

__all__ = ["line_stiffness", "state_forces", "why_both"]


def why_both(reading: Reading, forces: Forces) -> str:
    """Why flexible and rigid floor are both asked for, in words; empty when flexible alone will do."""
    choices = reading.house.choices
    if choices.floor != "as the rule says":
        return choices.floor_reason or "by the designer's choice" if choices.floor == "envelope" else ""
    heights: dict[str, list[float]] = {}
    for _, segment in in_order(reading.house.survey.underfloor.segments):
        height = segment.height_in.value
        if height and segment.kind != "open" and forces.lines[segment.line].relied_on:
            heights.setdefault(segment.line, []).append(height)
    lines = reading.house.survey.underfloor.lines
    for id, found in heights.items():
        if max(found) > MIXED_RATIO * min(found):
            return f"heights in line {lines[id].mark} differ by more than {MIXED_RATIO:g} to 1"
    for direction in ("x", "y"):
        along = {id: max(h) for id, h in heights.items() if forces.lines[id].direction == direction}
        if along and max(along.values()) > MIXED_RATIO * min(along.values()):
            return f"heights of the lines along {direction} differ by more than {MIXED_RATIO:g} to 1"
    return ""


def line_stiffness(reading: Reading, forces: Forces, pieces: Sequence[tuple[str, Piece]]) -> dict[str, float]:
    """Shear stiffness of what braces each relied-on line, lb/in; lines that nothing braces are left out."""
    found = {}
    for id, line in forces.lines.items():
        if line.relied_on:
            with quiet():  # the strengths are worked out again, and written down, when the line is checked
                braces = with_strengths(case_of(reading, forces, id, pieces)).counted()
            total = sum(brace.stiffness_lb_in or 0.0 for brace in braces)
            if total > 0:
                found[id] = total
    return found


def state_forces(reading: Reading, forces: Forces, pieces: Sequence[tuple[str, Piece]]) -> Forces:
    """The forces of one state of the house: by a flexible floor, or the worse of flexible and rigid."""
    why = why_both(reading, forces)
    if not why:
        return forces
    with section("forces/floor"):
        note(f"flexible and rigid floor both: {why}")
    stiffness = line_stiffness(reading, forces, pieces)
    return replace(forces, lines=with_rigid(reading, forces.items, forces.levels, forces.lines, stiffness))
