"""What the prescriptive way asks of sills and floors: bolts, sound wood, blocking, toenails, clips."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from groundsill.house.fact import Fact, measured, unknown
from groundsill.house.underfloor import Bolt, FloorConnection, SillPiece
from groundsill.work.document import House
from groundsill.work.pieces import BoltPiece, Piece, SideplatePiece, TiePiece
from tests.forces.reference_house import reference_house
from tests.loadpath.prescribed import (
    line_of,
    one,
    third_storey,
    with_lines,
    with_segments,
    with_under,
    with_work,
)
from tests.loadpath.two_storeys import two_storeys

# --- sills -----------------------------------------------------------------------------------------------------------


def bolts(*stations: float, **other: Any) -> dict[str, Piece]:
    told = {"diameter_in": 0.5, "embedment_in": 7.0} | other
    return {f"bo{n}": BoltPiece(line="front", station_in=at, **told) for n, at in enumerate(stations)}


EIGHT = (12.0, 78.0, 143.0, 208.0, 272.0, 338.0, 402.0, 468.0)


@pytest.mark.parametrize(
    ("pieces", "has", "answer", "said"),
    [
        (bolts(*EIGHT), 8, "meets", ""),
        (bolts(*EIGHT[:-1]), 7, "short", ""),
        (bolts(*EIGHT, diameter_in=0.375), 0, "short", "too thin"),
        (bolts(*EIGHT, plate_washer=False), 0, "short", "no plate washer"),
        (bolts(20.0, *EIGHT[1:]), 8, "short", "nearest its start stands 20 in."),
        (bolts(6.0, *EIGHT[1:]), 8, "short", "nearest its start stands 6 in."),
        (bolts(12.0, 143.0, 208.0, 240.0, 272.0, 338.0, 402.0, 468.0), 8, "short", "131 in. apart"),
        (bolts(*EIGHT, 86.0), 9, "short", "8 in. apart, 12 in. at least"),
    ],
)
def test_new_bolts_count_by_number_washer_and_place(pieces: dict[str, Piece], has: int, answer: str, said: str) -> None:
    found = [r for r in line_of(with_work(reference_house(), pieces)).requirements if r.key == "bolts"][1]
    assert (found.asked, found.has, found.outcome) == (8, has, answer)
    assert said in found.reason
    assert found.where == "sill si-front, 40'-0\""


OLD = Bolt(
    line="front", station_in=0.0, kind="cast-in", diameter_in=measured(0.5), nut=measured("tight"), washer="plate",
    rust=measured("none"),
)  # fmt: skip


@pytest.mark.parametrize(
    ("bolt", "answer", "said"),
    [
        (OLD, "meets", ""),
        (replace(OLD, washer="cut"), "short", "would count with a plate washer and a tight nut"),
        (replace(OLD, nut=measured("loose")), "short", "would count with a plate washer and a tight nut"),
        (replace(OLD, diameter_in=measured(0.375)), "short", "(0.375 in.)"),
        (replace(OLD, rust=measured("heavy")), "short", "(heavily rusted)"),
        (replace(OLD, kind="screw"), "short", "(screw anchor)"),
        (replace(OLD, washer="not seen"), "cannot tell", "not seen well enough"),
        (replace(OLD, kind="not seen"), "cannot tell", "not seen well enough"),
        (replace(OLD, rust=Fact(state="absent")), "meets", ""),
    ],
)
def test_old_bolts_count_where_they_are_sound_with_a_new_washer(bolt: Bolt, answer: str, said: str) -> None:
    old = {f"bt{n}": replace(bolt, station_in=at) for n, at in enumerate(EIGHT)}
    found = one(with_under(reference_house(), "bolts", old), "bolts")
    piece = [r for r in line_of(with_under(reference_house(), "bolts", old)).requirements if r.key == "bolts"][1]
    assert found.outcome == answer
    assert said in piece.reason


def test_old_bolts_count_beside_new_ones() -> None:
    old = {f"bt{n}": replace(OLD, station_in=at) for n, at in enumerate(EIGHT[:4])}
    house = with_work(with_under(reference_house(), "bolts", old), bolts(*EIGHT[4:]))
    assert one(house, "bolts").outcome == "meets"


def test_a_side_plate_counts_from_900_lb() -> None:
    def plates(capacity: float) -> House:
        pieces = {
            f"sp{n}": SideplatePiece(line="front", station_in=at, capacity_lb=capacity, from_top_in=4.0)
            for n, at in enumerate(EIGHT)
        }
        return with_work(reference_house(), pieces)

    assert one(plates(900), "bolts").outcome == "meets"
    weak = [r for r in line_of(plates(899)).requirements if r.key == "bolts"][1]
    assert (weak.outcome, weak.has) == ("short", 0)


def test_two_stories_take_half_inch_bolts_closer_and_three_none_of_them() -> None:
    house = with_segments(two_storeys(), height_in=measured(12.0))
    sill = SillPiece(line="line1", from_in=0.0, to_in=360.0, thickness_in=measured(1.5))
    house = with_under(
        house,
        "sills",
        dict.fromkeys([k for k, s in house.survey.underfloor.sills.items() if s.line == "line1"][:1], sill),
    )
    assert line_of(house, "line1").stories == 2
    assert one(house, "bolts", "line1").asked is not None
    tall = third_storey(house)
    least = next(r for r in line_of(tall, "line1").requirements if r.key == "bolts" and r.where)
    assert "bolts of 5/8 in, 48 in apart" in least.reason


def test_no_sill_surveyed_leaves_the_bolts_untold() -> None:
    house = reference_house()
    under = replace(house.survey.underfloor, sills={})
    found = one(replace(house, survey=replace(house.survey, underfloor=under)), "bolts")
    assert (found.outcome, found.asked) == ("cannot tell", None)


@pytest.mark.parametrize(
    ("condition", "answer"),
    [
        (measured("sound"), "meets"),
        (measured("soft"), "short"),
        (measured("decayed"), "short"),
        (unknown(), "cannot tell"),
    ],
)
def test_the_wood_of_the_sill_is_sound_or_is_replaced(condition: Fact[str], answer: str) -> None:
    sills = {id: replace(s, condition=condition) for id, s in reference_house().survey.underfloor.sills.items()}
    assert one(with_under(reference_house(), "sills", sills), "wood").outcome == answer


# --- floor -----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("joists", "rim", "answer"),
    [
        ("across", "rim joist", "meets"),
        ("across", "none", "short"),
        ("across", "blocking", "cannot tell"),
        ("across", "not seen", "cannot tell"),
        ("parallel", "rim joist", "meets"),
        ("parallel", "none", "short"),
        ("not seen", "rim joist", "cannot tell"),
    ],
)
def test_joists_are_kept_from_rolling(joists: str, rim: str, answer: str) -> None:
    house = with_lines(reference_house(), joists=joists, rim=rim)
    assert one(house, "blocking").outcome == answer
    tie = TiePiece(line="front", from_in=0.0, to_in=480.0, count=20, capacity_lb=500.0, adds_rim=True)
    assert one(with_work(house, {"t1": tie}), "blocking").outcome == "meets"


@pytest.mark.parametrize(
    ("connection", "answer"),
    [
        (FloorConnection(kind="toenails", nail="8d common", spacing_in=measured(6.0)), "meets"),
        (FloorConnection(kind="toenails", nail="8d common", spacing_in=measured(8.0)), "short"),
        (FloorConnection(kind="toenails", nail="8d common", spacing_in=Fact(state="absent")), "cannot tell"),
        (FloorConnection(kind="none"), "short"),
        (FloorConnection(), "cannot tell"),
    ],
)
def test_toenails_are_looked_at_in_houses_of_more_than_one_story(connection: FloorConnection, answer: str) -> None:
    fields = {"joists": "across", "rim": "rim joist", "floor_connection": connection}
    assert one(with_lines(reference_house(), **fields), "clips").outcome == "does not apply"
    house = with_lines(with_segments(two_storeys(), height_in=measured(20.0)), **fields)
    assert one(house, "clips", "line1").outcome == answer
    tie = TiePiece(line="line1", from_in=0.0, to_in=360.0, count=15, capacity_lb=450.0)
    assert one(with_work(house, {"t1": tie}), "clips", "line1").outcome == "meets"
    few = replace(tie, count=14)
    assert one(with_work(house, {"t1": few}), "clips", "line1").outcome in (answer, "short")
