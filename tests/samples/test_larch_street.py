"""Larch Street as surveyed: enough of an old house to be worth reading, and its parts fit together.

Nothing here looks at a force, a capacity or a verdict: the survey was written before any was known.
"""

from __future__ import annotations

import math
from itertools import pairwise
from pathlib import Path

import pytest

from groundsill.doors.encode import encode
from groundsill.house.model import places
from groundsill.house.survey import Survey, in_order
from groundsill.house.underfloor import Line
from groundsill.work.checks import check_house
from groundsill.work.document import Alternative, House
from groundsill.work.pieces import BoltPiece, HoldDownPiece, PanelPiece, SillBlockingPiece, SplicePiece
from tests.samples.parts import facts, mark_of

FILE = Path(__file__).parents[2] / "samples" / "larch-street" / "house.json"
UNDERSIDE_OF_JOISTS_IN = 42.0  # over the datum, the top of the concrete at the south-east corner


def length(survey: Survey, line: Line) -> float:
    """Length of a line between its corners, in."""
    start, end = survey.building.corners[line.start], survey.building.corners[line.end]
    return math.hypot(end.x_in - start.x_in, end.y_in - start.y_in)


def test_the_file_is_written_as_the_program_writes_it(house: House) -> None:
    assert encode(house) == FILE.read_text(encoding="utf-8")


def test_it_has_nine_lines_of_which_eight_are_braced_and_one_of_those_stands_inside(survey: Survey) -> None:
    lines = [line for _, line in in_order(survey.underfloor.lines)]
    assert [line.mark for line in lines] == [f"L{n}" for n in range(1, 10)]
    posts_only = [line.mark for line in lines if line.relied_on is False]
    assert posts_only == ["L9"]
    assert [line.mark for line in lines if line.position == "interior" and line.relied_on] == ["L8"]


def test_it_has_at_least_the_segments_obstructions_and_doubtful_facts_of_a_real_house(survey: Survey) -> None:
    assert len(survey.underfloor.segments) >= 25
    assert len(survey.underfloor.obstructions) >= 10
    assert len(survey.levels) >= 12
    assert len([fact for fact in facts(survey) if fact.state == "estimated" and fact.uncertain]) >= 10
    assert len([fact for fact in facts(survey) if fact.state == "unknown" and fact.how]) >= 10


def test_the_concrete_is_sound_on_three_sides_and_crumbles_on_the_north(survey: Survey) -> None:
    marks: dict[object, set[str]] = {}
    for piece in survey.foundation.segments.values():
        marks.setdefault(piece.condition.value, set()).add(survey.underfloor.lines[piece.line].mark)
    assert marks["crumbling"] == {"L3", "L5", "L6"}
    assert marks["sound"] == {"L1", "L2", "L7", "L8"}


def test_the_east_line_steps_from_forty_to_sixteen_inches(survey: Survey) -> None:
    heights = [
        piece.height_in.value for _, piece in in_order(survey.underfloor.segments) if mark_of(survey, piece) == "L2"
    ]
    assert list(dict.fromkeys(heights)) == [40.0, 28.0, 16.0]


def test_soil_stands_against_the_wood_on_the_uphill_side_only(survey: Survey) -> None:
    stems = survey.foundation.segments.values()
    buried = {mark_of(survey, stem) for stem in stems if (stem.above_outside_soil_in.value or 0.0) < 0.0}
    assert buried == {"L5", "L6", "L7"}


def test_every_mark_is_used_once(house: House, survey: Survey) -> None:
    marks = [place.value for place in places(house, "") if place.field.name == "mark" and place.value]
    assert len(marks) > 250
    assert sorted({mark for mark in marks if marks.count(mark) > 1 and mark != "1"}) == []


@pytest.mark.parametrize("kind", ["segments", "foundation"])
def test_wall_and_foundation_cover_every_line_from_end_to_end(survey: Survey, kind: str) -> None:
    pieces = survey.underfloor.segments if kind == "segments" else survey.foundation.segments
    for key, line in survey.underfloor.lines.items():
        stations = sorted((p.from_in, p.to_in) for p in pieces.values() if p.line == key)
        assert stations[0][0] == 0.0, line.mark
        assert stations[-1][1] == length(survey, line), line.mark
        for (_, ends), (begins, _) in pairwise(stations):
            assert ends == begins, f"{line.mark} at {ends}"


def test_sills_cover_every_line_that_has_a_foundation(survey: Survey) -> None:
    for key, line in survey.underfloor.lines.items():
        stations = sorted((p.from_in, p.to_in) for p in survey.underfloor.sills.values() if p.line == key)
        covered = sum(ends - begins for begins, ends in stations)
        assert covered == (0.0 if line.mark == "L9" else length(survey, line)), line.mark


def test_concrete_sill_and_wall_add_up_to_one_level_plate(survey: Survey) -> None:
    under = survey.underfloor
    for wall in under.segments.values():
        if wall.kind == "posts":
            continue
        middle = 0.5 * (wall.from_in + wall.to_in)
        (sill,) = [p for p in under.sills.values() if p.line == wall.line and p.from_in <= middle < p.to_in]
        (stem,) = [
            p for p in survey.foundation.segments.values() if p.line == wall.line and p.from_in <= middle < p.to_in
        ]
        top = (stem.top_z_in.value or 0.0) + (sill.thickness_in.value or 0.0) + (wall.height_in.value or 0.0)
        assert top == UNDERSIDE_OF_JOISTS_IN, wall.mark


def test_joists_and_boards_lie_between_the_plate_and_the_floor(survey: Survey) -> None:
    (storey,) = survey.building.storeys.values()
    for field in survey.underfloor.joists.values():
        assert field.depth_in.value is not None
        assert field.board_thickness_in.value is not None
        assert UNDERSIDE_OF_JOISTS_IN + field.depth_in.value + field.board_thickness_in.value == storey.floor_z_in


def test_a_sill_is_as_wide_as_the_studs_and_what_stands_out_beyond_them(survey: Survey) -> None:
    for sill in survey.underfloor.sills.values():
        inside, outside = sill.projects_inside_in.value, sill.projects_outside_in.value
        if inside is not None and outside is not None:
            assert sill.width_in.value == 4.0 + inside + outside, sill.mark


def test_a_sill_piece_ends_where_the_foundation_steps(survey: Survey) -> None:
    ends = {(sill.line, sill.to_in) for sill in survey.underfloor.sills.values()}
    steps = [piece for piece in survey.foundation.breaks.values() if piece.kind == "step"]
    assert len(steps) == 6
    assert all((step.line, step.station_in) in ends for step in steps)


def test_the_outline_runs_once_round_an_l_and_the_joist_fields_fill_it(survey: Survey) -> None:
    corners = survey.building.corners

    def area(ids: tuple[str, ...]) -> float:
        points = [(corners[i].x_in, corners[i].y_in) for i in ids]
        pairs = zip(points, points[1:] + points[:1], strict=True)
        return 0.5 * sum(x * v - u * y for (x, y), (u, v) in pairs)

    (storey,) = survey.building.storeys.values()
    assert area(storey.outline) == 28 * 40 * 144 + 16 * 14 * 144
    assert sum(area(field.outline) for field in survey.underfloor.joists.values()) == area(storey.outline)


def test_every_perimeter_line_lies_under_the_wall_it_names(survey: Survey) -> None:
    perimeter = [line for line in survey.underfloor.lines.values() if line.position == "perimeter"]
    assert len(perimeter) == len(survey.building.walls) == 7
    for line in perimeter:
        assert line.above is not None
        wall = survey.building.walls[line.above]
        assert (wall.start, wall.end) == (line.start, line.end), line.mark


def test_every_interior_line_lies_under_a_partition(survey: Survey) -> None:
    corners = survey.building.corners
    partitions = [((p.start.x_in, p.start.y_in), (p.end.x_in, p.end.y_in)) for p in survey.building.partitions.values()]
    for line in survey.underfloor.lines.values():
        ends = tuple((corners[i].x_in, corners[i].y_in) for i in (line.start, line.end))
        assert (ends in partitions) == (line.position == "interior"), line.mark


def test_nothing_is_at_fault_in_it(house: House) -> None:
    assert [fault.line() for fault in check_house(house)] == []


def test_the_walls_above_have_their_openings_inside_them(survey: Survey) -> None:
    for wall in survey.building.walls.values():
        start, end = survey.building.corners[wall.start], survey.building.corners[wall.end]
        reach = math.hypot(end.x_in - start.x_in, end.y_in - start.y_in)
        cuts = sorted((o.from_in, o.to_in) for o in wall.openings.values())
        assert all(0 <= a < b <= reach for a, b in cuts), wall.mark
        assert all(b <= c for (_, b), (c, _) in pairwise(cuts)), wall.mark


def test_openings_under_the_floor_fit_in_the_height_of_their_wall(survey: Survey) -> None:
    for hole in survey.underfloor.openings.values():
        walls = [
            w
            for w in survey.underfloor.segments.values()
            if w.line == hole.line and w.from_in <= hole.from_in and hole.to_in <= w.to_in
        ]
        assert len(walls) == 1, hole.mark
        assert hole.top_in <= (walls[0].height_in.value or 0.0), hole.mark


def test_the_list_by_hand_keeps_panels_on_their_segments_and_off_the_vents(
    survey: Survey, by_hand: Alternative
) -> None:
    panels = [piece for piece in by_hand.pieces.values() if isinstance(piece, PanelPiece)]
    assert len(panels) == 17
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
    assert {mark_of(survey, survey.underfloor.segments[p.segment]) for p in panels if p.bottom == "sill"} == {"L8"}


def test_new_bolts_splices_and_hold_downs_stand_where_there_is_something_to_hold(
    survey: Survey, by_hand: Alternative
) -> None:
    joints = {(joint.line, joint.station_in) for joint in survey.underfloor.splices.values()}
    old = [(bolt.line, bolt.station_in) for bolt in survey.underfloor.bolts.values()]
    for piece in by_hand.pieces.values():
        if isinstance(piece, BoltPiece):
            assert all(line != piece.line or abs(at - piece.station_in) >= 4.0 for line, at in old), piece.mark
        elif isinstance(piece, SplicePiece):
            assert (piece.line, piece.station_in) in joints, piece.mark
        elif isinstance(piece, HoldDownPiece):
            assert survey.underfloor.segments[piece.segment].height_in.value == 40.0, piece.mark
