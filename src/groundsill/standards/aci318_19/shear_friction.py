"""Shear across a joint that bars hold together (ACI 318-19, 22.9): new concrete cast against old.

The bars are pulled to yield as the two faces ride up on each other; that presses the faces together. They must be
developed on both sides, and an old face must be clean and, where it is counted so, roughened to about 1/4 in.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.member_symbols import EXAMPLES, NominalShear
from groundsill.standards.aci318_19.one_way_shear import design_shear
from groundsill.standards.aci318_19.symbols import ConcreteStrength, LightweightFactor
from groundsill.standards.aci318_19.tables import table_21_2_1, table_22_9_4_2
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.steps import least, scale

__all__ = ["FrictionShear", "friction_shear", "most_across_other", "most_across_rough", "shear_friction"]

Friction = Annotated[float, Q("1", "mu", "coefficient of friction", above=0.0, at_most=1.4)]
JointArea = Annotated[float, Q("in^2", "A_c", "area of concrete in the joint", above=0.0)]
AcrossArea = Annotated[float, Q("in^2", "A_vf", "area of the bars across the joint", above=0.0)]
FrictionYield = Annotated[float, Q("psi", "f_y", "yield strength counted for the bars", above=0.0, at_most=60000.0)]


@dataclass(frozen=True, slots=True)
class FrictionShear:
    """Shear a joint carries, lb: by its bars, at most by its concrete, nominal, and design."""

    by_bars: float
    by_concrete: float
    nominal: float
    design: float


@equation(
    "aci318-19/22.9.4.2",
    title="Shear friction of bars across a joint",
    clause="Eq. 22.9.4.2",
    source=SOURCE,
    witness=f"120 kip ({EXAMPLES}, shear friction)",
)
def friction_shear(mu: Friction, A_vf: AcrossArea, f_y: FrictionYield) -> NominalShear:
    """Bars at right angles to the joint: mu A_vf f_y, lb.

    Source: ACI 318-19, Eq. 22.9.4.2, read in public page notes on ACI 318M-19, pages 428 to 433. 1.0, 2.0 in2 of 60,000
    psi: 120 kip, in the worked examples of github.com/clay-good/roughlogic.com.
    """
    return mu * A_vf * f_y


@equation(
    "aci318-19/22.9.4.4a",
    title="Most shear across a rough or unbroken joint",
    clause="Table 22.9.4.4",
    source=SOURCE,
    witness=f"153.6 kip ({EXAMPLES}, shear friction)",
    constants={480: "psi", 1600: "psi"},
)
def most_across_rough(f_c: ConcreteStrength, A_c: JointArea) -> NominalShear:
    """Of normal weight: the least of 0.2 f'c, 480 psi + 0.08 f'c, and 1,600 psi, times A_c, lb.

    ``f_c`` is that of the weaker concrete. Source: ACI 318-19, Table 22.9.4.4, in the worked examples of
    github.com/clay-good/roughlogic.com: 4,000 psi, 192 in2: 153.6 kip.
    """
    return min(0.2 * f_c, 480 + 0.08 * f_c, 1600) * A_c


@equation(
    "aci318-19/22.9.4.4b",
    title="Most shear across any other joint",
    clause="Table 22.9.4.4",
    source=SOURCE,
    constants={800: "psi"},
)
def most_across_other(f_c: ConcreteStrength, A_c: JointArea) -> NominalShear:
    """The lesser of 0.2 f'c and 800 psi, times A_c, lb.

    ``f_c`` is that of the weaker concrete. Source: ACI 318-19, Table 22.9.4.4, read in public summaries of the chapter
    (5.5 MPa in the metric edition). 2,500 psi, 192 in2: 96 kip (our own arithmetic).
    """
    return min(0.2 * f_c, 800) * A_c


@procedure(
    "aci318-19/22.9",
    title="Shear across a joint between new and old concrete",
    clause="22.9",
    source=SOURCE,
    alias="aci.shear-friction",
)
def shear_friction(
    A_vf: AcrossArea,
    f_y: FrictionYield,
    A_c: JointArea,
    f_c: ConcreteStrength,
    surface: str = "hardened, not roughened",
    lam: LightweightFactor = 1.0,
) -> FrictionShear:
    """Nominal and design shear; net pull across the joint must have bars of its own (22.9.4.6).

    Args:
        A_vf: area of the bars across the joint, in2, developed on both sides.
        f_y: their yield strength, psi, 60,000 at most.
        A_c: area of concrete in the joint, in2.
        f_c: strength of the weaker concrete, psi.
        surface: a row of Table 22.9.4.2: ``cast in one``, ``roughened to 1/4 in.``, ``hardened, not roughened``.
        lam: lightweight concrete factor.
    """
    mu = scale(table_22_9_4_2().read(surface), lam, symbol="mu", label=f"friction, {surface}")
    by_bars = friction_shear(mu, A_vf, f_y)
    rough = surface in ("cast in one", "roughened to 1/4 in.") and float(lam) == 1.0
    by_concrete = most_across_rough(f_c, A_c) if rough else most_across_other(f_c, A_c)
    nominal = least(by_bars, by_concrete, symbol="V_n", label="bars, at most concrete")
    return FrictionShear(by_bars, by_concrete, nominal, design_shear(table_21_2_1().read("shear"), nominal))
