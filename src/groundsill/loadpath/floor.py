"""From the floor boards to the top plate: the old floor as a diaphragm at the line, and how it is held to the wall."""

from __future__ import annotations

from groundsill.forces.reading import line_ends
from groundsill.forces.weights import outline_of
from groundsill.house.survey import in_order
from groundsill.house.underfloor import JoistField
from groundsill.loadpath.case import LineCase, cannot, checked, expected_at
from groundsill.loadpath.chain import Link, Stage
from groundsill.mechanics.plan import inside
from groundsill.standards.nds_2018.adjustment import adjusted_lateral
from groundsill.standards.nds_2018.expected import expected_of
from groundsill.standards.nds_2018.nails import toenail
from groundsill.standards.sdpws_2015.diaphragms import lumber_diaphragm_shear
from groundsill.standards.sdpws_2015.tables import table_4_1_7
from groundsill.standards.statics.walls import unit_shear
from groundsill.work.pieces import TiePiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import convert, given, least, multiply, note

__all__ = ["floor_stages"]

_ROWS = {
    "straight boards": "straight lumber sheathing, 1x",
    "diagonal boards": "diagonal lumber sheathing, 1x",
}
_SPREAD_NAIL = (0.75, 1.25)


def floor_stages(case: LineCase) -> tuple[Stage, ...]:
    """Floor boards, then floor to plate."""
    return (
        Stage("floor-boards", "Floor boards at the line", "every link must pass", (_boards(case),)),
        Stage("floor-to-plate", "Floor to the top plate", "every link must pass", (_to_plate(case),)),
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


def _to_plate(case: LineCase) -> Link:
    address, title = f"line/{case.id}/floor-to-plate/{case.id}/both", "floor to top plate"
    ties = [p for _, p in case.of_kind(TiePiece) if isinstance(p, TiePiece)]
    if case.line.joists == "across" and case.line.rim == "none" and not any(t.adds_rim for t in ties):
        return checked(
            address,
            title,
            "line",
            case.id,
            level="allowable",
            unit="lb",
            demand=case.allowable,
            capacity=0.0,
            clause="IEBC 2021 A304.1.3",
            reason="joists cross the plate with neither rim nor blocking: they can roll",
        )
    if ties:
        return _ties(case, address, ties)
    connection = case.line.floor_connection
    if connection.kind == "none":
        return checked(
            address,
            title,
            "line",
            case.id,
            level="allowable",
            unit="lb",
            demand=case.allowable,
            capacity=0.0,
            clause="NDS 2018 chapter 12",
            reason="nothing holds the floor to the plate",
        )
    if connection.kind == "not seen":
        return cannot(
            address,
            title,
            "line",
            case.id,
            clause="NDS 2018 12.1.6, 12.5.4",
            reason="how the floor is held to the plate was not seen",
        )
    if connection.kind == "clips":
        return _old_clips(case, address)
    return _toenails(case, address)


def _ties(case: LineCase, address: str, ties: list[TiePiece]) -> Link:
    """New clips carry the line's force alone: old toenails are not added to them without a stiffness rule."""
    with section(address):
        note("old nails are not added to new clips: no stiffness rule for the two together")
        total = given(
            "n T_a",
            sum(t.count * t.capacity_lb for t in ties),
            "lb",
            "; ".join(
                f"{t.mark}: {t.count} clips at {t.capacity_lb:g} lb ({t.report or 'capacity as entered'})" for t in ties
            ),
        )
    reason = f"{sum(t.count for t in ties)} clips"
    return checked(
        address,
        "clips, floor to top plate",
        "line",
        case.id,
        level="allowable",
        unit="lb",
        demand=case.allowable,
        capacity=total,
        clause="evaluation report entered",
        reason=reason,
        working=(f"line/{case.id}/demand",),
    )


def _old_clips(case: LineCase, address: str) -> Link:
    connection = case.line.floor_connection
    spacing, one = connection.spacing_in.value, connection.capacity_lb.value
    if spacing is None or one is None:
        return cannot(
            address,
            "clips, floor to top plate",
            "line",
            case.id,
            clause="evaluation report",
            reason="the clips' spacing and their report are needed",
        )
    with section(address):
        count = given("n", case.length_in / spacing, "1", "clips along the line")
        total = multiply(given("T_a", one, "lb", connection.report or "as entered"), count, symbol="n T_a", unit="lb")
    return checked(
        address,
        "clips, floor to top plate",
        "line",
        case.id,
        level="allowable",
        unit="lb",
        demand=case.allowable,
        capacity=total,
        clause=connection.report or "capacity as entered",
        working=(f"line/{case.id}/demand",),
    )


def _toenails(case: LineCase, address: str) -> Link:
    connection, clause = case.line.floor_connection, "NDS 2018 12.1.6, 12.3.1, 12.5.4"
    if connection.spacing_in.value is None or not connection.nail:
        return cannot(
            address,
            "toenails, floor to top plate",
            "line",
            case.id,
            clause=clause,
            reason="the toenails' size or spacing is not known",
        )
    field = joists_beside(case)
    side = (field.species if field else "") or "Douglas fir-larch"
    main = case.line.top_plate.species or "Douglas fir-larch"
    path = f"survey.underfloor.lines.{case.id}.floor_connection.spacing_in"
    try:
        with section(address):
            spacing = case.reading.number(path, connection.spacing_in, "s", "in", "spacing of the toenails")
            assert spacing is not None
            one = toenail(connection.nail, side, main)
            each = adjusted_lateral(one.Z, driven="toenail, lateral")
            n = given(
                "n",
                case.length_in / float(spacing),
                "1",
                f"toenails along {case.length_in / 12:.1f} ft of line",
                case.reading.marked(path),
            )
            total = multiply(each, n, symbol="n Z'", unit="lb", label="all toenails of the line")
            if case.forces.category in ("D", "E", "F"):
                limit = table_4_1_7().read("toenails", "ASD", symbol="v_max")
                most = multiply(
                    limit, given("L", case.length_in / 12, "ft", "length of the line"), symbol="V_max", unit="lb"
                )
                total = least(total, most, symbol="V_a", label="toenails may not be counted for more in this category")
            yields = expected_of(one)
    except OutsideLimits as refused:
        return cannot(address, "toenails, floor to top plate", "line", case.id, clause=clause, reason=str(refused))
    strength = float(yields.P) * case.length_in / float(spacing)
    return checked(
        address,
        f"{connection.nail} toenails, floor to top plate",
        "line",
        case.id,
        level="allowable",
        unit="lb",
        demand=case.allowable,
        capacity=total,
        clause=clause,
        working=(f"line/{case.id}/demand",),
        reason=f"joists {case.line.joists}, {case.line.rim}",
        expected=expected_at(
            strength,
            1.0,
            _SPREAD_NAIL,
            "ductile",
            "yield of every toenail, 25 % either way (common practice, no source)",
        ),
    )
