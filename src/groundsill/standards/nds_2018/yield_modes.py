"""Table 12.3.1A: the six ways a dowel joint yields in single shear, the four in double shear, one equation each.

In: diameter, bearing lengths, bearing strengths, bending strength, reduction term. Out: lb for one fastener. With the
reduction term put at 1 the same equations give the yield load itself. A dowel of less than 1/4 in. divides by K_D in
every mode; from 1/4 in. up each mode has its own term, raised by the angle to grain (Table 12.3.1B).

Source: Tables 12.3.1A and B (pages 83, 84) as transcribed by page in github.com/rohreng/anderson-rohr-calcs, the
specification of its wood connection schedule, section 5.4; the printed cells of Tables 12A to 12P prove them.
"""

from __future__ import annotations

from math import sqrt
from typing import Annotated

from groundsill.standards.nds_2018 import SOURCE
from groundsill.standards.nds_2018.symbols import (
    Angle,
    BearingMain,
    BearingSide,
    Diameter,
    LengthMain,
    LengthSide,
    RatioBearing,
    RatioLength,
    Reduction,
    YieldStrength,
)
from groundsill.working.equation import Q, equation

__all__ = [
    "angle_factor",
    "double_shear_iiis",
    "double_shear_im",
    "double_shear_is",
    "double_shear_iv",
    "k_1",
    "k_2",
    "k_3",
    "reduction_mode_i",
    "reduction_mode_ii",
    "reduction_mode_iii_iv",
    "reduction_small_dowel",
    "yield_mode_ii",
    "yield_mode_iiim",
    "yield_mode_iiis",
    "yield_mode_im",
    "yield_mode_is",
    "yield_mode_iv",
]

Factor1 = Annotated[float, Q("1", "k_1", "coefficient of mode II", above=0.0)]
Factor2 = Annotated[float, Q("1", "k_2", "coefficient of mode IIIm", above=0.0)]
Factor3 = Annotated[float, Q("1", "k_3", "coefficient of mode IIIs", above=0.0)]
AngleFactor = Annotated[float, Q("1", "K_θ", "angle to grain coefficient", at_least=1.0, at_most=1.25)]


@equation(
    "nds-2018/12.3.1B-K-theta",
    title="Angle to grain coefficient",
    clause="Table 12.3.1B",
    source=SOURCE,
    witness="github.com/willysw/wsweng, notebook s1, 3/4 in. bolt in double shear across the grain, 484.9 lb",
)
def angle_factor(theta: Angle) -> Annotated[float, Q("1", "K_θ", "angle to grain coefficient")]:
    """1 + 0.25 (θ/90), θ the largest angle of load to grain of any member of the joint.

    Example: 0 degrees 1.0, 90 degrees 1.25 (our own arithmetic).
    """
    return 1 + 0.25 * theta / 90


@equation(
    "nds-2018/12.3.1B-I",
    title="Reduction term of modes Im and Is, D at least 1/4 in.",
    clause="Table 12.3.1B",
    source=SOURCE,
    witness="github.com/willysw/wsweng, notebook s1, 3/4 in. bolt in double shear along the grain, 1316.7 lb",
)
def reduction_mode_i(K_theta: AngleFactor) -> Annotated[float, Q("1", "R_d,I", "reduction term of mode I")]:
    """4 K_θ. Example: load parallel to grain, 4.0."""
    return 4 * K_theta


@equation(
    "nds-2018/12.3.1B-II",
    title="Reduction term of mode II, D at least 1/4 in.",
    clause="Table 12.3.1B",
    source=SOURCE,
    witness="NDS 2018 Table 12A, 1/2 in., 1-1/2 in. both, 480 lb, as read in github.com/rohreng/anderson-rohr-calcs",
)
def reduction_mode_ii(K_theta: AngleFactor) -> Annotated[float, Q("1", "R_d,II", "reduction term of mode II")]:
    """3.6 K_θ. Example: load parallel to grain, 3.6."""
    return 3.6 * K_theta


@equation(
    "nds-2018/12.3.1B-III-IV",
    title="Reduction term of modes IIIm, IIIs and IV, D at least 1/4 in.",
    clause="Table 12.3.1B",
    source=SOURCE,
    witness="NDS 2018 Table 12A, 3/4 in., 3-1/2 and 1-1/2 in., 1200 lb, read in github.com/rohreng/anderson-rohr-calcs",
)
def reduction_mode_iii_iv(
    K_theta: AngleFactor,
) -> Annotated[float, Q("1", "R_d,III", "reduction term of modes III and IV")]:
    """3.2 K_θ. Example: load perpendicular to grain, 4.0."""
    return 3.2 * K_theta


@equation(
    "nds-2018/12.3.1B-K-D",
    title="Reduction term of every mode, D under 1/4 in.",
    clause="Table 12.3.1B",
    source=SOURCE,
    witness="github.com/willysw/wsweng, notebook s1, Breyer example 12.3, kd = 2.2000",
    constants={0.17: "in", 10: "1/in"},
)
def reduction_small_dowel(
    D: Annotated[float, Q("in", "D", "fastener diameter", above=0.0, below=0.25)],
) -> Annotated[float, Q("1", "K_D", "reduction term of a small dowel")]:
    """2.2 up to 0.17 in., then 10 D + 0.5.

    It reproduces the wood council's solved nail (0.148 in., 105.1 lb). Example: 0.192 in. (20d common): 2.42.
    """
    if D <= 0.17:
        return 2.2
    return 10 * D + 0.5


@equation(
    "nds-2018/12.3.1-k1",
    title="Coefficient k1 of mode II",
    clause="Table 12.3.1A, notes",
    source=SOURCE,
    witness="github.com/willysw/wsweng, notebook s1, Breyer examples 12.3 to 12.5, k1 = 0.49165, 0.82699, 1.3156",
)
def k_1(R_e: RatioBearing, R_t: RatioLength) -> Annotated[float, Q("1", "k_1", "coefficient of mode II")]:
    """How much of the side member's full bearing the dowel reaches when it only turns.

    Example: equal strengths, R_t = 4/3: 0.4917 (printed by github.com/willysw/wsweng for Breyer's example 12.3).
    """
    return (sqrt(R_e + 2 * R_e**2 * (1 + R_t + R_t**2) + R_t**2 * R_e**3) - R_e * (1 + R_t)) / (1 + R_e)


@equation(
    "nds-2018/12.3.1-k2",
    title="Coefficient k2 of mode IIIm",
    clause="Table 12.3.1A, notes",
    source=SOURCE,
    witness="github.com/willysw/wsweng, notebook s1, Breyer examples 12.3 to 12.5, k2 = 1.0625, 0.48694, 0.91204",
)
def k_2(
    R_e: RatioBearing, F_yb: YieldStrength, D: Diameter, F_em: BearingMain, l_m: LengthMain
) -> Annotated[float, Q("1", "k_2", "coefficient of mode IIIm")]:
    """How much of the main member bears with one hinge in the side member; the bending term takes 1 + 2 R_e.

    Some public code puts 2 + R_e here, which is k3's factor; the two agree only where R_e = 1.
    """
    return -1 + sqrt(2 * (1 + R_e) + 2 * F_yb * (1 + 2 * R_e) * D**2 / (3 * F_em * l_m**2))


@equation(
    "nds-2018/12.3.1-k3",
    title="Coefficient k3 of mode IIIs",
    clause="Table 12.3.1A, notes",
    source=SOURCE,
    witness="github.com/willysw/wsweng, notebook s1, Breyer examples 12.3 to 12.5, k3 = 1.1099, 6.3049, 1.9651",
)
def k_3(
    R_e: RatioBearing, F_yb: YieldStrength, D: Diameter, F_em: BearingMain, l_s: LengthSide
) -> Annotated[float, Q("1", "k_3", "coefficient of mode IIIs")]:
    """How much of the side member bears with one hinge in the main member (l_s, not l_m, in the bending term)."""
    return -1 + sqrt(2 * (1 + R_e) / R_e + 2 * F_yb * (2 + R_e) * D**2 / (3 * F_em * l_s**2))


@equation(
    "nds-2018/12.3.1-Im",
    title="Yield mode Im: the main member crushes",
    clause="Table 12.3.1A, Eq. 12.3-1",
    source=SOURCE,
    witness="github.com/willysw/wsweng, notebook s1, Breyer example 12.3, 684.82 lb",
)
def yield_mode_im(
    D: Diameter, l_m: LengthMain, F_em: BearingMain, R_d: Reduction
) -> Annotated[float, Q("lb", "Z_Im", "single shear, mode Im")]:
    """The dowel stays straight and crushes the main member along its whole length in it."""
    return D * l_m * F_em / R_d


@equation(
    "nds-2018/12.3.1-Is",
    title="Yield mode Is: the side member crushes",
    clause="Table 12.3.1A, Eq. 12.3-2",
    source=SOURCE,
    witness="github.com/willysw/wsweng, notebook s1, Breyer example 12.4, 333.57 lb",
)
def yield_mode_is(
    D: Diameter, l_s: LengthSide, F_es: BearingSide, R_d: Reduction
) -> Annotated[float, Q("lb", "Z_Is", "single shear, mode Is")]:
    """The dowel stays straight and crushes the side member along its whole length in it."""
    return D * l_s * F_es / R_d


@equation(
    "nds-2018/12.3.1-II",
    title="Yield mode II: the dowel turns, straight",
    clause="Table 12.3.1A, Eq. 12.3-3",
    source=SOURCE,
    witness="github.com/willysw/wsweng, notebook s1, Breyer example 12.4, 275.86 lb",
)
def yield_mode_ii(
    k_1: Factor1, D: Diameter, l_s: LengthSide, F_es: BearingSide, R_d: Reduction
) -> Annotated[float, Q("lb", "Z_II", "single shear, mode II")]:
    """The dowel turns about the shear plane without bending and crushes both members near the plane and the ends."""
    return k_1 * D * l_s * F_es / R_d


@equation(
    "nds-2018/12.3.1-IIIm",
    title="Yield mode IIIm: one hinge, the main member crushes",
    clause="Table 12.3.1A, Eq. 12.3-4",
    source=SOURCE,
    witness="github.com/willysw/wsweng, notebook s1, Breyer example 12.5, 214.28 lb",
)
def yield_mode_iiim(
    k_2: Factor2, D: Diameter, l_m: LengthMain, F_em: BearingMain, R_e: RatioBearing, R_d: Reduction
) -> Annotated[float, Q("lb", "Z_IIIm", "single shear, mode IIIm")]:
    """The dowel hinges in the side member and turns in the main member."""
    return k_2 * D * l_m * F_em / ((1 + 2 * R_e) * R_d)


@equation(
    "nds-2018/12.3.1-IIIs",
    title="Yield mode IIIs: one hinge, the side member crushes",
    clause="Table 12.3.1A, Eq. 12.3-5",
    source=SOURCE,
    witness="wood council's solved nail as held by github.com/xcfem/xc, lateral_design_value_test_01: 467.49 N",
)
def yield_mode_iiis(
    k_3: Factor3, D: Diameter, l_s: LengthSide, F_em: BearingMain, R_e: RatioBearing, R_d: Reduction
) -> Annotated[float, Q("lb", "Z_IIIs", "single shear, mode IIIs")]:
    """The dowel hinges in the main member and turns in the side member: what governs a thin sill on concrete."""
    return k_3 * D * l_s * F_em / ((2 + R_e) * R_d)


@equation(
    "nds-2018/12.3.1-IV",
    title="Yield mode IV: a hinge in each member",
    clause="Table 12.3.1A, Eq. 12.3-6",
    source=SOURCE,
    witness="NDS Table 11N, 16d common, Douglas fir, 1-1/2 in. side: 141 lb, seaintarchive.org 2009c msg00914",
)
def yield_mode_iv(
    D: Diameter, F_em: BearingMain, F_yb: YieldStrength, R_e: RatioBearing, R_d: Reduction
) -> Annotated[float, Q("lb", "Z_IV", "single shear, mode IV")]:
    """The dowel hinges in both members; thickness no longer counts."""
    return D**2 / R_d * sqrt(2 * F_em * F_yb / (3 * (1 + R_e)))


@equation(
    "nds-2018/12.3.1-double-Im",
    title="Double shear, mode Im",
    clause="Table 12.3.1A, Eq. 12.3-7",
    source=SOURCE,
    witness="github.com/willysw/wsweng, notebook s1, 3/4 in. bolt in double shear along the grain, 1316.7 lb",
)
def double_shear_im(
    D: Diameter, l_m: LengthMain, F_em: BearingMain, R_d: Reduction
) -> Annotated[float, Q("lb", "Z_Im", "double shear, mode Im")]:
    """The middle member crushes; the same as in single shear."""
    return D * l_m * F_em / R_d


@equation(
    "nds-2018/12.3.1-double-Is",
    title="Double shear, mode Is",
    clause="Table 12.3.1A, Eq. 12.3-8",
    source=SOURCE,
)
def double_shear_is(
    D: Diameter, l_s: LengthSide, F_es: BearingSide, R_d: Reduction
) -> Annotated[float, Q("lb", "Z_Is", "double shear, mode Is")]:
    """Both side members crush; l_s is the length in one of them."""
    return 2 * D * l_s * F_es / R_d


@equation(
    "nds-2018/12.3.1-double-IIIs",
    title="Double shear, mode IIIs",
    clause="Table 12.3.1A, Eq. 12.3-9",
    source=SOURCE,
    witness="NDS 2018 Table 12F, 1/2 in., 1-1/2 in. all, 730 lb, as read in github.com/rohreng/anderson-rohr-calcs",
)
def double_shear_iiis(
    k_3: Factor3, D: Diameter, l_s: LengthSide, F_em: BearingMain, R_e: RatioBearing, R_d: Reduction
) -> Annotated[float, Q("lb", "Z_IIIs", "double shear, mode IIIs")]:
    """A hinge at each shear plane in the middle member, the dowel turning in both side members."""
    return 2 * k_3 * D * l_s * F_em / ((2 + R_e) * R_d)


@equation(
    "nds-2018/12.3.1-double-IV",
    title="Double shear, mode IV",
    clause="Table 12.3.1A, Eq. 12.3-10",
    source=SOURCE,
)
def double_shear_iv(
    D: Diameter, F_em: BearingMain, F_yb: YieldStrength, R_e: RatioBearing, R_d: Reduction
) -> Annotated[float, Q("lb", "Z_IV", "double shear, mode IV")]:
    """Two hinges at each of the two shear planes."""
    return 2 * D**2 / R_d * sqrt(2 * F_em * F_yb / (3 * (1 + R_e)))
