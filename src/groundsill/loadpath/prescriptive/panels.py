"""The braced panels that count by the prescriptive way: thick enough, nailed as it asks, long enough for their studs.

Pieces that abut on one face are one panel. A low vent inside a panel takes its own length, or a stud space, off what
counts; at a taller opening the panel ends. Nothing is judged by force here.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from groundsill.forces.reading import Reading
from groundsill.house.underfloor import Line, Segment, VentOpening
from groundsill.loadpath.editions import panel_standard
from groundsill.loadpath.prescriptive.walls import TAPE_IN, Measures, sill_thickness_in, stud_height_in, wall_height_in
from groundsill.standards.iebc_2021.bracing import (
    counted_beside_vent,
    least_panel,
    table_a304_lengths,
    table_a304_shares,
    vent_height,
)
from groundsill.work.pieces import PanelPiece, Piece

__all__ = ["Panels", "in_panel", "least_panel_in", "panels_of", "room_in"]

_ROW = re.compile(r"(\d+/\d+)\D*?, (\d+)d")
_NAIL_D = 8
_ABUT_IN = 0.5
_STUD_SPACE_IN = 16.0  # where the spacing of studs was not measured


@dataclass(frozen=True, slots=True)
class Panels:
    """The panels of a line: those that count, as stations with their counted length, and the others in words.

    ``unsure`` are what may be panels but was not seen well enough; ``cut`` the openings at which a panel had to end.
    """

    counted: tuple[tuple[float, float, float], ...]
    left_out: tuple[str, ...]
    unsure: tuple[str, ...]
    cut: tuple[str, ...]
    inside: bool

    @property
    def length_in(self) -> float:
        """What counts of them in all, inches."""
        return sum(counted for _, _, counted in self.counted)


@dataclass(frozen=True, slots=True)
class _Stretch:
    """A stretch of sheathing on one face; the tallest studs and walls behind it, and the sill under it, inches."""

    from_in: float
    to_in: float
    face: str
    stud_in: float
    wall_in: float
    sill_in: float


@dataclass(frozen=True, slots=True)
class _Part:
    """A part of a panel between tall openings: its stations, the length that counts and the least that may."""

    from_in: float
    to_in: float
    counted_in: float
    least_in: float

    @property
    def long_enough(self) -> bool:
        """Whether it counts at all."""
        return self.counted_in >= self.least_in - TAPE_IN


def panels_of(reading: Reading, line: Line, measures: Measures, pieces: Sequence[tuple[str, Piece]]) -> Panels:
    """The panels of a line in one state of the house."""
    left_out: list[str] = []
    unsure: list[str] = []
    stretches: list[_Stretch] = []
    segments = dict(measures.walls)
    for key, piece in pieces:
        if isinstance(piece, PanelPiece) and piece.segment in segments:
            name = f"panel {piece.mark or key}"
            why = _why_not(piece.panel, piece.edge_spacing_in)
            if not why and piece.over != "the studs":
                why = f"over {piece.over}; the chapter says how panels go on studs and nothing of sheathing between"
            stretch = _stretch(reading, line, segments[piece.segment], piece.from_in, piece.to_in, piece.face)
            if why:
                left_out.append(f"{name}: {why}")
            elif stretch is None:
                unsure.append(f"{name}: the height of its wall is not known")
            else:
                stretches.append(stretch)
    stretches += _old(reading, line, measures, left_out, unsure)
    parts, cut = _parted(_joined(stretches), measures)
    left_out += [
        f"{part.to_in - part.from_in:.0f} in. from {part.from_in / 12:.1f} ft: {part.counted_in:.0f} in. count, "
        f"and its studs ask {part.least_in:.0f}"
        for part in parts
        if not part.long_enough
    ]
    counted = tuple((p.from_in, p.to_in, p.counted_in) for p in _once([part for part in parts if part.long_enough]))
    return Panels(counted, tuple(left_out), tuple(unsure), cut, any(s.face == "inside" for s in stretches))


def _stretch(reading: Reading, line: Line, segment: Segment, low: float, high: float, face: str) -> _Stretch | None:
    stud, wall = stud_height_in(line, segment), wall_height_in(reading, segment)
    if stud is None or wall is None:
        return None
    return _Stretch(low, high, face, stud, wall, sill_thickness_in(reading, segment.line, low, high))


def _why_not(row: str, edge_in: float | None) -> str:
    """Why a panel does not count by its thickness or nailing; empty when it does."""
    found = _ROW.search(row)
    lengths = table_a304_lengths()
    thick, nails = lengths.read("panel thickness, least"), lengths.read("nails at panel edges, most")
    if found is None or float(Fraction(found[1])) < float(thick) or int(found[2]) < _NAIL_D:
        return f"{row or 'no row of the panel table'}; 15/32 in. with 8d nails is the least"
    if edge_in is not None and edge_in > float(nails) + TAPE_IN:
        return f"edge nails {edge_in:g} in. apart; {float(nails):g} in. at most"
    return ""


def _old(
    reading: Reading, line: Line, measures: Measures, left_out: list[str], unsure: list[str]
) -> Iterator[_Stretch]:
    """Panels that the house has already; boards and plaster are none."""
    rows = panel_standard(reading.house).nominal().rows
    for key, segment in measures.walls:
        for face, sheathing in (("outside", segment.outside), ("inside", segment.inside)):
            if sheathing.material not in rows:
                continue
            name = f"old panel on {segment.mark or key}, {face}"
            spacing = sheathing.edge_spacing_in.value
            why = "decayed" if sheathing.condition.value == "decayed" else _why_not(sheathing.material, spacing)
            stretch = _stretch(reading, line, segment, segment.from_in, segment.to_in, face)
            if why:
                left_out.append(f"{name}: {why}")
            elif spacing is None or stretch is None:
                unsure.append(f"{name}: its nailing or its height is not known")
            else:
                yield stretch


def _joined(stretches: Iterable[_Stretch]) -> list[_Stretch]:
    """Stretches that abut on one face as one panel; the tallest studs behind it govern."""
    found: list[_Stretch] = []
    for each in sorted(stretches, key=lambda s: (s.face, s.from_in)):
        last = found[-1] if found else None
        if last is None or last.face != each.face or each.from_in > last.to_in + _ABUT_IN:
            found.append(each)
            continue
        found[-1] = _Stretch(
            last.from_in,
            max(last.to_in, each.to_in),
            last.face,
            max(last.stud_in, each.stud_in),
            max(last.wall_in, each.wall_in),
            max(last.sill_in, each.sill_in),
        )
    return found


def in_panel(opening: VentOpening, sill_in: float, wall_in: float) -> bool:
    """Whether an opening is low enough to stand inside a braced panel."""
    most = vent_height(wall_in, table_a304_shares().read("top of a vent in a panel over height of the wall, most"))
    return opening.top_in + sill_in <= float(most) + TAPE_IN


def _parted(stretches: Sequence[_Stretch], measures: Measures) -> tuple[list[_Part], tuple[str, ...]]:
    """Panels cut at tall openings, and those openings in words."""
    found: list[_Part] = []
    cut: list[str] = []
    for each in stretches:
        inside = [(id, o) for id, o in measures.openings if o.from_in < each.to_in and o.to_in > each.from_in]
        tall = [(id, o) for id, o in inside if not in_panel(o, each.sill_in, each.wall_in)]
        low = [o for id, o in inside if (id, o) not in tall]
        cut += [f"{o.kind} {o.mark or id}" for id, o in tall]
        least = least_panel_in(each.stud_in)
        for a, b in _clear([(each.from_in, each.to_in)], [o for _, o in tall]):
            found.append(_Part(a, b, _counted(a, b, low, measures), least))
    return found, tuple(dict.fromkeys(cut))


def least_panel_in(stud_in: float) -> float:
    """Least length of a panel on studs of a height, inches."""
    k = table_a304_shares().read("length of a braced panel over stud height, least")
    return 12 * float(least_panel(stud_in, k, table_a304_lengths().read("braced panel, least")))


def _counted(low: float, high: float, vents: Iterable[VentOpening], measures: Measures) -> float:
    """What counts of a stretch with low vents in it, inches."""
    counted, space = high - low, measures.stud_spacing_in or _STUD_SPACE_IN
    for vent in vents:
        if vent.from_in < high and vent.to_in > low:
            counted = float(counted_beside_vent(counted, vent.to_in - vent.from_in, space))
    return counted


def _clear(parts: Sequence[tuple[float, float]], openings: Iterable[VentOpening]) -> list[tuple[float, float]]:
    """Stretches less some openings."""
    left = list(parts)
    for o in openings:
        cut = ((a, b, max(a, o.to_in), min(b, o.from_in)) for a, b in left)
        pieces = [p for a, b, after, before in cut for p in ((a, before), (after, b))]
        left = sorted({(a, b) for a, b in pieces if b - a > TAPE_IN})
    return left


def _once(parts: Sequence[_Part]) -> list[_Part]:
    """Panels by their stations, a stretch sheathed on both faces counted once."""
    found: list[_Part] = []
    for part in sorted(parts, key=lambda p: (p.from_in, -p.to_in)):
        if not found or part.from_in >= found[-1].to_in - TAPE_IN:
            found.append(part)
    return found


def room_in(reading: Reading, measures: Measures, least_in: float) -> tuple[tuple[float, float, float], ...]:
    """The stretches of a line that can take panels, as stations with their counted length, inches.

    They lie between gaps and openings too tall for a panel, and are no shorter than the least panel.
    """
    runs: list[tuple[float, float, float]] = []
    for _, segment in measures.walls:
        wall = wall_height_in(reading, segment)
        if segment.kind != "cripple wall" or wall is None:
            continue
        sill = sill_thickness_in(reading, segment.line, segment.from_in, segment.to_in)
        tall = [o for _, o in measures.openings if not in_panel(o, sill, wall)]
        low = [o for _, o in measures.openings if in_panel(o, sill, wall)]
        for a, b in _clear([(segment.from_in, segment.to_in)], tall):
            counted = _counted(a, b, low, measures)
            if runs and abs(a - runs[-1][1]) <= _ABUT_IN:
                runs[-1] = (runs[-1][0], b, runs[-1][2] + counted)
            else:
                runs.append((a, b, counted))
    return tuple(run for run in runs if run[2] >= least_in - TAPE_IN)
