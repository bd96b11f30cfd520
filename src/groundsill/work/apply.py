"""A design laid on a survey: every piece of work in its place, or reported with what keeps it from it.

The survey is never changed. :func:`lay` gives the survey, the pieces that have a place in the order they are worked in,
and those that have none: their wall segment is gone, a vent or a pipe stands there, another piece lies there already.
Nothing is dropped without a word, so that a survey corrected on a second visit shows what of the design it upsets.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise
from types import MappingProxyType
from typing import Any, Final

from groundsill.house.building import Point
from groundsill.house.fits import stretch_words
from groundsill.house.plan import TOUCH_IN, line_length_in, steps_up, why_no_outline
from groundsill.house.survey import Survey, in_order
from groundsill.house.underfloor import Obstruction, Segment
from groundsill.work.document import House
from groundsill.work.pieces import (
    SPLICE_REACH_IN,
    BoltPiece,
    ConcretePiece,
    DrainagePiece,
    HoldDownPiece,
    PanelPiece,
    Piece,
    SideplatePiece,
    SillBlockingPiece,
    SoilPiece,
    SplicePiece,
    StrapPiece,
    TiePiece,
)
from groundsill.working.errors import BadSurvey, Fault

__all__ = ["Laid", "Misplaced", "apply", "lay"]

BOLTS_APART_IN: Final = 1.0

Why = Callable[["_Site", Any], str | None]


@dataclass(frozen=True, slots=True)
class Misplaced:
    """A piece of work that has no place: which, and what keeps it from its place."""

    id: str
    mark: str
    kind: str
    reason: str


@dataclass(frozen=True, slots=True)
class Laid:
    """A survey with work laid on it. ``pieces`` are those that have a place, by their order; none of them overlap."""

    survey: Survey
    pieces: tuple[tuple[str, Piece], ...]
    misplaced: tuple[Misplaced, ...]


def apply(house: House, alternative: str | None) -> Laid:
    """One alternative of a house laid on its survey; None lays nothing: the house as found.

    Raises:
        BadSurvey: the house has no such alternative.
    """
    if alternative is None:
        return Laid(house.survey, (), ())
    if alternative not in house.alternatives:
        known = ", ".join(sorted(house.alternatives)) or "there are none yet"
        raise BadSurvey((Fault("alternatives", f'"{alternative}"', f"the id of an alternative: {known}"),))
    return lay(house.survey, house.alternatives[alternative].pieces)


def lay(survey: Survey, pieces: Mapping[str, Piece]) -> Laid:
    """Pieces of work laid on a survey, in their order; where two want one place, the earlier has it."""
    site = _Site(survey, pieces)
    placed: list[tuple[str, Piece]] = []
    misplaced: list[Misplaced] = []
    for key, piece in in_order(pieces):
        why = _WHY[type(piece)](site, piece)
        if why is None:
            placed.append((key, piece))
            site.take(key, piece)
        else:
            misplaced.append(Misplaced(key, piece.mark, piece.kind, why))
    return Laid(survey, tuple(placed), tuple(misplaced))


class _Site:
    """The survey while pieces are laid on it: what stands on each line, and what has been laid so far."""

    def __init__(self, survey: Survey, pieces: Mapping[str, Piece]) -> None:
        self.survey = survey
        self.laid: dict[tuple[str, ...], list[tuple[str, Any]]] = {}
        concrete = [piece for piece in pieces.values() if isinstance(piece, ConcretePiece)]
        self.new_concrete = {piece.line for piece in concrete if _why_concrete(self, piece) is None}
        self._on_line: dict[tuple[str, str], list[tuple[str, Any]]] = {}
        under, base = survey.underfloor, survey.foundation
        kinds: dict[str, Mapping[str, Any]] = {
            "openings": under.openings, "obstructions": under.obstructions, "sills": under.sills, "bolts": under.bolts,
            "splices": under.splices, "segments": under.segments, "foundation": base.segments,
        }  # fmt: skip
        for kind, collection in kinds.items():
            for key, item in collection.items():
                self._on_line.setdefault((kind, item.line), []).append((key, item))

    def on_line(self, kind: str, line: str) -> list[tuple[str, Any]]:
        """What of one kind stands on a line: (id, object) pairs."""
        return self._on_line.get((kind, line), [])

    def take(self, key: str, piece: Piece) -> None:
        """Note that a piece has its place."""
        for place in _room_of(piece):
            self.laid.setdefault(place, []).append((key, piece))

    def in_room(self, piece: Piece) -> Iterator[tuple[str, Any]]:
        """Pieces laid already where this one would go, by kind and place but not yet by station."""
        for place in _room_of(piece):
            yield from self.laid.get(place, [])


def _room_of(piece: Piece) -> tuple[tuple[str, ...], ...]:
    """The rooms a piece takes up: two pieces of one room may not lie on each other."""
    if isinstance(piece, PanelPiece):
        return (("panel", piece.segment, piece.face),)
    if isinstance(piece, SillBlockingPiece):
        return (("sill blocking", piece.segment),)
    if isinstance(piece, BoltPiece):
        return (("bolt", piece.line),)
    return ()


# ---- What keeps a piece from its place ------------------------------------------------------------------------------


def _why_panel(site: _Site, piece: PanelPiece) -> str | None:
    """A panel needs studs from end to end, and nothing in front of them."""
    segment = site.survey.underfloor.segments.get(piece.segment)
    if segment is None:
        return f"its wall segment {piece.segment} is not in the survey"
    if segment.kind != "cripple wall":
        return f"{_named(piece.segment, segment)} is {segment.kind}: there are no studs to nail a panel to"
    outside = _why_outside_segment(piece, segment)
    if outside:
        return outside
    height = segment.height_in.value
    for id_, opening in site.on_line("openings", segment.line):
        if _share(piece, opening) and _in_height(opening.bottom_in, opening.top_in, height):
            return f"{opening.kind} {_named(id_, opening)} opens the wall {stretch_words(opening)}"
    for id_, thing in site.on_line("obstructions", segment.line):
        if _share(piece, thing) and _in_the_way(thing, piece.face, height):
            return f"{thing.kind} {_named(id_, thing)} is in the way {stretch_words(thing)}{_moving(thing)}"
    return _why_taken(site, piece)


def _why_blocking(site: _Site, piece: SillBlockingPiece) -> str | None:
    """Blocking lies on the sill of one wall segment."""
    segment = site.survey.underfloor.segments.get(piece.segment)
    if segment is None:
        return f"its wall segment {piece.segment} is not in the survey"
    return _why_outside_segment(piece, segment) or _why_taken(site, piece)


def _why_hold_down(site: _Site, piece: HoldDownPiece) -> str | None:
    """A hold-down stands in a wall segment that has studs."""
    segment = site.survey.underfloor.segments.get(piece.segment)
    if segment is None:
        return f"its wall segment {piece.segment} is not in the survey"
    if segment.kind != "cripple wall":
        return f"{_named(piece.segment, segment)} is {segment.kind}: there is no stud to hold down"
    if not segment.from_in - TOUCH_IN <= piece.station_in <= segment.to_in + TOUCH_IN:
        return f"station {piece.station_in:g} is not on {_named(piece.segment, segment)}, {stretch_words(segment)}"
    return None


def _why_bolt(site: _Site, piece: BoltPiece) -> str | None:
    """A bolt needs a sill to go through, something to be set in, and no other bolt at its place."""
    why = _why_station(site, piece) or _why_no_sill(site, piece) or _why_no_base(site, piece.line, piece.station_in)
    if why:
        return why
    old = [(id_, bolt.mark, bolt.station_in) for id_, bolt in site.on_line("bolts", piece.line)]
    new = [(id_, bolt.mark, bolt.station_in) for id_, bolt in site.in_room(piece)]
    for id_, mark, station in (*old, *new):
        if abs(station - piece.station_in) < BOLTS_APART_IN:
            return f"bolt {mark or id_} stands at station {station:g} already"
    return None


def _why_no_sill(site: _Site, piece: BoltPiece | SideplatePiece) -> str | None:
    """No sill piece at its station, once the line's sills are written down."""
    sills = site.on_line("sills", piece.line)
    if sills and not any(_on(sill, piece.station_in) for _, sill in sills):
        return f"no sill piece of {piece.line} lies at station {piece.station_in:g}"
    return None


def _why_splice(site: _Site, piece: SplicePiece) -> str | None:
    """A splice needs a joint of its member to tie: one on record within its reach, or a step where the plate ends."""
    why = _why_station(site, piece)
    if why:
        return why
    if piece.member == "sill":
        ends = sorted(sill.to_in for _, sill in site.on_line("sills", piece.line))
        joints = ends[:-1]  # where one piece ends and the next begins
    else:
        joints = [joint.station_in for _, joint in site.on_line("splices", piece.line)]
        walls = sorted((wall for _, wall in site.on_line("segments", piece.line)), key=lambda wall: wall.from_in)
        joints += [after.from_in for before, after in pairwise(walls) if steps_up(before, after)]
    nearest = min((abs(joint - piece.station_in) for joint in joints), default=None)
    if nearest is not None and nearest <= SPLICE_REACH_IN:
        return None
    told = "none is on record" if nearest is None else f"the nearest is {nearest:g} in. away"
    return (
        f"no joint of the {piece.member} of {piece.line} lies within {SPLICE_REACH_IN:g} in. of station "
        f"{piece.station_in:g}: {told}"
    )


def _why_side_plate(site: _Site, piece: SideplatePiece) -> str | None:
    """A side plate needs a sill to be screwed to and something to be anchored in."""
    return _why_station(site, piece) or _why_no_sill(site, piece) or _why_no_base(site, piece.line, piece.station_in)


def _why_concrete(site: _Site, piece: ConcretePiece) -> str | None:
    """New concrete follows a line or an outline of its own."""
    if piece.line is not None and piece.line not in site.survey.underfloor.lines:
        return f"its line {piece.line} is not in the survey"
    why = why_no_outline([_xy(point) for point in piece.outline]) if piece.outline else None
    return f"its outline has {why}" if why else None


def _why_stretch(site: _Site, piece: TiePiece | StrapPiece | SoilPiece) -> str | None:
    """A stretch of a line, from one station to another."""
    length = line_length_in(site.survey, piece.line)
    if length is None:
        return f"its line {piece.line} is not in the survey"
    if piece.to_in <= piece.from_in:
        return f"it ends at {piece.to_in:g}, before it begins at {piece.from_in:g}"
    if piece.to_in > length + TOUCH_IN:
        return f"it ends at {piece.to_in:g}, beyond the end of {piece.line} at {length:g}"
    return None


def _why_station(site: _Site, piece: BoltPiece | SplicePiece | SideplatePiece) -> str | None:
    """A station on a line."""
    length = line_length_in(site.survey, piece.line)
    if length is None:
        return f"its line {piece.line} is not in the survey"
    if piece.station_in > length + TOUCH_IN:
        return f"station {piece.station_in:g} is beyond the end of {piece.line} at {length:g}"
    return None


def _why_drainage(site: _Site, piece: DrainagePiece) -> str | None:
    return None


_WHY: Final[Mapping[type, Why]] = MappingProxyType(
    {
        PanelPiece: _why_panel,
        SillBlockingPiece: _why_blocking,
        BoltPiece: _why_bolt,
        TiePiece: _why_stretch,
        HoldDownPiece: _why_hold_down,
        SplicePiece: _why_splice,
        StrapPiece: _why_stretch,
        SideplatePiece: _why_side_plate,
        ConcretePiece: _why_concrete,
        DrainagePiece: _why_drainage,
        SoilPiece: _why_stretch,
    }
)


# ---- Small questions ------------------------------------------------------------------------------------------------


def _named(id_: str, thing: Any) -> str:
    """The mark on paper, or the id of a thing that has none."""
    return str(thing.mark or id_)


def _xy(point: Point) -> tuple[float, float]:
    return point.x_in, point.y_in


def _share(one: Any, other: Any) -> bool:
    """Whether two stretches of a line lie on each other by more than a tape's error."""
    return bool(one.from_in < other.to_in - TOUCH_IN and other.from_in < one.to_in - TOUCH_IN)


def _on(stretch: Any, station: float) -> bool:
    return bool(stretch.from_in - TOUCH_IN <= station <= stretch.to_in + TOUCH_IN)


def _in_height(bottom: float, top: float, height: float | None) -> bool:
    """Whether something stands between the sill and the top of the plate; where its heights are not told, it does."""
    if bottom == top:
        return bottom == 0 or 0 < bottom < (height or float("inf"))
    return top > 0 and (height is None or bottom < height)


def _in_the_way(thing: Obstruction, face: str, height: float | None) -> bool:
    """Whether an obstruction keeps a panel off its face of the wall."""
    return (
        thing.side in (face, "through")
        and thing.can_move.value is not True
        and _in_height(thing.bottom_in, thing.top_in, height)
    )


def _moving(thing: Obstruction) -> str:
    """What is known of moving it."""
    return " and cannot be moved" if thing.can_move.value is False else "; whether it can be moved is not known"


def _why_outside_segment(piece: PanelPiece | SillBlockingPiece, segment: Segment) -> str | None:
    """A piece that ends before it begins, or sticks out of its wall segment."""
    if piece.to_in <= piece.from_in:
        return f"it ends at {piece.to_in:g}, before it begins at {piece.from_in:g}"
    if piece.from_in < segment.from_in - TOUCH_IN or piece.to_in > segment.to_in + TOUCH_IN:
        return f"{stretch_words(piece)} is not all on {_named(piece.segment, segment)}, {stretch_words(segment)}"
    return None


def _why_taken(site: _Site, piece: PanelPiece | SillBlockingPiece) -> str | None:
    """Another piece of the same kind that lies here already."""
    for id_, other in site.in_room(piece):
        if _share(piece, other):
            return f"{other.kind} {_named(id_, other)} lies there already, {stretch_words(other)}"
    return None


def _why_no_base(site: _Site, line: str, station: float) -> str | None:
    """Nothing at this station that an anchor could be set in, once the line's foundation is written down."""
    segments = site.on_line("foundation", line)
    if not segments or line in site.new_concrete:
        return None
    here = [(id_, segment) for id_, segment in segments if _on(segment, station)]
    if not here:
        return f"no foundation stretch of {line} lies at station {station:g}"
    if all(segment.material == "none" for _, segment in here):
        return f"{_named(*here[0])} has no foundation to set an anchor in"
    return None
