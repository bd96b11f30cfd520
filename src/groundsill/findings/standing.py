"""How a leaning stretch of foundation stands on its base, over all that its measures may be.

The load on top comes from the gravity take-down of the house at its best values: dead, live and snow together, spread
along the line. Height, lean and widths are taken at both ends of what the survey says of them; where an end is missing
nothing is assumed, and the answer is that nobody can tell.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import product
from typing import Final

from groundsill.findings.answer import Answer
from groundsill.forces.gravity import TakeDown, take_down
from groundsill.forces.reading import Reading, line_length_in
from groundsill.forces.weights import weight_items
from groundsill.house.fact import Fact
from groundsill.house.foundation import FoundationSegment
from groundsill.house.settle import prepare
from groundsill.standards.common_practice import table_other_densities
from groundsill.standards.statics.lean import kern_reach, lean_eccentricity, lean_shift, lean_thrust
from groundsill.standards.statics.soil import contact_length, pressure_beyond_kern, pressure_in_kern
from groundsill.working.errors import GroundsillError

__all__ = ["Ends", "Standing", "ends_of", "over_all", "standing_of", "top_load_plf"]

Ends = tuple[float, float]
_WEIGHS: Final = {"poured concrete": "concrete", "brick": "brick masonry", "stone": "brick masonry"}
_ONE_FOOT: Final = 1.0


@dataclass(frozen=True, slots=True)
class Standing:
    """Where the load of a leaning stem comes down: each figure at the least and the most that it may be.

    ``shift`` how far the top has moved (in); ``off`` from the middle of the base (in); ``kern`` a sixth of the base
    (in); ``base`` its width (in); ``pressure`` under the edge it leans to (psf; infinite where the footing turns over);
    ``thrust`` of the load to the side (plf).
    """

    shift: Ends
    off: Ends
    kern: Ends
    base: Ends
    pressure: Ends
    thrust: Ends
    inside: Answer


def ends_of(fact: Fact[float]) -> Ends | None:
    """The least and the most that a figure may be; None where nobody gave either."""
    low, high = (fact.value if end is None else end for end in (fact.low, fact.high))
    return None if low is None or high is None else (low, high)


def over_all(figures: Iterable[float]) -> Ends:
    """The least and the most of some figures."""
    found = tuple(figures)
    return min(found), max(found)


def top_load_plf(reading: Reading, line: str) -> float | None:
    """Dead, live and snow load on a foot of a line; None where the take-down cannot be made, or snow is not known."""
    gravity = reading.once("gravity for findings", lambda: _gravity(reading))
    load = None if gravity is None else gravity.lines.get(line)
    length = line_length_in(reading.house, reading.house.survey.underfloor.lines[line]) / 12
    if load is None or length <= 0:
        return None
    if reading.house.survey.site.snow_psf.value is None and load.roof_ft2 > 0:
        return None
    return max(float(load.dead) + float(load.live) + float(load.snow), 0.0) / length


def _gravity(reading: Reading) -> TakeDown | None:
    """The take-down of the house at its best values; None where the survey does not reach so far."""
    best = prepare(reading.house).best
    settled = Reading(best.house, best.marks)
    try:
        return take_down(settled, weight_items(settled))
    except GroundsillError:
        return None


def standing_of(segment: FoundationSegment, load_plf: float) -> Standing | None:
    """How a leaning stretch stands; None where its lean, its height, a width or its material is not known."""
    lean, height = ends_of(segment.lean_in_per_ft), height_ends(segment)
    top, base = ends_of(segment.top_width_in), base_ends(segment)
    if lean is None or height is None or top is None or base is None or segment.material not in _WEIGHS:
        return None
    pcf = table_other_densities().read(_WEIGHS[segment.material])
    leans = {abs(end) for end in lean} | ({0.0} if lean[0] <= 0 <= lean[1] else set())
    corners = [_Corner(s, h / 12, t, max(b, t), load_plf, pcf) for s, h, t, b in product(leans, height, top, base)]
    insides = {corner.off <= corner.kern for corner in corners}
    return Standing(
        shift=over_all(c.shift for c in corners),
        off=over_all(c.off for c in corners),
        kern=over_all(c.kern for c in corners),
        base=over_all(c.base_in for c in corners),
        pressure=over_all(c.pressure for c in corners),
        thrust=over_all(lean_thrust(c.lean, load_plf) for c in corners),
        inside="cannot tell" if len(insides) == 2 else "yes" if True in insides else "no",
    )


def height_ends(segment: FoundationSegment) -> Ends | None:
    """The least and the most height of the concrete over the bottom of its footing, inches."""
    above, below = ends_of(segment.above_outside_soil_in), ends_of(segment.depth_in)
    if above is None or below is None or above[0] + below[0] <= 0:
        return None
    return above[0] + below[0], above[1] + below[1]


def base_ends(segment: FoundationSegment) -> Ends | None:
    """The least and the most width of its base: of the footing, or of the stem where there is none."""
    if segment.footing_width_in.state == "absent":
        return ends_of(segment.top_width_in)
    return ends_of(segment.footing_width_in)


@dataclass(frozen=True, slots=True)
class _Corner:
    """One case of all that may be: lean (in/ft), height (ft), widths (in), load on top (plf), weight of it (pcf)."""

    lean: float
    height_ft: float
    top_in: float
    base_in: float
    load_plf: float
    pcf: float

    @property
    def weight_plf(self) -> float:
        """The stem's own weight, as a wall of its top's width: a wider footing would only hold it better."""
        return self.pcf * self.top_in / 12 * self.height_ft

    @property
    def shift(self) -> float:
        """How far the top has moved, in."""
        return lean_shift(self.lean, self.height_ft)

    @property
    def off(self) -> float:
        """From the middle of the base to where the load comes down, in."""
        return lean_eccentricity(self.shift, self.load_plf, self.weight_plf, self.height_ft, self.height_ft / 2)

    @property
    def kern(self) -> float:
        """Half of the middle third, in."""
        return kern_reach(self.base_in)

    @property
    def pressure(self) -> float:
        """Under the edge it leans to, psf."""
        load, wide, e = self.load_plf + self.weight_plf, self.base_in / 12, self.off / 12
        if 2 * e >= wide:
            return float("inf")
        if 6 * e <= wide:
            return pressure_in_kern(load, _ONE_FOOT, wide, e)
        return pressure_beyond_kern(load, _ONE_FOOT, contact_length(wide, e))
