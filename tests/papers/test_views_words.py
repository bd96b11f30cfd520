"""Words and figures of papers: the house's units, no rounding onto the wrong side of one, lists a person would say."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.house.fact import Fact, measured
from groundsill.papers.views.words import (
    counted,
    fact_value,
    fact_words,
    listed,
    quantity,
    ratio,
    sentence,
    size,
    span_words,
    tape,
)


@pytest.mark.parametrize(
    ("number", "unit", "us", "si"),
    [
        (3420.4, "lb", "3,420 lb", "15.21 kN"),
        (143.2, "plf", "143 plf", "2.09 kN/m"),
        (14.0, "psf", "14.0 psf", "0.67 kPa"),
        (1344.0, "ft^2", "1,344 sq ft", "124.86 m²"),
        (10.0, "ft", "10'-0\"", "3.048 m"),
        (3224.18, "lb*ft", "3,224 lb·ft", "3,224 lb·ft"),
        (0.16, "1", "0.16", "0.16"),
    ],
)
def test_a_quantity_is_told_in_the_units_of_the_house(number: float, unit: str, us: str, si: str) -> None:
    assert quantity(number, unit, "us") == us
    assert quantity(number, unit, "si") == si


@pytest.mark.parametrize("unit", ["lb", "lb*in", "lb-in", "plf", "in", "ft", "in^2", "1", "psf"])
def test_what_is_nothing_is_printed_as_nothing(unit: str) -> None:
    """A footing that is hardly bent is asked 0 lb-in, not a ten thousand millionth of one."""
    for dust in (4.263e-10, -4.263e-10):
        for units in ("us", "si"):
            assert quantity(dust, unit, units) == quantity(0.0, unit, units)  # type: ignore[arg-type]
    assert quantity(4.263e-10, "lb-in") == "0 lb-in"


def test_nothing_known_is_a_dash() -> None:
    assert {quantity(None, "lb"), ratio(None), size(None), tape(None)} == {"–"}


@pytest.mark.parametrize(
    ("number", "text"),
    [
        (0.4, "0.40"),
        (1.0, "1.00"),
        (1.0043, "1.0043"),
        (0.9961, "0.9961"),
        (12.345, "12.35"),
        (1.0000001, "just over 1"),
        (0.9999999, "just under 1"),
    ],
)
def test_a_ratio_has_two_places_and_more_beside_one(number: float, text: str) -> None:
    assert ratio(number) == text


@given(st.floats(0.9, 1.1))
def test_no_ratio_is_written_on_the_other_side_of_one(number: float) -> None:
    text = ratio(number)
    over = text == "just over 1" or (not text.startswith("just") and float(text) > 1)
    assert over == (number > 1)


def test_lengths_by_the_tape() -> None:
    assert size(5.5) == "5 1/2 in"
    assert size(5.5, "si") == "140 mm"
    assert tape(148.5) == "12'-4 1/2\""
    assert span_words(0.0, 80.0) == '0" to 6\'-8"'


def test_ends_of_an_uncertain_fact() -> None:
    assert fact_value(True, "") == "yes"
    assert fact_value(False, "") == "no"
    assert fact_value("sound", "") == "sound"
    assert fact_value(16.5, "in") == "16 1/2 in"
    assert fact_value(1940.0, "") == "1940"


def test_a_fact_says_how_it_is_known() -> None:
    assert fact_words(measured(24.0), "in") == "24 in"
    assert fact_words(Fact(value=1500.0, state="estimated"), "psi") == "1,500 psi, estimated"
    assert fact_words(Fact(state="unknown"), "in") == "not known"
    assert fact_words(Fact(state="absent"), "in") == "not there"


def test_lists_counts_and_sentences() -> None:
    assert listed(["bolts"]) == "bolts"
    assert listed(["bolts", "nails", "plate"]) == "bolts, nails and plate"
    assert (counted(0, "line"), counted(1, "line"), counted(3, "body", "bodies")) == ("no lines", "1 line", "3 bodies")
    assert sentence("the plate is cut") == "The plate is cut."
    assert sentence("done.") == "Done."
    assert sentence("  ") == ""
