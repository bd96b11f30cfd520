"""ASCE 7-10 section 12.8: the base shear as an old drawing's coefficient came about.

The formulas of the 2016 edition by reference, under this edition's numbers.
"""

from __future__ import annotations

from groundsill.standards.asce7_10 import SOURCE
from groundsill.standards.asce7_16 import elf as later

__all__ = [
    "approximate_period",
    "base_shear",
    "coefficient_least",
    "coefficient_long_period",
    "coefficient_near_fault",
    "coefficient_plateau",
    "coefficient_upper",
]

_WHY = (
    "printed with these numbers on City of Everett permit sheet 1333458, page 57, whose figures 22-12 to 22-16 are "
    "those of ASCE 7-10."
)

base_shear = later.base_shear.restated(
    "asce7-10/12.8-1",
    clause="Eq. 12.8-1",
    source=SOURCE,
    module=__name__,
    why=_WHY,
    how="seen",
)

coefficient_plateau = later.coefficient_plateau.restated(
    "asce7-10/12.8-2",
    clause="Eq. 12.8-2",
    source=SOURCE,
    module=__name__,
    why=_WHY,
    how="seen",
    witness="City of Everett permit sheet 1333458, page 57: S_DS 0.90 gives 0.14",
)

coefficient_upper = later.coefficient_upper.restated(
    "asce7-10/12.8-3",
    clause="Eq. 12.8-3",
    source=SOURCE,
    module=__name__,
    why=_WHY,
    how="seen",
    witness="City of Everett permit sheet 1333458, page 57: S_D1 0.49, T 0.22 give 0.34",
)

coefficient_long_period = later.coefficient_long_period.restated(
    "asce7-10/12.8-4",
    clause="Eq. 12.8-4",
    source=SOURCE,
    module=__name__,
    why=_WHY,
    how="seen",
    witness="City of Everett permit sheet 1333458, page 57: T_L 6 gives 9.09",
)

coefficient_least = later.coefficient_least.restated(
    "asce7-10/12.8-5",
    clause="Eq. 12.8-5",
    source=SOURCE,
    module=__name__,
    why=_WHY,
    how="seen",
    witness="City of Everett permit sheet 1333458, page 57: S_DS 0.90 gives 0.04",
)

coefficient_near_fault = later.coefficient_near_fault.restated(
    "asce7-10/12.8-6",
    clause="Eq. 12.8-6",
    source=SOURCE,
    module=__name__,
    why=_WHY,
    how="seen",
)

approximate_period = later.approximate_period.restated(
    "asce7-10/12.8-7",
    clause="Eq. 12.8-7, Table 12.8-2 (all other structural systems)",
    source=SOURCE,
    module=__name__,
    why=_WHY,
    how="seen",
    witness="City of Everett permit sheet 1333458, page 57: h_n 25 gives 0.22",
)
