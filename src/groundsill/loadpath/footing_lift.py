"""The footing that a hold-down lifts: how much of it the old concrete can lift as plain concrete, and what that weighs.

A beam of plain concrete on soil that pushes and does not pull. Its length to either side ends at the first crack,
joint, step or end of the concrete, at the foot of the segment's own pressed post, and halfway to the next hold-down
that is pulled at the same time; and it is no longer than the concrete carries, hanging free to the shorter side and
spanning to where it touches the soil again on the longer one, bent and sheared by its own load with ASCE 7 2.3.6
combination 6. What is lifted holds with 2.4.5 combination 10, and is never more than what hangs free to both sides.
"""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.house.foundation import FoundationSegment
from groundsill.loadpath.case import LineCase, cannot, checked, foundation_at, working_of
from groundsill.loadpath.chain import Link
from groundsill.loadpath.footings import inside_depth_in
from groundsill.loadpath.held_ends import hold_downs_at
from groundsill.loadpath.hold_downs import MASONRY, MASONRY_CLAUSE, in_masonry, why_not_counted
from groundsill.loadpath.stem import cored_strength, height_facts, height_of, strength_of
from groundsill.loadpath.storeys_over import Bound
from groundsill.loadpath.turning import Turning
from groundsill.standards.aci318_19.plain_concrete import cast_on_soil_depth, plain_flexure, plain_shear
from groundsill.standards.aci318_19.tables import table_21_2_1
from groundsill.standards.common_practice import table_other_densities
from groundsill.standards.statics.footing import hanging_length, lifted_weight, spanning_length
from groundsill.standards.statics.walls import end_tension
from groundsill.work.pieces import HoldDownPiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import add, convert, divide, given, least, multiply, note, scale
from groundsill.working.value import Mark, marks_of

__all__ = ["lifted_by", "own_weight"]

_CLAUSE = "ACI 318-19 14.5.2, 14.5.5 and statics"
_CONCRETE = "poured concrete"
_TOUCH_IN = 1.0
_WEAK_PSI = 2500.0
_NEAR_END_IN = 12.0
_BESIDE_PULL = 1.42  # shear beside the pull over that of hanging free, at the most: the root of two


@dataclass(frozen=True, slots=True)
class _Side:
    """How far the footing may hang to one side of a hold-down, inches, and what ends it there, in words."""

    length_in: float
    until: str


def lifted_by(
    case: LineCase, turned: Turning, piece: HoldDownPiece, force: float, address: str, bound: Bound
) -> Link:  # fmt: skip
    """The pull at allowable-stress level against what of the footing the old concrete can lift."""
    brace, title = turned.brace, f"footing lifted by hold-down {piece.mark}"
    working = (turned.at, *working_of(case, brace))
    with section(address):
        if bound.words:
            note(f"{bound.words}:")
        f_D = case.holding_factor()
        pull = _pull(turned, turned.moment(force, bound.arm_ft), f_D)

    def refused(clause: str, reason: str, applies: bool = True) -> Link:
        return cannot(
            address, title, "segment", brace.segment_id, clause=clause, reason=reason, applies=applies,
            direction=turned.way, marks=marks_of((pull,)), working=working,
        )  # fmt: skip

    if pull <= 0:
        return refused("", "dead load on the wall outweighs the pull", applies=False)
    under = foundation_at(case.reading, case.id, piece.station_in)
    if under is None or under[1].material != _CONCRETE:
        if under is not None and under[1].material in MASONRY:
            return refused(MASONRY_CLAUSE, in_masonry(under[1].material))
        return refused(_CLAUSE, "no poured concrete was surveyed under it")
    id, stem = under
    no_good = why_not_counted(case, piece)
    missing = _missing(stem)
    if missing and no_good is None:
        return refused(_CLAUSE, missing)
    try:
        with section(address):
            capacity, words = (0.0, no_good) if no_good else _held(case, turned, piece, id, stem, f_D)
    except OutsideLimits as outside:
        return refused(_CLAUSE, str(outside))
    return checked(
        address, title, "segment", brace.segment_id, level="allowable", unit="lb", demand=pull, capacity=capacity,
        clause=_CLAUSE, direction=turned.way, reason=bound.told(words), working=working,
        extension="" if no_good else _extension(case, id, stem),
    )  # fmt: skip


def _pull(turned: Turning, moment: float, f_D: float) -> float:
    return end_tension(moment, f_D, turned.w_D, turned.b, turned.x_D, turned.d)


def _missing(stem: FoundationSegment) -> str:
    """What is not known of the concrete that is needed to say how much of it can be lifted, in words."""
    if stem.strength_psi.value is None:
        return "the strength of the concrete is not known"
    if stem.top_width_in.value is None:
        return "the width of the concrete is not known"
    if height_of(stem) is None or stem.depth_in.value is None:
        return "how high and deep the concrete is is not known"
    return ""


def _extension(case: LineCase, id: str, stem: FoundationSegment) -> str:
    """Old concrete bends as plain concrete within the chapter only from 2,500 psi on, by a core of this stretch."""
    tested = cored_strength(case, id)
    if tested is not None and (stem.strength_psi.value or 0.0) >= _WEAK_PSI:
        return ""
    return "an old footing lifted as plain concrete whose strength no core gave, or below 2,500 psi"


def _held(
    case: LineCase, turned: Turning, piece: HoldDownPiece, id: str, stem: FoundationSegment, f_D: float
) -> tuple[float, str]:
    """What of the footing holds, lb, and in words over what length."""
    f_c = strength_of(case, id, stem)
    height, width = height_of(stem), stem.top_width_in.value
    assert f_c is not None and height is not None and width is not None
    marks = case.reading.marked(f"survey.foundation.segments.{id}", *height_facts(stem))
    h = given("h", height, "in", "height of the concrete, top to footing", marks)
    b_w = given("b_w", width, "in", "width of the concrete at its top", _marked(case, id, "top_width_in"))
    w_c = own_weight(case, id, stem)
    w = add(w_c, turned.w_D, symbol="w", label="concrete and the wall on it")
    hanging = scale(
        w, case.forces.rules.effects.lrfd_dead_factor_6(case.forces.S_DS), symbol="w_u", label="hanging, strength level"
    )
    moment = convert(plain_flexure(f_c, b_w, h, cast_on_soil=True).design, "lb-in", "lb-ft")
    shear = scale(
        plain_shear(f_c, b_w, cast_on_soil_depth(h)), table_21_2_1().read("plain concrete"), symbol="φV_n",
        label="one-way shear",
    )  # fmt: skip
    sheared = divide(shear, scale(hanging, _BESIDE_PULL, symbol="1.42 w_u"), symbol="L_V", unit="ft", label="by shear")
    most = least(hanging_length(moment, hanging), sheared, symbol="L_c", label="length that the concrete carries free")
    sides = [_side(case, turned, piece, way) for way in (1, -1)]
    lengths = _lengths(most, sides)
    bare = _bare_part(case, piece, [float(length) for length in lengths])
    w_D = scale(
        turned.w_D, given("s", bare, "1", "part of it under wall that no segment counts already"), symbol="w_D'"
    )
    along = add(w_c, w_D, symbol="w'", label="what is lifted with it")
    free = multiply(along, scale(most, 2.0, symbol="2 L_c"), symbol="W_c", unit="lb", label="hanging to both sides")
    lifted = least(lifted_weight(along, *lengths), free, symbol="W", label="at most what hangs free to both sides")
    held = scale(lifted, f_D, symbol="D'", label="what surely holds")
    return held, "; ".join((*_told(sides, lengths), *_corner(case, piece)))


def _lengths(most: float, sides: list[_Side]) -> list[float]:
    """The length counted to each side: the shorter hangs free, the longer may reach to where it touches the soil."""
    short = 0 if sides[0].length_in <= sides[1].length_in else 1
    rooms = [given("L", side.length_in / 12, "ft", f"from the hold-down to {side.until}") for side in sides]
    hangs = least(most, rooms[short], symbol="L_1", label="counted to the shorter side")
    reach = spanning_length(most, hangs)
    spans = least(reach, rooms[1 - short], symbol="L_2", label="counted to the longer side")
    return [hangs, spans] if short == 0 else [spans, hangs]


def _told(sides: list[_Side], lengths: list[float]) -> tuple[str, ...]:
    """``5.2 ft of it one way, as the concrete can lift, and 3.0 ft to a step``."""
    parts = []
    for side, length in zip(sides, lengths, strict=True):
        why = "as the concrete can lift" if float(length) < side.length_in / 12 else f"to {side.until}"
        parts.append(f"{float(length):.1f} ft {why}")
    return (f"counted toward the line's end {parts[0]}, toward its start {parts[1]}",)


def _corner(case: LineCase, piece: HoldDownPiece) -> tuple[str, ...]:
    if min(piece.station_in, case.length_in - piece.station_in) > _NEAR_END_IN:
        return ()
    return ("the return wall at the corner and its footing are not counted: only fasteners could bring their weight",)


# ---- How far it hangs -----------------------------------------------------------------------------------------------


def _side(case: LineCase, turned: Turning, piece: HoldDownPiece, way: int) -> _Side:
    """The nearest thing that ends the footing on one side: 1 is toward the line's end, -1 toward its start."""
    at = piece.station_in
    stops = [(s, words) for s, words, ends in case.reading.once(("ends", case.id), lambda: _ends(case)) if way in ends]
    stops.append((turned.pressed_in, "the segment's own pressed post"))
    for other in _pulled_with(case, turned, piece):
        stops.append(((at + other.station_in) / 2, f"halfway to hold-down {other.mark}"))
    found = [(max(0.0, (s - at) * way), words) for s, words in stops if (s - at) * way >= -_TOUCH_IN]
    length, words = min(found, default=(0.0, "the end of the concrete"))
    return _Side(length, words)


def _ends(case: LineCase) -> list[tuple[float, str, tuple[int, ...]]]:
    """Stations where the footing of a line is cut, steps, changes or ends, in what words, and seen from which sides."""
    foundation = case.reading.house.survey.foundation
    found: list[tuple[float, str, tuple[int, ...]]] = [
        (b.station_in, f"a {b.kind}", (1, -1)) for _, b in case.reading.on_line(foundation.breaks, case.id)
    ]
    stretches = [s for _, s in case.reading.on_line(foundation.segments, case.id) if s.material == _CONCRETE]
    for stretch in stretches:
        others = [s for s in stretches if s is not stretch]
        if not any(abs(s.from_in - stretch.to_in) <= _TOUCH_IN for s in others):
            found.append((stretch.to_in, "the end of the concrete", (1,)))
        if not any(abs(s.to_in - stretch.from_in) <= _TOUCH_IN for s in others):
            found.append((stretch.from_in, "the end of the concrete", (-1,)))
    return found


def _pulled_with(case: LineCase, turned: Turning, piece: HoldDownPiece) -> list[HoldDownPiece]:
    """The line's other hold-downs that are pulled by the same push."""
    found = []
    for _, other in case.of_kind(HoldDownPiece):
        assert isinstance(other, HoldDownPiece)
        if other is piece:
            continue
        if any(other in hold_downs_at(case, brace, turned.way) for brace in case.counted()):
            found.append(other)
    return found


def _bare_part(case: LineCase, piece: HoldDownPiece, lengths_ft: list[float]) -> float:
    """What part of the lifted length lies under wall whose dead load no segment counts for itself already."""
    low, high = piece.station_in - 12 * lengths_ft[1], piece.station_in + 12 * lengths_ft[0]
    if high <= low:
        return 0.0
    counted = sorted((max(b.from_in, low), min(b.to_in, high)) for b in case.counted())
    covered, reached = 0.0, low
    for start, end in counted:
        if end > max(start, reached):
            covered += end - max(start, reached)
            reached = end
    return max(1.0 - covered / (high - low), 0.0)


# ---- What it weighs -------------------------------------------------------------------------------------------------


def own_weight(case: LineCase, id: str, stem: FoundationSegment) -> float:
    """Weight for each foot of the concrete, its stem and its footing where that was measured, and of the soil on it."""
    height, top = height_of(stem) or 0.0, stem.top_width_in.value or 0.0
    wide, thick = stem.footing_width_in.value, stem.footing_thickness_in.value
    square_in = top * height + (max(wide - top, 0.0) * min(thick, height) if wide and thick else 0.0)
    marks = _marked(case, id, "top_width_in", "footing_width_in", "footing_thickness_in", *height_facts(stem))
    A = given("A_c", square_in / 144, "ft^2", "section of the concrete, as far as it is known", marks)
    w_c = multiply(table_other_densities().read("concrete", symbol="γ_c"), A, symbol="w_c", unit="plf")
    soil_in = _soil_in(stem, wide, thick)
    if soil_in <= 0 or wide is None:
        return w_c
    known = marks | _marked(case, id, "depth_in", "above_inside_soil_in", "above_outside_soil_in")
    A_s = given("A_s", (wide - top) * soil_in / 144, "ft^2", "section of the soil that stands on the footing", known)
    w_s = multiply(table_other_densities().read("loose soil", symbol="γ_s"), A_s, symbol="w_s", unit="plf")
    return add(w_c, w_s, symbol="w_c", label="concrete and the soil on its footing")


def _soil_in(stem: FoundationSegment, wide: float | None, thick: float | None) -> float:
    """How deep soil stands on both sides of a footing of known size, inches; the lesser side, 0 where not known."""
    outside, within, top = stem.depth_in.value, inside_depth_in(stem), stem.top_width_in.value
    if wide is None or thick is None or top is None or outside is None or within is None or wide <= top:
        return 0.0
    return max(min(outside, within) - thick, 0.0)


def _marked(case: LineCase, id: str, *names: str) -> frozenset[Mark]:
    return case.reading.marked(f"survey.foundation.segments.{id}", *names)
