"""Floors of one and of two layers of boards: which table each is held to, and when it is only indicated."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from groundsill.loadpath.chain import Link
from groundsill.study import AS_FOUND, run
from tests.loadpath.asking import links_in
from tests.loadpath.houses import known_house


@cache
def boards(kind: str, line: str = "line2", share: float = 1.0) -> Link:
    """The floor boards at a line of the known house, with other boards on it and a part of its ground motion."""
    house = known_house()
    under = house.survey.underfloor
    joists = {key: replace(field, boards=kind) for key, field in under.joists.items()}
    hazard = house.survey.site.hazard
    assert hazard is not None
    site = replace(house.survey.site, hazard=replace(hazard, S_S=hazard.S_S * share, S_1=hazard.S_1 * share))
    survey = replace(house.survey, site=site, underfloor=replace(under, joists=joists))
    found = links_in(run(replace(house, survey=survey), ranges=False))
    return found[AS_FOUND, f"line/{line}/floor-boards/{line}/both"]


def test_straight_boards_go_by_their_row_of_the_table_for_lumber() -> None:
    link = boards("straight boards")
    assert (link.level, link.capacity, link.clause) == ("allowable", 50.0, "SDPWS 2015 4.2.4, Table 4.2D")


def test_a_finish_floor_across_straight_boards_is_only_indicated_by_the_masonry_appendix() -> None:
    link = boards("straight and finish boards")
    single = boards("straight boards")
    assert (link.status, link.level, link.capacity) == ("indicated", "strength", 1500.0)
    assert link.demand == pytest.approx((single.demand or 0.0) / 0.7)
    assert "written for masonry buildings" in link.extension
    assert link.clause.startswith("IEBC 2021 Appendix A1")
    assert any(mark.kind == "from memory" and "A108.1" in mark.what for mark in link.marks)


def test_where_one_layer_carries_it_alone_nothing_is_extended() -> None:
    link = boards("straight and finish boards", share=0.2)
    assert (link.status, link.extension) == ("passes", "")
    assert link.capacity == 50.0
    assert link.reason == "by one of its layers alone"
    assert boards("diagonal and finish boards").status == "passes"


def test_two_layers_laid_alike_have_no_row_beyond_that_of_one() -> None:
    link = boards("double straight boards")
    assert link.status == "cannot be checked"
    assert "no table has both" in link.reason
    assert boards("double straight boards", share=0.2).status == "passes"


def test_a_floor_of_panels_waits_for_its_nailing() -> None:
    link = boards("panel")
    assert link.status == "cannot be checked"
    assert "its nailing is not in the survey" in link.reason
