"""The footing of a stretch against what the codes ask of a new one, and what the house presses on the ground there.

The published least sizes are for new work: an old footing below them is watched, not condemned. What it presses on the
ground, from the real weights, says more, and is held against what the code presumes of such ground.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from groundsill.findings.answer import Answer, at_least, at_most
from groundsill.findings.asking import Asking
from groundsill.findings.finding import Reason
from groundsill.forces.gravity import Load, TakeDown, take_down
from groundsill.forces.levels import levels_of, storeys_under
from groundsill.forces.reading import Reading
from groundsill.forces.seismic import load_rules
from groundsill.forces.weights import weight_items
from groundsill.house.fact import Fact
from groundsill.house.foundation import FoundationSegment
from groundsill.loadpath.footings import most_weight, parts_on
from groundsill.loadpath.ground import allowable_pressure, no_bearing
from groundsill.standards.ibc_2021.footings import least_footing
from groundsill.standards.irc_2012.tables import table_r403_1

__all__ = ["Footing"]

_DWELLING: Final = 2  # the residential code is for houses of one or two dwellings
_MOST_FLOORS: Final = 3  # as many as the tables of both codes go to
_WEAKEST_SOIL: Final = 1500.0  # the column of the weakest soil, where nobody knows the soil


@dataclass(frozen=True, slots=True)
class Footing:
    """The footing of one stretch of foundation, and the questions asked of it."""

    reading: Reading
    id: str
    segment: FoundationSegment

    @property
    def ask(self) -> Asking:
        """The book of footings."""
        return Asking(self.reading, "footings")

    def sizes(self) -> tuple[Reason, ...]:
        """Width, thickness and depth against what is asked of a new footing; none of them is a fault by itself."""
        floors, segment = self.floors(), self.segment
        frost = self.reading.house.survey.site.soil.frost_depth_in
        least = least_footing(float(floors))
        wide = self.residential_width() if self.reading.house.survey.building.families <= _DWELLING else least.width
        figures = {
            "floors": _floors(floors),
            "width": self.ask.shown(wide),
            "thickness": self.ask.shown(least.thickness),
        }
        has = {
            "has_width": self.ask.told(segment.footing_width_in),
            "has_thickness": self.ask.told(segment.footing_thickness_in),
            "has_depth": self.ask.told(segment.depth_in),
        }
        deep, frozen = self.ask.shown(least.depth), self.ask.told(frost, "an unknown depth")
        return (
            self.ask.asked("wide", at_least(segment.footing_width_in, wide), **figures, **has),
            self.ask.asked("thick", at_least(segment.footing_thickness_in, least.thickness), **figures, **has),
            self.ask.asked("deep", at_least(segment.depth_in, least.depth), depth=deep, **has),
            self.ask.asked("frost", self.below_frost(frost), frost=frozen, **has),
        )

    def pressing(self) -> Reason:
        """Whether the house presses no more on the ground than is presumed of it, over all the widths it may have."""
        allowed, found = self.allowed(), self.pressures()
        if allowed is None or found is None:
            return self.ask.asked("pressing", "cannot tell")
        answer = at_most(Fact(value=found[1], low=found[0], high=found[1]), allowed)
        least, most = (self.ask.shown(round(psf, -1), "pressure", "psf") for psf in found)
        told = most if least == most else f"{least} to {most}"
        return self.ask.asked("pressing", answer, psf=told, allowed=self.ask.shown(allowed, "pressure", "psf"))

    def hollow(self) -> tuple[Reason, ...]:
        """Whether soil is gone from under it; asked only where the surveyor noted a hollow."""
        seen = self.ask.noted(self.id, "undermining")
        return (self.ask.asked("hollow", "no", seen="; ".join(self.ask.in_words(seen))),) if seen else ()

    # ---- What is asked of a new one ----

    def floors(self) -> int:
        """How many floors its line holds up, no more than the tables go to."""
        line = self.reading.house.survey.underfloor.lines[self.segment.line]
        levels = levels_of(self.reading)
        over, more = {line.storey}, True
        while more:
            found = {id for id in levels if id not in over and over & set(storeys_under(self.reading, id))}
            over, more = over | found, bool(found)
        return min(max((levels.get(id, 0) for id in over), default=0) - levels.get(line.storey, 0) + 1, _MOST_FLOORS)

    def residential_width(self) -> float:
        """The width by the residential code, for the soil as presumed, or the weakest where nobody knows it."""
        allowed = self.allowed() or _WEAKEST_SOIL
        columns = [float(column) for column in table_r403_1().columns]
        soil = max((column for column in columns if column <= allowed), default=_WEAKEST_SOIL)
        return table_r403_1().read(f"{self.floors()}", soil)

    def below_frost(self, frost: Fact[float]) -> Answer:
        """Whether its bottom lies below the frost, over all that both may be."""
        ends = [frost.value if end is None else end for end in (frost.low, frost.high)]
        if frost.state == "absent":
            return "yes"
        if any(end is None for end in ends):
            return "cannot tell"
        answers = {at_least(self.segment.depth_in, end) for end in ends if end is not None}
        return answers.pop() if len(answers) == 1 else "cannot tell"

    # ---- What the house presses ----

    def allowed(self) -> float | None:
        """What the ground may carry, psf: by a report, else as the code presumes; None where neither says."""
        return None if no_bearing(self.reading) else allowable_pressure(self.reading)

    def pressures(self) -> tuple[float, float] | None:
        """Least and greatest pressure of the weights under it, psf, over the widths it may have; None if unmeasured."""
        width = self.segment.footing_width_in
        ends = [width.value if end is None else end for end in (width.low, width.high)]
        parts = parts_on(self.reading, self.segment.line)
        long = sum(part.length_ft for part in parts)
        own = [part for part in parts if part.segment_id == self.id]
        if not long or not own or not all(ends):
            return None
        load = _loads(self.reading).lines[self.segment.line]
        itself = most_weight(self.reading, own, "the foundation") / sum(part.length_ft for part in own)
        plf = self.heaviest(load) / long + itself
        found = [plf / (end / 12) for end in ends if end]
        return min(found), max(found)

    def heaviest(self, load: Load) -> float:
        """The heaviest of dead load with live, with snow, and with three quarters of both, lb."""
        effects, dead = load_rules(self.reading.house).effects, max(float(load.dead), 0.0)
        live, snow = max(float(load.live), 0.0), max(float(load.snow), 0.0)
        both = effects.asd_live_and_snow(dead, live, snow)
        return max(effects.asd_live(dead, live), effects.asd_snow(dead, snow), both)


def _loads(reading: Reading) -> TakeDown:
    return reading.once("gravity of the findings", lambda: take_down(reading, weight_items(reading)))


def _floors(count: int) -> str:
    return "one floor" if count == 1 else f"{count} floors"
