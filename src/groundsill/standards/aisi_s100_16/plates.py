"""Chapters F, G and J for a flat plate in its own plane: bending, shear, and bearing of a bolt in its hole.

In: the plate's width, thickness and holes, the steel. Out: allowable moment, shear and bearing (ASD, over Ω). The plate
lies flat on wood and concrete, which keep it from buckling; that is the user's to see to. In-plane bending is held
elastic, by the net section through a row of holes.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.aisi_s100_16 import SOURCE
from groundsill.standards.aisi_s100_16.tension import table_steel
from groundsill.working.equation import Q, equation, procedure, require
from groundsill.working.source import How
from groundsill.working.steps import divide
from groundsill.working.table import Table

__all__ = [
    "allowable_bearing",
    "allowable_moment",
    "allowable_shear",
    "bolt_bearing",
    "force_in_both",
    "moment_strength",
    "net_section_modulus",
    "shear_strength",
    "table_plates",
]

RECALLED: How = "from memory"

Width = Annotated[float, Q("in", "b", "width of the plate along the wall", above=0.0)]
Thickness = Annotated[float, Q("in", "t", "thickness of the plate", above=0.0, at_most=1.0)]
Holes = Annotated[float, Q("1", "n", "holes in a row across the plate", at_least=0.0)]
Hole = Annotated[float, Q("in", "d_h", "hole diameter", at_least=0.0)]
Apart = Annotated[float, Q("in", "s", "spacing of the holes", at_least=0.0)]
Yield = Annotated[float, Q("psi", "F_y", "yield stress", above=0.0)]
Tensile = Annotated[float, Q("psi", "F_u", "tensile strength", above=0.0)]


def table_plates() -> Table:
    """Ω of plates in bending and shear and of bolts in bearing (F, G, J3.3.1), and the bearing factors."""
    return Table.load(__package__, "tables/plate_factors.toml")


@equation(
    "aisi-s100-16/F-Sn",
    title="Net section modulus of a plate in its plane",
    clause="chapter F",
    source=SOURCE,
    how=RECALLED,
)
def net_section_modulus(
    b: Width, t: Thickness, n: Holes, d_h: Hole, s: Apart
) -> Annotated[float, Q("in^3", "S_n", "net section modulus")]:
    """The plate's own t b^2/6 less what a middle row of n holes s apart takes from its moment of inertia.

    Example: 6 x 1/4 in., two 9/16 in. holes 3 in. apart: 1.5 less (2 x 9/16^3/12 + 9/16 x 9/2)/4/3 = 1.287 in^3 (our
    own arithmetic).
    """
    require(n == 0 or (n - 1) * s + d_h < b, "the row of holes must lie within the plate")
    require(n <= 1 or d_h < s, "the holes must leave steel between them")
    return (t * b**3 / 12 - t * n * d_h**3 / 12 - t * d_h * s**2 * n * (n**2 - 1) / 12) / (b / 2)


@equation("aisi-s100-16/F2.1", title="Yield moment", clause="F2.1", source=SOURCE, how=RECALLED)
def moment_strength(
    S_n: Annotated[float, Q("in^3", "S_n", "net section modulus", above=0.0)], F_y: Yield
) -> Annotated[float, Q("lb-in", "M_n", "nominal moment")]:
    """M_n = S F_y: first yield at the edge of the plate. Example: 1.287 in^3 of 36,000 psi: 46,332 lb-in."""
    return S_n * F_y


@equation(
    "aisi-s100-16/G2.1",
    title="Shear strength of a stocky plate",
    clause="G2.1, Eq. G2.1-5",
    source=SOURCE,
)
def shear_strength(
    b: Width, t: Thickness, n: Holes, d_h: Hole, F_y: Yield
) -> Annotated[float, Q("lb", "V_n", "nominal shear")]:
    """V_n = 0.60 F_y A_w, with A_w the net width times the thickness: a plate held flat does not buckle in shear.

    Source: the yield branch of G2.1 as printed in a paper on that clause, 11 Pham ID11, CFSRC colloquium 2020, Eqs. 1a,
    1b, 1e (jscholarship.library.jhu.edu/items/82e05ae5-53a6-494a-be10-22fcb60c7272). Holes deducted: our care.
    """
    require(n * d_h < b, "the holes must leave steel between them")
    return 0.60 * F_y * (b - n * d_h) * t


@equation("aisi-s100-16/J3.3.1", title="Bearing of a bolt in its hole", clause="J3.3.1", source=SOURCE, how=RECALLED)
def bolt_bearing(
    C: Annotated[float, Q("1", "C", "bearing factor", above=0.0)],
    m_f: Annotated[float, Q("1", "m_f", "modification factor for the type of bearing connection", above=0.0)],
    d: Annotated[float, Q("in", "d", "bolt diameter", above=0.0)],
    t: Thickness,
    F_u: Tensile,
) -> Annotated[float, Q("lb", "P_n", "nominal bearing strength")]:
    """P_n = C m_f d t F_u, without regard to how far the hole is drawn out. Only where d/t is under 10 does C stand.

    Example: 1/2 in. bolt in 1/4 in. A36: 3 x 0.75 x 0.5 x 0.25 x 58,000 = 16,313 lb (our own arithmetic).
    """
    require(d < 10 * t, "d/t is under 10 for this bearing factor")
    return C * m_f * d * t * F_u


@equation(
    "aisi-s100-16/H2", title="Force in bending and shear together", clause="H2, Eq. H2-1", source=SOURCE, how=RECALLED
)
def force_in_both(
    M_a: Annotated[float, Q("lb-in", "M_a", "allowable moment", above=0.0)],
    V_a: Annotated[float, Q("lb", "V_a", "allowable shear", above=0.0)],
    e: Annotated[float, Q("in", "e", "lever of the force about the section", at_least=0.0)],
) -> Annotated[float, Q("lb", "V", "allowable force")]:
    """The force whose shear V and moment V e together just meet the circle (M/M_a)^2 + (V/V_a)^2 = 1.

    Example: 27,735 lb-in, 16,453 lb, lever 4 in.: 6,396 lb (our own arithmetic).
    """
    return 1 / ((e / M_a) ** 2 + (1 / V_a) ** 2) ** 0.5  # type: ignore[no-any-return]  # a float power is Any


@procedure(
    "aisi-s100-16/F-ASD",
    title="Allowable moment of a plate in its plane",
    clause="chapter F",
    source=SOURCE,
    alias="aisi.plate-moment",
)
def allowable_moment(
    b: Width, t: Thickness, n: Holes = 0.0, d_h: Hole = 0.0, s: Apart = 0.0, steel: str = "A36"
) -> float:
    """M_n over Ω, lb-in, of a plate bent in its plane, through a row of holes.

    Example: 6 x 1/4 in. A36, two 9/16 in. holes 3 in. apart: 27,735 lb-in (our own arithmetic).
    """
    M_n = moment_strength(net_section_modulus(b, t, n, d_h, s), table_steel().read(steel, "F_y", symbol="F_y"))
    return divide(M_n, table_plates().read("bending", "Ω", "Ω"), symbol="M_n/Ω", unit="lb-in", label="allowable moment")


@procedure(
    "aisi-s100-16/G-ASD",
    title="Allowable shear of a plate in its plane",
    clause="chapter G",
    source=SOURCE,
    alias="aisi.plate-shear",
)
def allowable_shear(b: Width, t: Thickness, n: Holes = 0.0, d_h: Hole = 0.0, steel: str = "A36") -> float:
    """V_n over Ω, lb, of a plate sheared in its plane, through a row of holes.

    Example: 6 x 1/4 in. A36, two 9/16 in. holes: 16,453 lb (our own arithmetic).
    """
    V_n = shear_strength(b, t, n, d_h, table_steel().read(steel, "F_y", symbol="F_y"))
    return divide(V_n, table_plates().read("shear", "Ω", "Ω"), symbol="V_n/Ω", unit="lb", label="allowable shear")


@procedure(
    "aisi-s100-16/J3-ASD",
    title="Allowable bearing of a bolt in a plate",
    clause="J3.3.1",
    source=SOURCE,
    alias="aisi.bolt-bearing",
)
def allowable_bearing(
    d: Annotated[float, Q("in", "d", "bolt diameter", above=0.0)], t: Thickness, steel: str = "A36"
) -> float:
    """P_n over Ω, lb, of one bolt in single shear without washers on both sides."""
    table = table_plates()
    C = table.read("bearing", "C", symbol="C")
    m_f = table.read("bearing", "m_f", symbol="m_f")
    P_n = bolt_bearing(C, m_f, d, t, table_steel().read(steel, "F_u", symbol="F_u"))
    return divide(P_n, table.read("bearing", "Ω", "Ω"), symbol="P_n/Ω", unit="lb", label="allowable bearing")
