"""What anchors in shear must hold against earthquake in categories C to F (ACI 318-19, 17.10.6).

Holding the plain earthquake force is not enough: either what the bolt fastens yields first, at its expected strength,
or the bolt holds the overstrength force. Which of the two is used is a choice, printed with its reason. (In tension the
concrete's strength is cut as well: ``tension_breakout.seismic_tension``.)
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import note

__all__ = ["earthquake_share", "overstrength_shear", "seismic_shear_demand"]

EarthquakeShear = Annotated[float, Q("lb", "V_E", "earthquake shear on the anchor, strength level", at_least=0.0)]
YieldShear = Annotated[float, Q("lb", "V_y", "shear at which what is fastened yields, expected strength", at_least=0.0)]
Overstrength = Annotated[float, Q("1", "Omega_0", "overstrength factor of the system", at_least=1.0, at_most=3.5)]


@equation(
    "aci318-19/17.10.6.1",
    title="Share of earthquake in the shear on the anchor",
    clause="17.10.6.1",
    source=SOURCE,
)
def earthquake_share(
    V_E: EarthquakeShear, V_u: Annotated[float, Q("lb", "V_u", "whole factored shear on the anchor", above=0.0)]
) -> Annotated[float, Q("1", "V_E/V_u", "share of earthquake")]:
    """The share of earthquake in the factored shear; up to 0.20 the clause asks for nothing more.

    lb over lb. Source: ACI 318-19, 17.10.6.1, read in public page notes on ACI 318M-19 (pages 261 to 283); the 20
    percent also at https://www.skghoshassociates.com/blog/an-error-in-2021-ibc-chapter-19/ . 300 of 1,000 lb: 0.3.
    """
    return V_E / V_u


@equation(
    "aci318-19/17.10.6.3c",
    title="Overstrength shear on the anchor",
    clause="17.10.6.3(c)",
    source=SOURCE,
)
def overstrength_shear(
    Omega_0: Overstrength, V_E: EarthquakeShear
) -> Annotated[float, Q("lb", "V_Omega", "overstrength shear")]:
    """The earthquake shear raised by the system's overstrength factor, lb at strength level.

    Source: ACI 318-19, 17.10.6.3(c), read in public page notes on ACI 318M-19 (pages 261 to 283). 3 times 500 lb: 1,500
    lb (our own arithmetic).
    """
    return Omega_0 * V_E


@procedure(
    "aci318-19/17.10.6.3",
    title="Shear an anchor in concrete must hold against earthquake",
    clause="17.10.6.3",
    source=SOURCE,
    alias="aci.seismic-shear",
)
def seismic_shear_demand(
    option: str,
    reason: str,
    V_E: EarthquakeShear,
    Omega_0: Overstrength = 3.0,
    V_yield: Annotated[float, Q("lb", "V_y", "shear at which what is fastened yields, expected strength")]
    | None = None,
) -> float:
    """The shear the concrete must hold by the option that was chosen, lb at strength level.

    Args:
        option: ``"overstrength"``, or ``"what is fastened yields"`` (wood joint, panel nailing or strap).
        reason: why this option was chosen; printed.
        V_E: earthquake shear on the anchor, strength level, lb.
        Omega_0: overstrength factor of the system.
        V_yield: expected strength of what is fastened, lb; needed for the second option.

    Raises:
        OutsideLimits: another option, no reason, or no expected strength where it is needed.
    """
    cite = SOURCE.cite("17.10.6.3")
    if not reason.strip():
        raise OutsideLimits(f"{cite}: the choice of {option!r} needs a reason, which is printed")
    note(f"{option}: {reason}")
    if option == "overstrength":
        return overstrength_shear(Omega_0, V_E)
    if option != "what is fastened yields":
        raise OutsideLimits(f"{cite}: option = {option!r}; must be overstrength or what is fastened yields")
    if V_yield is None:
        raise OutsideLimits(f"{cite}: the expected strength of what is fastened is not known")
    return V_yield
