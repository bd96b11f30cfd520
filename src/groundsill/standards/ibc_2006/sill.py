"""Sill plates of braced walls by IBC 2006, 2305.3.11: 2x, 2x with twice the bolts, or 3x."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.ibc_2006 import SOURCE
from groundsill.working.equation import Q, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import condition
from groundsill.working.table import Table

__all__ = ["SillRule", "sill_rule", "table_2305_3_11"]


@dataclass(frozen=True, slots=True)
class SillRule:
    """Whether a 2x sill serves, by what factor its bolts are multiplied then (0 when it does not), and the choice."""

    two_by_serves: bool
    bolt_factor: float
    choice: str


def table_2305_3_11() -> Table:
    """Most unit shear on a 2x sill, and on one with twice the bolts, plf: columns ASD, LRFD."""
    return Table.load("groundsill.standards.ibc_2006", "tables/2305_3_11.toml")


@procedure(
    "ibc-2006/2305.3.11",
    title="Sill plate of a braced wall",
    clause="2305.3.11",
    source=SOURCE,
    alias="ibc.sill-plate-2006",
)
def sill_rule(
    v: Annotated[float, Q("plf", "v", "unit shear in the wall", at_least=0.0)], level: str = "ASD"
) -> SillRule:
    """Which sill a wall with this unit shear needs.

    Up to 350 plf (ASD) a 2x sill serves; up to 600 plf with twice the bolts and 0.229 x 3 x 3 in. plate washers;
    above, 3x.

    Args:
        v: plf at the level named.
        level: ``"ASD"`` or ``"LRFD"`` (490 and 840 plf).

    Raises:
        OutsideLimits: a level that is neither, or a negative shear.
    """
    cite = SOURCE.cite("2305.3.11")
    if level not in ("ASD", "LRFD") or not v >= 0:
        raise OutsideLimits(f"{cite}: v = {float(v):g} plf at {level!r}; asks for v from 0, ASD or LRFD")
    table = table_2305_3_11()
    single = table.read("2x", level, symbol="limit")
    double = table.read("2x with twice the bolts", level, symbol="limit")
    if condition(f"at most {float(single):g} plf on a 2x sill", bool(v <= single), v, single, cite=cite):
        return SillRule(True, 1.0, "2x sill")
    if condition(f"at most {float(double):g} plf with twice the bolts", bool(v <= double), v, double, cite=cite):
        return SillRule(True, 2.0, "3x sill, or 2x with twice the bolts and plate washers")
    return SillRule(False, 0.0, "3x sill")
