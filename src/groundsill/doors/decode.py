"""From JSON to a house: every field checked against the survey's own classes, every fault named, or nothing at all.

The classes are the engine's frozen dataclasses; pydantic validates them through one ``TypeAdapter``, with a schema
built from :mod:`groundsill.house.model` so that units and limits stand in one place, the field's own metadata. Types
are strict (``"7"`` is not 7, ``true`` is not 1), unknown fields are refused by name, NaN and infinities are refused.
A fact may be a bare value, an object, or, where it measures something, what a person typed (``7 ft 6 in``, ``2.3 m``),
which is read by the units at the door and kept in ``typed``.

Whether the parts fit together (outlines, stations, references) is not asked here: see ``groundsill.work.checks``.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Annotated, Any, Final

from pydantic import GetCoreSchemaHandler, TypeAdapter, ValidationError
from pydantic_core import CoreSchema, PydanticCustomError
from pydantic_core import core_schema as cs

from groundsill.doors.faults import faults_of
from groundsill.doors.text import parse
from groundsill.house.fact import Fact
from groundsill.house.migrate import STEPS, migrate
from groundsill.house.model import ID_PATTERN, FieldFacts, Shape, fields_of, measured_as
from groundsill.work.document import FORMAT, House
from groundsill.working.errors import BadSurvey
from groundsill.working.measure import Kind, MeasureError, read

__all__ = ["decode", "decode_map"]

MOST_IN_A_COLLECTION: Final = 5000
LONGEST_TEXT: Final = 20_000
# Labels of the branches of a union inside pydantic's error places; no JSON key of a model begins so.
BRANCH: Final = "\0"


def decode(data: bytes | str, name: str = "the file") -> House:
    """A house from the text of its file.

    Args:
        data: UTF-8 JSON, as bytes or text.
        name: what to call the file in a message.

    Raises:
        BadSurvey: one fault for each thing wrong, with its path, the value and what is allowed.
    """
    return decode_map(parse(data, name))


def decode_map(raw: dict[str, Any]) -> House:
    """A house from plain maps, as :func:`groundsill.doors.text.parse` or the fold of a log gives them."""
    current = migrate(raw, FORMAT, STEPS)
    try:
        house = _adapter().validate_python(current)
    except ValidationError as refused:
        raise BadSurvey(faults_of(refused, current, House)) from None
    return house


class _FromModel:
    """Tells pydantic to take the schema of a class from the survey's own field metadata."""

    def __get_pydantic_core_schema__(self, source: type, handler: GetCoreSchemaHandler) -> CoreSchema:
        return _object(source)


@lru_cache(maxsize=1)
def _adapter() -> TypeAdapter[House]:
    return TypeAdapter(Annotated[House, _FromModel()])


def _object(cls: type) -> CoreSchema:
    """A dataclass, built from a JSON object with no unknown keys."""
    facts = fields_of(cls)
    arguments = [cs.dataclass_field(f.name, _field(f) if f.required else _optional(f), kw_only=True) for f in facts]
    inner = cs.dataclass_args_schema(cls.__name__, arguments, extra_behavior="forbid")
    return cs.dataclass_schema(cls, inner, [f.name for f in facts], slots=True, frozen=True)


def _optional(facts: FieldFacts) -> CoreSchema:
    """A field that may be left out."""
    if facts.make:
        return cs.with_default_schema(_field(facts), default_factory=facts.make)
    return cs.with_default_schema(_field(facts), default=facts.default)


def _field(facts: FieldFacts) -> CoreSchema:
    schema = _value(facts, facts.shape)
    return cs.nullable_schema(schema) if facts.shape.optional else schema


def _value(facts: FieldFacts, shape: Shape) -> CoreSchema:
    """The schema of one value by its shape."""
    match shape.kind:
        case "number":
            return cs.float_schema(strict=True, allow_inf_nan=False, ge=facts.least, le=facts.most)
        case "whole":
            whole = cs.int_schema(strict=True, ge=_whole(facts.least), le=_whole(facts.most))
            return cs.no_info_before_validator_function(_plain_whole, whole)
        case "text" if facts.choices:
            return cs.literal_schema(list(facts.choices))
        case "text":
            return cs.str_schema(strict=True, max_length=LONGEST_TEXT)
        case "flag":
            return cs.bool_schema(strict=True)
        case "choice":
            return cs.literal_schema(list(shape.choices))
        case "fact":
            return _fact(facts, _item(shape))
        case "object":
            return _object(shape.classes[0]) if len(shape.classes) == 1 else _one_of(shape.classes)
        case "map":
            keys = cs.str_schema(strict=True, pattern=ID_PATTERN)
            return cs.dict_schema(keys, _value(facts, _item(shape)), max_length=MOST_IN_A_COLLECTION)
        case "list":
            return cs.tuple_variable_schema(_value(facts, _item(shape)), max_length=MOST_IN_A_COLLECTION)


def _item(shape: Shape) -> Shape:
    if shape.item is None:
        raise TypeError(f"a {shape.kind} without the shape of what it holds")
    return shape.item


def _whole(limit: float | None) -> int | None:
    return None if limit is None else int(limit)


def _plain_whole(value: Any) -> Any:
    """2.0 is the whole number 2, as JSON has but one kind of number."""
    return int(value) if isinstance(value, float) and value.is_integer() else value


# ---- Facts and unions -----------------------------------------------------------------------------------------------


def _one_of(classes: tuple[type, ...]) -> CoreSchema:
    """One of several classes told apart by ``kind``."""
    choices = {BRANCH + fields_of(cls)[0].shape.choices[0]: _object(cls) for cls in classes}
    known = ", ".join(f'"{kind[1:]}"' for kind in choices)
    return cs.tagged_union_schema(
        choices,
        lambda value: BRANCH + str(value.get("kind")) if isinstance(value, dict) else None,
        custom_error_type="kind",
        custom_error_message="one of {known}",
        custom_error_context={"known": known},
    )


def _fact(facts: FieldFacts, item: Shape) -> CoreSchema:
    """A bare value, an object, or, where a quantity is measured, what a person typed."""
    bare = cs.no_info_after_validator_function(_measured, _value(facts, item))
    branches: dict[Any, CoreSchema] = {BRANCH + "bare": bare, BRANCH + "object": _fact_object(facts, item)}
    reading = _reading(facts)
    if reading:
        branches[BRANCH + "typed"] = cs.no_info_plain_validator_function(
            lambda text: _measured_as_typed(text, *reading)
        )

    def branch(value: Any) -> str:
        if isinstance(value, dict):
            return BRANCH + "object"
        return BRANCH + ("typed" if reading and isinstance(value, str) else "bare")

    return cs.tagged_union_schema(branches, branch)


def _fact_object(facts: FieldFacts, item: Shape) -> CoreSchema:
    """A fact written out; its texts that measure something are read like bare ones."""
    inner = {"value": item, "low": item, "high": item}
    ends = [cs.dataclass_field(name, _end(facts, shape), kw_only=True) for name, shape in inner.items()]
    rest = [f for f in fields_of(Fact) if f.name not in inner]
    arguments = ends + [cs.dataclass_field(f.name, _optional(f), kw_only=True) for f in rest]
    names = [*inner, *(f.name for f in rest)]
    schema = cs.dataclass_schema(
        Fact, cs.dataclass_args_schema("Fact", arguments, extra_behavior="forbid"), names, slots=True, frozen=True
    )
    reading = _reading(facts)
    if reading is None:
        return schema
    return cs.no_info_before_validator_function(lambda raw: _with_typed_read(raw, *reading), schema)


def _end(facts: FieldFacts, shape: Shape) -> CoreSchema:
    return cs.with_default_schema(cs.nullable_schema(_value(facts, shape)), default=None)


def _measured(value: Any) -> Fact[Any]:
    return Fact(value=value)


def _reading(facts: FieldFacts) -> tuple[Kind, str, float | None, float | None] | None:
    """How a typed text is read for this field: kind, unit inside, limits; None where a number is not measured."""
    measured = measured_as(facts)
    return (*measured, facts.least, facts.most) if measured else None


def _measured_as_typed(text: str, kind: Kind, inside: str, least: float | None, most: float | None) -> Fact[float]:
    return Fact(value=_read(text, kind, inside, least, most), typed=text)


def _with_typed_read(raw: Any, kind: Kind, inside: str, least: float | None, most: float | None) -> Any:
    """A fact object with its typed texts turned to numbers; the text of the value is kept."""
    texts = {name: raw[name] for name in ("value", "low", "high") if isinstance(raw.get(name), str)}
    if not texts:
        return raw
    numbers = {name: _read(text, kind, inside, least, most) for name, text in texts.items()}
    typed = {"typed": texts["value"]} if "value" in texts and not raw.get("typed") else {}
    return {**raw, **numbers, **typed}


def _read(text: str, kind: Kind, inside: str, least: float | None, most: float | None) -> float:
    """A typed measure within the field's limits."""
    try:
        measure = read(text, kind, inside)
    except MeasureError as fault:
        raise PydanticCustomError("typed", "{allowed} ({why})", {"allowed": fault.allowed, "why": fault.why}) from None
    if (least is not None and measure.number < least) or (most is not None and measure.number > most):
        raise PydanticCustomError("typed_outside", "understood as {echo}", {"echo": measure.echo})
    return measure.number
