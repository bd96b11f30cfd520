"""Shear across the whole width of a beam or footing with bars (ACI 318-19, 22.5 and 9.6.3).

Since 2019 a section with few stirrups or none is the weaker the fewer its bars and the deeper it is. Footings may leave
the depth out (13.2.6.2). Axial force is not counted here.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.member_symbols import (
    EXAMPLES,
    HOUSE,
    BarArea,
    EffectiveDepth,
    NominalShear,
    StirrupArea,
    StirrupSpacing,
    StirrupYield,
    StructuralStrength,
    WebWidth,
)
from groundsill.standards.aci318_19.symbols import LightweightFactor, StrengthFactor
from groundsill.standards.aci318_19.tables import table_21_2_1
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import add, condition, given, greatest, least, note

__all__ = [
    "OneWayShear",
    "bar_ratio",
    "design_shear",
    "greatest_concrete_shear",
    "greatest_shear",
    "least_stirrup",
    "least_stirrups",
    "one_way_shear",
    "shear_few_stirrups",
    "shear_simple",
    "shear_with_bars",
    "size_effect",
    "stirrup_shear",
    "stirrup_spacing",
    "stirrups_asked",
    "widest_stirrup_spacing",
]

BarRatio = Annotated[float, Q("1", "rho_w", "area of the bars over b_w d", above=0.0, at_most=0.1)]
SizeEffect = Annotated[float, Q("1", "lambda_s", "size effect factor", above=0.0, at_most=1.0)]
ConcreteShear = Annotated[float, Q("lb", "V_c", "shear carried by the concrete", at_least=0.0)]
StirrupShear = Annotated[float, Q("lb", "V_s", "shear carried by the stirrups", at_least=0.0)]


@dataclass(frozen=True, slots=True)
class OneWayShear:
    """Shear strength, lb: concrete, stirrups, nominal, phi, design; ``enough_stirrups`` when 9.6.3.4 is met."""

    concrete: float
    stirrups: float
    nominal: float
    phi: float
    design: float
    enough_stirrups: bool


@equation(
    "aci318-19/22.5.5.1-rho",
    title="Share of bars in the section",
    clause="22.5.5.1",
    source=SOURCE,
    witness=f"0.005208 ({EXAMPLES}, one-way shear)",
)
def bar_ratio(A_s: BarArea, b_w: WebWidth, d: EffectiveDepth) -> BarRatio:
    """Area of the bars in tension over width and effective depth: A_s/(b_w d).

    Source: ACI 318-19, 22.5.5.1. 1.0 in2 in 12 by 16 in.: 0.005208, in the worked examples of
    github.com/clay-good/roughlogic.com.
    """
    return A_s / (b_w * d)


@equation(
    "aci318-19/22.5.5.1.3",
    title="Size effect in shear",
    clause="Eq. 22.5.5.1.3",
    source=SOURCE,
    witness=f"0.8771 ({EXAMPLES}, one-way shear)",
    constants={10: "in"},
)
def size_effect(d: EffectiveDepth) -> SizeEffect:
    """The root of 2/(1 + d/10), at most 1, which is at 10 in.

    Source: ACI 318-19, Eq. 22.5.5.1.3, read in metric (0.004 d) in public page notes on ACI 318M-19, pages 401 to 411.
    16 in.: 0.8771, in the worked examples of github.com/clay-good/roughlogic.com.
    """
    return min(sqrt(2 / (1 + d / 10)), 1)


@equation(
    "aci318-19/22.5.5.1a",
    title="Shear of the concrete with enough stirrups",
    clause="Table 22.5.5.1(a)",
    source=SOURCE,
    witness=f"25,566 lb, by 19,174 lb at 0.75 ({HOUSE}, veneer beam, 3); 32.6 kip ({EXAMPLES}, beam shear)",
    constants={2: "lb^0.5/in"},
)
def shear_simple(
    f_c: StructuralStrength, b_w: WebWidth, d: EffectiveDepth, lam: LightweightFactor = 1.0
) -> ConcreteShear:
    """2 lambda sqrt(f'c) b_w d, lb, where stirrups are at least those of 9.6.3.4.

    Source: ACI 318-19, Table 22.5.5.1(a), read in public page notes on ACI 318M-19, pages 401 to 411. 4,000 psi, 12 by
    21.5 in.: 32.6 kip, in the worked examples of github.com/clay-good/roughlogic.com.
    """
    return 2 * lam * sqrt(f_c) * b_w * d


@equation(
    "aci318-19/22.5.5.1b",
    title="Shear of the concrete with enough stirrups, by its bars",
    clause="Table 22.5.5.1(b)",
    source=SOURCE,
    constants={8: "lb^0.5/in"},
)
def shear_with_bars(
    f_c: StructuralStrength, rho_w: BarRatio, b_w: WebWidth, d: EffectiveDepth, lam: LightweightFactor = 1.0
) -> ConcreteShear:
    """8 lambda rho_w^(1/3) sqrt(f'c) b_w d, lb, where stirrups are at least those of 9.6.3.4: the other choice.

    Source: ACI 318-19, Table 22.5.5.1(b), read in public page notes on ACI 318M-19, pages 401 to 411. 4,000 psi, 12 by
    16 in., rho_w 0.0156: 24.3 kip, where (a) gives the same (our own arithmetic).
    """
    return 8 * lam * rho_w ** (1 / 3) * sqrt(f_c) * b_w * d  # type: ignore[no-any-return]  # a float power is Any


@equation(
    "aci318-19/22.5.5.1c",
    title="Shear of the concrete with few stirrups or none",
    clause="Table 22.5.5.1(c)",
    source=SOURCE,
    witness=f"14.77 kip ({EXAMPLES}, one-way shear)",
    constants={8: "lb^0.5/in"},
)
def shear_few_stirrups(
    f_c: StructuralStrength,
    rho_w: BarRatio,
    b_w: WebWidth,
    d: EffectiveDepth,
    lambda_s: SizeEffect = 1.0,
    lam: LightweightFactor = 1.0,
) -> ConcreteShear:
    """8 lambda_s lambda rho_w^(1/3) sqrt(f'c) b_w d, lb.

    Source: ACI 318-19, Table 22.5.5.1(c), read in public page notes on ACI 318M-19, pages 401 to 411. 4,000 psi, 12 by
    16 in. with 1.0 in2: 14.77 kip, in the worked examples of github.com/clay-good/roughlogic.com.
    """
    return 8 * lambda_s * lam * rho_w ** (1 / 3) * sqrt(f_c) * b_w * d  # type: ignore[no-any-return]  # as above


@equation(
    "aci318-19/22.5.5.1.1",
    title="Most shear that the concrete may be counted for",
    clause="22.5.5.1.1",
    source=SOURCE,
    constants={5: "lb^0.5/in"},
)
def greatest_concrete_shear(
    f_c: StructuralStrength, b_w: WebWidth, d: EffectiveDepth, lam: LightweightFactor = 1.0
) -> ConcreteShear:
    """5 lambda sqrt(f'c) b_w d, lb.

    Source: ACI 318-19, 22.5.5.1.1, read in metric (0.42) in public page notes on ACI 318M-19, pages 401 to 411. 4,000
    psi, 12 by 16 in.: 60.7 kip (our own arithmetic).
    """
    return 5 * lam * sqrt(f_c) * b_w * d


@equation(
    "aci318-19/22.5.8.5.3",
    title="Shear of the stirrups",
    clause="Eq. 22.5.8.5.3",
    source=SOURCE,
)
def stirrup_shear(A_v: StirrupArea, f_yt: StirrupYield, d: EffectiveDepth, s: StirrupSpacing) -> StirrupShear:
    """Stirrups across the member: A_v f_yt d/s, lb.

    Source: ACI 318-19, Eq. 22.5.8.5.3, read in public page notes on ACI 318M-19, pages 401 to 411. Two legs of #3 at 10
    in. with d = 21.5 in.: 28.4 kip (our own arithmetic).
    """
    return A_v * f_yt * d / s


@equation(
    "aci318-19/22.5.8.5.3-s",
    title="Spacing of stirrups that a shear needs",
    clause="Eq. 22.5.8.5.3, solved for the spacing",
    source=SOURCE,
    witness=f"13.7 in. ({EXAMPLES}, beam shear)",
)
def stirrup_spacing(
    A_v: StirrupArea,
    f_yt: StirrupYield,
    d: EffectiveDepth,
    V_s: Annotated[float, Q("lb", "V_s", "shear that the stirrups must carry", above=0.0)],
) -> Annotated[float, Q("in", "s", "spacing of the stirrups")]:
    """A_v f_yt d/V_s, in. Two legs of #3, d = 21.5 in., 20.7 kip: 13.7 in., in the worked examples of
    github.com/clay-good/roughlogic.com.
    """
    return A_v * f_yt * d / V_s


@equation(
    "aci318-19/22.5.1.2",
    title="Most shear that a section may be counted for",
    clause="Eq. 22.5.1.2",
    source=SOURCE,
    constants={8: "lb^0.5/in"},
)
def greatest_shear(V_c: ConcreteShear, f_c: StructuralStrength, b_w: WebWidth, d: EffectiveDepth) -> NominalShear:
    """The concrete's share and 8 sqrt(f'c) b_w d more, lb, however many the stirrups.

    Source: ACI 318-19, Eq. 22.5.1.2, read in metric (0.66) in public page notes on ACI 318M-19, pages 401 to 411. 4,000
    psi, 12 by 16 in., V_c 24.3 kip: 121.4 kip (our own arithmetic).
    """
    return V_c + 8 * sqrt(f_c) * b_w * d


@equation(
    "aci318-19/9.5.1.1-shear",
    title="Design shear of a section with bars",
    clause="9.5.1.1",
    source=SOURCE,
    witness=f"11.08 kip ({EXAMPLES}, one-way shear)",
)
def design_shear(phi: StrengthFactor, V_n: NominalShear) -> Annotated[float, Q("lb", "φV_n", "design shear")]:
    """Phi (Table 21.2.1, shear) times the nominal shear strength, lb.

    Source: ACI 318-19, 9.5.1.1 and Table 21.2.1, read in public page notes on ACI 318M-19, pages 391 to 396. 0.75 x
    14.77 = 11.08 kip, in the worked examples of github.com/clay-good/roughlogic.com.
    """
    return phi * V_n


@equation(
    "aci318-19/9.6.3.4",
    title="Least stirrups",
    clause="Table 9.6.3.4",
    source=SOURCE,
    witness=f"0.0106 in2/in ({HOUSE}, veneer beam, 4a)",
    constants={0.75: "lb^0.5/in", 50: "psi"},
)
def least_stirrups(
    f_c: StructuralStrength, b_w: WebWidth, f_yt: StirrupYield
) -> Annotated[float, Q("in^2/in", "A_v,min/s", "least stirrups, area for each inch", above=0.0)]:
    """0.75 sqrt(f'c), at least 50 psi, times b_w/f_yt, in2 for each inch of beam.

    Source: ACI 318-19, Table 9.6.3.4, read in metric (0.062 and 0.35) in public page notes on ACI 318M-19, pages 135 to
    150. 12 in. of 5,000 psi: 0.0106 in2/in in the hand-worked notes of a house (github.com/winedarksea/TypeHaus).
    """
    return max(0.75 * sqrt(f_c), 50) * b_w / f_yt


@equation(
    "aci318-19/9.6.3.4-s",
    title="Least area of one stirrup",
    clause="Table 9.6.3.4",
    source=SOURCE,
)
def least_stirrup(
    per_inch: Annotated[float, Q("in^2/in", "A_v,min/s", "least stirrups, area for each inch", above=0.0)],
    s: StirrupSpacing,
) -> Annotated[float, Q("in^2", "A_v,min", "least area of all legs of one stirrup", above=0.0)]:
    """The least for each inch times the spacing, in2. 0.0106 in2/in at 5 in.: 0.053 in2 (our own arithmetic)."""
    return per_inch * s


@equation(
    "aci318-19/9.6.3.1",
    title="Shear above which a beam needs its least stirrups",
    clause="9.6.3.1",
    source=SOURCE,
    constants={1: "lb^0.5/in"},
)
def stirrups_asked(
    phi: StrengthFactor, f_c: StructuralStrength, b_w: WebWidth, d: EffectiveDepth, lam: LightweightFactor = 1.0
) -> Annotated[float, Q("lb", "V_u,0", "factored shear from which on least stirrups are asked")]:
    """Phi lambda sqrt(f'c) b_w d, lb. A beam no deeper than 10 in., or a slab, needs them only beyond phi V_c.

    Source: ACI 318-19, 9.6.3.1 with Table 9.6.3.1, read in metric (0.083; 250 mm) in public page notes on ACI 318M-19,
    pages 135 to 150; that 7.6.3.1 asks it of slabs only beyond phi V_c is recalled. 2,500 psi, 12 by 14 in.: 6,300 lb
    (our own arithmetic).
    """
    return phi * 1 * lam * sqrt(f_c) * b_w * d


@equation(
    "aci318-19/9.7.6.2.2",
    title="Widest spacing of stirrups",
    clause="Table 9.7.6.2.2",
    source=SOURCE,
    witness=f"10.75 in. ({EXAMPLES}, beam shear)",
    constants={4: "lb^0.5/in", 24: "in"},
)
def widest_stirrup_spacing(
    V_s: StirrupShear, f_c: StructuralStrength, b_w: WebWidth, d: EffectiveDepth
) -> Annotated[float, Q("in", "s_max", "widest spacing of stirrups along the member")]:
    """Half the depth and 24 in.; half of both where the stirrups carry more than 4 sqrt(f'c) b_w d.

    Source: ACI 318-19, Table 9.7.6.2.2, read in metric in public page notes on ACI 318M-19, pages 135 to 150. d = 21.5
    in.: 10.75 in., in the worked examples of github.com/clay-good/roughlogic.com.
    """
    if V_s <= 4 * sqrt(f_c) * b_w * d:
        return min(d / 2, 24)
    return min(d / 2, 24) / 2


@procedure(
    "aci318-19/22.5",
    title="One-way shear strength of a section with bars",
    clause="22.5.1 and 22.5.5",
    source=SOURCE,
    alias="aci.shear",
)
def one_way_shear(
    f_c: StructuralStrength,
    b_w: WebWidth,
    d: EffectiveDepth,
    A_s: BarArea,
    footing: bool = False,
    A_v: StirrupArea = 0.0,
    s: StirrupSpacing = 12.0,
    f_yt: StirrupYield = 60000.0,
    lam: LightweightFactor = 1.0,
) -> OneWayShear:
    """Nominal and design shear strength, without axial force.

    Args:
        f_c: concrete strength, psi.
        b_w: width, in.
        d: depth from the pressed face to the middle of the bars in tension, in.
        A_s: area of the bars in tension, in2.
        footing: True for a strip, isolated or combined footing, whose depth is no disadvantage (13.2.6.2).
        A_v: area of all legs of one stirrup, in2; 0 for none.
        s: spacing of the stirrups, in.
        f_yt: yield strength of the stirrups, psi.
        lam: lightweight concrete factor.
    """
    rho_w = bar_ratio(A_s, b_w, d)
    enough = False
    if float(A_v) > 0:
        asked = least_stirrup(least_stirrups(f_c, b_w, f_yt), s)
        enough = float(A_v) >= float(asked)
        condition("the stirrups are at least the least", enough, A_v, asked, cite=SOURCE.cite("9.6.3.4"))
    if enough:
        two = (shear_simple(f_c, b_w, d, lam), shear_with_bars(f_c, rho_w, b_w, d, lam))
        V_c = greatest(*two, symbol="V_c", label="the better of the two")
    elif footing:
        note("A footing's depth is no disadvantage (13.2.6.2): lambda_s = 1")
        V_c = shear_few_stirrups(f_c, rho_w, b_w, d, 1.0, lam)
    else:
        V_c = shear_few_stirrups(f_c, rho_w, b_w, d, size_effect(d), lam)
    V_c = least(V_c, greatest_concrete_shear(f_c, b_w, d, lam), symbol="V_c", label="shear carried by the concrete")
    V_s = stirrup_shear(A_v, f_yt, d, s) if float(A_v) > 0 else given("V_s", 0.0, "lb", "no stirrups")
    if float(A_v) > 0 and float(s) > float(widest_stirrup_spacing(V_s, f_c, b_w, d)):
        raise OutsideLimits(
            f"{SOURCE.cite('9.7.6.2.2')}: stirrups {float(s):g} in. apart are too far for a depth of {float(d):g} in."
        )
    V_n = least(
        add(V_c, V_s, symbol="V_c + V_s"),
        greatest_shear(V_c, f_c, b_w, d),
        symbol="V_n",
        label="nominal shear strength",
    )
    phi = table_21_2_1().read("shear")
    return OneWayShear(V_c, V_s, V_n, phi, design_shear(phi, V_n), enough)
