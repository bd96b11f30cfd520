"""What a hold-down pulls on: its anchor in the old foundation, and the footing that the pull would lift."""

from __future__ import annotations

from typing import Literal

from groundsill.house.foundation import FoundationSegment
from groundsill.loadpath.bolts_counted import Anchor
from groundsill.loadpath.case import Brace, LineCase, cannot, checked, foundation_at, working_of
from groundsill.loadpath.chain import Link
from groundsill.loadpath.concrete import PLAIN_FORCE
from groundsill.loadpath.proof import accepted, by_tests
from groundsill.loadpath.stem import cored_strength, near_break, strength_of, to_end
from groundsill.standards.aci318_19.scope import anchor_scope
from groundsill.standards.aci318_19.tension_breakout import seismic_tension, tension_breakout_of
from groundsill.standards.statics.walls import end_tension
from groundsill.work.pieces import HoldDownPiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import given, greatest, scale
from groundsill.working.value import marks_of

__all__ = ["Way", "anchor_of", "lifted_by", "why_not_counted"]

_CLAUSE = "ACI 318-19 17.6.2, 17.10.5"
_STEP = ("step",)

Way = Literal["+", "-"]


def why_not_counted(case: LineCase, piece: HoldDownPiece) -> str | None:
    """Why a hold-down does not count where it stands: a crack, joint, gap or step in the foundation within 12 in."""
    return near_break(case, piece.station_in, _STEP)


def anchor_of(
    case: LineCase, brace: Brace, piece: HoldDownPiece, address: str, way: Way, *,
    h: float, b: float, d: float, w_D: float,
) -> Link:  # fmt: skip
    """The hold-down's anchor against breakout, for the overstrength tension; only indicated in old concrete.

    Near a break in the foundation it holds nothing; in categories A and B the plain earthquake force is enough.
    """
    title = f"anchor of hold-down {piece.mark} in the foundation"
    under = foundation_at(case.reading, case.id, piece.station_in)
    if under is None or under[1].material != "poured concrete":
        reason = "no poured concrete was surveyed under it"
        return cannot(address, title, "segment", brace.segment_id, clause=_CLAUSE, reason=reason, direction=way)
    no_good = why_not_counted(case, piece)
    if no_good is None and piece.anchor_edge_in is None:
        reason = "the distance from its anchor to the face of the concrete is not given"
        return cannot(address, title, "segment", brace.segment_id, clause=_CLAUSE, reason=reason, direction=way)
    if no_good is None and under[1].strength_psi.value is None:
        reason = "the strength of the concrete is not known"
        return cannot(address, title, "segment", brace.segment_id, clause=_CLAUSE, reason=reason, direction=way)
    try:
        with section(address):
            N_ua, words = _pull(case, brace, h, b, d, w_D)
            capacity, extension = (0.0, "") if no_good else _held(case, piece, *under)
    except OutsideLimits as refused:
        reason = str(refused)
        return cannot(address, title, "segment", brace.segment_id, clause=_CLAUSE, reason=reason, direction=way)
    proof = by_tests(case, (_anchor(piece),), float(N_ua), _of_line(case), "anchor pull")
    told = f"breakout {words}; bond is by the anchor's own report"
    link = checked(
        address,
        title,
        "segment",
        brace.segment_id,
        level="strength",
        unit="lb",
        demand=N_ua,
        capacity=capacity,
        clause=_CLAUSE,
        direction=way,
        reason=no_good or "; ".join(text for text in (told, proof.words) if text),
        extension="" if proof.passes else extension,
        working=(f"line/{case.id}/demand",),
    )
    return accepted(case, link)


def _pull(case: LineCase, brace: Brace, h: float, b: float, d: float, w_D: float) -> tuple[float, str]:
    """The tension the anchor must hold, at strength level, and for which force in words."""
    part, effects = case.taken_by(brace), case.forces.rules.effects
    if case.lateral == "wind":
        force = scale(case.strength, part, symbol="W", label="wind on the segment, strength level")
        pull = end_tension(force, h, effects.lrfd_dead_factor_5(), w_D, b, d)
        return greatest(pull, 0.0, symbol="N_ua", label="tension the anchor must hold"), "for the wind force"
    if case.forces.category in PLAIN_FORCE:
        whole = effects.horizontal_effect(case.forces.rho, case.strength)
        words = f"for the plain earthquake force: category {case.forces.category} (17.10.1)"
    else:
        whole, words = case.overstrength, "for the overstrength tension"
    force = scale(whole, part, symbol="V", label="force on the segment, strength level")
    pull = end_tension(force, h, effects.lrfd_dead_factor_7(case.forces.S_DS), w_D, b, d)
    return greatest(pull, 0.0, symbol="N_ua", label="tension the anchor must hold"), words


def _held(case: LineCase, piece: HoldDownPiece, id: str, segment: FoundationSegment) -> tuple[float, str]:
    """Design breakout of the anchor, cut for earthquake in categories C to F, and the extension it rests on."""
    f_c = strength_of(case, id, segment)
    assert f_c is not None and piece.anchor_edge_in is not None
    cone = tension_breakout_of(
        given("h_ef", piece.anchor_embedment_in, "in", "embedment of the anchor"),
        f_c,
        c_left=given("c_end", to_end(case, piece.station_in), "in", "anchor to the end of the concrete along the line"),
        c_near=given("c_near", piece.anchor_edge_in, "in", "anchor's centre to the nearest face"),
        anchor="post-installed",
    )
    strength = "assumed" if cored_strength(case, id) is None else "tested"
    scope = anchor_scope(f_c, "post-installed", strength)
    extension = scope.extension or "an anchor set afterwards in old concrete, until it is tested in place"
    if case.lateral == "wind" or case.forces.category in PLAIN_FORCE:
        return cone.design, extension
    return seismic_tension(cone.design), extension


def _anchor(piece: HoldDownPiece) -> Anchor:
    """The hold-down's anchor as tests in place know it: new, and set in with adhesive."""
    depth, edge = piece.anchor_embedment_in, piece.anchor_edge_in
    return Anchor(
        piece.mark, piece.mark, piece.station_in, piece.anchor_diameter_in, depth, edge, "adhesive", True, piece.report
    )


def _of_line(case: LineCase) -> int:
    return sum(1 for _, piece in case.pieces if isinstance(piece, HoldDownPiece))


def lifted_by(case: LineCase, brace: Brace, piece: HoldDownPiece, address: str, way: Way, pull: float) -> Link:
    """The footing that the pull would lift: nothing to check without a pull, else its section is not known enough."""
    title = f"footing lifted by hold-down {piece.mark}"
    pulls = float(pull) > 0
    return cannot(
        address,
        title,
        "segment",
        brace.segment_id,
        clause="ACI 318-19 14.5 and statics" if pulls else "",
        reason=f"{float(pull):,.0f} lb must be found in footing that the old concrete can lift as plain concrete"
        if pulls
        else "dead load on the wall outweighs the pull",
        applies=pulls,
        direction=way,
        marks=marks_of((pull,)),
        working=(address.removesuffix(f"-footing-{piece.mark}"), *working_of(case, brace)),
    )
