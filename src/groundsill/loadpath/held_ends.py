"""Which hold-downs hold down an end of a braced part: its own, and never those of the part beside it.

Where one panel's end is lifted, the next one's beginning is pressed down: a hold-down there pulls at nothing. Only on a
post that both panels are nailed to does one hold-down serve either of them.
"""

from __future__ import annotations

from groundsill.loadpath.case import Brace, LineCase
from groundsill.loadpath.turning import Way
from groundsill.work.pieces import HoldDownPiece

__all__ = ["beyond_end", "hold_downs_at"]

_NEAR_END_IN = 12.0
_WIDEST_POST_IN = 7.5  # an 8x post: panels farther apart are not nailed to one


def hold_downs_at(case: LineCase, brace: Brace, way: Way) -> list[HoldDownPiece]:
    """The hold-downs at the end that is pulled: inside the segment, or on a post that it shares with its neighbour.

    What stands beyond that end holds down another segment, whose own end is being pressed down there.
    """
    return [p for p in _near_end(case, brace, way) if _holds(case, brace, p)]


def beyond_end(case: LineCase, brace: Brace, way: Way) -> list[HoldDownPiece]:
    """The hold-downs about the end that is pulled that stand beyond it and do not hold this part."""
    return [p for p in _near_end(case, brace, way) if not _holds(case, brace, p)]


def _near_end(case: LineCase, brace: Brace, way: Way) -> list[HoldDownPiece]:
    """The hold-downs about the end that is pulled, on either side of it, nearer to it than to the other end."""
    pulled, pressed = (brace.from_in, brace.to_in) if way == "+" else (brace.to_in, brace.from_in)
    return [
        p
        for _, p in case.of_kind(HoldDownPiece)
        if isinstance(p, HoldDownPiece)
        and p.segment == brace.segment_id
        and abs(p.station_in - pulled) <= min(_NEAR_END_IN, abs(p.station_in - pressed))
    ]


def _holds(case: LineCase, brace: Brace, piece: HoldDownPiece) -> bool:
    if brace.from_in <= piece.station_in <= brace.to_in:
        return True
    return piece.shared_post and any(
        other.panel is not None and 0.0 <= gap <= _WIDEST_POST_IN
        for other in case.braces
        for gap in (other.from_in - brace.to_in, brace.from_in - other.to_in)
        if other.from_in - gap <= piece.station_in <= other.to_in + gap
    )
