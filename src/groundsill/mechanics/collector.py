"""The force in a collector: a line fed evenly by the floor along its length, drained where walls stand.

In: the line's length, the force that comes in evenly, and the stretches that take it out. Out: the axial force at any
station, by equilibrium alone. Zero at both ends when what goes out equals what comes in.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

__all__ = ["Drain", "axial"]


@dataclass(frozen=True, slots=True)
class Drain:
    """A stretch that takes ``force`` out of the collector evenly between two stations."""

    start: float
    end: float
    force: float


def axial(length: float, force: float, drains: Sequence[Drain], station: float) -> float:
    """Axial force at a station: what the floor has brought so far, less what walls have taken so far."""
    total = force * station / length
    for drain in drains:
        span = drain.end - drain.start
        done = min(max(station - drain.start, 0.0), span)
        total -= drain.force * (done / span if span > 0 else float(station >= drain.start))
    return total
