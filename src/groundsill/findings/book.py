"""The rules as they are written down: questions with the words of each answer, causes, cures, each with its source.

``rules/<topic>.toml`` holds them. A question names what it asks and says the three answers; what cannot be told also
says what would settle it. No rule stands there without a source or the mark that there is none.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from typing import Any, Final, cast

from groundsill.findings.answer import Answer
from groundsill.findings.finding import Cure, KnownBy, Reason

__all__ = ["KNOWN", "TOPICS", "Book", "Question", "book"]

TOPICS: Final = (
    "cracks", "lean", "footings", "concrete", "masonry", "soil", "sills", "framing", "monitors", "levels", "noted",
    "unseen",
)  # fmt: skip
KNOWN: Final = ("seen", "from memory", "common practice, no source", "our choice")


@dataclass(frozen=True, slots=True)
class Question:
    """One question of a topic, with the words of each answer."""

    key: str
    asks: str
    yes: str
    no: str
    settle: str
    source: str
    known: KnownBy

    def answered(self, answer: Answer, **figures: str) -> Reason:
        """The reason that an answer makes; ``figures`` fill the places in its words."""
        text = {"yes": self.yes, "no": self.no}.get(answer, f"cannot tell: {self.asks}")
        settle = self.settle if answer == "cannot tell" else ""
        return Reason(self.key, answer, text.format_map(figures), self.source, self.known, settle)


@dataclass(frozen=True, slots=True)
class Book:
    """The rules of one topic.

    ``says`` are the words of each weighing, for each weight it may come to; ``words`` are others the code picks from.
    """

    topic: str
    questions: Mapping[str, Question]
    cures: Mapping[str, Cure]
    left_alone: Mapping[str, str]
    says: Mapping[str, Mapping[str, str]]
    words: Mapping[str, str]


@lru_cache(maxsize=len(TOPICS))
def book(topic: str) -> Book:
    """The rules of a topic, read once from the file.

    Raises:
        ValueError: for a rule without a source, or known by a way nobody has heard of.
    """
    told = tomllib.loads((files(__package__) / "rules" / f"{topic}.toml").read_text("utf-8"))
    questions = {key: Question(key, **_known(topic, key, each)) for key, each in told["question"].items()}
    cautions = tomllib.loads((files(__package__) / "rules" / "cautions.toml").read_text("utf-8"))
    cures = {
        key: Cure(key, **_known(topic, key, each | {"cautions": tuple(cautions[c] for c in each["cautions"])}))
        for key, each in told.get("cure", {}).items()
    }
    return Book(topic, questions, cures, told.get("left_alone", {}), told.get("says", {}), told.get("words", {}))


def _known(topic: str, key: str, told: Mapping[str, Any]) -> dict[str, Any]:
    known = told.get("known")
    if known not in KNOWN or (known == "seen" and not str(told.get("source", "")).startswith("http")):
        raise ValueError(f"rules/{topic}.toml: {key}: known by {known!r}, source {told.get('source')!r}")
    return cast(dict[str, Any], dict(told))
