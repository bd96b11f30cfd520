"""What was tested in place and what an engineer decided, and what became of either in the checks.

A test or a decision lifts a value that is only indicated; it never lifts one that fails. Whether it did is read off the
links themselves: their reasons say by what they pass.
"""

from __future__ import annotations

from collections.abc import Iterator

from groundsill.house.foundation import FoundationTest
from groundsill.house.survey import in_order
from groundsill.loadpath.chain import Chain, Link
from groundsill.loadpath.proof import RULE
from groundsill.papers.document import Block, Column, Paragraph, Row, TableBlock
from groundsill.papers.views.words import DASH, Units, listed, quantity, ratio, sentence, short, size, tape
from groundsill.study import Run, Study
from groundsill.work.document import Acceptance, House

__all__ = [
    "lines_of_decisions",
    "lines_of_tests",
    "outcome",
    "proof_blocks",
    "proved_links",
    "table_of_decisions",
    "table_of_tests",
    "words_of_test",
]


def proof_blocks(house: House, study: Study) -> tuple[Block, ...]:
    """Tests, decisions, and the links that pass by them; a sentence where there are none."""
    tests, decisions = table_of_tests(house, study), table_of_decisions(house, study)
    if not tests and not decisions:
        told = (
            "No test in place and no engineer's decision is recorded. What is only indicated stays so until one is: "
            "tests and decisions are entered in the house file."
        )
        return (Paragraph(told),)
    return (*tests, *decisions)


# --- tests ------------------------------------------------------------------------------------------------------------


def table_of_tests(house: House, study: Study) -> tuple[TableBlock, ...]:
    """Every test recorded on the foundation, and below it the links that pass by tests; nothing when there are none."""
    tests = in_order(house.survey.foundation.tests)
    if not tests:
        return ()
    rows: list[Row] = [_test_row(house, id, test, study.units) for id, test in tests]
    columns = (
        Column("Test"),
        Column("Kind", share=1.0),
        Column("Where", share=1.1),
        Column("Result", align="end"),
        Column("Moved", align="end"),
        Column("Alike", align="end"),
        Column("Who and when", share=0.9),
    )
    notes = [sentence(RULE)] if any(test.unit == "lb" for _, test in tests) else []
    proved = list(_by_tests(study))
    notes += proved or ["No link passes by these tests."]
    return (TableBlock(columns, tuple(rows), "Tests in place", tuple(notes)),)


def lines_of_tests(house: House, units: Units, anchors: bool = False) -> tuple[str, ...]:
    """Every test, or every test of an anchor, in one line of words, for a terminal."""
    found = []
    for id, test in in_order(house.survey.foundation.tests):
        if anchors and not test.kind.startswith("anchor"):
            continue
        mark, kind, where, result, moved, alike, who = _test_row(house, id, test, units)
        also = [f"moved {moved}" if moved != DASH else "", f"{alike} alike" if test.count > 1 else ""]
        found.append(f"{mark}: {', '.join(filter(None, (kind, where, result, *also)))} ({who})")
    return tuple(found)


def _test_row(house: House, id: str, test: FoundationTest, units: Units) -> tuple[str, ...]:
    who = ", ".join(filter(None, (test.by, test.when))) or "not told"
    moved = DASH if test.displacement_in is None else f"{short(test.displacement_in)} in"
    if units == "si" and test.displacement_in is not None:
        moved = size(test.displacement_in, units)
    return (
        test.mark or id,
        words_of_test(test, units),
        _where(house, test, units),
        _result(test, units),
        moved,
        str(test.count),
        who,
    )


def words_of_test(test: FoundationTest, units: Units) -> str:
    """What was tested: the kind of test and, of an anchor or a core, which."""
    anchor = filter(
        None,
        (
            test.anchor,
            test.anchor_kind,
            f"{size(test.anchor_diameter_in, units)} anchor" if test.anchor_diameter_in is not None else "",
        ),
    )
    told = [" ".join(anchor)]
    if test.anchor_embedment_in is not None:
        told.append(f"{size(test.anchor_embedment_in, units)} deep")
    if test.anchor_edge_in is not None:
        told.append(f"{size(test.anchor_edge_in, units)} from the face")
    if test.core_diameter_in is not None:
        told.append(f"{size(test.core_diameter_in, units)} across")
    if test.core_length_in is not None:
        told.append(f"{size(test.core_length_in, units)} long")
    told += [test.core_moisture, "corrected for length" if test.core_corrected else ""]
    if test.bed_joints_in2 is not None:
        told.append(f"bed joints {short(test.bed_joints_in2)} sq in.")
    if test.axial_psi is not None:
        told.append(f"{quantity(test.axial_psi, 'psi', units)} on the joints")
    return ": ".join(filter(None, (test.kind, ", ".join(filter(None, told)))))


def _where(house: House, test: FoundationTest, units: Units) -> str:
    segment = house.survey.foundation.segments.get(test.segment)
    if segment is None:
        return test.segment
    line = house.survey.underfloor.lines.get(segment.line)
    name = f"{line.mark or segment.line}, " if line is not None else ""
    return f"{name}foundation {segment.mark or test.segment}, at {tape(test.station_in, units)}"


def _result(test: FoundationTest, units: Units) -> str:
    if test.unit in ("lb", "psi", "lb-ft"):
        return quantity(test.result, test.unit, units)
    if test.unit == "rebound number":
        return f"rebound {short(test.result)}"
    return size(test.result, units) if test.unit == "in" else f"{short(test.result, 4)} {test.unit}".strip()


def _by_tests(study: Study) -> Iterator[str]:
    for run in study.runs:
        titles = [f"{link.title} ({chain.mark})" for chain, link in proved_links(run, "passes by test")]
        if titles:
            yield f"Pass by tests, {run.name or run.key}: {listed(dict.fromkeys(titles))}."


def proved_links(run: Run, by: str) -> tuple[tuple[Chain, Link], ...]:
    """The links of a state whose reason says that they pass by a test (or were accepted), with their chains."""
    return tuple(
        (chain, link)
        for chain in (*run.chains, *run.bodies)
        for link in chain.links
        if by in link.reason and f"not {by}" not in link.reason
    )


# --- decisions --------------------------------------------------------------------------------------------------------


def table_of_decisions(house: House, study: Study) -> tuple[TableBlock, ...]:
    """Every recorded decision of an engineer and what became of it; nothing when there are none."""
    found = in_order(house.acceptances)
    if not found:
        return ()
    rows: list[Row] = []
    for id, decision in found:
        run, link = _link_of(study, decision)
        rows.append(
            (
                decision.mark or id,
                link.title if link is not None else decision.link,
                (run.name or run.key) if run is not None else decision.alternative or DASH,
                ", ".join(filter(None, (decision.by, decision.licence, decision.when))),
                sentence(decision.reason),
                sentence(outcome(decision, run, link)),
            )
        )
    columns = (
        Column("No."),
        Column("Link", share=0.9),
        Column("State", share=0.6),
        Column("Engineer, licence, date", share=0.9),
        Column("Reason", share=1.1),
        Column("What became of it", share=1.0),
    )
    note = "A decision lifts a link that is only indicated, up to the ratio it covers, and never one that fails."
    return (TableBlock(columns, tuple(rows), "Decisions of engineers", (note,)),)


def lines_of_decisions(house: House, study: Study) -> tuple[str, ...]:
    """Every decision in one line of words, for a terminal."""
    found = []
    for id, decision in in_order(house.acceptances):
        run, link = _link_of(study, decision)
        who = ", ".join(filter(None, (decision.by, decision.licence, decision.when)))
        title = link.title if link is not None else decision.link
        found.append(f"{decision.mark or id}: {title}, {who}: {outcome(decision, run, link)}")
    return tuple(found)


def _link_of(study: Study, decision: Acceptance) -> tuple[Run | None, Link | None]:
    """The state a decision was given for and the link it names there, where they are in the study."""
    key = study.runs[0].key if decision.alternative is None else decision.alternative
    run = next((run for run in study.runs if run.key == key), None)
    chains = (*run.chains, *run.bodies) if run is not None else ()
    return run, next((link for chain in chains for link in chain.links if link.address == decision.link), None)


def outcome(decision: Acceptance, run: Run | None, link: Link | None) -> str:
    """What became of a decision, in words."""
    if run is None:
        return "not used: the state it was given for is not printed here"
    if link is None:
        return "not used: no check in this state has that address"
    if link.reason.startswith("accepted by"):
        return f"the link passes by it, ratio {ratio(link.ratio)} of {ratio(decision.most_ratio)} covered"
    if link.status != "indicated":
        return f"not used: the link is not indicated, it {_stands(link)}"
    if link.ratio is not None and link.ratio > decision.most_ratio:
        return f"not used: ratio {ratio(link.ratio)}, more than the {ratio(decision.most_ratio)} it covers"
    return "not used: it does not name engineer, licence, date and reason, or the work on the line is not that it names"


def _stands(link: Link) -> str:
    return link.status if link.status in ("passes", "fails", "cannot be checked") else "does not apply"
