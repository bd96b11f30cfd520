"""How the floor is held to the wall under it: rim and blocking, toenails, clips, for the line and for each low part.

Where joists stand straight on the sill the same connection is checked again over that stretch alone: it may take
more of the line's force than its length says, and it goes into the sill, with the sill's own wood and moisture. New
clips are not added to old nails: no stiffness rule for the two.
"""

from __future__ import annotations

from groundsill.forces.reading import doubted
from groundsill.house.underfloor import JoistField
from groundsill.loadpath.balloon import STUD_NAILS, blocked, own_chain, spiked_joists
from groundsill.loadpath.case import LineCase, Share, cannot, checked, expected_at, part_length
from groundsill.loadpath.chain import Link, ScopeKind
from groundsill.loadpath.hardware import AS_ENTERED, Into, clip, into_floor, into_plate, into_sills
from groundsill.loadpath.offset import raised, saying_so
from groundsill.loadpath.plate import NAIL_SPREAD
from groundsill.work.pieces import TiePiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import add, given, least, multiply, note, scale
from groundsill.working.value import marks_of

__all__ = ["tie_links"]

_NAILED = "12.3.1, 11.3"
_TOENAILS = "12.1.6, 12.3.1, 12.5.4"
_BLOCKING = "IEBC 2021 A304.1.3"

Place = tuple[str, str, ScopeKind, str]
Joists = tuple[str, JoistField] | None


def tie_links(case: LineCase, joists: Joists) -> tuple[Link, ...]:
    """The floor's connection over the whole line, and over each stretch where joists stand on the sill."""
    if own_chain(case) and any(p.adds_rim for _, p in case.of_kind(TiePiece) if isinstance(p, TiePiece)):
        return _over_panels(case, joists)
    links = [_link(case, joists, (0.0, case.length_in), Share(1.0), _place(case, case.id, "line", "floor to wall"))]
    for brace in case.braces:
        if brace.kind == "joists on sill" and brace.share > 0:
            place = _place(case, brace.id, "segment", f"floor to sill in {brace.name}")
            share = Share(brace.share, case.doubts)
            links.append(_link(case, joists, (brace.from_in, brace.to_in), share, place))
    return saying_so(case, links)


def _over_panels(case: LineCase, joists: Joists) -> tuple[Link, ...]:
    """Balloon framing with new blocking: blocks pass nothing on along the wall, so each part has its own clips."""
    links = []
    for brace in case.braces:
        if brace.share > 0:
            place = _place(case, brace.id, "segment", f"floor to {brace.name}")
            stretch = (brace.from_in, brace.to_in)
            if blocked(case, *stretch):
                links.append(_link(case, joists, stretch, Share(brace.share, case.doubts), place))
            else:
                with section(place[0]):
                    part = case.taken_by(brace, case.sharing)
                    force = scale(case.allowable, part, symbol="V", label=place[1])
                reason = (
                    "new blocking with clips does not run over all of it, and blocks pass nothing on along the wall"
                )
                links.append(_zero(place, force, case.nds.cite("chapter 12"), reason))
    return tuple(links) or (
        cannot(
            *_place(case, case.id, "line", "floor to wall"),
            clause=case.nds.cite("chapter 12"),
            reason=f"{case.line.framing} framing: nothing braces this line for the blocking to hand the force to",
        ),
    )


def _place(case: LineCase, id: str, scope: ScopeKind, title: str) -> Place:
    return (f"line/{case.id}/floor-to-plate/{id}/both", title, scope, id)


def _link(case: LineCase, joists: Joists, stretch: tuple[float, float], share: Share, place: Place) -> Link:
    line = case.line
    ties = [
        p
        for _, p in case.of_kind(TiePiece)
        if isinstance(p, TiePiece) and min(p.to_in, stretch[1]) > max(p.from_in, stretch[0])
    ]
    if line.framing == "not seen":
        reason = "how the wall is framed was not seen"
        return cannot(*place, clause=case.nds.cite("chapter 12"), reason=reason)
    with section(place[0]):
        part = given("β", share.part, "1", "share of the line's force that passes here", share.marks)
        force = raised(case, scale(case.allowable, part, symbol="V", label=place[1]))
    rolling = _may_roll(case, own_chain(case) or any(t.adds_rim for t in ties))  # spiked to studs, joists cannot roll
    if rolling is not None:
        fails, reason = rolling
        if fails:
            return _zero(place, force, _BLOCKING, reason)
        return cannot(*place, clause=_BLOCKING, reason=reason)
    if ties and (not own_chain(case) or any(t.adds_rim for t in ties)):
        return _ties(case, joists, place, [t for t in ties if t.adds_rim or not own_chain(case)], stretch, force)
    if own_chain(case):
        return spiked_joists(case, joists[1] if joists else None, place, stretch, share.part, force)
    connection = line.floor_connection
    if connection.kind == "none":
        return _zero(place, force, case.nds.cite("chapter 12"), "nothing holds the floor to the wall")
    if connection.kind == "not seen":
        return cannot(*place, clause=case.nds.cite(_TOENAILS), reason="how the floor is held to the wall was not seen")
    if connection.kind == STUD_NAILS:
        return cannot(
            *place, clause=case.nds.cite(_TOENAILS), reason="joists are nailed to studs in balloon framing alone"
        )
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


def _ties(
    case: LineCase,
    joists: Joists,
    place: Place,
    ties: list[TiePiece],
    stretch: tuple[float, float],
    force: float,
) -> Link:
    """New clips, each list of them spread evenly over its stretch of line."""
    terms, words, clauses, extensions = [], [], [], []
    try:
        with section(place[0]):
            note("old nails are not added to new clips: no stiffness rule for the two together")
            for tie in ties:
                inside = min(tie.to_in, stretch[1]) - max(tie.from_in, stretch[0])
                count = int(tie.count * inside / (tie.to_in - tie.from_in) + 1e-9)
                one = clip(case, tie, (into_floor(case, joists), *_beneath(case, stretch)))
                n = given("n", count, "1", f"clips {tie.mark} on this stretch")
                terms.append(multiply(one.capacity, n, symbol="n T_a", unit="lb", label=f"all clips {tie.mark}"))
                words.append(f"{tie.mark}: {count} clips at {float(one.capacity):g} lb ({one.words})")
                clauses.append(one.clause)
                extensions.append(one.extension)
            capacity = add(*terms, symbol="ΣT_a", label="; ".join(words))
    except OutsideLimits as refused:
        return cannot(*place, clause=case.nds.cite(_NAILED), reason=str(refused))
    return checked(
        *place,
        level="allowable",
        unit="lb",
        demand=force,
        capacity=capacity,
        clause="; ".join(dict.fromkeys(clauses)),
        reason="; ".join(words),
        extension="; ".join(dict.fromkeys(text for text in extensions if text)),
        working=(f"line/{case.id}/demand",),
    )


def _beneath(case: LineCase, stretch: tuple[float, float], from_above: bool = False) -> tuple[Into, ...]:
    """What the floor is fastened to over a stretch: the top plate, or the sill where the joists stand on it."""
    low = [b for b in case.braces if b.kind == "joists on sill" and part_length(b, *stretch) > 0]
    whole = any(b.from_in <= stretch[0] and b.to_in >= stretch[1] for b in low)
    if case.line.top_plate.layers > 0 and not whole:
        return (into_plate(case, from_above),)
    sills = [(id, s) for id, s in case.sills if min(s.to_in, stretch[1]) > max(s.from_in, stretch[0])]
    return into_sills(case, sills) or (into_plate(case, from_above),)


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
        extension="" if connection.report.strip() else AS_ENTERED,
        working=(f"line/{case.id}/demand",),
    )


def _toenail(case: LineCase, nail: str, side: Into, main: Into) -> tuple[float, float]:
    """One toenail into one of the woods: its adjusted value, and what it is expected to yield at."""
    deep = {} if main.depth_in is None else {"t_m": main.depth_in}
    one = case.nds.toenail(nail, side.species, main.species, **deep)
    each = case.nds.adjusted_lateral(one.Z, moisture=main.moisture, driven="toenail, lateral")
    return doubted(each, side.marks | main.marks), float(case.nds.expected_of(one).P)


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
        return cannot(*place, clause=case.nds.cite(_TOENAILS), reason="the toenails' size or spacing is not known")
    path = f"survey.underfloor.lines.{case.id}.floor_connection.spacing_in"
    feet = (stretch[1] - stretch[0]) / 12
    try:
        with section(place[0]):
            side, beneath = into_floor(case, joists), _beneath(case, stretch, from_above=True)
            untold = [wood.name for wood in (side, *beneath) if not wood.species]
            if untold:
                reason = f"the wood of {' and '.join(untold)} was not told"
                return cannot(*place, clause=case.nds.cite(_TOENAILS), reason=reason)
            spacing = case.reading.number(path, connection.spacing_in, "s", "in", "spacing of the toenails")
            assert spacing is not None
            found = [_toenail(case, connection.nail, side, main) for main in beneath]
            each, yields_at = min(found, key=lambda pair: float(pair[0]))
            each = doubted(each, marks_of(z for z, _ in found))
            marks = case.reading.marked(path)
            n = given("n", 12 * feet / float(spacing), "1", f"toenails along {feet:.1f} ft", marks)
            total = multiply(each, n, symbol="n Z'", unit="lb", label="all toenails of the stretch")
            if case.lateral == "earthquake" and case.forces.category in ("D", "E", "F"):
                limit = case.sdpws.toenails().read("toenails", "ASD", symbol="v_max")
                most = multiply(limit, given("L", feet, "ft", "length of the stretch"), symbol="V_max", unit="lb")
                total = least(total, most, symbol="V_a", label="toenails may not be counted for more in this category")
            factor = case.nds.toenail_factor("toenail, lateral")
            yields = scale(yields_at, factor, symbol="P", label="as driven")
    except OutsideLimits as refused:
        return cannot(*place, clause=case.nds.cite(_TOENAILS), reason=str(refused))
    return checked(
        place[0],
        f"{connection.nail} toenails, {place[1]}",
        place[2],
        place[3],
        level="allowable",
        unit="lb",
        demand=force,
        capacity=total,
        clause=case.nds.cite(_TOENAILS),
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
