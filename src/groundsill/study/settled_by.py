"""The tests that would settle a line whose verdict depends on the strength of its concrete.

Every threshold is found by working the line out again as if cores had given its concrete a strength: up and down
between the least and the greatest strength tried, until the check turns. Nothing is estimated from the ratio.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from functools import lru_cache

from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces
from groundsill.house.cores import cores_for, evidence_of, one_concrete
from groundsill.house.fact import Fact, unknown
from groundsill.house.foundation import FoundationSegment, FoundationTest
from groundsill.house.settle import End
from groundsill.loadpath.chain import Chain, Link
from groundsill.loadpath.path import chain_of
from groundsill.standards.aci214_4r_10.cores import LEAST_CORES, equivalent_by_tolerance, strength_in_place
from groundsill.standards.aci562_19.cores import equivalent_of_cores
from groundsill.study.ends import Ends
from groundsill.study.states import reading_of
from groundsill.study.strength import CoreSite, MeanWanted, Place, SettlingTest, Threshold
from groundsill.work.document import House

__all__ = ["FORESEEN", "GREATEST_PSI", "LEAST_PSI", "STEP_PSI", "core_places", "settling_tests", "wanted_mean"]

LEAST_PSI, GREATEST_PSI, STEP_PSI = 300.0, 5000.0, 50.0  # the strengths tried: our choice
FORESEEN = 0.15  # the scatter foreseen of cores not yet drilled: common practice, no source
_MORE_CORES = 6
_CORE_IN = 4.0
_CONCRETE = "poured concrete"
_GRID_IN = 3.0
_TRIAL = "trial-core-of-"
_Others = tuple[tuple[str, End], ...]


def settling_tests(ends: Ends, n: int, chains: Sequence[Chain]) -> tuple[SettlingTest, ...]:
    """The tests for every line of state ``n`` that strength keeps from passing; ``chains`` are its concluded chains."""
    trials = _Trials(ends, n)
    found = (_of_line(trials, chain) for chain in chains if chain.relied_on and chain.verdict != "passes")
    return tuple(test for test in found if test is not None)


def _of_line(trials: _Trials, chain: Chain) -> SettlingTest | None:
    """The tests for one line, or None where no check that does not pass hangs on concrete of unsettled strength."""
    stretches = trials.stretches(chain.id)
    doubtful = {link.address: link for link in chain.links if link.verdict not in ("passes", "does not apply")}
    if not stretches or not doubtful:
        return None
    reached = {id: trials.moved_by(chain.id, id) & set(doubtful) for id in stretches}
    moved = [address for address in doubtful if any(address in found for found in reached.values())]
    thresholds = tuple(_threshold(trials, chain.id, doubtful[address]) for address in moved)
    thresholds = tuple(t for t in thresholds if _tells(t, doubtful[t.link]))
    if all(t.holds_at is None for t in thresholds):
        return None
    told = {t.link for t in thresholds}
    under = {id: segment for id, segment in stretches.items() if reached[id] & told}
    holds = max((t.holds_at for t in thresholds if t.holds_at is not None), default=None)
    needs = max((t.passes_at for t in thresholds if t.passes_at is not None), default=None)
    bolts = [doubtful[t.link].demand for t in thresholds if doubtful[t.link].unit == "lb a bolt"]
    return SettlingTest(
        chain.id,
        chain.mark,
        holds,
        needs,
        trials.highest(under),
        () if needs is None else tuple(MeanWanted(n, wanted_mean(needs, n)) for n in (LEAST_CORES, _MORE_CORES)),
        _sites(trials, chain.id, under),
        thresholds,
        max((float(demand) for demand in bolts if demand is not None), default=None),
    )


def _tells(threshold: Threshold, link: Link) -> bool:
    """Whether a threshold says more than the link does: that a strength turns it, or that none would."""
    return threshold.passes_at is not None or threshold.holds_at is not None or link.verdict in ("fails", "depends")


def _threshold(trials: _Trials, line: str, link: Link) -> Threshold:
    """Where a link turns, with every other fact that moves it at its worse end; else with all at their best."""
    worst = trials.others(line, link.address)
    for others in dict.fromkeys((worst, ())):
        passes = _turns(trials, line, link.address, others, ("passes",))
        holds = _turns(trials, line, link.address, others, ("passes", "indicated"))
        if holds is not None:
            break
    top = trials.at(line, GREATEST_PSI, others).get(link.address)
    beyond = "" if passes is not None or top is None else top.extension
    return Threshold(link.address, link.title, link.verdict, holds, passes, beyond, others == worst)


def _turns(trials: _Trials, line: str, address: str, others: _Others, good: Sequence[str]) -> float | None:
    """The least strength from which the status of a link is one of the good ones."""
    return _least(lambda psi: trials.status(line, address, psi, others) in good)


def _least(good: Callable[[float], bool]) -> float | None:
    """The least strength of those tried from which a check is good; None where the greatest is not enough."""
    if not good(GREATEST_PSI):
        return None
    low, high = 0, round((GREATEST_PSI - LEAST_PSI) / STEP_PSI)
    while low < high:
        middle = (low + high) // 2
        low, high = (low, middle) if good(LEAST_PSI + middle * STEP_PSI) else (middle + 1, high)
    return LEAST_PSI + low * STEP_PSI


class _Trials:
    """The lines of one state, worked out again with a strength that cores are taken to have given their concrete."""

    def __init__(self, ends: Ends, n: int) -> None:
        self.ends, self.n, self.state = ends, n, ends.states[n]
        self._bases: dict[_Others, tuple[House, Forces]] = {}
        self._found: dict[tuple[str, tuple[tuple[str, float], ...], _Others], Mapping[str, Link]] = {}

    @property
    def house(self) -> House:
        """The house at the best of every fact."""
        return self.ends.settling.best.house

    def stretches(self, line: str) -> dict[str, FoundationSegment]:
        """The stretches of poured concrete under a line whose strength is not settled."""
        segments = self.house.survey.foundation.segments
        return {
            id: s for id, s in segments.items()
            if s.line == line and s.material == _CONCRETE and self._unsettled(id, s)
        }  # fmt: skip

    def _unsettled(self, stretch: str, segment: FoundationSegment) -> bool:
        """Whether the strength of a stretch may lie elsewhere, is not known, or no core speaks for it."""
        path = f"survey.foundation.segments.{stretch}.strength_psi"
        known = segment.strength_psi.value is not None and all(ref.path != path for ref in self.ends.settling.facts)
        return not known or not cores_for(self.house.survey, stretch)

    def highest(self, stretches: Iterable[str]) -> float | None:
        """The least of the high ends of the strength of some stretches; None where one of them has no strength."""
        facts = {ref.path: ref.high for ref in self.ends.settling.facts}
        segments = self.house.survey.foundation.segments
        found = [
            facts.get(f"survey.foundation.segments.{id}.strength_psi", segments[id].strength_psi.value)
            for id in stretches
        ]
        known = [high for high in found if isinstance(high, float)]
        return min(known) if known and len(known) == len(found) else None

    def others(self, line: str, address: str) -> _Others:
        """The worse end of every fact that moves a link, but for the strength of the line's own concrete."""
        own = {f"survey.foundation.segments.{id}.strength_psi" for id in self.stretches(line)}
        adverse = self.ends.adverse[self.n].get(address, {})
        return tuple(sorted((path, end) for path, end in adverse.items() if path not in own))

    def moved_by(self, line: str, stretch: str) -> set[str]:
        """The links of a line that come out otherwise when this one stretch is weak and all others are strong."""
        strong = dict.fromkeys(self.stretches(line), GREATEST_PSI)
        before, after = self._links(line, strong, ()), self._links(line, {**strong, stretch: LEAST_PSI}, ())
        return {
            address for address in before.keys() & after.keys()
            if (before[address].status, before[address].ratio) != (after[address].status, after[address].ratio)
        }  # fmt: skip

    def status(self, line: str, address: str, psi: float, others: _Others) -> str:
        """The status of a link with all of the line's unsettled concrete at one strength."""
        link = self.at(line, psi, others).get(address)
        return "cannot be checked" if link is None else link.status

    def at(self, line: str, psi: float, others: _Others) -> Mapping[str, Link]:
        """The links of a line with all of its unsettled concrete at one strength."""
        return self._links(line, dict.fromkeys(self.stretches(line), psi), others)

    def _links(self, line: str, strengths: Mapping[str, float], others: _Others) -> Mapping[str, Link]:
        key = line, tuple(sorted(strengths.items())), others
        if key not in self._found:
            house, forces = self._base(others)
            reading = reading_of(self.state, Reading(_cored(house, strengths)))
            chain = chain_of(reading, forces, line, self.state.laid.pieces)
            self._found[key] = {link.address: link for link in chain.links}
        return self._found[key]

    def _base(self, others: _Others) -> tuple[House, Forces]:
        """The house with some facts at an end, and the forces that its lines take there."""
        if others not in self._bases:
            ends = dict(others)
            self._bases[others] = self.ends.settling.at(ends).house, self.ends.parts.forces(self.n, ends)
        return self._bases[others]


def _cored(house: House, strengths: Mapping[str, float]) -> House:
    """The house as if cores of their own, and no others, had given stretches of its concrete these strengths."""
    foundation = house.survey.foundation
    segments = dict(foundation.segments)
    tests = {id: t for id, t in foundation.tests.items() if t.kind != "core" or t.segment not in strengths}
    for id, psi in strengths.items():
        known = Fact(value=psi, how="taken for a trial")
        segments[id] = replace(segments[id], strength_psi=known, pour=unknown())
        tests[f"{_TRIAL}{id}"] = FoundationTest(
            segment=id, station_in=segments[id].from_in, kind="core", result=psi, unit="psi"
        )
    survey = replace(house.survey, foundation=replace(foundation, segments=segments, tests=tests))
    return replace(house, survey=survey)


# ---- How many, and where --------------------------------------------------------------------------------------------


@lru_cache(maxsize=256)
def wanted_mean(needs_psi: float, cores: int) -> float:
    """The mean at which so many cores must break, 4 in. across and twice as long, to give an equivalent strength.

    They are taken to scatter by the coefficient of variation foreseen.
    """
    half, odd = divmod(cores, 2)
    apart = FORESEEN * ((cores - 1) / (2 * half)) ** 0.5  # half below and half above the mean give just that spread
    broke = [1000.0 * (1 - apart)] * half + [1000.0] * odd + [1000.0 * (1 + apart)] * half
    in_place = [[strength_in_place(f, _CORE_IN, 2 * _CORE_IN, damage=d) for f in broke] for d in (True, False)]
    lower = min(equivalent_by_tolerance(in_place[0], _CORE_IN, 2.0), equivalent_of_cores(in_place[1]))
    return needs_psi * 1000.0 / lower


def _sites(trials: _Trials, line: str, stretches: Mapping[str, FoundationSegment]) -> tuple[CoreSite, ...]:
    """Every concrete under a line, with the cores on record, those wanted for three, and where to drill them."""
    left, found = list(stretches), []
    survey = trials.house.survey
    while left:
        alike = [id for id in left if id == left[0] or one_concrete(survey, left[0], id)]
        left = [id for id in left if id not in alike]
        evidence = evidence_of(survey, alike[0])
        counted = len(evidence.in_place) if evidence is not None else 0
        wanted = max(LEAST_CORES - counted, 0)
        places = _spread(trials, line, [(id, stretches[id]) for id in alike], wanted)
        also = tuple(
            s.mark or id for id, s in survey.foundation.segments.items()
            if s.line != line and one_concrete(survey, alike[0], id)
        )  # fmt: skip
        found.append(CoreSite(tuple(stretches[id].mark or id for id in alike), also, counted, wanted, places))
    return tuple(found)


def _spread(
    trials: _Trials, line: str, alike: Sequence[tuple[str, FoundationSegment]], wanted: int
) -> tuple[Place, ...]:
    """Places for the cores of one concrete, shared out among its stretches by their length."""
    kept = _kept_clear(trials, line)
    total = sum(s.to_in - s.from_in for _, s in alike)
    found: list[Place] = []
    for n, (id, segment) in enumerate(sorted(alike, key=lambda pair: pair[1].from_in - pair[1].to_in)):
        share = round(wanted * (segment.to_in - segment.from_in) / total) if total else wanted
        share = min(max(share, 1), wanted - len(found)) if n + 1 < len(alike) else wanted - len(found)
        found += [Place(segment.mark or id, at) for at in core_places(segment.from_in, segment.to_in, share, kept)]
    return tuple(found)


def _kept_clear(trials: _Trials, line: str) -> list[float]:
    """Stations of a line that a core keeps away from: bolts, hold-downs, breaks, old and new."""
    survey = trials.house.survey
    old: Iterable[float] = (b.station_in for b in survey.underfloor.bolts.values() if b.line == line)
    cut: Iterable[float] = (b.station_in for b in survey.foundation.breaks.values() if b.line == line)
    new = []
    for _, piece in trials.state.laid.pieces:
        segment = survey.underfloor.segments.get(getattr(piece, "segment", ""))
        on = segment.line if segment is not None else getattr(piece, "line", None)
        if on == line and hasattr(piece, "station_in"):
            new.append(float(piece.station_in))
    return [*old, *cut, *new]


def core_places(from_in: float, to_in: float, wanted: int, kept: Iterable[float]) -> tuple[float, ...]:
    """Stations for so many cores in a stretch, each as far from its ends, all kept clear and the others as can be."""
    clear = [from_in, to_in, *kept]
    steps = max(int((to_in - from_in) // _GRID_IN), 1)
    tried = [from_in + (to_in - from_in) * (k + 0.5) / steps for k in range(steps)]
    found: list[float] = []
    for _ in range(wanted):
        found.append(max(tried, key=lambda at: min(abs(at - each) for each in (*clear, *found))))
    return tuple(sorted(found))
