"""How the floor is held to the wall under it: rim and blocking, toenails, clips, for the line and for each low part.

Where joists stand straight on the sill the same connection is checked again over that stretch alone: it may take
more of the line's force than its length says. New clips are not added to old nails: no stiffness rule for the two.
"""

from __future__ import annotations

from groundsill.forces.reading import doubted
from groundsill.house.underfloor import JoistField
from groundsill.loadpath.case import LineCase, Share, cannot, checked, expected_at, species_of
from groundsill.loadpath.chain import Link, ScopeKind
from groundsill.loadpath.plate import NAIL_SPREAD
from groundsill.standards.nds_2018.adjustment import adjusted_lateral, table_12_5_4
from groundsill.standards.nds_2018.expected import expected_of
from groundsill.standards.nds_2018.nails import toenail
from groundsill.standards.sdpws_2015.tables import table_4_1_7
from groundsill.work.pieces import TiePiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import given, least, multiply, note, scale
from groundsill.working.value import Mark

__all__ = ["tie_links"]


_TOENAILS = "NDS 2018 12.1.6, 12.3.1, 12.5.4"
_BLOCKING = "IEBC 2021 A304.1.3"

Place = tuple[str, str, ScopeKind, str]
Joists = tuple[str, JoistField] | None


def tie_links(case: LineCase, joists: Joists) -> tuple[Link, ...]:
    """The floor's connection over the whole line, and over each stretch where joists stand on the sill."""
    links = [_link(case, joists, (0.0, case.length_in), Share(1.0), _place(case, case.id, "line", "floor to wall"))]
    for brace in case.braces:
        if brace.kind == "joists on sill" and brace.share > 0:
            place = _place(case, brace.id, "segment", f"floor to sill in {brace.name}")
            share = Share(brace.share, case.doubts)
            links.append(_link(case, joists, (brace.from_in, brace.to_in), share, place))
    return tuple(links)


def _place(case: LineCase, id: str, scope: ScopeKind, title: str) -> Place:
    return (f"line/{case.id}/floor-to-plate/{id}/both", title, scope, id)


def _link(case: LineCase, joists: Joists, stretch: tuple[float, float], share: Share, place: Place) -> Link:
    line = case.line
    ties = [
        p
        for _, p in case.of_kind(TiePiece)
        if isinstance(p, TiePiece) and min(p.to_in, stretch[1]) > max(p.from_in, stretch[0])
    ]
    if line.framing != "platform":
        reason = f"{line.framing} framing: its own chain is not in the program"
        return cannot(*place, clause="NDS 2018 chapter 12", reason=reason)
    with section(place[0]):
        part = given("β", share.part, "1", "share of the line's force that passes here", share.marks)
        force = scale(case.allowable, part, symbol="V", label=place[1])
    rolling = _may_roll(case, any(t.adds_rim for t in ties))
    if rolling is not None:
        fails, reason = rolling
        if fails:
            return _zero(place, force, _BLOCKING, reason)
        return cannot(*place, clause=_BLOCKING, reason=reason)
    if ties:
        return _ties(case, place, ties, stretch, force)
    connection = line.floor_connection
    if connection.kind == "none":
        return _zero(place, force, "NDS 2018 chapter 12", "nothing holds the floor to the wall")
    if connection.kind == "not seen":
        return cannot(*place, clause=_TOENAILS, reason="how the floor is held to the wall was not seen")
    if connection.kind == "clips":
        return _old_clips(case, place, stretch, force)
    return _toenails(case, joists, place, stretch, share.part, force)


def _zero(place: Place, force: float, clause: str, reason: str) -> Link:
    return checked(*place, level="allowable", unit="lb", demand=force, capacity=0.0, clause=clause, reason=reason)


def _may_roll(case: LineCase, blocked: bool) -> tuple[bool, str] | None:
    """Whether the joists can roll over (fails), or whether nobody looked (cannot be checked); None when neither."""
    if blocked:
        return None
    line = case.line
    if line.joists == "not seen" or line.rim == "not seen":
        return False, "which way the joists run to the line, or what closes their ends, was not seen"
    if line.joists == "across" and line.rim == "none":
        return True, "joists cross the wall with neither rim nor blocking: they can roll"
    return None


def _ties(case: LineCase, place: Place, ties: list[TiePiece], stretch: tuple[float, float], force: float) -> Link:
    """New clips, each list of them spread evenly over its stretch of line."""
    with section(place[0]):
        note("old nails are not added to new clips: no stiffness rule for the two together")
        total, words = 0.0, []
        for tie in ties:
            inside = min(tie.to_in, stretch[1]) - max(tie.from_in, stretch[0])
            count = int(tie.count * inside / (tie.to_in - tie.from_in) + 1e-9)
            total += count * tie.capacity_lb
            words.append(f"{tie.mark}: {count} clips at {tie.capacity_lb:g} lb ({tie.report or 'capacity as entered'})")
        capacity = given("n T_a", total, "lb", "; ".join(words))
    return checked(
        *place,
        level="allowable",
        unit="lb",
        demand=force,
        capacity=capacity,
        clause="evaluation report entered",
        reason="; ".join(words),
        working=(f"line/{case.id}/demand",),
    )


def _old_clips(case: LineCase, place: Place, stretch: tuple[float, float], force: float) -> Link:
    connection = case.line.floor_connection
    spacing, one = connection.spacing_in.value, connection.capacity_lb.value
    if spacing is None or one is None:
        return cannot(*place, clause="evaluation report", reason="the clips' spacing and their report are needed")
    with section(place[0]):
        path = f"survey.underfloor.lines.{case.id}.floor_connection"
        doubts = case.reading.marked(f"{path}.spacing_in")
        count = given("n", (stretch[1] - stretch[0]) / spacing, "1", "clips along the stretch", doubts)
        doubts = case.reading.marked(f"{path}.capacity_lb")
        each = given("T_a", one, "lb", connection.report or "as entered", doubts)
        total = multiply(each, count, symbol="n T_a", unit="lb")
    return checked(
        *place,
        level="allowable",
        unit="lb",
        demand=force,
        capacity=total,
        clause=connection.report or "capacity as entered",
        working=(f"line/{case.id}/demand",),
    )


def _toenails(
    case: LineCase,
    joists: Joists,
    place: Place,
    stretch: tuple[float, float],
    share: float,
    force: float,
) -> Link:
    connection = case.line.floor_connection
    if connection.spacing_in.value is None or not connection.nail:
        return cannot(*place, clause=_TOENAILS, reason="the toenails' size or spacing is not known")
    path = f"survey.underfloor.lines.{case.id}.floor_connection.spacing_in"
    feet = (stretch[1] - stretch[0]) / 12
    try:
        with section(place[0]):
            side, main, woods = _woods(case, joists)
            if not side or not main:
                return cannot(*place, clause=_TOENAILS, reason="the wood of the joists or of the plate was not told")
            spacing = case.reading.number(path, connection.spacing_in, "s", "in", "spacing of the toenails")
            assert spacing is not None
            one = toenail(connection.nail, side, main)
            each = doubted(adjusted_lateral(one.Z, driven="toenail, lateral"), woods)
            marks = case.reading.marked(path)
            n = given("n", 12 * feet / float(spacing), "1", f"toenails along {feet:.1f} ft", marks)
            total = multiply(each, n, symbol="n Z'", unit="lb", label="all toenails of the stretch")
            if case.forces.category in ("D", "E", "F"):
                limit = table_4_1_7().read("toenails", "ASD", symbol="v_max")
                most = multiply(limit, given("L", feet, "ft", "length of the stretch"), symbol="V_max", unit="lb")
                total = least(total, most, symbol="V_a", label="toenails may not be counted for more in this category")
            yields = scale(expected_of(one).P, table_12_5_4().read("toenail, lateral"), symbol="P", label="as driven")
    except OutsideLimits as refused:
        return cannot(*place, clause=_TOENAILS, reason=str(refused))
    return checked(
        place[0],
        f"{connection.nail} toenails, {place[1]}",
        place[2],
        place[3],
        level="allowable",
        unit="lb",
        demand=force,
        capacity=total,
        clause=_TOENAILS,
        working=(f"line/{case.id}/demand",),
        reason=f"joists {case.line.joists}, {case.line.rim}",
        expected=expected_at(
            float(yields) * float(n),
            share,
            NAIL_SPREAD,
            "ductile",
            "yield of every toenail, 25 % either way (common practice, no source)",
        ),
    )


def _woods(case: LineCase, joists: Joists) -> tuple[str, str, frozenset[Mark]]:
    """The wood of the joists, and of what they are nailed to: the plate, or the sill where there is no plate."""
    if joists is None:
        return "", "", frozenset()
    id, field = joists
    side, doubts = species_of(case, f"survey.underfloor.joists.{id}", field.species, f"joists {field.mark or id}")
    if case.line.top_plate.layers == 0 and case.sills:
        key, sill = case.sills[0]
        main, more = species_of(case, f"survey.underfloor.sills.{key}", sill.species, f"sill {sill.mark or key}")
    else:
        path = f"survey.underfloor.lines.{case.id}.top_plate"
        main, more = species_of(case, path, case.line.top_plate.species, f"the plate of {case.line.mark or case.id}")
    return side, main, doubts | more
