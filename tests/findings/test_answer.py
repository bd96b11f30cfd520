"""Yes, no, cannot tell."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.findings.answer import at_least, at_most, every, holds, is_one_of, opposite, some
from groundsill.house.fact import Fact, measured, unknown

answers = st.lists(st.sampled_from(("yes", "no", "cannot tell")), max_size=6)


@pytest.mark.parametrize(
    ("fact", "answer"),
    [
        (measured(2.0), "yes"),
        (measured(2.5), "no"),
        (Fact(value=1.9, low=1.5, high=2.0), "yes"),
        (Fact(value=1.9, low=1.5, high=2.1), "cannot tell"),
        (Fact(value=2.2, low=2.1, high=3.0), "no"),
        (unknown(), "cannot tell"),
        (Fact(state="absent"), "yes"),
    ],
)
def test_a_figure_against_a_limit(fact, answer):
    assert at_most(fact, 2.0) == answer


@pytest.mark.parametrize(
    ("fact", "answer"),
    [
        (measured(2.0), "yes"),
        (measured(1.9), "no"),
        (Fact(value=2.1, low=2.0, high=2.5), "yes"),
        (Fact(value=2.1, low=1.9, high=2.5), "cannot tell"),
        (Fact(value=1.0, low=0.5, high=1.9), "no"),
        (Fact(low=2.5, high=3.0, state="unknown"), "yes"),
        (Fact(low=1.0, high=1.5, state="unknown"), "no"),
        (unknown(), "cannot tell"),
        (Fact(state="absent"), "no"),
    ],
)
def test_a_figure_against_the_least_it_should_be(fact, answer):
    assert at_least(fact, 2.0) == answer


@pytest.mark.parametrize(
    ("fact", "answer"),
    [(measured("a"), "yes"), (measured("c"), "no"), (unknown(), "cannot tell"), (Fact(state="absent"), "no")],
)
def test_a_word_among_those_that_are_fine(fact, answer):
    assert is_one_of(fact, "a", "b") == answer


@pytest.mark.parametrize(
    ("fact", "answer"),
    [
        (measured(True), "yes"),
        (measured(False), "no"),
        (Fact(value=False, low=False, high=True), "cannot tell"),
        (unknown(), "cannot tell"),
        (Fact(state="absent"), "no"),
    ],
)
def test_a_yes_or_no_fact(fact, answer):
    assert holds(fact) == answer


@given(answers)
def test_every_and_some_are_each_others_opposites(found):
    assert some(found) == opposite(every(opposite(a) for a in found))
    assert every(found) == ("no" if "no" in found else "cannot tell" if "cannot tell" in found else "yes")
