"""A rectangle of concrete with one row of bars in bending (ACI 318-19, 22.2, 22.3 and 21.2.2), and the least of bars.

The section fails by its bars: they yield, the concrete crushes at a strain of 0.003. How far the bars have stretched by
then decides the strength reduction, and beams must stretch them well (9.3.3.1).
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.member_symbols import (
    HOUSE,
    BarArea,
    BarYield,
    EffectiveDepth,
    FactoredMoment,
    NominalMoment,
    SectionDepth,
    StructuralStrength,
    WebWidth,
)
from groundsill.standards.aci318_19.symbols import StrengthFactor
from groundsill.working.equation import Q, equation, procedure, require
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import condition

__all__ = [
    "Bending",
    "LeastSteel",
    "bending_factor",
    "bending_strength",
    "design_moment",
    "least_bending_steel",
    "least_steel",
    "neutral_axis",
    "nominal_moment",
    "shrinkage_steel",
    "steel_for_moment",
    "steel_strain",
    "stress_block_depth",
    "stress_block_factor",
    "third_more",
    "yield_strain",
]

_PLAN = "worked pages on concrete beams, 12 by 20 in. with three #8"
_BEAM = "Calcpad sheet in the tests of github.com/mihdicaballero/mento"

BlockDepth = Annotated[float, Q("in", "a", "depth of the rectangular stress block", above=0.0)]
BlockFactor = Annotated[
    float, Q("1", "beta_1", "stress block depth over neutral axis depth", at_least=0.65, at_most=0.85)
]
AxisDepth = Annotated[float, Q("in", "c", "depth of the neutral axis", above=0.0)]
Strain = Annotated[float, Q("1", "epsilon_t", "strain of the bars when the concrete crushes")]
YieldStrain = Annotated[float, Q("1", "epsilon_ty", "strain at which the bars yield", above=0.0)]
NeededArea = Annotated[float, Q("in^2", "A_s", "area of bars that the moment needs", at_least=0.0)]
LeastArea = Annotated[float, Q("in^2", "A_s,min", "least area of bars", at_least=0.0)]


@dataclass(frozen=True, slots=True)
class Bending:
    """Bending strength of a section: depths in inches, moments in lb-in; whether the bars stretch as beams must."""

    stress_block: float
    neutral_axis: float
    strain: float
    phi: float
    nominal: float
    design: float
    tension_controlled: bool


@dataclass(frozen=True, slots=True)
class LeastSteel:
    """Bars that a beam needs, in2: for the moment, for the first crack, and in the end; ``rule`` says which decided."""

    for_moment: float
    for_cracking: float
    needed: float
    rule: str


@equation(
    "aci318-19/22.2.2.4.3",
    title="Depth factor of the stress block",
    clause="Table 22.2.2.4.3",
    source=SOURCE,
    witness=f"0.85, by 3.49 over 4.10 in. ({_PLAN})",
    constants={4000: "psi", 1000: "psi"},
)
def stress_block_factor(f_c: StructuralStrength) -> BlockFactor:
    """0.85 up to 4,000 psi, 0.05 less for each 1,000 psi beyond, at least 0.65.

    Source: ACI 318-19, Table 22.2.2.4.3, its ends read in public page notes on ACI 318M-19, pages 397 to 401. 5,000
    psi: 0.80.
    """
    if f_c <= 4000:
        return 0.85
    return max(0.65, 0.85 - 0.05 * (f_c - 4000) / 1000)


@equation(
    "aci318-19/22.2.2.4.1-a",
    title="Depth of the stress block",
    clause="22.2.2.4.1, equilibrium with the bars",
    source=SOURCE,
    witness=f"1.094 in. ({HOUSE}, veneer beam, 3); 4.5925 in. ({_BEAM})",
)
def stress_block_depth(A_s: BarArea, f_y: BarYield, f_c: StructuralStrength, b: WebWidth) -> BlockDepth:
    """The depth over which 0.85 f'c across the width balances the bars at yield: A_s f_y/(0.85 f'c b), in.

    Source: ACI 318-19, 22.2.2.4.1, read in public page notes on ACI 318M-19, pages 397 to 401. Three #5 in 12 in. of
    5,000 psi: 1.094 in. in the hand-worked notes of a house (github.com/winedarksea/TypeHaus).
    """
    return A_s * f_y / (0.85 * f_c * b)


@equation(
    "aci318-19/22.2.2.4.1",
    title="Depth of the neutral axis",
    clause="Eq. 22.2.2.4.1",
    source=SOURCE,
    witness=f"4.10 in. ({_PLAN})",
)
def neutral_axis(a: BlockDepth, beta_1: BlockFactor) -> AxisDepth:
    """The depth at which the section is not strained: a/beta_1, in.

    Source: ACI 318-19, Eq. 22.2.2.4.1, read in public page notes on ACI 318M-19, pages 397 to 401. 1.094 in. over 0.80:
    1.368 in. (our own arithmetic).
    """
    return a / beta_1


@equation(
    "aci318-19/22.2.1.2",
    title="Strain of the bars when the concrete crushes",
    clause="22.2.1.2 and 22.2.2.1",
    source=SOURCE,
    witness=f"0.0116 ({_PLAN})",
)
def steel_strain(d: EffectiveDepth, c: AxisDepth) -> Strain:
    """Plane sections: 0.003 at the pressed face, nothing at the neutral axis: 0.003 (d - c)/c.

    One row of bars, so that d is also the depth d_t to the outermost. Source: ACI 318-19, 22.2.1.2 and 22.2.2.1, read
    in public page notes on ACI 318M-19, pages 397 to 401. 15.06 and 1.368 in.: 0.030 (our own arithmetic).
    """
    return 0.003 * (d - c) / c


@equation(
    "aci318-19/21.2.2.1",
    title="Strain at which the bars yield",
    clause="21.2.2.1 and 20.2.2.2",
    source=SOURCE,
    constants={29000000: "psi"},
)
def yield_strain(f_y: BarYield) -> YieldStrain:
    """Yield strength over 29,000,000 psi (20.2.2.2; 200,000 MPa in the metric edition).

    Source: ACI 318-19, 21.2.2.1, read in public page notes on ACI 318M-19, pages 391 to 396. 60,000 psi: 0.00207, which
    the clause lets one call 0.002.
    """
    return f_y / 29000000


@equation(
    "aci318-19/21.2.2",
    title="Strength reduction in bending",
    clause="Table 21.2.2",
    source=SOURCE,
    witness=f"0.90 ({HOUSE}, veneer beam, 3)",
)
def bending_factor(epsilon_t: Strain, epsilon_ty: YieldStrain) -> Annotated[float, Q("1", "phi", "strength reduction")]:
    """0.65 while the bars do not yield, 0.90 from 0.003 beyond yield on, a straight line between.

    Other than spirals. Source: ACI 318-19, Table 21.2.2 with its change of 2019, read in public page notes on ACI
    318M-19, pages 391 to 396. 0.0035 with 0.002: 0.775 (our own arithmetic).
    """
    return max(0.65, min(0.90, 0.65 + 0.25 * (epsilon_t - epsilon_ty) / 0.003))


@equation(
    "aci318-19/22.3.1.1",
    title="Bending strength of a section with bars",
    clause="22.3.1.1",
    source=SOURCE,
    witness=f"3,583.3 kip-in ({_BEAM})",
)
def nominal_moment(A_s: BarArea, f_y: BarYield, d: EffectiveDepth, a: BlockDepth) -> NominalMoment:
    """The bars at yield times their lever to the middle of the stress block: A_s f_y (d - a/2), lb-in.

    Source: ACI 318-19, 22.3.1.1 with the assumptions of 22.2, read in public page notes on ACI 318M-19, pages 397 to
    401. 3.1229 in2 at 21.42 in. with a = 4.5925 in.: 3,583.3 kip-in, in the tests of github.com/mihdicaballero/mento.
    """
    require(a / 2 < d, "the stress block is shallower than the bars are deep")
    return A_s * f_y * (d - a / 2)


@equation(
    "aci318-19/9.5.1.1",
    title="Design moment of a section with bars",
    clause="9.5.1.1",
    source=SOURCE,
    witness=f"194.7 kip-ft ({_PLAN})",
)
def design_moment(phi: StrengthFactor, M_n: NominalMoment) -> Annotated[float, Q("lb-in", "φM_n", "design moment")]:
    """Phi (Table 21.2.2) times the nominal moment, to hold against the factored one, lb-in.

    Source: ACI 318-19, 9.5.1.1, read in public page notes on ACI 318M-19, pages 391 to 396. 0.9 of 1,000,000: 900,000
    lb-in.
    """
    return phi * M_n


@procedure(
    "aci318-19/22.3",
    title="Bending strength of a rectangle with one row of bars",
    clause="22.3 with 22.2 and 21.2.2",
    source=SOURCE,
    alias="aci.bending",
)
def bending_strength(f_c: StructuralStrength, f_y: BarYield, b: WebWidth, d: EffectiveDepth, A_s: BarArea) -> Bending:
    """Nominal and design moment; bars in compression are not counted.

    Args:
        f_c: concrete strength, psi.
        f_y: yield strength of the bars, psi.
        b: width, in.
        d: depth from the pressed face to the middle of the bars, in.
        A_s: area of the bars, in2.

    Raises:
        OutsideLimits: when the concrete crushes before the bars yield: the section has too many.
    """
    a = stress_block_depth(A_s, f_y, f_c, b)
    c = neutral_axis(a, stress_block_factor(f_c))
    strain, yields = steel_strain(d, c), yield_strain(f_y)
    if float(strain) <= float(yields):
        raise OutsideLimits(
            f"{SOURCE.cite('22.2')}: A_s = {float(A_s):g} in2 at {float(d):g} in. does not yield before the concrete "
            f"crushes (strain {float(strain):.4f}, yield at {float(yields):.4f}): fewer bars or a deeper section"
        )
    phi = bending_factor(strain, yields)
    nominal = nominal_moment(A_s, f_y, d, a)
    stretched = float(strain) >= float(yields) + 0.003
    condition("the bars stretch at least 0.003 beyond yield", stretched, strain, yields, cite=SOURCE.cite("9.3.3.1"))
    return Bending(a, c, strain, phi, nominal, design_moment(phi, nominal), stretched)


# ---- The least of bars ----------------------------------------------------------------------------------------------


@equation(
    "aci318-19/22.3.1.1-As",
    title="Bars that a moment needs",
    clause="22.3.1.1, solved for the bars",
    source=SOURCE,
    witness=f"2.249 in2 ({_BEAM})",
)
def steel_for_moment(
    M_u: FactoredMoment, f_c: StructuralStrength, f_y: BarYield, b: WebWidth, d: EffectiveDepth
) -> NeededArea:
    """The area whose design moment, at phi = 0.90, is just the factored one, in2.

    0.85 f'c b/f_y times (d less the root of d^2 - 2 M_u/(0.85 x 0.9 f'c b)). Our own solution of 22.3.1.1; 2,400,000
    lb-in on 12 in. of 4,000 psi with bars 21.42 in. deep: 2.249 in2, the hand check in the tests of
    github.com/mihdicaballero/mento.
    """
    lever = d**2 - 2 * M_u / (0.9 * 0.85 * f_c * b)
    require(lever > 0, "the section is deep and strong enough for the moment with bars on one side only")
    return 0.85 * f_c * b / f_y * (d - sqrt(lever))


@equation(
    "aci318-19/9.6.1.2",
    title="Least bars of a beam",
    clause="9.6.1.2",
    source=SOURCE,
    witness=f"0.639 and 0.603 in2 ({HOUSE}, veneer beam, 3); 0.8568 in2 ({_BEAM})",
    constants={3: "lb^0.5/in", 200: "psi"},
)
def least_bending_steel(f_c: StructuralStrength, f_y: BarYield, b_w: WebWidth, d: EffectiveDepth) -> LeastArea:
    """So many bars that the section carries more cracked than at its first crack: 3 sqrt(f'c), at least 200, b_w d/f_y.

    Source: ACI 318-19, 9.6.1.2, read in metric in public page notes on ACI 318M-19, pages 135 to 150 (0.25 and 1.4). 12
    by 15.06 in. of 5,000 psi: 0.639 in2 in the hand-worked notes of a house (github.com/winedarksea/TypeHaus).
    """
    return max(3 * sqrt(f_c), 200) * b_w * d / f_y


@equation(
    "aci318-19/9.6.1.3",
    title="A third more bars than the moment needs",
    clause="9.6.1.3",
    source=SOURCE,
    witness=f"0.771 in2 ({HOUSE}, veneer beam, 3)",
)
def third_more(A_s: NeededArea) -> LeastArea:
    """With a third more bars at every section than analysis asks for, 9.6.1.2 need not be met: 4/3 A_s, in2.

    Source: ACI 318-19, 9.6.1.3, read in public page notes on ACI 318M-19, pages 135 to 150. 0.578 in2: 0.771 in2 in the
    hand-worked notes of a house (github.com/winedarksea/TypeHaus).
    """
    return 4 / 3 * A_s


@equation(
    "aci318-19/24.4.3.2",
    title="Bars against shrinkage and temperature",
    clause="24.4.3.2, and 7.6.1.1 for the bending of a slab",
    source=SOURCE,
)
def shrinkage_steel(b: WebWidth, h: SectionDepth) -> LeastArea:
    """0.0018 of the whole section, in2: across a slab's own bars, and at least so much of its bars in bending.

    Whatever the grade, from the 2019 edition on. Source: ACI 318-19, 24.4.3.2, read in public page notes on ACI
    318M-19, pages 455 to 466; that 7.6.1.1 asks the same of a one-way slab's bending bars is recalled. 12 by 8 in.:
    0.173 in2 (our own arithmetic).
    """
    return 0.0018 * b * h


@procedure(
    "aci318-19/9.6.1",
    title="Bars that a beam needs",
    clause="9.6.1",
    source=SOURCE,
    alias="aci.least-bars",
)
def least_steel(
    f_c: StructuralStrength, f_y: BarYield, b_w: WebWidth, d: EffectiveDepth, M_u: FactoredMoment
) -> LeastSteel:
    """What the factored moment needs, and at least what 9.6.1.2 asks or a third more than the moment needs (9.6.1.3).

    Args:
        f_c: concrete strength, psi.
        f_y: yield strength of the bars, psi.
        b_w: width, in.
        d: depth to the bars, in.
        M_u: factored moment, lb-in.
    """
    for_moment = steel_for_moment(M_u, f_c, f_y, b_w, d)
    for_cracking = least_bending_steel(f_c, f_y, b_w, d)
    if float(for_moment) >= float(for_cracking):
        return LeastSteel(for_moment, for_cracking, for_moment, "the moment")
    more = third_more(for_moment)
    if float(more) < float(for_cracking):
        return LeastSteel(for_moment, for_cracking, more, "a third more than the moment needs (9.6.1.3)")
    return LeastSteel(for_moment, for_cracking, for_cracking, "the least of a beam (9.6.1.2)")
