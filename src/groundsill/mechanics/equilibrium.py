"""Forces in lines that hold a floor in equilibrium: along x, along y, and in turning.

Each line can push or pull only along itself. Given a first guess of the forces (by tributary area, say) and a weight
for each line, :func:`balanced` finds the forces nearest to the guess that hold the load exactly. With no guess and the
lines' stiffnesses as weights this *is* the rigid floor; with a guess that already balances it changes nothing. Loads
that the lines cannot hold at all come back as a remainder: a line is missing.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

__all__ = ["Balance", "PlanLine", "Push", "balanced", "push_of"]


@dataclass(frozen=True, slots=True)
class PlanLine:
    """A line that resists along itself: any point of it and its direction as a unit vector."""

    id: str
    x: float
    y: float
    ux: float
    uy: float

    @property
    def column(self) -> tuple[float, float, float]:
        """What one pound along the line does: force along x, along y, and moment about the origin."""
        return (self.ux, self.uy, self.x * self.uy - self.y * self.ux)


@dataclass(frozen=True, slots=True)
class Push:
    """A load on the floor: forces along x and y and their moment about the origin."""

    x: float
    y: float
    moment: float


@dataclass(frozen=True, slots=True)
class Balance:
    """Force of each line, positive along its direction, and the part of the load that no line can hold.

    ``left_over`` is what is lacking of the load, its moment about the plan's origin as the load's own. ``reach`` is
    the greatest lever of a line about the middle of all.
    """

    forces: dict[str, float]
    left_over: Push
    reach: float = 0.0

    def holds(self, load: Push, tolerance: float = 1e-6) -> bool:
        """True when nothing to speak of is left over, measured against the load; one that only turns, at its reach."""
        turning = abs(load.moment) / self.reach if self.reach else 0.0
        force = max(abs(load.x), abs(load.y)) or max(turning, 1e-12)
        moment = max(abs(load.moment), force)
        left = self.left_over
        return max(abs(left.x), abs(left.y)) <= tolerance * force and abs(left.moment) <= tolerance * moment * 10


def push_of(forces: Mapping[str, float], lines: Sequence[PlanLine]) -> Push:
    """What a set of line forces comes to."""
    x = y = moment = 0.0
    for line in lines:
        force = forces.get(line.id, 0.0)
        a, b, c = line.column
        x += force * a
        y += force * b
        moment += force * c
    return Push(x, y, moment)


def balanced(
    guess: Mapping[str, float], weights: Mapping[str, float], lines: Sequence[PlanLine], load: Push
) -> Balance:
    """The line forces nearest to ``guess`` that hold ``load``.

    Nearest is by the sum of squared changes, each over the line's weight: a line of twice the weight takes twice the
    change, and one without weight keeps its guess. Inside, moments are taken about the weighted middle of the lines,
    so that the answer is as exact for a plan drawn far from its origin as for one drawn at it.
    """
    chosen = [line for line in lines if weights.get(line.id, 0.0) > 0]
    total = sum(weights[line.id] for line in chosen)
    if total <= 0:
        kept = {line.id: guess.get(line.id, 0.0) for line in lines}
        held = push_of(kept, lines)
        return Balance(kept, Push(load.x - held.x, load.y - held.y, load.moment - held.moment))
    cx = sum(weights[line.id] * line.x for line in chosen) / total
    cy = sum(weights[line.id] * line.y for line in chosen) / total
    moved = [PlanLine(line.id, line.x - cx, line.y - cy, line.ux, line.uy) for line in lines]
    wanted = Push(load.x, load.y, load.moment - cx * load.y + cy * load.x)
    have = push_of(guess, moved)
    short = [wanted.x - have.x, wanted.y - have.y, wanted.moment - have.moment]
    heavy = [(line.id, weights[line.id], line.column) for line in moved if weights.get(line.id, 0.0) > 0]
    # turning in units of its greatest lever, so pivots compare
    scale = max(abs(column[2]) for _, _, column in heavy) or 1.0
    scaled = [(id, weight, (a, b, c / scale)) for id, weight, (a, b, c) in heavy]
    matrix = [[sum(weight * column[i] * column[j] for _, weight, column in scaled) for j in range(3)] for i in range(3)]
    answer = _solved(matrix, [short[0], short[1], short[2] / scale])
    forces = {line.id: guess.get(line.id, 0.0) for line in lines}
    for id, weight, column in scaled:
        forces[id] += weight * sum(a * b for a, b in zip(column, answer, strict=True))
    got = push_of(forces, moved)
    x, y = wanted.x - got.x, wanted.y - got.y
    return Balance(forces, Push(x, y, wanted.moment - got.moment + cx * y - cy * x), scale)


def _solved(matrix: list[list[float]], right: list[float]) -> list[float]:
    """Solve three equations with full pivoting; what has no pivot is left at zero, so a singular set still answers."""
    rows = [[*row, value] for row, value in zip(matrix, right, strict=True)]
    size = max((abs(v) for row in matrix for v in row), default=0.0)
    order = [0, 1, 2]
    done = 0
    for step in range(3):
        pivot, r, c = max((abs(rows[i][order[j]]), i, j) for i in range(step, 3) for j in range(step, 3))
        if pivot <= 1e-10 * size:
            break
        rows[step], rows[r] = rows[r], rows[step]
        order[step], order[c] = order[c], order[step]
        for i in range(3):
            if i != step:
                by = rows[i][order[step]] / rows[step][order[step]]
                rows[i] = [a - by * b for a, b in zip(rows[i], rows[step], strict=True)]
        done = step + 1
    found = [0.0, 0.0, 0.0]
    for step in range(done):
        found[order[step]] = rows[step][3] / rows[step][order[step]]
    return found
