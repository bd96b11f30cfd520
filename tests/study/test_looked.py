"""What a fact cannot reach need not be worked out again: a study that leaves it out is the study that does not."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace

import pytest
from hypothesis import given, settings

from groundsill.doors.decode import decode
from groundsill.house.fact import Fact
from groundsill.house.settle import Settling, prepare
from groundsill.study import run
from groundsill.study.looked import Looked, looked_at
from groundsill.study.result import Study
from groundsill.study.states import State, states_of
from groundsill.work.document import House
from tests.architecture.reading import ROOT
from tests.fixtures.small_house import small_house
from tests.forces.houses import houses
from tests.loadpath.houses import doubtful_house
from tests.loadpath.inner_houses import with_ring, with_strip


def in_full(house: House) -> Study:
    """The study with every part of every state worked out again at every end of every fact."""

    def looks_at_all(settling: Settling[House], states: Sequence[State]) -> list[Looked]:
        every = frozenset(fact.path for fact in settling.facts)
        parts = defaultdict(lambda: every)
        return [Looked(every, every, parts, parts) for _ in states]

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("groundsill.study.ends.looked_at", looks_at_all)
        return run(house)


def bare(make) -> House:
    return make(replace(doubtful_house(), alternatives={}))


@pytest.mark.parametrize(
    "house",
    [small_house(), doubtful_house(), bare(with_strip), bare(with_ring)],
    ids=["small", "doubtful", "strip inside", "ring inside"],
)
def test_what_never_looks_at_a_fact_need_not_be_worked_out_again(house: House) -> None:
    assert run(house) == in_full(house)


@pytest.mark.proof
@pytest.mark.parametrize("name", ["larch-street", "ferry-hill", "heron-walk", "quarry-lane"])
def test_a_sample_worked_out_in_full_is_the_same_study(name: str) -> None:
    file = ROOT / "samples" / name / "house.json"
    house = decode(file.read_bytes(), file.name)
    assert run(house) == in_full(house)


@pytest.mark.proof
@given(houses())
@settings(max_examples=100)
def test_any_house_worked_out_in_full_is_the_same_study(house: House) -> None:
    assert run(house) == in_full(house)


def test_each_part_is_noted_with_the_facts_that_it_reads() -> None:
    house = doubtful_house()
    settling = prepare(house)
    first, *_ = looked_at(settling, states_of(house))
    weight = "survey.building.chimneys.chim1.pcf"
    assert weight in first.forces
    assert not any(weight in read for read in (*first.chains.values(), *first.soil.values()))
    sills = house.survey.underfloor.sills
    of_sills = {fact.path: sills[fact.path.split(".")[3]].line for fact in settling.facts if ".sills." in fact.path}
    assert len(of_sills) == 3
    for path, line in of_sills.items():
        assert [id for id, read in first.chains.items() if path in read] == [line]


def test_a_fact_that_several_parts_read_is_noted_with_each_of_them() -> None:
    """A reading remembers what one part asked; so each part is watched with a reading of its own."""
    house = doubtful_house()
    first, *_ = looked_at(prepare(house), states_of(house))
    deep = "survey.foundation.segments.fs2.depth_in"
    assert set(first.soil) == {chain.id for chain in run(house, ranges=False).runs[0].bodies}
    assert deep in first.soil["fs1"]
    assert [id for id, read in first.chains.items() if deep in read] == ["line2"]


def test_a_watched_fact_is_the_fact_it_was_made_of_and_tells_when_its_value_is_read() -> None:
    told: list[str] = []
    house = doubtful_house()
    settling = prepare(house)
    watched = settling.watched(told.append)
    assert told == []
    path = settling.facts[0].path
    fact = _at(watched.house, path)
    assert isinstance(fact, Fact)
    assert (fact.low, fact.high, fact.state) is not None
    assert told == []
    assert fact.value == settling.facts[0].best
    assert told == [path]
    assert fact == _at(settling.best.house, path)
    assert _at(settling.best.house, path) == fact
    assert hash(fact) == hash(_at(settling.best.house, path))
    assert replace(fact, value=None) != fact
    assert fact.known
    assert set(told) == {path}
    assert watched.house == settling.best.house


def _at(thing: object, path: str) -> object:
    for step in path.split("."):
        if isinstance(thing, dict):
            thing = thing[step]
        elif isinstance(thing, tuple):
            thing = thing[int(step)]
        else:
            thing = getattr(thing, step)
    return thing
