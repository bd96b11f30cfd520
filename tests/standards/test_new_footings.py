"""New footings by the building code and the residential code: least sizes, depth, bars, concrete."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.ibc_2021 import footings as ibc
from groundsill.standards.irc_2021 import footings as irc
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet
from groundsill.working.value import marks_of


@pytest.mark.parametrize(("stories", "width", "thickness"), [(1, 12, 6), (2, 15, 6), (3, 18, 8)])
def test_the_least_footing_by_floors(stories, width, thickness):
    least = ibc.least_footing(float(stories))
    assert (least.width, least.thickness, least.depth) == (width, thickness, 12)


def test_frost_sets_the_depth_where_the_ground_freezes():
    assert ibc.least_footing(1.0, 36.0).depth == 36.0
    assert irc.footing_depth(36.0) == 36.0
    assert irc.footing_depth(0.0) == 12.0


def test_a_fourth_floor_is_outside_the_table():
    with pytest.raises(OutsideLimits, match=r"d_f \(depth that the ground freezes.*\) = -1 in; must be at least 0 in"):
        ibc.depth_below_ground(12.0, -1.0)
    with pytest.raises(OutsideLimits, match="no row '4'"):
        ibc.least_footing(4.0)


def test_each_rule_that_a_small_footing_breaks_is_named():
    found = ibc.footing_fits(2.0, 12.0, 6.0, 10.0, p=7.0, bars=False)
    assert [(c.text, c.met) for c in found.conditions] == [
        ("at least 15 in. wide", False),
        ("at least 7 in. thick", False),
        ("bottom at least 12 in. below undisturbed ground", False),
    ]
    assert found.fits is False
    assert ibc.footing_fits(2.0, 15.0, 6.0, 12.0, p=7.0).fits is True


@given(p=st.floats(0.0, 20.0))
def test_a_plain_edge_is_never_thinner_than_six_nor_asked_thicker_than_eight(p):
    house, other = ibc.plain_edge(p, 1.0), ibc.plain_edge(p, 0.0)
    assert 6.0 <= house <= other == 8.0
    assert house >= min(p, 8.0)


@given(drop=st.floats(0.0, 60.0))
def test_a_deeper_footing_keeps_out_from_under_the_old_one(drop):
    """Thirty degrees in sand, 1 on 2 in clay or where nobody knows; the tangent is rounded to the careful side."""
    sand, other = (ibc.table_1809_6().read(soil) for soil in ("granular soil", "clay, silt or not known"))
    apart = ibc.undercut_distance(drop, sand)
    assert drop * 3**0.5 <= apart <= drop * 3**0.5 * 1.002
    assert ibc.undercut_distance(drop, other) == pytest.approx(2 * drop)


@pytest.mark.parametrize(
    ("category", "small", "psi"),
    [("B", True, 2500), ("C", False, 2500), ("D", True, 2500), ("D", False, 3000), ("E", False, 3000)],
)
def test_concrete_of_new_foundations(category, small, psi):
    assert ibc.least_concrete(category, small) == psi


def test_a_category_that_does_not_exist_is_refused():
    with pytest.raises(OutsideLimits, match="category = 'D2'; must be A, B, C, D, E or F"):
        ibc.least_concrete("D2")
    with pytest.raises(OutsideLimits, match="category = 'E'; must be one of A, B, C, D0, D1, D2"):
        irc.footing_fits(12.0, 6.0, 12.0, 0.0, "E")


def test_bars_are_asked_where_earthquakes_are_strong():
    assert ibc.footing_bars(12.0, 8.0, 0.0, 0.0, 0.0, "B").asked is False
    assert ibc.footing_bars(12.0, 8.0, 0.0, 0.0, 0.0, "C").asked is False
    assert ibc.footing_bars(12.0, 8.0, 0.0, 0.0, 0.0, "C", detached=False).enough is False
    two = ibc.footing_bars(12.0, 8.0, 2.0, 0.5, 0.40, "D", top_and_bottom=False)
    assert two.enough is True
    deep = ibc.footing_bars(12.0, 18.0, 2.0, 0.5, 0.40, "D", top_and_bottom=False)
    assert [c.text for c in deep.conditions if not c.met] == [
        "of 0.43 in2 together at least", "one at the top and one at the bottom",
    ]  # fmt: skip


def test_the_layers_of_bars_are_recalled_and_say_so():
    with Sheet():
        found = ibc.table_1905_1_7().read("wall footing", "one layer up to", symbol="h_1")
        share = ibc.table_1905_1_7().read("wall footing", "share", symbol="s")
    assert any(mark.kind == "from memory" for mark in marks_of((found,)))
    assert not marks_of((share,))


def test_a_dwellings_footing_keeps_to_the_residential_code():
    good = irc.footing_fits(15.0, 8.0, 12.0, 4.0, "D2", bottom=1.0, top=1.0, up=48.0)
    assert good.fits is True
    bare = irc.footing_fits(15.0, 8.0, 12.0, 4.0, "D2")
    assert [c.text for c in bare.conditions if not c.met] == [
        "1 #4 along its bottom", "1 #4 along the top", "#4 up into the stem at 48 in.",
    ]  # fmt: skip
    assert irc.footing_fits(15.0, 8.0, 12.0, 4.0, "B").fits is True
    assert irc.footing_fits(15.0, 8.0, 12.0, 9.0, "B").fits is False


def test_widths_by_soil_are_said_to_be_missing():
    with Sheet() as sheet:
        irc.footing_fits(15.0, 8.0, 12.0, 4.0, "B")
    assert any("were not read: only 12 in. is held to" in step.title for step in sheet.steps)
