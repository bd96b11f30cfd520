"""A footing: how wide it must be, and, lifted by a point, what of it hangs.

Lifted it is a beam of plain material on soil that pushes and does not pull.
"""

from __future__ import annotations

from math import sqrt
from typing import Annotated

from groundsill.standards.statics import SOURCE
from groundsill.working.equation import Q, equation, require

__all__ = ["hanging_length", "least_width", "lifted_weight", "spanning_length"]

Along = Annotated[float, Q("plf", "w", "weight along the beam", above=0.0)]
Side = Annotated[float, Q("ft", "L_1", "length lifted to one side", at_least=0.0)]
OtherSide = Annotated[float, Q("ft", "L_2", "length lifted to the other", at_least=0.0)]


@equation(
    "statics/least-width",
    title="Width that a strip footing needs",
    clause="equilibrium",
    source=SOURCE,
    how="computed",
)
def least_width(
    w: Annotated[float, Q("plf", "w", "load along the footing, allowable-stress level", at_least=0.0)],
    q_a: Annotated[float, Q("psf", "q_a", "allowable pressure", above=0.0)],
    gamma_c: Annotated[float, Q("pcf", "γ_c", "weight of concrete", above=0.0)],
    h: Annotated[float, Q("ft", "h", "thickness of the footing", at_least=0.0)],
) -> Annotated[float, Q("ft", "B", "least width")]:
    """The load over what the soil bears beside the footing itself: w/(q_a - γ_c h), ft.

    Example: 1,400 plf, 1,500 psf, a footing 8 in. thick: 1.0 ft (our own arithmetic). Where q_a is a net pressure,
    beyond that of the soil dug out, h is 0.
    """
    require(q_a > gamma_c * h, "the soil bears more than the footing's own weight")
    return w / (q_a - gamma_c * h)


@equation(
    "statics/hanging-length",
    title="Length of a beam that hangs free by its own strength",
    clause="moment of a cantilever, w L^2/2",
    source=SOURCE,
    how="computed",
)
def hanging_length(
    M: Annotated[float, Q("lb-ft", "φM_n", "moment it carries", at_least=0.0)], w: Along
) -> Annotated[float, Q("ft", "L_M", "length that hangs free")]:
    """The cantilever whose own load bends it as much as it carries. Example: 2,000 lb-ft, 250 plf: 4 ft.

    A beam that goes on beyond, and so is held level there, hangs longer: not counted.
    """
    return sqrt(2 * M / w)


@equation(
    "statics/spanning-length",
    title="Length of a lifted beam between pull and soil",
    clause="moment between the pull and the far end",
    source=SOURCE,
    how="computed",
)
def spanning_length(
    L_c: Annotated[float, Q("ft", "L_c", "length that the beam carries hanging free", above=0.0)], L_1: Side
) -> Annotated[float, Q("ft", "L_2", "length to where it touches the soil")]:
    """How far the longer side may reach to where it touches the soil again, the shorter one hanging by L_1.

    Between, the beam is bent the other way by (L_2^2 - L_1^2)^2 w/(8 L_2^2), which is what hanging by L_c asks at this
    length. Its shear beside the pull is then at most 1.42 w L_c. Example: 4 ft and 0 ft: 8 ft; 4 and 3 ft: 9 ft.
    """
    return L_c + sqrt(L_c**2 + L_1**2)


@equation(
    "statics/lifted-weight",
    title="Pull that lifts a beam from the soil",
    clause="moments about the far end of the longer side",
    source=SOURCE,
    how="computed",
)
def lifted_weight(w: Along, L_1: Side, L_2: OtherSide) -> Annotated[float, Q("lb", "W", "pull that lifts it")]:
    """All of the weight for equal sides, half of it for a pull at an end: w (L_1 + L_2)^2 over twice the longer side.

    With unequal sides the beam touches the soil at the far end of the longer one, which carries the rest. Example: 250
    plf, 4 and 4 ft: 2,000 lb; 4 and 0 ft: 500 lb.
    """
    return 0.0 if L_1 + L_2 <= 0 else w * (L_1 + L_2) ** 2 / (2 * max(L_1, L_2))
