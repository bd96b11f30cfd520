"""Blocks refuse what would leave a reader out."""

from __future__ import annotations

import pytest

from groundsill.papers.document import (
    Column,
    Document,
    Figure,
    Heading,
    Paragraph,
    Reference,
    Run,
    StatusWord,
    TableBlock,
    plain_text,
    spans,
    strong,
)
from groundsill.papers.writers.numbering import numbered
from tests.papers.sample import every_block, paper, table, wall


@pytest.mark.parametrize("alternative", ["", "   ", "\n"])
def test_a_figure_without_alternative_text_is_refused(alternative: str) -> None:
    with pytest.raises(ValueError, match=r"figure 'North wall' has no alternative text: say in words what it shows"):
        Figure(wall(), "North wall", alternative)


def test_a_table_row_of_the_wrong_length_is_refused_with_its_number() -> None:
    with pytest.raises(ValueError, match=r"table 'Bolts': row 1 has 1 cells for 2 columns"):
        TableBlock((Column("Mark"), Column("Size")), (("B1", "1/2 in"), ("B2",)), "Bolts")


def test_a_table_without_columns_is_refused() -> None:
    with pytest.raises(ValueError, match=r"table 'Bolts' has no columns"):
        TableBlock((), (), "Bolts")


def test_a_heading_may_not_skip_a_level() -> None:
    with pytest.raises(ValueError, match=r"heading 'Bolts': level 3 follows level 1"):
        Document("T", (Heading("Line L2", 1), Heading("Bolts", 3)))


def test_the_first_heading_is_of_the_first_level() -> None:
    with pytest.raises(ValueError, match=r"heading 'Bolts': level 2 follows level 0"):
        Document("T", (Heading("Bolts", 2),))


def test_a_heading_level_that_does_not_exist_is_refused() -> None:
    with pytest.raises(ValueError, match=r"heading 'Deep': level 5 is not one of 1 to 4"):
        Heading("Deep", 5)


def test_a_reference_to_nothing_is_refused_wherever_it_stands() -> None:
    for block in (Paragraph(("see ", Reference("line L9", "l9"))), paper_table_with(Reference("line L9", "l9"))):
        with pytest.raises(ValueError, match=r"reference 'line L9' leads to 'l9', which is nowhere in the document"):
            Document("T", (block,))


def paper_table_with(cell: Reference) -> TableBlock:
    return TableBlock((Column("Line"),), ((cell,),), "Lines")


def test_an_anchor_used_twice_is_refused() -> None:
    with pytest.raises(ValueError, match="anchors used twice: a"):
        Document("T", (Heading("One", 1, "a"), Heading("Two", 1, "a"), Heading("Three", 1, "b")))


def test_a_document_needs_a_title() -> None:
    with pytest.raises(ValueError, match="a document needs a title"):
        Document(" ", ())


def test_text_is_the_same_however_it_is_given() -> None:
    assert spans("six feet") == spans(("six feet",)) == spans(Run("six feet")) == (Run("six feet"),)
    assert plain_text(("at most ", strong("6'-0\""), StatusWord("passes"))) == "at most 6'-0\"passes"


def test_a_verdict_may_say_on_what_it_depends() -> None:
    assert StatusWord("depends", "depends on tests n1, n2").text == "depends on tests n1, n2"
    assert StatusWord("cannot be checked").text == "cannot be checked"


def test_headings_figures_and_tables_are_counted_once_for_all_writers() -> None:
    labels = [label for _, label in numbered(paper()) if label]
    assert labels == ["1", "1.1", "Table 1", "Figure 1", "1.1.1", "2", "Figure 2"]


def test_a_lower_heading_begins_again_under_the_next_higher_one() -> None:
    blocks = (Heading("a", 1), Heading("b", 2), Heading("c", 2), Heading("d", 1), Heading("e", 2), Heading("f", 3))
    assert [label for _, label in numbered(Document("T", blocks))] == ["1", "1.1", "1.2", "2", "2.1", "2.1.1"]
    assert {label for _, label in numbered(Document("T", blocks, numbered=False))} == {""}


def test_the_sample_paper_holds_every_kind_of_block() -> None:
    from groundsill.papers import document

    kinds = {type(block) for block in every_block()}
    assert kinds == set(document.Block.__args__)
    assert table().rows
