"""One chain as tables: every link with its figures, every reason, and the two orders never mixed."""

from __future__ import annotations

from dataclasses import replace

from groundsill.loadpath.headline import first_to_fail
from groundsill.papers.document import Document, KeyValues, TableBlock
from groundsill.papers.views.chain_view import chain_blocks, chain_header, first_to_fail_table, links_table
from groundsill.papers.views.doubts import Doubts
from groundsill.papers.writers.terminal import to_text
from groundsill.working.value import Mark
from tests.papers.views_sample import (
    BOLT_DOUBT,
    DUCTILE,
    WEIGHTS_DOUBT,
    chain,
    link,
    one_of_each,
    rows_of,
    stage,
    words,
)

DOUBTS = Doubts({WEIGHTS_DOUBT: 1, BOLT_DOUBT: 7})


def row_of(table: TableBlock, title: str) -> tuple[str, ...]:
    (found,) = [row for row in rows_of(table) if len(row) > 1 and row[0] == title]
    return found


def test_a_link_shows_demand_capacity_level_ratios_and_verdict() -> None:
    table = links_table(one_of_each(), "us", DOUBTS)
    assert row_of(table, "floor") == ("floor", "500 lb", "1,000 lb", "allowable", "0.50", "same", "passes", "†")
    assert row_of(table, "sheathing")[4:7] == ("0.90", "1.25", "depends (1)")
    assert words(table.footnotes[1]) == "1  Depends on Stud spacing (W3)."


def test_figures_follow_the_units_of_the_house() -> None:
    assert row_of(links_table(one_of_each(), "si", DOUBTS), "floor")[1] == "2.22 kN"


def test_marks_stand_beside_the_figure_and_what_all_carry_is_said_once() -> None:
    table = links_table(one_of_each(), "us", DOUBTS)
    assert row_of(table, "bolts in sill K1")[7] == "†7"
    assert row_of(table, "bolts in sill K2")[7] == "†"
    assert words(table.footnotes[0]) == (
        "† alone: the figures rest on †1, as those of every link checked in this table do."
    )


def test_a_link_that_was_not_checked_shows_no_figure_and_says_why() -> None:
    table = links_table(one_of_each(), "us", DOUBTS)
    assert row_of(table, "joints")[1:] == ("–", "–", "–", "–", "–", "cannot be checked (4)", "")
    assert "4  The joint was not seen." in [words(note) for note in table.footnotes]


def test_indicated_names_its_extension_beside_its_reason() -> None:
    table = links_table(one_of_each(), "us", DOUBTS)
    assert row_of(table, "concrete")[6] == "indicated (2, 3)"
    notes = [words(note) for note in table.footnotes]
    assert "2  Never tested." in notes
    assert "3  Extension beyond the standard: Concrete under 2,500 psi." in notes


def test_a_long_row_of_figures_that_a_link_rests_on_stands_once_below_the_table() -> None:
    """Twenty numbers in a narrow cell made one line of figures as high as a page."""
    many = tuple(Mark("from memory", f"figure {n:02}") for n in range(20))
    doubts = Doubts({mark: 2 * n + 11 for n, mark in enumerate(many)} | {BOLT_DOUBT: 7})
    shared, other = link("a", "passes", marks=many), link("b", "passes", marks=many)
    few = link("c", "passes", marks=(BOLT_DOUBT,))
    table = links_table(chain(stage("a", shared), stage("b", other), stage("c", few)), "us", doubts)
    assert [row_of(table, title)[7] for title in ("a", "b")] == ["†a", "†a"]
    assert row_of(table, "c")[7] == doubts.dagger({BOLT_DOUBT})
    below = [words(note) for note in table.footnotes if words(note).startswith("†a")]
    assert below == [f"†a  {doubts.dagger(many).removeprefix('†')}"]
    assert below[0].count(",") == 19


def test_no_capacity_is_said_in_words_not_as_a_ratio() -> None:
    nothing = link("sill-bolts", "fails", capacity=0.0, ratio=None, least_favourable=None)
    row = row_of(links_table(chain(stage("sill-bolts", nothing)), "us", DOUBTS), "sill-bolts")
    assert row[2:6] == ("0 lb", "allowable", "no capacity", "–")


def test_a_link_whose_worst_case_has_no_capacity_says_so() -> None:
    lost = link("sill-bolts", "depends", least_favourable=None, depends_on=("Embedment (B3)",))
    row = row_of(links_table(chain(stage("sill-bolts", lost)), "us", DOUBTS), "sill-bolts")
    assert row[4:6] == ("0.90", "no capacity")


def test_a_stage_that_does_not_apply_is_one_line_with_its_reason() -> None:
    rows = rows_of(links_table(one_of_each(), "us", DOUBTS))
    assert ("Plate: does not apply: no joint in the plate",) in rows
    assert not any(row[0] == "plate" for row in rows if len(row) > 1)


def test_a_stage_names_its_rule_its_verdict_and_its_clause_once() -> None:
    rows = rows_of(links_table(one_of_each(), "us", DOUBTS))
    assert ("Sill bolts (every link must pass): fails; NDS 2018 12.3.1",) in rows


def test_links_of_different_clauses_each_name_their_own() -> None:
    mixed = stage("edge", link("edge", "passes", "nails", clause="A"), link("edge", "passes", "blocking", clause="B"))
    table = links_table(chain(mixed), "us", DOUBTS)
    assert [words(note) for note in table.footnotes] == ["1  By A.", "2  By B."]


def test_links_of_one_title_are_told_apart_by_the_direction_of_the_force() -> None:
    both = stage("overturning", *(link("overturning", "passes", "panel P1", direction=d) for d in ("+", "-")))
    titles = [row[0] for row in rows_of(links_table(chain(both), "us", DOUBTS)) if len(row) > 1]
    assert titles == ["panel P1, force toward the line's end", "panel P1, force toward the line's start"]


def test_the_governing_link_is_set_in_strong_type() -> None:
    table = links_table(one_of_each(), "us", DOUBTS)
    (heavy,) = table.heavy
    assert rows_of(table)[heavy][0] == "bolts in sill K1"


def test_the_header_says_force_reliance_and_the_governing_check() -> None:
    header = chain_header(one_of_each(), "us", DOUBTS)
    told = {row.key: (words(row.value), words(row.note)) for row in header.rows}
    assert told["Earthquake force"][0] == "3,420 lb †1, strength level, along x"
    assert told["Governing check"] == ("bolts in sill K1, ratio 2.00", "NDS 2018 12.3.1")
    assert told["Relied on"] == ("yes", "Perimeter line on a continuous foundation.")
    assert told["Verdict"][0].endswith("stops it. fails")


def test_the_order_of_failing_stands_apart_with_its_spread_and_says_what_is_too_close_to_call() -> None:
    table = first_to_fail_table(one_of_each(), "us")
    assert table is not None
    assert rows_of(table) == [
        ("1", "floor", "1,500 lb", "2,000 lb", "2,500 lb", "ductile (1)", "too close to call"),
        ("2", "bolts in sill K1", "1,800 lb", "2,300 lb", "2,800 lb", "brittle (2)", "clear"),
    ]
    assert "The two are never mixed." in words(table.footnotes[0])
    assert "No expected strength is known for" in words(table.footnotes[-1])
    assert first_to_fail_table(chain(stage("floor", link("floor", "passes"))), "us") is None


def test_a_link_without_any_strength_gives_first() -> None:
    nothing = link("sill-bolts", "fails", capacity=0.0, ratio=None, least_favourable=None)
    found = chain(stage("floor", link("floor", "passes", expected=DUCTILE)), stage("sill-bolts", nothing))
    table = first_to_fail_table(replace(found, first_to_fail=first_to_fail(found.links)), "us")
    assert table is not None
    assert [row[:3] for row in rows_of(table)] == [
        ("1", "sill-bolts: at once, it has no strength that counts", "–"),
        ("2", "floor", "1,500 lb"),
    ]


def test_a_foundation_body_is_not_called_a_line() -> None:
    body = chain(stage("sliding", link("sliding", "passes")), kind="body", mark="B1", name="foundation under L1")
    assert links_table(body, "us", DOUBTS).caption == "B1 foundation under L1: checks of the foundation body"
    assert "Relied on" not in {row.key for row in chain_header(body, "us", DOUBTS).rows}


def test_the_terminal_prints_the_same_chain_without_a_list_of_marks() -> None:
    blocks = chain_blocks(one_of_each())
    assert isinstance(blocks[0], KeyValues)
    text = to_text(Document("Chain", blocks, numbered=False), 100)
    assert "bolts in sill K1" in text
    assert "Rests on" in text
    assert "†" in text
    assert "†1" not in text
    assert "L1: first to fail" in text
