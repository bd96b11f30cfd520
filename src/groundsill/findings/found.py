"""All findings of a house, the heaviest first."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Final

from groundsill.findings.concrete import concrete
from groundsill.findings.cracks import cracks
from groundsill.findings.finding import WEIGHTS, Finding, Weight
from groundsill.findings.masonry import masonry
from groundsill.findings.sills import bolts, sills
from groundsill.forces.reading import Reading
from groundsill.house.settle import prepare
from groundsill.work.document import House

__all__ = ["Findings", "findings_of"]

_LOOKED_AT: Final[tuple[tuple[str, Callable[[Reading], Iterator[Finding]]], ...]] = (
    ("cracks, cold joints and gaps in the foundation", cracks),
    ("concrete by itself, stretch by stretch, with its footing", concrete),
    ("brick and stone by themselves, stretch by stretch", masonry),
    ("the sill, piece by piece: decay, insects, damp, bearing", sills),
    ("old bolts, line by line", bolts),
)
_NOT_YET: Final = (
    "lean of the foundation", "the quality of concrete, mortar and stone by themselves", "soil against the wood",
    "water and drainage", "decay and insects in the wood", "the level survey", "readings over time",
    "what nobody has looked at",
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
    found.sort(key=lambda finding: WEIGHTS.index(finding.weight))
    return Findings(tuple(found), tuple(what for what, _ in _LOOKED_AT), _NOT_YET)
