"""Overturning at the ends of a segment: lever arms, end posts, the sill across its grain, the storeys above, uplift."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from groundsill.house.building import WallOpening
from groundsill.house.fact import Fact, measured
from groundsill.loadpath.chain import Link
from groundsill.study import working
from groundsill.work.document import House
from groundsill.work.pieces import PanelPiece
from tests.loadpath.bolting import (
    a_hold_down,
    a_panel,
    links,
    sound_house,
    with_break,
    with_choices,
    with_hazard,
    with_pieces,
    with_sill,
    with_stem,
    without_cores,
)

PANEL = "overturning/piece-0"
NOBODY: Fact[float] = Fact(state="absent")  # looked for and not told: no range of its age stands in


@cache
def plain() -> House:
    """The cripple wall alone is counted; studs of full size, and a sill flush with them."""
    house = with_choices(sound_house(), storeys_above="not counted", storeys_above_reason="a test")
    house = with_studs(house, thickness_in=measured(2.0), depth_in=measured(4.0), spacing_in=measured(16.0))
    return with_sill(house, "si2", width_in=measured(6.0), damp=measured(False), condition=measured("sound"))


def with_studs(house: House, **changes: Any) -> House:
    under = house.survey.underfloor
    segments = {key: replace(s, stud=replace(s.stud, **changes)) for key, s in under.segments.items()}
    return replace(house, survey=replace(house.survey, underfloor=replace(under, segments=segments)))


def panel(start: float = 60.0, end: float = 108.0, **changes: Any) -> PanelPiece:
    return replace(a_panel("sg2", start, end), **changes)


def of_panel(house: House, *pieces: Any) -> dict[str, Link]:
    """The links of one panel on the right line, by what follows its id."""
    laid = with_pieces(house, *(pieces or (panel(),)))
    found = links(laid, "line2", work=True)
    return {key.removeprefix(f"{PANEL}/"): link for key, link in found.items() if key.startswith(f"{PANEL}/")}


def figures(link: Link) -> tuple[float, float]:
    assert link.demand is not None
    assert link.capacity is not None
    return link.demand, link.capacity


# --- lever arms ------------------------------------------------------------------------------------------------------


def test_a_stouter_end_post_shortens_the_arm_of_the_dead_load() -> None:
    """About the middle of the pressed post: 24 - 1 in. of a 4 ft panel with a 2 in. stud, 22 in. with four inches."""
    stud, post = of_panel(plain())["+"], of_panel(plain(), panel(end_post_in=4.0, end_post_depth_in=4.0))["+"]
    assert figures(post)[0] == figures(stud)[0]
    assert figures(post)[1] == pytest.approx(figures(stud)[1] * 22 / 23)


def test_of_studs_nobody_measured_the_middle_is_taken_three_inches_in() -> None:
    seen, unseen = of_panel(plain()), of_panel(with_studs(plain(), thickness_in=NOBODY))
    assert figures(unseen["+"])[1] == pytest.approx(figures(seen["+"])[1] * 21 / 23)
    assert unseen["+-sill"].status == "cannot be checked"
    assert unseen["+-sill"].reason == "the size of the end studs is not known"
    assert unseen["+-post"].reason == "the size or species of the end studs is not known"


def test_both_ways_are_alike_where_nothing_tells_them_apart() -> None:
    found = of_panel(plain())
    for tail in ("", "-sill", "-post"):
        assert figures(found[f"+{tail}"]) == figures(found[f"-{tail}"])


def test_what_is_pulled_and_the_load_come_down_at_the_other_end() -> None:
    """Without any dead load tension and compression are one couple."""
    house = with_hazard(plain(), S_S=9.0, S_1=3.0, S_DS=4.3, S_D1=3.0)  # 0.6 - 0.14 S_DS is gone: nothing holds
    found = of_panel(house)
    moment, holding = figures(found["+"])
    assert holding == 0.0 or found["+"].status == "fails"
    assert figures(found["+-post"])[0] >= moment / (4.0 - 2 / 12)


# --- the sill across its grain, the post along it --------------------------------------------------------------------


def test_a_stud_in_from_the_end_of_the_sill_has_three_eighths_of_an_inch_more() -> None:
    inside = of_panel(plain())["+-sill"]
    assert inside.clause == "NDS 2018 3.10.2, 4.2.6"
    assert figures(inside)[1] == pytest.approx(625 * 2.375 / 2 * 8)
    at_end = of_panel(plain(), panel(192.0, 240.0))["+-sill"]
    assert figures(at_end)[1] == pytest.approx(625 * 8)


def test_a_damp_sill_bears_two_thirds() -> None:
    dry, wet = of_panel(plain()), of_panel(with_sill(plain(), "si2", damp=measured(True)))
    assert figures(wet["+-sill"])[1] == pytest.approx(0.67 * figures(dry["+-sill"])[1])
    assert figures(wet["+-post"])[1] < figures(dry["+-post"])[1]


@pytest.mark.parametrize(
    ("changes", "reason"),
    [
        ({"condition": measured("decayed")}, "is decayed: what it bears cannot be told"),
        ({"condition": measured("soft")}, "is soft: what it bears cannot be told"),
        ({"gap_in": measured(0.5)}, "there is a gap or shims under"),
        ({"species": Fact(state="absent")}, "the species of"),
        ({"species": measured("Bamboo")}, "no row 'Bamboo'"),
    ],
)
def test_what_a_sill_in_doubt_bears_cannot_be_checked(changes: dict[str, Any], reason: str) -> None:
    link = of_panel(with_sill(plain(), "si2", **changes))["+-sill"]
    assert link.status == "cannot be checked"
    assert reason in link.reason


def test_where_the_sill_stands_back_less_of_the_stud_bears() -> None:
    back = of_panel(with_sill(plain(), "si2", projects_inside_in=measured(-1.0)))["+-sill"]
    assert figures(back)[1] == pytest.approx(0.75 * figures(of_panel(plain())["+-sill"])[1])


def test_the_studs_grade_is_the_lowest_until_somebody_tells_it() -> None:
    untold, told = of_panel(plain())["+-post"], of_panel(with_studs(plain(), grade="No. 2"))["+-post"]
    assert "grade not known: the lowest is taken, No. 3" in untold.reason
    assert figures(told)[1] > figures(untold)[1]


def test_two_studs_nailed_together_bear_on_twice_the_length() -> None:
    one, two = of_panel(plain())["+-sill"], of_panel(with_studs(plain(), at_ends=2))["+-sill"]
    assert figures(two)[1] == pytest.approx(figures(one)[1] * (4.375 / 4 * 16) / (2.375 / 2 * 8))


def test_snow_that_nobody_knows_lets_no_post_pass() -> None:
    house = plain()
    house = replace(house, survey=replace(house.survey, site=replace(house.survey.site, snow_psf=NOBODY)))
    found = links(with_pieces(house, a_panel("sg1a", 48.0, 144.0)), "line1", work=True)
    known = links(with_pieces(plain(), a_panel("sg1a", 48.0, 144.0)), "line1", work=True)
    for tail in ("sill", "post"):
        link = found[f"{PANEL}/+-{tail}"]
        assert (link.status, known[f"{PANEL}/+-{tail}"].status) == ("cannot be checked", "passes")
        assert link.reason.startswith("the roof snow on")


# --- the storeys above -----------------------------------------------------------------------------------------------


def chosen(how: str, reason: str = "a test") -> House:
    return with_choices(plain(), storeys_above=how, storeys_above_reason=reason)


def test_all_of_the_storeys_moment_asks_more_and_none_of_it_less() -> None:
    none, every = of_panel(chosen("not counted"))["+"], of_panel(chosen("all of it"))["+"]
    assert figures(every)[0] > 2 * figures(none)[0]
    assert figures(every)[1] == figures(none)[1]
    assert none.reason.endswith("; without what the storeys above turn (choice)")
    assert every.reason.endswith("; with all of its share of what the storeys above turn (choice)")


def test_the_reason_of_the_choice_stands_in_the_working() -> None:
    house = with_pieces(chosen("not counted", "as the plan sets do"), panel())
    notes = [step.title for step in working(house, "bolting").under(f"line/line2/{PANEL}/+") if step.kind == "note"]
    assert "without what the storeys above turn (choice): as the plan sets do" in notes


def held(house: House, capacity: float) -> dict[str, Link]:
    return of_panel(over_it(house), panel(), a_hold_down("sg2", 63.0, capacity_lb=capacity))


def over_it(house: House) -> House:
    """A wall of the storey without an opening over the right line."""
    building = house.survey.building
    walls = {key: replace(wall, openings={}) for key, wall in building.walls.items()}
    return replace(house, survey=replace(house.survey, building=replace(building, walls=walls)))


def test_between_the_bounds_nobody_can_say() -> None:
    """A hold-down that is enough for the cripple wall alone and not for the storeys above."""
    none, every = (figures(held(chosen(how), 100.0)["+"])[0] for how in ("not counted", "all of it"))
    between = 12 * (none + every) / 2 / 44
    link = held(chosen("both bounds"), between)["+"]
    assert link.status == "cannot be checked"
    assert "where the moment of the storeys above comes down is not known, and it matters" in link.reason
    assert link.clause == "statics: T below = T above + v h"
    assert held(chosen("both bounds"), 4 * between)["+"].status == "passes"


def test_a_choice_without_its_reason_is_not_followed() -> None:
    assert held(chosen("not counted", reason=" "), 900.0)["+"] == held(chosen("both bounds"), 900.0)["+"]


def test_under_an_opening_of_the_wall_above_nothing_of_it_comes_down() -> None:
    house = over_it(chosen("both bounds"))
    building = house.survey.building
    front = WallOpening(kind="passage", from_in=0.0, to_in=240.0, head_in=96.0)
    walls = {key: replace(wall, openings={"o": front}) for key, wall in building.walls.items()}
    house = replace(house, survey=replace(house.survey, building=replace(building, walls=walls)))
    link = of_panel(house)["+"]
    assert "no full-height wall stands over it" in link.reason
    alone = of_panel(with_choices(house, storeys_above="not counted"))["+"]
    assert figures(link) == figures(alone)


# --- whose hold-down it is --------------------------------------------------------------------------------------------


def two_panels(*stations: float, gap: float = 8.0, **changes: Any) -> dict[str, Link]:
    """Two panels of 4 ft beside each other on the right line, with hold-downs at these stations."""
    downs = (a_hold_down("sg2", station, **changes) for station in stations)
    laid = with_pieces(plain(), panel(60.0, 108.0), panel(108.0 + gap, 156.0 + gap), *downs)
    return links(laid, "line2", work=True)


def test_the_hold_down_of_the_neighbour_holds_nothing() -> None:
    """With the first panel's end lifted, the post of the second panel's start is pressed down."""
    bare, own, its, both = (two_panels(*stations) for stations in ((), (105.0,), (119.0,), (105.0, 119.0)))
    end = f"{PANEL}/-"
    assert figures(its[end]) == figures(bare[end])
    assert "hold-down H119 is not counted: it stands outside this part" in its[end].reason
    assert figures(both[end]) == figures(own[end])
    assert figures(own[end])[1] > 10 * figures(bare[end])[1]
    assert f"{end}-anchor-H119" not in both
    assert both[f"{end}-anchor-H105"].demand == own[f"{end}-anchor-H105"].demand  # it takes all of the pull
    assert figures(its["overturning/piece-1/+"])[1] == figures(both["overturning/piece-1/+"])[1]


def test_a_post_that_both_panels_are_nailed_to_serves_either() -> None:
    alone, shared = (two_panels(109.0, gap=2.0, shared_post=word) for word in (False, True))
    for end in (f"{PANEL}/-", "overturning/piece-1/+"):
        assert f"{end}-anchor-H109" not in alone
        assert figures(shared[end])[1] > 10 * figures(alone[end])[1]
    apart = two_panels(109.0, gap=8.0, shared_post=True)  # no post is so wide
    assert f"{PANEL}/--anchor-H109" not in apart


def test_one_hold_down_of_a_short_panel_holds_the_end_it_is_nearer_to() -> None:
    found = links(with_pieces(plain(), panel(60.0, 76.0), a_hold_down("sg2", 65.0)), "line2", work=True)
    assert f"{PANEL}/+-anchor-H65" in found
    assert f"{PANEL}/--anchor-H65" not in found


# --- what takes the uplift below -------------------------------------------------------------------------------------


def lifting(house: House | None = None, station: float = 104.0, **changes: Any) -> Link:
    """The footing under a hold-down at the start of a slender panel, pulled when the wall is pushed to its end."""
    ends = (a_hold_down("sg2", station), a_hold_down("sg2", 117.0))
    wall = with_stem(house or plain(), "fs2", **changes) if changes else house or plain()
    found = links(with_pieces(wall, panel(101.0, 120.0), *ends), "line2", work=True)
    return found[f"{PANEL}/+-footing-H{station:g}"]


def test_the_footing_holds_by_what_the_concrete_can_lift() -> None:
    """8 by 22 in. of 3,000 psi: 0.6 - 0.14 S_DS of the weight of the length that hangs, to either side."""
    link = lifting(top_width_in=measured(8.0))
    assert link.demand is not None
    assert link.demand > 0
    assert link.capacity is not None
    assert link.capacity > 0
    assert "toward its start" in link.reason
    assert link.extension == ""  # cored at 3,000 psi: plain concrete as the chapter has it


def test_soil_on_a_footing_of_known_size_comes_up_with_it() -> None:
    """12 in. wide under 8 in. of stem, 12 in. deep: of 6 in. of footing and 6 in. of soil, or of 12 in. of footing."""
    wall = {"top_width_in": measured(8.0), "footing_width_in": measured(12.0)}
    bare = lifting(**wall, footing_thickness_in=NOBODY)
    footed = lifting(**wall, footing_thickness_in=measured(6.0))
    assert figures(footed)[0] == figures(bare)[0]
    assert figures(footed)[1] > figures(bare)[1]
    deep = lifting(**wall, footing_thickness_in=measured(12.0))  # no soil on it, and more of it is concrete
    assert figures(deep)[1] > figures(footed)[1]


def test_of_concrete_that_no_core_gave_it_is_only_indicated() -> None:
    light = with_hazard(without_cores(plain()), S_S=0.35, S_1=0.1)
    link = lifting(with_stem(light, "fs2", top_width_in=measured(24.0)))
    assert link.extension.startswith("an old footing lifted as plain concrete")
    assert link.status in ("indicated", "does not apply", "fails")


@pytest.mark.parametrize("kind", ["crack", "full-depth crack", "cold joint", "step", "gap"])
def test_nothing_is_counted_past_a_break(kind: str) -> None:
    whole = lifting(top_width_in=measured(8.0))
    cut = lifting(with_break(with_stem(plain(), "fs2", top_width_in=measured(8.0)), "line2", 80.0, kind))
    assert cut.capacity is not None
    assert whole.capacity is not None
    assert cut.capacity < whole.capacity
    assert f"to a {kind}" in cut.reason


def capacities(name: str, values: tuple[float, ...]) -> Iterator[float]:
    for value in values:
        link = lifting(**{"top_width_in": measured(8.0), name: measured(value)})
        assert link.capacity is not None
        yield link.capacity


@pytest.mark.parametrize(
    ("name", "values"),
    [("strength_psi", (1000.0, 2000.0, 3000.0)), ("depth_in", (6.0, 12.0, 18.0)), ("top_width_in", (6.0, 8.0, 12.0))],
)
def test_stronger_and_larger_concrete_lifts_no_less(name: str, values: tuple[float, ...]) -> None:
    found = list(capacities(name, values))
    assert found == sorted(found)


@pytest.mark.parametrize(
    ("changes", "clause", "reason"),
    [
        ({"material": "brick"}, "TMS 402 chapter 9; IEBC 2021 A106.2", "brick: no tension is counted in it"),
        ({"material": "stone"}, "TMS 402 chapter 9; IEBC 2021 A106.2", "stone: no tension is counted in it"),
        ({"strength_psi": NOBODY}, "ACI 318-19 14.5.2", "the strength of the concrete is not known"),
        ({"depth_in": NOBODY}, "ACI 318-19 14.5.2", "how high and deep the concrete is is not known"),
    ],
)
def test_what_nobody_knows_of_it_cannot_be_checked(changes: dict[str, Any], clause: str, reason: str) -> None:
    link = lifting(**changes)
    assert link.status == "cannot be checked"
    assert link.clause.startswith(clause)
    assert reason in link.reason


def test_at_a_corner_the_return_wall_is_not_counted() -> None:
    ends = (a_hold_down("sg2", 3.0), a_hold_down("sg2", 16.0))
    wall = with_stem(plain(), "fs2", top_width_in=measured(8.0))
    found = links(with_pieces(wall, panel(0.0, 19.0), *ends), "line2", work=True)
    corner = found[f"{PANEL}/+-footing-H3"]
    assert "the return wall at the corner and its footing are not counted" in corner.reason


# --- the rim as a tie ------------------------------------------------------------------------------------------------


def tied(reason: str = "one length of rim, seen from end to end", **line: Any) -> House:
    house = with_choices(plain(), rim_tie="counted", rim_tie_reason=reason)
    under = house.survey.underfloor
    fir = {"species": measured("Douglas fir-larch"), "breadth_in": measured(2.0), "depth_in": measured(8.0)}
    joists = {key: replace(field, **fir) for key, field in under.joists.items()}
    lines = under.lines | {"line2": replace(under.lines["line2"], **({"rim": "rim joist"} | line))}
    return replace(house, survey=replace(house.survey, underfloor=replace(under, joists=joists, lines=lines)))


TWO = (panel(60.0, 108.0), panel(132.0, 180.0))


def second(house: House) -> dict[str, Link]:
    """The links of the panel that stands nearer to the line's end."""
    found = links(with_pieces(house, *TWO), "line2", work=True)
    return {key.split("/")[-1]: link for key, link in found.items() if key.startswith("overturning/piece-1/")}


def test_the_rim_is_not_counted_until_it_is_chosen() -> None:
    assert plain().choices.rim_tie == "not counted"
    assert "rim" not in second(plain())["+"].reason


def test_the_rim_holds_an_end_beside_the_next_segment_and_that_is_only_indicated() -> None:
    """2 by 8 in. over 2 ft and a post's width: the neighbour's couple governs, v h of it, and its arm is 46 in."""
    bare, by_rim = second(plain())["+"], second(tied())["+"]
    couple = figures(bare)[0] / 4.0  # the same force and height, over the whole length of the neighbour
    assert figures(by_rim)[1] == pytest.approx(figures(bare)[1] + couple * 46 / 12)
    assert by_rim.extension.startswith("the rim as a beam over the gap")
    assert by_rim.status != "passes"
    assert "one length of rim, seen from end to end (choice)" in by_rim.reason


def test_at_the_outer_end_there_is_no_neighbour_to_hold_it() -> None:
    outer = second(tied())["-"]
    assert figures(outer) == figures(second(plain())["-"])
    assert "no braced segment stands beyond this end" in outer.reason


def test_a_slender_rim_brings_what_its_own_bending_allows() -> None:
    """1 by 3 in. over 26 in.: 2 M'/g by 525 psi x 1.6 x 1.5."""
    house = tied()
    under = house.survey.underfloor
    thin = {"breadth_in": measured(1.0), "depth_in": measured(3.0)}
    joists = {key: replace(field, **thin) for key, field in under.joists.items()}
    slim = replace(house, survey=replace(house.survey, underfloor=replace(under, joists=joists)))
    added = figures(second(slim)["+"])[1] - figures(second(plain())["+"])[1]
    assert added == pytest.approx(2 * 525 * 1.6 * 1.5 * 9 / 6 / 26 * 46 / 12)


@pytest.mark.parametrize(
    ("house", "why"),
    [
        (tied(reason=" "), "the choice gives no reason"),
        (tied(rim="blocking"), "no rim joist was seen"),
    ],
)
def test_without_reason_or_rim_nothing_is_counted(house: House, why: str) -> None:
    link = second(house)["+"]
    assert figures(link) == figures(second(plain())["+"])
    assert why in link.reason
    assert link.extension == ""
