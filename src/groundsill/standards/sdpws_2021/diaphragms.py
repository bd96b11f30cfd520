"""Board floors as diaphragms (SDPWS 2021, 4.2): the old floor that hands the force to the braced lines."""

from __future__ import annotations

from groundsill.standards.sdpws_2015 import diaphragms as earlier
from groundsill.standards.sdpws_2015.diaphragms import SpanLength, SpanWidth
from groundsill.standards.sdpws_2021 import SOURCE
from groundsill.standards.sdpws_2021.tables import table_4_2_2, table_4_2d
from groundsill.standards.sdpws_2021.unit_shear import RULES
from groundsill.standards.sheathing import SegmentShear, floor_shear
from groundsill.working.equation import procedure

__all__ = ["diaphragm_deflection", "diaphragm_ratio", "lumber_diaphragm_shear"]

_RECALLED = "that this edition has it unchanged is recalled."

diaphragm_ratio = earlier.diaphragm_ratio.restated(
    "sdpws-2021/4.2.2-ratio", clause="4.2.2", source=SOURCE, module=__name__, why=_RECALLED
)

diaphragm_deflection = earlier.diaphragm_deflection.restated(
    "sdpws-2021/4.2-1", clause="Eq. 4.2-1", source=SOURCE, module=__name__, why=_RECALLED
)


@procedure(
    "sdpws-2021/4.2D-lumber",
    title="Unit shear of a board floor or roof",
    clause="4.1.4, 4.2.2 and Table 4.2D",
    source=SOURCE,
    alias="sdpws.lumber-diaphragm",
)
def lumber_diaphragm_shear(sheathing: str, L: SpanLength, W: SpanWidth, load: str = "seismic") -> SegmentShear:
    """Nominal and design unit shear of a diaphragm of boards.

    Args:
        sheathing: row of Table 4.2D (``"straight lumber sheathing, 1x"``, ``"diagonal lumber sheathing, 1x"``).
        L: length between the braced lines, ft.
        W: width in the direction of the force, ft.
        load: ``"seismic"`` or ``"wind"``.

    Raises:
        OutsideLimits: unknown sheathing, or longer over wide than Table 4.2.2 allows.
    """
    return floor_shear(RULES, (table_4_2d(), table_4_2_2()), diaphragm_ratio, sheathing, L, W, load)
