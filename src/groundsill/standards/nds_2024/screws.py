"""Wood screws and lag screws (12.1.4, 12.1.5, Tables 12J to 12M), as in NDS 2018."""

from __future__ import annotations

from groundsill.standards.nds_2018 import screws as earlier
from groundsill.standards.nds_2024.restating import again, table
from groundsill.working.table import Table

__all__ = [
    "lag_bearing_length",
    "lag_screw",
    "lag_screw_steel_plate",
    "screw_size",
    "table_l3",
    "wood_screw",
    "wood_screw_steel_plate",
]


def table_l3() -> Table:
    """Wood screws (Appendix L, Table L3): nominal and root diameter by number."""
    return table(earlier.table_l3())


screw_size = again(earlier.screw_size, __name__)
wood_screw = again(earlier.wood_screw, __name__)
wood_screw_steel_plate = again(earlier.wood_screw_steel_plate, __name__)
lag_bearing_length = again(earlier.lag_bearing_length, __name__)
lag_screw = again(earlier.lag_screw, __name__)
lag_screw_steel_plate = again(earlier.lag_screw_steel_plate, __name__)
