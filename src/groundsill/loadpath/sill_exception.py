"""The building code's sill exception, asked of every bolt of a sill piece, with all its conditions told.

Concrete counts only by a core of its own stretch; a sill only where it is truly a 2x or a 3x. Where every condition is
met the wood value stands alone; where one that the code prints is not, the concrete is checked by ACI 318 after all;
where one is unknown, or lies outside what was tested, an engineer decides.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from groundsill.house.underfloor import SillPiece
from groundsill.loadpath.bolts_counted import Anchor
from groundsill.loadpath.case import LineCase, foundation_at
from groundsill.loadpath.ends import to_end
from groundsill.loadpath.stem import cored_strength
from groundsill.standards.conditions import Condition
from groundsill.standards.ibc_2021.sill_anchors import sill_exception
from groundsill.working.value import Mark

__all__ = ["EXCEPTION_CLAUSE", "Asked", "ask", "nominal_of", "worst_of"]

EXCEPTION_CLAUSE = "IBC 2021 1905.1.8"
_TWO_BY, _THREE_BY = (1.25, 2.25), (2.25, 3.5)


@dataclass(frozen=True, slots=True)
class Asked:
    """Whether the exception holds for every bolt (None: an engineer decides), and all its conditions in words.

    ``marks`` are those of the facts it was asked with.
    """

    applies: bool | None
    words: str
    marks: frozenset[Mark]


def nominal_of(thickness: float | None) -> float | None:
    """2 or 3 for a sill within the bands of true 2x and 3x lumber, full sawn or surfaced; None outside them."""
    if thickness is None:
        return None
    if _TWO_BY[0] <= thickness <= _TWO_BY[1]:
        return 2.0
    return 3.0 if _THREE_BY[0] < thickness <= _THREE_BY[1] else None


def ask(case: LineCase, id: str, sill: SillPiece, anchors: Sequence[Anchor]) -> Asked:
    """The exception for every bolt of a piece; bolts alike are asked once."""
    nominal = nominal_of(sill.thickness_in.value)
    answers: dict[tuple[object, ...], tuple[Condition, ...]] = {}
    for a in anchors:
        key = (a.diameter_in, a.embedment_in, a.edge_in, to_end(case, a.station_in), _concrete(case, a), a.kind)
        if key not in answers:
            end, cast_in = to_end(case, a.station_in), None if a.kind == "not seen" else a.kind == "cast-in"
            found = sill_exception(a.diameter_in, a.embedment_in, a.edge_in, end, nominal, _concrete(case, a), cast_in)
            answers[key] = found.conditions
    worst = [worst_of(same) for same in zip(*answers.values(), strict=True)]
    told = {
        "met": [c.text for c in worst if c.met],
        "not met": [c.text for c in worst if c.met is False],
        "not known, or outside what was tested": [c.text for c in worst if c.met is None],
    }
    words = "; ".join(f"{word}: {', '.join(texts)}" for word, texts in told.items() if texts)
    doubts = case.reading.noted("the thickness of the sill", f"survey.underfloor.sills.{id}.thickness_in")
    doubts = doubts.union(*(a.marks | a.edge_marks | _concrete_marked(case, a) for a in anchors))
    if told["not met"]:
        return Asked(False, words, doubts)
    return Asked(None if told["not known, or outside what was tested"] else True, words, doubts)


def _concrete(case: LineCase, anchor: Anchor) -> float | None:
    """Strength that counts as known: the survey's, but no more than the least core of that stretch; None without."""
    under = foundation_at(case.reading, case.id, anchor.station_in)
    if under is None:
        return None
    core, stated = cored_strength(case, under[0]), under[1].strength_psi.value
    return None if core is None or stated is None else min(core, stated)


def _concrete_marked(case: LineCase, anchor: Anchor) -> frozenset[Mark]:
    under = foundation_at(case.reading, case.id, anchor.station_in)
    return case.reading.marked(f"survey.foundation.segments.{under[0]}.strength_psi") if under else frozenset()


def worst_of(same: Sequence[Condition]) -> Condition:
    """One condition over all bolts: not met if it is not for one, else unknown if it is for one."""
    return min(same, key=lambda c: 0 if c.met is False else 1 if c.met is None else 2)
