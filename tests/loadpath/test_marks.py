"""A doubt travels: whatever a figure or a fact moves carries its mark, down to the soil, and so does what it decides.

Which links stand on a fact is found without asking the marks: the fact is moved, and the links whose status, ratio,
demand or capacity changes are counted.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from functools import cache
from random import Random
from typing import Any

import pytest

from groundsill.house.fact import Fact, unknown
from groundsill.house.model import FieldFacts, fields_of
from groundsill.house.settle import End, Settling, prepare
from groundsill.loadpath.chain import Link
from groundsill.study import Study, run
from groundsill.study.looked import Parts
from groundsill.study.states import states_of
from groundsill.work.document import House
from groundsill.work.pieces import BoltPiece, Piece, SplicePiece
from groundsill.working.errors import GroundsillError
from groundsill.working.value import Mark
from tests.loadpath.asking import HOUSES, links_in, study_of
from tests.loadpath.houses import known_house, listed_otherwise, sample_house, shuffled, with_pieces
from tests.properties import test_loadpath_laws as laws

Key = tuple[str, str]
Told = tuple[str, float | None, float | None, float | None]


def figures(link: Link) -> Told:
    return link.status, link.ratio, link.demand, link.capacity


# --- every fact of a house in doubt ----------------------------------------------------------------------------------


def by_eye(fact: Fact[Any], about: FieldFacts) -> Fact[Any]:
    """The fact as an estimate that may lie well to either side, or be something else altogether."""
    best = fact.value
    if isinstance(best, bool):
        ends: tuple[Any, Any] = (False, True)
    elif isinstance(best, str):
        others = [word for word in about.choices if word != best] or [best]
        ends = (others[-1], others[0])
    else:
        low, high = (0.7 * best, 1.35 * best) if best else (0.0, 1.0)
        ends = (max(low, about.least or low), min(high, about.most or high))
    return replace(fact, state="estimated", low=ends[0], high=ends[1], how="by eye")


def all_by_eye(thing: Any) -> Any:
    """Every fact of a survey that has a value, estimated."""
    if isinstance(thing, dict):
        return {key: all_by_eye(item) for key, item in thing.items()}
    if isinstance(thing, tuple):
        return tuple(all_by_eye(item) for item in thing)
    if not is_dataclass(thing) or isinstance(thing, type):
        return thing
    about = {f.name: f for f in fields_of(type(thing))}
    changed = {}
    for f in fields(thing):
        value = getattr(thing, f.name)
        if isinstance(value, Fact):
            changed[f.name] = by_eye(value, about[f.name]) if value.value is not None else value
        else:
            changed[f.name] = all_by_eye(value)
    return replace(thing, **changed)


@cache
def doubted(name: str, floor: str = "as the rule says") -> tuple[House, Settling[House], Study]:
    """A house with every fact estimated, read for settling, and its study at the best of all."""
    house = laws.lean_house() if name == "known" else HOUSES[name]()
    house = replace(house, survey=all_by_eye(prepare(house).best.house.survey))
    house = replace(house, choices=replace(house.choices, floor=floor, floor_reason="a test"))  # type: ignore[arg-type]
    return house, prepare(house), run(house, ranges=False)


def moved_by(parts: Parts, path: str) -> Iterator[dict[Key, Link]]:
    """Every link of every state with one fact at either end of its range."""
    ends: tuple[End, End] = ("low", "high")
    for end in ends:
        try:
            yield {
                (state.key, link.address): link
                for n, state in enumerate(parts.states)
                for chain in parts.chains(n, {path: end})
                for link in chain.links
            }
        except GroundsillError:  # no force can be worked out there: nothing to compare
            continue


@pytest.mark.parametrize(
    ("name", "floor"), [("known", "as the rule says"), ("known", "envelope"), ("small", "as the rule says")]
)
def test_a_fact_marks_every_link_that_it_moves(name: str, floor: str) -> None:
    house, settling, study = doubted(name, floor)
    here, lost, moves = links_in(study), set(), 0
    parts = Parts(settling, states_of(house))
    for fact in settling.facts:
        marks = set(settling.best.marks[fact.path])
        for there in moved_by(parts, fact.path):
            for key in here.keys() & there.keys():
                if figures(here[key]) != figures(there[key]):
                    moves += 1
                    if not marks <= set(here[key].marks):
                        lost.add((fact.path, key))
    assert sorted(lost) == []
    assert moves > 1000


def test_measured_facts_leave_no_mark() -> None:
    """Nothing is marked by a fact that nobody doubts: what is left are the figures of the standards."""
    kinds = {mark.kind for link in links_in(study_of("known")).values() for mark in link.marks}
    assert kinds <= {"from memory", "unverified"}


@pytest.mark.parametrize("path", [
    "survey.underfloor.sills.si2.damp", "survey.underfloor.bolts.bt2.nut", "survey.underfloor.sills.si4.gap_in",
])  # fmt: skip
def test_a_fact_of_one_line_marks_no_other_line(path: str) -> None:
    """A sill or a bolt says nothing about another line's chain, nor about the soil."""
    _, settling, study = doubted("known")
    of_line = {"si2": "line2", "bt2": "line1", "si4": "line4"}[path.split(".")[3]]
    (mark,) = settling.best.marks[path]
    reached = {link.address.split("/")[1] for link in links_in(study).values() if mark in link.marks}
    assert reached == {of_line}


@pytest.mark.parametrize("name", ["doubtful", "small", "sample"])
def test_an_uncertain_fact_marks_every_link_that_either_end_moves(name: str) -> None:
    house, told, lost = HOUSES[name](), links_in(study_of(name)), set()
    settling = prepare(house)
    parts = Parts(settling, states_of(house))
    for fact in settling.facts:
        wanted = set(settling.best.marks.get(fact.path, ()))
        for there in moved_by(parts, fact.path):
            for key in told.keys() & there.keys():
                if figures(told[key]) != figures(there[key]) and not wanted <= set(told[key].marks):
                    lost.add((fact.path, key))
    assert sorted(lost) == []


# --- what a mark must pass on its way --------------------------------------------------------------------------------


def marked_by(study: Study, mark: Mark, state: str = "strengthen") -> set[str]:
    return {address for (key, address), link in links_in(study).items() if key == state and mark in link.marks}


def test_a_chimney_taken_as_standing_free_is_a_doubt_about_every_line() -> None:
    """Nobody saw whether it is tied: its weight is left out on a guess, and every force would change with it."""
    house = known_house()
    chimneys = {
        k: replace(c, base="own footing", tied=Fact(value=False, low=False, high=True, state="estimated"))
        for k, c in house.survey.building.chimneys.items()
    }
    house = replace(house, survey=replace(house.survey, building=replace(house.survey.building, chimneys=chimneys)))
    study = run(house, ranges=False)
    (mark,) = prepare(house).best.marks["survey.building.chimneys.chim1.tied"]
    for line in laws.LINES:
        assert f"line/{line}/floor-boards/{line}/both" in marked_by(study, mark)
    assert any("chimney" in w and "its weight is left out" in w for w in study.warnings)
    (nothing,) = [item for item in study.forces.items if "taken as not tied" in item.label]
    assert nothing.weight_lb == 0.0


def test_a_chimney_nobody_looked_at_is_told_with_its_id_where_it_has_no_mark() -> None:
    house = known_house()
    chimneys = {
        k: replace(c, base="own footing", mark="", tied=unknown()) for k, c in house.survey.building.chimneys.items()
    }
    house = replace(house, survey=replace(house.survey, building=replace(house.survey.building, chimneys=chimneys)))
    told = [w for w in run(house, ranges=False).warnings if w.startswith("chimney")]
    assert told == ["chimney chim1: not known for sure whether it is tied to the framing; its weight is counted"]


def test_a_chimney_on_the_floor_is_counted_whatever_it_is_tied_to() -> None:
    house = known_house()
    chimneys = {k: replace(c, base="floor", tied=unknown()) for k, c in house.survey.building.chimneys.items()}
    house = replace(house, survey=replace(house.survey, building=replace(house.survey.building, chimneys=chimneys)))
    assert not [w for w in run(house, ranges=False).warnings if w.startswith("chimney")]


def test_what_passes_a_splice_rests_on_the_bolts_of_every_piece_tied_in_the_row() -> None:
    """Bolts of one piece gone and a splice to the other: its own links stand on what the other's bolts hold."""

    def no_bolts_near_the_start(_: str, piece: Piece) -> Piece | None:
        gone = isinstance(piece, BoltPiece) and piece.line == "line1" and piece.station_in < 150
        return None if gone else piece

    house = with_pieces(laws.lean_house(), "strengthen", no_bolts_near_the_start)
    under = house.survey.underfloor
    alternative = house.alternatives["strengthen"]
    joint = under.sills["si1a"].to_in
    splice = SplicePiece(mark="K1", line="line1", member="sill", station_in=joint, capacity_lb=3000.0)
    pieces = {**alternative.pieces, "k1": splice}
    house = replace(house, alternatives={"strengthen": replace(alternative, pieces=pieces)})
    damp = replace(under.sills["si1b"], damp=Fact(value=False, low=False, high=True, state="estimated"))
    survey = replace(house.survey, underfloor=replace(under, sills=under.sills | {"si1b": damp}))
    house = replace(house, survey=survey)
    (mark,) = prepare(house).best.marks["survey.underfloor.sills.si1b.damp"]
    reached = marked_by(run(house, ranges=False), mark)
    for stage in ("sill-bolts", "bolts-concrete", "sill-joints"):
        assert f"line/line1/{stage}/si1a/both" in reached


def test_a_joint_that_need_pass_nothing_says_by_which_figures() -> None:
    """Each piece holds its own force: that rests on every figure of both."""
    spared = {
        link.address: link.marks
        for (key, _), link in links_in(study_of("sample")).items()
        if "/sill-joints/" in link.address and "holds its own force" in link.reason
    }
    assert spared
    assert all(marks for marks in spared.values())


def test_the_footing_under_a_hold_down_says_by_which_pull() -> None:
    lifted = [link for link in links_in(study_of("sample")).values() if "-footing-" in link.address]
    assert lifted
    for link in lifted:
        assert link.marks
        assert (link.demand is None) == (link.status == "does not apply")


# --- the order of lists, and directions ------------------------------------------------------------------------------


@pytest.mark.parametrize("seed", [2, 5, 9])
@pytest.mark.parametrize("house", [known_house, sample_house])
def test_the_order_of_lists_changes_no_figure(house: Any, seed: int) -> None:
    here, there = run(house(), ranges=False), run(listed_otherwise(house(), Random(seed)), ranges=False)
    assert laws.rows(here) == laws.rows(there)


def test_facts_come_in_the_same_order_however_the_file_is_written() -> None:
    house = HOUSES["small"]()
    assert prepare(shuffled(house, Random(1))).facts == prepare(house).facts


def test_a_link_of_one_direction_says_so() -> None:
    for name in ("known", "sample"):
        for link in links_in(study_of(name)).values():
            way = link.address.split("/")[-1]
            if link.address.startswith("line/") and way[0] in "+-":
                assert link.direction == way[0], link.address
