"""Studies made once for all tests of this room, and what is asked of them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass
from functools import cache
from typing import Any

from groundsill.loadpath.chain import Chain, Link
from groundsill.study import Run, Study, run
from groundsill.work.document import House
from tests.fixtures.small_house import small_house
from tests.loadpath.houses import doubtful_house, known_house, sample_house

HOUSES: dict[str, Callable[[], House]] = {
    "known": known_house, "doubtful": doubtful_house, "small": small_house, "sample": sample_house,
}  # fmt: skip


@cache
def study_of(name: str) -> Study:
    """The study of one of the houses over all its ranges."""
    return run(HOUSES[name]())


def chains_in(found: Run) -> tuple[Chain, ...]:
    """Lines, then foundation bodies."""
    return (*found.chains, *found.bodies)


def links_in(study: Study) -> dict[tuple[str, str], Link]:
    """Every link by its state and its address."""
    return {(r.key, link.address): link for r in study.runs for chain in chains_in(r) for link in chain.links}


def run_named(study: Study, key: str) -> Run:
    """The load path in one state."""
    (found,) = [r for r in study.runs if r.key == key]
    return found


def chain_named(study: Study, key: str, id: str) -> Chain:
    """The chain of one line or body in one state."""
    (found,) = [chain for chain in chains_in(run_named(study, key)) if chain.id == id]
    return found


def stage_of(link: Link) -> str:
    """The stage a link stands in, by its address."""
    return link.address.split("/")[2]


def badness(link: Link) -> float:
    """How far a link is from passing: its ratio, none at all where there is no capacity."""
    if link.status == "does not apply":
        return 0.0
    return float("inf") if link.ratio is None else link.ratio


def inside(thing: Any, path: str = "") -> Iterator[tuple[str, Any]]:
    """Everything that stands anywhere in a result, with its place."""
    yield path, thing
    if is_dataclass(thing) and not isinstance(thing, type):
        for f in fields(thing):
            yield from inside(getattr(thing, f.name), f"{path}.{f.name}")
    elif isinstance(thing, dict):
        for key, item in thing.items():
            yield from inside(item, f"{path}.{key}")
    elif isinstance(thing, tuple | list):
        for n, item in enumerate(thing):
            yield from inside(item, f"{path}[{n}]")
