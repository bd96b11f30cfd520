"""ACI 318-19, members with bars: laws, limits, and a section summed strip by strip."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import brentq

from groundsill.standards.aci318_19 import (
    bars,
    development,
    footings,
    one_way_shear,
    reinforced_bending,
    shear_friction,
)
from groundsill.standards.aci318_19.tables import table_20_5_1_3_1, table_bars
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet
from groundsill.working.value import marks_of

strengths = st.floats(2500.0, 10_000.0)
grades = st.sampled_from((40_000.0, 60_000.0, 80_000.0))
widths = st.floats(8.0, 36.0)
depths = st.floats(6.0, 40.0)
ratios = st.floats(0.0005, 0.009)
names = st.sampled_from(tuple(table_bars().rows))
more = st.floats(1.0, 3.0)


# --- bending ---------------------------------------------------------------------------------------------------------


def by_strips(f_c: float, f_y: float, b: float, d: float, A_s: float, strips: int = 20_000) -> float:
    """The moment by plane sections: the pressed face at 0.003, the concrete summed in strips, the bars by their strain.

    The stress block of 22.2.2.4 over beta_1 of the pressed depth; the depth is that at which push and pull balance.
    """
    beta_1 = float(np.clip(0.85 - 0.05 * (f_c - 4000.0) / 1000.0, 0.65, 0.85))

    def forces(c: float) -> tuple[float, float, float]:
        y = (np.arange(strips) + 0.5) / strips * c  # from the pressed face
        push = np.where(y <= beta_1 * c, 0.85 * f_c, 0.0) * b * c / strips
        strain = 0.003 * (d - c) / c
        return float(push.sum()), float((push * y).sum()), A_s * min(strain * 29e6, f_y)

    c = brentq(lambda c: forces(c)[0] - forces(c)[2], 1e-3, d)
    push, turning, pull = forces(c)
    assert push == pytest.approx(pull, rel=1e-6)
    return pull * d - turning


@given(f_c=strengths, f_y=grades, b=widths, d=depths, ratio=ratios)
def test_bending_strength_is_the_sum_of_its_strips(f_c, f_y, b, d, ratio):
    A_s = ratio * b * d
    found = reinforced_bending.bending_strength(f_c, f_y, b, d, A_s)
    assert found.nominal == pytest.approx(by_strips(f_c, f_y, b, d, A_s), rel=1e-3)
    assert found.design == pytest.approx(found.phi * found.nominal)


@given(f_c=strengths, f_y=grades, b=widths, d=depths, ratio=ratios, more=more)
def test_stronger_wider_deeper_never_carries_less(f_c, f_y, b, d, ratio, more):
    A_s = ratio * b * d
    at = reinforced_bending.bending_strength(f_c, f_y, b, d, A_s).design
    for stronger in (
        (min(f_c * more, 10_000.0), f_y, b, d, A_s),
        (f_c, f_y, b * more, d, A_s),
        (f_c, f_y, b, d * more, A_s),
    ):
        assert reinforced_bending.bending_strength(*stronger).design >= at * (1 - 1e-9)


@given(f_c=strengths, b=widths, d=depths, ratio=st.floats(0.0005, 0.008), part=st.floats(0.05, 1.0))
def test_bars_for_a_moment_carry_just_that(f_c, b, d, ratio, part):
    M_u = part * reinforced_bending.bending_strength(f_c, 60_000.0, b, d, ratio * b * d).design
    A_s = reinforced_bending.steel_for_moment(M_u, f_c, 60_000.0, b, d)
    found = reinforced_bending.bending_strength(f_c, 60_000.0, b, d, A_s)
    assume(found.phi == 0.90)
    assert found.design == pytest.approx(M_u, rel=1e-9)


@given(f_c=strengths, f_y=grades)
def test_strength_reduction_goes_from_065_to_090_by_the_stretch_of_the_bars(f_c, f_y):
    yields = reinforced_bending.yield_strain(f_y)
    assert reinforced_bending.bending_factor(yields * 0.9, yields) == 0.65
    assert reinforced_bending.bending_factor(yields + 0.0015, yields) == pytest.approx(0.775)
    assert reinforced_bending.bending_factor(yields + 0.0031, yields) == 0.90


@pytest.mark.parametrize(("f_c", "beta_1"), [(2500, 0.85), (4000, 0.85), (5000, 0.80), (8000, 0.65), (10_000, 0.65)])
def test_the_stress_block_at_the_ends_of_its_table(f_c, beta_1):
    assert reinforced_bending.stress_block_factor(float(f_c)) == pytest.approx(beta_1)


def test_too_many_bars_are_refused_and_many_are_told():
    with pytest.raises(OutsideLimits, match="does not yield before the concrete crushes"):
        reinforced_bending.bending_strength(2500.0, 60_000.0, 12.0, 14.0, 4.0)
    many = reinforced_bending.bending_strength(2500.0, 60_000.0, 12.0, 14.0, 2.7)
    assert not many.tension_controlled
    assert 0.65 < many.phi < 0.90


def test_weaker_concrete_than_the_code_knows_is_refused_by_its_symbol():
    with pytest.raises(OutsideLimits, match=r"f'_c .* = 2000 psi; must be at least 2500"):
        reinforced_bending.stress_block_factor(2000.0)


@given(f_c=strengths, f_y=grades, b=widths, d=depths, part=st.floats(0.0, 0.9))
def test_the_least_of_bars_is_the_lower_of_two_ways_and_never_below_the_moment(f_c, f_y, b, d, part):
    M_u = part * 0.9 * 0.2 * f_c * b * d * d
    found = reinforced_bending.least_steel(f_c, f_y, b, d, M_u)
    assert found.needed >= found.for_moment
    assert found.needed == pytest.approx(max(found.for_moment, min(found.for_cracking, found.for_moment * 4 / 3)))
    assert found.rule in (
        "the moment", "a third more than the moment needs (9.6.1.3)", "the least of a beam (9.6.1.2)",
    )  # fmt: skip


# --- shear -----------------------------------------------------------------------------------------------------------


@given(f_c=strengths, b=widths, d=depths, ratio=ratios, more=more)
def test_more_bars_and_stronger_concrete_never_shear_sooner(f_c, b, d, ratio, more):
    at = one_way_shear.one_way_shear(f_c, b, d, ratio * b * d).nominal
    assert one_way_shear.one_way_shear(f_c, b, d, ratio * b * d * more).nominal >= at * (1 - 1e-9)
    assert one_way_shear.one_way_shear(min(f_c * more, 1e4), b, d, ratio * b * d).nominal >= at * (1 - 1e-9)


@given(f_c=strengths, b=widths, d=depths, ratio=ratios)
def test_a_footing_is_spared_the_size_effect(f_c, b, d, ratio):
    beam = one_way_shear.one_way_shear(f_c, b, d, ratio * b * d).nominal
    footing = one_way_shear.one_way_shear(f_c, b, d, ratio * b * d, footing=True).nominal
    assert footing * one_way_shear.size_effect(d) == pytest.approx(beam, rel=1e-9)
    if d <= 10:
        assert footing == beam


@given(f_c=strengths, b=widths, d=st.floats(10.0, 40.0), ratio=ratios, s=st.floats(2.0, 5.0))
def test_stirrups_never_take_strength_away_and_never_give_more_than_the_section_bears(f_c, b, d, ratio, s):
    bare = one_way_shear.one_way_shear(f_c, b, d, ratio * b * d)
    try:
        tied = one_way_shear.one_way_shear(f_c, b, d, ratio * b * d, A_v=0.22, s=s)
    except OutsideLimits:
        assume(False)
    assert tied.nominal >= bare.nominal
    assert tied.nominal <= tied.concrete + 8 * f_c**0.5 * b * d * (1 + 1e-12)
    assert tied.enough_stirrups == (max(0.75 * f_c**0.5, 50.0) * b * s / 60_000.0 <= 0.22)


def test_stirrups_too_far_apart_are_refused():
    with pytest.raises(
        OutsideLimits, match=r"9\.7\.6\.2\.2: stirrups 12 in\. apart are too far for a depth of 14 in\."
    ):
        one_way_shear.one_way_shear(3000.0, 12.0, 14.0, 0.4, A_v=0.22, s=12.0)


# --- joints ----------------------------------------------------------------------------------------------------------


@given(A_vf=st.floats(0.1, 10.0), A_c=st.floats(50.0, 500.0), f_c=st.floats(800.0, 8000.0))
def test_a_rougher_joint_never_carries_less(A_vf, A_c, f_c):
    found = [
        shear_friction.shear_friction(A_vf, 60_000.0, A_c, f_c, surface).nominal
        for surface in ("hardened, not roughened", "roughened to 1/4 in.", "cast in one")
    ]
    assert found == sorted(found)
    assert found[-1] <= 0.2 * f_c * A_c * (1 + 1e-12)


def test_a_joint_of_another_surface_or_harder_bars_is_refused():
    with pytest.raises(OutsideLimits, match="no row 'smooth'"):
        shear_friction.shear_friction(1.0, 60_000.0, 100.0, 3000.0, "smooth")
    with pytest.raises(OutsideLimits, match=r"f_y .* = 80000 psi; must be above 0 and at most 60000"):
        shear_friction.shear_friction(1.0, 80_000.0, 100.0, 3000.0)


# --- bars ------------------------------------------------------------------------------------------------------------


@given(bar=names)
def test_a_bar_is_nearly_as_large_as_its_circle(bar):
    """ASTM rounds areas to 0.01 in2."""
    diameter, area = table_bars().read(bar, "diameter"), table_bars().read(bar, "area")
    assert area == pytest.approx(np.pi * diameter**2 / 4, abs=0.0055)
    assert table_bars().read(bar, "weight") == pytest.approx(area * 3.4, rel=0.025)  # 490 pcf


@given(bar=st.sampled_from(("#3", "#4", "#5", "#6", "#7", "#8")), f_c=strengths, c_b=st.floats(0.8, 6.0), more=more)
def test_bars_need_less_length_in_stronger_concrete_and_more_cover(bar, f_c, c_b, more):
    at = development.development_length(bar, f_c, c_b=c_b)
    assert development.development_length(bar, min(f_c * more, 1e4), c_b=c_b) <= at * (1 + 1e-9)
    assert development.development_length(bar, f_c, c_b=c_b * more) <= at * (1 + 1e-9)
    assert development.development_length(bar, f_c, c_b=c_b, place="over 12 in. of fresh concrete") >= at
    assert development.lap_splice(bar, f_c, c_b=c_b) == pytest.approx(max(1.3 * at, 12.0))
    assert development.lap_splice(bar, f_c, c_b=c_b, twice_the_steel_and_staggered=True) == at


@given(f_c=strengths, bar=st.sampled_from(("#3", "#4", "#5", "#6")))
def test_the_long_form_is_never_longer_than_the_short_one_with_a_diameter_and_a_half_held(f_c, bar):
    """Table 25.4.2.3 is Eq. 25.4.2.4a with (c_b + K_tr)/d_b = 1.5, rounded."""
    d_b = bars.bar_diameter(bar)
    long = development.straight_development(60_000.0, f_c, d_b, 1.0, 0.8, 1.0, 1.5)
    assert long == pytest.approx(development.development_simple(60_000.0, f_c, d_b, 1.0, 1.0), rel=1e-9)


def test_a_hook_is_shorter_than_a_straight_bar_where_it_is_held():
    hooked = development.hooked_length(
        "#5", 3000.0, ties="tied or 6 diameters apart", place="in a tied core or 6 diameters of side cover"
    )
    assert hooked == pytest.approx(60_000 * 0.8 / (55 * 3000**0.5) * 0.625**1.5)
    assert hooked < development.development_length("#5", 3000.0)
    assert hooked < development.hooked_length("#5", 3000.0)


@pytest.mark.parametrize(
    ("exposure", "bar", "inches"),
    [
        ("cast against ground", "#4", 3.0),
        ("exposed to weather or ground", "#5", 1.5),
        ("exposed to weather or ground", "#6", 2.0),
        ("sheltered, slab or wall", "#4", 0.75),
        ("sheltered, beam", "#4", 1.5),
    ],
)
def test_cover(exposure, bar, inches):
    assert bars.cover(exposure, bar) == inches


def test_what_no_table_knows_is_refused():
    with pytest.raises(OutsideLimits, match="no row '#2'"):
        bars.cover("cast against ground", "#2")
    with pytest.raises(OutsideLimits, match="no row 'in the sea'"):
        bars.cover("in the sea", "#4")
    assert set(table_20_5_1_3_1().columns) == {"#5 and smaller", "#6 to #11"}


def test_bars_under_thick_cover_stand_closer():
    assert bars.widest_bar_spacing(60_000.0, 3.0) == pytest.approx(7.5)
    assert bars.widest_bar_spacing(60_000.0, 0.75) == pytest.approx(12.0)
    assert bars.clear_spacing(0.5, 0.75) == 1.0
    assert bars.clear_spacing(0.5, 1.5) == 2.0


# --- footings --------------------------------------------------------------------------------------------------------


def test_bars_of_a_footing_lie_six_inches_deep():
    assert footings.bars_depth(12.0, 3.0, 0.5) == 8.75
    with pytest.raises(OutsideLimits, match=r"13\.3\.1\.2: bars at the bottom of a footing lie at least 6 in\. below"):
        footings.bars_depth(9.0, 3.0, 0.5)


@given(q=st.floats(1.0, 50.0), p=st.floats(0.0, 24.0), d=st.floats(6.0, 20.0))
def test_the_side_of_a_footing_is_a_cantilever(q, p, d):
    assert footings.side_moment(q, p, 12.0) == pytest.approx(q * 12.0 * p * p / 2)
    shear = footings.side_shear(q, p, d, 12.0)
    assert 0.0 <= shear <= q * p * 12.0
    assert (shear == 0.0) == (p <= d)


def test_a_strength_worked_out_by_recalled_rules_alone_says_so():
    with Sheet():
        seen = one_way_shear.one_way_shear(3000.0, 12.0, 14.0, 0.4, footing=True).design
        recalled = bars.clear_spacing(0.5, 0.75)
    assert not any(mark.kind == "from memory" for mark in marks_of((seen,)))
    assert any(mark.kind == "from memory" for mark in marks_of((recalled,)))
