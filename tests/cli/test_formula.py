"""``groundsill formula``: found by number, trade name or words; shown with its source; worked out with every step."""

from __future__ import annotations

import re

import pytest

from groundsill.standards.catalogue import entries
from tests.cli.asking import Asker


def test_without_words_every_formula_and_table_is_listed_under_its_document(ask: Asker) -> None:
    said = ask("formula")
    assert said.code == 0
    assert f"{len(entries())} formulas and tables." in said.out
    for head in ("NDS 2018   National Design Specification", "ASCE 7-16", "ACI 318-19", "SDPWS 2015"):
        assert head in said.out
    assert "superseded by nds-2024; kept, since drawings are read by it" in said.out
    assert re.search(r"^nds\.sill-bolt +Sill bolt", said.out, re.MULTILINE)


def test_the_list_tells_machines_how_each_is_known(ask: Asker) -> None:
    told = ask("formula", "--json").json
    assert told["answer"] == "formulas"
    assert len(told["formulas"]) == len(entries())
    known = {formula["status"] for formula in told["formulas"]}
    assert {"seen", "composed"} <= known
    assert known <= {
        "seen", "from memory", "unverified", "from memory, unverified", "partly from memory", "composed", "computed",
    }  # fmt: skip


def test_words_find_every_formula_that_has_them_all(ask: Asker) -> None:
    told = ask("formula", "sill", "bolt", "--json").json
    assert "nds.sill-bolt" in {formula["alias"] for formula in told["formulas"]}
    for formula in told["formulas"]:
        whole = " ".join(str(part) for part in formula.values()).lower()
        assert "sill" in whole
        assert "bolt" in whole


def test_a_trade_name_shows_the_whole_formula(ask: Asker) -> None:
    said = ask("formula", "nds.sill-bolt")
    assert said.code == 0
    for words in (
        "nds.sill-bolt nds-2018/12E",
        "National Design Specification for Wood Construction American Wood Council",
        "Superseded by nds-2024",
        "D in bolt diameter at least 0.25 and must be given at most 1",
        "f_c (f'_c) psi concrete strength at least 2500 2500",
        "groundsill formula nds.sill-bolt D=...in l_s=...in",
    ):
        assert words in re.sub(r"[ \n]+", " ", said.out), words


def test_an_equation_shows_its_own_body(ask: Asker) -> None:
    said = ask("formula", "nds-2018/12.3.1-IIIs")
    assert "Z_IIIs = k_3 · D · l_s · F_em / ((2 + R_e) · R_d)" in said.out
    assert "Checked by" in said.out


def test_a_branching_equation_shows_every_branch(ask: Asker) -> None:
    lines = ask("formula", "nds-2018/12.3.1B-K-D", "--json").json["expression"]
    assert [line for line in lines if line.startswith("if ")]
    assert [line for line in lines if line.startswith("   K_D = ")]
    assert "otherwise:" in lines


def test_a_five_eighths_bolt_in_a_fir_sill_is_worked_out_with_every_step(ask: Asker) -> None:
    said = ask("formula", "nds.sill-bolt", "D=5/8in", "ls=1.5in")
    assert said.code == 0
    assert "D: 5/8 in (15.88 mm)" in said.out
    assert "Z_IIIs = k_3 · D · l_s · F_em / ((2 + R_e) · R_d)" in said.out
    assert "= 1.4109 · 0.625 · 1.5 · 7500 / ((2 + 1.3393) · 3.2)" in said.out
    assert re.search(r"^Z +928\.36 lb$", said.out, re.MULTILINE)
    assert said.out.index("Answer") > said.out.index("Yield mode IV")


def test_machines_get_value_unit_steps_source_marks_and_warnings(ask: Asker) -> None:
    told = ask("formula", "nds.sill-bolt", "D=5/8in", "l_s=1.5in", "--json").json
    assert told["answer"] == "formula worked"
    assert told["value"] == pytest.approx(928.3574, abs=1e-4)
    assert told["unit"] == "lb"
    assert {r["name"]: r["value"] for r in told["results"]}["mode"] == "IIIs"
    assert told["source"]["title"] == "National Design Specification for Wood Construction"
    assert told["understood"] == {"D": "5/8 in (15.88 mm)", "l_s": "1.5 in (38.1 mm)"}
    assert "NDS 2018 is superseded by nds-2024" in told["warnings"]
    steps = [step for step in told["steps"] if step["id"] == "nds-2018/12.3.1-IIIs"]
    assert len(steps) == 1
    assert steps[0]["value"] == told["value"]
    assert [line["kind"] for line in steps[0]["lines"]][:3] == ["formula", "numbers", "answer"]


@pytest.mark.parametrize("diameter", ["D=0.625", "D=.625in", 'D=5/8"', "D=15.875mm", "D=0.625 in"])
@pytest.mark.parametrize("sill", ["l_s=1.5", "ls=1-1/2 in", "l_s=38.1 mm", "l_s=0'-1 1/2\""])
def test_a_measure_may_be_typed_as_the_trade_says_it(ask: Asker, diameter: str, sill: str) -> None:
    assert ask("formula", "nds.sill-bolt", diameter, sill, "--json").json["value"] == pytest.approx(928.3574, abs=1e-3)


def test_a_symbol_or_a_bare_name_means_the_argument(ask: Asker) -> None:
    by_name = ask("formula", "nds.sill-bolt", "D=.5", "l_s=1.5", "f_c=3000psi", "theta=90", "--json").json
    by_symbol = ask("formula", "nds.sill-bolt", "d=.5", "LS=1.5", "fc=3 ksi", "θ=90deg", "--json").json
    assert by_name["value"] == by_symbol["value"]


def test_every_wrong_value_is_told_at_once(ask: Asker) -> None:
    said = ask("formula", "nds.sill-bolt", "D=5/8 lb", "l_s=7'-", "thickness=3")
    assert (said.code, said.out) == (2, "")
    assert said.faults[0].startswith("1. nds-2018/12E: D: [5/8 lb] is not allowed; write a length like")
    assert "lb measures a force" in said.faults[0]
    assert said.faults[1].startswith("2. nds-2018/12E: l_s: [7'-] is not allowed")
    assert said.faults[2].startswith("3. nds-2018/12E: thickness: '3' is not allowed; the arguments are D, l_s")
    assert len(said.faults) == 3


def test_what_is_missing_is_named_with_its_unit(ask: Asker) -> None:
    said = ask("formula", "nds.sill-bolt", "D=1/2in")
    assert said.err == "1. nds-2018/12E: l_s: nothing is not allowed; it takes a number in in (thickness of the sill)\n"


def test_a_value_outside_the_clause_is_refused_with_symbol_limit_and_clause(ask: Asker) -> None:
    said = ask("formula", "nds.sill-bolt", "D=3mm", "l_s=1.5in")
    assert said.code == 2
    assert said.err == "1. NDS 2018 12.3.1: D (bolt diameter) = 0.11811 in; must be at least 0.25 and at most 1 in\n"


def test_a_value_twice_or_without_a_formula_is_refused(ask: Asker) -> None:
    assert "it was given twice" in ask("formula", "nds.sill-bolt", "D=1", "D=2", "l_s=1").err
    assert (
        "given twice is not allowed; each argument stands once"
        in ask("formula", "nds.sill-bolt", "l_s=1", "ls=2", "D=.5").err
    )
    assert "name the formula first" in ask("formula", "D=5/8in").err


def test_an_unknown_name_names_the_nearest(ask: Asker) -> None:
    said = ask("formula", "nds.sil-bolt")
    assert said.code == 2
    assert "did you mean nds.sill-bolt" in said.err


def test_a_table_is_shown_as_printed_and_read_by_row_and_column(ask: Asker) -> None:
    shown = ask("formula", "sdpws-2015/table_4_3a_seismic")
    assert re.search(r"^15/32, 8d +520 +760 +980 +1280$", shown.out, re.MULTILINE)
    told = ask("formula", "sdpws-2015/table_4_3a_seismic", "row=15/32, 8d", "column=3", "--json").json
    assert (told["value"], told["unit"]) == (980.0, "plf")
    assert told["steps"][0]["kind"] == "lookup"
    assert "15/32, 8d" in told["steps"][0]["lines"][0]["text"]


def test_a_table_is_never_read_beyond_its_edge(ask: Asker) -> None:
    said = ask("formula", "sdpws-2015/table_4_3a_seismic", "row=15/32, 8d", "column=7")
    assert said.code == 2
    assert "no column 7.0 (edge nail spacing); it has 6, 4, 3, 2" in said.err


def test_a_table_is_read_between_its_columns(ask: Asker) -> None:
    low, mid, high = (
        ask("formula", "asce7-16/table_11_4_1", "row=D", f"at={at}", "--json").json["value"] for at in (0.5, 0.6, 0.75)
    )
    assert low > mid > high


def test_a_formula_that_answers_in_words_and_conditions_is_told_whole(ask: Asker) -> None:
    told = ask("formula", "asce7-16/11.4.8", "site_class=D-default", "S_S=1.3", "S_1=0.45", "--json").json
    assert told["steps"]
    assert ask("formula", "asce7-16/11.4.8", "site_class=D-default", "S_S=1.3", "S_1=0.45").code == 0


def test_a_mark_of_doubt_is_printed_with_the_answer(ask: Asker) -> None:
    said = ask("formula", "nds.sill-bolt-weak-concrete", "D=1/2in", "l_s=1.5in", "f_c=1500")
    assert "† extension: NDS 2018 Table 12E covers no concrete under 2,500 psi" in said.flat
    assert "it can indicate, never prove" in said.flat


@pytest.mark.parametrize("entry", entries(), ids=lambda entry: entry.id)
def test_every_formula_and_table_can_be_shown(ask: Asker, entry) -> None:
    said = ask("formula", entry.id, "--json")
    assert said.code == 0, said.err
    assert said.json["title"] == entry.title
    page = ask("formula", entry.id)
    assert page.code == 0
    assert entry.title.split()[0] in page.out


def test_a_code_says_which_edition_a_trade_name_means(ask: Asker) -> None:
    assert ask("formula", "nds.sill-bolt", "--code", "ibc-2021").code == 0
    for code, edition in (("ibc-2018", "sdpws-2015/4.3.3"), ("ibc-2021", "sdpws-2021/4.3.5")):
        said = ask("formula", "sdpws.unit-shear", "--code", code)
        assert said.code == 0, said.err
        assert edition in said.out
    said = ask("formula", "aci.expected-breakout", "--code", "ibc-2018")
    assert said.code == 2
    assert "ibc-2018 goes by aci318-14" in said.err
    assert "it is one of ibc-2018" in ask("formula", "nds.sill-bolt", "--code", "ibc-1997").err
