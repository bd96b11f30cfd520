"""Finding any published formula or table in the program, and working it out by name.

The packages beside this module are scanned, nothing is registered: an equation, a procedure or a table loader is found
because it stands in a module. A document is imported only when something of it is asked for (by its number) or when
everything is (a search). Works the same in a checkout, in a wheel and inside a zip.
"""

from __future__ import annotations

import difflib
import importlib
import pkgutil
import tomllib
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from inspect import isfunction, signature
from types import ModuleType
from typing import Any, Literal

from groundsill.standards.basis import Basis
from groundsill.standards.shelf import documents, family_of, package_of
from groundsill.standards.working_out import Input, work_out
from groundsill.working.equation import Equation, Procedure, Q
from groundsill.working.errors import UnknownFormula
from groundsill.working.table import Table

__all__ = ["Entry", "Erratum", "call", "entries", "errata", "find", "search"]


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing the program can show: an equation, a procedure or a table.

    ``document`` is the first half of the id (``nds-2018``); ``alias`` the trade's name of a procedure, or empty.
    """

    id: str
    kind: Literal["equation", "procedure", "table"]
    title: str
    document: str
    cite: str
    alias: str
    maker: Equation[Any] | Procedure[Any, Any] | Callable[[], Table]

    @property
    def arguments(self) -> tuple[tuple[str, Q], ...]:
        """Each argument's name and what it is; a table is asked for a row and a column, or for a value to read at."""
        if isinstance(self.maker, (Equation, Procedure)):
            return self.maker.arguments
        table = self.maker()
        return (("row", Q("", table.row_key, "row")), ("column", Q("", table.column_key, "column, or at = a value")))

    @property
    def specification(self) -> str:
        """The docstring: meaning, limits, source, worked example."""
        return (self.maker.__doc__ or "").strip()


@dataclass(frozen=True, slots=True)
class Erratum:
    """A place where what a document prints and what the program uses differ, and why."""

    document: str
    place: str
    printed: str
    used: str
    why: str


def entries(document: str | None = None) -> tuple[Entry, ...]:
    """Every equation, procedure and table of one document, or of all.

    Raises:
        UnknownFormula: when there is no such document; the message lists those there are.
    """
    if document is None:
        return tuple(entry for each in documents() for entry in _entries_of(each))
    if document not in documents():
        raise UnknownFormula(f"{document} is not in this program; it has {', '.join(documents())}")
    return _entries_of(document)


@lru_cache(maxsize=64)
def _entries_of(document: str) -> tuple[Entry, ...]:
    package = importlib.import_module(package_of(document))
    modules = [package]
    for found in sorted(pkgutil.walk_packages(package.__path__, f"{package.__name__}."), key=lambda m: m.name):
        modules.append(importlib.import_module(found.name))
    return tuple(entry for module in modules for entry in _entries_in(module, document))


def _entries_in(module: ModuleType, document: str) -> Iterable[Entry]:
    for name, thing in vars(module).items():
        if name.startswith("_") or getattr(thing, "__module__", None) != module.__name__:
            continue
        if isinstance(thing, Equation):
            yield Entry(thing.id, "equation", thing.title, document, thing.cite, "", thing)
        elif isinstance(thing, Procedure):
            yield Entry(thing.id, "procedure", thing.title, document, thing.cite, thing.alias, thing)
        elif isfunction(thing) and name.startswith("table_") and not signature(thing).parameters:
            table = thing()
            yield Entry(f"{document}/{name}", "table", table.title, document, table.cite, "", thing)


def find(name: str, basis: Basis | None = None) -> Entry:
    """One formula or table by its id, its trade alias, or words that fit only one.

    An alias (``nds.sill-bolt``) belongs to a rule, not to an edition: the basis says which edition's rule is meant, and
    likewise for words that fit it in several editions. Without a basis the program's default building code decides.

    Raises:
        UnknownFormula: when nothing or more than one thing is meant; the message names the nearest.
    """
    name = name.strip()
    document = name.partition("/")[0]
    if "/" in name and document in documents():
        for entry in _entries_of(document):
            if entry.id == name:
                return entry
    everything = entries()
    exact = [entry for entry in everything if entry.id == name]
    aliased = [entry for entry in everything if entry.alias and entry.alias == name]
    if exact:
        return exact[0]
    if aliased:
        return _by_basis(name, aliased, basis)
    matches = search(name)
    meant = _of_one_edition(matches, basis or Basis())
    if len(meant) == 1:
        return meant[0]
    raise UnknownFormula(_not_found(name, matches, everything))


def _of_one_edition(found: tuple[Entry, ...], basis: Basis) -> tuple[Entry, ...]:
    """Where words fit several editions of one document, only what stands in the edition the building code goes by."""
    editions: dict[str, set[str]] = {}
    for entry in found:
        editions.setdefault(family_of(entry.document), set()).add(entry.document)
    chosen = {family: basis.edition(family) for family in editions}
    return tuple(
        entry
        for entry in found
        if entry.document == chosen[family_of(entry.document)]
        or chosen[family_of(entry.document)] not in editions[family_of(entry.document)]
    )


def _by_basis(alias: str, aliased: list[Entry], basis: Basis | None) -> Entry:
    if basis is None and len(aliased) > 1:  # a name alone means the edition of the program's own default code
        meant = _of_one_edition(tuple(aliased), Basis())
        aliased = list(meant)
    if basis is not None:
        for entry in aliased:
            if basis.edition(family_of(entry.document)) == entry.document:
                return entry
        wanted = sorted({basis.edition(family_of(entry.document)) for entry in aliased})
        there = ", ".join(entry.id for entry in aliased)
        raise UnknownFormula(
            f"{alias}: {basis.code} goes by {' or '.join(wanted)}, which is not in this program; it has {there}"
        )
    if len(aliased) > 1:
        there = ", ".join(entry.id for entry in aliased)
        raise UnknownFormula(f"{alias} is in more than one edition ({there}); name one, or give the basis")
    return aliased[0]


def _not_found(name: str, matches: tuple[Entry, ...], everything: tuple[Entry, ...]) -> str:
    if matches:
        shown = ", ".join(entry.alias or entry.id for entry in matches[:12])
        more = f" and {len(matches) - 12} more" if len(matches) > 12 else ""
        return f"{name!r} fits {len(matches)} formulas: {shown}{more}"
    names = {n.lower(): n for entry in everything for n in (entry.id, entry.alias) if n}
    close = difflib.get_close_matches(name.lower(), names, n=3, cutoff=0.5)
    hint = f"; did you mean {', '.join(names[c] for c in close)}?" if close else ""
    return f"no formula or table is called {name!r}{hint}"


def search(text: str) -> tuple[Entry, ...]:
    """Every entry whose id, alias, title or citation holds all the words, those with the words in their title first.

    Among equals the editions of the default building code come before older and newer ones.
    """
    words = text.lower().split()
    if not words:
        return entries()
    found = []
    for entry in entries():
        title = entry.title.lower()
        whole = f"{entry.id} {entry.alias} {title} {entry.cite}".lower()
        if all(word in whole for word in words):
            found.append((sum(word not in title for word in words), entry.document in _other_editions(), entry))
    return tuple(entry for _, _, entry in sorted(found, key=lambda each: each[:2]))


@lru_cache(maxsize=1)
def _other_editions() -> frozenset[str]:
    """Documents of which the program holds the edition that the default building code goes by, too."""
    usual = Basis()
    chosen = {document: usual.edition(family_of(document)) for document in documents()}
    return frozenset(d for d, edition in chosen.items() if edition != d and edition in documents())


@lru_cache(maxsize=64)
def errata(document: str) -> tuple[Erratum, ...]:
    """What is known to be misprinted or contradictory in a document.

    Raises:
        UnknownFormula: when there is no such document.
    """
    if document not in documents():
        raise UnknownFormula(f"{document} is not in this program; it has {', '.join(documents())}")
    path = files(package_of(document)) / "errata.toml"
    if not path.is_file():
        return ()
    lists = [value for value in tomllib.loads(path.read_text("utf-8")).values() if isinstance(value, list)]
    return tuple(
        Erratum(document, str(e["place"]), str(e["printed"]), str(e["used"]), str(e["why"]))
        for each in lists
        for e in each
    )


def call(
    formula: Entry | Equation[Any] | Procedure[Any, Any] | Table | str,
    inputs: Mapping[str, Input],
    basis: Basis | None = None,
) -> Any:
    """Work out a formula, or read a table, given itself or its name; see :mod:`groundsill.standards.working_out`.

    Raises:
        BadSurvey: one fault for each unknown, missing or unreadable argument.
        UnknownFormula: when a name fits no formula.
        OutsideLimits: when the formula's own limits are not kept.
    """
    if isinstance(formula, str):
        formula = find(formula, basis)
    if isinstance(formula, Entry):
        maker = formula.maker
        return work_out(maker if isinstance(maker, (Equation, Procedure)) else maker(), inputs)
    return work_out(formula, inputs)
