"""The printed tables of SDPWS 2015 used for old houses, each read once from its data file."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = [
    "table_4_1_7",
    "table_4_2_4",
    "table_4_2_5_2",
    "table_4_2a_ga_osb",
    "table_4_2a_ga_plywood",
    "table_4_2a_seismic",
    "table_4_2a_wind",
    "table_4_2b_ga_osb",
    "table_4_2b_ga_plywood",
    "table_4_2b_seismic",
    "table_4_2b_wind",
    "table_4_2c_ga_osb",
    "table_4_2c_ga_plywood",
    "table_4_2c_seismic",
    "table_4_2c_wind",
    "table_4_2d",
    "table_4_3_3_2",
    "table_4_3_4",
    "table_4_3_5_3",
    "table_4_3_6_4_3",
    "table_4_3_7_1",
    "table_4_3_7_1_panels",
    "table_4_3a_ga_osb",
    "table_4_3a_ga_plywood",
    "table_4_3a_note_2",
    "table_4_3a_penetration",
    "table_4_3a_pressed_ga",
    "table_4_3a_pressed_seismic",
    "table_4_3a_pressed_wind",
    "table_4_3a_seismic",
    "table_4_3a_wind",
    "table_4_3b_ga_osb",
    "table_4_3b_ga_plywood",
    "table_4_3b_penetration",
    "table_4_3b_seismic",
    "table_4_3b_wind",
    "table_4_3c",
    "table_4_3d",
]


def _load(name: str) -> Table:
    return Table.load("groundsill.standards.sdpws_2015", f"tables/{name}.toml")


def table_4_2_5_2() -> Table:
    """Limits of floors that hang out beyond their outermost line, by sheathing.

    Length over width, longest length, and the length in ft up to which the clause does not ask.
    """
    return _load("4_2_5_2")


def table_4_3a_seismic() -> Table:
    """Nominal unit shear v_s of panels for earthquake, plf; rows ``"15/32, 8d"``, columns edge nail spacing in in."""
    return _load("4_3a_seismic")


def table_4_3a_wind() -> Table:
    """Nominal unit shear v_w of panels for wind, plf; rows and columns as for earthquake."""
    return _load("4_3a_wind")


def table_4_3a_ga_osb() -> Table:
    """Apparent shear stiffness G_a of OSB-sheathed walls, kip/in; rows and columns as for earthquake."""
    return _load("4_3a_ga_osb")


def table_4_3a_ga_plywood() -> Table:
    """Apparent shear stiffness G_a of plywood-sheathed walls, kip/in; rows and columns as for earthquake."""
    return _load("4_3a_ga_plywood")


def table_4_3a_note_2() -> Table:
    """Spacing of studs up to which thin panels take the value of 15/32 in. panels, in."""
    return _load("4_3a_note_2")


def table_4_3a_penetration() -> Table:
    """Least penetration of a nail (``"8d"``) into framing or blocking, in."""
    return _load("4_3a_penetration")


def table_4_3a_pressed_seismic() -> Table:
    """Nominal unit shear v_s of particleboard and structural fibreboard, plf; columns edge nail spacing in in."""
    return _load("4_3a_pressed_seismic")


def table_4_3a_pressed_wind() -> Table:
    """Nominal unit shear v_w of the same boards, plf."""
    return _load("4_3a_pressed_wind")


def table_4_3a_pressed_ga() -> Table:
    """Apparent shear stiffness G_a of walls with the same boards, kip/in."""
    return _load("4_3a_pressed_ga")


def table_4_3b_seismic() -> Table:
    """Nominal unit shear v_s of panels over gypsum for earthquake, plf; columns edge nail spacing in in."""
    return _load("4_3b_seismic")


def table_4_3b_wind() -> Table:
    """Nominal unit shear v_w of panels over gypsum for wind, plf."""
    return _load("4_3b_wind")


def table_4_3b_ga_osb() -> Table:
    """Apparent shear stiffness G_a of walls with OSB over gypsum, kip/in."""
    return _load("4_3b_ga_osb")


def table_4_3b_ga_plywood() -> Table:
    """Apparent shear stiffness G_a of walls with plywood over gypsum, kip/in."""
    return _load("4_3b_ga_plywood")


def table_4_3b_penetration() -> Table:
    """Least penetration of a nail (``"8d"``) through gypsum into framing or blocking, in."""
    return _load("4_3b_penetration")


def table_4_3c() -> Table:
    """Plaster and gypsum walls: columns seismic (plf), G_a (kip/in), wind (plf)."""
    return _load("4_3c")


def table_4_3d() -> Table:
    """Walls sheathed with boards: columns seismic (plf), G_a (kip/in), wind (plf)."""
    return _load("4_3d")


def table_4_3_4() -> Table:
    """Greatest h/b_s of a segment, by kind of sheathing."""
    return _load("4_3_4")


def table_4_3_3_2() -> Table:
    """Factor C_ub of unblocked panels, by nailing (``"6/12"``) and stud spacing in inches."""
    return _load("4_3_3_2")


def table_4_3_5_3() -> Table:
    """Greatest nominal unit shear (plf, by load) and height (ft) of a perforated wall."""
    return _load("4_3_5_3")


def table_4_2d() -> Table:
    """Board floors and roofs: columns seismic (plf), G_a (kip/in), wind (plf)."""
    return _load("4_2d")


def table_4_2_4() -> Table:
    """Greatest length over width of a diaphragm, by kind."""
    return _load("4_2_4")


def table_4_3_7_1() -> Table:
    """Bounds beyond which adjoining panel edges need 3x framing."""
    return _load("4_3_7_1")


def table_4_3_7_1_panels() -> Table:
    """Studs under panels, nails along studs and from panel edges, width of a panel, in."""
    return _load("4_3_7_1_panels")


def table_4_3_6_4_3() -> Table:
    """Size and place of plate washers, and the bounds of the cut-washer exception."""
    return _load("4_3_6_4_3")


def table_4_1_7() -> Table:
    """Most seismic unit shear through toenails in categories D to F, plf: columns ASD, LRFD."""
    return _load("4_1_7")


def table_4_2a_seismic() -> Table:
    """Nominal unit shear v_s, earthquake, plf, of blocked floors of panels, by their nails."""
    return _load("4_2a_seismic")


def table_4_2a_wind() -> Table:
    """Nominal unit shear v_w, wind, plf, of blocked floors of panels, by their nails."""
    return _load("4_2a_wind")


def table_4_2a_ga_osb() -> Table:
    """Apparent shear stiffness G_a, kip/in, of blocked floors of panels: OSB."""
    return _load("4_2a_ga_osb")


def table_4_2a_ga_plywood() -> Table:
    """Apparent shear stiffness G_a, kip/in, of blocked floors of panels: plywood."""
    return _load("4_2a_ga_plywood")


def table_4_2b_seismic() -> Table:
    """Nominal unit shear v_s, earthquake, plf, of blocked floors of panels with several rows of nails."""
    return _load("4_2b_seismic")


def table_4_2b_wind() -> Table:
    """Nominal unit shear v_w, wind, plf, of blocked floors of panels with several rows of nails."""
    return _load("4_2b_wind")


def table_4_2b_ga_osb() -> Table:
    """Apparent shear stiffness G_a, kip/in, of blocked floors of panels with several rows of nails: OSB."""
    return _load("4_2b_ga_osb")


def table_4_2b_ga_plywood() -> Table:
    """Apparent shear stiffness G_a, kip/in, of blocked floors of panels with several rows of nails: plywood."""
    return _load("4_2b_ga_plywood")


def table_4_2c_seismic() -> Table:
    """Nominal unit shear v_s, earthquake, plf, of unblocked floors of panels; columns by layout."""
    return _load("4_2c_seismic")


def table_4_2c_wind() -> Table:
    """Nominal unit shear v_w, wind, plf, of unblocked floors of panels; columns by layout."""
    return _load("4_2c_wind")


def table_4_2c_ga_osb() -> Table:
    """Apparent shear stiffness G_a, kip/in, of unblocked floors of panels: OSB."""
    return _load("4_2c_ga_osb")


def table_4_2c_ga_plywood() -> Table:
    """Apparent shear stiffness G_a, kip/in, of unblocked floors of panels: plywood."""
    return _load("4_2c_ga_plywood")
