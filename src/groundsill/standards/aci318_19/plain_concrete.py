"""Plain concrete (ACI 318-19, chapter 14): what an old stem or footing without bars carries.

Used to see whether a stem spans a gap, and over what length it can be lifted by a hold-down. Structural plain concrete
also starts at 2,500 psi: below, the values are an extension (see ``scope``).
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.symbols import ConcreteStrength, LightweightFactor, StrengthFactor
from groundsill.standards.aci318_19.tables import table_21_2_1
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.steps import least

__all__ = [
    "PlainFlexure",
    "cast_on_soil_depth",
    "plain_bearing",
    "plain_design_moment",
    "plain_flexure",
    "plain_moment_compression",
    "plain_moment_tension",
    "plain_section_modulus",
    "plain_shear",
]

SectionModulus = Annotated[float, Q("in^3", "S_m", "elastic section modulus", above=0.0)]
Width = Annotated[float, Q("in", "b_w", "width of the section", above=0.0)]
Depth = Annotated[float, Q("in", "h", "depth of the section", above=0.0)]


@dataclass(frozen=True, slots=True)
class PlainFlexure:
    """Bending strength of a plain section, lb-in: nominal, phi, phi times nominal."""

    nominal: float
    phi: float
    design: float


@equation(
    "aci318-19/14.5.1.7",
    title="Depth counted of concrete cast on soil",
    clause="14.5.1.7",
    source=SOURCE,
    constants={2: "in"},
)
def cast_on_soil_depth(
    h: Annotated[float, Q("in", "h", "depth as cast", above=2.0)],
) -> Annotated[float, Q("in", "h_c", "depth counted")]:
    """The depth counted in strength of a plain member cast against soil: 2 in. less than as cast.

    Source: ACI 318-19, 14.5.1.7 (50 mm), read in public page notes on ACI 318M-19, pages 203 to 210. 12 in.: 10 in.
    """
    return h - 2


@equation(
    "aci318-19/14.5.2.1-Sm", title="Section modulus of a rectangle", clause="14.5.2.1", source=SOURCE, how="computed"
)
def plain_section_modulus(b_w: Width, h: Depth) -> Annotated[float, Q("in^3", "S_m", "elastic section modulus")]:
    """The elastic section modulus of an uncracked rectangle: b h squared over 6, in3.

    Statics. 8 in. wide, 24 in. deep: 768 in3 (our own arithmetic).
    """
    return b_w * h**2 / 6


@equation(
    "aci318-19/14.5.2.1a",
    title="Bending strength of plain concrete, tension face",
    clause="Eq. 14.5.2.1a",
    source=SOURCE,
    constants={5: "lb^0.5/in"},
)
def plain_moment_tension(
    f_c: ConcreteStrength, S_m: SectionModulus, lam: LightweightFactor = 1.0
) -> Annotated[float, Q("lb-in", "M_n_t", "nominal moment by the tension face")]:
    """The moment at which the tension face of a plain section cracks: 5 lambda sqrt(f'c) S_m, lb-in.

    Source: ACI 318-19, Eq. 14.5.2.1a (0.42 in MPa and mm), read in public page notes on ACI 318M-19, pages 203 to 210.
    2,500 psi, 768 in3: 192,000 lb-in (our own arithmetic).
    """
    return 5 * lam * sqrt(f_c) * S_m


@equation(
    "aci318-19/14.5.2.1b",
    title="Bending strength of plain concrete, compression face",
    clause="Eq. 14.5.2.1b",
    source=SOURCE,
)
def plain_moment_compression(
    f_c: ConcreteStrength, S_m: SectionModulus
) -> Annotated[float, Q("lb-in", "M_n_c", "nominal moment by the compression face")]:
    """The moment at which the compression face is spent: 0.85 f'c S_m, lb-in.

    Source: ACI 318-19, Eq. 14.5.2.1b, read in public page notes on ACI 318M-19, pages 203 to 210. 2,500 psi, 768 in3:
    1,632,000 lb-in (our own arithmetic).
    """
    return 0.85 * f_c * S_m


@equation(
    "aci318-19/14.5.5.1a",
    title="One-way shear strength of plain concrete",
    clause="Table 14.5.5.1(a)",
    source=SOURCE,
    constants={4: "lb^0.5/in"},
)
def plain_shear(
    f_c: ConcreteStrength, b_w: Width, h: Depth, lam: LightweightFactor = 1.0
) -> Annotated[float, Q("lb", "V_n", "nominal one-way shear strength")]:
    """The shear a plain rectangle carries across its width: 4/3 lambda sqrt(f'c) b h, lb.

    Source: ACI 318-19, Table 14.5.5.1(a) (0.11 in MPa and mm), read in public page notes on ACI 318M-19, pages 203 to
    210. 2,500 psi, 8 by 24 in.: 12,800 lb (our own arithmetic).
    """
    return 4 / 3 * lam * sqrt(f_c) * b_w * h


@equation(
    "aci318-19/14.5.6.1",
    title="Bearing on plain concrete",
    clause="Table 14.5.6.1(b)",
    source=SOURCE,
)
def plain_bearing(
    f_c: ConcreteStrength, A_1: Annotated[float, Q("in^2", "A_1", "loaded area", above=0.0)]
) -> Annotated[float, Q("lb", "B_n", "nominal bearing strength")]:
    """The load a plain face bears over the loaded area alone: 0.85 f'c A_1, lb.

    Source: ACI 318-19, Table 14.5.6.1, read in public page notes on ACI 318M-19, pages 203 to 210. 2,500 psi on 12.25
    in2: 26,031 lb (our own arithmetic).
    """
    return 0.85 * f_c * A_1


@equation("aci318-19/14.5.1.1", title="Design moment of plain concrete", clause="14.5.1.1", source=SOURCE)
def plain_design_moment(
    phi: StrengthFactor, M_n: Annotated[float, Q("lb-in", "M_n", "nominal moment", at_least=0.0)]
) -> Annotated[float, Q("lb-in", "φM_n", "design moment")]:
    """Phi (Table 21.2.1, plain concrete) times the nominal moment, lb-in.

    Source: ACI 318-19, 14.5.1.1, read in public page notes on ACI 318M-19, pages 203 to 210. 0.60 x 192,000 = 115,200
    lb-in.
    """
    return phi * M_n


@procedure(
    "aci318-19/14.5.2",
    title="Bending strength of a plain rectangle",
    clause="14.5.2.1",
    source=SOURCE,
    alias="aci.plain-flexure",
)
def plain_flexure(
    f_c: ConcreteStrength, b_w: Width, h: Depth, cast_on_soil: bool = False, lam: LightweightFactor = 1.0
) -> PlainFlexure:
    """Nominal and design moment of a plain concrete rectangle bent about its width.

    Args:
        f_c: concrete strength, psi.
        b_w: width, in.
        h: depth in the direction of bending, in.
        cast_on_soil: True when the tension face was cast on soil: 2 in. are not counted.
        lam: lightweight concrete factor.
    """
    depth = cast_on_soil_depth(h) if cast_on_soil else h
    modulus = plain_section_modulus(b_w, depth)
    nominal = least(
        plain_moment_tension(f_c, modulus, lam),
        plain_moment_compression(f_c, modulus),
        symbol="M_n",
        label="nominal moment",
    )
    phi = table_21_2_1().read("plain concrete")
    return PlainFlexure(nominal, phi, plain_design_moment(phi, nominal))
