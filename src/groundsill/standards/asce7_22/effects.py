"""ASCE 7-22 sections 12.4, 2.3.6 and 2.4.5: the earthquake beside other loads.

The snow of this edition is at strength level, so it stands in two combinations with other factors than in 2016; all
else is that edition's, restated.
"""

from __future__ import annotations

from groundsill.standards.asce7_16 import effects as earlier
from groundsill.standards.asce7_16.effects import Allowable, Demand, Horizontal, Live, Snow, Vertical
from groundsill.standards.asce7_16.symbols import DeadLoad
from groundsill.standards.asce7_22 import SOURCE
from groundsill.working.equation import equation

__all__ = [
    "asd_dead_factor_8",
    "asd_dead_factor_9",
    "asd_dead_factor_10",
    "asd_down",
    "asd_down_with_live",
    "asd_earthquake",
    "asd_earthquake_with_live",
    "asd_up",
    "horizontal_effect",
    "lrfd_dead_factor_6",
    "lrfd_dead_factor_7",
    "lrfd_down",
    "lrfd_up",
    "overstrength_effect",
    "vertical_effect",
]

_RECALLED = "that ASCE 7-22 has it unchanged is recalled."

horizontal_effect = earlier.horizontal_effect.restated(
    "asce7-22/12.4-3", clause="Eq. 12.4-3", source=SOURCE, module=__name__, why=_RECALLED
)

vertical_effect = earlier.vertical_effect.restated(
    "asce7-22/12.4-4a", clause="Eq. 12.4-4a", source=SOURCE, module=__name__, why=_RECALLED
)

overstrength_effect = earlier.overstrength_effect.restated(
    "asce7-22/12.4-7", clause="Eq. 12.4-7", source=SOURCE, module=__name__, why=_RECALLED
)

asd_earthquake = earlier.asd_earthquake.restated(
    "asce7-22/2.4.5-E", clause="2.4.5 combinations 8 and 10", source=SOURCE, module=__name__, why=_RECALLED
)

asd_earthquake_with_live = earlier.asd_earthquake_with_live.restated(
    "asce7-22/2.4.5-E-live", clause="2.4.5 combination 9", source=SOURCE, module=__name__, why=_RECALLED
)

asd_dead_factor_8 = earlier.asd_dead_factor_8.restated(
    "asce7-22/2.4.5-8-D", clause="2.4.5 combination 8 with Eq. 12.4-4a", source=SOURCE, module=__name__, why=_RECALLED
)

asd_dead_factor_9 = earlier.asd_dead_factor_9.restated(
    "asce7-22/2.4.5-9-D", clause="2.4.5 combination 9 with Eq. 12.4-4a", source=SOURCE, module=__name__, why=_RECALLED
)

asd_dead_factor_10 = earlier.asd_dead_factor_10.restated(
    "asce7-22/2.4.5-10-D", clause="2.4.5 combination 10 with Eq. 12.4-4a", source=SOURCE, module=__name__, why=_RECALLED
)

lrfd_dead_factor_6 = earlier.lrfd_dead_factor_6.restated(
    "asce7-22/2.3.6-6-D", clause="2.3.6 combination 6 with Eq. 12.4-4a", source=SOURCE, module=__name__, why=_RECALLED
)

lrfd_dead_factor_7 = earlier.lrfd_dead_factor_7.restated(
    "asce7-22/2.3.6-7-D", clause="2.3.6 combination 7 with Eq. 12.4-4a", source=SOURCE, module=__name__, why=_RECALLED
)

asd_down = earlier.asd_down.restated(
    "asce7-22/2.4.5-8", clause="2.4.5 combination 8", source=SOURCE, module=__name__, why=_RECALLED
)

asd_up = earlier.asd_up.restated(
    "asce7-22/2.4.5-10", clause="2.4.5 combination 10", source=SOURCE, module=__name__, why=_RECALLED
)

lrfd_up = earlier.lrfd_up.restated(
    "asce7-22/2.3.6-7", clause="2.3.6 combination 7", source=SOURCE, module=__name__, why=_RECALLED
)


@equation(
    "asce7-22/2.4.5-9",
    title="Allowable-stress combination 9",
    clause="2.4.5 combination 9",
    source=SOURCE,
    how="from memory",
)
def asd_down_with_live(D: DeadLoad, L: Live, S: Snow, E_v: Vertical, E_h: Horizontal) -> Allowable:
    """Dead load with three quarters of live load and of the allowable-level earthquake, and a tenth of the snow.

    Recalled, and so in public source code that names the edition. Example (our arithmetic): D 1,000, L 400, S 100,
    E_v 200, E_h 500 lb give 1,677.5 lb.
    """
    return 1.0 * D + 0.525 * E_v + 0.525 * E_h + 0.75 * L + 0.1 * S


@equation(
    "asce7-22/2.3.6-6",
    title="Strength combination 6",
    clause="2.3.6 combination 6",
    source=SOURCE,
    how="from memory",
)
def lrfd_down(D: DeadLoad, L: Live, S: Snow, E_v: Vertical, E_h: Horizontal) -> Demand:
    """Dead and live load with the earthquake, downward, and 15 per cent of the snow.

    Recalled, and so in public source code that names the edition. Example (our arithmetic): D 1,000, L 400, S 100,
    E_v 200, E_h 500 lb give 2,315 lb.
    """
    return 1.2 * D + E_v + E_h + L + 0.15 * S
