"""Findings on paper and screen: first a plain page (what matters, what to watch, what can be left), then each in full.

Findings that differ in nothing but their place are told once; remedies and sources stand once, in lists at the end.

:func:`findings_blocks` is the whole of it for the terminal; :func:`findings_report` sets it as a paper, with the plan
that shows every mark.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Final

from groundsill.findings import Cure, Finding, Findings, Reason, Weight
from groundsill.papers.document import (
    Block,
    BulletList,
    Column,
    Document,
    Heading,
    Inline,
    KeyValue,
    KeyValues,
    NumberedList,
    PageBreak,
    Paragraph,
    Reference,
    Remark,
    Row,
    TableBlock,
    small,
    strong,
)
from groundsill.papers.views.cautions import SHORT_CAUTION, work_cautions
from groundsill.papers.views.cover import stamp_lines
from groundsill.papers.views.levels_view import levels_figure
from groundsill.papers.views.plan_view import found_plan
from groundsill.papers.views.readings_view import readings_figure
from groundsill.papers.views.words import sentence
from groundsill.study import Study
from groundsill.work.document import House
from groundsill.working.version import VERSION

__all__ = ["findings_blocks", "findings_report"]

_GROUPS: Final[tuple[tuple[Weight, str, str], ...]] = (
    ("matters", "What matters", "These come first: each takes something from the house's weight, its hold in an "
     "earthquake or its life."),
    ("watch", "What to watch", "Not a reason to act today. Read and look again, and know the cause."),
    ("cannot tell", "What nobody can tell yet", "A look, a measurement or a reading settles each of these, and is "
     "cheaper than any remedy."),
    ("does not matter", "What does not matter", "Seen, weighed, and no reason to do anything."),
)  # fmt: skip
_THREE: Final = (
    ("gravity", "the weight of the house"), ("earthquake", "an earthquake"), ("durability", "its life"),
)  # fmt: skip
_FEW: Final = 3  # places told in full; of more only the line is named
_DOCUMENTED: Final = ("seen", "from memory")
_NOTHING = "The survey names nothing that could be weighed."


def findings_blocks(house: House, found: Findings) -> tuple[Block, ...]:
    """The plain page and every finding in full: what ``groundsill findings`` prints."""
    return (*_plain_page(found), *_in_full(house, found))


def findings_report(house: House, study: Study, found: Findings) -> Document:
    """The findings report of a house; the study gives the plan its lines."""
    blocks = (
        *_plain_page(found),
        Remark("caution", SHORT_CAUTION),
        PageBreak(),
        Heading("Where it is", 1, "where"),
        found_plan(house, study, {}),
        *_in_full(house, found),
        Heading("Before any of this is done", 1, "cautions"),
        *work_cautions(),
    )
    return Document(
        f"Findings: {study.name}", blocks, subtitle="What matters about the foundation, and what does not",
        header=study.name, header_end=f"groundsill {VERSION}", stamp=stamp_lines(study), numbered=False,
        footer="An aid, not a licensed professional's work until one has signed it.",
    )  # fmt: skip


def _plain_page(found: Findings) -> Iterator[Block]:
    """What matters and what does not, in one plain page."""
    yield Heading("In short", 1, "in-short")
    if not found.findings:
        yield Paragraph(_NOTHING)
    for weight, title, says in _GROUPS:
        group = found.of(weight)
        if group:
            yield Heading(f"{title} ({len(group)})", 2)
            yield Paragraph(says)
            yield BulletList(tuple(_in_short(alike) for alike in _coming_to_the_same(group)))
    yield Paragraph(f"Looked at here: {'; '.join(found.looked_at)}.")
    yield Remark("note", f"Not looked at by this report: {'; '.join(found.not_looked_at)}.")


def _in_short(alike: Sequence[Finding]) -> Inline:
    """Findings that come to the same, in one line: their marks, what they are, why, and what to do first."""
    first = alike[0].cures[0].name if alike[0].cures else ""
    told = f" ({_where(alike)}). {sentence(_heaviest_says(alike[0]))}"
    return (strong(f"{_marks(alike)} {alike[0].title}".strip()), told, f" First: {sentence(first)}" if first else "")


def _coming_to_the_same(findings: Sequence[Finding]) -> Iterator[tuple[Finding, ...]]:
    """Findings of one title that weigh the same for the same, with the same first remedy: one line for all."""
    groups: dict[tuple[str, ...], list[Finding]] = {}
    for finding in findings:
        topic = finding.address.rsplit("/", 1)[0]
        first = finding.cures[0].name if finding.cures else ""
        groups.setdefault((topic, finding.title, _heaviest_says(finding), first), []).append(finding)
    yield from map(tuple, groups.values())


def _alike(findings: Sequence[Finding]) -> Iterator[tuple[Finding, ...]]:
    """Findings that differ in nothing but their place, which are told in full once."""
    groups: dict[Finding, list[Finding]] = {}
    for finding in findings:
        bare = replace(finding, address="", mark="", place="", line="", station_in=None, marks=())
        groups.setdefault(bare, []).append(finding)
    yield from map(tuple, groups.values())


def _marks(alike: Sequence[Finding]) -> str:
    return ", ".join(finding.mark for finding in alike if finding.mark)


def _where(alike: Sequence[Finding]) -> str:
    """The places of several findings: each in full where they are few, else the first words of each once."""
    places = [finding.place for finding in alike]
    if len(places) > _FEW:
        places = [place.split(",", 1)[0] for place in places]
    return "; ".join(dict.fromkeys(places))


def _heaviest_says(finding: Finding) -> str:
    """What the weighing says that comes out heaviest, for what it is heaviest for."""
    for name, what in _THREE:
        judged = getattr(finding, name)
        if judged.weight == finding.weight:
            return f"for {what}: {judged.says}"
    raise AssertionError("the weight of a finding is that of one of its three")


def _in_full(house: House, found: Findings) -> Iterator[Block]:
    sources, remedies = _sources(found), _remedies(found)
    if found.findings:
        yield Heading("Each finding", 1, "each")
    for alike in _alike(found.findings):
        finding = alike[0]
        yield Heading(f"{_marks(alike)} {finding.title}, {_where(alike)}".strip(), 2)
        yield KeyValues(
            (
                KeyValue("Seen", "; ".join(finding.observed) or "named in the survey, nothing measured"),
                *(KeyValue(f"For {what}", _judged(finding, name)) for name, what in _THREE),
                KeyValue("Does it go on?", sentence(finding.active.text)),
                KeyValue("If nothing is done", finding.left_alone),
            )
        )
        for figure in (readings_figure(finding, house.units), levels_figure(finding, house)):
            if figure is not None:
                yield figure
        yield _questions(alike, sources)
        if finding.worked:
            yield Paragraph((strong("How it was worked out, at the worst that the measures allow"),))
            yield BulletList(tuple((small(line),) for line in finding.worked))
        if finding.confirm:
            yield Paragraph((strong("What would settle it"),))
            yield BulletList(tuple(sentence(settle) for settle in finding.confirm))
        if finding.cures:
            yield Paragraph((strong("Remedies that fit, the least that works first"),))
            yield NumberedList(tuple(_named(cure, remedies) for cure in finding.cures))
    if remedies:
        yield Heading("The remedies", 1, "remedies")
        yield Paragraph("Each as it is done, with what to mind, and the findings it fits.")
        yield NumberedList(tuple(_remedy(cure, fits, sources) for cure, (_, fits) in remedies.items()))
    if sources:
        yield Heading("Where the rules come from", 1, "sources")
        yield NumberedList(tuple(sources))


def _remedies(found: Findings) -> dict[Cure, tuple[int, list[str]]]:
    """Every remedy that fits anywhere, numbered as they are first met, with the findings it fits."""
    told: dict[Cure, tuple[int, list[str]]] = {}
    for finding in found.findings:
        for cure in finding.cures:
            told.setdefault(cure, (len(told) + 1, []))[1].append(finding.mark or finding.title.lower())
    return told


def _sources(found: Findings) -> dict[str, int]:
    """Every document that a rule or a remedy comes from, numbered as they are first met."""
    told: list[Reason | Cure] = []
    for finding in found.findings:
        for name, _ in _THREE:
            told += getattr(finding, name).reasons
        told += (*finding.cause, *finding.fits, *finding.cures)
    named = dict.fromkeys(_source(each) for each in told if each.known in _DOCUMENTED)
    return {source: n for n, source in enumerate(named, start=1)}


def _judged(finding: Finding, name: str) -> Inline:
    judged = getattr(finding, name)
    return (strong(judged.weight), f": {judged.says}")


def _questions(alike: Sequence[Finding], sources: Mapping[str, int]) -> TableBlock:
    """Every question that was asked, once, with its answer and where the rule comes from."""
    finding, reasons = alike[0], dict[str, tuple[Reason, list[str]]]()
    for name, what in _THREE:
        for reason in getattr(finding, name).reasons:
            reasons.setdefault(reason.key, (reason, []))[1].append(what)
    rows: list[Row] = [(sentence(r.text), "; ".join(of), small(_cited(r, sources))) for r, of in reasons.values()]
    rows += [(sentence(r.text), "what brought it about", small(_cited(r, sources))) for r in finding.cause]
    rows += [(sentence(r.text), "whether a remedy fits", small(_cited(r, sources))) for r in finding.fits]
    columns = (Column("Answer", share=7), Column("Asked for", share=3), Column("Rule from", share=2))
    return TableBlock(columns, tuple(rows), f"Why, for {_marks(alike) or finding.title}")


def _source(told: Reason | Cure) -> str:
    return f"{told.known}: {told.source}"


def _cited(told: Reason | Cure, sources: Mapping[str, int]) -> str:
    """The number of the document in the list at the end, or that there is none."""
    return f"[{sources[_source(told)]}] {told.known}" if told.known in _DOCUMENTED else told.known


def _named(cure: Cure, remedies: Mapping[Cure, tuple[int, list[str]]]) -> Inline:
    """A remedy by its name, with where it is described."""
    return (strong(cure.name), " (", Reference(f"remedy {remedies[cure][0]}", "remedies"), ")")


def _remedy(cure: Cure, fits: Sequence[str], sources: Mapping[str, int]) -> Inline:
    minds = f" Mind: {' '.join(cure.cautions)}" if cure.cautions else ""
    where = f"Fits {', '.join(dict.fromkeys(fits))}. {sentence(_cited(cure, sources))}"
    return (strong(f"{cure.name}. "), cure.what, minds, " ", small(where))
