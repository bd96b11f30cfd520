"""The same house by other choices: what must move, and by how much."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from groundsill.doors.decode import decode
from groundsill.house.site import DesignValues
from groundsill.study.compare import Variant, by_edition, compare_editions
from groundsill.work.document import House
from tests.fixtures.small_house import small_house

FILE = Path(__file__).parents[2] / "samples" / "larch-street" / "house.json"


@pytest.fixture(scope="module")
def house() -> House:
    return decode(FILE.read_text(encoding="utf-8"))


def by_name(house: House) -> dict[str, Variant]:
    return {variant.name: variant for variant in compare_editions(house).variants}


@pytest.fixture(scope="module")
def compared(house: House) -> dict[str, Variant]:
    """The house as it stands."""
    return by_name(house)


@pytest.fixture(scope="module")
def with_both(house: House) -> dict[str, Variant]:
    """The house with values of the newer edition entered."""
    values = {"dv1": DesignValues(edition="asce7-22", S_DS=1.25, S_D1=0.8, source="invented for this test")}
    site = replace(house.survey.site, design_values=values)
    return by_name(replace(house, survey=replace(house.survey, site=site)))


def test_reduced_force_is_three_quarters_of_the_full_one(compared: dict[str, Variant]) -> None:
    found = compared
    full, reduced = found["full force"], found["75% of the force"]
    assert full.base_shear_lb is not None
    assert reduced.base_shear_lb == pytest.approx(0.75 * full.base_shear_lb)
    assert (full.factor, reduced.factor) == (1.0, 0.75)


def test_boards_as_the_system_ask_for_three_and_a_quarter_times_the_force(compared: dict[str, Variant]) -> None:
    found = compared
    panels, boards = found["full force"], found["full force, system A.17 (R 2)"]
    assert panels.base_shear_lb is not None
    assert boards.base_shear_lb == pytest.approx(6.5 / 2 * panels.base_shear_lb)


def test_the_newer_edition_says_what_it_lacks_until_its_values_are_entered(compared: dict[str, Variant]) -> None:
    missing = compared["by asce7-22"]
    assert missing.base_shear_lb is None
    assert missing.lacks.startswith("its design values must be entered (survey.site.design_values)")


def test_entered_values_of_the_newer_edition_are_used_as_they_are(with_both: dict[str, Variant]) -> None:
    found = with_both
    newer, older = found["by asce7-22, full force"], found["full force"]
    assert (newer.edition, older.edition) == ("asce7-22", "asce7-16")
    assert newer.S_DS == 1.25
    assert older.S_DS is not None
    assert older.base_shear_lb is not None
    assert newer.base_shear_lb == pytest.approx(older.base_shear_lb * 1.25 / older.S_DS)
    assert "by asce7-22" not in found


def test_each_edition_is_compared_by_full_and_reduced_force_and_by_every_system(with_both: dict[str, Variant]) -> None:
    found = with_both
    own = [name for name in found if not name.startswith("by ")]
    assert own == [
        "as chosen", "full force", "75% of the force", "full force, system A.17 (R 2)", "full force, system B.22 (R 7)",
    ]  # fmt: skip
    beside = [name for name in found if name not in own and not name.startswith("by sdpws")]
    assert beside == [f"by asce7-22, {name}" for name in own]
    for name in own:
        mine, other = found[name], found[f"by asce7-22, {name}"]
        assert (mine.R, mine.factor, mine.lacks, other.lacks) == (other.R, other.factor, "", "")
        assert other.system in mine.system  # the row's words, without the number that was not seen


def test_a_house_by_the_newer_edition_is_compared_with_the_older_the_same_way() -> None:
    values = DesignValues(edition="asce7-22", S_DS=1.25, S_D1=0.8, S_1=0.7)
    newer = by_edition(small_house(), values)
    assert newer.survey.site.hazard is not None
    assert newer.survey.site.hazard.S_1 == 0.7
    found = by_name(newer)
    assert found["as chosen"].edition == "asce7-22"
    assert found["by asce7-16"].lacks.startswith("its design values must be entered")
    back = {"dv2": DesignValues(edition="asce7-16", S_DS=1.04)}
    site = replace(newer.survey.site, design_values=back)
    found = by_name(replace(newer, survey=replace(newer.survey, site=site)))
    assert found["by asce7-16, as chosen"].S_DS == 1.04
    assert found["by asce7-16, as chosen"].edition == "asce7-16"


def test_an_edition_for_which_there_are_no_rules_says_so_in_the_table() -> None:
    house = small_house()
    site = replace(house.survey.site, design_values={"dv1": DesignValues(edition="asce7-41", S_DS=1.0)})
    missing = by_name(replace(house, survey=replace(house.survey, site=site)))["by asce7-41"]
    assert missing.lacks == "no force is worked out by it; the editions are asce7-16, asce7-22"


def test_every_variant_names_the_weakest_line_of_every_state(compared: dict[str, Variant]) -> None:
    for variant in compared.values():
        if not variant.lacks:
            assert [w.state for w in variant.weakest] == ["as found", "Brace and bolt"]
            assert all(w.line for w in variant.weakest)
