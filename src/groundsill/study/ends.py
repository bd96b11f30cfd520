"""The runs at both ends of every uncertain fact, what each link came to there, and which fact is worth measuring next.

One fact at a time first; then, for each link, all the facts that move it at their worse end together. (Where facts work
against each other, some of them at their worse end can be a hair worse than all of them: each at its own is what is
told.) What never looks at a fact is not worked out again for it (:mod:`groundsill.study.looked`).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from groundsill.house.settle import End, FactRef, Settling
from groundsill.loadpath.chain import Chain, Link, Stage, Verdict, verdict_of, with_ends
from groundsill.loadpath.headline import concluded
from groundsill.loadpath.wind import wind_stage_of
from groundsill.study.looked import Parts
from groundsill.study.result import Move
from groundsill.study.states import Chains, State
from groundsill.work.document import House

__all__ = ["Ends", "Progress"]

Progress = Callable[[int, int], None]
_ELSEWHERE = "at the best value of every fact the earthquake asks more of it; at another end of a fact wind does"


class Ends:
    """The runs at the ends of uncertain facts, and what each link came to there."""

    def __init__(
        self,
        settling: Settling[House],
        states: Sequence[State],
        best: Sequence[Chains],
        progress: Progress | None,
    ) -> None:
        self.settling = settling
        self.states = states
        self.chains = best
        self.best = [chains.links() for chains in best]
        self.added: list[dict[str, Link]] = [{} for _ in states]  # links that there are at some end alone
        self.progress = progress
        self.parts = Parts(settling, states)
        self.seen: list[dict[str, list[Link]]] = [{} for _ in states]
        self.adverse: list[dict[str, dict[str, End]]] = [{} for _ in states]
        self.deciding: list[dict[str, list[str]]] = [{} for _ in states]
        self.moves: list[Move] = []

    def one_at_a_time(self) -> None:
        """Each uncertain fact at its low and its high end, all others at their best."""
        sides: tuple[End, End] = ("low", "high")
        for place, fact in enumerate(self.settling.facts):
            if self.progress:
                self.progress(place, len(self.settling.facts))
            both = [self._links({fact.path: end}) for end in sides]
            for n, best in enumerate(self.best):
                for found in both:
                    self._meet(n, found[n])
                for address, link in best.items():
                    self._compare(n, fact, link, [found[n].get(address) for found in both])
            self.moves.append(self._move(fact, both))

    def _meet(self, n: int, found: Mapping[str, Link]) -> list[str]:
        """Take up links that are not there at the best of everything, as those of wind where the earthquake governs."""
        new = [address for address in found if address not in self.best[n]]
        for address in new:
            blank = replace(
                found[address], status="does not apply", verdict="does not apply", ratio=None, demand=None,
                capacity=None, extension="", reason=_ELSEWHERE,
            )  # fmt: skip
            self.best[n][address] = self.added[n][address] = blank
        return new

    def ranked(self) -> tuple[Move, ...]:
        """The facts worth measuring: first those that flip a verdict, then by how far they move a governing ratio."""
        telling = [move for move in self.moves if move.flips or move.change > 0]
        return tuple(sorted(telling, key=lambda move: (-len(move.flips), -move.change, move.path)))

    def _move(self, fact: FactRef, both: Sequence[Sequence[Mapping[str, Link]]]) -> Move:
        """What a fact does to every chain in every state."""
        flips, change, where = [], 0.0, ""
        for n, (state, chains) in enumerate(zip(self.states, self.chains, strict=True)):
            for chain in (*chains.lines, *chains.bodies):
                links = [link for stage in self._stages(n, chain) for link in stage.links]
                outcomes = [_outcome(_there(found[n], links)) for found in both]
                best = _outcome(links)
                name = f"{state.name}: {chain.mark}"
                if any(verdict != best[0] for verdict, _ in outcomes):
                    flips.append(name)
                moved = max(abs(ratio - best[1]) for _, ratio in outcomes)
                if moved > change:
                    change, where = moved, name
        return Move(fact.path, fact.label, tuple(flips), change, where)

    def _compare(self, n: int, fact: FactRef, link: Link, found: Sequence[Link | None]) -> None:
        """Note a fact that moves a link: the end that is worse for it, and whether the status flips."""
        moved = [
            other for other in found if other is not None and (other.status, other.ratio) != (link.status, link.ratio)
        ]
        if not moved:
            return
        low, high = found
        worse: End = "high" if _worse(high, low) else "low"
        other = high if worse == "high" else low
        if other is not None and other.status == "cannot be checked":  # no figure there: it adds nothing to the others
            worse, other = ("low", low) if worse == "high" else ("high", high)
        if _worse(other, link) and other is not None and other.status != "cannot be checked":
            self.adverse[n].setdefault(link.address, {})[fact.path] = worse
        self.seen[n].setdefault(link.address, []).extend(moved)
        if any(other.status != link.status for other in moved):
            self.deciding[n].setdefault(link.address, []).append(fact.label)

    def all_adverse(self) -> None:
        """For each link, all the facts that move it at their worse end together: the least favourable case."""
        done: dict[tuple[tuple[str, End], ...], list[dict[str, Link]]] = {}
        for n, wanted in enumerate(self.adverse):
            for address, ends in wanted.items():
                if len(ends) < 2:
                    continue
                key = tuple(sorted(ends.items()))
                if key not in done:
                    done[key] = self._links(ends)
                    labels = [f.label for f in self.settling.facts if f.path in ends]
                    for other, links in enumerate(done[key]):
                        for met in self._meet(other, links):
                            self.seen[other].setdefault(met, []).append(links[met])
                            self.deciding[other][met] = labels
                link = done[key][n].get(address)
                if link is not None:
                    self.seen[n].setdefault(address, []).append(link)
                    if link.status != self.best[n][address].status and not self.deciding[n].get(address):
                        self.deciding[n][address] = [f.label for f in self.settling.facts if f.path in ends]

    def _links(self, ends: Mapping[str, End]) -> list[dict[str, Link]]:
        """Every state's links with some facts at an end."""
        return [
            {link.address: link for chain in self.parts.chains(n, ends) for link in chain.links}
            for n in range(len(self.states))
        ]

    def _stages(self, n: int, chain: Chain) -> tuple[Stage, ...]:
        """The stages of a chain, with the links that were met at some end alone."""
        mine = f"{chain.kind}/{chain.id}/wind/"
        met = tuple(link for address, link in self.added[n].items() if address.startswith(mine))
        if not met:
            return chain.stages
        if not any(stage.key == "wind" for stage in chain.stages):
            return (*chain.stages, wind_stage_of(met))
        return tuple(
            replace(stage, links=(*stage.links, *met)) if stage.key == "wind" else stage for stage in chain.stages
        )

    def concluded(self, n: int, chain: Chain) -> Chain:
        """A chain with the verdict of each link over all ends, and its headline."""
        stages = tuple(
            replace(
                stage,
                links=tuple(
                    with_ends(
                        link,
                        self.seen[n].get(link.address, ()),
                        tuple(dict.fromkeys(self.deciding[n].get(link.address, ()))),
                    )
                    for link in stage.links
                ),
            )
            for stage in self._stages(n, chain)
        )
        return concluded(replace(chain, stages=stages))


def _there(found: Mapping[str, Link], links: Iterable[Link]) -> Iterator[Link]:
    """Links as they came out at an end; one that was not worked out again stands, but for wind that governs no more."""
    for link in links:
        if link.address in found or "/wind/" not in link.address:
            yield found.get(link.address, link)


def _outcome(links: Iterable[Link]) -> tuple[Verdict, float]:
    """The verdict of some links together, and their highest ratio (0 when none has a figure)."""
    links = tuple(links)
    return verdict_of(link.status for link in links), max((link.ratio or 0.0 for link in links), default=0.0)


def _worse(a: Link | None, b: Link | None) -> bool:
    """Whether one outcome of a check is worse than another."""
    return _badness(a) > _badness(b)


def _badness(link: Link | None) -> tuple[int, float]:
    if link is None or link.status == "does not apply":
        return (0, 0.0)
    if link.status == "cannot be checked":
        return (3, 0.0)
    if link.ratio is None:
        return (2, 0.0)
    return (1, link.ratio)
