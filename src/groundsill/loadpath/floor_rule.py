"""Flexible floor, or flexible and rigid both: which the rule asks for, and the line forces that follow in one state.

Old board floors are taken as flexible. Where the heights of the parts of a line, or of opposite lines, differ by more
than a stated ratio, the shares by a rigid floor are worked out as well, by the stiffness of what braces each line in
that state, and every line takes the worse.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from groundsill.forces.lines import Stiffness, with_rigid
from groundsill.forces.reading import Reading, doubted
from groundsill.forces.seismic import Forces
from groundsill.loadpath.bracing import with_strengths
from groundsill.loadpath.case import MIXED_RATIO, Brace, LineCase, case_of, height_path
from groundsill.loadpath.low_parts import slip_marks
from groundsill.work.pieces import Piece
from groundsill.working.sheet import Sheet, open_sheet, quiet, section
from groundsill.working.steps import note
from groundsill.working.value import Mark, marks_of

__all__ = ["state_forces", "why_both"]


def why_both(reading: Reading, forces: Forces) -> str:
    """Why flexible and rigid floor are both asked for, in words; empty when flexible alone will do."""
    choices = reading.house.choices
    if choices.floor != "as the rule says":
        return choices.floor_reason or "by the designer's choice" if choices.floor == "envelope" else ""
    heights: dict[str, list[float]] = {}
    for _, segment in reading.in_order(reading.house.survey.underfloor.segments):
        height = 0.0 if segment.kind == "joists on sill" else segment.height_in.value or None
        if height is not None and segment.kind != "open" and forces.lines[segment.line].relied_on:
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


def state_forces(reading: Reading, forces: Forces, why: str, pieces: Sequence[tuple[str, Piece]]) -> tuple[Forces, str]:
    """The forces of one state of the house: by a flexible floor, or the worse of flexible and rigid; and why, in words.

    Every line's force carries the marks of the heights that the rule goes by and, where the floor is also taken as
    rigid, of what braces each of the lines. ``why`` is what :func:`why_both` answers, the same in every state; to it
    is added where what is braced in this state cannot hold a rigid floor.
    """
    doubts, lines = _heights_marked(reading, forces), forces.lines
    if why:
        with section("forces/floor"):
            note(f"flexible and rigid floor both: {why}")
        cases = _cases(reading, forces, pieces)
        braces = {id: case.braces for id, case in cases.items()}
        stiffness = {id: k for id, found in braces.items() if (k := _stiffness(found)).known > 0 or k.why_not}
        lines, lacking = with_rigid(reading, forces.items, forces.levels, forces.lines, stiffness)
        doubts |= _doubts(brace for found in braces.values() for brace in found)
        with Sheet() if open_sheet() is not None else quiet():
            doubts = doubts.union(*(slip_marks(case) for case in cases.values()))
        why = "; ".join((why, *lacking))
    if doubts:
        lines = {
            id: replace(line, force_lb=doubted(line.force_lb, doubts)) if line.relied_on else line
            for id, line in lines.items()
        }
    return (forces if lines is forces.lines else replace(forces, lines=lines)), why


def _heights_marked(reading: Reading, forces: Forces) -> frozenset[Mark]:
    """The marks of the heights that the rule compares; none where the designer chose."""
    if reading.house.choices.floor != "as the rule says":
        return frozenset()
    segments = reading.house.survey.underfloor.segments
    asked = (id for id, s in segments.items() if s.kind != "open" and forces.lines[s.line].relied_on)
    return frozenset[Mark]().union(*(reading.marked(height_path(id)) for id in asked))


def _cases(reading: Reading, forces: Forces, pieces: Sequence[tuple[str, Piece]]) -> dict[str, LineCase]:
    """What braces each relied-on line, with its strength; worked out again, and written down, with the line."""
    with quiet() if open_sheet() is None else Sheet():  # a sheet of its own, for the marks
        return {
            id: with_strengths(case_of(reading, forces, id, pieces))
            for id, line in forces.lines.items()
            if line.relied_on
        }


def _stiffness(braces: Iterable[Brace]) -> Stiffness:
    """Stiffness of all that counts in a line, lb/in, and why it is not known where a part may give less."""
    every = tuple(braces)
    known = sum(float(brace.stiffness_lb_in or 0.0) for brace in every)
    unknown = [brace for brace in every if brace.unknown]
    why_not = "; ".join(f"{brace.name}: {brace.why_not}" for brace in unknown)
    ends = [brace.stiffest_lb_in for brace in unknown]
    return Stiffness(known, why_not, None if None in ends else known + sum(float(end or 0.0) for end in ends))


def _doubts(braces: Iterable[Brace]) -> frozenset[Mark]:
    """The marks of the shares by stiffness; a figure that all braces have in common moves none."""
    every = tuple(braces)
    figures = [marks_of((b.stiffness_lb_in,)) for b in every if b.stiffness_lb_in is not None]
    common = figures[0].intersection(*figures) if figures else frozenset[Mark]()
    return (frozenset[Mark]().union(*figures) - common).union(*(brace.marks for brace in every))
