"""Laws of what is typed and shown: whatever the person does, a number comes back whole or not at all."""

from __future__ import annotations

import math
import re
from fractions import Fraction

import pytest
from hypothesis import assume, event, given, settings
from hypothesis import strategies as st

from groundsill.working.errors import OutsideLimits
from groundsill.working.measure import KINDS, MeasureError, read, show
from groundsill.working.measure_show import turned

SIXTEENTHS = st.integers(-16 * 12 * 5000, 16 * 12 * 5000)
LENGTHS_IN = st.floats(-1e6, 1e6)
KIND = st.sampled_from(list(KINDS))
UNITS = {kind: [u for u in facts.units if u != "1"] for kind, facts in KINDS.items()}
LINEAR = [(kind, unit) for kind, units in UNITS.items() for unit in units if kind != "slope"]

# Pieces people do type, shuffled: far likelier to be nearly right than random characters.
PIECES = st.sampled_from(list("01234567890123456789 -'\"/.,:½″′%°+ehv")) | st.sampled_from(
    ["ft", "in", " in ", "mm", "m", "lb", "kN", "psf", "sq ", "1/2", " 1/2", "'-", "''", " per ", "/ft", "^2", "²"]
)
NEARLY = st.lists(PIECES, max_size=9).map("".join)
GOOD = st.sampled_from(
    ["7'-6 1/2\"", "7 ft 6 in", "90 in", "2.3 m", "2,300 mm", "4:12", "4 in 12", "2H:1V", "1/4 in per ft"]
)
GOOD |= st.sampled_from(
    ["1,040 lb", "2.5 kips", "260 plf", "3.8 kN/m", "25 lb/sq ft", "17 MPa", "150 pcf", "30°", "75%"]
)


@st.composite
def slips(draw: st.DrawFn) -> str:
    """A good measure with one slip of the thumb: a piece put in, or put over what stood there."""
    text, piece = draw(GOOD), draw(PIECES | st.just(""))
    at = draw(st.integers(0, len(text)))
    return text[:at] + piece + text[at + draw(st.integers(0, 2)) :]


JUNK = st.text(max_size=80) | NEARLY | slips() | st.text(alphabet="0123456789/.,'\"- ftinmkNlb", max_size=12)


@given(SIXTEENTHS)
@settings(max_examples=400)
def test_sixteenths_come_back_exactly(n):
    length_in = n / 16
    for style in ("ft-in", "in"):
        assert read(show(length_in, "length", "in", style=style), "length", "in").exact == Fraction(n, 16)


@given(st.integers(-(10**6), 10**6), st.sampled_from([1, 2, 4, 8, 16, 32, 64]))
def test_every_division_of_the_inch_comes_back_exactly(n, to):
    assert read(show(n / to, "length", "in", to=to), "length", "in").exact == Fraction(n, to)


@given(LENGTHS_IN, st.sampled_from([1, 2, 4, 8, 16, 32, 64]))
def test_feet_and_inches_are_never_off_by_more_than_half_a_division(length_in, to):
    back = read(show(length_in, "length", "in", to=to), "length", "in").exact
    assert back is not None
    assert abs(back - Fraction(length_in)) <= Fraction(1, 2 * to)


@given(st.floats(-1e5, 1e5), st.sampled_from(LINEAR))
def test_decimals_are_never_off_by_more_than_half_the_last_digit_shown(number, kind_and_unit):
    kind, unit = kind_and_unit
    number = number if KINDS[kind].signed else abs(number)
    style = "decimal-in" if unit == "in" else unit
    text = show(number, kind, unit, style=style)
    figures = text.split(" ")[0].rstrip("%°")
    digits = len(figures.partition(".")[2])
    back = read(text, kind, unit).exact
    assert back is not None
    assert abs(back - Fraction(number)) <= Fraction(1, 2 * 10**digits)


@given(LENGTHS_IN)
def test_below_zero_is_the_mirror_of_above(length_in):
    for style in ("ft-in", "in", "ft", "m", "mm"):
        above, below = (show(sign * abs(length_in), "length", "in", style=style) for sign in (1, -1))
        is_nothing = not any(c in "123456789" for c in above.replace("1/1", ""))
        assert below == (above if is_nothing else f"-{above}")


@given(JUNK, st.booleans())
@settings(max_examples=1000)
def test_any_text_reads_or_is_refused_in_words_and_what_reads_reads_again(text, field_says):
    for kind, facts in KINDS.items():
        unit = facts.units[0]
        bare = unit if field_says else None
        measure, refusal = None, ""
        try:
            measure = read(text, kind, unit, bare)
        except MeasureError as error:
            refusal = str(error)
        if measure is None:
            assert refusal.startswith("cannot read [")
            assert refusal.isprintable()
            continue
        event(f"read as {kind}")
        again = read(measure.understood, kind, unit, bare)
        assert (again.number, again.exact, again.echo) == (measure.number, measure.exact, measure.echo)
        assert measure.typed == text
        assert abs(measure.number) <= 1e9


@given(JUNK)
@settings(max_examples=500)
def test_a_number_without_any_unit_is_never_read_where_the_field_states_none(text):
    bald = "".join(c for c in text if c in "0123456789/., -")
    with pytest.raises(MeasureError):
        read(bald, "length", "in")


@given(
    SIXTEENTHS,
    st.sampled_from(["ft-in", "in", "decimal-in", "ft", "m", "cm", "mm"]),
    st.sampled_from(
        ["!", ";", "?", "*", "=", "~", "xyz", " 3", "-", "..", "'", '"', " 1/2", "/", " of", ",5", "½", "%"]
    ),
)
def test_nothing_may_trail_a_whole_measure(n, style, trailing):
    text = show(n / 16, "length", "in", style=style)
    with pytest.raises(MeasureError):
        read(text + trailing, "length", "in")


@given(
    st.integers(0, 10**6), st.sampled_from(LINEAR), st.sampled_from(["!", ";", " 3", "-", " x", ",", "%%", "(", " lb/"])
)
def test_nothing_may_trail_any_other_kind_either(n, kind_and_unit, trailing):
    kind, unit = kind_and_unit
    assume((unit, trailing) != ("ft", " 3"))  # 7 ft 3 is seven feet three
    read(f"{n} {unit}", kind, unit)
    with pytest.raises(MeasureError):
        read(f"{n} {unit}{trailing}", kind, unit)


@given(st.integers(0, 10**9), st.integers(1, 10**9), st.sampled_from(LINEAR))
def test_more_typed_is_more_kept(less, step, kind_and_unit):
    kind, unit = kind_and_unit
    first, second = (read(f"{n // 10000}.{n % 10000:04d} {unit}", kind, unit) for n in (less, less + step))
    assert first.exact is not None
    assert second.exact is not None
    assert first.exact < second.exact
    assert first.number <= second.number


@given(st.integers(0, 5000), st.integers(0, 11), st.integers(0, 15), st.integers(1, 3))
def test_feet_inches_and_sixteenths_add_up_whatever_the_spelling(feet, inches, parts, spaces):
    expected = feet * 12 + inches + Fraction(parts, 16)
    gap = " " * spaces
    fraction = f" {parts}/16" if parts else ""
    for text in (
        f"{feet}'-{inches}{fraction}\"",
        f"{feet}'{gap}{inches}{fraction}\"",
        f"{feet}′{inches}{fraction}″",
        f"{feet}’-{inches}{fraction.replace(' ', '-')}”",
        f"{feet} ft{gap}{inches}{fraction} in",
        f"{feet} FEET {inches}{fraction} Inches",
        f"{feet}'{inches}{fraction}",
        f"{gap}{feet}\u00a0ft.\u2009{inches}{fraction.replace(' ', chr(0x202F))} in.{gap}",
    ):
        assert read(text, "length", "in").exact == expected, text


@given(st.integers(0, 5000), st.integers(12, 5000))
def test_a_foot_or_more_of_inches_after_feet_is_a_slip(feet, inches):
    with pytest.raises(MeasureError, match=r"inches after feet must be under 12, not "):
        read(f"{feet}'-{inches}\"", "length", "in")


@given(st.fractions(-(10**6), 10**6), st.sampled_from(LINEAR), st.data())
def test_there_and_back_between_units_loses_nothing(value, kind_and_unit, data):
    kind, unit = kind_and_unit
    other = data.draw(st.sampled_from(UNITS[kind]))
    away, is_exact = turned(value, kind, unit, other)
    assert is_exact
    assert turned(away, kind, other, unit) == (value, True)


@given(st.floats(-89.9, 89.9))
def test_slope_to_degrees_and_back(degrees):
    rise, is_exact = turned(Fraction(degrees), "slope", "deg", "1")
    assert not is_exact
    assert float(turned(rise, "slope", "1", "deg")[0]) == pytest.approx(degrees, rel=1e-12, abs=1e-12)


@given(st.integers(1, 10**6), st.integers(1, 10**6))
def test_rise_and_run_are_read_one_way_only(rise, run):
    text = f"{rise}:{run}"
    if rise <= run or run == 12:
        assert read(text, "slope", "1").exact == Fraction(rise, run)
    else:
        with pytest.raises(MeasureError, match=rf"write {rise}V:{run}H or {rise}H:{run}V"):
            read(text, "slope", "1")
    assert read(f"{rise}V:{run}H", "slope", "1").exact == read(f"{run}H:{rise}V", "slope", "1").exact


# Up to two in one: steeper, a tenth of a degree is no longer a small thing.
@given(st.floats(-2, 2), st.sampled_from(["x:12", "1:n", "%", "deg"]))
def test_every_slope_shown_can_be_typed_again(rise, style):
    again = read(show(rise, "slope", "1", style=style), "slope", "1").number
    assert again == pytest.approx(rise, rel=0.006, abs=0.002)


@given(st.floats(allow_nan=True, allow_infinity=True), KIND, st.sampled_from(["us", "si"]))
def test_any_float_is_shown_or_refused_in_words(number, kind, system):
    unit = KINDS[kind].units[0]
    if not math.isfinite(number):
        with pytest.raises(OutsideLimits, match="it is not a finite number"):
            show(number, kind, unit, system)
        return
    text = show(number, kind, unit, system)
    assert any(c.isdigit() for c in text)
    assert not re.fullmatch(r"-[0.]+[^0-9.]*", text), "minus zero"
