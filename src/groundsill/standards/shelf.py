"""Which documents stand in the program, by name alone: none is opened to answer."""

from __future__ import annotations

import importlib
import pkgutil
from functools import lru_cache

__all__ = ["HERE", "documents", "family_of", "package_of"]

HERE = "groundsill.standards"


def family_of(document: str) -> str:
    """A document without its edition: ``nds-2018`` is of the family ``nds``, ``aisi-s100-16`` of ``aisi-s100``."""
    head, _, edition = document.rpartition("-")
    return head if edition[:1].isdigit() else document


def package_of(document: str) -> str:
    """The package that holds a document: ``nds-2018`` lies in ``groundsill.standards.nds_2018``."""
    return f"{HERE}.{document.replace('-', '_')}"


@lru_cache(maxsize=1)
def documents() -> tuple[str, ...]:
    """The ids of every document in the program, in alphabetical order; none of them is imported."""
    found = pkgutil.iter_modules(importlib.import_module(HERE).__path__)
    return tuple(sorted(module.name.replace("_", "-") for module in found if module.ispkg))
