"""From sill to concrete: which bolts count, the bolts in wood, the same in concrete, and the sill's own joints.

Everything goes sill piece by sill piece, because a bolt holds only the piece it stands in.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from groundsill.house.foundation import FoundationSegment
from groundsill.house.survey import in_order
from groundsill.house.underfloor import Bolt, SillPiece
from groundsill.loadpath.case import LineCase, cannot, checked, expected_at, foundation_at, moisture_of, part_length
from groundsill.loadpath.chain import Link, Stage
from groundsill.loadpath.concrete import Anchor, concrete_link
from groundsill.standards.nds_2018.adjustment import adjusted_lateral
from groundsill.standards.nds_2018.expected import expected_of
from groundsill.standards.nds_2018.geometry import end_distance_factor
from groundsill.standards.nds_2018.sill_bolt import sill_bolt, sill_bolt_weak_concrete
from groundsill.standards.sdpws_2015.construction import washer_on_sill_bolt
from groundsill.work.pieces import BoltPiece, SplicePiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import add, given, scale, subtract

__all__ = ["anchor_stages", "anchors_in", "share_of_sill"]

CLEAR_OF_BREAK_IN = 12.0  # no bolt is counted nearer to a full-depth break than this
_CUTTING = ("full-depth crack", "cold joint", "gap")
_SPREAD_BOLT = (0.8, 1.25)
_WOOD = "NDS 2018 12.3.1, 11.3"


@dataclass(frozen=True, slots=True)
class _Wood:
    """The wood side of one sill piece: allowable and expected strength of its bolts together, or why not."""

    allowable: float | None
    expected: float
    extension: str
    why_not: str = ""


def anchor_stages(case: LineCase) -> tuple[Stage, ...]:
    """Sill bolts in wood, sill continuity, bolts in concrete: one link for each sill piece."""
    wood, concrete, joints = [], [], []
    if not case.sills:
        return (_no_sill(case),)
    surplus: dict[str, tuple[float, float]] = {}
    for id, sill in case.sills:
        share = share_of_sill(case, sill)
        anchors, left_out = anchors_in(case, id, sill)
        with section(f"line/{case.id}/sill/{id}"):
            part = given("σ", share, "1", f"share of the line's force that comes down on sill {sill.mark or id}")
            force = scale(case.allowable, part, symbol="V_s", label=f"force on sill {sill.mark or id}")
        link, values = _wood_link(case, id, sill, anchors, left_out, share, force)
        wood.append(link)
        concrete.append(concrete_link(case, id, sill, anchors, share, values.expected if values else None, force))
        surplus[id] = (float(force), float(values.allowable) if values and values.allowable is not None else 0.0)
    for (one, left), (_, right) in zip(case.sills, case.sills[1:], strict=False):
        joints.append(_joint(case, one, left, right, surplus))
    if not joints:
        joints.append(
            cannot(
                f"line/{case.id}/sill-joints/{case.id}/both",
                "sill in one piece",
                "line",
                case.id,
                clause="",
                reason="the sill has no joint",
                applies=False,
            )
        )
    return (
        Stage("sill-bolts", "Sill bolts in wood, piece by piece", "every link must pass", tuple(wood)),
        Stage("sill-joints", "Sill continuity", "every link must pass", tuple(joints)),
        Stage("bolts-concrete", "Bolts in the foundation", "every link must pass", tuple(concrete)),
    )


def _no_sill(case: LineCase) -> Stage:
    link = cannot(
        f"line/{case.id}/sill-bolts/{case.id}/both",
        "sill",
        "line",
        case.id,
        clause=_WOOD,
        reason="no sill was surveyed under this line",
    )
    return Stage("sill-bolts", "Sill bolts in wood, piece by piece", "every link must pass", (link,))


def share_of_sill(case: LineCase, sill: SillPiece) -> float:
    """What part of the line's force comes down on a sill piece: from the braces over it, or by length with none."""
    braces = [b for b in case.braces if b.share > 0]
    if not braces:
        return (sill.to_in - sill.from_in) / case.length_in
    return min(1.0, sum(b.share * part_length(b, sill.from_in, sill.to_in) / b.length_in for b in braces))


def anchors_in(case: LineCase, sill_id: str, sill: SillPiece) -> tuple[list[Anchor], list[str]]:
    """The bolts that count in a sill piece, and the others with the reason why not.

    New bolts count by themselves: old slack bolts are not added to them without a stated stiffness rule.
    """
    new = [
        Anchor(id, p.station_in, p.diameter_in, p.embedment_in, p.edge_in, p.anchor, True, p.report)
        for id, p in case.pieces
        if isinstance(p, BoltPiece) and sill.from_in <= p.station_in <= sill.to_in
    ]
    old: list[Anchor] = []
    left_out: list[str] = []
    for id, bolt in in_order(case.reading.house.survey.underfloor.bolts):
        if bolt.line != case.id or not sill.from_in <= bolt.station_in <= sill.to_in:
            continue
        reason = _why_not_counted(bolt) or _near_break(case, bolt.station_in)
        if reason is None and new:
            reason = "old bolts are not added to new ones"
        if reason is not None:
            left_out.append(f"{bolt.mark or id}: {reason}")
            continue
        assert bolt.diameter_in.value is not None and bolt.embedment_in.value is not None
        old.append(
            Anchor(
                id,
                bolt.station_in,
                bolt.diameter_in.value,
                bolt.embedment_in.value,
                bolt.edge_in.value,
                bolt.kind,
                False,
                "",
            )
        )
    kept = []
    for anchor in new:
        reason = _near_break(case, anchor.station_in)
        if reason is None:
            kept.append(anchor)
        else:
            left_out.append(f"new bolt at {anchor.station_in / 12:.1f} ft: {reason}")
    return (kept or old), left_out


def _why_not_counted(bolt: Bolt) -> str | None:
    """The rule for existing bolts: embedment known or a test, a sound nut and washer, a fitting hole."""
    D = bolt.diameter_in.value
    if D is None:
        return "its diameter is not known"
    if bolt.embedment_in.value is None:
        return "its embedment is not known and no test is entered"
    if bolt.nut.value != "tight":
        return f"its nut is {bolt.nut.value or 'not seen'}"
    if bolt.washer not in ("cut", "plate"):
        return "no washer was seen" if bolt.washer == "not seen" else "it has no washer"
    if bolt.rust.value == "heavy":
        return "it is heavily rusted"
    if bolt.hole_in.value is None:
        return "its hole in the sill was not looked at"
    if bolt.hole_in.value > D + 0.126:
        return f"its hole is {bolt.hole_in.value:g} in. for a bolt of {D:g} in."
    return None


def _near_break(case: LineCase, station: float) -> str | None:
    for _, cut in in_order(case.reading.house.survey.foundation.breaks):
        if cut.line == case.id and cut.kind in _CUTTING and abs(cut.station_in - station) < CLEAR_OF_BREAK_IN:
            return f"it stands within {CLEAR_OF_BREAK_IN:g} in. of a {cut.kind} in the foundation"
    return None


def _wood_link(
    case: LineCase, id: str, sill: SillPiece, anchors: list[Anchor], left_out: list[str], share: float, force: float
) -> tuple[Link, _Wood | None]:
    address, title = f"line/{case.id}/sill-bolts/{id}/both", f"bolts in sill {sill.mark or id}"
    not_counted = "; ".join(f"not counted {text}" for text in left_out)
    sections = (f"line/{case.id}/demand", f"line/{case.id}/sill/{id}")
    if not anchors:
        reason = "no bolt counts in this piece" + (f" ({not_counted})" if not_counted else "")
        link = checked(
            address,
            title,
            "sill",
            id,
            level="allowable",
            unit="lb",
            demand=force,
            capacity=0.0,
            clause=_WOOD,
            reason=reason,
            working=sections,
        )
        return link, None
    with section(address):
        wood = _wood(case, id, sill, anchors)
    if wood.allowable is None:
        return cannot(address, title, "sill", id, clause=_WOOD, reason=wood.why_not), wood
    counted = f"{len(anchors)} bolt{'s' if len(anchors) > 1 else ''}"
    decayed = "the sill is decayed: nothing is counted" if sill.condition.value == "decayed" else ""
    reason = "; ".join(words for words in (decayed, counted, not_counted, _washers(case, anchors)) if words)
    link = checked(
        address,
        title,
        "sill",
        id,
        level="allowable",
        unit="lb",
        demand=force,
        capacity=wood.allowable,
        clause=_WOOD,
        reason=reason,
        extension=wood.extension,
        working=sections,
        expected=expected_at(
            wood.expected or None,
            share,
            _SPREAD_BOLT,
            "ductile",
            "yield of every bolt in wood, 20 % less to 25 % more (common practice, no source)",
        ),
    )
    return link, wood


def _washers(case: LineCase, anchors: list[Anchor]) -> str:
    """What the standard asks under the nuts of new bolts, where panels brace the line."""
    nominal = max((float(b.nominal_plf or 0.0) for b in case.counted() if b.panel is not None), default=0.0)
    if not nominal or not any(a.new for a in anchors):
        return ""
    asked = washer_on_sill_bolt(nominal, 1.0, None)
    plates = {id: p.plate_washer for id, p in case.pieces if isinstance(p, BoltPiece)}
    without = [a.id for a in anchors if a.new and not plates.get(a.id, False)]
    if asked.plate is False or not without:
        return ""
    return f"{len(without)} new bolts have no plate washer (SDPWS 2015 4.3.6.4.3)"


def _wood(case: LineCase, id: str, sill: SillPiece, anchors: Iterable[Anchor]) -> _Wood:
    """Allowable and expected strength of all bolts of a piece in wood, alike ones worked out once."""
    path = f"survey.underfloor.sills.{id}"
    thick = case.reading.number(
        f"{path}.thickness_in", sill.thickness_in, "l_s", "in", f"thickness of sill {sill.mark}"
    )
    if thick is None or not sill.species:
        return _Wood(None, 0.0, "", "the sill's thickness or species is not known")
    if sill.condition.value == "decayed":
        return _Wood(0.0, 0.0, "", "")
    alike: dict[tuple[float, float, float, str], list[Anchor]] = {}
    for anchor in anchors:
        end = min(anchor.station_in - sill.from_in, sill.to_in - anchor.station_in)
        under = foundation_at(case.reading, case.id, anchor.station_in)
        key = (anchor.diameter_in, anchor.embedment_in, min(end, 7 * anchor.diameter_in), under[0] if under else "")
        alike.setdefault(key, []).append(anchor)
    terms, expected, extension = [], 0.0, ""
    try:
        for (D, l_m, end, under_id), group in alike.items():
            under_segment = case.reading.house.survey.foundation.segments.get(under_id)
            f_c = _strength(case, under_id, under_segment)
            if f_c is None:
                return _Wood(None, 0.0, "", "the strength of what the bolts stand in is not known")
            d = given("D", D, "in", f"bolt diameter in sill {sill.mark}")
            m = given("l_m", l_m, "in", "embedment of the bolt")
            if float(f_c) >= 2500 and l_m >= 6:
                joint = sill_bolt(d, thick, sill.species, 0.0, m, f_c)
            else:
                extension = (
                    "yield in concrete under 2,500 psi, or with less than 6 in. of embedment, beyond the tables of NDS"
                )
                joint = sill_bolt_weak_concrete(d, thick, f_c, sill.species, 0.0, m)
            C_delta = end_distance_factor(
                d, given("a", end, "in", "bolt to the end of the sill piece, no more than needed")
            )
            each = adjusted_lateral(joint.Z, moisture=moisture_of(sill.damp.value), C_delta=C_delta)
            terms.append(scale(each, float(len(group)), symbol="n Z'", label=f"{len(group)} bolts alike"))
            expected += float(expected_of(joint).P) * len(group)
    except OutsideLimits as refused:
        return _Wood(None, 0.0, "", str(refused))
    return _Wood(add(*terms, symbol="ΣZ'", label=f"all bolts of sill {sill.mark}"), expected, extension)


def _strength(case: LineCase, id: str, segment: FoundationSegment | None) -> float | None:
    if segment is None or segment.material != "poured concrete":
        return None
    return case.reading.number(
        f"survey.foundation.segments.{id}.strength_psi",
        segment.strength_psi,
        "f'_c",
        "psi",
        f"concrete of {segment.mark}",
    )


def _joint(case: LineCase, id: str, left: SillPiece, right: SillPiece, surplus: dict[str, tuple[float, float]]) -> Link:
    """A joint in the sill: what one side cannot hold by its own bolts must pass to the other."""
    address, title = f"line/{case.id}/sill-joints/{id}/both", f"sill joint at {left.to_in / 12:.1f} ft"
    other = next(key for key, piece in case.sills if piece is right)
    short = max(max(0.0, surplus[key][0] - surplus[key][1]) for key in (id, other))
    if short <= 0:
        return cannot(
            address,
            title,
            "joint",
            id,
            clause="",
            reason="each piece holds its own force: none passes the joint",
            applies=False,
        )
    added = next(
        (
            p
            for _, p in case.of_kind(SplicePiece)
            if isinstance(p, SplicePiece) and p.member == "sill" and abs(p.station_in - left.to_in) <= 18
        ),
        None,
    )
    with section(address):
        need = subtract(
            given("V_s", max(surplus[id][0], surplus[other][0]), "lb", "force on the worse piece"),
            given("ΣZ'", max(surplus[id][0], surplus[other][0]) - short, "lb", "what its own bolts hold"),
            symbol="T",
            label="force that must pass the joint",
        )
        capacity = given("T_a", added.capacity_lb, "lb", added.report or "capacity as entered") if added else 0.0
    reason = f"splice {added.mark}" if added else "nothing was seen that ties the two pieces together"
    return checked(
        address,
        title,
        "joint",
        id,
        level="allowable",
        unit="lb",
        demand=need,
        capacity=capacity,
        clause="NDS 2018 chapter 12",
        reason=reason,
    )
