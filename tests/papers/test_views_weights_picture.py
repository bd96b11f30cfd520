"""The picture of where the weight sits: circles true in area, at their places, with words for those who cannot see."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from groundsill.forces.mass import WeightMap, weight_map
from groundsill.papers.document import Document, Figure
from groundsill.papers.drawing import Circle, Drawing, Line, Text
from groundsill.papers.views.weights_picture import NAMED, centres_table, weights_figure, weights_picture_blocks
from groundsill.papers.writers.terminal import to_text
from groundsill.papers.writers.typst import to_pdf
from tests.papers.views_sample import captioned, rows_of, small_study


@pytest.fixture(scope="module")
def found() -> WeightMap:
    forces = small_study()[1].forces
    return weight_map(forces.items, [level.name for level in forces.levels])


@pytest.fixture(scope="module")
def figure(found: WeightMap) -> Figure:
    made = weights_figure(small_study()[0], found, "us")
    assert made is not None
    return made


def circles(figure: Figure) -> dict[str, Circle]:
    assert isinstance(figure.drawing, Drawing)
    return {m.label: m for m in figure.drawing.marks if isinstance(m, Circle) and m.address.startswith("weight/")}


def test_every_item_has_a_circle_at_its_middle_with_an_area_true_to_its_weight(
    figure: Figure, found: WeightMap
) -> None:
    drawn = [m for m in figure.drawing.marks if isinstance(m, Circle) and m.address.startswith("weight/")]  # type: ignore[union-attr]
    assert len(drawn) == len(found.items)
    for circle, item in zip(drawn, found.items, strict=True):
        assert circle.center == (item.x_in, item.y_in)
        assert circle.label == f"{item.label}, {item.weight_lb:,.0f} lb"
        assert circle.radius**2 / drawn[0].radius ** 2 == pytest.approx(item.weight_lb / found.items[0].weight_lb)


def test_the_key_s_circle_is_at_the_scale_of_the_others(figure: Figure, found: WeightMap) -> None:
    assert isinstance(figure.drawing, Drawing)
    (words,) = [m.text for m in figure.drawing.marks if isinstance(m, Text) and "circle of this size" in m.text]
    weight = float(words.split("weighs ")[1].split(" lb")[0].replace(",", ""))
    key = [m for m in figure.drawing.marks if isinstance(m, Circle) and not m.address and m.fill == "none"]
    first = next(iter(circles(figure).values()))
    assert any(c.radius**2 / first.radius**2 == pytest.approx(weight / found.items[0].weight_lb) for c in key)


def test_the_heaviest_ten_carry_numbers_and_the_table_names_them(figure: Figure, found: WeightMap) -> None:
    assert isinstance(figure.drawing, Drawing)
    numbers = [m.text for m in figure.drawing.marks if isinstance(m, Text) and m.text.isdigit()]
    count = min(NAMED, len(found.items))
    assert numbers == [str(n) for n in range(1, count + 1)]
    page = Document("Weights", weights_picture_blocks(*small_study()[:1], small_study()[1].forces, "us", "†1"))
    rows = rows_of(captioned(page, "The heaviest items"))
    assert [row[1] for row in rows[:count]] == [item.label for item in found.items[:count]]
    if len(found.items) > NAMED:
        assert rows[-1][1] == f"{len(found.items) - NAMED} lighter items"
    assert captioned(page, "The heaviest items").footnotes == ("Weights rest on the figures †1.",)


def test_a_cross_stands_at_every_centre_and_its_letter_in_the_table(figure: Figure, found: WeightMap) -> None:
    assert isinstance(figure.drawing, Drawing)
    assert found.whole is not None
    rows = rows_of(centres_table(found, "us"))
    assert [row[:2] for row in rows] == [
        ("A", "floor of Main floor"), ("B", "roof"), ("W", "whole house"),
    ]  # fmt: skip
    for centre, row in zip((*found.levels, found.whole), rows, strict=True):
        arms = [
            m for m in figure.drawing.marks
            if isinstance(m, Line)
            and math.dist(((m.start[0] + m.end[0]) / 2, (m.start[1] + m.end[1]) / 2), (centre.x_in, centre.y_in)) < 1e-6
        ]  # fmt: skip
        assert len(arms) >= 2
        assert row[3] == f"{centre.x_in / 12:.2f} ft"
    letters = {m.text for m in figure.drawing.marks if isinstance(m, Text) and m.label.startswith("centre of mass")}
    assert letters == {"A", "B", "W"}


def test_the_words_say_what_the_picture_shows(figure: Figure, found: WeightMap) -> None:
    assert f"Plan of the house with {len(found.items)} circles" in figure.alternative
    assert found.items[0].label in figure.alternative
    assert "Centres of mass: floor of Main floor at x " in figure.alternative


def test_what_stands_free_is_dashed_and_counts_for_nothing(found: WeightMap) -> None:
    free = replace(found.items[0], kind="chimney", counted_lb=0.0, label="chimney that stands free")
    made = weights_figure(small_study()[0], replace(found, items=(free, *found.items[1:])), "us")
    assert made is not None
    circle = circles(made)[f"chimney that stands free, {free.weight_lb:,.0f} lb"]
    assert (circle.fill, circle.layer.line_type) == ("hatched", "dashed")


def test_a_house_without_weight_has_no_picture() -> None:
    assert weights_figure(small_study()[0], WeightMap((), (), None), "us") is None


@pytest.mark.parametrize("units", ["us", "si"])
def test_the_page_sets_on_paper_and_in_letters(units: str) -> None:
    house, study, _ = small_study()
    blocks = weights_picture_blocks(house, study.forces, units)  # type: ignore[arg-type]
    page = Document("Weights", blocks, paper="letter" if units == "us" else "a4")
    assert to_pdf(page).startswith(b"%PDF")
    told = to_text(page, 100)
    assert "Centre of mass of each level" in told
    assert ("kN" in told) == (units == "si")
