"""The load path of a house in one state: every line's chain, then the foundation bodies."""

from __future__ import annotations

from collections.abc import Sequence

from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces
from groundsill.loadpath.anchors import anchor_stages
from groundsill.loadpath.both_ways import with_both_ways
from groundsill.loadpath.bracing import bracing_stages, with_strengths
from groundsill.loadpath.case import LineCase, case_of, demands
from groundsill.loadpath.chain import Chain, Stage
from groundsill.loadpath.check_value import as_asked, check_words
from groundsill.loadpath.chords import chord_stage
from groundsill.loadpath.dowels import dowel_stages
from groundsill.loadpath.drift import drift_stage
from groundsill.loadpath.floor import floor_stages
from groundsill.loadpath.inner.stages import inner_stages
from groundsill.loadpath.masonry_stem import masonry_stage
from groundsill.loadpath.open_force import at_most, between
from groundsill.loadpath.plate import splice_stage
from groundsill.loadpath.plate_uplift import uplift_stage
from groundsill.loadpath.proof import with_acceptances
from groundsill.loadpath.wind import wind_stage
from groundsill.work.inner import inner_of, plain_words
from groundsill.work.pieces import Piece
from groundsill.working.sheet import Sheet, open_sheet, quiet

__all__ = ["chain_of", "chains_of"]


def chains_of(reading: Reading, forces: Forces, pieces: Sequence[tuple[str, Piece]]) -> tuple[Chain, ...]:
    """The chain of every line, relied on or not, with this work laid on the survey."""
    lines = reading.in_order(reading.house.survey.underfloor.lines)
    return tuple(chain_of(reading, forces, id, pieces) for id, _ in lines)


def _quake(
    reading: Reading, forces: Forces, id: str, pieces: Sequence[tuple[str, Piece]]
) -> tuple[LineCase, tuple[Stage, ...]]:
    """A line under these earthquake forces, and every stage of its chain, from the floor down."""
    case = with_strengths(demands(case_of(reading, forces, id, pieces)))
    return case, with_acceptances(case, _stages(case))


def chain_of(reading: Reading, forces: Forces, id: str, pieces: Sequence[tuple[str, Piece]]) -> Chain:
    """The chain of one line, with those of the pieces that stand on it."""
    remark, forces = check_words(reading, forces, id), as_asked(reading, forces, (id,))
    line, force = reading.house.survey.underfloor.lines[id], forces.lines[id]
    inner = inner_of(pieces).get(id)
    stages: tuple[Stage, ...] = ()
    if force.relied_on:
        case, stages = _quake(reading, forces, id, pieces)
        if force.open:
            most = None
            if force.most_lb is not None:
                with quiet() if open_sheet() is None else Sheet():  # a sheet of its own, for the marks
                    _, most = _quake(reading, at_most(forces), id, pieces)
            stages = between(stages, most, force.open)
        stages = (*stages, *wind_stage(case, stages, _stages))
    return Chain(
        id,
        line.mark,
        line.name,
        "line",
        force.direction or "skewed",
        force.relied_on,
        force.reason,
        float(force.force_lb),
        stages,
        remark="; ".join(text for text in (*(plain_words(id, inner) if inner is not None else ()), remark) if text),
    )


def _stages(case: LineCase) -> tuple[Stage, ...]:
    """A line from the floor boards to its bolts and its brick stem, for the force that its case is made for."""
    anchors = anchor_stages(case)
    quake = case.lateral == "earthquake"  # drift is the earthquake's, and the chord force is worked out for it alone
    drift = (drift_stage(case),) if quake else ()
    stages = (
        *floor_stages(case),
        splice_stage(case),
        *((chord_stage(case),) if quake else ()),
        *bracing_stages(case),
        *drift,
        *anchors,
        *uplift_stage(case, anchors),
        *(inner_stages(case, drift) if case.inner is not None else ()),
        *masonry_stage(case),
        *(dowel_stages(case) if quake else ()),
    )
    return with_both_ways(case, stages)
