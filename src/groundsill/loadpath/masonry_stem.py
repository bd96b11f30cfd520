"""A brick stem along its own line: shear of its bed joints and rocking, by the appendix for buildings of such walls.

The stem stands below the bolts and carries what they hand it. Its mortar counts by in-place shear tests alone; without
them, and in stone, it cannot be checked. The shear of brick gives no warning, so the stem is asked for the overstrength
force, which is close to the force that the appendix itself pairs its strengths with. Every result is *indicated*.
"""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.forces.reading import doubted
from groundsill.house.foundation import FoundationSegment
from groundsill.loadpath.anchors import share_between
from groundsill.loadpath.case import LineCase, Share, cannot, checked
from groundsill.loadpath.chain import Link, Stage
from groundsill.loadpath.concrete import PLAIN_FORCE
from groundsill.loadpath.masonry import ON_A_STEM, Bond, bond_of, inner_words, mortar_of
from groundsill.loadpath.stem import height_facts, height_of
from groundsill.standards.common_practice import table_other_densities
from groundsill.standards.iebc_2021.masonry import (
    masonry_shear_strength,
    rocking_without_openings,
    table_a108_2,
    wall_shear,
)
from groundsill.working.sheet import section
from groundsill.working.steps import add, divide, given, greatest, least, multiply, scale
from groundsill.working.value import Mark, marks_of

__all__ = ["masonry_stage"]

_CLAUSE = "IEBC 2021 A108.2, A112.2"
_STONE = (
    "stone: no document known tells what it holds along the wall; a registered design professional evaluates it, or a "
    "new foundation inside takes the force"
)
_OUT_OF_PLANE = (
    "what pushes it out of its plane is not checked: it leans on soil and is held at its top by the bolts alone"
)


@dataclass(frozen=True, slots=True)
class _Stem:
    """A stretch of brick as a wall, by inches: its length, the thickness that counts, its height."""

    id: str
    segment: FoundationSegment
    long: float
    thick: float
    high: float
    bond: Bond
    marks: frozenset[Mark]


def masonry_stage(case: LineCase) -> tuple[Stage, ...]:
    """The stretches of brick or stone under a line, each a wall of its own; nothing where there are none."""
    found = [
        (id, s)
        for id, s in case.reading.on_line(case.reading.house.survey.foundation.segments, case.id)
        if s.material in ("brick", "stone")
    ]
    if not found:
        return ()
    links = tuple(_link(case, id, segment) for id, segment in sorted(found, key=lambda pair: pair[1].from_in))
    return (Stage("masonry", "The masonry stem along its line", "every link must pass", links),)


def _link(case: LineCase, id: str, segment: FoundationSegment) -> Link:
    """One stretch in shear and rocking."""
    address, title = f"line/{case.id}/masonry/{id}/both", f"{segment.material} {segment.mark or id} along the line"
    working = (f"line/{case.id}/demand",)
    inner = inner_words(case)
    if segment.material == "stone":
        reason = "; ".join(filter(None, (_STONE, inner)))
        return cannot(address, title, "line", case.id, clause="IEBC 2021 A304.2.2", reason=reason, working=working)
    with section(address):
        bond, mortar = bond_of(case, id, segment), mortar_of(case, id, segment)
        share = share_between(case, segment.from_in, segment.to_in)
        wanting = [text for text in (bond.why_not, mortar.why_not, _unmeasured(segment), share.why_not) if text]
        if wanting or mortar.v_tL is None:
            reason = "; ".join(filter(None, ("brick: " + "; ".join(wanting), inner)))
            doubts = bond.marks | mortar.marks | share.marks
            return cannot(address, title, "line", case.id, clause=_CLAUSE, reason=reason, marks=doubts, working=working)
        stem = _measured(case, id, segment, bond)
        doubts = stem.marks | mortar.marks
        capacity, way = _holds(case, stem, mortar.v_tL)
        demand, words = _asked(case, share)
    slender = f"{stem.high / stem.thick:.1f} times as high as thick; {_OUT_OF_PLANE}"
    return checked(
        address,
        title,
        "line",
        case.id,
        level="strength",
        unit="lb",
        demand=demand,
        capacity=capacity,
        clause=_CLAUSE,
        reason="; ".join(filter(None, (way, words, bond.words, mortar.words, slender, inner))),
        extension=ON_A_STEM,
        marks=doubts,
        working=working,
    )


def _unmeasured(segment: FoundationSegment) -> str:
    if segment.top_width_in.value is None:
        return "the thickness of the wall is not known"
    return "" if height_of(segment) is not None else "the height of the wall is not known"


def _measured(case: LineCase, id: str, segment: FoundationSegment, bond: Bond) -> _Stem:
    """The stretch as a wall: only the wythes that are bonded count in its thickness."""
    wide, high = segment.top_width_in.value, height_of(segment)
    assert wide is not None and high is not None
    path = f"survey.foundation.segments.{id}"
    marks = bond.marks | case.reading.marked(path, "top_width_in", *height_facts(segment))
    return _Stem(id, segment, segment.to_in - segment.from_in, wide * bond.counted / bond.wythes, high, bond, marks)


def _holds(case: LineCase, stem: _Stem, v_tL: float) -> tuple[float, str]:
    """What the stretch holds along itself, and what governs it."""
    load = case.forces.gravity.lines[case.id]
    part = stem.long / case.length_in
    P_D = given("P_D", max(float(load.dead) * part, 0.0), "lb", "dead load on this stretch", marks_of((load.dead,)))
    A_n = given("A_n", stem.long * stem.thick, "in^2", "wythes that are bonded, in plan", stem.marks)
    k = table_a108_2().read("one wythe" if stem.bond.counted < 2 else "more wythes")
    slides = wall_shear(masonry_shear_strength(v_tL, k, P_D, A_n), A_n)
    volume = given("V", stem.long * stem.thick * stem.high / 1728, "ft^3", "the stretch of wall", stem.marks)
    P_W = multiply(table_other_densities().read("brick masonry", symbol="γ_m"), volume, symbol="P_W", unit="lb")
    D = given("D", stem.long / 12, "ft", "length of the stretch")
    H = given("H", stem.high / 12, "ft", "height, top to the bottom of the footing", stem.marks)
    rocks = rocking_without_openings(P_D, P_W, D, H)
    whole = scale(add(P_D, P_W, symbol="P"), 0.5, symbol="P/2", label="half of all that stands on its base")
    tips = scale(
        whole, divide(D, H, symbol="D/H", unit="1"), symbol="V_t", label="statics: a wall free at its top tips"
    )
    found = {"bed joints in shear": slides, "rocking, with the top held": rocks, "tipping, with the top free": tips}
    way = min(found, key=lambda name: float(found[name]))
    return least(*found.values(), symbol="V_n", label="the stretch along itself"), way


def _asked(case: LineCase, share: Share) -> tuple[float, str]:
    """The force along a stretch that has this share of the line's, strength level, and which force it is in words."""
    part = given("σ", share.part, "1", "share of the line's force that comes down on this stretch", share.marks)
    if case.lateral == "wind":
        whole, words = case.strength, "for the wind force, strength level"
    elif case.forces.category in PLAIN_FORCE:
        whole = case.forces.rules.effects.horizontal_effect(case.forces.rho, case.strength)
        words = f"for the plain earthquake force: category {case.forces.category}"
    else:
        whole, words = case.overstrength, "for the overstrength force: brick gives no warning"
    force = scale(whole, part, symbol="V", label="force along this stretch")
    return greatest(doubted(force, share.marks), 0.0, symbol="V", label="force along this stretch"), words
