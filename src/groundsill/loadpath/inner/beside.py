"""The old foundation beside a new one: it stays, has to go along with the new line, and must not be hurt by it.

Is the old wall still on its seat when the floor has moved as far as the earthquake moves it; can loose brick fall out
of the old foundation; does the floor carry its own force in from beyond the new line; what holds the floor up; does the
trench stay above the line that falls from the old footing's edge; does either footing press on the other.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from groundsill.house.foundation import FoundationSegment
from groundsill.loadpath.case import LineCase, cannot, checked
from groundsill.loadpath.chain import Link, Stage
from groundsill.loadpath.floor import joists_beside
from groundsill.loadpath.footings import inside_depth_in
from groundsill.loadpath.ground import SOIL, soil_class
from groundsill.loadpath.inner.sides import Old, ends_at, old_of
from groundsill.loadpath.inner.support import support_links
from groundsill.loadpath.offset import under_the_walls_above
from groundsill.standards.common_practice import table_trench
from groundsill.standards.ibc_2021.footings import table_1809_6
from groundsill.standards.statics.walls import rocking_start
from groundsill.work.inner import InnerFoundationPiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import given, least, multiply, scale
from groundsill.working.value import Mark, marks_of

__all__ = ["beside_stage"]

_MASONRY = ("brick", "stone", "block")
_STATICS = "statics: the load's middle stays on its seat"
_STIFF_FLOOR = "the floor moves with its lines: what its boards give between and beyond them is left out"
_SLOPE = "IBC 2021 1809.6"
_GRANULAR = ("1", "2", "3", "4")
_WYTHE_IN = 4.0  # one wythe of old brick, mortar not counted
_OUT = Mark("from memory", "ASCE 7 12.11.1: four tenths of S_DS times the weight, across a wall")


def beside_stage(case: LineCase, drift: Sequence[Link]) -> Stage:
    """The old foundation beside the new line; ``drift`` are the line's own drift links."""
    piece = case.inner
    assert piece is not None
    links: list[Link] = []
    dug: list[Link] = []
    for old in (old for old in old_of(case, piece) if old.stems):
        dug.append(_dug(case, piece, old))
        links += (_seated(case, old, drift), *_brick(case, old), dug[-1], _presses(case, piece, old))
    for old in ends_at(case, piece):
        dug.append(_dug(case, piece, old))
        links += (dug[-1], _presses(case, piece, old))
    links += (_trench(case, piece, dug), _hangs_out(case, piece), *support_links(case, piece))
    links += under_the_walls_above(case)
    return Stage("old-beside", "The old foundation left in place beside it", "every link must pass", tuple(links))


def _address(case: LineCase, id: str) -> str:
    return f"line/{case.id}/old-beside/{id}/both"


# ---- (a) The old wall when the new line has moved -------------------------------------------------------------------


def _seated(case: LineCase, old: Old, drift: Sequence[Link]) -> Link:
    """The old sill on its foundation, pushed across it as far as the storey may drift: half of the seat must be left.

    Along the line the old wall goes with the floor by the line's own design drift; across it the floor moves with the
    lines that run that way, each of which is held to the limit of drift: taken for the tallest wall relied on.
    """
    address, title = _address(case, f"seat-{old.id}"), f"old wall {old.mark} on its seat when the floor has moved"
    sills = [(k, s) for k, s in case.reading.on_line(case.reading.house.survey.underfloor.sills, old.id)]
    widths = [s.width_in.value for _, s in sills]
    tops = [s.top_width_in.value for _, s in old.stems]
    if not sills or None in widths or not tops or None in tops:
        reason = "the width of the old sill, or of the top of the foundation under it, is not known"
        return cannot(address, title, "line", case.id, clause=_STATICS, reason=reason)
    high = _tallest(case)
    if high is None:
        reason = "the height of a wall that is relied on is not known, and with it how far the floor may move"
        return cannot(address, title, "line", case.id, clause=_STATICS, reason=reason)
    rules, risk = case.forces.rules, case.reading.house.survey.site.risk_category
    doubts = frozenset[Mark]().union(
        *(case.reading.marked(f"survey.underfloor.sills.{k}.width_in") for k, _ in sills),
        *(case.reading.marked(f"survey.foundation.segments.{k}.top_width_in") for k, _ in old.stems),
    )
    with section(address):
        seat = given("b_s", min(w or 0.0 for w in (*widths, *tops)), "in", "narrowest seat of the old sill", doubts)
        ratio = rules.drift_limits().read("all other structures", risk, symbol="Delta_a/h_sx")
        tall = given("h_w", high, "in", "tallest wall of a line relied on")
        across = rules.allowable_drift(ratio, tall)
        half = scale(seat, 0.5, symbol="b_s/2", label="the load's middle comes to the edge of its seat")
    along = max((float(link.demand) for link in drift if link.demand is not None), default=None)
    told = (
        "" if along is None else f"; along it the wall goes {along:.2f} in. with the floor{_racked(case, old, along)}"
    )
    words = f"across, up to the limit of drift that the lines that way are held to{told}"
    return checked(
        address, title, "line", case.id, level="strength", unit="in", demand=across, capacity=half, clause=_STATICS,
        reason=words, extension=_STIFF_FLOOR,
    )  # fmt: skip


def _tallest(case: LineCase) -> float | None:
    """The tallest cripple wall of a line relied on, inches; 0 for none, None where one is not known."""
    segments = case.reading.house.survey.underfloor.segments
    high = [
        s.height_in.value for s in segments.values() if s.kind == "cripple wall" and case.forces.lines[s.line].relied_on
    ]
    known = [h for h in high if h is not None]
    return max(known, default=0.0) if len(known) == len(high) else None


def _racked(case: LineCase, old: Old, along: float) -> str:
    """How far out of square the old wall goes, in words; nothing where it has no wall of known height."""
    walls = case.reading.on_line(case.reading.house.survey.underfloor.segments, old.id)
    low = min((s.height_in.value for _, s in walls if s.kind == "cripple wall" and s.height_in.value), default=0.0)
    return f", {100 * along / low:.1f} % of its height" if low else ""


def _brick(case: LineCase, old: Old) -> tuple[Link, ...]:
    """Old masonry above the soil as a block that rocks across its thickness; loose brick falls out of it."""
    masonry = [(k, s) for k, s in old.stems if s.material in _MASONRY]
    return tuple(_block(case, old, key, stem) for key, stem in masonry)


def _block(case: LineCase, old: Old, key: str, stem: FoundationSegment) -> Link:
    name = stem.mark or key
    address, title = _address(case, f"brick-{key}"), f"old {stem.material} {name} out of plane"
    clause = f"{case.forces.rules.cite('12.11.1')} and statics"
    if stem.mortar.value in (None, "missing") and stem.material != "block":
        state = "its mortar is missing" if stem.mortar.value else "its mortar was not looked at"
        reason = f"{state}: loose {stem.material} can fall out whatever the new line does; repoint or hold it"
        return cannot(address, title, "line", case.id, clause="IEBC 2021 A106.2", reason=reason)
    up = [v for v in (stem.above_inside_soil_in.value, stem.above_outside_soil_in.value) if v is not None]
    if stem.top_width_in.value is None or not up:
        reason = "how thick it is, or how high it stands above the soil, is not known"
        return cannot(address, title, "line", case.id, clause=clause, reason=reason)
    if max(up) <= 0:
        reason = "it does not stand out of the soil"
        return cannot(address, title, "line", case.id, clause=clause, reason=reason, applies=False)
    bonded = stem.material != "brick" or stem.header_course.value is True or stem.collar_joint_filled.value is True
    path = f"survey.foundation.segments.{key}"
    known = case.reading.marked(path, "top_width_in", "above_inside_soil_in", "above_outside_soil_in", "header_course")
    with section(address):
        thick = stem.top_width_in.value if bonded else min(_WYTHE_IN, stem.top_width_in.value)
        t = given("t", thick, "in", "thickness that holds together" if bonded else "one wythe: no headers", known)
        h = given("h", max(up), "in", "height above the soil, the higher side", known)
        part = given("0.4", 0.4, "1", "ASCE 7 12.11.1", (_OUT,))
        asked = multiply(part, case.forces.S_DS, symbol="a", unit="g", label="acceleration across the wall")
        starts = rocking_start(t, h)
    words = "as a loose block, no load on it and no mortar counted" + ("" if bonded else "; no header ties its wythes")
    return checked(
        address, title, "line", case.id, level="strength", unit="g", demand=asked, capacity=starts, clause=clause,
        reason=words,
    )  # fmt: skip


# ---- (b) The floor beyond the new line ------------------------------------------------------------------------------


def _hangs_out(case: LineCase, piece: InnerFoundationPiece) -> Link:
    """The proportions of the floor between the new line and the old wall, where it is long enough for the clause.

    The clause also limits how far the open edge may drift, and asks more of a house that turns: neither is worked out,
    so that a floor within its proportions is no pass.
    """
    address, title = _address(case, "overhang"), "floor that hangs out beyond the new line"
    beside, clause = joists_beside(case), case.sdpws.clauses.overhangs
    if beside is None:
        reason = "no joists or boards were surveyed at this line"
        return cannot(address, title, "line", case.id, clause=clause, reason=reason)
    row = _row_of_boards(beside[1].boards)
    try:
        with section(address):
            L = given("L'", max(old.apart_in for old in old_of(case, piece)) / 12, "ft", "new line to the old wall")
            W = given("W'", case.length_in / 12, "ft", "length of floor along the new line")
            table = case.sdpws.overhangs()
            shortest = table.read(row, "outside up to", symbol="L'_0")
            if shortest >= L:
                reason = f"it hangs out {float(L):.1f} ft: the clause asks nothing up to {float(shortest):g} ft"
                return cannot(
                    address, title, "line", case.id, clause=clause, reason=reason, applies=False,
                    marks=marks_of((shortest,)),
                )  # fmt: skip
            most = multiply(W, table.read(row, "ratio"), symbol="L'_W", unit="ft", label=row)
            allowed = least(most, table.read(row, "longest"), symbol="L'_a", label="longest overhang")
    except OutsideLimits as refused:
        reason = f"{refused}; it hangs out {float(L):.1f} ft: bring the new line nearer, or lay panels on the floor"
        return cannot(address, title, "line", case.id, clause=clause, reason=reason, marks=marks_of((shortest,)))
    if allowed < L:
        return checked(
            address, title, "line", case.id, level="strength", unit="ft", demand=L, capacity=allowed, clause=clause,
            reason=f"{row}, {float(W):.1f} ft along the line",
        )  # fmt: skip
    reason = (
        f"it hangs out {float(L):.1f} ft, within the {float(allowed):.1f} ft that its proportions allow; how far its "
        "open edge drifts, and whether the house turns so that less is allowed, is not worked out"
    )
    return cannot(address, title, "line", case.id, clause=clause, reason=reason, marks=marks_of((allowed,)))


def _row_of_boards(boards: str) -> str:
    """The row of a floor's sheathing; of two layers of boards that of the layer that the standard knows."""
    if boards == "panel":
        return "panels"
    return "diagonal boards" if boards.startswith("diagonal") else "straight boards"


# ---- (d), (e) Digging beside the old footing ------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Edges:
    """Bottoms below the soil inside, and clear distance between the lower edges of the two footings, inches."""

    old_in: float
    new_in: float
    clear_in: float
    marks: frozenset[Mark]


def _edges(case: LineCase, piece: InnerFoundationPiece, old: Old) -> _Edges | str:
    """The two footings side by side, the worst stretch of the old one; in words what is not known of it."""
    found = []
    for key, stem in old.stems:
        below = inside_depth_in(stem)
        wide = stem.footing_width_in.value
        if below is None or wide is None:
            what = "how deep the old footing goes below the soil inside" if below is None else "how wide it is"
            return f"{what} was not measured under {stem.mark or key}: dig one pit beside it first"
        clear = old.apart_in - (wide + (piece.footing_width_in if old.along else 0.0)) / 2
        marks = case.reading.marked(
            f"survey.foundation.segments.{key}", "depth_in", "footing_width_in", "above_inside_soil_in",
            "above_outside_soil_in",
        )  # fmt: skip
        found.append(_Edges(below, piece.depth_in, clear, marks))
    return min(found, key=lambda e: e.clear_in - abs(e.new_in - e.old_in))


def _falls(case: LineCase) -> tuple[str, frozenset[Mark]]:
    """The row of slopes for the soil of the site, the flattest where nobody knows the soil."""
    kind = case.reading.noted("the kind of soil", SOIL)
    soil = soil_class(case.reading)
    return ("granular soil" if soil in _GRANULAR else "clay, silt or not known"), kind


def _dug(case: LineCase, piece: InnerFoundationPiece, old: Old) -> Link:
    """The trench never below the line that falls from the old footing's bottom edge."""
    address, title = _address(case, f"dig-{old.id}"), f"trench beside the old footing of {old.mark}"
    if piece.underpinned:
        reason = "the old footing is underpinned first: by a design of its own, which is not checked here"
        return cannot(address, title, "line", case.id, clause=_SLOPE, reason=reason, applies=False)
    return _sloped(case, piece, old, address, title, "trench", lambda e: e.new_in - e.old_in)


def _presses(case: LineCase, piece: InnerFoundationPiece, old: Old) -> Link:
    """A new footing that stands higher presses on the old one, unless it stands far enough from it."""
    address, title = _address(case, f"press-{old.id}"), f"pressure of the new footing on the old one of {old.mark}"
    return _sloped(case, piece, old, address, title, "pressure", lambda e: e.old_in - e.new_in)


def _sloped(
    case: LineCase, piece: InnerFoundationPiece, old: Old, address: str, title: str, what: str,
    deeper: Callable[[_Edges], float],
) -> Link:  # fmt: skip
    edges = _edges(case, piece, old)
    if isinstance(edges, str):
        return cannot(address, title, "line", case.id, clause=_SLOPE, reason=edges)
    below = deeper(edges)
    if below <= 0:
        level = "no deeper than" if what == "trench" else "no higher than the bottom of"
        reason = f"the new footing's bottom lies {level} the old footing"
        return cannot(address, title, "line", case.id, clause=_SLOPE, reason=reason, applies=False, marks=edges.marks)
    row, kind = _falls(case)
    with section(address):
        slope = table_1809_6().read(row, symbol="tan")
        c = given("c", max(edges.clear_in, 0.0), "in", "clear between the lower edges of the two footings", edges.marks)
        d = given("d", below, "in", "the one bottom below the other", edges.marks)
        allowed = scale(c, float(slope), symbol="d_a", label=f"fall of the line over that distance: {row}")
    how = (
        f"{edges.clear_in:.0f} in. clear; {row}: no steeper than {float(slope):.2f} to 1"
        if edges.clear_in > 0
        else "the new footing lies over or against the old one"
    )
    cure = "; raise its bottom, move it in, or underpin the old footing first" if what == "trench" else ""
    return checked(
        address, title, "line", case.id, level="allowable", unit="in", demand=d, capacity=allowed, clause=_SLOPE,
        reason=how + cure, marks=kind | marks_of((slope,)), minimum=True,
    )  # fmt: skip


def _trench(case: LineCase, piece: InnerFoundationPiece, dug: Sequence[Link]) -> Link:
    """Short alternate lengths where the trench goes below an old footing's line, so that it is never bared for long."""
    address, title = _address(case, "trench"), "trench in short alternate lengths"
    clause = "common practice, no source"
    below = piece.underpinned or any(link.status in ("fails", "cannot be checked") for link in dug)
    if not below:
        reason = (
            "the trench stays above the line that falls from the old footings: it may be open over its whole length"
        )
        return cannot(address, title, "line", case.id, clause=clause, reason=reason, applies=False)
    with section(address):
        most = table_trench().read("beside an old footing")
        longest = min(piece.dig_length_in or case.length_in, case.length_in)
        asked = given("l", longest / 12, "ft", "longest trench open at once")
    reason = "every third length at a time, poured and set before the next is opened (common practice, no source)"
    return checked(
        address, title, "line", case.id, level="allowable", unit="ft", demand=asked, capacity=most, clause=clause,
        reason=reason, minimum=True,
    )  # fmt: skip
