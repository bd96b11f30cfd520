"""Surveys that no force can be worked out for are refused with the field to mend, never with a traceback."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from groundsill.house.building import Assembly, WallOpening
from groundsill.house.fact import Fact, measured
from groundsill.study import run
from groundsill.work.checks import check_house
from groundsill.work.document import House
from groundsill.working.errors import BadSurvey
from groundsill.working.sheet import Sheet
from tests.fixtures.small_house import small_house
from tests.forces.balance import forces_of
from tests.loadpath.houses import known_house


def chosen(house: House, **choices: Any) -> House:
    return replace(house, choices=replace(house.choices, **choices))


def built(house: House, **building: Any) -> House:
    return replace(house, survey=replace(house.survey, building=replace(house.survey.building, **building)))


def moved(house: House, **hazard: Any) -> House:
    site = house.survey.site
    assert site.hazard is not None
    site = replace(site, hazard=replace(site.hazard, **hazard))
    return replace(house, survey=replace(house.survey, site=site))


def on_foundation(house: House, **segment: Any) -> House:
    base = house.survey.foundation
    segments = {id: replace(s, **segment) for id, s in base.segments.items()}
    return replace(house, survey=replace(house.survey, foundation=replace(base, segments=segments)))


def refused(house: House) -> list[str]:
    with pytest.raises(BadSurvey) as found:
        forces_of(house)
    return [fault.line() for fault in found.value.faults]


def test_less_than_the_whole_force_asks_for_its_reason() -> None:
    assert refused(chosen(small_house(), force_factor=0.1, force_reason=" ")) == [
        "choices.force_reason: nothing is not allowed; less than the whole force (0.1 of it) is taken only with its "
        "printed reason"
    ]
    assert forces_of(chosen(small_house(), force_factor=1.0, force_reason="")).factor == 1.0


def test_a_system_nobody_knows_is_answered_with_those_there_are() -> None:
    (line,) = refused(chosen(small_house(), system="Z.99"))
    assert line.startswith("choices.system: 'Z.99' is not allowed; ASCE 7-16 Table 12.2-1")
    assert "A.15 bearing walls, light-frame wood, wood structural panels" in line
    assert "A.17" in line


def test_an_assembly_without_layers_is_named() -> None:
    house = small_house()
    assemblies = house.survey.building.assemblies | {"as-wall": Assembly(name="Outside wall", kind="wall")}
    bare = built(house, assemblies=assemblies)
    assert check_house(bare) == ()  # a survey under way
    assert refused(bare) == [
        "survey.building.assemblies.as-wall.layers: no layer is not allowed; at least one layer: a material of the "
        "weight tables, or any words with its weight in psf"
    ]


def just_begun(house: House) -> House:
    """A floor on its lines and nothing above it yet."""
    building, under = house.survey.building, house.survey.underfloor
    lines = {id: replace(line, above=None) for id, line in under.lines.items()}
    storeys = {id: replace(s, ceiling=None) for id, s in building.storeys.items()}
    building = replace(building, roof={}, walls={}, partitions={}, chimneys={}, storeys=storeys)
    return replace(house, survey=replace(house.survey, building=building, underfloor=replace(under, lines=lines)))


@pytest.mark.parametrize("recorded", [False, True])
def test_a_level_where_nothing_weighs_yet_has_no_force(recorded: bool) -> None:
    house = just_begun(small_house())
    if recorded:
        with Sheet():
            forces = forces_of(house)
    else:
        forces = forces_of(house)
    assert [(level.name, float(level.weight_lb) > 0) for level in forces.levels] == [
        ("floor of Main floor", True),
        ("roof", False),
    ]
    assert float(forces.levels[1].force_lb) == 0.0
    assert run(house, ranges=False).forces.weight_lb == pytest.approx(float(forces.weight_lb))


def test_a_house_that_weighs_nothing_is_refused() -> None:
    house = just_begun(small_house())
    weightless = {
        id: replace(a, layers=tuple(replace(layer, psf=measured(0.0)) for layer in a.layers))
        for id, a in house.survey.building.assemblies.items()
    }
    assert refused(built(house, assemblies=weightless)) == [
        "survey.building: no weight above the base is not allowed; floors, walls, a roof that weigh"
    ]


def test_heights_that_leave_no_storey_above_the_base_name_the_floor() -> None:
    high = on_foundation(small_house(), top_z_in=measured(600.0))
    assert check_house(high) == ()
    assert refused(high) == [
        "survey.building.storeys.st1.floor_z_in: 34 in. is not allowed; a storey whose top stands above the base; the "
        "base is the mean top of the foundation, 600.0 in. above top of the foundation at its lowest corner"
    ]


def test_heights_that_go_wrong_at_the_end_of_a_range_are_refused_in_words_too() -> None:
    guessed = Fact(value=0.0, low=-20.0, high=500.0, state="estimated", how="by eye")
    with pytest.raises(BadSurvey, match=r"survey\.building\.storeys\.st1\.floor_z_in: 34 in\. is not allowed"):
        run(on_foundation(known_house(), top_z_in=guessed))


def test_a_floor_below_the_base_gets_no_force_and_is_told() -> None:
    forces = forces_of(on_foundation(small_house(), top_z_in=measured(40.0)))
    assert float(forces.levels[0].force_lb) == 0.0
    assert any(
        w.startswith("the floor of Main floor stands at 34.0 in., not above the base, so no force is put there")
        for w in forces.warnings
    )


def test_openings_larger_than_their_wall_are_a_fault_of_the_file_and_of_the_run() -> None:
    house = small_house()
    walls = house.survey.building.walls
    low = built(house, walls=walls | {"wl1": replace(walls["wl1"], height_in=10.0)})
    says = "survey.building.walls.wl1.openings: 42.1 square feet of openings is not allowed; no more than the wall "
    assert [fault.line() for fault in check_house(low)] == [f"{says}itself, 25.0 square feet"]
    assert refused(low) == [f"{says}itself, 25.0 square feet"]


def test_an_opening_may_fill_its_wall() -> None:
    house = small_house()
    walls = house.survey.building.walls
    glazed = replace(walls["wl2"], openings={"wo3": WallOpening(from_in=0, to_in=240, head_in=108)})
    full = built(house, walls=walls | {"wl2": glazed})
    assert check_house(full) == ()
    assert forces_of(full).weight_lb > 0


def test_ground_motion_a_table_has_no_figure_for_asks_for_a_study() -> None:
    assert refused(moved(small_house(), site_class="E")) == [
        "survey.site.hazard.S_DS: nothing is not allowed; the site class has no coefficient at this ground motion "
        "(ASCE 7-16 11.4.8): enter S_DS from a study"
    ]


# ---- Entered values and the cap -------------------------------------------------------------------------------------


def test_a_one_second_acceleration_entered_with_the_site_is_the_one_used() -> None:
    by_table, entered = forces_of(small_house()), forces_of(moved(small_house(), S_D1=2.0))
    assert by_table.site.S_D1 is not None
    assert by_table.site.S_D1 != 2.0
    assert entered.site.S_D1 == 2.0
    low = forces_of(moved(small_house(), S_D1=0.05))
    assert low.C_s < entered.C_s
    assert low.C_s_governs == "Eq. 12.8-3"  # the value that C_s need not exceed follows it


def regular(**choices: Any) -> House:
    """The fixture with S_DS of 1.6 entered, and the redundancy factor claimed as 1."""
    told = {"redundancy": 1.0, "redundancy_reason": "regular, two bays on each side", "short_period_cap": True}
    house = chosen(small_house(), **(told | choices))
    return moved(house, S_DS=1.6, site_class="C")


def test_the_cap_on_short_periods_is_taken_with_every_condition_recorded() -> None:
    with Sheet() as sheet:
        capped = forces_of(regular())
    full = forces_of(regular(short_period_cap=False))
    assert float(capped.site.S_DS or 0) == full.S_DS == 1.6  # by which the category goes
    assert float(capped.S_DS) == pytest.approx(1.12)  # 0.7 of it, for C_s and vertical effects
    assert float(capped.C_s) == pytest.approx(0.7 * full.C_s)
    steps = [step for step in sheet.steps if step.cite == "12.8.1.3" or "12.8.1.3" in step.cite]
    assert "no irregularity of 12.3.2" in {step.title for step in steps}
    assert any("designer's statement, not checked here" in w for w in capped.warnings)
    assert not any("S_DS is capped" in w for w in full.warnings)


def test_the_cap_is_refused_with_what_is_missing() -> None:
    (line,) = refused(regular(redundancy=1.3))
    assert line.startswith("choices.short_period_cap: true is not allowed; ASCE 7-16 12.8.1.3: the cap on S_DS is not")
    assert line.endswith("not met: redundancy factor allowed to be 1.0")


def test_the_cap_is_refused_for_a_plan_with_a_re_entrant_corner() -> None:
    house = regular()
    building = house.survey.building
    corners = building.corners | {"mid": replace(building.corners["ne0"], x_in=200.0, y_in=100.0)}
    storeys = {"st1": replace(building.storeys["st1"], outline=("sw0", "se0", "ne0", "mid", "nw0"))}
    (line,) = refused(built(house, corners=corners, storeys=storeys))
    assert "not met: no irregularity of 12.3.2" in line
    assert line.endswith("(the survey shows a re-entrant corner in the outline of Main floor)")


# ---- Boards under the factors of panels -----------------------------------------------------------------------------


def test_boards_under_the_factors_of_panels_are_told_with_the_row_they_stand_in() -> None:
    found = [w for w in forces_of(small_house()).warnings if w.startswith("system")]
    assert found == [
        "system A.15 (R 6.5) is for walls braced by wood structural panels; as found lines L1, L2, L3, L4 have boards "
        "or plaster, which stand in row A.17 with R 2: judged by that row the house as found draws up to 3.25 times "
        "the force; the reason printed for A.15: wood panels on cripple walls"
    ]
    silent = forces_of(chosen(small_house(), system_reason="")).warnings
    assert any(w.endswith("no reason is printed for A.15") for w in silent)
    assert not [w for w in forces_of(chosen(small_house(), system="A.17")).warnings if w.startswith("system")]


def test_a_house_of_panels_alone_is_not_warned_of_boards() -> None:
    house = small_house()
    under = house.survey.underfloor
    segments = {
        id: replace(s, outside=replace(s.outside, material="wood structural panel")) for id, s in under.segments.items()
    }
    panelled = replace(house, survey=replace(house.survey, underfloor=replace(under, segments=segments)))
    assert not [w for w in forces_of(panelled).warnings if w.startswith("system")]
