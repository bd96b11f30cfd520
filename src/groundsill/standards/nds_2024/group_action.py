"""11.3.6: the group action factor of fasteners in a row, as in NDS 2018."""

from __future__ import annotations

from groundsill.standards.nds_2018 import group_action as earlier
from groundsill.standards.nds_2024.restating import AGREES, again

__all__ = [
    "group_action_factor",
    "group_action_sum",
    "group_decay",
    "group_u",
    "slip_modulus_metal",
    "slip_modulus_wood",
    "stiffness_ratio",
]

slip_modulus_wood = again(earlier.slip_modulus_wood, __name__, AGREES)
slip_modulus_metal = again(earlier.slip_modulus_metal, __name__, AGREES)
group_u = again(earlier.group_u, __name__, AGREES)
group_decay = again(earlier.group_decay, __name__, AGREES)
stiffness_ratio = again(earlier.stiffness_ratio, __name__, AGREES)
group_action_sum = again(earlier.group_action_sum, __name__, AGREES)
group_action_factor = again(earlier.group_action_factor, __name__, AGREES)
