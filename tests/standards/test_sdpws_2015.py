"""SDPWS 2015: laws, limits, table ends and marks; the printed values are in tests/published."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.catalogue import entries, errata
from groundsill.standards.sdpws_2015 import (
    aspect,
    construction,
    deflection,
    diaphragms,
    perforated,
    tables,
    two_sided,
    unit_shear,
)
from groundsill.standards.sdpws_2015.unit_shear import lumber_unit_shear, panel_unit_shear, plaster_unit_shear
from groundsill.working.dimensions import check_units
from groundsill.working.equation import Equation
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet
from groundsill.working.steps import given as recorded
from groundsill.working.value import marks_of

PANELS = tuple(tables.table_4_3a_seismic().rows)
SHEATHING = tuple(panel for panel in PANELS if "siding" not in panel)
SPACINGS = (6, 4, 3, 2)
EQUATIONS = [e.maker for e in entries("sdpws-2015") if isinstance(e.maker, Equation)]
feet = st.floats(1.0, 40.0)
plf = st.floats(1.0, 2500.0)
stiffness = st.floats(1.0, 60.0)


@pytest.mark.parametrize("equation", EQUATIONS, ids=[e.id for e in EQUATIONS])
def test_every_equation_is_right_in_its_units(equation: Equation[..., float]) -> None:
    check_units(equation)


def test_contradictions_in_print_are_written_down() -> None:
    assert [e.place.split(",")[0] for e in errata("sdpws-2015")] == [
        "4.3.6.4.3", "4.3.7.1 item 5", "4.3.3", "Table 4.3A", "4.3.3.5", "4.1.4 of 2021 (4.3.3 here)",
            "Table 4.3A", "Table 4.2B", "Table 4.2C",
    ]  # fmt: skip


# --- Table 4.3A ------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("panel", PANELS)
def test_wind_is_one_and_four_tenths_of_earthquake_in_every_cell(panel: str) -> None:
    for spacing in SPACINGS:
        seismic = tables.table_4_3a_seismic().read(panel, spacing)
        wind = tables.table_4_3a_wind().read(panel, spacing)
        assert abs(wind - 1.4 * seismic) <= 4.0, f"{panel} at {spacing} in.: {seismic:g} and {wind:g} plf"


@pytest.mark.parametrize("panel", PANELS)
def test_closer_nails_never_hold_less_nor_give_more(panel: str) -> None:
    for table in (tables.table_4_3a_seismic(), tables.table_4_3a_wind(), tables.table_4_3a_ga_plywood()):
        cells = [table.read(panel, spacing) for spacing in SPACINGS]
        assert cells == sorted(cells)


@pytest.mark.parametrize("panel", SHEATHING)
def test_osb_is_never_softer_than_plywood_of_the_same_nailing(panel: str) -> None:
    for spacing in SPACINGS:
        assert tables.table_4_3a_ga_osb().read(panel, spacing) >= tables.table_4_3a_ga_plywood().read(panel, spacing)


def test_only_cells_that_could_not_be_read_are_known_otherwise_than_by_the_scan() -> None:
    table = tables.table_4_3a_seismic()
    unread = {(row, table.columns[column]): how for (row, column), how in table.exceptions.items()}
    assert unread == {
        ("Structural I 15/32, 8d", 4): "blurred",
        ("Structural I 15/32, 8d", 2): "blurred",
        ("Structural I 15/32, 10d", 4): "blurred",
        ("Structural I 15/32, 10d", 2): "blurred",
        ("5/16, 6d", 6): "twin",
    }
    assert table.source_of("15/32, 8d", 1).how == "seen"


def test_siding_has_no_osb_figure_and_says_why() -> None:
    with pytest.raises(OutsideLimits, match=r"no figure for plywood siding 3/8, 8d, edge nail spacing 6: plywood only"):
        tables.table_4_3a_ga_osb().read("plywood siding 3/8, 8d", 6)


def test_a_spacing_between_the_columns_is_refused() -> None:
    with pytest.raises(OutsideLimits, match=r"Table 4\.3A: no column 5 \(edge nail spacing\); it has 6, 4, 3, 2"):
        panel_unit_shear("15/32, 8d", 5, 4, 4)


def test_an_unknown_panel_is_refused_with_the_rows_there_are() -> None:
    with pytest.raises(OutsideLimits, match=r"no row '1/2, 8d' \(panel and nail\); it has Structural I 5/16, 6d, "):
        panel_unit_shear("1/2, 8d", 4, 4, 4)


# --- unit shear ------------------------------------------------------------------------------------------------------


def test_a_cripple_wall_panel_four_feet_long_is_worth_380_plf_by_the_common_schedule() -> None:
    got = panel_unit_shear("15/32, 8d", 4, h=2.0, b_s=4.0)
    assert (got.nominal, got.factor, got.adjusted, got.asd, got.lrfd) == (760.0, 1.0, 760.0, 380.0, 608.0)


@given(panel=st.sampled_from(PANELS), spacing=st.sampled_from(SPACINGS), ratio=st.floats(0.2, 3.5), b_s=st.floats(1, 8))
def test_factors_only_take_away_and_design_stands_in_fixed_ratios(
    panel: str, spacing: int, ratio: float, b_s: float
) -> None:
    got = panel_unit_shear(panel, spacing, ratio * b_s, b_s, G=0.43)
    assert got.factor <= 0.93 + 1e-12
    assert got.adjusted == pytest.approx(got.nominal * got.factor)
    assert got.asd == pytest.approx(got.adjusted / 2.0)
    assert got.lrfd == pytest.approx(0.80 * got.adjusted)


@given(ratio=st.floats(0.2, 3.5), b_s=st.floats(1.0, 8.0))
def test_sharing_by_strength_never_counts_a_slender_segment_for_more(ratio: float, b_s: float) -> None:
    h = ratio * b_s
    by_stiffness = panel_unit_shear("15/32, 8d", 4, h, b_s, sharing="stiffness")
    by_strength = panel_unit_shear("15/32, 8d", 4, h, b_s, sharing="strength")
    assert by_strength.adjusted <= by_stiffness.adjusted + 1e-9
    if ratio <= 2.0:
        assert by_strength.adjusted == by_stiffness.adjusted == 760.0


@given(h=feet, more=st.floats(0.0, 10.0))
def test_a_taller_segment_of_one_length_is_never_worth_more(h: float, more: float) -> None:
    b_s = (h + more) / 3.5 * 1.0000001
    for factor in (aspect.aspect_factor, aspect.strength_sharing_factor, aspect.fibreboard_aspect_factor):
        assert factor(h + more, b_s) <= factor(h, b_s) + 1e-12


@given(b_in=st.integers(8, 96))
def test_a_segment_at_the_very_limit_counts_however_its_inches_turn_into_feet(b_in: int) -> None:
    h, b_s = 3.5 * b_in / 12, b_in / 12
    assert panel_unit_shear("15/32, 8d", 4, h, b_s).factor == pytest.approx(0.8125)


def test_the_slender_factor_starts_from_one_at_two_to_one_and_ends_at_three_and_a_half() -> None:
    assert aspect.aspect_factor(8.0, 4.0) == 1.0
    assert aspect.aspect_factor(8.0, 3.9999999) == pytest.approx(1.0)
    assert aspect.aspect_factor(7.0, 2.0) == pytest.approx(0.8125)
    assert aspect.strength_sharing_factor(7.0, 2.0) == pytest.approx(4 / 7)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (
            lambda: panel_unit_shear("15/32, 8d", 4, 8.0, 2.0),
            r"SDPWS 2015 Table 4\.3\.4: wood structural panel, blocked 8 ft high and 2 ft long: h/b_s = 4; must be at "
            r"most 3\.5",
        ),
        (
            lambda: panel_unit_shear("15/32, 8d", 6, 8.0, 3.0, blocking="6/12"),
            r"wood structural panel, unblocked 8 ft high and 3 ft long: h/b_s = 2\.67; must be at most 2",
        ),
        (
            lambda: lumber_unit_shear("horizontal lumber sheathing, 1x", 5.0, 2.0),
            r"Table 4\.3\.4: horizontal lumber 5 ft high and 2 ft long: h/b_s = 2\.5; must be at most 2",
        ),
        (
            lambda: panel_unit_shear("15/32, 8d", 4, 4.0, 4.0, load="snow"),
            r"SDPWS 2015 4\.3\.3: load = 'snow'; must be one of seismic, wind",
        ),
        (
            lambda: panel_unit_shear("15/32, 8d", 4, 4.0, 4.0, sharing="area"),
            r"sharing = 'area'; must be one of stiffness, strength",
        ),
        (
            lambda: panel_unit_shear("15/32, 8d", 4, 4.0, 4.0, blocking="6/12"),
            r"SDPWS 2015 4\.3\.3\.2: edge nails at 4 in\.; unblocked panels count with 6 in\.",
        ),
        (
            lambda: panel_unit_shear("15/32, 8d", 4, 4.0, 4.0, G=0.9),
            r"Table 4\.3A, note 3: G \(specific gravity of the framing lumber\) = 0\.9 1; must be at least 0\.3 and",
        ),
        (
            lambda: panel_unit_shear("15/32, 8d", 4, float("nan"), 4.0),
            r"4\.3\.4\.1: h \(height of the wall segment\) = nan ft; must be above 0 ft",
        ),
        (
            lambda: plaster_unit_shear("plaster on wood lath", 4.0, 4.0),
            r"SDPWS 2015 Table 4\.3C: no row 'plaster on wood lath' \(material\); it has portland cement plaster",
        ),
        (
            lambda: aspect.aspect_factor(7.1, 2.0),
            r"SDPWS 2015 4\.3\.4\.2: a blocked panel segment is at most 3\.5 times as high as long",
        ),
    ],
)
def test_what_lies_outside_is_refused_in_words(call: object, message: str) -> None:
    with pytest.raises(OutsideLimits, match=message):
        call()  # type: ignore[operator]


@given(G=st.floats(0.3, 0.75), more=st.floats(0.0, 0.2))
def test_denser_framing_never_holds_less_and_douglas_fir_is_the_measure(G: float, more: float) -> None:
    assert unit_shear.gravity_factor(min(G + more, 0.75)) >= unit_shear.gravity_factor(G)
    assert unit_shear.gravity_factor(0.50) == 1.0
    assert unit_shear.gravity_factor(0.37) == pytest.approx(0.87)


@pytest.mark.parametrize("panel", ["3/8, 8d", "7/16, 8d", "Structural I 3/8, 8d", "Structural I 7/16, 8d"])
def test_thinner_panels_on_close_studs_take_the_thicker_value_and_others_keep_theirs(panel: str) -> None:
    thick = "Structural I 15/32, 8d" if "Structural" in panel else "15/32, 8d"
    raised = panel_unit_shear(panel, 6, 4.0, 4.0, studs_close=True)
    assert raised.asd == panel_unit_shear(thick, 6, 4.0, 4.0).asd > panel_unit_shear(panel, 6, 4.0, 4.0).asd
    assert panel_unit_shear("3/8, 6d", 6, 4.0, 4.0, studs_close=True) == panel_unit_shear("3/8, 6d", 6, 4.0, 4.0)


def test_panels_without_blocking_lose_by_nailing_and_stud_spacing() -> None:
    kept = [panel_unit_shear("15/32, 8d", 6, 4, 4, blocking="6/12", stud_spacing=s).factor for s in (12, 16, 20, 24)]
    assert kept == [0.8, 0.6, 0.5, 0.4]


def test_old_boards_are_worth_a_sixth_when_straight_and_carry_their_doubt() -> None:
    assert lumber_unit_shear("horizontal lumber sheathing, 1x", 2.0, 6.0).asd == 50.0
    assert lumber_unit_shear("diagonal lumber sheathing, 1x", 2.0, 6.0).asd == 300.0
    with Sheet():
        boards = lumber_unit_shear("horizontal lumber sheathing, 1x", 2.0, 6.0)
        panels = panel_unit_shear("15/32, 8d", 4, 2.0, 4.0)
    doubts = {mark.what for mark in marks_of((boards.asd,))}
    assert "SDPWS 2015 Table 4.3D: horizontal lumber sheathing, 1x, seismic" in doubts
    assert not any("Table 4.3A: " in mark.what for mark in marks_of((panels.asd,)))


def test_the_sheet_names_every_clause_between_the_table_and_the_design_value() -> None:
    with Sheet() as sheet:
        got = panel_unit_shear("15/32, 8d", 4, 7.0, 2.5, G=0.43)
    cites = [step.cite for step in sheet.steps if step.kind in ("equation", "lookup")]
    assert cites == [
        "SDPWS 2015 Table 4.3A", "SDPWS 2015 Table 4.3A, note 3", "SDPWS 2015 Table 4.3.4", "SDPWS 2015 4.3.4.1",
        "SDPWS 2015 4.3.4.2", "SDPWS 2015 4.3.3", "SDPWS 2015 4.3.3",
    ]  # fmt: skip
    assert got.asd == panel_unit_shear("15/32, 8d", 4, 7.0, 2.5, G=0.43).asd


# --- two faces -------------------------------------------------------------------------------------------------------


@given(v=plf, G_a=stiffness)
def test_two_equal_faces_are_worth_twice_one(v: float, G_a: float) -> None:
    assert two_sided.same_material(v, G_a, v, G_a) == pytest.approx(2 * v)
    assert two_sided.unlike_materials(v, v) == 2 * v


@given(v_1=plf, G_1=stiffness, v_2=plf, G_2=stiffness)
def test_two_faces_never_hold_more_than_their_sum_nor_unlike_ones_less_than_the_better(
    v_1: float, G_1: float, v_2: float, G_2: float
) -> None:
    assert two_sided.same_material(v_1, G_1, v_2, G_2) <= (v_1 + v_2) * (1 + 1e-12)
    assert max(v_1, v_2) <= two_sided.unlike_materials(v_1, v_2) <= v_1 + v_2 + 1e-9
    assert two_sided.panel_with_gypsum_wind(v_1, v_2) == v_1 + v_2
    assert two_sided.added_stiffness(G_1, G_2) == G_1 + G_2


def test_boards_under_panels_add_nothing() -> None:
    assert two_sided.unlike_materials(760.0, 100.0) == 760.0


# --- deflection ------------------------------------------------------------------------------------------------------


@given(v=plf, h=feet, b_s=feet, G_a=stiffness, give=st.floats(0.0, 1.0), times=st.floats(1.0, 5.0))
def test_deflection_is_its_three_parts_and_grows_with_shear_height_and_give(
    v: float, h: float, b_s: float, G_a: float, give: float, times: float
) -> None:
    E, A = 1.4e6, 10.5
    whole = deflection.wall_deflection(v, h, E, A, b_s, G_a, give)
    parts = (
        deflection.bending_part(v, h, E, A, b_s)
        + deflection.shear_part(v, h, G_a)
        + deflection.anchorage_part(h, b_s, give)
    )
    assert whole == pytest.approx(parts)
    assert deflection.wall_deflection(v * times, h, E, A, b_s, G_a, give) >= whole
    assert deflection.wall_deflection(v, h * times, E, A, b_s, G_a, give) >= whole
    assert deflection.wall_deflection(v, h, E, A, b_s, G_a * times, give) <= whole
    assert deflection.wall_deflection(0.0, h, E, A, b_s, G_a, 0.0) == 0.0


def test_deflection_in_inches_equals_the_same_wall_worked_in_inches_throughout() -> None:
    v, h, b, E, A = 300.0 / 12, 96.0, 96.0, 1.6e6, 10.5  # lb/in and in.
    inches = 2 * v * h**3 / (3 * E * A * b) + v * h / 13000.0 + h / b * 0.1
    assert deflection.wall_deflection(300.0, 8.0, 1.6e6, 10.5, 8.0, 13.0, 0.1) == pytest.approx(inches)


# --- openings --------------------------------------------------------------------------------------------------------

# full height as a share of length: the cells at openings of 1/2, 2/3, 5/6 and the whole height
OPENINGS = {
    0.1: (0.69, 0.53, 0.43, 0.36),
    0.3: (0.74, 0.59, 0.49, 0.42),
    0.5: (0.80, 0.67, 0.57, 0.50),
    0.7: (0.87, 0.77, 0.69, 0.63),
    0.9: (0.95, 0.91, 0.87, 0.83),
}


@pytest.mark.parametrize("share", OPENINGS)
def test_factor_for_openings_gives_the_cells_of_its_table(share: float) -> None:
    for high, cell in zip((1 / 2, 2 / 3, 5 / 6, 1.0), OPENINGS[share], strict=True):
        got = perforated.opening_factor_of((1 - share) * 50 * 8 * high, 8.0, 50.0, share * 50)
        assert got == pytest.approx(cell, abs=0.0051)


@given(share=st.floats(0.05, 1.0), high=st.floats(0.0, 1.0), more=st.floats(0.0, 0.5))
def test_larger_openings_never_help_and_a_whole_wall_loses_nothing(share: float, high: float, more: float) -> None:
    area = (1 - share) * 40 * 8 * high
    factor = perforated.opening_factor_of(area, 8.0, 40.0, share * 40)
    assert 0 < factor <= 1.0
    assert perforated.opening_factor_of(area * (1 + more), 8.0, 40.0, share * 40) <= factor + 1e-12
    assert perforated.opening_factor_of(0.0, 8.0, 40.0, 40.0) == 1.0


def test_uplift_of_a_perforated_wall_is_what_its_shear_asks_over_its_counted_length() -> None:
    assert perforated.end_tension(8000.0, 10.0, 0.8, 32.0) == pytest.approx(
        10.0 * perforated.sill_uplift(8000.0, 0.8, 32.0)
    )


# --- floors ----------------------------------------------------------------------------------------------------------


def test_an_old_board_floor_is_worth_50_plf_to_twice_its_width() -> None:
    assert diaphragms.lumber_diaphragm_shear("straight lumber sheathing, 1x", 40.0, 20.0).asd == 50.0
    with pytest.raises(OutsideLimits, match=r"1x 41 ft long and 20 ft wide: L/W = 2\.05; must be at most 2"):
        diaphragms.lumber_diaphragm_shear("straight lumber sheathing, 1x", 41.0, 20.0)


@given(v=plf, L=feet, W=feet, G_a=stiffness, slips=st.floats(0.0, 5.0))
def test_a_floor_bends_more_with_shear_span_and_slip(v: float, L: float, W: float, G_a: float, slips: float) -> None:
    bent = diaphragms.diaphragm_deflection(v, L, 1.4e6, 10.5, W, G_a, slips)
    assert diaphragms.diaphragm_deflection(2 * v, L, 1.4e6, 10.5, W, G_a, slips) >= bent
    assert diaphragms.diaphragm_deflection(v, 2 * L, 1.4e6, 10.5, W, G_a, slips) >= bent
    assert diaphragms.diaphragm_deflection(v, L, 1.4e6, 10.5, W, G_a, slips + 1) > bent


# --- framing, washers, toenails --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("nail", "spacing", "penetration", "v_n", "category", "reasons"),
    [
        ("8d", 4, 2.0, 760.0, "D", ("nominal seismic unit shear above 700 plf in category D, E or F",)),
        ("8d", 4, 2.0, 760.0, "C", ()),
        ("8d", 4, 2.0, 700.0, "D", ()),
        ("8d", 2, 2.0, 600.0, "B", ("edge nails 2 in. apart or closer",)),
        ("10d", 3, 1.6, 600.0, "B", ("10d nails 3 in. apart or closer, more than 1.5 in. into the framing",)),
        ("10d", 3, 1.5, 600.0, "B", ()),
        ("10d", 4, 1.6, 600.0, "B", ()),
    ],
)
def test_when_adjoining_panel_edges_need_3x_framing(
    nail: str, spacing: float, penetration: float, v_n: float, category: str, reasons: tuple[str, ...]
) -> None:
    got = construction.framing_at_panel_edges(nail, spacing, penetration, v_n, category)
    assert (got.needs_3x, got.reasons) == (bool(reasons), reasons)


def test_a_category_that_does_not_exist_is_refused() -> None:
    with pytest.raises(OutsideLimits, match=r"category = 'D2'; must be one of A, B, C, D, E, F"):
        construction.framing_at_panel_edges("8d", 4, 2.0, 760.0, "D2")


@pytest.mark.parametrize(
    ("v_n", "aspect_ratio", "hold_downs", "load", "plate", "edge", "reason"),
    [
        (760.0, 0.5, True, "seismic", False, True, "cut washers serve: every condition of the exception is met"),
        (760.0, 0.5, False, "seismic", True, True, "not so: ends held down for the whole overturning, dead load not"),
        (760.0, 0.5, None, "seismic", None, True, "not known: ends held down for the whole overturning, dead load not"),
        (760.0, 2.5, None, "seismic", True, True, "not so: segment at most 2 times as high as long"),
        (981.0, 0.5, True, "seismic", True, True, "not so: nominal unit shear at most 980 plf"),
        (1300.0, 0.5, True, "wind", False, True, "cut washers serve"),
        (400.0, 0.5, True, "seismic", False, False, "cut washers serve"),
    ],
)
def test_washers_under_the_nuts_of_sill_bolts(
    v_n: float, aspect_ratio: float, hold_downs: bool | None, load: str, plate: bool | None, edge: bool, reason: str
) -> None:
    got = construction.washer_on_sill_bolt(v_n, aspect_ratio, hold_downs, load)
    assert (got.plate, got.to_sheathed_edge) == (plate, edge)
    assert got.reasons[0].startswith(reason)


def test_toenails_stop_at_150_plf_where_shaking_is_strong() -> None:
    assert construction.toenails_allowed(150.0, "D")
    assert not construction.toenails_allowed(150.1, "D")
    assert construction.toenails_allowed(400.0, "C")
    assert construction.toenails_allowed(205.0, "E", "LRFD")
    with Sheet() as sheet:
        construction.toenails_allowed(recorded("v", 180.0, "plf", "shared force"), "D")
    assert any("NOT met" in line.text for step in sheet.steps for line in step.lines)
