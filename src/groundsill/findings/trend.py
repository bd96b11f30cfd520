"""What readings over time say: moving, not moving within a stated rate, or too soon to tell and when to read again.

The readings are fitted by least squares with a level, the wet and dry season of the year (one yearly wave), the
temperature where every reading tells it, and a steady rate. Two tests are made of the rate. *Not moving within x*: both
one-sided tests against plus and minus x (the two one-sided tests of equivalence) reject at 5 %, so that the 90 %
interval of the rate lies within x. *Moving*: the 95 % interval leaves out nothing moving. What neither says is too soon
to tell. No verdict comes before a year is full: until then a rate and a season are one and the same.

Two things keep the tests honest with few readings. The spread is never taken less than what the gauge's own division
leaves (division over the root of 12, as the Guide to the Expression of Uncertainty in Measurement, F.2.2.1, takes a
reading's last digit). Readings that follow one another count for fewer: with r between neighbours, n count as
n (1 - r) / (1 + r), the usual correction for a first-order chain.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from math import cos, floor, hypot, inf, pi, sin, sqrt
from typing import Final, Literal

from groundsill.findings.statistics import Fit, follows, least_squares, t_quantile

__all__ = ["EVERY_DAYS", "Moves", "Timed", "Trend", "trend_of"]

Moves = Literal["moving", "not moving", "too soon to tell"]

EVERY_DAYS: Final = 91
"""How often a gauge is read until it tells: once a season (our choice)."""

_YEAR: Final = 365.25
_FULL_YEAR: Final = 360  # days from first to last reading that make a year, a visit being a few days early: our choice
_CHANCE: Final = 0.05  # the chance to call still what moves at the stated rate, or to call moving what lies still
_SPARE_FOR_HEAT: Final = (
    3  # degrees of freedom that must be left for temperature to be told from the season: our choice
)
_SEASON_NEEDS: Final = 4  # level, two of the wave, the rate: what a fit with a season asks for
_OPEN: Final = "too soon to tell"
_PLANNED: Final = 40  # readings looked ahead, ten years


@dataclass(frozen=True, slots=True)
class Timed:
    """One reading: its date (2025-11-06), its value in inches, the air's temperature where it was noted."""

    when: str
    value_in: float
    temperature_f: float | None = None


@dataclass(frozen=True, slots=True)
class Trend:
    """What the readings of one gauge say.

    ``rate_in_yr`` and ``error_in_yr`` are the steady rate and its standard error (None where the dates cannot tell it);
    ``still_within_in_yr`` the stated rate within which it counts as still; ``interval_in_yr`` the 95 % interval of the
    rate, ``spare`` the degrees of freedom behind it and ``counted`` how many readings they count as. ``season_in`` is
    half of the yearly to and fro and ``heat_in_f`` what one degree does, where they were told apart; ``spread_in`` the
    scatter about the fit. ``next`` is when to read again and ``answer_by`` when an answer may be hoped for (empty: not
    within ten years by this gauge); both are empty once an answer is there. ``steady_in`` is the reading without the
    season at the first and the last date.
    """

    moves: Moves
    readings: tuple[Timed, ...]
    fitted_in: tuple[float, ...]
    steady_in: tuple[float, float]
    rate_in_yr: float | None
    error_in_yr: float | None
    interval_in_yr: tuple[float, float] | None
    still_within_in_yr: float
    spare: int
    counted: float
    season_in: float | None
    heat_in_f: float | None
    spread_in: float
    next: str
    answer_by: str
    full_year: bool


def trend_of(readings: Sequence[Timed], division_in: float, still_within_in_yr: float) -> Trend | None:
    """Weigh the readings of one gauge; None where there are none.

    Args:
        readings: in any order.
        division_in: the finest step the gauge can be read to.
        still_within_in_yr: the rate within which it counts as still.
    """
    if not readings:
        return None
    told = tuple(sorted(readings, key=lambda r: r.when))
    first = date.fromisoformat(told[0].when)
    days = [(date.fromisoformat(r.when) - first).days for r in told]
    season = len(told) > _SEASON_NEEDS
    warm = _warm(told) if season else None
    fit = least_squares(_columns(days, first, season, warm), [r.value_in for r in told])
    counted = _counted(fit, len(told))
    spare = max(floor(counted) - (len(told) - fit.spare), 0)
    least = division_in / sqrt(12)
    spread = max(fit.spread, least) if fit.spare > 0 else least
    full_year = days[-1] >= _FULL_YEAR
    known = full_year and season and spare > 0 and fit.last_rest > 0.0
    rate = fit.coefficients[-1]
    error = spread / fit.last_rest * sqrt(len(told) / counted) if known else inf
    moves: Moves = _verdict(rate, error, spare, still_within_in_yr) if known else "too soon to tell"
    far = t_quantile(1 - _CHANCE / 2, spare) * error if known else inf
    by = _answer_by(days, first, rate if known else 0.0, spread, still_within_in_yr) if moves == _OPEN else ""
    return Trend(
        moves=moves,
        readings=told,
        fitted_in=tuple(r.value_in - left for r, left in zip(told, fit.residuals, strict=True)),
        steady_in=(fit.coefficients[0], fit.coefficients[0] + rate * days[-1] / _YEAR),
        rate_in_yr=rate if known else None,
        error_in_yr=error if known else None,
        interval_in_yr=(rate - far, rate + far) if known else None,
        still_within_in_yr=still_within_in_yr,
        spare=spare,
        counted=counted,
        season_in=hypot(*fit.coefficients[1:3]) if known else None,
        heat_in_f=fit.coefficients[3] if known and warm is not None and fit.kept[3] else None,
        spread_in=spread,
        next=_on(first, days[-1] + EVERY_DAYS) if moves == _OPEN else "",
        answer_by=by,
        full_year=full_year,
    )


def _on(first: date, day: int) -> str:
    return (first + timedelta(days=day)).isoformat()


def _warm(told: Sequence[Timed]) -> list[float] | None:
    """The temperatures, where every reading has one and enough readings are left to tell them from the season."""
    warm = [r.temperature_f for r in told if r.temperature_f is not None]
    return warm if len(warm) == len(told) and len(told) - _SEASON_NEEDS - 1 >= _SPARE_FOR_HEAT else None


def _columns(days: Sequence[int], first: date, season: bool, warm: Sequence[float] | None = None) -> list[list[float]]:
    """The columns of the fit: level, the yearly wave, the temperature, and the rate last."""
    start = first.timetuple().tm_yday
    columns = [[1.0] * len(days)]
    if season:
        turn = [2 * pi * (start + day) / _YEAR for day in days]
        columns += [[cos(t) for t in turn], [sin(t) for t in turn]]
    if warm is not None:
        mean = sum(warm) / len(warm)
        columns.append([w - mean for w in warm])
    return [*columns, [day / _YEAR for day in days]]


def _counted(fit: Fit, n: int) -> float:
    """How many readings they count as, those that follow one another counting for fewer."""
    r = max(follows(fit.residuals), 0.0)
    return n * (1 - r) / (1 + r)


def _verdict(rate: float, error: float, spare: int, still: float) -> Moves:
    """The two tests; one that is still within the stated rate is still even where the rate is not nothing."""
    if abs(rate) + t_quantile(1 - _CHANCE, spare) * error <= still:
        return "not moving"
    return "moving" if abs(rate) > t_quantile(1 - _CHANCE / 2, spare) * error else "too soon to tell"


def _answer_by(days: Sequence[int], first: date, rate: float, spread: float, still: float) -> str:
    """When one of the tests would answer, were the rate and the scatter as they seem and a reading made each season."""
    ahead = list(days)
    for _ in range(_PLANNED):
        ahead.append(ahead[-1] + EVERY_DAYS)
        if ahead[-1] - ahead[0] < _FULL_YEAR or len(ahead) <= _SEASON_NEEDS + 1:
            continue
        fit = least_squares(_columns(ahead, first, True), [0.0] * len(ahead))
        if fit.last_rest > 0.0 and _verdict(rate, spread / fit.last_rest, fit.spare, still) != "too soon to tell":
            return _on(first, ahead[-1])
    return ""
