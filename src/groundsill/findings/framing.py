"""Framing under the floor: posts and their pads, what was cut or notched, let-in braces, balloon framing, blocking.

Posts that are alike in every answer are told once, all together.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from groundsill.findings.answer import Answer, at_most, holds
from groundsill.findings.asking import Asking, settles
from groundsill.findings.finding import Finding, Judgement, Reason
from groundsill.forces.reading import Reading
from groundsill.house.fact import Fact
from groundsill.house.record import Observation
from groundsill.house.underfloor import JoistField, Line, PlateSplice, Post, Segment
from groundsill.standards.irc_2021.framing import table_r502_8_1
from groundsill.working.value import Mark

__all__ = ["framing"]

_UNDER: Final = "survey.underfloor"
_PADS: Final[dict[str, Answer]] = {
    "concrete": "yes", "brick": "yes", "stone": "yes", "wood on soil": "no", "none": "no"
}  # fmt: skip
_BAD: Final = ("decay", "insects", "settlement", "undermining", "lean", "missing")


def framing(reading: Reading) -> Iterator[Finding]:
    """The findings on the framing, from the posts up."""
    under = reading.house.survey.underfloor
    yield from _posts(reading)
    for id, seen in reading.in_order(reading.house.survey.observations):
        if seen.kind == "cut framing":
            yield _cut(reading, id, seen)
    for id, splice in reading.in_order(under.splices):
        if splice.kind == "cut":
            yield _cut_plate(reading, id, splice)
    for id, segment in reading.in_order(under.segments):
        if segment.let_in_brace.value:
            yield _let_in(reading, id, segment)
    for id, line in reading.in_order(under.lines):
        if line.framing == "balloon":
            yield _of_line(reading, id, line, "balloon", "Balloon framing")
        if line.rim == "none":
            yield _of_line(reading, id, line, "blocking", "No rim and no blocking between the joists")


# ---- Posts ----------------------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Posts:
    """Posts that are alike, and the answers they share."""

    ids: tuple[str, ...]
    sound: tuple[Reason, ...]
    pad: Reason
    tied: tuple[Reason, ...]
    seen: tuple[str, ...]


def _posts(reading: Reading) -> Iterator[Finding]:
    """The findings on posts, one for all that are alike."""
    groups: dict[tuple[object, ...], _Posts] = {}
    for id, post in reading.in_order(reading.house.survey.underfloor.posts):
        one = _post(Asking(reading, "framing"), id, post)
        alike = (one.sound, one.pad, one.tied, one.seen, post.pad)
        first = groups.get(alike)
        groups[alike] = one if first is None else _Posts((*first.ids, id), one.sound, one.pad, one.tied, one.seen)
    for group in groups.values():
        yield _of_posts(reading, group)


def _post(ask: Asking, id: str, post: Post) -> _Posts:
    """The questions asked of one post."""
    seen = tuple(ask.in_words(ask.noted(id, *_BAD)))
    sound = (ask.asked("post", "no", seen="; ".join(seen)),) if seen else ()
    tied = (ask.asked("tied_top", holds(post.tied_top)), ask.asked("tied_bottom", holds(post.tied_bottom)))
    return _Posts((id,), sound, ask.asked("pad", _PADS[post.pad], pad=post.pad), tied, seen)


def _of_posts(reading: Reading, group: _Posts) -> Finding:
    """The finding on posts that are alike."""
    ask, posts = Asking(reading, "framing"), reading.house.survey.underfloor.posts
    marks = ", ".join(posts[id].mark or id for id in group.ids)
    bad = bool(group.sound) or group.pad.answer == "no"
    tied = {reason.answer for reason in group.tied} == {"yes"}
    told = _weighed(ask, (*group.sound, group.pad), (*group.sound,), group.tied, (group.pad, *group.sound))
    keys = (*(("seat",) if bad else ()), *(() if tied else ("tie",)), *(("leave",) if tied and not bad else ()))
    pad = posts[group.ids[0]].pad
    seen = (f"{len(group.ids)} of them, on {pad}" if len(group.ids) > 1 else f"on {pad}", *group.seen)
    names = [f"{id}.{name}" for id in group.ids for name in ("tied_top", "tied_bottom")]
    return _finding(
        ask, f"finding/posts/{group.ids[0]}", marks, "Posts" if len(group.ids) > 1 else "Post", "under the floor", "",
        None, seen, told, keys, "post", reading.marked(f"{_UNDER}.posts", *names),
    )  # fmt: skip


# ---- What was cut ---------------------------------------------------------------------------------------------------


def _cut(reading: Reading, id: str, seen: Observation) -> Finding:
    """The finding on framing that the surveyor noted as cut or notched."""
    ask, under = Asking(reading, "framing"), reading.house.survey.underfloor
    where, line, about = "under the floor", "", _thing(reading, seen)
    if isinstance(about, JoistField):
        notch = _notched(ask, seen.size_in, about.depth_in, "notch in a joist, outer thirds", "notched_joist")
        told, keys = _weighed(ask, (notch,)), ("sister",)
        where = f"joists {about.mark or seen.on}"
    elif isinstance(about, Segment):
        notch = _notched(ask, seen.size_in, about.stud.depth_in, "notch in a bearing stud", "notched_stud")
        told, keys, line = _weighed(ask, (notch,), (notch,)), ("sister",), about.line
        where = f"{about.mark or seen.on}, line {ask.line_mark(line)}"
    else:
        carried, cut = ask.asked("carried", "cannot tell"), ask.asked("cut", "no", seen=ask.words_of(seen))
        told, keys = _weighed(ask, (carried,), (cut,)), ("bridge",)
        if seen.on in under.lines:
            line, where = seen.on, f"line {ask.line_mark(seen.on)}"
    return _finding(
        ask, f"finding/cut/{id}", seen.mark, "Framing cut or notched", where, line, seen.station_in,
        (ask.words_of(seen),), told, keys, "cut", reading.marked(f"survey.observations.{id}", "size_in"),
    )  # fmt: skip


def _thing(reading: Reading, seen: Observation) -> object:
    """What was cut, where it is a field of joists or a wall segment."""
    under = reading.house.survey.underfloor
    return under.joists.get(seen.on or "") or under.segments.get(seen.on or "")


def _notched(ask: Asking, size: Fact[float], depth: Fact[float], row: str, key: str) -> Reason:
    """Whether a notch is no deeper than the code lets pass, over all that the notch and the wood may be."""
    part = table_r502_8_1().read(row)
    ends = [depth.value if end is None else end for end in (depth.low, depth.high)]
    answers = {"cannot tell" if end is None or size.value is None else at_most(size, part * end) for end in ends}
    answer: Answer = answers.pop() if len(answers) == 1 else "cannot tell"
    shown = "of its depth" if depth.value is None else f"of its depth ({ask.shown(part * depth.value)})"
    return ask.asked(key, answer, size=ask.told(size), most=f"{part:.0%} {shown}")


def _cut_plate(reading: Reading, id: str, splice: PlateSplice) -> Finding:
    """The finding on a top plate that somebody cut through."""
    ask = Asking(reading, "framing")
    told = _weighed(ask, (), (ask.asked("plate", "no"),))
    where = f"line {ask.line_mark(splice.line)}, {ask.shown(splice.station_in)} from its start"
    return _finding(
        ask, f"finding/plate/{id}", splice.mark, "Top plate cut through", where, splice.line, splice.station_in,
        ("cut through",), told, ("strap",), "cut", frozenset(),
    )  # fmt: skip


# ---- How it was framed ----------------------------------------------------------------------------------------------


def _let_in(reading: Reading, id: str, segment: Segment) -> Finding:
    """The finding on a brace let into the studs."""
    ask = Asking(reading, "framing")
    told = _weighed(ask, (), (), (ask.asked("let_in", "no"),))
    return _finding(
        ask, f"finding/let-in/{id}", segment.mark, "Let-in brace",
        ask.stretch(segment.line, segment.from_in, segment.to_in), segment.line, (segment.from_in + segment.to_in) / 2,
        ("a board let into the studs on a slant",), told, ("panel", "leave_in"), "framed",
        reading.marked(f"{_UNDER}.segments.{id}", "let_in_brace"),
    )  # fmt: skip


def _of_line(reading: Reading, id: str, line: Line, key: str, title: str) -> Finding:
    """The finding on how a whole line is framed."""
    ask = Asking(reading, "framing")
    told = _weighed(ask, (), (), (ask.asked(key, "no"),))
    return _finding(
        ask, f"finding/{key}/{id}", line.mark, title, f"line {line.mark or id}", id, None, (title.lower(),), told,
        (key,), "framed", frozenset(),
    )  # fmt: skip


# ---- Alike for all --------------------------------------------------------------------------------------------------


def _weighed(
    ask: Asking,
    gravity: Sequence[Reason] = (),
    earthquake: Sequence[Reason] = (),
    loosely: Sequence[Reason] = (),
    durability: Sequence[Reason] = (),
) -> tuple[Judgement, Judgement, Judgement]:
    """The three weighings; ``loosely`` are the questions whose no is only watched in an earthquake."""
    return (
        ask.weighed("gravity", gravity),
        ask.weighed("earthquake", earthquake, loosely),
        ask.weighed("durability", (), durability),
    )


def _finding(
    ask: Asking,
    address: str,
    mark: str,
    title: str,
    place: str,
    line: str,
    station_in: float | None,
    observed: tuple[str, ...],
    told: tuple[Judgement, Judgement, Judgement],
    cures: Sequence[str],
    alone: str,
    marks: frozenset[Mark],
) -> Finding:
    """A finding of this topic: framing that was cut or built so lies still, but for wood that decays."""
    active = ask.asked("goes_on", "cannot tell" if alone == "post" else "yes")
    gravity, earthquake, durability = told
    return Finding(
        address, mark, title, place, line, station_in, observed, gravity, earthquake, durability, (), active,
        settles(active, *told), ask.cures(*cures), ask.left_alone(alone), tuple(sorted(marks)),
    )  # fmt: skip
