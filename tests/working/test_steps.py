"""Arithmetic between equations: the same sums with and without a sheet, in one unit, with every doubt handed on."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from groundsill.working.errors import OutsideLimits, UnitError
from groundsill.working.sheet import Sheet
from groundsill.working.steps import (
    add,
    condition,
    convert,
    divide,
    greatest,
    least,
    multiply,
    note,
    product_unit,
    scale,
    subtract,
)
from groundsill.working.steps import given as recorded
from groundsill.working.value import Mark, Value, marks_of

GUESS = Mark("estimated", "dead load")
RECALLED = Mark("from memory", "Rules 1 Table 2: elm, 1")

SUMS: dict[str, tuple[Callable[[], float], float, str, str]] = {
    "add": (lambda: add(dead(), live(), symbol="w"), 0.1 + 0.2, "lb", "+"),
    "subtract": (lambda: subtract(live(), dead(), symbol="w"), 0.2 - 0.1, "lb", "-"),
    "multiply": (lambda: multiply(dead(), arm(), symbol="M", unit="lb-ft"), 0.1 * 3.0, "lb-ft", "*"),
    "divide": (lambda: divide(dead(), arm(), symbol="w", unit="plf"), 0.1 / 3.0, "plf", "/"),
    "scale": (lambda: scale(dead(), 0.7, symbol="w"), 0.1 * 0.7, "lb", "*"),
    "least": (lambda: least(dead(), live(), symbol="w"), 0.1, "lb", "min"),
    "greatest": (lambda: greatest(dead(), live(), symbol="w"), 0.2, "lb", "max"),
}


def dead() -> float:
    return recorded("D", 0.1, "lb", "dead load", [GUESS])


def live() -> float:
    return recorded("L", 0.2, "lb", "live load", [RECALLED])


def arm() -> float:
    return recorded("h", 3.0, "ft", "height")


@pytest.mark.parametrize("name", SUMS)
def test_a_sum_is_the_same_float_with_and_without_a_sheet(name: str) -> None:
    work, expected, in_unit, sign = SUMS[name]
    bare = work()
    with Sheet() as sheet:
        value = work()
    assert type(bare) is float
    assert bare.hex() == float(value).hex() == expected.hex()
    assert isinstance(value, Value)
    assert (value.unit, value.step, sheet.steps[-1].maker) == (in_unit, sheet.steps[-1], sign)


@pytest.mark.parametrize("name", SUMS)
def test_a_sum_carries_the_doubts_of_all_its_terms(name: str) -> None:
    work = SUMS[name][0]
    with Sheet() as sheet:
        value = work()
    wanted = {GUESS} if name in ("multiply", "divide", "scale") else {GUESS, RECALLED}
    assert marks_of([value]) == wanted == sheet.steps[-1].marks


def test_terms_are_added_from_left_to_right_as_a_reader_would() -> None:
    terms = (0.1, 0.2, 0.3, 1e16, -1e16)
    assert add(*terms, symbol="x") == (((0.1 + 0.2) + 0.3) + 1e16) - 1e16
    assert subtract(1e16, 0.1, 0.2, symbol="x") == (1e16 - 0.1) - 0.2


def test_a_figure_from_the_survey_keeps_where_it_came_from() -> None:
    assert type(recorded("D", 5, "in", "survey")) is float
    with Sheet() as sheet:
        value = recorded("D", 5, "in", "survey: bolt A1", [GUESS])
        again = recorded("D_2", value, "in", "the same bolt", [RECALLED])
    assert (value, value.unit, value.symbol, value.marks) == (5.0, "in", "D", {GUESS})  # type: ignore[attr-defined]
    assert marks_of([again]) == {GUESS, RECALLED}
    assert (sheet.steps[0].kind, sheet.steps[0].title) == ("given", "survey: bolt A1")


@pytest.mark.parametrize(
    "work", [lambda a, b: add(a, b, symbol="x"), lambda a, b: subtract(a, b, symbol="x"),
             lambda a, b: least(a, b, symbol="x"), lambda a, b: greatest(a, b, symbol="x")],
)  # fmt: skip
def test_feet_are_not_added_to_inches(work: Callable[[float, float], float]) -> None:
    with Sheet() as sheet:
        b, h = recorded("b", 5.5, "in", "survey"), recorded("h", 4.0, "ft", "survey")
        with pytest.raises(UnitError, match=r"^b in in and h in ft cannot be added$"):
            work(b, h)
    assert len(sheet.steps) == 2


def test_the_third_term_is_held_to_the_first() -> None:
    with Sheet(), pytest.raises(UnitError, match=r"^D in lb and h in ft cannot be added$"):
        add(dead(), 1.0, arm(), symbol="x")


def test_plain_numbers_take_over_the_unit_of_the_recorded_ones() -> None:
    with Sheet():
        assert greatest(0.0, dead(), symbol="x").unit == "lb"  # type: ignore[attr-defined]
        assert add(1.0, 2.0, symbol="x").unit == "1"  # type: ignore[attr-defined]
        assert add(recorded("a", 1.0, "psi", ""), recorded("b", 1.0, "lb/in^2", ""), symbol="x").unit == "psi"  # type: ignore[attr-defined]


def test_a_product_must_be_in_the_unit_it_is_said_to_be() -> None:
    with Sheet():
        with pytest.raises(UnitError, match=r"^lb\*ft is not lb-in$"):
            multiply(dead(), arm(), symbol="M", unit="lb-in")
        with pytest.raises(UnitError, match=r"^lb\*ft\*ft is not lb-ft$"):
            multiply(dead(), arm(), arm(), symbol="M", unit="lb-ft")
        with pytest.raises(UnitError, match=r"^lb/ft is not psf$"):
            divide(dead(), arm(), symbol="w", unit="psf")
        assert multiply(recorded("w", 10.0, "psf", ""), arm(), arm(), symbol="W", unit="lb") == 90.0


def test_units_of_a_product_in_words() -> None:
    with Sheet():
        assert product_unit((dead(), arm())) == "lb*ft"
        assert product_unit((dead(), 2.0), quotient=True) == "lb/1"


def test_a_value_is_read_in_another_unit() -> None:
    assert convert(30.0, "in", "ft") == 30.0 * (1 / 12)
    with Sheet() as sheet:
        h = recorded("h", 30.0, "in", "survey", [GUESS])
        feet = convert(h, "in", "ft")
        bare = convert(30.0, "in", "ft")
    assert (feet, feet.unit, feet.symbol, feet.marks) == (30.0 * (1 / 12), "ft", "h", {GUESS})  # type: ignore[attr-defined]
    assert type(bare) is float
    assert [step.kind for step in sheet.steps] == ["given", "convert"]


def test_a_value_is_not_converted_out_of_a_unit_it_is_not_in() -> None:
    with Sheet(), pytest.raises(UnitError, match=r"^h is in ft, not in in$"):
        convert(arm(), "in", "ft")
    with pytest.raises(UnitError, match=r"^lb cannot be turned into ft: they do not measure the same kind of thing$"):
        convert(1.0, "lb", "ft")


def test_notes_and_conditions_need_no_sheet() -> None:
    note("nothing to write on")
    assert condition("edge at least 1.75 in.", True) is True
    assert condition("washer seen", None) is None


def test_a_condition_is_handed_back_and_carries_the_doubts_of_its_numbers() -> None:
    with Sheet() as sheet:
        assert condition("light enough", False, dead(), 5.0, cite="Rules 1 4.2") is False
    step = sheet.steps[-1]
    assert (step.kind, step.title, step.cite, step.maker, step.marks, step.result) == (
        "condition", "light enough", "Rules 1 4.2", False, {GUESS}, None,
    )  # fmt: skip
    assert step.inputs == (("D", 0.1), ("", 5.0))


def test_nothing_is_divided_by_zero() -> None:
    with pytest.raises(OutsideLimits, match=r"^w: no value, as it is divided by zero$"):
        divide(dead(), 0.0, symbol="w", unit="plf")
    with Sheet() as sheet, pytest.raises(OutsideLimits, match=r"^w: no value, as it is divided by zero \(per foot\)$"):
        divide(dead(), recorded("h", -0.0, "ft", "height"), symbol="w", unit="plf", label="per foot")
    assert [step.kind for step in sheet.steps] == ["given", "given"]


def test_a_value_is_scaled_by_a_pure_number_only() -> None:
    with Sheet():
        assert scale(dead(), recorded("r", 2.0, "1", "share"), symbol="D'") == 0.2
        with pytest.raises(UnitError, match=r"^M: scaled by Value\(h = 3\.0 ft\), which is not a pure number$"):
            scale(dead(), arm(), symbol="M")
        with pytest.raises(UnitError, match=r"which is not a pure number$"):
            scale(dead(), recorded("r", 75.0, "%", "share"), symbol="D'")


def test_a_sum_of_nothing_is_zero_in_the_unit_it_is_asked_for() -> None:
    assert add(symbol="W", unit="lb") == 0.0
    with Sheet() as sheet:
        nothing = add(symbol="W", label="no storey above", unit="lb")
        assert add(nothing, dead(), symbol="W").unit == "lb"  # type: ignore[attr-defined]
        assert add(2.0, symbol="W", unit="lb").unit == "lb"  # type: ignore[attr-defined]
    assert (nothing, nothing.unit, sheet.steps[0].inputs) == (0.0, "lb", ())  # type: ignore[attr-defined]


def test_a_sum_must_be_in_the_unit_it_is_asked_for() -> None:
    with Sheet():
        assert add(recorded("f", 1.0, "lb/in^2", ""), symbol="p", unit="psi").unit == "psi"  # type: ignore[attr-defined]
        with pytest.raises(UnitError, match=r"^a sum in kip and D in lb cannot be added$"):
            add(dead(), symbol="W", unit="kip")
