"""The symbols of ACI 318-19 chapters 7 to 25 for members with bars: lb, in, psi, as the document uses them.

New structural concrete starts at 2,500 psi (19.2.1.1) and bars at what is sold; an old, weaker section has no bars to
count and belongs to ``plain_concrete``.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.working.equation import Q

__all__ = [
    "EXAMPLES",
    "HOUSE",
    "PAGES",
    "BarArea",
    "BarDiameter",
    "BarYield",
    "EffectiveDepth",
    "FactoredMoment",
    "FactoredShear",
    "NominalMoment",
    "NominalShear",
    "SectionDepth",
    "StirrupArea",
    "StirrupSpacing",
    "StirrupYield",
    "StructuralStrength",
    "WebWidth",
]

StructuralStrength = Annotated[
    float, Q("psi", "f'_c", "specified strength of the concrete", at_least=2500.0, at_most=10000.0)
]
BarYield = Annotated[float, Q("psi", "f_y", "specified yield strength of the bars", at_least=33000.0, at_most=80000.0)]
StirrupYield = Annotated[
    float, Q("psi", "f_yt", "yield strength counted for stirrups", at_least=33000.0, at_most=60000.0)
]
WebWidth = Annotated[float, Q("in", "b_w", "width of the section", above=0.0)]
SectionDepth = Annotated[float, Q("in", "h", "whole depth of the section", above=0.0)]
EffectiveDepth = Annotated[float, Q("in", "d", "depth from the pressed face to the middle of the bars", above=0.0)]
BarArea = Annotated[float, Q("in^2", "A_s", "area of the bars in tension", above=0.0)]
BarDiameter = Annotated[float, Q("in", "d_b", "diameter of the bar", above=0.0, at_most=2.26)]
StirrupArea = Annotated[float, Q("in^2", "A_v", "area of all legs of one stirrup", at_least=0.0)]
StirrupSpacing = Annotated[float, Q("in", "s", "spacing of the stirrups", above=0.0)]
FactoredMoment = Annotated[float, Q("lb-in", "M_u", "factored moment", at_least=0.0)]
FactoredShear = Annotated[float, Q("lb", "V_u", "factored shear", at_least=0.0)]
NominalMoment = Annotated[float, Q("lb-in", "M_n", "nominal moment", at_least=0.0)]
NominalShear = Annotated[float, Q("lb", "V_n", "nominal shear strength", at_least=0.0)]

# where the rules were read and worked; the full addresses stand in the tables and the witness files
PAGES = "public page notes on ACI 318M-19"
HOUSE = "hand-worked notes of a house, github.com/winedarksea/TypeHaus"
EXAMPLES = "worked examples, github.com/clay-good/roughlogic.com"
