"""Cases described in public, turned into readings and levels, with the verdict the source gives."""

from __future__ import annotations

import dataclasses

import pytest

from groundsill.findings import findings_of
from groundsill.findings.shape import Spot, shape_of
from groundsill.findings.trend import Timed, trend_of
from groundsill.house.building import Point
from groundsill.house.record import SpotLevel
from tests.fixtures.small_house import small_house


def test_a_crack_that_breathes_with_the_seasons_for_five_years():
    """foundationcracking.com/monitoring/seasonal-foundation-monitoring.

    The widest crack measures 1/8 in. "plus a hair" every January and 1/8 in. every July, five years long: it is not
    growing. A hair is taken as a hundredth of an inch, January and July as their middles (our reading).
    """
    told = [Timed(f"{year}-{month}-15", 0.125 + hair) for year in range(2018, 2023)
            for month, hair in (("01", 0.01), ("07", 0.0))]  # fmt: skip
    trend = trend_of(told, 1 / 64, 0.01)
    assert trend.moves == "not moving"
    assert trend.rate_in_yr == pytest.approx(0.0, abs=1e-3)


def test_the_same_crack_after_one_january_is_too_soon():
    """The same page: after the first January alone the owner could not know; the answer was to read again in July."""
    trend = trend_of([Timed("2018-01-15", 0.135)], 1 / 64, 0.01)
    assert trend.moves == "too soon to tell"
    assert trend.next == "2018-04-16"


def test_a_stiff_slab_tilted_one_per_cent_each_way_is_a_foot_out_of_level_and_bends_nowhere():
    """slabperformance.com/stiffer-foundations-higher-elevation-differences: 40 by 60 ft, 1 % each way, 12 in. apart."""
    corners = [(x, y) for x in (0.0, 240.0, 480.0) for y in (0.0, 360.0, 720.0)]
    shape = shape_of("", [Spot("", x, y, -0.01 * x - 0.01 * y) for x, y in corners], 0.0625)
    assert shape.highest.z_in - shape.lowest.z_in == pytest.approx(12.0)
    assert max(m.ratio for m in (*shape.distortion, *shape.sags, *shape.hogs)) == pytest.approx(0.0, abs=1e-12)


@pytest.mark.parametrize(
    ("tilt", "weight", "looked_into"),
    [(1 / 100, "watch", "no"), (1 / 210, "does not matter", "yes"), (1 / 400, "does not matter", "yes")],
)
def test_a_house_in_clare_that_tilts_by_one_in_a_hundred(tilt, weight, looked_into):
    """substruck.ie/news/tilt-in-co-clare: tilted 1/100 without distortion, it needs remedial work; below 1/200 none."""
    house = small_house()
    told = {
        f"l{n}": SpotLevel(mark=f"LV{n}", at=Point(x_in=x, y_in=y), height_in=-tilt * x)
        for n, (x, y) in enumerate((x, y) for x in (0.0, 200.0, 400.0) for y in (0.0, 300.0))
    }
    house = dataclasses.replace(house, survey=dataclasses.replace(house.survey, levels=told))
    found = next(f for f in findings_of(house).findings if f.address.startswith("finding/levels/"))
    assert found.gravity.weight == weight
    assert next(r.answer for r in found.gravity.reasons if r.key == "noticed") == looked_into
    assert ("engineer" in [cure.key for cure in found.cures]) == (weight == "watch")
