"""How figures and names are worded on every paper: quantities in the house's units, ratios, verdicts, lists.

Rounding happens here and nowhere else, through :mod:`groundsill.working.measure`; a figure that would round onto the
line between passing and failing is given more digits, so that no paper prints "1.00, fails".
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import Literal

from groundsill.house.fact import Fact
from groundsill.loadpath.chain import Verdict
from groundsill.papers.document import Inline, StatusWord, small, spans
from groundsill.working.errors import UnitError
from groundsill.working.explain import figure
from groundsill.working.measure import kind_of, show
from groundsill.working.measure_show import exact_scale, significant

__all__ = [
    "DASH",
    "NOT_WORKED_OUT",
    "Units",
    "carried",
    "counted",
    "fact_value",
    "fact_words",
    "listed",
    "quantity",
    "ratio",
    "sentence",
    "share",
    "short",
    "size",
    "span_words",
    "tape",
    "verdict",
    "with_doubt",
]

Units = Literal["us", "si"]

DASH = "–"
NOT_WORKED_OUT = "not worked out"


def quantity(number: float | None, unit: str, units: Units = "us") -> str:
    """A figure with its unit in the house's own system; a dash for none."""
    if number is None:
        return DASH
    kind = kind_of(unit)
    if kind == "ratio":
        return short(number)
    if kind is None or not _turns(unit):
        return f"{short(number, 4)} {unit.replace('*', '·')}".strip()
    return show(float(number), kind, unit, system=units)


def short(number: float, figures: int = 3) -> str:
    """A bare figure as a table shows it: three significant figures unless told otherwise, thousands apart."""
    return significant(Fraction(*float(number).as_integer_ratio()), figures)


def _turns(unit: str) -> bool:
    """Whether a unit can be turned into the other system by its name alone."""
    try:
        exact_scale(unit)
    except UnitError:
        return False
    return True


def size(inches: float | None, units: Units = "us") -> str:
    """A small thing by the tape: ``5 1/2 in`` or ``140 mm``; a dash for one nobody knows."""
    if inches is None:
        return DASH
    return show(float(inches), "length", "in", style="in" if units == "us" else "mm")


def tape(inches: float | None, units: Units = "us") -> str:
    """A length along a wall: ``12'-4 1/2"`` or ``3.772 m``; a dash for one nobody knows."""
    if inches is None:
        return DASH
    return show(float(inches), "length", "in", style="ft-in" if units == "us" else "m")


def span_words(from_in: float, to_in: float, units: Units = "us") -> str:
    """A stretch of a line by its two stations."""
    return f"{tape(from_in, units)} to {tape(to_in, units)}"


def ratio(number: float | None) -> str:
    """Demand over capacity with two places, and with more where two would hide on which side of one it lies."""
    if number is None:
        return DASH
    text = show(float(number), "ratio", "1")
    if text != "1.00" or number == 1:
        return text
    closer = figure(number)
    return closer if closer != "1" else f"just {'over' if number > 1 else 'under'} 1"


def carried(percent: float | None) -> str:
    """The share of the required force, cut down to whole per cent; all of it is all of it."""
    if percent is None:
        return DASH
    return "100 %" if percent >= 100 else f"{int(percent)} %"


def share(part: float) -> str:
    """A part of a whole, with three places."""
    return f"{part:.3f}"


def verdict(word: Verdict, words: str = "") -> StatusWord:
    """A verdict as words with its shape."""
    return StatusWord(word, words)


def listed(words: Iterable[str], joint: str = "and") -> str:
    """Words as a sentence lists them: ``a, b and c``."""
    found = list(words)
    if len(found) < 2:
        return "".join(found)
    return f"{', '.join(found[:-1])} {joint} {found[-1]}"


def counted(number: int, one: str, many: str = "") -> str:
    """A number of things: ``1 line``, ``4 lines``, ``no lines``."""
    many = many or f"{one}s"
    return f"no {many}" if number == 0 else f"{number} {one if number == 1 else many}"


def sentence(words: str) -> str:
    """The words with a capital first letter and a full stop, whatever they came with; nothing stays nothing."""
    words = words.strip()
    if not words:
        return ""
    words = words[0].upper() + words[1:]
    return words if words[-1] in ".!?" else f"{words}."


def with_doubt(text: Inline, dagger: str) -> Inline:
    """A figure with the dagger of its doubts right beside it."""
    return (*spans(text), small(f" {dagger}")) if dagger else text


def fact_value(value: float | bool | str, unit: str, units: Units = "us") -> str:
    """One end of an uncertain fact: a figure with its unit, yes or no, or a word."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str):
        return value
    return (
        size(value, units)
        if unit == "in"
        else quantity(value, unit, units)
        if unit
        else short(value, 4).replace(",", "")
    )


def fact_words(fact: Fact[float], unit: str, units: Units = "us") -> str:
    """A numeric fact of the survey with its state: ``24 in, estimated``; ``not known``; ``not there``."""
    if fact.state == "absent":
        return "not there"
    if fact.value is None:
        return "not known"
    text = size(fact.value, units) if unit == "in" else quantity(fact.value, unit, units)
    return text if fact.state == "measured" else f"{text}, {fact.state}"
