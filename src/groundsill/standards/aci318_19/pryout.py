"""Pryout (ACI 318-19, 17.7.3): a short stiff bolt pushed sideways levers a cone out behind itself."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.strength_factors import design_strength
from groundsill.standards.aci318_19.symbols import GUIDE, ConcreteStrength, Embedment
from groundsill.standards.aci318_19.tables import table_17_5_3
from groundsill.standards.aci318_19.tension_breakout import tension_breakout_of
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.steps import least

__all__ = ["Pryout", "pryout", "pryout_factor", "pryout_of"]


@dataclass(frozen=True, slots=True)
class Pryout:
    """Pryout of one anchor or a group, lb: nominal, phi, phi times nominal."""

    nominal: float
    phi: float
    design: float


@equation(
    "aci318-19/17.7.3.1-kcp",
    title="Pryout coefficient",
    clause="17.7.3.1",
    source=SOURCE,
    constants={2.5: "in"},
    witness=f"2 at 5.75 and 12 in. deep ({GUIDE}, p. 90, 82)",
)
def pryout_factor(h_ef: Embedment) -> Annotated[float, Q("1", "k_cp", "pryout coefficient")]:
    """1 for embedment below 2.5 in., else 2.

    Source: ACI 318-19, 17.7.3.1, as the breakout design guide of October 2025 applies it: 184,442 = 2 x 92,221 lb
    (p. 90). The border at 2.5 in. (65 mm) is read in two public sets of notes on chapter 17.
    """
    return 1.0 if h_ef < 2.5 else 2.0


@equation(
    "aci318-19/17.7.3.1",
    title="Pryout strength",
    clause="Eq. 17.7.3.1a, b",
    source=SOURCE,
    witness=f"184,442 lb; 176,978 lb ({GUIDE}, p. 90, 82)",
)
def pryout(
    k_cp: Annotated[float, Q("1", "k_cp", "pryout coefficient", at_least=1.0, at_most=2.0)],
    N_cp: Annotated[float, Q("lb", "N_cp", "breakout strength in tension (adhesive: or bond, if less)", above=0.0)],
) -> Annotated[float, Q("lb", "V_cp", "nominal pryout strength")]:
    """The shear at which the bolt pries out: k_cp times its breakout strength in tension, lb.

    Source: ACI 318-19, Eqs. 17.7.3.1a and b, in the breakout design guide of October 2025: 2 x 92,221 = 184,442 lb
    (p. 90).
    """
    return k_cp * N_cp


@procedure(
    "aci318-19/17.7.3",
    title="Pryout of a sill bolt",
    clause="17.7.3.1",
    source=SOURCE,
    alias="aci.pryout",
)
def pryout_of(
    h_ef: Embedment,
    f_c: ConcreteStrength,
    c_left: Annotated[float, Q("in", "c_left", "edge distance on one side")] = 1000.0,
    c_right: Annotated[float, Q("in", "c_right", "edge distance on the other side")] = 1000.0,
    c_near: Annotated[float, Q("in", "c_near", "edge distance across, near face")] = 1000.0,
    c_far: Annotated[float, Q("in", "c_far", "edge distance across, far face")] = 1000.0,
    anchor: str = "cast in",
    concrete: str = "cracked",
    failure: str = "pullout or pryout, cast in",
    N_a: Annotated[float, Q("lb", "N_a", "nominal bond strength, adhesive anchors", above=0.0)] | None = None,
) -> Pryout:
    """Nominal and design pryout strength of one bolt, by its breakout in tension, or its bond where that is less.

    Args:
        h_ef: embedment, in.
        f_c: concrete strength, psi.
        c_left: bolt to the end of the concrete on one side, in.; far away when left out; so the other three.
        c_right: to the other end, in.
        c_near: to the near face, in.
        c_far: to the far face, in.
        anchor: ``"cast in"`` or ``"post-installed"``.
        concrete: ``"cracked"`` or ``"uncracked"``.
        failure: row of Table 17.5.3, column shear.
        N_a: nominal bond strength (17.6.5) of an adhesive anchor, lb.
    """
    cone = tension_breakout_of(h_ef, f_c, c_left, c_right, c_near, c_far, anchor=anchor, concrete=concrete)
    held = cone.nominal
    if N_a is not None:
        held = least(cone.nominal, N_a, symbol="N_cp", label="breakout or bond in tension")
    nominal = pryout(pryout_factor(h_ef), held)
    phi = table_17_5_3().read(failure, "shear")
    return Pryout(nominal, phi, design_strength(phi, nominal))
