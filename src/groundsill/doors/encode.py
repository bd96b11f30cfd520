"""From a house to its file's text: the same house always gives the same bytes, and reading them gives the house back.

Measured facts stand bare, what equals its default is left out, fields stand in the order of their classes and members
of a collection in the order of their order key, so that a file reads well and two versions compare line by line. The
basis and the designer's choices are written whole: they pin what the house was judged by, whatever a later default is.
"""

from __future__ import annotations

import json
import math
from typing import Any

from groundsill.house.fact import Fact
from groundsill.house.model import FieldFacts, Shape, fields_of
from groundsill.house.survey import in_order
from groundsill.work.document import Basis, Choices, House

__all__ = ["encode", "to_map"]

_PINNED = (Basis, Choices)


def encode(house: House) -> str:
    """The text of a house file: JSON, two spaces deep, one line feed at the end.

    Raises:
        ValueError: for a number that is not finite (a house made in Python may hold one; a decoded house cannot).
    """
    return json.dumps(to_map(house), ensure_ascii=False, indent=2, allow_nan=False) + "\n"


def to_map(owner: Any) -> dict[str, Any]:
    """An object of the survey as plain maps, lists, texts and numbers."""
    found: dict[str, Any] = {}
    for facts in fields_of(type(owner)):
        value = getattr(owner, facts.name)
        if facts.required or _told(owner, facts, value):
            found[facts.name] = _plain(value, facts.shape)
    return found


def _told(owner: Any, facts: FieldFacts, value: Any) -> bool:
    """Whether a field that may be left out has something to tell."""
    says_what_it_is = facts.shape.kind == "choice" and len(facts.shape.choices) == 1  # format, and the kind of a piece
    pins = isinstance(value, _PINNED) or (isinstance(owner, _PINNED) and value not in ("", {}))
    return says_what_it_is or pins or bool(value != facts.default)


def _plain(value: Any, shape: Shape) -> Any:
    if value is None:
        return None
    if shape.kind == "fact":
        return _fact(value)
    if shape.kind == "object":
        return to_map(value)
    if shape.kind == "map" and shape.item:
        return {key: _plain(item, shape.item) for key, item in in_order(value)}
    if shape.kind == "list" and shape.item:
        return [_plain(item, shape.item) for item in value]
    return _number(value) if shape.kind in ("number", "whole") else value


def _fact(fact: Fact[Any]) -> Any:
    """A bare value where the fact is plainly measured; else an object."""
    said = {f.name: getattr(fact, f.name) for f in fields_of(Fact) if getattr(fact, f.name) != f.default}
    said = {name: _number(value) for name, value in said.items()}
    return said["value"] if list(said) == ["value"] else said


def _number(value: Any) -> Any:
    """A whole number without its point zero, so that 240 in. reads as 240."""
    if isinstance(value, float) and not isinstance(value, bool) and math.isfinite(value) and value.is_integer():
        return int(value) if abs(value) < 1e15 else value
    return value
