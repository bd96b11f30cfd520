"""Strips of floor that span between supports: what sharing and gravity take-down both stand on.

A plan shape is cut, in thought, into narrow strips running across its supports. Each piece of a strip hangs, as on a
simple beam, on the two supports beside it; what lies beyond the outermost one hangs out as a cantilever. Summed over
the shape this *is* tributary area, it keeps force and moment in balance, and it needs no rule of thumb for L-shaped
plans. What a piece of floor hangs on:

1. Between two supports that its strip runs over: those two.
2. Beyond the outermost of them: that one, held down by the first behind it that is at least as far from it as the
   piece is. So no piece puts more than twice itself on a support, nor pulls one back by more than itself.
3. Where none behind is as far, or the strip runs over fewer than two: every support counts, one that stops short as
   if it ran on at the level of its nearer end, since a collector must bring the load there along the supports. What
   the supports then take is counted as ``collected``.
4. Beyond all of these, farther than any is from any: the outermost, held down by the farthest. That is ``overhung``.
   Supports less than :data:`ONE_PLACE_IN` apart cannot hold it so: it rests on the outermost alone, and whoever asked
   closes the turning.

Between two changes of the picture (a corner, a support's end, a crossing) everything is straight, so the sum over the
strips is an integral of a rational function at the most: exact between parallel supports, else to 1e-12 or so.
Coordinates are in inches, ``u`` along the supports and ``v`` along the strips.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import combinations, pairwise

from groundsill.mechanics.plan import length
from groundsill.mechanics.supports import CROSSING, NEAR, SAME_PLACE, Place, Run, Support, Supports, arranged, grouped

__all__ = ["ONE_PLACE_IN", "Share", "strips", "strips_of_line"]

ONE_PLACE_IN = 24.0  # supports nearer to each other than this are one place (common practice, no source)

XY = tuple[float, float]

_BOTTOM: Run = (-math.inf, -math.inf)
_TOP: Run = (math.inf, math.inf)

# Gauss points on 0 to 1 with their weights. Three are exact up to degree five, which is all that parallel supports
# need; eight leave 1e-12 where a lever is no more than twice as long at one end of an interval as at the other.
_MIDDLE = ((0.5, 1.0),)
_THREE = tuple(
    (0.5 + at / 2, weight) for at, weight in ((-math.sqrt(0.6), 5 / 18), (0.0, 8 / 18), (math.sqrt(0.6), 5 / 18))
)
_EIGHT = tuple(
    (0.5 + sign * at / 2, weight / 2)
    for at, weight in (
        (0.1834346424956498, 0.3626837833783620),
        (0.5255324099163290, 0.3137066458778873),
        (0.7966664774136267, 0.2223810344533745),
        (0.9602898564975363, 0.1012285362903763),
    )
    for sign in (-1, 1)
)


@dataclass(slots=True)
class Share:
    """What falls to one support: an amount (area or length), its first moment in u, and parts that want a word.

    ``collected`` came over a collector; ``overhung`` hangs out beyond it, farther than any support is behind it.
    """

    amount: float = 0.0
    moment_u: float = 0.0
    collected: float = 0.0
    overhung: float = 0.0


@dataclass(frozen=True, slots=True)
class _Bay:
    """A stretch of strips that hangs on two places, or on one alone."""

    low: Run
    high: Run
    first: Place
    second: Place
    ran_on: bool
    over: Place | None = None  # the outermost place, where the stretch hangs out too far beyond it


def strips(points: Sequence[XY], supports: Sequence[Support] | Supports) -> dict[str, Share]:
    """Share a polygon's area, its corners (u, v), among supports by strips along v; those that take any are told."""
    shares: dict[str, Share] = {}
    held = arranged(supports)
    if not held.each:
        return shares
    low, high = min(u for u, _ in points), max(u for u, _ in points)
    cuts = sorted({u for u, _ in points} | set(_stops_between(held, low, high)))
    for u1, u2 in pairwise(cuts):
        if u2 - u1 >= NEAR:
            for below, above in _stretches(points, u1, u2):
                _spread(shares, held, u1, u2, below, above, u2 - u1)
    return shares


def strips_of_line(a: XY, b: XY, supports: Sequence[Support] | Supports) -> dict[str, Share]:
    """Share a straight line's length among supports in the same way; a line of no length counts as a unit point."""
    shares: dict[str, Share] = {}
    held = arranged(supports)
    if not held.each:
        return shares
    (u1, v1), (u2, v2) = sorted((a, b))
    if u2 - u1 < NEAR:  # along a strip, or a point
        low, high = min(v1, v2), max(v1, v2)
        if high - low < NEAR:
            low = high = v1
        _spread(shares, held, u1, u1, (low, low), (high, high), 1.0)
        return shares
    whole, slope = length(a, b), (v2 - v1) / (u2 - u1)
    for low, high in pairwise([u1, *_stops_between(held, u1, u2), u2]):
        if high > low:
            path = (v1 + slope * (low - u1), v1 + slope * (high - u1))
            _spread(shares, held, low, high, path, path, whole * (high - low) / (u2 - u1))
    return shares


def _stops_between(held: Supports, low: float, high: float) -> tuple[float, ...]:
    return held.stops[bisect_right(held.stops, low) : bisect_left(held.stops, high)]


def _stretches(points: Sequence[XY], u1: float, u2: float) -> list[tuple[Run, Run]]:
    """The stretches of strips inside the polygon over an interval without a corner, each between two of its sides."""
    hits = []
    for (a, v), (b, w) in zip(points, [*points[1:], points[0]], strict=True):
        if min(a, b) < (u1 + u2) / 2 < max(a, b):
            slope = (w - v) / (b - a)
            hits.append((v + slope * (u1 - a), v + slope * (u2 - a)))
    hits.sort(key=sum)
    return list(zip(hits[::2], hits[1::2], strict=False))


# ---- One stretch over one interval ----------------------------------------------------------------------------------


def _spread(shares: dict[str, Share], held: Supports, u1: float, u2: float, low: Run, high: Run, width: float) -> None:
    """Put a stretch of strips between two runs on its supports; one of no depth is a path whose length is the width."""
    bays, turns = _hung(held, u1, u2, low, high)
    if turns:
        for t1, t2 in pairwise((0.0, *turns, 1.0)):
            ends = u1 + t1 * (u2 - u1), u1 + t2 * (u2 - u1)
            _spread(shares, held, *ends, _part(low, t1, t2), _part(high, t1, t2), width * (t2 - t1))
        return
    path = low == high
    for bay in bays:  # the first and the last take what rounding leaves beyond them
        below = low if bay is bays[0] else max(low, bay.low, key=sum)
        above = high if bay is bays[-1] else min(high, bay.high, key=sum)
        if sum(below) < sum(above) or (path and sum(below) == sum(above)):
            _give(shares, bay, (u1, u2), below, above, width, path)
            if path:  # one that runs along a place lies in two bays
                return


def _hung(held: Supports, u1: float, u2: float, low: Run, high: Run) -> tuple[list[_Bay], list[float]]:
    """The bays that a stretch hangs in, and the parts of the interval at which the picture changes.

    Where it changes the bays are of no use yet: each part is to be asked again, for itself.
    """
    places = _beside(held, u1, u2, low, high)
    turns = _swaps([place.run for place in places])
    bays = _bays(places, False, _before(low, places[0].run), _before(places[-1].run, high)) if len(places) > 1 else []
    edges = (bays[0].low, bays[-1].high) if bays else (_TOP, _BOTTOM)
    if _before(low, edges[0]) or _before(edges[1], high):
        every, turned = _run_on(held, u1, u2)
        out = _everywhere(every, len(every) > len(places))
        turns += turned + _crossings((edge, bay.high) for bay in out[:-1] for edge in edges)
        turns += _crossings([(_up(every[0].run, ONE_PLACE_IN), every[-1].run)])
        bays = [*_clipped(out, _BOTTOM, edges[0]), *bays, *_clipped(out, edges[1], _TOP)] if bays else out
    turns += _crossings((edge, bay.high) for bay in bays[:-1] for edge in (low, high))
    return bays, sorted(set(turns))


def _give(
    shares: dict[str, Share], bay: _Bay, ends: tuple[float, float], below: Run, above: Run, width: float, path: bool
) -> None:
    """Put what lies in one bay on its two places by the lever, which is straight: each strip acts at its middle."""
    first, second = bay.first.run, bay.second.run
    alone, over = bay.first is bay.second, bay.over.ids if bay.over else ()
    for t, weight in _points(first, second, below, above):
        u, bottom, top, start = (_at(run, t) for run in (ends, below, above, first))
        amount = weight * width * (1.0 if path else top - bottom)
        part = 1.0 if alone else ((bottom + top) / 2 - start) / (_at(second, t) - start)
        for place, put in ((bay.second, amount * part), (bay.first, amount * (1.0 - part))):
            for id in place.ids if put else ():
                share = shares.setdefault(id, Share())
                share.amount += put / len(place.ids)
                share.moment_u += put / len(place.ids) * u
                if bay.ran_on:
                    share.collected += put / len(place.ids)
        for id in over:
            shares.setdefault(id, Share()).overhung += amount / len(over)


def _points(first: Run, second: Run, below: Run, above: Run) -> Iterator[tuple[float, float]]:
    """Points of an interval, 0 to 1, and their weights: as many as the sum over its strips needs."""
    near, far = sorted((abs(second[0] - first[0]), abs(second[1] - first[1])))
    if far - near <= CROSSING * far or near <= CROSSING * far:  # parallel; or a wedge to its very tip
        level = all(run[0] == run[1] for run in (first, second, below, above))
        yield from _MIDDLE if level else _THREE
        return
    parts = math.ceil(math.log2(far / near))
    widths = [near * 2**n for n in range(parts)]
    cuts = [(each - near) / (far - near) for each in (*widths, far)]
    for low, high in pairwise(cuts):
        for at, weight in _EIGHT:
            t = low + at * (high - low)
            yield (t if abs(second[0] - first[0]) == near else 1 - t), weight * (high - low)


# ---- Places and bays ------------------------------------------------------------------------------------------------


def _beside(held: Supports, u1: float, u2: float, low: Run, high: Run) -> list[Place]:
    """The places that strips over an interval run over, by v; of many level ones those that a stretch may hang on."""
    u1, u2 = held.within(u1), held.within(u2)
    middle = (u1 + u2) / 2
    slack = NEAR if u2 - u1 < NEAR else 0.0  # a strip at the end of a support runs over it
    first = max(bisect_left(held.stops, middle - slack) - 1, 0)
    last = min(bisect_right(held.stops, middle + slack), len(held.over))
    if all(held.level[n] is not None for n in range(first, last)):
        found = [place for n in range(first, last) for place in _near(held.level[n] or (), min(low), max(high))]
        return found if last - first == 1 else _merged(found)
    return grouped({s.id: s for n in range(first, last) for s in held.over[n]}.values(), u1, u2)


def _near(places: Sequence[Place], low: float, high: float) -> Sequence[Place]:
    """Of level places those beside a stretch; where it hangs out, also those behind, as far back as it hangs out."""
    if not places:
        return ()
    bottom, top = places[0].run[0], places[-1].run[0]
    if low < bottom:
        high = max(high, 2 * bottom - low)
    if high > top:
        low = min(low, 2 * top - high)
    start = bisect_left(places, low, key=_level_of) - 1
    end = bisect_right(places, high, key=_level_of) + 1
    return places[max(start, 0) : end]


def _level_of(place: Place) -> float:
    return place.run[0]


def _merged(places: Iterable[Place]) -> list[Place]:
    """Level places of two stretches of supports that meet, those at one place made one."""
    found: list[Place] = []
    for place in sorted(places, key=_level_of):
        if found and place.run[0] - found[-1].run[0] < SAME_PLACE:
            found[-1] = Place(found[-1].run, tuple(dict.fromkeys((*found[-1].ids, *place.ids))))
        else:
            found.append(place)
    return found


def _run_on(held: Supports, u1: float, u2: float) -> tuple[list[Place], list[float]]:
    """The places of all supports, each run on if need be, and where over the interval their order or nearness turns."""
    u1, u2 = held.within(u1), held.within(u2)  # an eave past the outermost ends hangs on the nearest strip
    runs = [(s.v_at(u1), s.v_at(u2)) for s in held.each]
    turns = _swaps(runs)
    rows: dict[Run, list[Run]] = {}
    for support, run in zip(held.each, runs, strict=True):
        rows.setdefault(run, []).append((support.away(u1), support.away(u2)))
    for row in rows.values():
        turns += _swaps(row)
    return grouped(held.each, u1, u2), turns


def _bays(places: Sequence[Place], ran_on: bool, below: bool, above: bool) -> list[_Bay]:
    """The bays between places, with what hangs out below and above as far as the places behind hold it."""
    bottom, top = places[0], places[-1]
    found = [_Bay(a.run, b.run, a, b, ran_on) for a, b in pairwise(places)]
    for back in places[1:] if below else ():
        found.insert(0, _Bay(_mirrored(back.run, bottom.run), found[0].low, bottom, back, ran_on))
    for back in reversed(places[:-1]) if above else ():
        found.append(_Bay(found[-1].high, _mirrored(back.run, top.run), back, top, ran_on))
    return found


def _everywhere(places: Sequence[Place], ran_on: bool) -> list[_Bay]:
    """The bays of all supports, to the ends of the plan."""
    bottom, top = places[0], places[-1]
    if bottom is top:
        return [_Bay(_BOTTOM, _TOP, top, top, ran_on)]
    held = sum(top.run) - sum(bottom.run) >= 2 * ONE_PLACE_IN
    found = _bays(places, ran_on, True, True)
    under = _Bay(_BOTTOM, found[0].low, bottom, top if held else bottom, ran_on, over=bottom)
    beyond = _Bay(found[-1].high, _TOP, bottom if held else top, top, ran_on, over=top)
    return [under, *found, beyond]


def _clipped(bays: Iterable[_Bay], low: Run, high: Run) -> Iterator[_Bay]:
    """The parts of bays between two runs."""
    for bay in bays:
        below, above = max(low, bay.low, key=sum), min(high, bay.high, key=sum)
        if sum(below) < sum(above):
            yield replace(bay, low=below, high=above)


# ---- Runs -----------------------------------------------------------------------------------------------------------


def _at(run: Run, t: float) -> float:
    return run[0] + t * (run[1] - run[0])


def _part(run: Run, t1: float, t2: float) -> Run:
    return _at(run, t1), _at(run, t2)


def _up(run: Run, by: float) -> Run:
    return run[0] + by, run[1] + by


def _mirrored(run: Run, about: Run) -> Run:
    return 2 * about[0] - run[0], 2 * about[1] - run[1]


def _before(one: Run, other: Run) -> bool:
    """Whether a run lies before another at either end."""
    return one[0] < other[0] - CROSSING or one[1] < other[1] - CROSSING


def _swaps(runs: Sequence[Run]) -> list[float]:
    """Where any two of some runs cross."""
    if all(run[0] == run[1] for run in runs):
        return []
    return _crossings(combinations(runs, 2))


def _crossings(pairs: Iterable[tuple[Run, Run]]) -> list[float]:
    """Where two runs of a pair cross inside the interval, as parts of it."""
    found = []
    for (a, b), (c, d) in pairs:
        before, after = a - c, b - d
        if (before < -CROSSING and after > CROSSING) or (before > CROSSING and after < -CROSSING):
            found.append(before / (before - after))
    return found
