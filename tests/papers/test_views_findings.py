"""The pictures of the findings report: readings over time, lines of equal height; and the whole report as a PDF."""

from __future__ import annotations

import dataclasses
from functools import cache

import pytest

from groundsill.findings import Finding, findings_of
from groundsill.house.building import Point
from groundsill.house.record import Monitor, SpotLevel
from groundsill.house.record import Reading as Read
from groundsill.mechanics.plan import inside
from groundsill.papers.document import Document, Figure
from groundsill.papers.drawing import Circle, Line, Polygon, Polyline, Text
from groundsill.papers.views.findings_view import findings_blocks, findings_report
from groundsill.papers.views.levels_view import levels_figure
from groundsill.papers.views.readings_view import HEIGHT, WIDTH, readings_figure
from groundsill.papers.writers.typst import to_pdf
from groundsill.study import run
from groundsill.work.document import House
from tests.findings.simulated import readings
from tests.fixtures.small_house import small_house


def gauge(count: int, rate: float = 0.02) -> Monitor:
    told = tuple(Read(when=r.when, value=r.value_in, temperature_f=r.temperature_f) for r in readings(1, count, rate))
    return Monitor(mark="MG1", readings=told)


@cache
def house(units: str = "us", count: int = 21) -> House:
    spots = {
        f"l{n}": SpotLevel(order=n, mark=f"LV{n}", at=Point(x_in=x, y_in=y), height_in=z)
        for n, (x, y, z) in enumerate(
            [(12, 12, 0), (150, 12, -0.25), (280, 12, -0.5), (12, 200, 0.125), (150, 190, -0.5), (280, 200, -1.25)], 1
        )
    }
    found = small_house()
    survey = dataclasses.replace(found.survey, monitors={"m": gauge(count)}, levels=spots)
    return dataclasses.replace(found, survey=survey, units=units)


def finding(start: str, units: str = "us", count: int = 21) -> Finding:
    return next(f for f in findings_of(house(units, count)).findings if f.address.startswith(start))


@pytest.mark.parametrize("units", ["us", "si"])
def test_every_reading_is_a_dot_within_the_frame(units):
    figure = readings_figure(finding("finding/monitor"), units)
    dots = [m for m in figure.drawing.marks if isinstance(m, Circle)]
    assert len(dots) == 21
    assert all(0 <= d.center[0] <= WIDTH and 0 <= d.center[1] <= HEIGHT for d in dots)
    assert [d.center[0] for d in dots] == sorted(d.center[0] for d in dots)
    sides = [m.text for m in figure.drawing.marks if isinstance(m, Text) and m.anchor == "end"]
    assert all(words.endswith("mm" if units == "si" else "in.") for words in sides)
    assert 3 <= len(sides) <= 8


def test_the_fit_the_steady_line_and_what_counts_as_still_are_drawn_and_named():
    figure = readings_figure(finding("finding/monitor"), "us")
    steady = next(m for m in figure.drawing.marks if isinstance(m, Line) and m.label == "steady rate")
    assert steady.end[1] > steady.start[1]
    fit = next(m for m in figure.drawing.marks if isinstance(m, Polyline))
    assert len(fit.points) == 21
    wedge = [m for m in figure.drawing.marks if isinstance(m, Polygon) and m.fill == "tint"]
    assert all(0 <= y <= HEIGHT for m in wedge for _, y in m.points)
    assert any("counts as still" in m.text or "count as still" in m.text for m in figure.drawing.marks
               if isinstance(m, Text))  # fmt: skip
    assert "a year" in figure.alternative


def test_a_young_gauge_shows_its_dots_and_no_line_that_nobody_knows():
    figure = readings_figure(finding("finding/monitor", count=3), "us")
    assert sum(isinstance(m, Circle) for m in figure.drawing.marks) == 3
    assert not any(isinstance(m, Polyline) or (isinstance(m, Line) and m.label) for m in figure.drawing.marks)
    assert "No steady rate" in figure.alternative


def test_one_reading_or_none_makes_no_picture():
    assert readings_figure(finding("finding/monitor", count=1), "us") is None
    assert levels_figure(finding("finding/monitor"), house()) is None


@pytest.mark.parametrize("units", ["us", "si"])
def test_every_spot_is_shown_with_its_height_and_lines_stay_indoors(units):
    figure = levels_figure(finding("finding/levels", units), house(units))
    marks = figure.drawing.marks
    words = {m.text for m in marks if isinstance(m, Text)}
    assert {f"LV{n}" for n in range(1, 7)} <= words
    assert ('-1 1/4"' in words) == (units == "us")
    lines = [m for m in marks if isinstance(m, Line)]
    assert len(lines) > 5
    outlines = [m.points for m in marks if isinstance(m, Polygon)]
    for line in lines:
        middle = ((line.start[0] + line.end[0]) / 2, (line.start[1] + line.end[1]) / 2)
        assert any(inside(middle, outline) for outline in outlines)
    assert "lowest LV6" in figure.alternative


def test_the_report_sets_both_pictures():
    found = findings_of(house())
    report = findings_report(house(), run(house()), found)
    assert sum(isinstance(b, Figure) for b in report.blocks) == 3  # with the plan
    captions = [b.caption for b in report.blocks if isinstance(b, Figure)]
    assert any("readings over time" in c for c in captions)
    assert any("lines of equal height" in c for c in captions)
    assert to_pdf(report).startswith(b"%PDF")
    screen = Document("findings", findings_blocks(house(), found), numbered=False)
    assert sum(isinstance(b, Figure) for b in screen.blocks) == 2
