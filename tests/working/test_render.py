"""One reading of a formula set three ways: what binds tighter is never lost, and Typst takes every line of it."""

from __future__ import annotations

import ast
import re
from xml.etree import ElementTree

import pytest

from groundsill.working.expression import to_math
from groundsill.working.mathtree import Math, Number, Quantity, Relation, Symbol
from groundsill.working.render import as_mathml, as_text, as_typst
from tests.working.typeset import compile_maths

MATHML = "{http://www.w3.org/1998/Math/MathML}"


def tree(text: str) -> Math:
    return to_math(ast.parse(text, mode="eval").body, {})


PRECEDENCE = [
    # Python, plain text, Typst
    ("a - (b - c)", "a - (b - c)", "a - (b - c)"),
    ("a - b - c", "a - b - c", "a - b - c"),
    ("a - (b + c)", "a - (b + c)", "a - (b + c)"),
    ("a + (b - c)", "a + b - c", "a + b - c"),
    ("a * (b + c)", "a · (b + c)", "a dot (b + c)"),
    ("(a + b) * c", "(a + b) · c", "(a + b) dot c"),
    ("a / (b * c)", "a / (b · c)", "(a)/(b dot c)"),
    ("a / b / c", "a / b / c", "((a)/(b))/(c)"),
    ("a / (b / c)", "a / (b / c)", "(a)/((b)/(c))"),
    ("a * (b / c)", "a · b / c", "a dot (b)/(c)"),
    ("a / b * c", "a / b · c", "(a)/(b) dot c"),
    ("(a + b) / (c - d)", "(a + b) / (c - d)", "(a + b)/(c - d)"),
    ("a ** b ** c", "a^b^c", "a^(b^(c))"),
    ("(a ** b) ** c", "(a^b)^c", "(a^(b))^(c)"),
    ("(a + b) ** 2", "(a + b)^2", "(a + b)^(2)"),
    ("(a / b) ** 2", "(a / b)^2", "((a)/(b))^(2)"),
    ("a ** (b + 1)", "a^(b + 1)", "a^(b + 1)"),
    ("a ** (1 / 3)", "a^(1 / 3)", "a^((1)/(3))"),
    ("a ** -2", "a^(-2)", "a^(-2)"),
    ("-a ** 2", "-a^2", "-a^(2)"),
    ("(-a) ** 2", "(-a)^2", "(-a)^(2)"),
    ("-(a + b)", "-(a + b)", "-(a + b)"),
    ("-(-a)", "-(-a)", "-(-a)"),
    ("a - -b", "a - (-b)", "a - (-b)"),
    ("a * -b", "a · (-b)", "a dot (-b)"),
    ("sqrt(a + b) * c", "sqrt(a + b) · c", "sqrt(a + b) dot c"),
    ("min(a, b + 1)", "min(a, b + 1)", 'op("min") lr((a, b + 1))'),
    ("1 - (1 - a) * b", "1 - (1 - a) · b", "1 - (1 - a) dot b"),
]


@pytest.mark.parametrize(("python", "text", "typst"), PRECEDENCE, ids=[row[0] for row in PRECEDENCE])
def test_brackets_stand_where_they_are_needed_and_nowhere_else(python: str, text: str, typst: str) -> None:
    assert as_text(tree(python)) == text
    assert as_typst(tree(python)) == typst


@pytest.mark.parametrize(
    ("python", "inside"),
    [
        ("a + b", "<mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow>"),
        ("a / (b + c)", "<mfrac><mi>a</mi><mrow><mi>b</mi><mo>+</mo><mi>c</mi></mrow></mfrac>"),
        ("sqrt(a)", "<msqrt><mi>a</mi></msqrt>"),
        ("a ** 0.5", "<msup><mi>a</mi><mn>0.5</mn></msup>"),
        ("-a", "<mrow><mo>-</mo><mi>a</mi></mrow>"),
        ("a - (b - 1)", "<mrow><mi>a</mi><mo>−</mo><mrow><mo>(</mo><mrow><mi>b</mi><mo>−</mo><mn>1</mn></mrow>"
                        "<mo>)</mo></mrow></mrow>"),
        ("(a * b) ** 2", "<msup><mrow><mo>(</mo><mrow><mi>a</mi><mo>⋅</mo><mi>b</mi></mrow><mo>)</mo></mrow>"
                         "<mn>2</mn></msup>"),
        ("min(a, 2)", "<mrow><mi>min</mi><mo>(</mo><mi>a</mi><mo>,</mo><mn>2</mn><mo>)</mo></mrow>"),
        ("a <= b", "<mrow><mi>a</mi><mo>≤</mo><mi>b</mi></mrow>"),
        ("F_em", "<msub><mi>F</mi><mtext>em</mtext></msub>"),
    ],
)  # fmt: skip
def test_mathml_is_built_of_fractions_roots_and_powers(python: str, inside: str) -> None:
    root = ElementTree.fromstring(as_mathml(tree(python)))
    (only,) = root
    got = ElementTree.tostring(only, encoding="unicode").replace(' xmlns:ns0="http://www.w3.org/1998/Math/MathML"', "")
    assert re.sub(r"(</?)ns0:", r"\1", got) == inside


@pytest.mark.parametrize(
    ("name", "text", "mathml", "typst"),
    [
        ("D", "D", "<mi>D</mi>", "D"),
        ("F_em", "F_em", "<msub><mi>F</mi><mtext>em</mtext></msub>", 'F_"em"'),
        ("psi_ed_V", "ψ_ed,V", "<msub><mi>ψ</mi><mtext>ed,V</mtext></msub>", 'ψ_"ed,V"'),
        ("Omega_0", "Ω_0", "<msub><mi>Ω</mi><mtext>0</mtext></msub>", 'Ω_"0"'),
        ("theta", "θ", "<mi>θ</mi>", "θ"),
        ("lam", "λ", "<mi>λ</mi>", "λ"),
        ("f'_c", "f'_c", "<msub><mi>f'</mi><mtext>c</mtext></msub>", 'f\'_"c"'),
        ("Z'", "Z'", "<mi>Z'</mi>", "Z'"),
        ("n Z'", "n Z'", "<mi>n Z'</mi>", '"n Z\'"'),
        ("ΣZ'", "ΣZ'", "<mi>ΣZ'</mi>", '"ΣZ\'"'),
        ("φV_n", "φV_n", "<msub><mi>φV</mi><mtext>n</mtext></msub>", '"φV"_"n"'),
        ("1/n", "1/n", "<mi>1/n</mi>", '"1/n"'),
        ("<b>", "<b>", "<mi>&lt;b&gt;</mi>", '"<b>"'),
        ('a"b', 'a"b', "<mi>a&quot;b</mi>", '"a\\"b"'),
    ],
)
def test_symbols_have_greek_letters_subscripts_and_primes(name: str, text: str, mathml: str, typst: str) -> None:
    assert as_text(Symbol(name)) == text
    assert as_mathml(Symbol(name)).removesuffix("</math>").partition(">")[2] == mathml.replace("'", "&#x27;")
    assert as_typst(Symbol(name)) == typst


def test_a_unit_named_like_a_greek_letter_stays_a_unit() -> None:
    stress = Relation((Symbol("F_b"), Quantity("1500", "psi")), ("=",))
    assert as_text(stress) == "F_b = 1500 psi"
    assert "psi" in as_mathml(stress)
    assert as_typst(stress) == 'F_"b" = 1500 thin "psi"'


@pytest.mark.parametrize(
    ("unit", "shown"), [("1", "0.5"), ("", "0.5"), ("in", "0.5 in"), ("lb^0.5/in", "0.5 lb^0.5/in")]
)
def test_a_pure_number_shows_no_unit(unit: str, shown: str) -> None:
    assert as_text(Quantity("0.5", unit)) == shown


def test_relations_have_the_signs_of_the_trade() -> None:
    assert as_text(tree("0.25 <= D < 1")) == "0.25 ≤ D < 1"
    assert as_text(tree("a >= 2 and b != 3 or c == 4")).startswith("a ≥ 2 and b ≠ 3")
    assert as_typst(tree("a >= 2 and b != 3")) == 'a >= 2 "and" b != 3'
    assert as_text(tree("a if b > 1 else c")) == "a if b > 1 otherwise c"
    assert as_typst(tree("a if b > 1 else c")).split() == [
        "a", "space", '"if"', "space", "b", ">", "1", "space", '"otherwise"', "space", "c",
    ]  # fmt: skip


def test_a_comparison_inside_a_product_keeps_its_brackets() -> None:
    assert as_text(tree("(a if b > 1 else c) * d")) == "(a if b > 1 otherwise c) · d"
    assert as_text(tree("1 + (a if b > 1 else c)")) == "1 + (a if b > 1 otherwise c)"


NESTED = [
    # Python, plain text, Typst
    ("(a < 1 or b < 2) and c < 3", "(a < 1 or b < 2) and c < 3", '(a < 1 "or" b < 2) "and" c < 3'),
    ("a < 1 or b < 2 and c < 3", "a < 1 or b < 2 and c < 3", 'a < 1 "or" b < 2 "and" c < 3'),
    ("(a if c > 0 else b) < 3", "(a if c > 0 otherwise b) < 3",
     '(a space "if" space c > 0 space "otherwise" space b) < 3'),
    ("a if c > 0 and b > 0 else b", "a if c > 0 and b > 0 otherwise b",
     'a space "if" space c > 0 "and" b > 0 space "otherwise" space b'),
    ("a if c > 0 else (b if c > 1 else c)", "a if c > 0 otherwise (b if c > 1 otherwise c)",
     'a space "if" space c > 0 space "otherwise" space (b space "if" space c > 1 space "otherwise" space c)'),
    ("(a and b) == c", "(a and b) = c", '(a "and" b) = c'),
    ("a / b < c + 1", "a / b < c + 1", "(a)/(b) < c + 1"),
    ("-a < b", "-a < b", "-a < b"),
]  # fmt: skip


@pytest.mark.parametrize(("python", "text", "typst"), NESTED, ids=[row[0] for row in NESTED])
def test_a_condition_inside_another_keeps_the_brackets_it_needs(python: str, text: str, typst: str) -> None:
    assert as_text(tree(python)) == text
    assert " ".join(as_typst(tree(python)).split()) == typst
    brackets = ElementTree.fromstring(as_mathml(tree(python))).itertext()
    assert "".join(part for part in brackets if part in "()") == "".join(sign for sign in text if sign in "()")


def test_units_and_words_keep_their_distance_in_mathml() -> None:
    assert "<mn>1500</mn><mtext>&#160;psi</mtext>" in as_mathml(Quantity("1500", "psi"))
    assert as_mathml(tree("a if b > 1 else c")).count("<mtext>&#160;") == 2
    assert "&#160;otherwise&#160;</mtext>" in as_mathml(tree("a if b > 1 else c"))


@pytest.mark.parametrize("text", ["12,345", "1e-05", "-3", "1.235e-05", "inf", "0.5"])
def test_a_figure_is_shown_as_it_was_written(text: str) -> None:
    assert as_text(Number(text)) == text
    assert f"<mn>{text}</mn>" in as_mathml(Number(text))


def test_every_way_of_setting_is_well_formed() -> None:
    cases = [tree(python) for python, _, _ in (*PRECEDENCE, *NESTED)]
    cases += [
        Symbol(s)
        for s in ("psi_ed_V", "f'_c", "n Z'", "φV_n", "1/n", "<b>", 'a"b', "a\\b", "#x", "$y$", "T_a*", "a_b_c")
    ]
    cases += [
        Quantity("12,345", "lb^0.5/in"),
        Number("-3"),
        Number("1e-05"),
        Relation((Symbol("a"), Number("2")), ("!=",)),
    ]
    for case in cases:
        ElementTree.fromstring(as_mathml(case))
    assert compile_maths(as_typst(case) for case in cases) >= 1
