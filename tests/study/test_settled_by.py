"""The tests that would settle a line: thresholds found again by entering the cores, and where to drill them."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from statistics import fmean, stdev

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.house.cores import evidence_of
from groundsill.house.fact import Fact, measured, unknown
from groundsill.house.foundation import FoundationTest
from groundsill.loadpath.chain import Link
from groundsill.study import Run, Study, run
from groundsill.study.settled_by import FORESEEN, LEAST_PSI, STEP_PSI, core_places, wanted_mean
from groundsill.study.strength import SettlingTest
from groundsill.work.document import House
from tests.loadpath.asking import run_named
from tests.loadpath.houses import about, known_house

LINE, STATE = "line1", "strengthen"


@cache
def unsettled_house() -> House:
    """The known house with the concrete under one line known only by its age, and no core in it."""
    house = known_house()
    base = house.survey.foundation
    segments = dict(base.segments)
    segments["fs1"] = replace(segments["fs1"], strength_psi=unknown(), year=measured(1912.0))
    tests = {id: t for id, t in base.tests.items() if t.segment != "fs1"}
    foundation = replace(base, segments=segments, tests=tests)
    return replace(house, survey=replace(house.survey, foundation=foundation))


def with_strength(house: House, psi: float, segment: str = "fs1") -> House:
    """The house as it would be had cores given a stretch this strength: the fact stated, and a core on record."""
    base = house.survey.foundation
    segments = base.segments | {segment: replace(base.segments[segment], strength_psi=measured(psi))}
    core = FoundationTest(segment=segment, station_in=20.0, kind="core", result=psi, unit="psi", by="lab")
    foundation = replace(base, segments=segments, tests=base.tests | {"new-core": core})
    return replace(house, survey=replace(house.survey, foundation=foundation))


@cache
def study_of_it() -> Study:
    return run(unsettled_house())


def asked(study: Study, key: str = STATE, line: str = LINE) -> SettlingTest:
    (found,) = [test for test in run_named(study, key).settled_by if test.line == line]
    return found


def link_at(found: Run, address: str) -> Link:
    (link,) = [link for chain in found.chains for link in chain.links if link.address == address]
    return link


# --- thresholds -------------------------------------------------------------------------------------------------------


def test_a_line_on_untested_concrete_asks_for_three_cores_in_it() -> None:
    found = asked(study_of_it())
    (site,) = found.sites
    assert (site.stretches, site.on_record, site.wanted) == (("F1",), 0, 3)
    assert len(site.places) == 3
    assert found.anchor_lb is not None


def test_lines_on_cored_concrete_ask_for_nothing() -> None:
    found = {test.line for each in study_of_it().runs for test in each.settled_by}
    assert found == {LINE}
    assert all(not each.settled_by for each in run(known_house()).runs)


def test_every_threshold_is_where_the_check_turns_when_the_cores_are_entered() -> None:
    """The whole study is run again with the strength entered, just at each threshold and one step below."""
    turned = 0
    for threshold in asked(study_of_it()).thresholds:
        for at, good in ((threshold.holds_at, ("passes", "indicated")), (threshold.passes_at, ("passes",))):
            if at is None:
                continue
            there = link_at(run_named(run(with_strength(unsettled_house(), at)), STATE), threshold.link)
            assert there.verdict in good, threshold
            if at > LEAST_PSI:
                below = run_named(run(with_strength(unsettled_house(), at - STEP_PSI)), STATE)
                assert link_at(below, threshold.link).verdict not in good, threshold
                turned += 1
    assert turned >= 2


def test_an_unsettled_link_indicated_for_its_concrete_passes_from_2500_psi_on() -> None:
    found = asked(study_of_it())
    assert found.needs_psi == 2500.0
    assert found.holds_psi is not None
    assert found.holds_psi < 2500.0
    assert found.highest_psi == 2500.0


def test_what_no_strength_lifts_says_by_what_it_stays_indicated() -> None:
    """An expansion anchor without its report stays indicated whatever the concrete is."""
    house = unsettled_house()
    alternative = house.alternatives[STATE]
    pieces = {
        id: replace(piece, anchor="adhesive", report="") if id.startswith("nb-line1") else piece
        for id, piece in alternative.pieces.items()
    }
    house = replace(house, alternatives=house.alternatives | {STATE: replace(alternative, pieces=pieces)})
    found = asked(run(house))
    stuck = [t for t in found.thresholds if t.passes_at is None and t.holds_at is not None]
    assert stuck
    assert all("without its evaluation report" in t.beyond for t in stuck)


def of_weight(low: float, best: float, high: float) -> House:
    """The unsettled house with every layer of its walls, floor and roof of doubtful weight, psf."""
    house = unsettled_house()
    building = house.survey.building
    assemblies = {
        id: replace(a, layers=tuple(replace(layer, psf=about(best, low, high)) for layer in a.layers))
        for id, a in building.assemblies.items()
    }
    return replace(house, survey=replace(house.survey, building=replace(building, assemblies=assemblies)))


def test_thresholds_stand_on_the_worse_end_of_every_other_fact() -> None:
    """A house that may be heavier asks more of the bolts: the strength that holds is higher than at its best weight."""
    doubtful = asked(run(of_weight(8.0, 10.0, 13.0)))
    sure = asked(run(of_weight(10.0, 10.0, 10.0)))
    assert all(threshold.at_worst for threshold in doubtful.thresholds)
    assert doubtful.holds_psi is not None
    assert sure.holds_psi is not None
    assert doubtful.holds_psi > sure.holds_psi


def test_where_no_strength_is_enough_at_the_worse_end_the_best_is_told_and_said_to_be() -> None:
    doubtful = asked(run(of_weight(8.0, 10.0, 40.0)))
    assert doubtful.thresholds
    assert not any(threshold.at_worst for threshold in doubtful.thresholds)
    assert doubtful.holds_psi == asked(run(of_weight(10.0, 10.0, 10.0))).holds_psi


def test_without_ranges_no_test_is_told() -> None:
    assert all(not each.settled_by for each in run(unsettled_house(), ranges=False).runs)


def test_an_anchor_test_asks_for_the_greatest_load_on_one_bolt() -> None:
    found = run_named(study_of_it(), STATE)
    demands = [
        link.demand for chain in found.chains if chain.id == LINE
        for link in chain.links if link.unit == "lb a bolt" and link.verdict != "passes" and link.demand is not None
    ]  # fmt: skip
    assert asked(study_of_it()).anchor_lb == pytest.approx(max(demands))


# --- how many, and where ----------------------------------------------------------------------------------------------


@pytest.mark.parametrize("cores", [3, 6])
def test_cores_at_the_mean_wanted_give_the_strength_wanted(cores: int) -> None:
    """Entered as tests, cores at that mean that scatter as foreseen come to the strength, by the lower method."""
    needs = 2500.0
    mean = wanted_mean(needs, cores)
    half, odd = divmod(cores, 2)
    apart = FORESEEN * ((cores - 1) / (2 * half)) ** 0.5
    broke = [mean * (1 - apart)] * half + [mean] * odd + [mean * (1 + apart)] * half
    assert fmean(broke) == pytest.approx(mean)
    assert stdev(broke) / mean == pytest.approx(FORESEEN)
    tests = {
        f"core-{n}": FoundationTest(
            order=n, segment="fs1", station_in=20.0, kind="core", result=result, unit="psi",
            core_diameter_in=4.0, core_length_in=8.0,
        )
        for n, result in enumerate(broke)
    }  # fmt: skip
    survey = unsettled_house().survey
    found = evidence_of(replace(survey, foundation=replace(survey.foundation, tests=tests)), "fs1")
    assert found is not None
    assert found.lower == pytest.approx(needs, rel=2e-3)


def test_more_cores_need_a_lower_mean() -> None:
    assert wanted_mean(2500.0, 6) < wanted_mean(2500.0, 3)
    assert wanted_mean(5000.0, 3) == pytest.approx(2 * wanted_mean(2500.0, 3))


def test_stretches_of_one_pour_share_their_cores() -> None:
    house = unsettled_house()
    base = house.survey.foundation
    pour = Fact(value="house", how="one run of board marks", by="RT")
    whole = base.segments["fs1"]
    halves = {
        "fs1": replace(whole, to_in=200.0, pour=pour),
        "fs1-b": replace(whole, order=1.5, mark="F1b", from_in=200.0, pour=pour),
    }
    foundation = replace(base, segments=base.segments | halves)
    (site,) = asked(run(replace(house, survey=replace(house.survey, foundation=foundation)))).sites
    assert site.stretches == ("F1", "F1b")
    assert site.wanted == 3
    assert {place.stretch for place in site.places} == {"F1", "F1b"}
    apart = replace(foundation, segments=foundation.segments | {"fs1": replace(halves["fs1"], pour=unknown())})
    sites = asked(run(replace(house, survey=replace(house.survey, foundation=apart)))).sites
    assert [each.wanted for each in sites] == [3, 3]


@given(
    st.floats(0, 200), st.floats(30, 400), st.integers(1, 6), st.lists(st.floats(0, 600), max_size=8)
)  # fmt: skip
def test_cores_stand_in_their_stretch_in_order_and_apart(
    start: float, length: float, wanted: int, kept: list[float]
) -> None:
    found = core_places(start, start + length, wanted, kept)
    assert len(found) == wanted
    assert all(start < at < start + length for at in found)
    assert list(found) == sorted(found)


def test_cores_keep_as_far_from_bolts_as_they_can() -> None:
    """Between bolts at 0, 60 and 120 in. the farthest places are half way between."""
    assert core_places(0.0, 120.0, 2, [60.0]) == pytest.approx((28.5, 88.5), abs=3.1)


# --- what is told of every stretch ------------------------------------------------------------------------------------


def test_every_stretch_of_concrete_is_told_with_its_ends_and_origin() -> None:
    told = {each.mark: each for each in study_of_it().concrete}
    assert set(told) == {"F1", "F2", "F3", "F4", "F5"}
    assert (told["F1"].low, told["F1"].best, told["F1"].high) == (1000.0, 1500.0, 2500.0)
    assert told["F1"].why == "untested concrete by age: before 1920"
    assert (told["F2"].low, told["F2"].best, told["F2"].high) == (3000.0, 3000.0, 3000.0)
    assert told["F2"].cores == ("core-fs2",)


def test_hammer_and_probe_say_what_they_are_good_for() -> None:
    house = unsettled_house()
    tests = {
        "reb-1": FoundationTest(segment="fs1", station_in=40.0, kind="rebound", result=22.0, unit="rebound number"),
        "reb-2": FoundationTest(segment="fs2", station_in=40.0, kind="rebound", result=36.0, unit="rebound number"),
        "pro-1": FoundationTest(segment="fs1", station_in=60.0, kind="probe", result=1.5, unit="in"),
        "pro-2": FoundationTest(segment="fs2", station_in=60.0, kind="probe", result=0.0, unit="in"),
    }
    foundation = replace(house.survey.foundation, tests=house.survey.foundation.tests | tests)
    study = run(replace(house, survey=replace(house.survey, foundation=foundation)), ranges=False)
    told = {each.mark: each for each in study.concrete}
    assert told["F1"].rebound == 22.0
    assert "rebound 22, not of one concrete with F2: more than 6 apart; it gives no strength (ASTM C805 5.4)" in (
        told["F1"].remarks
    )
    assert any("soft at the surface there; it says nothing of the strength within" in r for r in told["F1"].remarks)
    assert any("hard at the surface there" in r for r in told["F2"].remarks)
    assert (told["F1"].low, told["F1"].high) == (1000.0, 2500.0)


def test_the_mean_of_the_cores_moves_what_fails_first_and_no_check() -> None:
    """Three cores beside a stated strength: the ratios stay, the concrete's expected strength goes with the mean."""
    house = with_strength(unsettled_house(), 3000.0)
    cores = {
        f"core-{n}": FoundationTest(
            segment="fs1", station_in=20.0, kind="core", result=f, unit="psi", core_diameter_in=4.0, core_length_in=8.0
        )
        for n, f in enumerate((4100.0, 4200.0, 4300.0))
    }
    base = house.survey.foundation
    cored = replace(house, survey=replace(house.survey, foundation=replace(base, tests=base.tests | cores)))
    before, after = (run(each, ranges=False) for each in (house, cored))
    moved = 0
    for one, other in zip(run_named(before, STATE).chains, run_named(after, STATE).chains, strict=True):
        for link, again in zip(one.links, other.links, strict=True):
            assert (link.ratio, link.status) == (again.ratio, again.status)
            if link.expected is not None and again.expected is not None and link.expected != again.expected:
                assert one.id == LINE
                assert again.expected.manner == "brittle"
                mean = 4200.0 * 1.06
                wanted = link.expected.best_lb * (mean / 3000.0) ** 0.5
                assert again.expected.best_lb == pytest.approx(wanted)
                moved += 1
    assert moved
