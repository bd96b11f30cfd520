"""IEBC 2021 appendix chapter A1: unreinforced masonry by in-place shear tests of its mortar.

The chapter was written for buildings with bearing walls of unreinforced masonry. Used on a foundation stem its rules
are an extension, which whoever uses them there must name. Bolts in such walls stand in
:mod:`groundsill.standards.iebc_2021.masonry_bolts`.
"""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from typing import Annotated

from groundsill.standards.iebc_2021 import SOURCE
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import condition, given, least, note
from groundsill.working.table import Table
from groundsill.working.value import marks_of

__all__ = [
    "bonded_wythes",
    "lower_bound_mortar",
    "masonry_shear_strength",
    "mean_less_deviation",
    "mortar_shear",
    "mortar_tests_asked",
    "needs_pointing",
    "rocking_without_openings",
    "table_a106_2",
    "table_a108_2",
    "wall_shear",
]

_ROW = "solid units, laid in wythes"
_LB = Q("lb", "P_D", "dead load on top of the wall", at_least=0.0)

Area = Annotated[float, Q("in^2", "A_n", "area of the wall in plan, mortared", above=0.0)]
DeadLoad = Annotated[float, _LB]
Stress = Annotated[float, Q("psi", "v_to", "mortar shear test value", at_least=0.0)]
Tests = Annotated[Sequence[float], Q("psi", "v_to", "mortar shear test values", at_least=0.0)]


def table_a106_2() -> Table:
    """How many mortar tests, what they must come to, and how wythes must be bonded."""
    return Table.load(__package__, "tables/a106_2.toml")


def table_a108_2() -> Table:
    """The part of a mortar test value that is the bed joints' own, by wythes."""
    return Table.load(__package__, "tables/a108_2.toml")


def _rule(column: str, symbol: str) -> float:
    return table_a106_2().read(_ROW, column, symbol)


# ---- Mortar ---------------------------------------------------------------------------------------------------------


@equation("iebc-2021/A1-2", title="Mortar shear test value", clause="A106.2.3.6, Equation A1-2", source=SOURCE)
def mortar_shear(
    V_test: Annotated[float, Q("lb", "V_test", "load at the first movement that was seen", at_least=0.0)],
    A_b: Annotated[float, Q("in^2", "A_b", "area of the bed joints above and below the brick", above=0.0)],
    p_DL: Annotated[float, Q("psi", "p_D+L", "stress of dead and live load there at the test", at_least=0.0)],
) -> Stress:
    """Shear of a brick pushed along its two bed joints, less the friction that the load on them gave.

    ``V_test`` in lb, ``A_b`` in sq in. of both joints together, ``p_DL`` in psi; never under zero. The friction taken
    off is that of a coefficient of one. Source: IEBC appendix A1, page 105. 4,000 lb on 60 sq in. under 20 psi:
    46.7 psi (our own arithmetic).
    """
    return max(V_test / A_b - p_DL, 0.0)


@equation(
    "iebc-2021/A106.2.3.6-deviation",
    title="Lower bound of mortar tests: mean less a standard deviation",
    clause="A106.2.3.6",
    source=SOURCE,
    how="from memory",
)
def mean_less_deviation(
    v_mean: Annotated[float, Q("psi", "v_mean", "mean of the test values", at_least=0.0)],
    s: Annotated[float, Q("psi", "s", "standard deviation of the sample", at_least=0.0)],
) -> Annotated[float, Q("psi", "v_s", "mean less one standard deviation", at_least=0.0)]:
    """One of the two meanings of the lower bound that are recalled; never under zero.

    Source: from memory (IEBC appendix A1 since 2018, after ASCE 41); the sentence was cut off where the page was read.
    40 and 8 psi: 32 psi (our own arithmetic).
    """
    return max(v_mean - s, 0.0)


@procedure(
    "iebc-2021/A106.2.3.6",
    title="Lower-bound mortar shear strength",
    clause="A106.2.3.6",
    source=SOURCE,
    alias="iebc.mortar",
)
def lower_bound_mortar(values: Tests) -> float:
    """The strength, psi, that the mortar tests of one class of masonry prove, no more than the most that counts.

    Two meanings of the lower bound are recalled: the value that 80 % of the tests exceed, and the mean less one
    standard deviation. The passage was cut off where it was read, so the lesser of the two is taken.

    Args:
        values: v_to of each test, psi.

    Raises:
        OutsideLimits: for fewer than two tests, which have no spread.
    """
    tests = sorted(float(v) for v in values)
    if len(tests) < 2:
        raise OutsideLimits(f"{SOURCE.cite('A106.2.3.6')}: {len(tests)} mortar test; a lower bound needs at least 2")
    doubts = marks_of(values)
    exceed = _rule("share of tests that exceed the lower bound", "p_20")
    most = _rule("mortar strength counted, most", "v_most")
    place = max(len(tests) - math.ceil(float(exceed) * len(tests) - 1e-9) - 1, 0)
    label = f"of {len(tests)} tests, {tests[0]:.1f} to {tests[-1]:.1f} psi"
    lower = given("v_20", tests[place], "psi", f"value that 80 % exceed, {label}", doubts | marks_of((exceed,)))
    mean = given("v_mean", statistics.fmean(tests), "psi", f"mean {label}", doubts)
    spread = given("s", statistics.stdev(tests), "psi", f"standard deviation {label}", doubts)
    return least(lower, mean_less_deviation(mean, spread), most, symbol="v_tL", label="lower-bound mortar strength")


@procedure(
    "iebc-2021/A106.2.3.6-pointing",
    title="Whether a wall must be pointed and tested again",
    clause="A106.2.3.6",
    source=SOURCE,
    alias="iebc.repoint",
)
def needs_pointing(values: Tests) -> bool:
    """Whether more than half of the mortar tests of one wall come to less than 30 psi.

    Such a wall is pointed (``pointing`` of the provisions says how) and tested again before anything is counted on it.
    """
    limit = _rule("test value under which a joint is too weak", "v_weak")
    share = _rule("share of tests that may be too weak, most", "p_weak")
    weak = sum(float(v) < float(limit) for v in values)
    met = weak <= float(share) * len(values)
    words = f"no more than half of the wall's tests under {float(limit):g} psi: {weak} of {len(values)} are"
    condition(words, met, limit, *values)
    return not met


@procedure(
    "iebc-2021/A106.2.3.5",
    title="Number of mortar tests",
    clause="A106.2.3.5",
    source=SOURCE,
    alias="iebc.mortar-tests",
)
def mortar_tests_asked(
    lines: Annotated[float, Q("1", "n_l", "wall lines of the class, at the first or the top story", at_least=1.0)],
    surface: Annotated[float, Q("ft^2", "A_w", "surface of the walls of the class", at_least=0.0)],
) -> float:
    """How many in-place shear tests a class of masonry needs that stands at one story, the first or the top.

    Two in each line that resists, one for each 1,500 sq ft of wall, and eight at the least.
    """
    each = _rule("tests in a line of the first and top story, least", "n_line")
    all_of, per = _rule("tests in all, least", "n_all"), _rule("wall surface for each test, most", "A_t")
    asked = max(float(each) * float(lines), math.ceil(float(surface) / float(per) - 1e-9), float(all_of))
    note("two in each line, one for each 1,500 sq ft, eight at the least")
    return given("n_t", asked, "1", "mortar tests asked for", marks_of((each, all_of, per, lines, surface)))


# ---- Wythes ---------------------------------------------------------------------------------------------------------


@procedure(
    "iebc-2021/A106.2.2.1",
    title="Whether headers bond the wythes into one wall",
    clause="A106.2.2.1",
    source=SOURCE,
    alias="iebc.headers",
)
def bonded_wythes(
    headers: Annotated[float, Q("1", "p_h", "headers, share of the face", at_least=0.0)],
    clear: Annotated[float, Q("in", "s_h", "clear distance between headers", at_least=0.0)],
) -> bool:
    """Whether solid headers, a tenth of the face and no more than 24 in. apart, make the wythes one.

    Wythes that are not so bonded count as veneer: neither in thickness nor in shear.
    """
    share = _rule("headers, share of the face, least", "p_h,least")
    apart = _rule("clear distance between headers, most", "s_h,most")
    enough = float(headers) >= float(share) - 1e-9
    close = float(clear) <= float(apart) + 1e-9
    condition("solid headers make up at least a tenth of the face", enough, headers, share)
    condition("no more than 24 in. are clear between them", close, clear, apart)
    return enough and close


# ---- Walls ----------------------------------------------------------------------------------------------------------


@equation(
    "iebc-2021/A108.2",
    title="Shear strength of unreinforced masonry",
    clause="A108.2",
    source=SOURCE,
    how="from memory",
)
def masonry_shear_strength(
    v_tL: Annotated[float, Q("psi", "v_tL", "lower-bound mortar shear strength", at_least=0.0, at_most=100.0)],
    k: Annotated[float, Q("1", "k", "part that is the bed joints' own", above=0.0, at_most=1.0)],
    P_D: DeadLoad,
    A_n: Area,
) -> Annotated[float, Q("psi", "v_mL", "lower-bound shear strength of the masonry", at_least=0.0)]:
    """Mortar and friction together, brought from one brick down to a whole wall.

    ``k`` is 0.75 where a collar joint behind the tested brick may have helped, 1 in a wall of one wythe. Source: that
    the code has it is from memory; the form was seen as ASCE 41-13's in Advanced Design Examples of Seismic Retrofit of
    Structures, page 84, equation 2.33, with the cap of 100 psi. Earlier editions' 0.56 v_t + 0.75 P_D/A, over 1.5, is
    the same. 40 psi, 0.75, 9,000 lb on 900 sq in.: 20 psi (our own arithmetic).
    """
    return 0.75 * (k * v_tL + P_D / A_n) / 1.5


@equation("iebc-2021/A1-18", title="Shear capacity of a wall", clause="A112.2.2, Equation A1-18", source=SOURCE)
def wall_shear(
    v_mL: Annotated[float, Q("psi", "v_mL", "lower-bound shear strength of the masonry", at_least=0.0)], A_n: Area
) -> Annotated[float, Q("lb", "V_a", "shear capacity of the wall", at_least=0.0)]:
    """Strength over the mortared area in plan.

    The chapter's list of symbols still divides by 1.5, which stands in the strength already: not twice. Source:
    A112.2.2, https://up.codes/s/in-plane-shear-of-unreinforced-masonry-walls . 20 psi on 900 sq in.: 18,000 lb (our
    own arithmetic).
    """
    return v_mL * A_n


@equation(
    "iebc-2021/A1-23",
    title="Rocking of a wall without openings",
    clause="A112.2.3, Equation A1-23",
    source=SOURCE,
    witness="Advanced Design Examples of Seismic Retrofit of Structures, page 84: 5,726 kg",
)
def rocking_without_openings(
    P_D: DeadLoad,
    P_W: Annotated[float, Q("lb", "P_W", "weight of the wall", at_least=0.0)],
    D: Annotated[float, Q("ft", "D", "length of the wall", above=0.0)],
    H: Annotated[float, Q("ft", "H", "height of the wall", above=0.0)],
) -> Annotated[float, Q("lb", "V_r", "shear at which the wall rocks", at_least=0.0)]:
    """The horizontal force that tips a wall between floors, nine tenths of what its weight holds.

    It counts on a floor above that keeps the top from turning. Source: IEBC appendix A1, page 110. 10,883 and 2,864
    (kg), 0.93 by 1.80 (m): 5,726 kg, Advanced Design Examples of Seismic Retrofit of Structures, page 84.
    """
    return 0.9 * (P_D + 0.5 * P_W) * D / H
