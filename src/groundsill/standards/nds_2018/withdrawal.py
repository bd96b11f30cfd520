"""12.2: what holds a nail, a wood screw or a lag screw against being drawn out of side grain, per inch.

In: specific gravity and diameter. Out: lb per inch of penetration (of thread, for screws). Nothing holds in end grain
for nails; the adjusted value (``adjustment``) applies that and the other factors.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.nds_2018 import SOURCE
from groundsill.standards.nds_2018.symbols import BoltDiameter, Diameter, Gravity
from groundsill.working.equation import Q, equation, require
from groundsill.working.table import Table

__all__ = ["lag_thread_penetration", "lag_withdrawal", "nail_withdrawal", "table_l2", "wood_screw_withdrawal"]

Withdrawal = Annotated[float, Q("lb/in", "W", "reference withdrawal value per inch of penetration")]


def table_l2() -> Table:
    """Lag screws (Appendix L, Table L2): root diameter and length of the tapered tip, by nominal diameter."""
    return Table.load(__package__, "tables/l2_lags.toml")


@equation(
    "nds-2018/12.2-3",
    title="Withdrawal of a nail, side grain",
    clause="12.2.3, Eq. 12.2-3",
    source=SOURCE,
    witness="github.com/xcfem/xc, withdrawal_design_value_test_01 (wood council example E2.1a): 3619.3 N/m",
    constants={1380: "lb/in^2"},
)
def nail_withdrawal(G: Gravity, D: Diameter) -> Withdrawal:
    """W = 1,380 G^2.5 D per inch of penetration into side grain.

    Source: mathscinotes.com/2016/07/withdrawal-force-rating-for-various-nails (seen). Example: 8d common (0.131 in.),
    spruce-pine-fir (0.42): 20.7 lb/in (the wood council's example E2.1a, as held by github.com/xcfem/xc).
    """
    return 1380 * G**2.5 * D  # type: ignore[no-any-return]  # float to a float power is Any


@equation(
    "nds-2018/12.2-2",
    title="Withdrawal of a wood screw, side grain",
    clause="12.2.2, Eq. 12.2-2",
    source=SOURCE,
    witness="NDS 2018 Table 12.2B, No. 10 in Douglas fir, 135 lb/in, as read in github.com/rohreng/anderson-rohr-calcs",
    constants={2850: "lb/in^2"},
)
def wood_screw_withdrawal(G: Gravity, D: Diameter) -> Withdrawal:
    """W = 2,850 G^2 D per inch of thread in side grain; D the nominal diameter.

    Source: 12.2.2 (page 76) as transcribed in github.com/rohreng/anderson-rohr-calcs, specification of its wood
    connection schedule. Example: No. 10 (0.190 in.), Douglas fir-larch: 135 lb/in (Table 12.2B, read there).
    """
    return 2850 * G**2 * D


@equation(
    "nds-2018/12.2-1",
    title="Withdrawal of a lag screw, side grain",
    clause="12.2.1, Eq. 12.2-1",
    source=SOURCE,
    witness="github.com/xcfem/xc, withdrawal_design_value_test_02 (wood council E2.3): 955.0 lb over 2.1875 in.",
    constants={1800: "lb/in^1.75"},
)
def lag_withdrawal(G: Gravity, D: BoltDiameter) -> Withdrawal:
    """W = 1,800 G^1.5 D^0.75 per inch of thread in side grain, without the tapered tip.

    Source: 12.2.1 (page 76) as transcribed in github.com/rohreng/anderson-rohr-calcs, specification of its wood
    connection schedule. Example: 1/2 in. lag screw, southern pine (0.55): 436.6 lb/in (our own arithmetic).
    """
    return 1800 * G**1.5 * D**0.75  # type: ignore[no-any-return]  # float to a float power is Any


@equation(
    "nds-2018/12.2.1.1",
    title="Thread of a lag screw that holds",
    clause="12.2.1.1",
    source=SOURCE,
    witness="github.com/xcfem/xc, withdrawal_design_value_test_02: 2.1875 in. of a 1/2 x 4 in. lag behind 1-1/2 in.",
)
def lag_thread_penetration(
    L: Annotated[float, Q("in", "L", "length of the lag screw", above=0.0)],
    t_s: Annotated[float, Q("in", "t_s", "thickness of the side member", above=0.0)],
    E: Annotated[float, Q("in", "E", "length of the tapered tip", at_least=0.0)],
) -> Annotated[float, Q("in", "p_t", "thread penetration without the tip")]:
    """What of the screw lies in the main member, without its tapered tip (the thread being that long).

    Source: NDS 2018, 12.2.1.2, page 76, read by page in github.com/rohreng/anderson-rohr-calcs, docs/plans, NDS
    cross-check of the wood connection schedule.
    """
    require(t_s + E < L, "the lag screw must reach past its tapered tip into the main member")
    return L - t_s - E
