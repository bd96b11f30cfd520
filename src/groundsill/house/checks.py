"""Is a survey sound: every number finite and within its limits, every reference leading somewhere, every part fitting.

A fault is something that cannot be right, whoever measured it; what is merely not known yet is told by
:mod:`groundsill.house.missing`. These checks hold for any survey that can be decoded and never raise; a survey made in
Python with values of the wrong type gets a fault for each and no more questions.
"""

from __future__ import annotations

import datetime
import math
import re
from collections.abc import Iterable, Iterator, Sequence
from typing import Any, Final

from groundsill.house.fact import Fact
from groundsill.house.fits import fit_faults
from groundsill.house.model import ID_PATTERN, ID_WORDS, FieldFacts, Place, Shape, measured_as, places, words
from groundsill.house.survey import Survey
from groundsill.working.errors import Fault
from groundsill.working.measure import MeasureError, read

__all__ = ["check_survey", "field_faults", "is_file_name", "reference_faults", "type_faults"]

_ID = re.compile(ID_PATTERN)
_TIME = r"T(\d{2}):(\d{2})(?::(\d{2})(?:\.\d{1,6})?)?(?:Z|[+-]\d{2}:\d{2})?"
_DATE = re.compile(rf"(\d{{4}})(?:-(\d{{2}})(?:-(\d{{2}})(?:{_TIME})?)?)?", re.ASCII)
_DATES: Final = frozenset({"when", "surveyed_on"})
_DATE_WORDS: Final = "a date like 2026-04-02, with 2026-04 or 2026 where the day is not known"
_BAD_IN_NAMES = re.compile(r'[\x00-\x1f\x7f/\\:*?"<>|]')


def check_survey(survey: Survey, at: str = "survey") -> tuple[Fault, ...]:
    """Every fault of a survey, in the order of the file.

    Args:
        survey: as decoded, folded from a log, or made in Python.
        at: the path the survey stands at, for messages.
    """
    met = places(survey, at)
    wrong_types = tuple(_types(met))
    if wrong_types:
        return wrong_types
    collections = [(place.path, place.value) for place in met if place.field.shape.kind == "map"]
    return (
        *_fields(met),
        *_id_faults(collections),
        *_references(met, survey),
        *_on_faults(survey, collections, at),
        *fit_faults(survey, at),
    )


def is_file_name(name: str) -> bool:
    """Whether a text is a plain name for a file beside the survey: no folders, no signs that some system forbids."""
    plain = 0 < len(name.encode("utf-8", "replace")) <= 120 and not _BAD_IN_NAMES.search(name)
    return plain and not name.startswith(".") and not name.endswith((".", " "))


# ---- Types, for houses made in Python -------------------------------------------------------------------------------

_TYPES: Final[dict[str, tuple[type, ...]]] = {
    "number": (int, float), "whole": (int,), "text": (str,), "flag": (bool,), "choice": (str,), "map": (dict,),
    "list": (tuple,), "fact": (Fact,),
}  # fmt: skip


def type_faults(owner: Any, at: str) -> Iterator[Fault]:
    """A fault for each value that is not of the kind its field holds."""
    return _types(places(owner, at))


def _types(met: Iterable[Place]) -> Iterator[Fault]:
    for place in met:
        if not _is_of(place.value, place.field.shape):
            yield Fault(place.path, repr(place.value)[:60], words(place.field))


def _is_of(value: Any, shape: Shape) -> bool:
    """Whether a value has the shape of its field."""
    if value is None:
        return shape.optional
    if shape.kind == "object":
        return isinstance(value, shape.classes)
    if isinstance(value, bool) and shape.kind != "flag":
        return False
    return isinstance(value, _TYPES[shape.kind]) and _holds(value, shape)


def _holds(value: Any, shape: Shape) -> bool:
    """Whether what a map, list or fact holds has the shape asked for."""
    item = shape.item
    if shape.kind == "map" and item:
        return all(isinstance(key, str) and _is_of(inner, item) for key, inner in value.items())
    if shape.kind == "list" and item:
        return all(_is_of(inner, item) for inner in value)
    if shape.kind == "fact" and item:
        numbers = (value.value, value.low, value.high)
        texts = (value.state, value.how, value.by, value.when, value.typed)
        return all(n is None or _is_of(n, item) for n in numbers) and all(isinstance(t, str) for t in texts)
    return True


# ---- Fields ---------------------------------------------------------------------------------------------------------


def field_faults(owner: Any, at: str) -> Iterator[Fault]:
    """Faults that one field shows by itself: limits, choices, states of facts, dates, ids, file names."""
    return _fields(places(owner, at))


def _fields(met: Iterable[Place]) -> Iterator[Fault]:
    for place in met:
        shape, value = place.field.shape, place.value
        if value is None:
            continue
        if shape.kind == "fact":
            yield from _fact_faults(place)
        elif shape.kind in ("number", "whole"):
            yield from _number_faults(place.path, value, place.field, shape)
        elif shape.kind == "choice":
            if value not in shape.choices:
                yield Fault(place.path, f'"{value[:60]}"', words(place.field))
        elif shape.kind == "map":
            for key in value:
                if not _ID.fullmatch(key):
                    yield Fault(f"{place.path}.{key[:60]}", "this id", ID_WORDS)
        elif shape.kind == "text":
            yield from _text_faults(place)


def _number_faults(path: str, value: float, facts: FieldFacts, shape: Shape) -> Iterator[Fault]:
    """A number that is not finite or outside the field's limits."""
    least = -math.inf if facts.least is None else facts.least
    most = math.inf if facts.most is None else facts.most
    if not math.isfinite(value) or not least <= value <= most:
        yield Fault(path, f"{value:.12g}", words(facts, shape))


def _text_faults(place: Place) -> Iterator[Fault]:
    """Dates, names of files, and materials that must be named."""
    name, text = place.field.name, place.value
    if name in _DATES and text and not _is_date(text):
        yield Fault(place.path, f'"{text[:60]}"', _DATE_WORDS)
    if name == "file" and not is_file_name(text):
        yield Fault(place.path, f'"{text[:60]}"', "a plain file name, without folders")
    if place.field.required and name in ("material", "name") and not text.strip():
        yield Fault(place.path, f'"{text[:60]}"', f"{place.field.label.lower()} in words")


def _is_date(text: str) -> bool:
    found = _DATE.fullmatch(text)
    if found is None:
        return False
    year, month, day, hour, minute, second = (int(part) if part else None for part in found.groups())
    try:
        datetime.datetime(year or 0, month or 1, day or 1, hour or 0, minute or 0, second or 0)
    except ValueError:
        return False
    return True


def _fact_faults(place: Place) -> Iterator[Fault]:
    """A fact whose parts do not agree with each other or with its field."""
    fact, facts, item = place.value, place.field, place.field.shape.item
    if item is None:
        return
    for name in ("value", "low", "high"):
        number = getattr(fact, name)
        if number is None:
            continue
        path = place.path if name == "value" else f"{place.path}.{name}"
        if item.kind == "number":
            yield from _number_faults(path, number, facts, item)
        elif name != "value":
            yield Fault(path, repr(number)[:60], "only a number may have low and high")
        elif facts.choices and number not in facts.choices:
            yield Fault(path, f'"{str(number)[:60]}"', words(facts, item))
    yield from _state_faults(place.path, fact)
    if item.kind == "number":
        yield from _range_faults(place.path, fact)
        yield from _typed_faults(place.path, fact, facts)
    if fact.when and not _is_date(fact.when):
        yield Fault(f"{place.path}.when", f'"{fact.when[:60]}"', _DATE_WORDS)


def _state_faults(path: str, fact: Fact[Any]) -> Iterator[Fault]:
    """Whether a value stands where the state says one is known, and only there."""
    if fact.state not in ("measured", "estimated", "unknown", "absent"):
        yield Fault(f"{path}.state", f'"{fact.state[:60]}"', "one of measured, estimated, unknown, absent")
    elif fact.state in ("measured", "estimated") and fact.value is None:
        yield Fault(f"{path}.value", "nothing", f"a fact that is {fact.state} has a value; say unknown if it has none")
    elif fact.state == "unknown" and fact.value is not None:
        yield Fault(f"{path}.value", f"{fact.value}", "a fact that is unknown has no value; say estimated")
    elif fact.state == "absent" and (fact.value is not None or fact.low is not None or fact.high is not None):
        yield Fault(f"{path}.state", '"absent" with a value', "absent says: looked for, and not there")


def _range_faults(path: str, fact: Fact[Any]) -> Iterator[Fault]:
    """Ends that are out of order, or one without the other."""
    low, high, value = fact.low, fact.high, fact.value
    if (low is None) != (high is None):
        given, other = ("low", "high") if high is None else ("high", "low")
        yield Fault(f"{path}.{given}", f"{low if high is None else high} alone", f"give {other} too, or neither")
    elif low is not None and high is not None and low > high:
        yield Fault(f"{path}.low", f"{low:g} above high {high:g}", "low may not be above high")
    elif low is not None and high is not None and value is not None and not low <= value <= high:
        yield Fault(path, f"{value:g}", f"a value between its low {low:g} and its high {high:g}")


def _typed_faults(path: str, fact: Fact[Any], facts: FieldFacts) -> Iterator[Fault]:
    """What a person typed and the number beside it that disagree."""
    if not fact.typed or fact.value is None:
        return
    how = measured_as(facts)
    if how is None:
        return
    try:
        measure = read(fact.typed, how[0], how[1])
    except MeasureError:
        return  # a note of the surveyor's ("about a foot"), not a measure
    near = 1 / 16 if facts.unit == "in" else 0.0
    if abs(measure.number - fact.value) > max(near, 0.005 * abs(measure.number)):
        allowed = f'the number that was typed, "{fact.typed}", which is {measure.number:.6g}'
        yield Fault(path, f"{fact.value:g}", allowed)


# ---- Ids and references ---------------------------------------------------------------------------------------------


Collections = Sequence[tuple[str, dict[str, Any]]]  # every collection of objects by id, with its path


def _id_faults(collections: Collections) -> Iterator[Fault]:
    """An id names one object of the house, so that an observation or a change can point at it."""
    seen: dict[str, str] = {}
    for path, collection in collections:
        for key in collection:
            if key in seen:
                yield Fault(f"{path}.{key}", "this id", f"an id of its own; {seen[key]}.{key} has it already")
            seen.setdefault(key, path)


def reference_faults(owner: Any, survey: Survey, at: str) -> Iterator[Fault]:
    """References that lead nowhere."""
    return _references(places(owner, at), survey)


def _references(met: Iterable[Place], survey: Survey) -> Iterator[Fault]:
    for place in met:
        refers = place.field.refers
        if not refers or place.value is None:
            continue
        known = _collection(survey, refers)
        named = place.value if isinstance(place.value, tuple) else (place.value,)
        for index, key in enumerate(named):
            if key not in known:
                path = f"{place.path}.{index}" if isinstance(place.value, tuple) else place.path
                yield Fault(path, f'"{key[:60]}"', f"the id of one of {refers}: {_some(known)}")


def _collection(survey: Survey, refers: str) -> dict[str, Any]:
    found: Any = survey
    for name in refers.split("."):
        found = getattr(found, name)
    return found if isinstance(found, dict) else {}


def _some(known: dict[str, Any]) -> str:
    """The first few ids there are."""
    ids = sorted(known)
    return ", ".join(ids[:6]) + (f" and {len(ids) - 6} more" if len(ids) > 6 else "") if ids else "there are none yet"


def _on_faults(survey: Survey, collections: Collections, at: str) -> Iterator[Fault]:
    """Observations and monitors that sit on an object that is not there."""
    ids = {key for _, collection in collections for key in collection}
    for name in ("observations", "monitors"):
        for key, item in getattr(survey, name).items():
            if item.on is not None and item.on not in ids:
                yield Fault(f"{at}.{name}.{key}.on", f'"{item.on[:60]}"', "the id of any object of the survey")
