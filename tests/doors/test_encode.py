"""A house written to text and read back is the same house, and the text reads well."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest

from groundsill.doors.decode import decode
from groundsill.doors.encode import encode, to_map
from groundsill.house.fact import Fact, measured
from groundsill.house.survey import Survey
from groundsill.house.underfloor import Bolt
from groundsill.work.document import House
from tests.fixtures.small_house import small_house


def test_the_small_house_reads_back_as_it_was_written() -> None:
    house = small_house()
    assert decode(encode(house)) == house


def test_writing_what_was_read_gives_the_same_bytes() -> None:
    text = encode(small_house())
    assert encode(decode(text)) == text


def test_the_order_in_which_a_collection_was_filled_does_not_show() -> None:
    house = small_house()
    under = house.survey.underfloor
    turned = replace(under, bolts=dict(reversed(under.bolts.items())))
    other = replace(house, survey=replace(house.survey, underfloor=turned))
    assert encode(other) == encode(house)


def test_a_bare_house_pins_its_basis_and_choices_and_says_no_more_than_it_knows() -> None:
    house = House(survey=Survey(name="9 Alder Street"))
    written = json.loads(encode(house))
    assert written["format"] == "groundsill.house/1"
    assert written["basis"] == {"code": "ibc-2021"}
    assert written["choices"]["redundancy"] == 1.3
    assert written["survey"] == {"name": "9 Alder Street"}
    assert decode(encode(house)) == house


@pytest.mark.parametrize(
    ("fact", "written"),
    [
        (measured(0.5), 0.5),
        (measured(6.0), 6),
        (Fact(value=6.0, state="estimated"), {"value": 6, "state": "estimated"}),
        (Fact(value=6.0, typed="6 in"), {"value": 6, "typed": "6 in"}),
        (Fact(state="absent"), {"state": "absent"}),
        (Fact(state="unknown", low=1.0, high=2.0), {"low": 1, "high": 2, "state": "unknown"}),
    ],
)
def test_a_fact_is_bare_where_it_was_plainly_measured(fact: Fact[float], written: object) -> None:
    assert to_map(Bolt(line="line1", station_in=3.0, embedment_in=fact))["embedment_in"] == written


def test_an_unknown_fact_is_left_out() -> None:
    assert "embedment_in" not in to_map(Bolt(line="line1", station_in=3.0))


def test_letters_beyond_ascii_stand_as_themselves_and_the_text_ends_its_line() -> None:
    text = encode(House(survey=Survey(name="Štěpánka's house, ½ finished")))
    assert "Štěpánka's house, ½ finished" in text
    assert text.endswith("}\n")


def test_a_number_that_is_not_finite_is_not_written() -> None:
    house = House(survey=Survey(name="x"), choices=replace(small_house().choices, redundancy=float("nan")))
    with pytest.raises(ValueError, match="Out of range float values are not JSON compliant"):
        encode(house)
