"""Where the old lines lie beside a new strip."""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.forces.reading import line_ends
from groundsill.house.foundation import FoundationSegment
from groundsill.loadpath.case import LineCase
from groundsill.mechanics.plan import length
from groundsill.work.inner import InnerFoundationPiece

__all__ = ["Old", "old_of"]


@dataclass(frozen=True, slots=True)
class Old:
    """One old line that a new strip relieves: how far its middle lies from the strip's, inches, and what it stands on.

    Only stretches of foundation and sill beside the strip are told, each with its id.
    """

    id: str
    mark: str
    apart_in: float
    stems: tuple[tuple[str, FoundationSegment], ...]


def old_of(case: LineCase, piece: InnerFoundationPiece) -> tuple[Old, ...]:
    """The old lines that a strip relieves."""
    return case.reading.once(("beside", case.id), lambda: tuple(_old(case, id) for id in piece.relieves))


def _old(case: LineCase, id: str) -> Old:
    house = case.reading.house
    line = house.survey.underfloor.lines[id]
    (ax, ay), (bx, by) = line_ends(house, line)
    (cx, cy), (dx, dy) = line_ends(house, case.line)
    whole = length((ax, ay), (bx, by))
    ux, uy = (bx - ax) / whole, (by - ay) / whole
    apart = abs(((cx + dx) / 2 - ax) * uy - ((cy + dy) / 2 - ay) * ux)
    low, high = sorted((x - ax) * ux + (y - ay) * uy for x, y in ((cx, cy), (dx, dy)))
    stems = case.reading.on_line(house.survey.foundation.segments, id)
    beside = tuple((key, s) for key, s in stems if min(s.to_in, high) > max(s.from_in, low))
    return Old(id, line.mark or id, apart, beside)
