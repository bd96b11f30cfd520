"""``groundsill formula``: lists, finds, shows and works out published formulas and tables."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Final

from groundsill.cli.exits import DONE
from groundsill.cli.layout import Head, facts, faint, heading, lines, strong, table, unbroken, words
from groundsill.cli.speech import console, say_json, show
from groundsill.doors.answers import FormulaCard, FormulaList, FormulaWorked, Result, TableFigures
from groundsill.doors.formulas import Worked, card, list_formulas, told, work_out_typed
from groundsill.papers.document import Document, Working
from groundsill.papers.writers.terminal import print_document
from groundsill.standards.basis import Basis
from groundsill.standards.catalogue import find, search
from groundsill.working.errors import BadSurvey, Fault, UnknownFormula
from groundsill.working.explain import figure

if TYPE_CHECKING:
    from rich.console import RenderableType

    from groundsill.standards.catalogue import Entry

__all__ = ["formula"]

_RAISES: Final = re.compile(r"^Raises: (\w+: )?")


def formula(asked: Sequence[str], code: str | None, as_json: bool) -> int:
    """List, find, show or work out; see the command's help.

    Raises:
        BadSurvey: values without a formula, or values that cannot be read.
        UnknownFormula: when the words fit nothing.
    """
    name, typed = _parted(asked)
    basis = Basis(code) if code else None
    if typed:
        worked = work_out_typed(name, typed, basis)
        answer: FormulaCard | FormulaList | FormulaWorked = told(worked)
        page = _worked_page(worked, told(worked)) if not as_json else iter(())
    elif (entry := _one(name, basis)) is not None:
        answer = card(entry)
        page = _card_page(answer)
    else:
        answer = list_formulas(name)
        page = _list_page(answer)
    if as_json:
        say_json(answer)
        return DONE
    for part in page:
        if isinstance(part, Document):
            print_document(part, console())
        else:
            show((part,))
    return DONE


def _parted(asked: Sequence[str]) -> tuple[str, dict[str, str]]:
    """The name or the words asked for, and the values typed after them."""
    names: list[str] = []
    typed: dict[str, str] = {}
    faults = []
    for word in asked:
        head, sign, tail = word.partition("=")
        if not sign:
            names.append(word)
        elif head.strip() in typed:
            faults.append(Fault(f"formula: {head.strip()}", repr(tail), "it was given twice; each value stands once"))
        else:
            typed[head.strip()] = tail.strip()
    if typed and not names:
        first = next(iter(typed))
        faults.append(Fault(f"formula: {first}", repr(typed[first]), "name the formula first: nds.sill-bolt D=5/8in"))
    if faults:
        raise BadSurvey(tuple(faults))
    return " ".join(names), typed


def _one(name: str, basis: Basis | None) -> Entry | None:
    """The one formula meant by a name, or None when the words fit several.

    Raises:
        UnknownFormula: when they fit none, or when a trade name stands for several editions.
    """
    if not name:
        return None
    try:
        return find(name, basis)
    except UnknownFormula:
        found = search(name)
        if not found or any(name in (entry.alias, entry.id) for entry in found):
            raise
        return None


# ---- The list -------------------------------------------------------------------------------------------------------

_STATUS_WORDS: Final = {
    "seen": "read in a named public source, and checked by a published value",
    "from memory": "recalled, not yet seen in a named public source: to be confirmed",
    "partly from memory": "some figures recalled and not yet seen in a named public source: to be confirmed",
    "unverified": "read in a named public source; no published value to check it by",
    "from memory, unverified": "recalled, not yet seen in a named public source, no published value to check it by",
    "composed": "a rule made of other formulas and tables; each of its steps says how it is known",
    "computed": "worked out from other published figures",
}


def _list_page(found: FormulaList) -> Iterator[RenderableType]:
    from rich.table import Table

    known = {document.id: document for document in found.documents}
    widest = min(38, max((len(line.alias or line.id) for line in found.formulas), default=10))
    for id in dict.fromkeys(line.document for line in found.formulas):
        head = known.get(id)
        yield heading(head.short if head else id, head.title if head and head.title != head.short else "")
        if head and head.superseded_by:
            yield faint(f"superseded by {head.superseded_by}; kept, since drawings are read by it")
        grid = Table.grid(padding=(0, 2, 0, 0), pad_edge=False, expand=True)
        grid.add_column(width=widest, overflow="fold")
        grid.add_column(ratio=1)
        grid.add_column(width=12)
        for line in found.formulas:
            if line.document == id:
                grid.add_row(words(line.alias or line.id), words(line.title), faint(line.status))
        yield grid
        yield ""
    count = len(found.formulas)
    yield strong("1 formula or table." if count == 1 else f"{count} formulas and tables.")
    statuses = {line.status for line in found.formulas}
    yield lines(faint(f"{status}: {said}") for status, said in _STATUS_WORDS.items() if status in statuses)
    yield faint("groundsill formula NAME shows one; groundsill formula NAME name=value ... works it out.")


# ---- One formula ----------------------------------------------------------------------------------------------------


def _card_page(shown: FormulaCard) -> Iterator[RenderableType]:
    source = shown.source
    title = (
        f"{source.short}, {source.title}" if source and source.title != source.short else source.short if source else ""
    )
    yield heading(shown.title, shown.clause)
    yield ""
    yield facts(
        (
            ("Name", shown.alias or shown.id, shown.id if shown.alias else ""),
            ("Kind", shown.kind, ""),
            ("Document", title, source.publisher if source and source.publisher != "none" else ""),
            ("Superseded by", (source.superseded_by or "") if source else "", ""),
            ("How known", _STATUS_WORDS.get(shown.status, shown.status), ""),
            ("Checked by", shown.witness, ""),
            ("Gives", shown.gives, ""),
        )
    )
    yield ""
    if shown.expression:
        yield strong("Formula")
        for line in shown.expression:
            yield words(f"  {line}")
        yield ""
    if shown.specification:
        yield strong("What it is")
        for paragraph in shown.specification.split("\n\n"):
            yield words(_told_plainly(paragraph))
        yield ""
    if shown.figures:
        yield from _figures(shown.figures)
    if shown.arguments:
        yield _arguments(shown)
        yield ""
    for erratum in shown.errata:
        said = f"{erratum.place} prints {erratum.printed}; used here: {erratum.used}. {erratum.why}"
        yield lines([said], "!")
        yield ""
    yield strong("To work it out")
    yield unbroken(f"  {_example(shown)}")


def _told_plainly(paragraph: str) -> str:
    """A paragraph of a docstring without the marks that only a programmer reads."""
    said = " ".join(paragraph.replace("``", "").split())
    return _RAISES.sub("Refused: ", said)


def _arguments(shown: FormulaCard) -> RenderableType:
    heads = [
        Head("Argument"),
        Head("Unit"),
        Head("What it is", wraps=True),
        Head("Limits", wraps=True),
        Head("Left out", wraps=True),
    ]
    rows = []
    for a in shown.arguments:
        unit = a.unit or ("" if a.takes == "number" else a.takes)
        symbol = f" ({a.symbol})" if a.symbol not in ("", a.name, a.what) else ""
        limits = a.limits.removesuffix(f" {a.unit}") if a.unit else a.limits
        what = a.what if a.what and a.what != a.name else ""
        rows.append((f"{a.name}{symbol}", unit, what, limits, "must be given" if a.required else a.default))
    return table(heads, rows)


def _example(shown: FormulaCard) -> str:
    """A command line with every argument that must be given, its unit shown."""
    if shown.figures:
        row = next(iter(shown.figures.rows))
        column = shown.figures.columns[0]
        shown_column = f"{column:g}" if isinstance(column, (int, float)) else _quoted(str(column))
        place = f" column={shown_column}" if len(shown.figures.columns) > 1 else ""
        return f"groundsill formula {shown.id} row={_quoted(row)}{place}"
    wanted = " ".join(
        f"{a.name}={'...' if a.takes != 'number' else '...' + a.unit}" for a in shown.arguments if a.required
    )
    if not wanted and shown.arguments:
        first = shown.arguments[0]
        wanted = f"{first.name}={_quoted(first.default)}"
    return f"groundsill formula {shown.alias or shown.id} {wanted}".strip()


def _quoted(text: str) -> str:
    return f'"{text}"' if " " in text or "," in text or not text else text


def _figures(shown: TableFigures) -> Iterator[RenderableType]:
    """The table as it is printed, and how its figures are known."""
    units = shown.units if len(set(shown.units)) > 1 else ()
    one = "" if units or shown.units[0] == "1" else f", {shown.units[0]}"
    yield strong(f"Figures by {shown.row_key}" + (f" and {shown.column_key}" if len(shown.columns) > 1 else "") + one)
    names = [f"{c:g}" if isinstance(c, (int, float)) else str(c) for c in shown.columns]
    heads = [Head(shown.row_key, wraps=True)]
    heads += [
        Head(name, "" if not units or units[place] == "1" else units[place], "right", wraps=True)
        for place, name in enumerate(names)
    ]
    rows = [(row, *(_cell(cell) for cell in cells)) for row, cells in shown.rows.items()]
    yield table(heads, rows)
    yield ""
    yield lines(faint(said) for said in shown.sources)
    if shown.from_memory:
        yield faint(f"from memory, to be confirmed: {'; '.join(shown.from_memory)}")
    yield ""


def _cell(cell: float | str) -> str:
    return cell if isinstance(cell, str) else figure(cell)


# ---- A formula worked out -------------------------------------------------------------------------------------------


def _worked_page(worked: Worked, answer: FormulaWorked) -> Iterator[RenderableType | Document]:
    """Steps first, then what came out, so that the answer is what stands last on the screen."""
    understood = tuple(f"{name}: {echo}" for name, echo in answer.understood.items())
    yield Document(
        title=answer.title,
        subtitle=answer.clause,
        stamp=understood,
        blocks=tuple(Working(s) for s in worked.steps),
        numbered=False,
    )
    yield strong("Answer")
    known = [r for r in answer.results if r.value is not None]
    yield facts((_shown_name(r), strong(_shown_value(r)) if r is known[0] else _shown_value(r), "") for r in known)
    yield ""
    if answer.marks:
        yield lines((faint(mark.text()) for mark in answer.marks), "†")
    if answer.warnings:
        yield lines(answer.warnings, "!")


def _shown_name(result: Result) -> str:
    return result.name if result.symbol in ("", result.name) else f"{result.name} ({result.symbol})"


def _shown_value(result: Result) -> str:
    value = result.value
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, tuple):
        return ", ".join(v if isinstance(v, str) else figure(v) for v in value) or "none"
    if isinstance(value, float):
        return f"{figure(value)} {result.unit}".strip()
    return str(value)
