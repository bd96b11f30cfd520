"""12.3.1 and 12.3.2: the reference lateral value of one dowel, as in NDS 2018."""

from __future__ import annotations

from groundsill.standards.nds_2018 import shear as earlier
from groundsill.standards.nds_2024.restating import AGREES, again

__all__ = ["double_shear", "single_shear"]

single_shear = again(earlier.single_shear, __name__, AGREES)
double_shear = again(earlier.double_shear, __name__)
