"""``groundsill loadpath``: every chain from floor to soil, stage by stage, and the working of any place in it.

Nothing is worked out here but by the study; a stage is shown by its worst link, which is the one the study's own rules
pick (:func:`groundsill.papers.views.strip_view.stage_link`).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from difflib import get_close_matches
from pathlib import Path
from typing import TYPE_CHECKING, Final

from groundsill.cli.bolts_told import bolts_told, works_told
from groundsill.cli.exits import DONE, NOT_PASSED
from groundsill.cli.layout import Head, facts, faint, heading, lines, strong, table, verdict, words
from groundsill.cli.loadpath_notes import floor_line, notes_below
from groundsill.cli.opening import house_and_study
from groundsill.cli.speech import console, say_json, show
from groundsill.doors.answers import step_told
from groundsill.doors.house_answers import SectionTold, WorkingTold
from groundsill.loadpath.chain import Chain, Link, Stage, verdict_of
from groundsill.papers.views.strip_view import stage_link, stage_verdict
from groundsill.papers.views.words import quantity, ratio, sentence
from groundsill.study import AS_FOUND, Run, Study, working
from groundsill.working.errors import BadSurvey, Fault

if TYPE_CHECKING:
    from rich.console import RenderableType
    from rich.table import Table

    from groundsill.work.document import House
    from groundsill.working.sheet import Sheet, Step

__all__ = ["Asked", "loadpath", "run_asked"]

_MANY: Final = {
    "fails": "fail",
    "depends": "depend",
    "indicated": "indicated",
    "cannot be checked": "cannot be checked",
}


@dataclass(frozen=True, slots=True)
class Asked:
    """What was asked for: one line or all, in which state, or the working of an address; every link or the worst."""

    line: str | None = None
    alternative: str | None = None
    as_found: bool = False
    working: str | None = None
    full: bool = False


def loadpath(file: Path, asked: Asked, as_json: bool) -> int:
    """Print the load path; the exit code tells whether the verdict asked for is *passes*.

    Raises:
        BadSurvey: one fault for each thing wrong with the file or with what was asked for.
    """
    if asked.as_found and asked.alternative is not None:
        raise BadSurvey((Fault("--with", repr(asked.alternative), "give --as-found or --with, not both"),))
    house, study = house_and_study(file, ranges=asked.working is None)
    run = run_asked(study, house, asked.alternative)
    if asked.working is not None:
        _show_working(house, run, asked.working, as_json)
        return DONE
    chains = _chains_asked(run, asked.line)
    found = run.verdict if asked.line is None else verdict_of(chain.verdict for chain in chains)
    if as_json:
        say_json(_only(study, run, chains, asked))
    else:
        show(_page(house, study, run, chains, asked))
    return DONE if found == "passes" else NOT_PASSED


def run_asked(study: Study, house: House, alternative: str | None) -> Run:
    """The state of the house asked for, by the alternative's id, mark or name; as found for none.

    Raises:
        BadSurvey: when the house has no such alternative.
    """
    if alternative is None:
        return study.runs[0]
    for run in study.runs[1:]:
        known = house.alternatives[run.key]
        if alternative.strip().lower() in (run.key, known.mark.lower(), run.name.lower()):
            return run
    there = [f"{_alternative_name(house, run)} ({run.name})" for run in study.runs[1:]]
    allowed = f"the house has {', '.join(there)}" if there else "the house has no alternative"
    meant = _meant(alternative, [run.name for run in study.runs[1:]])
    if meant:
        marks = [f"{_alternative_name(house, run)} ({run.name})" for run in study.runs[1:] if run.name in meant]
        allowed += f"; did you mean {' or '.join(marks)}?"
    raise BadSurvey((Fault("--with", repr(alternative), allowed),))


def _meant(word: str, names: Sequence[str]) -> list[str]:
    """The names that a word is a part of, else those spelled nearly as it is."""
    part = word.strip().lower()
    return [name for name in names if part and part in name.lower()] or get_close_matches(word, names)


def _alternative_name(house: House, run: Run) -> str:
    """How an alternative is asked for: by its mark, where it has one."""
    return house.alternatives[run.key].mark or run.key


def _chains_asked(run: Run, line: str | None) -> tuple[Chain, ...]:
    """Every chain, or the one with this mark or id."""
    chains = (*run.chains, *run.bodies)
    if line is None:
        return chains
    found = tuple(c for c in chains if line.strip().lower() in (c.id, c.mark.lower()))
    if not found:
        allowed = f"the house has {', '.join(c.mark or c.id for c in chains)}"
        raise BadSurvey((Fault("--line", repr(line), allowed),))
    return found


def _only(study: Study, run: Run, chains: tuple[Chain, ...], asked: Asked) -> Study:
    """The study cut down to what was asked for; all of it when nothing was."""
    if asked.line is None and asked.alternative is None and not asked.as_found:
        return study
    kept = {chain.id for chain in chains}
    mine = replace(
        run,
        chains=tuple(c for c in run.chains if c.id in kept),
        bodies=tuple(c for c in run.bodies if c.id in kept),
    )
    return replace(study, runs=(mine,))


# ---- The page -------------------------------------------------------------------------------------------------------


def _page(house: House, study: Study, run: Run, chains: tuple[Chain, ...], asked: Asked) -> Iterator[RenderableType]:
    state = "as found" if run.key == AS_FOUND else f"with {run.name}"
    yield heading(f"{study.name}, {state}", f"{study.manifest.code}; house {study.manifest.house_hash}")
    if asked.line is None:
        yield _beside(verdict(run.verdict), words(sentence(run.headline)))
        yield from floor_line(run)
    for chain in chains:
        yield ""
        yield from _chain(study, chain, asked.full)
    yield ""
    if asked.line is None:
        yield _at_a_glance(study, run)
        yield ""
        yield from _after(house, study, run, asked)
    yield faint(
        "Ratio: demand over capacity, each by its own standard. This says what was checked against what, and no more."
    )


def _chain(study: Study, chain: Chain, full: bool) -> Iterator[RenderableType]:
    beside = f"{_way(chain)}{quantity(chain.force_lb, 'lb', study.units)} strength level"
    yield heading(f"{chain.mark}  {chain.name}".strip(), beside if chain.relied_on else "not relied on")
    yield _beside(verdict(chain.verdict), words(sentence(chain.headline)))
    if not chain.relied_on:
        return
    widths = _widths(chain)
    if full:
        for stage in chain.stages:
            yield heading(f"   {stage.title}", stage.combine if len(stage.links) > 1 else "")
            yield _links(study, chain, stage, widths)
            if stage.shares is not None:
                yield from bolts_told(stage.shares, study.units)
    else:
        yield _stages(chain, widths)
        yield from (words(works_told(stage.shares), "dim") for stage in chain.stages if stage.shares is not None)
    if full and chain.first_to_fail:
        yield words("   Expected to fail in this order (expected strengths, never to be mixed with the ratios above):")
        yield lines((words(told) for told in chain.first_to_fail), "   -")


def _way(chain: Chain) -> str:
    return f"along {chain.direction}, " if chain.direction in ("x", "y") else ""


def _widths(chain: Chain) -> tuple[int, int]:
    """How wide the verdicts and the ratios of a chain stand."""
    return (
        max((len(link.verdict) + 2 for link in chain.links), default=0),
        max((len(_ratio(link)) for link in chain.links), default=0),
    )


def _grid(widths: tuple[int, int]) -> Table:
    from rich.table import Table

    grid = Table.grid(padding=(0, 2, 0, 0), pad_edge=False)
    grid.add_column(width=1)
    grid.add_column(no_wrap=True, width=widths[0])
    grid.add_column(no_wrap=True, justify="right", width=widths[1])
    grid.add_column(overflow="fold")
    return grid


def _stages(chain: Chain, widths: tuple[int, int]) -> Table:
    """One row for each stage, told by the link that bears out its verdict."""
    from rich.text import Text

    grid = _grid(widths)
    for stage in chain.stages:
        found = stage_verdict(stage)
        if found != "does not apply":
            link = stage_link(stage)
            style = _style(chain, link)
            told = Text.assemble(words(_short(stage), style), words(_named(stage, link)), faint(_more(stage, link)))
            grid.add_row("", verdict(found), words(_ratio(link), style), told)
    return grid


def _links(study: Study, chain: Chain, stage: Stage, widths: tuple[int, int]) -> Table:
    """Every link of a stage, with its figures, reasons and address."""
    grid = _grid(widths)
    for link in stage.links:
        style = _style(chain, link)
        grid.add_row("", verdict(link.verdict), words(_ratio(link), style), _link(study, link, style))
    return grid


def _style(chain: Chain, link: Link | None) -> str:
    return "bold" if link is not None and link.address == chain.governing else ""


def _short(stage: Stage) -> str:
    """A stage in two or three words."""
    return {"bolts-concrete": "bolts in foundation"}.get(stage.key, stage.key.replace("-", " "))


def _named(stage: Stage, link: Link | None) -> str:
    """The link's own title behind the stage's name, where it says more."""
    title = "" if link is None else link.title
    return f": {title}" if title and title != _short(stage) else ""


def _more(stage: Stage, worst: Link | None) -> str:
    """How many other links of the stage do not pass."""
    others = [
        link.verdict for link in stage.links if link is not worst and link.verdict not in ("passes", "does not apply")
    ]
    counts = {word: others.count(word) for word in others}
    told = [f"+{count} {word if count == 1 else _MANY[word]}" for word, count in counts.items()]
    return f"  ({', '.join(told)})" if told else ""


def _ratio(link: Link | None) -> str:
    if link is None or link.status in ("does not apply", "cannot be checked"):
        return ""
    return "no capacity" if link.ratio is None else ratio(link.ratio)


def _link(study: Study, link: Link, style: str) -> Table:
    """One link: its name, demand and capacity, what has to be said, and its address."""
    from rich.table import Table

    told = Table.grid(pad_edge=False)
    told.add_column(overflow="fold")
    told.add_row(words(link.title, style))
    if link.demand is not None and link.capacity is not None:
        demand, capacity = (quantity(n, link.unit, study.units) for n in (link.demand, link.capacity))
        told.add_row(
            words(f"{demand} asked, {capacity} there, {link.level} level" + (f"; {link.clause}" if link.clause else ""))
        )
    elif link.clause:
        told.add_row(words(link.clause))
    if link.least_favourable is not None and link.least_favourable != link.ratio:
        told.add_row(words(f"least favourable ratio {ratio(link.least_favourable)}"))
    for said in (link.reason, f"beyond the standard: {link.extension}" if link.extension else "",
                 f"depends on: {'; '.join(link.depends_on)}" if link.depends_on else ""):  # fmt: skip
        if said:
            told.add_row(words(said))
    told.add_row(faint(link.address))
    return told


def _at_a_glance(study: Study, run: Run) -> Table:
    """Every line and body in one row: force, the part of it that is carried, verdict."""
    heads = (Head("Line", wraps=True), Head("Force", align="right"), Head("Carries", align="right"), Head("Verdict"))
    rows = []
    for chain in (*run.chains, *run.bodies):
        force = quantity(chain.force_lb, "lb", study.units) if chain.relied_on else ""
        carried = "" if chain.percent is None else f"{min(int(chain.percent), 100)} %"
        rows.append((f"{chain.mark} {chain.name}", force, carried, verdict(chain.verdict)))
    return table(heads, rows)


def _beside(left: RenderableType, right: RenderableType) -> Table:
    """A verdict and what it means, side by side."""
    from rich.table import Table

    grid = Table.grid(padding=(0, 2, 0, 0), pad_edge=False)
    grid.add_column(no_wrap=True)
    grid.add_column(overflow="fold")
    grid.add_row(left, right)
    return grid


def _after(house: House, study: Study, run: Run, asked: Asked) -> Iterator[RenderableType]:
    """What stands below the chains: notes on this state, the other states, warnings."""
    yield from notes_below(house, study, run, asked.full)
    others = [other for other in study.runs if other.key != run.key]
    if others:
        yield strong("Other states of the house")
        told = []
        for other in others:
            how = "--as-found" if other.key == AS_FOUND else f"--with {_alternative_name(house, other)}"
            told.append((other.name, verdict(other.verdict), how))
        yield facts(told)
        yield ""
    if study.warnings:
        yield strong("Warnings")
        yield lines((sentence(warning) for warning in study.warnings), "!")
        yield ""
    if not asked.full:
        yield faint(
            "--full shows every link with figures and address; --working ADDRESS its working; --line one line alone."
        )


# ---- Working --------------------------------------------------------------------------------------------------------


def _show_working(house: House, run: Run, asked: str, as_json: bool) -> None:
    """Print the steps taken for an address: a link's own, and those it stands on."""
    sheet = working(house, run.key)
    address = _with_ids(asked, run)
    found = _sections(sheet, run, address)
    if not found:
        marks = ", ".join(chain.mark or chain.id for chain in (*run.chains, *run.bodies))
        allowed = f"an address as --full shows it, or the beginning of one: forces, {marks}, L1/sheathing"
        raise BadSurvey((Fault("--working", repr(asked), allowed),))
    if as_json:
        told = tuple(SectionTold(a, tuple(step_told(s) for s in steps)) for a, steps in found)
        say_json(WorkingTold(house.survey.name, run.key, asked, told))
        return
    _print_working(f"{house.survey.name}, {run.name}", found)


def _print_working(title: str, found: list[tuple[str, tuple[Step, ...]]]) -> None:
    from groundsill.papers.document import Block, Document, Heading, Working
    from groundsill.papers.writers.terminal import print_document

    blocks: list[Block] = []
    for address, steps in found:
        blocks.append(Heading(address, 1))
        blocks += [Working(step) for step in steps]
    print_document(Document(f"{title}: working", tuple(blocks), numbered=False), console())


def _all_sections(sheet: Sheet) -> list[str]:
    """Every address that steps were taken for, in order."""
    return list(dict.fromkeys(step.section for step in sheet.steps if step.section))


def _with_ids(asked: str, run: Run) -> str:
    """An address with a line's mark in front (``L1/sheathing``) turned into the permanent one."""
    head, sign, tail = asked.strip().strip("/").partition("/")
    for chain in (*run.chains, *run.bodies):
        if head.lower() in (chain.mark.lower(), chain.id) and head:
            return f"{chain.kind}/{chain.id}{sign}{tail}"
    return asked.strip().strip("/")


def _sections(sheet: Sheet, run: Run, address: str) -> list[tuple[str, tuple[Step, ...]]]:
    """What a link stands on, by its address; else every section at an address or below it."""
    known = _all_sections(sheet)
    link = next((k for c in (*run.chains, *run.bodies) for k in c.links if k.address == address), None)
    named = {address, *link.working} if link is not None else set()
    found = [s for s in known if s in named or (link is None and (s == address or s.startswith(f"{address}/")))]
    return [(section, sheet.under(section)) for section in found]
