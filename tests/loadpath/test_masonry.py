"""Old brick and stone under a line: two proofs for its bolts, its mortar by tests, the stem along itself."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.house.fact import measured, unknown
from groundsill.loadpath.chain import Link
from groundsill.study import run
from groundsill.work.document import House
from tests.loadpath.bolting import (
    a_new_bolt,
    a_shear_test,
    links,
    with_acceptance,
    with_bolt,
    with_pieces,
    with_stem,
    with_tests,
    wood,
)
from tests.loadpath.bricks import (
    LINE,
    STEM,
    an_inner_foundation,
    bolts,
    both_proofs,
    brick_house,
    stem,
    with_bolt_tests,
    with_mortar_tests,
)
from tests.loadpath.houses import about

NO_MORTAR = "in-place shear tests: 0 of 2 on this line, 0 of 8 of its class (A106.2.3.5)"
NO_BOLTS = "0 of 5 tests of old cast-in 0.5 in. bolts in this brick (A107.5.3)"

# --- the two proofs ---------------------------------------------------------------------------------------------------


def test_with_neither_proof_both_are_named_with_their_numbers() -> None:
    for link in (bolts(brick_house()), wood(brick_house())):
        assert link.status == "cannot be checked"
        assert NO_MORTAR in link.reason
        assert NO_BOLTS in link.reason


def test_mortar_alone_leaves_the_bolts_wanting() -> None:
    link = bolts(with_mortar_tests(brick_house()))
    assert link.status == "cannot be checked"
    assert NO_BOLTS in link.reason
    assert "in-place shear tests: " not in link.reason


def test_bolts_alone_leave_the_mortar_wanting() -> None:
    link = bolts(with_bolt_tests(brick_house()))
    assert link.status == "cannot be checked"
    assert NO_MORTAR in link.reason
    assert "A107.5.3" not in link.reason


def test_with_both_a_bolt_counts_by_a_fifth_of_what_was_held() -> None:
    link = bolts(with_bolt_tests(with_mortar_tests(brick_house()), (6000.0, 5500.0, 7000.0, 6500.0, 6200.0)))
    assert link.capacity == pytest.approx(31200 / 5 / 5)
    assert "mortar 36 psi by 8 in-place shear tests, 2 on this line" in link.reason
    assert link.status == "fails"
    assert "the tests held it, but a few tests lift only what is indicated" in link.reason
    assert "a link that fails by the equation stays so, and an engineer decides: " in link.reason
    assert "passes by test" not in link.reason


def test_tests_that_hold_the_very_force_make_it_pass_and_others_leave_it_indicated() -> None:
    passing = bolts(both_proofs())
    assert passing.status == "passes"
    assert "passes by test" in passing.reason
    stiff = with_bolt_tests(with_mortar_tests(brick_house()), displacement_in=0.12)
    indicated = bolts(stiff)
    assert indicated.status == "indicated"
    assert "IEBC appendix A1, written for walls of buildings of unreinforced masonry" in indicated.extension
    assert indicated.capacity == passing.capacity


def test_steel_governs_where_the_brick_holds_more() -> None:
    link = bolts(with_bolt_tests(with_mortar_tests(brick_house()), (90000.0,) * 5))
    assert link.capacity is not None
    assert link.capacity < 90000 / 5


def test_no_capacity_goes_with_a_missing_proof() -> None:
    for house in (brick_house(), with_mortar_tests(brick_house()), with_bolt_tests(brick_house())):
        assert (bolts(house).capacity, bolts(house).ratio, wood(house).capacity) == (None, None, None)


def test_what_the_wood_holds_on_brick_is_an_extension_that_the_bolt_tests_lift() -> None:
    house = with_bolt_tests(with_mortar_tests(brick_house()), displacement_in=0.12)
    link = wood(house)
    assert "the bearing of brick taken as that of concrete of its guideline strength" in link.extension
    assert link.status in ("indicated", "fails")
    lifted = wood(both_proofs())
    assert lifted.extension == ""
    poor = wood(with_bolt_tests(with_mortar_tests(brick_house(condition=measured("weathered")))))
    assert capacity(poor) < capacity(lifted)


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"displacement_in": None}, "S0 has no displacement entered"),
        ({"displacement_in": 0.2}, "is entered past 0.125 in. of movement"),
        ({"by": ""}, "does not say who made it and when"),
        ({"anchor": "new"}, NO_BOLTS),
        ({"anchor_kind": "adhesive"}, NO_BOLTS),
        ({"anchor_diameter_in": 0.625}, NO_BOLTS),
        ({"anchor_embedment_in": 9.0}, NO_BOLTS),
    ],
)
def test_a_bolt_test_counts_only_for_its_like_and_when_it_is_whole(changes: dict[str, Any], words: str) -> None:
    link = bolts(with_bolt_tests(with_mortar_tests(brick_house()), **changes))
    assert link.status == "cannot be checked"
    assert words in link.reason


def test_one_bolt_entered_past_an_eighth_of_an_inch_is_not_left_out_unsaid() -> None:
    far = a_shear_test(STEM, 170.0, 3000.0, mark="S9", displacement_in=0.2)
    link = bolts(with_tests(both_proofs(), far=far))
    assert link.status == "cannot be checked"
    assert "S9 is entered past 0.125 in. of movement: enter the load it had there" in link.reason


def test_a_test_that_nobody_signed_is_left_out_and_said() -> None:
    link = bolts(with_tests(both_proofs(), unsigned=a_shear_test(STEM, 170.0, 3000.0, mark="S9", by="")))
    assert link.capacity == bolts(both_proofs()).capacity
    assert "S9 does not say who made it and when" in link.reason


def test_bolts_tested_in_another_wall_do_not_stand_for_this_one() -> None:
    house = with_mortar_tests(brick_house())
    front = next(key for key, s in house.survey.foundation.segments.items() if s.line == "line1")
    link = bolts(with_bolt_tests(house, stem=front))
    assert link.status == "cannot be checked"
    assert "no such test in this wall" in link.reason


# --- mortar -----------------------------------------------------------------------------------------------------------


def test_seven_tests_of_a_class_are_too_few_and_so_is_one_on_the_line() -> None:
    seven = bolts(with_bolt_tests(with_mortar_tests(brick_house(), (40.0,) * 7)))
    assert "2 of 2 on this line, 7 of 8 of its class" in seven.reason
    elsewhere = bolts(with_bolt_tests(with_mortar_tests(brick_house(), own=1)))
    assert "1 of 2 on this line, 8 of 8 of its class" in elsewhere.reason
    assert {seven.status, elsewhere.status} == {"cannot be checked"}


def test_a_wall_with_poor_mortar_is_pointed_and_tested_again() -> None:
    poor = with_mortar_tests(brick_house(), (12.0, 18.0, *(40.0,) * 6))
    for link in (bolts(with_bolt_tests(poor)), stem(poor)):
        assert link.status == "cannot be checked"
        assert "more than half of this line's mortar tests are under 30 psi (M0 12, M1 18)" in link.reason
        assert "pointed and tested again" in link.reason


def test_other_lines_poor_mortar_lowers_the_bound_and_does_not_stop_this_line() -> None:
    mixed = with_mortar_tests(brick_house(), (40.0, 44.0, *(12.0,) * 6))
    assert stem(mixed).status != "cannot be checked"
    assert capacity(stem(mixed)) < capacity(stem(with_mortar_tests(brick_house())))


def capacity(link: Link) -> float:
    """A capacity that is there."""
    assert link.capacity is not None
    return link.capacity


def test_load_and_area_give_the_same_as_the_stress_they_make() -> None:
    by_stress = with_mortar_tests(brick_house(), [v + 5.0 for v in (40.0,) * 8], axial_psi=5.0)
    by_load = with_mortar_tests(
        brick_house(), [60.0 * (v + 5.0) for v in (40.0,) * 8], unit="lb", bed_joints_in2=60.0, axial_psi=5.0
    )
    plain = with_mortar_tests(brick_house(), (40.0,) * 8)
    assert capacity(stem(by_stress)) == pytest.approx(capacity(stem(by_load))) == pytest.approx(capacity(stem(plain)))


def test_the_load_of_the_take_down_is_taken_off_where_none_is_entered() -> None:
    taken_off = stem(with_mortar_tests(brick_house(), axial_psi=None))
    assert capacity(taken_off) < capacity(stem(with_mortar_tests(brick_house())))


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"by": ""}, "does not say who made it and when"),
        ({"unit": "lb"}, "gives a load without the area of the bed joints"),
        ({"unit": "in"}, "is neither in psi nor in lb"),
        ({"station_in": 5999.0}, "stands off the stretch it names"),
    ],
)
def test_a_mortar_test_that_is_not_whole_does_not_count(changes: dict[str, Any], words: str) -> None:
    link = stem(with_mortar_tests(brick_house(), **changes))
    assert link.status == "cannot be checked"
    assert f"M0 {words}" in link.reason


def test_brick_of_another_age_is_another_class() -> None:
    house = with_mortar_tests(brick_house())
    newer = with_stem(house, STEM, year=measured(1925.0))
    assert "2 of 2 on this line, 2 of 8 of its class" in stem(newer).reason


def test_missing_mortar_is_packed_first() -> None:
    house = with_stem(with_mortar_tests(brick_house()), STEM, mortar=measured("missing"))
    assert "the joints are packed first, then tested" in stem(house).reason


# --- wythes -----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("facts", "words"),
    [
        ({"wythes": unknown()}, "how many wythes the brick has is not known"),
        ({"header_course": unknown()}, "whether headers tie the wythes was not seen"),
        ({"header_course": measured(False)}, "a bolt would hold one loose wythe"),
        (
            {"header_percent": measured(6.0), "header_clear_in": measured(16.0)},
            "headers 6 % of the face, 16 in. clear between them: A106.2.2.1 makes the others veneer",
        ),
    ],
)
def test_wythes_that_nothing_ties_hold_no_bolt(facts: dict[str, Any], words: str) -> None:
    link = bolts(both_proofs(**facts))
    assert link.status == "cannot be checked"
    assert words in link.reason


def bolts_in(house: House) -> Link:
    """The link of the bolts in the brick as a study over all ranges has it, as found."""
    found = run(house).runs[0]
    return next(k for c in found.chains for k in c.links if k.address == f"line/{LINE}/bolts-concrete/si2/both")


def test_on_headers_that_nobody_measured_the_answer_depends() -> None:
    """A1 asks a tenth of the face and 24 in.: in every twelfth course there would be too few."""
    link = bolts_in(both_proofs())
    assert link.status == "passes"
    assert link.verdict == "cannot be checked"
    assert "headers seen and not measured: taken as 14 % of the face, 16 in. clear" in link.reason
    assert link.depends_on == ("Headers, percent of the face (F2)", "Clear distance between headers (F2)")
    known = bolts_in(both_proofs(header_percent=measured(12.0), header_clear_in=measured(20.0)))
    assert (known.status, known.verdict) == ("passes", "passes")
    half = bolts_in(both_proofs(header_percent=measured(12.0)))
    assert half.depends_on == ("Clear distance between headers (F2)",)


def test_what_is_usual_of_headers_stands_in_for_none_that_were_looked_for_in_vain() -> None:
    facts = {"header_course": measured(False), "header_percent": unknown(), "header_clear_in": unknown()}
    assert "a bolt would hold one loose wythe" in bolts(both_proofs(**facts)).reason


def test_measured_headers_that_meet_the_rule_hold_where_none_were_said_to_be_seen() -> None:
    facts = {"header_course": unknown(), "header_percent": measured(12.0), "header_clear_in": measured(20.0)}
    assert bolts(both_proofs(**facts)).status == "passes"


def test_one_loose_wythe_of_two_carries_half_of_what_the_mortar_gives() -> None:
    tied = stem(with_mortar_tests(brick_house()))
    loose = stem(with_mortar_tests(brick_house(header_course=measured(False))))
    assert capacity(loose) < capacity(tied)
    assert "one of 2 wythes counts" in loose.reason


@pytest.mark.parametrize(("filled", "told"), [(False, True), (True, False)])
def test_adhesive_in_an_open_collar_joint_is_warned_of(filled: bool, told: bool) -> None:
    house = with_bolt_tests(
        with_mortar_tests(brick_house(collar_joint_filled=measured(filled))), anchor="new", anchor_kind="adhesive",
        anchor_diameter_in=0.625,
    )  # fmt: skip
    new = [a_new_bolt(LINE, station) for station in (72.0, 90.0, 120.0, 160.0)]
    link = bolts(with_pieces(house, *new), work=True)
    assert link.capacity is not None
    assert ("adhesive runs off into an open collar joint" in link.reason) is told


# --- the stem along itself --------------------------------------------------------------------------------------------


def test_the_stem_is_indicated_by_tests_and_cannot_be_checked_without() -> None:
    assert stem(brick_house()).status == "cannot be checked"
    link = stem(with_mortar_tests(brick_house()))
    assert link.status == "indicated"
    assert "not checked: it leans on soil" in link.reason
    house = with_mortar_tests(brick_house())
    assert stem(with_acceptance(house, link.address, most_ratio=1.0)).status == "passes"


def test_shear_of_the_bed_joints_by_hand() -> None:
    stretch = brick_house().survey.foundation.segments[STEM]
    area = (stretch.to_in - stretch.from_in) * 9.0
    low, high = (stem(with_mortar_tests(brick_house(), (v,) * 8)) for v in (31.0, 35.0))
    assert low.reason.startswith("bed joints in shear")
    assert capacity(high) - capacity(low) == pytest.approx(0.75 * 0.75 / 1.5 * 4.0 * area)
    friction = capacity(low) - 0.75 * 0.75 / 1.5 * 31.0 * area
    assert friction > 0


def test_a_light_stem_of_strong_mortar_tips_before_it_shears() -> None:
    strong, stronger = (stem(with_mortar_tests(brick_house(), (v,) * 8)) for v in (80.0, 100.0))
    assert strong.reason.startswith("tipping, with the top free")
    assert capacity(strong) == capacity(stronger)


@settings(max_examples=15, deadline=None)
@given(st.lists(st.floats(31, 150), min_size=8, max_size=12), st.floats(0, 40))
def test_better_mortar_never_lowers_what_a_stem_or_its_bolts_hold(values: list[float], more: float) -> None:
    worse, better = (with_mortar_tests(brick_house(), [v + by for v in values]) for by in (0.0, more))
    assert capacity(stem(better)) >= capacity(stem(worse)) - 1e-6


@settings(max_examples=15, deadline=None)
@given(st.lists(st.floats(1000, 40000), min_size=5, max_size=8), st.floats(1.0, 2.0))
def test_bolts_that_held_more_never_count_less(held: list[float], more: float) -> None:
    mortar = with_mortar_tests(brick_house())
    worse, better = (bolts(with_bolt_tests(mortar, [v * by for v in held])) for by in (1.0, more))
    assert capacity(better) >= capacity(worse) - 1e-6


def test_poured_concrete_has_no_masonry_stage() -> None:
    house = with_stem(brick_house(), STEM, material="poured concrete", strength_psi=measured(3000.0))
    assert not any(key.startswith("masonry/") for key in links(house, LINE))


# --- stone, block and what is refused ---------------------------------------------------------------------------------


def test_nothing_is_bolted_to_stone_by_any_test() -> None:
    stone = with_stem(both_proofs(), STEM, material="stone")
    assert {bolts(stone).status, stem(stone).status} == {"cannot be checked"}
    assert "direct bolting cannot be checked" in bolts(stone).reason
    assert "A304.2.2" in bolts(stone).reason
    assert "no document known tells what it holds along the wall" in stem(stone).reason
    assert "A304.2.2" in stem(stone).clause


def test_block_is_left_to_its_own_standard() -> None:
    link = bolts(with_stem(both_proofs(), STEM, material="block"))
    assert "TMS 402 chapter 9" in link.reason


@pytest.mark.parametrize("material", ["brick", "stone", "block"])
def test_expansion_anchors_are_refused_in_masonry(material: str) -> None:
    house = with_stem(both_proofs(), STEM, material=material)
    for n in range(4):
        house = with_bolt(house, f"si2-{n}", kind="expansion")
    assert f"expansion anchors are refused in {material}" in wood(house).reason


def test_a_new_foundation_inside_is_told_where_the_design_has_one() -> None:
    house = with_pieces(brick_house(), an_inner_foundation())
    told = "concrete drawn inside this line (F1) is counted by no check"
    assert told in bolts(house, work=True).reason
    assert told in stem(house, work=True).reason
    assert told not in bolts(house).reason


# --- at both ends of what is not known --------------------------------------------------------------------------------


def test_an_estimated_width_of_a_tested_stretch_moves_the_stems_of_other_lines() -> None:
    """The load on a tested brick is taken off its value, and the class's tests stand for every line of it."""
    house = with_mortar_tests(brick_house(), own=2, axial_psi=None)
    front = next(key for key, s in house.survey.foundation.segments.items() if s.line == "line1")
    plain, unsure = (
        run(with_stem(house, front, top_width_in=width)).runs[0].chains
        for width in (measured(9.0), about(9.0, 3.0, 13.0))
    )
    address = f"line/{LINE}/masonry/{STEM}/both"
    known, doubtful = (
        next(link for chain in chains for link in chain.links if link.address == address) for chains in (plain, unsure)
    )
    assert doubtful.ratio == known.ratio
    assert known.least_favourable is not None
    assert doubtful.least_favourable is not None
    assert doubtful.least_favourable > known.least_favourable
