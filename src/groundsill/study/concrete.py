"""What is known of the strength of every stretch of poured concrete, and what hammer and probe add in words.

The hammer classes concrete as like or unlike and gives no strength (ASTM C805: relations of makers only compare places
on one structure; one of its own needs cores at six places or more, from memory). The probe says whether the surface is
soft there.
"""

from __future__ import annotations

from collections.abc import Iterator

from groundsill.house.cores import HAMMER_PARTS, CoreEvidence, cores_for, evidence_of, rebound_of
from groundsill.house.foundation import FoundationSegment
from groundsill.house.settle import FactRef, Settling
from groundsill.house.survey import Survey, in_order
from groundsill.study.strength import ConcreteStrength
from groundsill.work.document import House
from groundsill.working.sheet import Sheet
from groundsill.working.value import marks_of

__all__ = ["SOFT_IN", "concrete_strengths"]

SOFT_IN = 0.25  # a screwdriver pushed by hand in sound concrete stops sooner: common practice, no source
_CONCRETE = "poured concrete"


def concrete_strengths(survey: Survey, settling: Settling[House]) -> tuple[ConcreteStrength, ...]:
    """Every stretch of poured concrete in order, with the ends its checks run at and what tests say of it."""
    facts = {ref.path: ref for ref in settling.facts}
    lines = survey.underfloor.lines
    found = []
    for id, segment in in_order(survey.foundation.segments):
        if segment.material == _CONCRETE:
            line = lines[segment.line].mark if segment.line in lines else ""
            ref = facts.get(f"survey.foundation.segments.{id}.strength_psi")
            settled = settling.best.house.survey.foundation.segments[id]
            found.append(_of_stretch(survey, id, settled, ref, line or segment.line))
    return tuple(found)


def _of_stretch(
    survey: Survey, id: str, segment: FoundationSegment, ref: FactRef | None, line: str
) -> ConcreteStrength:
    best = segment.strength_psi.value
    low, high = (ref.low, ref.high) if ref is not None else (best, best)
    assert low is None or (isinstance(low, float) and isinstance(high, float))
    with Sheet():  # with a sheet open the figures bring their marks
        evidence = evidence_of(survey, id)
    told = evidence or CoreEvidence((), (), ())
    return ConcreteStrength(
        id,
        segment.mark or id,
        line,
        low if isinstance(low, float) else None,
        best,
        high if isinstance(high, float) else None,
        _why(segment, ref, best),
        told.cores,
        len(told.in_place),
        told.mean,
        told.spread,
        told.variation,
        told.code,
        told.guide,
        rebound_of(survey, id),
        tuple(_remarks(survey, id, segment, evidence, ref)),
        tuple(sorted(marks_of((told.mean, told.spread, told.code, told.guide)))),
    )


def _why(segment: FoundationSegment, ref: FactRef | None, best: float | None) -> str:
    """Where the strength that is counted comes from."""
    if ref is not None:
        return ref.why
    if best is None:
        return "not known, and nothing stands in for it"
    return f"{segment.strength_psi.state}: {segment.strength_psi.how}".removesuffix(": ")


def _remarks(
    survey: Survey, id: str, segment: FoundationSegment, evidence: CoreEvidence | None, ref: FactRef | None
) -> Iterator[str]:
    """What cores, hammer, probe and condition add to the figure, in words."""
    if evidence is not None:
        stated = ref is None or evidence.words not in ref.why
        yield f"{evidence.words}{'; the strength stated in the survey stands before it' if stated else ''}"
        afar = [test.mark or key for key, test in cores_for(survey, id) if test.segment != id]
        if afar:
            yield f"by the statement that it is one pour ({segment.pour.how}): {', '.join(afar)}"
    yield from _hammer(survey, id)
    depths = [t.result for t in survey.foundation.tests.values() if t.segment == id and t.kind == "probe"]
    if depths:
        soft = "soft at the surface there" if max(depths) >= SOFT_IN else "hard at the surface there"
        yield f"probe {max(depths):g} in. deep: {soft}; it says nothing of the strength within"
    if segment.condition.value == "crumbling":
        yield "crumbling: no strength is assumed by age, and a core speaks for sound lumps alone"


def _hammer(survey: Survey, id: str) -> Iterator[str]:
    """The rebound number of a stretch beside the others': like them or not, and never a strength."""
    own = rebound_of(survey, id)
    if own is None:
        return
    numbers = {other: rebound_of(survey, other) for other in survey.foundation.segments}
    apart = [
        survey.foundation.segments[other].mark or other
        for other, number in numbers.items()
        if number is not None and abs(number - own) > HAMMER_PARTS
    ]
    there = [other for other, number in numbers.items() if number is not None and other != id]
    if apart:
        compared = f"not of one concrete with {', '.join(apart)}: more than {HAMMER_PARTS:g} apart"
    elif there:
        compared = "like the other stretches it was used on"
    else:
        compared = "used on this stretch alone"
    yield f"rebound {own:g}, {compared}; it gives no strength (ASTM C805 5.4)"
