"""Unit weights of old materials that stand in no table of a standard: best values, and the range in use."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = ["table_bolts", "table_other_densities", "table_other_weight_ranges", "table_other_weights"]


def table_other_weights() -> Table:
    """Weight over area, psf, best value; one column."""
    return Table.load(__package__, "tables/weights.toml")


def table_other_weight_ranges() -> Table:
    """Weight over area, psf, least and greatest in use; columns ``low`` and ``high``."""
    return Table.load(__package__, "tables/weight_ranges.toml")


def table_bolts() -> Table:
    """Coarse threads and mild steel of common bolts, by diameter in words (``"5/8"``)."""
    return Table.load(__package__, "tables/bolts.toml")


def table_other_densities() -> Table:
    """Weight by volume, pcf, best value; one column."""
    return Table.load(__package__, "tables/densities.toml")
