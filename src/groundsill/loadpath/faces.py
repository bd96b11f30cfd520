"""How far an anchor stands from the two faces of the stem it is set in."""

from __future__ import annotations

from collections.abc import Iterable

from groundsill.forces.reading import doubted
from groundsill.house.foundation import FoundationSegment
from groundsill.loadpath.case import LineCase
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import given, note, subtract
from groundsill.working.value import Mark

__all__ = ["across"]


def across(
    case: LineCase, id: str, stem: FoundationSegment, edge: float, marks: Iterable[Mark] = ()
) -> tuple[float, float]:
    """Distances from an anchor to the near and the far face, inches; ``edge`` is that to the nearest face.

    Where nobody knows how thick the stem is the far face is taken as near as the near one: it is never nearer.

    Raises:
        OutsideLimits: when the anchor does not stand within the stem.
    """
    near = given("c_near", edge, "in", "anchor's centre to the nearest face", marks)
    path = f"survey.foundation.segments.{id}.top_width_in"
    thick = case.reading.number(path, stem.top_width_in, "t", "in", f"thickness of {stem.mark or 'the stem'}")
    if thick is None:
        note("how thick the stem is, is not known: the far face is taken as near as the near one")
        return near, doubted(near, case.reading.marked(path))
    if float(thick) <= edge:
        raise OutsideLimits(
            f"an anchor {edge:g} in. from the nearest face does not stand in a stem {thick:g} in. thick"
        )
    return near, subtract(thick, near, symbol="c_far", label="anchor's centre to the far face")
