"""The post that a hold-down pulls: net section, and the bending by a pull beside its middle (NDS 3.1.2, 3.8, 3.9.1).

Worked out where the hold-down says how far beside the post its anchor pulls and what is bored out of the post. The post
is taken bare, with the whole couple in it. Sheathing nailed all down the post takes part of that couple, how much no
standard says: what a bare post carries passes, and what it cannot *cannot be checked*, unless the pull alone is too
much for it.
"""

from __future__ import annotations

from collections.abc import Sequence

from groundsill.forces.reading import doubted
from groundsill.loadpath.case import LineCase, cannot, checked, moisture_of, sill_at, working_of
from groundsill.loadpath.chain import Link
from groundsill.loadpath.hold_down_strength import share_of
from groundsill.loadpath.storeys_over import Bound
from groundsill.loadpath.turning import LOWEST_GRADE, Turning
from groundsill.standards.nds_2018.tension import PulledPost
from groundsill.standards.statics.walls import end_tension
from groundsill.work.pieces import HoldDownPiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import add, divide, given, greatest, multiply, note, scale
from groundsill.working.value import Mark, marks_of

__all__ = ["INSIDE", "POST_CLAUSE", "is_told", "pulled_post_link"]

POST_CLAUSE = "3.1.2, 3.8.1, 3.9.1"
INSIDE = "inside of the end post"
_UNGRADED = f"grade not known: the lowest is taken, {LOWEST_GRADE}"
_NO_STANDARD = "how much of the couple the sheathing on it takes no standard says"
_CURE = "cure: a stouter post, or a hold-down in line with it"


def is_told(piece: HoldDownPiece) -> bool:
    """Whether a hold-down says all that the pull on its post is worked out from."""
    return piece.bored_in is not None and (piece.seat != INSIDE or piece.from_post_in is not None)


def pulled_post_link(
    case: LineCase, turned: Turning, held: Sequence[HoldDownPiece], force: float, address: str, bound: Bound
) -> Link:
    """The post at the pulled end under the hold-downs that count there, each of which tells what it is found by."""
    brace, post, clause = turned.brace, turned.post, case.nds.cite(POST_CLAUSE)
    end, marks = "start" if turned.way == "+" else "end", ", ".join(piece.mark for piece in held)
    title = f"{end} post of {brace.name}, pulled by hold-down {marks}"
    working = (turned.at, *working_of(case, brace))
    used, damp, reason = None, frozenset[Mark](), "the size or species of the end studs is not known"
    if post.along_in is not None and post.across_in is not None and post.species:
        with section(address):
            if bound.words:
                note(f"{bound.words}:")
            moisture, damp = _moisture(case, turned)
            try:
                used = _used(case, turned, held, force, moisture, bound)
            except OutsideLimits as outside:
                reason = str(outside)
    words = bound.told(f"{post.words} of {post.species}{'' if post.grade else f'; {_UNGRADED}'}")
    doubts = damp if used is None else damp | marks_of((used.tension, used.together))
    if used is not None and float(used.together) > 1.0 >= float(used.tension):
        reason = f"bare it would use {float(used.together):.2f} of its values, and {_NO_STANDARD}; {_CURE}; {words}"
        used = None
    if used is None:
        return cannot(
            address, title, "segment", brace.segment_id, clause=clause, reason=reason, direction=turned.way,
            marks=doubts, working=working,
        )  # fmt: skip
    return checked(
        address, title, "segment", brace.segment_id, level="allowable", unit="1", demand=used.together, capacity=1.0,
        clause=clause, reason=words, direction=turned.way, marks=doubts, working=working,
    )  # fmt: skip


def _moisture(case: LineCase, turned: Turning) -> tuple[str, frozenset[Mark]]:
    """The post's moisture, by the sill it stands on, and the marks of that."""
    inward = 12 * float(turned.e_c)
    middle = turned.brace.from_in + inward if turned.way == "+" else turned.brace.to_in - inward
    at = sill_at(case, middle)
    path = "" if at is None else f"survey.underfloor.sills.{at[0]}.damp"
    damp = case.reading.noted("whether the sill it stands on is damp", path)
    return moisture_of(None if at is None else at[1].damp.value), damp


def _used(
    case: LineCase, turned: Turning, held: Sequence[HoldDownPiece], force: float, moisture: str, bound: Bound
) -> PulledPost:
    """What the pull uses of the post's values."""
    post, moment = turned.post, turned.moment(force, bound.arm_ft)
    assert post.along_in is not None and post.across_in is not None
    pull = end_tension(moment, case.holding_factor(), turned.w_D, turned.b, turned.x_D, turned.d)
    T = greatest(pull, 0.0, symbol="T", label="tension at the end of the segment")
    along = given("b_p", post.along_in, "in", f"side of the post along the wall: {post.words}", post.marks)
    across = given("d_p", post.across_in, "in", "side of the post across the wall", post.marks)
    n = given("n", post.plies, "1", "studs side by side, each bent for itself")
    one = along if post.plies == 1 else divide(along, n, symbol="b_1", unit="in", label="one of them along the wall")
    M = multiply(T, _beside(held, along), symbol="M", unit="lb-in", label="couple in the bare post")
    bored = given("d_h", max(p.bored_in or 0.0 for p in held), "in", "bored out of the post across the wall")
    taken = frozenset() if post.grade else frozenset((Mark("assumed range", f"end posts: {_UNGRADED}"),))
    found = case.nds.pulled_post(post.species, post.grade or LOWEST_GRADE, across, one, n, bored, T, M, moisture)
    doubts = taken | post.wood
    return PulledPost(doubted(found.tension, doubts), doubted(found.together, doubts))


def _beside(held: Sequence[HoldDownPiece], along: float) -> float:
    """How far beside its middle the post is pulled, in.: by several hold-downs, each with its part, all on one side."""
    arms = []
    for piece in held:
        if piece.seat == INSIDE:
            a = given("a", piece.from_post_in or 0.0, "in", f"post's face to the anchor of {piece.mark}, by its report")
            arm = add(scale(along, 0.5, symbol="b_p/2"), a, symbol="e", label="the pull beside the post's middle")
        else:
            arm = given("e", 0.0, "in", f"hold-down {piece.mark} pulls along the post's middle")
        part = share_of(piece, held)
        arms.append(arm if part == 1.0 else scale(arm, part, symbol="β e", label=f"its part, {piece.mark}"))
    return arms[0] if len(arms) == 1 else add(*arms, symbol="e", label="the pull beside the post's middle")
