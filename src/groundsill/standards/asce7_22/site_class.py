"""ASCE 7-22 section 20.2: the site class from the average shear wave velocity of the upper 100 ft.

Where nothing was measured the class is Default, the most critical of C, CD and D (seen in the slides on FEMA P-2192-4,
scribd document 790833268); the hazard service answers for it.
"""

from __future__ import annotations

import math
from typing import Annotated

from groundsill.standards.asce7_22 import SOURCE
from groundsill.working.equation import Q, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import condition, note
from groundsill.working.table import Table

__all__ = ["CLASSES", "site_class", "table_20_2_1"]

CLASSES = ("Default", "A", "B", "BC", "C", "CD", "D", "DE", "E")


def table_20_2_1() -> Table:
    """The bounds of the average shear wave velocity for each site class."""
    return Table.load(__package__, "tables/20_2_1.toml")


@procedure(
    "asce7-22/20.2",
    title="Site class from shear wave velocity",
    clause="20.2 with Table 20.2-1",
    source=SOURCE,
    alias="asce7.site-class",
)
def site_class(
    v_s30: Annotated[float, Q("ft/s", "v_s30", "average shear wave velocity of the upper 100 ft", above=0.0)],
    soft_clay: bool = False,
) -> str:
    """A to E by velocity; E also for more than 10 ft of soft clay, whatever the velocity.

    Args:
        v_s30: measured, ft/s. A velocity guessed from blow counts must also be tried faster and slower (20.3): ask the
            geotechnical engineer.
        soft_clay: more than 10 ft of soil with plasticity index above 20, water content of 40 per cent or more, and
            undrained shear strength below 500 psf.

    Raises:
        OutsideLimits: for a velocity that is none.
    """
    if not 0 < v_s30 < math.inf:
        raise OutsideLimits(f"{SOURCE.cite('20.2')}: v_s30 = {float(v_s30):g} ft/s; it must be above 0")
    table = table_20_2_1()
    if condition("more than 10 ft of soft clay", soft_clay, cite=table.cite):
        return "E"
    for name, (above, _) in table.rows.items():
        if isinstance(above, str):
            continue
        bound = table.read(name, "above", f"v_{name}")
        if condition(f"faster than the lower bound of class {name}", v_s30 > bound, v_s30, bound, cite=table.cite):
            note(f"Site class {name}")
            return name
    note("Site class E: no faster than the lower bound of class DE")
    return "E"
