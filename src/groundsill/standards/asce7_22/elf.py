"""ASCE 7-22 section 12.8: the equivalent lateral force and its share up the height, by this edition's numbers.

C_s is found from S_DS and S_D1 (the two-period way); the multi-period spectrum of Eq. 12.8-2 is not kept here. Every
formula is the 2016 edition's, restated; from Eq. 12.8-3 on the numbers run one higher than there, as recalled and as
public source code that names the edition has them.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Annotated

from groundsill.standards.asce7_16 import elf as earlier
from groundsill.standards.asce7_16.elf import LevelForce, SeismicCoefficient
from groundsill.standards.asce7_16.symbols import (
    DesignOne,
    DesignShort,
    Force,
    Importance,
    LongPeriod,
    MappedOne,
    Modification,
    Period,
)
from groundsill.standards.asce7_22 import SOURCE
from groundsill.working.equation import Q, procedure
from groundsill.working.steps import condition, greatest, least, note

__all__ = [
    "approximate_period",
    "base_shear",
    "capped_short",
    "coefficient_least",
    "coefficient_long_period",
    "coefficient_near_fault",
    "coefficient_plateau",
    "coefficient_upper",
    "distribution_exponent",
    "level_force",
    "level_weight",
    "seismic_coefficient",
    "short_period_cap",
    "vertical_distribution",
]

_RECALLED = "that ASCE 7-22 keeps it, and under this number, is recalled."

base_shear = earlier.base_shear.restated(
    "asce7-22/12.8-1", clause="Eq. 12.8-1", source=SOURCE, module=__name__, why=_RECALLED
)

coefficient_plateau = earlier.coefficient_plateau.restated(
    "asce7-22/12.8-3", clause="Eq. 12.8-3", source=SOURCE, module=__name__, why=_RECALLED
)

coefficient_upper = earlier.coefficient_upper.restated(
    "asce7-22/12.8-4", clause="Eq. 12.8-4", source=SOURCE, module=__name__, why=_RECALLED
)

coefficient_long_period = earlier.coefficient_long_period.restated(
    "asce7-22/12.8-5", clause="Eq. 12.8-5", source=SOURCE, module=__name__, why=_RECALLED
)

coefficient_least = earlier.coefficient_least.restated(
    "asce7-22/12.8-6", clause="Eq. 12.8-6", source=SOURCE, module=__name__, why=_RECALLED
)

coefficient_near_fault = earlier.coefficient_near_fault.restated(
    "asce7-22/12.8-7", clause="Eq. 12.8-7", source=SOURCE, module=__name__, why=_RECALLED
)

approximate_period = earlier.approximate_period.restated(
    "asce7-22/12.8-8",
    clause="Eq. 12.8-8, Table 12.8-2 (all other structural systems)",
    source=SOURCE,
    module=__name__,
    why=_RECALLED,
)

capped_short = earlier.capped_short.restated(
    "asce7-22/12.8.1.3-S_DS", clause="12.8.1.3", source=SOURCE, module=__name__, why=_RECALLED
)

distribution_exponent = earlier.distribution_exponent.restated(
    "asce7-22/12.8-13-k", clause="12.8.3", source=SOURCE, module=__name__, why=_RECALLED
)

level_weight = earlier.level_weight.restated(
    "asce7-22/12.8-13-wh", clause="Eq. 12.8-13", source=SOURCE, module=__name__, why=_RECALLED
)

level_force = earlier.level_force.restated(
    "asce7-22/12.8-12", clause="Eq. 12.8-12", source=SOURCE, module=__name__, why=_RECALLED
)


@procedure(
    "asce7-22/12.8.1.1",
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
) -> SeismicCoefficient:
    """C_s by Eq. 12.8-3, held between its upper value (12.8-4, 12.8-5) and its least (12.8-6, 12.8-7).

    With S_D1 None (not entered) the plateau stands, which is never too small.
    """
    plateau = coefficient_plateau(S_DS, R, I_e)
    governs, chosen = "Eq. 12.8-3", plateau
    upper: float | None = None
    if S_D1 is None:
        note("S_D1 is not entered, so no upper value is taken: the plateau stands")
    else:
        if condition("T is no more than T_L", T <= T_L, T, T_L, cite="12.8.1.1"):
            upper, name = coefficient_upper(S_D1, T, R, I_e), "Eq. 12.8-4"
        else:
            upper, name = coefficient_long_period(S_D1, T, T_L, R, I_e), "Eq. 12.8-5"
        governs = name if upper < chosen else governs
        chosen = least(chosen, upper, symbol="C_s", label=f"C_s need not exceed {name}")
    bottom, name = coefficient_least(S_DS, I_e), "Eq. 12.8-6"
    governs = name if bottom > chosen else governs
    chosen = greatest(chosen, bottom, symbol="C_s", label=f"C_s is not less than {name}")
    if S_1 >= 0.6:
        near, name = coefficient_near_fault(S_1, R, I_e), "Eq. 12.8-7"
        governs = name if near > chosen else governs
        chosen = greatest(chosen, near, symbol="C_s", label=f"C_s is not less than {name}")
        bottom = greatest(bottom, near, symbol="C_s,min", label="The greater of the two least values")
    note(f"C_s is governed by {governs}")
    return SeismicCoefficient(chosen, governs, plateau, upper, bottom)


@procedure(
    "asce7-22/12.8.1.3",
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
    """S_DS for C_s and E_v under the optional cap, with the conditions of the 2016 edition (recalled to be the same).

    Raises:
        OutsideLimits: naming each condition of 12.8.1.3 that is not met.
    """
    earlier.check_short_period_cap(SOURCE, T, rho, stories, site_class, regular, risk_category)
    return capped_short(S_DS)


@procedure(
    "asce7-22/12.8.3",
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
    return earlier.distributed((distribution_exponent, level_weight, level_force), SOURCE, V, T, weights, heights)
