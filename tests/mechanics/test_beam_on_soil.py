"""A beam on soil that pushes and never pulls: closed forms, laws that hold for any load, and what is refused."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from groundsill.mechanics.beam_on_soil import Beam, Couple, Loads, Piece, PointLoad, Settled, Spread, settle
from groundsill.mechanics.footing import pressure_under
from groundsill.standards.statics import winkler
from groundsill.working.errors import OutsideLimits

# 12 by 18 in. of concrete on 100 lb/in3
EI, K = 2.85e6 * 5832, 1200.0
HEAVY = 200.0  # lb/in: so heavy that it lifts nowhere, and the soil's answer is the closed form's


def beam(length: float, weight: float = 18.75, ei: float = EI, k: float = K) -> Beam:
    return Beam((Piece(length, ei, k, weight),))


def under(found: Settled, station: float) -> float:
    return min(found.stations, key=lambda s: abs(s.station_in - station)).deflection_in


# --- closed forms, the soil pulled nowhere ---------------------------------------------------------------------------


def test_an_endless_beam_is_winklers():
    found = settle(beam(2400.0, HEAVY), Loads((PointLoad(1200.0, 5000.0),)))
    λ = winkler.characteristic(K, EI)
    assert found.deepest.value - HEAVY / K == pytest.approx(winkler.endless_deflection(5000.0, λ, K), rel=1e-6)
    assert found.sagging.value == pytest.approx(winkler.endless_moment(5000.0, λ), rel=1e-6)
    assert (found.sagging.station_in, found.deepest.station_in) == (1200.0, 1200.0)
    assert found.shear.value == pytest.approx(2500.0)


def test_a_long_beam_loaded_at_its_end_is_winklers():
    found = settle(beam(1200.0, HEAVY), Loads((PointLoad(0.0, 5000.0),)))
    λ = winkler.characteristic(K, EI)
    assert found.deepest.value - HEAVY / K == pytest.approx(winkler.end_deflection(5000.0, λ, K), rel=1e-6)
    assert found.hogging.value == pytest.approx(winkler.end_moment(5000.0, λ), rel=1e-6)
    assert found.hogging.station_in == pytest.approx(67.76, abs=0.01)


@pytest.mark.parametrize("length", [24.0, 96.0, 240.0, 480.0])
def test_a_short_beam_loaded_at_its_middle_is_winklers(length: float):
    found = settle(beam(length, HEAVY), Loads((PointLoad(length / 2, 5000.0),)))
    λ = winkler.characteristic(K, EI)
    assert found.deepest.value - HEAVY / K == pytest.approx(
        winkler.centre_deflection(5000.0, λ, K, λ * length), rel=1e-6
    )
    assert found.sagging.value == pytest.approx(winkler.centre_moment(5000.0, λ, λ * length), rel=1e-6)


def test_two_posts_that_turn_a_beam_bend_it_both_ways():
    """Computed by 480 finite elements of another program: 4,000 lb up at 72 and down at 168 in. of a 240 in. beam."""
    found = settle(beam(240.0, HEAVY), Loads((PointLoad(72.0, -4000.0), PointLoad(168.0, 4000.0))))
    assert found.deepest.value - HEAVY / K == pytest.approx(0.029183, abs=5e-7)
    assert found.sagging.value == pytest.approx(79_246.0, abs=0.5)
    assert found.hogging.value == pytest.approx(79_246.0, abs=0.5)
    assert found.lifted == ()


def test_a_stiff_beam_presses_as_a_footing_does():
    """A block does not bend: it presses as an eccentric load on a stiff footing does, in its kern and out of it."""
    length, load = 48.0, 9000.0
    for e in (0.0, 4.0, 8.0, 14.0, 20.0):
        found = settle(beam(length, 0.0, ei=1e13), Loads((PointLoad(length / 2 + e, load),)))
        printed = pressure_under(load, load * e, length, 1.0)
        assert found.push.value == pytest.approx(printed.greatest, rel=1e-3)
        assert length - found.lifted_in == pytest.approx(printed.contact, rel=1e-3)


def test_a_beam_across_a_hole_spans_it():
    """Nearly rigid soil at both edges: a beam all but built in at both ends, w L^2/24 sagging between them and more."""
    hole = Beam((Piece(200.0, EI, 1e10, 0.0), Piece(120.0, EI, 0.0, 0.0), Piece(200.0, EI, 1e10, 0.0)))
    found = settle(
        hole, Loads(spreads=(Spread(200.0, 320.0, 50.0), Spread(0.0, 200.0, 1e4), Spread(320.0, 520.0, 1e4)))
    )
    assert 1.0 < found.sagging.value / (50.0 * 120.0**2 / 24) < 1.06
    assert found.sagging.station_in == pytest.approx(260.0, abs=0.5)


# --- laws ------------------------------------------------------------------------------------------------------------

LENGTHS = st.floats(36.0, 480.0)
SPRINGS = st.floats(100.0, 8000.0)
STIFF = st.floats(1e8, 1e11)
PARTS = st.floats(0.0, 1.0)
FORCES = st.floats(-4000.0, 12000.0)
LOADED = st.lists(st.tuples(PARTS, FORCES), min_size=1, max_size=4)


def stands(length: float, weight: float, loads: Loads) -> bool:
    """Whether the loads leave the beam standing, well inside its ends."""
    force = weight * length + sum(p.force_lb for p in loads.points)
    moment = weight * length**2 / 2 + sum(p.force_lb * p.station_in for p in loads.points)
    moment += sum(c.moment_lb_in for c in loads.couples)
    return force > 500.0 and 0.1 * length < moment / force < 0.9 * length


def points(length: float, loaded: list[tuple[float, float]]) -> Loads:
    return Loads(tuple(PointLoad(part * length, force) for part, force in loaded))


@given(LENGTHS, SPRINGS, STIFF, st.floats(5.0, 40.0), LOADED)
@settings(max_examples=60, deadline=None)
def test_all_that_presses_down_is_pushed_up_and_nothing_pulls(length, k, ei, weight, loaded):
    loads = points(length, loaded)
    assume(stands(length, weight, loads))
    found = settle(beam(length, weight, ei, k), loads)
    down = weight * length + sum(p.force_lb for p in loads.points)
    size = weight * length + sum(abs(p.force_lb) for p in loads.points)
    assert found.held_lb == pytest.approx(down, abs=1e-7 * size)
    assert found.residual_lb == pytest.approx(0.0, abs=1e-7 * size)
    assert found.residual_lb_in == pytest.approx(0.0, abs=1e-7 * size * length)
    assert found.push.value == pytest.approx(k * found.deepest.value, rel=1e-9)
    inside = [(a + b) / 2 for a, b in found.lifted]
    assert all(under(found, middle) < 1e-9 for middle in inside if min(b - a for a, b in found.lifted) > length / 20)
    # shear and moment by equilibrium are those of the bent shape: M = -E I w''
    for a, b in pairwise(found.stations):
        h = b.station_in - a.station_in
        bent = -ei * (b.slope - a.slope) / h
        mean = (a.moment_right_lb_in + b.moment_left_lb_in) / 2 - (b.shear_left_lb - a.shear_right_lb) * h / 12
        assert bent == pytest.approx(mean, abs=2e-4 * size * length)


@given(LENGTHS, SPRINGS, st.floats(5.0, 40.0), LOADED)
@settings(max_examples=40, deadline=None)
def test_a_beam_seen_from_behind_settles_the_same(length, k, weight, loaded):
    loads = points(length, loaded)
    assume(stands(length, weight, loads))
    here = settle(beam(length, weight, EI, k), loads)
    behind = settle(
        beam(length, weight, EI, k), Loads(tuple(PointLoad(length - p.station_in, p.force_lb) for p in loads.points))
    )
    for ours, theirs in (
        (here.sagging, behind.sagging),
        (here.hogging, behind.hogging),
        (here.deepest, behind.deepest),
    ):
        assert ours.value == pytest.approx(theirs.value, rel=1e-6, abs=1e-6 * weight * length**2)
    assert here.lifted_in == pytest.approx(behind.lifted_in, abs=1e-3 * length)


@given(LENGTHS, SPRINGS, st.floats(1.05, 8.0), st.floats(5.0, 40.0), LOADED)
@settings(max_examples=40, deadline=None)
def test_on_stiffer_soil_no_beam_stores_more_work(length, k, more, weight, loaded):
    """The loads sink less on stiffer soil, taken together; a single station may not."""
    loads = points(length, loaded)
    assume(stands(length, weight, loads))
    work = []
    for spring in (k, more * k):
        found = settle(beam(length, weight, EI, spring), loads)
        own = sum(
            weight * (b.station_in - a.station_in) * (a.deflection_in + b.deflection_in) / 2
            + weight * (b.station_in - a.station_in) ** 2 * (a.slope - b.slope) / 12
            for a, b in pairwise(found.stations)
        )
        work.append(own + sum(p.force_lb * under(found, p.station_in) for p in loads.points))
    assert work[1] <= work[0] + 1e-6 * abs(work[0])


@given(LENGTHS, SPRINGS, st.floats(0.1, 0.9), st.floats(1.0, 12000.0), st.floats(1.1, 5.0))
@settings(max_examples=40, deadline=None)
def test_on_stiffer_soil_a_single_load_never_sinks_deeper(length, k, part, force, more):
    loads = Loads((PointLoad(part * length, force),))
    soft, firm = (settle(beam(length, 18.75, EI, spring), loads) for spring in (k, more * k))
    assert under(firm, part * length) <= under(soft, part * length) * (1 + 1e-9)


@given(LENGTHS, SPRINGS, st.floats(0.15, 0.85), st.floats(0.2, 0.45), st.floats(1.2, 4.0))
@settings(max_examples=40, deadline=None)
def test_a_heavier_beam_lifts_less(length, k, part, pull, more):
    """Pulled up at a point by a part of its own weight."""
    loads = Loads((PointLoad(part * length, -pull * 18.75 * length),))
    assume(stands(length, 18.75, loads))
    light, heavy = (settle(beam(length, 18.75 * times, EI, k), loads) for times in (1.0, more))
    assert heavy.lifted_in <= light.lifted_in + 1e-3 * length


@given(LENGTHS, st.floats(100.0, 5000.0))
@settings(max_examples=20, deadline=None)
def test_a_couple_is_two_forces_that_turn_as_much(length, moment):
    a, b = length / 2 - 0.25, length / 2 + 0.25
    turned = settle(beam(length), Loads(couples=(Couple(length / 2, moment),)))
    pushed = settle(beam(length), Loads((PointLoad(a, -moment / 0.5), PointLoad(b, moment / 0.5))))
    assert turned.deepest.value == pytest.approx(pushed.deepest.value, rel=1e-3)
    before = next(s for s in turned.stations if s.station_in == pytest.approx(length / 2))
    assert before.moment_right_lb_in - before.moment_left_lb_in == pytest.approx(moment)


@given(LENGTHS, SPRINGS, st.floats(1.0, 50.0))
@settings(max_examples=20, deadline=None)
def test_a_beam_under_its_own_weight_is_level_and_straight(length, k, weight):
    found = settle(beam(length, weight, EI, k), Loads())
    assert found.deepest.value == pytest.approx(weight / k)
    assert found.push.value == pytest.approx(weight)
    assert max(found.sagging.value, found.hogging.value) <= 1e-6 * weight * length**2
    assert found.lifted == ()


def test_pieces_that_are_alike_are_one_beam():
    whole = settle(beam(240.0), Loads((PointLoad(60.0, 8000.0),), spreads=(Spread(100.0, 200.0, 12.0),)))
    cut = Beam(tuple(Piece(length, EI, K, 18.75) for length in (50.0, 90.0, 100.0)))
    found = settle(cut, Loads((PointLoad(60.0, 8000.0),), spreads=(Spread(100.0, 200.0, 12.0),)))
    assert found.sagging.value == pytest.approx(whole.sagging.value, rel=1e-5)
    assert found.lifted_in == pytest.approx(whole.lifted_in, abs=0.01)


# --- what is refused -------------------------------------------------------------------------------------------------


def test_a_beam_that_turns_over_is_refused_with_where_its_load_stands():
    with pytest.raises(OutsideLimits) as caught:
        settle(beam(48.0, 10.0), Loads((PointLoad(40.0, 1000.0),), (Couple(24.0, 20_000.0),)))
    assert str(caught.value) == (
        "the beam turns over: all that presses on it stands at 48.3 in., outside the soil from 0 to 48 in."
    )


def test_a_beam_pulled_off_the_soil_is_refused_with_what_is_lacking():
    with pytest.raises(OutsideLimits, match="the beam is lifted off the soil: 4,100 lb more pull up than press down"):
        settle(beam(48.0, 18.75), Loads((PointLoad(24.0, -5000.0),)))


def test_a_beam_over_no_soil_is_refused():
    with pytest.raises(OutsideLimits, match="no soil stands under the beam"):
        settle(beam(48.0, 18.75, EI, 0.0), Loads())


def test_a_beam_that_stands_beyond_the_soil_is_refused():
    hanging = Beam((Piece(20.0, EI, K, 10.0), Piece(40.0, EI, 0.0, 10.0)))
    with pytest.raises(OutsideLimits, match=r"stands at 30\.0 in., outside the soil from 0 to 20 in"):
        settle(hanging, Loads())


@pytest.mark.parametrize(
    ("pieces", "loads", "says"),
    [
        ((), Loads(), "a beam of no pieces settles on nothing"),
        ((Piece(0.0, EI, K),), Loads(), r"a piece of beam 0 in\. long with EI = 1\.66212e\+10 lb-in2"),
        ((Piece(48.0, EI, -1.0),), Loads(), "on a spring of -1 lb/in per in., weighing 0 lb/in, has no meaning"),
        ((Piece(48.0, float("nan"), K),), Loads(), "has no meaning"),
        ((Piece(48.0, EI, K, 1.0),), Loads((PointLoad(50.0, 1.0),)), r"at 50 in\. does not stand on a beam 48 in\."),
        ((Piece(48.0, EI, K, 1.0),), Loads((PointLoad(5.0, float("inf")),)), "a load on the beam is no number"),
        ((Piece(48.0, EI, K, 1.0),), Loads(spreads=(Spread(5.0, 5.0, 1.0),)), "must end to the right of its start"),
    ],
)  # fmt: skip
def test_what_has_no_meaning_is_refused(pieces, loads, says):
    with pytest.raises(OutsideLimits, match=says):
        settle(Beam(pieces), loads)
