"""What the survey's classes say of themselves, read once from their annotations and field metadata.

The checks, the settling of doubtful facts, the log of changes, the decoder and the schema all walk the same classes;
this is the one reading they share. In comes a frozen dataclass (``Survey``, ``Bolt``, or a class of a higher room);
out come its fields, each with its shape, label, unit, limits and the collection it refers to, and walks over objects
built of them. Nothing here knows a class by name except :class:`Fact` and :class:`Point`.
"""

from __future__ import annotations

import types
from collections.abc import Callable, Hashable
from dataclasses import MISSING, dataclass, fields, is_dataclass
from functools import lru_cache
from typing import Any, Final, Literal, TypeVar, Union, cast, get_args, get_origin, get_type_hints

from groundsill.house.building import Point
from groundsill.house.fact import Fact
from groundsill.working.measure import Kind, kind_of

__all__ = [
    "ID_PATTERN", "ID_WORDS", "FieldFacts", "Place", "Shape", "fields_of", "is_value", "measured_as", "member",
    "places", "words",
]  # fmt: skip

ID_PATTERN: Final = "^[a-z0-9][a-z0-9-]{2,39}$"
ID_WORDS: Final = "an id of 3 to 40 small letters, digits and dashes, beginning with a letter or digit"

ShapeKind = Literal["number", "whole", "text", "flag", "choice", "fact", "object", "map", "list"]

_UNIT_WORDS: Final = types.MappingProxyType(
    {
        "in": "inches",
        "deg": "degrees",
        "psf": "pounds per square foot",
        "pcf": "pounds per cubic foot",
        "psi": "pounds per square inch",
        "lb": "pounds",
        "in/ft": "inches per foot",
        "in/h": "inches per hour",
        "mph": "miles per hour",
        "g": "parts of gravity",
    }
)


@dataclass(frozen=True, slots=True)
class Shape:
    """The form of a field's value.

    ``item`` is the form of a fact's value, of a map's members or of a list's items; ``classes`` are the dataclass of an
    object, or several that their ``kind`` tells apart; ``optional`` says that nothing may stand there.
    """

    kind: ShapeKind
    item: Shape | None = None
    classes: tuple[type, ...] = ()
    choices: tuple[str, ...] = ()
    optional: bool = False


@dataclass(frozen=True, slots=True)
class FieldFacts:
    """One field of a class: its name, shape and default, and what :func:`~groundsill.house.fact.about` says of it.

    ``make`` makes the default anew, where it is a map or an object; ``default`` is for comparing.
    """

    name: str
    shape: Shape
    required: bool
    default: Any
    make: Callable[[], Any] | None
    label: str
    unit: str = ""
    help: str = ""
    measure: str = ""
    least: float | None = None
    most: float | None = None
    refers: str = ""
    choices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Place:
    """One field of one object met on a walk: its path, the object, the field's facts, the value that stands there."""

    path: str
    owner: Any
    field: FieldFacts
    value: Any


def fields_of(cls: type[Any]) -> tuple[FieldFacts, ...]:
    """The fields of a survey class in their written order."""
    return tuple(_by_name(cast(Hashable, cls)).values())


def member(cls: type[Any], name: str) -> FieldFacts | None:
    """The facts of one field, or None when the class has no such field."""
    return _by_name(cast(Hashable, cls)).get(name)


@lru_cache(maxsize=256)
def _by_name(cls: Any) -> dict[str, FieldFacts]:
    """The fields of a class by name, read once; nobody changes the map."""
    hints = get_type_hints(cls)
    return {f.name: _facts_of(f, hints[f.name]) for f in fields(cls)}


def _facts_of(field: Any, hint: Any) -> FieldFacts:
    """Read one dataclass field."""
    make = None if field.default_factory is MISSING else field.default_factory
    required = field.default is MISSING and make is None
    default = make() if make else None if required else field.default
    told = dict(field.metadata)
    label = told.pop("label", "") or _FALLBACK_LABELS.get(field.name, field.name.replace("_", " ").capitalize())
    return FieldFacts(
        name=field.name, shape=_shape(hint), required=required, default=default, make=make, label=label, **told
    )


_FALLBACK_LABELS: Final = types.MappingProxyType({"order": "Order in lists", "mark": "Mark on paper (L2, S5)"})
_PLAIN: Final[dict[Any, ShapeKind]] = {float: "number", int: "whole", str: "text", bool: "flag"}


def _shape(hint: Any) -> Shape:
    """The shape an annotation describes."""
    origin, arguments = get_origin(hint), get_args(hint)
    if hint in _PLAIN:
        return Shape(_PLAIN[hint])
    if isinstance(hint, TypeVar):  # of Fact itself, whose value is of whatever shape its owner's field says
        return Shape("number")
    if origin is Literal:
        return Shape("choice", choices=arguments)
    if origin is Fact:
        return Shape("fact", item=_shape(arguments[0]))
    if origin is dict:
        return Shape("map", item=_shape(arguments[1]))
    if origin is tuple:
        return Shape("list", item=_shape(arguments[0]))
    if origin in (Union, types.UnionType):
        kinds = [a for a in arguments if a is not type(None)]
        if len(kinds) > 1:
            return Shape("object", classes=tuple(kinds), optional=len(kinds) < len(arguments))
        inner = _shape(kinds[0])
        return Shape(inner.kind, inner.item, inner.classes, inner.choices, optional=True)
    if is_dataclass(hint) and isinstance(hint, type):
        return Shape("object", classes=(hint,))
    raise TypeError(f"a survey class may not hold {hint!r}")


def is_value(shape: Shape) -> bool:
    """Whether a field is one value of the log: a number, fact, choice, list or point, and not an object or a map."""
    return shape.kind not in ("object", "map") or shape.classes == (Point,)


def places(owner: Any, path: str) -> list[Place]:
    """Every field of an object and of the objects inside it, with its path (``survey.underfloor.bolts.k7h2.nut``).

    A field that holds an object, a map or a list of objects is given itself, and then what is inside it. A list's items
    are numbered from 0.
    """
    found: list[Place] = []
    _gather(owner, path, found)
    return found


def _gather(owner: Any, path: str, found: list[Place]) -> None:
    """Add the fields of an object, and of what is inside them, to those found."""
    for facts in fields_of(type(owner)):
        here = f"{path}.{facts.name}" if path else facts.name
        value, shape = getattr(owner, facts.name), facts.shape
        found.append(Place(here, owner, facts, value))
        if shape.kind == "object" and is_dataclass(value):
            _gather(value, here, found)
        elif shape.item and shape.item.kind == "object" and isinstance(value, dict | tuple):
            items = value.items() if isinstance(value, dict) else enumerate(value)
            for key, item in items:
                if is_dataclass(item):
                    _gather(item, f"{here}.{key}", found)


def measured_as(facts: FieldFacts) -> tuple[Kind, str] | None:
    """How a text typed into a field is read: kind of quantity and unit inside; None where nothing is measured."""
    shape = facts.shape.item if facts.shape.kind == "fact" and facts.shape.item else facts.shape
    if shape.kind != "number":
        return None
    if "slope" in facts.name and not facts.unit:
        return "slope", "1"
    kind = kind_of(facts.unit) if facts.unit else None
    return (kind, facts.unit) if kind and kind != "ratio" else None


def words(facts: FieldFacts, shape: Shape | None = None) -> str:
    """What may stand in a field, in words: ``a number of inches from 0.25 to 1.5``."""
    shape = shape or facts.shape
    if shape.kind == "fact" and shape.item:
        return f"{words(facts, shape.item)}, alone or in an object with value, low, high, state and how"
    if shape.kind == "list" and shape.item:
        return f"a list, each {words(facts, shape.item)}"
    if shape.kind == "map":
        return f"an object whose keys are ids; {ID_WORDS}"
    if shape.kind == "object":
        names = [f.name for f in fields_of(shape.classes[0])] if len(shape.classes) == 1 else ["kind"]
        return f"an object with {', '.join(names)}"
    if shape.kind in ("number", "whole"):
        return _number_words(facts, shape)
    choices = shape.choices or (facts.choices if shape.kind == "text" else ())
    if choices:
        return "one of " + ", ".join(f'"{choice}"' for choice in choices)
    if shape.kind == "flag":
        return "true or false"
    return f"the id of one of {facts.refers}" if facts.refers else "text"


def _number_words(facts: FieldFacts, shape: Shape) -> str:
    """A number, its unit and its range."""
    what = "a whole number" if shape.kind == "whole" else "a number"
    if facts.unit:
        what += f" of {_UNIT_WORDS.get(facts.unit, facts.unit)}"
    if facts.least is not None and facts.most is not None:
        return f"{what} from {facts.least:g} to {facts.most:g}"
    if facts.least is not None:
        return f"{what}, at least {facts.least:g}"
    if facts.most is not None:
        return f"{what}, at most {facts.most:g}"
    return what
