"""A straight beam on soil that pushes and never pulls: how far it settles, where it lifts, what bends and shears it.

In: the beam as pieces of constant section, each with the spring of the soil under it and its own weight, and what
stands on it. Out: a :class:`Settled` with deflection, shear and moment along it. The soil is a bed of springs
(Winkler): each inch of beam is pushed up by ``spring`` times what it has gone down there, and by nothing where it has
risen.

Cubic elements, the soil taken at four Gauss points of each; which of these still touch is found by Newton's method on
the stored work, which has one minimum. Shear and moment are then summed from the left by equilibrium alone, so that
what is left at the right end is a true check and not an identity.

Stations run along the beam from its left end, inches; deflections and loads are positive downward; a moment is positive
where it sags (tension below); a couple is positive where it pushes the beam down to its right.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, inf, sqrt

from groundsill.mechanics.banded import solved
from groundsill.mechanics.cubic import below_nothing, cubic_at, shape, turning_points
from groundsill.working.errors import OutsideLimits

__all__ = ["Beam", "Couple", "Loads", "Peak", "Piece", "PointLoad", "Settled", "Spread", "Station", "settle"]

_NEAR_IN = 0.01  # loads and joints nearer to each other than this share a node
_FINE = 0.06  # greatest length of an element over the beam's own characteristic length
_FEWEST, _MOST = 24, 1200  # elements of the whole beam
_FAINT = 1e-9  # part of its spring that soil keeps in the search where it has let go: in no answer
_STEPS = 200
_BALANCED = 1e-6
_GAUSS = tuple(
    (0.5 + sign * at / 2, weight / 2)
    for at, weight in ((0.8611363115940526, 0.3478548451374538), (0.3399810435848563, 0.6521451548625461))
    for sign in (-1, 1)
)


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of beam of one section on one soil, inches and pounds.

    ``stiffness`` is E times I, lb-in2; ``spring`` what each inch of it is pushed up by for each inch that it goes down,
    lb/in for each in. (modulus of subgrade reaction times width; 0 over a hole); ``weight`` its own, lb/in.
    """

    length_in: float
    stiffness: float
    spring: float
    weight: float = 0.0


@dataclass(frozen=True, slots=True)
class Beam:
    """Pieces end to end, from the left."""

    pieces: tuple[Piece, ...]

    @property
    def length_in(self) -> float:
        """Length of the whole beam, inches."""
        return sum(piece.length_in for piece in self.pieces)


@dataclass(frozen=True, slots=True)
class PointLoad:
    """A force at a station, lb, positive downward."""

    station_in: float
    force_lb: float


@dataclass(frozen=True, slots=True)
class Couple:
    """A couple at a station, lb-in, positive where it pushes the beam down to its right."""

    station_in: float
    moment_lb_in: float


@dataclass(frozen=True, slots=True)
class Spread:
    """A force spread evenly between two stations, lb/in, positive downward."""

    from_in: float
    to_in: float
    force_lb_in: float


@dataclass(frozen=True, slots=True)
class Loads:
    """What stands on the beam and pulls at it, beside its own weight."""

    points: tuple[PointLoad, ...] = ()
    couples: tuple[Couple, ...] = ()
    spreads: tuple[Spread, ...] = ()


@dataclass(frozen=True, slots=True)
class Peak:
    """A greatest value and the station it stands at."""

    value: float
    station_in: float


@dataclass(frozen=True, slots=True)
class Station:
    """The beam at one station: deflection (in.), slope, shear (lb) and moment (lb-in) to the left and to the right.

    Shear is what pushes the left part up less what pushes it down, so the moment grows by it.
    """

    station_in: float
    deflection_in: float
    slope: float
    shear_left_lb: float
    shear_right_lb: float
    moment_left_lb_in: float
    moment_right_lb_in: float


@dataclass(frozen=True, slots=True)
class Settled:
    """A beam at rest on its soil.

    ``sagging`` and ``hogging`` are the greatest moments with tension below and above, lb-in, and ``shear`` the greatest
    in either sense, lb, all as sizes; ``push`` is the soil's greatest, in lb for each inch of beam (over the width of
    the footing it is the pressure); ``deepest`` the greatest deflection; ``lifted`` the stretches with soil below that
    do not touch it; ``held_lb`` all that the soil pushes; the residuals what is left of equilibrium.
    """

    stations: tuple[Station, ...]
    sagging: Peak
    hogging: Peak
    shear: Peak
    push: Peak
    deepest: Peak
    lifted: tuple[tuple[float, float], ...]
    held_lb: float
    residual_lb: float
    residual_lb_in: float

    @property
    def lifted_in(self) -> float:
        """Length of beam that does not touch the soil below it, inches."""
        return sum(end - start for start, end in self.lifted)


def settle(beam: Beam, loads: Loads) -> Settled:
    """The beam at rest under its own weight and the loads.

    Raises:
        OutsideLimits: when a size or a load has no meaning, when the loads turn the beam over or lift it from the soil,
            or when no rest is found.
    """
    _check(beam, loads)
    _check_stands(beam, loads)
    elements = _elements(beam, loads)
    forces, size = _nodal(elements, loads)
    bed = [_bed(e) for e in elements]
    moved = _at_rest(elements, bed, forces, size)
    found = _summed(elements, bed, moved, loads)
    most = sum(abs(p.force_lb) for p in loads.points) + sum(e.length * abs(e.down) for e in elements)
    if max(abs(found.residual_lb), abs(found.residual_lb_in) / beam.length_in) > _BALANCED * most:
        raise OutsideLimits(f"a beam {beam.length_in:g} in. long was not brought into balance on its soil")
    return found


# ---- What may be asked ----------------------------------------------------------------------------------------------


def _check(beam: Beam, loads: Loads) -> None:
    if not beam.pieces:
        raise OutsideLimits("a beam of no pieces settles on nothing")
    for piece in beam.pieces:
        sizes = 0 < piece.length_in < inf and 0 < piece.stiffness < inf
        if not (sizes and 0 <= piece.spring < inf and 0 <= piece.weight < inf):
            raise OutsideLimits(
                f"a piece of beam {piece.length_in:g} in. long with EI = {piece.stiffness:g} lb-in2 on a spring of "
                f"{piece.spring:g} lb/in per in., weighing {piece.weight:g} lb/in, has no meaning"
            )
    whole = beam.length_in
    forces = [p.force_lb for p in loads.points] + [c.moment_lb_in for c in loads.couples]
    forces += [s.force_lb_in for s in loads.spreads]
    if not all(-inf < force < inf for force in forces):
        raise OutsideLimits("a load on the beam is no number")
    at = [p.station_in for p in loads.points] + [c.station_in for c in loads.couples]
    for station in at + [s for spread in loads.spreads for s in (spread.from_in, spread.to_in)]:
        if not -_NEAR_IN <= station <= whole + _NEAR_IN:
            raise OutsideLimits(f"a load at {station:g} in. does not stand on a beam {whole:g} in. long")
    if any(not spread.from_in < spread.to_in for spread in loads.spreads):
        raise OutsideLimits("a spread load must end to the right of its start")


def _check_stands(beam: Beam, loads: Loads) -> None:
    """Soil that only pushes holds a beam when all of its load stands between the first and the last of the soil."""
    ends = _ends(beam)
    force = sum(p.force_lb for p in loads.points) + sum(s.force_lb_in * (s.to_in - s.from_in) for s in loads.spreads)
    moment = sum(p.force_lb * p.station_in for p in loads.points) + sum(c.moment_lb_in for c in loads.couples)
    moment += sum(s.force_lb_in * (s.to_in**2 - s.from_in**2) / 2 for s in loads.spreads)
    for piece, (start, end) in zip(beam.pieces, ends, strict=True):
        force += piece.weight * piece.length_in
        moment += piece.weight * (end**2 - start**2) / 2
    on_soil = [span for piece, span in zip(beam.pieces, ends, strict=True) if piece.spring > 0]
    if not on_soil:
        raise OutsideLimits("no soil stands under the beam")
    if force <= 0:
        raise OutsideLimits(f"the beam is lifted off the soil: {-force:,.0f} lb more pull up than press down")
    if not on_soil[0][0] < moment / force < on_soil[-1][1]:
        raise OutsideLimits(
            f"the beam turns over: all that presses on it stands at {moment / force:,.1f} in., outside the soil from "
            f"{on_soil[0][0]:g} to {on_soil[-1][1]:g} in."
        )


def _ends(beam: Beam) -> list[tuple[float, float]]:
    ends, at = [], 0.0
    for piece in beam.pieces:
        ends.append((at, at + piece.length_in))
        at += piece.length_in
    return ends


# ---- Elements -------------------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Element:
    start: float
    length: float
    piece: Piece
    down: float  # own weight and spread loads, lb/in


def _elements(beam: Beam, loads: Loads) -> list[_Element]:
    """The beam cut at every joint and load, and between them so finely that a cubic follows its curve."""
    whole = beam.length_in
    cuts = {end for _, end in _ends(beam)} | {p.station_in for p in loads.points}
    cuts |= {c.station_in for c in loads.couples}
    cuts |= {s for spread in loads.spreads for s in (spread.from_in, spread.to_in)}
    kept = [0.0]
    for cut in sorted(cuts):
        if cut - kept[-1] > _NEAR_IN and cut < whole - _NEAR_IN:
            kept.append(cut)
    kept.append(whole)
    found = []
    for start, end in pairwise(kept):
        middle = (start + end) / 2
        piece = next(p for p, (a, b) in zip(beam.pieces, _ends(beam), strict=True) if middle <= b)
        down = piece.weight + sum(s.force_lb_in for s in loads.spreads if s.from_in < middle < s.to_in)
        finest = max(_longest(piece, whole), whole / _MOST)
        parts = ceil((end - start) / finest)
        length = (end - start) / parts
        found += [_Element(start + n * length, length, piece, down) for n in range(parts)]
    return found


def _longest(piece: Piece, whole: float) -> float:
    """The longest element allowed in a piece: a small part of its characteristic length and of the beam."""
    if piece.spring == 0:
        return whole / _FEWEST
    characteristic_in = sqrt(sqrt(4 * piece.stiffness / piece.spring))
    return min(_FINE * characteristic_in, whole / _FEWEST)


def _nodal(elements: Sequence[_Element], loads: Loads) -> tuple[list[float], float]:
    """The loads as forces and couples at the nodes, and a size to measure what is left over by."""
    forces, nodes = [0.0] * (2 * len(elements) + 2), _nodes(elements)
    for n, e in enumerate(elements):
        half, turn = e.down * e.length / 2, e.down * e.length**2 / 12
        for i, part in enumerate((half, turn, half, -turn)):
            forces[2 * n + i] += part
    for point in loads.points:
        forces[2 * _nearest(nodes, point.station_in)] += point.force_lb
    for couple in loads.couples:
        forces[2 * _nearest(nodes, couple.station_in) + 1] += couple.moment_lb_in
    return forces, sum(abs(force) for force in forces[::2])


def _nodes(elements: Sequence[_Element]) -> list[float]:
    """The stations of the ends of all elements, from the left."""
    return [*(e.start for e in elements), elements[-1].start + elements[-1].length]


def _nearest(nodes: Sequence[float], station: float) -> int:
    """The number of the node nearest to a station."""
    right = bisect_left(nodes, station)
    return min(range(max(right - 1, 0), min(right + 1, len(nodes))), key=lambda n: abs(nodes[n] - station))


# ---- The search for rest --------------------------------------------------------------------------------------------


def _bending(e: _Element) -> tuple[tuple[float, ...], ...]:
    """Lower half of the stiffness of an element in bending."""
    a = e.piece.stiffness / e.length**3
    b, c = a * e.length, a * e.length**2
    return ((12 * a,), (6 * b, 4 * c), (-12 * a, -6 * b, 12 * a), (6 * b, 2 * c, -6 * b, 4 * c))


def _at_rest(elements: Sequence[_Element], bed: _Bed, forces: Sequence[float], size: float) -> list[float]:
    """Deflections and slopes of the nodes at which all forces balance: Newton's steps, cut short where they overshoot.

    The stored work is convex and piecewise quadratic, so its slope along a step says how far the step may go.
    """
    moved = [0.0] * len(forces)
    left, springs = list(forces), [True] * sum(len(points) for points in bed)
    for _ in range(_STEPS):
        step = solved(_stiffness(elements, bed, springs), left)
        first = sum(a * b for a, b in zip(left, step, strict=True))
        part = 1.0
        while True:
            tried = [u + part * du for u, du in zip(moved, step, strict=True)]
            left, touching = _left_over(elements, bed, tried, forces)
            if sum(a * b for a, b in zip(left, step, strict=True)) > -0.9 * first or part < 1e-6:
                break
            part /= 2
        moved = tried
        if part == 1.0 and touching == springs and first <= 1e-12 * size * max(abs(u) for u in moved[::2]):
            return moved
        springs = touching
    raise OutsideLimits("the beam comes to no rest on its soil")


def _bed(e: _Element) -> tuple[tuple[tuple[float, float, float, float], float], ...]:
    """The points of an element at which the soil is taken: what they take of its ends, and their spring, lb/in."""
    return tuple((shape(t, e.length), e.piece.spring * e.length * weight) for t, weight in _GAUSS)


_Bed = Sequence[Sequence[tuple[tuple[float, float, float, float], float]]]


def _left_over(
    elements: Sequence[_Element], bed: _Bed, moved: Sequence[float], forces: Sequence[float]
) -> tuple[list[float], list[bool]]:
    """What is left of the forces when bending and soil have taken theirs, and which points of soil touch."""
    left, touching = list(forces), []
    for n, e in enumerate(elements):
        at = 2 * n
        w1, s1, w2, s2 = moved[at : at + 4]
        turned = (w2 - w1) / e.length
        by = 2 * e.piece.stiffness / e.length
        m1, m2 = by * (2 * s1 + s2 - 3 * turned), by * (s1 + 2 * s2 - 3 * turned)
        shear = (m1 + m2) / e.length
        taken = [shear, m1, -shear, m2]
        for part, spring in bed[n]:
            down = w1 * part[0] + s1 * part[1] + w2 * part[2] + s2 * part[3]
            touching.append(down > 0.0)
            if down > 0.0:
                for i in range(4):
                    taken[i] += spring * down * part[i]
        for i in range(4):
            left[at + i] -= taken[i]
    return left, touching


def _stiffness(elements: Sequence[_Element], bed: _Bed, touching: Sequence[bool]) -> list[list[float]]:
    """The band of the stiffness of the beam and of the soil that touches it."""
    rows = [[0.0] * 4 for _ in range(2 * len(elements) + 2)]
    point = 0
    for n, e in enumerate(elements):
        (k00,), (k10, k11), (k20, k21, k22), (k30, k31, k32, k33) = _bending(e)
        for (a, b, c, d), spring in bed[n]:
            k = spring if touching[point] else _FAINT * spring
            point += 1
            ka, kb, kc, kd = k * a, k * b, k * c, k * d
            k00 += ka * a
            k10 += kb * a
            k11 += kb * b
            k20 += kc * a
            k21 += kc * b
            k22 += kc * c
            k30 += kd * a
            k31 += kd * b
            k32 += kd * c
            k33 += kd * d
        first, second, third, fourth = rows[2 * n : 2 * n + 4]
        first[0] += k00
        second[0] += k11
        second[1] += k10
        third[0] += k22
        third[1] += k21
        third[2] += k20
        fourth[0] += k33
        fourth[1] += k32
        fourth[2] += k31
        fourth[3] += k30
    return rows


# ---- What was found -------------------------------------------------------------------------------------------------


def _summed(elements: Sequence[_Element], bed: _Bed, moved: Sequence[float], loads: Loads) -> Settled:
    """Shear and moment from the left by equilibrium, and the greatest of everything."""
    jumps = _jumps(elements, loads)
    stations: list[Station] = []
    shear = moment = held = 0.0
    for n, at in enumerate(_nodes(elements)):
        force, couple = jumps.get(n, (0.0, 0.0))
        here = Station(at, moved[2 * n], moved[2 * n + 1], shear, shear - force, moment, moment + couple)
        stations.append(here)
        shear, moment = here.shear_right_lb, here.moment_right_lb_in
        if n < len(elements):
            e, (w1, s1, w2, s2) = elements[n], moved[2 * n : 2 * n + 4]
            moment += shear * e.length - e.down * e.length**2 / 2
            shear -= e.down * e.length
            for ((a, b, c, d), spring), (t, _) in zip(bed[n], _GAUSS, strict=True):
                push = spring * max(0.0, a * w1 + b * s1 + c * w2 + d * s2)
                shear += push
                moment += push * e.length * (1 - t)
                held += push
    shears = [Peak(abs(v), s.station_in) for s in stations for v in (s.shear_left_lb, s.shear_right_lb)]
    sagging, hogging = _moments(stations)
    sunk, pushes = _sunk(elements, moved), [Peak(0.0, 0.0)]
    for e, peaks in zip(elements, sunk, strict=True):
        pushes += [Peak(e.piece.spring * peak.value, peak.station_in) for peak in peaks]
    return Settled(
        tuple(stations), _greatest(sagging), _greatest(hogging), _greatest(shears), _greatest(pushes),
        _greatest([peak for peaks in sunk for peak in peaks]), _lifted(elements, moved), held, shear, moment,
    )  # fmt: skip


def _jumps(elements: Sequence[_Element], loads: Loads) -> dict[int, tuple[float, float]]:
    """Force and couple that stand on each node."""
    found: dict[int, tuple[float, float]] = {}
    nodes = _nodes(elements)
    for station, force, couple in (
        *((p.station_in, p.force_lb, 0.0) for p in loads.points),
        *((c.station_in, 0.0, c.moment_lb_in) for c in loads.couples),
    ):
        node = _nearest(nodes, station)
        before = found.get(node, (0.0, 0.0))
        found[node] = (before[0] + force, before[1] + couple)
    return found


def _greatest(peaks: Sequence[Peak]) -> Peak:
    return max(peaks, key=lambda peak: peak.value)


def _moments(stations: Sequence[Station]) -> tuple[list[Peak], list[Peak]]:
    """Sagging and hogging moments: at the nodes, and between them where the shear passes through nothing."""
    sagging = [Peak(0.0, stations[0].station_in)]
    hogging = list(sagging)
    for a, b in pairwise(stations):
        values = (a.moment_right_lb_in, a.shear_right_lb, b.moment_left_lb_in, b.shear_left_lb)
        length = b.station_in - a.station_in
        for t in (0.0, *turning_points(values, length), 1.0):
            value, station = cubic_at(values, length, t), a.station_in + t * length
            sagging.append(Peak(value, station))
            hogging.append(Peak(-value, station))
    return sagging, hogging


def _sunk(elements: Sequence[_Element], moved: Sequence[float]) -> list[list[Peak]]:
    """How far each element has gone down, at its ends and where it is level."""
    found = []
    for n, e in enumerate(elements):
        values = (moved[2 * n], moved[2 * n + 1], moved[2 * n + 2], moved[2 * n + 3])
        parts = (0.0, *turning_points(values, e.length), 1.0)
        found.append([Peak(cubic_at(values, e.length, t), e.start + t * e.length) for t in parts])
    return found


def _lifted(elements: Sequence[_Element], moved: Sequence[float]) -> tuple[tuple[float, float], ...]:
    """The stretches over soil that stand above it, joined where they meet."""
    found: list[tuple[float, float]] = []
    for n, e in enumerate(elements):
        if e.piece.spring == 0:
            continue
        values = (moved[2 * n], moved[2 * n + 1], moved[2 * n + 2], moved[2 * n + 3])
        parts = (0.0, *turning_points(values, e.length), 1.0)
        for a, b in pairwise(parts):
            stretch = below_nothing(values, e.length, a, b)
            if stretch is None:
                continue
            start, end = e.start + stretch[0] * e.length, e.start + stretch[1] * e.length
            if found and start - found[-1][1] <= _NEAR_IN:
                found[-1] = (found[-1][0], end)
            else:
                found.append((start, end))
    return tuple(found)
