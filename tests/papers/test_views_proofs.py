"""Tests in place and engineers' decisions on paper: every one is printed, with what became of it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from groundsill.house.foundation import FoundationTest
from groundsill.loadpath.proof import RULE
from groundsill.papers.document import Paragraph, plain_text
from groundsill.papers.views.proofs_view import (
    lines_of_decisions,
    lines_of_tests,
    outcome,
    proof_blocks,
    table_of_decisions,
    table_of_tests,
)
from groundsill.study import Run, Study
from groundsill.work.document import Acceptance, House
from tests.papers.views_sample import chain, link, rows_of, small_study, stage

PULL = FoundationTest(
    order=1, mark="T1", segment="fs1a", station_in=120.0, kind="anchor shear", result=2600.0, unit="lb",
    displacement_in=0.04, count=3, anchor="new", anchor_kind="adhesive", anchor_diameter_in=0.5,
    anchor_embedment_in=4.0, anchor_edge_in=2.75, by="Port Ellery Testing", when="2026-05-02",
)  # fmt: skip
REBOUND = FoundationTest(
    order=2, mark="T2", segment="fs1a", station_in=24.0, kind="rebound", result=29.0, unit="rebound number"
)
SIGNED = Acceptance(
    mark="D1", link="line/l1/concrete/concrete/both", by="M. Osei", licence="PE 12345", when="2026-05-20",
    reason="cores of both stretches", most_ratio=0.8,
)  # fmt: skip


@pytest.fixture
def house() -> House:
    return small_study()[0]


def with_tests(house: House, *tests: FoundationTest) -> House:
    segment = next(iter(house.survey.foundation.segments))
    kept = {f"t{n}": replace(test, segment=segment) for n, test in enumerate(tests)}
    return replace(house, survey=replace(house.survey, foundation=replace(house.survey.foundation, tests=kept)))


def study_with(reason: str, status: str = "passes", ratio: float | None = 0.6) -> Study:
    study = small_study()[1]
    found = link("concrete", status, "bolts in the foundation", reason=reason, ratio=ratio)  # type: ignore[arg-type]
    found = replace(found, address=SIGNED.link)
    return replace(study, runs=(replace(study.runs[0], chains=(chain(stage("concrete", found)),), bodies=()),))


def test_a_house_without_either_says_so(house: House) -> None:
    bare = replace(with_tests(house), acceptances={})
    (told,) = proof_blocks(bare, small_study()[1])
    assert isinstance(told, Paragraph)
    assert plain_text(told.text).startswith("No test in place and no engineer's decision is recorded.")


def test_every_test_stands_with_its_place_its_result_and_who_made_it(house: House) -> None:
    (table,) = table_of_tests(with_tests(house, PULL, REBOUND), study_with(""))
    first, second = rows_of(table)
    segment = next(iter(house.survey.foundation.segments.values()))
    line = house.survey.underfloor.lines[segment.line]
    assert first[0] == "T1"
    assert first[1] == ("anchor shear: new adhesive 1/2 in anchor, 4 in deep, 2 3/4 in from the face")
    assert first[2] == f"{line.mark}, foundation {segment.mark}, at 10'-0\""
    assert first[3:] == ("2,600 lb", "0.04 in", "3", "Port Ellery Testing, 2026-05-02")
    assert (second[1], second[3], second[4], second[6]) == ("rebound", "rebound 29", "–", "not told")


def test_the_rule_for_tests_and_what_passes_by_them_stand_under_the_table(house: House) -> None:
    tested = with_tests(house, PULL)
    (table,) = table_of_tests(tested, study_with("passes by test: T1 held at least 2,600 lb"))
    assert table.footnotes[0] == f"{RULE[0].upper()}{RULE[1:]}."
    assert table.footnotes[1] == "Pass by tests, as found: bolts in the foundation (L1)."
    (table,) = table_of_tests(tested, study_with("not proved by test: T1 held 100 lb", "indicated"))
    assert table.footnotes[1] == "No link passes by these tests."


@pytest.mark.parametrize(
    ("reason", "status", "ratio", "told"),
    [
        ("accepted by M. Osei, PE 12345", "passes", 0.6, "the link passes by it, ratio 0.60 of 0.80 covered"),
        ("", "fails", 1.4, "not used: the link is not indicated, it fails"),
        ("", "passes", 0.4, "not used: the link is not indicated, it passes"),
        ("", "indicated", 0.9, "not used: ratio 0.90, more than the 0.80 it covers"),
        (
            "", "indicated", 0.7,
            "not used: it does not name engineer, licence, date and reason, or the work on the line is not that it "
            "names",
        ),
    ],
)  # fmt: skip
def test_what_became_of_a_decision_is_told(reason: str, status: str, ratio: float, told: str, house: House) -> None:
    study = study_with(reason, status, ratio)
    run: Run = study.runs[0]
    assert outcome(SIGNED, run, run.chains[0].links[0]) == told
    (table,) = table_of_decisions(replace(house, acceptances={"a": SIGNED}), study)
    (row,) = rows_of(table)
    assert row[:4] == ("D1", "bolts in the foundation", "as found", "M. Osei, PE 12345, 2026-05-20")
    assert row[5] == f"{told[0].upper()}{told[1:]}."


def test_a_decision_for_a_state_or_a_link_that_is_not_there_is_told(house: House) -> None:
    study = study_with("")
    assert outcome(replace(SIGNED, alternative="other"), None, None) == (
        "not used: the state it was given for is not printed here"
    )
    lost = replace(SIGNED, link="line/l9/concrete/x/both")
    (table,) = table_of_decisions(replace(house, acceptances={"a": lost}), study)
    assert rows_of(table)[0][1] == lost.link
    assert rows_of(table)[0][5] == "Not used: no check in this state has that address."


def test_the_terminal_has_each_in_one_line(house: House) -> None:
    tested = with_tests(house, PULL, REBOUND)
    assert len(lines_of_tests(tested, "us")) == 2
    (line,) = lines_of_tests(tested, "us", anchors=True)
    assert line.startswith("T1: anchor shear: new adhesive 1/2 in anchor")
    assert line.endswith("2,600 lb, moved 0.04 in, 3 alike (Port Ellery Testing, 2026-05-02)")
    (told,) = lines_of_decisions(replace(house, acceptances={"a": SIGNED}), study_with("", "indicated", 0.9))
    assert told == (
        "D1: bolts in the foundation, M. Osei, PE 12345, 2026-05-20: not used: ratio 0.90, more than the 0.80 it covers"
    )
