"""The storeys above the lowest floor on paper: every wall as found, the next weakest level, and what work makes worse.

Context beside the chains, never part of their verdict: work under the floor neither strengthens these walls nor asks
more of them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from groundsill.loadpath.rises import CLAUSE, ExistingElements
from groundsill.loadpath.storey_above import REMARKS, StoreyAbove, StoreyCheck
from groundsill.papers.document import Block, BulletList, Column, Heading, Inline, Paragraph, Remark, Row, TableBlock
from groundsill.papers.views.doubts import Doubts
from groundsill.papers.views.words import DASH, Units, quantity, ratio, sentence, verdict, with_doubt
from groundsill.working.value import Mark

__all__ = ["next_blocks", "rises_table", "storeys_blocks", "walls_table"]


def storeys_blocks(
    storeys: Sequence[StoreyAbove], system_words: str, units: Units, doubts: Doubts | None = None
) -> Iterator[Block]:
    """Every level of storeys, the lowest first, with the table of its walls; ``system_words`` tell of R."""
    yield Paragraph(
        "The force at a storey is that of every level above its floor. A flexible floor or roof shares it among the "
        "storey's walls, and a wall's force goes to the stretches between its openings that are long enough for their "
        "height. What the walls carry is read off their old finishes."
    )
    told = (*REMARKS, system_words) if system_words else REMARKS
    yield BulletList(tuple(sentence(words) for words in told))
    for storey in storeys:
        yield Heading(storey.name, 2, f"storey/{storey.level}")
        yield Paragraph((f"{sentence(storey.headline)} ", verdict(storey.verdict), "."))
        for missing in storey.missing:
            yield Remark("warning", sentence(missing), "A wall is missing")
        if storey.checks:
            yield walls_table(storey, units, doubts or Doubts())


def walls_table(storey: StoreyAbove, units: Units, doubts: Doubts) -> TableBlock:
    """One row for every wall that takes a share; walls left out and reasons stand under it."""
    notes: dict[str, int] = {}
    rows: list[Row] = []
    marked = [frozenset(check.marks) for check in storey.checks if check.ratio is not None]
    common = frozenset[Mark]().union(*marked).intersection(*marked)
    heavy = []
    for check in storey.checks:
        if check.status == "does not apply":
            continue
        if check.address == storey.governing:
            heavy.append(len(rows))
        rows.append(_row(check, units, _dagger(check, common, doubts), notes))
    columns = (
        Column("Wall"),
        Column("Along"),
        Column("Force, strength", align="end"),
        Column("Counts", "length", "end"),
        Column("By", share=1.3),
        Column("Demand", align="end"),
        Column("Capacity", align="end"),
        Column("Ratio", align="end"),
        Column("Verdict", share=1.0),
    )
    shared = doubts.dagger(common)
    told: list[Inline] = [f"† alone: the figure rests on {shared}, as every ratio here does."] if shared else []
    told += [f"{n}  {words}" for words, n in notes.items()]
    told += [f"{words}: {', '.join(marks)}." for words, marks in _left_out(storey).items()]
    caption = f"Walls of {storey.name} as found, {quantity(storey.force_lb, 'lb', units)} above its floor"
    return TableBlock(columns, tuple(rows), caption, tuple(told), frozenset(heavy))


def _dagger(check: StoreyCheck, common: frozenset[Mark], doubts: Doubts) -> str:
    """The dagger of a wall's own doubts; bare where it has only those of every wall."""
    return doubts.dagger(frozenset(check.marks) - common) or ("†" if check.marks else "")


def _row(check: StoreyCheck, units: Units, dagger: str, notes: dict[str, int]) -> Row:
    said = sentence("; ".join(filter(None, (check.reason, check.extension, check.clause))))
    number = notes.setdefault(said, len(notes) + 1) if said else 0
    shown: Inline = DASH
    if check.ratio is not None:
        shown = with_doubt(ratio(check.ratio), dagger)
    elif check.capacity_plf == 0:
        shown = "no capacity"
    return (
        check.mark or check.wall,
        check.direction,
        quantity(check.force_lb, "lb", units),
        quantity(check.length_ft, "ft", units) if check.length_ft else DASH,
        f"{check.finish}, {check.level} level" if check.finish else DASH,
        quantity(check.demand_plf, "plf", units),
        quantity(check.capacity_plf, "plf", units),
        shown,
        (verdict(check.status), f" {number}" if number else ""),
    )


def _left_out(storey: StoreyAbove) -> dict[str, list[str]]:
    """The walls that take no share, by the reason."""
    found: dict[str, list[str]] = {}
    for check in storey.checks:
        if check.status == "does not apply":
            words = sentence(check.reason).rstrip(".")
            found.setdefault(words, []).append(check.mark or check.wall)
    return found


# --- after the work ---------------------------------------------------------------------------------------------------


def next_blocks(state: str, next_weakest: str, compared: ExistingElements | None) -> Iterator[Block]:
    """One state: which level is the next weakest, and which existing element the work makes worse off."""
    told = sentence(next_weakest)
    yield Paragraph(told if compared is None else f"{sentence(state).rstrip('.')}: {told[:1].lower()}{told[1:]}")
    if compared is None:
        return
    beyond = [one for one in compared.rising if not one.allowed]
    words = sentence(compared.headline)
    yield Remark("warning", words, "An existing element is made worse off") if beyond else Paragraph(words)
    if compared.rising:
        yield rises_table(compared, state)


def rises_table(compared: ExistingElements, state: str) -> TableBlock:
    """Every existing element whose ratio rises with the work, the greatest rise first."""
    rising = sorted(compared.rising, key=lambda one: (one.allowed, -one.rise))
    rows = tuple(
        (
            one.mark,
            one.title,
            ratio(one.before),
            ratio(one.after),
            f"{100 * one.rise:+.0f} %",
            "within what is allowed" if one.allowed else "beyond what is allowed",
        )
        for one in rising
    )
    columns = (
        Column("At"),
        Column("Existing element", share=1.2),
        Column("As found", align="end"),
        Column("With the work", align="end"),
        Column("Rise", align="end"),
        Column("", share=0.9),
    )
    note = f"Allowed: no more than that of {CLAUSE}; or a ratio that stays within one."
    heavy = frozenset(n for n, one in enumerate(rising) if not one.allowed)
    return TableBlock(columns, rows, f"Existing elements with a higher ratio, {state}", (note,), heavy)
