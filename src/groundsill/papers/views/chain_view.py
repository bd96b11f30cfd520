"""One chain as tables: what the line must carry, every link with its figures and verdict, and what they rest on.

:func:`chain_blocks` serves terminal and paper alike. Reasons stand under the table they belong to, numbered, so that
the columns keep to figures; the order in which links are expected to fail is a table of its own, because an expected
strength and an allowable one are never set side by side.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from groundsill.loadpath.chain import Chain, Link, Stage
from groundsill.papers.document import (
    Block,
    Column,
    GroupRow,
    Inline,
    KeyValue,
    KeyValues,
    Row,
    Span,
    StatusWord,
    TableBlock,
    small,
    spans,
    strong,
)
from groundsill.papers.views.doubts import Doubts
from groundsill.papers.views.strip_view import stage_verdict
from groundsill.papers.views.words import DASH, Units, listed, quantity, ratio, sentence, verdict, with_doubt
from groundsill.working.value import Mark

__all__ = ["chain_blocks", "chain_header", "first_to_fail_table", "links_table"]


def chain_blocks(chain: Chain, units: Units = "us", doubts: Doubts | None = None) -> tuple[Block, ...]:
    """The whole chain: header, links, and the order in which they are expected to fail."""
    doubts = doubts or Doubts()  # without a list to lead to, a dagger stands alone
    order = first_to_fail_table(chain, units)
    return (
        chain_header(chain, units, doubts),
        links_table(chain, units, doubts, brief=True),
        *((order,) if order else ()),
    )


def chain_header(chain: Chain, units: Units, doubts: Doubts) -> KeyValues:
    """What the line (or foundation body) is, what it must carry, and what came out."""
    word = verdict(chain.verdict)
    force = with_doubt(quantity(chain.force_lb, "lb", units), doubts.dagger(_common_marks(chain)))
    later = "redundancy, 0.7 and overstrength come in where a link is checked"
    rows = [
        KeyValue("Verdict", (strong(sentence(chain.headline)), " ", word) if chain.headline else word),
        KeyValue("Earthquake force", (*spans(force), f", strength level, {_way(chain)}"), later),
    ]
    if chain.kind == "line":
        rows.append(KeyValue("Relied on", "yes" if chain.relied_on else "no", sentence(chain.relied_reason)))
    weakest = next((link for link in chain.links if link.address == chain.governing), None)
    if weakest is not None:
        used = "no capacity" if weakest.ratio is None else f"ratio {ratio(weakest.ratio)}"
        rows.append(KeyValue("Governing check", f"{weakest.title}, {used}", weakest.clause))
    return KeyValues(tuple(rows))


def _way(chain: Chain) -> str:
    return f"along {chain.direction}" if chain.direction in ("x", "y") else chain.direction or "along the line"


@dataclass(slots=True)
class _Notes:
    """Numbered reasons under a table; a reason said twice keeps its number."""

    known: dict[str, int] = field(default_factory=dict)

    def number(self, text: str) -> int:
        return self.known.setdefault(text, len(self.known) + 1)

    def lines(self) -> tuple[Inline, ...]:
        return tuple(f"{n}  {text}" for text, n in self.known.items())


_LONGEST_DAGGER = 12  # signs that a cell of the table takes before its figures get a line of their own below


@dataclass(slots=True)
class _Grounds:
    """What links rest on: a few numbers stand in the cell, a long row of them below the table under a letter."""

    known: dict[str, str] = field(default_factory=dict)

    def cell(self, dagger: str) -> str:
        if len(dagger) <= _LONGEST_DAGGER:
            return dagger
        return f"†{self.known.setdefault(dagger, _letter(len(self.known)))}"

    def lines(self) -> tuple[Inline, ...]:
        return tuple(f"†{letter}  {dagger.removeprefix('†')}" for dagger, letter in self.known.items())


def _letter(n: int) -> str:
    return (_letter(n // 26 - 1) if n >= 26 else "") + "abcdefghijklmnopqrstuvwxyz"[n % 26]


def links_table(chain: Chain, units: Units, doubts: Doubts, brief: bool = False) -> TableBlock:
    """Every link: demand, capacity, level of load, ratio at best and least favourable, verdict, clause, reasons.

    ``brief`` keeps the rows that name a stage to its title and verdict, for a screen where they have little room.
    """
    notes, grounds = _Notes(), _Grounds()
    common = _common_marks(chain)
    own = {link.address: _own_dagger(link, common, doubts) for link in chain.links}
    rows: list[Row] = []
    heavy = []
    for stage in chain.stages:
        rows.append(GroupRow(_stage_words(stage, notes, brief)))
        for link in stage.links:
            if link.address == chain.governing:
                heavy.append(len(rows))
            if link.verdict != "does not apply":
                rests = grounds.cell(own[link.address])
                rows.append(_link_row(link, _told_apart(link, stage), units, rests, notes, not _one_clause(stage)))
    columns = (
        Column("Link", share=1.6),
        Column("Demand", align="end"),
        Column("Capacity", align="end"),
        Column("Load"),
        Column("Ratio", "as surveyed", align="end"),
        Column("Ratio", "least favourable", align="end"),
        Column("Verdict", share=0.85),
        Column("Rests on", share=0.6),
    )
    what = "checks of the foundation body" if chain.kind == "body" else "links from the floor to the ground"
    caption = f"{chain.mark} {chain.name}".strip() + f": {what}"
    shared = doubts.dagger(common)
    lead = f"† alone: the figures rest on {shared}, as those of every link checked in this table do."
    told = (lead,) if shared not in ("", "†") else ()
    beside = dict.fromkeys(stage.note for stage in chain.stages if stage.note)
    return TableBlock(
        columns, tuple(rows), caption, (*told, *grounds.lines(), *notes.lines(), *beside), frozenset(heavy)
    )


def _common_marks(chain: Chain) -> frozenset[Mark]:
    """The marks that every link with a figure carries: those of the force itself."""
    found = [frozenset(link.marks) for link in chain.links if link.marks and link.demand is not None]
    return frozenset.intersection(*found) if len(found) > 1 else frozenset()


def _own_dagger(link: Link, common: frozenset[Mark], doubts: Doubts) -> str:
    """A link's dagger with the numbers that are its own; bare where it carries only what all the others do."""
    marks = frozenset(link.marks)
    if link.demand is None:
        return doubts.dagger(marks)
    return doubts.dagger(marks - common) or ("†" if marks else "")


def _stage_words(stage: Stage, notes: _Notes, brief: bool) -> Inline:
    """The stage, its rule where several links share it, verdict, clause, and what does not apply, with reasons."""
    rule = "" if len(stage.links) < 2 or brief else f" ({stage.combine})"
    words: tuple[str | Span, ...] = (f"{stage.title}{rule}: ", StatusWord(stage_verdict(stage)))
    clause = _one_clause(stage)
    if clause and brief:
        words = (*words, small(f" ({notes.number(f'By {clause}.')})"))
    elif clause:
        words = (*words, small(f"; {clause}"))
    outside = [link for link in stage.links if link.verdict == "does not apply"]
    if outside and len(outside) == len(stage.links):
        reason = listed(dict.fromkeys(link.reason for link in outside if link.reason))
        return (*words, f": {reason}" if reason else "")
    if outside:
        numbers = {notes.number(f"Does not apply: {link.title}. {sentence(link.reason)}".strip()) for link in outside}
        words = (*words, small(f" ({', '.join(str(n) for n in sorted(numbers))})"))
    return words


def _one_clause(stage: Stage) -> str:
    """The clause that all links of a stage are checked by, or nothing when they differ."""
    clauses = {link.clause for link in stage.links if link.verdict != "does not apply"}
    return clauses.pop() if len(clauses) == 1 else ""


def _told_apart(link: Link, stage: Stage) -> str:
    """The link's title, with the direction of the force where another link of the stage has the same title."""
    alike = sum(other.title == link.title for other in stage.links)
    return f"{link.title}, {_TOWARD[link.direction]}" if alike > 1 and link.direction in _TOWARD else link.title


_TOWARD = {"+": "force toward the line's end", "-": "force toward the line's start"}


def _link_row(link: Link, title: str, units: Units, dagger: str, notes: _Notes, own_clause: bool) -> tuple[Inline, ...]:
    numbers = [notes.number(text) for text in _reasons(link, own_clause)]
    pointer = f" ({', '.join(str(n) for n in numbers)})" if numbers else ""
    words: tuple[Span, ...] = spans(verdict(link.verdict))
    return (
        title,
        quantity(link.demand, link.unit, units) if link.unit else DASH,
        quantity(link.capacity, link.unit, units) if link.unit else DASH,
        link.level if link.demand is not None else DASH,
        ratio(link.ratio) if link.ratio is not None or link.status != "fails" else "no capacity",
        _least(link),
        (*words, small(pointer)) if pointer else words,
        small(dagger) if dagger else "",
    )


def _least(link: Link) -> str:
    """The least favourable ratio; the word where it is the same, or where nothing is left to divide by."""
    if link.least_favourable is None:
        return "no capacity" if link.ratio is not None and link.verdict in ("fails", "depends") else DASH
    return "same" if link.least_favourable == link.ratio else ratio(link.least_favourable)


def _reasons(link: Link, own_clause: bool) -> tuple[str, ...]:
    """What has to be said about a link beside its figures."""
    found = [f"By {link.clause}."] if own_clause and link.clause else []
    if link.reason:
        found.append(sentence(link.reason))
    if link.extension:
        found.append(f"Extension beyond the standard: {sentence(link.extension)}")
    if link.minimum and link.ratio is not None:
        found.append("A limit of making, kept or not kept: met exactly, it is no link near its strength.")
    if link.depends_on:
        found.append(f"Depends on {listed(link.depends_on)}.")
    return tuple(found)


def first_to_fail_table(chain: Chain, units: Units) -> TableBlock | None:
    """The links in the order in which they are expected to reach their strength; None when nothing is told of it.

    The order and what is too close to call are the chain's own words; a line of them that tells of no link with an
    expected strength is set as it stands, or under the table when it tells of no link at all.
    """
    notes = _Notes()
    rows: list[Row] = []
    waiting = sorted((link for link in chain.links if link.expected), key=_best)
    titles = {link.title for link in chain.links}
    for words in chain.first_to_fail:
        title, _, rest = words.partition(": ")
        link = next((link for link in waiting if title.startswith(link.title) and rest.startswith("at about")), None)
        if link is not None:
            waiting = [other for other in waiting if other.expected != link.expected]
            rows.append(_expected_row(len(rows) + 1, title, link, words, units, notes))
        elif title in titles:
            rows.append((str(len(rows) + 1), (title, small(f": {rest}")), DASH, DASH, DASH, DASH, DASH))
        else:
            notes.number(sentence(words))
    if not rows:
        return None
    columns = (
        Column("Order"),
        Column("Link", share=1.0),
        Column("Low", align="end"),
        Column("Expected", align="end"),
        Column("High", align="end"),
        Column("Manner"),
        Column("Against the next"),
    )
    lead = (
        "Force on the whole line at which the link is expected to reach its strength, with its spread. This order is "
        "told by expected strengths; the checks above are by each standard's own format. The two are never mixed."
    )
    return TableBlock(columns, tuple(rows), f"{chain.mark}: first to fail", (lead, *notes.lines()))


def _best(link: Link) -> float:
    return link.expected.best_lb if link.expected is not None else 0.0


def _expected_row(order: int, title: str, link: Link, words: str, units: Units, notes: _Notes) -> tuple[Inline, ...]:
    expected = link.expected
    assert expected is not None
    basis = f" ({notes.number(sentence(expected.basis))})" if expected.basis else ""
    return (
        str(order),
        title,
        quantity(expected.low_lb, "lb", units),
        quantity(expected.best_lb, "lb", units),
        quantity(expected.high_lb, "lb", units),
        (expected.manner, small(basis)),
        "too close to call" if "too close to call" in words else "clear",
    )
