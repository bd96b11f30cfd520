"""How stiff concrete is (ACI 318-19, 19.2.2 and 6.6.3.1): its modulus, and what cracks leave of a section."""

from __future__ import annotations

from math import sqrt
from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.member_symbols import StructuralStrength
from groundsill.working.equation import Q, equation

__all__ = ["concrete_modulus", "cracked_inertia"]


@equation(
    "aci318-19/19.2.2.1b",
    title="Modulus of elasticity of concrete",
    clause="Eq. 19.2.2.1b",
    source=SOURCE,
    how="from memory",
    constants={57000: "lb^0.5/in"},
)
def concrete_modulus(
    f_c: StructuralStrength,
) -> Annotated[float, Q("psi", "E_c", "modulus of elasticity of the concrete", above=0.0)]:
    """57,000 sqrt(f'c), psi, for concrete of normal weight.

    Source: ACI 318-19, Eq. 19.2.2.1b, recalled. 4,000 psi: 3,605,000 psi (our own arithmetic).
    """
    return 57000 * sqrt(f_c)


@equation(
    "aci318-19/6.6.3.1.1",
    title="Cracked section of a beam",
    clause="Table 6.6.3.1.1(a)",
    source=SOURCE,
    how="from memory",
)
def cracked_inertia(
    I_g: Annotated[float, Q("in^4", "I_g", "moment of inertia of the whole section", above=0.0)],
) -> Annotated[float, Q("in^4", "I", "moment of inertia counted", above=0.0)]:
    """0.35 of the whole section, for beams in analysis under factored loads.

    Source: ACI 318-19, Table 6.6.3.1.1(a), recalled. 10,000 in4: 3,500 in4.
    """
    return 0.35 * I_g
