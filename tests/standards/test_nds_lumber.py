"""Compression and bending of dimension lumber by NDS 2018: limits, table ends, and what grows with what."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.nds_2018.bearing import table_12_3_3a
from groundsill.standards.nds_2018.bending import beam_values, table_4a_bending, table_4a_shear
from groundsill.standards.nds_2018.compression import (
    bearing_factor,
    column_stability,
    critical_buckling,
    nominal_width,
    perpendicular_value,
    post_value,
    size_factor,
    table_4a_modulus,
    table_4a_parallel,
    table_4a_perpendicular,
)
from groundsill.standards.nds_2018.tension import PulledPost, pulled_post, table_4a_tension
from groundsill.working.errors import OutsideLimits

FIR = "Douglas fir-larch"


def test_every_wood_of_the_dowel_tables_has_a_value_across_the_grain() -> None:
    assert set(table_4a_perpendicular().rows) == set(table_12_3_3a().rows)
    assert set(table_4a_parallel().rows) == set(table_4a_modulus().rows) == set(table_4a_bending().rows)
    assert set(table_4a_parallel().rows) == set(table_4a_tension().rows)
    assert set(table_4a_parallel().rows) == set(table_4a_shear().rows) <= set(table_12_3_3a().rows)


def test_redwood_whose_grain_nobody_told_has_the_lower_value() -> None:
    read = table_4a_perpendicular().read
    assert read("Redwood") == read("Redwood, open grain (older editions)") == 425.0
    assert read("Redwood, close grain (older editions)") == 650.0


@pytest.mark.parametrize(("l_b", "C_b"), [(0.5, 1.75), (1.0, 1.38), (1.5, 1.25), (2.0, 1.19), (3.0, 1.13), (4.0, 1.10)])
def test_bearing_area_factors_as_the_table_of_the_clause_rounds_them(l_b: float, C_b: float) -> None:
    """The printed table is recalled; its rounding is the formula's."""
    assert bearing_factor(l_b, 12.0) == pytest.approx(C_b, abs=0.0065)


@pytest.mark.parametrize(("l_b", "a_e"), [(6.0, 12.0), (9.0, 12.0), (2.0, 2.99), (2.0, 0.0)])
def test_a_long_bearing_or_one_near_the_end_gains_nothing(l_b: float, a_e: float) -> None:
    assert bearing_factor(l_b, a_e) == 1.0


def test_lengths_that_cannot_be_are_refused() -> None:
    with pytest.raises(OutsideLimits, match=r"NDS 2018 3\.10\.4: l_b .* = 0 in; must be above 0"):
        bearing_factor(0.0, 3.0)
    with pytest.raises(OutsideLimits, match=r"a_e .* = -1 in; must be at least 0"):
        bearing_factor(2.0, -1.0)
    with pytest.raises(OutsideLimits, match="no row 'Bamboo'"):
        perpendicular_value("Bamboo", 2.0, 3.0)


def test_load_duration_leaves_crushing_across_the_grain_alone() -> None:
    assert perpendicular_value(FIR, 2.0, 0.0) == 625.0
    assert perpendicular_value(FIR, 2.0, 0.0, "wet in service") == pytest.approx(625 * 0.67)


@given(F_cE=st.floats(1.0, 1e6), F_star=st.floats(100.0, 5000.0))
def test_a_column_carries_no_more_than_crushing_or_buckling(F_cE: float, F_star: float) -> None:
    C_P = column_stability(F_cE, F_star, 0.8)
    assert 0.0 < C_P <= 1.0
    assert C_P * F_star <= F_cE * (1 + 1e-9)
    assert column_stability(F_cE * 1.1, F_star, 0.8) >= C_P * (1 - 1e-9)


def test_a_column_is_no_more_slender_than_fifty() -> None:
    assert critical_buckling(580_000.0, 200.0, 4.0) == pytest.approx(0.822 * 580_000 / 2500)
    with pytest.raises(OutsideLimits, match=r"slenderness l_e/d is at most 50 \(3\.7\.1\.4\)"):
        critical_buckling(580_000.0, 200.1, 4.0)


@given(height=st.floats(1.0, 150.0), taller=st.floats(1.0, 1.3))
def test_a_taller_post_never_carries_more(height: float, taller: float) -> None:
    assert post_value(FIR, "No. 2", 4.0, height * taller) <= post_value(FIR, "No. 2", 4.0, height) * (1 + 1e-9)


def test_a_post_of_no_height_is_only_crushed() -> None:
    assert post_value(FIR, "No. 2", 4.0, 0.0) == pytest.approx(1350 * 1.6 * 1.15)
    assert post_value(FIR, "No. 2", 4.0, 0.0, "wet in service") == pytest.approx(1350 * 1.6 * 1.15 * 0.8)
    with pytest.raises(OutsideLimits, match=r"no column 'No\. 4'"):
        post_value(FIR, "No. 4", 4.0, 30.0)


@pytest.mark.parametrize(
    ("actual", "row"), [(3.5, "to 4 in."), (4.0, "to 4 in."), (5.5, "to 6 in."), (7.25, "to 8 in."), (13.0, "14 in.")]
)
def test_full_sawn_and_dressed_lumber_share_the_row_of_their_nominal_width(actual: float, row: str) -> None:
    assert nominal_width(actual).startswith(row)


@given(b=st.floats(1.0, 4.0), d=st.floats(3.0, 11.0), more=st.floats(1.0, 1.5))
def test_a_broader_beam_carries_in_step(b: float, d: float, more: float) -> None:
    one, other = beam_values(FIR, "No. 2", b, d), beam_values(FIR, "No. 2", b * more, d)
    assert other.moment == pytest.approx(one.moment * more)
    assert other.shear == pytest.approx(one.shear * more)
    wet = beam_values(FIR, "No. 2", b, d, "wet in service")
    assert (wet.moment, wet.shear) == (pytest.approx(0.85 * one.moment), pytest.approx(0.97 * one.shear))


# --- pulled and bent -------------------------------------------------------------------------------------------------


def pulled(**changes: Any) -> PulledPost:
    plain: dict[str, Any] = {
        "species": FIR, "grade": "No. 2", "b": 3.5, "d": 3.5, "n": 1.0, "d_h": 0.0, "T": 2000.0, "M": 6000.0,
    }  # fmt: skip
    return pulled_post(**(plain | changes))


@given(T=st.floats(0.0, 2e4), M=st.floats(0.0, 5e4), more=st.floats(1.0, 3.0), bored=st.floats(0.0, 3.0))
def test_a_pulled_post_uses_more_of_itself_with_every_pull_couple_and_hole(
    T: float, M: float, more: float, bored: float
) -> None:
    least = pulled(T=T, M=M)
    assert least.tension <= least.together
    assert pulled(T=T * more, M=M * more).together == pytest.approx(more * least.together)
    assert pulled(T=T, M=M * more).together >= least.together * (1 - 1e-9)
    assert pulled(T=T, M=M, d_h=bored).together >= least.together * (1 - 1e-9)
    assert pulled(T=T, M=M, moisture="wet in service").together >= least.together * (1 - 1e-9)


@given(n=st.integers(1, 4), M=st.floats(1.0, 5e4))
def test_studs_side_by_side_bend_each_for_itself(n: int, M: float) -> None:
    """n of them carry n times one, never n squared times."""
    one, several = pulled(d=1.5, n=1.0, T=0.0, M=M), pulled(d=1.5, n=float(n), T=0.0, M=M)
    assert several.together == pytest.approx(one.together / n)


def test_without_a_couple_a_pulled_post_is_in_tension_alone() -> None:
    found = pulled(M=0.0)
    assert found.tension == found.together == pytest.approx(2000 / 12.25 / (575 * 1.6 * 1.5))


def test_posts_that_no_rule_here_covers_are_refused() -> None:
    with pytest.raises(OutsideLimits, match=r"a post is no deeper than twice its breadth \(NDS 2018 4\.4\.1\)"):
        pulled(b=1.5, d=3.5)
    with pytest.raises(OutsideLimits, match=r"something of the post is left beside its holes \(NDS 2018 3\.1\.2\)"):
        pulled(d_h=3.5)
    with pytest.raises(OutsideLimits, match=r"5 in\. nominal is a post or timber, of Table 4D"):
        pulled(b=5.5, d=5.5)
    with pytest.raises(OutsideLimits, match="no row 'Bamboo'"):
        pulled(species="Bamboo")


def test_studs_have_size_factors_of_their_own_and_wide_ones_go_by_no_3() -> None:
    """Stud grade gains a tenth in bending and a twentieth in compression at 4 in., nothing at 6 in."""
    assert [size_factor(value, "Stud", 3.5) for value in ("F_b", "F_t", "F_c")] == [1.1, 1.1, 1.05]
    assert [size_factor(value, "Stud", 5.5) for value in ("F_b", "F_t", "F_c")] == [1.0, 1.0, 1.0]
    assert [size_factor(value, "No. 2", 3.5) for value in ("F_b", "F_t", "F_c")] == [1.5, 1.5, 1.15]
    assert post_value(FIR, "Stud", 4.0, 0.0) == pytest.approx(850 * 1.6 * 1.05)
    assert post_value(FIR, "Stud", 7.25, 0.0) == post_value(FIR, "No. 3", 7.25, 0.0)
    assert beam_values(FIR, "Stud", 1.5, 7.25) == beam_values(FIR, "No. 3", 1.5, 7.25)


def test_a_wide_face_along_the_wall_sets_the_size_factor_of_a_post() -> None:
    assert post_value(FIR, "No. 2", 3.5, 0.0, along=5.5) == pytest.approx(1350 * 1.6 * 1.1)
    with pytest.raises(OutsideLimits, match=r"5 in\. nominal is a post or timber, of Table 4D"):
        post_value(FIR, "No. 2", 5.5, 30.0, along=5.5)
