"""Cores of old concrete: corrections, samples, equivalent strengths; every printed factor held to its distribution."""

from __future__ import annotations

from math import sqrt
from statistics import fmean, stdev

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import nct, norm, t

from groundsill.standards.aci214_4r_10.cores import (
    equivalent_by_tolerance,
    length_factor,
    sample_of,
    strength_in_place,
    tolerance_limit,
)
from groundsill.standards.aci214_4r_10.tables import table_9_1_diameter, table_9_1_moisture, table_9_2, table_9_3
from groundsill.standards.aci562_19.cores import equivalent_of_cores, equivalent_strength
from groundsill.standards.aci562_19.tables import table_6_4_3
from groundsill.standards.asce41_17.materials import cores_agree, lower_bound
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet
from groundsill.working.value import marks_of

strengths = st.floats(800.0, 6000.0)
samples = st.lists(strengths, min_size=3, max_size=40)
CONFIDENCE = {"75 %": 0.75, "90 %": 0.90, "95 %": 0.95}


def tolerance_factor(n: int, confidence: float, part: float = 0.9) -> float:
    """One-sided tolerance factor of a normal sample, by the noncentral t distribution."""
    return float(nct.ppf(confidence, n - 1, norm.ppf(part) * sqrt(n)) / sqrt(n))


# --- printed factors, cell by cell ------------------------------------------------------------------------------------


def test_the_distribution_gives_a_tolerance_factor_printed_by_others() -> None:
    """NIST/SEMATECH handbook 7.2.6.3: 43 wafers, nine tenths, 99 % sure: k = 1.8752 (read at scribd.com 471866375).

    The handbook prints the value of an approximation, which the distribution meets to 0.0013.
    """
    assert tolerance_factor(43, 0.99) == pytest.approx(1.8752, abs=0.002)


@pytest.mark.parametrize("confidence", CONFIDENCE)
def test_every_tolerance_factor_is_that_of_the_noncentral_t_distribution(confidence: str) -> None:
    for n in table_9_2().columns:
        printed = table_9_2().read(confidence, n)
        assert printed == pytest.approx(tolerance_factor(int(n), CONFIDENCE[confidence]), abs=0.003), n


@pytest.mark.parametrize("confidence", CONFIDENCE)
def test_every_factor_for_the_corrections_is_that_of_the_normal_distribution(confidence: str) -> None:
    assert table_9_3().read(confidence) == pytest.approx(norm.ppf(CONFIDENCE[confidence]), abs=0.006)


def test_every_modification_factor_is_students_t_over_the_normal_deviate_of_a_tenth() -> None:
    for n in table_6_4_3().columns:
        wanted = t.ppf(0.9, int(n) - 1) / norm.ppf(0.9)
        assert table_6_4_3().read("k_c", n) == pytest.approx(wanted, abs=0.01), n


def test_more_cores_never_raise_a_factor() -> None:
    for row in CONFIDENCE:
        factors = [table_9_2().read(row, n) for n in table_9_2().columns]
        assert factors == sorted(factors, reverse=True)
    k_c = [table_6_4_3().read("k_c", n) for n in table_6_4_3().columns]
    assert k_c == sorted(k_c, reverse=True)
    assert min(k_c) >= 1


# --- one core ---------------------------------------------------------------------------------------------------------


def test_a_standard_core_twice_as_long_as_wide_stands_for_its_own_strength() -> None:
    assert strength_in_place(3000.0, 4.0, 8.0, damage=False) == pytest.approx(3000.0)
    assert strength_in_place(3000.0, 4.0, 8.0) == pytest.approx(3180.0)


def test_a_core_as_long_as_wide_loses_an_eighth() -> None:
    """1 - (0.130 - 3e-6 3,000) = 0.879."""
    assert strength_in_place(3000.0, 4.0, 4.0, damage=False) == pytest.approx(0.879 * 3000)


def test_a_core_a_little_longer_than_two_diameters_counts_as_two() -> None:
    assert strength_in_place(3000.0, 4.0, 8.4, damage=False) == pytest.approx(3000.0)


@pytest.mark.parametrize(
    ("d", "l", "message"),
    [
        (4.0, 3.0, r"must be at least 1"),
        (4.0, 9.0, r"l/d = 2\.25; must be at most 2\.1: it is sawn off"),
        (4.0, None, r"the length of the core is not known, nor is it corrected for"),
        (1.5, 3.0, r"diameter = 1\.5 lies outside the table \(2 to 6\)"),
        (8.0, 16.0, r"diameter = 8 lies outside the table \(2 to 6\)"),
    ],
)
def test_a_core_of_other_proportions_is_refused(d: float, l: float | None, message: str) -> None:  # noqa: E741
    with pytest.raises(OutsideLimits, match=message):
        strength_in_place(3000.0, d, l)


def test_a_core_kept_otherwise_than_the_table_says_is_refused() -> None:
    with pytest.raises(OutsideLimits, match=r"no row 'frozen'.*as received, soaked, dried"):
        strength_in_place(3000.0, 4.0, 8.0, "frozen")


def test_a_laboratory_that_corrected_for_length_is_not_corrected_again() -> None:
    assert strength_in_place(3000.0, 4.0, 4.0, corrected=True, damage=False) == pytest.approx(3000.0)
    assert strength_in_place(3000.0, 4.0, None, corrected=True, damage=False) == pytest.approx(3000.0)


def test_a_soaked_core_stands_for_more_and_a_dried_one_for_less() -> None:
    soaked, as_received, dried = (
        strength_in_place(3000.0, 4.0, 8.0, kept) for kept in ("soaked", "as received", "dried")
    )
    assert soaked > as_received > dried


@given(strengths, st.floats(1.0, 2.0), st.floats(0.0, 1.0))
def test_a_longer_core_never_stands_for_less(f_core: float, ratio: float, more: float) -> None:
    longer = min(ratio + more, 2.0)
    assert length_factor(0.13, 3e-6, f_core, longer) >= length_factor(0.13, 3e-6, f_core, ratio)
    assert 0.8 < length_factor(0.144, 3e-6, f_core, ratio) <= 1.0


@given(strengths, strengths)
def test_a_core_that_broke_later_stands_for_more(one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert strength_in_place(low, 3.0, 4.0) <= strength_in_place(high, 3.0, 4.0)


def test_the_tables_hold_what_their_corrections_begin_and_end_with() -> None:
    assert [table_9_1_diameter().interpolate("factor", d) for d in (2, 3, 4, 5, 6)] == pytest.approx(
        [1.06, 1.03, 1.0, 0.99, 0.98]
    )
    assert {row: table_9_1_moisture().read(row, "factor") for row in table_9_1_moisture().rows} == {
        "as received": 1.0, "soaked": 1.09, "dried": 0.96,
    }  # fmt: skip


# --- samples and equivalent strengths ---------------------------------------------------------------------------------


@given(samples)
def test_mean_and_spread_are_those_of_the_statistics_library(cores: list[float]) -> None:
    sample = sample_of(cores)
    assert sample.mean == pytest.approx(fmean(cores))
    assert sample.spread == pytest.approx(stdev(cores), abs=1e-6)


def test_one_core_has_no_spread() -> None:
    with pytest.raises(OutsideLimits, match=r"1 core; a spread needs at least two"):
        sample_of([3000.0])


@pytest.mark.parametrize("count", [1, 2])
def test_fewer_than_three_cores_give_no_equivalent_strength(count: int) -> None:
    with pytest.raises(OutsideLimits, match=rf"{count} cores; at least 3 are counted here"):
        equivalent_of_cores([3000.0] * count)
    with pytest.raises(OutsideLimits, match=rf"{count} cores; the factors begin with 3"):
        equivalent_by_tolerance([3000.0] * count, 4.0, 2.0)


def test_three_cores_by_both_methods_worked_by_hand() -> None:
    """2,500, 2,900 and 3,300 psi: mean 2,900, s = 400, V = 0.1379.

    By the code 0.9 x 2,900 (1 - 1.28 sqrt((1.47 x 0.1379)^2 / 3 + 0.0015)); by the guide, l/d = 2 and 4 in.,
    s_a = 2,900 sqrt(0.025^2 + 0.025^2) = 102.5 and 2,900 - sqrt((2.501 x 400)^2 + (0.67 x 102.5)^2).
    """
    cores = [3300.0, 2500.0, 2900.0]
    assert equivalent_of_cores(cores) == pytest.approx(2198.1, abs=0.1)
    assert equivalent_by_tolerance(cores, 4.0, 2.0) == pytest.approx(1897.2, abs=0.1)


def test_cores_that_scatter_too_much_leave_no_strength() -> None:
    with pytest.raises(OutsideLimits, match="scatter so much that no strength is left"):
        equivalent_by_tolerance([800.0, 3000.0, 6000.0], 4.0, 2.0)


@given(samples, st.randoms(use_true_random=False))
def test_the_order_of_cores_does_not_matter(cores: list[float], random: object) -> None:
    shuffled = list(cores)
    random.shuffle(shuffled)  # type: ignore[attr-defined]
    for method in (equivalent_of_cores, lambda found: equivalent_by_tolerance(found, 4.0, 2.0)):
        try:
            first = method(cores)
        except OutsideLimits:
            continue
        assert method(shuffled) == first


@given(strengths, st.integers(3, 40), st.floats(0.0, 0.4), st.floats(0.0, 0.2))
def test_more_scatter_never_raises_the_strength(mean: float, n: int, V: float, more: float) -> None:
    assert equivalent_strength(mean, 1.2, V + more, float(n)) <= equivalent_strength(mean, 1.2, V, float(n))
    assert tolerance_limit(mean, 2.0, (V + more) * mean, 0.67, 50.0) <= tolerance_limit(mean, 2.0, V * mean, 0.67, 50.0)


@given(strengths, st.floats(0.0, 0.3), st.integers(3, 25), st.integers(0, 15))
def test_more_cores_of_one_mean_and_spread_never_lower_the_strength(mean: float, V: float, n: int, more: int) -> None:
    def k_c(count: int) -> float:
        return table_6_4_3().read("k_c", max(c for c in table_6_4_3().columns if float(c) <= count))

    first, second = (equivalent_strength(mean, k_c(count), V, float(count)) for count in (n, n + more))
    assert second >= first


@given(samples)
def test_an_equivalent_strength_is_below_the_mean_and_scales_with_the_cores(cores: list[float]) -> None:
    try:
        found = equivalent_of_cores(cores)
    except OutsideLimits:
        return
    assert 0 < found < 0.9 * fmean(cores)
    assert equivalent_of_cores([2 * core for core in cores]) == pytest.approx(2 * found)


@given(samples, st.sampled_from(["75 %", "90 %"]))
def test_more_confidence_never_raises_the_strength(cores: list[float], confidence: str) -> None:
    surer = {"75 %": "90 %", "90 %": "95 %"}[confidence]
    try:
        found = equivalent_by_tolerance(cores, 4.0, 2.0, surer)
    except OutsideLimits:
        return
    assert found <= equivalent_by_tolerance(cores, 4.0, 2.0, confidence)


def test_seven_cores_take_the_printed_factor_of_six() -> None:
    with Sheet() as sheet:
        equivalent_of_cores([3000.0, 2900.0, 3100.0, 2950.0, 3050.0, 3000.0, 3020.0])
    assert any("prints no factor for 7 cores: that of 6 is taken" in step.title for step in sheet.steps)


def test_what_was_recalled_marks_the_strength() -> None:
    with Sheet():
        found = equivalent_by_tolerance([2500.0, 2900.0, 3300.0], 4.0, 2.0)
    told = {mark.what for mark in marks_of((found,)) if mark.kind == "from memory"}
    assert "ACI 214.4R-10 Table 9.2: 75 %, 3" in told
    assert "ACI 214.4R-10 Eq. (9-6), the equation" in told


# --- scatter ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("spread", "agree"), [(0.0, True), (600.0, True), (601.0, False)])
def test_cores_agree_up_to_a_fifth_of_their_mean(spread: float, agree: bool) -> None:
    assert cores_agree(3000.0, spread) is agree


@given(samples)
def test_the_lower_bound_is_one_standard_deviation_below_the_mean(cores: list[float]) -> None:
    sample = sample_of(cores)
    assert lower_bound(sample.mean, sample.spread) == pytest.approx(fmean(cores) - stdev(cores), abs=1e-6)
