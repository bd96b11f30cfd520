"""Reading a house: what a fact may look like, and the words of each refusal."""

from __future__ import annotations

import json
from typing import Any

import pytest

from groundsill.doors.decode import decode, decode_map
from groundsill.doors.encode import encode, to_map
from groundsill.doors.text import MOST_BYTES, MOST_ENTRIES, parse
from groundsill.house.fact import Fact
from groundsill.work.document import House
from groundsill.working.errors import BadSurvey
from tests.fixtures.small_house import small_house


def with_bolt(**fields: Any) -> dict[str, Any]:
    house = to_map(small_house())
    house["survey"]["underfloor"]["bolts"]["bt1"].update(fields)
    return house


def bolt_of(house: House) -> Any:
    return house.survey.underfloor.bolts["bt1"]


def lines(raw: Any) -> list[str]:
    """The numbered lines of a refusal."""
    with pytest.raises(BadSurvey) as refused:
        decode_map(raw) if isinstance(raw, dict) else decode(raw)
    return str(refused.value).splitlines()


BOLT = "survey.underfloor.bolts.bt1"
OR_OBJECT = "alone or in an object with value, low, high, state and how"


@pytest.mark.parametrize(
    ("written", "fact"),
    [
        (6, Fact(value=6.0)),
        (6.5, Fact(value=6.5)),
        ("6 1/2 in", Fact(value=6.5, typed="6 1/2 in")),
        ("0'-6 1/2\"", Fact(value=6.5, typed="0'-6 1/2\"")),
        ({"value": 6}, Fact(value=6.0)),
        ({"value": "0.2 m"}, Fact(value=0.2 / 0.0254, typed="0.2 m")),
        ({"value": "6 in", "low": "5 in", "high": "7 in"}, Fact(value=6.0, low=5.0, high=7.0, typed="6 in")),
        ({"value": 6, "typed": "half a foot"}, Fact(value=6.0, typed="half a foot")),
        ({"state": "unknown", "low": 4, "high": 8}, Fact(state="unknown", low=4.0, high=8.0)),
        ({"state": "absent", "how": "nothing there"}, Fact(state="absent", how="nothing there")),
    ],
)
def test_a_fact_may_be_a_number_what_a_person_typed_or_an_object(written: Any, fact: Fact[float]) -> None:
    read = bolt_of(decode_map(with_bolt(embedment_in=written))).embedment_in
    assert read.value == pytest.approx(fact.value)
    assert (read.low, read.high, read.state, read.typed, read.how) == (
        fact.low,
        fact.high,
        fact.state,
        fact.typed,
        fact.how,
    )


def test_what_was_typed_is_shown_again_after_writing_and_reading() -> None:
    house = decode_map(with_bolt(embedment_in="178 mm"))
    again = decode(encode(house))
    assert bolt_of(again).embedment_in.typed == "178 mm"
    assert again == house


def test_a_slope_may_be_typed_as_the_trade_says_it() -> None:
    house = to_map(small_house())
    house["survey"]["site"]["slope_rise_per_run"] = "1 in 4"
    assert decode_map(house).survey.site.slope_rise_per_run == Fact(value=0.25, typed="1 in 4")


SIZE = f"a number of inches from 0.25 to 1.5, {OR_OBJECT}"
STATES = 'one of "measured", "estimated", "unknown", "absent"'
KINDS = 'one of "cast-in", "adhesive", "expansion", "screw", "not seen"'
NO_FIELD = "in a field that does not exist"


@pytest.mark.parametrize(
    ("fields", "path", "value", "allowed"),
    [
        ({"diameter_in": 7}, "diameter_in", "7", SIZE),
        ({"diameter_in": True}, "diameter_in", "true", SIZE),
        ({"diameter_in": None}, "diameter_in", "null", SIZE),
        ({"diameter_in": {"value": [1]}}, "diameter_in.value", "[1]", "a number of inches from 0.25 to 1.5"),
        ({"diameter_in": {"value": 0.5, "high": -1}}, "diameter_in.high", "-1", "a number of inches from 0.25 to 1.5"),
        ({"nut": "Tight"}, "nut", '"Tight"', f'one of "tight", "loose", "none", {OR_OBJECT}'),
        ({"station_in": "24"}, "station_in", '"24"', "a number of inches from 0 to 6000"),
        ({"line": 3}, "line", "3", "the id of one of underfloor.lines"),
        ({"kind": "glued"}, "kind", '"glued"', KINDS),
        ({"diametre_in": 0.5}, "diametre_in", f"0.5 {NO_FIELD}", "did you mean diameter_in"),
        ({"edge_in": {"value": 2, "lo": 1}}, "edge_in.lo", f"1 {NO_FIELD}", "did you mean low"),
        ({"edge_in": {"state": "guessed"}}, "edge_in.state", '"guessed"', STATES),
        ({"edge_in": {"state": 1}}, "edge_in.state", "1", STATES),
    ],
)
def test_a_refusal_names_the_field_the_value_and_what_is_allowed(
    fields: dict[str, Any], path: str, value: str, allowed: str
) -> None:
    assert lines(with_bolt(**fields)) == [f"1. {BOLT}.{path}: {value} is not allowed; {allowed}"]


def test_a_typed_measure_outside_the_limits_says_what_was_understood() -> None:
    (line,) = lines(with_bolt(diameter_in="9 in"))
    assert line.startswith(f'1. {BOLT}.diameter_in: "9 in", understood as 9 in (')
    assert line.endswith(f"is not allowed; {SIZE}")


def test_a_typed_measure_that_cannot_be_read_says_why_and_how_to_write_it() -> None:
    (line,) = lines(with_bolt(embedment_in="7-6 1/2"))
    assert line.startswith(f'1. {BOLT}.embedment_in: "7-6 1/2" is not allowed; a number of inches from 0 to 36')
    assert "write a length like" in line
    assert "nothing says which number" in line


def test_a_missing_field_is_named_with_what_belongs_there() -> None:
    house = with_bolt()
    del house["survey"]["underfloor"]["bolts"]["bt1"]["station_in"]
    assert lines(house) == [
        f"1. {BOLT}.station_in: nothing is not allowed; it must be given: a number of inches from 0 to 6000"
    ]


def test_every_fault_of_a_file_is_told_at_once_in_the_order_of_the_file() -> None:
    house = with_bolt(nut="welded", diameter_in=9)
    house["units"] = "metric"
    house["survey"]["name"] = 7
    assert [line.split(":")[0] for line in lines(house)] == [
        "1. units",
        "2. survey.name",
        f"3. {BOLT}.diameter_in",
        f"4. {BOLT}.nut",
    ]


def test_more_than_fifty_faults_end_in_a_count() -> None:
    house = to_map(small_house())
    house.update({f"key{n}": n for n in range(80)})
    told = lines(house)
    assert len(told) == 51
    assert told[-1] == "... and 30 more"


def test_a_piece_of_an_unknown_kind_lists_the_kinds() -> None:
    house = to_map(small_house())
    house["alternatives"]["strengthen"]["pieces"]["pn11"]["kind"] = "gusset"
    (line,) = lines(house)
    assert line.startswith(
        '1. alternatives.strengthen.pieces.pn11.kind: "gusset" is not allowed; one of "panel", "sill'
    )


def test_a_field_of_one_piece_of_work_is_not_a_field_of_another() -> None:
    house = to_map(small_house())
    house["alternatives"]["strengthen"]["pieces"]["pn11"]["diameter_in"] = 0.5
    assert lines(house)[0].startswith(
        "1. alternatives.strengthen.pieces.pn11.diameter_in: 0.5 in a field that does not exist is not allowed; "
    )


@pytest.mark.parametrize("key", ["L1", "ab", "a" * 41, "-ab", "a_b", "a.b", "a b", "ä12"])
def test_an_id_that_could_not_stand_in_an_address_is_refused(key: str) -> None:
    house = to_map(small_house())
    house["survey"]["photos"][key] = {"file": "a.jpg"}
    allowed = "an id of 3 to 40 small letters, digits and dashes, beginning with a letter or digit"
    assert lines(house) == [f"1. survey.photos.{key}: this id is not allowed; {allowed}"]


@pytest.mark.parametrize("key", ["abc", "7f3", "k7h2", "a" * 40, "rear-wall-2"])
def test_a_proper_id_is_taken(key: str) -> None:
    house = to_map(small_house())
    house["survey"]["photos"][key] = {"file": "a.jpg"}
    assert key in decode_map(house).survey.photos


def test_one_is_a_whole_number_also_when_written_with_a_point() -> None:
    house = to_map(small_house())
    house["survey"]["building"]["families"] = 2.0
    assert decode_map(house).survey.building.families == 2
    house["survey"]["building"]["families"] = 2.5
    assert lines(house) == ["1. survey.building.families: 2.5 is not allowed; a whole number from 1 to 50"]


def test_houses_read_from_one_text_share_no_collection() -> None:
    bare = '{"format": "groundsill.house/1", "survey": {"name": "x"}}'
    one, other = decode(bare), decode(bare)
    assert one.survey.underfloor.bolts is not other.survey.underfloor.bolts


def test_bytes_and_text_read_alike_and_a_byte_order_mark_is_let_go() -> None:
    text = encode(small_house())
    assert decode(text) == decode(text.encode()) == decode(b"\xef\xbb\xbf" + text.encode()) == decode("\ufeff" + text)


def test_bad_json_is_told_by_line_and_column() -> None:
    assert lines('{\n  "format": "groundsill.house/1",\n  "survey" {}\n}') == [
        "1. the file, line 3, column 12: \"{}\" is not allowed; here JSON reads: expecting ':' delimiter"
    ]


def test_a_key_written_twice_is_named_where_it_stands() -> None:
    site = '{"address": "b", "address": "c"}'
    text = '{"format": "groundsill.house/1", "survey": {"name": "a", "site": ' + site + ', "name": "d"}}'
    assert lines(text) == [
        "1. survey.name: written twice is not allowed; a key may stand once in an object",
        "2. survey.site.address: written twice is not allowed; a key may stand once in an object",
    ]


def test_size_and_entries_are_limited_before_anything_is_understood() -> None:
    with pytest.raises(BadSurvey, match=r"16,000,001 bytes is not allowed; at most 16 million bytes of survey"):
        parse(b" " * (MOST_BYTES + 1))
    crowd = json.dumps([{"a": 1}] * (MOST_ENTRIES + 1))
    with pytest.raises(BadSurvey, match=r"more than 400,000 entries is not allowed"):
        parse(crowd)
