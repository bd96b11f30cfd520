"""3.6, 3.7, 3.10: posts along their grain and sills across it, as in NDS 2018; values of the wood by the Supplement."""

from __future__ import annotations

from groundsill.standards.nds_2018 import compression as earlier
from groundsill.standards.nds_2024.restating import again

__all__ = [
    "adjusted_modulus",
    "adjusted_parallel",
    "adjusted_perpendicular",
    "bearing_area_factor",
    "bearing_factor",
    "column_stability",
    "column_value",
    "critical_buckling",
    "perpendicular_value",
    "post_value",
]

bearing_area_factor = again(earlier.bearing_area_factor, __name__)
adjusted_perpendicular = again(earlier.adjusted_perpendicular, __name__)
critical_buckling = again(earlier.critical_buckling, __name__)
column_stability = again(earlier.column_stability, __name__)
adjusted_parallel = again(earlier.adjusted_parallel, __name__)
column_value = again(earlier.column_value, __name__)
adjusted_modulus = again(earlier.adjusted_modulus, __name__)
bearing_factor = again(earlier.bearing_factor, __name__)
perpendicular_value = again(earlier.perpendicular_value, __name__)
post_value = again(earlier.post_value, __name__)
