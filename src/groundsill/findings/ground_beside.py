"""The ground beside a stretch of foundation: what of it may have turned the stretch, cause by cause.

Each ``by_…`` answers whether one cause is at work, with the words that say what tells of it. What the survey does not
record was not seen: trees, hollows and stains are answered no where none is named; slopes, fill, footings and added
load stay open until somebody says.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from groundsill.findings.answer import Answer, holds
from groundsill.findings.standing import ends_of
from groundsill.forces.levels import outline_of
from groundsill.forces.reading import XY, Reading, line_ends
from groundsill.house.foundation import FoundationSegment
from groundsill.house.record import Observation
from groundsill.mechanics.plan import inside, length
from groundsill.working.measure import show

__all__ = ["Beside"]

Told = tuple[Answer, str]

_NEAR_IN: Final = 72.0  # what was seen within six feet of a stretch was seen at it; our choice
_STEP_IN: Final = 6.0  # soil that stands so much higher on one side is held back; our choice
_STEEP: Final = 1 / 3  # IBC 2021 1808.7: steeper ground is a slope beside a building
_GENTLE: Final = 1 / 10  # ground flatter than this does not creep; our choice
_DOWNHILL_DEG: Final = 60.0  # a lean within this of the way the ground falls is downhill; our choice
_WET: Final = ("damp", "drainage")


@dataclass(frozen=True, slots=True)
class Beside:
    """A stretch of foundation with what the survey says of the ground and the things beside it."""

    reading: Reading
    id: str
    segment: FoundationSegment

    # ---- Causes ----

    def water(self) -> Told:
        """Whether the ground along it is wet, on any side."""
        side = self.segment.wet_side.value
        if side is not None and not self.segment.wet_side.uncertain:
            how = f" ({self.segment.wet_side.how})" if self.segment.wet_side.how else ""
            return ("no", "") if side == "neither" else ("yes", f"wet {_SIDES[side]}{how}")
        seen = list(self.observed(*_WET))
        return ("yes", "; ".join(seen)) if seen else ("cannot tell", "")

    def by_wet(self) -> Told:
        """Whether one side of it is wet: both alike turn nothing."""
        if self.segment.wet_side.value == "both" and not self.segment.wet_side.uncertain:
            return "no", ""
        return self.water()

    def by_retained(self) -> Told:
        """Whether soil stands higher on the side it leans away from."""
        outside, inner = ends_of(self.segment.above_outside_soil_in), ends_of(self.segment.above_inside_soil_in)
        lean = ends_of(self.segment.lean_in_per_ft)
        if outside is None or inner is None or lean is None:
            return "cannot tell", ""
        low, high = inner[0] - outside[1], inner[1] - outside[0]  # how much higher the soil stands outside
        if lean[0] >= 0:
            low, high = -high, -low
        elif lean[1] > 0:
            return "cannot tell", ""
        words = show(low, "length", "in", self.reading.house.units)
        return ("yes", words) if low >= _STEP_IN else ("no", "") if high < _STEP_IN else ("cannot tell", "")

    def by_creep(self) -> Told:
        """Whether the ground itself may move: a landslide on a map, a steep slope that it leans down."""
        site = self.reading.house.survey.site
        flags = [holds(f.present) for _, f in self.reading.in_order(site.flags) if f.kind == "landslide"]
        if "yes" in flags:
            return "yes", "a landslide is mapped here"
        slope = ends_of(site.slope_rise_per_run)
        if slope is not None and slope[1] <= _GENTLE and flags and set(flags) == {"no"}:
            return "no", ""
        downhill = self.downhill()
        if slope is not None and slope[0] > _STEEP and downhill:
            return "yes", "it leans down a slope steeper than one in three"
        if flags and set(flags) == {"no"} and (downhill is False or (slope is not None and slope[1] <= _STEEP)):
            return "no", ""
        return "cannot tell", ""

    def by_fill(self) -> Told:
        """Whether it stands on fill."""
        site = self.reading.house.survey.site
        answers = [holds(site.soil.fill)]
        answers += [holds(f.present) for _, f in self.reading.in_order(site.flags) if f.kind == "fill"]
        return ("yes" if "yes" in answers else "no" if answers[0] == "no" else "cannot tell"), ""

    def by_roots(self) -> Told:
        """Whether a tree stands at it."""
        for _, thing in self.reading.on_line(self.reading.house.survey.underfloor.obstructions, self.segment.line):
            reaches = thing.from_in - _NEAR_IN < self.segment.to_in and self.segment.from_in < thing.to_in + _NEAR_IN
            if thing.kind == "tree" and reaches:
                return "yes", thing.note
        return "no", ""

    def by_undermined(self) -> Told:
        """Whether ground is gone from under it."""
        seen = list(self.observed("undermining"))
        return ("yes", "; ".join(seen)) if seen else ("no", "")

    def by_footing(self) -> Told:
        """Whether it stands on no footing of its own."""
        if self.segment.footing_width_in.state == "absent":
            return "yes", ""
        wide, top = ends_of(self.segment.footing_width_in), ends_of(self.segment.top_width_in)
        if wide is None or top is None:
            return "cannot tell", ""
        return ("no" if wide[0] > top[1] else "yes" if wide[1] <= top[0] else "cannot tell"), ""

    def by_added(self) -> Told:
        """Whether load was added over it since it was built."""
        return holds(self.segment.load_added), ""

    # ---- What the answers stand on ----

    def observed(self, *kinds: str, near_in: float = _NEAR_IN) -> Iterator[str]:
        """What was seen of some kinds on it, or so near to it, in the words of the survey."""
        for _, seen in self.reading.in_order(self.reading.house.survey.observations):
            if seen.kind in kinds and self.at_it(seen, near_in):
                yield f"{seen.mark} {seen.words}".strip().rstrip(".") or seen.kind

    def at_it(self, seen: Observation, near_in: float) -> bool:
        """Whether something was seen on this stretch, on its line beside it, or near it on the plan.

        What has a length reaches half of it to either side of its station.
        """
        if seen.on == self.id:
            return True
        if seen.at is not None:
            a, b = self.ends()
            return _distance((seen.at.x_in, seen.at.y_in), a, b) <= near_in
        under = self.reading.house.survey.underfloor
        named = seen.on or ""
        things = under.sills.get(named) or under.segments.get(named)
        if (things.line if things is not None else named) != self.segment.line or seen.station_in is None:
            return False
        reach = near_in + (seen.length_in.value or 0.0) / 2
        return self.segment.from_in - reach <= seen.station_in <= self.segment.to_in + reach

    def readings(self) -> Iterator[str]:
        """Plumb marks on it: from when to when they were read, and what they said."""
        for _, monitor in self.reading.in_order(self.reading.house.survey.monitors):
            if monitor.kind == "plumb" and monitor.on == self.id and monitor.readings:
                first, last = monitor.readings[0], monitor.readings[-1]
                said = f"{first.value:g} on {first.when}, {last.value:g} {monitor.unit} on {last.when}"
                yield f"plumb mark {monitor.mark}: {said}, {len(monitor.readings)} readings"

    def ends(self) -> tuple[XY, XY]:
        """The two ends of the stretch on the plan, inches."""
        a, b = line_ends(self.reading.house, self.reading.house.survey.underfloor.lines[self.segment.line])
        whole = length(a, b)
        return _along(a, b, self.segment.from_in, whole), _along(a, b, self.segment.to_in, whole)

    def downhill(self) -> bool | None:
        """Whether it leans the way the ground falls; None where that cannot be told."""
        falls, lean = self.reading.house.survey.site.slope_down_deg, ends_of(self.segment.lean_in_per_ft)
        outward = self.outward_deg()
        if falls is None or lean is None or outward is None or lean[0] < 0 < lean[1]:
            return None
        way = outward if lean[0] >= 0 else outward + 180
        return abs((way - falls + 180) % 360 - 180) <= _DOWNHILL_DEG

    def outward_deg(self) -> float | None:
        """The way out of the house at this stretch, degrees; None where the house lies on both sides or on neither."""
        (ax, ay), (bx, by) = a, b = self.ends()
        whole = length(a, b)
        storeys = self.reading.house.survey.building.storeys
        line = self.reading.house.survey.underfloor.lines[self.segment.line]
        if whole == 0 or line.storey not in storeys:
            return None
        outline = outline_of(self.reading, storeys[line.storey].outline)
        left = (-(by - ay) / whole, (bx - ax) / whole)
        middle = ((ax + bx) / 2, (ay + by) / 2)
        sides = [inside((middle[0] + s * left[0] * 12, middle[1] + s * left[1] * 12), outline) for s in (1, -1)]
        if sides[0] == sides[1]:
            return None
        out = -1 if sides[0] else 1
        return math.degrees(math.atan2(out * left[1], out * left[0]))


_SIDES: Final = {"outside": "outside", "inside": "inside", "both": "on both sides"}


def _along(a: XY, b: XY, station: float, whole: float) -> XY:
    part = station / whole if whole else 0.0
    return a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part


def _distance(point: XY, a: XY, b: XY) -> float:
    """From a point to a stretch on the plan, inches."""
    whole = length(a, b)
    along = ((point[0] - a[0]) * (b[0] - a[0]) + (point[1] - a[1]) * (b[1] - a[1])) / whole**2 if whole else 0.0
    part = min(max(along, 0.0), 1.0)
    return length(point, (a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part))
