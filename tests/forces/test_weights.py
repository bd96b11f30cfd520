"""Weights item by item: what each piece of the house weighs, to which level it belongs, and what is left out."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings

from groundsill.forces.weights import BASE, weight_items
from groundsill.house.building import Layer
from groundsill.house.fact import measured, unknown
from groundsill.house.settle import uncertain_facts
from groundsill.work.document import House
from groundsill.working.errors import BadSurvey
from tests.fixtures.small_house import small_house
from tests.forces.balance import forces_of, larch_street, reading_of
from tests.forces.houses import houses


def items(house: House):
    return weight_items(reading_of(house))


def with_building(house: House, **changed) -> House:
    return replace(house, survey=replace(house.survey, building=replace(house.survey.building, **changed)))


def chimney(tied, base: str = "own footing") -> House:
    """The fixture with its chimney held, or not, to the house: 2 x 2 x 20 ft at 120 pcf, 9,600 lb."""
    house = small_house()
    only = replace(house.survey.building.chimneys["chim1"], mark="CH1", tied=tied, base=base, pcf=measured(120.0))
    return with_building(house, chimneys={"chim1": only})


@given(houses(with_work=False))
@settings(max_examples=25)
def test_every_item_belongs_whole_to_its_levels(house):
    found = items(house)
    forces = forces_of(house)
    for item in found:
        assert sum(share for _, share in item.levels) == pytest.approx(1.0, rel=1e-15), item.label
        assert item.weight_lb >= 0
    above = sum(i.weight_lb * share for i in forces.items if i.seismic for level, share in i.levels if level != BASE)
    assert forces.weight_lb == pytest.approx(above, rel=1e-12)


def test_the_fixture_weighs_what_it_does_item_by_item():
    """By hand: 30 x 20 ft; floor 9, ceiling 10, walls 15, partition 18, cripple walls 7 psf; roof 8, 1 up in 2."""
    weight = {item.label: item.weight_lb for item in items(small_house())}
    door, window, other = 40 * 84 / 144, 50 * 54 / 144, 60 * 48 / 144
    assert weight == pytest.approx(
        {
            "floor, Main floor": 600 * 9,
            "ceiling, Main floor": 600 * 10,
            "roof R1": 32 * 11 * 1.25**0.5 * 8,
            "roof R2": 32 * 11 * 1.25**0.5 * 8,
            "wall W1": (270 - door - window) * 15 + (door + window) * 8,
            "wall W2": (180 - other) * 15 + other * 8,
            "wall W3": 270 * 15,
            "wall W4": 180 * 15,
            "partition pt1": 20 * 9 * 18,
            "cripple wall S1": 12.5 * 2 * 7,
            "cripple wall S2": 17.5 * 2 * 7,
            "cripple wall S3": 20 * 2 * 7,
            "cripple wall S4": 15 * 2 * 7,
            "cripple wall S5": 15 * 16 / 12 * 7,
            "cripple wall S6": 20 * 2 * 7,
            "chimney chim1": 2 * 2 * 20 * 120,
        }
    )


@pytest.mark.parametrize("tied", [measured(True), unknown()], ids=["tied", "not known"])
def test_a_chimney_that_may_be_tied_counts_at_every_level(tied):
    """Half at the floor and half at the roof of one storey; else standing free is the other end of a doubt."""
    bare, with_it = forces_of(with_building(small_house(), chimneys={})), forces_of(chimney(tied))
    more = [b.weight_lb - a.weight_lb for a, b in zip(bare.levels, with_it.levels, strict=True)]
    assert more == [pytest.approx(4800), pytest.approx(4800)]
    doubts = [(f.low, f.best, f.high) for f in uncertain_facts(chimney(tied)) if f.path.endswith("chim1.tied")]
    assert doubts == ([(False, True, True)] if tied.value is None else [])


def test_a_chimney_that_stands_free_on_its_own_footing_shakes_nothing():
    bare, with_it = forces_of(with_building(small_house(), chimneys={})), forces_of(chimney(measured(False)))
    assert with_it.weight_lb == pytest.approx(bare.weight_lb)


@pytest.mark.parametrize("base", ["floor", "foundation wall"])
def test_a_chimney_that_bears_on_the_house_counts_whether_it_is_tied_or_not(base):
    bare, with_it = forces_of(with_building(small_house(), chimneys={})), forces_of(chimney(measured(False), base))
    assert with_it.weight_lb == pytest.approx(bare.weight_lb + 9600)


def test_brick_of_unknown_weight_is_taken_as_brick_masonry():
    house = chimney(measured(True))
    blank = replace(house.survey.building.chimneys["chim1"], pcf=unknown())
    (item,) = (i for i in items(with_building(house, chimneys={"chim1": blank})) if i.kind == "chimney")
    assert (item.weight_lb, item.unit_weight) == pytest.approx((9600, 120))


def test_half_a_cripple_wall_rests_on_the_foundation():
    (item,) = (i for i in items(small_house()) if i.label == "cripple wall S1")
    assert dict(item.levels) == {0: 0.5, BASE: 0.5}


def test_a_layer_counted_twice_weighs_twice():
    house = small_house()
    roof = house.survey.building.assemblies["as-roof"]
    two = replace(roof, layers=tuple(replace(layer, times=2.0) for layer in roof.layers))
    heavier = with_building(house, assemblies=house.survey.building.assemblies | {"as-roof": two})
    one, other = ({i.label: i.weight_lb for i in items(h)} for h in (house, heavier))
    assert other["roof R1"] == pytest.approx(2 * one["roof R1"])
    assert other["wall W1"] == one["wall W1"]


def test_a_material_no_table_knows_is_asked_for_its_weight():
    house = small_house()
    strange = replace(house.survey.building.assemblies["as-roof"], layers=(Layer(material="sod"),))
    with pytest.raises(BadSurvey) as caught:
        items(with_building(house, assemblies=house.survey.building.assemblies | {"as-roof": strange}))
    (fault,) = caught.value.faults
    assert fault.path == "survey.building.assemblies.as-roof.layers.0.material"
    assert fault.value == "'sod'"
    assert fault.allowed.startswith("give its weight in psf, or use a material of the weight tables")


def test_an_upper_storey_adds_a_level_and_floors_nearly_level_share_one():
    """Larch Street with its storey set on itself, then with a half step of 8 in. between two parts."""
    house = larch_street()
    ((id, storey),) = house.survey.building.storeys.items()
    upper = replace(storey, order=2, mark="2", name="Attic rooms", floor_z_in=storey.floor_z_in + 112)
    assert [level.name for level in forces_of(with_building(house, storeys={id: storey, "upper": upper})).levels] == [
        "floor of Main floor", "floor of Attic rooms", "roof"
    ]  # fmt: skip
    step = replace(upper, name="Lower room", floor_z_in=storey.floor_z_in + 8)
    assert [level.name for level in forces_of(with_building(house, storeys={id: storey, "upper": step})).levels] == [
        "floor of Main floor and Lower room", "roof"
    ]  # fmt: skip


def test_the_base_is_the_mean_top_of_the_foundation_and_is_printed():
    """Front, sides 70 ft at 0, half the rear at 8 in.: 15 x 8 over 100 ft with the brick at 0."""
    forces = forces_of(small_house())
    assert forces.base.startswith("the base is the mean top of the foundation, 1.2 in. above ")
    assert forces.levels[0].height_ft == pytest.approx((34 - 1.2) / 12)


@pytest.mark.parametrize(
    ("missing", "path"),
    [("hazard", "survey.site.hazard"), ("storeys", "survey.building.storeys"), ("lines", "survey.underfloor.lines")],
)
def test_what_no_force_can_do_without_is_asked_for(missing, path):
    house = small_house()
    survey = house.survey
    if missing == "hazard":
        survey = replace(survey, site=replace(survey.site, hazard=None))
    elif missing == "storeys":
        survey = replace(survey, building=replace(survey.building, storeys={}))
    else:
        survey = replace(survey, underfloor=replace(survey.underfloor, lines={}))
    with pytest.raises(BadSurvey) as caught:
        forces_of(replace(house, survey=survey))
    assert path in [fault.path for fault in caught.value.faults]
