"""How the program refuses: numbered lines, never more than fifty, and one small tree of errors."""

from __future__ import annotations

import pytest

from groundsill.working import errors
from groundsill.working.errors import BadSurvey, Fault, GroundsillError, numbered


def faults(count: int) -> tuple[Fault, ...]:
    return tuple(Fault(f"survey.underfloor.lines.l{n}.mark", f"{n}", "a mark of its own") for n in range(1, count + 1))


def test_a_fault_names_field_value_and_what_is_allowed() -> None:
    line = Fault("survey.site.hazard.S_S", "-1", "0 to 4 g").line()
    assert line == "survey.site.hazard.S_S: -1 is not allowed; 0 to 4 g"


@pytest.mark.parametrize("count", [0, 1, 49, 50])
def test_up_to_fifty_faults_have_a_line_each(count: int) -> None:
    lines = numbered(faults(count))
    assert len(lines) == count
    assert [line.split(". ")[0] for line in lines] == [str(n) for n in range(1, count + 1)]


@pytest.mark.parametrize(("count", "rest"), [(51, 1), (60, 10), (5050, 5000)])
def test_beyond_fifty_comes_a_count(count: int, rest: int) -> None:
    lines = numbered(faults(count))
    assert len(lines) == 51
    assert lines[49] == "50. survey.underfloor.lines.l50.mark: 50 is not allowed; a mark of its own"
    assert lines[50] == f"... and {rest} more"


def test_a_bad_survey_carries_every_fault_and_reads_as_the_list() -> None:
    refused = BadSurvey(faults(70))
    assert len(refused.faults) == 70
    assert str(refused).splitlines() == list(numbered(faults(70)))


def test_every_refusal_is_one_small_tree() -> None:
    children = [getattr(errors, name) for name in errors.__all__ if isinstance(getattr(errors, name), type)]
    refusals = [child for child in children if issubclass(child, Exception)]
    assert {child.__name__ for child in refusals} == {
        "BadSurvey", "CannotWrite", "GroundsillError", "NoDesign", "OutsideLimits", "UnitError", "UnknownFormula",
    }  # fmt: skip
    assert all(child is GroundsillError or child.__bases__ == (GroundsillError,) for child in refusals)
    assert all((child.__doc__ or "").strip() for child in refusals)
