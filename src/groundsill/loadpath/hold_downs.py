"""What a hold-down pulls on: its anchor in the old foundation, and when nothing may be hung there."""

from __future__ import annotations

from collections.abc import Sequence

from groundsill.house.foundation import FoundationSegment
from groundsill.loadpath.bolts_counted import Anchor
from groundsill.loadpath.case import LineCase, cannot, checked, foundation_at
from groundsill.loadpath.chain import Link
from groundsill.loadpath.hold_down_pull import pull_on
from groundsill.loadpath.hold_down_strength import held_by, share_of
from groundsill.loadpath.proof import accepted, by_tests
from groundsill.loadpath.stem import near_break
from groundsill.loadpath.storeys_over import Bound
from groundsill.loadpath.turning import Turning
from groundsill.work.pieces import HoldDownPiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section

__all__ = ["MASONRY", "MASONRY_CLAUSE", "anchor_of", "in_masonry", "why_not_counted"]

_CLAUSE = "ACI 318-19 17.6, 17.10.5"
_STEP = ("step",)
MASONRY = ("brick", "stone", "block")
MASONRY_CLAUSE = "TMS 402 chapter 9; IEBC 2021 A106.2"


def why_not_counted(case: LineCase, piece: HoldDownPiece) -> str | None:
    """Why a hold-down does not count where it stands: a crack, joint, gap or step in the foundation within 12 in."""
    return near_break(case, piece.station_in, _STEP)


def in_masonry(material: str) -> str:
    """Why nothing may be hung on a foundation of brick, stone or block."""
    return f"{material}: no tension is counted in it without anchor tests in that very wall"


def anchor_of(
    case: LineCase, turned: Turning, piece: HoldDownPiece, beside: Sequence[HoldDownPiece], address: str, bound: Bound
) -> Link:
    """The hold-down's anchor in tension, by the option picked for the force; only indicated in old concrete.

    ``beside`` are the hold-downs that count at its end, itself among them. Near a break in the foundation it holds
    nothing. Cast into new concrete it stands within the chapter.
    """
    brace, way, title = turned.brace, turned.way, f"anchor of hold-down {piece.mark} in the foundation"
    under = foundation_at(case.reading, case.id, piece.station_in)
    no_good = why_not_counted(case, piece)
    refused = _refused(under, piece, no_good)
    if refused is not None:
        clause, reason = refused
        return cannot(address, title, "segment", brace.segment_id, clause=clause, reason=reason, direction=way)
    assert under is not None
    try:
        with section(address):
            held = None if no_good else held_by(case, piece, beside, *under)
            N_ua, words = pull_on(case, turned, piece, share_of(piece, beside), held, bound)
    except OutsideLimits as outside:
        reason = str(outside)
        return cannot(address, title, "segment", brace.segment_id, clause=_CLAUSE, reason=reason, direction=way)
    proof = by_tests(case, (_anchor(piece),), float(N_ua), _of_line(case), "anchor pull")
    told = no_good or ""
    if held is not None:
        told = "; ".join(text for text in (f"{held.way} {words}", held.words, proof.beside(N_ua, held.design)) if text)
    link = checked(
        address,
        title,
        "segment",
        brace.segment_id,
        level="strength",
        unit="lb",
        demand=N_ua,
        capacity=0.0 if held is None else held.design,
        clause=_CLAUSE,
        direction=way,
        reason=bound.told(told),
        extension="" if proof.passes or held is None else held.extension,
        working=(f"line/{case.id}/demand",),
    )
    return accepted(case, link)


def _refused(
    under: tuple[str, FoundationSegment] | None, piece: HoldDownPiece, no_good: str | None
) -> tuple[str, str] | None:
    """The clause and reason when the anchor cannot be checked."""
    if under is not None and under[1].material in MASONRY:
        return MASONRY_CLAUSE, in_masonry(under[1].material)
    if under is None or under[1].material != "poured concrete":
        return _CLAUSE, "no poured concrete was surveyed under it"
    if no_good is None and piece.anchor_edge_in is None:
        return _CLAUSE, "the distance from its anchor to the face of the concrete is not given"
    if no_good is None and under[1].strength_psi.value is None:
        return _CLAUSE, "the strength of the concrete is not known"
    return None


def _anchor(piece: HoldDownPiece) -> Anchor:
    """The hold-down's anchor as tests in place know it: new, and set in with adhesive or cast in."""
    depth, edge = piece.anchor_embedment_in, piece.anchor_edge_in
    kind = "adhesive" if piece.anchor == "adhesive" else "cast-in"
    return Anchor(
        piece.mark, piece.mark, piece.station_in, piece.anchor_diameter_in, depth, edge, kind, True, piece.report
    )


def _of_line(case: LineCase) -> int:
    return sum(1 for _, piece in case.pieces if isinstance(piece, HoldDownPiece))
