"""ASCE 7-16 section 12.8: the equivalent lateral force, its share up the height, and the drift that goes with it.

In: design accelerations, period, R, I_e and the effective seismic weight. Out: C_s with the limit that governs, base
shear (lb, strength level), the force at each level, design drift. The cap of 12.8.1.3 on S_DS is never taken unasked.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.asce7_16 import SOURCE
from groundsill.standards.asce7_16.ground_motion import end_of_plateau
from groundsill.standards.asce7_16.symbols import (
    Coefficient,
    DesignOne,
    DesignShort,
    Force,
    Height,
    Importance,
    LongPeriod,
    MappedOne,
    Modification,
    Period,
    Weight,
)
from groundsill.working.equation import Q, equation, procedure, require
from groundsill.working.errors import OutsideLimits
from groundsill.working.source import Source
from groundsill.working.steps import add, condition, divide, greatest, least, note

__all__ = [
    "LevelForce",
    "SeismicCoefficient",
    "approximate_period",
    "base_shear",
    "capped_short",
    "check_short_period_cap",
    "coefficient_least",
    "coefficient_long_period",
    "coefficient_near_fault",
    "coefficient_plateau",
    "coefficient_upper",
    "distributed",
    "distribution_exponent",
    "level_force",
    "level_weight",
    "seismic_coefficient",
    "short_period_cap",
    "upper_by_exception_2",
    "vertical_distribution",
]

Cs = Annotated[float, Q("1", "C_s", "seismic response coefficient")]
UpperCs = Annotated[float, Q("1", "C_s,max", "value that C_s need not exceed")]
LeastCs = Annotated[float, Q("1", "C_s,min", "value that C_s is not to be less than")]


@equation(
    "asce7-16/12.8-1",
    title="Seismic base shear",
    clause="Eq. 12.8-1",
    source=SOURCE,
    witness="City of Everett permit sheet 1926471, page 50: V/W 0.18",
)
def base_shear(C_s: Coefficient, W: Weight) -> Annotated[float, Q("lb", "V", "seismic base shear, strength level")]:
    """The share of the effective seismic weight that pushes sideways at the base.

    Seen on City of Santa Ana document 370270, page 70, and on the Everett sheet. Example, Everett sheet 1926471
    page 50, per pound of weight: C_s = 0.1846 gives V/W = 0.18.
    """
    return C_s * W


@equation(
    "asce7-16/12.8-2",
    title="Seismic response coefficient on the plateau",
    clause="Eq. 12.8-2",
    source=SOURCE,
    witness="City of Everett permit sheet 1926471, page 50: S_DS 1.20, R 6.5 give 0.18",
)
def coefficient_plateau(S_DS: DesignShort, R: Modification, I_e: Importance) -> Cs:
    """C_s where the period is short; nearly every house lies here.

    Seen on City of Santa Ana document 370270, page 70. Example, sheet 370584 page 131: S_DS = 1.0512, R = 6.5,
    I_e = 1 gives 0.162.
    """
    return S_DS / (R / I_e)


@equation(
    "asce7-16/12.8-3",
    title="Seismic response coefficient, upper value up to T_L",
    clause="Eq. 12.8-3",
    source=SOURCE,
    witness="City of Everett permit sheet 1926471, page 50: S_D1 0.60, T 0.217 give 0.43",
    constants={1.0: "s"},
)
def coefficient_upper(S_D1: DesignOne, T: Period, R: Modification, I_e: Importance) -> UpperCs:
    """What C_s need not exceed for periods up to T_L; the one second that S_D1 belongs to is written out.

    Seen on City of Santa Ana document 370270, page 70. Example, scribd document 710070086: S_D1 = 0.5, T = 0.463 s,
    R = 3.25 gives 0.3322.
    """
    return 1.0 * S_D1 / (T * (R / I_e))


@equation(
    "asce7-16/12.8-4",
    title="Seismic response coefficient, upper value beyond T_L",
    clause="Eq. 12.8-4",
    source=SOURCE,
    witness="City of Everett permit sheet 1926471, page 50: S_D1 0.60, T 0.217, T_L 6 give 11.78",
    constants={1.0: "s"},
)
def coefficient_long_period(S_D1: DesignOne, T: Period, T_L: LongPeriod, R: Modification, I_e: Importance) -> UpperCs:
    """What C_s need not exceed for periods beyond T_L.

    Seen on City of Santa Ana document 370270, page 70. Example, Everett sheet 1926471 page 50 (which evaluates the form
    at T = 0.2169 s though it is below T_L): S_D1 = 0.60, T_L = 6 s, R = 6.5 gives 11.78.
    """
    return 1.0 * S_D1 * T_L / (T**2 * (R / I_e))


@equation(
    "asce7-16/12.8-5",
    title="Seismic response coefficient, least value",
    clause="Eq. 12.8-5",
    source=SOURCE,
    witness="City of Everett permit sheet 1926471, page 50: S_DS 1.20 gives 0.05",
)
def coefficient_least(S_DS: DesignShort, I_e: Importance) -> LeastCs:
    """C_s is not less than 0.044 S_DS I_e, nor than 0.01.

    Seen on City of Santa Ana document 370270, page 70. Example, Everett sheet 1926471 page 50: S_DS = 1.20 gives 0.05.
    """
    return max(0.044 * S_DS * I_e, 0.01)


@equation(
    "asce7-16/12.8-6",
    title="Seismic response coefficient, least value near large faults",
    clause="Eq. 12.8-6",
    source=SOURCE,
)
def coefficient_near_fault(
    S_1: Annotated[float, Q("g", "S_1", "mapped acceleration at one second", at_least=0.6)],
    R: Modification,
    I_e: Importance,
) -> LeastCs:
    """Where S_1 is 0.6 or more, C_s is not less than 0.5 S_1 / (R/I_e).

    Seen on City of Santa Ana document 370270, page 70. Example (our arithmetic): S_1 = 0.75, R = 6.5 gives 0.0577.
    """
    return 0.5 * S_1 / (R / I_e)


@equation(
    "asce7-16/12.8-7",
    title="Approximate fundamental period",
    clause="Eq. 12.8-7, Table 12.8-2 (all other structural systems)",
    source=SOURCE,
    witness="City of Everett permit sheet 1926471, page 50: h_n 24 gives 0.22",
    constants={0.02: "s/ft^0.75"},
)
def approximate_period(h_n: Height) -> Annotated[float, Q("s", "T_a", "approximate fundamental period")]:
    """T_a = C_t h_n^x with C_t = 0.02 and x = 0.75, the row for walls of light framing (h_n in feet).

    Seen on City of Santa Ana document 370270, page 70. Example, sheet 370584 page 131: h_n = 32.5 ft gives 0.272 s.
    """
    return 0.02 * h_n**0.75  # type: ignore[no-any-return]  # to mypy a power of floats is Any


@equation(
    "asce7-16/11.4.8-exception-2",
    title="Upper value of C_s on site class D without a hazard analysis",
    clause="11.4.8 exception 2",
    source=SOURCE,
    witness="City of Everett permit sheet 1926471, page 50: 1.5 times 0.43 gives 0.64",
)
def upper_by_exception_2(
    C_smax: Annotated[float, Q("1", "C_s,max", "value by Eq. 12.8-3 or 12.8-4", at_least=0.0)],
) -> UpperCs:
    """For T beyond 1.5 T_S on site class D with S_1 of 0.2 or more: one and a half times Eq. 12.8-3 or 12.8-4.

    Seen in practice on the Everett sheet. Example, sheet 1926471 page 50: 0.4256 gives 0.64.
    """
    return 1.5 * C_smax


@dataclass(frozen=True, slots=True)
class SeismicCoefficient:
    """C_s and how it came about. ``governs`` names the equation that gave it; ``upper`` is None where S_D1 is not known
    or exception 2 does away with it.
    """

    C_s: float
    governs: str
    plateau: float
    upper: float | None
    least: float


@procedure(
    "asce7-16/12.8.1.1",
    title="Seismic response coefficient",
    clause="12.8.1.1",
    source=SOURCE,
    alias="asce7.cs",
)
def seismic_coefficient(
    S_DS: DesignShort,
    S_D1: DesignOne | None,
    S_1: MappedOne,
    T: Period,
    T_L: LongPeriod,
    R: Modification,
    I_e: Importance = 1.0,
    exception_2: bool = False,
) -> SeismicCoefficient:
    """C_s by Eq. 12.8-2, held between its upper value (12.8-3, 12.8-4) and its least (12.8-5, 12.8-6).

    ``exception_2`` applies exception 2 of 11.4.8: up to T = 1.5 T_S the plateau, above it 1.5 times the upper value.
    With S_D1 None (left to a site-specific study) the plateau stands, which is never too small.
    """
    plateau = coefficient_plateau(S_DS, R, I_e)
    governs, chosen = "Eq. 12.8-2", plateau
    upper: float | None = None
    if S_D1 is None:
        note("S_D1 awaits a site-specific study, so no upper value is taken: the plateau stands")
    else:
        upper, name = _upper(S_DS, S_D1, T, T_L, R, I_e, exception_2)
        if upper is not None:
            governs = name if upper < chosen else governs
            chosen = least(chosen, upper, symbol="C_s", label=f"C_s need not exceed {name}")
    bottom, name = coefficient_least(S_DS, I_e), "Eq. 12.8-5"
    governs = name if bottom > chosen else governs
    chosen = greatest(chosen, bottom, symbol="C_s", label=f"C_s is not less than {name}")
    if S_1 >= 0.6:
        near, name = coefficient_near_fault(S_1, R, I_e), "Eq. 12.8-6"
        governs = name if near > chosen else governs
        chosen = greatest(chosen, near, symbol="C_s", label=f"C_s is not less than {name}")
        bottom = greatest(bottom, near, symbol="C_s,min", label="The greater of the two least values")
    note(f"C_s is governed by {governs}")
    return SeismicCoefficient(chosen, governs, plateau, upper, bottom)


def _upper(
    S_DS: float, S_D1: float, T: float, T_L: float, R: float, I_e: float, exception_2: bool
) -> tuple[float | None, str]:
    if exception_2:
        T_S = end_of_plateau(S_D1, S_DS)
        within = float(T) <= 1.5 * float(T_S)
        if condition("T is no more than 1.5 T_S, so C_s is by Eq. 12.8-2", within, T, T_S, cite="11.4.8"):
            return None, ""
    if condition("T is no more than T_L", T <= T_L, T, T_L, cite="12.8.1.1"):
        upper, name = coefficient_upper(S_D1, T, R, I_e), "Eq. 12.8-3"
    else:
        upper, name = coefficient_long_period(S_D1, T, T_L, R, I_e), "Eq. 12.8-4"
    if exception_2:
        return upper_by_exception_2(upper), f"1.5 times {name}"
    return upper, name


@equation(
    "asce7-16/12.8.1.3-S_DS",
    title="S_DS as capped for C_s and E_v",
    clause="12.8.1.3",
    source=SOURCE,
)
def capped_short(
    S_DS: DesignShort,
) -> Annotated[float, Q("g", "S_DS", "design acceleration at short periods, for C_s and E_v only")]:
    """S_DS may be taken as 1.0, but not as less than 70 per cent of itself; never more than itself.

    For structures that meet every condition of 12.8.1.3 only (see the procedure). Seen in Los Angeles County Title 26,
    1613.7.4, which restates the section. Example (our arithmetic): 1.6 gives 1.12; 1.2 gives 1.0; 0.8 stays 0.8.
    """
    return min(S_DS, max(1.0, 0.7 * S_DS))


@procedure(
    "asce7-16/12.8.1.3",
    title="Cap on S_DS for short, regular, low buildings",
    clause="12.8.1.3",
    source=SOURCE,
    alias="asce7.short-period-cap",
)
def short_period_cap(
    S_DS: DesignShort,
    T: Period,
    rho: Annotated[float, Q("1", "rho", "redundancy factor", at_least=1.0, at_most=1.3)],
    stories: Annotated[float, Q("1", "stories", "stories above the base", at_least=1.0)],
    site_class: str,
    regular: bool,
    risk_category: str = "II",
) -> float:
    """S_DS for C_s and E_v under the optional cap; use it only where somebody chose it and gave a reason.

    Raises:
        OutsideLimits: naming each condition of 12.8.1.3 that is not met.
    """
    check_short_period_cap(SOURCE, T, rho, stories, site_class, regular, risk_category)
    return capped_short(S_DS)


def check_short_period_cap(
    source: Source, T: float, rho: float, stories: float, site_class: str, regular: bool, risk_category: str
) -> None:
    """Write down each condition of 12.8.1.3, the same in every edition that has the cap.

    Raises:
        OutsideLimits: naming each condition that is not met.
    """
    tests = (
        ("no irregularity of 12.3.2", regular),
        ("no more than five stories above the base", stories <= 5),
        ("T no more than 0.5 s", T <= 0.5),
        ("redundancy factor allowed to be 1.0", rho == 1.0),
        ("site class neither E nor F", site_class not in ("E", "F")),
        ("risk category I or II", risk_category in ("I", "II")),
    )
    unmet = [text for text, met in tests if not condition(text, bool(met), cite="12.8.1.3")]
    if unmet:
        raise OutsideLimits(f"{source.cite('12.8.1.3')}: the cap on S_DS is not allowed; not met: {'; '.join(unmet)}")


@equation(
    "asce7-16/12.8-12-k",
    title="Exponent of the vertical distribution",
    clause="12.8.3",
    source=SOURCE,
    witness="ideCAD help, ASCE 7-16 12.8.3: k is 1 up to 0.5 s and 2 from 2.5 s",
    constants={0.5: "s", 2.5: "s"},
)
def distribution_exponent(T: Period) -> Annotated[float, Q("1", "k", "distribution exponent")]:
    """1 up to T = 0.5 s, 2 from 2.5 s on, a straight line between.

    Seen in the ideCAD help page on ASCE 7-16 section 12.8.3 (help.idecad.com).
    Example (our arithmetic): 1.5 s gives 1.5.
    """
    if T <= 0.5:
        return 1.0
    elif T >= 2.5:
        return 2.0
    else:
        return 1.0 + (T - 0.5) / (2.5 - 0.5)


@equation(
    "asce7-16/12.8-12-wh",
    title="Weight of a level by its height",
    clause="Eq. 12.8-12",
    source=SOURCE,
)
def level_weight(
    w_x: Annotated[float, Q("lb", "w_x", "seismic weight at the level", at_least=0.0)],
    h_x: Annotated[float, Q("ft", "h_x", "height of the level above the base", at_least=0.0)],
    h_n: Height,
    k: Annotated[float, Q("1", "k", "distribution exponent", at_least=1.0, at_most=2.0)],
) -> Annotated[float, Q("lb", "H_x", "weight of the level by its height")]:
    """The level's term in Eq. 12.8-12, each height taken over the top one (their ratio is all that counts).

    Seen on City of Santa Ana document 370270, page 70. Example (our arithmetic): 30,000 lb at 19 ft of 19 ft is 30,000;
    40,000 lb at 10 ft of 19 ft, k = 1, is 21,053.
    """
    require(h_x <= h_n, "no level lies above the highest")
    return w_x * (h_x / h_n) ** k  # type: ignore[no-any-return]  # to mypy a power of floats is Any


@equation(
    "asce7-16/12.8-11",
    title="Force at a level",
    clause="Eq. 12.8-11",
    source=SOURCE,
    witness="City of Santa Ana permit sheet 370584, page 135: 0.62 of 35.3 kips is 21.86 kips",
)
def level_force(
    C_vx: Annotated[float, Q("1", "C_vx", "vertical distribution factor", at_least=0.0, at_most=1.0)], V: Force
) -> Annotated[float, Q("lb", "F_x", "seismic force at the level")]:
    """The level's share of the base shear.

    Seen on City of Santa Ana documents 370270, page 70, and 370584, page 135. Example, the latter: 0.62 of 35.3 kips is
    21.86 kips.
    """
    return C_vx * V


@dataclass(frozen=True, slots=True)
class LevelForce:
    """One level's share: height above the base (ft), factor, force (lb)."""

    h_x: float
    C_vx: float
    F_x: float


@procedure(
    "asce7-16/12.8.3",
    title="Vertical distribution of the base shear",
    clause="12.8.3",
    source=SOURCE,
    alias="asce7.levels",
)
def vertical_distribution(
    V: Force,
    T: Period,
    weights: Annotated[Sequence[float], Q("lb", "w_i", "seismic weight at each level", at_least=0.0)],
    heights: Annotated[Sequence[float], Q("ft", "h_i", "height of each level above the base", at_least=0.0)],
) -> tuple[LevelForce, ...]:
    """The force at each level, in the order given; the forces sum to V.

    Raises:
        OutsideLimits: when the lists differ in length, are empty, or no weight stands above the base.
    """
    return distributed((distribution_exponent, level_weight, level_force), SOURCE, V, T, weights, heights)


def distributed(
    equations: tuple[
        Callable[[float], float], Callable[[float, float, float, float], float], Callable[[float, float], float]
    ],
    source: Source,
    V: float,
    T: float,
    weights: Sequence[float],
    heights: Sequence[float],
) -> tuple[LevelForce, ...]:
    """The base shear shared out over the levels by an edition's own equations.

    Args:
        equations: k from T; the level's term from weight, height, top height and k; F_x from C_vx and V.
        source: the edition, as cited.
        V: base shear, lb.
        T: period, s.
        weights: seismic weight at each level, lb.
        heights: height of each level above the base, ft.

    Raises:
        OutsideLimits: when the lists differ in length, are empty, or no weight stands above the base.
    """
    if len(weights) != len(heights) or not weights:
        raise OutsideLimits(
            f"{source.cite('12.8.3')}: {len(weights)} weights and {len(heights)} heights; give one of each per level"
        )
    exponent, term_of, force_at = equations
    k = exponent(T)
    top = max(heights)
    terms = [term_of(w, h, top, k) for w, h in zip(weights, heights, strict=True)]
    total = add(*terms, symbol="H_sum", label="All levels")
    if total <= 0:
        raise OutsideLimits(f"{source.cite('12.8.3')}: no weight stands above the base")
    levels = []
    for h, term in zip(heights, terms, strict=True):
        C_vx = divide(term, total, symbol="C_vx", unit="1", label=f"Share of the level at {float(h):g} ft")
        levels.append(LevelForce(h, C_vx, force_at(C_vx, V)))
    return tuple(levels)
