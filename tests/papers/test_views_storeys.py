"""The storeys above on paper: every wall with its figures and reason, and what the work makes worse off by name."""

from __future__ import annotations

from dataclasses import replace

import pytest

from groundsill.loadpath.rises import compared
from groundsill.loadpath.storey_above import StoreyAbove, own_system
from groundsill.papers.document import BulletList, Document, Heading, Paragraph, Remark, TableBlock, plain_text
from groundsill.papers.views.doubts import Doubts, numbered_doubts
from groundsill.papers.views.storeys_view import next_blocks, rises_table, storeys_blocks, walls_table
from groundsill.papers.writers.terminal import to_text
from groundsill.papers.writers.typst import to_pdf
from groundsill.working.sheet import Sheet
from tests.loadpath.test_storey_above import opening, with_building
from tests.loadpath.two_storeys import BOARDS, PLASTER, above, two_storeys
from tests.papers.views_sample import chain, link, rows_of, stage


@pytest.fixture(scope="module")
def storeys() -> tuple[StoreyAbove, ...]:
    cut = {"w11": {str(n): opening(40 + 80 * n, 80 + 80 * n) for n in range(4)}, "w23": {"a": opening(0, 360)}}
    return above(two_storeys((BOARDS, PLASTER), cut))[1]


def test_every_wall_has_a_row_with_its_figures_and_its_verdict(storeys: tuple[StoreyAbove, ...]) -> None:
    table = walls_table(storeys[0], "us", Doubts())
    rows = {row[0]: row for row in rows_of(table)}
    check = next(c for c in storeys[0].checks if c.mark == "E12")
    assert rows["E12"][:5] == (
        "E12",
        "y",
        f"{check.force_lb:,.0f} lb",
        "20'-0\"",
        "plaster on wood lath, strength level",
    )
    assert rows["E12"][6:8] == ("600 plf", f"{check.ratio:.2f}")
    assert rows["E12"][8].startswith("indicated")
    assert rows["E11"][3:8] == ("–",) * 5
    assert rows["E11"][8].startswith("cannot be checked")
    assert table.caption == f"Walls of Main floor as found, {storeys[0].force_lb:,.0f} lb above its floor"


def test_a_doubt_that_every_wall_has_is_told_once_and_a_wall_s_own_beside_its_ratio() -> None:
    house = two_storeys((BOARDS, PLASTER), {"w12": {"a": opening(60, 180)}})
    with Sheet():
        _, (lower, _) = above(house)
    marks = [frozenset(c.marks) for c in lower.checks]
    assert marks[0] != marks[1]  # the second wall has no stretch long enough for plaster, and goes by its boards
    doubts = numbered_doubts(frozenset().union(*marks))
    common = frozenset.intersection(*marks)
    table = walls_table(lower, "us", doubts)
    assert table.footnotes[0] == (f"† alone: the figure rests on {doubts.dagger(common)}, as every ratio here does.")
    for row, own in zip(rows_of(table), marks, strict=True):
        assert row[7].endswith(f" {doubts.dagger(own - common)}")


def test_reasons_stand_under_the_table_by_number(storeys: tuple[StoreyAbove, ...]) -> None:
    table = walls_table(storeys[0], "us", Doubts())
    row = next(row for row in rows_of(table) if row[0] == "E11")
    number = row[8].split()[-1]
    (note,) = [str(n) for n in table.footnotes if str(n).startswith(f"{number}  ")]
    assert "Every stretch between openings is more slender than the tables allow" in note


def test_an_open_front_is_told_without_a_ratio(storeys: tuple[StoreyAbove, ...]) -> None:
    row = next(row for row in rows_of(walls_table(storeys[1], "us", Doubts())) if row[0] == "E23")
    assert row[7] == "no capacity"
    assert row[8].startswith("fails")


def test_walls_left_out_are_named_under_the_table() -> None:
    house = two_storeys((BOARDS,), {"w12": {"a": opening(20, 220)}})
    building = house.survey.building
    corner = building.corners["se0"]
    corners = {
        **building.corners, "i1": replace(corner, x_in=340.0, y_in=0.0), "i2": replace(corner, x_in=340.0, y_in=240.0)
    }  # fmt: skip
    inner = replace(building.walls["w12"], order=15, mark="E15", start="i1", end="i2", openings={})
    walls = {**building.walls, "inner": inner}
    _, (lower, _) = above(with_building(house, replace(building, corners=corners, walls=walls)))
    table = walls_table(lower, "us", Doubts())
    assert "E12" not in {row[0] for row in rows_of(table)}
    assert "No stretch of it is long enough for its height; other walls take its share: E12." in table.footnotes


def test_the_chapter_tells_its_rules_its_verdicts_and_what_is_missing(storeys: tuple[StoreyAbove, ...]) -> None:
    forces, _ = above(two_storeys((BOARDS,)))
    lacking = replace(storeys[0], missing=("Main floor, no wall stands along x: a wall is missing there",))
    blocks = tuple(storeys_blocks((lacking, storeys[1]), own_system(forces), "us"))
    (rules,) = [b for b in blocks if isinstance(b, BulletList)]
    assert any("every ratio here is 3.25 times as high" in plain_text(item) for item in rules.items)
    assert [plain_text(b.text) for b in blocks if isinstance(b, Remark)] == [
        "Main floor, no wall stands along x: a wall is missing there."
    ]
    chapter = Heading("The storeys above")
    page = Document("Above", (chapter, *blocks))
    assert to_pdf(page).startswith(b"%PDF")
    assert "Walls of Upper floor as found" in to_text(page, 120)
    metric = to_text(Document("Above", (chapter, *storeys_blocks(storeys, "", "si"))), 120)
    assert "kN/m" in metric


def test_what_the_work_makes_worse_off_is_a_warning_with_its_table() -> None:
    def carries(ratio: float) -> object:
        return chain(stage("floor-boards", link("floor-boards", "fails", "straight boards", ratio=ratio)))

    worse = compared((carries(1.38),), (carries(2.63),))  # type: ignore[arg-type]
    blocks = tuple(next_blocks("brace and bolt", "after the work the next weakest level is Main floor", worse))
    assert plain_text(blocks[0].text) == (  # type: ignore[union-attr]
        "Brace and bolt: after the work the next weakest level is Main floor."
    )
    assert isinstance(blocks[1], Remark)
    assert isinstance(blocks[2], TableBlock)
    assert rows_of(rises_table(worse, "brace and bolt")) == [
        ("L1", "straight boards", "1.38", "2.63", "+91 %", "beyond what is allowed")
    ]
    allowed = tuple(next_blocks("a", "b", compared((carries(2.0),), (carries(2.1),))))  # type: ignore[arg-type]
    assert isinstance(allowed[1], Paragraph)
    assert rows_of(allowed[2])[0][-1] == "within what is allowed"  # type: ignore[arg-type]
    same = tuple(next_blocks("a", "b", compared((carries(2.0),), (carries(2.0),))))  # type: ignore[arg-type]
    assert len(same) == 2
    assert len(tuple(next_blocks("as found", "b", None))) == 1
