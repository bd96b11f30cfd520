"""How far a sheathed segment moves (SDPWS 2021, Eq. 4.3-1): as in the 2015 edition, restated."""

from __future__ import annotations

from groundsill.standards.sdpws_2015 import deflection as earlier
from groundsill.standards.sdpws_2021 import SOURCE

__all__ = ["anchorage_part", "bending_part", "shear_part", "wall_deflection"]

_RECALLED = "that this edition has it unchanged, in 4.3.4, is recalled."

wall_deflection = earlier.wall_deflection.restated(
    "sdpws-2021/4.3-1", clause="Eq. 4.3-1", source=SOURCE, module=__name__, why=_RECALLED
)

bending_part = earlier.bending_part.restated(
    "sdpws-2021/4.3-1-bending", clause="Eq. 4.3-1, first term", source=SOURCE, module=__name__, why=_RECALLED
)

shear_part = earlier.shear_part.restated(
    "sdpws-2021/4.3-1-shear", clause="Eq. 4.3-1, second term", source=SOURCE, module=__name__, why=_RECALLED
)

anchorage_part = earlier.anchorage_part.restated(
    "sdpws-2021/4.3-1-anchorage", clause="Eq. 4.3-1, third term", source=SOURCE, module=__name__, why=_RECALLED
)
