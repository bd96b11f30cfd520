"""Soil against wood: the code's distances at their edges, what is at risk, when lowering or an air gap is offered."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.findings import findings_of
from groundsill.findings.air_gap import DEEPEST_STAKE_IN, fence_for, works_to_in
from groundsill.findings.finding import WEIGHTS, Finding
from groundsill.house.fact import measured, unknown
from groundsill.house.record import Observation
from groundsill.standards.irc_2021.decay import table_r317_1
from tests.findings.leaning import CLEAR, about, front, stood, told, with_sills
from tests.properties.skewed import skewed_houses

READY = {
    "outside_use": measured("level garden"), "drains_to_daylight": measured(True), "depth_in": measured(30.0),
}  # fmt: skip


def the(house) -> Finding:
    found = told(house, "soil")
    assert found is not None
    return found


def cures(house) -> list[str]:
    return [cure.key for cure in the(house).cures]


def answers(found: Finding) -> dict[str, str]:
    return {r.key: r.answer for r in (*found.gravity.reasons, *found.durability.reasons, *found.fits)}


@pytest.mark.parametrize(
    ("wood", "inches"),
    [
        ("joists over a crawlspace", 18), ("girders over a crawlspace", 12), ("columns in a crawlspace", 8),
        ("framing on an exterior foundation wall", 8), ("siding and sheathing over the ground", 6),
        ("siding and sheathing over a slab or step", 2),
    ],
)  # fmt: skip
def test_the_distances_are_those_of_the_code(wood, inches):
    """R317.1 as read at up.codes/s/location-required."""
    assert table_r317_1().read(wood) == inches


@pytest.mark.parametrize(
    ("above", "weight"), [(8.0, None), (7.9, "watch"), (0.5, "watch"), (0.0, "matters"), (-3.0, "matters")]
)
def test_eight_inches_are_clear_less_is_watched_and_touching_matters(above, weight):
    found = told(stood(**CLEAR | {"above_outside_soil_in": measured(above)}), "soil")
    assert (found and found.durability.weight) == weight


def test_soil_inside_counts_and_what_nobody_measured_is_no_finding_here():
    assert the(stood(**CLEAR | {"above_inside_soil_in": measured(3.0)})).durability.weight == "watch"
    assert told(stood(**CLEAR | {"above_outside_soil_in": unknown()}), "soil") is None


def test_a_range_across_nothing_left_cannot_be_told():
    found = the(stood(**CLEAR | {"above_outside_soil_in": about(1.0, -2.0, 3.0)}))
    assert answers(found)["touches"] == "cannot tell"
    assert found.durability.weight == "cannot tell"


def test_a_treated_sill_may_stand_near_the_ground_but_not_in_it():
    near = stood(**CLEAR | {"above_outside_soil_in": measured(3.0), "siding_above_soil_in": measured(7.0)})
    assert the(near).durability.weight == "watch"
    assert the(with_sills(near, protected=measured(True))).durability.weight == "does not matter"
    low = stood(**CLEAR | {"above_outside_soil_in": measured(3.0), "siding_above_soil_in": measured(3.0)})
    assert the(with_sills(low, protected=measured(True))).durability.weight == "watch"
    buried = stood(**CLEAR | {"above_outside_soil_in": measured(-3.0)})
    assert the(with_sills(buried, protected=measured(True))).durability.weight == "matters"


def test_rot_matters_for_the_weight_and_in_an_earthquake_and_unprobed_wood_is_open():
    near = stood(**CLEAR | {"above_outside_soil_in": measured(3.0)})
    assert the(with_sills(near, condition=measured("sound"))).gravity.weight == "does not matter"
    assert the(with_sills(near, condition=unknown())).gravity.weight == "cannot tell"
    rotten = the(with_sills(near, condition=measured("decayed")))
    assert (rotten.gravity.weight, rotten.earthquake.weight) == ("matters", "matters")
    rot = Observation(kind="decay", on=front(near), words="soft to the awl")
    seen = with_sills(stood(seen={"o": rot}, **CLEAR | {"above_outside_soil_in": measured(3.0)}), condition=unknown())
    assert the(seen).gravity.weight == "matters"


def test_touching_wood_is_first_dug_free_and_the_cap_comes_last():
    kept = cures(stood(**CLEAR | READY | {"above_outside_soil_in": measured(-1.0)}))
    assert kept[0] == "probe"
    assert kept[-1] == "cap"
    assert kept.index("lower") < kept.index("gap") < kept.index("cap")


@pytest.mark.parametrize(
    ("changed", "key"),
    [
        ({"outside_use": measured("driveway or parking")}, "behind"),
        ({"outside_use": measured("slope")}, "behind"),
        ({"outside_use": measured("stored load")}, "behind"),
        ({"outside_use": unknown()}, "behind"),
        ({"drains_to_daylight": measured(False)}, "outlet"),
        ({"drains_to_daylight": unknown()}, "outlet"),
        ({"depth_in": measured(8.0)}, "trench"),
        ({"depth_in": about(12.0, 6.0, 20.0)}, "trench"),
        ({"above_outside_soil_in": measured(-8.0)}, "strong"),
    ],
)
def test_a_gap_is_refused_where_any_of_its_conditions_is_not_met(changed, key):
    facts = CLEAR | READY | {"above_outside_soil_in": measured(-1.0)}
    assert "gap" in cures(stood(**facts))
    found = the(stood(**facts | changed))
    assert answers(found)[key] != "yes"
    assert "gap" not in [cure.key for cure in found.cures]


@pytest.mark.parametrize(
    "soil",
    [{"fill": measured(True)}, {"fill": unknown()}, {"kind": measured("clay"), "plasticity_index": measured(24.0)},
     {"kind": measured("clay")}, {"kind": unknown()}],
)  # fmt: skip
def test_fill_and_ground_that_may_swell_get_no_gap_without_an_engineer(soil):
    found = the(stood(soil=soil, **CLEAR | READY | {"above_outside_soil_in": measured(-1.0)}))
    assert answers(found)["ground"] != "yes"
    assert "gap" not in [cure.key for cure in found.cures]


def test_the_ground_is_lowered_only_where_the_footing_stays_a_foot_deep():
    facts = CLEAR | READY | {"above_outside_soil_in": measured(2.0)}
    assert "lower" in cures(stood(**facts))
    assert "lower" not in cures(stood(**facts | {"depth_in": measured(17.0)}))
    assert "lower" in cures(stood(**facts | {"depth_in": measured(18.0)}))
    assert "lower" not in cures(stood(soil={"frost_depth_in": measured(30.0)}, **facts))


def test_the_gap_says_how_it_is_built_and_whom_to_ask():
    gap = next(
        c for c in the(stood(**CLEAR | READY | {"above_outside_soil_in": measured(-1.0)})).cures if c.key == "gap"
    )
    assert '9"' in gap.what
    assert "alternative" in gap.what
    assert "{" not in gap.what
    assert gap.cautions


def test_what_the_gap_is_worked_out_from_is_shown_line_by_line():
    worked = the(stood(**CLEAR | READY | {"above_outside_soil_in": measured(-1.0)})).worked
    for place in ("Eq. 18-1", "1807.2.3", "4.3.8", "Table 4A"):
        assert any(place in line for line in worked), place
    assert the(stood(**CLEAR | READY | {"above_outside_soil_in": measured(-40.0)})).worked == ()


# ---- The fence ----


def test_a_fence_by_hand():
    """Nine inches of sand at 60 psf/ft, ground that bears 150 psf/ft: stakes every 24 in., 33 in. deep."""
    fence = fence_for(9.0, 60.0, 150.0)
    push = 60 * 0.75**2 / 2 * fence.spacing_in / 12
    deep = fence.depth_in / 12
    A = 2.34 * 1.5 * push / (150 * deep / 3 * 3.5 * 2**0.5 / 12)
    assert fence.depth_needed_in == pytest.approx(12 * 0.5 * A * (1 + (1 + 4.36 * 0.25 / A) ** 0.5))
    strength = 850 * 0.9 * 0.85 * 0.8
    assert fence.plank == pytest.approx(
        60 * 0.75 * 7.25 / 12 * (fence.spacing_in / 12) ** 2 / 8 * 12 / (strength * 7.25 * 1.5**2 / 6)
    )
    assert fence.stake == pytest.approx(push * (0.75 + deep) / 3 * 12 / (strength * 3.5**3 / 6))
    assert fence.depth_needed_in <= fence.depth_in <= DEEPEST_STAKE_IN


@given(load=st.sampled_from([30.0, 45.0, 60.0]), bearing=st.floats(80.0, 400.0), more=st.floats(0.0, 200.0))
@settings(max_examples=10, deadline=None)
def test_better_ground_holds_no_less_and_heavier_soil_no_more(load, bearing, more):
    assert works_to_in(load, bearing + more) >= works_to_in(load, bearing)
    assert works_to_in(load + more, bearing) <= works_to_in(load, bearing)


def test_nothing_holds_beyond_the_height_that_is_told():
    most = works_to_in(45.0, 200.0)
    assert fence_for(most, 45.0, 200.0) is not None
    assert fence_for(most + 1, 45.0, 200.0) is None


# ---- Laws ----


@settings(max_examples=12, deadline=None)
@given(above=st.floats(-20, 7.9), less=st.floats(0, 20))
def test_soil_that_comes_nearer_never_weighs_less(above, less):
    before, after = (the(stood(**CLEAR | {"above_outside_soil_in": measured(a)})) for a in (above, above - less))
    assert WEIGHTS.index(after.durability.weight) <= WEIGHTS.index(before.durability.weight)


@settings(max_examples=8, deadline=None)
@given(house=skewed_houses(), above=st.floats(-60, 7))
def test_any_house_with_soil_at_its_walls_is_weighed(house, above):
    base = house.survey.foundation
    low = {id: replace(s, above_outside_soil_in=measured(above)) for id, s in base.segments.items()}
    house = replace(house, survey=replace(house.survey, foundation=replace(base, segments=low)))
    for finding in findings_of(house).findings:
        assert finding.cures or finding.confirm
