"""The same house by other editions, shares of the force and bracing systems, as one table."""

from __future__ import annotations

from collections.abc import Sequence

from groundsill.papers.document import Block, Column, Paragraph, TableBlock
from groundsill.papers.views.words import DASH, Units, carried, quantity
from groundsill.study.compare import Variant, Weakest

__all__ = ["compare_blocks"]


def compare_blocks(variants: Sequence[Variant], units: Units) -> tuple[Block, ...]:
    """A table with a row for each variant; what a variant lacks stands under it."""
    states = list(dict.fromkeys(found.state for variant in variants for found in variant.weakest))
    columns = (
        Column("By"),
        Column("SDS", unit="g", align="end"),
        Column("R", align="end"),
        Column("Share", align="end"),
        Column("Cs", align="end"),
        Column("Base shear", align="end"),
        *(Column(f"Weakest line, {state}") for state in states),
    )
    rows = tuple(_row(variant, states, units) for variant in variants)
    lacks = tuple(f"{v.name}: not worked out; {v.lacks}" for v in variants if v.lacks)
    table = TableBlock(columns, rows, "The same house by other choices", footnotes=lacks)
    about = (
        "Forces are at strength level. Every row is a whole run of the house as surveyed, by "
        f"{variants[0].edition} where its name tells no other edition."
    )
    return (Paragraph(about), table)


def _row(variant: Variant, states: Sequence[str], units: Units) -> tuple[str, ...]:
    by_state = {found.state: found for found in variant.weakest}
    return (
        variant.name,
        DASH if variant.S_DS is None else f"{variant.S_DS:.3f}",
        DASH if variant.R is None else f"{variant.R:g}",
        DASH if variant.factor is None else f"{variant.factor:g}",
        DASH if variant.C_s is None else f"{variant.C_s:.4f}",
        DASH if variant.base_shear_lb is None else quantity(variant.base_shear_lb, "lb", units),
        *(_weakest(by_state.get(state)) for state in states),
    )


def _weakest(found: Weakest | None) -> str:
    if found is None or not found.line:
        return DASH
    return f"{found.line}: {carried(found.percent)}"
