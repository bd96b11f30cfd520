"""Gauges and marks as findings: what each verdict weighs, what a gauge tells of its crack, and words."""

from __future__ import annotations

import dataclasses

import pytest

from groundsill.findings import findings_of
from groundsill.findings.book import KNOWN, book
from groundsill.findings.monitors import fine
from groundsill.house.fact import Fact
from groundsill.house.foundation import FoundationBreak
from groundsill.house.record import Monitor
from groundsill.house.record import Reading as Read
from groundsill.standards.common_practice import table_monitors
from groundsill.work.document import House
from tests.findings.simulated import readings
from tests.fixtures.small_house import small_house

LINE = "line-south"


def gauge(rate: float, count: int = 21, seed: int = 3, **facts: object) -> Monitor:
    told = tuple(Read(when=r.when, value=r.value_in, temperature_f=r.temperature_f)
                 for r in readings(seed, count, rate, scatter=0.004))  # fmt: skip
    return Monitor(**({"mark": "MG1", "on": "crack", "readings": told} | facts))


def house_with(*monitors: Monitor, **crack: object) -> House:
    house = small_house()
    line = next(iter(house.survey.underfloor.lines))
    cut = FoundationBreak(mark="K1", line=line, station_in=60, **crack)
    foundation = dataclasses.replace(house.survey.foundation, breaks={"crack": cut})
    told = {f"m{n}": monitor for n, monitor in enumerate(monitors)}
    survey = dataclasses.replace(house.survey, foundation=foundation, monitors=told)
    return dataclasses.replace(house, survey=survey)


def weighed(house: House, address: str):
    return next(f for f in findings_of(house).findings if f.address == address)


def three(found) -> tuple[str, str, str]:
    return found.gravity.weight, found.earthquake.weight, found.durability.weight


@pytest.mark.parametrize(
    ("kind", "rate", "expected"),
    [
        ("crack gauge", 0.03, ("matters", "matters", "watch")),
        ("crack gauge", 0.0, ("does not matter",) * 3),
        ("plumb", 0.05, ("matters", "matters", "watch")),
        ("level", 0.05, ("matters", "watch", "watch")),
        ("level", -0.05, ("matters", "watch", "watch")),
    ],
)
def test_what_moves_matters_and_what_lies_still_does_not(kind, rate, expected):
    found = weighed(house_with(gauge(rate, kind=kind, division=0.02)), "finding/monitor/m0")
    assert three(found) == expected
    assert (found.active.answer == "yes") == (rate == 0.0)


def test_too_soon_is_cannot_tell_and_says_when_to_read_again():
    found = weighed(house_with(gauge(0.03, count=4)), "finding/monitor/m0")
    assert three(found) == ("cannot tell",) * 3
    soon = "too soon to tell whether the crack goes on moving: read it again on "
    assert found.active.text == soon + found.trend.next
    assert any(found.trend.next in settle and found.trend.answer_by in settle for settle in found.confirm)
    assert found.cures[0].key == "go_on"


@pytest.mark.parametrize(
    "facts",
    [{"unit": "degrees"}, {"unit": "furlongs"}, {"readings": ()}, {"readings": (Read(when="2025-01-01", value=1),)}],
)
def test_readings_that_cannot_be_weighed_are_never_no_matter(facts):
    found = weighed(house_with(gauge(0.0, **facts)), "finding/monitor/m0")
    assert three(found) == ("cannot tell",) * 3
    assert found.confirm


def test_millimetres_are_read_as_such():
    told = gauge(0.03)
    metric = dataclasses.replace(
        told, unit="mm", readings=tuple(dataclasses.replace(r, value=r.value * 25.4) for r in told.readings)
    )
    one, two = (weighed(house_with(g), "finding/monitor/m0").trend for g in (told, metric))
    assert two.rate_in_yr == pytest.approx(one.rate_in_yr, rel=1e-9)
    assert two.moves == one.moves


def test_a_division_in_the_gauges_own_unit():
    coarse = gauge(0.0, division=2.0, unit="mm")
    assert weighed(house_with(coarse), "finding/monitor/m0").trend.spread_in >= 2 / 25.4 / 12**0.5 * 0.999


# ---- What a gauge tells of its crack ---------------------------------------------------------------------------------


def dormant(house: House) -> tuple[str, str]:
    active = weighed(house, "finding/crack/crack").active
    return active.answer, active.text


def test_a_gauge_that_lies_still_makes_its_crack_dormant():
    answer, text = dormant(house_with(gauge(0.0)))
    assert answer == "yes"
    assert "gauge MG1, not moving within 0.010 in. a year" in text


def test_a_gauge_that_moves_makes_its_crack_matter():
    found = weighed(house_with(gauge(0.03)), "finding/crack/crack")
    assert found.active.answer == "no"
    assert found.gravity.weight == found.earthquake.weight == "matters"


def test_what_the_survey_knows_goes_before_the_gauge():
    answer, text = dormant(
        house_with(gauge(0.03), moving=Fact(value=False, state="measured", how="ten years of cards"))
    )
    assert (answer, "ten years of cards" in text) == ("yes", True)


def test_the_gauge_goes_before_what_the_faces_tell():
    signs = Fact(value="old paint or dirt in it", state="measured")
    assert dormant(house_with(gauge(0.03), signs=signs))[0] == "no"
    assert dormant(house_with(gauge(0.03, count=4), signs=signs))[0] == "yes"


def test_a_gauge_too_young_to_tell_says_when_the_crack_will_be_known():
    active = weighed(house_with(gauge(0.0, count=4)), "finding/crack/crack").active
    assert active.answer == "cannot tell"
    assert "read again on 20" in active.settle


def test_of_two_gauges_the_one_that_moves_decides():
    assert dormant(house_with(gauge(0.0), gauge(0.03)))[0] == "no"
    assert dormant(house_with(gauge(0.0), gauge(0.0, count=3)))[0] == "cannot tell"


def test_a_plumb_mark_or_a_gauge_elsewhere_says_nothing_of_the_crack():
    assert dormant(house_with(gauge(0.0, kind="plumb")))[0] == "cannot tell"
    assert dormant(house_with(gauge(0.0, on=None)))[0] == "cannot tell"


# ---- Words and figures -----------------------------------------------------------------------------------------------


def test_small_lengths_in_either_system():
    assert (fine(0.0117, "us"), fine(0.0117, "si"), fine(-0.00001, "us")) == ("0.012 in.", "0.30 mm", "0.000 in.")


def test_the_figures_that_are_our_choice_say_so():
    table = table_monitors()
    assert [table.read(kind, "still within, a year") for kind in ("crack gauge", "plumb", "level")] == [0.01] * 3
    assert [table.read(kind, "division") for kind in ("crack gauge", "plumb", "level")] == [0.02, 0.0625, 0.0625]
    assert table.source_of("plumb", 0).how == "from memory"
    assert "our choice" in table.source_of("plumb", 0).where


def test_every_rule_of_the_topic_says_how_it_is_known():
    told = book("monitors")
    assert all(each.known in KNOWN and each.source for each in (*told.questions.values(), *told.cures.values()))


@pytest.mark.parametrize("place", [None, "crack", "segment", "line"])
def test_every_place_is_said(place):
    house = house_with(gauge(0.0))
    segment = next(iter(house.survey.foundation.segments))
    line = next(iter(house.survey.underfloor.lines))
    on = {"segment": segment, "line": line}.get(place, place)
    found = weighed(house_with(gauge(0.0, on=on)), "finding/monitor/m0")
    assert found.place
    assert (found.line != "") == (place is not None)
    assert (found.station_in is not None) == (place == "crack")
