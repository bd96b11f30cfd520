"""IEBC 2021 A304.3: how many bolts hold a piece of sill to its foundation, and where they stand."""

from __future__ import annotations

import math
from typing import Annotated

from groundsill.standards.iebc_2021 import SOURCE
from groundsill.standards.iebc_2021.bracing import table_a304_lengths
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import given, note
from groundsill.working.table import Table
from groundsill.working.value import marks_of

__all__ = ["bolt_spaces", "sill_bolts_asked", "spacing_asked", "table_a304_3_1_bolts", "table_a304_3_2"]

Diameter = Annotated[float, Q("in", "D", "bolt diameter", above=0.0)]
PieceLength = Annotated[float, Q("in", "L_p", "length of the piece of sill", above=0.0)]


def table_a304_3_1_bolts() -> Table:
    """Greatest spacing of sill bolts, by stories above and bolt diameter."""
    return Table.load(__package__, "tables/a304_3_1_bolts.toml")


def table_a304_3_2() -> Table:
    """Sill bolts of a short piece of sill, by stories above, bolt diameter and length."""
    return Table.load(__package__, "tables/a304_3_2.toml")


@equation(
    "iebc-2021/A304.3.2-spaces",
    title="Spaces between the bolts of a long piece of sill",
    clause="A304.3.2",
    source=SOURCE,
    how="from memory",
)
def bolt_spaces(
    L_p: PieceLength,
    e: Annotated[float, Q("in", "e", "greatest distance of the last bolt from the end", at_least=0.0)],
    s: Annotated[float, Q("in", "s", "greatest spacing", above=0.0)],
) -> Annotated[float, Q("1", "n_s", "spaces between bolts, before rounding up", at_least=0.0)]:
    """The length between the two end bolts over the greatest spacing; rounded up, it is one less than the bolts.

    Source: A304.3.2 with Table A304.3.1 (from memory). 40 ft, bolts 12 in. from the ends and 6 ft apart: 6.33 spaces,
    so 7 and 8 bolts; 30 ft: 4.67, so 6 bolts (our own arithmetic).
    """
    return max(0.0, L_p - 2 * e) / s


def spacing_asked(stories: int, D: float) -> float:
    """Greatest spacing of bolts of a diameter, in.; a diameter between or above the printed ones goes by the lower one.

    Raises:
        OutsideLimits: for thinner bolts than the table takes for so many stories, or more stories than it has.
    """
    return table_a304_3_1_bolts().read(str(stories), _printed(D))


@procedure(
    "iebc-2021/A304.3.2",
    title="Sill bolts of one piece of sill",
    clause="A304.3.1, A304.3.2, Tables A304.3.1 and A304.3.2",
    source=SOURCE,
    alias="iebc.sill-bolts",
)
def sill_bolts_asked(
    stories: Annotated[float, Q("1", "stories", "stories above the cripple wall")], D: Diameter, L_p: PieceLength
) -> float:
    """How many bolts one piece of sill is asked for: pieces of 12 ft and more by spacing, shorter ones by number.

    Args:
        stories: stories above the cripple wall, 1 to 3.
        D: bolt diameter, in.
        L_p: length of the piece of sill, in.

    Raises:
        OutsideLimits: for thinner bolts than the table takes for so many stories, or more stories than it has.
    """
    lengths, above = table_a304_lengths(), int(stories)
    spacing = spacing_asked(above, float(D))
    if L_p >= lengths.read("piece of sill from which bolts go by their spacing"):
        end = lengths.read("bolt from the end of a piece, most", symbol="e")
        spaces = bolt_spaces(L_p, end, spacing)
        note("one bolt more than the spaces between them, rounded up")
        return given("n", math.ceil(float(spaces) - 1e-9) + 1, "1", "bolts of the piece", marks_of((spaces, spacing)))
    row = f"{above}, {'5/8' if _printed(float(D)) == 0.625 else '1/2'} in."
    if L_p >= lengths.read("piece of sill below which two bolts do"):
        column = "6 to 12 ft"
    elif L_p >= lengths.read("piece of sill below which one bolt does"):
        column = "30 in. to 6 ft"
    else:
        column = "under 30 in."
    return table_a304_3_2().read(row, column)


def _printed(D: float) -> float:
    """The printed diameter that a bolt counts as."""
    least = [float(head) for head in table_a304_3_1_bolts().columns if float(head) <= D + 1e-9]
    if not least:
        raise OutsideLimits(f"{SOURCE.cite('A304.3.1')}: D = {D:g} in.; sill bolts are at least 1/2 in.")
    return max(least)
