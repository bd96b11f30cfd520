"""The anchors of side plates in the face of the stem: breakout along its top edge and up toward it, pryout, steel.

The edge that breaks is the stem's *top*, so the edge distance is how far below the top the anchors stand. Where the
anchors hold the couple that turns the plate, the end one is pushed up toward the top as well as along it; no rule of
ACI 318 joins the two, so their shares of strength are added, on the careful side.
"""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.house.foundation import FoundationSegment
from groundsill.house.underfloor import SillPiece
from groundsill.loadpath.adhesives import apart, glue_of
from groundsill.loadpath.bolts_counted import Anchor
from groundsill.loadpath.case import LineCase, Share, cannot, checked, foundation_at
from groundsill.loadpath.chain import Link
from groundsill.loadpath.concrete import expected_in_concrete, force_on_one, steel_in_shear
from groundsill.loadpath.ends import to_end
from groundsill.loadpath.proof import NO_TEST, Proof, by_tests
from groundsill.loadpath.prying import PLAIN_FORCE, SPLITTING
from groundsill.loadpath.side_plates import TRIAL_LB, Plated, end_anchor, half_row
from groundsill.loadpath.stem import cored_strength, nominal_at_mean, strength_of
from groundsill.standards.aci318_19.bond import bond_of, bond_reach
from groundsill.standards.aci318_19.pryout import pryout_of
from groundsill.standards.aci318_19.scope import anchor_scope
from groundsill.standards.aci318_19.shear_breakout import breakout_parallel_to_edge, breakout_toward_edge
from groundsill.standards.statics.fasteners import EndFastener
from groundsill.work.pieces import SideplatePiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import add, divide, given, least, note, scale
from groundsill.working.value import marks_of

__all__ = ["anchors_of", "lever_of", "plates_link"]

_CLAUSE = "ACI 318-19 17.7.2, 17.7.3, 17.10.6"
_NOT_GIVEN = "the diameter and embedment of the anchors of a side plate are not given (its report names them)"
_NO_LEVER = "how high the screws of a side plate stand is not given, nor then the couple that its anchors hold"


@dataclass(frozen=True, slots=True)
class _Held:
    """One plate in the concrete, lb on the plate: design and nominal strength, which way governs, any extension.

    ``on_anchor`` is the force on its end anchor for a pound on the plate.
    """

    design: float
    nominal: float
    way: str
    extension: str
    on_anchor: float


def plates_link(
    case: LineCase, id: str, sill: SillPiece, plated: Plated, share: Share, of_line: int
) -> tuple[Link, Proof]:
    """The weakest side plate of a sill piece in the stem, and what tests in place prove of its anchors."""
    address, title = f"line/{case.id}/bolts-concrete/{id}/both", f"side plates of sill {sill.mark or id} in the stem"
    working = f"line/{case.id}/demand", f"line/{case.id}/sill/{id}"
    refused = _why_not(case, plated)
    if refused is not None:
        return cannot(address, title, "sill", id, clause=refused[0], reason=refused[1], working=working), NO_TEST
    count = len(plated.plates)
    try:
        with section(address):
            every = [_in_stem(case, key, piece) for key, piece in plated.plates]
            weakest = min(every, key=lambda held: float(held.design))
            demand, words = force_on_one(case, count, frozenset(), share, plated.wood, "side plate")
    except OutsideLimits as outside:
        return cannot(address, title, "sill", id, clause=_CLAUSE, reason=str(outside), working=working), NO_TEST
    on_one = float(demand) * max(held.on_anchor for held in every)
    proof = by_tests(case, anchors_of(plated), on_one, of_line)
    extension = "; ".join(dict.fromkeys(held.extension for held in every if held.extension))
    link = checked(
        address,
        title,
        "sill",
        id,
        level="strength",
        unit="lb a side plate",
        demand=demand,
        capacity=weakest.design,
        clause=_CLAUSE,
        reason="; ".join(text for text in (weakest.way, words, proof.beside(demand, weakest.design)) if text),
        extension="" if proof.passes else extension,
        expected=expected_in_concrete(weakest.nominal, weakest.way, count, share.part),
        marks=marks_of(held.design for held in every),
        working=working,
    )
    return link, proof


def _why_not(case: LineCase, plated: Plated) -> tuple[str, str] | None:
    """The clause and reason when the anchors cannot be checked."""
    spans = sorted((p.station_in - half_row(p), p.station_in + half_row(p), p.from_top_in) for _, p in plated.plates)
    for (_, end, deep), (start, _, other) in zip(spans, spans[1:], strict=False):
        if start - end < 3 * max(deep, other):
            return "ACI 318-19 17.5.1.3", "side plates closer than three edge distances break out together: not covered"
    for _, piece in plated.plates:
        under = foundation_at(case.reading, case.id, piece.station_in)
        if under is None or under[1].material != "poured concrete":
            return _CLAUSE, f"the foundation there is {under[1].material if under else 'not surveyed'}"
        if piece.anchor_diameter_in is None or piece.anchor_embedment_in is None:
            return _CLAUSE, _NOT_GIVEN
        if piece.screw_above_in is None and piece.couple != "screws":
            return _CLAUSE, _NO_LEVER
        if under[1].strength_psi.value is None:
            return "ACI 318-19 17.7.2.2", "the strength of the concrete is not known"
        if under[1].top_width_in.value is None:
            return "ACI 318-19 17.7.2.6", "the thickness of the stem is not known"
    return None


def _in_stem(case: LineCase, key: str, piece: SideplatePiece) -> _Held:
    """One plate by every way its end anchor may fail, brought to a force on the plate in proportion."""
    under = foundation_at(case.reading, case.id, piece.station_in)
    assert under is not None and piece.anchor_diameter_in is not None
    note(f"side plate {piece.mark or key}: its edge is the top of the stem")
    id, stem = under
    f_c = strength_of(case, id, stem)
    assert f_c is not None
    V = given("V_1", TRIAL_LB, "lb", "trial force on one plate: all follows in proportion")
    end = end_anchor(piece, V, lever_of(piece))
    breaks = _breakout(case, piece, (id, stem), f_c, V, end)
    pries = _pryout(case, piece, f_c)
    each = divide(V, end.resultant, symbol="V_1/R", unit="1", label="force on the plate over that on its end anchor")
    found = {
        "breakout toward the top of the stem": breaks,
        "pryout": (scale(pries[0], each, symbol="φV_p"), scale(pries[1], each, symbol="V_p")),
    }
    if (steel := steel_in_shear(piece.anchor_diameter_in)) is not None:
        found["steel"] = (scale(steel[0], each, symbol="φV_s"), scale(steel[1], each, symbol="V_s"))
    way = min(found, key=lambda name: float(found[name][0]))
    design = least(*(v[0] for v in found.values()), symbol="φV_n", label="weakest way of failing, force on the plate")
    scope = anchor_scope(f_c, "post-installed", "assumed" if cored_strength(case, id) is None else "tested")
    extension = scope.extension
    if not (piece.anchor_report.strip() or piece.report.strip()):
        extension = extension or "an anchor set afterwards without its evaluation report"
    spacing = piece.anchor_spacing_in if piece.anchors > 1 else None
    split = apart(piece.adhesive, piece.anchor_diameter_in, piece.from_top_in, spacing, SPLITTING[piece.anchor])[1]
    bonded = pries[2] if way == "pryout" else ""
    extension = "; ".join(dict.fromkeys(text for text in (extension, bonded, split) if text))
    nominal = found[way][1] if way == "steel" or bonded else nominal_at_mean(case, id, f_c, found[way][1])
    return _Held(design, nominal, way, extension, float(end.resultant) / TRIAL_LB)


def lever_of(piece: SideplatePiece) -> float:
    """The couple's lever: from the row of screws to the row of anchors."""
    below = given("y_a", piece.from_top_in, "in", "anchors below the top of the stem")
    above = given("y_s", piece.screw_above_in or 0.0, "in", "screws above it")
    return add(above, below, symbol="e", label="from row to row: the couple's lever")


def _breakout(
    case: LineCase,
    piece: SideplatePiece,
    under: tuple[str, FoundationSegment],
    f_c: float,
    V: float,
    end: EndFastener,
) -> tuple[float, float]:
    """Design and nominal force on the plate at which its end anchor breaks out along the top and up toward it."""
    id, stem = under
    thick = case.reading.number(
        f"survey.foundation.segments.{id}.top_width_in", stem.top_width_in, "h_a", "in", "thickness of the stem"
    )
    assert thick is not None and piece.anchor_diameter_in is not None and piece.anchor_embedment_in is not None
    if piece.anchor_embedment_in >= float(thick):
        raise OutsideLimits(f"anchors {piece.anchor_embedment_in:g} in. deep come out of a stem {thick:g} in. thick")
    d_a = given("d_a", piece.anchor_diameter_in, "in", "anchor diameter")
    h_ef = given("h_ef", piece.anchor_embedment_in, "in", "embedment")
    c_a1 = given("c_a1", piece.from_top_in, "in", "anchor centre to the top of the stem")
    side = max(to_end(case, piece.station_in) - half_row(piece), 0.1)
    n, s = float(piece.anchors), piece.anchor_spacing_in
    if piece.anchors == 1 or s > 3 * piece.from_top_in:
        n, s = 1.0, 0.0
    along = breakout_parallel_to_edge(d_a, h_ef, f_c, c_a1, thick, c_a2=side, n=n, s=s)
    up = breakout_toward_edge(d_a, h_ef, f_c, c_a1, thick, c_a2=side)
    results = []
    for kind, group, single in (("φ", along.design, up.design), ("", along.nominal, up.nominal)):
        each = scale(group, 1 / n, symbol=f"{kind}V_cb∥", label=f"one of {n:g} anchors that break out together")
        used = divide(end.along, each, symbol="r_∥", unit="1", label="share used along the edge")
        if float(end.across) > 0:
            note("no rule joins breakout along an edge and toward it: their shares are added")
            lifted = divide(end.across, single, symbol="r_⊥", unit="1", label="share used toward the edge")
            used = add(used, lifted, symbol="r", label="both shares")
        results.append(divide(V, used, symbol=f"{kind}V_cb", unit="lb", label="force on the plate at breakout"))
    return results[0], results[1]


def _pryout(case: LineCase, piece: SideplatePiece, f_c: float) -> tuple[float, float, str]:
    """Design and nominal pryout of one anchor, and any extension; its cone ends half way to its neighbour."""
    assert piece.anchor_embedment_in is not None and piece.anchor_diameter_in is not None
    h_ef = given("h_ef", piece.anchor_embedment_in, "in", "embedment")
    c_near = given("c_near", piece.from_top_in, "in", "anchor to the top of the stem")
    side = max(to_end(case, piece.station_in) - half_row(piece), 0.1)
    beside = piece.anchor_spacing_in / 2 if piece.anchors > 1 else side
    if piece.anchor != "adhesive":
        prise = pryout_of(h_ef, f_c, side, beside, c_near=c_near, anchor="post-installed")
        return prise.design, prise.nominal, ""
    quake = case.lateral == "earthquake" and case.forces.category not in PLAIN_FORCE
    glue = glue_of(piece.adhesive, f_c, quake)
    d_a = given("d_a", piece.anchor_diameter_in, "in", "anchor diameter")
    n, s = (float(piece.anchors), piece.anchor_spacing_in) if piece.anchors > 1 else (1.0, 0.0)
    if s >= 2 * float(bond_reach(d_a, glue.reach)):
        n, s = 1.0, 0.0
    row = bond_of(
        d_a, h_ef, glue.cracked, glue.reach, side, side, c_near, s_along=(n - 1) * s, n=n, failure=glue.failure
    )
    each = (
        scale(row.nominal, 1 / n, symbol="N_a", label=f"one of {n:g} anchors whose bonds meet")
        if n > 1
        else row.nominal
    )
    prise = pryout_of(h_ef, f_c, side, beside, c_near=c_near, anchor="post-installed", N_a=each)
    return prise.design, prise.nominal, glue.extension


def anchors_of(plated: Plated) -> tuple[Anchor, ...]:
    """The anchors of the plates as tests in place know them."""
    return tuple(
        Anchor(
            f"{key}.{n}",
            f"anchor {n + 1} of {piece.mark or key}",
            piece.station_in - half_row(piece) + n * piece.anchor_spacing_in,
            piece.anchor_diameter_in or 0.0,
            piece.anchor_embedment_in,
            piece.from_top_in,
            piece.anchor,
            True,
            piece.anchor_report,
        )
        for key, piece in plated.plates
        for n in range(piece.anchors)
    )
