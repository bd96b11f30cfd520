"""IEBC 2021 appendix chapter A3: old houses on weak foundations, as far as it was read.

The rules that are conditions, not figures, are data: each in our own words with its clause and address, for findings
and papers to cite. The figures are tables. The prescriptive bracing table itself is not here yet: it was recalled only.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files

from groundsill.standards.iebc_2021 import SOURCE
from groundsill.working.errors import UnknownFormula
from groundsill.working.table import Table

__all__ = ["Provision", "provision", "provisions", "table_a304_3_1_side"]


def table_a304_3_1_side() -> Table:
    """Least capacity, along the wall, of a side anchorage where the sill cannot be drilled through."""
    return Table.load(__package__, "tables/a304_3_1_side.toml")


@dataclass(frozen=True, slots=True)
class Provision:
    """One rule in our own words: ``key`` to cite it by, clause, text, exceptions, and how it is known."""

    key: str
    clause: str
    says: str
    exceptions: tuple[str, ...]
    how: str
    where: str

    @property
    def cite(self) -> str:
        """Document and clause, as printed."""
        return SOURCE.cite(self.clause)


@lru_cache(maxsize=1)
def provisions() -> tuple[Provision, ...]:
    """Every rule of the chapter that is held, in the order of its clauses."""
    data = tomllib.loads((files(__package__) / "provisions.toml").read_text("utf-8"))
    found = []
    for each in data["provision"]:
        source = data["sources"][each["source"]]
        exceptions = tuple(str(text) for text in each.get("exceptions", ()))
        found.append(Provision(each["key"], each["clause"], each["says"], exceptions, source["how"], source["where"]))
    return tuple(found)


def provision(key: str) -> Provision:
    """One rule by its key.

    Raises:
        UnknownFormula: when there is none; the message lists the keys.
    """
    for each in provisions():
        if each.key == key:
            return each
    raise UnknownFormula(f"{SOURCE.short} has no rule {key!r} here; it has {', '.join(p.key for p in provisions())}")
