"""What a hold-down pulls on: its anchor in the old foundation."""

from __future__ import annotations

from groundsill.house.foundation import FoundationSegment
from groundsill.loadpath.bolts_counted import Anchor
from groundsill.loadpath.case import LineCase, cannot, checked, foundation_at
from groundsill.loadpath.chain import Link
from groundsill.loadpath.concrete import PLAIN_FORCE
from groundsill.loadpath.proof import accepted, by_tests
from groundsill.loadpath.stem import how_known, near_break, strength_of, to_end
from groundsill.loadpath.storeys_over import Bound
from groundsill.loadpath.turning import Turning
from groundsill.standards.aci318_19.scope import anchor_scope
from groundsill.standards.aci318_19.tension_breakout import seismic_tension, tension_breakout_of
from groundsill.standards.statics.walls import end_tension
from groundsill.work.pieces import HoldDownPiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import given, greatest, note, scale

__all__ = ["MASONRY", "MASONRY_CLAUSE", "anchor_of", "in_masonry", "why_not_counted"]

_CLAUSE = "ACI 318-19 17.6.2, 17.10.5"
_STEP = ("step",)
MASONRY = ("brick", "stone", "block")
MASONRY_CLAUSE = "TMS 402 chapter 9; IEBC 2021 A106.2"


def why_not_counted(case: LineCase, piece: HoldDownPiece) -> str | None:
    """Why a hold-down does not count where it stands: a crack, joint, gap or step in the foundation within 12 in."""
    return near_break(case, piece.station_in, _STEP)


def in_masonry(material: str) -> str:
    """Why nothing may be hung on a foundation of brick, stone or block."""
    return f"{material}: no tension is counted in it without anchor tests in that very wall"


def anchor_of(case: LineCase, turned: Turning, piece: HoldDownPiece, address: str, bound: Bound) -> Link:
    """The hold-down's anchor against breakout, for the overstrength tension; only indicated in old concrete.

    Cast into new concrete it stands within the chapter. Near a break in the foundation it holds nothing; in
    categories A and B the plain earthquake force is enough.
    """
    brace, way, title = turned.brace, turned.way, f"anchor of hold-down {piece.mark} in the foundation"
    under = foundation_at(case.reading, case.id, piece.station_in)
    if under is not None and under[1].material in MASONRY:
        reason = in_masonry(under[1].material)
        return cannot(address, title, "segment", brace.segment_id, clause=MASONRY_CLAUSE, reason=reason, direction=way)
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
            N_ua, words = _pull(case, turned, bound)
            capacity, extension = (0.0, "") if no_good else _held(case, piece, *under)
    except OutsideLimits as refused:
        reason = str(refused)
        return cannot(address, title, "segment", brace.segment_id, clause=_CLAUSE, reason=reason, direction=way)
    proof = by_tests(case, (_anchor(piece),), float(N_ua), _of_line(case), "anchor pull")
    rest = "bond is by the anchor's own report" if case.inner is None else "cast in; its head and rod are by its report"
    told = f"breakout {words}; {rest}"
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
        reason=bound.told(no_good or "; ".join(text for text in (told, proof.words) if text)),
        extension="" if proof.passes else extension,
        working=(f"line/{case.id}/demand",),
    )
    return accepted(case, link)


def _pull(case: LineCase, turned: Turning, bound: Bound) -> tuple[float, str]:
    """The tension the anchor must hold, at strength level, and for which force in words."""
    if bound.words:
        note(f"{bound.words}:")
    part, effects = case.taken_by(turned.brace), case.forces.rules.effects
    if case.lateral == "wind":
        force = scale(case.strength, part, symbol="W", label="wind on the segment, strength level")
        f_D, moment = effects.lrfd_dead_factor_5(), turned.moment(force, bound.arm_ft)
        pull = end_tension(moment, f_D, turned.w_D, turned.b, turned.x_D, turned.d)
        return greatest(pull, 0.0, symbol="N_ua", label="tension the anchor must hold"), "for the wind force"
    if case.forces.category in PLAIN_FORCE:
        whole = effects.horizontal_effect(case.forces.rho, case.strength)
        words = f"for the plain earthquake force: category {case.forces.category} (17.10.1)"
    else:
        whole, words = case.overstrength, "for the overstrength tension"
    force = scale(whole, part, symbol="V", label="force on the segment, strength level")
    f_D, moment = effects.lrfd_dead_factor_7(case.forces.S_DS), turned.moment(force, bound.arm_ft)
    pull = end_tension(moment, f_D, turned.w_D, turned.b, turned.x_D, turned.d)
    return greatest(pull, 0.0, symbol="N_ua", label="tension the anchor must hold"), words


def _held(case: LineCase, piece: HoldDownPiece, id: str, segment: FoundationSegment) -> tuple[float, str]:
    """Design breakout of the anchor, cut for earthquake in categories C to F, and the extension it rests on."""
    f_c = strength_of(case, id, segment)
    assert f_c is not None and piece.anchor_edge_in is not None
    installed = "post-installed" if case.inner is None else "cast in"
    cone = tension_breakout_of(
        given("h_ef", piece.anchor_embedment_in, "in", "embedment of the anchor"),
        f_c,
        c_left=given("c_end", to_end(case, piece.station_in), "in", "anchor to the end of the concrete along the line"),
        c_near=given("c_near", piece.anchor_edge_in, "in", "anchor's centre to the nearest face"),
        anchor=installed,
    )
    extension = anchor_scope(f_c, installed, how_known(case, id)).extension
    if case.inner is None:
        extension = extension or "an anchor set afterwards in old concrete, until it is tested in place"
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
