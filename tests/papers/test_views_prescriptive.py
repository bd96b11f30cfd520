"""The prescriptive way on paper: a row for every line by both ways, apart from every verdict of the chains."""

from __future__ import annotations

from dataclasses import replace

import pytest

from groundsill.loadpath.prescriptive import PrescriptivePath
from groundsill.papers.document import (
    BulletList,
    Document,
    Heading,
    Paragraph,
    Remark,
    StatusWord,
    TableBlock,
    plain_text,
    spans,
)
from groundsill.papers.views.calculations import calculation_package
from groundsill.papers.views.doubts import Doubts, numbered_doubts
from groundsill.papers.views.prescriptive_view import (
    both_ways_blocks,
    line_told,
    remarks_blocks,
    requirement_told,
    scope_blocks,
    within_words,
    worked_blocks,
)
from groundsill.papers.views.working_view import Printed
from groundsill.papers.writers.terminal import to_text
from groundsill.study import AS_FOUND, Study, run, working
from tests.forces.reference_house import reference_house
from tests.papers.views_sample import rows_of

HOUSE = reference_house(panels={"front": 16, "right": 12})


@pytest.fixture(scope="module")
def study() -> Study:
    return run(HOUSE, ranges=False)


@pytest.fixture(scope="module")
def path(study: Study) -> PrescriptivePath:
    assert study.prescriptive is not None
    return study.prescriptive


def tables(study: Study, state: int = 1, units: str = "us") -> list[TableBlock]:
    run = study.runs[state]
    blocks = both_ways_blocks(run.name, run.prescriptive, "si" if units == "si" else "us", Doubts())
    return [block for block in blocks if isinstance(block, TableBlock)]


def test_every_line_has_a_row_by_both_ways(study: Study) -> None:
    rows = {row[0]: row for row in rows_of(tables(study)[0])}
    assert rows["L1 front"][1:6] == ("in", "16'-0\"", "16'-0\"", "8", "0")
    assert rows["L1 front"][6].startswith("13'-3\"")
    assert rows["L1 front"][7:] == ("10'-0\"", "would carry it, 0.83")
    assert rows["L2 right"][2:4] == ("12'-0\"", "12'-0\"")
    assert rows["L2 right"][8] == "would fail, 1.10"
    assert tables(study)[0].heavy == frozenset({1, 3})  # the short walls


def test_a_house_in_si_reads_metres(study: Study) -> None:
    assert rows_of(tables(study, units="si")[0])[0][2] == "4.877 m"


def test_bolts_stand_piece_by_piece_and_the_rest_line_by_line(study: Study) -> None:
    _, bolts, others = tables(study)
    assert rows_of(bolts)[0][:5] == ("L1", "sill si-front, 40'-0\"", "8", "0", "short")
    assert [column.heading for column in others.columns[:2]] == ["Line", "Panels"]
    assert rows_of(others)[0][1] == "2 of 5'-8 1/2\" or more"
    assert {row[0] for row in rows_of(others)} == {"L1", "L2", "L3", "L4"}
    notes = [plain_text(note) for note in others.footnotes]
    for row in rows_of(others):
        for cell in row[2:]:
            if cell.split(" ")[0] in ("short", "cannot"):
                assert any(note.startswith(f"{cell.rsplit('(', 1)[1].rstrip(')')}  ") for note in notes), cell
    assert any(note.startswith("Panels, L1: 1 panel of 16'-0\"") for note in notes)


def test_scope_and_weaknesses_are_told_item_by_item(path: PrescriptivePath) -> None:
    blocks = list(scope_blocks(path, Doubts()))
    scope, weak = (block for block in blocks if isinstance(block, TableBlock))
    assert len(scope.rows) == len(path.scope)
    assert len(weak.rows) == len(path.weaknesses) == 6
    assert {row[1] for row in rows_of(scope)} == {"in"}
    words = " ".join(plain_text(block.text) for block in blocks if isinstance(block, Paragraph))
    assert "within the prescriptive way (IEBC 2021 appendix chapter A3)" in words


def test_it_says_in_words_that_a_prescriptive_pass_is_no_engineered_one(path: PrescriptivePath) -> None:
    (warning,) = (block for block in scope_blocks(path, Doubts()) if isinstance(block, Remark))
    assert "not an engineered pass" in warning.title
    assert "has not passed an engineered check" in plain_text(warning.text)


def test_no_answer_wears_the_sign_of_a_checked_link(study: Study, path: PrescriptivePath) -> None:
    blocks = [*scope_blocks(path, Doubts()), *both_ways_blocks("work", study.runs[1].prescriptive, "us", Doubts())]
    for block in blocks:
        for row in block.rows if isinstance(block, TableBlock) else ():
            assert not any(isinstance(span, StatusWord) for cell in row for span in spans(cell))


def test_a_house_outside_is_told_so_and_why(study: Study, path: PrescriptivePath) -> None:
    out = replace(path, within="out")
    assert "stands outside the prescriptive way" in within_words(out)
    assert "cannot be told" in within_words(replace(path, within="cannot tell"))
    line = replace(study.runs[0].prescriptive[0], within="out", within_reason="62 in. with the sill, 48 in. at most")
    table = next(b for b in both_ways_blocks("x", [line], "us", Doubts()) if isinstance(b, TableBlock))
    assert "L1 out: 62 in. with the sill, 48 in. at most." in [plain_text(note) for note in table.footnotes]
    assert rows_of(table)[0][2:6] == ("(16'-0\")", '0"', "(8)", "0")


def test_the_terminal_tells_a_line_in_one_sentence(study: Study) -> None:
    said = line_told(study.runs[1].prescriptive[1])
    assert said.startswith("Prescriptive asks 12'-0\"; engineered 13'-3\" at full force")
    assert said.endswith("there: 12'-0\" of panel that counts and 0 of 6 bolts.")


def test_the_terminal_tells_what_is_asked_and_what_is_there(study: Study) -> None:
    told = [requirement_told(each) for each in study.runs[1].prescriptive[1].requirements]
    assert told[0].startswith("Meets: panel, 12'-0\" asked, 12'-0\" there: 1 panel of 12'-0\"")
    assert (
        "Short: bolts, sill si-right, 30'-0\", 6 asked, 0 there: bolts of 1/2 in, 72 in apart at most (A304.3.2)."
        in told
    )


def test_what_no_file_can_hold_is_listed(path: PrescriptivePath) -> None:
    (items,) = (block for block in remarks_blocks(path) if isinstance(block, BulletList))
    words = [plain_text(item) for item in items.items]
    assert any("IEBC 2021 A304.6" in each for each in words)
    assert not any("has not passed an engineered check" in each for each in words)  # it stands above, as a warning


def test_the_arithmetic_of_every_line_is_worked_out(study: Study) -> None:
    sheet = working(HOUSE, AS_FOUND)
    blocks = worked_blocks(study.runs[0].prescriptive, sheet, Printed(), Doubts())
    text = to_text(Document("x", (Heading("One", 1), Heading("Two", 2), *blocks)))
    for words in ("Least bracing of a wall line", "Length that a force needs at a unit shear", "419."):
        assert words in text
    assert list(worked_blocks(study.runs[0].prescriptive, None, Printed(), Doubts())) == []


def test_a_line_without_figures_says_why_in_its_row(study: Study) -> None:
    line = study.runs[0].prescriptive[0]
    both = replace(
        line.both, prescriptive_ft=None, engineered_full_ft=None, engineered_reduced_ft=None, ratio_full=None,
        why_not="the height of a wall is not known",
    )  # fmt: skip
    table = next(
        b for b in both_ways_blocks("x", [replace(line, both=both)], "us", Doubts()) if isinstance(b, TableBlock)
    )
    assert rows_of(table)[0][8] == "the height of a wall is not known"


def test_a_survey_without_a_perimeter_says_so() -> None:
    (only,) = both_ways_blocks("as found", (), "us", Doubts())
    assert isinstance(only, Paragraph)


def test_the_package_holds_the_chapter_and_numbers_its_doubts(study: Study) -> None:
    sheets = {run.key: working(HOUSE, run.key) for run in study.runs}
    package = calculation_package(HOUSE, study, sheets)
    text = to_text(package)
    assert "Prescriptive or engineered" in text
    both = [b for b in package.blocks if isinstance(b, TableBlock) and b.caption.startswith("Both ways, line by line")]
    assert [table.caption for table in both] == [f"Both ways, line by line, {name}" for name in ("as found", "panels")]
    assert rows_of(both[1])[1][8] == "would fail, 1.10"
    whats = {mark.what for mark in package.marks}
    assert any("Table A304.3.1, bracing" in what for what in whats)
    assert any("IEBC 2021 A301.2, the rule" in what for what in whats)
    assert numbered_doubts(package.marks).marks == package.marks
