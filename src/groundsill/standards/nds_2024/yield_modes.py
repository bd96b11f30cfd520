"""Tables 12.3.1A and B: the ways a dowel joint yields, and the reduction terms, as in NDS 2018."""

from __future__ import annotations

from groundsill.standards.nds_2018 import yield_modes as earlier
from groundsill.standards.nds_2024.restating import AGREES, CELL_12B, SCREEN, again

__all__ = [
    "angle_factor",
    "double_shear_iiis",
    "double_shear_im",
    "double_shear_is",
    "double_shear_iv",
    "k_1",
    "k_2",
    "k_3",
    "reduction_mode_i",
    "reduction_mode_ii",
    "reduction_mode_iii_iv",
    "reduction_small_dowel",
    "yield_mode_ii",
    "yield_mode_iiim",
    "yield_mode_iiis",
    "yield_mode_im",
    "yield_mode_is",
    "yield_mode_iv",
]

angle_factor = again(earlier.angle_factor, __name__, AGREES, CELL_12B)
reduction_mode_i = again(earlier.reduction_mode_i, __name__, AGREES, SCREEN)
reduction_mode_ii = again(earlier.reduction_mode_ii, __name__, AGREES, CELL_12B)
reduction_mode_iii_iv = again(earlier.reduction_mode_iii_iv, __name__, AGREES)
reduction_small_dowel = again(earlier.reduction_small_dowel, __name__, AGREES)
k_1 = again(earlier.k_1, __name__, AGREES, CELL_12B)
k_2 = again(earlier.k_2, __name__, AGREES)
k_3 = again(earlier.k_3, __name__, AGREES)
yield_mode_im = again(earlier.yield_mode_im, __name__, AGREES, SCREEN)
yield_mode_is = again(earlier.yield_mode_is, __name__, AGREES)
yield_mode_ii = again(earlier.yield_mode_ii, __name__, AGREES, CELL_12B)
yield_mode_iiim = again(earlier.yield_mode_iiim, __name__, AGREES)
yield_mode_iiis = again(earlier.yield_mode_iiis, __name__, AGREES)
yield_mode_iv = again(earlier.yield_mode_iv, __name__, AGREES)
double_shear_im = again(earlier.double_shear_im, __name__)
double_shear_is = again(earlier.double_shear_is, __name__)
double_shear_iiis = again(earlier.double_shear_iiis, __name__)
double_shear_iv = again(earlier.double_shear_iv, __name__)
