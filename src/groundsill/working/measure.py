"""Units at the door: what a person types under a house, turned into the plain float the inside works with.

In comes text (``7'-6 1/2"``, ``2.3 m``, ``1,040 lb``, ``4 in 12``), the kind of quantity the field wants and the unit
it is kept in; out comes a :class:`Measure`, with an echo that says what was understood. Text is consumed whole or
refused, with the part that was not understood and examples of what would be: a reader that stops early turns
``60 ft 1 in`` into 60 ft without a word. Arithmetic is in exact fractions until the last step.

A number alone is refused unless the field itself states a unit (``bare``). After feet, a last number without a mark
is inches (``7'6``), because nothing else can follow feet. The cases in ``measure_cases.json`` are the specification.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from types import MappingProxyType
from typing import Final

from groundsill.working.errors import GroundsillError
from groundsill.working.measure_show import (
    KINDS,
    Kind,
    Said,
    System,
    echo_of,
    exact_decimal,
    exact_scale,
    inch_parts,
    kind_of,
    labelled,
    minus_echo,
    mixed,
    must_measure,
    show,
    turned,
)

__all__ = ["KINDS", "Kind", "Measure", "MeasureError", "System", "kind_of", "read", "show"]

MOST_CHARACTERS: Final = 64
LARGEST: Final = 10**9  # in the inside unit; nothing about a house is larger, and a cat on the keys is


class MeasureError(GroundsillError):
    """Typed text that is not a measure of the kind asked for.

    ``typed`` is what stood there, ``why`` what was not understood, ``allowed`` what may be written instead.
    """

    def __init__(self, typed: str, kind: Kind, why: str, bare: str | None = None) -> None:
        self.typed = typed
        self.why = why
        alone = f"; a number alone is taken {_alone(bare)}" if bare else ""
        self.allowed = f"write {KINDS[kind].noun} like {KINDS[kind].example}{alone}"
        super().__init__(f"cannot read [{_visible(typed)}] as {KINDS[kind].noun}: {why}; {self.allowed}")


@dataclass(frozen=True, slots=True)
class Measure:
    """One measured number, as kept and as typed.

    ``number`` is in the unit ``inside``; ``typed`` is what the person wrote; ``echo`` says what was understood, in
    the typed system first and the other after it (``7'-6 1/2" = 90 1/2 in (2.299 m)``); ``exact`` is the number
    before it became a float, or None where a tangent stands between (a slope turned to or from degrees).
    """

    number: float
    inside: str
    typed: str
    echo: str
    exact: Fraction | None

    @property
    def understood(self) -> str:
        """The head of the echo: the same quantity respelled, which the same field reads back to the same number."""
        return _AFTER_HEAD.split(self.echo, maxsplit=1)[0]


def read(text: str, kind: Kind, inside: str, bare: str | None = None) -> Measure:
    """Read what a person typed.

    Args:
        text: as typed; nothing is assumed about it.
        kind: what the field measures.
        inside: the unit the number is kept in.
        bare: the unit of a number that carries none, where the field states one.

    Raises:
        MeasureError: for anything not understood to its last character.
        UnitError: when ``inside`` or ``bare`` does not measure ``kind`` (a fault of the program, not of the person).
    """
    must_measure(kind, inside)
    if bare is not None:
        must_measure(kind, bare)
    asked = _Asked(text, kind, bare)
    plain = _plain(asked)
    negative, body = _sign(asked, plain)
    said = _READERS.get(kind, _read_simple)(asked, body)
    value, is_exact = turned(said.value, kind, said.unit, inside)
    if abs(value) > LARGEST:
        raise asked.refused(f"it is beyond {LARGEST:,} {inside}")
    echo = echo_of(said, kind)
    if negative:
        value, echo = -value, minus_echo(echo) if value else echo
    return Measure(float(value), inside, text, echo, value if is_exact else None)


@dataclass(frozen=True, slots=True)
class _Asked:
    """One reading under way: the text, the kind wanted, the unit of a bare number."""

    text: str
    kind: Kind
    bare: str | None

    def refused(self, why: str) -> MeasureError:
        """The refusal to raise, saying why."""
        return MeasureError(self.text, self.kind, why, self.bare)

    def bare_unit(self) -> str:
        """The unit the field states, for a number typed without one."""
        if self.bare is None:
            raise self.refused("the unit is missing, and a number alone is not taken here")
        return self.bare


@dataclass(frozen=True, slots=True)
class _Amount:
    """A number as typed: its value, and whether it was written with a fraction bar."""

    value: Fraction
    barred: bool

    def spelled(self, grouped: bool = False) -> str:
        """The number again, exactly."""
        return mixed(self.value) if self.barred else exact_decimal(self.value, grouped)


# ---- Words and signs ------------------------------------------------------------------------------------------------

_WORDS: Final[Mapping[str, str]] = MappingProxyType(
    {
        word: unit
        for unit, words in {
            "in": '" in inch inches',
            "ft": "' ft foot feet",
            "mm": "mm millimeter millimeters millimetre millimetres",
            "cm": "cm centimeter centimeters centimetre centimetres",
            "m": "m meter meters metre metres",
            "lb": "lb lbs lbf pound pounds #",
            "kip": "k kip kips",
            "N": "n newton newtons",
            "kN": "kn kilonewton kilonewtons",
            "plf": "plf",
            "kip/ft": "klf",
            "lb/in": "pli",
            "psf": "psf",
            "kip/ft^2": "ksf",
            "psi": "psi",
            "ksi": "ksi",
            "Pa": "pa pascal pascals",
            "kPa": "kpa kilopascal kilopascals",
            "MPa": "mpa megapascal megapascals",
            "pcf": "pcf",
            "ft^2": "sf sqft",
            "in^2": "sqin",
            "deg": "° deg degree degrees",
            "%": "% percent pct",
        }.items()
        for word in words.split()
    }
)
_POWERS: Final[Mapping[str, str]] = MappingProxyType({"sq": "^2", "square": "^2", "cu": "^3", "cubic": "^3"})
# Words a person may reach for that are no unit here, and what to say.
_HINTS: Final[Mapping[str, str]] = MappingProxyType(
    {
        "kg": "kg is a mass; write the force it weighs, in N or kN",
        "kgf": "kgf is not used here; write N or kN",
        "t": "a ton may be 2,000 lb, 2,240 lb or 1,000 kg; write lb, kips or kN",
        "ton": "a ton may be 2,000 lb, 2,240 lb or 1,000 kg; write lb, kips or kN",
        "tons": "a ton may be 2,000 lb, 2,240 lb or 1,000 kg; write lb, kips or kN",
        "rad": "angles are given in degrees here",
        "radians": "angles are given in degrees here",
    }
)
_PART = re.compile(r"(?:(sq|square|cu|cubic) )?([a-z#]+|['\"°%])(?:\^?([23]))?")
_PER = re.compile(r" ?/ ?| per ")
_DOTTED = re.compile(r"(?<=[a-z])\.(?![a-z])")

_SIGNS: Final[Mapping[int, str]] = MappingProxyType(
    {ord(c): "'" for c in "’‘‛′ʹʼ`´＇"}
    | {ord(c): '"' for c in "“”‟″ʺ＂"}
    | {ord(c): "-" for c in "‐‑‒–—−"}
    | {ord(c): f"^{p}" for c, p in (("²", 2), ("³", 3))}
    | {ord(c): "/" for c in "⁄∕"}
    | {ord(c): " " for c in "\t\u00a0\u1680\u202f\u205f\u3000"}
    | dict.fromkeys(range(0x2000, 0x200B), " ")  # the typesetter's spaces, thin to figure-wide
    | {ord("º"): "°"}
)
_VULGAR: Final[Mapping[str, str]] = MappingProxyType(
    {
        "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5",
        "⅙": "1/6", "⅚": "5/6", "⅐": "1/7", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅑": "1/9", "⅒": "1/10",
    }
)  # fmt: skip
_VULGAR_SIGN = re.compile(f"(?P<before>[-/]?)(?P<sign>[{''.join(_VULGAR)}])")
_SPACES = re.compile(" +")
_AFTER_HEAD = re.compile(" [=≈(]")


def _plain(asked: _Asked) -> str:
    """The text in small ASCII letters (and the degree sign), with straight marks and single spaces."""
    text = asked.text
    if len(text) > MOST_CHARACTERS:
        raise asked.refused(f"it is {len(text)} characters long, and {MOST_CHARACTERS} are enough for any measure")
    if "mPa" in text:
        raise asked.refused("mPa is a thousandth of a pascal; for a million pascals write MPa")
    if not text.isascii() or "\t" in text:
        text = _VULGAR_SIGN.sub(_barred, text.translate(_SIGNS))
    strange = next((c for c in text if not (" " <= c <= "~" or c == "°")), None)
    if strange is not None:
        raise asked.refused(f"the character {_visible(strange)} (U+{ord(strange):04X}) has no meaning here")
    text = _SPACES.sub(" ", text.lower()).strip()
    if not text:
        raise asked.refused("nothing was written")
    return text


def _barred(found: re.Match[str]) -> str:
    """``½`` as `` 1/2 ``, so that 6½ is 6 1/2 and not 61/2; a dash before it keeps its place (6-½)."""
    before = found["before"]
    return f"{before}{'' if before == '-' else ' '}{_VULGAR[found['sign']]} "


def _sign(asked: _Asked, plain: str) -> tuple[bool, str]:
    """Take one leading sign off."""
    if plain[0] not in "+-":
        return False, plain
    body = plain[1:].lstrip()
    if not KINDS[asked.kind].signed:
        raise asked.refused(f"{KINDS[asked.kind].noun} has no sign here")
    if not body or body[0] in "+-":
        raise asked.refused("one sign may stand in front, and a number must follow it")
    return plain[0] == "-", body


# ---- Numbers --------------------------------------------------------------------------------------------------------

_AMOUNT = re.compile(
    r"(?:(?P<whole>[0-9][0-9,]*)[ -])?(?P<top>[0-9]+)/(?P<bottom>[0-9]+)"
    r"|(?P<decimal>[0-9][0-9,]*(?:\.[0-9]+)?|\.[0-9]+)"
)
_THOUSANDS = re.compile(r"[1-9][0-9]{0,2}(?:,[0-9]{3})+")
_EXPONENT = re.compile(r"e[+-]?[0-9]")
_NOT_A_NUMBER = re.compile(r"(nan|inf|infinity)\b")
_STRAY_COMMA: Final = "a comma belongs only between thousands (10,000); leave others out, and write 2.3 for 2,3"


def _amount(asked: _Asked, body: str, at: int = 0) -> tuple[_Amount, int]:
    """The number that starts at ``at``, and where it ends."""
    found = _AMOUNT.match(body, at)
    if found is None:
        raise asked.refused(_why_no_number(body[at:]))
    end = found.end()
    if _EXPONENT.match(body, end):
        raise asked.refused("powers of ten (1e3) are not taken; write the number out")
    if body.startswith((",", " ,"), end):
        raise asked.refused(_STRAY_COMMA)
    if found["decimal"] is not None:
        front, _, digits = found["decimal"].partition(".")
        number = _ungrouped(asked, front) if front else "0"
        return _Amount(Fraction(f"{number}.{digits or 0}"), barred=False), end
    top, bottom = int(found["top"]), int(found["bottom"])
    if not bottom:
        raise asked.refused(f"the fraction {top}/{bottom} is over zero")
    if found["whole"] is None:
        return _Amount(Fraction(top, bottom), barred=True), end
    if top >= bottom:
        raise asked.refused(f"the fraction {top}/{bottom} after a whole number must be under one")
    return _Amount(int(_ungrouped(asked, found["whole"])) + Fraction(top, bottom), barred=True), end


def _why_no_number(rest: str) -> str:
    """What to say of text that stands where a number should."""
    if _NOT_A_NUMBER.match(rest):
        return "it is not a finite number"
    if rest.startswith(","):
        return _STRAY_COMMA
    return f"[{rest}] does not begin with a number"


def _ungrouped(asked: _Asked, digits: str) -> str:
    """Digits without their thousands commas; any other comma is refused."""
    if "," in digits and not _THOUSANDS.fullmatch(digits):
        decimal_point = digits.replace(",", ".", 1)
        raise asked.refused(
            f"the comma in {digits} does not part thousands in threes (10,000); a decimal has a point: {decimal_point}"
        )
    return digits.replace(",", "")


# ---- Units ----------------------------------------------------------------------------------------------------------


@lru_cache(maxsize=512)
def _unit_of(phrase: str, kind: Kind) -> str | None:
    """The unit of this kind that a phrase names (``pounds per square foot`` is psf), or None."""
    symbol = _symbol(phrase)
    facts = KINDS[kind]
    if symbol is None or symbol in facts.units:
        return symbol
    if kind in ("angle", "slope", "ratio") or symbol in ("%", "deg"):
        return None
    meant = exact_scale(symbol)
    return next((unit for unit in facts.units if exact_scale(unit) == meant), None)


def _symbol(phrase: str) -> str | None:
    """A phrase as a quotient of known units, of whatever kind: ``lb/ft^2``; None when a word is unknown."""
    parts = _PER.split(_DOTTED.sub("", phrase))
    if len(parts) > 2:
        return None
    symbols: list[str] = []
    for part in parts:
        found = _PART.fullmatch(part)
        if found is None or found[2] not in _WORDS or (found[1] and found[3]):
            return None
        unit, power = _WORDS[found[2]], _POWERS.get(found[1], f"^{found[3]}" if found[3] else "")
        if (power or len(parts) > 1) and ("/" in unit or "^" in unit or unit in ("%", "deg")):
            return None
        symbols.append(unit + power)
    return "/".join(symbols)


def _must_be_unit(asked: _Asked, phrase: str) -> str:
    """The unit a phrase names, or a refusal that says what the phrase is instead."""
    unit = _unit_of(phrase, asked.kind)
    if unit is not None:
        return unit
    symbol = _symbol(phrase)
    other = kind_of(symbol) if symbol else None
    if other is not None and other != asked.kind:
        raise asked.refused(f"{phrase} measures {KINDS[other].noun}")
    if phrase in _HINTS:
        raise asked.refused(_HINTS[phrase])
    if phrase[0] in "-0123456789":
        raise asked.refused(f"no unit stands before [{phrase}]")
    raise asked.refused(f"[{phrase}] is not a unit of {asked.kind.replace('_', ' ')} known here")


# ---- One reader for each manner of writing --------------------------------------------------------------------------

_LENGTH_MARK = re.compile(r" ?(['\"]+|[a-z]+\.?)")
_OVER = re.compile(r"([0-9]+)/([0-9]+)")
_RISE_TO_RUN = re.compile(r" ?([hv]?) ?(?::|/| in | on ) ?(?=[0-9.])")
_DIRECTION = re.compile(r" ?([hv]?)$")
_INCH_PER_FOOT = re.compile(r" ?(?:\"|in|inch|inches)\.?(?: ?/ ?| per )(?:'|ft|foot)\.?")


def _read_simple(asked: _Asked, body: str) -> Said:
    """A number and a unit."""
    amount, end = _amount(asked, body)
    phrase = body[end:].strip()
    unit = _must_be_unit(asked, phrase) if phrase else asked.bare_unit()
    return Said(amount.value, unit, labelled(amount.spelled(grouped=True), unit))


def _read_length(asked: _Asked, body: str) -> Said:
    """Feet, inches, feet and inches, or one metric unit."""
    first, end = _amount(asked, body)
    unit, rest = _length_mark(asked, body, end)
    unit = unit or asked.bare_unit()
    if not rest:
        return Said(first.value, unit, f"{first.spelled()} {unit}")
    if unit != "ft":
        raise asked.refused(f"nothing may follow the {unit}, yet [{rest}] does")
    inches = _inches_after_feet(asked, first, rest)
    in_feet = first.value.numerator
    return Said(in_feet * 12 + inches.value, "in", f"{in_feet}'-{inches.spelled()}\"", compound=True)


def _length_mark(asked: _Asked, body: str, at: int) -> tuple[str | None, str]:
    """The mark or word after a number, as a unit (None at the end of the text), and what is left."""
    found = _LENGTH_MARK.match(body, at)
    if found is None:
        rest = body[at:].strip()
        if rest and rest[0] in "-0123456789":
            raise asked.refused(f"nothing says which number in [{body}] is feet and which is inches")
        if rest:
            raise asked.refused(f"[{rest}] is neither a unit of length nor part of the number")
        return None, ""
    mark = found[1]
    if mark == "''":
        raise asked.refused("two single quotes are not an inch mark; write \" or in for inches, ' or ft for feet")
    rest = body[found.end() :]
    if rest[:1] in ("/", "^"):  # a quotient or a power: let the refusal name all of it
        mark, rest = mark + rest, ""
    return _must_be_unit(asked, mark), rest.strip()


def _inches_after_feet(asked: _Asked, feet: _Amount, rest: str) -> _Amount:
    """What follows the feet: a dash or nothing, then inches under twelve, their mark optional."""
    if rest == "-":
        raise asked.refused("the inches are missing after the dash; for even feet write 7' or 7'-0\"")
    rest = rest.removeprefix("-").lstrip()
    inches, end = _amount(asked, rest)
    unit, left = _length_mark(asked, rest, end)
    if unit not in (None, "in"):
        raise asked.refused(f"after feet only inches may follow, not {unit}")
    if left:
        raise asked.refused(f"nothing may follow the inches, yet [{left}] does")
    if feet.value.denominator != 1:
        raise asked.refused("the feet must be a whole number when inches follow")
    if inches.value >= 12:
        better = inch_parts(feet.value * 12 + inches.value, 64, feet=True)
        raise asked.refused(f"inches after feet must be under 12, not {inches.spelled()}; did you mean {better}")
    return inches


def _read_slope(asked: _Asked, body: str) -> Said:
    """Rise to run in any of its spellings, or percent or degrees."""
    over = _OVER.fullmatch(body)
    if over:  # 4/12 is 4 in 12 to a roofer, though it would also be a fraction
        rise, run = (_Amount(Fraction(int(n)), barred=False) for n in over.groups())
        return _rise_to_run(asked, rise, run, "", "")
    first, end = _amount(asked, body)
    if _INCH_PER_FOOT.fullmatch(body, end):
        return Said(first.value / 12, "1", f"{first.spelled()} in per ft")
    between = _RISE_TO_RUN.match(body, end)
    if between:
        second, end = _amount(asked, body, between.end())
        last = _DIRECTION.match(body, end)
        if last is None:
            raise asked.refused(f"[{body[end:].strip()}] after the run is not understood")
        return _rise_to_run(asked, first, second, between[1], last[1])
    phrase = body[end:].strip()
    unit = _must_be_unit(asked, phrase) if phrase else asked.bare_unit()
    if unit == "deg" and first.value >= 90:
        raise asked.refused("a slope lies under 90 degrees")
    if unit == "1" and first.barred and first.value < 1:  # 0 1/4, in a field that takes the bare number
        return Said(first.value, "1", f"{first.value.numerator}:{first.value.denominator}")
    return Said(first.value, unit, labelled(first.spelled(), unit))


def _rise_to_run(asked: _Asked, first: _Amount, second: _Amount, one: str, two: str) -> Said:
    """Two numbers as a slope, rise first unless letters say otherwise.

    Grading plans write the run first (2:1 is one up in two), roofs the rise (4:12). So a rise above the run is taken
    only over 12, or with letters.
    """
    if sorted(one + two) not in ([], ["h", "v"]):
        raise asked.refused("mark both numbers, one H and one V, or neither")
    rise, run = (second, first) if one == "h" else (first, second)
    if not run.value:
        raise asked.refused("the run is zero; a slope lies under 90 degrees")
    steep = rise.value > run.value and run.value != 12
    if steep and not one:
        raise asked.refused(
            f"is it up {rise.spelled()} in {run.spelled()} or up {run.spelled()} in {rise.spelled()}; "
            f"write {rise.spelled()}V:{run.spelled()}H or {rise.spelled()}H:{run.spelled()}V"
        )
    letters = ("V", "H") if steep else ("", "")
    return Said(rise.value / run.value, "1", f"{rise.spelled()}{letters[0]}:{run.spelled()}{letters[1]}")


_READERS: Final = MappingProxyType({"length": _read_length, "slope": _read_slope})


def _alone(bare: str | None) -> str:
    return "as it stands" if bare == "1" else f"in {bare}"


def _visible(text: str) -> str:
    """Text fit for a message: unprintable characters escaped, the end of a long one left off."""
    shown = "".join(c if c.isprintable() else c.encode("unicode_escape").decode() for c in text[:MOST_CHARACTERS])
    return shown + ("..." if len(text) > MOST_CHARACTERS else "")
