"""ASCE 7-16 wind: laws, limits and the ends of the figure; the printed values are in tests/published."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from groundsill.standards.asce7_16 import wind
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet
from groundsill.working.steps import given as recorded
from groundsill.working.table import Table
from groundsill.working.value import Mark, marks_of

HOUSE: dict[str, Any] = {
    "V": 110.0, "exposure": "B", "h": 18.0, "B": 40.0, "L": 30.0, "H_w": 12.0, "H_r": 7.5, "slope": 0.5,
}  # fmt: skip
plan = st.floats(12.0, 120.0)
houses = st.fixed_dictionaries(
    {
        "V": st.floats(60.0, 200.0),
        "exposure": st.sampled_from("BCD"),
        "h": st.floats(8.0, 50.0),
        "B": plan,
        "L": plan,
        "H_w": st.floats(2.0, 30.0),
        "H_r": st.floats(0.0, 20.0),
        "slope": st.floats(0.0, 3.0),
        "roof": st.sampled_from(("sloped", "gable end")),
    }
)


def force(**changes: Any) -> wind.WindForce:
    return wind.wind_base(**{**HOUSE, **changes})


# --- velocity pressure -----------------------------------------------------------------------------------------------


@given(z=st.floats(0.0, 60.0), more=st.floats(0.0, 60.0), exposure=st.sampled_from("BCD"))
def test_wind_is_never_weaker_higher_up_nor_over_more_open_ground(z: float, more: float, exposure: str) -> None:
    def K(at: float, letter: str) -> float:
        terrain = wind.table_26_11_1()
        return wind.exposure_coefficient(at, terrain.read(letter, "z_g"), terrain.read(letter, "alpha"))

    assert K(z + more, exposure) >= K(z, exposure)
    assert K(z, "B") < K(z, "C") < K(z, "D")


def test_the_coefficient_is_flat_below_15_ft_and_above_the_boundary_layer() -> None:
    K = wind.exposure_coefficient
    assert K(0.0, 1200.0, 7.0) == K(15.0, 1200.0, 7.0) < K(15.1, 1200.0, 7.0)
    assert K(1200.0, 1200.0, 7.0) == K(5000.0, 1200.0, 7.0) == pytest.approx(2.01)


@pytest.mark.parametrize(
    ("exposure", "z", "printed"),
    [("B", 20, 0.62), ("B", 25, 0.66), ("B", 30, 0.70), ("C", 15, 0.85), ("C", 30, 0.98), ("D", 15, 1.03)],
)
def test_the_recalled_rows_of_table_26_10_1_come_out(exposure: str, z: float, printed: float) -> None:
    terrain = wind.table_26_11_1()
    got = wind.exposure_coefficient(z, terrain.read(exposure, "z_g"), terrain.read(exposure, "alpha"))
    assert got == pytest.approx(printed, abs=0.0051)  # printed to two decimals


@given(V=st.floats(10.0, 120.0))
def test_pressure_grows_with_the_square_of_the_speed(V: float) -> None:
    assert wind.velocity_pressure(0.7, 1.0, 0.85, 1.0, 2 * V) == pytest.approx(
        4 * wind.velocity_pressure(0.7, 1.0, 0.85, 1.0, V)
    )


def test_a_factor_out_of_its_range_is_refused_by_name() -> None:
    with pytest.raises(OutsideLimits, match=r"ASCE 7-16 Eq\. 26\.10-1: K_zt \(topographic factor\) = 0\.9 1; must be"):
        force(K_zt=0.9)
    with pytest.raises(OutsideLimits, match=r"V \(basic wind speed, strength level\) = 300 mph; must be above 0"):
        force(V=300.0)
    with pytest.raises(OutsideLimits, match=r"V .* = nan mph"):
        force(V=math.nan)


# --- coefficients ----------------------------------------------------------------------------------------------------


def test_the_leeward_wall_holds_flat_beyond_its_ends_and_runs_straight_between() -> None:
    walls = wind.table_27_3_1_walls()
    assert [walls.interpolate("leeward", r) for r in (0.2, 1.0, 1.5, 2.0, 3.0, 4.0, 9.0)] == pytest.approx(
        [-0.5, -0.5, -0.4, -0.3, -0.25, -0.2, -0.2]
    )
    assert walls.interpolate("windward", 2.7) == 0.8


@pytest.mark.parametrize(
    ("slope_deg", "ratio", "windward", "leeward"),
    [
        (26.565, 0.6, 0.17252, -0.6),
        (20.0, 0.25, 0.2, -0.6),
        (20.0, 0.5, 0.0, -0.6),
        (20.0, 0.375, 0.1, -0.6),
        (10.0, 1.0, 0.0, -0.7),  # the printed -0.18 pulls against the wind, and is not counted on
        (22.0, 0.75, 0.04, -0.6),  # 0.08 at 0.5 and, where no value of the same sign is printed, 0 at 1.0
        (45.0, 0.1, 0.4, -0.6),
        (70.0, 1.0, 0.7, -0.6),
        (85.0, 1.0, 0.8, -0.6),
    ],
)
def test_a_roof_takes_the_figures_coefficients(slope_deg: float, ratio: float, windward: float, leeward: float) -> None:
    L = 30.0
    got = force(h=ratio * L, L=L, slope=math.tan(math.radians(slope_deg)))
    assert got.p_roof == pytest.approx(got.q_h * 0.85 * (windward - leeward), rel=1e-4)


def test_a_flatter_roof_than_10_degrees_is_taken_at_10_and_says_so() -> None:
    with Sheet() as sheet:
        flat = force(slope=0.05)
    assert flat.p_roof == force(slope=math.tan(math.radians(10.0))).p_roof
    assert "Roofs flatter than 10 degrees are taken at 10, which pushes more" in [step.title for step in sheet.steps]


def test_figures_are_never_read_beyond_an_upright_roof() -> None:
    assert force(slope=1e9).p_roof == pytest.approx(force().q_h * 0.85 * 1.4)


# --- the whole house -------------------------------------------------------------------------------------------------


@given(house=houses)
def test_the_force_is_never_less_than_the_least_and_is_told_by_its_clause(house: dict[str, Any]) -> None:
    got = wind.wind_base(**house)
    assert max(got.F_wall + got.F_roof, got.F_min) == got.W
    assert got.governs == ("27.1.5" if got.F_min > got.F_wall + got.F_roof else "27.3.1")
    assert all(x >= 0 for x in (got.p_wall, got.p_roof, got.F_wall, got.F_roof))


@given(house=houses, by=st.floats(1.0, 1.2), what=st.sampled_from(("V", "B", "H_w", "H_r")))
def test_more_wind_and_more_house_never_give_less_force(house: dict[str, Any], by: float, what: str) -> None:
    more = {**house, what: house[what] * by}
    assume(more["V"] <= 250.0)
    assert wind.wind_base(**more).W >= wind.wind_base(**house).W * (1 - 1e-12)


@given(house=houses, exposure=st.sampled_from(("BC", "CD")))
def test_more_open_ground_never_gives_less_force(house: dict[str, Any], exposure: str) -> None:
    sheltered, open_ = (wind.wind_base(**{**house, "exposure": letter}).W for letter in exposure)
    assert open_ >= sheltered


@given(house=houses)
def test_the_same_with_a_sheet_open(house: dict[str, Any]) -> None:
    bare = wind.wind_base(**house)
    with Sheet() as sheet:
        put_in = {k: v if isinstance(v, str) else recorded(k, v, UNITS[k], "a test") for k, v in house.items()}
        told = wind.wind_base(**put_in)
    assert replace(told, **{f: float(getattr(told, f)) for f in NUMBERS}) == bare
    assert sheet.steps[-1].title.startswith(f"The wind force is by {bare.governs}; ")


UNITS = {"V": "mph", "h": "ft", "B": "ft", "L": "ft", "H_w": "ft", "H_r": "ft", "slope": "1"}
NUMBERS = ("q_h", "p_wall", "p_roof", "F_wall", "F_roof", "F_min", "W")


def test_a_gable_end_is_a_wall_with_half_the_roofs_area() -> None:
    got = force(roof="gable end")
    assert got.p_roof == got.p_wall
    assert got.F_roof == pytest.approx(got.p_wall * 40.0 * 7.5 / 2)
    assert got.F_min == pytest.approx(16.0 * (480.0 + 150.0))


def test_in_a_light_breeze_the_least_force_governs() -> None:
    got = force(V=60.0)
    assert (got.W, got.governs) == (10080.0, "27.1.5")


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"B": 0.0}, r"ASCE 7-16 27\.3: B = 0 ft; it must be above 0$"),
        ({"L": -1.0}, r"ASCE 7-16 27\.3: L = -1 ft; it must be above 0$"),
        ({"H_w": math.nan}, r"ASCE 7-16 27\.3: H_w = nan ft; it must be above 0$"),
        ({"h": math.inf}, r"ASCE 7-16 27\.3: h = inf ft; it must be above 0$"),
        ({"H_r": -0.1}, r"ASCE 7-16 27\.3: H_r = -0\.1; it must be at least 0$"),
        ({"slope": math.nan}, r"ASCE 7-16 27\.3: slope = nan; it must be at least 0$"),
        ({"h": 60.1}, r"ASCE 7-16 27\.3: h = 60\.1 ft; this way is for houses up to 60 ft high$"),
        ({"roof": "flat"}, r"ASCE 7-16 27\.3: roof 'flat' is not one of sloped, gable end$"),
        ({"exposure": "A"}, r"ASCE 7-16 Table 26\.11-1: no row 'A' \(exposure\); it has B, C, D$"),
    ],
)
def test_what_is_no_house_is_refused_by_name(changes: dict[str, Any], message: str) -> None:
    with pytest.raises(OutsideLimits, match=message):
        force(**changes)


def test_recalled_figures_mark_the_force_and_seen_ones_do_not() -> None:
    with Sheet():
        by_pressure, in_c = force(), force(exposure="C")
    recalled = {m.what for m in marks_of([by_pressure.W]) if m.kind == "from memory"}
    assert recalled == {
        "ASCE 7-16 Table 26.10-1, note 1, the equation",
        "ASCE 7-16 Table 26.11-1: B, alpha",
        "ASCE 7-16 Table 26.11-1: B, z_g",
    }
    assert not any("26.11-1" in mark.what for mark in marks_of([in_c.q_h]))


def test_a_doubtful_coefficient_marks_the_roof_that_reads_it_and_no_wall(monkeypatch: pytest.MonkeyPatch) -> None:
    from importlib.resources import files

    text = (files("groundsill.standards.asce7_16") / "tables/27_3_1_leeward_roof.toml").read_text("utf-8")
    text += '\n[sources.doubt]\nhow = "from memory"\nwhere = "a test"\n[[exception]]\nrow = "0.5"\nsource = "doubt"\n'
    doubtful = Table.parse(text, "doubtful")
    monkeypatch.setattr(wind, "table_27_3_1_leeward_roof", lambda: doubtful)
    mark = Mark("from memory", "ASCE 7-16 Table in Figure 27.3-1, leeward roof: 0.5, 20")
    with Sheet():
        got, higher = force(), force(h=30.0)
    assert mark in marks_of([got.p_roof])
    assert mark in marks_of([got.W])
    assert mark not in marks_of([got.p_wall])
    assert mark not in marks_of([higher.W])


def test_a_doubt_about_the_slope_reaches_the_roof() -> None:
    doubt = Mark("estimated", "slope seen from the street")
    with Sheet():
        got = force(slope=recorded("slope", 0.5, "1", "survey", [doubt]))
    assert doubt in marks_of([got.p_roof])
    assert doubt not in marks_of([got.p_wall])


# --- beside the earthquake -------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("W", "E_h", "link", "governs"),
    [
        (11595.0, 14383.0, "wood structural panel", False),
        (23490.0, 14383.0, "wood structural panel", False),  # 14,094 against 1.4 x 10,068 = 14,095 lb
        (23493.0, 14383.0, "wood structural panel", True),
        (16781.0, 14383.0, "any other link", True),
        (16780.0, 14383.0, "any other link", False),
        (0.0, 0.0, "wood structural panel", False),
    ],
)
def test_wind_governs_only_when_it_asks_more_of_the_link(W: float, E_h: float, link: str, governs: bool) -> None:
    assert wind.wind_governs(W, E_h, link) is governs


@given(W=st.floats(0, 1e5), E_h=st.floats(0, 1e5))
def test_panels_are_never_governed_by_wind_where_other_links_are_not(W: float, E_h: float) -> None:
    assert wind.wind_governs(W, E_h) <= wind.wind_governs(W, E_h, "any other link")


def test_both_forces_and_the_comparison_stand_on_the_sheet() -> None:
    with Sheet() as sheet:
        found = wind.wind_governs(recorded("W", 30000.0, "lb", "x"), recorded("E_h", 14383.0, "lb", "x"))
    assert found is True
    last = sheet.steps[-1]
    assert last.title == "0.6 W is more than that: wind governs"
    assert [float(value) for _, value in last.inputs] == pytest.approx([18000.0, 14095.34])  # type: ignore[arg-type]
    assert {step.id for step in sheet.steps} >= {"asce7-16/2.4.1-W", "asce7-16/2.4.5-E", "table 4.3A (v_w over v_s)"}


def test_an_unknown_link_and_a_negative_force_are_refused() -> None:
    with pytest.raises(OutsideLimits, match=r"SDPWS 2015 Table 4\.3A \(v_w over v_s\): no row 'bolt' \(link\); it has"):
        wind.wind_governs(1.0, 1.0, "bolt")
    with pytest.raises(OutsideLimits, match=r"ASCE 7-16 2\.4\.1 combinations 5 and 7: W .* = -1 lb; must be at least"):
        wind.wind_governs(-1.0, 1.0)
