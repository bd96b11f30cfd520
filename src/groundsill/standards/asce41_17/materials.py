"""The lower bound of a strength that cores gave, and whether they scatter too much to stand for one concrete."""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.asce41_17 import SOURCE
from groundsill.standards.asce41_17.tables import table_10_2_2
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.steps import condition, divide

__all__ = ["cores_agree", "lower_bound"]

Mean = Annotated[float, Q("psi", "f_m", "mean of the cores", above=0.0)]
Spread = Annotated[float, Q("psi", "s_c", "standard deviation of the cores", at_least=0.0)]


@equation(
    "asce41-17/lower-bound",
    title="Lower-bound strength from tests",
    clause="10.2.2",
    source=SOURCE,
    how="from memory",
)
def lower_bound(f_m: Mean, s_c: Spread) -> Annotated[float, Q("psi", "f_cL", "lower-bound strength")]:
    """The mean less one standard deviation, for that standard's force-controlled actions; the mean is the expected one.

    No check here uses it: it is told beside the equivalent strengths, which allow for few cores as well. Source: ASCE
    41, definitions and 10.2.2 (from memory). 2,900 and 400 psi: 2,500 psi (our own arithmetic).
    """
    return f_m - s_c


@procedure(
    "asce41-17/cores-agree",
    title="Do cores scatter so little that they stand for one concrete?",
    clause="10.2.2.4",
    source=SOURCE,
    alias="core.agree",
)
def cores_agree(f_m: Mean, s_c: Spread) -> bool:
    """Whether the cores' coefficient of variation is within the limit beyond which the standard asks for more cores."""
    V, most = divide(s_c, f_m, symbol="V", unit="1"), table_10_2_2().read("most", symbol="V_max")
    met = float(V) <= float(most)
    condition("the cores scatter no more than the standard lets pass", met, V, most)
    return met
