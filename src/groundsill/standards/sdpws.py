"""What a braced line asks of the panel standard, by edition: the same questions, each edition's own answers.

In: the edition that the basis goes by. Out: its rules, ready to call with the same arguments whichever edition it is,
and where each stands in it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import Final, Protocol

from groundsill.standards import sdpws_2015, sdpws_2021
from groundsill.standards.sdpws_2015 import construction as construction_15
from groundsill.standards.sdpws_2015 import deflection as deflection_15
from groundsill.standards.sdpws_2015 import diaphragms as diaphragms_15
from groundsill.standards.sdpws_2015 import perforated as perforated_15
from groundsill.standards.sdpws_2015 import tables as tables_15
from groundsill.standards.sdpws_2015 import unit_shear as shear_15
from groundsill.standards.sdpws_2021 import construction as construction_21
from groundsill.standards.sdpws_2021 import deflection as deflection_21
from groundsill.standards.sdpws_2021 import diaphragms as diaphragms_21
from groundsill.standards.sdpws_2021 import perforated as perforated_21
from groundsill.standards.sdpws_2021 import tables as tables_21
from groundsill.standards.sdpws_2021 import unit_shear as shear_21
from groundsill.standards.sheathing import Face, SegmentShear, both_faces
from groundsill.standards.wall_construction import Framing, PanelDetails, Washer
from groundsill.working.errors import UnknownFormula
from groundsill.working.table import Table

__all__ = ["EDITIONS", "Clauses", "PanelShear", "PerforatedRules", "Sdpws", "rules_of"]


class PanelShear(Protocol):
    """Unit shear of a segment with panels on one side against earthquake or wind, as every edition here answers it.

    ``stud_spacing`` in inches, None where nobody measured it; ``held_inside`` says that hold-downs stand on the inside
    face of the end posts, ``over_gypsum`` that the panels go over gypsum board.
    """

    def __call__(
        self,
        panel: str,
        edge_spacing: float,
        h: float,
        b_s: float,
        G: float,
        *,
        sharing: str = "stiffness",
        stud_spacing: float | None = None,
        held_inside: bool = False,
        load: str = "seismic",
        over_gypsum: bool = False,
    ) -> SegmentShear: ...


@dataclass(frozen=True, slots=True)
class Clauses:
    """Where an edition treats what a braced line is checked for, as cited on paper.

    ``walls`` and ``floors`` are the whole sections; the others name one rule each. ``held_inside`` is empty where an
    edition does not ask on which side of the end posts hold-downs stand.
    """

    walls: str
    panels: str
    over_gypsum: str
    plaster: str
    boards: str
    panel_edges: str
    framing: str
    washers: str
    floors: str
    board_floors: str
    panel_floors: str
    floor_proportions: str
    overhangs: str
    deflection: str
    held_inside: str


@dataclass(frozen=True, slots=True)
class PerforatedRules:
    """What an edition says of perforated walls, and in which clauses.

    ``factor`` takes the area of the openings, height and length of the wall, the length of all its full-height parts
    and that of what counts of them; the other rules are those of the edition under their own names.
    """

    limits: Callable[[float, float, str], float]
    opening_area: Callable[[float, float, float], float]
    counted_length: Callable[[float, float], float]
    factor: Callable[[float, float, float, float, float], float]
    end_tension: Callable[[float, float, float, float], float]
    plate_uplift: Callable[[float, float, float], float]
    clause: str
    ends_clause: str
    uplift_clause: str


@dataclass(frozen=True, slots=True)
class Sdpws:
    """The rules of one edition: its procedures by their own names, its tables by what they are of.

    ``both_faces`` takes each face as its unit shear and stiffness, and whether they are of one material. ``nominal`` is
    the table of panels that holds against earthquake, ``over_gypsum`` that of panels over gypsum board,
    ``panel_floors`` that of blocked floors of panels; ``stiffness`` gives the table of shear stiffness of what the
    panels are made of, ``"plywood"`` or ``"OSB"``, on studs or over gypsum. ``pressed`` are particleboard and
    structural fibreboard.
    """

    document: str
    short: str
    clauses: Clauses
    panel_unit_shear: PanelShear
    lumber_unit_shear: Callable[[str, float, float, str], SegmentShear]
    plaster_unit_shear: Callable[[str, float, float, str], SegmentShear]
    pressed_unit_shear: Callable[[str, float, float, float, float, str], SegmentShear]
    both_faces: Callable[[Face, Face, bool], Face]
    lumber_diaphragm_shear: Callable[[str, float, float, str], SegmentShear]
    panel_diaphragm_shear: Callable[..., SegmentShear]
    panel_floors: Callable[[], Table]
    framing_at_panel_edges: Callable[[str, float, float, float, str], Framing]
    panels_on_studs: Callable[[float, float, float], PanelDetails]
    nails_in_framing: Callable[[str, float, bool], float]
    washer_on_sill_bolt: Callable[[float, float, bool | None], Washer]
    wall_deflection: Callable[[float, float, float, float, float, float, float], float]
    perforated: PerforatedRules
    nominal: Callable[[], Table]
    over_gypsum: Callable[[], Table]
    stiffness: Callable[[str, bool], Table]
    boards: Callable[[], Table]
    plaster: Callable[[], Table]
    pressed: Callable[[], Table]
    pressed_stiffness: Callable[[], Table]
    proportions: Callable[[], Table]
    overhangs: Callable[[], Table]
    washers: Callable[[], Table]
    toenails: Callable[[], Table]


def _close(note_2: Table, panel: str, stud_spacing: float | None) -> bool:
    """Whether studs of a known spacing let a thin panel take the value of a thicker one."""
    if panel not in shear_15.THICKER or stud_spacing is None:
        return False
    return float(stud_spacing) <= float(note_2.read("3/8 and 7/16 in., 8d"))


def _panels_15(
    panel: str,
    edge_spacing: float,
    h: float,
    b_s: float,
    G: float,
    *,
    sharing: str = "stiffness",
    stud_spacing: float | None = None,
    held_inside: bool = False,
    load: str = "seismic",
    over_gypsum: bool = False,
) -> SegmentShear:
    """The edition of 2015 does not ask where hold-downs stand."""
    close = not over_gypsum and _close(tables_15.table_4_3a_note_2(), panel, stud_spacing)
    return shear_15.panel_unit_shear(
        panel, edge_spacing, h, b_s, G, load, sharing=sharing, studs_close=close, over_gypsum=over_gypsum
    )


def _stiffness_15(made_of: str, over_gypsum: bool = False) -> Table:
    if over_gypsum:
        return tables_15.table_4_3b_ga_osb() if made_of == "OSB" else tables_15.table_4_3b_ga_plywood()
    return tables_15.table_4_3a_ga_osb() if made_of == "OSB" else tables_15.table_4_3a_ga_plywood()


def _panels_21(
    panel: str,
    edge_spacing: float,
    h: float,
    b_s: float,
    G: float,
    *,
    sharing: str = "stiffness",
    stud_spacing: float | None = None,
    held_inside: bool = False,
    load: str = "seismic",
    over_gypsum: bool = False,
) -> SegmentShear:
    close = not over_gypsum and _close(tables_21.table_4_3a_note_2(), panel, stud_spacing)
    return shear_21.panel_unit_shear(
        panel, edge_spacing, h, b_s, G, load, sharing=sharing, studs_close=close, over_gypsum=over_gypsum,
        held_inside=held_inside,
    )  # fmt: skip


def _stiffness_21(made_of: str, over_gypsum: bool = False) -> Table:
    if over_gypsum:
        return tables_21.table_4_3b_ga_osb() if made_of == "OSB" else tables_21.table_4_3b_ga_plywood()
    return tables_21.table_4_3a_ga_osb() if made_of == "OSB" else tables_21.table_4_3a_ga_plywood()


def _factor_15(A_o: float, h: float, L_tot: float, full: float, counted: float) -> float:
    """The edition of 2015 takes the lengths that count."""
    return perforated_15.opening_factor_of(A_o, h, L_tot, counted)


def _factor_21(A_o: float, h: float, L_tot: float, full: float, counted: float) -> float:
    """That of 2021 all full-height sheathing."""
    return perforated_21.opening_factor_of(A_o, h, L_tot, full)


def _clauses(short: str, floor_proportions: str, held_inside: str = "") -> Clauses:
    return Clauses(
        walls=f"{short} 4.3",
        panels=f"{short} Table 4.3A",
        over_gypsum=f"{short} Table 4.3B",
        plaster=f"{short} Table 4.3C",
        boards=f"{short} Table 4.3D",
        panel_edges=f"{short} 4.3.6.1",
        framing=f"{short} 4.3.7.1",
        washers=f"{short} 4.3.6.4.3",
        floors=f"{short} 4.2",
        board_floors=f"{short} 4.2.7",
        panel_floors=f"{short} Tables 4.2A, 4.2C",
        floor_proportions=f"{short} {floor_proportions}",
        overhangs=f"{short} 4.2.5.2",
        deflection=f"{short} 4.3.2",
        held_inside=held_inside and f"{short} {held_inside}",
    )


_RULES: Final = (
    Sdpws(
        sdpws_2015.SOURCE.id,
        sdpws_2015.SOURCE.short,
        _clauses(sdpws_2015.SOURCE.short, "4.2.4"),
        _panels_15,
        shear_15.lumber_unit_shear,
        shear_15.plaster_unit_shear,
        shear_15.pressed_unit_shear,
        partial(both_faces, shear_15.RULES),
        diaphragms_15.lumber_diaphragm_shear,
        diaphragms_15.panel_diaphragm_shear,
        tables_15.table_4_2a_seismic,
        construction_15.framing_at_panel_edges,
        construction_15.panels_on_studs,
        construction_15.nails_in_framing,
        construction_15.washer_on_sill_bolt,
        deflection_15.wall_deflection,
        PerforatedRules(
            perforated_15.perforated_limits,
            perforated_15.opening_area,
            perforated_15.counted_length,
            _factor_15,
            perforated_15.end_tension,
            perforated_15.sill_uplift,
            f"{sdpws_2015.SOURCE.short} 4.3.5.3",
            f"{sdpws_2015.SOURCE.short} 4.3.6.1.2",
            f"{sdpws_2015.SOURCE.short} 4.3.6.4.2.1",
        ),
        tables_15.table_4_3a_seismic,
        tables_15.table_4_3b_seismic,
        _stiffness_15,
        tables_15.table_4_3d,
        tables_15.table_4_3c,
        tables_15.table_4_3a_pressed_seismic,
        tables_15.table_4_3a_pressed_ga,
        tables_15.table_4_3_4,
        tables_15.table_4_2_5_2,
        tables_15.table_4_3_6_4_3,
        tables_15.table_4_1_7,
    ),
    Sdpws(
        sdpws_2021.SOURCE.id,
        sdpws_2021.SOURCE.short,
        _clauses(sdpws_2021.SOURCE.short, "4.2.2", "Table 4.3A note 10"),
        _panels_21,
        shear_21.lumber_unit_shear,
        shear_21.plaster_unit_shear,
        shear_21.pressed_unit_shear,
        partial(both_faces, shear_21.RULES),
        diaphragms_21.lumber_diaphragm_shear,
        diaphragms_21.panel_diaphragm_shear,
        tables_21.table_4_2a,
        construction_21.framing_at_panel_edges,
        construction_21.panels_on_studs,
        construction_21.nails_in_framing,
        construction_21.washer_on_sill_bolt,
        deflection_21.wall_deflection,
        PerforatedRules(
            perforated_21.perforated_limits,
            perforated_21.opening_area,
            perforated_21.counted_length,
            _factor_21,
            perforated_21.end_tension,
            perforated_21.sill_uplift,
            f"{sdpws_2021.SOURCE.short} 4.3.2.3",
            f"{sdpws_2021.SOURCE.short} 4.3.6.1.3",
            f"{sdpws_2021.SOURCE.short} 4.3.6.4.2.1",
        ),
        tables_21.table_4_3a,
        tables_21.table_4_3b,
        _stiffness_21,
        tables_21.table_4_3d,
        tables_21.table_4_3c,
        tables_21.table_4_3a_pressed,
        tables_21.table_4_3a_pressed_ga,
        tables_21.table_4_3_3,
        tables_21.table_4_2_5_2,
        tables_21.table_4_3_6_4_3,
        tables_21.table_4_1_7,
    ),
)

EDITIONS: Final = tuple(rules.document for rules in _RULES)


def rules_of(document: str) -> Sdpws:
    """The rules of an edition (``sdpws-2021``).

    Raises:
        UnknownFormula: for an edition by which no line is checked; the message names those there are.
    """
    for rules in _RULES:
        if rules.document == document:
            return rules
    raise UnknownFormula(f"no braced line is checked by {document}; it is one of {', '.join(EDITIONS)}")
