"""IEBC 2021 A301.2 and its local kin: by whose rules the prescriptive way is taken, and where it ends.

The model chapter stands in two editions; places that print rules of their own have a row beside it. Which row a house
goes by follows from the place it stands in, else from its building code. A limit or a share that no public page gave is
a word in its cell, and reading it is refused: it is never taken from another place's rules. What the other sections
ask (bolts, panels, vents) was seen of no local rules; it is told by the model chapter, and says so.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from groundsill.working.errors import OutsideLimits
from groundsill.working.table import Table

__all__ = ["Rules", "rules_for", "table_a301_2", "table_a304_3_1_bracing", "table_a304_3_1_roof"]

_PLACES = {
    "portland": ("Portland", r"\bportland\b.*\b(oregon|or)\b"),
    "los-angeles": ("Los Angeles", r"\bcity of los angeles\b|\blos angeles, (ca|california)\b"),
    "san-leandro": ("San Leandro", r"\bsan leandro\b"),
}
_NO_LIMIT = "no limit is stated"


def table_a301_2() -> Table:
    """Where the prescriptive way ends, by whose rules it is taken."""
    return Table.load(__package__, "tables/a301_2.toml")


def table_a304_3_1_bracing() -> Table:
    """Least bracing of a wall line, per cent of its length, by rules, stories above and finishes."""
    return Table.load(__package__, "tables/a304_3_1_bracing.toml")


def table_a304_3_1_roof() -> Table:
    """Weight of roof tile above which, over stucco walls, more bracing is asked."""
    return Table.load(__package__, "tables/a304_3_1_roof.toml")


@dataclass(frozen=True, slots=True)
class Rules:
    """Whose rules the prescriptive way is taken by: the row of the tables, and their name as printed.

    ``held`` is False for an edition that is not in the program, ``local`` True for a place's own rules; ``why`` says
    how the rules were picked.
    """

    id: str
    name: str
    why: str
    held: bool = True
    local: bool = False

    def limit(self, what: str) -> float | None:
        """One limit of the scope; None where these rules state none.

        Raises:
            OutsideLimits: when the rules are not held, or no public page gave the limit.
        """
        self._must_be_held()
        table = table_a301_2()
        if table.rows[self.id][table.columns.index(what)] == _NO_LIMIT:
            return None
        return table.read(self.id, what, "limit")

    def bracing(self, stories: int, heavy: bool) -> float:
        """Least bracing, per cent of the length of the wall line.

        Raises:
            OutsideLimits: for more stories than the table has, or where no public page gave the share.
        """
        self._must_be_held()
        return table_a304_3_1_bracing().read(
            f"{self.id}, {stories}", "stucco walls under tile over 6 psf" if heavy else "all others"
        )

    def level_floors(self) -> bool:
        """Whether the rules ask that all floors of a storey lie at one height: those of Los Angeles do (its standard
        plan, general notes B 3).
        """
        return self.id == "los-angeles"

    def _must_be_held(self) -> None:
        if not self.held:
            raise OutsideLimits(f"{self.name}: this edition is not in the program")


def rules_for(edition: str, place: str) -> Rules:
    """The rules of a place, where it prints its own; else those of the edition of the existing-building code.

    Args:
        edition: ``iebc-2021``, as the house's building code brings it with it.
        place: the jurisdiction in words, as the survey has it.
    """
    for id, (name, words) in _PLACES.items():
        if re.search(words, place.lower()):
            return Rules(id, f"the rules of {name}", f"the survey names {place} as the jurisdiction", local=True)
    name = f"IEBC {edition.rpartition('-')[2]} appendix chapter A3"
    why = "the existing-building code that the house's building code brings with it"
    return Rules(edition, name, why, edition in table_a301_2().rows)
