"""Side plates on a brick stem: bolts through or into its face, by the published table with each of its conditions.

The table is for walls of buildings. It says nothing of how near the top of a wall a bolt may stand, so a value on a
stem is *indicated* and says so. Bolts the table does not have go by tests, like those down into the top. Expansion
anchors are refused in brick.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import cast

from groundsill.house.foundation import FoundationSegment
from groundsill.house.underfloor import SillPiece
from groundsill.loadpath.case import LineCase, Share, cannot, checked, foundation_at
from groundsill.loadpath.chain import Link
from groundsill.loadpath.concrete import force_on_one, steel_in_shear
from groundsill.loadpath.masonry import AS_IN_CONCRETE, ON_A_STEM, bond_of, inner_words, mortar_of
from groundsill.loadpath.masonry_proofs import proved, stands_in
from groundsill.loadpath.proof import NO_TEST, Proof, by_tests
from groundsill.loadpath.side_plate_anchors import anchors_of, lever_of
from groundsill.loadpath.side_plates import TRIAL_LB, Plated, end_anchor
from groundsill.standards.iebc_2021.masonry_bolts import (
    FACE_BOLTS,
    Condition,
    FaceBolt,
    face_bolt_conditions,
    face_bolt_shear,
    table_a107_5,
    table_a107_5_2,
)
from groundsill.work.pieces import SideplatePiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import divide, given, least, note, scale
from groundsill.working.value import Mark

__all__ = ["brick_plates_link", "on_masonry"]

_CLAUSE = "IEBC 2021 Table A108.1(2), A107"
_NO_LEVER = "how high the screws of a side plate stand is not given, nor then the couple that its bolts hold"
_WITHIN = 0.01
_CALLED: dict[FaceBolt, str] = {
    "through-bolt": "through-bolts",
    "embedded at 22.5 degrees": "bolts embedded at 22.5 degrees",
    "grouted": "grouted bolts",
}


@dataclass(frozen=True, slots=True)
class _Held:
    """One plate in the brick: lb on the plate, and the force on its end bolt for a pound on the plate."""

    strength: float
    on_bolt: float
    words: str
    marks: frozenset[Mark]


def on_masonry(case: LineCase, plated: Plated) -> bool:
    """Whether any of the bolts of these plates stands in brick, stone or block."""
    return bool(stands_in(case, anchors_of(plated)))


def brick_plates_link(
    case: LineCase, id: str, sill: SillPiece, plated: Plated, share: Share, of_line: int
) -> tuple[Link, Proof]:
    """The weakest side plate of a sill piece on a masonry stem, and what tests in place prove of its bolts.

    The arguments are those of the link for concrete stems, whose place it takes.
    """
    address, title = f"line/{case.id}/bolts-concrete/{id}/both", f"side plates of sill {sill.mark or id} in the stem"
    working = f"line/{case.id}/demand", f"line/{case.id}/sill/{id}"
    held: list[_Held] = []
    with section(address):
        for key, piece in plated.plates:
            note(f"side plate {piece.mark or key}")
            try:
                found = _in_brick(case, key, piece, plated)
            except OutsideLimits as outside:
                found = str(outside)
            if isinstance(found, str):
                reason = "; ".join(filter(None, (found, inner_words(case))))
                return cannot(address, title, "sill", id, clause=_CLAUSE, reason=reason, working=working), NO_TEST
            held.append(found)
        strength = least(*(h.strength for h in held), symbol="V_m", label="the weakest side plate in the brick")
        demand, basis = force_on_one(case, len(held), frozenset(), share, plated.wood, "side plate")
    proof = by_tests(case, anchors_of(plated), float(demand) * max(h.on_bolt for h in held), of_line)
    told = proof.beside(demand, strength)
    words = dict.fromkeys(h.words for h in held)
    link = checked(
        address,
        title,
        "sill",
        id,
        level="strength",
        unit="lb a side plate",
        demand=demand,
        capacity=strength,
        clause=_CLAUSE,
        reason="; ".join(text for text in (*words, f"{basis}{AS_IN_CONCRETE}", told, inner_words(case)) if text),
        extension="" if proof.passes else f"{ON_A_STEM}, near its top",
        marks=frozenset[Mark]().union(*(h.marks for h in held)),
        working=working,
    )
    return link, proof


def _in_brick(case: LineCase, key: str, piece: SideplatePiece, plated: Plated) -> _Held | str:
    """One plate by its bolts in the brick, or why nobody can say."""
    own = [a for a in anchors_of(plated) if a.id.startswith(f"{key}.")]
    if piece.anchor_diameter_in is None:
        return "the diameter of the bolts of a side plate is not given"
    if piece.screw_above_in is None and piece.couple != "screws":
        return _NO_LEVER
    under = foundation_at(case.reading, case.id, piece.station_in)
    if piece.anchor in FACE_BOLTS and under is not None and under[1].material == "brick":
        bolt, words, marks = _by_table(case, piece, under)
    else:
        found = proved(case, own)
        bolt, words, marks = found.strength, found.words or found.wanting, found.marks
    if bolt is None:
        return words
    if (steel := steel_in_shear(piece.anchor_diameter_in)) is not None:
        bolt = least(bolt, steel[0], symbol="V_m", label="one bolt, by the brick or its steel")
    V = given("V_1", TRIAL_LB, "lb", "trial force on one plate: all follows in proportion")
    end = end_anchor(piece, V, lever_of(piece))
    each = divide(V, end.resultant, symbol="V_1/R", unit="1", label="force on the plate over that on its end bolt")
    on_plate = scale(bolt, each, symbol="V_m", label="force on the plate by its end bolt in the brick")
    return _Held(on_plate, float(end.resultant) / TRIAL_LB, words, marks)


def _by_table(
    case: LineCase, piece: SideplatePiece, under: tuple[str, FoundationSegment]
) -> tuple[float | None, str, frozenset[Mark]]:
    """The table's shear of one bolt where every condition is met; else None, with each condition in words."""
    id, stem = under
    bond, mortar = bond_of(case, id, stem), mortar_of(case, id, stem)
    marks = bond.marks | mortar.marks
    assert piece.anchor_diameter_in is not None
    kind = cast(FaceBolt, piece.anchor)
    tied = None if bond.why_not else bond.counted
    conditions = [
        Condition("mortar proved by in-place shear tests", None if mortar.v_tL is None else True),
        *face_bolt_conditions(
            kind,
            piece.anchor_diameter_in,
            hole=piece.anchor_hole_in,
            plate=piece.anchor_plate_in2,
            embedment=piece.anchor_embedment_in,
            wythes=tied,
            thickness=stem.top_width_in.value,
        ),
    ]
    if kind != "through-bolt":
        conditions.append(_torqued(case, piece))
    words = f"{_CALLED[kind]} by Table A108.1(2): {_told(conditions)}"
    if not all(c.met for c in conditions):
        return None, "; ".join(filter(None, (f"brick: {words}", mortar.why_not, bond.why_not))), marks
    strength = face_bolt_shear(piece.anchor, given("d_a", piece.anchor_diameter_in, "in", "bolt diameter"))
    near = f"{piece.from_top_in:g} in. below the top of the stem: the table says nothing of that"
    return strength, "; ".join((words, near, bond.words, mortar.words)), marks


def _told(conditions: Iterable[Condition]) -> str:
    """Every condition, met or not."""
    answers = {True: "met", False: "not met", None: "not known"}
    return ", ".join(f"{c.words} ({answers[c.met]})" for c in conditions)


def _torqued(case: LineCase, piece: SideplatePiece) -> Condition:
    """Whether a fifth of the embedded bolts were torqued, in that wall, to what the code asks."""
    size = str(Fraction(piece.anchor_diameter_in or 0.0).limit_denominator(16))
    rows, of_line = table_a107_5_2().rows, _embedded(case, piece)
    share = float(table_a107_5().read("new bolts", "share of tension bolts torqued besides, least", "p_T"))
    asked = max(math.ceil(share * of_line - 1e-9), 1)
    if size not in rows:
        return Condition(f"torque-tested, a diameter of {' to '.join((min(rows), max(rows)))} in.", False)
    torque = float(table_a107_5_2().read(size))
    text = f"at least {asked} of {of_line} such bolts torqued to {torque:g} lb-ft in this wall"
    stretches = case.reading.house.survey.foundation
    found = [
        test
        for test in stretches.tests.values()
        if test.kind == "torque"
        and test.unit == "lb-ft"
        and test.anchor_kind == piece.anchor
        and abs((test.anchor_diameter_in or 0.0) - (piece.anchor_diameter_in or 0.0)) < _WITHIN
        and (under := stretches.segments.get(test.segment)) is not None
        and under.line == case.id
    ]
    if any(test.result < torque for test in found):
        return Condition(text, False)
    return Condition(text, True if sum(test.count for test in found) >= asked else None)


def _embedded(case: LineCase, like: SideplatePiece) -> int:
    """How many bolts of one kind the side plates of the line have."""
    plates: Sequence[object] = [piece for _, piece in case.of_kind(SideplatePiece)]
    return sum(p.anchors for p in plates if isinstance(p, SideplatePiece) and p.anchor == like.anchor)
