"""Pressure of a footing on soil that pushes and does not pull: in the kern, beyond it, under a point, gross and net."""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.statics import SOURCE
from groundsill.working.equation import Q, equation, require

__all__ = [
    "contact_length", "gross_pressure", "least_pressure", "net_pressure", "pressure_beyond_kern", "pressure_in_kern",
    "spread_length",
]  # fmt: skip

Load = Annotated[float, Q("lb", "P", "load on the footing, its own weight with it", above=0.0)]
Wide = Annotated[float, Q("ft", "B", "width of the footing, across the moment", above=0.0)]
Long = Annotated[float, Q("ft", "L", "length of the footing, along which the moment turns", above=0.0)]
Eccentricity = Annotated[float, Q("ft", "e", "from the middle of the footing to where the load stands", at_least=0.0)]
Greatest = Annotated[float, Q("psf", "q_max", "greatest pressure")]


@equation(
    "statics/pressure-in-kern",
    title="Greatest pressure, the load in the middle third",
    clause="P/A and M/S",
    source=SOURCE,
    witness="a printed footing sheet: 20.87 kips on 5 by 5 ft, 1.19 ksf",
)
def pressure_in_kern(P: Load, B: Wide, L: Long, e: Eccentricity) -> Greatest:
    """A trapezoid of pressure: the mean, and six times the eccentricity over the length of it more at one edge.

    Example (our arithmetic): 120,000 lb on 14 by 6 ft, 1 ft off: 2,857 psf, and nothing at the other edge.
    """
    require(6 * e <= L * 1.000001, "the load stands in the middle third")
    return P / (B * L) * (1 + 6 * e / L)


@equation(
    "statics/least-pressure",
    title="Least pressure, the load in the middle third",
    clause="P/A and M/S",
    source=SOURCE,
    witness="the same footing sheet: 0.48 ksf",
)
def least_pressure(P: Load, B: Wide, L: Long, e: Eccentricity) -> Annotated[float, Q("psf", "q_min", "least pressure")]:
    """At the edge away from the load; zero where the load stands at the edge of the middle third.

    Example: 1,200 lb on 1 by 6 ft, 0.5 ft off: 100 psf.
    """
    require(6 * e <= L * 1.000001, "the load stands in the middle third")
    return P / (B * L) * (1 - 6 * e / L)


@equation(
    "statics/contact-length",
    title="Length of a footing that still touches the soil",
    clause="triangle of pressure under the load",
    source=SOURCE,
    how="computed",
)
def contact_length(L: Long, e: Eccentricity) -> Annotated[float, Q("ft", "L'", "length in contact")]:
    """Three times the distance from load to edge, since the soil cannot pull. Example: 10 ft, 3 ft off: 6 ft."""
    require(6 * e >= L * 0.999999, "the load stands outside the middle third")
    require(2 * e < L, "the load stands on the footing; beyond its edge the footing turns over")
    return 3 * (L / 2 - e)


@equation(
    "statics/pressure-beyond-kern",
    title="Greatest pressure, the load outside the middle third",
    clause="triangle of pressure under the load",
    source=SOURCE,
    witness="a printed shear wall footing: 246.85 kips on 5 by 25 ft, 5.32 ft off: 4.58 ksf",
)
def pressure_beyond_kern(
    P: Load, B: Wide, contact: Annotated[float, Q("ft", "L'", "length in contact", above=0.0)]
) -> Greatest:
    """Twice the load over the area in contact; seen in words at seaintarchive.org, 2004b/msg00409.

    Example (our arithmetic): 10,000 lb on 1 by 3 ft, 0.75 ft off: 2.25 ft in contact, 8,889 psf.
    """
    return 2 * P / (B * contact)


@equation(
    "statics/gross-pressure",
    title="Gross pressure under a footing",
    clause="load over area, concrete to the surface, less water",
    source=SOURCE,
    witness="R package geotech (J. Kaklamanos, K. Elmy), bearingPressure: 1,000 lb on 2 by 5 ft",
)
def gross_pressure(
    P: Annotated[float, Q("lb", "P", "load at the ground", at_least=0.0)],
    B: Wide,
    L: Long,
    D: Annotated[float, Q("ft", "D", "depth of the bottom below the ground", at_least=0.0)],
    D_w: Annotated[float, Q("ft", "D_w", "depth of the water below the ground", at_least=0.0)],
    gamma_c: Annotated[float, Q("pcf", "γ_c", "unit weight of what stands on the bottom", above=0.0)],
    gamma_w: Annotated[float, Q("pcf", "γ_w", "unit weight of water", at_least=0.0)],
) -> Annotated[float, Q("psf", "q", "gross pressure")]:
    """The load over the area, and the foundation's own weight over it, less what water above the bottom lifts.

    Example, printed at rdrr.io/cran/geotech/man/bearingPressure.html: 1,000 lb on 2 by 5 ft, 6 ft deep, water at 2 ft,
    150 pcf: 750.4 psf.
    """
    return P / (B * L) + gamma_c * D - gamma_w * max(D - D_w, 0)


@equation(
    "statics/net-pressure",
    title="Net pressure under a footing",
    clause="gross pressure less the soil that lay there",
    source=SOURCE,
    witness="seaintarchive.org, 2003d/msg00373: 1,500 psf net, 1,720 gross two feet of soil deeper",
)
def net_pressure(
    q: Annotated[float, Q("psf", "q", "gross pressure", at_least=0.0)],
    gamma: Annotated[float, Q("pcf", "γ", "unit weight of the soil dug out", at_least=0.0)],
    D: Annotated[float, Q("ft", "D", "depth of the bottom below the ground", at_least=0.0)],
) -> Annotated[float, Q("psf", "q_net", "net pressure")]:
    """What the soil feels more than before the footing was there.

    Example, the same: 1,720 psf, 110 pcf, 2 ft: 1,500 psf. The table of the code does not say which of the two its
    values are for; the checks compare the gross pressure, which is more.
    """
    return q - gamma * D


@equation(
    "statics/spread-length",
    title="Length of soil under a point load on a stem",
    clause="spread at a slope through the depth",
    source=SOURCE,
    how="computed",
)
def spread_length(
    b: Annotated[float, Q("ft", "b", "length of what presses", at_least=0.0)],
    h_1: Annotated[float, Q("ft", "h_1", "depth spread through to one side", at_least=0.0)],
    h_2: Annotated[float, Q("ft", "h_2", "depth spread through to the other", at_least=0.0)],
    s: Annotated[float, Q("1", "s", "spread for each foot of depth", at_least=0.0)],
) -> Annotated[float, Q("ft", "L_s", "length of soil that takes it")]:
    """Wider by the slope to either side, each as far as the stem goes on. Example: 3.5 in. on a stem 24 in. deep, at
    45 degrees: 4.29 ft.
    """
    return b + s * (h_1 + h_2)
