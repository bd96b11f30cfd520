"""Soil held back by a low fence of planks on stakes: push, moment, and the bending of a plank between two stakes.

The soil pushes with a pressure that grows in a straight line with depth, as the code's table gives it.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.statics import SOURCE
from groundsill.working.equation import Q, equation

__all__ = ["earth_moment", "earth_push", "plank_moment", "stake_moment"]

Pressure = Annotated[float, Q("psf/ft", "k", "lateral soil load for each foot of depth", above=0.0)]
Held = Annotated[float, Q("ft", "d", "height of soil held back", at_least=0.0)]
Spacing = Annotated[float, Q("ft", "s", "length of wall, or spacing of the stakes", above=0.0)]
Push = Annotated[float, Q("lb", "P", "push on one stake", at_least=0.0)]


@equation(
    "statics/earth-push",
    title="Push of soil on a length of wall",
    clause="triangle of pressure",
    source=SOURCE,
    how="computed",
)
def earth_push(k: Pressure, d: Held, s: Spacing) -> Push:
    """Half of k d^2 for each foot of length. Example: 30 psf/ft, 10 ft high, 1 ft long: 1,500 lb."""
    return k * d**2 / 2 * s


@equation(
    "statics/earth-moment",
    title="Moment of soil about the foot of a wall",
    clause="triangle of pressure, a third up",
    source=SOURCE,
    how="computed",
)
def earth_moment(k: Pressure, d: Held, s: Spacing) -> Annotated[float, Q("lb-ft", "M", "moment of the soil's push")]:
    """The push, a third up: a sixth of k d^3. Example: 45 psf/ft, 2 ft, 1 ft long: 60 lb-ft (our own arithmetic)."""
    return k * d**3 / 6 * s


@equation(
    "statics/plank-moment",
    title="Moment in the lowest plank between two stakes",
    clause="simple beam, even load",
    source=SOURCE,
    how="computed",
)
def plank_moment(
    k: Pressure, d: Held, w: Annotated[float, Q("ft", "w", "width of the plank", above=0.0)], s: Spacing
) -> Annotated[float, Q("lb-ft", "M", "moment in the plank")]:
    """The pressure at the foot over all of the plank, as a simple beam: an eighth of k d w s^2.

    Example: 60 psf/ft, 1.25 ft deep, 7.25 in. wide, stakes at 3 ft: 51 lb-ft (our own arithmetic).
    """
    return k * d * w * s**2 / 8


@equation(
    "statics/stake-moment",
    title="Moment in a stake that holds back soil",
    clause="cantilever held a third of its depth down",
    source=SOURCE,
    how="computed",
)
def stake_moment(
    P: Push, d: Held, d_s: Annotated[float, Q("ft", "d_s", "depth of the stake in the ground", above=0.0)]
) -> Annotated[float, Q("lb-ft", "M", "moment in the stake")]:
    """The push a third up the height held, about a point a third down the stake: P (d + d_s)/3.

    Where the code's rule takes the bearing of the soil; our choice. Example: 140 lb, 1.25 ft, 2 ft: 152 lb-ft.
    """
    return P * (d + d_s) / 3
