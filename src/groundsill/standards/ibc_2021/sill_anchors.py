"""IBC 2021 section 1905.1.8: when a sill bolt in shear along the wall needs no concrete check of its own.

The exception stands on tests in which wood and bolt gave way first. Its conditions are listed one by one, with the
scope of those tests beside them (cast-in bolts, sound concrete of at least 2,500 psi): outside that scope the answer is
"the engineer decides", never "met". Loads across the wall, toward the edge, are always checked in concrete.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.conditions import Condition, all_met
from groundsill.standards.ibc_2021 import SOURCE
from groundsill.working.equation import Q, procedure
from groundsill.working.steps import condition, scale
from groundsill.working.table import Table

__all__ = ["SillException", "sill_exception", "table_1905_1_8"]

OUTSIDE = "outside the evidence; the engineer decides"


def table_1905_1_8() -> Table:
    """The limits of the sill-plate exception, one column each."""
    return Table.load(__package__, "tables/1905_1_8.toml")


@dataclass(frozen=True, slots=True)
class SillException:
    """Every condition, and whether the exception applies: True if all are met, False if one is not, None if unknown."""

    conditions: tuple[Condition, ...]
    applies: bool | None


Unknown = "not known; measure it"


@procedure(
    "ibc-2021/1905.1.8",
    title="Sill bolt without a concrete shear check along the wall",
    clause="1905.1.8",
    source=SOURCE,
    alias="ibc.sill-exception",
)
def sill_exception(
    d_a: Annotated[float, Q("in", "d_a", "bolt diameter", above=0.0)] | None,
    h_ef: Annotated[float, Q("in", "h_ef", "embedment", at_least=0.0)] | None,
    edge: Annotated[float, Q("in", "c_a1", "distance to the edge along the wall", at_least=0.0)] | None,
    end: Annotated[float, Q("in", "c_a2", "distance to the end of the concrete across the wall", at_least=0.0)] | None,
    sill_nominal: Annotated[float, Q("in", "t_nom", "nominal thickness of the sill", above=0.0)] | None,
    f_c: Annotated[float, Q("psi", "f'_c", "compressive strength of the concrete", above=0.0)] | None,
    cast_in: bool | None,
    along_wall: bool = True,
) -> SillException:
    """The conditions of the exception for one bolt; None stands for a fact nobody knows yet.

    Args:
        d_a: bolt diameter, in.
        h_ef: embedment, in.
        edge: from the bolt's centre to the concrete's edge that runs along the sill, in.
        end: from the bolt's centre to the nearest end or corner of the concrete, in.
        sill_nominal: nominal sill thickness, 2 or 3 in.
        f_c: strength of the concrete, psi.
        cast_in: whether the bolt was cast in (True) or set afterwards (False).
        along_wall: whether the load runs along the sill.
    """
    limits = table_1905_1_8()
    most_d = limits.read("limit", "bolt diameter, at most", "d_a,max")
    deep = limits.read("limit", "embedment, at least", "h_ef,min")
    side = limits.read("limit", "edge along the sill, at least", "c_a1,min")
    diameters = limits.read("limit", "end distance in diameters, at least", "n")
    strong = limits.read("limit", "concrete strength of the tests, at least", "f'_c,min")
    far = None if d_a is None else scale(d_a, diameters, symbol="c_a2,min", label="Least end distance")
    found = (
        _hold("load in shear along the sill, taken by the wood table's value along the grain", along_wall),
        _hold("bolt no thicker than 5/8 in.", None if d_a is None else d_a <= most_d, d_a, most_d),
        _hold("at least 7 in. in the concrete", None if h_ef is None else h_ef >= deep, h_ef, deep),
        _hold("at least 1-3/4 in. from the edge along the sill", None if edge is None else edge >= side, edge, side),
        _hold(
            "at least 15 bolt diameters from the end of the concrete",
            None if end is None or far is None else end >= far,
            end,
            far,
        ),
        _hold("2x or 3x sill", None if sill_nominal is None else sill_nominal in (2, 3), sill_nominal),
        _scope("bolt cast in, as those tested were", cast_in),
        _scope(
            "concrete of at least 2,500 psi, as that tested was", None if f_c is None else f_c >= strong, f_c, strong
        ),
    )
    return SillException(found, all_met(found))


def _hold(text: str, met: bool | None, *numbers: float | None) -> Condition:
    """A printed condition."""
    condition(text, met, *(n for n in numbers if n is not None), cite=SOURCE.cite("1905.1.8"))
    return Condition(text, met, Unknown if met is None else "")


def _scope(text: str, met: bool | None, *numbers: float | None) -> Condition:
    """A condition of the tests: outside it, or unknown, the exception is the engineer's to decide."""
    inside = True if met else None
    condition(text, inside, *(n for n in numbers if n is not None), cite="scope of the tests behind 1905.1.8")
    return Condition(text, inside, "" if inside else OUTSIDE)
