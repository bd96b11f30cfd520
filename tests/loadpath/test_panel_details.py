"""What a panel asks of the wall it goes on, by either edition: each warning with its clause and its cure."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from groundsill.house.fact import Fact, measured
from groundsill.loadpath.chain import Link
from groundsill.work.document import Basis, House
from groundsill.work.pieces import PanelPiece
from tests.loadpath.bolting import a_hold_down, a_panel, links, sound_house, with_pieces

LINE, SEGMENT = "line2", "sg2"
ADDRESS = "sheathing/piece-0/both"
BY_2021 = Basis(code="ibc-2021")


def house_with(*, panel: PanelPiece | None = None, edition: str = "sdpws-2021", **stud: Any) -> House:
    """The sound house with one panel on line 2, its studs in order but for what is told."""
    house = sound_house()
    under = house.survey.underfloor
    plain = {"thickness_in": measured(1.625), "spacing_in": measured(16.0), "depth_in": measured(3.625)}
    segment = under.segments[SEGMENT]
    walls = {**under.segments, SEGMENT: replace(segment, stud=replace(segment.stud, **(plain | stud)))}
    house = replace(house, survey=replace(house.survey, underfloor=replace(under, segments=walls)))
    if edition == "sdpws-2021":
        house = replace(house, basis=BY_2021)
    return with_pieces(house, panel or a_panel(SEGMENT, 24.0, 120.0))


def sheathing(house: House) -> Link:
    """The sheathing of the panel."""
    return links(house, LINE, work=True)[ADDRESS]


def test_a_house_on_the_code_of_2021_is_checked_by_its_own_edition_and_prints_it() -> None:
    found = links(house_with(), LINE, work=True)
    assert found[ADDRESS].clause == "SDPWS 2021 Table 4.3A"
    told = " ".join(f"{link.clause} {link.reason}" for link in found.values())
    assert "SDPWS 2021" in told
    assert "SDPWS 2015" not in told
    assert found[ADDRESS].capacity == pytest.approx(1065 / 2.8)
    old = links(house_with(edition="sdpws-2015"), LINE, work=True)
    assert old[ADDRESS].clause == "SDPWS 2015 Table 4.3A"
    assert old[ADDRESS].capacity == 380.0
    assert "SDPWS 2021" not in " ".join(f"{link.clause} {link.reason}" for link in old.values())


def test_a_panel_is_expected_to_give_at_one_force_whichever_edition_it_is_checked_by() -> None:
    """What it is expected to hold is the panel's and not the edition's: 1,065 plf for wind, over 96 in."""
    found = [sheathing(house_with(edition=edition)).expected for edition in ("sdpws-2015", "sdpws-2021")]
    assert found[0] is not None
    assert found[0] == found[1]
    assert found[0].best_lb == pytest.approx(1065.0 * 8.0)
    assert "nominal unit shear for wind, alike in every edition" in found[0].basis


def test_a_panel_on_the_inside_face_says_how_the_stud_spaces_behind_it_are_vented() -> None:
    """96 in. of studs at 16 in. are six spaces, 24 in. high: a hole at the top and one at the bottom of each."""
    assert (
        "12 round holes of 2 to 3 in. in its stud spaces, midway between studs and 1 in. clear of plates and nailed "
        "edges (IEBC 2021 A304.4.3)"
    ) in sheathing(house_with()).reason
    outside = replace(a_panel(SEGMENT, 24.0, 120.0), face="outside")
    assert "round holes" not in sheathing(house_with(panel=outside)).reason


@pytest.mark.parametrize(
    ("holes", "why"),
    [
        ((3.5, 2.0), "IEBC 2021 A304.4.3: a hole of 3.5 in.; must be at most 3 in. across"),
        ((3.0, 0.75), "IEBC 2021 A304.4.3: a hole 0.75 in. clear of the plates; must be at least 1 in."),
        ((2.5, None), "IEBC 2021 A304.4.3: how far its holes are clear of plates and nailed edges is not given"),
    ],
)
def test_holes_for_air_beyond_the_chapter_leave_the_panel_unchecked(
    holes: tuple[float, float | None], why: str
) -> None:
    panel = replace(a_panel(SEGMENT, 24.0, 120.0), holes_in=holes[0], holes_clear_in=holes[1])
    found = sheathing(house_with(panel=panel))
    assert found.status == "cannot be checked"
    assert found.reason.startswith(why)
    assert "cure: smaller holes in the middle between the studs, or vents entered as openings" in found.reason


def test_holes_as_the_chapter_has_them_take_nothing() -> None:
    plain = a_panel(SEGMENT, 24.0, 120.0)
    found = sheathing(house_with(panel=replace(plain, holes_in=2.5, holes_clear_in=1.0)))
    assert found.capacity == sheathing(house_with(panel=plain)).capacity
    assert "12 round holes of 2.5 in. in its stud spaces" in found.reason


def test_close_nails_ask_for_a_second_stud_and_say_how_to_nail_it() -> None:
    """10d common through 2x into 2x, 118 lb by the table, 1.6 for earthquake: 12 x 189 / 380 is 5.96 in."""
    for edition, bound in (
        ("sdpws-2015", "nominal seismic unit shear above 700 plf"),
        ("sdpws-2021", "nominal unit shear above 980 plf"),
    ):
        reason = sheathing(house_with(edition=edition)).reason
        assert f"where panels adjoin, 3x framing or two 2x fastened together ({bound} in category D, E or F; " in reason
        assert (
            "a second 2x on each of those studs with 10d common nails at 5.5 in. holds all that the panel may" in reason
        )


def test_full_sawn_thick_studs_serve_as_they_are_and_wide_nails_ask_for_nothing() -> None:
    assert "studs 2.5 in. thick serve where panels adjoin" in sheathing(house_with(thickness_in=measured(2.5))).reason
    assert "adjoin" not in sheathing(house_with(panel=a_panel(SEGMENT, 24.0, 120.0, spacing=6.0))).reason


def test_closer_stitching_is_staggered() -> None:
    panel = replace(a_panel(SEGMENT, 24.0, 120.0, spacing=2.0), panel="Structural I 15/32, 10d")
    assert "with 10d common nails at 2.5 in., staggered, holds" in sheathing(house_with(panel=panel)).reason


@pytest.mark.parametrize(
    ("stud", "why"),
    [
        ({"spacing_in": measured(32.0)}, "and 32 in. apart; must be at least 1.5 in. thick and at most 24 in. apart"),
        ({"thickness_in": measured(1.0)}, "studs 1 in. thick and 16 in. apart"),
        ({"depth_in": measured(1.25)}, "8d nails reach 1.25 in. into the framing; must be at least 1.375 in."),
    ],
)  # fmt: skip
def test_studs_that_no_value_covers_are_refused_with_the_figures(stud: dict[str, Fact[float]], why: str) -> None:
    found = sheathing(house_with(**stud))
    assert found.status == "cannot be checked"
    assert why in found.reason


def test_thin_panels_on_close_studs_take_the_value_of_thicker_ones_and_on_wide_or_unmeasured_ones_do_not() -> None:
    thin = replace(a_panel(SEGMENT, 24.0, 120.0, spacing=6.0), panel="7/16, 8d")
    close, wide = (sheathing(house_with(panel=thin, spacing_in=measured(apart))) for apart in (16.0, 19.2))
    assert close.capacity == pytest.approx(730 / 2.8)
    assert wide.capacity == pytest.approx(670 / 2.8)
    unknown = sheathing(house_with(panel=thin, spacing_in=Fact(value=None, state="unknown"), edition="sdpws-2015"))
    assert unknown.capacity is not None
    assert unknown.capacity <= 260.0


def test_every_panel_says_where_its_nails_go() -> None:
    reason = sheathing(house_with()).reason
    assert (
        "nails at 12 in. along studs between the edges and 0.375 in. or more from a panel's edge (SDPWS 2021 4.3.7.1)"
        in reason
    )
    assert "1/8 in. between panels (common practice, no source)" in reason
    thin = replace(a_panel(SEGMENT, 24.0, 120.0), panel="7/16, 8d")
    assert "nails at 6 in. along studs" in sheathing(house_with(panel=thin, spacing_in=measured(24.0))).reason


def test_a_short_panel_is_one_piece_framed_all_round() -> None:
    short = sheathing(house_with(panel=a_panel(SEGMENT, 24.0, 66.0)))
    assert "shorter than a panel is wide: one piece, with every edge on framing or blocking" in short.reason
    assert "shorter" not in sheathing(house_with()).reason


def test_hold_downs_inside_the_end_posts_count_against_10d_nails_in_2021_alone() -> None:
    tens = replace(a_panel(SEGMENT, 24.0, 120.0), panel="15/32, 10d")
    ends = (a_hold_down(SEGMENT, 27.0), a_hold_down(SEGMENT, 117.0))
    inside = with_pieces(house_with(), tens, *ends)
    centred = with_pieces(house_with(), tens, *(replace(end, seat="in line with the end post") for end in ends))
    assert sheathing(inside).capacity == pytest.approx(0.92 * 1290 / 2.8)
    assert sheathing(centred).capacity == pytest.approx(1290 / 2.8)
    assert (
        "hold-downs H27, H117 stand inside the end posts: with 10d nails the panel counts for less (SDPWS 2021 Table "
        "4.3A note 10); cure: hold-downs in line with the posts, or 8d nails"
    ) in sheathing(inside).reason
    untold = "the bending of the end posts by hold-downs beside them (H27, H117) cannot be checked (NDS 2018 3.9.1)"
    assert untold in sheathing(inside).reason
    assert "end posts" not in sheathing(centred).reason
    old = with_pieces(house_with(edition="sdpws-2015"), tens, *ends)
    assert sheathing(old).capacity == 460.0
    assert "counts for less" not in sheathing(old).reason
    assert untold in sheathing(old).reason
    told = with_pieces(house_with(), tens, *(replace(end, from_post_in=1.25, bored_in=0.0) for end in ends))
    assert "cannot be checked" not in sheathing(told).reason


def test_a_panel_over_gypsum_goes_by_its_own_table_with_longer_nails() -> None:
    """Table 4.3B, 15/32 in. with 10d at 4 in.: what 8d nails hold straight on the studs, 1,065 plf, 760 by 2015."""
    over = replace(a_panel(SEGMENT, 24.0, 120.0), panel="15/32, 10d", over="gypsum of 5/8 in.")
    found = sheathing(house_with(panel=over))
    assert found.capacity == pytest.approx(1065 / 2.8)
    assert found.clause == "SDPWS 2021 Table 4.3B"
    assert found.title.startswith("15/32, 10d, over gypsum, ")
    assert "sound gypsum of 5/8 in. behind every edge of it, nailed through into framing" in found.reason
    assert sheathing(house_with(panel=over, edition="sdpws-2015")).capacity == 380.0
    thin = replace(over, over="gypsum of 1/2 in.")
    assert sheathing(house_with(panel=thin)).capacity == found.capacity
    short = sheathing(house_with(panel=replace(over, panel="15/32, 8d")))
    assert short.status == "cannot be checked"
    assert short.reason.startswith("SDPWS 2021 Table 4.3B has no row '15/32, 8d'")


def test_nails_reach_through_the_gypsum_or_the_panel_is_refused() -> None:
    """3 in. nails less 15/32 and 5/8: 1.9 in. into studs that are 1.25 in. deep."""
    over = replace(a_panel(SEGMENT, 24.0, 120.0), panel="15/32, 10d", over="gypsum of 5/8 in.")
    shallow = sheathing(house_with(panel=over, depth_in=measured(1.25)))
    assert shallow.status == "cannot be checked"
    assert (
        "SDPWS 2021 Table 4.3B: 10d nails reach 1.25 in. into the framing; must be at least 1.375 in." in shallow.reason
    )
    assert sheathing(house_with(panel=over, depth_in=measured(1.375))).capacity is not None


def test_hold_downs_inside_the_posts_take_nothing_from_a_panel_over_gypsum() -> None:
    """The note of 2021 stands under the table of panels on studs."""
    over = replace(a_panel(SEGMENT, 24.0, 120.0), panel="15/32, 10d", over="gypsum of 1/2 in.")
    ends = (a_hold_down(SEGMENT, 27.0), a_hold_down(SEGMENT, 117.0))
    found = sheathing(with_pieces(house_with(), over, *ends))
    assert found.capacity == pytest.approx(1065 / 2.8)
    assert "counts for less" not in found.reason


def test_no_table_has_a_panel_over_boards_or_plaster() -> None:
    found = sheathing(house_with(panel=replace(a_panel(SEGMENT, 24.0, 120.0), over="other sheathing")))
    assert found.status == "cannot be checked"
    assert (
        "no table has them over boards or plaster; cure: that sheathing taken off where the panel goes" in found.reason
    )


def test_osb_is_stiffer_and_as_strong_and_siding_is_never_of_osb() -> None:
    plywood = a_panel(SEGMENT, 24.0, 120.0)
    osb = replace(plywood, made_of="OSB")
    assert sheathing(house_with(panel=osb)).capacity == sheathing(house_with()).capacity
    assert sheathing(house_with(panel=osb)).title.startswith("15/32, 8d, OSB, ")
    siding = replace(osb, panel="plywood siding 3/8, 8d")
    refused = sheathing(house_with(panel=siding))
    assert refused.status == "cannot be checked"
    assert "plywood only" in refused.reason
    pair = (replace(a_panel(SEGMENT, 24.0, 72.0), mark="P1"), replace(osb, from_in=72.0, mark="P2"))
    shared = links(with_pieces(house_with(), *pair), LINE, work=True)
    assert "materials differ" in shared["sheathing/piece-0/both"].reason
