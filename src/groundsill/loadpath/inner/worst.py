"""The answers of a strip on its soil over all that was tried, and the worst of them."""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.loadpath.turning import Way
from groundsill.mechanics.beam_on_soil import Peak, Settled

__all__ = ["Bent", "Worst"]


@dataclass(frozen=True, slots=True)
class Bent:
    """The strip at rest under one combination, pushed one way."""

    name: str
    way: Way
    settled: Settled


@dataclass(frozen=True, slots=True)
class Worst:
    """Every rest that was found; none where one of them turns the strip over, and ``turned`` says how."""

    every: tuple[Bent, ...]
    turned: str = ""

    def sagging(self) -> Peak:
        """The greatest moment with tension below, lb-in."""
        return max((b.settled.sagging for b in self.every), key=lambda peak: peak.value)

    def hogging(self) -> Peak:
        """The greatest moment with tension above, lb-in."""
        return max((b.settled.hogging for b in self.every), key=lambda peak: peak.value)

    def near_ends(self, length_in: float, reach_in: float, sagging: bool) -> float:
        """The greatest moment of one sense within a distance of either end, lb-in."""
        sign = 1.0 if sagging else -1.0
        return max(
            (
                sign * moment
                for b in self.every
                for s in b.settled.stations
                if min(s.station_in, length_in - s.station_in) <= reach_in
                for moment in (s.moment_left_lb_in, s.moment_right_lb_in)
            ),
            default=0.0,
        )

    def shear(self) -> Peak:
        """The greatest shear, lb."""
        return max((b.settled.shear for b in self.every), key=lambda peak: peak.value)
