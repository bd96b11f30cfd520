"""One braced segment pushed one way: with what arms it turns over, what it weighs, and the posts at its ends.

The segment turns about the middle of the post that is pressed down. That post is a new one of the work, else the studs
that the survey found nailed together at the wall's end; where nobody knows their size the middle is taken 3 in. in.

A perforated wall has the lever arm that its standard gives it, C_o times what counts of its full-height parts; dead
load holds it down no more than by the wall's own arms, and so less of it is counted at that shorter one.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from groundsill.forces.reading import doubted
from groundsill.loadpath.case import Brace, LineCase, height_path, species_of
from groundsill.standards.statics.walls import overturning_moment
from groundsill.work.pieces import HoldDownPiece
from groundsill.working.steps import add, convert, divide, given, least, scale
from groundsill.working.value import Mark, marks_of

__all__ = ["END_POST_FT", "LOWEST_GRADE", "WAYS", "EndPost", "Turning", "Way", "beside_opening", "turning_of"]

END_POST_FT = 0.25  # from a segment's end to the middle of its end posts, where their size is not known
LOWEST_GRADE = "No. 3"  # of lumber that nobody graded; chosen here
_STUD_SPACING_IN = 24.0  # the widest studs stand, where nobody measured it

Way = Literal["+", "-"]
WAYS: tuple[Way, ...] = ("+", "-")


@dataclass(frozen=True, slots=True)
class EndPost:
    """The post at an end of a segment: its sides along and across the wall, inches (None where nobody knows).

    ``marks`` are those of its sides, ``wood`` those of its species. Of ``plies`` studs side by side ``along_in`` is the
    whole.
    """

    along_in: float | None
    across_in: float | None
    species: str
    grade: str
    words: str
    marks: frozenset[Mark] = frozenset()
    wood: frozenset[Mark] = frozenset()
    plies: int = 1


@dataclass(frozen=True, slots=True)
class Turning:
    """A segment pushed toward ``way``: lengths in ft, loads along it in plf.

    ``h`` its height, ``b`` its length, ``d`` the lever arm from hold-down to pressed post, ``e_c`` from its end to the
    middle of the pressed post, ``x_D`` from there to the middle of the dead load, ``b_c`` from there to the pulled end,
    ``t`` the length of wall whose load stands on the post in any case. ``w_D`` is the dead load that holds the segment
    down, ``w_all`` all of it. ``at`` is the section of the sheet where they stand: pushed either way a segment without
    hold-downs has the same. ``held`` says that a hold-down counts.
    """

    brace: Brace
    way: Way
    at: str
    held: bool
    post: EndPost
    h: float
    b: float
    d: float
    e_c: float
    x_D: float
    b_c: float
    t: float
    w_D: float
    w_L: float
    w_S: float
    w_all: float

    def the_other_way(self) -> Turning:
        """The same segment pushed the other way, where no hold-down makes a difference."""
        return replace(self, way="-" if self.way == "+" else "+")

    @property
    def pressed_in(self) -> float:
        """Station of the end that is pressed down."""
        return self.brace.to_in if self.way == "+" else self.brace.from_in

    def moment(self, force: float, arm_ft: float) -> float:
        """The overturning moment of a force whose resultant lies ``arm_ft`` above the segment."""
        if not float(arm_ft):
            return overturning_moment(force, self.h)
        a = doubted(arm_ft, marks_of((arm_ft,)), unit="ft", symbol="a")
        above = given("a", a, "ft", "forces' resultant above the floor", marks_of((a,)))
        return overturning_moment(force, add(self.h, above, symbol="h", label="arm of the force", unit="ft"))


def turning_of(case: LineCase, brace: Brace, held: list[HoldDownPiece], way: Way, at: str) -> Turning:
    """A segment pushed toward ``way`` (+: the line's end), with the hold-downs that count where it is pulled.

    ``at`` is the section of the sheet that it is worked out in.
    """
    near = brace.from_in if way == "+" else brace.to_in
    path = height_path(brace.segment_id)
    h_in = case.reading.number(path, brace.segment.height_in, "h", "in", f"height of {brace.segment.mark}")
    assert h_in is not None  # a segment of unknown height is never counted as a brace
    b = convert(given("b", brace.length_in, "in", f"length of {brace.name}"), "in", "ft")
    post = end_post(case, brace)
    middle = END_POST_FT if post.along_in is None else float(post.along_in) / 24
    offset = max(held[0].post_offset_in, abs(held[0].station_in - near)) / 12 if held else middle
    long = float(b)
    short = max(long - offset - middle, 0.1 * long)
    measured = post.marks
    e_c = given("e_c", middle, "ft", f"end to the middle of the pressed post: {post.words}", measured)
    d = given("d", short, "ft", "lever arm: length less the distance of hold-down and end post from the ends", measured)
    x_D = given("x_D", long / 2 - middle, "ft", "pressed post to the middle of the dead load", measured)
    b_c = given("b_c", max(long - middle, short), "ft", "pressed post to the pulled end", measured)
    w_all, w_L, w_S = _loads(case, brace)
    t = _tributary(case, brace, middle, long)
    d, w_D = _of_perforated(case, brace, d, w_all)
    return Turning(
        brace, way, at, bool(held), post, convert(h_in, "in", "ft"), b, d, e_c, x_D, b_c, t, w_D, w_L, w_S, w_all
    )


def beside_opening(case: LineCase, turned: Turning, part: Brace, opening_in: float) -> Turning:
    """A perforated wall pushed that way at the pressed end of one of its full-height parts.

    ``opening_in`` is the width of the opening beyond that end, none at the wall's own: half of what stands over it
    comes down there, on the new post, or on the one stud that is sure to stand there.
    """
    if not opening_in:
        return replace(turned, brace=part)
    post = end_post(case, part, one=True)
    middle = END_POST_FT if post.along_in is None else float(post.along_in) / 24
    e_c = given("e_c", middle, "ft", f"end to the middle of the pressed post: {post.words}", post.marks)
    half = given("w_o/2", opening_in / 24, "ft", "half of the opening beside it")
    t = add(_tributary(case, part, middle, turned.b), half, symbol="t", label="length of wall on the post")
    return replace(turned, brace=part, post=post, e_c=e_c, t=t)


def _of_perforated(case: LineCase, brace: Brace, arm: float, w_all: float) -> tuple[float, float]:
    """Lever arm and dead load that holds down: of a perforated wall the standard's arm, and what of the load fits."""
    if brace.around is None:
        return arm, w_all
    words = f"C_o ΣL_i, the lever arm of a perforated wall ({case.sdpws.perforated.ends_clause})"
    counted = given("C_o ΣL_i", brace.sheathed_in / 12, "ft", words, brace.marks)
    d = least(arm, counted, symbol="d", label="lever arm")
    part = divide(d, arm, symbol="d/d_w", unit="1", label="that arm over the wall's own")
    return d, scale(w_all, part, symbol="w_D", label="dead load that holds as much at this arm as at the wall's own")


def end_post(case: LineCase, brace: Brace, one: bool = False) -> EndPost:
    """The post at the ends of a segment: a new one, else the studs that stand there, or but ``one`` of them."""
    panel, stud, path = brace.panel, brace.segment.stud, f"survey.underfloor.segments.{brace.segment_id}.stud"
    if panel is not None and panel.end_post_in is not None:
        across = panel.end_post_depth_in
        words = f"new post, {panel.end_post_in:g} in. along the wall"
        return EndPost(panel.end_post_in, across, panel.end_post_species, panel.end_post_grade, words)
    thick = stud.thickness_in.value
    count = 1 if one else stud.at_ends
    along = None if thick is None else thick * count
    words = "size not known" if along is None else f"{count} stud{'s' if count > 1 else ''} of {thick:g} in."
    known = case.reading.marked(path, "thickness_in", "depth_in")
    species, wood = species_of(case, path, stud.species, f"the studs of {brace.segment.mark or brace.segment_id}")
    return EndPost(along, stud.depth_in.value, species, stud.grade, words, known, wood, count)


def _loads(case: LineCase, brace: Brace) -> tuple[float, float, float]:
    """Dead, live and snow load along a segment, plf; panels face to face share them."""
    middle = (brace.from_in + brace.to_in) / 2
    there = sum(1 for other in case.counted() if other.from_in <= middle <= other.to_in)
    load, feet = case.forces.gravity.lines[case.id], case.length_in / 12
    found = []
    for symbol, pounds, what in (
        ("w_D", float(load.dead) - float(load.on_foundation), "dead load"),
        ("w_L", float(load.live), "floor live load"),
        ("w_S", float(load.snow), "roof snow"),
    ):
        along = max(pounds / feet, 0.0) / max(there, 1)
        marks = marks_of((load.dead, load.on_foundation, load.live, load.snow))
        label = f"{what} on the line from the gravity take-down, spread evenly"
        found.append(given(symbol, along, "plf", label, marks))
    return found[0], found[1], found[2]


def _tributary(case: LineCase, brace: Brace, middle: float, long: float) -> float:
    """Length of wall whose load stands on the end post in any case: to halfway between it and the next stud."""
    spacing = brace.segment.stud.spacing_in.value
    marks = case.reading.marked(f"survey.underfloor.segments.{brace.segment_id}.stud", "spacing_in")
    half = min(middle + (_STUD_SPACING_IN if spacing is None else spacing) / 24, long)
    return given("t", half, "ft", "length of wall that stands on the end post in any case", marks)
