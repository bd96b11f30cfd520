"""Sheathing on both faces, or two layers (SDPWS 2021, 4.3.5.4): as in the 2015 edition, under other numbers."""

from __future__ import annotations

from groundsill.standards.sdpws_2015 import two_sided as earlier
from groundsill.standards.sdpws_2021 import SOURCE

__all__ = ["added_stiffness", "panel_with_gypsum_wind", "same_material", "unlike_materials"]

_QUOTED = (
    "quoted in github.com/rohreng/anderson-rohr-calcs, docs/stacked-wood-qaqc-2026-09/B-shearwall-code-audit.md, "
    "confirmed item 2 and open question 6."
)
_RECALLED = "recalled; a public review that quotes this edition gives the clause and agrees."

added_stiffness = earlier.added_stiffness.restated(
    "sdpws-2021/4.3.5.4.1-stiffness", clause="4.3.5.4.1", source=SOURCE, module=__name__, why=_RECALLED
)

same_material = earlier.same_material.restated(
    "sdpws-2021/4.3.5.4.1", clause="4.3.5.4.1", source=SOURCE, module=__name__, why=_RECALLED
)

unlike_materials = earlier.unlike_materials.restated(
    "sdpws-2021/4.3.5.4.2", clause="4.3.5.4.2", source=SOURCE, module=__name__, why=_QUOTED, how="seen"
)

panel_with_gypsum_wind = earlier.panel_with_gypsum_wind.restated(
    "sdpws-2021/4.3.5.4.2-exception",
    clause="4.3.5.4.2, exception",
    source=SOURCE,
    module=__name__,
    why=_QUOTED,
    how="seen",
)
