"""How strong the concrete is, and the tests that would settle it, on paper and in words."""

from __future__ import annotations

from dataclasses import replace

import pytest

from groundsill.papers.document import BulletList, Heading, Paragraph, TableBlock, plain_text
from groundsill.papers.views.doubts import Doubts
from groundsill.papers.views.proofs_view import words_of_test
from groundsill.papers.views.strength_view import (
    HOW_FOUND,
    settling_blocks,
    settling_words,
    strength_blocks,
    strength_words,
)
from groundsill.study.settled_by import GREATEST_PSI, LEAST_PSI
from groundsill.study.strength import ConcreteStrength, CoreSite, MeanWanted, Place, SettlingTest, Threshold
from groundsill.working.value import Mark
from tests.house.test_cores import core
from tests.papers.views_sample import rows_of, small_study

CORED = ConcreteStrength(
    "fs1", "C1", "L1", 2182.0, 2182.0, 2852.0, "3 cores (TS1, TS2, TS3): mean 2,852 psi", ("TS1", "TS2", "TS3"), 3,
    2852.0, 225.0, 0.0789, 2182.0, 2284.0, None, ("rebound 29, used on this stretch alone",),
    (Mark("from memory", "ACI 214.4R-10 Table 9.2: 75 %, 3"),),
)  # fmt: skip
UNKNOWN = ConcreteStrength("fs2", "C2", "L1", None, None, None, "not known, and nothing stands in for it")
HELD = Threshold("line/l1/bolts-concrete/s1/both", "bolts of sill M1 in the foundation", "depends", 1200.0, 2500.0)
STUCK = replace(HELD, title="bolts in sill M1", passes_at=None, beyond="an anchor without its report")
NEVER = replace(HELD, title="footing lifted by H1", holds_at=None, passes_at=None, at_worst=False)
SITE = CoreSite(("C1",), ("C4",), 0, 3, (Place("C1", 40.0), Place("C1", 140.0), Place("C1", 240.0)))
TEST = SettlingTest(
    "l1", "L1", 1200.0, 2500.0, 1500.0, (MeanWanted(3, 3779.0), MeanWanted(6, 3276.0)), (SITE,), (HELD, STUCK, NEVER),
    2580.4,
)  # fmt: skip


def said(test: SettlingTest) -> str:
    return " ".join(settling_words(test, "us"))


def test_a_line_says_where_it_turns_what_no_strength_turns_and_what_to_do_instead() -> None:
    told = said(TEST)
    assert told.startswith("No strength up to 5,000 psi makes footing lifted by H1 hold; from 1,200 psi on no other")
    assert "from 2,500 psi on the others pass" in told
    assert "no strength lifts bolts in sill M1 from indicated" in told
    assert "more than the 1,500 psi looked for here at the most: cores alone will hardly settle it" in told
    assert "Cores: 3 in C1, at 3'-4\", 11'-8\" and 20'-0\", which serve C4 too, written down as the same pour." in told
    assert "3 at a mean of 3,779 psi or 6 at a mean of 3,276 psi" in told
    assert told.endswith("Or, for the bolts, tests in place to 2,580 lb on one anchor.")


def test_where_every_check_turns_they_all_pass_and_a_strength_within_reach_is_not_called_beyond_it() -> None:
    told = said(replace(TEST, thresholds=(HELD,), highest_psi=3000.0))
    assert told.startswith("From 1,200 psi on no check that strength moves fails; from 2,500 psi on they all pass.")
    assert "hardly" not in told


def test_thresholds_that_stand_on_best_values_say_so() -> None:
    told = said(replace(TEST, thresholds=(replace(HELD, at_worst=False),)))
    assert "for bolts of sill M1 in the foundation only with the other facts at their best" in told


def test_cores_enough_on_record_are_not_asked_for_again() -> None:
    told = said(replace(TEST, sites=(replace(SITE, on_record=3, wanted=0, places=()),)))
    assert "Cores on record, enough for a strength: C1 3; more of them narrow only what scatter leaves." in told
    assert "at a mean of" not in told


def test_places_of_a_pour_are_told_stretch_by_stretch() -> None:
    site = CoreSite(("C1", "C2"), (), 1, 2, (Place("C1", 40.0), Place("C2", 140.0)))
    assert "2 more, besides 1 on record, for C1 and C2, one pour: C1 at 3'-4\" and C2 at 11'-8\"" in said(
        replace(TEST, sites=(site,))
    )


def test_words_turn_to_si() -> None:
    told = " ".join(settling_words(TEST, "si"))
    assert "MPa" in told
    assert "kN" in told or " N " in told
    assert "psi" not in told


def test_the_table_shows_ends_cores_mean_spread_and_both_equivalents() -> None:
    study = replace(small_study()[1], concrete=(CORED, UNKNOWN))
    table, told = strength_blocks(study, Doubts({CORED.marks[0]: 7}))
    assert isinstance(table, TableBlock)
    first, second = ([plain_text(cell) for cell in row] for row in rows_of(table))
    assert first == [
        "C1 (L1)", "2,182 psi", "2,182 psi", "2,852 psi", "3 of 3", "2,852 psi", "225 psi (0.079)", "2,182 psi",
        "2,284 psi", "The cores. †7",
    ]  # fmt: skip
    assert second[1:4] == ["–", "–", "–"]
    assert isinstance(told, BulletList)


def test_a_house_without_poured_concrete_says_so() -> None:
    (told,) = strength_blocks(replace(small_study()[1], concrete=()), Doubts())
    assert isinstance(told, Paragraph)


def test_one_line_of_words_gives_range_and_origin() -> None:
    assert strength_words(CORED, "us") == (
        "C1 (L1): 2,182 psi, from 2,182 psi to 2,852 psi; 3 cores (TS1, TS2, TS3): mean 2,852 psi; rebound 29, used on "
        "this stretch alone."
    )
    assert strength_words(UNKNOWN, "us") == "C2 (L1): Strength not known; not known, and nothing stands in for it."


def test_each_state_has_its_lines_with_every_threshold_and_how_it_was_found() -> None:
    run = replace(small_study()[1].runs[0], settled_by=(TEST,))
    blocks = tuple(settling_blocks(run, "us"))
    assert isinstance(blocks[0], Heading)
    (table,) = [block for block in blocks if isinstance(block, TableBlock)]
    rows = [[plain_text(cell) for cell in row] for row in rows_of(table)]
    assert rows[0][2:4] == ["1,200 psi", "2,500 psi"]
    assert rows[1][3] == "none up to 5,000 psi"
    assert rows[1][4] == "Stays indicated: an anchor without its report."
    assert rows[2][2] == "none up to 5,000 psi"
    assert isinstance(blocks[-1], Paragraph)
    assert f"from {LEAST_PSI:,.0f} to {GREATEST_PSI:,.0f} psi" in HOW_FOUND


def test_a_state_that_hangs_on_no_strength_says_so() -> None:
    (told,) = settling_blocks(replace(small_study()[1].runs[0], settled_by=()), "us")
    assert isinstance(told, Paragraph)


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ({}, 'core: 3 3/4 in across, 7 in long'),
        ({"core_moisture": "soaked"}, "core: 3 3/4 in across, 7 in long, soaked"),
        ({"core_length_in": None, "core_corrected": True}, "core: 3 3/4 in across, corrected for length"),
    ],
)  # fmt: skip
def test_a_core_is_told_with_its_measures(more: dict[str, object], words: str) -> None:
    assert words_of_test(core("fs1", 2900.0, **more), "us") == words
