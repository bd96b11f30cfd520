"""Underfloor plans: everything where it was measured, at a true scale, no word over another."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import combinations

import pytest

from groundsill.house.foundation import Foundation
from groundsill.house.survey import in_order
from groundsill.house.underfloor import Underfloor
from groundsill.papers.document import Figure
from groundsill.papers.drawing import Dimension, Drawing, Point, Polygon, Symbol, Text
from groundsill.papers.lowering import Box, box_of
from groundsill.papers.placing import leaf_of_sheet
from groundsill.papers.sheet import SCALES, Sheet
from groundsill.papers.views.plan_frame import frame_of
from groundsill.papers.views.plan_view import found_plan, work_plan
from groundsill.papers.views.plan_work import mark_runs, work_table
from groundsill.papers.writers.svg import paper_words
from groundsill.study import Study
from groundsill.work.document import House
from groundsill.work.pieces import BoltPiece
from groundsill.working.errors import CannotWrite
from tests.papers.views_sample import rows_of, small_study


def sheet_of_plan(figure: Figure) -> Sheet:
    assert isinstance(figure.drawing, Sheet)
    return figure.drawing


def plan(figure: Figure) -> Drawing:
    (port,) = sheet_of_plan(figure).viewports
    return port.drawing


@pytest.fixture(scope="module")
def house() -> House:
    return small_study()[0]


@pytest.fixture(scope="module")
def study() -> Study:
    return small_study()[1]


@pytest.fixture(scope="module")
def found(house: House, study: Study) -> Drawing:
    return plan(found_plan(house, study, {}))


def test_a_bolt_stands_on_its_line_at_its_station(house: House, found: Drawing) -> None:
    bolt = house.survey.underfloor.bolts["bt2"]  # on the front line, 300 in. from its start in the south-west
    (mark,) = [m for m in found.marks if m.address == "bolt/bt2"]
    assert isinstance(mark, Symbol)
    assert mark.at == pytest.approx((bolt.station_in, 0.0))


def test_the_foundation_is_drawn_where_it_is_and_told_by_its_fill(house: House, found: Drawing) -> None:
    stems = {m.address: m for m in found.marks if isinstance(m, Polygon) and m.address.startswith("foundation/")}
    xs = [x for x, _ in stems["foundation/fs1"].points]
    assert (min(xs), max(xs)) == (0.0, 360.0)
    assert stems["foundation/fs1"].fill == "tint"
    assert stems["foundation/fs4"].fill == "masonry"
    assert "foundation/fs5" not in stems  # nothing stands under the posts


def test_every_thing_of_the_survey_that_has_a_place_is_on_the_plan(house: House, found: Drawing) -> None:
    under, addresses = house.survey.underfloor, {mark.address for mark in found.marks}
    for kind, things in (
        ("segment", under.segments), ("bolt", under.bolts), ("opening", under.openings), ("girder", under.girders),
        ("obstruction", under.obstructions), ("post", under.posts), ("hatch", under.hatches), ("line", under.lines),
        ("break", house.survey.foundation.breaks), ("chimney", house.survey.building.chimneys),
    ):  # fmt: skip
        assert {f"{kind}/{id}" for id in things} <= addresses, kind


def test_outer_lines_are_dimensioned_in_feet_and_inches_from_the_survey(found: Drawing) -> None:
    dimensions = {m.address: m.text for m in found.marks if isinstance(m, Dimension)}
    assert dimensions == {
        "line/line1": "30'-0\"",
        "line/line2": "20'-0\"",
        "line/line3": "30'-0\"",
        "line/line4": "20'-0\"",
    }


def test_dimensions_stand_outside_the_house(found: Drawing) -> None:
    for mark in found.marks:
        if isinstance(mark, Dimension):
            (left, bottom, right, top) = box_of((mark,), 64.0)
            assert left < 0 or bottom < 0 or right > 360 or top > 240, mark.address


def test_each_line_carries_its_mark_and_its_force_by_direction(study: Study, found: Drawing) -> None:
    words = [mark.text for mark in found.marks if isinstance(mark, Text) and mark.address == "line/line1"]
    force = study.forces.lines["line1"]
    assert words == ["front", f"x: {force.force_lb:,.0f} lb"]
    tags = {mark.text for mark in found.marks if isinstance(mark, Symbol) and mark.name == "tag"}
    assert tags == {"L1", "L2", "L3", "L4", "L5"}


def test_a_line_that_is_not_relied_on_says_so_instead_of_a_force(found: Drawing) -> None:
    words = [mark.text for mark in found.marks if isinstance(mark, Text) and mark.address == "line/line5"]
    assert words == ["under the girder", "not relied on"]


def test_a_doubtful_force_carries_its_dagger_on_the_plan(house: House, study: Study) -> None:
    marked = plan(found_plan(house, study, {"line/line1": "†3"}))
    words = [mark.text for mark in marked.marks if isinstance(mark, Text) and mark.address == "line/line1"]
    assert words[1].endswith(" lb †")


def test_wall_segments_show_their_heights(found: Drawing) -> None:
    words = {m.address: m.text for m in found.marks if isinstance(m, Text) and m.address.startswith("segment/")}
    assert words["segment/sg3a"] == "S4 2'-0\""
    assert words["segment/sg3b"] == "S5 1'-4\""


def test_a_segments_label_stays_beside_its_segment(house: House, found: Drawing) -> None:
    for id, segment in house.survey.underfloor.segments.items():
        frame = frame_of(house, house.survey.underfloor.lines[segment.line], SCALES["us"][0])
        (label,) = [m for m in found.marks if isinstance(m, Text) and m.address == f"segment/{id}"]
        station = sum((a - b) * u for a, b, u in zip(label.at, frame.start, frame.along, strict=True))
        assert segment.from_in <= station <= segment.to_in, id


def overlap(a: Box, b: Box) -> bool:
    return min(a[2], b[2]) - max(a[0], b[0]) > 1e-6 and min(a[3], b[3]) - max(a[1], b[1]) > 1e-6


def test_no_two_labels_cover_each_other(house: House, study: Study) -> None:
    figure = found_plan(house, study, {})
    denominator = sheet_of_plan(figure).viewports[0].scale.denominator
    texts = [mark for mark in plan(figure).marks if isinstance(mark, Text) and mark.text]
    boxes = [(mark.text, box_of((mark,), denominator)) for mark in texts]
    covered = [(a[0], b[0]) for a, b in combinations(boxes, 2) if overlap(a[1], b[1])]
    assert covered == []


def test_the_sheet_has_a_scale_bar_axes_and_says_that_north_is_missing(house: House, study: Study) -> None:
    sheet = sheet_of_plan(found_plan(house, study, {}))
    words = {word.mark.text for word in paper_words(leaf_of_sheet(sheet))}
    assert {"x", "y", "north: not in the survey"} <= words
    assert any(word.endswith(" ft") for word in words)  # the end of the scale bar
    assert sheet.viewports[0].scale.name in {'1/4" = 1\'-0"', '3/16" = 1\'-0"'}


def test_the_alternative_text_tells_lines_and_forces(house: House, study: Study) -> None:
    words = found_plan(house, study, {}).alternative
    assert words.startswith(
        "Plan under the floor with 5 braced lines, 7 wall segments, 5 existing bolts, 2 obstructions"
    )
    assert "line L5 under the girder, not relied on" in words


def test_a_large_house_goes_on_a_larger_sheet_rather_than_a_smaller_scale(house: House, study: Study) -> None:
    def stretched(by: float) -> House:
        """Nothing but the walls, so many times as large."""
        building = house.survey.building
        corners = {id: replace(c, x_in=c.x_in * by, y_in=c.y_in * by) for id, c in building.corners.items()}
        survey = replace(
            house.survey,
            building=replace(building, corners=corners, chimneys={}),
            underfloor=Underfloor(lines=house.survey.underfloor.lines),
            foundation=Foundation(),
        )
        return replace(house, survey=survey)

    small, large = (sheet_of_plan(found_plan(stretched(by), study, {})) for by in (0.7, 1.2))
    assert (small.paper.name, small.viewports[0].scale.name) == ("letter, upright", '3/16" = 1\'-0"')
    assert (large.paper.name, large.viewports[0].scale.name) == ("tabloid, upright", '3/16" = 1\'-0"')
    with pytest.raises(CannotWrite, match="Underfloor plan as found: the house does not fit tabloid, upright paper"):
        found_plan(stretched(40.0), study, {})


def test_a_metric_house_is_drawn_on_metric_paper_at_a_metric_scale(house: House, study: Study) -> None:
    figure = found_plan(house, replace(study, units="si"), {})
    sheet = sheet_of_plan(figure)
    assert sheet.paper.name == "A3, upright"
    assert sheet.viewports[0].scale.name == "1:50"
    dimensions = {mark.text for mark in plan(figure).marks if isinstance(mark, Dimension)}
    assert dimensions == {"9.144 m", "6.096 m"}


def test_words_along_a_line_never_stand_on_their_head(house: House) -> None:
    for _, line in in_order(house.survey.underfloor.lines):
        frame = frame_of(house, line, SCALES["us"][0])
        assert -90.0 < frame.turn <= 90.0


def test_outside_is_found_from_the_outline(house: House) -> None:
    ways: dict[str, Point] = {
        "line1": (0.0, -1.0), "line2": (1.0, 0.0), "line3": (0.0, 1.0), "line4": (-1.0, 0.0),
    }  # fmt: skip
    for id, out in ways.items():
        frame = frame_of(house, house.survey.underfloor.lines[id], SCALES["us"][0])
        assert frame.out == pytest.approx(out)
        assert frame.outer
        assert math.dist(frame.at(12.0, 5.0), frame.at(12.0)) == pytest.approx(5.0)
    assert not frame_of(house, house.survey.underfloor.lines["line5"], SCALES["us"][0]).outer


# --- new work ---------------------------------------------------------------------------------------------------------


def test_every_piece_of_an_alternative_is_on_its_plan_and_in_its_table(house: House, study: Study) -> None:
    alternative = house.alternatives["strengthen"]
    drawn = plan(work_plan(house, study, {}, alternative, 2))
    addresses = {mark.address for mark in drawn.marks}
    assert {f"piece/{id}" for id in alternative.pieces} <= addresses
    rows = rows_of(work_table(house, alternative, "us"))
    counted = [int(row[0].rpartition(": ")[2]) for row in rows if len(row) == 1]
    assert sum(counted) == len(alternative.pieces)
    single = [piece.mark for piece in alternative.pieces.values() if piece.mark[:1] in ("T", "H", "S", "F")]
    assert set(single) <= {row[0] for row in rows}


def test_a_panel_is_drawn_on_the_face_it_is_nailed_to(house: House, study: Study) -> None:
    def panel_of(face: str) -> list[float]:
        panel = replace(house.alternatives["strengthen"].pieces["pn11"], face=face)  # type: ignore[call-arg]
        alternative = replace(house.alternatives["strengthen"], pieces={"p": panel})
        marks = plan(work_plan(house, study, {}, alternative, 2)).marks
        (mark,) = [m for m in marks if isinstance(m, Polygon) and m.address == "piece/p"]
        return [y for _, y in mark.points]

    assert min(panel_of("inside")) > 0  # the front line looks south
    assert max(panel_of("outside")) < 0


def test_pieces_alike_but_for_their_place_share_a_row_with_their_stations(house: House) -> None:
    rows = rows_of(work_table(house, house.alternatives["strengthen"], "us"))
    (anchors,) = [row for row in rows if row[0].startswith("A20")]
    assert anchors[0] == "A20–A24"
    assert anchors[1] == "L1: 1'-0\", 3'-4\", 26'-8\"; L2: 1'-0\"; L3: 3'-0\""
    assert anchors[2] == "5/8 in adhesive anchor, 7 in deep, 3 in to the face of the concrete, plate washer"


def test_marks_in_a_row_are_drawn_together() -> None:
    assert mark_runs(["A1", "A2", "A3", "A5", "A6", "B7"]) == "A1–A3, A5, A6, B7"
    assert mark_runs(["pn11", "strap", "A9", "A10", "A11"]) == "pn11, strap, A9–A11"


def test_a_report_stands_under_the_table_and_is_pointed_to(house: House) -> None:
    table = work_table(house, house.alternatives["strengthen"], "us")
    assert table.footnotes == ("(1) anchor report to be named",)
    (anchors,) = [row for row in rows_of(table) if row[0].startswith("A20")]
    assert anchors[3] == "(1)"


def test_a_piece_whose_line_is_gone_is_listed_and_not_drawn(house: House, study: Study) -> None:
    lost = BoltPiece(mark="A9", line="no-such-line", station_in=12, diameter_in=0.625, embedment_in=7)
    alternative = replace(house.alternatives["strengthen"], pieces={"lost": lost})
    drawn = plan(work_plan(house, study, {}, alternative, 2))
    assert "piece/lost" not in {mark.address for mark in drawn.marks}
    rows = rows_of(work_table(house, alternative, "us"))
    assert any(row[0] == "A9" for row in rows if len(row) > 1)
