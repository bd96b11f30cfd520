"""Equilibrium of a wall segment pushed at its top."""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.statics import SOURCE
from groundsill.working.equation import Q, equation, require

__all__ = ["end_tension", "holding_moment", "overturning_moment", "sheathed_length", "unit_shear"]

Shear = Annotated[float, Q("lb", "V", "horizontal force at the top of the segment", at_least=0.0)]
Height = Annotated[float, Q("ft", "h", "height of the segment", at_least=0.0)]
Length = Annotated[float, Q("ft", "b", "length of the segment", above=0.0)]
Lever = Annotated[float, Q("ft", "d", "lever arm from the tension post to the compression post", above=0.0)]
DeadAlong = Annotated[float, Q("plf", "w_D", "dead load along the segment", at_least=0.0)]
Tension = Annotated[float, Q("lb", "T_a", "allowable tension of the hold-down", at_least=0.0)]
DeadFactor = Annotated[float, Q("1", "f_D", "load factor on dead load")]


@equation(
    "statics/unit-shear",
    title="Shear for each foot of length",
    clause="equilibrium",
    source=SOURCE,
    witness="WoodWorks five-story example, Table 8: 314 plf",
)
def unit_shear(V: Shear, b: Length) -> Annotated[float, Q("plf", "v", "unit shear")]:
    """Force along a segment spread over its length, plf."""
    return V / b


@equation(
    "statics/sheathed-length",
    title="Length that a force needs at a unit shear",
    clause="equilibrium",
    source=SOURCE,
    witness="WoodWorks five-story example, Table 8: 29 ft at 314 plf",
)
def sheathed_length(
    V: Shear, v: Annotated[float, Q("plf", "v", "unit shear that each foot takes", above=0.0)]
) -> Annotated[float, Q("ft", "b", "length needed")]:
    """Force along a line over what each foot of its sheathing takes, ft. Example: 5,034 lb at 380 plf: 13.25 ft."""
    return V / v


@equation(
    "statics/overturning-moment",
    title="Overturning moment of a segment",
    clause="moments about the compression post",
    source=SOURCE,
    witness="WoodWorks five-story example, Table 6: 129,887 lb-ft",
)
def overturning_moment(V: Shear, h: Height) -> Annotated[float, Q("lb-ft", "M_o", "overturning moment", at_least=0.0)]:
    """Horizontal force times the height it acts at, lb-ft. Example: 800 lb at 2 ft: 1,600 lb-ft."""
    return V * h


@equation(
    "statics/holding-moment",
    title="Moment that holds a segment down",
    clause="moments about the compression post",
    source=SOURCE,
    witness="WoodWorks five-story example, Table 10: 65,598 lb-ft",
)
def holding_moment(
    f_D: DeadFactor, w_D: DeadAlong, b: Length, T_a: Tension, d: Lever
) -> Annotated[float, Q("lb-ft", "M_r", "moment that holds the segment down")]:
    """The dead load that surely stands on the segment at half its length, and the hold-down at its lever arm.

    The dead load is spread evenly over the segment. ``f_D`` and ``T_a`` must be at one load level. Example: f_D = 0.6,
    100 plf, 4 ft, 1,000 lb at 3.5 ft: 480 + 3,500 = 3,980 lb-ft.
    """
    require(d <= b, "the lever arm is no longer than the segment")
    return f_D * w_D * b * b / 2 + T_a * d


@equation(
    "statics/end-tension",
    title="Tension at the end of a segment",
    clause="moments about the compression post",
    source=SOURCE,
    witness="WoodWorks five-story example, Table 10: 2,319 lb",
)
def end_tension(
    V: Shear, h: Height, f_D: DeadFactor, w_D: DeadAlong, b: Length, d: Lever
) -> Annotated[float, Q("lb", "T", "tension at the end, negative when dead load holds it down")]:
    """Overturning moment less the moment of the dead load that surely stands on the segment, over the lever arm.

    ``V`` and ``f_D`` must be at one load level (both allowable-stress or both strength). Example: 400 plf on a segment
    4 ft long and 2 ft high, no dead load and the full length as lever: T = 800 lb, which is v times h.
    """
    require(d <= b, "the lever arm is no longer than the segment")
    return (V * h - f_D * w_D * b * b / 2) / d
