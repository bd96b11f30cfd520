"""Wind in the load path: where it governs, what is checked for it, by which figures, and that nothing slips by."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.house.fact import Fact, measured
from groundsill.loadpath.case import cannot, checked
from groundsill.loadpath.chain import Chain, Link
from groundsill.loadpath.wind import HEADING, nearer
from groundsill.study import Run, Study, run, working
from groundsill.work.document import House
from groundsill.work.pieces import HoldDownPiece
from tests.forces.houses import houses
from tests.loadpath.houses import known_house, sample_house

WORK = "strengthen"


def blown(mph: float | Fact[float], house: House | None = None, **hazard: Any) -> House:
    """The known house in wind, exposure B, on level ground; ``hazard`` changes its ground motion."""
    house = known_house() if house is None else house
    speed = measured(mph) if isinstance(mph, float) else mph
    site = replace(house.survey.site, wind_mph=speed, exposure="B", K_zt=measured(1.0))
    if hazard:
        assert site.hazard is not None
        site = replace(site, hazard=replace(site.hazard, **hazard))
    return replace(house, survey=replace(house.survey, site=site))


def calm(mph: float) -> House:
    """The known house where the earth hardly shakes: category A, so that any wind governs."""
    return blown(mph, S_S=0.1, S_1=0.02, S_DS=0.1, S_D1=0.04)


@cache
def studied(mph: float, shaking: bool = True) -> Study:
    """The study of the known house in wind, best values alone."""
    return run(blown(mph) if shaking else calm(mph), ranges=False)


def worked(study: Study, key: str = WORK) -> Run:
    """One state of a study."""
    return next(r for r in study.runs if r.key == key)


def in_wind(chain: Chain) -> tuple[Link, ...]:
    """The links of a chain's stage of wind."""
    return tuple(link for stage in chain.stages if stage.key == "wind" for link in stage.links)


def pairs(state: Run) -> Iterator[tuple[Link, Link]]:
    """Every link listed for wind, with the one for the earthquake that it was gone through again from."""
    for chain in (*state.chains, *state.bodies):
        before = {link.address: link for stage in chain.stages if stage.key != "wind" for link in stage.links}
        for link in in_wind(chain):
            if link.working[-1].startswith(HEADING):
                yield link, before[link.working[-1].removeprefix(HEADING)]


# --- which of the two governs ----------------------------------------------------------------------------------------


def test_without_wind_in_the_survey_no_chain_has_a_stage_of_it_and_the_study_says_why() -> None:
    study = run(known_house(), ranges=False)
    assert not any(stage.key == "wind" for r in study.runs for c in (*r.chains, *r.bodies) for stage in c.stages)
    assert any("wind (no basic wind speed is in the survey: survey.site.wind_mph" in w for w in study.warnings)


def test_in_a_light_wind_the_earthquake_governs_and_nothing_is_listed() -> None:
    study = studied(85.0)
    for chain in worked(study).chains:
        if chain.relied_on:
            (told,) = in_wind(chain)
            assert told.status == told.verdict == "does not apply"
            assert told.reason.startswith("the earthquake governs: W = ")
            assert told.clause == "ASCE 7-16 2.4.1 beside 2.4.5"
    assert not any("wind governs" in warning for warning in study.warnings)
    assert any("uplift by wind, wind on the storeys above" in warning for warning in study.warnings)


def test_in_a_light_wind_everything_else_is_as_without_it() -> None:
    still, windy = run(known_house(), ranges=False), studied(85.0)
    for one, other in zip(still.runs, windy.runs, strict=True):
        assert (one.verdict, one.headline) == (other.verdict, other.headline)
        for a, b in zip(one.chains, other.chains, strict=True):
            assert (a.percent, a.governing, a.verdict) == (b.percent, b.governing, b.verdict)


def test_where_wind_governs_the_line_and_the_force_are_named() -> None:
    study = studied(180.0)
    wind = study.forces.wind
    assert wind is not None
    governed = [line for line in wind.lines.values() if line.governs]
    assert governed
    marks = ", ".join(line.mark for line in governed)
    assert any(w.startswith(f"wind governs lines {marks}: 0.6 W is more than 0.7 E_h") for w in study.warnings)
    for line in governed:
        chain = next(c for c in worked(study).chains if c.id == line.line)
        told, *listed = in_wind(chain)
        assert told.reason.startswith(f"wind governs: this line must be checked for W = {line.W_lb:,.0f} lb")
        assert listed


def test_no_line_passes_while_wind_stops_it() -> None:
    """In an earthquake that asks for next to nothing every verdict hangs on wind alone."""
    soft, hard = worked(studied(85.0, shaking=False)), worked(studied(220.0, shaking=False))
    for gentle, storm in zip(soft.chains, hard.chains, strict=True):
        if gentle.relied_on and gentle.percent is not None and storm.percent is not None:
            assert storm.percent < gentle.percent
    assert any(link.status == "fails" for chain in hard.chains for link in in_wind(chain))
    for chain in hard.chains:
        if any(link.status == "fails" for link in in_wind(chain)):
            assert chain.verdict == "fails"
            assert chain.governing is not None
            assert "/wind/" in chain.governing


# --- what is listed, and by which figures ----------------------------------------------------------------------------


@pytest.mark.parametrize(("mph", "shaking"), [(130.0, True), (180.0, True), (120.0, False)])
def test_only_what_wind_brings_nearer_to_its_limit_is_listed(mph: float, shaking: bool) -> None:
    found = list(pairs(worked(studied(mph, shaking))))
    assert found
    for link, before in found:
        assert link.title == f"{before.title}, in wind"
        if link.ratio is not None and before.ratio is not None:
            assert link.ratio > before.ratio
        assert link.expected is None  # the strength it gives at is told once, with the earthquake


def test_the_demand_goes_in_step_with_the_force_on_the_line() -> None:
    study = studied(180.0)
    state = worked(study)
    assert study.forces.wind is not None
    for link, before in pairs(state):
        if not link.address.startswith("line/") or "/wind/sheathing-" not in link.address:
            continue
        line = study.forces.wind.lines[link.address.split("/")[1]]
        step = line.allowable_lb / (0.7 * study.forces.rho * state.line_forces[line.line].force_lb)
        assert link.demand is not None
        assert before.demand is not None
        assert link.demand == pytest.approx(before.demand * step)


def test_panels_and_old_boards_carry_four_tenths_more_in_wind_as_their_tables_have_it() -> None:
    study = run(blown(220.0, sample_house()), ranges=False)
    seen = set()
    for state in study.runs:
        for link, before in pairs(state):
            if "/wind/sheathing-" in link.address and link.capacity and before.capacity:
                panel = "panel" in link.title
                seen.add(panel)
                assert link.capacity == pytest.approx(1.4 * before.capacity, rel=0.02)  # printed to 5 plf
    assert seen == {True, False}


def test_dead_load_holds_down_by_six_tenths_and_not_less_the_vertical_earthquake() -> None:
    """Without hold-downs the holding moment is the factor times the dead load's: 0.6 against 0.6 - 0.14 S_DS."""
    house = known_house()
    pieces = {k: p for k, p in house.alternatives[WORK].pieces.items() if not isinstance(p, HoldDownPiece)}
    bare = replace(house, alternatives={WORK: replace(house.alternatives[WORK], pieces=pieces)})
    study = run(blown(220.0, bare), ranges=False)
    found = [(a, b) for a, b in pairs(worked(study)) if "/wind/overturning-" in a.address and "line/" in a.address]
    moments = [(a, b) for a, b in found if a.unit == "lb-ft"]
    assert moments
    for link, before in moments:
        assert link.capacity is not None
        assert before.capacity is not None
        factor = (0.6 - 0.14 * float(study.forces.S_DS)) / 0.6
        assert before.capacity == pytest.approx(link.capacity * factor)
        assert "2.4.1 combination 7" in link.clause


def test_anchors_in_concrete_are_checked_for_the_wind_and_for_no_overstrength() -> None:
    study = studied(220.0, shaking=False)
    found = [a for a, _ in pairs(worked(study)) if "/wind/bolts-concrete-" in a.address and a.demand is not None]
    assert found
    assert all("for the wind force, strength level" in link.reason for link in found)


def test_a_body_turns_by_the_whole_wind_where_the_earthquake_is_reduced_at_the_soil() -> None:
    study = studied(150.0)
    wind = study.forces.wind
    assert wind is not None
    turned = [(a, b) for a, b in pairs(worked(study)) if "/wind/overturning-" in a.address and "body/" in a.address]
    assert turned
    levels = study.forces.levels
    quake_up = sum(n.force_lb * n.height_ft for n in levels) / sum(n.force_lb for n in levels)
    for link, before in turned:
        assert link.demand is not None
        assert before.demand is not None
        direction = link.address.rpartition("/")[2]
        lines = {id for id, line in study.forces.lines.items() if line.direction == direction and line.relied_on}
        W = sum(wind.lines[id].W_lb for id in lines)
        ways = zip(*(worked(study).line_forces[id].cases[direction] for id in lines), strict=True)  # type: ignore[index]
        E = max(abs(sum(way)) for way in ways)
        arms = [link.demand / (0.6 * W), before.demand / (0.75 * 0.7 * study.forces.rho * E)]
        drops = [arms[0] - wind.along[direction].height_ft, arms[1] - quake_up]  # type: ignore[index]
        assert drops[0] == pytest.approx(drops[1], abs=1e-6)


# --- the paper behind it ---------------------------------------------------------------------------------------------


def test_every_link_of_wind_has_its_working_on_the_sheet() -> None:
    house = blown(180.0)
    sections = {step.section for step in working(house, WORK).steps}
    state = worked(studied(180.0))
    for link, _ in pairs(state):
        if link.ratio is not None:
            assert any(place.startswith(HEADING) and place in sections for place in link.working), link.address
    for chain in state.chains:
        for stage in chain.stages:
            if stage.key == "wind":
                assert f"line/{chain.id}/wind" in sections
                assert stage.links[0].address in sections


def test_addresses_of_wind_are_their_own() -> None:
    state = worked(studied(180.0))
    for chain in (*state.chains, *state.bodies):
        addresses = [link.address for link in chain.links]
        assert len(addresses) == len(set(addresses))


def test_wind_that_governs_only_at_one_end_of_a_speed_makes_the_verdict_depend_on_it() -> None:
    """At the best speed the earthquake governs every link and no wind is listed; at the high end wind stops some."""
    doubt: Fact[float] = Fact(value=85.0, low=85.0, high=250.0, state="estimated", how="two maps differ")
    capped = replace(doubt, high=220.0)
    study = run(blown(capped))
    best = worked(studied(85.0))
    state = worked(study)
    assert not [link for chain in best.chains for link in in_wind(chain)[1:]]
    met = [link for chain in state.chains for link in in_wind(chain)[1:]]
    assert met
    for link in met:
        assert link.status == "does not apply"
        assert link.ratio is None
        assert link.reason.startswith("at the best value of every fact the earthquake asks more of it")
    stopped = [link for link in met if link.verdict == "depends"]
    assert stopped
    assert all(link.depends_on == ("Basic wind speed",) for link in stopped)
    assert all(link.least_favourable is not None and link.least_favourable > 1 for link in stopped)
    (move,) = [move for move in study.measure_next if move.path == "survey.site.wind_mph"]
    assert move.change > 0


def test_a_body_met_only_at_one_end_has_its_stage_of_wind_too() -> None:
    doubt: Fact[float] = Fact(value=85.0, low=85.0, high=220.0, state="estimated", how="two maps differ")
    state = worked(run(blown(doubt)))
    bodies = [chain for chain in state.bodies if in_wind(chain)]
    assert bodies
    assert all(link.verdict != "cannot be checked" or link.reason for chain in bodies for link in in_wind(chain))


@given(house=houses(), mph=st.floats(70.0, 220.0), exposure=st.sampled_from("BCD"))
@settings(max_examples=15)
def test_on_any_house_what_is_listed_for_wind_is_nearer_to_its_limit_and_stands_apart(
    house: House, mph: float, exposure: str
) -> None:
    site = replace(house.survey.site, wind_mph=measured(mph), exposure=exposure, K_zt=measured(1.0))
    study = run(replace(house, survey=replace(house.survey, site=site)), ranges=False)
    for state in study.runs:
        for link, before in pairs(state):
            assert link.ratio is None or before.ratio is None or link.ratio > before.ratio
        for chain in (*state.chains, *state.bodies):
            addresses = [link.address for link in chain.links]
            assert len(addresses) == len(set(addresses))
            assert chain.verdict != "passes" or all(link.status != "fails" for link in in_wind(chain))


def test_a_link_that_fails_by_wind_is_told_though_nobody_can_say_what_the_earthquake_asks() -> None:
    """Where a line's share is open the earthquake's answer has no ratio to be nearer than; a failing is told all the
    same, and what holds by wind is not."""
    place = ("line/front/sheathing/sg-front/both", "boards", "segment", "sg-front")
    unsaid = cannot(*place, clause="SDPWS 2021 4.3", reason="what the line takes by a rigid floor is not known")
    fails, passes = (
        checked(*place, level="allowable", unit="plf", demand=demand, capacity=100.0, clause="SDPWS 2021 4.3")
        for demand in (101.0, 99.0)
    )
    assert nearer(fails, unsaid)
    assert not nearer(passes, unsaid)
    assert nearer(fails, passes)
    assert not nearer(passes, fails)
