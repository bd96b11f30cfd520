"""Facts that may lie elsewhere, and a house settled on one value for each.

The engine never sees a range: it is given a house in which every fact is one plain value, runs at the best value of
all, and again at either end of each uncertain one. A fact nobody could see takes the range that its age and material
allow (:mod:`groundsill.house.ranges`), with its marks; where nothing can be assumed it stays unknown, and what needs it
cannot be checked. :func:`prepare` reads a house once; :meth:`Settling.at` then changes one end in microseconds, because
only the objects along the way are made anew.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Mapping
from dataclasses import dataclass, field, is_dataclass, replace
from functools import lru_cache, partial
from types import MappingProxyType
from typing import Any, Final, Generic, Literal, Protocol, TypeVar, cast

from groundsill.house.cores import range_by_cores
from groundsill.house.fact import Fact, FactState, watched
from groundsill.house.model import FieldFacts, Shape, fields_of
from groundsill.house.ranges import Assumed, Years, assumed_for, rules
from groundsill.house.survey import Survey, in_order
from groundsill.working.value import Mark

__all__ = ["Document", "End", "FactRef", "Settled", "Settling", "prepare", "settle", "uncertain_facts"]

End = Literal["low", "best", "high"]
Worth = float | bool | str


class Document(Protocol):
    """Anything that holds a survey: the house document of a higher room."""

    @property
    def survey(self) -> Survey:
        """The house as found."""


D = TypeVar("D", bound=Document)


@dataclass(frozen=True, slots=True)
class FactRef:
    """A fact that may lie elsewhere: where it stands, what it may be, and how that is known.

    ``low``, ``best`` and ``high`` are numbers in ``unit``, or true and false, or words. ``assumed`` says that nobody
    gave the range: it comes from age and material. ``why`` says where it comes from.
    """

    path: str
    label: str
    unit: str
    low: Worth
    best: Worth
    high: Worth
    assumed: bool
    why: str


@dataclass(frozen=True, slots=True)
class Settled(Generic[D]):
    """A house with every fact settled, and the marks of those that were not plainly measured, by path."""

    house: D
    marks: Mapping[str, tuple[Mark, ...]]


@dataclass(frozen=True, slots=True)
class Settling(Generic[D]):
    """A house read once for settling: settled at the best of everything, and the facts that may lie elsewhere."""

    best: Settled[D]
    facts: tuple[FactRef, ...]
    _by_path: Mapping[str, tuple[FactRef, Fact[Any]]] = field(repr=False)
    _looked: Callable[[str], object] | None = field(default=None, repr=False)

    def at(self, ends: Mapping[FactRef | str, End] | Mapping[str, End]) -> Settled[D]:
        """The house with some facts at an end of their range and all others at their best.

        Raises:
            KeyError: for a fact that is not uncertain in this house.
        """
        tree: dict[str, Any] = {}
        for which, end in ends.items():
            path = which if isinstance(which, str) else which.path
            if path not in self._by_path:
                raise KeyError(f"{path} is not an uncertain fact of this house")
            if end != "best":
                _plant(tree, path, self._at(path, end))
        if not tree:
            return self.best
        return Settled(cast(D, _rebuilt(self.best.house, tree)), self.best.marks)

    def watched(self, looked: Callable[[str], object]) -> Settling[D]:
        """The same house, in which every uncertain fact calls ``looked`` with its path whenever its value is read."""
        watching, tree = replace(self, _looked=looked), dict[str, Any]()
        for path in self._by_path:
            _plant(tree, path, watching._at(path, "best"))
        house = cast(D, _rebuilt(self.best.house, tree)) if tree else self.best.house
        return replace(watching, best=Settled(house, self.best.marks))

    def _at(self, path: str, end: End) -> Fact[Any]:
        ref, fact = self._by_path[path]
        settled = replace(fact, value=getattr(ref, end))
        return settled if self._looked is None else watched(settled, partial(self._looked, path))


def uncertain_facts(house: Document) -> tuple[FactRef, ...]:
    """Every fact of a house that may lie elsewhere within a range, collection by collection in their order."""
    return prepare(house).facts


def settle(house: D, ends: Mapping[FactRef | str, End] = MappingProxyType({})) -> Settled[D]:
    """A house with every fact settled: those named at the end asked for, all others at their best.

    To settle one house many times, :func:`prepare` it once.
    """
    return prepare(house).at(ends)


def prepare(house: D) -> Settling[D]:
    """Read a house for settling. Facts already plain stay the very objects they are."""
    tree: dict[str, Any] = {}
    marks: dict[str, tuple[Mark, ...]] = {}
    facts: dict[str, tuple[FactRef, Fact[Any]]] = {}
    for place in _facts_in(house.survey):
        found = _settled(place)
        if found is None:
            continue
        settled, ref, carried = found
        if carried:
            marks[place.path] = carried
        if settled != place.fact:
            _plant(tree, place.path, settled)
        if ref.low != ref.high:
            facts[place.path] = (ref, settled)
    best = cast(D, _rebuilt(house, tree))
    settled_best = Settled(best, MappingProxyType(marks))
    return Settling(settled_best, tuple(ref for ref, _ in facts.values()), MappingProxyType(facts))


# ---- One fact -------------------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Place:
    """A fact met on the walk: its path, its path without ids, its owners, the mark of the object it belongs to.

    ``owners`` are the object that holds the fact and those around it, innermost first.
    """

    path: str
    key: str
    owners: tuple[Any, ...]
    mark: str
    facts: FieldFacts
    fact: Fact[Any]
    survey: Survey

    @property
    def label(self) -> str:
        """``Thickness (K1)``."""
        return f"{self.facts.label} ({self.mark})" if self.mark else self.facts.label


def _settled(place: _Place) -> tuple[Fact[Any], FactRef, tuple[Mark, ...]] | None:
    """A fact that is more than a plain value on one value, what it may be, and its marks; None if it stays unknown."""
    fact = place.fact
    if fact.value is not None:
        return _from_survey(place, fact.value)
    if place.key not in rules() and (fact.low is None or fact.high is None):
        return None
    assumed = assumed_for(place.key, lambda name: _in_words(place.owners, name), _years(place))
    tested = _by_cores(place, assumed)
    if tested is not None and (fact.low is None or fact.high is None):
        return _from_range(place, tested)
    if fact.low is not None and fact.high is not None:
        inside = assumed.best if assumed else None
        if not isinstance(inside, float) or not fact.low <= inside <= fact.high:
            inside = (fact.low + fact.high) / 2
        return _from_survey(place, inside)
    return _from_range(place, assumed) if assumed else None


def _by_cores(place: _Place, by_age: Assumed | None) -> Assumed | None:
    """What cores leave of the strength of a stretch of concrete; None for any other fact, or without cores."""
    if place.key != "survey.foundation.segments.strength_psi":
        return None
    return range_by_cores(place.survey, place.path.split(".")[3], by_age)


def _from_survey(place: _Place, best: Worth) -> tuple[Fact[Any], FactRef, tuple[Mark, ...]]:
    """A fact whose range, if it has one, the surveyor gave."""
    fact = place.fact
    low = best if fact.low is None else fact.low
    high = best if fact.high is None else fact.high
    why = f"{fact.state}{': ' if fact.how else ''}{fact.how}"
    ref = FactRef(place.path, place.label, place.facts.unit, low, best, high, assumed=False, why=why)
    marks: tuple[Mark, ...] = ()
    if fact.state == "estimated":
        marks = (Mark("estimated", f"{place.label}: {_range_words(ref)}"),)
    elif fact.state == "unknown":
        marks = (Mark("assumed range", f"{place.label}: {_range_words(ref)}, between the surveyor's bounds"),)
    return replace(fact, value=best, low=None, high=None), ref, marks


def _from_range(place: _Place, assumed: Assumed) -> tuple[Fact[Any], FactRef, tuple[Mark, ...]]:
    """A fact nobody could see, on the range that age and material allow, or that tests of it leave."""
    how = "; ".join(part for part in (place.fact.how, assumed.words) if part)
    tested = any(m.kind == "estimated" for m in assumed.marks)
    ref = FactRef(
        place.path, place.label, place.facts.unit, assumed.low, assumed.best, assumed.high, assumed=not tested, why=how
    )
    mark = Mark("estimated" if tested else "assumed range", f"{place.label}: {_range_words(ref)}")
    others = tuple(m for m in assumed.marks if m.kind not in ("assumed range", "estimated"))
    state: FactState = "estimated" if tested else place.fact.state
    settled = replace(place.fact, value=assumed.best, low=None, high=None, how=how, state=state)
    return settled, ref, (mark, *others)


def _range_words(ref: FactRef) -> str:
    """``1.75 in, from 1.625 to 2``."""
    best = f"{_worth(ref.best)}{f' {ref.unit}' if ref.unit else ''}"
    return best if ref.low == ref.high else f"{best}, from {_worth(ref.low)} to {_worth(ref.high)}"


def _worth(worth: Worth) -> str:
    if isinstance(worth, bool):
        return "yes" if worth else "no"
    return worth if isinstance(worth, str) else f"{worth:g}"


def _in_words(owners: tuple[Any, ...], name: str) -> str | None:
    """A field beside the fact or of an object around it, in words, for the conditions of a range."""
    value = next((getattr(owner, name) for owner in owners if hasattr(owner, name)), None)
    if isinstance(value, Fact):
        return "unknown" if value.value is None else str(value.value)
    return None if value is None else str(value)


def _years(place: _Place) -> Years | None:
    """Earliest, best and latest year of the thing: its own, or the house's."""
    own = [getattr(owner, "year", None) for owner in place.owners]
    for fact in (*own, place.survey.building.year_built):
        if not isinstance(fact, Fact):
            continue
        if fact.low is not None and fact.high is not None:
            best = (fact.low + fact.high) / 2 if fact.value is None else fact.value
            return fact.low, best, fact.high
        if fact.value is not None:
            return fact.value, fact.value, fact.value
    return None


# ---- The walk and the way back --------------------------------------------------------------------------------------

_HOLDERS: Final = frozenset({"fact", "object", "map", "list"})


def _facts_in(survey: Survey) -> list[_Place]:
    """Every fact of a survey that is more than a plain measure, in order."""
    found: list[_Place] = []
    _gather(found, survey, survey, "survey", "survey", "", ())
    return found


def _gather(
    found: list[_Place], survey: Survey, owner: Any, path: str, key: str, mark: str, around: tuple[Any, ...]
) -> None:
    """Add the facts of an object and of the objects inside it."""
    mark = getattr(owner, "mark", "") or getattr(owner, "name", "") or mark if around else ""
    owners = (owner, *around)
    for facts in _holders(cast(Hashable, type(owner))):
        value = getattr(owner, facts.name)
        if not value or (isinstance(value, Fact) and _plain(value)):
            continue
        here, without = f"{path}.{facts.name}", f"{key}.{facts.name}"
        if isinstance(value, Fact):
            found.append(_Place(here, without, owners, mark, facts, value, survey))
            continue
        for step, item in _objects(value, facts.shape):
            _gather(found, survey, item, f"{here}{step}", without, mark, owners)


@lru_cache(maxsize=256)
def _holders(cls: Hashable) -> tuple[FieldFacts, ...]:
    """The fields of a survey class that may hold facts."""
    return tuple(facts for facts in fields_of(cast(type[Any], cls)) if facts.shape.kind in _HOLDERS)


def _plain(fact: Fact[Any]) -> bool:
    """Whether a fact is one plain value, or was looked for and is not there."""
    if fact.state == "measured":
        return fact.value is not None and fact.low is None and fact.high is None
    return fact.state == "absent"


def _objects(value: Any, shape: Shape) -> Iterable[tuple[str, Any]]:
    """The objects a field holds, in order, each with the step of the path that leads to it."""
    if shape.kind == "object":
        return (("", value),)
    if shape.item is None or shape.item.kind != "object":
        return ()
    if shape.kind == "map":
        return ((f".{key}", item) for key, item in in_order(value))
    return ((f".{index}", item) for index, item in enumerate(value))


def _plant(tree: dict[str, Any], path: str, fact: Fact[Any]) -> None:
    """Note a new fact at its path."""
    *way, last = path.split(".")
    for step in way:
        tree = tree.setdefault(step, {})
    tree[last] = fact


def _rebuilt(owner: Any, tree: dict[str, Any]) -> Any:
    """An object with new facts in it; whatever the tree does not name is the very object it was."""
    if not tree:
        return owner
    if isinstance(owner, dict):
        return {**owner, **{key: _grown(owner[key], part) for key, part in tree.items()}}
    if isinstance(owner, tuple):
        return tuple(_grown(item, tree[str(n)]) if str(n) in tree else item for n, item in enumerate(owner))
    if not is_dataclass(owner) or isinstance(owner, type):
        raise TypeError(f"no fact can stand inside {type(owner).__name__}")
    return replace(owner, **{name: _grown(getattr(owner, name), part) for name, part in tree.items()})


def _grown(value: Any, part: Any) -> Any:
    return part if isinstance(part, Fact) else _rebuilt(value, part)
