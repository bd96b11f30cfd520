"""ASCE 7-16 sections 2.4.1, 12.4, 2.3.6, 2.4.5 and 12.13.4: dead, live and snow load, and the earthquake beside them.

Everything below the roof is carried at strength level; these are the steps at a check that turn it into a
strength-design or an allowable-stress demand. ``..._dead_factor`` gives the factor on D alone, for checks that hold
dead load against uplift; the whole combinations take effects in pounds, down and toward the effect being positive.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.asce7_16 import SOURCE
from groundsill.standards.asce7_16.symbols import DeadLoad, DesignShort, EarthquakeForce, Overstrength, Redundancy
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.source import Source
from groundsill.working.steps import condition
from groundsill.working.table import Table

__all__ = [
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
    "horizontal_effect",
    "lrfd_dead_factor_6",
    "lrfd_dead_factor_7",
    "lrfd_down",
    "lrfd_up",
    "overstrength_effect",
    "overstrength_stress_increase",
    "overturning_factor",
    "overturning_factor_by",
    "table_12_4_3",
    "table_12_13_4",
    "vertical_effect",
]

Vertical = Annotated[float, Q("lb", "E_v", "effect of vertical ground motion", at_least=0.0)]
Horizontal = Annotated[float, Q("lb", "E_h", "effect of the horizontal forces, rho or Omega_0 included")]
Live = Annotated[float, Q("lb", "L", "live load or its effect")]
Snow = Annotated[float, Q("lb", "S", "snow load or its effect")]
DeadFactor = Annotated[float, Q("1", "f_D", "factor on dead load")]
Demand = Annotated[float, Q("lb", "U", "required strength")]
Allowable = Annotated[float, Q("lb", "P", "demand at allowable-stress level")]


def table_12_13_4() -> Table:
    """The share of overturning at the soil that remains under the equivalent lateral force procedure."""
    return Table.load(__package__, "tables/12_13_4.toml")


def table_12_4_3() -> Table:
    """The increase of allowable stresses that goes with overstrength combinations in allowable-stress design."""
    return Table.load(__package__, "tables/12_4_3.toml")


@equation(
    "asce7-16/12.4-3",
    title="Horizontal seismic load effect",
    clause="Eq. 12.4-3",
    source=SOURCE,
)
def horizontal_effect(
    rho: Redundancy, Q_E: EarthquakeForce
) -> Annotated[float, Q("lb", "E_h", "horizontal seismic load effect")]:
    """The effect of the horizontal forces times the redundancy factor.

    Seen in the ideCAD pages on ASCE 7-16 12.3.4 (idecad.atlassian.net). Example (our arithmetic): 1.3 x 1,000 lb.
    """
    return rho * Q_E


@equation(
    "asce7-16/12.4-4a",
    title="Vertical seismic load effect",
    clause="Eq. 12.4-4a",
    source=SOURCE,
    witness="Bentley RAM help, IBC combinations: 0.2 S_DS D",
)
def vertical_effect(
    S_DS: DesignShort, D: Annotated[float, Q("lb", "D", "dead load", at_least=0.0)]
) -> Annotated[float, Q("lb", "E_v", "vertical seismic load effect")]:
    """A fifth of S_DS times the dead load, up or down.

    Seen as 0.2 S_DS D in the Bentley RAM help on IBC combinations and in up.codes "Maximum seismic load effect".
    Example (our arithmetic): S_DS = 1.0 on 1,000 lb is 200 lb.
    """
    return 0.2 * S_DS * D


@equation(
    "asce7-16/12.4-7",
    title="Horizontal seismic load effect with overstrength",
    clause="Eq. 12.4-7",
    source=SOURCE,
)
def overstrength_effect(
    Omega_0: Overstrength, Q_E: EarthquakeForce
) -> Annotated[float, Q("lb", "E_mh", "horizontal seismic load effect with overstrength")]:
    """The effect of the horizontal forces times the overstrength factor (rho is then 1.0).

    Seen as Omega Q_E in up.codes "Maximum seismic load effect". Example (our arithmetic): 3 x 1,000 lb.
    """
    return Omega_0 * Q_E


@equation(
    "asce7-16/2.4.5-E",
    title="Earthquake effect at allowable-stress level",
    clause="2.4.5 combinations 8 and 10",
    source=SOURCE,
    witness="City of Santa Ana permit sheet 370584, page 131: C_s 0.162 at allowable level is 0.113",
)
def asd_earthquake(
    E_h: Horizontal,
) -> Annotated[float, Q("lb", "0.7 E_h", "earthquake, allowable-stress level")]:
    """Seven tenths of the strength-level effect.

    Seen as 0.7E in the Bentley RAM help on IBC combinations and on permit sheets. Example, sheet 370584 page 131, per
    pound of weight: 0.1617 gives 0.113.
    """
    return 0.7 * E_h


@equation(
    "asce7-16/2.4.5-E-live",
    title="Earthquake effect at allowable-stress level, beside live load",
    clause="2.4.5 combination 9",
    source=SOURCE,
    witness="eng-tips thread 347245: 0.525 rho Q_E",
)
def asd_earthquake_with_live(
    E_h: Horizontal,
) -> Annotated[float, Q("lb", "0.525 E_h", "earthquake effect beside live load, allowable-stress level")]:
    """Three quarters of seven tenths, where live and snow load are taken at three quarters too.

    Seen as 0.525 rho Q_E in eng-tips thread 347245 (quoting 12.4.2.3 of ASCE 7-05). Example (our arithmetic): 1,000 lb
    gives 525 lb.
    """
    return 0.525 * E_h


@equation(
    "asce7-16/2.4.5-8-D",
    title="Factor on dead load, allowable stress, downward",
    clause="2.4.5 combination 8 with Eq. 12.4-4a",
    source=SOURCE,
    witness="City of Santa Ana permit sheet 370270, page 70: 1 + 0.7 x 0.2 S_DS",
)
def asd_dead_factor_8(S_DS: DesignShort) -> DeadFactor:
    """1.0 + 0.14 S_DS: dead load and seven tenths of the vertical effect.

    Seen on City of Santa Ana document 370270, page 70, as 1 + 0.7 x 0.2 S_DS, and in the Bentley RAM help on IBC
    combinations. Example: S_DS = 1 gives 1.14.
    """
    return 1.0 + 0.14 * S_DS


@equation(
    "asce7-16/2.4.5-9-D",
    title="Factor on dead load, allowable stress, beside live load",
    clause="2.4.5 combination 9 with Eq. 12.4-4a",
    source=SOURCE,
    witness="eng-tips thread 347245: 1.0 + 0.105 S_DS",
)
def asd_dead_factor_9(S_DS: DesignShort) -> DeadFactor:
    """1.0 + 0.105 S_DS.

    Seen in eng-tips thread 347245 (quoting 12.4.2.3 of ASCE 7-05). Example (our arithmetic): S_DS = 1 gives 1.105.
    """
    return 1.0 + 0.105 * S_DS


@equation(
    "asce7-16/2.4.5-10-D",
    title="Factor on dead load, allowable stress, holding down",
    clause="2.4.5 combination 10 with Eq. 12.4-4a",
    source=SOURCE,
    witness="City of Santa Ana permit sheet 370270, page 70: 0.6 - 0.7 x 0.2 S_DS",
)
def asd_dead_factor_10(S_DS: DesignShort) -> DeadFactor:
    """0.6 - 0.14 S_DS: what of the dead load may be counted on to hold down; negative beyond S_DS = 4.29.

    Seen on City of Santa Ana document 370270, page 70, as 0.6 - 0.7 x 0.2 S_DS, and in the Bentley RAM help on IBC
    combinations. Example: S_DS = 1 gives 0.46.
    """
    return 0.6 - 0.14 * S_DS


@equation(
    "asce7-16/2.3.6-6-D",
    title="Factor on dead load, strength design, downward",
    clause="2.3.6 combination 6 with Eq. 12.4-4a",
    source=SOURCE,
    witness="1.2 + 0.2 S_DS (public notes, github.com/wcfrobert/wcfrobert.github.io)",
)
def lrfd_dead_factor_6(S_DS: DesignShort) -> DeadFactor:
    """1.2 + 0.2 S_DS.

    The combination 1.2D + E_v + E_h + L + 0.2S is seen in the ideCAD page on ASCE 7-16 2.3. Example (our arithmetic):
    S_DS = 1 gives 1.4.
    """
    return 1.2 + 0.2 * S_DS


@equation(
    "asce7-16/2.3.6-7-D",
    title="Factor on dead load, strength design, holding down",
    clause="2.3.6 combination 7 with Eq. 12.4-4a",
    source=SOURCE,
    witness="0.9 - 0.2 S_DS (public notes, github.com/wcfrobert/wcfrobert.github.io)",
)
def lrfd_dead_factor_7(S_DS: DesignShort) -> DeadFactor:
    """0.9 - 0.2 S_DS.

    The combination 0.9D - E_v + E_h is seen in the ideCAD page on ASCE 7-16 2.3. Example (our arithmetic): S_DS = 1
    gives 0.7.
    """
    return 0.9 - 0.2 * S_DS


_COMBINATIONS = "engineeringexamples.net, nominal load combinations of ASCE 7-10"


@equation(
    "asce7-16/2.4.1-2",
    title="Allowable-stress combination 2",
    clause="2.4.1 combination 2",
    source=SOURCE,
    witness=f"{_COMBINATIONS}: D + L",
)
def asd_live(D: DeadLoad, L: Live) -> Allowable:
    """Dead and live load, without wind or earthquake.

    Seen for the 2010 edition on the page named as witness, and in New York City's BC 1605.3.1; unchanged in 2016, as
    recalled. Example (our arithmetic): 1,000 and 400 lb give 1,400 lb.
    """
    return D + L


@equation(
    "asce7-16/2.4.1-3",
    title="Allowable-stress combination 3",
    clause="2.4.1 combination 3",
    source=SOURCE,
    witness=f"{_COMBINATIONS}: D + S",
)
def asd_snow(D: DeadLoad, S: Snow) -> Allowable:
    """Dead load and snow, without wind or earthquake.

    Seen where the combination before it was. Example (our arithmetic): 1,000 and 100 lb give 1,100 lb.
    """
    return D + S


@equation(
    "asce7-16/2.4.1-4",
    title="Allowable-stress combination 4",
    clause="2.4.1 combination 4",
    source=SOURCE,
    witness=f"{_COMBINATIONS}: D + 0.75L + 0.75S",
)
def asd_live_and_snow(D: DeadLoad, L: Live, S: Snow) -> Allowable:
    """Dead load with three quarters of live load and of snow.

    Seen where the two before it were. Example (our arithmetic): D 1,000, L 400, S 100 lb give 1,375 lb.
    """
    return D + 0.75 * L + 0.75 * S


@equation("asce7-16/2.4.5-8", title="Allowable-stress combination 8", clause="2.4.5 combination 8", source=SOURCE)
def asd_down(D: DeadLoad, E_v: Vertical, E_h: Horizontal) -> Allowable:
    """Dead load with seven tenths of the earthquake, downward.

    Seen as D + 0.7E in the Bentley RAM help on IBC combinations. Example (our arithmetic): 1,000, 200 and 500 lb give
    1,490 lb.
    """
    return 1.0 * D + 0.7 * E_v + 0.7 * E_h


@equation("asce7-16/2.4.5-9", title="Allowable-stress combination 9", clause="2.4.5 combination 9", source=SOURCE)
def asd_down_with_live(D: DeadLoad, L: Live, S: Snow, E_v: Vertical, E_h: Horizontal) -> Allowable:
    """Dead load with three quarters of live, snow and allowable-level earthquake.

    Seen in eng-tips thread 347245 (quoting 12.4.2.3 of ASCE 7-05). Example (our arithmetic): D 1,000, L 400, S 0,
    E_v 200, E_h 500 lb give 1,667.5 lb.
    """
    return 1.0 * D + 0.525 * E_v + 0.525 * E_h + 0.75 * L + 0.75 * S


@equation("asce7-16/2.4.5-10", title="Allowable-stress combination 10", clause="2.4.5 combination 10", source=SOURCE)
def asd_up(D: DeadLoad, E_v: Vertical, E_h: Horizontal) -> Allowable:
    """Six tenths of dead load less the earthquake's lift; E_h is negative where it lifts.

    Seen as 0.6D + 0.7E in the Bentley RAM help on IBC combinations. Example (our arithmetic): 1,000, 200 and -500 lb
    give 110 lb.
    """
    return 0.6 * D - 0.7 * E_v + 0.7 * E_h


@equation("asce7-16/2.3.6-6", title="Strength combination 6", clause="2.3.6 combination 6", source=SOURCE)
def lrfd_down(D: DeadLoad, L: Live, S: Snow, E_v: Vertical, E_h: Horizontal) -> Demand:
    """Dead and live load with the earthquake, downward.

    Seen in the ideCAD page on ASCE 7-16 2.3 (idecad.atlassian.net). Example (our arithmetic): D 1,000, L 400, S 0,
    E_v 200, E_h 500 lb give 2,300 lb.
    """
    return 1.2 * D + E_v + E_h + L + 0.2 * S


@equation("asce7-16/2.3.6-7", title="Strength combination 7", clause="2.3.6 combination 7", source=SOURCE)
def lrfd_up(D: DeadLoad, E_v: Vertical, E_h: Horizontal) -> Demand:
    """Nine tenths of dead load less the earthquake's lift; E_h is negative where it lifts.

    Seen in the ideCAD page on ASCE 7-16 2.3 (idecad.atlassian.net). Example (our arithmetic): 1,000, 200 and -500 lb
    give 200 lb.
    """
    return 0.9 * D - E_v + E_h


@procedure(
    "asce7-16/12.4.3",
    title="Increase of allowable stresses with overstrength",
    clause="12.4.3",
    source=SOURCE,
)
def overstrength_stress_increase() -> float:
    """The factor on allowable stresses where the overstrength effect is checked in allowable-stress design."""
    return table_12_4_3().read("allowable stress with overstrength", symbol="f_Omega")


@procedure(
    "asce7-16/12.13.4",
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
    return overturning_factor_by(table_12_13_4(), SOURCE, equivalent_lateral_force, cantilever_system)


def overturning_factor_by(
    table: Table, source: Source, equivalent_lateral_force: bool, cantilever_system: bool
) -> float:
    """The factor on overturning at the soil by an edition's table; both conditions of 12.13.4 are written down.

    Raises:
        OutsideLimits: when one of them is not met.
    """
    elf = condition("forces from the equivalent lateral force procedure", equivalent_lateral_force, cite="12.13.4")
    wall = condition("neither inverted pendulum nor cantilevered columns", not cantilever_system, cite="12.13.4")
    if not (elf and wall):
        raise OutsideLimits(f"{source.cite('12.13.4')}: the reduction of overturning at the soil is not allowed here")
    return table.read("equivalent lateral force", symbol="f_OT")
