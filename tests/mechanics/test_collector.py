"""The force along a collector: equilibrium at every station, and NumPy's own integral of the same loads."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.mechanics.collector import Drain, axial

NEAR = 1e-9


@st.composite
def walls(draw: st.DrawFn, in_balance: bool = True) -> tuple[float, float, list[Drain]]:
    """Length in whole inches, force, and one to four walls with gaps; together they take the force (or not)."""
    stops = sorted(draw(st.sets(st.integers(0, 480), min_size=2, max_size=8).filter(lambda s: len(s) % 2 == 0)))
    length = stops[-1] + draw(st.integers(1, 60))
    spans = list(zip(stops[::2], stops[1::2], strict=True))
    parts = draw(st.lists(st.integers(1, 100), min_size=len(spans), max_size=len(spans)))
    force = float(draw(st.integers(100, 20_000)))
    total = sum(parts) if in_balance else draw(st.integers(50, 400))
    return (
        float(length),
        force,
        [Drain(float(a), float(b), force * part / total) for (a, b), part in zip(spans, parts, strict=True)],
    )


@given(walls())
def test_nothing_is_left_at_either_end_when_the_walls_take_all(case):
    length, force, drains = case
    assert axial(length, force, drains, 0.0) == 0.0
    assert axial(length, force, drains, length) == pytest.approx(0.0, abs=NEAR * force)


@given(walls(in_balance=False))
def test_the_end_holds_what_the_walls_have_not_taken(case):
    length, force, drains = case
    left = force - sum(d.force for d in drains)
    assert axial(length, force, drains, length) == pytest.approx(left, abs=NEAR * force)


@given(walls(in_balance=False))
def test_every_station_is_numpys_running_integral_of_floor_less_walls(case):
    """Loads per inch on a grid of one inch: every wall ends on the grid, so the sum is exact."""
    length, force, drains = case
    middles = np.arange(int(length)) + 0.5
    per_inch = np.full(int(length), force / length)
    for drain in drains:
        per_inch[(middles > drain.start) & (middles < drain.end)] -= drain.force / (drain.end - drain.start)
    running = np.concatenate([[0.0], np.cumsum(per_inch)])
    ours = [axial(length, force, drains, float(s)) for s in range(int(length) + 1)]
    scale = force + sum(d.force for d in drains)
    assert np.allclose(ours, running, rtol=0, atol=NEAR * scale)


def test_force_builds_up_away_from_walls_and_drains_over_them():
    """40 ft, 8,000 lb, a wall in the middle 10 ft: 200 lb/ft comes in everywhere, 800 lb/ft goes out over the wall."""
    wall = [Drain(15.0, 25.0, 8000.0)]
    assert [axial(40.0, 8000.0, wall, s) for s in (0, 10, 15, 20, 25, 30, 40)] == [
        0.0, 2000.0, 3000.0, 0.0, -3000.0, -2000.0, 0.0
    ]  # fmt: skip


def test_a_wall_at_one_end_drags_the_whole_floor_to_it():
    assert axial(40.0, 8000.0, [Drain(0.0, 10.0, 8000.0)], 10.0) == -6000.0
    assert axial(40.0, 8000.0, [Drain(30.0, 40.0, 8000.0)], 30.0) == 6000.0


def test_a_post_of_no_length_takes_its_force_in_one_jump_down():
    post = [Drain(20.0, 20.0, 8000.0)]
    before, after = axial(40.0, 8000.0, post, 20.0 - 1e-9), axial(40.0, 8000.0, post, 20.0)
    assert before == pytest.approx(4000.0)
    assert after - before == pytest.approx(-8000.0)


@given(walls())
def test_a_collector_seen_in_a_mirror_pulls_where_it_pushed(case):
    length, force, drains = case
    mirrored = [Drain(length - d.end, length - d.start, d.force) for d in drains]
    for station in range(0, int(length), 7):
        here = axial(length, force, drains, float(station))
        assert axial(length, force, mirrored, length - station) == pytest.approx(-here, abs=NEAR * force)
