"""The printed factors of ACI 214.4R-10, each table read once from its data file."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = ["table_9_1_alpha", "table_9_1_diameter", "table_9_1_moisture", "table_9_1_other", "table_9_2", "table_9_3"]


def _load(name: str) -> Table:
    return Table.load("groundsill.standards.aci214_4r_10", f"tables/{name}.toml")


def table_9_1_moisture() -> Table:
    """Correction by how the core was kept: the coefficient for its length, and the factor for its moisture."""
    return _load("9_1_moisture")


def table_9_1_alpha() -> Table:
    """How the correction for length fades with strength, 1/psi."""
    return _load("9_1_alpha")


def table_9_1_diameter() -> Table:
    """Correction for the diameter of the core, 2 to 6 in., and its scatter."""
    return _load("9_1_diameter")


def table_9_1_other() -> Table:
    """Correction for damage by drilling, and the scatter of the corrections for length, moisture and damage."""
    return _load("9_1_other")


def table_9_2() -> Table:
    """Tolerance factor K by confidence and number of cores: with it a tenth of the concrete may be weaker."""
    return _load("9_2")


def table_9_3() -> Table:
    """Factor Z for the scatter of the corrections, by confidence."""
    return _load("9_3")
