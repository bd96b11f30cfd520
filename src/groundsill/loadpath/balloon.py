"""Balloon framing: studs that run past the floor, with no plate under it, and what brings the floor's force to them.

As found each joist lies beside a stud and is spiked to it. Along the wall it bears on the stud one way, and the other
way draws its nails: the nails decide. With the work, blocking between the studs takes clips from the floor above and
the panel's top edge below; since blocks end at every stud, no force can be dragged along them, and each panel must have
its clips over its own length. What the floor must then carry to the panels is the floor boards' affair.
"""

from __future__ import annotations

from groundsill.forces.reading import doubted
from groundsill.house.underfloor import JoistField, Segment
from groundsill.loadpath.case import LineCase, cannot, checked, expected_at, species_of
from groundsill.loadpath.chain import Link, ScopeKind
from groundsill.standards.nds_2018.nails import Nail
from groundsill.work.pieces import TiePiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import given, least, multiply, note, subtract

__all__ = ["STUD_NAILS", "blocked", "own_chain", "spiked_joists"]

STUD_NAILS = "nailed to the studs"
_NAILS = "12.2.3"
_COVERED_IN = 1.0
_DRAWN = (0.5, 1.5)  # withdrawal of nails strays more than their yield (common practice, no source)

Place = tuple[str, str, ScopeKind, str]


def own_chain(case: LineCase) -> bool:
    """Whether the floor meets the wall without a plate: balloon framing, or joists hung on a ledger."""
    return case.line.framing in ("balloon", "ledger")


def blocked(case: LineCase, from_in: float, to_in: float) -> bool:
    """Whether new blocking that comes with clips runs over a whole stretch of the line."""
    reached = from_in
    pieces = (p for _, p in case.of_kind(TiePiece) if isinstance(p, TiePiece) and p.adds_rim)
    for piece in sorted(pieces, key=lambda p: p.from_in):
        if piece.from_in <= reached + _COVERED_IN:
            reached = max(reached, piece.to_in)
    return reached >= to_in - _COVERED_IN


def spiked_joists(
    case: LineCase, joists: JoistField | None, place: Place, stretch: tuple[float, float], share: float, force: float
) -> Link:
    """The joists of a stretch spiked to the sides of the studs: what the nails hold against being drawn."""
    reason = _not_known(case, joists)
    stud = _stud(case, stretch)
    if not reason and (stud is None or not stud.stud.species.value):
        reason = "the studs' species is not known, and the nails' hold depends on it"
    if reason:
        return cannot(*place, clause=case.nds.cite(_NAILS), reason=reason)
    assert joists is not None
    assert stud is not None
    try:
        with section(place[0]):
            note("one way the joists bear on the studs; the other way they draw their nails, which decides")
            size = case.nds.nail_size(case.line.floor_connection.nail)
            depth, nails = _reach(case, joists, stud, size), _count(case, joists, stretch)
            if float(depth) < 6 * float(size.D):
                short = f"the nails reach {float(depth):.2g} in. into the studs, under 6 D = {6 * float(size.D):.2g}"
                return cannot(*place, clause=case.nds.cite("12.1.6.4"), reason=short)
            where, mark = _stud_path(case, stud), f"the studs of {stud.mark or 'the wall'}"
            wood, told = species_of(case, where, stud.stud.species, mark)
            W = doubted(case.nds.nail_withdrawal(case.nds.specific_gravity(wood), size.D), told)
            one = case.nds.adjusted_withdrawal(W, depth)
            total = multiply(one, nails, symbol="n W'", unit="lb", label="all nails of the stretch, drawn")
    except OutsideLimits as refused:
        return cannot(*place, clause=case.nds.cite(_NAILS), reason=str(refused))
    return checked(
        place[0],
        f"joists {STUD_NAILS}, {place[1]}",
        place[2],
        place[3],
        level="allowable",
        unit="lb",
        demand=force,
        capacity=total,
        clause=case.nds.cite(_NAILS),
        reason="drawn the way that the joists pull off the studs; the other way they bear on them",
        working=(f"line/{case.id}/demand",),
        expected=expected_at(
            5.0 * float(W) * float(depth) * float(nails),
            share,
            _DRAWN,
            "ductile",
            "five times the reference value, which is a fifth of what tests gave (from memory), half of it either way",
        ),
    )


def _reach(case: LineCase, joists: JoistField, stud: Segment, size: Nail) -> float:
    """How far a nail through the joist reaches into the stud, inches, no more than the stud is thick."""
    path = _joists_path(case, joists)
    breadth = case.reading.number(f"{path}.breadth_in", joists.breadth_in, "t_s", "in", "breadth of a joist")
    assert breadth is not None  # _not_known has looked
    depth = subtract(size.L, breadth, symbol="p", label="how far a nail reaches into the stud")
    thick = stud.stud.thickness_in.value
    if thick is None:
        return depth
    return least(depth, given("t_m", thick, "in", "thickness of a stud"), symbol="p", label="in the stud")


def _count(case: LineCase, joists: JoistField, stretch: tuple[float, float]) -> float:
    """How many nails a stretch of line has."""
    path = f"survey.underfloor.lines.{case.id}.floor_connection.nails_each"
    spacing = joists.spacing_in.value
    each = case.reading.number(path, case.line.floor_connection.nails_each, "n_1", "1", "nails in each joist")
    assert spacing is not None  # _not_known has looked
    assert each is not None
    marks = case.reading.marked(f"{_joists_path(case, joists)}.spacing_in")
    count = given("n_j", int((stretch[1] - stretch[0]) / spacing), "1", "joists along the stretch", marks)
    return multiply(each, count, symbol="n", unit="1")


def _stud_path(case: LineCase, stud: Segment) -> str:
    segments = case.reading.house.survey.underfloor.segments
    return f"survey.underfloor.segments.{next(id for id, segment in segments.items() if segment is stud)}.stud"


def _joists_path(case: LineCase, joists: JoistField) -> str:
    fields = case.reading.house.survey.underfloor.joists
    return f"survey.underfloor.joists.{next(id for id, field in fields.items() if field is joists)}"


def _not_known(case: LineCase, joists: JoistField | None) -> str:
    """What is missing to work the spiked joists out, in words; empty when nothing is."""
    connection = case.line.floor_connection
    if connection.kind != STUD_NAILS:
        return f"{case.line.framing} framing: how the joists are held to the studs was not seen"
    if case.line.joists != "across":
        return "the joists do not run to the wall, so that none is spiked to its studs"
    if not connection.nail or connection.nails_each.value is None:
        return "the nails in each joist were not counted"
    if joists is None or joists.breadth_in.value is None or joists.spacing_in.value is None:
        return "the breadth or spacing of the joists is not known"
    return ""


def _stud(case: LineCase, stretch: tuple[float, float]) -> Segment | None:
    """The wall segment at the middle of a stretch."""
    middle = (stretch[0] + stretch[1]) / 2
    segments = case.reading.on_line(case.reading.house.survey.underfloor.segments, case.id)
    return next((s for _, s in segments if s.from_in <= middle <= s.to_in), None)
