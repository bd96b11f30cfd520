"""ASCE 7-16: laws, limits and table ends; the printed values are in tests/published."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.standards.asce7_16 import effects, elf, ground_motion, systems, weight
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet
from groundsill.working.steps import given as recorded
from groundsill.working.value import marks_of

CLASSES = ("A", "B", "B-estimated", "C", "D", "D-default")
shaking = st.floats(0.01, 3.0)
period = st.floats(0.05, 8.0)


# --- ground motion ---------------------------------------------------------------------------------------------------


@given(S_S=shaking, S_1=st.floats(0.01, 1.5), site_class=st.sampled_from(CLASSES))
def test_design_values_are_two_thirds_of_the_adjusted_ones(S_S: float, S_1: float, site_class: str) -> None:
    site = ground_motion.site_values(S_S, S_1, site_class)
    assert pytest.approx(2 / 3 * site.F_a * S_S) == site.S_DS
    assert pytest.approx(2 / 3 * site.F_v * S_1) == site.S_D1


@given(low=shaking, more=st.floats(0.0, 1.0), site_class=st.sampled_from(CLASSES))
def test_stronger_rock_shaking_never_gives_weaker_ground_shaking(low: float, more: float, site_class: str) -> None:
    weak = ground_motion.site_values(low, low / 2, site_class)
    strong = ground_motion.site_values(low + more, (low + more) / 2, site_class)
    assert strong.S_MS >= weak.S_MS - 1e-12
    assert strong.S_M1 >= weak.S_M1 - 1e-12


def test_coefficients_hold_flat_beyond_the_end_columns() -> None:
    table = ground_motion.table_11_4_1()
    assert table.interpolate("D", 0.01) == table.read("D", 0.25) == 1.6
    assert table.interpolate("D", 2.9) == table.read("D", 1.5) == 1.0


def test_between_two_columns_a_straight_line() -> None:
    assert ground_motion.table_11_4_2().interpolate("D", 0.468) == pytest.approx(1.9 - 0.68 * 0.1)


def test_unknown_soil_takes_no_less_than_1_2_at_short_periods() -> None:
    assert min(float(c) for c in ground_motion.table_11_4_1().rows["D-default"]) == 1.2


def test_soft_ground_holds_the_last_printed_figure_up_to_the_study_limit() -> None:
    assert ground_motion.site_values(0.999, 0.1, "E").F_a == 1.3
    assert ground_motion.site_values(1.0, 0.1, "E").F_a is None
    assert ground_motion.site_values(0.5, 0.199, "E").F_v == 4.2
    assert ground_motion.site_values(0.5, 0.2, "E").S_D1 is None


def test_soft_ground_under_strong_shaking_may_take_class_c_by_exception_1_and_says_it_is_recalled() -> None:
    with Sheet():
        S_S = recorded("S_S", 1.5, "g", "map")
        site = ground_motion.site_values(S_S, recorded("S_1", 0.1, "g", "map"), "E", exception_1=True)
        assert site.F_a == 1.2
        recalled = {mark.what for mark in marks_of([site.S_DS]) if mark.kind == "from memory"}
    assert recalled == {"ASCE 7-16 11.4.8 exception 1, the equation"}


@pytest.mark.parametrize(
    ("site_class", "S_S", "S_1", "asks"),
    [
        ("C", 2.0, 1.0, 0),
        ("D", 2.0, 0.19, 0),
        ("D", 0.1, 0.2, 1),
        ("D-default", 2.0, 0.2, 1),
        ("E", 0.9, 0.2, 1),
        ("E", 1.0, 0.3, 2),
    ],
)
def test_when_a_site_specific_study_is_asked_for(site_class: str, S_S: float, S_1: float, asks: int) -> None:
    warnings = ground_motion.site_specific_study(site_class, S_S, S_1)
    assert len(warnings) == asks
    assert all("hazard analysis" in warning for warning in warnings)


def test_a_site_class_outside_the_table_is_refused_and_the_rows_are_named() -> None:
    with pytest.raises(
        OutsideLimits, match=r"ASCE 7-16 Table 11\.4-1: no row 'F' \(site class\); it has A, B, B-estimated, C"
    ):
        ground_motion.site_values(1.0, 0.4, "F")


# --- category --------------------------------------------------------------------------------------------------------


@given(S_DS=st.floats(0, 2), S_D1=st.floats(0, 2), S_1=st.floats(0, 1.5), more=st.floats(0, 1))
def test_more_shaking_never_lowers_the_category(S_DS: float, S_D1: float, S_1: float, more: float) -> None:
    for risk in ("I", "II", "III", "IV"):
        before = ground_motion.design_category(S_DS, S_D1, S_1, risk)
        assert ground_motion.design_category(S_DS + more, S_D1 + more, S_1 + more, risk) >= before


@pytest.mark.parametrize(("S_DS", "letter"), [(0.1669, "A"), (0.167, "B"), (0.3299, "B"), (0.33, "C"), (0.5, "D")])
def test_a_category_begins_at_its_printed_value(S_DS: float, letter: str) -> None:
    assert ground_motion.design_category(S_DS, 0.0, 0.0) == letter


def test_where_one_second_motion_awaits_a_study_the_category_is_at_least_d() -> None:
    assert ground_motion.design_category(0.3, None, 0.3) == "D"


def test_an_unknown_risk_category_is_refused() -> None:
    with pytest.raises(OutsideLimits, match=r"no row 'V' \(risk category\); it has I, II, III, IV"):
        ground_motion.design_category(1.0, 0.5, 0.5, "V")


# --- base shear ------------------------------------------------------------------------------------------------------


@given(S_DS=shaking, S_D1=shaking, S_1=st.floats(0, 1.5), T=period, R=st.floats(1, 8))
def test_cs_lies_between_its_least_value_and_the_plateau(
    S_DS: float, S_D1: float, S_1: float, T: float, R: float
) -> None:
    got = elf.seismic_coefficient(S_DS, S_D1, S_1, T, 6.0, R)
    assert got.C_s >= got.least
    assert got.C_s <= max(got.plateau, got.least)


@given(S_DS=shaking, S_D1=shaking, T=period, R=st.floats(1, 8))
def test_heavier_houses_and_smaller_r_draw_more_force(S_DS: float, S_D1: float, T: float, R: float) -> None:
    ductile = elf.seismic_coefficient(S_DS, S_D1, 0.4, T, 6.0, R + 1)
    brittle = elf.seismic_coefficient(S_DS, S_D1, 0.4, T, 6.0, R)
    assert brittle.C_s >= ductile.C_s
    assert elf.base_shear(brittle.C_s, 80000.0) >= elf.base_shear(brittle.C_s, 60000.0)


@given(S_DS=shaking, S_D1=shaking, T=period)
def test_exception_2_never_lowers_the_force(S_DS: float, S_D1: float, T: float) -> None:
    with_it = elf.seismic_coefficient(S_DS, S_D1, 0.4, T, 6.0, 6.5, exception_2=True)
    assert with_it.C_s >= elf.seismic_coefficient(S_DS, S_D1, 0.4, T, 6.0, 6.5).C_s - 1e-12


def test_exception_2_takes_the_plateau_up_to_one_and_a_half_ts_and_says_so() -> None:
    got = elf.seismic_coefficient(1.2, 0.6, 0.4, 0.75, 6.0, 6.5, exception_2=True)
    assert (got.governs, got.upper) == ("Eq. 12.8-2", None)
    beyond = elf.seismic_coefficient(1.2, 0.6, 0.4, 0.76, 6.0, 6.5, exception_2=True)
    assert beyond.governs == "1.5 times Eq. 12.8-3"
    assert beyond.C_s == pytest.approx(1.5 * 0.6 / (0.76 * 6.5))


def test_the_upper_values_meet_at_the_long_period() -> None:
    assert elf.coefficient_upper(0.6, 6.0, 6.5, 1.0) == pytest.approx(
        elf.coefficient_long_period(0.6, 6.0, 6.0, 6.5, 1.0)
    )


def test_near_a_large_fault_the_least_value_rises() -> None:
    long = elf.seismic_coefficient(1.0, 0.2, 0.75, 3.0, 6.0, 6.5)
    assert long.governs == "Eq. 12.8-6"
    assert long.C_s == long.least == pytest.approx(0.5 * 0.75 / 6.5)


def test_near_fault_value_is_refused_for_weaker_one_second_motion() -> None:
    with pytest.raises(OutsideLimits, match=r"ASCE 7-16 Eq\. 12\.8-6: S_1 .* = 0\.59 g; must be at least 0\.6 g"):
        elf.coefficient_near_fault(0.59, 6.5, 1.0)


def test_r_below_one_is_refused_by_name() -> None:
    with pytest.raises(
        OutsideLimits,
        match=r"ASCE 7-16 Eq\. 12\.8-2: R \(response modification coefficient\) = 0 1; must be at least 1",
    ):
        elf.coefficient_plateau(1.0, 0.0, 1.0)


def test_the_short_period_cap_names_what_is_not_met() -> None:
    with pytest.raises(
        OutsideLimits, match=r"12\.8\.1\.3.*not met: no irregularity of 12\.3\.2; redundancy factor allowed to be 1\.0"
    ):
        elf.short_period_cap(1.8, 0.2, 1.3, 1.0, "D", regular=False)


@given(S_DS=shaking)
def test_the_short_period_cap_never_raises_and_never_takes_more_than_three_tenths(S_DS: float) -> None:
    capped = elf.short_period_cap(S_DS, 0.2, 1.0, 2.0, "D", regular=True)
    assert 0.7 * S_DS - 1e-12 <= capped <= S_DS


@given(st.lists(st.tuples(st.floats(100, 1e6), st.floats(1, 60)), min_size=1, max_size=6), period, st.floats(0, 1e6))
def test_level_forces_sum_to_the_base_shear(levels: list[tuple[float, float]], T: float, V: float) -> None:
    weights, heights = zip(*levels, strict=True)
    forces = elf.vertical_distribution(V, T, weights, heights)
    assert sum(f.F_x for f in forces) == pytest.approx(V)
    assert sum(f.C_vx for f in forces) == pytest.approx(1.0)


def test_one_level_takes_all_of_it() -> None:
    (only,) = elf.vertical_distribution(10000.0, 0.2, (50000.0,), (10.0,))
    assert only.F_x == pytest.approx(10000.0)


def test_levels_without_heights_are_refused() -> None:
    with pytest.raises(OutsideLimits, match=r"2 weights and 1 heights; give one of each per level"):
        elf.vertical_distribution(1.0, 0.2, (1.0, 2.0), (1.0,))
    with pytest.raises(OutsideLimits, match="no weight stands above the base"):
        elf.vertical_distribution(1.0, 0.2, (0.0,), (10.0,))


@given(T=period)
def test_the_exponent_runs_from_one_to_two(T: float) -> None:
    assert 1.0 <= elf.distribution_exponent(T) <= 2.0
    assert elf.distribution_exponent(1.5) == pytest.approx(1.5)


# --- system, redundancy, drift ---------------------------------------------------------------------------------------


def test_systems_are_found_by_item_and_other_materials_carry_the_smaller_r() -> None:
    panels, other = systems.system_factors("A.15"), systems.system_factors("A.17")
    assert (panels.R, panels.Omega_0, panels.C_d) == (6.5, 3.0, 4.0)
    assert panels.R / other.R == 3.25


def test_plaster_and_boards_are_not_permitted_in_category_e() -> None:
    row = systems.system_factors("A.17").system
    with pytest.raises(OutsideLimits, match="height limit, E: not permitted"):
        systems.table_12_2_1().read(row, "height limit, E")


def test_an_unknown_system_is_refused_and_the_rows_are_named() -> None:
    with pytest.raises(OutsideLimits, match=r"no row 'Z\.1' \(system\); it has A\.15 bearing walls"):
        systems.system_factors("Z.1")


def test_the_factors_of_panels_are_seen_and_two_of_frames_with_other_panels_recalled() -> None:
    with Sheet():
        panels, others = systems.system_factors("A.15"), systems.system_factors("B.24")
        assert not marks_of([panels.R, panels.Omega_0, panels.C_d, others.R])
        assert {mark.kind for mark in marks_of([others.Omega_0])} == {"from memory"}
        assert {mark.kind for mark in marks_of([others.C_d])} == {"from memory"}


@pytest.mark.parametrize(("category", "rho"), [("A", 1.0), ("B", 1.0), ("C", 1.0), ("D", 1.3), ("E", 1.3), ("F", 1.3)])
def test_redundancy_by_category(category: str, rho: float) -> None:
    assert systems.redundancy(category) == rho
    assert systems.redundancy(category, "b", "regular, two panels on each side") == 1.0


def test_a_lower_redundancy_factor_needs_its_reason() -> None:
    with pytest.raises(OutsideLimits, match=r"12\.3\.4\.2: condition \(a\) is claimed without a reason"):
        systems.redundancy("D", "a", "  ")
    with pytest.raises(OutsideLimits, match="condition 'c' is not one of a, b"):
        systems.redundancy("D", "c", "because")


def test_the_reason_for_a_lower_redundancy_factor_stands_on_the_sheet() -> None:
    with Sheet() as sheet:
        systems.redundancy("D", "b", "regular in plan, panels at all four corners")
    assert any("panels at all four corners" in line.text for step in sheet.steps for line in step.lines)


@given(st.floats(2.5, 5.0))
def test_flexible_diaphragms_take_half_off_overstrength(Omega_0: float) -> None:
    assert systems.overstrength_flexible(Omega_0) == pytest.approx(Omega_0 - 0.5)


def test_small_overstrength_factors_stay() -> None:
    with pytest.raises(OutsideLimits, match=r"Omega_0 .* = 2 1; must be at least 2\.5"):
        systems.overstrength_flexible(2.0)


def test_light_frame_bays_and_drift() -> None:
    assert systems.light_frame_bays(8.0, 8.0) == 2.0
    assert systems.design_drift(4.0, 0.25, 1.0) == 1.0
    ratio = systems.table_12_12_1().read("four stories or less, finishes made to follow the drift", "II")
    assert systems.allowable_drift(ratio, 96.0) == pytest.approx(2.4)


# --- combinations ----------------------------------------------------------------------------------------------------


@given(S_DS=st.floats(0, 2), D=st.floats(0, 1e5), E=st.floats(-1e5, 1e5), L=st.floats(0, 1e4), S=st.floats(0, 1e4))
@settings(max_examples=30)
def test_the_factor_on_dead_load_is_the_combination_with_the_vertical_effect_in_it(
    S_DS: float, D: float, E: float, L: float, S: float
) -> None:
    E_v = effects.vertical_effect(S_DS, D)
    down = effects.asd_dead_factor_8(S_DS) * D + effects.asd_earthquake(E)
    assert effects.asd_down(D, E_v, E) == pytest.approx(down)
    live = effects.asd_dead_factor_9(S_DS) * D + effects.asd_earthquake_with_live(E) + 0.75 * (L + S)
    assert effects.asd_down_with_live(D, L, S, E_v, E) == pytest.approx(live)
    assert effects.asd_up(D, E_v, E) == pytest.approx(effects.asd_dead_factor_10(S_DS) * D + effects.asd_earthquake(E))
    assert effects.lrfd_down(D, L, S, E_v, E) == pytest.approx(effects.lrfd_dead_factor_6(S_DS) * D + E + L + 0.2 * S)
    assert effects.lrfd_up(D, E_v, E) == pytest.approx(effects.lrfd_dead_factor_7(S_DS) * D + E)


@given(st.floats(0, 3), st.floats(0, 1))
def test_stronger_shaking_leaves_less_dead_load_to_hold_down(S_DS: float, more: float) -> None:
    assert effects.asd_dead_factor_10(S_DS + more) <= effects.asd_dead_factor_10(S_DS)


def test_redundancy_and_overstrength_raise_the_horizontal_effect() -> None:
    assert effects.horizontal_effect(1.3, 1000.0) == 1300.0
    assert effects.overstrength_effect(3.0, -1000.0) == -3000.0
    with pytest.raises(OutsideLimits, match=r"rho .* = 1\.5 1; must be at least 1 and at most 1\.3"):
        effects.horizontal_effect(1.5, 1000.0)


def test_overturning_at_the_soil_is_a_quarter_less_only_for_walls_by_equivalent_force() -> None:
    assert effects.overturning_factor(True) == 0.75
    for wrong in ((False, False), (True, True)):
        with pytest.raises(
            OutsideLimits, match=r"12\.13\.4: the reduction of overturning at the soil is not allowed here"
        ):
            effects.overturning_factor(*wrong)


def test_the_increase_with_overstrength_is_recalled() -> None:
    with Sheet():
        factor = effects.overstrength_stress_increase()
    assert factor == 1.2
    assert [mark.kind for mark in marks_of([factor])] == ["from memory"]


# --- weights ---------------------------------------------------------------------------------------------------------


def test_what_counts_as_seismic_weight() -> None:
    assert weight.partition_weight(6.0) == 10.0
    assert weight.partition_weight(17.0) == 17.0
    assert weight.snow_weight(30.0) == 0.0
    assert weight.snow_weight(40.0) == 8.0
    assert weight.storage_weight(125.0) == 31.25


def test_pounds_and_kilonewtons_of_the_weight_table_agree_within_the_printed_rounding() -> None:
    table = weight.table_c3_1_1()
    for row, (si, psf) in table.rows.items():
        if not isinstance(si, str) and "3-in." not in row:  # that row is in the errata
            assert abs(float(si) * 20.885 - float(psf)) <= 0.5, row


def test_a_column_that_was_not_read_is_refused() -> None:
    with pytest.raises(
        OutsideLimits,
        match=r"Table C3\.1-1: no figure for floor: 2x8 joists at 16 in\., double floor, unit kN/m2: not read",
    ):
        weight.table_c3_1_1().read("floor: 2x8 joists at 16 in., double floor", "kN/m2")
