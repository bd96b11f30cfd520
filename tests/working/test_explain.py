"""The lines a reader sees: formula, numbers put in, answer, which case or minimum governed, limits, rows read."""

from __future__ import annotations

import pytest

from groundsill.working.explain import figure, walk
from groundsill.working.render import as_text
from groundsill.working.sheet import Sheet, Step
from groundsill.working.steps import add, condition, convert, divide, greatest, least, multiply, note, subtract
from groundsill.working.steps import given as recorded
from tests.working.rules import one_over, pressure, rule_from, slender, table


def shown(step: Step) -> list[str]:
    """Each line as kind, maths and words."""
    return [
        f"{line.kind}: " + " ".join(part for part in (as_text(line.math) if line.math else "", line.text) if part)
        for line in step.lines
    ]


def walked(rule: object, **numbers: float) -> list[str]:
    with Sheet() as sheet:
        answer = rule(**numbers)  # type: ignore[operator]
    value, lines = walk(rule, numbers)  # type: ignore[arg-type]
    assert value == answer
    assert lines == sheet.steps[-1].lines
    return shown(sheet.steps[-1])


# --- equations -------------------------------------------------------------------------------------------------------


def test_formula_numbers_answer_and_the_limits_that_count() -> None:
    assert walked(pressure, P=1100.0, b=2.0, d=5.5) == [
        "formula: f_c = P / (b · d)",
        "numbers: f_c = 1100 / (2 · 5.5) = 100 psi",
        "answer: f_c = 100 psi",
        "limit: P at least 0 and at most 100000 lb",
        "limit: b above 0 and below 48 in",
    ]  # `d above 0` goes without saying


def test_the_case_that_holds_is_written_and_the_others_are_not() -> None:
    assert walked(slender, h=2.0, b=2.5) == [
        "limit: 12 · 2 ≤ 60 · 2.5 height no more than sixty times the width",
        "formula: s = 12 · h / b",
        "numbers: s = 12 · 2 / 2.5 = 9.6",
        "answer: s = 9.6",
        "governs: 9.6 ≤ 11 holds",
        "formula: k = 1.0",
        "answer: k = 1",
        "limit: b above 0 and below 48 in",
    ]


def test_a_second_case_says_that_the_first_did_not_hold() -> None:
    lines = walked(slender, h=4.0, b=2.5)
    assert lines[4:6] == ["governs: 19.2 ≤ 11 does not hold", "governs: 19.2 ≤ 26 holds"]
    assert lines[6:9] == [
        "formula: k = 1 - (s - 11) / 45",
        "numbers: k = 1 - (19.2 - 11) / 45 = 0.81778",
        "answer: k = 0.81778",
    ]
    assert lines[9:12] == [
        "formula: k = max(k, 0.5)",
        "numbers: k = max(0.81778, 0.5) = 0.81778",
        "answer: k = 0.81778",
    ]
    assert lines[12] == "governs: k the greatest of 0.81778, 0.5 governs"


@pytest.mark.parametrize(
    ("height", "width", "governs"),
    [
        (6.0, 2.5, "1 / sqrt(s) the least of 0.54334, 0.5, 0.18634 governs"),
        (12.0, 2.5, "1 / sqrt(s) the least of 0.13583, 0.5, 0.13176 governs"),
        (12.4, 2.5, "(26 / s)^2 · 2 / 3 the least of 0.12721, 0.5, 0.12962 governs"),
    ],
)
def test_the_least_of_three_is_named_with_all_three(height: float, width: float, governs: str) -> None:
    lines = [line for line in walked(slender, h=height, b=width) if "the least of" in line]
    assert lines == [f"governs: {governs}"]


def test_a_conditional_expression_names_the_case_that_applies() -> None:
    rule = rule_from("return a * 2 if a > b else b * 3", "a in, b in", "in")
    assert "governs: a · 2 the case that applies" in walked(rule, a=5.0, b=1.0)
    assert "governs: b · 3 the case that applies" in walked(rule, a=1.0, b=5.0)


def test_what_stands_in_a_case_not_taken_is_neither_worked_out_nor_written() -> None:
    rule = rule_from("return min(a / b, 1.0) if b > 0 else 0.5", "a 1, b 1")
    assert walked(rule, a=1.0, b=0.0) == [
        "formula: y = (min(a / b, 1.0) if b > 0 otherwise 0.5)",
        "numbers: y = (min(1 / 0, 1.0) if 0 > 0 otherwise 0.5) = 0.5",
        "answer: y = 0.5",
        "governs: 0.5 the case that applies",
    ]
    assert walked(rule, a=1.0, b=4.0)[3:] == [
        "governs: min(a / b, 1.0) the case that applies",
        "governs: a / b the least of 0.25, 1 governs",
    ]


def test_a_case_inside_a_case_is_followed_to_the_one_that_applies() -> None:
    rule = rule_from("return 2 * (1 / a if a > 0 else (max(b, 3) if b > 0 else 1 / b))", "a 1, b 1")
    assert walked(rule, a=0.0, b=5.0)[3:] == [
        "governs: max(b, 3) if b > 0 otherwise 1 / b the case that applies",
        "governs: max(b, 3) the case that applies",
        "governs: b the greatest of 5, 3 governs",
    ]


def test_of_two_that_are_equal_the_first_governs() -> None:
    rule = rule_from("return min(a, b)", "a in, b in", "in")
    assert "governs: a the least of 2, 2 governs" in walked(rule, a=2.0, b=2.0)


def test_a_figure_alone_is_not_written_twice() -> None:
    rule = rule_from("return 0.5", "a in", "1")
    assert walked(rule, a=2.0) == ["formula: y = 0.5", "answer: y = 0.5"]


def test_a_body_that_ends_without_an_answer_is_an_error_of_the_program() -> None:
    rule = rule_from("if a > 1:\n    return a", "a 1")
    with pytest.raises(ValueError, match=r"^rules-1/made: the body ended without a return$"):
        walk(rule, {"a": 0.5})  # type: ignore[arg-type]


def test_what_is_worked_out_again_is_bit_for_bit_what_was_recorded() -> None:
    with Sheet() as sheet:
        answer = one_over(3.0)
    value, _ = walk(one_over, {"r": 3.0})
    assert value.hex() == float(answer).hex() == float(sheet.steps[0].result or 0).hex() == (1 / 3).hex()


# --- recorded arithmetic ---------------------------------------------------------------------------------------------


def test_arithmetic_between_equations_is_written_like_a_formula() -> None:
    with Sheet() as sheet:
        a, b = recorded("V_1", 1200.0, "lb", "line L1"), recorded("V_2", 300.0, "lb", "line L2")
        h = recorded("h", 4.0, "ft", "height")
        add(a, b, symbol="V", label="both lines")
        subtract(a, b, symbol="V")
        multiply(a, h, symbol="M", unit="lb-ft")
        divide(a, h, symbol="w", unit="plf")
        least(a, b, symbol="V_min")
        greatest(a, b, symbol="V_max")
        convert(h, "ft", "in")
    assert [shown(step) for step in sheet.steps[3:]] == [
        ["formula: V = V_1 + V_2", "numbers: V = 1200 + 300 = 1500 lb", "answer: V = 1500 lb"],
        ["formula: V = V_1 - V_2", "numbers: V = 1200 - 300 = 900 lb", "answer: V = 900 lb"],
        ["formula: M = V_1 · h", "numbers: M = 1200 · 4 = 4800 lb-ft", "answer: M = 4800 lb-ft"],
        ["formula: w = V_1 / h", "numbers: w = 1200 / 4 = 300 plf", "answer: w = 300 plf"],
        ["formula: V_min = min(V_1, V_2)", "numbers: V_min = min(1200, 300) = 300 lb", "answer: V_min = 300 lb"],
        ["formula: V_max = max(V_1, V_2)", "numbers: V_max = max(1200, 300) = 1200 lb", "answer: V_max = 1200 lb"],
        ["answer: h = 4 ft = 48 in"],
    ]


def test_a_figure_without_a_name_leaves_only_the_numbers() -> None:
    with Sheet() as sheet:
        add(recorded("V", 10.0, "lb", "x"), 5.0, symbol="W")
    assert shown(sheet.steps[-1]) == ["numbers: W = 10 + 5 = 15 lb", "answer: W = 15 lb"]


def test_a_sum_of_nothing_shows_only_what_it_comes_to() -> None:
    with Sheet() as sheet:
        add(symbol="W", label="no storey above", unit="lb")
    assert shown(sheet.steps[0]) == ["answer: W = 0 lb"]


def test_a_negative_figure_keeps_its_sign_apart() -> None:
    with Sheet() as sheet:
        subtract(recorded("a", 5.0, "lb", ""), recorded("b", -3.0, "lb", ""), symbol="c")
    assert shown(sheet.steps[-1])[1] == "numbers: c = 5 - -3 = 8 lb"


def test_given_figures_notes_and_conditions() -> None:
    with Sheet() as sheet:
        a = recorded("a", 5.0, "in", "survey: edge distance")
        note("old nails are not counted")
        condition("edge at least 1.75 in.", True, a, cite="IBC 2021 1905.1.8")
        condition("cast in", False)
        condition("washer seen", None)
    assert [(step.kind, step.title, shown(step)) for step in sheet.steps] == [
        ("given", "survey: edge distance", ["answer: a = 5 in"]),
        ("note", "old nails are not counted", ["note: old nails are not counted"]),
        ("condition", "edge at least 1.75 in.", ["condition: edge at least 1.75 in.: met (a = 5)"]),
        ("condition", "cast in", ["condition: cast in: NOT met"]),
        ("condition", "washer seen", ["condition: washer seen: not known"]),
    ]


def test_a_look_up_names_the_row_it_read() -> None:
    with Sheet() as sheet:
        table().read("fir", 2)
        table().interpolate("fir", recorded("t", 1.5, "in", "survey"))
    assert shown(sheet.steps[0]) == ["row: wood fir, thickness 2", "answer: F = 400 psi"]
    assert shown(sheet.steps[2]) == ["row: wood fir, thickness 1.5", "answer: F = 300 psi"]


# --- figures ---------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("number", "text"),
    [
        (0.0, "0"), (-0.0, "0"), (1.0, "1"), (1.5, "1.5"), (-2.25, "-2.25"), (1 / 3, "0.33333"), (2 / 3, "0.66667"),
        (100.0, "100"), (1234.56, "1234.6"), (9999.0, "9999"), (10000.0, "10,000"), (1234567.8, "1,234,568"),
        (-54321.4, "-54,321"), (0.001234567, "0.0012346"), (0.0001, "0.0001"), (99999.6, "100,000"), (0.1 + 0.2, "0.3"),
        (650, "650"), (120.0, "120"), (5.000004, "5"),
    ],
)  # fmt: skip
def test_a_figure_is_written_with_five_digits(number: float, text: str) -> None:
    assert figure(number) == text


@pytest.mark.parametrize(
    ("number", "text"), [(1.23456e-5, "1.2346e-05"), (-9.87654e-8, "-9.8765e-08"), (2e-6, "2e-06")]
)
def test_a_very_small_figure_keeps_five_digits_too(number: float, text: str) -> None:
    assert figure(number) == text


@pytest.mark.parametrize("number", [4.263e-10, -4.263e-10, 8.9e-16, 0.1 + 0.2 - 0.3])
def test_what_a_difference_leaves_of_nothing_is_nothing(number: float) -> None:
    assert figure(number) == "0"
