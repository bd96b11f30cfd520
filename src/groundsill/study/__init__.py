"""The one entrance: a house in, a study out.

:func:`run` works out forces and chains as found and for each alternative, once at the best value of every fact and once
at either end of each uncertain one, and gathers the verdicts. :func:`working` goes the same way with a sheet open, when
somebody asks how a figure came about: working is never stored.

`result` the study as data · `states` as found and with each alternative · `ends` both ends of every uncertain fact ·
`looked` what each part of it looks at · `prescribed` the prescriptive way beside the chains · `strength` `concrete`
what is known of the old concrete · `settled_by` the tests that would settle a line · `manifest` what it was made with ·
`unread` words that no table has.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import fields, is_dataclass, replace
from math import floor
from typing import Any, TypeVar

from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces
from groundsill.house.cores import evidence_of
from groundsill.house.missing import incomplete
from groundsill.house.settle import End, FactRef, prepare
from groundsill.loadpath.chain import Chain, verdict_of, weakest
from groundsill.loadpath.headline import in_short
from groundsill.loadpath.inner.strip import EARTHQUAKE_ALONE
from groundsill.loadpath.prescriptive import doubts_of
from groundsill.loadpath.rises import compared
from groundsill.loadpath.storey_above import StoreyAbove, next_weakest, storeys_above
from groundsill.study.concrete import concrete_strengths
from groundsill.study.ends import Ends, Progress
from groundsill.study.manifest import editions_of, manifest_of
from groundsill.study.prescribed import prescribed, scope_over_ends
from groundsill.study.result import AS_FOUND, FORMAT, Manifest, Move, Run, Study, UncertainFact
from groundsill.study.settled_by import settling_tests
from groundsill.study.states import Chains, State, go, states_of
from groundsill.study.unread import unread
from groundsill.work.document import House
from groundsill.work.inner import plain_words
from groundsill.work.pieces import ConcretePiece, DrainagePiece, SoilPiece
from groundsill.working.sheet import Sheet, section
from groundsill.working.value import Value

__all__ = ["AS_FOUND", "FORMAT", "Manifest", "Move", "Progress", "Run", "Study", "UncertainFact", "run", "working"]

T = TypeVar("T")


def run(house: House, progress: Progress | None = None, ranges: bool = True) -> Study:
    """The study of a house, as found and with each of its alternatives.

    Args:
        house: the house document.
        progress: told how many of how many runs are done.
        ranges: also run at both ends of every uncertain fact (without, verdicts stand on best values alone).

    Raises:
        BadSurvey: when the survey lacks what no force can be worked out without.
    """
    editions_of(house)
    settling = prepare(house)
    states = states_of(house)
    with Sheet() as sheet:
        forces, found = go(settling.best.house, settling.best.marks, states)
        reading = Reading(settling.best.house, settling.best.marks)
        above = storeys_above(reading, forces)
        path, lines = prescribed(reading, states, found)
    marks = {mark for step in sheet.steps for mark in step.marks} | doubts_of(path, lines)
    plain = _plain(forces)
    ends = Ends(settling, states, found, progress)
    if ranges:
        ends.one_at_a_time()
        ends.all_adverse()
        path = scope_over_ends(path, settling)
    runs = _with_storeys(
        tuple(
            replace(_run(state, chains, ends, forces), prescriptive=beside)
            for state, chains, beside in zip(states, found, lines, strict=True)
        ),
        _plain(above),
    )
    facts = tuple(UncertainFact(r.path, r.label, r.unit, r.low, r.best, r.high, r.why) for r in settling.facts)
    warnings = (*forces.warnings, *(m.reason for m in forces.missing), *forces.gravity.remarks, not_covered(forces))
    if ranges:
        runs = tuple(replace(run, settled_by=_plain(settling_tests(ends, n, run.chains))) for n, run in enumerate(runs))
    return Study(
        FORMAT,
        manifest_of(house, marks),
        house.survey.name,
        house.units,
        plain,
        facts,
        runs,
        ends.ranked(),
        tuple(dict.fromkeys(warnings)),
        (*incomplete(house.survey), *unread(house)),
        path,
        _plain(concrete_strengths(house.survey, settling)),
    )


def not_covered(forces: Forces) -> str:
    """What no check looks at, in one sentence; wind with what is missing for it."""
    wind = f"wind ({forces.wind_lacks})"
    if forces.wind is not None:
        wind = "uplift by wind, wind on the storeys above, chords of the floor in wind"
    return f"not checked here: {wind}, and anything out of plane"


def working(house: House, key: str = AS_FOUND, ends: Mapping[FactRef | str, End] | None = None) -> Sheet:
    """The sheet of one state of the house, every step in order, at the best value of its facts (or the ends given)."""
    settling = prepare(house)
    settled = settling.at(ends or {})
    states = [state for state in states_of(house) if state.key == key]
    if not states:
        raise KeyError(f"{key} is neither {AS_FOUND} nor an alternative of this house")
    with Sheet() as sheet:
        _, found = go(settled.house, settled.marks, states)
        reading = found[0].reading
        storeys_above(reading, found[0].whole)
        prescribed(reading, states, found)
        for id in settled.house.survey.foundation.segments:
            with section(f"concrete/{id}"):
                evidence_of(settled.house.survey, id)
    return sheet


def _with_storeys(runs: tuple[Run, ...], above: tuple[StoreyAbove, ...]) -> tuple[Run, ...]:
    """The runs with the storeys above, the next weakest level, and every existing element held against as found.

    The work asks no more of the storeys above: the force of their levels is the same in every state.
    """
    first = (*runs[0].chains, *runs[0].bodies)
    told = []
    for run in runs:
        work = run.key != AS_FOUND
        chains = (*run.chains, *run.bodies)
        told.append(
            replace(
                run,
                storeys=above,
                next_weakest=next_weakest(run.chains, above, work),
                compared=compared(first, chains, above, above) if work else None,
            )
        )
    return tuple(told)


_UNCOUNTED = (ConcretePiece, DrainagePiece, SoilPiece)


def _soil(line: Chain | None, bodies: Iterable[Chain]) -> str:
    """What the soil carries under the line of the headline, body by body; of the others only how many fall short."""
    short = [chain for chain in bodies if chain.percent is not None and chain.percent < 100]
    under = [c for c in short if line is None or any(link.scope_id == line.id for link in c.links)]
    told = f"; soil: {', '.join(f'{c.mark} carries {floor(c.percent or 0.0)} %' for c in under)}" if under else ""
    others = len(short) - len(under)
    if not others:
        return told
    parts = "part of the foundation falls" if others == 1 else "parts of the foundation fall"
    return f"{told}; {others} {'other ' if under else ''}{parts} short on the soil"


def _run(state: State, chains: Chains, ends: Ends, forces: Forces) -> Run:
    place = ends.states.index(state)
    lines = tuple(ends.concluded(place, chain) for chain in chains.lines)
    bodies = tuple(ends.concluded(place, chain) for chain in chains.bodies)
    verdict = verdict_of(chain.verdict for chain in (*lines, *bodies))
    worst = weakest(lines)
    headline = "no line is relied on" if worst is None else f"line {worst.mark} ({worst.name}) {in_short(worst)}"
    if forces.missing:  # no chain can make up for a direction that nothing holds
        verdict, headline = "fails", "; ".join((*(m.reason for m in forces.missing), headline))
    headline += _soil(worst, bodies)
    windy = [c.mark for c in lines if any(EARTHQUAKE_ALONE in link.reason for link in c.links)]
    if windy:
        headline += f"; {EARTHQUAKE_ALONE}, so that in wind nothing passes {', '.join(windy)}"
    uncounted = tuple(
        f"{piece.kind} {piece.mark or id}" for id, piece in state.laid.pieces if isinstance(piece, _UNCOUNTED)
    )
    return Run(
        state.key,
        state.name,
        state.purpose,
        chains.floor,
        _plain(dict(chains.forces)),
        lines,
        bodies,
        state.laid.misplaced,
        uncounted,
        verdict,
        headline,
        remarks=tuple(words for id, piece in state.inner.items() for words in plain_words(id, piece)),
    )


def _plain(thing: T) -> T:
    """A result with every recorded value turned into the plain number it is."""
    return _bare(thing)  # type: ignore[no-any-return]


def _bare(thing: Any) -> Any:
    if isinstance(thing, Value):
        return float(thing)
    if isinstance(thing, tuple):
        return tuple(_bare(item) for item in thing)
    if isinstance(thing, dict):
        return {key: _bare(item) for key, item in thing.items()}
    if is_dataclass(thing) and not isinstance(thing, type):
        values = {f.name: _bare(getattr(thing, f.name)) for f in fields(thing)}
        return replace(thing, **values)
    return thing
