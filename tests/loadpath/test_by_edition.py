"""The same house by ASCE 7-16 and by 7-22: one way of working, other clauses, other figures only where they differ."""

from __future__ import annotations

import re
from dataclasses import fields, replace
from functools import cache

import pytest

from groundsill.doors.study_json import study_text
from groundsill.forces.seismic import Forces
from groundsill.house.fact import measured
from groundsill.house.settle import prepare
from groundsill.house.site import DesignValues
from groundsill.standards.asce7 import EDITIONS
from groundsill.study import Study, run, working
from groundsill.study.compare import by_edition
from groundsill.work.document import Basis, EditionOverride, House
from groundsill.working.errors import BadSurvey
from tests.loadpath.houses import SAMPLE, doubtful_house, known_house, sample_house

BY_HAND = DesignValues(edition="asce7-22", S_DS=1.2, S_D1=0.7, source="invented for these tests")
WEIGHTS = "ASCE 7-16 Table C3.1-1"  # what old materials weigh does not change with the edition
WIND = re.compile(r"ASCE 7-16 (Table )?((in )?Figure )?(26|27)|wind is worked out by ASCE 7-16")  # held by no other
NOT_THEIR_OWN = {"edition", "site", "C_s_governs", "system", "warnings", "items"}


def with_snow(psf: float) -> House:
    """The known house under roof snow."""
    house = known_house()
    site = replace(house.survey.site, snow_psf=measured(psf))
    return replace(house, survey=replace(house.survey, site=site))


def newer(house: House) -> House:
    """The house by ASCE 7-22, with the very S_DS that 7-16 gives it to some thirteen digits."""
    return by_edition(house, BY_HAND)


@cache
def both(snow: float) -> tuple[Study, Study]:
    """The known house by either edition."""
    house = with_snow(snow)
    assert house.survey.site.hazard is not None
    hazard = replace(house.survey.site.hazard, S_DS=BY_HAND.S_DS, S_D1=BY_HAND.S_D1)
    older = replace(house, survey=replace(house.survey, site=replace(house.survey.site, hazard=hazard)))
    return run(older, ranges=False), run(newer(house), ranges=False)


# --- what is the same ------------------------------------------------------------------------------------------------


def test_with_one_design_acceleration_and_little_snow_the_editions_ask_for_the_same_force() -> None:
    older, later = both(20.0)
    assert (older.forces.edition, later.forces.edition) == EDITIONS
    for field in fields(Forces):
        if field.name not in NOT_THEIR_OWN:
            assert getattr(older.forces, field.name) == getattr(later.forces, field.name), field.name
    assert (older.forces.C_s_governs, later.forces.C_s_governs) == ("Eq. 12.8-2", "Eq. 12.8-3")


def test_every_link_comes_to_the_same_by_either_edition() -> None:
    older, later = both(0.0)
    for one, other in zip(older.runs, later.runs, strict=True):
        for a, b in zip((*one.chains, *one.bodies), (*other.chains, *other.bodies), strict=True):
            for mine, theirs in zip(a.links, b.links, strict=True):
                assert (mine.address, mine.status, mine.demand, mine.capacity) == (
                    theirs.address, theirs.status, theirs.demand, theirs.capacity,
                )  # fmt: skip


# --- what differs ----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("snow", "older_psf", "newer_psf"), [(30.0, 0, 0), (40.0, 8, 0), (45.0, 9, 0), (60.0, 12, 9)])
def test_snow_weighs_by_each_editions_own_rule(snow: float, older_psf: float, newer_psf: float) -> None:
    bare = both(0.0)
    for found, none, psf in zip(both(snow), bare, (older_psf, newer_psf), strict=True):
        roof = sum(item.size for item in found.forces.items if item.label.startswith("snow on"))
        assert found.forces.weight_lb - none.forces.weight_lb == pytest.approx(psf * roof)
        assert (roof > 0) == (psf > 0)


def test_snow_presses_on_the_footings_at_seven_tenths_where_it_is_given_at_strength() -> None:
    house = with_snow(25.0)
    for edition, factor in ((house, 1.0), (newer(house), 0.7)):
        steps = [(step, dict(step.inputs)) for step in working(edition).steps if step.id.endswith("/2.4.1-3")]
        snowy = [(float(step.results[0]), float(g["D"]), float(g["S"])) for step, g in steps if float(g["S"]) > 0]
        assert snowy
        for pressing, dead, snow in snowy:
            assert pressing == pytest.approx(dead + factor * snow)


# --- what is printed -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "make", [known_house, doubtful_house, sample_house], ids=["known", "doubtful", SAMPLE.parent.name]
)
def test_no_word_of_a_study_by_the_newer_edition_cites_the_older(make: object) -> None:
    assert callable(make)
    text = study_text(run(newer(make())))
    assert "ASCE 7-22 2.4.5" in text
    older = set(re.findall(r"(?:wind is worked out by )?ASCE 7-16[^:\")]*", text))
    assert {cite for cite in older if not WIND.match(cite)} <= {WEIGHTS}


def test_no_step_of_the_working_by_the_newer_edition_cites_the_older() -> None:
    cites = {step.cite for step in working(newer(known_house())).steps}
    assert {"ASCE 7-22 Eq. 12.8-3", "ASCE 7-22 12.13.4", "ASCE 7-22 2.4.1 combination 3a"} <= cites
    assert not any("7-16" in cite for cite in cites - {WEIGHTS})
    cites = {step.cite for step in working(known_house()).steps}
    assert {"ASCE 7-16 Eq. 12.8-2", "ASCE 7-16 2.4.1 combination 3"} <= cites
    assert not any("7-22" in cite for cite in cites)


def test_boards_under_panels_are_told_by_the_words_of_the_row_where_its_number_was_not_seen() -> None:
    told = [w for w in run(newer(sample_house()), ranges=False).warnings if "boards or plaster" in w]
    assert told
    assert told[0].startswith("system “bearing walls, light-frame wood, wood structural panels” (R 6.5)")
    assert "row “bearing walls, light-frame, shear panels of all other materials” with R 2" in told[0]


# --- what must be entered, and which editions there are --------------------------------------------------------------


def by_7_22(house: House) -> House:
    """The house by ASCE 7-22 with nothing entered for it."""
    override = EditionOverride(edition="asce7-22", reason="the town asks for it")
    return replace(house, basis=replace(house.basis, overrides={**house.basis.overrides, "asce7": override}))


def test_the_newer_edition_asks_for_its_design_values_by_their_field() -> None:
    with pytest.raises(BadSurvey) as refused:
        run(by_7_22(known_house()))
    assert str(refused.value).startswith("1. survey.site.hazard.S_DS: nothing is not allowed; ASCE 7-22 11.4 has no")
    assert "enter S_DS (and S_D1) for site class D-default by this edition" in str(refused.value)
    assert "design_values" not in str(refused.value)


def test_it_says_where_the_survey_holds_them_already() -> None:
    house = by_7_22(known_house())
    site = replace(house.survey.site, design_values={"dv7": BY_HAND})
    with pytest.raises(BadSurvey, match=r"survey\.site\.design_values\.dv7 holds one kept to compare"):
        run(replace(house, survey=replace(house.survey, site=site)))


def test_without_s_d1_the_plateau_stands_and_it_is_said() -> None:
    study = run(by_edition(known_house(), replace(BY_HAND, S_D1=None)), ranges=False)
    assert "ASCE 7-22: S_D1 is not entered; no upper value of C_s is taken" in study.warnings
    assert study.forces.category == "D"


def test_a_site_class_of_the_newer_edition_is_none_of_the_older() -> None:
    house = known_house()
    hazard = house.survey.site.hazard
    assert hazard is not None
    site = replace(house.survey.site, hazard=replace(hazard, site_class="CD"))
    between = replace(house, survey=replace(house.survey, site=site))
    assert run(newer(between), ranges=False).forces.site.site_class == "CD"
    with pytest.raises(BadSurvey, match=r"survey\.site\.hazard: site class CD.* no row 'CD'"):
        run(between)


def test_an_edition_kept_for_old_drawings_is_refused_by_name() -> None:
    house = known_house()
    override = EditionOverride(edition="asce7-10", reason="as the drawings of 2012")
    old = replace(house, basis=replace(house.basis, overrides={**house.basis.overrides, "asce7": override}))
    with pytest.raises(BadSurvey, match=r"basis\.overrides\.asce7: asce7-10.* made by asce7-16 or asce7-22"):
        run(old)
    settled = prepare(old).best
    assert settled.house is not None
    with pytest.raises(BadSurvey, match=r"basis\.overrides\.asce7: .*no earthquake force is worked out by asce7-10"):
        working(old)


def test_a_house_by_ibc_2024_goes_by_asce_7_22() -> None:
    """What the program does not hold of that code is still refused by name, or mixed in with a printed reason."""
    mixed = {
        "nds": EditionOverride(edition="nds-2018", reason="the 2024 edition is not held"),
        "sdpws": EditionOverride(edition="sdpws-2015", reason="the tables of 2021 are not held"),
    }
    house = newer(known_house())
    house = replace(house, basis=Basis(code="ibc-2024", overrides=mixed))
    study = run(house, ranges=False)
    assert study.manifest.editions["asce7"] == study.forces.edition == "asce7-22"
    assert "asce7" not in study.manifest.edition_reasons
    assert study.forces.base_shear_lb == run(newer(known_house()), ranges=False).forces.base_shear_lb
