"""The proof of units finds every class of mistake, and names the formula, the line of the file and what is wrong."""

from __future__ import annotations

from typing import Any

import pytest

from groundsill.working.dimensions import check_units
from groundsill.working.errors import UnitError
from tests.working import rules
from tests.working.rules import FIRST_LINE, rule_from

FIRST_OF_BODY = FIRST_LINE + 2  # decorator, def, then the body


def refusal(rule: Any) -> str:
    with pytest.raises(UnitError) as refused:
        check_units(rule)
    return str(refused.value)


@pytest.mark.parametrize(
    "rule",
    [
        rules.pressure, rules.recalled, rules.unwitnessed, rules.slender, rules.one_over, rules.tenth_power, rules.root,
    ],
)  # fmt: skip
def test_the_rule_book_is_sound(rule: Any) -> None:
    check_units(rule)


@pytest.mark.parametrize(
    ("body", "arguments", "gives", "constants"),
    [
        ("return 12 * h / b", "h ft, b in", "1", '{12: "in/ft"}'),
        ("return 7 * sqrt(f_c) * d ** 1.5", "f_c psi, d in", "lb", '{7: "lb^0.5/in^0.5"}'),
        ("return 0.02 * h ** 0.75", "h ft", "s", '{0.02: "s/ft^0.75"}'),
        ("return a + 0 if a > 0 else 0.0", "a in", "in", "{}"),
        ("return max(0.0, a - b)", "a in, b in", "in", "{}"),
        ("return a ** (1 / 3)", "a in^3", "in", "{}"),
        ("return a ** -2", "a in", "in^-2", "{}"),
        ("return a ** -(1 / 2)", "a in^4", "in^-2", "{}"),
        ("return r ** n", "r 1, n 1", "1", "{}"),
        ("return abs(-a)", "a in", "in", "{}"),
        ("return cos(radians(t)) * a", "t deg, a in", "in", "{}"),
        ("return a * exp(-t / 2) * log(t) * tan(t)", "a in, t 1", "in", "{}"),
        ("return pi * D ** 2 / 4", "D in", "in^2", "{}"),
        ("return V / 1000", "V lb", "kip", '{1000: "lb/kip"}'),
    ],
)  # fmt: skip
def test_what_agrees_is_let_through(body: str, arguments: str, gives: str, constants: str) -> None:
    check_units(rule_from(body, arguments, gives, constants))


@pytest.mark.parametrize(
    ("body", "arguments", "gives", "what", "why"),
    [
        ("return h / b", "h ft, b in", "1", "return h / b", "the answer is declared in 1"),  # a missing 12
        ("return h + b", "h ft, b in", "ft", "h + b", "the two terms of a sum"),  # feet and inches
        ("return b - P", "b in, P lb", "in", "b - P", "the two terms of a sum"),
        ("return P / b", "P lb, b in", "psi", "return P / b", "the answer is declared in psi"),  # a wrong power
        ("return P / b ** 3", "P lb, b in", "psi", "return P / b ** 3", "the answer is declared in psi"),
        ("return sqrt(A)", "A in^4", "in", "return sqrt(A)", "the answer is declared in in"),
        ("return min(h, b)", "h ft, b in", "ft", "min(h, b)", "the terms of a min"),
        ("return max(b, P, b)", "P lb, b in", "in", "max(b, P, b)", "the terms of a max"),
        ("return b if b > h else b", "h ft, b in", "in", "b > h", "the two sides of a comparison"),
        ("return b if b < 2 * b <= h else b", "h ft, b in", "in", "b < 2 * b <= h", "the two sides of a comparison"),
        ("return b if b > 1 and h > b else b", "h ft, b 1", "1", "h > b", "the two sides of a comparison"),
        ("return b if r > 1 else h", "h ft, b in, r 1", "in", "b if r > 1 else h", "the two cases"),
        ("return r ** b", "r 1, b in", "1", "r ** b", "a power must be a pure number"),
        ("return b ** r", "r 1, b in", "1", "b ** r", "only a pure number may take a power that is itself worked out"),
        ("return exp(b)", "b in", "1", "exp(b)", "exp takes a pure number"),
        ("return sin(b)", "b in", "1", "sin(b)", "sin takes a pure number"),
        ("return log(P)", "P lb", "1", "log(P)", "log takes a pure number"),
        ("return 5.0", "b in", "in", "return 5.0", "the answer is declared in in"),
        ("return -b", "b in", "ft", "return -b", "the answer is declared in ft"),
        ("return abs(b)", "b in", "ft", "return abs(b)", "the answer is declared in ft"),
    ],
)  # fmt: skip
def test_each_class_of_mistake_is_found_and_named(body: str, arguments: str, gives: str, what: str, why: str) -> None:
    words = refusal(rule_from(body, arguments, gives))
    assert words.startswith(f"rules-1/made, line {FIRST_OF_BODY}: {what!r}: units do not agree; {why} (")


@pytest.mark.parametrize(
    ("declared", "fits"),
    [("lb^0.5/in^0.5", True), ("1", False), ("psi^0.5", False), ("kip^0.5/in^0.5", False), ("lb/in", False)],
)
def test_the_unit_of_an_empirical_constant_is_held_to_its_scale(declared: str, fits: bool) -> None:
    rule = rule_from("return 7 * sqrt(f_c) * d ** 1.5", "f_c psi, d in", "lb", f'{{7: "{declared}"}}')
    if fits:
        check_units(rule)
    else:
        assert "the answer is declared in lb" in refusal(rule)


def test_a_twelve_that_declares_nothing_is_found() -> None:
    assert "line" in refusal(rule_from("return 12 * h / b", "h ft, b in", "1"))
    assert "line" in refusal(rule_from("return 12 * h / b", "h ft, b in", "1", '{12: "ft/in"}'))


def test_the_line_named_is_the_line_of_the_file() -> None:
    body = "a = b / 2\nif b > 1:\n    c = a * 3\n    return c + h\nreturn a"
    words = refusal(rule_from(body, "b in, h ft", "in", '{1: "in"}'))
    assert words.startswith(f"rules-1/made, line {FIRST_OF_BODY + 3}: 'c + h': units do not agree")


@pytest.mark.parametrize(
    "body",
    [
        "if b > 1:\n    return h\nreturn b",
        "if b > h:\n    return b\nreturn b",
        "if b > 1:\n    return b\nelse:\n    return h",
        "if b > 1:\n    return b\nelif b > 0.5:\n    return h\nelse:\n    return b",
        "s = h\nreturn s",
        "s = b\nt = s * 2\nreturn t / b * h",
        "require(b < h, 'narrower than high')\nreturn b",
    ],
)
def test_every_branch_is_walked_whatever_the_numbers(body: str) -> None:
    assert "units do not agree" in refusal(rule_from(body, "b in, h ft", "in", '{1: "in", 0.5: "in"}'))


def test_a_bare_zero_fits_every_unit_and_no_other_figure_does() -> None:
    check_units(rule_from("return max(0, b - 0.0)", "b in", "in"))
    assert "the two terms of a sum" in refusal(rule_from("return b - 0.5", "b in", "in"))
    assert "the terms of a max" in refusal(rule_from("return max(1, b)", "b in", "in"))


@pytest.mark.parametrize("test", ["0 < b <= h", "h > 0 < b", "0 < 0 < b < h"])
def test_a_chain_that_holds_a_bare_zero_still_compares_the_others(test: str) -> None:
    words = refusal(rule_from(f"return b if {test} else b", "b in, h ft", "in"))
    assert f"{test!r}: units do not agree; the two sides of a comparison" in words


@pytest.mark.parametrize(
    "body",
    [
        "if r > 1:\n    s = h\nelse:\n    s = b\nreturn s",
        "if r > 1:\n    s = b\nelse:\n    s = h\nreturn b",
        "s = b\nif r > 1:\n    s = h\nreturn b",
        "if r > 1:\n    s = b\nelif r > 0.5:\n    s = h\nelse:\n    s = b\nreturn s",
        "if r > 1:\n    s = b\nelse:\n    if r > 0.5:\n        s = 0\n    else:\n        s = h\nreturn b",
    ],
)
def test_a_name_has_one_unit_whichever_branch_gave_it(body: str) -> None:
    assert "units do not agree; the two branches assign s (" in refusal(rule_from(body, "b in, h ft, r 1", "in"))


@pytest.mark.parametrize(
    "body",
    [
        "if r > 1:\n    s = 0\nelse:\n    s = b\nreturn s",  # a bare zero is of every unit
        "if r > 1:\n    s = h\n    return b + 0 * s / h * b\nelse:\n    s = b\nreturn s",  # ends there
        "if r > 1:\n    s = 12 * h\n    return s\ns = b\nreturn s",
        "if r > 1:\n    t = b\nelse:\n    s = b\nreturn b",
    ],
)
def test_branches_that_agree_or_give_nothing_on_are_sound(body: str) -> None:
    check_units(rule_from(body, "b in, h ft, r 1", "in", '{12: "in/ft"}'))
