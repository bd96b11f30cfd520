"""Chapter D: a strap in tension yields along its length or breaks through its holes, whichever is less.

In: width, thickness, hole sizes, steel. Out: nominal strengths in lb, and the allowable (ASD, over Ω) or design
strength (LRFD, times φ). The nails that hold the strap are another standard's question.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.aisi_s100_16 import SOURCE
from groundsill.working.equation import Q, equation, procedure, require
from groundsill.working.errors import OutsideLimits
from groundsill.working.source import How
from groundsill.working.steps import divide, least, note, scale
from groundsill.working.table import Table

__all__ = [
    "StrapStrength",
    "gross_area",
    "net_area",
    "rupture_strength",
    "strap",
    "table_d",
    "table_steel",
    "yield_strength",
]

RECALLED: How = "from memory"

Width = Annotated[float, Q("in", "w", "width of the strap", above=0.0)]
Thickness = Annotated[float, Q("in", "t", "base steel thickness", above=0.0, at_most=1.0)]
GrossArea = Annotated[float, Q("in^2", "A_g", "gross area", above=0.0)]
NetArea = Annotated[float, Q("in^2", "A_n", "net area", above=0.0)]


@dataclass(frozen=True, slots=True)
class StrapStrength:
    """A strap in tension, lb: ``T`` allowable (ASD) or design (LRFD) strength, what governs, both nominal strengths."""

    T: float
    governs: str
    T_yield: float
    T_rupture: float
    method: str


def table_steel() -> Table:
    """Yield and tensile strength of the sheet steels that straps are made of (A653 SS)."""
    return Table.load(__package__, "tables/steel.toml")


def table_d() -> Table:
    """Ω and φ of tension members (D2, D3)."""
    return Table.load(__package__, "tables/d_factors.toml")


@equation("aisi-s100-16/D-Ag", title="Gross area of a strap", clause="chapter D", source=SOURCE, how=RECALLED)
def gross_area(w: Width, t: Thickness) -> Annotated[float, Q("in^2", "A_g", "gross area")]:
    """Width times base steel thickness, without coating. Example: 1-1/4 in. x 0.054 in.: 0.0675 in^2."""
    return w * t


@equation("aisi-s100-16/D-An", title="Net area of a strap", clause="chapter D", source=SOURCE, how=RECALLED)
def net_area(
    w: Width,
    t: Thickness,
    n: Annotated[float, Q("1", "n", "holes across the strap at one section", at_least=0.0)],
    d_h: Annotated[float, Q("in", "d_h", "hole diameter", at_least=0.0)],
) -> Annotated[float, Q("in^2", "A_n", "net area")]:
    """Gross area less the holes in one section across (not staggered). Holes as wide as the strap are refused."""
    require(n * d_h < w, "the holes must leave steel between them")
    return (w - n * d_h) * t


@equation(
    "aisi-s100-16/D2",
    title="Yielding of the gross section",
    clause="D2, Eq. D2-1",
    source=SOURCE,
)
def yield_strength(
    A_g: GrossArea, F_y: Annotated[float, Q("psi", "F_y", "yield stress", above=0.0)]
) -> Annotated[float, Q("lb", "T_n,y", "nominal strength, yielding")]:
    """T_n = A_g F_y.

    Source: the tension member equations, civilengineeringx.com tension-members (seen). Example: 0.0675 in^2 of
    Grade 33: 2,228 lb (our own arithmetic).
    """
    return A_g * F_y


@equation(
    "aisi-s100-16/D3",
    title="Rupture of the net section",
    clause="D3, Eq. D3-1",
    source=SOURCE,
)
def rupture_strength(
    A_n: NetArea, F_u: Annotated[float, Q("psi", "F_u", "tensile strength", above=0.0)]
) -> Annotated[float, Q("lb", "T_n,u", "nominal strength, rupture")]:
    """T_n = A_n F_u, holes deducted.

    Source: the tension member equations, civilengineeringx.com tension-members (seen).
    """
    return A_n * F_u


@procedure(
    "aisi-s100-16/D",
    title="Strap in tension",
    clause="D2, D3",
    source=SOURCE,
    alias="aisi.strap",
)
def strap(
    w: Width,
    t: Thickness,
    n: Annotated[float, Q("1", "n", "holes across the strap at one section", at_least=0.0)] = 1.0,
    d_h: Annotated[float, Q("in", "d_h", "hole diameter", at_least=0.0)] = 0.162,
    steel: str = "A653 SS Grade 33",
    method: str = "ASD",
) -> StrapStrength:
    """The lesser of yielding and rupture, lb. Load duration does not raise steel.

    Example: 16 ga, 0.054 x 1.25 in., Grade 33, one 0.162 in. hole: 1,322 lb ASD, rupture governs (our own arithmetic).

    Raises:
        OutsideLimits: holes as wide as the strap, an unknown steel, a method that is not ASD or LRFD.
    """
    if method not in ("ASD", "LRFD"):
        raise OutsideLimits(f"{SOURCE.cite('chapter D')}: method {method!r} is not ASD or LRFD")
    T_yield = yield_strength(gross_area(w, t), table_steel().read(steel, "F_y", symbol="F_y"))
    T_rupture = rupture_strength(net_area(w, t, n, d_h), table_steel().read(steel, "F_u", symbol="F_u"))
    factor = "Ω" if method == "ASD" else "φ"
    strengths = {}
    for name, nominal in (("yielding", T_yield), ("rupture", T_rupture)):
        by = table_d().read(name, factor, symbol=factor)
        if method == "ASD":
            strengths[name] = divide(nominal, by, symbol=f"T_{name}/Ω", unit="lb", label=f"allowable, {name}")
        else:
            strengths[name] = scale(nominal, by, symbol=f"φT_{name}", label=f"design strength, {name}")
    governs = min(strengths, key=lambda name: float(strengths[name]))
    T = least(*strengths.values(), symbol="T", label="the lesser of yielding and rupture")
    note(f"{governs} governs")
    return StrapStrength(T, governs, T_yield, T_rupture, method)
