"""From the strengths at which cores broke to the strength of the concrete they came from (ACI 214.4R-10 chapter 9).

A core is corrected for its proportions, its diameter, how it was kept and the drilling; several make a sample with a
mean and a spread; the tolerance factor takes off what a few cores leave in doubt.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt
from typing import Annotated

from groundsill.standards.aci214_4r_10 import SOURCE
from groundsill.standards.aci214_4r_10.tables import (
    table_9_1_alpha,
    table_9_1_diameter,
    table_9_1_moisture,
    table_9_1_other,
    table_9_2,
    table_9_3,
)
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import add, divide, given, note, resultant, scale, subtract
from groundsill.working.table import Table

__all__ = [
    "LEAST_CORES", "Sample", "at_most", "correction_scatter", "equivalent_by_tolerance", "in_place_strength",
    "length_factor", "sample_of", "strength_in_place", "tolerance_limit",
]  # fmt: skip

LEAST_CORES = 3  # the tolerance factors begin with three

Broke = Annotated[float, Q("psi", "f_core", "strength at which the core broke", above=0.0)]
Diameter = Annotated[float, Q("in", "d", "diameter of the core", above=0.0)]
Length = Annotated[float, Q("in", "l", "length of the core as tested, caps included", above=0.0)]
Slender = Annotated[float, Q("1", "l/d", "length of the core over its diameter", at_least=1.0, at_most=2.0)]
InPlace = Annotated[float, Q("psi", "f_c", "strength of the concrete in place", above=0.0)]
Mean = Annotated[float, Q("psi", "f_m", "mean of the cores, corrected", above=0.0)]
Spread = Annotated[float, Q("psi", "s_c", "standard deviation of the cores", at_least=0.0)]
Scatter = Annotated[float, Q("psi", "s_a", "scatter of the corrections", at_least=0.0)]

_MOST_SLENDER = 2.0
_SLENDER_ENOUGH = 2.1  # a core up to this is tested as it is; a longer one is sawn off first (ASTM C42, from memory)


@dataclass(frozen=True, slots=True)
class Sample:
    """Cores of one concrete: how many, their mean and standard deviation, psi."""

    n: float
    mean: float
    spread: float


@equation(
    "aci214-4r-10/9.1-length",
    title="Correction for length over diameter of a core",
    clause="Table 9.1",
    source=SOURCE,
    how="from memory",
)
def length_factor(
    beta: Annotated[float, Q("1", "β", "coefficient by how the core was kept", at_least=0.0)],
    alpha: Annotated[float, Q("1/psi", "α", "how the correction fades with strength", at_least=0.0)],
    f_core: Broke,
    ratio: Slender,
) -> Annotated[float, Q("1", "F_l/d", "correction for length")]:
    """A short core breaks late, so its strength is reduced: 1 - (β - α f_core)(2 - l/d)^2, never raised.

    For lengths of one to two diameters. Source: ACI 214.4R-10 Table 9.1, after Bartlett and MacGregor (from memory).
    3,000 psi as received, l/d = 1: 1 - (0.130 - 0.009) = 0.879 (our own arithmetic).
    """
    return 1 - max(beta - alpha * f_core, 0.0) * (2 - ratio) ** 2


@equation("aci214-4r-10/9-1", title="Strength of the concrete where a core came from", clause="Eq. (9-1)",
          source=SOURCE, how="from memory")  # fmt: skip
def in_place_strength(
    f_core: Broke,
    F_ld: Annotated[float, Q("1", "F_l/d", "correction for length", above=0.0)],
    F_dia: Annotated[float, Q("1", "F_dia", "correction for diameter", above=0.0)],
    F_mc: Annotated[float, Q("1", "F_mc", "correction for moisture", above=0.0)],
    F_d: Annotated[float, Q("1", "F_d", "correction for damage by drilling", above=0.0)],
) -> Annotated[float, Q("psi", "f_c", "strength in place")]:
    """The strength at which the core broke, times its four corrections.

    Source: ACI 214.4R-10 Eq. (9-1), from memory. 3,000 psi, 0.879, 1, 1, 1.06: 2,795 psi (our own arithmetic).
    """
    return f_core * F_ld * F_dia * F_mc * F_d


@equation("aci214-4r-10/9-4", title="Scatter that the corrections bring", clause="Eq. (9-4)",
          source=SOURCE, how="from memory")  # fmt: skip
def correction_scatter(
    f_m: Mean,
    V_ld: Annotated[float, Q("1", "V_l/d", "coefficient of variation of the correction for length", at_least=0.0)],
    V_dia: Annotated[float, Q("1", "V_dia", "the same for diameter", at_least=0.0)],
    V_mc: Annotated[float, Q("1", "V_mc", "the same for moisture", at_least=0.0)],
    V_d: Annotated[float, Q("1", "V_d", "the same for damage", at_least=0.0)],
) -> Annotated[float, Q("psi", "s_a", "scatter of the corrections")]:
    """The mean times the root of the sum of squares of the four coefficients of variation, taken as fractions.

    Source: ACI 214.4R-10 Eq. (9-4), from memory; that it holds these four is read at eng-tips.com thread 429375.
    3,000 psi, 0.025, 0, 0.025, 0.025: 130 psi (our own arithmetic).
    """
    return f_m * sqrt(V_ld**2 + V_dia**2 + V_mc**2 + V_d**2)


@equation("aci214-4r-10/9-6", title="Equivalent specified strength by the tolerance factor", clause="Eq. (9-6)",
          source=SOURCE, how="from memory")  # fmt: skip
def tolerance_limit(
    f_m: Mean,
    K: Annotated[float, Q("1", "K", "tolerance factor", above=0.0)],
    s_c: Spread,
    Z: Annotated[float, Q("1", "Z", "factor for the scatter of the corrections", above=0.0)],
    s_a: Scatter,
) -> Annotated[float, Q("psi", "f'_c,eq", "equivalent specified strength")]:
    """The mean less the root of the sum of squares of K s_c and Z s_a. It may fall below zero: then none is left.

    Source: ACI 214.4R-10 Eq. (9-6), from memory. 3,000 psi, 2.501, 300, 0.67, 130: 2,245 psi (our own arithmetic).
    """
    return f_m - sqrt((K * s_c) ** 2 + (Z * s_a) ** 2)


@procedure(
    "aci214-4r-10/core",
    title="Strength of the concrete in place, by one core",
    clause="9.1",
    source=SOURCE,
    alias="core.strength",
)
def strength_in_place(
    f_core: Broke,
    d: Diameter,
    l: Length | None,  # noqa: E741 - the document's own symbol
    moisture: str = "as received",
    corrected: bool = False,
    damage: bool = True,
) -> float:
    """The strength in place that one core stands for, psi.

    Args:
        f_core: strength at which it broke.
        d: its diameter, 2 to 6 in.
        l: its length as tested; may be unknown when the laboratory has corrected for it.
        moisture: how it was kept before the test: ``"as received"``, ``"soaked"`` (48 hours in water) or ``"dried"``.
        corrected: whether the laboratory has already corrected the strength for length.
        damage: whether the correction for damage by drilling is counted.

    Raises:
        OutsideLimits: a core shorter than its diameter or longer than 2.1 diameters, or one of another diameter.
    """
    by_moisture = table_9_1_moisture()
    if corrected:
        F_ld = given("F_l/d", 1.0, "1", "the laboratory has corrected it for its length")
    else:
        ratio = _slender(d, l)
        beta = by_moisture.read(moisture, "length coefficient", symbol="β")
        F_ld = length_factor(beta, table_9_1_alpha().read("α", symbol="α"), f_core, ratio)
    F_dia = table_9_1_diameter().interpolate("factor", d, symbol="F_dia")
    F_mc = by_moisture.read(moisture, "factor", symbol="F_mc")
    if damage:
        F_d = table_9_1_other().read("damage", "factor", symbol="F_d")
    else:
        F_d = given("F_d", 1.0, "1", "damage by drilling is left out, on the low side")
    return in_place_strength(f_core, F_ld, F_dia, F_mc, F_d)


def _slender(d: float, l: float | None) -> float:  # noqa: E741
    """Length over diameter; a core a little longer than two diameters counts as two."""
    if l is None:
        raise OutsideLimits(f"{SOURCE.cite('Table 9.1')}: the length of the core is not known, nor is it corrected for")
    ratio = divide(l, d, symbol="l/d", unit="1")
    if float(ratio) > _SLENDER_ENOUGH:
        raise OutsideLimits(
            f"{SOURCE.cite('Table 9.1')}: l/d = {float(ratio):.3g}; must be at most {_SLENDER_ENOUGH:g}: it is sawn off"
        )
    if float(ratio) > _MOST_SLENDER:
        return given("l/d", _MOST_SLENDER, "1", "up to 2.1 diameters long counts as two")
    return ratio


@procedure("aci214-4r-10/sample", title="Mean and spread of cores", clause="Eq. (9-2), (9-3)", source=SOURCE)
def sample_of(f_c: Sequence[float]) -> Sample:
    """How many cores there are, their mean and their standard deviation, psi; their order does not matter.

    Raises:
        OutsideLimits: fewer than two.
    """
    cores = sorted(f_c, key=float)
    if len(cores) < 2:
        raise OutsideLimits(f"{SOURCE.cite('Eq. (9-3)')}: {len(cores)} core; a spread needs at least two")
    n = given("n", float(len(cores)), "1", "number of cores")
    mean = scale(add(*cores, symbol="Σ f_c", unit="psi"), 1 / len(cores), symbol="f_m", label="mean")
    whole = subtract(cores[0], mean, symbol="δ")
    for core in cores[1:]:
        whole = resultant(whole, subtract(core, mean, symbol="δ"), symbol="√Σδ^2")
    spread = scale(whole, 1 / sqrt(len(cores) - 1), symbol="s_c", label="standard deviation of a sample")
    return Sample(n, mean, spread)


@procedure(
    "aci214-4r-10/tolerance",
    title="Equivalent specified strength of cores, by tolerance factors",
    clause="9.4",
    source=SOURCE,
    alias="core.tolerance",
)
def equivalent_by_tolerance(f_c: Sequence[float], d: Diameter, ratio: Slender, confidence: str = "75 %") -> float:
    """The strength that nine tenths of the concrete reach, psi, with the confidence asked for: 75 % for ordinary use.

    Args:
        f_c: strengths in place, core by core, psi; at least three.
        d: the diameter that scatters most, in.: the least of the cores'.
        ratio: the least length over diameter of the cores.
        confidence: ``"75 %"``, ``"90 %"`` or ``"95 %"``.

    Raises:
        OutsideLimits: fewer than three cores, or so scattered that no strength is left.
    """
    if len(f_c) < LEAST_CORES:
        raise OutsideLimits(f"{SOURCE.cite('Table 9.2')}: {len(f_c)} cores; the factors begin with {LEAST_CORES}")
    sample, other = sample_of(f_c), table_9_1_other()
    K = table_9_2().read(confidence, at_most(table_9_2(), len(f_c)), symbol="K")
    V_ld = scale(
        other.read("length", "scatter", symbol="V"), (2 - float(ratio)) ** 2, symbol="V_l/d", label="times (2 - l/d)^2"
    )
    s_a = correction_scatter(
        sample.mean,
        V_ld,
        table_9_1_diameter().interpolate("scatter", d, symbol="V_dia"),
        other.read("moisture", "scatter", symbol="V_mc"),
        other.read("damage", "scatter", symbol="V_d"),
    )
    found = tolerance_limit(sample.mean, K, sample.spread, table_9_3().read(confidence, symbol="Z"), s_a)
    if float(found) <= 0:
        raise OutsideLimits(f"{SOURCE.cite('Eq. (9-6)')}: the cores scatter so much that no strength is left")
    return found


def at_most(table: Table, n: int) -> float:
    """The greatest printed number of cores that is no more than those there are: fewer cores are less certain."""
    found = max(float(column) for column in table.columns if float(column) <= n)
    if found < n:
        note(f"{table.cite} prints no factor for {n} cores: that of {found:g} is taken")
    return found
