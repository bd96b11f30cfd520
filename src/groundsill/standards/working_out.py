"""Working out a formula from typed names and values, as ``groundsill formula`` and the tests do.

In: a formula and a mapping of argument names to numbers, words, yes/no answers or lists. Out: whatever
the formula gives. Every wrong name and value is answered at once, one fault for each, before anything is computed.
Numbers are in the units the formula states; reading feet and inches is the door's work.
"""

from __future__ import annotations

import difflib
import inspect
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import NoneType, UnionType
from typing import Annotated, Any, Union, get_args, get_origin, get_type_hints

from groundsill.working.equation import Equation, Procedure, Q
from groundsill.working.errors import BadSurvey, Fault
from groundsill.working.sheet import open_sheet
from groundsill.working.steps import given
from groundsill.working.table import Table

__all__ = ["Argument", "Input", "arguments_of", "work_out"]

Input = float | str | bool | None | Sequence[float]

_YES_NO = {"yes": True, "true": True, "no": False, "false": False}
_UNKNOWN = ("", "unknown", "none")


@dataclass(frozen=True, slots=True)
class Argument:
    """How one argument is read: as ``number``, ``words``, ``yes or no`` or ``list``; whether it may be unknown.

    ``default`` is what stands when it is left out, where it may be.
    """

    name: str
    kind: str
    q: Q
    optional: bool
    required: bool
    default: Any = None

    def asked_for(self) -> str:
        """What may stand here, in words."""
        unit = f" in {self.q.unit}" if self.q.unit not in ("", "1") else ""
        words = {
            "number": f"a number{unit}",
            "words": "words",
            "yes or no": "yes or no",
            "list": f"numbers{unit}, parted by commas",
        }[self.kind]
        what = f" ({self.q.what})" if self.q.what else ""
        return f"it takes {words}{what}" + (", or unknown" if self.optional else "")


def work_out(maker: Equation[Any] | Procedure[Any, Any] | Table, inputs: Mapping[str, Input]) -> Any:
    """Work a formula out from named inputs; a table takes ``row`` with ``column``, or with ``at`` to interpolate.

    With a sheet open the numbers put into a procedure stand on it as given.

    Raises:
        BadSurvey: one fault for each unknown, missing or unreadable argument.
        OutsideLimits: when the formula's own limits are not kept.
    """
    if isinstance(maker, Table):
        return _read_table(maker, inputs)
    return maker(**_read_all(maker.id, arguments_of(maker), inputs, isinstance(maker, Procedure)))


def _read_table(table: Table, inputs: Mapping[str, Input]) -> float:
    place = "at" if "at" in inputs else "column"
    rows = Argument("row", "words", Q("", table.row_key, table.row_key), False, True)
    kind = "number" if place == "at" or not isinstance(table.columns[0], str) else "words"
    where = Argument(place, kind, Q("", table.column_key, table.column_key), False, len(table.columns) > 1)
    read = _read_all(table.cite, (rows, where), inputs, False)
    symbol = table.symbol or "x"  # of a table whose columns are different things, the figure asked for
    if place == "at":
        return table.interpolate(read["row"], read["at"], symbol)
    return table.read(read["row"], read.get("column"), symbol)


def arguments_of(maker: Equation[Any] | Procedure[Any, Any]) -> tuple[Argument, ...]:
    """Every argument of a formula, in order, and how what is typed for it is read."""
    hints = get_type_hints(maker.body, include_extras=True)
    found = []
    for name, parameter in inspect.signature(maker.body).parameters.items():
        kind, q, optional = _kind_of(hints.get(name, float), name)
        required = parameter.default is inspect.Parameter.empty
        found.append(Argument(name, kind, q, optional, required, None if required else parameter.default))
    return tuple(found)


def _kind_of(hint: Any, name: str) -> tuple[str, Q, bool]:
    """How a type hint is read: its kind, its quantity, and whether it may be unknown."""
    q, optional = Q("", name, ""), False
    while True:
        if get_origin(hint) is Annotated:
            hint, *extras = get_args(hint)
            q = next((m for m in extras if isinstance(m, Q)), q)
        elif get_origin(hint) in (Union, UnionType):
            optional = optional or NoneType in get_args(hint)
            hint = next(part for part in get_args(hint) if part is not NoneType)
        else:
            break
    if hint is bool:
        return "yes or no", q, optional
    if hint in (float, int):
        return "number", q, optional
    if get_origin(hint) in (Sequence, list, tuple):
        return "list", q, optional
    return "words", q, optional


def _read_all(id: str, arguments: tuple[Argument, ...], inputs: Mapping[str, Input], on_paper: bool) -> dict[str, Any]:
    faults = []
    names = [argument.name for argument in arguments]
    for name, value in inputs.items():
        if name not in names:
            close = difflib.get_close_matches(name, names, n=1)
            near = f"; did you mean {close[0]}?" if close else ""
            allowed = f"the arguments are {', '.join(names)}{near}" if names else "there is no argument"
            faults.append(Fault(f"{id}: {name}", repr(value), allowed))
    read: dict[str, Any] = {}
    for argument in arguments:
        path = f"{id}: {argument.name}"
        if argument.name not in inputs:
            if argument.required:
                faults.append(Fault(path, "nothing", argument.asked_for()))
            continue
        try:
            read[argument.name] = _value(argument, inputs[argument.name], on_paper)
        except (ValueError, TypeError):
            faults.append(Fault(path, repr(inputs[argument.name]), argument.asked_for()))
    if faults:
        raise BadSurvey(tuple(faults))
    return read


def _value(argument: Argument, value: Input, on_paper: bool) -> Any:
    if argument.optional and (value is None or (isinstance(value, str) and value.strip().lower() in _UNKNOWN)):
        return None
    if argument.kind == "words":
        if isinstance(value, str):
            return value
        if isinstance(value, (int, float)) and not isinstance(value, bool):
            return f"{value:g}"
        raise ValueError
    if argument.kind == "yes or no":
        if isinstance(value, bool):
            return value
        if isinstance(value, str) and value.strip().lower() in _YES_NO:
            return _YES_NO[value.strip().lower()]
        raise ValueError
    if argument.kind == "list":
        parts = value.split(",") if isinstance(value, str) else value
        if not isinstance(parts, Sequence):
            raise ValueError
        return tuple(_number(argument, part, on_paper) for part in parts)
    return _number(argument, value, on_paper)


def _number(argument: Argument, value: object, on_paper: bool) -> float:
    if isinstance(value, bool) or not isinstance(value, (int, float, str)):
        raise ValueError
    number = float(value) if isinstance(value, str) else value
    if on_paper and open_sheet() is not None and argument.q.unit:
        return given(argument.q.symbol, number, argument.q.unit, argument.q.what or "as entered")
    return number
