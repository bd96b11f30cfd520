"""Where the old lines lie beside a new strip."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from groundsill.forces.reading import line_ends
from groundsill.house.foundation import FoundationSegment
from groundsill.loadpath.case import LineCase
from groundsill.loadpath.footings import near
from groundsill.mechanics.plan import length
from groundsill.work.inner import InnerFoundationPiece

__all__ = ["Old", "ends_at", "old_of"]

_FAR_IN = 120.0  # no trench that may be dug here reaches farther with its slope


@dataclass(frozen=True, slots=True)
class Old:
    """One old line that a new strip relieves: how near its middle lies to the strip's, inches, and what it stands on.

    Only stretches of foundation beside the strip are told, each with its id. ``along`` is false for an old line that an
    end of the strip runs toward: it lies so far from that end.
    """

    id: str
    mark: str
    apart_in: float
    stems: tuple[tuple[str, FoundationSegment], ...]
    along: bool = True


def old_of(case: LineCase, piece: InnerFoundationPiece) -> tuple[Old, ...]:
    """The old lines that a strip relieves."""
    return case.reading.once(("beside", case.id), lambda: tuple(_old(case, id) for id in piece.relieves))


def ends_at(case: LineCase, piece: InnerFoundationPiece) -> tuple[Old, ...]:
    """The other old lines whose foundation lies near an end of a strip, or is crossed by it."""
    return case.reading.once(("near the ends", case.id), lambda: tuple(_toward(case, piece)))


def _toward(case: LineCase, piece: InnerFoundationPiece) -> Iterator[Old]:
    house = case.reading.house
    ends = line_ends(house, case.line)
    for id, line in case.reading.in_order(house.survey.underfloor.lines):
        if id in piece.relieves or id in case.reading.inner:
            continue
        a, b = line_ends(house, line)
        whole = length(a, b)
        stems = []
        for key, stem in case.reading.on_line(house.survey.foundation.segments, id):
            low, high = (
                (a[0] + (b[0] - a[0]) * s / whole, a[1] + (b[1] - a[1]) * s / whole) for s in (stem.from_in, stem.to_in)
            )
            away = min(*(near(end, low, high) for end in ends), *(near(end, *ends) for end in (low, high)))
            if stem.material != "none" and away <= _FAR_IN:
                stems.append((away, key, stem))
        if stems:
            yield Old(id, line.mark or id, min(away for away, _, _ in stems), tuple((k, s) for _, k, s in stems), False)


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
