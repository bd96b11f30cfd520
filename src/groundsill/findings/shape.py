"""The shape of a floor from spot levels: the plane nearest to it (tilt), and what is left over (bending).

The plane is that of least squares. Angular distortion is taken between spots that are neighbours (joined by a side of
Delaunay's triangles) and far enough apart for the reading to mean something, with the tilt taken off. Deflection ratio
is taken over every three spots that stand nearly in a line. Each figure comes with how far the reading of the levels
may be out: half a division at every spot it stands on, all against it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import dist
from typing import Final

from groundsill.findings.answer import Answer
from groundsill.findings.statistics import least_squares
from groundsill.mechanics.triangles import Triangle, edges, triangles
from groundsill.standards.statics.levels import angular_distortion, deflection_ratio, slope_of_plane

__all__ = ["Measured", "Shape", "Spot", "against", "shape_of"]

_NEAR_IN: Final = 48.0  # neighbours closer than this tell more of the reading than of the floor: our choice
_LINE_IN: Final = 120.0  # a line of three spots shorter than this is a room, not a house: our choice
_ASIDE: Final = 0.05  # how far beside the line its middle spot may stand, as a part of its length: our choice
_MIDDLE: Final = 0.25  # the middle spot stands at least this part of the length from either end: our choice


@dataclass(frozen=True, slots=True)
class Spot:
    """One spot level: its mark, its place on the plan, its height."""

    mark: str
    x_in: float
    y_in: float
    z_in: float


@dataclass(frozen=True, slots=True)
class Measured:
    """A ratio with how far it may be out, and the marks of the spots it was taken at."""

    ratio: float
    out: float
    spots: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Shape:
    """What the spots of one floor say.

    ``along_x`` and ``along_y`` are the slopes of the nearest plane, ``tilt`` its steepest slope; ``rest_in`` how far
    each spot stands over that plane. ``distortion`` are the greatest angular distortions, ``sags`` and ``hogs`` the
    greatest deflection ratios: as read first, then with the reading for it and against it where those are others; empty
    where no three spots stand in a line. ``triangles`` join the spots for contours.
    """

    floor: str
    spots: tuple[Spot, ...]
    along_x: float
    along_y: float
    tilt: Measured
    rest_in: tuple[float, ...]
    distortion: tuple[Measured, ...]
    sags: tuple[Measured, ...]
    hogs: tuple[Measured, ...]
    triangles: tuple[Triangle, ...]

    @property
    def lowest(self) -> Spot:
        """The spot that stands lowest."""
        return min(self.spots, key=lambda s: s.z_in)

    @property
    def highest(self) -> Spot:
        """The spot that stands highest."""
        return max(self.spots, key=lambda s: s.z_in)

    @property
    def falls_to(self) -> Spot:
        """The spot that the plane falls to."""
        return min(self.spots, key=lambda s: self.along_x * s.x_in + self.along_y * s.y_in)


def shape_of(floor: str, spots: Sequence[Spot], division_in: float) -> Shape | None:
    """The shape of one floor; None with fewer than four spots, or all in one line.

    Args:
        floor: its name.
        spots: in the order of the survey.
        division_in: the finest step the levels were read to.
    """
    places = [(s.x_in, s.y_in) for s in spots]
    joined = triangles(places)
    if len(set(places)) < 4 or not joined:
        return None
    xs, ys = ([p[i] - sum(q[i] for q in places) / len(places) for p in places] for i in (0, 1))
    heights = [s.z_in for s in spots]
    fit = least_squares([[1.0] * len(spots), xs, ys], heights)
    if not all(fit.kept):
        return None
    _, a, b = fit.coefficients
    half = division_in / 2
    run = max(dist(p, q) for p, q in combinations(places, 2))
    bends = list(_bends(spots, half))
    return Shape(
        floor=floor,
        spots=tuple(spots),
        along_x=a,
        along_y=b,
        tilt=Measured(slope_of_plane(a=a, b=b), division_in / run, ()),
        rest_in=fit.residuals,
        distortion=_greatest(_distortions(spots, fit.residuals, edges(joined), half)),
        sags=_greatest(m for m in bends if m.ratio >= 0.0),
        hogs=_greatest(_turned(m) for m in bends if m.ratio < 0.0),
        triangles=joined,
    )


def against(measured: Sequence[Measured], limit: float) -> tuple[Answer, Measured | None]:
    """Whether every ratio is within a limit whatever the reading is out, and the one that decides it.

    Nothing measured cannot be told.
    """
    if not measured:
        return "cannot tell", None
    for answer in ("no", "cannot tell", "yes"):
        for one in measured:
            if _within(one, limit) == answer:
                return answer, one
    raise AssertionError("every ratio has one of the three answers")


def _within(one: Measured, limit: float) -> Answer:
    if one.ratio + one.out <= limit:
        return "yes"
    return "no" if one.ratio - one.out > limit else "cannot tell"


def _greatest(measured: Iterable[Measured]) -> tuple[Measured, ...]:
    """The greatest as read, with the reading for it, and against it; no one of the rest decides any limit."""
    every = list(measured)
    if not every:
        return ()
    weights: tuple[Callable[[Measured], float], ...] = (
        lambda m: m.ratio, lambda m: m.ratio - m.out, lambda m: m.ratio + m.out,
    )  # fmt: skip
    return tuple(dict.fromkeys(max(every, key=weight) for weight in weights))


def _distortions(
    spots: Sequence[Spot], rest: Sequence[float], sides: Sequence[tuple[int, int]], half: float
) -> Iterator[Measured]:
    """Angular distortion between neighbours."""
    for i, j in sides:
        apart = dist((spots[i].x_in, spots[i].y_in), (spots[j].x_in, spots[j].y_in))
        if apart >= _NEAR_IN:
            ratio = angular_distortion(r_1=rest[i], r_2=rest[j], L=apart)
            yield Measured(ratio, 2 * half / apart, (spots[i].mark, spots[j].mark))


def _bends(spots: Sequence[Spot], half: float) -> Iterator[Measured]:
    """Deflection ratio of every three spots nearly in a line, positive where they sag."""
    for one, two in combinations(spots, 2):
        length = dist((one.x_in, one.y_in), (two.x_in, two.y_in))
        if length < _LINE_IN:
            continue
        ux, uy = (two.x_in - one.x_in) / length, (two.y_in - one.y_in) / length
        for mid in spots:
            dx, dy = mid.x_in - one.x_in, mid.y_in - one.y_in
            along, aside = dx * ux + dy * uy, abs(dy * ux - dx * uy)
            if aside <= _ASIDE * length and _MIDDLE * length <= along <= (1 - _MIDDLE) * length:
                ratio = deflection_ratio(z_1=one.z_in, z_m=mid.z_in, z_2=two.z_in, x=along, L=length)
                yield Measured(ratio, 2 * half / length, (one.mark, mid.mark, two.mark))


def _turned(measured: Measured) -> Measured:
    return Measured(-measured.ratio, measured.out, measured.spots)
