"""Sill bolts in the concrete: its height and ends, close bolts, the force, the sill exception, tests and decisions."""

from __future__ import annotations

from dataclasses import replace
from math import cos, radians, sin
from types import SimpleNamespace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.forces.reading import Reading
from groundsill.forces.seismic import work_out
from groundsill.house.fact import measured, unknown
from groundsill.house.foundation import FoundationSegment
from groundsill.house.settle import prepare
from groundsill.loadpath.bolts_counted import Anchor
from groundsill.loadpath.case import LineCase
from groundsill.loadpath.chain import Link
from groundsill.loadpath.concrete import close_group
from groundsill.loadpath.ends import to_end, wedges
from groundsill.loadpath.path import chain_of
from groundsill.loadpath.proof import Proof
from groundsill.loadpath.sill_exception import nominal_of
from groundsill.loadpath.stem import height_of
from groundsill.standards.aci318_19.shear_breakout import breakout_parallel_to_edge, breakout_toward_edge
from groundsill.work.checks import check_house
from groundsill.work.document import House
from tests.loadpath.bolting import (
    WORK,
    a_bolt,
    a_core,
    a_new_bolt,
    a_shear_test,
    in_concrete,
    sound_house,
    with_acceptance,
    with_bolt,
    with_bolts,
    with_break,
    with_choices,
    with_hazard,
    with_pieces,
    with_sill,
    with_stem,
    with_tests,
    without_cores,
    wood,
)

BESIDE = breakout_parallel_to_edge(0.5, 7.0, 3000.0, 3.0, 22.0).design


def front(house: House, work: bool = False) -> Link:
    """The bolts of the front line's first sill piece in the foundation."""
    return in_concrete(house, "si1a", "line1", work)


def test_bolts_in_cored_concrete_pass_for_the_overstrength_force() -> None:
    link = front(sound_house())
    assert (link.status, link.extension) == ("passes", "")
    assert link.capacity == pytest.approx(float(BESIDE))
    assert link.reason == "breakout beside the bolt; for the overstrength force (17.10.6)"


# --- the concrete -----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("inside", "outside", "depth", "height"),
    [
        (12.0, -6.0, 12.0, 6.0),  # both from the soil outside, which stands 6 in. above the top
        (12.0, 8.0, 12.0, 20.0),
        (12.0, -6.0, None, 12.0),  # depth unknown: what is seen inside, alone
        (None, 8.0, None, 8.0),
        (12.0, None, 12.0, 12.0),  # the soil outside unknown: the depth below it says nothing
        (None, -6.0, 6.0, None),
        (None, None, None, None),
    ],
)
def test_the_height_of_a_stem_is_measured_from_one_soil(
    inside: float | None, outside: float | None, depth: float | None, height: float | None
) -> None:
    def fact(value: float | None) -> Any:
        return unknown() if value is None else measured(value)

    stem = FoundationSegment(
        line="line1",
        from_in=0.0,
        to_in=10.0,
        material="poured concrete",
        above_inside_soil_in=fact(inside),
        above_outside_soil_in=fact(outside),
        depth_in=fact(depth),
    )
    assert height_of(stem) == height


def test_concrete_that_stops_at_brick_ends_there() -> None:
    house = with_stem(sound_house(), "fs1", to_in=160.0)
    brick = replace(house.survey.foundation.segments["fs1"], from_in=160.0, to_in=360.0, material="brick")
    base = replace(house.survey.foundation, segments=house.survey.foundation.segments | {"fs1b": brick})
    link = front(replace(house, survey=replace(house.survey, foundation=base)))
    toward = breakout_toward_edge(0.5, 7.0, 3000.0, 16.0, 22.0, c_a2=3.0, c_a2_far=3.0)
    assert link.capacity == pytest.approx(min(float(toward.design), float(BESIDE)))
    near = with_bolt(replace(house, survey=replace(house.survey, foundation=base)), "si1a-1", station_in=156.0)
    assert front(near).reason.startswith("breakout toward the end of the concrete")


def cornered(width: float | None = None, station: float = 5.0, **left: Any) -> House:
    """The front line's first bolt near the corner with the left line, whose stem is ``width`` in. wide."""
    house = with_stem(sound_house(), "fs1", top_width_in=measured(8.0))
    for bolt, at in (("si1a-0", station), ("si1a-1", 144.0)):
        house = with_bolt(house, bolt, station_in=at, edge_in=measured(4.0), diameter_in=measured(0.75))
    return with_stem(house, "fs4", top_width_in=unknown() if width is None else measured(width), **left)


def toward(c_a1: float, c_a2: float, c_a2_far: float) -> float:
    """A 3/4 in. bolt in 3,000 psi, 22 in. high, by the equation of the standard."""
    return float(breakout_toward_edge(0.75, 7.0, 3000.0, c_a1, 22.0, c_a2=c_a2, c_a2_far=c_a2_far).design)


@pytest.mark.parametrize(
    ("house", "by_hand"),
    [
        (cornered(8.0), toward(9.0, 4.0, 1000.0)),  # half of 8 in. behind the line, open to the return's side
        (cornered(10.0), toward(10.0, 4.0, 1000.0)),
        (cornered(None), toward(5.0, 4.0, 4.0)),  # nobody knows where the return's face lies: not behind the line
        (cornered(6.0, station=8.0), toward(6 + 4 / 1.5, 4.0, 1000.0)),  # the wedge leaves the wall before the return
        (cornered(8.0, material="brick"), toward(5.0, 4.0, 4.0)),  # a free end
        (cornered(8.0, to_in=231.0), toward(5.0, 4.0, 4.0)),  # the return stops short of the corner
        (with_break(cornered(8.0), "line4", 236.0, "gap"), toward(5.0, 4.0, 4.0)),  # and so it does here
    ],
    ids=["corner", "wider return", "width unknown", "outside the return", "brick", "short", "gap"],
)
def test_at_a_corner_a_bolt_breaks_out_toward_the_outer_face_of_the_return(house: House, by_hand: float) -> None:
    link = front(house)
    assert link.reason.startswith("breakout toward the end of the concrete")
    assert link.capacity == pytest.approx(by_hand)


def test_a_corner_bolt_by_hand() -> None:
    """ACI 318-19 17.7.2 worked on paper: c_a1 5 + 4 = 9 in., c_a2 4 in. and open."""
    basic = min(7 * (6 / 0.75) ** 0.2 * 0.75**0.5, 9) * 3000**0.5 * 9**1.5
    area = (4 + 13.5) * 13.5 / (4.5 * 81)
    assert front(cornered(8.0)).capacity == pytest.approx(0.70 * area * (0.7 + 0.3 * 4 / 13.5) * basic, rel=1e-3)


def turned(angle: float, width: float = 8.0, mid_length: bool = False) -> House:
    """The small house with the left line turned about the corner, or drawn past it as the bar of a T."""
    house = cornered(width)
    corners = house.survey.building.corners
    away = (240 * cos(radians(angle)), 240 * sin(radians(angle)))
    far = replace(corners["nw0"], x_in=away[0], y_in=away[1])
    lines = house.survey.underfloor.lines
    end = replace(corners["sw0"], x_in=-away[0], y_in=-away[1]) if mid_length else corners["sw0"]
    corners = corners | {"far": far, "end": end}
    lines = lines | {"line4": replace(lines["line4"], start="far", end="end")}
    survey = replace(
        house.survey,
        building=replace(house.survey.building, corners=corners),
        underfloor=replace(house.survey.underfloor, lines=lines),
    )
    return with_stem(replace(house, survey=survey), "fs4", to_in=480.0 if mid_length else 240.0)


def case_with(house: House) -> LineCase:
    """The front line alone, with what its ends ask for."""
    reading, line = Reading(house), house.survey.underfloor.lines["line1"]
    case: Any = SimpleNamespace(reading=reading, id="line1", line=line, length_in=360.0, inner=None)
    return case


@pytest.mark.parametrize("angle", [90.0, 60.0, 120.0, 45.0, 135.0])
def test_the_face_of_a_skewed_return_is_measured_square_to_it(angle: float) -> None:
    case = case_with(turned(angle))
    assert to_end(case, 5.0) == pytest.approx(5.0 * sin(radians(angle)) + 4.0)


def test_a_line_that_goes_on_straight_has_no_end_there() -> None:
    assert to_end(case_with(turned(180.0)), 5.0) == pytest.approx(245.0)
    assert to_end(case_with(turned(170.0)), 5.0) == pytest.approx(245.0)


def test_where_a_line_meets_another_in_mid_length_concrete_lies_on_both_sides() -> None:
    case = case_with(turned(90.0, mid_length=True))
    assert to_end(case, 5.0) == pytest.approx(9.0)
    assert wedges(case, 5.0, 3.0, 5.0) == ((9.0, 240.0, 240.0),)
    assert wedges(case_with(turned(90.0)), 5.0, 3.0, 5.0) == ((9.0, 3.0, 240.0),)
    assert wedges(case, 30.0, 3.0, 5.0) == ((34.0, 3.0, 5.0), (10.0, 240.0, 240.0))  # too far off to lie in the return


@given(st.floats(0.5, 23.0), st.floats(4.0, 20.0), st.floats(0.0, 8.0))
def test_a_wider_return_never_leaves_less_concrete(station: float, width: float, more: float) -> None:
    thin, thick = (case_with(turned(90.0, w)) for w in (width, width + more))
    assert to_end(thick, station) >= to_end(thin, station) >= to_end(case_with(cornered(None)), station)


def row(*stations: float, edge: float = 3.0) -> list[Anchor]:
    """Bolts in a row."""
    return [Anchor(f"b{n}", "", s, 0.5, 7.0, edge, "cast-in", False) for n, s in enumerate(stations)]


def test_three_close_bolts_share_one_wedge() -> None:
    bolts = row(40.0, 44.0, 48.0, 90.0)
    assert [close_group(b, bolts) for b in bolts] == [(3, 4.0, 3.0), (3, 4.0, 3.0), (3, 4.0, 3.0), (1, 0.0, 3.0)]
    assert close_group(bolts[0], row(40.0, 42.0, 50.0)) == (2, 2.0, 3.0)  # the closest pair leaves least for each


def test_a_close_bolt_counts_with_its_part_of_the_group_across_a_sill_joint_too() -> None:
    three = {f"si1a-{n}": a_bolt("line1", station) for n, station in enumerate((40.0, 44.0, 48.0))}
    link = front(with_bolts(sound_house(), three))
    group = breakout_parallel_to_edge(0.5, 7.0, 3000.0, 3.0, 22.0, n=3.0, s=4.0)
    assert link.capacity == pytest.approx(float(group.design) / 3)
    assert link.reason.startswith("breakout of 3 close bolts")
    apart = {"si1a-1": a_bolt("line1", 189.0), "si1b-0": a_bolt("line1", 195.0)}
    across = front(with_bolts(sound_house(), apart))
    pair = breakout_parallel_to_edge(0.5, 7.0, 3000.0, 3.0, 22.0, n=2.0, s=6.0)
    assert across.capacity == pytest.approx(float(pair.design) / 2)


# --- the force --------------------------------------------------------------------------------------------------------


def test_in_categories_a_and_b_the_plain_force_is_enough() -> None:
    low = with_hazard(sound_house(), S_S=0.3, S_1=0.05, site_class="C")
    link = front(low)
    assert link.reason == "breakout beside the bolt; for the plain earthquake force: category B (17.10.1)"
    allowable = wood(low, "si1a", "line1").demand
    assert link.demand is not None
    assert allowable is not None
    assert link.demand == pytest.approx(allowable / 0.7 / 2)


def test_the_force_at_which_wood_yields_is_taken_only_with_its_reason() -> None:
    bare = front(with_choices(sound_house(), anchor_basis="wood yields first", anchor_reason=""))
    assert bare.reason.endswith(
        "for the overstrength force (17.10.6), for no reason is given to take the force at which the wood yields"
    )
    chosen = front(with_choices(sound_house(), anchor_basis="wood yields first", anchor_reason="thin sill"))
    assert chosen.reason.endswith("for the force at which the wood yields (17.10.6.3): thin sill")
    assert chosen.demand == pytest.approx(2073.6, abs=0.2)


# --- the sill exception -----------------------------------------------------------------------------------------------


def excepted(house: House) -> Link:
    """The front line by the sill exception."""
    return front(with_choices(house, anchor_basis="sill exception"))


def test_with_every_condition_met_the_exception_stands_and_each_condition_is_told() -> None:
    link = excepted(sound_house())
    assert (link.status, link.clause) == ("does not apply", "IBC 2021 1905.1.8")
    assert link.reason == (
        "the sill exception applies to every bolt, so the wood value stands alone; met: load in shear along the sill, "
        "taken by the wood table's value along the grain, bolt no thicker than 5/8 in., at least 7 in. in the "
        "concrete, at least 1-3/4 in. from the edge along the sill, at least 15 bolt diameters from the end of the "
        "concrete, 2x or 3x sill, bolt cast in, as those tested were, concrete of at least 2,500 psi, as that tested "
        "was"
    )


def test_without_a_core_concrete_is_unknown_to_the_exception_and_the_wood_value_is_only_indicated() -> None:
    house = without_cores(sound_house())
    link = excepted(house)
    assert link.status == "cannot be checked"
    assert link.reason.startswith("outside the sill exception's evidence, an engineer decides: met: ")
    outside = link.reason.split("not known, or outside what was tested: ")[1]
    assert outside.startswith("concrete of at least 2,500 psi, as that tested was")
    assert wood(house, "si1a", "line1").status == "indicated"


def test_the_least_core_of_the_stretch_is_what_counts() -> None:
    link = excepted(with_tests(sound_house(), core_weak=a_core("fs1", 200.0, 2400.0)))
    assert link.status == "cannot be checked"
    other = excepted(with_tests(sound_house(), core_weak=a_core("fs2", 200.0, 2400.0)))
    assert other.status == "does not apply"


@pytest.mark.parametrize(
    ("thickness", "nominal"),
    [
        (1.0, None),
        (1.25, 2.0),
        (1.5, 2.0),
        (2.25, 2.0),
        (2.5, 3.0),
        (3.5, 3.0),
        (3.75, None),
        (5.5, None),
        (None, None),
    ],
)
def test_only_true_2x_and_3x_sills_are_within_the_tests(thickness: float | None, nominal: float | None) -> None:
    assert nominal_of(thickness) == nominal


def test_a_sill_of_five_and_a_half_inches_is_outside_the_evidence() -> None:
    link = excepted(with_sill(sound_house(), "si1a", thickness_in=measured(5.5)))
    assert link.status == "cannot be checked"
    assert "outside what was tested: 2x or 3x sill" in link.reason


def test_every_bolt_is_asked_every_condition() -> None:
    shallow = with_bolt(sound_house(), "si1a-1", embedment_in=measured(6.0), edge_in=measured(4.0))
    link = excepted(shallow)  # the other bolt has the least edge distance
    assert link.status in ("passes", "fails")
    assert "the sill exception does not stand in for this check (IBC 2021 1905.1.8): met: " in link.reason
    assert "not met: at least 7 in. in the concrete" in link.reason
    adhesive = excepted(with_bolt(sound_house(), "si1a-1", kind="adhesive", edge_in=measured(4.0)))
    assert "outside what was tested: bolt cast in, as those tested were" in adhesive.reason
    near_end = excepted(with_break(sound_house(), "line1", 150.0, "step"))
    assert "not met: at least 15 bolt diameters from the end of the concrete" in near_end.reason


# --- tests in place ---------------------------------------------------------------------------------------------------

RULE = (
    "rule: at least 3 anchors or 5 % of the line's, one on each stretch, moved at most 0.10 in. at the load; to prove "
    "the 5 % fractile each holds 1.53 times the force where 3 are tested, 1.22 where 10 are, 1.00 from 45 on (90 % "
    "confidence, scatter of 0.25: our choice, no source)"
)


def three(load: float = 3500.0, **changes: Any) -> House:
    """Concrete without cores, three old bolts tested in it."""
    tests = {f"shear_{n}": a_shear_test("fs1", 60.0 + n, load, mark=f"T{n}", **changes) for n in range(3)}
    return with_tests(without_cores(sound_house()), **tests)


def test_three_tests_of_like_bolts_lift_concrete_and_wood() -> None:
    house = three()
    concrete = front(house)
    assert (concrete.status, concrete.extension) == ("passes", "")
    assert (
        "passes by test: T0, T1, T2 held at least 3,500 lb at no more than 0.05 in., 3 anchors at 5.0 ft, 5.1 ft, "
        f"5.2 ft (R. Tam 2026-05-01); 1.53 times the force on one was asked of each; {RULE}"
    ) in concrete.reason
    timber = wood(house, "si1a", "line1")
    assert (timber.status, timber.extension) == ("passes", "")
    assert "passes by test: T0" in timber.reason


def test_tests_never_say_passes_of_a_link_that_fails_and_nothing_where_no_force_comes() -> None:
    held = Proof(True, "passes by test: T1 held at least 1,800 lb; a rule")
    assert held.beside(1731.0, 1800.0) == held.words
    assert held.beside(1731.0, 1055.0).startswith("the tests held it, but a few tests lift only what is indicated: ")
    assert held.beside(1731.0, 1055.0).endswith("an engineer decides: T1 held at least 1,800 lb; a rule")
    assert held.beside(0.0, 1055.0) == ""
    wanting = Proof(False, "not yet proved by test: T1 moved 6 in.")
    assert (wanting.beside(1731.0, 1055.0), wanting.beside(0.0, 1055.0)) == (wanting.words, "")


def test_three_anchors_at_hardly_more_than_the_force_prove_no_fractile() -> None:
    """One in twenty of a kind lies 1.6 deviations under its mean: the least of three is no such value."""
    asked = front(three()).demand
    assert asked is not None
    for factor, count, status in ((1.06, 3, "indicated"), (1.52, 3, "indicated"), (1.54, 3, "passes"),
                                  (1.22, 10, "indicated"), (1.24, 10, "passes"), (1.001, 45, "passes")):  # fmt: skip
        one = a_shear_test("fs1", 60.0, factor * asked, mark="T9", count=count)
        link = front(with_tests(without_cores(sound_house()), shear_0=one))
        assert link.status == status, (factor, count)
        told = f"times the {asked:,.0f} lb on one" if status == "indicated" else "times the force on one was asked"
        assert told in link.reason


def test_the_least_of_all_that_were_tested_counts() -> None:
    asked = front(three()).demand
    assert asked is not None
    tests = {f"shear_{n}": a_shear_test("fs1", 60.0 + n, load * asked, mark=f"T{n}") for n, load in
             enumerate((2.0, 2.0, 2.0, 1.1))}  # fmt: skip
    link = front(with_tests(without_cores(sound_house()), **tests))
    assert link.status == "indicated"
    assert f"T3 held {1.1 * asked:,.0f} lb, and each of 4 is to hold" in link.reason


def test_one_record_may_tell_of_several_anchors() -> None:
    one = a_shear_test("fs1", 60.0, 3500.0, mark="T9", count=3)
    assert front(with_tests(without_cores(sound_house()), shear_0=one)).status == "passes"


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"displacement_in": 6.0}, "not proved by test: T0 moved 6 in., more than 0.10 in."),
        ({"displacement_in": None}, "not yet proved by test: T0 has no displacement entered"),
        ({"by": ""}, "not yet proved by test: T0 does not say who made it and when"),
        ({"when": ""}, "not yet proved by test: T0 does not say who made it and when"),
    ],
)
def test_a_test_without_its_record_or_that_moved_too_far_proves_nothing(changes: dict[str, Any], words: str) -> None:
    for found in (front(three(**changes)), front(three(**changes))):
        assert found.status == "indicated"
        assert words in found.reason
    assert wood(three(**changes), "si1a", "line1").status == "indicated"


@pytest.mark.parametrize(
    "changes",
    [
        {"anchor": "new"},
        {"anchor": ""},
        {"anchor_kind": "adhesive"},
        {"anchor_diameter_in": 0.625},
        {"anchor_diameter_in": None},
        {"anchor_edge_in": 4.0},
        {"anchor_edge_in": None},
        {"anchor_embedment_in": 8.0},
        {"unit": "psi"},
        {"kind": "anchor pull"},
    ],
)
def test_a_test_of_another_anchor_says_nothing_of_these(changes: dict[str, Any]) -> None:
    link = front(three(**changes))
    assert link.status == "indicated"
    assert "by test" not in link.reason


def test_too_few_tests_or_none_on_the_stretch_or_one_that_fell_short_prove_nothing() -> None:
    two = front(with_tests(three(), shear_2=None))
    assert (two.status, f"not yet proved by test: 2 of 3 anchors tested; {RULE}" in two.reason) == ("indicated", True)
    away = three()
    foundation = away.survey.foundation
    moved = {k: replace(t, segment="fs2") if t.kind == "anchor shear" else t for k, t in foundation.tests.items()}
    elsewhere = replace(away, survey=replace(away.survey, foundation=replace(foundation, tests=moved)))
    assert front(elsewhere).status == "indicated"  # the right line proves nothing of the front
    short = front(with_tests(three(), shear_3=a_shear_test("fs1", 90.0, 900.0, mark="T3")))
    assert short.status == "indicated"
    assert "not proved by test: T3 held 900 lb of the 2,193 lb on one anchor" in short.reason


def test_old_bolts_prove_nothing_of_new_ones() -> None:
    house = with_pieces(three(), a_new_bolt("line1", 100.0, diameter_in=0.5, anchor="cast-in"))
    link = front(house, work=True)
    assert "passes by test" not in link.reason


def test_tests_never_lift_what_fails() -> None:
    weak = with_stem(three(9000.0), "fs1", strength_psi=measured(700.0))
    assert front(weak).status == "fails"


def test_an_old_bolt_of_unknown_embedment_passes_when_bolts_like_it_were_tested() -> None:
    blind = with_bolt(sound_house(), "si1a-0", embedment_in=unknown(), test_lb=measured(6000.0))
    blind = with_bolt(blind, "si1a-1", embedment_in=unknown(), test_lb=measured(6000.0))
    link = front(blind)
    assert (link.status, link.capacity) == ("indicated", 3000.0)
    assert link.extension == "embedment not known; by the load it held in a test, over 2 (common practice, no source)"
    tests = {f"shear_{n}": a_shear_test("fs1", 60.0 + n, 3500.0, anchor_embedment_in=None) for n in range(3)}
    proved = with_tests(blind, **tests)
    assert front(proved).status == "passes"
    assert wood(proved, "si1a", "line1").status == "passes"


# --- decisions of engineers -------------------------------------------------------------------------------------------

CONCRETE = "line/line1/bolts-concrete/si1a/both"


def test_an_indicated_link_passes_when_a_named_engineer_accepted_it() -> None:
    house = with_acceptance(without_cores(sound_house()), CONCRETE)
    link = front(house)
    assert (link.status, link.verdict, link.extension) == ("passes", "passes", "")
    assert link.reason.startswith("accepted by M. Osei, WA S.E. 1, 2026-06-01: seen at site (chapter 17 carried on to")
    assert wood(house, "si1a", "line1").status == "indicated"  # the decision names one link
    assert check_house(house) == ()


@pytest.mark.parametrize("changes", [{"by": ""}, {"licence": " "}, {"reason": ""}, {"when": ""}, {"most_ratio": 0.5}])
def test_a_decision_counts_only_whole_and_up_to_its_ratio(changes: dict[str, Any]) -> None:
    assert front(with_acceptance(without_cores(sound_house()), CONCRETE, **changes)).status == "indicated"


def test_a_decision_never_lifts_a_link_that_fails() -> None:
    weak = with_stem(without_cores(sound_house()), "fs1", strength_psi=measured(700.0))
    assert front(with_acceptance(weak, CONCRETE)).status == "fails"


def test_a_link_that_passes_by_itself_needs_no_decision() -> None:
    assert front(with_acceptance(sound_house(), CONCRETE)) == front(sound_house())


def test_a_decision_holds_for_the_work_it_was_given_for() -> None:
    bolts = [a_new_bolt("line1", s) for s in (60.0, 130.0)]
    house = with_pieces(without_cores(sound_house()), *bolts)
    as_found = with_acceptance(house, CONCRETE)
    assert front(as_found).status == "passes"
    assert front(as_found, work=True).status == "indicated"
    designed = with_acceptance(house, CONCRETE, alternative=WORK)
    assert front(designed).status == "indicated"
    assert front(designed, work=True).status == "passes"


def test_a_decision_that_is_not_signed_or_names_no_link_is_a_fault_of_the_file() -> None:
    house = with_acceptance(sound_house(), "bolts of K1", licence="", alternative="nothing")
    assert [fault.line() for fault in check_house(house)] == [
        "acceptances.acc-1.licence: nothing is not allowed; a decision counts only with name, licence, date and reason",
        'acceptances.acc-1.link: "bolts of K1" is not allowed; the address of a link as the load path prints it: '
        "line/<line>/sill-bolts/<sill>/both",
        'acceptances.acc-1.alternative: "nothing" is not allowed; the id of an alternative, or nothing',
    ]


# --- the 2016 proposal ------------------------------------------------------------------------------------------------


def proposed(house: House) -> Link:
    """The front line by the 2016 proposal, its concrete looked at and found sound."""
    sound = with_stem(house, "fs1", condition=measured("sound"))
    return front(with_choices(sound, anchor_basis="2016 proposal for existing footings"))


def test_by_the_proposal_a_bolt_is_indicated_and_never_more() -> None:
    for house in (sound_house(), without_cores(sound_house())):
        link = proposed(house)
        assert link.status == "indicated"
        assert link.clause == "SEAONC 2016 proposal A3.2.7 (AB-107)"
        assert link.extension.startswith("a committee's proposal of 2016 for existing footings, not adopted")
        assert "met: a bolt found in place, 2x or 3x sill, sound concrete" in link.reason
        assert "by ACI 318-19 the weakest bolt would hold" in link.reason
        assert link.capacity == wood(house, "si1a", "line1").capacity
        assert link.expected is not None
        assert link.expected.manner == "brittle"


def test_where_the_proposal_does_not_hold_the_concrete_is_checked_after_all() -> None:
    weathered = with_stem(sound_house(), "fs1", condition=measured("weathered"))
    link = front(with_choices(weathered, anchor_basis="2016 proposal for existing footings"))
    assert link.clause.startswith("ACI 318-19")
    assert "the 2016 proposal does not stand in for this check" in link.reason
    assert link.reason.endswith("not met: sound concrete")


def test_what_the_proposal_asks_and_nobody_knows_an_engineer_decides() -> None:
    link = proposed(with_sill(sound_house(), "si1a", condition=unknown()))
    assert link.status == "cannot be checked"
    assert link.reason.startswith("outside the 2016 proposal's evidence, an engineer decides: ")
    assert "not known: sill in good condition" in link.reason


def test_an_edge_bar_that_was_seen_helps_by_a_fifth() -> None:
    house = with_stem(sound_house(), "fs1", strength_psi=measured(2500.0))
    plain = front(house)
    barred = front(with_stem(house, "fs1", edge_bar=measured(True)))
    none = front(with_stem(house, "fs1", edge_bar=measured(False)))
    assert plain.capacity is not None
    assert barred.capacity == pytest.approx(1.2 * plain.capacity)
    assert none.capacity == plain.capacity


def test_new_bolts_nearer_than_their_report_says_are_an_extension() -> None:
    near = [a_new_bolt("line1", s, edge_in=1.5) for s in (60.0, 130.0)]
    link = front(with_pieces(sound_house(), *near), work=True)
    assert "nearer to an edge or another than 17.9.2 allows" in link.extension
    held = [a_new_bolt("line1", s, edge_in=2.0) for s in (60.0, 130.0)]
    assert front(with_pieces(sound_house(), *held), work=True).extension == ""


def test_what_the_trade_has_seen_stands_beside_the_bolts_and_on_no_other_stage() -> None:
    house = sound_house()
    reading = Reading(prepare(house).best.house)
    chain = chain_of(reading, work_out(reading), "line1", ())
    notes = {stage.key: stage.note for stage in chain.stages if stage.note}
    assert list(notes) == ["bolts-concrete"]
    assert "common practice, no source" in notes["bolts-concrete"]
    assert "no evidence for weaker concrete, for anchors set afterwards" in notes["bolts-concrete"]
