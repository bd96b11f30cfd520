"""A chain as a picture: the line's force as a band that runs from the floor to the ground, link by link.

Each stage is one cell. The band is as high in it as the part of the required force that the stage's weakest link
carries: full height where it passes, a neck where it fails, a gap where it carries nothing. The weakest place is where
the eye goes. Hatched is *indicated*; a dashed frame with nothing in it *cannot be checked*. The verdict stands under
each cell as a shape with words and the ratio; nothing is told by colour. States of one house lie under each other.
"""

from __future__ import annotations

from collections.abc import Generator, Iterator, Sequence
from dataclasses import dataclass

from groundsill.loadpath.chain import Chain, Link, Stage, Verdict, governing, verdict_of
from groundsill.papers.document import Figure
from groundsill.papers.drawing import Circle, Drawing, Fill, Layer, Line, Mark, Point, Polygon, Text
from groundsill.papers.letters import text_width, wrapped
from groundsill.papers.sheet import FULL_SIZE
from groundsill.papers.views.words import DASH, ratio

__all__ = ["Row", "stage_link", "stage_verdict", "strip_figure"]

WIDTH = 5.5
SIDE = 0.86
BAND = 0.40
UNDER = 0.50
LINE = 0.115
"""Paper inches: whole width, the column of names at the left, height of the full band, room for words under it, and
one line of small words."""

_PLAIN = Layer("chain", 25, style="plain")
_FRAME = Layer("chain full force", 13, "dotted", style="note", ink=0.6)
_OPEN = Layer("chain unknown", 18, "dashed", style="note")
_LEAST = Layer("chain least favourable", 18, "dashed", style="note", ink=0.9)
_WEAK = Layer("chain weakest", 100, style="defect")
_WORDS = Layer("chain words", 18, style="note")
_SIGN = Layer("chain sign", 25, style="note")
_HEAVY_SIGN = Layer("chain sign, fails", 50, style="note")

_FILLS: dict[Verdict, Fill] = {"passes": "tint", "fails": "tint", "depends": "tint", "indicated": "hatched"}


@dataclass(frozen=True, slots=True)
class Row:
    """One state of the line: its name (``as found``) and its chain in that state."""

    name: str
    chain: Chain


def stage_verdict(stage: Stage) -> Verdict:
    """The verdict of a stage: the worst of its links'."""
    return verdict_of(link.verdict for link in stage.links)


def stage_link(stage: Stage) -> Link | None:
    """The link that stands for a stage: one that bears out its verdict, and of those the most used."""
    word = stage_verdict(stage)
    bearing = [link for link in stage.links if link.verdict == word]
    return governing(bearing) or (bearing[0] if bearing else None)


def strip_figure(caption: str, rows: Sequence[Row], anchor: str = "") -> Figure:
    """The strip of one line (or foundation body), one band for each state."""
    titles = _columns(rows)
    drawing = Drawing(caption, tuple(_strip(rows, titles)))
    return Figure(drawing, caption, _alternative(rows), scale=FULL_SIZE, show_scale=False, anchor=anchor)


def _columns(rows: Sequence[Row]) -> dict[str, str]:
    """The stages that mean something in at least one state, in the order of the chain, with their titles."""
    found: dict[str, str] = {}
    for row in sorted(rows, key=lambda row: -len(row.chain.stages)):
        for stage in row.chain.stages:
            if stage_verdict(stage) != "does not apply":
                found.setdefault(stage.key, stage.title)
    order = {s.key: n for row in rows for n, s in enumerate(row.chain.stages)}
    return dict(sorted(found.items(), key=lambda pair: order[pair[0]]))


def _strip(rows: Sequence[Row], titles: dict[str, str]) -> Iterator[Mark]:
    wide = (WIDTH - SIDE) / max(len(titles), 1)
    head = yield from _heads(tuple(titles.values()), wide)
    top = -head
    for row in rows:
        yield from _row(row, tuple(titles), wide, top)
        top -= BAND + UNDER


def _heads(titles: Sequence[str], wide: float) -> Generator[Mark, None, float]:
    """The names of the stages, in two staggered ranks so that each has the width of two cells; gives their height."""
    places = [_head_place(n, len(titles), wide) for n in range(len(titles))]
    set_titles = [wrapped(title, room * 72, 7.5) for title, (_, room) in zip(titles, places, strict=True)]
    ranks = [max((len(t) for t in set_titles[n::2]), default=0) for n in (0, 1)]
    height = sum(ranks) * LINE + 0.16
    for n, (lines, (middle, _)) in enumerate(zip(set_titles, places, strict=True)):
        foot = -height + 0.07 + (ranks[1] * LINE + 0.03 if n % 2 == 0 else 0.0)
        for place, line in enumerate(reversed(lines)):
            yield Text((middle, foot + place * LINE), line, _WORDS, 7.5, anchor="middle")
        if n % 2 == 0:
            x = SIDE + (n + 0.5) * wide
            yield Line((x, foot - 0.03), (x, -height + 0.03), _FRAME)
    return height


def _head_place(n: int, count: int, wide: float) -> tuple[float, float]:
    """Where the name of a stage has its middle, and how much room: at the right edge half a cell less."""
    x, room = SIDE + (n + 0.5) * wide, 2 * wide - 0.07
    return (x - wide / 4, room - wide / 2) if n == count - 1 else (x, room)


def _row(row: Row, keys: tuple[str, ...], wide: float, top: float) -> Iterator[Mark]:
    """One band: the name at the left, the cells, the dotted lines of the full force."""
    stages = {stage.key: stage for stage in row.chain.stages}
    middle = top - BAND / 2
    lines = wrapped(row.name, (SIDE - 0.1) * 72, 8.0)
    for place, line in enumerate(lines):
        yield Text((0.0, middle + (len(lines) / 2 - place - 1) * 0.13), line, _WORDS, 8.0, heavy=True)
    for y in (top, top - BAND):
        yield Line((SIDE, y), (SIDE + wide * len(keys), y), _FRAME)
    for n, key in enumerate(keys):
        left = SIDE + n * wide
        stage = stages.get(key)
        link = stage_link(stage) if stage else None
        word: Verdict = stage_verdict(stage) if stage else "does not apply"
        yield from _cell(link, word, left, wide, middle, weakest=_is_weakest(row.chain, stage))
        yield from _under(link, word, left + wide / 2, wide, top - BAND)


def _is_weakest(chain: Chain, stage: Stage | None) -> bool:
    return stage is not None and any(link.address == chain.governing for link in stage.links)


def _cell(link: Link | None, word: Verdict, left: float, wide: float, middle: float, weakest: bool) -> Iterator[Mark]:
    """The band in one cell; the weakest place stands in a heavy frame."""
    right = left + wide
    if word == "does not apply" or link is None:
        yield Line((left, middle), (right, middle), _PLAIN)
    elif word == "cannot be checked":
        yield Polygon(_box(left, right, middle, BAND - 0.06), _OPEN)
    else:
        layer = _WEAK if weakest else _PLAIN
        best = _carried(link, link.ratio)
        if best:
            yield Polygon(_box(left, right, middle, BAND * best), layer, _FILLS.get(word, "none"))
            worst = _carried(link, link.least_favourable)
            if worst < best:
                for y in (middle + BAND * worst / 2, middle - BAND * worst / 2):
                    yield Line((left, y), (right, y), _LEAST)
        else:
            for x in (left + 0.04, right - 0.04):
                yield Line((x, middle - 0.12), (x, middle + 0.12), layer)


def _carried(link: Link, used: float | None) -> float:
    """How high the band stands: the part of the demand that is carried, at most all of it."""
    if used is None:
        return 1.0 if link.status == "passes" else 0.0
    return min(1.0, 1.0 / used) if used > 0 else 1.0


def _box(left: float, right: float, middle: float, height: float) -> tuple[Point, ...]:
    low, high = middle - height / 2, middle + height / 2
    return ((left, low), (right, low), (right, high), (left, high))


def _under(link: Link | None, word: Verdict, x: float, wide: float, top: float) -> Iterator[Mark]:
    """Ratio, shape and words of the verdict, under a cell."""
    y = top - 0.125
    text = DASH if link is None or link.ratio is None else ratio(link.ratio)
    reach = text_width(text, 8.0) / 72
    yield from _sign(word, (x - reach / 2 - 0.055, y + 0.037), 0.072)
    yield Text((x - reach / 2 + 0.035, y), text, _WORDS, 8.0, heavy=True)
    for place, line in enumerate(wrapped(word, (wide - 0.02) * 72, 6.5)):
        yield Text((x, y - 0.1 * (place + 1)), line, _WORDS, 6.5, anchor="middle")


def _sign(word: Verdict, at: Point, wide: float) -> Iterator[Mark]:
    """The shape of a verdict, as it stands beside the words everywhere else."""
    (x, y), r = at, wide / 2
    square = ((x - r, y - r), (x + r, y - r), (x + r, y + r), (x - r, y + r))
    match word:
        case "passes":
            yield Circle(at, r, _SIGN, "ink")
        case "fails":
            yield Line((x - r, y - r), (x + r, y + r), _HEAVY_SIGN)
            yield Line((x - r, y + r), (x + r, y - r), _HEAVY_SIGN)
        case "indicated":
            yield Polygon(square, _SIGN)
            yield Line((x - r, y), (x, y + r), _SIGN)
            yield Line((x - r, y - r), (x + r, y + r), _SIGN)
            yield Line((x, y - r), (x + r, y), _SIGN)
        case "cannot be checked":
            yield Polygon(square, _SIGN)
        case "depends":
            yield Circle(at, r, _SIGN)
            yield Polygon(
                ((x, y + r), (x - 0.7 * r, y + 0.7 * r), (x - r, y), (x - 0.7 * r, y - 0.7 * r), (x, y - r)),
                _SIGN,
                "ink",
            )
        case _:
            yield Line((x - r, y), (x + r, y), _SIGN)


def _alternative(rows: Sequence[Row]) -> str:
    """What the strip shows, in words: state by state, stage by stage."""
    told = []
    for row in rows:
        parts = []
        for stage in row.chain.stages:
            word, link = stage_verdict(stage), stage_link(stage)
            if word == "does not apply":
                continue
            number = "" if link is None or link.ratio is None else f", ratio {ratio(link.ratio)}"
            weakest = ", the weakest" if _is_weakest(row.chain, stage) else ""
            who = f" ({link.title})" if link is not None and len(stage.links) > 1 else ""
            parts.append(f"{stage.title}{who}: {word}{number}{weakest}")
        told.append(f"{row.name}: {'; '.join(parts) or 'no link applies'}.")
    return " ".join(told)
