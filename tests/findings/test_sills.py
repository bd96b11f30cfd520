"""The sill and its old bolts: each question at three answers, limits, laws, and what guides say."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.findings.finding import WEIGHTS
from groundsill.house.fact import Fact, measured, unknown
from tests.findings.changed import answers, house_with, noted, the, weights

SILL = "finding/sill/si2"
BOLTS = "finding/bolts/line2"
DRY = {
    "condition": measured("sound"), "damp": measured(False), "gap_in": measured(0.0), "thickness_in": measured(2.0),
    "soft_depth_in": unknown(),
}  # fmt: skip


def sill(seen=(), **facts):
    """The finding on a sill, sound and dry but for these facts."""
    return the(house_with("underfloor.sills", "si2", noted=seen, **DRY | facts), SILL)


def bolt(seen=(), **facts):
    """The finding on the one bolt of a line, tight and fitting but for these facts."""
    return the(house_with("underfloor.bolts", "bt3", noted=seen, **{"hole_in": measured(0.5625)} | facts), BOLTS)


def test_a_sound_dry_sill_is_left_alone():
    found = sill()
    assert weights(found) == ("does not matter",) * 3
    assert [cure.key for cure in found.cures] == ["leave"]


@pytest.mark.parametrize(
    ("facts", "expected"),
    [
        ({"condition": measured("soft"), "soft_depth_in": measured(0.5)}, ("watch", "matters", "matters")),
        ({"condition": measured("soft"), "soft_depth_in": measured(1.5)}, ("matters", "matters", "matters")),
        ({"condition": measured("soft")}, ("watch", "matters", "matters")),
        ({"condition": measured("decayed")}, ("matters", "matters", "matters")),
        ({"condition": measured("decayed"), "soft_depth_in": measured(0.5)}, ("watch", "matters", "matters")),
        ({"condition": unknown()}, ("cannot tell", "cannot tell", "cannot tell")),
        ({"damp": measured(True)}, ("does not matter", "does not matter", "watch")),
        ({"damp": unknown()}, ("does not matter", "does not matter", "cannot tell")),
        ({"gap_in": measured(0.5)}, ("watch", "watch", "does not matter")),
        ({"gap_in": unknown()}, ("cannot tell", "cannot tell", "does not matter")),
    ],
)
def test_each_question_unmet_or_open(facts, expected):
    assert weights(sill(**facts)) == expected


@pytest.mark.parametrize(("depth", "answer"), [(1.0, "yes"), (1.01, "no")])
def test_half_of_the_thickness_is_left_to_stand_on_or_not(depth, answer):
    assert answers(sill(condition=measured("soft"), soft_depth_in=measured(depth)))["bearing"] == answer


def test_the_depth_that_was_noted_counts_where_none_was_measured():
    seen = (noted("decay", "si2", "brown cubes", measured(1.75)), noted("decay", "si2", "edge", measured(0.25)))
    found = sill(seen=seen)
    assert answers(found)["bearing"] == "no"
    assert any("brown cubes" in text for text in found.observed)


def test_insects_matter_and_are_looked_at_before_they_are_poisoned():
    found = sill(seen=(noted("insects", "si2", "frass"),))
    assert found.durability.weight == "matters"
    assert "treat" in [cure.key for cure in found.cures]


def test_wood_with_any_decay_is_cut_out_where_strength_counts_after_the_water_is_gone():
    """Wood Handbook, https://issuhub.com/view/index/5801?pageIndex=143: where strength is important, pieces with even a
    small amount of decay are discarded; under 20 % of moisture decay does not start or go on."""
    found = sill(condition=measured("soft"), soft_depth_in=measured(0.1), damp=measured(True))
    assert found.earthquake.weight == "matters"
    assert [cure.key for cure in found.cures][:2] == ["dry", "cut"]
    assert found.active.answer == "no"


def test_a_tight_fitting_bolt_of_known_depth_counts():
    found = bolt()
    assert weights(found) == ("does not matter",) * 3
    assert [cure.key for cure in found.cures] == ["leave"]


@pytest.mark.parametrize(
    ("facts", "key", "answer", "first"),
    [
        ({"nut": measured("loose")}, "nut", "no", "tighten"),
        ({"nut": measured("none")}, "nut", "no", "tighten"),
        ({"nut": unknown()}, "nut", "cannot tell", "look"),
        ({"washer": "none"}, "washer", "no", "tighten"),
        ({"washer": "not seen"}, "washer", "cannot tell", "look"),
        ({"hole_in": measured(0.75)}, "hole", "no", "beside"),
        ({"hole_in": unknown()}, "hole", "cannot tell", "look"),
        ({"rust": measured("heavy")}, "rust", "no", "beside"),
        ({"rust": unknown()}, "rust", "cannot tell", "look"),
        ({"kind": "expansion"}, "kind", "no", "beside"),
        ({"kind": "not seen"}, "kind", "cannot tell", "look"),
        ({"embedment_in": unknown()}, "embedded", "cannot tell", "look"),
    ],
)
def test_a_bolt_that_is_loose_rusted_or_does_not_fit_counts_for_nothing(facts, key, answer, first):
    """Loose or rusted bolts count nothing: docsbay.net, proposed AB-107 A3-2-7; holes 1/16 in. wider: NDS 12.1.3.2."""
    found = bolt(**facts)
    assert answers(found)[key] == answer
    assert found.earthquake.weight == ("matters" if answer == "no" else "cannot tell")
    assert found.cures[0].key == first


@pytest.mark.parametrize(("hole", "answer"), [(0.5625, "yes"), (0.625, "no")])
def test_a_sixteenth_is_the_widest_hole_of_a_half_inch_bolt(hole, answer):
    assert answers(bolt(hole_in=measured(hole)))["hole"] == answer


def test_a_test_stands_for_an_embedment_that_nobody_knows():
    assert answers(bolt(embedment_in=unknown(), test_lb=measured(1500.0)))["embedded"] == "yes"


def test_an_answer_names_the_bolts_it_is_about():
    house = house_with("underfloor.bolts", "bt4", nut=measured("loose"))
    found = the(house, "finding/bolts/line3")
    told = {reason.key: reason.text for reason in found.earthquake.reasons}
    assert "A4" in told["nut"]
    assert "A5" not in told["nut"]
    assert found.mark == "A4, A5"


def test_a_line_without_bolts_has_no_finding_on_them():
    house = house_with()
    under = replace(house.survey.underfloor, bolts={})
    with pytest.raises(StopIteration):
        the(replace(house, survey=replace(house.survey, underfloor=under)), BOLTS)


depths = st.floats(0, 2).map(lambda x: round(x, 2))
conditions = st.sampled_from((unknown(), measured("soft"), measured("decayed")))


@given(
    depth=depths, times=st.floats(1, 3), damp=st.sampled_from((unknown(), measured(True), measured(False))),
    condition=conditions, gap=depths,
)  # fmt: skip
@settings(max_examples=12, deadline=None)
def test_worse_never_weighs_less_and_the_unknown_never_reads_as_nothing(depth, times, damp, condition, gap):
    found = sill(condition=condition, soft_depth_in=measured(depth), damp=damp, gap_in=measured(gap))
    worse = sill(
        condition=measured("decayed"), soft_depth_in=measured(depth * times), damp=measured(True),
        gap_in=measured(gap * times),
    )  # fmt: skip
    for name in ("gravity", "earthquake", "durability"):
        a, b = getattr(found, name).weight, getattr(worse, name).weight
        assert WEIGHTS.index(b) <= WEIGHTS.index(a)
    if not (damp.known and condition.known):
        assert found.durability.weight != "does not matter"


def test_a_depth_that_may_be_either_is_not_told():
    found = sill(condition=measured("soft"), soft_depth_in=Fact(value=1.0, low=0.5, high=1.5))
    assert answers(found)["bearing"] == "cannot tell"
