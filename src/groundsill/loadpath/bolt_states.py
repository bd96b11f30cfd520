"""Which of the three states a check of bolts stands on: breakout on the worst of them, wood on yield where it may.

The wood of a piece may share at yield only where each of its joints yields before the concrete under it breaks, at
expected strengths, with both spreads: where these overlap it is too close to call, and it may not.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from groundsill.loadpath.anchor_force import anchor_force
from groundsill.loadpath.bolt_shares import OnSprings
from groundsill.loadpath.case import LineCase
from groundsill.loadpath.chain import Expected
from groundsill.loadpath.shares import BoltShare, SillShares
from groundsill.loadpath.sill_bolts import SPREAD_OF_YIELD, Wood
from groundsill.standards.aci318_19.expected import expected_breakout
from groundsill.working.steps import given, scale

__all__ = ["NOT_KNOWN", "Strength", "Yields", "expected_on", "in_wood", "on_worst_bolt", "worst_bolt", "yields_first"]


@dataclass(frozen=True, slots=True)
class Strength:
    """One bolt in the foundation, by its id, lb: design and nominal strength, and the way it fails."""

    id: str
    design: float
    nominal: float
    way: str


@dataclass(frozen=True, slots=True)
class Yields:
    """Whether the wood of a piece yields before its concrete breaks, and the words that say so."""

    first: bool = False
    words: str = "what the foundation breaks at is not known"


NOT_KNOWN: Final = Yields()


def yields_first(wood: Wood, strengths: Sequence[Strength]) -> Yields:
    """Whether each joint in wood yields, at the most, at less than what its concrete breaks at, at the least."""
    yields = {id: best for id, _, best in wood.each}
    if any(strength.id not in yields for strength in strengths):
        return Yields(words="what the bolts yield at in wood is not known")
    soft, sure = True, False
    for strength in strengths:
        low, high = (part * yields[strength.id] for part in SPREAD_OF_YIELD)
        if strength.way.startswith(("breakout", "pryout")):
            mean = expected_breakout(float(strength.nominal))
            least, most = float(mean.low), float(mean.high)
        elif strength.way == "steel":
            least = most = float(strength.nominal)
        else:
            return Yields(words="what the concrete of a bolt known by its test alone breaks at is not known")
        soft, sure = soft and high <= least, sure or low > most
    if soft:
        return Yields(True, "the wood yields before the concrete breaks, at expected strengths")
    return Yields(
        words="the concrete breaks before the wood yields, at expected strengths" if sure
        else "whether the wood yields before the concrete breaks is too close to call"
    )  # fmt: skip


def worst_bolt(shares: SillShares, strengths: Sequence[Strength]) -> int:
    """The bolt with the greatest demand over its strength, in its own worst state."""
    return max(
        range(len(strengths)), key=lambda n: shares.bolts[n].worst_lb / max(float(strengths[n].design), 1e-9)
    )  # fmt: skip


def on_worst_bolt(case: LineCase, springs: OnSprings, bolt: BoltShare) -> tuple[float, str]:
    """The force on the bolt that governs, recorded, and its state in words."""
    whole, level = anchor_force(case)
    state = _state(bolt)
    label = f"part of the line's force on bolt {bolt.name}: {state}"
    part = given("p", bolt.worst_lb / float(whole), "1", label, springs.marks)
    force = scale(whole, part, symbol="V_ua", label=f"force on bolt {bolt.name}")
    words = f"on bolt {bolt.name}, {state}, {level}"
    if bolt.wood_lb is not None and bolt.worst_lb > bolt.wood_lb and not _held(bolt):
        words += (
            f"; its joint in wood is expected to yield at {bolt.wood_lb:,.0f} lb, which another basis would count on"
        )
    return force, words


def _held(bolt: BoltShare) -> bool:
    """Whether its joint in wood ends what the governing state brings on a bolt."""
    return bolt.slack_held and bolt.worst_lb == bolt.slack_lb


def _state(bolt: BoltShare) -> str:
    """The state that brings most on a bolt; where several bring the same, the plainest of them."""
    slack = f"with hole slack, touching first (play {bolt.slack_in:g} in.; a filled hole has none)"
    if bolt.slack_held and bolt.wood_lb is not None:
        slack += (
            f": no more than its joint in wood can bring, {SPREAD_OF_YIELD[1]:g} times the {bolt.wood_lb:,.0f} lb that "
            "it is expected to yield at"
        )
    states = (
        (bolt.even_lb, "sharing alike"),
        (bolt.elastic_lb, "elastic, on the springs of all bolts"),
        (bolt.slack_lb, slack),
        (bolt.yield_lb or 0.0, "at yield of every joint in wood"),
    )
    return max(states, key=lambda pair: round(pair[0], 3))[1]


def expected_on(expected: Expected | None, bolt: BoltShare) -> Expected | None:
    """The line force at which the governing bolt breaks out: best elastically, at the least in its worst state."""
    if expected is None or bolt.elastic_lb <= 0 or bolt.worst_lb <= 0:
        return None
    return replace(
        expected, low_lb=expected.low_lb * min(1.0, bolt.elastic_lb / bolt.worst_lb),
        basis=f"{expected.basis}; on bolt {bolt.name}, elastic at best, {_state(bolt)} at least",
    )  # fmt: skip


def in_wood(case: LineCase, springs: OnSprings, shares: SillShares, wood: Wood) -> tuple[float, float, str] | None:
    """Elastic force on the piece's bolts and what they hold so, lb at allowable level; None where they may yield.

    What they hold is told for the whole piece: its force when the bolt that is worst off comes to its own value.
    """
    held = {id: Z for id, Z, _ in wood.each}
    if shares.by_yield or not held or min(held.values()) <= 0 or springs.shares is None:
        return None
    down = float(case.allowable) / springs.shares.force_lb
    total = sum(bolt.elastic_lb for bolt in shares.bolts) * down
    worst = max(shares.bolts, key=lambda bolt: bolt.elastic_lb / held[bolt.id])
    used = worst.elastic_lb * down / held[worst.id]
    if used <= 0:
        return None
    count = f"{shares.works_elastic:.1f} of {len(shares.bolts)} bolts work"
    words = f"elastic sharing, worst on bolt {worst.name} ({count})"
    demand = given("V_b", total, "lb", f"force on the bolts of sill {shares.mark or shares.id}, elastic", springs.marks)
    capacity = given("V_a", total / used, "lb", f"held when bolt {worst.name} comes to its own Z'", springs.marks)
    return demand, capacity, words
