"""Laws of a new foundation inside the old that hold for any strip under the known house."""

from __future__ import annotations

from functools import cache
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.house.building import Point
from groundsill.loadpath.chain import Link
from tests.loadpath.inner_houses import with_strip, with_work

SLACK = 1 + 1e-6
BEAM = 1.01  # the beam's own tolerance where springs and lengths change together
few = settings(max_examples=5, deadline=None)


@cache
def links(**changes: Any) -> dict[str, Link]:
    run = with_work(with_strip(**changes))
    assert run.misplaced == ()
    return {k.address: k for c in (*run.chains, *run.bodies) for k in c.links}


def ratio(address: str, **changes: Any) -> float:
    found = links(**changes)[address]
    if found.status == "does not apply":
        return 0.0
    return float("inf") if found.ratio is None else found.ratio


SLIDING = "body/inn1-footing/sliding/inn1-footing/x"
PRESSURE = "line/inn1/footing/pressure/both"
TRENCH = "line/inn1/old-beside/dig-line1/both"


@few
@given(narrow=st.integers(12, 30), more=st.integers(1, 12))
def test_a_wider_footing_never_slides_or_presses_more(narrow: int, more: int) -> None:
    """Of the same depth: it weighs more, and spreads what stands on it."""
    for address, slack in ((SLIDING, SLACK), (PRESSURE, BEAM)):
        before, after = (ratio(address, footing_width_in=w) for w in (narrow, narrow + more))
        assert after <= before * slack


@few
@given(depth=st.integers(14, 30), more=st.integers(1, 10))
def test_a_deeper_strip_turns_more_and_digs_nearer_to_the_old_footing_s_line(depth: int, more: int) -> None:
    over = "body/inn1-footing/overturning/inn1-footing/x"
    shallow, deep = ({"depth_in": d, "footing_thickness_in": 12} for d in (depth, depth + more))
    assert (links(**deep)[over].demand or 0) > (links(**shallow)[over].demand or 0)
    assert ratio(TRENCH, **deep) >= ratio(TRENCH, **shallow)


@few
@given(near=st.integers(24, 90), more=st.integers(1, 24))
def test_farther_from_the_old_footing_the_trench_never_reaches_nearer_to_its_line(near: int, more: int) -> None:
    places = ({"start": Point(x_in=24, y_in=y), "end": Point(x_in=336, y_in=y)} for y in (near, near + more))
    before, after = (ratio(TRENCH, **place) for place in places)
    assert after <= before * SLACK


@few
@given(bars=st.integers(2, 4), strength=st.sampled_from((2500.0, 3000.0, 4000.0)), size=st.sampled_from(("#4", "#5")))
def test_more_or_thicker_bars_and_stronger_concrete_never_weaken_the_section(
    bars: int, strength: float, size: str
) -> None:
    plain = {"bars_bottom": 2, "bars_top": 2, "bar": "#4", "strength_psi": 2500.0, "stem_width_in": 12}
    strong = plain | {"bars_bottom": bars, "bars_top": bars, "bar": size, "strength_psi": strength}
    for which in ("sagging", "hogging", "shear", "joint"):
        address = f"line/inn1/footing/{which}/both"
        assert (links(**strong)[address].capacity or 0) >= (links(**plain)[address].capacity or 0) * 0.98


@few
@given(wall=st.integers(12, 48), more=st.integers(1, 24))
def test_a_taller_wall_never_presses_the_soil_less(wall: int, more: int) -> None:
    """The force is the same but for a little of the wall's own weight, and its arm is longer."""
    low, high = (links(wall_height_in=h)["body/inn1-footing/overturning/inn1-footing/x"] for h in (wall, wall + more))
    assert (high.demand or 0) > (low.demand or 0)
