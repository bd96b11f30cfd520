"""How far a sheathed segment moves (SDPWS 2015, Eq. 4.3-1): chords, sheathing and nails, and what gives at the ends.

The unit shear is at strength level, and the give of the hold-down is at the strength-level force.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.sdpws_2015 import SOURCE
from groundsill.standards.sdpws_2015.symbols import SegmentHeight, SegmentLength, ShearStiffness, WallShear
from groundsill.working.equation import Q, equation

CANOPY = "panel of a canopy in notes of github.com/winedarksea/TypeHaus"

__all__ = ["anchorage_part", "bending_part", "shear_part", "wall_deflection"]

ChordModulus = Annotated[float, Q("psi", "E", "modulus of elasticity of the end posts", above=0.0)]
ChordArea = Annotated[float, Q("in^2", "A", "cross-section of one end post", above=0.0)]
EndGive = Annotated[float, Q("in", "Delta_a", "vertical give of the wall's ends", at_least=0.0)]


@equation(
    "sdpws-2015/4.3-1",
    title="Deflection of a sheathed segment",
    clause="Eq. 4.3-1",
    source=SOURCE,
    witness=f"0.0803 in. ({CANOPY})",
    constants={8: "in/ft", 1000: "lb/kip"},
)
def wall_deflection(
    v: WallShear,
    h: SegmentHeight,
    E: ChordModulus,
    A: ChordArea,
    b_s: SegmentLength,
    G_a: ShearStiffness,
    Delta_a: EndGive,
) -> Annotated[float, Q("in", "δ_sw", "deflection at the top of the wall")]:
    """The movement of the top of a segment: 8 v h^3/(E A b) + v h/(1000 G_a) + h Delta_a/b.

    ``v`` plf at strength level, ``h`` and ``b_s`` ft, ``E`` psi, ``A`` in2, ``G_a`` kip/in, ``Delta_a`` in.; the
    answer in in. The 8 holds the feet-to-inches of the first term. Source: SDPWS 2015, Eq. 4.3-1, read at
    https://modearchitecture.com/wood-shear-wall-stiffness/ . 300 plf, 8 ft by 8 ft, 1.6e6, 10.5, 13, 0.1: 0.294 in.
    (our own arithmetic).
    """
    return 8 * v * h**3 / (E * A * b_s) + v * h / (1000 * G_a) + h * Delta_a / b_s


@equation(
    "sdpws-2015/4.3-1-bending",
    title="Deflection by the end posts",
    clause="Eq. 4.3-1, first term",
    source=SOURCE,
    witness=f"0.0006 in. ({CANOPY})",
    constants={8: "in/ft"},
)
def bending_part(
    v: WallShear, h: SegmentHeight, E: ChordModulus, A: ChordArea, b_s: SegmentLength
) -> Annotated[float, Q("in", "δ_b", "part of the end posts")]:
    """What the stretching and shortening of the end posts add: 8 v h^3/(E A b), in.

    Source: first term of SDPWS 2015, Eq. 4.3-1. 300 plf, 8 by 8 ft, 1.6e6, 10.5: 0.0091 in. (our own arithmetic).
    """
    return 8 * v * h**3 / (E * A * b_s)


@equation(
    "sdpws-2015/4.3-1-shear",
    title="Deflection by sheathing and nails",
    clause="Eq. 4.3-1, second term",
    source=SOURCE,
    witness=f"0.0409 in. ({CANOPY})",
    constants={1000: "lb/kip"},
)
def shear_part(
    v: WallShear, h: SegmentHeight, G_a: ShearStiffness
) -> Annotated[float, Q("in", "δ_s", "part of sheathing and nails")]:
    """What the shear of the sheathing and the slip of its nails add: v h/(1000 G_a), in.

    Source: second term of SDPWS 2015, Eq. 4.3-1. 300 plf, 8 ft, 13 kip/in: 0.1846 in. (our own arithmetic).
    """
    return v * h / (1000 * G_a)


@equation(
    "sdpws-2015/4.3-1-anchorage",
    title="Deflection by the give at the wall's ends",
    clause="Eq. 4.3-1, third term",
    source=SOURCE,
    witness=f"0.0388 in. ({CANOPY})",
)
def anchorage_part(
    h: SegmentHeight, b_s: SegmentLength, Delta_a: EndGive
) -> Annotated[float, Q("in", "δ_a", "part of the anchorage")]:
    """What the tipping of the segment on its anchorage adds: h Delta_a/b, in.

    Source: third term of SDPWS 2015, Eq. 4.3-1. 8 by 8 ft, 0.1 in.: 0.1 in. (our own arithmetic).
    """
    return h * Delta_a / b_s
