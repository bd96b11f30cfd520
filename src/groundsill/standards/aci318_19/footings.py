"""Strip footings with bars (ACI 318-19, 13.2 and 13.3): the depth of their bars, and what bends and shears their sides.

Along the strip a footing is a beam (``reinforced_bending``, ``one_way_shear`` with ``footing``); across it, a pair of
cantilevers that the soil pushes up beyond the faces of the concrete wall on it.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.member_symbols import BarDiameter, EffectiveDepth, SectionDepth
from groundsill.working.equation import Q, equation, require

__all__ = ["bars_depth", "side_moment", "side_shear"]

Pressure = Annotated[float, Q("psi", "q_u", "pressure of the soil under factored loads, less own weight", at_least=0.0)]
Projection = Annotated[float, Q("in", "p", "footing beyond the face of the concrete wall", at_least=0.0)]
Strip = Annotated[float, Q("in", "b", "length of strip looked at", above=0.0)]


@equation(
    "aci318-19/13.3.1.2",
    title="Depth of the bars at the bottom of a footing",
    clause="13.3.1.2",
    source=SOURCE,
    constants={6: "in"},
)
def bars_depth(
    h: SectionDepth, c_c: Annotated[float, Q("in", "c_c", "clear cover of the bars", above=0.0)], d_b: BarDiameter
) -> EffectiveDepth:
    """The whole depth less cover and half a bar, at least 6 in.

    Source: ACI 318-19, 13.3.1.2, read in metric (150 mm) in public page notes on ACI 318M-19, pages 191 to 202. 12 in.
    with 3 in. of cover under #4: 8.75 in. (our own arithmetic).
    """
    require(h - c_c - d_b / 2 >= 6, "bars at the bottom of a footing lie at least 6 in. below its top")
    return h - c_c - d_b / 2


@equation(
    "aci318-19/13.2.7.1",
    title="Moment in the side of a strip footing",
    clause="13.2.7.1 and 13.2.6.6",
    source=SOURCE,
    how="computed",
)
def side_moment(
    q_u: Pressure, p: Projection, b: Strip
) -> Annotated[float, Q("lb-in", "M_u", "moment at the face of the wall")]:
    """The soil's push beyond the face of a concrete wall, at half its lever: q_u p^2/2 times b, lb-in.

    Statics at the place that Table 13.2.7.1 names for a concrete wall, read in public page notes on ACI 318M-19, pages
    191 to 202. 10 psi, 6 in., 12 in. of strip: 2,160 lb-in (our own arithmetic).
    """
    return q_u * p**2 / 2 * b


@equation(
    "aci318-19/13.2.7.2",
    title="Shear in the side of a strip footing",
    clause="13.2.7.2",
    source=SOURCE,
    how="computed",
)
def side_shear(
    q_u: Pressure, p: Projection, d: EffectiveDepth, b: Strip
) -> Annotated[float, Q("lb", "V_u", "shear at the depth of the bars from the face of the wall")]:
    """The soil's push beyond a depth d from the face of the wall: q_u (p - d) b, none where p is less, lb.

    Statics at the place that 13.2.7.2 names, read in public page notes on ACI 318M-19, pages 191 to 202. 10 psi, 12
    and 8.75 in., 12 in. of strip: 390 lb (our own arithmetic).
    """
    return q_u * max(p - d, 0) * b
