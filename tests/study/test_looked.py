"""What a fact cannot reach need not be worked out again: a study that leaves it out is the study that does not."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings

from groundsill.doors.decode import decode
from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces
from groundsill.house.fact import Fact
from groundsill.house.settle import End, prepare
from groundsill.loadpath.chain import Chain
from groundsill.loadpath.path import chain_of
from groundsill.study import run
from groundsill.study.looked import Parts
from groundsill.study.result import Study
from groundsill.study.states import reading_of, states_of
from groundsill.work.document import House
from groundsill.work.pieces import Piece
from tests.architecture.reading import ROOT
from tests.fixtures.small_house import small_house
from tests.forces.houses import houses
from tests.loadpath.houses import doubtful_house
from tests.loadpath.inner_houses import with_ring, with_strip


def in_full(house: House) -> Study:
    """The study with every part of every state worked out again at every end of every fact."""

    def worked_out(parts: Parts, part: object, n: int, ends: Mapping[str, End], work: Callable[[Reading], object]):
        settled = prepare(house).at(ends)
        return work(reading_of(parts.states[n], Reading(settled.house, settled.marks)))

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("groundsill.study.looked.Parts._once", worked_out)
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


def how_often(house: House, many: Sequence[Mapping[str, End]]) -> Counter[str]:
    """How often each line of the house as found is worked out over several sets of ends."""
    done: Counter[str] = Counter()

    def counted(reading: Reading, forces: Forces, id: str, pieces: Sequence[tuple[str, Piece]]) -> Chain:
        done[id] += 1
        return chain_of(reading, forces, id, pieces)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("groundsill.study.looked.chain_of", counted)
        parts = Parts(prepare(house), states_of(house)[:1])
        for ends in many:
            parts.chains(0, ends)
    return done


def test_a_fact_of_one_sill_has_its_own_line_alone_worked_out_again() -> None:
    house = doubtful_house()
    lines = list(house.survey.underfloor.lines)
    assert how_often(house, [{}, {}]) == dict.fromkeys(lines, 1)
    thick = "survey.underfloor.sills.si2.thickness_in"
    assert house.survey.underfloor.sills["si2"].line == "line2"
    again = how_often(house, [{}, {thick: "low"}, {thick: "high"}, {thick: "low"}])
    assert again == {id: 3 if id == "line2" else 1 for id in lines}


def test_a_weight_has_every_line_that_is_relied_on_worked_out_again_unless_it_stands_as_it_did() -> None:
    house = doubtful_house()
    weight = "survey.building.chimneys.chim1.pcf"
    again = how_often(house, [{}, {weight: "low"}, {weight: "low"}])
    assert again == dict.fromkeys(house.survey.underfloor.lines, 2)


def test_a_fact_that_several_parts_read_is_told_to_each_of_them() -> None:
    """A reading remembers what one part asked; so each part is worked out on a reading of its own."""
    house = doubtful_house()
    parts = Parts(prepare(house), states_of(house)[:1])
    deep = "survey.foundation.segments.fs2.depth_in"
    best, low = ({chain.id: chain for chain in parts.chains(0, ends)} for ends in ({}, {deep: "low"}))
    assert {id for id in best if best[id] is not low[id]} == {"line2", "fs1"}


def test_a_watched_fact_is_the_fact_it_was_made_of_and_tells_when_its_value_is_read() -> None:
    told: list[str] = []
    settling = prepare(doubtful_house())
    watched = settling.watched(told.append)
    assert told == []
    path = settling.facts[0].path
    plain, fact = _at(settling.best.house, path), _at(watched.best.house, path)
    assert isinstance(fact, Fact)
    assert isinstance(plain, Fact)
    assert (fact.low, fact.high, fact.state) == (plain.low, plain.high, plain.state)
    assert told == []
    assert fact.value == plain.value
    assert told == [path]
    assert fact == plain
    assert plain == fact
    assert hash(fact) == hash(plain)
    assert fact.known
    told.clear()
    assert replace(fact, value=None) != fact
    assert set(told) == {path}
    assert watched.best.house == settling.best.house


def test_a_watched_fact_at_an_end_tells_too() -> None:
    told: list[str] = []
    settling = prepare(doubtful_house())
    first, other, *_ = settling.facts
    at_end = settling.watched(told.append).at({first.path: "low"}).house
    assert _at(at_end, first.path).value == first.low
    assert _at(at_end, other.path).value == other.best
    assert told == [first.path, other.path]


def _at(thing: Any, path: str) -> Any:
    for step in path.split("."):
        if isinstance(thing, dict):
            thing = thing[step]
        elif isinstance(thing, tuple):
            thing = thing[int(step)]
        else:
            thing = getattr(thing, step)
    return thing
