"""Proportions of a sheathed segment (SDPWS 2015, 4.3.3.4 and 4.3.4): the limits of height over length, and what a
slender segment loses.

A slender panel wall is reduced in one of two ways, never both: by 4.3.4.2 when the force in the line is shared by
stiffness, or by twice length over height when it is shared in proportion to strength.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.sdpws_2015 import SOURCE
from groundsill.standards.sdpws_2015.symbols import SegmentHeight, SegmentLength
from groundsill.standards.sdpws_2015.tables import table_4_3_4
from groundsill.standards.sheathing import within_proportions
from groundsill.working.equation import Q, equation, procedure, require

__all__ = [
    "aspect_factor",
    "aspect_ratio",
    "fibreboard_aspect_factor",
    "require_aspect",
    "strength_sharing_factor",
]


@equation(
    "sdpws-2015/4.3.4.1",
    title="Height over length of the segment",
    clause="4.3.4.1",
    source=SOURCE,
)
def aspect_ratio(h: SegmentHeight, b_s: SegmentLength) -> Annotated[float, Q("1", "h/b_s", "aspect ratio")]:
    """The proportions that Table 4.3.4 limits: height of the segment over its sheathed length.

    ``h`` and ``b_s`` in ft. Source: SDPWS 2015, 4.3.4.1, the clause by public notes on the document
    (github.com/wcfrobert/wcfrobert.github.io, _posts/2022-05-06-seismic.markdown, 8.3). A cripple wall 2 ft high in a
    panel 4 ft long has 0.5 (our own arithmetic).
    """
    return h / b_s


@equation(
    "sdpws-2015/4.3.4.2",
    title="Slender panel segment, force shared by stiffness",
    clause="4.3.4.2",
    source=SOURCE,
    constants={0.001: "ft"},
)
def aspect_factor(h: SegmentHeight, b_s: SegmentLength) -> Annotated[float, Q("1", "C_ar", "aspect ratio factor")]:
    """The factor on the nominal unit shear of a wood structural panel segment higher than twice its length.

    1.25 - 0.125 h/b_s above 2:1, and 1 up to 2:1; the two meet at 2:1. ``h``, ``b_s`` in ft; not above 3.5:1.
    Source: SDPWS 2015, 4.3.4.2 (PDF page 35), worded as 4.3.3.2 of 2021, quoted in
    github.com/rohreng/anderson-rohr-calcs, docs/plans/2026-09-16-shearwall-v3-plan.md, F7. 7 ft on 2 ft: 0.8125 (ours).
    """
    require(h - 3.5 * b_s <= 0.001, "a blocked panel segment is at most 3.5 times as high as long")
    if h <= 2 * b_s:
        return 1.0
    return 1.25 - 0.125 * h / b_s


@equation(
    "sdpws-2015/4.3.3.4.1-exception",
    title="Slender panel segment, force shared by strength",
    clause="4.3.3.4.1, exception",
    source=SOURCE,
    witness="piers 4 and 3 ft long, 10 ft high, counted as 3.20 and 1.80 ft (a public hand calculation)",
    constants={0.001: "ft"},
)
def strength_sharing_factor(
    h: SegmentHeight, b_s: SegmentLength
) -> Annotated[float, Q("1", "C_ar", "factor 2 b_s / h")]:
    """The factor that lets segments share a line's force by strength though one is higher than twice its length.

    2 b_s/h above 2:1, and 1 up to 2:1. It takes the place of 4.3.4.2 and is always the lower of the two. ``h``,
    ``b_s`` in ft; not above 3.5:1. Source: SDPWS 2015, exception 1 to 4.3.3.4.1 (PDF page 35), worded as 2021,
    4.3.5.5.1, quoted in the same plan as 4.3.4.2. 10 ft on 4 ft: 0.8, so that 4 ft count as 3.2.
    """
    require(h - 3.5 * b_s <= 0.001, "a blocked panel segment is at most 3.5 times as high as long")
    return min(1.0, 2 * b_s / h)


@equation(
    "sdpws-2015/4.3.4.2-fibreboard",
    title="Slender fibreboard segment",
    clause="4.3.4.2, structural fibreboard",
    source=SOURCE,
    how="from memory",
    constants={0.001: "ft"},
)
def fibreboard_aspect_factor(
    h: SegmentHeight, b_s: SegmentLength
) -> Annotated[float, Q("1", "C_ar", "aspect ratio factor")]:
    """The factor on the nominal unit shear of a structural fibreboard segment higher than it is long.

    1.09 - 0.09 h/b_s above 1:1 and 1 up to 1:1; not above 3.5:1. ``h``, ``b_s`` in ft. From memory. 3:1 gives 0.82.
    """
    require(
        h - 3.5 * b_s <= 0.001, "a structural fibreboard segment is at most 3.5 times as high as long (Table 4.3.4)"
    )
    return min(1.0, 1.09 - 0.09 * h / b_s)


@procedure(
    "sdpws-2015/4.3.4", title="Proportions of the segment", clause="4.3.4 and Table 4.3.4", source=SOURCE, alias=""
)
def require_aspect(sheathing: str, h: SegmentHeight, b_s: SegmentLength) -> float:
    """Height over length of a segment, refused above the limit of Table 4.3.4.

    ``sheathing`` is a row of the table (``"wood structural panel, blocked"``, ``"horizontal lumber"`` ...); ``h`` and
    ``b_s`` in ft.

    Raises:
        OutsideLimits: naming the ratio and the limit.
    """
    return within_proportions(SOURCE, table_4_3_4(), aspect_ratio, sheathing, h, b_s, "b_s")
