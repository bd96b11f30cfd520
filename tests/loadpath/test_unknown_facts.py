"""An unknown fact never makes another link look better: what nobody knows is tried at both ends, or leaves a link open.

The reference house, 40 by 30 ft with cripple walls of 3 ft, on 12 ft of panel in each line where a test asks for it.
"""

from __future__ import annotations

from dataclasses import replace
from math import fsum
from typing import Any, get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.forces.lines import LineForce, Stiffness, with_rigid
from groundsill.forces.reading import Reading
from groundsill.forces.share import Direction
from groundsill.house.fact import measured, unknown
from groundsill.house.settle import prepare
from groundsill.house.underfloor import FloorConnection, VentOpening
from groundsill.loadpath.chain import Chain, Link
from groundsill.loadpath.openings import clear_parts
from groundsill.standards.nds_2018.bearing import table_12_3_3a
from groundsill.study import AS_FOUND, Study, run
from groundsill.work.document import House
from groundsill.work.pieces import TiePiece
from tests.forces.balance import forces_of, reading_of
from tests.forces.reference_house import reference_house
from tests.loadpath.bolting import a_bolt

PANELS = {"front": 16.0, "right": 16.0, "rear": 16.0, "left": 16.0}
BOARDS = "horizontal lumber sheathing, 1x"
UNCHECKED = "cannot be checked"


def under(house: House, **changes: Any) -> House:
    return replace(house, survey=replace(house.survey, underfloor=replace(house.survey.underfloor, **changes)))


def wall(house: House, line: str, **changes: Any) -> House:
    segments = house.survey.underfloor.segments
    return under(house, segments=segments | {f"sg-{line}": replace(segments[f"sg-{line}"], **changes)})


def studs(house: House, line: str, species: Any) -> House:
    return wall(house, line, stud=replace(house.survey.underfloor.segments[f"sg-{line}"].stud, species=species))


def rigid_too(house: House) -> House:
    return replace(house, choices=replace(house.choices, floor="envelope", floor_reason="to be told"))


def boarded(house: House) -> House:
    for line in PANELS:
        face = replace(house.survey.underfloor.segments[f"sg-{line}"].outside, material=BOARDS)
        house = wall(house, line, outside=replace(face, condition=measured("sound")))
    return house


def chain(study: Study, id: str, key: str = "work") -> Chain:
    (found,) = [c for r in study.runs if r.key == key for c in (*r.chains, *r.bodies) if c.id == id]
    return found


def links(study: Study, id: str, key: str = "work") -> dict[str, Link]:
    return {"/".join(link.address.split("/")[2:]): link for link in chain(study, id, key).links}


# ---- The wood of the studs ------------------------------------------------------------------------------------------


def test_panels_on_studs_of_a_wood_nobody_told_are_checked_on_the_lightest_and_on_the_heaviest() -> None:
    told = links(run(reference_house(panels=PANELS)), "front")["sheathing/pn-front/both"]
    study = run(studs(reference_house(panels=PANELS), "front", unknown()))
    untold = links(study, "front")["sheathing/pn-front/both"]
    assert (told.ratio, told.least_favourable) == (untold.ratio, told.ratio)  # Douglas fir at best
    light = float(table_12_3_3a().read("Western cedars"))
    assert untold.least_favourable == pytest.approx((told.ratio or 0) / (1 - (0.5 - light)))
    assert any(mark.kind == "assumed range" and "Species" in mark.what for mark in untold.marks)
    assert any(fact.path.endswith("sg-front.stud.species") for fact in study.facts)
    assert {f.path.split(".")[-3] for f in study.facts if "stud.species" in f.path} == {"sg-front"}


def test_a_panel_of_no_table_leaves_every_later_link_of_it_and_of_its_line_unchecked() -> None:
    house = reference_house(panels=PANELS)
    pieces = dict(house.alternatives["work"].pieces)
    pieces["pn-front"] = replace(pieces["pn-front"], panel="1/2 plywood, 8d")
    study = run(replace(house, alternatives={"work": replace(house.alternatives["work"], pieces=pieces)}))
    found = links(study, "front")
    for stage in ("nailing-top", "sheathing", "nailing-sill", "overturning"):
        here = [link for name, link in found.items() if name.startswith(f"{stage}/")]
        assert [link.status for link in here] == [UNCHECKED], stage
        assert (
            "Table 4.3A has no row '1/2 plywood, 8d': it has nails alone, no screws or staples; cure: a panel and"
            in (here[0].reason)
        )
    assert found["plate-splices/front/both"].status == UNCHECKED
    assert found["plate-splices/front/both"].reason == "no joint was recorded in a plate 40 ft long; one must be there"
    assert chain(study, "front").verdict != "passes"
    assert all(c.percent is None or c.percent < 100 for r in study.runs for c in r.chains if c.verdict == UNCHECKED)


def test_boards_that_no_table_names_cannot_be_checked_and_a_bare_wall_fails() -> None:
    house = reference_house()
    face = replace(house.survey.underfloor.segments["sg-front"].outside, material="tongue and groove")
    strange = links(run(wall(house, "front", outside=face)), "front", AS_FOUND)["sheathing/sg-front/both"]
    assert (strange.status, strange.reason) == (
        UNCHECKED,
        "no table of the program has a strength for 'tongue and groove'; cure: new panels, nailed to the bare studs",
    )
    bare = links(run(house), "front", AS_FOUND)["sheathing/sg-front/both"]
    assert (bare.status, bare.capacity) == ("fails", 0.0)


# ---- What a rigid floor shares by -----------------------------------------------------------------------------------


def forced(house: House, key: str = "work") -> dict[str, LineForce]:
    (found,) = [r.line_forces for r in run(house, ranges=False).runs if r.key == key]
    return found


def test_a_line_of_unknown_strength_never_takes_the_rigid_floor_from_the_others() -> None:
    house = rigid_too(reference_house(panels=PANELS | {"front": 30.0}))
    pieces = dict(house.alternatives["work"].pieces)
    pieces["pn-front"] = replace(pieces["pn-front"], panel="of unknown make")
    dark = replace(house, alternatives={"work": replace(house.alternatives["work"], pieces=pieces)})
    known, open_ = forced(house), forced(dark)
    for id in ("right", "rear", "left"):
        assert open_[id].force_lb >= known[id].force_lb - 1e-6
        assert open_[id].stiffness_lb_in == pytest.approx(known[id].stiffness_lb_in)
    assert known["front"].stiffness_lb_in
    assert not known["front"].open
    assert "no row 'of unknown make'" in open_["front"].open
    assert open_["front"].most_lb is not None
    assert open_["front"].most_lb >= known["front"].force_lb


@settings(max_examples=40, deadline=None)
@given(
    known=st.lists(st.floats(2e3, 2e5), min_size=4, max_size=4),
    unknown_lines=st.sets(st.sampled_from(list(PANELS)), min_size=1, max_size=2),
    true=st.lists(st.floats(0.0, 1.0), min_size=4, max_size=4),
)
def test_whatever_an_unknown_stiffness_turns_out_to_be_no_line_has_more_than_was_told(
    known: list[float], unknown_lines: set[str], true: list[float]
) -> None:
    """The ends of the unknown lines, in every combination, hold whatever lies between."""
    house = reference_house()
    reading, forces = reading_of(house), forces_of(house)
    least = dict(zip(PANELS, known, strict=True))
    most = {id: 50.0 * least[id] for id in unknown_lines}
    told = {id: Stiffness(k, "nobody knows" if id in most else "", most.get(id)) for id, k in least.items()}
    within = {
        id: Stiffness(k + part * (most.get(id, k) - k)) for (id, k), part in zip(least.items(), true, strict=True)
    }
    envelope, _ = with_rigid(reading, forces.items, forces.levels, forces.lines, told)
    plain, _ = with_rigid(reading, forces.items, forces.levels, forces.lines, within)
    for id, line in plain.items():
        bound = envelope[id].most_lb if envelope[id].open else envelope[id].force_lb
        assert bound is not None
        assert line.force_lb <= bound * (1 + 1e-9)


def test_more_unknown_lines_than_can_be_tried_leave_every_link_that_would_hold_open() -> None:
    house = boarded(rigid_too(reference_house()))
    for line in PANELS:
        house = wall(house, line, kind="joists on sill")
    study = run(house, ranges=False)
    forces = study.runs[0].line_forces
    assert all(line.open and line.most_lb is None for line in forces.values())
    for id in PANELS:
        assert {link.status for link in links(study, id, AS_FOUND).values()} <= {UNCHECKED, "does not apply", "fails"}


# ---- Joists straight on the sill ------------------------------------------------------------------------------------


def low_front(**connection: Any) -> House:
    """Boards on every wall but the front's, where the joists stand on the sill with four half-inch bolts."""
    house = wall(boarded(reference_house()), "front", kind="joists on sill")
    lines = dict(house.survey.underfloor.lines)
    told = {"kind": "toenails", "nail": "8d common", "spacing_in": measured(16.0)} | connection
    lines["front"] = replace(lines["front"], joists="across", rim="rim joist", floor_connection=FloorConnection(**told))
    sills = {k: replace(s, condition=measured("sound")) for k, s in house.survey.underfloor.sills.items()}
    bolts = {f"b{n}": a_bolt("front", at, mark=f"B{n}") for n, at in enumerate((60.0, 180.0, 300.0, 420.0), start=1)}
    return under(house, lines=lines, sills=sills, bolts=bolts)


def test_joists_on_a_sill_are_as_stiff_as_their_toenails_and_bolts_in_a_row() -> None:
    """30 toenails of 0.131 in. at 180,000 D^1.5, then 4 bolts of 1/2 in. at 270,000 D^1.5 (NDS 11.3.6)."""
    ties, bolts = 480 / 16 * 180_000 * 0.131**1.5, 4 * 270_000 * 0.5**1.5
    front = forced(low_front(), AS_FOUND)["front"]
    assert front.stiffness_lb_in == pytest.approx(1 / (1 / ties + 1 / bolts), rel=1e-6)
    assert not front.open
    rear = forced(low_front(), AS_FOUND)["rear"]
    assert rear.stiffness_lb_in == pytest.approx(1000 * 1.5 * 40 / 3, rel=1e-6)  # boards, G_a 1.5 kip/in
    assert front.floor == "rigid floor"  # the stiff line draws the force
    assert front.force_lb > 1.3 * rear.force_lb
    study = run(low_front(), ranges=False)
    marks = {m.kind for link in links(study, "front", AS_FOUND).values() for m in link.marks}
    assert "extension" in marks


def test_a_part_with_no_wall_has_no_height_and_asks_for_a_rigid_floor_beside_one_that_has() -> None:
    study = run(low_front(), ranges=False)
    assert study.runs[0].floor == "heights of the lines along x differ by more than 1.25 to 1"


def test_toenails_that_were_not_seen_leave_the_low_line_open_and_no_other() -> None:
    study = run(low_front(kind="not seen", nail=""), ranges=False)
    forces = study.runs[0].line_forces
    assert "how the floor is held was not seen" in forces["front"].open
    assert not any(forces[id].open for id in ("right", "rear", "left"))
    bolts = links(study, "front", AS_FOUND)["sill-bolts/si-front/both"]
    assert bolts.status in (UNCHECKED, "fails")
    known = forced(low_front(), AS_FOUND)
    assert all(forces[id].force_lb >= known[id].force_lb - 1e-6 for id in ("right", "rear", "left"))
    # no stiffer than its bolts, with ties that do not slip
    assert (forces["front"].most_lb or 0) >= known["front"].force_lb


def test_new_clips_slip_as_their_report_says_or_nobody_knows() -> None:
    house = reference_house(panels={"rear": 16.0})
    low = low_front()
    clips = TiePiece(mark="T1", line="front", from_in=0.0, to_in=480.0, count=20, capacity_lb=450.0)
    work = house.alternatives["work"]
    told = replace(low, alternatives={"work": replace(work, pieces={"ti": replace(clips, slip_lb_in=12_000.0)})})
    dark = replace(low, alternatives={"work": replace(work, pieces={"ti": clips})})
    bolts = 4 * 270_000 * 0.5**1.5
    assert forced(told)["front"].stiffness_lb_in == pytest.approx(1 / (1 / 240_000 + 1 / bolts))
    assert forced(dark)["front"].open == "sg-front: how far the clips of T1 slip is not entered (slip_lb_in)"


def test_a_line_that_is_open_passes_only_what_holds_at_its_stiffest() -> None:
    """Few bolts fail under the least force that may come down, many hold the most, and between them nobody can say."""
    unseen = low_front(kind="not seen", nail="")
    force = run(unseen, ranges=False).runs[0].line_forces["front"]
    assert force.force_lb < 0.8 * (force.most_lb or 0.0)
    found = []
    for count in range(2, 40, 2):
        bolts = {
            f"b{n}": a_bolt("front", 470.0 * (n + 0.5) / count + 5.0, mark=f"B{n}", edge_in=measured(4.0))
            for n in range(count)
        }
        link = links(run(under(unseen, bolts=bolts), ranges=False), "front", AS_FOUND)["sill-bolts/si-front/both"]
        found.append("holds" if link.status in ("passes", "indicated") else link.status)
        if link.status == UNCHECKED:
            assert link.reason.startswith(
                "what the line takes by a rigid floor is not known: sg-front: how the floor is held was not seen"
            )
    assert list(dict.fromkeys(found)) == ["fails", UNCHECKED, "holds"]


# ---- Bolts that nobody saw whole ------------------------------------------------------------------------------------


def with_front_bolts(**changes: Any) -> House:
    house = boarded(reference_house(panels=None))
    sills = {k: replace(s, condition=measured("sound")) for k, s in house.survey.underfloor.sills.items()}
    return under(house, sills=sills, bolts={"b1": a_bolt("front", 100.0, mark="B1", **changes)})


def front_bolts(house: House) -> tuple[Link, Link]:
    found = links(run(house, ranges=False), "front", AS_FOUND)
    return found["sill-bolts/si-front/both"], found["bolts-concrete/si-front/both"]


def test_a_bolt_of_unseen_depth_and_hole_cannot_be_checked_and_says_both_at_once() -> None:
    wood, concrete = front_bolts(with_front_bolts(embedment_in=unknown(), hole_in=unknown()))
    both = "its embedment is not known and no test is entered, its hole in the sill was not looked at"
    for link in (wood, concrete):
        assert link.status == UNCHECKED
        assert link.reason == f"whether its bolts count is not known: B1: {both}"


def test_a_bolt_that_is_left_out_for_what_it_is_holds_nothing_whatever_else_is_unknown() -> None:
    wood, concrete = front_bolts(with_front_bolts(embedment_in=unknown(), nut=measured("loose"), washer="none"))
    assert (wood.status, wood.ratio, wood.capacity) == ("fails", None, 0.0)
    assert wood.reason == "no bolt counts in this piece (not counted B1: its nut is loose, it has no washer)"
    assert concrete.status == "does not apply"


def test_a_sill_without_bolts_on_record_fails_where_somebody_saw_it_and_is_open_where_nobody_did() -> None:
    house = boarded(reference_house())
    unseen, _ = front_bolts(house)
    assert (unseen.status, "nothing tells that anybody saw it" in unseen.reason) == (UNCHECKED, True)
    sills = {k: replace(s, condition=measured("sound")) for k, s in house.survey.underfloor.sills.items()}
    seen, _ = front_bolts(under(house, sills=sills))
    assert (seen.status, seen.capacity) == ("fails", 0.0)
    told = chain(run(house, ranges=False), "front", AS_FOUND)
    assert "carries none" not in told.headline


# ---- Vents ----------------------------------------------------------------------------------------------------------


def vented(bottom: float, top: float, kind: Any = "vent", long: float = 14.0) -> House:
    vent = VentOpening(line="front", kind=kind, from_in=100.0, to_in=100.0 + long, bottom_in=bottom, top_in=top)
    return under(boarded(reference_house()), openings={"vt": vent})


def parts(house: House) -> list[tuple[float, float, float]]:
    best = prepare(house).best
    reading = Reading(best.house, best.marks)
    segment = best.house.survey.underfloor.segments["sg-front"]
    return [(p.from_in, p.to_in, p.lost_in) for p in clear_parts(reading, segment, 0.0, 480.0)]


@pytest.mark.parametrize(
    ("bottom", "top", "kind", "expected"),
    [
        (20.0, 29.0, "vent", [(0.0, 480.0, 16.0)]),  # a quarter of 36 in.: one stud bay is lost
        (20.0, 29.1, "vent", [(0.0, 100.0, 0.0), (114.0, 480.0, 0.0)]),
        (30.0, 45.0, "vent", [(0.0, 480.0, 16.0)]),  # 6 in. of it stand in the wall
        (-10.0, 0.0, "vent", [(0.0, 480.0, 0.0)]),  # in the stem
        (0.0, 0.0, "vent", [(0.0, 100.0, 0.0), (114.0, 480.0, 0.0)]),  # heights not told
        (0.0, 8.0, "gap", [(0.0, 100.0, 0.0), (114.0, 480.0, 0.0)]),
    ],
)
def test_a_vent_of_a_quarter_of_the_wall_takes_length_and_a_taller_one_cuts_it(
    bottom: float, top: float, kind: str, expected: list[tuple[float, float, float]]
) -> None:
    assert parts(vented(bottom, top, kind)) == expected


def test_a_long_low_vent_takes_its_own_length() -> None:
    assert parts(vented(20.0, 29.0, long=40.0)) == [(0.0, 480.0, 40.0)]


def test_boards_past_a_small_vent_carry_over_the_length_that_is_left() -> None:
    plain = links(run(boarded(reference_house()), ranges=False), "front", AS_FOUND)["sheathing/sg-front/both"]
    vent = links(run(vented(20.0, 29.0), ranges=False), "front", AS_FOUND)["sheathing/sg-front/both"]
    assert vent.demand == pytest.approx((plain.demand or 0) * 480 / 464)
    assert vent.capacity == pytest.approx(plain.capacity)
    assert "vents in it take 16 in. of its length (IEBC 2021 A304.4.4)" in vent.reason
    assert any("ratios in A304" in m.what and m.kind == "from memory" for m in vent.marks)


def test_in_every_way_of_sharing_the_lines_hold_the_whole_force() -> None:
    forces = run(low_front(kind="not seen", nail=""), ranges=False).runs[0].line_forces
    whole = forces_of(low_front()).base_shear_lb
    for direction in get_args(Direction):
        along = [line.cases[direction] for line in forces.values() if line.direction == direction]
        assert {len(ways) for ways in along} == {7}  # flexible; two ends of the front's stiffness, the mass at three
        for way in zip(*along, strict=True):
            assert fsum(way) == pytest.approx(whole)
