"""3.8, 3.9.1: a post pulled and bent at once, as in NDS 2018; values of the wood by the Supplement."""

from __future__ import annotations

from groundsill.standards.nds_2018 import tension as earlier
from groundsill.standards.nds_2024.restating import again

__all__ = [
    "adjusted_tension",
    "bending_beyond_tension",
    "bending_stress",
    "pulled_post",
    "tension_and_bending",
    "tension_stress",
]

adjusted_tension = again(earlier.adjusted_tension, __name__)
tension_stress = again(earlier.tension_stress, __name__)
bending_stress = again(earlier.bending_stress, __name__)
tension_and_bending = again(earlier.tension_and_bending, __name__)
bending_beyond_tension = again(earlier.bending_beyond_tension, __name__)
pulled_post = again(earlier.pulled_post, __name__)
