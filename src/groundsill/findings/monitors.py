"""Gauges across cracks, plumb marks and level marks read over time: one finding for each, by what its readings say.

A gauge on a crack, or a plumb mark on a leaning stretch, answers, where the survey itself does not know, whether that
still moves (:func:`gauge_says`). How far something leans or has sunk is weighed elsewhere; here only whether it goes
on.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any, Final

from groundsill.findings.answer import Answer
from groundsill.findings.asking import Asking
from groundsill.findings.book import book
from groundsill.findings.finding import Finding, Judgement, Reason, Weight
from groundsill.findings.trend import Timed, Trend, trend_of
from groundsill.forces.reading import Reading
from groundsill.house.record import Monitor
from groundsill.standards.common_practice import table_monitors
from groundsill.working.errors import UnitError
from groundsill.working.measure import show
from groundsill.working.measure_show import decimal
from groundsill.working.unit import factor

__all__ = ["fine", "gauge_says", "monitors"]

_TITLES: Final = {"crack gauge": "Crack gauge", "plumb": "Plumb mark", "level": "Level mark"}
_WHAT: Final = {"crack gauge": "the crack", "plumb": "the lean", "level": "the height"}
_ANSWERS: Final[dict[str, Answer]] = {"not moving": "yes", "moving": "no", "too soon to tell": "cannot tell"}
_MM: Final = 25.4


def monitors(reading: Reading) -> Iterator[Finding]:
    """The findings on every gauge and mark."""
    for id, monitor in reading.in_order(reading.house.survey.monitors):
        yield _Gauge(reading, id, monitor, _trend(monitor)).finding()


def gauge_says(reading: Reading, thing: str, kind: str = "crack gauge") -> tuple[Answer, str]:
    """Whether a thing lies still by the gauges of a kind that sit on it, and which and why; any that moves decides."""
    found = [
        _Gauge(reading, id, monitor, _trend(monitor))
        for id, monitor in reading.in_order(reading.house.survey.monitors)
        if monitor.on == thing and monitor.kind == kind
    ]
    for answer in ("no", "cannot tell", "yes"):
        for gauge in found:
            if gauge.answer == answer:
                called = "gauge" if kind == "crack gauge" else f"{kind} mark"
                return answer, f"{called} {gauge.monitor.mark or gauge.id}, {gauge.in_short()}"
    return "cannot tell", ""


def fine(inches: float, units: str) -> str:
    """A small length as gauges are read: thousandths of an inch or hundredths of a millimetre."""
    if units == "si":
        return f"{decimal(Fraction(inches * _MM), 2)} mm"
    return f"{decimal(Fraction(inches), 3)} in."


def _trend(monitor: Monitor) -> Trend | None:
    """What its readings say; None without readings, or in a unit that is no length."""
    try:
        to_in = factor(monitor.unit, "in")
    except UnitError:
        return None
    table = table_monitors()
    division = table.read(monitor.kind, "division") if monitor.division is None else monitor.division * to_in
    told = [Timed(r.when, r.value * to_in, r.temperature_f) for r in monitor.readings]
    return trend_of(told, division, table.read(monitor.kind, "still within, a year"))


@dataclass(frozen=True, slots=True)
class _Gauge:
    """One gauge and what is asked of it."""

    reading: Reading
    id: str
    monitor: Monitor
    trend: Trend | None

    @property
    def answer(self) -> Answer:
        """Whether it lies still."""
        return "cannot tell" if self.trend is None else _ANSWERS[self.trend.moves]

    def finding(self) -> Finding:
        """The three weighings from the one answer."""
        line, station, place = self.where()
        reasons = (self.still(), self.season())
        cures = {"yes": ("nothing",), "no": ("water", "go_on", "engineer")}.get(self.answer, ("go_on",))
        return Finding(
            address=f"finding/monitor/{self.id}",
            mark=self.monitor.mark,
            title=_TITLES[self.monitor.kind],
            place=place,
            line=line,
            station_in=station,
            observed=tuple(self.seen()),
            gravity=self.judged("gravity", "matters", reasons),
            earthquake=self.judged("earthquake", "watch" if self.monitor.kind == "level" else "matters", reasons),
            durability=self.judged("durability", "watch", reasons),
            cause=(),
            active=reasons[0],
            confirm=tuple(dict.fromkeys(r.settle for r in reasons if r.settle)),
            cures=self.ask.cures(*cures),
            left_alone=self.ask.left_alone({"yes": "still", "no": "moving"}.get(self.answer, "open")),
            marks=(),
            trend=self.trend,
        )

    def judged(self, what: str, moving: Weight, reasons: tuple[Reason, ...]) -> Judgement:
        """One weighing: what moves weighs ``moving``, what lies still nothing, the rest nobody can tell."""
        says = book("monitors").words
        if self.answer == "no":
            return Judgement(moving, says[what].format(what=_WHAT[self.monitor.kind]), reasons)
        if self.answer == "yes":
            return Judgement("does not matter", says["still"].format(within=self.fine(self.within)), reasons)
        return Judgement("cannot tell", says["open"], reasons)

    # ---- The questions ----

    def still(self) -> Reason:
        """Whether it lies still within the stated rate."""
        trend = self.trend
        if trend is None:
            return self.ask.asked("readings", "cannot tell")
        figures = {"within": self.fine(self.within), "what": _WHAT[self.monitor.kind]}
        if trend.rate_in_yr is not None and trend.interval_in_yr is not None:
            low, high = (self.fine(end) for end in trend.interval_in_yr)
            figures |= {"rate": self.fine(trend.rate_in_yr), "low": low, "high": high}
        reason = self.ask.asked("still", self.answer, **figures)
        if self.answer != "cannot tell":
            return reason
        says = book("monitors").words
        soon = says["soon"].format(what=figures["what"], next=trend.next)
        key = "again" if trend.answer_by else "finer"
        return replace(reason, text=soon, settle=says[key].format(next=trend.next, by=trend.answer_by))

    def season(self) -> Reason:
        """Whether the yearly to and fro is told apart from the rate."""
        trend = self.trend
        if trend is None or trend.season_in is None:
            count = 0 if trend is None else len(trend.readings)
            return self.ask.asked("season", "cannot tell", count=str(count))
        warm = "" if trend.heat_in_f is None else ", beside what the temperature does"
        return self.ask.asked("season", "yes", season=self.fine(trend.season_in), warm=warm)

    @property
    def ask(self) -> Asking:
        """The book of the topic, and the house."""
        return Asking(self.reading, "monitors")

    # ---- Words ----

    @property
    def within(self) -> float:
        """The yearly movement that counts as none."""
        return table_monitors().read(self.monitor.kind, "still within, a year")

    def fine(self, inches: float) -> str:
        """A small length in the units of the house."""
        return fine(inches, self.reading.house.units)

    def in_short(self) -> str:
        """What it says, in a few words."""
        trend = self.trend
        if trend is None:
            return "whose readings cannot be weighed"
        if trend.moves == "moving" and trend.rate_in_yr is not None:
            return f"moving by {self.fine(trend.rate_in_yr)} a year"
        if trend.moves == "not moving":
            return f"not moving within {self.fine(self.within)} a year"
        return f"too soon to tell, read again on {trend.next}"

    def seen(self) -> Iterator[str]:
        """What was read, in words."""
        trend = self.trend
        if trend is None:
            yield f"{len(self.monitor.readings)} readings in {self.monitor.unit!r}"
            return
        first, last = trend.readings[0], trend.readings[-1]
        yield f"{len(trend.readings)} readings from {first.when} to {last.when}"
        yield f"first {self.fine(first.value_in)}, last {self.fine(last.value_in)}"
        if trend.rate_in_yr is not None:
            yield f"scatter about the fit {self.fine(trend.spread_in)}"

    def where(self) -> tuple[str, float | None, str]:
        """The line and station it sits at, and its place in words."""
        survey, on = self.reading.house.survey, self.monitor.on
        if on is None:
            return "", None, "its place is not told"
        cut = survey.foundation.breaks.get(on)
        if cut is not None:
            station = show(cut.station_in, "length", "in", self.reading.house.units)
            mark = f" at {cut.mark}" if cut.mark else ""
            return cut.line, cut.station_in, f"line {self.named(cut.line)}, {station} from its start{mark}"
        under = survey.underfloor
        sits: dict[str, Any] = {
            **{key: ("foundation", each) for key, each in survey.foundation.segments.items()},
            **{key: ("sill", each) for key, each in under.sills.items()},
            **{key: ("wall", each) for key, each in under.segments.items()},
            **{key: ("girder", each) for key, each in under.girders.items()},
            **{key: ("post", each) for key, each in under.posts.items()},
            **{key: ("line", each) for key, each in under.lines.items()},
        }
        word, each = sits.get(on, ("", None))
        if each is None:
            return "", None, on
        line = getattr(each, "line", on if word == "line" else "")
        beside = f", line {self.named(line)}" if line and word != "line" else ""
        return line, None, f"{word} {each.mark or on}{beside}"

    def named(self, line: str) -> str:
        """The mark of a line."""
        return self.reading.house.survey.underfloor.lines[line].mark or line
