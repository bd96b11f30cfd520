"""Reading a settled survey: each fact at one end of its range, with the marks it carries.

The engine never sees a range. It is run again at each end (:mod:`groundsill.study`), and what it reads here is one
figure, recorded on the open sheet with where it came from.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from groundsill.house.building import Corner
from groundsill.house.fact import Fact
from groundsill.house.underfloor import Line
from groundsill.mechanics.plan import length
from groundsill.work.document import House
from groundsill.working.sheet import open_sheet
from groundsill.working.steps import given
from groundsill.working.value import Mark

__all__ = ["Reading", "line_ends", "line_length_in"]

XY = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Reading:
    """A house with every fact settled on one value, and the marks of those that were not plainly measured."""

    house: House
    marks: Mapping[str, tuple[Mark, ...]] = field(default_factory=dict)

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

    def marked(self, path: str) -> tuple[Mark, ...]:
        """The marks of one fact, for figures that are not recorded as such."""
        return tuple(self.marks.get(path, ()))


def line_ends(house: House, line: Line) -> tuple[XY, XY]:
    """The two ends of a line on the plan, in inches."""
    corners: Mapping[str, Corner] = house.survey.building.corners
    a, b = corners[line.start], corners[line.end]
    return (a.x_in, a.y_in), (b.x_in, b.y_in)


def line_length_in(house: House, line: Line) -> float:
    """A line's length, in inches."""
    return length(*line_ends(house, line))
