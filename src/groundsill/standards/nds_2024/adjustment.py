"""11.3: from the reference value of one fastener to the adjusted one, as in NDS 2018."""

from __future__ import annotations

from groundsill.standards.nds_2018 import adjustment as earlier
from groundsill.standards.nds_2024.restating import again, table
from groundsill.working.table import Table

__all__ = [
    "adjusted_lateral",
    "adjusted_lateral_asd",
    "adjusted_lateral_lrfd",
    "adjusted_withdrawal",
    "adjusted_withdrawal_asd",
    "adjusted_withdrawal_lrfd",
    "table_2_3_2",
    "table_11_3_3_lateral",
    "table_11_3_3_withdrawal",
    "table_11_3_4",
    "table_12_5_2",
    "table_12_5_3",
    "table_12_5_4",
    "table_n1",
    "table_n2",
    "table_n3",
]


def table_2_3_2() -> Table:
    """Load duration factor C_D (Table 2.3.2); impact is left out, since connections stop at 1.6."""
    return table(earlier.table_2_3_2())


def table_11_3_3_lateral() -> Table:
    """Wet service factor C_M of dowels loaded laterally (Table 11.3.3)."""
    return table(earlier.table_11_3_3_lateral())


def table_11_3_3_withdrawal() -> Table:
    """Wet service factor C_M of nails in withdrawal (Table 11.3.3)."""
    return table(earlier.table_11_3_3_withdrawal())


def table_11_3_4() -> Table:
    """Temperature factor C_t (Table 11.3.4)."""
    return table(earlier.table_11_3_4())


def table_12_5_2() -> Table:
    """End grain factor C_eg (12.5.2)."""
    return table(earlier.table_12_5_2())


def table_12_5_3() -> Table:
    """Diaphragm factor C_di (12.5.3): for nails of a diaphragm, not of a shear wall."""
    return table(earlier.table_12_5_3())


def table_12_5_4() -> Table:
    """Toenail factor C_tn (12.5.4)."""
    return table(earlier.table_12_5_4())


def table_n1() -> Table:
    """Format conversion factor K_F (Table N1)."""
    return table(earlier.table_n1())


def table_n2() -> Table:
    """Resistance factor φ_z (Table N2)."""
    return table(earlier.table_n2())


def table_n3() -> Table:
    """Time effect factor λ (Table N3)."""
    return table(earlier.table_n3())


adjusted_lateral_asd = again(earlier.adjusted_lateral_asd, __name__)
adjusted_lateral_lrfd = again(earlier.adjusted_lateral_lrfd, __name__)
adjusted_lateral = again(earlier.adjusted_lateral, __name__)
adjusted_withdrawal_asd = again(earlier.adjusted_withdrawal_asd, __name__)
adjusted_withdrawal_lrfd = again(earlier.adjusted_withdrawal_lrfd, __name__)
adjusted_withdrawal = again(earlier.adjusted_withdrawal, __name__)
