"""Floors of one and of two layers of boards: which table each is held to, and when it is only indicated."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from groundsill.house.fact import measured
from groundsill.loadpath.chain import Link
from groundsill.study import AS_FOUND, run
from tests.loadpath.asking import links_in
from tests.loadpath.houses import known_house


@cache
def boards(kind: str, line: str = "line2", share: float = 1.0) -> Link:
    """The floor boards at a line of the known house, with other boards on it and a part of its ground motion."""
    return floor(line, share, boards=kind)


def floor(line: str = "line2", share: float = 1.0, **changes: Any) -> Link:
    """The same with anything else of the floor changed; ``joists`` says how the joists run to the line."""
    house = known_house()
    under = house.survey.underfloor
    run_to = changes.pop("run_to", None)
    if run_to:
        under = replace(under, lines={**under.lines, line: replace(under.lines[line], joists=run_to)})
    joists = {key: replace(field, **changes) for key, field in under.joists.items()}
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
    assert "their grade, thickness and nail are not in the survey" in link.reason
    assert "the spacing of their nails was not measured" in floor(boards="panel", panel="15/32, 8d").reason


def panels(boundary: float = 6.0, edges: float = 6.0, **changes: Any) -> Link:
    """A floor of 15/32 in. panels with 8d nails on joists of Douglas fir, 1 5/8 in. wide."""
    plain = {
        "boards": "panel", "panel": "15/32, 8d", "panel_boundary_in": measured(boundary),
        "panel_edge_in": measured(edges), "breadth_in": measured(1.625),
    }  # fmt: skip
    return floor(**(plain | changes))


def test_blocked_panels_go_by_the_column_that_their_nails_reach_in_every_place() -> None:
    """Table 4.2A for 15/32 in. panels and 8d nails on 2x, over 2.0: 270, 360, 530, 600 plf."""
    for boundary, edges, asd in ((6, 6, 270), (5, 6, 270), (4, 6, 360), (2.5, 4, 530), (2.5, 6, 360), (2, 3, 600)):
        link = panels(boundary, edges, panel_blocked=measured(True))
        assert (link.level, link.capacity) == ("allowable", asd)
        assert link.clause == "SDPWS 2015 4.2.4, Table 4.2A"
    assert panels(panel_blocked=measured(True), breadth_in=measured(2.5)).capacity == 300.0
    assert panels(panel_blocked=measured(True), species=measured("Hem-fir")).capacity == pytest.approx(270 * 0.93)
    wide = panels(8.0, 12.0, panel_blocked=measured(True))
    assert wide.status == "cannot be checked"
    assert "nails 8 in. apart at boundaries and 12 in. at other edges; must be at most 6 and 6 in." in wide.reason


def test_unblocked_panels_go_by_how_they_lie_to_the_force() -> None:
    """Table 4.2C over 2.0: 240 plf where staggered panels cross joists that the force runs along, 180 otherwise."""
    no, lie = {"panel_blocked": measured(False)}, {"panel_joints": "staggered, across the joists"}
    assert panels(**no, **lie, run_to="parallel").capacity == 240.0
    assert panels(**no, **lie, run_to="across").capacity == 180.0
    assert panels(**no, panel_joints="otherwise", run_to="parallel").capacity == 180.0
    assert "6 in. at most" in panels(8.0, 6.0, **no, **lie).reason


def test_what_was_not_seen_of_panels_counts_against_them_and_fails_nobody() -> None:
    unseen = panels(share=2.0)
    assert unseen.status == "cannot be checked"
    assert "whether its edges are blocked and how its panels lie was not seen: the lesser is taken" in unseen.reason
    light = panels(share=0.5)
    assert light.status == "passes"
    assert light.capacity == 180.0
    assert "the lesser is taken" in light.reason


def test_panels_are_expected_to_give_as_they_do_in_wind_and_a_long_floor_is_refused() -> None:
    link = panels(panel_blocked=measured(True))
    assert link.expected is not None
    width = link.expected.best_lb / 755.0
    assert width == pytest.approx(20.0, rel=0.5)
    assert "no row 'plywood, 2x'" in panels(panel_blocked=measured(True), panel="plywood").reason
