"""ACI 318-19 17.6.4, 17.6.5, 17.9, 17.10.5: bond, blowout at corners, splitting, anchors whose own steel yields."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.aci318_19 import bond, pryout, pullout, seismic, splitting, tables, tension_breakout
from groundsill.standards.conditions import Condition, all_met, told
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet

bolt = st.sampled_from((0.5, 0.625, 0.75, 0.875))
depth = st.floats(4.0, 10.0)  # 4 to 20 diameters of every one of these bolts
stress = st.floats(100.0, 3000.0)
edge = st.floats(1.0, 40.0)
more = st.floats(0.0, 3.0)
NEAR = pytest.approx
FULL = {"qualified": True, "hammer_drilled": True, "aged": True, "warm": True}


# --- bond ------------------------------------------------------------------------------------------------------------


@given(d_a=bolt, h_ef=depth, tau=stress, c=edge, more=more)
def test_more_bond_stress_edge_or_depth_never_lets_go_sooner(
    d_a: float, h_ef: float, tau: float, c: float, more: float
) -> None:
    def held(h_ef: float = h_ef, tau: float = tau, c: float = c) -> float:
        return bond.bond_of(d_a, h_ef, tau, 1000.0, c_near=c, c_far=2 * c).nominal

    at = held() * (1 - 1e-12)
    assert held(tau=tau * (1 + more)) >= at
    assert held(c=c * (1 + more)) >= at
    assert held(h_ef=min(h_ef + more, 20 * d_a)) >= at


@given(d_a=bolt, h_ef=depth, tau=stress, c=edge, more=more)
def test_a_longer_reach_never_holds_more(d_a: float, h_ef: float, tau: float, c: float, more: float) -> None:
    near = bond.bond_of(d_a, h_ef, tau, 650.0, c_near=c).nominal
    far = bond.bond_of(d_a, h_ef, tau, 650.0 * (1 + more), c_near=c).nominal
    assert far <= near * (1 + 1e-12)


@given(d_a=bolt, h_ef=depth, tau=stress)
def test_far_from_edges_bond_is_the_glued_surface_times_its_stress(d_a: float, h_ef: float, tau: float) -> None:
    alone = bond.bond_of(d_a, h_ef, tau, 1000.0)
    assert alone.nominal == NEAR(tau * 3.141592653589793 * d_a * h_ef)
    assert (alone.phi, alone.design) == (0.65, NEAR(0.65 * alone.nominal))


@given(d_a=bolt, n=st.integers(2, 6), share=st.floats(0.0, 1.0), c=edge, e=st.floats(0.0, 4.0))
def test_bonds_that_meet_hold_no_more_than_as_many_apart_nor_less_than_one(
    d_a: float, n: int, share: float, c: float, e: float
) -> None:
    reach = bond.bond_reach(d_a, 1000.0)
    one = bond.bond_of(d_a, 6.0, 500.0, 1000.0, c_near=c).nominal
    row = bond.bond_of(d_a, 6.0, 500.0, 1000.0, c_near=c, s_along=(n - 1) * share * 2 * reach, n=n).nominal
    assert one * (1 - 1e-12) <= row <= n * one * (1 + 1e-12)
    off = bond.bond_of(d_a, 6.0, 500.0, 1000.0, c_near=c, s_along=(n - 1) * share * 2 * reach, n=n, e_N=e).nominal
    assert off <= row * (1 + 1e-12)


@given(c_Na=st.floats(1.0, 20.0), n=st.integers(1, 6), s=st.floats(0.0, 500.0))
def test_a_group_never_draws_on_more_than_its_anchors_apart(c_Na: float, n: int, s: float) -> None:
    area = bond.bond_area(c_Na, 1000.0, 1000.0, 1000.0, 1000.0, s, 0.0, n)
    assert area <= n * bond.bond_area_full(c_Na) * (1 + 1e-12)


@pytest.mark.parametrize(("h_ef", "words"), [(2.0, "from 4 diameters"), (13.0, "up to 20 diameters")])
def test_too_shallow_and_too_deep_an_adhesive_anchor_is_refused(h_ef: float, words: str) -> None:
    with pytest.raises(OutsideLimits, match=words):
        bond.bond_of(0.625, h_ef, 500.0, 1000.0)


def test_uncracked_concrete_asks_for_the_critical_edge_and_pays_for_nearness() -> None:
    with pytest.raises(OutsideLimits, match="uncracked concrete asks for the critical edge distance"):
        bond.bond_of(0.5, 4.0, 500.0, 1000.0, concrete="uncracked")
    with pytest.raises(OutsideLimits, match="must be cracked or uncracked"):
        bond.bond_of(0.5, 4.0, 500.0, 1000.0, concrete="sound")
    far = bond.bond_of(0.5, 4.0, 500.0, 1000.0, c_near=8.0, concrete="uncracked", c_ac=8.0).nominal
    near = bond.bond_of(0.5, 4.0, 500.0, 1000.0, c_near=7.0, concrete="uncracked", c_ac=16.0).nominal
    assert near == NEAR(far * 7.0 / 16.0)  # c_Na is 4.77 in., so the edge alone counts


@given(c_Na=st.floats(1.0, 12.0), c=edge, c_ac=st.floats(4.0, 40.0))
def test_splitting_never_helps_and_stops_at_the_critical_edge(c_Na: float, c: float, c_ac: float) -> None:
    factor = splitting.bond_splitting_factor(c_Na, c, c_ac)
    assert 0 < factor <= 1
    assert splitting.bond_splitting_factor(c_Na, max(c, c_ac), c_ac) == 1
    assert splitting.splitting_factor(4.0, c, c_ac) >= min(1.0, 6.0 / c_ac)


def test_a_lasting_pull_is_held_with_little_more_than_half() -> None:
    assert bond.sustained_bond(0.65, 10000.0) == NEAR(3575.0)


# --- the minimum bond stresses ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("environment", "sustained", "earthquake", "cracked", "uncracked"),
    [
        (bond.OUTDOOR, False, False, 200, 650),
        (bond.INDOOR, False, False, 300, 1000),
        (bond.OUTDOOR, False, True, 160, 260),
        (bond.INDOOR, True, False, 120, 400),
        (bond.OUTDOOR, True, True, 64, 104),
    ],
)
def test_the_minimum_bond_is_cut_for_a_lasting_pull_and_for_earthquake(
    environment: str, sustained: bool, earthquake: bool, cracked: float, uncracked: float
) -> None:
    found = bond.bond_stress(environment, 3000.0, **FULL, sustained=sustained, earthquake=earthquake)
    assert (found.cracked, found.uncracked) == (NEAR(cracked), NEAR(uncracked))
    assert found.reach == tables.table_17_6_5_2_5().read(environment, "tau_uncr")
    assert found.applies is True


@given(d_a=bolt, h_ef=depth, c=edge)
def test_earthquake_never_adds_to_bond(d_a: float, h_ef: float, c: float) -> None:
    plain, shaken = (bond.bond_stress(f_c=3000.0, **FULL, earthquake=quake) for quake in (False, True))
    at = bond.bond_of(d_a, h_ef, plain.cracked, plain.reach, c_near=c).nominal
    assert bond.bond_of(d_a, h_ef, shaken.cracked, shaken.reach, c_near=c).nominal <= at


@pytest.mark.parametrize(
    ("missing", "value", "applies", "text"),
    [
        ("qualified", None, None, "(a) product qualified by ACI 355.4"),
        ("hammer_drilled", False, False, "(b) hole made with a rotary impact or rock drill"),
        ("f_c", 2499.0, False, "(c) concrete of at least 2,500 psi"),
        ("f_c", None, None, "(c) concrete of at least 2,500 psi"),
        ("aged", False, False, "(d) concrete at least 21 days old at installation"),
        ("warm", None, None, "(e) concrete at 50 F or more at installation"),
    ],
)
def test_each_condition_of_the_minimum_bond_is_answered(
    missing: str, value: float | bool | None, applies: bool | None, text: str
) -> None:
    found = bond.bond_stress(**({"f_c": 2500.0} | FULL | {missing: value}))
    assert found.applies is applies
    assert [c.text for c in found.conditions if c.met is not True] == [text]


def test_the_conditions_stand_in_the_working() -> None:
    with Sheet() as sheet:
        bond.bond_stress(f_c=2000.0, qualified=True)
    asked = [step for step in sheet.steps if step.kind == "condition"]
    assert len(asked) == 5


def test_conditions_are_told_by_their_answers() -> None:
    three = (Condition("a", True), Condition("b", False), Condition("c", None))
    assert told(three) == "met: a; not met: b; not known: c"
    assert [all_met(three[:1]), all_met(three[:2]), all_met((three[0], three[2])), told(())] == [True, False, None, ""]


# --- pryout, blowout -------------------------------------------------------------------------------------------------


@given(h_ef=st.floats(3.0, 12.0), N_a=st.floats(100.0, 1e5))
def test_an_adhesive_bolt_is_pried_out_by_the_less_of_bond_and_cone(h_ef: float, N_a: float) -> None:
    cone = pryout.pryout_of(h_ef, 3000.0, anchor="post-installed").nominal
    assert pryout.pryout_of(h_ef, 3000.0, anchor="post-installed", N_a=N_a).nominal == NEAR(min(cone, 2 * N_a))


@given(c_a1=st.floats(1.0, 10.0), c_a2=edge)
def test_a_corner_halves_the_blowout_at_most(c_a1: float, c_a2: float) -> None:
    factor = pullout.blowout_corner_factor(c_a1, c_a2)
    assert 0.5 <= factor <= 1
    assert pullout.blowout_corner_factor(c_a1, 3 * c_a1) == NEAR(1)
    assert pullout.blowout_corner_factor(c_a1, c_a2 + 1) >= factor


@given(N_sb=st.floats(1.0, 1e5), c_a1=st.floats(1.0, 10.0), share=st.floats(0.0, 1.0))
def test_two_heads_burst_the_face_as_one_to_two(N_sb: float, c_a1: float, share: float) -> None:
    assert N_sb <= pullout.blowout_of_group(N_sb, c_a1, share * 6 * c_a1) <= 2 * N_sb * (1 + 1e-12)


# --- splitting -------------------------------------------------------------------------------------------------------


def test_distances_against_splitting_go_by_diameters_or_by_the_anchors_report() -> None:
    near = splitting.least_distances(0.625, "adhesive", 3.0, 4.0)
    assert told(near) == (
        "met: nearest anchor at least 3.75 in. away (17.9.2); not met: edge at least 3.75 in. away (17.9.2)"
    )
    assert all_met(splitting.least_distances(0.625, "adhesive", 3.0, 4.0, 1.75, 3.0)) is True
    assert all_met(splitting.least_distances(0.625, "adhesive")) is None
    assert splitting.least_distances(0.5, "cast in, not torqued", 1.0) == ()
    assert all_met(splitting.least_distances(0.5, "cast in, not torqued", 1.0, 1.9)) is False
    assert all_met(splitting.least_distances(0.5, "cast in, torqued", 2.9)) is False
    with pytest.raises(OutsideLimits, match="no row 'nail'"):
        splitting.least_distances(0.5, "nail", 3.0)


@pytest.mark.parametrize(
    ("kind", "times"), [("adhesive", 2), ("undercut", 2.5), ("screw", 4), ("torque-controlled", 4)]
)
def test_the_critical_edge_grows_with_embedment(kind: str, times: float) -> None:
    assert splitting.critical_edge_distance(kind, 5.0) == NEAR(5 * times)


@given(h_a=st.floats(5.0, 60.0))
def test_no_expansion_anchor_goes_through_a_thin_member(h_a: float) -> None:
    assert splitting.deepest_embedment(h_a) == NEAR(max(2 * h_a / 3, h_a - 4))
    assert splitting.deepest_embedment(h_a) < h_a


@given(d_a=bolt, c=edge)
def test_nearer_than_the_rule_an_anchor_counts_as_a_thinner_one(d_a: float, c: float) -> None:
    assert splitting.thinner_anchor(d_a, c, 6.0) <= d_a
    assert splitting.thinner_anchor(d_a, max(c, 6 * d_a), 6.0) == d_a


def test_a_post_installed_cone_in_uncracked_concrete_asks_for_the_critical_edge() -> None:
    of = tension_breakout.tension_breakout_of
    with pytest.raises(OutsideLimits, match="critical edge distance"):
        of(6.0, 3000.0, anchor="post-installed", concrete="uncracked")
    far = of(6.0, 3000.0, c_near=12.0, anchor="post-installed", concrete="uncracked", c_ac=12.0).nominal
    near = of(6.0, 3000.0, c_near=12.0, anchor="post-installed", concrete="uncracked", c_ac=24.0).nominal
    assert near == NEAR(far / 2)


# --- against earthquake ----------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("N_concrete", "stretch", "braced", "f_u", "applies"),
    [
        (12001.0, 5.0, True, 60000.0, True),
        (11999.0, 5.0, True, 60000.0, False),
        (12001.0, 4.9, True, 60000.0, False),
        (12001.0, None, True, 60000.0, None),
        (12001.0, 5.0, None, 60000.0, None),
        (12001.0, 5.0, True, 46000.0, False),
    ],
)
def test_an_anchors_own_steel_yields_only_where_all_is_shown(
    N_concrete: float, stretch: float | None, braced: bool | None, f_u: float, applies: bool | None
) -> None:
    found = seismic.ductile_anchor(0.625, 10000.0, N_concrete, f_u, 36000.0, stretch, braced)
    assert found.applies is applies


def test_the_trigger_is_the_share_of_earthquake_in_the_pull() -> None:
    assert seismic.earthquake_share_of_tension(300.0, 1000.0) == NEAR(0.3)
    assert seismic.raised_steel(1.2, 10000.0) == NEAR(12000.0)
