"""Item by item, whether work makes any existing element worse off: its ratio with the work against its ratio before.

The code for existing buildings asks this of all work, voluntary work too. An element is existing where it has a ratio
in both states; what the work adds stands in one state only. A new stiff line can draw force to an old one where the
floor is taken as rigid, so this is compared and never taken for granted.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from groundsill.loadpath.chain import Chain
from groundsill.loadpath.storey_above import StoreyAbove
from groundsill.standards.iebc_2021.alterations import raised_share, within_allowance
from groundsill.working.sheet import quiet

__all__ = ["CLAUSE", "ExistingElement", "ExistingElements", "compared", "rise_words"]

CLAUSE = "IEBC 2021 503.4, ten per cent, from memory, to be confirmed"
_SAME = 1e-9


@dataclass(frozen=True, slots=True)
class ExistingElement:
    """One existing element before and with the work: ``rise`` is the share by which its ratio rises, or falls.

    ``allowed`` says that the rise is within the existing-building code's allowance or the element still carries what is
    asked; it is true of every ratio that does not rise.
    """

    address: str
    mark: str
    title: str
    before: float
    after: float
    rise: float
    allowed: bool


@dataclass(frozen=True, slots=True)
class ExistingElements:
    """Every existing element of one state against the house as found.

    ``rising`` holds those whose ratio rises. ``compared`` counts all that have a ratio in both states, ``storeys``
    those of them that stand above the lowest floor; ``without`` are existing elements that had a ratio as found and
    have none with the work, by title.
    """

    compared: int
    storeys: int
    rising: tuple[ExistingElement, ...]
    without: tuple[str, ...]
    headline: str


def compared(
    before: Sequence[Chain],
    after: Sequence[Chain],
    storeys_before: Sequence[StoreyAbove] = (),
    storeys_after: Sequence[StoreyAbove] = (),
) -> ExistingElements:
    """Compare a state with the house as found: lines, foundation bodies, and the storeys above."""
    old, new = _of_chains(before), _of_chains(after)
    old_above, new_above = _of_storeys(storeys_before), _of_storeys(storeys_after)
    pairs = [*_pairs(old, new), *_pairs(old_above, new_above)]
    rising = tuple(pair for pair in pairs if pair.rise > _SAME)
    lost = [old[key] for key in old if key in new and new[key][2] is None and old[key][2] is not None]
    above = len(_pairs(old_above, new_above))
    without = tuple(dict.fromkeys(f"{mark}: {title}" for mark, title, _ in lost))
    return ExistingElements(len(pairs), above, rising, without, rise_words(len(pairs), above, rising, without))


_Elements = dict[str, tuple[str, str, float | None]]


def _of_chains(chains: Iterable[Chain]) -> _Elements:
    return {link.address: (c.mark, link.title, link.ratio) for c in chains if c.relied_on for link in c.links}


def _of_storeys(storeys: Iterable[StoreyAbove]) -> _Elements:
    return {
        check.address: (check.mark or check.wall, f"wall of {storey.name}, {check.finish}", check.ratio)
        for storey in storeys
        for check in storey.checks
    }


def _pairs(old: _Elements, new: _Elements) -> list[ExistingElement]:
    """The elements that have a ratio in both states, in the order they stand in as found."""
    found = []
    for address, (mark, title, before) in old.items():
        after = new.get(address, (mark, title, None))[2]
        if before is None or after is None or before <= 0:
            continue
        with quiet():  # the ratios are those of the checks; comparing them is no step of any check
            found.append(
                ExistingElement(
                    address, mark, title, before, after, raised_share(before, after), within_allowance(before, after)
                )
            )
    return found


def rise_words(count: int, above: int, rising: Sequence[ExistingElement], without: Sequence[str] = ()) -> str:
    """What the comparison comes to, in one sentence."""
    if not count:
        return "no existing element has a ratio in both states to compare"
    walls = f", {above} of them walls of the storeys above," if above else ""
    many = "existing element" if count == 1 else "existing elements"
    lead = f"{count} {many}{walls} {'was' if count == 1 else 'were'} compared with the house as found"
    lost = f"; no ratio is left to compare for {'; '.join(without)}" if without else ""
    if not rising:
        return f"{lead}: none has a higher ratio with the work{lost}"
    beyond = [one for one in rising if not one.allowed]
    most = max(rising, key=lambda one: one.rise)
    told = f"{most.title} at {most.mark}, {most.before:.2f} before and {most.after:.2f} with the work"
    if beyond:
        far = max(beyond, key=lambda one: one.rise)
        told = f"{far.title} at {far.mark}, {far.before:.2f} before and {far.after:.2f} with the work"
        return (
            f"{lead}: {len(rising)} rise{'s' if len(rising) == 1 else ''} with the work, {len(beyond)} beyond what is "
            f"allowed ({CLAUSE}); most of all {told}{lost}"
        )
    return (
        f"{lead}: {len(rising)} rise{'s' if len(rising) == 1 else ''} within what is allowed; most of all {told}{lost}"
    )
