"""The soil under pressed end posts, and what a cut footing loses to the pull of its hold-downs.

The reference house, 40 by 30 ft, with one panel in its front wall, on stems 40 in. high and footings 16 in. wide.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces
from groundsill.house.fact import unknown
from groundsill.house.foundation import FoundationBreak
from groundsill.loadpath.bodies import bodies_of, body_chains
from groundsill.loadpath.chain import Link
from groundsill.loadpath.path import chain_of
from groundsill.loadpath.post_bearing import pulled_off
from groundsill.work.document import House
from groundsill.work.pieces import HoldDownPiece, PanelPiece, Piece
from groundsill.working.sheet import Sheet
from tests.forces.balance import forces_of, reading_of
from tests.loadpath.test_bodies import on


def panel(house: House, low: float, high: float) -> PanelPiece:
    """A panel in the front wall between two stations, with end posts 3.5 in. wide."""
    (segment,) = (id for id, s in house.survey.underfloor.segments.items() if s.line == "front")
    return PanelPiece(
        segment=segment, from_in=low, to_in=high, panel="15/32, 8d", edge_spacing_in=4.0, mark="P1",
        end_post_in=3.5, end_post_depth_in=3.5, end_post_species="Douglas fir-larch",
    )  # fmt: skip


def held(house: House, low: float, high: float) -> list[tuple[str, Piece]]:
    """The panel with hold-downs 6 in. in from its ends."""
    one = panel(house, low, high)
    ends = [
        HoldDownPiece(segment=one.segment, station_in=at, capacity_lb=3000.0, mark=f"H{n}")
        for n, at in enumerate((low + 6, high - 6), start=1)
    ]
    return [("p1", one), *((f"h{n}", end) for n, end in enumerate(ends))]


def read(house: House, **choices: Any) -> tuple[Reading, Forces]:
    told = replace(house, choices=replace(house.choices, storeys_above="not counted", storeys_above_reason="to see it"))
    return reading_of(told), forces_of(told)


def posts(house: House, pieces: list[tuple[str, Piece]], line: str = "front") -> Link:
    reading, forces = read(house)
    (found,) = (
        k for c in body_chains(reading, forces, pieces) for k in c.links
        if ".posts/" in k.address and k.scope_id == line
    )  # fmt: skip
    return found


def compression(house: House, pieces: list[tuple[str, Piece]]) -> float:
    """The compression that the sill under the end post is checked for, in the line's own chain."""
    reading, forces = read(house)
    links = chain_of(reading, forces, "front", pieces).links
    return max(k.demand or 0.0 for k in links if k.title.startswith("sill under"))


def test_a_post_presses_on_what_stem_and_footing_spread_it_over() -> None:
    """40 in. of concrete at 45 degrees to both sides of a 3.5 in. post, 16 in. wide; the line's own load besides."""
    house = on()
    pieces = [("p1", panel(house, 200.0, 296.0))]
    found, C = posts(house, pieces), compression(house, pieces)
    spread = 3.5 / 12 + 2 * 40 / 12
    load = forces_of(house).gravity.lines["front"]
    own = 40 * (8 * 40 + 8 * 6) / 144 * 150
    line = (load.dead + own + 0.75 * (load.live + load.snow)) / 40
    assert found.demand == pytest.approx((C / spread + line) / (16 / 12))
    assert "spread over 7.0 ft of footing, 1 ft out for each foot of stem and footing" in found.reason
    assert found.capacity == 2000.0


def test_masonry_spreads_half_as_far() -> None:
    house = on(material="brick")
    pieces = [("p1", panel(house, 200.0, 296.0))]
    assert "spread over 3.6 ft of footing, 0.5 ft out" in posts(house, pieces).reason


def test_a_post_near_a_crack_spreads_to_one_side_only() -> None:
    """The pressed post at 296 in. less half its width; the crack 5 in. beyond it."""
    house = on()
    base = house.survey.foundation
    crack = FoundationBreak(line="front", station_in=300.0, kind="full-depth crack")
    cut = replace(house, survey=replace(house.survey, foundation=replace(base, breaks={"c": crack})))
    pieces = [("p1", panel(cut, 200.0, 296.0))]
    whole, parted = posts(house, pieces), posts(cut, pieces)
    assert (parted.demand or 0.0) > (whole.demand or 0.0) > 0.0
    assert f"spread over {(3.5 + 40 + 300 - 294.25) / 12:.1f} ft" in parted.reason


def test_the_worst_post_of_a_line_stands_for_all_of_it() -> None:
    house = on()
    one, two = panel(house, 100.0, 196.0), replace(panel(house, 300.0, 372.0), mark="P2")
    both = posts(house, [("p1", one), ("p2", two)])
    assert both.reason.startswith("the worst of 4, under the ")


def test_a_footing_nobody_measured_has_one_link_that_says_so() -> None:
    house = on(footing_width_in=unknown())
    reading, forces = read(house)
    links = [k for c in body_chains(reading, forces, [("p1", panel(house, 200.0, 296.0))]) for k in c.links]
    assert not [k for k in links if ".posts/" in k.address]
    assert [k.reason for k in links if k.address.endswith("/bearing/front/both")] == [
        "the width of the footing is not known"
    ]


def test_the_working_of_a_post_stands_on_the_sheet() -> None:
    house = on()
    pieces = [("p1", panel(house, 200.0, 296.0))]
    with Sheet() as sheet:
        found = posts(house, pieces)
    steps = {step.id for place in (*found.working, found.address) for step in sheet.under(place)}
    assert {"statics/spread-length", "ibc-2021/1806.2"} <= steps
    last = [s.result for place in found.working for s in sheet.under(place) if s.result is not None]
    assert any(float(value) == found.demand for value in last)


# ---- Hold-downs -----------------------------------------------------------------------------------------------------


def pull(house: House, pieces: list[tuple[str, Piece]]) -> list[float]:
    reading, forces = read(house)
    return [float(pulled_off(reading, forces, body, "x", pieces, "earthquake")) for body in bodies_of(reading)]


def test_within_one_body_what_is_pulled_up_is_pressed_down_again() -> None:
    house = on()
    assert pull(house, held(house, 200.0, 296.0)) == [0.0]


def test_a_cut_between_the_ends_of_a_panel_parts_pull_and_press() -> None:
    """Each part is pulled up once, by the push toward the other; what slides under it is the less."""
    house = on()
    base = house.survey.foundation
    cuts = {
        n: FoundationBreak(line="front", station_in=at, kind="full-depth crack")
        for n, at in (("a", 150.0), ("b", 248.0), ("c", 350.0))
    }
    cut = replace(house, survey=replace(house.survey, foundation=replace(base, breaks=cuts)))
    pieces = held(cut, 200.0, 296.0)
    found = pull(cut, pieces)
    reading, forces = read(cut)
    tension = {
        float(k.reason.split("tension at the end ")[1].split(" lb")[0].replace(",", ""))
        for k in chain_of(reading, forces, "front", pieces).links
        if k.title.startswith("overturning about") and "tension at the end" in k.reason
    }
    (T,) = tension
    assert sorted(found) == pytest.approx([0.0, T, T], abs=1.0)
    with_, without = (
        {k.address: k.capacity for c in body_chains(reading, forces, p) for k in c.links if "/sliding/" in k.address}
        for p in (pieces, pieces[:1])
    )
    less = [(without[a] or 0.0) - (with_[a] or 0.0) for a in with_ if a.endswith("/x")]
    assert sorted(less) == pytest.approx([0.0, 0.25 * T, 0.25 * T], abs=1.0)
