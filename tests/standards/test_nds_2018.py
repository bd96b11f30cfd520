"""The dowel connections of NDS 2018: laws of the yield modes, limits and their words, tables and their ends, marks."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.catalogue import entries
from groundsill.standards.nds_2018 import adjustment, bearing, geometry, group_action, nails, screws, withdrawal
from groundsill.standards.nds_2018 import yield_modes as modes
from groundsill.standards.nds_2018.bolts import bolt, bolt_steel_plate
from groundsill.standards.nds_2018.expected import expected_of, expected_yield
from groundsill.standards.nds_2018.screws import lag_screw, wood_screw
from groundsill.standards.nds_2018.shear import Lateral, double_shear, single_shear
from groundsill.standards.nds_2018.sill_bolt import sill_bolt, sill_bolt_weak_concrete
from groundsill.working.dimensions import check_units
from groundsill.working.equation import Equation
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet
from groundsill.working.value import Value, marks_of

DIAMETERS = (0.5, 0.625, 0.75, 0.875, 1.0)
SPECIES = ("Douglas fir-larch", "Redwood", "Hem-fir", "Southern pine", "Western cedars")
EQUATIONS = [entry.maker for entry in entries("nds-2018") if isinstance(entry.maker, Equation)]

joints = st.fixed_dictionaries(
    {
        "D": st.floats(0.09, 1.0),
        "l_m": st.floats(0.5, 12.0),
        "l_s": st.floats(0.03, 6.0),
        "F_em": st.floats(1500.0, 90000.0),
        "F_es": st.floats(1500.0, 90000.0),
        "F_yb": st.floats(30000.0, 100000.0),
        "theta": st.floats(0.0, 90.0),
    }
)
raises = st.floats(1.0, 3.0)


@pytest.mark.parametrize("equation", EQUATIONS, ids=[e.id for e in EQUATIONS])
def test_units_and_scale_of_every_equation(equation: Equation[Any]) -> None:
    check_units(equation)


def test_every_equation_is_found_and_says_what_it_is() -> None:
    assert len(EQUATIONS) > 40
    assert all(len(e.__doc__ or "") > 20 for e in EQUATIONS)


# --- yield modes -------------------------------------------------------------------------------------------------


@given(joint=joints)
def test_the_reference_value_is_the_least_mode_and_names_it(joint: dict[str, float]) -> None:
    got = single_shear(**joint)
    assert pytest.approx(min(got.modes().values())) == got.Z
    assert got.modes()[got.mode] == got.Z
    assert list(got.modes()) == ["Im", "Is", "II", "IIIm", "IIIs", "IV"]


@given(joint=joints, more=raises)
@pytest.mark.parametrize("what", ["l_m", "l_s", "F_em", "F_es", "F_yb"])
def test_more_of_anything_never_weakens_the_joint(joint: dict[str, float], more: float, what: str) -> None:
    assert single_shear(**(joint | {what: joint[what] * more})).Z >= single_shear(**joint).Z * (1 - 1e-12)


@given(joint=joints, more=raises)
def test_a_thicker_dowel_is_never_weaker_within_one_reduction_term(joint: dict[str, float], more: float) -> None:
    thick = min(joint["D"] * more, 1.0)
    if (thick < 0.25) != (joint["D"] < 0.25) or (0.17 < thick < 0.25):
        return  # the reduction term jumps at 1/4 in., and climbs with D below it
    assert single_shear(**(joint | {"D": thick})).Z >= single_shear(**joint).Z * (1 - 1e-12)


@given(joint=joints)
def test_swapping_the_members_mirrors_the_modes(joint: dict[str, float]) -> None:
    swapped = joint | {
        "l_m": joint["l_s"],
        "l_s": joint["l_m"],
        "F_em": joint["F_es"],
        "F_es": joint["F_em"],
    }
    one, other = single_shear(**joint), single_shear(**swapped)
    assert pytest.approx(other.Z_Is) == one.Z_Im
    assert pytest.approx(other.Z_Im) == one.Z_Is
    assert pytest.approx(other.Z_IIIm, rel=1e-9) == one.Z_IIIs
    assert pytest.approx(other.Z_II, rel=1e-9) == one.Z_II
    assert pytest.approx(other.Z_IV) == one.Z_IV
    assert pytest.approx(other.Z) == one.Z


@given(joint=joints)
def test_a_larger_angle_never_raises_the_value(joint: dict[str, float]) -> None:
    assert single_shear(**(joint | {"theta": 90.0})).Z <= single_shear(**(joint | {"theta": 0.0})).Z * (1 + 1e-12)


@given(joint=joints)
def test_double_shear_is_at_most_twice_single_shear(joint: dict[str, float]) -> None:
    two, one = double_shear(**joint), single_shear(**joint)
    assert pytest.approx(two.Z_Im) == one.Z_Im
    assert pytest.approx(two.Z_Is) == 2 * one.Z_Is
    assert pytest.approx(two.Z_IIIs) == 2 * one.Z_IIIs
    assert pytest.approx(two.Z_IV) == 2 * one.Z_IV
    assert two.Z_II is None
    assert two.Z_IIIm is None
    assert list(two.modes()) == ["Im", "Is", "IIIs", "IV"]


@given(st.floats(0.01, 100.0), st.floats(0.01, 100.0))
def test_k1_mirrors_and_has_its_known_ends(R_e: float, R_t: float) -> None:
    assert modes.k_1(1.0, 1.0) == pytest.approx(math.sqrt(2) - 1)
    assert modes.k_1(1.0, 1e-9) == pytest.approx((math.sqrt(3) - 1) / 2)
    assert modes.k_1(R_e, R_t) == pytest.approx(R_e * R_t * modes.k_1(1 / R_e, 1 / R_t), rel=1e-6)


def test_a_dowel_that_cannot_bend_leaves_k2_and_k3_large() -> None:
    """With a bending strength near zero the hinge costs nothing and the coefficients fall to those of a free end."""
    assert modes.k_2(1.0, 1e-9, 0.5, 5600.0, 3.0) == pytest.approx(1.0)
    assert modes.k_3(1.0, 1e-9, 0.5, 5600.0, 1.5) == pytest.approx(1.0)


def test_reduction_terms_at_their_borders() -> None:
    assert modes.reduction_small_dowel(0.17) == 2.2
    assert modes.reduction_small_dowel(0.1700001) == pytest.approx(2.2, abs=1e-5)
    assert modes.reduction_small_dowel(0.192) == pytest.approx(2.42)
    assert (modes.angle_factor(0.0), modes.angle_factor(90.0)) == (1.0, 1.25)
    assert single_shear(0.25, 3.0, 1.5, 5600.0, 5600.0, 45000.0).Z_Im == pytest.approx(0.25 * 3 * 5600 / 4)


# --- bearing -----------------------------------------------------------------------------------------------------


@given(st.floats(0.3, 0.8), st.floats(0.25, 1.0), st.floats(0.0, 90.0))
def test_hankinson_lies_between_its_ends(G: float, D: float, theta: float) -> None:
    along, across = bearing.bearing_parallel(G), bearing.bearing_perpendicular(G, D)
    got = bearing.bearing_at_angle(along, across, theta)
    assert min(along, across) * (1 - 1e-12) <= got <= max(along, across) * (1 + 1e-12)
    assert bearing.bearing_at_angle(along, across, 0.0) == pytest.approx(along)
    assert bearing.bearing_at_angle(along, across, 90.0) == pytest.approx(across)


@pytest.mark.parametrize("species", SPECIES)
def test_wood_bearing_goes_over_smoothly_to_its_ends(species: str) -> None:
    assert bearing.wood_bearing(0.5, species, 1e-6) == pytest.approx(bearing.wood_bearing(0.5, species, 0.0))
    assert bearing.wood_bearing(0.5, species, 89.999999) == pytest.approx(bearing.wood_bearing(0.5, species, 90.0))
    assert bearing.wood_bearing(0.162, species, 90.0) == bearing.wood_bearing(0.162, species, 0.0)


def test_rounding_is_to_the_nearest_fifty_psi_and_can_be_left_out() -> None:
    assert bearing.wood_bearing(0.162, "Douglas fir-larch") == 4650.0
    assert bearing.wood_bearing(0.162, "Douglas fir-larch", rounding="exact") == pytest.approx(4637.0, abs=1.0)
    assert bearing.wood_bearing(0.5, "Douglas fir-larch", 90.0) == 3150.0
    with pytest.raises(OutsideLimits, match=r"NDS 2018 Table 12.3.3: rounding 'nearly' is not printed or exact"):
        bearing.wood_bearing(0.5, "Redwood", rounding="nearly")


def test_an_unknown_species_is_answered_with_those_there_are() -> None:
    with pytest.raises(OutsideLimits, match=r"no species or panel 'Teak'; they name Douglas fir-larch, .* OSB, all gr"):
        bearing.specific_gravity("Teak")


def test_steel_equations_meet_the_printed_rows() -> None:
    assert bearing.bearing_hot_rolled_steel(58000.0, 0.25) == bearing.steel_bearing("A36, 1/4 in. and thicker")
    assert bearing.bearing_cold_formed_steel(45000.0, 0.06) == pytest.approx(bearing.steel_bearing(), abs=26)
    with pytest.raises(OutsideLimits, match=r"t \(thickness of the steel\) = 0.25 in; must be above 0 and below 0.25"):
        bearing.bearing_cold_formed_steel(45000.0, 0.25)


# --- sill bolts --------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("D", DIAMETERS)
@pytest.mark.parametrize("species", SPECIES)
def test_a_sill_bolt_across_the_grain_is_worth_less_than_along(D: float, species: str) -> None:
    assert sill_bolt(D, 1.5, species, 90.0).Z < sill_bolt(D, 1.5, species).Z


def test_half_inch_bolt_in_douglas_fir_sill_matches_table_12e() -> None:
    got = sill_bolt(0.5, 1.5)
    assert (round(got.Z, -1), got.mode) == (650.0, "IIIs")


def test_embedment_does_not_move_a_thin_sill_so_it_never_proves_an_anchor() -> None:
    assert sill_bolt(0.625, 1.5, l_m=12.0).Z == sill_bolt(0.625, 1.5).Z


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"D": 0.2}, r"12.3.1: D \(bolt diameter\) = 0.2 in; must be at least 0.25 and at most 1 in"),
        ({"D": 1.125}, r"D \(bolt diameter\) = 1.125 in; must be at least 0.25 and at most 1 in"),
        ({"l_m": 5.9}, r"Table 12E: l_m \(length of the bolt in the concrete\) = 5.9 in; must be at least 6 in"),
        ({"l_s": 0.0}, r"l_s \(thickness of the sill\) = 0 in; must be above 0 in"),
        ({"f_c": 2000.0}, r"f'_c \(concrete strength\) = 2000 psi; must be at least 2500 psi. .*is an extension"),
        ({"f_c": math.nan}, r"f'_c \(concrete strength\) = nan psi"),
        ({"theta": 91.0}, r"θ \(angle between load and grain\) = 91 deg; must be at least 0 and at most 90 deg"),
        ({"D": math.inf}, r"D \(bolt diameter\) = inf in"),
    ],
)
def test_a_sill_bolt_outside_the_document_is_refused_in_words(change: dict[str, float], message: str) -> None:
    with pytest.raises(OutsideLimits, match=message):
        sill_bolt(**({"D": 0.625, "l_s": 1.5} | change))


@given(st.floats(100.0, 2499.0))
def test_weak_concrete_costs_the_wood_joint_little_and_always_something(f_c: float) -> None:
    weak, sound = sill_bolt_weak_concrete(0.5, 1.5, f_c), sill_bolt(0.5, 1.5)
    assert 0.0 < weak.Z < sound.Z


def test_weak_concrete_is_marked_as_an_extension_all_the_way() -> None:
    with Sheet():
        got = sill_bolt_weak_concrete(0.5, 1.5, 1000.0)
        after = expected_of(got)
    for value in (got.Z, after.P):
        assert isinstance(value, Value)
        assert "extension" in {mark.kind for mark in value.marks}
    with pytest.raises(OutsideLimits, match=r"f'_c = 2500 psi and l_m = 6 in lie inside the document; use nds.sill-b"):
        sill_bolt_weak_concrete(0.5, 1.5, 2500.0)
    with pytest.raises(OutsideLimits, match=r"f'_c \(concrete strength\) = 0 psi; must be above 0 psi"):
        sill_bolt_weak_concrete(0.5, 1.5, 0.0)


def test_a_short_bolt_in_sound_concrete_is_an_extension_too() -> None:
    with Sheet():
        got = sill_bolt_weak_concrete(0.5, 1.5, 3000.0, l_m=4.0)
    assert float(got.Z) == pytest.approx(sill_bolt(0.5, 1.5).Z)
    assert isinstance(got.Z, Value)
    assert [mark.what for mark in got.Z.marks if mark.kind == "extension"] == [
        "NDS 2018 Table 12E assumes 6 in. in the concrete: shorter needs a test"
    ]


def test_a_sill_bolt_in_sound_concrete_rests_on_no_recalled_figure() -> None:
    with Sheet() as sheet:
        got = sill_bolt(0.625, 1.5)
    assert isinstance(got.Z, Value)
    assert got.Z.marks == frozenset()
    assert {"nds-2018/12E", "nds-2018/12.3.1", "nds-2018/12.3.1-IIIs"} <= {step.id for step in sheet.steps}


def test_with_and_without_a_sheet_the_numbers_are_the_same() -> None:
    plain = sill_bolt(0.75, 2.5, "Redwood", 30.0)
    with Sheet():
        recorded = sill_bolt(0.75, 2.5, "Redwood", 30.0)
    assert float(recorded.Z) == plain.Z
    assert recorded.mode == plain.mode


# --- bolts in wood and steel, screws -------------------------------------------------------------------------------


def test_the_reduction_term_takes_the_greater_angle_of_the_two_members() -> None:
    both = bolt(0.5, 3.5, 1.5, theta_m=90.0, theta_s=90.0)
    one = bolt(0.5, 3.5, 1.5, theta_m=90.0, theta_s=0.0)
    assert one.theta == both.theta == 90.0
    assert both.Z < one.Z < bolt(0.5, 3.5, 1.5).Z


def test_a_steel_plate_holds_a_bolt_better_than_a_wood_plate_as_thick() -> None:
    assert bolt_steel_plate(0.5, 3.5, 0.25).Z > bolt(0.5, 3.5, 0.25).Z


def test_screws_and_lags_too_short_are_refused_in_words() -> None:
    with pytest.raises(
        OutsideLimits, match=r"12.1.5.6: p \(penetration of a No. 10 wood screw\) = 1 in; must be at le"
    ):
        wood_screw("10", 1.5, 0.5)
    with pytest.raises(
        OutsideLimits, match=r"12.1.4.6: p .*1/2 in. lag screw, tip not counted\) = 1.19 in; .* 4 D = 2"
    ):
        lag_screw("1/2", 3.0, 1.5)
    with pytest.raises(OutsideLimits, match="no row '11'"):
        wood_screw("11", 3.0, 0.5)


def test_a_lag_whose_root_is_under_a_quarter_inch_takes_both_terms() -> None:
    small = lag_screw("1/4", 4.0, 0.5, theta_m=90.0, theta_s=90.0)
    assert (
        pytest.approx(
            0.173**2 / (2.23 * 1.25) * math.sqrt(2 * small.F_em * 70000 / (3 * (1 + small.F_em / small.F_es)))
        )
        == small.Z_IV
    )
    assert lag_screw("1/2", 6.0, 1.5).D == 0.371


# --- expected strength ---------------------------------------------------------------------------------------------


@given(joint=joints)
def test_expected_yield_is_at_most_the_reference_value_times_its_own_term(joint: dict[str, float]) -> None:
    got = single_shear(**joint)
    P = expected_of(got).P
    K = 1 + 0.25 * joint["theta"] / 90
    most = {"Im": 4 * K, "Is": 4 * K, "II": 3.6 * K}.get(got.mode, 3.2 * K)
    if joint["D"] < 0.25:
        most = modes.reduction_small_dowel(joint["D"])
    assert got.Z < P <= got.Z * most * (1 + 1e-9)


def test_another_mode_may_yield_first_than_governs_the_allowable() -> None:
    across = sill_bolt(0.625, 1.5, theta=90.0)
    assert across.mode == "Is"
    assert expected_of(across).mode == "IIIs"
    with pytest.raises(OutsideLimits, match=r"planes \(shear planes\) = 3; must be 1 or 2"):
        expected_yield(0.5, 3.5, 1.5, 5600.0, 5600.0, 45000.0, 3.0)


def test_a_nail_that_reaches_less_far_is_expected_to_hold_less() -> None:
    full, short = nails.nail("16d common", 1.5), nails.nail("16d common", 1.5, t_m=1.25)
    assert pytest.approx(2.2 * full.Z) == expected_of(full).P
    assert pytest.approx(2.2 * short.Z) == expected_of(short).P


def test_expected_yield_of_a_double_shear_joint_uses_two_planes() -> None:
    joint = double_shear(0.5, 3.5, 1.5, 5600.0, 5600.0, 45000.0)
    assert pytest.approx(joint.Z * 3.2) == expected_of(joint).P
    assert isinstance(joint, Lateral)
    assert joint.planes == 2


# --- nails ---------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", list(nails.table_l4().rows))
def test_every_listed_nail_has_a_strength_and_holds_a_thin_board(name: str) -> None:
    n = nails.nail_size(name)
    assert 45000 <= n.F_yb <= 100000
    assert nails.nail(name, 0.5).Z > 40.0
    assert 10 * n.D < n.L


def test_nail_strength_bands_meet_without_a_hole() -> None:
    pairs = [(low, high) for low, high, _ in nails.table_i1_nails().rows.values()]
    assert all(pairs[i][1] == pairs[i + 1][0] for i in range(len(pairs) - 1))
    assert nails.nail_yield_strength(0.099) == 100000
    assert nails.nail_yield_strength(0.142) == 100000
    assert nails.nail_yield_strength(0.1421) == 90000
    for outside in (0.092, 0.38):
        with pytest.raises(OutsideLimits, match=f"nail diameter\\) = {outside} in; the table runs from 0.099 to 0.375"):
            nails.nail_yield_strength(outside)


@given(st.floats(0.98, 3.0), st.sampled_from(["tables", "equations"]))
def test_a_nail_never_gains_by_reaching_less_far(depth: float, rule: str) -> None:
    full = nails.nail("16d common", 0.5, t_m=3.0, penetration_rule=rule).Z
    assert full * (1 + 1e-12) >= nails.nail("16d common", 0.5, t_m=depth, penetration_rule=rule).Z


def test_penetration_between_six_and_ten_diameters_counts_by_the_named_rule() -> None:
    by_table = nails.nail("16d common", 1.5, t_m=1.25)
    by_modes = nails.nail("16d common", 1.5, t_m=1.25, penetration_rule="equations")
    assert by_table.C_p == pytest.approx(1.25 / 1.62)
    assert by_modes.C_p == 1.0
    assert by_table.Z < by_modes.Z
    with pytest.raises(OutsideLimits, match="penetration rule 'guess' is not tables or equations"):
        nails.nail("16d common", 1.5, penetration_rule="guess")


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: nails.nail("8d common", 2.0), r"p \(penetration of a 8d common nail\) = 0.5 in; must be at least 6 D"),
        (lambda: nails.nail("9d common", 0.5), "Table L4: no row '9d common'"),
        (lambda: nails.nail("8d common", -1.0), r"l_s \(thickness of the side member\) = -1 in; must be above 0 in"),
        (lambda: nails.nail_steel_plate("8d common", 0.25), r"t_s .* = 0.25 in; must be above 0 and below 0.25 in"),
        (lambda: nails.toenail("16d common", t_m=0.75), r"0.75 in; .*6 D|at least 6 D into the main member"),
    ],
)
def test_a_nail_that_is_no_connection_is_refused_in_words(call: Any, message: str) -> None:
    with pytest.raises(OutsideLimits, match=message):
        call()


@pytest.mark.parametrize("name", ["8d common", "10d common", "16d common", "16d sinker"])
def test_toenail_geometry_closes_on_itself(name: str) -> None:
    """The nail's length outside and inside, laid on its slope, make the nail."""
    L = nails.nail_size(name).L
    inside = nails.toenail_length_inside(L)
    assert inside * math.cos(math.radians(30)) == pytest.approx(nails.toenail_penetration(L))
    assert inside + L / 3 / math.cos(math.radians(30)) == pytest.approx(L)


def test_a_toenail_through_a_thin_block_bears_on_the_block_only() -> None:
    assert nails.toenail("16d common", t_s=0.75).joint.l_s == 0.75
    assert nails.toenail("16d common").joint.l_s == pytest.approx(3.5 / 3)


# --- withdrawal ------------------------------------------------------------------------------------------------------


@given(st.floats(0.3, 0.7), st.floats(0.25, 1.0))
def test_withdrawal_grows_with_density_and_diameter(G: float, D: float) -> None:
    for formula in (withdrawal.nail_withdrawal, withdrawal.wood_screw_withdrawal, withdrawal.lag_withdrawal):
        assert formula(G * 1.1, D) > formula(G, D)
    assert withdrawal.nail_withdrawal(G, D / 2) == pytest.approx(withdrawal.nail_withdrawal(G, D) / 2)


def test_a_lag_no_longer_than_side_member_and_tip_is_refused() -> None:
    with pytest.raises(OutsideLimits, match="must reach past its tapered tip into the main member"):
        withdrawal.lag_thread_penetration(1.8, 1.5, 0.3125)


def test_nothing_holds_a_nail_in_end_grain() -> None:
    W = withdrawal.nail_withdrawal(0.5, 0.162)
    assert adjustment.adjusted_withdrawal(W, 2.0, grain="end grain, nail withdrawal") == 0.0
    side = adjustment.adjusted_withdrawal(W, 2.0)
    assert side == pytest.approx(W * 2.0 * 1.6)
    assert adjustment.adjusted_withdrawal(W, 2.0, moisture="dry when built, wet in service") == pytest.approx(side / 4)
    toenailed = {"moisture": "dry when built, wet in service", "driven": "toenail, withdrawal"}
    assert adjustment.adjusted_withdrawal(W, 2.0, **toenailed) == pytest.approx(side * 0.67)
    assert adjustment.adjusted_withdrawal(W, 2.0, "LRFD") == pytest.approx(W * 2.0 * 3.32 * 0.65)


# --- adjusted values -------------------------------------------------------------------------------------------------


def test_every_factor_is_a_step_of_its_own() -> None:
    with Sheet() as sheet:
        got = adjustment.adjusted_lateral(141.0, driven="toenail, lateral", moisture="wet in service")
    assert got == pytest.approx(141.0 * 1.6 * 0.7 * 0.83)
    read = [step.result.symbol for step in sheet.steps if step.kind == "lookup" and step.result is not None]
    assert read == ["C_D", "C_M", "C_t", "C_eg", "C_di", "C_tn"]


@pytest.mark.parametrize(
    ("change", "factor"),
    [
        ({}, 1.6),
        ({"load": "permanent (dead)"}, 0.9),
        ({"moisture": "wet in service"}, 1.6 * 0.7),
        ({"moisture": "wet when built, dry in service, several rows of bolts"}, 1.6 * 0.4),
        ({"moisture": "wet when built, dry in service, one bolt or one row"}, 1.6),
        ({"temperature": "over 125 to 150 F, wet"}, 1.6 * 0.5),
        ({"grain": "end grain, lateral"}, 1.6 * 0.67),
        ({"use": "diaphragm"}, 1.6 * 1.1),
        ({"C_g": 0.9, "C_delta": 0.5}, 1.6 * 0.45),
        ({"method": "LRFD"}, 3.32 * 0.65),
        ({"method": "LRFD", "combination": "1.4 D"}, 3.32 * 0.65 * 0.6),
    ],
)
def test_factors_multiply(change: dict[str, Any], factor: float) -> None:
    assert adjustment.adjusted_lateral(1000.0, **change) == pytest.approx(1000.0 * factor)


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"method": "LFRD"}, "method 'LFRD' is not ASD or LRFD"),
        ({"load": "impact"}, "Table 2.3.2: no row 'impact'"),
        ({"moisture": "damp"}, "no row 'damp'"),
        ({"C_g": 1.1}, r"C_g \(group action factor\) = 1.1 1; must be above 0 and at most 1"),
    ],
)
def test_a_word_no_table_has_is_refused(change: dict[str, Any], message: str) -> None:
    with pytest.raises(OutsideLimits, match=message):
        adjustment.adjusted_lateral(1000.0, **change)


def test_a_damp_crawlspace_takes_a_factor_that_was_read() -> None:
    with Sheet():
        got = adjustment.adjusted_lateral(928.0, moisture="wet in service")
    assert isinstance(got, Value)
    assert float(got) == pytest.approx(928.0 * 0.7 * 1.6)
    assert not got.marks


def test_strength_design_takes_factors_that_were_read() -> None:
    with Sheet():
        got = adjustment.adjusted_lateral(928.0, method="LRFD")
    assert isinstance(got, Value)
    assert float(got) == pytest.approx(928.0 * 3.32 * 0.65)
    assert {mark.what.split(",")[0].split(":")[0] for mark in got.marks} == {"NDS 2018 Table 11.3.1"}  # its equation


def test_a_strand_board_shows_that_its_gravity_is_recalled_and_plywood_does_not() -> None:
    with Sheet():
        boards = {name: marks_of((bearing.table_12_3_3b().read(name),)) for name in bearing.table_12_3_3b().rows}
    assert {name for name, marks in boards.items() if marks} == {"OSB, all grades"}


# --- geometry and groups --------------------------------------------------------------------------------------------


@given(st.sampled_from(DIAMETERS), st.floats(3.5, 20.0), st.floats(0.0, 2.0))
def test_more_end_distance_never_lowers_the_factor(D: float, diameters: float, more: float) -> None:
    near = geometry.end_distance_factor(D, diameters * D * (1 + 1e-12))
    far = geometry.end_distance_factor(D, (diameters + more) * D * (1 + 1e-12))
    assert 0.5 <= near <= far <= 1.0


def test_the_factor_runs_from_one_half_to_one() -> None:
    assert geometry.end_distance_factor(0.5, 1.75) == 0.5
    assert geometry.end_distance_factor(0.5, 3.5) == 1.0
    assert geometry.spacing_factor(0.5, 1.5) == 0.75
    assert geometry.geometry_factor(0.625, 3.0, 1.75, 2.0) == pytest.approx(min(3 / 4.375, 2 / 2.5))
    assert geometry.geometry_factor(0.131, 0.5, 0.25) == 1.0


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"a_end": 2.0}, "Table 12.5.1A, .*: end distance = 2 in; must be at least 3.5 D = 2.188 in"),
        ({"s": 1.5}, "Table 12.5.1B, parallel: spacing = 1.5 in; must be at least 3 D = 1.875 in"),
        ({"a_edge": 0.9}, "Table 12.5.1C, parallel: edge distance = 0.9 in; must be at least 1.5 D = 0.9375 in"),
        ({"edge": "perpendicular, loaded edge"}, "edge distance = 1.75 in; must be at least 4 D = 2.5 in"),
        ({"s": 3.0, "row": "perpendicular"}, "no figure for perpendicular, distance full: what the attached members"),
        ({"a_end": math.nan}, "end distance = nan in; must be at least"),
    ],
)
def test_a_bolt_too_near_is_refused_in_words(change: dict[str, Any], message: str) -> None:
    with pytest.raises(OutsideLimits, match=message):
        geometry.geometry_factor(**({"D": 0.625, "a_end": 4.5, "a_edge": 1.75} | change))


def test_row_spacing_across_the_grain_meets_at_its_borders() -> None:
    for ratio in (2.0, 6.0):
        below = geometry.row_spacing_perpendicular(0.5, 0.5 * ratio - 1e-9)
        assert below == pytest.approx(geometry.row_spacing_perpendicular(0.5, 0.5 * ratio + 1e-9))
    assert geometry.row_spacing_perpendicular(0.5, 0.5) == 1.25
    assert geometry.row_spacing_perpendicular(0.5, 6.0) == 2.5


rows = st.tuples(st.sampled_from(DIAMETERS), st.floats(2.0, 12.0), st.floats(1.0, 60.0), st.floats(1.0, 60.0))


@given(rows)
def test_group_factor_falls_with_every_fastener_more_and_the_row_never_loses(row: tuple[float, ...]) -> None:
    D, s, A_m, A_s = row
    factors = [group_action.group_action_factor(D, float(n), s, 1.4e6, A_m, 1.4e6, A_s) for n in range(1, 9)]
    assert factors[0] == pytest.approx(1.0)
    assert all(a >= b * (1 - 1e-12) for a, b in pairwise(factors))
    assert all(n * a <= (n + 1) * b * (1 + 1e-9) for n, (a, b) in enumerate(pairwise(factors), 1))


@given(rows)
def test_it_does_not_matter_which_member_is_called_main(row: tuple[float, ...]) -> None:
    D, s, A_m, A_s = row
    one = group_action.group_action_factor(D, 4.0, s, 1.4e6, A_m, 1.2e6, A_s)
    assert group_action.group_action_factor(D, 4.0, s, 1.2e6, A_s, 1.4e6, A_m) == pytest.approx(one)


def test_groups_outside_the_rule() -> None:
    assert group_action.group_action_factor(0.162, 8.0, 2.0, 1.4e6, 8.0, 1.4e6, 8.0) == 1.0
    wood = group_action.group_action_factor(0.5, 6.0, 2.0, 1.4e6, 8.0, 29e6, 0.5)
    assert group_action.group_action_factor(0.5, 6.0, 2.0, 1.4e6, 8.0, 29e6, 0.5, "wood to metal") < wood
    with pytest.raises(OutsideLimits, match="joint 'glue' is not wood to wood or wood to metal"):
        group_action.group_action_factor(0.5, 6.0, 2.0, 1.4e6, 8.0, 1.4e6, 8.0, "glue")
    with pytest.raises(OutsideLimits, match=r"n \(number of fasteners in the row\) = 0 1; must be at least 1"):
        group_action.group_action_factor(0.5, 0.0, 2.0, 1.4e6, 8.0, 1.4e6, 8.0)


def test_a_panels_bearing_stands_for_small_fasteners_alone() -> None:
    assert bearing.wood_bearing(0.148, "OSB, all grades") == 4650.0
    with pytest.raises(
        OutsideLimits, match=r"NDS 2018 12\.3\.3\.2: D \(fastener diameter\) = 0\.375 in in a wood struct"
    ):
        bearing.wood_bearing(0.375, "OSB, all grades")


@given(
    size=st.sampled_from(("1/4", "5/16", "3/8", "1/2")),
    t=st.floats(0.05, 0.5),
    theta=st.floats(0.0, 90.0),
    species=st.sampled_from(("Douglas fir-larch", "Redwood", "Hem-fir")),
)
def test_a_lag_screw_in_steel_is_strongest_along_the_grain_and_thicker_steel_never_hurts(
    size: str, t: float, theta: float, species: str
) -> None:
    steel = "A36, 1/4 in. and thicker"
    along = screws.lag_screw_steel_plate(size, 6.0, t, species, 0.0, steel).Z
    at = screws.lag_screw_steel_plate(size, 6.0, t, species, theta, steel).Z
    assert at <= along + 1e-9
    thicker = screws.lag_screw_steel_plate(size, 6.0 + 0.1, t + 0.1, species, theta, steel).Z
    assert thicker >= at - 1e-9


def test_a_lag_screw_through_steel_is_refused_like_any_other() -> None:
    with pytest.raises(OutsideLimits, match=r"NDS 2018 12\.1\.4\.6: p \(penetration of a 1/4 in\. lag screw"):
        screws.lag_screw_steel_plate("1/4", 1.2, 0.25)
    with pytest.raises(OutsideLimits, match="no row '9/16'"):
        screws.lag_screw_steel_plate("9/16", 4.0, 0.25)
    with pytest.raises(OutsideLimits, match=r"θ"):
        screws.lag_screw_steel_plate("1/4", 4.0, 0.25, theta=91.0)
