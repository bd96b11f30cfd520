"""Which edition of each document a house's lines are checked by: the basis asked, the standard's rules handed out."""

from __future__ import annotations

from functools import lru_cache

from groundsill.standards.basis import Basis
from groundsill.standards.sdpws import Sdpws, rules_of
from groundsill.work.document import House

__all__ = ["basis_of", "panel_standard"]


@lru_cache(maxsize=32)
def _basis(code: str, overrides: tuple[tuple[str, str, str], ...]) -> Basis:
    return Basis(code, {family: (edition, reason) for family, edition, reason in overrides})


def basis_of(house: House) -> Basis:
    """The basis of a house, with the editions mixed in against its building code."""
    mixed = ((family, o.edition, o.reason) for family, o in sorted(house.basis.overrides.items()))
    return _basis(house.basis.code, tuple(mixed))


def panel_standard(house: House) -> Sdpws:
    """The rules of the edition of SDPWS that a house goes by."""
    return rules_of(basis_of(house).edition("sdpws"))
