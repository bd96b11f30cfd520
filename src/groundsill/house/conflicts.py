"""Where two people wrote past each other: told, never decided in silence.

The fold already gives one document to everybody; a conflict says that somebody's value did not stand although they had
not seen the one that did. It stays open until a later change settles it by name, or its loser writes again after having
seen the winner.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

from groundsill.house.changes import Change, Json, merge, same

__all__ = ["Conflict", "conflicts"]

_NOT_SEEN = object()


@dataclass(frozen=True, slots=True)
class Conflict:
    """Changes that compete: ids in the order of the log, the last of them standing.

    ``two values``: one field, one value seen, different new ones. ``edit and removal``: a field was changed, and its
    object taken away by somebody who had not seen the change, or before somebody who had not seen the removal.
    """

    kind: Literal["two values", "edit and removal"]
    object: str
    field: str
    changes: tuple[str, ...]


def conflicts(changes: Iterable[Change]) -> tuple[Conflict, ...]:
    """Every open conflict of a log, whatever order its changes come in."""
    log = merge(changes, ())
    settled = [set(change.settles) for change in log if change.settles]
    found = [*_two_values(log), *_removals(log)]
    open_ones = [c for c in found if not any(set(c.changes) <= names for names in settled)]
    return tuple(sorted(open_ones, key=lambda c: (c.object, c.field, c.kind, c.changes)))


def _two_values(log: tuple[Change, ...]) -> Iterator[Conflict]:
    """Changes of one field from one value seen to different new ones."""
    by_field: dict[tuple[str, str], list[Change]] = {}
    for change in log:
        if change.field:
            by_field.setdefault((change.object, change.field), []).append(change)
    for (path, name), written in by_field.items():
        for competing in _competing(written):
            if not _seen_by_a_loser(competing, written):
                yield Conflict("two values", path, name, tuple(change.id for change in competing))


def _competing(written: list[Change]) -> Iterator[list[Change]]:
    """Changes of one field that started from the same value on different devices and went apart."""
    from_value: dict[str, list[Change]] = {}
    for before, change in zip([None, *written], written, strict=False):
        group = from_value.setdefault(_text(change.seen), [])
        unseen = before is not None and not same(before.new, change.seen)
        others = [c for c in group if c.device != change.device and not same(c.new, change.new)]
        if not group or (unseen and others):
            group.append(change)
        elif not unseen:  # it was written on top of what stood: a fresh start from that value
            if len(group) > 1:
                yield group
            from_value[_text(change.seen)] = [change]
    for group in from_value.values():
        if len(group) > 1:
            yield group


def _seen_by_a_loser(competing: list[Change], written: list[Change]) -> bool:
    """Whether somebody whose value did not stand wrote again after seeing the one that did."""
    winner = competing[-1]
    losers = {change.device for change in competing[:-1]} - {winner.device}
    return any(c.key > winner.key and c.device in losers and same(c.seen, winner.new) for c in written)


def _text(value: Json) -> str:
    """A value as a key: equal values give equal texts."""
    if isinstance(value, float) and value.is_integer():
        value = int(value)
    return json.dumps(value, sort_keys=True, default=str)


# ---- Edits and removals ---------------------------------------------------------------------------------------------


def _removals(log: tuple[Change, ...]) -> Iterator[Conflict]:
    """Edits and removals of one object by people who had not seen each other's."""
    by_object: dict[str, list[Change]] = {}
    for change in log:
        by_object.setdefault(change.object, []).append(change)
    for removal in (change for change in log if change.takes_away):
        near = (c for path, of_path in by_object.items() if _lies_in(path, removal.object) for c in of_path)
        inside = [c for c in near if c is not removal]
        presence = [c for c in inside if not c.field and c.object == removal.object]
        edits = [c for c in inside if c.device != removal.device and (c.field or (c.makes and c not in presence))]
        for edit in edits:
            lost = _unseen_before(removal, edit, inside) if edit.key < removal.key else _after(removal, edit, presence)
            if lost and not _decided(removal, edit, presence):
                pair = sorted((removal, edit), key=lambda change: change.key)
                yield Conflict("edit and removal", edit.object, edit.field, tuple(change.id for change in pair))


def _lies_in(path: str, outer: str) -> bool:
    return path == outer or path.startswith(f"{outer}.") or outer == ""


def _unseen_before(removal: Change, edit: Change, inside: list[Change]) -> bool:
    """Whether the last edit of a field before a removal is not in what the remover saw."""
    last = all(
        c.key <= edit.key or c.key > removal.key or (c.object, c.field) != (edit.object, edit.field) for c in inside
    )
    if not last or not isinstance(removal.seen, dict):
        return False
    seen = _at(removal.seen, edit.object[len(removal.object) :].lstrip("."), edit.field)
    if not edit.field:
        return seen is _NOT_SEEN
    return not same(None if seen is _NOT_SEEN else seen, edit.new)


def _at(seen: Json, path: str, name: str) -> Json:
    """What a remover saw at a place inside the object."""
    for step in [*(path.split(".") if path else ()), *([name] if name else ())]:
        if not isinstance(seen, dict) or step not in seen:
            return _NOT_SEEN
        seen = seen[step]
    return seen


def _after(removal: Change, edit: Change, presence: list[Change]) -> bool:
    """Whether the object was gone by this removal when the edit was made."""
    return not any(removal.key < c.key < edit.key for c in presence)


def _decided(removal: Change, edit: Change, presence: list[Change]) -> bool:
    """Whether the object was brought back later by anybody, or taken away again by the one who edited it."""
    later = [c for c in presence if c.key > max(removal.key, edit.key)]
    return any(c.makes or c.device == edit.device for c in later)
