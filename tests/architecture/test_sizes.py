"""No file that everything hangs on, no function longer than a screen."""

from __future__ import annotations

import ast
from collections.abc import Iterator

from tests.architecture.reading import Module, all_modules, hold, module_from

MODULE_BELOW = 600
FUNCTION_BELOW = 60


def too_long(module: Module) -> Iterator[str]:
    lines = len(module.text.splitlines())
    if lines >= MODULE_BELOW:
        yield f"{module.path}:{lines}: the module has {lines} lines; keep it under {MODULE_BELOW}"
    for node in ast.walk(module.tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            length = (node.end_lineno or node.lineno) - node.lineno + 1
            if length >= FUNCTION_BELOW:
                yield f"{module.path}:{node.lineno}: {node.name} has {length} lines; keep it under {FUNCTION_BELOW}"


def test_modules_and_functions_stay_short() -> None:
    hold(fault for module in all_modules() for fault in too_long(module))


def test_a_long_function_is_named_with_its_line() -> None:
    text = "import math\n\ndef take_down():\n" + "    math.pi\n" * 59
    assert list(too_long(module_from(text))) == ["src/groundsill/sample.py:3: take_down has 60 lines; keep it under 60"]
    assert list(too_long(module_from(text.removesuffix("    math.pi\n")))) == []


def test_a_long_module_is_named() -> None:
    assert list(too_long(module_from("x = 1\n" * 600))) == [
        "src/groundsill/sample.py:600: the module has 600 lines; keep it under 600"
    ]
    assert list(too_long(module_from("x = 1\n" * 599))) == []
