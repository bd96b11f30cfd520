"""12.5.1: end and edge distances and spacings of bolts, and the geometry factor when they are less than full.

In: the distances as drawn or measured, in inches, and in words how the load acts on them. Out: C_Δ, the least of the
end and spacing factors; a distance under the document's least is refused, since no value is given for it. Fasteners
under 1/4 in. take no factor: they must only not split the wood.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.nds_2018 import SOURCE
from groundsill.standards.nds_2018.symbols import Diameter
from groundsill.working.equation import Q, equation, procedure, require
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import condition, least, note, scale
from groundsill.working.table import Table

__all__ = [
    "distance_factor",
    "edge_distance_met",
    "end_distance_factor",
    "geometry_factor",
    "row_spacing_perpendicular",
    "spacing_factor",
    "table_12_5_1a",
    "table_12_5_1b",
    "table_12_5_1c",
]

SMALL_DOWEL_IN = 0.25

Distance = Annotated[float, Q("in", "a", "distance from the fastener's centre", above=0.0)]
Spacing = Annotated[float, Q("in", "s", "spacing of fasteners in a row, centre to centre", at_least=0.0)]
Multiple = Annotated[float, Q("1", "n", "distance in fastener diameters", above=0.0)]


def table_12_5_1a() -> Table:
    """End distance in diameters, full and least (Table 12.5.1A)."""
    return Table.load(__package__, "tables/12_5_1a.toml")


def table_12_5_1b() -> Table:
    """Spacing in a row in diameters, full and least (Table 12.5.1B)."""
    return Table.load(__package__, "tables/12_5_1b.toml")


def table_12_5_1c() -> Table:
    """Least edge distance in diameters (Table 12.5.1C)."""
    return Table.load(__package__, "tables/12_5_1c.toml")


@equation(
    "nds-2018/12.5.1.2",
    title="Geometry factor of one distance",
    clause="12.5.1.2",
    source=SOURCE,
)
def distance_factor(
    a: Distance,
    D: Diameter,
    full: Annotated[float, Q("1", "n_full", "diameters for the full value", above=0.0)],
    fewest: Annotated[float, Q("1", "n_min", "diameters at the least", above=0.0)],
) -> Annotated[float, Q("1", "C_Δ", "geometry factor of the distance")]:
    """The distance over the full one, never over 1 and never for less than the least distance.

    Source: NDS 2018, 12.5.1.2(a) and (c), pages 89 and 90, read by page in github.com/rohreng/anderson-rohr-calcs,
    docs/plans, NDS cross-check of the wood connection schedule.
    """
    require(a >= fewest * D, "the least distance of the table")
    return min(1, a / (full * D))


@equation(
    "nds-2018/12.5.1D-perpendicular",
    title="Spacing between rows, load perpendicular to grain",
    clause="Table 12.5.1D",
    source=SOURCE,
    witness="1.5625 in. for a 1/2 in. bolt, l 1.5 in. (hand check in github.com/rohreng/anderson-rohr-calcs)",
)
def row_spacing_perpendicular(
    D: Diameter, length: Annotated[float, Q("in", "l", "bearing length, the lesser of the members'", above=0.0)]
) -> Annotated[float, Q("in", "s_r", "least spacing between rows")]:
    """2.5 D up to l/D = 2, 5 D from l/D = 6, (5 l + 10 D)/8 between; the three meet at the borders.

    Source: NDS 2018, Table 12.5.1D, page 91, read by page in github.com/rohreng/anderson-rohr-calcs, docs/plans, NDS
    cross-check of the wood connection schedule. 1/2 in. bolt, l 1.5 in.: 1.5625 in. (its v1.1 verification).
    """
    if length <= 2 * D:
        return 2.5 * D
    if length < 6 * D:
        return (5 * length + 10 * D) / 8
    return 5 * D


@procedure(
    "nds-2018/12.5.1A",
    title="End distance factor",
    clause="Table 12.5.1A",
    source=SOURCE,
)
def end_distance_factor(D: Diameter, a: Distance, load: str = "parallel, toward the end, softwood") -> float:
    """C_Δ of the end distance; in an earthquake a sill is loaded toward both its ends, so that row is the default.

    Raises:
        OutsideLimits: below the least end distance, saying how much that is.
    """
    table = table_12_5_1a()
    full, fewest = table.read(load, "full", symbol="n_full"), table.read(load, "least", symbol="n_min")
    _at_least("end distance", a, D, fewest, f"{table.cite}, {load}")
    return distance_factor(a, D, full, fewest)


@procedure(
    "nds-2018/12.5.1B",
    title="Spacing factor of fasteners in a row",
    clause="Table 12.5.1B",
    source=SOURCE,
)
def spacing_factor(D: Diameter, s: Spacing, load: str = "parallel") -> float:
    """C_Δ of the spacing within a row.

    Raises:
        OutsideLimits: below the least spacing, saying how much that is.
    """
    table = table_12_5_1b()
    full, fewest = table.read(load, "full", symbol="n_full"), table.read(load, "least", symbol="n_min")
    _at_least("spacing", s, D, fewest, f"{table.cite}, {load}")
    return distance_factor(s, D, full, fewest)


@procedure(
    "nds-2018/12.5.1C",
    title="Edge distance",
    clause="Table 12.5.1C",
    source=SOURCE,
)
def edge_distance_met(D: Diameter, a: Distance, load: str = "parallel") -> float:
    """The least edge distance in inches, once it is known to be there; no factor makes up for a smaller one.

    ``load``: ``"parallel"``, ``"perpendicular, loaded edge"``, ``"perpendicular, unloaded edge"``.

    Raises:
        OutsideLimits: below the least edge distance, saying how much that is.
    """
    table = table_12_5_1c()
    fewest = table.read(load)
    _at_least("edge distance", a, D, fewest, f"{table.cite}, {load}")
    asked = scale(D, fewest, symbol="a_min", label="least edge distance")
    condition("the edge distance is at least that", True, a, asked, cite=table.cite)
    return asked


@procedure(
    "nds-2018/12.5.1",
    title="Geometry factor",
    clause="12.5.1, Tables 12.5.1A to C",
    source=SOURCE,
    alias="nds.geometry",
)
def geometry_factor(
    D: Diameter,
    a_end: Distance,
    a_edge: Distance,
    s: Spacing = 0.0,
    end: str = "parallel, toward the end, softwood",
    edge: str = "parallel",
    row: str = "parallel",
) -> float:
    """C_Δ of a bolt: the least of its end distance and spacing factors, once its edge distance is there.

    ``s`` 0 stands for a bolt with no neighbour in its row. Example: 5/8 in. bolt 3 in. from a sill's end, load along
    the sill: 3/(7 x 0.625) = 0.686 (our own arithmetic).
    """
    if float(D) < SMALL_DOWEL_IN:
        note("fasteners under 1/4 in. take no geometry factor; they must not split the wood")
        return 1.0
    edge_distance_met(D, a_edge, edge)
    factors = [end_distance_factor(D, a_end, end)]
    if float(s) > 0.0:
        factors.append(spacing_factor(D, s, row))
    return least(*factors, symbol="C_Δ", label="the least of the factors") if len(factors) > 1 else factors[0]


def _at_least(what: str, a: float, D: float, fewest: float, cite: str) -> None:
    asked = float(fewest) * float(D)
    if not float(a) >= asked:
        raise OutsideLimits(
            f"{cite}: {what} = {float(a):.4g} in; must be at least {float(fewest):g} D = {asked:.4g} in"
        )
