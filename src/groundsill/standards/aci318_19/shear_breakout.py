"""Concrete breakout in shear (ACI 318-19, 17.7.2): the wedge that a bolt splits off the edge of a foundation.

A sill bolt loaded along the wall splits the face beside it (17.7.2.1(c), twice the value toward that face); loaded
across the wall it splits the face ahead. ``c_a1`` is always the distance to the face that breaks, ``c_a2`` the
distance to the end of the wall or to a gap, step or full-depth crack.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.strength_factors import design_strength
from groundsill.standards.aci318_19.symbols import (
    GUIDE,
    AnchorCount,
    ConcreteStrength,
    Diameter,
    EdgeDistance,
    EdgeDistanceFar,
    EdgeDistanceSide,
    Embedment,
    LightweightFactor,
    Spacing,
    Thickness,
)
from groundsill.standards.aci318_19.tables import table_17_5_3, table_17_7_2_5
from groundsill.working.equation import Q, equation, procedure, require
from groundsill.working.steps import least

__all__ = [
    "ShearBreakout",
    "basic_shear_a",
    "basic_shear_b",
    "bearing_length",
    "breakout_area",
    "breakout_area_full",
    "breakout_parallel_to_edge",
    "breakout_toward_edge",
    "eccentricity_factor",
    "edge_factor",
    "limited_edge_distance",
    "parallel_breakout",
    "shear_breakout",
    "thickness_factor",
]
_NO_EDGE_BAR = "cracked, no edge bar"
_NO_SUPPLEMENT = "concrete breakout, no supplementary reinforcement, cast in"

BasicShear = Annotated[float, Q("lb", "V_b", "basic breakout strength in shear of one anchor", above=0.0)]
FullArea = Annotated[float, Q("in^2", "A_Vc0", "breakout area of one anchor away from corners", above=0.0)]
ActualArea = Annotated[float, Q("in^2", "A_Vc", "breakout area on the edge's face", above=0.0)]
Eccentricity = Annotated[float, Q("in", "e'_V", "eccentricity of the shear on the group", at_least=0.0)]


@dataclass(frozen=True, slots=True)
class ShearBreakout:
    """Breakout in shear of one anchor or a group, lb: the nominal (5 % fractile) strength, phi, and phi times it."""

    nominal: float
    phi: float
    design: float


@equation(
    "aci318-19/17.7.2.2.1-le",
    title="Bearing length of the anchor",
    clause="17.7.2.2.1",
    source=SOURCE,
    witness=f"3.25 in.; 6 in. ({GUIDE}, p. 157, 98)",
)
def bearing_length(
    h_ef: Embedment, d_a: Diameter
) -> Annotated[float, Q("in", "l_e", "load-bearing length of the anchor for shear")]:
    """The length over which a bolt of one stiffness bears on concrete: its embedment, at most 8 diameters.

    Inches. Source: ACI 318-19, 17.7.2.2.1, as read in the breakout design guide of October 2025. 3/4 in. bolt, 10 in.
    deep: 6 in. (p. 98).
    """
    return min(h_ef, 8 * d_a)


@equation(
    "aci318-19/17.7.2.2.1a",
    title="Basic breakout strength in shear, by the bolt's stiffness",
    clause="Eq. 17.7.2.2.1a",
    source=SOURCE,
    witness=f"9,785 lb; 4,407 lb; 9,549 lb ({GUIDE}, p. 77, 157, 98)",
    constants={7: "lb^0.5/in"},
)
def basic_shear_a(
    l_e: Annotated[float, Q("in", "l_e", "load-bearing length of the anchor for shear", above=0.0)],
    d_a: Diameter,
    f_c: ConcreteStrength,
    c_a1: EdgeDistance,
    lambda_a: LightweightFactor = 1.0,
) -> Annotated[float, Q("lb", "V_b_a", "basic breakout strength, first form")]:
    """The shear at which one anchor in cracked concrete breaks out the edge, a 5 % fractile, first of two forms.

    lb; ``l_e``, ``d_a``, ``c_a1`` in in., ``f_c`` in psi. Limits: l_e at most 8 d_a; f'c at most 10,000 psi (17.3.1).
    Source: ACI 318-19, Eq. 17.7.2.2.1a, in the breakout design guide of October 2025. Worked there, p. 77: d_a 7/8,
    l_e 7, f'c 4,500, c_a1 6: 9,785 lb.
    """
    require(l_e <= 8 * d_a, "l_e is at most 8 d_a")
    return 7 * (l_e / d_a) ** 0.2 * sqrt(d_a) * lambda_a * sqrt(f_c) * c_a1**1.5  # type: ignore[no-any-return]  # mypy: a float power is Any


@equation(
    "aci318-19/17.7.2.2.1b",
    title="Basic breakout strength in shear, by the edge alone",
    clause="Eq. 17.7.2.2.1b",
    source=SOURCE,
    witness=f"8,873 lb; 5,511 lb; 9,353 lb ({GUIDE}, p. 77, 157, 98)",
    constants={9: "lb^0.5/in^0.5"},
)
def basic_shear_b(
    f_c: ConcreteStrength, c_a1: EdgeDistance, lambda_a: LightweightFactor = 1.0
) -> Annotated[float, Q("lb", "V_b_b", "basic breakout strength, second form")]:
    """The shear at which one anchor in cracked concrete breaks out the edge, second form, free of the bolt.

    lb; ``c_a1`` in in., ``f_c`` in psi, at most 10,000 psi (17.3.1). Source: ACI 318-19, Eq. 17.7.2.2.1b, in the
    breakout design guide of October 2025. Worked there, p. 77: f'c 4,500, c_a1 6: 8,873 lb.
    """
    return 9 * lambda_a * sqrt(f_c) * c_a1**1.5  # type: ignore[no-any-return]  # mypy: a float power is Any


@equation(
    "aci318-19/17.7.2.1.3",
    title="Breakout area of one anchor in a deep, long member",
    clause="17.7.2.1.3",
    source=SOURCE,
    witness=f"1,458 in2; 450 in2; 162 in2 ({GUIDE}, p. 99, 136, 149)",
)
def breakout_area_full(c_a1: EdgeDistance) -> Annotated[float, Q("in^2", "A_Vc0", "breakout area, full")]:
    """The face area of the wedge one anchor splits off, when no corner, thickness or other anchor cuts it.

    4.5 c_a1 squared: 3 c_a1 wide and 1.5 c_a1 deep. in2. Source: ACI 318-19, 17.7.2.1.3, in the breakout design guide
    of October 2025. c_a1 18: 1,458 in2 (p. 99).
    """
    return 4.5 * c_a1**2


@equation(
    "aci318-19/17.7.2.1.1",
    title="Breakout area as it is cut by corners, thickness and spacing",
    clause="17.7.2.1.1",
    source=SOURCE,
    witness=f"972 in2; 810 in2; 1,035 in2; 154.8 in2 ({GUIDE}, p. 99, 136, 78, 149)",
)
def breakout_area(
    c_a1: EdgeDistance,
    c_a2: EdgeDistanceSide,
    c_a2_far: EdgeDistanceFar,
    h_a: Thickness,
    n: AnchorCount = 1.0,
    s: Spacing = 0.0,
) -> Annotated[float, Q("in^2", "A_Vc", "breakout area")]:
    """The face area of the wedge that one anchor, or ``n`` in a row along the edge ``s`` apart, splits off.

    Each side reaches 1.5 c_a1 or to the end of the member; down, 1.5 c_a1 or the member's thickness. A row works as
    one only where neighbours stand at most 3 c_a1 apart, so the area is never more than n times the full area. in2.
    Source: ACI 318-19, 17.7.2.1.1 and Fig. R17.7.2.1b, in the breakout design guide of October 2025. c_a1 18, four
    anchors 9 apart, member 12 thick: (27 + 27 + 27) x 12 = 972 in2 (p. 99).
    """
    require(n == 1 or s <= 3 * c_a1, "anchors more than 3 c_a1 apart do not work as a group: check each singly")
    return (min(1.5 * c_a1, c_a2) + (n - 1) * s + min(1.5 * c_a1, c_a2_far)) * min(1.5 * c_a1, h_a)


@equation(
    "aci318-19/17.7.2.1.2",
    title="Edge distance counted in a narrow, thin member",
    clause="17.7.2.1.2",
    source=SOURCE,
    witness="13.33 in. (check case in github.com/mlococo88/All-Structural, fix log of its base plate designer)",
)
def limited_edge_distance(
    c_a1: EdgeDistance, c_a2_far: EdgeDistanceFar, h_a: Thickness, s: Spacing = 0.0
) -> Annotated[float, Q("in", "c'_a1", "edge distance to be used")]:
    """The edge distance to put into every part of 17.7.2 when both c_a2 and the thickness are below 1.5 c_a1.

    Then c_a1 is at most the greatest of c_a2/1.5, h_a/1.5 and s/3, with ``c_a2_far`` the larger of the two side
    distances. in. Source: ACI 318-19, 17.7.2.1.2, read in two public sets of notes on chapter 17 (the tables name
    them). c_a1 50, c_a2 5, h_a 20, s 0: 13.33 in.
    """
    if c_a2_far < 1.5 * c_a1 and h_a < 1.5 * c_a1:
        return min(c_a1, max(c_a2_far / 1.5, h_a / 1.5, s / 3))
    return c_a1


@equation(
    "aci318-19/17.7.2.3.1",
    title="Shear that pulls one anchor of the group more",
    clause="Eq. 17.7.2.3.1",
    source=SOURCE,
    witness=f"0.981 ({GUIDE}, p. 149)",
)
def eccentricity_factor(
    c_a1: EdgeDistance, e_V: Eccentricity
) -> Annotated[float, Q("1", "psi_ec_V", "eccentricity factor")]:
    """The factor for a group whose shear acts off its centre: 1 / (1 + e'_V / (1.5 c_a1)), at most 1.

    Inches. Source: ACI 318-19, Eq. 17.7.2.3.1, in the breakout design guide of October 2025. c_a1 6, e'_V 0.171:
    0.981 (p. 149).
    """
    return 1 / (1 + e_V / (1.5 * c_a1))


@equation(
    "aci318-19/17.7.2.4.1",
    title="Corner beside the anchor",
    clause="Eq. 17.7.2.4.1b",
    source=SOURCE,
    witness=None,
)
def edge_factor(
    c_a1: EdgeDistance, c_a2: EdgeDistanceSide
) -> Annotated[float, Q("1", "psi_ed_V", "corner effect factor")]:
    """The factor for an end of the member nearer than 1.5 c_a1: 0.7 + 0.3 c_a2 / (1.5 c_a1); 1 beyond.

    ``c_a2`` is the smaller side distance. Inches. Source: ACI 318-19, Eq. 17.7.2.4.1b, in the breakout design guide
    of October 2025, whose worked corner prints 0.98 but not its c_a2. c_a1 5, c_a2 7: 0.98 (our own arithmetic).
    """
    return min(1.0, 0.7 + 0.3 * c_a2 / (1.5 * c_a1))


@equation(
    "aci318-19/17.7.2.6.1",
    title="Member thinner than the wedge is deep",
    clause="Eq. 17.7.2.6.1",
    source=SOURCE,
    witness=f"1.5; 1.18; 1.23 ({GUIDE}, p. 99, 78, 149)",
)
def thickness_factor(c_a1: EdgeDistance, h_a: Thickness) -> Annotated[float, Q("1", "psi_h_V", "thickness factor")]:
    """The factor that gives back part of what a thin member loses in area: sqrt(1.5 c_a1 / h_a), at least 1.

    Inches. Source: ACI 318-19, Eq. 17.7.2.6.1, in the breakout design guide of October 2025. c_a1 18, h_a 12: 1.5
    (p. 99).
    """
    return max(1.0, sqrt(1.5 * c_a1 / h_a))


@equation(
    "aci318-19/17.7.2.1a",
    title="Breakout strength in shear, toward the edge",
    clause="Eq. 17.7.2.1a, b",
    source=SOURCE,
    witness=f"28,059 lb; 4,700 lb ({GUIDE}, p. 98, 157)",
)
def shear_breakout(
    A_Vc: ActualArea,
    A_Vc0: FullArea,
    psi_ec_V: Annotated[float, Q("1", "psi_ec_V", "eccentricity factor", above=0.0, at_most=1.0)],
    psi_ed_V: Annotated[float, Q("1", "psi_ed_V", "corner effect factor", at_least=0.7, at_most=1.0)],
    psi_c_V: Annotated[float, Q("1", "psi_c_V", "cracking factor", at_least=1.0, at_most=1.4)],
    psi_h_V: Annotated[float, Q("1", "psi_h_V", "thickness factor", at_least=1.0)],
    V_b: BasicShear,
) -> Annotated[float, Q("lb", "V_cb", "nominal breakout strength in shear")]:
    """The nominal strength of one anchor or a group against breakout toward the edge.

    The basic strength times the share of area and the factors; for one anchor psi_ec,V is 1 (Eq. a), for a group it
    is counted (Eq. b). lb. Source: ACI 318-19, Eqs. 17.7.2.1a and b, in the breakout design guide of October 2025.
    Worked there, p. 157: 112.2/112.5 x 0.976 x 0.98 x 1.0 x 1.118 x 4,407 = 4,700 lb.
    """
    return A_Vc / A_Vc0 * psi_ec_V * psi_ed_V * psi_c_V * psi_h_V * V_b


@equation(
    "aci318-19/17.7.2.1c",
    title="Breakout strength in shear, along the edge",
    clause="17.7.2.1(c)",
    source=SOURCE,
    witness=f"9,592 lb ({GUIDE}, p. 157)",
)
def parallel_breakout(
    V_cb: Annotated[float, Q("lb", "V_cb", "breakout strength toward that edge with psi_ed,V = 1", above=0.0)],
) -> Annotated[float, Q("lb", "V_cb_par", "nominal breakout strength along the edge")]:
    """Twice the strength toward the edge, that strength being found with the corner factor taken as 1.

    lb. Source: ACI 318-19, 17.7.2.1(c), in the breakout design guide of October 2025: 2 x 4,796 = 9,592 lb
    (p. 157).
    """
    return 2 * V_cb


@procedure(
    "aci318-19/17.7.2-toward",
    title="Breakout of the edge ahead of the anchor",
    clause="17.7.2.1(a), (b)",
    source=SOURCE,
    alias="aci.breakout-toward-edge",
)
def breakout_toward_edge(
    d_a: Diameter,
    h_ef: Embedment,
    f_c: ConcreteStrength,
    c_a1: EdgeDistance,
    h_a: Thickness,
    c_a2: EdgeDistanceSide = 1000.0,
    c_a2_far: EdgeDistanceFar = 1000.0,
    n: AnchorCount = 1.0,
    s: Spacing = 0.0,
    e_V: Eccentricity = 0.0,
    concrete: str = _NO_EDGE_BAR,
    failure: str = _NO_SUPPLEMENT,
    lambda_a: LightweightFactor = 1.0,
) -> ShearBreakout:
    """Nominal and design strength of an anchor, or a row along the edge, loaded straight toward the edge.

    Args:
        d_a: bolt diameter, in.
        h_ef: embedment, in.
        f_c: concrete strength, psi.
        c_a1: bolt centre to the face it is pushed toward, in.
        h_a: height of the concrete below the bolt's head, in. (a stem: top to bottom).
        c_a2: bolt to the nearer end of the concrete along the face, in.; far away when left out.
        c_a2_far: the same to the farther end, in.
        n: number of bolts in the row.
        s: spacing of the bolts in the row, in., at most 3 c_a1; 0 for one bolt.
        e_V: eccentricity of the shear on the group, in.
        concrete: row of Table 17.7.2.5.1.
        failure: row of Table 17.5.3, column shear.
        lambda_a: lightweight concrete factor.
    """
    edge = limited_edge_distance(c_a1, max(c_a2, c_a2_far), h_a, s)
    corner = edge_factor(edge, min(c_a2, c_a2_far))
    nominal = _nominal(d_a, h_ef, f_c, edge, (c_a2, c_a2_far), h_a, (n, s), e_V, concrete, lambda_a, corner)
    return _designed(nominal, failure)


@procedure(
    "aci318-19/17.7.2-parallel",
    title="Breakout of the edge beside the anchor",
    clause="17.7.2.1(c)",
    source=SOURCE,
    alias="aci.edge-breakout",
)
def breakout_parallel_to_edge(
    d_a: Diameter,
    h_ef: Embedment,
    f_c: ConcreteStrength,
    c_a1: EdgeDistance,
    h_a: Thickness,
    c_a2: EdgeDistanceSide = 1000.0,
    c_a2_far: EdgeDistanceFar = 1000.0,
    n: AnchorCount = 1.0,
    s: Spacing = 0.0,
    e_V: Eccentricity = 0.0,
    concrete: str = _NO_EDGE_BAR,
    failure: str = _NO_SUPPLEMENT,
    lambda_a: LightweightFactor = 1.0,
) -> ShearBreakout:
    """Nominal and design strength of a sill bolt, or a row of them, loaded along the edge: the usual case.

    Twice the strength toward the near face with the corner factor taken as 1. A bolt near the end of the wall must
    also hold toward that end (17.7.2.1(d)): :func:`breakout_toward_edge` with ``c_a1`` the distance to the end.
    Arguments as there; ``c_a1`` is the distance to the near face.
    """
    edge = limited_edge_distance(c_a1, max(c_a2, c_a2_far), h_a, s)
    toward = _nominal(d_a, h_ef, f_c, edge, (c_a2, c_a2_far), h_a, (n, s), e_V, concrete, lambda_a, 1.0)
    return _designed(parallel_breakout(toward), failure)


def _nominal(
    d_a: float,
    h_ef: float,
    f_c: float,
    edge: float,
    sides: tuple[float, float],
    h_a: float,
    row: tuple[float, float],
    e_V: float,
    concrete: str,
    lambda_a: float,
    corner: float,
) -> float:
    first = basic_shear_a(bearing_length(h_ef, d_a), d_a, f_c, edge, lambda_a)
    basic = least(first, basic_shear_b(f_c, edge, lambda_a), symbol="V_b", label="basic breakout strength in shear")
    area = breakout_area(edge, sides[0], sides[1], h_a, row[0], row[1])
    eccentric = eccentricity_factor(edge, e_V)
    thin = thickness_factor(edge, h_a)
    cracked = table_17_7_2_5().read(concrete)
    return shear_breakout(area, breakout_area_full(edge), eccentric, corner, cracked, thin, basic)


def _designed(nominal: float, failure: str) -> ShearBreakout:
    phi = table_17_5_3().read(failure, "shear")
    return ShearBreakout(nominal, phi, design_strength(phi, nominal))
