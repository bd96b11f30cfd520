"""Lines by both ways: what the prescriptive way asks of their panels, and what their force needs."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from groundsill.house.building import Layer
from groundsill.house.fact import Fact, measured, unknown
from groundsill.house.foundation import FoundationSegment
from groundsill.house.underfloor import Segment, Sheathing, VentOpening
from groundsill.loadpath.prescriptive import together
from groundsill.papers.views.prescriptive_view import requirement_told
from groundsill.study import Study, run, working
from groundsill.work.document import House
from groundsill.work.pieces import BoltPiece, PanelPiece, Piece, SplicePiece
from tests.forces.reference_house import reference_house
from tests.loadpath.prescribed import (
    PANEL,
    asked,
    line_of,
    one,
    with_building,
    with_lines,
    with_segments,
    with_site,
    with_under,
    with_work,
)
from tests.loadpath.two_storeys import two_storeys

# --- both ways: the reference house ----------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def reference() -> Study:
    return run(reference_house(panels={"front": 16, "right": 12, "rear": 16, "left": 12}), ranges=False)


@pytest.mark.parametrize(
    ("id", "asked_ft", "v_plf", "fails"), [("front", 16, 314.6, False), ("right", 12, 419.5, True)]
)
def test_the_prescriptive_length_passes_at_three_quarters_and_fails_on_the_short_walls_at_full_force(
    reference: Study, id: str, asked_ft: float, v_plf: float, fails: bool
) -> None:
    both = next(line for line in reference.runs[0].prescriptive if line.line == id).both
    assert both.prescriptive_ft == pytest.approx(asked_ft)
    assert both.engineered_full_ft == pytest.approx(13.25, abs=0.01)
    assert both.engineered_reduced_ft == pytest.approx(9.94, abs=0.01)
    assert both.allowable_plf == pytest.approx(380)
    assert both.unit_shear_full_plf == pytest.approx(v_plf, abs=0.2)
    assert both.ratio_full is not None
    assert (both.ratio_full > 1) == fails
    assert both.ratio_reduced is not None
    assert both.ratio_reduced < 1


def test_both_ways_are_said_in_the_words_of_the_trade(reference: Study) -> None:
    words = {line.line: line.both.words for line in reference.runs[0].prescriptive}
    assert words["front"].startswith("prescriptive asks 16'-0\"; engineered 13'-3\" at full force, 10'-0\" at 75 %;")
    assert "panels of the prescriptive length would fail at full force, ratio 1.10, and not at 75 %" in words["right"]


def test_a_house_worked_out_at_a_reduced_force_is_held_against_the_full_one_all_the_same() -> None:
    full, reduced = (line_of(reference_house(force_factor=f), "right").both for f in (1.0, 0.75))
    assert reduced.engineered_full_ft == pytest.approx(full.engineered_full_ft)
    assert reduced.engineered_reduced_ft == pytest.approx(full.engineered_reduced_ft)
    other = line_of(reference_house(force_factor=0.6), "right").both
    assert other.reduced == 0.6
    assert other.engineered_full_ft == pytest.approx(full.engineered_full_ft)


def test_lighter_studs_need_more_panel_and_those_nobody_told_are_taken_from_their_range() -> None:
    house = reference_house()
    segments = house.survey.underfloor.segments
    hem = {id: replace(s, stud=replace(s.stud, species=measured("Hem-fir"))) for id, s in segments.items()}
    lighter = line_of(with_under(house, "segments", hem)).both
    assert lighter.allowable_plf == pytest.approx(380 * 0.93)
    bare = {id: replace(s, stud=replace(s.stud, species=unknown())) for id, s in segments.items()}
    untold = line_of(with_under(house, "segments", bare)).both
    assert untold.allowable_plf == pytest.approx(380)
    assert any(mark.what.startswith("Species: Douglas fir-larch, from") for mark in untold.marks)
    gone = {id: replace(s, stud=replace(s.stud, species=Fact(state="absent"))) for id, s in segments.items()}
    lost = line_of(with_under(house, "segments", gone)).both
    assert lost.engineered_full_ft is None
    assert "species is not known" in lost.why_not
    assert lost.prescriptive_ft == pytest.approx(16)


def test_a_line_that_is_not_relied_on_has_only_the_prescriptive_figure() -> None:
    house = with_under(
        reference_house(),
        "lines",
        {"front": replace(reference_house().survey.underfloor.lines["front"], relied_on=False)},
    )
    both = line_of(house).both
    assert both.engineered_full_ft is None
    assert "not relied on" in both.why_not
    assert both.prescriptive_ft == pytest.approx(16)


def test_a_prescriptive_pass_lends_the_chain_no_verdict(reference: Study) -> None:
    assert reference.prescriptive is not None
    assert reference.prescriptive.remarks[0].startswith(
        "a line that meets what the prescriptive way asks has not passed"
    )
    front = reference.runs[1].prescriptive[0]
    assert asked(front, "bracing").outcome == "meets"
    assert reference.runs[1].verdict == "fails"


def test_the_arithmetic_of_both_ways_stands_on_the_sheet() -> None:
    sheet = working(reference_house())
    both = [step for step in sheet.under("line/right/prescriptive/both") if step.result is not None]
    assert {"statics/sheathed-length", "statics/unit-shear"} <= {step.id for step in both}
    assert any(float(step.result or 0) == pytest.approx(419.5, abs=0.2) for step in both)
    assert any(step.id == "iebc-2021/A304.3.1-length" for step in sheet.under("line/right/prescriptive/bracing"))
    assert any(step.id == "iebc-2021/A304.3.2" for step in sheet.under("line/right/prescriptive/bolts/si-right"))


def test_the_doubts_of_what_was_recalled_stand_beside_the_figures(reference: Study) -> None:
    assert any("Table A304.3.1" in what for what in reference.manifest.from_memory)
    # without an open sheet no figure carries a mark, and a study is worked out with one
    assert any("A304.3.1" in mark.what for mark in reference.runs[0].prescriptive[0].both.marks)


# --- panels ----------------------------------------------------------------------------------------------------------


def panel(low: float, high: float, **other: Any) -> PanelPiece:
    told = {"panel": PANEL, "edge_spacing_in": 4.0} | other
    return PanelPiece(segment="sg-front", from_in=low, to_in=high, **told)


def laid(*pieces: Piece) -> House:
    return with_work(reference_house(), {f"pc{n}": piece for n, piece in enumerate(pieces)})


@pytest.mark.parametrize(
    ("pieces", "has_ft", "answer"),
    [
        ((panel(0, 96), panel(384, 480)), 16, "meets"),
        ((panel(0, 96), panel(384, 479)), 15.917, "short"),
        ((panel(0, 96, panel="3/8, 8d"), panel(384, 480)), 8, "short"),
        ((panel(0, 96, edge_spacing_in=6.0), panel(384, 480)), 8, "short"),
        ((panel(0, 96, panel="Structural I 15/32, 10d", edge_spacing_in=3.0), panel(384, 480)), 16, "meets"),
        ((panel(0, 60), panel(200, 300), panel(420, 480)), 8.333, "short"),
        ((panel(0, 48), panel(48, 96), panel(384, 480)), 16, "meets"),
        ((panel(0, 96, face="outside"), panel(384, 480)), 16, "meets"),
    ],
)
def test_panels_count_by_thickness_nails_and_length(pieces: tuple[Piece, ...], has_ft: float, answer: str) -> None:
    """Studs of 36 in. ask for panels of 72 in.; the line asks for 16 ft."""
    found = one(laid(*pieces), "bracing")
    assert found.has == pytest.approx(has_ft, abs=0.001)
    assert found.outcome == answer


def test_a_panel_stands_at_each_end_or_as_near_as_what_stands_there_lets_it() -> None:
    assert one(laid(panel(0, 96), panel(384, 480)), "ends").outcome == "meets"
    assert one(laid(panel(10, 106), panel(380, 476)), "ends").outcome == "meets"
    away = one(laid(panel(60, 156), panel(384, 480)), "ends")
    assert (away.outcome, away.has) == ("short", 1)
    door = VentOpening(line="front", kind="door", from_in=0, to_in=40, top_in=36)
    beside_door = with_under(laid(panel(60, 156), panel(384, 480)), "openings", {"door-1": door})
    excused = one(beside_door, "ends")
    assert excused.outcome == "cannot tell"
    assert "door door-1 between" in excused.reason


def test_old_panels_count_and_old_boards_on_the_diagonal_are_bracing_already() -> None:
    old = Sheathing(material=PANEL, nail="8d common", edge_spacing_in=measured(4.0), condition=measured("sound"))
    assert one(with_segments(reference_house(), outside=old), "bracing").outcome == "meets"
    loose = replace(old, edge_spacing_in=unknown())
    assert one(with_segments(reference_house(), outside=loose), "bracing").outcome == "cannot tell"
    for condition, answer in (("sound", "meets"), ("decayed", "short"), (None, "cannot tell")):
        fact: Fact[str] = measured(condition) if condition else unknown()
        boards = Sheathing(material="diagonal lumber sheathing, 1x", condition=fact)
        line = line_of(with_segments(reference_house(), outside=boards))
        told = asked(line, "bracing")
        assert told.outcome == answer
        if answer == "meets":  # by A303.1 nothing is asked: "8'-0" asked, 0" there" would read as a mistake
            assert (told.asked, told.has) == (None, None)
            assert "asked" not in requirement_told(told)
        assert "ends" not in {each.key for each in line.requirements}


def test_straight_boards_are_no_bracing() -> None:
    boards = Sheathing(material="horizontal lumber sheathing, 1x", condition=measured("sound"))
    assert one(with_segments(reference_house(), outside=boards), "bracing").has == 0


def test_room_is_what_tall_openings_and_gaps_leave() -> None:
    tall = {f"vent-{n}": VentOpening(line="front", from_in=60 * n, to_in=60 * n + 14, bottom_in=14, top_in=22)
            for n in range(8)}  # fmt: skip
    short = one(with_under(reference_house(), "openings", tall), "room")
    assert (short.outcome, short.has) == ("short", 0)  # nothing between vents is 72 in. long
    assert "too tall for one: nowhere" in short.reason
    assert "A301.3" in short.reason
    wide = {"vent-1": replace(tall["vent-1"], from_in=120.0, to_in=134.0)}
    assert (
        'too tall for one: 0" to 10\'-0", 11\'-2" to 40\'-0"'
        in one(with_under(reference_house(), "openings", wide), "room").reason
    )
    low = {id: replace(vent, bottom_in=0.0, top_in=7.0) for id, vent in tall.items()}
    found = one(with_under(reference_house(), "openings", low), "room")
    assert found.has == pytest.approx(40 - 8 * 16 / 12)  # each takes a stud space off


def test_without_cripple_walls_nothing_is_braced() -> None:
    house = with_segments(reference_house(), kind="joists on sill", height_in=measured(0.0))
    line = line_of(house)
    assert asked(line, "bracing").outcome == "does not apply"
    assert line.both.prescriptive_ft is None
    assert asked(line, "bolts").asked == 8
    posts = line_of(with_segments(reference_house(), kind="posts"))
    assert asked(posts, "bracing").reason.startswith("the line stands on posts")
    assert posts.both.prescriptive_ft is None


def test_stucco_under_heavy_tile_asks_for_more() -> None:
    house = reference_house()
    assemblies = dict(house.survey.building.assemblies)
    stucco = replace(assemblies["as-wall"], layers=(Layer(material="stucco 7/8 in.", psf=measured(20.0)),))
    tile = replace(assemblies["as-roof"], layers=(Layer(material="roof: clay tile, Spanish", psf=measured(10.0)),))
    light = replace(assemblies["as-roof"], layers=(Layer(material="roof: clay tile, Spanish", psf=measured(6.0)),))

    def feet(**other: Any) -> float | None:
        return line_of(with_building(house, assemblies=assemblies | other)).both.prescriptive_ft

    assert feet(**{"as-wall": stucco, "as-roof": tile}) == pytest.approx(20)
    assert feet(**{"as-wall": stucco, "as-roof": light}) == pytest.approx(16)
    assert feet(**{"as-roof": tile}) == pytest.approx(16)
    assert feet(**{"as-wall": stucco}) == pytest.approx(16)


def test_a_place_with_rules_of_its_own_is_asked_by_them_as_far_as_they_were_read() -> None:
    half = line_of(with_site(reference_house(), jurisdiction="City of San Leandro")).both
    assert half.prescriptive_ft == pytest.approx(20)  # one half, whatever the roof
    unread = line_of(with_site(reference_house(), jurisdiction="City of Los Angeles"))
    assert unread.both.prescriptive_ft is None
    assert "LAMC Table 92-A was not seen" in asked(unread, "bracing").reason
    assert unread.both.engineered_full_ft == pytest.approx(13.25, abs=0.01)


def test_more_stories_ask_for_more_of_the_same_line() -> None:
    one_story, two = (
        line_of(with_segments(h, height_in=measured(20.0)), id)
        for h, id in ((reference_house(), "front"), (two_storeys(), "line1"))
    )
    assert (one_story.stories, two.stories) == (1, 2)
    assert one_story.both.prescriptive_ft == pytest.approx(0.4 * 40)
    assert two.both.prescriptive_ft == pytest.approx(0.5 * 30)


def test_a_step_in_the_wall_asks_for_a_strap_across_it() -> None:
    house = reference_house()
    whole = house.survey.underfloor.segments["sg-front"]
    low = replace(whole, to_in=240.0, height_in=measured(24.0))
    high = replace(whole, from_in=240.0)
    stepped = with_under(house, "segments", {"sg-front": low, "sg-high": high})
    assert one(stepped, "steps").outcome == "short"
    splice = SplicePiece(line="front", station_in=243.0, capacity_lb=500.0)
    assert one(with_work(stepped, {"sp1": splice}), "steps").outcome == "meets"
    plate = 1.75  # taken for a top plate that nobody measured; the tallest section governs
    assert line_of(stepped).least_panel_ft == pytest.approx(2 * (36 - plate) / 12)
    assert "steps" not in {each.key for each in line_of(house).requirements}


def test_holes_are_counted_for_the_panels_that_are_there_or_asked_for() -> None:
    spaced = with_segments(
        reference_house(),
        stud=replace(reference_house().survey.underfloor.segments["sg-front"].stud, spacing_in=measured(16.0)),
    )
    assert one(spaced, "holes").asked == 24  # 16 ft asked, 12 stud spaces, two holes each
    panels = {"a": panel(0, 96), "b": panel(384, 480)}
    assert one(with_work(spaced, panels), "holes").outcome == "on site"
    outside = {id: replace(p, face="outside") for id, p in panels.items()}
    assert one(with_work(spaced, outside), "holes").outcome == "does not apply"


# --- together --------------------------------------------------------------------------------------------------------


def test_a_line_meets_only_where_everything_that_applies_does() -> None:
    assert together(("meets", "does not apply", "on site")) == "meets"
    assert together(("meets", "cannot tell")) == "cannot tell"
    assert together(("cannot tell", "short", "meets")) == "short"
    assert together(("does not apply",)) == "does not apply"


def test_a_line_can_meet_everything_that_is_asked_and_its_chain_still_fail() -> None:
    """The panels of the short wall: prescriptive meets, engineered fails at full force."""
    house = with_lines(reference_house(), joists="across", rim="rim joist")
    sills = {id: replace(s, condition=measured("sound")) for id, s in house.survey.underfloor.sills.items()}
    house = with_under(house, "sills", sills)
    pieces: dict[str, Piece] = {
        "pa": PanelPiece(segment="sg-right", from_in=0, to_in=72, panel=PANEL, edge_spacing_in=4.0),
        "pb": PanelPiece(segment="sg-right", from_in=288, to_in=360, panel=PANEL, edge_spacing_in=4.0),
    }
    stations = (12.0, 79.0, 146.0, 214.0, 281.0, 348.0)
    pieces |= {
        f"bo{n}": BoltPiece(line="right", station_in=at, diameter_in=0.5, embedment_in=7.0)
        for n, at in enumerate(stations)
    }
    study = run(with_work(house, pieces), ranges=False)
    line = next(one for one in study.runs[1].prescriptive if one.line == "right")
    assert line.outcome == "meets"
    assert line.within == "in"
    chain = next(chain for chain in study.runs[1].chains if chain.id == "right")
    sheathing = next(link for link in chain.links if link.address.startswith("line/right/sheathing/"))
    assert sheathing.ratio == pytest.approx(line.both.ratio_full)
    assert chain.verdict == "fails"


def test_a_foundation_of_brick_takes_its_line_out_of_the_way() -> None:
    house = reference_house()
    brick = replace(house.survey.foundation.segments["fs-left"], material="brick", reinforced=measured(False))
    foundation: dict[str, FoundationSegment] = {**house.survey.foundation.segments, "fs-left": brick}
    house = replace(
        house, survey=replace(house.survey, foundation=replace(house.survey.foundation, segments=foundation))
    )
    left = line_of(house, "left")
    assert left.within == "out"
    assert left.headline.startswith("outside the prescriptive way (unreinforced brick); its table: prescriptive asks")
    assert line_of(house, "front").within == "in"


def test_what_is_out_for_the_house_is_out_for_every_line() -> None:
    line = line_of(with_building(reference_house(), families=5))
    assert line.within == "out"
    assert line.within_reason == "5 dwellings; 4 at most"


def test_a_segment_without_a_height_leaves_its_line_untold() -> None:
    segments: dict[str, Segment] = reference_house().survey.underfloor.segments
    blind = with_under(
        reference_house(), "segments", {"sg-front": replace(segments["sg-front"], height_in=Fact(state="absent"))}
    )
    line = line_of(blind)
    assert asked(line, "bracing").outcome == "cannot tell"
    assert line.both.prescriptive_ft is None
    assert line.within == "cannot tell"
