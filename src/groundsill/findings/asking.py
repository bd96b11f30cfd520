"""What every topic does alike: ask a question of its book, show a figure, weigh the answers, read the observations."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final, Literal

from groundsill.findings.answer import Answer
from groundsill.findings.book import book
from groundsill.findings.finding import Cure, Judgement, Reason, Weight, heaviest
from groundsill.forces.reading import Reading
from groundsill.house.fact import Fact
from groundsill.house.record import Observation
from groundsill.working.measure import show
from groundsill.working.measure_show import Kind

__all__ = ["Asking", "Concern", "settles"]

Concern = Literal["gravity", "earthquake", "durability"]

_OPEN: Final = "until the open questions are answered"


@dataclass(frozen=True, slots=True)
class Asking:
    """The book of one topic, and the house it is asked of."""

    reading: Reading
    topic: str

    # ---- Rules ----

    def asked(self, key: str, answer: Answer, **figures: str) -> Reason:
        """A question of the book with its answer."""
        return book(self.topic).questions[key].answered(answer, **figures)

    def cures(self, *keys: str) -> tuple[Cure, ...]:
        """Remedies of the book, in this order, each once."""
        return tuple(book(self.topic).cures[key] for key in dict.fromkeys(keys))

    def left_alone(self, key: str) -> str:
        """What happens if nothing is done."""
        return book(self.topic).left_alone[key]

    def weighed(self, concern: Concern, matters: Sequence[Reason] = (), watch: Sequence[Reason] = ()) -> Judgement:
        """The heaviest of what the answers come to: a no matters, or is to be watched; an open one cannot be told."""
        found: list[Weight] = ["does not matter"]
        found += [_weight_of(reason, "matters") for reason in matters]
        found += [_weight_of(reason, "watch") for reason in watch]
        weight = heaviest(*found)
        says = _OPEN if weight == "cannot tell" else book(self.topic).says[concern][weight]
        return Judgement(weight, says, (*matters, *watch))

    # ---- Figures and places ----

    def shown(self, value: float, kind: Kind = "length", unit: str = "in") -> str:
        """A figure in the units of the house."""
        return show(value, kind, unit, self.reading.house.units)

    def told(self, fact: Fact[float], nobody: str = "an unknown distance") -> str:
        """A measured length, its range where it has one, or that nobody measured it."""
        if fact.low is not None and fact.high is not None and fact.low != fact.high:
            return f"{self.shown(fact.low)} to {self.shown(fact.high)}"
        return nobody if fact.value is None else self.shown(fact.value)

    def stretch(self, line: str, from_in: float, to_in: float) -> str:
        """A stretch of a line in words."""
        return f"line {self.line_mark(line)}, {self.shown(from_in)} to {self.shown(to_in)} from its start"

    def line_mark(self, line: str) -> str:
        """The mark of a line, or its id where it has none."""
        found = self.reading.house.survey.underfloor.lines.get(line)
        return line if found is None else found.mark or line

    # ---- Observations ----

    def noted(self, on: str, *kinds: str) -> tuple[Observation, ...]:
        """What the surveyor noted of these kinds on one object."""
        every = self.reading.in_order(self.reading.house.survey.observations)
        return tuple(o for _, o in every if o.on == on and (not kinds or o.kind in kinds))

    def in_words(self, observations: Sequence[Observation]) -> Iterator[str]:
        """Observations in the surveyor's own words, each with its mark and its photographs."""
        for seen in observations:
            yield self.words_of(seen)

    def words_of(self, seen: Observation) -> str:
        """One observation in the surveyor's own words, with its size, its length, and its photographs."""
        photos = self.reading.house.survey.photos
        named = ", ".join(photos[id].mark or photos[id].file for id in seen.photos if id in photos)
        sizes = " along ".join(self.told(f) for f in (seen.size_in, seen.length_in) if f.known)
        text = ": ".join(part for part in (seen.mark, seen.words or seen.kind) if part)
        return text + (f" ({sizes})" if sizes else "") + (f" [photograph {named}]" if named else "")


def settles(active: Reason, *judged: Judgement) -> tuple[str, ...]:
    """What would settle the open questions of a finding, each once."""
    reasons = (*(reason for each in judged for reason in each.reasons), active)
    return tuple(dict.fromkeys(reason.settle for reason in reasons if reason.settle))


def _weight_of(reason: Reason, where_no: Weight) -> Weight:
    return {"yes": "does not matter", "no": where_no}.get(reason.answer, "cannot tell")
