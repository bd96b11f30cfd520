"""Writes docs/reference/house-file.md: every object and field of a house file, as its own class tells of it."""

from __future__ import annotations

import inspect
from collections.abc import Iterator
from typing import Any, get_args

from groundsill.house.fact import Fact
from groundsill.house.model import FieldFacts, Shape, fields_of, measured_as
from groundsill.work.document import House
from groundsill.work.pieces import Piece
from groundsill.working.measure import KINDS

__all__ = ["house_file"]

_EVERYWHERE = ("order", "mark")
_HEAD = """
# Every field of a house file

[The house file](../the-house-file.md) tells how the file is built; this page lists all that may stand in it. A field
that has a dash under *left out* must be there. Objects that have `order` (a number, how they are listed; 0 when left
out) and `mark` (what stands on paper; empty when left out) say so above their table.

A **fact** is a bare value, or an object with `value`, `low`, `high`, `state`, `how`, `by`, `when` ([Fact](#fact)).
*Typed* means that a text is read as it was measured: `"7'-6 1/2\\""`, `"2.3 m"`. A **map** is an object whose keys are
ids.
"""


def house_file() -> str:
    """The page, in the order in which the objects are met from the document down."""
    classes = list(_met(House))
    where = _places()
    pieces = get_args(Piece)
    parts = [_HEAD, "\n".join(_section(cls, where.get(cls, ())) for cls in (*classes, Fact) if cls not in pieces)]
    parts.append(
        "\n## Pieces of work\n\n`alternatives.<id>.pieces.<id>`: each piece says by its `kind` which of these it is.\n"
    )
    parts += [_section(cls, (), f'kind "{fields_of(cls)[0].shape.choices[0]}"') for cls in pieces]
    return "\n".join(parts)


def _met(cls: type) -> Iterator[type]:
    """A class and those inside it, each once, in reading order."""
    seen: dict[type, None] = {}

    def go(one: type) -> None:
        if one in seen:
            return
        seen[one] = None
        for facts in fields_of(one):
            for inner in _inside(facts.shape):
                go(inner)

    go(cls)
    yield from seen


def _inside(shape: Shape) -> tuple[type, ...]:
    if shape.kind == "object":
        return shape.classes
    return _inside(shape.item) if shape.item and shape.kind in ("map", "list") else ()


def _places() -> dict[type, tuple[str, ...]]:
    """Where each class stands in the file."""
    found: dict[type, list[str]] = {}

    def go(cls: type, path: str) -> None:
        for facts in fields_of(cls):
            here = f"{path}.{facts.name}" if path else facts.name
            step = {"map": ".<id>", "list": "[]"}.get(facts.shape.kind, "")
            for inner in _inside(facts.shape):
                if f"{here}{step}" not in found.setdefault(inner, []):
                    found[inner].append(f"{here}{step}")
                    go(inner, f"{here}{step}")

    go(House, "")
    return {cls: tuple(paths) for cls, paths in found.items()}


def _section(cls: type[Any], where: tuple[str, ...], what: str = "") -> str:
    fields = [f for f in fields_of(cls) if f.name not in _EVERYWHERE and not (what and f.name == "kind")]
    has = [f.name for f in fields_of(cls) if f.name in _EVERYWHERE]
    told = " ".join(inspect.cleandoc(cls.__doc__ or "").split("\n\n")[0].replace("``", "`").split())
    lines = [f"\n{'###' if what else '##'} {cls.__name__}\n"]
    if what:
        lines.append(f"{what[0].upper()}{what[1:]}.")
    if where:
        shown = ", ".join(f"`{path}`" for path in where[:4]) + (f" and {len(where) - 4} more" if len(where) > 4 else "")
        lines.append(f"At {shown}.")
    lines.append(told + (" Has `order` and `mark`." if len(has) == 2 else ""))
    lines += ["", "| Field | What it is | Holds | Left out |", "| --- | --- | --- | --- |"]
    lines += [f"| `{f.name}` | {_about(f)} | {_holds(f, f.shape)} | {_left_out(f)} |" for f in fields]
    return "\n".join(lines)


def _about(facts: FieldFacts) -> str:
    help, measure = f" ({facts.help})" if facts.help else "", f"; measured by: {facts.measure}" if facts.measure else ""
    return _cell(f"{facts.label}{help}{measure}")


def _holds(facts: FieldFacts, shape: Shape) -> str:
    """What may stand in the field, with links to the objects it holds."""
    if shape.kind == "fact" and shape.item:
        return f"fact: {_holds(facts, shape.item)}{_typed(facts)}"
    if shape.kind == "map" and shape.item:
        return f"map of {_holds(facts, shape.item)}"
    if shape.kind == "list" and shape.item:
        return f"list: {_holds(facts, shape.item)}"
    if shape.kind == "object":
        if len(shape.classes) > 1:
            return "[pieces of work](#pieces-of-work)"
        name = shape.classes[0].__name__
        return f"[{name}](#{name.lower()})"
    if shape.kind in ("number", "whole"):
        return _number(facts, shape)
    if choices := shape.choices or (facts.choices if shape.kind == "text" else ()):
        return ", ".join(f'`"{choice}"`' for choice in choices)
    if shape.kind == "flag":
        return "true or false"
    return f"id of `{facts.refers}`" if facts.refers else "text"


def _number(facts: FieldFacts, shape: Shape) -> str:
    what = "whole number" if shape.kind == "whole" else "number"
    unit = f", {facts.unit}" if facts.unit else ""
    if facts.least is not None and facts.most is not None:
        return f"{what}{unit}, {facts.least:g} to {facts.most:g}"
    return f"{what}{unit}"


def _typed(facts: FieldFacts) -> str:
    measured = measured_as(facts)
    return f"; typed: {KINDS[measured[0]].noun}" if measured else ""


def _left_out(facts: FieldFacts) -> str:
    """What stands when the field is left out; a dash when it may not be."""
    if facts.required or facts.name == "format":  # the door reads it first, to know what version it has before it
        return "-"
    if facts.shape.kind == "fact":
        return "unknown"
    if facts.shape.kind in ("map", "list") or facts.default in ("", None):
        return "nothing"
    if facts.shape.kind == "object":
        return "all left out"
    if isinstance(facts.default, bool):
        return "true" if facts.default else "false"
    return f"{facts.default:g}" if isinstance(facts.default, (int, float)) else f'`"{facts.default}"`'


def _cell(text: str) -> str:
    return text.replace("|", "\\|").replace("\n", " ")
