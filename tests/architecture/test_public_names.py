"""Every public name of the package says what it is, and every signature gives its types."""

from __future__ import annotations

import ast
from collections.abc import Iterator

from tests.architecture.reading import Module, hold, module_from, package_modules

Function = ast.FunctionDef | ast.AsyncFunctionDef


def bare(module: Module) -> Iterator[str]:
    """Faults of one module: no docstring on the module, a public function, class or method; a type left out."""
    if not ast.get_docstring(module.tree):
        yield f"{module.path}:1: the module does not say what this room is for"
    yield from _bare_in(module, module.tree.body, owner="")


def _bare_in(module: Module, body: list[ast.stmt], owner: str) -> Iterator[str]:
    for node in body:
        if isinstance(node, ast.If | ast.Try):  # a name may be defined under a condition
            yield from _bare_in(module, node.body + node.orelse, owner)
        elif isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            if not ast.get_docstring(node):
                yield f"{module.path}:{node.lineno}: class {owner}{node.name} has no docstring"
            yield from _bare_in(module, node.body, owner=f"{owner}{node.name}.")
        elif isinstance(node, Function):
            yield from _bare_function(module, node, owner)


def _bare_function(module: Module, node: Function, owner: str) -> Iterator[str]:
    magic = node.name.startswith("__") and node.name.endswith("__")
    if node.name.startswith("_") and not magic:
        return
    place = f"{module.path}:{node.lineno}: {owner}{node.name}"
    decorators = {ast.unparse(d).split("(")[0].split(".")[-1] for d in node.decorator_list}
    if not magic and not decorators & {"overload", "setter", "deleter"} and not ast.get_docstring(node):
        yield f"{place} has no docstring"
    arguments = [*node.args.posonlyargs, *node.args.args]
    if owner and "staticmethod" not in decorators:
        arguments = arguments[1:]
    arguments += [*node.args.kwonlyargs, *(a for a in (node.args.vararg, node.args.kwarg) if a)]
    for argument in arguments:
        if argument.annotation is None:
            yield f"{place} gives no type for {argument.arg}"
    if node.returns is None:
        yield f"{place} gives no return type"


def test_public_names_are_typed_and_documented() -> None:
    hold(fault for module in package_modules() for fault in bare(module))


def test_a_bare_function_and_class_are_named_with_their_lines() -> None:
    text = '"""Room."""\n\ndef base_shear(weight_lb, *, r: float):\n    return weight_lb\n\nclass Line:\n    pass\n'
    assert list(bare(module_from(text))) == [
        "src/groundsill/sample.py:3: base_shear has no docstring",
        "src/groundsill/sample.py:3: base_shear gives no type for weight_lb",
        "src/groundsill/sample.py:3: base_shear gives no return type",
        "src/groundsill/sample.py:6: class Line has no docstring",
    ]


def test_methods_count_and_private_names_do_not() -> None:
    text = (
        '"""Room."""\n\nclass Line:\n    """A braced line."""\n\n    def length_in(self): ...\n'
        "    def _seen(self, x): ...\n    def __len__(self): ...\n\ndef _helper(x): ...\n\nclass _Hidden: ...\n"
    )
    assert list(bare(module_from(text))) == [
        "src/groundsill/sample.py:6: Line.length_in has no docstring",
        "src/groundsill/sample.py:6: Line.length_in gives no return type",
        "src/groundsill/sample.py:8: Line.__len__ gives no return type",
    ]


def test_a_module_without_a_docstring_is_named() -> None:
    assert list(bare(module_from("x = 1\n"))) == [
        "src/groundsill/sample.py:1: the module does not say what this room is for"
    ]
