"""Laws of the prescriptive way over any house: it never falls over, and more house is never asked for less."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.house.fact import measured
from groundsill.house.underfloor import Segment
from groundsill.loadpath.prescriptive import PrescriptiveLine, scope_together, together
from groundsill.study import Study, run
from groundsill.work.document import House
from groundsill.working.errors import BadSurvey
from tests.forces.houses import houses
from tests.forces.reference_house import reference_house
from tests.proof import record


def told(house: House) -> Study | None:
    """The study of a house; None where the survey is refused."""
    try:
        return run(house, ranges=False)
    except BadSurvey:
        return None


def sound(line: PrescriptiveLine) -> None:
    """What holds of every line whatever the house."""
    both = line.both
    for figure in (both.prescriptive_ft, both.engineered_full_ft, both.engineered_reduced_ft, both.ratio_full):
        assert figure is None or (math.isfinite(figure) and figure >= 0)
    if both.engineered_full_ft is not None and both.engineered_reduced_ft is not None:
        assert both.engineered_reduced_ft == pytest.approx(both.reduced * both.engineered_full_ft)
    if both.ratio_full is not None and both.prescriptive_ft:
        assert both.ratio_full == pytest.approx((both.engineered_full_ft or 0) / both.prescriptive_ft)
    if line.fewest_panels is not None and line.most_panels is not None:
        assert 1 <= line.fewest_panels <= line.most_panels
    assert line.outcome == together(each.outcome for each in line.requirements)
    addresses = [each.address for each in line.requirements]
    assert len(set(addresses)) == len(addresses)
    for each in line.requirements:
        assert each.reason
        assert each.clause
        if each.outcome == "meets" and each.asked is not None and each.has is not None and each.key != "bolts":
            assert each.has >= each.asked - 0.01 or each.key == "bracing"
        if each.outcome == "cannot tell" or each.outcome == "short":
            assert each.asks


def held(house: House) -> int:
    """Hold one house against the laws; how many lines it had."""
    study = told(house)
    if study is None:
        return 0
    path = study.prescriptive
    assert path is not None
    assert path.within == scope_together(item.outcome for item in path.scope)
    perimeter = [id for id, line in house.survey.underfloor.lines.items() if line.position == "perimeter"]
    for state in study.runs:
        assert sorted(line.line for line in state.prescriptive) == sorted(perimeter)
        for line in state.prescriptive:
            sound(line)
    return len(perimeter)


@given(houses())
@settings(max_examples=15)
def test_any_house_is_told_by_both_ways(house: House) -> None:
    held(house)


@pytest.mark.proof
def test_three_hundred_houses_are_told_by_both_ways() -> None:
    count = {"houses": 0, "lines": 0}

    @given(houses())
    @settings(max_examples=300)
    def every(house: House) -> None:
        count["houses"] += 1
        count["lines"] += held(house)

    every()
    assert count["houses"] >= 300
    record("prescriptive way", f"{count['houses']} invented houses, {count['lines']} perimeter lines, none fell over")


def scaled(feet: float, height_in: float) -> House:
    """The reference house with its front wall on one sill and one wall of a length, up to 40 ft."""
    house = reference_house()
    under = house.survey.underfloor
    front: Segment = replace(under.segments["sg-front"], to_in=12 * feet, height_in=measured(height_in))
    rest = replace(under.segments["sg-front"], from_in=12 * feet, kind="joists on sill", height_in=measured(0.0))
    segments = {**under.segments, "sg-front": front} | ({"sg-rest": rest} if feet < 40 else {})
    return replace(house, survey=replace(house.survey, underfloor=replace(under, segments=segments)))


@given(st.integers(2, 40), st.integers(2, 40), st.sampled_from((12.0, 24.0, 40.0)))
@settings(max_examples=25)
def test_a_line_with_more_cripple_wall_is_never_asked_for_less_panel(a: int, b: int, height_in: float) -> None:
    asked = []
    for feet in sorted((a, b)):
        study = told(scaled(feet, height_in))
        assert study is not None
        asked.append(study.runs[0].prescriptive[0].both.prescriptive_ft or 0.0)
    assert asked[0] <= asked[1] + 1e-9
