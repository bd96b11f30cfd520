"""Equilibrium of a floor that spans level between braced lines: the pull and push along its two edges."""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.statics import SOURCE
from groundsill.working.equation import Q, equation

__all__ = ["chord_force"]

Moment = Annotated[float, Q("lb-ft", "M", "moment in the floor at the cut", at_least=0.0)]
Depth = Annotated[float, Q("ft", "D", "depth of the floor from edge to edge at the cut", above=0.0)]


@equation(
    "statics/chord-force",
    title="Chord force of a floor",
    clause="a couple of the floor's two edges",
    source=SOURCE,
    witness="City of Everett permit sheet 830284, page 109: 20,520 lb-ft over 20 ft is 1,026 lb",
)
def chord_force(M: Moment, D: Depth) -> Annotated[float, Q("lb", "T", "chord force at the cut")]:
    """The pull in one edge of the floor, and the push in the other, at a cut across it: M/D, lb.

    Example: 20,520 lb-ft in a roof 20 ft deep: 1,026 lb (City of Everett permit sheet 830284, page 109).
    """
    return M / D
