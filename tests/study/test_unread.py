"""Looked-up words that no table has are told with the nearest there are, and those that a table has are not."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from groundsill.house.fact import measured, unknown
from groundsill.papers.views.basis_view import to_look_at
from groundsill.study import run
from groundsill.study.unread import unread
from groundsill.work.document import House
from tests.house.test_checks import edited
from tests.loadpath.houses import known_house, with_pieces


def told(path: str, **fields: Any) -> dict[str, str]:
    """What is unread once one object of the known house's survey is changed."""
    house = known_house()
    return said(replace(house, survey=edited(house.survey, path, **fields)))


def said(house: House) -> dict[str, str]:
    return {missing.path: missing.what for missing in unread(house)}


def test_a_house_of_known_words_has_none() -> None:
    assert said(known_house()) == {}


def test_a_misspelled_sheathing_is_told_with_its_row() -> None:
    segment = known_house().survey.underfloor.segments["sg2"]
    found = told("underfloor.segments.sg2", outside=replace(segment.outside, material="horizontal lumber sheathing"))
    (what,) = found.values()
    assert what.startswith("the sheathing of S3, outside, 'horizontal lumber sheathing', is in no table; nearest: ")
    assert "'horizontal lumber sheathing, 1x'" in what


@pytest.mark.parametrize(
    ("path", "change", "near"),
    [
        ("underfloor.segments.sg2", {"stud": "Douglas fir"}, "'Douglas fir-larch'"),
        ("underfloor.sills.si2", {"species": measured("redwood")}, "'Redwood'"),
        ("underfloor.splices.sp1", {"nail": "16d"}, "'16d common'"),
        ("underfloor.lines.line1", {"nail": "8d"}, "'8d common'"),
    ],
)
def test_each_kind_of_word_is_looked_up(path: str, change: dict[str, Any], near: str) -> None:
    house = known_house()
    fields: dict[str, Any] = dict(change)
    if "stud" in change:
        fields = {"stud": replace(house.survey.underfloor.segments["sg2"].stud, species=measured(change["stud"]))}
    if path.endswith("line1"):
        connection = house.survey.underfloor.lines["line1"].floor_connection
        fields = {"floor_connection": replace(connection, nail=change["nail"])}
    (what,) = told(path, **fields).values()
    assert near in what


def test_a_material_without_a_weight_is_told_before_any_force_is_asked_for() -> None:
    roof = known_house().survey.building.assemblies["as-roof"]
    bare = replace(roof.layers[0], material="bevel sidng", psf=type(roof.layers[0].psf)(state="unknown"))
    found = told("building.assemblies.as-roof", layers=(bare,))
    assert list(found) == ["survey.building.assemblies.as-roof.layers.0.material"]


def test_a_panel_that_no_row_names_is_told() -> None:
    house = with_pieces(
        known_house(), "strengthen", lambda key, p: replace(p, panel="1/2 plywood, 8d") if key == "pn11" else p
    )
    (what,) = said(house).values()
    assert what.startswith("the panel of P1, '1/2 plywood, 8d', is in no table; nearest: ")


def test_a_study_names_what_nothing_stands_in_for() -> None:
    house = known_house()
    bare = replace(house, survey=edited(house.survey, "foundation.segments.fs2", depth_in=unknown()))
    study, before = run(bare, ranges=False), run(house, ranges=False)
    (lack,) = (lack for lack in study.missing if lack not in before.missing)
    assert lack.path == "survey.foundation.segments.fs2.depth_in"
    assert lack.needed_for == "sliding, overturning and bearing cannot be checked"
    assert lack in to_look_at(study)
