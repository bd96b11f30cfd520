"""ASCE 7-05 section 12.8: the base shear as an old drawing's coefficient came about.

The formulas of the 2016 edition by reference, under this edition's numbers.
"""

from __future__ import annotations

from groundsill.standards.asce7_05 import SOURCE
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

_WHY = "that ASCE 7-05 has it under this number is recalled."

base_shear = later.base_shear.restated(
    "asce7-05/12.8-1",
    clause="Eq. 12.8-1",
    source=SOURCE,
    module=__name__,
    why=_WHY,
)

coefficient_plateau = later.coefficient_plateau.restated(
    "asce7-05/12.8-2",
    clause="Eq. 12.8-2",
    source=SOURCE,
    module=__name__,
    why=_WHY,
)

coefficient_upper = later.coefficient_upper.restated(
    "asce7-05/12.8-3",
    clause="Eq. 12.8-3",
    source=SOURCE,
    module=__name__,
    why=_WHY,
)

coefficient_long_period = later.coefficient_long_period.restated(
    "asce7-05/12.8-4",
    clause="Eq. 12.8-4",
    source=SOURCE,
    module=__name__,
    why=_WHY,
)

coefficient_least = later.coefficient_least.restated(
    "asce7-05/12.8-5",
    clause="Eq. 12.8-5 as Supplement 2 has it",
    source=SOURCE,
    module=__name__,
    why=_WHY,
)

coefficient_near_fault = later.coefficient_near_fault.restated(
    "asce7-05/12.8-6",
    clause="Eq. 12.8-6",
    source=SOURCE,
    module=__name__,
    why=_WHY,
)

approximate_period = later.approximate_period.restated(
    "asce7-05/12.8-7",
    clause="Eq. 12.8-7, Table 12.8-2 (all other structural systems)",
    source=SOURCE,
    module=__name__,
    why=_WHY,
)
