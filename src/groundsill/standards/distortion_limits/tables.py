"""The limits: angular distortion by author, deflection ratio of masonry by which way it bends, tilt by what follows."""

from __future__ import annotations

from groundsill.working.table import Table

__all__ = ["table_angular", "table_deflection", "table_tilt", "table_wood"]


def table_angular() -> Table:
    """Angular distortion at which walls crack and at which the frame is hurt, as parts of one, by author."""
    return Table.load(__package__, "tables/angular.toml")


def table_deflection() -> Table:
    """Deflection ratio at which bare bearing masonry cracks, by length over height."""
    return Table.load(__package__, "tables/deflection.toml")


def table_tilt() -> Table:
    """Tilt of a low house: noticed, looked into, mended."""
    return Table.load(__package__, "tables/tilt.toml")


def table_wood() -> Table:
    """Deflection ratio of the floor of a wood house that is in use as a limit."""
    return Table.load(__package__, "tables/wood.toml")
