"""Unit shear of a sheathed wall segment (SDPWS 2015, 4.3.3): the tabulated nominal figure, what takes from it, and the
design figures made of it.

Three families of sheathing have a table each: panels (4.3A), plaster and gypsum (4.3C), boards (4.3D). What an old
cripple wall carries *as found* is usually boards or plaster; what is added to it is usually panels.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.sdpws_2015 import SOURCE
from groundsill.standards.sdpws_2015.aspect import (
    aspect_factor,
    fibreboard_aspect_factor,
    require_aspect,
    strength_sharing_factor,
)
from groundsill.standards.sdpws_2015.symbols import (
    NominalShear,
    SegmentHeight,
    SegmentLength,
    SpecificGravity,
    TabulatedShear,
)
from groundsill.standards.sdpws_2015.tables import (
    table_4_3_3_2,
    table_4_3a_pressed_seismic,
    table_4_3a_pressed_wind,
    table_4_3a_seismic,
    table_4_3a_wind,
    table_4_3b_seismic,
    table_4_3b_wind,
    table_4_3c,
    table_4_3d,
)
from groundsill.standards.sdpws_2015.two_sided import added_stiffness, same_material, unlike_materials
from groundsill.standards.sheathing import (
    SegmentShear,
    WallRules,
    finish_shear,
    panel_shear,
    pressed_shear,
    proportions_of,
)
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.table import Table

__all__ = [
    "RULES",
    "THICKER",
    "asd_unit_shear",
    "gravity_factor",
    "lrfd_unit_shear",
    "lumber_unit_shear",
    "panel_unit_shear",
    "plaster_unit_shear",
    "pressed_unit_shear",
    "with_15_32_value",
]

# note 2 of Table 4.3A: thinner panels that may take the value of 15/32 in. panels with the same nails
THICKER = {
    "3/8, 8d": "15/32, 8d",
    "7/16, 8d": "15/32, 8d",
    "Structural I 3/8, 8d": "Structural I 15/32, 8d",
    "Structural I 7/16, 8d": "Structural I 15/32, 8d",
}


@equation(
    "sdpws-2015/4.3.3-ASD",
    title="Allowable unit shear",
    clause="4.3.3",
    source=SOURCE,
    witness="280, 230 and 255 plf (780 CMR Table 2306.3, allowables of the same panels and nails)",
)
def asd_unit_shear(v_n: NominalShear) -> Annotated[float, Q("plf", "v_ASD", "allowable unit shear")]:
    """The unit shear to hold against ASD forces: nominal over 2.0, wind or earthquake.

    Plf. Source: SDPWS 2015, 4.3.3; the 2.0 read in Line and Russell, https://studylib.net/doc/12742600 .
    Structural I 15/32 in. with 8d nails at 6 in.: 560/2.0 = 280 plf, as 780 CMR Table 2306.3 prints for the same wall.
    """
    return v_n / 2.0


@equation("sdpws-2015/4.3.3-LRFD", title="Factored unit shear resistance", clause="4.3.3", source=SOURCE)
def lrfd_unit_shear(v_n: NominalShear) -> Annotated[float, Q("plf", "v_LRFD", "factored unit shear resistance")]:
    """The unit shear to hold against strength-level forces: 0.80 times nominal, wind or earthquake.

    Plf. Source: SDPWS 2015, 4.3.3; the 0.80 read in Line and Russell, https://studylib.net/doc/12742600 .
    15/32 in. panels with 8d nails at 4 in.: 0.80 x 760 = 608 plf (our own arithmetic).
    """
    return 0.80 * v_n


@equation(
    "sdpws-2015/4.3A-note-3",
    title="Framing of lighter wood",
    clause="Table 4.3A, note 3",
    source=SOURCE,
    witness="0.92 for spruce-pine-fir, G 0.42 (github.com/rohreng/anderson-rohr-calcs)",
)
def gravity_factor(G: SpecificGravity) -> Annotated[float, Q("1", "C_G", "specific gravity factor")]:
    """The factor on tabulated panel values when the framing is lighter than Douglas fir: 1 - (0.5 - G), at most 1.

    ``G`` is the specific gravity of the framing in the wood standard's table. Source: note 3 of Table 4.3A, copied in
    github.com/rivt-sys/rivtpublic-solar-canopy, r0201-Tube-Frame/data/awc4_3a_notes.txt, and quoted for 2021 in
    github.com/rohreng/anderson-rohr-calcs, docs/stacked-wood-qaqc-2026-09/B-shearwall-code-audit.md.
    Spruce-pine-fir, 0.42: 0.92 (there); redwood, 0.37: 0.87 (our own arithmetic).
    """
    return min(1.0, 1.0 - (0.5 - G))


@equation(
    "sdpws-2015/4.3A-note-2",
    title="Value of 15/32 in. panels for thinner ones",
    clause="Table 4.3A, note 2",
    source=SOURCE,
)
def with_15_32_value(
    v_n: TabulatedShear,
    v_15_32: Annotated[float, Q("plf", "v_15/32", "nominal unit shear of 15/32 in. panels, same nails", above=0.0)],
) -> Annotated[float, Q("plf", "v_n", "nominal unit shear")]:
    """The nominal value of 3/8 and 7/16 in. panels when studs stand 16 in. apart or less, or panels run across studs.

    The value of 15/32 in. panels with the same nails. Plf. Source: note 2 of Table 4.3A, copied in
    github.com/rivt-sys/rivtpublic-solar-canopy, r0201-Tube-Frame/data/awc4_3a_notes.txt. 7/16 in. with 8d at 6 in.: 520
    instead of 480 plf (our own reading of the note).
    """
    return max(v_n, v_15_32)


@procedure(
    "sdpws-2015/4.3.3",
    title="Unit shear of a panel-sheathed segment",
    clause="4.3.3, 4.3.4 and Table 4.3A",
    source=SOURCE,
    alias="sdpws.unit-shear",
)
def panel_unit_shear(
    panel: str,
    edge_spacing: Annotated[float, Q("in", "s", "spacing of nails along panel edges")],
    h: SegmentHeight,
    b_s: SegmentLength,
    G: SpecificGravity = 0.50,
    load: str = "seismic",
    sharing: str = "stiffness",
    blocking: str = "blocked",
    studs_close: bool = False,
    stud_spacing: Annotated[float, Q("in", "stud spacing", "spacing of studs, for unblocked panels")] = 16.0,
    over_gypsum: bool = False,
) -> SegmentShear:
    """Nominal, adjusted and design unit shear of a segment with wood structural panels on one side.

    Args:
        panel: row of Table 4.3A: grade, thickness and nail (``"15/32, 8d"``, ``"Structural I 15/32, 10d"``).
        edge_spacing: nails along panel edges, 6, 4, 3 or 2 in.
        h: height of the segment, ft (of the cripple wall, plate to sill).
        b_s: sheathed length of the segment, ft.
        G: specific gravity of the framing.
        load: ``"seismic"`` or ``"wind"``.
        sharing: how the line's force is shared among its segments, ``"stiffness"`` or ``"strength"``; ``"perforated"``
            in a perforated wall, whose slender parts lose length instead.
        blocking: ``"blocked"``, or the nailing of an unblocked panel: ``"6/6"`` or ``"6/12"`` (Table 4.3.3.2).
        studs_close: True when studs stand 16 in. apart or less or panels run across them (note 2).
        stud_spacing: in., read only for unblocked panels.
        over_gypsum: True when the panels go over gypsum board: ``panel`` is then a row of Table 4.3B.

    Raises:
        OutsideLimits: unknown panel, spacing between the columns, proportions beyond Table 4.3.4.
    """
    return panel_shear(
        RULES, panel, edge_spacing, h, b_s, G, load, sharing, blocking, studs_close, stud_spacing, over_gypsum
    )


@procedure(
    "sdpws-2015/4.3D-lumber",
    title="Unit shear of a segment sheathed with boards",
    clause="4.3.3, 4.3.4 and Table 4.3D",
    source=SOURCE,
    alias="sdpws.lumber-shear",
)
def lumber_unit_shear(material: str, h: SegmentHeight, b_s: SegmentLength, load: str = "seismic") -> SegmentShear:
    """Nominal and design unit shear of a segment sheathed with lumber boards, as old walls often are.

    Args:
        material: row of Table 4.3D (``"horizontal lumber sheathing, 1x"``).
        h: height of the segment, ft.
        b_s: sheathed length of the segment, ft.
        load: ``"seismic"`` or ``"wind"``.

    Raises:
        OutsideLimits: unknown material, or proportions beyond Table 4.3.4.
    """
    return finish_shear(RULES, table_4_3d(), material, proportions_of(material), h, b_s, load)


@procedure(
    "sdpws-2015/4.3C-plaster",
    title="Unit shear of a segment with plaster or gypsum",
    clause="4.3.3, 4.3.4 and Table 4.3C",
    source=SOURCE,
    alias="sdpws.plaster-shear",
)
def plaster_unit_shear(material: str, h: SegmentHeight, b_s: SegmentLength, load: str = "seismic") -> SegmentShear:
    """Nominal and design unit shear of a segment with cement plaster, gypsum lath or gypsum board.

    Args:
        material: row of Table 4.3C (``"portland cement plaster 7/8 in. on metal lath"``).
        h: height of the segment, ft.
        b_s: length of the segment, ft.
        load: ``"seismic"`` or ``"wind"``.

    Raises:
        OutsideLimits: unknown material (plaster on wood lath has no row), or proportions beyond Table 4.3.4.
    """
    return finish_shear(RULES, table_4_3c(), material, proportions_of(material), h, b_s, load)


@procedure(
    "sdpws-2015/4.3A-pressed",
    title="Unit shear of a segment with particleboard or structural fibreboard",
    clause="4.3.3, 4.3.4 and Table 4.3A",
    source=SOURCE,
    alias="sdpws.pressed-board-shear",
)
def pressed_unit_shear(
    material: str,
    edge_spacing: Annotated[float, Q("in", "s", "spacing of nails along the edges")],
    h: SegmentHeight,
    b_s: SegmentLength,
    G: SpecificGravity = 0.50,
    load: str = "seismic",
) -> SegmentShear:
    """Nominal and design unit shear of a segment with particleboard or structural fibreboard, as old walls may be.

    The factor of the framing's specific gravity, recalled of every wood-based board of the table, only lowers it.

    Args:
        material: row of Table 4.3A (``"structural fibreboard 1/2 in., 11 gauge roofing nails"``).
        edge_spacing: nails along the edges, 6, 4, 3 or 2 in.; fibreboard at most 4.
        h: height of the segment, ft.
        b_s: sheathed length of the segment, ft.
        G: specific gravity of the framing.
        load: ``"seismic"`` or ``"wind"``.

    Raises:
        OutsideLimits: unknown board, spacing between the columns, proportions beyond Table 4.3.4.
    """
    return pressed_shear(RULES, material, edge_spacing, h, b_s, G, load)


def _panels(load: str) -> Table:
    return table_4_3a_seismic() if load == "seismic" else table_4_3a_wind()


def _pressed(load: str) -> Table:
    return table_4_3a_pressed_seismic() if load == "seismic" else table_4_3a_pressed_wind()


def _over_gypsum(load: str) -> Table:
    return table_4_3b_seismic() if load == "seismic" else table_4_3b_wind()


RULES = WallRules(
    source=SOURCE,
    unit_shears="4.3.3",
    no_blocking="4.3.3.2",
    panels=_panels,
    over_gypsum=_over_gypsum,
    pressed=_pressed,
    thicker=THICKER,
    columns={"seismic": ("seismic", "v_s"), "wind": ("wind", "v_w")},
    unblocked=table_4_3_3_2,
    gravity_factor=gravity_factor,
    with_15_32_value=with_15_32_value,
    require_aspect=require_aspect,
    by_stiffness=aspect_factor,
    by_strength=strength_sharing_factor,
    slender_fibreboard=fibreboard_aspect_factor,
    alike=same_material,
    unlike=unlike_materials,
    stiffer=added_stiffness,
    design=dict.fromkeys(("seismic", "wind"), (asd_unit_shear, lrfd_unit_shear)),
)
