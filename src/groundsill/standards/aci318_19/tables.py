"""The printed tables of ACI 318-19 chapter 17 used here, each read once from its data file."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = ["table_17_5_3", "table_17_6_2_2", "table_17_6_2_5", "table_17_7_2_5"]


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
