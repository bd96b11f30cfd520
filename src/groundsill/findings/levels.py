"""The level survey, one finding for each floor that was measured: tilt as one piece, and bending.

One survey tells the shape and not since when it has it: an old floor was rarely laid level. So nothing here is called
movement, and the limits, which come from buildings that were level once, are told as what they are.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from groundsill.findings.answer import every
from groundsill.findings.asking import Asking, settles
from groundsill.findings.book import book
from groundsill.findings.finding import Finding, Judgement, Reason, Weight
from groundsill.findings.shape import Measured, Shape, Spot, against, shape_of
from groundsill.forces.reading import Reading
from groundsill.standards.common_practice import table_monitors
from groundsill.standards.distortion_limits.tables import table_angular, table_deflection, table_tilt, table_wood

__all__ = ["levels", "one_in"]

_SKEMPTON: Final = "Skempton and MacDonald 1956"
_MASONRY: Final = ("brick", "stone", "block")
_OF_MASONRY: Final = {"sags": "masonry_sags", "hogs": "masonry_hogs"}
_LONG: Final = 5.0  # a foundation wall is at least five times as long as high: the column it is read at


def levels(reading: Reading) -> Iterator[Finding]:
    """The findings on the level survey; none where no spot was measured."""
    floors: dict[str, list[Spot]] = {}
    for id, level in reading.in_order(reading.house.survey.levels):
        spot = Spot(level.mark or id, level.at.x_in, level.at.y_in, level.height_in)
        floors.setdefault(level.floor, []).append(spot)
    for floor, spots in floors.items():
        yield _Floor(
            reading, floor, spots, shape_of(floor, spots, table_monitors().read("level", "division"))
        ).finding()


def one_in(ratio: float) -> str:
    """A small ratio as it is said: 1/250; nothing to speak of below one in ten thousand."""
    return f"1/{round(1 / ratio):,}" if ratio >= 1e-4 else "less than 1/10,000"


@dataclass(frozen=True, slots=True)
class _Floor:
    """The spots of one floor and the questions asked of them."""

    reading: Reading
    floor: str
    spots: list[Spot]
    shape: Shape | None

    def finding(self) -> Finding:
        """The three weighings, what may have caused it, and what fits."""
        gravity, earthquake, durability = self.gravity(), self.earthquake(), self.durability()
        active = self.ask.asked("since", "cannot tell")
        weight = {"matters": "bent", "watch": "bent", "does not matter": "even"}.get(gravity.weight, "open")
        cures = {"bent": ("marks", "water", "posts", "engineer"), "even": ("leave",)}.get(weight, ("marks",))
        return Finding(
            address=f"finding/levels/{self.floor or 'house'}",
            mark="",
            title="Level survey",
            place="the whole floor" if not self.floor else self.floor,
            line="",
            station_in=None,
            observed=tuple(self.seen()),
            gravity=gravity,
            earthquake=earthquake,
            durability=durability,
            cause=(),
            active=active,
            confirm=settles(active, gravity, earthquake, durability),
            cures=self.ask.cures(*cures),
            left_alone=self.ask.left_alone(weight),
            marks=(),
            shape=self.shape,
        )

    @property
    def ask(self) -> Asking:
        """The book of the topic, and the house."""
        return Asking(self.reading, "levels")

    # ---- The questions ----

    def ratio(self, key: str, measured: Sequence[Measured], limit: float) -> Reason:
        """One of the questions on measured ratios against a limit."""
        answer, one = against(measured, limit)
        if one is None:
            return self.ask.asked(
                key, answer, ratio="not measured", limit=one_in(limit), where="any three spots in a line"
            )
        where = " and ".join((", ".join(one.spots[:-1]), one.spots[-1])) if one.spots else "the floor"
        return self.ask.asked(key, answer, ratio=one_in(one.ratio), limit=one_in(limit), where=where)

    def enough(self) -> Reason:
        """Whether the spots tell a shape at all."""
        return self.ask.asked("enough", "cannot tell" if self.shape is None else "yes", count=str(len(self.spots)))

    def structure(self, shape: Shape) -> Reason:
        """Whether it bends so sharply that structures were hurt."""
        return self.ratio("structure", shape.distortion, table_angular().read(_SKEMPTON, "structure"))

    def masonry(self) -> bool:
        """Whether any of the foundation is brick, stone or block."""
        return any(s.material in _MASONRY for s in self.reading.house.survey.foundation.segments.values())

    def gentle(self, shape: Shape) -> tuple[Reason, ...]:
        """The questions whose limits tell of cracks and of notice, not of harm to the structure."""
        asked = [
            self.ratio("tilted", (shape.tilt,), table_tilt().read("mended")),
            self.ratio("noticed", (shape.tilt,), table_tilt().read("looked into")),
            self.ratio("walls", shape.distortion, table_angular().read(_SKEMPTON, "walls crack")),
        ]
        wood = table_wood().read("wood floor")
        asked += [self.ratio(key, bend, wood) for key, bend in self.bends(shape)]
        if self.masonry():
            masonry = table_deflection()
            asked += [self.ratio(_OF_MASONRY[k], bend, masonry.read(k, _LONG)) for k, bend in self.bends(shape)]
        return tuple(asked)

    @staticmethod
    def bends(shape: Shape) -> Iterator[tuple[str, Sequence[Measured]]]:
        """Sagging and hogging; where the lines of spots bend one way only, only that is asked."""
        if shape.sags or not shape.hogs:
            yield "sags", shape.sags
        if shape.hogs:
            yield "hogs", shape.hogs

    # ---- The three weighings ----

    def gravity(self) -> Judgement:
        """For the weight of the house: does it bend, is it tilted."""
        says = book("levels").words
        if self.shape is None:
            return Judgement("cannot tell", says["open"], (self.enough(),))
        hard = self.structure(self.shape)
        reasons = (hard, *self.gentle(self.shape))
        if hard.answer == "no":
            return Judgement("matters", says["bent"], reasons)
        if any(r.answer == "no" for r in reasons):
            return Judgement("watch", says["uneven"], reasons)
        if every(r.answer for r in reasons) == "yes":
            return Judgement("does not matter", says["even"], reasons)
        return Judgement("cannot tell", says["open"], reasons)

    def earthquake(self) -> Judgement:
        """For an earthquake: only a sharp bend, over which a sill may lie hollow, takes anything from the ties."""
        return self.sharp("hollow", "bears")

    def durability(self) -> Judgement:
        """For the life of the structure: levels alone take nothing from it, a sharp bend has a cause that may."""
        return self.sharp("cause", "lasts")

    def sharp(self, bent: str, even: str) -> Judgement:
        """A weighing that stands on the sharp bend alone."""
        says = book("levels").words
        if self.shape is None:
            return Judgement("cannot tell", says["open"], (self.enough(),))
        hard = self.structure(self.shape)
        weight: Weight = {"yes": "does not matter", "no": "watch"}.get(hard.answer, "cannot tell")  # type: ignore[assignment]
        return Judgement(weight, says[{"yes": even, "no": bent}.get(hard.answer, "open")], (hard,))

    # ---- Words ----

    def seen(self) -> Iterator[str]:
        """What was measured, in words."""
        yield f"{len(self.spots)} spots"
        shape = self.shape
        if shape is None:
            return
        high, low = shape.highest, shape.lowest
        yield f"highest {high.mark} ({self.ask.shown(high.z_in)}), lowest {low.mark} ({self.ask.shown(low.z_in)})"
        yield f"as one piece it falls {one_in(shape.tilt.ratio)} toward {shape.falls_to.mark}"
        rest = max(shape.rest_in, key=abs)
        spot = shape.spots[shape.rest_in.index(rest)]
        side = "over" if rest > 0 else "under"
        yield f"the most bent place, {spot.mark}, stands {self.ask.shown(abs(rest))} {side} that plane"
