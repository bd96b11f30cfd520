"""Wind beside the earthquake, on paper and screen: on the whole house, on every line, and which of the two governs."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from groundsill.forces.wind import Wind
from groundsill.papers.document import Block, Column, Paragraph, Row, TableBlock, strong
from groundsill.papers.views.words import Units, listed, quantity, sentence, short, with_doubt
from groundsill.standards.asce7 import rules_of
from groundsill.study import Study

__all__ = ["wind_blocks", "wind_paragraph"]

Daggers = Mapping[str, str]
"""The dagger of a wind force, by ``wind/x`` for a direction and ``wind/<id>`` for a line."""

_HOW = (
    "The house is seen from the windward side, as the survey draws it; what shows of walls, gable ends and slopes has "
    "the pressure of the directional procedure, push and pull together. A flexible floor brings it to the lines, each "
    "by the strip of house behind it. Not looked at: torsional cases, uplift, shelter by other houses."
)


def wind_paragraph(study: Study) -> Paragraph:
    """Whether wind governs anywhere, in a sentence or two; or why it was not looked at."""
    wind = study.forces.wind
    if wind is None:
        return Paragraph((strong("Wind was not checked: "), f"{study.forces.wind_lacks}."))
    governed = [line.mark for line in wind.lines.values() if line.governs]
    if not governed:
        told = "on every line relied on the earthquake asks for more, as forces are shared by a flexible floor."
    else:
        told = (
            f"it asks for more than the earthquake on {listed(governed)}, as forces are shared by a flexible floor. "
            "Each line is checked for both, and every link that wind brings nearer to its limit stands in its chain."
        )
    return Paragraph((strong(f"Wind, {short(wind.speed_mph)} mph, exposure {wind.exposure}: "), told))


def wind_blocks(study: Study, daggers: Daggers | None = None) -> Iterator[Block]:
    """Wind along x and y, and on each line beside the earthquake."""
    wind, own = study.forces.wind, daggers or {}
    yield wind_paragraph(study)
    if wind is not None:
        yield _house(wind, study.units, own)
        yield _lines(wind, study.units, own)


def _house(wind: Wind, units: Units, daggers: Daggers) -> TableBlock:
    rows: list[Row] = [
        (
            f"along {way}",
            f"{quantity(found.across_ft, 'ft', units)} by {quantity(found.along_ft, 'ft', units)}",
            quantity(found.q_h_psf, "psf", units),
            quantity(found.wall_ft2, "ft^2", units),
            quantity(found.roof_ft2, "ft^2", units),
            with_doubt(quantity(found.W_lb, "lb", units), daggers.get(f"wind/{way}", "")),
            found.governs,
        )
        for way, found in wind.along.items()
    ]
    columns = (
        Column("Wind", share=0.7),
        Column("Across by along", align="end", share=1.2),
        Column("qh", align="end"),
        Column("Walls, gable ends", align="end"),
        Column("Slopes", align="end"),
        Column("W, strength", align="end", share=1.2),
        Column("By"),
    )
    height = quantity(wind.roof_height_ft, "ft", units)
    notes = (
        f"By {rules_of(wind.document).cite('chapters 26 and 27')}; mean roof height {height} above the lowest ground. "
        + _HOW,
        *(sentence(remark) for remark in wind.remarks),
    )
    return TableBlock(columns, tuple(rows), "Wind on what stands above the base", notes)


def _lines(wind: Wind, units: Units, daggers: Daggers) -> TableBlock:
    rows: list[Row] = [
        (
            line.mark,
            with_doubt(quantity(line.W_lb, "lb", units), daggers.get(f"wind/{id}", "")),
            quantity(line.allowable_lb, "lb", units),
            quantity(line.earthquake_lb, "lb", units),
            "wind" if line.governs else "earthquake",
        )
        for id, line in wind.lines.items()
    ]
    columns = (
        Column("Line", share=0.6),
        Column("W, strength", align="end"),
        Column("0.6 W", align="end"),
        Column("0.7 Eh", align="end"),
        Column("Governs"),
    )
    return TableBlock(columns, tuple(rows), "Wind and earthquake on each line relied on, flexible floor")
