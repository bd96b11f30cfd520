"""Bond of adhesive anchors (ACI 318-19, 17.6.5): the glue that lets go before rod or concrete does.

The bond stress is the product's own, from its report by ACI 355.4, or the minimum of Table 17.6.5.2.5, whose
conditions of use :func:`bond_stress` answers one by one.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pi, sqrt
from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.splitting import bond_splitting_factor
from groundsill.standards.aci318_19.strength_factors import design_strength
from groundsill.standards.aci318_19.symbols import (
    AnchorCount,
    ConcreteStrength,
    Diameter,
    EdgeLeast,
    Embedment,
    LightweightFactor,
)
from groundsill.standards.aci318_19.tables import (
    table_17_5_3,
    table_17_6_5_2_5,
    table_17_6_5_2_5_notes,
    table_17_6_5_2_5_use,
)
from groundsill.standards.conditions import Condition, all_met
from groundsill.working.equation import Q, equation, procedure, require
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import condition, scale

__all__ = [
    "INDOOR",
    "OUTDOOR",
    "Bond",
    "BondStress",
    "basic_bond",
    "bond_area",
    "bond_area_full",
    "bond_eccentricity_factor",
    "bond_edge_factor",
    "bond_of",
    "bond_reach",
    "bond_strength",
    "bond_stress",
    "sustained_bond",
]
OUTDOOR, INDOOR = "outdoor, dry to saturated, 175 F", "indoor, dry, 110 F"
_CATEGORY_1 = "concrete breakout, no supplementary reinforcement, post-installed category 1"

BondCracked = Annotated[float, Q("psi", "tau_cr", "characteristic bond stress in cracked concrete", above=0.0)]
BondUncracked = Annotated[float, Q("psi", "tau_uncr", "characteristic bond stress in uncracked concrete", above=0.0)]
Reach = Annotated[float, Q("in", "c_Na", "reach of the bond to either side", above=0.0)]
BasicBond = Annotated[float, Q("lb", "N_ba", "basic bond strength of one anchor", above=0.0)]


@dataclass(frozen=True, slots=True)
class Bond:
    """Bond of one adhesive anchor or a group, lb: nominal (5 % fractile), phi, phi times nominal."""

    nominal: float
    phi: float
    design: float


@dataclass(frozen=True, slots=True)
class BondStress:
    """Minimum bond stresses as they may be used, psi, each condition of their use, and whether all are met.

    ``reach`` is the stress in uncracked concrete that sets how far the bond reaches: the table's, before any cut.
    """

    cracked: float
    uncracked: float
    reach: float
    conditions: tuple[Condition, ...]
    applies: bool | None


@equation(
    "aci318-19/17.6.5.1.2b",
    title="Reach of the bond",
    clause="Eq. 17.6.5.1.2b",
    source=SOURCE,
    constants={1100: "psi"},
)
def bond_reach(d_a: Diameter, tau_uncr: BondUncracked) -> Annotated[float, Q("in", "c_Na", "reach of the bond")]:
    """How far to each side an adhesive anchor needs concrete for its full bond: 10 d_a sqrt(tau_uncr / 1,100), in.

    Source: ACI 318-19, Eq. 17.6.5.1.2b, as up.codes prints its twin of 2014 (17.4.5.1d). 5/8 in., 650 psi: 4.80 in.
    (our own arithmetic).
    """
    return 10 * d_a * sqrt(tau_uncr / 1100)


@equation("aci318-19/17.6.5.1.2a", title="Area of full bond", clause="Eq. 17.6.5.1.2a", source=SOURCE)
def bond_area_full(c_Na: Reach) -> Annotated[float, Q("in^2", "A_Na0", "influence area, full")]:
    """The surface one adhesive anchor far from edges draws on: (2 c_Na) squared, in2.

    Source: ACI 318-19, Eq. 17.6.5.1.2a, as up.codes prints its twin of 2014 (17.4.5.1c). c_Na 5: 100 in2.
    """
    return (2 * c_Na) ** 2


@equation(
    "aci318-19/17.6.5.1.1",
    title="Area of bond as edges and spacing cut it",
    clause="17.6.5.1.1",
    source=SOURCE,
)
def bond_area(
    c_Na: Reach,
    c_left: Annotated[float, Q("in", "c_left", "edge distance on one side", above=0.0)],
    c_right: Annotated[float, Q("in", "c_right", "edge distance on the other side", above=0.0)],
    c_near: Annotated[float, Q("in", "c_near", "edge distance across, near face", above=0.0)],
    c_far: Annotated[float, Q("in", "c_far", "edge distance across, far face", above=0.0)],
    s_along: Annotated[float, Q("in", "s_along", "outermost anchors apart, left to right", at_least=0.0)] = 0.0,
    s_across: Annotated[float, Q("in", "s_across", "outermost anchors apart, across", at_least=0.0)] = 0.0,
    n: AnchorCount = 1.0,
) -> Annotated[float, Q("in^2", "A_Na", "influence area of the bond")]:
    """The surface an adhesive anchor or group draws on: each side c_Na or to the edge, plus the group itself.

    Never more than n times the full area. in2. Source: ACI 318-19, 17.6.5.1.1, as up.codes prints its twin of 2014
    (17.4.5.1). c_Na 5, a face at 2 and one at 4, else far: (5 + 5) x (2 + 4) = 60 in2 (our own arithmetic).
    """
    along = min(c_Na, c_left) + s_along + min(c_Na, c_right)
    across = min(c_Na, c_near) + s_across + min(c_Na, c_far)
    return min(n * (2 * c_Na) ** 2, along * across)


@equation(
    "aci318-19/17.6.5.3.1",
    title="Pull that tears one adhesive anchor of the group more",
    clause="Eq. 17.6.5.3.1",
    source=SOURCE,
)
def bond_eccentricity_factor(
    c_Na: Reach, e_N: Annotated[float, Q("in", "e'_N", "eccentricity of the tension on the group", at_least=0.0)]
) -> Annotated[float, Q("1", "psi_ec_Na", "eccentricity factor of bond")]:
    """The factor for a group pulled off its centre, one direction: 1 / (1 + e'_N / c_Na), at most 1.

    Inches. Source: ACI 318-19, Eq. 17.6.5.3.1, read in public page notes on ACI 318M-19 (pages 233 to 260). c_Na 5,
    e'_N 1: 0.833 (our own arithmetic).
    """
    return 1 / (1 + e_N / c_Na)


@equation(
    "aci318-19/17.6.5.4.1",
    title="Edge beside an adhesive anchor",
    clause="Eq. 17.6.5.4.1b",
    source=SOURCE,
)
def bond_edge_factor(c_Na: Reach, c_a_min: EdgeLeast) -> Annotated[float, Q("1", "psi_ed_Na", "edge factor of bond")]:
    """The factor for the nearest edge closer than c_Na: 0.7 + 0.3 c_a,min / c_Na; 1 beyond.

    Inches. Source: ACI 318-19, Eq. 17.6.5.4.1b, read in public page notes on ACI 318M-19 (pages 233 to 260). c_Na 5,
    c 2.5: 0.85 (our own arithmetic).
    """
    return min(1.0, 0.7 + 0.3 * c_a_min / c_Na)


@equation(
    "aci318-19/17.6.5.2.1",
    title="Basic bond strength",
    clause="Eq. 17.6.5.2.1",
    source=SOURCE,
    witness="9,108 lb; 13,669 lb; 21,354 lb at one stress (a printed table of design strengths, 2016)",
)
def basic_bond(
    tau_cr: BondCracked, d_a: Diameter, h_ef: Embedment, lambda_a: LightweightFactor = 1.0
) -> Annotated[float, Q("lb", "N_ba", "basic bond strength in tension")]:
    """The tension at which the glue of one anchor far from edges lets go: lambda tau_cr pi d_a h_ef.

    lb, a 5 % fractile. Limits: embedment from 4 to 20 diameters (17.3.3). Source: ACI 318-19, Eq. 17.6.5.2.1, read in
    public page notes on ACI 318M-19 (pages 233 to 260). 160 psi, 5/8 in. by 6: 1,885 lb (our own arithmetic).
    """
    require(h_ef >= 4 * d_a, "adhesive anchors are covered from 4 diameters of embedment (17.3.3)")
    require(h_ef <= 20 * d_a, "adhesive anchors are covered up to 20 diameters of embedment (17.3.3)")
    return lambda_a * tau_cr * pi * d_a * h_ef


@equation(
    "aci318-19/17.6.5.1",
    title="Bond strength",
    clause="Eq. 17.6.5.1a, b",
    source=SOURCE,
)
def bond_strength(
    A_Na: Annotated[float, Q("in^2", "A_Na", "influence area of the bond", above=0.0)],
    A_Na0: Annotated[float, Q("in^2", "A_Na0", "influence area, full", above=0.0)],
    psi_ec_Na: Annotated[float, Q("1", "psi_ec_Na", "eccentricity factor of bond", above=0.0, at_most=1.0)],
    psi_ed_Na: Annotated[float, Q("1", "psi_ed_Na", "edge factor of bond", at_least=0.7, at_most=1.0)],
    psi_cp_Na: Annotated[float, Q("1", "psi_cp_Na", "splitting factor of bond", above=0.0, at_most=1.0)],
    N_ba: BasicBond,
) -> Annotated[float, Q("lb", "N_a", "nominal bond strength in tension")]:
    """The nominal bond strength of one adhesive anchor or a group, lb; psi_ec,Na is 1 for one alone.

    Source: ACI 318-19, Eqs. 17.6.5.1a and b, as up.codes prints their twins of 2014 (17.4.5.1a, b). 60 of 100 in2,
    edge 0.85, N_ba 2,000: 1,020 lb (our own arithmetic).
    """
    return A_Na / A_Na0 * psi_ec_Na * psi_ed_Na * psi_cp_Na * N_ba


@equation(
    "aci318-19/17.5.2.2",
    title="Bond under a lasting pull",
    clause="Eq. 17.5.2.2",
    source=SOURCE,
)
def sustained_bond(
    phi: Annotated[float, Q("1", "phi", "strength reduction factor", above=0.0, at_most=1.0)], N_ba: BasicBond
) -> Annotated[float, Q("lb", "0.55φN_ba", "design strength under sustained tension")]:
    """What an adhesive anchor may carry for good: 0.55 phi times its basic bond strength, lb.

    Earthquake and wind are no lasting pull. Source: ACI 318-19, Eq. 17.5.2.2, read in public page notes on ACI 318M-19
    (pages 233 to 260). phi 0.65, 10,000 lb: 3,575 lb (our own arithmetic).
    """
    return 0.55 * phi * N_ba


@procedure(
    "aci318-19/17.6.5.2.5",
    title="Minimum bond stresses, and when they may be used",
    clause="17.6.5.2.5",
    source=SOURCE,
    alias="aci.bond-stress",
)
def bond_stress(
    environment: str = OUTDOOR,
    f_c: ConcreteStrength | None = None,
    qualified: bool | None = None,
    hammer_drilled: bool | None = None,
    aged: bool | None = None,
    warm: bool | None = None,
    sustained: bool = False,
    earthquake: bool = True,
) -> BondStress:
    """The bond stresses that may stand in for a product's own, psi, and each condition of their use.

    Args:
        environment: row of Table 17.6.5.2.5.
        f_c: concrete strength, psi; None where nobody knows it.
        qualified: whether the product is qualified by ACI 355.4.
        hammer_drilled: whether the hole is made with a rotary impact or a rock drill.
        aged: whether the concrete is at least 21 days old when the anchor is set.
        warm: whether the concrete is then at 50 F or more.
        sustained: whether the tension includes a lasting one.
        earthquake: whether it includes earthquake in categories C to F.

    Without all of (a) to (e) the table does not apply; the figures are then no more than a named extension of it. The
    reach c_Na goes by the table's own stress, without the cut for earthquake: a longer reach, on the careful side, and
    as a design guide to the chapter has it (viewer.joomag.com, document 0546853001659024142, p. 29 and 33).
    """
    cracked, reach = (table_17_6_5_2_5().read(environment, column) for column in ("tau_cr", "tau_uncr"))
    uncracked = reach
    notes = table_17_6_5_2_5_notes()
    for asked, row in ((sustained, "sustained tension"), (earthquake, "earthquake, categories C to F")):
        if asked:
            cracked = scale(cracked, notes.read(row, "tau_cr"), symbol="tau_cr", label=row)
            uncracked = scale(uncracked, notes.read(row, "tau_uncr"), symbol="tau_uncr", label=row)
    use = table_17_6_5_2_5_use()
    least = use.read("limit", "concrete strength", symbol="f'_c,min")
    days, heat = float(use.read("limit", "age in days")), float(use.read("limit", "degrees Fahrenheit"))
    found = (
        _asked("(a) product qualified by ACI 355.4", qualified),
        _asked("(b) hole made with a rotary impact or rock drill", hammer_drilled),
        _asked(
            f"(c) concrete of at least {float(least):,.0f} psi",
            None if f_c is None else f_c >= least,
            *(() if f_c is None else (f_c, least)),
        ),
        _asked(f"(d) concrete at least {days:g} days old at installation", aged),
        _asked(f"(e) concrete at {heat:g} F or more at installation", warm),
    )
    return BondStress(cracked, uncracked, reach, found, all_met(found))


def _asked(text: str, met: bool | None, *numbers: float) -> Condition:
    condition(text, met, *numbers, cite=SOURCE.cite("17.6.5.2.5"))
    return Condition(text, met)


@procedure(
    "aci318-19/17.6.5-bond",
    title="Bond of an adhesive anchor in tension",
    clause="17.6.5",
    source=SOURCE,
    alias="aci.bond",
)
def bond_of(
    d_a: Diameter,
    h_ef: Embedment,
    tau_cr: BondCracked,
    tau_uncr: BondUncracked,
    c_left: Annotated[float, Q("in", "c_left", "edge distance on one side")] = 1000.0,
    c_right: Annotated[float, Q("in", "c_right", "edge distance on the other side")] = 1000.0,
    c_near: Annotated[float, Q("in", "c_near", "edge distance across, near face")] = 1000.0,
    c_far: Annotated[float, Q("in", "c_far", "edge distance across, far face")] = 1000.0,
    s_along: Annotated[float, Q("in", "s_along", "outermost anchors apart along the wall")] = 0.0,
    s_across: Annotated[float, Q("in", "s_across", "outermost anchors apart across the wall")] = 0.0,
    n: AnchorCount = 1.0,
    e_N: Annotated[float, Q("in", "e'_N", "eccentricity of the tension on the group")] = 0.0,
    concrete: str = "cracked",
    c_ac: Annotated[float, Q("in", "c_ac", "critical edge distance, uncracked concrete")] | None = None,
    failure: str = _CATEGORY_1,
    lambda_a: LightweightFactor = 1.0,
) -> Bond:
    """Nominal and design bond strength of an adhesive anchor, or a group whose neighbours stand within 2 c_Na.

    Args:
        d_a: diameter of the rod, in.
        h_ef: embedment, in.
        tau_cr: characteristic bond stress in cracked concrete, psi.
        tau_uncr: the same in uncracked concrete, psi; it sets how far the bond reaches in any case, and there is not
            cut for earthquake, which assumes cracked concrete (17.10.5.4).
        c_left: anchor to the end of the concrete on one side, in.; far away when left out; so the other three.
        c_right: to the other end, in.
        c_near: to the near face, in.
        c_far: to the far face, in.
        s_along: outermost anchors of a group apart, along the wall, in.
        s_across: the same across the wall, in.
        n: number of anchors in the group.
        e_N: eccentricity of the pull on the group, in.
        concrete: ``"cracked"`` or ``"uncracked"``.
        c_ac: critical edge distance (Table 17.9.5), in.; needed in uncracked concrete.
        failure: row of Table 17.5.3, column tension.
        lambda_a: lightweight concrete factor.
    """
    if concrete not in ("cracked", "uncracked"):
        raise OutsideLimits(f"{SOURCE.cite('17.6.5.2')}: concrete = {concrete!r}; must be cracked or uncracked")
    reach, nearest = bond_reach(d_a, tau_uncr), min(c_left, c_right, c_near, c_far)
    splitting = 1.0
    if concrete == "uncracked":
        if c_ac is None:
            raise OutsideLimits(f"{SOURCE.cite('17.6.5.5')}: uncracked concrete asks for the critical edge distance")
        splitting = bond_splitting_factor(reach, nearest, c_ac)
    basic = basic_bond(tau_cr if concrete == "cracked" else tau_uncr, d_a, h_ef, lambda_a)
    nominal = bond_strength(
        bond_area(reach, c_left, c_right, c_near, c_far, s_along, s_across, n),
        bond_area_full(reach),
        bond_eccentricity_factor(reach, e_N),
        bond_edge_factor(reach, nearest),
        splitting,
        basic,
    )
    phi = table_17_5_3().read(failure, "tension")
    return Bond(nominal, phi, design_strength(phi, nominal))
