"""11.3.6: fasteners in one row do not share evenly; the end ones take more, and the group action factor says how much.

In: number and spacing of fasteners in the row, the members' stiffness E A, the diameter. Out: C_g, 1 for one fastener
and for fasteners under 1/4 in.

Source: 11.3.6 (page 68) as transcribed in github.com/rohreng/anderson-rohr-calcs, the specification of its wood
connection schedule, section 6; printed cells of Table 11.3.6A prove it.
"""

from __future__ import annotations

from math import sqrt
from typing import Annotated

from groundsill.standards.nds_2018 import PRACTICE, SOURCE
from groundsill.standards.nds_2018.symbols import BoltDiameter, Diameter
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import given, multiply, note
from groundsill.working.value import Mark

__all__ = [
    "group_action_factor",
    "group_action_sum",
    "group_decay",
    "group_u",
    "slip_modulus_metal",
    "slip_modulus_wood",
    "slip_modulus_wood_concrete",
    "stiffness_ratio",
]

SMALL_DOWEL_IN = 0.25

SlipModulus = Annotated[float, Q("lb/in", "γ", "load per inch of slip of one fastener", above=0.0)]
StiffnessMain = Annotated[float, Q("lb", "E_mA_m", "axial stiffness of the main member", above=0.0)]
StiffnessSide = Annotated[float, Q("lb", "E_sA_s", "axial stiffness of the side members together", above=0.0)]
Modulus = Annotated[float, Q("psi", "E", "modulus of elasticity", above=0.0)]
Area = Annotated[float, Q("in^2", "A", "gross cross-section", above=0.0)]
RowSpacing = Annotated[float, Q("in", "s", "spacing of fasteners in the row", above=0.0)]
Number = Annotated[float, Q("1", "n", "number of fasteners in the row", at_least=1.0)]
Ratio = Annotated[float, Q("1", "R_EA", "lesser over greater axial stiffness", above=0.0, at_most=1.0)]


@equation(
    "nds-2018/11.3-1-gamma-wood",
    title="Load/slip modulus, wood to wood",
    clause="11.3.6, Eq. 11.3-1",
    source=SOURCE,
    witness="NDS 2018 Table 11.3.6A, cells 0.96 and 0.88, as read in github.com/rohreng/anderson-rohr-calcs",
    constants={180000: "lb/in^2.5"},
)
def slip_modulus_wood(D: Diameter) -> Annotated[float, Q("lb/in", "γ", "load per inch of slip of one fastener")]:
    """γ = 180,000 D^1.5 for dowels in wood-to-wood joints."""
    return 180000 * D**1.5  # type: ignore[no-any-return]  # float to a float power is Any


@equation(
    "nds-2018/11.3-1-gamma-metal",
    title="Load/slip modulus, wood to metal",
    clause="11.3.6, Eq. 11.3-1",
    source=SOURCE,
    witness="NDS 2018 Table 11.3.6C, cells 0.62 and 0.51, as read in github.com/rohreng/anderson-rohr-calcs",
    constants={270000: "lb/in^2.5"},
)
def slip_modulus_metal(D: Diameter) -> Annotated[float, Q("lb/in", "γ", "load per inch of slip of one fastener")]:
    """γ = 270,000 D^1.5 for dowels in wood-to-metal joints."""
    return 270000 * D**1.5  # type: ignore[no-any-return]  # float to a float power is Any


@procedure(
    "practice/slip-modulus-wood-concrete",
    title="Load/slip modulus, wood to concrete (extension)",
    clause="beyond NDS 11.3.6",
    source=PRACTICE,
    alias="nds.slip-modulus-wood-concrete",
)
def slip_modulus_wood_concrete(D: BoltDiameter) -> float:
    """The modulus of wood to metal, taken for a bolt through a sill into concrete: γ in lb/in.

    NDS gives none for concrete. EN 1995-1-1 7.1(3) takes concrete as it takes steel, neither of them slipping (told
    so on eurocode.us, structural timber design, info-mnu-ekf.html). Old concrete under a bolt gives more than steel, so
    this is the stiffer bound: of like bolts on one sill, stiffer ones share less evenly, which is the careful side.
    Every result carries the mark *extension*. Example: 1/2 in. bolt: 95,459 lb/in (our own arithmetic).
    """
    beyond = Mark("extension", f"{SOURCE.cite('11.3.6')} gives no slip of wood to concrete: wood to metal is taken")
    return slip_modulus_metal(given("D", D, "in", "bolt through a sill into concrete", (beyond,)))


@equation(
    "nds-2018/11.3-1-u",
    title="Term u",
    clause="11.3.6, Eq. 11.3-1",
    source=SOURCE,
    witness="NDS 2018 Table 11.3.6A, cells 0.96 and 0.88, as read in github.com/rohreng/anderson-rohr-calcs",
)
def group_u(
    gamma: SlipModulus, s: RowSpacing, EA_m: StiffnessMain, EA_s: StiffnessSide
) -> Annotated[float, Q("1", "u", "term u of the group action factor")]:
    """How soft the members are between two fasteners, set against the slip of one."""
    return 1 + gamma * s / 2 * (1 / EA_m + 1 / EA_s)


@equation(
    "nds-2018/11.3-1-m",
    title="Term m",
    clause="11.3.6, Eq. 11.3-1",
    source=SOURCE,
    witness="NDS 2018 Table 11.3.6A, cells 0.96 and 0.88, as read in github.com/rohreng/anderson-rohr-calcs",
)
def group_decay(
    u: Annotated[float, Q("1", "u", "term u of the group action factor", above=1.0)],
) -> Annotated[float, Q("1", "m", "share passed from one fastener to the next")]:
    """The share of the slip that reaches the next fastener, between 0 and 1."""
    return u - sqrt(u**2 - 1)


@equation(
    "nds-2018/11.3-1-REA",
    title="Ratio of stiffnesses",
    clause="11.3.6",
    source=SOURCE,
    witness="NDS 2018 Table 11.3.6A, cells 0.96 and 0.88, as read in github.com/rohreng/anderson-rohr-calcs",
)
def stiffness_ratio(
    EA_m: StiffnessMain, EA_s: StiffnessSide
) -> Annotated[float, Q("1", "R_EA", "lesser over greater axial stiffness")]:
    """The lesser of the two ratios, so that it does not matter which member is called main."""
    return min(EA_s / EA_m, EA_m / EA_s)


@equation(
    "nds-2018/11.3-1",
    title="Group action factor",
    clause="11.3.6, Eq. 11.3-1",
    source=SOURCE,
    witness="NDS 2018 Table 11.3.6A, cells 0.96 and 0.88, as read in github.com/rohreng/anderson-rohr-calcs",
)
def group_action_sum(
    m: Annotated[float, Q("1", "m", "share passed on", above=0.0, below=1.0)], n: Number, R_EA: Ratio
) -> Annotated[float, Q("1", "C_g", "group action factor")]:
    """C_g of n like fasteners in one row. One fastener gives exactly 1."""
    first = m * (1 - m ** (2 * n)) / (n * ((1 + R_EA * m**n) * (1 + m) - 1 + m ** (2 * n)))
    return first * (1 + R_EA) / (1 - m)  # type: ignore[no-any-return]  # float to a float power is Any


@procedure(
    "nds-2018/11.3.6",
    title="Group action factor of a row of fasteners",
    clause="11.3.6",
    source=SOURCE,
    alias="nds.group",
)
def group_action_factor(
    D: Diameter,
    n: Number,
    s: RowSpacing,
    E_m: Modulus,
    A_m: Area,
    E_s: Modulus,
    A_s: Area,
    joint: str = "wood to wood",
) -> float:
    """C_g; ``joint`` is ``"wood to wood"`` or ``"wood to metal"``; A_s is the sum of the side members."""
    if joint not in ("wood to wood", "wood to metal"):
        raise OutsideLimits(f"{SOURCE.cite('11.3.6')}: joint {joint!r} is not wood to wood or wood to metal")
    if float(D) < SMALL_DOWEL_IN:
        note("fasteners under 1/4 in. take no group action factor")
        return 1.0
    gamma = slip_modulus_wood(D) if joint == "wood to wood" else slip_modulus_metal(D)
    EA_m = multiply(E_m, A_m, symbol="E_mA_m", unit="lb", label="axial stiffness, main member")
    EA_s = multiply(E_s, A_s, symbol="E_sA_s", unit="lb", label="axial stiffness, side members")
    return group_action_sum(group_decay(group_u(gamma, s, EA_m, EA_s)), n, stiffness_ratio(EA_m, EA_s))
