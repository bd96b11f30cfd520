"""ASCE 7-16 chapters 26 and 27: whether wind asks more of a house than the earthquake does.

In: wind speed, exposure, plan and height of the house. Out: what wind pushes and pulls on its walls and slopes along
one direction at strength level, by the directional procedure with the velocity pressure of the mean roof height all the
way down (never too small); the whole force on a house that is a box under one roof; and whether it governs. Not done:
uplift, components and cladding, the torsional cases of Figure 27.3-8, parapets and overhangs. Pressure inside pushes
both ways and cancels.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.asce7_16 import SOURCE
from groundsill.standards.asce7_16.effects import asd_earthquake
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import add, condition, divide, given, greatest, multiply, note, scale, subtract
from groundsill.working.table import Table
from groundsill.working.value import marks_of

__all__ = [
    "FLATTEST_SLOPE",
    "WindForce",
    "WindPressure",
    "asd_dead_factor_7",
    "asd_wind",
    "asd_wind_with_live",
    "between_ratios",
    "exposure_coefficient",
    "external_pressure",
    "least_force",
    "lrfd_dead_factor_5",
    "roof_pressure",
    "table_2_4_1",
    "table_26_11_1",
    "table_26_factors",
    "table_27_3_1_leeward_roof",
    "table_27_3_1_walls",
    "table_27_3_1_windward_roof",
    "table_wind_capacity",
    "velocity_pressure",
    "wall_pressure",
    "wind_base",
    "wind_governs",
]

HIGHEST_FT = 60.0  # a low building; nothing taller is a house
FLATTEST_DEG = 10.0  # below it the figure gives pressures that hardly push sideways
FLATTEST_SLOPE = math.tan(math.radians(FLATTEST_DEG))

Speed = Annotated[float, Q("mph", "V", "basic wind speed, strength level", above=0.0, at_most=250.0)]
RoofHeight = Annotated[float, Q("ft", "h", "mean roof height above the ground", above=0.0)]
Across = Annotated[float, Q("ft", "B", "plan size across the wind", above=0.0)]
Along = Annotated[float, Q("ft", "L", "plan size along the wind", above=0.0)]
Topographic = Annotated[float, Q("1", "K_zt", "topographic factor", at_least=1.0)]
WallHeight = Annotated[float, Q("ft", "H_w", "height of wall above the base, up to the eave", above=0.0)]
Rise = Annotated[float, Q("ft", "H_r", "height of the roof, eave to ridge", at_least=0.0)]
Slope = Annotated[float, Q("1", "slope", "roof slope, rise over run", at_least=0.0)]
WindEffect = Annotated[float, Q("lb", "W", "wind force or its effect, strength level", at_least=0.0)]
SeismicEffect = Annotated[float, Q("lb", "E_h", "earthquake effect, redundancy factor included", at_least=0.0)]


def table_26_11_1() -> Table:
    """Terrain exposure constants alpha and z_g by exposure category."""
    return Table.load(__package__, "tables/26_11_1.toml")


def table_26_factors() -> Table:
    """K_d, K_e and G, as a house takes them."""
    return Table.load(__package__, "tables/26_factors.toml")


def table_27_3_1_walls() -> Table:
    """C_p of the windward and the leeward wall by L/B; straight lines between columns, flat beyond the end columns."""
    return Table.load(__package__, "tables/27_3_1_walls.toml")


def table_27_3_1_windward_roof() -> Table:
    """C_p of the windward roof by h/L and angle, the greater of the two printed (the one that pushes)."""
    return Table.load(__package__, "tables/27_3_1_windward_roof.toml")


def table_27_3_1_leeward_roof() -> Table:
    """C_p of the leeward roof by h/L and angle."""
    return Table.load(__package__, "tables/27_3_1_leeward_roof.toml")


def table_wind_capacity() -> Table:
    """How much more a link carries in wind than in an earthquake."""
    return Table.load(__package__, "tables/wind_capacity.toml")


@equation(
    "asce7-16/26.10-Kz",
    title="Velocity pressure exposure coefficient",
    clause="Table 26.10-1, note 1",
    source=SOURCE,
    how="from memory",
    witness="Guide to the Wind Load Provisions of ASCE 7-16, page 92: 0.57 in exposure B below 15 ft",
    constants={15.0: "ft"},
)
def exposure_coefficient(
    z: Annotated[float, Q("ft", "z", "height above the ground", at_least=0.0)],
    z_g: Annotated[float, Q("ft", "z_g", "nominal height of the boundary layer", above=15.0)],
    alpha: Annotated[float, Q("1", "alpha", "power law exponent", above=0.0)],
) -> Annotated[float, Q("1", "K_z", "velocity pressure exposure coefficient")]:
    """K_z = 2.01 (z/z_g)^(2/alpha), the height being at least 15 ft and at most z_g.

    Recalled; it gives the printed values: 0.57 (exposure B, 12.1 ft), 0.95 (exposure C, 8 m). Example, the guide's
    house: z = 12.1 ft, z_g = 1,200 ft, alpha = 7 gives 0.57.
    """
    return 2.01 * (min(max(z, 15.0), z_g) / z_g) ** (2 / alpha)  # type: ignore[no-any-return]  # a power is Any to mypy


@equation(
    "asce7-16/26.10-1",
    title="Velocity pressure",
    clause="Eq. 26.10-1",
    source=SOURCE,
    witness="City of Rexburg permit calculations 435445: K_z 0.70, K_d 0.85, V 115 mph give 20.1 psf",
    constants={0.00256: "psf/mph^2"},
)
def velocity_pressure(
    K_z: Annotated[float, Q("1", "K_z", "velocity pressure exposure coefficient", above=0.0)],
    K_zt: Topographic,
    K_d: Annotated[float, Q("1", "K_d", "wind directionality factor", above=0.0, at_most=1.0)],
    K_e: Annotated[float, Q("1", "K_e", "ground elevation factor", above=0.0, at_most=1.0)],
    V: Speed,
) -> Annotated[float, Q("psf", "q_z", "velocity pressure")]:
    """The pressure of air brought to rest, for still air at sea level and 59 degrees Fahrenheit.

    Seen, with its number, in the Guide to the Wind Load Provisions of ASCE 7-16, page 92. Example, Rexburg calculations
    435445: K_z = 0.70, K_zt = 1, K_d = 0.85, K_e = 1, V = 115 mph gives 20.1 psf.
    """
    return 0.00256 * K_z * K_zt * K_d * K_e * V**2


@equation(
    "asce7-16/27.3-1-external",
    title="External wind pressure",
    clause="Eq. 27.3-1, its external part",
    source=SOURCE,
    witness="calculation by ASCE 7-16 chapter 27 (pdfcoffee.com, wind-loading-3): 609.6 Pa, 0.85, 0.8 give 0.41 kPa",
)
def external_pressure(
    q: Annotated[float, Q("psf", "q", "velocity pressure at the surface", at_least=0.0)],
    G: Annotated[float, Q("1", "G", "gust-effect factor", above=0.0)],
    C_p: Annotated[float, Q("1", "C_p", "external pressure coefficient", at_least=-2.0, at_most=2.0)],
) -> Annotated[float, Q("psf", "p", "external pressure; negative is suction")]:
    """Velocity pressure times gust-effect factor times coefficient; the coefficients of two opposite faces may be taken
    together.

    Seen as p = q G C_p, the internal part beside it, in the calculation named as witness. Example, there: 12.73 psf
    (609.6 Pa), G = 0.85, C_p = 0.8 gives 8.66 psf (0.41 kPa).
    """
    return q * G * C_p


@equation(
    "asce7-16/27.3-1-note-2",
    title="Coefficient between two ratios of height to length",
    clause="Figure 27.3-1, note 2",
    source=SOURCE,
)
def between_ratios(
    C_low: Annotated[float, Q("1", "C_low", "coefficient at the lower ratio")],
    C_high: Annotated[float, Q("1", "C_high", "coefficient at the higher ratio")],
    r: Annotated[float, Q("1", "h/L", "mean roof height over plan size along the wind", at_least=0.0)],
    r_low: Annotated[float, Q("1", "r_low", "lower ratio of the figure", at_least=0.0)],
    r_high: Annotated[float, Q("1", "r_high", "higher ratio of the figure", above=0.0)],
) -> Annotated[float, Q("1", "C_p", "external pressure coefficient")]:
    """A straight line between the figure's ratios, flat beyond its ends.

    Seen in note 2 of the figure (scribd document 466369681). Example (our arithmetic): 0.2 at 0.5 and 0 at 1, h/L = 0.6
    gives 0.16.
    """
    return C_low + (C_high - C_low) * (min(max(r, r_low), r_high) - r_low) / (r_high - r_low)


@equation(
    "asce7-16/27.1.5",
    title="Least wind force",
    clause="27.1.5",
    source=SOURCE,
    witness="an example by ASCE 7-22 chapter 27 (structsuite.com): 16 psf and 8 psf on upright projections, 27.1.5",
    constants={16.0: "psf", 8.0: "psf"},
)
def least_force(
    A_w: Annotated[float, Q("ft^2", "A_w", "wall area, projected across the wind", at_least=0.0)],
    A_r: Annotated[float, Q("ft^2", "A_r", "roof area, projected across the wind", at_least=0.0)],
) -> Annotated[float, Q("lb", "F_min", "least wind force")]:
    """16 psf on the walls and 8 psf on the roof, as they are seen from the windward side.

    Seen, with its number, for the 2022 edition in the example named as witness; the same in 2016, as recalled. Example
    (our arithmetic): 480 and 300 square feet give 10,080 lb.
    """
    return 16.0 * A_w + 8.0 * A_r


@equation(
    "asce7-16/2.4.1-W",
    title="Wind effect at allowable-stress level",
    clause="2.4.1 combinations 5 and 7",
    source=SOURCE,
    witness="engineeringexamples.net, nominal load combinations of ASCE 7-10: 0.6D + 0.6W",
)
def asd_wind(W: WindEffect) -> Annotated[float, Q("lb", "0.6 W", "wind, allowable-stress level")]:
    """Six tenths of the strength-level effect.

    Seen for the 2010 edition on the page named as witness, and in New York City's BC 1605.3.1. Example (our
    arithmetic): 10,000 lb gives 6,000 lb.
    """
    return 0.6 * W


@equation(
    "asce7-16/2.4.1-W-live",
    title="Wind effect at allowable-stress level, beside live load",
    clause="2.4.1 combination 6",
    source=SOURCE,
    witness="engineeringexamples.net, nominal load combinations of ASCE 7-10: 0.75(0.6W)",
)
def asd_wind_with_live(
    W: WindEffect,
) -> Annotated[float, Q("lb", "0.45 W", "wind beside live load, allowable-stress level")]:
    """Three quarters of six tenths, where live and snow load are taken at three quarters too.

    Seen for the 2010 edition on the page named as witness. Example (our arithmetic): 10,000 lb gives 4,500 lb.
    """
    return 0.45 * W


def table_2_4_1() -> Table:
    """What of dead load may be counted on to hold down beside wind."""
    return Table.load(__package__, "tables/2_4_1.toml")


@procedure(
    "asce7-16/2.4.1-7-D",
    title="Factor on dead load, allowable stress, holding down beside wind",
    clause="2.4.1 combination 7",
    source=SOURCE,
)
def asd_dead_factor_7() -> float:
    """The factor on dead load that holds down where wind is checked in allowable-stress design."""
    return table_2_4_1().read("allowable stress, combination 7", symbol="f_D")


@procedure(
    "asce7-16/2.3.1-5-D",
    title="Factor on dead load, strength design, holding down beside wind",
    clause="2.3.1 combination 5",
    source=SOURCE,
)
def lrfd_dead_factor_5() -> float:
    """The factor on dead load that holds down where wind is checked in strength design."""
    return table_2_4_1().read("strength, combination 5", symbol="f_D")


@dataclass(frozen=True, slots=True)
class WindForce:
    """Wind along one direction on what stands above the base, strength level.

    ``q_h`` and the net pressures (windward push and leeward pull together) are in psf, forces in pounds; ``governs``
    names the clause that gave ``W``.
    """

    q_h: float
    p_wall: float
    p_roof: float
    F_wall: float
    F_roof: float
    F_min: float
    W: float
    governs: str


@dataclass(frozen=True, slots=True)
class WindPressure:
    """Velocity pressure at the mean roof height, and the net pressure on the walls, push and pull together, psf."""

    q_h: float
    p_wall: float


@procedure(
    "asce7-16/wind-walls",
    title="Wind pressure on the walls",
    clause="27.3.1, walls",
    source=SOURCE,
)
def wall_pressure(V: Speed, exposure: str, h: RoofHeight, B: Across, L: Along, K_zt: Topographic = 1.0) -> WindPressure:
    """Push on the windward and pull on the leeward wall together, strength level.

    Args:
        V: basic wind speed for the risk category, mph (the strength-level maps of this edition).
        exposure: B, C or D.
        h: mean roof height above the ground, ft (the eave's for a roof flatter than 10 degrees).
        B: plan size of the house across the wind, ft.
        L: plan size along the wind, ft.
        K_zt: topographic factor of 26.8; 1.0 on level ground.

    Raises:
        OutsideLimits: for an unknown exposure, a size that is none, a roof height beyond 60 ft.
    """
    _must_be_sizes((("h", h), ("B", B), ("L", L)))
    if h > HIGHEST_FT:
        raise OutsideLimits(f"{SOURCE.cite('27.3')}: h = {float(h):g} ft; this way is for houses up to 60 ft high")
    q_h = _pressure_at_roof(V, exposure, h, K_zt)
    walls, G = table_27_3_1_walls(), _gust()
    ratio = divide(L, B, symbol="L/B", unit="1", label="plan size along the wind over that across")
    push, pull = walls.interpolate("windward", ratio, "C_p,w"), walls.interpolate("leeward", ratio, "C_p,l")
    both = subtract(push, pull, symbol="C_p", label="push and pull on both walls")
    return WindPressure(q_h, external_pressure(q_h, G, both))


@procedure(
    "asce7-16/wind-roof",
    title="Wind pressure on a roof that meets it with a slope",
    clause="27.3.1, roof",
    source=SOURCE,
)
def roof_pressure(
    q_h: Annotated[float, Q("psf", "q_h", "velocity pressure at the mean roof height", at_least=0.0)],
    h: RoofHeight,
    L: Along,
    slope: Slope,
) -> Annotated[float, Q("psf", "p_roof", "net pressure on the upright projection of a roof")]:
    """Windward push and leeward pull on the slopes together, psf of their upright projection, strength level.

    Args:
        q_h: velocity pressure at the mean roof height, psf.
        h: mean roof height above the ground, ft.
        L: plan size along the wind, ft.
        slope: roof slope, rise over run.

    Raises:
        OutsideLimits: for a size or a slope that is none.
    """
    _must_be_sizes((("h", h), ("L", L)))
    _must_not_be_less((("slope", slope),))
    return _roof_pressure(q_h, _gust(), h, L, slope)


@procedure(
    "asce7-16/wind-base",
    title="Wind force on what stands above the base",
    clause="chapter 27, part 1",
    source=SOURCE,
    alias="asce7.wind",
)
def wind_base(
    V: Speed,
    exposure: str,
    h: RoofHeight,
    B: Across,
    L: Along,
    H_w: WallHeight,
    H_r: Rise = 0.0,
    slope: Slope = 0.0,
    roof: str = "sloped",
    K_zt: Topographic = 1.0,
) -> WindForce:
    """Wind force along one direction, strength level, never less than 27.1.5 asks.

    Args:
        V: basic wind speed for the risk category, mph (the strength-level maps of this edition).
        exposure: B, C or D.
        h: mean roof height above the ground, ft (the eave's for a roof flatter than 10 degrees).
        B: plan size of the house across the wind, ft.
        L: plan size along the wind, ft.
        H_w: height of wall above the base, up to the eave, ft.
        H_r: height of the roof from eave to ridge, ft.
        slope: roof slope, rise over run.
        roof: "sloped" (the wind meets a slope: ridge across it, or a hip) or "gable end" (ridge along the wind).
        K_zt: topographic factor of 26.8; 1.0 on level ground.

    Raises:
        OutsideLimits: for an unknown exposure or roof, a size that is none, a roof height beyond 60 ft.
    """
    _must_be_sizes((("h", h), ("B", B), ("L", L), ("H_w", H_w)))
    _must_not_be_less((("H_r", H_r), ("slope", slope)))
    if roof not in ("sloped", "gable end"):
        raise OutsideLimits(f"{SOURCE.cite('27.3')}: roof {roof!r} is not one of sloped, gable end")
    pressure = wall_pressure(V, exposure, h, B, L, K_zt)
    q_h, p_wall = pressure.q_h, pressure.p_wall
    A_w = multiply(B, H_w, symbol="A_w", unit="ft^2", label="windward wall above the base")
    A_r = multiply(B, H_r, symbol="A_r", unit="ft^2", label="roof, as seen from the windward side")
    if roof == "gable end":
        A_r = scale(A_r, 0.5, symbol="A_r", label="the gable's triangle, which is wall")
        p_roof, A_w_least, A_r_least = p_wall, add(A_w, A_r, symbol="A_w", label="wall and gable", unit="ft^2"), 0.0
    else:
        p_roof, A_w_least, A_r_least = roof_pressure(q_h, h, L, slope), A_w, A_r
    F_wall = multiply(p_wall, A_w, symbol="F_wall", unit="lb", label="wind on the walls")
    F_roof = multiply(p_roof, A_r, symbol="F_roof", unit="lb", label="wind on the roof")
    F = add(F_wall, F_roof, symbol="F", label="wind by the directional procedure", unit="lb")
    F_min = least_force(A_w_least, A_r_least)
    W = greatest(F, F_min, symbol="W", label="wind force along this direction, strength level")
    governs = "27.1.5" if F_min > F else "27.3.1"
    note(f"The wind force is by {governs}; torsional cases (Figure 27.3-8) and uplift are not in it")
    return WindForce(q_h, p_wall, p_roof, F_wall, F_roof, F_min, W, governs)


def _must_be_sizes(sizes: Sequence[tuple[str, float]]) -> None:
    for symbol, size in sizes:
        if not 0 < size < math.inf:
            raise OutsideLimits(f"{SOURCE.cite('27.3')}: {symbol} = {float(size):g} ft; it must be above 0")


def _must_not_be_less(sizes: Sequence[tuple[str, float]]) -> None:
    for symbol, size in sizes:
        if not 0 <= size < math.inf:
            raise OutsideLimits(f"{SOURCE.cite('27.3')}: {symbol} = {float(size):g}; it must be at least 0")


def _gust() -> float:
    return table_26_factors().read("G, rigid building", symbol="G")


def _pressure_at_roof(V: float, exposure: str, h: float, K_zt: float) -> float:
    """Velocity pressure at the mean roof height, taken all the way down."""
    terrain, factors = table_26_11_1(), table_26_factors()
    z_g = terrain.read(exposure, "z_g", "z_g")
    K_h = exposure_coefficient(h, z_g, terrain.read(exposure, "alpha", "alpha"))
    K_d = factors.read("K_d, main system of a building", symbol="K_d")
    K_e = factors.read("K_e, any elevation", symbol="K_e")
    note("The pressure of the mean roof height is taken for the whole windward wall, which is never too small")
    return velocity_pressure(K_h, K_zt, K_d, K_e, V)


def _roof_pressure(q_h: float, G: float, h: float, L: float, slope: float) -> float:
    """Windward push and leeward pull on a slope together, psf of its upright projection."""
    found = math.degrees(math.atan(float(slope)))
    theta = given("theta", max(found, FLATTEST_DEG), "deg", "angle of the roof from its slope", marks_of((slope,)))
    if found < FLATTEST_DEG:
        note("Roofs flatter than 10 degrees are taken at 10, which pushes more")
    ratio = divide(h, L, symbol="h/L", unit="1", label="mean roof height over plan size along the wind")
    windward = _between(table_27_3_1_windward_roof(), ratio, theta, "C_p,wr", least=0.0)
    leeward = _between(table_27_3_1_leeward_roof(), ratio, theta, "C_p,lr")
    return external_pressure(q_h, G, subtract(windward, leeward, symbol="C_p", label="push and pull on both slopes"))


def _between(table: Table, ratio: float, theta: float, symbol: str, least: float | None = None) -> float:
    """C_p at an angle and a ratio h/L; with ``least`` no row counts for less (suction there would only help)."""
    heads = [float(row) for row in table.rows]
    at = min(max(float(ratio), heads[0]), heads[-1])
    upper = next(i for i, head in enumerate(heads) if head >= at)
    lower = upper if heads[upper] == at else upper - 1
    found = []
    for place in dict.fromkeys((lower, upper)):
        cell = table.interpolate(list(table.rows)[place], theta, symbol)
        if least is not None and cell < least:
            cell = greatest(cell, least, symbol=symbol, label="suction on the windward slope is not counted on")
        found.append(cell)
    if len(found) == 1:
        return found[0]
    return between_ratios(found[0], found[1], ratio, heads[lower], heads[upper])


@procedure(
    "asce7-16/wind-governs",
    title="Whether wind or the earthquake governs a link",
    clause="2.4.1 beside 2.4.5",
    source=SOURCE,
    alias="asce7.wind-governs",
)
def wind_governs(W: WindEffect, E_h: SeismicEffect, link: str = "wood structural panel") -> bool:
    """True when wind at allowable-stress level asks more of a link than the earthquake does.

    Args:
        W: wind force, strength level, lb.
        E_h: earthquake force, strength level, redundancy factor included, lb.
        link: "wood structural panel" (which carries 1.4 times as much in wind) or "any other link".
    """
    r = table_wind_capacity().read(link, symbol="r_w")
    wind = asd_wind(W)
    quake = scale(asd_earthquake(E_h), r, symbol="r_w 0.7 E_h", label="wind that would ask as much of the link")
    return bool(condition("0.6 W is more than that: wind governs", wind > quake, wind, quake, cite="2.4.1, 2.4.5"))
