"""IBC 2021 section 1613.2: the building code's own additions to the ground motion of ASCE 7."""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.ibc_2021 import SOURCE
from groundsill.working.equation import Q, equation

__all__ = ["short_not_below_one_second"]


@equation(
    "ibc-2021/1613.2.3-SMS",
    title="Short-period acceleration not less than that at one second",
    clause="1613.2.3",
    source=SOURCE,
)
def short_not_below_one_second(
    S_MS: Annotated[float, Q("g", "S_MS", "acceleration at short periods, adjusted for the site", at_least=0.0)],
    S_M1: Annotated[float, Q("g", "S_M1", "acceleration at one second, adjusted for the site", at_least=0.0)],
) -> Annotated[float, Q("g", "S_MS", "acceleration at short periods, adjusted for the site")]:
    """For forces, S_MS is not taken less than S_M1; the seismic design category is found without this rule.

    Seen in up.codes "Seismic ground motion values" (the IBC's text of several years). Example (our arithmetic): 0.5 and
    0.6 give 0.6.
    """
    return max(S_MS, S_M1)
