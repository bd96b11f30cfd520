"""ACI 318-19 chapters 14 and 17: laws, limits, what is within the standard and what is an extension."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.aci318_19 import (
    expected,
    plain_concrete,
    pryout,
    pullout,
    scope,
    seismic,
    shear_breakout,
    steel,
    strength_factors,
    tables,
    tension_breakout,
)
from groundsill.standards.aci318_19.shear_breakout import breakout_parallel_to_edge, breakout_toward_edge
from groundsill.standards.catalogue import entries
from groundsill.working.dimensions import check_units
from groundsill.working.equation import Equation
from groundsill.working.errors import OutsideLimits, UnitError
from groundsill.working.sheet import Sheet
from groundsill.working.steps import given as recorded
from groundsill.working.value import Mark, marks_of

EQUATIONS = [e.maker for e in entries("aci318-19") if isinstance(e.maker, Equation)]
strength = st.floats(500.0, 10000.0)
bolt = st.sampled_from((0.5, 0.625, 0.75, 0.875, 1.0))
edge = st.floats(1.0, 24.0)
deep = st.floats(4.0, 15.0)
height = st.floats(4.0, 48.0)
end = st.floats(1.0, 200.0)
more = st.floats(0.0, 3.0)
NEAR = pytest.approx
UNTESTED = "not so: the concrete's strength is known by test"


@pytest.mark.parametrize("equation", EQUATIONS, ids=[e.id for e in EQUATIONS])
def test_every_equation_is_right_in_its_units(equation: Equation[..., float]) -> None:
    check_units(equation)


# --- shear breakout --------------------------------------------------------------------------------------------------


@given(d_a=bolt, h_ef=deep, f_c=strength, c_a1=edge, h_a=height, c_a2=end, more=more)
def test_stronger_concrete_and_a_stouter_bolt_never_break_out_sooner(
    d_a: float, h_ef: float, f_c: float, c_a1: float, h_a: float, c_a2: float, more: float
) -> None:
    at = breakout_parallel_to_edge(d_a, h_ef, f_c, c_a1, h_a, c_a2).nominal
    stronger = min(f_c * (1 + more), 10000.0)
    assert breakout_parallel_to_edge(d_a, h_ef, stronger, c_a1, h_a, c_a2).nominal >= at * (1 - 1e-12)
    assert breakout_parallel_to_edge(d_a + more, h_ef + 8 * more, f_c, c_a1, h_a, c_a2).nominal >= at * (1 - 1e-12)


@given(d_a=bolt, h_ef=deep, f_c=strength, c_a1=edge, h_a=height, more=more)
def test_farther_from_the_edge_never_breaks_out_sooner(
    d_a: float, h_ef: float, f_c: float, c_a1: float, h_a: float, more: float
) -> None:
    at = breakout_toward_edge(d_a, h_ef, f_c, c_a1, h_a).nominal
    assert breakout_toward_edge(d_a, h_ef, f_c, c_a1 * (1 + more), h_a).nominal >= at * (1 - 1e-12)


@given(d_a=bolt, h_ef=deep, f_c=strength, c_a1=edge, h_a=height, c_a2=end, more=more)
def test_a_farther_corner_and_a_deeper_stem_never_break_out_sooner(
    d_a: float, h_ef: float, f_c: float, c_a1: float, h_a: float, c_a2: float, more: float
) -> None:
    at = breakout_toward_edge(d_a, h_ef, f_c, c_a1, h_a, c_a2).nominal
    assert breakout_toward_edge(d_a, h_ef, f_c, c_a1, h_a, c_a2 * (1 + more)).nominal >= at * (1 - 1e-12)
    assert breakout_toward_edge(d_a, h_ef, f_c, c_a1, h_a * (1 + more), c_a2).nominal >= at * (1 - 1e-12)


@given(d_a=bolt, h_ef=deep, f_c=strength, c_a1=edge, h_a=height)
def test_far_from_corners_along_the_edge_is_twice_toward_it(
    d_a: float, h_ef: float, f_c: float, c_a1: float, h_a: float
) -> None:
    along = breakout_parallel_to_edge(d_a, h_ef, f_c, c_a1, h_a)
    assert along.nominal == NEAR(2 * breakout_toward_edge(d_a, h_ef, f_c, c_a1, h_a).nominal)
    assert along.design == NEAR(0.70 * along.nominal)


@given(c_a1=edge, c_a2=end)
def test_near_a_corner_the_corner_factor_is_dropped_along_the_edge(c_a1: float, c_a2: float) -> None:
    corner = shear_breakout.edge_factor(c_a1, c_a2)
    toward = breakout_toward_edge(0.5, 7.0, 2500.0, c_a1, 100.0, c_a2).nominal
    assert breakout_parallel_to_edge(0.5, 7.0, 2500.0, c_a1, 100.0, c_a2).nominal * corner == NEAR(2 * toward)
    assert 0.7 < corner <= 1.0


@given(c_a1=edge, f_c=strength, n=st.integers(1, 6), share=st.floats(0.0, 3.0))
def test_bolts_in_a_row_never_hold_more_than_as_many_apart_nor_less_than_one(
    c_a1: float, f_c: float, n: int, share: float
) -> None:
    one = breakout_parallel_to_edge(0.5, 7.0, f_c, c_a1, 100.0).nominal
    row = breakout_parallel_to_edge(0.5, 7.0, f_c, c_a1, 100.0, n=n, s=share * c_a1).nominal
    assert one * (1 - 1e-12) <= row <= n * one * (1 + 1e-12)
    spread = breakout_parallel_to_edge(0.5, 7.0, f_c, c_a1, 100.0, n=n, s=3 * c_a1).nominal
    assert spread == NEAR(n * one)


def test_bolts_too_far_apart_are_no_group() -> None:
    with pytest.raises(OutsideLimits, match=r"17\.7\.2\.1\.1: anchors more than 3 c_a1 apart do not work as a group: "):
        breakout_parallel_to_edge(0.5, 7.0, 2500.0, 1.75, 18.0, n=2, s=5.3)


@given(c_a1=edge, far=st.floats(1.0, 60.0), h_a=height, s=st.floats(0.0, 30.0))
def test_in_a_narrow_thin_member_the_edge_distance_is_cut_and_only_there(
    c_a1: float, far: float, h_a: float, s: float
) -> None:
    counted = shear_breakout.limited_edge_distance(c_a1, far, h_a, s)
    assert counted <= c_a1
    if far >= 1.5 * c_a1 or h_a >= 1.5 * c_a1:
        assert counted == c_a1


def test_deeper_embedment_stops_counting_at_eight_diameters() -> None:
    assert shear_breakout.bearing_length(3.0, 0.5) == 3.0
    assert shear_breakout.bearing_length(4.0, 0.5) == shear_breakout.bearing_length(12.0, 0.5) == 4.0
    with pytest.raises(OutsideLimits, match=r"Eq\. 17\.7\.2\.2\.1a: l_e is at most 8 d_a"):
        shear_breakout.basic_shear_a(4.1, 0.5, 2500.0, 1.75)


@pytest.mark.parametrize(
    ("f_c", "c_a1", "message"),
    [
        (
            10001.0,
            1.75,
            r"f'_c \(compressive strength of the concrete\) = 10001 psi; must be above 0 and at most",
        ),
        (0.0, 1.75, r"f'_c \(compressive strength of the concrete\) = 0 psi; must be above 0"),
        (2500.0, 0.0, r"c_a1 \(distance to the edge the breakout runs to\) = 0 in; must be above 0 in"),
        (2500.0, float("nan"), r"c_a1 \(distance to the edge the breakout runs to\) = nan in; must be above 0 in"),
    ],
)
def test_what_no_concrete_or_edge_can_be_is_refused(f_c: float, c_a1: float, message: str) -> None:
    with pytest.raises(OutsideLimits, match=message):
        breakout_parallel_to_edge(0.5, 7.0, f_c, c_a1, 18.0)


def test_an_unknown_state_of_the_concrete_is_refused_with_those_there_are() -> None:
    with pytest.raises(OutsideLimits, match=r"no row 'sound' \(concrete at the anchor\); it has cracked, no edge bar"):
        breakout_parallel_to_edge(0.5, 7.0, 2500.0, 1.75, 18.0, concrete="sound")


@pytest.mark.parametrize(("concrete", "factor"), [("cracked, edge bar No. 4 or larger", 1.2), ("uncracked", 1.4)])
def test_an_edge_bar_or_uncracked_concrete_helps_by_its_factor(concrete: str, factor: float) -> None:
    plain = breakout_parallel_to_edge(0.5, 7.0, 2500.0, 1.75, 18.0).nominal
    assert breakout_parallel_to_edge(0.5, 7.0, 2500.0, 1.75, 18.0, concrete=concrete).nominal == NEAR(factor * plain)


@given(c_a1=edge, e_V=st.floats(0.0, 20.0), more=more)
def test_more_eccentric_shear_never_holds_more(c_a1: float, e_V: float, more: float) -> None:
    assert shear_breakout.eccentricity_factor(c_a1, 0.0) == 1.0
    assert shear_breakout.eccentricity_factor(c_a1, e_V + more) <= shear_breakout.eccentricity_factor(c_a1, e_V)


def test_the_sheet_shows_which_basic_strength_governs_and_carries_the_doubt_of_the_concrete() -> None:
    doubt = Mark("assumed range", "concrete of 1912")
    with Sheet() as sheet:
        f_c = recorded("f'_c", 1500.0, "psi", "by age", (doubt,))
        got = breakout_parallel_to_edge(0.5, 7.0, f_c, recorded("c_a1", 1.75, "in", "survey"), 18.0)
    assert float(got.nominal) == breakout_parallel_to_edge(0.5, 7.0, 1500.0, 1.75, 18.0).nominal
    assert doubt in marks_of((got.design,))
    assert doubt not in marks_of((got.phi,))
    assert [step.cite for step in sheet.steps][-1] == "ACI 318-19 17.5.2"


def test_feet_handed_in_where_inches_are_asked_are_refused() -> None:
    with Sheet(), pytest.raises(UnitError, match=r"17\.7\.2\.1\.2: c_a1 is asked for in in, given in ft"):
        breakout_parallel_to_edge(0.5, 7.0, 2500.0, recorded("c_a1", 0.15, "ft", "survey"), 18.0)


# --- tension and pryout ----------------------------------------------------------------------------------------------


@given(h_ef=deep, f_c=strength, c=st.floats(1.5, 40.0), more=more)
def test_a_farther_edge_and_stronger_concrete_never_pull_out_sooner(
    h_ef: float, f_c: float, c: float, more: float
) -> None:
    at = tension_breakout.tension_breakout_of(h_ef, f_c, c_near=c).nominal
    assert tension_breakout.tension_breakout_of(h_ef, f_c, c_near=c * (1 + more)).nominal >= at * (1 - 1e-12)
    assert tension_breakout.tension_breakout_of(h_ef, min(f_c * 2, 10000.0), c_near=c).nominal >= at * (1 - 1e-12)
    whole = tension_breakout.tension_breakout_of(h_ef, f_c).nominal
    assert at <= whole * (1 + 1e-12)
    assert whole == NEAR(tension_breakout.basic_tension(24.0, f_c, h_ef))


@given(h_ef=deep, f_c=strength, s=st.floats(0.0, 1.0))
def test_two_anchors_three_depths_apart_pull_as_two(h_ef: float, f_c: float, s: float) -> None:
    one = tension_breakout.tension_breakout_of(h_ef, f_c).nominal
    assert tension_breakout.tension_breakout_of(h_ef, f_c, s_along=3 * h_ef).nominal == NEAR(2 * one)
    assert one * (1 - 1e-12) <= tension_breakout.tension_breakout_of(h_ef, f_c, s_along=3 * s * h_ef).nominal


def test_between_three_near_faces_only_part_of_the_embedment_counts() -> None:
    assert tension_breakout.limited_embedment(12.0, 6.0) == 4.0
    with Sheet() as sheet:
        tension_breakout.tension_breakout_of(7.0, 2500.0, c_left=4.0, c_near=1.75, c_far=6.25)
    assert "ACI 318-19 17.6.2.1.2" in [step.cite for step in sheet.steps]
    with Sheet() as sheet:
        tension_breakout.tension_breakout_of(7.0, 2500.0, c_near=1.75, c_far=6.25)
    assert "ACI 318-19 17.6.2.1.2" not in [step.cite for step in sheet.steps]


@given(design=st.floats(0.0, 1e6))
def test_earthquake_takes_a_quarter_of_concrete_in_tension(design: float) -> None:
    assert tension_breakout.seismic_tension(design) == NEAR(0.75 * design)


@given(V_E=st.floats(0.0, 1e5), V_yield=st.floats(0.0, 1e5))
def test_against_earthquake_the_printed_choice_says_what_the_concrete_holds(V_E: float, V_yield: float) -> None:
    chosen = seismic.seismic_shear_demand("overstrength", "no tested joint", V_E, 2.5)
    assert chosen == NEAR(2.5 * V_E)
    assert seismic.seismic_shear_demand("what is fastened yields", "sill bolt in wood", V_E, V_yield=V_yield) == V_yield
    with Sheet() as sheet:
        seismic.seismic_shear_demand("overstrength", "no tested joint", V_E)
    assert "overstrength: no tested joint" in [step.title for step in sheet.steps if step.kind == "note"]


@pytest.mark.parametrize(
    ("option", "reason", "message"),
    [
        ("overstrength", " ", r"the choice of 'overstrength' needs a reason, which is printed"),
        ("plain E", "habit", r"option = 'plain E'; must be overstrength or what is fastened yields"),
        ("what is fastened yields", "wood", r"the expected strength of what is fastened is not known"),
    ],
)
def test_plain_earthquake_force_is_never_enough(option: str, reason: str, message: str) -> None:
    with pytest.raises(OutsideLimits, match=r"ACI 318-19 17\.10\.6\.3: " + message):
        seismic.seismic_shear_demand(option, reason, 500.0)


@given(h_ef=st.floats(1.0, 15.0), f_c=strength)
def test_pryout_is_the_cone_once_or_twice(h_ef: float, f_c: float) -> None:
    cone = tension_breakout.tension_breakout_of(h_ef, f_c).nominal
    got = pryout.pryout_of(h_ef, f_c)
    assert got.nominal == NEAR(cone * (1 if h_ef < 2.5 else 2))
    assert got.design == NEAR(0.70 * got.nominal)


def test_an_old_hook_counts_from_three_to_four_and_a_half_diameters() -> None:
    assert pullout.hooked_pullout(2500.0, 2.0, 0.5) == NEAR(2250.0)
    with pytest.raises(OutsideLimits, match=r"17\.6\.3\.2\.2b: the hook counts from 3 d_a"):
        pullout.hooked_pullout(2500.0, 1.4, 0.5)
    with pytest.raises(OutsideLimits, match=r"17\.6\.3\.2\.2b: the hook counts up to 4\.5 d_a"):
        pullout.hooked_pullout(2500.0, 2.3, 0.5)


def test_a_side_face_bursts_only_by_a_deep_head() -> None:
    assert pullout.side_face_blowout(3.0, 0.589, 2500.0, 8.0) == NEAR(18419.0, abs=1.0)
    with pytest.raises(OutsideLimits, match=r"side-face blowout is checked where h_ef is above 2\.5 c_a1"):
        pullout.side_face_blowout(3.0, 0.589, 2500.0, 7.5)


# --- steel and both together -----------------------------------------------------------------------------------------


@pytest.mark.parametrize(("d_a", "n_t", "area"), [(0.5, 13.0, 0.1419), (0.625, 11.0, 0.226), (0.75, 10.0, 0.3345)])
def test_threaded_areas_are_the_thread_standards(d_a: float, n_t: float, area: float) -> None:
    assert steel.stress_area(d_a, n_t) == NEAR(area, abs=0.0005)


@given(f_u=st.floats(40e3, 200e3), f_y=st.floats(30e3, 150e3))
def test_no_more_steel_stress_counts_than_the_caps(f_u: float, f_y: float) -> None:
    counted = steel.steel_strength_counted(f_u, f_y)
    assert counted <= min(125000.0, f_u, 1.9 * f_y)
    assert steel.steel_shear(0.1419, counted) == NEAR(0.6 * steel.steel_tension(0.1419, counted))
    assert steel.steel_shear_on_grout(1000.0) == 800.0


@given(tension=st.floats(0.0, 2.0), shear=st.floats(0.0, 2.0), more=more)
def test_tension_and_shear_together_never_pass_where_one_alone_fails(tension: float, shear: float, more: float) -> None:
    used = strength_factors.interaction(tension, shear)
    assert used >= max(tension, shear)
    assert strength_factors.interaction(tension + more, shear) >= used
    assert strength_factors.interaction(0.6, 0.6) == NEAR(1.0)
    assert strength_factors.interaction_curved(tension, 0.0) == NEAR(tension ** (5 / 3))


def test_no_strength_factor_is_above_nine_tenths_and_shear_without_supplement_is_seven_tenths() -> None:
    cells = [float(cell) for row in tables.table_17_5_3().rows.values() for cell in row]
    assert max(cells) <= 0.9
    assert tables.table_17_5_3().read("concrete breakout, no supplementary reinforcement, cast in", "shear") == 0.70


# --- within the standard, or an extension ----------------------------------------------------------------------------


def test_sound_tested_concrete_is_within_the_chapter() -> None:
    got = scope.anchor_scope(2500.0)
    assert (got.within, got.reasons, got.extension, got.marks) == (True, (), "", ())


@pytest.mark.parametrize(
    ("f_c", "installed", "known", "reasons"),
    [
        (2499.0, "cast in", "tested", ("not so: f'c is at least 2,500 psi",)),
        (1500.0, "cast in", "assumed", ("not so: f'c is at least 2,500 psi", UNTESTED)),
        (3000.0, "cast in", "assumed", (UNTESTED,)),
        (8001.0, "post-installed", "tested", ("not so: f'c is at most 8,000 psi, post-installed",)),
    ],
)
def test_weak_or_unknown_concrete_is_an_extension_with_its_reasons(
    f_c: float, installed: str, known: str, reasons: tuple[str, ...]
) -> None:
    got = scope.anchor_scope(f_c, installed, known)
    assert (got.within, got.reasons) == (False, reasons)
    assert got.extension.startswith("chapter 17 carried on to concrete")
    assert [mark.kind for mark in got.marks] == ["extension"]


def test_the_mark_of_the_extension_travels_to_the_breakout_strength() -> None:
    with Sheet() as sheet:
        told = scope.anchor_scope(1500.0, strength="assumed")
        got = breakout_parallel_to_edge(0.5, 7.0, recorded("f'_c", 1500.0, "psi", "by age", told.marks), 1.75, 18.0)
    assert any(mark.kind == "extension" for mark in marks_of((got.design,)))
    words = [line.text for step in sheet.steps if step.kind == "condition" for line in step.lines]
    assert words[0].startswith("f'c is at least 2,500 psi: NOT met")


def test_a_word_that_is_neither_tested_nor_assumed_is_refused() -> None:
    with pytest.raises(OutsideLimits, match=r"strength = 'probed'; must be tested, specified or assumed"):
        scope.anchor_scope(3000.0, strength="probed")


# --- first to fail ---------------------------------------------------------------------------------------------------


@given(R_5=st.floats(1.0, 1e5))
def test_the_mean_lies_above_its_fractile_and_widens_with_scatter(R_5: float) -> None:
    got = expected.expected_breakout(R_5)
    assert R_5 < got.low < got.best < got.high
    assert got.best == NEAR(R_5 / 0.75325)
    assert expected.mean_strength(R_5, 0.0) == R_5


def test_too_much_scatter_is_refused() -> None:
    with pytest.raises(
        OutsideLimits, match=r"COV \(coefficient of variation of the tests\) = 0\.5 1; must be at least"
    ):
        expected.mean_strength(1737.0, 0.5)


# --- plain concrete --------------------------------------------------------------------------------------------------


@given(f_c=strength, b_w=st.floats(4.0, 24.0), h=st.floats(4.0, 48.0))
def test_a_plain_stem_bends_by_its_tension_face_and_less_when_cast_on_soil(f_c: float, b_w: float, h: float) -> None:
    got = plain_concrete.plain_flexure(f_c, b_w, h)
    assert got.nominal == NEAR(5 * f_c**0.5 * b_w * h**2 / 6)
    assert got.design == NEAR(0.60 * got.nominal)
    assert plain_concrete.plain_flexure(f_c, b_w, h, cast_on_soil=True).nominal < got.nominal
    assert plain_concrete.plain_flexure(f_c, b_w, 2 * h).nominal == NEAR(4 * got.nominal)


def test_plain_shear_and_bearing_of_an_old_stem() -> None:
    assert plain_concrete.plain_shear(2500.0, 8.0, 24.0) == NEAR(12800.0)
    assert plain_concrete.plain_bearing(2500.0, 12.25) == NEAR(26031.25)


def test_concrete_no_deeper_than_what_is_lost_to_the_soil_is_refused() -> None:
    with pytest.raises(OutsideLimits, match=r"14\.5\.1\.7: h \(depth as cast\) = 2 in; must be above 2 in"):
        plain_concrete.plain_flexure(2500.0, 8.0, 2.0, cast_on_soil=True)
