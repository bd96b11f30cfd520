"""The foundation under a station of a line: where it is cut, how high it is, whether a core gave its strength.

Bolts and hold-downs ask the same questions of the concrete they stand in; they are answered here, from the survey.
"""

from __future__ import annotations

import math
from typing import Literal

from groundsill.house.cores import CoreEvidence, cores_for, evidence_of
from groundsill.house.foundation import FoundationSegment
from groundsill.house.survey import Survey
from groundsill.loadpath.case import LineCase
from groundsill.standards.aci214_4r_10.cores import LEAST_CORES
from groundsill.working.sheet import Sheet
from groundsill.working.steps import given, scale
from groundsill.working.value import marks_of

__all__ = [
    "CLEAR_OF_BREAK_IN", "cored_strength", "height_facts", "height_of", "how_known", "mean_of_cores",
    "near_break", "nominal_at_mean", "strength_of",
]  # fmt: skip

CLEAR_OF_BREAK_IN = 12.0  # no bolt or hold-down is counted nearer to a full-depth break than this; our choice
_CUTTING = ("full-depth crack", "cold joint", "gap")


def near_break(case: LineCase, station: float, also: tuple[str, ...] = ()) -> str | None:
    """Why nothing may be anchored at a station: a break within 12 in.; ``also`` names further kinds of break."""
    for _, cut in case.reading.on_line(case.reading.house.survey.foundation.breaks, case.id):
        if cut.kind in (*_CUTTING, *also) and abs(cut.station_in - station) < CLEAR_OF_BREAK_IN:
            return f"it stands within {CLEAR_OF_BREAK_IN:g} in. of a {cut.kind} in the foundation"
    return None


def height_of(segment: FoundationSegment) -> float | None:
    """Height of the concrete, inches: from its top down to the footing's bottom, both measured from the soil outside.

    With the depth unknown only what stands above the soil, on the side where more is seen; None when nothing is known.
    """
    outside, inside, below = (
        segment.above_outside_soil_in.value,
        segment.above_inside_soil_in.value,
        segment.depth_in.value,
    )
    if outside is not None and below is not None:
        return max(outside + below, 0.0) or None
    return max(outside or 0.0, inside or 0.0, 0.0) or None


def height_facts(segment: FoundationSegment) -> tuple[str, ...]:
    """The facts that :func:`height_of` rests on, by their names."""
    if segment.above_outside_soil_in.value is not None and segment.depth_in.value is not None:
        return "above_outside_soil_in", "depth_in"
    return "above_outside_soil_in", "above_inside_soil_in"


def strength_of(case: LineCase, id: str, segment: FoundationSegment) -> float | None:
    """The strength of a stretch of concrete, recorded with its origin; None when nobody knows it."""
    path, label = f"survey.foundation.segments.{id}.strength_psi", f"concrete of {segment.mark}"
    return case.reading.number(path, segment.strength_psi, "f'_c", "psi", label)


def how_known(case: LineCase, id: str) -> Literal["tested", "specified", "assumed"]:
    """How the strength of a stretch of concrete is known: new concrete's is specified, old concrete's cored or not."""
    if case.inner is not None:
        return "specified"
    return "assumed" if cored_strength(case, id) is None else "tested"


def cored_strength(case: LineCase, id: str) -> float | None:
    """The least strength at which a core that speaks for this stretch broke, psi; None when no core is on record.

    A core of another stretch speaks for it where both are written down as one pour (:mod:`groundsill.house.cores`).
    """
    survey = case.reading.house.survey
    cores = case.reading.once(("cores", id), lambda: cores_for(survey, id))
    return min((test.result for _, test in cores), default=None)


def mean_of_cores(case: LineCase, id: str) -> float | None:
    """The mean strength of the cores that speak for a stretch, psi; None with fewer than three that count.

    It belongs to the order in which links are expected to fail, and to no check.
    """
    survey = case.reading.house.survey
    found = case.reading.once(("evidence", id), lambda: _quietly(survey, id))
    return None if found is None or found.mean is None or len(found.in_place) < LEAST_CORES else float(found.mean)


def nominal_at_mean(case: LineCase, id: str, f_c: float, nominal: float) -> float:
    """A breakout or pryout strength, lb, at the mean of the stretch's cores instead of the strength counted, for what
    fails first: both go with the root of the strength. The same where no cores give a mean.
    """
    mean = mean_of_cores(case, id)
    if mean is None:
        return nominal
    label = "root of the mean of the cores over the strength counted, for what fails first"
    part = given("√(f_m/f'_c)", math.sqrt(mean / float(f_c)), "1", label, marks_of((f_c,)))
    return scale(nominal, part, symbol="R_n", label="at the mean of the cores")


def _quietly(survey: Survey, id: str) -> CoreEvidence | None:
    """What cores come to, worked out on a sheet of its own: the working of a bolt does not repeat it."""
    with Sheet():
        return evidence_of(survey, id)
