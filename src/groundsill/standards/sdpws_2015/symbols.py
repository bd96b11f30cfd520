"""The symbols of SDPWS 2015, each with its unit and meaning, as the document uses them."""

from __future__ import annotations

from typing import Annotated

from groundsill.working.equation import Q

__all__ = [
    "NominalShear",
    "SegmentHeight",
    "SegmentLength",
    "ShearStiffness",
    "SpecificGravity",
    "TabulatedShear",
    "WallShear",
]

TabulatedShear = Annotated[float, Q("plf", "v_n", "nominal unit shear as tabulated", above=0.0)]
NominalShear = Annotated[float, Q("plf", "v_n", "nominal unit shear after adjustment", at_least=0.0)]
WallShear = Annotated[float, Q("plf", "v", "unit shear in the wall or floor, strength level", at_least=0.0)]
SegmentHeight = Annotated[float, Q("ft", "h", "height of the wall segment", above=0.0)]
SegmentLength = Annotated[float, Q("ft", "b_s", "length of the sheathed wall segment", above=0.0)]
SpecificGravity = Annotated[float, Q("1", "G", "specific gravity of the framing lumber", at_least=0.3, at_most=0.75)]
ShearStiffness = Annotated[float, Q("kip/in", "G_a", "apparent shear stiffness", above=0.0)]
