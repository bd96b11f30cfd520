"""Work laid on the house: each piece counts where it stands, and one whose place is gone is reported, never dropped."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from groundsill.forces.reading import Reading
from groundsill.house.underfloor import VentOpening
from groundsill.loadpath.case import pieces_on
from groundsill.study import run
from groundsill.work.apply import apply
from groundsill.work.document import House
from groundsill.work.pieces import BoltPiece, PanelPiece, TiePiece
from tests.loadpath.asking import chain_named, links_in, run_named, stage_of, study_of
from tests.loadpath.houses import known_house, with_pieces


def changed(house: House, collection: str, change: Callable[[dict[str, Any]], dict[str, Any]]) -> House:
    """The house with one collection under the floor changed."""
    under = house.survey.underfloor
    under = replace(under, **{collection: change(dict(getattr(under, collection)))})
    return replace(house, survey=replace(house.survey, underfloor=under))


def without(*ids: str) -> Callable[[dict[str, Any]], dict[str, Any]]:
    return lambda things: {id: thing for id, thing in things.items() if id not in ids}


def lost(house: House) -> dict[str, str]:
    """Pieces of the strengthening that have no place, with the reason."""
    found = run_named(run(house, ranges=False), "strengthen")
    return {piece.id: piece.reason for piece in found.misplaced}


def test_a_house_where_everything_fits_reports_nothing() -> None:
    assert lost(known_house()) == {}


def test_a_panel_whose_wall_is_gone_is_reported_with_its_blocking_and_hold_downs() -> None:
    house = changed(known_house(), "segments", without("sg2"))
    found = lost(house)
    assert set(found) == {"pn21", "pn22", "bk21", "bk22", "hd-0", "hd-1"}
    assert all("sg2" in reason for reason in found.values())


def test_a_bolt_without_a_sill_is_reported() -> None:
    house = changed(known_house(), "sills", without("si1b"))
    found = lost(house)
    assert {key for key in found if key.startswith("nb-")} == {"nb-line1-3", "nb-line1-4", "nb-line1-5"}
    assert all("sill" in found[key] for key in found if key.startswith("nb-"))


def test_a_piece_that_is_reported_counts_in_no_link() -> None:
    house = changed(known_house(), "sills", without("si1b"))
    found = run(house, ranges=False)
    bolts = ("strengthen", "line/line1/sill-bolts/si1a/both")
    assert links_in(found)[bolts].capacity == links_in(study_of("known"))[bolts].capacity
    assert not any(link.scope_id == "si1b" for link in links_in(found).values())


def test_pieces_on_a_line_that_is_gone_are_all_reported() -> None:
    def cut(house: House) -> House:
        for collection in ("segments", "sills", "bolts", "splices", "headroom", "ledgers"):
            house = changed(house, collection, lambda things: {k: t for k, t in things.items() if t.line != "line4"})
        base = house.survey.foundation
        stems = {k: s for k, s in base.segments.items() if s.line != "line4"}
        tests = {k: t for k, t in base.tests.items() if t.segment in stems}
        house = replace(
            house, survey=replace(house.survey, foundation=replace(base, segments=stems, tests=tests), observations={})
        )
        return changed(house, "lines", without("line4"))

    gone = lost(cut(known_house()))
    expected = {
        key for key in known_house().alternatives["strengthen"].pieces if "line4" in key or key in ("pn41", "pn42")
    }
    assert set(gone) == expected
    assert all(gone.values())


def test_a_vent_cut_through_a_panel_is_reported() -> None:
    vent = VentOpening(mark="O9", line="line1", from_in=40.0, to_in=56.0, bottom_in=4.0, top_in=12.0)
    house = changed(known_house(), "openings", lambda things: things | {"vent9": vent})
    assert set(lost(house)) == {"pn11"}
    assert "O9" in lost(house)["pn11"]


def test_each_state_reports_its_own_pieces_only() -> None:
    house = changed(known_house(), "segments", without("sg2"))
    study = run(house, ranges=False)
    assert run_named(study, "as-found").misplaced == ()
    assert run_named(study, "leave").misplaced == ()


def test_every_piece_stands_on_one_line_and_no_other() -> None:
    house = known_house()
    pieces = apply(house, "strengthen").pieces
    reading = Reading(house)
    found = {line: {id for id, _ in pieces_on(reading, line, pieces)} for line in house.survey.underfloor.lines}
    assert sum(len(ids) for ids in found.values()) == len(pieces)
    assert set().union(*found.values()) == {id for id, _ in pieces}
    assert {"pn11", "pn12", "ti-line1"} < found["line1"]
    assert {"pn21", "bk21", "hd-0", "nb-line2-0"} < found["line2"]
    assert found["line5"] == set()


@pytest.mark.parametrize("line", ["line1", "line2", "line3", "line4"])
def test_work_on_one_line_leaves_every_other_line_as_it_was(line: str) -> None:
    def thicker(_: str, piece: Any) -> Any:
        if isinstance(piece, BoltPiece) and piece.line == line:
            return replace(piece, diameter_in=0.75)
        return replace(piece, count=20) if isinstance(piece, TiePiece) and piece.line == line else piece

    before, after = study_of("known"), run(with_pieces(known_house(), "strengthen", thicker), ranges=False)
    for other in {"line1", "line2", "line3", "line4"} - {line}:
        assert chain_named(after, "strengthen", other) == chain_named(before, "strengthen", other)
    assert chain_named(after, "strengthen", line) != chain_named(before, "strengthen", line)
    assert run_named(after, "as-found") == run_named(before, "as-found")


def test_with_panels_in_a_line_its_old_boards_no_longer_count() -> None:
    for link in chain_named(study_of("known"), "strengthen", "line1").links:
        if stage_of(link) == "sheathing":
            assert "panel" in link.title
    bare = with_pieces(known_house(), "strengthen", lambda _, p: None if isinstance(p, PanelPiece) else p)
    for link in chain_named(run(bare, ranges=False), "strengthen", "line1").links:
        if stage_of(link) == "sheathing":
            assert "lumber" in link.title


def test_new_bolts_count_alone_and_say_which_old_ones_they_leave_out() -> None:
    (link,) = [
        link for link in chain_named(study_of("known"), "strengthen", "line1").links
        if link.address == "line/line1/sill-bolts/si1a/both"
    ]  # fmt: skip
    assert "A1" in link.reason
    only_new = changed(known_house(), "bolts", without("bt1"))
    (alone,) = [
        link for link in chain_named(run(only_new, ranges=False), "strengthen", "line1").links
        if link.address == "line/line1/sill-bolts/si1a/both"
    ]  # fmt: skip
    assert alone.capacity == link.capacity


def test_a_line_is_shared_out_whole_or_more_never_less() -> None:
    """Where two ways of sharing apply each part takes the worse, so the parts may add up to more than the force."""
    for state in ("as-found", "strengthen"):
        for line in ("line1", "line2", "line3", "line4"):
            chain = chain_named(study_of("known"), state, line)
            sills = [link for link in chain.links if stage_of(link) == "sill-bolts"]
            total = sum(link.demand or 0.0 for link in sills)
            allowable = 0.7 * 1.3 * chain.force_lb
            assert total >= allowable * (1 - 1e-9)
            if line != "line3":  # all parts alike: exactly the force
                assert total == pytest.approx(allowable)


def test_openings_cut_a_wall_into_parts_that_are_checked_apart() -> None:
    vent = VentOpening(mark="O9", line="line2", from_in=100.0, to_in=116.0, bottom_in=4.0, top_in=12.0)
    house = changed(known_house(), "openings", lambda things: things | {"vent9": vent})
    chain = chain_named(run(house, ranges=False), "as-found", "line2")
    parts = [link for link in chain.links if stage_of(link) == "sheathing"]
    assert len(parts) == 2
    assert {link.scope_id for link in parts} == {"sg2"}
    for part in parts:  # the wall less its opening takes the line's force, evenly
        assert part.demand == pytest.approx(0.7 * 1.3 * chain.force_lb / (224 / 12))


@pytest.mark.parametrize(("kept", "held", "free"), [("hd-0", "+", "-"), ("hd-1", "-", "+")])
def test_a_hold_down_at_one_end_holds_when_the_wall_is_pushed_toward_the_other(kept: str, held: str, free: str) -> None:
    """Plus is toward the end of the line: it lifts the start, where hold-down H0 stands."""
    house = with_pieces(known_house(), "strengthen", lambda id_, p: p if id_ == kept or "hd" not in id_ else None)
    choices = replace(house.choices, storeys_above="not counted", storeys_above_reason="a test")
    found = links_in(run(replace(house, choices=choices), ranges=False))
    with_it, without_it = (found[("strengthen", f"line/line2/overturning/pn21/{way}")] for way in (held, free))
    assert with_it.demand == without_it.demand
    assert with_it.capacity is not None
    assert without_it.capacity is not None
    assert with_it.capacity > without_it.capacity + 1000.0
    assert (with_it.direction, without_it.direction) == (held, free)


def test_a_panel_finds_no_face_to_nail_to_on_a_sill_cast_into_the_concrete() -> None:
    house = known_house()
    under = house.survey.underfloor
    under = replace(under, sills=under.sills | {"si4": replace(under.sills["si4"], cast_in=True)})
    found = links_in(run(replace(house, survey=replace(house.survey, underfloor=under)), ranges=False))
    link = found["strengthen", "line/line4/nailing-sill/pn41/both"]
    assert (link.status, link.capacity) == ("fails", 0.0)
    assert "blocking on it would take the panel" in link.reason
