"""Reading a settled survey: each fact at one end of its range, with the marks it carries.

The engine never sees a range. It is run again at each end (:mod:`groundsill.study`), and what it reads here is one
figure, recorded on the open sheet with where it came from.

A fact reaches a result in one of three ways, and its marks go with it in each: as a figure of its own
(:meth:`Reading.number`); inside a figure made of several, which is then ``given`` with what :meth:`Reading.marked`
says of them; or by choosing a rule, a row or a verdict: it is :meth:`Reading.noted`, and the figure so chosen
:func:`doubted`.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Protocol, TypeVar, cast

from groundsill.house.building import Corner
from groundsill.house.fact import Fact
from groundsill.house.survey import in_order
from groundsill.house.underfloor import Line
from groundsill.mechanics.plan import length
from groundsill.work.basis import basis_of
from groundsill.work.document import House
from groundsill.work.inner import InnerFoundationPiece
from groundsill.working.sheet import open_sheet
from groundsill.working.steps import given
from groundsill.working.value import Mark, Value, marks_of

__all__ = ["Reading", "doubted", "line_ends", "line_length_in"]

XY = tuple[float, float]
T = TypeVar("T")


class OnLine(Protocol):
    """Anything of the survey that lies on a line."""

    @property
    def line(self) -> str:
        """The id of its line."""


L = TypeVar("L", bound=OnLine)


@dataclass(frozen=True, slots=True)
class Reading:
    """A house with every fact settled on one value, and the marks of those that were not plainly measured.

    ``inner`` are the new foundations of the state that is worked out, by the id of the line each makes; the house holds
    those lines already. A reading lasts for one run, in which the house does not change: what is asked of its geometry
    again and again is worked out :meth:`once`.
    """

    house: House
    marks: Mapping[str, tuple[Mark, ...]] = field(default_factory=dict)
    inner: Mapping[str, InnerFoundationPiece] = field(default_factory=dict)
    _known: dict[Hashable, Any] = field(default_factory=dict, init=False, repr=False, compare=False)

    def once(self, what: Hashable, make: Callable[[], T]) -> T:
        """Something about the house as read, made the first time it is asked for; never anything that is recorded."""
        if what not in self._known:
            self._known[what] = make()
        return cast(T, self._known[what])

    def edition(self, family: str) -> str:
        """The edition of a document (``nds``) that the house's basis goes by."""
        return self.once(("edition", family), lambda: basis_of(self.house).edition(family))

    def in_order(self, things: Mapping[str, T]) -> Sequence[tuple[str, T]]:
        """A collection of the house, by ids and objects in order."""
        return self.once(("in order", id(things)), lambda: in_order(things))

    def on_line(self, things: Mapping[str, L], line: str) -> Sequence[tuple[str, L]]:
        """What of a collection of the house lies on a line, in order."""
        return self.once(("by line", id(things)), lambda: self._by_line(things)).get(line, ())

    def _by_line(self, things: Mapping[str, L]) -> dict[str, list[tuple[str, L]]]:
        found: dict[str, list[tuple[str, L]]] = {}
        for key, thing in self.in_order(things):
            found.setdefault(thing.line, []).append((key, thing))
        return found

    def number(self, path: str, fact: Fact[float], symbol: str, unit: str, label: str) -> float | None:
        """The figure of a fact, recorded with its origin; None when nobody knows it."""
        if fact.value is None:
            return None
        return self.figure(path, fact.value, symbol, unit, label, fact)

    def figure(
        self, path: str, value: float, symbol: str, unit: str, label: str, fact: Fact[Any] | None = None
    ) -> float:
        """A plain survey figure, recorded with its origin."""
        if open_sheet() is None:
            return float(value)
        how = f" ({fact.state}: {fact.how})" if fact is not None and fact.how else ""
        return given(symbol, value, unit, f"survey: {label}{how}", self.marks.get(path, ()))

    def noted(self, label: str, path: str, *names: str) -> frozenset[Mark]:
        """The marks of facts that choose a rule or a verdict, with a line on the open sheet where they have any.

        ``label`` says what they decide: ``the kind of soil``, ``whether bolt B7 counts``.
        """
        marks, sheet = self.marked(path, *names), open_sheet()
        if marks and sheet is not None:
            sheet.record("note", "", f"survey: {label}", "", (), None, None, marks)
        return marks

    def marked(self, path: str, *names: str) -> frozenset[Mark]:
        """The marks of one fact, or of several of one object by their names; like values, none without a sheet."""
        if open_sheet() is None:
            return frozenset()
        paths = [f"{path}.{name}" for name in names] if names else [path]
        return frozenset(mark for each in paths for mark in self.marks.get(each, ()))


def doubted(number: float, *doubts: Iterable[Mark], unit: str = "", symbol: str = "") -> float:
    """A figure that also rests on what chose it: the same figure with these marks added, which is no step of its own.

    ``unit`` and ``symbol`` are for a figure that was not recorded before.
    """
    if open_sheet() is None:
        return number
    marks = marks_of((number,)).union(*doubts)
    if not marks:
        return number
    if isinstance(number, Value):
        return Value(number, number.unit, number.symbol, number.step, marks)
    return Value(number, unit, symbol, None, marks)


def line_ends(house: House, line: Line) -> tuple[XY, XY]:
    """The two ends of a line on the plan, in inches."""
    corners: Mapping[str, Corner] = house.survey.building.corners
    a, b = corners[line.start], corners[line.end]
    return (a.x_in, a.y_in), (b.x_in, b.y_in)


def line_length_in(house: House, line: Line) -> float:
    """A line's length, in inches."""
    return length(*line_ends(house, line))
