"""Working on paper: every formula in full once, then its figures; nothing printed twice, nothing lost."""

from __future__ import annotations

from groundsill.papers.document import Paragraph, Reference, Working, spans
from groundsill.papers.views.doubts import Doubts, doubt_blocks, numbered_doubts
from groundsill.papers.views.working_view import (
    SHORTEST_RUN,
    Item,
    Printed,
    Told,
    steps_of,
    working_blocks,
    working_items,
)
from groundsill.papers.writers.steps import MarkNumbers, set_step
from groundsill.standards.nds_2018.bearing import wood_bearing
from groundsill.standards.nds_2018.sill_bolt import sill_bolt
from groundsill.working.explain import figure
from groundsill.working.sheet import Sheet, Step, section
from groundsill.working.steps import convert, given, multiply
from groundsill.working.value import Mark
from tests.papers.views_sample import captioned, rows_of, small_package, small_study, words


def bolt(thickness: float, place: str) -> tuple[Step, ...]:
    """The steps of one sill bolt."""
    with Sheet() as sheet, section(place):
        sill_bolt(0.5, given("l_s", thickness, "in", "survey: thickness of the sill"))
    return steps_of(sheet, (place,))


def told(items: tuple[Item, ...]) -> list[Told]:
    return [item for item in items if isinstance(item, Told)]


def test_the_first_time_every_step_is_set_out_in_full() -> None:
    steps = bolt(1.5, "a")
    items = working_items(steps, "a", "L1, sill bolts", Printed())
    assert [item.step for item in items if isinstance(item, Working)] == list(steps)


def test_the_same_steps_again_are_one_line_that_leads_there_with_the_answer() -> None:
    printed = Printed()
    working_items(bolt(1.5, "a"), "a", "L1, sill bolts", printed)
    (block,) = working_blocks(bolt(1.5, "b"), "b", "L2, sill bolts", printed, Doubts())
    assert isinstance(block, Paragraph)
    assert "number for number, as for L1, sill bolts: Z = 648.01 lb" in words(block.text)
    assert [span.anchor for span in spans(block.text) if isinstance(span, Reference)] == ["a"]


def test_the_same_formulas_with_other_numbers_are_one_paragraph_with_every_figure() -> None:
    printed = Printed()
    working_items(bolt(1.5, "a"), "a", "L1, sill bolts", printed)
    steps = bolt(1.75, "b")
    (block,) = working_blocks(steps, "b", "L2, sill bolts", printed, Doubts())
    assert isinstance(block, Paragraph)
    text = words(block.text)
    assert "as for L1, sill bolts, with l_s = 1.75 in; " in text
    results = [step.result for step in steps if step.result is not None]
    assert len(results) > 12
    for result in results:
        assert f" = {figure(result)}" in text


def test_no_number_is_lost_between_the_sheet_and_the_paper() -> None:
    printed = Printed()
    shown = []
    given_steps = []
    for place, thickness in (("a", 1.5), ("b", 1.5), ("c", 1.75), ("d", 2.0), ("e", 1.75)):
        steps = bolt(thickness, place)
        given_steps.extend(steps)
        for item in working_items(steps, place, place, printed):
            shown.extend([item.step] if isinstance(item, Working) else item.steps if isinstance(item, Told) else ())
    assert shown == given_steps


def test_a_branch_not_taken_before_is_set_out_in_full() -> None:
    """Under a quarter of an inch the bearing strength follows another formula: it is not told by reference."""

    def steps(D: float, place: str) -> tuple[Step, ...]:
        with Sheet() as sheet, section(place):
            wood_bearing(D, "Douglas fir-larch")
        return steps_of(sheet, (place,))

    printed = Printed()
    working_items(steps(0.5, "a"), "a", "bolt", printed)
    items = working_items(steps(0.131, "b"), "b", "nail", printed)
    (formula,) = [item.step for item in items if isinstance(item, Working) and item.step.kind == "equation"]
    assert formula.title == "Dowel bearing strength, D under 1/4 in."


def test_what_stands_twice_under_one_heading_points_up_not_to_itself() -> None:
    steps = (*bolt(1.5, "a"), *bolt(1.75, "a"))
    blocks = working_blocks(steps, "a", "L1, sill bolts", Printed(), Doubts())
    (again,) = [block for block in blocks if isinstance(block, Paragraph)]
    assert "as for the steps above, with" in words(again.text)
    assert not any(isinstance(span, Reference) for span in spans(again.text))


def test_short_runs_are_printed_again() -> None:
    def steps(place: str) -> tuple[Step, ...]:
        with Sheet() as sheet, section(place):
            convert(given("b", 96.0, "in", "length"), "in", "ft")
        return steps_of(sheet, (place,))

    printed = Printed()
    working_items(steps("a"), "a", "a", printed)
    items = working_items(steps("b"), "b", "b", printed)
    assert len(items) == 2 < SHORTEST_RUN
    assert told(items) == []


def test_a_run_never_ends_inside_a_procedure_it_opened() -> None:
    """The last figures differ in formula: the heading of their procedure stays with them."""
    full = bolt(1.5, "a")
    printed = Printed()
    working_items(full[:-1], "a", "a", printed)  # printed without its last step
    items = working_items(bolt(1.5, "b"), "b", "b", printed)
    for item in told(items):
        last = item.steps[-1]
        assert last.kind != "procedure"
    kept = [item.step for item in items if isinstance(item, Working)]
    assert kept[-1].title == full[-1].title


def test_sections_are_read_in_the_order_asked_for_and_none_without_a_sheet() -> None:
    with Sheet() as sheet:
        with section("b"):
            given("b", 1.0, "in", "second")
        with section("a"):
            given("a", 1.0, "in", "first")
    assert [step.title for step in steps_of(sheet, ("a", "b", "a"))] == ["first", "second"]
    assert steps_of(None, ("a",)) == ()


# --- doubts -----------------------------------------------------------------------------------------------------------

OLD_FLOOR, REDWOOD = Mark("from memory", "old floor"), Mark("unverified", "redwood")


def marked(place: str, marks: tuple[Mark, ...]) -> tuple[Step, ...]:
    with Sheet() as sheet, section(place):
        multiply(given("w", 9.0, "psf", "floor", marks), given("A", 10.0, "ft^2", "area"), symbol="W", unit="lb")
    return steps_of(sheet, (place,))


def test_daggers_draw_three_or_more_in_a_row_together() -> None:
    marks = [Mark("from memory", f"figure {n}") for n in range(1, 10)]
    doubts = Doubts({mark: n for n, mark in enumerate(marks, start=1)})
    assert doubts.dagger([marks[1], *marks[4:8]]) == "†2, 5–8"
    assert doubts.dagger([marks[0], marks[1]]) == "†1, 2"
    assert doubts.dagger([]) == ""
    assert Doubts().dagger([OLD_FLOOR]) == "†"


def test_doubts_are_numbered_kind_by_kind_as_they_are_listed() -> None:
    doubts = numbered_doubts((REDWOOD, Mark("estimated", "sill"), OLD_FLOOR, REDWOOD))
    assert doubts.numbers == {OLD_FLOOR: 1, REDWOOD: 2, Mark("estimated", "sill"): 3}
    assert doubts.marks == (OLD_FLOOR, REDWOOD, Mark("estimated", "sill"))


def test_the_numbers_in_the_list_are_those_the_writer_prints_under_the_steps() -> None:
    package = small_package()
    listed = captioned(package, "Figures in doubt")
    numbered = {row[0]: row[1] for row in rows_of(listed) if len(row) == 2}
    numbers = MarkNumbers.of(package)
    for block in package.blocks:
        if isinstance(block, Working):
            set_step(block.step, numbers)
    assert len(numbers.told) > 20
    assert len(numbers.known) == len(package.marks)
    for mark in numbers.told:
        assert numbered[f"†{numbers.known[mark]}"] == mark.what


def test_the_list_of_doubts_has_each_figure_once_by_kind() -> None:
    _, study, _ = small_study()
    (_, table) = doubt_blocks(Doubts({OLD_FLOOR: 1}), study.manifest)
    rows = rows_of(table)  # type: ignore[arg-type]
    assert rows[0][0].startswith("From memory, to be confirmed")
    assert rows[1] == ("†1", "old floor")
    whats = [row[1] for row in rows if len(row) == 2]
    assert len(whats) == len(set(whats))


def test_a_mark_reaches_the_paragraph_that_stands_for_its_steps() -> None:
    printed, doubts = Printed(), Doubts({REDWOOD: 1, OLD_FLOOR: 2})
    working_items((*marked("a", (OLD_FLOOR,)), *bolt(1.5, "a")), "a", "a", printed)
    blocks = working_blocks((*marked("b", (OLD_FLOOR,)), *bolt(1.5, "b")), "b", "b", printed, doubts)
    assert [words(block.text)[-4:] for block in blocks if isinstance(block, Paragraph)] == [" †2."]
