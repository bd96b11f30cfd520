"""A stem that leans on its base: how far off the middle its load comes down, and how hard its load pushes sideways.

The stem and its footing have turned as one piece, so little that the sine of the turn is its slope. Only weights are in
it: what soil pushes comes on top.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.statics import SOURCE
from groundsill.working.equation import Q, equation, require

__all__ = ["kern_reach", "lean_eccentricity", "lean_shift", "lean_thrust", "pushed_eccentricity"]

Lean = Annotated[float, Q("in/ft", "s", "lean, inches in a foot of height", at_least=0.0)]
OnTop = Annotated[float, Q("plf", "P", "load on the top of the stem", at_least=0.0)]
Height = Annotated[float, Q("ft", "h", "height of the stem over the bottom of its footing", above=0.0)]
Shift = Annotated[float, Q("in", "x", "how far the top stands off to the side of the base", at_least=0.0)]


@equation(
    "statics/lean-shift",
    title="How far a lean has carried the top of a stem",
    clause="geometry",
    source=SOURCE,
    how="computed",
)
def lean_shift(s: Lean, h: Height) -> Shift:
    """Lean times height. Example: half an inch in a foot, 2.5 ft high: 1.25 in."""
    return s * h


@equation(
    "statics/lean-eccentricity",
    title="How far off the middle of its base a leaning stem stands",
    clause="moments about the middle of the base",
    source=SOURCE,
    how="computed",
)
def lean_eccentricity(
    x: Shift,
    P: OnTop,
    W: Annotated[float, Q("plf", "W", "weight of the stem and its footing", above=0.0)],
    h: Height,
    y: Annotated[float, Q("ft", "y", "height of the middle of that weight over the bottom", at_least=0.0)],
) -> Annotated[float, Q("in", "e", "from the middle of the base to where the load comes down")]:
    """The load at the top has moved by all of the shift, the stem's own weight by its part of it.

    The stem is taken to stand on the middle of its footing. Example (our arithmetic): 1.25 in., 600 plf on top, 250 plf
    of stem, 2.5 ft high with its weight at half of that: (600 x 1.25 + 250 x 0.625) / 850 = 1.07 in.
    """
    require(y <= h, "the middle of the weight lies no higher than the top")
    return x * (P + W * y / h) / (P + W)


@equation(
    "statics/lean-with-soil",
    title="How far off the middle of its base a stem stands that soil pushes as well",
    clause="moments about the middle of the base",
    source=SOURCE,
    how="computed",
)
def pushed_eccentricity(
    e: Annotated[float, Q("in", "e", "from the middle of the base, by weights alone", at_least=0.0)],
    M: Annotated[float, Q("lb-in", "M", "moment of the soil about the base, on one foot of length", at_least=0.0)],
    N: Annotated[float, Q("lb", "N", "load and own weight on one foot of length", above=0.0)],
) -> Annotated[float, Q("in", "e'", "from the middle of the base, with the soil's push")]:
    """What soil on the higher side adds where nothing holds the top of the stem.

    Example (our arithmetic): 1 in. by weights, 60 lb-ft (720 lb-in) of soil, 850 lb: 1.85 in.
    """
    return e + M / N


@equation(
    "statics/kern",
    title="How far a load may stand off the middle of a footing with all of it pressed",
    clause="P/A and M/S, no pull between footing and soil",
    source=SOURCE,
    how="computed",
)
def kern_reach(
    B: Annotated[float, Q("in", "B", "width of the footing", above=0.0)],
) -> Annotated[float, Q("in", "k", "a sixth of the width: half of the middle third")]:
    """Beyond it the edge away from the load lifts; in words at seaintarchive.org, 1999b/msg01098 (e < W/6).

    Example: 12 in. wide, 2 in.
    """
    return B / 6


@equation(
    "statics/lean-thrust",
    title="How hard the load on a leaning stem pushes to the side",
    clause="equilibrium at its top",
    source=SOURCE,
    how="computed",
    constants={12.0: "in/ft"},
)
def lean_thrust(s: Lean, P: OnTop) -> Annotated[float, Q("plf", "H", "push along each foot of the stem's top")]:
    """The load times the slope of the lean: what the floor or the bolts hold back. Example: 600 plf at half an inch in
    a foot, 25 plf.
    """
    return P * s / 12.0
