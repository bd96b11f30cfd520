"""From sill to concrete: bolts or side plates in wood, washers, the sill's own joints, and what holds in the concrete.

Everything goes sill piece by sill piece, because a bolt holds only the piece it stands in; what a piece's own bolts
cannot hold passes to its neighbours through splices alone.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import repeat

from groundsill.forces.reading import doubted
from groundsill.house.underfloor import SillPiece
from groundsill.loadpath.bolt_shares import OnSill, OnSprings, on_springs
from groundsill.loadpath.bolt_states import NOT_KNOWN, Yields, in_wood
from groundsill.loadpath.bolts_counted import Counted, anchors_in
from groundsill.loadpath.case import LineCase, Share, cannot, checked, expected_at
from groundsill.loadpath.chain import Combine, Link, Stage, status_of
from groundsill.loadpath.concrete import concrete_link
from groundsill.loadpath.experience import EXPERIENCE
from groundsill.loadpath.masonry_bolts import brick_link
from groundsill.loadpath.masonry_plates import brick_plates_link, on_masonry
from groundsill.loadpath.masonry_proofs import stands_in
from groundsill.loadpath.proof import Proof
from groundsill.loadpath.shares import LineShares
from groundsill.loadpath.side_plate_anchors import plates_link
from groundsill.loadpath.side_plates import MIXED, Plated, plates_of, row_words
from groundsill.loadpath.sill_bolts import SPREAD_OF_YIELD, Wood, wood_of
from groundsill.loadpath.sill_joints import Tie, joint_links, passed_on, row_of, ties_between
from groundsill.loadpath.washers import washer_link
from groundsill.working.sheet import section
from groundsill.working.steps import add, given, scale
from groundsill.working.value import Mark, marks_of

__all__ = ["anchor_stages", "share_between", "share_of_sill"]

_WOOD = "12.3.1, 11.3"
_CAST_IN = "ACI 318-19"
_PLATE = "AISI S100-16 chapters F, G"
_ELASTIC = "force on it elastically, on the springs of the bolts"
_SPRINGS = "slip of bolts in concrete and the modulus of old wood: an extension"
_EVERY: Combine = "every link must pass"
_IDLE = "no force comes down on it"
_NOTHING = 0.01  # lb


@dataclass(frozen=True, slots=True)
class _Piece:
    """One sill piece: its bolts and what they hold in wood; the force that comes down on it, lb, and its share.

    ``plated`` are its side plates where they count in the place of the bolts: then ``wood`` is theirs.
    """

    id: str
    sill: SillPiece
    bolts: Counted
    share: Share
    force: float
    wood: Wood
    plated: Plated | None = None

    @property
    def name(self) -> str:
        """What to call it on paper."""
        return f"sill {self.sill.mark or self.id}"


@dataclass(frozen=True, slots=True)
class _Spread:
    """How the bolts of a line share where it is not alike, and whether those of a piece may count as all at yield."""

    springs: OnSprings
    yields: Yields


@dataclass(frozen=True, slots=True)
class _Left:
    """What the bolts of a piece are left with, lb, once splices have passed on what they can, and in what words."""

    force: float
    share: Share
    words: str = ""


def anchor_stages(case: LineCase) -> tuple[Stage, ...]:
    """Sill bolts in wood, sill continuity, bolts in concrete: one link for each sill piece."""
    if not case.sills:
        return (_no_sill(case),)
    pieces = [_gathered(case, id, sill) for id, sill in case.sills]
    held = [piece.wood.allowable for piece in pieces]
    ties = ties_between(case, held)
    passing = passed_on([p.force for p in pieces], held, [tie.capacity for tie in ties])
    of_line = [anchor for piece in pieces for anchor in piece.bolts.anchors]
    of_plates = sum(plate.anchors for piece in pieces if piece.plated for _, plate in piece.plated.plates)
    rests = [_left_with(case, pieces, n, ties, passing) for n in range(len(pieces))]
    springs = on_springs(case, [_on_sill(piece, rest) for piece, rest in zip(pieces, rests, strict=True)], ties)
    wood, concrete = [], []
    found: dict[str, Yields] = {}
    for piece, rest in zip(pieces, rests, strict=True):
        if piece.plated is not None:
            in_stem = brick_plates_link if on_masonry(case, piece.plated) else plates_link
            link, proof = in_stem(case, piece.id, piece.sill, piece.plated, rest.share, of_plates)
        elif stands_in(case, piece.bolts.anchors):
            link, proof = brick_link(case, piece.id, piece.sill, piece.bolts, of_line, rest.share, piece.wood)
        else:
            link, proof, found[piece.id] = concrete_link(
                case, piece.id, piece.sill, piece.bolts, of_line, rest.share, piece.wood, springs
            )
        concrete.append(_unshared(case, piece, rest, link))
        wood.append(_wood_link(case, piece, rest, proof, _Spread(springs, found.get(piece.id, NOT_KNOWN))))
        washers = washer_link(case, piece.id, piece.sill, piece.bolts)
        wood += [washers] if washers is not None else []
    doubts = [
        marks_of((rest.force,)) | piece.wood.marks | springs.marks for rest, piece in zip(rests, pieces, strict=True)
    ]
    most = _passing(passing, springs)
    joints = joint_links(case, [rest.force for rest in rests], held, ties, most, doubts)
    by_springs = [pull > abs(p) for pull, p in zip(most, passing, strict=True)]
    if ties:
        joints = tuple(map(_sprung, joints, repeat(springs), ties, by_springs))
    return (
        Stage("sill-bolts", "Sill bolts in wood, piece by piece", _EVERY, tuple(wood)),
        Stage("sill-joints", "Sill continuity", _EVERY, joints),
        Stage("bolts-concrete", "Bolts in the foundation", _EVERY, tuple(concrete), EXPERIENCE, _told(springs, found)),
    )


def _on_sill(piece: _Piece, rest: _Left) -> OnSill:
    """A piece as the springs need it."""
    return OnSill(
        piece.id, piece.sill, piece.bolts.anchors, piece.wood, piece.share.part, rest.share.part,
        piece.plated is not None, bool(piece.share.why_not), piece.share.marks | piece.bolts.marks,
    )  # fmt: skip


def _passing(passing: Sequence[float], springs: OnSprings) -> tuple[float, ...]:
    """What passes each joint: as all bolts yield, or on the springs of their slip, whichever is more."""
    if not springs.pulls:
        return tuple(passing)
    return tuple(max(abs(p), pull) for p, pull in zip(passing, springs.pulls, strict=True))


def _sprung(link: Link, springs: OnSprings, tie: Tie, governs: bool) -> Link:
    """A joint on a line whose bolts stand on springs: what it must pass rests on them, and so does its answer.

    ``governs`` says that the springs bring more on it than the bolts do when all yield.
    """
    if springs.shares is None or not link.demand or tie.capacity <= 0:
        return link
    extension = "; ".join(text for text in (link.extension, _SPRINGS) if text)
    status, _ = status_of(link.demand, link.capacity, extension)
    words = [link.reason, _ELASTIC] if governs else [link.reason]
    joint = next((one for one in springs.shares.joints if one.id == link.scope_id), None)
    firm = joint.strap_lb if joint is not None else None
    if tie.stiffness is not None and firm is not None and firm > float(link.demand):
        words.append(f"it gives, and bolts near it take the rest: one that did not give would get {firm:,.0f} lb")
    return replace(link, reason="; ".join(words), extension=extension, status=status, verdict=status)


def _told(springs: OnSprings, found: Mapping[str, Yields]) -> LineShares | None:
    """The shares, with what each piece's wood may count on."""
    if springs.shares is None:
        return None
    told = [(sill, found.get(sill.id, NOT_KNOWN)) for sill in springs.shares.sills]
    sills = tuple(replace(sill, by_yield=yields.first, yield_words=yields.words) for sill, yields in told)
    return replace(springs.shares, sills=sills)


def _no_sill(case: LineCase) -> Stage:
    address = f"line/{case.id}/sill-bolts/{case.id}/both"
    link = cannot(
        address, "sill", "line", case.id, clause=case.nds.cite(_WOOD), reason="no sill was surveyed under this line"
    )
    return Stage("sill-bolts", "Sill bolts in wood, piece by piece", _EVERY, (link,))


def _idle(piece: _Piece, left: _Left) -> bool:
    """Whether no force comes to a piece of whose bolts nobody can say whether they count: then it does not matter."""
    unknown = piece.wood.allowable is None and not piece.bolts.anchors and not piece.sill.cast_in
    return unknown and not piece.share.why_not and float(left.force) < _NOTHING


def _unshared(case: LineCase, piece: _Piece, left: _Left, link: Link) -> Link:
    """The bolts of a piece in the foundation: where what comes down on it is not known, neither is their answer."""
    if _idle(piece, left):
        return cannot(
            link.address, link.title, "sill", piece.id, clause="", reason=_IDLE, applies=False, marks=link.marks,
            working=_working(case, piece.id),
        )  # fmt: skip
    if not piece.share.why_not or link.status in ("cannot be checked", "does not apply"):
        return link
    return cannot(
        link.address, link.title, "sill", piece.id, clause=link.clause, reason=piece.share.why_not,
        marks=piece.share.marks, working=_working(case, piece.id),
    )  # fmt: skip


def share_of_sill(case: LineCase, sill: SillPiece) -> Share:
    """What part of the line's force comes down on a sill piece."""
    return share_between(case, sill.from_in, sill.to_in)


def share_between(case: LineCase, low: float, high: float) -> Share:
    """What part of the line's force comes down between two stations: from the braces there, or by length with none."""
    over = {b.id: b.onto(low, high) for b in case.braces}
    doubts = case.doubts
    if over and min(over.values()) > 1 - 1e-9 and len(case.counted()) > 1:
        doubts = frozenset()  # under a piece that holds every brace whole comes all of the force, however they share it
    takes = [b for b in case.braces if b.share > 0 or b in case.untold()]
    untold = [b for b in case.untold() if over[b.id] > 0]
    if untold and min(over[b.id] for b in takes) < 1 - 1e-9:
        names = " and ".join(b.name for b in untold)
        return Share(1.0, doubts, f"what comes down on it is not known: {names}: {untold[0].why_not}")
    if untold:
        return Share(1.0, doubts)
    braces = [b for b in case.braces if b.share > 0]
    if not braces:
        return Share((high - low) / case.length_in, doubts)
    most = max(b.onto(-math.inf, math.inf) for b in braces)
    return Share(min(most, sum(b.share * over[b.id] for b in braces)), doubts)


def _gathered(case: LineCase, id: str, sill: SillPiece) -> _Piece:
    share = share_of_sill(case, sill)
    with section(f"line/{case.id}/sill/{id}"):
        bolts = anchors_in(case, sill)
        label = f"share of the line's force that comes down on sill {sill.mark or id}"
        part = given("σ", share.part, "1", label, share.marks)
        force = scale(case.allowable, part, symbol="V_s", label=f"force on sill {sill.mark or id}")
    with section(_address(case, id)):
        wood = wood_of(case, id, sill, bolts)
        plated = None if sill.cast_in else plates_of(case, id, sill)
    piece = _Piece(id, sill, bolts, share, force, wood)
    if plated is not None:
        piece = _stronger(piece, plated)
    wood = piece.wood
    if share.why_not and (wood.allowable is None or wood.allowable > 0):
        reasons = (share.why_not, wood.why_not) if wood.allowable is None else (share.why_not,)
        wood = Wood(None, why_not="; ".join(reasons), marks=wood.marks | share.marks)
    return replace(piece, wood=wood)


def _stronger(piece: _Piece, plated: Plated) -> _Piece:
    """Bolts or side plates of a piece, whichever hold more in wood: the two are never added."""
    bolts = piece.bolts
    left_out = (*bolts.left_out, *plated.left_out)
    unknown = plated.wood.allowable is None and not bolts.anchors
    if plated.plates and (unknown or float(plated.wood.allowable or 0.0) > float(piece.wood.allowable or 0.0)):
        beside = (f"{', '.join(a.name for a in bolts.anchors)}: beside side plates; {MIXED}",) if bolts.anchors else ()
        wood = _doubted(plated.wood, piece.wood.marks if bolts.anchors else frozenset())
        return replace(piece, bolts=Counted((), (*left_out, *beside), bolts.marks), wood=wood, plated=plated)
    if plated.plates:
        names = ", ".join(plate.mark or key for key, plate in plated.plates)
        left_out = (*left_out, f"side plate {names}: {plated.wood.why_not or f'beside bolts; {MIXED}'}")
    wood = _doubted(piece.wood, plated.wood.marks if bolts.anchors else frozenset())
    return replace(piece, bolts=replace(bolts, left_out=left_out), wood=wood)


def _doubted(wood: Wood, doubts: frozenset[Mark]) -> Wood:
    """What holds, chosen over something else that these doubts rest on."""
    allowable = None if wood.allowable is None else doubted(wood.allowable, doubts)
    return replace(wood, allowable=allowable, marks=wood.marks | doubts)


def _working(case: LineCase, id: str) -> tuple[str, str]:
    return f"line/{case.id}/demand", f"line/{case.id}/sill/{id}"


def _address(case: LineCase, id: str) -> str:
    return f"line/{case.id}/sill-bolts/{id}/both"


def _left_with(
    case: LineCase, pieces: Sequence[_Piece], n: int, ties: Sequence[Tie], passing: Sequence[float]
) -> _Left:
    """The force that the bolts of a piece are left with, as a sum of what comes down on it and passes its joints."""
    piece = pieces[n]
    moved = [(0.0 if n == 0 else passing[n - 1], n - 1), (0.0 if n == len(passing) else -passing[n], n + 1)]
    marks = _row_marked(pieces, n, ties)
    if not any(amount for amount, _ in moved):
        return _Left(doubted(piece.force, marks), Share(piece.share.part, piece.share.marks | marks))
    terms, words = [piece.force], []
    with section(f"line/{case.id}/sill/{piece.id}"):
        for amount, other in moved:
            if not amount:
                continue
            tie = ties[min(n, other)]
            way = f"from {pieces[other].name}" if amount > 0 else f"to {pieces[other].name}"
            terms.append(given("T", amount, "lb", f"what {tie.by} passes {way}", marks))
            verb = "takes" if amount > 0 else "passes"
            words.append(f"{verb} {abs(amount):,.0f} lb {way} through {tie.by}")
        left = add(*terms, symbol="V_b", label=f"force left to the bolts of {piece.name}")
    whole = float(case.allowable)
    rest = max(float(left), 0.0)
    if rest < 0.01:
        left = doubted(0.0, marks_of((left,)), unit="lb", symbol="V_b")
    share = Share(rest / whole if whole > 0 else 0.0, piece.share.marks | marks)
    return _Left(left, share, "; ".join(words))


def _row_marked(pieces: Sequence[_Piece], n: int, ties: Sequence[Tie]) -> frozenset[Mark]:
    """The marks of what may pass to or from a piece: all of the pieces tied to it, and whether splices hold there."""
    row = row_of(n, [tie.capacity for tie in ties])
    beside = frozenset[Mark]().union(*(tie.marks for tie in ties[max(row.start - 1, 0) : row.stop]))
    if len(row) == 1:
        return beside
    return beside.union(*(marks_of((pieces[m].force,)) | pieces[m].wood.marks for m in row))


def _wood_link(case: LineCase, piece: _Piece, left: _Left, proof: Proof, spread: _Spread) -> Link:
    """The bolts of one piece in wood; what tests prove of them in the concrete lifts the extension here too."""
    address, title = _address(case, piece.id), f"{'bolts' if piece.plated is None else 'side plates'} in {piece.name}"
    wood, count = piece.wood, len(piece.bolts.anchors)
    if _idle(piece, left):
        return cannot(
            address, title, "sill", piece.id, clause="", reason=_IDLE, applies=False, marks=wood.marks,
            working=_working(case, piece.id),
        )  # fmt: skip
    if wood.allowable is None:
        cast = piece.sill.cast_in and not count
        clause = f"{case.nds.source.short}; {_CAST_IN}" if cast else case.nds.cite(_WOOD)
        return cannot(
            address, title, "sill", piece.id, clause=clause, reason=wood.why_not, marks=wood.marks,
            working=_working(case, piece.id),
        )  # fmt: skip
    not_counted = "; ".join(f"not counted {text}" for text in piece.bolts.left_out)
    if piece.plated is not None:
        counted = _plates_words(piece.plated)
    elif not count:
        counted = "no bolt counts in this piece" + (f" ({not_counted})" if not_counted else "")
        not_counted = ""
    else:
        counted = f"{count} bolt{'s' if count > 1 else ''}"
    decayed = count and piece.sill.condition.value == "decayed"
    demand, capacity, shared = _shared_in_wood(case, piece, left, spread)
    reason = (
        "the sill is decayed: nothing is counted" if decayed else "",
        counted,
        shared,
        left.words,
        *wood.doubts,
        proof.beside(demand, capacity) if wood.extension and proof.passes else "",
        not_counted,
    )
    what = "bolt" if piece.plated is None else "screw of the side plates"
    expected = expected_at(
        wood.expected or None,
        left.share.part,
        SPREAD_OF_YIELD,
        "ductile",
        f"yield of every {what} in wood, 20 % less to 25 % more (common practice, no source)",
    )
    return checked(
        address,
        title,
        "sill",
        piece.id,
        level="allowable",
        unit="lb",
        demand=demand,
        capacity=capacity,
        clause=case.nds.cite(_WOOD) + (f"; {_PLATE}" if piece.plated is not None else ""),
        reason="; ".join(text for text in reason if text),
        extension="" if proof.passes else wood.extension,
        marks=spread.springs.marks | (proof.marks if wood.extension else frozenset()),
        working=_working(case, piece.id),
        expected=expected,
    )


def _shared_in_wood(case: LineCase, piece: _Piece, left: _Left, spread: _Spread) -> tuple[float, float, str]:
    """Demand and capacity of a piece's bolts in wood, all at yield, or elastic where they may not; and in words."""
    assert piece.wood.allowable is not None
    shares = spread.springs.of(piece.id)
    if shares is None:
        return left.force, piece.wood.allowable, ""
    if spread.yields.first:
        return left.force, piece.wood.allowable, f"all at yield: {spread.yields.words}"
    with section(_address(case, piece.id)):
        elastic = in_wood(case, spread.springs, shares, piece.wood)
    if elastic is None or float(elastic[0]) * float(piece.wood.allowable) <= float(left.force) * float(elastic[1]):
        return left.force, piece.wood.allowable, ""
    doubts = piece.wood.marks
    return elastic[0], doubted(elastic[1], doubts), f"{elastic[2]}: {spread.yields.words}"


def _plates_words(plated: Plated) -> str:
    """How many side plates count, what holds the couple, and what governs them."""
    count = len(plated.plates)
    couples = tuple(dict.fromkeys(row_words(piece) for _, piece in plated.plates if piece.capacity_lb is None))
    return "; ".join((f"{count} side plate{'s' if count > 1 else ''}", *plated.governs, *couples))
