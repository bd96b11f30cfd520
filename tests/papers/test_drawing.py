"""Drawings: true dimensions, letters that can be read, scales that are never stretched."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.papers.drawing import LAYERS, LINE_WEIGHTS, Circle, Dimension, Drawing, Layer, Line, Symbol, Text, layer
from groundsill.papers.letters import text_width
from groundsill.papers.lowering import box_of, lower
from groundsill.papers.placing import leaf_of_drawing, leaf_of_sheet
from groundsill.papers.sheet import PAPERS, SCALES, View, drawing_room, fitting_scale, sheet_of
from groundsill.papers.symbols import SYMBOLS
from groundsill.working.errors import CannotWrite
from tests.papers.sample import TITLE_BLOCK, scale_named, wall

DIM = layer("dimension")
QUARTER = scale_named('1/4" = 1\'-0"')


def test_a_dimension_says_the_true_distance_and_cannot_be_typed_over() -> None:
    assert Dimension((0, 0), (480, 0), DIM).text == "40'-0\""
    assert Dimension((0, 0), (288, 384), DIM).text == "40'-0\""
    assert Dimension((0, 0), (90.5, 0), DIM).text == "7'-6 1/2\""
    assert Dimension((0, 0), (480, 0), DIM, shown_in="mm").text == "12192 mm"
    with pytest.raises(TypeError):
        Dimension((0, 0), (480, 0), DIM, text="41'-0\"")  # type: ignore[call-arg]


def test_a_dimension_between_one_point_and_itself_is_refused() -> None:
    with pytest.raises(ValueError, match="a dimension needs two different points"):
        Dimension((3, 4), (3, 4), DIM)


@given(st.floats(0, 360), st.floats(1, 2000), st.sampled_from(["left", "right"]))
def test_dimension_words_are_never_upside_down(angle: float, length: float, side: str) -> None:
    end = (length * math.cos(math.radians(angle)), length * math.sin(math.radians(angle)))
    mark = Dimension((0, 0), end, DIM, side=side)  # type: ignore[arg-type]
    words = [m for m in lower((mark,), 48.0) if isinstance(m, Text)]
    assert len(words) == 1
    assert -90.0 < words[0].rotation <= 90.0 + 1e-9


@given(st.floats(0, 360), st.floats(1, 2000))
def test_the_dimension_line_runs_over_the_whole_distance(angle: float, length: float) -> None:
    ux, uy = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    mark = Dimension((5, 7), (5 + length * ux, 7 + length * uy), DIM, tier=2)
    along = [
        (((m.start[0] - 5) * ux + (m.start[1] - 7) * uy), ((m.end[0] - 5) * ux + (m.end[1] - 7) * uy))
        for m in lower((mark,), 48.0)
        if isinstance(m, Line) and not m.layer.name.endswith("TICK")
    ]
    assert len(along) == 3
    assert [pytest.approx(a, abs=1e-6) for a in (0.0, length)] == [along[0][0], along[1][0]]
    assert along[2][0] == pytest.approx(0.0, abs=1e-6)
    assert along[2][1] >= length - 1e-6


def test_a_dimension_too_short_for_its_words_sets_them_beside_it() -> None:
    (words,) = (m for m in lower((Dimension((0, 0), (6, 0), DIM),), 48.0) if isinstance(m, Text))
    assert words.text == '6"'
    assert words.at[0] > 6.0
    assert words.anchor == "start"


def test_letters_keep_their_height_on_paper_at_every_scale() -> None:
    for scale in SCALES["us"]:
        mark = Text((0, 0), "sill", layer("text"), 8.0)
        (words,) = lower((mark,), scale.denominator)
        assert isinstance(words, Text)
        assert words.size * 72.0 / scale.denominator == pytest.approx(8.0)


def test_every_symbol_is_drawn_about_its_middle_and_carries_its_address() -> None:
    for name in SYMBOLS:
        mark = Symbol(
            name, (100, 50), layer("symbol"), 10, in_model=True, address="bolt/b1", label="Bolt B1", rotation=30
        )
        drawn = tuple(lower((mark,), 48.0))
        assert drawn
        assert all(m.address == "bolt/b1" and m.label == "Bolt B1" for m in drawn)
        left, bottom, right, top = box_of((mark,), 48.0)
        assert left >= 100 - 8
        assert right <= 100 + 8
        assert bottom >= 50 - 8
        assert top <= 50 + 8


def test_no_two_symbols_have_the_same_shape() -> None:
    assert len({shapes for shapes, _ in SYMBOLS.values()}) == len(SYMBOLS)


def test_line_weights_are_those_of_iso_and_dxf() -> None:
    assert {known.weight for known in LAYERS.values()} <= LINE_WEIGHTS
    with pytest.raises(
        ValueError, match=r"layer S-WALL: 30 is not a line weight \(\[13, 18, 25, 35, 50, 70, 100, 140, 200\]\)"
    ):
        Layer("S-WALL", 30)


def test_an_unknown_layer_is_refused_with_the_list_of_known_ones() -> None:
    with pytest.raises(ValueError, match=r"'roof' is no layer known here \(wall, "):
        layer("roof")


def test_two_layers_of_one_name_are_refused() -> None:
    other = Layer("S-WALL-E", 70)
    with pytest.raises(ValueError, match="two different layers are named S-WALL-E"):
        Drawing("d", (Line((0, 0), (1, 0), layer("wall")), Line((0, 0), (1, 0), other)))


@pytest.mark.parametrize("bad", [math.nan, math.inf, -math.inf])
def test_a_point_that_is_not_a_number_is_refused(bad: float) -> None:
    for mark in (Line((0, bad), (1, 0), DIM), Circle((0, 0), bad, DIM), Text((0, 0), "a", DIM, bad)):
        with pytest.raises(ValueError, match=f"a {type(mark).__name__} has a point that is not a number"):
            Drawing("d", (mark,))


def test_a_drawing_lists_its_layers_in_order() -> None:
    names = [known.name for known in wall().layers]
    assert names[:3] == ["S-FNDN-E", "S-WALL-E", "S-SHTH-N"]
    assert len(names) == len(set(names))


def test_the_largest_standard_scale_that_fits_is_taken() -> None:
    scale = fitting_scale((wall(),), 14.0, 8.0)
    assert scale.name == '1/4" = 1\'-0"'
    larger = SCALES["us"][SCALES["us"].index(scale) - 1]
    left, _, right, _ = box_of(wall().marks, larger.denominator)
    assert (right - left) / larger.denominator > 14.0
    assert fitting_scale((wall(),), 14.0, 8.0, "metric").name == "1:50"


def test_a_drawing_larger_than_any_scale_allows_is_refused() -> None:
    with pytest.raises(
        CannotWrite, match=r"North wall: no standard scale fits 0.10 in by 0.10 in of paper; take a larger"
    ):
        fitting_scale((wall(),), 0.1, 0.1)


def test_a_view_that_does_not_fit_at_the_asked_scale_is_refused_not_shrunk() -> None:
    with pytest.raises(CannotWrite, match=r"North wall does not fit .* of letter paper at 1/4\" = 1'-0\""):
        sheet_of(PAPERS["letter"], (View(wall(), "North"),), TITLE_BLOCK, scale=QUARTER)


def test_two_views_stand_side_by_side_at_one_scale_within_the_frame() -> None:
    views = (View(wall(), "As found"), View(wall(), "After the work"))
    sheet = sheet_of(PAPERS["tabloid"], views, TITLE_BLOCK, columns=2)
    first, second = sheet.viewports
    assert first.scale == second.scale
    assert first.bottom == second.bottom
    assert first.left + first.width == pytest.approx(second.left)
    left, bottom, right, top = (edge * 72.0 for edge in drawing_room(sheet.paper))
    for placed in leaf_of_sheet(sheet).placements[:2]:
        box = box_of(placed.marks, placed.denominator)
        assert left <= box[0] * placed.factor + placed.dx
        assert box[2] * placed.factor + placed.dx <= right
        assert bottom <= box[1] * placed.factor + placed.dy
        assert box[3] * placed.factor + placed.dy <= top


@pytest.mark.parametrize("name", sorted(PAPERS))
def test_nothing_of_the_furniture_leaves_the_paper(name: str) -> None:
    scale = scale_named('1/8" = 1\'-0"') if name in ("letter", "A4") else QUARTER
    sheet = sheet_of(PAPERS[name], (View(wall(), "Wall line L2"),), TITLE_BLOCK, scale=scale, north_deg=0.0)
    leaf = leaf_of_sheet(sheet)
    left, bottom, right, top = box_of(leaf.placements[-1].marks, 1.0)
    assert left >= 0
    assert bottom >= 0
    assert right <= sheet.paper.width
    assert top <= sheet.paper.height


def test_a_long_project_name_is_set_smaller_until_it_fits_its_cell() -> None:
    from dataclasses import replace

    block = replace(TITLE_BLOCK, project="The very long name of a house " * 3)
    sheet = sheet_of(PAPERS["letter"], (), block)
    marks = leaf_of_sheet(sheet).placements[-1].marks
    words = [m for m in marks if isinstance(m, Text) and m.text.startswith(("The very", "house"))]
    cell = 0.29 * (11.0 - 0.8) - 0.18
    assert words
    assert all(text_width(m.text, m.size) <= cell * 72.0 for m in words)


def test_a_scale_bar_measures_true() -> None:
    from groundsill.papers.drawing import Polygon

    sheet = sheet_of(PAPERS["tabloid"], (View(wall(), "Wall"),), TITLE_BLOCK, scale=QUARTER)
    marks = leaf_of_sheet(sheet).placements[-1].marks
    bars = [m for m in marks if isinstance(m, Polygon) and m.fill in ("ink", "paper")]
    labels = [m for m in marks if isinstance(m, Text) and m.text.endswith(" ft")]
    assert [m.text for m in labels] == ["8 ft"]
    assert bars[-1].points[1][0] - bars[0].points[0][0] == pytest.approx(8 * 12 / 48)


def test_a_drawing_alone_gets_a_leaf_of_its_own_size() -> None:
    leaf = leaf_of_drawing(wall(), QUARTER)
    (placed,) = leaf.placements
    assert placed.factor == 1.5
    left, _, right, _ = box_of(wall().marks, 48.0)
    assert leaf.width == pytest.approx((right - left) * 1.5 + 4.0)
