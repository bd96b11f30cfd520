"""How this edition takes over what stands unchanged in the 2018 one: one line for each equation, rule and table.

A rule runs the very body of the 2018 one, and while it does, each equation and table that it asks for is this edition's
own: so every step names this edition and carries this edition's doubts, and no formula stands twice.
"""

from __future__ import annotations

from typing import ParamSpec, TypeVar, overload

from groundsill.standards import nds_2018
from groundsill.standards.editions import in_place, unchanged
from groundsill.standards.nds_2024 import SOURCE
from groundsill.working.equation import Equation, Procedure
from groundsill.working.table import Table

__all__ = ["AGREES", "CELL_12B", "IN_PLACE", "RECALLED", "SCREEN", "again", "table"]

P = ParamSpec("P")
T = TypeVar("T")

RECALLED = "that NDS 2024 has it unchanged is recalled"
# one independent reader of the 2024 document, second-hand: the mark stays
AGREES = (
    "that NDS 2024 has it unchanged agrees with github.com/mckayreedmoore/mini-moonboard, whose notes work from the "
    "publisher's own chapters 11 and 12 of 2024 with their pages; to be confirmed in the document"
)
CELL_12B = (
    "NDS 2024 Table 12B, 1/2 in., 1-1/2 in. main, 580 and 310 lb, read in github.com/mckayreedmoore/mini-moonboard"
)
SCREEN = (
    "3/8 in. bolt in 1-1/2 in. by NDS 2024: 5,600, 3,650 psi, 788, 411 lb, github.com/mckayreedmoore/mini-moonboard"
)

IN_PLACE = in_place(nds_2018.SOURCE, SOURCE)


@overload
def again(rule: Equation[P], module: str, why: str = RECALLED, witness: str | None = None) -> Equation[P]: ...
@overload
def again(rule: Procedure[P, T], module: str, why: str = RECALLED) -> Procedure[P, T]: ...
def again(
    rule: Equation[P] | Procedure[P, T], module: str, why: str = RECALLED, witness: str | None = None
) -> Equation[P] | Procedure[P, T]:
    """A formula or rule of NDS 2018 as NDS 2024 has it: the same body under this edition's number.

    Args:
        rule: as the 2018 edition has it.
        module: the module that holds it here (``__name__``).
        why: how it is known that this edition says the same.
        witness: for an equation, a value printed by a reader of this edition.
    """
    id = rule.id.replace(nds_2018.SOURCE.id, SOURCE.id)
    if isinstance(rule, Procedure):
        return rule.restated(id, in_place=IN_PLACE, module=module, why=f"{why}.")
    return rule.restated(id, clause=rule.clause, source=SOURCE, module=module, why=f"{why}.", witness=witness)


def table(earlier: Table, why: str = RECALLED) -> Table:
    """A printed table of NDS 2018 as NDS 2024 repeats it."""
    return unchanged(earlier, SOURCE.short, why)
