"""A formula is read from its own module's source, and keeps to a language that hides no step from its reader."""

from __future__ import annotations

import ast
import math
import subprocess
import sys
import zipfile
from pathlib import Path
from typing import Any

import pytest

from groundsill.working.expression import FUNCTIONS, NotAFormula, evaluate, read_body, to_math
from groundsill.working.mathtree import Binary, Call, Negative, Number, Relation, Symbol, Words
from groundsill.working.sheet import Sheet
from tests.working import rules
from tests.working.rules import FIRST_LINE, rule_from, rules_from

SRC = Path(__file__).resolve().parents[2] / "src"
FIRST_OF_BODY = FIRST_LINE + 2


def tree(text: str) -> object:
    return to_math(ast.parse(text, mode="eval").body, {})


def refusal(rule: object) -> str:
    with pytest.raises(NotAFormula) as refused:
        read_body(rule.__module__, rule.__name__)  # type: ignore[attr-defined]
    return str(refused.value)


# --- reading ---------------------------------------------------------------------------------------------------------


def test_the_body_is_read_from_its_modules_own_source() -> None:
    body = read_body("tests.working.rules", "pressure")
    assert body.arguments == ("P", "b", "d")
    assert [ast.unparse(s) for s in body.statements] == ["return P / (b * d)"]  # the docstring is no statement


def test_a_body_is_parsed_once() -> None:
    assert read_body("tests.working.rules", "slender") is read_body("tests.working.rules", "slender")


def test_the_lines_are_those_of_the_file() -> None:
    lines = (Path(__file__).parent / "rules.py").read_text("utf-8").splitlines()
    (only,) = read_body("tests.working.rules", "pressure").statements
    assert lines[only.lineno - 1].strip() == "return P / (b * d)"


def test_each_kind_of_expression_has_its_tree() -> None:
    assert tree("a + 2") == Binary("+", Symbol("a"), Number("2"))
    assert tree("-a ** 0.5") == Negative(Binary("^", Symbol("a"), Number("0.5")))
    assert tree("min(a, 1e-3)") == Call("min", (Symbol("a"), Number("0.001")))
    assert tree("0.25 <= D < 1") == Relation((Number("0.25"), Symbol("D"), Number("1")), ("<=", "<"))
    assert tree("a > 1 and b != 2") == Relation((tree("a > 1"), tree("b != 2")), ("and",))
    assert tree("a if b > 1 else c") == Relation(
        (Symbol("a"), Words("if"), tree("b > 1"), Words("otherwise"), Symbol("c")), (" ",) * 4
    )


def test_names_are_shown_as_symbols_or_as_figures() -> None:
    node = ast.parse("D * l_s", mode="eval").body
    assert to_math(node, {"D": Number("0.5")}) == Binary("*", Number("0.5"), Symbol("l_s"))


@pytest.mark.parametrize("name", sorted(FUNCTIONS))
def test_every_function_of_the_language_is_worked_out_as_python_does(name: str) -> None:
    arguments = "a, b" if name in ("min", "max") else "a"
    node = ast.parse(f"{name}({arguments})", mode="eval").body
    numbers = (0.7, 0.4) if name in ("min", "max") else (0.7,)
    assert evaluate(node, {"a": 0.7, "b": 0.4}) == FUNCTIONS[name](*numbers)
    assert tree(f"{name}({arguments})") == Call(name, tuple(Symbol(a) for a in arguments.split(", ")))


def test_pi_is_known_and_nothing_else_of_python_is() -> None:
    assert evaluate(ast.parse("2 * pi", mode="eval").body, {}) == 2 * math.pi
    with pytest.raises(NameError, match="open"):
        evaluate(ast.parse("open", mode="eval").body, {})


# --- the small language ----------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("body", "line"),
    [
        ("t = 0\nfor n in (1, 2):\n    t = t + n\nreturn t", 1),
        ("while b > 1:\n    b = b / 2\nreturn b", 0),
        ("b += 1\nreturn b", 0),
        ("c: float = b\nreturn c", 0),
        ("c = d = b\nreturn c", 0),
        ("print(b)\nreturn b", 0),
        ("require(b > 1)\nreturn b", 0),
        ("return", 0),
        ("try:\n    return 1 / b\nexcept ZeroDivisionError:\n    return 0", 0),
        ("with open('x'):\n    return b", 0),
        ("import math\nreturn math.pi * b", 0),
        ("raise ValueError(b)", 0),
        ("assert b > 1\nreturn b", 0),
        ("def inner(x):\n    return x\nreturn b", 0),
        ("if b > 1:\n    if b > 2:\n        del b\nreturn 1", 2),
        ("if b > 1:\n    return 1\nelse:\n    pass\nreturn 2", 3),
    ],
)
def test_a_statement_outside_the_small_language_is_refused_with_its_line(body: str, line: int) -> None:
    rule = rule_from(body, "b in")
    expected = f"{rule.__module__}.made: line {FIRST_OF_BODY + line} is not an assignment, if, require or return"  # type: ignore[attr-defined]
    assert refusal(rule) == expected


@pytest.mark.parametrize("body", ["c, d = b, b\nreturn c * d", "[c, d] = (b, b)\nreturn c"])
def test_one_name_is_assigned_at_a_time(body: str) -> None:
    rule = rule_from(body, "b in")
    assert refusal(rule) == f"{rule.__module__}.made: only one name may be assigned at a time (line {FIRST_OF_BODY})"  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    "what",
    [
        "area(b)", "b // 2", "b % 2", "b @ b", "not b", "+b", "~b", "'text'", "True", "None", "b.real", "b[0]", "[b]",
        "(b, b)", "{b: b}", "lambda: b", "f'{b}'", "b in b", "b is b", "round(b)", "pow(b, 2)", "math.sqrt(b)",
        "max(b, key=b)", "[x for x in b]", "(c := b)",
    ],
)  # fmt: skip
def test_an_expression_outside_the_small_language_is_refused_with_its_text(what: str) -> None:
    shown = ast.unparse(ast.parse(what, mode="eval").body)
    rule: Any = rule_from(f"return ({what})", "b in")
    expected = f"{rule.__module__}.made: line {FIRST_OF_BODY}: {shown!r} cannot be shown as a formula"
    assert refusal(rule) == expected


@pytest.mark.parametrize(
    "body",
    [
        "c = area(b)\nreturn c", "if area(b) > 1:\n    return b\nreturn b", "require(area(b) > 1, 'x')\nreturn b",
        "return 1 + area(b) * 2", "return min(area(b), b)", "if b > 1:\n    return area(b)\nreturn b",
        "return b if area(b) > 1 else b",
    ],
)  # fmt: skip
def test_the_call_of_another_function_is_found_wherever_it_stands(body: str) -> None:
    assert "'area(b)' cannot be shown as a formula" in refusal(rule_from(body, "b in"))


def test_a_refused_formula_can_still_be_neither_shown_nor_walked() -> None:
    rule = rule_from("t = 0\nfor n in (1, 2):\n    t = t + n * b\nreturn t", "b in", "in")
    with Sheet() as sheet:
        assert rule(2.0) == 6.0  # type: ignore[operator]
    with pytest.raises(NotAFormula, match="is not an assignment, if, require or return"):
        _ = sheet.steps[0].lines


def test_a_module_whose_source_is_gone_says_so() -> None:
    module = rules_from("def lost(b):\n    return b\n")
    module.__spec__.loader = None  # type: ignore[union-attr]
    with pytest.raises(NotAFormula, match=rf"^the source of {module.__name__} cannot be read, so its formulas cannot"):
        read_body(module.__name__, "lost")


# --- packed in a zip -------------------------------------------------------------------------------------------------

FROM_ZIP = """
import sys
sys.path.insert(0, sys.argv[1])
import shed.rules as rules
from groundsill.working.dimensions import check_units
from groundsill.working.render import as_text
from groundsill.working.sheet import Sheet
assert rules.__file__.startswith(sys.argv[1]), rules.__file__
with Sheet() as sheet:
    rules.slope(3.0, 2.0)
    rules.table().read("fir")
for step in sheet.steps:
    for line in step.lines:
        print(line.kind, as_text(line.math) if line.math else line.text)
check_units(rules.slope)
"""
RULES_IN_ZIP = '''"""A rule in a zip."""
from __future__ import annotations
from typing import Annotated
from groundsill.working.equation import Q, equation
from groundsill.working.source import Source
from groundsill.working.table import Table

SHED = Source(id="shed-1", short="Shed", title="Shed", publisher="these tests", edition="1")

Feet = Annotated[float, Q("ft", "h", "rise")]
Run = Annotated[float, Q("ft", "b", "run")]

@equation("shed-1/1", title="Slope", clause="1", source=SHED, witness="by hand")
def slope(r: Feet, b: Run) -> Annotated[float, Q("1", "s", "slope")]:
    """Rise over run, at least 1/4."""
    return max(r / b, 0.25)

def table() -> Table:
    return Table.load(__package__, "wood.toml")
'''


def test_formula_and_table_are_read_out_of_a_zip(tmp_path: Path) -> None:
    wood = rules.TABLE.replace("columns = [0.5, 1, 2]", "columns = [1]").replace("columns = [1]\nsource", "source")
    wood = wood.replace("[100, 200, 400]", "[100]").replace('[150, "not permitted", 500]', "[150]")
    wood = wood.replace("[90, 180, 360]", "[90]")
    checksum = rules.table(wood).checksum
    wood = wood.replace(rules.OLD_CHECKSUM, checksum)
    packed = tmp_path / "shed.zip"
    with zipfile.ZipFile(packed, "w") as archive:
        for path in sorted((SRC / "groundsill" / "working").glob("*.py")):
            archive.write(path, path.relative_to(SRC))
        archive.writestr("groundsill/__init__.py", "")
        archive.writestr("shed/__init__.py", "")
        archive.writestr("shed/rules.py", RULES_IN_ZIP)
        archive.writestr("shed/wood.toml", wood)
    command = [sys.executable, "-I", "-S", "-c", FROM_ZIP, str(packed)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert done.stdout.splitlines() == [
        "formula s = max(h / b, 0.25)",
        "numbers s = max(3 / 2, 0.25) = 1.5",
        "answer s = 1.5",
        "governs h / b",
        "row wood fir",
        "answer F = 100 psi",
    ]
