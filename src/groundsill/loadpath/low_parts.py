"""How stiff a part with no cripple wall is: joists straight on the sill give by the slip of their ties and bolts alone.

Ties and bolts stand in a row: the floor slips on the sill, the sill on the foundation. A bolt in concrete is taken to
slip like one in metal, and a toenail like a bolt in wood: that carries the load/slip moduli of the wood standard beyond
where it gives them. Clips, and bolts that were not seen whole, slip nobody knows how much.
"""

from __future__ import annotations

from dataclasses import replace

from groundsill.forces.reading import doubted
from groundsill.loadpath.bolts_counted import Anchor, anchors_in
from groundsill.loadpath.case import Brace, LineCase
from groundsill.loadpath.sill_bolts import may_hold
from groundsill.work.pieces import TiePiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import add, divide, given, multiply
from groundsill.working.value import Mark

__all__ = ["slip_marks", "with_slip"]


def with_slip(case: LineCase, brace: Brace) -> Brace:
    """A part with no cripple wall with its stiffness, or with what keeps anybody from knowing it."""
    found, held = _ties(case, brace), _bolts(case, brace)
    if found == 0 or held == 0:
        return replace(brace, stiffness_lb_in=doubted(0.0, (_extension(case),), unit="lb/in", symbol="k"))
    if isinstance(found, str) or isinstance(held, str):
        unknown = [why for why in (found, held) if isinstance(why, str)]
        known = [k for k in (found, held) if not isinstance(k, str)]  # with the other that does not slip at all
        return replace(brace, why_not=" and ".join(unknown), unknown=True, stiffest_lb_in=known[0] if known else None)
    both = add(found, held, symbol="k_t + k_b", label="ties and bolts")
    label = f"stiffness of {brace.name}: ties and bolts in a row"
    k = divide(multiply(found, held, symbol="k_t k_b", unit="lb^2/in^2"), both, symbol="k", unit="lb/in", label=label)
    return replace(brace, stiffness_lb_in=doubted(k, (_extension(case),)))


def _extension(case: LineCase) -> Mark:
    """What such a stiffness rests on."""
    moduli = f"load/slip moduli of {case.nds.cite('11.3.6')} for toenails and for bolts in concrete"
    return Mark("extension", f"stiffness of joists on a sill: {moduli}")


def slip_marks(case: LineCase) -> frozenset[Mark]:
    """The marks of all that says how stiff the parts of a line with no cripple wall are, or that nobody can say."""
    low = [brace for brace in case.braces if brace.kind == "joists on sill"]
    if not low:
        return frozenset()
    found = case.reading.marked(f"survey.underfloor.lines.{case.id}.floor_connection.spacing_in")
    for id, sill in case.sills:
        if any(min(sill.to_in, brace.to_in) > max(sill.from_in, brace.from_in) for brace in low):
            found |= anchors_in(case, sill).marks | case.reading.marked(f"survey.underfloor.sills.{id}.condition")
    return found


def _ties(case: LineCase, brace: Brace) -> float | str:
    """Load for an inch of slip between floor and sill, or why nobody can say."""
    new = [p for _, p in case.of_kind(TiePiece) if isinstance(p, TiePiece)]
    new = [p for p in new if min(p.to_in, brace.to_in) > max(p.from_in, brace.from_in)]
    if new:
        return _clips(brace, new)
    connection = case.line.floor_connection
    if connection.kind == "none":
        return 0.0
    if connection.kind != "toenails":
        return (
            "how the floor is held was not seen"
            if connection.kind == "not seen"
            else "no standard says how far clips slip"
        )
    spacing = connection.spacing_in.value
    if spacing is None or not connection.nail:
        return "the toenails' size or spacing is not known"
    try:
        one = case.nds.slip_modulus_wood(case.nds.nail_size(connection.nail).D)
    except OutsideLimits:
        return f"no table holds the nail {connection.nail!r}"
    doubts = case.reading.marked(f"survey.underfloor.lines.{case.id}.floor_connection.spacing_in")
    count = given("n_t", brace.length_in / spacing, "1", f"toenails along {brace.name}", doubts)
    return multiply(one, count, symbol="k_t", unit="lb/in", label="floor on the sill")


def _clips(brace: Brace, new: list[TiePiece]) -> float | str:
    """The same of new clips, by their reports; old nails are not added to them."""
    untold = [p for p in new if p.slip_lb_in is None]
    if untold:
        return f"how far the clips of {untold[0].mark or 'a tie'} slip is not entered (slip_lb_in)"
    total = 0.0
    for piece in new:
        inside = min(piece.to_in, brace.to_in) - max(piece.from_in, brace.from_in)
        total += piece.count * inside / (piece.to_in - piece.from_in) * (piece.slip_lb_in or 0.0)
    return given("k_t", total, "lb/in", f"new clips along {brace.name}, by their report")


def _bolts(case: LineCase, brace: Brace) -> float | str:
    """Load for an inch of slip between sill and foundation, or why nobody can say."""
    anchors: list[Anchor] = []
    doubts: frozenset[Mark] = frozenset()
    for id, sill in case.sills:
        bolts = anchors_in(case, sill)
        here = [a for a in bolts.anchors if brace.from_in <= a.station_in <= brace.to_in]
        if min(sill.to_in, brace.to_in) > max(sill.from_in, brace.from_in):
            doubts |= bolts.marks
            if sill.cast_in:
                return "the sill is cast into the concrete"
            if may_hold(sill, bolts):
                return f"whether bolts in sill {sill.mark or id} count is not known"
        anchors += here
    if not case.sills:
        return "no sill was surveyed there"
    by_size: dict[float, int] = {}
    for anchor in anchors:
        by_size[anchor.diameter_in] = by_size.get(anchor.diameter_in, 0) + 1
    if not by_size:
        return 0.0
    terms = []
    for size, number in sorted(by_size.items()):
        one = case.nds.slip_modulus_wood_concrete(given("D", size, "in", f"diameter of bolts in {brace.name}", doubts))
        count = given("n_b", number, "1", "bolts that count", doubts)
        terms.append(multiply(one, count, symbol="k_b", unit="lb/in", label="sill on the foundation"))
    return terms[0] if len(terms) == 1 else add(*terms, symbol="k_b", label="sill on the foundation")
