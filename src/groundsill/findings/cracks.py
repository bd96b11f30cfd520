"""Cracks, cold joints and gaps in the foundation, one finding for each place that the survey names.

A crack is no bar to an earthquake retrofit where its sides are in line, no concrete is lost, it lies still, bolts are
kept off it and the sill runs across it in one piece or strapped; any of these unmet matters, any not known leaves the
finding open. For the weight of the house the question is whether one side sank, or still moves. For the life of the
structure it is whether water reaches bars.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from groundsill.findings.answer import Answer, at_most, every, holds, opposite
from groundsill.findings.asking import Asking, settles
from groundsill.findings.book import book
from groundsill.findings.finding import Cure, Finding, Judgement, Reason, Weight
from groundsill.findings.monitors import gauge_says
from groundsill.forces.reading import Reading, line_length_in
from groundsill.house.fact import Fact
from groundsill.house.foundation import FoundationBreak, FoundationSegment
from groundsill.house.record import Observation
from groundsill.loadpath.stem import CLEAR_OF_BREAK_IN
from groundsill.standards.aci224r_01.tables import table_4_1
from groundsill.standards.bre_251.tables import table_1

__all__ = ["cracks"]

_PATH: Final = "survey.foundation.breaks"
_TITLES: Final = {
    "crack": "Crack", "full-depth crack": "Crack through the whole stem", "cold joint": "Joint between two pours",
    "gap": "Gap",
}  # fmt: skip
_MM: Final = 25.4
_AT_END_IN: Final = 12.0  # a break no farther from the end of its line stands at a corner: our choice
_IN_LINE: Final = 1 / 16  # sides that differ by no more are in line, as near as a straightedge tells: our choice
_SAME_IN: Final = 12.0  # a crack noted no farther from a break is that break: our choice
_EVEN: Final = 1 / 32  # widths that differ by no more are one width: our choice
_SLIGHT: Final = "2 slight"
_DAMP: Final = "humidity, moist air, soil"
_STILL: Final = ("old paint or dirt in it", "filled and still closed")
_MOVES: Final = ("filled and open again",)


def cracks(reading: Reading) -> Iterator[Finding]:
    """The findings on every crack, cold joint and gap; steps of the foundation are no damage."""
    for id, cut in reading.in_order(reading.house.survey.foundation.breaks):
        if cut.kind != "step":
            yield _Crack(reading, id, cut).finding()


@dataclass(frozen=True, slots=True)
class _Crack:
    """One break of the foundation and the questions asked of it."""

    reading: Reading
    id: str
    cut: FoundationBreak

    @property
    def beside(self) -> tuple[FoundationSegment, ...]:
        """The stretches of foundation on either side of it."""
        segments = self.reading.on_line(self.reading.house.survey.foundation.segments, self.cut.line)
        return tuple(s for _, s in segments if s.from_in <= self.cut.station_in <= s.to_in)

    def finding(self) -> Finding:
        """The three weighings, what may have caused it, and what fits."""
        gravity, earthquake, durability = self.gravity(), self.earthquake(), self.durability()
        active = self.stillness()
        line = self.reading.house.survey.underfloor.lines[self.cut.line]
        path = f"{_PATH}.{self.id}"
        names = (
            "width_in", "bottom_width_in", "offset_in", "lateral_offset_in", "pattern", "section_lost", "signs",
            "moving",
        )  # fmt: skip
        return Finding(
            address=f"finding/crack/{self.id}",
            mark=self.cut.mark,
            title=_TITLES[self.cut.kind],
            place=f"line {line.mark or self.cut.line}, {self.ask.shown(self.cut.station_in)} from its start",
            line=self.cut.line,
            station_in=self.cut.station_in,
            observed=tuple(self.seen()),
            gravity=gravity,
            earthquake=earthquake,
            durability=durability,
            cause=tuple(self.cause()),
            active=active,
            confirm=settles(active, gravity, earthquake, durability),
            cures=tuple(self.cure(key) for key in self.cures(gravity.weight, earthquake.weight)),
            left_alone=self.ask.left_alone(self.left_alone()),
            marks=tuple(sorted(self.reading.marked(path, *names))),
        )

    @property
    def ask(self) -> Asking:
        """The book of the topic, and the house."""
        return Asking(self.reading, "cracks")

    def cure(self, key: str) -> Cure:
        """A remedy of the book."""
        found = book("cracks").cures[key]
        return replace(found, name=found.name.format(clear=self.ask.shown(CLEAR_OF_BREAK_IN)))

    def told(self, fact: Fact[float]) -> str:
        """A measured length in the units of the house, or that nobody measured it."""
        return "an unknown distance" if fact.value is None else self.ask.shown(fact.value)

    # ---- The questions ----

    def offset(self) -> Answer:
        """Whether its sides are in line, both ways."""
        return every((at_most(self.cut.offset_in, _IN_LINE), at_most(self.cut.lateral_offset_in, _IN_LINE)))

    def dormant(self) -> Answer:
        """Whether it lies still: as the survey knows, else by readings of a gauge, else by what its faces tell."""
        for told in (opposite(holds(self.cut.moving)), self.gauge()[0]):
            if told != "cannot tell":
                return told
        signs = self.cut.signs.value
        return "yes" if signs in _STILL else "no" if signs in _MOVES else "cannot tell"

    def why_dormant(self) -> str:
        """What tells whether it moves."""
        if self.cut.moving.value is not None:
            return self.cut.moving.how or "as recorded in the survey"
        answer, words = self.gauge()
        return words if answer != "cannot tell" else self.cut.signs.value or ""

    def stillness(self) -> Reason:
        """Whether it lies still, as a reason; a gauge that does not tell yet says when to read it again."""
        reason = self.ask.asked("dormant", self.dormant(), why=self.why_dormant())
        words = self.gauge()[1]
        return replace(reason, settle=words) if words and reason.answer == "cannot tell" else reason

    def gauge(self) -> tuple[Answer, str]:
        """What the gauges on it say."""
        return self.reading.once(("gauge", self.id), lambda: gauge_says(self.reading, self.id))

    def near(self) -> tuple[str, ...]:
        """Marks of bolts that stand too near, old ones and those of every alternative."""
        house = self.reading.house
        old = [b for _, b in self.reading.on_line(house.survey.underfloor.bolts, self.cut.line)]
        return tuple(b.mark or "a bolt" for b in old if abs(b.station_in - self.cut.station_in) < CLEAR_OF_BREAK_IN)

    def sill(self) -> Answer:
        """Whether one piece of sill lies across it; at the end of a line nobody has said how the corner is tied."""
        line = self.reading.house.survey.underfloor.lines[self.cut.line]
        if not _AT_END_IN < self.cut.station_in < line_length_in(self.reading.house, line) - _AT_END_IN:
            return "cannot tell"
        pieces = [s for _, s in self.reading.on_line(self.reading.house.survey.underfloor.sills, self.cut.line)]
        if not pieces:
            return "cannot tell"
        return "yes" if any(s.from_in < self.cut.station_in < s.to_in for s in pieces) else "no"

    def slight(self) -> Answer:
        """Whether it is no wider than damage of class 2."""
        return at_most(self.cut.width_in, table_1().read(_SLIGHT) / _MM)

    # ---- The three weighings ----

    def gravity(self) -> Judgement:
        """For the weight of the house: did one side sink, does it go on, is it wide."""
        width = self.told(self.cut.width_in)
        level = at_most(self.cut.offset_in, _IN_LINE)
        still, slight = self.dormant(), self.slight()
        reasons = (
            self.ask.asked("level", level, offset=self.told(self.cut.offset_in)),
            self.ask.asked("slight", slight, width=width, **_class_of(self.cut.width_in)),
            self.ask.asked("dormant", still, why=self.why_dormant()),
            self.ask.asked("section", self.whole()),
        )
        if "no" in (level, self.whole()) or still == "no":
            return Judgement("matters", "what stands over it has lost support, or is losing it", reasons)
        if slight == "no":
            return Judgement("watch", "wide enough that its cause should be known", reasons)
        if every(r.answer for r in reasons) == "yes":
            return Judgement("does not matter", "the house stands on both sides of it as before", reasons)
        return Judgement("cannot tell", "until the open questions are answered", reasons)

    def whole(self) -> Answer:
        """Whether no concrete is lost along it."""
        return opposite(holds(self.cut.section_lost))

    def earthquake(self) -> Judgement:
        """For an earthquake: every condition under which a crack is no bar to anchoring beside it."""
        near = self.near()
        sideways = max((self.cut.offset_in, self.cut.lateral_offset_in), key=lambda f: f.value or 0.0)
        count = f"{len(near)} bolt stands" if len(near) == 1 else f"{len(near)} bolts stand"
        clear = self.ask.shown(CLEAR_OF_BREAK_IN)
        reasons = (
            self.ask.asked("offset", self.offset(), offset=self.told(sideways)),
            self.ask.asked("section", self.whole()),
            self.stillness(),
            self.ask.asked("bolts", "no" if near else "yes", clear=clear, count=count, which=", ".join(near)),
            self.ask.asked("sill", self.sill()),
        )
        answer = every(r.answer for r in reasons)
        weight: Weight = {"yes": "does not matter", "no": "matters"}.get(answer, "cannot tell")  # type: ignore[assignment]
        says = {
            "yes": "no bar to bolting down the sill on either side of it",
            "no": "a bar to counting on the foundation across it as it is",
        }.get(answer, "until the open questions are answered")
        return Judgement(weight, says, reasons)

    def durability(self) -> Judgement:
        """For the life of the structure: does water reach bars."""
        bare = every(opposite(holds(s.reinforced)) for s in self.beside) if self.beside else "cannot tell"
        width, guide = self.told(self.cut.width_in), f"{table_4_1().read(_DAMP):g} in."
        narrow = at_most(self.cut.width_in, table_4_1().read(_DAMP))
        first = self.ask.asked("bars", bare, width=width, guide=guide)
        second = self.ask.asked("narrow", narrow, width=width, guide=guide)
        if bare == "yes":
            return Judgement("does not matter", "no bars that could rust", (first,))
        if narrow == "yes":
            return Judgement("does not matter", "too narrow for water to matter to bars", (second,))
        if bare == "no" and narrow == "no":
            return Judgement("watch", "bars behind it may rust", (first, second))
        return Judgement("cannot tell", "until the open questions are answered", (first, second))

    # ---- Cause, cures, and what happens if nothing is done ----

    def cause(self) -> Iterator[Reason]:
        """What may have brought it about, from how it runs and tapers."""
        if self.cut.kind == "cold joint":
            yield self.ask.asked("joint", "yes")
            return
        pattern, top, low = self.cut.pattern.value, self.cut.width_in.value, self.cut.bottom_width_in.value
        tapers = top is not None and low is not None and abs(top - low) > _EVEN
        if pattern == "horizontal":
            yield self.ask.asked("pushed", "yes")
        elif pattern in ("diagonal", "stepped") or tapers or at_most(self.cut.offset_in, _IN_LINE) == "no":
            how = (
                "it runs on a slant"
                if pattern in ("diagonal", "stepped")
                else "it tapers"
                if tapers
                else "it is stepped"
            )
            yield self.ask.asked("sunk", "yes", how=how)
        elif pattern == "vertical" and low is not None:
            yield self.ask.asked("shrinkage", "yes")
        else:
            yield self.ask.asked("shrinkage", "cannot tell")
            yield self.ask.asked("sunk", "cannot tell")

    def cures(self, gravity: Weight, earthquake: Weight) -> Iterator[str]:
        """The remedies that fit, the least that works first."""
        moving = self.dormant()
        if moving == "no":
            yield from ("water", "gauge", "engineer")
        elif moving == "cannot tell":
            yield "gauge"
        if self.near():
            yield "clear"
        if self.sill() == "no":
            yield "strap"
        if self.whole() == "no":
            yield "local"
        if moving == "yes" and self.offset() == "no":
            yield "bear"
        if {gravity, earthquake} <= {"does not matter", "watch"}:
            yield from ("leave", "fill") if self.cut.width_in.value else ("leave",)

    def left_alone(self) -> str:
        """Which words tell what happens if nothing is done."""
        still = self.dormant()
        if still == "no":
            return "moving"
        if self.sill() == "no":
            return "parted"
        return "still" if still == "yes" else "open"

    def seen(self) -> Iterator[str]:
        """What the survey says of it, in words."""
        cut = self.cut
        for label, fact in (
            ("width", cut.width_in), ("width at its lower end", cut.bottom_width_in),
            ("offset up and down", cut.offset_in), ("offset out of the face", cut.lateral_offset_in),
        ):  # fmt: skip
            if fact.known:
                yield f"{label} {self.told(fact)}" + (f" ({fact.how})" if fact.how else "")
        for told in (cut.pattern, cut.signs):
            if told.known:
                yield str(told.value) + (f" ({told.how})" if told.how else "")
        yield from self.ask.in_words(
            tuple(each for each in self.reading.house.survey.observations.values() if self.same(each))
        )

    def same(self, noted: Observation) -> bool:
        """Whether an observation is of this crack: made on it, or on the foundation beside it at its station."""
        segments = self.reading.house.survey.foundation.segments
        if noted.on not in segments or noted.kind != "crack" or noted.station_in is None:
            return noted.on == self.id
        near = abs(noted.station_in - self.cut.station_in) <= _SAME_IN
        return near and segments[noted.on].line == self.cut.line


def _class_of(width: Fact[float]) -> dict[str, str]:
    """The class of damage that a width belongs to, as figures for the words."""
    if width.value is None:
        return {"class": "", "name": ""}
    table = table_1()
    row = next((row for row in table.rows if width.value * _MM <= table.read(row)), "5 very severe")
    number, name = row.split(" ", 1)
    return {"class": number, "name": name}
