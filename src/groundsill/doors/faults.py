"""What pydantic found wrong, in the words of the trade: field path, the value as written, what is allowed there."""

from __future__ import annotations

import difflib
from typing import Any, Final

from pydantic import ValidationError

from groundsill.doors.text import shorten
from groundsill.house.fact import Fact
from groundsill.house.model import ID_WORDS, FieldFacts, Shape, fields_of, member, words
from groundsill.working.errors import Fault

__all__ = ["faults_of"]

MOST_FAULTS: Final = 2000


def faults_of(refused: ValidationError, raw: dict[str, Any], root: type) -> tuple[Fault, ...]:
    """One fault for each error, in the order in which they stand in the file."""
    errors = refused.errors(include_url=False)[:MOST_FAULTS]
    return tuple(_fault(error, raw, root) for error in errors)


def _fault(error: Any, raw: dict[str, Any], root: type) -> Fault:
    kind = error["type"]
    keys = [key for key in error["loc"] if not (isinstance(key, str) and key.startswith("\0"))]
    if keys and keys[-1] == "[key]":
        return Fault(_path(keys[:-1]), "this id", ID_WORDS)
    path = _path(keys) or "the file"
    if kind == "unexpected_keyword_argument":
        return Fault(path, f"{shorten(error['input'])} in a field that does not exist", _instead(keys, raw, root))
    facts, shape = _asked(keys, raw, root)
    allowed = words(facts, shape) if facts and shape else "nothing of the kind"
    if kind == "missing":
        return Fault(path, "nothing", f"it must be given: {allowed}")
    value = shorten(error["input"])
    if kind == "too_long":
        return Fault(path, f"{len(error['input']):,} entries", f"at most {error['ctx']['max_length']:,}")
    if kind == "string_too_long":
        return Fault(path, value, f"at most {error['ctx']['max_length']:,} characters")
    if kind == "string_unicode":
        return Fault(path, value, "text of whole characters; half of a surrogate pair stands in it")
    if kind == "typed":
        return Fault(path, value, f"{allowed}; or {error['msg']}")
    if kind == "typed_outside":
        return Fault(path, f"{value}, {error['msg']},", allowed)
    if kind == "kind":
        given = error["input"]
        if not isinstance(given, dict):
            return Fault(path, value, f"an object whose kind is {error['msg']}")
        return Fault(f"{path}.kind", shorten(given["kind"]) if "kind" in given else "nothing", error["msg"])
    return Fault(path, value, allowed)


def _path(keys: list[Any]) -> str:
    return ".".join(_printable(str(key)) for key in keys)


def _printable(key: str) -> str:
    """A key as it can be printed, its end left off when it is long."""
    shown = "".join(c if c.isprintable() else c.encode("unicode_escape").decode() for c in key[:61])
    return shown if len(shown) <= 60 else shown[:57] + "..."


def _asked(keys: list[Any], raw: Any, root: type) -> tuple[FieldFacts | None, Shape | None]:
    """The field a place in the file belongs to, and the shape asked for there."""
    facts: FieldFacts | None = None
    shape: Shape | None = Shape("object", classes=(root,))
    for key in keys:
        if shape is None:
            return facts, None
        if shape.kind in ("map", "list"):
            shape = shape.item
        elif shape.kind == "fact":
            return facts, shape.item if key in ("value", "low", "high") else _fact_part(str(key))
        else:
            cls = _class_of(shape, raw)
            facts = member(cls, str(key)) if cls else None
            shape = facts.shape if facts else None
        raw = _step(raw, key)
    return facts, shape


def _fact_part(name: str) -> Shape | None:
    """The shape of ``state``, ``how`` ... of a fact written out."""
    facts = member(Fact, name)
    return facts.shape if facts else None


def _class_of(shape: Shape, raw: Any) -> type | None:
    """The class an object in the file is meant to be."""
    if len(shape.classes) <= 1:
        return shape.classes[0] if shape.classes else None
    kind = raw.get("kind") if isinstance(raw, dict) else None
    return next((c for c in shape.classes if fields_of(c)[0].shape.choices[0] == kind), None)


def _step(raw: Any, key: Any) -> Any:
    try:
        return raw[key]
    except (KeyError, IndexError, TypeError):
        return None


def _instead(keys: list[Any], raw: Any, root: type) -> str:
    """What may be written in place of an unknown field: the nearest name, or all of them."""
    _, shape = _asked(keys[:-1], raw, root)
    inside: Any = raw
    for key in keys[:-1]:
        inside = _step(inside, key)
    if shape and shape.kind == "fact":
        names = ["value", "low", "high", "state", "how", "by", "when", "typed"]
    else:
        cls = _class_of(shape, inside) if shape else None
        names = [f.name for f in fields_of(cls)] if cls else []
    near = difflib.get_close_matches(str(keys[-1])[:60], names, n=1)
    if near:
        return f"did you mean {near[0]}"
    return f"the fields here are {', '.join(names)}"
