"""Equations with a narrow symmetric band, solved by Cholesky's method.

A matrix is given by its rows of the lower band, ``bands[i][k]`` standing in row ``i`` and column ``i - k``: what a
beam of many short elements comes to. Time and room grow with the number of rows alone.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import sqrt

from groundsill.working.errors import OutsideLimits

__all__ = ["solved"]


def solved(bands: Sequence[Sequence[float]], right: Sequence[float]) -> list[float]:
    """The unknowns of a symmetric, positive definite set of equations, each row of the same band width.

    Raises:
        OutsideLimits: when the matrix is not positive definite: something moves and nothing holds it.
    """
    rows = [list(band) for band in bands]
    width = len(rows[0])
    found = list(right)
    for i, row in enumerate(rows):
        first = max(0, i - width + 1)
        for j in range(first, i + 1):
            other, k = rows[j], i - j
            total = row[k]
            for n in range(max(first, j - width + 1), j):
                total -= row[i - n] * other[j - n]
            if j < i:
                row[k] = total / other[0]
            elif total > 0.0:
                row[0] = sqrt(total)
            else:
                raise OutsideLimits(f"row {i + 1} of {len(rows)}: something moves and nothing holds it")
        found[i] = (found[i] - sum(row[i - n] * found[n] for n in range(first, i))) / row[0]
    for i in range(len(rows) - 1, -1, -1):
        found[i] /= rows[i][0]
        for n in range(max(0, i - width + 1), i):
            found[n] -= rows[i][i - n] * found[i]
    return found
