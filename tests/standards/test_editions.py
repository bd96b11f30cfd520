"""Editions of ASCE 7 beside each other: one formula, one table, each under its own edition's name and doubts."""

from __future__ import annotations

import copy
import pickle

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards import asce7_05, asce7_10, asce7_16, asce7_22
from groundsill.standards.asce7 import EDITIONS, rules_of
from groundsill.standards.asce7_05 import elf as elf_05
from groundsill.standards.asce7_05 import ground_motion as motion_05
from groundsill.standards.asce7_10 import elf as elf_10
from groundsill.standards.asce7_10 import ground_motion as motion_10
from groundsill.standards.asce7_16 import effects, elf, ground_motion, systems
from groundsill.standards.asce7_22 import effects as effects_22
from groundsill.standards.asce7_22 import elf as elf_22
from groundsill.standards.asce7_22 import ground_motion as motion_22
from groundsill.standards.asce7_22 import site_class as class_22
from groundsill.standards.asce7_22 import systems as systems_22
from groundsill.standards.asce7_22 import weight as weight_22
from groundsill.standards.catalogue import entries, find
from groundsill.working.equation import Equation
from groundsill.working.errors import OutsideLimits, UnknownFormula
from groundsill.working.render import as_text
from groundsill.working.sheet import Sheet
from groundsill.working.steps import given as recorded
from groundsill.working.value import Mark, marks_of

shaking = st.floats(0.01, 3.0)
RESTATED = [
    entry.maker
    for document in ("asce7-05", "asce7-10", "asce7-22")
    for entry in entries(document)
    if isinstance(entry.maker, Equation) and (entry.maker.__doc__ or "").startswith("The formula of ")
]


# --- one body under several names ------------------------------------------------------------------------------------


def test_an_equation_restated_is_the_same_body_under_another_number() -> None:
    assert elf_22.coefficient_plateau.body is elf.coefficient_plateau.body
    assert elf_22.coefficient_plateau.id == "asce7-22/12.8-3"
    assert elf_22.coefficient_plateau.cite == "ASCE 7-22 Eq. 12.8-3"
    assert elf_22.coefficient_plateau.witness is None  # the witness of the other edition is not this one's
    assert elf_22.coefficient_plateau(1.3, 6.5, 1.0) == elf.coefficient_plateau(1.3, 6.5, 1.0) == 0.2
    assert find("asce7-22/12.8-3").maker is elf_22.coefficient_plateau


def test_its_specification_says_first_whence_it_comes_and_how_that_is_known() -> None:
    text = elf_22.coefficient_plateau.__doc__ or ""
    assert text.startswith("The formula of ASCE 7-16 Eq. 12.8-2, unchanged: that ASCE 7-22 keeps it")
    assert "\n\nOf ASCE 7-16: C_s where the period is short" in text


def test_its_limits_are_refused_under_its_own_number() -> None:
    with pytest.raises(
        OutsideLimits,
        match=r"ASCE 7-22 Eq\. 12\.8-3: R \(response modification coefficient\) = 0 1; must be at least 1",
    ):
        elf_22.coefficient_plateau(1.0, 0.0, 1.0)


def test_its_step_is_printed_under_its_own_number_with_its_own_doubts() -> None:
    with Sheet() as sheet:
        got = elf_22.coefficient_plateau(1.3, 6.5, 1.0)
    (step,) = sheet.steps
    assert (step.id, step.cite) == ("asce7-22/12.8-3", "ASCE 7-22 Eq. 12.8-3")
    assert as_text(step.lines[0].math) == "C_s = S_DS / (R / I_e)"
    assert marks_of([got]) == {
        Mark("from memory", "ASCE 7-22 Eq. 12.8-3, the equation"),
        Mark("unverified", "ASCE 7-22 Eq. 12.8-3: no published value to check it by"),
    }


@pytest.mark.parametrize("eq", RESTATED, ids=[eq.id for eq in RESTATED])
def test_a_restated_equation_is_copied_by_name_and_never_taken_for_the_original(eq: Equation[...]) -> None:
    assert pickle.loads(pickle.dumps(eq)) is eq
    assert copy.deepcopy(eq) is eq
    original = {e.maker.body: e.maker for e in entries("asce7-16") if isinstance(e.maker, Equation)}[eq.body]
    assert original is not eq
    assert original.arguments == eq.arguments


def test_a_table_restated_has_the_same_figures_and_says_that_they_are_recalled() -> None:
    with Sheet() as sheet:
        got = motion_22.table_11_6_1().read("II", "D")
    assert got == ground_motion.table_11_6_1().read("II", "D")
    assert marks_of([got]) == {Mark("from memory", "ASCE 7-22 Table 11.6-1: II, D")}
    assert sheet.steps[0].cite == "ASCE 7-22 Table 11.6-1"
    source = motion_22.table_11_6_1().source_of("II", 0)
    assert source.where == "the figures of ASCE 7-16 Table 11.6-1; that ASCE 7-22 has it unchanged is recalled"
    assert motion_10.table_11_6_1().source_of("II", 0).how == "seen"


def test_each_edition_says_which_took_its_place() -> None:
    chain = [source.superseded_by for source in (asce7_05.SOURCE, asce7_10.SOURCE, asce7_16.SOURCE, asce7_22.SOURCE)]
    assert chain == ["asce7-10", "asce7-16", "asce7-22", None]


# --- old drawings ----------------------------------------------------------------------------------------------------


@given(S_S=shaking, S_1=shaking, site_class=st.sampled_from("ABCDE"))
def test_both_old_editions_have_the_same_site_coefficients(S_S: float, S_1: float, site_class: str) -> None:
    assert motion_05.site_values(S_S, S_1, site_class) == motion_10.site_values(S_S, S_1, site_class)


@given(low=st.floats(0.01, 1.25), more=st.floats(0.0, 1.0), site_class=st.sampled_from("ABCD"))
def test_stronger_rock_shaking_never_gave_weaker_ground_shaking(low: float, more: float, site_class: str) -> None:
    weak, strong = motion_10.site_values(low, low / 2, site_class), motion_10.site_values(low + more, low, site_class)
    assert strong.S_MS is not None
    assert weak.S_MS is not None
    assert strong.S_MS >= weak.S_MS - 1e-12


def test_rock_of_class_b_was_the_reference_and_stiff_soil_the_default() -> None:
    rock = motion_05.site_values(1.1, 0.4, "B")
    assert (rock.S_MS, rock.S_M1) == (1.1, 0.4)
    assert motion_05.site_values(1.1, 0.4) == motion_05.site_values(1.1, 0.4, "D")
    assert motion_05.site_values(1.1, 0.4).warnings == ()


def test_soft_ground_had_figures_where_the_2016_edition_asks_for_a_study() -> None:
    assert motion_10.site_values(1.5, 0.6, "E").F_a == 0.9
    assert ground_motion.site_values(1.5, 0.6, "E").F_a is None


def test_class_f_and_the_names_of_later_classes_are_refused() -> None:
    for name in ("F", "D-default"):
        with pytest.raises(OutsideLimits, match=f"ASCE 7-10 Table 11.4-1: no row '{name}' .site class.; it has A, B"):
            motion_10.site_values(1.0, 0.4, name)


@given(S_DS=shaking, S_D1=shaking, S_1=st.floats(0, 1.5), risk=st.sampled_from(("I", "II", "III", "IV")))
def test_the_category_goes_by_the_same_breaks_in_every_edition(S_DS: float, S_D1: float, S_1: float, risk: str) -> None:
    asked = (S_DS, S_D1, S_1, risk)
    found = {m.design_category(*asked) for m in (motion_05, motion_10, ground_motion, motion_22)}
    assert len(found) == 1


@pytest.mark.parametrize("motion", [motion_05, motion_10, motion_22])
@pytest.mark.parametrize(
    ("S_DS", "S_D1", "S_1", "letter"),
    [
        (0.167, 0.0, 0.0, "B"),
        (0.33, 0.0, 0.0, "C"),
        (0.5, 0.0, 0.0, "D"),
        (0.0, 0.067, 0.0, "B"),
        (0.0, 0.133, 0.0, "C"),
        (0.0, 0.2, 0.0, "D"),
        (0.0, 0.0, 0.75, "E"),
        (0.0, 0.0, 0.749, "A"),
    ],
)
def test_a_category_begins_at_its_printed_value(
    motion: object, S_DS: float, S_D1: float, S_1: float, letter: str
) -> None:
    assert motion.design_category(S_DS, S_D1, S_1) == letter  # type: ignore[attr-defined]
    assert motion.design_category(0.0, 0.0, 0.75, "IV") == "F"  # type: ignore[attr-defined]


@pytest.mark.parametrize("motion", [motion_05, motion_10, motion_22])
def test_an_unknown_risk_category_is_refused_and_without_s_d1_category_d_is_taken(motion: object) -> None:
    with pytest.raises(OutsideLimits, match=r"Table 11\.6-1: no row 'V' \(risk category\); it has I, II, III, IV"):
        motion.design_category(1.0, 0.5, 0.5, "V")  # type: ignore[attr-defined]
    assert motion.design_category(0.1, None, 0.1, "II") == "D"  # type: ignore[attr-defined]


@given(S_DS=shaking, R=st.floats(1, 8))
def test_a_drawings_coefficient_is_worked_out_alike_by_each_edition(S_DS: float, R: float) -> None:
    assert elf_05.coefficient_plateau(S_DS, R, 1.0) == elf_10.coefficient_plateau(S_DS, R, 1.0)


# --- ASCE 7-22 -------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("v", "name"),
    [(5001, "A"), (5000, "B"), (3000, "BC"), (2100, "C"), (1450, "CD"), (1000, "D"), (700, "DE"), (500, "E"), (1, "E")],
)
def test_a_site_class_ends_at_its_printed_velocity(v: float, name: str) -> None:
    assert class_22.site_class(v) == name


@given(v=st.floats(1, 8000), more=st.floats(0, 4000))
def test_faster_ground_is_never_a_softer_class(v: float, more: float) -> None:
    order = class_22.CLASSES[:0:-1]
    assert order.index(class_22.site_class(v + more)) >= order.index(class_22.site_class(v))


def test_soft_clay_is_class_e_however_fast_and_no_velocity_is_refused() -> None:
    assert class_22.site_class(2000, soft_clay=True) == "E"
    assert set(class_22.table_20_2_1().rows) == set(class_22.CLASSES) - {"Default"}
    for wrong in (0.0, -1.0, float("nan"), float("inf")):
        with pytest.raises(OutsideLimits, match=r"ASCE 7-22 20\.2: v_s30 = \S+ ft/s; it must be above 0"):
            class_22.site_class(wrong)


def test_design_values_stand_as_entered_and_no_coefficient_is_made_up() -> None:
    site = motion_22.site_values(1.6, 0.6, "CD", S_DS=1.2, S_D1=0.7)
    assert (site.S_DS, site.S_D1, site.F_a, site.F_v, site.S_MS, site.warnings) == (1.2, 0.7, None, None, None, ())
    by_adjusted = motion_22.site_values(1.6, 0.6, "CD", S_MS=1.8, S_M1=1.05)
    assert pytest.approx(1.2) == by_adjusted.S_DS
    assert pytest.approx(0.7) == by_adjusted.S_D1


def test_the_class_of_a_survey_by_the_earlier_edition_is_understood() -> None:
    assert motion_22.site_values(1.6, 0.6, "D-default", S_DS=1.2).site_class == "Default"
    assert motion_22.site_values(1.6, 0.6, "B-estimated", S_DS=1.2).site_class == "B"
    with pytest.raises(OutsideLimits, match=r"ASCE 7-22 11\.4\.2: site class 'F' is not one of Default, A, B, BC"):
        motion_22.site_values(1.6, 0.6, "F", S_DS=1.2)


def test_nothing_is_worked_out_from_the_mapped_values() -> None:
    with pytest.raises(OutsideLimits) as refused:
        motion_22.site_values(1.6, 0.6, "D", S_D1=0.7)
    assert str(refused.value) == (
        "ASCE 7-22 11.4: this edition has no site coefficients; enter S_DS or S_MS for site class D, from the hazard "
        "service or a study"
    )


def test_two_entries_that_contradict_each_other_are_refused() -> None:
    assert motion_22.site_values(1.6, 0.6, "D", S_MS=1.8, S_DS=1.201).S_DS == 1.201  # both rounded to three decimals
    with pytest.raises(OutsideLimits) as refused:
        motion_22.site_values(1.6, 0.6, "D", S_MS=1.8, S_DS=1.8)
    assert str(refused.value) == (
        "ASCE 7-22 11.4.4: S_DS = 1.8 g is entered beside S_MS, of which two thirds is 1.200 g; leave one of them out"
    )


def test_without_s_d1_the_plateau_stands_and_the_warning_says_so() -> None:
    site = motion_22.site_values(1.6, 0.6, "D", S_DS=1.2)
    assert site.warnings == ("ASCE 7-22: S_D1 is not entered; no upper value of C_s is taken",)
    got = elf_22.seismic_coefficient(1.2, site.S_D1, 0.3, 3.0, 6.0, 6.5)
    assert (got.C_s, got.upper, got.governs) == (1.2 / 6.5, None, "Eq. 12.8-3")


NEW_NUMBERS = {f"Eq. 12.8-{n}": f"Eq. 12.8-{n + 1}" for n in range(2, 7)}


@given(S_DS=shaking, S_D1=shaking, S_1=st.floats(0, 1.5), T=st.floats(0.05, 12.0), R=st.floats(1, 8))
def test_the_coefficient_is_that_of_2016_under_the_new_numbers(
    S_DS: float, S_D1: float, S_1: float, T: float, R: float
) -> None:
    old = elf.seismic_coefficient(S_DS, S_D1, S_1, T, 6.0, R)
    new = elf_22.seismic_coefficient(S_DS, S_D1, S_1, T, 6.0, R)
    assert (new.C_s, new.upper, new.least) == (old.C_s, old.upper, old.least)
    assert new.governs == NEW_NUMBERS[old.governs]


@given(st.lists(st.tuples(st.floats(100, 1e6), st.floats(1, 60)), min_size=1, max_size=5), st.floats(0.05, 4.0))
def test_the_share_up_the_height_is_that_of_2016(levels: list[tuple[float, float]], T: float) -> None:
    weights, heights = zip(*levels, strict=True)
    old = elf.vertical_distribution(10000.0, T, weights, heights)
    assert elf_22.vertical_distribution(10000.0, T, weights, heights) == old


def test_the_vertical_distribution_refuses_uneven_lists_and_no_weight() -> None:
    with pytest.raises(OutsideLimits, match=r"ASCE 7-22 12\.8\.3: 1 weights and 2 heights; give one of each per level"):
        elf_22.vertical_distribution(1.0, 0.2, (1.0,), (1.0, 2.0))
    with pytest.raises(OutsideLimits, match=r"ASCE 7-22 12\.8\.3: no weight stands above the base"):
        elf_22.vertical_distribution(1.0, 0.2, (0.0,), (1.0,))


def test_the_cap_names_what_is_not_met_by_this_edition() -> None:
    assert elf_22.short_period_cap(1.6, 0.2, 1.0, 2.0, "CD", regular=True) == pytest.approx(1.12)
    with pytest.raises(OutsideLimits, match=r"ASCE 7-22 12\.8\.1\.3: the cap .* not met: site class neither E nor F"):
        elf_22.short_period_cap(1.6, 0.2, 1.0, 2.0, "E", regular=True)


def test_snow_counts_from_45_psf_on_at_15_per_cent() -> None:
    assert [weight_22.snow_weight(p) for p in (0.0, 30.0, 45.0, 60.0)] == [0.0, 0.0, 0.0, 9.0]
    assert weight_22.snow_weight(45.001) == pytest.approx(6.75, abs=0.001)


def test_strength_level_snow_stands_in_two_combinations_with_less() -> None:
    loads = {"D": 1000.0, "L": 400.0, "S": 100.0, "E_v": 200.0, "E_h": 500.0}
    assert effects.asd_down_with_live(**loads) - effects_22.asd_down_with_live(**loads) == pytest.approx(65.0)
    assert effects.lrfd_down(**loads) - effects_22.lrfd_down(**loads) == pytest.approx(5.0)
    assert effects_22.asd_down_with_live(**loads) == pytest.approx(1677.5)
    assert effects_22.lrfd_down(**loads) == pytest.approx(2315.0)


@pytest.mark.parametrize("item", ["A.15", "A.17", "B.22", "B.24"])
def test_a_system_is_found_by_its_words_and_by_its_earlier_item(item: str) -> None:
    with Sheet() as sheet:
        new = systems_22.system_factors(item)
    old = systems.system_factors(item)
    assert (new.R, new.Omega_0, new.C_d) == (old.R, old.Omega_0, old.C_d)
    assert f"{item} {new.system}" == old.system
    assert systems_22.system_factors(new.system) == new
    assert any(step.title.startswith(f"Item {item} of ASCE 7-16; ") for step in sheet.steps)


def test_an_item_of_the_new_table_is_not_guessed() -> None:
    with pytest.raises(OutsideLimits, match=r"ASCE 7-22 Table 12\.2-1: no row 'A\.16' \(system\); it has bearing"):
        systems_22.system_factors("A.16")


def test_redundancy_is_claimed_with_a_reason_or_refused() -> None:
    assert systems_22.redundancy("C") == 1.0
    assert systems_22.redundancy("D") == 1.3
    assert systems_22.redundancy("D", "b", "two bays on each side") == 1.0
    with pytest.raises(OutsideLimits, match=r"ASCE 7-22 12\.3\.4\.2: condition \(b\) is claimed without a reason"):
        systems_22.redundancy("D", "b", " ")
    with pytest.raises(OutsideLimits, match=r"ASCE 7-22 12\.3\.4\.2: condition 'c' is not one of a, b"):
        systems_22.redundancy("D", "c", "why")


def test_an_entered_value_carries_its_doubt_to_the_base_shear() -> None:
    with Sheet():
        doubt = Mark("estimated", "S_DS read off a map")
        S_DS = recorded("S_DS", 1.2, "g", "site", [doubt])
        site = motion_22.site_values(1.6, 0.6, "D", S_DS=S_DS)
        assert site.S_DS is not None
        got = elf_22.seismic_coefficient(site.S_DS, None, 0.6, 0.2, 6.0, 6.5)
        assert doubt in marks_of([got.C_s])
    assert motion_22.importance_factor("II") == 1.0


# --- the same questions to either edition ----------------------------------------------------------------------------


@pytest.mark.parametrize("document", EDITIONS)
def test_a_house_is_worked_out_by_either_edition_with_the_same_calls(document: str) -> None:
    rules = rules_of(document)
    site = rules.site(1.5, 0.5, "D-default", 1.2, 0.6)
    assert (site.S_DS, site.S_D1) == (1.2, 0.6)
    assert rules.design_category(1.2, 0.6, 0.5, "II") == "D"
    system = rules.system_factors("A.15")
    period = rules.approximate_period(18.0)
    C = rules.seismic_coefficient(site, 1.2, period, 6.0, system.R, rules.importance_factor("II"), True)
    V = rules.base_shear(C.C_s, 77910.0)
    assert pytest.approx(14383, abs=1) == V
    assert sum(level.F_x for level in rules.vertical_distribution(V, period, (4e4, 3e4), (10.0, 19.0))) == (
        pytest.approx(V)
    )
    assert rules.redundancy("D", "", "") == 1.3
    assert rules.short_period_cap(1.6, period, 1.0, 2.0, "D", True, "II") == pytest.approx(1.12)
    assert (rules.snow_weight(40.0) > 0) == (document == "asce7-16")


def test_only_where_nothing_is_entered_do_the_coefficients_of_2016_speak() -> None:
    assert pytest.approx(1.2) == rules_of("asce7-16").site(1.5, 0.5, "C", None, None).S_DS
    assert rules_of("asce7-16").site(1.5, 0.5, "C", 1.1, None).S_DS == 1.1
    with pytest.raises(OutsideLimits, match="enter S_DS or S_MS for site class C"):
        rules_of("asce7-22").site(1.5, 0.5, "C", None, None)


def test_on_soft_ground_exception_1_gives_class_cs_coefficient_where_nothing_else_is_missing() -> None:
    rules = rules_of("asce7-16")
    assert pytest.approx(2 / 3 * 1.2 * 1.5) == rules.site(1.5, 0.1, "E", None, None).S_DS
    assert rules.site(1.5, 0.3, "E", None, None).S_DS is None  # exception 3 needs T_S, which no table gives
    assert rules.site(1.5, 0.1, "E", 0.9, None).S_DS == 0.9


def test_exception_2_keeps_the_plateau_to_one_and_a_half_times_its_end_unless_a_study_was_made() -> None:
    rules = rules_of("asce7-16")
    site = rules.site(2.4, 0.2, "D", None, None)
    assert site.warnings
    assert site.S_DS is not None
    assert site.S_D1 is not None
    T_S = site.S_D1 / site.S_DS
    for T, times in ((1.2 * T_S, None), (1.6 * T_S, 1.5)):
        C = rules.seismic_coefficient(site, site.S_DS, T, 6.0, 6.5, 1.0, False)
        own = rules.seismic_coefficient(site, site.S_DS, T, 6.0, 6.5, 1.0, True)
        assert own.C_s == pytest.approx(site.S_D1 / (T * 6.5))
        assert C.C_s == pytest.approx(site.S_DS / 6.5 if times is None else min(site.S_DS / 6.5, times * own.C_s))
        assert C.C_s > own.C_s


def test_no_force_is_worked_out_by_an_edition_kept_for_drawings() -> None:
    with pytest.raises(UnknownFormula, match="by asce7-10; it is one of asce7-16, asce7-22"):
        rules_of("asce7-10")
