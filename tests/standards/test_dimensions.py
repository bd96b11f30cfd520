"""What holds for every formula and table in the program, whatever document it is from.

Units and scale are proved on the parsed expression; the printed working gives the body's own answer; every formula says
what it is; every figure says how it is known; and a doubt about one cell reaches exactly the results that used it.
"""

from __future__ import annotations

import math
import random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.standards.asce7_16 import elf, ground_motion
from groundsill.standards.catalogue import Entry, entries, errata
from groundsill.standards.shelf import documents
from groundsill.working.dimensions import check_units
from groundsill.working.equation import Equation, Procedure, Q
from groundsill.working.errors import OutsideLimits, UnitError
from groundsill.working.explain import walk
from groundsill.working.sheet import Sheet
from groundsill.working.source import Source
from groundsill.working.steps import given as recorded
from groundsill.working.table import Table
from groundsill.working.unit import unit
from groundsill.working.value import Mark, marks_of

EQUATIONS = [entry.maker for entry in entries() if isinstance(entry.maker, Equation)]
PROCEDURES = [entry.maker for entry in entries() if isinstance(entry.maker, Procedure)]
TABLES = [entry for entry in entries() if entry.kind == "table"]

every_equation = pytest.mark.parametrize("eq", EQUATIONS, ids=[eq.id for eq in EQUATIONS])
every_procedure = pytest.mark.parametrize("proc", PROCEDURES, ids=[proc.id for proc in PROCEDURES])
every_table = pytest.mark.parametrize("entry", TABLES, ids=[entry.id for entry in TABLES])


def bounds(q: Q) -> tuple[float, float]:
    """The least and greatest number of an argument's own limits; where the document sets none, a house's range."""
    low = q.above if q.above is not None else q.at_least
    high = q.below if q.below is not None else q.at_most
    if low is None:
        low = -1000.0 if high is None else high - 1000.0
    if high is None:
        high = low + 1000.0
    margin = 1e-6 * max(1.0, high - low)
    return (low if q.above is None else low + margin), (high if q.below is None else high - margin)


def in_limits(q: Q) -> st.SearchStrategy[float]:
    """Numbers that an argument's own limits allow, small ones as often as large."""
    low, high = bounds(q)
    spans = sorted({min(high, low + span) for span in (1.0, 10.0, 100.0, 1000.0)} | {high})
    return st.one_of([st.floats(low, top) for top in spans])


# --- equations -------------------------------------------------------------------------------------------------------


@every_equation
def test_units_agree_on_the_parsed_expression(eq: Equation[Any]) -> None:
    check_units(eq)


@every_equation
@given(data=st.data())
@settings(max_examples=15)
def test_the_printed_working_gives_the_bodys_own_answer(eq: Equation[Any], data: st.DataObject) -> None:
    numbers = {name: data.draw(in_limits(q), label=name) for name, q in eq.arguments}
    try:
        answer = eq(**numbers)
    except OutsideLimits:
        return  # a limit over several arguments
    shown, lines = walk(eq, numbers)
    assert shown == answer
    assert lines[-1].kind in ("answer", "governs", "limit")
    with Sheet() as sheet:
        assert eq(**numbers) == answer
    assert sheet.steps[-1].result == answer


@every_equation
def test_some_input_keeps_all_the_limits(eq: Equation[Any]) -> None:
    """Otherwise the test above would pass by never asking anything."""
    chance = random.Random(eq.id)
    for _ in range(5000):
        numbers = {}
        for name, q in eq.arguments:
            low, high = bounds(q)
            numbers[name] = chance.uniform(low, min(high, low + chance.choice((1.0, 10.0, 100.0, 1000.0))))
        try:
            assert walk(eq, numbers)[0] == eq(**numbers)
        except OutsideLimits:
            continue
        return
    pytest.fail(f"{eq.id}: no input was found that keeps its limits")


@every_equation
def test_an_equation_says_what_it_is_and_where_it_was_read(eq: Equation[Any]) -> None:
    text = (eq.__doc__ or "").strip()
    assert len(text) > 20, f"{eq.id}: the docstring is the specification"
    assert eq.title
    assert eq.clause
    for name, q in (*eq.arguments, ("result", eq.result)):
        assert q.what, f"{eq.id}: {name} does not say what it means"
        unit(q.unit)


@every_equation
def test_what_is_no_number_never_gets_into_an_equation(eq: Equation[Any]) -> None:
    if not eq.arguments:
        return
    first = eq.arguments[0]
    rest = {name: (q.at_least or q.at_most or (q.above or 0.0) + 1e-3) for name, q in eq.arguments[1:]}
    for wrong in (math.nan, math.inf, -math.inf):
        with pytest.raises(OutsideLimits) as refused:
            eq(**{first[0]: wrong}, **rest)
        assert eq.cite in str(refused.value)


def test_a_length_added_to_an_area_is_caught() -> None:
    """The proof itself can fail: the same equation with one unit told wrong."""
    right = ground_motion.end_of_plateau
    wrong = Equation(right.body, right.id, right.title, right.clause, right.source, right.how, None, {1.0: "ft"})
    with pytest.raises(UnitError, match=r"asce7-16/11\.4\.6-Ts.*units do not agree; the answer is declared in s"):
        check_units(wrong)


# --- procedures ------------------------------------------------------------------------------------------------------


@every_procedure
def test_a_procedure_says_what_it_is(proc: Procedure[Any, Any]) -> None:
    assert len((proc.__doc__ or "").strip()) > 40
    assert proc.title
    assert proc.clause
    for _, q in proc.arguments:
        if q.unit:
            unit(q.unit)


def test_ids_and_aliases_name_one_thing_each() -> None:
    ids = [entry.id for entry in entries()]
    assert sorted(ids) == sorted(set(ids))
    aliases = [(entry.document, entry.alias) for entry in entries() if entry.alias]
    assert sorted(aliases) == sorted(set(aliases))


# --- tables and errata -----------------------------------------------------------------------------------------------


@every_table
def test_every_cell_of_a_table_says_how_it_is_known(entry: Entry) -> None:
    table = entry.maker()
    assert isinstance(table, Table)
    assert table.rows
    for text in table.units:
        unit(text)
    for row in table.rows:
        for place in range(len(table.columns)):
            source = table.source_of(row, place)
            assert source.how in ("seen", "from memory", "computed"), f"{entry.id}: {row}: {source.how!r}"
            assert source.where.strip(), f"{entry.id}: {row}: no place"


@every_table
def test_no_figure_was_changed_without_its_checksum(entry: Entry) -> None:
    table = entry.maker()
    assert isinstance(table, Table)
    assert table.checksum == table.digest()


@pytest.mark.parametrize("document", documents())
def test_errata_say_what_is_printed_what_is_used_and_why(document: str) -> None:
    for erratum in errata(document):
        assert all((erratum.place, erratum.printed, erratum.used, erratum.why))


@pytest.mark.parametrize("document", documents())
def test_every_document_names_itself(document: str) -> None:
    module = __import__(f"groundsill.standards.{document.replace('-', '_')}", fromlist=["SOURCE"])
    assert isinstance(module.SOURCE, Source)
    assert entries(document)


# --- a doubt travels exactly as far as the number --------------------------------------------------------------------


def tainted(table: Table, text: str, row: str, column: float) -> Table:
    """The table with one cell's source changed to memory: no figure is touched, so the checksum still fits."""
    added = '\n[sources.doubt]\nhow = "from memory"\nwhere = "a test"\n'
    added += f'[[exception]]\nrow = "{row}"\ncolumns = [{column}]\nsource = "doubt"\n'
    got = Table.parse(text + added, "tainted")
    assert got.rows == table.rows
    return got


@pytest.mark.parametrize("site_class", ["C", "D", "D-default"])
@pytest.mark.parametrize("S_S", [0.2, 0.5, 0.6, 0.75, 0.9, 1.0, 1.3])
def test_one_doubtful_cell_marks_exactly_the_results_that_read_it(
    site_class: str, S_S: float, monkeypatch: pytest.MonkeyPatch
) -> None:
    from importlib.resources import files

    text = (files("groundsill.standards.asce7_16") / "tables/11_4_1.toml").read_text("utf-8")
    doubtful = tainted(ground_motion.table_11_4_1(), text, "D", 0.75)
    monkeypatch.setattr(ground_motion, "table_11_4_1", lambda: doubtful)
    mark = Mark("from memory", "ASCE 7-16 Table 11.4-1: D, 0.75")
    reads_it = site_class == "D" and 0.5 < S_S < 1.0
    with Sheet() as sheet:
        site = ground_motion.site_values(recorded("S_S", S_S, "g", "map"), recorded("S_1", 0.3, "g", "map"), site_class)
        shear = elf.seismic_coefficient(site.S_DS, site.S_D1, site.S_1, 0.2, 6.0, 6.5)
        period = elf.approximate_period(18.0)
    for depends in (site.F_a, site.S_MS, site.S_DS, shear.C_s, shear.plateau):
        assert (mark in marks_of([depends])) == reads_it
    for apart in (site.F_v, site.S_M1, site.S_D1, period):
        assert mark not in marks_of([apart])
    carried = {step.id for step in sheet.steps if mark in step.marks}
    assert ("asce7-16/11.4-1" in carried) == reads_it
    assert "asce7-16/11.4-2" not in carried
