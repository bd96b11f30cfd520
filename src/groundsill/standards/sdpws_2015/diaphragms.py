"""Floors of boards and of panels as diaphragms (SDPWS 2015, 4.2): they hand the force to the braced lines."""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.sdpws_2015 import SOURCE, unit_shear
from groundsill.standards.sdpws_2015.symbols import ShearStiffness, SpecificGravity, WallShear
from groundsill.standards.sdpws_2015.tables import (
    table_4_2_4,
    table_4_2a_seismic,
    table_4_2a_wind,
    table_4_2b_seismic,
    table_4_2b_wind,
    table_4_2c_seismic,
    table_4_2c_wind,
    table_4_2d,
)
from groundsill.standards.sdpws_2015.unit_shear import RULES
from groundsill.standards.sheathing import SegmentShear, floor_shear, one_of, panel_floor_shear
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.table import Table

__all__ = [
    "diaphragm_deflection", "diaphragm_ratio", "gravity_factor", "lumber_diaphragm_shear", "panel_diaphragm_shear",
]  # fmt: skip

SpanLength = Annotated[float, Q("ft", "L", "length of the diaphragm, line to line", above=0.0)]
SpanWidth = Annotated[float, Q("ft", "W", "width of the diaphragm in the direction of force", above=0.0)]


@equation(
    "sdpws-2015/4.2.4-ratio",
    title="Length over width of the diaphragm",
    clause="4.2.4",
    source=SOURCE,
)
def diaphragm_ratio(L: SpanLength, W: SpanWidth) -> Annotated[float, Q("1", "L/W", "length over width")]:
    """The proportions that Table 4.2.4 limits, ft over ft.

    Source: SDPWS 2015, 4.2.4, the clause by public notes on the document (github.com/wcfrobert/wcfrobert.github.io,
    _posts/2022-05-06-seismic.markdown, 8.2; the table is a picture there and was not read). 30 by 20 ft: 1.5 (our own
    arithmetic).
    """
    return L / W


gravity_factor = unit_shear.gravity_factor.restated(
    "sdpws-2015/4.2A-note-2",
    clause="Table 4.2A, note 2",
    source=SOURCE,
    module=__name__,
    why="that the notes of Tables 4.2A to 4.2C have it too is recalled.",
)


@procedure(
    "sdpws-2015/4.2D-lumber",
    title="Unit shear of a board floor or roof",
    clause="4.2.3, 4.2.4 and Table 4.2D",
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
        OutsideLimits: unknown sheathing, or longer over wide than Table 4.2.4 allows.
    """
    return floor_shear(RULES, (table_4_2d(), table_4_2_4()), diaphragm_ratio, sheathing, L, W, load)


@equation(
    "sdpws-2015/4.2-1",
    title="Deflection of a diaphragm",
    clause="Eq. 4.2-1",
    source=SOURCE,
    witness="0.0973 in. (deck of a canopy in notes of github.com/winedarksea/TypeHaus)",
    constants={5: "in/ft", 1000: "lb/kip"},
)
def diaphragm_deflection(
    v: WallShear,
    L: SpanLength,
    E: Annotated[float, Q("psi", "E", "modulus of elasticity of the chords", above=0.0)],
    A: Annotated[float, Q("in^2", "A", "cross-section of one chord", above=0.0)],
    W: SpanWidth,
    G_a: ShearStiffness,
    Sum_x_Delta: Annotated[
        float,
        Q("ft-in", "Sum_x_Delta_c", "chord splice slips times distance to the nearer support", at_least=0.0),
    ],
) -> Annotated[float, Q("in", "δ_dia", "deflection at midspan")]:
    """The midspan movement: 5 v L^3/(8 E A W) + 0.25 v L/(1000 G_a) + Sum(x Delta_c)/(2 W).

    ``v`` plf at strength level, ``L`` and ``W`` ft, ``E`` psi, ``A`` in2, ``G_a`` kip/in; the 5 holds feet to inches.
    Source: SDPWS 2015, Eq. 4.2-1, as worked in a public note (7d of a canopy's lateral note,
    github.com/winedarksea/TypeHaus); its first and last terms also in IBC Eq. 23-1 at
    https://up.codes/s/diaphragm-deflection . 100 plf, 30 ft, 1.4e6, 10.5, 20 ft, 1.5, 0: 0.506 in. (our arithmetic).
    """
    return 5 * v * L**3 / (8 * E * A * W) + 0.25 * v * L / (1000 * G_a) + Sum_x_Delta / (2 * W)


@procedure(
    "sdpws-2015/4.2A-panels",
    title="Unit shear of a floor or roof of panels",
    clause="4.2.7.1 and Tables 4.2A to 4.2C",
    source=SOURCE,
    alias="sdpws.panel-diaphragm",
)
def panel_diaphragm_shear(
    panel: str,
    nails: str,
    L: SpanLength,
    W: SpanWidth,
    G: SpecificGravity = 0.50,
    load: str = "seismic",
    framing: str = "2x",
    blocking: str = "blocked",
    rows: int = 1,
) -> SegmentShear:
    """Nominal and design unit shear of a diaphragm of wood structural panels.

    Args:
        panel: grade, thickness and nail as the tables name them (``"15/32, 8d"``, ``"Structural I 3/8, 8d"``).
        nails: blocked: nails at boundaries and at other edges, in. (``"6/6"``, ``"4/6"``, ``"2.5/4"``, ``"2/3"``);
            unblocked, with nails at 6 in.: the layout of the panels, ``"case 1"`` or ``"cases 2 to 6"``.
        L: length between the braced lines, ft.
        W: width in the direction of the force, ft.
        G: specific gravity of the framing.
        load: ``"seismic"`` or ``"wind"``.
        framing: nominal width of the framing nailed at boundaries and panel edges, ``"2x"``, ``"3x"`` or ``"4x"``.
        blocking: ``"blocked"`` or ``"unblocked"``.
        rows: rows of nails at boundaries and panel edges; more than one by Table 4.2B.

    Raises:
        OutsideLimits: what the tables have no cell for, or longer over wide than Table 4.2.4 allows.
    """
    one_of(SOURCE.cite("4.2.7.1 and Tables 4.2A to 4.2C"), "blocking", blocking, ("blocked", "unblocked"))
    row = f"{panel}, {framing}" if rows == 1 else f"{panel}, {framing}, {rows} rows"
    tables = _unblocked if blocking == "unblocked" else _blocked if rows == 1 else _high_load
    kind = (table_4_2_4(), diaphragm_ratio, f"wood structural panel, {blocking}")
    return panel_floor_shear(RULES, tables, (row, nails), gravity_factor(G), kind, L, W, load)


def _blocked(load: str) -> Table:
    return table_4_2a_seismic() if load == "seismic" else table_4_2a_wind()


def _high_load(load: str) -> Table:
    return table_4_2b_seismic() if load == "seismic" else table_4_2b_wind()


def _unblocked(load: str) -> Table:
    return table_4_2c_seismic() if load == "seismic" else table_4_2c_wind()
