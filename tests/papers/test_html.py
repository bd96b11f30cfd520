"""The HTML page: whole in itself, under a strict policy of its own, readable by ear, keyboard, phone and printer."""

from __future__ import annotations

import base64
import hashlib
import re
from html.parser import HTMLParser
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.papers.document import Figure, Heading, Paragraph, StatusWord, Working
from groundsill.papers.writers.escape import clean
from groundsill.papers.writers.html import article, stylesheet, to_html
from tests.papers.sample import paper, steps, table, wall
from tests.papers.test_typst import NASTY, with_everywhere

VOID = {"meta", "br", "hr", "img", "input", "link", "mo"} - {"mo"}


class Reader(HTMLParser):
    """Collects tags and attributes, and holds the page to closing what it opens."""

    def __init__(self, page: str) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[str] = []
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.words: list[str] = []
        self.feed(page)
        self.close()
        assert self.open == []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        if self.open and self.open[-1] not in ("style", "title", "desc"):
            self.words.append(data)

    def all(self, tag: str) -> list[dict[str, str | None]]:
        return [attrs for name, attrs in self.tags if name == tag]


def test_the_page_is_well_formed_and_fetches_nothing() -> None:
    page = to_html(paper())
    reader = Reader(page)
    assert not reader.all("script")
    assert not reader.all("link")
    for _, attrs in reader.tags:
        assert not {"src", "style", "onclick", "onload"} & attrs.keys()
        assert (attrs.get("href") or "#").startswith("#")
    assert "@import" not in page
    assert "url(http" not in page


def test_the_policy_allows_the_one_stylesheet_by_its_hash_and_nothing_else() -> None:
    page = to_html(paper())
    css = page.partition("<style>")[2].partition("</style>")[0]
    digest = base64.b64encode(hashlib.sha256(css.encode()).digest()).decode()
    policy = next(m["content"] for m in Reader(page).all("meta") if m.get("http-equiv") == "Content-Security-Policy")
    assert policy == f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; form-action 'none'"
    assert "<" not in css


def test_the_page_says_its_language_and_headings_step_down_one_by_one() -> None:
    reader = Reader(to_html(paper(language="es-MX")))
    assert reader.all("html") == [{"lang": "es-MX"}]
    levels = [int(tag[1]) for tag, _ in reader.tags if re.fullmatch(r"h[1-6]", tag)]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))


def test_every_link_leads_somewhere_and_every_id_is_one_of_a_kind() -> None:
    reader = Reader(to_html(paper()))
    ids = [attrs["id"] for _, attrs in reader.tags if attrs.get("id")]
    assert len(ids) == len(set(ids))
    assert {a["href"] for a in reader.all("a")} <= {f"#{ident}" for ident in ids}


def test_the_contents_list_the_headings_to_the_depth_asked() -> None:
    page = to_html(paper(contents=2))
    nav = page.partition("<nav")[2].partition("</nav>")[0]
    assert [clean(re.sub(r"<[^>]+>", "", item)) for item in re.findall(r"<li.*?</li>", nav)] == [
        "1 Basis",
        "1.1 Line L2",
        "2 Drawings",
    ]
    assert "<nav" not in to_html(paper(contents=0))


def test_a_table_names_its_columns_and_rows_and_scrolls_by_itself() -> None:
    reader = Reader(to_html(paper(table(), contents=0)))
    scopes = [attrs.get("scope") for attrs in reader.all("th")]
    assert scopes.count("col") == 4
    assert scopes.count("row") == 6
    assert scopes.count("rowgroup") == 1
    (box,) = [attrs for attrs in reader.all("div") if attrs.get("role") == "region"]
    assert box["tabindex"] == "0"
    assert box["aria-label"] == "Table 1. Sill pieces of line L2"


def test_mathematics_is_mathml_with_its_equals_signs_and_spaces() -> None:
    page = to_html(paper(*(Working(step) for step in steps()), contents=0))
    assert page.count("<math") == page.count("</math>") > 10
    assert "<mfrac>" in page
    assert "<msqrt>" in page
    assert (
        '<math displaystyle="true"><mrow><mo>=</mo><mrow><mn>472.5</mn><mtext>&#160;lb</mtext></mrow></mrow></math>'
        in page
    )
    assert "NDS 2018 Table 12.3.1A, Eq. 12.3-2" in page
    assert "† [1] from memory, to be confirmed: dowel bearing strength of the old sill" in page


def test_a_verdict_is_a_word_beside_a_shape_that_is_not_read_out() -> None:
    page = article(paper(Paragraph(StatusWord("indicated")), contents=0))
    assert re.search(r'<span class="gs-status"><svg [^>]*aria-hidden="true"[^>]*>.*</svg> indicated</span>', page)


def test_a_drawing_is_told_in_words() -> None:
    reader = Reader(to_html(paper(Figure(wall(), "North wall", "A wall of forty feet."), contents=0)))
    (svg,) = reader.all("svg")
    assert svg["role"] == "img"
    assert svg["aria-labelledby"] == "figure-1-title figure-1-desc"


def test_dark_print_and_phone_have_looks_and_targets_are_large_enough() -> None:
    css = stylesheet()
    assert "@media (prefers-color-scheme: dark)" in css
    assert "@media print" in css
    assert "thead { display: table-header-group; }" in css
    assert re.search(r"\.gs-contents a \{[^}]*min-height: 44px", css)
    assert re.search(r"\.gs-hit \{[^}]*stroke-width: 44px", css)
    assert ":focus-visible" in css


@pytest.mark.parametrize(("ink", "ground"), [("ink", "paper"), ("quiet", "paper"), ("focus", "paper")])
def test_words_stand_out_from_the_ground_by_day_and_by_night(ink: str, ground: str) -> None:
    """WCAG 2.2, 1.4.3: a contrast of 4.5 to 1 at least, worked out as the guideline says."""

    def luminance(colour: str) -> float:
        if len(colour) == 3:
            colour = "".join(c * 2 for c in colour)
        parts = [int(colour[n : n + 2], 16) / 255 for n in (0, 2, 4)]
        r, g, b = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
        return 0.2126 * r + 0.7152 * g + 0.0722 * b

    css = stylesheet()
    for block in re.findall(r":root \{([^}]*--gs-paper[^}]*)\}", css):
        colours = dict(re.findall(r"--gs-(\w+): #([0-9a-f]{3,6})", block))
        if ink in colours:
            high, low = sorted((luminance(colours[ink]), luminance(colours[ground])), reverse=True)
            assert (high + 0.05) / (low + 0.05) >= 4.5


@pytest.mark.parametrize("text", NASTY)
def test_markup_in_anybodys_words_stays_words_on_the_page(text: str) -> None:
    document, _ = with_everywhere(text)
    reader = Reader(to_html(document))  # type: ignore[arg-type]
    assert clean(text) in "".join(reader.words)
    assert not reader.all("script")


@given(st.text(max_size=40))
def test_any_text_makes_a_well_formed_page_and_is_read_again(text: str) -> None:
    document, _ = with_everywhere(text)
    page = to_html(document)  # type: ignore[arg-type]
    page.encode("utf-8")
    assert clean(text) in "".join(Reader(page).words)


def test_equal_input_gives_equal_pages() -> None:
    assert to_html(paper()) == to_html(paper())


def test_headings_without_numbers_or_anchors_can_still_be_reached() -> None:
    page = to_html(paper(Heading("Basis"), numbered=False, contents=1))
    (link,) = [a["href"] for a in Reader(page).all("a") if a.get("class") != "gs-skip"]
    assert f'id="{str(link)[1:]}"' in page
