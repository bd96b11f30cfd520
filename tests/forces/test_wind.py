"""Wind on the whole house and on its lines: by hand on a box, in equilibrium on any house, and what is refused."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.forces.seismic import Forces
from groundsill.forces.wind import Wind
from groundsill.house.building import Point, RoofPart
from groundsill.house.fact import Fact, measured, unknown
from groundsill.standards.asce7_16.wind import wind_base
from groundsill.work.document import EditionOverride, House
from groundsill.working.sheet import Sheet
from groundsill.working.value import Mark, marks_of
from tests.fixtures.small_house import small_house
from tests.forces.balance import forces_of
from tests.forces.houses import houses
from tests.loadpath.houses import turned

BASE_IN = 0.5 * 360 / (360 + 360 + 240 + 240) * 8.0  # half of one 30-ft stem stands 8 in. higher: the mean of all tops


def blown(house: House, **site: Any) -> House:
    """A house with wind on it: 110 mph, exposure B, level ground all round, unless told otherwise."""
    told = {"wind_mph": measured(110.0), "exposure": "B", "K_zt": measured(1.0), **site}
    return replace(house, survey=replace(house.survey, site=replace(house.survey.site, **told)))


def with_roof(house: House, *parts: RoofPart) -> House:
    """The house under another roof."""
    building = replace(house.survey.building, roof={f"rf{n}": part for n, part in enumerate(parts)})
    return replace(house, survey=replace(house.survey, building=building))


def roof(shape: Any, span_deg: float = 90.0, box: tuple[float, float, float, float] = (0, 360, 0, 240)) -> RoofPart:
    """A roof of 6 in 12 over a box of the plan."""
    x1, x2, y1, y2 = box
    corners = ((x1, y1), (x2, y1), (x2, y2), (x1, y2))
    return RoofPart(
        mark="R", outline=tuple(Point(x_in=float(x), y_in=float(y)) for x, y in corners), assembly="as-roof",
        slope_rise_per_run=0.5, span_deg=span_deg, storey="st1", shape=shape,
    )  # fmt: skip


def wind_of(house: House) -> Wind:
    """The wind on a house that has all that is asked for."""
    forces = forces_of(house)
    assert forces.wind is not None, forces.wind_lacks
    return forces.wind


def gable() -> House:
    """The small house, 30 by 20 ft, under one gable without overhang, its ridge along x."""
    return with_roof(blown(small_house()), roof("gable"))


# --- by hand ---------------------------------------------------------------------------------------------------------


def test_the_house_of_the_box_has_the_wind_of_the_box() -> None:
    """Wall top 142 in. less the base; a rise of 5 ft over half of 20 ft; the ground lies where the survey says."""
    wind = wind_of(gable())
    H_w = (142.0 - BASE_IN) / 12
    h = wind.roof_height_ft
    across = wind_base(110.0, "B", h, 30.0, 20.0, H_w, 5.0, 0.5, "sloped")
    end = wind_base(110.0, "B", h, 20.0, 30.0, H_w, 5.0, 0.5, "gable end")
    assert wind.along["y"].W_lb == pytest.approx(across.W)
    assert wind.along["x"].W_lb == pytest.approx(end.W)
    assert wind.along["x"].roof_ft2 == 0.0
    assert wind.along["x"].wall_ft2 == pytest.approx(20.0 * (H_w + 2.5))
    assert (wind.along["y"].governs, wind.along["x"].governs) == (across.governs, end.governs)


def test_the_force_acts_at_the_middle_of_what_it_pushes() -> None:
    found = wind_of(gable()).along["x"]
    H_w = (142.0 - BASE_IN) / 12
    by_hand = (20 * H_w * H_w / 2 + 50 * (H_w + 5 / 3)) / (20 * H_w + 50)
    assert found.height_ft == pytest.approx(by_hand)


def test_two_opposite_lines_take_half_of_the_wind_each() -> None:
    house = gable()
    stone = {id: replace(s, material="poured concrete") for id, s in house.survey.foundation.segments.items()}
    foundation = replace(house.survey.foundation, segments=stone)
    wind = wind_of(replace(house, survey=replace(house.survey, foundation=foundation)))
    for direction, pair in (("x", ("line1", "line3")), ("y", ("line2", "line4"))):
        for id in pair:
            assert wind.lines[id].W_lb == pytest.approx(wind.along[direction].W_lb / 2)  # type: ignore[index]


def test_wind_and_earthquake_are_held_against_each_other_at_allowable_stress() -> None:
    forces = forces_of(gable())
    assert forces.wind is not None
    for id, line in forces.wind.lines.items():
        assert line.allowable_lb == pytest.approx(0.6 * line.W_lb)
        assert line.earthquake_lb == pytest.approx(0.7 * 1.3 * forces.lines[id].force_lb)
        assert line.governs == (line.allowable_lb > line.earthquake_lb)


# --- the roof --------------------------------------------------------------------------------------------------------


def test_a_roof_of_untold_shape_is_taken_as_the_higher_and_it_is_said() -> None:
    untold = with_roof(blown(small_house()), roof(None))
    found, told = wind_of(untold), wind_of(with_roof(blown(small_house()), roof("one slope")))
    assert {way: w.W_lb for way, w in found.along.items()} == {way: w.W_lb for way, w in told.along.items()}
    assert found.along["y"].W_lb > wind_of(gable()).along["y"].W_lb
    assert "for wind roof R is taken as one slope from edge to edge" in found.remarks[0]
    assert told.remarks == ()
    assert found.remarks[0] in forces_of(untold).warnings


def test_a_hip_meets_the_wind_with_a_slope_from_every_side() -> None:
    hip = wind_of(with_roof(blown(small_house()), roof("hip")))
    assert hip.along["x"].roof_ft2 == pytest.approx(20.0 * 5.0)
    assert hip.along["y"].roof_ft2 == pytest.approx(30.0 * 5.0)


def test_the_two_planes_of_a_gable_show_once() -> None:
    south, north = roof("one slope", 270.0, (0, 360, 0, 120)), roof("one slope", 90.0, (0, 360, 120, 240))
    planes = wind_of(with_roof(blown(small_house()), south, north))
    assert planes.along["y"].W_lb == pytest.approx(wind_of(gable()).along["y"].W_lb)


# --- laws ------------------------------------------------------------------------------------------------------------


@given(house=houses(), exposure=st.sampled_from("BCD"))
@settings(max_examples=25)
def test_on_any_house_the_lines_together_hold_the_wind(house: House, exposure: str) -> None:
    forces = forces_of(blown(house, exposure=exposure))
    if forces.wind is None:
        assert "above_outside_soil_in" in forces.wind_lacks
        return
    if any(forces.lines[id].direction is None for id in forces.wind.lines) or forces.missing:
        return
    for direction, found in forces.wind.along.items():
        mine = [line.W_lb for id, line in forces.wind.lines.items() if forces.lines[id].direction == direction]
        assert sum(mine) >= found.W_lb * (1 - 1e-9)  # equal, but where an overhang pulls one of them the other way


def test_a_house_turned_by_a_right_angle_has_its_winds_changed_over() -> None:
    before, after = wind_of(gable()), wind_of(turned(gable()))
    assert after.along["x"].W_lb == pytest.approx(before.along["y"].W_lb)
    assert after.along["y"].W_lb == pytest.approx(before.along["x"].W_lb)
    for id, line in before.lines.items():
        assert after.lines[id].W_lb == pytest.approx(line.W_lb)


def test_faster_wind_and_more_open_ground_never_ask_for_less() -> None:
    calm, fast = wind_of(gable()), wind_of(blown(gable(), wind_mph=measured(150.0)))
    open_ = wind_of(blown(gable(), exposure="D"))
    hill = wind_of(blown(gable(), K_zt=measured(1.5)))
    for other in (fast, open_, hill):
        assert all(other.along[way].W_lb > calm.along[way].W_lb for way in calm.along)


# --- what it must be told --------------------------------------------------------------------------------------------


def without_heights(house: House) -> House:
    """The house with nobody knowing how high its foundation stands out of the soil."""
    segments = {id: replace(s, above_outside_soil_in=unknown()) for id, s in house.survey.foundation.segments.items()}
    return replace(house, survey=replace(house.survey, foundation=replace(house.survey.foundation, segments=segments)))


@pytest.mark.parametrize(
    ("house", "words"),
    [
        (small_house(), "no basic wind speed is in the survey: survey.site.wind_mph, ASCE 7-16 26.5"),
        (blown(small_house(), exposure=None), "but no exposure: survey.site.exposure, ASCE 7-16 26.7"),
        (
            blown(small_house(), K_zt=unknown(), slope_rise_per_run=measured(0.3)),
            "the ground falls 0.30 to 1: a hill may speed the wind up, and the topographic factor is not in the survey",
        ),
        (without_heights(blown(small_house())), "how high the foundation stands out of the soil was measured nowhere"),
    ],
)
def test_what_is_missing_for_wind_is_named_with_its_clause(house: House, words: str) -> None:
    forces: Forces = forces_of(house)
    assert forces.wind is None
    assert words in forces.wind_lacks


def test_a_house_too_tall_for_the_method_is_not_looked_at() -> None:
    house = blown(small_house())
    storeys = {id: replace(s, floor_z_in=900.0) for id, s in house.survey.building.storeys.items()}
    tall = replace(house, survey=replace(house.survey, building=replace(house.survey.building, storeys=storeys)))
    assert "this way is for houses up to 60 ft high" in forces_of(tall).wind_lacks


def test_level_ground_is_taken_where_nobody_told_of_a_hill_and_marks_the_wind() -> None:
    with Sheet():
        wind = wind_of(blown(gable(), K_zt=unknown()))
    taken = Mark("assumed range", "topographic factor of wind: 1, no hill, ridge or bank that stands out")
    assert all(taken in marks_of((line.W_lb,)) for line in wind.lines.values())
    assert "the topographic factor of wind is not in the survey and is taken as 1: survey.site.K_zt" in wind.remarks


def test_a_doubtful_speed_marks_every_line() -> None:
    guessed: Fact[float] = Fact(value=110.0, low=100.0, high=120.0, state="estimated", how="an old map")
    with Sheet():
        wind = wind_of(blown(gable(), wind_mph=guessed))
    assert all(any(mark.kind == "estimated" for mark in marks_of((line.W_lb,))) for line in wind.lines.values())


def test_by_the_newer_edition_wind_goes_by_the_older_and_says_so() -> None:
    house = blown(small_house())
    override = EditionOverride(edition="asce7-22", reason="a test")
    hazard = house.survey.site.hazard
    assert hazard is not None
    site = replace(house.survey.site, hazard=replace(hazard, S_DS=1.2, S_D1=0.7))
    basis = replace(house.basis, overrides={**house.basis.overrides, "asce7": override})
    newer = wind_of(replace(house, basis=basis, survey=replace(house.survey, site=site)))
    assert newer.document == "asce7-16"
    assert "wind is worked out by ASCE 7-16: the wind figures of ASCE 7-22 are not held" in newer.remarks
    assert {w: f.W_lb for w, f in newer.along.items()} == {w: f.W_lb for w, f in wind_of(house).along.items()}
