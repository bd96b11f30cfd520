"""A published equation as text, without numbers: its own parsed body, branch by branch."""

from __future__ import annotations

import ast
from collections.abc import Iterator, Mapping
from typing import Any

from groundsill.working.equation import Equation
from groundsill.working.expression import is_require, read_body, to_math
from groundsill.working.mathtree import Math, Relation, Symbol
from groundsill.working.render import as_text

__all__ = ["expression_lines"]


def expression_lines(equation: Equation[Any]) -> tuple[str, ...]:
    """One line for each assignment, condition, limit and answer; what stands inside a branch is indented."""
    body = read_body(equation.body.__module__, equation.body.__name__)
    symbols: dict[str, Math] = {name: Symbol(q.symbol) for name, q in equation.arguments}
    return tuple(_lines(body.statements, symbols, Symbol(equation.result.symbol), 0))


def _lines(statements: tuple[ast.stmt, ...], symbols: Mapping[str, Math], result: Math, depth: int) -> Iterator[str]:
    pad = "   " * depth
    for place, statement in enumerate(statements):
        if isinstance(statement, ast.Return) and statement.value is not None:
            yield pad + as_text(Relation((result, to_math(statement.value, symbols)), ("=",)))
        elif isinstance(statement, ast.Assign) and isinstance(statement.targets[0], ast.Name):
            name = Symbol(statement.targets[0].id)
            yield pad + as_text(Relation((name, to_math(statement.value, symbols)), ("=",)))
        elif isinstance(statement, ast.If):
            yield f"{pad}if {as_text(to_math(statement.test, symbols))}:"
            yield from _lines(tuple(statement.body), symbols, result, depth + 1)
            rest = tuple(statement.orelse) or (statements[place + 1 :] if _answers(statement) else ())
            if rest:
                yield f"{pad}otherwise:"
                yield from _lines(rest, symbols, result, depth + 1)
            if rest and not statement.orelse:
                return
        elif (call := is_require(statement)) is not None:
            yield f"{pad}limit: {as_text(to_math(call.args[0], symbols))}"


def _answers(branch: ast.If) -> bool:
    """Whether a branch ends with the answer, so that what stands after it is the other case."""
    return isinstance(branch.body[-1], ast.Return)
