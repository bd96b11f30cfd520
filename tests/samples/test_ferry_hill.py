"""Ferry Hill as surveyed: a hillside house with a skewed wing, whose parts fit together.

Nothing here looks at a force, a capacity or a verdict: the survey was written before any was known.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from groundsill.doors.encode import encode
from groundsill.house.model import places
from groundsill.house.plan import area_in2, line_length_in, outline_of
from groundsill.house.survey import Survey, in_order
from groundsill.house.underfloor import Line
from groundsill.work.apply import apply
from groundsill.work.checks import check_house
from groundsill.work.document import Alternative, House
from groundsill.work.pieces import BoltPiece, HoldDownPiece, PanelPiece, SillBlockingPiece, SplicePiece
from tests.samples.parts import facts, mark_of

FILE = Path(__file__).parents[2] / "samples" / "ferry-hill" / "house.json"
# Underside of the joists over the datum, the top of the concrete at the north-east corner: old lumber, and the wing's.
PLATE_IN = {"1": 62.0, "W": 62.625}
WING = ("L7", "L8", "L9")
TAPE_IN = 1 / 16  # how finely the lines of the wing, which end at no round inch, were taped


def length(survey: Survey, line: str) -> float:
    """Length of a line between its corners, in."""
    found = line_length_in(survey, line)
    assert found is not None
    return found


def by_mark(survey: Survey, mark: str) -> str:
    """The id of the line of a mark."""
    (found,) = [key for key, line in survey.underfloor.lines.items() if line.mark == mark]
    return found


def heights(survey: Survey, mark: str) -> list[float | None]:
    """The heights along a line, each told once."""
    line = by_mark(survey, mark)
    along = [piece for _, piece in in_order(survey.underfloor.segments) if piece.line == line]
    return list(dict.fromkeys(piece.height_in.value for piece in along))


def at_middle(pieces: Iterable[Any], of: Any) -> Any:
    """The one piece under the middle of a stretch."""
    middle = 0.5 * (of.from_in + of.to_in)
    (found,) = [piece for piece in pieces if piece.line == of.line and piece.from_in <= middle < piece.to_in]
    return found


def turned_deg(survey: Survey, line: Line) -> float:
    """How far a line is turned from the nearer plan axis, degrees."""
    start, end = survey.building.corners[line.start], survey.building.corners[line.end]
    angle = math.degrees(math.atan2(end.y_in - start.y_in, end.x_in - start.x_in)) % 90
    return min(angle, 90 - angle)


def test_the_file_is_written_as_the_program_writes_it(house: House) -> None:
    assert encode(house) == FILE.read_text(encoding="utf-8")


def test_nothing_is_at_fault_in_it(house: House) -> None:
    assert [fault.line() for fault in check_house(house)] == []


def test_it_has_twelve_lines_of_which_two_inside_are_relied_on_and_a_third_is_not(survey: Survey) -> None:
    lines = [line for _, line in in_order(survey.underfloor.lines)]
    assert [line.mark for line in lines] == [f"L{n}" for n in range(1, 13)]
    decided = {line.mark: line.relied_on for line in lines if line.relied_on is not None}
    assert decided == {"L10": True, "L11": True, "L12": False}
    assert all(line.relied_reason for line in lines if line.relied_on is not None)
    assert {line.mark for line in lines if line.position == "interior"} == set(decided)


def test_the_wing_is_skewed_by_twenty_degrees_and_nothing_else_is(survey: Survey) -> None:
    for line in survey.underfloor.lines.values():
        assert turned_deg(survey, line) == pytest.approx(20.0 if line.mark in WING else 0.0, abs=0.05), line.mark


def test_it_has_what_a_real_hillside_house_has(survey: Survey) -> None:
    assert len(survey.underfloor.segments) >= 28
    assert len(survey.underfloor.obstructions) >= 10
    assert len(survey.levels) >= 20
    assert len(survey.observations) >= 18
    doubtful = [fact for fact in facts(survey) if fact.state in ("estimated", "unknown") and fact.uncertain]
    assert len(doubtful) >= 12
    assert len([fact for fact in facts(survey) if fact.state == "unknown" and fact.how]) >= 12


def test_the_walls_step_from_one_foot_to_five(survey: Survey) -> None:
    assert heights(survey, "L1") == [0.0, 12.0, 24.0, 36.0]
    assert heights(survey, "L2") == [36.0, 48.0, 60.0]
    assert heights(survey, "L3") == [60.0]
    assert heights(survey, "L6") == [36.0, 24.0, 12.0, 0.0]
    assert heights(survey, "L7") == [37.0, 49.0]


def test_the_joists_lie_on_the_sill_at_the_uphill_corner_only(survey: Survey) -> None:
    low = {mark_of(survey, wall) for wall in survey.underfloor.segments.values() if wall.kind == "joists on sill"}
    assert low == {"L1", "L6"}


def test_the_old_concrete_is_poor_all_round_and_the_wings_is_sound(survey: Survey) -> None:
    seen: dict[str, set[object]] = {}
    for stem in survey.foundation.segments.values():
        if stem.material != "none":
            seen.setdefault(mark_of(survey, stem), set()).add(stem.condition.value)
    sound = {mark for mark, conditions in seen.items() if "sound" in conditions}
    assert sound == {*WING, "L11"}
    crumbling = {mark for mark, conditions in seen.items() if "crumbling" in conditions}
    assert crumbling == {"L1", "L2", "L3", "L4", "L5", "L6", "L10"}


def test_the_two_cores_are_low_and_nobody_cored_the_wing(survey: Survey) -> None:
    cores = [test for test in survey.foundation.tests.values() if test.kind == "core"]
    assert sorted(core.result for core in cores) == [870.0, 1290.0]
    assert {mark_of(survey, survey.foundation.segments[core.segment]) for core in cores} == {"L2", "L6"}


def test_soil_stands_against_the_wood_on_the_uphill_side_only(survey: Survey) -> None:
    stems = survey.foundation.segments.values()
    buried = {mark_of(survey, stem) for stem in stems if (stem.above_outside_soil_in.value or 0.0) < 0.0}
    assert buried == {"L1", "L6"}


def test_the_foundation_is_cut_by_steps_cold_joints_and_two_cracks(survey: Survey) -> None:
    kinds = [piece.kind for piece in survey.foundation.breaks.values()]
    assert kinds.count("step") == 15
    assert {mark_of(survey, b) for b in survey.foundation.breaks.values() if b.kind == "full-depth crack"} == {
        "L2",
        "L6",
    }
    assert kinds.count("full-depth crack") == 2
    joints = {mark_of(survey, b) for b in survey.foundation.breaks.values() if b.kind == "cold joint"}
    assert joints == {"L7", "L9", "L11"}


def test_the_concrete_changes_height_where_it_steps_and_nowhere_else(survey: Survey) -> None:
    steps = {(piece.line, piece.station_in) for piece in survey.foundation.breaks.values() if piece.kind == "step"}
    found = set()
    for line in survey.underfloor.lines:
        along = sorted((s for s in survey.foundation.segments.values() if s.line == line), key=lambda s: s.from_in)
        found |= {(line, a.to_in) for a, b in pairwise(along) if a.top_z_in.value != b.top_z_in.value}
    assert found == steps


def test_the_ground_falls_away_from_the_uphill_corner(survey: Survey) -> None:
    """Top of the concrete less what stands out of the soil: the soil itself goes down along L1, L2, and up along L6."""

    def soil(mark: str) -> list[float]:
        line = by_mark(survey, mark)
        along = sorted((s for s in survey.foundation.segments.values() if s.line == line), key=lambda s: s.from_in)
        return [(s.top_z_in.value or 0.0) - (s.above_outside_soil_in.value or 0.0) for s in along]

    for mark in ("L1", "L2"):
        assert soil(mark) == sorted(soil(mark), reverse=True), mark
    assert soil("L6") == sorted(soil("L6"))
    assert survey.site.slope_rise_per_run.value == 0.2
    assert survey.site.slope_down_deg == 45.0


def test_every_mark_is_used_once(house: House) -> None:
    marks = [place.value for place in places(house, "") if place.field.name == "mark" and place.value]
    assert len(marks) > 400
    assert sorted({mark for mark in marks if marks.count(mark) > 1 and mark != "1"}) == []


def test_ids_are_opaque_and_used_once(house: House) -> None:
    held = [place.value for place in places(house, "") if place.field.shape.kind == "map"]
    ids = [key for collection in held for key in collection if key != "sdpws"]
    assert len(ids) == len(set(ids))
    assert {len(key) for key in ids} == {8}


def test_order_keys_tell_things_of_a_kind_apart(house: House) -> None:
    for place in places(house, ""):
        if place.field.shape.kind == "map" and place.field.name != "overrides":
            keys = [item.order for item in place.value.values()]
            assert len(keys) == len(set(keys)), place.path


@pytest.mark.parametrize("kind", ["segments", "foundation"])
def test_wall_and_foundation_cover_every_line_from_end_to_end(survey: Survey, kind: str) -> None:
    pieces = survey.underfloor.segments if kind == "segments" else survey.foundation.segments
    for key, line in survey.underfloor.lines.items():
        stations = sorted((p.from_in, p.to_in) for p in pieces.values() if p.line == key)
        assert stations[0][0] == 0.0, line.mark
        assert 0.0 <= length(survey, key) - stations[-1][1] <= TAPE_IN, line.mark
        for (_, ends), (begins, _) in pairwise(stations):
            assert ends == begins, f"{line.mark} at {ends}"


def test_sills_lie_on_every_foundation_but_under_the_cellar_door(survey: Survey) -> None:
    (door,) = [hole for hole in survey.underfloor.openings.values() if hole.kind == "door"]
    for key, line in survey.underfloor.lines.items():
        stretches = [(p.from_in, p.to_in) for p in survey.underfloor.sills.values() if p.line == key]
        bare = length(survey, key) - sum(end - start for start, end in stretches)
        if line.mark == "L12":
            assert stretches == []
        elif key == door.line:
            assert bare == door.to_in - door.from_in
            assert all(end <= door.from_in or start >= door.to_in for start, end in stretches)
        else:
            assert 0.0 <= bare <= TAPE_IN, line.mark


def test_concrete_sill_and_wall_add_up_to_one_level_plate(survey: Survey) -> None:
    under = survey.underfloor
    for wall in under.segments.values():
        if wall.kind in ("posts", "open"):
            continue
        sill, stem = at_middle(under.sills.values(), wall), at_middle(survey.foundation.segments.values(), wall)
        storey = survey.building.storeys[under.lines[wall.line].storey].mark
        top = (stem.top_z_in.value or 0.0) + (sill.thickness_in.value or 0.0) + (wall.height_in.value or 0.0)
        assert top == PLATE_IN[storey], wall.mark


def test_joists_and_boards_lie_between_the_plate_and_the_floor(survey: Survey) -> None:
    for field in survey.underfloor.joists.values():
        storey = survey.building.storeys[field.storey]
        assert field.depth_in.value is not None
        assert field.board_thickness_in.value is not None
        assert PLATE_IN[storey.mark] + field.depth_in.value + field.board_thickness_in.value == storey.floor_z_in


def test_the_main_floor_has_straight_boards_and_the_wing_diagonal_ones(survey: Survey) -> None:
    boards = {(survey.building.storeys[f.storey].mark, f.boards) for f in survey.underfloor.joists.values()}
    assert boards == {("1", "straight boards"), ("W", "diagonal boards")}


def test_a_sill_is_as_wide_as_the_studs_and_what_stands_out_beyond_them(survey: Survey) -> None:
    for sill in survey.underfloor.sills.values():
        plate = survey.underfloor.lines[sill.line].top_plate.width_in.value
        assert plate is not None
        inside, outside = sill.projects_inside_in.value, sill.projects_outside_in.value
        assert inside is not None and outside is not None  # noqa: PT018
        assert sill.width_in.value == plate + inside + outside, sill.mark


def test_a_sill_piece_ends_where_the_foundation_steps(survey: Survey) -> None:
    sills = survey.underfloor.sills.values()
    ends = {(sill.line, at) for sill in sills for at in (sill.from_in, sill.to_in)}
    steps = [piece for piece in survey.foundation.breaks.values() if piece.kind == "step"]
    assert all((step.line, step.station_in) in ends for step in steps)


def test_the_sills_are_rotten_at_the_low_corner(survey: Survey) -> None:
    rotten = {mark_of(survey, s) for s in survey.underfloor.sills.values() if s.condition.value == "decayed"}
    assert rotten == {"L2", "L3"}


def test_the_outlines_are_a_notched_box_a_skewed_wing_and_a_smaller_upper_floor_inside_it(survey: Survey) -> None:
    outlines = {s.mark: outline_of(survey, s.outline) or [] for s in survey.building.storeys.values()}
    areas = {mark: area_in2(points) / 144 for mark, points in outlines.items()}
    assert areas["1"] == 24 * 30 - 10 * 5
    assert areas["2"] == 14 * 25 + 3 * 9
    assert 14 * 14 < areas["W"] < 14 * 18
    for field_of in ("1", "W"):
        (storey,) = [key for key, s in survey.building.storeys.items() if s.mark == field_of]
        fields = [outline_of(survey, f.outline) for f in survey.underfloor.joists.values() if f.storey == storey]
        assert sum(area_in2(points) for points in fields if points) / 144 == pytest.approx(areas[field_of])
    xs, ys = zip(*outlines["2"], strict=True)
    assert (min(xs), max(xs), min(ys), max(ys)) == (60.0, 264.0, 0.0, 300.0)


def test_the_upper_floor_is_a_half_storey_with_knee_walls(survey: Survey) -> None:
    (half,) = [(key, s) for key, s in survey.building.storeys.items() if s.mark == "2"]
    assert half[1].height_in == 84.0
    knees = [w for w in survey.building.walls.values() if w.storey == half[0] and w.height_in == 48.0]
    assert len(knees) == 3
    assert all(survey.building.assemblies[w.assembly].name.startswith("Knee wall") for w in knees)


def test_every_perimeter_line_lies_under_the_wall_it_names(survey: Survey) -> None:
    perimeter = [line for line in survey.underfloor.lines.values() if line.position == "perimeter"]
    assert len(perimeter) == 9
    for line in perimeter:
        assert line.above is not None
        wall = survey.building.walls[line.above]
        assert (wall.start, wall.end, wall.storey) == (line.start, line.end, line.storey), line.mark


def test_every_interior_line_lies_under_a_partition(survey: Survey) -> None:
    corners = survey.building.corners
    partitions = [((p.start.x_in, p.start.y_in), (p.end.x_in, p.end.y_in)) for p in survey.building.partitions.values()]
    for line in survey.underfloor.lines.values():
        ends = tuple((corners[i].x_in, corners[i].y_in) for i in (line.start, line.end))
        assert (ends in partitions) == (line.position == "interior"), line.mark


def test_the_walls_above_go_once_round_each_storey(survey: Survey) -> None:
    """Only the side of the wing that stands against the house has no wall of its own."""
    for key, storey in survey.building.storeys.items():
        walls = [(w.start, w.end) for w in survey.building.walls.values() if w.storey == key]
        joined = all(a[1] == b[0] for a, b in pairwise(walls))
        assert joined, storey.mark
        assert (walls[-1][1] == walls[0][0]) == (storey.mark != "W"), storey.mark


def test_openings_under_the_floor_fit_in_the_height_of_their_wall(survey: Survey) -> None:
    for hole in survey.underfloor.openings.values():
        wall = at_middle(survey.underfloor.segments.values(), hole)
        assert wall.from_in <= hole.from_in < hole.to_in <= wall.to_in, hole.mark
        assert hole.top_in <= (wall.height_in.value or 0.0), hole.mark


def test_the_gauges_were_read_over_five_winters_and_summers(survey: Survey) -> None:
    kinds = [gauge.kind for gauge in survey.monitors.values()]
    assert sorted(set(kinds)) == ["crack gauge", "plumb"]
    for gauge in survey.monitors.values():
        days = [reading.when for reading in gauge.readings]
        assert days == sorted(days), gauge.mark
        assert all(reading.temperature_f is not None for reading in gauge.readings)
        seasons = {day[5:7] for day in days}
        assert {"02", "08"} <= seasons, gauge.mark
        assert int(days[-1][:4]) - int(days[0][:4]) >= 4, gauge.mark


def test_the_list_by_hand_is_of_a_fitting_size_and_every_piece_has_its_place(
    house: House, by_hand: Alternative
) -> None:
    assert 60 <= len(by_hand.pieces) <= 80
    (key,) = house.alternatives
    assert [f"{piece.mark}: {piece.reason}" for piece in apply(house, key).misplaced] == []


def test_the_list_by_hand_keeps_panels_on_their_segments_and_off_the_vents(
    survey: Survey, by_hand: Alternative
) -> None:
    panels = [piece for piece in by_hand.pieces.values() if isinstance(piece, PanelPiece)]
    assert len(panels) == 16
    for panel in panels:
        wall = survey.underfloor.segments[panel.segment]
        assert wall.kind == "cripple wall"
        assert wall.from_in <= panel.from_in < panel.to_in <= wall.to_in, panel.mark
        for vent in survey.underfloor.openings.values():
            assert vent.line != wall.line or vent.to_in <= panel.from_in or panel.to_in <= vent.from_in, panel.mark


def test_every_panel_above_a_wide_sill_has_its_blocking(survey: Survey, by_hand: Alternative) -> None:
    blocked = {(p.segment, p.from_in, p.to_in) for p in by_hand.pieces.values() if isinstance(p, SillBlockingPiece)}
    panels = [p for p in by_hand.pieces.values() if isinstance(p, PanelPiece)]
    asked = {(p.segment, p.from_in, p.to_in) for p in panels if p.bottom == "blocking on sill"}
    assert blocked == asked
    for panel in panels:
        line, middle = survey.underfloor.segments[panel.segment].line, 0.5 * (panel.from_in + panel.to_in)
        (sill,) = [s for s in survey.underfloor.sills.values() if s.line == line and s.from_in <= middle < s.to_in]
        assert sill.projects_inside_in.value is not None
        assert (sill.projects_inside_in.value > 0.0) == (panel.bottom == "blocking on sill"), panel.mark


def test_new_bolts_splices_and_hold_downs_stand_where_there_is_something_to_hold(
    survey: Survey, by_hand: Alternative
) -> None:
    joints = {(joint.line, joint.station_in) for joint in survey.underfloor.splices.values()}
    old = [(bolt.line, bolt.station_in) for bolt in survey.underfloor.bolts.values()]
    ends = {
        (p.segment, at) for p in by_hand.pieces.values() if isinstance(p, PanelPiece) for at in (p.from_in, p.to_in)
    }
    for piece in by_hand.pieces.values():
        if isinstance(piece, BoltPiece):
            assert all(line != piece.line or abs(at - piece.station_in) >= 4.0 for line, at in old), piece.mark
        elif isinstance(piece, SplicePiece):
            assert (piece.line, piece.station_in) in joints, piece.mark
        elif isinstance(piece, HoldDownPiece):
            assert (piece.segment, piece.station_in) in ends, piece.mark
            assert piece.anchor_edge_in is not None
