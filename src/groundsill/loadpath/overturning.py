"""Overturning of a braced segment, at either end, with its end posts, its hold-downs and what they are anchored to."""

from __future__ import annotations

from dataclasses import replace
from functools import partial

from groundsill.loadpath.case import Brace, LineCase, checked, working_of
from groundsill.loadpath.chain import Link
from groundsill.loadpath.end_posts import Pressing, post_links
from groundsill.loadpath.footing_lift import lifted_by
from groundsill.loadpath.held_ends import beyond_end, hold_downs_at
from groundsill.loadpath.hold_downs import anchor_of, why_not_counted
from groundsill.loadpath.post_tension import is_told, pulled_post_link
from groundsill.loadpath.rim_tie import rim_tie
from groundsill.loadpath.storeys_over import Bound, Over, bounded, over_line
from groundsill.loadpath.turning import WAYS, Turning, beside_opening, turning_of
from groundsill.standards.statics.walls import end_tension, holding_moment
from groundsill.work.pieces import HoldDownPiece
from groundsill.working.sheet import section
from groundsill.working.steps import add, given, multiply, note

__all__ = ["over_line", "overturning_links"]

_BEYOND = "it stands outside this part, on no post that both are said to be nailed to"


def overturning_links(case: LineCase, brace: Brace, over: Over, force: float) -> list[Link]:
    """Moments about the leeward end, the line pushed toward its end (+) and toward its start (-).

    Demand and capacity are moments, so that the ratio grows in step with the line's force; the tension that a
    hold-down must take stands in the reason. The post that is pulled, the one that is pressed down and the sill under
    it follow, then each hold-down's anchor and the footing it would lift.
    """
    pressing = Pressing(case, force, f"line/{case.id}/overturning/{brace.id}")
    bounds = over.bounds(brace)
    found: list[Link] = []
    turned: Turning | None = None
    for way in WAYS:
        at_end = hold_downs_at(case, brace, way)
        left_out = {p.mark: why for p in at_end if (why := why_not_counted(case, p)) is not None}
        held = [p for p in at_end if p.mark not in left_out]
        if turned is None or held or turned.held:
            address = f"{pressing.address}/{way}"
            with section(address):
                turned = turning_of(case, brace, held, way, address)
        else:
            turned = turned.the_other_way()
        found += _one_way(case, turned, pressing, bounds, at_end, left_out)
        found += _at_parts(case, turned, force, bounds)
    return found


def _at_parts(case: LineCase, turned: Turning, force: float, bounds: tuple[Bound, ...]) -> list[Link]:
    """The pressed post of every full-height part of a perforated wall, at its ends and beside its openings."""
    brace, found = turned.brace, list[Link]()
    parts = brace.around.parts if brace.around is not None else ()
    for n, part in enumerate(parts):
        after = parts[n + 1].from_in - part.to_in if n + 1 < len(parts) else 0.0
        before = part.from_in - parts[n - 1].to_in if n else 0.0
        one = replace(brace, id=f"{brace.id}.{n + 1}", from_in=part.from_in, to_in=part.to_in, part=n + 1)
        pressing = Pressing(case, force, f"line/{case.id}/overturning/{one.id}")
        at = f"{pressing.address}/{turned.way}"
        with section(at):
            there = beside_opening(case, replace(turned, at=at), one, after if turned.way == "+" else before)
        found += post_links(case, there, pressing, bounds)
    return found


def _one_way(
    case: LineCase, turned: Turning, pressing: Pressing, bounds: tuple[Bound, ...], at_end: list[HoldDownPiece],
    left_out: dict[str, str],
) -> list[Link]:  # fmt: skip
    address, force = f"{pressing.address}/{turned.way}", pressing.force
    held = [p for p in at_end if p.mark not in left_out]
    links = [bounded(bounds, partial(_turned_over, case, turned, force, address, held, left_out))]
    if held and all(is_told(piece) for piece in held):
        links.append(bounded(bounds, partial(pulled_post_link, case, turned, held, force, f"{address}-pulled")))
    if turned.brace.around is None:
        links += post_links(case, turned, pressing, bounds)
    for piece in at_end:
        to_anchor, to_footing = f"{address}-anchor-{piece.mark}", f"{address}-footing-{piece.mark}"
        links.append(bounded(bounds, partial(anchor_of, case, turned, piece, held, to_anchor)))
        if case.inner is None:  # a new footing is worked out whole, as a beam on its soil
            links.append(bounded(bounds, partial(lifted_by, case, turned, piece, force, to_footing)))
    return links


def _turned_over(
    case: LineCase, turned: Turning, force: float, address: str, held: list[HoldDownPiece], left_out: dict[str, str],
    bound: Bound,
) -> Link:  # fmt: skip
    """The segment about the middle of its pressed post."""
    brace, about = turned.brace, "end" if turned.way == "+" else "start"
    with section(address):
        if bound.words:
            note(f"{bound.words}: {bound.why}" if bound.why else f"{bound.words}:")
        T_a = given("T_a", sum(p.capacity_lb for p in held), "lb", _held_words(held))
        f_D = case.holding_factor()
        turning = turned.moment(force, bound.arm_ft)
        pull = end_tension(turning, f_D, turned.w_D, turned.b, turned.x_D, turned.d)
        holding = holding_moment(f_D, turned.w_D, turned.b, turned.x_D, T_a, turned.d)
        tie = rim_tie(case, turned, bound)
        if tie.force is not None:
            by_rim = multiply(tie.force, turned.d, symbol="M_rim", unit="lb-ft", label="by the rim")
            holding = add(holding, by_rim, symbol="M_r", label="with the rim")
    beyond = {p.mark: _BEYOND for p in beyond_end(case, brace, turned.way)}
    not_held = [f"hold-down {mark} is not counted: {why}" for mark, why in (left_out | beyond).items()]
    tension = f"tension at the end {float(pull):,.0f} lb" if pull > 0 else "dead load outweighs the pull"
    return checked(
        address,
        f"overturning about the {about} of {brace.name}",
        "segment",
        brace.segment_id,
        level="allowable",
        unit="lb-ft",
        demand=turning,
        capacity=holding,
        direction=turned.way,
        reason=bound.in_full("; ".join(text for text in (_held_words(held), *not_held, tension, tie.words) if text)),
        extension=tie.extension,
        clause=f"equilibrium with {_combination(case)}",
        working=(*working_of(case, brace), *((turned.at,) if turned.at != address else ())),
    )


def _combination(case: LineCase) -> str:
    place = "2.4.1 combination 7" if case.lateral == "wind" else "2.4.5 combination 10"
    return case.forces.rules.cite(place)


def _held_words(held: list[HoldDownPiece]) -> str:
    if not held:
        return "nothing but dead load holds the end down"
    return "; ".join(f"hold-down {p.mark} ({p.report or 'capacity as entered'})" for p in held)
