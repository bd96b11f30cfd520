"""What a finding is: where, what was seen, how much it matters three times apart, why, and what may be done."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from groundsill.findings.answer import Answer
from groundsill.findings.shape import Shape
from groundsill.findings.trend import Trend
from groundsill.working.value import Mark

__all__ = ["WEIGHTS", "Cure", "Finding", "Judgement", "KnownBy", "Reason", "Weight", "heaviest"]

Weight = Literal["matters", "watch", "cannot tell", "does not matter"]
KnownBy = Literal["seen", "from memory", "common practice, no source", "our choice"]

WEIGHTS: tuple[Weight, ...] = ("matters", "watch", "cannot tell", "does not matter")
"""Heaviest first: what nobody can tell comes before what does not matter."""


@dataclass(frozen=True, slots=True)
class Reason:
    """One question that a weighing stands on: the answer in words, where the rule comes from, and how it is known.

    ``settle`` says what would settle it, where it cannot be told.
    """

    key: str
    answer: Answer
    text: str
    source: str
    known: KnownBy
    settle: str = ""


@dataclass(frozen=True, slots=True)
class Judgement:
    """How much a thing matters for one of the three: the weight of the house, an earthquake, the structure's life."""

    weight: Weight
    says: str
    reasons: tuple[Reason, ...]


@dataclass(frozen=True, slots=True)
class Cure:
    """One remedy that works here, and what to mind when it is done; ``source`` and ``known`` as for a reason."""

    key: str
    name: str
    what: str
    cautions: tuple[str, ...]
    source: str
    known: KnownBy


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that was seen, weighed.

    ``address`` is ``finding/<topic>/<id>``; ``place`` is the line or stretch in words; ``line`` and ``station_in`` say
    where it stands on the plan (None for a whole stretch). ``cause`` is what may have brought it about, likeliest
    first; ``cures`` begin with the least that works; ``fits`` are the conditions of a remedy that has some, met or not;
    ``worked`` are the lines of what was worked out; ``left_alone`` is what happens if nothing is done. ``trend`` is
    what readings over time say and ``shape`` what spot levels say, where the finding stands on such.
    """

    address: str
    mark: str
    title: str
    place: str
    line: str
    station_in: float | None
    observed: tuple[str, ...]
    gravity: Judgement
    earthquake: Judgement
    durability: Judgement
    cause: tuple[Reason, ...]
    active: Reason
    confirm: tuple[str, ...]
    cures: tuple[Cure, ...]
    left_alone: str
    marks: tuple[Mark, ...]
    fits: tuple[Reason, ...] = ()
    worked: tuple[str, ...] = ()
    trend: Trend | None = None
    shape: Shape | None = None

    @property
    def weight(self) -> Weight:
        """The heaviest of the three."""
        return heaviest(self.gravity.weight, self.earthquake.weight, self.durability.weight)

    @property
    def sure(self) -> bool:
        """Whether none of its questions is left open."""
        asked = (*self.gravity.reasons, *self.earthquake.reasons, *self.durability.reasons)
        return all(reason.answer != "cannot tell" for reason in asked)


def heaviest(*weights: Weight) -> Weight:
    """The heaviest of several."""
    return min(weights, key=WEIGHTS.index)
