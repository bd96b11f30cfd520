"""Nails and toenails (12.1.6, 12.3, 12.5.4), as in NDS 2018."""

from __future__ import annotations

from groundsill.standards.nds_2018 import nails as earlier
from groundsill.standards.nds_2024.restating import again, table
from groundsill.working.table import Table

__all__ = [
    "bearing_length_tapered",
    "nail",
    "nail_size",
    "nail_steel_plate",
    "nail_yield_strength",
    "penetration_factor",
    "table_12p_gauge",
    "table_i1_nails",
    "table_l4",
    "toenail",
    "toenail_length_inside",
    "toenail_penetration",
    "toenail_side_length",
]


def table_l4() -> Table:
    """Nail sizes (Appendix L, Table L4): diameter and length."""
    return table(earlier.table_l4())


def table_i1_nails() -> Table:
    """Bending yield strength of nails by diameter (Appendix I, Table I1)."""
    return table(earlier.table_i1_nails())


def table_12p_gauge() -> Table:
    """Thickness of steel side plates by gauge, as Table 12P lists them."""
    return table(earlier.table_12p_gauge())


nail_yield_strength = again(earlier.nail_yield_strength, __name__)
nail_size = again(earlier.nail_size, __name__)
penetration_factor = again(earlier.penetration_factor, __name__)
bearing_length_tapered = again(earlier.bearing_length_tapered, __name__)
nail = again(earlier.nail, __name__)
nail_steel_plate = again(earlier.nail_steel_plate, __name__)
toenail_side_length = again(earlier.toenail_side_length, __name__)
toenail_penetration = again(earlier.toenail_penetration, __name__)
toenail_length_inside = again(earlier.toenail_length_inside, __name__)
toenail = again(earlier.toenail, __name__)
