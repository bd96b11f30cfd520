"""Laws of force that hold for every house: weight, ground motion, place, turning, scale, order, and the sheet.

What is not a law is not tested as one: a heavier roof may well lower the force at the floor, since it draws the force
of the house upward, and a stiffer line may draw more than it gains.
"""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from threading import Barrier

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces, work_out
from groundsill.house.settle import prepare
from groundsill.loadpath.bodies import body_chains
from groundsill.loadpath.path import chains_of
from groundsill.study import run, working
from groundsill.work.apply import apply
from groundsill.work.document import House
from groundsill.working.sheet import Sheet, open_sheet
from tests.fixtures.small_house import small_house
from tests.forces.balance import forces_of, larch_street
from tests.forces.houses import houses
from tests.forces.reference_house import reference_house
from tests.forces.turned import backwards, heavier, mirrored, moved, quarter_turn, scaled

NEAR = 1e-9
KINDS = st.sets(st.sampled_from(("roof", "ceiling", "wall", "partition", "floor", "cripple wall")), min_size=1)
LAW = settings(max_examples=20)
SAMPLES = pytest.mark.parametrize("house", [larch_street(), small_house()], ids=["larch-street", "small-house"])


def line_forces(forces: Forces) -> dict[str, float]:
    return {id: line.force_lb for id, line in forces.lines.items()}


def near(forces: Forces):
    return {id: pytest.approx(force, abs=NEAR * forces.base_shear_lb) for id, force in line_forces(forces).items()}


def with_S_DS(house: House, S_DS: float) -> House:
    hazard = replace(house.survey.site.hazard, S_DS=S_DS)
    return replace(house, survey=replace(house.survey, site=replace(house.survey.site, hazard=hazard)))


# ---- Weight and ground motion ---------------------------------------------------------------------------------------


@LAW
@given(houses(with_work=False), KINDS, st.integers(101, 300))
def test_more_weight_anywhere_never_lowers_the_base_shear(house, kinds, percent):
    more = forces_of(heavier(house, percent / 100, frozenset(kinds)))
    assert more.base_shear_lb >= forces_of(house).base_shear_lb * (1 - 1e-12)


@LAW
@given(houses(with_work=False), st.integers(100, 300))
def test_at_fixed_shares_more_weight_raises_every_line_in_step(house, percent):
    """Every layer of every assembly k times over, no chimney: shares stay, and each line's force grows k times."""
    building = replace(house.survey.building, chimneys={}, walls={
        id: replace(wall, openings={}) for id, wall in house.survey.building.walls.items()
    })  # fmt: skip
    site = replace(house.survey.site, snow_psf=replace(house.survey.site.snow_psf, value=0.0, state="measured"))
    house = replace(house, survey=replace(house.survey, building=building, site=site))
    before, after = forces_of(house), forces_of(heavier(house, percent / 100))
    V = after.base_shear_lb
    for id, line in before.lines.items():
        assert after.lines[id].force_lb == pytest.approx(line.force_lb * percent / 100, abs=NEAR * V)
        assert after.lines[id].shares == pytest.approx(line.shares, abs=NEAR)


@LAW
@given(houses(with_work=False), st.integers(10, 200), st.integers(10, 200))
def test_on_the_plateau_every_line_grows_in_step_with_the_ground_motion(house, one, other):
    a, b = (forces_of(with_S_DS(house, s / 100)) for s in (one, other))
    assume(a.C_s_governs == b.C_s_governs and "12.8-2" in a.C_s_governs)
    for id, line in a.lines.items():
        assert line.force_lb / one == pytest.approx(b.lines[id].force_lb / other, rel=1e-12, abs=1e-9)


# ---- Place, turning, mirror, scale, order ---------------------------------------------------------------------------


@LAW
@given(houses(with_work=False), st.integers(-3000, 3000), st.integers(-3000, 3000))
def test_where_the_plan_is_drawn_changes_nothing(house, dx, dy):
    here, there = forces_of(house), forces_of(moved(house, dx, dy))
    assert line_forces(there) == near(here)
    assert there.weight_lb == pytest.approx(here.weight_lb, rel=1e-12)


@LAW
@given(houses(with_work=False))
def test_a_house_turned_a_quarter_has_the_same_forces_along_the_other_direction(house):
    here, there = forces_of(house), forces_of(quarter_turn(house))
    assert line_forces(there) == near(here)
    swapped = {"x": "y", "y": "x", None: None}
    assert [line.direction for line in there.lines.values()] == [
        swapped[line.direction] for line in here.lines.values()
    ]


@LAW
@given(houses(with_work=False))
def test_a_house_seen_in_a_mirror_has_the_same_forces(house):
    here, there = forces_of(house), forces_of(mirrored(house))
    assert line_forces(there) == near(here)
    assert [line.direction for line in there.lines.values()] == [line.direction for line in here.lines.values()]


@LAW
@given(houses(with_work=False, storeys=2))
def test_a_house_turned_or_mirrored_weighs_the_same_on_every_line_and_post(house):
    here = forces_of(house).gravity
    for other in (quarter_turn(house), mirrored(house), moved(house, 700.0, -300.0)):
        there = forces_of(other).gravity
        for name in ("lines", "posts"):
            for id, load in getattr(here, name).items():
                got = getattr(there, name)[id]
                assert (got.dead, got.live, got.snow) == pytest.approx((load.dead, load.live, load.snow), abs=1e-6)


@pytest.mark.parametrize(
    "turned", [quarter_turn, mirrored, lambda h: moved(h, 1000.0, 250.0)], ids=["quarter", "mirror", "moved"]
)
def test_larch_street_turned_mirrored_or_moved_passes_and_fails_the_same_links(turned):
    here, there = (run(house, ranges=False) for house in (larch_street(), turned(larch_street())))
    for one, other in zip(here.runs, there.runs, strict=True):
        for chain, twin in zip(one.chains, other.chains, strict=True):
            for link, again in zip(chain.links, twin.links, strict=True):
                assert (again.address, again.status) == (link.address, link.status)
                assert again.ratio == (None if link.ratio is None else pytest.approx(link.ratio, rel=1e-9)), (
                    link.address
                )


@LAW
@given(houses(with_work=False), st.sampled_from((0.5, 0.8, 1.25, 2.0)))
def test_a_house_to_another_scale_has_forces_by_the_square(house, k):
    """Areas grow by the square and weights per square foot stay. Chimneys, which are solid, are left out."""
    house = replace(house, survey=replace(house.survey, building=replace(house.survey.building, chimneys={})))
    here, there = forces_of(house), forces_of(scaled(house, k))
    assume(here.C_s_governs == there.C_s_governs and "12.8-2" in here.C_s_governs)
    assert there.weight_lb == pytest.approx(k * k * here.weight_lb, rel=1e-9)
    for id, line in here.lines.items():
        assert there.lines[id].force_lb == pytest.approx(k * k * line.force_lb, abs=NEAR * there.base_shear_lb)


@LAW
@given(houses(with_work=False))
def test_the_order_in_the_file_does_not_matter(house):
    here, there = forces_of(house), forces_of(backwards(house))
    assert line_forces(there) == {id: pytest.approx(f, rel=1e-12, abs=1e-9) for id, f in line_forces(here).items()}


@SAMPLES
def test_the_order_in_the_file_does_not_change_a_verdict(house):
    def verdicts(which: House) -> dict[str, tuple[str, str]]:
        runs = run(which, ranges=False).runs
        return {link.address + r.key: (link.status, link.reason) for r in runs for c in r.chains for link in c.links}

    assert verdicts(backwards(house)) == verdicts(house)


# ---- The sheet ------------------------------------------------------------------------------------------------------


def all_figures(house: House) -> list[tuple[object, ...]]:
    """Every figure of forces and chains, in order, as they come."""
    best = prepare(house).best
    reading = Reading(best.house, best.marks)
    forces = work_out(reading)
    found: list[tuple[object, ...]] = [(float(forces.weight_lb), float(forces.base_shear_lb), float(forces.C_s))]
    found += [(i.label, float(i.weight_lb), float(i.size)) for i in forces.items]
    found += [(level.name, float(level.force_lb)) for level in forces.levels]
    found += [(id, float(line.force_lb), tuple(map(float, line.shares))) for id, line in forces.lines.items()]
    for key in (None, *house.alternatives):
        chains = (*chains_of(reading, forces, apply(house, key).pieces), *body_chains(reading, forces))
        found += [(link.address, link.status, link.demand, link.capacity, link.ratio, link.reason)
                  for chain in chains for link in chain.links]  # fmt: skip
    return found


def assert_bit_equal(house: House) -> None:
    assert open_sheet() is None
    bare = all_figures(house)
    with Sheet() as sheet:
        recorded = all_figures(house)
    assert sheet.steps
    assert recorded == bare


@SAMPLES
def test_a_sheet_changes_no_bit_of_the_samples(house):
    assert_bit_equal(house)


@given(houses())
@settings(max_examples=25)
def test_a_sheet_changes_no_bit_of_any_figure(house):
    assert_bit_equal(house)


def written(house: House) -> list[tuple[str, str, str, tuple[float, ...]]]:
    """What one person's sheet holds: kind, section, title and figures of every step."""
    return [(s.kind, s.section, s.title, tuple(map(float, s.results))) for s in working(house).steps]


def test_two_people_at_two_sheets_never_write_on_each_others():
    """Two threads work out two different houses at the same moment, several times over."""
    pair = (larch_street(), reference_house())
    alone = [written(house) for house in pair]
    gate = Barrier(2)

    def several(n: int) -> list[list[tuple[str, str, str, tuple[float, ...]]]]:
        gate.wait()
        return [written(pair[n]) for _ in range(4)]

    with ThreadPoolExecutor(2) as pool:
        together = list(pool.map(several, range(2)))
    for n in range(2):
        assert together[n] == [alone[n]] * 4
    assert open_sheet() is None
