"""A fact of the survey: what was measured, estimated, or could not be seen.

In the file a fact is a bare value when it was measured, or an object when there is more to say:
``{"value": 7, "low": 5, "high": 9, "state": "estimated", "how": "probe", "by": "RT", "when": "2026-04-02"}``.
``typed`` keeps what the person wrote, so that 2.3 m shows again as 2.3 m.
"""

from __future__ import annotations

from dataclasses import MISSING, dataclass, field
from typing import Any, Generic, Literal, TypeVar

__all__ = ["Fact", "FactState", "about", "measured", "unknown"]

T = TypeVar("T", float, str, bool)

FactState = Literal["measured", "estimated", "unknown", "absent"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact(Generic[T]):
    """One fact. ``low`` and ``high`` are the ends of what it may be; ``absent`` says: looked for, and not there."""

    value: T | None = None
    low: T | None = None
    high: T | None = None
    state: FactState = "measured"
    how: str = ""
    by: str = ""
    when: str = ""
    typed: str = ""

    @property
    def known(self) -> bool:
        """True when there is a value to work with."""
        return self.value is not None

    @property
    def uncertain(self) -> bool:
        """True when the value may lie elsewhere within a stated range."""
        return self.low is not None and self.high is not None and self.low != self.high


def measured(value: T) -> Fact[T]:
    """A plainly measured fact."""
    return Fact(value=value)


def unknown() -> Fact[Any]:
    """A fact nobody has been able to see yet."""
    return Fact(state="unknown")


def about(
    label: str,
    *,
    unit: str = "",
    help: str = "",
    measure: str = "",
    least: float | None = None,
    most: float | None = None,
    refers: str = "",
    choices: tuple[str, ...] = (),
    default: Any = MISSING,
    factory: Any = MISSING,
) -> Any:
    """A dataclass field with what a form, a check and a schema need to know of it.

    Args:
        label: the name a surveyor reads.
        unit: the unit inside the file.
        help: one sentence on what it is.
        measure: how it is measured under a floor.
        least: smallest value that can be right.
        most: largest value that can be right.
        refers: the collection this id points into (``corners``).
        choices: the words a text may be, where it is not free.
        default: the field's default.
        factory: the field's default factory.
    """
    facts = {
        "label": label,
        "unit": unit,
        "help": help,
        "measure": measure,
        "least": least,
        "most": most,
        "refers": refers,
        "choices": choices,
    }
    metadata = {key: value for key, value in facts.items() if value not in ("", None, ())}
    if factory is not MISSING:
        return field(default_factory=factory, metadata=metadata)
    if default is not MISSING:
        return field(default=default, metadata=metadata)
    return field(metadata=metadata)
