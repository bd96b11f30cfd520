"""12.3.3 to 12.3.5 and Appendix I: what wood, steel and concrete bear under a dowel, as in NDS 2018."""

from __future__ import annotations

from groundsill.standards.nds_2018 import bearing as earlier
from groundsill.standards.nds_2024.restating import AGREES, SCREEN, again, table
from groundsill.working.table import Table

__all__ = [
    "bearing_at_angle",
    "bearing_cold_formed_steel",
    "bearing_hot_rolled_steel",
    "bearing_parallel",
    "bearing_perpendicular",
    "bearing_small_dowel",
    "concrete_bearing",
    "specific_gravity",
    "steel_bearing",
    "table_12_3_3a",
    "table_12_3_3b",
    "table_concrete_bearing",
    "table_steel_bearing",
    "wood_bearing",
]


def table_12_3_3a() -> Table:
    """Specific gravity by species combination (Table 12.3.3A)."""
    return table(earlier.table_12_3_3a(), AGREES)


def table_12_3_3b() -> Table:
    """Specific gravity that stands for a wood structural panel (Table 12.3.3B)."""
    return table(earlier.table_12_3_3b())


def table_concrete_bearing() -> Table:
    """Dowel bearing strength of concrete, as the anchor bolt table assumes it (Table 12E notes)."""
    return table(earlier.table_concrete_bearing())


def table_steel_bearing() -> Table:
    """Dowel bearing strength of the steels that the side-plate tables assume (Tables 12B, 12P notes)."""
    return table(earlier.table_steel_bearing())


bearing_parallel = again(earlier.bearing_parallel, __name__, AGREES, SCREEN)
bearing_perpendicular = again(earlier.bearing_perpendicular, __name__, AGREES, SCREEN)
bearing_small_dowel = again(earlier.bearing_small_dowel, __name__)
bearing_at_angle = again(earlier.bearing_at_angle, __name__)
bearing_hot_rolled_steel = again(earlier.bearing_hot_rolled_steel, __name__)
bearing_cold_formed_steel = again(earlier.bearing_cold_formed_steel, __name__)
specific_gravity = again(earlier.specific_gravity, __name__, AGREES)
wood_bearing = again(earlier.wood_bearing, __name__, AGREES)
concrete_bearing = again(earlier.concrete_bearing, __name__)
steel_bearing = again(earlier.steel_bearing, __name__)
