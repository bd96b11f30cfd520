"""Unit shear of a sheathed wall segment (SDPWS 2021, 4.1.4 and 4.3.5): the one nominal figure, what takes from it, and
the design figures made of it, which differ between wind and earthquake.

Panels and boards come to the same allowable against earthquake as by the 2015 edition, to the pound: their one column
is 1.4 times the earlier seismic one, and the divisor is 2.8 in place of 2.0. Plaster and gypsum kept their figure, so
an old plastered wall is worth less by this edition.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.sdpws_2015 import unit_shear as earlier
from groundsill.standards.sdpws_2015.symbols import NominalShear, SegmentHeight, SegmentLength, SpecificGravity
from groundsill.standards.sdpws_2015.unit_shear import THICKER
from groundsill.standards.sdpws_2021 import SOURCE
from groundsill.standards.sdpws_2021.aspect import (
    aspect_factor,
    fibreboard_aspect_factor,
    require_aspect,
    strength_sharing_factor,
)
from groundsill.standards.sdpws_2021.tables import (
    table_4_3_5_3,
    table_4_3a,
    table_4_3a_note_10,
    table_4_3a_pressed,
    table_4_3b,
    table_4_3c,
    table_4_3d,
)
from groundsill.standards.sdpws_2021.two_sided import added_stiffness, same_material, unlike_materials
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
    "asd_seismic",
    "asd_wind",
    "gravity_factor",
    "lrfd_seismic",
    "lrfd_wind",
    "lumber_unit_shear",
    "panel_unit_shear",
    "plaster_unit_shear",
    "pressed_unit_shear",
    "with_15_32_value",
]

Allowable = Annotated[float, Q("plf", "v_ASD", "allowable unit shear")]
Factored = Annotated[float, Q("plf", "v_LRFD", "factored unit shear resistance")]


@equation(
    "sdpws-2021/4.1.4.1-ASD",
    title="Allowable unit shear, earthquake",
    clause="4.1.4.1",
    source=SOURCE,
    witness="230 to 670 plf within 1 plf (780 CMR Table 2306.3, allowables of the same panels and nails)",
)
def asd_seismic(v_n: NominalShear) -> Allowable:
    """The unit shear to hold against ASD earthquake forces: nominal over 2.8.

    Plf. Source: SDPWS 2021, 4.1.4.1, quoted in github.com/rohreng/anderson-rohr-calcs,
    docs/stacked-wood-qaqc-2026-09/B-shearwall-code-audit.md, S-1 (seen); nothing may be added to it. 7/16 in. panels
    with 8d nails at 6 in.: 670/2.8 = 239 plf, as that review prints.
    """
    return v_n / 2.8


@equation(
    "sdpws-2021/4.1.4.2-ASD",
    title="Allowable unit shear, wind",
    clause="4.1.4.2",
    source=SOURCE,
    witness="335 plf (a public review of a program, S-1: 7/16 in., 8d at 6 in.)",
)
def asd_wind(v_n: NominalShear) -> Allowable:
    """The unit shear to hold against ASD wind forces: nominal over 2.0.

    Plf. Source: SDPWS 2021, 4.1.4.2, quoted in the review that ``asd_seismic`` names, S-1 (seen). 7/16 in. panels with
    8d nails at 6 in.: 670/2.0 = 335 plf, as that review prints.
    """
    return v_n / 2.0


@equation(
    "sdpws-2021/4.1.4.1-LRFD",
    title="Factored unit shear resistance, earthquake",
    clause="4.1.4.1",
    source=SOURCE,
)
def lrfd_seismic(v_n: NominalShear) -> Factored:
    """The unit shear to hold against strength-level earthquake forces: 0.50 times nominal.

    Plf. Source: SDPWS 2021, 4.1.4.1, as a public calculation library that names the edition holds it (seen:
    github.com/kpff-andy-sazima/Structural-Tools, src/structural_tools/wood/sheathing.py). 15/32 in. panels with 8d
    nails at 4 in.: 0.50 x 1,065 = 532.5 plf (our own arithmetic).
    """
    return 0.50 * v_n


@equation(
    "sdpws-2021/4.1.4.2-LRFD",
    title="Factored unit shear resistance, wind",
    clause="4.1.4.2",
    source=SOURCE,
)
def lrfd_wind(v_n: NominalShear) -> Factored:
    """The unit shear to hold against strength-level wind forces: 0.80 times nominal.

    Plf. Source: SDPWS 2021, 4.1.4.2, as the library that ``lrfd_seismic`` names holds it (seen). 15/32 in. panels with
    8d nails at 4 in.: 0.80 x 1,065 = 852 plf (our own arithmetic).
    """
    return 0.80 * v_n


gravity_factor = earlier.gravity_factor.restated(
    "sdpws-2021/4.3A-note-3",
    clause="Table 4.3A, note 3",
    source=SOURCE,
    module=__name__,
    why="quoted in B-shearwall-code-audit.md of github.com/rohreng/anderson-rohr-calcs, S-6, with 0.92 for 0.42.",
    how="seen",
)

with_15_32_value = earlier.with_15_32_value.restated(
    "sdpws-2021/4.3A-note-2",
    clause="Table 4.3A, note 2",
    source=SOURCE,
    module=__name__,
    why="that this edition has it unchanged is recalled.",
)


@procedure(
    "sdpws-2021/4.3.5",
    title="Unit shear of a panel-sheathed segment",
    clause="4.1.4, 4.3.3, 4.3.5 and Table 4.3A",
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
    held_inside: bool = False,
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
        blocking: ``"blocked"``, or the nailing of an unblocked panel: ``"6/6"`` or ``"6/12"`` (Table 4.3.5.3).
        studs_close: True when studs stand 16 in. apart or less or panels run across them (note 2).
        stud_spacing: in., read only for unblocked panels.
        held_inside: True when hold-downs stand on the inside face of the end posts (note 10, 10d nails alone).
        over_gypsum: True when the panels go over gypsum board: ``panel`` is then a row of Table 4.3B.

    Raises:
        OutsideLimits: unknown panel, spacing between the columns, proportions beyond Table 4.3.3.
    """
    further = (
        table_4_3a_note_10().read(_NOTE_10) if held_inside and not over_gypsum and panel.endswith(", 10d") else None
    )
    return panel_shear(
        RULES, panel, edge_spacing, h, b_s, G, load, sharing, blocking, studs_close, stud_spacing, over_gypsum, further
    )


@procedure(
    "sdpws-2021/4.3D-lumber",
    title="Unit shear of a segment sheathed with boards",
    clause="4.1.4, 4.3.3 and Table 4.3D",
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
        OutsideLimits: unknown material, or proportions beyond Table 4.3.3.
    """
    return finish_shear(RULES, table_4_3d(), material, proportions_of(material), h, b_s, load)


@procedure(
    "sdpws-2021/4.3C-plaster",
    title="Unit shear of a segment with plaster or gypsum",
    clause="4.1.4, 4.3.3 and Table 4.3C",
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
        OutsideLimits: unknown material (plaster on wood lath has no row), or proportions beyond Table 4.3.3.
    """
    return finish_shear(RULES, table_4_3c(), material, proportions_of(material), h, b_s, load)


_NOTE_10 = "10d nails, hold-downs on the inside face of the end posts"


@procedure(
    "sdpws-2021/4.3A-pressed",
    title="Unit shear of a segment with particleboard or structural fibreboard",
    clause="4.1.4, 4.3.3 and Table 4.3A",
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
        OutsideLimits: unknown board, spacing between the columns, proportions beyond Table 4.3.3.
    """
    return pressed_shear(RULES, material, edge_spacing, h, b_s, G, load)


def _panels(load: str) -> Table:
    """One column for both loads."""
    return table_4_3a()


def _pressed(load: str) -> Table:
    """One column for both loads."""
    return table_4_3a_pressed()


def _over_gypsum(load: str) -> Table:
    """One column for both loads."""
    return table_4_3b()


RULES = WallRules(
    source=SOURCE,
    unit_shears="4.3.5",
    no_blocking="4.3.5.3",
    panels=_panels,
    over_gypsum=_over_gypsum,
    pressed=_pressed,
    thicker=THICKER,
    columns=dict.fromkeys(("seismic", "wind"), ("v_n", "v_n")),
    unblocked=table_4_3_5_3,
    gravity_factor=gravity_factor,
    with_15_32_value=with_15_32_value,
    require_aspect=require_aspect,
    by_stiffness=aspect_factor,
    by_strength=strength_sharing_factor,
    slender_fibreboard=fibreboard_aspect_factor,
    alike=same_material,
    unlike=unlike_materials,
    stiffer=added_stiffness,
    design={"seismic": (asd_seismic, lrfd_seismic), "wind": (asd_wind, lrfd_wind)},
)
