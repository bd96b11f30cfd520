"""Chapters of chains with their working: every line of one state of the house, then its foundation bodies.

Each stage is worked out in full for one link of each kind, the link that governs it first; those of the same clause
and formulas stand in the table with their figures, and their addresses lead to their own working at the command line.
A chain that a design leaves as it was is not printed twice.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from groundsill.loadpath.chain import Chain, Link
from groundsill.papers.document import Block, BulletList, Heading, Paragraph, Reference, Run, small, strong
from groundsill.papers.views.bolt_shares_view import share_blocks
from groundsill.papers.views.chain_view import chain_header, first_to_fail_table, links_table
from groundsill.papers.views.doubts import Doubts
from groundsill.papers.views.link_kinds import kinds_of, not_worked_out
from groundsill.papers.views.words import Units, quantity, ratio, sentence, verdict
from groundsill.papers.views.working_view import Printed, steps_of, working_blocks
from groundsill.study import Run as StudyRun
from groundsill.working.sheet import Sheet

__all__ = ["WORKING_COMMAND", "Setting", "chain_anchor", "chains_blocks"]

WORKING_COMMAND = "groundsill loadpath HOUSE.json --working ADDRESS"


@dataclass(frozen=True, slots=True)
class Setting:
    """What every chapter of one package shares: the doubts, the units, and the working printed so far."""

    doubts: Doubts
    units: Units
    printed: Printed = field(default_factory=Printed)


def chain_anchor(run: str, chain: Chain) -> str:
    """What a reference to a chain's chapter names."""
    return f"{run}/{chain.kind}/{chain.id}"


def chains_blocks(run: StudyRun, sheet: Sheet | None, same: Mapping[str, str], setting: Setting) -> Iterator[Block]:
    """The chapters of one state: every line, then every foundation body.

    ``same`` names, by anchor, the chains that stand as an earlier state has them, and where that is.
    """
    yield Paragraph(
        (
            "Each stage is worked out in full for the link that governs it, and for one link of every other kind in "
            "it: the most used of those that go by the same clause and formulas. The others have their figures in "
            "the table; their steps are printed, by their addresses, with ",
            Run(WORKING_COMMAND, "code"),
            ". A formula that was set out before is named, and its new figures follow in the order of its steps.",
        )
    )
    unchanged: list[Reference] = []
    for chain in (*run.chains, *run.bodies):
        anchor = chain_anchor(run.key, chain)
        name = f"{chain.mark} {chain.name}".strip()
        if anchor in same:
            unchanged.append(Reference(name, same[anchor]))
        else:
            yield Heading(name if chain.kind == "line" else f"Body {name}", 2, anchor)
            yield from _chapter(anchor, chain, sheet, setting)
    if unchanged:
        yield Heading("Not changed by this work", 2)
        yield Paragraph("These stand as they were found, with the same figures and verdicts:")
        yield BulletList(tuple(unchanged))


def _chapter(anchor: str, chain: Chain, sheet: Sheet | None, setting: Setting) -> Iterator[Block]:
    """One chain: header, links, order of failing, then the working stage by stage."""
    if not chain.relied_on:
        yield Paragraph(sentence(chain.headline or chain.relied_reason))
        return
    yield chain_header(chain, setting.units, setting.doubts)
    yield links_table(chain, setting.units, setting.doubts)
    order = first_to_fail_table(chain, setting.units)
    if order is not None:
        yield order
    yield from _stages(anchor, chain, sheet, setting)


def _stages(anchor: str, chain: Chain, sheet: Sheet | None, setting: Setting) -> Iterator[Block]:
    """The force on the line once, then stage by stage; a section that several links share is printed at the first."""
    shown: dict[str, tuple[str, str]] = {}
    demand = dict.fromkeys(section for link in chain.links for section in link.working if section.endswith("/demand"))
    steps = steps_of(sheet, tuple(demand))
    if steps:
        place, name = f"{anchor}/demand", f"{chain.mark}, force on the line"
        shown = dict.fromkeys(demand, (place, name))
        yield Heading("Force on the line, at every level of load", 3, place)
        yield from working_blocks(steps, place, name, setting.printed, setting.doubts)
    for stage in chain.stages:
        kinds = kinds_of(stage, lambda link: _formulas(link, sheet))
        for number, kind in enumerate(kinds):
            place = f"{anchor}/{stage.key}/{number}" if number else f"{anchor}/{stage.key}"
            link, alike = kind.shown, kind.shown.title.lower() == stage.title.lower()
            name = f"{chain.mark}, {link.title if number else stage.title}"
            yield Heading(stage.title if alike else f"{stage.title}: {link.title}", 3, place)
            wanted = list(dict.fromkeys((*link.working, link.address)))
            yield from _goes_on({shown[s] for s in wanted if s in shown and s not in demand})
            steps = steps_of(sheet, [section for section in wanted if section not in shown])
            shown |= {section: (place, name) for section in wanted if section not in shown}
            yield from working_blocks(steps, place, name, setting.printed, setting.doubts)
            yield _closing(link, setting)
            if stage.shares is not None and not number:
                yield from share_blocks(chain.mark, stage.shares, setting.units)
            yield from _addresses("By the same rules, with the figures in the table: ", link, kind.alike)
        rest = [link for link in not_worked_out(stage) if link is not kinds[0].shown]
        yield from _addresses("Not worked out, for what the table says: ", None, rest)


def _formulas(link: Link, sheet: Sheet | None) -> frozenset[str]:
    """The published formulas and rules in the working of a link, the force on the whole line left out."""
    sections = [section for section in (*link.working, link.address) if not section.endswith("/demand")]
    return frozenset(step.id for step in steps_of(sheet, sections) if step.kind in ("equation", "procedure"))


def _goes_on(before: set[tuple[str, str]]) -> Iterator[Block]:
    """Where steps stand that this link shares with one above it on the same line."""
    for place, name in sorted(before):
        yield Paragraph((small("Goes on from the steps under "), Reference(name, place), small(".")))


def _closing(link: Link, setting: Setting) -> Block:
    """What the check comes to, after its steps."""
    reason = f" {sentence(link.reason)}" if link.reason else ""
    if link.demand is None or link.capacity is None:
        return Paragraph((strong("Check: "), verdict(link.verdict), f".{reason}"))
    demand, capacity = (quantity(number, link.unit, setting.units) for number in (link.demand, link.capacity))
    came = f": ratio {ratio(link.ratio)}, " if link.ratio is not None else ": "
    figures = f"demand {demand} against capacity {capacity}, {link.level} level{came}"
    dagger = setting.doubts.dagger(link.marks)
    doubt = small(f" {dagger}") if dagger else ""
    return Paragraph((strong("Check: "), figures, verdict(link.verdict), doubt, f".{reason}"))


def _addresses(words: str, shown: Link | None, others: Sequence[Link]) -> Iterator[Block]:
    """The addresses at which the working of other links is to be had, what they share said once."""
    if not others:
        return
    shared = "/".join((shown or others[0]).address.split("/")[:3]) + "/"
    ends = ", ".join(link.address.removeprefix(shared) for link in others)
    yield Paragraph((small(words), Run(f"{shared} {ends}", "code")))
