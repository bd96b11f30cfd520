"""Bolts on the springs of their slip: what each takes of the force on the sill, and which state a check stands on.

Where bolts stand close in weak concrete, or in concrete that crumbles, sharing alike within a sill piece is no longer
taken for granted. Each sill piece is a bar of its own E A. Splices are springs between the bars (where nobody says how
far one gives, the line is run with it as one piece and as cut); bare joints are breaks. The bolts hold the bars by the
slip of a dowel joint, and the braced parts press on them over their own lengths. Three states: elastic; with hole
slack, every bolt in the order of contact that is worst for it, up to what its joint in wood can bring; and at yield,
each joint in wood at its own. Breakout takes the worst of them; the wood may share at yield only where it yields before
the concrete breaks, at expected strengths.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import inf
from typing import Final

from groundsill.house.underfloor import SillPiece
from groundsill.loadpath.anchor_force import anchor_force
from groundsill.loadpath.bolts_counted import Anchor
from groundsill.loadpath.case import Brace, LineCase, foundation_at, part_length
from groundsill.loadpath.shares import BoltShare, JointPull, LineShares, PanelShear, SillShares
from groundsill.loadpath.side_plates import LOW_MODULUS_PSI
from groundsill.loadpath.sill_bolts import SPREAD_OF_YIELD, Wood
from groundsill.loadpath.sill_joints import TOUCH_IN, Tie
from groundsill.mechanics.bar_on_springs import Along, Bar, Held, Spring, axial, held, worst_at_joint, worst_first
from groundsill.standards.statics.sill import bolts_that_work, transfer_length
from groundsill.working.sheet import section
from groundsill.working.steps import given, multiply, note
from groundsill.working.value import Mark, marks_of

__all__ = ["CLOSE_IN", "OnSill", "OnSprings", "on_springs", "why_springs"]

CLOSE_IN: Final = 16.0  # bolts of one piece nearer to each other than a stud space are close; our choice
WEAK_PSI: Final = 2500.0
_HIGH = SPREAD_OF_YIELD[1]
_NOTES = (
    "the sill as an elastic bar, its wood by a low modulus (common practice, no source)",
    "slip of the bolts as NDS 11.3.6 has it for wood to metal: an extension, the stiffer and so the careful side",
    "with slack: one bolt touches the side of its hole, all others have their whole play to close; of all orders of "
    "contact that is the worst for the one, which brings no more into the concrete than its joint in wood bears at the "
    f"high end of what is expected of it ({_HIGH:.0%} of it; common practice, no source)",
    "the ends of pieces that only butt pass nothing, as everywhere in the chain",
)
_BOTH_WAYS = "a splice whose give is not known is run as one piece and as cut, each bolt by the worse"


@dataclass(frozen=True, slots=True)
class OnSill:
    """A sill piece as the springs need it: its bolts, what they hold in wood, and two parts of the line's force.

    ``part`` comes down on the piece (``untold`` where nobody knows how much does); ``left`` is what its bolts are left
    with where all share at yield.
    """

    id: str
    sill: SillPiece
    anchors: tuple[Anchor, ...]
    wood: Wood
    part: float
    left: float
    plated: bool = False
    untold: bool = False
    marks: frozenset[Mark] = frozenset()

    @property
    def name(self) -> str:
        """What to call it on paper."""
        return f"sill {self.sill.mark or self.id}"


@dataclass(frozen=True, slots=True)
class OnSprings:
    """A line's bolts on springs, or why that cannot be worked out; with neither, they share alike.

    ``pulls`` is the elastic force through each joint, lb at allowable level; ``marks`` those of all it rests on, and
    of what says whether springs are asked for.
    """

    shares: LineShares | None = None
    why_not: str = ""
    pulls: tuple[float, ...] = ()
    marks: frozenset[Mark] = frozenset()

    @property
    def force(self) -> float:
        """The line's force that the shares are told at."""
        return self.shares.force_lb if self.shares is not None else 0.0

    def of(self, sill: str) -> SillShares | None:
        """The shares of one sill piece; None where it has no bolts."""
        found = self.shares.sills if self.shares is not None else ()
        return next((one for one in found if one.id == sill), None)


def why_springs(case: LineCase, anchors: Sequence[Sequence[Anchor]]) -> str:
    """Why the bolts of a line are put on springs, in words; empty where they share alike. Bolts come piece by piece."""
    crumbles = [
        why for of_piece in anchors for a in of_piece if (why := _weak_at(case, a)) and why.endswith("crumbles")
    ]
    found = []
    for one, beside in (pair for of_piece in anchors for pair in pairwise(of_piece)):
        if beside.station_in - one.station_in < CLOSE_IN:
            found += [why for why in (_weak_at(case, one), _weak_at(case, beside)) if why]
    close = [f"bolts stand closer than {CLOSE_IN:g} in."] if found else []
    if found or crumbles:
        return "; ".join(dict.fromkeys((*crumbles, *found, *close)))
    asked = case.reading.house.choices.bolt_springs == "every line" and any(anchors)
    return "asked for on every line" if asked else ""


def _weak_at(case: LineCase, anchor: Anchor) -> str:
    """Why the concrete under a bolt counts as weak, in words; empty where it is not."""
    under = foundation_at(case.reading, case.id, anchor.station_in)
    if under is None or under[1].material != "poured concrete":
        return ""
    id, stem = under
    f_c = stem.strength_psi.value
    if stem.condition.value == "crumbling":
        return f"the concrete of {stem.mark or id} crumbles"
    if f_c is None:
        return f"the strength of {stem.mark or id} is not known"
    return (
        f"the concrete of {stem.mark or id} is taken at {f_c:,.0f} psi, under {WEAK_PSI:,.0f}" if f_c < WEAK_PSI else ""
    )


def on_springs(case: LineCase, pieces: Sequence[OnSill], ties: Sequence[Tie]) -> OnSprings:
    """The bolts of a line on springs, where they stand close in weak concrete, it crumbles, or that is asked for."""
    bolts = [piece.anchors for piece in pieces]
    why = why_springs(case, bolts)
    with section(f"line/{case.id}/bolt-shares"):
        chosen = _chosen(case, bolts)
        if not why or float(case.strength) <= 0:
            return OnSprings(marks=chosen)
        note(f"bolts on the springs of their slip, since {why}")
        why_not = _why_not(case, pieces, ties)
        if why_not:
            return OnSprings(why_not=why_not, marks=chosen)
        model = _modelled(case, pieces, ties, chosen)
        return OnSprings(_line(case, model, why), "", _pulls(case, model), model.marks)


def _chosen(case: LineCase, anchors: Sequence[Sequence[Anchor]]) -> frozenset[Mark]:
    """The marks of what says whether the concrete under the bolts is weak or crumbles."""
    found = (foundation_at(case.reading, case.id, a.station_in) for of_piece in anchors for a in of_piece)
    stems = dict.fromkeys(under[0] for under in found if under is not None)
    marks = frozenset[Mark]()
    for id in stems:
        path = f"survey.foundation.segments.{id}"
        marks |= case.reading.noted("whether the concrete is weak or crumbles", path, "condition", "strength_psi")
    return marks


def _why_not(case: LineCase, pieces: Sequence[OnSill], ties: Sequence[Tie]) -> str:
    """What is lacking for the bars and springs."""
    untold, braces = case.untold(), _pressing(case)
    for n, piece in enumerate(pieces):
        beside = [m for m in (n - 1, n) if 0 <= m < len(ties) and ties[m].capacity > 0]
        if not piece.anchors and not beside:
            continue
        if piece.plated and beside:
            return f"{piece.name} has side plates and is spliced to its neighbour: how far they give is in no document"
        if piece.plated or piece.untold:
            continue
        if piece.sill.width_in.value is None or piece.sill.thickness_in.value is None:
            return f"the width or thickness of {piece.name} is not known, nor then how it shares among its bolts"
        over = [b for b in untold if part_length(b, piece.sill.from_in, piece.sill.to_in) > 0]
        if over and len(braces) > 1:
            return f"where along {piece.name} force comes down is not known: {over[0].name}: {over[0].why_not}"
    return ""


def _pressing(case: LineCase) -> list[Brace]:
    """The braced parts that press on the sill, or may."""
    return [brace for brace in case.braces if brace.share > 0 or brace in case.untold()]


@dataclass(frozen=True, slots=True)
class _Model:
    """The bars and springs of a line, and the ways its splices may give; ``joints`` are those between its bars."""

    pieces: tuple[OnSill, ...]
    bars: tuple[Bar, ...]
    ways: tuple[tuple[float, ...], ...]
    ties: tuple[Tie, ...]
    joints: tuple[int, ...]
    springs: tuple[Spring, ...]
    owners: tuple[tuple[int, Anchor], ...]
    panels: tuple[tuple[float, float, float], ...]
    transfer: float | None
    marks: frozenset[Mark]

    def loads(self, force: float) -> tuple[Along, ...]:
        """What presses on the sill at a force on the line."""
        return tuple(Along(low, high, part * force) for low, high, part in self.panels)

    @property
    def tight(self) -> tuple[Spring, ...]:
        """The springs without slack."""
        return tuple(replace(spring, gap=0.0) for spring in self.springs)

    @property
    def as_one(self) -> tuple[float, ...]:
        """The ties if every joint where pieces meet were strapped as one piece."""
        return tuple(inf if self.meets(n) else 0.0 for n in range(len(self.bars) - 1))

    def meets(self, n: int) -> bool:
        """Whether two bars that follow each other lie end to end."""
        return self.bars[n + 1].start - self.bars[n].end <= TOUCH_IN


def _modelled(case: LineCase, pieces: Sequence[OnSill], ties: Sequence[Tie], chosen: frozenset[Mark]) -> _Model:
    """Every sill piece of known section; not those that side plates hold, or that nobody knows the force of."""
    known = [
        n
        for n, p in enumerate(pieces)
        if not (p.plated or p.untold) and p.sill.width_in.value and p.sill.thickness_in.value
    ]
    kept = tuple(pieces[n] for n in known)
    E = given("E", LOW_MODULUS_PSI, "psi", "a low modulus of old wood: common practice, no source")
    stiff = [_stiffness(case, piece, E) for piece in kept]
    bars = tuple(Bar(p.sill.from_in, p.sill.to_in, float(EA)) for p, EA in zip(kept, stiff, strict=True))
    sizes = dict.fromkeys(a.diameter_in for piece in kept for a in piece.anchors)
    slip = {size: case.nds.slip_modulus_wood_concrete(size) for size in sizes}
    owners = tuple((n, anchor) for n, piece in enumerate(kept) for anchor in piece.anchors)
    springs = tuple(Spring(a.station_in, float(slip[a.diameter_in]), a.slack_in) for _, a in owners)
    between = tuple(ties[a] if b == a + 1 else Tie() for a, b in pairwise(known))
    marks = marks_of((*stiff, *slip.values())) | case.doubts | chosen
    marks = marks.union(*(piece.marks | piece.wood.marks for piece in kept), *(tie.marks for tie in between))
    return _Model(
        kept, bars, _ways(between), between, tuple(known[:-1]), springs, owners, tuple(_panels(case, kept)),
        _transfer(kept, stiff, slip), marks,
    )  # fmt: skip


def _stiffness(case: LineCase, piece: OnSill, E: float) -> float:
    """E A of a sill piece, by its gross section as NDS 11.3.6 takes it."""
    path, sill = f"survey.underfloor.sills.{piece.id}", piece.sill
    wide = case.reading.number(f"{path}.width_in", sill.width_in, "b", "in", f"width of {piece.name}")
    thick = case.reading.number(f"{path}.thickness_in", sill.thickness_in, "t", "in", f"thickness of {piece.name}")
    assert wide is not None and thick is not None
    return multiply(E, wide, thick, symbol="EA", unit="lb", label=f"axial stiffness of {piece.name}")


def _ways(ties: Sequence[Tie]) -> tuple[tuple[float, ...], ...]:
    """The ties as springs; where the give of a splice is not known, as one piece and as cut."""
    firm = tuple(0.0 if t.capacity <= 0 else inf if t.stiffness is None else t.stiffness for t in ties)
    loose = tuple(0.0 if t.capacity <= 0 or t.stiffness is None else t.stiffness for t in ties)
    return (firm,) if firm == loose else (firm, loose)


def _panels(case: LineCase, pieces: Sequence[OnSill]) -> list[tuple[float, float, float]]:
    """Stretches of sill that braced parts press on, each with its part of the line's force; all of a piece with none.

    Parts that each take the worse of two ways of sharing come to no more than the whole on any one piece; a part that
    stands alone takes all of it, whatever its strength.
    """
    braces = _pressing(case)
    found = []
    for piece in pieces:
        low, high = piece.sill.from_in, piece.sill.to_in
        if not braces:
            found.append((low, high, piece.part))
            continue
        over = [(b, (b.share or 1.0) * part_length(b, low, high) / b.length_in) for b in braces]
        whole = sum(weight for _, weight in over)
        for brace, weight in over:
            if weight > 0:
                part = piece.part * weight / whole
                found.append((max(low, brace.from_in), min(high, brace.to_in), part))
    return [panel for panel in found if panel[2] > 0]


def _transfer(pieces: Sequence[OnSill], stiff: Sequence[float], slip: dict[float, float]) -> float | None:
    """The transfer length of the piece with most bolts, at their mean spacing; None without two that stand apart."""
    n = max(range(len(pieces)), key=lambda n: len(pieces[n].anchors), default=None)
    if n is None or len(pieces[n].anchors) < 2:
        return None
    row = pieces[n].anchors
    spacing = (row[-1].station_in - row[0].station_in) / (len(row) - 1)
    if spacing <= 0:
        return None
    s = given("s", spacing, "in", f"mean spacing of the bolts of {pieces[n].name}")
    return float(transfer_length(stiff[n], slip[row[0].diameter_in], s))


# ---- The three states -----------------------------------------------------------------------------------------------


def _line(case: LineCase, model: _Model, why: str) -> LineShares:
    whole, level = anchor_force(case)
    loads = model.loads(float(whole))
    elastic = [held(model.bars, ties, model.tight, loads) for ties in model.ways]
    slack = [worst_first(model.bars, ties, model.springs, loads) for ties in model.ways]
    sills = tuple(_sill(model, n, float(whole), elastic, slack) for n, p in enumerate(model.pieces) if p.anchors)
    as_one = held(model.bars, model.as_one, model.tight, loads)
    most, where = _greatest_axial(model, elastic[0], loads)
    allowable = float(case.allowable) / float(whole)
    joints = tuple(_joint(model, n, loads, as_one.joints[n] * allowable) for n in range(len(model.bars) - 1))
    notes = (*_NOTES, _BOTH_WAYS) if len(model.ways) > 1 else _NOTES
    worst = min(elastic, key=lambda found: found.working)
    if worst.greatest > 0:
        V = given("V", sum(worst.springs), "lb", f"force on all bolts of the line, {level}", model.marks)
        bolts_that_work(V, given("V_1", worst.greatest, "lb", "elastically, on the bolt that takes most", model.marks))
    return LineShares(
        why, level, float(whole), sills, joints,
        tuple(PanelShear(a.start, a.end, a.force / (a.end - a.start) * 12) for a in loads),
        len(model.owners), worst.working, as_one.working, most, where, model.transfer, worst.lost, notes,
    )  # fmt: skip


def _sill(model: _Model, n: int, whole: float, elastic: Sequence[Held], slack: Sequence[Sequence[Held]]) -> SillShares:
    """One piece: each bolt by the worse of the ways its splices may give."""
    piece, bar = model.pieces[n], model.bars[n]
    mine = [m for m, (owner, _) in enumerate(model.owners) if owner == n]
    yields = {id: P for id, _, P in piece.wood.each}
    total = sum(yields.values())
    bolts, left = [], []
    for m in mine:
        anchor, spring = model.owners[m][1], model.springs[m]
        at_yield = piece.left * whole * yields[anchor.id] / total if anchor.id in yields and total > 0 else None
        orders = [way[m] for way in slack]
        most = yields[anchor.id] * _HIGH if anchor.id in yields else inf
        elastic_lb = max(found.springs[m] for found in elastic)
        slack_lb = max(order.springs[m] for order in orders)
        left += [_working(order, mine, m, max(most, elastic_lb)) for order in orders]
        bolts.append(
            BoltShare(
                anchor.id, anchor.mark, anchor.station_in, spring.stiffness, spring.gap, yields.get(anchor.id),
                elastic_lb, max(min(slack_lb, most), elastic_lb), at_yield, piece.left * whole / len(mine),
                elastic_lb < most < slack_lb,
            )
        )  # fmt: skip
    works = min(_working(found, mine, m) for m in mine for found in elastic)
    by_yield = total / max(yields.values()) if total > 0 else None
    return SillShares(
        piece.id, piece.sill.mark, bar.start, bar.end, bar.stiffness, piece.part * whole, tuple(bolts),
        0.0 if works == inf else works, 0.0 if min(left) == inf else min(left), by_yield,
    )  # fmt: skip


def _working(found: Held, mine: Sequence[int], worst: int, most: float = inf) -> float:
    """The whole force on a piece's bolts over that on one of them, at ``most``; without end where there is none."""
    total, one = sum(found.springs[m] for m in mine), min(found.springs[worst], most)
    return total / one if one > 0 else inf


def _joint(model: _Model, n: int, loads: Sequence[Along], strap: float) -> JointPull:
    tie, bar = model.ties[n], model.bars[n]
    return JointPull(
        model.pieces[n].id, bar.end, tie.by if tie.capacity > 0 else "", _elastic_through(model, n, loads),
        _slack_through(model, n, loads), abs(strap) if model.meets(n) else None,
    )  # fmt: skip


def _elastic_through(model: _Model, n: int, loads: Sequence[Along]) -> float:
    """The force through a joint without slack, by the worse of the ways its splice may give."""
    return max(abs(held(model.bars, ties, model.tight, loads).joints[n]) for ties in model.ways)


def _slack_through(model: _Model, n: int, loads: Sequence[Along]) -> float:
    """The greatest force through a joint with slack: on one side of it every bolt touches, on the other none."""
    orders = (order for ties in model.ways for order in worst_at_joint(model.bars, ties, model.springs, loads, n))
    return max(abs(order.joints[n]) for order in orders)


def _pulls(case: LineCase, model: _Model) -> tuple[float, ...]:
    """The elastic force through each joint of the sill, lb at allowable level, by the piece before it.

    A strap gives: what slack would bring on it ends when it has stretched by the play of the holes beyond it.
    """
    loads = model.loads(float(case.allowable))
    found = dict.fromkeys(range(len(case.sills) - 1), 0.0)
    for n, joint in enumerate(model.joints):
        found[joint] = _elastic_through(model, n, loads)
    return tuple(found.values())


def _greatest_axial(model: _Model, found: Held, loads: Sequence[Along]) -> tuple[float, float]:
    """The greatest pull or push in the sill, and where; between two stops it runs straight."""
    stops = {x for bar in model.bars for x in (bar.start, bar.end)}
    stops |= {x for load in loads for x in (load.start, load.end)}
    most, where = 0.0, 0.0
    for x in sorted(stops | {spring.at for spring in model.springs}):
        before = axial(model.bars, model.ways[0], model.tight, loads, found, x)
        after = before + sum(f for s, f in zip(model.springs, found.springs, strict=True) if s.at == x)
        for there in (before, after):
            if abs(there) > most + 1e-9:
                most, where = abs(there), x
    return most, where
