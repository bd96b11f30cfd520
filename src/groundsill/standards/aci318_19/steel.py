"""Strength of the bolt's own steel (ACI 318-19, 17.6.1 and 17.7.1)."""

from __future__ import annotations

from math import pi
from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.symbols import GUIDE, NOTES, Diameter
from groundsill.working.equation import Q, equation

__all__ = ["steel_shear", "steel_shear_on_grout", "steel_strength_counted", "steel_tension", "stress_area"]

StressArea = Annotated[float, Q("in^2", "A_se", "effective area of the bolt", above=0.0)]
UltimateStress = Annotated[
    float, Q("psi", "f_uta", "ultimate stress counted for the bolt", above=0.0, at_most=125000.0)
]


@equation(
    "aci318-19/R17.6.1.2",
    title="Effective area of a threaded bolt",
    clause="R17.6.1.2",
    source=SOURCE,
    witness=f"0.462 in2, by 26,780 lb at 58,000 psi ({GUIDE}, p. 70, 82)",
)
def stress_area(
    d_a: Diameter, n_t: Annotated[float, Q("1/in", "n_t", "threads per inch", above=0.0)]
) -> Annotated[float, Q("in^2", "A_se", "effective area of the bolt")]:
    """The area of a threaded bolt that resists: pi/4 (d_a - 0.9743/n_t) squared, in2.

    Source: ACI 318-19, commentary R17.6.1.2; the formula read in public notes on chapter 17. 1/2 in. with 13 threads:
    0.1419; 5/8 with 11: 0.226; 3/4 with 10: 0.334 in2 (our own arithmetic, equal to the thread standard's figures).
    """
    return pi / 4 * (d_a - 0.9743 / n_t) ** 2


@equation(
    "aci318-19/17.6.1.2-futa",
    title="Ultimate stress that may be counted",
    clause="17.6.1.2",
    source=SOURCE,
    witness=f"1.9 f_y; 125 ksi ({NOTES}, 17.6.1.1)",
    constants={125000: "psi"},
)
def steel_strength_counted(
    f_uta: Annotated[float, Q("psi", "f_u", "specified ultimate stress", above=0.0)],
    f_ya: Annotated[float, Q("psi", "f_ya", "specified yield stress", above=0.0)],
) -> Annotated[float, Q("psi", "f_uta", "ultimate stress counted")]:
    """The ultimate stress of the bolt, at most 1.9 times its yield stress and 125,000 psi.

    Source: ACI 318-19, 17.6.1.2, read in two public sets of notes on chapter 17. A36, 58,000 and 36,000 psi: 58,000
    psi.
    """
    return min(f_uta, 1.9 * f_ya, 125000)


@equation(
    "aci318-19/17.6.1.2",
    title="Steel strength in tension",
    clause="Eq. 17.6.1.2",
    source=SOURCE,
    witness=f"26,780 lb ({GUIDE}, p. 82)",
)
def steel_tension(
    A_se: StressArea, f_uta: UltimateStress
) -> Annotated[float, Q("lb", "N_sa", "nominal steel strength in tension")]:
    """The nominal strength of the bolt's steel in tension, lb.

    Source: ACI 318-19, Eq. 17.6.1.2. 7/8 in. A36 rod, 0.4617 in2, 58,000 psi: 26,780 lb in the breakout design guide
    of October 2025, p. 82 (the product report rounds to 5 lb).
    """
    return A_se * f_uta


@equation(
    "aci318-19/17.7.1.2",
    title="Steel strength in shear",
    clause="Eq. 17.7.1.2b",
    source=SOURCE,
    witness=f"16,070 lb ({GUIDE}, p. 82)",
)
def steel_shear(
    A_se: StressArea, f_uta: UltimateStress
) -> Annotated[float, Q("lb", "V_sa", "nominal steel strength in shear")]:
    """The nominal strength of a cast-in bolt's or a threaded rod's steel in shear: 0.6 A_se f_uta, lb.

    Source: ACI 318-19, Eq. 17.7.1.2b. 7/8 in. A36 rod, 0.4617 in2, 58,000 psi: 16,070 lb in the breakout design guide
    of October 2025, p. 82 (the product report rounds to 5 lb).
    """
    return 0.6 * A_se * f_uta


@equation(
    "aci318-19/17.7.1.2.1",
    title="Steel in shear on a grout pad",
    clause="17.7.1.2.1",
    source=SOURCE,
    witness=f"0.8 ({NOTES}, 17.7.1.2.1)",
)
def steel_shear_on_grout(
    V_sa: Annotated[float, Q("lb", "V_sa", "steel strength in shear", at_least=0.0)],
) -> Annotated[float, Q("lb", "V_sa_g", "steel strength in shear on grout")]:
    """Eight tenths of the steel strength in shear where the bolt stands on a built-up grout pad, lb.

    Source: ACI 318-19, 17.7.1.2.1, read in two public sets of notes on chapter 17. 10,000 lb: 8,000 lb.
    """
    return 0.8 * V_sa
