"""Which cores speak for a stretch of concrete, and the range of strength they leave it."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.house.cores import cores_for, evidence_of, one_concrete, rebound_of
from groundsill.house.fact import Fact, measured, unknown
from groundsill.house.foundation import FoundationSegment, FoundationTest
from groundsill.house.missing import incomplete
from groundsill.house.settle import FactRef, Settled, prepare
from groundsill.standards.aci214_4r_10.cores import equivalent_by_tolerance, strength_in_place
from groundsill.standards.aci562_19.cores import equivalent_of_cores
from groundsill.work.document import House
from tests.fixtures.small_house import small_house

STRENGTH = "survey.foundation.segments.fs1.strength_psi"
POUR = Fact(value="house 1912", how="one run of board marks round the corner", by="RT")


def core(segment: str, result: float, **more: Any) -> FoundationTest:
    measures = {"core_diameter_in": 3.75, "core_length_in": 7.0, "by": "lab", "when": "2026-04-02"}
    return FoundationTest(segment=segment, station_in=20.0, kind="core", result=result, unit="psi", **(measures | more))


def rebound(segment: str, number: float) -> FoundationTest:
    return FoundationTest(segment=segment, station_in=20.0, kind="rebound", result=number, unit="rebound number")


def with_tests(*tests: FoundationTest, **changes: dict[str, Any]) -> House:
    """The small house with these tests alone, and its stretches changed (``fs1={...}``)."""
    house = small_house()
    base = house.survey.foundation
    segments = {id: replace(s, **changes.get(id, {})) for id, s in base.segments.items()}
    numbered = {f"test-{n}": replace(t, order=n, mark=f"T{n}") for n, t in enumerate(tests, start=1)}
    base = replace(base, segments=segments, tests=numbered)
    return replace(house, survey=replace(house.survey, foundation=base))


def range_of(house: House, path: str = STRENGTH) -> FactRef:
    (found,) = [ref for ref in prepare(house).facts if ref.path == path]
    return found


def settled(house: House) -> tuple[Settled[House], FoundationSegment]:
    best = prepare(house).best
    return best, best.house.survey.foundation.segments["fs1"]


THREE = (core("fs1", 2900.0), core("fs1", 2480.0), core("fs1", 2650.0))


# --- which cores speak ------------------------------------------------------------------------------------------------


def test_a_core_speaks_for_its_own_stretch_and_no_other() -> None:
    survey = with_tests(core("fs1", 2900.0)).survey
    assert [id for id, _ in cores_for(survey, "fs1")] == ["test-1"]
    assert cores_for(survey, "fs2") == ()


def test_cores_speak_for_a_stretch_written_down_as_the_same_pour() -> None:
    survey = with_tests(core("fs1", 2900.0), fs1={"pour": POUR}, fs2={"pour": POUR}).survey
    assert [id for id, _ in cores_for(survey, "fs2")] == ["test-1"]
    assert one_concrete(survey, "fs2", "fs1")


@pytest.mark.parametrize(
    "other",
    [
        {"pour": unknown()},
        {"pour": replace(POUR, value="porch")},
        {"pour": replace(POUR, how=" ")},
        {"pour": POUR, "year": measured(1936.0)},
        {"pour": POUR, "condition": measured("crumbling")},
        {"pour": POUR, "material": "brick"},
    ],
    ids=["no statement", "another pour", "no reason", "another year", "another condition", "another material"],
)
def test_cores_do_not_speak_where_anything_recorded_parts_the_two(other: dict[str, Any]) -> None:
    survey = with_tests(core("fs1", 2900.0), fs1={"pour": POUR}, fs2=other).survey
    assert cores_for(survey, "fs2") == ()


@pytest.mark.parametrize(("number", "speaks"), [(34.0, True), (35.0, False)])
def test_the_hammer_parts_what_a_statement_joins(number: float, speaks: bool) -> None:
    house = with_tests(
        core("fs1", 2900.0), rebound("fs1", 28.0), rebound("fs2", number), fs1={"pour": POUR}, fs2={"pour": POUR}
    )
    assert bool(cores_for(house.survey, "fs2")) is speaks


def test_rebound_numbers_of_a_stretch_are_their_mean_and_never_a_strength() -> None:
    house = with_tests(rebound("fs1", 28.0), rebound("fs1", 32.0), fs1={"strength_psi": unknown()})
    assert rebound_of(house.survey, "fs1") == 30.0
    assert rebound_of(house.survey, "fs2") is None
    assert evidence_of(house.survey, "fs1") is None
    assert range_of(house).why.startswith("untested concrete by age")


def test_a_probe_moves_no_strength() -> None:
    bare = range_of(with_tests(fs1={"strength_psi": unknown()}))
    probe = FoundationTest(segment="fs1", station_in=40.0, kind="probe", result=2.0, unit="in")
    assert range_of(with_tests(probe, fs1={"strength_psi": unknown()})) == bare


# --- what they come to ------------------------------------------------------------------------------------------------


def test_three_cores_leave_the_lower_equivalent_strength_the_code_s_and_the_mean() -> None:
    found = range_of(with_tests(*THREE, fs1={"strength_psi": unknown()}))
    broke = [2900.0, 2480.0, 2650.0]
    in_place = [strength_in_place(f, 3.75, 7.0) for f in broke]
    code = equivalent_of_cores([strength_in_place(f, 3.75, 7.0, damage=False) for f in broke])
    guide = equivalent_by_tolerance(in_place, 3.75, 7.0 / 3.75)
    assert found.low == pytest.approx(min(code, guide))
    assert found.best == pytest.approx(code)
    assert found.high == pytest.approx(sum(in_place) / 3)
    assert not found.assumed
    assert found.why.startswith("3 cores (T1, T2, T3): mean 2,852 psi, standard deviation 225 psi; equivalent strength")


def test_the_strength_by_cores_is_marked_and_carries_what_was_recalled() -> None:
    best, segment = settled(with_tests(*THREE, fs1={"strength_psi": unknown()}))
    assert segment.strength_psi.state == "estimated"
    kinds = {mark.kind for mark in best.marks[STRENGTH]}
    assert {"estimated", "from memory"} <= kinds
    assert "assumed range" not in kinds
    assert any("Table 9.2: 75 %, 3" in mark.what for mark in best.marks[STRENGTH])


@pytest.mark.parametrize(
    "stated",
    [measured(3100.0), Fact(value=2000.0, low=1500.0, high=2600.0, state="estimated", how="by the sound"),
     Fact(low=900.0, high=1900.0, state="unknown", how="behind the lattice")],
    ids=["measured", "estimated", "bounded"],
)  # fmt: skip
def test_a_strength_the_surveyor_stated_stands_before_the_cores(stated: Fact[float]) -> None:
    bare, cored = (with_tests(*tests, fs1={"strength_psi": stated}) for tests in ((), THREE))
    assert settled(cored)[1].strength_psi == settled(bare)[1].strength_psi


def test_crumbling_concrete_has_a_strength_by_three_cores_and_by_nothing_less() -> None:
    crumbling = {"strength_psi": unknown(), "condition": measured("crumbling")}
    assert settled(with_tests(*THREE, fs1=crumbling))[1].strength_psi.value == pytest.approx(2182, abs=1)
    assert settled(with_tests(*THREE[:2], fs1=crumbling))[1].strength_psi.value is None


@pytest.mark.parametrize(("count", "lacking"), [(3, False), (2, True)])
def test_crumbling_concrete_with_three_cores_lacks_no_strength(count: int, lacking: bool) -> None:
    house = with_tests(*THREE[:count], fs1={"strength_psi": unknown(), "condition": measured("crumbling")})
    assert any(lack.path == STRENGTH for lack in incomplete(house.survey)) is lacking


@pytest.mark.parametrize(
    ("results", "ends"),
    [
        ([2900.0], (1000.0, 1500.0, 3090.4)),
        ([700.0], (700.0, 700.0, 2500.0)),
        ([700.0, 2900.0], (700.0, 700.0, 3090.4)),
    ],
)
def test_one_or_two_cores_only_widen_what_stands_by_age(results: list[float], ends: tuple[float, float, float]) -> None:
    """2,900 psi in place: 2,900 x 0.99784 (l/d 1.867) x 1.0075 (3.75 in.) x 1.06 = 3,090.4."""
    old = with_tests(*(core("fs1", f) for f in results), fs1={"strength_psi": unknown(), "year": measured(1912.0)})
    found = range_of(old)
    assert (found.low, found.best) == ends[:2]
    assert found.high == pytest.approx(ends[2], abs=0.1)
    assert "fewer than 3 cores that count: no equivalent strength: they only widen it" in found.why
    assert found.assumed


def test_cores_that_scatter_too_much_only_widen() -> None:
    wild = (core("fs1", 800.0), core("fs1", 3000.0), core("fs1", 6000.0))
    found = range_of(with_tests(*wild, fs1={"strength_psi": unknown(), "year": measured(1912.0)}))
    assert (found.low, found.best) == (800.0, 800.0)
    assert "scatter so much that no strength is left" in found.why


@pytest.mark.parametrize(
    ("measures", "why"),
    [
        ({"core_diameter_in": None}, "T3 is not counted: its diameter is not entered"),
        ({"core_length_in": None}, "T3 is not counted: .*length of the core is not known"),
        ({"core_length_in": 3.0}, "T3 is not counted: .*must be at least 1"),
    ],
)
def test_a_core_without_its_measures_is_not_counted_and_says_so(measures: dict[str, Any], why: str) -> None:
    house = with_tests(*THREE[:2], core("fs1", 2650.0, **measures))
    found = evidence_of(house.survey, "fs1")
    assert found is not None
    assert len(found.in_place) == 2
    (said,) = found.left_out
    assert re.match(why, said)


def test_a_core_that_the_laboratory_corrected_needs_no_length() -> None:
    house = with_tests(*THREE[:2], core("fs1", 2650.0, core_length_in=None, core_corrected=True))
    found = evidence_of(house.survey, "fs1")
    assert found is not None
    assert len(found.in_place) == 3


def test_cores_of_one_pour_are_one_sample_for_every_stretch_of_it() -> None:
    tests = (core("fs1", 2900.0), core("fs2", 2480.0), core("fs1", 2650.0))
    stretch = {"pour": POUR, "strength_psi": unknown()}
    house = with_tests(*tests, fs1=stretch, fs2=stretch)
    one, other = (evidence_of(house.survey, id) for id in ("fs1", "fs2"))
    assert one == other
    assert range_of(house).low == range_of(house, STRENGTH.replace("fs1", "fs2")).low


@given(st.lists(st.floats(1500.0, 4500.0), min_size=3, max_size=8), st.randoms(use_true_random=False))
def test_the_order_of_cores_changes_nothing(results: list[float], random: Any) -> None:
    shuffled = list(results)
    random.shuffle(shuffled)
    ends = []
    for each in (results, shuffled):
        found = evidence_of(with_tests(*(core("fs1", f) for f in each)).survey, "fs1")
        assert found is not None
        ends.append((found.mean, found.spread, found.code, found.guide))
    assert ends[0] == ends[1]


@given(st.lists(st.floats(1500.0, 4500.0), min_size=3, max_size=8), st.floats(1.0, 1.5))
def test_stronger_cores_never_leave_a_weaker_range(results: list[float], more: float) -> None:
    ranges = [
        range_of(with_tests(*(core("fs1", f * by) for f in results), fs1={"strength_psi": unknown()}))
        for by in (1.0, more)
    ]
    if all("equivalent strength" in found.why and not found.assumed for found in ranges):
        low, high = ranges
        assert (low.low, low.best, low.high) <= (high.low, high.best, high.high)


@pytest.mark.parametrize(("results", "said"), [((2000.0, 3000.0, 4000.0), True), ((2700.0, 3000.0, 3300.0), False)])
def test_cores_too_unlike_ask_for_more(results: tuple[float, ...], said: bool) -> None:
    found = evidence_of(with_tests(*(core("fs1", f) for f in results)).survey, "fs1")
    assert found is not None
    assert ("scatter so much that ASCE 41 asks for more" in found.words) is said
    assert "lower bound by ASCE 41" in found.words
