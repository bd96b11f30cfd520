"""The lines a reader sees for a recorded step.

An equation's lines come from its own parsed body, walked with the numbers that went in: the branch that was taken,
the minimum that governed and every intermediate value are found by evaluating the same expressions again, and a test
holds the walk to the body's own answer for every equation in the program.
"""

from __future__ import annotations

import ast
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Literal

from groundsill.working.expression import choices_in, evaluate, is_require, read_body, to_math
from groundsill.working.mathtree import Binary, Call, Math, Number, Quantity, Relation, Symbol
from groundsill.working.measure_show import NOTHING

if TYPE_CHECKING:
    from groundsill.working.equation import Equation
    from groundsill.working.sheet import Step

__all__ = ["Line", "LineKind", "figure", "lines_of", "walk"]

LineKind = Literal["formula", "numbers", "answer", "governs", "limit", "row", "condition", "note"]


@dataclass(frozen=True, slots=True)
class Line:
    """One line of working: maths where there is maths, else plain text."""

    kind: LineKind
    math: Math | None = None
    text: str = ""


def figure(number: float) -> str:
    """A figure as working shows it: five significant digits, thousands parted, no trailing zeros; nothing is 0.

    This is writing, not rounding: the number itself is never changed.
    """
    number = float(number)
    if abs(number) < NOTHING:
        return "0"
    if abs(number) >= 10000:
        return f"{number:,.0f}"
    if abs(number) < 1e-4:
        return f"{number:.5g}"
    text = f"{number:.{max(0, 4 - _magnitude(number))}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _magnitude(number: float) -> int:
    return int(f"{abs(number):e}".split("e")[1])


@dataclass(slots=True)
class _Walk:
    """What the walk through a body has gathered: lines, and the values of the names assigned so far."""

    env: dict[str, float]
    symbols: dict[str, Math]
    shown: dict[str, Math]
    result: Math
    unit: str
    lines: list[Line] = field(default_factory=list)

    def expression(self, name: Math, node: ast.expr, unit: str) -> float:
        """Write formula, numbers put in and answer of one assignment or return."""
        value = float(evaluate(node, self.env))
        answer = Quantity(figure(value), unit)
        formula = to_math(node, self.symbols)
        numbers = to_math(node, self.shown)
        self.lines.append(Line("formula", Relation((name, formula), ("=",))))
        if isinstance(numbers, (Number, Quantity)):
            self.lines.append(Line("answer", Relation((name, answer), ("=",))))
        else:
            self.lines.append(Line("numbers", Relation((name, numbers, answer), ("=", "="))))
            self.lines.append(Line("answer", Relation((name, answer), ("=",))))
        for choice in choices_in(node, self.env):
            self._governs(choice)
        return value

    def _governs(self, choice: ast.Call | ast.IfExp) -> None:
        if isinstance(choice, ast.IfExp):
            taken = choice.body if evaluate(choice.test, self.env) else choice.orelse
            self.lines.append(Line("governs", to_math(taken, self.symbols), "the case that applies"))
            return
        assert isinstance(choice.func, ast.Name)
        values = [float(evaluate(a, self.env)) for a in choice.args]
        chosen = values.index(min(values) if choice.func.id == "min" else max(values))
        word = "the least" if choice.func.id == "min" else "the greatest"
        shown = ", ".join(figure(v) for v in values)
        self.lines.append(Line("governs", to_math(choice.args[chosen], self.symbols), f"{word} of {shown} governs"))


def walk(eq: Equation[Any], numbers: Mapping[str, float]) -> tuple[float, tuple[Line, ...]]:
    """Go through an equation's body with these numbers: the answer, and the lines of working."""
    body = read_body(eq.body.__module__, eq.body.__name__)
    symbols: dict[str, Math] = {name: Symbol(q.symbol) for name, q in eq.arguments}
    shown: dict[str, Math] = {name: Number(figure(numbers[name])) for name, _ in eq.arguments}
    state = _Walk(dict(numbers), symbols, shown, Symbol(eq.result.symbol), eq.result.unit)
    answer = _run(body.statements, state)
    if answer is None:
        raise ValueError(f"{eq.id}: the body ended without a return")
    for _, q in eq.arguments:
        if any(bound for bound in (q.above, q.below, q.at_least, q.at_most)):  # "above zero" goes without saying
            state.lines.append(Line("limit", Symbol(q.symbol), q.limits()))
    return answer, tuple(state.lines)


def _run(statements: tuple[ast.stmt, ...], state: _Walk) -> float | None:
    for statement in statements:
        if isinstance(statement, ast.Return):
            assert statement.value is not None
            return state.expression(state.result, statement.value, state.unit)
        if isinstance(statement, ast.Assign):
            target = statement.targets[0]
            assert isinstance(target, ast.Name)
            state.symbols[target.id] = Symbol(target.id)
            value = state.expression(Symbol(target.id), statement.value, "")
            state.env[target.id] = value
            state.shown[target.id] = Number(figure(value))
        elif isinstance(statement, ast.If):
            met = bool(evaluate(statement.test, state.env))
            state.lines.append(
                Line("governs", to_math(statement.test, state.shown), "holds" if met else "does not hold")
            )
            answer = _run(tuple(statement.body if met else statement.orelse), state)
            if answer is not None:
                return answer
        elif (call := is_require(statement)) is not None:
            what = call.args[1]
            text = str(what.value) if isinstance(what, ast.Constant) else ast.unparse(what)
            state.lines.append(Line("limit", to_math(call.args[0], state.shown), text))
    return None


def lines_of(step: Step) -> tuple[Line, ...]:
    """The lines of any recorded step."""
    if step.kind == "equation":
        numbers = {name: float(v) for name, v in step.inputs if isinstance(v, (int, float))}
        return walk(step.maker, numbers)[1]
    if step.kind == "lookup":
        return _lookup_lines(step)
    if step.kind in ("given", "sum", "convert"):
        return _arithmetic_lines(step)
    if step.kind == "condition":
        word = {True: "met", False: "NOT met", None: "not known"}[step.maker]
        shown = ", ".join(f"{symbol} = {figure(v)}" for symbol, v in step.inputs if isinstance(v, float) and symbol)
        return (Line("condition", None, f"{step.title}: {word}" + (f" ({shown})" if shown else "")),)
    return (Line("note", None, step.title),) if step.kind == "note" else ()


def _lookup_lines(step: Step) -> tuple[Line, ...]:
    result = step.result
    assert result is not None
    where = ", ".join(f"{name} {figure(v) if isinstance(v, float) else v}" for name, v in step.inputs)
    answer = Relation((Symbol(result.symbol), Quantity(figure(result), result.unit)), ("=",))
    return (Line("row", None, where), Line("answer", answer))


def _arithmetic_lines(step: Step) -> tuple[Line, ...]:
    result = step.result
    assert result is not None
    name, answer = Symbol(result.symbol), Quantity(figure(result), result.unit)
    if step.kind == "given" or not step.inputs:  # a sum of nothing has no more to show than a figure given
        return (Line("answer", Relation((name, answer), ("=",))),)
    numbers: list[Math] = [Number(figure(float(v))) for _, v in step.inputs if isinstance(v, (int, float))]
    if step.kind == "convert":
        _, source = step.inputs[0]
        unit = getattr(source, "unit", "")
        return (Line("answer", Relation((name, Quantity(numbers[0].text, unit), answer), ("=", "="))),)  # type: ignore[union-attr]
    named = all(symbol for symbol, _ in step.inputs)
    put_in = _chain(step.maker, tuple(numbers))
    lines = [
        Line("numbers", Relation((name, put_in, answer), ("=", "="))),
        Line("answer", Relation((name, answer), ("=",))),
    ]
    if named:
        formula = _chain(step.maker, tuple(Symbol(symbol) for symbol, _ in step.inputs))
        lines.insert(0, Line("formula", Relation((name, formula), ("=",))))
    return tuple(lines)


def _chain(sign: str, terms: tuple[Math, ...]) -> Math:
    if sign in ("min", "max"):
        return Call(sign, terms)
    if sign == "root":
        squares = tuple(Binary("^", term, Number("2")) for term in terms)
        return Call("sqrt", (Binary("+", squares[0], squares[1]),))
    whole = terms[0]
    for term in terms[1:]:
        whole = Binary(sign, whole, term)  # type: ignore[arg-type]
    return whole
