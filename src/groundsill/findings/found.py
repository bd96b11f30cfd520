"""All findings of a house, the heaviest first."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from groundsill.findings.concrete import concrete
from groundsill.findings.cracks import cracks
from groundsill.findings.finding import WEIGHTS, Finding, Weight
from groundsill.findings.framing import framing
from groundsill.findings.lean import lean
from groundsill.findings.levels import levels
from groundsill.findings.masonry import masonry
from groundsill.findings.monitors import monitors
from groundsill.findings.noted import noted
from groundsill.findings.sills import bolts, sills
from groundsill.findings.soil import soil
from groundsill.findings.unseen import NEXT, unseen
from groundsill.forces.reading import Reading
from groundsill.house.settle import prepare
from groundsill.work.document import House

__all__ = ["Findings", "findings_of"]

_LOOKED_AT: Final[tuple[tuple[str, Callable[[Reading], Iterator[Finding]]], ...]] = (
    ("cracks, cold joints and gaps in the foundation", cracks),
    ("lean of the foundation", lean),
    ("concrete by itself, stretch by stretch, with its footing", concrete),
    ("brick and stone by themselves, stretch by stretch", masonry),
    ("soil against the wood", soil),
    ("the sill, piece by piece: decay, insects, damp, bearing", sills),
    ("old bolts, line by line", bolts),
    ("posts, what was cut or notched, let-in braces, balloon framing, blocking", framing),
    ("gauges, plumb and level marks read over time", monitors),
    ("the level survey", levels),
)
_LAST: Final[tuple[tuple[str, Callable[[Reading, Sequence[Finding]], Iterator[Finding]]], ...]] = (
    ("whatever else the surveyor noted, in its own words", noted),
    ("what nobody has looked at", unseen),
)  # each reads what the topics before it have found
_NOT_YET: Final = (
    "water and drainage",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Findings:
    """What was found at a house: the findings, heaviest first; what was looked at, and what this does not look at."""

    findings: tuple[Finding, ...]
    looked_at: tuple[str, ...]
    not_looked_at: tuple[str, ...]

    def of(self, weight: Weight) -> tuple[Finding, ...]:
        """Those of one weight."""
        return tuple(finding for finding in self.findings if finding.weight == weight)


def findings_of(house: House) -> Findings:
    """Every finding of a house, from its survey as it stands: an unknown fact stays unknown here."""
    reading = Reading(house, prepare(house).best.marks)
    found = [finding for _, topic in _LOOKED_AT for finding in topic(reading)]
    for _, last in _LAST:
        found += last(reading, tuple(found))
    found.sort(key=lambda finding: (WEIGHTS.index(finding.weight), finding.address != NEXT))
    return Findings(tuple(found), tuple(what for what, _ in (*_LOOKED_AT, *_LAST)), _NOT_YET)
