"""Strength reduction of anchors (ACI 318-19, 17.5) and tension with shear together (17.8)."""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.symbols import GUIDE, StrengthFactor
from groundsill.working.equation import Q, equation

__all__ = ["design_strength", "interaction", "interaction_curved"]


@equation(
    "aci318-19/17.5.2",
    title="Design strength of the anchor",
    clause="17.5.2",
    source=SOURCE,
    witness=f"19,964 lb; 17,825 lb ({GUIDE}, p. 82, 141)",
)
def design_strength(
    phi: StrengthFactor, R_n: Annotated[float, Q("lb", "R_n", "nominal strength", at_least=0.0)]
) -> Annotated[float, Q("lb", "φR_n", "design strength")]:
    """The strength to hold against factored forces: phi (Table 17.5.3) times the nominal strength, lb.

    Source: ACI 318-19, 17.5.2, in the breakout design guide of October 2025: 0.75 x 26,619 =
    19,964 lb (p. 82).
    """
    return phi * R_n


@equation("aci318-19/17.8.3", title="Tension and shear together", clause="17.8.1 to 17.8.3", source=SOURCE)
def interaction(
    tension: Annotated[float, Q("1", "r_N", "tension over its design strength", at_least=0.0)],
    shear: Annotated[float, Q("1", "r_V", "shear over its design strength", at_least=0.0)],
) -> Annotated[float, Q("1", "U", "utilisation, at most 1 to pass")]:
    """The straight-line rule as a utilisation that passes at 1: where one ratio is at most 0.2 the other governs
    alone, else their sum over 1.2.

    Source: ACI 318-19, 17.8.1 to 17.8.3; the sum against 1.2 read in the breakout design guide of October 2025, p. 90,
    the 0.2 in public page notes on ACI 318M-19 (pages 261 to 283). 0.6 and 0.6: 1.0 (our own arithmetic).
    """
    if tension <= 0.2 or shear <= 0.2:
        return max(tension, shear)
    return max(tension, shear, (tension + shear) / 1.2)


@equation(
    "aci318-19/R17.8",
    title="Tension and shear together, curved",
    clause="R17.8",
    source=SOURCE,
    witness=f"0.82 ({GUIDE}, p. 90)",
)
def interaction_curved(
    tension: Annotated[float, Q("1", "r_N", "tension over its design strength", at_least=0.0)],
    shear: Annotated[float, Q("1", "r_V", "shear over its design strength", at_least=0.0)],
) -> Annotated[float, Q("1", "U", "utilisation, at most 1 to pass")]:
    """The commentary's closer rule: the ratios to the power 5/3 add to at most 1.

    Source: ACI 318-19, commentary R17.8, in the breakout design guide of October 2025, p. 90: 0.167 and 0.854 give
    0.051 + 0.769 = 0.82.
    """
    return tension ** (5 / 3) + shear ** (5 / 3)  # type: ignore[no-any-return]  # mypy: a float power is Any
