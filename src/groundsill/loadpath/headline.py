"""What a chain comes to, in one line of words: how much of the force it carries, what stops it, what gives first."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from math import floor

from groundsill.loadpath.chain import Chain, Expected, Link, governing, verdict_of

__all__ = ["concluded", "first_to_fail", "in_short", "slight", "slight_words", "spread_words"]

_TAILS = ("cannot be checked", "only indicated, until tested or accepted", "depends on")
_NAMED = 4  # links named before the rest are only counted
_SLIGHT = 0.05  # of the line's force: a force that small leads no headline, whatever carries it (our choice, no source)


def concluded(chain: Chain) -> Chain:
    """The chain with its verdict, percentage, governing link, order of failing and headline."""
    if not chain.relied_on:
        return replace(chain, verdict="does not apply", headline=f"not relied on: {chain.relied_reason}")
    links, little = chain.links, slight(chain)
    worst = governing([link for link in links if link not in little]) or governing(links)
    verdict = verdict_of(link.verdict for link in links)
    percent = None
    nothing = [link for link in links if link.status == "fails" and link.ratio is None and link not in little]
    if nothing:
        percent = 0.0
    elif worst is not None and worst.ratio:
        percent = 100.0 / worst.ratio
    if little:
        all_but = 100.0 * (1.0 - max(link.demand or 0.0 for link in little) / chain.force_lb)
        percent = all_but if percent is None else min(percent, all_but)
    if percent is not None and percent >= 100 and any(link.status == "cannot be checked" for link in links):
        percent = None  # what was not checked may stop it sooner
    told = _words(chain, percent, worst, nothing)
    return replace(
        chain,
        verdict=verdict,
        percent=percent,
        governing=worst.address if worst else None,
        first_to_fail=first_to_fail(links),
        headline=f"{chain.remark}; {told}" if chain.remark else told,
    )


def slight(chain: Chain) -> tuple[Link, ...]:
    """The links of a line that have no strength at all, and are asked for next to nothing of its force."""
    return tuple(
        link
        for link in chain.links
        if link.status == "fails" and link.ratio is None and link.unit == "lb"
        and chain.kind == "line" and 0 < (link.demand or 0.0) <= _SLIGHT * chain.force_lb
    )  # fmt: skip


def slight_words(chain: Chain) -> str:
    """What little force finds nothing to carry it, and where; nothing where all is carried or much is not."""
    told = [f"{link.title}, {link.demand:,.0f} lb of {chain.force_lb:,.0f} lb" for link in slight(chain)]
    return f"nothing at all carries a small force at: {'; '.join(told)}" if told else ""


def _words(chain: Chain, percent: float | None, worst: Link | None, nothing: list[Link]) -> str:
    links = chain.links
    asked = "required force" if chain.kind == "line" else "load asked of it"
    unknown = [link for link in links if link.status == "cannot be checked"]
    tail = f"; {little}" if (little := slight_words(chain)) else ""
    tail += _tail(_TAILS[0], unknown)
    tail += _tail(_TAILS[1], [link for link in links if link.verdict == "indicated"])
    depends = dict.fromkeys(fact for link in links if link.verdict == "depends" for fact in link.depends_on)
    tail += f"; {_TAILS[2]}: {'; '.join(depends)}" if depends else ""
    if nothing:
        stops = "; ".join(dict.fromkeys(link.title for link in nothing))
        return f"carries none of the {asked}: {stops}{tail}"
    if percent is not None and percent < 100 and worst is not None:
        surveyed = " as surveyed" if worst.verdict == "depends" else ""  # another end of a fact lets it pass
        stops = f"; then {worst.title} stops it{surveyed}" if worst.ratio is not None and worst.ratio > 1 else ""
        return f"carries {floor(percent)} % of the {asked}{stops}{tail}"
    if worst is None or not worst.ratio:
        return "nothing could be checked" + tail if unknown else "no force comes to it"
    near = f"{worst.title} at {worst.ratio:.2f}"
    return f"every link that could be checked carries the {asked}; the nearest to its limit is {near}{tail}"


def in_short(chain: Chain) -> str:
    """The headline of a chain with what cannot be checked, is only indicated or depends as a count, not by name."""
    head = chain.headline
    for words in _TAILS:
        head = head.partition(f"; {words}: ")[0]
    unknown = sum(1 for link in chain.links if link.status == "cannot be checked")
    return f"{head}; {unknown} more link{'s' if unknown > 1 else ''} cannot be checked" if unknown else head


def _tail(words: str, links: list[Link]) -> str:
    return f"; {words}: {'; '.join(dict.fromkeys(link.title for link in links))}" if links else ""


def first_to_fail(links: Iterable[Link]) -> tuple[str, ...]:
    """The order in which links are expected to give, by the line force at which each does, in words.

    Two neighbours whose ranges overlap are too close to call. A link with no strength at all gives first; links whose
    expected strength no rule gives are named last.
    """
    links = tuple(links)
    none = dict.fromkeys(link.title for link in links if link.status == "fails" and link.capacity == 0)
    lines = [f"{title}: at once, it has no strength that counts" for title in none]
    known = _together(links)
    for place, (expected, titles) in enumerate(known[:5]):
        after = known[place + 1][0] if place + 1 < len(known) else None
        close = "; too close to call against the next" if after and after.low_lb < expected.high_lb else ""
        lines.append(f"{' and '.join(titles)}: {spread_words(expected)}, {expected.manner}{close}")
    silent = [
        link
        for link in links
        if link.expected is None and link.ratio is not None and not link.minimum and "/drift/" not in link.address
    ]
    return (*lines, *((_silent(silent),) if silent else ()))


def _silent(links: list[Link]) -> str:
    """The links whose expected strength no rule gives, the first few by name."""
    titles = list(dict.fromkeys(link.title for link in links))
    more = f" and {len(titles) - _NAMED} more" if len(titles) > _NAMED else ""
    return f"no expected strength is known for: {'; '.join(titles[:_NAMED])}{more}"


def _together(links: Iterable[Link]) -> list[tuple[Expected, list[str]]]:
    """Expected strengths, the least first, each with all links that give by it; edge nailing gives with its panel."""
    found: dict[Expected, list[Link]] = {}
    for link in links:
        if link.expected is not None:
            found.setdefault(link.expected, []).append(link)
    return sorted(((e, _titles(alike)) for e, alike in found.items()), key=lambda pair: pair[0].best_lb)


def _titles(alike: list[Link]) -> list[str]:
    """What to call links that give together: panels by themselves, without the edges that are nailed with them."""
    sheathed = any("/sheathing/" in link.address for link in alike)
    return list(dict.fromkeys(link.title for link in alike if not (sheathed and "/nailing-" in link.address)))


def spread_words(expected: Expected) -> str:
    """The line force at which something is expected to give, with its range."""
    e = expected
    return f"at about {e.best_lb:,.0f} lb on the line ({e.low_lb:,.0f} to {e.high_lb:,.0f})"
