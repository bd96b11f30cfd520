"""Elastic bars end to end on springs, pulled along themselves: who takes how much, and what passes each joint.

In: bars with their stiffness E A, a tie at each joint between two of them (nothing, a spring, or as one piece), springs
that hold the bars to the ground, each with the gap it has to close before it bears, and loads along the bars, all
pulling the same way. Out: the force of every spring, the force through every joint, and the axial force at any station.

Between two nodes a bar has one stiffness, so that an evenly spread load counts as half of it at either end and the
movements of the nodes are exact. Which springs bear is found by starting with all of them bearing: springs then only
ever drop out, since letting go of one that pulls backward moves every node back, and after at most as many rounds as
there are springs what bears also pushes. Pure statics: units are the caller's.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import inf

__all__ = ["Along", "Bar", "Held", "Spring", "axial", "held", "worst_at_joint", "worst_first"]

_NEAR = 1e-9


@dataclass(frozen=True, slots=True)
class Bar:
    """A bar between two stations, of one axial stiffness E A (above 0)."""

    start: float
    end: float
    stiffness: float


@dataclass(frozen=True, slots=True)
class Spring:
    """What holds a bar to the ground at a station: force for a unit of movement beyond ``gap``, which is 0 or more."""

    at: float
    stiffness: float
    gap: float = 0.0


@dataclass(frozen=True, slots=True)
class Along:
    """A load along the bars, spread evenly from start to end, or all at one station where they are the same."""

    start: float
    end: float
    force: float


@dataclass(frozen=True, slots=True)
class Held:
    """How bars are held, in the order that bars, joints and springs were given.

    ``springs`` are their forces, ``moved`` how far the bar has moved at each; ``joints`` the force through each,
    pulling positive; ``lost`` is load on bars that no spring holds, ``beside`` load that lies on no bar.
    """

    springs: tuple[float, ...]
    moved: tuple[float, ...]
    joints: tuple[float, ...]
    lost: float = 0.0
    beside: float = 0.0

    @property
    def greatest(self) -> float:
        """The greatest force of a spring; 0 when there is none."""
        return max(self.springs, default=0.0)

    @property
    def working(self) -> float:
        """How many springs really work: the whole force over the greatest share of it (0 where none holds any)."""
        return sum(self.springs) / self.greatest if self.greatest > 0 else 0.0


@dataclass(slots=True)
class _Chain:
    """Nodes in a row: what links each to the next, what is on it, and the springs on it."""

    link: list[float]
    load: list[float]
    springs: list[list[int]]


def held(bars: Sequence[Bar], ties: Sequence[float], springs: Sequence[Spring], loads: Sequence[Along]) -> Held:
    """Bars from start to end with a tie at each joint between two (0 for none, ``inf`` for as one piece).

    Raises:
        ValueError: for ties that do not go with the bars, a bar without length or stiffness, a spring that stands on no
            bar, has no stiffness or a gap below 0, or loads that pull both ways (the rule for gaps is for one way).
    """
    _refuse(bars, ties, springs, loads)
    homes = [_home(bars, spring.at) for spring in springs]
    if None in homes:
        raise ValueError(f"a spring at {springs[homes.index(None)].at:g} stands on no bar")
    chain, seams = _chain(bars, ties, springs, homes, loads)
    moved_at, active, lost = _moved(chain, springs)
    moved, forces = [0.0] * len(springs), [0.0] * len(springs)
    for node, on in enumerate(chain.springs):
        for n in on:
            moved[n] = moved_at[node]
            if n in active:
                forces[n] = springs[n].stiffness * (moved_at[node] - springs[n].gap)
    through = _through(chain, forces)
    beside = sum(load.force for load in loads) - sum(chain.load)
    return Held(tuple(forces), tuple(moved), tuple(through[seam] for seam in seams), lost, beside)


def worst_first(
    bars: Sequence[Bar], ties: Sequence[float], springs: Sequence[Spring], loads: Sequence[Along]
) -> tuple[Held, ...]:
    """For each spring the order of contact that is worst for it: it bears at once, all others after their whole gap.

    No other order gives it more. Every movement grows with the gap of any spring, and less than that gap does: so the
    force of a spring grows with the others' gaps and falls with its own.
    """
    found = []
    for n, one in enumerate(springs):
        first = [*springs[:n], Spring(one.at, one.stiffness), *springs[n + 1 :]]
        found.append(held(bars, ties, first, loads))
    return tuple(found)


def worst_at_joint(
    bars: Sequence[Bar], ties: Sequence[float], springs: Sequence[Spring], loads: Sequence[Along], joint: int
) -> tuple[Held, Held]:
    """The two orders of contact between which the force through a joint lies: all before it bear at once, or all after.

    What the springs before a joint hold together grows with the gap of each after it and falls with their own.
    """

    def order(before: bool) -> Held:
        first = [Spring(s.at, s.stiffness) if ((_home(bars, s.at) or 0) <= joint) is before else s for s in springs]
        return held(bars, ties, first, loads)

    return order(True), order(False)


def axial(
    bars: Sequence[Bar],
    ties: Sequence[float],
    springs: Sequence[Spring],
    loads: Sequence[Along],
    found: Held,
    station: float,
) -> float:
    """The force in the bar just before a station, pulling positive: what is held before it less what is on it there."""
    home = _home(bars, station)
    if home is None:
        return 0.0
    begins = home
    while begins > 0 and ties[begins - 1] > 0:
        begins -= 1

    def here(at: float) -> bool:
        on = _home(bars, at)
        return on is not None and begins <= on <= home and at < station

    total = sum(force for spring, force in zip(springs, found.springs, strict=True) if here(spring.at))
    for load in loads:
        if load.end > load.start:
            row = bars[begins : home + 1]
            over = (min(bar.end, load.end, station) - max(bar.start, load.start) for bar in row)
            total -= load.force * sum(max(part, 0.0) for part in over) / (load.end - load.start)
        elif here(load.start):
            total -= load.force
    return total


def _refuse(bars: Sequence[Bar], ties: Sequence[float], springs: Sequence[Spring], loads: Sequence[Along]) -> None:
    if len(ties) != max(len(bars) - 1, 0) or any(tie < 0 for tie in ties):
        raise ValueError(f"{len(ties)} ties for {len(bars)} bars: one of 0 or more for each joint between two")
    if any(bar.end <= bar.start or not 0 < bar.stiffness < inf for bar in bars):
        raise ValueError("a bar needs a length and a stiffness above 0")
    if any(b.start < a.end - _NEAR for a, b in pairwise(bars)):
        raise ValueError("bars lie end to end, in order")
    if any(not 0 < spring.stiffness < inf or not 0 <= spring.gap < inf for spring in springs):
        raise ValueError("a spring needs a stiffness above 0 and a gap of 0 or more")
    if min((load.force for load in loads), default=0.0) < 0:
        raise ValueError("loads must all pull the same way, and that way counts as positive")


def _home(bars: Sequence[Bar], at: float) -> int | None:
    """The bar that a station stands on; at a joint, the one that ends there."""
    return next((n for n, bar in enumerate(bars) if bar.start <= at <= bar.end), None)


def _chain(
    bars: Sequence[Bar],
    ties: Sequence[float],
    springs: Sequence[Spring],
    homes: Sequence[int | None],
    loads: Sequence[Along],
) -> tuple[_Chain, list[int]]:
    """All nodes in a row, and for each joint the node before it. Bars as one piece are linked without give."""
    chain, seams = _Chain([], [], []), []
    for n, bar in enumerate(bars):
        stops = {bar.start, bar.end, *(springs[m].at for m, home in enumerate(homes) if home == n)}
        stops |= {x for load in loads for x in (load.start, load.end) if bar.start < x < bar.end}
        places = sorted(stops)
        first = len(chain.load)
        chain.load += [0.0] * len(places)
        chain.springs += [[m for m, home in enumerate(homes) if home == n and springs[m].at == at] for at in places]
        for low, high in pairwise(places):
            chain.link.append(bar.stiffness / (high - low))
        chain.link.append(ties[n] if n < len(ties) else 0.0)
        for load in loads:
            if load.end > load.start:
                _spread(chain, places, first, load)
            elif _home(bars, load.start) == n:
                chain.load[first + places.index(load.start)] += load.force
        seams.append(len(chain.load) - 1)
    return chain, seams[:-1]


def _spread(chain: _Chain, places: Sequence[float], first: int, load: Along) -> None:
    """What of an evenly spread load lies on a bar, half of each stretch to either node."""
    for n, (low, high) in enumerate(pairwise(places)):
        over = min(high, load.end) - max(low, load.start)
        if over > 0:
            half = load.force * over / (load.end - load.start) / 2
            chain.load[first + n] += half
            chain.load[first + n + 1] += half


def _moved(chain: _Chain, springs: Sequence[Spring]) -> tuple[list[float], set[int], float]:
    """Movement of every node, the springs that bear, and the load of rows that none holds."""
    moved = [0.0] * len(chain.load)
    active: set[int] = set()
    lost, first = 0.0, 0
    for last, link in enumerate(chain.link):
        if link > 0:
            continue
        row = range(first, last + 1)
        first = last + 1
        on = {n for node in row for n in chain.springs[node]}
        load = sum(chain.load[node] for node in row)
        if not on or load <= 0:
            lost += load
            continue
        found = _row(chain, row, springs, on)
        moved[row.start : row.stop] = found
        active |= on
    return moved, active, lost


def _row(chain: _Chain, row: range, springs: Sequence[Spring], on: set[int]) -> list[float]:
    """Movement of the nodes of one row; ``on`` is left with the springs that bear."""
    at = {n: node - row.start for node in row for n in chain.springs[node]}
    while True:
        stiff = [0.0] * len(row)
        load = [chain.load[node] for node in row]
        for n in on:
            stiff[at[n]] += springs[n].stiffness
            load[at[n]] += springs[n].stiffness * springs[n].gap
        found = _swept(stiff, [chain.link[node] for node in row[:-1]], load)
        loose = {n for n in on if found[at[n]] < springs[n].gap}
        if not loose:
            return found
        on -= loose


def _swept(stiff: Sequence[float], link: Sequence[float], load: Sequence[float]) -> list[float]:
    """Nodes in a row, each held by ``stiff`` and linked to the next: what each moves, swept from end to end.

    Going along, all that lies before a node is one spring and one load on it: no difference of large numbers is taken,
    so that stiff bars on soft springs are as exact as the reverse. A link of ``inf`` passes movement whole.
    """
    holds, pushes = [stiff[0]], [load[0]]
    for n, c in enumerate(link):
        part = 1.0 if c == inf else c / (c + holds[n])
        holds.append(stiff[n + 1] + holds[n] * part)
        pushes.append(load[n + 1] + pushes[n] * part)
    moved = [pushes[-1] / holds[-1]]
    for n in range(len(link) - 1, -1, -1):
        c = link[n]
        moved.append(moved[-1] if c == inf else (pushes[n] + c * moved[-1]) / (holds[n] + c))
    return moved[::-1]


def _through(chain: _Chain, forces: Sequence[float]) -> list[float]:
    """The force from each node to the next, pulling positive: what the springs before it hold less what is on them."""
    through, total = [], 0.0
    for node, link in enumerate(chain.link):
        total += sum(forces[n] for n in chain.springs[node]) - chain.load[node]
        through.append(total if link > 0 else 0.0)
        if link <= 0:
            total = 0.0
    return through
