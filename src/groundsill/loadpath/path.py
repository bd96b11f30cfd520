"""The load path of a house in one state: every line's chain, then the foundation bodies."""

from __future__ import annotations

from collections.abc import Sequence

from groundsill.forces.reading import Reading, line_length_in
from groundsill.forces.seismic import Forces
from groundsill.house.survey import in_order
from groundsill.loadpath.anchors import anchor_stages
from groundsill.loadpath.bracing import bracing_stages, with_strengths
from groundsill.loadpath.case import LineCase, braces_of, demands
from groundsill.loadpath.chain import Chain, Stage
from groundsill.loadpath.floor import floor_stages
from groundsill.loadpath.plate import splice_stage
from groundsill.loadpath.proof import with_acceptances
from groundsill.work.pieces import HoldDownPiece, PanelPiece, Piece, SillBlockingPiece

__all__ = ["chain_of", "chains_of", "pieces_on"]


def pieces_on(reading: Reading, line_id: str, pieces: Sequence[tuple[str, Piece]]) -> tuple[tuple[str, Piece], ...]:
    """The pieces of work that stand on a line, directly or on one of its wall segments."""
    segments = reading.house.survey.underfloor.segments
    found: list[tuple[str, Piece]] = []
    for id, piece in pieces:
        if isinstance(piece, (PanelPiece, SillBlockingPiece, HoldDownPiece)):
            if segments[piece.segment].line == line_id:
                found.append((id, piece))
        elif getattr(piece, "line", None) == line_id:
            found.append((id, piece))
    return tuple(found)


def chains_of(reading: Reading, forces: Forces, pieces: Sequence[tuple[str, Piece]]) -> tuple[Chain, ...]:
    """The chain of every line, relied on or not, with this work laid on the survey."""
    lines = in_order(reading.house.survey.underfloor.lines)
    return tuple(chain_of(reading, forces, id, pieces_on(reading, id, pieces)) for id, _ in lines)


def chain_of(reading: Reading, forces: Forces, id: str, pieces: tuple[tuple[str, Piece], ...]) -> Chain:
    """The chain of one line, with the pieces that stand on it."""
    underfloor = reading.house.survey.underfloor
    line, force = underfloor.lines[id], forces.lines[id]
    stages: tuple[Stage, ...] = ()
    if force.relied_on:
        case = LineCase(
            reading,
            forces,
            id,
            line,
            force,
            line_length_in(reading.house, line),
            pieces,
            braces_of(reading, id, pieces),
            sills=tuple(
                (key, s)
                for key, s in sorted(in_order(underfloor.sills), key=lambda pair: pair[1].from_in)
                if s.line == id
            ),
        )
        case = with_strengths(demands(case))
        stages = (*floor_stages(case), splice_stage(case), *bracing_stages(case), *anchor_stages(case))
        stages = with_acceptances(case, stages)
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
    )
