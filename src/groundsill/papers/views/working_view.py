"""The steps of working on paper: every formula set out in full once, and after that only its figures.

Piece after piece of a house is worked out by the same rules. A run of steps that equals one already printed, number for
number, is replaced by a line that leads there and gives the answer. A run by the same formulas with other numbers is
told in one paragraph: where the formulas stand in full, and every figure in the order of the steps. So each number can
be followed to its formula, and the package stays a book, not a shelf.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from groundsill.papers.document import Block, Paragraph, Reference, Span, Working, small
from groundsill.papers.views.doubts import Doubts
from groundsill.working.explain import figure
from groundsill.working.mathtree import Quantity, Relation, Symbol
from groundsill.working.render import as_text
from groundsill.working.sheet import Sheet, Step
from groundsill.working.value import Value

__all__ = ["SHORTEST_RUN", "Item", "Printed", "Told", "steps_of", "working_blocks", "working_items"]

SHORTEST_RUN = 3
"""Fewer equal steps than this are set out again: a line of reference would save nothing."""

_LONGEST_NAME = 60

Print = tuple[object, ...]


@dataclass(slots=True)
class _Place:
    """What stands under one heading so far: its anchor, what it is called, its steps and their prints."""

    anchor: str
    name: str
    steps: list[Step] = field(default_factory=list)
    prints: list[Print] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class Told:
    """A run of steps told by reference instead of set out: ``model`` is the run it is like, step for step.

    ``anchor`` is empty where that run stands under the same heading, just above.
    """

    steps: tuple[Step, ...]
    model: tuple[Step, ...]
    anchor: str
    name: str
    exact: bool


Item = Working | Told


@dataclass(slots=True)
class _Register:
    """Runs of steps by their prints, to find the longest one that was met before."""

    places: list[_Place] = field(default_factory=list)
    at: dict[Print, list[tuple[int, int]]] = field(default_factory=dict)

    def open(self, anchor: str, name: str) -> None:
        """Begin a new heading: what is added from now on stands under it."""
        self.places.append(_Place(anchor, name))

    def add(self, steps: Sequence[Step], prints: Sequence[Print]) -> None:
        """Remember steps that now stand under the last heading."""
        number, place = len(self.places) - 1, self.places[-1]
        for step, one in zip(steps, prints, strict=True):
            self.at.setdefault(one, []).append((number, len(place.prints)))
            place.steps.append(step)
            place.prints.append(one)

    def longest(self, steps: Sequence[Step], prints: Sequence[Print], start: int) -> tuple[int, _Place | None, int]:
        """How many steps from ``start`` on have a like run, where it stands, and where in it the run begins."""
        best: tuple[int, _Place | None, int] = (0, None, 0)
        for number, place in self.at.get(prints[start], ()):
            known = self.places[number].prints
            length = 0
            while (
                start + length < len(prints)
                and place + length < len(known)
                and prints[start + length] == known[place + length]
            ):
                length += 1
            length = _whole(steps, start, length)
            if length > best[0]:
                best = (length, self.places[number], place)
        return best


@dataclass(slots=True)
class Printed:
    """The working printed so far in one document: by its formulas, and by its very numbers."""

    formulas: _Register = field(default_factory=_Register)
    figures: _Register = field(default_factory=_Register)


def steps_of(sheet: Sheet | None, sections: Sequence[str]) -> tuple[Step, ...]:
    """The steps taken under several addresses, in the order given; none without a sheet."""
    if sheet is None:
        return ()
    wanted = list(dict.fromkeys(sections))
    return tuple(step for section in wanted for step in sheet.under(section))


def working_items(steps: Sequence[Step], anchor: str, name: str, printed: Printed) -> tuple[Item, ...]:
    """The steps under one heading: set out in full where they are new, told by reference where they are not."""
    forms, figures = [_form(step) for step in steps], [_figures(step) for step in steps]
    printed.formulas.open(anchor, name)
    printed.figures.open(anchor, name)
    items: list[Item] = []
    place = 0
    while place < len(steps):
        same, same_at, n = printed.figures.longest(steps, figures, place)
        alike, alike_at, m = printed.formulas.longest(steps, forms, place)
        if same_at is not None and same >= max(SHORTEST_RUN, alike):
            length = same
            items.append(_told(steps[place : place + length], same_at, n, exact=True, here=anchor))
        elif alike_at is not None and alike >= SHORTEST_RUN:
            length = alike
            items.append(_told(steps[place : place + length], alike_at, m, exact=False, here=anchor))
        else:
            length = 1
            items.append(Working(steps[place]))
            printed.formulas.add(steps[place : place + 1], forms[place : place + 1])
        printed.figures.add(steps[place : place + length], figures[place : place + length])
        place += length
    return tuple(items)


def _told(run: Sequence[Step], place: _Place, start: int, exact: bool, here: str) -> Told:
    model = tuple(place.steps[start : start + len(run)])
    anchor = "" if place.anchor == here else place.anchor
    return Told(tuple(run), model, anchor, place.name, exact)


def _whole(steps: Sequence[Step], start: int, length: int) -> int:
    """The run cut back so that it never ends inside a procedure it opened: its heading would lose its steps."""
    while length:
        run = steps[start : start + length]
        follows = steps[start + length] if start + length < len(steps) else None
        inside = follows is not None and follows.depth > min(step.depth for step in run)
        if run[-1].kind != "procedure" and not inside:
            return length
        length -= 1
    return 0


def _figures(step: Step) -> Print:
    """All that a reader would see of a step; two steps with equal prints of this kind look alike."""
    inputs = tuple((name, float(v) if isinstance(v, float) else str(v)) for name, v in step.inputs)
    results = tuple((v.symbol, float(v), v.unit) for v in step.results)
    return (step.kind, step.id, step.title, step.cite, inputs, results, step.maker if step.kind == "condition" else "")


def _form(step: Step) -> Print:
    """A step without its numbers: formula, symbols and units, and the branch it took."""
    results = tuple((v.symbol, v.unit) for v in step.results)
    names = tuple(name for name, _ in step.inputs)
    match step.kind:
        case "equation":
            return (
                step.kind,
                step.id,
                results,
                tuple(as_text(line.math) for line in step.lines if line.kind == "formula" and line.math),
            )
        case "condition":
            return (step.kind, step.title, step.maker)
        case "note":
            return (step.kind, step.title)
        case "sum":
            return (step.kind, step.maker, results, names)
    return (step.kind, step.id, step.cite, results, names if step.kind == "lookup" else ())


# --- as blocks --------------------------------------------------------------------------------------------------------


def working_blocks(
    steps: Sequence[Step], anchor: str, name: str, printed: Printed, doubts: Doubts
) -> tuple[Block, ...]:
    """The steps under one heading as blocks; what is told by reference is a sentence with its figures and daggers."""
    items = working_items(steps, anchor, name, printed)
    return tuple(_words(item, doubts) if isinstance(item, Told) else item for item in items)


def _words(told: Told, doubts: Doubts) -> Block:
    marks = {mark for step in told.steps for mark in step.marks}
    dagger = doubts.dagger(marks)
    tail = f" {dagger}" if dagger else ""
    link: Span = Reference(told.name, told.anchor) if told.anchor else small("the steps above")
    parts: tuple[str | Span, ...]
    if told.exact:
        answer = next((step.result for step in reversed(told.steps) if step.result is not None), None)
        gives = "." if answer is None else f": {_spelled(answer)}{tail}."
        parts = (small(f"{_subject(told)}, number for number, as for "), link, small(gives))
    else:
        figures = "; ".join(_figures_told(told)) or "the same figures"
        parts = (small(f"{_subject(told)} as for "), link, small(f", with {figures}{tail}."))
    return Paragraph(parts)


def _subject(told: Told) -> str:
    """What the run works out, by the procedure it opens with, else by its last step that has a short name."""
    named = (step.title for step in reversed(told.steps) if step.results and 0 < len(step.title) <= _LONGEST_NAME)
    first = told.steps[0]
    name = first.title if first.kind == "procedure" else next(named, "Worked out")
    return name[:1].upper() + name[1:]


def _figures_told(told: Told) -> Iterator[str]:
    """Every figure of the run in the order of its steps; a row of a table where another one was read."""
    for step, model in zip(told.steps, told.model, strict=True):
        result = step.result
        if result is None:
            continue
        row = ""
        if step.kind == "lookup":
            read = [
                str(v)
                for (_, v), (_, w) in zip(step.inputs, model.inputs, strict=True)
                if str(v) != str(w) and isinstance(v, str)
            ]
            row = f" ({', '.join(read)})" if read else ""
        yield f"{_spelled(result)}{row}"


def _spelled(value: Value) -> str:
    unit = value.unit.replace("*", "·").replace("^2", "²").replace("^3", "³")
    return as_text(Relation((Symbol(value.symbol), Quantity(figure(value), unit)), ("=",)))
