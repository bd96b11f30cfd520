"""IEBC 2021: the reduced force as a printed choice, and the rules of chapter A3 as data."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.iebc_2021 import cripple_walls, forces
from groundsill.working.errors import OutsideLimits, UnknownFormula
from groundsill.working.sheet import Sheet
from groundsill.working.value import marks_of


@given(st.floats(0, 1e6))
def test_the_reduced_force_is_three_quarters_of_the_full_one(V: float) -> None:
    reduced = forces.existing_force(forces.force_factor("reduced", "voluntary work on a cripple wall"), V)
    assert reduced == pytest.approx(0.75 * V)
    assert forces.existing_force(forces.force_factor("full", "asked for by the official"), V) == V


@pytest.mark.parametrize("level", ["full", "reduced"])
def test_a_level_of_force_needs_its_reason(level: str) -> None:
    with pytest.raises(OutsideLimits, match=f"IEBC 2021 seismic forces: the {level} force is chosen without a reason"):
        forces.force_factor(level, " ")


def test_other_levels_and_clauses_are_refused() -> None:
    with pytest.raises(OutsideLimits, match="level 'half' is not one of full, reduced"):
        forces.force_factor("half", "because")
    with pytest.raises(
        OutsideLimits, match=r"no row 'A999' \(clause\); it has new building, A301\.3, A403\.3, 303\.3\.2"
    ):
        forces.force_factor("reduced", "because", "A999")


def test_more_than_the_full_force_is_refused() -> None:
    with pytest.raises(OutsideLimits, match=r"f_E .* = 1\.1 1; must be above 0 and at most 1"):
        forces.existing_force(1.1, 1000.0)


def test_the_reason_stands_on_the_sheet_and_only_the_clause_that_was_read_goes_unmarked() -> None:
    with Sheet() as sheet:
        weak_story = forces.force_factor("reduced", "agreed with the official", "A403.3")
        cripple = forces.force_factor("reduced", "agreed with the official")
    assert not marks_of([weak_story])
    assert [mark.text() for mark in marks_of([cripple])] == [
        "from memory, to be confirmed: IEBC 2021 Table of reduced forces: A301.3"
    ]
    assert any("agreed with the official" in line.text for step in sheet.steps for line in step.lines)


def test_side_anchorage_carries_at_least_900_lb_along_the_wall() -> None:
    assert cripple_walls.table_a304_3_1_side().read("along the wall, each connection") == 900


def test_every_rule_is_said_in_words_with_its_place() -> None:
    found = cripple_walls.provisions()
    assert len({p.key for p in found}) == len(found) >= 15
    for p in found:
        assert p.says.endswith(".")
        assert p.clause.startswith("A")
        assert p.how in ("seen", "from memory")
        assert p.where
    assert {p.key for p in found if p.clause == "A303.1"} == {
        "sill-on-ground",
        "isolated-pads",
        "perimeter-gaps",
        "masonry-perimeter",
        "sill-connection",
        "cripple-wall-bracing",
    }


def test_masonry_foundations_go_to_an_engineer_unless_a_new_one_stands_inside() -> None:
    rule = cripple_walls.provision("engineer-for-masonry")
    assert rule.cite == "IEBC 2021 A304.2.2"
    assert "test reports" in rule.says
    assert "inside the perimeter" in rule.exceptions[0]


def test_a_rule_that_is_not_here_is_refused_and_the_keys_are_named() -> None:
    with pytest.raises(UnknownFormula, match="IEBC 2021 has no rule 'roof' here; it has sill-on-ground"):
        cripple_walls.provision("roof")
