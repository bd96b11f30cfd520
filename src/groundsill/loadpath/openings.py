"""What openings leave of a sheathed stretch of wall: parts between them, and length that small vents take from a part.

An opening cuts a wall through. The boards of an old wall run on over and under a small vent, and the chapter for
cripple walls lets one stand within a braced length that is longer by as much: so a vent no taller than a quarter of
the wall takes its own length, or one stud bay where that is more, from the sheathed length, and cuts nothing. One that
lies above or below the wall, as in the stem, takes nothing.

A panel that is laid as a perforated wall goes round every opening instead, vents too.
"""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.forces.reading import Reading
from groundsill.house.underfloor import Segment, VentOpening
from groundsill.standards.iebc_2021.bracing import table_a304_shares

__all__ = ["VENTS", "Around", "Clear", "FullHeight", "clear_parts", "tallest_vent"]

VENTS = "IEBC 2021 A304.4.4"
_ROW = "top of a vent in a panel over height of the wall, most"


@dataclass(frozen=True, slots=True)
class Clear:
    """A part of a wall that no opening cuts, stations in inches, and what small vents take of its length."""

    from_in: float
    to_in: float
    lost_in: float = 0.0


@dataclass(frozen=True, slots=True)
class FullHeight:
    """A full-height part of a perforated wall, stations in inches, and how much of its length counts."""

    from_in: float
    to_in: float
    counted_in: float


@dataclass(frozen=True, slots=True)
class Around:
    """What the openings make of a perforated wall.

    ``parts`` are its full-height parts in order, ``counted_ft`` the sum of what counts of them, ``C_o`` the factor for
    the openings, ``words`` both as told on paper.
    """

    parts: tuple[FullHeight, ...]
    counted_ft: float
    C_o: float
    words: str

    def length_in(self, low: float, high: float) -> float:
        """How much full-height wall stands between two stations, inches."""
        return sum(max(0.0, min(part.to_in, high) - max(part.from_in, low)) for part in self.parts)


def tallest_vent() -> float:
    """How tall a vent may be, over the height of the wall, and cut nothing; recorded with its marks."""
    return table_a304_shares().read(_ROW, "ratio")


def clear_parts(reading: Reading, segment: Segment, low: float, high: float) -> tuple[Clear, ...]:
    """A stretch of a wall segment less the openings in it: each part between those that cut it stands for itself."""
    parts, small = [(low, high)], []
    for _, opening in reading.on_line(reading.house.survey.underfloor.openings, segment.line):
        lost = _lost_in(segment, opening)
        if lost == 0.0:
            continue
        if lost is not None and low <= opening.from_in and opening.to_in <= high:
            small.append((opening, lost))
            continue
        cut: list[tuple[float, float]] = []
        for a, b in parts:
            if opening.to_in <= a or opening.from_in >= b:
                cut.append((a, b))
            else:
                cut += [(a, min(b, opening.from_in)), (max(a, opening.to_in), b)]
        parts = [(a, b) for a, b in cut if b - a > 1e-6]
    return tuple(_less(a, b, small) for a, b in parts)


def _less(low: float, high: float, small: list[tuple[VentOpening, float]]) -> Clear:
    """A part less its small vents; they never take more than the part has."""
    taken = sum(lost for vent, lost in small if low <= vent.from_in and vent.to_in <= high)
    return Clear(low, high, min(taken, (high - low) * 0.999))


def _lost_in(segment: Segment, opening: VentOpening) -> float | None:
    """What an opening takes of the sheathed length without cutting the wall, inches; None where it cuts it through."""
    height, bay = segment.height_in.value, segment.stud.spacing_in.value
    if height is None or opening.top_in <= opening.bottom_in:
        return None  # its heights were not told
    tall = min(opening.top_in, height) - max(opening.bottom_in, 0.0)
    if tall <= 0:
        return 0.0
    if opening.kind != "vent" or bay is None or tall > float(tallest_vent()) * height:
        return None
    return max(opening.to_in - opening.from_in, bay)
