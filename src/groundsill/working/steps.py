"""Arithmetic *between* equations, recorded: figures taken from the survey, sums, products, least and greatest.

Each helper does plain float arithmetic when no sheet lies open, and the very same arithmetic plus one recorded step
when one does, so the two can never differ.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from groundsill.working.errors import OutsideLimits, UnitError
from groundsill.working.sheet import open_sheet
from groundsill.working.unit import factor
from groundsill.working.unit import unit as read_unit
from groundsill.working.value import Mark, Value, marks_of

__all__ = [
    "add",
    "condition",
    "convert",
    "divide",
    "given",
    "greatest",
    "least",
    "multiply",
    "note",
    "product_unit",
    "resultant",
    "scale",
    "subtract",
]


def given(symbol: str, number: float, unit: str, origin: str, marks: Iterable[Mark] = ()) -> float:
    """A figure taken from the survey, a choice or a printed judgement; ``origin`` says which."""
    sheet = open_sheet()
    if sheet is None:
        return float(number)
    doubts = frozenset(marks) | marks_of((number,))
    value = sheet.record("given", "", origin, "", ((symbol, number),), (float(number), unit, symbol), None, doubts)
    assert value is not None
    return value


def add(*terms: float, symbol: str, label: str = "", unit: str = "") -> float:
    """The sum of the terms, all in one unit (left to right, as a reader would add them).

    ``unit`` says which: needed where there may be no recorded term to tell it, as on a floor that carries nothing.
    """
    total = 0.0
    for term in terms:
        total += float(term)
    return _record("+", terms, total, _common_unit(terms, unit), symbol, label)


def subtract(first: float, *others: float, symbol: str, label: str = "") -> float:
    """The first less all the others, in one unit."""
    total = float(first)
    for term in others:
        total -= float(term)
    return _record("-", (first, *others), total, _common_unit((first, *others)), symbol, label)


def multiply(first: float, *others: float, symbol: str, unit: str, label: str = "") -> float:
    """The product, in ``unit``; the units of the factors must multiply to it exactly (no hidden conversion)."""
    total = float(first)
    for term in others:
        total *= float(term)
    _agree("*", (first, *others), unit)
    return _record("*", (first, *others), total, unit, symbol, label)


def divide(top: float, bottom: float, *, symbol: str, unit: str, label: str = "") -> float:
    """The quotient, in ``unit``.

    Raises:
        OutsideLimits: when the bottom is zero.
    """
    _agree("/", (top, bottom), unit)
    if not bottom:
        raise OutsideLimits(f"{symbol}: no value, as it is divided by zero" + (f" ({label})" if label else ""))
    return _record("/", (top, bottom), float(top) / float(bottom), unit, symbol, label)


def scale(value: float, by: float, *, symbol: str, label: str = "") -> float:
    """The value times a pure number.

    Raises:
        UnitError: when the number has a unit (``multiply`` says what the product is in).
    """
    if not read_unit(_unit_of(by)).same_as(read_unit("1")):
        raise UnitError(f"{symbol}: scaled by {by!r}, which is not a pure number")
    return _record("*", (value, by), float(value) * float(by), _unit_of(value), symbol, label)


def least(*values: float, symbol: str, label: str = "") -> float:
    """The smallest of the values, in one unit; it depends on all of them, so it carries all their marks."""
    return _record("min", values, min(float(v) for v in values), _common_unit(values), symbol, label)


def greatest(*values: float, symbol: str, label: str = "") -> float:
    """The largest of the values, in one unit; it carries all their marks."""
    return _record("max", values, max(float(v) for v in values), _common_unit(values), symbol, label)


def resultant(first: float, second: float, *, symbol: str, label: str = "") -> float:
    """The size of two forces at right angles, in their unit: the root of the sum of their squares."""
    both = (first, second)
    return _record("root", both, math.hypot(float(first), float(second)), _common_unit(both), symbol, label)


def convert(value: float, source: str, target: str) -> float:
    """The value read in another unit (``convert(h, "in", "ft")``); a recorded value must be in ``source``."""
    by = factor(source, target)
    sheet = open_sheet()
    if sheet is None or not isinstance(value, Value):
        return float(value) * by
    if not read_unit(value.unit).same_as(read_unit(source)):
        raise UnitError(f"{value.symbol} is in {value.unit}, not in {source}")
    outcome = (float(value) * by, target, value.symbol)
    got = sheet.record("convert", "", "", "", ((value.symbol, value),), outcome, None, value.marks)
    assert got is not None
    return got


def note(text: str) -> None:
    """A sentence written on the open sheet."""
    sheet = open_sheet()
    if sheet is not None:
        sheet.record("note", "", text, "", (), None, None, frozenset())


def condition(text: str, met: bool | None, *numbers: float, cite: str = "") -> bool | None:
    """A condition of a rule, recorded as met, not met, or not known; handed back unchanged."""
    sheet = open_sheet()
    if sheet is not None:
        inputs = tuple((n.symbol if isinstance(n, Value) else "", n) for n in numbers)
        sheet.record("condition", "", text, cite, inputs, None, met, marks_of(numbers))
    return met


def product_unit(values: Sequence[float], quotient: bool = False) -> str:
    """The unit text of a product (or of first over second) of recorded values, for error messages."""
    return ("/" if quotient else "*").join(_unit_of(v) for v in values)


def _record(sign: str, terms: Sequence[float], total: float, in_unit: str, symbol: str, label: str) -> float:
    sheet = open_sheet()
    if sheet is None:
        return total
    inputs = tuple((t.symbol if isinstance(t, Value) else "", t) for t in terms)
    got = sheet.record("sum", "", label, "", inputs, (total, in_unit, symbol), sign, marks_of(terms))
    assert got is not None
    return got


def _unit_of(value: float) -> str:
    return value.unit if isinstance(value, Value) else "1"


def _common_unit(values: Sequence[float], wanted: str = "") -> str:
    """The one unit of all recorded terms; plain numbers among them (a zero, a floor) take it over."""
    found = [v for v in values if isinstance(v, Value)]
    whole = wanted or (found[0].unit if found else "1")
    for other in found:
        if not read_unit(other.unit).same_as(read_unit(whole)):
            first = f"a sum in {whole}" if wanted else f"{found[0].symbol} in {whole}"
            raise UnitError(f"{first} and {other.symbol} in {other.unit} cannot be added")
    return whole


def _agree(sign: str, values: Sequence[float], wanted: str) -> None:
    """Refuse a product whose units do not multiply to the unit it is said to be in."""
    if open_sheet() is None or not all(isinstance(v, Value) for v in values):
        return
    total = read_unit(_unit_of(values[0]))
    for other in values[1:]:
        total = total * read_unit(_unit_of(other)) if sign == "*" else total / read_unit(_unit_of(other))
    if not total.same_as(read_unit(wanted)):
        raise UnitError(f"{product_unit(values, sign == '/')} is not {wanted}")
