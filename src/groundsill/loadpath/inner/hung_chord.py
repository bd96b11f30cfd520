"""The chords of a floor that hangs out beyond a new line: what an earthquake along the line pulls in its side edges.

The floor is cut through along the line. What the weights beyond it push leaves a moment there, which the floor's edges
on both sides carry as a pull and a push, with no support beyond. Those edges run over old lines that are no longer
relied on; how they are joined is surveyed as no chord, so that the force is told and nothing is passed.
"""

from __future__ import annotations

import math

from groundsill.forces.reading import line_ends
from groundsill.loadpath.case import LineCase, cannot
from groundsill.loadpath.chain import Link
from groundsill.loadpath.floor_cut import asked_of_chord, pushed_weights
from groundsill.loadpath.inner.sides import old_of
from groundsill.mechanics.cut import moment_at
from groundsill.mechanics.plan import rotate
from groundsill.work.inner import InnerFoundationPiece
from groundsill.working.sheet import section
from groundsill.working.steps import given, note
from groundsill.working.value import marks_of

__all__ = ["hung_chord"]

_EDGE_IN = 1.0


def hung_chord(case: LineCase, piece: InnerFoundationPiece, clause: str) -> Link:
    """The chords of the floor beyond a new line and between new lines: the force in them, and that nobody checks it."""
    address, title = f"line/{case.id}/chord/{case.id}/both", "chords of the floor beyond the new line"
    out = max((old.apart_in for old in old_of(case, piece)), default=0.0)
    if out <= _EDGE_IN:
        reason = "no floor hangs out beyond this line"
        return cannot(address, title, "line", case.id, clause="", reason=reason, applies=False)
    turn, place = _upright(case, piece)
    with section(address):
        note("the floor is cut along the line: what hangs out beyond it is pushed along it, and nothing holds it there")
        W = given("W'", case.length_in / 12, "ft", "length of floor along the new line, edge to edge of the overhang")
        moments = [moment_at(place, pushed_weights(case, turn, n), ()) for n in range(len(case.forces.levels))]
        most = asked_of_chord(case, sum(moments), W, "by all levels, as if all came through the floor")
    reason = (
        f"the floor hangs out {out / 12:.1f} ft: an earthquake along the line pulls up to {float(most):,.0f} lb in its "
        "edge on either side, and one across it bends the floor between the new lines; those edges run over old lines "
        "not relied on, and how they are joined was not surveyed"
    )
    return cannot(address, title, "line", case.id, clause=clause, reason=reason, marks=marks_of((most,)))


def _upright(case: LineCase, piece: InnerFoundationPiece) -> tuple[float, float]:
    """How far to turn the plan so that the line stands upright with the overhang before it, degrees, and its place."""
    house = case.reading.house
    (x1, y1), (x2, y2) = line_ends(house, case.line)
    turn = 90.0 - math.degrees(math.atan2(y2 - y1, x2 - x1))
    old = max(old_of(case, piece), key=lambda old: old.apart_in)
    a, b = line_ends(house, house.survey.underfloor.lines[old.id])
    if rotate(((a[0] + b[0]) / 2, (a[1] + b[1]) / 2), turn)[0] > rotate((x1, y1), turn)[0]:
        turn += 180.0
    return turn, rotate((x1, y1), turn)[0]
