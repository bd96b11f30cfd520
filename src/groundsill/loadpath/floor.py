"""The floor boards at a line: the old floor as a diaphragm, and the joists that meet the line."""

from __future__ import annotations

import math

from groundsill.forces.reading import line_ends
from groundsill.forces.weights import outline_of
from groundsill.house.underfloor import JoistField
from groundsill.loadpath.balloon import own_chain
from groundsill.loadpath.case import LineCase, cannot, checked, expected_at
from groundsill.loadpath.chain import Link, LoadLevel, Stage
from groundsill.loadpath.floor_ties import tie_links
from groundsill.mechanics.plan import inside, rotate
from groundsill.standards.old_materials.existing import existing_strength
from groundsill.standards.statics.walls import unit_shear
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import convert, given, note
from groundsill.working.value import marks_of

__all__ = ["floor_stages", "joists_beside"]

_BESIDE = 0.6  # a line within 31 degrees of parallel bounds the floor beside this one
# the one layer of each floor that SDPWS has a row for, and the row of IEBC Appendix A1 for both layers together
_ROWS = {
    "straight boards": ("straight lumber sheathing, 1x", ""),
    "diagonal boards": ("diagonal lumber sheathing, 1x", ""),
    "double straight boards": ("straight lumber sheathing, 1x", ""),
    "straight and finish boards": ("straight lumber sheathing, 1x", "floor, straight boards with offset finish floor"),
    "diagonal and finish boards": ("diagonal lumber sheathing, 1x", "floor, diagonal boards with finish floor"),
}
_A1 = "IEBC 2021 Appendix A1, existing floors"
_EXTENDED = "IEBC Appendix A1 values, written for masonry buildings, used on a wood house"
_SPREAD = (0.75, 1.5)


def floor_stages(case: LineCase) -> tuple[Stage, ...]:
    """Floor boards, then floor to plate."""
    return (
        Stage("floor-boards", "Floor boards at the line", "every link must pass", (_boards(case),)),
        Stage("floor-to-plate", "Floor to the wall", "every link must pass", tie_links(case, joists_beside(case))),
    )


def joists_beside(case: LineCase) -> tuple[str, JoistField] | None:
    """The joist field, with its id, that meets the line at its middle, or the first of its storey."""
    house = case.reading.house
    every = case.reading.in_order(house.survey.underfloor.joists)
    fields = [(id, field) for id, field in every if field.storey == case.line.storey]
    (x1, y1), (x2, y2) = line_ends(house, case.line)
    middle = ((x1 + x2) / 2, (y1 + y2) / 2)
    for id, field in fields:
        outline = outline_of(case.reading, field.outline)
        if any(inside((middle[0] + dx, middle[1] + dy), outline) for dx in (-6, 6) for dy in (-6, 6)):
            return id, field
    return fields[0] if fields else None


def _boards(case: LineCase) -> Link:
    address, title = f"line/{case.id}/floor-boards/{case.id}/both", "floor boards"
    beside, sdpws = joists_beside(case), case.sdpws
    if beside is None:
        reason = "no joists or boards were surveyed at this line"
        return cannot(address, title, "line", case.id, clause=sdpws.clauses.floors, reason=reason)
    field = beside[1]
    if field.boards not in _ROWS:
        reason = f"{field.boards}: its nailing is not in the survey, and the unit shear goes by that"
        return cannot(address, title, "line", case.id, clause=sdpws.clauses.board_floors, reason=reason)
    if own_chain(case) and not any(b.share > 0 for b in case.braces):
        reason = f"{case.line.framing} framing, and nothing braces the line that the boards could hand their force to"
        return cannot(address, title, "line", case.id, clause=sdpws.clauses.floors, reason=reason)
    span = _span_ft(case)
    if span is None:
        return cannot(
            address,
            title,
            "line",
            case.id,
            clause=sdpws.clauses.floor_proportions,
            reason="no other line is relied on beside it: the floor has no second support",
        )
    try:
        with section(address):
            return _sheared(case, field.boards, span)
    except OutsideLimits as refused:
        return cannot(address, title, "line", case.id, clause=sdpws.clauses.floor_proportions, reason=str(refused))


def _sheared(case: LineCase, boards: str, span: float) -> Link:
    """The boards' unit shear: by the layer that SDPWS has a row for, else by both layers as an extension.

    Raises:
        OutsideLimits: a floor too long for its depth.
    """
    row, together = _ROWS[boards]
    table = f"{case.sdpws.clauses.floor_proportions}, Table 4.2D"
    depth_in = case.line.diaphragm_width_in or case.length_in
    fed_in = sum(b.length_in for b in case.braces if b.share > 0) if own_chain(case) else depth_in
    note("all of the line's force is taken through the boards: a wall above may bring part of it straight down")
    W = convert(given("W", depth_in, "in", "length of floor along the line"), "in", "ft")
    fed = W
    if fed_in < depth_in:
        words = "length over which the floor reaches what braces the line: no plate drags it there"
        fed = convert(given("b_f", fed_in, "in", words), "in", "ft")
    L = given("L", span, "ft", "span of the floor to the next line relied on")
    v = unit_shear(case.allowable, fed)
    shear = case.sdpws.lumber_diaphragm_shear(row, L, W, case.load)
    if together and float(v) > float(shear.asd):
        whole = existing_strength(together)
        reason = "one layer alone does not carry it; both together, by values for floors in buildings of masonry walls"
        effects, whole_line = case.forces.rules.effects, case.strength
        if case.lateral == "earthquake":
            whole_line = effects.horizontal_effect(case.forces.rho, whole_line)
        factored = unit_shear(whole_line, fed)
        return _link(case, boards, factored, whole, reason, _A1, "strength", float(whole) * float(fed))
    reason = "" if boards in ("straight boards", "diagonal boards") else "by one of its layers alone"
    if boards == "double straight boards" and float(v) > float(shear.asd):
        reason = f"one layer alone holds {float(shear.asd):,.0f} of {float(v):,.0f} plf, and no table has both"
        address = f"line/{case.id}/floor-boards/{case.id}/both"
        return cannot(address, boards, "line", case.id, clause=table, reason=reason, marks=marks_of((v, shear.asd)))
    return _link(case, boards, v, shear.asd, reason, table, "allowable", float(shear.nominal) * float(fed))


def _link(
    case: LineCase, boards: str, v: float, capacity: float, reason: str, clause: str, level: LoadLevel, strength: float
) -> Link:
    return checked(
        f"line/{case.id}/floor-boards/{case.id}/both",
        boards,
        "line",
        case.id,
        level=level,
        unit="plf",
        demand=v,
        capacity=capacity,
        clause=clause,
        reason=reason,
        extension="IEBC Appendix A1 values, written for masonry buildings, used on a wood house"
        if clause == _A1
        else "",
        working=(f"line/{case.id}/demand",),
        expected=expected_at(
            strength, 1.0, _SPREAD, "ductile", "nominal unit shear, 25 % less to 50 % more (common practice, no source)"
        ),
    )


def _span_ft(case: LineCase) -> float | None:
    """How far the floor spans from this line to the next one relied on, the longer side, feet."""
    house = case.reading.house
    (x1, y1), (x2, y2) = line_ends(house, case.line)
    turn = -math.degrees(math.atan2(y2 - y1, x2 - x1))
    (start, mine), (end, _) = rotate((x1, y1), turn), rotate((x2, y2), turn)
    spans: dict[bool, float] = {}
    for id, other in case.forces.lines.items():
        if id == case.id or not other.relied_on:
            continue
        (u1, v1), (u2, v2) = (rotate(point, turn) for point in line_ends(house, house.survey.underfloor.lines[id]))
        gap = (v1 + v2) / 2 - mine
        overlaps = min(max(u1, u2), end) - max(min(u1, u2), start) > 1
        if abs(v2 - v1) < _BESIDE * abs(u2 - u1) and overlaps and abs(gap) > 1:
            side = gap > 0
            spans[side] = min(spans.get(side, float("inf")), abs(gap) / 12)
    return max(spans.values()) if spans else None
