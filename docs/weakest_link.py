"""Draws how the weakest link of four lines moves with the strength of the concrete, the edge distance and the bolt.

``python docs/weakest_link.py`` works out one line of each sample with its design, over each of the three, writes the
picture ``pictures/weakest-link.svg`` and prints the figures. It is run by hand when an answer of a sample has changed;
a test holds what the page says to what comes out, not the picture to its last digit.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Literal

HERE = Path(__file__).resolve().parent
if __name__ == "__main__":
    sys.path.insert(0, str(HERE.parent))

from groundsill.doors.files import read_house  # noqa: E402
from groundsill.house.fact import measured  # noqa: E402
from groundsill.house.settle import prepare  # noqa: E402
from groundsill.loadpath.chain import Chain, Link, governing  # noqa: E402
from groundsill.papers.drawing import Circle, Drawing, Fill, Layer, Line, Mark, Polygon, Polyline, Text  # noqa: E402
from groundsill.papers.placing import leaf_of_drawing  # noqa: E402
from groundsill.papers.sheet import FULL_SIZE  # noqa: E402
from groundsill.papers.writers.svg import paper_svg  # noqa: E402
from groundsill.study.states import go, states_of  # noqa: E402
from groundsill.work.document import House  # noqa: E402
from groundsill.work.pieces import BoltPiece  # noqa: E402

__all__ = ["LINES", "PICTURE", "SWEEPS", "Moved", "Place", "moved", "picture"]

PICTURE = HERE / "pictures" / "weakest-link.svg"
Place = Literal["wood", "concrete", "rest"]

LINES = {"larch-street": "L1", "quarry-lane": "L9", "ferry-hill": "L8", "heron-walk": "L1"}
"""One line of each sample that its design bolts to poured concrete."""

_WOOD, _CONCRETE, _AXES = "sill-bolts", "bolts-concrete", ("strength", "edge", "bolt")
_PLAIN_HEIGHT_IN = 18.0  # a stem of unknown height is drawn as high as this


@dataclass(frozen=True, slots=True)
class Moved:
    """A line with one thing moved to ``at``: the highest ratio of its sill bolts in wood, of its bolts in concrete, and
    of all its other links that have a figure; and, of wood and concrete, which is expected to give first.

    ``first`` is ``too close`` where the two ranges overlap, ``not known`` where no expected strength is held for what
    governs in the concrete; ``way`` is that way of failing.
    """

    at: float
    wood: float
    concrete: float
    rest: float
    first: str
    way: str

    @property
    def weaker(self) -> Place:
        """Which of the bolts' two links has the higher ratio."""
        return "concrete" if self.concrete > self.wood else "wood"

    @property
    def weakest(self) -> Place:
        """Which of the three has the highest ratio."""
        return "rest" if self.rest >= max(self.wood, self.concrete) else self.weaker


@dataclass(frozen=True, slots=True)
class Sweep:
    """One thing that moves: its title and unit on paper, the values it takes, and how a house is changed for one."""

    title: str
    values: tuple[float, ...]
    ticks: tuple[tuple[float, str], ...]
    change: Callable[[House, str, float], House]


def moved(sample: str, axis: str, values: tuple[float, ...] = (), wood_yields_first: bool = False) -> tuple[Moved, ...]:
    """One sample's line over ``strength``, ``edge`` or ``bolt``: at these values, or at all that the picture has.

    With ``wood_yields_first`` the concrete is checked for the force at which the wood yields, not for overstrength.
    """
    house = read_house(HERE.parent / "samples" / sample / "house.json")
    if wood_yields_first:
        choices = replace(house.choices, anchor_basis="wood yields first", anchor_reason="to see what it changes")
        house = replace(house, choices=choices)
    line = next(id for id, each in house.survey.underfloor.lines.items() if each.mark == LINES[sample])
    sweep = SWEEPS[axis]
    return tuple(_at(sweep.change(house, line, value), line, value) for value in values or sweep.values)


def _at(house: House, line: str, value: float) -> Moved:
    """The line of the house with its first design, at the best value of every fact."""
    settled = prepare(house).best
    state = states_of(house)[1]
    _, (chains,) = go(settled.house, settled.marks, [state])
    chain = next(c for c in chains.lines if c.id == line)
    wood, concrete = _worst(chain, _WOOD), _worst(chain, _CONCRETE)
    others = governing(link for link in _other(chain) if link.ratio is not None)
    rest = 0.0 if others is None else others.ratio or 0.0
    way = concrete.reason.split(";")[0]
    return Moved(value, wood.ratio or 0.0, concrete.ratio or 0.0, rest, _first(wood, concrete), way)


def _worst(chain: Chain, stage: str) -> Link:
    found = governing(link for s in chain.stages if s.key == stage for link in s.links if link.ratio is not None)
    if found is None:
        raise ValueError(f"line {chain.mark} has no figure for its {stage}")
    return found


def _other(chain: Chain) -> Iterator[Link]:
    return (link for stage in chain.stages if stage.key not in (_WOOD, _CONCRETE) for link in stage.links)


def _first(wood: Link, concrete: Link) -> str:
    if wood.expected is None or concrete.expected is None:
        return "not known"
    if wood.expected.high_lb < concrete.expected.low_lb:
        return "wood"
    return "concrete" if concrete.expected.high_lb < wood.expected.low_lb else "too close"


# ---- What is moved --------------------------------------------------------------------------------------------------


def _strength(house: House, line: str, psi: float) -> House:
    """The concrete under the line of one strength, as if a core had given it."""
    return _stem(house, line, strength_psi=measured(psi))


def _edge(house: House, line: str, inches: float) -> House:
    """The bolts at one distance from the nearer face, in a stem at least twice as wide."""
    segments = house.survey.foundation.segments.values()
    wide = max(s.top_width_in.value or 0.0 for s in segments if s.line == line)
    return _bolts(_stem(house, line, top_width_in=measured(max(wide, 2 * inches))), line, edge_in=inches)


def _size(house: House, line: str, inches: float) -> House:
    return _bolts(house, line, diameter_in=inches)


def _stem(house: House, line: str, **facts: object) -> House:
    base = house.survey.foundation
    segments = {id: replace(s, **facts) if s.line == line else s for id, s in base.segments.items()}
    return replace(house, survey=replace(house.survey, foundation=replace(base, segments=segments)))


def _bolts(house: House, line: str, **facts: object) -> House:
    key, design = min(house.alternatives.items(), key=lambda each: each[1].order)
    pieces = {
        id: replace(p, **facts) if isinstance(p, BoltPiece) and p.line == line else p for id, p in design.pieces.items()
    }
    return replace(house, alternatives={**house.alternatives, key: replace(design, pieces=pieces)})


SWEEPS = {
    "strength": Sweep(
        "concrete, psi", tuple(250.0 * n for n in range(4, 21)),
        tuple((p, f"{p:,}") for p in range(1000, 5001, 1000)), _strength,
    ),
    "edge": Sweep(
        "bolt to the face, in.", tuple(n / 4 for n in range(6, 33)), tuple((n, str(n)) for n in range(2, 9)), _edge
    ),
    "bolt": Sweep(
        "bolt, in.", (0.5, 0.625, 0.75, 0.875, 1.0),
        ((0.5, "1/2"), (0.625, "5/8"), (0.75, "3/4"), (0.875, "7/8"), (1.0, "1")), _size,
    ),
}  # fmt: skip


# ---- The picture ----------------------------------------------------------------------------------------------------

_WIDE, _HIGH, _APART, _UNDER = 1.95, 1.25, 0.42, 0.68
_MOST = 2.0  # ratios above this are told, not drawn
_BAND = 0.09
_FRAME = Layer("frame", 18, style="note", ink=0.6)
_GRID = Layer("grid", 13, "dotted", style="note", ink=0.5)
_LIMIT = Layer("limit", 25, style="note")
_WORDS = Layer("words", 18, style="note")
_CURVES = {
    "wood": Layer("wood", 50),
    "concrete": Layer("concrete", 70, "dashed"),
    "rest": Layer("rest", 35, "dotted"),
}
_NAMES = {"wood": "bolts in wood", "concrete": "bolts in the concrete", "rest": "worst of the line's other links"}
_SIGN = Layer("sign", 25)
_FILLS: dict[str, Fill] = {"concrete": "ink", "wood": "paper", "too close": "hatched", "not known": "crossed"}


def picture() -> Drawing:
    """All lines over all three, one row a sample, on a white ground."""
    marks = list(_rows())
    wide, high = 3 * (_WIDE + _APART) + 0.5, len(LINES) * (_HIGH + _UNDER) + 1.1
    left, top = -0.95, 0.45
    ground = ((left, top), (left + wide + 0.5, top), (left + wide + 0.5, top - high), (left, top - high))
    return Drawing("The weakest link", (Polygon(ground, Layer("ground", 13, style="note", ink=0.0), "paper"), *marks))


def _rows() -> Iterator[Mark]:
    for n, axis in enumerate(_AXES):
        x = n * (_WIDE + _APART)
        yield Text((x + _WIDE / 2, 0.2), SWEEPS[axis].title, _WORDS, 9.0, anchor="middle", heavy=True)
    for row, (sample, line) in enumerate(LINES.items()):
        foot = -row * (_HIGH + _UNDER) - _HIGH
        for place, words in enumerate((sample, f"line {line}")):
            yield Text((-0.85, foot + _HIGH / 2 - place * 0.14), words, _WORDS, 7.5, heavy=place == 0)
        for n, axis in enumerate(_AXES):
            yield from _panel(n * (_WIDE + _APART), foot, SWEEPS[axis], moved(sample, axis))
    yield from _legend(-len(LINES) * (_HIGH + _UNDER) + 0.1)


def _panel(left: float, foot: float, sweep: Sweep, found: tuple[Moved, ...]) -> Iterator[Mark]:
    """One line over one thing: three curves, their limit at 1, and the band that says which of the bolts' two governs.

    Symbols on the curve of the concrete say how it fails.
    """
    low, high = sweep.values[0], sweep.values[-1]

    def across(value: float) -> float:
        return left + (value - low) / (high - low) * _WIDE

    def up(ratio: float) -> float:
        return foot + min(ratio, _MOST) / _MOST * _HIGH

    yield Polygon(((left, foot), (left + _WIDE, foot), (left + _WIDE, foot + _HIGH), (left, foot + _HIGH)), _FRAME)
    for ratio in (0.5, 1.0, 1.5):
        yield Line((left, up(ratio)), (left + _WIDE, up(ratio)), _LIMIT if ratio == 1.0 else _GRID)
    for ratio in (0.0, 0.5, 1.0, 1.5, 2.0):
        yield Text((left - 0.05, up(ratio)), f"{ratio:g}", _WORDS, 6.5, anchor="end", baseline="middle")
    for value, words in sweep.ticks:
        yield Line((across(value), foot), (across(value), foot + 0.04), _FRAME)
        yield Text((across(value), foot - 2 * _BAND - 0.05), words, _WORDS, 6.5, anchor="middle", baseline="top")
    for name, layer in _CURVES.items():
        drawn = _within([(m.at, getattr(m, name)) for m in found])
        if len(drawn) > 1:
            yield Polyline(tuple((across(value), up(ratio)) for value, ratio in drawn), layer)
        else:
            told = f"other links {getattr(found[-1], name):.1f}, above the frame"
            yield Text((left + _WIDE - 0.05, foot + _HIGH - 0.05), told, _WORDS, 6.5, anchor="end", baseline="top")
    for before, m in zip((None, *found), found, strict=False):
        if m.concrete <= _MOST and (before is None or before.concrete > _MOST or before.way != m.way):
            yield from _sign(across(m.at), up(m.concrete), m.way)
    yield from _bands(left, foot, across, found)


def _within(curve: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """What of a falling curve lies inside the frame, from where it comes in."""
    inside = [point for point in curve if point[1] <= _MOST]
    above = [point for point in curve if point[1] > _MOST]
    if not inside or not above:
        return inside
    (x1, y1), (x2, y2) = above[-1], inside[0]
    return [(x1 + (x2 - x1) * (y1 - _MOST) / (y1 - y2), _MOST), *inside]


def _bands(left: float, foot: float, across: Callable[[float], float], found: tuple[Moved, ...]) -> Iterator[Mark]:
    """Under the frame: which of wood and concrete has the higher ratio, and which is expected to give first.

    A band changes halfway between two values.
    """
    for n, words in enumerate((tuple(m.weaker for m in found), tuple(m.first for m in found))):
        top, start = foot - n * _BAND, left
        for place, word in enumerate(words):
            if place + 1 < len(words) and words[place + 1] == word:
                continue
            end = left + _WIDE
            if place + 1 < len(words):
                end = across((found[place].at + found[place + 1].at) / 2)
            yield Polygon(((start, top), (end, top), (end, top - _BAND), (start, top - _BAND)), _FRAME, _FILLS[word])
            start = end


def _sign(x: float, y: float, way: str) -> Iterator[Mark]:
    """A filled dot for breakout beside the bolt, a ring toward an end, a square for pryout, a cross for steel."""
    r = 0.035
    if way.startswith("breakout"):
        yield Circle((x, y), r, _SIGN, "paper" if "end" in way else "ink")
    elif way.startswith("pryout"):
        yield Polygon(((x - r, y - r), (x + r, y - r), (x + r, y + r), (x - r, y + r)), _SIGN, "paper")
    else:
        yield Line((x - r, y - r), (x + r, y + r), _SIGN)
        yield Line((x - r, y + r), (x + r, y - r), _SIGN)


def _legend(top: float) -> Iterator[Mark]:
    for n, (name, layer) in enumerate(_CURVES.items()):
        x = n * 2.4
        yield Line((x, top), (x + 0.4, top), layer)
        yield Text((x + 0.47, top), _NAMES[name], _WORDS, 7.5, baseline="middle")
    ways = ("breakout beside the bolt", "breakout toward the end", "pryout", "steel")
    for n, way in enumerate(ways):
        x = n * 1.8
        yield from _sign(x + 0.05, top - 0.2, way)
        yield Text((x + 0.14, top - 0.2), f"{way} from here", _WORDS, 7.5, baseline="middle")
    yield Text((0.0, top - 0.42), "under each frame, of the bolts' two links:", _WORDS, 7.5, baseline="middle")
    yield Text((2.4, top - 0.42), "above, which has the higher ratio;", _WORDS, 7.5, baseline="middle")
    yield Text((4.3, top - 0.42), "below, which is expected to give first", _WORDS, 7.5, baseline="middle")
    for n, (word, fill) in enumerate(_FILLS.items()):
        x, y = n * 1.8, top - 0.62
        yield Polygon(((x, y - 0.05), (x + 0.3, y - 0.05), (x + 0.3, y + 0.05), (x, y + 0.05)), _FRAME, fill)
        yield Text((x + 0.37, y), word, _WORDS, 7.5, baseline="middle")


def main() -> None:
    """Write the picture, and print what it shows."""
    drawing = picture()
    PICTURE.parent.mkdir(exist_ok=True)
    PICTURE.write_text(paper_svg(leaf_of_drawing(drawing, FULL_SIZE)) + "\n", encoding="utf-8")
    print(f"{PICTURE.name}: {PICTURE.stat().st_size / 1000:.0f} kB")


if __name__ == "__main__":
    main()
