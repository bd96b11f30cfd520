"""Plain text of a given width, the same words as on paper, and no way to drive the reader's terminal."""

from __future__ import annotations

import io

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len
from rich.console import Console

from groundsill.papers.document import Paragraph, StatusWord, Working
from groundsill.papers.writers.escape import clean
from groundsill.papers.writers.terminal import print_document, to_text
from groundsill.working.value import Mark
from tests.papers.sample import FROM_MEMORY, paper, steps, table
from tests.papers.test_typst import NASTY, with_everywhere


def squeezed(text: str) -> str:
    return "".join(text.split())


@pytest.mark.parametrize("width", [40, 60, 80, 120])
def test_no_line_is_wider_than_asked_and_none_ends_in_blanks(width: int) -> None:
    lines = to_text(paper(), width).splitlines()
    assert max(cell_len(line) for line in lines) <= width
    assert all(line == line.rstrip() for line in lines)


def test_a_step_reads_like_a_textbook_with_the_equals_signs_in_a_column() -> None:
    text = to_text(paper(*(Working(step) for step in steps()), contents=0), 100)
    assert (
        "Yield mode Is: the side member crushes  [NDS 2018 Table 12.3.1A, Eq. 12.3-2]\n"
        "    Z_Is = D · l_s · F_es / R_d\n"
        "         = 0.5 · 1.5 · 3150 / 5\n"
        "         = 472.5 lb\n"
    ) in text
    assert "D = 0.5 in   bolt diameter, survey" in text
    assert "nut and washer sound: not known" in text
    assert "h = 24 in = 2 ft" in text


def test_a_mark_of_doubt_is_printed_under_the_step_that_depends_on_it() -> None:
    text = to_text(paper(*(Working(step) for step in steps()), contents=0))
    assert "† [1] from memory, to be confirmed: dowel bearing strength of the old sill" in text
    assert text.partition("Least of the modes")[2].count("from memory [1]") == 1


def test_a_paper_can_number_its_marks_beforehand() -> None:
    other = Mark("estimated", "height of the wall")
    blocks = tuple(Working(step) for step in steps())
    text = to_text(paper(*blocks, contents=0, marks=(other, FROM_MEMORY)))
    assert "† [2] from memory, to be confirmed: dowel bearing strength of the old sill" in text
    assert text.count("from memory, to be confirmed: dowel bearing strength of the old sill") == 1
    assert "from memory [2]" in text
    assert "height of the wall" not in text


def test_a_table_has_its_heading_units_groups_and_footnotes() -> None:
    text = to_text(paper(table(), contents=0))
    for words in ("Table 1. Sill pieces of line L2", "Piece", "lb", "Line L2", "1,005", "Forces at allowable level."):
        assert words in text


def test_a_verdict_is_a_word_and_a_sign() -> None:
    signs = {
        "passes": "●",
        "fails": "✕",
        "indicated": "▨",
        "cannot be checked": "□",
        "does not apply": "–",
        "depends": "◐",
    }
    for status, sign in signs.items():
        text = to_text(paper(Paragraph(StatusWord(status)), contents=0))  # type: ignore[arg-type]
        assert f"{sign} {status}" in text


def test_a_drawing_is_told_in_words() -> None:
    text = " ".join(to_text(paper()).split())
    assert "[Figure 1. North wall from outside] A cripple wall forty feet long with one new panel." in text


@pytest.mark.parametrize("text", [*NASTY, "[bold]x[/bold]", ":smiley:", "[/]"])
def test_markup_in_anybodys_words_stays_words(text: str) -> None:
    document, _ = with_everywhere(text)
    assert squeezed(clean(text)) in squeezed(to_text(document, 100))  # type: ignore[arg-type]


def test_a_survey_cannot_drive_the_terminal() -> None:
    document, _ = with_everywhere("\x1b]0;owned\x07\x1b[2J\x9b31m\x08\r")
    out = to_text(document)  # type: ignore[arg-type]
    assert "[U+001B]]0;owned[U+0007][U+001B][2J[U+009B]31m[U+0008]" in squeezed(out)
    assert not [c for c in out if ord(c) < 32 and c != "\n"]


@given(st.text(max_size=40), st.integers(20, 120))
def test_any_text_prints_within_the_width(text: str, width: int) -> None:
    document, _ = with_everywhere(text)
    out = to_text(document, width)  # type: ignore[arg-type]
    assert all(cell_len(line) <= width for line in out.splitlines())
    assert not [c for c in out if ord(c) < 32 and c != "\n"]


def test_a_terminal_gets_the_same_words_with_styles() -> None:
    out = io.StringIO()
    console = Console(file=out, width=80, force_terminal=True, color_system="standard", _environ={})
    print_document(paper(), console)
    assert "\x1b[1m" in out.getvalue()
    assert "carries 41 % of the required force" in out.getvalue()


def test_equal_input_gives_equal_text() -> None:
    assert to_text(paper()) == to_text(paper())
