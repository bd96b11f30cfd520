"""Floors of boards and of panels as diaphragms (SDPWS 2021, 4.2): they hand the force to the braced lines."""

from __future__ import annotations

from groundsill.standards.sdpws_2015 import diaphragms as earlier
from groundsill.standards.sdpws_2015.diaphragms import SpanLength, SpanWidth
from groundsill.standards.sdpws_2015.symbols import SpecificGravity
from groundsill.standards.sdpws_2021 import SOURCE
from groundsill.standards.sdpws_2021.tables import table_4_2_2, table_4_2a, table_4_2b, table_4_2c, table_4_2d
from groundsill.standards.sdpws_2021.unit_shear import RULES
from groundsill.standards.sheathing import SegmentShear, floor_shear, one_of, panel_floor_shear
from groundsill.working.equation import procedure
from groundsill.working.table import Table

__all__ = [
    "diaphragm_deflection", "diaphragm_ratio", "gravity_factor", "lumber_diaphragm_shear", "panel_diaphragm_shear",
]  # fmt: skip

_RECALLED = "that this edition has it unchanged is recalled."

diaphragm_ratio = earlier.diaphragm_ratio.restated(
    "sdpws-2021/4.2.2-ratio", clause="4.2.2", source=SOURCE, module=__name__, why=_RECALLED
)

diaphragm_deflection = earlier.diaphragm_deflection.restated(
    "sdpws-2021/4.2-1", clause="Eq. 4.2-1", source=SOURCE, module=__name__, why=_RECALLED
)

gravity_factor = earlier.gravity_factor.restated(
    "sdpws-2021/4.2A-note-2", clause="Table 4.2A, note 2", source=SOURCE, module=__name__, why=_RECALLED
)


@procedure(
    "sdpws-2021/4.2D-lumber",
    title="Unit shear of a board floor or roof",
    clause="4.1.4, 4.2.2 and Table 4.2D",
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
        OutsideLimits: unknown sheathing, or longer over wide than Table 4.2.2 allows.
    """
    return floor_shear(RULES, (table_4_2d(), table_4_2_2()), diaphragm_ratio, sheathing, L, W, load)


@procedure(
    "sdpws-2021/4.2A-panels",
    title="Unit shear of a floor or roof of panels",
    clause="4.1.4, 4.2.2 and Tables 4.2A to 4.2C",
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
        OutsideLimits: what the tables have no cell for, or longer over wide than Table 4.2.2 allows.
    """
    one_of(SOURCE.cite("4.1.4, 4.2.2 and Tables 4.2A to 4.2C"), "blocking", blocking, ("blocked", "unblocked"))
    row = f"{panel}, {framing}" if rows == 1 else f"{panel}, {framing}, {rows} rows"
    tables = _unblocked if blocking == "unblocked" else _blocked if rows == 1 else _high_load
    kind = (table_4_2_2(), diaphragm_ratio, f"wood structural panel, {blocking}")
    return panel_floor_shear(RULES, tables, (row, nails), gravity_factor(G), kind, L, W, load)


def _blocked(load: str) -> Table:
    """One column for both loads."""
    return table_4_2a()


def _high_load(load: str) -> Table:
    """One column for both loads."""
    return table_4_2b()


def _unblocked(load: str) -> Table:
    """One column for both loads."""
    return table_4_2c()
