"""Leaning foundations: the kern by hand, every question at three answers, causes told apart, and who is sent for."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.findings import findings_of
from groundsill.findings.finding import WEIGHTS, Finding
from groundsill.findings.standing import standing_of, top_load_plf
from groundsill.forces.reading import Reading
from groundsill.house.fact import Fact, measured, unknown
from groundsill.house.record import Observation
from groundsill.house.site import SiteFlag
from groundsill.house.underfloor import Obstruction
from tests.findings.leaning import STILL, about, front, stood, told, with_sills
from tests.properties.skewed import skewed_houses


def the(house) -> Finding:
    found = told(house, "lean")
    assert found is not None
    return found


def answers(found: Finding) -> dict[str, str]:
    return {r.key: r.answer for r in (*found.gravity.reasons, *found.earthquake.reasons, *found.durability.reasons)}


def causes(found: Finding) -> list[str]:
    return [reason.key for reason in found.cause if reason.answer == "yes"]


def test_a_stem_that_stands_plumb_is_no_finding():
    assert told(stood(lean_in_per_ft=measured(0.0)), "lean") is None
    assert told(stood(lean_in_per_ft=unknown()), "lean") is None


def test_a_slight_lean_of_long_ago_matters_for_nothing():
    found = the(stood(**STILL))
    assert (found.gravity.weight, found.earthquake.weight, found.durability.weight) == ("does not matter",) * 3
    assert [cure.key for cure in found.cures] == ["leave"]
    assert found.sure


def test_where_its_load_comes_down_is_what_moments_give_by_hand():
    house = stood(**STILL | {"lean_in_per_ft": measured(1.0)})
    reading = Reading(house)
    load = top_load_plf(reading, "line1")
    stands = standing_of(reading, house.survey.foundation.segments[front(house)], load)
    high, top = 22 / 12, 8 / 12  # ten inches over the soil, twelve under it
    own = 150 * high * top
    off = (load * high + own * high / 2) / (load + own)
    assert stands.shift == pytest.approx((high, high))
    assert stands.off == pytest.approx((off, off))
    assert stands.kern == (2.0, 2.0)
    assert stands.inside == ("yes" if off <= 2 else "no")
    assert stands.pressure[1] == pytest.approx((load + own) * (1 + 6 * off / 12))
    assert any("k = 12 / 6 = 2 in" in line for line in the(house).worked)


@pytest.mark.parametrize(
    ("worse", "key", "says"),
    [
        ({"lean_in_per_ft": measured(2.0)}, "kern", "presses hard"),
        ({"lean_moving": measured(True)}, "still", "grows"),
        ({"lean_moving": unknown(), "lean_signs": measured("fresh gaps")}, "still", "grows"),
    ],
)
def test_what_takes_its_support_matters_for_the_weight_and_in_an_earthquake(worse, key, says):
    found = the(stood(**STILL | worse))
    assert answers(found)[key] == "no"
    assert (found.gravity.weight, found.earthquake.weight) == ("matters", "matters")
    assert says in found.gravity.says


@pytest.mark.parametrize(
    ("open_", "key"),
    [
        ({"lean_moving": unknown()}, "still"),
        ({"footing_width_in": unknown()}, "kern"),
        ({"depth_in": unknown()}, "kern"),
        ({"lean_in_per_ft": about(0.5, 0.25, 3.0)}, "kern"),
        ({"wet_side": unknown()}, "dry"),
    ],
)
def test_what_nobody_knows_stays_open_and_says_what_settles_it(open_, key):
    found = the(stood(**STILL | open_))
    assert answers(found)[key] == "cannot tell"
    assert not found.sure
    assert found.confirm
    assert "does not matter" not in (found.weight if key == "dry" else found.gravity.weight)


def test_a_sill_measured_to_stand_on_two_inches_has_lost_its_seat():
    assert answers(the(with_sills(stood(**STILL), bearing_in=measured(3.0))))["seat"] == "yes"
    found = the(with_sills(stood(**STILL), bearing_in=measured(2.0)))
    assert answers(found)["seat"] == "no"
    assert "seat" in [cure.key for cure in found.cures]
    assert answers(the(with_sills(stood(**STILL), bearing_in=about(3.0, 2.0, 4.0))))["seat"] == "cannot tell"


def test_ground_that_bears_less_than_the_edge_presses_is_watched():
    weak = measured(500.0)
    found = the(stood(soil={"bearing_psf": replace(weak, by="an engineer", when="2025")}, **STILL))
    assert answers(found)["toe"] == "no"
    assert found.gravity.weight == "watch"


def test_a_bolt_in_a_steep_lean_is_set_with_the_lean_in_mind():
    found = the(stood(**STILL | {"lean_in_per_ft": measured(0.75)}))
    assert answers(found)["edge"] == "no"
    assert found.earthquake.weight == "watch"
    assert "bolts" in [cure.key for cure in found.cures]


# ---- Causes ----


def test_each_cause_is_told_from_its_own_evidence():
    def of(house):
        return causes(the(house))

    id = front(stood())
    assert of(stood(**STILL)) == []
    assert of(stood(**STILL | {"wet_side": measured("outside")})) == ["wet"]
    assert of(stood(**STILL | {"wet_side": measured("both")})) == []
    assert of(stood(**STILL | {"load_added": measured(True)})) == ["added"]
    assert of(stood(**STILL | {"footing_width_in": Fact(state="absent")})) == ["footing"]
    assert of(stood(soil={"fill": measured(True)}, **STILL)) == ["fill"]
    hollow = Observation(kind="undermining", on=id, words="hollow under it")
    assert of(stood(seen={"o": hollow}, **STILL)) == ["undermined"]
    inward = STILL | {"lean_in_per_ft": measured(-0.25), "above_outside_soil_in": measured(2.0)}
    assert of(stood(**inward)) == ["retained"]
    assert of(stood(**inward | {"lean_in_per_ft": measured(0.25)})) == []
    house = stood(**STILL)
    slide = {"s": SiteFlag(kind="landslide", present=measured(True))}
    survey = house.survey
    assert of(replace(house, survey=replace(survey, site=replace(survey.site, flags=slide)))) == ["creep"]
    tree = {"t": Obstruction(line="line1", kind="tree", side="outside", from_in=0, to_in=20)}
    under = replace(survey.underfloor, obstructions=tree)
    assert of(replace(house, survey=replace(survey, underfloor=under))) == ["roots"]


@pytest.mark.parametrize(("falls", "way", "steep"), [(270.0, 0.25, "yes"), (90.0, 0.25, "no"), (90.0, -0.25, "yes")])
def test_only_a_lean_down_a_steep_slope_is_laid_to_creep(falls, way, steep):
    """The front looks south; ground that falls to the south falls outward there."""
    house = stood(**STILL | {"lean_in_per_ft": measured(way)})
    site = replace(house.survey.site, slope_rise_per_run=measured(0.4), slope_down_deg=falls)
    found = the(replace(house, survey=replace(house.survey, site=site)))
    assert ("creep" in causes(found)) == (steep == "yes")


def test_drains_alone_are_offered_only_where_creep_fill_and_movement_are_ruled_out():
    wet = STILL | {"wet_side": measured("outside"), "lean_moving": unknown()}
    assert "water" in [cure.key for cure in the(stood(**wet)).cures]
    for soil, facts in (
        ({"fill": measured(True)}, wet),
        ({"fill": unknown()}, wet),
        ({}, wet | {"lean_moving": measured(True)}),
    ):
        cures = [cure.key for cure in the(stood(soil=soil, **facts)).cures]
        assert "water" not in cures
        assert "engineer" in cures or soil.get("fill") == unknown()


def test_soil_held_back_counts_against_the_middle_third_both_ways():
    held = STILL | {
        "lean_in_per_ft": measured(-0.25),
        "above_outside_soil_in": measured(-26.0),
        "depth_in": measured(50.0),
    }
    house = stood(**held)
    stands = standing_of(Reading(house), house.survey.foundation.segments[front(house)], 600.0)
    assert stands.off[1] > stands.off[0]
    assert answers(the(house))["kern"] == "cannot tell"
    assert answers(the(stood(soil={"kind": unknown()}, **held)))["kern"] == "cannot tell"


def test_old_work_that_fits_a_lean_and_mended_drains_tell_that_it_stopped():
    old = {
        "lean_moving": unknown(),
        "lean_signs": measured("later work fits it"),
        "drainage_mended_year": measured(1988.0),
    }
    found = the(stood(**STILL | old))
    assert found.active.answer == "yes"
    assert "1988" in found.active.text
    mended = {"lean_moving": unknown(), "drainage_mended_year": measured(1988.0)}
    assert the(stood(**STILL | mended)).active.answer == "cannot tell"


# ---- Laws ----


@settings(max_examples=30, deadline=None)
@given(lean=st.floats(0.01, 3.0), more=st.floats(0.0, 3.0), inward=st.booleans())
def test_a_steeper_lean_never_weighs_less(lean, more, inward):
    way = -1 if inward else 1
    before, after = (the(stood(**STILL | {"lean_in_per_ft": measured(way * s)})) for s in (lean, lean + more))
    for name in ("gravity", "earthquake"):
        weights = [WEIGHTS.index(getattr(f, name).weight) for f in (before, after)]
        assert weights[1] <= weights[0]


@settings(max_examples=25, deadline=None)
@given(low=st.floats(0.05, 1.0), wide=st.floats(0.0, 2.0))
def test_a_range_says_yes_or_no_only_where_both_its_ends_do(low, wide):
    high = low + wide
    ranged = answers(the(stood(**STILL | {"lean_in_per_ft": about((low + high) / 2, low, high)})))
    ends = [answers(the(stood(**STILL | {"lean_in_per_ft": measured(s)}))) for s in (low, high)]
    for key in ("kern", "seat", "edge"):
        if ranged[key] != "cannot tell":
            assert {ranged[key]} == {end[key] for end in ends}


@settings(max_examples=15, deadline=None)
@given(house=skewed_houses(), lean=st.floats(-6, 6))
def test_any_house_with_any_lean_is_weighed(house, lean):
    base = house.survey.foundation
    leaning = {id: replace(s, lean_in_per_ft=measured(lean)) for id, s in base.segments.items()}
    house = replace(house, survey=replace(house.survey, foundation=replace(base, segments=leaning)))
    found = [f for f in findings_of(house).findings if f.address.startswith("finding/lean/")]
    assert len(found) == (len(leaning) if lean else 0)
