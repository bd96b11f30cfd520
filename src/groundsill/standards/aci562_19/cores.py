"""The specified strength that a sample of cores is equivalent to, by the code for existing concrete (6.4.3)."""

from __future__ import annotations

from collections.abc import Sequence
from math import sqrt
from typing import Annotated

from groundsill.standards.aci214_4r_10.cores import LEAST_CORES, at_most, sample_of
from groundsill.standards.aci562_19 import SOURCE
from groundsill.standards.aci562_19.tables import table_6_4_3
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import condition, divide

__all__ = ["equivalent_of_cores", "equivalent_strength"]

Coefficient = Annotated[float, Q("1", "k_c", "modification factor by the number of cores", at_least=1.0)]
Variation = Annotated[float, Q("1", "V", "coefficient of variation of the cores", at_least=0.0)]
Number = Annotated[float, Q("1", "n", "number of cores", at_least=2.0)]


@equation(
    "aci562-19/6.4.3",
    title="Equivalent specified strength of cores",
    clause="6.4.3",
    source=SOURCE,
    how="from memory",
)
def equivalent_strength(
    f_m: Annotated[float, Q("psi", "f_m", "mean strength of the cores, corrected", above=0.0)],
    k_c: Coefficient,
    V: Variation,
    n: Number,
) -> Annotated[float, Q("psi", "f_ceq", "equivalent specified strength")]:
    """Nine tenths of the mean, less what scatter and few cores leave in doubt: a figure to be used as f'c.

    It may fall below zero: then none is left. Source: ACI 562, 6.4.3 (from memory; that the clause follows CAN/CSA
    S6-06 is read at eng-tips.com thread 429375). 3,000 psi, three cores, k_c 1.47, V 0.10: 2,378 psi (our own
    arithmetic).
    """
    return 0.9 * f_m * (1 - 1.28 * sqrt((k_c * V) ** 2 / n + 0.0015))


@procedure(
    "aci562-19/cores",
    title="Equivalent specified strength of a sample of cores",
    clause="6.4.3",
    source=SOURCE,
    alias="core.equivalent",
)
def equivalent_of_cores(f_c: Sequence[float]) -> float:
    """The strength to use as f'c for concrete that these cores came from, psi: at least three, corrected.

    Raises:
        OutsideLimits: fewer than three cores, or so scattered that no strength is left.
    """
    met = len(f_c) >= LEAST_CORES
    condition("at least three cores of one concrete", met)
    if not met:
        raise OutsideLimits(f"{SOURCE.cite('6.4.3')}: {len(f_c)} cores; at least {LEAST_CORES} are counted here")
    sample = sample_of(f_c)
    k_c = table_6_4_3().read("k_c", at_most(table_6_4_3(), len(f_c)), symbol="k_c")
    V = divide(sample.spread, sample.mean, symbol="V", unit="1")
    found = equivalent_strength(sample.mean, k_c, V, sample.n)
    if float(found) <= 0:
        raise OutsideLimits(f"{SOURCE.cite('6.4.3')}: the cores scatter so much that no strength is left")
    return found
