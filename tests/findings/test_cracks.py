"""Cracks weighed for the weight of the house, for an earthquake and for its life, each condition at three answers."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.findings import findings_of
from groundsill.findings.cracks import _class_of
from groundsill.findings.finding import WEIGHTS
from groundsill.house.fact import Fact, measured, unknown
from groundsill.standards.bre_251.tables import table_1
from tests.findings.cracked import HARMLESS, LINE, STATION, cracked, the


def test_a_still_even_crack_in_line_is_no_bar_to_anything():
    found = the(cracked(**HARMLESS))
    assert (found.gravity.weight, found.earthquake.weight, found.durability.weight) == ("does not matter",) * 3
    assert found.sure
    assert found.weight == "does not matter"
    assert [cure.key for cure in found.cures] == ["leave", "fill"]
    assert found.confirm == ()
    assert [reason.key for reason in found.cause] == ["shrinkage"]


@pytest.mark.parametrize(
    ("worse", "key"),
    [
        ({"offset_in": measured(0.25)}, "offset"),
        ({"lateral_offset_in": measured(0.25)}, "offset"),
        ({"section_lost": measured(True)}, "section"),
        ({"moving": measured(True)}, "dormant"),
    ],
)
def test_any_condition_unmet_matters_in_an_earthquake(worse, key):
    found = the(cracked(**HARMLESS | worse))
    assert found.earthquake.weight == "matters"
    assert [r.key for r in found.earthquake.reasons if r.answer == "no"] == [key]


@pytest.mark.parametrize("name", ["offset_in", "lateral_offset_in", "section_lost", "moving"])
def test_any_condition_not_known_leaves_it_open_and_says_what_settles_it(name):
    found = the(cracked(**HARMLESS | {name: unknown()}))
    assert found.earthquake.weight == "cannot tell"
    assert not found.sure
    assert found.confirm


def test_a_bolt_near_it_and_a_sill_that_ends_there_matter():
    house = cracked(**HARMLESS)
    under = house.survey.underfloor
    (bolt, *_) = under.bolts.values()
    near = replace(bolt, line=LINE, station_in=STATION + 6, mark="B9")
    with_bolt = replace(house, survey=replace(house.survey, underfloor=replace(under, bolts={"near": near})))
    found = the(with_bolt)
    assert found.earthquake.weight == "matters"
    assert "clear" in [cure.key for cure in found.cures]
    assert any("B9" in r.text for r in found.earthquake.reasons)
    sills = {id: replace(s, to_in=STATION) if s.line == LINE else s for id, s in under.sills.items()}
    cut = replace(house, survey=replace(house.survey, underfloor=replace(under, sills=sills)))
    assert the(cut).cures[0].key == "strap"


@pytest.mark.parametrize(
    ("mm", "number"),
    [(0.1, "0"), (0.9, "1"), (1.0, "1"), (4.9, "2"), (5.1, "3"), (15.0, "3"), (20.0, "4"), (26.0, "5")],
)
def test_classes_of_damage_by_width(mm, number):
    """BRE Digest 251: 0.1, 1, 5, 15, 25 mm (https://www.designingbuildings.co.uk/wiki/Burland_scale)."""
    assert _class_of(measured(mm / 25.4 - 1e-9))["class"] == number


def test_the_classes_are_those_printed():
    assert [row[0] for row in table_1().rows.values()] == [0.1, 1, 5, 15, 25]


def test_a_wide_crack_is_watched_and_a_sunk_side_matters_to_the_weight():
    assert the(cracked(**HARMLESS | {"width_in": measured(0.25)})).gravity.weight == "watch"
    sunk = the(cracked(**HARMLESS | {"offset_in": measured(0.5)}))
    assert sunk.gravity.weight == "matters"
    assert [reason.key for reason in sunk.cause] == ["sunk"]


def test_bars_behind_a_wide_crack_are_watched():
    wide = HARMLESS | {"width_in": measured(1 / 8)}
    assert the(cracked(**wide)).durability.weight == "does not matter"
    assert the(cracked(reinforced=True, **wide)).durability.weight == "watch"
    assert the(cracked(reinforced=None, **wide)).durability.weight == "cannot tell"
    assert (
        the(cracked(reinforced=True, **HARMLESS | {"width_in": measured(0.01)})).durability.weight == "does not matter"
    )


@pytest.mark.parametrize(
    ("signs", "weight"),
    [
        ("old paint or dirt in it", "does not matter"),
        ("filled and still closed", "does not matter"),
        ("filled and open again", "matters"),
        ("clean and sharp", "cannot tell"),
    ],
)
def test_its_faces_tell_of_its_age_where_nobody_read_a_gauge(signs, weight):
    found = the(cracked(**HARMLESS | {"moving": unknown(), "signs": measured(signs)}))
    assert found.earthquake.weight == weight


def test_a_crack_that_still_moves_gets_no_list_of_repairs_first():
    found = the(cracked(**HARMLESS | {"moving": measured(True)}))
    assert [cure.key for cure in found.cures] == ["water", "gauge", "engineer"]


def test_steps_are_no_damage_and_a_cold_joint_is_named_as_one():
    assert not [f for f in findings_of(cracked(kind="step")).findings if f.address.startswith("finding/crack/")]
    assert [reason.key for reason in the(cracked(kind="cold joint", **HARMLESS)).cause] == ["joint"]


def test_a_house_without_breaks_says_what_was_looked_at():
    house = cracked()
    whole = replace(house.survey.foundation, breaks={})
    found = findings_of(replace(house, survey=replace(house.survey, foundation=whole)))
    assert not [f for f in found.findings if f.address.startswith("finding/crack/")]
    assert "cracks, cold joints and gaps in the foundation" in found.looked_at


widths = st.floats(0, 3).map(lambda x: round(x, 3))
facts = st.one_of(st.just(unknown()), widths.map(measured), widths.map(lambda w: Fact(value=w, low=w / 2, high=2 * w)))
flags = st.sampled_from((unknown(), measured(True), measured(False)))


@given(width=facts, up=facts, out=facts, lost=flags, moving=flags, times=st.floats(1, 4))
@settings(max_examples=12)
def test_worse_measures_never_weigh_less_and_the_unknown_never_reads_as_nothing(width, up, out, lost, moving, times):
    told = {"width_in": width, "offset_in": up, "lateral_offset_in": out, "section_lost": lost, "moving": moving}
    found = the(cracked(**told))
    worse = {
        k: measured(f.value * times) if k.endswith("_in") and f.known and not f.uncertain else f
        for k, f in told.items()
    }
    heavier = the(cracked(**worse))
    for name in ("gravity", "earthquake"):
        a, b = getattr(found, name).weight, getattr(heavier, name).weight
        assert WEIGHTS.index(b) <= WEIGHTS.index(a)
    if not all(fact.known for name, fact in told.items() if name != "width_in"):
        assert found.earthquake.weight != "does not matter"
    assert all(r.source for j in (found.gravity, found.earthquake, found.durability) for r in j.reasons)
