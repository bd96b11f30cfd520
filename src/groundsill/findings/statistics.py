"""The statistics that readings need: Student's t, least squares, and how far one reading follows the one before.

Student's distribution function for whole degrees of freedom is the closed trigonometric sum of Abramowitz and Stegun,
Handbook of Mathematical Functions (1964), 26.7.3 and 26.7.4: exact, with no series to cut off. Its quantile is found by
halving. Least squares go by orthogonal columns (modified Gram and Schmidt, each column cleared twice), so that the
error of the last column's coefficient is the spread of the readings over what of that column the others do not tell.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import atan, cos, fsum, inf, pi, sin, sqrt
from typing import Final

__all__ = ["Fit", "follows", "least_squares", "t_below", "t_quantile"]

_SAME: Final = 0.1  # a column of which the others tell all but this part is left out: our choice
_HALVINGS: Final = 200


@dataclass(frozen=True, slots=True)
class Fit:
    """A least-squares fit.

    ``coefficients`` are those of the columns (0 for one left out); ``kept`` says which columns the dates could tell
    apart; ``residuals`` what the fit leaves; ``spare`` the degrees of freedom; ``last_rest`` the length of what the
    other columns do not tell of the last one (its coefficient's error is the spread over it; 0 where left out).
    """

    coefficients: tuple[float, ...]
    kept: tuple[bool, ...]
    residuals: tuple[float, ...]
    spare: int
    last_rest: float

    @property
    def spread(self) -> float:
        """The standard deviation of the readings about the fit; not known (infinite) where no freedom is left."""
        return sqrt(fsum(r * r for r in self.residuals) / self.spare) if self.spare > 0 else inf


def t_below(t: float, degrees: int) -> float:
    """The chance that Student's t with so many degrees of freedom lies below ``t`` (A&S 26.7.3, 26.7.4)."""
    if degrees < 1:
        raise ValueError(f"Student's t needs at least 1 degree of freedom, not {degrees}")
    angle = atan(t / sqrt(degrees))
    square = cos(angle) ** 2
    odd = degrees % 2 == 1
    term = cos(angle) if odd else 1.0
    terms = [term] if degrees > 1 else []
    for k in range(2 if odd else 1, degrees - 1, 2):
        term *= square * k / (k + 1)
        terms.append(term)
    within = sin(angle) * fsum(terms)
    if odd:
        within = 2 / pi * (angle + within)
    return 0.5 + within / 2


def t_quantile(below: float, degrees: int) -> float:
    """The t that a part ``below`` (between 0 and 1) of Student's distribution lies under."""
    if not 0.0 < below < 1.0:
        raise ValueError(f"a quantile is asked for a part between 0 and 1, not {below:g}")
    if below < 0.5:
        return -t_quantile(1.0 - below, degrees)
    low, high = 0.0, 1.0
    while t_below(high, degrees) < below:
        low, high = high, 2 * high
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if middle in (low, high):
            break
        low, high = (middle, high) if t_below(middle, degrees) < below else (low, middle)
    return (low + high) / 2


def least_squares(columns: Sequence[Sequence[float]], values: Sequence[float]) -> Fit:
    """Fit ``values`` by a sum of ``columns``, in order; one that those before it nearly tell is left out.

    Raises:
        ValueError: when a column is not as long as the values.
    """
    n = len(values)
    if any(len(column) != n for column in columns):
        raise ValueError("every column must be as long as the readings")
    bases: list[list[float]] = []
    triangle: list[list[float]] = []
    kept: list[bool] = []
    rest = 0.0
    for column in columns:
        clear, parts = _cleared(column, bases)
        rest = _length(clear)
        mean = fsum(column) / n if bases and n else 0.0
        fresh = len(bases) < n and rest > _SAME * _length([x - mean for x in column])
        kept.append(fresh)
        if fresh:
            bases.append([x / rest for x in clear])
            triangle.append([*parts, rest])
    residuals, heads = _cleared(values, bases)
    told: list[float] = [0.0] * len(bases)
    for i in reversed(range(len(bases))):
        told[i] = (heads[i] - fsum(triangle[j][i] * told[j] for j in range(i + 1, len(bases)))) / triangle[i][i]
    ours = iter(told)
    coefficients = tuple(next(ours) if k else 0.0 for k in kept)
    return Fit(coefficients, tuple(kept), tuple(residuals), n - len(bases), rest if kept and kept[-1] else 0.0)


def follows(residuals: Sequence[float]) -> float:
    """How far each residual is like the one before it, -1 to 1; 0 where there is nothing left to compare."""
    whole = fsum(r * r for r in residuals)
    if whole <= 0.0:
        return 0.0
    return fsum(a * b for a, b in zip(residuals, residuals[1:], strict=False)) / whole


def _cleared(column: Sequence[float], bases: Sequence[Sequence[float]]) -> tuple[list[float], list[float]]:
    """What the bases do not tell of a column, and how much of each it holds; done twice for the sake of rounding."""
    clear, parts = list(column), [0.0] * len(bases)
    for _ in range(2):
        for i, base in enumerate(bases):
            part = fsum(x * b for x, b in zip(clear, base, strict=True))
            parts[i] += part
            clear = [x - part * b for x, b in zip(clear, base, strict=True)]
    return clear, parts


def _length(column: Sequence[float]) -> float:
    return sqrt(fsum(x * x for x in column))
