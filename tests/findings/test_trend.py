"""What readings over time say: against NumPy and SciPy, on made-up series of known truth, and by its laws."""

from __future__ import annotations

from collections import Counter
from datetime import date

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from groundsill.findings.trend import Timed, trend_of
from tests.findings.simulated import DIVISION, STILL, readings, verdicts
from tests.proof import record


def by_numpy(told: list[Timed], heat: bool) -> tuple[float, float, int]:
    """Rate, its standard error and the degrees of freedom, by normal equations; no correction for following."""
    day = np.array([(date.fromisoformat(r.when) - date.fromisoformat(told[0].when)).days for r in told])
    start = date.fromisoformat(told[0].when).timetuple().tm_yday
    turn = 2 * np.pi * (start + day) / 365.25
    columns = [np.ones(len(told)), np.cos(turn), np.sin(turn), day / 365.25]
    if heat:  # left out where the season tells all but a tenth of it
        warm = np.array([float(r.temperature_f) for r in told])
        before = np.array(columns[:3]).T
        rest = warm - before @ np.linalg.lstsq(before, warm, rcond=None)[0]
        if np.linalg.norm(rest) > 0.1 * np.linalg.norm(warm - warm.mean()):
            columns.append(warm)
    a = np.array(columns).T
    y = np.array([r.value_in for r in told])
    inverse = np.linalg.inv(a.T @ a)
    found = inverse @ a.T @ y
    left = y - a @ found
    spare = len(told) - a.shape[1]
    return float(found[3]), float(np.sqrt(left @ left / spare * inverse[3, 3])), spare


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize("count", [9, 13, 21])
@pytest.mark.parametrize("heat", [True, False])
def test_rate_error_and_both_tests_are_numpys_and_scipys(seed, count, heat):
    """A fine gauge, so that no floor bites; the correction for following is taken out of the error."""
    told = readings(seed, count, 0.012, heat=heat)
    trend = trend_of(told, 0.0001, STILL)
    rate, error, spare = by_numpy(told, heat and count - 5 >= 3)
    assert trend.spare == max(np.floor(trend.counted) - (count - spare), 0)
    if trend.spare == 0:  # the readings follow one another so closely that they count for too few
        assert trend.moves == "too soon to tell"
        return
    assert trend.rate_in_yr == pytest.approx(rate, rel=1e-9)
    assert trend.error_in_yr == pytest.approx(error * np.sqrt(count / trend.counted), rel=1e-9)
    error, spare = trend.error_in_yr, trend.spare
    nothing = 2 * stats.t.sf(abs(rate) / error, spare)
    same = max(stats.t.sf((rate + STILL) / error, spare), stats.t.cdf((rate - STILL) / error, spare))
    expected = "not moving" if same <= 0.05 else "moving" if nothing < 0.05 else "too soon to tell"
    assert trend.moves == expected
    assert trend.interval_in_yr == pytest.approx(stats.t.interval(0.95, spare, rate, error), rel=1e-8)


def test_a_steady_crack_with_a_large_season_lies_still():
    trend = trend_of(readings(3, 21, 0.0, season=0.05), DIVISION, STILL)
    assert trend.moves == "not moving"
    assert trend.season_in == pytest.approx(0.05, abs=0.01)
    assert (trend.next, trend.answer_by) == ("", "")


def test_a_crack_that_opens_is_told_from_its_season():
    trend = trend_of(readings(3, 21, 0.03, season=0.05), DIVISION, STILL)
    assert trend.moves == "moving"
    low, high = trend.interval_in_yr
    assert low < 0.03 < high


def test_before_a_year_is_full_it_is_too_soon_however_much_it_moved():
    trend = trend_of(readings(1, 4, 0.5), DIVISION, STILL)
    assert trend.moves == "too soon to tell"
    assert not trend.full_year
    assert trend.rate_in_yr is None
    assert trend.next > trend.readings[-1].when
    assert date.fromisoformat(trend.answer_by) >= date.fromisoformat(trend.readings[0].when).replace(year=2021)


def test_many_readings_within_half_a_year_are_too_soon():
    told = [Timed(f"2025-0{1 + i // 20}-{1 + i % 20:02d}", 0.2 + 0.0005 * i) for i in range(100)]
    assert trend_of(told, 0.001, STILL).moves == "too soon to tell"


def test_readings_all_alike_are_no_sure_thing_for_a_coarse_gauge():
    """A gauge read to 1/2 in. that shows one figure for 15 months tells nothing of a hundredth a year."""
    told = [Timed(when, 0.5) for when in ("2024-01-10", "2024-04-10", "2024-07-10", "2024-10-10", "2025-01-10",
                                          "2025-04-10")]  # fmt: skip
    trend = trend_of(told, 0.5, STILL)
    assert trend.moves == "too soon to tell"
    assert trend.spread_in == pytest.approx(0.5 / 12**0.5)


def test_a_gauge_too_coarse_ever_to_tell_says_so():
    told = [Timed(when, 0.5) for when in ("2024-01-10", "2024-04-10", "2024-07-10")]
    assert trend_of(told, 5.0, STILL).answer_by == ""


def test_readings_twice_a_year_still_part_season_and_rate():
    told = [
        Timed(f"{year}-{month:02d}-14", 0.2 + season + 0.02 * (year + month / 12 - 2020))
        for year in range(2020, 2026)
        for month, season in ((2, 0.01), (8, -0.01))
    ]
    trend = trend_of(told, 0.001, STILL)
    assert trend.rate_in_yr == pytest.approx(0.02, abs=5e-4)
    assert trend.moves == "moving"


def test_no_reading_no_trend():
    assert trend_of([], DIVISION, STILL) is None


dated = st.lists(
    st.tuples(st.dates(date(2015, 1, 1), date(2026, 1, 1)), st.floats(-10, 10), st.none() | st.floats(-40, 120)),
    min_size=1, max_size=30,
)  # fmt: skip


@given(dated, st.sampled_from([0.001, 0.02, 0.0625]))
def test_any_readings_have_an_answer(rows, division):
    told = [Timed(when.isoformat(), value, warm) for when, value, warm in rows]
    trend = trend_of(told, division, STILL)
    assert (trend.next == "") == (trend.moves != "too soon to tell")
    if trend.moves != "too soon to tell":
        assert trend.full_year
        assert len(told) >= 5
        assert trend.spare >= 1
    assert trend.spread_in >= division / 12**0.5 - 1e-15


@given(st.integers(0, 500), st.sampled_from([9, 13, 21]), st.floats(-0.05, 0.05), st.floats(-3, 3))
def test_zero_of_the_scale_and_direction_do_not_matter(seed, count, rate, shift):
    told = readings(seed, count, rate)
    one = trend_of(told, DIVISION, STILL)
    moved = trend_of([Timed(r.when, r.value_in + shift, r.temperature_f) for r in told], DIVISION, STILL)
    turned = trend_of([Timed(r.when, -r.value_in, r.temperature_f) for r in told], DIVISION, STILL)
    assert one.moves == moved.moves == turned.moves
    if one.rate_in_yr is None:
        assert moved.rate_in_yr is turned.rate_in_yr is None
        return
    assert one.rate_in_yr == pytest.approx(moved.rate_in_yr, abs=1e-9)
    assert one.rate_in_yr == pytest.approx(-turned.rate_in_yr, abs=1e-12)


@given(st.integers(0, 500), st.sampled_from([9, 13, 21]), st.floats(-0.05, 0.05))
def test_a_coarser_gauge_never_makes_surer(seed, count, rate):
    told = readings(seed, count, rate)
    fine, coarse = trend_of(told, 0.005, STILL), trend_of(told, 0.2, STILL)
    assert coarse.spread_in >= fine.spread_in
    if fine.moves == "too soon to tell":
        assert coarse.moves == "too soon to tell"


@given(st.integers(0, 200), st.floats(0.02, 0.2), st.floats(1.0, 5.0))
def test_faster_never_reads_as_stiller(seed, rate, times):
    """Adding a steady rate to the same readings never turns moving into not moving."""
    slow = trend_of(readings(seed, 21, 0.0), DIVISION, STILL)
    years = [(date.fromisoformat(r.when) - date(2020, 11, 14)).days / 365.25 for r in slow.readings]
    add = [Timed(r.when, r.value_in + rate * y, r.temperature_f) for r, y in zip(slow.readings, years, strict=True)]
    more = [Timed(r.when, r.value_in + rate * times * y, r.temperature_f)
            for r, y in zip(slow.readings, years, strict=True)]  # fmt: skip
    if trend_of(add, DIVISION, STILL).moves == "moving":
        assert trend_of(more, DIVISION, STILL).moves == "moving"


@pytest.mark.parametrize("follow", [0.0, 0.3])
def test_false_alarms_and_misses_over_a_few_seeds(follow):
    """Five years, once a season. A twentieth may be wrong; 80 seeds may show up to 9 by chance (binomial, 0.5 %)."""
    assert verdicts(range(80), 21, 0.0, follow=follow)["moving"] <= 9
    at_limit = verdicts(range(80), 21, STILL, follow=follow)
    assert at_limit["not moving"] <= (9 if not follow else 13)
    mover = verdicts(range(80), 21, 0.03, follow=follow)
    assert mover["not moving"] == 0
    assert mover["moving"] >= 75


@pytest.mark.proof
@pytest.mark.parametrize("count", [7, 9, 13, 21])
def test_false_alarms_and_misses_over_many_seeds(count):
    """Two thousand gauges of each kind, scatter on its own: neither error comes more often than the tests allow."""
    seeds = range(2000)
    still, limit, mover = (verdicts(seeds, count, rate) for rate in (0.0, STILL, 2 * STILL))
    allowed = stats.binom.ppf(0.999, 2000, 0.05)
    assert still["moving"] <= allowed
    assert limit["not moving"] <= allowed
    assert mover["not moving"] <= 2
    record(
        f"monitor verdicts, {count} readings a season apart",
        f"of 2000 each: still {told(still)}; at the stated rate {told(limit)}; at twice it {told(mover)}",
    )


@pytest.mark.proof
def test_looking_again_each_season_raises_few_alarms():
    """A gauge that lies still, asked again at every reading from the fifth to the twenty-first until it answers."""
    first: Counter[str] = Counter()
    for seed in range(1000):
        every = readings(seed, 21, 0.0)
        said = (trend_of(every[:n], DIVISION, STILL).moves for n in range(5, 22))
        first[next((moves for moves in said if moves != "too soon to tell"), "too soon to tell")] += 1
    assert first["moving"] <= 120
    record("monitor asked again each season, lying still", f"first answer of 1000: {told(first)}")


def told(found: Counter[str]) -> str:
    return ", ".join(f"{found[name]} {name}" for name in ("moving", "not moving", "too soon to tell"))
