"""Which links of a stage are worked out on paper: one of each kind, and under it those that it stands for.

Two links are of one kind when they are checked by the same clause and by the same formulas. The one that is set out
is the most used of its kind, so what decides is always among them. A link that uses a formula which none shown under
its clause has, a branch that only it takes, is set out too; one that uses less than a shown one is told by it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from groundsill.loadpath.chain import Link, Stage, governing
from groundsill.papers.views.strip_view import stage_link

__all__ = ["Kind", "kinds_of", "not_worked_out"]


@dataclass(frozen=True, slots=True)
class Kind:
    """The link that is set out, and the others of the stage that go by the same rules."""

    shown: Link
    alike: tuple[Link, ...]


def kinds_of(stage: Stage, formulas: Callable[[Link], frozenset[str]]) -> tuple[Kind, ...]:
    """The kinds of links in a stage, the one that stands for the stage first; none where nothing applies.

    Args:
        stage: the stage of a chain.
        formulas: the ids of the published formulas and rules in a link's working.
    """
    first = stage_link(stage)
    if first is None or first.verdict == "does not apply":
        return ()
    shown: list[Link] = []
    waiting = [link for link in stage.links if _worked_out(link)]
    following: Link | None = first
    while following is not None:
        shown.append(following)
        if following in waiting:
            waiting.remove(following)
        following = _next(waiting, shown, formulas)
    alike: dict[str, list[Link]] = {link.address: [] for link in shown}
    for link in waiting:
        alike[_told_by(link, shown, formulas).address].append(link)
    return tuple(Kind(link, tuple(alike[link.address])) for link in shown)


def not_worked_out(stage: Stage) -> tuple[Link, ...]:
    """The links of a stage that cannot be checked: what stands in the way is said in the table."""
    return tuple(link for link in stage.links if link.verdict != "does not apply" and not _worked_out(link))


def _worked_out(link: Link) -> bool:
    return link.status not in ("does not apply", "cannot be checked")


def _next(waiting: list[Link], shown: list[Link], formulas: Callable[[Link], frozenset[str]]) -> Link | None:
    """The most used link, under the first clause of the stage that still has one, whose rules were not shown yet."""
    for link in waiting:
        known = frozenset[str]().union(*(formulas(other) for other in shown if other.clause == link.clause))
        clause_shown = any(other.clause == link.clause and _worked_out(other) for other in shown)
        if not clause_shown:
            return governing(other for other in waiting if other.clause == link.clause)
        if not formulas(link) <= known:
            return governing(o for o in waiting if o.clause == link.clause and not formulas(o) <= known)
    return None


def _told_by(link: Link, shown: list[Link], formulas: Callable[[Link], frozenset[str]]) -> Link:
    """Of the shown links under the same clause, the one that has all formulas of this one, else the first."""
    same = [other for other in shown if other.clause == link.clause and _worked_out(other)]
    return next((other for other in same if formulas(link) <= formulas(other)), same[0])
