"""What cores say of each stretch of concrete: which of them speak for it, and the range of strength they leave.

A core speaks for the stretch it was drilled from. It speaks for another only where somebody has written that both are
of one pour, with what shows it, where both are of one year and condition, and where the rebound hammer does not part
them. Rebound numbers give no strength by themselves: they only say where concrete is like and unlike.

Three cores or more make an equivalent specified strength, by the code for existing concrete and by the guide for cores;
the lower of the two is the low end, the code's the figure counted, the mean the high end. One or two give no spread:
they can only widen what age and material allow.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from groundsill.house.fact import Fact
from groundsill.house.foundation import FoundationSegment, FoundationTest
from groundsill.house.ranges import Assumed
from groundsill.house.survey import Survey, in_order
from groundsill.standards.aci214_4r_10.cores import (
    LEAST_CORES,
    equivalent_by_tolerance,
    sample_of,
    strength_in_place,
)
from groundsill.standards.aci562_19.cores import equivalent_of_cores
from groundsill.standards.asce41_17.materials import cores_agree, lower_bound
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet
from groundsill.working.steps import given
from groundsill.working.value import Mark, marks_of

__all__ = ["HAMMER_PARTS", "CoreEvidence", "cores_for", "evidence_of", "one_concrete", "range_by_cores", "rebound_of"]

HAMMER_PARTS = 6.0  # rebound numbers farther apart than this part two stretches: our choice, after ASTM C805's limit
_CONCRETE = "poured concrete"
_SQUARE = (1.0, 2.0)


@dataclass(frozen=True, slots=True)
class CoreEvidence:
    """What the cores that speak for one stretch come to, psi; a figure is None where they are too few or too scattered.

    ``cores`` are their marks, ``in_place`` the strengths of those that count, ``left_out`` says why others do not.
    ``code`` is the equivalent specified strength by ACI 562, ``guide`` that by the tolerance factors of ACI 214.4R.
    ``why_not`` says why there is none. ``bound`` is the lower bound of ASCE 41, which no check uses, ``agree`` whether
    they scatter no more than that standard lets pass.
    """

    cores: tuple[str, ...]
    in_place: tuple[float, ...]
    left_out: tuple[str, ...]
    mean: float | None = None
    spread: float | None = None
    code: float | None = None
    guide: float | None = None
    why_not: str = ""
    bound: float | None = None
    agree: bool = True

    @property
    def variation(self) -> float | None:
        """Coefficient of variation of the cores."""
        return None if self.mean is None or self.spread is None else float(self.spread) / float(self.mean)

    @property
    def lower(self) -> float | None:
        """The lower equivalent strength: what a check must pass at."""
        return None if self.code is None or self.guide is None else min(float(self.code), float(self.guide))

    @property
    def words(self) -> str:
        """How many, mean, spread, and what they are equivalent to, in a sentence without its full stop."""
        count, there = len(self.in_place), len(self.cores)
        told = f"{there} core{'' if there == 1 else 's'} ({', '.join(self.cores)})"
        if count < there:
            told += f", {count or 'none'} of them counted"
        if self.mean is not None and self.spread is not None:
            told += f": mean {float(self.mean):,.0f} psi, standard deviation {float(self.spread):,.0f} psi"
        if self.code is not None and self.guide is not None:
            told += (
                f"; equivalent strength {float(self.code):,.0f} psi by ACI 562, {float(self.guide):,.0f} psi by ACI "
                "214.4R: checks must pass at the lower, the mean is for what fails first"
            )
        if self.bound is not None and self.code is not None:
            told += f" (lower bound by ASCE 41 {float(self.bound):,.0f} psi, used by no check)"
        apart = "" if self.agree else "they scatter so much that ASCE 41 asks for more: are they one concrete?"
        return "; ".join((told, *filter(None, (apart, self.why_not, *self.left_out))))


def rebound_of(survey: Survey, segment: str) -> float | None:
    """The mean rebound number of a stretch, None where the hammer was not used."""
    found = [
        t.result for t in survey.foundation.tests.values()
        if t.segment == segment and t.kind == "rebound" and t.unit == "rebound number"
    ]  # fmt: skip
    return sum(found) / len(found) if found else None


def cores_for(survey: Survey, segment: str) -> tuple[tuple[str, FoundationTest], ...]:
    """The cores that speak for a stretch, its own and those of the same concrete, in their order."""
    return tuple(
        (id, test) for id, test in in_order(survey.foundation.tests)
        if test.kind == "core" and test.unit == "psi" and one_concrete(survey, test.segment, segment)
    )  # fmt: skip


def one_concrete(survey: Survey, cored: str, segment: str) -> bool:
    """Whether a core of one stretch may stand for another: written down as one pour, and nothing speaks against it."""
    if cored == segment:
        return True
    segments = survey.foundation.segments
    one, other = segments.get(cored), segments.get(segment)
    if one is None or other is None or not _one_pour(one, other):
        return False
    numbers = rebound_of(survey, cored), rebound_of(survey, segment)
    return numbers[0] is None or numbers[1] is None or abs(numbers[0] - numbers[1]) <= HAMMER_PARTS


def _one_pour(one: FoundationSegment, other: FoundationSegment) -> bool:
    """Whether two stretches are written down as one concrete, with a reason, and nothing recorded speaks against it."""
    stated = one.pour.value is not None and one.pour.value == other.pour.value
    reasons = all(segment.pour.how.strip() for segment in (one, other))
    alike = one.material == other.material == _CONCRETE and one.condition.value == other.condition.value
    return stated and reasons and alike and _of(one.year) == _of(other.year)


def _of(year: Fact[float]) -> tuple[float | None, float | None, float | None]:
    return year.value, year.low, year.high


def evidence_of(survey: Survey, segment: str) -> CoreEvidence | None:
    """What the cores that speak for a stretch come to; None when there is none. Recorded where a sheet lies open."""
    cores = cores_for(survey, segment)
    if not cores:
        return None
    in_place: list[float] = []
    low_side: list[float] = []
    counted: list[FoundationTest] = []
    left_out: list[str] = []
    for id, test in cores:
        try:
            both = [_in_place(test.mark or id, test, damage) for damage in (True, False)]
        except OutsideLimits as refused:
            left_out.append(f"{test.mark or id} is not counted: {refused}")
            continue
        in_place.append(both[0])
        low_side.append(both[1])
        counted.append(test)
    marks = tuple(test.mark or id for id, test in cores)
    return _come_to(CoreEvidence(marks, tuple(in_place), tuple(left_out)), low_side, counted)


def _in_place(name: str, test: FoundationTest, damage: bool) -> float:
    """The strength in place that one core stands for, with or without the correction for damage by drilling."""
    if test.core_diameter_in is None:
        raise OutsideLimits("its diameter is not entered")
    f_core = given("f_core", test.result, "psi", f"core {name} broke at")
    d = given("d", test.core_diameter_in, "in", f"diameter of {name}")
    length = test.core_length_in
    if length is not None:
        length = given("l", length, "in", f"length of {name}")
    kept = test.core_moisture or "as received"
    return strength_in_place(f_core, d, length, kept, test.core_corrected, damage)


def _come_to(found: CoreEvidence, low_side: Sequence[float], counted: Sequence[FoundationTest]) -> CoreEvidence:
    """The sample and its equivalent strengths; the code's formula takes the cores without the gain for damage."""
    n = len(found.in_place)
    if n >= 2:
        sample = sample_of(found.in_place)
        bound, agree = lower_bound(sample.mean, sample.spread), cores_agree(sample.mean, sample.spread)
        found = replace(found, mean=sample.mean, spread=sample.spread, bound=bound, agree=agree)
    if n < LEAST_CORES:
        return replace(found, why_not=f"fewer than {LEAST_CORES} cores that count: no equivalent strength")
    try:
        code = equivalent_of_cores(low_side)
        guide = equivalent_by_tolerance(found.in_place, _most_scattering(counted), _least_slender(counted))
    except OutsideLimits as refused:
        return replace(found, why_not=str(refused))
    return replace(found, code=code, guide=guide)


def _most_scattering(cores: Iterable[FoundationTest]) -> float:
    """The diameter whose correction scatters most: the least under 4 in., else the greatest."""
    found = sorted(core.core_diameter_in or 0.0 for core in cores)
    return found[0] if found[0] < 4 else found[-1]


def _least_slender(cores: Iterable[FoundationTest]) -> float:
    """The least length over diameter; as short as a core may be where the laboratory corrected an unknown length."""
    ratios = [_SQUARE[0] if c.core_length_in is None else c.core_length_in / (c.core_diameter_in or 1.0) for c in cores]
    return min(max(min(ratios), _SQUARE[0]), _SQUARE[1])


def range_by_cores(survey: Survey, segment: str, by_age: Assumed | None) -> Assumed | None:
    """The strength that cores leave a stretch whose strength nobody stated; None where they say nothing of it.

    One or two cores, or cores too scattered, only widen what stands by age and material; where nothing stands by age
    they give no range.
    """
    with Sheet():  # with a sheet open the figures bring their marks
        found = evidence_of(survey, segment)
    if found is None:
        return None
    if found.code is not None and found.mean is not None and found.lower is not None:
        marks = marks_of((found.code, found.guide, found.mean))
        said = Mark("estimated", f"strength of the concrete by cores: {', '.join(found.cores)}")
        high = max(float(found.mean), float(found.code))
        return Assumed(found.lower, float(found.code), high, found.words, (said, *sorted(marks)))
    if by_age is None or not isinstance(by_age.low, float) or not isinstance(by_age.high, float):
        return None
    broke = [test.result for _, test in cores_for(survey, segment)]
    broke += [float(strength) for strength in found.in_place]
    assert isinstance(by_age.best, float)
    return Assumed(
        min(by_age.low, *broke), min(by_age.best, *broke), max(by_age.high, *broke),
        f"{by_age.words}; {found.words}: they only widen it", by_age.marks,
    )  # fmt: skip
