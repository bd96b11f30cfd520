"""A condition that a document sets for one of its rules, answered: met, not met, or not known."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

__all__ = ["Condition", "all_met", "told"]


@dataclass(frozen=True, slots=True)
class Condition:
    """One condition of a rule: met, not met, or None for not known (``remark`` says why)."""

    text: str
    met: bool | None
    remark: str = ""


def all_met(conditions: Iterable[Condition]) -> bool | None:
    """True when every condition is met, False when one is not, None when none fails but one is not known."""
    answers = {c.met for c in conditions}
    return False if False in answers else None if None in answers else True


def told(conditions: Sequence[Condition], unknown: str = "not known") -> str:
    """All conditions in words, grouped by their answer; nothing where there are none."""
    groups = (("met", True), ("not met", False), (unknown, None))
    found = ((word, [c.text for c in conditions if c.met is answer]) for word, answer in groups)
    return "; ".join(f"{word}: {', '.join(texts)}" for word, texts in found if texts)
