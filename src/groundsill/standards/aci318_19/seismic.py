"""What anchors must hold against earthquake in categories C to F (ACI 318-19, 17.10.5 in tension, 17.10.6 in shear).

Holding the plain earthquake force is not enough: either what the bolt fastens yields first, at its expected strength,
or the bolt holds the overstrength force; in tension its own steel may be what yields, if it is long enough to stretch.
Which is used is a choice, printed with its reason. (In tension the concrete's strength is cut as well:
``tension_breakout.seismic_tension``.)
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.symbols import Diameter
from groundsill.standards.aci318_19.tables import table_17_10_5_3
from groundsill.standards.conditions import Condition, all_met
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import condition, divide, note, scale

__all__ = [
    "DuctileAnchor",
    "ductile_anchor",
    "earthquake_share",
    "earthquake_share_of_tension",
    "overstrength_shear",
    "raised_steel",
    "seismic_shear_demand",
]

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


# ---- Tension ---------------------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class DuctileAnchor:
    """Each condition of an anchor whose own steel is to yield, and whether all are met."""

    conditions: tuple[Condition, ...]
    applies: bool | None


@equation(
    "aci318-19/17.10.5.1",
    title="Share of earthquake in the tension on the anchor",
    clause="17.10.5.1",
    source=SOURCE,
)
def earthquake_share_of_tension(
    N_E: Annotated[float, Q("lb", "N_E", "earthquake tension on the anchor, strength level", at_least=0.0)],
    N_u: Annotated[float, Q("lb", "N_u", "whole factored tension on the anchor", above=0.0)],
) -> Annotated[float, Q("1", "N_E/N_u", "share of earthquake")]:
    """The share of earthquake in the factored tension; up to 0.20 the clause asks for nothing more.

    lb over lb. Source: ACI 318-19, 17.10.5.1, read in public page notes on ACI 318M-19 (pages 261 to 283). The dead
    load of a braced wall only holds it down, so the share in a hold-down is 1 or more.
    """
    return N_E / N_u


@equation(
    "aci318-19/17.10.5.3a",
    title="Steel raised, that concrete must outlast",
    clause="17.10.5.3(a)",
    source=SOURCE,
)
def raised_steel(
    k_s: Annotated[float, Q("1", "k_s", "what the nominal steel strength is raised by", at_least=1.0)],
    N_sa: Annotated[float, Q("lb", "N_sa", "nominal steel strength in tension", above=0.0)],
) -> Annotated[float, Q("lb", "1.2N_sa", "steel strength that concrete must outlast")]:
    """What every nominal strength that concrete governs must exceed if the anchor's own steel is to yield, lb.

    Source: ACI 318-19, 17.10.5.3(a), read in public page notes on ACI 318M-19 (pages 261 to 283): 1.2 times nominal.
    10,000 lb: 12,000 lb.
    """
    return k_s * N_sa


@procedure(
    "aci318-19/17.10.5.3a-ductile",
    title="Anchor whose own steel yields against earthquake",
    clause="17.10.5.3(a)",
    source=SOURCE,
    alias="aci.ductile-anchor",
)
def ductile_anchor(
    d_a: Diameter,
    N_sa: Annotated[float, Q("lb", "N_sa", "nominal steel strength in tension", above=0.0)],
    N_concrete: Annotated[float, Q("lb", "N_n", "least nominal strength governed by concrete", at_least=0.0)],
    f_uta: Annotated[float, Q("psi", "f_uta", "ultimate stress of the steel", above=0.0)],
    f_ya: Annotated[float, Q("psi", "f_ya", "yield stress of the steel", above=0.0)],
    stretch: Annotated[float, Q("in", "l_s", "length of the rod free to stretch", at_least=0.0)] | None = None,
    braced: bool | None = None,
) -> DuctileAnchor:
    """Each condition by which an anchor may be held for the plain earthquake tension, because its steel yields first.

    Args:
        d_a: anchor diameter, in.
        N_sa: nominal steel strength, lb.
        N_concrete: least of the nominal strengths that concrete governs (breakout, bond, pullout, blowout), lb.
        f_uta: ultimate stress, psi.
        f_ya: yield stress, psi.
        stretch: length over which the rod is free to stretch, in.; None where nobody gives it.
        braced: whether the free length is kept from buckling when the load turns; None where nobody says.
    """
    table = table_17_10_5_3()
    by = table.read("limit", "steel raised by", symbol="k_s")
    lengths = table.read("limit", "stretch length in diameters", symbol="n_l")
    least_ratio = table.read("limit", "ultimate over yield stress", symbol="f_uta/f_ya")
    raised, least = raised_steel(by, N_sa), scale(d_a, lengths, symbol="l_s,min", label="least stretch length")
    ratio = divide(f_uta, f_ya, symbol="f_uta/f_ya", unit="1", label="ultimate over yield stress")
    cite = SOURCE.cite("17.10.5.3(a)")
    outlasts = f"concrete outlasts {float(by):g} times the steel's nominal strength"
    far = f"free to stretch over {float(lengths):g} diameters"
    asked: tuple[tuple[str, bool | None, tuple[float, ...]], ...] = (
        (outlasts, N_concrete > raised, (N_concrete, raised)),
        (far, None if stretch is None else stretch >= least, (least,) if stretch is None else (stretch, least)),
        (f"ultimate at least {float(least_ratio):g} times yield stress", ratio >= least_ratio, (ratio, least_ratio)),
        ("kept from buckling when the load turns", braced, ()),
    )
    found = tuple(Condition(text, condition(text, met, *numbers, cite=cite)) for text, met, numbers in asked)
    return DuctileAnchor(found, all_met(found))
