"""A formula as a small tree, so that one reading of it can be set as plain text, as MathML and as Typst maths."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

__all__ = ["Binary", "Call", "Math", "Negative", "Number", "Quantity", "Relation", "Symbol", "Words"]


@dataclass(frozen=True, slots=True)
class Number:
    """A literal as it stands in the formula, or a figure put in."""

    text: str


@dataclass(frozen=True, slots=True)
class Quantity:
    """A figure with its unit, as an answer is written."""

    text: str
    unit: str


@dataclass(frozen=True, slots=True)
class Symbol:
    """A named quantity: ``F_em`` is F with subscript em."""

    name: str


@dataclass(frozen=True, slots=True)
class Words:
    """A word in the middle of a formula: `and`, `otherwise`."""

    text: str


@dataclass(frozen=True, slots=True)
class Negative:
    """Minus something."""

    of: Math


@dataclass(frozen=True, slots=True)
class Binary:
    """Two terms with a sign between them; ``/`` is set as a fraction, ``^`` as a power."""

    sign: Literal["+", "-", "*", "/", "^"]
    left: Math
    right: Math


@dataclass(frozen=True, slots=True)
class Call:
    """A function of its arguments: sqrt, min, max, exp, sin ..."""

    name: str
    of: tuple[Math, ...]


@dataclass(frozen=True, slots=True)
class Relation:
    """Terms with relations between them: ``Z = D l F / R``, ``0.25 <= D < 1``."""

    terms: tuple[Math, ...]
    signs: tuple[str, ...]


Math = Number | Quantity | Symbol | Words | Negative | Binary | Call | Relation
