"""A row of like fasteners pushed along itself by a force that passes beside it: the elastic vector method.

The force is shared alike; the couple that comes of the distance turns the row about its middle, and each fastener
resists that across the row in proportion to its distance from the middle. The end fasteners take most.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import atan2, degrees
from typing import Annotated

from groundsill.standards.statics import SOURCE
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import divide, given, multiply
from groundsill.working.value import marks_of

__all__ = ["EndFastener", "end_fastener", "fastener_force", "row_polar_moment"]

Force = Annotated[float, Q("lb", "V", "force on the group", at_least=0.0)]
Couple = Annotated[float, Q("lb-in", "M", "moment about the middle of the group", at_least=0.0)]
Count = Annotated[float, Q("1", "n", "number of fasteners", at_least=1.0)]
Apart = Annotated[float, Q("in", "s", "spacing of the fasteners", at_least=0.0)]
Polar = Annotated[float, Q("in^2", "J", "sum of the squared distances from the middle", above=0.0)]


@dataclass(frozen=True, slots=True)
class EndFastener:
    """The force on the end fastener of a row, lb: along the row, across it, together; and its angle to the row."""

    along: float
    across: float
    resultant: float
    theta: float


@equation(
    "statics/row-polar",
    title="Polar moment of a row of fasteners",
    clause="sum of the squared distances from the middle",
    source=SOURCE,
)
def row_polar_moment(n: Count, s: Apart) -> Annotated[float, Q("in^2", "J", "polar moment of the row")]:
    """The sum of the squared distances from the middle of n fasteners s apart: s^2 n (n^2 - 1)/12.

    Example: three fasteners 3 in. apart: 9 + 0 + 9 = 18 in^2.
    """
    return s**2 * n * (n**2 - 1) / 12


@equation(
    "statics/elastic-vector",
    title="Force on one fastener of an eccentric group",
    clause="elastic vector method",
    source=SOURCE,
    witness="interviewmania.com/discussion/96141: 10 kN at 100 mm on four bolts at 40 and 30 mm: 7.16 kN",
)
def fastener_force(
    V: Force,
    n: Count,
    M: Couple,
    J: Polar,
    x: Annotated[float, Q("in", "x", "distance from the middle along the force", at_least=0.0)],
    y: Annotated[float, Q("in", "y", "distance from the middle across the force", at_least=0.0)],
) -> Annotated[float, Q("lb", "R", "force on the fastener")]:
    """The root of the sum of the squares of what it takes along the force, V/n + M y/J, and across it, M x/J.

    ``x`` and ``y`` are those of the fastener where the two add. Example: 300 lb on three in a row 3 in. apart, 4 in.
    beside it: 100 along and 1,200 x 3/18 = 200 across, 223.6 lb (our own arithmetic).
    """
    return ((V / n + M * y / J) ** 2 + (M * x / J) ** 2) ** 0.5  # type: ignore[no-any-return]  # a float power is Any


@procedure(
    "statics/eccentric-row",
    title="Force on the end fastener of a row pushed along itself from beside it",
    clause="elastic vector method",
    source=SOURCE,
    alias="statics.eccentric-row",
)
def end_fastener(
    V: Force,
    n: Count,
    s: Apart = 0.0,
    e: Annotated[float, Q("in", "e", "distance from the row to the force", at_least=0.0)] = 0.0,
) -> EndFastener:
    """Force on the end fastener of a row of ``n`` for a force ``V`` along it that passes ``e`` beside it.

    Raises:
        OutsideLimits: a single fastener, or several at one place, cannot hold a couple.
    """
    along = divide(V, n, symbol="R_∥", unit="lb", label="along the row, shared alike")
    if float(e) == 0.0:
        return EndFastener(along, 0.0, along, 0.0)
    if float(n) < 2 or not float(s) > 0.0:
        raise OutsideLimits(f"{SOURCE.short}: one fastener holds no couple: the row needs two at least, apart")
    M = multiply(V, e, symbol="M", unit="lb-in", label="couple of the force about the row")
    J = row_polar_moment(n, s)
    x = given("x", float(s) * (float(n) - 1) / 2, "in", "middle of the row to its end fastener", marks_of((n, s)))
    across = multiply(divide(M, J, symbol="M/J", unit="lb/in"), x, symbol="R_⊥", unit="lb", label="across the row")
    resultant = fastener_force(V, n, M, J, x, 0.0)
    theta = degrees(atan2(float(across), float(along)))
    angle = given("θ", theta, "deg", "angle of that force to the row", marks_of((across, along)))
    return EndFastener(along, across, resultant, angle)
