"""The chain of a braced line: the one object that terminal, screen, paper and drawing are views of.

A chain is an ordered series of stages; a stage holds links, each with its scope, and a rule for combining them. A
link's *ratio* is demand over capacity, each in its own standard's format; it is None when there is nothing to divide
by. *Cannot be checked* is never a pass, and *indicated* (worked out beyond a standard's limits by a named extension)
is none either.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import inf
from typing import Literal

from groundsill.loadpath.shares import LineShares
from groundsill.working.value import Mark

__all__ = [
    "Chain",
    "Combine",
    "Expected",
    "Link",
    "LoadLevel",
    "ScopeKind",
    "Stage",
    "Status",
    "Verdict",
    "governing",
    "status_of",
    "verdict_of",
    "weakest",
    "with_ends",
]

Status = Literal["passes", "fails", "indicated", "cannot be checked", "does not apply"]
Verdict = Literal["passes", "fails", "depends", "indicated", "cannot be checked", "does not apply"]
LoadLevel = Literal["strength", "allowable"]
ScopeKind = Literal["line", "segment", "sill", "joint", "body"]
Combine = Literal["every link must pass", "the parts carry together"]


@dataclass(frozen=True, slots=True)
class Expected:
    """The line force at which a link is expected to reach its strength, with its spread, and how it gives way."""

    low_lb: float
    best_lb: float
    high_lb: float
    manner: Literal["ductile", "brittle"]
    basis: str


@dataclass(frozen=True, slots=True)
class Link:
    """One link of a chain.

    ``address`` is permanent: ``line/<id>/<stage>/<scope id>/<direction>``. ``demand`` and ``capacity`` are in ``unit``
    at ``level``. ``least_favourable`` is the worst ratio over both ends of every uncertain fact the check uses, and
    ``depends_on`` names those facts when they decide the verdict. ``working`` names the sections of a sheet whose steps
    lead to it, besides the address itself. A ``minimum`` is a limit of making, a least cover or the longest trench: it
    is kept or not kept, and met exactly it is no link near its strength.
    """

    address: str
    title: str
    scope: ScopeKind
    scope_id: str
    direction: Literal["+", "-", "both"]
    level: LoadLevel
    unit: str
    status: Status
    demand: float | None = None
    capacity: float | None = None
    ratio: float | None = None
    reason: str = ""
    clause: str = ""
    extension: str = ""
    marks: tuple[Mark, ...] = ()
    expected: Expected | None = None
    least_favourable: float | None = None
    verdict: Verdict = "cannot be checked"
    depends_on: tuple[str, ...] = ()
    working: tuple[str, ...] = ()
    minimum: bool = False


@dataclass(frozen=True, slots=True)
class Stage:
    """One stage of a chain, from the floor boards down; ``note`` is what the trade says beside it, in no figure.

    ``shares`` are those of the bolts in the foundation, where they are worked out on the springs of their slip.
    """

    key: str
    title: str
    combine: Combine
    links: tuple[Link, ...]
    note: str = ""
    shares: LineShares | None = None


@dataclass(frozen=True, slots=True)
class Chain:
    """The links of one braced line (or of one foundation body), from floor to soil.

    ``force_lb`` is the line's earthquake force at strength level, before redundancy; of a foundation body, the greater
    of its forces by an earthquake along x and one along y. ``percent`` is the share of the required force that the
    weakest checked link carries; None when nothing could be checked, and where that link would carry it all while
    another could not be checked. A link without any strength that is asked for next to nothing takes off only that.
    ``remark`` is what stands at its head whatever the verdict.
    """

    id: str
    mark: str
    name: str
    kind: Literal["line", "body"]
    direction: str
    relied_on: bool
    relied_reason: str
    force_lb: float
    stages: tuple[Stage, ...]
    percent: float | None = None
    governing: str | None = None
    first_to_fail: tuple[str, ...] = ()
    verdict: Verdict = "cannot be checked"
    headline: str = ""
    remark: str = ""

    @property
    def links(self) -> tuple[Link, ...]:
        """Every link, in order."""
        return tuple(link for stage in self.stages for link in stage.links)


def status_of(demand: float | None, capacity: float | None, extension: str = "") -> tuple[Status, float | None]:
    """Status and ratio from demand and capacity; zero capacity fails without a ratio, zero demand does not apply."""
    if demand is None or capacity is None:
        return "cannot be checked", None
    if demand <= 0:
        return "does not apply", None
    if capacity <= 0:
        return "fails", None
    ratio = float(demand) / float(capacity)
    if ratio > 1:
        return "fails", ratio
    return ("indicated" if extension else "passes"), ratio


def verdict_of(statuses: Iterable[Status | Verdict]) -> Verdict:
    """The verdict of several links together: the worst of them, and nothing unknown counts as a pass."""
    found = set(statuses) - {"does not apply"}
    worst_first: tuple[Verdict, ...] = ("fails", "cannot be checked", "depends", "indicated", "passes")
    for word in worst_first:
        if word in found:
            return word
    return "does not apply"


def governing(links: Iterable[Link]) -> Link | None:
    """The link with the highest demand over capacity; one without any capacity comes before all.

    A minimum that is kept stands behind every link that carries: only where there is no other does it come forward.
    """
    checked = [link for link in links if link.status not in ("does not apply", "cannot be checked")]
    first = [link for link in checked if not link.minimum or link.status == "fails"] or checked
    return max(first, key=lambda link: inf if link.ratio is None else link.ratio, default=None)


def weakest(chains: Iterable[Chain]) -> Chain | None:
    """The relied-on chain that carries the least of its force, one of unknown share after all known; None for none."""
    relied = (chain for chain in chains if chain.relied_on)
    return min(relied, key=lambda chain: inf if chain.percent is None else chain.percent, default=None)


def with_ends(link: Link, ends: Iterable[Link], deciding: tuple[str, ...]) -> Link:
    """A link with its verdict over both ends of every uncertain fact: passes only if the least favourable passes."""
    others = list(ends)
    ratios = [e.ratio for e in (link, *others) if e.ratio is not None]
    nothing = any(e.status == "fails" and e.ratio is None for e in (link, *others))
    worst = None if nothing or not ratios else max(ratios)
    statuses: set[Status] = {e.status for e in (link, *others)}
    if len(statuses) == 1:
        verdict: Verdict = link.status
        deciding = ()
    elif statuses <= {"passes", "does not apply"}:
        verdict, deciding = "passes", ()
    elif statuses <= {"passes", "indicated", "does not apply"}:
        verdict = "indicated"
    elif "cannot be checked" in statuses:
        verdict = "fails" if link.status == "fails" else "cannot be checked"
    else:
        verdict = "depends"
    return replace(link, least_favourable=worst, verdict=verdict, depends_on=deciding)
