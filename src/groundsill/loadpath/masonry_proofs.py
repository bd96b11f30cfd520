"""The two proofs that a bolt in old brick needs, and what of them is wanting.

In-place shear tests prove the masonry, tests of bolts in that wall prove the bolts (A107.5.3 of the existing-building
code's appendix A1). With either of them missing nobody can say: the answer names what is missing, and how many tests
would settle it. Stone has no rule at all.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from groundsill.house.foundation import FoundationSegment, FoundationTest
from groundsill.loadpath.bolts_counted import Anchor
from groundsill.loadpath.case import LineCase, foundation_at
from groundsill.loadpath.masonry import Bond, bond_of, inner_words, mortar_of, stretches_alike
from groundsill.loadpath.proof import alike
from groundsill.standards.iebc_2021.masonry_bolts import strength_by_tests, table_a107_5, tests_of_bolts_asked
from groundsill.working.sheet import Sheet, open_sheet
from groundsill.working.steps import given, least
from groundsill.working.value import Mark, marks_of

__all__ = ["MASONRY_CLAUSE", "NO_STONE", "Proved", "bolts_wanting", "proved", "stands_in"]

MASONRY_CLAUSE = "IEBC 2021 A106.2, A107.5"
NO_STONE = (
    "stone: no document known gives a value for a bolt in a stone foundation, so direct bolting cannot be checked; a "
    "registered design professional evaluates it, or a new foundation inside takes the force (A304.2.2)"
)
_BLOCK = "block: bolts in hollow or grouted units are for TMS 402 chapter 9, which is not here"
_PAST = "is entered past"
_MOVED = "movement at which the load is read"


@dataclass(frozen=True, slots=True)
class Proved:
    """The two proofs for the bolts of one sill piece: what they hold by tests, lb, or what is wanting, in words."""

    strength: float | None
    words: str
    wanting: str = ""
    marks: frozenset[Mark] = frozenset()


@dataclass(frozen=True, slots=True)
class _Loads:
    """What bolts of one sort held in tests, lb; what is wanting of them, and what was left out, in words.

    ``marks`` are those of the rule that says how many are asked for.
    """

    held: tuple[float, ...]
    wanting: str
    left_out: str
    marks: frozenset[Mark]


def stands_in(case: LineCase, anchors: Sequence[Anchor]) -> str:
    """Brick, stone or block, where any of these bolts stands in masonry; nothing where none does."""
    for anchor in anchors:
        under = foundation_at(case.reading, case.id, anchor.station_in)
        if under is not None and under[1].material in ("brick", "stone", "block"):
            return under[1].material
    return ""


def bolts_wanting(case: LineCase, anchors: Sequence[Anchor]) -> tuple[str, frozenset[Mark]]:
    """What is wanting before bolts in brick count, in words (nothing when they do), and the marks of what says so.

    Worked out on a sheet of its own: the working stands with the bolts in the foundation.
    """
    if open_sheet() is None:
        return proved(case, anchors).wanting, frozenset()
    with Sheet():
        found = proved(case, anchors)
    return found.wanting, found.marks


def proved(case: LineCase, anchors: Sequence[Anchor]) -> Proved:
    """What both proofs come to for bolts in masonry, the weakest of them counting for all."""
    material, inner = stands_in(case, anchors), inner_words(case)
    if material != "brick":
        return Proved(None, "", "; ".join(filter(None, (NO_STONE if material == "stone" else _BLOCK, inner))))
    wanting: list[str] = []
    terms, words, doubts = [], [], frozenset[Mark]()
    for anchor in _different(case, anchors):
        under = foundation_at(case.reading, case.id, anchor.station_in)
        if under is None or under[1].material != "brick":
            wanting.append(f"{anchor.name} does not stand in brick: bolts of one sill piece in two materials")
            continue
        bond = bond_of(case, *under)
        mortar = mortar_of(case, *under)
        doubts |= bond.marks | mortar.marks | anchor.marks
        wanting += [*_no_bond(under[1], bond), *filter(None, (mortar.why_not,))]
        loads = _loads(case, anchor, under)
        doubts |= loads.marks
        if loads.wanting:
            wanting.append(loads.wanting)
        elif not wanting:
            held = [given("P", v, "lb", f"held in a test, {_kind(anchor)}") for v in loads.held]
            terms.append(strength_by_tests(held))
            tested = f"{len(held)} tests of {_kind(anchor)} bolts (A107.5.3)"
            words += [bond.words, mortar.words, tested, loads.left_out, _runs_off(anchor, under[1])]
    if wanting:
        needs = "brick: direct bolting needs both in-place shear tests of the wall and tests of bolts in it; wanting: "
        told = needs + "; ".join(dict.fromkeys(wanting))
        return Proved(None, "", "; ".join(filter(None, (told, inner))), doubts)
    strength = least(*terms, symbol="V_m", label="one bolt in the brick, the weakest of the piece")
    return Proved(strength, "; ".join(dict.fromkeys(filter(None, words))), marks=doubts)


def _different(case: LineCase, anchors: Sequence[Anchor]) -> Iterable[Anchor]:
    """One bolt of each sort, by stretch, kind and measures: the proofs say the same of all that are alike."""
    sorts: dict[tuple[object, ...], Anchor] = {}
    for a in anchors:
        under = foundation_at(case.reading, case.id, a.station_in)
        sorts.setdefault((under and under[0], a.new, a.kind, a.diameter_in, a.embedment_in, a.edge_in, a.marks), a)
    return sorts.values()


def _no_bond(segment: FoundationSegment, bond: Bond) -> Iterable[str]:
    """What of the wall's bond keeps bolts from counting."""
    name = f"{segment.mark}: " if segment.mark else ""
    if bond.why_not:
        return [f"{name}{bond.why_not}"]
    if bond.counted < bond.wythes:
        return [f"{name}a bolt would hold one loose wythe ({bond.words})"]
    return []


def _runs_off(anchor: Anchor, segment: FoundationSegment) -> str:
    """What an open collar joint does to a new adhesive bolt, in words."""
    if not anchor.new or anchor.kind != "adhesive" or segment.collar_joint_filled.value is not False:
        return ""
    return "adhesive runs off into an open collar joint: in a screen, or grouted (common practice, no source)"


def _kind(anchor: Anchor) -> str:
    return f"{'new' if anchor.new else 'old'} {anchor.kind} {anchor.diameter_in:g} in."


def _loads(case: LineCase, anchor: Anchor, under: tuple[str, FoundationSegment]) -> _Loads:
    """What bolts like this one held in tests in masonry of its class, and what of those tests is wanting."""
    classed = stretches_alike(case, under[1])
    left_out: list[str] = []
    tests = [
        (id, t)
        for id, t in case.reading.in_order(case.reading.house.survey.foundation.tests)
        if t.kind == "anchor shear" and t.unit == "lb" and t.segment in classed and alike(t, anchor)
    ]
    most = table_a107_5().read("new bolts", _MOVED, "δ_m")
    asked, whole, missing = tests_of_bolts_asked(), [], []
    for id, test in tests:
        lacks = _lacks(test, classed[test.segment], float(most))
        if lacks.startswith(_PAST):  # what it held at that movement may be the least of all: not left out unsaid
            missing.append(f"{test.mark or id} {lacks}")
        elif lacks:
            left_out.append(f"{test.mark or id} {lacks}")
        else:
            whole += [test] * test.count
    if len(whole) < asked:
        missing.append(f"{len(whole)} of {float(asked):g} tests of {_kind(anchor)} bolts in this brick (A107.5.3)")
    if not any(classed[test.segment].line == case.id for test in whole):
        missing.append(f"no such test in this wall ({under[1].mark or under[0]})")
    told = "; ".join((*missing, *left_out))
    return _Loads(tuple(t.result for t in whole), told if missing else "", "; ".join(left_out), marks_of((asked, most)))


def _lacks(test: FoundationTest, segment: FoundationSegment, most: float) -> str:
    """Why a bolt test tells no strength, in words; nothing where it does."""
    if not segment.from_in <= test.station_in <= segment.to_in:
        return "stands off the stretch it names"
    if not test.by.strip() or not test.when.strip():
        return "does not say who made it and when"
    if test.displacement_in is None:
        return "has no displacement entered"
    if test.displacement_in > most and not math.isclose(test.displacement_in, most):
        return f"{_PAST} {most:g} in. of movement: enter the load it had there"
    return ""
