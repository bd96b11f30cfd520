"""A panel laid as a perforated wall: openings with no framing for force, hold-downs at its two ends alone.

The wall of the right line is 2 ft high. Laid from 24 to 216 in. with a vent of 16 by 10 in. at 90 and an access of 24
by 20 in. at 150, it has full-height parts of 66, 44 and 42 in.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from groundsill.house.fact import Fact, measured
from groundsill.house.underfloor import PlateSplice, VentOpening
from groundsill.loadpath.chain import Link
from groundsill.study import working
from groundsill.work.apply import apply
from groundsill.work.document import Basis, House
from groundsill.work.pieces import PanelPiece, SplicePiece
from tests.loadpath.bolting import (
    WORK,
    a_bolt,
    a_hold_down,
    a_new_bolt,
    a_panel,
    links,
    sound_house,
    with_bolts,
    with_break,
    with_choices,
    with_pieces,
    with_sill,
    with_stem,
)
from tests.loadpath.test_overturning import with_studs

EDITIONS = ("sdpws-2015", "sdpws-2021")
WALL = "piece-0"
LENGTH_FT, COUNTED_FT, HEIGHT_FT = 16.0, 152 / 12, 2.0
OPEN_FT2 = 16 / 12 * 10 / 12 + 2.0 * 20 / 12  # both higher than a third of the wall
C_O = LENGTH_FT * HEIGHT_FT / (3 * OPEN_FT2 + COUNTED_FT * HEIGHT_FT)
BOLTS = (40.0, 72.0, 124.0, 186.0, 206.0)


def a_vent(**changes: Any) -> VentOpening:
    plain: dict[str, Any] = {"mark": "V1", "from_in": 90.0, "to_in": 106.0, "bottom_in": 10.0, "top_in": 20.0}
    return VentOpening(line="line2", **(plain | changes))


ACCESS = a_vent(mark="A1", kind="access", from_in=150.0, to_in=174.0, bottom_in=0.0)


@cache
def plain(edition: str = "sdpws-2015") -> House:
    house = with_choices(sound_house(), storeys_above="not counted", storeys_above_reason="a test")
    house = with_studs(house, thickness_in=measured(2.0), depth_in=measured(4.0), spacing_in=measured(16.0))
    house = with_sill(
        house, "si2", width_in=measured(6.0), damp=measured(False), condition=measured("sound"),
        projects_inside_in=measured(0.0),
    )  # fmt: skip
    house = with_openings(house, a_vent(), ACCESS)
    return replace(house, basis=Basis(code="ibc-2021")) if edition == "sdpws-2021" else house


def with_openings(house: House, *openings: VentOpening) -> House:
    named = {f"o{n}": opening for n, opening in enumerate(openings)}
    return replace(house, survey=replace(house.survey, underfloor=replace(house.survey.underfloor, openings=named)))


def a_wall(**changes: Any) -> PanelPiece:
    return replace(a_panel("sg2", 24.0, 216.0), **({"around_openings": "perforated wall"} | changes))


def of_wall(house: House, wall: PanelPiece | None = None, *pieces: Any) -> dict[str, Link]:
    """The links of the right line with the wall laid on it, its bolts and what else is given."""
    bolts = [a_new_bolt("line2", station, to_sheathing_in=1.75) for station in BOLTS]
    return links(with_pieces(house, wall or a_wall(), *(pieces or bolts)), "line2", work=True)


def number(value: float | None) -> float:
    assert value is not None
    return value


@cache
def force(edition: str = "sdpws-2015") -> float:
    """Allowable force on the line: what one panel without openings would share over its length."""
    whole = of_wall(with_openings(plain(edition)), a_panel("sg2", 24.0, 216.0))
    return number(whole[f"sheathing/{WALL}/both"].demand) * LENGTH_FT


# --- the wall itself -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("edition", EDITIONS)
def test_the_unit_shear_is_the_force_over_what_counts_times_the_factor(edition: str) -> None:
    link = of_wall(plain(edition))[f"sheathing/{WALL}/both"]
    assert number(link.demand) == pytest.approx(force(edition) / (C_O * COUNTED_FT))
    assert number(link.capacity) == pytest.approx(380.0, abs=0.5)
    assert f"a perforated wall with 2 openings: C_o = {C_O:.2f}, 12.7 of 16.0 ft count" in link.reason


@pytest.mark.parametrize("edition", EDITIONS)
def test_slender_parts_lose_length_and_the_later_edition_keeps_them_in_the_factor(edition: str) -> None:
    """A part of 10 in. in a wall of 24 in. is 2.4 times as high as long: 10 x 20/24 = 8.33 in. of it count."""
    house = with_openings(
        plain(edition), a_vent(from_in=90.0, to_in=140.0), replace(ACCESS, from_in=150.0, to_in=174.0)
    )
    full, counted = (66 + 10 + 42) / 12, (66 + 10 * 20 / 24 + 42) / 12
    area = 50 / 12 * 10 / 12 + 2.0 * 20 / 12
    in_factor = full if edition == "sdpws-2021" else counted
    C_o = 32 / (3 * area + in_factor * 2) if edition == "sdpws-2021" else _of_2015(area, counted)
    link = of_wall(house)[f"sheathing/{WALL}/both"]
    assert number(link.demand) == pytest.approx(force(edition) / (C_o * counted))


def _of_2015(area: float, counted: float) -> float:
    r = 1 / (1 + area / (2 * counted))
    return min(1.0, r / (3 - 2 * r) * 16 / counted)


def test_a_part_too_slender_counts_for_nothing() -> None:
    house = with_openings(plain(), a_vent(from_in=90.0, to_in=144.0), ACCESS)  # 6 in. between: 4 times as high as long
    area = 54 / 12 * 10 / 12 + 2.0 * 20 / 12
    link = of_wall(house)[f"sheathing/{WALL}/both"]
    assert number(link.demand) == pytest.approx(force() / (_of_2015(area, 9.0) * 9.0))


def test_bare_above_and_below_its_openings_are_as_high_as_the_wall() -> None:
    link = of_wall(plain(), a_wall(around_openings="perforated wall, bare above and below"))[f"sheathing/{WALL}/both"]
    area = (16 + 24) / 12 * 2.0
    assert number(link.demand) == pytest.approx(force() / (_of_2015(area, COUNTED_FT) * COUNTED_FT))
    assert "bare over and under its openings" in link.reason


def test_with_no_opening_it_is_a_plain_panel_and_larger_openings_never_help() -> None:
    shears = []
    for wide in (0.0, 8.0, 16.0, 24.0, 36.0):
        opening = (a_vent(to_in=90.0 + wide),) if wide else ()
        shears.append(number(of_wall(with_openings(plain(), *opening))[f"sheathing/{WALL}/both"].demand))
    assert shears[0] == pytest.approx(force() / LENGTH_FT)
    assert shears == sorted(shears)


@pytest.mark.parametrize(
    ("house", "words"),
    [
        (
            lambda: with_openings(plain(), a_vent(from_in=20.0, to_in=40.0)),
            "at the start of panel P-sg2 in S3 stands an opening",
        ),
        (
            lambda: with_openings(plain(), a_vent(from_in=30.0, to_in=50.0)),
            "stands a part 6 in. long; a full-height part 6.9 in. long or more",
        ),
        (
            lambda: with_openings(plain(), a_vent(from_in=190.0, to_in=216.0)),
            "at the end of panel P-sg2 in S3 stands an opening",
        ),
        (
            lambda: with_break(plain(), "line2", 120.0, "step"),
            "the foundation steps at 120 in. under panel P-sg2 in S3",
        ),
    ],
)  # fmt: skip
def test_what_the_standard_asks_of_the_wall_is_enforced(house: Any, words: str) -> None:
    link = of_wall(house())[f"sheathing/{WALL}/both"]
    assert link.status == "cannot be checked"
    assert words in link.reason
    assert "4.3.5.3" in link.reason


def test_an_opening_of_unknown_height_and_a_panel_on_the_other_face_leave_it_open() -> None:
    unknown = of_wall(with_openings(plain(), a_vent(bottom_in=0.0, top_in=0.0)))
    assert "how high vent V1 reaches was not told" in unknown[f"sheathing/{WALL}/both"].reason
    other = a_panel("sg2", 24.0, 80.0)
    both = of_wall(plain(), None, replace(other, mark="P2", face="outside"))
    assert "panel P2 is on the other face of it" in both[f"sheathing/{WALL}/both"].reason


def test_a_panel_laid_around_openings_keeps_its_place_and_others_do_not() -> None:
    assert not apply(with_pieces(plain(), a_wall()), WORK).misplaced
    (out,) = apply(with_pieces(plain(), a_panel("sg2", 24.0, 216.0)), WORK).misplaced
    assert "opens the wall" in out.reason


# --- what it hands on ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("edition", EDITIONS)
def test_its_ends_are_pulled_by_the_height_over_what_counts(edition: str) -> None:
    """The lever arm is C_o times the sum of the parts, so that without dead load T = V h / (C_o sum L_i)."""
    downs = [a_hold_down("sg2", station) for station in (26.0, 214.0)]
    link = of_wall(plain(edition), None, *downs)[f"overturning/{WALL}/+"]
    assert number(link.demand) == pytest.approx(force(edition) * HEIGHT_FT)
    arm = C_O * COUNTED_FT
    bare = of_wall(plain(edition), None)[f"overturning/{WALL}/+"]
    held, alone = number(link.capacity), number(bare.capacity)
    assert held - alone == pytest.approx(6000.0 * arm, rel=0.01)
    lines = " ".join(str(step) for step in working(with_pieces(plain(edition), a_wall(), *downs), WORK).steps)
    assert "C_o ΣL_i, the lever arm of a perforated wall" in lines


def test_dead_load_holds_it_no_more_than_by_the_walls_own_arms() -> None:
    """Tension off by dead load: f_D w_D b x_D over the wall's own arm, not over the shorter one of the standard."""
    around, whole = (
        of_wall(house, wall)[f"overturning/{WALL}/+"]
        for house, wall in ((plain(), None), (with_openings(plain()), a_panel("sg2", 24.0, 216.0)))
    )
    wall_arm = LENGTH_FT - 2 * 2.0 / 24
    assert number(around.capacity) == pytest.approx(number(whole.capacity) * C_O * COUNTED_FT / wall_arm)


def test_every_end_of_every_part_is_pressed() -> None:
    found = of_wall(plain())
    posts = [key for key in found if key.startswith("overturning/") and key.endswith("-post")]
    assert len(posts) == 6
    pushed = force() * HEIGHT_FT / (C_O * COUNTED_FT)
    outer = number(found["overturning/piece-0.3/+-post"].demand)
    beside = number(found["overturning/piece-0.2/+-post"].demand)
    assert pushed < outer < beside  # half of the access comes down beside it
    narrow = with_openings(plain(), a_vent(), replace(ACCESS, to_in=152.0))
    assert number(of_wall(narrow)["overturning/piece-0.2/+-post"].demand) < beside


def test_the_sill_bolts_carry_the_greatest_unit_shear_along_the_parts() -> None:
    link = of_wall(plain())["sill-bolts/si2/both"]
    assert number(link.demand) == pytest.approx(force() / C_O, rel=1e-6)


@pytest.mark.parametrize("edition", EDITIONS)
def test_the_plate_is_held_down_along_every_part_for_its_unit_shear(edition: str) -> None:
    found = of_wall(plain(edition))
    t = force(edition) / (C_O * COUNTED_FT)
    for n, (long, bolts) in enumerate(((66, 2), (44, 1), (42, 2)), start=1):
        link = found[f"plate-uplift/{WALL}.{n}/both"]
        assert number(link.demand) == pytest.approx(t * long / 12 / bolts)
        assert "4.3.6.4.2.1; NDS 2018 3.10.2" in link.clause
        assert number(link.capacity) == pytest.approx((9 - 0.7854 * 0.6875**2) * 625 * 3.375 / 3)


def test_a_part_without_a_bolt_is_not_held_down() -> None:
    found = of_wall(plain(), None, *(a_new_bolt("line2", s, to_sheathing_in=1.75) for s in (40.0, 72.0, 186.0)))
    link = found[f"plate-uplift/{WALL}.2/both"]
    assert link.status == "fails"
    assert "no bolt that counts stands in it" in link.reason


def test_washers_that_are_not_plates_and_soft_sills_leave_it_open() -> None:
    cut = of_wall(plain(), None, *(a_new_bolt("line2", s, plate_washer=False) for s in BOLTS))
    assert "no plate washer on A40, A72" in cut[f"plate-uplift/{WALL}.1/both"].reason
    assert cut[f"plate-uplift/{WALL}.1/both"].status == "cannot be checked"


def test_tension_is_asked_at_overstrength_and_held_by_steel_or_concrete() -> None:
    found = of_wall(plain())
    tension, shear = found[f"plate-uplift/{WALL}.1-tension/both"], found["bolts-concrete/si2/both"]
    uplift = found[f"plate-uplift/{WALL}.1/both"]
    assert number(tension.demand) / number(uplift.demand) == pytest.approx(number(shear.demand) * 5 * C_O / force())
    assert "for the overstrength force (17.10.5)" in tension.reason
    assert tension.extension == "an anchor set afterwards in old concrete, until it is tested in place"
    both = found[f"plate-uplift/{WALL}.1-together/both"]
    assert number(both.demand) == pytest.approx((number(tension.ratio) + number(shear.ratio)) / 1.2)
    assert both.clause == "ACI 318-19 17.8"


def test_close_bolts_pull_one_cone() -> None:
    near = of_wall(plain(), None, *(a_new_bolt("line2", s, to_sheathing_in=1.75) for s in (40.0, 50.0, 124.0, 186.0)))
    far = of_wall(plain(), None, *(a_new_bolt("line2", s, to_sheathing_in=1.75) for s in (40.0, 72.0, 124.0, 186.0)))
    key = f"plate-uplift/{WALL}.1-tension/both"
    assert number(near[key].capacity) < number(far[key].capacity)


@pytest.mark.parametrize(
    ("house", "bolt", "clause", "words"),
    [
        (lambda: with_stem(plain(), "fs2", material="brick"), {}, "TMS 402", "no tension is counted in it"),
        (
            lambda: with_stem(plain(), "fs2", top_width_in=Fact(state="absent")),
            {}, "17.6.1", "the width of the concrete is not known",
        ),
        (plain, {"report": ""}, "17.6.3, 17.6.5", "has no report, and bond and pullout are by that"),
        (plain, {"edge_in": None}, "17.6.1", "how far it stands from the face is not known"),
    ],
)  # fmt: skip
def test_without_the_facts_tension_cannot_be_checked(house: Any, bolt: dict[str, Any], clause: str, words: str) -> None:
    bolts = [a_new_bolt("line2", s, **({"to_sheathing_in": 1.75} | bolt)) for s in BOLTS]
    found = of_wall(house(), None, *bolts)
    link = found[f"plate-uplift/{WALL}.1-tension/both"]
    assert link.status == "cannot be checked"
    assert words in link.reason
    assert clause in link.clause
    assert found[f"plate-uplift/{WALL}.1-together/both"].status == "cannot be checked"


def test_old_bolts_whose_head_nobody_saw_hold_nothing_down_that_can_be_told() -> None:
    house = plain()
    found = links(with_pieces(house, a_wall()), "line2", work=True)
    bolted = [k for k in found if k.startswith("plate-uplift/") and k.endswith("-tension/both")]
    assert bolted
    assert all("17.6.3" in found[key].clause for key in bolted)


def hooked(psi: float = 3000.0, **changes: Any) -> dict[str, Link]:
    """The wall on old 1/2 in. bolts, 7 in. deep and 3 in. from the face of an 8 in. stem, with a hook of 2 in."""
    house = with_stem(plain(), "fs2", top_width_in=measured(8.0), strength_psi=measured(psi))
    old = {
        f"old-{n}": a_bolt("line2", s, mark=f"B{n}", washer="plate", **({"hook_in": measured(2.0)} | changes))
        for n, s in enumerate(BOLTS)
    }
    bolts: dict[str, Any] = {"si2-0": None, "si2-1": None, **old}
    return links(with_pieces(with_bolts(house, bolts), a_wall()), "line2", work=True)


def test_an_old_bolt_with_a_hook_holds_by_it() -> None:
    """ACI 318-19 17.6.3.2.2(b): 0.9 f'c e_h d_a, at 0.70 and three quarters against earthquake."""
    link = hooked()[f"plate-uplift/{WALL}.2-tension/both"]
    assert number(link.capacity) == pytest.approx(0.75 * 0.70 * 0.9 * 3000 * 2.0 * 0.5)
    assert "pullout of the hook (17.6.3.2.2 b)" in link.reason
    assert "17.6.3" in link.clause
    assert hooked()[f"plate-uplift/{WALL}.2-together/both"].status in ("passes", "fails")
    long = hooked(hook_in=measured(2.25))[f"plate-uplift/{WALL}.2-tension/both"]
    assert number(long.capacity) > number(link.capacity)


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"hook_in": measured(1.0)}, "the hook counts from 3 d_a"),
        ({"hook_in": measured(3.0)}, "the hook counts up to 4.5 d_a"),
        ({"hook_in": Fact(state="absent")}, "what B2 has for a head or hook was not seen"),
        ({"kind": "not seen"}, "what B2 has for a head or hook was not seen"),
    ],
)
def test_a_hook_outside_the_rule_or_that_nobody_saw_is_not_counted(changes: dict[str, Any], words: str) -> None:
    link = hooked(**changes)[f"plate-uplift/{WALL}.2-tension/both"]
    assert link.status == "cannot be checked"
    assert words in link.reason


def test_the_plate_between_its_parts_drags_by_the_greatest_unit_shear() -> None:
    """At the middle of the access: what the floor brought over 162 of 240 in., less two of three parts, over C_o."""
    joint = PlateSplice(
        line="line2", mark="J1", station_in=162.0, kind="lap", nail="16d common", nails_each_side=measured(8.0)
    )
    house = plain()
    under = replace(house.survey.underfloor, splices={"j1": joint})
    house = replace(house, survey=replace(house.survey, underfloor=under))
    splice = SplicePiece(line="line2", station_in=162.0, capacity_lb=5000.0, report="report 2")
    link = of_wall(house, None, splice)["plate-splices/j1/both"]
    assert number(link.demand) == pytest.approx(force() * abs(162 / 240 - 110 / 152) / C_O)
    steps = working(with_pieces(house, a_wall(), splice), WORK).steps
    assert any("between the parts of a perforated wall" in step.title for step in steps)


def test_drift_is_by_the_greatest_unit_shear_over_the_parts() -> None:
    """Per Eq. 4.3-1 with v_max and the sum of the parts: the wall moves more than one without openings."""
    downs = [a_hold_down("sg2", station, give_in=0.1) for station in (26.0, 214.0)]
    around = of_wall(plain(), None, *downs)[f"drift/{WALL}/both"]
    whole = of_wall(with_openings(plain()), a_panel("sg2", 24.0, 216.0), *downs)[f"drift/{WALL}/both"]
    assert number(around.demand) > number(whole.demand)
