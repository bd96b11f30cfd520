"""Readings over time as a picture: dots for readings, a dotted line for the fit with its season, a dashed steady line.

The grey wedge opens as the rates that count as still: a steady line that leaves it at both ends moves faster.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from math import ceil, floor, log10
from typing import Final

from groundsill.findings import Finding
from groundsill.findings.monitors import fine
from groundsill.findings.trend import Trend
from groundsill.papers.document import Figure
from groundsill.papers.drawing import Circle, Drawing, Layer, Line, Mark, Point, Polygon, Polyline, Text
from groundsill.papers.sheet import FULL_SIZE
from groundsill.papers.views.words import Units, counted

__all__ = ["readings_figure"]

WIDTH, HEIGHT = 4.9, 1.7
"""Paper inches of the field the readings stand in."""
_SIZE: Final = 6.5
_DOT: Final = 0.028
_TICKS: Final = 5
_YEAR: Final = 365.25
_MM: Final = 25.4

_FRAME = Layer("readings frame", 18, style="note")
_GRID = Layer("readings grid", 13, style="note", ink=0.5)
_WEDGE = Layer("readings still", 13, style="note", ink=0.5)
_DOTS = Layer("readings dots", 25, style="plain")
_FIT = Layer("readings fit", 18, "dotted", style="note")
_STEADY = Layer("readings steady", 35, "dashed", style="new")
_WORDS = Layer("readings words", 18, style="note")


def readings_figure(finding: Finding, units: Units) -> Figure | None:
    """The picture of one gauge's readings; None where there are fewer than two days to draw between."""
    trend = finding.trend
    if trend is None or trend.readings[0].when == trend.readings[-1].when:
        return None
    field = _Field.of(trend, units)
    caption = f"{finding.mark or finding.title}: readings over time"
    drawing = Drawing(
        caption, (*_wedge(trend, field), *_axes(field), *_curves(trend, field), *_dots(trend, field), *_key(trend))
    )
    return Figure(drawing, caption, _alternative(trend, units), scale=FULL_SIZE, show_scale=False)


@dataclass(frozen=True, slots=True)
class _Field:
    """From dates and inches to the paper."""

    first: date
    days: int
    low: float
    high: float
    step: float
    units: Units

    @staticmethod
    def of(trend: Trend, units: Units) -> _Field:
        """A field that holds every reading and the fit, its steps round figures in the house's own unit."""
        first, last = (date.fromisoformat(trend.readings[i].when) for i in (0, -1))
        values = [r.value_in for r in trend.readings] + list(trend.fitted_in)
        one = 1 / _MM if units == "si" else 1.0
        spread = max(max(values) - min(values), 0.02)
        step = _round_step(spread / one / (_TICKS - 1)) * one
        return _Field(first, (last - first).days, floor(min(values) / step) * step, ceil(max(values) / step) * step,
                      step, units)  # fmt: skip

    def at(self, day: float, value: float) -> Point:
        """Where a value on a day lies."""
        return day / self.days * WIDTH, (value - self.low) / (self.high - self.low) * HEIGHT

    def day(self, when: str) -> int:
        """Days from the first reading."""
        return (date.fromisoformat(when) - self.first).days


def _round_step(about: float) -> float:
    """The round step (1, 2 or 5 and noughts) nearest above a figure."""
    power = 10.0 ** floor(log10(about))
    return next(power * m for m in (1, 2, 5, 10) if power * m >= about * (1 - 1e-9))


def _axes(field: _Field) -> Iterator[Mark]:
    """The frame, round values up the side, the first of every January (or of every third month) along the foot."""
    for n in range(round((field.high - field.low) / field.step) + 1):
        value = field.low + n * field.step
        x, y = field.at(0, value)
        yield Line((x, y), (WIDTH, y), _GRID)
        yield Text((x - 0.06, y), fine(value, field.units), _WORDS, _SIZE, anchor="end", baseline="middle")
    months = (1,) if field.days > 2 * _YEAR else (1, 4, 7, 10)
    for year in range(field.first.year, field.first.year + field.days // 365 + 2):
        for month in months:
            day = (date(year, month, 1) - field.first).days
            if 0 <= day <= field.days:
                x, _ = field.at(day, field.low)
                yield Line((x, 0.0), (x, HEIGHT), _GRID)
                words = f"{year}" if len(months) == 1 else f"{year}-{month:02d}"
                yield Text((x, -0.05), words, _WORDS, _SIZE, anchor="middle", baseline="top")
    yield Polygon(((0.0, 0.0), (WIDTH, 0.0), (WIDTH, HEIGHT), (0.0, HEIGHT)), _FRAME)


def _wedge(trend: Trend, field: _Field) -> Iterator[Mark]:
    """The rates that count as still, opening both ways from the middle of the steady line."""
    if trend.rate_in_yr is None:
        return
    middle = sum(trend.steady_in) / 2
    half = trend.still_within_in_yr * field.days / _YEAR / 2
    for day in (0, field.days):
        points = (field.at(field.days / 2, middle), field.at(day, middle + half), field.at(day, middle - half))
        yield Polygon(tuple((x, min(max(y, 0.0), HEIGHT)) for x, y in points), _WEDGE, "tint")


def _curves(trend: Trend, field: _Field) -> Iterator[Mark]:
    """The fit from reading to reading, and the steady line."""
    if trend.rate_in_yr is None:
        return
    told = zip(trend.readings, trend.fitted_in, strict=True)
    yield Polyline(tuple(field.at(field.day(r.when), value) for r, value in told), _FIT, label="fit with its season")
    start, end = trend.steady_in
    yield Line(field.at(0, start), field.at(field.days, end), _STEADY, label="steady rate")


def _dots(trend: Trend, field: _Field) -> Iterator[Mark]:
    for r in trend.readings:
        said = f"{r.when}: {fine(r.value_in, field.units)}"
        yield Circle(field.at(field.day(r.when), r.value_in), _DOT, _DOTS, "ink", label=said)


def _key(trend: Trend) -> Iterator[Mark]:
    """What the marks are, under the picture."""
    told = "dots: readings"
    if trend.rate_in_yr is not None:
        told += "; dotted: the fit with its season; dashed: the steady rate; grey: rates that count as still"
    yield Text((0.0, -0.22), told, _WORDS, _SIZE, baseline="top")


def _alternative(trend: Trend, units: Units) -> str:
    """What the picture shows, in words."""
    first, last = trend.readings[0], trend.readings[-1]
    told = (
        f"{counted(len(trend.readings), 'reading')} as dots, from {fine(first.value_in, units)} on {first.when} to "
        f"{fine(last.value_in, units)} on {last.when}."
    )
    if trend.rate_in_yr is None:
        return f"{told} No steady rate can be told from them yet."
    return (
        f"{told} The dotted line is the fit with its season, the dashed line the steady rate of "
        f"{fine(trend.rate_in_yr, units)} a year, the grey wedge what counts as still "
        f"({fine(trend.still_within_in_yr, units)} a year either way)."
    )
