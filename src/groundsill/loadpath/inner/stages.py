"""The stages that a new foundation adds to the chain of its line, below the bolts."""

from __future__ import annotations

from collections.abc import Sequence

from groundsill.loadpath.case import LineCase
from groundsill.loadpath.chain import Stage
from groundsill.loadpath.inner.beside import beside_stage
from groundsill.loadpath.inner.strip import strip_stage

__all__ = ["inner_stages"]


def inner_stages(case: LineCase, drift: Sequence[Stage]) -> tuple[Stage, ...]:
    """The strip itself, and the old foundation beside it; the old one is asked by the earthquake alone."""
    moved = [link for stage in drift for link in stage.links]
    beside = (beside_stage(case, moved),) if case.lateral == "earthquake" else ()
    return (strip_stage(case), *beside)
