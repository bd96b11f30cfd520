"""Sill bolts: which count and why not, what they hold in wood, their washers, and what passes the sill's joints."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import linprog

from groundsill.house.fact import Fact, measured, unknown
from groundsill.loadpath.chain import Link
from groundsill.loadpath.sill_joints import carried_part, passed_on
from groundsill.standards.awc_tr12.general_dowel import sill_bolt_with_gap, sill_bolt_with_gap_beyond
from groundsill.standards.nds_2018.sill_bolt import sill_bolt
from groundsill.work.apply import apply
from groundsill.work.document import House
from tests.loadpath.bolting import (
    WORK,
    a_bolt,
    a_hold_down,
    a_new_bolt,
    a_panel,
    a_splice,
    links,
    sound_house,
    with_bolt,
    with_bolts,
    with_break,
    with_pieces,
    with_sill,
    with_stem,
    without_cores,
    wood,
)

ONE = 1.6 * sill_bolt(0.5, 1.5, l_m=7.0, f_c=3000.0).Z  # allowable load of one bolt of the sound house, lb


def front(house: House, work: bool = False) -> Link:
    """The bolts of the front line's first sill piece in wood."""
    return wood(house, "si1a", "line1", work)


def test_two_sound_bolts_in_cored_concrete_pass_at_twice_the_value_of_the_table() -> None:
    link = front(sound_house())
    assert (link.status, link.extension, link.reason) == ("passes", "", "2 bolts")
    assert link.capacity == pytest.approx(2 * ONE)


# --- which bolts count -----------------------------------------------------------------------------------------------


def test_a_hole_more_than_a_sixteenth_over_does_not_fit() -> None:
    loose = front(with_bolt(sound_house(), "si1a-0", hole_in=measured(0.625)))
    assert loose.capacity == pytest.approx(ONE)
    assert (
        "not counted si1a-0: its hole is 0.625 in. for a bolt of 0.5 in., more than 1/16 in. over (NDS 2018 12.1.3.2)"
        in loose.reason
    )


def test_a_bolt_at_a_sill_joint_belongs_to_neither_piece_and_spoils_neither() -> None:
    house = with_bolts(sound_house(), {"at-joint": a_bolt("line1", 192.0, mark="BJ")})
    for sill in ("si1a", "si1b"):
        link = wood(house, sill, "line1")
        assert link.status == "passes"
        assert link.capacity == pytest.approx(2 * ONE)
        assert (
            "not counted BJ: it stands within 3.5 diameters of the end of the sill piece (NDS 2018 Table 12.5.1A)"
            in link.reason
        )


@pytest.mark.parametrize("kind", ["expansion", "screw"])
def test_an_old_expansion_or_screw_anchor_does_not_count(kind: str) -> None:
    link = front(with_bolt(sound_house(), "si1a-0", kind=kind))
    assert f"not counted si1a-0: {kind} anchors count only by an entered report" in link.reason


def test_a_new_expansion_anchor_counts_by_its_report_in_sound_concrete_alone() -> None:
    bare = with_pieces(sound_house(), a_new_bolt("line1", 100.0, anchor="expansion", report=""))
    assert "new bolt at 8.3 ft: expansion anchors count only by an entered report" in front(bare, work=True).reason
    named = with_pieces(sound_house(), a_new_bolt("line1", 100.0, anchor="expansion"))
    assert front(named, work=True).reason.startswith("1 bolt;")
    weak = with_stem(named, "fs1", strength_psi=measured(2000.0))
    assert (
        "expansion anchors are not counted in concrete under 2,500 psi or of unknown strength"
        in front(weak, work=True).reason
    )


def test_old_bolts_count_where_no_new_one_does() -> None:
    house = with_pieces(sound_house(), a_new_bolt("line1", 100.0))
    assert "not counted si1a-0: old bolts are not added to new ones" in front(house, work=True).reason
    cracked = front(with_break(house, "line1", 105.0, "full-depth crack"), work=True)
    assert cracked.capacity == pytest.approx(2 * ONE)
    assert "new bolt at 8.3 ft: it stands within 12 in. of a full-depth crack" in cracked.reason


def test_a_bolt_of_unknown_embedment_counts_with_half_of_what_it_held_and_is_indicated() -> None:
    blind = with_bolt(sound_house(), "si1a-0", embedment_in=unknown())
    assert "not counted si1a-0: its embedment is not known and no test is entered" in front(blind).reason
    tested = front(with_bolt(blind, "si1a-0", test_lb=measured(1200.0)))
    assert tested.capacity == pytest.approx(ONE + 600.0)
    assert tested.status == "indicated"
    assert tested.extension == (
        "bolts of unknown embedment, by the load each held in a test, over 2 (common practice, no source)"
    )
    strong = front(with_bolt(blind, "si1a-0", test_lb=measured(20000.0)))
    assert strong.capacity == pytest.approx(2 * ONE, rel=1e-6)  # never more than the wood


# --- the sill ---------------------------------------------------------------------------------------------------------


def test_a_sill_cast_into_the_concrete_holds_by_nothing_that_a_standard_knows() -> None:
    bare = sound_house()
    for n in (0, 1):
        bare = with_bolt(bare, f"si1a-{n}", nut=measured("none"))
    found = links(with_sill(bare, "si1a", cast_in=True), "line1")
    for stage in ("sill-bolts", "bolts-concrete"):
        link = found[f"{stage}/si1a/both"]
        assert (link.status, link.clause) == ("cannot be checked", "NDS 2018; ACI 318-19")
        assert link.reason.startswith("the sill is cast into the concrete and no bolt through it counts")
    assert found["sill-joints/si1a/both"].status == "cannot be checked"


def test_bolts_through_a_probed_sill_cast_into_the_concrete_count_as_in_any_other() -> None:
    plain = front(sound_house())
    cast = with_sill(sound_house(), "si1a", cast_in=True, condition=measured("sound"))
    link = front(cast)
    assert link.capacity == pytest.approx(plain.capacity)
    assert "its buried faces were not seen" in link.reason
    assert links(cast, "line1")["bolts-concrete/si1a/both"].status == "passes"


def test_a_sill_cast_into_the_concrete_is_probed_before_anything_counts() -> None:
    link = front(with_sill(sound_house(), "si1a", cast_in=True, condition=unknown()))
    assert link.status == "cannot be checked"
    assert "rots unseen: probe it" in link.reason


def test_a_gap_under_the_sill_takes_from_its_bolts() -> None:
    link = front(with_sill(sound_house(), "si1a", gap_in=measured(0.5)))
    each = sill_bolt_with_gap(0.5, 1.5, 0.5, l_m=7.0, f_c=3000.0)
    assert link.capacity == pytest.approx(2 * 1.6 * each.Z)
    assert link.expected is not None
    flush = front(sound_house()).expected
    assert flush is not None
    assert link.expected.best_lb / flush.best_lb == pytest.approx(each.P / (3.2 * ONE / 1.6))


def test_a_gap_over_weak_concrete_is_worked_out_beyond_the_tables() -> None:
    house = with_stem(with_sill(sound_house(), "si1a", gap_in=measured(0.5)), "fs1", strength_psi=measured(1500.0))
    link = front(house)
    assert link.status == "indicated"
    assert link.capacity == pytest.approx(2 * 1.6 * sill_bolt_with_gap_beyond(0.5, 1.5, 0.5, 1500.0, l_m=7.0).Z)


def test_a_soft_sill_waits_for_the_probe_and_a_decayed_one_holds_nothing() -> None:
    soft = front(with_sill(sound_house(), "si1a", condition=measured("soft")))
    assert soft.status == "cannot be checked"
    assert soft.reason == "the sill is soft: probe how deep it is soft before anything is counted on it"
    decayed = front(with_sill(sound_house(), "si1a", condition=measured("decayed")))
    assert (decayed.status, decayed.capacity) == ("fails", 0.0)
    assert decayed.reason == "the sill is decayed: nothing is counted; 2 bolts"


def test_what_was_not_seen_of_sill_and_bolts_is_told() -> None:
    house = with_sill(sound_house(), "si1a", condition=unknown(), gap_in=unknown())
    link = front(with_bolt(house, "si1a-1", rust=unknown()))
    assert link.capacity == pytest.approx(2 * ONE)
    assert "its condition was not seen: counted as sound" in link.reason
    assert "whether there is a gap under it was not seen: none is counted" in link.reason
    assert "rust of si1a-1 was not looked at: counted as sound" in link.reason
    absent = front(with_sill(sound_house(), "si1a", gap_in=Fact(state="absent")))
    assert absent.reason == "2 bolts"


def test_wood_over_concrete_that_no_core_tells_of_is_only_indicated() -> None:
    link = front(without_cores(sound_house()))
    assert (link.status, link.extension) == ("indicated", "bearing of concrete whose strength no core gave")


def test_a_bolt_near_the_end_of_a_piece_is_expected_to_hold_less_too() -> None:
    far, near = sound_house(), with_bolt(sound_house(), "si1a-0", station_in=2.5)
    few, many = front(near), front(far)
    assert few.expected is not None
    assert many.expected is not None
    C = 2.5 / 3.5
    assert few.capacity == pytest.approx(ONE * (1 + C))
    assert few.expected.best_lb == pytest.approx(many.expected.best_lb * (1 + C) / 2)


# --- washers ----------------------------------------------------------------------------------------------------------


def washers(house: House) -> Link | None:
    """The washers of the front line's first sill piece."""
    return links(house, "line1", work=True).get("sill-bolts/si1a-washers/both")


def braced(*more: object, plate: bool = True, reach: float | None = 2.0, spacing: float = 4.0) -> House:
    """A panel over the first sill piece, and two new bolts in it."""
    bolts = [a_new_bolt("line1", s, plate_washer=plate, to_sheathing_in=reach) for s in (30.0, 120.0)]
    return with_pieces(sound_house(), a_panel("sg1a", 0.0, 96.0, spacing), *bolts, *more)  # type: ignore[arg-type]


def test_washers_are_asked_for_below_panels_alone() -> None:
    assert washers(with_pieces(sound_house(), a_new_bolt("line1", 100.0, plate_washer=False))) is None
    met = washers(braced())
    assert met is not None
    assert (met.status, met.reason) == ("passes", "every plate washer reaches the sheathed edge")
    assert (met.demand, met.capacity, met.unit, met.minimum) == (2.0, 2.0, "bolts", True)


def test_new_bolts_without_plate_washers_fail_below_a_panel() -> None:
    none = washers(braced(plate=False))
    assert none is not None
    assert (none.status, none.capacity, none.clause) == ("fails", 0.0, "SDPWS 2015 4.3.6.4.3")
    assert none.reason.startswith("2 of 2 bolts have no plate washer (A30, A120): only those with one count below a")
    half = washers(braced(a_new_bolt("line1", 60.0, plate_washer=False)))
    assert half is not None
    assert (half.status, half.ratio) == ("fails", pytest.approx(1.5))


def test_old_cut_washers_fail_below_a_new_panel() -> None:
    link = washers(with_pieces(sound_house(), a_panel("sg1a", 0.0, 96.0)))
    assert link is not None
    assert link.status == "fails"


def test_cut_washers_serve_where_hold_downs_take_the_whole_overturning() -> None:
    ends = (a_hold_down("sg1a", 3.0), a_hold_down("sg1a", 93.0))
    link = washers(braced(*ends, plate=False))
    assert link is not None
    assert (link.status, link.reason) == ("passes", "cut washers serve: every condition of the exception is met")
    plates = washers(braced(*ends))
    assert plates is not None
    assert plates.reason == (
        "every nut has a plate washer all the same, laid as drawn; "
        "cut washers serve: every condition of the exception is met"
    )
    one = washers(braced(*ends, a_new_bolt("line1", 60.0), plate=False))
    assert one is not None
    assert one.reason.startswith("the nut of A60 has a plate washer all the same, laid as drawn; cut washers serve")
    cracked = washers(with_break(braced(*ends, plate=False), "line1", 0.0, "cold joint"))
    assert cracked is not None
    assert cracked.status == "fails"
    weak = [replace(end, capacity_lb=100.0) for end in ends]
    failing = washers(braced(*weak, plate=False))
    assert failing is not None
    assert failing.status == "fails"


def test_a_plate_washer_must_reach_the_sheathed_edge_where_the_shear_is_great() -> None:
    unseen = washers(braced(reach=None))
    assert unseen is not None
    assert unseen.status == "cannot be checked"
    assert "must reach to 0.5 in. from the sheathed edge: where the bolts stand across the sill" in unseen.reason
    beyond = washers(braced(reach=3.0))
    assert beyond is not None
    assert (beyond.status, beyond.reason) == (
        "fails",
        "plate of A30, A120 ends more than 0.5 in. from the sheathed edge; cure: a plate long enough to reach there, "
        "or a new bolt nearer the sheathed edge",
    )  # fmt: skip
    narrow = braced(reach=None)
    narrow = with_sill(narrow, "si1a", width_in=measured(3.5))
    reached = washers(narrow)
    assert reached is not None
    assert reached.status == "passes"


# --- joints -----------------------------------------------------------------------------------------------------------

SHORT = {"si1a-0": None, "si1a-1": None}  # the first piece has no bolts; the second holds both only when it is let


def joint(house: House) -> Link:
    """The front line's sill joint."""
    return links(house, "line1", work=True)["sill-joints/si1a/both"]


def more_bolts() -> House:
    """Enough bolts in the second piece for the whole line, none in the first."""
    extra = {f"more-{n}": a_bolt("line1", 216.0 + 12.0 * n) for n in range(9) if n != 2 and n != 8}
    return with_bolts(sound_house(), SHORT | extra)


def test_a_joint_beside_a_piece_that_cannot_be_checked_cannot_be_checked() -> None:
    brick = joint(with_stem(with_bolts(sound_house(), SHORT), "fs1", material="brick"))
    assert brick.status == "cannot be checked"
    soft = joint(with_sill(with_bolts(sound_house(), SHORT), "si1b", condition=measured("soft")))
    assert soft.status == "cannot be checked"
    assert soft.reason == "what the bolts of sill K2 hold is not known, nor then what must pass here"


def test_without_a_splice_a_piece_without_bolts_fails_and_its_neighbour_takes_nothing_more() -> None:
    found = links(more_bolts(), "line1", work=True)
    assert found["sill-bolts/si1a/both"].status == "fails"
    assert found["sill-joints/si1a/both"].reason == "nothing was seen that ties the two pieces together"
    assert "takes" not in found["sill-bolts/si1b/both"].reason


def test_through_a_splice_a_neighbour_takes_what_a_piece_cannot_hold() -> None:
    bare = links(more_bolts(), "line1", work=True)
    found = links(with_pieces(more_bolts(), a_splice("line1", 192.0, 5000.0)), "line1", work=True)
    alone, tied = found["sill-bolts/si1a/both"], found["sill-bolts/si1b/both"]
    force = bare["sill-bolts/si1a/both"].demand
    assert force is not None
    assert tied.demand is not None
    assert alone.status == "does not apply"
    assert f"passes {force:,.0f} lb to sill K2 through splice S1" in alone.reason
    assert f"takes {force:,.0f} lb from sill K1 through splice S1" in tied.reason
    own = bare["sill-bolts/si1b/both"].demand
    assert own is not None
    assert tied.demand == pytest.approx(own + force)
    across = found["sill-joints/si1a/both"]
    assert (across.status, across.demand, across.capacity) == ("passes", pytest.approx(force), 5000.0)
    concrete, before = found["bolts-concrete/si1b/both"], bare["bolts-concrete/si1b/both"]
    assert concrete.demand is not None
    assert before.demand is not None
    # bolts a foot apart share by the springs of their slip: tests/loadpath/test_bolt_shares.py
    assert concrete.demand > before.demand


def test_a_splice_too_weak_for_what_must_pass_is_what_stops_the_line() -> None:
    found = links(with_pieces(more_bolts(), a_splice("line1", 192.0, 400.0)), "line1", work=True)
    across = found["sill-joints/si1a/both"]
    assert across.status == "fails"
    assert across.demand == pytest.approx(links(more_bolts(), "line1")["sill-bolts/si1a/both"].demand)
    assert across.ratio == pytest.approx(float(across.demand or 0) / 400.0)


def test_a_splice_in_decayed_wood_ties_nothing_and_one_far_from_the_joint_has_no_place() -> None:
    tied = with_pieces(more_bolts(), a_splice("line1", 192.0, 5000.0))
    decayed = joint(with_sill(tied, "si1a", condition=measured("decayed")))
    assert (decayed.status, decayed.reason) == ("fails", "a splice holds nothing in decayed wood")
    assert joint(more_bolts()).reason == "nothing was seen that ties the two pieces together"
    (far,) = apply(with_pieces(more_bolts(), a_splice("line1", 230.0, 5000.0)), WORK).misplaced
    assert far.reason.startswith("no joint of the sill of line1 lies within 18 in. of station 230: ")


pieces_in_a_row = st.integers(2, 6).flatmap(
    lambda n: st.tuples(
        st.lists(st.floats(0.0, 5000.0), min_size=n, max_size=n),
        st.lists(st.floats(0.0, 5000.0), min_size=n, max_size=n),
        st.lists(st.floats(1.0, 5000.0), min_size=n - 1, max_size=n - 1),
    )
)


@given(pieces_in_a_row)
def test_the_part_that_a_tied_row_carries_is_what_linear_programming_finds(
    row: tuple[list[float], list[float], list[float]],
) -> None:
    loads, holds, ties = row
    if sum(loads) < 1.0:
        return
    n = len(loads)
    # unknowns: the part carried, then what passes each joint toward the end of the row
    limits = np.zeros((n, n))
    for i in range(n):
        limits[i, 0] = loads[i]
        if i > 0:
            limits[i, i] = 1.0
        if i < n - 1:
            limits[i, i + 1] = -1.0
    bounds = [(0.0, None), *((-t, t) for t in ties)]
    best = linprog([-1.0, *[0.0] * (n - 1)], A_ub=limits, b_ub=holds, bounds=bounds, method="highs")
    assert carried_part(loads, holds, ties) == pytest.approx(-best.fun, rel=1e-6, abs=1e-9)


@given(pieces_in_a_row)
def test_no_piece_and_no_splice_of_a_tied_row_is_worse_off_than_the_row(
    row: tuple[list[float], list[float], list[float]],
) -> None:
    loads, holds, ties = row
    passing = passed_on(loads, holds, ties)
    if all(f <= h for f, h in zip(loads, holds, strict=True)):
        assert set(passing) == {0.0}
        return
    part = carried_part(loads, holds, ties)
    if part == 0:
        assert set(passing) == {0.0}
        return
    before = (0.0, *passing)
    after = (*passing, 0.0)
    for load, held, inward, outward in zip(loads, holds, before, after, strict=True):
        assert part * (load + inward - outward) <= held + 0.05 * max(1.0, part)
    for passes, tie in zip(passing, ties, strict=True):
        assert part * abs(passes) <= tie * (1 + 1e-9) + 1e-6


# --- a soft underside ------------------------------------------------------------------------------------------------


def test_a_sill_soft_to_a_known_depth_works_as_its_sound_part_over_a_gap() -> None:
    soft = with_sill(sound_house(), "si2", condition=measured("soft"), soft_depth_in=measured(0.25))
    thinner = with_sill(sound_house(), "si2", thickness_in=measured(1.25), gap_in=measured(0.25))
    assert wood(soft).capacity == pytest.approx(wood(thinner).capacity)
    shimmed = with_sill(soft, "si2", gap_in=measured(0.5))
    further = with_sill(thinner, "si2", gap_in=measured(0.75))
    assert wood(shimmed).capacity == pytest.approx(wood(further).capacity)


def test_a_sill_soft_right_through_holds_nothing_and_one_nobody_probed_is_not_checked() -> None:
    through = with_sill(sound_house(), "si2", condition=measured("soft"), soft_depth_in=measured(1.5))
    assert (wood(through).status, wood(through).capacity) == ("fails", 0.0)
    unprobed = with_sill(sound_house(), "si2", condition=measured("soft"))
    assert wood(unprobed).status == "cannot be checked"
    assert "probe how deep it is soft" in wood(unprobed).reason
