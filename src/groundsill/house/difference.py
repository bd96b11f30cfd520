"""Two states of a document turned into changes: what was made, taken away, and set, object by object.

The survey's own classes say what is an object of the log and what is one value: a fact, an outline, a list of layers
and a point on the plan are set whole; a bolt, a wall segment, its studs and the site's soil are objects with fields of
their own.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from groundsill.house.changes import Change, Json, same
from groundsill.house.model import FieldFacts, Shape, fields_of, is_value, member

__all__ = ["Draft", "difference", "stamped", "why_no_place"]


@dataclass(frozen=True, slots=True)
class Draft:
    """A change before it is signed: object, field, value seen, new value."""

    object: str
    field: str
    seen: Json
    new: Json


def difference(before: Mapping[str, Json], after: Mapping[str, Json], root: type[Any]) -> tuple[Draft, ...]:
    """The changes that lead from one state of a document to another.

    Args:
        before: the document as it was; empty for a document made anew.
        after: the document as it shall be.
        root: the class of the document.
    """
    return tuple(_of_object(root, "", before, after))


def stamped(
    drafts: Iterable[Draft], *, group: str, device: str, person: str, time: str, new_id: Callable[[], str]
) -> tuple[Change, ...]:
    """Drafts signed as one act of one person on one device."""
    return tuple(
        Change(
            id=new_id(), group=group, device=device, person=person, time=time, object=d.object, field=d.field,
            seen=d.seen, new=d.new,
        )
        for d in drafts
    )  # fmt: skip


def why_no_place(root: type[Any], path: str, name: str) -> str | None:
    """Why a change of this object and field cannot be one of a document of this class, in words; None when it can.

    A change is asked this before it joins a log, so that no one change can spoil the document for everybody. ``name``
    is empty for an object made or taken away.
    """
    shape: Shape = Shape("object", classes=(root,))
    comes_and_goes = False
    for step in path.split(".") if path else ():
        comes_and_goes = shape.kind == "map"
        if shape.kind == "map" and shape.item:
            shape = shape.item
            continue
        facts = next((f for cls in shape.classes if (f := member(cls, step))), None)
        if facts is None or is_value(facts.shape):
            return f"{path} leads to no object: there is no {step} in it"
        shape = facts.shape
        comes_and_goes = shape.optional
    if not name and not comes_and_goes:
        return f"{path or 'the document'} is always there: it is neither made nor taken away"
    if shape.kind != "object":
        return f"{path} is a collection, not an object"
    if name and not any((f := member(cls, name)) and is_value(f.shape) for cls in shape.classes):
        return f"{path or 'the document'} has no field {name}"
    return None


def _of_object(cls: type[Any], path: str, before: Mapping[str, Json], after: Mapping[str, Json]) -> Iterator[Draft]:
    """Changes of one object and of those inside it."""
    for facts in fields_of(cls):
        old, new = before.get(facts.name), after.get(facts.name)
        if is_value(facts.shape):
            if not same(old, new):
                yield Draft(path, facts.name, old, new)
        else:
            yield from _of_part(facts, f"{path}.{facts.name}" if path else facts.name, old, new)
    known = {facts.name for facts in fields_of(cls)}
    for name in sorted(before.keys() - known):  # a piece of work turned into one of another kind
        yield Draft(path, name, before[name], None)


def _of_part(facts: FieldFacts, path: str, old: Json, new: Json) -> Iterator[Draft]:
    """Changes of an object or a collection that a field holds."""
    shape = facts.shape
    if shape.kind == "map" and shape.item:
        members_before, members_after = old or {}, new or {}
        for key in [*members_after, *(key for key in members_before if key not in members_after)]:
            yield from _of_member(shape.item, f"{path}.{key}", members_before.get(key), members_after.get(key))
    elif shape.optional:
        yield from _of_member(shape, path, old, new)
    else:
        yield from _of_object(shape.classes[0], path, old or {}, new or {})


def _of_member(shape: Shape, path: str, old: Json, new: Json) -> Iterator[Draft]:
    """Changes of an object that may be made and taken away."""
    if new is None:
        if old is not None:
            yield Draft(path, "", old, None)
        return
    cls = _class_of(shape, new)
    if old is not None:
        yield from _of_object(cls, path, old, new)
        return
    values = {f.name: new[f.name] for f in fields_of(cls) if is_value(f.shape) and f.name in new}
    yield Draft(path, "", None, values)
    for facts in fields_of(cls):
        if not is_value(facts.shape) and facts.name in new:
            yield from _of_part(facts, f"{path}.{facts.name}", None, new[facts.name])


def _class_of(shape: Shape, raw: Mapping[str, Json]) -> type[Any]:
    """The class of an object, by its kind where there are several."""
    kinds = {fields_of(cls)[0].default: cls for cls in shape.classes}
    return kinds.get(raw.get("kind"), shape.classes[0])
