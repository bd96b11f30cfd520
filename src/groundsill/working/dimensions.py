"""Proof that a formula is right in its units: every branch of an equation's parsed body, walked with units for numbers.

Not only the dimension must agree but the scale: a foot added to an inch, or a missing 12, is found here.
"""

from __future__ import annotations

import ast
from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from groundsill.working.errors import UnitError
from groundsill.working.expression import is_require, read_body
from groundsill.working.unit import Unit, unit

if TYPE_CHECKING:
    from groundsill.working.equation import Equation

__all__ = ["check_units"]

_ONE = unit("1")


def check_units(eq: Equation[Any]) -> None:
    """Prove the units of one equation.

    Raises:
        UnitError: naming the equation, the line and the two units that do not agree.
    """
    body = read_body(eq.body.__module__, eq.body.__name__)
    env: dict[str, Unit | None] = {name: unit(q.unit) for name, q in eq.arguments}
    env["pi"] = _ONE
    _Check(eq, env).statements(body.statements)


class _Check:
    """One walk; None stands for a bare zero, which fits every unit."""

    def __init__(self, eq: Equation[Any], env: dict[str, Unit | None]) -> None:
        self.eq = eq
        self.env = env
        self.constants = {float(number): unit(text) for number, text in eq.constants.items()}
        self.result = unit(eq.result.unit)

    def statements(self, statements: Sequence[ast.stmt]) -> bool:
        """Walk them in order; False when every way through them ends in a return."""
        for statement in statements:
            if isinstance(statement, ast.Assign):
                assert isinstance(statement.targets[0], ast.Name)
                self.env[statement.targets[0].id] = self.of(statement.value)
            elif isinstance(statement, ast.Return):
                assert statement.value is not None
                self.agree(
                    self.of(statement.value), self.result, statement, f"the answer is declared in {self.eq.result.unit}"
                )
                return False
            elif isinstance(statement, ast.If):
                self.of(statement.test)
                if not self.branches(statement):
                    return False
            elif (call := is_require(statement)) is not None:
                self.of(call.args[0])
        return True

    def branches(self, node: ast.If) -> bool:
        """Walk each branch from the same names; a name that both give on must have one unit."""
        before, given_on = self.env, []
        for branch in (node.body, node.orelse):
            self.env = dict(before)
            if self.statements(branch):
                given_on.append(self.env)
        if given_on:
            first, last = given_on[0], given_on[-1]
            for name, unit in first.items():
                last[name] = self.agree(unit, last.get(name), node.test, f"the two branches assign {name}")
            self.env = last
        return bool(given_on)

    def agree(self, a: Unit | None, b: Unit | None, node: ast.AST, why: str) -> Unit | None:
        if a is None or b is None:
            return a or b
        if not a.same_as(b):
            line = getattr(node, "lineno", "?")
            raise UnitError(
                f"{self.eq.id}, line {line}: {ast.unparse(node)!r}: units do not agree; {why} ({a} and {b})"
            )
        return a

    def of(self, node: ast.expr) -> Unit | None:
        if isinstance(node, ast.Constant):
            number = float(node.value)  # type: ignore[arg-type]
            return self.constants.get(number, None if number == 0 else _ONE)
        if isinstance(node, ast.Name):
            return self.env[node.id]
        if isinstance(node, ast.UnaryOp):
            return self.of(node.operand)
        if isinstance(node, ast.BinOp):
            return self.binary(node)
        if isinstance(node, ast.Compare):
            first = self.of(node.left)
            for other in node.comparators:
                first = self.agree(first, self.of(other), node, "the two sides of a comparison")
            return _ONE
        if isinstance(node, ast.BoolOp):
            for value in node.values:
                self.of(value)
            return _ONE
        if isinstance(node, ast.IfExp):
            self.of(node.test)
            return self.agree(self.of(node.body), self.of(node.orelse), node, "the two cases")
        assert isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
        return self.call(node, node.func.id)

    def binary(self, node: ast.BinOp) -> Unit | None:
        if isinstance(node.op, ast.Pow):
            return self.power(node)
        left, right = self.of(node.left), self.of(node.right)
        if isinstance(node.op, (ast.Add, ast.Sub)):
            return self.agree(left, right, node, "the two terms of a sum")
        if left is None or right is None:
            return None
        return left * right if isinstance(node.op, ast.Mult) else left / right

    def power(self, node: ast.BinOp) -> Unit:
        base = self.of(node.left) or _ONE
        exponent = node.right
        sign = 1
        if isinstance(exponent, ast.UnaryOp):
            exponent, sign = exponent.operand, -1
        if isinstance(exponent, ast.Constant):
            return base ** (sign * Fraction(str(exponent.value)))
        if isinstance(exponent, ast.BinOp) and isinstance(exponent.op, ast.Div):
            top, bottom = exponent.left, exponent.right
            if isinstance(top, ast.Constant) and isinstance(bottom, ast.Constant):
                return base ** (sign * Fraction(str(top.value)) / Fraction(str(bottom.value)))
        self.agree(base, _ONE, node, "only a pure number may take a power that is itself worked out")
        self.agree(self.of(node.right), _ONE, node, "a power must be a pure number")
        return _ONE

    def call(self, node: ast.Call, name: str) -> Unit | None:
        units = [self.of(argument) for argument in node.args]
        if name == "sqrt":
            return (units[0] or _ONE) ** Fraction(1, 2)
        if name in ("min", "max"):
            whole = units[0]
            for other in units[1:]:
                whole = self.agree(whole, other, node, f"the terms of a {name}")
            return whole
        if name == "abs":
            return units[0]
        self.agree(units[0], _ONE, node, f"{name} takes a pure number")
        return _ONE
