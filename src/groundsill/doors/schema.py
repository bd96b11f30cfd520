"""The published form of a house file: JSON Schema 2020-12, made from the survey's own classes.

``python -m groundsill.doors.schema`` prints it; the copy in ``schema/house.schema.json`` is held equal to it by a test,
so that a change of the file's form shows as a difference in review. Beside the standard words it says what a form
needs: ``x-unit``, ``x-refers`` (the collection an id points into) and ``x-measure`` (how it is measured on site).

What this schema accepts is what the decoder accepts, but for texts that people type with a unit: whether ``2.3 m`` can
be read is asked by the decoder alone, and whether the parts of a house fit together is asked after decoding.
"""

from __future__ import annotations

import inspect
import json
import sys
from typing import Any, Final

from groundsill.doors.decode import LONGEST_TEXT, MOST_IN_A_COLLECTION
from groundsill.house.fact import Fact
from groundsill.house.model import ID_PATTERN, ID_WORDS, FieldFacts, Shape, fields_of, measured_as
from groundsill.work.document import House

__all__ = ["house_schema", "main", "schema_text"]

_ID: Final = {"type": "string", "pattern": ID_PATTERN, "description": ID_WORDS}
_TYPED: Final = {
    "type": "string",
    "maxLength": 64,
    "description": "A measure as a person types it, with its unit: 7'-6 1/2\", 90 1/2 in, 2.3 m, 20 psf",
}
_FACTS: Final = {
    "MeasureFact": (["number", "string", "null"], "A measure: measured, estimated, unknown or absent"),
    "NumberFact": (["number", "null"], "A number: measured, estimated, unknown or absent"),
    "TextFact": (["string", "null"], "A word: measured, estimated, unknown or absent"),
    "FlagFact": (["boolean", "null"], "Yes or no: measured, estimated, unknown or absent"),
}
_ENDS: Final = ("value", "low", "high")


def house_schema() -> dict[str, Any]:
    """The schema of a house file as plain maps."""
    defs: dict[str, Any] = {"Id": _ID, "Typed": _TYPED}
    for name, (types, words) in _FACTS.items():
        defs[name] = _fact_def(types, words)
    _define(House, defs)
    house = defs.pop("House")
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$id": "urn:groundsill:schema:house:1",
        "title": "Groundsill house file, version 1",
        **house,
        "$defs": dict(sorted(defs.items())),
    }


def schema_text() -> str:
    """The schema as it stands in the file."""
    return json.dumps(house_schema(), ensure_ascii=False, indent=2) + "\n"


def _define(cls: type[Any], defs: dict[str, Any]) -> dict[str, Any]:
    """Write a class among the definitions, with all it holds, and give the reference to it."""
    name = cls.__name__
    if name not in defs:
        defs[name] = {}  # holds its place while what is inside is written
        facts = fields_of(cls)
        defs[name] = {
            "description": inspect.getdoc(cls) or "",
            "type": "object",
            "properties": {f.name: _property(f, defs) for f in facts},
            "required": [f.name for f in facts if f.required or _tells_apart(f)],
            "additionalProperties": False,
        }
    return {"$ref": f"#/$defs/{name}"}


def _tells_apart(facts: FieldFacts) -> bool:
    """Whether a field says what the object is: the format of a file, the kind of a piece of work."""
    return facts.shape.kind == "choice" and len(facts.shape.choices) == 1


def _property(facts: FieldFacts, defs: dict[str, Any]) -> dict[str, Any]:
    """One field: its label, help and unit, and the form of its value."""
    told: dict[str, Any] = {"title": facts.label}
    if facts.help:
        told["description"] = facts.help
    for name, words in (("x-unit", facts.unit), ("x-refers", facts.refers), ("x-measure", facts.measure)):
        if words:
            told[name] = words
    form = _form(facts, facts.shape, defs)
    if facts.shape.optional:
        form = {"anyOf": [form, {"type": "null"}]}
    if not facts.required and isinstance(facts.default, str | bool | int | float):
        form = {**form, "default": facts.default}
    return {**told, **form}


def _form(facts: FieldFacts, shape: Shape, defs: dict[str, Any]) -> dict[str, Any]:
    """The form of one value by its shape."""
    match shape.kind:
        case "number" | "whole":
            limits = {"minimum": facts.least, "maximum": facts.most}
            kind = "number" if shape.kind == "number" else "integer"
            return {"type": kind, **{name: limit for name, limit in limits.items() if limit is not None}}
        case "choice":
            return {"const": shape.choices[0]} if len(shape.choices) == 1 else {"enum": list(shape.choices)}
        case "text" if facts.choices:
            return {"enum": list(facts.choices)}
        case "text":
            return {"type": "string", "maxLength": LONGEST_TEXT}
        case "flag":
            return {"type": "boolean"}
        case "fact":
            return _fact(facts, _item(shape), defs)
        case "object":
            forms = [_define(cls, defs) for cls in shape.classes]
            return forms[0] if len(forms) == 1 else {"oneOf": forms}
        case "map":
            item = _form(facts, _item(shape), defs)
            names = {"$ref": "#/$defs/Id"}
            most = MOST_IN_A_COLLECTION
            return {"type": "object", "propertyNames": names, "additionalProperties": item, "maxProperties": most}
        case "list":
            return {"type": "array", "items": _form(facts, _item(shape), defs), "maxItems": MOST_IN_A_COLLECTION}


def _item(shape: Shape) -> Shape:
    if shape.item is None:
        raise TypeError(f"a {shape.kind} without the shape of what it holds")
    return shape.item


def _fact(facts: FieldFacts, item: Shape, defs: dict[str, Any]) -> dict[str, Any]:
    """A bare value, what a person typed, or an object that says more."""
    bare = _form(facts, item, defs)
    typed = [{"$ref": "#/$defs/Typed"}] if measured_as(facts) else []
    name = {"number": "MeasureFact" if typed else "NumberFact", "text": "TextFact", "flag": "FlagFact"}[item.kind]
    narrowed = {word: limit for word, limit in bare.items() if word in ("minimum", "maximum")}
    if "enum" in bare:
        narrowed = {"enum": [*bare["enum"], None]}
    full: dict[str, Any] = {"$ref": f"#/$defs/{name}"}
    if narrowed:
        full["patternProperties"] = {f"^({'|'.join(_ENDS)})$": narrowed}
    return {"anyOf": [bare, *typed, full]}


def _fact_def(types: list[str], words: str) -> dict[str, Any]:
    """A fact written out; the field that holds it narrows its values."""
    told: dict[str, Any] = {}
    for facts in fields_of(Fact):
        if facts.name in _ENDS:
            told[facts.name] = {"type": types, "maxLength": 64 if len(types) == 3 else LONGEST_TEXT}
        else:
            told[facts.name] = {**_form(facts, facts.shape, {}), "default": facts.default}
    return {"description": words, "type": "object", "properties": told, "additionalProperties": False}


def main() -> None:
    """Print the schema."""
    sys.stdout.write(schema_text())


if __name__ == "__main__":
    main()
