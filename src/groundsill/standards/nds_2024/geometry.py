"""12.5.1: end and edge distances, spacings and the geometry factor, as in NDS 2018."""

from __future__ import annotations

from groundsill.standards.nds_2018 import geometry as earlier
from groundsill.standards.nds_2024.restating import AGREES, again, table
from groundsill.working.table import Table

__all__ = [
    "distance_factor",
    "edge_distance_met",
    "end_distance_factor",
    "geometry_factor",
    "row_spacing_perpendicular",
    "spacing_factor",
    "table_12_5_1a",
    "table_12_5_1b",
    "table_12_5_1c",
]


def table_12_5_1a() -> Table:
    """End distance in diameters, full and least (Table 12.5.1A)."""
    return table(earlier.table_12_5_1a(), AGREES)


def table_12_5_1b() -> Table:
    """Spacing in a row in diameters, full and least (Table 12.5.1B)."""
    return table(earlier.table_12_5_1b(), AGREES)


def table_12_5_1c() -> Table:
    """Least edge distance in diameters (Table 12.5.1C)."""
    return table(earlier.table_12_5_1c(), AGREES)


distance_factor = again(earlier.distance_factor, __name__, AGREES)
row_spacing_perpendicular = again(earlier.row_spacing_perpendicular, __name__)
end_distance_factor = again(earlier.end_distance_factor, __name__, AGREES)
spacing_factor = again(earlier.spacing_factor, __name__, AGREES)
edge_distance_met = again(earlier.edge_distance_met, __name__, AGREES)
geometry_factor = again(earlier.geometry_factor, __name__, AGREES)
