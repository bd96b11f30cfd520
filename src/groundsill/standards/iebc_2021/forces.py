"""IEBC 2021: the force that work on an existing building is designed for, beside that of a new one.

Whether the reduced force may be used is for the code official and depends on why the work is done; here it is a
choice with a printed reason, never a default.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.iebc_2021 import SOURCE
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import condition, note
from groundsill.working.table import Table

__all__ = ["existing_force", "force_factor", "table_reduced_force"]


def table_reduced_force() -> Table:
    """The share of a new building's seismic force, by the clause that allows it."""
    return Table.load(__package__, "tables/reduced_force.toml")


@procedure(
    "iebc-2021/reduced-force",
    title="Share of a new building's seismic force",
    clause="A301.3, A403.3, 303.3.2",
    source=SOURCE,
    alias="iebc.force-factor",
)
def force_factor(level: str, reason: str, clause: str = "A301.3") -> float:
    """1.00 or the reduced factor, with the reason that is printed beside it.

    Args:
        level: ``full`` or ``reduced``.
        reason: why this level, printed.
        clause: the clause that allows the reduced level: A301.3 (cripple walls), A403.3 (weak stories) or 303.3.2.

    Raises:
        OutsideLimits: for another level, another clause, or no reason.
    """
    if level not in ("full", "reduced"):
        raise OutsideLimits(f"{SOURCE.cite('seismic forces')}: level {level!r} is not one of full, reduced")
    if not reason.strip():
        raise OutsideLimits(f"{SOURCE.cite('seismic forces')}: the {level} force is chosen without a reason")
    condition(f"{level} seismic force chosen: {reason.strip()}", True, cite=SOURCE.cite(clause))
    if level == "reduced":
        note("A code official may ask for the full force; the reduced force is for work on an existing building")
    return table_reduced_force().read("new building" if level == "full" else clause, symbol="f_E")


@equation(
    "iebc-2021/A403.3",
    title="Seismic force for existing work",
    clause="A403.3, A301.3",
    source=SOURCE,
    witness="IEBC appendix page 141 (flipbuilder mewf/quir): base shear may be 75 per cent of that for new work",
)
def existing_force(
    f_E: Annotated[float, Q("1", "f_E", "share of a new building's force", above=0.0, at_most=1.0)],
    V: Annotated[float, Q("lb", "V", "base shear of a new building", at_least=0.0)],
) -> Annotated[float, Q("lb", "V_E", "base shear for existing work, strength level")]:
    """The base shear of a new building times the chosen share; R and the rest stay those of the new building.

    Seen for A403.3 at online.flipbuilder.com/mewf/quir, page 141; for A301.3 recalled. Example: 0.75 of 10,000 lb is
    7,500 lb.
    """
    return f_E * V
