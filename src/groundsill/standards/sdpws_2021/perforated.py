"""Perforated walls (SDPWS 2021, 4.3.2.3, 4.3.5.6 and 4.3.6): a sheathed line with openings that are not framed for
force transfer, held down at its two ends only.

This edition writes the factor for the openings in areas, and counts all full-height sheathing in it, slender parts with
their whole length; only the length that shares the force is cut for them.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.sdpws_2015 import perforated as earlier
from groundsill.standards.sdpws_2015.perforated import LineLength, OpeningArea
from groundsill.standards.sdpws_2015.symbols import NominalShear, SegmentHeight
from groundsill.standards.sdpws_2021 import SOURCE
from groundsill.standards.sdpws_2021.tables import table_4_3_2_3
from groundsill.standards.sheathing import perforated_within
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.steps import multiply

__all__ = [
    "counted_length", "end_tension", "opening_area", "opening_factor", "opening_factor_of", "perforated_limits",
    "sill_uplift",
]  # fmt: skip

_QUOTED = (
    "github.com/rohreng/anderson-rohr-calcs, docs/stacked-wood-qaqc-2026-09/B-shearwall-code-audit.md, commit "
    "14e55e58, quotes this edition"
)
_CASE = "a public hand calculation by this edition"


@equation(
    "sdpws-2021/4.3-6",
    title="Factor for the openings",
    clause="4.3.5.6, Eq. 4.3-6",
    source=SOURCE,
    witness="0.91 of the table for 20 % sheathed and 30 % open; 0.8197 and 0.5435 of a public hand calculation",
)
def opening_factor(
    A_wall: Annotated[float, Q("ft^2", "A_wall", "area of the whole perforated wall", above=0.0)],
    A_o: OpeningArea,
    A_fhs: Annotated[float, Q("ft^2", "A_fhs", "area with full-height sheathing", above=0.0)],
) -> Annotated[float, Q("1", "C_o", "factor for the openings")]:
    """The factor on the nominal unit shear of the full-height parts: A_wall/(3 A_o + A_fhs), at most 1.

    ft2; A_fhs holds every full-height part, whatever its proportions. Source: SDPWS 2021, Eq. 4.3-6, read in
    github.com/rohreng/anderson-rohr-calcs, docs/stacked-wood-qaqc-2026-09/B-shearwall-code-audit.md, S-2. 100 ft2 of
    wall, 30 open, 20 sheathed to the top: 0.91, as Table 4.3.5.6 prints (there).
    """
    return min(1.0, A_wall / (3 * A_o + A_fhs))


counted_length = earlier.counted_length.restated(
    "sdpws-2021/4.3.3.4",
    clause="4.3.3.4",
    source=SOURCE,
    module=__name__,
    why=f"{_QUOTED}.",
    how="seen",
    witness=f"8, 3.2 and 1.8 ft of parts 8, 4 and 3 ft long, 10 ft high ({_CASE})",
)

opening_area = earlier.opening_area.restated(
    "sdpws-2021/4.3.5.6-opening",
    clause="4.3.5.6, A_o",
    source=SOURCE,
    module=__name__,
    why=f"{_QUOTED} for width times clear height; that no less than a third of the height counts is recalled.",
    witness=f"8 ft by 7 ft in a wall of 10 ft: 56 ft2 ({_CASE})",
)

end_tension = earlier.end_tension.restated(
    "sdpws-2021/4.3-8",
    clause="4.3.6.1.3, Eq. 4.3-8",
    source=SOURCE,
    module=__name__,
    why=f"{_QUOTED} (citation map).",
    how="seen",
    witness=f"3,050 lb ({_CASE})",
)

sill_uplift = earlier.sill_uplift.restated(
    "sdpws-2021/4.3-9",
    clause="4.3.6.4.1.1, Eq. 4.3-9, and 4.3.6.4.2.1",
    source=SOURCE,
    module=__name__,
    why=f"{_QUOTED} (S-3, S-13).",
    how="seen",
    witness=f"305.0 and 1,610.0 plf ({_CASE})",
)


@procedure(
    "sdpws-2021/4.3.2.3",
    title="Limits of a perforated wall",
    clause="4.3.2.3",
    source=SOURCE,
)
def perforated_limits(v_n: NominalShear, h: SegmentHeight, load: str = "seismic") -> float:
    """The nominal unit shear of a perforated wall's sheathing, refused beyond the edition's limits.

    Args:
        v_n: nominal unit shear of the sheathing, plf.
        h: height of the wall, ft.
        load: ``"seismic"`` or ``"wind"``.

    Raises:
        OutsideLimits: naming the unit shear or the height, and its limit.
    """
    return perforated_within(SOURCE, "4.3.2.3", table_4_3_2_3(), v_n, h, load)


@procedure(
    "sdpws-2021/4.3.5.6",
    title="Factor for the openings of a perforated wall",
    clause="4.3.5.6",
    source=SOURCE,
    alias="sdpws.perforated",
)
def opening_factor_of(
    A_o: OpeningArea,
    h: SegmentHeight,
    L_tot: LineLength,
    L_fhs: Annotated[float, Q("ft", "L_fhs", "length of all full-height sheathing", above=0.0)],
) -> float:
    """C_o of a perforated wall.

    Args:
        A_o: area of all openings, ft2; an opening lower than h/3 is counted as h/3 high.
        h: height of the wall, ft.
        L_tot: its whole length, ft.
        L_fhs: length of its full-height sheathed parts, whatever their proportions, ft.
    """
    A_wall = multiply(h, L_tot, symbol="A_wall", unit="ft^2", label="area of the whole perforated wall")
    A_fhs = multiply(h, L_fhs, symbol="A_fhs", unit="ft^2", label="area with full-height sheathing")
    return opening_factor(A_wall, A_o, A_fhs)
