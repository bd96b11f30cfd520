"""What stands below the chains on the terminal: work without a place or a check, proofs, and what to measure next."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Final

from groundsill.cli.layout import faint, lines, strong, words
from groundsill.loadpath.prescriptive import NEVER_A_PASS
from groundsill.loadpath.storey_above import REMARKS, StoreyCheck, own_system
from groundsill.papers.views.basis_view import ONE_AT_A_TIME, telling_moves, to_look_at
from groundsill.papers.views.prescriptive_view import line_told, requirement_told, within_words
from groundsill.papers.views.proofs_view import lines_of_decisions, lines_of_tests, proved_links
from groundsill.papers.views.strength_view import HOW_FOUND, lines_of_strength, settling_words
from groundsill.papers.views.words import counted, listed, quantity, ratio, sentence
from groundsill.study import Run, Study

if TYPE_CHECKING:
    from rich.console import RenderableType

    from groundsill.study import Move
    from groundsill.work.document import House

__all__ = ["floor_line", "notes_below"]

_SHOWN: Final = 5


def floor_line(run: Run) -> Iterator[RenderableType]:
    """Why the floor is taken as flexible and as rigid both, where it is."""
    if run.floor:
        yield words(f"Flexible and rigid floor both, every line by the worse of the two: {run.floor}.")


def notes_below(house: House, study: Study, run: Run, full: bool) -> Iterator[RenderableType]:
    """Everything of one state that no chain tells."""
    yield from _work(run)
    yield from _beside(run)
    yield from _above(study, run, full)
    yield from _prescriptive(study, run, full)
    yield from _proofs(house, study, run, full)
    yield from _strength(study, run, full)
    yield from _measure_next(study, full)
    yield from _look_at(study, full)


def _work(run: Run) -> Iterator[RenderableType]:
    if run.misplaced:
        yield strong("Work that has no place on the house as surveyed")
        yield lines((f"{m.mark or m.id} ({m.kind}): {m.reason}" for m in run.misplaced), "!")
        yield ""
    if run.uncounted:
        yield strong("Work that no check counts yet; the verdicts stand without it")
        yield lines(run.uncounted)
        yield ""


def _beside(run: Run) -> Iterator[RenderableType]:
    """What the trade says beside the checks of a stage."""
    notes = dict.fromkeys(stage.note for chain in run.chains for stage in chain.stages if stage.note)
    if notes:
        yield strong("Seen by the trade")
        yield lines(notes)
        yield ""


def _above(study: Study, run: Run, full: bool) -> Iterator[RenderableType]:
    """The storeys above: the next weakest level, what work makes worse off, and every wall when all is asked for."""
    if run.next_weakest:
        yield strong("The storeys above")
        yield words(sentence(run.next_weakest))
        if run.compared is not None:
            yield words(sentence(run.compared.headline))
        if full:
            yield lines(sentence(text) for text in (*REMARKS, own_system(study.forces)) if text)
            yield lines(sentence(_wall(check, study)) for storey in run.storeys for check in storey.checks)
        yield ""


def _wall(check: StoreyCheck, study: Study) -> str:
    """One wall of a storey above in one line."""
    force = quantity(check.force_lb, "lb", study.units)
    by = f" by {check.finish}, ratio {ratio(check.ratio)}" if check.ratio is not None else ""
    said = f": {check.reason}" if check.reason else ""
    return f"{check.mark or check.wall} along {check.direction}, {force}: {check.status}{by}{said}"


def _prescriptive(study: Study, run: Run, full: bool) -> Iterator[RenderableType]:
    """The prescriptive way beside the engineered one, in a line for each line; every item when all is asked for."""
    path = study.prescriptive
    if path is None or not run.prescriptive:
        return
    yield strong("Prescriptive or engineered")
    yield words(sentence(within_words(path)))
    if full:
        yield lines(sentence(f"{i.outcome}: {i.asks.rstrip('.')} ({i.clause}): {i.reason}") for i in path.scope)
    for line in run.prescriptive:
        yield lines((words(line_told(line)),), line.mark or line.line)
        if full:
            told = (each for each in line.requirements if each.outcome != "does not apply")
            yield lines(map(requirement_told, told), "     -")
    yield faint(sentence(NEVER_A_PASS))
    yield ""


def _proofs(house: House, study: Study, run: Run, full: bool) -> Iterator[RenderableType]:
    """Tests and decisions. Only tests of anchors can prove a link, so the others are told when all is asked for."""
    every, shown = len(house.survey.foundation.tests), lines_of_tests(house, study.units, anchors=not full)
    if every:
        yield strong("Tests in place")
        yield lines(shown)
        titles = dict.fromkeys(f"{link.title} ({chain.mark})" for chain, link in proved_links(run, "passes by test"))
        yield words(f"Pass by them here: {listed(titles)}." if titles else "No link passes by a test here.")
        if every > len(shown):
            yield faint(f"{counted(every - len(shown), 'other test')} (cores, probes, rebound): --full shows them.")
        yield ""
    if house.acceptances:
        yield strong("Decisions of engineers")
        yield lines(lines_of_decisions(house, study))
        yield ""


def _strength(study: Study, run: Run, full: bool) -> Iterator[RenderableType]:
    """The tests that would settle the lines that hang on the strength of their concrete; every stretch when asked."""
    if full and study.concrete:
        yield strong("How strong the concrete is")
        yield lines(lines_of_strength(study))
        yield ""
    if not run.settled_by:
        return
    yield strong("Tests of the concrete that would settle it")
    for test in run.settled_by:
        told = settling_words(test, study.units)
        yield lines((words(" ".join(told if full else told[:1])),), test.mark or test.line)
    yield faint(HOW_FOUND if full else "--full shows how many cores, where, and at what mean.")
    yield ""


def _measure_next(study: Study, full: bool) -> Iterator[RenderableType]:
    """The facts whose measuring would tell most, the most telling first."""
    if not study.facts:
        return
    moves = telling_moves(study)
    yield strong("Measure this next")
    if not moves:
        yield words("No fact, moved alone from end to end of its range, changes a verdict or a governing ratio.")
        yield ""
        return
    shown = moves if full else moves[:_SHOWN]
    for number, move in enumerate(shown, start=1):
        yield lines((_move(move),), f"{number}.")
    left = len(moves) - len(shown)
    more = f" {counted(left, 'fact')} that move less: --full shows them." if left else ""
    yield faint(f"{ONE_AT_A_TIME}{more}")
    yield ""


def _look_at(study: Study, full: bool) -> Iterator[RenderableType]:
    """The facts that no range stands in for, each with what waits for it; those that most things wait for first."""
    lacks = to_look_at(study)
    if not lacks:
        return
    yield strong("Look at this, or nobody can check")
    shown = lacks if full else lacks[:_SHOWN]
    yield lines(f"{sentence(lack.what)} {sentence(lack.needed_for)}" for lack in shown)
    left = len(lacks) - len(shown)
    if left:
        yield faint(f"{left} more: --full shows them.")
    yield ""


def _move(move: Move) -> str:
    turns = f"turns the verdict of {listed(move.flips)}" if move.flips else ""
    by = f"moves the ratio of {move.where} by {ratio(move.change)}" if move.change else ""
    cores = "tests that would settle it stand above" if move.path.endswith(".strength_psi") else ""
    return sentence(f"{move.label}: {'; '.join(filter(None, (turns, by, cores)))}")
