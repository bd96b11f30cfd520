"""Finding formulas by number, trade name or words, and working them out; from a zip as well."""

from __future__ import annotations

import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from groundsill.standards.asce7_16.elf import coefficient_plateau
from groundsill.standards.basis import Basis
from groundsill.standards.catalogue import call, entries, errata, find, search
from groundsill.standards.shelf import documents, family_of
from groundsill.working.errors import BadSurvey, OutsideLimits, UnknownFormula
from groundsill.working.sheet import Sheet

SRC = Path(__file__).resolve().parents[2] / "src"


def faults_of(formula: str, inputs: dict[str, object]) -> list[str]:
    with pytest.raises(BadSurvey) as refused:
        call(formula, inputs)
    return [fault.line() for fault in refused.value.faults]


# --- finding ---------------------------------------------------------------------------------------------------------


def test_a_formula_is_found_by_its_number_its_trade_name_and_its_words() -> None:
    assert find("asce7-16/12.8-2").maker is coefficient_plateau
    assert find("asce7.cs").id == "asce7-16/12.8.1.1"
    assert find("fundamental period").id == "asce7-16/12.8-7"
    assert find(" asce7-16/table_11_4_1 ").kind == "table"


def test_an_entry_shows_its_arguments_and_its_specification() -> None:
    entry = find("asce7-16/12.8-7")
    assert [(name, q.unit) for name, q in entry.arguments] == [("h_n", "ft")]
    assert entry.specification.startswith("T_a = C_t h_n^x")
    assert [name for name, _ in find("asce7-16/table_11_4_1").arguments] == ["row", "column"]


def test_a_name_that_fits_nothing_is_refused_with_the_nearest() -> None:
    with pytest.raises(
        UnknownFormula, match=r"no formula or table is called 'asce7-16/12\.8-22'; did you mean asce7-16/12\.8-2"
    ):
        find("asce7-16/12.8-22")
    with pytest.raises(UnknownFormula, match=r"no formula or table is called 'zzzz'$"):
        find("zzzz")


def test_words_that_fit_many_list_them() -> None:
    with pytest.raises(UnknownFormula, match=r"'seismic' fits \d+ formulas: .*asce7-16/12\.8-1, .* and \d+ more"):
        find("seismic")


def test_search_holds_all_words_and_puts_titles_first() -> None:
    found = search("base shear")
    assert found[0].id == "asce7-16/12.8-1"
    assert all("shear" in f"{e.id} {e.alias} {e.title} {e.cite}".lower() for e in found)
    assert search("") == entries()


def test_a_trade_name_follows_the_basis() -> None:
    assert find("asce7.cs", Basis("ibc-2018")).id == "asce7-16/12.8.1.1"
    assert find("asce7.cs", Basis("ibc-2024")).id == "asce7-22/12.8.1.1"
    assert find("nds.sill-bolt", Basis("ibc-2021")).id == "nds-2018/12E"
    assert find("nds.sill-bolt", Basis("ibc-2024")).id == "nds-2024/12E"
    assert find("sdpws.toenails", Basis("ibc-2024")).id == "sdpws-2021/4.1.7"
    missing = r"aci\.expected-breakout: ibc-2018 goes by aci318-14, which is not in this program; it has aci318-19/"
    with pytest.raises(UnknownFormula, match=missing):
        find("aci.expected-breakout", Basis("ibc-2018"))


def test_without_a_basis_a_name_in_several_editions_means_that_of_the_default_code() -> None:
    assert find("asce7.cs").id == "asce7-16/12.8.1.1"
    assert find("asce7.site-class").id == "asce7-22/20.2"  # no other edition has the rule here
    words = "short-period acceleration adjusted for the site"
    assert {entry.id for entry in search(words)} >= {"asce7-05/11.4-1", "asce7-10/11.4-1", "asce7-16/11.4-1"}
    assert search(words)[0].id == find(words).id == "asce7-16/11.4-1"
    assert find(f"asce7-05 {words}").id == "asce7-05/11.4-1"
    with pytest.raises(UnknownFormula, match=r"fits 6 formulas: asce7-16/12\.8-2, asce7-16/11\.4\.6-Ts, asce7-05"):
        find("plateau asce7")


def test_a_document_that_is_not_held_is_refused() -> None:
    with pytest.raises(UnknownFormula, match=r"asce7-02 is not in this program; it has .*asce7-16"):
        entries("asce7-02")
    with pytest.raises(UnknownFormula, match="asce7-02 is not in this program"):
        errata("asce7-02")


def test_families_are_documents_without_their_edition() -> None:
    assert [family_of(d) for d in ("nds-2018", "aci318-19", "aisi-s100-16", "common-practice")] == [
        "nds", "aci318", "aisi-s100", "common-practice",
    ]  # fmt: skip


# --- working out -----------------------------------------------------------------------------------------------------


def test_a_formula_is_worked_out_from_names_and_values() -> None:
    assert call("asce7-16/12.8-2", {"S_DS": 1.3, "R": 6.5, "I_e": "1"}) == pytest.approx(0.2)
    assert call(coefficient_plateau, {"S_DS": 1.3, "R": 6.5, "I_e": 1}) == pytest.approx(0.2)
    assert call("asce7-16/table_11_4_1", {"row": "D", "at": 0.875}) == pytest.approx(1.15)
    assert call("asce7-16/table_11_4_1", {"row": "D", "column": "0.75"}) == 1.2
    assert call("iebc-2021/table_a304_3_1_side", {"row": "along the wall, each connection"}) == 900


def test_lists_yes_or_no_and_unknown_are_read() -> None:
    levels = call("asce7.levels", {"V": 10000, "T": 0.2, "weights": "40000, 30000", "heights": [10, 19]})
    assert sum(level.F_x for level in levels) == pytest.approx(10000)
    assert call("asce7.overturning-at-soil", {"equivalent_lateral_force": "yes"}) == 0.75
    assert call("asce7.cs", {"S_DS": 1.2, "S_D1": "unknown", "S_1": 0.3, "T": 0.2, "T_L": 6, "R": 6.5}).upper is None
    assert call("ibc.soil-bearing", {"soil": 4}) == 2000


def test_every_wrong_argument_is_answered_at_once() -> None:
    assert faults_of("asce7-16/12.8-2", {"S_DS": "much", "Ie": 1.0}) == [
        "asce7-16/12.8-2: Ie: 1.0 is not allowed; the arguments are S_DS, R, I_e; did you mean I_e?",
        "asce7-16/12.8-2: S_DS: 'much' is not allowed; it takes a number in g (design acceleration at short periods)",
        "asce7-16/12.8-2: R: nothing is not allowed; it takes a number (response modification coefficient)",
        "asce7-16/12.8-2: I_e: nothing is not allowed; it takes a number (importance factor)",
    ]


@pytest.mark.parametrize(
    ("formula", "inputs", "line"),
    [
        ("asce7-16/12.8-7", {"h_n": True}, "asce7-16/12.8-7: h_n: True is not allowed; it takes a number in ft"),
        ("asce7-16/12.8-7", {"h_n": None}, "asce7-16/12.8-7: h_n: None is not allowed; it takes a number in ft"),
        (
            "asce7.overturning-at-soil",
            {"equivalent_lateral_force": "perhaps"},
            "asce7-16/12.13.4: equivalent_lateral_force: 'perhaps' is not allowed; it takes yes or no",
        ),
        (
            "asce7.importance",
            {"risk_category": True},
            "asce7-16/1.5.1: risk_category: True is not allowed; it takes words",
        ),
        (
            "asce7.levels",
            {"V": 1, "T": 0.2, "weights": "1; 2", "heights": "1"},
            "asce7-16/12.8.3: weights: '1; 2' is not allowed; it takes numbers in lb, parted by commas",
        ),
        ("asce7-16/table_11_4_1", {"at": 1.0}, "ASCE 7-16 Table 11.4-1: row: nothing is not allowed; it takes words"),
    ],
)
def test_a_value_of_the_wrong_kind_says_what_may_stand_there(
    formula: str, inputs: dict[str, object], line: str
) -> None:
    assert any(found.startswith(line) for found in faults_of(formula, inputs))


def test_nan_is_left_to_the_formulas_own_limits() -> None:
    with pytest.raises(OutsideLimits, match=r"h_n .* = nan ft; must be above 0"):
        call("asce7-16/12.8-7", {"h_n": "nan"})


def test_what_was_typed_stands_on_the_sheet_as_given() -> None:
    with Sheet() as sheet:
        call("asce7.cs", {"S_DS": 1.2, "S_D1": 0.6, "S_1": 0.3, "T": 0.2, "T_L": 6, "R": 6.5})
    put_in = {step.result.symbol: float(step.result) for step in sheet.steps if step.kind == "given"}
    assert put_in == {"S_DS": 1.2, "S_D1": 0.6, "S_1": 0.3, "T": 0.2, "T_L": 6.0, "R": 6.5}


# --- how it is packed ------------------------------------------------------------------------------------------------

LAZY = """
import sys
import groundsill.standards, groundsill.standards.catalogue as catalogue
held = [name for name in sys.modules if name.startswith("groundsill.standards.") and name.count(".") > 2]
assert not held, held
catalogue.find("asce7-16/12.8-2")
held = {name.split(".")[2] for name in sys.modules if name.startswith("groundsill.standards.") and name.count(".") > 2}
assert held == {"asce7_16"}, held
"""

FROM_ZIP = """
import sys
sys.path.insert(0, sys.argv[1])
from groundsill.standards.catalogue import call, entries, errata, find
from groundsill.working.render import as_text
from groundsill.working.sheet import Sheet
with Sheet() as sheet:
    call("asce7-16/12.8-7", {"h_n": 24.0})
for line in sheet.steps[-1].lines:
    print(as_text(line.math) if line.math else line.text)
print(call("asce7-16/table_11_4_1", {"row": "D", "at": 0.875}))
print(len(errata("asce7-16")), len(entries()), sys.modules["groundsill"].__file__)
"""


def test_no_document_is_imported_before_it_is_asked_for() -> None:
    code = f"import sys; sys.path.insert(0, {str(SRC)!r}); {LAZY.strip()}".replace("; import sys\n", "\nimport sys\n")
    done = subprocess.run([sys.executable, "-I", "-S", "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def test_formulas_and_tables_are_shown_from_a_zip(tmp_path: Path) -> None:
    packed = tmp_path / "groundsill.zip"
    with zipfile.ZipFile(packed, "w") as archive:
        for path in sorted((SRC / "groundsill").rglob("*")):
            if path.is_file() and "__pycache__" not in path.parts:
                archive.write(path, path.relative_to(SRC))
    command = [sys.executable, "-I", "-S", "-c", FROM_ZIP, str(packed)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    lines = done.stdout.splitlines()
    assert lines[0] == "T_a = 0.02 · h_n^0.75"
    assert lines[1] == "T_a = 0.02 · 24^0.75 = 0.21686 s"
    assert float(lines[-2]) == pytest.approx(1.15)
    count, formulas, place = lines[-1].split(maxsplit=2)
    assert int(count) == len(errata("asce7-16"))
    assert int(formulas) == len(entries())
    assert place.startswith(str(packed))


def test_every_document_lies_in_a_package_of_its_own() -> None:
    assert {"asce7-16", "common-practice", "ibc-2021", "iebc-2021"} <= set(documents())
    assert {entry.document for entry in entries()} <= set(documents())
