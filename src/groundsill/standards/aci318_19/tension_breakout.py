"""Concrete breakout in tension (ACI 318-19, 17.6.2): the cone that a hold-down bolt pulls out of the concrete.

Also needed for shear, because pryout (17.7.3) is measured by it.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.splitting import splitting_factor
from groundsill.standards.aci318_19.strength_factors import design_strength
from groundsill.standards.aci318_19.symbols import GUIDE, ConcreteStrength, EdgeLeast, Embedment, LightweightFactor
from groundsill.standards.aci318_19.tables import table_17_5_3, table_17_6_2_2, table_17_6_2_5
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits

__all__ = [
    "TensionBreakout",
    "basic_tension",
    "limited_embedment",
    "seismic_tension",
    "tension_area",
    "tension_area_full",
    "tension_breakout",
    "tension_breakout_of",
    "tension_eccentricity_factor",
    "tension_edge_factor",
]
_NO_SUPPLEMENT = "concrete breakout, no supplementary reinforcement, cast in"

BasicTension = Annotated[float, Q("lb", "N_b", "basic breakout strength in tension of one anchor", above=0.0)]


@dataclass(frozen=True, slots=True)
class TensionBreakout:
    """Breakout in tension of one anchor or a group, lb: nominal (5 % fractile), phi, phi times it."""

    nominal: float
    phi: float
    design: float


@equation(
    "aci318-19/17.6.2.2.1",
    title="Basic breakout strength in tension",
    clause="Eq. 17.6.2.2.1",
    source=SOURCE,
    witness=f"47,405 lb; 52,684 lb; 18,313 lb ({GUIDE}, p. 73, 106, 86)",
)
def basic_tension(
    k_c: Annotated[float, Q("lb^0.5/in^0.5", "k_c", "coefficient of basic breakout", above=0.0)],
    f_c: ConcreteStrength,
    h_ef: Embedment,
    lambda_a: LightweightFactor = 1.0,
) -> Annotated[float, Q("lb", "N_b", "basic breakout strength in tension")]:
    """The tension at which one anchor far from edges breaks out of cracked concrete, a 5 % fractile.

    lb; ``h_ef`` in in., ``f_c`` in psi, at most 10,000 psi (17.3.1). Source: ACI 318-19, Eq. 17.6.2.2.1, in the
    breakout design guide of October 2025. k_c 17, f'c 4,500, h_ef 12: 47,405 lb (p. 73).
    """
    return k_c * lambda_a * sqrt(f_c) * h_ef**1.5  # type: ignore[no-any-return]  # mypy: a float power is Any


@equation(
    "aci318-19/17.6.2.1.4",
    title="Breakout area in tension of one anchor far from edges",
    clause="Eq. 17.6.2.1.4",
    source=SOURCE,
    witness=f"1,296 in2; 1,764 in2; 297.56 in2 ({GUIDE}, p. 73, 106, 86)",
)
def tension_area_full(h_ef: Embedment) -> Annotated[float, Q("in^2", "A_Nc0", "breakout area, full")]:
    """The area a full cone covers at the surface: 9 h_ef squared, in2.

    Source: ACI 318-19, Eq. 17.6.2.1.4, in the breakout design guide of October 2025. h_ef 12: 1,296 in2 (p. 73).
    """
    return 9 * h_ef**2


@equation(
    "aci318-19/17.6.2.1.1",
    title="Breakout area in tension as edges and spacing cut it",
    clause="17.6.2.1.1",
    source=SOURCE,
    witness=f"3,024 in2; 3,102 in2 ({GUIDE}, p. 73, 106)",
)
def tension_area(
    h_ef: Embedment,
    c_left: Annotated[float, Q("in", "c_left", "edge distance on one side", above=0.0)],
    c_right: Annotated[float, Q("in", "c_right", "edge distance on the other side", above=0.0)],
    c_near: Annotated[float, Q("in", "c_near", "edge distance across, near face", above=0.0)],
    c_far: Annotated[float, Q("in", "c_far", "edge distance across, far face", above=0.0)],
    s_along: Annotated[float, Q("in", "s_along", "outermost anchors apart, left to right", at_least=0.0)] = 0.0,
    s_across: Annotated[float, Q("in", "s_across", "outermost anchors apart, across", at_least=0.0)] = 0.0,
) -> Annotated[float, Q("in^2", "A_Nc", "breakout area in tension")]:
    """The area the cone of an anchor or a group covers: each side 1.5 h_ef or to the edge, plus the group itself.

    A group counts as one only where neighbours stand at most 3 h_ef apart. in2. Source: ACI 318-19, 17.6.2.1.1 and
    Fig. R17.6.2.1b, in the breakout design guide of October 2025. h_ef 12, group 27 by 24, one edge at 6: 63 x 48 =
    3,024 in2 (p. 73).
    """
    along = min(1.5 * h_ef, c_left) + s_along + min(1.5 * h_ef, c_right)
    across = min(1.5 * h_ef, c_near) + s_across + min(1.5 * h_ef, c_far)
    return along * across


@equation(
    "aci318-19/17.6.2.1.2",
    title="Embedment counted between three or more near edges",
    clause="17.6.2.1.2",
    source=SOURCE,
    witness="16.67 from 40, three edges at 25 (public notes on a pedestal, in cm)",
)
def limited_embedment(
    h_ef: Embedment,
    c_a_max: Annotated[float, Q("in", "c_a_max", "greatest of the edge distances below 1.5 h_ef", above=0.0)],
    s: Annotated[float, Q("in", "s", "greatest spacing in the group", at_least=0.0)] = 0.0,
) -> Annotated[float, Q("in", "h'_ef", "embedment counted")]:
    """The embedment put into all of 17.6.2 when three or four edges are nearer than 1.5 h_ef.

    The greater of c_a,max/1.5 and s/3, never more than h_ef. in. Source: ACI 318-19, 17.6.2.1.2, read in
    two public sets of notes on chapter 17 (the tables name them). h_ef 12, edges up to 6, one anchor: 4 in.
    """
    return min(h_ef, max(c_a_max / 1.5, s / 3))


@equation(
    "aci318-19/17.6.2.3.1",
    title="Tension that pulls one anchor of the group more",
    clause="Eq. 17.6.2.3.1",
    source=SOURCE,
    witness=f"0.875; 0.955 ({GUIDE}, p. 106)",
)
def tension_eccentricity_factor(
    h_ef: Embedment, e_N: Annotated[float, Q("in", "e'_N", "eccentricity of the tension on the group", at_least=0.0)]
) -> Annotated[float, Q("1", "psi_ec_N", "eccentricity factor")]:
    """The factor for a group pulled off its centre, one direction: 1 / (1 + e'_N / (1.5 h_ef)).

    Inches. Source: ACI 318-19, Eq. 17.6.2.3.1, in the breakout design guide of October 2025. h_ef 14, e'_N 3: 0.875
    (p. 106).
    """
    return 1 / (1 + e_N / (1.5 * h_ef))


@equation(
    "aci318-19/17.6.2.4.1",
    title="Edge beside an anchor in tension",
    clause="Eq. 17.6.2.4.1b",
    source=SOURCE,
    witness=f"0.8; 0.786; 0.978 ({GUIDE}, p. 73, 106, 86)",
)
def tension_edge_factor(
    h_ef: Embedment, c_a_min: EdgeLeast
) -> Annotated[float, Q("1", "psi_ed_N", "edge factor in tension")]:
    """The factor for the nearest edge closer than 1.5 h_ef: 0.7 + 0.3 c_a,min / (1.5 h_ef); 1 beyond.

    Inches. Source: ACI 318-19, Eq. 17.6.2.4.1b, in the breakout design guide of October 2025. h_ef 12, c 6: 0.8
    (p. 73).
    """
    return min(1.0, 0.7 + 0.3 * c_a_min / (1.5 * h_ef))


@equation(
    "aci318-19/17.6.2.1",
    title="Breakout strength in tension",
    clause="Eq. 17.6.2.1a, b",
    source=SOURCE,
    witness=f"88,489 lb; 60,877 lb; 92,221 lb ({GUIDE}, p. 73, 106, 86)",
)
def tension_breakout(
    A_Nc: Annotated[float, Q("in^2", "A_Nc", "breakout area in tension", above=0.0)],
    A_Nc0: Annotated[float, Q("in^2", "A_Nc0", "breakout area, full", above=0.0)],
    psi_ec_N: Annotated[float, Q("1", "psi_ec_N", "eccentricity factor", above=0.0, at_most=1.0)],
    psi_ed_N: Annotated[float, Q("1", "psi_ed_N", "edge factor", at_least=0.7, at_most=1.0)],
    psi_c_N: Annotated[float, Q("1", "psi_c_N", "cracking factor", at_least=1.0, at_most=1.4)],
    psi_cp_N: Annotated[float, Q("1", "psi_cp_N", "splitting factor", above=0.0, at_most=1.0)],
    N_b: BasicTension,
) -> Annotated[float, Q("lb", "N_cb", "nominal breakout strength in tension")]:
    """The nominal strength of one anchor or a group against breakout in tension, lb.

    psi_cp,N is 1 for cast-in anchors and in cracked concrete. Source: ACI 318-19, Eqs. 17.6.2.1a and b, in the
    breakout design guide of October 2025. Worked there, p. 73: 3,024/1,296 x 0.8 x 47,405 = 88,489 lb.
    """
    return A_Nc / A_Nc0 * psi_ec_N * psi_ed_N * psi_c_N * psi_cp_N * N_b


@equation(
    "aci318-19/17.10.5.4",
    title="Concrete strength in tension against earthquake",
    clause="17.10.5.4",
    source=SOURCE,
    witness=f"37,012 lb ({GUIDE}, p. 101)",
)
def seismic_tension(
    design: Annotated[float, Q("lb", "φN_n", "design strength in tension, concrete governed", at_least=0.0)],
) -> Annotated[float, Q("lb", "φN_eq", "design strength in tension against earthquake")]:
    """Three quarters of the design strength in tension, for every failure but steel, where earthquake governs.

    Only tension is reduced, not shear. lb. Source: ACI 318-19, 17.10.5.4, in the breakout design guide of October
    2025, p. 101: 0.75 x 0.65 x 75,922 = 37,012 lb.
    """
    return 0.75 * design


@procedure(
    "aci318-19/17.6.2-tension",
    title="Breakout of an anchor in tension",
    clause="17.6.2",
    source=SOURCE,
    alias="aci.tension-breakout",
)
def tension_breakout_of(
    h_ef: Embedment,
    f_c: ConcreteStrength,
    c_left: Annotated[float, Q("in", "c_left", "edge distance on one side")] = 1000.0,
    c_right: Annotated[float, Q("in", "c_right", "edge distance on the other side")] = 1000.0,
    c_near: Annotated[float, Q("in", "c_near", "edge distance across, near face")] = 1000.0,
    c_far: Annotated[float, Q("in", "c_far", "edge distance across, far face")] = 1000.0,
    s_along: Annotated[float, Q("in", "s_along", "outermost anchors apart along the wall")] = 0.0,
    s_across: Annotated[float, Q("in", "s_across", "outermost anchors apart across the wall")] = 0.0,
    e_N: Annotated[float, Q("in", "e'_N", "eccentricity of the tension on the group")] = 0.0,
    anchor: str = "cast in",
    concrete: str = "cracked",
    failure: str = _NO_SUPPLEMENT,
    lambda_a: LightweightFactor = 1.0,
    c_ac: Annotated[float, Q("in", "c_ac", "critical edge distance, uncracked concrete")] | None = None,
) -> TensionBreakout:
    """Nominal and design strength of an anchor or group against breakout in tension, cracked concrete by default.

    Args:
        h_ef: embedment, in.
        f_c: concrete strength, psi.
        c_left: bolt to the end of the concrete on one side, in.; far away when left out; so the other three.
        c_right: to the other end, in.
        c_near: to the near face, in.
        c_far: to the far face, in.
        s_along: outermost bolts of a group apart, along the wall, in.
        s_across: the same across the wall, in.
        e_N: eccentricity of the pull on the group, in.
        anchor: ``"cast in"`` or ``"post-installed"`` (row of 17.6.2.2.1).
        concrete: ``"cracked"`` or ``"uncracked"``.
        failure: row of Table 17.5.3, column tension.
        lambda_a: lightweight concrete factor.
        c_ac: critical edge distance (Table 17.9.5), in.; needed for post-installed anchors in uncracked concrete.

    Three or more edges nearer than 1.5 h_ef cut the embedment that may be counted (17.6.2.1.2).
    """
    sides = (c_left, c_right, c_near, c_far)
    near = [c for c in sides if c < 1.5 * float(h_ef)]
    depth = limited_embedment(h_ef, max(near), max(s_along, s_across)) if len(near) >= 3 else h_ef
    splitting = 1.0
    if concrete == "uncracked" and anchor == "post-installed":
        if c_ac is None:
            raise OutsideLimits(f"{SOURCE.cite('17.6.2.6')}: uncracked concrete asks for the critical edge distance")
        splitting = splitting_factor(depth, min(sides), c_ac)
    basic = basic_tension(table_17_6_2_2().read(anchor), f_c, depth, lambda_a)
    area = tension_area(depth, c_left, c_right, c_near, c_far, s_along, s_across)
    nominal = tension_breakout(
        area,
        tension_area_full(depth),
        tension_eccentricity_factor(depth, e_N),
        tension_edge_factor(depth, min(sides)),
        table_17_6_2_5().read(concrete, anchor),
        splitting,
        basic,
    )
    phi = table_17_5_3().read(failure, "tension")
    return TensionBreakout(nominal, phi, design_strength(phi, nominal))
