"""A recorded number compares and prints like a float, refuses arithmetic in passing, and hands on its doubts."""

from __future__ import annotations

import copy
import math
import operator
import pickle
from collections.abc import Callable
from dataclasses import asdict, dataclass

import pytest

from groundsill.working.sheet import Sheet
from groundsill.working.steps import given as recorded
from groundsill.working.value import Mark, UnrecordedArithmetic, Value, marks_of, plain
from tests.working.rules import pressure

DOUBT = Mark("from memory", "Rules 1 Table 2: elm, 1")
BOLT = Value(0.5, "in", "D", None, frozenset({DOUBT}))
PLATE = Value(2.0, "in", "l_s")

TWO_SIDED: dict[str, Callable[[float, float], object]] = {
    "+": operator.add, "-": operator.sub, "*": operator.mul, "/": operator.truediv, "//": operator.floordiv,
    "%": operator.mod, "**": operator.pow, "divmod": divmod, "+=": operator.iadd, "-=": operator.isub,
    "*=": operator.imul, "/=": operator.itruediv,
}  # fmt: skip
REFUSAL = (
    r"^D = 0\.5 in is a recorded value: use add, multiply, least \.\.\. of groundsill\.working\.steps, so that the sum "
    r"stands in the working$"
)


@pytest.mark.parametrize("sign", TWO_SIDED)
def test_no_sum_is_done_in_passing(sign: str) -> None:
    for left, right in ((BOLT, 3.0), (3.0, BOLT), (BOLT, 3), (3, BOLT), (BOLT, BOLT)):
        with pytest.raises(UnrecordedArithmetic, match=REFUSAL):
            TWO_SIDED[sign](left, right)


@pytest.mark.parametrize("turn", [operator.neg, operator.pos, abs])
def test_no_sign_is_turned_in_passing(turn: Callable[[float], float]) -> None:
    with pytest.raises(UnrecordedArithmetic, match=REFUSAL):
        turn(BOLT)


def test_the_builtin_sum_is_refused_too() -> None:
    with pytest.raises(UnrecordedArithmetic, match=r"D = 0\.5 in is a recorded value"):
        sum([BOLT, BOLT])


def test_the_refusal_is_a_type_error_since_it_is_the_programs_own_fault() -> None:
    assert issubclass(UnrecordedArithmetic, TypeError)


def test_it_compares_like_the_number_it_is() -> None:
    assert BOLT == 0.5
    assert 0.25 < BOLT <= PLATE
    assert BOLT != PLATE
    assert max(BOLT, PLATE) is PLATE
    assert sorted([PLATE, BOLT, 1.0]) == [0.5, 1.0, 2.0]
    assert hash(BOLT) == hash(0.5)
    assert math.isfinite(BOLT)
    assert bool(BOLT)
    assert not Value(0.0, "in", "x")


def test_float_makes_a_plain_number_of_it() -> None:
    for bare in (float(BOLT), plain(BOLT)):
        assert type(bare) is float
        assert bare + 1 == 1.5
    assert plain(3) == 3.0


def test_it_is_formatted_like_a_float_and_shown_with_symbol_and_unit() -> None:
    assert f"{BOLT:.3f} {BOLT:g} {BOLT:8.2e}|" == "0.500 0.5 5.00e-01|"
    assert repr(BOLT) == str(BOLT) == "Value(D = 0.5 in)"


def test_it_holds_every_digit() -> None:
    third = Value(1 / 3, "1", "x")
    assert float(third).hex() == (1 / 3).hex()
    assert repr(third) == f"Value(x = {1 / 3!r} 1)"


def test_the_same_value_goes_on_under_another_symbol() -> None:
    renamed = BOLT.renamed("d_a")
    assert (renamed, renamed.unit, renamed.symbol, renamed.marks, renamed.step) == (0.5, "in", "d_a", BOLT.marks, None)
    assert BOLT.symbol == "D"


def test_marks_of_many_numbers_are_all_their_marks_once() -> None:
    estimated = Mark("estimated", "thickness (K1)")
    other = Value(1.0, "in", "x", None, frozenset({estimated, DOUBT}))
    assert marks_of([BOLT, 3.0, "words", None, other, PLATE]) == {DOUBT, estimated}
    assert marks_of([]) == frozenset()
    assert marks_of([1.0, PLATE]) == frozenset()


def test_a_mark_says_its_kind_in_words() -> None:
    assert DOUBT.text() == "from memory, to be confirmed: Rules 1 Table 2: elm, 1"
    assert Mark("assumed range", "concrete (F1)").text() == "assumed range: concrete (F1)"
    assert sorted([Mark("unverified", "b"), Mark("estimated", "z"), Mark("estimated", "a")]) == [
        Mark("estimated", "a"), Mark("estimated", "z"), Mark("unverified", "b"),
    ]  # fmt: skip


def test_a_copy_is_the_same_figure_with_all_that_led_to_it() -> None:
    with Sheet() as sheet:
        answer = pressure(1100.0, recorded("b", 2.0, "in", "survey", [DOUBT]))
    for value in (BOLT, answer):
        assert isinstance(value, Value)
        assert copy.deepcopy(value) is value
        for twin in (copy.copy(value), pickle.loads(pickle.dumps(value))):
            assert (twin, twin.unit, twin.symbol, twin.marks) == (value, value.unit, value.symbol, value.marks)
    step = pickle.loads(pickle.dumps(answer)).step
    assert (step.id, step.maker, dict(step.inputs)) == ("rules-1/1", pressure, {"P": 1100.0, "b": 2.0, "d": 5.5})
    assert step.lines == sheet.steps[-1].lines


def test_a_record_that_holds_a_value_is_taken_apart_like_any_other() -> None:
    @dataclass(frozen=True)
    class Bolt:
        diameter: float

    assert asdict(Bolt(BOLT))["diameter"] is BOLT
