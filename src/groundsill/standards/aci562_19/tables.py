"""The printed coefficient of ACI 562-19 for samples of cores, read once from its data file."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = ["table_6_4_3"]


def table_6_4_3() -> Table:
    """Coefficient of variation modification factor k_c by the number of cores, 2 to 25 and more."""
    return Table.load("groundsill.standards.aci562_19", "tables/6_4_3.toml")
