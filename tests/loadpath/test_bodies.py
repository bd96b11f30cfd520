"""Foundation bodies by hand: how high and heavy they are, what holds them, what they press on the soil; and pads.

The reference house, 40 by 30 ft on sand: front and rear run along x, right and left along y, one body all round.
"""

from __future__ import annotations

from dataclasses import replace
from math import sqrt
from typing import Any

import pytest

from groundsill.forces.levels import base_z_in
from groundsill.forces.seismic import Forces
from groundsill.house.building import Point
from groundsill.house.fact import Fact, measured, unknown
from groundsill.house.foundation import FoundationBreak, FoundationSegment
from groundsill.house.underfloor import Girder, Post
from groundsill.loadpath.bodies import body_chains
from groundsill.loadpath.chain import Chain, Link
from groundsill.loadpath.footings import (
    DEEPEST_FT,
    bodies_of,
    drop_ft,
    height_known,
    inside_depth_in,
    least_weight,
    most_weight,
)
from groundsill.loadpath.soil import resultant_ft
from groundsill.study import run
from groundsill.work.checks import check_house
from groundsill.work.document import House
from groundsill.working.sheet import Sheet
from tests.forces.balance import forces_of, larch_street, reading_of
from tests.forces.reference_house import reference_house

FEET = {"front": 40.0, "right": 30.0, "rear": 40.0, "left": 30.0}
STEM = {
    "top_width_in": measured(8.0),
    "above_outside_soil_in": measured(10.0),
    "above_inside_soil_in": measured(4.0),
    "depth_in": measured(30.0),
    "footing_width_in": measured(16.0),
    "footing_thickness_in": measured(6.0),
}


def on(**stem: Any) -> House:
    """The house on stems 40 in. high, 30 of them below the soil outside and 36 below that inside, but as told."""
    house = reference_house()
    return but(house, tuple(FEET), **(STEM | stem))


def but(house: House, lines: tuple[str, ...], **stem: Any) -> House:
    """The same with the foundation under some lines as told."""
    base = house.survey.foundation
    segments = {id: replace(s, **stem) if s.line in lines else s for id, s in base.segments.items()}
    return replace(house, survey=replace(house.survey, foundation=replace(base, segments=segments)))


def sited(house: House, soil: str | None = None, **site: Any) -> House:
    before = house.survey.site
    if soil is not None:
        site["soil"] = replace(before.soil, kind=measured(soil))
    return replace(house, survey=replace(house.survey, site=replace(before, **site)))


def chains(house: House) -> tuple[Chain, ...]:
    assert check_house(house) == ()
    return body_chains(reading_of(house), forces_of(house))


def link(house: House, stage: str, scope: str) -> Link:
    """The link of a stage whose address tells a line, a post or a direction."""
    (found,) = [
        k for c in chains(house) for k in c.links if f"/{stage}/" in k.address and scope in k.address.split("/")
    ]
    return found


def stem(**facts: Any) -> FoundationSegment:
    told = STEM | facts
    return FoundationSegment(line="front", from_in=0, to_in=480, material="poured concrete", **told)


# ---- Height and weight ----------------------------------------------------------------------------------------------


def test_height_is_measured_outside_with_outside() -> None:
    """Soil stands 6 in. above the top outside and the top shows 12 in. inside: 18 - 6 = 12 in., never 12 + 18."""
    soils = {"above_outside_soil_in": measured(-6.0), "above_inside_soil_in": measured(12.0)}
    house = on(**soils, depth_in=measured(18.0), footing_thickness_in=unknown(), footing_width_in=unknown())
    (body,) = bodies_of(reading_of(house))
    assert least_weight(reading_of(house), body.parts, "") == pytest.approx(140 * 8 * 12 / 144 * 150)
    assert drop_ft(reading_of(house), body.parts) == pytest.approx(1.0)
    assert inside_depth_in(body.parts[0].segment) == 0.0


def test_height_of_an_unknown_depth_is_what_is_seen() -> None:
    house = on(depth_in=unknown(), above_outside_soil_in=measured(-6.0), above_inside_soil_in=measured(12.0))
    (body,) = bodies_of(reading_of(house))
    assert not height_known(body.parts[0].segment)
    assert inside_depth_in(body.parts[0].segment) is None
    assert drop_ft(reading_of(house), body.parts) == pytest.approx(1.0)
    assert drop_ft(reading_of(house), body.parts, deepest=True) == DEEPEST_FT


def test_depth_without_the_soil_outside_is_no_height() -> None:
    assert not height_known(stem(above_outside_soil_in=unknown()))
    assert height_known(stem())


@pytest.mark.parametrize(
    ("material", "pcf"), [("poured concrete", 150.0), ("brick", 120.0), ("stone", 120.0), ("block", None)]
)
def test_what_a_foundation_weighs_at_least(material: str, pcf: float | None) -> None:
    """A stem 8 by 40 in. and 8 by 6 in. of footing beside it; hollow block nobody can weigh from outside."""
    house = on(material=material)
    found = least_weight(reading_of(house), bodies_of(reading_of(house))[0].parts, "")
    assert found == (None if pcf is None else pytest.approx(140 * (8 * 40 + 8 * 6) / 144 * pcf))


def test_what_a_foundation_weighs_at_most_fills_in_what_nobody_measured() -> None:
    reading = reading_of(on())
    parts = bodies_of(reading)[0].parts
    assert most_weight(reading, parts, "") == pytest.approx(140 * (8 * 40 + 8 * 6) / 144 * 150)
    thick = bodies_of(reading_of(on(footing_thickness_in=unknown())))[0].parts
    assert most_weight(reading, thick, "") == pytest.approx(140 * (8 * 40 + 8 * 30) / 144 * 150)  # up to the soil
    wide = bodies_of(reading_of(on(top_width_in=unknown())))[0].parts
    assert most_weight(reading, wide, "") == pytest.approx(140 * 16 * 40 / 144 * 150)  # as wide as the footing
    deep = bodies_of(reading_of(on(depth_in=unknown())))[0].parts
    assert most_weight(reading, deep, "") == pytest.approx(140 * (8 * 96 + 8 * 6) / 144 * 150)


def test_a_stepped_foundation_drops_to_its_lowest_bottom() -> None:
    """The base is the mean of the tops by length; the rear stands 24 in. lower than the rest."""
    house = but(on(), ("rear",), top_z_in=measured(-24.0))
    reading = reading_of(house)
    base = -24.0 * 40 / 140
    assert base_z_in(reading) == pytest.approx(base)
    (body,) = bodies_of(reading)
    assert drop_ft(reading, body.parts) == pytest.approx((base + 24 + 40) / 12)
    assert drop_ft(reading, body.lines()["front"]) == pytest.approx(40 / 12)  # no less than its own height


# ---- Sliding --------------------------------------------------------------------------------------------------------


def friction(house: House, own: float) -> float:
    forces = forces_of(house)
    dead = sum(load.dead for load in forces.gravity.lines.values()) + own
    return 0.25 * (0.6 - 0.14 * 1.2) * dead


OWN = 140 * (8 * 40 + 8 * 6) / 144 * 150


def test_each_cross_footing_pushes_against_the_soil_on_its_own_side() -> None:
    """Pushed either way one side wall pushes out, 30 in. deep, the other in, 36 in.: 150 psf/ft less the top foot."""
    found = link(on(), "sliding", "x")
    faces = 150 * 30 * ((2.5**2 - 1) + (3.0**2 - 1)) / 2
    assert found.capacity == pytest.approx(friction(on(), OWN) + faces)
    assert found.reason == "friction under the footing and 60 ft of cross footings against the soil, toward +x"
    assert found.demand == pytest.approx(0.7 * 2 * forces_of(on()).lines["front"].force_lb)


def test_the_weaker_way_counts() -> None:
    """Toward +x the left wall pushes in and the right one out, where the soil has been dug away."""
    house = but(on(), ("right",), depth_in=measured(12.0), above_outside_soil_in=measured(28.0))
    found = link(house, "sliding", "x")
    assert found.capacity == pytest.approx(friction(house, OWN) + 150 * 30 * (3.0**2 - 1) / 2)
    assert found.reason.endswith("30 ft of cross footings against the soil, toward +x")


def test_a_cross_footing_of_unknown_depth_is_not_counted_and_said() -> None:
    house = but(on(), ("right",), depth_in=unknown())
    found = link(house, "sliding", "x")
    own = OWN - 30 * 150 * ((8 * 40 + 8 * 6) - (8 * 10 + 8 * 6)) / 144
    assert found.capacity == pytest.approx(friction(house, own) + 150 * 30 * (2.5**2 - 1) / 2)
    assert found.reason == (
        "friction under the footing and 30 ft of cross footings against the soil, toward -x; 30 ft of cross footings "
        "not counted: their depth in that soil is not known"
    )


def test_soil_above_the_top_of_the_concrete_is_not_counted_as_its_face() -> None:
    """Soil 18 in. above the top outside: the face begins 1.5 ft down; inside it is 4 in. below the top."""
    buried = {"above_outside_soil_in": measured(-18.0), "depth_in": measured(58.0)}
    found = link(on(**buried), "sliding", "x")
    outward, inward = (58 / 12) ** 2 - 1.5**2, 3.0**2 - 1
    assert found.capacity == pytest.approx(friction(on(**buried), OWN) + 150 * 30 * (outward + inward) / 2)


def test_a_footing_that_stands_no_deeper_than_the_top_foot_adds_nothing() -> None:
    shallow = {
        "depth_in": measured(12.0),
        "above_outside_soil_in": measured(28.0),
        "above_inside_soil_in": measured(30.0),
    }
    found = link(on(**shallow), "sliding", "x")
    assert found.capacity == pytest.approx(friction(on(**shallow), OWN))
    assert found.reason == "friction under the footing"


def test_a_line_inside_the_house_takes_the_lesser_of_its_two_sides() -> None:
    house = larch_street()
    base = house.survey.foundation
    (id,) = [key for key, s in base.segments.items() if s.depth_in.value == 4.0]
    deeper = replace(base.segments[id], depth_in=measured(40.0), above_inside_soil_in=measured(16.0))
    (line,) = [k for k, v in house.survey.underfloor.lines.items() if v.mark == "L8"]
    assert house.survey.underfloor.lines[line].position == "interior"
    house = replace(
        house, survey=replace(house.survey, foundation=replace(base, segments=base.segments | {id: deeper}))
    )
    before, after = (
        {c.id: next(k for k in c.links if k.address.endswith("/x")) for c in body_chains(reading_of(h), forces_of(h))
         if c.name == "foundation under L8"} for h in (larch_street(), house)
    )  # fmt: skip
    # 40 in. below one side, 52 - 16 = 36 in. below the other; taller concrete adds friction as well
    assert {k.reason for k in before.values()} == {"friction under the footing"}
    lengths = (150 / 12, 138 / 12)
    for key, feet in zip(sorted(before), sorted(lengths, reverse=True), strict=True):
        own = feet * (52 - 16) * 10 / 144 * 150 * 0.25 * (0.6 - 0.14 * forces_of(house).S_DS)
        faces = 150 * feet * (3.0**2 - 1) / 2
        assert (after[key].capacity or 0) - (before[key].capacity or 0) == pytest.approx(own + faces)


# ---- Overturning of the body ----------------------------------------------------------------------------------------


def reaches(forces: Forces) -> float:
    """Height of the forces' resultant above the base."""
    return sum(level.force_lb * level.height_ft for level in forces.levels) / forces.base_shear_lb


def test_the_body_turns_about_its_far_edge_under_the_forces_above_it() -> None:
    forces, found = forces_of(on()), link(on(), "overturning", "x")
    assert resultant_ft(forces) == pytest.approx(reaches(forces))
    assert found.demand == pytest.approx(0.75 * 0.7 * forces.base_shear_lb * (reaches(forces) + 40 / 12))
    dead = sum(load.dead for load in forces.gravity.lines.values()) + OWN
    assert found.capacity == pytest.approx((0.6 - 0.14 * 1.2) * dead * 20)
    assert found.reason == ""


def test_an_unknown_depth_is_taken_as_deep_as_any_where_that_still_holds() -> None:
    house = on(depth_in=unknown())
    forces, found = forces_of(house), link(house, "overturning", "y")
    assert found.status == "passes"
    assert found.demand == pytest.approx(0.75 * 0.7 * forces.base_shear_lb * (reaches(forces) + DEEPEST_FT))
    assert found.reason == "the footing's depth is not known: taken 8.0 ft below the base"


def narrow(house: House, feet: float) -> House:
    """Only the right and left walls have a foundation left, cut into short stretches by breaks."""
    base = house.survey.foundation
    segments = {id: s if s.line == "right" else replace(s, material="none") for id, s in base.segments.items()}
    cut = FoundationBreak(line="right", station_in=12 * feet, kind="gap")
    lines = {
        id: replace(line, relied_on=True, relied_reason="to be told")
        for id, line in house.survey.underfloor.lines.items()
    }
    under = replace(house.survey.underfloor, lines=lines)
    foundation = replace(base, segments=segments, breaks={"cut": cut})
    return replace(house, survey=replace(house.survey, foundation=foundation, underfloor=under))


def test_an_unknown_depth_that_matters_cannot_be_checked_and_one_that_does_not_fails() -> None:
    """A stretch of wall 30, 15 or 6 ft long, cut off from the rest, under the force of its part of the line."""
    words = {}
    for feet in (6, 14, 16, 24):
        house = narrow(on(depth_in=unknown()), feet)
        (first, second) = [c for c in chains(house) if c.mark in ("B1", "B2")]
        for chain in (first, second):
            found = next(k for k in chain.links if "/overturning/" in k.address and k.address.endswith("/y"))
            arm = sum(p.length_ft for p in next(b for b in bodies_of(reading_of(house)) if b.id == chain.id).parts) / 2
            words[2 * arm] = (found.status, found.reason)
    assert words[6.0] == ("fails", "the footing's depth is not known: taken 0.8 ft below the base")
    statuses = [words[long][0] for long in sorted(words)]
    assert statuses == sorted(statuses, key=["fails", "cannot be checked", "passes"].index)
    assert "cannot be checked" in statuses
    (reason,) = {why for status, why in words.values() if status == "cannot be checked"}
    assert reason == "how deep the footing goes is not known, and it matters: 8.0 ft below the base it turns over"


# ---- Bearing --------------------------------------------------------------------------------------------------------


def pressed(P: float, M: float, long: float, wide: float) -> float:
    """The greatest pressure under a strip that cannot pull: handbook statics, written out again."""
    e = M / P
    assert e < long / 2
    return P / (long * wide) * (1 + 6 * e / long) if e <= long / 6 else 2 * P / (3 * wide * (long / 2 - e))


def by_hand(house: House, line: str, own: float) -> dict[str, float]:
    """Pressure by each combination."""
    forces = forces_of(house)
    load, feet = forces.gravity.lines[line], FEET[line]
    D, L, S = load.dead + own, load.live, load.snow
    wide = 16 / 12
    turning = 0.75 * 0.7 * forces.rho * forces.lines[line].force_lb * (reaches(forces) + 40 / 12)
    E_v = 0.2 * forces.S_DS * D
    return {
        "gravity": max(D + L, D + S, D + 0.75 * (L + S)) / (feet * wide),
        "combination 8": pressed(D + 0.7 * E_v, turning, feet, wide),
        "combination 9": pressed(D + 0.525 * E_v + 0.75 * (L + S), 0.75 * turning, feet, wide),
        "combination 10": pressed(0.6 * D - 0.7 * E_v, turning, feet, wide),
    }


@pytest.mark.parametrize("line", ["front", "right"])
@pytest.mark.parametrize("snow", [0.0, 25.0])
def test_bearing_counts_the_foundation_itself_and_the_worst_combination(line: str, snow: float) -> None:
    house = sited(on(), snow_psf=measured(snow))
    found = link(house, "bearing", line)
    hand = by_hand(house, line, FEET[line] * (8 * 40 + 8 * 6) / 144 * 150)
    assert found.demand == pytest.approx(max(hand.values()))
    worst = max(hand, key=lambda name: hand[name])
    assert found.reason == ("gravity governs" if worst == "gravity" else f"with the earthquake along the line, {worst}")
    assert (found.capacity, found.unit, found.status) == (2000.0, "psf", "passes")


def test_live_and_snow_together_press_with_three_quarters_each() -> None:
    """Snow on the front line: dead with three quarters of both is more than dead with either alone."""
    house = sited(on(), snow_psf=measured(25.0))
    building = house.survey.building
    roof = {id: replace(part, span_deg=90.0) for id, part in building.roof.items()}
    house = replace(house, survey=replace(house.survey, building=replace(building, roof=roof)))
    forces = forces_of(house)
    load = forces.gravity.lines["front"]
    assert 0 < load.live < 3 * load.snow < 9 * load.live
    with Sheet() as sheet:
        body_chains(reading_of(house), forces_of(house))
    steps = sheet.under("body/fs-front/bearing/front/both")
    own = 40 * (8 * 40 + 8 * 6) / 144 * 150
    (pressing,) = [step.result for step in steps if step.title == "gravity load"]
    assert float(pressing or 0.0) == pytest.approx(load.dead + own + 0.75 * (load.live + load.snow))


def test_a_footing_that_turns_over_fails_and_says_how() -> None:
    """Twice the ground motion of the strongest site on a narrow piece of wall: its resultant leaves the footing."""
    house = narrow(on(), 6.0)
    found = [k for c in chains(house) for k in c.links if "/bearing/" in k.address]
    short = next(k for k in found if "turn over" in k.reason)
    assert (short.status, short.verdict, short.ratio, short.demand) == ("fails", "fails", None, None)
    assert short.capacity == 2000.0
    assert short.reason.startswith("combination ")
    assert "the 6.0 ft of footing turn over, the resultant stands " in short.reason


def test_with_no_joists_a_light_footing_fails_by_turning_over() -> None:
    house = on()
    blank = replace(house, survey=replace(house.survey, underfloor=replace(house.survey.underfloor, joists={})))
    turned = narrow(blank, 6.0)
    assert any(k.status == "fails" and k.ratio is None for c in chains(turned) for k in c.links)


def test_unknown_snow_matters_only_where_a_roof_is_carried_and_the_footing_would_pass() -> None:
    house = sited(on(), snow_psf=unknown())
    roofed, bare = link(house, "bearing", "right"), link(house, "bearing", "front")
    carries = {id: load.roof_ft2 > 0 for id, load in forces_of(house).gravity.lines.items()}
    assert carries == {"front": False, "rear": False, "right": True, "left": True}  # rafters along x
    assert (roofed.status, roofed.demand) == ("cannot be checked", None)
    assert roofed.reason == "the roof snow on 710 sq ft of roof that it carries is not known"
    assert bare.status == "passes"
    poor = with_report(house, 300.0)
    assert link(poor, "bearing", "right").status == "fails"


def with_report(house: House, psf: float) -> House:
    soil = replace(house.survey.site.soil, bearing_psf=measured(psf))
    return replace(house, survey=replace(house.survey, site=replace(house.survey.site, soil=soil)))


def test_load_that_reached_no_support_may_stand_on_any_footing() -> None:
    house = on()
    under = house.survey.underfloor
    half = replace(under.joists["jf1"], outline=("sw0", "se0", "ne0"))
    cut = replace(house, survey=replace(house.survey, underfloor=replace(under, joists={"jf1": half})))
    found = link(cut, "bearing", "front")
    assert found.status == "cannot be checked"
    assert found.reason == "part of the house's load reached no support in the take-down, and may stand here"
    assert link(with_report(cut, 200.0), "bearing", "front").status == "fails"


def test_an_unknown_depth_stops_bearing_only_where_it_could_turn_the_answer() -> None:
    house = on(depth_in=unknown())
    assert link(with_report(house, 12000.0), "bearing", "front").status == "passes"
    matters = link(with_report(house, 1200.0), "bearing", "front")
    assert (matters.status, matters.reason) == (
        "cannot be checked",
        "how high and deep the foundation is is not known, and it matters for its weight and its arm",
    )
    assert link(with_report(house, 100.0), "bearing", "front").status == "fails"


def test_an_unknown_width_or_soil_is_named() -> None:
    assert link(on(footing_width_in=unknown()), "bearing", "front").reason == "the width of the footing is not known"
    no_soil = sited(on(), soil="none presumed")
    assert (
        link(no_soil, "bearing", "front").reason
        == "the soil is of a kind that has no presumptive value until a report gives one"
    )


def test_a_line_without_force_is_checked_for_gravity() -> None:
    house = on()
    lines = house.survey.underfloor.lines
    lines = lines | {"front": replace(lines["front"], relied_on=False, relied_reason="as told")}
    still = replace(house, survey=replace(house.survey, underfloor=replace(house.survey.underfloor, lines=lines)))
    assert link(still, "bearing", "front").reason == "gravity governs"


def test_doubts_about_weights_and_forces_reach_the_soil_links() -> None:
    estimated = on(above_outside_soil_in=Fact(value=10.0, state="estimated", how="by eye"))
    study = run(estimated, ranges=False)
    for key in ("sliding", "overturning", "bearing"):
        links = [k for c in study.runs[0].bodies for k in c.links if f"/{key}/" in k.address and k.demand is not None]
        assert links
        for found in links:
            assert any("ASCE 7-16 Eq. 12.8" in m.what for m in found.marks), found.address


# ---- Pads -----------------------------------------------------------------------------------------------------------


def posted(**post: Any) -> House:
    """A girder of 36 ft along x at mid depth on four posts, 15 ft of floor on it; the second post as told."""
    house = on()
    girder = Girder(start=Point(x_in=24.0, y_in=180.0), end=Point(x_in=456.0, y_in=180.0))
    plain = {"girder": "gd1", "pad_side_in": measured(20.0), "size_in": measured(5.5)}
    posts = {
        f"po{n}": Post(
            order=n, mark=f"C{n}", at=Point(x_in=24.0 + 144 * n, y_in=180.0), **(plain | (post if n == 1 else {}))
        )
        for n in range(4)
    }
    under = replace(house.survey.underfloor, girders={"gd1": girder}, posts=posts)
    return replace(house, survey=replace(house.survey, underfloor=under))


def test_a_pad_presses_with_dead_and_live_load_on_its_area() -> None:
    house = posted()
    load = forces_of(house).gravity.posts["po1"]
    assert load.live == pytest.approx(36 * 15 * 40 / 3)  # 12 ft of the girder
    found = link(house, "bearing", "po1")
    D, L = load.dead, load.live
    with_quake = max(D * (1 + 0.14 * 1.2), D * (1 + 0.105 * 1.2) + 0.75 * L)
    assert found.demand == pytest.approx(max(D + L, with_quake) / (20 / 12) ** 2)
    assert (found.capacity, found.title) == (2000.0, "bearing under the pad of post C1")
    assert found.status == ("passes" if found.demand <= 2000 else "fails")


def test_pads_are_a_chain_of_their_own_after_the_bodies() -> None:
    found = chains(posted())
    assert [(c.id, c.mark, c.name, c.kind) for c in found][-1] == ("pads", "Pads", "posts and pads", "body")
    assert [k.address for k in found[-1].links] == [f"body/pads/bearing/po{n}/both" for n in range(4)]
    assert "pads" not in {c.id for c in chains(on())}


def test_a_pad_of_unknown_side_cannot_be_checked() -> None:
    found = link(posted(pad="wood on soil", pad_side_in=unknown()), "bearing", "po1")
    assert (found.status, found.reason) == ("cannot be checked", "the side of the pad (wood on soil) is not known")


def test_a_post_without_a_pad_presses_with_its_own_foot() -> None:
    with_pad, without = link(posted(), "bearing", "po1"), link(posted(pad="none"), "bearing", "po1")
    assert (without.demand or 0) / (with_pad.demand or 1) == pytest.approx((20 / 5.5) ** 2)
    assert (without.status, without.title) == ("fails", "bearing under post C1")


def test_a_post_that_holds_nothing_named_cannot_be_checked() -> None:
    found = link(posted(girder=None), "bearing", "po1")
    assert (found.status, found.reason) == (
        "cannot be checked",
        "the survey brings no load to it: no girder is named that it holds up",
    )


def test_the_side_of_a_pad_counts_by_its_square() -> None:
    small, large = (link(posted(pad_side_in=measured(s)), "bearing", "po1").demand or 0.0 for s in (12.0, 24.0))
    assert sqrt(small / large) == pytest.approx(2.0)


def test_pads_show_in_the_study_with_the_facts_they_depend_on() -> None:
    wide = Fact(value=20.0, low=10.0, high=24.0, state="estimated", how="half buried")
    study = run(posted(pad_side_in=wide))
    (pads,) = [c for c in study.runs[0].bodies if c.id == "pads"]
    doubtful = next(k for k in pads.links if "po1" in k.address)
    assert doubtful.verdict == "depends" or doubtful.status == "fails"
    assert (doubtful.least_favourable or 0) == pytest.approx(4 * (doubtful.ratio or 0))


# ---- What parts bodies, and the force of one -------------------------------------------------------------------------


def broken(house: House, *cuts: tuple[str, float, str]) -> list[str]:
    """The lines of every body, once breaks of a kind stand at stations of lines."""
    base = house.survey.foundation
    breaks = {f"c{n}": FoundationBreak(line=a, station_in=at, kind=kind) for n, (a, at, kind) in enumerate(cuts)}  # type: ignore[arg-type]
    made = replace(house, survey=replace(house.survey, foundation=replace(base, breaks=breaks)))
    return sorted(" ".join(sorted(body.lines())) for body in bodies_of(reading_of(made)))


@pytest.mark.parametrize("kind", ["gap", "cold joint", "full-depth crack"])
@pytest.mark.parametrize("away", [0.0, 1.0, 4.0, 8.0, 12.0])
def test_a_break_at_the_end_of_a_line_parts_it_from_what_it_runs_into(kind: str, away: float) -> None:
    """Front and right of one age, rear and left of another: breaks where the rear and the left run into them."""
    cuts = (("rear", away, kind), ("left", 360.0 - away, kind))
    stubs = 0 if away < 1.5 else 2  # farther off, a stub of the cut line stays with the corner
    found = broken(on(), *cuts)
    assert len(found) == 2
    assert found == (["front left rear right", "left rear"] if stubs else ["front right", "left rear"])
    assert broken(on(), cuts[0]) == ["front left rear right"]  # one break alone leaves the ring hanging together
    assert broken(on(), ("rear", away, "step"), ("left", 360.0 - away, "crack")) == ["front left rear right"]


def test_a_break_where_two_lines_run_on_along_each_other_parts_them_too() -> None:
    assert broken(on(), ("front", 0.0, "gap"), ("front", 480.0, "gap")) == ["front", "left rear right"]


def test_a_body_is_asked_for_one_earthquake_at_a_time_and_never_for_more_than_the_house_feels() -> None:
    """One body under all four lines: its force along x is the base shear, with a rigid floor as well."""
    house = on()
    rigid = replace(house, choices=replace(house.choices, floor="envelope", floor_reason="to be told"))
    for floor in (house, rigid):
        study = run(floor, ranges=False)
        (body,) = [c for c in study.runs[0].bodies if c.id != "pads"]
        assert body.force_lb == pytest.approx(study.forces.base_shear_lb)
        for way in ("x", "y"):
            (found,) = [k for k in body.links if k.address.endswith(f"/{way}") and "/sliding/" in k.address]
            assert found.demand == pytest.approx(0.7 * study.forces.base_shear_lb)


def test_cross_footings_of_unknown_depth_that_could_turn_the_answer_leave_sliding_unchecked() -> None:
    """Friction alone falls short of the force, and footings 8 ft deep would hold it."""

    def shaken(house: House) -> House:
        motion = house.survey.site.hazard
        assert motion is not None
        return sited(house, hazard=replace(motion, S_S=2.2))

    shallow = shaken(on(depth_in=unknown()))
    found = link(shallow, "sliding", "x")
    assert found.status == "cannot be checked"
    assert found.reason.startswith("how deep 60 ft of cross footings stand in the soil is not known, and it matters: ")
    asked = 0.7 * forces_of(shallow).base_shear_lb
    assert f"lb hold of {asked:,.0f} lb asked, and with footings 8 ft deep all would" in found.reason
    assert link(shaken(on(depth_in=measured(60.0))), "sliding", "x").status == "passes"
