"""The chain of a new foundation inside the old, the soil under it, and the old foundation left beside it."""

from dataclasses import replace
from functools import cache
from math import isclose
from typing import Any

import pytest

from groundsill.forces.reading import Reading
from groundsill.forces.seismic import work_out
from groundsill.forces.share import flexible_shares
from groundsill.house.fact import measured, unknown
from groundsill.loadpath.chain import Link
from groundsill.papers.document import GroupRow, TableBlock, plain_text
from groundsill.papers.views.chain_view import chain_header
from groundsill.papers.views.doubts import Doubts
from groundsill.papers.views.summary import summary_blocks
from groundsill.study import Run, run, working
from groundsill.study.states import reading_of, states_of
from groundsill.work.document import House
from groundsill.work.inner import RESTS_ON_OLD
from tests.loadpath.bolting import with_break
from tests.loadpath.houses import doubtful_house, known_house
from tests.loadpath.inner_houses import on_brick, with_ring, with_strip, with_work
from tests.loadpath.test_by_edition import newer


@cache
def alone() -> Run:
    return with_work(with_strip())


@cache
def ring() -> Run:
    return with_work(with_ring())


def links(found: Run) -> dict[str, Link]:
    return {link.address: link for chain in (*found.chains, *found.bodies) for link in chain.links}


def link(found: Run, address: str) -> Link:
    return links(found)[address]


def beside(house: House, which: str) -> Link:
    return link(with_work(house), f"line/inn1/old-beside/{which}/both")


# ---- Force ----------------------------------------------------------------------------------------------------------


def test_the_new_line_takes_the_force_and_the_old_one_none() -> None:
    force = alone().line_forces
    assert (force["line1"].relied_on, force["line1"].force_lb) == (False, 0.0)
    assert force["inn1"].relied_on
    assert force["inn1"].force_lb > 2000
    chain = next(c for c in alone().chains if c.id == "line1")
    assert chain.stages == ()
    assert "relieved by the inner foundation I1" in chain.relied_reason


def test_its_headline_names_what_carries_and_no_least_size_that_is_met_exactly() -> None:
    chain = next(c for c in alone().chains if c.id == "inn1")
    kept = {each.title for each in chain.links if each.minimum}
    assert {"cover of the bars", "strength of the concrete", "width of the footing"} <= kept
    cover = next(each for each in chain.links if each.title == "cover of the bars")
    assert (cover.ratio, cover.verdict) == (1.0, "passes")
    assert chain.governing not in {each.address for each in chain.links if each.minimum}


def test_the_mark_of_a_body_names_it_as_found_and_with_the_work() -> None:
    """The ring is longer than any piece of the old foundation, and takes the next free number all the same."""
    house = with_ring()
    for line in ("line1", "line2", "line3", "line4"):
        for step in range(30, 330, 60):
            house = with_break(house, line, step + int(line[-1]), "gap")
    before, after = run(house, ranges=False).runs
    marks = {body.id: body.mark for body in before.bodies}
    new = [body.mark for body in after.bodies if body.id not in marks]
    assert {body.id: body.mark for body in after.bodies if body.id in marks} == marks
    assert new == [f"B{len([mark for mark in marks.values() if mark.startswith('B')]) + 1}"]


def test_as_found_stays_as_it_was() -> None:
    assert run(with_strip(), ranges=False).runs[0] == run(replace(known_house(), alternatives={}), ranges=False).runs[0]


@pytest.mark.parametrize("direction", ["x", "y"])
def test_the_whole_house_is_in_equilibrium_on_its_new_lines(direction: Any) -> None:
    """What the lines take of every level is all of it, forward and in turning about the plan's origin."""
    house = with_ring()
    state = states_of(house)[1]
    reading = reading_of(state, Reading(house))
    forces = work_out(reading)
    sharing = flexible_shares(reading, forces.items, direction)
    assert not sharing.missing
    corners = reading.house.survey.building.corners
    for level in (0, 1):
        placed = [
            (float(i.weight_lb) * part, i) for i in forces.items if i.seismic for at, part in i.levels if at == level
        ]
        whole = sum(w for w, _ in placed)
        lever = sum(w * sum(p[direction == "x"] for p in i.points) / len(i.points) for w, i in placed) / whole
        forward = turning = 0.0
        for id, share in sharing.shares.items():
            line = reading.house.survey.underfloor.lines[id]
            a, b = corners[line.start], corners[line.end]
            along_x = abs(b.x_in - a.x_in) > abs(b.y_in - a.y_in)
            part = share.fraction.get(level, 0.0)
            forward += part if along_x == (direction == "x") else 0.0
            turning += part * (a.y_in if along_x else -a.x_in) * (1 if direction == "x" else -1)
        assert isclose(forward, 1.0, abs_tol=1e-9)
        assert isclose(turning, lever, rel_tol=1e-6)


def test_the_floor_stays_on_the_old_line_unless_the_strip_is_jacked_to_it() -> None:
    loads = {}
    for gravity in ("none", "second support", "carries the floor"):
        house = with_strip(gravity=gravity)
        reading = reading_of(states_of(house)[1], Reading(house))
        found = work_out(reading).gravity.lines
        loads[gravity] = (float(found["inn1"].live), float(found["line1"].live))
    assert loads["none"] == loads["second support"] == (0.0, loads["none"][1])
    assert loads["carries the floor"][0] > 0
    assert loads["carries the floor"][1] < loads["none"][1]


# ---- The chain ------------------------------------------------------------------------------------------------------


def test_the_ring_carries_all_that_is_asked_of_it_down_to_the_soil() -> None:
    line, body = (c for c in (*ring().chains, *ring().bodies) if "I1" in c.mark or "I1" in c.name)
    assert body.verdict == "passes"
    unanswered = [k.address for k in line.links if k.status not in ("passes", "does not apply")]
    assert unanswered == [  # for an engineer to look at
        "line/inn1/chord/inn1/both", "line/inn1/old-beside/seat-line1/both", "line/inn1/old-beside/offset/both",
    ]  # fmt: skip
    assert line.verdict == "cannot be checked"


def test_new_concrete_is_specified_and_so_its_anchors_pass_where_old_concrete_is_only_indicated() -> None:
    bolts = link(alone(), "line/inn1/bolts-concrete/inn1-sill-1/both")
    held = [k for k in links(alone()).values() if k.title.startswith("anchor of hold-down I1H")]
    assert (bolts.status, bolts.extension) == ("passes", "")
    assert held
    assert {(k.status, k.extension) for k in held} == {("passes", "")}


def test_each_link_of_the_chain_names_its_level_of_load() -> None:
    for address in ("footing/sagging", "footing/shear", "footing/joint", "old-beside/seat-line1"):
        assert link(alone(), f"line/inn1/{address}/both").level == "strength"
    for address in ("footing/pressure", "floor-to-plate/inn1", "old-beside/dig-line1"):
        assert link(alone(), f"line/inn1/{address}/both").level == "allowable"


def test_a_strip_alone_slides_and_is_told_what_it_wants() -> None:
    """Friction of what stands on it, and its own end: a strip pushed along its length has almost no soil against it."""
    slides = link(alone(), "body/inn1-footing/sliding/inn1-footing/x")
    assert slides.status == "fails"
    assert "almost no soil against it" in slides.reason
    assert "lb more dead load" in slides.reason
    assert link(ring(), "body/inn1-footing/sliding/inn1-footing/x").status == "passes"


def test_it_turns_over_about_its_base_by_wall_and_depth_and_not_by_the_house() -> None:
    """V' at allowable level, 0.75 at the soil, over 24 + 2.5 + 8 + 20 in."""
    over = link(alone(), "body/inn1-footing/overturning/inn1-footing/x")
    force = alone().line_forces["inn1"].force_lb
    assert over.demand == pytest.approx(force * 1.3 * 0.7 * 0.75 * 54.5 / 12)


def test_old_and_new_concrete_are_never_one_body() -> None:
    house = with_strip(start=replace(strip_start(), x_in=8), end=replace(strip_start(), x_in=352))
    assert sum("I1" in body.name for body in with_work(house).bodies) == 1
    assert [body.name for body in with_work(house).bodies if "I1" in body.name] == ["foundation under I1"]


def strip_start() -> Any:
    from tests.loadpath.inner_houses import FRONT

    return FRONT["start"]


def test_a_strip_too_light_for_its_wall_turns_over_on_its_soil() -> None:
    house = replace(known_house(), choices=replace(known_house().choices, system="A.17"))
    found = with_work(with_strip(house, wall_height_in=60, footing_width_in=12, footing_thickness_in=8, depth_in=12))
    pressure = link(found, "line/inn1/footing/pressure/both")
    assert (pressure.status, pressure.demand, "turns over" in pressure.reason) == ("fails", None, True)
    assert link(found, "line/inn1/footing/bending/both").status == "cannot be checked"


# ---- The old foundation beside it -----------------------------------------------------------------------------------


def test_the_trench_stays_above_the_line_that_falls_from_the_old_footing() -> None:
    """Old bottom 12 in. below the soil inside; 48 - 6 - 9 in. clear; sand: 0.577 to 1 leaves 19 in."""
    dug = link(alone(), "line/inn1/old-beside/dig-line1/both")
    assert dug.demand == pytest.approx(20 - 12)
    assert dug.capacity == pytest.approx(0.577 * (48 - 6 - 9))
    assert dug.clause == "IBC 2021 1809.6"
    assert beside(with_strip(depth_in=34), "dig-line1").status == "fails"


def test_an_underpinned_footing_is_said_to_be_another_design() -> None:
    found = beside(with_strip(depth_in=34, underpinned=True), "dig-line1")
    assert (found.status, "a design of its own" in found.reason) == ("does not apply", True)


def test_a_shallow_strip_presses_on_the_old_footing_unless_it_stands_clear() -> None:
    found = beside(with_strip(depth_in=12, start=near(20), end=near(20, 336)), "press-line1")
    assert found.status == "does not apply"  # as deep as the old one
    pressed = beside(with_depth(with_strip(depth_in=12, start=near(20), end=near(20, 336)), 40.0), "press-line1")
    clear = beside(with_depth(with_strip(depth_in=12, start=near(90), end=near(90, 336)), 40.0), "press-line1")
    assert (pressed.status, clear.status) == ("fails", "passes")


def near(y: float, x: float = 24.0) -> Any:
    return replace(strip_start(), x_in=x, y_in=y)


def with_depth(house: House, depth: float) -> House:
    base = house.survey.foundation
    stems = {k: replace(s, depth_in=measured(depth)) if s.line == "line1" else s for k, s in base.segments.items()}
    return replace(house, survey=replace(house.survey, foundation=replace(base, segments=stems)))


def test_an_old_footing_nobody_measured_asks_for_a_pit() -> None:
    base = with_strip().survey.foundation
    stems = {k: replace(s, footing_width_in=unknown()) for k, s in base.segments.items()}
    house = replace(with_strip(), survey=replace(with_strip().survey, foundation=replace(base, segments=stems)))
    found = beside(house, "dig-line1")
    assert (found.status, "dig one pit beside it first" in found.reason) == ("cannot be checked", True)


def test_a_trench_at_the_end_of_a_strip_is_held_against_the_footing_it_runs_toward() -> None:
    assert link(alone(), "line/inn1/old-beside/dig-line4/both").demand == pytest.approx(8)
    open_wide = beside(with_strip(dig_length_in=72), "trench")
    assert (open_wide.status, "stays above the line" in open_wide.reason) == ("does not apply", True)
    assert beside(with_strip(depth_in=34, dig_length_in=72), "trench").status == "fails"
    assert beside(with_strip(depth_in=34), "trench").status == "fails"  # open over its whole length
    assert beside(with_strip(depth_in=34, dig_length_in=48), "trench").status == "passes"


def test_the_old_wall_keeps_half_of_its_seat() -> None:
    """0.02 of 24 in., the drift that lines across are held to, against half of the narrower of sill and stem."""
    seat = link(alone(), "line/inn1/old-beside/seat-line1/both")
    assert seat.demand == pytest.approx(0.02 * 24)
    assert "along it the wall goes" in seat.reason
    assert (seat.status, "what its boards give" in seat.extension) == ("indicated", True)


def boards_of(house: House, boards: Any) -> House:
    under = house.survey.underfloor
    joists = {k: replace(field, boards=boards) for k, field in under.joists.items()}
    return replace(house, survey=replace(house.survey, underfloor=replace(under, joists=joists)))


def hanging(boards: Any, off: float, low: float = 24.0, high: float = 336.0) -> Link:
    return beside(boards_of(with_strip(start=near(off, low), end=near(off, high)), boards), "overhang")


@pytest.mark.parametrize("boards", ["straight boards", "diagonal boards", "panel"])
def test_a_floor_that_hangs_out_up_to_six_feet_is_outside_the_clause(boards: str) -> None:
    found = hanging(boards, 72.0)
    assert (found.status, found.capacity) == ("does not apply", None)
    assert "the clause asks nothing up to 6 ft" in found.reason
    assert any(mark.kind == "from memory" for mark in found.marks)


def test_straight_boards_are_never_let_out_beyond_it() -> None:
    for boards in ("straight boards", "double straight boards", "straight and finish boards"):
        found = hanging(boards, 73.0)
        assert (found.status, found.clause) == ("cannot be checked", "SDPWS 2015 4.2.5.2")
        assert "straight boards are not among what the clause allows" in found.reason


@pytest.mark.parametrize(
    ("boards", "status"), [("diagonal boards", "fails"), ("panel", "cannot be checked"), ("straight boards", None)]
)
def test_a_floor_longer_than_its_proportions_fails_and_one_within_them_is_no_pass(boards: str, status: str) -> None:
    """84 in. out on 66 in. of line: over 1 to 1, under 1.5 to 1; the drift of its open edge stays open."""
    found = hanging(boards, 84.0, 24.0, 90.0)
    assert found.status == (status or "cannot be checked")
    if boards == "diagonal boards":
        assert (found.demand, found.capacity) == pytest.approx((7.0, 5.5))
    if boards == "panel":
        assert "within the 8.2 ft" in found.reason
        assert "how far its open edge drifts" in found.reason


def test_the_chords_of_what_hangs_out_are_told_and_never_passed() -> None:
    """By hand: what the weights in front of the line push, a fiftieth of an inch at a time, about the line, over it."""
    found, state = link(alone(), "line/inn1/chord/inn1/both"), states_of(with_strip())[1]
    forces = work_out(reading_of(state, Reading(with_strip())))
    moment = 0.0
    for level, at in enumerate(forces.levels):
        for item in forces.items:
            part = sum(share for n, share in item.levels if n == level) if item.seismic else 0.0
            low, high = min(p[1] for p in item.points), max(p[1] for p in item.points)
            cuts = [low + (high - low) * (n + 0.5) / 4000 for n in range(4000)]
            arm = sum(48.0 - v for v in cuts if v < 48.0) / 4000  # every item of this house is as wide all along
            moment += at.force_lb / at.weight_lb * part * item.weight_lb * arm if part else 0.0
    pull = 0.7 * forces.rho * moment / (336 - 24)
    assert found.status == "cannot be checked"
    assert found.reason.startswith("the floor hangs out 4.0 ft")
    told = float(found.reason.split("pulls up to ")[1].split(" lb")[0].replace(",", ""))
    assert told == pytest.approx(pull, rel=2e-3)


# ---- Walls above that stand off the line -----------------------------------------------------------------------------


@pytest.mark.parametrize("edition", ["ASCE 7-16", "ASCE 7-22"])
def test_floor_ties_and_collectors_take_a_quarter_more_where_the_walls_above_stand_off(edition: str) -> None:
    house = with_strip() if edition == "ASCE 7-16" else newer(with_strip())
    found = with_work(house)
    force = 0.7 * 1.3 * found.line_forces["inn1"].force_lb
    ties, drag = (link(found, f"line/inn1/{k}/both") for k in ("floor-to-plate/inn1", "plate-splices/inn1-drag"))
    assert ties.demand == pytest.approx(1.25 * force)
    assert f"a quarter more by {edition} 12.3.3.4: the walls above stand 4.0 ft off the line" in ties.reason
    assert "12.3.3.4" in drag.reason
    assert link(found, "line/inn1/floor-boards/inn1/both").demand == pytest.approx(force / 26)  # the floor itself: no
    assert link(found, "line/line3/floor-to-plate/line3/both").demand == pytest.approx(
        0.7 * 1.3 * found.line_forces["line3"].force_lb
    )
    under = link(found, "line/inn1/old-beside/offset/both")
    assert (under.status, under.clause) == ("cannot be checked", f"{edition} 12.3.3.3")


def test_in_category_c_only_what_holds_up_the_walls_above_is_asked() -> None:
    house = with_strip()
    site = house.survey.site
    assert site.hazard is not None
    mild = replace(site, hazard=replace(site.hazard, S_DS=0.4, S_D1=0.15, S_1=0.1))
    found = with_work(replace(house, survey=replace(house.survey, site=mild)))
    ties = link(found, "line/inn1/floor-to-plate/inn1/both")
    assert ties.demand == pytest.approx(0.7 * found.line_forces["inn1"].force_lb)  # rho is 1 there
    assert "12.3.3.4" not in ties.reason
    assert link(found, "line/inn1/old-beside/offset/both").status == "cannot be checked"


def test_vertical_support_that_rests_on_the_old_foundation_is_said_in_these_words() -> None:
    found = link(alone(), "line/inn1/old-beside/vertical/both")
    assert (found.status, found.reason) == ("does not apply", RESTS_ON_OLD)
    assert any(RESTS_ON_OLD in told for told in alone().remarks)
    at_its_head = {chain.id: chain.remark for chain in alone().chains}
    assert at_its_head["inn1"] == f"I1: {RESTS_ON_OLD}; nothing here says how long that will hold"
    assert all(told == "" for line, told in at_its_head.items() if line != "inn1")


def test_what_holds_the_floor_up_stands_at_the_head_of_the_line_on_paper_and_in_the_summary() -> None:
    new = next(chain for chain in alone().chains if chain.id == "inn1")
    said = f"I1: {RESTS_ON_OLD}; nothing here says how long that will hold; "
    assert new.headline.startswith(said)
    assert plain_text(chain_header(new, "us", Doubts()).rows[0].value).startswith(said)
    study = run(with_strip(), ranges=False)
    told = " ".join(
        plain_text(cell)
        for block in summary_blocks(study, False)
        if isinstance(block, TableBlock)
        for row in block.rows
        for cell in ((row.text,) if isinstance(row, GroupRow) else row)
    )
    assert RESTS_ON_OLD in told


def test_a_second_support_is_asked_for_all_that_the_old_line_carries() -> None:
    house = with_strip(gravity="second support")
    pressed = beside(house, "vertical")
    assert (pressed.unit, pressed.status) == ("psf", "passes")
    joists = beside(house, "joists")
    assert joists.unit == "lb-ft"
    farther = beside(with_strip(gravity="second support", start=near(96), end=near(96, 336)), "joists")
    assert (farther.ratio or 0) > (joists.ratio or 0)


def test_a_strip_under_joists_that_run_along_it_is_no_support() -> None:
    house = with_strip(gravity="second support")
    lines = {k: replace(line, joists="parallel") for k, line in house.survey.underfloor.lines.items()}
    house = replace(house, survey=replace(house.survey, underfloor=replace(house.survey.underfloor, lines=lines)))
    found = beside(house, "vertical")
    assert (found.status, RESTS_ON_OLD in found.reason) == ("fails", True)


@pytest.mark.parametrize(
    ("facts", "status"),
    [
        ({}, "passes"),
        ({"header_course": measured(False), "collar_joint_filled": measured(False)}, "fails"),
        ({"mortar": measured("missing")}, "cannot be checked"),
    ],
)
def test_brick_out_of_plane(facts: dict[str, Any], status: str) -> None:
    """8 in. thick and 10 in. high begins to rock at 0.8 g; one wythe of 4 in. at 0.4 g; loose brick is never passed."""
    assert beside(on_brick(with_strip(), **facts), "brick-fs1").status == status


def test_the_exception_for_a_masonry_perimeter_is_answered_by_the_new_line() -> None:
    asked = {
        line.line: [r for r in line.requirements if r.key == "inside"]
        for line in with_work(on_brick(with_ring())).prescriptive
    }
    assert [len(found) for found in asked.values()].count(1) == 1
    (one,) = asked["line1"]
    assert (one.clause, one.outcome) == ("A304.2.2", "cannot tell")  # the floor's edges are not checked as chords
    assert "I1 inside it" in one.reason
    alone_on_brick = {line.line: line for line in with_work(on_brick(with_strip())).prescriptive}["line1"]
    assert [r.outcome for r in alone_on_brick.requirements if r.key == "inside"] == ["short"]


# ---- Ten thousand pounds --------------------------------------------------------------------------------------------


HEAVY: dict[str, Any] = {
    "footing_width_in": 36, "footing_thickness_in": 18, "depth_in": 30, "stem_width_in": 12, "bar": "#5",
    "bars_top": 3, "bars_bottom": 3, "gravity": "carries the floor",
}  # fmt: skip


def ten_thousand(level: str, pounds: float = 10000.0) -> Run:
    return with_work(with_ring(off=56.0, check_lb=pounds, check_level=level, **HEAVY))


def test_the_trade_s_check_value_of_ten_thousand_pounds() -> None:
    """Asked at strength level: 10,000 lb with redundancy, 7,000 lb at allowable level, in wall, bars and soil alike.

    A ring of heavy strips carries it in wall, bolts and bars; the old floor does not bring it.
    """
    found = ten_thousand("strength")
    chain = next(c for c in found.chains if c.id == "inn1")
    own = 1.3 * found.line_forces["inn1"].force_lb
    assert own < 5000
    assert chain.force_lb == pytest.approx(10000 / 1.3)
    told = (
        f"asked for its check value, 10,000 lb at strength level: its own share of the house's force is {own:,.0f} lb; "
    )
    assert told in chain.headline
    assert {k.title for k in chain.links if k.status == "fails"} <= {"diagonal boards", "floor to wall"}
    assert link(found, "line/inn1/footing/joint/both").demand == pytest.approx(10000)
    assert link(found, "line/inn1/floor-to-plate/inn1/both").demand == pytest.approx(1.25 * 7000)
    slides = link(found, "body/inn1-footing/sliding/inn1-footing/x")
    assert slides.demand == pytest.approx(14000)  # two lines that way
    assert found.line_forces["inn1"].force_lb == pytest.approx(own / 1.3)  # the share itself stays what it is


def test_a_check_value_at_allowable_level_is_what_clips_and_soil_are_asked() -> None:
    found = ten_thousand("allowable")
    assert link(found, "line/inn1/floor-to-plate/inn1/both").demand == pytest.approx(1.25 * 10000)
    assert link(found, "line/inn1/footing/joint/both").demand == pytest.approx(10000 / 0.7)


def test_a_check_value_below_the_lines_own_share_asks_nothing_less() -> None:
    found, plain = ten_thousand("strength", 1000.0), with_work(with_ring(off=56.0, **HEAVY))
    chain, same = (next(c for c in r.chains if c.id == "inn1") for r in (found, plain))
    assert (chain.force_lb, chain.links) == (same.force_lb, same.links)
    assert "is below its own share of the house's force" in chain.headline


# ---- Ends and working -----------------------------------------------------------------------------------------------


def test_facts_in_doubt_of_the_old_foundation_reach_the_new_line() -> None:
    house = with_strip(replace(doubtful_house(), alternatives={}), depth_in=30)
    found = run(house).runs[1]
    dug = link(found, "line/inn1/old-beside/dig-line1/both")
    assert dug.verdict in ("fails", "depends")
    assert dug.least_favourable is not None
    assert dug.ratio is not None
    assert dug.least_favourable > dug.ratio


def test_the_working_of_the_new_line_is_that_of_its_own_state() -> None:
    sheet = working(with_strip(), "inner")
    assert sheet.under("line/inn1/footing/sagging/both")
    assert sheet.under("line/inn1/old-beside/dig-line1/both")
    once = working(with_strip()).under("forces/base-shear")
    assert len(sheet.under("forces/base-shear")) == len(once)  # the forces of its own state, and not those as found too


def test_in_wind_the_headline_of_the_state_says_that_its_footing_is_open() -> None:
    house = with_strip()
    site = replace(house.survey.site, wind_mph=measured(130.0), exposure="C", K_zt=measured(1.0))
    windy = with_work(replace(house, survey=replace(house.survey, site=site)))
    words = "the footing of a new foundation is worked out for the earthquake alone, so that in wind nothing passes I1"
    assert words in windy.headline
    assert words not in alone().headline
