"""Overturning of a braced segment, at either end, with its hold-downs and what they are anchored to."""

from __future__ import annotations

from groundsill.loadpath.case import Brace, LineCase, checked, height_path, working_of
from groundsill.loadpath.chain import Link
from groundsill.loadpath.hold_downs import Way, anchor_of, lifted_by, why_not_counted
from groundsill.standards.statics.walls import end_tension, holding_moment, overturning_moment
from groundsill.work.pieces import HoldDownPiece
from groundsill.working.sheet import section
from groundsill.working.steps import convert, given
from groundsill.working.value import marks_of

__all__ = ["overturning_links"]

END_POST_FT = 0.25  # from a segment's end to the middle of its end posts, where no hold-down says otherwise
_NEAR_END_IN = 12.0


def overturning_links(case: LineCase, brace: Brace, force: float, direction: Way) -> tuple[Link, ...]:
    """Moments about the leeward end when the line is pushed toward ``direction`` (+ is toward the line's end).

    Demand and capacity are moments, so that the ratio grows in step with the line's force; the tension that a
    hold-down must take stands in the reason. Each hold-down adds its anchor and the footing it would lift.
    """
    address = f"line/{case.id}/overturning/{brace.id}/{direction}"
    near, about = (brace.from_in, "end") if direction == "+" else (brace.to_in, "start")
    at_end = [
        p
        for _, p in case.of_kind(HoldDownPiece)
        if isinstance(p, HoldDownPiece) and p.segment == brace.segment_id and abs(p.station_in - near) <= _NEAR_END_IN
    ]
    left_out = {p.mark: why for p in at_end if (why := why_not_counted(case, p)) is not None}
    held = [p for p in at_end if p.mark not in left_out]
    with section(address):
        h, b, d, w_D = _measures(case, brace, held, near)
        T_a = given("T_a", sum(p.capacity_lb for p in held), "lb", _held_words(held))
        f_D = case.holding_factor()
        pull = end_tension(force, h, f_D, w_D, b, d)
        turning, holding = overturning_moment(force, h), holding_moment(f_D, w_D, b, T_a, d)
    tension = f"tension at the end {float(pull):,.0f} lb" if pull > 0 else "dead load outweighs the pull"
    link = checked(
        address,
        f"overturning about the {about} of {brace.name}",
        "segment",
        brace.segment_id,
        level="allowable",
        unit="lb-ft",
        demand=turning,
        capacity=holding,
        direction=direction,
        reason="; ".join(
            (
                _held_words(held),
                *(f"hold-down {mark} is not counted: {why}" for mark, why in left_out.items()),
                f"{tension}; what the storey above adds is not counted",
            )
        ),
        clause=f"equilibrium with {_combination(case)}",
        working=working_of(case, brace),
    )
    links = [link]
    for piece in at_end:
        links.append(anchor_of(case, brace, piece, f"{address}-anchor-{piece.mark}", direction, h=h, b=b, d=d, w_D=w_D))
        links.append(lifted_by(case, brace, piece, f"{address}-footing-{piece.mark}", direction, pull))
    return tuple(links)


def _combination(case: LineCase) -> str:
    place = "2.4.1 combination 7" if case.lateral == "wind" else "2.4.5 combination 10"
    return case.forces.rules.cite(place)


def _measures(
    case: LineCase, brace: Brace, held: list[HoldDownPiece], near: float
) -> tuple[float, float, float, float]:
    """Height, length, lever arm in feet, and dead load along the segment in plf (shared by panels face to face)."""
    path = height_path(brace.segment_id)
    h_in = case.reading.number(path, brace.segment.height_in, "h", "in", f"height of {brace.segment.mark}")
    assert h_in is not None  # a segment of unknown height is never counted as a brace
    b = convert(given("b", brace.length_in, "in", f"length of {brace.name}"), "in", "ft")
    offset = max(held[0].post_offset_in, abs(held[0].station_in - near)) / 12 if held else END_POST_FT
    short = max(float(b) - offset - END_POST_FT, 0.1 * float(b))
    d = given("d", short, "ft", "lever arm: length less the distance of hold-down and end post from the ends")
    middle = (brace.from_in + brace.to_in) / 2
    there = sum(1 for other in case.counted() if other.from_in <= middle <= other.to_in)
    load = case.forces.gravity.lines[case.id]
    dead = max((float(load.dead) - float(load.on_foundation)) / (case.length_in / 12), 0.0) / max(there, 1)
    label = "dead load on the line from the gravity take-down, spread evenly"
    w_D = given("w_D", dead, "plf", label, marks_of((load.dead, load.on_foundation)))
    return convert(h_in, "in", "ft"), b, d, w_D


def _held_words(held: list[HoldDownPiece]) -> str:
    if not held:
        return "nothing but dead load holds the end down"
    return "; ".join(f"hold-down {p.mark} ({p.report or 'capacity as entered'})" for p in held)
