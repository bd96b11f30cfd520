"""A forty-foot wall is forty feet long on the paper, in the vectors of the PDF, and its dimension is real text."""

from __future__ import annotations

import math

import pypdfium2
import pytest

from groundsill.papers.document import Figure
from groundsill.papers.drawing import Drawing, Line, Text, layer
from groundsill.papers.letters import CAP_HEIGHT
from groundsill.papers.writers.typst import to_pdf
from tests.papers.reading_pdf import Path, extent, page_texts, pdfium_paths, stroked_paths
from tests.papers.sample import paper, scale_named, wall, wall_sheet

ALTERNATIVE = "The north wall."
READERS = pytest.mark.parametrize("read", [stroked_paths, pdfium_paths], ids=["content stream", "PDFium"])


def wall_outline(paths: list[Path], height_pt: float) -> Path:
    """The one long outline as high as the wall: the wall itself, whatever its length came out as."""
    found = [p for p in paths if extent(p)[0] > 400 and extent(p)[1] == pytest.approx(height_pt, abs=0.3)]
    assert len(found) == 1
    return found[0]


def made(scale: str, size: str, shown_in: str) -> bytes:
    figure = Figure(wall_sheet(scale, size, shown_in), "Sheet S2", ALTERNATIVE)
    return to_pdf(paper(figure, contents=0))


@READERS
def test_forty_feet_at_a_quarter_inch_to_the_foot_measure_ten_inches(read: object) -> None:
    pdf = made('1/4" = 1\'-0"', "tabloid", "ft-in")
    outline = wall_outline(read(pdf, 1), 30 / 48 * 72)  # type: ignore[operator]
    assert extent(outline)[0] == pytest.approx(720.0, abs=0.05)
    assert extent(outline)[1] == pytest.approx(45.0, abs=0.05)


@READERS
def test_forty_feet_at_one_to_fifty_measure_243_84_mm(read: object) -> None:
    pdf = made("1:50", "A3", "mm")
    outline = wall_outline(read(pdf, 1), 30 / 50 * 72)  # type: ignore[operator]
    assert extent(outline)[0] * 25.4 / 72 == pytest.approx(243.84, abs=0.02)


@READERS
def test_a_drawing_among_the_words_is_at_the_scale_printed_beside_it(read: object) -> None:
    figure = Figure(wall(), "North wall", ALTERNATIVE)
    pdf = to_pdf(paper(figure, contents=0))
    (text,) = page_texts(pdf)
    assert 'Scale 1/8" = 1\'-0"' in text
    outline = next(p for p in read(pdf, 0) if extent(p)[1] == pytest.approx(30 / 96 * 72, abs=0.05))  # type: ignore[operator]
    assert extent(outline)[0] == pytest.approx(360.0, abs=0.05)


def test_the_dimension_line_is_as_long_as_the_wall_and_its_words_are_the_true_length() -> None:
    pdf = made('1/4" = 1\'-0"', "tabloid", "ft-in")
    lines = [p for p in stroked_paths(pdf, 1) if len(p) == 2 and extent(p)[1] < 0.01]
    assert any(extent(line)[0] == pytest.approx(720.0, abs=0.05) for line in lines)
    assert "40'-0\"" in page_texts(pdf)[1]


def test_a_metric_dimension_is_extracted_as_text() -> None:
    text = page_texts(made("1:50", "A3", "mm"))[1]
    assert "12192 mm" in text
    assert "Scale 1:50" in text


def test_the_page_is_the_paper_it_says_it_is() -> None:
    for name, size in (("tabloid", (1224.0, 792.0)), ("A3", (420 / 25.4 * 72, 297 / 25.4 * 72))):
        scale = "1:50" if name == "A3" else '1/4" = 1\'-0"'
        with pypdfium2.PdfDocument(made(scale, name, "ft-in")) as document:
            assert document[1].get_size() == pytest.approx(size, abs=0.05)


@pytest.mark.parametrize("rotation", [0.0, 90.0, -90.0, 180.0])
@pytest.mark.parametrize(("anchor", "along"), [("start", 0.0), ("middle", 0.5), ("end", 1.0)])
@pytest.mark.parametrize(("baseline", "up"), [("bottom", 0.0), ("middle", 0.5), ("top", 1.0)])
def test_words_stand_at_their_anchor_however_they_are_turned(
    rotation: float, anchor: str, along: float, baseline: str, up: float
) -> None:
    """The boxes of the letters, turned back about the anchor, begin, straddle or end there as they were told to."""
    cross = (Line((50, 0), (50, 100), layer("wall")), Line((0, 50), (100, 50), layer("wall")))
    words = Text((50, 50), "HINTED", layer("text"), 12, False, anchor, baseline, rotation)  # type: ignore[arg-type]
    drawing = Drawing("cross", (*cross, words))
    pdf = to_pdf(paper(Figure(drawing, "Cross", ALTERNATIVE, scale_named('1/2" = 1\'-0"')), contents=0, numbered=False))
    arm = 100 / 24 * 72
    level = next(p for p in stroked_paths(pdf, 0) if extent(p) == pytest.approx((arm, 0.0), abs=0.05))
    upright = next(p for p in stroked_paths(pdf, 0) if extent(p) == pytest.approx((0.0, arm), abs=0.05))
    at = (upright[0][0], level[0][1])
    turn = math.radians(-rotation)
    corners = [
        (
            (x - at[0]) * math.cos(turn) - (y - at[1]) * math.sin(turn),
            (x - at[0]) * math.sin(turn) + (y - at[1]) * math.cos(turn),
        )
        for x, y in letter_corners(pdf, "HINTED")
    ]
    left, right = min(x for x, _ in corners), max(x for x, _ in corners)
    low, high = min(y for _, y in corners), max(y for _, y in corners)
    assert left + (right - left) * along == pytest.approx(0.0, abs=0.8)
    assert low + (high - low) * up == pytest.approx(0.0, abs=0.4)
    assert high - low == pytest.approx(12 * CAP_HEIGHT, abs=0.5)


def letter_corners(pdf: bytes, word: str) -> list[tuple[float, float]]:
    with pypdfium2.PdfDocument(pdf) as document:
        text = document[0].get_textpage()
        place = text.get_text_range().index(word)
        boxes = [text.get_charbox(place + n) for n in range(len(word))]
    return [(x, y) for left, bottom, right, top in boxes for x, y in ((left, bottom), (right, top))]
