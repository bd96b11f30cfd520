"""The log of changes, and the document it folds into.

A house under survey on two phones is not a file but an append-only log: who changed which field of which object, on
which device and when, from the value seen to a new one. Every change has an id made on the device, so that sending it
twice is harmless; a group is what one act of a person changed together. The document is the fold of the log: for each
field the latest change by (time, device, id) stands, whatever order the changes arrived in. Nothing is forgotten: an
object taken away keeps its fields, and comes back with them.

All of it works on plain maps, so that a front end can follow the same rules; ``difference`` turns two states of a
document into changes, ``conflicts`` tells where two people wrote past each other, ``undo`` takes one's own act back.
"""

from __future__ import annotations

import copy
import datetime
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, fields
from types import MappingProxyType
from typing import Any, Final, NamedTuple

from groundsill.working.errors import BadSurvey, Fault

__all__ = [
    "EMPTY", "Change", "Json", "Key", "Snapshot", "Version", "Written", "change_from_map", "change_to_map", "document",
    "fold", "later_than", "merge", "name_version", "same", "snapshot_from_map", "snapshot_to_map", "version_document",
]  # fmt: skip

Json = Any  # None, bool, int, float, str, list and dict, as JSON has them
Key = tuple[str, str, str]

_TIME: Final = re.compile(r"\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z", re.ASCII)
_TIME_WORDS: Final = "a time like 2026-04-02T10:11:12.123Z"
_TOKEN: Final = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]{0,63}", re.ASCII)
_PATH: Final = re.compile(r"(?:[A-Za-z0-9][A-Za-z0-9_-]{0,63}(?:\.[A-Za-z0-9][A-Za-z0-9_-]{0,63}){0,15})?", re.ASCII)
_NAME: Final = re.compile(r"(?:[A-Za-z][A-Za-z0-9_]{0,63})?", re.ASCII)


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One change of one field of one object.

    ``object`` is the object's path in the document (``survey.underfloor.bolts.k7h2``; empty for the document itself).
    ``field`` is the field changed; empty when the object itself is made (``new`` holds its first field values, nested
    objects have changes of their own) or taken away (``new`` is None, ``seen`` the whole object as it was seen). A
    value of None is a field left out. A device gives two changes of one field different times
    (:func:`later_than`). ``undoes`` is the group this group takes back; ``settles`` are changes whose conflict this
    one decides.
    """

    id: str
    group: str
    device: str
    person: str
    time: str
    object: str
    field: str
    seen: Json
    new: Json
    undoes: str = ""
    settles: tuple[str, ...] = ()

    @property
    def key(self) -> Key:
        """What orders changes: time, then device, then id."""
        return (self.time, self.device, self.id)

    @property
    def makes(self) -> bool:
        """Whether the object itself is made, or brought back."""
        return not self.field and self.new is not None

    @property
    def takes_away(self) -> bool:
        """Whether the object itself is taken away."""
        return not self.field and self.new is None


@dataclass(frozen=True, slots=True, kw_only=True)
class Version:
    """A name given to the document as one device knew it: for each device the last change it had seen."""

    id: str
    name: str
    device: str
    person: str
    time: str
    knows: Mapping[str, Key]


class Written(NamedTuple):
    """What stands in a field, and the change that wrote it."""

    key: Key
    value: Json


@dataclass(frozen=True, slots=True)
class Snapshot:
    """A fold so far: what stands in each field and whether each object is there, each with the change that says so."""

    fields: Mapping[tuple[str, str], Written] = field(default_factory=dict)
    objects: Mapping[str, Written] = field(default_factory=dict)


EMPTY: Final = Snapshot(MappingProxyType({}), MappingProxyType({}))


def fold(changes: Iterable[Change], start: Snapshot = EMPTY) -> Snapshot:
    """The state after some more changes, in whatever order they come; a change folded before changes nothing."""
    written, objects = dict(start.fields), dict(start.objects)
    for change in changes:
        if change.field:
            _write(written, (change.object, change.field), change.key, change.new)
            continue
        _write(objects, change.object, change.key, change.new is not None)
        if isinstance(change.new, dict):
            for name, value in change.new.items():
                _write(written, (change.object, name), change.key, value)
    return Snapshot(MappingProxyType(written), MappingProxyType(objects))


def _write(register: dict[Any, Written], place: Any, key: Key, value: Json) -> None:
    """The later change stands."""
    standing = register.get(place)
    if standing is None or key > standing.key:
        register[place] = Written(key, value)


def document(snapshot: Snapshot) -> dict[str, Json]:
    """The document as plain maps: objects that are there, with the fields that have a value."""
    gone = {path for path, written in snapshot.objects.items() if not written.value}
    by_object: dict[str, dict[str, Json]] = {path: {} for path, written in snapshot.objects.items() if written.value}
    for (path, name), written in snapshot.fields.items():
        if written.value is not None:
            by_object.setdefault(path, {})[name] = written.value
    whole: dict[str, Json] = {}
    for path in sorted(by_object):  # an object comes before what is inside it
        if not _is_gone(path, gone):
            inside = _inside(whole, path)
            inside.update({name: copy.deepcopy(value) for name, value in sorted(by_object[path].items())})
    return whole


def _is_gone(path: str, gone: set[str]) -> bool:
    """Whether an object, or one it lies in, was taken away."""
    if not gone:
        return False
    steps = path.split(".") if path else []
    return any(".".join(steps[:n]) in gone for n in range(len(steps) + 1))


def _inside(whole: dict[str, Json], path: str) -> dict[str, Json]:
    """The map of an object, made on the way when it is not there yet."""
    inside = whole
    for step in path.split(".") if path else ():
        if not isinstance(inside.get(step), dict):
            inside[step] = {}
        inside = inside[step]
    return inside


def merge(log: Iterable[Change], arrived: Iterable[Change]) -> tuple[Change, ...]:
    """Two logs as one, each change once, in the order that everyone agrees on.

    Raises:
        BadSurvey: one id stands for two different changes.
    """
    known: dict[str, Change] = {}
    for change in (*log, *arrived):
        other = known.setdefault(change.id, change)
        if not _same_change(other, change):
            allowed = f"an id of its own; {change.id} already stands for a change of {other.object}.{other.field}"
            raise BadSurvey((Fault(f"changes.{change.id}", f"a change of {change.object}.{change.field}", allowed),))
    return tuple(sorted(known.values(), key=lambda change: change.key))


def _same_change(one: Change, other: Change) -> bool:
    return one is other or (one == other and same(one.new, other.new) and same(one.seen, other.seen))


def same(one: Json, other: Json) -> bool:
    """Whether two JSON values are equal; true is not 1, though Python thinks so."""
    if isinstance(one, bool) is not isinstance(other, bool):
        return False
    if isinstance(one, dict) and isinstance(other, dict):
        return one.keys() == other.keys() and all(same(one[key], other[key]) for key in one)
    if isinstance(one, list) and isinstance(other, list):
        return len(one) == len(other) and all(map(same, one, other))
    return bool(one == other)


def later_than(changes: Iterable[Change], now: datetime.datetime) -> str:
    """A time for the next change: now, or a millisecond after the latest change known, if some clock runs ahead.

    Args:
        changes: what the device knows of.
        now: with its time zone.
    """
    stamp = _stamp(now.astimezone(datetime.UTC))
    latest = max((change.time for change in changes), default="")
    if stamp > latest:
        return stamp
    return _stamp(datetime.datetime.fromisoformat(latest) + datetime.timedelta(milliseconds=1))


def _stamp(moment: datetime.datetime) -> str:
    return moment.strftime("%Y-%m-%dT%H:%M:%S.") + f"{moment.microsecond // 1000:03d}Z"


# ---- Named versions -------------------------------------------------------------------------------------------------


def name_version(changes: Iterable[Change], *, id: str, name: str, device: str, person: str, time: str) -> Version:
    """Name the document as it stands; changes that arrive later do not alter what the name means."""
    knows: dict[str, Key] = {}
    for change in changes:
        knows[change.device] = max(change.key, knows.get(change.device, change.key))
    return Version(id=id, name=name, device=device, person=person, time=time, knows=MappingProxyType(knows))


def version_document(changes: Iterable[Change], version: Version) -> dict[str, Json]:
    """The document that a version names."""
    known = (c for c in changes if c.device in version.knows and c.key <= version.knows[c.device])
    return document(fold(known))


# ---- To and from JSON -----------------------------------------------------------------------------------------------


def change_to_map(change: Change) -> dict[str, Json]:
    """A change as plain maps, what is empty left out."""
    told = {f.name: getattr(change, f.name) for f in fields(change)}
    told["settles"] = list(change.settles)
    return {name: value for name, value in told.items() if name in ("object", "field", "seen", "new") or value}


def change_from_map(raw: Mapping[str, Json]) -> Change:
    """A change from plain maps.

    Raises:
        BadSurvey: one fault for each part that cannot be right.
    """
    names = [f.name for f in fields(Change)]
    faults = [
        Fault(f"change.{name}", "a field that does not exist", ", ".join(names)) for name in raw if name not in names
    ]
    checks: tuple[tuple[str, re.Pattern[str], str], ...] = (
        ("id", _TOKEN, "an id of letters, digits, - and _"), ("group", _TOKEN, "an id of letters, digits, - and _"),
        ("device", _TOKEN, "an id of letters, digits, - and _"), ("time", _TIME, _TIME_WORDS),
        ("object", _PATH, "the path of an object, steps parted by points"), ("field", _NAME, "the name of a field"),
    )  # fmt: skip
    for name, pattern, allowed in checks:
        value = raw.get(name)
        if not isinstance(value, str) or not pattern.fullmatch(value):
            faults.append(Fault(f"change.{name}", repr(value)[:60], allowed))
    if not faults and not _is_moment(raw["time"]):
        faults.append(Fault("change.time", repr(raw["time"]), _TIME_WORDS))
    for name in ("person", "undoes"):
        if not isinstance(raw.get(name, ""), str) or len(raw.get(name, "")) > 200:
            faults.append(Fault(f"change.{name}", repr(raw[name])[:60], "a text of at most 200 characters"))
    settles = raw.get("settles", [])
    if not isinstance(settles, list | tuple) or not all(isinstance(item, str) for item in settles):
        faults.append(Fault("change.settles", repr(settles)[:60], "a list of ids of changes"))
    if not raw.get("field") and not isinstance(raw.get("new"), dict | None):
        faults.append(Fault("change.new", repr(raw.get("new"))[:60], "the fields of the object made, or null"))
    if faults:
        raise BadSurvey(tuple(faults))
    told = {name: raw.get(name, "") for name in names if name not in ("seen", "new", "settles")}
    return Change(**told, seen=raw.get("seen"), new=raw.get("new"), settles=tuple(settles))


def _is_moment(time: str) -> bool:
    """Whether a time is one that a calendar and a clock can show."""
    try:
        return 2000 <= datetime.datetime.fromisoformat(time).year < 2200
    except ValueError:
        return False


def snapshot_to_map(snapshot: Snapshot) -> dict[str, Json]:
    """A snapshot as plain maps, in an order that is always the same."""
    return {
        "fields": [[*place, *w.key, copy.deepcopy(w.value)] for place, w in sorted(snapshot.fields.items())],
        "objects": [[path, *w.key, w.value] for path, w in sorted(snapshot.objects.items())],
    }


def snapshot_from_map(raw: Mapping[str, Json]) -> Snapshot:
    """A snapshot from the maps that :func:`snapshot_to_map` made."""
    written = {(path, name): Written((t, d, i), value) for path, name, t, d, i, value in raw["fields"]}
    objects = {path: Written((t, d, i), value) for path, t, d, i, value in raw["objects"]}
    return Snapshot(MappingProxyType(written), MappingProxyType(objects))
