"""Laws of numbers that show their working, for formulas nobody wrote by hand: made up here by the hundred."""

from __future__ import annotations

import ast
import math
from fractions import Fraction
from random import Random
from typing import Any
from xml.etree import ElementTree

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from groundsill.standards.catalogue import entries
from groundsill.working.dimensions import check_units
from groundsill.working.equation import Equation
from groundsill.working.errors import OutsideLimits
from groundsill.working.explain import figure, walk
from groundsill.working.expression import FUNCTIONS, evaluate, read_body, to_math
from groundsill.working.mathtree import Symbol
from groundsill.working.measure_show import NOTHING
from groundsill.working.render import as_mathml, as_typst
from groundsill.working.sheet import Sheet, open_sheet, section
from groundsill.working.steps import add, divide, greatest, least, multiply, scale, subtract
from groundsill.working.unit import factor, unit
from groundsill.working.value import Mark, Value, marks_of
from tests.working.reading_back import from_mathml, from_text, from_typst, worked_out
from tests.working.rules import OLD_CHECKSUM, TABLE, pressure, rule_from, slender, table
from tests.working.typeset import compile_maths

EQUATIONS = [entry.maker for entry in entries() if isinstance(entry.maker, Equation)]

# --- formulas made up ------------------------------------------------------------------------------------------------

NAMES = st.sampled_from(["a", "b", "c"])
LITERALS = st.sampled_from(["0", "1", "2", "3", "0.5", "1.25", "12", "1e-3", "0.75"])


def _grown(inner: st.SearchStrategy[str]) -> st.SearchStrategy[str]:
    sums = st.tuples(inner, st.sampled_from(["+", "-", "*", "/"]), inner).map(lambda p: f"({p[0]} {p[1]} {p[2]})")
    powers = st.tuples(inner, st.sampled_from(["2", "3", "(-1)", "(-2)"])).map(lambda p: f"({p[0]}) ** {p[1]}")
    towers = st.tuples(NAMES, st.sampled_from(["2 ** 2", "(1 + 1)", "(3 - 1)"])).map(lambda p: f"{p[0]} ** {p[1]}")
    calls = st.tuples(st.sampled_from(["min", "max"]), inner, inner).map(lambda p: f"{p[0]}({p[1]}, {p[2]})")
    turned = st.one_of(inner.map(lambda e: f"(-{e})"), inner.map(lambda e: f"abs({e})"))
    return st.one_of(sums, sums, powers, towers, calls, turned)


ARITHMETIC = st.recursive(NAMES | LITERALS, _grown, max_leaves=7)
FIGURES = st.fractions(-8, 8, max_denominator=6)


@given(ARITHMETIC, FIGURES, FIGURES, FIGURES)
@settings(max_examples=300)
def test_a_reader_of_text_mathml_or_typst_gets_the_same_value(
    formula: str, a: Fraction, b: Fraction, c: Fraction
) -> None:
    numbers = {"a": a, "b": b, "c": c}
    try:
        value = worked_out(formula, numbers, exactly=True)
    except ZeroDivisionError:
        assume(False)
    node = to_math(ast.parse(formula, mode="eval").body, {})
    for read in (from_text, from_mathml, from_typst):
        assert worked_out(read(node), numbers, exactly=True) == value, read(node)


CONDITIONS = st.tuples(ARITHMETIC, st.sampled_from(["<", "<=", ">", ">="]), ARITHMETIC).map(" ".join)
CASES = st.tuples(ARITHMETIC, CONDITIONS, ARITHMETIC).map(lambda p: f"{p[0]} if {p[1]} else {p[2]}")
CASES |= st.tuples(CASES, CONDITIONS, CASES).map(lambda p: f"max({p[0]}, 1) if {p[1]} or c > 2 else ({p[2]})")
EXPRESSIONS = ARITHMETIC | CASES
TESTS = st.recursive(
    CONDITIONS,
    lambda inner: st.tuples(inner, st.sampled_from(["and", "or"]), inner).map(lambda p: f"({p[0]}) {p[1]} ({p[2]})"),
    max_leaves=4,
)
CHOICES = st.tuples(EXPRESSIONS, TESTS, EXPRESSIONS).map(lambda p: f"1 + (({p[0]}) if {p[1]} else ({p[2]})) * 2")


@given(CHOICES, FIGURES, FIGURES, FIGURES)
@settings(max_examples=200)
def test_a_reader_of_the_text_takes_the_same_case(formula: str, a: Fraction, b: Fraction, c: Fraction) -> None:
    numbers = {"a": a, "b": b, "c": c}
    try:
        value = worked_out(formula, numbers, exactly=True)
    except ZeroDivisionError:
        assume(False)
    shown = from_text(to_math(ast.parse(formula, mode="eval").body, {}))
    assert worked_out(shown, numbers, exactly=True) == value, shown


@st.composite
def bodies(draw: st.DrawFn) -> str:
    """A body as an equation may have it: assignments, cases inside cases, an answer at the end of each."""
    lines = [f"s = {draw(EXPRESSIONS)}", f"a = s + {draw(NAMES)}"][: draw(st.integers(0, 2))]
    lines += [f"if {draw(CONDITIONS)}:", f"    t = {draw(EXPRESSIONS)}", "    return max(t, c)"]
    if draw(st.booleans()):
        lines += [f"elif {draw(CONDITIONS)} and {draw(CONDITIONS)}:", f"    return {draw(EXPRESSIONS)}"]
    if draw(st.booleans()):
        lines += ["else:", f"    b = {draw(ARITHMETIC)}"]
    return "\n".join([*lines, f"return min(b, {draw(ARITHMETIC)})"])


NUMBERS = st.floats(-50, 50) | st.integers(-5, 5).map(float)


def asked(rule: Any, *numbers: float) -> tuple[float, str]:
    """What a rule answers: a number and no words, or why it refuses."""
    try:
        return rule(*numbers), ""
    except OutsideLimits as refused:
        return math.nan, str(refused)


@given(bodies(), NUMBERS, NUMBERS, NUMBERS)
@settings(max_examples=200)
def test_the_working_of_any_body_ends_at_the_very_float_it_gave(body: str, a: float, b: float, c: float) -> None:
    rule = rule_from(body, "a 1, b 1, c 1")
    bare, refusal = asked(rule, a, b, c)
    with Sheet() as sheet:
        on_paper, again = asked(rule, a, b, c)
    assert again == refusal
    if refusal:
        assert sheet.steps == []
        return
    value, lines = walk(rule, {"a": a, "b": b, "c": c})  # type: ignore[arg-type]
    assert float(bare).hex() == float(on_paper).hex() == float(value).hex()
    assert lines == sheet.steps[0].lines
    assert [line.kind for line in lines].count("answer") >= 1


@given(bodies())
@settings(max_examples=30)
def test_pure_numbers_agree_in_every_body(body: str) -> None:
    check_units(rule_from(body, "a 1, b 1, c 1"))  # type: ignore[arg-type]


# --- what is given between equations ---------------------------------------------------------------------------------

CELLS = [(row, column) for row in ("fir", "elm") for column in (0.5, 1, 2)]
OPERATIONS = st.tuples(
    st.sampled_from(["add", "subtract", "least", "greatest", "scale", "multiply", "divide", "equation"]),
    st.integers(0, 99), st.integers(0, 99),
)  # fmt: skip
WORK = st.tuples(
    st.lists(st.sampled_from(CELLS), min_size=1, max_size=4),
    st.lists(st.sampled_from(CELLS), max_size=3),
    st.lists(OPERATIONS, min_size=1, max_size=8),
)


def with_doubts(cells: list[tuple[str, float]]) -> str:
    """The table's text with these cells recalled and all others seen."""
    text = TABLE.partition("[[exception]]")[0].replace(OLD_CHECKSUM, table().checksum)
    told = "".join(f'[[exception]]\nrow = "{row}"\ncolumns = [{column}]\nsource = "memory"\n' for row, column in cells)
    return text + told


def done(work: tuple[list[Any], list[Any], list[Any]], doubtful: bool) -> tuple[list[float], list[set[int]]]:
    """Read the cells and work on: every number in turn, and which of the read cells each depends on."""
    cells, recalled, operations = work
    book = table(with_doubts(recalled if doubtful else []))
    numbers = [book.read(*cell) for cell in cells]
    depends = [{place} for place in range(len(cells))]
    for name, i, j in operations:
        left, right = numbers[i % len(numbers)], numbers[j % len(numbers)]
        of = depends[i % len(numbers)] | depends[j % len(numbers)]
        try:
            numbers.append(_worked(name, left, right))
        except OutsideLimits:
            continue
        depends.append(of if name not in ("scale", "equation") else depends[i % len(depends)])
    return numbers, depends


def _worked(name: str, left: float, right: float) -> float:
    if name == "scale":
        return scale(left, 0.3, symbol="x")
    if name == "multiply":
        return as_pressure(multiply(left, right, symbol="x", unit="psi^2"))
    if name == "divide":
        if float(right) == 0:
            raise OutsideLimits("nothing to divide by")
        return as_pressure(divide(left, right, symbol="x", unit="1"))
    if name == "equation":
        return pressure(abs(float(left)) % 100 if not isinstance(left, Value) else in_pounds(left), 2.0)
    return {"add": add, "subtract": subtract, "least": least, "greatest": greatest}[name](left, right, symbol="x")


def as_pressure(value: float) -> float:
    return Value(value, "psi", value.symbol, value.step, value.marks) if isinstance(value, Value) else value


def in_pounds(value: Value) -> Value:
    return Value(abs(float(value)) % 100, "lb", "P", value.step, value.marks)


@given(WORK)
@settings(max_examples=150)
def test_a_doubt_reaches_exactly_what_depends_on_the_doubtful_cell(
    work: tuple[list[Any], list[Any], list[Any]],
) -> None:
    cells, recalled, _ = work
    with Sheet() as sheet:
        numbers, depends = done(work, doubtful=True)
    for number, of in zip(numbers, depends, strict=True):
        wanted = {
            Mark("from memory", f"Rules 1 Table 2: {r}, {c}") for r, c in (cells[i] for i in of) if (r, c) in recalled
        }
        assert marks_of([number]) == wanted
        assert number.step.marks == wanted  # type: ignore[attr-defined]
    assert open_sheet() is None
    assert len(sheet.steps) == len(numbers)


@given(WORK)
@settings(max_examples=100)
def test_every_number_is_the_same_float_with_and_without_a_sheet(work: tuple[list[Any], list[Any], list[Any]]) -> None:
    bare, _ = done(work, doubtful=False)
    with Sheet():
        on_paper, _ = done(work, doubtful=True)
    assert [type(number) for number in bare] == [float] * len(bare)
    assert [number.hex() for number in bare] == [float(number).hex() for number in on_paper]


@given(st.floats(0, 1e5), st.floats(0, 48, exclude_min=True, exclude_max=True), st.floats(0, 1e3, exclude_min=True))
def test_an_equation_is_the_same_float_with_and_without_a_sheet(P: float, b: float, d: float) -> None:
    bare, refusal = asked(pressure, P, b, d)
    with Sheet():
        on_paper, again = asked(pressure, P, b, d)
    assert (float(on_paper).hex(), again) == (float(bare).hex(), refusal)


@given(st.lists(st.sampled_from(["open", "close", "section", "leave", "refuse"]), max_size=12))
def test_however_sheets_and_sections_are_nested_all_are_closed_in_the_end(moves: list[str]) -> None:
    def go(rest: list[str]) -> None:
        if not rest:
            return
        if rest[0] == "open":
            with Sheet() as sheet:
                assert open_sheet() is sheet
                go(rest[1:])
                assert open_sheet() is sheet
            assert sheet.section == ""
        elif rest[0] == "section":
            with section("line/l1"):
                go(rest[1:])
        elif rest[0] == "refuse":
            with pytest.raises(OutsideLimits):
                slender(1.0, -1.0)
            go(rest[1:])
        else:
            go(rest[1:])

    go(moves)
    assert open_sheet() is None


# --- figures, units, tables ------------------------------------------------------------------------------------------


def back(text: str) -> float:
    return float(text.replace(",", ""))


@given(st.floats(1e-15, 1e15) | st.floats(-1e15, -1e-15) | st.floats(0.5, 20000) | st.floats(1e-6, 1e-3))
@settings(max_examples=500)
def test_a_written_figure_reads_back_within_five_digits(number: float) -> None:
    text = figure(number)
    if abs(number) < NOTHING:
        assert text == "0"
        return
    assert abs(back(text) - number) <= 5e-5 * abs(number) * (1 + 1e-9)
    digits, _, power = text.replace(",", "").lstrip("-0.").replace(".", "").partition("e")
    assert len(digits) <= 5 or abs(number) >= 10000
    assert power or "." not in text or text[-1] in "123456789"


@given(st.floats(-1e9, 1e9), st.floats(-1e9, 1e9))
def test_written_figures_keep_their_order(one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert back(figure(low)) <= back(figure(high))


@given(st.integers(-9999, 9999), st.integers(0, 4))
def test_what_has_no_more_than_five_digits_is_written_as_it_is(digits: int, places: int) -> None:
    number = digits / 10**places
    assert back(figure(number)) == number


LENGTHS = st.sampled_from(["in", "ft", "mm", "cm", "m"])
PRESSURES = st.sampled_from(["psi", "ksi", "psf", "Pa", "kPa", "MPa", "lb/in^2", "kip/ft^2"])


@given(st.one_of(st.tuples(LENGTHS, LENGTHS, LENGTHS), st.tuples(PRESSURES, PRESSURES, PRESSURES)))
def test_conversions_chain_and_turn_back(units: tuple[str, str, str]) -> None:
    a, b, c = units
    assert factor(a, a) == 1.0
    assert factor(a, b) * factor(b, a) == pytest.approx(1.0, rel=1e-15)
    assert factor(a, b) * factor(b, c) == pytest.approx(factor(a, c), rel=1e-14)


@given(LENGTHS, st.sampled_from(["psi", "ksi", "psf", "kPa", "lb"]), st.integers(1, 4))
def test_a_unit_written_together_is_the_product_of_its_parts(length: str, pressure_: str, power: int) -> None:
    assert unit(f"{pressure_}*{length}^{power}").same_as(unit(pressure_) * unit(length) ** power)
    assert unit(f"{pressure_}/{length}").same_as(unit(pressure_) / unit(length))
    assert not unit(f"{pressure_}/{length}").same_as(unit(pressure_))


@given(st.sampled_from(["fir", "elm"]), st.floats(0.5, 2), st.floats(0.5, 2))
def test_between_columns_a_rising_row_rises_and_stays_inside_its_neighbours(row: str, one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert table().interpolate(row, low) <= table().interpolate(row, high)
    cells = [float(c) for c in table().rows[row]]
    for at in (low, high):
        place = 0 if at <= 1 else 1
        assert cells[place] <= table().interpolate(row, at) <= cells[place + 1]


@given(st.floats(-1e6, 1e6))
def test_a_table_either_holds_its_ends_or_refuses(at: float) -> None:
    holding = table(TABLE.replace('beyond = "error"', 'beyond = "hold"'))
    held = holding.interpolate("fir", at)
    assert held == holding.interpolate("fir", min(max(at, 0.5), 2))
    if 0.5 <= at <= 2:
        assert table().interpolate("fir", at) == held
    else:
        with pytest.raises(OutsideLimits, match="lies outside the table"):
            table().interpolate("fir", at)


# --- every equation in the program -----------------------------------------------------------------------------------


def inputs_of(eq: Equation[Any], chance: Random) -> dict[str, float] | None:
    """Some numbers that keep all of an equation's limits, or None when none turned up."""
    for _ in range(3000):
        numbers = {}
        for name, q in eq.arguments:
            low = q.above if q.above is not None else q.at_least if q.at_least is not None else -100.0
            high = q.below if q.below is not None else q.at_most if q.at_most is not None else low + 1000.0
            span = min(high - low, chance.choice((1.0, 10.0, 100.0, 1000.0)))
            numbers[name] = low + span * chance.uniform(1e-6, 1 - 1e-6)
        try:
            eq(**numbers)
        except OutsideLimits:
            continue
        return numbers
    return None


def test_typst_takes_every_line_of_every_equation_and_mathml_is_well_formed() -> None:
    maths = []
    for eq in EQUATIONS:
        chance = Random(eq.id)
        for _ in range(2):
            numbers = inputs_of(eq, chance)
            assert numbers is not None, f"{eq.id}: no input was found that keeps its limits"
            maths += [line.math for line in walk(eq, numbers)[1] if line.math is not None]
    assert len(maths) > 4 * len(EQUATIONS)
    for math_ in maths:
        ElementTree.fromstring(as_mathml(math_))
    assert compile_maths(dict.fromkeys(as_typst(m) for m in maths)) >= 1


def expressions_of(eq: Equation[Any]) -> list[ast.expr]:
    """Every expression of a body: values assigned and returned, conditions of cases and limits."""
    found: list[ast.expr] = []
    for statement in read_body(eq.body.__module__, eq.body.__name__).statements:
        for node in ast.walk(statement):
            if isinstance(node, ast.Assign | ast.Return) and node.value is not None:
                found.append(node.value)
            elif isinstance(node, ast.If):
                found.append(node.test)
    return found


@pytest.mark.parametrize("eq", EQUATIONS, ids=[eq.id for eq in EQUATIONS])
def test_the_printed_formula_read_back_gives_the_value(eq: Equation[Any]) -> None:
    chance, read = Random(eq.id), 0
    for node in expressions_of(eq):
        names = sorted({n.id for n in ast.walk(node) if isinstance(n, ast.Name)} - set(FUNCTIONS) - {"pi"})
        shown = from_text(to_math(node, {name: Symbol(name) for name in names}), [*names, "pi"])
        for _ in range(20):
            numbers = {name: chance.uniform(0.2, 4.0) for name in names}
            try:
                value = evaluate(node, numbers)
            except (ArithmeticError, ValueError):
                continue
            if isinstance(value, complex):
                continue
            again = worked_out(shown, numbers, exactly=False)
            assert again == pytest.approx(value, rel=1e-9, abs=1e-9), shown
            assert not math.isnan(value)
            read += 1
    assert read > 0
