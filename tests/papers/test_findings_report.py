"""The findings on paper: alike told once, each remedy described once with what to mind, each source named once."""

from __future__ import annotations

from groundsill.findings import findings_of
from groundsill.papers.document import Heading, NumberedList, plain_text
from groundsill.papers.views.findings_view import findings_blocks
from tests.findings.changed import house_with


def _lists_under(blocks, anchor):
    """The numbered lists under a heading with an anchor, as texts."""
    start = next(n for n, b in enumerate(blocks) if isinstance(b, Heading) and b.anchor == anchor)
    found = next(b for b in blocks[start:] if isinstance(b, NumberedList))
    return [plain_text(item) for item in found.items]


def test_sills_that_are_alike_are_told_once_with_all_their_marks():
    blocks = findings_blocks(house_with(), findings_of(house_with()))
    titles = [plain_text(b.text) for b in blocks if isinstance(b, Heading)]
    (sill,) = [title for title in titles if " Sill, " in title]
    assert sill.startswith("K1, K2, K3, K4, K5, K6 Sill, ")


def test_each_remedy_is_described_once_with_what_to_mind_and_the_findings_it_fits():
    found = findings_of(house_with())
    told = _lists_under(findings_blocks(house_with(), found), "remedies")
    cures = dict.fromkeys(cure for finding in found.findings for cure in finding.cures)
    assert len(told) == len(cures)
    for text, cure in zip(told, cures, strict=True):
        assert text.startswith(cure.name)
        assert all(caution in text for caution in cure.cautions)
        fits = [f.mark for f in found.findings if cure in f.cures and f.mark]
        assert all(mark in text for mark in fits)


def test_each_source_is_named_once_and_every_number_leads_to_one():
    found = findings_of(house_with())
    told = _lists_under(findings_blocks(house_with(), found), "sources")
    assert len(set(told)) == len(told)
    documented = {
        r.source
        for f in found.findings
        for r in (*f.gravity.reasons, *f.earthquake.reasons, *f.durability.reasons, *f.cause)
        if r.known in ("seen", "from memory")
    }
    assert all(any(source in text for text in told) for source in documented)
