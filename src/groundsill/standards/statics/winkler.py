"""A beam of one section on a bed of springs (Winkler): the closed forms for a single load.

The soil of these forms pulls as well as it pushes. They say how stiff a footing is beside its soil, and check the beam
that is worked out in steps (:mod:`groundsill.mechanics.beam_on_soil`), under which the soil only pushes.
"""

from __future__ import annotations

from math import cos, exp, pi, sin
from typing import Annotated

from groundsill.standards.statics import SOURCE
from groundsill.working.equation import Q, equation

__all__ = [
    "centre_deflection", "centre_moment", "characteristic", "end_deflection", "end_moment", "endless_deflection",
    "endless_moment", "spring_along",
]  # fmt: skip

Load = Annotated[float, Q("lb", "P", "load at one point", at_least=0.0)]
Spring = Annotated[float, Q("psi", "k", "spring of the soil for each inch of beam, lb/in for each in.", above=0.0)]
Characteristic = Annotated[float, Q("1/in", "λ", "characteristic of beam and soil", above=0.0)]
Relative = Annotated[float, Q("1", "λL", "characteristic times the length of the beam", above=0.0, at_most=50.0)]
Deflection = Annotated[float, Q("in", "w", "deflection under the load")]
Moment = Annotated[float, Q("lb-in", "M", "greatest moment")]

_BOOK = "Winkler's beam, as in Hetényi, Beams on Elastic Foundation"


@equation(
    "statics/winkler-spring",
    title="Spring of the soil along a footing",
    clause="modulus of subgrade reaction times width",
    source=SOURCE,
)
def spring_along(
    k_s: Annotated[float, Q("lb/in^3", "k_s", "modulus of subgrade reaction", above=0.0)],
    B: Annotated[float, Q("in", "B", "width of the footing", above=0.0)],
) -> Spring:
    """What each inch of a footing is pushed up by for each inch that it settles: k_s B, lb/in for each in.

    Read in the same words in Hetényi's chapter IV (scribd.com/doc/50642022) and in lecture notes on beams on elastic
    foundation (scribd.com/doc/92889286). Example: 100 lb/in3 under 12 in.: 1,200.
    """
    return k_s * B


@equation(
    "statics/winkler-characteristic",
    title="Characteristic of a beam on soil",
    clause=_BOOK,
    source=SOURCE,
)
def characteristic(
    k: Spring, EI: Annotated[float, Q("lb-in^2", "EI", "bending stiffness of the beam", above=0.0)]
) -> Characteristic:
    """The fourth root of k/(4 E I); its inverse is the length over which a load is felt.

    Read in Hetényi's chapter IV (scribd.com/doc/50642022). With λL below pi/4 a beam moves as a stiff body, above pi
    as if it had no end (both recalled). Example: 12 by 18 in. of concrete, E = 2,850,000 psi, I = 5,832 in4, k = 1,200:
    0.01159 for each inch (our own arithmetic).
    """
    return (k / (4 * EI)) ** 0.25  # type: ignore[no-any-return]  # mypy: a float power is Any


@equation(
    "statics/winkler-endless-deflection",
    title="Deflection of an endless beam on soil",
    clause=_BOOK,
    source=SOURCE,
    how="from memory",
)
def endless_deflection(P: Load, λ: Characteristic, k: Spring) -> Deflection:
    """Under a load far from both ends: P λ/(2 k), in.

    Example: 5,000 lb, 0.0115908 for each inch, 1,200: 0.0241476 in. (our own arithmetic, equal to finite elements).
    """
    return P * λ / (2 * k)


@equation(
    "statics/winkler-endless-moment",
    title="Moment in an endless beam on soil",
    clause=_BOOK,
    source=SOURCE,
    how="from memory",
)
def endless_moment(P: Load, λ: Characteristic) -> Moment:
    """Under a load far from both ends: P/(4 λ), lb-in.

    Example: 5,000 lb, 0.0115908: 107,844 lb-in (our own arithmetic, equal to finite elements).
    """
    return P / (4 * λ)


@equation(
    "statics/winkler-end-deflection",
    title="Deflection of the loaded end of a long beam on soil",
    clause=_BOOK,
    source=SOURCE,
    how="from memory",
)
def end_deflection(P: Load, λ: Characteristic, k: Spring) -> Deflection:
    """Under a load on the end of a beam whose other end is far: 2 P λ/k, in.

    Example: 5,000 lb, 0.0115908, 1,200: 0.0965903 in. (our own arithmetic, equal to finite elements).
    """
    return 2 * P * λ / k


@equation(
    "statics/winkler-end-moment",
    title="Moment in a long beam on soil loaded at its end",
    clause=_BOOK,
    source=SOURCE,
    how="from memory",
)
def end_moment(P: Load, λ: Characteristic) -> Moment:
    """The greatest, hogging, at pi/(4 λ) from the loaded end: P/λ e^(-pi/4) sin(pi/4), which is 0.3224 P/λ, lb-in.

    Example: 5,000 lb, 0.0115908: 139,074 lb-in at 67.76 in. (our own arithmetic, equal to finite elements).
    """
    return P / λ * exp(-pi / 4) * sin(pi / 4)


@equation(
    "statics/winkler-centre-deflection",
    title="Deflection of a short beam on soil loaded at its middle",
    clause=_BOOK,
    source=SOURCE,
    how="from memory",
)
def centre_deflection(P: Load, λ: Characteristic, k: Spring, λL: Relative) -> Deflection:
    """Under a load at the middle of a beam with free ends: P λ/(2 k) (cosh λL + cos λL + 2)/(sinh λL + sin λL), in.

    Example: 5,000 lb, 0.0115908, 1,200, 240 in. long: 0.0263735 in. (our own arithmetic, equal to finite elements).
    """
    cosh = (exp(λL) + exp(-λL)) / 2
    sinh = (exp(λL) - exp(-λL)) / 2
    return P * λ / (2 * k) * (cosh + cos(λL) + 2) / (sinh + sin(λL))


@equation(
    "statics/winkler-centre-moment",
    title="Moment in a short beam on soil loaded at its middle",
    clause=_BOOK,
    source=SOURCE,
    how="from memory",
)
def centre_moment(P: Load, λ: Characteristic, λL: Relative) -> Moment:
    """Under a load at the middle of a beam with free ends: P/(4 λ) (cosh λL - cos λL)/(sinh λL + sin λL), lb-in.

    Example: 5,000 lb, 0.0115908, 240 in. long: 116,140 lb-in (our own arithmetic, equal to finite elements).
    """
    cosh = (exp(λL) + exp(-λL)) / 2
    sinh = (exp(λL) - exp(-λL)) / 2
    return P / (4 * λ) * (cosh - cos(λL)) / (sinh + sin(λL))
