"""The prescriptive way over a house: the scope item by item, what each line is asked for, and both ways beside it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

import pytest

from groundsill.forces.reading import Reading
from groundsill.house.building import Layer
from groundsill.house.fact import Fact, measured, unknown
from groundsill.house.foundation import FoundationSegment
from groundsill.house.settle import prepare
from groundsill.house.underfloor import Bolt, FloorConnection, Segment, Sheathing, SillPiece, VentOpening
from groundsill.loadpath.prescriptive import PrescriptiveLine, Requirement, ScopeItem, scope_at, together
from groundsill.study import Study, run, working
from groundsill.work.document import Alternative, Basis, EditionOverride, House
from groundsill.work.pieces import BoltPiece, PanelPiece, Piece, SideplatePiece, SplicePiece, TiePiece
from tests.forces.reference_house import reference_house
from tests.loadpath.two_storeys import two_storeys

LINES = ("front", "right", "rear", "left")
PANEL = "15/32, 8d"

# --- a house with one thing changed ----------------------------------------------------------------------------------


def with_under(house: House, collection: str, changed: Mapping[str, Any]) -> House:
    under = house.survey.underfloor
    there = {**getattr(under, collection), **changed}
    return replace(house, survey=replace(house.survey, underfloor=replace(under, **{collection: there})))


def with_lines(house: House, **fields: Any) -> House:
    return with_under(house, "lines", {id: replace(one, **fields) for id, one in house.survey.underfloor.lines.items()})


def with_segments(house: House, **fields: Any) -> House:
    segments = house.survey.underfloor.segments
    return with_under(house, "segments", {id: replace(one, **fields) for id, one in segments.items()})


def with_foundation(house: House, **fields: Any) -> House:
    segments = {id: replace(one, **fields) for id, one in house.survey.foundation.segments.items()}
    return replace(house, survey=replace(house.survey, foundation=replace(house.survey.foundation, segments=segments)))


def with_site(house: House, **fields: Any) -> House:
    return replace(house, survey=replace(house.survey, site=replace(house.survey.site, **fields)))


def with_building(house: House, **fields: Any) -> House:
    return replace(house, survey=replace(house.survey, building=replace(house.survey.building, **fields)))


def with_work(house: House, pieces: Mapping[str, Piece]) -> House:
    return replace(house, alternatives={"work": Alternative(name="work", pieces=dict(pieces))})


def scope(house: House) -> dict[str, ScopeItem]:
    best = prepare(house).best
    return {item.key: item for item in scope_at(Reading(best.house, best.marks))}


def line_of(house: House, id: str = "front", state: int = -1) -> PrescriptiveLine:
    study = run(house, ranges=False)
    return next(line for line in study.runs[state].prescriptive if line.line == id)


def asked(line: PrescriptiveLine, key: str) -> Requirement:
    return next(each for each in line.requirements if each.key == key)


def one(house: House, key: str, id: str = "front") -> Requirement:
    return asked(line_of(house, id), key)


# --- scope: in, out, cannot tell -------------------------------------------------------------------------------------

TALL: Fact[float] = Fact(value=47.0, low=44.0, high=50.0, state="estimated")
PORTLAND = {"jurisdiction": "City of Portland, Oregon"}
LOS_ANGELES = {"jurisdiction": "City of Los Angeles"}
SAN_LEANDRO = {"jurisdiction": "San Leandro"}


def masonry(reinforced: Fact[bool]) -> Callable[[House], House]:
    return lambda house: with_foundation(house, material="brick", reinforced=reinforced)


def third_storey(house: House) -> House:
    storeys = house.survey.building.storeys
    third = replace(storeys["st2"], order=3, name="Top", floor_z_in=storeys["st2"].floor_z_in + 108.0)
    return with_building(house, storeys={**storeys, "st3": third})


def fourth_storey(house: House) -> House:
    house = third_storey(house)
    storeys = house.survey.building.storeys
    fourth = replace(storeys["st3"], order=4, name="Loft", floor_z_in=storeys["st3"].floor_z_in + 108.0)
    return with_building(house, storeys={**storeys, "st4": fourth})


SCOPE: list[tuple[str, str, Callable[[House], House]]] = [
    ("dwellings", "in", lambda h: with_building(h, families=4)),
    ("dwellings", "out", lambda h: with_building(h, families=5)),
    ("dwellings", "out", lambda h: with_site(with_building(h, families=3), **PORTLAND)),
    ("dwellings", "cannot tell", lambda h: with_site(h, **SAN_LEANDRO)),
    ("poles", "in", lambda h: h),
    ("poles", "cannot tell", lambda h: with_segments(h, kind="posts")),
    ("prescriptive-height", "in", lambda h: with_segments(h, height_in=measured(46.5))),
    ("prescriptive-height", "out", lambda h: with_segments(h, height_in=measured(47.0))),
    ("prescriptive-height", "cannot tell", lambda h: with_segments(h, height_in=Fact(state="absent"))),
    ("prescriptive-height", "cannot tell", lambda h: with_site(h, **SAN_LEANDRO)),
    ("slab", "in", lambda h: h),
    ("slab", "cannot tell", lambda h: with_lines(beside(h), storey="st1")),
    ("foundation", "in", lambda h: h),
    ("foundation", "in", masonry(measured(True))),
    ("foundation", "out", masonry(measured(False))),
    ("foundation", "out", masonry(Fact(state="absent"))),
    ("foundation", "out", lambda h: with_foundation(h, material="stone")),
    ("foundation", "out", lambda h: with_foundation(h, material="none")),
    ("foundation", "cannot tell", lambda h: with_foundation(h, material="not seen")),
    ("foundation", "out", lambda h: with_foundation(h, to_in=200.0)),
    ("slope", "in", lambda h: with_site(h, **PORTLAND, slope_rise_per_run=measured(0.33))),
    ("slope", "out", lambda h: with_site(h, **PORTLAND, slope_rise_per_run=measured(0.4))),
    ("slope", "cannot tell", lambda h: with_site(h, **PORTLAND, slope_rise_per_run=unknown())),
    ("level-floors", "in", lambda h: with_site(h, **LOS_ANGELES)),
    ("level-floors", "out", lambda h: with_site(beside(h, 20.0), **LOS_ANGELES)),
]  # fmt: skip


def beside(house: House, higher_in: float = 0.0) -> House:
    """The house with a storey of its own beside it, on no line."""
    building = house.survey.building
    corners = building.corners | {
        "far-a": replace(building.corners["se0"], x_in=600.0), "far-b": replace(building.corners["ne0"], x_in=600.0)
    }  # fmt: skip
    first = building.storeys["st1"]
    other = replace(first, order=2, outline=("se0", "far-a", "far-b", "ne0"), floor_z_in=first.floor_z_in + higher_in)
    return with_building(house, corners=corners, storeys={**building.storeys, "st9": other})


@pytest.mark.parametrize(("key", "answer", "change"), SCOPE)
def test_every_item_of_the_scope_has_its_answers(key: str, answer: str, change: Callable[[House], House]) -> None:
    item = scope(change(reference_house()))[key]
    assert item.answer == answer
    assert item.reason
    assert item.clause.startswith("A30")
    assert item.fact


@pytest.mark.parametrize(
    ("make", "height_in", "answer"),
    [
        (two_storeys, 40.0, "in"),
        (lambda: third_storey(two_storeys()), 17.0, "in"),
        (lambda: third_storey(two_storeys()), 24.0, "out"),
        (lambda: third_storey(two_storeys()), None, "cannot tell"),
        (lambda: fourth_storey(two_storeys()), 12.0, "out"),
    ],
)
def test_stories_and_the_studs_under_three_of_them(
    make: Callable[[], House], height_in: float | None, answer: str
) -> None:
    """A double plate of 3 in. stands on the studs: a wall of 17 in. has studs of 14 in."""
    house = make()
    lines = house.survey.underfloor.lines
    plates = {
        id: replace(line, top_plate=replace(line.top_plate, layers=2, thickness_in=measured(1.5)))
        for id, line in lines.items()
    }
    height: Fact[float] = Fact(state="absent") if height_in is None else measured(height_in)
    house = with_segments(with_under(house, "lines", plates), height_in=height)
    assert scope(house)["stories"].answer == answer


def test_stories_that_nobody_limits_in_print_cannot_be_told() -> None:
    assert scope(with_site(reference_house(), **SAN_LEANDRO))["stories"].answer == "cannot tell"


def test_a_slope_is_asked_only_where_the_rules_have_one() -> None:
    assert "slope" not in scope(reference_house())
    assert "level-floors" not in scope(with_site(reference_house(), **PORTLAND))


def test_an_edition_that_is_not_held_leaves_the_scope_untold() -> None:
    house = reference_house()
    overrides = house.basis.overrides | {"iebc": EditionOverride(edition="iebc-2024", reason="the town's")}
    study = run(replace(house, basis=Basis(code=house.basis.code, overrides=overrides)), ranges=False)
    assert study.prescriptive is not None
    assert study.prescriptive.within == "cannot tell"
    front = study.runs[0].prescriptive[0]
    assert front.both.prescriptive_ft is None
    assert front.both.engineered_full_ft == pytest.approx(13.25, abs=0.01)
    assert asked(front, "bracing").answer == "cannot tell"


def test_a_height_that_may_lie_on_either_side_of_four_feet_cannot_be_told() -> None:
    house = with_segments(reference_house(), height_in=TALL)
    assert scope(house)["prescriptive-height"].answer == "out"  # at its best, with the sill
    study = run(with_segments(reference_house(), height_in=replace(TALL, value=45.0)))
    assert study.prescriptive is not None
    item = next(i for i in study.prescriptive.scope if i.key == "prescriptive-height")
    assert item.answer == "cannot tell"
    assert "it depends on: Height, sill top to the top of the plate" in item.reason
    assert study.prescriptive.within == "cannot tell"


def test_block_that_may_or_may_not_be_reinforced_cannot_be_told() -> None:
    house = with_building(with_foundation(reference_house(), material="block"), year_built=measured(1952.0))
    study = run(house)
    assert study.prescriptive is not None
    item = next(i for i in study.prescriptive.scope if i.key == "foundation")
    assert item.answer == "cannot tell"
    assert "it depends on: Reinforced, 4 together" in item.reason
    assert any(mark.kind == "assumed range" for mark in item.marks)


def test_what_is_out_outweighs_what_cannot_be_told() -> None:
    house = with_site(with_building(reference_house(), families=9), slope_rise_per_run=unknown(), **PORTLAND)
    study = run(house, ranges=False)
    assert study.prescriptive is not None
    assert study.prescriptive.within == "out"
    assert study.prescriptive.rules == "portland"
    assert any("was not seen: it is told by the model chapter" in words for words in study.prescriptive.remarks)


def test_the_weaknesses_are_told_by_the_lines_that_have_them() -> None:
    study = run(masonry(measured(False))(reference_house()), ranges=False)
    assert study.prescriptive is not None
    found = {weak.key: weak for weak in study.prescriptive.weaknesses}
    assert found["masonry-perimeter"].answer == "there"
    assert "L1, L2, L3, L4" in found["masonry-perimeter"].reason
    assert found["perimeter-gaps"].answer == "not there"
    assert found["sill-connection"].answer == "there"
    assert found["cripple-wall-bracing"].answer == "there"
    posts = run(with_segments(reference_house(), kind="posts"), ranges=False).prescriptive
    assert posts is not None
    assert {weak.key: weak.answer for weak in posts.weaknesses}["isolated-pads"] == "there"


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


def test_lighter_studs_need_more_panel_and_unknown_ones_leave_it_untold() -> None:
    house = reference_house()
    segments = house.survey.underfloor.segments
    hem = {id: replace(s, stud=replace(s.stud, species="Hem-fir")) for id, s in segments.items()}
    lighter = line_of(with_under(house, "segments", hem)).both
    assert lighter.allowable_plf == pytest.approx(380 * 0.93)
    bare = {id: replace(s, stud=replace(s.stud, species="")) for id, s in segments.items()}
    untold = line_of(with_under(house, "segments", bare)).both
    assert untold.engineered_full_ft is None
    assert "species is not known" in untold.why_not
    assert untold.prescriptive_ft == pytest.approx(16)


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
    assert asked(front, "bracing").answer == "meets"
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
    assert found.answer == answer


def test_a_panel_stands_at_each_end_or_as_near_as_what_stands_there_lets_it() -> None:
    assert one(laid(panel(0, 96), panel(384, 480)), "ends").answer == "meets"
    assert one(laid(panel(10, 106), panel(380, 476)), "ends").answer == "meets"
    away = one(laid(panel(60, 156), panel(384, 480)), "ends")
    assert (away.answer, away.has) == ("short", 1)
    door = VentOpening(line="front", kind="door", from_in=0, to_in=40, top_in=36)
    beside_door = with_under(laid(panel(60, 156), panel(384, 480)), "openings", {"door-1": door})
    excused = one(beside_door, "ends")
    assert excused.answer == "cannot tell"
    assert "door door-1 between" in excused.reason


def test_old_panels_count_and_old_boards_on_the_diagonal_are_bracing_already() -> None:
    old = Sheathing(material=PANEL, nail="8d common", edge_spacing_in=measured(4.0), condition=measured("sound"))
    assert one(with_segments(reference_house(), outside=old), "bracing").answer == "meets"
    loose = replace(old, edge_spacing_in=unknown())
    assert one(with_segments(reference_house(), outside=loose), "bracing").answer == "cannot tell"
    for condition, answer in (("sound", "meets"), ("decayed", "short"), (None, "cannot tell")):
        fact: Fact[str] = measured(condition) if condition else unknown()
        boards = Sheathing(material="diagonal lumber sheathing, 1x", condition=fact)
        line = line_of(with_segments(reference_house(), outside=boards))
        assert asked(line, "bracing").answer == answer
        assert "ends" not in {each.key for each in line.requirements}


def test_straight_boards_are_no_bracing() -> None:
    boards = Sheathing(material="horizontal lumber sheathing, 1x", condition=measured("sound"))
    assert one(with_segments(reference_house(), outside=boards), "bracing").has == 0


def test_room_is_what_tall_openings_and_gaps_leave() -> None:
    tall = {f"vent-{n}": VentOpening(line="front", from_in=60 * n, to_in=60 * n + 14, bottom_in=14, top_in=22)
            for n in range(8)}  # fmt: skip
    short = one(with_under(reference_house(), "openings", tall), "room")
    assert (short.answer, short.has) == ("short", 0)  # nothing between vents is 72 in. long
    assert "A301.3" in short.reason
    low = {id: replace(vent, bottom_in=0.0, top_in=7.0) for id, vent in tall.items()}
    found = one(with_under(reference_house(), "openings", low), "room")
    assert found.has == pytest.approx(40 - 8 * 16 / 12)  # each takes a stud space off


def test_without_cripple_walls_nothing_is_braced() -> None:
    house = with_segments(reference_house(), kind="joists on sill", height_in=measured(0.0))
    line = line_of(house)
    assert asked(line, "bracing").answer == "does not apply"
    assert line.both.prescriptive_ft is None
    assert asked(line, "bolts").asked == 8


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
    assert one(stepped, "steps").answer == "short"
    splice = SplicePiece(line="front", station_in=243.0, capacity_lb=500.0)
    assert one(with_work(stepped, {"sp1": splice}), "steps").answer == "meets"
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
    assert one(with_work(spaced, panels), "holes").answer == "on site"
    outside = {id: replace(p, face="outside") for id, p in panels.items()}
    assert one(with_work(spaced, outside), "holes").answer == "does not apply"


# --- sills -----------------------------------------------------------------------------------------------------------


def bolts(*stations: float, **other: Any) -> dict[str, Piece]:
    told = {"diameter_in": 0.5, "embedment_in": 7.0} | other
    return {f"bo{n}": BoltPiece(line="front", station_in=at, **told) for n, at in enumerate(stations)}


EIGHT = (12.0, 78.0, 143.0, 208.0, 272.0, 338.0, 402.0, 468.0)


@pytest.mark.parametrize(
    ("pieces", "has", "answer", "said"),
    [
        (bolts(*EIGHT), 8, "meets", ""),
        (bolts(*EIGHT[:-1]), 7, "short", ""),
        (bolts(*EIGHT, diameter_in=0.375), 0, "short", "too thin"),
        (bolts(*EIGHT, plate_washer=False), 0, "short", "no plate washer"),
        (bolts(20.0, *EIGHT[1:]), 8, "short", "nearest its start stands 20 in."),
        (bolts(6.0, *EIGHT[1:]), 8, "short", "nearest its start stands 6 in."),
        (bolts(12.0, 143.0, 208.0, 240.0, 272.0, 338.0, 402.0, 468.0), 8, "short", "131 in. apart"),
        (bolts(*EIGHT, 86.0), 9, "short", "8 in. apart, 12 in. at least"),
    ],
)
def test_new_bolts_count_by_number_washer_and_place(pieces: dict[str, Piece], has: int, answer: str, said: str) -> None:
    found = [r for r in line_of(with_work(reference_house(), pieces)).requirements if r.key == "bolts"][1]
    assert (found.asked, found.has, found.answer) == (8, has, answer)
    assert said in found.reason
    assert found.where == "sill si-front, 40'-0\""


OLD = Bolt(
    line="front", station_in=0.0, kind="cast-in", diameter_in=measured(0.5), nut=measured("tight"), washer="plate",
    rust=measured("none"),
)  # fmt: skip


@pytest.mark.parametrize(
    ("bolt", "answer", "said"),
    [
        (OLD, "meets", ""),
        (replace(OLD, washer="cut"), "short", "would count with a plate washer and a tight nut"),
        (replace(OLD, nut=measured("loose")), "short", "would count with a plate washer and a tight nut"),
        (replace(OLD, diameter_in=measured(0.375)), "short", "(0.375 in.)"),
        (replace(OLD, rust=measured("heavy")), "short", "(heavily rusted)"),
        (replace(OLD, kind="screw"), "short", "(screw anchor)"),
        (replace(OLD, washer="not seen"), "cannot tell", "not seen well enough"),
        (replace(OLD, kind="not seen"), "cannot tell", "not seen well enough"),
        (replace(OLD, rust=Fact(state="absent")), "meets", ""),
    ],
)
def test_old_bolts_count_where_they_are_sound_with_a_new_washer(bolt: Bolt, answer: str, said: str) -> None:
    old = {f"bt{n}": replace(bolt, station_in=at) for n, at in enumerate(EIGHT)}
    found = one(with_under(reference_house(), "bolts", old), "bolts")
    piece = [r for r in line_of(with_under(reference_house(), "bolts", old)).requirements if r.key == "bolts"][1]
    assert found.answer == answer
    assert said in piece.reason


def test_old_bolts_count_beside_new_ones() -> None:
    old = {f"bt{n}": replace(OLD, station_in=at) for n, at in enumerate(EIGHT[:4])}
    house = with_work(with_under(reference_house(), "bolts", old), bolts(*EIGHT[4:]))
    assert one(house, "bolts").answer == "meets"


def test_a_side_plate_counts_from_900_lb() -> None:
    def plates(capacity: float) -> House:
        pieces = {
            f"sp{n}": SideplatePiece(line="front", station_in=at, capacity_lb=capacity, from_top_in=4.0)
            for n, at in enumerate(EIGHT)
        }
        return with_work(reference_house(), pieces)

    assert one(plates(900), "bolts").answer == "meets"
    weak = [r for r in line_of(plates(899)).requirements if r.key == "bolts"][1]
    assert (weak.answer, weak.has) == ("short", 0)


def test_two_stories_take_half_inch_bolts_closer_and_three_none_of_them() -> None:
    house = with_segments(two_storeys(), height_in=measured(12.0))
    sill = SillPiece(line="line1", from_in=0.0, to_in=360.0, thickness_in=measured(1.5))
    house = with_under(
        house,
        "sills",
        dict.fromkeys([k for k, s in house.survey.underfloor.sills.items() if s.line == "line1"][:1], sill),
    )
    assert line_of(house, "line1").stories == 2
    assert one(house, "bolts", "line1").asked is not None
    tall = third_storey(house)
    least = next(r for r in line_of(tall, "line1").requirements if r.key == "bolts" and r.where)
    assert "bolts of 5/8 in, 48 in apart" in least.reason


def test_no_sill_surveyed_leaves_the_bolts_untold() -> None:
    house = reference_house()
    under = replace(house.survey.underfloor, sills={})
    found = one(replace(house, survey=replace(house.survey, underfloor=under)), "bolts")
    assert (found.answer, found.asked) == ("cannot tell", None)


@pytest.mark.parametrize(
    ("condition", "answer"),
    [
        (measured("sound"), "meets"),
        (measured("soft"), "short"),
        (measured("decayed"), "short"),
        (unknown(), "cannot tell"),
    ],
)
def test_the_wood_of_the_sill_is_sound_or_is_replaced(condition: Fact[str], answer: str) -> None:
    sills = {id: replace(s, condition=condition) for id, s in reference_house().survey.underfloor.sills.items()}
    assert one(with_under(reference_house(), "sills", sills), "wood").answer == answer


# --- floor -----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("joists", "rim", "answer"),
    [
        ("across", "rim joist", "meets"),
        ("across", "none", "short"),
        ("across", "blocking", "cannot tell"),
        ("across", "not seen", "cannot tell"),
        ("parallel", "rim joist", "meets"),
        ("parallel", "none", "short"),
        ("not seen", "rim joist", "cannot tell"),
    ],
)
def test_joists_are_kept_from_rolling(joists: str, rim: str, answer: str) -> None:
    house = with_lines(reference_house(), joists=joists, rim=rim)
    assert one(house, "blocking").answer == answer
    tie = TiePiece(line="front", from_in=0.0, to_in=480.0, count=20, capacity_lb=500.0, adds_rim=True)
    assert one(with_work(house, {"t1": tie}), "blocking").answer == "meets"


@pytest.mark.parametrize(
    ("connection", "answer"),
    [
        (FloorConnection(kind="toenails", nail="8d common", spacing_in=measured(6.0)), "meets"),
        (FloorConnection(kind="toenails", nail="8d common", spacing_in=measured(8.0)), "short"),
        (FloorConnection(kind="toenails", nail="8d common", spacing_in=Fact(state="absent")), "cannot tell"),
        (FloorConnection(kind="none"), "short"),
        (FloorConnection(), "cannot tell"),
    ],
)
def test_toenails_are_looked_at_in_houses_of_more_than_one_story(connection: FloorConnection, answer: str) -> None:
    fields = {"joists": "across", "rim": "rim joist", "floor_connection": connection}
    assert one(with_lines(reference_house(), **fields), "clips").answer == "does not apply"
    house = with_lines(with_segments(two_storeys(), height_in=measured(20.0)), **fields)
    assert one(house, "clips", "line1").answer == answer
    tie = TiePiece(line="line1", from_in=0.0, to_in=360.0, count=15, capacity_lb=450.0)
    assert one(with_work(house, {"t1": tie}), "clips", "line1").answer == "meets"
    few = replace(tie, count=14)
    assert one(with_work(house, {"t1": few}), "clips", "line1").answer in (answer, "short")


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
    assert line.answer == "meets"
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
    assert asked(line, "bracing").answer == "cannot tell"
    assert line.both.prescriptive_ft is None
    assert line.within == "cannot tell"
