"""A number that remembers where it came from.

With a sheet open, every number that passes *between* equations is a :class:`Value`: a float that also carries its
unit, its symbol, the step that made it, and the marks of every doubtful figure it depends on. It compares like a
float, but refuses arithmetic: a sum done in passing would lose the marks and leave a gap in the working, so sums,
products and minimums between equations go through the recorded helpers in :mod:`groundsill.working.steps`.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal, NoReturn

if TYPE_CHECKING:
    from groundsill.working.sheet import Step

__all__ = ["Mark", "MarkKind", "UnrecordedArithmetic", "Value", "marks_of", "plain"]

MarkKind = Literal["from memory", "assumed range", "estimated", "extension", "unverified"]


@dataclass(frozen=True, slots=True, order=True)
class Mark:
    """A doubt that travels with a number: its kind, and the figure that carries it."""

    kind: MarkKind
    what: str

    def text(self) -> str:
        """The mark as it is printed."""
        if self.kind == "from memory":
            return f"from memory, to be confirmed: {self.what}"
        return f"{self.kind}: {self.what}"


class UnrecordedArithmetic(TypeError):
    """Arithmetic on a Value outside an equation or a recorded helper (an error of the program, not of the survey)."""


def _refuse(self: Value, *others: object) -> NoReturn:
    raise UnrecordedArithmetic(
        f"{self.symbol} = {float(self)!r} {self.unit} is a recorded value: use add, multiply, least ... of "
        "groundsill.working.steps, so that the sum stands in the working"
    )


class Value(float):
    """A float with ``unit``, ``symbol``, the ``step`` that made it (None when typed in) and its ``marks``."""

    __slots__ = ("marks", "step", "symbol", "unit")

    unit: str
    symbol: str
    step: Step | None
    marks: frozenset[Mark]

    def __new__(
        cls,
        number: float,
        unit: str,
        symbol: str,
        step: Step | None = None,
        marks: frozenset[Mark] = frozenset(),
    ) -> Value:
        self = super().__new__(cls, number)
        self.unit = unit
        self.symbol = symbol
        self.step = step
        self.marks = marks
        return self

    __add__ = __radd__ = __sub__ = __rsub__ = __mul__ = __rmul__ = _refuse
    __truediv__ = __rtruediv__ = __floordiv__ = __rfloordiv__ = __mod__ = __rmod__ = _refuse
    __pow__ = __rpow__ = __neg__ = __pos__ = __abs__ = __divmod__ = __rdivmod__ = _refuse

    def __reduce__(self) -> tuple[type[Value], tuple[object, ...]]:
        return Value, (float(self), self.unit, self.symbol, self.step, self.marks)

    def __deepcopy__(self, memo: object) -> Value:
        return self  # a figure and all that led to it never change

    def __repr__(self) -> str:
        return f"Value({self.symbol} = {float(self)!r} {self.unit})"

    def renamed(self, symbol: str) -> Value:
        """The same value under the symbol the next formula knows it by."""
        return Value(self, self.unit, symbol, self.step, self.marks)


def plain(number: float) -> float:
    """The bare float of a number, recorded or not."""
    return float(number)


def marks_of(numbers: Iterable[object]) -> frozenset[Mark]:
    """Every mark carried by any of the numbers."""
    found: frozenset[Mark] = frozenset()
    for number in numbers:
        if isinstance(number, Value) and number.marks:
            found |= number.marks
    return found
