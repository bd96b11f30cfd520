"""A fact of the survey: what was measured, estimated, or could not be seen.

In the file a fact is a bare value when it was measured, or an object when there is more to say:
``{"value": 7, "low": 5, "high": 9, "state": "estimated", "how": "probe", "by": "RT", "when": "2026-04-02"}``.
``typed`` keeps what the person wrote, so that 2.3 m shows again as 2.3 m.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import MISSING, dataclass, field, fields
from typing import Any, Generic, Literal, Self, TypeVar

__all__ = ["Fact", "FactState", "about", "measured", "unknown", "watched"]

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


class _Watched(Fact[T]):
    """A fact that tells whenever its value is read; in all else, the fact that it was made of."""

    __slots__ = ("_tell",)

    _tell: Callable[[], object]

    def __new__(cls, **told: Any) -> Self:
        made = super().__new__(cls)
        object.__setattr__(made, "_tell", lambda: None)  # a copy with something else in it tells nobody
        return made

    def __getattribute__(self, name: str) -> Any:
        if name == "value":
            object.__getattribute__(self, "_tell")()
        return object.__getattribute__(self, name)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Fact) and all(getattr(self, f.name) == getattr(other, f.name) for f in fields(Fact))

    def __hash__(self) -> int:
        return super().__hash__()


def watched(fact: Fact[Any], tell: Callable[[], object]) -> Fact[Any]:
    """The same fact, which calls ``tell`` whenever somebody reads its value."""
    made: Fact[Any] = _Watched(**{each.name: getattr(fact, each.name) for each in fields(fact)})
    object.__setattr__(made, "_tell", tell)
    return made


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
