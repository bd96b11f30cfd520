"""ASCE 7-22 sections 2.4.1, 12.4, 2.3.6, 2.4.5 and 12.13.4: dead, live and snow load, and the earthquake beside them.

The snow of this edition is at strength level, so it stands in four combinations with other factors than in 2016; all
else is that edition's, restated.
"""

from __future__ import annotations

from groundsill.standards.asce7_16 import effects as earlier
from groundsill.standards.asce7_16 import wind
from groundsill.standards.asce7_16.effects import Allowable, Demand, Horizontal, Live, Snow, Vertical
from groundsill.standards.asce7_16.symbols import DeadLoad
from groundsill.standards.asce7_22 import SOURCE
from groundsill.standards.editions import unchanged
from groundsill.working.equation import equation, procedure
from groundsill.working.table import Table

__all__ = [
    "asd_dead_factor_7",
    "asd_dead_factor_8",
    "asd_dead_factor_9",
    "asd_dead_factor_10",
    "asd_down",
    "asd_down_with_live",
    "asd_earthquake",
    "asd_earthquake_with_live",
    "asd_live",
    "asd_live_and_snow",
    "asd_snow",
    "asd_up",
    "asd_wind",
    "asd_wind_with_live",
    "horizontal_effect",
    "lrfd_dead_factor_5",
    "lrfd_dead_factor_6",
    "lrfd_dead_factor_7",
    "lrfd_down",
    "lrfd_up",
    "overstrength_effect",
    "overturning_factor",
    "table_2_4_1",
    "table_12_13_4",
    "vertical_effect",
]

_RECALLED = "that ASCE 7-22 has it unchanged is recalled."


def table_12_13_4() -> Table:
    """The share of overturning at the soil that remains under the equivalent lateral force procedure."""
    return unchanged(earlier.table_12_13_4(), SOURCE.short, _RECALLED.rstrip("."))


def table_2_4_1() -> Table:
    """What of dead load may be counted on to hold down beside wind."""
    return unchanged(wind.table_2_4_1(), SOURCE.short, _RECALLED.rstrip("."))


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

asd_wind = wind.asd_wind.restated(
    "asce7-22/2.4.1-W", clause="2.4.1 combinations 5a and 7a", source=SOURCE, module=__name__, why=_RECALLED
)

asd_wind_with_live = wind.asd_wind_with_live.restated(
    "asce7-22/2.4.1-W-live", clause="2.4.1 combination 6a", source=SOURCE, module=__name__, why=_RECALLED
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

asd_live = earlier.asd_live.restated(
    "asce7-22/2.4.1-2", clause="2.4.1 combination 2a", source=SOURCE, module=__name__, why=_RECALLED
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
    "asce7-22/2.4.1-3",
    title="Allowable-stress combination 3",
    clause="2.4.1 combination 3a",
    source=SOURCE,
    how="from memory",
)
def asd_snow(D: DeadLoad, S: Snow) -> Allowable:
    """Dead load and seven tenths of the snow, which is at strength level here.

    Recalled, and so in public source code that names the edition. Example (our arithmetic): 1,000 and 100 lb give
    1,070 lb.
    """
    return D + 0.7 * S


@equation(
    "asce7-22/2.4.1-4",
    title="Allowable-stress combination 4",
    clause="2.4.1 combination 4a",
    source=SOURCE,
    how="from memory",
)
def asd_live_and_snow(D: DeadLoad, L: Live, S: Snow) -> Allowable:
    """Dead load with three quarters of live load and of seven tenths of the snow.

    Recalled, and so in public source code that names the edition. Example (our arithmetic): D 1,000, L 400, S 100 lb
    give 1,352.5 lb.
    """
    return D + 0.75 * L + 0.525 * S


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


@procedure(
    "asce7-22/12.13.4",
    title="Overturning at the soil, reduced",
    clause="12.13.4",
    source=SOURCE,
    alias="asce7.overturning-at-soil",
)
def overturning_factor(equivalent_lateral_force: bool, cantilever_system: bool = False) -> float:
    """The factor on overturning effects between soil and foundation (not on sliding, not on the wall above).

    Raises:
        OutsideLimits: when the forces are not from the equivalent lateral force procedure, or the structure is an
            inverted pendulum or of cantilevered columns.
    """
    return earlier.overturning_factor_by(table_12_13_4(), SOURCE, equivalent_lateral_force, cantilever_system)


@procedure(
    "asce7-22/2.4.1-7-D",
    title="Factor on dead load, allowable stress, holding down beside wind",
    clause="2.4.1 combination 7a",
    source=SOURCE,
)
def asd_dead_factor_7() -> float:
    """The factor on dead load that holds down where wind is checked in allowable-stress design."""
    return table_2_4_1().read("allowable stress, combination 7", symbol="f_D")


@procedure(
    "asce7-22/2.3.1-5-D",
    title="Factor on dead load, strength design, holding down beside wind",
    clause="2.3.1 combination 5a",
    source=SOURCE,
)
def lrfd_dead_factor_5() -> float:
    """The factor on dead load that holds down where wind is checked in strength design."""
    return table_2_4_1().read("strength, combination 5", symbol="f_D")
