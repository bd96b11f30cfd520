"""Bolts between two pieces of wood, and through a steel side plate into wood (12.3 as in Tables 12A and 12B).

In: diameter, the lengths in both members, species, each member's angle of load to grain. Out: the reference lateral
value of one bolt in single shear. The sill bolt in concrete has its own room (``sill_bolt``).
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.nds_2018 import SOURCE
from groundsill.standards.nds_2018.bearing import steel_bearing, wood_bearing
from groundsill.standards.nds_2018.shear import Lateral, single_shear
from groundsill.standards.nds_2018.symbols import (
    ANGLE,
    BOLT_DIAMETER,
    LENGTH_MAIN,
    LENGTH_SIDE,
    Angle,
    BoltDiameter,
    LengthMain,
    LengthSide,
    hold,
)
from groundsill.working.equation import Q, procedure
from groundsill.working.steps import greatest
from groundsill.working.table import Table

__all__ = ["bolt", "bolt_steel_plate", "bolt_yield_strength", "table_i1_bolts"]

ThetaMain = Annotated[float, Q("deg", "θ_m", "angle of load to grain, main member", at_least=0.0, at_most=90.0)]
ThetaSide = Annotated[float, Q("deg", "θ_s", "angle of load to grain, side member", at_least=0.0, at_most=90.0)]


def table_i1_bolts() -> Table:
    """Bending yield strength of bolts and lag screws (Appendix I, Table I1)."""
    return Table.load(__package__, "tables/i1_bolts.toml")


def bolt_yield_strength() -> float:
    """F_yb in psi of common bolts (A307, SAE Grade 1, bent anchor bolts), as the lateral tables assume it."""
    return table_i1_bolts().read("bolt")


@procedure(
    "nds-2018/12A",
    title="Bolt, wood to wood, single shear",
    clause="12.3.1 as in Table 12A",
    source=SOURCE,
    alias="nds.bolt",
)
def bolt(
    D: BoltDiameter,
    l_m: LengthMain,
    l_s: LengthSide,
    main: str = "Douglas fir-larch",
    side: str = "Douglas fir-larch",
    theta_m: ThetaMain = 0.0,
    theta_s: ThetaSide = 0.0,
    rounding: str = "printed",
) -> Lateral:
    """Z in lb of one bolt; each member bears at its own angle, the reduction term takes the greater of the two.

    Example: 1/2 in. bolt, 3-1/2 and 1-1/2 in. Douglas fir-larch, parallel: 615 lb, mode IIIs (our own arithmetic).

    Raises:
        OutsideLimits: a diameter outside 1/4 to 1 in., an angle outside 0 to 90 degrees, an unknown species.
    """
    _hold(D, l_m, l_s)
    for angle in (theta_m, theta_s):
        hold(ANGLE, angle, SOURCE, "12.3.4")
    F_em = wood_bearing(D, main, theta_m, rounding)
    F_es = wood_bearing(D, side, theta_s, rounding)
    theta = greatest(theta_m, theta_s, symbol="θ", label="the greater angle of load to grain")
    return single_shear(D, l_m, l_s, F_em, F_es, bolt_yield_strength(), float(theta))


@procedure(
    "nds-2018/12B",
    title="Bolt, steel side plate to wood, single shear",
    clause="12.3.1 as in Table 12B",
    source=SOURCE,
    alias="nds.bolt-steel",
)
def bolt_steel_plate(
    D: BoltDiameter,
    l_m: LengthMain,
    t_s: LengthSide,
    main: str = "Douglas fir-larch",
    theta: Angle = 0.0,
    steel: str = "A36, 1/4 in. and thicker",
    rounding: str = "printed",
) -> Lateral:
    """Z in lb of one bolt through a steel plate of thickness ``t_s`` into wood; the plate's own limits come apart."""
    _hold(D, l_m, t_s)
    hold(ANGLE, theta, SOURCE, "12.3.4")
    F_em = wood_bearing(D, main, theta, rounding)
    return single_shear(D, l_m, t_s, F_em, steel_bearing(steel), bolt_yield_strength(), theta)


def _hold(D: float, l_m: float, l_s: float) -> None:
    hold(BOLT_DIAMETER, D, SOURCE, "12.3.1")
    hold(LENGTH_MAIN, l_m, SOURCE, "12.3.5")
    hold(LENGTH_SIDE, l_s, SOURCE, "12.3.5")
