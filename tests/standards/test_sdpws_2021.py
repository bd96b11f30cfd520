"""SDPWS 2021 beside 2015: the whole table, the two formats, laws, limits and messages; the same questions to either."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards import sdpws_2021
from groundsill.standards.catalogue import entries, errata, find
from groundsill.standards.sdpws import EDITIONS, Sdpws, rules_of
from groundsill.standards.sdpws_2015 import diaphragms as diaphragms_15
from groundsill.standards.sdpws_2015 import perforated as perforated_15
from groundsill.standards.sdpws_2015 import tables as tables_15
from groundsill.standards.sdpws_2015 import two_sided as two_sided_15
from groundsill.standards.sdpws_2015.unit_shear import panel_unit_shear as panel_15
from groundsill.standards.sdpws_2015.unit_shear import plaster_unit_shear as plaster_15
from groundsill.standards.sdpws_2021 import aspect, construction, diaphragms, perforated, tables, two_sided, unit_shear
from groundsill.standards.sdpws_2021.unit_shear import lumber_unit_shear, panel_unit_shear, plaster_unit_shear
from groundsill.working.dimensions import check_units
from groundsill.working.equation import Equation
from groundsill.working.errors import OutsideLimits, UnknownFormula
from groundsill.working.sheet import Sheet
from groundsill.working.value import marks_of

PANELS = tuple(tables.table_4_3a().rows)
SPACINGS = (6, 4, 3, 2)
EQUATIONS = [e.maker for e in entries("sdpws-2021") if isinstance(e.maker, Equation)]
STUCCO = "portland cement plaster 7/8 in. on metal lath"
BOARDS = "horizontal lumber sheathing, 1x"
BOARD_ROWS = tuple(tables.table_4_3d().rows)
GYPSUM_ROWS = tuple(row for row in tables.table_4_3c().rows if row != STUCCO)
ratios = st.floats(0.2, 3.5)
lengths = st.floats(1.0, 8.0)
gravities = st.floats(0.3, 0.75)


@pytest.mark.parametrize("equation", EQUATIONS, ids=[e.id for e in EQUATIONS])
def test_every_equation_is_right_in_its_units(equation: Equation[..., float]) -> None:
    check_units(equation)


def test_what_was_not_seen_and_what_contradicts_is_written_down() -> None:
    assert [e.place.split(",")[0] for e in errata("sdpws-2021")] == [
        "4.1.4", "clauses 4.1.7 and 4.2.2", "Table 4.2C",
    ]  # fmt: skip


# --- the whole table -------------------------------------------------------------------------------------------------


def test_the_table_has_a_row_for_every_panel_of_the_earlier_edition() -> None:
    assert tuple(tables_15.table_4_3a_wind().rows) == PANELS
    for made_of in ("ga_osb", "ga_plywood"):
        assert tuple(getattr(tables, f"table_4_3a_{made_of}")().rows) == PANELS


@pytest.mark.parametrize("panel", PANELS)
def test_the_one_column_is_what_the_earlier_edition_had_for_wind(panel: str) -> None:
    for spacing in SPACINGS:
        assert tables.table_4_3a().read(panel, spacing) == tables_15.table_4_3a_wind().read(panel, spacing)


@pytest.mark.parametrize("panel", PANELS)
def test_a_panel_keeps_its_allowable_to_the_pound_and_gains_nothing_by_the_edition(panel: str) -> None:
    for spacing in SPACINGS:
        new, old = panel_unit_shear(panel, spacing, 4.0, 4.0), panel_15(panel, spacing, 4.0, 4.0)
        assert abs(new.asd - old.asd) <= 1.3
        wind = panel_unit_shear(panel, spacing, 4.0, 4.0, load="wind")
        assert wind.asd == panel_15(panel, spacing, 4.0, 4.0, load="wind").asd
        assert (wind.nominal, wind.lrfd) == (new.nominal, 0.80 * new.nominal)


@pytest.mark.parametrize("panel", PANELS)
def test_closer_nails_never_hold_less_nor_give_more(panel: str) -> None:
    for table in (tables.table_4_3a(), tables.table_4_3a_ga_plywood()):
        cells = [table.read(panel, spacing) for spacing in SPACINGS]
        assert cells == sorted(cells)


def test_only_what_was_read_twice_is_seen() -> None:
    table = tables.table_4_3a()
    doubtful = {(row, table.columns[column]): table.source_of(row, column).how for row, column in table.exceptions}
    assert doubtful == {
        ("Structural I 15/32, 8d", 4): "computed",
        ("Structural I 15/32, 10d", 4): "computed",
        **{("plywood siding 3/8, 8d", spacing): "seen" for spacing in SPACINGS},
    }
    assert table.source_of("15/32, 8d", 1).how == "seen"


def test_old_boards_are_worth_what_they_were_and_old_plaster_1_4_times_less() -> None:
    for row in BOARD_ROWS:
        assert lumber_unit_shear(row, 4.0, 4.0).asd == pytest.approx(
            rules_of("sdpws-2015").lumber_unit_shear(row, 4.0, 4.0).asd, abs=0.5
        )
    for row in tables.table_4_3c().rows:
        new, old = plaster_unit_shear(row, 4.0, 4.0), plaster_15(row, 4.0, 4.0)
        assert new.nominal == old.nominal
        assert new.asd == pytest.approx(old.asd / 1.4)
        assert plaster_unit_shear(row, 4.0, 4.0, load="wind").asd == old.asd


# --- formats, laws ---------------------------------------------------------------------------------------------------


@given(panel=st.sampled_from(PANELS), spacing=st.sampled_from(SPACINGS), ratio=ratios, b=lengths, G=gravities)
def test_earthquake_and_wind_part_only_in_the_last_step(
    panel: str, spacing: int, ratio: float, b: float, G: float
) -> None:
    quake = panel_unit_shear(panel, spacing, ratio * b, b, G)
    wind = panel_unit_shear(panel, spacing, ratio * b, b, G, load="wind")
    assert (quake.nominal, quake.factor, quake.adjusted) == (wind.nominal, wind.factor, wind.adjusted)
    assert quake.factor <= 1.0
    assert quake.asd == pytest.approx(quake.adjusted / 2.8)
    assert wind.asd == pytest.approx(wind.adjusted / 2.0)
    assert quake.lrfd == pytest.approx(0.50 * quake.adjusted)
    assert wind.lrfd == pytest.approx(0.80 * wind.adjusted)


@given(ratio=ratios, more=st.floats(0.0, 1.0), b=lengths, G=gravities, denser=st.floats(0.0, 0.2))
def test_a_taller_segment_and_lighter_framing_never_hold_more(
    ratio: float, more: float, b: float, G: float, denser: float
) -> None:
    taller = min(ratio + more, 3.5)
    for sharing in ("stiffness", "strength"):
        short = panel_unit_shear("15/32, 8d", 4, ratio * b, b, G, sharing=sharing).asd
        assert panel_unit_shear("15/32, 8d", 4, taller * b, b, G, sharing=sharing).asd <= short + 1e-9
        assert (
            panel_unit_shear("15/32, 8d", 4, ratio * b, b, min(G + denser, 0.75), sharing=sharing).asd >= short - 1e-9
        )


def test_ten_penny_nails_with_hold_downs_inside_the_end_posts_lose_eight_per_cent_and_others_nothing() -> None:
    plain, inside = (panel_unit_shear("15/32, 10d", 6, 4.0, 4.0, held_inside=held) for held in (False, True))
    assert (plain.factor, inside.factor) == (1.0, pytest.approx(0.92))
    assert inside.asd == pytest.approx(0.92 * plain.asd)
    assert panel_unit_shear("15/32, 8d", 6, 4.0, 4.0, held_inside=True) == panel_unit_shear("15/32, 8d", 6, 4.0, 4.0)
    with Sheet() as sheet:
        panel_unit_shear("15/32, 10d", 6, 4.0, 4.0, held_inside=True)
    assert "SDPWS 2021 Table 4.3A note 10" in [step.cite for step in sheet.steps]


def test_the_sheet_names_this_editions_clauses_and_no_other() -> None:
    with Sheet() as sheet:
        got = panel_unit_shear("15/32, 8d", 4, 7.0, 2.5, G=0.43)
    cites = [step.cite for step in sheet.steps if step.kind in ("equation", "lookup")]
    assert cites == [
        "SDPWS 2021 Table 4.3A", "SDPWS 2021 Table 4.3A, note 3", "SDPWS 2021 Table 4.3.3", "SDPWS 2021 4.3.3",
        "SDPWS 2021 4.3.3.2", "SDPWS 2021 4.1.4.1", "SDPWS 2021 4.1.4.1",
    ]  # fmt: skip
    assert got.asd == panel_unit_shear("15/32, 8d", 4, 7.0, 2.5, G=0.43).asd


def test_neither_the_divisor_nor_the_cell_of_a_panel_rests_on_memory_and_those_of_boards_do() -> None:
    with Sheet():
        panel = {mark.kind for mark in marks_of((panel_unit_shear("15/32, 8d", 4, 2.0, 4.0).asd,))}
        boards = {mark.what for mark in marks_of((lumber_unit_shear(BOARD_ROWS[0], 2.0, 4.0).asd,))}
    assert "from memory" not in panel
    assert any(what.startswith("SDPWS 2021 Table 4.3D: ") for what in boards)


def test_thinner_panels_on_close_studs_take_the_thicker_value() -> None:
    assert panel_unit_shear("7/16, 8d", 6, 4.0, 4.0, studs_close=True).nominal == 730.0
    assert panel_unit_shear("3/8, 6d", 6, 4.0, 4.0, studs_close=True).nominal == 560.0


def test_panels_over_gypsum_are_worth_those_on_studs_with_the_next_smaller_nail() -> None:
    for name, panel in (("15/32, 8d", "15/32, 10d"), ("3/8, 6d", "3/8, 8d"), ("5/16, 6d", "5/16, 8d")):
        for spacing in SPACINGS:
            for shear in (panel_unit_shear, panel_15):
                for load in ("seismic", "wind"):
                    over = shear(panel, spacing, 4.0, 4.0, load=load, over_gypsum=True)
                    assert over.asd == shear(name, spacing, 4.0, 4.0, load=load).asd
            assert tables.table_4_3b_ga_osb().read(panel, spacing) == tables.table_4_3a_ga_osb().read(name, spacing)
            assert tables.table_4_3b_ga_plywood().rows == tables_15.table_4_3b_ga_plywood().rows
    with pytest.raises(OutsideLimits, match=r"SDPWS 2021 Table 4\.3B: no row '15/32, 8d' \(panel and nail\)"):
        panel_unit_shear("15/32, 8d", 4, 4.0, 4.0, over_gypsum=True)
    with Sheet():
        new = {mark.what for mark in marks_of((panel_unit_shear("5/16, 8d", 4, 4.0, 4.0, over_gypsum=True).asd,))}
        old = {mark.what for mark in marks_of((panel_15("5/16, 8d", 4, 4.0, 4.0, over_gypsum=True).asd,))}
    assert "SDPWS 2021 Table 4.3B: 5/16, 8d, 4" in new
    assert not any("Table 4.3B" in what for what in old)


# --- limits ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (
            lambda: panel_unit_shear("15/32, 8d", 4, 8.0, 2.0),
            r"SDPWS 2021 Table 4\.3\.3: wood structural panel, blocked 8 ft high and 2 ft long: h/b = 4; must be at "
            r"most 3\.5",
        ),
        (
            lambda: panel_unit_shear("15/32, 8d", 6, 8.0, 3.0, blocking="6/12"),
            r"SDPWS 2021 Table 4\.3\.3: wood structural panel, unblocked .* must be at most 2",
        ),
        (
            lambda: panel_unit_shear("15/32, 8d", 4, 4.0, 4.0, blocking="6/12"),
            r"SDPWS 2021 4\.3\.5\.3: edge nails at 4 in\.; unblocked panels count with 6 in\.",
        ),
        (
            lambda: panel_unit_shear("15/32, 8d", 4, 4.0, 4.0, load="snow"),
            r"SDPWS 2021 4\.3\.5: load = 'snow'; must be one of seismic, wind",
        ),
        (lambda: panel_unit_shear("15/32, 8d", 5, 4.0, 4.0), r"SDPWS 2021 Table 4\.3A: no column 5"),
        (
            lambda: plaster_unit_shear(STUCCO, 8.0, 5.0),
            r"SDPWS 2021 Table 4\.3\.3: portland cement plaster 8 ft high and 5 ft long: h/b = 1\.6; must be at "
            r"most 1\.5",
        ),
        (
            lambda: plaster_unit_shear("plaster on wood lath", 4.0, 4.0),
            r"SDPWS 2021 Table 4\.3C: no row 'plaster on wood lath' \(material\)",
        ),
        (
            lambda: lumber_unit_shear(BOARDS, 5.0, 2.0),
            r"Table 4\.3\.3: horizontal lumber 5 ft high and 2 ft long: h/b = 2\.5; must be at most 2",
        ),
        (
            lambda: diaphragms.lumber_diaphragm_shear("straight lumber sheathing, 1x", 41.0, 20.0),
            r"SDPWS 2021 Table 4\.2\.2: straight lumber sheathing, 1x 41 ft long and 20 ft wide: L/W = 2\.05; must be "
            r"at most 2",
        ),
        (
            lambda: tables.table_4_3a_ga_osb().read("plywood siding 3/8, 8d", 6),
            r"SDPWS 2021 Table 4\.3A: no figure for plywood siding 3/8, 8d, edge nail spacing 6: plywood only",
        ),
        (
            lambda: aspect.aspect_factor(7.1, 2.0),
            r"SDPWS 2021 4\.3\.3\.2: a blocked panel segment is at most 3\.5 times",
        ),
        (
            lambda: construction.framing_at_panel_edges("8d", 4.0, 2.0, 1065.0, "G"),
            r"SDPWS 2021 4\.3\.7\.1: category = 'G'; must be one of A, B, C, D, E, F",
        ),
        (
            lambda: construction.nails_in_framing("8d", 1.3),
            r"SDPWS 2021 Table 4\.3A: 8d nails reach 1\.3 in\. into the framing; must be at least 1\.375 in\.",
        ),
        (
            lambda: construction.panels_on_studs(0.469, 1.5, 30.0),
            r"SDPWS 2021 4\.3\.7\.1: studs 1\.5 in\. thick and 30 in\. apart; must be at least 1\.5 in\. thick and at "
            r"most 24 in\. apart",
        ),
        (
            lambda: rules_of("sdpws-2008"),
            r"no braced line is checked by sdpws-2008; it is one of sdpws-2015, sdpws-2021",
        ),
    ],
)
def test_what_lies_outside_is_refused_in_words(call: Callable[[], object], message: str) -> None:
    with pytest.raises((OutsideLimits, UnknownFormula), match=message):
        call()


@pytest.mark.parametrize("row", GYPSUM_ROWS)
def test_gypsum_counts_to_twice_its_length_only_where_its_edges_are_blocked(row: str) -> None:
    assert plaster_unit_shear(row, 6.0, 4.0).asd > 0
    if ", blocked" in row:
        assert plaster_unit_shear(row, 8.0, 4.0).asd > 0
    else:
        with pytest.raises(OutsideLimits, match=r"gypsum, unblocked .* must be at most 1\.5"):
            plaster_unit_shear(row, 8.0, 4.0)


# --- construction ----------------------------------------------------------------------------------------------------


def test_the_common_schedule_asks_for_3x_framing_by_either_edition_and_six_inch_nails_by_neither() -> None:
    for edition, common, wide in (("sdpws-2015", 760.0, 520.0), ("sdpws-2021", 1065.0, 730.0)):
        rules = rules_of(edition)
        asked = rules.framing_at_panel_edges("8d", 4.0, 2.03, common, "D")
        assert asked.needs_3x
        assert "above" in asked.reasons[0]
        assert not rules.framing_at_panel_edges("8d", 6.0, 2.03, wide, "D").needs_3x
        assert not rules.framing_at_panel_edges("8d", 4.0, 2.03, common, "C").needs_3x
        assert rules.framing_at_panel_edges("8d", 2.0, 2.03, 300.0, "A").needs_3x
        assert rules.framing_at_panel_edges("10d", 3.0, 2.53, 300.0, "A").needs_3x
    assert construction.framing_at_panel_edges("8d", 4.0, 2.03, 980.0, "D").reasons == ()
    assert construction.framing_at_panel_edges("8d", 4.0, 2.03, 980.1, "D").reasons == (
        "nominal unit shear above 980 plf in category D, E or F",
    )


def test_cut_washers_serve_up_to_1370_plf_and_the_plate_reaches_the_edge_above_400() -> None:
    ask = construction.washer_on_sill_bolt
    assert ask(1370.0, 2.0, True).plate is False
    assert ask(1370.1, 2.0, True).plate is True
    assert ask(1370.0, 2.1, True).plate is True
    assert ask(1370.0, 2.0, False).plate is True
    assert ask(1370.0, 2.0, None).plate is None
    assert (ask(400.0, 1.0, None).to_sheathed_edge, ask(400.1, 1.0, None).to_sheathed_edge) == (False, True)


def test_nails_along_studs_close_up_where_thin_panels_go_on_wide_studs() -> None:
    assert construction.panels_on_studs(7 / 16, 1.5, 24.0).field_nails_in == 6.0
    assert construction.panels_on_studs(15 / 32, 1.5, 24.0).field_nails_in == 12.0
    assert construction.panels_on_studs(7 / 16, 2.0, 16.0).field_nails_in == 12.0
    assert construction.panels_on_studs(15 / 32, 2.0, 16.0).nail_to_edge_in == 0.375
    assert construction.nails_in_framing("8d", 1.375) == 1.375


def test_toenails_hand_on_150_plf_in_the_high_categories() -> None:
    assert construction.toenails_allowed(150.0, "D")
    assert not construction.toenails_allowed(151.0, "E")
    assert construction.toenails_allowed(400.0, "C")
    assert construction.toenails_allowed(205.0, "F", "LRFD")


# --- what the edition keeps ------------------------------------------------------------------------------------------


def test_restated_equations_are_the_very_bodies_of_2015() -> None:
    for new, old in ((two_sided, two_sided_15), (perforated, perforated_15)):
        for name in new.__all__:
            thing = getattr(new, name)
            if isinstance(thing, Equation) and thing is not perforated.opening_factor:
                assert thing.body is getattr(old, name).body
                assert thing.source is sdpws_2021.SOURCE
                by_words = (two_sided.unlike_materials, two_sided.panel_with_gypsum_wind)
                quoted = (thing.witness and thing is not perforated.opening_area) or thing in by_words
                assert thing.how == ("seen" if quoted else "from memory")
    assert unit_shear.gravity_factor(0.42) == pytest.approx(0.92)


@given(share=st.floats(0.05, 1.0), high=st.floats(0.0, 1.0), more=st.floats(0.0, 0.5))
def test_the_factor_for_openings_in_areas_is_that_of_2015_where_no_part_is_slender(
    share: float, high: float, more: float
) -> None:
    area = (1 - share) * 40 * 8 * high
    factor = perforated.opening_factor_of(area, 8.0, 40.0, share * 40)
    assert factor == pytest.approx(perforated_15.opening_factor_of(area, 8.0, 40.0, share * 40))
    assert perforated.opening_factor_of(area * (1 + more), 8.0, 40.0, share * 40) <= factor + 1e-12


def test_a_perforated_wall_is_bounded_in_strength_and_height_by_either_edition() -> None:
    assert perforated.perforated_limits(2435.0, 20.0) == 2435.0
    with pytest.raises(
        OutsideLimits, match=r"4\.3\.2\.3: nominal unit shear of a perforated wall 2,580 plf; must be at"
    ):
        perforated.perforated_limits(2580.0, 8.0)
    with pytest.raises(OutsideLimits, match=r"a perforated wall 20\.5 ft high; must be at most 20 ft"):
        perforated.perforated_limits(700.0, 20.5)
    assert perforated_15.perforated_limits(2435.0, 8.0, "wind") == 2435.0
    with pytest.raises(OutsideLimits, match=r"SDPWS 2015 4\.3\.5\.3: nominal unit shear .* at most 1,740 plf"):
        perforated_15.perforated_limits(1741.0, 8.0)


def test_a_slender_part_of_a_perforated_wall_loses_length_and_not_unit_shear() -> None:
    assert perforated.counted_length(8.0, 4.0) == 4.0
    assert perforated.counted_length(8.0, 3.0) == pytest.approx(2.25)
    with pytest.raises(OutsideLimits, match=r"at most 3\.5 times as high as long"):
        perforated.counted_length(8.0, 2.2)
    slender, stout = (panel_unit_shear("15/32, 8d", 4, 8.0, b, sharing="perforated") for b in (3.0, 8.0))
    assert slender == stout == panel_unit_shear("15/32, 8d", 4, 8.0, 8.0)
    with pytest.raises(OutsideLimits, match=r"blocking = '6/12'; must be one of blocked"):
        panel_unit_shear("15/32, 8d", 6, 8.0, 8.0, sharing="perforated", blocking="6/12")


def test_a_low_opening_counts_as_a_third_of_the_wall_high() -> None:
    assert perforated.opening_area(2.0, 0.5, 3.0) == 2.0
    assert perforated.opening_area(2.0, 2.0, 3.0) == 4.0


@given(panel=st.sampled_from(PANELS), spacing=st.sampled_from(SPACINGS), ratio=ratios, b=lengths, G=gravities)
def test_either_edition_expects_the_same_of_a_panel_for_either_load(
    panel: str, spacing: int, ratio: float, b: float, G: float
) -> None:
    expected = panel_unit_shear(panel, spacing, ratio * b, b, G).expected
    for load in ("seismic", "wind"):
        earlier = panel_15(panel, spacing, ratio * b, b, G, load)
        assert earlier.expected == pytest.approx(expected)
        assert earlier.expected >= float(earlier.adjusted) - 1e-9


def test_either_edition_expects_the_same_of_boards_plaster_and_floors() -> None:
    for row in BOARD_ROWS:
        found = {rules_of(edition).lumber_unit_shear(row, 4.0, 4.0, "seismic").expected for edition in EDITIONS}
        assert len(found) == 1
    for row in tables.table_4_3c().rows:
        assert plaster_unit_shear(row, 4.0, 4.0).expected == plaster_15(row, 4.0, 4.0).expected
    for row in tables.table_4_2d().rows:
        found = {rules_of(edition).lumber_diaphragm_shear(row, 20.0, 20.0, "seismic").expected for edition in EDITIONS}
        assert len(found) == 1


def test_floors_of_panels_keep_their_allowables_from_one_edition_to_the_next_and_their_limits() -> None:
    for table, blocking, rows in (
        (tables.table_4_2a(), "blocked", 1), (tables.table_4_2b(), "blocked", 2), (tables.table_4_2c(), "unblocked", 1),
    ):  # fmt: skip
        for row in table.rows:
            panel, nail, framing = row.split(", ")[:3]
            if rows == 2 and not row.endswith("2 rows"):
                continue
            for nails in table.columns:
                new, old = (
                    module.panel_diaphragm_shear(
                        f"{panel}, {nail}", nails, 20.0, 20.0, framing=framing, blocking=blocking, rows=rows
                    )
                    for module in (diaphragms, diaphragms_15)
                )
                assert new.asd == pytest.approx(old.asd, abs=1.0)
                assert new.expected == old.expected
    assert diaphragms.panel_diaphragm_shear("15/32, 8d", "6/6", 80.0, 20.0, G=0.43).asd == pytest.approx(
        755 * 0.93 / 2.8
    )
    with pytest.raises(OutsideLimits, match=r"blocked 81 ft long and 20 ft wide: L/W = 4\.05; must be at most 4"):
        diaphragms.panel_diaphragm_shear("15/32, 8d", "6/6", 81.0, 20.0)
    with pytest.raises(OutsideLimits, match=r"unblocked 61 ft long and 20 ft wide: L/W = 3\.05; must be at most 3"):
        diaphragms.panel_diaphragm_shear("15/32, 8d", "case 1", 61.0, 20.0, blocking="unblocked")
    with pytest.raises(OutsideLimits, match="must be one of blocked, unblocked"):
        diaphragms.panel_diaphragm_shear("15/32, 8d", "6/6", 20.0, 20.0, blocking="glued")


@pytest.mark.parametrize("module", [diaphragms, diaphragms_15])
@pytest.mark.parametrize("load", ["seismic", "wind"])
@given(row=st.sampled_from(tuple(tables.table_4_2a().rows)), G=st.floats(0.3, 0.6))
def test_a_floor_of_panels_never_loses_by_nails_blocking_framing_or_layout(
    module: Any, load: str, row: str, G: float
) -> None:
    """Closer nails, blocked edges, wider framing and joints across the joists: none of them takes anything away."""
    panel, nail, framing = row.split(", ")

    def asd(nails: str, blocking: str = "blocked", framing: str = framing) -> float:
        found = module.panel_diaphragm_shear(
            f"{panel}, {nail}", nails, 20.0, 20.0, G, load, framing=framing, blocking=blocking
        )
        return float(found.asd)

    blocked = [asd(nails) for nails in ("6/6", "4/6", "2.5/4", "2/3")]
    assert blocked == sorted(blocked)
    assert blocked[0] >= asd("case 1", "unblocked") >= asd("cases 2 to 6", "unblocked")
    for nails in ("6/6", "4/6", "2.5/4", "2/3"):
        assert asd(nails, framing="3x") >= asd(nails, framing="2x")


def test_a_trade_name_means_the_edition_of_the_default_code() -> None:
    assert find("sdpws.unit-shear").id == "sdpws-2021/4.3.5"
    assert find("sdpws.lumber-diaphragm").id == "sdpws-2021/4.2D-lumber"


# --- the same questions to either edition ----------------------------------------------------------------------------


@pytest.mark.parametrize("document", EDITIONS)
def test_a_line_is_checked_by_either_edition_with_the_same_calls(document: str) -> None:
    rules: Sdpws = rules_of(document)
    panel = rules.panel_unit_shear("15/32, 8d", 4.0, 2.0, 4.0, 0.50)
    assert panel.asd == pytest.approx(380.0, abs=0.5)
    assert rules.lumber_unit_shear(BOARDS, 2.0, 6.0).asd == pytest.approx(50.0)
    assert rules.plaster_unit_shear(STUCCO, 2.0, 6.0).asd == pytest.approx(
        180.0 if document == "sdpws-2015" else 360 / 2.8
    )
    assert rules.lumber_diaphragm_shear("straight lumber sheathing, 1x", 30.0, 20.0).asd == pytest.approx(50.0)
    for made_of, stiffness in (("OSB", 19.0), ("plywood", 13.0)):
        assert rules.stiffness(made_of).read("15/32, 8d", 4) == stiffness
    assert rules.toenails().read("toenails", "ASD") == 150.0
    assert rules.clauses.panels == f"{rules.short} Table 4.3A"
    held = rules.panel_unit_shear("15/32, 10d", 4.0, 2.0, 4.0, 0.50, held_inside=True)
    free = rules.panel_unit_shear("15/32, 10d", 4.0, 2.0, 4.0, 0.50)
    assert (held.asd < free.asd) == bool(rules.clauses.held_inside) == (document == "sdpws-2021")


@pytest.mark.parametrize("document", EDITIONS)
def test_two_old_faces_count_for_twice_the_lesser_or_the_greater_and_like_ones_add(document: str) -> None:
    rules = rules_of(document)
    boards, diagonal, stucco = (
        (rules.lumber_unit_shear(BOARDS, 4.0, 4.0), 1.5),
        (rules.lumber_unit_shear("diagonal lumber sheathing, 1x", 4.0, 4.0), 6.0),
        (rules.plaster_unit_shear(STUCCO, 4.0, 4.0), 9.0),
    )
    like, stiffness = rules.both_faces(boards, boards, True)
    assert (like.asd, stiffness) == (pytest.approx(100.0), 3.0)
    assert rules.both_faces(boards, diagonal, False)[0].asd == pytest.approx(diagonal[0].asd)
    pair = rules.both_faces(stucco, diagonal, False)[0]
    lesser, greater = sorted((float(stucco[0].adjusted), float(diagonal[0].adjusted)))
    assert pair.adjusted == pytest.approx(max(2 * lesser, greater))
    assert pair.adjusted <= lesser + greater


# --- particleboard and structural fibreboard -------------------------------------------------------------------------


@pytest.mark.parametrize("row", tuple(tables.table_4_3a_pressed().rows))
def test_pressed_boards_keep_their_allowable_from_one_edition_to_the_next(row: str) -> None:
    for spacing in (6, 4, 3, 2):
        if spacing == 6 and row.startswith("structural"):
            continue
        new, old = (rules_of(e).pressed_unit_shear(row, spacing, 4.0, 4.0, 0.5, "seismic") for e in EDITIONS[::-1])
        assert new.asd == pytest.approx(old.asd, abs=1.5)
        assert new.expected == old.expected
        assert tables.table_4_3a_pressed_ga().read(row, spacing) == tables_15.table_4_3a_pressed_ga().read(row, spacing)


def test_slender_fibreboard_loses_by_its_own_factor_and_particleboard_ends_at_two_to_one() -> None:
    fibre, particle = "structural fibreboard 25/32 in., 11 gauge roofing nails", "particleboard 3/8 in., 6d nails"
    assert unit_shear.pressed_unit_shear(fibre, 4, 6.0, 2.0).adjusted == pytest.approx(475 * (1.09 - 0.27))
    with pytest.raises(OutsideLimits, match=r"particleboard .*must be at most 2"):
        unit_shear.pressed_unit_shear(particle, 4, 4.5, 2.0)
    with pytest.raises(OutsideLimits, match=r"4 in\. at most|6"):
        unit_shear.pressed_unit_shear(fibre, 6, 4.0, 4.0)


@given(row=st.sampled_from(tuple(tables.table_4_3a_pressed().rows)), G=st.floats(0.3, 0.6), h=st.floats(1.0, 4.0))
def test_pressed_boards_never_lose_by_closer_nails_nor_gain_by_lighter_framing(row: str, G: float, h: float) -> None:
    found = [unit_shear.pressed_unit_shear(row, spacing, h, 4.0, G) for spacing in (4, 3, 2)]
    assert [one.asd for one in found] == sorted(one.asd for one in found)
    assert all(one.factor <= 1.0 for one in found)


@pytest.mark.parametrize("edition", EDITIONS)
def test_a_floor_of_straight_boards_may_not_hang_out_and_the_others_by_their_sheathing(edition: str) -> None:
    table = rules_of(edition).overhangs()
    assert [table.read(row, "ratio") for row in ("panels", "diagonal boards")] == [1.5, 1.0]
    assert {table.read(row, "outside up to") for row in table.rows} == {6.0}
    with pytest.raises(OutsideLimits, match="straight boards are not among what the clause allows"):
        table.read("straight boards", "ratio")
