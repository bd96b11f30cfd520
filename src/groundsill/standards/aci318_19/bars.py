"""Bars (ACI 318-19, 20.2, 20.5, 24.3, 25.2): their sizes, the concrete over them, and how far apart they may stand."""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.member_symbols import BarDiameter, BarYield
from groundsill.standards.aci318_19.tables import table_20_5_1_3_1, table_bars
from groundsill.working.equation import Q, equation, procedure, require
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import scale

__all__ = ["area_of_bars", "bar_diameter", "clear_spacing", "cover", "widest_bar_spacing"]

Cover = Annotated[float, Q("in", "c_c", "clear cover of the bars", above=0.0)]


def bar_diameter(bar: str) -> float:
    """Diameter of a bar by its number (``#4``), in.

    Raises:
        OutsideLimits: when no such bar is sold.
    """
    return table_bars().read(bar, "diameter", symbol="d_b")


@procedure(
    "aci318-19/20.2.1-As",
    title="Area of so many bars",
    clause="20.2.1, ASTM A615",
    source=SOURCE,
    alias="aci.bars",
)
def area_of_bars(bar: str, count: Annotated[float, Q("1", "n", "number of bars", at_least=1.0)]) -> float:
    """The area of ``count`` bars of one number (``#4``), in2."""
    return scale(table_bars().read(bar, "area", symbol="A_b"), count, symbol="A_s", label=f"{float(count):g} {bar}")


@procedure(
    "aci318-19/20.5.1.3",
    title="Cover of bars",
    clause="Table 20.5.1.3.1",
    source=SOURCE,
    alias="aci.cover",
)
def cover(exposure: str, bar: str = "#4") -> float:
    """Least clear cover of a bar in concrete cast in place, in.

    Args:
        exposure: a row of the table: ``cast against ground``, ``exposed to weather or ground``, ``sheltered, slab or
            wall``, ``sheltered, beam``.
        bar: number of the bar.
    """
    size = "#5 and smaller" if float(table_bars().read(bar, "diameter")) <= 0.625 else "#6 to #11"
    if float(table_bars().read(bar, "diameter")) > 1.41:
        raise OutsideLimits(f"{SOURCE.cite('Table 20.5.1.3.1')}: {bar} is larger than the cover table is kept for: #11")
    return table_20_5_1_3_1().read(exposure, size, symbol="c_c")


@equation(
    "aci318-19/25.2.1",
    title="Least clear distance between bars",
    clause="25.2.1",
    source=SOURCE,
    how="from memory",
    constants={1: "in"},
)
def clear_spacing(
    d_b: BarDiameter, d_agg: Annotated[float, Q("in", "d_agg", "greatest size of the aggregate", above=0.0)]
) -> Annotated[float, Q("in", "s_clear", "least clear distance of bars in one row")]:
    """The greatest of 1 in., the bar's diameter, and 4/3 of the largest stone, in.

    Source: ACI 318-19, 25.2.1, recalled. #5 with 3/4 in. stone: 1 in.
    """
    return max(1, d_b, 4 / 3 * d_agg)


@equation(
    "aci318-19/24.3.2",
    title="Widest spacing of bars nearest the face in tension",
    clause="24.3.2 with 24.3.2.1",
    source=SOURCE,
    constants={15: "in", 40000: "psi", 12: "in"},
)
def widest_bar_spacing(
    f_y: BarYield, c_c: Cover
) -> Annotated[float, Q("in", "s_max", "widest spacing of the bars, centre to centre", above=0.0)]:
    """15 (40,000/f_s) less 2.5 c_c, at most 12 (40,000/f_s), in., with f_s two thirds of f_y (24.3.2.1).

    Source: ACI 318-19, Table 24.3.2, whose figures stand in the same words in several public programs (f_s in psi);
    24.3.2.1 read in public page notes on ACI 318M-19, pages 455 to 466. Grade 60, 3 in. of cover: 7.5 in.
    """
    f_s = 2 / 3 * f_y
    require(15 * (40000 / f_s) > 2.5 * c_c, "the cover is thin enough for bars to hold cracks at all")
    return min(15 * (40000 / f_s) - 2.5 * c_c, 12 * (40000 / f_s))
