"""The page an owner reads: how much of the required force each line carries, what stops it, before and after the work.

:func:`summary_terminal` is the same for a screen of letters, without the pictures.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence

from groundsill.loadpath.chain import Chain, Link, Verdict
from groundsill.loadpath.headline import slight, slight_words
from groundsill.papers.document import (
    Block,
    BulletList,
    Column,
    GroupRow,
    Heading,
    Paragraph,
    Remark,
    Row,
    TableBlock,
    small,
    strong,
)
from groundsill.papers.views.forces_view import doubts_note
from groundsill.papers.views.strip_view import Row as StripRow
from groundsill.papers.views.strip_view import strip_figure
from groundsill.papers.views.wind_view import wind_paragraph
from groundsill.papers.views.words import DASH, carried, counted, listed, ratio, sentence, verdict
from groundsill.study import Run, Study

__all__ = ["run_words", "strips_blocks", "summary_blocks", "summary_terminal", "unchecked_table"]


def run_words(run: Run) -> str:
    """What a state of the house is called in a table."""
    return run.name or run.key


def summary_terminal(study: Study) -> tuple[Block, ...]:
    """The verdict of every state and every line, for a terminal."""
    return (
        *_verdicts(study),
        wind_paragraph(study),
        lines_table(study),
        *bodies_table(study),
        *_misplaced(study),
        *doubts_note(study),
    )


def summary_blocks(study: Study, doubtful: bool = False) -> tuple[Block, ...]:
    """The summary page: verdicts, how to read them, lines, foundation bodies, work without a place, what is open.

    ``doubtful``: the forces themselves rest on figures in doubt, so every share does.
    """
    reading = (
        "Each braced line under the floor is a chain: the force passes from the floor boards through nails, plate, "
        "wall covering, sill and bolts into the foundation, and is carried only as far as the weakest link allows. "
        "“100 %” means that every link that could be checked carries what the code's rules ask of it. It is not a "
        "promise."
    )
    return (
        *_verdicts(study),
        wind_paragraph(study),
        Paragraph(small(reading)),
        lines_table(study, doubtful),
        *bodies_table(study, doubtful),
        *_misplaced(study),
        *unchecked_table(study),
    )


def _verdicts(study: Study) -> Iterator[Block]:
    """One paragraph for each state: its verdict, how its lines stand, and its weakest line."""
    for run in study.runs:
        relied = [chain for chain in run.chains if chain.relied_on]
        stand = Counter(chain.verdict for chain in relied)
        told = listed(f"{number} {_PLURAL[word]}" for word, number in stand.most_common())
        lines = f" Of {counted(len(relied), 'line')} relied on, {told}." if relied else ""
        yield Paragraph(
            (
                strong(f"{sentence(run_words(run))} "),
                verdict(run.verdict),
                f".{lines} {sentence(run.headline)} {sentence(run.next_weakest)}".rstrip(),
            )
        )


_PLURAL: dict[Verdict, str] = {
    "passes": "pass",
    "fails": "fail",
    "depends": "depend on facts still to be settled",
    "indicated": "are indicated only",
    "cannot be checked": "cannot be checked",
    "does not apply": "do not apply",
}


# --- the tables -------------------------------------------------------------------------------------------------------


def lines_table(study: Study, doubtful: bool = False) -> TableBlock:
    """Every line with its state before and after, one under the other."""
    rows: list[Row] = []
    for chain in _lines(study):
        force = next((run.line_forces[chain.id] for run in study.runs if chain.id in run.line_forces), None)
        way = f", along {force.direction}" if force is not None and force.direction else ""
        rows.append(GroupRow((strong(f"{chain.mark} "), f"{chain.name}{way}".lstrip(", "))))
        rows.extend(_states((run, _find(run.chains, chain.id)) for run in study.runs))
    caption = "What each braced line carries of the force required of it"
    return TableBlock(_columns(doubtful), tuple(rows), caption, _doubt_notes(doubtful), anchor="summary-lines")


def _lines(study: Study) -> list[Chain]:
    """The chain of every line, by the first state that has the line: as found, or with the work that makes it."""
    found: dict[str, Chain] = {}
    for run in study.runs:
        for chain in run.chains:
            known = found.get(chain.id)
            if known is None or (chain.relied_on and not known.relied_on):
                found[chain.id] = chain
    return list(found.values())


def bodies_table(study: Study, doubtful: bool = False) -> tuple[TableBlock, ...]:
    """The foundation bodies and the soil, a group of their own; nothing when there are none."""
    rows: list[Row] = []
    for id, chain in {chain.id: chain for run in study.runs for chain in run.bodies}.items():
        rows.append(GroupRow((strong(f"{chain.mark} "), chain.name)))
        rows.extend(_states((run, _find(run.bodies, id)) for run in study.runs))
    caption = "Foundation bodies and the soil under them: sliding, overturning, bearing"
    return (TableBlock(_columns(doubtful), tuple(rows), caption, _doubt_notes(doubtful)),) if rows else ()


def _columns(doubtful: bool) -> tuple[Column, ...]:
    return (
        Column("State", share=0.62),
        Column("Carries †" if doubtful else "Carries", align="end"),
        Column("What stops it, or comes nearest to it", share=1.8),
        Column("Verdict", share=0.66),
    )


def _doubt_notes(doubtful: bool) -> tuple[str, ...]:
    told = "† Every share rests on figures that are still to be confirmed; “Figures in doubt” lists them."
    return (told,) if doubtful else ()


def _find(chains: Sequence[Chain], id: str) -> Chain | None:
    return next((chain for chain in chains if chain.id == id), None)


def _states(found: Iterable[tuple[Run, Chain | None]]) -> Iterator[Row]:
    """One row for each state; states in which the chain is the very same share one."""
    alike: list[tuple[Chain, list[str]]] = []
    for run, chain in found:
        if chain is None:
            continue
        same = next((names for other, names in alike if other == chain), None)
        if same is None:
            alike.append((chain, [run_words(run)]))
        else:
            same.append(run_words(run))
    for chain, names in alike:
        part, stops = (carried(chain.percent), _stops(chain)) if chain.relied_on else (DASH, sentence(chain.headline))
        yield (listed(names), part, stops, verdict(chain.verdict))


def _stops(chain: Chain) -> str:
    """What stops the force, stage by stage in the words of the pictures, and what could not be checked."""
    told = [chain.remark] if chain.remark else []
    little = slight(chain)
    nothing = _stages_with(chain, lambda link: link.status == "fails" and link.ratio is None and link not in little)
    weakest = next((link for link in chain.links if link.address == chain.governing), None)
    if nothing:
        told.append(f"nothing holds at: {nothing}")
    elif weakest is not None and weakest.ratio is not None:
        stopped = "stopped as surveyed by" if weakest.verdict == "depends" else "stopped by"
        lead = stopped if weakest.ratio > 1 else "nearest to its limit:"
        told.append(f"{lead} {weakest.title} (ratio {ratio(weakest.ratio)})")
    told += filter(None, (slight_words(chain),))
    unknown = _stages_with(chain, lambda link: link.verdict == "cannot be checked")
    if unknown:
        told.append(f"not checked: {unknown}")
    return sentence("; ".join(told)) or DASH


def _stages_with(chain: Chain, wanted: Callable[[Link], bool]) -> str:
    """The stages that hold such links, in the order of the chain, with how many where there are several."""
    found = []
    for stage in chain.stages:
        links = [link for link in stage.links if wanted(link)]
        if links:
            title = stage.title[:1].lower() + stage.title[1:]
            found.append(title if len(links) == 1 else f"{title} ({len(links)} places)")
    return listed(found)


def _misplaced(study: Study) -> Iterator[Block]:
    for run in study.runs:
        if run.misplaced:
            many = counted(len(run.misplaced), "piece")
            lead = f"{many} of work in “{run_words(run)}” cannot stand where the design puts it and is left out."
            yield Remark("warning", lead, "Work without a place")
            yield BulletList(tuple(sentence(f"{m.mark or m.id}, {m.kind}: {m.reason}") for m in run.misplaced))
        if run.remarks:
            yield Remark("warning", f"What “{run_words(run)}” leaves as it is:", "Said plainly")
            yield BulletList(tuple(sentence(told) for told in run.remarks))
        if run.uncounted:
            lead = f"No check counts these pieces of work in “{run_words(run)}” yet; the verdicts stand without them:"
            yield Remark("note", lead, "Work not counted")
            yield BulletList(tuple(sentence(told) for told in run.uncounted))


def unchecked_table(study: Study) -> tuple[Block, ...]:
    """What was not checked, and why: one row for each reason, with the links and the lines it stands on."""
    found: dict[str, tuple[dict[str, None], dict[str, None]]] = {}
    for run in study.runs:
        for chain in (*run.chains, *run.bodies):
            for link in chain.links:
                if link.verdict == "cannot be checked" and chain.relied_on:
                    titles, marks = found.setdefault(_why(link), ({}, {}))
                    titles[link.title] = marks[chain.mark] = None
    if not found:
        return ()
    rows = tuple((", ".join(marks), sentence(listed(titles)), reason) for reason, (titles, marks) in found.items())
    columns = (Column("On", share=0.5), Column("Links", share=1.1), Column("Why they cannot be checked", share=1.4))
    return (TableBlock(columns, rows, "What is not checked, and why"),)


def _why(link: Link) -> str:
    if link.reason:
        return sentence(link.reason)
    return f"The facts that {link.clause} asks for are not known." if link.clause else "No reason was recorded."


# --- the pictures -----------------------------------------------------------------------------------------------------


def strips_blocks(study: Study, doubtful: bool = False) -> Iterator[Block]:
    """One picture for each line and body: every state under the other, at one scale."""
    reading = (
        "The band is the force on its way from the floor to the ground. It is as high as the part of the required "
        "force that the link carries: full between the dotted lines where it passes, a neck where it fails, broken "
        "where nothing holds. Hatched is indicated, beyond what a standard covers; an empty dashed frame cannot be "
        "checked. A heavy frame marks the governing link, a dashed line inside the band the least favourable case. "
        "Under each link stand its verdict and its ratio of demand to capacity; where a stage has several links, the "
        "weakest stands for it."
    )
    yield Paragraph((reading, " † Every ratio rests on figures that are still to be confirmed." if doubtful else ""))
    yield Heading("Braced lines", 2)
    yield from _strips(study, [chain for chain in _lines(study) if chain.relied_on], bodies=False)
    bodies = list({chain.id: chain for run in study.runs for chain in run.bodies}.values())
    if bodies:
        yield Heading("Foundation bodies", 2)
        yield from _strips(study, bodies, bodies=True)


def _strips(study: Study, chains: Sequence[Chain], bodies: bool) -> Iterator[Block]:
    for chain in chains:
        rows: list[StripRow] = []
        for run in study.runs:
            same = _find(run.bodies if bodies else run.chains, chain.id)
            if same is None:
                continue
            if rows and rows[-1].chain == same:
                rows[-1] = StripRow(f"{rows[-1].name}, {run_words(run)}", same)
            else:
                rows.append(StripRow(run_words(run), same))
        yield strip_figure(f"{chain.mark} {chain.name}".strip(), rows, anchor=f"strip/{chain.kind}/{chain.id}")
