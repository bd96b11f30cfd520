"""Proportions of a sheathed segment (SDPWS 2021, 4.3.3): the limits of height over length, and what a slender segment
loses; as in the 2015 edition, under other numbers.
"""

from __future__ import annotations

from groundsill.standards.sdpws_2015 import aspect as earlier
from groundsill.standards.sdpws_2015.symbols import SegmentHeight, SegmentLength
from groundsill.standards.sdpws_2021 import SOURCE
from groundsill.standards.sdpws_2021.tables import table_4_3_3
from groundsill.standards.sheathing import within_proportions
from groundsill.working.equation import procedure

__all__ = ["aspect_factor", "aspect_ratio", "fibreboard_aspect_factor", "require_aspect", "strength_sharing_factor"]

_QUOTED = (
    "quoted in github.com/rohreng/anderson-rohr-calcs, docs/plans/2026-09-16-shearwall-v3-plan.md, F7, which reads "
    "both editions and finds the wording the same."
)

aspect_ratio = earlier.aspect_ratio.restated(
    "sdpws-2021/4.3.3-ratio",
    clause="4.3.3",
    source=SOURCE,
    module=__name__,
    why="as B-shearwall-code-audit.md, S-8, of github.com/rohreng/anderson-rohr-calcs reads Table 4.3.3.",
    how="seen",
)

aspect_factor = earlier.aspect_factor.restated(
    "sdpws-2021/4.3.3.2", clause="4.3.3.2", source=SOURCE, module=__name__, why=_QUOTED, how="seen"
)

strength_sharing_factor = earlier.strength_sharing_factor.restated(
    "sdpws-2021/4.3.5.5.1-exception-1",
    clause="4.3.5.5.1, exception 1",
    source=SOURCE,
    module=__name__,
    why=_QUOTED,
    how="seen",
)

fibreboard_aspect_factor = earlier.fibreboard_aspect_factor.restated(
    "sdpws-2021/4.3.3.2-fibreboard",
    clause="4.3.3.2, structural fibreboard",
    source=SOURCE,
    module=__name__,
    why="that this edition has it unchanged is recalled.",
)


@procedure("sdpws-2021/4.3.3", title="Proportions of the segment", clause="4.3.3 and Table 4.3.3", source=SOURCE)
def require_aspect(sheathing: str, h: SegmentHeight, b_s: SegmentLength) -> float:
    """Height over length of a segment, refused above the limit of Table 4.3.3.

    ``sheathing`` is a row of the table (``"wood structural panel, blocked"``, ``"horizontal lumber"`` ...); ``h`` and
    ``b_s`` in ft.

    Raises:
        OutsideLimits: naming the ratio and the limit.
    """
    return within_proportions(SOURCE, table_4_3_3(), aspect_ratio, sheathing, h, b_s, "b")
