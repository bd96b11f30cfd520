"""The body of an equation, read once from its own module's source.

A formula is written once, as Python that runs. What the calculation sheet prints is that same text, parsed by
:mod:`ast`; the source is asked of the module's loader, so it is found in a checkout, in a wheel and inside a zip
alike. The bodies keep to a small language (assignments, ``if``, ``return``, ``require``, arithmetic and a few
functions); anything else is refused here by name, so that no formula can hide a step from its reader.
"""

from __future__ import annotations

import ast
import importlib
import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from types import CodeType
from typing import Any

from groundsill.working.errors import GroundsillError
from groundsill.working.mathtree import Binary, Call, Math, Negative, Number, Relation, Symbol, Words

__all__ = ["FUNCTIONS", "Body", "NotAFormula", "evaluate", "read_body", "to_math"]

FUNCTIONS: Mapping[str, Callable[..., float]] = {
    "abs": abs, "cos": math.cos, "exp": math.exp, "log": math.log, "max": max, "min": min,
    "radians": math.radians, "sin": math.sin, "sqrt": math.sqrt, "tan": math.tan,
}  # fmt: skip
CONSTANTS: Mapping[str, float] = {"pi": math.pi}

_SIGNS: dict[type[ast.operator], Any] = {ast.Add: "+", ast.Sub: "-", ast.Mult: "*", ast.Div: "/", ast.Pow: "^"}
_RELATIONS: dict[type[ast.cmpop], str] = {
    ast.Lt: "<", ast.LtE: "<=", ast.Gt: ">", ast.GtE: ">=", ast.Eq: "=", ast.NotEq: "!=",
}  # fmt: skip


class NotAFormula(GroundsillError):
    """An equation body uses something outside the small language that the sheet can print."""


@dataclass(frozen=True, slots=True)
class Body:
    """The statements of one equation (its docstring taken off) and the names of its arguments."""

    statements: tuple[ast.stmt, ...]
    arguments: tuple[str, ...]


@lru_cache(maxsize=256)
def _module_functions(module: str) -> dict[str, ast.FunctionDef]:
    spec = importlib.import_module(module).__spec__
    loader = spec.loader if spec is not None else None
    source = loader.get_source(module) if loader is not None and hasattr(loader, "get_source") else None
    if source is None:
        raise NotAFormula(f"the source of {module} cannot be read, so its formulas cannot be shown")
    return {node.name: node for node in ast.walk(ast.parse(source)) if isinstance(node, ast.FunctionDef)}


@lru_cache(maxsize=2048)
def read_body(module: str, name: str) -> Body:
    """Parse one function of a module and check that it keeps to the small language."""
    node = _module_functions(module)[name]
    statements = tuple(s for s in node.body if not (isinstance(s, ast.Expr) and isinstance(s.value, ast.Constant)))
    try:
        _check_statements(statements)
    except NotAFormula as refused:
        raise NotAFormula(f"{module}.{name}: {refused}") from None
    arguments = (*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs)
    return Body(statements, tuple(a.arg for a in arguments))


def is_require(statement: ast.stmt) -> ast.Call | None:
    """The call, when a statement is ``require(condition, "what the document asks")``."""
    if isinstance(statement, ast.Expr) and isinstance(statement.value, ast.Call):
        call = statement.value
        if isinstance(call.func, ast.Name) and call.func.id == "require" and len(call.args) == 2:
            return call
    return None


def _check_statements(statements: Sequence[ast.stmt]) -> None:
    for statement in statements:
        if isinstance(statement, ast.Assign) and len(statement.targets) == 1:
            if not isinstance(statement.targets[0], ast.Name):
                raise NotAFormula(f"only one name may be assigned at a time (line {statement.lineno})")
            to_math(statement.value, {})
        elif isinstance(statement, ast.Return) and statement.value is not None:
            to_math(statement.value, {})
        elif isinstance(statement, ast.If):
            to_math(statement.test, {})
            _check_statements(statement.body)
            _check_statements(statement.orelse)
        elif (call := is_require(statement)) is not None:
            to_math(call.args[0], {})
        else:
            raise NotAFormula(f"line {statement.lineno} is not an assignment, if, require or return")


def to_math(node: ast.expr, shown: Mapping[str, Math]) -> Math:
    """An expression as a tree; ``shown`` maps names to symbols (the formula) or to figures (the numbers put in)."""
    if isinstance(node, ast.Constant) and isinstance(node.value, (int, float)) and not isinstance(node.value, bool):
        return Number(repr(node.value))
    if isinstance(node, ast.Name):
        return shown.get(node.id) or Symbol(node.id)
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub):
        return Negative(to_math(node.operand, shown))
    if isinstance(node, ast.BinOp) and type(node.op) in _SIGNS:
        return Binary(_SIGNS[type(node.op)], to_math(node.left, shown), to_math(node.right, shown))
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in FUNCTIONS:
        if not node.keywords:
            return Call(node.func.id, tuple(to_math(a, shown) for a in node.args))
    if isinstance(node, ast.Compare) and all(type(op) in _RELATIONS for op in node.ops):
        terms = tuple(to_math(n, shown) for n in (node.left, *node.comparators))
        return Relation(terms, tuple(_RELATIONS[type(op)] for op in node.ops))
    if isinstance(node, ast.BoolOp):
        word = "and" if isinstance(node.op, ast.And) else "or"
        parts = tuple(to_math(v, shown) for v in node.values)
        return Relation(parts, tuple(word for _ in parts[1:]))
    if isinstance(node, ast.IfExp):
        parts = (to_math(node.body, shown), to_math(node.test, shown), to_math(node.orelse, shown))
        return Relation((*parts[:1], Words("if"), parts[1], Words("otherwise"), parts[2]), (" ", " ", " ", " "))
    raise NotAFormula(f"line {getattr(node, 'lineno', '?')}: {ast.unparse(node)!r} cannot be shown as a formula")


@lru_cache(maxsize=8192)
def _compiled(node: ast.expr) -> CodeType:
    return compile(ast.Expression(node), "<formula>", "eval")


_NAMES: dict[str, Any] = {"__builtins__": {}, **FUNCTIONS, **CONSTANTS}


def evaluate(node: ast.expr, env: Mapping[str, float]) -> Any:
    """The value of a part of a body, by the very operations the body itself performs."""
    return eval(_compiled(node), _NAMES, dict(env))


def choices_in(node: ast.AST, env: Mapping[str, float]) -> Iterator[ast.Call | ast.IfExp]:
    """Every ``min``, ``max`` and conditional that has a say in the value of an expression.

    What stands in a case that was not taken has none: it may not even have a value with these numbers.
    """
    parts = ast.iter_child_nodes(node)
    if isinstance(node, ast.IfExp):
        yield node
        parts = iter((node.body if evaluate(node.test, env) else node.orelse,))
    elif isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in ("min", "max"):
        yield node
    for part in parts:
        yield from choices_in(part, env)
