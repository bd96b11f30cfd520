"""Old plastered walls as crosswalls (IEBC Appendix A1): how slender one may be and still count.

The strength stands in :mod:`groundsill.standards.old_materials.existing`. The appendix was written for buildings with
masonry walls, so both are an extension on a wood house.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.old_materials import SOURCE
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import condition
from groundsill.working.table import Table

__all__ = ["crosswall_ratio", "require_crosswall", "table_iebc_a1_crosswalls"]

WallHeight = Annotated[float, Q("ft", "h", "height of the wall", above=0.0)]
WallLength = Annotated[float, Q("ft", "b", "length of wall between openings", above=0.0)]

_CLOSE_FT = 0.001  # a wall at the very limit must not fail by the last digit of a conversion


def table_iebc_a1_crosswalls() -> Table:
    """Greatest height over length of an existing crosswall between openings."""
    return Table.load("groundsill.standards.old_materials", "tables/iebc_a1_crosswalls.toml")


@equation(
    "old-materials/crosswall-ratio",
    title="Height over length of an existing crosswall",
    clause="IEBC Appendix A1, existing crosswalls",
    source=SOURCE,
    how="from memory",
)
def crosswall_ratio(h: WallHeight, b: WallLength) -> Annotated[float, Q("1", "h/b", "height over length")]:
    """The proportions that the appendix limits: height of the wall over its length between openings.

    ``h`` and ``b`` in ft. Source: IEBC Appendix A1 (clause A111.3 from memory). 9 ft on 6 ft: 1.5 (our own arithmetic).
    """
    return h / b


@procedure(
    "old-materials/crosswall",
    title="Proportions of an existing crosswall",
    clause="IEBC Appendix A1, existing crosswalls",
    source=SOURCE,
    alias="old.crosswall",
)
def require_crosswall(h: WallHeight, b: WallLength) -> float:
    """Height over length of an old plastered wall between openings, refused above the appendix's limit.

    Raises:
        OutsideLimits: naming the ratio and the limit.
    """
    limit = table_iebc_a1_crosswalls().read("existing crosswall")
    ratio = crosswall_ratio(h, b)
    met = float(h) - float(limit) * float(b) <= _CLOSE_FT
    condition("height over length within the limit for existing crosswalls", met, ratio, limit)
    if not met:
        raise OutsideLimits(
            f"{SOURCE.cite('IEBC Appendix A1, existing crosswalls')}: wall {float(h):g} ft high and {float(b):g} ft "
            f"long: h/b = {float(ratio):.3g}; must be at most {float(limit):g}"
        )
    return ratio
