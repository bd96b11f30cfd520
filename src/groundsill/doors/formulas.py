"""Any published formula or table in the program: listed, shown, and worked out from what a person types.

The catalogue finds and works out; the units at the door read ``D=5/8in`` and ``l_s=1.5 in``. A number without a unit is
taken in the unit its argument states. Every fault is told at once, before anything is computed.
"""

from __future__ import annotations

import inspect
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass, replace
from typing import Any, Final, get_type_hints

from groundsill.doors.answers import (
    Argument,
    Document,
    ErratumTold,
    FormulaCard,
    FormulaLine,
    FormulaList,
    FormulaWorked,
    Result,
    TableFigures,
    step_told,
)
from groundsill.doors.expression_lines import expression_lines
from groundsill.standards.basis import Basis
from groundsill.standards.catalogue import Entry, call, errata, find, search
from groundsill.standards.working_out import Argument as Asked
from groundsill.standards.working_out import Input, arguments_of
from groundsill.working.equation import Equation, Procedure
from groundsill.working.errors import BadSurvey, Fault
from groundsill.working.measure import MeasureError, kind_of, read
from groundsill.working.sheet import Sheet, Step
from groundsill.working.source import Source
from groundsill.working.table import Table
from groundsill.working.value import Mark, Value, marks_of

__all__ = ["Worked", "card", "formula", "list_formulas", "status_of", "told", "work_out_typed"]


@dataclass(frozen=True, slots=True)
class Worked:
    """A formula worked out: the entry, what was understood of what was typed, the answer, and the recorded steps."""

    entry: Entry
    understood: Mapping[str, str]
    answer: Any
    steps: tuple[Step, ...]


def list_formulas(words: str = "") -> FormulaList:
    """Every formula and table that fits all the words, grouped by document, with how each is known."""
    found = search(words)
    lines = tuple(
        FormulaLine(e.id, e.kind, e.alias, e.title, e.cite, e.document, status_of(e))
        for e in sorted(found, key=lambda e: (e.document, e.kind != "procedure", e.kind == "table"))
    )
    sources = {e.document: source for e in found if (source := _source(e)) is not None and source.id == e.document}
    return FormulaList(words, tuple(_document(sources[id]) for id in sorted(sources)), lines)


def status_of(entry: Entry) -> str:
    """How a formula or table is known, in words; a procedure stands or falls with what it is composed of."""
    maker = entry.maker
    if isinstance(maker, Equation):
        unseen = ["from memory"] if maker.how == "from memory" else []
        return ", ".join(unseen + (["unverified"] if maker.witness is None else [])) or maker.how
    if isinstance(maker, Procedure):
        return "composed"
    table = maker()
    hows = {table.source_of(row, place).how for row in table.rows for place in range(len(table.columns))}
    if "from memory" in hows:
        return "from memory" if len(hows) == 1 else "partly from memory"
    return "seen" if "seen" in hows else "computed"


def card(entry: Entry) -> FormulaCard:
    """One formula or table as it is shown: source, limits, arguments, expression, specification, errata, figures."""
    maker, source = entry.maker, _source(entry)
    table = None if isinstance(maker, (Equation, Procedure)) else maker()
    witness = (maker.witness or "") if isinstance(maker, Equation) else ""
    return FormulaCard(
        id=entry.id,
        kind=entry.kind,
        alias=entry.alias,
        title=entry.title,
        clause=entry.cite,
        source=_document(source) if source else None,
        status=status_of(entry),
        witness=witness,
        arguments=tuple(_argument(a) for a in _asked(entry)),
        gives=_gives(entry),
        expression=expression_lines(maker) if isinstance(maker, Equation) else (),
        specification=inspect.cleandoc(entry.specification),
        errata=tuple(_errata_of(entry)),
        figures=_figures(table) if table else None,
    )


def _document(source: Source) -> Document:
    return Document(source.id, source.short, source.title, source.publisher, source.edition, source.superseded_by)


def _source(entry: Entry) -> Source | None:
    """The document an entry stands in; a table names its own only in words."""
    if isinstance(entry.maker, (Equation, Procedure)):
        return entry.maker.source
    module = inspect.getmodule(entry.maker)
    package = inspect.sys.modules.get(getattr(module, "__package__", "") or "")  # type: ignore[attr-defined]
    source = getattr(package, "SOURCE", None)
    return source if isinstance(source, Source) else None


def _asked(entry: Entry) -> tuple[Asked, ...]:
    if isinstance(entry.maker, (Equation, Procedure)):
        return arguments_of(entry.maker)
    table: Table = entry.maker()
    names = [name for name, _ in entry.arguments]
    kinds = {"row": "words", "column": "words" if isinstance(table.columns[0], str) else "number"}
    needed = {"row": True, "column": len(table.columns) > 1}
    return tuple(Asked(n, kinds[n], q, False, needed[n]) for n, (_, q) in zip(names, entry.arguments, strict=True))


def _argument(asked: Asked) -> Argument:
    q = asked.q
    unit = "" if q.unit == "1" else q.unit
    default = "" if asked.required else "unknown" if asked.default is None else _default(asked.default)
    return Argument(asked.name, q.symbol, unit, q.what, q.limits(), asked.kind, asked.required, default)


def _default(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return f"{value:g}" if isinstance(value, (int, float)) else str(value)


def _gives(entry: Entry) -> str:
    """What comes out, in words."""
    maker = entry.maker
    if isinstance(maker, Equation):
        unit = f" in {maker.result.unit}" if maker.result.unit != "1" else ""
        return f"{maker.result.symbol}{unit}: {maker.result.what}"
    if isinstance(maker, Procedure):
        hint = get_type_hints(maker.body).get("return")
        if isinstance(hint, type) and is_dataclass(hint):
            return " ".join((inspect.getdoc(hint) or hint.__name__).replace("``", "").split())
        return ""
    table: Table = maker()
    units = [u for u in dict.fromkeys(table.units) if u != "1"]
    return f"{table.symbol or 'a figure'}{' in ' + ' or '.join(units) if units else ''}"


def _errata_of(entry: Entry) -> Iterator[ErratumTold]:
    """The errata that name the entry's own number."""
    numbers = {entry.id.partition("/")[2], entry.cite.rpartition(" ")[2]}
    for erratum in errata(entry.document):
        if any(re.search(rf"(?<![\w.]){re.escape(n)}(?![\w.])", erratum.place) for n in numbers if n):
            yield ErratumTold(erratum.place, erratum.printed, erratum.used, erratum.why)


def _figures(table: Table) -> TableFigures:
    cells = [(row, place) for row in table.rows for place in range(len(table.columns))]
    unseen = [(row, place) for row, place in cells if table.source_of(row, place).how == "from memory"]
    sources = dict.fromkeys(f"{s.how}: {s.where}" for s in (table.source_of(*cell) for cell in cells))
    named = [f"{row}, {table.columns[place]}" if len(table.columns) > 1 else row for row, place in unseen]
    told = ("every figure",) if len(unseen) == len(cells) else tuple(named)
    return TableFigures(
        table.row_key, table.column_key, table.columns, table.units, dict(table.rows), tuple(sources), told
    )


# ---- Working out ----------------------------------------------------------------------------------------------------

_NUMBER_AND_UNIT: Final = re.compile(r"\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(\S.*)?")


def work_out_typed(name: str, typed: Mapping[str, Input], basis: Basis | None = None) -> Worked:
    """Work a formula out from names and values as typed.

    Args:
        name: an id (``nds-2018/12.3.1-Im``), a trade name (``nds.sill-bolt``), or words that fit only one.
        typed: for each argument what was typed (``"5/8in"``) or a number in the argument's own unit.
        basis: which edition a trade name means.

    Raises:
        BadSurvey: one fault for each unknown, missing or unreadable argument.
        UnknownFormula: when the name fits no formula.
        OutsideLimits: when the formula's own limits are not kept.
    """
    entry = find(name, basis)
    asked = {a.name: a for a in _asked(entry)}
    inputs: dict[str, Input] = {}
    understood: dict[str, str] = {}
    faults: dict[str, Fault] = {}
    for word, value in typed.items():
        argument = _meant(word, tuple(asked.values()))
        own_name = argument.name if argument else word
        if own_name in inputs:
            faults[own_name] = Fault(f"{entry.id}: {own_name}", "given twice", "each argument stands once")
            continue
        try:
            inputs[own_name], echo = _understood(value, argument)
        except MeasureError as fault:
            faults[own_name] = Fault(f"{entry.id}: {own_name}", f"[{fault.typed}]", f"{fault.allowed} ({fault.why})")
            continue
        if echo:
            understood[own_name] = echo
    with Sheet() as sheet:
        answer = _answered(entry, inputs, faults)
    return Worked(entry, understood, answer, tuple(sheet.steps))


def _answered(entry: Entry, inputs: Mapping[str, Input], faults: Mapping[str, Fault]) -> Any:
    """The answer; or every fault, what could not be read and what the catalogue finds wrong, in one list."""
    try:
        answer = call(entry, inputs)
    except BadSurvey as refused:
        if not faults:
            raise
        others = [f for f in refused.faults if f.path.rpartition(": ")[2] not in faults]
        raise BadSurvey((*faults.values(), *others)) from None
    if faults:
        raise BadSurvey(tuple(faults.values()))
    return answer


def _meant(word: str, asked: tuple[Asked, ...]) -> Asked | None:
    """The argument a typed name means: its name, its symbol, or either without underscores and primes (``ls``)."""
    for alike in (str, _bare, lambda text: _bare(text).lower()):
        found = [a for a in asked if alike(word) in (alike(a.name), alike(a.q.symbol))]
        if len(found) == 1:
            return found[0]
    return None


def _bare(text: str) -> str:
    return re.sub(r"[_'′,\s-]", "", text)


def _understood(value: Input, asked: Asked | None) -> tuple[Input, str]:
    """A typed value as the formula takes it, and the echo of a measure.

    Raises:
        MeasureError: for text that is not a measure of the argument's unit.
    """
    if asked is None or asked.kind != "number" or not isinstance(value, str) or not asked.q.unit:
        return value, ""
    unit = asked.q.unit
    if asked.optional and value.strip().lower() in ("", "unknown", "none"):
        return None, ""
    kind = kind_of(unit) if unit != "g" else None
    found = _NUMBER_AND_UNIT.fullmatch(value)
    alone = found is not None and found[2] in (None, unit)
    if kind in (None, "ratio"):  # no manner of writing but a number, or one with the very unit the argument states
        return (float(found[1]), "") if found is not None and alone else (value, "")
    try:
        measure = read(value, kind, unit, bare=unit)
    except MeasureError:
        if found is not None and alone:  # what a program writes: 1e6, -0.5
            return float(found[1]), ""
        raise
    return measure.number, measure.echo


def formula(name: str, /, basis: Basis | None = None, **values: Input) -> FormulaWorked:
    """Work a formula out in one call: ``formula("nds.sill-bolt", D="5/8 in", l_s=1.5).value``.

    Raises:
        BadSurvey: one fault for each unknown, missing or unreadable argument.
        UnknownFormula: when the name fits no formula.
        OutsideLimits: when the formula's own limits are not kept.
    """
    return told(work_out_typed(name, values, basis))


def told(worked: Worked) -> FormulaWorked:
    """A worked formula as it is told to machines."""
    entry, source = worked.entry, _source(worked.entry)
    units = {a.name: a.q.unit for a in _asked(entry) if a.q.unit != "1"}
    results = tuple(
        replace(r, unit=units[r.name]) if isinstance(r.value, float) and not r.unit and r.name in units else r
        for r in _results(worked.answer, "", _symbol_of(worked))
    )
    chief = next((r for r in results if isinstance(r.value, float)), results[0] if results else None)
    value = None if chief is None or isinstance(chief.value, tuple) else chief.value
    marks = _marks(worked.answer)
    return FormulaWorked(
        id=entry.id,
        title=entry.title,
        value=value,
        unit=chief.unit if chief else "",
        results=results,
        understood=dict(worked.understood),
        steps=tuple(step_told(step) for step in worked.steps),
        source=_document(source) if source else None,
        clause=entry.cite,
        marks=tuple(sorted(marks)),
        warnings=tuple(_warnings(source, worked.answer, marks)),
    )


def _symbol_of(worked: Worked) -> str:
    maker = worked.entry.maker
    return maker.result.symbol if isinstance(maker, Equation) else "answer"


def _results(answer: Any, name: str, otherwise: str) -> Iterator[Result]:
    """Every figure, word and list of an answer, by the name of its field."""
    if is_dataclass(answer) and not isinstance(answer, type):
        for field in fields(answer):
            inner = f"{name}.{field.name}" if name else field.name
            yield from _results(getattr(answer, field.name), inner, otherwise)
    elif isinstance(answer, (tuple, list)) and any(is_dataclass(item) for item in answer):
        for place, item in enumerate(answer, start=1):
            yield from _results(item, f"{name} {place}".strip(), otherwise)
    elif isinstance(answer, Mapping):
        for key, item in answer.items():
            yield from _results(item, f"{name}.{key}" if name else str(key), otherwise)
    elif isinstance(answer, Value):
        unit = "" if answer.unit == "1" else answer.unit
        yield Result(name or answer.symbol, answer.symbol, float(answer), unit)
    elif isinstance(answer, (tuple, list, frozenset)):
        items = tuple(float(i) if isinstance(i, (int, float)) and not isinstance(i, bool) else str(i) for i in answer)
        yield Result(name or otherwise, "", items, "")
    elif answer is None or isinstance(answer, (bool, str)):
        yield Result(name or otherwise, "", answer, "")
    else:
        yield Result(name or otherwise, "", float(answer), "")


def _marks(answer: Any) -> frozenset[Mark]:
    """Every mark of every figure in an answer."""
    if is_dataclass(answer) and not isinstance(answer, type):
        return frozenset().union(*(_marks(getattr(answer, f.name)) for f in fields(answer)))
    if isinstance(answer, Mapping):
        return frozenset().union(*(_marks(item) for item in answer.values()))
    if isinstance(answer, (tuple, list)):
        return frozenset().union(*(_marks(item) for item in answer))
    return marks_of((answer,))


_DOUBTS: Final = {
    "from memory": "rests on what was recalled, not yet seen in a named public document: confirm before relying on it",
    "unverified": "has no published value to check it by: confirm before relying on it",
    "extension": "goes beyond what a standard covers: it can indicate, never prove",
    "assumed range": "uses a figure assumed by age and material",
    "estimated": "uses an estimated figure",
}


def _warnings(source: Source | None, answer: Any, marks: frozenset[Mark]) -> Iterator[str]:
    if source is not None and source.superseded_by:
        yield f"{source.short} is superseded by {source.superseded_by}"
    said = getattr(answer, "warnings", ())
    if isinstance(said, (tuple, list)):
        yield from (str(warning) for warning in said)
    for kind, words in _DOUBTS.items():
        if any(mark.kind == kind for mark in marks):
            yield f"the answer {words}"
