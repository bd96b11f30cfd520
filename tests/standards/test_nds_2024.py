"""NDS 2024 read in the place of NDS 2018: the same bodies, each step under its own edition's name and doubts."""

from __future__ import annotations

import copy
import pickle

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards import nds, nds_2018, nds_2024
from groundsill.standards.catalogue import Entry, entries
from groundsill.standards.nds_2018 import bolts as bolts_18
from groundsill.standards.nds_2018 import nails as nails_18
from groundsill.standards.nds_2024 import bearing, bolts, nails, yield_modes
from groundsill.standards.nds_2024.restating import IN_PLACE
from groundsill.working.equation import Equation, Procedure
from groundsill.working.errors import OutsideLimits, UnknownFormula
from groundsill.working.sheet import Sheet
from groundsill.working.source import Source, read_in_place_of
from groundsill.working.table import Table
from groundsill.working.value import Mark

LATER = [entry for entry in entries("nds-2024") if isinstance(entry.maker, Equation | Procedure)]


def names(document: str) -> set[str]:
    return {e.id.partition("/")[2] for e in entries(document) if e.id.startswith(f"{document}/")}


def test_every_formula_rule_and_table_of_2018_has_its_place_in_2024() -> None:
    supplement = {name for name in names("nds-2018") if name.startswith("table_4a")}  # a document of its own
    assert names("nds-2024") == names("nds-2018") - supplement


@pytest.mark.parametrize("entry", LATER, ids=[entry.id for entry in LATER])
def test_a_restated_one_is_the_same_body_and_copied_by_name(entry: Entry) -> None:
    maker = entry.maker
    earlier = next(e.maker for e in entries("nds-2018") if e.id == entry.id.replace("nds-2024", "nds-2018"))
    assert isinstance(maker, Equation | Procedure)
    assert isinstance(earlier, Equation | Procedure)
    assert maker.body is earlier.body
    assert maker is not earlier
    assert pickle.loads(pickle.dumps(maker)) is maker
    assert copy.deepcopy(maker) is maker
    assert (maker.__doc__ or "").startswith(f"The {'formula' if isinstance(maker, Equation) else 'rule'} of NDS 2018 ")


def test_every_step_of_a_rule_names_the_edition_it_is_worked_out_by() -> None:
    with Sheet() as sheet:
        got = nails.toenail("8d common")
    cited = {step.cite.rpartition("NDS ")[2][:4] for step in sheet.steps if step.cite}
    assert cited == {"2024"}
    assert {step.id.partition("/")[0] for step in sheet.steps if step.kind in ("equation", "procedure")} == {"nds-2024"}
    assert float(got.Z) == float(nails_18.toenail("8d common").Z)
    assert Mark("from memory", "NDS 2024 Table L4: 8d common, D") in getattr(got.Z, "marks")  # noqa: B009


def test_after_a_rule_of_the_later_edition_the_earlier_one_stands_again() -> None:
    nails.nail("8d common", 0.75)
    assert read_in_place_of("NDS 2018") is None
    with pytest.raises(OutsideLimits):
        nails.nail("8d common", 2.4)
    assert read_in_place_of("NDS 2018") is None
    with Sheet() as sheet:
        nails_18.nail("8d common", 0.75)
    assert {step.cite[:8] for step in sheet.steps if step.cite} == {"NDS 2018"}


def test_refusals_name_the_later_edition() -> None:
    with pytest.raises(OutsideLimits, match=r"NDS 2024 12\.1\.6\.4: p \(penetration of a 8d common nail\) = 0\.1 in"):
        nails.nail("8d common", 2.4)
    with pytest.raises(OutsideLimits, match=r"NDS 2024 Table L4: no row '9d'"):
        nails.nail_size("9d")
    with pytest.raises(OutsideLimits, match=r"NDS 2024 12\.3\.1: D \(bolt diameter\) = 0\.2 in"):
        bolts.sill_bolt(0.2, 1.5)
    with pytest.raises(OutsideLimits, match=r"NDS 2024 Table 12\.3\.1B: θ"):
        yield_modes.angle_factor(91.0)


@given(
    D=st.floats(0.25, 1.0),
    l_m=st.floats(0.5, 12.0),
    l_s=st.floats(0.5, 6.0),
    theta=st.floats(0.0, 90.0),
    species=st.sampled_from(("Douglas fir-larch", "Redwood", "Hem-fir")),
)
def test_a_joint_is_worth_the_same_by_either_edition(
    D: float, l_m: float, l_s: float, theta: float, species: str
) -> None:
    asked = (D, l_m, l_s, species, species, theta, theta)
    assert bolts.bolt(*asked) == bolts_18.bolt(*asked)


def test_an_edition_that_lacks_a_thing_says_so() -> None:
    with IN_PLACE.read(), pytest.raises(UnknownFormula, match="NDS 2024, read in the place of NDS 2018, holds nothing"):
        Table.parse(_UNHELD, "unheld.toml").read("a")


def test_another_document_is_left_alone_meanwhile() -> None:
    other = Source("x-1", "X 1", "", "", "")
    with IN_PLACE.read():
        assert other.cite("2") == "X 1 2"
        assert nds_2018.SOURCE.cite("11.3") == "NDS 2024 11.3"
        assert nds_2018.PRACTICE.cite("12") == "Common practice 12"
    assert nds_2018.SOURCE.cite("11.3") == "NDS 2018 11.3"


# --- the door --------------------------------------------------------------------------------------------------------


def test_the_door_knows_both_editions_and_no_other() -> None:
    assert nds.EDITIONS == ("nds-2018", "nds-2024")
    assert nds_2018.SOURCE.superseded_by == nds_2024.SOURCE.id
    with pytest.raises(UnknownFormula, match="no joint is worked out by nds-2015; it is one of nds-2018, nds-2024"):
        nds.rules_of("nds-2015")


@pytest.mark.parametrize("document", nds.EDITIONS)
def test_rules_of_an_edition_print_that_edition_also_in_what_is_built_on_it(document: str) -> None:
    rules = nds.rules_of(document)
    with Sheet() as sheet:
        gap = rules.sill_bolt_with_gap(0.625, 1.5, 0.25)
        weak = rules.sill_bolt_weak_concrete(0.5, 1.5, 1000.0)
        rules.expected_of(weak)
        rules.adjusted_lateral(gap.Z)
    cited = {step.cite[:8] for step in sheet.steps if step.cite.startswith("NDS")}
    assert cited == {rules.source.short}
    assert float(gap.Z) == pytest.approx(811.8, abs=0.05)
    assert rules.cite("11.3") == f"{rules.source.short} 11.3"
    assert float(rules.end_distance("perpendicular", "full")) == 4.0
    assert float(rules.toenail_factor("toenail, lateral")) == 0.83


def test_what_a_reader_of_2024_printed_is_no_longer_unverified() -> None:
    with Sheet():
        got = bearing.bearing_parallel(0.5)
    assert getattr(got, "marks") == {Mark("from memory", "NDS 2024 Table 12.3.3, note 2, the equation")}  # noqa: B009


_UNHELD = """
document = "NDS 2018"
number = "99"
title = "Not held"
row_key = "row"
column_key = ""
unit = "1"
columns = ["n"]
checksum = "sha256:0fc6d134cb75224c"
source = "memory"
[sources.memory]
how = "from memory"
where = "nowhere"
[rows]
a = [1]
"""
