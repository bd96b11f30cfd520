"""The bond that an adhesive anchor is counted with: its report's, or the standard's minimum and each of its conditions.

Table 17.6.5.2.5 of ACI 318-19 stands for a product only where all of (a) to (e) are known to be met. Anything short of
that leaves the bond a named extension, so that it is indicated and no more.
"""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.standards.aci318_19.bond import INDOOR, OUTDOOR, bond_stress
from groundsill.standards.aci318_19.splitting import least_distances
from groundsill.standards.conditions import Condition, all_met, told
from groundsill.work.pieces import Adhesive
from groundsill.working.steps import given

__all__ = ["Glue", "apart", "glue_of"]

_BREAKOUT = "concrete breakout, no supplementary reinforcement, post-installed category"
_BEYOND = "minimum bond stress of Table 17.6.5.2.5 outside its conditions of use"
_LOWEST = 3
_ENVIRONMENT = {"outdoor": OUTDOOR, "indoor": INDOOR}


@dataclass(frozen=True, slots=True)
class Glue:
    """Bond stress of an adhesive and that which sets its reach, psi; the row of phi, words, and any extension."""

    cracked: float
    reach: float
    failure: str
    words: str
    extension: str


def glue_of(adhesive: Adhesive | None, f_c: float | None, earthquake: bool) -> Glue:
    """The bond of an adhesive; ``earthquake`` says that the tension is earthquake's in categories C to F."""
    known = adhesive or Adhesive()
    category = known.category or _LOWEST
    failure = f"{_BREAKOUT} {category}"
    unknown = "" if known.category else f"its category is not known: {_LOWEST}, the lowest, is taken"
    if known.cracked_psi is not None and known.uncracked_psi is not None:
        origin = f"report, {known.report}" if known.report else "as entered, without naming the report"
        cracked = given("tau_cr", known.cracked_psi, "psi", f"bond stress, cracked concrete: {origin}")
        reach = given("tau_uncr", known.uncracked_psi, "psi", f"bond stress, uncracked concrete: {origin}")
        words = "; ".join(text for text in (f"bond stress by its {origin}", unknown) if text)
        return Glue(cracked, reach, failure, words, "" if known.report else f"bond stress {origin}")
    hammered = None if not known.hole else known.hole == "rotary impact or rock drill"
    least = bond_stress(
        _ENVIRONMENT[known.place], f_c, True if known.report else None, hammered, True, known.warm, False, earthquake
    )
    words = f"bond stress by the minimum of Table 17.6.5.2.5, {known.place}: {told(least.conditions)}"
    extension = "" if least.applies else _BEYOND
    return Glue(least.cracked, least.reach, failure, "; ".join(t for t in (words, unknown) if t), extension)


def apart(
    adhesive: Adhesive | None, diameter: float, edge: float | None, spacing: float | None, kind: str
) -> tuple[tuple[Condition, ...], str]:
    """The distances against splitting (17.9.2) of one anchor, and the extension where they are not all met.

    ``kind`` is a row of Table 17.9.2(b), or ``cast in, not torqued``.
    """
    known = adhesive or Adhesive()
    d_a = given("d_a", diameter, "in", "anchor diameter")
    found = least_distances(d_a, kind, edge, spacing, known.least_edge_in, known.least_spacing_in)
    if all_met(found):
        return found, ""
    return found, "an anchor nearer to an edge or another than 17.9.2 allows without its report's own distances"
