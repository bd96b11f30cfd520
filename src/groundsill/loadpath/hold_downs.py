"""What a hold-down pulls on: its anchor in the old foundation, and the footing that the pull would lift."""

from __future__ import annotations

from groundsill.loadpath.case import Brace, LineCase, cannot, checked, foundation_at
from groundsill.loadpath.chain import Link
from groundsill.standards.aci318_19.scope import anchor_scope
from groundsill.standards.aci318_19.tension_breakout import seismic_tension, tension_breakout_of
from groundsill.standards.asce7_16.effects import lrfd_dead_factor_7
from groundsill.standards.statics.walls import end_tension
from groundsill.work.pieces import HoldDownPiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import given, greatest, scale

__all__ = ["anchor_of", "lifted_by"]

_CLAUSE = "ACI 318-19 17.6.2, 17.10.5"


def anchor_of(
    case: LineCase, brace: Brace, piece: HoldDownPiece, address: str, *, h: float, b: float, d: float, w_D: float
) -> Link:
    """The hold-down's anchor against breakout, for the overstrength tension; only indicated in old concrete."""
    title = f"anchor of hold-down {piece.mark} in the foundation"
    under = foundation_at(case.reading, case.id, piece.station_in)
    if under is None or under[1].material != "poured concrete":
        reason = "no poured concrete was surveyed under it"
        return cannot(address, title, "segment", brace.segment_id, clause=_CLAUSE, reason=reason)
    id, segment = under
    if piece.anchor_edge_in is None:
        reason = "the distance from its anchor to the face of the concrete is not given"
        return cannot(address, title, "segment", brace.segment_id, clause=_CLAUSE, reason=reason)
    try:
        with section(address):
            label = f"concrete of {segment.mark}"
            path = f"survey.foundation.segments.{id}.strength_psi"
            f_c = case.reading.number(path, segment.strength_psi, "f'_c", "psi", label)
            if f_c is None:
                reason = "the strength of the concrete is not known"
                return cannot(address, title, "segment", brace.segment_id, clause=_CLAUSE, reason=reason)
            part = given("β", brace.share, "1", f"share of the line's force taken by {brace.name}")
            force = scale(case.overstrength, part, symbol="V", label="overstrength force on the segment")
            pull = end_tension(force, h, lrfd_dead_factor_7(case.forces.S_DS), w_D, b, d)
            N_ua = greatest(pull, 0.0, symbol="N_ua", label="tension the anchor must hold")
            cone = tension_breakout_of(
                given("h_ef", piece.anchor_embedment_in, "in", "embedment of the anchor"),
                f_c,
                c_near=given("c_near", piece.anchor_edge_in, "in", "anchor's centre to the nearest face"),
                anchor="post-installed",
            )
            capacity = seismic_tension(cone.design)
            extension = anchor_scope(f_c, "post-installed", "assumed").extension
    except OutsideLimits as refused:
        return cannot(address, title, "segment", brace.segment_id, clause=_CLAUSE, reason=str(refused))
    return checked(
        address,
        title,
        "segment",
        brace.segment_id,
        level="strength",
        unit="lb",
        demand=N_ua,
        capacity=capacity,
        clause=_CLAUSE,
        reason="breakout for the overstrength tension; bond is by the anchor's own report",
        extension=extension or "an anchor set afterwards in old concrete, until it is tested in place",
        working=(f"line/{case.id}/demand",),
    )


def lifted_by(case: LineCase, brace: Brace, piece: HoldDownPiece, address: str, pull: float) -> Link:
    """The footing that the pull would lift: nothing to check without a pull, else its section is not known enough."""
    title = f"footing lifted by hold-down {piece.mark}"
    if float(pull) <= 0:
        reason = "dead load on the wall outweighs the pull"
        return cannot(address, title, "segment", brace.segment_id, clause="", reason=reason, applies=False)
    return cannot(
        address,
        title,
        "segment",
        brace.segment_id,
        clause="ACI 318-19 14.5 and statics",
        reason=f"{float(pull):,.0f} lb must be found in footing that the old concrete can lift as plain concrete",
    )
