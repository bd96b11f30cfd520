"""What lifts an *indicated* value: tests of anchors in place, or the recorded decision of a named engineer.

Neither ever lifts a link that fails. The rule for tests (how many, how far beyond the force on one each must hold, how
far it may have moved, which anchor stands for which) is our own choice, from no source, and is printed with every
result that rests on it. The least of a few anchors is no 5 % fractile: the fewer they are, the more each must hold.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cache
from typing import Literal

from groundsill.house.foundation import FoundationTest
from groundsill.loadpath.bolts_counted import Anchor
from groundsill.loadpath.case import LineCase, foundation_at
from groundsill.loadpath.chain import Link, Stage
from groundsill.standards.common_practice.anchor_tests import load_over_force
from groundsill.work.document import Acceptance
from groundsill.work.pieces import HoldDownPiece, PanelPiece, Piece, SillBlockingPiece
from groundsill.working.sheet import quiet
from groundsill.working.value import Mark, marks_of

__all__ = [
    "MOST_MOVED_IN", "NO_TEST", "TESTS_AT_LEAST", "TESTS_SHARE", "Proof", "accepted", "alike", "by_tests",
    "times_the_force", "with_acceptances",
]  # fmt: skip

TESTS_AT_LEAST = 3
TESTS_SHARE = 0.05
MOST_MOVED_IN = 0.10
_NEAR = 1e-3
_PASSES = "passes by test: "
_STAYS = (
    "the tests held it, but a few tests lift only what is indicated: a link that fails by the equation stays so, and "
    "an engineer decides"
)


@cache
def times_the_force(count: int) -> float:
    """How many times the force on one each of so many tested anchors must hold."""
    with quiet():
        return float(load_over_force(float(count)))


RULE = (
    f"rule: at least {TESTS_AT_LEAST} anchors or {100 * TESTS_SHARE:g} % of the line's, one on each stretch, "
    f"moved at most {MOST_MOVED_IN:.2f} in. at the load; to prove the 5 % fractile each holds "
    f"{times_the_force(TESTS_AT_LEAST):.2f} times the force where {TESTS_AT_LEAST} are tested, "
    f"{times_the_force(10):.2f} where 10 are, {times_the_force(45):.2f} from 45 on (90 % confidence, scatter of 0.25: "
    "our choice, no source)"
)


@dataclass(frozen=True, slots=True)
class Proof:
    """Whether tests in place prove anchors for a load, and the words that say so, or what is still wanting.

    ``marks`` are those of the load.
    """

    passes: bool
    words: str
    marks: frozenset[Mark] = frozenset()

    def beside(self, demand: float, capacity: float) -> str:
        """What stands beside the check of these anchors: that tests lift it, or why a link that fails stays so.

        Nothing beside one that no force comes to.
        """
        if float(demand) <= 0:
            return ""
        if not self.passes or float(demand) <= float(capacity):
            return self.words
        return f"{_STAYS}: {self.words.removeprefix(_PASSES)}"


NO_TEST = Proof(False, "")


def by_tests(
    case: LineCase,
    anchors: Sequence[Anchor],
    demand: float,
    of_line: int,
    kind: Literal["anchor shear", "anchor pull"] = "anchor shear",
) -> Proof:
    """Whether tests in place prove these anchors for ``demand`` lb on one; ``of_line`` is how many the line has.

    Only tests of anchors like them count, on the stretches they stand in and on others of the line; one that fell
    short on their stretches stands against all the others.
    """
    found = _asked(case, anchors, demand, of_line, kind)
    return found if found is NO_TEST else replace(found, marks=marks_of((demand,)))


def _asked(case: LineCase, anchors: Sequence[Anchor], demand: float, of_line: int, kind: str) -> Proof:
    """The answer of the tests on record."""
    needed = max(TESTS_AT_LEAST, math.ceil(TESTS_SHARE * of_line))
    tests = _tests_on_line(case, kind)
    stretches = {found[0] for a in anchors if (found := foundation_at(case.reading, case.id, a.station_in))}
    told: dict[str, FoundationTest] = {}
    for anchor in anchors:
        like = [(id, t) for id, t in tests if alike(t, anchor)]
        if not like:
            return NO_TEST
        for id, test in like:
            if test.segment in stretches and (short := _short(test, demand)):
                return Proof(False, f"not proved by test: {test.mark or id} {short}")
        held = [(id, t) for id, t in like if not _incomplete(t) and not _short(t, demand)]
        if not held:
            id, test = like[0]
            words = _incomplete(test) or _short(test, demand)
            return Proof(False, f"not yet proved by test: {test.mark or id} {words}")
        under = foundation_at(case.reading, case.id, anchor.station_in)
        if under is None or not any(t.segment == under[0] for _, t in held):
            return Proof(False, f"not yet proved by test: none on the stretch under {anchor.name}; {RULE}")
        count = sum(t.count for _, t in held)
        if count < needed:
            return Proof(False, f"not yet proved by test: {count} of {needed} anchors tested; {RULE}")
        if wanting := _too_little(held, count, demand):
            return Proof(False, f"not yet proved by test: {wanting}; {RULE}")
        told |= dict(held)
    return Proof(True, f"{_PASSES}{_told(told)}; {RULE}") if told else NO_TEST


def _tests_on_line(case: LineCase, kind: str) -> list[tuple[str, FoundationTest]]:
    """The tests of anchors on a line, each within the stretch it names."""
    foundation = case.reading.house.survey.foundation
    found = []
    for id, test in case.reading.in_order(foundation.tests):
        segment = foundation.segments.get(test.segment)
        if segment is None or segment.line != case.id or test.kind != kind or test.unit != "lb":
            continue
        if segment.from_in <= test.station_in <= segment.to_in:
            found.append((id, test))
    return found


def alike(test: FoundationTest, anchor: Anchor) -> bool:
    """Whether a tested anchor stands for another: of its age, kind and size, no deeper, no farther from the face."""
    if test.anchor != ("new" if anchor.new else "old") or test.anchor_kind != anchor.kind:
        return False
    if test.anchor_diameter_in is None or abs(test.anchor_diameter_in - anchor.diameter_in) > _NEAR:
        return False
    if anchor.edge_in is None or test.anchor_edge_in is None or test.anchor_edge_in > anchor.edge_in + _NEAR:
        return False
    if anchor.embedment_in is None:
        return True
    return test.anchor_embedment_in is not None and test.anchor_embedment_in <= anchor.embedment_in + _NEAR


def _incomplete(test: FoundationTest) -> str:
    """What a record lacks before it can prove anything, in words; nothing when it is whole."""
    if not test.by.strip() or not test.when.strip():
        return "does not say who made it and when"
    return "has no displacement entered" if test.displacement_in is None else ""


def _short(test: FoundationTest, demand: float) -> str:
    """How a test fell short of a load, in words; nothing when it held it without moving too far."""
    if test.displacement_in is not None and test.displacement_in > MOST_MOVED_IN:
        return f"moved {test.displacement_in:g} in., more than {MOST_MOVED_IN:.2f} in."
    if test.result < float(demand):
        return f"held {test.result:,.0f} lb of the {float(demand):,.0f} lb on one anchor"
    return ""


def _too_little(held: Sequence[tuple[str, FoundationTest]], count: int, demand: float) -> str:
    """What the least of the tested anchors lacks before so many prove a 5 % fractile, in words; nothing if nothing."""
    id, least = min(held, key=lambda pair: pair[1].result)
    factor = times_the_force(count)
    if least.result >= factor * float(demand):
        return ""
    force, each = f"{float(demand):,.0f} lb on one", f"{factor * float(demand):,.0f} lb"
    held_by = f"{least.mark or id} held {least.result:,.0f} lb"
    return f"{held_by}, and each of {count} is to hold {each}, {factor:.2f} times the {force}"


def _told(tests: dict[str, FoundationTest]) -> str:
    least, most = min(t.result for t in tests.values()), max(t.displacement_in or 0.0 for t in tests.values())
    marks = ", ".join(t.mark or id for id, t in tests.items())
    who = ", ".join(dict.fromkeys(f"{t.by} {t.when}" for t in tests.values()))
    places = ", ".join(dict.fromkeys(f"{t.station_in / 12:.1f} ft" for t in tests.values()))
    count = sum(t.count for t in tests.values())
    return (
        f"{marks} held at least {least:,.0f} lb at no more than {most:g} in., {count} anchors at {places} ({who}); "
        f"{times_the_force(count):.2f} times the force on one was asked of each"
    )


# ---- Decisions of engineers -----------------------------------------------------------------------------------------


def with_acceptances(case: LineCase, stages: Iterable[Stage]) -> tuple[Stage, ...]:
    """Stages whose indicated links pass where a named engineer accepted them."""
    return tuple(replace(stage, links=tuple(accepted(case, link) for link in stage.links)) for stage in stages)


def accepted(case: LineCase, link: Link) -> Link:
    """A link, lifted from *indicated* to *passes* by a recorded decision for it in this state of the house.

    A decision must name the engineer, the licence, the date and a reason, and covers ratios up to the one it states.
    It holds for the work on the line that it was given for, and for no other.
    """
    if link.status != "indicated" or link.ratio is None:
        return link
    for _, found in case.reading.in_order(case.reading.house.acceptances):
        signed = all(text.strip() for text in (found.by, found.licence, found.when, found.reason))
        if found.link == link.address and signed and _same_state(case, found) and link.ratio <= found.most_ratio:
            words = f"accepted by {found.by}, {found.licence}, {found.when}: {found.reason} ({link.extension})"
            reason = "; ".join(text for text in (words, link.reason) if text)
            return replace(link, status="passes", verdict="passes", extension="", reason=reason)
    return link


def _same_state(case: LineCase, acceptance: Acceptance) -> bool:
    """Whether the work on the line is the work the decision was given for."""
    house = case.reading.house
    if acceptance.alternative is None:
        return not case.pieces
    alternative = house.alternatives.get(acceptance.alternative)
    if alternative is None:
        return False
    asked = {id: piece for id, piece in alternative.pieces.items() if _line_of(case, piece) == case.id}
    return dict(case.pieces) == asked


def _line_of(case: LineCase, piece: Piece) -> str | None:
    if isinstance(piece, (PanelPiece, SillBlockingPiece, HoldDownPiece)):
        segment = case.reading.house.survey.underfloor.segments.get(piece.segment)
        return segment.line if segment is not None else None
    return getattr(piece, "line", None)
