"""Where the weight sits: centres of mass by hand on a small house, and as laws on any."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings

from groundsill.forces.mass import centre_of, weight_map
from groundsill.forces.reading import Reading
from groundsill.forces.seismic import work_out
from groundsill.forces.weights import BASE, WeightItem
from groundsill.house.settle import prepare
from groundsill.study import run
from groundsill.work.document import House
from tests.fixtures.small_house import small_house
from tests.forces.houses import houses


def item(
    label: str, weight: float, *points: tuple[float, float], levels: tuple[tuple[int, float], ...], seismic: bool = True
) -> WeightItem:
    shape = "area" if len(points) > 2 else "line" if len(points) == 2 else "point"
    kind = {"area": "floor", "line": "wall", "point": "chimney"}[shape]
    return WeightItem(label, label, kind, shape, points, weight, levels, 1.0, weight, seismic)  # type: ignore[arg-type]


FLOOR = item("floor", 600.0, (0, 0), (120, 0), (120, 60), (0, 60), levels=((0, 1.0),))
WALL = item("wall", 400.0, (0, 0), (0, 60), levels=((0, 0.5), (1, 0.5)))
CRIPPLE = item("cripple wall", 100.0, (120, 0), (120, 60), levels=((0, 0.5), (BASE, 0.5)))
FREE = item("chimney", 5000.0, (200, 30), levels=((BASE, 1.0),), seismic=False)


def test_each_level_has_its_own_centre_by_the_lever() -> None:
    found = weight_map((FLOOR, WALL, CRIPPLE, FREE), ("floor of the house", "roof"))
    low, high = found.levels
    # 600 lb at x 60, 200 lb at x 0, 50 lb at x 120
    assert (low.name, low.weight_lb) == ("floor of the house", 850.0)
    assert low.x_in == pytest.approx((600 * 60 + 50 * 120) / 850)
    assert low.y_in == pytest.approx(30.0)
    assert (high.weight_lb, high.x_in, high.y_in) == (200.0, 0.0, 30.0)


def test_the_whole_leaves_out_what_rests_on_the_foundation_or_stands_free() -> None:
    found = weight_map((FLOOR, WALL, CRIPPLE, FREE), ("floor of the house", "roof"))
    assert found.whole is not None
    assert found.whole.weight_lb == 1050.0
    assert found.whole.x_in == pytest.approx((600 * 60 + 50 * 120) / 1050)
    assert {p.label: p.counted_lb for p in found.items} == {
        "chimney": 0.0, "floor": 600.0, "wall": 400.0, "cripple wall": 50.0,
    }  # fmt: skip


def test_items_come_heaviest_first_and_at_their_middle() -> None:
    found = weight_map((WALL, FLOOR, FREE), ("floor", "roof"))
    assert [(p.label, p.x_in, p.y_in) for p in found.items] == [
        ("chimney", 200, 30), ("floor", 60, 30), ("wall", 0, 30),
    ]  # fmt: skip


def test_a_level_that_weighs_nothing_has_no_centre() -> None:
    assert centre_of("roof", ()) is None
    assert centre_of("roof", ((0.0, (5.0, 5.0)),)) is None
    found = weight_map((FREE,), ("floor", "roof"))
    assert (found.levels, found.whole) == ((), None)


def test_the_small_house_weighs_on_paper_what_it_weighs_in_the_force() -> None:
    forces = run(small_house(), ranges=False).forces
    found = weight_map(forces.items, [level.name for level in forces.levels])
    assert [c.weight_lb for c in found.levels] == pytest.approx([level.weight_lb for level in forces.levels])
    assert found.whole is not None
    assert found.whole.weight_lb == pytest.approx(forces.weight_lb)


@settings(max_examples=30, deadline=None)
@given(houses(with_work=False))
def test_centres_lie_among_the_items_and_levels_come_to_the_whole(house: House) -> None:
    best = prepare(house).best
    forces = work_out(Reading(best.house, best.marks))
    found = weight_map(forces.items, [level.name for level in forces.levels])
    assert found.whole is not None
    total = math.fsum(c.weight_lb for c in found.levels)
    assert abs(total - found.whole.weight_lb) <= 1e-9 * total
    for axis in ("x_in", "y_in"):
        moment = math.fsum(c.weight_lb * getattr(c, axis) for c in found.levels)
        assert abs(moment - found.whole.weight_lb * getattr(found.whole, axis)) <= 1e-6 * total
        places = [getattr(p, axis) for p in found.items if p.counted_lb]
        for centre in (*found.levels, found.whole):
            assert min(places) - 1e-6 <= getattr(centre, axis) <= max(places) + 1e-6
