"""Sill bolts in old brick: by two separate proofs, or they cannot be checked.

The link takes the place of the one for concrete. With both proofs a bolt counts by its tests, *indicated*; only tests
at the very force it must hold, or an engineer's decision, make it pass. Nothing here carries tension.
"""

from __future__ import annotations

from collections.abc import Sequence

from groundsill.house.underfloor import SillPiece
from groundsill.loadpath.bolts_counted import Anchor, Counted
from groundsill.loadpath.case import LineCase, Share, cannot, checked
from groundsill.loadpath.chain import Link
from groundsill.loadpath.concrete import force_on_one, steel_in_shear
from groundsill.loadpath.masonry import AS_IN_CONCRETE, ON_A_STEM, inner_words
from groundsill.loadpath.masonry_proofs import MASONRY_CLAUSE, proved
from groundsill.loadpath.proof import NO_TEST, Proof, by_tests
from groundsill.loadpath.sill_bolts import Wood
from groundsill.working.sheet import section
from groundsill.working.steps import least

__all__ = ["brick_link"]

_BY_TESTS = f"{ON_A_STEM}; a bolt down into its top goes by tests alone"


def brick_link(
    case: LineCase,
    id: str,
    sill: SillPiece,
    bolts: Counted,
    of_line: Sequence[Anchor],
    share: Share,
    wood: Wood,
) -> tuple[Link, Proof]:
    """The bolts of a sill piece in masonry, by both proofs, and what tests in place prove of them at their force.

    The arguments are those of the link for concrete, whose place it takes.
    """
    address, title = f"line/{case.id}/bolts-concrete/{id}/both", f"bolts of sill {sill.mark or id} in the foundation"
    working = f"line/{case.id}/demand", f"line/{case.id}/sill/{id}"
    with section(address):
        found = proved(case, bolts.anchors)
        marks = bolts.marks | found.marks
        if found.strength is None:
            return cannot(
                address, title, "sill", id, clause=MASONRY_CLAUSE, reason=found.wanting, marks=marks, working=working
            ), NO_TEST
        steel = [s[0] for a in bolts.anchors if (s := steel_in_shear(a.diameter_in, a.marks)) is not None]
        capacity = least(found.strength, *steel, symbol="V_m", label="one bolt, by the brick or its steel")
        demand, basis = force_on_one(case, len(bolts.anchors), bolts.marks, share, wood)
    proof = by_tests(case, bolts.anchors, float(demand), len(of_line))
    told = proof.beside(demand, capacity)
    link = checked(
        address,
        title,
        "sill",
        id,
        level="strength",
        unit="lb a bolt",
        demand=demand,
        capacity=capacity,
        clause=MASONRY_CLAUSE,
        reason="; ".join(text for text in (found.words, f"{basis}{AS_IN_CONCRETE}", told, inner_words(case)) if text),
        extension="" if proof.passes else _BY_TESTS,
        marks=marks,
        working=working,
    )
    return link, proof
