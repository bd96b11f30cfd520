"""Side plates on a brick stem: the published bolts with each condition, torque tests, and what is refused."""

from __future__ import annotations

from typing import Any

import pytest

from groundsill.house.fact import measured
from groundsill.loadpath.chain import Link
from groundsill.standards.iebc_2021.masonry_bolts import face_bolt_shear
from groundsill.work.document import House
from tests.loadpath.bolting import links, with_bolts, with_pieces, with_stem, with_tests
from tests.loadpath.bricks import (
    LINE,
    SILL,
    STEM,
    a_brick_plate,
    a_torque_test,
    an_inner_foundation,
    brick_house,
    with_bolt_tests,
    with_mortar_tests,
)

SIZES = "centred in a hole of 2.5 in., grouted all round (met), at least 8 in. deep (met)"


def no_bolts(house: House) -> House:
    """The sill asked about without any bolt."""
    return with_bolts(house, {key: None for key, b in house.survey.underfloor.bolts.items() if b.line == LINE})


def in_brick(house: House | None = None, **changes: Any) -> Link:
    """One plate on the tested brick, its bolts torqued."""
    tested = with_tests(with_mortar_tests(brick_house()), torque=a_torque_test()) if house is None else house
    laid = with_pieces(no_bolts(tested), a_brick_plate(**changes))
    return links(laid, LINE, work=True)[f"bolts-concrete/{SILL}/both"]


def test_a_plate_whose_bolts_meet_every_condition_is_indicated_by_the_table() -> None:
    link = in_brick(couple="screws")
    assert link.capacity == pytest.approx(2 * float(face_bolt_shear("grouted", 0.625)))
    assert link.status in ("indicated", "fails")
    assert "near its top" in link.extension
    assert SIZES in link.reason
    assert "8 in. below the top of the stem: the table says nothing of that" in link.reason


def test_bolts_that_hold_the_couple_hold_less_along_the_wall() -> None:
    alone, turned = in_brick(couple="screws").capacity, in_brick(couple="anchors").capacity
    assert alone is not None
    assert turned is not None
    assert turned < alone


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"anchor_hole_in": None}, "grouted all round (not known)"),
        ({"anchor_hole_in": 0.75}, "grouted all round (not met)"),
        ({"anchor_embedment_in": 6.0}, "at least 8 in. deep (not met)"),
        ({"anchor_embedment_in": 10.0}, "no deeper than the wall is thick (not met)"),
        ({"anchor_diameter_in": 0.375}, "diameter 0.5 to 0.75 in. (not met)"),
        ({"anchor": "through-bolt"}, "a steel plate of at least 30 sq in. on the far side (not known)"),
        ({"anchor": "through-bolt", "anchor_plate_in2": 16.0}, "on the far side (not met)"),
        ({"screw_above_in": None, "report": "R-1", "capacity_lb": 900.0, "couple": "anchors"}, "how high the screws"),
        ({"anchor": "adhesive"}, "0 of 5 tests of new adhesive 0.625 in. bolts in this brick"),
    ],
)
def test_one_condition_not_met_and_nobody_can_say(changes: dict[str, Any], words: str) -> None:
    link = in_brick(**changes)
    assert (link.status, link.capacity) == ("cannot be checked", None)
    assert words in link.reason


def test_a_through_bolt_needs_its_plate_and_no_test_of_its_own() -> None:
    link = in_brick(with_mortar_tests(brick_house()), anchor="through-bolt", anchor_plate_in2=36.0)
    assert link.capacity == pytest.approx(2 * float(face_bolt_shear("through-bolt", 0.625)))


def test_without_mortar_tests_no_bolt_of_the_table_counts() -> None:
    link = in_brick(with_tests(brick_house(), torque=a_torque_test()))
    assert link.status == "cannot be checked"
    assert "mortar proved by in-place shear tests (not known)" in link.reason
    assert "0 of 2 on this line, 0 of 8 of its class" in link.reason


@pytest.mark.parametrize(
    ("torque", "words"),
    [
        (None, "at least 1 of 2 such bolts torqued to 50 lb-ft in this wall (not known)"),
        (a_torque_test(45.0), "at least 1 of 2 such bolts torqued to 50 lb-ft in this wall (not met)"),
        (a_torque_test(anchor_diameter_in=0.5), "in this wall (not known)"),
        (a_torque_test(unit="lb"), "in this wall (not known)"),
    ],
)
def test_embedded_bolts_are_torqued_in_the_wall(torque: Any, words: str) -> None:
    link = in_brick(with_tests(with_mortar_tests(brick_house()), torque=torque))
    assert link.status == "cannot be checked"
    assert words in link.reason


def test_wythes_that_nothing_ties_are_one_wythe_to_a_bolt() -> None:
    house = with_tests(with_mortar_tests(brick_house(header_course=measured(False))), torque=a_torque_test())
    assert "at least 2 wythes bonded together (not met)" in in_brick(house).reason


def test_bolts_in_the_face_of_stone_are_refused() -> None:
    link = in_brick(with_stem(with_mortar_tests(brick_house()), STEM, material="stone"))
    assert link.status == "cannot be checked"
    assert "stone: no document known" in link.reason


def test_an_expansion_anchor_in_the_face_of_brick_is_refused_whatever_its_report() -> None:
    house = with_pieces(no_bolts(brick_house()), a_brick_plate(anchor="expansion", anchor_report="R-2"))
    wood = links(house, LINE, work=True)[f"sill-bolts/{SILL}/both"]
    assert "expansion anchors are refused in brick" in wood.reason


def test_bolts_by_tests_stand_in_for_the_table() -> None:
    tested = with_bolt_tests(
        with_mortar_tests(brick_house()), (25000.0,) * 5, anchor="new", anchor_kind="adhesive",
        anchor_diameter_in=0.625, anchor_embedment_in=8.0, anchor_edge_in=8.0,
    )  # fmt: skip
    link = in_brick(tested, anchor="adhesive")
    assert link.capacity == pytest.approx(2 * 25000 / 5)
    assert link.status == "passes"


def test_the_inner_foundation_of_a_design_is_told() -> None:
    house = with_pieces(no_bolts(brick_house()), a_brick_plate(), an_inner_foundation())
    link = links(house, LINE, work=True)[f"bolts-concrete/{SILL}/both"]
    assert "concrete drawn inside this line (F1) is counted by no check" in link.reason
