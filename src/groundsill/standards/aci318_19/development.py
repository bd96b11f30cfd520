"""How long concrete must hold a bar for its full strength (ACI 318-19, 25.4, 25.5): straight, hooked, lapped."""

from __future__ import annotations

from math import sqrt
from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.member_symbols import (
    EXAMPLES,
    HOUSE,
    BarDiameter,
    BarYield,
    StructuralStrength,
)
from groundsill.standards.aci318_19.symbols import LightweightFactor
from groundsill.standards.aci318_19.tables import table_25_4_2_5, table_25_4_3_2, table_bars
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import least, scale

__all__ = [
    "confinement",
    "development_length",
    "development_simple",
    "hook_strength_factor",
    "hooked_development",
    "hooked_length",
    "lap_splice",
    "lapped_length",
    "straight_development",
]

_BOX = "thestructuraltoolbox.com/concrete/aci_development"

Confinement = Annotated[
    float, Q("1", "(c_b + K_tr)/d_b", "cover and ties over the bar's diameter", above=0.0, at_most=2.5)
]
Placed = Annotated[float, Q("1", "psi_t psi_e", "place and coating, at most 1.7", at_least=1.0, at_most=1.7)]
SizeFactor = Annotated[float, Q("1", "psi_s", "factor of the bar's size", at_least=0.8, at_most=1.0)]
GradeFactor = Annotated[float, Q("1", "psi_g", "factor of the bar's grade", at_least=1.0, at_most=1.3)]
Tension = Annotated[float, Q("in", "l_d", "development length in tension", at_least=12.0)]
HookedLength = Annotated[float, Q("in", "l_dh", "development length of a standard hook", at_least=6.0)]


@equation(
    "aci318-19/25.4.2.4",
    title="Cover and ties over the bar",
    clause="25.4.2.4",
    source=SOURCE,
    witness=f"2.5 ({_BOX})",
)
def confinement(
    c_b: Annotated[float, Q("in", "c_b", "bar's middle to the nearest face, or half the spacing", above=0.0)],
    d_b: BarDiameter,
    K_tr: Annotated[float, Q("in", "K_tr", "index of ties across the splitting plane", at_least=0.0)] = 0.0,
) -> Confinement:
    """The lesser of (c_b + K_tr)/d_b and 2.5; ties may be left out.

    Source: ACI 318-19, 25.4.2.4, read at thestructuraltoolbox.com/concrete/aci_development: 1.5 in. over 0.375 in.: 4,
    so 2.5.
    """
    return min((c_b + K_tr) / d_b, 2.5)


@equation(
    "aci318-19/25.4.2.4a",
    title="Development length of a straight bar in tension",
    clause="Eq. 25.4.2.4a with 25.4.2.1",
    source=SOURCE,
    witness=f"28.5 and 37.0 in. ({EXAMPLES}, development length); 12.0 in. ({_BOX})",
    constants={40: "lb^0.5/in", 12: "in"},
)
def straight_development(
    f_y: BarYield,
    f_c: StructuralStrength,
    d_b: BarDiameter,
    psi_te: Placed,
    psi_s: SizeFactor,
    psi_g: GradeFactor,
    held: Confinement,
    lam: LightweightFactor = 1.0,
) -> Tension:
    """3/40 f_y psi_t psi_e psi_s psi_g/(lambda sqrt(f'c) (c_b + K_tr)/d_b) times d_b, at least 12 in.

    Source: ACI 318-19, Eq. 25.4.2.4a, read at thestructuraltoolbox.com/concrete/aci_development. #8, 60,000 psi, 4,000
    psi, well held: 28.5 in., cast high 37.0 in., in the worked examples of github.com/clay-good/roughlogic.com.
    """
    return max(3 / 40 * f_y * psi_te * psi_s * psi_g / (lam * sqrt(f_c) * held) * d_b, 12)


@equation(
    "aci318-19/25.4.2.3",
    title="Development length of a straight bar, short form",
    clause="Table 25.4.2.3",
    source=SOURCE,
    witness=f"21.21 and 18.97 in. ({HOUSE}, rebar layout, 1)",
    constants={25: "lb^0.5/in", 20: "lb^0.5/in", 12: "in", 0.75: "in"},
)
def development_simple(
    f_y: BarYield, f_c: StructuralStrength, d_b: BarDiameter, psi_te: Placed, psi_g: GradeFactor,
    lam: LightweightFactor = 1.0,
) -> Tension:  # fmt: skip
    """f_y psi_t psi_e psi_g/(25 lambda sqrt(f'c)) d_b for #6 and smaller, 20 for larger, at least 12 in.

    For bars with a diameter of cover and of clear spacing and at least the least of stirrups, or two diameters of
    spacing. Source: ACI 318-19, Table 25.4.2.3, in the hand-worked notes of a house (github.com/winedarksea/TypeHaus):
    #5 in 5,000 psi 21.21 in., #4 in 4,000 psi 18.97 in.
    """
    if d_b <= 0.75:
        return max(f_y * psi_te * psi_g / (25 * lam * sqrt(f_c)) * d_b, 12)
    return max(f_y * psi_te * psi_g / (20 * lam * sqrt(f_c)) * d_b, 12)


@equation(
    "aci318-19/25.4.3.2-c",
    title="Strength factor of a hook",
    clause="Table 25.4.3.2, psi_c",
    source=SOURCE,
    witness=f"0.867 ({EXAMPLES}, hook); 0.933 ({HOUSE}, rebar layout, 1)",
    constants={6000: "psi", 15000: "psi"},
)
def hook_strength_factor(
    f_c: StructuralStrength,
) -> Annotated[float, Q("1", "psi_c", "strength factor of a hook", at_least=0.6, at_most=1.0)]:
    """f'c/15,000 + 0.6 below 6,000 psi, else 1.

    Source: ACI 318-19, Table 25.4.3.2, in the worked examples of github.com/clay-good/roughlogic.com: 4,000 psi 0.867.
    """
    if f_c < 6000:
        return f_c / 15000 + 0.6
    return 1.0


@equation(
    "aci318-19/25.4.3.1",
    title="Development length of a standard hook in tension",
    clause="25.4.3.1",
    source=SOURCE,
    witness=f"15.0 and 7.4 in. ({EXAMPLES}, hook); 9.353 in. ({HOUSE}, rebar layout, 1)",
    constants={55: "lb^0.5/in^0.5", 6: "in"},
)
def hooked_development(
    f_y: BarYield,
    f_c: StructuralStrength,
    d_b: BarDiameter,
    psi_e: Annotated[float, Q("1", "psi_e", "coating factor of a hook", at_least=1.0, at_most=1.2)],
    psi_r: Annotated[float, Q("1", "psi_r", "factor of ties round the hooks", at_least=1.0, at_most=1.6)],
    psi_o: Annotated[float, Q("1", "psi_o", "factor of place", at_least=1.0, at_most=1.25)],
    psi_c: Annotated[float, Q("1", "psi_c", "strength factor of a hook", at_least=0.6, at_most=1.0)],
    lam: LightweightFactor = 1.0,
) -> HookedLength:
    """f_y psi_e psi_r psi_o psi_c/(55 lambda sqrt(f'c)) d_b^1.5, at least 8 d_b and 6 in.

    Source: ACI 318-19, 25.4.3.1, read at thestructuraltoolbox.com/concrete/aci_development. #8 in 4,000 psi with all
    factors 1 but psi_c 0.867: 15.0 in., in the worked examples of github.com/clay-good/roughlogic.com.
    """
    length = f_y * psi_e * psi_r * psi_o * psi_c / (55 * lam * sqrt(f_c)) * d_b**1.5
    return max(length, 8 * d_b, 6)  # type: ignore[no-any-return]  # mypy: a float power is Any


@equation(
    "aci318-19/25.5.2.1",
    title="Lap of bars in tension",
    clause="Table 25.5.2.1",
    source=SOURCE,
    witness=f"27.58 in. ({HOUSE}, rebar layout, 1)",
    constants={12: "in"},
)
def lapped_length(
    l_d: Tension, factor: Annotated[float, Q("1", "k", "1.0 for class A, 1.3 for class B", at_least=1.0, at_most=1.3)]
) -> Annotated[float, Q("in", "l_st", "lap of bars in tension", at_least=12.0)]:
    """1.3 l_d (class B), or l_d where the bars are twice those needed and half at most are lapped at one place (A).

    Source: ACI 318-19, Table 25.5.2.1, in the hand-worked notes of a house (github.com/winedarksea/TypeHaus): #5 in
    5,000 psi, class B: 27.58 in.
    """
    return max(factor * l_d, 12)


# ---- For a bar by its number ----------------------------------------------------------------------------------------


@procedure(
    "aci318-19/25.4.2",
    title="Development length of a straight bar by its number",
    clause="25.4.2",
    source=SOURCE,
    alias="aci.development",
)
def development_length(
    bar: str,
    f_c: StructuralStrength,
    f_y: BarYield = 60000.0,
    c_b: Annotated[float, Q("in", "c_b", "bar's middle to the nearest face, or half the spacing", above=0.0)] = 3.0,
    place: str = "other",
    coating: str = "none",
    lam: LightweightFactor = 1.0,
) -> float:
    """Length, in., for a bar in tension whose ties are not counted.

    Args:
        bar: its number, ``#4``.
        f_c: concrete strength, psi.
        f_y: yield strength, psi.
        c_b: the lesser of the distance from its middle to the nearest face and half the spacing, in.
        place: ``over 12 in. of fresh concrete`` for level bars cast so, else ``other``.
        coating: ``none`` (galvanized too), ``epoxy, thin cover or close``, ``epoxy, other``.
        lam: lightweight concrete factor.
    """
    d_b = table_bars().read(bar, "diameter", symbol="d_b")
    factors = table_25_4_2_5()
    both = scale(factors.read(f"place: {place}"), factors.read(f"coating: {coating}"), symbol="psi_t psi_e")
    placed = least(both, 1.7, symbol="psi_t psi_e", label="at most 1.7")
    size = factors.read("size: #6 and smaller" if float(d_b) <= 0.75 else "size: #7 and larger")
    return straight_development(f_y, f_c, d_b, placed, size, factors.read(_grade(f_y)), confinement(c_b, d_b), lam)


@procedure(
    "aci318-19/25.4.3",
    title="Development length of a hook by its bar's number",
    clause="25.4.3",
    source=SOURCE,
    alias="aci.hook",
)
def hooked_length(
    bar: str,
    f_c: StructuralStrength,
    f_y: BarYield = 60000.0,
    ties: str = "other",
    place: str = "other",
    coating: str = "none",
    lam: LightweightFactor = 1.0,
) -> float:
    """Length, in., of a standard 90 or 180 degree hook, to the outside of the bend.

    Args:
        bar: its number, ``#4`` (up to #11).
        f_c: concrete strength, psi.
        f_y: yield strength, psi.
        ties: ``tied or 6 diameters apart``, else ``other``.
        place: ``in a tied core or 6 diameters of side cover``, else ``other``.
        coating: ``none`` (galvanized too), ``epoxy``.
        lam: lightweight concrete factor.
    """
    d_b = table_bars().read(bar, "diameter", symbol="d_b")
    if float(d_b) > 1.41:
        raise OutsideLimits(f"{SOURCE.cite('25.4.3')}: {bar} has no standard hook in tension; #11 is the largest")
    read = table_25_4_3_2().read
    factors = (read(f"coating: {coating}"), read(f"ties: {ties}"), read(f"place: {place}"))
    return hooked_development(f_y, f_c, d_b, *factors, hook_strength_factor(f_c), lam)


@procedure(
    "aci318-19/25.5.2",
    title="Lap of two bars by their number",
    clause="25.5.2",
    source=SOURCE,
    alias="aci.lap",
)
def lap_splice(
    bar: str,
    f_c: StructuralStrength,
    f_y: BarYield = 60000.0,
    c_b: Annotated[float, Q("in", "c_b", "bar's middle to the nearest face, or half the spacing", above=0.0)] = 3.0,
    place: str = "other",
    twice_the_steel_and_staggered: bool = False,
) -> float:
    """Length of a lap in tension, in., of uncoated bars in concrete of normal weight.

    Args:
        bar: its number, ``#4`` (up to #11: larger bars are not lapped, 25.5.1.1).
        f_c: concrete strength, psi.
        f_y: yield strength, psi.
        c_b: the lesser of the distance from its middle to the nearest face and half the spacing, in.
        place: ``over 12 in. of fresh concrete`` for level bars cast so, else ``other``.
        twice_the_steel_and_staggered: True where the bars are at least twice those needed over the lap and at most half
            are lapped at one place: class A.
    """
    l_d = development_length(bar, f_c, f_y, c_b, place)
    return lapped_length(l_d, 1.0 if twice_the_steel_and_staggered else 1.3)


def _grade(f_y: float) -> str:
    return "grade: 60 and less" if float(f_y) <= 60000.0 else "grade: 80"
