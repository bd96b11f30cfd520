"""What the ground may be counted with: where the code's table ends, what a report puts in its place, what stops it.

The reference house on stems 40 in. high, 30 of them below the soil outside, one body all round.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from groundsill.house.fact import Fact, measured
from groundsill.house.site import SiteFlag
from groundsill.loadpath.bodies import body_chains
from groundsill.loadpath.chain import Link
from groundsill.study import run
from groundsill.work.document import House
from groundsill.working.sheet import Sheet
from tests.forces.balance import forces_of, reading_of
from tests.loadpath.houses import known_house
from tests.loadpath.test_bodies import OWN, but, friction, link, on, sited

WIDE = {"footing_width_in": measured(48.0)}
FACES = 150 * 30 * ((2.5**2 - 1) + (3.0**2 - 1)) / 2  # sand on the two side walls, one pushed out and one in


def soil(house: House, **facts: Any) -> House:
    """The house with some facts of its soil as told."""
    site = house.survey.site
    told = replace(site, soil=replace(site.soil, **facts))
    return replace(house, survey=replace(house.survey, site=told))


def flagged(house: House, **kinds: bool | None) -> House:
    """The house with site flags, by kind: there, not there, or raised and not known."""
    flags = {
        kind.replace("_", "-"): SiteFlag(
            kind=kind.replace("_", " "),  # type: ignore[arg-type]
            present=Fact(value=there, state="unknown" if there is None else "measured"), source="a map",
        )
        for kind, there in kinds.items()
    }  # fmt: skip
    return sited(house, flags=flags)


def every(house: House, stage: str) -> list[Link]:
    return [k for c in body_chains(reading_of(house), forces_of(house)) for k in c.links if f"/{stage}/" in k.address]


# ---- Where the table ends -------------------------------------------------------------------------------------------


def test_fill_has_no_presumptive_value_and_a_report_gives_one() -> None:
    house = soil(on(**WIDE), fill=measured(True))
    assert {k.status for k in (*every(house, "sliding"), *every(house, "bearing"))} == {"cannot be checked"}
    assert "stands on fill" in link(house, "sliding", "x").reason
    told = soil(house, bearing_psf=measured(1800.0), friction=measured(0.3))
    assert link(told, "bearing", "front").capacity == 1800.0
    assert "no face is counted: the footing stands on fill" in link(told, "sliding", "x").reason


def test_fill_that_was_raised_and_not_settled_is_told_beside_the_soil_that_was_seen() -> None:
    nobody = soil(on(**WIDE), fill=Fact(state="unknown"))
    for house in (nobody, flagged(nobody, fill=True)):
        found = link(house, "sliding", "x")
        assert found.ratio is not None
        assert "whether the footing stands on fill is not known: the figure is for undisturbed soil" in found.reason
    assert "fill" not in link(soil(flagged(on(**WIDE), fill=True), fill=measured(False)), "sliding", "x").reason


def bodies(house: House) -> dict[str, Link]:
    """Every link of the bodies over both ends of what nobody knows."""
    return {k.address: k for body in run(house).runs[0].bodies for k in body.links}


def test_what_nobody_looked_at_under_the_footing_may_be_fill_and_passes_nothing() -> None:
    known = bodies(soil(known_house(), fill=measured(False)))
    unknown_fill = bodies(soil(known_house(), fill=Fact(state="unknown")))
    told = bodies(soil(known_house(), fill=Fact(state="unknown"), bearing_psf=measured(3000.0)))
    passed = [a for a, k in known.items() if k.verdict == "passes" and "overturning" not in a]
    assert passed
    for address in passed:
        found = unknown_fill[address]
        assert (found.verdict, found.ratio) == ("cannot be checked", known[address].ratio)
        assert "Fill under the footing" in found.depends_on
        assert ("/sliding/" in address) != (told[address].verdict == "passes")  # a report's bearing answers bearing


def test_other_doubts_keep_their_least_favourable_figure_where_fill_stops_the_verdict() -> None:
    """A footing 16 in. wide, perhaps 12: what it presses with at the narrower end stands beside the open verdict."""
    base = known_house().survey.foundation
    narrow = {k: replace(s, footing_width_in=Fact(value=16.0, low=12.0, high=18.0, state="estimated"))
              for k, s in base.segments.items()}  # fmt: skip
    house = replace(known_house(), survey=replace(known_house().survey, foundation=replace(base, segments=narrow)))
    known, unknown_fill = (bodies(soil(house, fill=f)) for f in (measured(False), Fact(state="unknown")))
    pressed = [a for a, k in known.items() if "/bearing/" in a and (k.least_favourable or 0) > (k.ratio or 9)]
    assert pressed
    for address in pressed:
        assert unknown_fill[address].least_favourable == pytest.approx(known[address].least_favourable)


def test_soil_of_a_kind_that_nobody_saw_has_no_value() -> None:
    """No cohesion of a clay that nobody saw: every check of the soil's strength stays open."""
    found = bodies(soil(known_house(), kind=Fact(state="unknown")))
    asked = [k for a, k in found.items() if "overturning" not in a and k.status != "does not apply"]
    assert {k.verdict for k in asked} == {"cannot be checked"}
    assert all(k.ratio is None and "the kind of soil is not known" in k.reason for k in asked)


def test_mud_has_no_value_until_a_report_gives_each() -> None:
    house = sited(on(**WIDE), "none presumed")
    assert link(house, "sliding", "x").status == link(house, "bearing", "front").status == "cannot be checked"
    told = soil(house, friction=measured(0.3), lateral_pcf=measured(200.0))
    found = link(told, "sliding", "x")
    assert found.capacity == pytest.approx(friction(told, OWN_WIDE) * 0.3 / 0.25 + FACES * 200 / 150)
    assert found.reason.startswith("friction of the report under the footing and 60 ft of cross footings")
    assert found.clause == "soil report, IBC 2021 1806.1"


OWN_WIDE = OWN + 140 * 32 * 6 / 144 * 150  # footings 48 in. wide and not 16


def test_ground_water_above_the_bottom_ends_the_table_for_soil_and_not_for_rock() -> None:
    """The bottom lies 30 in. down; water at 24 in. reaches it, water at 30 in. does not."""
    for kind, water, status in (("sand", 24.0, "cannot be checked"), ("sand", 30.0, "passes"),
                                ("clay", 24.0, "cannot be checked"), ("sedimentary rock", 24.0, "passes")):  # fmt: skip
        house = soil(sited(on(**WIDE), kind), water_depth_in=measured(water))
        assert link(house, "bearing", "front").status == status
    assert (
        "0.5 ft above the footing's bottom"
        in link(soil(on(**WIDE), water_depth_in=measured(24.0)), "sliding", "x").reason
    )


def test_with_a_report_the_lift_of_the_water_is_taken_off_what_presses() -> None:
    dry = soil(on(**WIDE), friction=measured(0.3), lateral_pcf=measured(200.0))
    wet = soil(dry, water_depth_in=measured(24.0))
    lift = 62.4 * 0.5 * 140 * 48 / 12
    before, after = (link(h, "sliding", "x").capacity for h in (dry, wet))
    assert before is not None
    assert after == pytest.approx(before - 0.3 * lift)
    narrow = but(wet, ("front",), footing_width_in=Fact(state="unknown"))
    assert link(narrow, "sliding", "x").reason.startswith("with ground water above the footing's bottom the width")


@pytest.mark.parametrize(
    ("facts", "shrinks"),
    [({"plasticity_index": 15.0}, True), ({"plasticity_index": 14.9}, False), ({"expansion_index": 20.0}, False),
     ({"expansion_index": 20.1}, True), ({"plasticity_index": 30.0, "expansion_index": 10.0}, False), ({}, False)],
)  # fmt: skip
def test_expansive_soil_may_have_shrunk_from_the_faces(facts: dict[str, float], shrinks: bool) -> None:
    house = soil(sited(on(**WIDE), "clay"), **{name: measured(value) for name, value in facts.items()})
    slides, presses = link(house, "sliding", "x").reason, link(house, "bearing", "front").reason
    assert ("no face is counted" in slides) == shrinks == ("expansive soil" in presses)
    assert ("cross footings against" in slides) != shrinks


# ---- Values of a report ---------------------------------------------------------------------------------------------


def test_a_value_of_a_report_says_whose_and_when_or_is_marked() -> None:
    with Sheet() as sheet:
        bare = soil(on(**WIDE), bearing_psf=measured(1800.0))
        found = link(bare, "bearing", "front")
    assert any("who gave it, and when, is not on record" in mark.what for mark in found.marks)
    signed = soil(on(**WIDE), bearing_psf=Fact(value=1800.0, by="Inlet Geotechnical", when="2025-05-02"))
    with Sheet() as sheet:
        found = link(signed, "bearing", "front")
    assert not any("not on record" in mark.what for mark in found.marks)
    origins = [s.title for s in sheet.steps if s.result is not None and s.result.symbol == "q_a"]
    assert "bearing from a soil report (Inlet Geotechnical, 2025-05-02)" in origins


def test_of_friction_and_cohesion_in_one_report_the_lesser_counts() -> None:
    both = soil(on(**WIDE), friction=measured(0.3), cohesion_psf=measured(200.0))
    alone = soil(on(**WIDE), friction=measured(0.3))
    sticky = soil(on(**WIDE), cohesion_psf=measured(200.0))
    found = [link(h, "sliding", "x") for h in (both, alone, sticky)]
    assert found[0].capacity == min(k.capacity or 0.0 for k in found[1:])
    assert "the lesser of the two it gives" in found[0].reason
    assert found[2].reason.startswith("cohesion of the report under the footing")


# ---- Hazards of the site --------------------------------------------------------------------------------------------


@pytest.mark.parametrize("there", [True, None])
def test_ground_that_may_liquefy_leaves_no_value_in_the_earthquake(there: bool | None) -> None:
    plain, house = on(**WIDE), flagged(on(**WIDE), liquefaction=there)
    for stage in ("sliding", "overturning", "bearing"):
        for before, after in zip(every(plain, stage), every(house, stage), strict=True):
            if before.status == "passes":
                assert after.status == "cannot be checked"
                assert f"In ground that stands it comes to {before.ratio:.2f}" in after.reason
                assert ("whether the ground may liquefy is not known (a map)" in after.reason) == (there is None)
            else:
                assert after.status == before.status
    assert {k.status for k in every(plain, "sliding")} & {"passes", "fails"}


def test_a_hazard_that_is_not_there_stops_nothing() -> None:
    plain, house = on(**WIDE), flagged(on(**WIDE), liquefaction=False, landslide=False, fault_zone=False, flood=False)
    for stage in ("sliding", "overturning", "bearing"):
        assert [replace(k, reason="") for k in every(plain, stage)] == [
            replace(k, reason="") for k in every(house, stage)
        ]
        assert [k.reason for k in every(plain, stage)] == [k.reason for k in every(house, stage)]


def test_what_slides_already_slides_in_ground_that_may_slide_too() -> None:
    weak = soil(on(), friction=measured(0.05), lateral_pcf=measured(10.0))
    assert link(weak, "sliding", "x").status == "fails"
    assert link(flagged(weak, landslide=True), "sliding", "x").status == "fails"


def test_a_landslide_stops_sliding_and_is_told_beside_the_rest() -> None:
    strong = soil(on(**WIDE), friction=measured(0.9))
    house = flagged(strong, landslide=True)
    assert link(strong, "sliding", "x").status == "passes"
    assert link(house, "sliding", "x").status == "cannot be checked"
    assert link(house, "sliding", "x").reason.startswith("the ground under the house may itself slide (a map)")
    assert link(house, "overturning", "x").status == link(strong, "overturning", "x").status
    assert "landslide: movement of the ground" in link(house, "bearing", "front").reason


def test_a_fault_and_a_flood_are_told_and_stop_nothing() -> None:
    house = flagged(on(**WIDE), fault_zone=True, flood=True)
    slides, presses = link(house, "sliding", "x"), link(house, "bearing", "front")
    assert slides.capacity == link(on(**WIDE), "sliding", "x").capacity
    assert "fault zone: a rupture" in slides.reason
    assert "flood: scour" in slides.reason
    assert "flood: scour" in presses.reason
    assert "fault" not in presses.reason


# ---- Faces ----------------------------------------------------------------------------------------------------------


def test_paving_keeps_the_top_foot() -> None:
    """Outside, 30 in. deep, all of it counts; inside nothing is ever paved."""
    paved = on(paved_outside=measured(True))
    faces = 150 * 30 * (2.5**2 + (3.0**2 - 1)) / 2
    assert link(paved, "sliding", "x").capacity == pytest.approx(friction(paved, OWN) + faces)


def test_a_strip_pushed_along_its_length_has_its_own_end() -> None:
    """The front strip alone, its ends 24 in. from the corners: 8 in. of stem, 30 in. deep outside, 36 in. inside."""
    house = on()
    base = house.survey.foundation
    front = {id: replace(s, from_in=24.0, to_in=456.0) for id, s in base.segments.items() if s.line == "front"}
    house = replace(house, survey=replace(house.survey, foundation=replace(base, segments=base.segments | front)))
    (found,) = (k for k in every(house, "sliding") if k.address.endswith("/x") and "cross" not in k.reason)
    end = 150 * (8 / 12) * (2.5**2 - 1) / 2
    dead = forces_of(house).gravity.lines["front"].dead * 36 / 40 + 36 * (8 * 40 + 8 * 6) / 144 * 150
    assert found.capacity == pytest.approx(0.25 * (0.6 - 0.14 * 1.2) * dead + end)
    assert found.reason.endswith("and its own end: a strip pushed along its length has almost no soil against it")


def test_an_end_that_meets_other_concrete_pushes_against_no_soil() -> None:
    assert all("its own end" not in k.reason and "ends of strips" not in k.reason for k in every(on(), "sliding"))
