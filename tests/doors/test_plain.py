"""Dataclasses to plain JSON and to the schema that says what may stand there."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Any, Literal

import jsonschema
import pytest

from groundsill.doors.plain import defs_of, plain, schema_of, text_of
from groundsill.working.value import Mark, Value


@dataclass(frozen=True)
class Bolt:
    """A bolt, ``told`` in one line.

    More of it.
    """

    diameter_in: float
    mark: str | None
    tight: bool | None
    next: Bolt | None = None


@dataclass(frozen=True)
class Sill:
    """A sill."""

    kind: Literal["sill", "plate"]
    bolts: tuple[Bolt, ...]
    ends: tuple[float, str]
    by_level: dict[int, float]
    notes: frozenset[str]
    one: Literal["x"]
    width: Annotated[float, "in"]
    more: Mapping[str, tuple[int, ...]]


SILL = Sill(
    "sill",
    (Bolt(0.5, "B1", None, Bolt(0.625, None, True)),),
    (1, "a"),
    {0: 2.5},
    frozenset("ba"),
    "x",
    6.0,
    {"n": (1, 2)},
)


def test_recorded_values_become_plain_numbers_and_sets_become_lists() -> None:
    value = Value(928.357, "lb", "Z", None, frozenset({Mark("unverified", "x")}))
    told = plain({"Z": value, 3: frozenset({"b", "a"}), "mark": Mark("estimated", "depth")})
    assert told == {"Z": 928.357, "3": ["a", "b"], "mark": {"kind": "estimated", "what": "depth"}}
    assert type(told["Z"]) is float  # type: ignore[index, call-overload]


@pytest.mark.parametrize("number", [float("nan"), float("inf"), float("-inf")])
def test_a_number_that_is_none_is_refused_with_its_place(number: float) -> None:
    with pytest.raises(ValueError, match=r"^bolts\.0\.diameter_in: -?(nan|inf) is not a number that JSON holds$"):
        plain({"bolts": [Bolt(number, None, None)]})
    with pytest.raises(ValueError, match="the answer: "):
        plain(number)


def test_what_has_no_place_in_a_document_is_refused() -> None:
    with pytest.raises(TypeError, match=r"^by: object has no form in JSON$"):
        plain({"by": object()})


def test_the_text_is_the_same_every_time_and_may_be_ascii() -> None:
    assert text_of({"θ": 1.0}) == '{\n  "θ": 1.0\n}\n'
    assert text_of({"θ": 1.0}, ascii_only=True) == '{\n  "\\u03b8": 1.0\n}\n'


def test_a_schema_says_what_the_classes_say() -> None:
    defs = defs_of(Sill)
    sill = defs["Sill"]["properties"]
    assert sill["kind"] == {"enum": ["sill", "plate"]}
    assert sill["one"] == {"const": "x"}
    assert sill["bolts"] == {"type": "array", "items": {"$ref": "#/$defs/Bolt"}}
    assert sill["ends"] == {
        "type": "array", "prefixItems": [{"type": "number"}, {"type": "string"}], "items": False, "minItems": 2,
    }  # fmt: skip
    assert sill["by_level"] == {"type": "object", "additionalProperties": {"type": "number"}}
    assert defs["Sill"]["required"] == list(sill)
    assert defs["Sill"]["additionalProperties"] is False
    bolt = defs["Bolt"]
    assert bolt["description"] == "A bolt, told in one line."
    assert bolt["properties"]["mark"] == {"type": ["string", "null"]}
    assert bolt["properties"]["next"] == {"anyOf": [{"$ref": "#/$defs/Bolt"}, {"type": "null"}]}


def check(told: Any) -> list[str]:
    whole = {
        "$ref": "#/$defs/Sill",
        "$defs": {k: {n: p for n, p in d.items() if n != "$comment"} for k, d in defs_of(Sill).items()},
    }
    return [e.message for e in jsonschema.Draft202012Validator(whole).iter_errors(told)]


def test_what_is_written_fits_the_schema_and_what_is_spoiled_does_not() -> None:
    told = plain(SILL)
    assert check(told) == []
    assert isinstance(told, dict)
    assert check({**told, "extra": 1})
    assert check({k: v for k, v in told.items() if k != "kind"})
    assert check({**told, "kind": "girder"})
    assert check({**told, "ends": [1, "a", 2]})
    assert check({**told, "by_level": {"0": "heavy"}})


def test_two_classes_of_one_name_are_refused() -> None:
    other = dataclass(
        type("Bolt", (), {"__doc__": "Another.", "__annotations__": {"a": float}, "__module__": "elsewhere"})
    )
    with pytest.raises(TypeError, match=r"two classes are called Bolt"):
        defs_of(Bolt, other)


def test_a_hint_that_promises_nothing_is_refused() -> None:
    with pytest.raises(TypeError, match="object'> has no schema"):
        schema_of(object, {})
