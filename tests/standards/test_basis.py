"""A building code brings its editions; mixing needs a printed reason; what is not held is named so."""

from __future__ import annotations

import pytest

from groundsill.standards.basis import Basis, adoptions, building_codes
from groundsill.standards.shelf import family_of
from groundsill.working.errors import BadSurvey, UnknownFormula

FAMILIES = ("asce7", "sdpws", "nds", "aci318", "iebc")
EDITIONS = {
    "ibc-2018": ("asce7-16", "sdpws-2015", "nds-2018", "aci318-14", "iebc-2018"),
    "ibc-2021": ("asce7-16", "sdpws-2021", "nds-2018", "aci318-19", "iebc-2021"),
    "ibc-2024": ("asce7-22", "sdpws-2021", "nds-2024", "aci318-19", "iebc-2024"),
}


@pytest.mark.parametrize("code", sorted(EDITIONS))
def test_a_code_brings_the_editions_it_adopts(code: str) -> None:
    basis = Basis(code)
    assert tuple(basis.edition(family) for family in FAMILIES) == EDITIONS[code]
    assert basis.edition("ibc") == code


def test_each_adoption_says_how_it_is_known() -> None:
    assert set(building_codes()) == set(EDITIONS)
    for code in building_codes():
        for adoption in adoptions(code):
            assert family_of(adoption.edition) == adoption.family
            assert adoption.how in ("seen", "from memory", "computed")
            assert adoption.where


def test_an_edition_is_mixed_in_with_its_reason() -> None:
    basis = Basis("ibc-2021", {"sdpws": ("sdpws-2015", "the plaster values of 2021 are not held here")})
    assert basis.document("sdpws") == "sdpws-2015"
    assert basis.document("nds") == "nds-2018"
    assert basis.reasons() == (
        "sdpws-2015 is used instead of sdpws-2021: the plaster values of 2021 are not held here",
    )
    assert Basis().reasons() == ()


def test_an_override_without_a_reason_an_unknown_family_and_a_stranger_are_refused_together() -> None:
    with pytest.raises(BadSurvey) as refused:
        Basis("ibc-2019", {"nds": ("sdpws-2015", "  "), "roofs": ("roofs-1", "why")})
    assert [fault.line() for fault in refused.value.faults] == [
        "basis.code: 'ibc-2019' is not allowed; it is one of ibc-2018, ibc-2021, ibc-2024",
        "basis.overrides.nds: 'sdpws-2015' is not allowed; it must be an edition of nds, like nds-...",
        "basis.overrides.nds.reason: nothing is not allowed; mixing editions needs a reason, which is printed",
        "basis.overrides.roofs: 'roofs-1' is not allowed; "
        "the families are aci318, aisi-s100, asce7, ibc, iebc, nds, sdpws",
    ]


def test_an_edition_that_is_not_held_is_named_with_what_can_be_done() -> None:
    with pytest.raises(UnknownFormula) as refused:
        Basis("ibc-2018").document("aci318")
    assert str(refused.value) == (
        "aci318-14, which ibc-2018 goes by, is not in this program; override aci318 with aci318-19 and a reason"
    )


def test_common_practice_has_no_edition() -> None:
    assert Basis().document("common-practice") == "common-practice"
