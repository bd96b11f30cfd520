"""One published equation, one small function: limits by name, units on the sheet, doubts that travel."""

from __future__ import annotations

import copy
import math
import pickle
import threading
from typing import Any

import pytest

from groundsill.working.equation import Q
from groundsill.working.errors import OutsideLimits, UnitError
from groundsill.working.sheet import Sheet
from groundsill.working.source import Source
from groundsill.working.steps import given as recorded
from groundsill.working.value import Mark, Value, marks_of
from tests.working.rules import (
    RULES,
    both,
    one_over,
    pressure,
    recalled,
    root,
    rule_from,
    rules_from,
    slender,
    tenth_power,
    unwitnessed,
    worse_post,
)

MEMORY = Mark("from memory", "Rules 1 1.2, the equation")
NO_WITNESS = Mark("unverified", "Rules 1 1.3: no published value to check it by")


def said(refused: pytest.ExceptionInfo[BaseException]) -> str:
    return str(refused.value)


# --- calls -----------------------------------------------------------------------------------------------------------


def test_it_is_called_like_the_function_it_is() -> None:
    assert pressure(1100.0, 2.0, 5.5) == 100.0
    assert pressure(b=2.0, d=5.5, P=1100.0) == 100.0
    assert pressure(1100.0, d=5.5, b=2.0) == 100.0
    assert pressure(1100, 2) == 100.0  # the depth has a default


def test_the_same_calls_on_a_sheet() -> None:
    with Sheet() as sheet:
        answers = [pressure(1100.0, 2.0, 5.5), pressure(b=2.0, d=5.5, P=1100.0), pressure(1100, 2)]
    assert answers == [100.0, 100.0, 100.0]
    assert [dict(step.inputs) for step in sheet.steps] == [{"P": 1100.0, "b": 2.0, "d": 5.5}] * 3


def test_without_a_sheet_the_answer_is_a_bare_float() -> None:
    assert type(pressure(1100.0, 2.0)) is float


def test_on_a_sheet_the_answer_says_what_it_is_and_which_step_made_it() -> None:
    with Sheet() as sheet:
        answer = pressure(1100.0, 2.0)
    assert isinstance(answer, Value)
    assert (answer.symbol, answer.unit, answer.step) == ("f_c", "psi", sheet.steps[0])
    step = sheet.steps[0]
    assert (step.kind, step.id, step.title, step.cite) == (
        "equation",
        "rules-1/1",
        "Pressure under a post",
        "Rules 1 1.1",
    )
    assert step.result == answer


def test_it_keeps_the_name_and_the_specification_of_its_function() -> None:
    assert (pressure.__name__, pressure.__doc__, pressure.__module__) == (
        "pressure", "Force over area.", "tests.working.rules",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("args", "kwargs", "words"),
    [
        ((1100.0,), {}, r"missing 1 required positional argument: 'b'"),
        ((1100.0, 2.0), {"depth": 5.5}, r"got an unexpected keyword argument 'depth'"),
        ((1100.0, 2.0, 5.5, 99.0), {}, r"takes from 2 to 3 positional arguments but 4 were given"),
        ((1100.0, 2.0), {"b": 3.0}, r"got multiple values for argument 'b'"),
    ],
)
def test_a_call_that_does_not_fit_is_refused_alike_with_and_without_a_sheet(
    args: tuple[float, ...], kwargs: dict[str, float], words: str
) -> None:
    with pytest.raises(TypeError, match=rf"^rules-1/1\(\) {words}$"):
        pressure(*args, **kwargs)
    with Sheet() as sheet, pytest.raises(TypeError, match=rf"^rules-1/1\(\) {words}$"):
        pressure(*args, **kwargs)
    assert sheet.steps == []


def test_an_equation_may_have_no_arguments() -> None:
    rule: Any = rule_from("return 1500.0", "", "psi", '{1500: "psi"}')
    assert rule() == 1500.0
    with Sheet() as sheet:
        assert rule() == 1500.0
    assert (sheet.steps[0].inputs, sheet.steps[0].result) == ((), 1500.0)


def test_the_body_sees_plain_floats_whatever_is_put_in() -> None:
    seven: Any = rule_from("return n ** 20 - (n ** 20 - 1)", "n 1")
    assert seven(7) == seven(7.0) == 0.0  # whole numbers would give 1
    with Sheet():
        assert seven(7) == 0.0


def test_a_recorded_figure_may_be_put_in_after_its_sheet_is_closed() -> None:
    with Sheet():
        b = recorded("b", 2.0, "in", "survey")
    answer = pressure(1100.0, b)
    assert (answer, type(answer)) == (100.0, float)
    least: Any = rule_from("return min(a, b)", "a in, b in", "in")
    assert type(least(b, 3.0)) is float


@pytest.mark.parametrize("rule", [pressure, worse_post])
def test_a_formula_is_copied_and_pickled_by_its_name(rule: Any) -> None:
    pressure(1100.0, 2.0)
    assert copy.deepcopy(rule) is rule
    assert pickle.loads(pickle.dumps(rule)) is rule


def test_arguments_and_result_say_what_they_are() -> None:
    assert [(name, q.unit, q.symbol, q.what, q.limits()) for name, q in pressure.arguments] == [
        ("P", "lb", "P", "force on the post", "at least 0 and at most 100000 lb"),
        ("b", "in", "b", "width", "above 0 and below 48 in"),
        ("d", "in", "d", "depth", "above 0 in"),
    ]
    assert (pressure.result.unit, pressure.result.symbol) == ("psi", "f_c")


def test_limits_in_words() -> None:
    assert Q("1", "r", "").limits() == ""
    assert Q("1", "r", "", at_least=0.5).limits() == "at least 0.5"
    assert Q("in", "s", "", above=0.0, at_most=6.0).limits() == "above 0 and at most 6 in"


def test_an_argument_without_a_unit_is_refused_by_name() -> None:
    module = rules_from(
        '@equation("rules-1/x", title="x", clause="1", source=RULES)\n'
        'def made(a: float, b: Annotated[float, Q("in", "b", "b")], c: float) -> Annotated[float, Q("in", "y", "y")]:\n'
        "    return a * b * c\n"
    )
    with pytest.raises(UnitError, match=r"^rules-1/x: a, c declares no unit and symbol$"):
        module.made(1.0, 2.0, 3.0)


def test_an_answer_without_a_unit_is_refused() -> None:
    module = rules_from(
        '@equation("rules-1/x", title="x", clause="1", source=RULES)\n'
        'def made(b: Annotated[float, Q("in", "b", "b")]) -> float:\n'
        "    return b\n"
    )
    with pytest.raises(UnitError, match=r"^rules-1/x: return declares no unit and symbol$"):
        module.made(1.0)


def test_a_source_cites_clause_and_edition() -> None:
    assert RULES.cite("Table 3") == "Rules 1 Table 3"
    old = Source("rules-0", "Rules 0", "An older rule book", "these tests", "0", superseded_by="rules-1")
    assert old.superseded_by == RULES.id


# --- limits ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("numbers", "words"),
    [
        ((-1.0, 2.0), "Rules 1 1.1: P (force on the post) = -1 lb; must be at least 0 and at most 100000 lb"),
        ((100001.0, 2.0), "Rules 1 1.1: P (force on the post) = 100001 lb; must be at least 0 and at most 100000 lb"),
        ((1.0, 0.0), "Rules 1 1.1: b (width) = 0 in; must be above 0 and below 48 in"),
        ((1.0, 48.0), "Rules 1 1.1: b (width) = 48 in; must be above 0 and below 48 in"),
        ((1.0, 2.0, -0.5), "Rules 1 1.1: d (depth) = -0.5 in; must be above 0 in"),
        ((math.nan, 2.0), "Rules 1 1.1: P (force on the post) = nan lb; must be at least 0 and at most 100000 lb"),
        ((1.0, math.nan), "Rules 1 1.1: b (width) = nan in; must be above 0 and below 48 in"),
        ((1.0, 2.0, math.inf), "Rules 1 1.1: d (depth) = inf in; must be above 0 in"),
        ((math.inf, 2.0), "Rules 1 1.1: P (force on the post) = inf lb; must be at least 0 and at most 100000 lb"),
    ],
)
def test_outside_a_limit_symbol_value_limit_and_clause_are_named(numbers: tuple[float, ...], words: str) -> None:
    with pytest.raises(OutsideLimits) as refused:
        pressure(*numbers)
    assert said(refused) == words
    with Sheet() as sheet, pytest.raises(OutsideLimits) as refused:
        pressure(*numbers)
    assert said(refused) == words
    assert sheet.steps == []  # nothing is written down of a call that was refused


@pytest.mark.parametrize(("number", "shown"), [(math.nan, "nan"), (math.inf, "inf"), (-math.inf, "-inf")])
def test_where_any_number_may_stand_it_must_still_be_a_number(number: float, shown: str) -> None:
    with pytest.raises(OutsideLimits) as refused:
        one_over(number)
    assert said(refused) == f"Rules 1 1.5: r (any number) = {shown} 1; must be a finite number"


def test_the_limits_themselves_stand_where_the_words_say() -> None:
    assert pressure(0.0, 2.0) == 0.0
    assert pressure(100000.0, 2.0) == pytest.approx(100000 / 11)
    assert pressure(1.0, math.nextafter(48.0, 0.0)) > 0
    assert pressure(1.0, math.nextafter(0.0, 1.0), 1e300) > 0


def test_the_first_argument_outside_its_limits_is_the_one_named() -> None:
    with pytest.raises(OutsideLimits, match=r"P \(force on the post\) = -1 lb"):
        pressure(-1.0, -1.0)


@pytest.mark.parametrize(
    ("rule", "number", "words"),
    [
        (one_over, 0.0, "Rules 1 1.5: no value for r = 0 (float division by zero)"),
        (one_over, 1e-320, "Rules 1 1.5: no value for r = 9.99989e-321 (the answer is not a finite number)"),
        (tenth_power, 1e20, "Rules 1 1.6: no value for r = 1e+20 (the answer is not a finite number)"),
        (root, -4.0, "Rules 1 1.7: no value for r = -4 (math domain error)"),
    ],
)
def test_where_an_equation_has_no_value_it_says_for_what(rule: object, number: float, words: str) -> None:
    with pytest.raises(OutsideLimits) as refused:
        rule(number)  # type: ignore[operator]
    assert said(refused) == words


def test_an_overflow_inside_the_body_is_no_traceback() -> None:
    rule = rule_from("return exp(r)", "r 1")
    with pytest.raises(OutsideLimits, match=r"^Rules 1 9: no value for r = 1000 \(math range error\)$"):
        rule(1000.0)
    rule = rule_from("return r ** 400", "r 1")
    with pytest.raises(OutsideLimits, match=r"^Rules 1 9: no value for r = 10 \(.*Numerical result out of range.*\)$"):
        rule(10.0)


def test_a_limit_over_several_arguments_names_clause_and_demand() -> None:
    assert slender(10.0, 2.0) < 1
    with pytest.raises(OutsideLimits) as refused:
        slender(10.01, 2.0)
    assert said(refused) == "Rules 1 1.4: height no more than sixty times the width"


@pytest.mark.parametrize("body", ["return r ** 0.5", "return min(r ** 0.5, 2)", "return sqrt(r ** 0.5)"])
def test_a_root_of_less_than_zero_written_as_a_power_is_outside_the_limits(body: str) -> None:
    rule: Any = rule_from(body, "r 1")
    assert rule(1.0) == 1.0
    with pytest.raises(OutsideLimits) as refused:
        rule(-4.0)
    assert said(refused) == "Rules 1 9: no value for r = -4 (it gives no real number)"


# --- on a sheet ------------------------------------------------------------------------------------------------------


def test_a_figure_in_the_wrong_unit_is_refused_on_the_sheet() -> None:
    with Sheet() as sheet:
        width_ft = recorded("b", 0.5, "ft", "survey")
        with pytest.raises(UnitError) as refused:
            pressure(1100.0, width_ft)
    assert said(refused) == "Rules 1 1.1: b is asked for in in, given in ft (Value(b = 0.5 ft))"
    assert len(sheet.steps) == 1


def test_the_same_unit_spelt_otherwise_is_taken() -> None:
    with Sheet():
        assert recalled(recorded("P", 400.0, "psi*in^2", "a jack"), recorded("b", 2.0, "in", "survey")) == 100.0


def test_a_bare_number_is_taken_at_its_word() -> None:
    with Sheet() as sheet:
        pressure(1100.0, 2.0)
    assert not any(isinstance(v, Value) for _, v in sheet.steps[0].inputs)


def test_doubts_about_what_went_in_come_out() -> None:
    guess = Mark("estimated", "width (K1)")
    with Sheet() as sheet:
        b = recorded("b", 2.0, "in", "survey", [guess])
        answer = pressure(1100.0, b)
        apart = pressure(1100.0, 2.0)
    assert marks_of([answer]) == {guess} == sheet.steps[1].marks
    assert marks_of([apart]) == frozenset()


def test_an_equation_from_memory_marks_what_it_gives() -> None:
    with Sheet() as sheet:
        answer = recalled(400.0, 2.0)
    assert marks_of([answer]) == {MEMORY}
    assert sheet.steps[0].marks == {MEMORY}
    assert MEMORY.text() == "from memory, to be confirmed: Rules 1 1.2, the equation"


def test_an_equation_nobody_printed_a_value_of_says_so() -> None:
    with Sheet():
        assert marks_of([unwitnessed(400.0, 2.0)]) == {NO_WITNESS}


def test_a_doubt_travels_through_every_equation_after_it() -> None:
    with Sheet():
        once = recalled(400.0, 2.0)
        twice = one_over(Value(float(once), "1", "r", None, marks_of([once])))
        thrice = root(twice)
    assert marks_of([thrice]) == {MEMORY}


# --- procedures ------------------------------------------------------------------------------------------------------


def test_a_procedure_is_a_function_and_a_heading_on_the_sheet() -> None:
    assert worse_post(400.0, 2.0) == 2 * min(400 / 11, 100.0)
    with Sheet() as sheet:
        answer = worse_post(400.0, b=2.0, species="oak")
    assert answer == 400 / 11
    heading = sheet.steps[0]
    assert (heading.kind, heading.id, heading.title, heading.cite) == (
        "procedure", "rules-1/10", "Worse of two posts", "Rules 1 1.10",
    )  # fmt: skip
    assert heading.result is None
    assert heading.lines == ()


def test_a_doubt_inside_a_procedure_reaches_its_answer() -> None:
    with Sheet():
        assert marks_of([worse_post(400.0, 2.0)]) == {MEMORY}


def test_the_least_carries_the_doubts_of_what_did_not_govern() -> None:
    with Sheet():
        least = both(400.0, 2.0)
        assert least == pressure(400.0, 2.0)
        assert marks_of([least]) == {MEMORY}


def test_a_procedure_says_what_it_takes() -> None:
    assert [(name, q.unit, q.symbol) for name, q in worse_post.arguments] == [
        ("P", "lb", "P"), ("b", "in", "b"), ("species", "", "species"),
    ]  # fmt: skip
    assert (worse_post.alias, worse_post.cite, both.alias) == ("rules.posts", "Rules 1 1.10", "")


# --- threads ---------------------------------------------------------------------------------------------------------


def test_many_threads_may_make_an_equations_first_call_at_once() -> None:
    rule = rule_from("return a * b / 2", "a 1, b 1")
    start, answers = threading.Barrier(8), []

    def call() -> None:
        start.wait()
        answers.append(rule(3.0, 4.0))

    threads = [threading.Thread(target=call) for _ in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert answers == [6.0] * 8
