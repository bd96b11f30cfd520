"""12.2: what holds a fastener against being drawn out, as in NDS 2018."""

from __future__ import annotations

from groundsill.standards.nds_2018 import withdrawal as earlier
from groundsill.standards.nds_2024.restating import again, table
from groundsill.working.table import Table

__all__ = ["lag_thread_penetration", "lag_withdrawal", "nail_withdrawal", "table_l2", "wood_screw_withdrawal"]


def table_l2() -> Table:
    """Lag screws (Appendix L, Table L2): root diameter and length of the tapered tip, by nominal diameter."""
    return table(earlier.table_l2())


nail_withdrawal = again(earlier.nail_withdrawal, __name__)
wood_screw_withdrawal = again(earlier.wood_screw_withdrawal, __name__)
lag_withdrawal = again(earlier.lag_withdrawal, __name__)
lag_thread_penetration = again(earlier.lag_thread_penetration, __name__)
