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
    """One old line that a new strip relieves: how near its middle lies to the strip's, inches, and what it stands on.

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
    start, end = line_ends(house, case.line)
    whole = length(start, end)
    ux, uy = (end[0] - start[0]) / whole, (end[1] - start[1]) / whole
    along, off = zip(
        *(
            ((x - start[0]) * ux + (y - start[1]) * uy, abs((x - start[0]) * uy - (y - start[1]) * ux))
            for x, y in line_ends(house, line)
        ),
        strict=True,
    )
    stems = case.reading.on_line(house.survey.foundation.segments, id)
    size = length(*line_ends(house, line))

    def beside(stem: FoundationSegment) -> bool:
        places: list[float] = [
            along[0] + (along[1] - along[0]) * station / size for station in (stem.from_in, stem.to_in)
        ]
        return stem.material != "none" and min(places) < whole and max(places) > 0

    return Old(id, line.mark or id, min(off), tuple((key, stem) for key, stem in stems if beside(stem)))
