"""The two decorators by which a published rule enters the program, and nothing else is clever here.

``@equation`` makes one published equation of one small pure function: its body sees plain floats in the document's
own units and is all there is; the calculation sheet prints the parsed body, so the formula is never typed a second
time. ``@procedure`` names a rule that is composed of equations, table look-ups and recorded arithmetic.

Limits are part of the interface. Each argument declares its own (:class:`Q`), several arguments together by
:func:`require`; a call outside them raises :class:`~groundsill.working.errors.OutsideLimits` naming symbol, value,
limit and clause. NaN and infinity never get in or out.
"""

from __future__ import annotations

import inspect
import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import update_wrapper
from typing import Any, Generic, ParamSpec, TypeVar, get_type_hints

from groundsill.working.errors import OutsideLimits, UnitError
from groundsill.working.sheet import open_sheet
from groundsill.working.source import READ_IN_PLACE, How, InPlace, Source
from groundsill.working.unit import unit
from groundsill.working.value import Mark, Value, marks_of

__all__ = ["Equation", "Procedure", "Q", "equation", "procedure", "require"]

P = ParamSpec("P")
T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Q:
    """What an argument or a result is: its unit, its symbol in the document, what it means, and its limits."""

    unit: str
    symbol: str
    what: str
    above: float | None = None
    below: float | None = None
    at_least: float | None = None
    at_most: float | None = None

    def limits(self) -> str:
        """The limits in words, or an empty text."""
        parts = []
        for word, bound in (("above", self.above), ("at least", self.at_least)):
            if bound is not None:
                parts.append(f"{word} {bound:g}")
        for word, bound in (("below", self.below), ("at most", self.at_most)):
            if bound is not None:
                parts.append(f"{word} {bound:g}")
        shown = "" if self.unit in ("1", "") else f" {self.unit}"
        return " and ".join(parts) + shown if parts else ""


def require(met: bool, what: str) -> None:
    """A limit over several arguments, inside an equation body: ``require(h <= 3.5 * b, "aspect ratio ...")``.

    Raises:
        OutsideLimits: when the condition does not hold.
    """
    if not met:
        raise OutsideLimits(what)


class Equation(Generic[P]):
    """A published equation, called like the function it is."""

    def __init__(
        self,
        body: Callable[P, float],
        id: str,
        title: str,
        clause: str,
        source: Source,
        how: How,
        witness: str | None,
        constants: dict[float, str],
    ) -> None:
        self.body = body
        self.id = id
        self.title = title
        self.clause = clause
        self.source = source
        self.how = how
        self.witness = witness
        self.constants = constants
        self._checked: Callable[..., float] | None = None
        self._named: Callable[..., tuple[tuple[str, object], ...]] | None = None
        self._signature: tuple[tuple[str, Q], ...] | None = None
        self._result: Q | None = None
        update_wrapper(self, body)

    def __call__(self, *args: P.args, **kwargs: P.kwargs) -> float:
        if (later := READ_IN_PLACE.get()) is not None and later.of.short == self.source.short:
            return later.answer(self)(*args, **kwargs)  # type: ignore[no-any-return]  # an Equation too
        checked = self._checked or self._prepare()
        if (sheet := open_sheet()) is None:
            return checked(*args, **kwargs)
        assert self._named is not None
        inputs = self._named(*args, **kwargs)
        self._same_units(inputs)
        number = checked(*(v for _, v in inputs))
        marks = marks_of(v for _, v in inputs) | self.own_marks()
        outcome = (number, self.result.unit, self.result.symbol)
        got = sheet.record("equation", self.id, self.title, self.cite, inputs, outcome, self, marks)
        assert got is not None
        return got

    @property
    def arguments(self) -> tuple[tuple[str, Q], ...]:
        """Each argument's name and what it is, in order."""
        if self._signature is None:
            self._prepare()
        assert self._signature is not None
        return self._signature

    @property
    def result(self) -> Q:
        """What the equation gives."""
        if self._result is None:
            self._prepare()
        assert self._result is not None
        return self._result

    @property
    def cite(self) -> str:
        """Document and clause, as printed beside the step."""
        return self.source.cite(self.clause)

    def own_marks(self) -> frozenset[Mark]:
        """The doubts about the equation itself: its text recalled, or no outside value to check it by."""
        marks = set()
        if self.how == "from memory":
            marks.add(Mark("from memory", f"{self.cite}, the equation"))
        if self.witness is None:
            marks.add(Mark("unverified", f"{self.cite}: no published value to check it by"))
        return frozenset(marks)

    def restated(
        self,
        id: str,
        *,
        clause: str,
        source: Source,
        module: str,
        why: str,
        how: How = "from memory",
        witness: str | None = None,
    ) -> Equation[P]:
        """The same equation as another edition prints it: this very body under that edition's id, clause and source.

        Args:
            id: permanent id in the other edition.
            clause: its place there.
            source: the other edition.
            module: the module that holds it (``__name__``), under the name of the body.
            why: how it is known that the edition says the same; stands first in the specification.
            how: whether that was read in a public source or recalled.
            witness: a value printed by the other edition's readers, or None.
        """
        other = Equation(self.body, id, self.title, clause, source, how, witness, self.constants)
        other.__module__ = module
        said = f"The formula of {self.cite}, unchanged: {why}"
        other.__doc__ = f"{said}\n\nOf {self.source.short}: {inspect.cleandoc(self.__doc__ or '')}"
        return other

    def __reduce__(self) -> str:
        """Copied and pickled by name, as the function it is."""
        return self.body.__qualname__

    def _same_units(self, inputs: tuple[tuple[str, object], ...]) -> None:
        for (_, q), (_, value) in zip(self.arguments, inputs, strict=True):
            if isinstance(value, Value) and not unit(value.unit).same_as(unit(q.unit)):
                raise UnitError(f"{self.cite}: {q.symbol} is asked for in {q.unit}, given in {value.unit} ({value!r})")

    def _prepare(self) -> Callable[..., float]:
        """Build, on the first call, the function that enforces the limits and runs the body."""
        self._signature, self._result = _read_signature(self.body, self.id)
        self._named, self._checked = _written_out(self)
        return self._checked


def _read_signature(body: Callable[..., Any], id: str) -> tuple[tuple[tuple[str, Q], ...], Q | None]:
    hints = get_type_hints(body, include_extras=True)
    arguments = []
    result: Q | None = None
    for name, hint in hints.items():
        found = next((m for m in getattr(hint, "__metadata__", ()) if isinstance(m, Q)), None)
        if name == "return":
            result = found
        elif found is None:
            arguments.append((name, Q("", name, "")))
        else:
            arguments.append((name, found))
    order = list(inspect.signature(body).parameters)
    arguments.sort(key=lambda pair: order.index(pair[0]))
    if any(q.unit == "" for _, q in arguments) or result is None:
        missing = [name for name, q in arguments if q.unit == ""] or ["return"]
        raise UnitError(f"{id}: {', '.join(missing)} declares no unit and symbol")
    return tuple(arguments), result


def _written_out(eq: Equation[Any]) -> tuple[Callable[..., tuple[tuple[str, object], ...]], Callable[..., float]]:
    """Two flat functions with the parameters of the body, so that Python itself refuses a call that does not fit.

    ``named`` hands back what goes into a call, by name. ``checked`` is the body behind its limits: each check costs a
    comparison, and the body sees plain floats, whatever was put in.
    """
    scope: dict[str, Any] = {"body": eq.body, "inf": math.inf, "Outside": OutsideLimits}
    defaults = inspect.signature(eq.body).parameters
    parameters, tests = [], []
    for index, (name, q) in enumerate(eq.arguments):
        if defaults[name].default is not inspect.Parameter.empty:
            scope[f"default_{name}"] = defaults[name].default
            parameters.append(f"{name}=default_{name}")
        else:
            parameters.append(name)
        # `not (-inf < x < inf)` is true of NaN as well, so one chain of comparisons refuses all that is not a figure
        low = f"{q.above!r} <" if q.above is not None else f"{q.at_least!r} <=" if q.at_least is not None else "-inf <"
        high = f"< {q.below!r}" if q.below is not None else f"<= {q.at_most!r}" if q.at_most is not None else "< inf"
        tests.append(f"    if not ({low} {name} {high}): refuse({index}, {name})")
    names = [name for name, _ in eq.arguments]

    def refuse(index: int, value: float) -> None:
        q = eq.arguments[index][1]
        allowed = f"must be {q.limits()}" if q.limits() else "must be a finite number"
        raise OutsideLimits(f"{eq.cite}: {q.symbol} ({q.what}) = {float(value):g} {q.unit}; {allowed}")

    def failed(error: Exception, *values: float) -> OutsideLimits:
        if isinstance(error, OutsideLimits):
            return OutsideLimits(f"{eq.cite}: {error}")
        why = "it gives no real number" if isinstance(error, TypeError) else error  # a power 0.5 of less than zero
        put_in = ", ".join(f"{q.symbol} = {float(v):g}" for (_, q), v in zip(eq.arguments, values, strict=True))
        return OutsideLimits(f"{eq.cite}: no value{f' for {put_in}' if put_in else ''} ({why})")

    lines = [
        f"def named({', '.join(parameters)}):",
        f"    return ({''.join(f'({name!r}, {name}), ' for name in names)})",
        f"def checked({', '.join(parameters)}):", *tests,
        "    try:",
        f"        answer = body({', '.join(f'float({name})' for name in names)})",
        "        if -inf < answer < inf: return answer",
        "        raise ArithmeticError('the answer is not a finite number')",
        "    except (Outside, ArithmeticError, TypeError, ValueError) as error:",
        f"        raise failed({', '.join(['error', *names])}) from error",
    ]  # fmt: skip
    made: dict[str, Any] = {}
    exec("\n".join(lines), scope | {"refuse": refuse, "failed": failed}, made)
    for function in made.values():
        function.__qualname__ = eq.id  # as Python calls it when it refuses a call
    return made["named"], made["checked"]


def equation(
    id: str,
    *,
    title: str,
    clause: str,
    source: Source,
    how: How = "seen",
    witness: str | None = None,
    constants: dict[float, str] | None = None,
) -> Callable[[Callable[P, float]], Equation[P]]:
    """Declare a published equation.

    Args:
        id: permanent id, document-edition and the document's own number (``nds-2018/12.3.1-Im``).
        title: what it gives, in the trade's words.
        clause: the place in the document, as a reader looks for it.
        source: the document.
        how: whether the equation was read in a public source or recalled.
        witness: the outside value that a test checks it by, or None (then every result says "unverified").
        constants: the unit of each empirical literal in the body (``{7: "lb^0.5/in", 12: "in/ft"}``).
    """

    def decorate(body: Callable[P, float]) -> Equation[P]:
        return Equation(body, id, title, clause, source, how, witness, dict(constants or {}))

    return decorate


class Procedure(Generic[P, T]):
    """A published rule composed of equations, look-ups and recorded arithmetic, called like the function it is."""

    def __init__(
        self,
        body: Callable[P, T],
        id: str,
        title: str,
        clause: str,
        source: Source,
        alias: str,
        in_place: InPlace | None = None,
    ) -> None:
        self.body = body
        self.id = id
        self.title = title
        self.clause = clause
        self.source = source
        self.alias = alias
        self._run = body if in_place is None else in_place.running(body)
        update_wrapper(self, body)

    def __reduce__(self) -> str:
        """Copied and pickled by name, as the function it is."""
        return self.body.__qualname__

    def __call__(self, *args: P.args, **kwargs: P.kwargs) -> T:
        if (later := READ_IN_PLACE.get()) is not None and later.of.short == self.source.short:
            return later.answer(self)(*args, **kwargs)  # type: ignore[no-any-return]  # a Procedure too
        sheet = open_sheet()
        if sheet is None:
            return self._run(*args, **kwargs)
        sheet.record("procedure", self.id, self.title, self.cite, (), None, self, frozenset())
        sheet.depth += 1
        try:
            return self._run(*args, **kwargs)
        finally:
            sheet.depth -= 1

    def restated(self, id: str, *, in_place: InPlace, module: str, why: str) -> Procedure[P, T]:
        """The same rule as another edition has it: this very body, run with that edition in the place of this one.

        Args:
            id: permanent id in the other edition.
            in_place: the other edition, and what it has for each equation and table that the body asks for.
            module: the module that holds it (``__name__``), under the name of the body.
            why: how it is known that the edition says the same; stands first in the specification.
        """
        other = Procedure(self.body, id, self.title, self.clause, in_place.by, self.alias, in_place)
        other.__module__ = module
        said = f"The rule of {self.cite}, unchanged: {why}"
        other.__doc__ = f"{said}\n\nOf {self.source.short}: {inspect.cleandoc(self.__doc__ or '')}"
        return other

    @property
    def cite(self) -> str:
        """Document and clause, as printed above the steps."""
        return self.source.cite(self.clause)

    @property
    def arguments(self) -> tuple[tuple[str, Q], ...]:
        """Each argument's name and what it is; arguments that are words (a species, a nail) have unit ''."""
        hints = get_type_hints(self.body, include_extras=True)
        found = []
        for name in inspect.signature(self.body).parameters:
            meta = getattr(hints.get(name), "__metadata__", ())
            found.append((name, next((m for m in meta if isinstance(m, Q)), Q("", name, ""))))
        return tuple(found)


def procedure(
    id: str, *, title: str, clause: str, source: Source, alias: str = ""
) -> Callable[[Callable[P, T]], Procedure[P, T]]:
    """Declare a composed rule; ``alias`` is the trade's name for it (``nds.sill-bolt``)."""

    def decorate(body: Callable[P, T]) -> Procedure[P, T]:
        return Procedure(body, id, title, clause, source, alias)

    return decorate
