"""Where things on a line come to lie on a plan: stations along it, and how far outside or inside of it.

Distances that belong to the paper (how far a label stands off) are given in inches of paper and turned into model
inches by the scale, so that a plan keeps its manners at every scale.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from groundsill.forces.reading import line_ends
from groundsill.house.underfloor import Line as BracedLine
from groundsill.mechanics.plan import inside
from groundsill.papers.drawing import Point
from groundsill.papers.sheet import Scale
from groundsill.work.document import House

__all__ = ["Frame", "box_of_points", "frame_of", "lowest_outline"]

_PROBE_IN = 6.0


@dataclass(frozen=True, slots=True)
class Frame:
    """A line on the plan: its start, the way it runs, and the way out of the house from it.

    ``paper`` is how many model inches one inch of paper shows. ``outer`` is false for a line within the house.
    """

    start: Point
    along: Point
    out: Point
    length: float
    paper: float
    outer: bool

    def at(self, station: float, out_in: float = 0.0, paper: float = 0.0) -> Point:
        """The place at a station, ``out_in`` model inches and ``paper`` inches of paper out of the house."""
        off = out_in + paper * self.paper
        return (
            self.start[0] + self.along[0] * station + self.out[0] * off,
            self.start[1] + self.along[1] * station + self.out[1] * off,
        )

    @property
    def middle(self) -> float:
        """The station half way along."""
        return self.length / 2

    @property
    def turn(self) -> float:
        """How words along the line are turned: they read from the bottom or from the right."""
        degrees = math.degrees(math.atan2(self.along[1], self.along[0]))
        if degrees > 90.0 + 1e-9:
            return degrees - 180.0
        return degrees + 180.0 if degrees <= -90.0 + 1e-9 else degrees

    @property
    def reading(self) -> float:
        """1.0 where words along the line read from start to end, else -1.0."""
        cos, sin = math.cos(math.radians(self.turn)), math.sin(math.radians(self.turn))
        return 1.0 if cos * self.along[0] + sin * self.along[1] > 0 else -1.0

    @property
    def above(self) -> float:
        """1.0 where the upper edge of words along the line points out of the house, else -1.0."""
        cos, sin = math.cos(math.radians(self.turn)), math.sin(math.radians(self.turn))
        return 1.0 if -sin * self.out[0] + cos * self.out[1] > 0 else -1.0

    def box(self, low: float, high: float, near: float, far: float) -> tuple[Point, ...]:
        """The four corners of a stretch of the line between two distances out (model inches)."""
        return (self.at(low, near), self.at(high, near), self.at(high, far), self.at(low, far))


def lowest_outline(house: House) -> tuple[Point, ...]:
    """The outline of the lowest floor, model inches; empty when there is no storey."""
    building = house.survey.building
    storeys = sorted(building.storeys.values(), key=lambda storey: storey.floor_z_in)
    if not storeys:
        return ()
    return tuple((building.corners[c].x_in, building.corners[c].y_in) for c in storeys[0].outline)


def frame_of(house: House, line: BracedLine, scale: Scale) -> Frame:
    """The frame of a line; which side is out of the house is told by the outline of the lowest floor."""
    a, b = line_ends(house, line)
    reach = math.hypot(b[0] - a[0], b[1] - a[1]) or 1.0
    along = ((b[0] - a[0]) / reach, (b[1] - a[1]) / reach)
    out = (-along[1], along[0])
    middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    outline = lowest_outline(house)
    left, right = (
        bool(outline)
        and inside((middle[0] + side * out[0] * _PROBE_IN, middle[1] + side * out[1] * _PROBE_IN), outline)
        for side in (1.0, -1.0)
    )
    if left and not right:
        out = (-out[0], -out[1])
    return Frame(a, along, out, reach, scale.denominator, outer=left != right)


def box_of_points(points: tuple[Point, ...]) -> tuple[float, float, float, float]:
    """Left, bottom, right, top of some points."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return (min(xs), min(ys), max(xs), max(ys))
