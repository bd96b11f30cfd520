"""How wide words are: our table against the font that the PDF carries."""

from __future__ import annotations

import io
import re

import pikepdf

from groundsill.papers.document import Paragraph
from groundsill.papers.letters import text_width, wrapped
from groundsill.papers.writers.typst import to_pdf
from tests.papers.sample import paper


def test_the_widths_of_letters_are_those_of_the_font_in_the_pdf() -> None:
    """Our table of advance widths against what the PDF's own font says of each letter it holds."""
    letters = "".join(chr(c) for c in range(33, 127)) + "½¼¾⅛⅜⅝⅞"
    with pikepdf.open(io.BytesIO(to_pdf(paper(Paragraph(" ".join(letters)), contents=0, stamp=())))) as pdf:
        widths: dict[str, int] = {}
        for font in pdf.pages[0].Resources.Font.values():
            if str(font.BaseFont).endswith("LibertinusSerif-Regular-Identity-H"):
                widths |= font_widths(font)
    missing = [letter for letter in letters if letter not in widths]
    assert not missing
    assert {letter: text_width(letter, 1000.0) for letter in letters} == {letter: widths[letter] for letter in letters}


def font_widths(font: object) -> dict[str, int]:
    """Advance widths by letter, from a composite font's width array and its map back to Unicode."""
    cmap = font.ToUnicode.read_bytes().decode("latin-1")  # type: ignore[attr-defined]
    pairs = re.findall(r"^<([0-9a-fA-F]{4})> <([0-9a-fA-F]+)>$", cmap, re.MULTILINE)
    letters = {int(code, 16): bytes.fromhex(text).decode("utf-16-be") for code, text in pairs}
    found: dict[str, int] = {}
    array = list(font.DescendantFonts[0].W)  # type: ignore[attr-defined]
    place = 0
    while place < len(array):
        first = int(array[place])
        if hasattr(array[place + 1], "__iter__"):
            codes = {first + n: round(float(w)) for n, w in enumerate(array[place + 1])}
            place += 2
        else:
            codes = {c: round(float(array[place + 2])) for c in range(first, int(array[place + 1]) + 1)}
            place += 3
        found |= {letters[c]: w for c, w in codes.items() if c in letters}
    return found


def test_words_are_wrapped_within_their_width_and_none_is_lost() -> None:
    text = "Old bolts are not counted unless their embedment is known, or a test was made in place."
    lines = wrapped(text, 120.0, 9.0)
    assert " ".join(lines) == text
    assert len(lines) > 2
    assert all(text_width(line, 9.0) <= 120.0 for line in lines)


def test_a_word_wider_than_the_line_stands_alone() -> None:
    assert wrapped("a seismically b", 20.0, 9.0) == ("a", "seismically", "b")
