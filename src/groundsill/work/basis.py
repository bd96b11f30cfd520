"""The editions of every document that a house goes by: its building code and what was mixed in against it."""

from __future__ import annotations

from groundsill.standards.basis import Basis
from groundsill.work.document import House

__all__ = ["basis_of"]


def basis_of(house: House) -> Basis:
    """The basis of a house, ready to be asked for the edition of a family of documents.

    Raises:
        BadSurvey: when it names no known building code, or mixes in an edition of something else or without a reason.
    """
    return Basis(house.basis.code, {family: (o.edition, o.reason) for family, o in house.basis.overrides.items()})
