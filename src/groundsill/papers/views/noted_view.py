"""What was noted on the visit, in the surveyor's own words: observations, gauges and their readings, utilities.

Nothing is judged here. A note that no field of the survey could hold reaches whoever reads the package by this section
alone.
"""

from __future__ import annotations

from collections.abc import Iterator

from groundsill.house.building import Point
from groundsill.house.record import Monitor, Observation
from groundsill.house.survey import Survey, in_order
from groundsill.papers.document import Block, Column, Paragraph, Row, TableBlock
from groundsill.papers.views.words import DASH, Units, fact_words, sentence, short, tape
from groundsill.work.document import House

__all__ = ["noted_blocks"]


def noted_blocks(house: House) -> Iterator[Block]:
    """Observations, monitors and utilities, each as a table; a sentence when there are none."""
    survey, units = house.survey, house.units
    names = _names(survey)
    if not (survey.observations or survey.monitors or survey.underfloor.utilities):
        yield Paragraph("The survey holds no observation, no gauge and no utility.")
        return
    yield Paragraph(
        "As written down by whoever saw it, and not judged here. What bears on a check stands in the survey's own "
        "fields as well; what does not fit a field stands only here, and is for the reader to weigh."
    )
    if survey.observations:
        yield _observations(survey, names, units)
    if survey.monitors:
        yield _gauges(survey, names)
    if survey.underfloor.utilities:
        yield _utilities(survey, units)


def _observations(survey: Survey, names: dict[str, str], units: Units) -> TableBlock:
    columns = (
        Column("Mark"), Column("Kind"), Column("Where", share=0.5), Column("Size", align="end"),
        Column("What was seen", share=1.0), Column("Who and when"),
    )  # fmt: skip
    rows = tuple(_seen(survey, item, names, units) for _, item in in_order(survey.observations))
    return TableBlock(columns, rows, "Observations")


def _gauges(survey: Survey, names: dict[str, str]) -> TableBlock:
    columns = (
        Column("Mark"), Column("Kind"), Column("On"), Column("First reading", align="end"),
        Column("Last reading", align="end"), Column("Readings", align="end"),
    )  # fmt: skip
    rows = tuple(_read(item, names) for _, item in in_order(survey.monitors))
    return TableBlock(columns, rows, "Gauges and marks read over time")


def _utilities(survey: Survey, units: Units) -> TableBlock:
    columns = (
        Column("Mark"), Column("What"), Column("Place on the plan"), Column("Strapped or flexible"),
        Column("Note", share=1.0),
    )  # fmt: skip
    said = {True: "yes", False: "no", None: "not seen"}
    rows = tuple(
        (item.mark or id, item.kind, _place(item.at, units), said[item.strapped.value], sentence(item.note) or DASH)
        for id, item in in_order(survey.underfloor.utilities)
    )
    return TableBlock(columns, rows, "Water heater, gas and other utilities an earthquake would find")


def _names(survey: Survey) -> dict[str, str]:
    """Every object that an observation can sit on, by its id: what to call it."""
    under, base = survey.underfloor, survey.foundation
    found = {}
    for word, collection in (
        ("line", under.lines), ("wall", under.segments), ("sill", under.sills), ("bolt", under.bolts),
        ("post", under.posts), ("girder", under.girders), ("joists", under.joists), ("foundation", base.segments),
        ("break", base.breaks), ("wall", survey.building.walls), ("observation", survey.observations),
        ("chimney", survey.building.chimneys), ("roof", survey.building.roof),
    ):  # fmt: skip
        for id, item in collection.items():
            found[id] = f"{word} {item.mark or id}"
    return found


def _seen(survey: Survey, item: Observation, names: dict[str, str], units: Units) -> Row:
    where = [names.get(item.on, item.on)] if item.on else []
    if item.station_in is not None:
        where.append(f"at {tape(item.station_in, units)}")
    if item.at is not None:
        where.append(_place(item.at, units))
    if item.length_in.known:
        where.append(f"over {fact_words(item.length_in, 'in', units)}")
    photos = [survey.photos[id].mark or id for id in item.photos if id in survey.photos]
    words = sentence(item.words) if item.words else DASH
    if photos:
        words = f"{words} Photographs: {', '.join(photos)}."
    size = fact_words(item.size_in, "in", units) if item.size_in.known else DASH
    who = ", ".join(text for text in (item.by, item.when) if text) or DASH
    return (item.mark or DASH, item.kind, ", ".join(where) or DASH, size, words, who)


def _read(item: Monitor, names: dict[str, str]) -> Row:
    readings = sorted(item.readings, key=lambda reading: reading.when)
    told = [f"{short(r.value)} {item.unit} on {r.when}" for r in (readings[:1] + readings[-1:])] or [DASH, DASH]
    on = names.get(item.on, item.on) if item.on else DASH
    return (item.mark or DASH, item.kind, on, told[0], told[-1], str(len(readings)))


def _place(at: Point, units: Units) -> str:
    return f"x {tape(at.x_in, units)}, y {tape(at.y_in, units)}"
