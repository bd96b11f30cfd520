"""The printed tables of ACI 318-19 used here, each read once from its data file."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = [
    "table_17_3_1",
    "table_17_5_3",
    "table_17_6_2_2",
    "table_17_6_2_5",
    "table_17_6_5_2_5",
    "table_17_6_5_2_5_notes",
    "table_17_6_5_2_5_use",
    "table_17_7_2_5",
    "table_17_9_2a",
    "table_17_9_2b",
    "table_17_9_5",
    "table_17_10_5_3",
    "table_21_2_1",
    "table_scatter",
]


def _load(name: str) -> Table:
    return Table.load("groundsill.standards.aci318_19", f"tables/{name}.toml")


def table_17_5_3() -> Table:
    """Strength reduction factor phi by kind of failure, columns shear and tension."""
    return _load("17_5_3")


def table_17_6_2_2() -> Table:
    """Coefficient k_c of basic tension breakout: cast in, post-installed."""
    return _load("17_6_2_2")


def table_17_6_2_5() -> Table:
    """Factor psi_c,N of tension breakout in cracked and uncracked concrete."""
    return _load("17_6_2_5")


def table_17_7_2_5() -> Table:
    """Factor psi_c,V of shear breakout, by cracking and reinforcement at the edge."""
    return _load("17_7_2_5")


def table_17_3_1() -> Table:
    """Strengths of concrete the chapter covers, psi: columns least and most, by how the anchor was installed."""
    return _load("17_3_1")


def table_21_2_1() -> Table:
    """Strength reduction factor of plain concrete."""
    return _load("21_2_1")


def table_scatter() -> Table:
    """Coefficient of variation of breakout tests: columns low, best, high (common practice)."""
    return _load("scatter")


def table_17_6_5_2_5() -> Table:
    """Minimum bond stress of adhesive anchors, psi, by where they stand: columns tau_cr, tau_uncr."""
    return _load("17_6_5_2_5")


def table_17_6_5_2_5_notes() -> Table:
    """What the minimum bond stresses are multiplied by under a lasting pull and under earthquake."""
    return _load("17_6_5_2_5_notes")


def table_17_6_5_2_5_use() -> Table:
    """Least strength, age and warmth of the concrete for the minimum bond stresses."""
    return _load("17_6_5_2_5_use")


def table_17_9_2a() -> Table:
    """Least spacing and edge distance of anchors in diameters, by kind, so that the concrete does not split."""
    return _load("17_9_2a")


def table_17_9_2b() -> Table:
    """Least edge distance of post-installed anchors in diameters, where their report gives none."""
    return _load("17_9_2b")


def table_17_9_5() -> Table:
    """Critical edge distance of post-installed anchors over their embedment, by kind."""
    return _load("17_9_5")


def table_17_10_5_3() -> Table:
    """Figures of the ductile anchor: steel raised by, stretch length in diameters, ratio of stresses."""
    return _load("17_10_5_3")
