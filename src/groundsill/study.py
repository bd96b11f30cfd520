"""The one entrance: a house in, a study out.

:func:`run` works out forces and chains as found and for each alternative, once at the best value of every fact and once
at either end of each uncertain one, and gathers the verdicts. :func:`working` goes the same way with a sheet open, when
somebody asks how a figure came about: working is never stored.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass, fields, is_dataclass, replace
from typing import Any, Literal, TypeVar

from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces, work_out
from groundsill.house.settle import End, FactRef, Settling, prepare
from groundsill.loadpath.bodies import body_chains
from groundsill.loadpath.chain import Chain, Link, verdict_of, with_ends
from groundsill.loadpath.headline import concluded
from groundsill.loadpath.path import chain_of, chains_of, pieces_on
from groundsill.standards.basis import Basis as StandardsBasis
from groundsill.standards.basis import adoptions
from groundsill.work.apply import Laid, Misplaced, apply
from groundsill.work.document import House
from groundsill.work.pieces import ConcretePiece, DrainagePiece, SideplatePiece, SoilPiece
from groundsill.working.errors import BadSurvey, Fault
from groundsill.working.sheet import Sheet
from groundsill.working.value import Mark, Value
from groundsill.working.version import VERSION

__all__ = ["AS_FOUND", "FORMAT", "Manifest", "Run", "Study", "UncertainFact", "run", "working"]

FORMAT: Literal["groundsill.study/1"] = "groundsill.study/1"
AS_FOUND = "as-found"

Progress = Callable[[int, int], None]


@dataclass(frozen=True, slots=True)
class Manifest:
    """What the study was made with: program, input, documents, and what in it is still in doubt."""

    program: str
    house_hash: str
    code: str
    editions: dict[str, str]
    edition_reasons: dict[str, str]
    from_memory: tuple[str, ...]
    unverified: tuple[str, ...]
    assumed: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class UncertainFact:
    """A fact that may lie elsewhere within a range, as it was used."""

    path: str
    label: str
    unit: str
    low: float | bool | str
    best: float | bool | str
    high: float | bool | str
    why: str


@dataclass(frozen=True, slots=True)
class Run:
    """The load path of the house in one state: as found, or with one alternative laid on it.

    ``misplaced`` are pieces of work that have no place; ``uncounted`` those that no check counts yet.
    """

    key: str
    name: str
    purpose: str
    chains: tuple[Chain, ...]
    bodies: tuple[Chain, ...]
    misplaced: tuple[Misplaced, ...]
    uncounted: tuple[str, ...]
    verdict: str
    headline: str


@dataclass(frozen=True, slots=True)
class Study:
    """Everything that papers, screens and machines are told about a house."""

    format: Literal["groundsill.study/1"]
    manifest: Manifest
    name: str
    units: Literal["us", "si"]
    forces: Forces
    facts: tuple[UncertainFact, ...]
    runs: tuple[Run, ...]
    warnings: tuple[str, ...]


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
    _editions(house)
    settling = prepare(house)
    states = _states(house)
    with Sheet() as sheet:
        forces, found = _go(settling.best.house, settling.best.marks, states)
    marks = {mark for step in sheet.steps for mark in step.marks}
    ends = _Ends(settling, states, forces, found, progress)
    if ranges:
        ends.one_at_a_time()
        ends.all_adverse()
    runs = tuple(_run(state, chains, ends, forces) for state, chains in zip(states, found, strict=True))
    facts = tuple(UncertainFact(r.path, r.label, r.unit, r.low, r.best, r.high, r.why) for r in settling.facts)
    warnings = (*forces.warnings, *(m.reason for m in forces.missing), *forces.gravity.remarks, *NOT_COVERED)
    return Study(
        FORMAT,
        _manifest(house, marks),
        house.survey.name,
        house.units,
        _plain(forces),
        facts,
        runs,
        tuple(dict.fromkeys(warnings)),
    )


NOT_COVERED = (
    "not checked here: diaphragm chords (SDPWS 4.2), compression at panel ends across the grain (NDS 3.10.2), wind, "
    "the storey above and the overturning it brings, drift, and anything out of plane",
)


def working(house: House, key: str = AS_FOUND, ends: Mapping[FactRef | str, End] | None = None) -> Sheet:
    """The sheet of one state of the house, every step in order, at the best value of its facts (or the ends given)."""
    settling = prepare(house)
    settled = settling.at(ends or {})
    states = [state for state in _states(house) if state.key == key]
    if not states:
        raise KeyError(f"{key} is neither {AS_FOUND} nor an alternative of this house")
    with Sheet() as sheet:
        _go(settled.house, settled.marks, states)
    return sheet


@dataclass(frozen=True, slots=True)
class _State:
    """One state of the house: its key, name and purpose, and the work laid on the survey."""

    key: str
    name: str
    purpose: str
    laid: Laid


def _states(house: House) -> list[_State]:
    ordered = sorted(house.alternatives.items(), key=lambda pair: (pair[1].order, pair[0]))
    found = [_State(AS_FOUND, "as found", "the house as surveyed", apply(house, None))]
    return found + [_State(id, alternative.name, alternative.purpose, apply(house, id)) for id, alternative in ordered]


def _go(house: House, marks: Mapping[str, tuple[Mark, ...]], states: Sequence[_State]) -> tuple[Forces, list[_Chains]]:
    """Forces once, then every state's chains and the foundation bodies under them."""
    reading = Reading(house, marks)
    forces = work_out(reading)
    bodies = body_chains(reading, forces)
    return forces, [_Chains(chains_of(reading, forces, state.laid.pieces), bodies) for state in states]


@dataclass(frozen=True, slots=True)
class _Chains:
    """The chains of one state in one run."""

    lines: tuple[Chain, ...]
    bodies: tuple[Chain, ...]

    def links(self) -> dict[str, Link]:
        """Every link by its address."""
        return {link.address: link for chain in (*self.lines, *self.bodies) for link in chain.links}


class _Ends:
    """The runs at the ends of uncertain facts, and what each link came to there."""

    def __init__(
        self,
        settling: Settling[House],
        states: Sequence[_State],
        forces: Forces,
        best: Sequence[_Chains],
        progress: Progress | None,
    ) -> None:
        self.settling = settling
        self.states = states
        self.forces = _plain(forces)
        self.chains = best
        self.best = [chains.links() for chains in best]
        self.progress = progress
        self.seen: list[dict[str, list[Link]]] = [{} for _ in states]
        self.adverse: list[dict[str, dict[str, End]]] = [{} for _ in states]
        self.deciding: list[dict[str, list[str]]] = [{} for _ in states]

    def one_at_a_time(self) -> None:
        """Each uncertain fact at its low and its high end, all others at their best."""
        sides: tuple[End, End] = ("low", "high")
        for place, fact in enumerate(self.settling.facts):
            if self.progress:
                self.progress(place, len(self.settling.facts))
            both = [self._links({fact.path: end}) for end in sides]
            for n, best in enumerate(self.best):
                for address, link in best.items():
                    self._compare(n, fact, link, [found[n].get(address) for found in both])

    def _compare(self, n: int, fact: FactRef, link: Link, found: Sequence[Link | None]) -> None:
        """Note a fact that moves a link: the end that is worse for it, and whether the status flips."""
        moved = [
            other for other in found if other is not None and (other.status, other.ratio) != (link.status, link.ratio)
        ]
        if not moved:
            return
        low, high = found
        worse: End = "high" if _worse(high, low) else "low"
        other = high if worse == "high" else low
        if _worse(other, link):
            self.adverse[n].setdefault(link.address, {})[fact.path] = worse
        self.seen[n].setdefault(link.address, []).extend(moved)
        if any(other.status != link.status for other in moved):
            self.deciding[n].setdefault(link.address, []).append(fact.label)

    def all_adverse(self) -> None:
        """For each link, all the facts that move it at their worse end together: the least favourable case."""
        done: dict[tuple[tuple[str, End], ...], list[dict[str, Link]]] = {}
        for n, wanted in enumerate(self.adverse):
            for address, ends in wanted.items():
                if len(ends) < 2:
                    continue
                key = tuple(sorted(ends.items()))
                if key not in done:
                    done[key] = self._links(dict(ends.items()))
                link = done[key][n].get(address)
                if link is not None:
                    self.seen[n].setdefault(address, []).append(link)
                    if link.status != self.best[n][address].status and not self.deciding[n].get(address):
                        self.deciding[n][address] = [f.label for f in self.settling.facts if f.path in ends]

    def _links(self, ends: Mapping[FactRef | str, End]) -> list[dict[str, Link]]:
        """Every state's links with some facts at an end; what those facts cannot reach is not worked out again."""
        settled = self.settling.at(ends)
        paths = [which if isinstance(which, str) else which.path for which in ends]
        lines = [_line_reached(settled.house, path) for path in paths]
        if any(line is None for line in lines):
            return [chains.links() for chains in _go(settled.house, settled.marks, self.states)[1]]
        reading = Reading(settled.house, settled.marks)
        bodies = body_chains(reading, self.forces) if any(p.startswith("survey.foundation.") for p in paths) else None
        found = []
        for state, best in zip(self.states, self.chains, strict=True):
            changed = tuple(
                chain_of(reading, self.forces, chain.id, pieces_on(reading, chain.id, state.laid.pieces))
                if chain.id in lines
                else chain
                for chain in best.lines
            )
            found.append(_Chains(changed, best.bodies if bodies is None else bodies).links())
        return found

    def concluded(self, n: int, chain: Chain) -> Chain:
        """A chain with the verdict of each link over all ends, and its headline."""
        stages = tuple(
            replace(
                stage,
                links=tuple(
                    with_ends(
                        link,
                        self.seen[n].get(link.address, ()),
                        tuple(dict.fromkeys(self.deciding[n].get(link.address, ()))),
                    )
                    for link in stage.links
                ),
            )
            for stage in chain.stages
        )
        return concluded(replace(chain, stages=stages))


_REACHES_FORCES = ("height_in", "top_z_in", "relied_on")
_ON_A_LINE = ("segments", "splices", "sills", "bolts")


def _line_reached(house: House, path: str) -> str | None:
    """The one line whose checks a fact can move, or None when it may move more (weights, forces, the floor)."""
    _, room, *rest = path.split(".")
    if room not in ("underfloor", "foundation") or len(rest) < 3 or rest[-1] in _REACHES_FORCES:
        return None
    collection, id = rest[0], rest[1]
    if room == "underfloor" and collection == "lines":
        return id
    if collection in _ON_A_LINE:
        line: str = getattr(getattr(house.survey, room), collection)[id].line
        return line
    return None


def _worse(a: Link | None, b: Link | None) -> bool:
    """Whether one outcome of a check is worse than another."""
    return _badness(a) > _badness(b)


def _badness(link: Link | None) -> tuple[int, float]:
    if link is None or link.status == "does not apply":
        return (0, 0.0)
    if link.status == "cannot be checked":
        return (3, 0.0)
    if link.ratio is None:
        return (2, 0.0)
    return (1, link.ratio)


_UNCOUNTED = (SideplatePiece, ConcretePiece, DrainagePiece, SoilPiece)


def _run(state: _State, chains: _Chains, ends: _Ends, forces: Forces) -> Run:
    place = ends.states.index(state)
    lines = tuple(ends.concluded(place, chain) for chain in chains.lines)
    bodies = tuple(ends.concluded(place, chain) for chain in chains.bodies)
    verdict = verdict_of(chain.verdict for chain in (*lines, *bodies))
    relied = [chain for chain in lines if chain.relied_on]
    weakest = min(relied, key=lambda chain: float("inf") if chain.percent is None else chain.percent, default=None)
    headline = "no line is relied on" if weakest is None else f"line {weakest.mark} ({weakest.name}) {weakest.headline}"
    if forces.missing:  # no chain can make up for a direction that nothing holds
        verdict, headline = "fails", "; ".join((*(m.reason for m in forces.missing), headline))
    soil = [chain for chain in bodies if chain.percent is not None and chain.percent < 100]
    if soil:
        headline += f"; soil: {', '.join(f'{chain.mark} carries {chain.percent:.0f} %' for chain in soil)}"
    uncounted = tuple(
        f"{piece.kind} {piece.mark or id}" for id, piece in state.laid.pieces if isinstance(piece, _UNCOUNTED)
    )
    return Run(state.key, state.name, state.purpose, lines, bodies, state.laid.misplaced, uncounted, verdict, headline)


def _manifest(house: House, marks: Iterable[Mark]) -> Manifest:
    by_kind: dict[str, list[str]] = {}
    for mark in sorted(marks):
        by_kind.setdefault(mark.kind, []).append(mark.what)
    return Manifest(
        program=f"groundsill {VERSION}",
        house_hash=_hash(house),
        code=house.basis.code,
        editions=_editions(house),
        edition_reasons={family: o.reason for family, o in sorted(house.basis.overrides.items())},
        from_memory=tuple(by_kind.get("from memory", ())),
        unverified=tuple(by_kind.get("unverified", ())),
        assumed=tuple(what for kind in ("assumed range", "estimated", "extension") for what in by_kind.get(kind, ())),
    )


CHECKED_BY = {"asce7": "asce7-16", "sdpws": "sdpws-2015", "nds": "nds-2018", "aci318": "aci318-19"}


def _editions(house: House) -> dict[str, str]:
    """The edition of every document under the house's basis.

    Raises:
        BadSurvey: when the basis names an edition that the checks are not made by, without a printed reason to mix.
    """
    basis = StandardsBasis(house.basis.code, {k: (o.edition, o.reason) for k, o in house.basis.overrides.items()})
    faults = []
    for family, edition in CHECKED_BY.items():
        if basis.edition(family) != edition:
            allowed = (
                f"the checks are made by {edition}: give basis.overrides.{family} that edition and a reason to mix"
            )
            faults.append(Fault(f"basis.overrides.{family}", basis.edition(family), allowed))
    if faults:
        raise BadSurvey(tuple(faults))
    return {a.family: basis.edition(a.family) for a in adoptions(house.basis.code)}


def _hash(house: House) -> str:
    """A short fingerprint of the document's content: the same whether a figure was written 7 or 7.0."""

    def same(thing: Any) -> Any:
        if isinstance(thing, dict):
            return {key: same(value) for key, value in thing.items()}
        if isinstance(thing, (list, tuple)):
            return [same(item) for item in thing]
        return float(thing) if isinstance(thing, int) and not isinstance(thing, bool) else thing

    return hashlib.sha256(json.dumps(same(asdict(house)), sort_keys=True).encode()).hexdigest()[:16]


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
