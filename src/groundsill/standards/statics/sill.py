"""A sill as a bar on the springs of its bolts: how far a pull goes along it, and how many bolts really work."""

from __future__ import annotations

from math import sqrt
from typing import Annotated

from groundsill.standards.statics import SOURCE
from groundsill.working.equation import Q, equation

__all__ = ["bolts_that_work", "transfer_length"]


@equation(
    "statics/transfer-length",
    title="Length over which a sill passes force on to its bolts",
    clause="bar on evenly spread springs, E A u'' = (γ/s) u",
    source=SOURCE,
    how="computed",
)
def transfer_length(
    EA: Annotated[float, Q("lb", "EA", "axial stiffness of the sill", above=0.0)],
    gamma: Annotated[float, Q("lb/in", "γ", "load per inch of slip of one bolt", above=0.0)],
    s: Annotated[float, Q("in", "s", "spacing of the bolts", above=0.0)],
) -> Annotated[float, Q("in", "L_t", "transfer length")]:
    """Along a row of like bolts beyond the panel, what is left in the sill falls to 37 % (1/e) over each such length.

    From L_t = sqrt(E A s/γ), the bolts' springs taken as spread along the sill: close bolts on a thin sill take their
    force up within a short length, and those farther than about two of it from the panel hardly help. Example: 2x6 of
    1,000,000 psi, 1/2 in. bolts of 95,459 lb/in at 12 in.: 32.2 in. (our own arithmetic).
    """
    return sqrt(EA * s / gamma)


@equation(
    "statics/bolts-that-work",
    title="How many bolts really work",
    clause="the whole force over the greatest share",
    source=SOURCE,
    how="computed",
)
def bolts_that_work(
    V: Annotated[float, Q("lb", "V", "force on all of the bolts", at_least=0.0)],
    V_1: Annotated[float, Q("lb", "V_1", "force on the bolt that takes most", above=0.0)],
) -> Annotated[float, Q("1", "n_w", "bolts that work")]:
    """As many bolts sharing evenly would each take what the worst one takes. Example: 6,000 lb, 1,500 lb: 4."""
    return V / V_1
