"""Sharing by a flexible and by a rigid floor, skewed lines among them: equilibrium, and NumPy as witness."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.forces.reading import Reading
from groundsill.forces.share import ACCIDENTAL, flexible_shares, plan_line, reliance, rigid_shares
from groundsill.forces.weights import WeightItem, weight_items
from groundsill.house.underfloor import Line
from groundsill.work.document import House
from tests.forces.balance import middle_of, reading_of
from tests.forces.houses import houses
from tests.forces.reference_house import reference_house

NEAR = 1e-9
LAW = settings(max_examples=25)


def with_diagonal(house: House) -> House:
    """The house with one more line that is relied on, from its first corner to its third."""
    lowest, storey = min(house.survey.building.storeys.items(), key=lambda pair: pair[1].floor_z_in)
    line = Line(
        order=99, mark="D1", name="diagonal", start=storey.outline[0], end=storey.outline[2], storey=lowest,
        position="interior", relied_on=True, relied_reason="as drawn",
    )  # fmt: skip
    under = house.survey.underfloor
    return replace(house, survey=replace(house.survey, underfloor=replace(under, lines=under.lines | {"diag": line})))


def relied_lines(reading: Reading, direction: str):
    return [
        plan_line(reading, id, direction)
        for id in reading.house.survey.underfloor.lines
        if reliance(reading, id).relied_on
    ]


def masses(items: tuple[WeightItem, ...]) -> dict[int, tuple[float, float, float]]:
    """Weight and centre of every level that shakes, item by item with Shapely."""
    found: dict[int, list[tuple[float, float, float]]] = {}
    for item in (i for i in items if i.seismic):
        for level, share in item.levels:
            if share * item.weight_lb:
                found.setdefault(level, []).append((item.weight_lb * share, *middle_of(item)))
    return {
        level: (w := sum(p[0] for p in parts), sum(p[0] * p[1] for p in parts) / w, sum(p[0] * p[2] for p in parts) / w)
        for level, parts in found.items()
    }


@LAW
@given(houses(with_work=False), st.booleans())
def test_a_flexible_floor_is_held_along_across_and_in_turning(house, diagonal):
    """Per pound of each level: one along the earthquake, none across it, no turning about the level's own centre."""
    reading = reading_of(with_diagonal(house) if diagonal else house)
    items = weight_items(reading)
    for direction in ("x", "y"):
        sharing = flexible_shares(reading, items, direction)
        assert sharing.missing == ""
        lines = relied_lines(reading, direction)
        for level, (_, cx, cy) in masses(items).items():
            force = [(line, sharing.shares[line.id].fraction[level]) for line in lines]
            size = sum(abs(f) for _, f in force)
            along, across = sum(f * line.ux for line, f in force), sum(f * line.uy for line, f in force)
            if direction == "y":
                along, across = across, along
            turning = sum(f * ((line.x - cx) * line.uy - (line.y - cy) * line.ux) for line, f in force)
            reach = max(max(abs(line.x - cx), abs(line.y - cy)) for line in lines)
            assert (along, across) == pytest.approx((1.0, 0.0), abs=NEAR * size)
            assert turning == pytest.approx(0.0, abs=NEAR * size * reach)


@LAW
@given(houses(with_work=False), st.data())
def test_a_rigid_floor_shares_by_stiffness_with_the_mass_standing_off_either_way(house, data):
    """NumPy: three equations for how the floor moves, solved for the mass in place and 5 % off to either side.

    All levels stand off to one side together; each line has the case that gives it most over all of them.
    """
    reading = reading_of(with_diagonal(house))
    items = weight_items(reading)
    for direction, across in (("x", 1), ("y", 0)):
        lines = relied_lines(reading, direction)
        k = {line.id: data.draw(st.integers(1, 100)) * 1000.0 for line in lines}
        sharing = rigid_shares(reading, items, direction, k)
        spread = [p[across] for i in items if i.seismic for p in i.points]
        off = ACCIDENTAL * (max(spread) - min(spread))
        totals = {shift: dict.fromkeys(k, 0.0) for shift in (0.0, off, -off)}
        for _, cx, cy in masses(items).values():
            for shift, total in totals.items():
                centre = (cx, cy + shift) if direction == "x" else (cx + shift, cy)
                rows = np.array(
                    [
                        [line.ux, line.uy, (line.x - centre[0]) * line.uy - (line.y - centre[1]) * line.ux]
                        for line in lines
                    ]
                )
                stiff = np.array([k[line.id] for line in lines])
                load = np.array([1.0, 0, 0] if direction == "x" else [0, 1.0, 0])
                moves = np.linalg.solve(rows.T @ (stiff[:, None] * rows), load)
                for line, force in zip(lines, stiff * (rows @ moves), strict=True):
                    total[line.id] += force
        worst = {id: max(abs(total[id]) for total in totals.values()) for id in k}
        got = {id: abs(sum(share.fraction.values())) for id, share in sharing.shares.items()}
        assert got == pytest.approx(worst, abs=1e-7)


def test_a_symmetric_house_on_a_rigid_floor_pays_for_the_mass_standing_off():
    """Four equal lines round 30 by 40 ft (eaves to 43 ft): half of the force and what 5 % of turning adds.

    Along x the mass stands off by 5 % of 33 ft, eaves included, 1.65 ft. Turning stiffness is 2 x 15^2 + 2 x 20^2 =
    1,250 ft^2, so a line along x takes 1/2 + 1.65 x 15 / 1,250 = 0.5198 of it.
    """
    reading = reading_of(reference_house())
    sharing = rigid_shares(reading, weight_items(reading), "x", dict.fromkeys(("front", "right", "rear", "left"), 1.0))
    for line in ("front", "rear"):
        assert abs(sharing.shares[line].fraction[0]) == pytest.approx(0.5 + 1.65 * 15 / 1250)


def test_a_line_of_no_stiffness_takes_nothing_from_a_rigid_floor():
    reading = reading_of(reference_house())
    stiffness = {"front": 1.0, "rear": 1.0, "left": 1.0, "right": 0.0}
    sharing = rigid_shares(reading, weight_items(reading), "x", stiffness)
    assert sharing.shares["right"].fraction[0] == 0.0


def test_a_skewed_line_takes_the_component_along_itself():
    """A diagonal line relied on is no longer left out: it carries, and the lines beside it carry less."""
    house = reference_house()
    without, with_it = reading_of(house), reading_of(with_diagonal(house))
    before = flexible_shares(without, weight_items(without), "x").shares
    after = flexible_shares(with_it, weight_items(with_it), "x").shares
    assert after["diag"].fraction[0] > 0.1
    assert after["front"].fraction[0] < before["front"].fraction[0]
