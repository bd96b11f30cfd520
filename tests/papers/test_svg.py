"""SVG for the screen and for paper: classes and addresses on one, true size on the other."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.papers.drawing import Arc, Drawing, Line, Polygon, Symbol, Text, layer
from groundsill.papers.placing import leaf_of_drawing, leaf_of_sheet
from groundsill.papers.writers.svg import paper_svg, paper_words, screen_svg
from tests.papers.sample import scale_named, wall, wall_sheet

SVG = "{http://www.w3.org/2000/svg}"
QUARTER = scale_named('1/4" = 1\'-0"')


def screen(drawing: Drawing | None = None, **more: object) -> ET.Element:
    fields = {"title": "North wall", "alternative": "A wall of forty feet.", "scale": QUARTER}
    return ET.fromstring(screen_svg(drawing or wall(), **{**fields, **more}))  # type: ignore[arg-type]


def test_a_screen_drawing_has_classes_and_no_inline_style() -> None:
    root = screen()
    for element in root.iter():
        assert "style" not in element.attrib
        assert not any(name.startswith("on") for name in element.attrib)
        assert element.tag not in (f"{SVG}style", f"{SVG}script")
    classes = {name for element in root.iter() for name in element.get("class", "").split()}
    assert {"gs-line", "gs-words", "gs-w50", "gs-dashed", "gs-new", "gs-fill-hatched"} <= classes


def test_every_class_has_looks_in_the_stylesheet() -> None:
    from groundsill.papers.writers.html import stylesheet

    known = set(re.findall(r"\.(gs-[a-z0-9-]+)", stylesheet()))
    used = {name for element in screen(reacts=True).iter() for name in element.get("class", "").split()}
    plain = {"gs-continuous", "gs-existing", "gs-new", "gs-note", "gs-plain", "gs-defect", "gs-removed"}
    filled_by_pattern = {"gs-fill-hatched", "gs-fill-concrete"}
    assert used - known - plain - filled_by_pattern == set()


def test_a_drawing_is_named_and_described_for_those_who_cannot_see_it() -> None:
    root = screen(ident="d7")
    title, desc = root.find(f"{SVG}title"), root.find(f"{SVG}desc")
    assert title is not None
    assert desc is not None
    assert (title.text, desc.text) == ("North wall", "A wall of forty feet.")
    assert root.get("aria-labelledby") == "d7-title d7-desc"
    assert root.get("role") == "img"


def test_a_screen_drawing_without_alternative_text_is_refused() -> None:
    with pytest.raises(ValueError, match=r"drawing 'North wall' has no alternative text: say in words what it shows"):
        screen_svg(wall(), title="North wall", alternative=" ")


def test_every_mark_with_an_address_stands_in_a_group_that_carries_it() -> None:
    addresses = {group.get("data-address") for group in screen().iter(f"{SVG}g")}
    assert addresses == {"footing/f1", "line/l2", "panel/p1", "pipe/1", "bolt/b1"}


def test_a_drawing_that_reacts_gives_each_object_one_tab_stop_with_its_name() -> None:
    root = screen(reacts=True)
    stops = [g for g in root.iter(f"{SVG}g") if g.get("tabindex") == "0"]
    assert [g.get("data-address") for g in stops] == ["footing/f1", "line/l2", "panel/p1", "pipe/1", "bolt/b1"]
    assert all(g.get("role") == "button" for g in stops)
    assert [g.get("aria-label") for g in stops] == ["F1", "Wall line L2", "Panel P1", "Gas pipe", "Bolt B1"]
    assert root.get("role") == "group"
    assert all("tabIndex" not in element.attrib for element in root.iter())
    hits = [element for element in root.iter() if element.get("class") == "gs-hit"]
    assert hits
    assert all(set(hit.attrib) <= {"d", "cx", "cy", "r", "class"} for hit in hits)


def test_a_drawing_that_does_not_react_takes_no_focus() -> None:
    assert not [element for element in screen().iter() if "tabindex" in element.attrib]


def test_screen_coordinates_are_model_inches_with_y_turned_down() -> None:
    drawing = Drawing("d", (Line((12, 30), (480, 40), layer("wall")),))
    (path,) = list(screen(drawing).iter(f"{SVG}path"))
    assert path.get("d") == "M12 -30L480 -40"


def test_a_paper_drawing_says_its_size_in_millimetres_and_its_line_weights_in_points() -> None:
    root = ET.fromstring(paper_svg(leaf_of_sheet(wall_sheet())))
    assert root.get("width") == "431.8mm"
    assert root.get("height") == "279.4mm"
    assert root.get("viewBox") == "0 0 1224 792"
    weights = {element.get("stroke-width") for element in root.iter(f"{SVG}path")} - {None}
    assert "1.4173" in weights  # 0.50 mm
    assert "0.9921" in weights  # 0.35 mm
    assert "class" not in {name for element in root.iter() for name in element.attrib}


def test_forty_feet_are_720_points_in_the_paper_drawing() -> None:
    drawing = Drawing("d", (Line((0, 0), (480, 0), layer("wall")),))
    (path,) = list(ET.fromstring(paper_svg(leaf_of_drawing(drawing, QUARTER))).iter(f"{SVG}path"))
    start, end = re.findall(r"[\d.]+ [\d.]+", path.get("d", ""))
    assert float(end.split()[0]) - float(start.split()[0]) == pytest.approx(720.0, abs=1e-3)


def test_words_can_be_left_to_the_pdf_writer_and_none_is_lost() -> None:
    leaf = leaf_of_sheet(wall_sheet())
    assert not list(ET.fromstring(paper_svg(leaf, words=False)).iter(f"{SVG}text"))
    inside = [e.text for e in ET.fromstring(paper_svg(leaf)).iter(f"{SVG}text")]
    assert inside == [w.mark.text for w in paper_words(leaf)]
    assert "40'-0\"" in inside


def test_dashes_are_those_of_the_layer() -> None:
    drawing = Drawing("d", (Line((0, 0), (480, 0), layer("footing below")), Line((0, 9), (480, 9), layer("grid"))))
    dashes = [
        e.get("stroke-dasharray")
        for e in ET.fromstring(paper_svg(leaf_of_drawing(drawing, QUARTER))).iter(f"{SVG}path")
    ]
    assert dashes == ["8.5039 2.8346", "17.0079 2.8346 2.126 2.8346"]


@given(st.floats(0, 360), st.floats(1, 359.9))
def test_an_arc_ends_where_it_should_on_either_side(start: float, turn: float) -> None:
    import math

    mark = Arc((0, 0), 10, start, start + turn, layer("wall"))
    (path,) = list(screen(Drawing("d", (mark,))).iter(f"{SVG}path"))
    numbers = [float(n) for n in re.findall(r"-?\d+\.?\d*", path.get("d", ""))]
    a = math.radians(start + turn)
    assert numbers[0] == pytest.approx(10 * math.cos(math.radians(start)), abs=1e-3)
    assert numbers[-2:] == [pytest.approx(10 * math.cos(a), abs=1e-3), pytest.approx(-10 * math.sin(a), abs=1e-3)]
    assert path.get("d", "").count("A") == (2 if turn > 180 else 1)


@given(st.text(max_size=40))
def test_any_text_makes_a_well_formed_drawing(text: str) -> None:
    marks = (
        Text((0, 0), text, layer("text"), address=text, label=text),
        Symbol("tag", (9, 9), layer("symbol"), text=text),
    )
    drawing = Drawing(text, (*marks, Line((0, 0), (100, 0), layer("wall"))))
    ET.fromstring(screen_svg(drawing, title=text, alternative="x" + text, ident="d", reacts=True))
    ET.fromstring(paper_svg(leaf_of_drawing(drawing, QUARTER)))


def test_patterns_of_two_drawings_on_one_page_do_not_meet() -> None:
    first, second = screen(ident="a"), screen(ident="b")
    ids = [{e.get("id") for e in root.iter() if e.get("id")} for root in (first, second)]
    assert ids[0] & ids[1] == set()
    fills = [e.get("fill") for e in first.iter() if (e.get("fill") or "").startswith("url")]
    assert fills == ["url(#a-concrete)", "url(#a-hatched)"]


def test_equal_drawings_give_equal_svg() -> None:
    assert screen_svg(wall(), title="t", alternative="a") == screen_svg(wall(), title="t", alternative="a")
    assert paper_svg(leaf_of_sheet(wall_sheet())) == paper_svg(leaf_of_sheet(wall_sheet()))


def test_there_is_no_colour_on_paper() -> None:
    colours = set(re.findall(r"#[0-9a-f]{6}", paper_svg(leaf_of_sheet(wall_sheet()))))
    assert colours
    assert all(colour[1:3] == colour[3:5] == colour[5:7] for colour in colours)


def test_fills_are_told_apart_by_pattern() -> None:
    square = ((0, 0), (40, 0), (40, 40), (0, 40))
    seen = set()
    for fill in ("hatched", "crossed", "concrete", "masonry", "earth", "wood"):
        drawing = Drawing("d", (Polygon(square, layer("wall"), fill),))  # type: ignore[arg-type]
        (pattern,) = list(screen(drawing).iter(f"{SVG}pattern"))
        seen.add((pattern[0].get("d"), pattern.get("width"), pattern.get("height")))
    assert len(seen) == 6
