"""The bolts in the foundation: breakout along the edge, pryout and steel by ACI 318-19 chapter 17, on a printed basis.

In categories C to F an anchor that concrete governs is checked for the overstrength force, or for the force at which
the wood joint yields, whichever the designer picks with a reason; in A and B for the plain earthquake force. Or the
sill exception of the building code is used, with every condition shown. Under 2,500 psi, with unknown strength or for
anchors set afterwards, a result is only *indicated* until tests in place or an engineer's decision are on record.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from math import sqrt

from groundsill.forces.reading import doubted
from groundsill.house.foundation import FoundationSegment
from groundsill.house.underfloor import SillPiece
from groundsill.loadpath.anchor_force import anchor_force
from groundsill.loadpath.bolt_shares import OnSprings
from groundsill.loadpath.bolt_states import (
    NOT_KNOWN,
    Strength,
    Yields,
    expected_on,
    on_worst_bolt,
    worst_bolt,
    yields_first,
)
from groundsill.loadpath.bolts_counted import TEST_FACTOR, Anchor, Counted
from groundsill.loadpath.case import LineCase, Share, cannot, checked, expected_at, foundation_at
from groundsill.loadpath.chain import Expected, Link
from groundsill.loadpath.ends import to_end
from groundsill.loadpath.proof import NO_TEST, Proof, by_tests
from groundsill.loadpath.prying import PLAIN_FORCE, pried, too_near, toward_end
from groundsill.loadpath.sill_bolts import CAST_IN, Wood
from groundsill.loadpath.sill_exception import EXCEPTION_CLAUSE, Asked, ask
from groundsill.loadpath.sill_proposal import PROPOSAL, PROPOSAL_CLAUSE, ask_proposal, by_proposal
from groundsill.loadpath.stem import height_facts, height_of, how_known, nominal_at_mean, strength_of
from groundsill.standards.aci318_19.expected import expected_breakout
from groundsill.standards.aci318_19.scope import anchor_scope
from groundsill.standards.aci318_19.shear_breakout import breakout_parallel_to_edge
from groundsill.standards.aci318_19.steel import steel_shear, steel_strength_counted, stress_area
from groundsill.standards.aci318_19.strength_factors import design_strength
from groundsill.standards.aci318_19.tables import table_17_5_3
from groundsill.standards.common_practice import table_bolts
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import divide, given, least, note, scale
from groundsill.working.value import Mark, marks_of

__all__ = ["PLAIN_FORCE", "close_group", "concrete_link", "expected_in_concrete", "force_on_one", "steel_in_shear"]

_CLAUSE = "ACI 318-19 17.7.2, 17.7.3, 17.10.6"
_NAMED = {"sill exception": "the sill exception", PROPOSAL: "the 2016 proposal"}
_CLAUSES = {"sill exception": EXCEPTION_CLAUSE, PROPOSAL: PROPOSAL_CLAUSE}
_NEAR_END_IN = 24.0  # an end of the concrete nearer than this may be what breaks out
_BY_TEST_LOAD = f"by the load it held in a test, over {TEST_FACTOR:g} (common practice, no source)"


@dataclass(frozen=True, slots=True)
class _Concrete:
    """One bolt in concrete, lb: design and nominal strength, which way of failing governs, and any extension."""

    design: float
    nominal: float
    way: str
    extension: str


@dataclass(frozen=True, slots=True)
class _Piece:
    """One sill piece as its concrete link needs it: its address and title, and its bolts."""

    id: str
    sill: SillPiece
    address: str
    title: str
    bolts: Counted
    working: tuple[str, str]


@dataclass(frozen=True, slots=True)
class _Governs:
    """The bolt that governs a piece in the foundation, the force on it and on what basis, and when it is to break."""

    found: _Concrete
    demand: float
    words: str
    expected: Expected | None
    yields: Yields = NOT_KNOWN


def concrete_link(
    case: LineCase,
    id: str,
    sill: SillPiece,
    bolts: Counted,
    of_line: Sequence[Anchor],
    share: Share,
    wood: Wood,
    springs: OnSprings,
) -> tuple[Link, Proof, Yields]:
    """The weakest bolt of a sill piece in the foundation, what tests prove of it, and whether the wood yields first.

    ``share`` is the part of the line's force that the bolts of the piece take, ``of_line`` all bolts that count on it,
    ``wood`` what the bolts of the piece hold in wood, ``springs`` how the bolts share where it is not alike.
    """
    title, anchors = f"bolts of sill {sill.mark or id} in the foundation", bolts.anchors
    working = f"line/{case.id}/demand", f"line/{case.id}/sill/{id}"
    piece = _Piece(id, sill, f"line/{case.id}/bolts-concrete/{id}/both", title, bolts, working)
    if sill.cast_in and not anchors:
        return _cannot(piece, f"{case.nds.source.short}; ACI 318-19", CAST_IN), NO_TEST, NOT_KNOWN
    if not anchors:
        unknown, reason = wood.allowable is None, wood.why_not or "no bolt counts in this piece"
        return _cannot(piece, _CLAUSE, reason, wood.marks if unknown else (), applies=unknown), NO_TEST, NOT_KNOWN
    refused = _cannot_be_concrete(case, anchors)
    if refused is None and springs.why_not:
        refused = case.nds.cite("11.3.6"), springs.why_not
    if refused is not None:
        return _cannot(piece, *refused), NO_TEST, NOT_KNOWN
    try:
        with section(piece.address):
            steel = _steel_by_size(anchors)
            every = [_in_concrete(case, anchor, of_line, steel[anchor.diameter_in]) for anchor in anchors]
            on = _governing(case, piece, every, share, wood, springs)
            asked = _asked(case, piece)
    except OutsideLimits as outside:
        return _cannot(piece, _CLAUSE, str(outside)), NO_TEST, NOT_KNOWN
    proof = by_tests(case, anchors, float(on.demand), len(of_line))
    basis, words = case.reading.house.choices.anchor_basis, on.words
    if asked is not None and asked.applies and basis == PROPOSAL and wood.allowable is not None and not proof.passes:
        with section(piece.address):
            design, expected = float(on.found.design), on.expected
            return by_proposal(case, title, id, share, wood, asked, design, expected), proof, on.yields
    if asked is not None and _decided(asked, basis, proof):
        return _by_exception(piece, asked, on.found, basis), proof, on.yields
    if asked is not None and not asked.applies:
        words += f"; {_NAMED[basis]} does not stand in for this check ({_CLAUSES[basis]}): {asked.words}"
    link = checked(
        piece.address, title, "sill", id, level="strength", unit="lb a bolt", demand=on.demand,
        capacity=doubted(on.found.design, marks_of(found.design for found in every)),
        clause=_CLAUSE,
        reason="; ".join(text for text in (on.found.way, words, proof.beside(on.demand, on.found.design)) if text),
        extension="" if proof.passes else _beyond(every),
        expected=on.expected,
        marks=springs.marks | (asked.marks if asked is not None else frozenset()),
        working=(*piece.working, *((f"line/{case.id}/bolt-shares",) if springs.shares is not None else ())),
    )  # fmt: skip
    return link, proof, on.yields


def _beyond(every: Sequence[_Concrete]) -> str:
    """The extensions that any of the bolts rests on."""
    return "; ".join(dict.fromkeys(found.extension for found in every if found.extension))


def _governing(
    case: LineCase, piece: _Piece, every: Sequence[_Concrete], share: Share, wood: Wood, springs: OnSprings
) -> _Governs:
    """The bolt that governs: the weakest where they share alike, else the one with most over its strength."""
    anchors, shares = piece.bolts.anchors, springs.of(piece.id)
    weakest = min(every, key=lambda found: float(found.design))
    strengths = [Strength(a.id, one.design, one.nominal, one.way) for a, one in zip(anchors, every, strict=True)]
    yields = NOT_KNOWN if shares is None else yields_first(wood, strengths)
    if shares is None or by_yield(case, wood):
        demand, words = force_on_one(case, len(anchors), piece.bolts.marks, share, wood)
        expected = expected_in_concrete(weakest.nominal, weakest.way, len(anchors), share.part)
        return _Governs(weakest, demand, words, expected, yields)
    n = worst_bolt(shares, strengths)
    demand, words = on_worst_bolt(case, springs, shares.bolts[n])
    words += _why_not_by_yield(case, wood)
    alone = expected_in_concrete(every[n].nominal, every[n].way, 1, shares.bolts[n].elastic_lb / springs.force)
    return _Governs(every[n], demand, words, expected_on(alone, shares.bolts[n]), yields)


def _asked(case: LineCase, piece: _Piece) -> Asked | None:
    """The rule that may stand in for the check against earthquake, where the designer picked one."""
    basis = case.reading.house.choices.anchor_basis
    if case.lateral != "earthquake" or basis not in _NAMED:
        return None
    put = ask_proposal if basis == PROPOSAL else ask
    return put(case, piece.id, piece.sill, piece.bolts.anchors)


def _decided(asked: Asked, basis: str, proof: Proof) -> bool:
    """Whether the exception stands, or an engineer has to say whether it, or the proposal, does."""
    if asked.applies is None:
        return not proof.passes
    return asked.applies and basis != PROPOSAL


def _cannot(piece: _Piece, clause: str, reason: str, marks: Iterable[Mark] = (), applies: bool = True) -> Link:
    return cannot(
        piece.address, piece.title, "sill", piece.id, clause=clause, reason=reason, applies=applies,
        marks=piece.bolts.marks.union(marks), working=piece.working,
    )  # fmt: skip


def expected_in_concrete(nominal: float, way: str, count: int, share: float) -> Expected | None:
    """The line force at which the weakest of ``count`` is expected to break out; none is known for steel or a test."""
    if not way.startswith(("breakout", "pryout")):
        return None
    mean = expected_breakout(nominal)
    spread = (float(mean.low) / float(mean.best), float(mean.high) / float(mean.best))
    basis = "mean of breakout tests at the 5 % fractile's scatter"
    return expected_at(float(mean.best) * count, share, spread, "brittle", basis)


def _cannot_be_concrete(case: LineCase, anchors: Sequence[Anchor]) -> tuple[str, str] | None:
    """The clause and reason when the bolts stand in something this check does not cover."""
    for anchor in anchors:
        under = foundation_at(case.reading, case.id, anchor.station_in)
        if under is None:
            return _CLAUSE, "no foundation was surveyed under the bolt"
        if under[1].material != "poured concrete":
            return _CLAUSE, f"the foundation there is {under[1].material}"
        if anchor.embedment_in is None:
            continue
        if anchor.edge_in is None:
            return "ACI 318-19 17.7.2.1", "the distance from bolt to the face of the concrete was not measured"
        if height_of(under[1]) is None:
            return "ACI 318-19 17.7.2.6", "the height of the stem is not known"
        if under[1].strength_psi.value is None:
            return "ACI 318-19 17.7.2.2", "the strength of the concrete is not known"
    return None


def _in_concrete(
    case: LineCase, anchor: Anchor, of_line: Sequence[Anchor], steel: tuple[float, float] | None
) -> _Concrete:
    """One bolt in concrete by every way of failing; one of unknown embedment by the load it held in a test."""
    under = foundation_at(case.reading, case.id, anchor.station_in)
    assert under is not None
    if anchor.embedment_in is None:
        return _by_test_load(anchor, steel)
    id, segment = under
    f_c, height = strength_of(case, id, segment), height_of(segment)
    assert f_c is not None and height is not None and anchor.edge_in is not None
    marks = case.reading.marked(f"survey.foundation.segments.{id}", *height_facts(segment))
    h_a = given("h_a", height, "in", "height of the concrete, top to footing", marks)
    found = _breakouts(case, anchor, of_line, f_c, h_a, id, segment)
    if steel is not None:
        found["steel"] = steel
    installed = "cast in" if anchor.kind == "cast-in" else "post-installed"
    design, nominal, by_bond = pried(case, anchor, id, segment, f_c)
    found["pryout"] = (design, nominal)
    way = min(found, key=lambda key: float(found[key][0]))
    design = least(*(v[0] for v in found.values()), symbol="φV_n", label="weakest way of failing in concrete")
    scope = anchor_scope(f_c, installed, how_known(case, id))
    extension = scope.extension
    if anchor.kind != "cast-in" and not anchor.report:
        extension = extension or "an anchor set afterwards without its evaluation report"
    bonded = by_bond if way == "pryout" else ""
    beyond = (extension, bonded, too_near(anchor, of_line))
    nominal = found[way][1] if way == "steel" or bonded else nominal_at_mean(case, id, f_c, found[way][1])
    return _Concrete(design, nominal, way, "; ".join(dict.fromkeys(text for text in beyond if text)))


def _by_test_load(anchor: Anchor, steel: tuple[float, float] | None) -> _Concrete:
    assert anchor.test_lb is not None
    held = given("P_t", anchor.test_lb, "lb", f"load that {anchor.name} held in a test", anchor.marks)
    factor = given("n_t", TEST_FACTOR, "1", "test load over the load counted: common practice, no source")
    counted = divide(held, factor, symbol="φV_n", unit="lb", label="what the test stands for")
    if steel is None:
        return _Concrete(counted, held, _BY_TEST_LOAD, f"embedment not known; {_BY_TEST_LOAD}")
    doubts = marks_of((counted, steel[0]))
    if float(steel[0]) < float(counted):
        return _Concrete(doubted(steel[0], doubts), steel[1], "steel", f"embedment not known; {_BY_TEST_LOAD}")
    return _Concrete(doubted(counted, doubts), held, _BY_TEST_LOAD, f"embedment not known; {_BY_TEST_LOAD}")


def _breakouts(
    case: LineCase, anchor: Anchor, of_line: Sequence[Anchor], f_c: float, h_a: float, id: str, stem: FoundationSegment
) -> dict[str, tuple[float, float]]:
    """Design and nominal breakout: of the edge beside a bolt, alone or with its close neighbours, and of an end."""
    assert anchor.edge_in is not None and anchor.embedment_in is not None
    d_a = given("d_a", anchor.diameter_in, "in", "bolt diameter", anchor.marks)
    h_ef = given("h_ef", anchor.embedment_in, "in", "embedment", anchor.marks)
    side, at_edge = to_end(case, anchor.station_in), _edge_of(case, id, stem)
    count, spacing, edge = close_group(anchor, of_line)
    c_a1 = given("c_a1", edge, "in", "bolt centre to the nearest face", _group_marked(anchor, of_line))
    along = breakout_parallel_to_edge(d_a, h_ef, f_c, c_a1, h_a, c_a2=side, n=float(count), s=spacing, concrete=at_edge)
    found = {"breakout beside the bolt": (along.design, along.nominal)}
    if count > 1:
        note(f"{count} bolts closer than three edge distances break out together: each has its part of the group")
        label = f"one of {count} close bolts"
        each = [scale(v, 1 / count, symbol="φV_cb", label=label) for v in (along.design, along.nominal)]
        found = {f"breakout of {count} close bolts": (each[0], each[1])}
    if side < _NEAR_END_IN:
        found["breakout toward the end of the concrete"] = toward_end(case, anchor, id, stem, f_c, h_a)
    return found


def _edge_of(case: LineCase, id: str, segment: FoundationSegment) -> str:
    """The row of Table 17.7.2.5.1: cracked concrete, with an edge bar only where one was seen."""
    case.reading.noted("whether a bar runs along the edge", f"survey.foundation.segments.{id}.edge_bar")
    return "cracked, edge bar No. 4 or larger" if segment.edge_bar.value else "cracked, no edge bar"


def close_group(anchor: Anchor, of_line: Sequence[Anchor]) -> tuple[int, float, float]:
    """How many bolts break out together with one, their mean spacing and least edge distance, inches.

    Neighbours closer than three edge distances work as a group. Of all the groups of neighbours in a row that hold the
    bolt, the one that leaves least concrete for each bolt.
    """
    assert anchor.edge_in is not None
    row = sorted((a for a in of_line if a.edge_in is not None), key=lambda a: a.station_in)
    at = next(n for n, a in enumerate(row) if a.id == anchor.id)
    first, last = at, at
    while first > 0 and _close(row[first - 1], row[first]):
        first -= 1
    while last + 1 < len(row) and _close(row[last], row[last + 1]):
        last += 1
    best, found = 3 * anchor.edge_in * sqrt(anchor.edge_in), (1, 0.0, anchor.edge_in)
    for a in range(first, at + 1):
        for b in range(at, last + 1):
            count, reach = b - a + 1, row[b].station_in - row[a].station_in
            edge = min(r.edge_in or 0.0 for r in row[a : b + 1])
            if count == 1 or reach / (count - 1) > 3 * edge:
                continue
            if (each := (3 * edge + reach) / count * sqrt(edge)) < best:
                best, found = each, (count, reach / (count - 1), edge)
    return found


def _group_marked(anchor: Anchor, of_line: Sequence[Anchor]) -> frozenset[Mark]:
    """The marks of the bolts that break out with one, and of those on either side that might."""
    row = sorted((a for a in of_line if a.edge_in is not None), key=lambda a: a.station_in)
    at = next(n for n, a in enumerate(row) if a.id == anchor.id)
    doubts = set(anchor.edge_marks)
    for way in (row[at::-1], row[at:]):
        for near, far in pairwise(way):
            # the edge distance of the nearer one alone may keep them apart, whatever that of the farther
            if abs(far.station_in - near.station_in) >= 3 * (near.edge_in or 0.0):
                doubts |= near.edge_marks
                break
            doubts |= far.marks | far.edge_marks
    return frozenset(doubts)


def _close(one: Anchor, other: Anchor) -> bool:
    """Whether two neighbours stand closer than three edge distances."""
    return other.station_in - one.station_in < 3 * min(one.edge_in or 0.0, other.edge_in or 0.0)


def steel_in_shear(diameter: float, marks: frozenset[Mark] = frozenset()) -> tuple[float, float] | None:
    """Design and nominal strength in shear of the steel of a bolt; it is taken as mild until tested."""
    row = str(Fraction(diameter).limit_denominator(16))
    if row not in table_bolts().rows:
        return None
    threads = table_bolts().read(row, "threads per inch", symbol="n_t")
    counted = steel_strength_counted(
        table_bolts().read(row, "ultimate stress", symbol="f_u"), table_bolts().read(row, "yield stress", symbol="f_ya")
    )
    d_a = given("d_a", diameter, "in", "bolt diameter", marks)
    nominal = steel_shear(stress_area(d_a, threads), counted)
    return design_strength(table_17_5_3().read("steel, ductile", "shear"), nominal), nominal


def _steel_by_size(anchors: Sequence[Anchor]) -> dict[float, tuple[float, float] | None]:
    """The steel of each size of bolt, with the marks of the bolts that have it."""
    found = {}
    for size in dict.fromkeys(a.diameter_in for a in anchors):
        alike = (a.marks for a in anchors if a.diameter_in == size)
        found[size] = steel_in_shear(size, frozenset[Mark]().union(*alike))
    return found


def force_on_one(
    case: LineCase, count: int, marks: frozenset[Mark], share: Share, wood: Wood, what: str = "bolt"
) -> tuple[float, str]:
    """The force that the concrete of one of ``count`` bolts must hold, on the basis picked, and that basis in words.

    ``marks`` are those of the facts by which they count; ``what`` they are called on paper.
    """
    choices = case.reading.house.choices
    each = given("1/n", 1 / count, "1", f"{count} {what}s share alike", marks)
    if by_yield(case, wood):
        note(f"basis: {choices.anchor_reason}")
        yields = given("P_y", wood.expected, "lb", f"expected yield of all {what}s of the piece in wood", wood.marks)
        force = scale(yields, each, symbol="V_ua", label=f"force on one {what} when the wood yields")
        return force, f"for the force at which the wood yields (17.10.6.3): {choices.anchor_reason}"
    part = given(
        "σ", share.part, "1", f"share of the line's force that the {what}s of this sill piece take", share.marks
    )
    whole, words = anchor_force(case)
    force = scale(whole, part, symbol="V_ua", label=f"force on the sill piece's {what}s")
    return scale(force, each, symbol="V_ua", label=f"force on one {what}"), words + _why_not_by_yield(case, wood)


def by_yield(case: LineCase, wood: Wood) -> bool:
    """Whether the concrete is checked for the force at which the wood yields: picked with a reason, and known."""
    choices = case.reading.house.choices
    picked = choices.anchor_basis == "wood yields first" and case.lateral == "earthquake"
    reasoned = bool(wood.expected) and bool(choices.anchor_reason.strip())
    return picked and reasoned and case.forces.category not in PLAIN_FORCE


def _why_not_by_yield(case: LineCase, wood: Wood) -> str:
    """What is lacking, in words, where the force at which the wood yields was picked and cannot be taken."""
    picked = case.reading.house.choices.anchor_basis == "wood yields first" and case.lateral == "earthquake"
    if not picked or case.forces.category in PLAIN_FORCE:
        return ""
    lacking = "no reason is given" if wood.expected else "what the wood yields at is not known"
    return f", for {lacking} to take the force at which the wood yields"


def _by_exception(piece: _Piece, asked: Asked, weakest: _Concrete, basis: str) -> Link:
    """The exception holds, or an engineer must say whether it, or the proposal, does."""
    if asked.applies:
        reason = f"the sill exception applies to every bolt, so the wood value stands alone; {asked.words}"
        return _cannot(piece, EXCEPTION_CLAUSE, reason, asked.marks, applies=False)
    reason = f"outside {_NAMED[basis]}'s evidence, an engineer decides: {asked.words}. "
    reason += f"Breakout by ACI would give {float(weakest.design):,.0f} lb a bolt"
    return _cannot(piece, _CLAUSES[basis], reason, asked.marks | marks_of((weakest.design,)))
