"""Clips and straps as generic hardware, by their report, or by a load with none; and nails in damp wood."""

from __future__ import annotations

from dataclasses import replace
from math import hypot
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.house.fact import Fact, measured
from groundsill.house.underfloor import FloorConnection, PlateSplice
from groundsill.loadpath.chain import Link
from groundsill.loadpath.hardware import AS_ENTERED
from groundsill.standards.aisi_s100_16.tension import strap
from groundsill.standards.nds_2018.nails import nail_steel_plate, toenail
from groundsill.study import working
from groundsill.work.document import House
from groundsill.work.pieces import Hardware, Piece, SplicePiece, StrapPiece, TiePiece
from tests.loadpath.bolting import FIR, WORK, links, sound_house, with_pieces, with_sill
from tests.loadpath.houses import BOARDS

LINE = "line1"
FEW = settings(max_examples=20, deadline=None)


def house(damp: Fact[bool] | None = None, **line: Any) -> House:
    """The sound house with joists and plates of known wood, boards on the first wall of line 1, a butt joint beyond."""
    made = sound_house()
    under = made.survey.underfloor
    joists = {
        key: replace(field, species=measured(FIR), breadth_in=measured(1.625), boards="diagonal boards")
        for key, field in under.joists.items()
    }
    plate = replace(
        under.lines[LINE].top_plate, layers=2, thickness_in=measured(1.5), width_in=measured(3.5), species=measured(FIR)
    )
    plate = replace(plate, damp=damp or measured(False))
    old = replace(under.lines[LINE], joists="across", rim="rim joist", top_plate=plate, **line)
    joint = PlateSplice(mark="J1", line=LINE, station_in=180.0, kind="butt")
    boards = replace(under.segments["sg1a"].outside, material=BOARDS, condition=measured("sound"))
    walls = {**under.segments, "sg1a": replace(under.segments["sg1a"], outside=boards)}
    lines = {**under.lines, LINE: old}
    under = replace(under, joists=joists, lines=lines, segments=walls, splices={"j1": joint})
    return replace(made, survey=replace(made.survey, underfloor=under))


def clips(count: int = 20, **changes: Any) -> TiePiece:
    """Twenty clips of 18 gage steel, three 8d nails each way."""
    steel: dict[str, Any] = {
        "thickness_in": 0.048, "width_in": 4.0, "nail": "8d common", "nails": 3, "spacing_in": 1.25, "lever_in": 1.5,
    }  # fmt: skip
    plain: dict[str, Any] = {"made_of": Hardware(**(steel | changes.pop("made_of", {})))}
    return TiePiece(mark="T1", line=LINE, from_in=0.0, to_in=360.0, count=count, **(plain | changes))


def a_strap(**changes: Any) -> StrapPiece:
    """A strap of 16 gage steel over the joint, ten 10d nails each side."""
    steel: dict[str, Any] = {"thickness_in": 0.06, "width_in": 1.25, "nail": "10d common", "nails": 10, "across": 2}
    plain: dict[str, Any] = {"made_of": Hardware(**(steel | changes.pop("made_of", {})))}
    return StrapPiece(mark="M1", line=LINE, from_in=160.0, to_in=200.0, **(plain | changes))


def found(key: str, *pieces: Piece, of: House | None = None) -> Link:
    return links(with_pieces(of or house(), *pieces), LINE, work=True)[key]


FLOOR, JOINT = f"floor-to-plate/{LINE}/both", "plate-splices/j1/both"


def held(link: Link) -> float:
    assert link.capacity is not None, link.reason
    return link.capacity


# --- by hand ---------------------------------------------------------------------------------------------------------


def test_a_clip_is_worth_its_end_nail_under_force_and_couple() -> None:
    """Three nails 1.25 in. apart, the force 1.5 in. beside them; 8d through 18 gage into 1-5/8 in. of rim."""
    one = 1.6 * float(nail_steel_plate("8d common", 0.048, FIR, 1.625).Z)
    end = hypot(1 / 3, 1.5 * 1.25 / (2 * 1.25**2))
    link = found(FLOOR, clips())
    assert held(link) == pytest.approx(20 * one / end, rel=1e-9)
    assert link.clause == "NDS 2018 12.3.1, 11.3; AISI S100-16 chapters F, G"
    assert "3 8d common nails each side, 0.048 x 4 in. A653 SS Grade 33: governed by its nails" in link.reason
    assert link.extension == ""


def test_a_strap_is_worth_its_nails_on_one_side_or_its_net_section() -> None:
    one = 1.6 * float(nail_steel_plate("10d common", 0.06, FIR, 3.0).Z)
    assert held(found(JOINT, a_strap())) == pytest.approx(min(10 * one, float(strap(1.25, 0.06, 2.0, 0.148).T)))
    few = found(JOINT, a_strap(made_of={"nails": 4}))
    assert held(few) == pytest.approx(4 * one)
    assert "governed by its nails" in few.reason
    many = found(JOINT, a_strap(made_of={"nails": 30}))
    assert held(many) == pytest.approx(float(strap(1.25, 0.06, 2.0, 0.148).T))
    assert "governed by its steel" in many.reason


def test_a_splice_of_the_sill_may_be_plain_steel_too() -> None:
    steel = Hardware(thickness_in=0.06, width_in=1.25, nail="8d common", nails=12)
    splice = SplicePiece(mark="K", line=LINE, station_in=192.0, member="sill", made_of=steel)
    link = found("sill-joints/si1a/both", splice)
    one = 1.6 * float(nail_steel_plate("8d common", 0.06, FIR, 1.5).Z)
    if link.status != "does not apply":
        assert held(link) == pytest.approx(min(12 * one, float(strap(1.25, 0.06, 1.0, 0.131).T)))


# --- reports ---------------------------------------------------------------------------------------------------------


def test_an_entered_load_counts_fully_only_with_its_report() -> None:
    told = found(FLOOR, clips(capacity_lb=2000.0, report="report 8"))
    bare = found(FLOOR, clips(capacity_lb=2000.0))
    assert held(told) == held(bare) == 40000.0
    assert (told.status, told.extension) == ("passes", "")
    assert (bare.status, bare.extension) == ("indicated", AS_ENTERED)
    assert found(JOINT, a_strap(capacity_lb=50000.0)).status == "indicated"
    assert found(JOINT, a_strap(capacity_lb=50000.0, report="report 9")).status == "passes"


def test_with_neither_report_nor_steel_it_cannot_be_checked() -> None:
    for key, piece in ((FLOOR, clips(made_of={}, capacity_lb=None)), (JOINT, a_strap())):
        link = found(key, replace(piece, made_of=None))
        assert link.status == "cannot be checked"
        assert "neither its evaluation report nor its steel and nails are given" in link.reason


def test_old_clips_without_a_report_are_only_indicated() -> None:
    old = FloorConnection(kind="clips", spacing_in=measured(16.0), capacity_lb=measured(5000.0))
    assert found(FLOOR, of=house(floor_connection=old)).status == "indicated"
    assert found(FLOOR, of=house(floor_connection=replace(old, report="report 1"))).status == "passes"


# --- limits ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("steel", "words"),
    [
        ({"nail": "6d common", "thickness_in": 0.2, "nails": 40}, "row of holes must lie within the plate"),
        ({"nails": 1}, "one fastener holds no couple"),
        ({"nail": "9d"}, "no row '9d'"),
        ({"spacing_in": 3.0}, "row of holes must lie within the plate"),
    ],
)
def test_a_clip_outside_its_rules_says_why(steel: dict[str, Any], words: str) -> None:
    link = found(FLOOR, clips(made_of=steel))
    assert link.status == "cannot be checked"
    assert words in link.reason


def test_nails_reach_no_deeper_than_the_wood_is_thick() -> None:
    made = house()
    under = made.survey.underfloor
    thin = {key: replace(field, breadth_in=measured(0.8)) for key, field in under.joists.items()}
    shallow = replace(made, survey=replace(made.survey, underfloor=replace(under, joists=thin)))
    assert held(found(FLOOR, clips(), of=shallow)) < held(found(FLOOR, clips()))
    thin = {key: replace(field, breadth_in=measured(0.75)) for key, field in under.joists.items()}
    too = replace(made, survey=replace(made.survey, underfloor=replace(under, joists=thin)))
    assert "must be at least 6 D" in found(FLOOR, clips(), of=too).reason
    unknown = {key: replace(field, breadth_in=Fact(state="unknown")) for key, field in under.joists.items()}
    lost = replace(made, survey=replace(made.survey, underfloor=replace(under, joists=unknown)))
    link = found(FLOOR, clips(), of=lost)
    assert link.status == "cannot be checked"
    assert "how deep nails may go into the rim or blocking is not known" in link.reason


# --- damp ------------------------------------------------------------------------------------------------------------


TOENAILS = FloorConnection(kind="toenails", nail="8d common", spacing_in=measured(12.0))
LAP = PlateSplice(mark="J1", line=LINE, station_in=180.0, kind="lap", nail="16d common", nails_each_side=measured(8.0))


def lapped(made: House) -> House:
    under = replace(made.survey.underfloor, splices={"j1": LAP})
    return replace(made, survey=replace(made.survey, underfloor=under))


@pytest.mark.parametrize(
    ("key", "pieces", "made"),
    [
        (FLOOR, (), lambda damp: house(damp, floor_connection=TOENAILS)),
        (FLOOR, (clips(),), house),
        (JOINT, (a_strap(made_of={"nails": 4}),), house),
        (JOINT, (), lambda damp: lapped(house(damp))),
    ],
    ids=["toenails", "clips", "strap", "lap"],
)
def test_in_a_damp_plate_every_nail_is_worth_seven_tenths(key: str, pieces: tuple[Piece, ...], made: Any) -> None:
    dry, wet = (held(found(key, *pieces, of=made(measured(damp)))) for damp in (False, True))
    assert wet == pytest.approx(0.7 * dry)


def test_toenails_into_a_damp_sill_where_the_joists_stand_on_it() -> None:
    made = house(floor_connection=TOENAILS)
    line = made.survey.underfloor.lines[LINE]
    low = replace(line, top_plate=replace(line.top_plate, layers=0))
    under = replace(made.survey.underfloor, lines={**made.survey.underfloor.lines, LINE: low})
    made = replace(made, survey=replace(made.survey, underfloor=under))
    dry = held(found(FLOOR, of=made))
    damp = with_sill(made, "si1a", damp=measured(True))
    assert held(found(FLOOR, of=damp)) == pytest.approx(0.7 * dry)
    soft = with_sill(made, "si1b", species=measured("Redwood"))
    one = [float(toenail("8d common", FIR, species, t_m=1.5).Z) for species in (FIR, "Redwood")]
    assert held(found(FLOOR, of=soft)) / dry == pytest.approx(one[1] / one[0])


# --- laws ------------------------------------------------------------------------------------------------------------


@FEW
@given(nails=st.integers(2, 5), more=st.integers(0, 3), lever=st.floats(0.0, 4.0))
def test_more_nails_in_a_clip_never_hold_less(nails: int, more: int, lever: float) -> None:
    wide = {"width_in": 12.0, "lever_in": lever, "thickness_in": 0.12}
    few, many = (held(found(FLOOR, clips(made_of={"nails": n, **wide}))) for n in (nails, nails + more))
    assert many >= few * (1 - 1e-9)


@FEW
@given(lever=st.floats(0.0, 4.0), more=st.floats(0.0, 4.0))
def test_a_force_that_passes_farther_off_is_never_held_better(lever: float, more: float) -> None:
    near, far = (held(found(FLOOR, clips(made_of={"lever_in": e}))) for e in (lever, lever + more))
    assert far <= near * (1 + 1e-9)


@FEW
@given(w=st.floats(1.0, 3.0), t=st.floats(0.03, 0.2), k=st.floats(1.0, 1.5))
def test_more_steel_in_a_strap_never_holds_less(w: float, t: float, k: float) -> None:
    def of(width: float) -> float:
        return held(found(JOINT, a_strap(made_of={"width_in": width, "thickness_in": t})))

    assert of(w * k) >= of(w) * (1 - 1e-9)


def test_the_working_shows_nails_steel_and_the_couple() -> None:
    sheet = working(with_pieces(house(), clips(), a_strap()), WORK)
    floor = [step.title for step in sheet.under(f"line/{LINE}/floor-to-plate/{LINE}/both")]
    assert "Force on the end fastener of a row pushed along itself from beside it" in floor
    assert "Allowable moment of a plate in its plane" in floor
    assert "Strap in tension" in [step.title for step in sheet.under(f"line/{LINE}/plate-splices/j1/both")]
