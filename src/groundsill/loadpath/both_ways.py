"""A sill bolt that is a hold-down's anchor as well: tension and shear in one rod (ACI 318-19 17.8, 17.10.7).

A bolt and a hold-down at one station of a line can only be the same rod. Its shear is that of the weakest bolt of the
sill piece, on the careful side. Where no bolt stands at a hold-down its anchor takes no shear: the sill bolts take it
all.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from groundsill.loadpath.case import LineCase, cannot, checked, sill_at
from groundsill.loadpath.chain import Link, Stage
from groundsill.standards.aci318_19.strength_factors import interaction
from groundsill.work.pieces import BoltPiece, HoldDownPiece
from groundsill.working.sheet import section
from groundsill.working.steps import given

__all__ = ["with_both_ways"]

_SAME_ROD_IN = 1.0
_CLAUSE = "ACI 318-19 17.8.3, 17.10.7"


def with_both_ways(case: LineCase, stages: Sequence[Stage]) -> tuple[Stage, ...]:
    """The stages of a line, the bolts' with a further link for each rod that takes tension and shear."""
    links = [link for stage in stages for link in stage.links]
    found = [
        _one(case, piece, sheared, pulled)
        for piece in _shared(case)
        if (sheared := _sheared(case, piece, links)) is not None
        for pulled in links
        if pulled.address.endswith(f"-anchor-{piece.mark}") and pulled.status != "does not apply"
    ]
    return tuple(replace(s, links=(*s.links, *found)) if s.key == "bolts-concrete" else s for s in stages)


def _shared(case: LineCase) -> list[HoldDownPiece]:
    """The hold-downs at whose station a sill bolt stands."""
    bolts = [b.station_in for _, b in case.reading.on_line(case.reading.house.survey.underfloor.bolts, case.id)]
    bolts += [piece.station_in for _, piece in case.pieces if isinstance(piece, BoltPiece)]
    return [
        piece
        for _, piece in case.pieces
        if isinstance(piece, HoldDownPiece) and any(abs(piece.station_in - at) < _SAME_ROD_IN for at in bolts)
    ]


def _sheared(case: LineCase, piece: HoldDownPiece, links: Sequence[Link]) -> Link | None:
    """The check of the bolts, in the foundation, of the sill piece that a hold-down's anchor goes through."""
    sill = sill_at(case, piece.station_in)
    address = None if sill is None else f"line/{case.id}/bolts-concrete/{sill[0]}/both"
    return next((link for link in links if link.address == address and link.status != "does not apply"), None)


def _one(case: LineCase, piece: HoldDownPiece, sheared: Link, pulled: Link) -> Link:
    way = pulled.direction
    address = f"line/{case.id}/bolts-concrete/{sheared.scope_id}-and-{piece.mark}/{way}"
    title = f"hold-down {piece.mark}'s anchor as a sill bolt: tension and shear together"
    marks = (*sheared.marks, *pulled.marks)
    if sheared.ratio is None or pulled.ratio is None or sheared.level != "strength":
        reason = "shear and tension of the one rod are not both checked in the concrete"
        return cannot(
            address, title, "sill", sheared.scope_id, clause=_CLAUSE, reason=reason, direction=way, marks=marks
        )
    with section(address):
        r_N = given("r_N", pulled.ratio, "1", "tension over its design strength", pulled.marks)
        r_V = given(
            "r_V", sheared.ratio, "1", "shear over its design strength, of the piece's weakest bolt", sheared.marks
        )
        used = interaction(r_N, r_V)
    extension = "; ".join(dict.fromkeys(text for text in (pulled.extension, sheared.extension) if text))
    return checked(
        address,
        title,
        "sill",
        sheared.scope_id,
        level="strength",
        unit="1",
        demand=used,
        capacity=1.0,
        clause=_CLAUSE,
        reason=f"one rod: tension {pulled.ratio:.2f} and shear {sheared.ratio:.2f} of its strength",
        extension=extension,
        direction=way,
        marks=marks,
        working=(pulled.address, sheared.address),
    )
