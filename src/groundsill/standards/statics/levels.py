"""What a level survey measures: slope, angular distortion, deflection ratio. Geometry, no standard's own."""

from __future__ import annotations

from math import sqrt
from typing import Annotated

from groundsill.standards.statics import SOURCE
from groundsill.working.equation import Q, equation, require

__all__ = ["angular_distortion", "deflection_ratio", "slope_of_plane"]

Apart = Annotated[float, Q("in", "L", "distance between the two spots", above=0.0)]


@equation(
    "statics/slope-of-plane", title="Slope of the best plane", clause="geometry of a plane", source=SOURCE,
    how="computed",
)  # fmt: skip
def slope_of_plane(
    a: Annotated[float, Q("1", "a", "rise of the plane along x")],
    b: Annotated[float, Q("1", "b", "rise of the plane along y")],
) -> Annotated[float, Q("1", "ω", "tilt, rise over run along the steepest way")]:
    """The tilt of a house as one piece: the slope of the plane nearest to all its spots.

    Example: 3 in 1,000 along x and 4 in 1,000 along y: 5 in 1,000.
    """
    return sqrt(a**2 + b**2)


@equation(
    "statics/angular-distortion", title="Angular distortion between two spots", clause="geometry", source=SOURCE,
    how="computed",
)  # fmt: skip
def angular_distortion(
    r_1: Annotated[float, Q("in", "r_1", "height of the one over the best plane")],
    r_2: Annotated[float, Q("in", "r_2", "height of the other over the best plane")],
    L: Apart,
) -> Annotated[float, Q("1", "β", "angular distortion")]:
    """How much one spot lies lower than the next once the tilt of the whole is taken off, over their distance.

    Example: 0.2 in. over and 0.2 in. under the plane, 120 in. apart: 1/300.
    """
    return sqrt((r_1 - r_2) ** 2) / L


@equation(
    "statics/deflection-ratio", title="Deflection ratio of three spots in a line", clause="geometry", source=SOURCE,
    how="computed",
)  # fmt: skip
def deflection_ratio(
    z_1: Annotated[float, Q("in", "z_1", "height of the first end")],
    z_m: Annotated[float, Q("in", "z_m", "height of the spot between")],
    z_2: Annotated[float, Q("in", "z_2", "height of the other end")],
    x: Annotated[float, Q("in", "x", "distance of the spot between from the first end", at_least=0.0)],
    L: Annotated[float, Q("in", "L", "distance between the ends", above=0.0)],
) -> Annotated[float, Q("1", "Δ/L", "deflection ratio, positive where the spot hangs below the ends (sags)")]:
    """How far the spot between lies under the straight line of the ends, over the length; tilt has no part in it.

    Example: ends level, the middle of 240 in. half an inch low: 1/480.
    """
    require(x <= L, "the spot lies between the ends")
    return (z_1 + (z_2 - z_1) * x / L - z_m) / L
