"""Wind on paper: what the package says of it, where it was not looked at, and which edition stands in every clause."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache

import pytest

from groundsill.house.fact import measured
from groundsill.house.site import DesignValues
from groundsill.papers.document import Heading, Paragraph, TableBlock, spans
from groundsill.papers.views.calculations import calculation_package
from groundsill.papers.views.wind_view import wind_blocks, wind_paragraph
from groundsill.papers.writers.terminal import to_text
from groundsill.study import Study, run, working
from groundsill.study.compare import by_edition
from groundsill.work.document import House
from tests.fixtures.small_house import small_house
from tests.loadpath.houses import known_house


def blown(house: House, mph: float) -> House:
    """A house in wind, exposure B, on level ground."""
    site = replace(house.survey.site, wind_mph=measured(mph), exposure="B", K_zt=measured(1.0))
    return replace(house, survey=replace(house.survey, site=site))


@cache
def studied(mph: float) -> Study:
    """The study of the small house in wind; 0 for none in its survey."""
    return run(blown(small_house(), mph) if mph else small_house(), ranges=False)


@cache
def package_text(newer: bool) -> str:
    """The whole package of a house in wind as letters, by ASCE 7-16 or by 7-22."""
    house = blown(known_house(), 180.0)
    if newer:
        house = by_edition(house, DesignValues(edition="asce7-22", S_DS=1.2, S_D1=0.7, source="invented for this test"))
    study = run(house, ranges=False)
    return to_text(calculation_package(house, study, {r.key: working(house, r.key) for r in study.runs}), 200)


def words(paragraph: Paragraph) -> str:
    """A paragraph without its dress."""
    return "".join(span.text for span in spans(paragraph.text))


def test_without_a_wind_speed_the_paper_says_that_wind_was_not_checked_and_why() -> None:
    (told,) = wind_blocks(studied(0.0))
    assert isinstance(told, Paragraph)
    assert words(told).startswith("Wind was not checked: no basic wind speed is in the survey: survey.site.wind_mph")


def test_where_the_earthquake_governs_all_it_is_said_in_a_sentence() -> None:
    assert "on every line relied on the earthquake asks for more" in words(wind_paragraph(studied(70.0)))


def test_where_wind_governs_its_lines_are_named() -> None:
    study = studied(200.0)
    assert study.forces.wind is not None
    governed = [line.mark for line in study.forces.wind.lines.values() if line.governs]
    told = words(wind_paragraph(study))
    assert governed
    assert all(mark in told for mark in governed)


def test_every_line_stands_in_the_table_with_both_forces() -> None:
    study = studied(200.0)
    assert study.forces.wind is not None
    tables = [block for block in wind_blocks(study) if isinstance(block, TableBlock)]
    assert [table.caption for table in tables] == [
        "Wind on what stands above the base", "Wind and earthquake on each line relied on, flexible floor",
    ]  # fmt: skip
    for row, line in zip(tables[1].rows, study.forces.wind.lines.values(), strict=True):
        assert row[0] == line.mark  # type: ignore[index]
        assert f"{line.allowable_lb:,.0f} lb" in str(row)
        assert ("wind" if line.governs else "earthquake") in str(row)


def test_the_package_works_wind_out_under_a_heading_of_its_own() -> None:
    house = blown(known_house(), 180.0)
    study = run(house, ranges=False)
    package = calculation_package(house, study, {r.key: working(house, r.key) for r in study.runs})
    headings = [block.text for block in package.blocks if isinstance(block, Heading)]
    assert "Wind" in headings
    assert "Wind on the house, worked out" in headings
    text = package_text(False)
    for piece in ("180 mph, exposure B, Kzt 1", "Velocity pressure", "External wind pressure", ", in wind"):
        assert piece in text, piece


@pytest.mark.parametrize("newer", [False, True])
def test_every_clause_of_the_package_names_the_edition_it_was_worked_out_by(newer: bool) -> None:
    """By 7-22 all but unit weights and wind; by 7-16 nothing of 7-22 at all."""
    text = re.sub(r"\s+", " ", package_text(newer))
    if not newer:
        assert "7-22" not in text
        return
    for cite in ("ASCE 7-22 Eq. 12.8-3", "ASCE 7-22 12.13.4", "ASCE 7-22 2.4.5 combination 10", "ASCE 7-22 2.4.1"):
        assert cite in text, cite
    older = set(re.findall(r"ASCE 7-16 ((?:Table |Eq\. |Figure |in |chapters )*[A-Z]?\d+)", text))
    weights, wind = {"Table C3"}, {"26", "27"}
    assert {place for place in older if place not in weights and place.split()[-1] not in wind} == set()
