"""Reading a set formula back: plain text, MathML and Typst are turned into Python again and worked out apart.

What a reader sees is all that is used: brackets, bars of fractions, raised powers; the grouping that the markup knows
but does not show is thrown away.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Callable, Iterable, Mapping
from fractions import Fraction
from typing import Any
from xml.etree import ElementTree

from groundsill.working.expression import CONSTANTS, FUNCTIONS
from groundsill.working.mathtree import Math, Symbol
from groundsill.working.render import as_mathml, as_text, as_typst

__all__ = ["from_mathml", "from_text", "from_typst", "worked_out"]

# A symbol as it is printed: letters of any alphabet, primes, a subscript, and commas inside the subscript.
_SYMBOL = re.compile(r"[^\W\d][\w']*(?:,[\w']+)*")
_SIGNS = {"·": "*", "⋅": "*", "−": "-", "^": "**", "≤": "<=", "≥": ">=", "≠": "!="}


def from_text(node: Math, names: Iterable[str] = ()) -> str:
    """The Python that a reader of the plain text would write."""
    text = as_text(node).replace(" otherwise ", " else ")
    text = re.sub(r"(?<=[^<>≤≥≠=]) = ", " == ", text)
    return _named(_signed(text), {as_text(Symbol(name)): name for name in names})


def from_typst(node: Math) -> str:
    """The Python that Typst's own reading of the maths comes to (names without subscripts or Greek letters only)."""
    text = re.sub(r'op\("(\w+)"\) lr\(\(', r"\1((", as_typst(node))
    return _signed(text.replace(" dot ", " * "))


def from_mathml(node: Math) -> str:
    """The Python that a reader of the MathML would write."""
    (only,) = ElementTree.fromstring(as_mathml(node))
    return _signed(_seen(only))


def _seen(element: ElementTree.Element) -> str:
    kind, inside = element.tag.rpartition("}")[2], list(element)
    if kind == "mfrac":
        return f"(({_seen(inside[0])}) / ({_seen(inside[1])}))"
    if kind == "msup":
        return f"{_seen(inside[0])} ** ({_seen(inside[1])})"
    if kind == "msqrt":
        return f"sqrt({''.join(_seen(part) for part in inside)})"
    if kind == "mrow":
        return "".join(_seen(part) for part in inside)  # a row shows no brackets of its own
    return element.text or ""


def _signed(text: str) -> str:
    for shown, python in _SIGNS.items():
        text = text.replace(shown, python)
    return text


def _named(text: str, names: Mapping[str, str]) -> str:
    return _SYMBOL.sub(lambda found: names.get(found[0], found[0]), text) if names else text


class _Exactly(ast.NodeTransformer):
    """Every literal as an exact fraction, but for powers, which stay whole numbers."""

    def visit_Constant(self, node: ast.Constant) -> ast.AST:
        exact = ast.Call(ast.Name("Exact", ast.Load()), [ast.Constant(str(node.value))], [])
        return ast.copy_location(exact, node)


def _whole(number: Any) -> Any:
    return int(number) if isinstance(number, Fraction) and number.denominator == 1 else number


class _Exact(Fraction):
    """A fraction whose whole powers stay fractions."""

    def __pow__(self, other: Any) -> Any:  # type: ignore[override]
        return Fraction(self) ** _whole(other)


def worked_out(python: str, numbers: Mapping[str, Any], exactly: bool) -> Any:
    """The value of an expression in Python's own hands: exactly in fractions, or in floats."""
    parsed = ast.parse(python, mode="eval")
    scope: dict[str, Callable[..., Any] | Any] = {"__builtins__": {}, **FUNCTIONS, **CONSTANTS}
    if exactly:
        parsed = ast.fix_missing_locations(_Exactly().visit(parsed))
        scope |= {"Exact": Fraction, "abs": abs, "min": min, "max": max}
    return eval(compile(parsed, "<read back>", "eval"), scope, dict(numbers))
