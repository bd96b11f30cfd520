"""Which edition of each document a house's lines are checked by: the basis asked, the standard's rules handed out."""

from __future__ import annotations

from groundsill.standards.sdpws import Sdpws, rules_of
from groundsill.work.basis import basis_of
from groundsill.work.document import House

__all__ = ["panel_standard"]


def panel_standard(house: House) -> Sdpws:
    """The rules of the edition of SDPWS that a house goes by."""
    return rules_of(basis_of(house).edition("sdpws"))
