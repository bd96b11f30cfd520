"""The log of a house under survey on two phones: folded, taken back, told where two people wrote past each other."""

from __future__ import annotations

import datetime
import json
from collections.abc import Callable
from dataclasses import replace
from itertools import count
from typing import Any

import pytest

from groundsill.doors.decode import decode_map
from groundsill.doors.encode import to_map
from groundsill.house.changes import (
    Change,
    change_from_map,
    change_to_map,
    document,
    fold,
    later_than,
    merge,
    name_version,
    snapshot_from_map,
    snapshot_to_map,
    version_document,
)
from groundsill.house.conflicts import Conflict, conflicts
from groundsill.house.difference import difference, stamped, why_no_place
from groundsill.house.undo import redo, undo
from groundsill.work.document import House
from groundsill.working.errors import BadSurvey
from tests.fixtures.small_house import small_house

BOLT = "survey.underfloor.bolts.k7h2"
NOON = datetime.datetime(2026, 4, 2, 12, 0, tzinfo=datetime.UTC)


def at(second: int) -> str:
    return f"2026-04-02T{12 + second // 3600}:{second // 60 % 60:02d}:{second % 60:02d}.000Z"


def change(id: str, second: int, device: str = "phone-a", **rest: Any) -> Change:
    told = {"object": BOLT, "field": "diameter_in", "seen": None, "new": None, "group": f"act-{id}", "person": device}
    return Change(id=id, time=at(second), device=device, **{**told, **rest})


def made(id: str = "c0", second: int = 0, device: str = "phone-a", **values: Any) -> Change:
    new = {"line": "line1", "station_in": 12, "diameter_in": 0.5, **values}
    return change(id, second, device, field="", new=new)


def bolt_of(*log: Change) -> Any:
    return document(fold(log)).get("survey", {}).get("underfloor", {}).get("bolts", {}).get("k7h2")


def ids(prefix: str) -> Callable[[], str]:
    counter = count()
    return lambda: f"{prefix}{next(counter)}"


# ---- Folding --------------------------------------------------------------------------------------------------------


def test_a_bolt_is_made_changed_and_taken_away() -> None:
    first = made()
    bigger = change("c1", 5, seen=0.5, new=0.625)
    gone = change("c2", 9, field="", seen=bolt_of(first, bigger), new=None)
    assert bolt_of(first) == {"line": "line1", "station_in": 12, "diameter_in": 0.5}
    assert bolt_of(first, bigger)["diameter_in"] == 0.625
    assert bolt_of(first, bigger, gone) is None


def test_the_later_of_two_changes_stands_whichever_arrives_first() -> None:
    a, b = change("c1", 5, seen=0.5, new=0.625), change("c2", 6, "phone-b", seen=0.5, new=0.75)
    assert bolt_of(made(), a, b)["diameter_in"] == bolt_of(b, a, made())["diameter_in"] == 0.75


def test_changes_of_one_moment_are_ordered_by_device_and_id() -> None:
    a, b = change("c9", 5, "phone-a", new=1), change("c1", 5, "phone-b", new=2)
    assert bolt_of(b, a)["diameter_in"] == bolt_of(a, b)["diameter_in"] == 2


def test_a_value_of_none_leaves_the_field_out() -> None:
    assert bolt_of(made(), change("c1", 5, seen=0.5, new=None)) == {"line": "line1", "station_in": 12}


def test_an_edit_of_an_object_taken_away_waits_and_comes_back_with_it() -> None:
    gone = change("c1", 5, field="", seen={}, new=None)
    edit = change("c2", 6, "phone-b", seen=0.5, new=0.75)
    back = change("c3", 7, field="", new={})
    assert bolt_of(made(), gone, edit) is None
    assert bolt_of(made(), gone, edit, back)["diameter_in"] == 0.75


def test_what_lies_in_an_object_goes_with_it() -> None:
    wall = "survey.building.walls.wl1"
    window = f"{wall}.openings.wo1"
    log = [
        change("c0", 0, object=wall, field="", new={"storey": "st1"}),
        change("c1", 1, object=window, field="", new={"head_in": 80}),
        change("c2", 2, object=wall, field="", seen={}, new=None),
    ]
    assert document(fold(log)) == {}
    assert document(fold(log[:2]))["survey"]["building"]["walls"]["wl1"]["openings"]["wo1"] == {"head_in": 80}


def test_the_document_shares_nothing_with_the_log() -> None:
    points = [{"x_in": 0, "y_in": 0}]
    log = [change("c0", 0, object="alternatives.a01.pieces.p01", field="path", new=points)]
    whole = document(fold(log))
    whole["alternatives"]["a01"]["pieces"]["p01"]["path"][0]["x_in"] = 99
    assert points == [{"x_in": 0, "y_in": 0}]
    assert document(fold(log))["alternatives"]["a01"]["pieces"]["p01"]["path"][0]["x_in"] == 0


def test_one_id_for_two_changes_is_refused() -> None:
    with pytest.raises(BadSurvey, match=r"changes\.c1: a change of .*k7h2\.nut is not allowed; an id of its own"):
        merge([change("c1", 5, new=1)], [change("c1", 5, field="nut", new="tight")])
    with pytest.raises(BadSurvey, match="an id of its own"):
        merge([change("c1", 5, new=1)], [change("c1", 5, new=True)])


def test_a_clock_that_lags_still_writes_after_what_it_has_seen() -> None:
    seen = [change("c1", 3600, new=1)]
    assert later_than(seen, NOON) == "2026-04-02T13:00:00.001Z"
    assert later_than([], NOON) == "2026-04-02T12:00:00.000Z"
    west = datetime.timezone(datetime.timedelta(hours=-7))
    assert later_than([], NOON.astimezone(west)) == "2026-04-02T12:00:00.000Z"


# ---- To and from a house --------------------------------------------------------------------------------------------


def log_of(house: House, before: House | None = None, prefix: str = "c", second: int = 0) -> tuple[Change, ...]:
    drafts = difference(to_map(before) if before else {}, to_map(house), House)
    return stamped(drafts, group=prefix, device="phone-a", person="RT", time=at(second), new_id=ids(prefix))


def test_a_house_written_as_changes_folds_back_into_the_same_house() -> None:
    house = small_house()
    log = log_of(house)
    assert decode_map(document(fold(log))) == house
    assert decode_map(document(fold(reversed(log)))) == house


def test_every_change_of_a_house_has_a_place_in_the_document() -> None:
    for c in log_of(small_house()):
        assert why_no_place(House, c.object, c.field) is None


@pytest.mark.parametrize(
    ("path", "name", "why"),
    [
        ("", "units", None),
        ("survey.site", "hazard", "survey.site has no field hazard"),
        ("survey.site.hazard", "", None),
        ("survey.site.soil", "", "survey.site.soil is always there: it is neither made nor taken away"),
        ("", "", "the document is always there: it is neither made nor taken away"),
        ("survey.underfloor.bolts", "nut", "survey.underfloor.bolts is a collection, not an object"),
        ("survey.underfloor.bolts.k7h2", "nut", None),
        ("survey.underfloor.bolts.k7h2", "colour", "survey.underfloor.bolts.k7h2 has no field colour"),
        ("survey.nuts.k7h2", "nut", "survey.nuts.k7h2 leads to no object: there is no nuts in it"),
        (f"{BOLT}.nut", "value", f"{BOLT}.nut leads to no object: there is no nut in it"),
        ("alternatives.a01.pieces.p01", "embedment_in", None),
    ],
)  # fmt: skip
def test_a_change_that_has_no_place_in_a_house_is_told_so(path: str, name: str, why: str | None) -> None:
    assert why_no_place(House, path, name) == why


def test_an_edit_gives_one_change_of_one_field() -> None:
    house = small_house()
    bolts = house.survey.underfloor.bolts
    moved = {**bolts, "bt1": replace(bolts["bt1"], station_in=30.0)}
    edited = replace(house, survey=replace(house.survey, underfloor=replace(house.survey.underfloor, bolts=moved)))
    (draft,) = difference(to_map(house), to_map(edited), House)
    assert (draft.object, draft.field) == ("survey.underfloor.bolts.bt1", "station_in")
    assert (draft.seen, draft.new) == (24, 30)


def test_making_removing_and_setting_whole_values_are_told_apart() -> None:
    house = small_house()
    survey = house.survey
    walls = {key: wall for key, wall in survey.building.walls.items() if key != "wl4"}
    joists = {k: replace(f, outline=f.outline[::-1]) for k, f in survey.underfloor.joists.items() if k == "jf1"}
    changed = replace(
        house,
        survey=replace(
            survey,
            site=replace(survey.site, hazard=None),
            building=replace(survey.building, walls=walls),
            underfloor=replace(survey.underfloor, joists={**survey.underfloor.joists, **joists}),
        ),
        alternatives={},
    )
    drafts = difference(to_map(house), to_map(changed), House)
    assert [(d.object, d.field, d.new is None) for d in drafts] == [
        ("survey.site.hazard", "", True),
        ("survey.building.walls.wl4", "", True),
        ("survey.underfloor.joists.jf1", "outline", False),
        ("alternatives.strengthen", "", True),
        ("alternatives.leave", "", True),
    ]
    log = log_of(house) + log_of(changed, house, "d", 60)
    assert decode_map(document(fold(log))) == changed


def test_a_named_version_keeps_its_meaning_when_older_changes_arrive_late() -> None:
    log = [made(), change("c1", 50, seen=0.5, new=0.625)]
    version = name_version(log, id="v1", name="first visit", device="phone-a", person="RT", time=at(60))
    late = change("b1", 10, "phone-b", field="nut", new="tight")
    later = change("c2", 70, seen=0.625, new=0.75)
    assert version_document([late, later, *log], version) == document(fold(log))


# ---- Conflicts ------------------------------------------------------------------------------------------------------


def test_two_people_who_set_one_field_from_the_same_value_to_different_ones_are_told() -> None:
    a, b = change("c1", 5, seen=0.5, new=0.625), change("b1", 6, "phone-b", seen=0.5, new=0.75)
    assert conflicts([made(), a, b]) == (Conflict("two values", BOLT, "diameter_in", ("c1", "b1")),)
    assert conflicts([b, a, made()]) == conflicts([made(), a, b])


def test_the_same_new_value_twice_is_no_conflict() -> None:
    assert conflicts([made(), change("c1", 5, seen=0.5, new=1), change("b1", 6, "phone-b", seen=0.5, new=1)]) == ()


def test_one_person_changing_their_mind_is_no_conflict() -> None:
    log = [
        made(),
        change("c1", 5, seen=0.5, new=1),
        change("c2", 6, seen=1, new=0.5),
        change("c3", 7, seen=0.5, new=2),
    ]
    assert conflicts(log) == ()


def test_writing_on_top_of_what_another_wrote_is_no_conflict_even_back_to_the_old_value() -> None:
    log = [
        made(), change("c1", 5, seen=0.5, new=1), change("b1", 6, "phone-b", seen=1, new=0.5),
        change("b2", 7, "phone-b", seen=0.5, new=2),
    ]  # fmt: skip
    assert conflicts(log) == ()


def test_three_people_make_one_conflict_of_three_changes() -> None:
    log = [
        made(), change("c1", 5, seen=0.5, new=1), change("b1", 6, "phone-b", seen=0.5, new=2),
        change("d1", 7, "phone-d", seen=0.5, new=3),
    ]  # fmt: skip
    assert conflicts(log) == (Conflict("two values", BOLT, "diameter_in", ("c1", "b1", "d1")),)


def test_a_conflict_is_closed_when_its_loser_writes_again_or_somebody_settles_it() -> None:
    log = [made(), change("c1", 5, seen=0.5, new=1), change("b1", 6, "phone-b", seen=0.5, new=2)]
    assert len(conflicts(log)) == 1
    assert conflicts([*log, change("c2", 9, seen=2, new=1)]) == ()
    assert conflicts([*log, change("x1", 9, "desk", seen=2, new=2, settles=("c1", "b1"))]) == ()
    assert len(conflicts([*log, change("b2", 9, "phone-b", seen=2, new=3)])) == 1


def test_a_conflict_is_not_forgotten_when_one_of_the_two_goes_back_and_on_without_having_seen_it() -> None:
    log = [
        made(), change("c1", 5, seen=0.5, new=1), change("b1", 6, "phone-b", seen=0.5, new=2),
        change("c2", 7, seen=1, new=0.5), change("c3", 8, seen=0.5, new=3),
    ]  # fmt: skip
    assert conflicts(log) == (Conflict("two values", BOLT, "diameter_in", ("c1", "b1")),)


def test_an_edit_of_what_another_took_away_is_told() -> None:
    gone = change("c1", 5, field="", seen=bolt_of(made()), new=None)
    edit = change("b1", 6, "phone-b", seen=0.5, new=0.75)
    told = (Conflict("edit and removal", BOLT, "diameter_in", ("c1", "b1")),)
    assert conflicts([made(), gone, edit]) == told
    assert conflicts([edit, made(), gone]) == told


def test_taking_away_what_another_had_edited_unseen_is_told_and_seen_is_not() -> None:
    edit = change("b1", 5, "phone-b", seen=0.5, new=0.75)
    blind = change("c1", 6, field="", seen=bolt_of(made()), new=None)
    seeing = change("c1", 6, field="", seen=bolt_of(made(), edit), new=None)
    told = (Conflict("edit and removal", BOLT, "diameter_in", ("b1", "c1")),)
    assert conflicts([made(), edit, blind]) == told
    assert conflicts([made(), edit, seeing]) == ()


def test_an_edit_inside_an_object_counts_as_an_edit_of_it() -> None:
    wall = "survey.underfloor.segments.sg1"
    log = [
        change("c0", 0, object=wall, field="", new={"line": "line1"}),
        change("b1", 5, "phone-b", object=f"{wall}.stud", field="depth_in", seen=None, new=3.75),
        change("c1", 6, object=wall, field="", seen={"line": "line1"}, new=None),
    ]
    assert conflicts(log) == (Conflict("edit and removal", f"{wall}.stud", "depth_in", ("b1", "c1")),)
    seen = {"line": "line1", "stud": {"depth_in": 3.75}}
    assert conflicts([*log[:2], replace(log[2], seen=seen)]) == ()


def test_bringing_an_object_back_closes_its_conflicts() -> None:
    gone = change("c1", 5, field="", seen=bolt_of(made()), new=None)
    edit = change("b1", 6, "phone-b", seen=0.5, new=0.75)
    back = change("c2", 9, field="", new={})
    again = change("b2", 9, "phone-b", field="", seen={}, new=None)
    assert conflicts([made(), gone, edit, back]) == ()
    assert conflicts([made(), gone, edit, again]) == ()


# ---- Undo -----------------------------------------------------------------------------------------------------------


def take_back(
    log: list[Change], second: int, device: str = "phone-a", how: Any = undo
) -> tuple[list[Change], tuple[str, ...]]:
    name = f"u{second}"
    found = how(log, device=device, person=device, time=at(second), group=name, new_id=ids(f"{name}-"))
    return ([*log, *found.changes], found.left) if found else (log, ("nothing",))


def test_the_last_act_is_taken_back_whole_then_the_one_before() -> None:
    log = [
        made(),
        change("c1", 5, seen=0.5, new=0.625, group="act-1"),
        change("c2", 6, field="nut", seen=None, new="tight", group="act-1"),
    ]
    once, left = take_back(log, 10)
    assert bolt_of(*once) == bolt_of(made())
    assert left == ()
    twice, _ = take_back(once, 11)
    assert bolt_of(*twice) is None
    assert take_back(twice, 12) == (twice, ("nothing",))


def test_an_act_is_done_again_until_a_new_one_is_done() -> None:
    log = [made(), change("c1", 5, seen=0.5, new=0.625), change("c2", 6, seen=0.625, new=0.75)]
    undone, _ = take_back(log, 10)
    undone, _ = take_back(undone, 11)
    assert bolt_of(*undone)["diameter_in"] == 0.5
    redone, _ = take_back(undone, 12, how=redo)
    assert bolt_of(*redone)["diameter_in"] == 0.625
    redone, _ = take_back(redone, 13, how=redo)
    assert bolt_of(*redone)["diameter_in"] == 0.75
    assert take_back(redone, 14, how=redo) == (redone, ("nothing",))
    again, _ = take_back(redone, 15)
    assert bolt_of(*again)["diameter_in"] == 0.625
    anew = [*undone, change("c3", 20, seen=0.5, new=1)]
    assert take_back(anew, 21, how=redo) == (anew, ("nothing",))


def test_a_bolt_taken_away_comes_back_as_it_was() -> None:
    log = [made(), change("c1", 5, field="", seen=bolt_of(made()), new=None)]
    back, _ = take_back(log, 10)
    assert bolt_of(*back) == bolt_of(made())


def test_another_persons_act_is_never_taken_back() -> None:
    log = [made(), change("b1", 5, "phone-b", seen=0.5, new=0.75)]
    untouched, left = take_back(log, 10)
    assert untouched == log
    assert left == ("nothing",)
    mine = [*log, change("c1", 6, field="nut", new="tight")]
    back, _ = take_back(mine, 10)
    assert bolt_of(*back) == {"line": "line1", "station_in": 12, "diameter_in": 0.75}


def test_what_another_wrote_over_mine_is_left_and_the_rest_of_my_act_is_taken_back() -> None:
    log = [
        made(), change("c1", 5, seen=0.5, new=0.625, group="act-1"),
        change("c2", 6, field="nut", new="tight", group="act-1"), change("b1", 7, "phone-b", seen=0.625, new=1),
    ]  # fmt: skip
    back, left = take_back(log, 10)
    assert bolt_of(*back) == {"line": "line1", "station_in": 12, "diameter_in": 1}
    assert left == ("c1",)


def test_a_value_that_another_confirmed_since_is_left() -> None:
    log = [made(), change("c1", 5, field="nut", new="tight"), change("b1", 6, "phone-b", field="nut", new="tight")]
    back, _ = take_back(log, 10)
    assert bolt_of(*back)["nut"] == "tight"


def test_a_bolt_i_made_and_another_measured_is_not_taken_away_by_my_undo() -> None:
    log = [made(), change("b1", 5, "phone-b", field="nut", new="tight")]
    untouched, _ = take_back(log, 10)
    assert bolt_of(*untouched) == bolt_of(*log)


def test_an_undone_house_is_the_house_before() -> None:
    house = small_house()
    changed = replace(house, alternatives={}, units="si", survey=replace(house.survey, levels={}))
    log = [*log_of(house), *log_of(changed, house, "d", 60)]
    back, left = take_back(log, 100)
    assert decode_map(document(fold(back))) == house
    assert left == ()


# ---- JSON -----------------------------------------------------------------------------------------------------------


def test_changes_and_snapshots_go_through_json_and_back() -> None:
    log = (*log_of(small_house()), change("x1", 90, seen=True, new=None, undoes="act-1", settles=("c1", "c2")))
    again = tuple(change_from_map(json.loads(json.dumps(change_to_map(c)))) for c in log)
    assert again == log
    snapshot = fold(log)
    assert snapshot_from_map(json.loads(json.dumps(snapshot_to_map(snapshot)))) == snapshot


@pytest.mark.parametrize(
    ("fields", "line"),
    [
        ({"id": ""}, "1. change.id: '' is not allowed; an id of letters, digits, - and _"),
        ({"time": "yesterday"}, "1. change.time: 'yesterday' is not allowed; a time like 2026-04-02T10:11:12.123Z"),
        ({"time": 5}, "1. change.time: 5 is not allowed; a time like 2026-04-02T10:11:12.123Z"),
        ({"object": "a..b"}, "1. change.object: 'a..b' is not allowed; the path of an object, steps parted by points"),
        ({"field": "", "new": 5}, "1. change.new: 5 is not allowed; the fields of the object made, or null"),
        ({"settles": "c1"}, "1. change.settles: 'c1' is not allowed; a list of ids of changes"),
        (
            {"person": "x" * 201},
            f"1. change.person: {'x' * 201!r:.60} is not allowed; a text of at most 200 characters",
        ),
    ],
)
def test_a_change_that_cannot_be_right_is_refused_in_words(fields: dict[str, Any], line: str) -> None:
    with pytest.raises(BadSurvey) as refused:
        change_from_map({**change_to_map(change("c1", 5, new=1)), **fields})
    assert str(refused.value) == line


def test_an_unknown_field_of_a_change_is_refused_by_name() -> None:
    with pytest.raises(
        BadSurvey, match=r"1\. change\.when: a field that does not exist is not allowed; id, group, device"
    ):
        change_from_map({**change_to_map(change("c1", 5, new=1)), "when": "now"})
