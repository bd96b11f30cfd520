"""The reference house and the vertical distribution of the worked cases, both "computed", through the whole program."""

from __future__ import annotations

import pytest

from groundsill.loadpath.chain import Link
from groundsill.standards.asce7_16.elf import vertical_distribution
from groundsill.study import Study, run
from groundsill.work.checks import check_house
from tests.forces.balance import forces_of
from tests.forces.reference_house import reference_house

PRINTED = 0.5  # the case gives whole pounds


def sheathing(study: Study, line: str) -> Link:
    """The one panel of a line, as designed."""
    (chain,) = [c for c in study.runs[1].chains if c.id == line]
    (stage,) = [s for s in chain.stages if s.key == "sheathing"]
    (link,) = [link for link in stage.links if link.capacity is not None]
    return link


def allowable(study: Study, line: str) -> float:
    """The force of a line at allowable level: what its panel takes, all of it."""
    link = sheathing(study, line)
    assert link.demand is not None
    return link.demand * {"front": 16.0, "right": 12.0}[line]


@pytest.fixture(scope="module")
def full() -> Study:
    """Full force, with the prescribed 40 % of each wall in panels: 16 ft of the long wall, 12 ft of the short."""
    return run(reference_house(panels={"front": 16.0, "right": 12.0}), ranges=False)


@pytest.fixture(scope="module")
def reduced() -> Study:
    """The same at three quarters."""
    return run(reference_house(force_factor=0.75, panels={"front": 16.0, "right": 12.0}), ranges=False)


def test_the_reference_house_is_a_sound_survey():
    assert check_house(reference_house(panels={"front": 16.0})) == ()


def test_it_weighs_77910_lb_item_by_item(full):
    forces = full.forces
    by_kind: dict[str, float] = {}
    for item in forces.items:
        by_kind[item.kind] = by_kind.get(item.kind, 0.0) + item.weight_lb
    assert by_kind == pytest.approx(
        {"roof": 14_190, "ceiling": 12_000, "wall": 25_200, "partition": 12_000, "floor": 12_000, "cripple wall": 5_040}
    )
    assert forces.weight_lb == pytest.approx(77_910, abs=1e-6)
    assert [(level.name, level.weight_lb) for level in forces.levels] == [
        ("floor of the storey", pytest.approx(12_000 + 12_600 + 6_000 + 2_520)),
        ("roof", pytest.approx(14_190 + 12_000 + 12_600 + 6_000)),
    ]


def test_base_shear_at_full_force_and_at_three_quarters(full, reduced):
    assert (full.forces.S_DS, full.forces.rho) == (pytest.approx(1.2), 1.0)
    assert full.forces.C_s == pytest.approx(1.2 / 6.5)
    assert full.forces.base_shear_lb == pytest.approx(14_383, abs=PRINTED)
    assert reduced.forces.base_shear_lb == pytest.approx(10_788, abs=PRINTED)
    assert reduced.forces.base_shear_full_lb == pytest.approx(14_383, abs=PRINTED)


def test_every_line_takes_half_of_it_at_allowable_level(full, reduced):
    for line in ("front", "right"):
        assert allowable(full, line) == pytest.approx(5_034, abs=PRINTED)
        assert allowable(reduced, line) == pytest.approx(3_776, abs=PRINTED)
    half = full.forces.base_shear_lb / 2
    assert [line.force_lb for line in full.forces.lines.values()] == [pytest.approx(half)] * 4


def test_length_of_panel_asked_for_at_380_plf(full, reduced):
    capacity = sheathing(full, "front").capacity
    assert capacity == pytest.approx(380.0)
    assert allowable(full, "front") / capacity == pytest.approx(13.25, abs=0.005)
    assert allowable(reduced, "front") / capacity == pytest.approx(9.94, abs=0.005)


def test_the_prescribed_length_passes_on_the_long_wall_and_fails_on_the_short_at_full_force(full, reduced):
    """The lesson of the case: 40 % of the wall is enough at three quarters of the force, and not at all of it."""
    long, short = sheathing(full, "front"), sheathing(full, "right")
    assert (long.demand, long.status) == (pytest.approx(314.6, abs=0.05), "passes")
    assert (short.demand, short.status) == (pytest.approx(419.5, abs=0.05), "fails")
    short = sheathing(reduced, "right")
    assert (short.demand, short.status) == (pytest.approx(314.6, abs=0.05), "passes")


def test_with_sheathing_that_is_no_panel_the_same_house_draws_three_times_the_force():
    assert forces_of(reference_house(system="A.17")).base_shear_lb == pytest.approx(46_746, abs=PRINTED)


def test_vertical_distribution_of_two_levels():
    """30 kip at 19 ft, 40 kip at 10 ft: C_v .5876 and .4124 (computed); a short period, so k is 1."""
    found = vertical_distribution(70.0, 0.2, [40.0, 30.0], [10.0, 19.0])
    assert [level.C_vx for level in found] == [pytest.approx(0.4124, abs=5e-5), pytest.approx(0.5876, abs=5e-5)]
    assert [level.F_x for level in found] == [pytest.approx(70 * 400 / 970), pytest.approx(70 * 570 / 970)]


def test_the_reference_house_spreads_its_force_by_weight_and_height(full):
    """Floor at 44 in., roof at 152 in. above the foundation: w h of each over their sum."""
    floor, roof = full.forces.levels
    assert (floor.height_ft, roof.height_ft) == pytest.approx((44 / 12, 152 / 12))
    whole = 33_120 * 44 + 44_790 * 152
    assert (floor.C_vx, roof.C_vx) == pytest.approx((33_120 * 44 / whole, 44_790 * 152 / whole))
