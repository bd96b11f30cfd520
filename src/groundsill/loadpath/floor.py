"""The floor boards at a line: the old floor as a diaphragm, and the joists that meet the line."""

from __future__ import annotations

from groundsill.forces.reading import line_ends
from groundsill.forces.weights import outline_of
from groundsill.house.survey import in_order
from groundsill.house.underfloor import JoistField
from groundsill.loadpath.case import LineCase, cannot, checked, expected_at
from groundsill.loadpath.chain import Link, Stage
from groundsill.loadpath.floor_ties import tie_links
from groundsill.mechanics.plan import inside
from groundsill.standards.sdpws_2015.diaphragms import lumber_diaphragm_shear
from groundsill.standards.statics.walls import unit_shear
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import convert, given, note

__all__ = ["floor_stages", "joists_beside"]

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


def joists_beside(case: LineCase) -> JoistField | None:
    """The joist field that meets the line at its middle, or the first of its storey."""
    house = case.reading.house
    fields = [f for _, f in in_order(house.survey.underfloor.joists) if f.storey == case.line.storey]
    (x1, y1), (x2, y2) = line_ends(house, case.line)
    middle = ((x1 + x2) / 2, (y1 + y2) / 2)
    for field in fields:
        outline = outline_of(case.reading, field.outline)
        if any(inside((middle[0] + dx, middle[1] + dy), outline) for dx in (-6, 6) for dy in (-6, 6)):
            return field
    return fields[0] if fields else None


def _boards(case: LineCase) -> Link:
    address, title = f"line/{case.id}/floor-boards/{case.id}/both", "floor boards"
    field = joists_beside(case)
    if field is None:
        return cannot(
            address,
            title,
            "line",
            case.id,
            clause="SDPWS 2015 4.2",
            reason="no joists or boards were surveyed at this line",
        )
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
    house, along = case.reading.house, case.force.direction
    across = 1 if along == "x" else 0
    mine = line_ends(house, case.line)
    spans: dict[bool, float] = {}
    for id, other in case.forces.lines.items():
        if id == case.id or not other.relied_on or other.direction != along:
            continue
        ends = line_ends(house, house.survey.underfloor.lines[id])
        low, high = sorted(e[1 - across] for e in ends)
        start, end = sorted(e[1 - across] for e in mine)
        gap = ends[0][across] - mine[0][across]
        if min(high, end) - max(low, start) > 1 and abs(gap) > 1:
            side = gap > 0
            spans[side] = min(spans.get(side, float("inf")), abs(gap) / 12)
    return max(spans.values()) if spans else None
