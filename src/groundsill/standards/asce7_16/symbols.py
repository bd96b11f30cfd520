"""The quantities of ASCE 7-16 by their own symbols: unit, meaning and limits, shared by the modules beside this one.

Accelerations are fractions of gravity (unit ``g``, a ratio). ``S_D1`` and ``S_1`` belong to a period of one second, so
equations that divide them by a period write that second out, and their units can be proved.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.working.equation import Q

__all__ = [
    "TS",
    "Category",
    "Coefficient",
    "DeadLoad",
    "DesignOne",
    "DesignShort",
    "EarthquakeForce",
    "Force",
    "Height",
    "Importance",
    "LongPeriod",
    "MappedOne",
    "MappedShort",
    "Modification",
    "Overstrength",
    "Period",
    "Redundancy",
    "Weight",
]

MappedShort = Annotated[float, Q("g", "S_S", "mapped acceleration at short periods", at_least=0.0)]
MappedOne = Annotated[float, Q("g", "S_1", "mapped acceleration at one second", at_least=0.0)]
DesignShort = Annotated[float, Q("g", "S_DS", "design acceleration at short periods", at_least=0.0)]
DesignOne = Annotated[float, Q("g", "S_D1", "design acceleration at one second", at_least=0.0)]
Period = Annotated[float, Q("s", "T", "fundamental period", above=0.0)]
LongPeriod = Annotated[float, Q("s", "T_L", "long-period transition period, from the maps", above=0.0)]
TS = Annotated[float, Q("s", "T_S", "period at the end of the plateau, S_D1 / S_DS", at_least=0.0)]
Modification = Annotated[float, Q("1", "R", "response modification coefficient", at_least=1.0)]
Importance = Annotated[float, Q("1", "I_e", "importance factor", at_least=1.0, at_most=1.5)]
Overstrength = Annotated[float, Q("1", "Omega_0", "overstrength factor", at_least=1.0)]
Redundancy = Annotated[float, Q("1", "rho", "redundancy factor", at_least=1.0, at_most=1.3)]
Coefficient = Annotated[float, Q("1", "C_s", "seismic response coefficient", at_least=0.0)]
Height = Annotated[float, Q("ft", "h_n", "height from the base to the highest level", above=0.0)]
Weight = Annotated[float, Q("lb", "W", "effective seismic weight", at_least=0.0)]
Force = Annotated[float, Q("lb", "V", "base shear", at_least=0.0)]
DeadLoad = Annotated[float, Q("lb", "D", "dead load or its effect")]
EarthquakeForce = Annotated[float, Q("lb", "Q_E", "effect of the horizontal seismic forces, strength level")]
Category = Annotated[str, Q("", "category", "seismic design category, A to F")]
