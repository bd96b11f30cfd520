"""The PDF: harmless whatever is typed, tagged, the same bytes every time, tables that run over pages."""

from __future__ import annotations

import io
import re
import unicodedata

import pikepdf
import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.papers.document import (
    BulletList,
    Column,
    Figure,
    GroupRow,
    Heading,
    KeyValue,
    KeyValues,
    NumberedList,
    Paragraph,
    Reference,
    Remark,
    Run,
    StatusWord,
    TableBlock,
    Working,
)
from groundsill.papers.drawing import Drawing, Line, Symbol, Text, layer
from groundsill.papers.sheet import PAPERS, TitleBlock, View, sheet_of
from groundsill.papers.writers.escape import printable
from groundsill.papers.writers.typst import to_pdf, to_typst
from groundsill.working.errors import CannotWrite
from groundsill.working.sheet import Sheet as Calculation
from groundsill.working.steps import given as given_figure
from groundsill.working.steps import note
from groundsill.working.value import Mark
from tests.papers.reading_pdf import page_texts, squeezed
from tests.papers.sample import paper, scale_named, steps, table, wall, wall_sheet

NASTY = (
    '#panic("x")',
    '"); #panic("x")',
    "\\",
    '\\"',
    "$x$",
    "*strong* _emph_ `code` <label> @ref",
    "// comment /* block */",
    "= heading",
    "https://example.org",
    "-- --- ... ~",
    "]#[",
    "\\u{41}",
    "</text><script>alert(1)</script>",
    "&amp; &lt;",
    "{{ }} {0}",
)


def body_of(typst_source: str) -> str:
    return typst_source.rpartition("#show: gs-document")[2]


def with_everywhere(text: str) -> tuple[object, int]:
    """A paper with the text in each place where words can stand, and how many such places a reader sees."""
    with Calculation() as sheet:
        given_figure("D", 0.5, "in", text, [Mark("estimated", text)])
        note(text)
    marks = (Line((0, 0), (100, 0), layer("wall")), Text((0, 10), text, layer("text")))
    drawing = Drawing("d", (*marks, Symbol("tag", (50, 30), layer("symbol"), text=text)))
    blocks = (
        Heading(text, 1, "to " + text),
        Paragraph((text, Run(text, "strong"), Run(text, "emphasis"), Run(text, "small"), Run(text, "code"))),
        Paragraph(Reference(text, "to " + text)),
        Remark("note", text, text),
        KeyValues((KeyValue(text, text, text),), text),
        BulletList((text,)),
        NumberedList((text,)),
        TableBlock((Column(text, text),), (GroupRow(text), (text,), (StatusWord("depends", text),)), text, (text,)),
        Figure(drawing, text, "shows " + text),
        *(Working(step) for step in sheet.steps),
    )
    return paper(*blocks, subtitle=text, header=text, header_end=text, footer=text, stamp=(text,), contents=1), 28


def assert_everywhere(text: str) -> None:
    document, places = with_everywhere(text)
    wanted = squeezed(printable(text))
    found = squeezed("".join(page_texts(to_pdf(document))))  # type: ignore[arg-type]
    if wanted:
        assert found.count(wanted) >= places


@pytest.mark.parametrize("text", NASTY)
def test_markup_in_anybodys_words_stays_words(text: str) -> None:
    assert_everywhere(text)


def letters() -> st.SearchStrategy[str]:
    """Any text at all but the few scripts that PDFium hands back in another order than they were typed.

    Nor text that ends in a hyphen: PDFium takes one at the end of a line for a word broken there, and drops it.
    """
    turned = ("R", "AL", "AN", "NSM")

    def comes_back(text: str) -> bool:
        return not text.rstrip().endswith("-") and not any(unicodedata.bidirectional(c) in turned for c in text)

    return st.text(max_size=30).filter(comes_back)


@given(letters())
def test_any_text_builds_in_every_block_and_is_extracted_again(text: str) -> None:
    assert_everywhere(text)


@given(st.text(max_size=60))
def test_any_text_of_any_script_builds_and_loses_no_letter(text: str) -> None:
    """Right-to-left and combining letters may come back in another order, but every one comes back."""
    wanted = squeezed(printable(text))
    found = squeezed(page_texts(to_pdf(paper(Paragraph(text), contents=0, stamp=())))[0])
    missing = set(unicodedata.normalize("NFD", wanted)) - set(unicodedata.normalize("NFD", found))
    assert not missing


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("\x1b[31mred", "[U+001B][31mred"),
        ("12\u202e34", "12[U+202E]34"),
        ("漢字 sill", "[U+6F22 U+5B57] sill"),
        ("\U0001f600", "[U+1F600]"),
        ("\ue000", "[U+E000]"),
        ("\ud800", "[U+D800]"),
        ("a\tb\r\nc\u2028d", "a b c d"),
        ("e\u0301 n\u0303", "é ñ"),
        ("\u1eb9\u0301", "\u1eb9\u0301"),
        ("\u2b61\u0301", "\u2b61[U+0301]"),
        ("½ ⅝ × ° ≤ ψ", "½ ⅝ × ° ≤ ψ"),
    ],
)
def test_what_the_fonts_cannot_draw_is_written_out(typed: str, shown: str) -> None:
    assert printable(typed) == shown
    assert squeezed(shown) in squeezed(page_texts(to_pdf(paper(Paragraph(typed), contents=0)))[0])


def test_a_word_too_long_for_the_page_is_broken_not_lost() -> None:
    word = "x" * 400
    (text,) = page_texts(to_pdf(paper(Paragraph(word), contents=0)))
    assert word in squeezed(text)
    with pikepdf.open(io.BytesIO(to_pdf(paper(Paragraph(word), contents=0)))) as pdf:
        assert len(pdf.pages) == 1


def test_every_glyph_listed_can_be_printed() -> None:
    """The list of what the fonts can draw, printed whole: PDF/UA refuses a page with one missing glyph."""
    from importlib.resources import files

    letters: list[str] = []
    for line in files("groundsill.papers.writers").joinpath("glyphs.txt").read_text(encoding="utf-8").splitlines():
        if line == "[serif]":
            break
        if not line.startswith(("#", "[")):
            first, _, last = line.partition("-")
            letters.extend(chr(c) for c in range(int(first, 16), int(last or first, 16) + 1))
    assert len(letters) > 7000
    letters = [letter for letter in letters if printable(letter) == letter]
    assert len(letters) > 6900
    for style in ("plain", "strong", "emphasis", "code"):
        lines = tuple(
            Paragraph(Run(" ".join(letters[n : n + 60]), style))
            for n in range(0, len(letters), 60)  # type: ignore[arg-type]
        )
        assert to_pdf(paper(*lines, contents=0)).startswith(b"%PDF")


def test_equal_input_gives_equal_bytes() -> None:
    first, second = to_pdf(paper()), to_pdf(paper())
    assert first == second
    assert b"/CreationDate" not in first


def test_equal_bytes_come_from_another_process_with_another_hash_seed() -> None:
    import hashlib
    import os
    import subprocess
    import sys

    code = (
        "import hashlib; from groundsill.papers.writers.typst import to_pdf; from tests.papers.sample import paper; "
        "print(hashlib.sha256(to_pdf(paper())).hexdigest())"
    )
    env = {**os.environ, "PYTHONPATH": os.pathsep.join(p for p in sys.path if p), "PYTHONHASHSEED": "7"}
    other = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, env=env)
    assert other.stdout.strip() == hashlib.sha256(to_pdf(paper())).hexdigest()


def test_the_pdf_is_tagged_titled_and_says_its_language() -> None:
    with pikepdf.open(io.BytesIO(to_pdf(paper()))) as pdf:
        assert pdf.Root.MarkInfo.Marked
        assert str(pdf.Root.Lang) == "en-US"
        assert bool(pdf.Root.ViewerPreferences.DisplayDocTitle)
        with pdf.open_metadata() as metadata:
            assert metadata["pdfuaid:part"] == "1"
            assert metadata["dc:title"] == "Calculations"
        kinds = set(tags(pdf.Root.StructTreeRoot))
    assert {"H1", "H2", "H3", "Table", "TH", "TD", "Figure", "Formula", "L", "Caption", "TOC", "Link"} <= kinds


def tags(node: pikepdf.Object) -> list[str]:
    if isinstance(node, pikepdf.Array):
        return [tag for child in node for tag in tags(child)]
    if not isinstance(node, pikepdf.Dictionary):
        return []
    own = [str(node.S)[1:]] if "/S" in node else []
    return own + (tags(node.K) if "/K" in node else [])


def alternatives(node: pikepdf.Object) -> list[str]:
    if isinstance(node, pikepdf.Array):
        return [alt for child in node for alt in alternatives(child)]
    if not isinstance(node, pikepdf.Dictionary):
        return []
    own = [str(node.Alt)] if "/Alt" in node else []
    return own + (alternatives(node.K) if "/K" in node else [])


def test_every_drawing_and_formula_is_told_in_words() -> None:
    with pikepdf.open(io.BytesIO(to_pdf(paper()))) as pdf:
        told = alternatives(pdf.Root.StructTreeRoot)
    assert "A cripple wall forty feet long with one new panel." in told
    assert "The north wall at a quarter inch to the foot." in told
    assert "equals D · l_s · F_es / R_d" in told
    assert "equals 472.5 lb" in told


def test_a_huge_table_runs_over_pages_with_its_header_on_each() -> None:
    texts = page_texts(to_pdf(paper(table(rows=600), contents=0)))
    assert len(texts) > 10
    for text in texts:
        assert "Piece" in text
        assert "Demand" in text
    every = "".join(texts)
    assert all(re.search(rf"\bS{n}\b", every) for n in range(600))
    assert every.count("Table 1. Sill pieces of line L2") == 1
    assert "Forces at allowable level." in texts[-1]


def test_the_caption_of_a_table_is_never_left_alone_at_the_foot_of_a_page() -> None:
    for lines in range(20, 40):
        blocks = (*(Paragraph(f"Line {n}.") for n in range(lines)), table(rows=12))
        for text in page_texts(to_pdf(paper(*blocks, contents=0))):
            if "Sill pieces of line L2" in text:
                assert "Line L2" in text.partition("Sill pieces of line L2")[2]


def test_pages_are_numbered_n_of_m_under_a_running_header() -> None:
    texts = page_texts(to_pdf(paper(table(rows=120), contents=0)))
    count = len(texts)
    assert count > 2
    for number, text in enumerate(texts, start=1):
        assert f"{number} of {count}" in text
        assert "Larch Street house" in text
        assert "groundsill 0.1.0" in text


def test_a_step_is_set_with_clause_formula_numbers_answer_limit_and_marks() -> None:
    text = squeezed("".join(page_texts(to_pdf(paper(Heading("Bolt"), *(Working(s) for s in steps()), contents=0)))))
    for piece in (
        "NDS 2018 Table 12.3.1A, Eq. 12.3-2",
        "=472.5lb",
        "from memory, to be confirmed: dowel bearing strength of the old sill",
        "nut and washer sound: not known",
        "Old bolts are not counted",
        "bolt diameter, survey",
        "=2ft",
    ):
        assert squeezed(piece) in text


def test_a_mark_is_told_in_full_once_and_then_by_kind_and_number() -> None:
    text = " ".join("".join(page_texts(to_pdf(paper(*(Working(s) for s in steps()), contents=0)))).split())
    full = "[1] from memory, to be confirmed: dowel bearing strength of the old sill"
    assert text.count(full) == 1
    assert text.partition(full)[2].count("from memory [1]") >= 2


def test_a_verdict_is_a_word_and_a_drawn_shape() -> None:
    words = ("passes", "fails", "indicated", "cannot be checked", "does not apply")
    pdf = to_pdf(paper(*(Paragraph(StatusWord(word)) for word in words), contents=0))  # type: ignore[arg-type]
    (text,) = page_texts(pdf)
    assert all(word in text for word in words)
    assert "/RG" not in content(pdf)
    assert " rg" not in content(pdf)


def content(pdf: bytes) -> str:
    with pikepdf.open(io.BytesIO(pdf)) as opened:
        return "".join(page.Contents.read_bytes().decode("latin-1") for page in opened.pages)


def test_a_reference_leads_to_its_heading() -> None:
    blocks = (Heading("Basis", 1, "basis / 1"), Paragraph(Reference("the basis", "basis / 1")))
    with pikepdf.open(io.BytesIO(to_pdf(paper(*blocks, contents=0)))) as pdf:
        links = [a for page in pdf.pages for a in page.get("/Annots", []) if a.Subtype == "/Link"]
        assert len(links) == 1
        assert "Open the basis" not in str(links[0])


def test_headings_become_bookmarks_with_their_numbers() -> None:
    with pikepdf.open(io.BytesIO(to_pdf(paper()))) as pdf, pdf.open_outline() as outline:
        titles = [item.title for item in outline.root]
        below = [item.title for item in outline.root[0].children]
    assert titles == ["1 Basis", "2 Drawings"]
    assert below == ["1.1 Line L2"]


def test_a_sheet_takes_a_page_of_its_own_size_among_the_others() -> None:
    blocks = (Paragraph("before"), Figure(wall_sheet(), "S2", "The wall."), Paragraph("after"))
    with pikepdf.open(io.BytesIO(to_pdf(paper(*blocks, contents=0)))) as pdf:
        sizes = [tuple(round(float(v)) for v in page.mediabox)[2:] for page in pdf.pages]
    assert sizes == [(612, 792), (1224, 792), (612, 792)]


def test_the_title_block_is_real_text() -> None:
    block = TitleBlock("Larch Street house", "Port Ellery", "Plan", "S1 of 4", ("groundsill 0.1.0",))
    sheet = sheet_of(PAPERS["ARCH D"], (View(wall(), "Foundation plan"),), block)
    texts = page_texts(to_pdf(paper(Figure(sheet, "S1", "The plan."), contents=0)))
    for words in ("Larch Street house", "S1 of 4", "Foundation plan", "Seal and approval", "groundsill 0.1.0", "2 ft"):
        assert words in texts[1]


def test_a_figure_larger_than_the_page_is_refused() -> None:
    figure = Figure(wall(), "North wall", "The wall.", scale_named('1/4" = 1\'-0"'))
    with pytest.raises(
        CannotWrite, match=r"figure 'North wall' is 1\d\.\d in by \d\.\d in at 1/4\" = 1'-0\", more than"
    ):
        to_pdf(paper(figure))


def test_an_a4_paper_in_another_language_is_built() -> None:
    pdf = to_pdf(paper(language="de", paper="a4", contents=1))
    with pikepdf.open(io.BytesIO(pdf)) as opened:
        assert str(opened.Root.Lang) == "de"
        assert float(opened.pages[0].mediabox[2]) == pytest.approx(595.28, abs=0.01)


def test_typst_is_given_no_file_no_package_and_no_import() -> None:
    source = to_typst(paper())
    for word in ("#import", "#include", "@preview", "read(", "plugin("):
        assert word not in source


def test_an_empty_table_says_so() -> None:
    (text,) = page_texts(to_pdf(paper(TableBlock((Column("Line"),), (), "Lines"), contents=0)))
    assert "Table 1. Lines: nothing to list." in text
