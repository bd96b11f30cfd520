"""One reading of the survey's classes serves every room: shapes, limits and words."""

from __future__ import annotations

from typing import Any

import pytest

from groundsill.house.building import Chimney, Storey
from groundsill.house.foundation import FoundationSegment
from groundsill.house.model import Shape, fields_of, is_value, measured_as, member, places, words
from groundsill.house.site import Site
from groundsill.house.underfloor import Bolt, Line
from groundsill.work.document import Alternative, House
from groundsill.work.pieces import PanelPiece
from tests.fixtures.small_house import small_house


def facts_of(cls: type[Any], name: str) -> Any:
    found = member(cls, name)
    assert found is not None
    return found


def classes_within(cls: type[Any]) -> set[type[Any]]:
    found: set[type[Any]] = {cls}
    for facts in fields_of(cls):
        shape: Shape | None = facts.shape
        while shape:
            found |= {inner for c in shape.classes if c not in found for inner in classes_within(c)}
            shape = shape.item
    return found


EVERY_CLASS = sorted(classes_within(House), key=lambda cls: cls.__name__)


def test_the_whole_document_is_read() -> None:
    assert {"House", "Survey", "Bolt", "Sheathing", "Point", "Layer", "PanelPiece", "SoilPiece", "WorkRecord"} <= {
        cls.__name__ for cls in EVERY_CLASS
    }


@pytest.mark.parametrize("cls", EVERY_CLASS, ids=lambda cls: cls.__name__)
def test_every_number_that_is_measured_says_its_unit_in_its_name_and_has_limits(cls: type[Any]) -> None:
    for facts in fields_of(cls):
        shape = facts.shape.item if facts.shape.kind == "fact" and facts.shape.item else facts.shape
        if shape.kind not in ("number", "whole") or facts.name == "order":
            continue
        assert facts.least is not None, facts.name
        assert facts.most is not None, facts.name
        assert facts.least < facts.most
        suffixes = {"in": "_in", "psf": "psf", "pcf": "pcf", "psi": "_psi", "lb": "_lb", "mph": "_mph"}
        assert facts.name.endswith(suffixes.get(facts.unit, "")), facts.name


@pytest.mark.parametrize("cls", EVERY_CLASS, ids=lambda cls: cls.__name__)
def test_every_reference_leads_to_a_collection_of_the_survey(cls: type[Any]) -> None:
    for facts in fields_of(cls):
        shape: Any = Shape("object", classes=(type(small_house().survey),))
        for name in facts.refers.split(".") if facts.refers else ():
            found = member(shape.classes[0], name)
            assert found is not None, f"{cls.__name__}.{facts.name} refers to {facts.refers}"
            shape = found.shape
        assert not facts.refers or shape.kind == "map"


@pytest.mark.parametrize(
    ("cls", "name", "said"),
    [
        (Bolt, "station_in", "a number of inches from 0 to 6000"),
        (Bolt, "diameter_in", "a number of inches from 0.25 to 1.5, alone or in an object with value, low, high, "
                              "state and how"),
        (Bolt, "line", "the id of one of underfloor.lines"),
        (Line, "relied_on", "true or false"),
        (Site, "risk_category", 'one of "I", "II", "III", "IV"'),
        (Storey, "outline", "a list, each the id of one of building.corners"),
        (Chimney, "at", "an object with x_in, y_in"),
        (Alternative, "pieces", "an object whose keys are ids; an id of 3 to 40 small letters, digits and dashes, "
                                "beginning "
                                "with a letter or digit"),
        (PanelPiece, "panel", "text"),
    ],
)  # fmt: skip
def test_what_may_stand_in_a_field_is_said_in_words(cls: type[Any], name: str, said: str) -> None:
    assert words(facts_of(cls, name)) == said


@pytest.mark.parametrize(
    ("cls", "name", "how"),
    [
        (Bolt, "diameter_in", ("length", "in")),
        (FoundationSegment, "strength_psi", ("pressure", "psi")),
        (FoundationSegment, "top_slope", ("slope", "1")),
        (Site, "slope_rise_per_run", ("slope", "1")),
        (FoundationSegment, "wythes", None),
        (Site, "wind_mph", None),
        (Bolt, "nut", None),
    ],
)
def test_how_a_typed_text_is_read_follows_from_the_fields_unit(cls: type[Any], name: str, how: Any) -> None:
    assert measured_as(facts_of(cls, name)) == how


def test_a_walk_meets_every_field_with_its_path() -> None:
    met = {place.path: place.value for place in places(small_house(), "")}
    assert met["survey.underfloor.bolts.bt1.station_in"] == 24
    assert met["survey.building.assemblies.as-wall.layers.1.psf"].value == 10
    assert met["survey.building.walls.wl1.openings.wo1.to_in"] == 200
    assert met["survey.site.hazard.S_S"] == 1.5
    assert met["alternatives.strengthen.pieces.pn11.edge_spacing_in"] == 4
    assert met["survey.building.chimneys.chim1.at.y_in"] == 180


def test_points_facts_and_lists_are_values_and_other_objects_are_not() -> None:
    assert is_value(facts_of(Chimney, "at").shape)
    assert is_value(facts_of(Bolt, "nut").shape)
    assert is_value(facts_of(Storey, "outline").shape)
    assert not is_value(facts_of(Site, "soil").shape)
    assert not is_value(facts_of(Site, "flags").shape)
