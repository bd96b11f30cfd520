"""Strength reduction of anchors (ACI 318-19, 17.5) and tension with shear together (17.8)."""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.symbols import StrengthFactor
from groundsill.working.equation import Q, equation

__all__ = ["design_strength", "interaction"]


@equation("aci318-19/17.5.2", title="Design strength of the anchor", clause="17.5.2", source=SOURCE, how="from memory")
def design_strength(
    phi: StrengthFactor, R_n: Annotated[float, Q("lb", "R_n", "nominal strength", at_least=0.0)]
) -> Annotated[float, Q("lb", "phi_R_n", "design strength")]:
    """The strength to hold against factored forces: phi (Table 17.5.3) times the nominal strength, lb.

    Source: ACI 318-19, 17.5.2 (from memory). 0.70 x 4,700 = 3,290 lb (our own arithmetic).
    """
    return phi * R_n


@equation("aci318-19/17.8.3", title="Tension and shear together", clause="17.8", source=SOURCE, how="from memory")
def interaction(
    tension: Annotated[float, Q("1", "N_ua/phi_N_n", "tension over its design strength", at_least=0.0)],
    shear: Annotated[float, Q("1", "V_ua/phi_V_n", "shear over its design strength", at_least=0.0)],
) -> Annotated[float, Q("1", "U", "utilisation, at most 1 to pass")]:
    """The straight-line rule, brought to a utilisation that passes at 1: either ratio alone up to 0.2 of the other,
    else the sum over 1.2.

    Source: ACI 318-19, 17.8.1 to 17.8.3 (from memory; a published study summary agrees). 0.6 and 0.6: 1.0.
    """
    if shear <= 0.2:
        return max(tension, shear)
    if tension <= 0.2:
        return shear
    return max(tension, shear, (tension + shear) / 1.2)
