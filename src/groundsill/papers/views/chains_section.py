"""Chapters of chains with their working: every line of one state of the house, then its foundation bodies.

Each stage is worked out in full for the link that governs it; the others stand in the table with their figures, and
their addresses lead to their own working at the command line. A chain that a design leaves as it was is not printed
twice.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from groundsill.loadpath.chain import Chain, Link, Stage
from groundsill.papers.document import Block, BulletList, Heading, Paragraph, Reference, Run, small, strong
from groundsill.papers.views.chain_view import chain_header, first_to_fail_table, links_table
from groundsill.papers.views.doubts import Doubts
from groundsill.papers.views.strip_view import stage_link, stage_verdict
from groundsill.papers.views.words import Units, quantity, ratio, sentence, verdict
from groundsill.papers.views.working_view import Item, Late, Printed, settled, steps_of, working_items
from groundsill.study import Run as StudyRun
from groundsill.working.sheet import Sheet

__all__ = ["ChainWorking", "chain_anchor", "chains_blocks", "work_out_chains"]

WORKING_COMMAND = "groundsill loadpath HOUSE.json --working ADDRESS"


@dataclass(frozen=True, slots=True)
class ChainWorking:
    """The working of one chain: a heading and its items for each stage."""

    stages: tuple[tuple[Heading, tuple[Item, ...]], ...]

    def items(self) -> Iterator[Item]:
        """Every item in order."""
        for heading, items in self.stages:
            yield heading
            yield from items


def chain_anchor(run: str, chain: Chain) -> str:
    """What a reference to a chain's chapter names."""
    return f"{run}/{chain.kind}/{chain.id}"


def work_out_chains(
    run: StudyRun, sheet: Sheet | None, printed: Printed, same: Mapping[str, str], units: Units
) -> dict[str, ChainWorking]:
    """The working of every chain of one state, by the chain's anchor, without those in ``same``."""
    found = {}
    for chain in (*run.chains, *run.bodies):
        anchor = chain_anchor(run.key, chain)
        if anchor not in same and chain.relied_on:
            found[anchor] = ChainWorking(tuple(_stages(anchor, chain, sheet, printed, units)))
    return found


def _stages(
    anchor: str, chain: Chain, sheet: Sheet | None, printed: Printed, units: Units
) -> Iterator[tuple[Heading, tuple[Item, ...]]]:
    """The force on the line once, then stage by stage; a section that several links share is printed at the first."""
    shown: dict[str, tuple[str, str]] = {}
    sections = dict.fromkeys(section for link in chain.links for section in link.working if section.endswith("/demand"))
    steps = steps_of(sheet, tuple(sections))
    if steps:
        place, name = f"{anchor}/demand", f"{chain.mark}, force on the line"
        shown = dict.fromkeys(sections, (place, name))
        yield Heading("Force on the line, at every level of load", 3, place), working_items(steps, place, name, printed)
    for stage in chain.stages:
        link = stage_link(stage)
        if link is None or stage_verdict(stage) == "does not apply":
            continue
        place, name = f"{anchor}/{stage.key}", f"{chain.mark}, {stage.title}"
        title = stage.title if link.title.lower() == stage.title.lower() else f"{stage.title}: {link.title}"
        wanted = list(dict.fromkeys((*link.working, link.address)))
        before = {shown[section] for section in wanted if section in shown and not section.endswith("/demand")}
        steps = steps_of(sheet, [section for section in wanted if section not in shown])
        shown |= {section: (place, name) for section in wanted if section not in shown}
        items = working_items(steps, place, name, printed)
        yield Heading(title, 3, place), (*_goes_on(before), *items, _closing(link, units), *_others(stage, link))


def _goes_on(before: set[tuple[str, str]]) -> Iterator[Block]:
    """Where steps stand that this link shares with one above it on the same line."""
    for place, name in sorted(before):
        yield Paragraph((small("Goes on from the steps under "), Reference(name, place), small(".")))


def _closing(link: Link, units: Units) -> Late:
    """What the check comes to, after its steps."""

    def made(doubts: Doubts) -> Block:
        reason = f" {sentence(link.reason)}" if link.reason else ""
        if link.demand is None or link.capacity is None:
            return Paragraph((strong("Check: "), verdict(link.verdict), f".{reason}"))
        demand, capacity = (quantity(number, link.unit, units) for number in (link.demand, link.capacity))
        came = f": ratio {ratio(link.ratio)}, " if link.ratio is not None else ": "
        dagger = doubts.dagger(link.marks)
        figures = f"demand {demand} against capacity {capacity}, {link.level} level{came}"
        told = (strong("Check: "), figures, verdict(link.verdict), small(f" {dagger}") if dagger else "", f".{reason}")
        return Paragraph(told)

    return made


def _others(stage: Stage, shown: Link) -> Iterator[Block]:
    """The addresses at which the working of the stage's other links is to be had, what they share said once."""
    others = [link.address for link in stage.links if link is not shown and link.verdict != "does not apply"]
    if others:
        shared = "/".join(shown.address.split("/")[:3]) + "/"
        ends = ", ".join(address.removeprefix(shared) for address in others)
        yield Paragraph((small("By the same rules, with the figures in the table: "), Run(f"{shared} {ends}", "code")))


def chains_blocks(
    run: StudyRun, worked: Mapping[str, ChainWorking], same: Mapping[str, str], doubts: Doubts, units: Units
) -> Iterator[Block]:
    """The chapters of one state: every line, then every foundation body."""
    yield Paragraph(
        (
            "Each stage is worked out in full for the link that governs it. The other links of the stage have their "
            "figures in the table; their steps are printed, by their addresses, with ",
            Run(WORKING_COMMAND, "code"),
            ". A formula that was set out before is named, and its new figures follow in the order of its steps.",
        )
    )
    unchanged: list[tuple[str, str]] = []
    for chain in (*run.chains, *run.bodies):
        anchor = chain_anchor(run.key, chain)
        name = f"{chain.mark} {chain.name}".strip()
        if anchor in same:
            unchanged.append((name, same[anchor]))
            continue
        yield Heading(name if chain.kind == "line" else f"Body {name}", 2, anchor)
        if not chain.relied_on:
            yield Paragraph(sentence(chain.headline or chain.relied_reason))
            continue
        yield chain_header(chain, units, doubts)
        yield links_table(chain, units, doubts)
        order = first_to_fail_table(chain, units)
        if order is not None:
            yield order
        if anchor in worked:
            yield from settled(worked[anchor].items(), doubts)
    if unchanged:
        yield Heading("Not changed by this work", 2)
        yield Paragraph("These stand as they were found, with the same figures and verdicts:")
        yield BulletList(tuple(Reference(name, place) for name, place in unchanged))
