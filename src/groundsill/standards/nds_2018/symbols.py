"""What the letters of NDS chapter 12 stand for, with unit and limits, and how a composed rule holds its own limits."""

from __future__ import annotations

from typing import Annotated

from groundsill.working.equation import Q
from groundsill.working.errors import OutsideLimits
from groundsill.working.source import Source

__all__ = [
    "Angle",
    "BearingMain",
    "BearingSide",
    "BoltDiameter",
    "Diameter",
    "Gravity",
    "LengthMain",
    "LengthSide",
    "NailLength",
    "Penetration",
    "RatioBearing",
    "RatioLength",
    "Reduction",
    "Reference",
    "YieldStrength",
    "hold",
]

DIAMETER = Q("in", "D", "fastener diameter", above=0.0, at_most=1.0)
BOLT_DIAMETER = Q("in", "D", "bolt diameter", at_least=0.25, at_most=1.0)
ANGLE = Q("deg", "θ", "angle between load and grain", at_least=0.0, at_most=90.0)
LENGTH_SIDE = Q("in", "l_s", "dowel bearing length in the side member", above=0.0)
LENGTH_MAIN = Q("in", "l_m", "dowel bearing length in the main member", above=0.0)

Diameter = Annotated[float, DIAMETER]
BoltDiameter = Annotated[float, BOLT_DIAMETER]
Angle = Annotated[float, ANGLE]
LengthSide = Annotated[float, LENGTH_SIDE]
LengthMain = Annotated[float, LENGTH_MAIN]
BearingMain = Annotated[float, Q("psi", "F_em", "dowel bearing strength of the main member", above=0.0)]
BearingSide = Annotated[float, Q("psi", "F_es", "dowel bearing strength of the side member", above=0.0)]
YieldStrength = Annotated[float, Q("psi", "F_yb", "bending yield strength of the dowel", above=0.0)]
Gravity = Annotated[float, Q("1", "G", "specific gravity, oven-dry", above=0.0, at_most=1.0)]
Reduction = Annotated[float, Q("1", "R_d", "reduction term", above=0.0)]
RatioBearing = Annotated[float, Q("1", "R_e", "bearing strength, main over side", above=0.0)]
RatioLength = Annotated[float, Q("1", "R_t", "bearing length, main over side", above=0.0)]
Penetration = Annotated[float, Q("in", "p", "penetration into the main member, tip included", above=0.0)]
NailLength = Annotated[float, Q("in", "L", "length of the nail", above=0.0)]
Reference = Annotated[float, Q("lb", "Z", "reference lateral design value of one fastener", at_least=0.0)]


def hold(q: Q, value: float, source: Source, clause: str) -> None:
    """Refuse an argument of a composed rule outside its declared limits, in the words an equation would use.

    Raises:
        OutsideLimits: naming symbol, value, limit and clause; NaN and infinity are refused too.
    """
    number = float(value)
    inside = (
        -float("inf") < number < float("inf")
        and (q.above is None or number > q.above)
        and (q.at_least is None or number >= q.at_least)
        and (q.below is None or number < q.below)
        and (q.at_most is None or number <= q.at_most)
    )
    if not inside:
        allowed = f"must be {q.limits()}" if q.limits() else "must be a finite number"
        raise OutsideLimits(f"{source.cite(clause)}: {q.symbol} ({q.what}) = {number:g} {q.unit}; {allowed}")
