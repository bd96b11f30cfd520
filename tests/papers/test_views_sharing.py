"""Every state's sharing of the force: by which floor, why, and sums that close or say why they do not."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from groundsill.papers.document import Paragraph, TableBlock, plain_text
from groundsill.papers.views.sharing_view import floor_paragraph, sharing_blocks, sharing_tables
from groundsill.study import Run, Study
from tests.papers.views_sample import rows_of, small_study


@pytest.fixture
def study() -> Study:
    return small_study()[1]


def flexible(run: Run) -> Run:
    return replace(run, floor="")


def rigid(run: Run, mark: str, force: float) -> Run:
    """The state with one line taking more by a rigid floor."""
    lines = {
        id: replace(line, floor="rigid floor", force_lb=force) if line.mark == mark else line
        for id, line in run.line_forces.items()
    }
    return replace(run, floor="heights in line L3 differ by more than 1.25 to 1", line_forces=lines)


def test_a_flexible_floor_is_told_and_its_sums_close(study: Study) -> None:
    run = flexible(study.runs[0])
    told = plain_text(floor_paragraph(run).text)
    assert told.startswith("The floor is taken to be flexible: it is cut into strips")
    assert "rigid" not in told
    for table in sharing_tables(study.forces, run, "us"):
        total = rows_of(table)[-1]
        assert total[2 : 2 + len(study.forces.levels)] == ("1.000",) * len(study.forces.levels)
        assert table.footnotes[-1] == (
            "The shares of each level must come to 1.000, and the forces to the base shear, "
            f"{study.forces.base_shear_lb:,.0f} lb."
        )
        assert {row[-1] for row in rows_of(table)[:-1]} <= {"relied on", "not relied on"}


def test_why_the_floor_is_taken_as_rigid_too_is_told_with_the_lines_that_take_more(study: Study) -> None:
    run = rigid(study.runs[0], "L1", 9999.0)
    told = plain_text(floor_paragraph(run).text)
    assert "Here it is also taken as rigid, since heights in line L3 differ by more than 1.25 to 1." in told
    assert told.endswith("Every line takes the worse of the two: it is the rigid floor for L1.")
    table = sharing_tables(study.forces, run, "us")[0]
    rows = {row[0]: row for row in rows_of(table)}
    assert rows["L1"][-2:] == ("9,999 lb", "rigid floor")
    assert rows["L3"][-1] == "flexible floor"
    note = str(table.footnotes[-1])
    assert note.startswith("Every line takes the worse of two floors, so the shares of a level may come to more than")


def test_the_rule_may_ask_for_both_and_no_line_take_more(study: Study) -> None:
    told = plain_text(floor_paragraph(study.runs[0]).text)
    assert told.endswith("Every line takes the worse of the two: no line takes more by the rigid floor.")


def test_states_that_share_alike_are_printed_once_and_others_by_name(study: Study) -> None:
    same = list(sharing_blocks(study, {}))
    captions = [block.caption for block in same if isinstance(block, TableBlock)]
    assert captions == ["Lines along x: share of each level's force", "Lines along y: share of each level's force"]
    first, second, third = study.runs
    changed = replace(study, runs=(first, rigid(second, "L1", 9999.0), third))
    found = list(sharing_blocks(changed, {second.key: {"line/line1": "†7"}}))
    captions = [block.caption for block in found if isinstance(block, TableBlock)]
    assert captions == [
        f"Lines along {way}: share of each level's force, {state}"
        for state in (f"{first.name} and {third.name}", second.name)
        for way in ("x", "y")
    ]
    told = [plain_text(b.text) for b in found if isinstance(b, Paragraph)]
    assert sum(text.startswith("The floor is taken to be flexible: it is cut") for text in told) == 1
    assert (
        "The floor is taken as flexible and as rigid, since heights in line L3 differ by more than 1.25 to 1; it is "
        "the rigid floor for L1." in told
    )
    heads = [plain_text(b.text) for b in found if isinstance(b, Paragraph) and plain_text(b.text).endswith(":")]
    assert heads == [f"As found and {third.name}:", f"{second.name[:1].upper()}{second.name[1:]}:"]
    (table,) = [
        b
        for b in found
        if isinstance(b, TableBlock) and b.caption.endswith(f"x: share of each level's force, {second.name}")
    ]
    assert rows_of(table)[0][-2] == "9,999 lb †7"


def test_skewed_lines_stand_apart_and_say_both_directions(study: Study) -> None:
    run = flexible(study.runs[0])
    lines = {
        id: replace(line, direction=None, other_lb=321.0) if id == "line1" else line
        for id, line in run.line_forces.items()
    }
    tables = sharing_tables(study.forces, replace(run, line_forces=lines), "us")
    skewed = tables[-1]
    assert skewed.caption == "Lines skewed to both directions"
    assert [row[0] for row in rows_of(skewed)] == ["L1"]
    assert skewed.footnotes[-1] == (
        "L1: for the earthquake that asks most of it; 321 lb with the earthquake along the other direction."
    )
    assert str(tables[0].footnotes[-1]).startswith("With what the skewed lines (L1) take along this direction")


def test_the_forces_of_the_tables_are_those_the_chains_stand_on(study: Study) -> None:
    for run in study.runs:
        for chain in run.chains:
            assert math.isclose(run.line_forces[chain.id].force_lb, chain.force_lb)


def test_the_stiffness_that_a_rigid_floor_shares_by_is_told_line_by_line(study: Study) -> None:
    run = rigid(study.runs[0], "L1", 9999.0)
    lines = {
        id: replace(line, stiffness_lb_in=None, open="W3: how the floor is held was not seen", most_lb=4321.0)
        if line.mark == "L2"
        else replace(line, stiffness_lb_in=12_345.0 if line.mark == "L1" else None, open="", most_lb=None)
        for id, line in run.line_forces.items()
    }
    blocks = sharing_blocks(replace(study, runs=(replace(run, line_forces=lines),)), {})
    told = plain_text([b for b in blocks if isinstance(b, Paragraph)][-1].text)
    assert told.startswith("Stiffness, ")
    assert "A rigid floor shares by the stiffness of the lines along themselves: L1 12,345 lb/in." in told
    assert "L2: its stiffness is not known (W3: how the floor is held was not seen), so that" in told
    assert "is at most 4,321 lb" in told
    assert "Nothing that counts braces L3 and L4: by a rigid floor no force goes there." in told
