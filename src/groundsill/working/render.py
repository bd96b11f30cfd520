"""One reading of a formula, set three ways: plain text, MathML and Typst maths."""

from __future__ import annotations

import re
from collections.abc import Callable
from html import escape

from groundsill.working.mathtree import Binary, Call, Math, Negative, Number, Quantity, Relation, Symbol, Words

__all__ = ["as_mathml", "as_text", "as_typst"]

_GREEK = {
    "alpha": "α", "beta": "β", "gamma": "γ", "delta": "δ", "Delta": "Δ", "theta": "θ", "lambda": "λ", "lam": "λ",
    "mu": "μ", "nu": "ν", "rho": "ρ", "sigma": "σ", "tau": "τ", "phi": "φ", "psi": "ψ", "Omega": "Ω", "pi": "π",
}  # fmt: skip
_SIGN_TEXT = {"<=": "≤", ">=": "≥", "!=": "≠"}
_SPACE = "&#160;"  # a plain space at the edge of an element is dropped by MathML
_ML_BRACKETS = ("<mrow><mo>(</mo>", "<mo>)</mo></mrow>")
# the words of a case (set apart by spaces) hold their terms the loosest; "=" and the comparisons stand at 0
_LEVEL = {" ": -3, "or": -2, "and": -1, "+": 1, "-": 1, "*": 2, "/": 2, "^": 4}


def _parts(name: str) -> tuple[str, str]:
    """A symbol's letter and subscript: ``psi_ed_V`` is ψ with ``ed,V``."""
    head, _, tail = name.partition("_")
    return _GREEK.get(head, head), tail.replace("_", ",")


def _level(node: Math) -> int:
    """How tightly a node binds; a term that binds less than its place asks for is put in brackets."""
    if isinstance(node, Binary):
        return _LEVEL[node.sign]
    if isinstance(node, Negative):
        return 1
    if isinstance(node, Relation):
        return _LEVEL.get(node.signs[0], 0)
    return 3 if isinstance(node, Number) and node.text.startswith("-") else 5


def _wrapped(node: Math, least: int, setter: Callable[[Math], str], brackets: tuple[str, str] = ("(", ")")) -> str:
    return setter(node) if _level(node) >= least else brackets[0] + setter(node) + brackets[1]


def as_text(node: Math) -> str:
    """Plain text on one line, with Greek letters and the usual signs."""
    if isinstance(node, Symbol):
        head, tail = _parts(node.name)
        return f"{head}_{tail}" if tail else head
    if isinstance(node, (Number, Words)):
        return node.text
    if isinstance(node, Quantity):
        return f"{node.text} {node.unit}" if node.unit not in ("", "1") else node.text
    if isinstance(node, Negative):
        return "-" + _wrapped(node.of, 2, as_text)
    if isinstance(node, Call):
        return f"{node.name}({', '.join(as_text(a) for a in node.of)})"
    if isinstance(node, Relation):
        text, *terms = (_wrapped(term, _level(node) + 1, as_text) for term in node.terms)
        for sign, term in zip(node.signs, terms, strict=True):
            text += f" {_SIGN_TEXT.get(sign, sign).strip()} ".replace("  ", " ") + term
        return text
    level = _LEVEL[node.sign]
    left = _wrapped(node.left, level + (node.sign == "^"), as_text)
    right = _wrapped(node.right, level + (node.sign in "-/"), as_text)
    if node.sign == "^":
        return f"{left}^{right}"
    return f"{left} {'·' if node.sign == '*' else node.sign} {right}"


def as_mathml(node: Math) -> str:
    """A ``<math>`` element."""
    return f'<math xmlns="http://www.w3.org/1998/Math/MathML">{_ml(node)}</math>'


def _ml(node: Math) -> str:
    if isinstance(node, Symbol):
        head, tail = _parts(node.name)
        letter = f"<mi>{escape(head)}</mi>"
        return f"<msub>{letter}<mtext>{escape(tail)}</mtext></msub>" if tail else letter
    if isinstance(node, Number):
        return f"<mn>{escape(node.text)}</mn>"
    if isinstance(node, Words):
        return f"<mtext>{_SPACE}{escape(node.text)}{_SPACE}</mtext>"
    if isinstance(node, Quantity):
        unit = f"<mtext>{_SPACE}{escape(node.unit)}</mtext>" if node.unit not in ("", "1") else ""
        return f"<mrow><mn>{escape(node.text)}</mn>{unit}</mrow>"
    if isinstance(node, Negative):
        return f"<mrow><mo>-</mo>{_ml_in(node.of, 2)}</mrow>"
    if isinstance(node, Call):
        if node.name == "sqrt":
            return f"<msqrt>{_ml(node.of[0])}</msqrt>"
        inside = "<mo>,</mo>".join(_ml(a) for a in node.of)
        return f"<mrow><mi>{escape(node.name)}</mi><mo>(</mo>{inside}<mo>)</mo></mrow>"
    if isinstance(node, Relation):
        text, *terms = (_ml_in(term, _level(node) + 1) for term in node.terms)
        for sign, term in zip(node.signs, terms, strict=True):
            text += f"<mo>{escape(_SIGN_TEXT.get(sign, sign))}</mo>" + term
        return f"<mrow>{text}</mrow>"
    if node.sign == "/":
        return f"<mfrac>{_ml(node.left)}{_ml(node.right)}</mfrac>"
    if node.sign == "^":
        base = _wrapped(node.left, 5, _ml, _ML_BRACKETS)
        return f"<msup>{base}{_ml(node.right)}</msup>"
    level = _LEVEL[node.sign]
    sign = {"*": "&#8901;", "-": "&#8722;"}.get(node.sign, node.sign)
    return f"<mrow>{_ml_in(node.left, level)}<mo>{sign}</mo>{_ml_in(node.right, level + (node.sign == '-'))}</mrow>"


def _ml_in(node: Math, least: int) -> str:
    # a fraction brings its own bar: no brackets round it inside a product
    return _wrapped(node, min(least, 2) if _is_fraction(node) else least, _ml, _ML_BRACKETS)


def _is_fraction(node: Math) -> bool:
    return isinstance(node, Binary) and node.sign == "/"


def as_typst(node: Math) -> str:
    """Typst maths, without the dollar signs around it."""
    if isinstance(node, Symbol):
        head, tail = _parts(node.name)
        return f"{_typst_letter(head)}_{_typst_words(tail)}" if tail else _typst_letter(head)
    if isinstance(node, Number):
        return _typst_words(node.text) if re.search(r"[^0-9.]", node.text) else node.text
    if isinstance(node, Words):
        return f"space {_typst_words(node.text)} space"
    if isinstance(node, Quantity):
        number = as_typst(Number(node.text))
        return f"{number} thin {_typst_words(node.unit)}" if node.unit not in ("", "1") else number
    if isinstance(node, Negative):
        return "-" + _typst_in(node.of, 2)
    if isinstance(node, Call):
        inside = [as_typst(a) for a in node.of]
        if node.name == "sqrt":
            return f"sqrt({inside[0]})"
        return f'op("{node.name}") lr(({", ".join(inside)}))'
    if isinstance(node, Relation):
        text, *terms = (_typst_in(term, _level(node) + 1) for term in node.terms)
        for sign, term in zip(node.signs, terms, strict=True):
            text += f" {_typst_words(sign) if sign in ('and', 'or') else sign} " + term
        return text
    if node.sign == "/":
        return f"({as_typst(node.left)})/({as_typst(node.right)})"
    if node.sign == "^":
        return f"{_wrapped(node.left, 5, as_typst)}^({as_typst(node.right)})"
    level = _LEVEL[node.sign]
    sign = {"*": "dot"}.get(node.sign, node.sign)
    return f"{_typst_in(node.left, level)} {sign} {_typst_in(node.right, level + (node.sign == '-'))}"


def _typst_in(node: Math, least: int) -> str:
    return _wrapped(node, min(least, 2) if _is_fraction(node) else least, as_typst)


def _typst_letter(head: str) -> str:
    return head if re.fullmatch(r"\w'?", head) else _typst_words(head)


def _typst_words(text: str) -> str:
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'
