"""From the engine's frozen dataclasses to plain JSON, and the JSON Schema that says what may stand there.

One walk by value writes the JSON; one walk by type hints writes the schema; tests hold the two to each other. Recorded
values become plain numbers, sets become sorted lists, and a number that is not finite is refused, never written.
"""

from __future__ import annotations

import inspect
import json
import math
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from types import NoneType, UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin, get_type_hints

__all__ = ["Plain", "defs_of", "plain", "schema_of", "text_of"]

Plain = dict[str, Any] | list[Any] | str | float | int | bool | None


def plain(value: Any, path: str = "") -> Plain:
    """Any result of the engine as maps, lists, texts and numbers.

    Raises:
        ValueError: for a number that is not finite, naming its place.
        TypeError: for something that has no place in a document.
    """
    if value is None or isinstance(value, (str, bool)):
        return value
    if isinstance(value, int):
        return int(value)
    if isinstance(value, float):
        if not math.isfinite(value):
            raise ValueError(f"{path or 'the answer'}: {float(value)} is not a number that JSON holds")
        return float(value)
    if is_dataclass(value) and not isinstance(value, type):
        return {f.name: plain(getattr(value, f.name), f"{path}.{f.name}" if path else f.name) for f in fields(value)}
    if isinstance(value, Mapping):
        return {str(key): plain(item, f"{path}.{key}" if path else str(key)) for key, item in value.items()}
    if isinstance(value, (set, frozenset)):
        value = sorted(value)
    if isinstance(value, (list, tuple)):
        return [plain(item, f"{path}.{place}") for place, item in enumerate(value)]
    raise TypeError(f"{path or 'the answer'}: {type(value).__name__} has no form in JSON")


def text_of(value: Plain, ascii_only: bool = False) -> str:
    """The JSON text: two spaces deep, one line feed at the end, no NaN or infinity."""
    return json.dumps(value, ensure_ascii=ascii_only, indent=2, allow_nan=False) + "\n"


# ---- Schemas --------------------------------------------------------------------------------------------------------


def schema_of(hint: Any, defs: dict[str, Any]) -> dict[str, Any]:
    """The JSON Schema of one type hint; dataclasses met on the way are put into ``defs`` and referred to.

    Raises:
        TypeError: for a hint that promises nothing a reader could check.
    """
    origin, arguments = get_origin(hint), get_args(hint)
    if origin is Annotated:
        return schema_of(arguments[0], defs)
    if isinstance(hint, type) and is_dataclass(hint):
        return _reference(hint, defs)
    if hint in _PLAIN_TYPES:
        return {"type": _PLAIN_TYPES[hint]}
    if origin is Literal:
        return {"enum": list(arguments)} if len(arguments) > 1 else {"const": arguments[0]}
    if origin in (Union, UnionType):
        return _union(arguments, defs)
    if origin is tuple and arguments[1:] != (Ellipsis,):
        items = [schema_of(a, defs) for a in arguments]
        return {"type": "array", "prefixItems": items, "items": False, "minItems": len(items)}
    if origin in (tuple, list, set, frozenset):
        return {"type": "array", "items": schema_of(arguments[0], defs)}
    if isinstance(origin, type) and issubclass(origin, Mapping):
        return {"type": "object", "additionalProperties": schema_of(arguments[1], defs)}
    raise TypeError(f"{hint!r} has no schema")


_PLAIN_TYPES: dict[Any, str] = {float: "number", int: "integer", str: "string", bool: "boolean", NoneType: "null"}


def defs_of(*classes: type) -> dict[str, Any]:
    """The schemas of dataclasses and of everything inside them, by class name."""
    defs: dict[str, Any] = {}
    for cls in classes:
        _reference(cls, defs)
    return dict(sorted(defs.items()))


def _union(arguments: tuple[Any, ...], defs: dict[str, Any]) -> dict[str, Any]:
    parts = [schema_of(a, defs) for a in arguments]
    if all(set(part) == {"type"} for part in parts):
        return {"type": [part["type"] for part in parts]}
    return {"anyOf": parts}


def _reference(cls: type, defs: dict[str, Any]) -> dict[str, Any]:
    """A dataclass by reference; its own schema is made once."""
    name = cls.__name__
    told = defs.get(name)
    if told is None:
        defs[name] = {}  # so that a class that holds its own kind comes to an end
        hints = get_type_hints(cls, include_extras=True)
        properties = {f.name: schema_of(hints[f.name], defs) for f in fields(cls)}
        defs[name] = {
            "description": _first_sentences(cls),
            "type": "object",
            "properties": properties,
            "required": list(properties),
            "additionalProperties": False,
            "$comment": f"{cls.__module__}.{name}",
        }
    elif told and told["$comment"] != f"{cls.__module__}.{name}":
        raise TypeError(f"two classes are called {name}: {told['$comment']} and {cls.__module__}.{name}")
    return {"$ref": f"#/$defs/{name}"}


def _first_sentences(cls: type) -> str:
    """The first paragraph of a class's docstring, on one line."""
    return " ".join((inspect.getdoc(cls) or "").split("\n\n")[0].replace("``", "").split())
