"""How a leaning stretch of foundation stands on its base, over all that its measures may be.

The load on top comes from the gravity take-down of the house at its best values: dead, live and snow together, spread
along the line. Height, lean and widths are taken at both ends of what the survey says of them; where an end is missing
nothing is assumed, and the answer is that nobody can tell. Soil that stands higher on the side it leans away from is
counted both ways: with the floor holding the stem's top, so that weights alone move the load, and with nothing holding
it.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import product
from typing import Final

from groundsill.findings.answer import Answer
from groundsill.findings.worked import lines_of_sheet
from groundsill.forces.gravity import TakeDown, take_down
from groundsill.forces.reading import Reading, line_length_in
from groundsill.forces.weights import weight_items
from groundsill.house.fact import Fact
from groundsill.house.foundation import FoundationSegment
from groundsill.house.settle import prepare
from groundsill.loadpath.ground import shrinks
from groundsill.standards.common_practice import table_other_densities
from groundsill.standards.ibc_2021.earth import table_1610_1
from groundsill.standards.statics.earth import earth_moment
from groundsill.standards.statics.lean import (
    kern_reach,
    lean_eccentricity,
    lean_shift,
    lean_thrust,
    pushed_eccentricity,
)
from groundsill.standards.statics.soil import contact_length, pressure_beyond_kern, pressure_in_kern
from groundsill.working.errors import GroundsillError
from groundsill.working.sheet import Sheet

__all__ = ["Ends", "Standing", "active_pressure", "ends_of", "height_ends", "over_all", "standing_of", "top_load_plf"]

Ends = tuple[float, float]
_WEIGHS: Final = {"poured concrete": "concrete", "brick": "brick masonry", "stone": "brick masonry"}
_ONE_FOOT: Final = 1.0
_GROUPS: Final = {
    "gravel": ("GW", "GP", "GM", "GC"), "sand": ("SW", "SP", "SM", "SC"), "clay": ("ML", "CL"),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Standing:
    """Where the load of a leaning stem comes down: each figure at the least and the most that it may be.

    ``shift`` how far the top has moved (in); ``off`` from the middle of the base (in); ``kern`` a sixth of the base
    (in); ``base`` its width (in); ``pressure`` under the edge it leans to (psf; infinite where the footing turns over);
    ``thrust`` of the load to the side (plf); ``working`` the worst case line by line.
    """

    shift: Ends
    off: Ends
    kern: Ends
    base: Ends
    pressure: Ends
    thrust: Ends
    inside: Answer
    working: tuple[str, ...]


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


def standing_of(reading: Reading, segment: FoundationSegment, load_plf: float) -> Standing | None:
    """How a leaning stretch stands; None where its lean, height, a width, its material or what pushes is not known."""
    lean, height = ends_of(segment.lean_in_per_ft), height_ends(segment)
    top, base = ends_of(segment.top_width_in), base_ends(segment)
    if lean is None or height is None or top is None or base is None or segment.material not in _WEIGHS:
        return None
    pushed = _push_lb_in(reading, segment, lean, height[1])
    if pushed is None:
        return None
    pcf = table_other_densities().read(_WEIGHS[segment.material])
    leans = {abs(end) for end in lean} | ({0.0} if lean[0] <= 0 <= lean[1] else set())
    corners = [
        _Corner(s, h / 12, t, max(b, t), load_plf, pcf, M)
        for s, h, t, b, M in product(leans, height, top, base, {0.0, pushed})
    ]
    insides = {corner.off <= corner.kern for corner in corners}
    return Standing(
        shift=over_all(c.shift for c in corners),
        off=over_all(c.off for c in corners),
        kern=over_all(c.kern for c in corners),
        base=over_all(c.base_in for c in corners),
        pressure=over_all(c.pressure for c in corners),
        thrust=over_all(lean_thrust(c.lean, load_plf) for c in corners),
        inside="cannot tell" if len(insides) == 2 else "yes" if True in insides else "no",
        working=_working(max(corners, key=lambda c: c.off / c.kern)),
    )


def _working(corner: _Corner) -> tuple[str, ...]:
    """One case worked out again, line by line."""
    with Sheet() as sheet:
        _ = corner.kern, corner.pressure, lean_thrust(corner.lean, corner.load_plf)
    return lines_of_sheet(sheet)


def height_ends(segment: FoundationSegment) -> Ends | None:
    """The least and the most height of the concrete over the bottom of its footing, inches; never less than is seen."""
    above, below = ends_of(segment.above_outside_soil_in), ends_of(segment.depth_in)
    if above is None or below is None:
        return None
    seen = max(above[0], (ends_of(segment.above_inside_soil_in) or (0.0,))[0], 0.0)
    low, high = max(above[0] + below[0], seen), max(above[1] + below[1], seen)
    return (low, high) if low > 0 else None


def active_pressure(reading: Reading) -> float | None:
    """What the soil of the site may push with at most, psf for each foot of depth; None where no table says."""
    groups = _GROUPS.get(reading.house.survey.site.soil.kind.value or "")
    if groups is None or shrinks(reading):
        return None
    return max(float(table_1610_1().read(group, "active")) for group in groups)


def _push_lb_in(reading: Reading, segment: FoundationSegment, lean: Ends, height_in: float) -> float | None:
    """The most that higher soil on the side away from the lean turns a foot of it, lb-in; None where nobody can say."""
    outside, inner = ends_of(segment.above_outside_soil_in), ends_of(segment.above_inside_soil_in)
    if outside is None or inner is None:
        return None
    most = 0.0
    for high, low, this_way in ((outside, inner, lean[0] < 0), (inner, outside, lean[1] > 0)):
        if not this_way or high[0] >= low[1]:
            continue
        k = active_pressure(reading)
        if k is None:
            return None
        deep, shallow = (max(height_in - above, 0.0) / 12 for above in (high[0], low[1]))
        most = max(most, 12 * (earth_moment(k, deep, 1.0) - earth_moment(k, shallow, 1.0)))
    return most


def base_ends(segment: FoundationSegment) -> Ends | None:
    """The least and the most width of its base: of the footing, or of the stem where there is none."""
    if segment.footing_width_in.state == "absent":
        return ends_of(segment.top_width_in)
    return ends_of(segment.footing_width_in)


@dataclass(frozen=True, slots=True)
class _Corner:
    """One case: lean (in/ft), height (ft), widths (in), load (plf), weight (pcf), push of soil (lb-in)."""

    lean: float
    height_ft: float
    top_in: float
    base_in: float
    load_plf: float
    pcf: float
    soil_lb_in: float

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
        e = lean_eccentricity(self.shift, self.load_plf, self.weight_plf, self.height_ft, self.height_ft / 2)
        return pushed_eccentricity(e, self.soil_lb_in, self.load_plf + self.weight_plf)

    @property
    def kern(self) -> float:
        """Half of the middle third, in."""
        return kern_reach(self.base_in)

    @property
    def pressure(self) -> float:
        """Under the edge it leans to, psf."""
        load, wide, e = self.load_plf + self.weight_plf, self.base_in / 12, float(self.off) / 12
        if 2 * e >= wide:
            return float("inf")
        if 6 * e <= wide:
            return pressure_in_kern(load, _ONE_FOOT, wide, e)
        return pressure_beyond_kern(load, _ONE_FOOT, contact_length(wide, e))
