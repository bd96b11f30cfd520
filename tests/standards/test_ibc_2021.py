"""IBC 2021: soil, the sill-bolt exception, ground motion; laws, limits, what is known and what is not."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.ibc_2021 import concrete, ground_motion, sill_anchors, soils
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet
from groundsill.working.steps import given as recorded
from groundsill.working.value import marks_of

pounds = st.floats(0, 1e5)


# --- soil ------------------------------------------------------------------------------------------------------------


@given(c=st.floats(1, 500), A=st.floats(0, 200), D=pounds)
def test_cohesion_never_holds_more_than_half_the_dead_load(c: float, A: float, D: float) -> None:
    held = soils.cohesion_resistance(c, A, D)
    assert held <= 0.5 * D
    assert held <= c * A


@given(D=pounds, more=pounds, A=st.floats(0, 100))
def test_more_dead_load_never_holds_less(D: float, more: float, A: float) -> None:
    for soil in "12345":
        before = soils.lateral_resistance(soil, D, A, 1.0, 1.5)
        assert soils.lateral_resistance(soil, D + more, A, 1.0, 1.5).total >= before.total


@given(d=st.floats(0, 15), more=st.floats(0, 15))
def test_deeper_faces_hold_more_up_to_fifteen_feet(d: float, more: float) -> None:
    assert soils.lateral_pressure(150.0, d + more) >= soils.lateral_pressure(150.0, d)
    assert soils.lateral_pressure(150.0, 15.0 + more) == 15 * 150.0


@given(d=st.floats(0.1, 15), d_0=st.floats(0, 15), b=st.floats(0, 40))
def test_what_is_not_counted_at_the_top_is_taken_off(d: float, d_0: float, b: float) -> None:
    if d_0 <= d:
        whole = soils.lateral_resultant(150.0, b, d, 0.0)
        assert soils.lateral_resultant(150.0, b, d, d_0) == pytest.approx(
            whole - soils.lateral_resultant(150.0, b, d_0, 0.0)
        )


def test_sand_slides_by_friction_and_clay_by_cohesion() -> None:
    sand, clay = (soils.lateral_resistance(soil, 4000.0, 10.0, 1.0, 2.0) for soil in ("4", "5"))
    assert (sand.rule, sand.sliding, sand.bearing, sand.total) == ("friction", 1000.0, 300.0, 1300.0)
    assert (clay.rule, clay.sliding, clay.bearing, clay.total) == ("cohesion", 1300.0, 200.0, 1500.0)


def test_a_strip_with_no_embedded_face_has_only_its_sliding_and_the_sheet_says_so() -> None:
    with Sheet() as sheet:
        got = soils.lateral_resistance(
            "4", recorded("D", 4000.0, "lb", "take-down"), recorded("A", 10.0, "ft^2", "plan")
        )
    assert (float(got.bearing), float(got.total)) == (0.0, 1000.0)
    assert any(line.text == "No embedded face is counted" for step in sheet.steps for line in step.lines)


def test_neither_friction_nor_the_cap_on_cohesion_is_recalled() -> None:
    with Sheet():
        D, A = recorded("D", 4000.0, "lb", "take-down"), recorded("A", 10.0, "ft^2", "plan")
        sand, clay = soils.lateral_resistance("4", D, A), soils.lateral_resistance("5", D, A)
        assert "from memory" not in {mark.kind for mark in marks_of([sand.sliding])}
        assert "from memory" not in {mark.kind for mark in marks_of([clay.sliding])}


def test_a_material_outside_the_table_is_refused_and_the_classes_are_named() -> None:
    with pytest.raises(
        OutsideLimits, match=r"IBC 2021 Table 1806\.2: no class of material 'peat'; it has 1 crystalline bedrock"
    ):
        soils.presumptive_bearing("peat")


def test_friction_of_clay_is_refused() -> None:
    row = next(key for key in soils.table_1806_2().rows if key.startswith("5"))
    with pytest.raises(OutsideLimits, match="no friction is printed; use cohesion"):
        soils.table_1806_2().read(row, "friction")


def test_a_top_deeper_than_the_face_is_refused() -> None:
    with pytest.raises(OutsideLimits, match=r"IBC 2021 1806\.3\.3.*the depth not counted is no more than the depth"):
        soils.lateral_resultant(150.0, 1.0, 1.0, 2.0)


# --- sill bolts ------------------------------------------------------------------------------------------------------

GOOD = {"d_a": 0.625, "h_ef": 7.0, "edge": 1.75, "end": 9.375, "sill_nominal": 2.0, "f_c": 2500.0, "cast_in": True}


def test_a_bolt_at_every_limit_needs_no_concrete_check_along_the_wall() -> None:
    got = sill_anchors.sill_exception(**GOOD)
    assert got.applies is True
    assert len(got.conditions) == 8
    assert all(condition.met for condition in got.conditions)


@pytest.mark.parametrize(
    ("change", "text"),
    [
        ({"d_a": 0.75, "end": 20.0}, "bolt no thicker than 5/8 in."),
        ({"h_ef": 6.9}, "at least 7 in. in the concrete"),
        ({"edge": 1.7}, "at least 1-3/4 in. from the edge along the sill"),
        ({"end": 9.3}, "at least 15 bolt diameters from the end of the concrete"),
        ({"sill_nominal": 4.0}, "2x or 3x sill"),
        ({"along_wall": False}, "load in shear along the sill, taken by the wood table's value along the grain"),
    ],
)
def test_each_condition_alone_takes_the_exception_away(change: dict[str, object], text: str) -> None:
    got = sill_anchors.sill_exception(**{**GOOD, **change})
    assert got.applies is False
    assert [condition.text for condition in got.conditions if condition.met is False] == [text]


@pytest.mark.parametrize("fact", ["d_a", "h_ef", "edge", "end", "sill_nominal"])
def test_a_fact_nobody_knows_leaves_the_exception_open(fact: str) -> None:
    got = sill_anchors.sill_exception(**{**GOOD, fact: None})
    assert got.applies is None
    assert {condition.remark for condition in got.conditions if condition.met is None} == {"not known; measure it"}


@pytest.mark.parametrize("change", [{"cast_in": False}, {"cast_in": None}, {"f_c": 2499.0}, {"f_c": None}])
def test_outside_the_tested_scope_the_engineer_decides(change: dict[str, object]) -> None:
    got = sill_anchors.sill_exception(**{**GOOD, **change})
    assert got.applies is None
    assert [c.remark for c in got.conditions if c.met is None] == ["outside the evidence; the engineer decides"]


def test_every_condition_stands_on_the_sheet_with_its_mark() -> None:
    with Sheet() as sheet:
        sill_anchors.sill_exception(**{**GOOD, "h_ef": None})
    conditions = [step for step in sheet.steps if step.kind == "condition"]
    assert [step.maker for step in conditions] == [True, True, None, True, True, True, True, True]
    recalled = [step.title for step in conditions if any(mark.kind == "from memory" for mark in step.marks)]
    assert "bolt no thicker than 5/8 in." in recalled
    assert "concrete of at least 2,500 psi, as that tested was" not in recalled


# --- the rest --------------------------------------------------------------------------------------------------------


@given(st.floats(0, 3), st.floats(0, 3))
def test_short_period_motion_is_never_less_than_one_second_motion(S_MS: float, S_M1: float) -> None:
    assert ground_motion.short_not_below_one_second(S_MS, S_M1) == max(S_MS, S_M1)


def test_new_concrete_of_a_low_dwelling_is_at_least_2500_psi() -> None:
    table = concrete.table_1808_8_1()
    assert table.read("dwelling of light framing, two stories or less, category D, E or F") == 2500
    assert {table.source_of(row, 0).how for row in table.rows} == {"seen"}
