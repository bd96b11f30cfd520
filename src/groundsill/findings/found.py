"""All findings of a house, the heaviest first."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Final

from groundsill.findings.cracks import cracks
from groundsill.findings.finding import WEIGHTS, Finding, Weight
from groundsill.findings.lean import lean
from groundsill.findings.levels import levels
from groundsill.findings.monitors import monitors
from groundsill.findings.soil import soil
from groundsill.forces.reading import Reading
from groundsill.house.settle import prepare
from groundsill.work.document import House

__all__ = ["Findings", "findings_of"]

_LOOKED_AT: Final[tuple[tuple[str, Callable[[Reading], Iterator[Finding]]], ...]] = (
    ("cracks, cold joints and gaps in the foundation", cracks),
    ("lean of the foundation", lean),
    ("soil against the wood", soil),
    ("gauges, plumb and level marks read over time", monitors),
    ("the level survey", levels),
)
_NOT_YET: Final = (
    "the quality of concrete, mortar and stone by themselves", "water and drainage",
    "decay and insects in the wood", "what nobody has looked at",
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
