"""Bolts between wood and wood, steel or concrete (Tables 12A, 12B, 12E), as in NDS 2018."""

from __future__ import annotations

from groundsill.standards.nds_2018 import bolts as earlier
from groundsill.standards.nds_2018 import sill_bolt as earlier_sill
from groundsill.standards.nds_2024.restating import AGREES, again, table
from groundsill.working.table import Table

__all__ = ["bolt", "bolt_steel_plate", "sill_bolt", "table_i1_bolts"]


def table_i1_bolts() -> Table:
    """Bending yield strength of bolts and lag screws (Appendix I, Table I1)."""
    return table(earlier.table_i1_bolts())


bolt = again(earlier.bolt, __name__)
bolt_steel_plate = again(earlier.bolt_steel_plate, __name__, AGREES)
sill_bolt = again(earlier_sill.sill_bolt, __name__)
