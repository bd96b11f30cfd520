"""IEBC 2021 A301 to A304: bracing, sill bolts, clips and holes as the chapter counts them, and whose rules are used."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.iebc_2021.anchors import sill_bolts_asked, spacing_asked, table_a304_3_1_bolts, table_a304_3_2
from groundsill.standards.iebc_2021.bracing import (
    bracing_asked,
    bracing_length,
    counted_beside_vent,
    least_panel,
    vent_height,
    vent_holes,
)
from groundsill.standards.iebc_2021.cripple_walls import provision
from groundsill.standards.iebc_2021.floor_ties import clips_asked, table_a304_1
from groundsill.standards.iebc_2021.rules import rules_for, table_a304_3_1_bracing
from groundsill.standards.statics.walls import sheathed_length, unit_shear
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet
from groundsill.working.steps import given as recorded
from groundsill.working.value import marks_of

FEET = st.floats(1, 120)
INCHES = st.floats(1, 1400)
STORIES = st.integers(1, 3)
MODEL = rules_for("iebc-2021", "Town of Port Ellery")

# --- the bracing -----------------------------------------------------------------------------------------------------


def test_a_52_ft_wall_at_one_half_is_asked_for_26_ft_in_two_to_six_panels() -> None:
    """The local brochure's example (recalled): 4 ft at each end and three panels of 6 ft."""
    asked = bracing_asked(50, 52, 12)
    assert (asked.total_ft, asked.least_ft, asked.fewest, asked.most, asked.fits) == (26, 4, 2, 6, True)
    assert asked.total_ft == 2 * 4 + 3 * 6


@pytest.mark.parametrize(("wall_ft", "asked_ft", "v_plf"), [(40, 16, 314.6), (30, 12, 419.5)])
def test_the_reference_houses_lines_on_forty_per_cent(wall_ft: float, asked_ft: float, v_plf: float) -> None:
    assert bracing_asked(MODEL.bracing(1, heavy=False), wall_ft, 36).total_ft == pytest.approx(asked_ft)
    assert unit_shear(5034, asked_ft) == pytest.approx(v_plf, abs=0.05)


@pytest.mark.parametrize(("force_lb", "length_ft"), [(5034, 13.25), (3776, 9.94)])
def test_the_reference_houses_engineered_lengths_at_380_plf(force_lb: float, length_ft: float) -> None:
    assert sheathed_length(force_lb, 380) == pytest.approx(length_ft, abs=0.005)


def test_a_panel_is_twice_its_studs_and_four_feet_at_least() -> None:
    assert least_panel(18, 2, 48) == 4
    assert least_panel(24, 2, 48) == 4
    assert least_panel(28, 2, 48) == pytest.approx(56 / 12)


def test_on_a_short_line_a_panel_at_each_end_governs_and_never_more_than_the_line() -> None:
    assert bracing_length(40, 15, 4) == 8
    assert bracing_length(40, 6, 4) == 6
    assert not bracing_asked(40, 3, 12).fits
    assert bracing_asked(40, 3, 12).fewest == 1


@given(st.sampled_from((40.0, 50.0, 70.0, 80.0, 100.0)), FEET, FEET, st.floats(0, 48))
def test_a_longer_wall_never_asks_less(p: float, L: float, more: float, h: float) -> None:
    assert bracing_asked(p, L + more, h).total_ft >= bracing_asked(p, L, h).total_ft - 1e-9


@given(STORIES, st.booleans(), FEET, st.floats(0, 48))
def test_more_stories_and_heavier_finishes_never_ask_less(stories: int, heavy: bool, L: float, h: float) -> None:
    def asked(n: int, stucco: bool) -> float:
        return float(bracing_asked(MODEL.bracing(n, stucco), L, h).total_ft)

    if stories < 3:
        assert asked(stories + 1, heavy) >= asked(stories, heavy)
    assert asked(stories, True) >= asked(stories, False)


@given(st.floats(0, 100), FEET, st.floats(0, 60))
def test_bracing_asked_lies_within_the_line(p: float, L: float, h: float) -> None:
    if p > 0:
        assert 0 < bracing_asked(p, L, h).total_ft <= L + 1e-9


def test_a_share_over_the_whole_line_is_refused() -> None:
    with pytest.raises(OutsideLimits, match=r"p .* = 101 %; must be above 0 and at most 100"):
        bracing_length(101, 20, 4)


# --- sill bolts ------------------------------------------------------------------------------------------------------


def test_the_reference_houses_bolts_at_six_feet_with_ends_within_twelve_inches() -> None:
    assert sill_bolts_asked(1, 0.5, 480) == 8
    assert sill_bolts_asked(1, 0.5, 360) == 6


@pytest.mark.parametrize(
    ("stories", "D", "by_length"),
    [
        (1, 0.5, {143.9: 3, 72: 3, 71.9: 2, 30: 2, 29.9: 1}),
        (2, 0.5, {143.9: 4, 72: 4, 71.9: 2, 30: 2, 29.9: 1}),
        (2, 0.625, {143.9: 3, 72: 3, 71.9: 2, 30: 2, 29.9: 1}),
        (3, 0.625, {143.9: 4, 72: 4, 71.9: 2, 30: 2, 29.9: 1}),
    ],
)
def test_short_pieces_of_sill_go_by_number(stories: int, D: float, by_length: dict[float, int]) -> None:
    assert {length: sill_bolts_asked(stories, D, length) for length in by_length} == by_length


@given(STORIES, st.sampled_from((0.625, 0.75, 1.0)), INCHES, st.floats(0, 600))
def test_a_longer_piece_never_asks_fewer_bolts(stories: int, D: float, length: float, more: float) -> None:
    assert sill_bolts_asked(stories, D, length + more) >= sill_bolts_asked(stories, D, length)


@given(st.integers(1, 2), st.sampled_from((0.625, 0.75)), INCHES)
def test_more_stories_never_ask_fewer_bolts(stories: int, D: float, length: float) -> None:
    assert sill_bolts_asked(stories + 1, D, length) >= sill_bolts_asked(stories, D, length)


@given(st.integers(1, 2), INCHES)
def test_thicker_bolts_never_make_more_of_them(stories: int, length: float) -> None:
    assert sill_bolts_asked(stories, 0.625, length) <= sill_bolts_asked(stories, 0.5, length)


@given(STORIES, INCHES)
def test_bolts_so_many_can_stand_at_their_spacing_with_the_ends_within_twelve_inches(
    stories: int, length: float
) -> None:
    n, s = sill_bolts_asked(stories, 0.625, length), spacing_asked(stories, 0.625)
    if length >= 144:
        assert (n - 1) * s + 24 >= length - 1e-6
        assert (n - 2) * s + 24 < length + 1e-6


def test_three_stories_ask_for_thicker_bolts_and_more_stories_have_no_row() -> None:
    with pytest.raises(OutsideLimits, match=r"three stories ask for 5/8 in\."):
        sill_bolts_asked(3, 0.5, 480)
    with pytest.raises(OutsideLimits, match=r"no row '4'"):
        sill_bolts_asked(4, 0.75, 480)
    with pytest.raises(OutsideLimits, match=r"D = 0\.375 in\.; sill bolts are at least 1/2 in\."):
        sill_bolts_asked(1, 0.375, 480)


# --- vents, holes, clips ---------------------------------------------------------------------------------------------


def test_studs_of_18_inches_and_more_have_two_holes_in_each_space() -> None:
    """Seen: https://up.codes/s/stud-space-ventilation ."""
    assert vent_holes(16, 16, 17.9) == 1
    assert vent_holes(16, 16, 18) == 2
    assert vent_holes(192, 16, 24) == 24
    assert vent_holes(193, 16, 24) == 26  # a part of a stud space is one


@given(st.floats(0, 600), st.floats(0, 600), st.floats(8, 48), st.floats(0, 60))
def test_more_panel_never_has_fewer_holes(b: float, more: float, s: float, h: float) -> None:
    assert vent_holes(b + more, s, h) >= vent_holes(b, s, h)


def test_a_vent_in_a_panel_lies_in_the_lowest_quarter_and_takes_a_stud_space_at_least() -> None:
    assert vent_height(40, 0.25) == 10
    assert counted_beside_vent(72, 14, 16) == 56
    assert counted_beside_vent(72, 20, 16) == 52
    assert counted_beside_vent(10, 20, 16) == 0


def test_clips_stand_closer_under_more_stories() -> None:
    assert [clips_asked(stories, 480) for stories in (1, 2, 3)] == [15, 20, 30]
    assert table_a304_1().read("3", "joist bays to one block, most") == 1
    with pytest.raises(OutsideLimits, match="no row '4'"):
        clips_asked(4, 480)


# --- whose rules -----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("place", "id"),
    [
        ("Town of Port Ellery (invented)", "iebc-2021"),
        ("City of Portland, Oregon", "portland"),
        ("Portland, OR", "portland"),
        ("Portland, Maine", "iebc-2021"),
        ("City of Los Angeles", "los-angeles"),
        ("Los Angeles County", "iebc-2021"),
        ("San Leandro", "san-leandro"),
        ("", "iebc-2021"),
    ],
)
def test_a_place_with_rules_of_its_own_is_told_by_its_name_and_state(place: str, id: str) -> None:
    rules = rules_for("iebc-2021", place)
    assert rules.id == id
    assert rules.local == (id != "iebc-2021")


def test_the_model_chapter_states_no_slope_and_some_places_do() -> None:
    assert MODEL.limit("ground slope") is None
    assert rules_for("iebc-2021", "City of Portland, Oregon").limit("ground slope") == pytest.approx(1 / 3)
    assert rules_for("iebc-2021", "City of Los Angeles").limit("dwellings") == 4


def test_what_no_public_page_gave_is_refused_and_never_taken_from_elsewhere() -> None:
    with pytest.raises(OutsideLimits, match="LAMC Table 92-A was not seen"):
        rules_for("iebc-2021", "City of Los Angeles").bracing(1, heavy=False)
    with pytest.raises(OutsideLimits, match="the part on two stories was not seen"):
        rules_for("iebc-2021", "San Leandro").bracing(2, heavy=False)
    with pytest.raises(OutsideLimits, match="not seen"):
        rules_for("iebc-2021", "San Leandro").limit("stories")
    assert rules_for("iebc-2021", "San Leandro").bracing(1, heavy=False) == 50


def test_an_edition_that_is_not_held_is_refused_by_its_name() -> None:
    rules = rules_for("iebc-2024", "")
    assert not rules.held
    for ask in (lambda: rules.limit("stories"), lambda: rules.bracing(1, heavy=False)):
        with pytest.raises(OutsideLimits, match="IEBC 2024 appendix chapter A3: this edition is not in the program"):
            ask()


def test_the_edition_before_asks_the_same_and_says_that_it_was_recalled() -> None:
    before = rules_for("iebc-2018", "")
    for stories in (1, 2, 3):
        for heavy in (False, True):
            assert before.bracing(stories, heavy) == MODEL.bracing(stories, heavy)
    with Sheet():
        marks = marks_of((before.bracing(1, heavy=False),))
    assert [mark.kind for mark in marks] == ["from memory"]


def test_only_the_half_that_was_read_goes_unmarked() -> None:
    with Sheet():
        seen = rules_for("iebc-2021", "San Leandro").bracing(1, heavy=False)
        recalled = MODEL.bracing(1, heavy=False)
    assert not marks_of((seen,))
    assert {mark.kind for mark in marks_of((recalled,))} == {"from memory"}


def test_the_marks_of_the_table_reach_the_feet_of_panel() -> None:
    with Sheet():
        asked = bracing_asked(MODEL.bracing(2, heavy=True), recorded("L", 30, "ft", "survey"), 24)
    assert any(re.search("A304.3.1, bracing.*2, stucco", mark.what) for mark in marks_of((asked.total_ft,)))


def test_figures_of_the_tables_stand_in_the_order_of_their_rows() -> None:
    """More stories, less spacing: a typing slip in a cell would show as a step the wrong way."""
    bracing, bolts, pieces = table_a304_3_1_bracing(), table_a304_3_1_bolts(), table_a304_3_2()
    for column in bracing.columns:
        shares = [bracing.read(f"iebc-2021, {n}", column) for n in (1, 2, 3)]
        assert shares == sorted(shares)
    assert bolts.read("2", 0.5) < bolts.read("1", 0.5)
    assert bolts.read("3", 0.625) < bolts.read("2", 0.625)
    for row in pieces.rows:
        counts = [pieces.read(row, column) for column in pieces.columns]
        assert counts == sorted(counts, reverse=True)
        assert counts[-1] == 1


@pytest.mark.parametrize(
    "key", ["dwellings", "stories", "foundation", "slope", "bolt-places", "bracing-share", "stud-space-holes", "phases"]
)
def test_every_rule_that_the_evaluation_cites_is_held_with_its_place(key: str) -> None:
    rule = provision(key)
    assert rule.cite.startswith("IEBC 2021 A3")
    assert rule.how in ("seen", "from memory")
