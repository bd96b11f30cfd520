"""The floor boards at a line: the old floor as a diaphragm, and the joists that meet the line."""

from __future__ import annotations

import math

from groundsill.forces.reading import line_ends
from groundsill.forces.weights import outline_of
from groundsill.house.underfloor import JoistField
from groundsill.loadpath.case import LineCase, cannot, checked, expected_at
from groundsill.loadpath.chain import Link, Stage
from groundsill.loadpath.floor_ties import tie_links
from groundsill.mechanics.plan import inside, rotate
from groundsill.standards.sdpws_2015.diaphragms import lumber_diaphragm_shear
from groundsill.standards.statics.walls import unit_shear
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import convert, given, note

__all__ = ["floor_stages", "joists_beside"]

_BESIDE = 0.6  # a line within 31 degrees of parallel bounds the floor beside this one
_ROWS = {
    "straight boards": "straight lumber sheathing, 1x",
    "diagonal boards": "diagonal lumber sheathing, 1x",
}


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
    beside = joists_beside(case)
    if beside is None:
        return cannot(
            address,
            title,
            "line",
            case.id,
            clause="SDPWS 2015 4.2",
            reason="no joists or boards were surveyed at this line",
        )
    field = beside[1]
    if field.boards not in _ROWS:
        reason = f"{field.boards}: no unit shear for this floor is in the program yet"
        return cannot(
            address, title, "line", case.id, clause="SDPWS 2015 4.2.7 or IEBC 2021 Appendix A1", reason=reason
        )
    span = _span_ft(case)
    if span is None:
        return cannot(
            address,
            title,
            "line",
            case.id,
            clause="SDPWS 2015 4.2.4",
            reason="no other line is relied on beside it: the floor has no second support",
        )
    depth_in = case.line.diaphragm_width_in or case.length_in
    try:
        with section(address):
            note("all of the line's force is taken through the boards: a wall above may bring part of it straight down")
            W = convert(given("W", depth_in, "in", "length of floor along the line"), "in", "ft")
            L = given("L", span, "ft", "span of the floor to the next line relied on")
            v = unit_shear(case.allowable, W)
            shear = lumber_diaphragm_shear(_ROWS[field.boards], L, W)
    except OutsideLimits as refused:
        return cannot(address, title, "line", case.id, clause="SDPWS 2015 4.2.4", reason=str(refused))
    return checked(
        address,
        f"{field.boards}",
        "line",
        case.id,
        level="allowable",
        unit="plf",
        demand=v,
        capacity=shear.asd,
        clause="SDPWS 2015 4.2.4, Table 4.2D",
        working=(f"line/{case.id}/demand",),
        expected=expected_at(
            float(shear.nominal) * depth_in / 12,
            1.0,
            (0.75, 1.5),
            "ductile",
            "nominal unit shear, 25 % less to 50 % more (common practice, no source)",
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
