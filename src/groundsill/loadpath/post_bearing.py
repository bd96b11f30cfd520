"""Pressure on the soil under the pressed end posts of braced segments, and what a cut footing loses to their pull.

A post presses on a length of soil that the stem and footing spread it over, 45 degrees to either side in concrete and
half of that in masonry (chosen here), no further than the stretch goes on nor past halfway to the next post that is
pressed with it. What else stands on the line presses there too; the wall's own load is in both, which asks for more.

Hold-downs pull up what the pressed posts press down: within one body the two are in balance and friction under it is
what it was. Where a cut parts a segment's two ends, the body under the pulled one loses the pull.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial

from groundsill.forces.reading import Reading, doubted
from groundsill.forces.seismic import Forces
from groundsill.forces.share import Direction
from groundsill.forces.wind import Lateral
from groundsill.loadpath.bearing import Loads, Pressed, loads_of, pressed_link
from groundsill.loadpath.bracing import with_strengths
from groundsill.loadpath.case import Brace, LineCase, cannot, case_of, demands, pieces_on
from groundsill.loadpath.chain import Link
from groundsill.loadpath.end_posts import Pressing
from groundsill.loadpath.footings import Body, Part
from groundsill.loadpath.ground import allowable_pressure, as_the_ground_allows, doubts_of_ground, no_bearing
from groundsill.loadpath.held_ends import hold_downs_at
from groundsill.loadpath.hold_downs import why_not_counted
from groundsill.loadpath.stem import height_facts, height_of
from groundsill.loadpath.storeys_over import Bound, bounded, over_line
from groundsill.loadpath.turning import WAYS, Turning, Way, turning_of
from groundsill.standards.statics.soil import spread_length
from groundsill.standards.statics.walls import end_tension
from groundsill.work.pieces import HoldDownPiece, Piece
from groundsill.working.sheet import Sheet, open_sheet, quiet, section, under_heading
from groundsill.working.steps import add, convert, divide, given, multiply, scale
from groundsill.working.value import Mark, marks_of

__all__ = ["post_links", "pulled_off"]

HEADING = "soil/"  # before the address of every section of working that a line's own chain has already
_CLAUSE = "IBC 2021 Table 1806.2; statics"
_SPREAD = {"poured concrete": 1.0}
_IN_MASONRY = 0.5
_BESIDE_LIVE = 0.75


@dataclass(frozen=True, slots=True)
class _Under:
    """A pressed post: its segment and push, the stretch of foundation under it, and feet to where it must stop."""

    case: LineCase
    turned: Turning
    part: Part
    rooms: tuple[float, float]


def post_links(
    reading: Reading, forces: Forces, body: Body, pieces: Sequence[tuple[str, Piece]], lateral: Lateral
) -> list[Link]:
    """Pressure under the pressed end posts that stand on a body: for each line the worst of them.

    None for a line whose footing nobody measured: its bearing cannot be checked, and says so; none for a new strip,
    which is worked out with its posts as a beam on its soil.
    """
    links = []
    for id, parts in body.lines().items():
        if id in reading.inner or all(p.segment.footing_width_in.value is None for p in parts):
            continue
        case = _case(reading, forces, id, pieces, lateral)
        found = [] if case is None else list(_of_line(case, body))
        if found:
            links.append(_worst(body, reading.house.survey.underfloor.lines[id].mark, found))
    return links


def _of_line(case: LineCase, body: Body) -> Iterator[Link]:
    """The soil under every post that the line presses down on a body, pushed either way."""
    over = over_line(case)
    for brace in case.counted():
        address = f"body/{body.id}/bearing/{brace.id}.post"
        with section(address):
            force = scale(case.allowable, case.taken_by(brace), symbol="V_i", label=f"force on {brace.name}")
        pressing = Pressing(case, force, address)
        for way in WAYS:
            under = _under(case, body, brace, way, address)
            if under is not None:
                yield bounded(over.bounds(brace), partial(_link, body, pressing, under))


def _worst(body: Body, mark: str, found: Sequence[Link]) -> Link:
    """One link for all posts of a line: the worst that fails, else one that cannot be checked, else the worst."""
    order = {"fails": 2, "cannot be checked": 1}
    worst = max(found, key=lambda link: (order.get(link.status, 0), link.ratio or 0.0))
    marks = frozenset[Mark]().union(*(link.marks for link in found))
    post = worst.title.removeprefix("bearing ")
    words = f"the worst of {len(found)}, {post}: {worst.reason}" if len(found) > 1 else f"{post}: {worst.reason}"
    address = f"body/{body.id}/bearing/{worst.scope_id}.posts/both"
    return replace(worst, address=address, title=f"bearing under the pressed posts of line {mark}",
                   direction="both", reason=words, marks=tuple(sorted(marks)),
                   working=(*worst.working, worst.address))  # fmt: skip


def pulled_off(
    reading: Reading, forces: Forces, body: Body, direction: Direction, pieces: Sequence[tuple[str, Piece]],
    lateral: Lateral,
) -> float:  # fmt: skip
    """What hold-downs pull up on a body and press down on another across a cut, at most, lb; 0 without such a cut."""
    pulls: list[float] = []
    for id in body.lines():
        if forces.lines[id].along(direction) <= 0 or not _may_be_parted(reading, body, id, pieces):
            continue
        with quiet() if open_sheet() is None else Sheet():  # a sheet of its own, for the marks
            case = _case(reading, forces, id, pieces, lateral)
            ways = [] if case is None else [list(_pulls(case, body, way)) for way in WAYS]
        pulls += max(ways, key=lambda way: sum(float(pull) for pull in way), default=[])
    return doubted(sum(float(pull) for pull in pulls), marks_of(pulls), unit="lb", symbol="T")


def _may_be_parted(reading: Reading, body: Body, id: str, pieces: Sequence[tuple[str, Piece]]) -> bool:
    """Whether a line has a hold-down on the body and foundation that is not of it."""
    feet = sum(p.to_in - p.from_in for p in body.lines()[id])
    every = reading.on_line(reading.house.survey.foundation.segments, id)
    whole = sum(s.to_in - s.from_in for _, s in every)
    held = any(isinstance(piece, HoldDownPiece) for _, piece in pieces_on(reading, id, pieces))
    return held and feet < whole - 1.0


def _case(
    reading: Reading, forces: Forces, id: str, pieces: Sequence[tuple[str, Piece]], lateral: Lateral
) -> LineCase | None:
    """A line gathered again for its soil, with the force asked for; None where it braces nothing or has no force."""
    line = forces.lines[id]
    if not line.relied_on:
        return None
    with under_heading(HEADING):
        case = demands(case_of(reading, forces, id, pieces))
        if lateral == "wind":
            found = forces.wind.lines.get(id) if forces.wind is not None else None
            if found is None:
                return None
            pushed = forces.rules.effects.asd_wind(found.W_lb)
            case = replace(case, lateral="wind", strength=found.W_lb, allowable=pushed, overstrength=found.W_lb)
        case = with_strengths(case)
    return case if case.counted() and float(case.allowable) > 0 else None


# ---- Pressed posts --------------------------------------------------------------------------------------------------


def _under(case: LineCase, body: Body, brace: Brace, way: Way, address: str) -> _Under | None:
    """The post that a segment presses down when it is pushed one way, where it stands on the body."""
    held = [p for p in hold_downs_at(case, brace, way) if why_not_counted(case, p) is None]
    at = f"{address}/{way}"
    with section(at):
        turned = turning_of(case, brace, held, way, at)
    station = _pressed_at(turned)
    part = _part_at(body, case.id, station)
    if part is None:
        return None
    others = [_end_of(b, way) for b in case.counted() if b is not brace]
    rooms = []
    for sign, stop in ((1, part.to_in), (-1, part.from_in)):
        beside = [abs(s - station) / 2 for s in others if (s - station) * sign > 0]
        rooms.append(max(min([abs(stop - station), *beside]), 0.0) / 12)
    return _Under(case, turned, part, (rooms[0], rooms[1]))


def _end_of(brace: Brace, way: Way) -> float:
    return brace.to_in if way == "+" else brace.from_in


def _pressed_at(turned: Turning) -> float:
    inward = 12 * float(turned.e_c)
    return turned.pressed_in - inward if turned.way == "+" else turned.pressed_in + inward


def _part_at(body: Body, line: str, station: float) -> Part | None:
    here = body.lines().get(line, ())
    return next((p for p in here if p.from_in <= station <= p.to_in), None)


def _link(body: Body, pressing: Pressing, under: _Under, bound: Bound) -> Link:
    """The soil under one pressed post, the storeys above turning as assumed."""
    case, turned, part = under.case, under.turned, under.part
    end = "end" if turned.way == "+" else "start"
    address, title = f"{pressing.address}/{turned.way}", f"bearing under the {end} post of {turned.brace.name}"
    reading = case.reading
    wide = part.segment.footing_width_in.value
    reason = "the width of the footing is not known" if wide is None else ""
    reason = reason or no_bearing(reading, (part,))
    if reason or wide is None:
        with section(address):
            doubts = doubts_of_ground(reading, "bearing")
        return cannot(
            address, title, "line", case.id, clause=_CLAUSE, reason=reason, direction=turned.way, marks=doubts
        )
    C, pressed_at = pressing.compression(turned, bound)
    with section(address):
        allowed = allowable_pressure(reading)
        assert allowed is not None
        B = given("B", wide / 12, "ft", "width of the footing", part.marked(reading, "footing_width_in"))
        L_s = _spread(reading, under)
        soil = multiply(B, L_s, symbol="A_s", unit="ft^2", label="soil that takes the post")
        point = divide(C, soil, symbol="q_C", unit="psf", label="under the post")
        line, loads = _line_pressure(under, body, B)
        q = add(point, line, symbol="q", label="under post and line")
    words = f"spread over {float(L_s):.1f} ft of footing, {_slope(part):g} ft out for each foot of stem and footing"
    found = Pressed(q, bound.told(words), marks_of((q,)))
    link = pressed_link(address, title, "line", case.id, found, allowed, loads)
    link = replace(
        link, direction=turned.way, clause=_CLAUSE, working=(*link.working, pressing.address, turned.at, pressed_at)
    )
    return as_the_ground_allows(reading, link, "bearing", case.lateral, (part,))


def _line_pressure(under: _Under, body: Body, B: float) -> tuple[float, Loads]:
    """The pressure of all else that stands on the line's footing in this body, at most, and those loads."""
    case, parts = under.case, body.lines()[under.case.id]
    long = sum(p.length_ft for p in parts)
    share = min(long / case.forces.lines[case.id].length_ft, 1.0)
    load = case.forces.gravity.lines[case.id]
    loads = loads_of(case.reading, case.forces, load, share, f"line {case.line.mark}", parts)
    beside = add(loads.live, loads.snow, symbol="L + S", label="live load and snow", unit="lb")
    most = add(loads.most, scale(beside, _BESIDE_LIVE, symbol="0.75 (L + S)"), symbol="P_l", label="all on the line")
    area = multiply(B, given("L", long, "ft", "length of the footing"), symbol="A", unit="ft^2")
    return divide(most, area, symbol="q_l", unit="psf", label="under the line"), loads


def _spread(reading: Reading, under: _Under) -> float:
    """The length of footing that a post is spread over: by the depth that was seen, as far as there is room."""
    part, slope = under.part, _slope(under.part)
    marks = part.marked(reading, *height_facts(part.segment))
    high = (height_of(part.segment) or 0.0) / 12
    along = under.turned.post.along_in or 0.0
    b = convert(given("b_p", along, "in", under.turned.post.words, under.turned.post.marks), "in", "ft")
    sides = [
        given(symbol, min(high, room / slope), "ft", "depth of stem and footing that spreads it, as far as it goes on",
              marks)
        for symbol, room in zip(("h_1", "h_2"), under.rooms, strict=True)
    ]  # fmt: skip
    return spread_length(b, sides[0], sides[1], given("s", slope, "1", "spread through it, chosen here"))


def _slope(part: Part) -> float:
    return _SPREAD.get(part.segment.material, _IN_MASONRY)


# ---- Hold-downs -----------------------------------------------------------------------------------------------------


def _pulls(case: LineCase, body: Body, way: Way) -> Iterator[float]:
    """What each segment pushed one way pulls up on the body by a hold-down, its pressed post standing on another."""
    over = over_line(case)
    for brace in case.counted():
        held = [p for p in hold_downs_at(case, brace, way) if why_not_counted(case, p) is None]
        if not held or _part_at(body, case.id, held[0].station_in) is None:
            continue
        turned = turning_of(case, brace, held, way, "")
        if _part_at(body, case.id, _pressed_at(turned)) is not None:
            continue
        force = scale(case.allowable, case.taken_by(brace), symbol="V_i")
        arm = over.bounds(brace)[-1].arm_ft
        pull = end_tension(turned.moment(force, arm), case.holding_factor(), turned.w_D, turned.b, turned.x_D, turned.d)
        if pull > 0:
            yield pull
