"""A printed table as data: read only where it prints a figure, held by its checksum, and honest about each cell."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from groundsill.working.errors import GroundsillError, OutsideLimits, UnitError
from groundsill.working.sheet import Sheet
from groundsill.working.steps import given as recorded
from groundsill.working.table import Table, TableSource
from groundsill.working.value import Mark, Value, marks_of
from tests.working.rules import OLD_CHECKSUM, TABLE, one_over, table

ELM = Mark("from memory", "Rules 1 Table 2: elm, 1")


def said(text: str) -> str:
    with pytest.raises(GroundsillError) as refused:
        table(text)
    return str(refused.value)


# --- reading ---------------------------------------------------------------------------------------------------------


def test_a_figure_is_read_by_row_and_column() -> None:
    assert table().read("fir", 2) == 400.0
    assert table().read("fir", 0.5) == table().read("fir", 0.50) == 100.0
    assert type(table().read("fir", 2)) is float
    with Sheet():
        assert table().read("fir", recorded("t", 2.0, "in", "survey")) == 400.0


def test_on_a_sheet_the_step_says_which_table_and_row_were_read() -> None:
    with Sheet() as sheet:
        value = table().read("fir", 2)
        named = table().read("fir", 2, symbol="F_em")
    step = sheet.steps[0]
    assert (step.kind, step.id, step.title, step.cite) == (
        "lookup", "table 2", "Values by wood and thickness", "Rules 1 Table 2",
    )  # fmt: skip
    assert step.inputs == (("wood", "fir"), ("thickness", 2))
    assert isinstance(value, Value)
    assert (value.unit, value.symbol, value.step) == ("psi", "F", step)
    assert named.symbol == "F_em"  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("row", "column", "words"),
    [
        ("ash", 1, "Rules 1 Table 2: no row 'ash' (wood); it has fir, oak, elm"),
        ("fir", 3, "Rules 1 Table 2: no column 3 (thickness); it has 0.5, 1, 2"),
        ("fir", "1", "Rules 1 Table 2: no column '1' (thickness); it has 0.5, 1, 2"),
        ("fir", None, "Rules 1 Table 2: no column None (thickness); it has 0.5, 1, 2"),
        ("fir", 1.0000001, "Rules 1 Table 2: no column 1.0000001 (thickness); it has 0.5, 1, 2"),
        ("fir", math.nan, "Rules 1 Table 2: no column nan (thickness); it has 0.5, 1, 2"),
        ("oak", 1, "Rules 1 Table 2: no figure for oak, thickness 1: not permitted"),
    ],
)
def test_outside_the_table_is_refused_by_name(row: str, column: float | str | None, words: str) -> None:
    with pytest.raises(OutsideLimits) as refused:
        table().read(row, column)
    assert str(refused.value) == words


def test_a_table_of_one_column_is_read_by_its_row() -> None:
    one = TABLE.replace("columns = [0.5, 1, 2]", 'columns = ["value"]').replace("columns = [1]\n", "")
    one = one.replace("[100, 200, 400]", "[100]").replace('[150, "not permitted", 500]', "[150]")
    one = one.replace("[90, 180, 360]", "[90]")
    assert table(one).read("fir") == 100.0
    assert table(one).read("fir", "value") == 100.0
    with Sheet() as sheet:
        assert marks_of([table(one).read("elm")]) == {Mark("from memory", "Rules 1 Table 2: elm")}
    assert sheet.steps[0].inputs == (("wood", "elm"),)


def test_each_column_may_have_a_unit_of_its_own() -> None:
    mixed = table(TABLE.replace('unit = "psi"', 'units = ["psi", "ksi", "lb"]'))
    with Sheet():
        assert [mixed.read("fir", column).unit for column in (0.5, 1, 2)] == ["psi", "ksi", "lb"]  # type: ignore[attr-defined]


# --- between columns -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("at", "value"), [(0.5, 100), (0.75, 150), (1, 200), (1.5, 300), (2, 400)])
def test_between_columns_goes_a_straight_line(at: float, value: float) -> None:
    assert table().interpolate("fir", at) == value


@pytest.mark.parametrize(("at", "shown"), [(0.49, "0.49"), (2.01, "2.01"), (-1, "-1"), (math.inf, "inf")])
def test_beyond_its_ends_a_table_says_nothing(at: float, shown: str) -> None:
    with pytest.raises(OutsideLimits) as refused:
        table().interpolate("fir", at)
    assert str(refused.value) == f"Rules 1 Table 2: thickness = {shown} lies outside the table (0.5 to 2)"


def test_where_the_document_says_so_the_end_columns_hold() -> None:
    holding = table(TABLE.replace('beyond = "error"', 'beyond = "hold"'))
    assert [holding.interpolate("fir", at) for at in (0.1, 0.5, 1.5, 2, 40)] == [100, 100, 300, 400, 400]


@pytest.mark.parametrize("beyond", ["error", "hold"])
def test_what_is_no_number_is_outside_every_table(beyond: str) -> None:
    with pytest.raises(OutsideLimits, match=r"thickness = nan lies outside the table \(0\.5 to 2\)$"):
        table(TABLE.replace('"error"', f'"{beyond}"')).interpolate("fir", math.nan)


def test_no_line_is_drawn_to_a_figure_that_is_not_printed() -> None:
    for at in (0.75, 1, 1.5):
        with pytest.raises(OutsideLimits, match=r"^Rules 1 Table 2: no figure for oak at thickness 1: not permitted$"):
            table().interpolate("oak", at)
    assert table().interpolate("oak", 2) == 500.0
    with pytest.raises(OutsideLimits, match=r"^Rules 1 Table 2: no row 'ash' \(wood\); it has fir, oak, elm$"):
        table().interpolate("ash", 1)


def test_columns_of_words_have_nothing_between_them() -> None:
    words = TABLE.replace("[0.5, 1, 2]", '["thin", "middling", "thick"]').replace("columns = [1]", 'columns = ["thin"]')
    assert table(words).read("fir", "thin") == 100.0
    with pytest.raises(OutsideLimits) as refused:
        table(words).interpolate("fir", 1.0)
    assert str(refused.value) == "Rules 1 Table 2: nothing lies between its columns, which are words (thickness)"


def test_a_figure_in_feet_is_not_looked_up_under_inches() -> None:
    with Sheet() as sheet:
        at = recorded("t", 1.0, "ft", "survey")
        for look in (table().read, table().interpolate):
            with pytest.raises(UnitError) as refused:
                look("fir", at)
            assert str(refused.value) == (
                "Rules 1 Table 2: thickness is asked for in in, given in ft (Value(t = 1.0 ft))"
            )
        silent = table(TABLE.replace('column_unit = "in"\n', ""))
        assert silent.read("fir", at) == 200.0  # the page names no unit: nothing to hold it to
    assert [step.kind for step in sheet.steps] == ["given", "lookup"]


# --- the birth certificate -------------------------------------------------------------------------------------------


def test_a_changed_figure_is_found_and_the_right_checksum_told() -> None:
    good = table()
    with pytest.raises(GroundsillError) as refused:
        Table.parse(TABLE, "rules.toml")
    assert str(refused.value) == (
        "rules.toml: the checksum does not fit the figures; if the change is meant, it is " + good.digest()
    )
    right = TABLE.replace(OLD_CHECKSUM, good.digest())
    assert Table.parse(right, "rules.toml").digest() == good.digest()
    for old, new in (("400]", "401]"), ("fir =", "pine ="), ("[0.5, 1, 2]", "[0.5, 1, 3]"), ("not permitted", "NP")):
        with pytest.raises(GroundsillError, match=r"^rules\.toml: the checksum does not fit the figures"):
            Table.parse(right.replace(old, new), "rules.toml")


def test_each_row_has_a_figure_for_each_column() -> None:
    assert said(TABLE.replace("[100, 200, 400]", "[100, 200]")) == (
        "rules.toml: rows ['fir'] do not have one figure for each column"
    )
    assert said(TABLE.replace('unit = "psi"', 'units = ["psi", "psi"]')) == (
        "rules.toml: rows [] do not have one figure for each column"
    )


def test_every_source_is_described() -> None:
    assert said(TABLE.replace('source = "scan"', 'source = "rumour"')) == (
        "rules.toml: sources ['rumour'] are not described"
    )
    assert said(TABLE.replace('source = "memory"', 'source = "hearsay"')) == (
        "rules.toml: sources ['hearsay'] are not described"
    )


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ('row = "elm"', 'row = "ash"', "exception for ash, 1: no such cell"),
        ("columns = [1]", "columns = [4]", "exception for elm, 4: no such cell"),
    ],
)
def test_an_exception_names_a_cell_that_is_there(old: str, new: str, words: str) -> None:
    assert said(TABLE.replace(old, new)) == words


def test_a_table_beside_a_module_is_read_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    package = tmp_path / "made_up_shed"
    package.mkdir()
    (package / "__init__.py").touch()
    (package / "wood.toml").write_text(TABLE.replace(OLD_CHECKSUM, table().digest()), encoding="utf-8")
    monkeypatch.syspath_prepend(tmp_path)
    once = Table.load("made_up_shed", "wood.toml")
    assert once.read("fir", 2) == 400.0
    assert Table.load("made_up_shed", "wood.toml") is once


# --- doubts ----------------------------------------------------------------------------------------------------------


def test_each_cell_says_how_it_is_known() -> None:
    scan, memory = TableSource("seen", "these tests, page 3"), TableSource("from memory", "recalled")
    known = {(row, place): table().source_of(row, place) for row in table().rows for place in range(3)}
    assert known == {cell: memory if cell == ("elm", 1) else scan for cell in known}


def test_an_exception_without_columns_is_the_whole_row() -> None:
    whole = table(TABLE.replace("columns = [1]\n", ""))
    assert [whole.source_of("elm", place).how for place in range(3)] == ["from memory"] * 3
    assert whole.source_of("fir", 0).how == "seen"


def test_a_recalled_cell_marks_exactly_what_depends_on_it() -> None:
    with Sheet() as sheet:
        cell = table().read("elm", 1)
        beside = [table().read("elm", 0.5), table().read("elm", 2), table().read("fir", 1)]
        below, at, above = (table().interpolate("elm", x) for x in (0.75, 1, 1.25))
        ends = [table().interpolate("elm", 0.5), table().interpolate("elm", 2), table().interpolate("fir", 0.75)]
        after = one_over(Value(float(cell), "1", "r", None, marks_of([cell])))
        apart = one_over(4.0)
    for doubtful in (cell, below, at, above, after):
        assert marks_of([doubtful]) == {ELM}
    for sure in (*beside, *ends, apart):
        assert marks_of([sure]) == frozenset()
    in_doubt = [bool(step.marks) for step in sheet.steps]
    assert in_doubt == [True, *[False] * 3, *[True] * 3, *[False] * 3, True, False]


def test_a_doubt_about_the_value_a_table_was_read_at_goes_on() -> None:
    guess = Mark("estimated", "thickness (K1)")
    with Sheet():
        t = recorded("t", 1.5, "in", "survey", [guess])
        assert marks_of([table().interpolate("fir", t)]) == {guess}
        assert marks_of([table().interpolate("elm", t)]) == {guess, ELM}
        two = recorded("t", 2.0, "in", "survey", [guess])
        assert marks_of([table().read("fir", two)]) == {guess}


def test_a_table_from_memory_throughout_marks_every_cell_by_name() -> None:
    recalled = table(TABLE.replace('how = "seen"', 'how = "from memory"'))
    with Sheet():
        assert marks_of([recalled.read("fir", 2)]) == {Mark("from memory", "Rules 1 Table 2: fir, 2")}
        assert marks_of([recalled.interpolate("fir", 1.5)]) == {
            Mark("from memory", "Rules 1 Table 2: fir, 1"), Mark("from memory", "Rules 1 Table 2: fir, 2"),
        }  # fmt: skip


def test_a_computed_cell_carries_no_mark() -> None:
    computed = table(TABLE.replace('how = "from memory"', 'how = "computed"'))
    with Sheet():
        assert marks_of([computed.read("elm", 1)]) == frozenset()
