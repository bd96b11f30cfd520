"""What a wood joint is expected to yield at, for finding which link of a chain gives way first. Common practice.

The reference value is a yield load divided by a reduction term; taking that term off again gives the load at which
the joint yields under a short loading, near the middle of what tests show. It is not a design value and no standard
gives it as one. Each mode is brought back by its own term, and the lowest yield load decides: that can be another
mode than the one that governs the reference value.
"""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.standards.nds_2018 import PRACTICE
from groundsill.standards.nds_2018.nails import NailLateral
from groundsill.standards.nds_2018.shear import Lateral, double_shear_modes, governing, single_shear_modes
from groundsill.standards.nds_2018.symbols import (
    BearingMain,
    BearingSide,
    Diameter,
    LengthMain,
    LengthSide,
    YieldStrength,
)
from groundsill.working.equation import procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import note, scale

__all__ = ["ExpectedYield", "expected_of", "expected_yield"]


@dataclass(frozen=True, slots=True)
class ExpectedYield:
    """The load in lb at which one fastener's joint is expected to yield, and the mode it yields in."""

    P: float
    mode: str


@procedure(
    "practice/wood-joint-expected",
    title="Expected yield load of a dowel joint",
    clause="reference value times reduction term",
    source=PRACTICE,
    alias="nds.expected-yield",
)
def expected_yield(
    D: Diameter,
    l_m: LengthMain,
    l_s: LengthSide,
    F_em: BearingMain,
    F_es: BearingSide,
    F_yb: YieldStrength,
    planes: float = 1.0,
) -> ExpectedYield:
    """The least yield load of the joint's modes, lb: the document's equations with the reduction term put at 1.

    Example: 1/2 in. sill bolt, 1-1/2 in. Douglas fir-larch, along the sill: 2,074 lb, which is 648 x 3.2 (our own
    arithmetic).
    """
    if planes not in (1, 2):
        raise OutsideLimits(f"{PRACTICE.short}: planes (shear planes) = {planes:g}; must be 1 or 2")
    note("expected, not design: the yield equations with the reduction term put at 1")
    ones = (1.0, 1.0, 1.0)
    modes = (single_shear_modes if planes == 1 else double_shear_modes)(D, l_m, l_s, F_em, F_es, F_yb, ones)
    P, mode = governing(modes, "P_yield")
    return ExpectedYield(P, mode)


def expected_of(joint: Lateral | NailLateral) -> ExpectedYield:
    """The expected yield of a joint whose reference value has been worked out.

    A nail that reaches less than ten diameters keeps the factor that took its reference value down. Factors for
    how the joint is made (C_tn, C_Δ, C_g) are the caller's to apply; those for duration and design are not meant.
    """
    one = joint.joint if isinstance(joint, NailLateral) else joint
    got = expected_yield(one.D, one.l_m, one.l_s, one.F_em, one.F_es, one.F_yb, float(one.planes))
    if isinstance(joint, NailLateral) and float(joint.C_p) < 1.0:
        return ExpectedYield(scale(got.P, joint.C_p, symbol="P_yield", label="penetration counted"), got.mode)
    return got
