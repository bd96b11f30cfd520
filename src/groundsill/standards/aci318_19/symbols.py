"""The symbols of ACI 318-19 chapters 14 and 17, each with its unit and meaning, as the document uses them.

The chapter caps f'c at 10,000 psi and building codes ask for 2,500 psi. The equations take any strength above zero:
what old, weaker concrete does to a result's standing is told by :mod:`groundsill.standards.aci318_19.scope`.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.working.equation import Q

__all__ = [
    "GUIDE",
    "NOTES",
    "AnchorCount",
    "ConcreteStrength",
    "Diameter",
    "EdgeDistance",
    "EdgeDistanceFar",
    "EdgeDistanceSide",
    "EdgeLeast",
    "Embedment",
    "LightweightFactor",
    "Spacing",
    "StrengthFactor",
    "Thickness",
]

Diameter = Annotated[float, Q("in", "d_a", "outside diameter of the anchor", above=0.0, at_most=4.0)]
Embedment = Annotated[float, Q("in", "h_ef", "effective embedment depth", above=0.0)]
ConcreteStrength = Annotated[
    float, Q("psi", "f'_c", "compressive strength of the concrete", above=0.0, at_most=10000.0)
]
EdgeDistance = Annotated[float, Q("in", "c_a1", "distance to the edge the breakout runs to", above=0.0)]
EdgeDistanceSide = Annotated[float, Q("in", "c_a2", "nearer edge distance across c_a1 (end of the wall)", above=0.0)]
EdgeDistanceFar = Annotated[float, Q("in", "c_a2_far", "farther edge distance across c_a1", above=0.0)]
EdgeLeast = Annotated[float, Q("in", "c_a_min", "least edge distance", above=0.0)]
Thickness = Annotated[float, Q("in", "h_a", "thickness of the member along the anchor's axis", above=0.0)]
Spacing = Annotated[float, Q("in", "s", "spacing of the anchors in the row", at_least=0.0)]
AnchorCount = Annotated[float, Q("1", "n", "number of anchors in the row", at_least=1.0)]
LightweightFactor = Annotated[float, Q("1", "lambda_a", "lightweight concrete factor", at_least=0.6, at_most=1.0)]
# where most of the chapter's equations were read and worked; the address stands in the witness files
GUIDE = "breakout design guide, October 2025"
# notes that give the chapter clause by clause; addresses in the witness files and the tables
NOTES = "notes on chapter 17, github.com/wcfrobert/wcfrobert.github.io"

StrengthFactor = Annotated[float, Q("1", "phi", "strength reduction factor", above=0.0, at_most=1.0)]
