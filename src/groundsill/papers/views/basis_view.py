"""What the figures stand on: editions and why, what is in doubt, what was assumed, and every warning."""

from __future__ import annotations

from groundsill.house.missing import Missing, together
from groundsill.papers.document import Block, BulletList, Column, Heading, Paragraph, Remark, TableBlock
from groundsill.papers.views.cover import edition_short, edition_title
from groundsill.papers.views.doubts import Doubts, doubt_blocks
from groundsill.papers.views.forces_view import force_warnings
from groundsill.papers.views.words import DASH, counted, fact_value, listed, ratio, sentence
from groundsill.study import Move, Study, UncertainFact

__all__ = ["ONE_AT_A_TIME", "basis_blocks", "facts_table", "telling_moves", "to_look_at"]


def basis_blocks(study: Study, doubts: Doubts) -> tuple[Block, ...]:
    """Editions, method, warnings, and the list that the daggers lead to."""
    return (
        Heading("Documents and editions", 2),
        editions_table(study),
        Heading("How the figures are made", 2),
        *_method(),
        Heading("Warnings", 2),
        *(
            force_warnings((*study.forces.warnings, *study.warnings))
            or (Paragraph("No warning came with the figures."),)
        ),
        Heading("Figures in doubt", 2),
        *doubt_blocks(doubts, study.manifest),
    )


def editions_table(study: Study) -> TableBlock:
    """Every document by its edition, with the reason wherever it is not the one the building code adopts."""
    rows = tuple(
        (
            edition,
            edition_title(edition),
            sentence(study.manifest.edition_reasons.get(family, ""))
            or f"Adopted by {edition_short(study.manifest.code)}.",
        )
        for family, edition in study.manifest.editions.items()
    )
    columns = (Column("Edition", share=0.5), Column("Document", share=1.2), Column("Why this edition", share=0.9))
    return TableBlock(columns, rows, f"Documents used, on the basis of {edition_short(study.manifest.code)}")


def _method() -> tuple[Block, ...]:
    return (
        BulletList(
            (
                "The earthquake force is found by the equivalent lateral force procedure and shared among the braced "
                "lines that are relied on by a flexible floor: each line takes the floor, wall and roof that lie "
                "nearer to it. Where heights of walls differ much the floor is also taken as rigid, and every line "
                "takes the worse of the two.",
                "Line forces are given at strength level. Redundancy, the factor to allowable level and overstrength "
                "come in where a link is checked, as steps of their own; the column “Load” says which a check uses.",
                "Every check is made as surveyed, with the likeliest value of every fact, and again at both ends of "
                "each uncertain one, one fact at a time. The verdict is “passes” only where the least favourable of "
                "them passes.",
                "“Indicated” is worked out by a named extension beyond what a standard covers. It is not a pass; a "
                "test in place or the recorded decision of an engineer can make it one.",
                "The governing check (highest ratio of demand to capacity, each in its own standard's format) and "
                "the order of failing (by expected strength) answer two questions and are kept apart.",
            )
        ),
        Remark(
            "note",
            "Nothing in this package is typed in by hand. A formula is printed from the very lines that worked it "
            "out, with the numbers put in; figures are rounded only where they are written.",
        ),
    )


def facts_table(study: Study) -> tuple[Block, ...]:
    """The facts that may lie elsewhere: what was used, its range, and why; first those most worth measuring."""
    if not study.facts:
        return (Paragraph("Every fact that a check used was plainly measured."), *_look_at(study))
    rows = tuple(_fact_row(fact, study) for fact in study.facts)
    columns = (
        Column("Fact", share=1.3),
        Column("Low", align="end"),
        Column("Best", align="end"),
        Column("High", align="end"),
        Column("Why", share=1.4),
    )
    return (*_measure_next(study), *_look_at(study), TableBlock(columns, rows, "Facts used from a range"))


def _look_at(study: Study) -> tuple[Block, ...]:
    """The facts that no range stands in for, with what waits for each; those that most things wait for first."""
    lacks = to_look_at(study)
    if not lacks:
        return ()
    rows = tuple((sentence(lack.what), sentence(lack.needed_for)) for lack in lacks)
    columns = (Column("Not known", share=1.2), Column("What waits for it", share=1.0))
    return (TableBlock(columns, rows, "To be looked at: nothing stands in for these"),)


def _measure_next(study: Study) -> tuple[Block, ...]:
    """Which fact to measure next, by what it alone would change."""
    moves = telling_moves(study)
    if not moves:
        return (
            Paragraph("No fact, moved alone from end to end of its range, changes a verdict or a governing ratio."),
        )
    rows = tuple(
        (str(n), move.label, listed(move.flips) or DASH, ratio(move.change), move.where)
        for n, move in enumerate(moves[:_MOST_SHOWN], start=1)
    )
    columns = (
        Column("Order"),
        Column("Fact", share=1.2),
        Column("Turns the verdict of", share=1.0),
        Column("Moves the ratio by", align="end"),
        Column("Most of all at", share=0.8),
    )
    left = len(moves) - len(rows)
    more = f" {counted(left, 'fact')} that move less are not shown." if left > 0 else ""
    return (TableBlock(columns, rows, "Measure this next", (f"{ONE_AT_A_TIME}{more}",)),)


def to_look_at(study: Study) -> tuple[Missing, ...]:
    """What nothing stands in for, said once for all things alike; what most things wait for first."""
    return tuple(lack for lack, _ in sorted(together(study.missing), key=lambda pair: -len(pair[1])))


def telling_moves(study: Study) -> tuple[Move, ...]:
    """The facts that change anything when they alone move, the most telling first."""
    return tuple(move for move in study.measure_next if move.flips or move.change)


ONE_AT_A_TIME = "One fact at a time, from end to end of its range, all others as surveyed."


_MOST_SHOWN = 12


def _fact_row(fact: UncertainFact, study: Study) -> tuple[str, ...]:
    low, best, high = (fact_value(value, fact.unit, study.units) for value in (fact.low, fact.best, fact.high))
    return (fact.label, low, best, high, sentence(fact.why))
