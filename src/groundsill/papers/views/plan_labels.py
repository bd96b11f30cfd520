"""Keeping the words on a plan apart: a label takes the first of its places where no other word or sign stands."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace

from groundsill.papers.drawing import Anchor, Mark, Text, layer
from groundsill.papers.lowering import Box, box_of
from groundsill.papers.views.plan_frame import Frame

__all__ = ["SMALL", "Labels"]

SMALL = 6.5
"""Letter size of the labels on a plan, points."""

_SHIFTS = (0.0, 0.2, -0.2, 0.4, -0.4, 0.65, -0.65)


@dataclass(slots=True)
class Labels:
    """The places already taken on one plan. ``denominator`` is its scale's."""

    denominator: float
    taken: list[Box] = field(default_factory=list)

    def keep(self, mark: Mark) -> Mark:
        """A mark whose place no label may take."""
        self.taken.append(box_of((mark,), self.denominator))
        return mark

    def first(self, places: Iterable[Text]) -> Text:
        """The label in the first place that is free, or where it covers least."""
        (text,) = self.group((place,) for place in places)
        assert isinstance(text, Text)
        return text

    def group(self, places: Iterable[tuple[Mark, ...]]) -> tuple[Mark, ...]:
        """Several marks that stay together, in the first place that is free for all, or where they cover least."""
        best: tuple[float, tuple[Mark, ...], Box] | None = None
        for marks in places:
            box = box_of(marks, self.denominator)
            covered = sum(_common(box, other) for other in self.taken)
            if best is None or covered < best[0]:
                best = (covered, marks, box)
            if covered == 0:
                break
        assert best is not None
        self.taken.append(best[2])
        return best[1]

    def along(
        self,
        frame: Frame,
        station: float,
        text: str,
        offs: Sequence[float],
        address: str,
        said: str,
        heavy: bool = False,
        reach: float | None = None,
    ) -> Text:
        """A label along its line, at one of several distances out (inches of paper), moved along if need be.

        It is moved no further than ``reach`` (model inches), so that it stays beside the thing it names.
        """

        def places() -> Iterator[Text]:
            base = Text(
                (0.0, 0.0),
                text,
                layer("text"),
                SMALL,
                anchor="middle",
                baseline="middle",
                rotation=frame.turn,
                heavy=heavy,
                address=address,
                label=said,
            )
            most = _SHIFTS[-1] if reach is None else abs(reach) / frame.paper
            for shift in (shift for shift in _SHIFTS if abs(shift) <= abs(most)):
                for off in offs:
                    yield replace(base, at=frame.at(station + shift * frame.paper, paper=off))

        return self.first(places())

    def across(self, frame: Frame, station: float, text: str, offs: Sequence[float], address: str) -> Text:
        """A label square to its line, so that signs close to each other keep their own."""
        turn = 90.0 if abs(frame.turn) < 45.0 else 0.0

        def places() -> Iterator[Text]:
            for off in offs:
                way = (frame.out[1] if turn else frame.out[0]) * (1.0 if off > 0 else -1.0)
                anchor: Anchor = "start" if way > 0 else "end"
                at = frame.at(station, paper=off)
                yield Text(
                    at,
                    text,
                    layer("text"),
                    SMALL,
                    anchor=anchor,
                    baseline="middle",
                    rotation=turn,
                    heavy=True,
                    address=address,
                )

        return self.first(places())


def _common(a: Box, b: Box) -> float:
    """The area two boxes share."""
    wide = min(a[2], b[2]) - max(a[0], b[0])
    high = min(a[3], b[3]) - max(a[1], b[1])
    return wide * high if wide > 0 and high > 0 else 0.0
