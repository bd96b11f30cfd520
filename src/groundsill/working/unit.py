"""Units as algebra: what `lb^0.5/in` is, and when two units may stand on the two sides of an equals sign.

A :class:`Unit` is a scale (to pounds-force, inches, seconds) and an exponent for each base dimension. The equation
decorator uses it to prove, once per equation, that a formula is right not only in dimension but in scale: adding
feet to inches, or forgetting a 12, is an error here even though both are lengths.

Factors are exact fractions by definition (the inch is 25.4 mm and the pound 0.45359237 kg exactly; standard gravity
9.80665 m/s2), so a round trip between systems loses nothing but the last float digit.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from groundsill.working.errors import UnitError

__all__ = ["Unit", "exact_factor", "factor", "unit"]

_POUND_N = Fraction("0.45359237") * Fraction("9.80665")  # one pound-force in newtons, exact by definition
_METRE = Fraction(10000, 254)  # in inches

# symbol: (scale in lb, in, s; force exponent; length exponent; time exponent)
_BASE: dict[str, tuple[Fraction, int, int, int]] = {
    "1": (Fraction(1), 0, 0, 0),
    "g": (Fraction(1), 0, 0, 0),  # spectral acceleration as a fraction of gravity: a ratio, as the standards use it
    "deg": (Fraction(1), 0, 0, 0),  # angles enter equations only through functions that name the degree
    "%": (Fraction(1, 100), 0, 0, 0),
    "in": (Fraction(1), 0, 1, 0),
    "ft": (Fraction(12), 0, 1, 0),
    "mm": (_METRE / 1000, 0, 1, 0),
    "cm": (_METRE / 100, 0, 1, 0),
    "m": (_METRE, 0, 1, 0),
    "lb": (Fraction(1), 1, 0, 0),
    "kip": (Fraction(1000), 1, 0, 0),
    "N": (1 / _POUND_N, 1, 0, 0),
    "kN": (1000 / _POUND_N, 1, 0, 0),
    "psi": (Fraction(1), 1, -2, 0),
    "ksi": (Fraction(1000), 1, -2, 0),
    "psf": (Fraction(1, 144), 1, -2, 0),
    "Pa": (1 / _POUND_N / _METRE**2, 1, -2, 0),
    "kPa": (1000 / _POUND_N / _METRE**2, 1, -2, 0),
    "MPa": (1000000 / _POUND_N / _METRE**2, 1, -2, 0),
    "plf": (Fraction(1, 12), 1, -1, 0),
    "pcf": (Fraction(1, 1728), 1, -3, 0),
    "s": (Fraction(1), 0, 0, 1),
    "mph": (Fraction(17600, 1000), 0, 1, -1),
}

_SIGN = re.compile(r"([*/]|(?<!\^)-)")  # a hyphen multiplies, but for the minus of a power
_ATOM = re.compile(r"(?P<name>[A-Za-z%]+|1)(?:\^(?P<power>-?\d+(?:\.\d+)?))?")

Dims = tuple[Fraction, Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit of measure.

    ``scale`` is how many base units (lb, in, s) one of it is; ``dims`` are the exponents of force, length and time.
    The scale is a float because roots of units (``psi^0.5``) have irrational scales.
    """

    scale: float
    dims: Dims

    def __mul__(self, other: Unit) -> Unit:
        return Unit(self.scale * other.scale, _add(self.dims, other.dims, 1))

    def __truediv__(self, other: Unit) -> Unit:
        return Unit(self.scale / other.scale, _add(self.dims, other.dims, -1))

    def __pow__(self, exponent: Fraction | int) -> Unit:
        power = Fraction(exponent)
        return Unit(self.scale ** float(power), tuple(d * power for d in self.dims))  # type: ignore[arg-type]

    def same_as(self, other: Unit) -> bool:
        """True when a number in one unit may be read as a number in the other without conversion."""
        return self.dims == other.dims and abs(self.scale - other.scale) <= 1e-9 * abs(self.scale)

    def same_dimension(self, other: Unit) -> bool:
        """True when the two measure the same kind of thing (both lengths, both pressures)."""
        return self.dims == other.dims


def _add(a: Dims, b: Dims, times: Fraction | int) -> Dims:
    return (a[0] + times * b[0], a[1] + times * b[1], a[2] + times * b[2])


@lru_cache(maxsize=512)
def _read(text: str) -> tuple[Fraction | float, Dims]:
    """Scale and exponents of a unit; the scale is exact, but a float where a root was taken."""
    scale: Fraction | float = Fraction(1)
    dims: Dims = (Fraction(0), Fraction(0), Fraction(0))
    pieces = _SIGN.split("*" + text)
    for sign, atom in zip(pieces[1::2], map(str.strip, pieces[2::2]), strict=True):
        match = _ATOM.fullmatch(atom)
        if match is None or match["name"] not in _BASE:
            raise UnitError(f"unit {text!r}: {atom!r} is not a unit known here ({', '.join(sorted(_BASE))})")
        power = Fraction(match["power"] or 1) * (-1 if sign == "/" else 1)
        base, force, length, time = _BASE[match["name"]]
        scale *= base**power
        dims = _add(dims, (Fraction(force), Fraction(length), Fraction(time)), power)
    return scale, dims


def _ratio(source: str, target: str) -> Fraction | float:
    (a, dims), (b, wanted) = _read(source), _read(target)
    if dims != wanted:
        raise UnitError(f"{source} cannot be turned into {target}: they do not measure the same kind of thing")
    return a / b


@lru_cache(maxsize=512)
def unit(text: str) -> Unit:
    """Read a unit as the standards write it: ``psi``, ``lb-in``, ``in^2``, ``lb^0.5/in``.

    A hyphen multiplies, each slash divides by the next factor only.

    Raises:
        UnitError: when any part of the text is not a unit known here.
    """
    scale, dims = _read(text)
    return Unit(float(scale), dims)


@lru_cache(maxsize=512)
def factor(source: str, target: str) -> float:
    """The number by which a figure in ``source`` is multiplied to read in ``target`` (``factor("ft", "in")`` is 12).

    Raises:
        UnitError: when the two do not measure the same kind of thing.
    """
    return float(_ratio(source, target))  # rounded once, from exact fractions


@lru_cache(maxsize=512)
def exact_factor(source: str, target: str) -> Fraction:
    """The factor from ``source`` to ``target`` as an exact fraction (``exact_factor("in", "ft")`` is 1/12).

    Raises:
        UnitError: when the two do not measure the same kind of thing, or one holds a root, whose factor is no fraction.
    """
    ratio = _ratio(source, target)
    if not isinstance(ratio, Fraction):
        raise UnitError(f"{source} has no exact factor to {target}: roots have none")
    return ratio
