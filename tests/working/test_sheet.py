"""A sheet holds the steps in order, each with its depth and section, and is never left lying open for the next job."""

from __future__ import annotations

import contextvars
import threading

import pytest

from groundsill.working.errors import GroundsillError, OutsideLimits
from groundsill.working.sheet import Sheet, open_sheet, section
from groundsill.working.steps import given as recorded
from groundsill.working.steps import note
from tests.working.rules import both, pressure, sum_of, worse_post


def test_no_sheet_lies_open_unless_one_was_opened() -> None:
    assert open_sheet() is None
    with Sheet() as sheet:
        assert open_sheet() is sheet
    assert open_sheet() is None


def test_steps_stand_in_the_order_they_were_taken() -> None:
    with Sheet() as sheet:
        b = recorded("b", 2.0, "in", "survey")
        pressure(400.0, b)
        note("that was all")
    assert [(step.kind, step.title) for step in sheet.steps] == [
        ("given", "survey"), ("equation", "Pressure under a post"), ("note", "that was all"),
    ]  # fmt: skip


def test_a_figure_without_a_symbol_is_refused_where_it_is_recorded() -> None:
    """No paper could name it: what is read aloud for a formula would be nothing."""
    with Sheet() as sheet, pytest.raises(GroundsillError) as refused:
        recorded("", 2.0, "in", "width of the post")
    assert str(refused.value) == "width of the post, 2.0: a figure is recorded without a symbol"
    assert sheet.steps == []


def test_nothing_is_written_after_it_was_closed() -> None:
    with Sheet() as sheet:
        pressure(400.0, 2.0)
    pressure(400.0, 2.0)
    assert len(sheet.steps) == 1


def test_a_step_inside_procedures_knows_how_deep_it_stands() -> None:
    with Sheet() as sheet:
        worse_post(400.0, 2.0)
        sum_of(400.0, 2.0)
        pressure(400.0, 2.0)
    assert [(step.depth, step.id or step.result.symbol) for step in sheet.steps] == [  # type: ignore[union-attr]
        (0, "rules-1/10"), (1, "rules-1/11"), (2, "rules-1/1"), (2, "rules-1/2"), (2, "f_min"), (1, "f"),
        (0, "rules-1/12"), (1, "rules-1/1"), (1, "rules-1/1"), (1, "f_sum"),
        (0, "rules-1/1"),
    ]  # fmt: skip
    assert sheet.depth == 0


def test_steps_are_gathered_by_the_address_they_were_taken_for() -> None:
    with Sheet() as sheet:
        pressure(400.0, 2.0)
        with section("line/l1/sheathing"):
            pressure(500.0, 2.0)
            with section("line/l1/sill"):
                both(600.0, 2.0)
            pressure(700.0, 2.0)
        pressure(800.0, 2.0)
    sheathing, sill = "line/l1/sheathing", "line/l1/sill"
    assert [step.section for step in sheet.steps] == ["", sheathing, sill, sill, sill, sill, sheathing, ""]
    assert [dict(step.inputs)["P"] for step in sheet.under("line/l1/sheathing")] == [500.0, 700.0]
    assert len(sheet.under("line/l1/sill")) == 4
    assert sheet.under("line/l2/sill") == ()


def test_a_section_without_a_sheet_does_nothing() -> None:
    with section("line/l1/sheathing"):
        assert pressure(400.0, 2.0) == 400 / 11
    assert open_sheet() is None


def test_one_sheet_inside_another_takes_its_own_steps() -> None:
    with Sheet() as outer:
        pressure(400.0, 2.0)
        with Sheet() as inner:
            pressure(500.0, 2.0)
        pressure(600.0, 2.0)
    assert [dict(step.inputs)["P"] for step in outer.steps] == [400.0, 600.0]
    assert [dict(step.inputs)["P"] for step in inner.steps] == [500.0]
    assert open_sheet() is None


def test_a_refusal_inside_leaves_everything_closed() -> None:
    with pytest.raises(OutsideLimits), Sheet() as sheet, section("line/l1/sill"):
        worse_post(400.0, 99.0)
    assert open_sheet() is None
    assert (sheet.depth, sheet.section) == (0, "")
    assert [step.id for step in sheet.steps] == ["rules-1/10", "rules-1/11"]  # as far as it came


def test_work_may_go_on_after_a_refusal_on_the_same_sheet() -> None:
    with Sheet() as sheet:
        with pytest.raises(OutsideLimits), section("line/l1/sill"):
            worse_post(400.0, 99.0)
        pressure(400.0, 2.0)
    assert (sheet.steps[-1].depth, sheet.steps[-1].section) == (0, "")


def test_a_sheet_may_be_opened_again_and_goes_on() -> None:
    sheet = Sheet()
    for force in (400.0, 500.0):
        with sheet:
            pressure(force, 2.0)
    assert [dict(step.inputs)["P"] for step in sheet.steps] == [400.0, 500.0]
    assert open_sheet() is None


def test_two_threads_never_write_on_each_others_paper() -> None:
    start, found = threading.Barrier(2), {}

    def job(force: float) -> None:
        with Sheet() as sheet:
            for n in range(50):
                if n % 10 == 0:
                    start.wait()
                with section(f"{force:g}"):
                    both(force, 2.0)
        found[force] = sheet

    threads = [threading.Thread(target=job, args=(force,)) for force in (100.0, 200.0)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    for force, sheet in found.items():
        assert len(sheet.steps) == 200
        assert {step.section for step in sheet.steps} == {f"{force:g}"}
        assert {dict(step.inputs)["P"] for step in sheet.steps if step.kind == "equation"} == {force}


def test_a_thread_started_under_an_open_sheet_has_none() -> None:
    seen: list[object] = []
    with Sheet() as sheet:
        thread = threading.Thread(target=lambda: seen.append((open_sheet(), pressure(400.0, 2.0))))
        thread.start()
        thread.join()
    assert seen == [(None, 400 / 11)]
    assert sheet.steps == []


def test_a_task_that_carries_its_context_along_writes_on_the_same_sheet() -> None:
    with Sheet() as sheet:
        contextvars.copy_context().run(pressure, 400.0, 2.0)
    assert len(sheet.steps) == 1


def test_the_value_of_a_step_does_not_hold_the_step() -> None:
    """Otherwise every sheet would be one knot that only the garbage collector can undo."""
    with Sheet() as sheet:
        answer = pressure(400.0, 2.0)
    assert answer.step is sheet.steps[0]  # type: ignore[attr-defined]
    assert sheet.steps[0].result is not None
    assert sheet.steps[0].result.step is None


def test_a_sheet_opened_twice_is_closed_when_the_outer_is_left() -> None:
    sheet, other = Sheet(), Sheet()
    with sheet:
        with other, sheet:
            pressure(400.0, 2.0)
        assert open_sheet() is sheet
    assert open_sheet() is None
    assert (len(sheet.steps), len(other.steps)) == (1, 0)
