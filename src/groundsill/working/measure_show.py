"""Plain floats on their way out: the one place where a measured number is rounded and spelled for a person.

In comes a float in the unit its name carries inside the program; out goes text in US customary or SI, in the manner
of the trade: feet, inches and sixteenths, pounds with thousands apart, as many digits as the kind of quantity
deserves. :mod:`groundsill.working.measure` reads the same spellings back, and takes its kinds and factors from here.

Ties go away from zero, judged on the float's exact value: 1/32 in. to sixteenths is 1/16 in., 0.125 to two places is
0.13, and 2.675, which as a float lies just under, is 2.67. Nothing is ever shown as minus zero.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from types import MappingProxyType
from typing import Final, Literal

from groundsill.working.errors import OutsideLimits, UnitError
from groundsill.working.unit import exact_factor
from groundsill.working.unit import unit as read_unit

__all__ = ["KINDS", "NOTHING", "Kind", "KindFacts", "System", "exact_scale", "kind_of", "show", "turned"]

Kind = Literal[
    "length", "area", "force", "force_per_length", "pressure", "unit_weight", "angle", "slope", "ratio"
]  # fmt: skip
System = Literal["us", "si"]


@dataclass(frozen=True, slots=True)
class KindFacts:
    """What the trade knows of one kind of quantity.

    ``noun`` names it in a sentence; ``units`` are those a person may type; ``pair`` is the unit each system shows it
    in, US then SI; ``other_pair`` takes its place when the number comes in one of ``other_units`` (stresses are psi
    and MPa, loads on an area psf and kPa); ``signed`` says whether a minus sign means anything; ``example`` shows
    what may be typed.
    """

    noun: str
    units: tuple[str, ...]
    pair: tuple[str, str]
    signed: bool
    example: str
    other_pair: tuple[str, str] = ("", "")
    other_units: tuple[str, ...] = ()

    def shown_in(self, unit: str) -> tuple[str, str]:
        """The US and the SI unit in which a number that comes in ``unit`` is shown."""
        return self.other_pair if unit in self.other_units else self.pair


KINDS: Final[Mapping[Kind, KindFacts]] = MappingProxyType(
    {
        "length": KindFacts(
            noun="a length",
            units=("in", "ft", "mm", "cm", "m"),
            pair=("ft-in", "m"),
            signed=True,
            example="7'-6 1/2\", 90 1/2 in, 7.5 ft, 2.3 m or 2300 mm",
        ),
        "area": KindFacts(
            noun="an area",
            units=("ft^2", "in^2", "m^2", "cm^2", "mm^2"),
            pair=("ft^2", "m^2"),
            other_pair=("in^2", "mm^2"),
            other_units=("in^2", "cm^2", "mm^2"),
            signed=False,
            example="120 sq ft, 8.25 sq in or 11.2 m2",
        ),
        "force": KindFacts(
            noun="a force",
            units=("lb", "kip", "N", "kN"),
            pair=("lb", "kN"),
            other_pair=("kip", "kN"),
            other_units=("kip",),
            signed=True,
            example="1,040 lb, 2.5 kips or 4.6 kN",
        ),
        "force_per_length": KindFacts(
            noun="a force per length",
            units=("plf", "kip/ft", "lb/in", "N/m", "kN/m", "N/mm"),
            pair=("plf", "kN/m"),
            other_pair=("lb/in", "N/mm"),
            other_units=("lb/in", "N/mm"),
            signed=True,
            example="260 plf, 260 lb/ft, 22 lb/in or 3.8 kN/m",
        ),
        "pressure": KindFacts(
            noun="a pressure",
            units=("psf", "kip/ft^2", "psi", "ksi", "Pa", "kPa", "MPa"),
            pair=("psf", "kPa"),
            other_pair=("psi", "MPa"),
            other_units=("psi", "ksi", "MPa"),
            signed=True,
            example="1,500 psf, 2500 psi, 72 kPa or 17 MPa",
        ),
        "unit_weight": KindFacts(
            noun="a unit weight",
            units=("pcf", "kN/m^3", "N/m^3"),
            pair=("pcf", "kN/m^3"),
            signed=False,
            example="150 pcf or 23.6 kN/m3",
        ),
        "angle": KindFacts(
            noun="an angle",
            units=("deg",),
            pair=("deg", "deg"),
            signed=True,
            example="30 deg or 22.5°",
        ),
        "slope": KindFacts(
            noun="a slope",
            units=("1", "%", "deg"),
            pair=("x:12", "%"),
            signed=True,
            example="4:12 or 4 in 12 (rise first), 2H:1V, 1/4 in per ft, 2% or 18.4 deg",
        ),
        "ratio": KindFacts(
            noun="a ratio",
            units=("1", "%"),
            pair=("1", "1"),
            other_pair=("%", "%"),
            other_units=("%",),
            signed=False,
            example="75%",
        ),
    }
)

# How a unit is written after a number; a unit not named here is its own label.
_LABELS: Final[Mapping[str, str]] = MappingProxyType(
    {
        "1": "", "%": "%", "deg": "°", "in^2": " sq in", "ft^2": " sq ft", "mm^2": " mm²", "cm^2": " cm²",
        "m^2": " m²", "kip/ft^2": " ksf", "kN/m^3": " kN/m³", "N/m^3": " N/m³",
    }
)  # fmt: skip

# Digits after the point: what a tape, a scale or a test can know, and what a calculation sheet can be checked by.
_DIGITS: Final[Mapping[str, int]] = MappingProxyType(
    {
        "in": 2, "ft": 2, "mm": 0, "cm": 1, "m": 3, "in^2": 2, "ft^2": 0, "mm^2": 0, "cm^2": 1, "m^2": 2,
        "lb": 0, "kip": 2, "N": 0, "kN": 2, "plf": 0, "kip/ft": 3, "lb/in": 0, "N/m": 0, "kN/m": 2, "N/mm": 2,
        "psf": 0, "kip/ft^2": 2, "psi": 0, "ksi": 2, "Pa": 0, "kPa": 2, "MPa": 2, "pcf": 0, "kN/m^3": 2, "N/m^3": 0,
        "deg": 1, "%": 1, "1": 2,
    }
)  # fmt: skip

# Under a hundred these get a tenth: it tells 5/8 in. from 9/16 in millimetres, or 8.5 psf of old roof from 8.
_TENTHS_UNDER_100: Final = frozenset(("mm", "ft^2", "lb/in", "psf", "pcf"))

_LENGTH_STYLES: Final = ("ft-in", "in", "decimal-in", "ft", "m", "cm", "mm")
_SLOPE_STYLES: Final = ("x:12", "1:n", "%", "deg", "1")
_DIMENSIONLESS: Final = ("1", "%", "deg")
_FINEST: Final = 64  # no tape is divided finer
NOTHING: Final = 1e-9
"""Smaller figures are shown as 0, whatever their unit: they are what a difference of floats leaves of nothing."""

_LEVEL: Final = 10_000  # flatter than one in so many is 0:1: no level in a crawlspace tells it from flat


@lru_cache(maxsize=256)
def exact_scale(unit: str) -> tuple[Fraction, tuple[int, int, int]]:
    """How many base units (lb, in, s) one ``unit`` is, exactly, and its exponents of force, length and time.

    Raises:
        UnitError: when the text is no unit, or holds a root, which has no exact scale.
    """
    force, length, time = map(float, read_unit(unit).dims)
    scale = exact_factor(unit, f"lb^{force}*in^{length}*s^{time}")
    return scale, (int(force), int(length), int(time))


def kind_of(unit: str) -> Kind | None:
    """The kind of quantity a unit measures (``psf`` a pressure), or None when no kind here has that dimension.

    ``%`` and ``1`` are taken for a ratio, ``deg`` for an angle; a slope cannot be told from its unit.
    """
    if unit in _DIMENSIONLESS:
        return "angle" if unit == "deg" else "ratio"
    try:
        dims = exact_scale(unit)[1]
    except UnitError:
        return None
    return next((kind for kind, facts in KINDS.items() if any(dims) and exact_scale(facts.units[0])[1] == dims), None)


def must_measure(kind: Kind, unit: str) -> None:
    """Refuse a unit that does not measure this kind of quantity.

    Raises:
        UnitError: for an unknown kind, or a unit that does not belong to it.
    """
    if kind not in KINDS:
        raise UnitError(f"{kind!r} is not a kind of quantity; known are {', '.join(KINDS)}")
    fits = unit in KINDS[kind].units or (unit not in _DIMENSIONLESS and kind_of(unit) == kind)
    if not fits:
        raise UnitError(f"{unit!r} does not measure {KINDS[kind].noun}; use one of {', '.join(KINDS[kind].units)}")


def turned(value: Fraction, kind: Kind, source: str, target: str) -> tuple[Fraction, bool]:
    """``value`` given in ``source``, told in ``target``, and whether that is exact.

    Only a slope turned to or from degrees is not, because the tangent goes between.
    """
    if kind == "slope" and source != target and "deg" in (source, target):
        if source == "deg":
            return Fraction(math.tan(math.radians(float(value)))) * exact_factor("1", target), False
        return Fraction(math.degrees(math.atan(float(value * exact_factor(source, "1"))))), False
    return value * exact_factor(source, target), True


def whole(value: Fraction) -> int:
    """The nearest whole number, halves away from zero."""
    nearest = math.floor(abs(value) + Fraction(1, 2))
    return -nearest if value < 0 else nearest


def decimal(value: Fraction, digits: int, grouped: bool = True) -> str:
    """``value`` with so many digits after the point, thousands apart by commas when ``grouped``."""
    units, rest = divmod(abs(whole(value * 10**digits)), 10**digits)
    sign = "-" if value < 0 and (units or rest) else ""
    front = f"{units:,}" if grouped else str(units)
    return f"{sign}{front}.{rest:0{digits}d}" if digits else f"{sign}{front}"


def significant(value: Fraction, figures: int = 4, grouped: bool = True) -> str:
    """``value`` to so many significant figures, no trailing zeros, and never rounded left of the point.

    Under NOTHING there is none: 0.
    """
    if abs(value) < NOTHING:
        return "0"
    before_point = math.floor(math.log10(abs(value))) + 1 if abs(value) >= 1 else 0
    if not before_point:
        while abs(value) * 10 ** (1 - before_point) < 1:  # leading zeros after the point
            before_point -= 1
    text = decimal(value, max(0, figures - before_point), grouped)
    return text.rstrip("0").rstrip(".") if "." in text else text


def mixed(value: Fraction) -> str:
    """A number that is not negative as a carpenter says it: ``90 1/2``, ``3/4``, ``6``."""
    units, rest = divmod(value.numerator, value.denominator)
    if not rest:
        return str(units)
    return f"{units} {rest}/{value.denominator}" if units else f"{rest}/{value.denominator}"


def exact_decimal(value: Fraction, grouped: bool) -> str:
    """A terminating decimal in full."""
    digits = 0
    while (10**digits) % value.denominator:
        digits += 1
    return decimal(value, digits, grouped)


def inch_parts(value_in: Fraction, to: int, feet: bool) -> str:
    """Inches to the nearest ``1/to``, carried into feet when ``feet``: ``7'-6 1/2"``, or ``90 1/2 in``."""
    parts = abs(whole(value_in * to))
    sign = "-" if value_in < 0 and parts else ""
    if not feet:
        return f"{sign}{mixed(Fraction(parts, to))} in"
    in_feet, rest = divmod(parts, 12 * to)
    front = f"{in_feet}'-" if in_feet else ""
    return f'{sign}{front}{mixed(Fraction(rest, to))}"'


def labelled(number: str, unit: str) -> str:
    """A spelled number with its unit the way the trade writes it: ``120 sq ft``, ``75%``, ``30°``."""
    return number + _LABELS.get(unit, f" {unit}")


def show(number: float, kind: Kind, inside: str, system: System = "us", style: str | None = None, to: int = 16) -> str:
    """Spell a number for a person, rounded to what its kind of quantity deserves.

    Args:
        number: the figure, in ``inside``.
        kind: what is measured.
        inside: the unit the figure is in.
        system: ``us`` or ``si``; chooses the style when none is named.
        style: for lengths ``ft-in`` (7'-6 1/2"), ``in`` (90 1/2 in), ``decimal-in``, ``ft``, ``m``, ``cm``, ``mm``;
            for slopes ``x:12``, ``1:n``, ``%``, ``deg``, ``1``; for the rest any unit of the kind. None takes the
            system's own: ``ft-in`` or metres (millimetres under a metre), lb or kN, plf or kN/m, psf or kPa (psi or
            MPa when ``inside`` is a stress unit), pcf or kN/m3.
        to: the finest division of an inch in ``ft-in`` and ``in``: 1, 2, 4, 8, 16, 32 or 64.

    Raises:
        OutsideLimits: for NaN, infinity, or a slope of 90 degrees or more.
        UnitError: for a unit, style, system or division that does not belong.
    """
    must_measure(kind, inside)
    if not math.isfinite(number):
        raise OutsideLimits(f"{float(number)} cannot be shown as {KINDS[kind].noun}: it is not a finite number")
    if system not in ("us", "si"):
        raise UnitError(f"system {system!r} is not known; use 'us' or 'si'")
    if to not in (1, 2, 4, 8, 16, 32, _FINEST):
        raise UnitError(f"an inch is not divided by {to} here; use 1, 2, 4, 8, 16, 32 or {_FINEST}")
    value = Fraction(*float(number).as_integer_ratio())
    chosen = style or KINDS[kind].shown_in(inside)[0 if system == "us" else 1]
    if kind == "length":
        return _show_length(turned(value, kind, inside, "in")[0], style or ("" if system == "si" else chosen), to)
    if kind == "slope":
        return _show_slope(value, inside, chosen)
    if chosen not in KINDS[kind].units:
        raise UnitError(f"style {chosen!r} does not show {KINDS[kind].noun}; use one of {', '.join(KINDS[kind].units)}")
    return _figure(turned(value, kind, inside, chosen)[0], chosen, grouped=True)


def _figure(value: Fraction, unit: str, grouped: bool) -> str:
    """A decimal with the digits its unit deserves."""
    tenth = unit in _TENTHS_UNDER_100 and 0 < abs(whole(value * 10)) < 1000
    return labelled(decimal(value, 1 if tenth else _DIGITS[unit], grouped), unit)


def _show_length(value_in: Fraction, style: str, to: int) -> str:
    """A length; an empty style is metres, or millimetres under a metre."""
    if not style:
        style = "m" if abs(turned(value_in, "length", "in", "m")[0]) >= 1 else "mm"
    if style not in _LENGTH_STYLES:
        raise UnitError(f"style {style!r} does not show a length; use one of {', '.join(_LENGTH_STYLES)}")
    if style in ("ft-in", "in"):
        return inch_parts(value_in, to, feet=style == "ft-in")
    unit = style.removeprefix("decimal-")
    return _figure(turned(value_in, "length", "in", unit)[0], unit, grouped=False)


def _show_slope(value: Fraction, inside: str, style: str) -> str:
    """A slope; ``1:n`` turns to ``2V:1H`` where steeper than one in one, and to ``0:1`` where all but level."""
    if style not in _SLOPE_STYLES:
        raise UnitError(f"style {style!r} does not show a slope; use one of {', '.join(_SLOPE_STYLES)}")
    if inside == "deg" and abs(value) >= 90:
        raise OutsideLimits(f"{float(value)} degrees is not a slope: it must lie under 90 degrees")
    if style in _DIMENSIONLESS:
        digits = 3 if style == "1" else _DIGITS[style]  # a slope of 1/4 in. per foot is 0.021
        return labelled(decimal(turned(value, "slope", inside, style)[0], digits), style)
    rise = turned(value, "slope", inside, "1")[0]
    if style == "x:12":
        return f"{_short(rise * 12)}:12"
    sign = "-" if rise < 0 else ""
    if abs(rise) * _LEVEL < 1:
        return "0:1"
    return f"{sign}1:{_short(1 / abs(rise))}" if abs(rise) <= 1 else f"{_short(rise)}V:1H"


def _short(value: Fraction) -> str:
    """At most two digits after the point, no trailing zeros."""
    text = decimal(value, 2, grouped=False)
    return text.rstrip("0").rstrip(".")


# ---- The echo -------------------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Said:
    """What was understood, without its sign: a value in a unit, and its spelling."""

    value: Fraction
    unit: str
    spelled: str
    compound: bool = False  # feet and inches together


_SI: Final = frozenset(
    ("mm", "cm", "m", "mm^2", "cm^2", "m^2", "N", "kN", "N/m", "kN/m", "N/mm", "Pa", "kPa", "MPa", "kN/m^3", "N/m^3")
)
_SMALLER: Final[Mapping[str, str]] = MappingProxyType(
    {"m": "mm", "kN": "N", "kN/m": "N/m", "kPa": "Pa", "MPa": "kPa", "m^2": "cm^2", "kN/m^3": "N/m^3"}
)


def echo_of(said: Said, kind: Kind) -> str:
    """What was understood: respelled; in the system's usual form where that differs; in the other system."""
    if kind == "length":
        usual, other = _usual_length(said), _other_length(said)
    elif kind in ("angle", "slope", "ratio"):
        usual, other = _usual_ratio(said, kind)
    else:
        us, si = KINDS[kind].shown_in(said.unit)
        own, foreign = (si, us) if said.unit in _SI else (us, si)
        usual = "" if own == said.unit else _figures(said, kind, own)
        other = _figures(said, kind, foreign).lstrip("=≈ ")
    return f"{said.spelled}{f' {usual}' if usual else ''}{f' ({other})' if other else ''}"


def _figures(said: Said, kind: Kind, unit: str) -> str:
    """Four figures in another unit, with = or ≈ before them; in a smaller unit when it would be under one."""
    value, is_exact = turned(said.value, kind, said.unit, unit)
    while 0 < abs(value) < 1 and unit in _SMALLER and _SMALLER[unit] != said.unit:
        unit = _SMALLER[unit]
        value, is_exact = turned(said.value, kind, said.unit, unit)
    text = significant(value, grouped=kind != "length")
    same = is_exact and Fraction(text.replace(",", "")) == value
    return f"{'=' if same else '≈'} {labelled(text, unit)}"


def _usual_length(said: Said) -> str:
    """Feet and inches told in inches, feet or inches told in feet and inches, millimetres in metres."""
    if said.unit in _SI:
        own = "mm" if said.unit == "m" and said.value < 1 else "m"
        return "" if own == said.unit or not said.value else _metric_step(said, own)
    value_in = turned(said.value, "length", said.unit, "in")[0]
    if said.compound:
        if _fits_tape(value_in):
            return f"= {mixed(value_in)} in"
        return _figures(said, "length", "in")
    if said.unit == "in" and value_in < 12:
        return ""
    return f"{'=' if (value_in * 16).denominator == 1 else '≈'} {inch_parts(value_in, 16, feet=True)}"


def _metric_step(said: Said, unit: str) -> str:
    """A metric length in another metric unit; millimetres stay as they are under a metre."""
    value = turned(said.value, "length", said.unit, unit)[0]
    if unit == "m" and value < 1:
        return "" if said.unit == "mm" else _figures(said, "length", "mm")
    return f"= {exact_decimal(value, grouped=False)} {unit}" if not _thirds(value) else _figures(said, "length", unit)


def _thirds(value: Fraction) -> bool:
    """True when no decimal holds the value exactly."""
    rest = value.denominator
    for prime in (2, 5):
        while rest % prime == 0:
            rest //= prime
    return rest != 1


def _fits_tape(value_in: Fraction) -> bool:
    return (value_in * 64).denominator == 1


def _other_length(said: Said) -> str:
    """The same length on the other tape; under an inch in decimals, where sixteenths would say too little."""
    if said.unit not in _SI:
        return _figures(said, "length", "m").lstrip("=≈ ")
    value_in = turned(said.value, "length", said.unit, "in")[0]
    if value_in < 1:
        return _figures(said, "length", "in").lstrip("=≈ ")
    return inch_parts(value_in, 16, feet=True)


def _usual_ratio(said: Said, kind: Kind) -> tuple[str, str]:
    """A slope also in percent and degrees, a ratio also as the other of number and percent; an angle as it is."""
    if kind == "angle":
        return "", ""
    if kind == "ratio":
        return _figures(said, kind, "%" if said.unit == "1" else "1"), ""
    percent = _figures(said, kind, "%")
    if said.unit == "deg":
        return percent, ""
    degrees = _figures(said, kind, "deg").lstrip("=≈ ")
    return ("" if said.unit == "%" else percent), degrees


def minus_echo(echo: str) -> str:
    """The echo of a quantity below zero: every number in it takes the sign."""
    return re.sub(r"(^|[=≈(] ?)(?=[0-9])", r"\1-", echo)
