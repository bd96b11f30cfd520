"""The 2016 proposal for sill bolts in existing footings, asked of every bolt of a sill piece, each condition told.

By it the wood value stands where every condition is met; the proposal being a proposal, that is *indicated* and no
more, whatever the concrete. Where a condition is not met the concrete is checked by ACI 318 after all; where one is
unknown, an engineer decides.
"""

from __future__ import annotations

from collections.abc import Sequence

from groundsill.forces.reading import doubted
from groundsill.house.underfloor import SillPiece
from groundsill.loadpath.bolts_counted import Anchor
from groundsill.loadpath.case import LineCase, Share, checked, foundation_at, part_length
from groundsill.loadpath.chain import Expected, Link
from groundsill.loadpath.ends import to_end
from groundsill.loadpath.sill_bolts import Wood
from groundsill.loadpath.sill_exception import Asked, nominal_of, worst_of
from groundsill.standards.conditions import Condition, all_met, told
from groundsill.standards.seaonc_2016.sill_anchors import existing_sill_bolt
from groundsill.working.steps import given, scale

__all__ = ["PROPOSAL", "PROPOSAL_CLAUSE", "ask_proposal", "by_proposal"]

PROPOSAL = "2016 proposal for existing footings"
PROPOSAL_CLAUSE = "SEAONC 2016 proposal A3.2.7 (AB-107)"
_EXTENSION = "a committee's proposal of 2016 for existing footings, not adopted: wood values without a concrete check"


def ask_proposal(case: LineCase, id: str, sill: SillPiece, anchors: Sequence[Anchor]) -> Asked:
    """The proposal for every bolt of a piece; ``applies`` is None where a condition is not known."""
    answers = [_of_one(case, sill, anchors, a) for a in anchors]
    worst = [worst_of(same) for same in zip(*answers, strict=True)]
    path = f"survey.underfloor.sills.{id}"
    doubts = case.reading.noted("thickness and condition of the sill", path, "thickness_in", "condition")
    doubts = doubts.union(*(a.marks | a.edge_marks for a in anchors))
    return Asked(all_met(worst), told(worst), doubts)


def _of_one(case: LineCase, sill: SillPiece, anchors: Sequence[Anchor], anchor: Anchor) -> tuple[Condition, ...]:
    under = foundation_at(case.reading, case.id, anchor.station_in)
    concrete = None if under is None else under[1].condition.value
    condition, panels = sill.condition.value, _panels_over(case, sill)
    return existing_sill_bolt(
        not anchor.new,
        anchor.diameter_in,
        nominal_of(sill.thickness_in.value),
        None if concrete is None else concrete == "sound",
        None if condition is None else condition == "sound",
        None if anchor.doubts else True,  # a heavily rusted bolt does not count at all
        anchor.edge_in,
        to_end(case, anchor.station_in),
        _widest_ft(anchors),
        panels,
        float(len(anchors)),
    )


def _panels_over(case: LineCase, sill: SillPiece) -> bool:
    return any(b.panel is not None and part_length(b, sill.from_in, sill.to_in) > 0 for b in case.braces)


def _widest_ft(anchors: Sequence[Anchor]) -> float:
    """The widest spacing of the bolts, ft; 0 for one alone, which another condition refuses."""
    at = sorted(a.station_in for a in anchors)
    return max((b - a for a, b in zip(at, at[1:], strict=False)), default=0.0) / 12


def by_proposal(
    case: LineCase, title: str, id: str, share: Share, wood: Wood, asked: Asked, aci: float, expected: Expected | None
) -> Link:
    """The bolts of a piece by their value in wood, as the proposal has it: never more than indicated.

    ``aci`` is what the weakest bolt holds by ACI 318, lb, and ``expected`` when it breaks out: both are told as ever.
    """
    part = given("σ", share.part, "1", "share of the line's force that the bolts of the piece take", share.marks)
    force = scale(case.allowable, part, symbol="V", label="force on the sill piece's bolts")
    assert wood.allowable is not None
    reason = f"wood values by the proposal; {asked.words}; by ACI 318-19 the weakest bolt would hold {aci:,.0f} lb"
    return checked(
        f"line/{case.id}/bolts-concrete/{id}/both",
        title,
        "sill",
        id,
        level="allowable",
        unit="lb",
        demand=force,
        capacity=doubted(wood.allowable, wood.marks),
        clause=PROPOSAL_CLAUSE,
        reason=reason,
        extension=_EXTENSION,
        expected=expected,
        marks=asked.marks,
        working=(f"line/{case.id}/demand", f"line/{case.id}/sill/{id}"),
    )
