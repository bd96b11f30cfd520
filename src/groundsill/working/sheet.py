"""A calculation sheet: the steps that were taken, in order, while it lay open.

``with Sheet() as sheet:`` opens one for this thread or task only (a context variable, never a module global), so two
jobs never write on each other's paper. Recording stores what went in and what came out; the lines a reader sees are
worked out only when somebody looks (:mod:`groundsill.working.explain`), which keeps recording cheap.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar, Token
from dataclasses import dataclass, field
from types import TracebackType
from typing import TYPE_CHECKING, Any, Literal

from groundsill.working.errors import GroundsillError
from groundsill.working.value import Mark, Value

if TYPE_CHECKING:
    from groundsill.working.explain import Line

__all__ = ["Sheet", "Step", "StepKind", "open_sheet", "quiet", "section", "under_heading"]

StepKind = Literal["equation", "procedure", "lookup", "given", "sum", "convert", "condition", "note"]

_OPEN: ContextVar[Sheet | None] = ContextVar("groundsill_open_sheet", default=None)


@dataclass(frozen=True, slots=True, eq=False)
class Step:
    """One recorded step.

    ``inputs`` pairs each argument's name with what was put in; ``maker`` is the equation, table or text behind it;
    ``depth`` counts the procedures it stands inside; ``section`` is the address of the link it was taken for.
    """

    kind: StepKind
    id: str
    title: str
    cite: str
    inputs: tuple[tuple[str, object], ...]
    results: tuple[Value, ...]
    maker: Any
    marks: frozenset[Mark]
    depth: int
    section: str

    @property
    def result(self) -> Value | None:
        """The number this step gave, or None for a note or a heading."""
        return self.results[0] if self.results else None

    @property
    def lines(self) -> tuple[Line, ...]:
        """What a reader sees: formula, numbers put in, answer, what governed, limits, the table row read."""
        from groundsill.working.explain import lines_of  # late: explain needs Step, and most runs never look

        return lines_of(self)


@dataclass(slots=True, eq=False)
class Sheet:
    """The paper that steps are written on while it is open."""

    steps: list[Step] = field(default_factory=list)
    depth: int = 0
    section: str = ""
    heading: str = ""
    _under: dict[str, list[Step]] = field(default_factory=dict, init=False, repr=False)  # the steps by their section
    _tokens: list[Token[Sheet | None]] = field(default_factory=list, init=False, repr=False)  # one for each entry

    def __enter__(self) -> Sheet:
        self._tokens.append(_OPEN.set(self))
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, tb: TracebackType | None) -> None:
        _OPEN.reset(self._tokens.pop())

    def record(
        self,
        kind: StepKind,
        id: str,
        title: str,
        cite: str,
        inputs: tuple[tuple[str, object], ...],
        outcome: tuple[float, str, str] | None,
        maker: object,
        marks: frozenset[Mark],
    ) -> Value | None:
        """Write one step down and hand back its recorded value; ``outcome`` is number, unit and symbol.

        Raises:
            GroundsillError: for a figure without a symbol: no paper could name it.
        """
        if outcome is None:
            self._write(Step(kind, id, title, cite, inputs, (), maker, marks, self.depth, self.section))
            return None
        number, unit, symbol = outcome
        if not symbol:
            put_in = ", ".join(str(value) for _, value in inputs)
            raise GroundsillError(f"{cite or title or kind}, {put_in}: a figure is recorded without a symbol")
        bare = Value(number, unit, symbol, None, marks)
        step = Step(kind, id, title, cite, inputs, (bare,), maker, marks, self.depth, self.section)
        self._write(step)
        return Value(number, unit, symbol, step, marks)

    def _write(self, step: Step) -> None:
        self.steps.append(step)
        self._under.setdefault(step.section, []).append(step)

    def under(self, section: str) -> tuple[Step, ...]:
        """The steps taken for one address, in order."""
        return tuple(self._under.get(section, ()))


def open_sheet() -> Sheet | None:
    """The sheet that lies open in this thread or task, if any."""
    return _OPEN.get()


@contextmanager
def section(address: str) -> Iterator[None]:
    """Write the steps taken inside under this address; without a sheet it does nothing."""
    sheet = _OPEN.get()
    if sheet is None:
        yield
        return
    before, sheet.section = sheet.section, sheet.heading + address
    try:
        yield
    finally:
        sheet.section = before


@contextmanager
def under_heading(heading: str) -> Iterator[None]:
    """Write every section opened inside with these words before its address: the same working for another load."""
    sheet = _OPEN.get()
    if sheet is None:
        yield
        return
    before, sheet.heading = sheet.heading, heading
    try:
        yield
    finally:
        sheet.heading = before


@contextmanager
def quiet() -> Iterator[None]:
    """Work something out aside, without writing on the open sheet: a first look, taken again where it is recorded."""
    token = _OPEN.set(None)
    try:
        yield
    finally:
        _OPEN.reset(token)
