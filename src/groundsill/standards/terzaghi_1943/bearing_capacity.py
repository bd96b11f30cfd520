"""Bearing capacity of a strip footing: c N_c + q N_q + gamma B N_gamma / 2, over a factor of safety.

In: friction angle (degrees), cohesion and overburden (psf), unit weight (pcf), width (ft). Out: factors without a unit,
pressures in psf. For ground that fails by local shear Terzaghi takes two thirds of the cohesion and of the tangent of
the friction angle: put those in.
"""

from __future__ import annotations

from math import cos, exp, radians, sin, tan
from typing import Annotated

from groundsill.standards.terzaghi_1943 import SOURCE
from groundsill.working.equation import Q, equation, require

__all__ = ["factor_c", "factor_gamma", "factor_q", "safe_pressure", "strip_capacity"]

Friction = Annotated[float, Q("1", "phi", "effective friction angle of the soil, degrees", at_least=0.0, at_most=45.0)]
Nq = Annotated[float, Q("1", "N_q", "factor of the overburden", at_least=1.0)]
Overburden = Annotated[float, Q("psf", "q", "weight of the soil beside the footing, at its bottom", at_least=0.0)]

_PACKAGE = "R package geotech (J. Kaklamanos, K. Elmy), bearingCapacityFactors, phi 20 degrees, local shear"


@equation(
    "terzaghi-1943/N_q",
    title="Bearing capacity factor of the overburden",
    clause="general shear, rough base",
    source=SOURCE,
    witness=_PACKAGE,
    constants={270.0: "1", 45.0: "1"},
)
def factor_q(phi: Friction) -> Annotated[float, Q("1", "N_q", "factor of the overburden")]:
    """Grows steeply with the friction angle; 1 without friction.

    Seen in the source of the R package geotech (rdrr.io/github/maxgav13/GMisc/src/R/Nq.R). Example, printed there: 20
    degrees, which local shear makes 13.64, gives 3.875.
    """
    return exp(radians(270 - phi) * tan(radians(phi))) / (2 * cos(radians(45 + phi / 2)) ** 2)


@equation(
    "terzaghi-1943/N_c",
    title="Bearing capacity factor of the cohesion",
    clause="general shear, rough base",
    source=SOURCE,
    witness=_PACKAGE,
)
def factor_c(phi: Friction, N_q: Nq) -> Annotated[float, Q("1", "N_c", "factor of the cohesion")]:
    """(N_q - 1) over the tangent of the friction angle; 5.7 without friction.

    Seen beside N_q, same package. Example, printed there: 20 degrees in local shear: 11.85.
    """
    return 5.7 if phi <= 0 else (N_q - 1) / tan(radians(phi))


@equation(
    "terzaghi-1943/N_gamma",
    title="Bearing capacity factor of the soil's weight",
    clause="general shear, by the approximation of Coduto, Kitch and Yeung (2016)",
    source=SOURCE,
    witness=_PACKAGE,
)
def factor_gamma(phi: Friction, N_q: Nq) -> Annotated[float, Q("1", "N_γ", "factor of the soil's weight")]:
    """An approximation of Terzaghi's graphical factor, within some per cent of it.

    Seen beside N_q, same package. Example, printed there: 20 degrees in local shear: 1.784.
    """
    return 2 * (N_q + 1) * tan(radians(phi)) / (1 + 0.4 * sin(radians(4 * phi)))


@equation(
    "terzaghi-1943/strip",
    title="Bearing capacity of a strip footing",
    clause="general shear",
    source=SOURCE,
)
def strip_capacity(
    c: Annotated[float, Q("psf", "c", "effective cohesion", at_least=0.0)],
    N_c: Annotated[float, Q("1", "N_c", "factor of the cohesion", at_least=0.0)],
    q: Overburden,
    N_q: Nq,
    gamma: Annotated[float, Q("pcf", "γ", "unit weight of the soil under the footing, less that of water", above=0.0)],
    B: Annotated[float, Q("ft", "B", "width of the strip", above=0.0)],
    N_gamma: Annotated[float, Q("1", "N_γ", "factor of the soil's weight", at_least=0.0)],
) -> Annotated[float, Q("psf", "q_ult", "gross pressure at which the soil fails")]:
    """Cohesion, overburden and the soil's own weight, each with its factor.

    Seen in words at civilengineeringx.com and ceboardexamgenerator.com (Terzaghi's strip). Under water the weight of
    water is taken off the unit weight. Example (our arithmetic): no cohesion, 1 ft of soil of 110 pcf, 12 in. wide,
    30 degrees (N_q 22.46, N_γ 20.12): 3,577 psf.
    """
    return c * N_c + q * N_q + gamma * B * N_gamma / 2


@equation(
    "terzaghi-1943/safe",
    title="Pressure allowed by a bearing capacity",
    clause="factor of safety on the net capacity",
    source=SOURCE,
    how="from memory",
)
def safe_pressure(
    q_ult: Annotated[float, Q("psf", "q_ult", "gross pressure at which the soil fails", above=0.0)],
    q: Overburden,
    F: Annotated[float, Q("1", "F", "factor of safety: 3, or 2 where the soil was well explored", above=1.0)],
) -> Annotated[float, Q("psf", "q_a", "gross pressure allowed")]:
    """The net capacity over the factor of safety, and the overburden that was there before.

    A factor of 3 is what handbooks take for houses; common practice, no source. Example (our arithmetic): 3,577 psf,
    110 psf, 3: 1,266 psf.
    """
    require(q_ult > q, "the soil carries more than what lay on it before")
    return (q_ult - q) / F + q
