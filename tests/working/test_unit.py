"""Units as algebra: factors that are exact by definition, units read as the standards write them, refusals by name."""

from __future__ import annotations

from fractions import Fraction

import pytest

from groundsill.working.errors import UnitError
from groundsill.working.unit import Unit, exact_factor, factor, unit

# 1 in = 25.4 mm, 1 lb = 0.45359237 kg and g = 9.80665 m/s2, all exact by definition.
POUND_N = 0.45359237 * 9.80665


@pytest.mark.parametrize(
    ("source", "target", "by"),
    [
        ("ft", "in", 12.0),
        ("in", "ft", 1 / 12),
        ("in", "mm", 25.4),
        ("m", "in", 1 / 0.0254),
        ("cm", "mm", 10.0),
        ("kip", "lb", 1000.0),
        ("lb", "N", POUND_N),
        ("kN", "lb", 1000 / POUND_N),
        ("psi", "Pa", POUND_N / 0.0254**2),
        ("MPa", "psi", 1e6 / (POUND_N / 0.0254**2)),
        ("psf", "kPa", POUND_N / 0.3048**2 / 1000),
        ("ksi", "psi", 1000.0),
        ("psi", "psf", 144.0),
        ("plf", "lb/in", 1 / 12),
        ("plf", "lb/ft", 1.0),
        ("pcf", "lb/in^3", 1 / 1728),
        ("psf", "lb/ft^2", 1.0),
        ("mph", "ft/s", 5280 / 3600),
        ("%", "1", 0.01),
        ("lb-ft", "lb-in", 12.0),
        ("kip-in", "lb-ft", 1000 / 12),
        ("ft^0.5", "in^0.5", 12**0.5),
        ("kip/in", "plf", 12000.0),
    ],
)
def test_factor(source: str, target: str, by: float) -> None:
    assert factor(source, target) == pytest.approx(by, rel=1e-15)


@pytest.mark.parametrize(
    ("source", "target", "by"),
    [
        ("ft", "in", 12.0), ("in", "ft", 1 / 12), ("kip", "lb", 1000.0), ("psi", "psf", 144.0), ("in", "mm", 25.4),
        ("plf", "lb/in", 1 / 12), ("in/ft", "1", 1 / 12), ("in^3", "ft^3", 1 / 1728), ("in^-1", "ft^-1", 12.0),
    ],
)  # fmt: skip
def test_factors_are_the_nearest_float_there_is(source: str, target: str, by: float) -> None:
    assert factor(source, target) == by


@pytest.mark.parametrize(
    ("text", "scale", "dims"),
    [
        ("1", 1.0, (0, 0, 0)),
        ("g", 1.0, (0, 0, 0)),
        ("psi", 1.0, (1, -2, 0)),
        ("lb-in", 1.0, (1, 1, 0)),
        ("ft-lb", 12.0, (1, 1, 0)),
        ("in^2", 1.0, (0, 2, 0)),
        ("in^-2", 1.0, (0, -2, 0)),
        ("1/ft", 1 / 12, (0, -1, 0)),
        ("lb/in/in", 1.0, (1, -2, 0)),
        ("lb/ft-ft", 1.0, (1, 0, 0)),  # a slash divides by the next factor only
        ("kip-ft/ft^2-in", 1000 / 12, (1, 0, 0)),
        ("lb*in^-2*ft", 12.0, (1, -1, 0)),
        ("lb^0.5/in", 1.0, (Fraction(1, 2), -1, 0)),
        ("psi^0.5", 1.0, (Fraction(1, 2), -1, 0)),
        ("lb / in", 1.0, (1, -1, 0)),
    ],
)
def test_a_unit_is_read_as_the_standards_write_it(text: str, scale: float, dims: tuple[float, ...]) -> None:
    read = unit(text)
    assert read.scale == pytest.approx(scale, rel=1e-15)
    assert read.dims == tuple(Fraction(d) for d in dims)


def test_units_multiply_divide_and_take_roots() -> None:
    assert (unit("psi") * unit("in^2")).same_as(unit("lb"))
    assert (unit("kip") / unit("ft")).same_as(unit("kip/ft"))
    assert (unit("psi") ** Fraction(1, 2) * unit("psi") ** Fraction(1, 2)).same_as(unit("psi"))
    assert unit("ft") ** 3 == unit("ft^3")


def test_feet_are_lengths_but_no_inches() -> None:
    assert unit("ft").same_dimension(unit("in"))
    assert not unit("ft").same_as(unit("in"))
    assert not unit("lb").same_dimension(unit("in"))
    assert unit("lb/in^2").same_as(unit("psi"))
    assert not unit("psi").same_as(
        Unit(1.000001, unit("psi").dims)
    )  # roots and powers differ in the last digit, no more
    assert unit("psf").same_as(unit("ft") * unit("pcf"))


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("lbs", "lbs"), ("", ""), ("lb/", ""), ("in2", "in2"), ("furlong", "furlong"), ("psi^x", "psi^x"), ("12", "12"),
        ("in^1/2", "2"), ("lb+in", "lb+in"),
    ],
)  # fmt: skip
def test_what_is_no_unit_is_named_with_those_that_are(text: str, part: str) -> None:
    with pytest.raises(UnitError) as refused:
        unit(text)
    assert str(refused.value).startswith(f"unit {text!r}: {part!r} is not a unit known here (%, 1, MPa, N, ")


@pytest.mark.parametrize(("source", "target"), [("lb", "in"), ("psi", "plf"), ("s", "ft"), ("ft", "deg"), ("1", "in")])
def test_a_force_is_no_length(source: str, target: str) -> None:
    expected = f"{source} cannot be turned into {target}: they do not measure the same kind of thing"
    with pytest.raises(UnitError) as refused:
        factor(source, target)
    assert str(refused.value) == expected


@pytest.mark.parametrize(
    ("source", "target", "by"),
    [
        ("in", "ft", Fraction(1, 12)),
        ("in", "mm", Fraction(127, 5)),
        ("lb", "N", Fraction("0.45359237") * Fraction("9.80665")),
        ("kN/m^3", "lb/ft^3", 1000 / (Fraction("0.45359237") * Fraction("9.80665")) * Fraction("0.3048") ** 3),
        ("lb-ft", "kip-in", Fraction(12, 1000)),
        ("%", "1", Fraction(1, 100)),
    ],
)
def test_an_exact_factor_is_a_fraction(source: str, target: str, by: Fraction) -> None:
    assert exact_factor(source, target) == by
    assert exact_factor(target, source) == 1 / by
    assert factor(source, target) == float(by)


def test_a_root_has_no_exact_factor() -> None:
    with pytest.raises(UnitError, match=r"^psi\^0\.5 has no exact factor to lb\^0\.5/in: roots have none$"):
        exact_factor("psi^0.5", "lb^0.5/in")
    with pytest.raises(UnitError, match=r"^lb cannot be turned into in: they do not measure the same kind of thing$"):
        exact_factor("lb", "in")
