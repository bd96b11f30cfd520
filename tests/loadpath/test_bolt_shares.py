"""Bolts in weak concrete on the springs of their slip: when, what each takes, and which state every link stands on."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.doors.decode import decode
from groundsill.forces.reading import Reading
from groundsill.forces.seismic import work_out
from groundsill.house.fact import Fact, measured, unknown
from groundsill.house.settle import prepare
from groundsill.loadpath.bolt_shares import CLOSE_IN
from groundsill.loadpath.bolt_states import Strength, yields_first
from groundsill.loadpath.case import pieces_on
from groundsill.loadpath.chain import Link
from groundsill.loadpath.path import chain_of
from groundsill.loadpath.shares import LineShares
from groundsill.loadpath.sill_bolts import Wood
from groundsill.study import run
from groundsill.work.apply import apply
from groundsill.work.document import House
from groundsill.work.pieces import BoltPiece, SideplatePiece, SplicePiece
from tests.loadpath.bolting import (
    WORK,
    a_new_bolt,
    a_panel,
    a_splice,
    links,
    sound_house,
    with_bolt,
    with_bolts,
    with_choices,
    with_pieces,
    with_sill,
    with_stem,
)

FERRY_HILL = Path(__file__).parents[2] / "samples" / "ferry-hill" / "house.json"
PANEL = a_panel("sg2", 24.0, 96.0)
OLD = ("si2-0", "si2-1")


def weak(psi: float = 1500.0, old: bool = False) -> House:
    """The house with weak concrete under its second line (240 in., one sill piece), every line on springs.

    Its old bolts are gone, or not.
    """
    house = sound_house() if old else with_bolts(sound_house(), dict.fromkeys(OLD))
    return with_choices(with_stem(house, "fs2", strength_psi=measured(psi)), bolt_springs="every line")


def row(n: int, spacing: float, start: float = 30.0, **changes: Any) -> tuple[Any, ...]:
    """New bolts along the second line."""
    return tuple(a_new_bolt("line2", start + spacing * k, **changes) for k in range(n))


def shares(house: House, line: str = "line2") -> LineShares | None:
    """What the stage of bolts in the foundation tells of the sharing, with the work laid on."""
    settled = prepare(house).best
    reading = Reading(settled.house, settled.marks)
    laid = apply(settled.house, WORK)
    assert laid.misplaced == ()
    chain = chain_of(reading, work_out(reading), line, pieces_on(reading, line, laid.pieces))
    return next(stage.shares for stage in chain.stages if stage.key == "bolts-concrete")


def told(house: House, line: str = "line2") -> LineShares:
    """The same where there must be some."""
    found = shares(house, line)
    assert found is not None
    return found


def at(house: House, stage: str, sill: str = "si2", line: str = "line2") -> Link:
    """One link with the work laid on."""
    return links(house, line, work=True)[f"{stage}/{sill}/both"]


# ---- When ------------------------------------------------------------------------------------------------------------


def test_bolts_far_apart_share_alike_unless_the_concrete_crumbles() -> None:
    for house in (sound_house(), with_stem(sound_house(), "fs2", strength_psi=measured(1500.0))):
        assert shares(house) is None
        assert "on bolt" not in at(house, "bolts-concrete").reason
    assert told(with_stem(sound_house(), "fs2", condition=measured("crumbling"))).why == "the concrete of F2 crumbles"


@pytest.mark.parametrize(
    ("changes", "why"),
    [
        ({"strength_psi": measured(2499.0)}, "under 2,500; bolts stand closer than 16 in."),
        ({"condition": measured("crumbling")}, "crumbles; bolts stand closer than 16 in."),
    ],
)
def test_close_bolts_in_weak_or_crumbling_concrete_stand_on_springs(changes: dict[str, Any], why: str) -> None:
    house = with_stem(sound_house(), "fs2", **changes)
    found = shares(with_pieces(house, *row(3, CLOSE_IN - 0.5)))
    assert found is not None
    assert why in found.why
    assert shares(with_pieces(sound_house(), *row(3, CLOSE_IN - 0.5))) is None
    if "crumbles" not in why:
        assert shares(with_pieces(house, *row(3, CLOSE_IN))) is None


def test_so_do_those_of_every_line_where_that_is_chosen() -> None:
    assert told(with_choices(sound_house(), bolt_springs="every line")).why == "asked for on every line"


def test_concrete_that_may_be_weak_puts_them_on_springs_at_that_end_alone() -> None:
    """At the low end of the range the springs count, at the best value they do not; so the answer depends on it."""
    doubtful = Fact(value=2600.0, low=2000.0, high=3000.0, state="estimated", how="by eye")
    house = with_pieces(with_stem(sound_house(), "fs2", strength_psi=doubtful), *row(4, 12.0))
    assert shares(house) is None
    low = prepare(house).at({"survey.foundation.segments.fs2.strength_psi": "low"}).house
    assert "2,000 psi" in told(low).why
    assert float(at(low, "bolts-concrete").demand or 0) > 1.3 * float(at(house, "bolts-concrete").demand or 0)


# ---- What each takes -------------------------------------------------------------------------------------------------


def test_bolts_outside_the_panel_hardly_help_and_the_worst_is_held_to_breakout() -> None:
    """Seven bolts a foot apart under a panel of 72 in., nine more beyond its end on the same sill."""
    short = told(with_pieces(weak(), PANEL, *row(6, 12.0)))
    long = told(with_pieces(weak(), PANEL, *row(16, 12.0)))
    assert long.count == 16
    assert short.works < long.works < 11
    far = long.sills[0].bolts[-1]
    assert far.elastic_lb < 0.15 * far.even_lb
    assert long.sills[0].bolts[0].even_lb == pytest.approx(long.force_lb / 16)
    link = at(with_pieces(weak(), PANEL, *row(16, 12.0)), "bolts-concrete")
    assert link.demand == pytest.approx(max(bolt.worst_lb for bolt in long.sills[0].bolts))
    assert "with hole slack, touching first" in link.reason


def test_a_filled_hole_takes_the_slack_away() -> None:
    slack, filled = (with_pieces(weak(), PANEL, *row(6, 12.0, sill_hole_in=hole)) for hole in (0.6875, 0.625))
    assert [bolt.slack_in for bolt in told(slack).sills[0].bolts] == [0.0625] * 6
    tight = told(filled).sills[0]
    assert [bolt.slack_lb for bolt in tight.bolts] == pytest.approx([bolt.elastic_lb for bolt in tight.bolts])
    assert tight.works_slack == pytest.approx(tight.works_elastic)
    before, after = at(slack, "bolts-concrete"), at(filled, "bolts-concrete")
    assert float(after.demand or 0) < 0.5 * float(before.demand or 0)
    assert "slack" in before.reason
    assert "slack" not in after.reason
    assert told(with_pieces(weak(), PANEL, *row(6, 12.0))) == told(slack)  # 1/16 in. over where nobody says


def test_with_slack_no_bolt_brings_more_than_its_joint_in_wood_can_bear() -> None:
    """Without a cap the first to touch would take 5,000 lb and more of a joint that yields at some 1,800 lb."""
    house = with_pieces(weak(900.0), PANEL, *row(6, 12.0))
    sill = told(house).sills[0]
    for bolt in sill.bolts:
        assert bolt.wood_lb is not None
        assert bolt.elastic_lb < 1.25 * bolt.wood_lb
        assert bolt.slack_held
        assert bolt.slack_lb == pytest.approx(1.25 * bolt.wood_lb)
    link = at(house, "bolts-concrete")
    assert link.demand == pytest.approx(sill.bolts[0].slack_lb)
    assert "with hole slack, touching first" in link.reason
    assert "no more than its joint in wood can bring, 1.25 times the" in link.reason
    assert sill.works_slack == pytest.approx(sill.force_lb / sill.bolts[0].slack_lb)


def test_an_elastic_or_even_share_is_never_cut_by_it() -> None:
    house = with_pieces(weak(900.0), PANEL, *row(2, 12.0))
    for bolt in told(house).sills[0].bolts:
        assert bolt.wood_lb is not None
        assert bolt.elastic_lb > 1.25 * bolt.wood_lb
        assert not bolt.slack_held
        assert bolt.slack_lb == pytest.approx(bolt.elastic_lb)
        assert bolt.worst_lb >= bolt.elastic_lb
    assert "can bring" not in at(house, "bolts-concrete").reason


def test_where_nobody_knows_what_the_wood_yields_at_slack_has_no_cap() -> None:
    nobody: Fact[float] = Fact(state="absent")
    sill = told(with_pieces(with_stem(weak(900.0), "fs2", strength_psi=nobody), PANEL, *row(6, 12.0))).sills[0]
    known = told(with_pieces(weak(900.0), PANEL, *row(6, 12.0))).sills[0]
    assert all(bolt.wood_lb is None and not bolt.slack_held for bolt in sill.bolts)
    assert min(bolt.slack_lb for bolt in sill.bolts) > max(bolt.slack_lb for bolt in known.bolts)


def test_an_old_bolt_has_the_play_of_its_own_hole() -> None:
    house = with_bolt(weak(old=True), OLD[0], hole_in=measured(0.53))
    assert [bolt.slack_in for bolt in told(house).sills[0].bolts] == pytest.approx([0.03, 0.0625])


def test_a_wider_sill_shares_more_evenly() -> None:
    narrow, wide = (
        told(with_pieces(with_sill(weak(), "si2", width_in=measured(w)), PANEL, *row(10, 12.0))) for w in (3.5, 11.5)
    )
    assert wide.works > narrow.works
    assert (wide.transfer_in or 0) > (narrow.transfer_in or 0)


def test_the_force_in_the_sill_is_what_the_bolts_beyond_the_panel_hold() -> None:
    """The panel ends 6 in. past the bolt at 90 in.: just before that one passes what it and all beyond it hold, less
    what the last 6 in. of panel bring."""
    found = told(with_pieces(weak(), PANEL, *row(16, 12.0)))
    from_90_on = sum(bolt.elastic_lb for bolt in found.sills[0].bolts if bolt.station_in >= 90.0)
    assert found.axial_lb == pytest.approx(from_90_on - found.force_lb * 6.0 / 72.0)
    assert found.axial_at_in == 90.0


@settings(max_examples=12, deadline=None)
@given(st.lists(st.integers(4, 38), min_size=2, max_size=9, unique=True), st.integers(0, 10))
def test_what_the_bolts_take_is_what_comes_down(places: list[int], start: int) -> None:
    bolts = (a_new_bolt("line2", 6.0 * place) for place in sorted(places))
    found = told(with_pieces(weak(), a_panel("sg2", 12.0 * start, 12.0 * start + 96.0), *bolts))
    (sill,) = found.sills
    assert sum(bolt.elastic_lb for bolt in sill.bolts) == pytest.approx(sill.force_lb)
    assert sum(bolt.yield_lb or 0.0 for bolt in sill.bolts) == pytest.approx(sill.force_lb)
    assert 1.0 <= sill.works_slack <= sill.works_elastic + 1e-9 <= len(places) + 2e-9
    assert all(bolt.slack_lb >= bolt.elastic_lb - 1e-6 for bolt in sill.bolts)


# ---- Joints ----------------------------------------------------------------------------------------------------------


def joined(*more: Any, psi: float = 1500.0) -> House:
    """The first line, of two sill pieces that meet at 192 in., its panel at the joint, close bolts on either side."""
    bolts = [a_new_bolt("line1", 132.0 + 12.0 * n, sill_hole_in=0.625) for n in range(10) if n != 5]
    house = with_bolts(sound_house(), dict.fromkeys(("si1a-0", "si1a-1", "si1b-0", "si1b-1")))
    house = with_stem(house, "fs1", strength_psi=measured(psi), condition=measured("crumbling"))
    return with_pieces(house, a_panel("sg1a", 54.0, 150.0), *bolts, *more)


def test_a_joint_tells_the_strap_it_needs() -> None:
    found = told(joined(), "line1")
    (joint,) = found.joints
    assert (joint.station_in, joint.tied_by, joint.pull_lb) == (192.0, "", 0.0)
    assert joint.strap_lb is not None
    assert joint.strap_lb > 0
    assert found.works_as_one > found.works


def test_a_strap_whose_give_is_known_is_a_spring() -> None:
    strap = a_splice("line1", 192.0, 2000.0)
    stiff, soft = (told(joined(replace(strap, give_in=give)), "line1") for give in (0.001, 0.25))
    bare = told(joined(), "line1")
    assert bare.works < soft.works < stiff.works <= bare.works_as_one + 1e-9
    assert 0 < soft.joints[0].pull_lb < stiff.joints[0].pull_lb
    assert "as one piece and as cut" not in " ".join(stiff.notes)


def test_a_strap_whose_give_is_not_known_is_run_both_ways() -> None:
    """Each bolt takes the worse of a sill in one piece and one cut; the strap itself the force of one piece."""
    found, bare = told(joined(a_splice("line1", 192.0, 2000.0)), "line1"), told(joined(), "line1")
    assert found.works == pytest.approx(bare.works)
    assert "as one piece and as cut" in " ".join(found.notes)
    link = at(joined(a_splice("line1", 192.0, 2000.0)), "sill-joints", "si1a", "line1")
    assert link.demand == pytest.approx(bare.joints[0].strap_lb)
    assert "elastically, on the springs of the bolts" in link.reason
    assert link.status == "indicated"
    assert "slip of bolts in concrete and the modulus of old wood: an extension" in link.extension


def test_a_strap_that_gives_is_told_beside_one_that_does_not() -> None:
    """The springs bring little through a soft strap; the table tells the strap that would make one piece of it."""
    soft = replace(a_splice("line1", 192.0, 2000.0), give_in=0.25)
    link, (joint,) = at(joined(soft), "sill-joints", "si1a", "line1"), told(joined(soft), "line1").joints
    assert joint.strap_lb is not None
    assert float(link.demand or 0) < 0.7 * joint.strap_lb
    assert f"one that did not give would get {joint.strap_lb:,.0f} lb" in link.reason
    assert link.status == "indicated"
    stiff = at(joined(a_splice("line1", 192.0, 2000.0)), "sill-joints", "si1a", "line1")
    assert "did not give" not in stiff.reason


def test_with_slack_a_strap_may_get_more_and_is_told_so() -> None:
    strap = replace(a_splice("line1", 192.0, 2000.0), give_in=0.02)
    house = joined(strap)
    slack = {
        id: replace(piece, sill_hole_in=None) if isinstance(piece, BoltPiece) else piece
        for id, piece in house.alternatives[WORK].pieces.items()
    }
    loose = with_pieces(house, *slack.values())
    (tight_joint,), (loose_joint,) = told(house, "line1").joints, told(loose, "line1").joints
    assert loose_joint.pull_lb == pytest.approx(tight_joint.pull_lb)
    assert tight_joint.slack_lb == pytest.approx(tight_joint.pull_lb)
    assert loose_joint.slack_lb > loose_joint.pull_lb
    link = at(loose, "sill-joints", "si1a", "line1")
    assert link.demand == pytest.approx(at(house, "sill-joints", "si1a", "line1").demand)


def test_bolts_beyond_a_bare_joint_take_nothing() -> None:
    beyond = told(joined(), "line1").sills[1]
    assert (beyond.force_lb, beyond.works_elastic, beyond.works_slack) == (0.0, 0.0, 0.0)
    assert all(bolt.worst_lb == 0 for bolt in beyond.bolts)
    assert at(joined(), "bolts-concrete", "si1b", "line1").status == "does not apply"


def test_a_weak_strap_fails_by_what_the_springs_bring() -> None:
    link = at(joined(a_splice("line1", 192.0, 60.0)), "sill-joints", "si1a", "line1")
    assert (link.status, link.capacity) == ("fails", 60.0)


# ---- Wood ------------------------------------------------------------------------------------------------------------


def test_the_wood_counts_at_yield_only_where_it_yields_first() -> None:
    wood = Wood(1000.0, 4000.0, each=(("a", 500.0, 2000.0), ("b", 500.0, 2000.0)))

    def of(nominal: float, way: str = "breakout beside the bolt") -> tuple[bool, str]:
        found = yields_first(wood, [Strength("a", 0.0, 9000.0, "steel"), Strength("b", 0.0, nominal, way)])
        return found.first, found.words

    assert of(3000.0)[0]
    assert of(1000.0) == (False, "the concrete breaks before the wood yields, at expected strengths")
    assert "too close to call" in of(1700.0)[1]
    assert "test alone" in of(3000.0, "by the load it held in a test")[1]
    assert yields_first(replace(wood, each=()), [Strength("a", 0.0, 1.0, "steel")]).first is False


def test_wood_is_held_elastically_where_the_concrete_breaks_first() -> None:
    house = with_pieces(weak(500.0), PANEL, *row(10, 12.0, edge_in=1.75))
    link, found = at(house, "sill-bolts"), told(house).sills[0]
    assert not found.by_yield
    assert "elastic sharing, worst on bolt" in link.reason
    assert "the concrete breaks before the wood yields" in link.reason
    wide = with_stem(weak(500.0), "fs2", top_width_in=measured(24.0), footing_width_in=measured(30.0))
    strong = at(with_pieces(wide, PANEL, *row(10, 12.0, edge_in=12.0)), "sill-bolts")
    assert link.capacity is not None
    assert strong.capacity is not None
    assert link.capacity == pytest.approx(strong.capacity * found.works_elastic / 10)


def test_by_the_force_at_which_wood_yields_the_springs_bring_nothing_more() -> None:
    """The basis that counts on the wood stands as it did: no bolt brings more than its own joint bears."""
    house = with_choices(weak(), anchor_basis="wood yields first", anchor_reason="a test")
    link = at(with_pieces(house, PANEL, *row(4, 24.0)), "bolts-concrete")
    found = told(with_pieces(house, PANEL, *row(4, 24.0)))
    assert link.demand == pytest.approx(found.sills[0].bolts[0].wood_lb)
    assert "at which the wood yields" in link.reason


# ---- What cannot be checked ------------------------------------------------------------------------------------------


def test_without_the_width_of_the_sill_nobody_can_say() -> None:
    link = at(with_sill(weak(old=True), "si2", width_in=unknown()), "bolts-concrete")
    assert link.status == "cannot be checked"
    assert link.reason == "the width or thickness of sill K3 is not known, nor then how it shares among its bolts"
    assert "11.3.6" in link.clause


def test_where_force_comes_down_must_be_known() -> None:
    """A wall of unknown sheathing alone on its line takes all of it over its length; beside another nobody can say."""
    house = weak(old=True)
    segments = house.survey.underfloor.segments
    blank = replace(segments["sg2"], outside=replace(segments["sg2"].outside, material="drop siding on bare studs"))

    def walled(**walls: Any) -> House:
        under = replace(house.survey.underfloor, segments=segments | walls)
        return replace(house, survey=replace(house.survey, underfloor=under))

    alone = at(walled(sg2=blank), "bolts-concrete")
    assert alone.demand == pytest.approx(max(bolt.worst_lb for bolt in told(walled(sg2=blank)).sills[0].bolts))
    halves = {"sg2": replace(blank, to_in=120.0), "sg2b": replace(segments["sg2"], from_in=120.0)}
    beside = at(walled(**halves), "bolts-concrete")
    assert beside.status == "cannot be checked"
    assert "where along sill K3 force comes down is not known" in beside.reason


def test_side_plates_spliced_to_a_piece_with_bolts_cannot_be_told() -> None:
    plate = SideplatePiece(line="line1", station_in=100.0, from_top_in=4.0, capacity_lb=3000.0, report="report 2")
    house = joined()
    bolts = tuple(p for p in house.alternatives[WORK].pieces.values() if getattr(p, "station_in", 999.0) > 192.0)
    link = at(with_pieces(house, plate, a_splice("line1", 192.0, 2000.0), *bolts), "bolts-concrete", "si1b", "line1")
    assert link.status == "cannot be checked"
    assert "side plates and is spliced" in link.reason


def test_bolts_at_one_place_share_as_one_and_break_nothing() -> None:
    house = weak(old=True)
    found = told(with_bolt(house, OLD[1], station_in=house.survey.underfloor.bolts[OLD[0]].station_in))
    first, second = found.sills[0].bolts
    assert first.elastic_lb == pytest.approx(second.elastic_lb)
    assert found.transfer_in is None


# ---- The law of the chain --------------------------------------------------------------------------------------------


@cache
def ladder() -> list[Link]:
    """The same bolts in ever stronger concrete."""
    return [at(with_pieces(weak(psi), PANEL, *row(6, 16.0)), "bolts-concrete") for psi in (600, 1200, 2400, 2500, 4000)]


def test_stronger_concrete_never_makes_it_worse() -> None:
    ratios = [link.ratio for link in ladder()]
    assert all(b <= a for a, b in pairwise(ratios) if a is not None and b is not None)
    assert None not in ratios


def test_a_strap_piece_keeps_its_give_in_the_file() -> None:
    assert SplicePiece(line="line1", station_in=1.0, give_in=0.05).give_in == 0.05


# ---- A real survey ---------------------------------------------------------------------------------------------------


def ferry_hill(stations: tuple[int, ...], hole: float | None) -> tuple[Link, LineShares]:
    """Sill M10 of Ferry Hill (75 in. on crumbling concrete, line L3) with other new bolts in it."""
    house = decode(FERRY_HILL.read_bytes(), FERRY_HILL.name)
    (key, alternative), *_ = house.alternatives.items()
    old = [
        (id, p) for id, p in alternative.pieces.items() if isinstance(p, BoltPiece) and p.mark in ("A9", "A10", "A11")
    ]
    pieces = {id: piece for id, piece in alternative.pieces.items() if id not in dict(old)}
    new = {f"close-{at}": replace(old[0][1], station_in=float(at), mark=f"C{at}", sill_hole_in=hole) for at in stations}
    changed = replace(alternative, pieces=pieces | new)
    study = run(replace(house, alternatives={key: changed}), ranges=False)
    assert study.runs[1].misplaced == ()
    (chain,) = [chain for chain in study.runs[1].chains if chain.mark == "L3"]
    (sill,) = [id for id, piece in house.survey.underfloor.sills.items() if piece.mark == "M10"]
    (told,) = [stage.shares for stage in chain.stages if stage.shares is not None]
    (link,) = [link for link in chain.links if link.address.endswith(f"bolts-concrete/{sill}/both")]
    return link, told


def test_close_bolts_in_filled_holes_are_what_ferry_hills_crumbling_concrete_can_bear() -> None:
    """Three bolts at two feet, six at a foot in plain holes, six at a foot in filled ones.

    More bolts alone do not help: with 1/16 in. of play one of them may take all of it, be they three or six.
    """
    wide, wide_shares = ferry_hill((100, 124, 160), None)
    plain, plain_shares = ferry_hill((100, 112, 124, 136, 148, 160), None)
    filled, filled_shares = ferry_hill((100, 112, 124, 136, 148, 160), 0.625)
    assert [link.status for link in (wide, plain, filled)] == ["fails", "fails", "indicated"]
    assert plain.demand == pytest.approx(wide.demand, rel=0.01)
    assert float(filled.ratio or 0) < 0.4 * float(plain.ratio or 0)
    works = [sill.works_elastic for found in (wide_shares, filled_shares) for sill in found.sills if sill.mark == "M10"]
    assert 2.5 < works[0] < 3
    assert 5 < works[1] < 6
    assert (
        filled_shares.why == "the concrete of C9 crumbles; the concrete of C11 crumbles; bolts stand closer than 16 in."
    )
    assert plain_shares.count == filled_shares.count == 8
