"""Laws of the house file: the fold of the log, undo, round trips, checks that never fall over, settling, work laid."""

from __future__ import annotations

import copy
import datetime
import json
from dataclasses import replace
from itertools import count
from typing import Any

from hypothesis import assume, given
from hypothesis import strategies as st

from groundsill.doors.decode import decode, decode_map
from groundsill.doors.encode import encode, to_map
from groundsill.house.changes import (
    EMPTY,
    Change,
    document,
    fold,
    later_than,
    merge,
    snapshot_from_map,
    snapshot_to_map,
)
from groundsill.house.conflicts import conflicts
from groundsill.house.difference import difference, stamped
from groundsill.house.missing import incomplete
from groundsill.house.settle import prepare, settle, uncertain_facts
from groundsill.house.undo import redo, undo
from groundsill.work.apply import apply, lay
from groundsill.work.checks import check_house
from groundsill.work.document import House
from groundsill.working.errors import BadSurvey
from tests.fixtures.small_house import small_house
from tests.fixtures.spoiled import leaves

HOUSE = small_house()
RAW = to_map(HOUSE)
LEAVES = list(leaves(RAW))
DEVICES = ("phone-a", "phone-b", "desk")
OBJECTS = ("survey.underfloor.bolts.aaa", "survey.underfloor.bolts.bbb", "survey.underfloor.bolts.aaa.nut-and-washer")
FIELDS = ("diameter_in", "station_in", "mark")
VALUES = st.sampled_from([None, 0, 1, 0.5, True, "x", {"value": 1, "state": "estimated"}, [1, 2]])
START = datetime.datetime(2026, 4, 2, 12, tzinfo=datetime.UTC)


# ---- Logs of several devices ----------------------------------------------------------------------------------------


class Crew:
    """Devices that write each on its own copy of the log and meet now and then."""

    def __init__(self) -> None:
        self.logs: dict[str, tuple[Change, ...]] = dict.fromkeys(DEVICES, ())
        self.numbers = count()
        self.acts = count()

    def new_id(self) -> str:
        return f"c{next(self.numbers)}"

    def sign(self, device: str, minute: int) -> dict[str, Any]:
        """What an act of a device is signed with; clocks may be minutes apart, but never behind what was seen."""
        time = later_than(self.logs[device], START + datetime.timedelta(minutes=minute))
        return {"device": device, "person": device, "time": time, "group": f"act-{next(self.acts)}"}

    def set(self, device: str, minute: int, path: str, name: str, value: Any) -> None:
        seen = fold(self.logs[device]).fields.get((path, name))
        told = {"object": path, "field": name, "seen": seen.value if seen else None, "new": value}
        self.write(device, Change(id=self.new_id(), **told, **self.sign(device, minute)))

    def make_or_take_away(self, device: str, minute: int, path: str, value: Any) -> None:
        there = fold(self.logs[device]).objects.get(path)
        seen = part(document(fold(self.logs[device])), path)
        new = None if there and there.value else {"mark": value}
        told = {"object": path, "field": "", "seen": seen, "new": new}
        self.write(device, Change(id=self.new_id(), **told, **self.sign(device, minute)))

    def take_back(self, device: str, minute: int, how: Any) -> None:
        found = how(self.logs[device], new_id=self.new_id, **self.sign(device, minute))
        self.write(device, *(found.changes if found else ()))

    def write(self, device: str, *changes: Change) -> None:
        self.logs[device] = merge(self.logs[device], changes)

    def meet(self, one: str, other: str) -> None:
        both = merge(self.logs[one], self.logs[other])
        self.logs[one] = self.logs[other] = both

    def all(self) -> tuple[Change, ...]:
        return merge((), [c for log in self.logs.values() for c in log])


def part(whole: Any, path: str) -> Any:
    for step in path.split("."):
        whole = whole.get(step) if isinstance(whole, dict) else None
    return whole


devices, minutes = st.sampled_from(DEVICES), st.integers(0, 30)
acts = st.one_of(
    st.tuples(st.just("set"), devices, minutes, st.sampled_from(OBJECTS), st.sampled_from(FIELDS), VALUES),
    st.tuples(st.just("make"), devices, minutes, st.sampled_from(OBJECTS), VALUES),
    st.tuples(st.just("undo"), devices, minutes, st.just(undo)),
    st.tuples(st.just("undo"), devices, minutes, st.just(redo)),
    st.tuples(st.just("meet"), devices, devices),
)


@st.composite
def crews(draw: st.DrawFn) -> Crew:
    crew = Crew()
    does = {"set": crew.set, "make": crew.make_or_take_away, "undo": crew.take_back, "meet": crew.meet}
    for name, *rest in draw(st.lists(acts, max_size=25)):
        does[name](*rest)
    return crew


def canonical(value: Any) -> str:
    return json.dumps(value, sort_keys=True)


@given(crews(), st.randoms(use_true_random=False))
def test_the_fold_does_not_depend_on_the_order_of_arrival(crew: Crew, rng: Any) -> None:
    log = list(crew.all())
    shuffled = list(log)
    rng.shuffle(shuffled)
    assert canonical(document(fold(shuffled))) == canonical(document(fold(log)))
    assert conflicts(shuffled) == conflicts(log)


@given(crews(), st.randoms(use_true_random=False), st.floats(0, 1))
def test_a_fold_from_a_snapshot_equals_a_fold_from_the_start(crew: Crew, rng: Any, share: float) -> None:
    log = list(crew.all())
    rng.shuffle(log)
    cut = int(share * len(log))
    stored = snapshot_from_map(json.loads(json.dumps(snapshot_to_map(fold(log[:cut])))))
    assert fold(log[cut:], stored) == fold(log)
    assert fold([], EMPTY) == EMPTY


@given(crews(), st.data())
def test_sending_changes_twice_changes_nothing(crew: Crew, data: st.DataObject) -> None:
    log = crew.all()
    again = data.draw(st.lists(st.sampled_from(log), max_size=10)) if log else []
    assert fold([*log, *again]) == fold(log)
    assert merge(log, again) == log
    assert conflicts([*log, *again]) == conflicts(log)


@given(crews())
def test_devices_that_have_met_show_one_document(crew: Crew) -> None:
    for device in DEVICES:
        crew.meet("desk", device)
    for device in DEVICES:
        crew.meet("desk", device)
    documents = {canonical(document(fold(log))) for log in crew.logs.values()}
    assert len(documents) == 1


@given(crews())
def test_a_device_alone_never_conflicts_with_itself(crew: Crew) -> None:
    alone = [c for c in crew.all() if c.device == "phone-a"]
    assert conflicts(alone) == ()


@given(crews(), devices, st.sampled_from(OBJECTS), st.lists(st.tuples(st.sampled_from(FIELDS), VALUES), min_size=1))
def test_undo_restores_the_document_and_redo_does_the_act_again(
    crew: Crew, device: str, path: str, edits: list[tuple[str, Any]]
) -> None:
    before = document(fold(crew.logs[device]))
    sign = crew.sign(device, 0)
    state = fold(crew.logs[device])
    for name, value in dict(edits).items():
        seen = state.fields.get((path, name))
        told = {"object": path, "field": name, "seen": seen.value if seen else None, "new": value}
        crew.write(device, Change(id=crew.new_id(), **told, **sign))
    after = document(fold(crew.logs[device]))
    crew.take_back(device, 0, undo)
    assert canonical(document(fold(crew.logs[device]))) == canonical(before)
    crew.take_back(device, 0, redo)
    assert canonical(document(fold(crew.logs[device]))) == canonical(after)


@given(crews(), devices)
def test_undo_leaves_every_field_that_another_device_wrote_last(crew: Crew, device: str) -> None:
    log = crew.logs[device]
    owner = {change.id: change.device for change in log}
    others = {place: w for place, w in fold(log).fields.items() if owner[w.key[2]] != device}
    crew.take_back(device, 0, undo)
    after = fold(crew.logs[device]).fields
    assert {place: after[place] for place in others} == others


# ---- Houses changed by chance ---------------------------------------------------------------------------------------

numbers = st.one_of(st.floats(-50, 400, allow_nan=False), st.integers(-3, 400), st.sampled_from([0, 0.5, 1e9, -1e-9]))
words = st.one_of(st.sampled_from(["line1", "line9", "sw0", "st1", "sound", "", "2 in", "1/2 in"]), st.text(max_size=8))
facts = st.fixed_dictionaries(
    {},
    optional={
        "value": st.one_of(numbers, words, st.booleans(), st.none()),
        "low": st.one_of(numbers, st.none()),
        "high": st.one_of(numbers, st.none()),
        "state": st.sampled_from(["measured", "estimated", "unknown", "absent"]),
        "how": words,
        "when": st.sampled_from(["", "2026", "2026-13-01", "tomorrow"]),
        "typed": st.sampled_from(["", "2 in", "about a foot"]),
    },
)


@st.composite
def changed_houses(draw: st.DrawFn) -> House:
    """The small house with some of its values replaced, as far as the door lets them in."""
    raw: dict[str, Any] = copy.deepcopy(RAW)
    for index in draw(st.lists(st.integers(0, len(LEAVES) - 1), min_size=1, max_size=8, unique=True)):
        keys, value = LEAVES[index]
        new = draw(st.one_of(numbers, facts) if isinstance(value, int | float) else st.one_of(words, facts))
        inside = inside_of(raw, keys[:-1])
        inside[keys[-1]] = new
        try:
            decode_map(raw)
        except BadSurvey:
            inside[keys[-1]] = value
    return decode_map(raw)


def inside_of(raw: Any, keys: tuple[Any, ...]) -> Any:
    for key in keys:
        raw = raw[int(key)] if isinstance(raw, list) else raw[key]
    return raw


@given(changed_houses())
def test_checks_and_all_that_reads_a_survey_hold_for_whatever_can_be_decoded(house: House) -> None:
    for fault in check_house(house):
        assert fault.path.split(".")[0] in ("survey", "alternatives", "record", "acceptances", "basis", "choices")
        assert fault.value
        assert fault.allowed
    assert len(incomplete(house.survey)) < 1000
    prepare(house)
    for name in (None, *house.alternatives):
        laid = apply(house, name)
        assert laid.survey is house.survey


@given(changed_houses())
def test_a_house_read_from_what_was_written_is_the_house(house: House) -> None:
    text = encode(house)
    assert decode(text) == house
    assert encode(decode(text)) == text


@given(changed_houses(), changed_houses())
def test_the_difference_of_two_houses_leads_from_one_to_the_other(one: House, other: House) -> None:
    numbered = count()
    sign = {"device": "d", "person": "p", "new_id": lambda: f"c{next(numbered)}"}
    first = stamped(difference({}, to_map(one), House), group="a", time="2026-04-02T12:00:00.000Z", **sign)
    then = stamped(difference(to_map(one), to_map(other), House), group="b", time="2026-04-02T12:00:01.000Z", **sign)
    assert decode_map(document(fold(first))) == one
    assert decode_map(document(fold([*then, *first]))) == other
    assert difference(to_map(one), to_map(one), House) == ()


# ---- Settling -------------------------------------------------------------------------------------------------------


@given(changed_houses(), st.data())
def test_one_fact_sent_to_an_end_changes_that_fact_alone(house: House, data: st.DataObject) -> None:
    settling = prepare(house)
    assume(settling.facts)
    ref = data.draw(st.sampled_from(settling.facts))
    end = data.draw(st.sampled_from(["low", "best", "high"]))
    turned, best = to_map(settling.at({ref: end}).house), to_map(settling.best.house)
    *way, last = ref.path.split(".")
    was = inside_of(best, tuple(way)).pop(last, None)
    now = inside_of(turned, tuple(way)).pop(last, None)
    assert turned == best
    value = now.get("value") if isinstance(now, dict) else now
    assert value == getattr(ref, end)
    assert (was == now) == (getattr(ref, end) == ref.best)


@given(changed_houses())
def test_a_settled_house_has_nothing_uncertain_left(house: House) -> None:
    assert uncertain_facts(settle(house).house) == ()


# ---- Laying work ----------------------------------------------------------------------------------------------------


@given(changed_houses(), st.randoms(use_true_random=False))
def test_every_piece_is_laid_or_reported_and_the_order_of_the_map_is_nothing(house: House, rng: Any) -> None:
    for alternative in house.alternatives.values():
        laid = lay(house.survey, alternative.pieces)
        ids = [key for key, _ in laid.pieces] + [m.id for m in laid.misplaced]
        assert sorted(ids) == sorted(alternative.pieces)
        turned = list(alternative.pieces.items())
        rng.shuffle(turned)
        assert lay(house.survey, dict(turned)) == laid


@given(changed_houses())
def test_laying_nothing_gives_the_survey_and_laying_what_was_laid_misplaces_nothing(house: House) -> None:
    bare = lay(house.survey, {})
    assert (bare.survey, bare.pieces, bare.misplaced) == (house.survey, (), ())
    for alternative in house.alternatives.values():
        laid = lay(house.survey, alternative.pieces)
        again = lay(house.survey, dict(laid.pieces))
        assert again.misplaced == ()
        assert again.pieces == laid.pieces


def test_the_small_house_is_sound_and_all_its_work_has_a_place() -> None:
    assert check_house(HOUSE) == ()
    assert apply(HOUSE, "strengthen").misplaced == ()
    assert replace(HOUSE) == HOUSE
