"""The printed tables of ACI 318-19 used here, each read once from its data file."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = [
    "table_17_3_1",
    "table_17_5_3",
    "table_17_6_2_2",
    "table_17_6_2_5",
    "table_17_7_2_5",
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
