"""Taking back one's own last act, and doing it again: by new changes on top of the log, never by forgetting any.

Only what this device wrote is taken back, and only where it still stands: a field that somebody has written since, or
an object that somebody has worked on since, is left and reported.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace

from groundsill.house.changes import Change, Json, Snapshot, document, fold, merge, same

__all__ = ["TakenBack", "redo", "undo"]


@dataclass(frozen=True, slots=True)
class TakenBack:
    """The changes that take an act back, and the ids of those of its changes that were left, for others wrote since."""

    group: str
    changes: tuple[Change, ...]
    left: tuple[str, ...]


def undo(
    changes: Iterable[Change], *, device: str, person: str, time: str, group: str, new_id: Callable[[], str]
) -> TakenBack | None:
    """The inverse of this device's last act of which anything still stands; None when there is none.

    Args:
        changes: the whole log.
        device: whose act is taken back, and who signs.
        person: who takes it back.
        time: of the new changes; later than everything known (:func:`~groundsill.house.changes.later_than`).
        group: the id of the new group.
        new_id: makes ids for the new changes.
    """
    log = merge(changes, ())
    standing = _standing(log, device)
    acts = [act for act in _groups(log, device) if not act[0].undoes and act[0].group in standing]
    for act in reversed(acts):
        found = _taken_back(log, act, device, person, time, group, new_id)
        if found.changes:
            return found
    return None


def redo(
    changes: Iterable[Change], *, device: str, person: str, time: str, group: str, new_id: Callable[[], str]
) -> TakenBack | None:
    """The inverse of this device's last undo, unless it has acted anew since; arguments as :func:`undo`."""
    log = merge(changes, ())
    standing = _standing(log, device)
    acts = _groups(log, device)
    originals = {act[0].group for act in acts if not act[0].undoes}
    undone = [n for n, act in enumerate(acts) if act[0].undoes in originals and act[0].group in standing]
    if not undone or any(not act[0].undoes for act in acts[undone[-1] :]):
        return None
    return _taken_back(log, acts[undone[-1]], device, person, time, group, new_id)


def _groups(log: tuple[Change, ...], device: str) -> list[list[Change]]:
    """This device's acts, in order."""
    found: dict[str, list[Change]] = {}
    for change in log:
        if change.device == device:
            found.setdefault(change.group, []).append(change)
    return sorted(found.values(), key=lambda act: act[-1].key)


def _standing(log: tuple[Change, ...], device: str) -> set[str]:
    """The groups of this device that have not been taken back, or whose taking back was."""
    standing: set[str] = set()
    taken_back: set[str] = set()
    for act in reversed(_groups(log, device)):
        if act[0].group not in taken_back:
            standing.add(act[0].group)
            taken_back.add(act[0].undoes)
    return standing


def _taken_back(
    log: tuple[Change, ...], act: list[Change], device: str, person: str, time: str, group: str,
    new_id: Callable[[], str],
) -> TakenBack:  # fmt: skip
    """New changes that set each field an act wrote back to what it was before."""
    state = fold(log)
    made = {change.object for change in act if change.makes}
    steps: list[Change] = []
    left: list[str] = []
    blank = Change(
        id="", group=group, device=device, person=person, time=time, object="", field="", seen=None, new=None,
        undoes=act[0].group,
    )  # fmt: skip
    for first, last in _by_place(act):
        if first.field and any(_within(first.object, path) for path in made):
            continue  # gone with its object, and back with it
        if not _still_stands(state, last, log):
            left.append(last.id)
        elif first.field:
            seen = state.fields[(first.object, first.field)].value
            steps.append(replace(blank, object=first.object, field=first.field, seen=seen, new=first.seen))
        elif last.makes and not any(_within(first.object, path) and path != first.object for path in made):
            steps.append(replace(blank, object=first.object, seen=_part(document(state), first.object)))
        elif last.takes_away:
            steps.append(replace(blank, object=first.object, new={}))
    return TakenBack(act[0].group, tuple(replace(step, id=new_id()) for step in steps), tuple(left))


def _by_place(act: list[Change]) -> Iterator[tuple[Change, Change]]:
    """The first and the last change an act made at each place, last places first."""
    found: dict[tuple[str, str], tuple[Change, Change]] = {}
    for change in act:
        place = (change.object, change.field)
        found[place] = (found[place][0] if place in found else change, change)
    return reversed(list(found.values()))


def _still_stands(state: Snapshot, last: Change, log: tuple[Change, ...]) -> bool:
    """Whether what an act left at a place is what stands there, with nobody else's writing since."""
    since = (c for c in log if c.key > last.key and c.device != last.device)
    if last.field:
        standing = state.fields.get((last.object, last.field))
        touched = any((c.object, c.field) == (last.object, last.field) for c in since)
        return standing is not None and same(standing.value, last.new) and not touched
    presence = state.objects.get(last.object)
    if presence is None or presence.value is not last.makes:
        return False
    if last.takes_away:
        return not any(c.object == last.object and not c.field for c in since)
    return not any(_within(c.object, last.object) for c in since)


def _within(path: str, outer: str) -> bool:
    return path == outer or path.startswith(f"{outer}.")


def _part(whole: Json, path: str) -> Json:
    """An object of the document."""
    for step in path.split(".") if path else ():
        whole = whole.get(step) if isinstance(whole, dict) else None
    return whole
