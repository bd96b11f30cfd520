"""Quarry Lane as surveyed: two storeys on soft brick, with a bay, an addition and a wall above that stands over none.

Nothing here looks at a force, a capacity or a verdict: the survey was written before any was known.
"""

from __future__ import annotations

import math
from collections import Counter
from itertools import pairwise
from pathlib import Path
from xml.etree import ElementTree

import pytest

from groundsill.doors.encode import encode
from groundsill.house.model import places
from groundsill.house.survey import Survey, in_order
from groundsill.house.underfloor import Line, Segment
from groundsill.work.apply import apply
from groundsill.work.checks import check_house
from groundsill.work.document import Alternative, House
from groundsill.work.pieces import BoltPiece, ConcretePiece, PanelPiece, SillBlockingPiece, SplicePiece
from tests.samples.parts import facts, mark_of

FOLDER = Path(__file__).parents[2] / "samples" / "quarry-lane"
FILE = FOLDER / "house.json"
UNDERSIDE_OF_JOISTS_IN = 34.0  # over the datum, the top of the brick along the front
UNDERSIDE_IN_ADDITION_IN = 37.5
ADDITION = ("L8", "L9", "L10")
TAPE_IN = 0.01  # the flanks of the bay are 24 in. times the root of two, written to a sixteenth


def place(survey: Survey, corner: str) -> tuple[float, float]:
    """Where a corner stands on the plan, in."""
    found = survey.building.corners[corner]
    return found.x_in, found.y_in


def length(survey: Survey, line: Line) -> float:
    """Length of a line between its corners, in."""
    return math.dist(place(survey, line.start), place(survey, line.end))


def area_in2(points: list[tuple[float, float]]) -> float:
    """Area inside an outline that runs against the clock, square inches."""
    return 0.5 * sum(x * v - u * y for (x, y), (u, v) in zip(points, points[1:] + points[:1], strict=True))


def walls_of(survey: Survey, storey: str) -> dict[str, tuple[tuple[float, float], tuple[float, float]]]:
    """The walls of a storey by mark, each with its two ends."""
    (key,) = [id_ for id_, found in survey.building.storeys.items() if found.mark == storey]
    walls = survey.building.walls.values()
    return {w.mark: (place(survey, w.start), place(survey, w.end)) for w in walls if w.storey == key}


def covers(lower: tuple[tuple[float, float], ...], upper: tuple[tuple[float, float], ...]) -> bool:
    """Whether a wall of straight plan lies wholly over another."""
    (a, b), reach = lower, math.dist(*lower)
    return all(math.isclose(math.dist(a, end) + math.dist(end, b), reach, abs_tol=1e-9) for end in upper)


def test_the_file_is_written_as_the_program_writes_it(house: House) -> None:
    assert encode(house) == FILE.read_text(encoding="utf-8")


def test_nothing_is_at_fault_in_it(house: House) -> None:
    assert [fault.line() for fault in check_house(house)] == []


def test_every_piece_of_the_list_has_its_place(house: House) -> None:
    (key,) = house.alternatives
    assert apply(house, key).misplaced == ()


def test_it_has_fifteen_lines_of_which_three_stand_inside_and_one_of_those_is_relied_on(survey: Survey) -> None:
    lines = [line for _, line in in_order(survey.underfloor.lines)]
    assert [line.mark for line in lines] == [f"L{n}" for n in range(1, 16)]
    assert [line.mark for line in lines if line.position == "interior"] == ["L13", "L14", "L15"]
    assert [line.mark for line in lines if line.relied_on] == ["L14"]
    assert [line.mark for line in lines if line.relied_on is False] == ["L13", "L15"]


def test_it_has_at_least_the_parts_and_doubtful_facts_of_a_real_house(survey: Survey) -> None:
    under, base = survey.underfloor, survey.foundation
    assert (len(under.segments), len(base.segments), len(base.breaks)) == (37, 25, 19)
    assert (len(under.sills), len(under.bolts), len(under.posts)) == (22, 13, 17)
    assert (len(under.obstructions), len(under.openings), len(survey.levels)) == (19, 14, 21)
    assert (len(survey.observations), len(survey.monitors)) == (25, 5)
    assert len([fact for fact in facts(survey) if fact.state == "estimated" and fact.uncertain]) >= 10
    assert len([fact for fact in facts(survey) if fact.state == "unknown" and fact.how]) >= 10


def test_every_mark_is_used_once_and_every_id_is_opaque(house: House, survey: Survey) -> None:
    marks = [found.value for found in places(house, "") if found.field.name == "mark" and found.value]
    assert len(marks) > 400
    assert [mark for mark, times in Counter(marks).items() if times > 1] == []
    collections = [found.value for found in places(survey, "") if found.field.shape.kind == "map"]
    assert all(len(key) == 8 and key.isalnum() for collection in collections for key in collection)


def test_monitors_are_read_in_order_of_time_over_nine_months_or_more(survey: Survey) -> None:
    for monitor in survey.monitors.values():
        dates = [reading.when for reading in monitor.readings]
        assert dates == sorted(dates), monitor.mark
        assert (dates[0], dates[-1]) == ("2025-02-08", "2025-11-05"), monitor.mark


# ---- The house above ------------------------------------------------------------------------------------------------


def test_the_two_storeys_stand_one_on_the_other_and_differ_at_the_rear(survey: Survey) -> None:
    lower, upper = (found for _, found in in_order(survey.building.storeys))
    assert lower.floor_z_in + lower.height_in == upper.floor_z_in
    areas = [area_in2([place(survey, corner) for corner in found.outline]) for found in (lower, upper)]
    bay = (48 + 96) / 2 * 24
    assert areas == [312 * 408 + 144 * 96 + bay, 312 * 360 + bay]


@pytest.mark.parametrize("storey", ["1", "2"])
def test_walls_run_once_round_their_storey(survey: Survey, storey: str) -> None:
    walls = list(walls_of(survey, storey).values())
    (outline,) = [found.outline for found in survey.building.storeys.values() if found.mark == storey]
    assert all(end == start for (_, end), (start, _) in pairwise([*walls, walls[0]]))
    assert [start for start, _ in walls] == [place(survey, corner) for corner in outline]


def test_one_wall_of_the_upper_floor_stands_over_no_wall(survey: Survey) -> None:
    lower, upper = walls_of(survey, "1"), walls_of(survey, "2")
    offset = [mark for mark, wall in upper.items() if not any(covers(below, wall) for below in lower.values())]
    assert offset == ["E27"]


def test_the_flanks_of_the_bay_stand_at_45_degrees_on_both_floors_and_under_them(survey: Survey) -> None:
    lines = {line.mark: line for line in survey.underfloor.lines.values()}
    under = [(place(survey, lines[m].start), place(survey, lines[m].end)) for m in ("L3", "L5")]
    lower, upper = walls_of(survey, "1"), walls_of(survey, "2")
    assert [lower["E3"], lower["E5"]] == [upper["E23"], upper["E25"]] == under
    assert all(abs(x2 - x1) == abs(y2 - y1) == 24 for (x1, y1), (x2, y2) in under)


def test_windows_and_doors_lie_inside_their_walls_and_beside_each_other(survey: Survey) -> None:
    for wall in survey.building.walls.values():
        reach = math.dist(place(survey, wall.start), place(survey, wall.end))
        height = wall.height_in or survey.building.storeys[wall.storey].height_in
        cuts = sorted((o.from_in, o.to_in) for o in wall.openings.values())
        assert cuts, wall.mark
        assert all(0 <= a < b <= reach for a, b in cuts), wall.mark
        assert all(b <= c for (_, b), (c, _) in pairwise(cuts)), wall.mark
        assert all(o.sill_in < o.head_in <= height for o in wall.openings.values()), wall.mark


def test_partitions_of_both_floors_were_measured(survey: Survey) -> None:
    floors = Counter(survey.building.storeys[p.storey].mark for p in survey.building.partitions.values())
    assert floors == {"1": 10, "2": 10}


def test_rafters_of_the_cross_gable_run_across_those_of_the_main_roof_and_meet_them_in_valleys(survey: Survey) -> None:
    roof = {part.mark: part for part in survey.building.roof.values()}
    assert [roof[mark].span_deg for mark in ("R1", "R2", "R3", "R4")] == [0, 90, 90, 90]
    main, cross = ({(p.x_in, p.y_in) for p in roof[mark].outline} for mark in ("R1", "R2"))
    assert main & cross == {(330, 102), (264, 168), (330, 234)}


def test_nobody_knows_whether_the_chimney_inside_is_tied(survey: Survey) -> None:
    (chimney,) = survey.building.chimneys.values()
    assert chimney.tied.state == "unknown"
    assert 0 < chimney.at.x_in < 312
    assert 0 < chimney.at.y_in < 360


# ---- Under the floor ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", ["segments", "foundation"])
def test_wall_and_foundation_cover_every_line_from_end_to_end(survey: Survey, kind: str) -> None:
    pieces = survey.underfloor.segments if kind == "segments" else survey.foundation.segments
    for key, line in survey.underfloor.lines.items():
        stations = sorted((p.from_in, p.to_in) for p in pieces.values() if p.line == key)
        assert stations[0][0] == 0.0, line.mark
        assert stations[-1][1] == pytest.approx(length(survey, line), abs=TAPE_IN), line.mark
        for (_, ends), (begins, _) in pairwise(stations):
            assert ends == begins, f"{line.mark} at {ends}"


def test_sills_cover_what_has_a_foundation_and_nothing_else(survey: Survey) -> None:
    for key, line in survey.underfloor.lines.items():
        sills = sum(s.to_in - s.from_in for s in survey.underfloor.sills.values() if s.line == key)
        stems = [s for s in survey.foundation.segments.values() if s.line == key and s.material != "none"]
        assert sills == sum(s.to_in - s.from_in for s in stems), line.mark


def test_the_foundation_is_brick_with_stone_at_the_rear_and_concrete_under_the_addition(survey: Survey) -> None:
    marks: dict[str, set[str]] = {}
    for piece in survey.foundation.segments.values():
        marks.setdefault(piece.material, set()).add(mark_of(survey, piece))
    assert marks["poured concrete"] == set(ADDITION)
    assert marks["stone"] == {"L6", "L7", "L11"}
    assert marks["brick"] == {"L1", "L2", "L3", "L4", "L5", "L6", "L11", "L12", "L14", "L15"}
    assert marks["none"] == {"L13", "L14", "L15"}


def test_every_stretch_of_brick_tells_its_wythes_headers_mortar_and_collar_joint(survey: Survey) -> None:
    brick = [piece for piece in survey.foundation.segments.values() if piece.material == "brick"]
    assert all(piece.wythes.value == 2 for piece in brick)
    assert {piece.mortar.value for piece in brick} == {"soft", "missing"}
    assert {mark_of(survey, piece) for piece in brick if piece.header_course.value is False} == {"L3", "L4", "L5"}
    assert all(piece.collar_joint_filled.value is False or piece.collar_joint_filled.how for piece in brick)


def test_mortar_was_sheared_at_two_places_and_no_anchor_was_tested(survey: Survey) -> None:
    kinds = Counter(test.kind for test in survey.foundation.tests.values())
    assert kinds == {"mortar shear": 2, "probe": 6, "rebound": 2}
    assert all(bolt.test_lb.value is None for bolt in survey.underfloor.bolts.values())


def stem_and_sill(survey: Survey, wall: Segment) -> tuple[float, float]:
    """Top of the foundation and thickness of the sill at the middle of a wall segment, in."""
    middle = 0.5 * (wall.from_in + wall.to_in)
    (sill,) = [p for p in survey.underfloor.sills.values() if p.line == wall.line and p.from_in <= middle < p.to_in]
    (stem,) = [p for p in survey.foundation.segments.values() if p.line == wall.line and p.from_in <= middle < p.to_in]
    assert stem.top_z_in.value is not None
    assert sill.thickness_in.value is not None
    return stem.top_z_in.value, sill.thickness_in.value


def test_foundation_sill_and_wall_add_up_to_one_level_plate_and_another_in_the_addition(survey: Survey) -> None:
    for wall in survey.underfloor.segments.values():
        if wall.kind in ("posts", "open"):
            continue
        top, thick = stem_and_sill(survey, wall)
        level = UNDERSIDE_IN_ADDITION_IN if mark_of(survey, wall) in ADDITION else UNDERSIDE_OF_JOISTS_IN
        assert top + thick + (wall.height_in.value or 0.0) == level, wall.mark


def test_joists_and_boards_lie_between_the_plate_and_the_floor(survey: Survey) -> None:
    lower, _ = (found for _, found in in_order(survey.building.storeys))
    for field in survey.underfloor.joists.values():
        if survey.building.storeys[field.storey] is lower:
            level = UNDERSIDE_IN_ADDITION_IN if field.mark == "J4" else UNDERSIDE_OF_JOISTS_IN
            assert level + (field.depth_in.value or 0.0) + (field.board_thickness_in.value or 0.0) == lower.floor_z_in


def test_the_joist_fields_fill_each_floor(survey: Survey) -> None:
    for key, storey in survey.building.storeys.items():
        fields = [f.outline for f in survey.underfloor.joists.values() if f.storey == key]
        filled = sum(area_in2([place(survey, corner) for corner in outline]) for outline in fields)
        assert filled == area_in2([place(survey, corner) for corner in storey.outline]), storey.mark


def test_cripple_walls_are_twenty_four_or_thirty_inches_high(survey: Survey) -> None:
    walls = [w for w in survey.underfloor.segments.values() if w.kind == "cripple wall"]
    assert {w.height_in.value for w in walls} == {24.0, 30.0}


def test_the_rear_part_is_framed_balloon_fashion_without_a_plate(survey: Survey) -> None:
    balloon = [line for line in survey.underfloor.lines.values() if line.framing == "balloon"]
    assert {line.mark for line in balloon} == {"L6", "L7", "L11", "L15"}
    assert all(line.top_plate.layers == 0 for line in balloon)


def test_a_sill_is_as_wide_as_the_studs_and_what_stands_out_beyond_them(survey: Survey) -> None:
    for sill in survey.underfloor.sills.values():
        inside, outside = sill.projects_inside_in.value, sill.projects_outside_in.value
        assert inside is not None, sill.mark
        assert outside is not None, sill.mark
        stud = 3.625 if mark_of(survey, sill) in ADDITION else 4.0
        assert sill.width_in.value == stud + inside + outside, sill.mark


def test_old_sills_are_full_sized_redwood(survey: Survey) -> None:
    old = [sill for sill in survey.underfloor.sills.values() if mark_of(survey, sill) not in ADDITION]
    assert {(sill.species.value, sill.thickness_in.value) for sill in old} == {("Redwood", 4.0)}


def test_a_sill_piece_ends_where_the_foundation_steps_or_stops(survey: Survey) -> None:
    ends = {(s.line, at) for s in survey.underfloor.sills.values() for at in (s.from_in, s.to_in)}
    cuts = [piece for piece in survey.foundation.breaks.values() if piece.kind in ("step", "gap")]
    assert len(cuts) == 8
    assert all((piece.line, piece.station_in) in ends for piece in cuts)


def test_every_perimeter_line_lies_under_the_wall_it_names(survey: Survey) -> None:
    perimeter = [line for line in survey.underfloor.lines.values() if line.position == "perimeter"]
    assert len(perimeter) == len(walls_of(survey, "1")) == 12
    for line in perimeter:
        assert line.above is not None
        wall = survey.building.walls[line.above]
        assert (wall.start, wall.end) == (line.start, line.end), line.mark


def test_every_interior_line_lies_under_partitions(survey: Survey) -> None:
    standing = survey.building.partitions.values()
    ends = [((p.start.x_in, p.start.y_in), (p.end.x_in, p.end.y_in)) for p in standing]
    for line in survey.underfloor.lines.values():
        if line.position == "interior":
            under = (place(survey, line.start), place(survey, line.end))
            assert any(covers(under, wall) for wall in ends), line.mark


def test_openings_under_the_floor_fit_in_their_wall(survey: Survey) -> None:
    for hole in survey.underfloor.openings.values():
        walls = [
            w
            for w in survey.underfloor.segments.values()
            if w.line == hole.line and w.from_in <= hole.from_in and hole.to_in <= w.to_in
        ]
        assert len(walls) == 1, hole.mark
        assert hole.top_in <= (walls[0].height_in.value or 0.0), hole.mark


def test_posts_stand_under_the_girder_they_hold_up(survey: Survey) -> None:
    for post in survey.underfloor.posts.values():
        assert post.girder is not None, post.mark
        girder = survey.underfloor.girders[post.girder]
        ends = ((girder.start.x_in, girder.start.y_in), (girder.end.x_in, girder.end.y_in))
        assert covers(ends, ((post.at.x_in, post.at.y_in),)), post.mark


# ---- The list of work -----------------------------------------------------------------------------------------------


def test_the_list_by_hand_holds_what_its_name_says(by_hand: Alternative) -> None:
    kinds = Counter(piece.kind for piece in by_hand.pieces.values())
    assert by_hand.name == "Inner strips and panels"
    assert kinds == {
        "panel": 17, "sill blocking": 17, "bolt": 16, "tie": 14, "splice": 8, "concrete": 4, "soil": 1, "drainage": 1,
    }  # fmt: skip


def test_inner_strips_lie_clear_of_the_brick_along_two_lines(survey: Survey, by_hand: Alternative) -> None:
    strips = [piece for piece in by_hand.pieces.values() if isinstance(piece, ConcretePiece)]
    assert {survey.underfloor.lines[piece.line or ""].mark for piece in strips} == {"L1", "L12"}
    assert all(point.x_in > 9 and point.y_in > 9 for piece in strips for point in piece.outline)


def test_new_bolts_are_cast_in_where_a_strip_is_new_and_glued_in_the_concrete_of_1934(
    survey: Survey, by_hand: Alternative
) -> None:
    lines: dict[str, set[str]] = {}
    old = [(bolt.line, bolt.station_in) for bolt in survey.underfloor.bolts.values()]
    for piece in by_hand.pieces.values():
        if isinstance(piece, BoltPiece):
            lines.setdefault(piece.anchor, set()).add(mark_of(survey, piece))
            assert all(line != piece.line or abs(at - piece.station_in) >= 4.0 for line, at in old), piece.mark
    assert lines == {"cast-in": {"L1", "L12"}, "adhesive": set(ADDITION)}


def test_every_panel_has_blocking_on_the_sill_that_stands_out(by_hand: Alternative) -> None:
    blocked = {(p.segment, p.from_in, p.to_in) for p in by_hand.pieces.values() if isinstance(p, SillBlockingPiece)}
    panels = [p for p in by_hand.pieces.values() if isinstance(p, PanelPiece)]
    assert {p.bottom for p in panels} == {"blocking on sill"}
    assert blocked == {(p.segment, p.from_in, p.to_in) for p in panels}


def test_straps_go_across_a_joint(survey: Survey, by_hand: Alternative) -> None:
    joints = {(joint.line, joint.station_in) for joint in survey.underfloor.splices.values()}
    ends = {(sill.line, sill.to_in) for sill in survey.underfloor.sills.values()}
    for piece in by_hand.pieces.values():
        if isinstance(piece, SplicePiece):
            assert (piece.line, piece.station_in) in (joints if piece.member == "top plate" else ends), piece.mark


def test_the_words_and_the_sketch_tell_every_line(survey: Survey) -> None:
    words = (FOLDER / "README.md").read_text(encoding="utf-8")
    drawn = {"".join(node.itertext()) for node in ElementTree.parse(FOLDER / "plan.svg").iter()}
    for line in survey.underfloor.lines.values():
        assert line.mark in words
        assert line.mark in drawn
