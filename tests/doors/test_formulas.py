"""Formulas at the door: what a person or a program gives is read whole, or every fault is told at once."""

from __future__ import annotations

import pytest

from groundsill.doors.expression_lines import expression_lines
from groundsill.doors.formulas import card, formula, list_formulas, status_of, told, work_out_typed
from groundsill.standards.catalogue import entries, find
from groundsill.working.equation import Equation
from groundsill.working.errors import BadSurvey, OutsideLimits, UnknownFormula


def test_numbers_and_typed_measures_mean_the_same() -> None:
    by_numbers = formula("nds.sill-bolt", D=0.625, l_s=1.5)
    by_words = formula("nds.sill-bolt", D="5/8 in", l_s="38.1 mm")
    assert by_numbers.value == pytest.approx(by_words.value, rel=1e-12)
    assert (by_numbers.unit, by_numbers.understood) == ("lb", {})
    assert by_words.understood == {"D": "5/8 in (15.88 mm)", "l_s": '38.1 mm (1 1/2")'}


def test_a_number_alone_takes_the_unit_its_argument_states() -> None:
    assert formula("nds-2018/12.3.1B-K-theta", theta="90").value == 1.25
    assert formula("asce7-16/12.8-7", h_n="12").value == formula("asce7-16/12.8-7", h_n="144 in").value
    assert formula("asce7-16/12.8-7", h_n="12").value == formula("asce7-16/12.8-7", h_n="3.6576 m").value


def test_a_unit_without_manners_of_its_own_is_read_plainly() -> None:
    assert formula("asce7-16/12.4-4a", S_DS="1.2 g", D="1 kip").value == pytest.approx(240.0)
    with pytest.raises(BadSurvey, match=r"S_DS: '1.2 m/s2' is not allowed; it takes a number in g"):
        formula("asce7-16/12.4-4a", S_DS="1.2 m/s2", D=1000)


def test_what_a_program_writes_is_a_number_too() -> None:
    assert formula("asce7-16/12.8-1", C_s="1.6e-1", W="1e5").value == pytest.approx(16000.0)


def test_an_unknown_fact_is_passed_on_as_unknown() -> None:
    known = {"S_DS": 1.0, "S_1": 0.4, "T": 0.12, "T_L": 6, "R": 6.5, "I_e": 1}
    assert formula("asce7.cs", **known, S_D1="unknown").value == formula("asce7.cs", **known, S_D1=None).value


def test_a_list_is_parted_by_commas() -> None:
    levels = formula("asce7.levels", V=10000, T=0.12, weights="28000,49000", heights="2.6, 11.1")
    forces = [r.value for r in levels.results if r.name.endswith("F_x")]
    assert sum(f for f in forces if isinstance(f, float)) == pytest.approx(10000)
    assert (
        formula("asce7.levels", V=10000, T=0.12, weights=[28000, 49000], heights=(2.6, 11.1)).results == levels.results
    )


def test_every_fault_is_told_in_one_list() -> None:
    with pytest.raises(BadSurvey) as refused:
        formula("nds.sill-bolt", D="half an inch", l_s="1 lb", theta="90 deg", oak=3)
    assert [fault.path.rpartition(": ")[2] for fault in refused.value.faults] == ["D", "l_s", "oak"]


def test_limits_and_unknown_names_are_refused_by_their_own_errors() -> None:
    with pytest.raises(OutsideLimits, match=r"D \(bolt diameter\) = 2 in; must be at least 0.25 and at most 1 in"):
        formula("nds.sill-bolt", D=2, l_s=1.5)
    with pytest.raises(UnknownFormula, match=r"is called 'nds\.sill-blot'; did you mean nds\.sill-bolt"):
        formula("nds.sill-blot", D=2)


def test_every_step_carries_its_clause_and_the_answer_its_marks() -> None:
    answer = told(work_out_typed("nds.sill-bolt-weak-concrete", {"D": "1/2in", "l_s": "1.5in", "f_c": "1000 psi"}))
    assert answer.value == pytest.approx(534, abs=1)
    assert {mark.kind for mark in answer.marks} >= {"extension"}
    equations = [step for step in answer.steps if step.kind == "equation"]
    assert equations
    assert all(step.cite and step.lines and step.value is not None for step in equations)
    assert any("goes beyond what a standard covers" in warning for warning in answer.warnings)


def test_the_list_is_grouped_by_document_and_counts_everything() -> None:
    everything = list_formulas()
    assert len(everything.formulas) == len(entries())
    documents = [line.document for line in everything.formulas]
    assert documents == sorted(documents)
    assert {d.id for d in everything.documents} <= set(documents)


@pytest.mark.parametrize("entry", entries(), ids=lambda e: e.id)
def test_every_entry_has_a_card_that_says_how_it_is_known(entry) -> None:
    shown = card(entry)
    assert shown.status == status_of(entry) != ""
    assert shown.specification
    if isinstance(entry.maker, Equation):
        assert shown.expression == expression_lines(entry.maker) != ()
        assert shown.gives.startswith(entry.maker.result.symbol)
        assert ("unverified" in shown.status) == (not shown.witness)
    if shown.figures:
        assert all(len(cells) == len(shown.figures.columns) for cells in shown.figures.rows.values())
        assert shown.figures.sources
        assert bool(shown.figures.from_memory) == ("from memory" in shown.status)


def test_an_argument_tells_its_default_and_what_it_takes() -> None:
    arguments = {a.name: a for a in card(find("nds.sill-bolt")).arguments}
    assert (arguments["species"].takes, arguments["species"].default) == ("words", "Douglas fir-larch")
    assert (arguments["D"].required, arguments["D"].default) == (True, "")
    assert (arguments["theta"].default, arguments["theta"].unit) == ("0", "deg")
