"""The basis of a design: one building code and year, and the edition of every other document that comes with it.

In: a code (``ibc-2021``) and the editions somebody chose to mix in, each with a printed reason. Out: the edition of a
family (``nds`` is ``nds-2018``). Which editions a code adopts is data, ``building_codes.toml``, with how it is known.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from importlib.resources import files

from groundsill.standards.shelf import documents, family_of
from groundsill.working.errors import BadSurvey, Fault, UnknownFormula

__all__ = ["Adoption", "Basis", "adoptions", "building_codes"]


@dataclass(frozen=True, slots=True)
class Adoption:
    """One edition that a building code brings with it, and how we know."""

    code: str
    family: str
    edition: str
    how: str
    where: str


@lru_cache(maxsize=1)
def _all_adoptions() -> tuple[Adoption, ...]:
    data = tomllib.loads((files(__package__) / "building_codes.toml").read_text("utf-8"))
    sources = data["sources"]
    found = []
    for code, editions in data["codes"].items():
        for family, (edition, source) in editions.items():
            found.append(Adoption(code, family, edition, sources[source]["how"], sources[source]["where"]))
    return tuple(found)


@lru_cache(maxsize=1)
def building_codes() -> tuple[str, ...]:
    """The building codes whose editions are known here."""
    return tuple(dict.fromkeys(adoption.code for adoption in _all_adoptions()))


@lru_cache(maxsize=16)
def adoptions(code: str) -> tuple[Adoption, ...]:
    """Every edition a building code brings with it, with how each is known."""
    return tuple(adoption for adoption in _all_adoptions() if adoption.code == code)


@lru_cache(maxsize=1)
def _families() -> frozenset[str]:
    return frozenset(adoption.family for adoption in _all_adoptions())


@dataclass(frozen=True, slots=True)
class Basis:
    """A building code and the editions mixed in against it.

    Attributes:
        code: ``ibc-2018``, ``ibc-2021`` or ``ibc-2024``.
        overrides: for a family (``sdpws``) the edition to use instead and the reason, which is printed.

    Raises:
        BadSurvey: for an unknown code or family, an edition of another family, or an override without a reason.
    """

    code: str = "ibc-2021"
    overrides: Mapping[str, tuple[str, str]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        faults = []
        if self.code not in building_codes():
            faults.append(Fault("basis.code", repr(self.code), f"it is one of {', '.join(building_codes())}"))
        known = _families()
        for family, (edition, reason) in self.overrides.items():
            path = f"basis.overrides.{family}"
            if family not in known:
                faults.append(Fault(path, repr(edition), f"the families are {', '.join(sorted(known))}"))
            elif family_of(edition) != family:
                faults.append(Fault(path, repr(edition), f"it must be an edition of {family}, like {family}-..."))
            if not reason.strip():
                faults.append(Fault(f"{path}.reason", "nothing", "mixing editions needs a reason, which is printed"))
        if faults:
            raise BadSurvey(tuple(faults))

    def edition(self, family: str) -> str:
        """The edition of a family under this basis (whether or not the program holds it); a document that has no
        editions, such as common practice, is its own.
        """
        if family in self.overrides:
            return self.overrides[family][0]
        for adoption in adoptions(self.code):
            if adoption.family == family:
                return adoption.edition
        return family

    def document(self, family: str) -> str:
        """The edition of a family, held by this program.

        Raises:
            UnknownFormula: when the edition is not in the program; the message says what can be done.
        """
        edition = self.edition(family)
        if edition not in documents():
            held = [document for document in documents() if family_of(document) == family]
            way = (
                f"override {family} with {' or '.join(held)} and a reason"
                if held
                else f"no edition of {family} is held"
            )
            raise UnknownFormula(f"{edition}, which {self.code} goes by, is not in this program; {way}")
        return edition

    def reasons(self) -> tuple[str, ...]:
        """One sentence for each edition mixed in against the code, to be printed."""
        return tuple(
            f"{edition} is used instead of {Basis(self.code).edition(family)}: {reason.strip()}"
            for family, (edition, reason) in sorted(self.overrides.items())
        )
