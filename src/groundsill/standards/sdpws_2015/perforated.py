"""Perforated walls (SDPWS 2015, 4.3.3.5 and 4.3.6): a sheathed line with openings that are not framed for force
transfer, held down at its two ends only.

The whole line is as strong as its full-height parts times one factor for the openings. Slender parts count with less of
their length, and not at all beyond the greatest proportions; a part that counts stands at each end.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.sdpws_2015 import SOURCE
from groundsill.standards.sdpws_2015.symbols import NominalShear, SegmentHeight, SegmentLength
from groundsill.standards.sdpws_2015.tables import table_4_3_5_3
from groundsill.standards.sheathing import perforated_within
from groundsill.working.equation import Q, equation, procedure, require

__all__ = [
    "counted_length", "end_tension", "opening_area", "opening_factor", "opening_factor_of", "opening_ratio",
    "perforated_limits", "sill_uplift",
]  # fmt: skip

FullHeight = Annotated[float, Q("ft", "Sum_L_i", "total length of full-height sheathed segments", above=0.0)]
LineLength = Annotated[float, Q("ft", "L_tot", "length of the whole perforated wall", above=0.0)]
OpeningArea = Annotated[float, Q("ft^2", "A_o", "total area of the openings", at_least=0.0)]
LineShear = Annotated[float, Q("lb", "V", "shear in the whole wall", at_least=0.0)]
OpeningFactor = Annotated[float, Q("1", "C_o", "factor for the openings", above=0.0, at_most=1.0)]


@equation(
    "sdpws-2015/4.3.4.3",
    title="Length of a full-height part that counts",
    clause="4.3.4.3",
    source=SOURCE,
    witness="8, 3.2 and 1.8 ft of parts 8, 4 and 3 ft long, 10 ft high (a public hand calculation)",
    constants={0.001: "ft"},
)
def counted_length(
    h: SegmentHeight, b_s: SegmentLength
) -> Annotated[float, Q("ft", "L_i", "length of the part that counts")]:
    """The length of one full-height part of a perforated wall: less above 2:1, where it is multiplied by 2 b_s/h.

    ``h`` and ``b_s`` in ft; a part of more than 3.5:1 is none. What slender segments of other walls lose (4.3.4.2,
    exceptions to 4.3.3.4.1) is not taken besides. Source: 4.3.3.4 of 2021, quoted in
    github.com/rohreng/anderson-rohr-calcs, docs/stacked-wood-qaqc-2026-09/D-shearwall-recompute.md; the number of the
    2015 clause from memory. 10 ft on 4 ft: 3.2 ft (its case 6).
    """
    require(h - 3.5 * b_s <= 0.001, "a full-height part is at most 3.5 times as high as long")
    if h <= 2 * b_s:
        return b_s
    return 2 * b_s * b_s / h


@equation(
    "sdpws-2015/4.3.3.5-opening",
    title="Area of an opening",
    clause="4.3.3.5, A_o",
    source=SOURCE,
    witness="8 ft by 7 ft in a wall of 10 ft: 56 ft2 (a public hand calculation)",
)
def opening_area(
    w_o: Annotated[float, Q("ft", "w_o", "width of the opening", above=0.0)],
    h_o: Annotated[float, Q("ft", "h_o", "clear height of the opening", at_least=0.0)],
    h: SegmentHeight,
) -> Annotated[float, Q("ft^2", "A_o,i", "area of the opening")]:
    """The area an opening counts with: its width times its clear height, no less than a third of the wall's.

    ft. Where the wall above and below it is bare its height is the wall's. Source: the definition of A_o in 4.3.3.5,
    quoted in github.com/rohreng/anderson-rohr-calcs, docs/stacked-wood-qaqc-2026-09/D-shearwall-recompute.md. 8 by
    7 ft, 10 ft: 56 ft2 (its case 3); a vent 1.25 ft wide and 0.5 ft high in a wall of 3 ft: 1.25 ft2 (our own
    arithmetic).
    """
    return w_o * max(h_o, h / 3)


@equation(
    "sdpws-2015/4.3-6",
    title="Sheathing area ratio",
    clause="Eq. 4.3-6",
    source=SOURCE,
    witness="two-story perforated wall of a public hand calculation: r 0.8511 and 0.4545",
)
def opening_ratio(
    A_o: OpeningArea, h: SegmentHeight, Sum_L_i: FullHeight
) -> Annotated[float, Q("1", "r", "sheathing area ratio")]:
    """The share of sheathed area: 1 / (1 + A_o/(h Sum L_i)).

    ft and ft2. Source: SDPWS 2015, Eq. 4.3-6, quoted in github.com/rohreng/anderson-rohr-calcs,
    docs/stacked-wood-qaqc-2026-09/D-shearwall-recompute.md, section 3.
    16 ft2 of opening, 8 ft, 10 ft of full height: 0.833.
    """
    return 1 / (1 + A_o / (h * Sum_L_i))


@equation(
    "sdpws-2015/4.3-5",
    title="Factor for the openings",
    clause="Eq. 4.3-5",
    source=SOURCE,
    witness="two-story perforated wall of a public hand calculation: C_o 0.8197 and 0.5435",
)
def opening_factor(
    r: Annotated[float, Q("1", "r", "sheathing area ratio", above=0.0, at_most=1.0)],
    L_tot: LineLength,
    Sum_L_i: FullHeight,
) -> Annotated[float, Q("1", "C_o", "factor for the openings")]:
    """The factor on the nominal unit shear of the full-height parts: r/(3 - 2r) times L_tot/Sum L_i, at most 1.

    Source: SDPWS 2015, Eq. 4.3-5, quoted in github.com/rohreng/anderson-rohr-calcs,
    docs/stacked-wood-qaqc-2026-09/D-shearwall-recompute.md, section 3. Full
    height over half the length, openings two thirds of the height: 0.67, as Table 4.3.3.5 prints.
    """
    return min(1.0, r / (3 - 2 * r) * L_tot / Sum_L_i)


@equation(
    "sdpws-2015/4.3-8",
    title="Uplift at the ends of a perforated wall",
    clause="4.3.6.1.2, Eq. 4.3-8",
    source=SOURCE,
    witness="two-story perforated wall of a public hand calculation: 3,050 lb",
)
def end_tension(
    V: LineShear, h: SegmentHeight, C_o: OpeningFactor, Sum_L_i: FullHeight
) -> Annotated[float, Q("lb", "T", "uplift and compression at each end")]:
    """The force each end of the wall is held down by, dead load not counted: V h/(C_o Sum L_i), lb.

    Source: SDPWS 2021, 4.3.6.1.3, Eq. 4.3-8, read in github.com/rohreng/anderson-rohr-calcs,
    docs/stacked-wood-qaqc-2026-09/D-shearwall-recompute.md; the number of
    the 2015 clause from memory. 8,000 lb, 10 ft, 0.8197, 32 ft: 3,050 lb (its case 3).
    """
    return V * h / (C_o * Sum_L_i)


@equation(
    "sdpws-2015/4.3-9",
    title="Uplift along the plate of a perforated wall",
    clause="4.3.6.4.1.1 and 4.3.6.4.2.1",
    source=SOURCE,
    witness="two-story perforated wall of a public hand calculation: 305.0 and 1,610.0 plf",
)
def sill_uplift(
    V: LineShear, C_o: OpeningFactor, Sum_L_i: FullHeight
) -> Annotated[float, Q("plf", "t", "shear and uplift along the plate at full-height parts")]:
    """The unit shear, and the equal uplift, the plate is anchored for at full-height parts: V/(C_o Sum L_i), plf.

    Source: SDPWS 2021, 4.3.6.4.1.1, Eq. 4.3-9, and 4.3.6.4.2.1, quoted in github.com/rohreng/anderson-rohr-calcs,
    docs/stacked-wood-qaqc-2026-09/D-shearwall-recompute.md.
    8,000 lb, 0.8197, 32 ft: 305 plf (its case 3).
    """
    return V / (C_o * Sum_L_i)


@procedure(
    "sdpws-2015/4.3.3.5",
    title="Factor for the openings of a perforated wall",
    clause="4.3.3.5",
    source=SOURCE,
    alias="sdpws.perforated",
)
def opening_factor_of(A_o: OpeningArea, h: SegmentHeight, L_tot: LineLength, Sum_L_i: FullHeight) -> float:
    """C_o of a perforated wall, worked by the equations rather than read from Table 4.3.3.5.

    Args:
        A_o: area of all openings, ft2; an opening lower than h/3 is counted as h/3 high.
        h: height of the wall, ft.
        L_tot: its whole length, ft.
        Sum_L_i: length of its full-height sheathed parts within the aspect limits, ft.
    """
    return opening_factor(opening_ratio(A_o, h, Sum_L_i), L_tot, Sum_L_i)


@procedure(
    "sdpws-2015/4.3.5.3",
    title="Limits of a perforated wall",
    clause="4.3.5.3",
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
    return perforated_within(SOURCE, "4.3.5.3", table_4_3_5_3(), v_n, h, load)
