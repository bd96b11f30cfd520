"""The post that is pressed down at the end of a braced segment: along its own grain, and across that of the sill.

By ASCE 7 2.4.5: the greatest of combination 8 (dead load and the earthquake down), 9 (with live load and snow) and 10
(the dead load that surely holds); in wind by 2.4.1, combinations 5, 6 and 7.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable
from dataclasses import dataclass, field
from functools import partial

from groundsill.forces.reading import doubted
from groundsill.house.underfloor import SillPiece
from groundsill.loadpath.case import LineCase, cannot, checked, moisture_of, sill_at, species_of, working_of
from groundsill.loadpath.chain import Link
from groundsill.loadpath.openings import Around
from groundsill.loadpath.storeys_over import Bound, bounded
from groundsill.loadpath.turning import LOWEST_GRADE, Turning
from groundsill.standards.nds_2018.compression import NEAR_END_IN
from groundsill.standards.statics.walls import post_compression
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import add, given, greatest, multiply, note, scale
from groundsill.working.value import Mark, marks_of

__all__ = ["Pressing", "post_links"]

_ACROSS = "3.10.2, 4.2.6"
_ALONG = "3.6.3, 3.7.1"
_BESIDE_LIVE = 0.75  # combination 9: the earthquake beside live load, of what it is alone (0.525 to 0.7)
_UNGRADED = f"grade not known: the lowest is taken, {LOWEST_GRADE}"


@dataclass(slots=True)
class Pressing:
    """The force in the end posts of one segment, worked out once for each set of arms and each assumption.

    Pushed either way a segment without hold-downs has the same arms; what was worked out for the one serves the other,
    and ``at`` says in which section of the sheet it stands.
    """

    case: LineCase
    force: float
    address: str
    _known: dict[Hashable, tuple[float, str]] = field(default_factory=dict)

    def compression(self, turned: Turning, bound: Bound) -> tuple[float, str]:
        """The greatest compression at allowable-stress level, and the section of its working."""
        lengths = (turned.d, turned.e_c, turned.x_D, turned.b_c, turned.t)
        key = (*(float(one) for one in lengths), float(bound.arm_ft))
        if key not in self._known:
            at = f"{self.address}/{turned.way}-pressed"
            with section(at):
                self._known[key] = self._greatest(turned, bound), at
        return self._known[key]

    def _greatest(self, turned: Turning, bound: Bound) -> float:
        if bound.words:
            note(f"{bound.words}:")
        if turned.brace.around is not None:
            return self._of_perforated(turned, bound, turned.brace.around)
        M = turned.moment(self.force, bound.arm_ft)
        S_DS, effects, wind = self.case.forces.S_DS, self.case.forces.rules.effects, self.case.lateral == "wind"
        first, second, third = ("5", "6", "7") if wind else ("8", "9", "10")
        f_first, f_second = (1.0, 1.0) if wind else (effects.asd_dead_factor_8(S_DS), effects.asd_dead_factor_9(S_DS))
        w_1 = scale(turned.w_D, f_first, symbol=f"w_{first}", label=f"combination {first}")
        held = max(self.case.holding_factor(), 0.0)
        w_3 = scale(turned.w_D, held, symbol=f"w_{third}", label=f"combination {third}")
        found = [_at(turned, M, w_1), _at(turned, M, w_3)]
        if turned.w_L or turned.w_S:
            words = f"combination {second}"
            down = scale(turned.w_D, f_second, symbol="f_D w_D", label=words)
            beside = add(turned.w_L, turned.w_S, symbol="w_L + w_S", label="live load and snow")
            w_2 = add(down, scale(beside, _BESIDE_LIVE, symbol="0.75 (w_L + w_S)"), symbol=f"w_{second}", label=words)
            found.append(_at(turned, scale(M, _BESIDE_LIVE, symbol=f"M_{second}", label=words), w_2))
        return greatest(*found, symbol="C", label="compression in the end post")

    def _of_perforated(self, turned: Turning, bound: Bound, around: Around) -> float:
        """In a perforated wall: what its standard gives for each end of each part, on top of what stands there."""
        h = turned.h
        if float(bound.arm_ft):
            above = given("a", bound.arm_ft, "ft", "forces' resultant above the floor", marks_of((bound.arm_ft,)))
            h = add(h, above, symbol="h", label="arm of the force", unit="ft")
        pushed = self.case.sdpws.perforated.end_tension(self.force, h, around.C_o, around.counted_ft)
        wind, effects = self.case.lateral == "wind", self.case.forces.rules.effects
        first, second, S_DS = ("5" if wind else "8"), ("6" if wind else "9"), self.case.forces.S_DS
        standing = multiply(turned.w_all, turned.t, symbol="w t", unit="lb", label="dead load on the post")
        factor = 1.0 if wind else effects.asd_dead_factor_8(S_DS)
        found = [add(pushed, scale(standing, factor, symbol="D"), symbol=f"C_{first}", label=f"combination {first}")]
        if turned.w_L or turned.w_S:
            words = f"combination {second}"
            beside = add(turned.w_L, turned.w_S, symbol="w_L + w_S", label="live load and snow")
            loads = multiply(
                beside, turned.t, symbol="(w_L + w_S) t", unit="lb", label="live load and snow on the post"
            )
            most = add(pushed, loads, symbol="C + L + S", label="both at once")
            factor = 1.0 if wind else effects.asd_dead_factor_9(S_DS)
            down = scale(standing, factor, symbol="D", label=words)
            found.append(
                add(down, scale(most, _BESIDE_LIVE, symbol="0.75 (C + L + S)"), symbol=f"C_{second}", label=words)
            )
        return greatest(*found, symbol="C", label="compression in the post")

    def borne(self, turned: Turning, id: str, sill: SillPiece) -> tuple[float, str]:
        """What a sill piece bears under the post, lb, and the section of its working: alike in from both its ends.

        Raises:
            OutsideLimits: for a species that the table does not hold.
        """
        key = (id, min(_to_end(turned, sill), NEAR_END_IN))
        if key not in self._known:
            at = f"{self.address}/{turned.way}-bears"
            with section(at):
                self._known[key] = _bears(self.case, turned, id, sill), at
        return self._known[key]

    def carried(self, turned: Turning, moisture: str) -> tuple[float, str]:
        """What the post carries along its grain, lb, and the section of its working.

        Raises:
            OutsideLimits: for a species, width or slenderness that the tables do not cover.
        """
        if moisture not in self._known:
            at = f"{self.address}/{turned.way}-carries"
            with section(at):
                self._known[moisture] = _carries(self.case, turned, moisture), at
        return self._known[moisture]


def post_links(case: LineCase, turned: Turning, pressing: Pressing, bounds: tuple[Bound, ...]) -> list[Link]:
    """The sill under the pressed post, and the post itself."""
    return [
        bounded(bounds, partial(_sill_link, case, turned, pressing)),
        bounded(bounds, partial(_post_link, case, turned, pressing)),
    ]


def _at(turned: Turning, M: float, w: float) -> float:
    return post_compression(M, w, turned.b, turned.x_D, turned.d, turned.b_c, turned.t)


def _carries(case: LineCase, turned: Turning, moisture: str) -> float:
    post = turned.post
    assert post.along_in is not None and post.across_in is not None
    taken = frozenset() if post.grade else frozenset((Mark("assumed range", f"end posts: {_UNGRADED}"),))
    along = given("b_p", post.along_in, "in", f"side of the post along the wall: {post.words}", post.marks)
    across = given("d_p", post.across_in, "in", "side of the post across the wall", post.marks)
    area = multiply(along, across, symbol="A", unit="in^2", label="section of the post")
    l_e = given("l_e", 12.0 * float(turned.h), "in", "height of the wall", marks_of((turned.h,)))
    one = float(along) / post.plies
    value = case.nds.post_value(post.species, post.grade or LOWEST_GRADE, across, l_e, moisture, along=one)
    return multiply(doubted(value, taken, post.wood), area, symbol="C'", unit="lb", label="the post carries")


def _sill_link(case: LineCase, turned: Turning, pressing: Pressing, bound: Bound) -> Link:
    """The sill across its grain under the pressed post."""
    brace, post, address = turned.brace, turned.post, f"{pressing.address}/{turned.way}-sill"
    place = (address, f"sill under the {_end(turned)} post of {brace.name}, across the grain", case.nds.cite(_ACROSS))
    at = sill_at(case, _station(turned))
    refused, doubts = _why_not(case, turned, at, address)
    if refused or at is None or post.along_in is None or post.across_in is None:
        return _cannot(case, turned, place, refused, doubts)
    id, sill = at
    C, pressed = pressing.compression(turned, bound)
    try:
        capacity, borne = pressing.borne(turned, id, sill)
    except OutsideLimits as outside:
        return _cannot(case, turned, place, str(outside), doubts)
    words = bound.told(f"{post.words} on {sill.species.value}")
    return _told(case, turned, place, C, doubted(capacity, doubts), words, (pressed, borne))


def _bears(case: LineCase, turned: Turning, id: str, sill: SillPiece) -> float:
    post = turned.post
    assert post.along_in is not None and post.across_in is not None
    l_b = given("l_b", post.along_in, "in", f"length of the bearing: {post.words}", post.marks)
    wide = given("b_s", *_across(case, id, sill, post.across_in, post.marks))
    area = multiply(l_b, wide, symbol="A", unit="in^2", label="post on the sill")
    a_e = given("a_e", max(_to_end(turned, sill), 0.0), "in", "from the bearing to the end of the sill piece")
    path = f"survey.underfloor.sills.{id}"
    damp = case.reading.noted("whether the sill is damp", f"{path}.damp")
    wood, told = species_of(case, path, sill.species, f"sill {sill.mark or id}")
    value = doubted(case.nds.perpendicular_value(wood, l_b, a_e, moisture_of(sill.damp.value)), damp, told)
    return multiply(value, area, symbol="C'", unit="lb", label="the sill bears")


def _post_link(case: LineCase, turned: Turning, pressing: Pressing, bound: Bound) -> Link:
    """The pressed post itself, along its grain; the sheathing holds it in the plane of the wall."""
    brace, post = turned.brace, turned.post
    title = f"{_end(turned)} post of {brace.name}, along the grain"
    place = (f"{pressing.address}/{turned.way}-post", title, case.nds.cite(_ALONG))
    if post.along_in is None or post.across_in is None or not post.species:
        return _cannot(case, turned, place, "the size or species of the end studs is not known")
    at = sill_at(case, _station(turned))
    with section(place[0]):
        path = "" if at is None else f"survey.underfloor.sills.{at[0]}.damp"
        damp = case.reading.noted("whether the sill it stands on is damp", path)
    C, pressed = pressing.compression(turned, bound)
    try:
        capacity, carried = pressing.carried(turned, moisture_of(None if at is None else at[1].damp.value))
    except OutsideLimits as outside:
        return _cannot(case, turned, place, str(outside), damp)
    words = bound.told(f"{post.words} of {post.species}{'' if post.grade else f'; {_UNGRADED}'}")
    return _told(case, turned, place, C, doubted(capacity, damp), words, (pressed, carried))


def _why_not(
    case: LineCase, turned: Turning, at: tuple[str, SillPiece] | None, address: str
) -> tuple[str, frozenset[Mark]]:
    """Why nobody can say what the sill bears there, and the marks of what says so or says it is sound."""
    if at is None:
        return "no sill was surveyed under it", frozenset()
    id, sill = at
    post, name, path = turned.post, f"sill {sill.mark or id}", f"survey.underfloor.sills.{id}"
    with section(address):
        doubts = case.reading.noted(
            f"the condition of {name}, and whether it lies without a gap", path, "condition", "gap_in"
        )
    if sill.condition.value in ("decayed", "soft"):
        return f"{name} is {sill.condition.value}: what it bears cannot be told", doubts
    if sill.gap_in.value:
        return f"there is a gap or shims under {name}: it does not bear on the foundation there", doubts
    if not sill.species.value:
        return f"the species of {name} is not known", doubts
    if post.along_in is None or post.across_in is None:
        return "the size of the end studs is not known", doubts
    return "", doubts


def _across(
    case: LineCase, id: str, sill: SillPiece, depth: float, measured: Iterable[Mark]
) -> tuple[float, str, str, frozenset[Mark]]:
    """The post's depth that stands on the sill: less what hangs over where the sill stands back from the studs."""
    back = sum(min(f.value or 0.0, 0.0) for f in (sill.projects_inside_in, sill.projects_outside_in))
    marks = case.reading.marked(f"survey.underfloor.sills.{id}", "projects_inside_in", "projects_outside_in")
    on = depth + back
    if sill.width_in.value is not None:
        on = min(on, sill.width_in.value)
        marks |= case.reading.marked(f"survey.underfloor.sills.{id}", "width_in")
    return max(on, 0.1), "in", "depth of the post that stands on the sill", marks.union(measured)


def _station(turned: Turning) -> float:
    """Station of the middle of the pressed post."""
    inward = 12 * float(turned.e_c)
    return turned.pressed_in - inward if turned.way == "+" else turned.pressed_in + inward


def _to_end(turned: Turning, sill: SillPiece) -> float:
    half = (turned.post.along_in or 0.0) / 2
    middle = _station(turned)
    return min(middle - half - sill.from_in, sill.to_in - middle - half)


def _end(turned: Turning) -> str:
    return "end" if turned.way == "+" else "start"


def _cannot(
    case: LineCase, turned: Turning, place: tuple[str, str, str], reason: str, marks: Iterable[Mark] = ()
) -> Link:
    address, title, clause = place
    return cannot(
        address, title, "segment", turned.brace.segment_id, clause=clause, reason=reason, direction=turned.way,
        marks=marks, working=_working(case, turned),
    )  # fmt: skip


def _told(
    case: LineCase, turned: Turning, place: tuple[str, str, str], C: float, capacity: float, reason: str,
    besides: tuple[str, ...],
) -> Link:  # fmt: skip
    """The link; where the roof carries snow that nobody knows, what would pass cannot be checked."""
    address, title, clause = place
    load = case.forces.gravity.lines[case.id]
    unknown = case.reading.house.survey.site.snow_psf.value is None and load.roof_ft2 > 0.5
    if unknown and float(C) <= float(capacity):
        reason = f"the roof snow on {load.roof_ft2:.0f} sq ft of roof that the line carries is not known"
        return _cannot(case, turned, place, reason, marks_of((C, capacity)))
    return checked(
        address, title, "segment", turned.brace.segment_id, level="allowable", unit="lb", demand=C, capacity=capacity,
        clause=clause, reason=reason, direction=turned.way, working=(*_working(case, turned), *besides),
    )  # fmt: skip


def _working(case: LineCase, turned: Turning) -> tuple[str, ...]:
    """Where the arms and loads of the segment stand, and its own share of the force."""
    return (turned.at, *working_of(case, turned.brace))
