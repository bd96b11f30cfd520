"""The tables of old materials, each read once from its data file."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = [
    "table_brick",
    "table_concrete_by_age",
    "table_iebc_a1_existing",
    "table_unit_weights",
    "table_wood_gravity",
]


def _load(name: str) -> Table:
    return Table.load("groundsill.standards.old_materials", f"tables/{name}.toml")


def table_concrete_by_age() -> Table:
    """Compressive strength of untested foundation concrete, psi, by age: columns low, best, high."""
    return _load("concrete_by_age")


def table_unit_weights() -> Table:
    """Unit weight of foundation materials, pcf: columns low, best, high."""
    return _load("unit_weights")


def table_wood_gravity() -> Table:
    """Specific gravity of old framing and sills: columns low, best, high."""
    return _load("wood_gravity")


def table_iebc_a1_existing() -> Table:
    """Strength of existing floors, roofs and plaster crosswalls, plf, strength level."""
    return _load("iebc_a1_existing")


def table_brick() -> Table:
    """Lower-bound strengths of untested brick masonry, psi: columns compression, shear."""
    return _load("brick")
