"""Equilibrium of a wall segment pushed at its top.

The dead load counted on a segment is spread evenly over it. Moments are taken about the middle of the post that is
pressed down, whatever stands nearer to the end than that helps to turn the segment over.
"""

from __future__ import annotations

from math import sqrt
from typing import Annotated

from groundsill.standards.statics import SOURCE
from groundsill.working.equation import Q, equation, procedure, require
from groundsill.working.steps import least

__all__ = [
    "all_lifted", "end_tension", "holding_moment", "lifted_length", "overturning_moment", "partly_lifted",
    "post_compression", "rocking_start", "sheathed_length", "unit_shear",
]  # fmt: skip

Shear = Annotated[float, Q("lb", "V", "horizontal force at the top of the segment", at_least=0.0)]
Height = Annotated[float, Q("ft", "h", "height it acts at", at_least=0.0)]
Length = Annotated[float, Q("ft", "b", "length of the segment", above=0.0)]
Lever = Annotated[float, Q("ft", "d", "lever arm from the tension post to the compression post", above=0.0)]
DeadArm = Annotated[float, Q("ft", "x_D", "from the compression post to the middle of the dead load")]
DeadAlong = Annotated[float, Q("plf", "w_D", "dead load along the segment", at_least=0.0)]
LoadAlong = Annotated[float, Q("plf", "w", "load along the segment, with its factors", at_least=0.0)]
Tension = Annotated[float, Q("lb", "T_a", "allowable tension of the hold-down", at_least=0.0)]
DeadFactor = Annotated[float, Q("1", "f_D", "load factor on dead load")]
Moment = Annotated[float, Q("lb-ft", "M_o", "overturning moment", at_least=0.0)]
ToPost = Annotated[float, Q("ft", "b_c", "from the pulled end to the compression post", above=0.0)]
Tributary = Annotated[float, Q("ft", "t", "length of wall whose load stands on the post in any case", at_least=0.0)]
Compression = Annotated[float, Q("lb", "C", "compression in the end post")]


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
    f_D: DeadFactor, w_D: DeadAlong, b: Length, x_D: DeadArm, T_a: Tension, d: Lever
) -> Annotated[float, Q("lb-ft", "M_r", "moment that holds the segment down")]:
    """The dead load that surely stands on the segment at its own arm, and the hold-down at the lever arm.

    ``f_D`` and ``T_a`` must be at one load level. Example: f_D = 0.6, 100 plf on 4 ft at 1.75 ft, 1,000 lb at 3.5 ft:
    420 + 3,500 = 3,920 lb-ft.
    """
    require(d <= b, "the lever arm is no longer than the segment")
    return f_D * w_D * b * x_D + T_a * d


@equation(
    "statics/end-tension",
    title="Tension at the end of a segment",
    clause="moments about the compression post",
    source=SOURCE,
    witness="WoodWorks five-story example, Table 10: 2,319 lb",
)
def end_tension(
    M_o: Moment, f_D: DeadFactor, w_D: DeadAlong, b: Length, x_D: DeadArm, d: Lever
) -> Annotated[float, Q("lb", "T", "tension at the end, negative when dead load holds it down")]:
    """Overturning moment less the moment of the dead load that surely stands on the segment, over the lever arm.

    ``M_o`` and ``f_D`` must be at one load level (both allowable-stress or both strength). Example: 400 plf on a
    segment 4 ft long and 2 ft high, no dead load and the full length as lever: T = 800 lb, which is v times h.
    """
    require(d <= b, "the lever arm is no longer than the segment")
    return (M_o - f_D * w_D * b * x_D) / d


# ---- The post that is pressed down ----------------------------------------------------------------------------------


@equation(
    "statics/all-lifted",
    title="Compression in the end post, all of the load lifted",
    clause="moments about the tension post, equilibrium of forces",
    source=SOURCE,
    how="computed",
)
def all_lifted(M_o: Moment, w: LoadAlong, b: Length, x_D: DeadArm, d: Lever) -> Compression:
    """What is pulled up at one end and all of the load on the segment come down at the other: C = T + w b.

    Example: 1,600 lb-ft, no load, lever 3.5 ft: 457 lb, the tension; with 46 plf on 4 ft at 1.75 ft it is 365 + 184 =
    549 lb (our own arithmetic).
    """
    require(d <= b, "the lever arm is no longer than the segment")
    return (M_o - w * b * x_D) / d + w * b


@equation(
    "statics/lifted-length",
    title="Length of wall whose load holds the pulled end",
    clause="moments about the compression post",
    source=SOURCE,
    how="computed",
)
def lifted_length(M_o: Moment, w: LoadAlong, b_c: ToPost) -> Annotated[float, Q("ft", "L_u", "length lifted")]:
    """The load is lifted from the pulled end inward, as far as the moment asks: M_o = w L_u (b_c - L_u/2).

    Example: 600 lb-ft, 100 plf, 3.75 ft: 2.31 ft (our own arithmetic).
    """
    require(2 * M_o <= w * b_c**2, "the load on the segment holds it")
    return b_c - sqrt(b_c**2 - 2 * M_o / w)


@equation(
    "statics/partly-lifted",
    title="Compression in the end post, part of the load lifted",
    clause="equilibrium of forces",
    source=SOURCE,
    how="computed",
)
def partly_lifted(
    w: LoadAlong, L_u: Annotated[float, Q("ft", "L_u", "length lifted", at_least=0.0)], t: Tributary
) -> Compression:
    """What is lifted at one end comes down at the other, on top of what stands there: w (L_u + t).

    Example: 100 plf, 2.31 ft lifted, 0.92 ft of its own: 323 lb (our own arithmetic).
    """
    return w * (L_u + t)


@procedure(
    "statics/post-compression",
    title="Compression in the end post of a segment",
    clause="equilibrium",
    source=SOURCE,
    alias="statics.end-post",
)
def post_compression(M_o: Moment, w: LoadAlong, b: Length, x_D: DeadArm, d: Lever, b_c: ToPost, t: Tributary) -> float:
    """The greatest force in the post that is pressed down, by how much of the load the moment has to lift.

    Where the moment is greater than all of the load holds, C = T + w b; else the load nearest to the pulled end is
    lifted, and what stands between stays on its own studs. Example: 46 plf on 4 ft, 1,600 lb-ft: 549 lb.
    """
    if float(M_o) >= float(w) * float(b) * float(x_D):
        return all_lifted(M_o, w, b, x_D, d)
    pressed = partly_lifted(w, lifted_length(M_o, w, b_c), t)
    whole = partly_lifted(w, b, 0.0)
    return least(pressed, whole, symbol="C", label="compression in the end post, at most all of the load")


@equation(
    "statics/rocking-start",
    title="Acceleration that starts a block rocking",
    clause="moments about its toe",
    source=SOURCE,
    how="computed",
)
def rocking_start(
    t: Annotated[float, Q("in", "t", "thickness of the block", above=0.0)],
    h: Annotated[float, Q("in", "h", "height of the block", above=0.0)],
) -> Annotated[float, Q("g", "a_0", "acceleration across it, parts of gravity")]:
    """A loose block begins to rock when its own weight's lever, half its thickness, is used up: t/h of gravity.

    No mortar and no load on it are counted. Example: 9 in. thick, 18 in. high: 0.5 g.
    """
    return t / h
