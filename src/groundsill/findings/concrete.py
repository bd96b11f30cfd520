"""Concrete by itself, one finding a stretch: does it crumble, is it hard, how strong is it, do its bars rust.

Looks deceive: rough concrete full of stones may be hard, and smooth concrete soft. So the probe, the hammer and the
core speak before the eye. The footing's own questions are those of every material.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from groundsill.findings.answer import Answer, at_least, at_most, every, holds, is_one_of
from groundsill.findings.asking import Asking, settles
from groundsill.findings.finding import Finding, Judgement, Reason
from groundsill.findings.footings import Footing
from groundsill.forces.reading import Reading
from groundsill.house.cores import evidence_of, rebound_of
from groundsill.house.fact import Fact
from groundsill.house.foundation import FoundationSegment, FoundationTest
from groundsill.standards.ibc_2021.concrete import table_1808_8_1

__all__ = ["concrete"]

_PATH: Final = "survey.foundation.segments"
_KINDS: Final = ("crumbling", "honeycomb", "undermining", "rust", "repair", "damp", "drainage")
_FACTS: Final = (
    "condition", "strength_psi", "reinforced", "footing_width_in", "footing_thickness_in", "depth_in",
)  # fmt: skip
_HARD_IN: Final = 0.25  # a screwdriver pushed by hand into hard concrete goes no deeper: our choice
_SKIN_IN: Final = 1.0  # a skin soft no deeper than this can be cut back and made good: our choice
_LEAST: Final = "dwelling of light framing, two stories or less, category D, E or F"


def concrete(reading: Reading) -> Iterator[Finding]:
    """The findings on every stretch of poured concrete."""
    for id, segment in reading.in_order(reading.house.survey.foundation.segments):
        if segment.material == "poured concrete":
            yield _Stretch(reading, id, segment).finding()


@dataclass(frozen=True, slots=True)
class _Stretch:
    """One stretch of concrete and the questions asked of it."""

    reading: Reading
    id: str
    segment: FoundationSegment

    @property
    def ask(self) -> Asking:
        """The book of concrete."""
        return Asking(self.reading, "concrete")

    @property
    def footing(self) -> Footing:
        """Its footing."""
        return Footing(self.reading, self.id, self.segment)

    def finding(self) -> Finding:
        """The three weighings, and what fits."""
        segment, footing = self.segment, self.footing
        whole = self.whole()
        gravity = self.ask.weighed(
            "gravity", (whole, *footing.hollow()), (*self.honeycomb(), *footing.sizes(), footing.pressing())
        )
        earthquake = self.ask.weighed("earthquake", (whole,), (self.hard(), self.strong()))
        durability = self.ask.weighed("durability", self.rusting(), (whole,))
        active = self.active()
        return Finding(
            address=f"finding/concrete/{self.id}",
            mark=segment.mark,
            title=self.title(whole.answer),
            place=self.ask.stretch(segment.line, segment.from_in, segment.to_in),
            line=segment.line,
            station_in=(segment.from_in + segment.to_in) / 2,
            observed=tuple(self.seen()),
            gravity=gravity,
            earthquake=earthquake,
            durability=durability,
            cause=tuple(self.cause(whole.answer)),
            active=active,
            confirm=settles(active, gravity, earthquake, durability),
            cures=self.ask.cures(*self.cures(gravity, earthquake, durability)),
            left_alone=self.ask.left_alone(self.alone(whole.answer)),
            marks=tuple(sorted(self.reading.marked(f"{_PATH}.{self.id}", *_FACTS))),
        )

    # ---- The questions ----

    def whole(self) -> Reason:
        """Whether it holds together: by its condition, and by what was noted on it."""
        crumbles = self.ask.noted(self.id, "crumbling")
        answer = "no" if crumbles else is_one_of(self.segment.condition, "sound", "weathered")
        return self.ask.asked("whole", answer)

    def honeycomb(self) -> tuple[Reason, ...]:
        """Stones without paste between them; asked only where they were noted."""
        seen = self.ask.noted(self.id, "honeycomb")
        return (self.ask.asked("honeycomb", "no", seen="; ".join(self.ask.in_words(seen))),) if seen else ()

    def soft(self) -> Fact[float]:
        """How deep it is soft, by the deepest probe."""
        found = [test.result for test in self.tests("probe") if test.unit == "in"]
        return Fact(value=max(found)) if found else Fact(state="unknown")

    def hard(self) -> Reason:
        """Whether a screwdriver stops at its face."""
        soft = self.soft()
        return self.ask.asked(
            "hard", at_most(soft, _HARD_IN), depth=self.ask.told(soft), limit=self.ask.shown(_HARD_IN)
        )  # fmt: skip

    def strong(self) -> Reason:
        """Whether it is as strong as new foundations are asked to be, which the tables of anchors take for granted."""
        strength, least = self.segment.strength_psi, table_1808_8_1().read(_LEAST)
        has = "unknown strength" if strength.value is None else _psi(strength)
        return self.ask.asked("strong", at_least(strength, least), has=has, least=f"{least:,.0f} psi")

    def rusting(self) -> tuple[Reason]:
        """Whether bars in it rust: by stains and bursts that were noted; no bars, no rust."""
        stained = self.ask.noted(self.id, "rust")
        if stained:
            return (self.ask.asked("rusting", "no", seen="; ".join(self.ask.in_words(stained))),)
        bare = holds(self.segment.reinforced) == "no"
        return (self.ask.asked("rusting", "yes" if bare else "cannot tell"),)

    def active(self) -> Reason:
        """Whether it goes on: water feeds it."""
        wet = self.ask.noted(self.id, "damp", "drainage", "undermining")
        if wet:
            return self.ask.asked("dry", "no", seen="; ".join(self.ask.in_words(wet)))
        return self.ask.asked("dry", "cannot tell")

    # ---- Cause, cures, and what happens if nothing is done ----

    def cause(self, whole: Answer) -> Iterator[Reason]:
        """What may have brought it about."""
        if whole == "no":
            yield self.ask.asked("poor", "cannot tell")
        if self.ask.noted(self.id, "honeycomb"):
            yield self.ask.asked("poured", "yes")

    def cures(self, gravity: Judgement, earthquake: Judgement, durability: Judgement) -> Iterator[str]:
        """The remedies that fit, the least that works first."""
        weights = {gravity.weight, earthquake.weight, durability.weight}
        if self.footing.hollow():
            yield from ("water", "underfill")
        if durability.weight == "matters":
            yield "bars"
        if self.whole().answer == "no":
            yield from ("inner", "local", "replace")
        elif "cannot tell" in weights or self.hard().answer == "cannot tell":
            yield "probe"
        if self.strong().answer != "yes":
            yield "pull"
        if self.whole().answer == "yes" and self.hard().answer == "no" and at_most(self.soft(), _SKIN_IN) == "yes":
            yield "skin"
        if gravity.weight in ("watch", "matters"):
            yield "levels"
        if weights <= {"does not matter", "watch"}:
            yield "leave"

    def alone(self, whole: Answer) -> str:
        """Which words tell what happens if nothing is done."""
        if self.footing.hollow():
            return "hollow"
        return {"yes": "sound", "no": "crumbling"}.get(whole, "open")

    # ---- Words ----

    def title(self, whole: Answer) -> str:
        """What it is, in a word or two."""
        if whole == "no":
            return "Crumbling concrete"
        if self.hard().answer == "no":
            return "Concrete with a soft face"
        return "Concrete" if every((whole, self.hard().answer)) == "yes" else "Concrete, not all of it looked at"

    def seen(self) -> Iterator[str]:
        """What the survey says of it, in words."""
        segment, survey = self.segment, self.reading.house.survey
        if segment.condition.known:
            yield str(segment.condition.value) + (f" ({segment.condition.how})" if segment.condition.how else "")
        soft, hammer, cores = self.soft(), rebound_of(survey, self.id), evidence_of(survey, self.id)
        if soft.known:
            yield f"a probe went in {self.ask.told(soft)}"
        if hammer is not None:
            yield f"rebound number {hammer:.0f}, which without cores tells only where concrete differs"
        if cores is not None:
            yield cores.words
        yield from self.ask.in_words(self.ask.noted(self.id, *_KINDS))

    def tests(self, kind: str) -> Iterator[FoundationTest]:
        """The tests of one kind made on it."""
        for _, test in self.reading.in_order(self.reading.house.survey.foundation.tests):
            if test.segment == self.id and test.kind == kind:
                yield test


def _psi(strength: Fact[float]) -> str:
    if strength.low is not None and strength.high is not None and strength.low != strength.high:
        return f"{strength.low:,.0f} to {strength.high:,.0f} psi"
    return f"{strength.value:,.0f} psi"
