"""3.3, 3.4: what a rim or joist carries in bending and in shear, as in NDS 2018; values of the wood by the Supplement.

The publisher says that shear in bending members is new in this edition; what is used here, the shear that a plain
rectangle carries, is recalled as unchanged.
"""

from __future__ import annotations

from groundsill.standards.nds_2018 import bending as earlier
from groundsill.standards.nds_2024.restating import again, table
from groundsill.working.table import Table

__all__ = ["adjusted_bending", "adjusted_shear", "beam_moment", "beam_shear", "beam_values", "incised", "table_4_3_8"]

adjusted_bending = again(earlier.adjusted_bending, __name__)
adjusted_shear = again(earlier.adjusted_shear, __name__)
beam_moment = again(earlier.beam_moment, __name__)
beam_shear = again(earlier.beam_shear, __name__)
beam_values = again(earlier.beam_values, __name__)
incised = again(earlier.incised, __name__)


def table_4_3_8() -> Table:
    """Incising factors of treated dimension lumber, by the value they lower."""
    return table(earlier.table_4_3_8())
