"""Anchors of hold-downs by every way of failing, alone and in pairs, and by each option for the force on them."""

from __future__ import annotations

from dataclasses import replace
from math import pi, sqrt
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.house.fact import measured, unknown
from groundsill.loadpath.chain import Link
from groundsill.work.document import House
from groundsill.work.pieces import Adhesive
from groundsill.working.sheet import Sheet
from tests.loadpath.bolting import (
    EPOXY,
    a_hold_down,
    a_new_bolt,
    a_panel,
    links,
    sound_house,
    with_choices,
    with_pieces,
    with_stem,
)

THICK = 8.0
FEW = settings(max_examples=12, deadline=None)


def braced(
    *also: Any, thick: float | None = THICK, reason: str = "", tension: str = "overstrength", **changes: Any
) -> House:
    """A panel of 5 ft on line 2 with a hold-down at its start, in a stem 8 in. thick."""
    plain = {"anchor_edge_in": 3.0, "anchor_embedment_in": 10.0}
    end = a_hold_down("sg2", 104.0, **(plain | changes))
    stem = unknown() if thick is None else measured(thick)
    house = with_stem(sound_house(), "fs2", top_width_in=stem)
    house = with_choices(house, storeys_above="all of it", storeys_above_reason="a test")
    house = with_choices(house, anchor_tension=tension, anchor_tension_reason=reason)
    panels = [a_panel("sg2", start, to) for start, to in ((101.0, 160.0), (0.0, 90.0), (170.0, 240.0))]
    return with_pieces(house, *panels, end, *also)


def anchor(house: House, mark: str = "H104") -> Link:
    return links(house, "line2", work=True)[f"overturning/piece-0/+-anchor-{mark}"]


def held(house: House, mark: str = "H104") -> float:
    link = anchor(house, mark)
    assert link.capacity is not None, link.reason
    return link.capacity


# --- ways of failing -------------------------------------------------------------------------------------------------


def test_a_cone_between_two_near_faces_by_hand() -> None:
    """5/8 in., 10 deep, 3 in. from one face of 8 in.: 30 x 8 in2, psi_ed 0.76; three quarters of 0.65 of it."""
    N_b = 17 * sqrt(3000) * 10**1.5
    by_hand = 0.75 * 0.65 * (30 * 8) / 900 * (0.7 + 0.3 * 3 / 15) * N_b
    link = anchor(braced())
    assert link.capacity == pytest.approx(by_hand)
    assert link.reason.startswith("breakout for the overstrength tension (17.10.5.3 d)")


def test_bond_by_the_standards_minimum_by_hand() -> None:
    """Nothing known of the glue: 160 psi, category 3; reach 4.80 in., 3 in. from a face and 4.80 of the other's 5."""
    reach = 10 * 0.625 * sqrt(650 / 1100)
    bond = 160 * pi * 0.625 * 10 * (3 + reach) / (2 * reach) * (0.7 + 0.3 * 3 / reach)
    link = anchor(braced(adhesive=None))
    assert link.capacity == pytest.approx(0.75 * 0.45 * bond)
    assert link.reason.startswith("bond for the overstrength tension")
    assert "its category is not known: 3, the lowest, is taken" in link.reason
    assert "not known: (a) product qualified by ACI 355.4" in link.reason
    assert "minimum bond stress of Table 17.6.5.2.5 outside its conditions of use" in link.extension


def test_with_every_condition_met_the_minimum_bond_is_no_extension_of_its_own() -> None:
    known = Adhesive(report="report 5", category=1, hole="rotary impact or rock drill", warm=True, least_edge_in=2.0)
    link = anchor(braced(adhesive=known))
    assert "(e) concrete at 50 F or more at installation; against splitting" in link.reason
    assert link.extension == "an anchor set afterwards in old concrete, until it is tested in place"
    indoor = anchor(braced(adhesive=replace(known, place="indoor")))
    assert indoor.capacity is not None
    assert link.capacity is not None
    assert link.capacity < indoor.capacity < 1.5 * link.capacity  # 300 over 200 psi, less the longer reach


def test_bond_stress_without_its_report_is_an_extension() -> None:
    link = anchor(braced(adhesive=replace(EPOXY, report="")))
    assert "bond stress as entered, without naming the report" in link.extension


def test_a_far_face_nobody_measured_is_taken_as_near_as_the_near_one() -> None:
    assert held(braced(thick=None)) == pytest.approx(held(braced(thick=6.0)))
    assert held(braced(thick=None)) < held(braced(thick=12.0))


def test_an_anchor_outside_its_stem_or_through_it_cannot_be_checked() -> None:
    beside = anchor(braced(thick=3.0))
    assert beside.status == "cannot be checked"
    assert beside.reason.startswith("an anchor 3 in. from the nearest face does not stand in a stem 3 in. thick")
    through = anchor(braced(anchor_embedment_in=30.0))
    assert through.reason.startswith("an anchor 30 in. deep goes through concrete 22 in. high")


@FEW
@given(edge=st.floats(1.5, 4.0), deep=st.floats(5.0, 12.0), thick=st.floats(8.0, 30.0), more=st.floats(0.0, 2.0))
def test_a_thicker_stem_a_farther_face_or_a_stronger_glue_never_holds_less(
    edge: float, deep: float, thick: float, more: float
) -> None:
    plain = {"anchor_edge_in": edge, "anchor_embedment_in": deep}
    at = held(braced(thick=thick, **plain)) * (1 - 1e-9)
    assert held(braced(thick=thick * (1 + more), **plain)) >= at
    assert held(braced(thick=thick + more, **(plain | {"anchor_edge_in": edge + more / 2}))) >= at
    glue = replace(EPOXY, cracked_psi=1000.0 * (1 + more))
    assert held(braced(thick=thick, **plain, adhesive=glue)) >= at


def test_a_thin_rod_fails_in_its_own_steel_which_earthquake_does_not_cut() -> None:
    thin = anchor(braced(thick=40.0, anchor_edge_in=20.0, anchor_diameter_in=0.375, anchor_embedment_in=7.0))
    assert thin.reason.startswith("steel for the overstrength tension")
    assert thin.capacity == pytest.approx(0.75 * 60000 * pi / 4 * (0.375 - 0.9743 / 16) ** 2)


def test_a_headed_anchor_pulls_out_and_bursts_the_face() -> None:
    head = {"anchor": "cast-in headed", "adhesive": None}
    assert anchor(braced(**head)).reason.startswith("the bearing area of the anchor's head is not given")
    small = anchor(braced(**head, anchor_head_in2=0.1))
    assert small.capacity == pytest.approx(0.75 * 0.70 * 8 * 0.1 * 3000)
    assert small.reason.startswith("pullout for the overstrength tension")
    face = anchor(braced(**head, anchor_head_in2=0.5, anchor_edge_in=1.0, thick=40.0, anchor_embedment_in=16.0))
    assert face.capacity == pytest.approx(0.75 * 0.70 * 160 * sqrt(0.5) * sqrt(3000))
    assert face.reason.startswith("blowout of the side face for the overstrength tension")
    assert "cast in" not in face.extension


def test_an_old_hooked_bolt_pulls_out_by_its_hook() -> None:
    """ACI 318-19 17.6.3.2.2(b): 0.9 x 3,000 psi x 2 in. x 5/8 in., at 0.70 and three quarters."""
    hook = {"anchor": "cast-in hooked", "adhesive": None}
    found = anchor(braced(**hook, anchor_hook_in=2.0, anchor_edge_in=4.0))
    assert found.capacity == pytest.approx(0.75 * 0.70 * 0.9 * 3000 * 2.0 * 0.625)
    assert found.reason.startswith("pullout of the hook for the overstrength tension")
    assert found.extension == ""
    unseen = anchor(braced(**hook))
    assert (unseen.status, unseen.clause) == ("cannot be checked", "ACI 318-19 17.6, 17.10.5")
    assert "how far the anchor's hook stands out is not given" in unseen.reason
    assert "the hook counts from 3 d_a" in anchor(braced(**hook, anchor_hook_in=1.0)).reason
    glued = anchor(braced())
    assert "hook" not in glued.reason


# --- pairs -----------------------------------------------------------------------------------------------------------


def test_a_pair_shares_the_pull_and_its_cones() -> None:
    alone = anchor(braced())
    pair = braced(a_hold_down("sg2", 108.0, anchor_embedment_in=10.0))
    one, other = anchor(pair), anchor(pair, "H108")
    assert one.demand is not None
    assert alone.demand is not None
    assert one.demand == pytest.approx(alone.demand / 2, rel=0.02)
    assert held(pair) == pytest.approx(held(pair, "H108"))
    assert held(braced()) / 2 < held(pair) < held(braced())
    assert one.demand == pytest.approx(other.demand)


def test_a_stronger_hold_down_of_a_pair_takes_more() -> None:
    pair = braced(a_hold_down("sg2", 108.0, anchor_embedment_in=10.0, capacity_lb=3000.0))
    one, other = anchor(pair), anchor(pair, "H108")
    assert one.demand == pytest.approx(2 * (other.demand or 0.0))


# --- the force -------------------------------------------------------------------------------------------------------


def test_a_choice_without_a_reason_is_not_taken() -> None:
    link = anchor(braced(tension="panel yields"))
    assert "for the overstrength tension (17.10.5.3 d), for no reason is given for “panel yields”" in link.reason
    assert link.demand == anchor(braced()).demand


def test_the_pull_when_the_panel_yields_goes_by_its_nominal_strength() -> None:
    link = anchor(braced(tension="panel yields", reason="panels govern"))
    assert "for the tension when the panel yields (17.10.5.3 b): panels govern" in link.reason
    assert link.demand is not None
    assert link.demand > 0
    assert link.demand != anchor(braced()).demand


def test_the_most_a_hold_down_can_pull_comes_from_its_report() -> None:
    missing = anchor(braced(tension="hold-down's limit", reason="bracket"))
    assert "for the most that the hold-down can pull is not given" in missing.reason
    given_ = anchor(braced(tension="hold-down's limit", reason="bracket", most_lb=9000.0))
    assert given_.demand == 9000.0
    assert "for the most that the hold-down can pull (17.10.5.3 c): bracket" in given_.reason


def test_a_ductile_anchor_is_held_for_the_plain_force_only_where_concrete_outlasts_its_steel() -> None:
    asked = {"tension": "ductile anchor", "reason": "a long rod", "anchor_stretch_in": 6.0, "anchor_braced": True}
    weak = anchor(braced(**asked))
    assert "the anchor's own steel is not shown to yield first (17.10.5.3 a)" in weak.reason
    assert "not met: concrete outlasts 1.2 times the steel's nominal strength" in weak.reason
    assert weak.demand == anchor(braced()).demand
    deep = {"thick": 40.0, "anchor_edge_in": 20.0, "anchor_diameter_in": 0.375, "anchor_embedment_in": 7.0}
    ductile = anchor(braced(**asked, **deep))
    assert (
        "for the plain earthquake tension, the anchor's own steel yielding first (17.10.5.3 a): a long"
        in ductile.reason
    )
    assert ductile.demand is not None
    assert ductile.demand < (anchor(braced(**deep)).demand or 0.0)
    short = anchor(braced(**(asked | {"anchor_stretch_in": None}), **deep))
    assert "not known: free to stretch over 8 diameters" in short.reason


DUCTILE = {"tension": "ductile anchor", "reason": "long", "anchor_stretch_in": 6.0, "anchor_braced": True}
HEADED = {"anchor": "cast-in headed", "adhesive": None, "anchor_head_in2": 0.5, "anchor_edge_in": 2.0}


@pytest.mark.parametrize(
    "house",
    [
        braced(adhesive=None),
        braced(**DUCTILE),
        braced(**HEADED),
        braced(a_hold_down("sg2", 108.0, anchor_embedment_in=10.0)),
        braced(a_new_bolt("line2", 104.0), a_new_bolt("line2", 150.0), adhesive=None),
        braced(tension="hold-down's limit", reason="bracket", most_lb=9000.0),
        with_choices(braced(), anchor_basis="2016 proposal for existing footings"),
    ],
    ids=["minimum bond", "ductile", "headed", "pair", "both ways", "limit", "proposal"],
)
def test_every_figure_of_the_working_has_a_symbol_to_be_set_by(house: House) -> None:
    with Sheet() as sheet:
        links(house, "line2", work=True)
    assert not [step.title for step in sheet.steps if step.result is not None and not step.result.symbol]


# --- one rod both ways -----------------------------------------------------------------------------------------------


def test_a_sill_bolt_that_is_the_hold_downs_anchor_takes_both_at_once() -> None:
    house = braced(a_new_bolt("line2", 104.0), a_new_bolt("line2", 150.0))
    found = links(house, "line2", work=True)
    both, pulled = found["bolts-concrete/si2-and-H104/+"], found["overturning/piece-0/+-anchor-H104"]
    sheared = found["bolts-concrete/si2/both"]
    assert pulled.ratio is not None
    assert sheared.ratio is not None
    assert both.ratio == pytest.approx(max((pulled.ratio + sheared.ratio) / 1.2, pulled.ratio, sheared.ratio))
    assert both.unit == "1"
    apart = links(braced(a_new_bolt("line2", 120.0), a_new_bolt("line2", 150.0)), "line2", work=True)
    assert not [address for address in apart if "-and-" in address]


def test_with_one_of_the_two_unchecked_neither_is_both() -> None:
    house = braced(a_new_bolt("line2", 104.0), a_new_bolt("line2", 150.0), anchor_edge_in=None)
    both = links(house, "line2", work=True)["bolts-concrete/si2-and-H104/+"]
    assert both.status == "cannot be checked"
