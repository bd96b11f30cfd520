"""Perforated walls (SDPWS 2021, 4.3.5.6 and 4.3.6): a sheathed line with openings that are not framed for force
transfer, held down at its two ends only. Equations alone, no table beside them in this edition.
"""

from __future__ import annotations

from groundsill.standards.sdpws_2015 import perforated as earlier
from groundsill.standards.sdpws_2015.perforated import FullHeight, LineLength, OpeningArea
from groundsill.standards.sdpws_2015.symbols import SegmentHeight
from groundsill.standards.sdpws_2021 import SOURCE
from groundsill.working.equation import procedure

__all__ = ["end_tension", "opening_factor", "opening_factor_of", "opening_ratio", "sill_uplift"]

_RECALLED = "recalled; a public review that quotes this edition gives the equation and its number, and agrees."

opening_ratio = earlier.opening_ratio.restated(
    "sdpws-2021/4.3-6", clause="Eq. 4.3-6", source=SOURCE, module=__name__, why=_RECALLED
)

opening_factor = earlier.opening_factor.restated(
    "sdpws-2021/4.3-5", clause="Eq. 4.3-5", source=SOURCE, module=__name__, why=_RECALLED
)

end_tension = earlier.end_tension.restated(
    "sdpws-2021/4.3-8", clause="4.3.6.1.3, Eq. 4.3-8", source=SOURCE, module=__name__, why=_RECALLED
)

sill_uplift = earlier.sill_uplift.restated(
    "sdpws-2021/4.3-9",
    clause="4.3.6.4.1.1, Eq. 4.3-9, and 4.3.6.4.2.1",
    source=SOURCE,
    module=__name__,
    why=_RECALLED,
)


@procedure(
    "sdpws-2021/4.3.5.6",
    title="Factor for the openings of a perforated wall",
    clause="4.3.5.6",
    source=SOURCE,
    alias="sdpws.perforated",
)
def opening_factor_of(A_o: OpeningArea, h: SegmentHeight, L_tot: LineLength, Sum_L_i: FullHeight) -> float:
    """C_o of a perforated wall.

    Args:
        A_o: area of all openings, ft2; an opening lower than h/3 is counted as h/3 high.
        h: height of the wall, ft.
        L_tot: its whole length, ft.
        Sum_L_i: length of its full-height sheathed parts within the aspect limits, ft.
    """
    return opening_factor(opening_ratio(A_o, h, Sum_L_i), L_tot, Sum_L_i)
